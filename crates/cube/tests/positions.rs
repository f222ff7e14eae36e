//! How many positions each size has, derived from its orbits and turns, against the published numbers; and which turns are
//! odd on which orbit, against an independent model.

use cube::{Amount, Block, Face, Orbit, Size, State, Turn};
use num_bigint::BigUint;

/// The lines of a file of vectors, each split at its tabs.
fn rows(text: &str) -> impl Iterator<Item = Vec<&str>> {
    text.lines()
        .filter(|line| !line.is_empty() && !line.starts_with('#'))
        .map(|line| line.split('\t').collect())
}

fn factorial(number: u8) -> BigUint {
    (1..=number).map(BigUint::from).product()
}

/// Whether a table is an odd permutation: of its cycles, those of even length are an odd number.
fn is_odd(table: &[usize]) -> bool {
    let mut seen = vec![false; table.len()];
    let mut odd = false;
    for start in 0..table.len() {
        let (mut at, mut length) = (start, 0);
        while !std::mem::replace(&mut seen[at], true) {
            at = table[at];
            length += 1;
        }
        odd ^= length > 0 && length % 2 == 0;
    }
    odd
}

/// Whether a state has an odd permutation of the pieces of an orbit, alike ones told apart.
fn pieces_are_odd(state: &State, orbit: Orbit) -> bool {
    let at = |piece| orbit.piece(state.at(orbit, orbit.reference(piece))).index();
    is_odd(&orbit.all_pieces().map(at).collect::<Vec<_>>())
}

/// The number of independent rows of a matrix of bits.
fn rank(mut rows: Vec<u16>) -> usize {
    let mut rank = 0;
    while let Some(pivot) = rows.pop() {
        if pivot != 0 {
            rank += 1;
            let bit = pivot & pivot.wrapping_neg();
            for row in rows.iter_mut().filter(|row| **row & bit != 0) {
                *row ^= pivot;
            }
        }
    }
    rank
}

/// The positions of a size, held in one way, centres of a colour alike.
///
/// Each orbit alone has as many as its pieces can be placed and turned: the turnings of all but one piece are free (the
/// textbook invariant), and four centres of a colour may change places unseen. Of the parities of the orbits whose pieces
/// are told apart as many combinations occur as the turns of the size make with the fixed centres at rest; centres hide
/// theirs. Without fixed centres each position is seen in 24 holds.
fn positions(size: Size) -> BigUint {
    let mut all = BigUint::from(1u8);
    let apart: Vec<Orbit> = Orbit::of(size).iter().copied().filter(|orbit| !orbit.looks_alike()).collect();
    for &orbit in Orbit::of(size) {
        all *= factorial(orbit.pieces());
        all *= BigUint::from(orbit.stickers_per_piece()).pow(u32::from(orbit.pieces()) - 1);
        if orbit.looks_alike() {
            all /= factorial(orbit.pieces() / 6).pow(6);
        }
    }
    let parities: Vec<u16> = Turn::all(size)
        .map(|turn| {
            let state = State::solved(size).after(&[turn]);
            let orbits = apart.iter().map(|&orbit| pieces_are_odd(&state, orbit));
            orbits.chain([state.core().is_odd()]).fold(0, |bits, odd| bits << 1 | u16::from(odd))
        })
        .collect();
    // Those combinations in which the fixed centres are even.
    let moves_centres = usize::from(parities.iter().any(|bits| bits & 1 == 1));
    all >>= apart.len() - (rank(parities) - moves_centres);
    if size.is_odd() { all } else { all / BigUint::from(24u8) }
}

/// Source: OEIS A075152.
#[test]
fn every_size_has_the_published_number_of_positions() {
    let published: Vec<_> = rows(include_str!("../../../reference/oeis/A075152.txt")).collect();
    assert_eq!(published.len(), Size::ALL.len());
    for row in published {
        let size = Size::new(row[0].parse().expect("a number")).expect("a size from 2 to 7");
        assert_eq!(positions(size).to_string(), row[1], "{size}");
    }
}

/// Source: geometry.py, an independent model, applied to single layers.
#[test]
fn layers_are_odd_where_an_independent_model_says() {
    let table: Vec<_> = rows(include_str!("../../../reference/parities.txt")).collect();
    let mut compared = 0;
    for size in Size::ALL {
        for layer in 1..=size.layers().div_ceil(2) {
            for face in Face::ALL {
                let block = if layer == 1 { Block::face(face) } else { Block::layer(face, layer) };
                let turn = Turn::new(block, Amount::Clockwise);
                let state = State::solved(size).after(&[turn]);
                for &orbit in Orbit::of(size) {
                    let (size, layer, name) =
                        (size.layers().to_string(), layer.to_string(), orbit.to_string());
                    let row = table
                        .iter()
                        .find(|row| row[..3] == [&size, &layer, &name])
                        .unwrap_or_else(|| panic!("no line for {turn} on the {orbit}s of size {size}"));
                    let odd = if pieces_are_odd(&state, orbit) { "odd" } else { "even" };
                    assert_eq!(row[3], odd, "{turn} on the {orbit}s of size {size}");
                    compared += 1;
                }
            }
        }
    }
    assert_eq!(compared, 6 * table.len());
}
