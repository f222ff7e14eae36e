//! The sentences about slips, read as a coach would read them.

use blind::{Conventions, Solver};
use cube::{Algorithm, Orbit, Rotation, Size, State, Sticker, Turn};
use diagnosis::{
    ActionStep, Ask, Begun, Change, Depth, Deviation, Diagnosis, How, Inquiry, Missing, Observed,
    ParityFault, Part, Plan, Slip, SlipKind, Stage, Unlooked, check_letters, why,
};
use formats::observed::{self, Vocabulary};
use std::fmt::Write;
use voice::{Language, Voice};

fn turns(written: &str) -> Vec<Turn> {
    Algorithm::parse(written, Size::THREE).unwrap().flatten()
}

fn targets(orbit: Orbit, letters: &str) -> Vec<Sticker> {
    Conventions::default().kind(orbit).letters.read(letters).unwrap()
}

fn step(part: Part) -> ActionStep {
    ActionStep::Letter { orbit: Orbit::Corner, letter: 4, target: targets(Orbit::Corner, "H")[0], part }
}

/// A slip of each kind.
fn example(kind: SlipKind) -> Slip {
    let letters = |orbit: Orbit, meant: &str, taken: &str| Change::Letters {
        orbit,
        from: 4,
        meant: targets(orbit, meant),
        taken: targets(orbit, taken),
    };
    let turn = |planned: &str, made: &str| Change::Turn {
        step: step(Part::Algorithm),
        turn: 3,
        planned: turns(planned).first().copied(),
        made: turns(made).first().copied(),
    };
    let whole = |part: Part, planned: &str, made: &str| Change::Whole {
        step: step(part),
        planned: turns(planned),
        made: turns(made),
        of: (kind == SlipKind::SetupOfAnother).then(|| targets(Orbit::Corner, "N")[0]),
    };
    let scramble = |made: &str| Change::Scramble {
        turn: 6,
        planned: Some(turns("R2")[0]),
        made: turns(made).first().copied(),
    };
    let x2 = Rotation::all().find(|rotation| rotation.turns() == turns("x2")).unwrap();
    let change = match kind {
        SlipKind::ScrambleTurnWrong => scramble("L2"),
        SlipKind::ScrambleTurnLeftOut => scramble(""),
        SlipKind::ScrambleTurnAdded => {
            Change::Scramble { turn: 6, planned: None, made: turns("L2").first().copied() }
        }
        SlipKind::ScrambleTurnsExchanged => {
            Change::ScrambleOrder { turn: 6, planned: [turns("R2")[0], turns("U")[0]] }
        }
        SlipKind::ScrambleMirrored => Change::ScrambleWhole { hold: None, made: turns("L' U2") },
        SlipKind::ScrambledInOtherHold => Change::ScrambleWhole { hold: Some(x2), made: turns("R D2") },
        SlipKind::OtherScramble => Change::ScrambleListed { number: 3, made: turns("R D2") },
        SlipKind::HeldWrong => Change::Holding { planned: Rotation::NONE, made: x2 },
        SlipKind::WrongStickerFollowed => letters(Orbit::Corner, "HCM", "XRB"),
        SlipKind::WrongSticker => letters(Orbit::Corner, "H", "X"),
        SlipKind::ClosedEarly | SlipKind::LetterDropped => letters(Orbit::Midge, "H", ""),
        SlipKind::CycleMissed => letters(Orbit::Midge, "HCH", ""),
        SlipKind::FlipMissed => letters(Orbit::Midge, "CI", ""),
        SlipKind::TwistMissed => letters(Orbit::Corner, "CM", ""),
        SlipKind::TwistOtherWay => letters(Orbit::Corner, "M", "J"),
        SlipKind::TracedFromOtherBuffer => Change::Buffer {
            orbit: Orbit::Corner,
            buffer: Orbit::Corner.sticker("UFR").unwrap(),
            taken: targets(Orbit::Corner, "HCM"),
        },
        SlipKind::ParityOverlooked => Change::Parity { made: false },
        SlipKind::ParityWithoutNeed => Change::Parity { made: true },
        SlipKind::LetterNeighbour => letters(Orbit::Corner, "H", "I"),
        SlipKind::LetterAlike => letters(Orbit::Corner, "M", "N"),
        SlipKind::LetterOther => letters(Orbit::Corner, "H", "V"),
        SlipKind::PairDropped => letters(Orbit::Corner, "HC", ""),
        SlipKind::LetterDoubled => letters(Orbit::Corner, "H", "HH"),
        SlipKind::PairDoubled => letters(Orbit::Corner, "HC", "HCHC"),
        SlipKind::PairReversed => letters(Orbit::Corner, "HC", "CH"),
        SlipKind::LettersExchanged => letters(Orbit::Corner, "HCM", "MCH"),
        SlipKind::KindsExchanged => Change::Kinds {
            orbits: [Orbit::Corner, Orbit::Midge],
            taken: [targets(Orbit::Corner, "HC"), targets(Orbit::Midge, "MJ")],
        },
        SlipKind::KindForgotten => letters(Orbit::Corner, "HCMJ", ""),
        SlipKind::PairsExchanged => letters(Orbit::Corner, "HCMJ", "MJHC"),
        SlipKind::TurnOtherWay => turn("U'", "U"),
        SlipKind::TurnHalf => turn("U'", "U2"),
        SlipKind::TurnQuarter => turn("U2", "U"),
        SlipKind::TurnLeftOut => turn("U'", ""),
        SlipKind::TurnAdded => turn("", "F"),
        SlipKind::TurnOtherFace => turn("U'", "F'"),
        SlipKind::TurnWide => turn("U'", "Uw'"),
        SlipKind::SetupLeftOut => whole(Part::Setup, "R' D", ""),
        SlipKind::SetupDoubled => whole(Part::Setup, "R'", "R' R'"),
        SlipKind::SetupWrongWay => whole(Part::Setup, "R' D", "D' R"),
        SlipKind::SetupUndoneTwice => whole(Part::Undo, "R'", "R' R'"),
        SlipKind::BrokenOff => Change::Ended {
            step: ActionStep::Pair {
                orbit: Orbit::Corner,
                letter: 4,
                targets: [targets(Orbit::Corner, "H")[0], targets(Orbit::Corner, "C")[0]],
                part: Part::Algorithm,
            },
            turn: 0,
        },
        SlipKind::SetupNotUndone => whole(Part::Undo, "R' D", ""),
        SlipKind::SetupUndoneWrongWay => whole(Part::Undo, "R'", "R"),
        SlipKind::SetupOfAnother => whole(Part::Setup, "D' R", "R' F"),
        SlipKind::AlgorithmLeftOut => whole(Part::Algorithm, "R U R'", ""),
        SlipKind::AlgorithmDoubled => whole(Part::Algorithm, "R U R'", "R U R' R U R'"),
        SlipKind::AlgorithmInverted => whole(Part::Algorithm, "R U R'", "R U' R'"),
        SlipKind::AlgorithmOfOtherKind => whole(Part::Algorithm, "R U R'", "F R F'"),
        SlipKind::HeldOtherwise => Change::Held { step: step(Part::Undo), rotation: x2 },
    };
    Slip { kind, change }
}

fn every_slip(language: Language) -> String {
    let voice = Voice::new(language);
    let conventions = Conventions::default();
    let mut text = String::new();
    for kind in SlipKind::ALL {
        let said = voice.slip(&example(kind), &conventions);
        assert!(!said.contains("slip-") && !said.contains('$'), "{said}");
        let _ = writeln!(text, "{said}");
    }
    text
}

#[test]
fn every_kind_of_slip_has_its_sentence() {
    insta::assert_snapshot!(every_slip(Language::English));
}

#[test]
fn every_kind_of_slip_has_its_sentence_in_german() {
    insta::assert_snapshot!(every_slip(Language::German));
}

fn checked(language: Language) -> String {
    let voice = Voice::new(language);
    let conventions = Conventions::default();
    // L C B O B K V is right.
    let state = State::solved(Size::TWO)
        .after(&Algorithm::parse("R U' F2 R' U F' U2 R F'", Size::TWO).unwrap().flatten());
    let orbit = Orbit::Corner;
    let mut text = String::new();
    for memo in
        ["LCBOBKV", "LCBNBKV", "LCBOBK", "LCBOBKVO", "LCEBOBKV", "LC", "LKBOBKV", "LCCBOBKV", "LCBOBKP"]
    {
        let letters = targets(orbit, memo);
        let check = check_letters(orbit, state.orbit(orbit), conventions.kind(orbit).buffer, &letters);
        let _ = writeln!(text, "{memo}: {}", voice.kind_checked(&check));
        for slip in &check.slips {
            let _ = writeln!(text, "  {}", voice.memo_slip(slip, orbit, &letters, &conventions));
        }
    }
    // Two corners twisted and two edges flipped in their places, by known sequences (common practice, no source).
    let state =
        State::solved(Size::THREE).after(&turns("(R U R' U R U2 R') (L' U' L U' L' U2 L) (M' U)4 (M U)4"));
    for (orbit, memo) in
        [(Orbit::Corner, "C"), (Orbit::Midge, "C"), (Orbit::Corner, "CA"), (Orbit::Midge, "SS")]
    {
        let letters = targets(orbit, memo);
        let check = check_letters(orbit, state.orbit(orbit), conventions.kind(orbit).buffer, &letters);
        for slip in &check.slips {
            let _ = writeln!(text, "{memo}: {}", voice.memo_slip(slip, orbit, &letters, &conventions));
        }
    }
    text += &voice.parity_fault(ParityFault::Overlooked);
    text += "\n";
    text += &voice.parity_fault(ParityFault::WithoutNeed);
    text
}

#[test]
fn a_checked_memo_is_told() {
    insta::assert_snapshot!(checked(Language::English));
}

#[test]
fn a_checked_memo_is_told_in_german() {
    insta::assert_snapshot!(checked(Language::German));
}

#[test]
fn every_way_to_differ_has_its_sentence() {
    const ALL: [How; 19] = [
        How::OtherWay,
        How::OtherAmount,
        How::LeftOut,
        How::Added,
        How::Doubled,
        How::OtherFace,
        How::OtherWidth,
        How::StepLeftOut,
        How::StepDoubled,
        How::StepInverted,
        How::LetterLeftOut,
        How::LetterDoubled,
        How::LettersExchanged,
        How::NotUndone,
        How::UndoneWrongWay,
        How::Held,
        How::BrokenOff,
        How::GoneOn,
        How::Otherwise,
    ];
    let conventions = Conventions::default();
    let mut text = String::new();
    for language in Language::ALL {
        let voice = Voice::new(language);
        for how in ALL {
            let step = (how != How::GoneOn).then(|| step(Part::Undo));
            let deviation =
                Deviation { step, within: 3, turn: 70, planned: turns("R'"), made: turns("R"), how };
            let said = voice.deviation(&deviation, &conventions);
            assert!(!said.contains("how-"), "{said}");
            let _ = writeln!(text, "{said}");
        }
    }
    insta::assert_snapshot!(text);
}

#[test]
fn every_question_and_mistake_has_its_sentence() {
    let solver = Solver::new(Size::THREE, Conventions::default());
    let begun = Begun::Scramble(turns("D2 F' R2 B U2 L' D B2 R F U'"));
    let plan = Plan::new(begun, None, &solver).unwrap();
    let mut asks: Vec<Ask> = Stage::ALL.into_iter().map(Ask::Stage).collect();
    asks.extend([Ask::Kind(Orbit::Corner), Ask::Letter(Orbit::Midge, 2), Ask::Letter(Orbit::Midge, 40)]);
    asks.extend([Part::Setup, Part::Algorithm, Part::Undo].map(Ask::Part));
    asks.extend([Ask::Parity, Ask::Held]);
    let texts = [
        "",
        "UF, XX",
        "UFR>UF",
        "UF flipped; FU",
        "9 corners",
        "3 wings",
        "UF floppy",
        "UFR flipped",
        "UF>UR flipped",
        "two edges flipped",
        "UF>UF",
        "A>B",
        "edges: A>1",
        "UU",
        "UFR edge",
        "UF, UR, FR swapped",
        "UF in a cycle",
        "edges unknown; UF",
        "WWWW OOOO GGGG RRRR BBBB YYY?",
        "U: WWWX",
    ];
    let conventions = Conventions::default();
    let read = |voice: &Voice, text: &str| {
        let colours = voice.colour_names(&conventions);
        let reading = Vocabulary { size: Size::THREE, conventions: &conventions, colours: &colours };
        observed::read(text, &reading).unwrap_err()
    };
    let mut text = String::new();
    for language in Language::ALL {
        let voice = Voice::new(language);
        for &ask in &asks {
            assert_eq!(Ask::named(&ask.to_string()), Some(ask));
            let _ = writeln!(text, "{ask}: {}", voice.ask(ask, &plan));
        }
        for told in texts {
            let _ = writeln!(text, "{told}: {}", voice.observed_error(&read(&voice, told)));
        }
    }
    insta::assert_snapshot!(text);
}

#[test]
fn what_is_said_before_and_after_explanations() {
    let solver = Solver::new(Size::THREE, Conventions::default());
    let conventions = Conventions::default();
    let begun = || Begun::Scramble(turns("D2 F' R2 B U2 L' D B2 R F U'"));
    let plan = Plan::new(begun(), None, &solver).unwrap();
    let mut memo = plan.memo().to_vec();
    memo[0].1.pop();
    let fault = Plan::new(begun(), Some(memo), &solver).unwrap().memo_fault().unwrap();
    let catalogue = diagnosis::Catalogue::default();
    let inquiry = Inquiry { catalogue: &catalogue, depth: Depth::Two, answers: &[], most: 5 };
    let counts = Observed::counts(&[(Orbit::Corner, 3)]);
    let found = why(&plan, &counts, &inquiry, &mut |_| true).unwrap();
    assert!(found.explanations.len() > 1);
    let pieces = |orbit: Orbit, name: &str| Missing::Turned { orbit, alone: orbit.sticker(name) };
    let missing = [
        pieces(Orbit::Midge, "UF"),
        pieces(Orbit::Corner, "UFR"),
        pieces(Orbit::Midge, ""),
        pieces(Orbit::Corner, ""),
        Missing::Exchanged { orbits: vec![Orbit::Corner, Orbit::Midge] },
    ];
    let mut text = String::new();
    for language in Language::ALL {
        let voice = Voice::new(language);
        let _ = writeln!(text, "{}", voice.memo_fault(&fault, &conventions));
        for one in &missing {
            let _ = writeln!(text, "{}", voice.missing(one));
        }
        for unlooked in [Unlooked::AsPlanned(vec![Orbit::Corner]), Unlooked::AnyWay(vec![Orbit::Midge])] {
            let _ = writeln!(text, "{}", voice.unlooked(&unlooked).unwrap());
        }
        assert_eq!(voice.unlooked(&Unlooked::None), None);
        // With so many as likely, the first as many times as likely as the next, or none.
        let weights = |first: f64, next: f64| {
            let mut explanations = found.explanations.clone();
            explanations.truncate(2);
            explanations[0] = explanations[0].clone().weighing(first);
            explanations[1] = explanations[1].clone().weighing(next);
            explanations
        };
        for whole in [true, false] {
            for (ambiguity, explanations) in
                [(1, weights(0.5, 0.4)), (1, weights(0.5, 0.41)), (3, weights(0.3, 0.3)), (0, Vec::new())]
            {
                let said = Diagnosis { whole, ambiguity, explanations, ..found.clone() };
                let state = Observed::State(Box::new(plan.outcome()));
                let _ = writeln!(text, "{}", voice.why_summary(&said, &state, Depth::Two));
                if said.explanations.is_empty() {
                    let _ = writeln!(text, "{}", voice.why_summary(&said, &counts, Depth::Three));
                }
            }
        }
    }
    insta::assert_snapshot!(text);
}

#[test]
fn what_is_wrong_with_a_memo_is_said_in_short_sentences() {
    let conventions = Conventions::default();
    let size = Size::new(5).unwrap();
    let state =
        State::solved(size).after(&Algorithm::parse("R U' Fw2 L D' Bw U2 Rw F' Uw", size).unwrap().flatten());
    // Letters one after another by a rule of no meaning: most of them fit nowhere.
    let mut number = 1u32;
    let mut letters = |count: usize| -> Vec<Sticker> {
        (0..count)
            .map(|_| {
                number = number.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
                Sticker::new((number >> 16) as u8 % 24).unwrap()
            })
            .collect()
    };
    let (mut longest, mut told) = (0, 0);
    for language in Language::ALL {
        let voice = Voice::new(language);
        for &orbit in Orbit::of(size) {
            let buffer = conventions.kind(orbit).buffer;
            for count in (0..40).chain([500]) {
                let check = check_letters(orbit, state.orbit(orbit), buffer, &letters(count));
                let lines = voice.memo_slips(&check, &conventions);
                assert!(lines.len() <= 4 && lines.is_empty() == check.right, "{lines:?}");
                told += lines.len();
                longest = longest.max(lines.iter().map(|line| line.chars().count()).max().unwrap_or(0));
            }
        }
    }
    assert!(told > 0 && longest < 200, "{longest}");
}
