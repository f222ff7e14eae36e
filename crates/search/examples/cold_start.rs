//! The first scramble or solution of a process, tables and all: `cold_start 2`, `3` or `4`, `cold_start table`.
//!
//! Prints how long it took inside the process; many starts give the spread.
#![expect(
    clippy::disallowed_macros,
    clippy::disallowed_methods,
    clippy::disallowed_types,
    reason = "a program, not the engine"
)]

use cube::Size;
use search::scramble::{Event, scramble};
use search::{random, solve2, solve4};
use std::time::Instant;

fn main() {
    let seed = std::env::args().nth(2).and_then(|seed| seed.parse().ok()).unwrap_or(1);
    let begun = Instant::now();
    let size = match std::env::args().nth(1).as_deref() {
        Some("2") => Size::TWO,
        Some("3") => Size::THREE,
        Some("4") => solve4::SIZE,
        Some("table") => {
            solve2::prepare();
            println!("{}", begun.elapsed().as_micros());
            return;
        }
        _ => {
            eprintln!("usage: cold_start 2|3|4|table [SEED]");
            std::process::exit(2);
        }
    };
    let drawn = scramble(size, Event::Sighted, &mut random::seeded(seed));
    println!("{}\t{}", begun.elapsed().as_micros(), drawn.map_or(0, |drawn| drawn.turns().len()));
}
