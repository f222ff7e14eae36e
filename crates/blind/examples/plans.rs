//! Prints scrambles with their plans, a few of each size: the content of `reference/ours/plans.txt`. With a number, so many; with the
//! word `time`, how long making them takes instead.
#![expect(
    clippy::disallowed_macros,
    clippy::disallowed_methods,
    clippy::disallowed_types,
    reason = "a program, not the engine"
)]

#[path = "../tests/planned/mod.rs"]
mod planned;

use blind::{Conventions, HoldChoice, Solver};
use cube::{Size, State, Turn};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::time::Instant;

/// How many states of each size are timed.
const MANY: u32 = 200;

fn main() {
    match std::env::args().nth(1).as_deref() {
        Some("time") => times(),
        Some(many) => print!("{}", planned::text(many.parse().unwrap_or(planned::COMMITTED))),
        None => print!("{}", planned::text(planned::COMMITTED)),
    }
}

/// Whole plans of scrambled states by the usual methods: one after another, and what is made once before.
fn times() {
    let mut rng = ChaCha8Rng::seed_from_u64(1);
    for size in Size::ALL {
        let start = Instant::now();
        let solver = Solver::new(size, Conventions::default());
        let built = start.elapsed();
        let turns: Vec<Turn> = Turn::all(size).filter(|turn| !turn.is_rotation()).collect();
        let (mut moves, mut letters) = (0, 0);
        let start = Instant::now();
        for _ in 0..MANY {
            let scramble: Vec<Turn> = (0..100).map(|_| turns[rng.random_range(0..turns.len())]).collect();
            let state = State::solved(size).after(&scramble);
            let solve = solver.solve(&state, HoldChoice::Conventions).expect("a memo");
            letters += solve.memo.letters();
            moves += solve.solution.expect("a plan").count().slice;
        }
        let (each, many) = (start.elapsed() / MANY, f64::from(MANY));
        let (letters, moves) = (letters as f64 / many, moves as f64 / many);
        println!("{size}: made in {built:?}, each plan in {each:?}; {letters:.1} letters, {moves:.1} moves");
    }
}
