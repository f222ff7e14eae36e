//! How long it takes to count the states that meet a condition, and to draw one of them.

use blind::{Conventions, Solver};
use choose::{Condition, Lying, Sampler};
use cube::Size;
use divan::{Bencher, black_box};
use formats::conditions;

fn main() {
    divan::main();
}

/// Puzzle and condition: any state, a lesson, a letter, a pair of each kind, seven pairs of which one has to occur.
const CASES: [(Size, &str); 7] = [
    (Size::TWO, "letters >= 0"),
    (Size::TWO, "corner.breaks = 1 and corner.twists = 0"),
    (Size::THREE, "letters >= 0"),
    (Size::THREE, "corner.breaks = 1 and corner.twists = 0 and edge.flips = 0"),
    (Size::THREE, "corner.has(B)"),
    (Size::THREE, "corner.pair(CK) and edge.pair(CK)"),
    (Size::THREE, "edge.pair(AC, DV, HI, KL, OP, RS, TU)"),
];

struct Case {
    condition: Condition,
    solver: Solver,
}

impl Case {
    fn new((size, text): (Size, &str)) -> Self {
        let solver = Solver::new(size, Conventions::default());
        let condition = conditions::read(text, size, solver.conventions()).expect("a condition");
        Self { condition, solver }
    }

    fn sampler(&self) -> Sampler<'_> {
        Sampler::new(&self.condition, Lying::Scrambled, &self.solver).expect("there are states")
    }
}

#[divan::bench(args = CASES.map(|(size, text)| (size.layers(), text)))]
fn count(bencher: Bencher<'_, '_>, (layers, text): (u8, &str)) {
    let case = Case::new((Size::new(layers).expect("a size"), text));
    bencher.bench(|| black_box(case.sampler().matching()));
}

#[divan::bench(args = CASES.map(|(size, text)| (size.layers(), text)))]
fn draw(bencher: Bencher<'_, '_>, (layers, text): (u8, &str)) {
    let case = Case::new((Size::new(layers).expect("a size"), text));
    let sampler = case.sampler();
    let mut generator = search::random::seeded(1);
    bencher.bench_local(|| black_box(sampler.draw(&mut generator, &mut |_| true)));
}
