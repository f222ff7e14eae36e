//! Checks against what others say: the competition standard, group theory software and published tables.
//!
//! Each file of `reference/` names its source in the first line.

mod move_tables;

use cube::{Algorithm, Amount, Face, Orbit, Size, State, Sticker, Turn, count};
use std::collections::HashSet;

/// The lines of a file of vectors, each split at its tabs.
fn rows(text: &str) -> impl Iterator<Item = Vec<&str>> {
    text.lines()
        .filter(|line| !line.is_empty() && !line.starts_with('#'))
        .map(|line| line.split('\t').collect())
}

fn size(text: &str) -> Size {
    Size::new(text.parse().expect("a number")).expect("a size from 2 to 7")
}

fn after(text: &str, size: Size) -> State {
    let algorithm = Algorithm::parse(text, size).unwrap_or_else(|error| panic!("{text}: {error}"));
    State::solved(size).after(&algorithm.flatten())
}

/// Source: geometry.py, an independent model from the moves of the WCA Regulations, article 12, applied by `SymPy`.
#[test]
fn random_sequences_lead_where_an_independent_model_leads() {
    let mut seen = [0; 8];
    for row in rows(include_str!("../../../reference/sequences.txt")) {
        let size = size(row[0]);
        assert_eq!(after(row[1], size).facelets().to_string(), row[2], "{size}: {}", row[1]);
        seen[usize::from(size.layers())] += 1;
    }
    assert_eq!(seen, [0, 0, 40, 40, 40, 40, 40, 40]);
}

/// Source: WCA Regulations, article 12; each line of the file names its article.
#[test]
fn notation_is_the_standards() {
    for row in rows(include_str!("../../../reference/notation.txt")) {
        let read = Algorithm::parse(row[1], size(row[0]));
        let right = match row[2] {
            "ok" => read.is_ok(),
            "error" => read.is_err(),
            other => panic!("{other}: neither ok nor error"),
        };
        assert!(right, "{} on size {} should be {}: {} ({read:?})", row[1], row[0], row[2], row[3]);
    }
}

/// Source: WCA Regulations, articles 12a1 to 12a4; each line of the file names its article.
#[test]
fn what_the_standard_calls_the_same_is_the_same() {
    for row in rows(include_str!("../../../reference/equal.txt")) {
        let size = size(row[0]);
        assert_eq!(after(row[1], size), after(row[2], size), "{} and {}: {}", row[1], row[2], row[3]);
    }
}

/// Source: WCA Regulations, articles 12a5 and 12a6.
#[test]
fn lengths_are_counted_as_the_standard_does() {
    for row in rows(include_str!("../../../reference/metrics.txt")) {
        let turns = Algorithm::parse(row[1], size(row[0])).expect("a sequence of the standard").flatten();
        let count = count(&turns);
        assert_eq!(
            (count.half.to_string(), count.execution.to_string()),
            (row[2].into(), row[3].into()),
            "{}",
            row[1]
        );
    }
}

/// What `SymPy` and GAP computed, they computed from the tables that the crate has now.
#[test]
fn exported_tables_are_fresh() {
    assert!(
        move_tables::text() == include_str!("../../../reference/ours/move_tables.txt"),
        "reference/ours/move_tables.txt is stale: run `cargo run -p cube --example move_tables` into it, \
         then `cargo xtask reference --write`"
    );
}

/// Source: geometry.py; the same permutations turn by turn.
#[test]
fn tables_are_those_of_an_independent_model() {
    let ours = move_tables::text();
    let theirs: Vec<_> = rows(include_str!("../../../reference/generators.txt")).collect();
    assert_eq!(rows(&ours).collect::<Vec<_>>(), theirs);
}

/// Source: `SymPy` and GAP, from this crate's tables (lines "ours"); numbers of positions: OEIS A075152.
#[test]
fn groups_of_our_turns_have_the_published_orders() {
    let positions: Vec<_> = rows(include_str!("../../../reference/oeis/A075152.txt")).collect();
    let published = |size: &str| positions.iter().find(|row| row[0] == size).expect("a published term")[1];
    let sympy: Vec<_> = rows(include_str!("../../../reference/orders.txt")).collect();
    for size in ["2", "3"] {
        let ours =
            sympy.iter().find(|row| row[0] == "ours" && row[1] == size).expect("SymPy's order of our group");
        assert_eq!(ours[3], published(size), "SymPy, size {size}");
    }
    let gap: Vec<_> = rows(include_str!("../../../reference/orders_gap.txt")).collect();
    for size in ["2", "3", "4", "5"] {
        let ours =
            gap.iter().find(|row| row[0] == "ours" && row[1] == size).expect("GAP's order of our group");
        assert_eq!(ours[4], published(size), "GAP, size {size}");
    }
}

/// Where each place of an orbit is carried by a turn, read off the state it makes.
fn carried(size: Size, orbit: Orbit, turn: Turn) -> [u8; 24] {
    let state = State::solved(size).after(&[turn]);
    let mut to = [0; 24];
    for place in Sticker::all() {
        to[state.at(orbit, place).index()] = place.index() as u8;
    }
    to
}

fn turns_of(faces: &[Face], amounts: &[Amount]) -> Vec<Turn> {
    faces.iter().flat_map(|&face| amounts.iter().map(move |&amount| Turn::face(face, amount))).collect()
}

const QUARTERS: [Amount; 2] = [Amount::Clockwise, Amount::Counter];

fn terms(text: &str) -> Vec<usize> {
    rows(text).map(|row| row[1].parse().expect("a number")).collect()
}

/// The 2x2 with the corner at D, B, L left alone: where one sticker of each of six corners is tells where all are.
///
/// A state is a number of six digits to the base 24.
fn states_of_two_by_depth(amounts: &[Amount]) -> Vec<usize> {
    const BASE: u32 = 24;
    let turns: Vec<[u8; 24]> = turns_of(&[Face::R, Face::U, Face::F], amounts)
        .into_iter()
        .map(|turn| carried(Size::TWO, Orbit::Corner, turn))
        .collect();
    let start = ["UBL", "UBR", "UFR", "UFL", "DFL", "DFR"]
        .iter()
        .fold(0, |state, name| state * BASE + Orbit::Corner.sticker(name).expect("a corner").index() as u32);
    let mut seen = vec![0u64; (BASE.pow(6) / 64) as usize + 1];
    seen[(start / 64) as usize] |= 1 << (start % 64);
    let mut counts = Vec::new();
    let mut frontier = vec![start];
    while !frontier.is_empty() {
        counts.push(frontier.len());
        let mut next = Vec::new();
        for state in frontier {
            let mut digits = [0; 6];
            let mut rest = state;
            for digit in digits.iter_mut().rev() {
                *digit = (rest % BASE) as usize;
                rest /= BASE;
            }
            for turn in &turns {
                let moved = digits.iter().fold(0, |number, &digit| number * BASE + u32::from(turn[digit]));
                let (word, bit) = ((moved / 64) as usize, 1 << (moved % 64));
                if seen[word] & bit == 0 {
                    seen[word] |= bit;
                    next.push(moved);
                }
            }
        }
        frontier = next;
    }
    counts
}

/// Source: OEIS A079761, all terms.
#[test]
fn states_of_two_by_depth_in_half_turns() {
    assert_eq!(
        states_of_two_by_depth(&Amount::ALL),
        terms(include_str!("../../../reference/oeis/A079761.txt"))
    );
}

/// Source: OEIS A079762, all terms.
#[test]
fn states_of_two_by_depth_in_quarter_turns() {
    assert_eq!(states_of_two_by_depth(&QUARTERS), terms(include_str!("../../../reference/oeis/A079762.txt")));
}

/// The 3x3: where one sticker of each of the 8 corners and 12 midges is.
fn states_of_three_by_depth(amounts: &[Amount], depth: usize) -> Vec<usize> {
    let pieces = |orbit: Orbit| {
        let mut firsts: Vec<Sticker> =
            Sticker::all().map(|sticker| orbit.reference(orbit.piece(sticker))).collect();
        firsts.sort_unstable_by_key(|sticker| sticker.index());
        firsts.dedup();
        firsts.into_iter().map(|sticker| sticker.index() as u8)
    };
    let start: Vec<u8> = pieces(Orbit::Corner).chain(pieces(Orbit::Midge)).collect();
    let start: [u8; 20] = start.try_into().expect("8 corners and 12 midges");
    let turns: Vec<_> = turns_of(&Face::ALL, amounts)
        .into_iter()
        .map(|turn| [Orbit::Corner, Orbit::Midge].map(|orbit| carried(Size::THREE, orbit, turn)))
        .collect();
    let mut seen = HashSet::from([start]);
    let mut frontier = vec![start];
    let mut counts = vec![1];
    for _ in 0..depth {
        let mut next = Vec::new();
        for state in frontier {
            for [corners, midges] in &turns {
                let mut moved = state;
                let (eight, twelve) = moved.split_at_mut(8);
                for (places, to) in [(eight, corners), (twelve, midges)] {
                    for place in places {
                        *place = to[usize::from(*place)];
                    }
                }
                if seen.insert(moved) {
                    next.push(moved);
                }
            }
        }
        counts.push(next.len());
        frontier = next;
    }
    counts
}

/// Source: OEIS A080601, to depth 5.
#[test]
fn states_of_three_by_depth_in_half_turns() {
    let published = terms(include_str!("../../../reference/oeis/A080601.txt"));
    assert_eq!(states_of_three_by_depth(&Amount::ALL, 5), published[..=5]);
}

/// Source: OEIS A080602, to depth 5.
#[test]
fn states_of_three_by_depth_in_quarter_turns() {
    let published = terms(include_str!("../../../reference/oeis/A080602.txt"));
    assert_eq!(states_of_three_by_depth(&QUARTERS, 5), published[..=5]);
}
