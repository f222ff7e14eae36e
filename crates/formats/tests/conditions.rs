//! Conditions as they are typed: read, written out again, and their mistakes with the column.

use blind::Conventions;
use choose::{Condition, lessons};
use cube::{Orbit, Size};
use formats::conditions::{self, ConditionProblem, ExpectedPart};
use proptest::prelude::*;

fn read(text: &str) -> Condition {
    conditions::read(text, Size::THREE, &Conventions::default())
        .unwrap_or_else(|error| panic!("{text}: {error}"))
}

#[test]
fn a_condition_is_written_out_as_it_is_read() {
    for (typed, written) in [
        ("corner.breaks=1 AND edge.flips != 0", "corner.breaks = 1 and edge.flips != 0"),
        ("midge.turned<=2", "edge.flips <= 2"),
        ("corner.turned>2", "corner.twists > 2"),
        ("( parity = odd )", "parity = odd"),
        (
            "not(parity=odd or letters=18 .. 20) and corner.buffer=away",
            "not (parity = odd or letters = 18..20) and corner.buffer = away",
        ),
        (
            "corner.cycles( 3 ) = 1 and edge.cycles(3..5)>=1",
            "corner.cycles(3) = 1 and edge.cycles(3..5) >= 1",
        ),
        ("corner.has(b, URF)", "corner.has(UBR, UFR)"),
        ("edge.pair(CG, LF DB)", "edge.pair(UF LD, LF DB)"),
        ("corner.targets > edge.targets", "corner.targets > edge.targets"),
        ("corner.buffer = edge.buffer", "corner.buffer = edge.buffer"),
        (
            "not not letters > 3 or parity = even and corner.longest < 4",
            "not not letters > 3 or (parity = even and corner.longest < 4)",
        ),
    ] {
        let written_out = read(typed).to_string();
        assert_eq!(written_out, written);
        assert_eq!(read(&written_out).to_string(), written);
    }
}

#[test]
fn mistakes_are_named_with_their_column() {
    let expected = |expected, found: Option<&str>| ConditionProblem::Expected {
        expected,
        found: found.map(str::to_owned),
    };
    for (text, column, problem) in [
        ("", 1, expected(ExpectedPart::Condition, None)),
        ("corner.breaks", 14, expected(ExpectedPart::Comparison, None)),
        ("corner.breaks = ", 17, expected(ExpectedPart::Value, None)),
        ("corner breaks = 1", 8, expected(ExpectedPart::Dot, Some("breaks"))),
        ("(parity = odd", 14, expected(ExpectedPart::Close, None)),
        ("parity = odd adn letters = 20", 14, expected(ExpectedPart::Joint, Some("adn"))),
        ("parity = odd and", 17, expected(ExpectedPart::Condition, None)),
        ("corner.breaks = 3..1", 20, ConditionProblem::RangeBackwards { from: 3, to: 1 }),
        ("corner.breaks < 1..3", 15, ConditionProblem::OnlyEqual),
        ("parity > even", 8, ConditionProblem::OnlyEqual),
        ("letters = 100", 11, ConditionProblem::NumberTooLarge),
        ("corner.has()", 12, expected(ExpectedPart::Item, Some(")"))),
        ("corner.has(ZZ)", 12, ConditionProblem::NoTarget { word: "ZZ".to_owned(), orbit: Orbit::Corner }),
        ("corner.pair(ABC)", 13, ConditionProblem::NoPair { word: "ABC".to_owned() }),
        (
            "corner.pair(B C, D ?)",
            20,
            ConditionProblem::NoTarget { word: "?".to_owned(), orbit: Orbit::Corner },
        ),
        (
            "wing.targets = 1",
            1,
            ConditionProblem::KindMissing { orbit: Orbit::of(Size::new(4).unwrap())[1], size: Size::THREE },
        ),
    ] {
        let error = conditions::read(text, Size::THREE, &Conventions::default()).unwrap_err();
        assert_eq!((error.column, &error.problem), (column, &problem), "{text}");
    }
    let meant = |text: &str| match conditions::read(text, Size::THREE, &Conventions::default())
        .unwrap_err()
        .problem
    {
        ConditionProblem::UnknownFeature { meant, .. } | ConditionProblem::UnknownWord { meant, .. } => meant,
        other => panic!("{text}: {other}"),
    };
    assert_eq!(meant("edge.twists = 1").as_deref(), Some("flips"));
    assert_eq!(meant("cornr.twists = 1").as_deref(), Some("corner"));
    assert_eq!(meant("parity = od").as_deref(), Some("odd"));
    assert_eq!(meant("corner.buffer = solvd").as_deref(), Some("solved"));
    assert_eq!(meant("corner.xyzzy = 1"), None);
    let deep = "(".repeat(10_000);
    let error = conditions::read(&deep, Size::THREE, &Conventions::default()).unwrap_err();
    assert!(matches!(error.problem, ConditionProblem::TooDeep { .. }));
}

#[test]
fn parts_stand_where_they_are_written() {
    let words = "letters >= 3 and not (parity = odd or corner.has(UBR)) and edge.cycles(3..5) = 1";
    let condition = read(words);
    let spans: Vec<String> = condition
        .parts()
        .iter()
        .map(|part| words.chars().skip(part.span.start).take(part.span.len()).collect())
        .collect();
    assert_eq!(spans, ["letters >= 3", "not (parity = odd or corner.has(UBR))", "edge.cycles(3..5) = 1"]);
}

#[test]
fn too_many_features_are_refused_and_too_long_a_text() {
    let many: Vec<String> = (1..=25).map(|number| format!("corner.cycles({number}) = 0")).collect();
    let refused = |text: &str| {
        conditions::read(text, Size::THREE, &Conventions::default())
            .map(|_| ())
            .map_err(|error| error.problem)
    };
    assert_eq!(refused(&many[..24].join(" and ")), Ok(()));
    assert_eq!(refused(&many.join(" and ")), Err(ConditionProblem::TooManyFeatures));
    let long = format!("parity = odd{}", " ".repeat(16 << 10));
    assert!(matches!(refused(&long), Err(ConditionProblem::TooLong { .. })));
    let size = |layers| Size::new(layers).unwrap();
    assert_eq!(
        conditions::read("parity = odd", size(5), &Conventions::default()).unwrap_err().problem,
        ConditionProblem::SizeNotCovered(size(5))
    );
    let wings = conditions::read("wing.parity = even and wing.breaks = 1", size(4), &Conventions::default());
    assert_eq!(wings.unwrap().to_string(), "wing.parity = even and wing.breaks = 1");
}

/// The lessons of the 4x4.
const ON_FOUR: [(&str, &str); 4] = [
    (
        "one-cycle",
        "corner.buffer = away and corner.breaks = 0 and corner.twists = 0 and wing.buffer = away and wing.breaks = 0",
    ),
    (
        "first-break",
        "corner.buffer = away and corner.breaks = 0 and corner.twists = 0 and wing.buffer = away and wing.breaks = 1",
    ),
    ("parity", "wing.parity = odd and corner.parity = even"),
    ("no-parity", "parity = even"),
];

/// What the lessons ask for, as a file had it before they were tables of the engine.
const LESSONS: [(&str, Option<&str>, Option<&str>); 13] = [
    (
        "one-cycle",
        Some("corner.buffer = away and corner.breaks = 0 and corner.twists = 0"),
        Some(
            "corner.buffer = away and corner.breaks = 0 and corner.twists = 0 and edge.buffer = away and edge.breaks = 0 and edge.flips = 0",
        ),
    ),
    (
        "first-break",
        Some("corner.buffer = away and corner.breaks = 1 and corner.twists = 0"),
        Some(
            "corner.buffer = away and corner.breaks = 1 and corner.twists = 0 and edge.buffer = away and edge.breaks = 0 and edge.flips = 0",
        ),
    ),
    (
        "closing-elsewhere",
        Some(
            "corner.buffer = away and corner.breaks = 1 and corner.closes-elsewhere = 1 and corner.twists = 0",
        ),
        Some(
            "corner.buffer = away and corner.breaks = 1 and corner.closes-elsewhere = 1 and corner.twists = 0 and edge.buffer = away and edge.breaks = 0 and edge.flips = 0",
        ),
    ),
    (
        "two-breaks",
        Some("corner.breaks = 2 and corner.twists = 0"),
        Some(
            "(corner.breaks = 2 and edge.breaks = 0 or corner.breaks = 0 and edge.breaks = 2) and corner.twists = 0 and edge.flips = 0",
        ),
    ),
    (
        "twisted-corner",
        Some("corner.buffer = away and corner.twists = 1"),
        Some("corner.buffer = away and corner.twists = 1 and edge.flips = 0"),
    ),
    (
        "buffer-solved",
        Some("corner.buffer = solved and corner.breaks >= 1"),
        Some("corner.buffer = solved and corner.breaks >= 1 and edge.buffer = away"),
    ),
    ("buffer-twisted", Some("corner.buffer = turned"), Some("corner.buffer = turned and edge.buffer = away")),
    ("parity", Some("parity = odd"), Some("parity = odd")),
    ("no-parity", Some("parity = even"), Some("parity = even")),
    ("flipped-edges", None, Some("edge.flips = 2..3 and corner.twists = 0")),
    ("short-memo", Some("letters <= 5"), Some("letters <= 18")),
    ("typical-memo", Some("letters = 6..8"), Some("letters = 20..22")),
    ("long-memo", Some("letters >= 9"), Some("letters >= 24")),
];

#[test]
fn lessons_are_written_out_and_read_the_same() {
    assert_eq!(lessons().len(), LESSONS.len());
    for (lesson, (name, on_two, on_three)) in lessons().iter().zip(LESSONS) {
        assert_eq!(lesson.name(), name);
        for (size, text) in [(Size::TWO, on_two), (Size::THREE, on_three)] {
            let condition = lesson.condition(size);
            let read = |text: &str| conditions::read(text, size, &Conventions::default()).unwrap();
            assert_eq!(condition.as_ref().map(ToString::to_string), text.map(|text| read(text).to_string()));
            // With every part where it stands.
            assert_eq!(condition, condition.as_ref().map(|condition| read(&condition.to_string())));
        }
        let four = Size::new(4).unwrap();
        let text = ON_FOUR.iter().find(|(known, _)| *known == name).map(|&(_, text)| text.to_owned());
        assert_eq!(lesson.condition(four).map(|condition| condition.to_string()), text);
        assert_eq!(lesson.condition(Size::new(5).unwrap()), None);
    }
}

proptest! {
    #[test]
    fn nothing_typed_makes_the_reader_stumble(text in ".{0,60}") {
        let _ = conditions::read(&text, Size::THREE, &Conventions::default());
    }

    #[test]
    fn nothing_nearly_right_makes_it_stumble(
        words in proptest::collection::vec(
            prop_oneof!["corner", "edge", r"\.", "breaks", "cycles", r"\(", r"\)", "=", "<=", "[0-9]{1,3}", "and", "or",
                "not", "has", "pair", "A", ",", "AB", r"\.\.", "parity", "odd", "buffer", " "],
            0..20,
        )
    ) {
        let text = words.concat();
        if let Ok(condition) = conditions::read(&text, Size::THREE, &Conventions::default()) {
            let written = condition.to_string();
            let again = conditions::read(&written, Size::THREE, &Conventions::default()).unwrap();
            prop_assert_eq!(again.to_string(), written.clone());
            // Written out, its parts stand where they were read.
            let written_out = Condition::new(Size::THREE, again.root().term.clone()).unwrap();
            prop_assert_eq!(&written_out, &again);
        }
    }
}
