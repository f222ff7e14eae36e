//! The 2x2: every solution is a shortest one.

use cube::{Size, State, Turn};
use proptest::prelude::*;
use search::{random, solve2};
use std::collections::HashMap;

/// Source: OEIS A079761, number of positions of the 2x2 at each distance from solved, half turns counted as one.
const POSITIONS: [u32; 12] = [1, 9, 54, 321, 1847, 9992, 50136, 227_536, 870_072, 1_887_748, 623_800, 2_644];

#[test]
fn as_many_positions_at_each_distance_as_published() {
    assert_eq!(solve2::histogram(), POSITIONS);
    // Source: the order of the group with one corner fixed, 7! · 3^6, as GAP and SymPy compute it.
    assert_eq!(POSITIONS.iter().sum::<u32>(), 3_674_160);
    assert_eq!(solve2::STATES, 3_674_160);
}

/// Distances by plain breadth-first search on the model itself, holds apart, to `depth` turns of all six faces.
fn by_breadth(depth: u8) -> HashMap<State, u8> {
    let turns: Vec<Turn> = Turn::faces().collect();
    let mut known: HashMap<State, u8> = HashMap::new();
    let mut ring: Vec<State> =
        cube::Rotation::all().map(|rotation| State::held(Size::TWO, rotation)).collect();
    known.extend(ring.iter().map(|&state| (state, 0)));
    for distance in 1..=depth {
        let mut next = Vec::new();
        for state in ring {
            for &turn in &turns {
                let reached = state.after(&[turn]);
                known.entry(reached).or_insert_with(|| {
                    next.push(reached);
                    distance
                });
            }
        }
        ring = next;
    }
    known
}

#[test]
fn solutions_are_as_short_as_the_model_allows_in_every_hold() {
    let known = by_breadth(4);
    // Each position with one corner fixed is met in 24 holds.
    assert_eq!(known.len(), 24 * (1 + 9 + 54 + 321 + 1847));
    for (state, &distance) in &known {
        let solution = solve2::solve(state).unwrap();
        assert_eq!(solution.len(), distance as usize);
        assert!(state.after(&solution).solved_hold().is_some());
    }
}

#[test]
fn table_and_ball_give_the_same_solutions() {
    let mut generator = random::seeded(22);
    // Among 3,000 there are states at 11 turns in all likelihood (2,644 in 3,674,160 each): seed chosen so that there are.
    let states: Vec<State> = (0..3_000).map(|_| random::state2(&mut generator)).collect();
    let by_ball: Vec<Vec<Turn>> = states.iter().map(|state| solve2::solve(state).unwrap()).collect();
    solve2::prepare();
    let by_table: Vec<Vec<Turn>> = states.iter().map(|state| solve2::solve(state).unwrap()).collect();
    assert_eq!(by_ball, by_table);
    assert_eq!(by_ball.iter().map(Vec::len).max(), Some(11));
}

#[test]
fn other_sizes_are_refused() {
    let three = State::solved(Size::THREE);
    assert_eq!(solve2::solve(&three), Err(solve2::Solve2Error::WrongSize(Size::THREE)));
    assert_eq!(solve2::hold(&three), Err(solve2::Solve2Error::WrongSize(Size::THREE)));
}

proptest! {
    #[test]
    fn no_sequence_is_shorter_than_the_solution(turns in prop::collection::vec(0..18_usize, 0..14)) {
        let faces: Vec<Turn> = Turn::faces().collect();
        let turns: Vec<Turn> = turns.into_iter().map(|at| faces[at]).collect();
        let state = State::solved(Size::TWO).after(&turns);
        let solution = solve2::solve(&state).unwrap();
        prop_assert!(solution.len() <= turns.len());
        prop_assert!(state.after(&solution).solved_hold().is_some());
        // One turn changes the distance by one at most; the state undone is as far.
        let next = state.after(&[faces[0]]);
        prop_assert!(solve2::solve(&next).unwrap().len().abs_diff(solution.len()) <= 1);
        prop_assert_eq!(solve2::solve(&state.inverse()).unwrap().len(), solution.len());
    }
}
