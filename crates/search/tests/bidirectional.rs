//! The search from both ends: shortest, by comparison with other ways to know it.

use cube::{Algorithm, Orbit, Size, State, Sticker, Turn};
use proptest::prelude::*;
use search::bidirectional::{Found, Goal, GoalError, Limits, Progress, SearchError, shortest};
use search::solve2;
use std::ops::ControlFlow;

fn on(_: Progress) -> ControlFlow<()> {
    ControlFlow::Continue(())
}

fn turns(text: &str, size: Size) -> Vec<Turn> {
    Algorithm::parse(text, size).unwrap().flatten()
}

fn faces() -> Vec<Turn> {
    Turn::faces().collect()
}

fn corner(name: &str) -> Sticker {
    Orbit::Corner.sticker(name).unwrap()
}

fn find(goal: &Goal, set: &[Turn]) -> Result<Found, SearchError> {
    shortest(goal, set, Limits::default(), &mut on)
}

#[test]
fn as_short_as_the_2x2_solver_proves() {
    let mut generator = search::random::seeded(5);
    let set = turns("U U2 U' R R2 R' F F2 F'", Size::TWO);
    for _ in 0..25 {
        let state = search::random::state2(&mut generator);
        let state = state.named_in(solve2::hold(&state).unwrap());
        let goal = Goal::new(Size::TWO).solving(&state, Orbit::Corner).unwrap();
        let found = find(&goal, &set).unwrap();
        assert_eq!(found.turns.len(), solve2::solve(&state).unwrap().len());
        assert!(state.after(&found.turns).is_solved());
    }
}

#[test]
fn two_whole_orbits() {
    let state = State::solved(Size::THREE).after(&turns("R U' F2 D B' L", Size::THREE));
    let goal = Goal::new(Size::THREE).solving(&state, Orbit::Corner).unwrap();
    let goal = goal.solving(&state, Orbit::Midge).unwrap();
    let found = find(&goal, &faces()).unwrap();
    assert_eq!(found.turns, cube::inverted(&turns("R U' F2 D B' L", Size::THREE)));
}

/// Three corners in a ring and nothing else moved take eight face turns (common practice, no source: `R' F R' B2 R F' R' B2 R2`
/// has nine, a pure commutator of outer turns eight).
#[test]
fn a_three_cycle_of_corners() {
    let wanted = State::solved(Size::THREE).after(&turns("[R D R', U]", Size::THREE));
    let goal = Goal::new(Size::THREE).solving(&wanted, Orbit::Corner).unwrap();
    let goal = goal.solving(&wanted, Orbit::Midge).unwrap();
    let found = shortest(&goal, &faces(), Limits { nodes: 1_000_000, ..Limits::default() }, &mut on).unwrap();
    assert_eq!(found.turns.len(), 8);
}

#[test]
fn centres_of_one_colour_are_alike() {
    let size = Size::new(4).unwrap();
    let orbit = Orbit::of(size)[2];
    assert!(orbit.looks_alike());
    // Half a turn of a face exchanges its centres, which look as before.
    let state = State::solved(size).after(&turns("U2", size));
    let goal = Goal::new(size).solving(&state, orbit).unwrap();
    assert_eq!(find(&goal, &faces()).unwrap().turns, []);
    let state = State::solved(size).after(&turns("Rw U2", size));
    let goal = Goal::new(size).solving(&state, orbit).unwrap();
    let set = turns("Rw Rw2 Rw' Uw Uw2 Uw' Fw Fw2 Fw' U U2 U'", size);
    assert_eq!(find(&goal, &set).unwrap().turns.len(), 2);
}

#[test]
fn what_cannot_be_done_is_proven() {
    // Two corners exchanged and nothing else: an odd permutation, which no turns of a 3x3 make.
    let [a, b] = ["UFR", "UBR"].map(corner);
    let mut goal = Goal::new(Size::THREE).sticker(Orbit::Corner, a, b).unwrap();
    goal = goal.sticker(Orbit::Corner, b, a).unwrap();
    // With U alone the ring of four corners only goes round.
    assert_eq!(find(&goal, &turns("U U2 U'", Size::THREE)), Err(SearchError::Impossible));
    assert!(find(&goal, &faces()).is_ok());
    assert_eq!(find(&goal, &[]), Err(SearchError::Impossible));
}

#[test]
fn limits_are_kept() {
    let state = State::solved(Size::THREE).after(&turns("R U F D", Size::THREE));
    let goal = Goal::new(Size::THREE).solving(&state, Orbit::Corner).unwrap();
    let short = Limits { turns: 3, ..Limits::default() };
    assert_eq!(shortest(&goal, &faces(), short, &mut on), Err(SearchError::TooLong(3)));
    let exact = Limits { turns: 4, ..Limits::default() };
    assert_eq!(shortest(&goal, &faces(), exact, &mut on).unwrap().turns.len(), 4);
    let few = Limits { nodes: 30, ..Limits::default() };
    let given_up = shortest(&goal, &faces(), few, &mut on).unwrap_err();
    assert_eq!(given_up, SearchError::OutOfNodes(Progress { nodes: 30, at_least: 2 }));
    assert_eq!(given_up.to_string(), "given up after 30 arrangements; it takes 2 turns or more");
    let mut told = Vec::new();
    let stopped = shortest(&goal, &faces(), Limits::default(), &mut |progress| {
        told.push(progress);
        if progress.at_least == 3 { ControlFlow::Break(()) } else { ControlFlow::Continue(()) }
    });
    assert!(matches!(stopped, Err(SearchError::Cancelled(Progress { at_least: 3, .. }))));
    assert_eq!(told.iter().map(|progress| progress.at_least).collect::<Vec<_>>(), [1, 2, 3]);
}

#[test]
fn goals_that_make_no_sense() {
    let three = Goal::new(Size::THREE);
    let [a, b] = ["UFR", "UBR"].map(corner);
    let wing = Orbit::of(Size::new(4).unwrap())[1];
    assert_eq!(three.clone().sticker(wing, a, b).unwrap_err().to_string(), "a 3x3 has no wings");
    let once = three.clone().sticker(Orbit::Corner, a, b).unwrap();
    assert_eq!(
        once.clone().sticker(Orbit::Corner, a, a),
        Err(GoalError::Twice { orbit: Orbit::Corner, place: a })
    );
    assert_eq!(once.sticker(Orbit::Corner, b, b), Err(GoalError::Twice { orbit: Orbit::Corner, place: b }));
    assert!(matches!(
        three.clone().alike(Orbit::Corner, &[a, b], &[a]),
        Err(GoalError::Uneven { from: 2, to: 1, .. })
    ));
    assert!(matches!(
        three.clone().solving(&State::solved(Size::TWO), Orbit::Corner),
        Err(GoalError::OtherSize { .. })
    ));
    let slice = turns("M", Size::THREE);
    let on_two = Goal::new(Size::TWO).sticker(Orbit::Corner, a, b).unwrap();
    assert!(matches!(find(&on_two, &slice), Err(SearchError::NoSuchTurn(_))));
    let seven = Size::new(7).unwrap();
    let state = State::solved(seven);
    let goal = Goal::new(seven).solving(&state, Orbit::of(seven)[2]).unwrap();
    let goal = goal.solving(&state, Orbit::of(seven)[3]).unwrap();
    assert_eq!(goal.points(), 48);
    assert_eq!(goal.solving(&state, Orbit::Corner).unwrap_err(), GoalError::TooMany(49));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]
    /// Iterative deepening over all sequences is slow and plain: the two must agree.
    #[test]
    fn as_short_as_trying_all(from in prop::sample::subsequence((0..24u8).collect::<Vec<_>>(), 2), made in prop::collection::vec(0..9_usize, 0..4)) {
        let set = turns("R R2 R' U U2 U' M M2 M'", Size::THREE);
        let made: Vec<Turn> = made.into_iter().map(|at| set[at]).collect();
        let lies = State::solved(Size::THREE).after(&made).orbit(Orbit::Midge).inverse();
        let mut goal = Goal::new(Size::THREE);
        for &place in &from {
            let place = Sticker::new(place).unwrap();
            goal = goal.sticker(Orbit::Midge, place, lies.at(place)).unwrap();
        }
        let found = find(&goal, &set).unwrap();
        prop_assert!(goal.is_met_by(&found.turns));
        prop_assert!(found.turns.len() <= made.len());
        let mut sequences = vec![Vec::new()];
        for _ in 0..found.turns.len() {
            prop_assert!(sequences.iter().all(|sequence| !goal.is_met_by(sequence)));
            sequences = sequences
                .iter()
                .flat_map(|sequence| set.iter().map(|&turn| [sequence.as_slice(), &[turn]].concat()))
                .collect();
        }
    }
}
