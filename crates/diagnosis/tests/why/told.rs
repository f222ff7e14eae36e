//! What people tell of an outcome: parts of it, pieces that are missing, kinds that were not looked at. Attempts are
//! made by simulated pupils, who share no code with the search; whether turning can lead somewhere is judged by the colours alone.

use crate::pupil::{Fault, Pupil, scramble};
use blind::{Conventions, Solver};
use cube::{Algorithm, Face, Facelets, Orbit, Rotation, Size, State, Sticker, Turn};
use diagnosis::{
    Answer, Ask, Begun, Catalogue, Depth, Diagnosis, Glimpse, Inquiry, Missing, Observed, Plan, Seen,
    Unlooked, Verdict, WhyError, explain,
};
use proptest::prelude::*;
use rand::prelude::*;
use rand_chacha::ChaCha8Rng;

const KINDS: [Orbit; 2] = [Orbit::Corner, Orbit::Midge];

fn turns(written: &str) -> Vec<Turn> {
    Algorithm::parse(written, Size::THREE).unwrap().flatten()
}

fn solver(hold: usize) -> Solver {
    let holding = Rotation::all().nth(hold).unwrap();
    Solver::new(Size::THREE, Conventions { holding, ..Conventions::default() })
}

fn told(plan: &Plan<'_>, observed: &Observed, answers: &[Answer]) -> Result<Verdict, WhyError> {
    let catalogue = Catalogue::default();
    let inquiry = Inquiry { catalogue: &catalogue, depth: Depth::Two, answers, most: 20 };
    explain(plan, observed, &inquiry, &mut |_| true)
}

fn slips(plan: &Plan<'_>, observed: &Observed) -> Diagnosis {
    match told(plan, observed, &[]) {
        Ok(Verdict::Slips(found)) => found,
        other => panic!("{observed:?}: {other:?}"),
    }
}

fn example(solver: &Solver) -> Plan<'_> {
    Plan::new(Begun::Scramble(turns("D2 F' R2 B U2 L' D B2 R F U'")), None, solver).unwrap()
}

fn sticker(orbit: Orbit, name: &str) -> Sticker {
    orbit.sticker(name).unwrap()
}

/// With the centres where a solved puzzle in the hold has them, named so that solved is the identity.
fn named(state: &State, solver: &Solver) -> State {
    let holding = solver.conventions().holding;
    state.after(state.core().inverse().then(holding).turns()).named_in(holding)
}

fn unsolved(named: &State, orbit: Orbit) -> Vec<Sticker> {
    let places = orbit.all_pieces().map(|piece| orbit.reference(piece));
    places.filter(|&place| named.at(orbit, place) != place).collect()
}

/// The unsolved pieces of a state as a trace would name them, a piece in its place as a trace to its other sticker.
fn traced(named: &State) -> Vec<Seen> {
    let mut items = Vec::new();
    for orbit in KINDS {
        let mut left = unsolved(named, orbit);
        while let Some(&first) = left.first() {
            let mut stickers = vec![first];
            let mut place = first;
            loop {
                left.retain(|&other| !orbit.same_piece(other, place));
                place = named.at(orbit, place);
                if place == first {
                    break;
                }
                stickers.push(place);
                if orbit.same_piece(place, first) {
                    break;
                }
            }
            items.push(Seen::Cycle { orbit, stickers, turning: true });
        }
    }
    items
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(12))]

    #[test]
    fn what_is_traced_is_the_whole_state(seed: u64, hold in 0..24usize) {
        let mut rng = ChaCha8Rng::seed_from_u64(seed);
        let solver = solver(hold);
        let state = State::solved(Size::THREE).after(&scramble(&mut rng));
        let named = named(&state, &solver);
        let colours = Observed::Pieces(traced(&named)).facelets(Size::THREE, solver.conventions().holding);
        let looks = State::held(Size::THREE, solver.conventions().holding).then(&named);
        prop_assert_eq!(colours, Some(looks.facelets()));
    }

    #[test]
    fn stickers_seen_in_part_are_kept_to(seed: u64, hold in 0..24usize, turned in 0..24usize, hidden in 0..54usize) {
        let mut rng = ChaCha8Rng::seed_from_u64(seed);
        let solver = solver(hold);
        let plan = Plan::new(Begun::Scramble(scramble(&mut rng)), None, &solver).unwrap();
        // A turn is left out, whatever the hold.
        let mut made = plan.turns();
        made.remove(rng.random_range(0..made.len()));
        let seen = State::solved(Size::THREE).after(&made);
        prop_assume!(seen.solved_hold().is_none());
        let seen = seen.after(Rotation::all().nth(turned).unwrap().turns()).facelets();
        let mut known: Vec<Option<Face>> = seen.colours().iter().copied().map(Some).collect();
        let mut cells: Vec<usize> = (0..54).collect();
        cells.shuffle(&mut rng);
        for &cell in &cells[..hidden] {
            known[cell] = None;
        }
        let glimpse = Glimpse::new(Size::THREE, known.clone()).unwrap();
        let found = slips(&plan, &Observed::Stickers(Box::new(glimpse)));
        // What happened is one slip, so something is found, and all of it shows the known colours in some hold.
        prop_assert!(!found.explanations.is_empty());
        for explanation in &found.explanations {
            let outcome = explanation.passes().last().unwrap();
            let shows = |hold: Rotation| {
                let colours = outcome.after(hold.turns()).facelets();
                let mut both = known.iter().zip(colours.colours());
                both.all(|(known, colour)| known.is_none_or(|known| known == *colour))
            };
            prop_assert!(Rotation::all().any(shows), "{:?}", explanation.slips());
        }
    }

    #[test]
    fn a_piece_is_missing_just_where_no_colours_can_be_reached(seed: u64, keep in 1..6usize, unlooked: bool) {
        let mut rng = ChaCha8Rng::seed_from_u64(seed);
        let solver = solver(0);
        let state = named(&State::solved(Size::THREE).after(&scramble(&mut rng)), &solver);
        let mut items = traced(&state);
        items.shuffle(&mut rng);
        items.truncate(keep);
        let plan = example(&solver);
        // Every turning that was not looked at may be any: of it only the sum counts, so one piece more or less turned will do.
        let mut readings = vec![items.clone()];
        if unlooked && let Some(Seen::Cycle { orbit, stickers, turning }) = items.first_mut() {
            let orbit = *orbit;
            if orbit.same_piece(stickers[0], stickers[stickers.len() - 1]) {
                stickers.pop();
            }
            prop_assume!(stickers.len() > 1);
            *turning = false;
            readings = (0..orbit.stickers_per_piece())
                .map(|turn| {
                    let mut reading = items.clone();
                    if let Seen::Cycle { stickers, turning, .. } = &mut reading[0] {
                        *turning = true;
                        if turn > 0 {
                            stickers.push(orbit.turned(stickers[0], turn));
                        }
                    }
                    reading
                })
                .collect();
        }
        let reachable = |reading: &Vec<Seen>| {
            let colours = Observed::Pieces(reading.clone()).facelets(Size::THREE, Rotation::NONE);
            colours.unwrap().state().is_ok()
        };
        let expected = !readings.iter().any(reachable);
        let missing = matches!(told(&plan, &Observed::Pieces(items.clone()), &[]), Ok(Verdict::Missing(_)));
        prop_assert_eq!(missing, expected, "{:?}", items);
    }

    #[test]
    fn every_question_can_be_answered(seed: u64) {
        let mut rng = ChaCha8Rng::seed_from_u64(seed);
        let solver = solver(0);
        let pupil = Pupil::new(scramble(&mut rng), &solver).unwrap();
        let drawn = pupil.draw(2, &|_| 1.0, &mut rng).unwrap();
        let all: Vec<_> = drawn.iter().collect();
        let seen = pupil.outcome(&all);
        prop_assume!(seen.is_some_and(|seen| seen.solved_hold().is_none()));
        let observed = Observed::State(Box::new(seen.unwrap()));
        let plan = Plan::new(Begun::Scramble(pupil.scramble.clone()), None, &solver).unwrap();
        for question in slips(&plan, &observed).questions {
            prop_assert!(told(&plan, &observed, &[Answer { ask: question.ask, yes: true }]).is_ok(), "{}", question.ask);
        }
    }

    #[test]
    fn one_slip_told_by_its_places_is_searched_whole_and_found(seed: u64) {
        let mut rng = ChaCha8Rng::seed_from_u64(seed);
        let solver = solver(0);
        let pupil = Pupil::new(scramble(&mut rng), &solver).unwrap();
        let drawn = pupil.draw_one(Fault::LetterAny, &[], &mut rng);
        prop_assume!(drawn.is_some());
        let seen = named(&pupil.outcome(&[&drawn.unwrap()]).unwrap(), &solver);
        let items: Vec<Seen> = traced(&seen)
            .into_iter()
            .map(|item| match item {
                Seen::Cycle { orbit, mut stickers, .. } => {
                    let closed = stickers.len() > 2 && orbit.same_piece(stickers[0], stickers[stickers.len() - 1]);
                    stickers.truncate(stickers.len() - usize::from(closed));
                    Seen::Cycle { orbit, stickers, turning: false }
                }
                other => other,
            })
            .collect();
        prop_assume!(!items.is_empty());
        let plan = Plan::new(Begun::Scramble(pupil.scramble.clone()), None, &solver).unwrap();
        let found = slips(&plan, &Observed::Pieces(items.clone()));
        let truth = |explanation: &diagnosis::Explanation| {
            named(explanation.passes().last().unwrap(), &solver) == seen
        };
        prop_assert!(found.explanations.iter().any(truth), "{:?}", items);
        // Three pieces of one kind have four turnings at most that turning can lead to, or nine.
        let few = matches!(items.as_slice(), [Seen::Cycle { orbit: Orbit::Midge, stickers, .. }] if stickers.len() == 3);
        prop_assert!(!few || found.whole);
    }
}

/// From memory: what the laws of the cube forbid.
#[test]
fn counts_that_cannot_be_are_known() {
    let solver = solver(0);
    let plan = example(&solver);
    for (corners, edges, possible) in [
        (0, 1, false),
        (1, 0, false),
        (1, 1, false),
        (2, 1, false),
        (1, 2, false),
        (0, 2, true),
        (2, 0, true),
        (2, 2, true),
        (0, 3, true),
        (3, 0, true),
        (8, 12, true),
    ] {
        let observed = Observed::counts(&[(Orbit::Corner, corners), (Orbit::Midge, edges)]);
        let missing = matches!(told(&plan, &observed, &[]), Ok(Verdict::Missing(_)));
        assert_eq!(missing, !possible, "{corners} corners, {edges} edges");
    }
    let alone =
        Seen::Turned { orbit: Orbit::Midge, sticker: sticker(Orbit::Midge, "FU"), clockwise: Some(1) };
    let missing = Missing::Turned { orbit: Orbit::Midge, alone: Some(sticker(Orbit::Midge, "FU")) };
    assert_eq!(told(&plan, &Observed::Pieces(vec![alone]), &[]), Ok(Verdict::Missing(missing)));
}

#[test]
fn a_kind_that_was_not_looked_at_is_as_planned() {
    let solver = solver(0);
    // A memo that leaves corners unsolved, and an edge's letter taken for another.
    let scramble = turns("D2 F' R2 B U2 L' D B2 R F U'");
    let mut memo = example(&solver).memo().to_vec();
    let corners = memo.iter_mut().find(|(orbit, _)| *orbit == Orbit::Corner).unwrap();
    corners.1.truncate(corners.1.len() - 2);
    let plan = Plan::new(Begun::Scramble(scramble.clone()), Some(memo.clone()), &solver).unwrap();
    assert!(plan.memo_fault().is_some() && example(&solver).memo_fault().is_none());
    let edges = &mut memo.iter_mut().find(|(orbit, _)| *orbit == Orbit::Midge).unwrap().1;
    let letters = &solver.conventions().kind(Orbit::Midge).letters;
    let other = edges.iter().position(|&target| target != letters.sticker("P").unwrap()).unwrap();
    edges[other] = letters.sticker("P").unwrap();
    let slipped = Plan::new(Begun::Scramble(scramble), Some(memo), &solver).unwrap().outcome();
    let mut seen: Vec<Seen> = traced(&named(&slipped, &solver));
    seen.retain(|item| item.orbit() == Some(Orbit::Midge));
    assert!(!seen.is_empty() && !unsolved(&named(&slipped, &solver), Orbit::Corner).is_empty());
    // Without saying so the corners would be solved, which no letter explains.
    let all = slips(&plan, &Observed::Pieces(seen.clone()));
    let by_letter = |found: &Diagnosis| {
        found.explanations.first().is_some_and(|first| {
            first.slips().len() == 1
                && named(first.passes().last().unwrap(), &solver) == named(&slipped, &solver)
        })
    };
    assert!(!by_letter(&all));
    seen.push(Seen::Unlooked { orbit: Orbit::Corner });
    let found = slips(&plan, &Observed::Pieces(seen));
    assert_eq!(found.unlooked, Unlooked::AsPlanned(vec![Orbit::Corner]));
    assert!(by_letter(&found), "{:?}", found.explanations.first());
    // Two edges exchanged cannot be with the corners as they were planned.
    let stickers = ["UF", "UR"].map(|name| sticker(Orbit::Midge, name)).to_vec();
    let exchanged = Seen::Cycle { orbit: Orbit::Midge, stickers, turning: true };
    let seen = vec![exchanged, Seen::Unlooked { orbit: Orbit::Corner }];
    let right = example(&solver);
    let found = slips(&right, &Observed::Pieces(seen));
    assert_eq!(found.unlooked, Unlooked::AnyWay(vec![Orbit::Corner]));
    assert!(!found.explanations.is_empty());
}

#[test]
fn what_cannot_be_seen_or_answered_is_refused() {
    let solver = solver(0);
    let plan = example(&solver);
    let letters = plan.memo().iter().find(|(orbit, _)| *orbit == Orbit::Corner).unwrap().1.len();
    let observed = Observed::counts(&[(Orbit::Corner, 3)]);
    let answer = |ask: Ask| told(&plan, &observed, &[Answer { ask, yes: true }]);
    assert!(answer(Ask::Letter(Orbit::Corner, letters - 1)).is_ok());
    let ask = Ask::Letter(Orbit::Corner, 54);
    assert_eq!(answer(ask), Err(WhyError::NothingToAnswer { ask, letters }));
    let wing = Orbit::ALL.into_iter().find(|orbit| !KINDS.contains(orbit)).unwrap();
    assert_eq!(answer(Ask::Kind(wing)), Err(WhyError::NothingToAnswer { ask: Ask::Kind(wing), letters: 0 }));
    // White beside yellow on one edge, and two centres of one colour.
    let solved = State::solved(Size::THREE).facelets();
    let with = |changes: &[(Face, u8, u8, Face)]| {
        let mut seen: Facelets = solved.clone();
        for &(face, row, column, colour) in changes {
            seen.set(face, row, column, colour);
        }
        let mut known: Vec<_> = seen.colours().iter().copied().map(Some).collect();
        // At least one sticker is not known.
        known[53] = None;
        told(&plan, &Observed::Stickers(Box::new(Glimpse::new(Size::THREE, known).unwrap())), &[])
    };
    let place = sticker(Orbit::Midge, "UF");
    assert_eq!(with(&[(Face::F, 0, 1, Face::D)]), Err(WhyError::NoPiece { orbit: Orbit::Midge, place }));
    assert_eq!(with(&[(Face::F, 1, 1, Face::U)]), Err(WhyError::NoHold));
}

#[test]
fn a_wrong_memo_and_a_slip_of_the_hands_are_both_found() {
    let solver = solver(0);
    let scramble = turns("D2 F' R2 B U2 L' D B2 R F U'");
    let mut memo = example(&solver).memo().to_vec();
    let last = memo[0].1.len() - 1;
    memo[0].1.swap(last - 1, last);
    let plan = Plan::new(Begun::Scramble(scramble.clone()), Some(memo), &solver).unwrap();
    let mut made = plan.turns();
    made.remove(made.len() - 20);
    let seen = State::solved(Size::THREE).after(&made);
    let fault = plan.memo_fault().unwrap();
    assert!(!fault.right());
    let found = slips(&plan, &Observed::State(Box::new(seen)));
    assert_eq!(found.explanations[0].slips().len(), 1);
    assert!(!found.plan_solves);
}
