//! Scrambles and solutions, one core. `cargo bench -p search`; the cold start is measured by `examples/cold_start.rs`.

use cube::{Size, State};
use divan::Bencher;
use rand_chacha::ChaCha20Rng;
use search::scramble::{Event, scramble};
use search::solve3::Limit;
use search::{random, solve2, solve3};

fn main() {
    divan::main();
}

/// States and their generator, fresh for each bench so that each sees the same ones.
fn drawn<'a>(draw: fn(&mut ChaCha20Rng) -> State) -> impl FnMut() -> State + 'a {
    let mut generator = random::seeded(2026);
    move || draw(&mut generator)
}

#[divan::bench]
fn random_state_2(bencher: Bencher) {
    let mut generator = random::seeded(1);
    bencher.bench_local(|| random::state2(&mut generator));
}

#[divan::bench]
fn random_state_3(bencher: Bencher) {
    let mut generator = random::seeded(1);
    bencher.bench_local(|| random::state3(&mut generator));
}

/// By the ball alone; runs first since the full table, once made, is used by all.
#[divan::bench(name = "solve_2_a_ball")]
fn solve_2_ball(bencher: Bencher) {
    bencher.with_inputs(drawn(random::state2)).bench_local_values(|state| solve2::solve(&state));
}

#[divan::bench(name = "solve_2_b_table")]
fn solve_2_table(bencher: Bencher) {
    solve2::prepare();
    bencher.with_inputs(drawn(random::state2)).bench_local_values(|state| solve2::solve(&state));
}

#[divan::bench(args = [21, 22, 23], sample_count = 300)]
fn solve_3(bencher: Bencher, limit: u8) {
    let limit = Limit::new(limit).expect("a limit");
    bencher.with_inputs(drawn(random::state3)).bench_local_values(|state| solve3::solve(&state, limit));
}

#[divan::bench(args = [2, 3, 4, 5, 6, 7], sample_count = 300)]
fn scramble_sighted(bencher: Bencher, layers: u8) {
    let mut generator = random::seeded(5);
    let size = Size::new(layers).expect("a size");
    bencher.bench_local(|| scramble(size, Event::Sighted, &mut generator));
}

#[divan::bench(args = [2, 3, 4, 5, 6, 7], sample_count = 300)]
fn scramble_blindfolded(bencher: Bencher, layers: u8) {
    let mut generator = random::seeded(5);
    let size = Size::new(layers).expect("a size");
    bencher.bench_local(|| scramble(size, Event::Blindfolded, &mut generator));
}
