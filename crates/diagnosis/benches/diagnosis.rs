//! How long a diagnosis takes: all single slips and all pairs of an attempt on a 3x3, by the number of letters and by
//! the size of the catalogue.

#![expect(
    clippy::disallowed_types,
    clippy::disallowed_macros,
    reason = "a program that measures: it takes a clock, and prints"
)]

use blind::{Conventions, Solver};
use cube::{Algorithm, Orbit, Size, State, Turn};
use diagnosis::{Begun, Catalogue, Depth, Inquiry, Observed, Plan, SlipKind, Stage, why};
use std::hint::black_box;
use std::time::{Duration, Instant};

const TIMES: u32 = 15;

/// The shortest of some runs: what the machine's other work does not lengthen.
fn shortest(mut run: impl FnMut()) -> Duration {
    (0..TIMES)
        .map(|_| {
            let began = Instant::now();
            run();
            began.elapsed()
        })
        .min()
        .unwrap_or_default()
}

fn main() {
    let solver = Solver::new(Size::THREE, Conventions::default());
    let scramble: Vec<Turn> =
        Algorithm::parse("R2 F' U B2 D' L F2 R U2 B' D L2 F R' U F2 D2 B L' U'", Size::THREE)
            .expect("a scramble")
            .flatten();
    let plan = Plan::new(Begun::Scramble(scramble.clone()), None, &solver).expect("our own memo");
    let letters: usize = plan.memo().iter().map(|(_, letters)| letters.len()).sum();
    println!("| letters | catalogue | slips | classes of slips | singles and pairs, shortest of {TIMES} |");
    println!("| ---: | --- | ---: | ---: | ---: |");
    let whole = Catalogue::default();
    for count in [5, 10, 15, 20, letters, 40] {
        // Shorter and longer memos are parts and repetitions of this one; the time depends on their length only.
        let parts: Vec<_> = plan
            .memo()
            .iter()
            .map(|(orbit, all)| {
                let share = if *orbit == Orbit::Corner { count * 2 / 5 } else { count - count * 2 / 5 };
                (*orbit, all.iter().cycle().take(share).copied().collect::<Vec<_>>())
            })
            .collect();
        let begun = Begun::Scramble(scramble.clone());
        let plan = Plan::new(begun, Some(parts), &solver).expect("letters of our own memo");
        line(&plan, &count.to_string(), "whole", &whole);
    }
    // Our own memo has slips of tracing besides; then with parts of the catalogue only.
    line(&plan, &letters.to_string(), "whole, and tracing", &whole);
    let of = |stages: &[Stage]| -> Vec<SlipKind> {
        SlipKind::ALL.into_iter().filter(|kind| !stages.contains(&kind.stage())).collect()
    };
    let execution = whole.without(&of(&[Stage::Execution]));
    line(&plan, &letters.to_string(), "execution", &execution);
    line(&plan, &letters.to_string(), "recall", &whole.without(&of(&[Stage::Recall])));
    let few = whole.without(&[SlipKind::TurnAdded, SlipKind::HeldOtherwise, SlipKind::TurnOtherFace]);
    line(&plan, &letters.to_string(), "without added turns, other faces, other holds", &few);
}

fn line(plan: &Plan<'_>, letters: &str, name: &str, catalogue: &Catalogue) {
    let mut made = plan.turns();
    let at = made.len() / 2;
    made.remove(at);
    made.remove(at / 2);
    let seen = Observed::State(Box::new(State::solved(Size::THREE).after(&made)));
    let inquiry = Inquiry { catalogue, depth: Depth::Two, answers: &[], most: 10 };
    let mut size = (0, 0);
    let time = shortest(|| {
        let found = why(plan, &seen, &inquiry, &mut |_| true).expect("reachable");
        size = (found.slips, found.classes);
        black_box(found);
    });
    println!("| {letters} | {name} | {} | {} | {:.1} ms |", size.0, size.1, time.as_secs_f64() * 1000.0);
}
