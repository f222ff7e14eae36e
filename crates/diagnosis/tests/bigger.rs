//! Attempts on bigger puzzles: what slips lead to is seen by colours only, and told as what would look so.

use blind::{Conventions, Solver};
use cube::{Facelets, Orbit, Size, State, Turn};
use diagnosis::{Begun, Catalogue, Depth, Diagnosis, Inquiry, Observed, Plan, WhyError, why};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

/// A scramble of turns of any layers.
fn scramble(size: Size, rng: &mut ChaCha8Rng) -> Vec<Turn> {
    let turns: Vec<Turn> = Turn::all(size).filter(|turn| !turn.is_rotation()).collect();
    (0..40).map(|_| turns[rng.random_range(0..turns.len())]).collect()
}

/// As somebody reads the colours off: which of four centres is which is lost.
fn as_seen(state: &State) -> State {
    let text = state.facelets().to_string();
    text.parse::<Facelets>().expect("facelets").state().expect("reachable")
}

fn told(plan: &Plan<'_>, outcome: State) -> Diagnosis {
    let catalogue = Catalogue::default();
    let inquiry = Inquiry { catalogue: &catalogue, depth: Depth::Two, answers: &[], most: 20 };
    why(plan, &Observed::State(Box::new(outcome)), &inquiry, &mut |_| true).expect("a diagnosis")
}

/// Played from the solved puzzle, every explanation looks as what was seen.
fn all_look_so(diagnosis: &Diagnosis, seen: &State) {
    for explanation in &diagnosis.explanations {
        let turns = [explanation.scrambled(), explanation.rotated(), explanation.played()].concat();
        assert!(State::solved(seen.size()).after(&turns).looks_like(seen));
    }
}

#[test]
fn one_turn_left_out_or_made_otherwise_is_told() {
    let mut rng = ChaCha8Rng::seed_from_u64(11);
    let mut first = 0;
    for (size, attempts) in [(4, 12), (5, 4)] {
        let size = Size::new(size).expect("a size");
        let solver = Solver::new(size, Conventions::default());
        for _ in 0..attempts {
            let plan = Plan::new(Begun::Scramble(scramble(size, &mut rng)), None, &solver).expect("a plan");
            let mut turns = plan.turns();
            let at = rng.random_range(40..turns.len());
            if rng.random_bool(0.5) {
                turns.remove(at);
            } else {
                turns[at] = turns[at].inverse();
            }
            let outcome = as_seen(&State::solved(size).after(&turns));
            let diagnosis = told(&plan, outcome);
            all_look_so(&diagnosis, &outcome);
            let best = &diagnosis.explanations[0];
            assert!(!diagnosis.broken_off && best.weight() > 0.0);
            // Half turns made backwards are half turns: then all went as planned.
            first += usize::from(best.slips().len() <= 1);
        }
    }
    assert!(first >= 15, "{first} of 16");
}

#[test]
fn two_slips_of_an_attempt_are_met_from_both_ends() {
    let mut rng = ChaCha8Rng::seed_from_u64(12);
    let four = Size::new(4).expect("a size");
    let solver = Solver::new(four, Conventions::default());
    for _ in 0..6 {
        let plan = Plan::new(Begun::Scramble(scramble(four, &mut rng)), None, &solver).expect("a plan");
        let mut turns = plan.turns();
        let one = rng.random_range(40..turns.len() / 2);
        let other = rng.random_range(turns.len() / 2..turns.len());
        turns.remove(other);
        turns.remove(one);
        let outcome = as_seen(&State::solved(four).after(&turns));
        let diagnosis = told(&plan, outcome);
        all_look_so(&diagnosis, &outcome);
        assert!(diagnosis.explanations.iter().any(|explanation| explanation.slips().len() <= 2));
    }
}

#[test]
fn what_went_as_planned_and_what_is_not_known_whole() {
    let mut rng = ChaCha8Rng::seed_from_u64(13);
    let four = Size::new(4).expect("a size");
    let solver = Solver::new(four, Conventions::default());
    let plan = Plan::new(Begun::Scramble(scramble(four, &mut rng)), None, &solver).expect("a plan");
    let diagnosis = told(&plan, State::solved(four));
    assert!(diagnosis.plan_solves && diagnosis.explanations[0].slips().is_empty());
    let catalogue = Catalogue::default();
    let inquiry = Inquiry { catalogue: &catalogue, depth: Depth::Two, answers: &[], most: 20 };
    let refused = why(&plan, &Observed::counts(&[(Orbit::Corner, 2)]), &inquiry, &mut |_| true);
    assert_eq!(refused, Err(WhyError::Size(four)));
}
