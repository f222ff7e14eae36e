//! How long solutions of uniformly random states are, and how long they take: `spread 2|3|4 COUNT [SEED]`.
//!
//! Every solution is applied before it is counted. The tables are made before the clock starts.
#![expect(
    clippy::disallowed_macros,
    clippy::disallowed_methods,
    clippy::disallowed_types,
    reason = "a program, not the engine"
)]

use rand_chacha::ChaCha20Rng;
use search::{random, solve2, solve3, solve4};
use std::time::{Duration, Instant};

/// The length of the solution of the next random state.
type Solve = fn(&mut ChaCha20Rng) -> Option<usize>;

fn two(generator: &mut ChaCha20Rng) -> Option<usize> {
    solve2::solve(&random::state2(generator)).ok().map(|turns| turns.len())
}

fn three(generator: &mut ChaCha20Rng) -> Option<usize> {
    solve3::solve(&random::state3(generator), solve3::Limit::TIGHT).ok().map(|turns| turns.len())
}

fn four(generator: &mut ChaCha20Rng) -> Option<usize> {
    solve4::solve(&random::state4(generator)).ok().map(|turns| turns.len())
}

fn main() {
    let mut arguments = std::env::args().skip(1);
    let solve: Option<Solve> = match arguments.next().as_deref() {
        Some("2") => Some(two),
        Some("3") => Some(three),
        Some("4") => Some(four),
        _ => None,
    };
    let count = arguments.next().and_then(|count| count.parse::<usize>().ok());
    let (Some(solve), Some(count)) = (solve, count) else {
        eprintln!("usage: spread 2|3|4 COUNT [SEED]");
        std::process::exit(2);
    };
    let seed = arguments.next().and_then(|seed| seed.parse().ok()).unwrap_or(1_000);
    let begun = Instant::now();
    solve(&mut random::seeded(0));
    println!("first\t{:?}", begun.elapsed());
    let mut generator = random::seeded(seed);
    let mut lengths = [0u32; 128];
    let (mut sum, mut failed, mut longest) = (0, 0, Duration::ZERO);
    let mut times = Vec::with_capacity(count);
    for _ in 0..count {
        let begun = Instant::now();
        match solve(&mut generator) {
            Some(length) => {
                lengths[length.min(127)] += 1;
                sum += length;
            }
            None => failed += 1,
        }
        times.push(begun.elapsed());
        longest = longest.max(begun.elapsed());
    }
    times.sort();
    let all: Duration = times.iter().sum();
    println!("states\t{count}\tfailed\t{failed}\tmean\t{:.3}", sum as f64 / (count - failed).max(1) as f64);
    println!(
        "time\tmean {:?}\tmedian {:?}\t9 of 10 {:?}\tlongest {longest:?}",
        all / count.max(1) as u32,
        times[count / 2],
        times[count * 9 / 10]
    );
    for (length, states) in lengths.iter().enumerate().filter(|&(_, &states)| states > 0) {
        println!("{length}\t{states}");
    }
}
