//! Turns applied, states multiplied, colours read and algorithms parsed. Run: `cargo bench -p cube`.

use cube::{Algorithm, Facelets, Perm, Size, State, Sticker, Turn};
use divan::counter::{BytesCount, ItemsCount};
use divan::{Bencher, black_box};

fn main() {
    divan::main();
}

const SIZES: [u8; 3] = [2, 3, 7];

/// Turns in an order without pattern: each the one so many further in the list of all, by a fixed stride.
fn turns(size: Size, count: usize) -> Vec<Turn> {
    let all: Vec<Turn> = Turn::all(size).filter(|turn| !turn.is_rotation()).collect();
    (0..count).map(|i| all[(i * i * 7 + i * 5) % all.len()]).collect()
}

fn size(layers: u8) -> Size {
    Size::new(layers).expect("a size of 2 to 7")
}

#[divan::bench(args = SIZES)]
fn apply_1000_turns(bencher: Bencher, layers: u8) {
    let turns = turns(size(layers), 1000);
    bencher
        .counter(ItemsCount::new(turns.len()))
        .bench_local(|| State::solved(size(layers)).after(black_box(&turns)));
}

#[divan::bench]
fn perm_then(bencher: Bencher) {
    let table = std::array::from_fn(|i| ((i * 5 + 3) % 24) as u8);
    let perm = Perm::new(table).expect("5 and 24 have no common factor");
    bencher.counter(ItemsCount::new(1000u32)).bench_local(|| {
        let next = black_box(perm);
        (0..1000).fold(Perm::IDENTITY, |so_far, _| so_far.then(&next))
    });
}

#[divan::bench(args = SIZES)]
fn multiply_states(bencher: Bencher, layers: u8) {
    let state = State::solved(size(layers)).after(&turns(size(layers), 50));
    bencher.bench_local(|| black_box(&state).then(black_box(&state)));
}

#[divan::bench(args = SIZES)]
fn look_up_all_stickers(bencher: Bencher, layers: u8) {
    let state = State::solved(size(layers)).after(&turns(size(layers), 50));
    bencher.bench_local(|| {
        let state = black_box(&state);
        let at = |orbit| Sticker::all().map(move |place| state.at(orbit, place).index()).sum::<usize>();
        cube::Orbit::of(state.size()).iter().map(|&orbit| at(orbit)).sum::<usize>()
    });
}

#[divan::bench(args = SIZES)]
fn colours_of_a_state(bencher: Bencher, layers: u8) {
    let state = State::solved(size(layers)).after(&turns(size(layers), 50));
    bencher.bench_local(|| black_box(&state).facelets());
}

#[divan::bench(args = SIZES)]
fn state_of_colours(bencher: Bencher, layers: u8) {
    let facelets: Facelets = State::solved(size(layers)).after(&turns(size(layers), 50)).facelets();
    bencher.bench_local(|| black_box(&facelets).state());
}

#[divan::bench]
fn parse_20_turns(bencher: Bencher) {
    let text = cube::display_turns(&turns(Size::THREE, 20)).to_string();
    bencher
        .counter(BytesCount::of_str(&text))
        .bench_local(|| Algorithm::parse(black_box(&text), Size::THREE));
}

#[divan::bench]
fn parse_60_kib(bencher: Bencher) {
    let mut text = String::new();
    while text.len() < 60 * 1024 {
        text.push_str("[R U: (F2 D')2] // a bracket\n");
    }
    bencher
        .counter(BytesCount::of_str(&text))
        .bench_local(|| Algorithm::parse(black_box(&text), Size::THREE));
}
