//! How long a trace, a memo with its verified solution, and a method take. Each bench checks what it computes.
//!
//! `cargo bench -p blind`

use blind::{Conventions, Memo, Method, Solution, Trace, breaks_by_letter, hold};
use cube::{Algorithm, Orbit, Size, State};
use divan::Bencher;
use search::random::{seeded, state3};

fn main() {
    divan::main();
}

/// States of a 3x3, uniformly random, the same in every run.
fn states(count: usize) -> Vec<State> {
    let mut generator = seeded(1);
    (0..count).map(|_| state3(&mut generator)).collect()
}

/// Both kinds of a thousand states.
#[divan::bench]
fn trace_1000_states(bencher: Bencher) {
    let states = states(1000);
    let conventions = Conventions::default();
    let kinds = [Orbit::Corner, Orbit::Midge].map(|orbit| {
        (orbit, conventions.kind(orbit).buffer, breaks_by_letter(&conventions.kind(orbit).letters))
    });
    bencher.bench(|| {
        let mut letters = 0;
        for state in &states {
            for (orbit, buffer, breaks) in &kinds {
                letters += Trace::new(*orbit, state.orbit(*orbit), *buffer, breaks).len();
            }
        }
        // Between 7 and 12 letters a corner and edge memo on average each; a wrong tracer would be far off.
        assert!((17_000..22_000).contains(&letters), "{letters}");
        letters
    });
}

/// Scramble text to memo to a solution that was applied.
#[divan::bench]
fn memo_and_solution(bencher: Bencher) {
    let conventions = Conventions::default();
    let method = Method::new(Size::THREE, &conventions).expect("the default method fits");
    bencher.bench(|| {
        let text = "D2 F' R2 B U2 L' D B2 R F U' L2 B' U R2 D' F2 L U2";
        let scramble = Algorithm::parse(divan::black_box(text), Size::THREE).expect("a scramble");
        let held = hold(&State::solved(Size::THREE).after(&scramble.flatten()), &conventions);
        let memo = Memo::new(&held.state, &conventions, &method);
        Solution::new(&held.state, &memo, &conventions, &method).expect("it solves").moves.len()
    });
}

/// The conventions' method with all set-ups searched for.
#[divan::bench]
fn method_with_set_ups(bencher: Bencher) {
    let conventions = Conventions::default();
    bencher.bench(|| Method::new(Size::THREE, &conventions).expect("the default method fits"));
}
