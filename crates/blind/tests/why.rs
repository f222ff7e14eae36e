//! Each slip of the catalogue is found wherever it is made, and every explanation gives what was observed when it is
//! played. Attempts come from the simulator, which shares no code with the search.

#[path = "../benches/accuracy/attempt.rs"]
mod attempt;

use attempt::{Attempt, Drawn, scramble};
use blind::{
    Answer, Ask, Begun, ByHand, Catalogue, Change, Conventions, Depth, Diagnosis, Inquiry, Method, Observed,
    Plan, SlipKind, Stage, WhyError, why, why_by_hand,
};
use cube::{Algorithm, Facelets, Orbit, Rotation, Size, State, Turn};
use proptest::prelude::*;
use rand::SeedableRng;
use rand_chacha::ChaCha8Rng;

fn turns(written: &str, size: Size) -> Vec<Turn> {
    Algorithm::parse(written, size).unwrap().flatten()
}

fn diagnosis(plan: &Plan, observed: &Observed, depth: Depth, answers: &[Answer]) -> Diagnosis {
    let catalogue = Catalogue::default();
    let inquiry = Inquiry { catalogue: &catalogue, depth, answers, most: 20 };
    why(plan, observed, &inquiry, &mut |_| true).unwrap()
}

fn plan(scramble: &[Turn], size: Size) -> Plan {
    let conventions = Conventions::default();
    let method = Method::new(size, &conventions).unwrap();
    Plan::new(Begun::Scramble(scramble.to_vec()), size, None, &conventions, &method).unwrap()
}

fn example() -> Plan {
    plan(&turns("D2 F' R2 B U2 L' D B2 R F U'", Size::THREE), Size::THREE)
}

/// Every explanation, when played, gives what was observed.
fn check_played(plan: &Plan, diagnosis: &Diagnosis, seen: &State) {
    for explanation in &diagnosis.explanations {
        let state =
            plan.start().after(&explanation.scrambled).after(&explanation.rotated).after(&explanation.played);
        assert_eq!(state, *seen, "{:?}", explanation.slips);
        assert_eq!(explanation.passes.len(), explanation.slips.len() + 1);
        assert_eq!(explanation.passes[0], plan.outcome());
        assert!(explanation.weight > 0.0 && explanation.weight <= 1.0 + 1e-9);
        assert!(explanation.ways > explanation.alike.len());
    }
    assert!(diagnosis.explanations.windows(2).all(|pair| pair[0].weight >= pair[1].weight));
}

fn held(state: &State) -> State {
    state.after(state.core().inverse().turns())
}

/// Whether the first slip alone explains it, in the way that the true one acts.
fn found_first(diagnosis: &Diagnosis, seen: &State) -> bool {
    let first = &diagnosis.explanations[0];
    first.slips.len() == 1 && held(&first.passes[1]) == held(seen)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(6))]

    #[test]
    fn each_slip_of_the_catalogue_is_found_wherever_it_is_made(seed: u64) {
        let mut rng = ChaCha8Rng::seed_from_u64(seed);
        let conventions = Conventions::default();
        let method = Method::new(Size::THREE, &conventions).unwrap();
        let catalogue = Catalogue::default();
        for kind in SlipKind::ALL {
            let attempt = Attempt::new(scramble(&mut rng), &conventions, &method);
            let Some(drawn) = attempt.draw_kind(kind, &[], &catalogue, &mut rng) else { continue };
            let seen = attempt.outcome(&[&drawn]).unwrap();
            if held(&seen).is_solved() {
                continue;
            }
            let plan = plan(&attempt.scramble, Size::THREE);
            let diagnosis = diagnosis(&plan, &Observed::State(Box::new(seen)), Depth::Two, &[]);
            prop_assert_eq!(drawn.kind, kind);
            prop_assert!(found_first(&diagnosis, &seen), "{:?}", drawn);
            let first = &diagnosis.explanations[0];
            let named = |slips: &[blind::Slip]| slips.iter().any(|slip| slip.kind == kind);
            let all_told = first.ways == first.alike.len() + 1;
            prop_assert!(!all_told || named(&first.slips) || first.alike.iter().any(|slips| named(slips)), "{:?}", drawn);
            check_played(&plan, &diagnosis, &seen);
        }
    }

    #[test]
    fn every_explanation_of_two_slips_gives_what_was_observed(seed: u64, hold in 0..24usize) {
        let mut rng = ChaCha8Rng::seed_from_u64(seed);
        let conventions = Conventions::default();
        let method = Method::new(Size::THREE, &conventions).unwrap();
        for _ in 0..6 {
            let attempt = Attempt::new(scramble(&mut rng), &conventions, &method);
            let drawn = attempt.draw(2, &Catalogue::default().evened(), &mut rng);
            let all: Vec<&Drawn> = drawn.iter().collect();
            let Some(seen) = attempt.outcome(&all) else { continue };
            // However the puzzle is held afterwards.
            let seen = seen.after(Rotation::all().nth(hold).unwrap().turns());
            let plan = plan(&attempt.scramble, Size::THREE);
            let diagnosis = diagnosis(&plan, &Observed::State(Box::new(seen)), Depth::Two, &[]);
            check_played(&plan, &diagnosis, &seen);
        }
    }

    #[test]
    fn what_is_known_in_part_is_kept_to(seed: u64) {
        let mut rng = ChaCha8Rng::seed_from_u64(seed);
        let conventions = Conventions::default();
        let method = Method::new(Size::THREE, &conventions).unwrap();
        let attempt = Attempt::new(scramble(&mut rng), &conventions, &method);
        let drawn = attempt.draw(1, &Catalogue::default(), &mut rng);
        let seen = held(&attempt.outcome(&[&drawn[0]]).unwrap());
        prop_assume!(!seen.is_solved());
        let unsolved = |state: &State, orbit: Orbit| {
            orbit.all_pieces().map(|piece| orbit.reference(piece)).filter(|&place| state.at(orbit, place) != place).count()
        };
        let counts = [Orbit::Corner, Orbit::Midge].map(|orbit| (orbit, unsolved(&seen, orbit)));
        let plan = plan(&attempt.scramble, Size::THREE);
        let diagnosis = diagnosis(&plan, &Observed::Counts(counts.to_vec()), Depth::Two, &[]);
        prop_assert!(!diagnosis.explanations.is_empty());
        for explanation in &diagnosis.explanations {
            let outcome = held(explanation.passes.last().unwrap());
            for (orbit, count) in counts {
                prop_assert_eq!(unsolved(&outcome, orbit), count);
            }
        }
    }
}

#[test]
fn three_slips_are_found_when_asked_for() {
    // A 2x2 with three turns forgotten, far apart.
    let plan = plan(&turns("R U' F2 R' U F' U2 R F'", Size::TWO), Size::TWO);
    let mut made = plan.turns();
    for at in [90, 60, 30] {
        made.remove(at);
    }
    let seen = State::solved(Size::TWO).after(&made);
    let observed = Observed::State(Box::new(seen));
    let diagnosis = diagnosis(&plan, &observed, Depth::Three, &[]);
    check_played(&plan, &diagnosis, &seen);
    assert!(diagnosis.explanations.iter().any(|explanation| explanation.slips.len() == 3));
    assert!(!diagnosis.broken_off);
    let catalogue = Catalogue::default();
    let inquiry = Inquiry { catalogue: &catalogue, depth: Depth::Three, answers: &[], most: 5 };
    let mut calls = 0;
    let broken = why(&plan, &observed, &inquiry, &mut |_| {
        calls += 1;
        calls < 3
    })
    .unwrap();
    assert!(broken.broken_off && calls == 3);
}

#[test]
fn an_attempt_that_went_as_planned_needs_no_slip() {
    let plan = example();
    assert_eq!(plan.outcome().solved_hold(), Some(Rotation::NONE));
    let diagnosis = diagnosis(&plan, &Observed::State(Box::new(plan.outcome())), Depth::Two, &[]);
    assert!(diagnosis.explanations[0].slips.is_empty() && diagnosis.plan_solves);
    assert_eq!((diagnosis.explanations.len(), diagnosis.ambiguity), (1, 1));
}

#[test]
fn a_memo_that_was_carried_out_as_written_is_the_cause_itself() {
    let conventions = Conventions::default();
    let method = Method::new(Size::THREE, &conventions).unwrap();
    let scramble = turns("D2 F' R2 B U2 L' D B2 R F U'", Size::THREE);
    let mut memo = example().memo().to_vec();
    memo[0].1.pop();
    let plan = Plan::new(Begun::Scramble(scramble), Size::THREE, Some(memo), &conventions, &method).unwrap();
    let diagnosis = diagnosis(&plan, &Observed::State(Box::new(plan.outcome())), Depth::Two, &[]);
    assert!(!diagnosis.plan_solves && diagnosis.explanations[0].slips.is_empty());
}

#[test]
fn answers_bring_what_they_fit_to_the_front() {
    let plan = example();
    let seen = State::solved(Size::THREE).after(&plan.turns()[..plan.turns().len() - 40]);
    let observed = Observed::Counts(vec![(Orbit::Corner, 0), (Orbit::Midge, 3)]);
    let before = diagnosis(&plan, &observed, Depth::Two, &[]);
    assert!(!before.questions.is_empty() && before.questions.len() <= 3);
    assert!(
        before.questions.iter().all(|question| question.information > 0.0 && question.information <= 1.0)
    );
    assert!(before.ambiguity >= 1);
    let share = |diagnosis: &Diagnosis| -> f64 {
        let recalled = |explanation: &&blind::Explanation| {
            explanation.slips.iter().any(|slip| slip.kind.stage() == Stage::Recall)
        };
        diagnosis.explanations.iter().filter(recalled).map(|explanation| explanation.weight).sum()
    };
    let answer = |yes: bool| Answer { ask: Ask::Stage(Stage::Recall), yes };
    let yes = diagnosis(&plan, &observed, Depth::Two, &[answer(true)]);
    let no = diagnosis(&plan, &observed, Depth::Two, &[answer(false)]);
    assert!(share(&yes) > share(&before) && share(&before) > share(&no));
    assert!(!held(&seen).is_solved());
}

#[test]
fn pieces_told_exactly_are_as_good_as_the_whole_state() {
    let plan = example();
    let mut made = plan.turns();
    let at = made.len() - 3;
    made[at] = made[at].inverse();
    let seen = State::solved(Size::THREE).after(&made);
    let whole = diagnosis(&plan, &Observed::State(Box::new(seen)), Depth::Two, &[]);
    // Read off as a trace reads it: at each place, what belongs where.
    let named = held(&seen);
    let mut items: Vec<String> = Vec::new();
    for orbit in [Orbit::Corner, Orbit::Midge] {
        let mut met = Vec::new();
        for first in orbit.all_pieces().map(|piece| orbit.reference(piece)) {
            if met.contains(&orbit.piece(first)) || named.at(orbit, first) == first {
                continue;
            }
            let mut names = Vec::new();
            let mut place = first;
            loop {
                met.push(orbit.piece(place));
                names.push(orbit.name(place));
                place = named.at(orbit, place);
                if orbit.piece(place) == orbit.piece(first) {
                    break;
                }
            }
            if place != first {
                names.push(orbit.name(place));
            }
            items.push(names.join(">"));
        }
    }
    let read = formats::observed::read(&items.join("; "));
    if items.iter().all(|item| item.matches('>').count() > 1) {
        let told = diagnosis(&plan, &read.unwrap(), Depth::Two, &[]);
        assert_eq!(told.explanations[0].slips, whole.explanations[0].slips);
    }
}

#[test]
fn what_is_done_by_hand_is_an_explanation_of_its_own() {
    let plan = example();
    let catalogue = Catalogue::default();
    let inquiry = Inquiry { catalogue: &catalogue, depth: Depth::Two, answers: &[], most: 10 };
    // Solved, but for the corner at UFR turned in its place.
    let twisted = |state: &State| -> Facelets {
        let mut seen = state.facelets();
        let place = Orbit::Corner.sticker("UFR").unwrap();
        let cells: Vec<_> = Orbit::Corner
            .stickers_from(place)
            .map(|sticker| (sticker.face(), Facelets::cell_of(Size::THREE, Orbit::Corner, sticker)))
            .collect();
        let colours: Vec<_> =
            cells.iter().map(|&(face, (row, column))| seen.get(face, row, column).unwrap()).collect();
        for (at, &(face, (row, column))) in cells.iter().enumerate() {
            seen.set(face, row, column, colours[(at + 1) % 3]);
        }
        seen
    };
    let place = Orbit::Corner.sticker("UFR").unwrap();
    let found = why_by_hand(&plan, &twisted(&plan.outcome()), &inquiry).unwrap().unwrap();
    assert!(found.fault.physical.is_some());
    let first = &found.explanations[0];
    assert!(matches!(first.by_hand, ByHand::Twisted { place: at, .. } if at == place));
    assert!(first.explanation.slips.is_empty());
    // A turn forgotten besides.
    let made = plan.turns();
    let seen = State::solved(Size::THREE).after(&made[..made.len() - 1]);
    let found = why_by_hand(&plan, &twisted(&seen), &inquiry).unwrap().unwrap();
    let left_out = |explanation: &blind::HandExplanation| {
        explanation
            .explanation
            .slips
            .iter()
            .any(|slip| matches!(slip.change, Change::Turn { made: None, .. }))
    };
    assert!(found.explanations.iter().any(left_out));
    assert_eq!(why_by_hand(&plan, &seen.facelets(), &inquiry), Ok(None));
}

#[test]
fn another_size_is_refused() {
    let plan = example();
    let catalogue = Catalogue::default();
    let inquiry = Inquiry { catalogue: &catalogue, depth: Depth::Two, answers: &[], most: 10 };
    let seen = Observed::State(Box::new(State::solved(Size::TWO)));
    assert_eq!(
        why(&plan, &seen, &inquiry, &mut |_| true),
        Err(WhyError::OtherSize { planned: Size::THREE, seen: Size::TWO })
    );
}

#[test]
fn what_turning_cannot_leave_was_done_by_hand() {
    // An odd number of flipped edges cannot come from turning.
    let catalogue = Catalogue::default();
    let inquiry = Inquiry { catalogue: &catalogue, depth: Depth::Two, answers: &[], most: 10 };
    let flipped = formats::observed::read("UF flipped").unwrap();
    assert!(matches!(why(&example(), &flipped, &inquiry, &mut |_| true), Err(WhyError::Unreachable(_))));
    let seen = flipped.facelets(Size::THREE, Rotation::NONE).unwrap();
    let found = why_by_hand(&example(), &seen, &inquiry).unwrap().unwrap();
    assert!(
        matches!(found.explanations[0].by_hand, ByHand::Flipped { place } if Orbit::Midge.name(place) == "UF")
    );
}
