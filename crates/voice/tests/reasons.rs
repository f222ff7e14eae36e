//! The sentences, read as a coach would read them.

use blind::{Conventions, HoldChoice, Letters, MethodError, MethodName, NoSolution, Solver};
use cube::Face::{B, F, R, U};
use cube::{Algorithm, Claim, Facelets, NotProven, Orbit, Size, State};
use std::fmt::Write;
use voice::{Language, Voice};

fn told(scramble: &str, size: Size, language: Language) -> String {
    let conventions = Conventions::default();
    let solver = Solver::new(size, conventions.clone());
    let turns = Algorithm::parse(scramble, size).unwrap().flatten();
    let held = solver.pick_up(&State::solved(size).after(&turns), HoldChoice::Conventions).unwrap();
    let memo = solver.memo(&held.state).unwrap();
    let voice = Voice::new(language);
    let mut text = String::new();
    for trace in memo.parts() {
        let letters = &conventions.kind(trace.orbit()).letters;
        let _ = writeln!(text, "{}: {}", voice.kinds(trace.orbit()), letters.grouped(&trace.targets(), true));
        for (step, reason) in trace.steps().iter().zip(solver.reasons(trace)) {
            let _ =
                writeln!(text, "{} {}", letters.of(step.target), voice.reason(&reason, trace, &conventions));
        }
        text += &voice.finish(trace, &conventions);
        text += "\n";
    }
    text + &voice.parity(&memo, &solver)
}

#[test]
fn a_2x2_is_explained() {
    insta::assert_snapshot!(told("R U' F2 R' U F' U2 R F'", Size::TWO, Language::English));
}

#[test]
fn a_3x3_is_explained() {
    let scramble = "D2 F' R2 B U2 L' D B2 R F U' L2 B' U R2 D' F2 L U2";
    insta::assert_snapshot!(told(scramble, Size::THREE, Language::English));
}

#[test]
fn a_3x3_is_explained_in_german() {
    let scramble = "D2 F' R2 B U2 L' D B2 R F U' L2 B' U R2 D' F2 L U2";
    insta::assert_snapshot!(told(scramble, Size::THREE, Language::German));
}

#[test]
fn wings_and_centres_are_explained() {
    let size = Size::new(4).unwrap();
    let scramble = "Rw' U Fw2 D' L2 Uw B2 R' Fw D Rw2 B Uw' L";
    insta::assert_snapshot!(told(scramble, size, Language::English));
    insta::assert_snapshot!(told(scramble, size, Language::German));
}

#[test]
fn a_centre_buffer_that_is_right_may_be_given_away() {
    // Two columns of centres are moved, the buffer at the left of U keeps its colour.
    insta::assert_snapshot!(told("r U r' U' D' l D l'", Size::new(4).unwrap(), Language::English));
}

#[test]
fn all_kinds_have_names_and_their_parity_is_told() {
    let size = Size::new(7).unwrap();
    let turns = "3Rw U 3Fw2 D' Lw B2 3Uw R' Fw D Rw2 B 3Lw' U2 3Bw Dw F' 3Dw2 L";
    let turns = Algorithm::parse(turns, size).unwrap().flatten();
    let state = State::solved(size).after(&turns);
    let solver = Solver::new(size, Conventions::default());
    let memo = solver.memo(&state).unwrap();
    let mut text = String::new();
    for language in Language::ALL {
        let voice = Voice::new(language);
        for orbit in Orbit::ALL {
            let [kind, kinds] = [voice.kind(orbit), voice.kinds(orbit)];
            assert!(!kind.starts_with("kind-") && !kinds.starts_with("kinds-"), "{kind} {kinds}");
            let _ = writeln!(text, "{kind}, {kinds}");
        }
        let _ = writeln!(text, "{}", voice.parity(&memo, &solver));
        let solved = solver.memo(&State::solved(size)).unwrap();
        let _ = writeln!(text, "{}", voice.parity(&solved, &solver));
    }
    insta::assert_snapshot!(text);
}

#[test]
fn what_cannot_be_given_is_said() {
    let numbers: Vec<String> = (1..=24).map(|number: u8| number.to_string()).collect();
    let letters = Letters::new(&numbers).unwrap();
    let unread = [letters.read("12 3-x").unwrap_err(), letters.read("12 123").unwrap_err()];
    let wing = Orbit::ALL[2];
    let claims = [
        Claim::Solution,
        Claim::Algorithm,
        Claim::Setup,
        Claim::Scramble,
        Claim::Memo,
        Claim::Condition,
        Claim::Explanation,
    ];
    let mut text = String::new();
    for language in Language::ALL {
        let voice = Voice::new(language);
        for error in &unread {
            let _ = writeln!(text, "{}", voice.unknown_letter(wing, &letters, error));
        }
        for claim in claims {
            let _ = writeln!(text, "{}", voice.not_proven(NotProven { claim }));
        }
        let mut slice = Conventions::default();
        slice.kind_mut(Orbit::Corner).method = MethodName::SliceSwap;
        let none = Solver::new(Size::THREE, slice).method().unwrap_err().clone();
        let between = MethodError::BetweenCornersAndEdges(wing);
        for error in [none.into(), between.into(), NoSolution::CentresLate] {
            let _ = writeln!(text, "{}", voice.no_solution(&error));
        }
    }
    insta::assert_snapshot!(text);
}

#[test]
fn turned_pieces_and_a_solved_buffer_are_explained() {
    // Two corners twisted and two edges flipped in their places, by known sequences (common practice, no source).
    let twisted = "(R U R' U R U2 R') (L' U' L U' L' U2 L) (M' U)4 (M U)4";
    insta::assert_snapshot!(told(twisted, Size::THREE, Language::English));
}

#[test]
fn what_turning_cannot_reach_is_explained() {
    let voice = Voice::new(Language::English);
    let solved = State::solved(Size::THREE).facelets();
    let conventions = Conventions::default();
    let said = |change: &dyn Fn(&mut Facelets)| {
        let mut seen = solved.clone();
        change(&mut seen);
        voice.unreachable(&seen.state().unwrap_err(), &conventions).join("\n")
    };
    let twisted = said(&|seen| {
        seen.set(U, 2, 2, F);
        seen.set(R, 0, 0, U);
        seen.set(F, 0, 2, R);
    });
    let flipped = said(&|seen| {
        seen.set(U, 2, 1, F);
        seen.set(F, 0, 1, U);
    });
    let misread = said(&|seen| seen.set(U, 0, 0, R));
    let exchanged = said(&|seen| {
        seen.set(F, 0, 1, B);
        seen.set(B, 0, 1, F);
    });
    insta::assert_snapshot!([twisted, flipped, misread, exchanged].join("\n\n"));
}
