//! Prints scrambles of some seeds: the content of `reference/ours/scrambles.txt`.

#[path = "../tests/seeded_scrambles/mod.rs"]
mod seeded_scrambles;

#[expect(clippy::disallowed_macros, reason = "an example may print")]
fn main() {
    let scrambles: Vec<_> = seeded_scrambles::all().collect();
    print!("{}", seeded_scrambles::text(&scrambles));
}
