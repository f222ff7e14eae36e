//! How often the slip that was made is told first on bigger puzzles, and how long that takes: `bigger_slips SIZE ATTEMPTS SLIPS`.
//!
//! An attempt is drawn at random and slips of the hands are made in it: a turn left out, made the other way, made half for a
//! quarter, made twice. The first explanation is right if what it plays leads to the very state that was led to, centres told
//! apart; only the colours are given to it.
#![expect(
    clippy::disallowed_macros,
    clippy::disallowed_methods,
    clippy::disallowed_types,
    reason = "a program, not the engine"
)]

use blind::{Conventions, Solver};
use cube::{Amount, Facelets, Size, State, Turn};
use diagnosis::{Begun, Catalogue, Depth, Inquiry, Observed, Plan, why};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::time::{Duration, Instant};

fn main() {
    let numbers: Vec<u64> = std::env::args().skip(1).filter_map(|text| text.parse().ok()).collect();
    let &[size, attempts, slips] = numbers.as_slice() else {
        println!("bigger_slips SIZE ATTEMPTS SLIPS");
        return;
    };
    let Some(size) = u8::try_from(size).ok().and_then(Size::new) else { return };
    let solver = Solver::new(size, Conventions::default());
    let turns: Vec<Turn> = Turn::all(size).filter(|turn| !turn.is_rotation()).collect();
    let mut rng = ChaCha8Rng::seed_from_u64(1);
    let (mut first, mut among, mut explained) = (0, 0, 0);
    let mut times: Vec<Duration> = Vec::new();
    for _ in 0..attempts {
        let scramble: Vec<Turn> = (0..40).map(|_| turns[rng.random_range(0..turns.len())]).collect();
        let plan = Plan::new(Begun::Scramble(scramble.clone()), None, &solver).expect("a plan");
        let mut made = plan.turns();
        for _ in 0..slips {
            let at = rng.random_range(scramble.len()..made.len());
            let turn = made[at];
            let half = Amount::Half;
            match rng.random_range(0..4) {
                0 => drop(made.remove(at)),
                1 if turn.amount != half => made[at] = turn.inverse(),
                2 => {
                    let amount = if turn.amount == half { Amount::Clockwise } else { half };
                    made[at] = Turn::new(turn.block, amount);
                }
                _ => made.insert(at, turn),
            }
        }
        let led_to = State::solved(size).after(&made);
        if led_to.looks_like(&plan.outcome()) {
            continue;
        }
        let text = led_to.facelets().to_string();
        let seen = text.parse::<Facelets>().expect("facelets").state().expect("reachable");
        let catalogue = Catalogue::default();
        let inquiry = Inquiry { catalogue: &catalogue, depth: Depth::Two, answers: &[], most: 20 };
        let start = Instant::now();
        let told =
            why(&plan, &Observed::State(Box::new(seen)), &inquiry, &mut |_| true).expect("a diagnosis");
        times.push(start.elapsed());
        let leads = |at: usize| {
            told.explanations.get(at).is_some_and(|found| {
                let played = [found.scrambled(), found.rotated(), found.played()].concat();
                State::solved(size).after(&played) == led_to
            })
        };
        explained += u32::from(!told.explanations.is_empty());
        first += u32::from(leads(0));
        among += u32::from((0..told.explanations.len()).any(leads));
    }
    times.sort_unstable();
    let (all, median) = (times.len(), times.get(times.len() / 2).copied().unwrap_or_default());
    let slowest = times.last().copied().unwrap_or_default();
    println!(
        "{size}, {slips} slips: of {all} attempts {explained} explained, {first} by what happened first, {among} among the first 20; median {median:?}, slowest {slowest:?}"
    );
}
