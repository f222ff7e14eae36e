//! Plans of bigger puzzles, carried out by a model that shares nothing with ours.

mod planned;

/// Rows of a table without its remarks.
fn rows(text: &str) -> impl Iterator<Item = Vec<&str>> {
    text.lines()
        .filter(|line| !line.starts_with('#') && !line.is_empty())
        .map(|line| line.split('\t').collect())
}

#[test]
fn the_plans_that_are_carried_out_are_ours() {
    assert!(
        planned::text(planned::COMMITTED) == include_str!("../../../reference/ours/plans.txt"),
        "reference/ours/plans.txt is stale: cargo run -p blind --example plans > reference/ours/plans.txt, then cargo xtask reference --write"
    );
}

/// Source: reference/geometry.py, points in space that are turned, by `reference/make.py`.
#[test]
fn carried_out_elsewhere_every_plan_solves() {
    let ours: Vec<_> = rows(include_str!("../../../reference/ours/plans.txt")).collect();
    let outside: Vec<_> = rows(include_str!("../../../reference/plans.txt")).collect();
    assert_eq!(ours.len(), 4 * 4 * planned::COMMITTED);
    assert_eq!(outside.len(), ours.len());
    for (plan, end) in ours.iter().zip(&outside) {
        assert_eq!(plan[..2], end[..2]);
        let size: usize = plan[0].parse().expect("a size");
        let solved: String = ["U", "L", "F", "R", "B", "D"].map(|face| face.repeat(size * size)).concat();
        assert_eq!(end[2], solved, "{} {}", plan[0], plan[1]);
    }
}
