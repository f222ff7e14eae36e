//! Conditions as they are typed: read, written out again, and their mistakes with the column.

use blind::{Condition, ConditionProblem, Conventions, ExpectedPart, Lying, Sampler, Solver, Why, lessons};
use cube::{Orbit, Size};
use proptest::prelude::*;

fn read(text: &str) -> Condition {
    Condition::read(text, Size::THREE, &Conventions::default())
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
        let error = Condition::read(text, Size::THREE, &Conventions::default()).unwrap_err();
        assert_eq!((error.column, &error.problem), (column, &problem), "{text}");
    }
    let meant = |text: &str| match Condition::read(text, Size::THREE, &Conventions::default())
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
    let deep = "(".repeat(100_000);
    let error = Condition::read(&deep, Size::THREE, &Conventions::default()).unwrap_err();
    assert!(matches!(error.problem, ConditionProblem::TooDeep { .. }));
}

#[test]
fn what_cannot_be_met_is_said_with_the_law_it_runs_against() {
    let conventions = Conventions::default();
    for (size, text, parts, why) in [
        (Size::THREE, "edge.breaks >= 0 and corner.targets = 4 and edge.targets = 5", 2, Why::Parity),
        (
            Size::THREE,
            "corner.buffer = solved and corner.twists = 1 and corner.closes-elsewhere = 0 and parity = odd",
            3,
            Why::Turning(Orbit::Corner),
        ),
        (Size::THREE, "edge.flips = 11 and edge.buffer = solved", 2, Why::Turning(Orbit::Midge)),
        (Size::TWO, "corner.solved = 0", 1, Why::OneCornerStays),
        (Size::TWO, "corner.targets > 6 and corner.solved > 5", 2, Why::Contradiction),
    ] {
        let condition = Condition::read(text, size, &conventions).unwrap();
        let solver = Solver::new(size, conventions.clone());
        let Err(error) = Sampler::new(&condition, Lying::Scrambled, &solver) else {
            panic!("{text} can be met")
        };
        assert_eq!((error.parts.len(), &error.why), (parts, &why), "{text}: {error}");
    }
}

#[test]
fn every_lesson_can_be_read() {
    assert_eq!(lessons().len(), 13);
    for lesson in lessons() {
        for size in [Size::TWO, Size::THREE] {
            if let Some(text) = lesson.condition(size) {
                Condition::read(text, size, &Conventions::default()).unwrap();
            }
        }
    }
}

proptest! {
    #[test]
    fn nothing_typed_makes_the_reader_stumble(text in ".{0,60}") {
        let _ = Condition::read(&text, Size::THREE, &Conventions::default());
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
        if let Ok(condition) = Condition::read(&text, Size::THREE, &Conventions::default()) {
            let written = condition.to_string();
            let again = Condition::read(&written, Size::THREE, &Conventions::default()).unwrap();
            prop_assert_eq!(again.to_string(), written);
        }
    }
}
