//! Random 3x3 states of a seed, one line of facelets each, for a peer to solve: `solver_states COUNT [LIMIT]`.
//!
//! With a limit each line has the length of our own solution after a tab, so that the time of the whole is ours.
#![expect(clippy::disallowed_macros, clippy::disallowed_methods, reason = "a program, not the engine")]

use search::random;
use search::solve3::{Limit, solve};

fn main() {
    let mut arguments = std::env::args().skip(1);
    let Some(count) = arguments.next().and_then(|count| count.parse::<usize>().ok()) else {
        eprintln!("usage: solver_states COUNT [21|22|23]");
        std::process::exit(2);
    };
    let limit = arguments.next().and_then(|limit| limit.parse().ok()).and_then(Limit::new);
    let mut generator = random::seeded(1_000);
    for _ in 0..count {
        let state = random::state3(&mut generator);
        match limit.map(|limit| solve(&state, limit)) {
            None => println!("{}", state.facelets()),
            Some(Ok(solution)) => println!("{}\t{}", state.facelets(), solution.len()),
            Some(Err(error)) => println!("{}\t{error}", state.facelets()),
        }
    }
}
