//! Counting over many states, against sums made plainly here; cases of three pieces, and what is read off conventions.

use blind::compare::{Measure, Paired, Spread, outcome};
use blind::{Conventions, CycleCase, LONGEST_MEMO, Letters, Solver, UnknownLetter, solved_pieces};
use cube::{Algorithm, Face, Orbit, Size, State, Sticker};
use proptest::prelude::*;

fn spread(values: &[u32]) -> Spread {
    let mut spread = Spread::default();
    for &value in values {
        spread.add(value);
    }
    spread
}

proptest! {
    #[test]
    fn a_spread_is_what_was_counted(
        values in prop::collection::vec(0..40u32, 1..60),
        more in prop::collection::vec(0..90u32, 0..30),
        share in 0.01..1.0f64,
        width in 1..9u32,
    ) {
        let mut both = spread(&values);
        both.merge(&spread(&more));
        let mut sorted = [values, more].concat();
        prop_assert_eq!(&both, &spread(&sorted));
        sorted.sort_unstable();
        prop_assert_eq!(both.ends(), (sorted[0], sorted[sorted.len() - 1]));
        let mean = f64::from(sorted.iter().sum::<u32>()) / sorted.len() as f64;
        prop_assert!((both.mean() - mean).abs() < 1e-9);
        let least = sorted.iter().copied().find(|&value| {
            let reached = sorted.iter().filter(|&&other| other <= value).count();
            reached as f64 >= share * sorted.len() as f64
        });
        prop_assert_eq!(Some(both.quantile(share)), least);
        let (first, counts) = both.ranges(width);
        prop_assert_eq!(first, sorted[0] / width * width);
        for (at, count) in counts.iter().enumerate() {
            let from = first + at as u32 * width;
            let within = sorted.iter().filter(|&&value| (from..from + width).contains(&value)).count();
            prop_assert_eq!(*count, within as u64);
        }
        prop_assert_eq!(counts.iter().sum::<u64>(), sorted.len() as u64);
    }
}

#[test]
fn nothing_counted_has_no_mean_and_no_interval() {
    assert!(Spread::default().mean().abs() < 1e-12);
    assert_eq!((Spread::default().ends(), Spread::default().quantile(0.5)), ((0, 0), 0));
    let mut paired = Paired::default();
    for (count, difference) in [3, 5, 7].into_iter().enumerate() {
        assert_eq!(paired.difference().is_some(), count >= 2);
        paired.add(difference);
    }
    assert!((paired.difference().unwrap().mean - 5.0).abs() < 1e-12);
}

#[test]
fn an_outcome_counts_the_letters_and_the_algorithms_that_are_made() {
    let solver = Solver::new(Size::THREE, Conventions::default());
    let scramble = Algorithm::parse("D2 F' R2 B U2 L' D B2 R F U'", Size::THREE).unwrap();
    let state = State::solved(Size::THREE).after(&scramble.flatten());
    let memo = solver.memo(&state).unwrap();
    let plan = solver.plan(&state, &memo).unwrap();
    let measured = outcome(&state, &solver).unwrap();
    let of = |measure: Measure| measured[Measure::ALL.iter().position(|&other| other == measure).unwrap()];
    // One-swap makes an algorithm for each letter, and one for parity.
    let parity = u32::from(memo.is_odd());
    assert_eq!(of(Measure::Letters), memo.targets().iter().map(|(_, all)| all.len() as u32).sum::<u32>());
    assert_eq!(of(Measure::Algorithms), of(Measure::Letters) + parity);
    assert_eq!(of(Measure::Moves), plan.count().slice as u32);
}

#[test]
fn cases_are_of_three_different_pieces_and_each_has_its_inverse() {
    for (orbit, buffer) in [(Orbit::Corner, "UFR"), (Orbit::Midge, "UF")] {
        let buffer = orbit.sticker(buffer).unwrap();
        let all: Vec<CycleCase> = CycleCase::all(orbit, buffer).collect();
        // Every ordered choice of two stickers on two other pieces.
        let (pieces, turns) =
            (Sticker::COUNT / orbit.stickers_per_piece() as usize, orbit.stickers_per_piece() as usize);
        assert_eq!(all.len(), (pieces - 1) * turns * (pieces - 2) * turns);
        for case in &all {
            let pieces = [case.buffer, case.first, case.second].map(|sticker| orbit.piece(sticker));
            assert!(pieces[0] != pieces[1] && pieces[0] != pieces[2] && pieces[1] != pieces[2]);
            let back = case.inverse();
            assert_eq!((back.first, back.second, back.inverse()), (case.second, case.first, *case));
            assert!(all.contains(&back));
        }
    }
}

#[test]
fn solved_pieces_are_those_that_lie_at_home_or_show_the_right_colour() {
    // F and B keep 4 of the edges and none of the corners of a 3x3 where they are; both are quarter turns.
    let after =
        |text: &str, size| State::solved(size).after(&Algorithm::parse(text, size).unwrap().flatten());
    let state = after("F B", Size::THREE);
    let solved = solved_pieces(&state);
    assert_eq!(solved.len(), 4);
    assert!(solved.iter().all(|&(orbit, place)| orbit == Orbit::Midge && state.at(orbit, place) == place));
    // A face turned on a 5x5 leaves its centres where the colour is right, though others lie there.
    let five = Size::new(5).unwrap();
    let turned = after("U", five);
    let solved = solved_pieces(&turned);
    for &orbit in Orbit::of(five) {
        let here = |&&(kind, place): &&(Orbit, Sticker)| kind == orbit && place.face() == Face::U;
        let on_u = solved.iter().filter(here).count();
        assert_eq!(on_u, if orbit.looks_alike() { 4 } else { 0 }, "{orbit:?}");
    }
}

#[test]
fn colours_have_letters_only_where_these_differ() {
    let mut conventions = Conventions::default();
    assert_eq!(conventions.colour_letters().map(|letters| letters.len()), Some(6));
    conventions.colours[2].name = "Wine".to_owned();
    // White begins with the same letter.
    assert_eq!(conventions.colour_letters(), None);
    conventions.colours[2].name = "plum".to_owned();
    assert!(conventions.colour_letters().unwrap().contains(&'P'));
}

#[test]
fn letters_are_grouped_as_asked_and_read_to_the_longest() {
    let letters = Letters::default();
    let row = letters.read("HBJ").unwrap();
    assert_eq!(
        (letters.grouped(&row, true), letters.grouped(&row, false)),
        ("HB J".to_owned(), "HBJ".to_owned())
    );
    let text = "H".repeat(LONGEST_MEMO);
    assert_eq!(letters.read(&text).map(|all| all.len()), Ok(LONGEST_MEMO));
    assert_eq!(letters.read(&format!("{text}H")), Err(UnknownLetter::TooLong(LONGEST_MEMO + 1)));
}
