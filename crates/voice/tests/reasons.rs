//! The sentences, read as a coach would read them.

use blind::{Chosen, Conventions, Memo, Method, hold, reasons};
use cube::Face::{B, F, R, U};
use cube::{Algorithm, Facelets, Size, State};
use std::fmt::Write;
use voice::{Language, Voice};

fn told(scramble: &str, size: Size, language: Language) -> String {
    let conventions = Conventions::default();
    let method = Method::new(size, &conventions).unwrap();
    let turns = Algorithm::parse(scramble, size).unwrap().flatten();
    let held = hold(&State::solved(size).after(&turns), &conventions);
    let memo = Memo::new(&held.state, &conventions, &method);
    let voice = Voice::new(language);
    let mut text = String::new();
    for trace in memo.parts() {
        let letters = &conventions.kind(trace.orbit()).letters;
        let _ = writeln!(text, "{}: {}", voice.kinds(trace.orbit()), letters.grouped(&trace.targets(), true));
        for (step, reason) in trace.steps().iter().zip(reasons(trace, Chosen::First)) {
            let _ =
                writeln!(text, "{} {}", letters.of(step.target), voice.reason(&reason, trace, &conventions));
        }
        text += &voice.finish(trace, &conventions);
        text += "\n";
    }
    text + &voice.parity(&memo, method.parity().is_some())
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
