//! The sentences about slips, read as a coach would read them.

use blind::{Conventions, Solver};
use cube::{Algorithm, Orbit, Rotation, Size, State, Sticker, Turn};
use diagnosis::{
    ActionStep, Ask, Begun, Change, Deviation, How, ParityFault, Part, Plan, Slip, SlipKind, Stage,
    check_letters,
};
use formats::observed;
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
        planned: turns("R2")[0],
        made: turns(made).first().copied(),
    };
    let x2 = Rotation::all().find(|rotation| rotation.turns() == turns("x2")).unwrap();
    let change = match kind {
        SlipKind::ScrambleTurnWrong => scramble("L2"),
        SlipKind::ScrambleTurnLeftOut => scramble(""),
        SlipKind::HeldWrong => Change::Holding { planned: Rotation::NONE, made: x2 },
        SlipKind::WrongStickerFollowed => letters(Orbit::Corner, "HCM", "XRB"),
        SlipKind::WrongSticker => letters(Orbit::Corner, "H", "X"),
        SlipKind::ClosedEarly | SlipKind::LetterDropped => letters(Orbit::Midge, "H", ""),
        SlipKind::CycleMissed => letters(Orbit::Midge, "HCH", ""),
        SlipKind::FlipMissed => letters(Orbit::Midge, "CI", ""),
        SlipKind::TwistMissed => letters(Orbit::Corner, "CM", ""),
        SlipKind::TwistOtherWay => letters(Orbit::Corner, "M", "J"),
        SlipKind::ParityOverlooked => Change::Parity { made: false },
        SlipKind::ParityWithoutNeed => Change::Parity { made: true },
        SlipKind::LetterNeighbour => letters(Orbit::Corner, "H", "I"),
        SlipKind::LetterAlike => letters(Orbit::Corner, "M", "N"),
        SlipKind::LetterOther => letters(Orbit::Corner, "H", "V"),
        SlipKind::PairDropped => letters(Orbit::Corner, "HC", ""),
        SlipKind::LetterDoubled => letters(Orbit::Corner, "H", "HH"),
        SlipKind::PairDoubled => letters(Orbit::Corner, "HC", "HCHC"),
        SlipKind::PairReversed => letters(Orbit::Corner, "HC", "CH"),
        SlipKind::PairsExchanged => letters(Orbit::Corner, "HCMJ", "MJHC"),
        SlipKind::TurnOtherWay => turn("U'", "U"),
        SlipKind::TurnHalf => turn("U'", "U2"),
        SlipKind::TurnQuarter => turn("U2", "U"),
        SlipKind::TurnLeftOut => turn("U'", ""),
        SlipKind::TurnAdded => turn("", "F"),
        SlipKind::TurnOtherFace => turn("U'", "F'"),
        SlipKind::TurnWide => turn("U'", "Uw'"),
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
    let texts = ["", "UF, XX", "UFR>UF", "UF flipped; FU", "9 corners", "3 wings", "UF floppy"];
    let errors = texts.map(|text| observed::read(text).unwrap_err());
    let mut text = String::new();
    for language in Language::ALL {
        let voice = Voice::new(language);
        for &ask in &asks {
            assert_eq!(Ask::named(&ask.to_string()), Some(ask));
            let _ = writeln!(text, "{ask}: {}", voice.ask(ask, &plan));
        }
        for error in &errors {
            let _ = writeln!(text, "{}", voice.observed_error(error));
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
