//! Prints this crate's turn tables as permutations of facelets: the content of `reference/ours/move_tables.txt`.

#[path = "../tests/move_tables/mod.rs"]
mod move_tables;

#[expect(clippy::disallowed_macros, reason = "an example may print")]
fn main() {
    print!("{}", move_tables::text());
}
