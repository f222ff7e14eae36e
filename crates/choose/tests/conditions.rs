//! Conditions that no state meets.

use blind::{Conventions, Solver};
use choose::{Lying, Sampler, Why};
use cube::{Orbit, Size};
use formats::conditions;

#[test]
fn what_cannot_be_met_is_said_with_the_law_it_runs_against() {
    let conventions = Conventions::default();
    for (size, text, parts, why) in [
        (Size::THREE, "edge.breaks >= 0 and corner.targets = 4 and edge.targets = 5", 2, Why::Parity),
        (
            Size::THREE,
            "corner.buffer = solved and corner.twists = 1 and corner.closes-elsewhere = 0 and parity = odd",
            3,
            Why::Turning(Orbit::Corner),
        ),
        (Size::THREE, "edge.flips = 11 and edge.buffer = solved", 2, Why::Turning(Orbit::Midge)),
        (Size::TWO, "corner.solved = 0", 1, Why::OneCornerStays),
        (Size::TWO, "corner.targets > 6 and corner.solved > 5", 2, Why::Contradiction),
    ] {
        let condition = conditions::read(text, size, &conventions).unwrap();
        let solver = Solver::new(size, conventions.clone());
        let Err(error) = Sampler::new(&condition, Lying::Scrambled, &solver) else {
            panic!("{text} can be met")
        };
        assert_eq!((error.parts.len(), &error.why), (parts, &why), "{text}: {error}");
    }
}
