//! A memo is right if it solves, however it was found; if it does not, the slips are named where they are.

use blind::{Action, Conventions, Solver, Trace, UnknownLetter, breaks_by_letter};
use cube::{Algorithm, Amount, Face, Orbit, Size, State, Sticker, Turn};
use diagnosis::{How, MemoError, MemoFault, check_letters, check_memo, check_moves};
use proptest::prelude::*;

fn turns(longest: usize) -> impl Strategy<Value = Vec<Turn>> {
    let turn =
        (0..6usize, 0..3usize).prop_map(|(face, amount)| Turn::face(Face::ALL[face], Amount::ALL[amount]));
    proptest::collection::vec(turn, 0..longest)
}

fn state(size: Size, turns: &[Turn]) -> State {
    State::solved(size).after(turns)
}

fn sticker(orbit: Orbit, name: &str) -> Sticker {
    orbit.sticker(name).unwrap()
}

/// Any memo that a solver may come to: each cycle broken at any sticker of any unsolved piece.
fn any_valid(state: &State, orbit: Orbit, buffer: Sticker, order: &[Sticker]) -> Vec<Sticker> {
    let mut breaks = breaks_by_letter(&blind::Letters::default());
    breaks.order = std::array::from_fn(|at| order[at]);
    Trace::new(orbit, state.orbit(orbit), buffer, &breaks).unwrap().targets()
}

fn any_order() -> impl Strategy<Value = Vec<Sticker>> {
    Just(Sticker::all().collect::<Vec<_>>()).prop_shuffle()
}

/// Carried out with the moves of the method: the brute way to know whether a memo is right.
fn solves(state: &State, letters: &[Sticker], solver: &Solver) -> bool {
    solver.actions(&[(Orbit::Corner, letters.to_vec())]).is_ok_and(|actions| {
        state.after(&actions.iter().flat_map(Action::turns).collect::<Vec<_>>()).is_solved()
    })
}

fn solver(size: Size) -> Solver {
    Solver::new(size, Conventions::default())
}

proptest! {
    #[test]
    fn every_valid_memo_is_accepted(scramble in turns(30), order in any_order()) {
        let solver = solver(Size::THREE);
        let state = state(Size::THREE, &scramble);
        prop_assume!(!state.is_solved());
        let memo: Vec<_> = Orbit::of(Size::THREE)
            .iter()
            .map(|&orbit| (orbit, any_valid(&state, orbit, solver.conventions().kind(orbit).buffer, &order)))
            .collect();
        let check = check_memo(&state, &memo, None, &solver).unwrap();
        prop_assert!(check.right());
        prop_assert!(check.outcome.unwrap().is_solved());
        prop_assert!(check.kinds.iter().all(|kind| kind.slips.is_empty() && kind.unsolved.is_empty()));
    }

    #[test]
    fn what_a_memo_leads_to_follows_what_was_noted_of_parity(scramble in turns(30), noted in any::<bool>()) {
        let solver = solver(Size::THREE);
        let state = state(Size::THREE, &scramble);
        prop_assume!(!state.is_solved());
        let memo = solver.memo(&state).unwrap().targets();
        // A quarter turn of a face moves four corners round: an odd arrangement of them.
        let odd = scramble.iter().filter(|turn| turn.amount != Amount::Half).count() % 2 == 1;
        let check = check_memo(&state, &memo, Some(noted), &solver).unwrap();
        prop_assert!(check.kinds.iter().all(|kind| kind.right));
        prop_assert_eq!(check.right(), noted == odd);
        prop_assert_eq!(check.outcome.unwrap().is_solved(), noted == odd);
    }

    #[test]
    fn on_a_2x2_a_memo_is_right_exactly_when_executing_it_solves(
        scramble in turns(12),
        order in any_order(),
        change in 0..5usize,
        at in 0..12usize,
        letter in 0..24u8,
    ) {
        let solver = solver(Size::TWO);
        let state = state(Size::TWO, &scramble);
        let buffer = solver.conventions().kind(Orbit::Corner).buffer;
        let mut memo = any_valid(&state, Orbit::Corner, buffer, &order);
        let letter = Sticker::new(letter).unwrap();
        let at = at.min(memo.len());
        match change {
            0 => {}
            1 => memo.insert(at, letter),
            // Twice the same undoes itself: unusual, and right.
            2 => { memo.insert(at, letter); memo.insert(at, letter) }
            3 if at < memo.len() => memo[at] = letter,
            _ if at < memo.len() => drop(memo.remove(at)),
            _ => memo.reverse(),
        }
        let check = check_letters(Orbit::Corner, state.orbit(Orbit::Corner), buffer, &memo);
        prop_assert_eq!(check.right, solves(&state, &memo, &solver));
        prop_assert_eq!(check.right, check.slips.is_empty());
        let own = |letter: &Sticker| Orbit::Corner.piece(*letter) == Orbit::Corner.piece(buffer);
        let unsolved = !check.unsolved.is_empty() || memo.iter().any(own);
        prop_assert_ne!(check.right, unsolved);
    }

    #[test]
    fn a_wrong_letter_is_found_where_it_is(scramble in turns(30), at in 0..12usize, letter in 0..24u8) {
        let state = state(Size::THREE, &scramble);
        let memo = solver(Size::THREE).memo(&state).unwrap();
        for trace in memo.parts() {
            let mut letters = trace.targets();
            let letter = Sticker::new(letter).unwrap();
            let Some(step) = trace.steps().get(at).filter(|step| !step.role.begins()) else { continue };
            if step.target == letter {
                continue;
            }
            letters[at] = letter;
            let check = check_letters(trace.orbit(), trace.seen(), trace.buffer(), &letters);
            prop_assert!(!check.right);
            prop_assert_eq!(check.slips[0].position, at);
            prop_assert_eq!(check.slips[0].letter, Some(letter));
            prop_assert_eq!(&check.slips[0].expected, &vec![step.target]);
            prop_assert!(check.slips.len() <= 3, "{:?}", check.slips);
        }
    }

    #[test]
    fn whatever_is_written_is_right_or_its_slips_are_named(scramble in turns(20), text in "([A-Xa-x]|\\PC){0,40}") {
        let conventions = Conventions::default();
        let state = state(Size::THREE, &scramble);
        for orbit in [Orbit::Corner, Orbit::Midge] {
            let kind = conventions.kind(orbit);
            let Ok(letters) = kind.letters.read(&text) else { continue };
            let check = check_letters(orbit, state.orbit(orbit), kind.buffer, &letters);
            prop_assert_eq!(check.right, check.slips.is_empty());
            let own = letters.iter().any(|&letter| orbit.piece(letter) == orbit.piece(kind.buffer));
            prop_assert_eq!(check.right, check.unsolved.is_empty() && !own);
            prop_assert!(check.slips.is_sorted_by_key(|slip| slip.position));
            for slip in &check.slips {
                prop_assert_eq!(slip.letter, letters.get(slip.position).copied(), "{:?}", slip);
                prop_assert!(slip.letter.is_none_or(|letter| !slip.expected.contains(&letter)), "{:?}", slip);
            }
        }
    }

    #[test]
    fn one_wrong_turn_is_found_where_it_is(scramble in turns(30), at in 0..400usize, way in 0..3usize) {
        let solver = solver(Size::THREE);
        let state = state(Size::THREE, &scramble);
        let memo = solver.memo(&state).unwrap();
        let plan = solver.plan(&state, &memo).unwrap();
        let mut moves: Vec<Turn> = plan.actions().iter().flat_map(Action::turns).collect();
        prop_assert_eq!(check_moves(&state, plan.actions(), &moves).deviation, None);
        prop_assert_eq!(check_moves(&state, plan.actions(), plan.moves()).deviation, None);
        prop_assume!(at < moves.len());
        let planned = moves[at];
        let made = match way {
            0 => Some(planned.inverse()),
            1 => Some(Turn::new(planned.block, if planned.amount == Amount::Half { Amount::Clockwise } else { Amount::Half })),
            _ => None,
        };
        prop_assume!(made != Some(planned));
        moves.splice(at..=at, made);
        let check = check_moves(&state, plan.actions(), &moves);
        prop_assert!(!check.solves);
        prop_assert_eq!(&check.outcome, &state.after(&moves));
        let deviation = check.deviation.unwrap();
        // What was made instead stands there, and with what was planned in its stead the moves solve.
        let rest = &moves[deviation.turn..];
        prop_assert!(rest.starts_with(&deviation.made));
        let mended = [&moves[..deviation.turn], &deviation.planned, &rest[deviation.made.len()..]].concat();
        prop_assert!(state.after(&mended).is_solved());
        // What is named explains the outcome with no more turns than the one that was changed.
        prop_assert!(deviation.planned.len() + deviation.made.len() <= 2, "{:?}", deviation);
        let between = plan.actions().iter().flat_map(Action::turns).skip(deviation.turn.min(at));
        let commute = between.take(deviation.turn.abs_diff(at)).all(|turn| turn.block.axis() == planned.block.axis());
        prop_assert!(commute || deviation.planned.len() + deviation.made.len() == 1, "{} for {at}", deviation.turn);
    }
}

/// The worked example of a 2x2 memo that the tests of the trace share: L C B O B K V with buffer LUB.
fn example() -> (State, Sticker) {
    let turns = Algorithm::parse("R U' F2 R' U F' U2 R F'", Size::TWO).unwrap().flatten();
    (state(Size::TWO, &turns), sticker(Orbit::Corner, "LUB"))
}

fn faults(memo: &str) -> Vec<(&'static str, usize, String)> {
    let (state, buffer) = example();
    let letters = blind::Letters::default();
    let memo = letters.read(memo).unwrap();
    let check = check_letters(Orbit::Corner, state.orbit(Orbit::Corner), buffer, &memo);
    check
        .slips
        .iter()
        .map(|slip| {
            let mut expected = letters.spell(&slip.expected);
            expected.truncate(6);
            (slip.fault.name(), slip.position, expected)
        })
        .collect()
}

#[test]
fn each_slip_has_its_name() {
    insta::assert_debug_snapshot!(
        [
            "lc bo bk v",
            "LCBNBKV",
            "LCBOBK",
            "LCBOBKVO",
            "LCEBOBKV",
            "LCBOBKE",
            "LBOBKV",
            "LCBOBKA",
            "LC",
            "LKBOBKV",
            "LCBOKV",
            "RCBOBKV",
        ]
        .map(|memo| (memo, faults(memo)))
    );
}

#[test]
fn one_slip_does_not_mark_all_that_follows() {
    // The wrong sticker of the second piece, and the trace followed on from there: each later letter is turned along.
    let solver = solver(Size::THREE);
    let scramble = Algorithm::parse("D2 F' R2 B U2 L' D B2 R F U'", Size::THREE).unwrap().flatten();
    let state = state(Size::THREE, &scramble);
    let memo = solver.memo(&state).unwrap();
    let trace = memo.part(Orbit::Corner).unwrap();
    let first = trace.cycles()[0].letters.clone();
    let letters: Vec<Sticker> = trace
        .targets()
        .iter()
        .enumerate()
        .map(
            |(at, &letter)| {
                if at >= 1 && first.contains(&at) { Orbit::Corner.turned(letter, 1) } else { letter }
            },
        )
        .collect();
    let check = check_letters(Orbit::Corner, trace.seen(), trace.buffer(), &letters);
    assert_eq!(check.slips.len(), 1, "{:?}", check.slips);
    assert_eq!((check.slips[0].position, &check.slips[0].fault), (1, &MemoFault::WrongSticker));
}

#[test]
fn bad_input_is_met_with_its_place() {
    let (state, _) = example();
    let solver = solver(Size::TWO);
    let letters = &solver.conventions().kind(Orbit::Corner).letters;
    assert_eq!(letters.read("LC BZ"), Err(UnknownLetter::NoLetter { column: 5, found: 'Z' }));
    let check = |memo: &[(Orbit, Vec<Sticker>)]| check_memo(&state, memo, None, &solver);
    assert_eq!(check(&[]), Err(MemoError::Empty));
    assert_eq!(
        check(&[(Orbit::Midge, Vec::new())]),
        Err(MemoError::NoSuchKind { orbit: Orbit::Midge, size: Size::TWO })
    );
}

#[test]
fn steps_are_named_when_they_are_left_out_or_not_undone() {
    let solver = solver(Size::THREE);
    let scramble = Algorithm::parse("D2 F' R2 B U2 L' D B2 R F U'", Size::THREE).unwrap().flatten();
    let state = state(Size::THREE, &scramble);
    let memo = solver.memo(&state).unwrap();
    let plan = solver.plan(&state, &memo).unwrap();
    let with_setup = |action: &Action| matches!(action, Action::Letter { setup, .. } if setup.len() == 2);
    let number = plan.actions().iter().position(with_setup).unwrap();
    let make = |change: &dyn Fn(&Action) -> Vec<Turn>| -> How {
        let moves: Vec<Turn> = plan
            .actions()
            .iter()
            .enumerate()
            .flat_map(|(at, action)| if at == number { change(action) } else { action.turns() })
            .collect();
        check_moves(&state, plan.actions(), &moves).deviation.unwrap().how
    };
    let parts = |action: &Action| match action {
        Action::Letter { setup, swap, undo, .. } => (setup.clone(), swap.clone(), undo.clone()),
        other => (Vec::new(), other.turns(), Vec::new()),
    };
    let not_undone = |action: &Action| {
        let (setup, swap, _) = parts(action);
        [setup, swap].concat()
    };
    let undone_wrong = |action: &Action| {
        let (setup, swap, _) = parts(action);
        [setup.clone(), swap, setup].concat()
    };
    let no_algorithm = |action: &Action| {
        let (setup, _, undo) = parts(action);
        [setup, undo].concat()
    };
    assert_eq!(make(&not_undone), How::NotUndone);
    assert_eq!(make(&undone_wrong), How::UndoneWrongWay);
    assert_eq!(make(&no_algorithm), How::StepLeftOut);
}

/// What lies where after letters, worked out by hand: colours only, exchanged with the buffer's.
fn colours_after(seen: &[usize; 24], buffer: usize, letters: &[usize]) -> Vec<usize> {
    let mut faces: Vec<usize> = seen.iter().map(|sticker| sticker / 4).collect();
    for &letter in letters {
        faces.swap(buffer, letter);
    }
    faces
}

fn all_right(faces: &[usize]) -> bool {
    faces.iter().enumerate().all(|(place, &colour)| place / 4 == colour)
}

/// Letters that solve centres, each chosen at random among those that do some good: mostly not the fewest.
fn some_letters(seen: &[usize; 24], buffer: usize, choose: &mut impl FnMut(usize) -> usize) -> Vec<usize> {
    let mut letters = Vec::new();
    loop {
        let faces = colours_after(seen, buffer, &letters);
        if all_right(&faces) {
            return letters;
        }
        let wrong: Vec<usize> =
            (0..24).filter(|&place| place != buffer && faces[place] != place / 4).collect();
        let fitting: Vec<usize> = wrong.iter().copied().filter(|place| place / 4 == faces[buffer]).collect();
        let from = if fitting.is_empty() { &wrong } else { &fitting };
        letters.push(from[choose(from.len())]);
    }
}

proptest! {
    #[test]
    fn letters_of_centres_are_right_where_every_face_has_its_colour(
        order in Just((0..24usize).collect::<Vec<_>>()).prop_shuffle(),
        buffer in 0..24usize,
        layers in 4..8u8,
        choices in proptest::collection::vec(any::<usize>(), 64),
        way in 0..4usize,
        at in any::<prop::sample::Index>(),
        other in 0..24usize,
    ) {
        let seen: [usize; 24] = order.try_into().unwrap();
        let mut number = 0;
        let mut choose = |count: usize| {
            number += 1;
            choices[number % choices.len()] % count
        };
        let good = some_letters(&seen, buffer, &mut choose);
        prop_assume!(!good.is_empty());
        let at = at.index(good.len());
        let mut letters = good.clone();
        match way {
            0 => {}
            1 => letters[at] = other,
            2 => drop(letters.remove(at)),
            _ => letters.insert(at, other),
        }
        let right = all_right(&colours_after(&seen, buffer, &letters)) && !letters.contains(&buffer);
        let sticker = |number: usize| Sticker::new(number as u8).unwrap();
        let perm = cube::Perm::new(seen.map(|number| number as u8)).unwrap();
        let memo: Vec<Sticker> = letters.iter().map(|&number| sticker(number)).collect();
        for &orbit in Orbit::of(Size::new(layers).unwrap()).iter().filter(|orbit| orbit.looks_alike()) {
            let check = check_letters(orbit, &perm, sticker(buffer), &memo);
            prop_assert_eq!(check.right, right);
            prop_assert_eq!(check.slips.is_empty(), right, "{:?}", check.slips);
            let wrong = colours_after(&seen, buffer, &letters);
            let unsolved = (0..24).filter(|&place| wrong[place] != place / 4).count();
            prop_assert_eq!(check.unsolved.len(), unsolved);
            if let Some(first) = check.slips.first() {
                // What was right before the slip is not blamed, and one slip is not told as many.
                prop_assert!(first.position >= at, "{} before {at}: {:?}", first.position, check.slips);
                // A letter that was no slip where it stands, but led another way, is not blamed: what no longer fits after it is.
                prop_assert!(first.position > at || check.slips.len() == 1, "{:?}", check.slips);
                prop_assert!(check.slips.len() <= 4, "{:?}", check.slips);
                // What would have been right there brings the colour in the buffer home, or begins a new part.
                let before = colours_after(&seen, buffer, &letters[..first.position]);
                let begins = before[buffer] == buffer / 4;
                for expected in &first.expected {
                    let place = expected.index();
                    prop_assert!(before[place] != place / 4 && (begins || place / 4 == before[buffer]));
                }
            }
        }
    }
}
