//! The fewest turns of a 3x3: against distances that breadth-first search on the model finds, and what is said where the work ends early.

use cube::{Algorithm, Rotation, Size, State, Turn};
use search::random::{self, below};
use search::solve3::{Known, Solve3Error, optimum};
use std::collections::HashMap;

/// Every state up to so many face turns from solved, with its distance.
fn ball(depth: u8) -> HashMap<State, u8> {
    let faces: Vec<Turn> = Turn::faces().collect();
    let solved = State::solved(Size::THREE);
    let mut found = HashMap::from([(solved, 0)]);
    let mut ring = vec![solved];
    for distance in 1..=depth {
        let mut next = Vec::new();
        for state in ring {
            for &turn in &faces {
                let after = state.after(&[turn]);
                found.entry(after).or_insert_with(|| {
                    next.push(after);
                    distance
                });
            }
        }
        ring = next;
    }
    found
}

#[test]
fn as_far_as_breadth_first_search_says() {
    let ball = ball(4);
    // Source: OEIS A080601, the first five terms together.
    assert_eq!(ball.len(), 1 + 18 + 243 + 3_240 + 43_239);
    let faces: Vec<Turn> = Turn::faces().collect();
    let mut generator = random::seeded(2_026);
    let mut seen = [0; 9];
    for _ in 0..40 {
        let turns: Vec<Turn> =
            (0..below(10, &mut generator)).map(|_| faces[below(18, &mut generator) as usize]).collect();
        let state = State::solved(Size::THREE).after(&turns);
        // Up to 8 turns are two halves of up to 4.
        let halves =
            ball.iter().filter_map(|(half, &distance)| Some(distance + ball.get(&state.then(half))?));
        let Some(distance) = halves.min() else { continue };
        let hold = Rotation::all().nth(below(24, &mut generator) as usize).unwrap();
        let held = state.then(&State::held(Size::THREE, hold));
        let found = optimum(&held, 50_000_000, &mut |_| true).unwrap();
        assert!(found.is_proven());
        assert_eq!((found.turns().len(), found.least()), (distance as usize, distance));
        assert_eq!(held.after(found.turns()).solved_hold(), Some(held.core()));
        seen[distance as usize] += 1;
    }
    assert!(seen[1..].iter().filter(|&&count| count > 0).count() >= 6, "{seen:?}");
}

/// Source: T. Rokicki et al., "The diameter of the Rubik's cube group is twenty", 2010: no state is further than 20 turns, and the one with
/// all edges flipped and the rest solved is just so far.
#[test]
fn what_is_not_proven_is_not_called_proven() {
    let text = "R L U2 F U' D F2 R2 B2 L U2 F' B' U R2 D F2 U R2 U";
    let state = State::solved(Size::THREE).after(&Algorithm::parse(text, Size::THREE).unwrap().flatten());
    let found = optimum(&state, 300_000, &mut |_| true).unwrap();
    assert!(!found.is_proven());
    assert!(found.least() <= 20 && found.turns().len() >= 20);
    assert!(found.positions() <= 300_000);
    assert!(state.after(found.turns()).is_solved());
    let mut told: Vec<Known> = Vec::new();
    let found = optimum(&state, u64::MAX, &mut |known| {
        told.push(known);
        told.len() < 4
    });
    let found = found.unwrap();
    assert!(!found.is_proven());
    assert_eq!(told.len(), 4);
    assert!(told.windows(2).all(|two| two[0].positions < two[1].positions && two[0].least <= two[1].least));
    assert!(told.iter().all(|known| usize::from(known.least) <= known.found && known.found >= 20));
    assert_eq!(told[3].positions, found.positions());
}

/// More work never makes an answer worse.
#[test]
fn more_work_brings_both_ends_together() {
    let mut generator = random::seeded(7);
    for _ in 0..3 {
        let state = random::state3(&mut generator);
        let answers = [0, 20_000, 400_000].map(|most| optimum(&state, most, &mut |_| true).unwrap());
        assert!(answers.windows(2).all(|two| two[0].least() <= two[1].least()));
        assert!(answers.windows(2).all(|two| two[0].turns().len() >= two[1].turns().len()));
        assert!(answers.iter().all(|answer| usize::from(answer.least()) <= answer.turns().len()));
    }
}

#[test]
fn other_sizes_are_refused() {
    let refused = optimum(&State::solved(Size::TWO), 1, &mut |_| true);
    assert_eq!(refused, Err(Solve3Error::WrongSize(Size::TWO)));
    let solved = optimum(&State::solved(Size::THREE), 0, &mut |_| true).unwrap();
    assert!(solved.is_proven() && solved.turns().is_empty());
}
