//! Models of hands as text: written and read the same, and every slip with its place.

use formats::ease::{EaseError, read, read_costs, write, write_costs};
use formats::{DocumentError, KeyProblem, Needs, Place};
use proptest::prelude::*;
use search::ease::{Feature, Model, Reach, Way};

#[test]
fn what_is_built_in_is_written_and_read_the_same() {
    let usual = Model::built_in();
    assert_eq!(read(&write(&usual)), Ok(usual.clone()));
    assert_eq!(read_costs(&write(&usual), &usual), Ok(usual));
}

proptest! {
    #[test]
    fn any_hands_are_written_and_read_the_same(
        costs in prop::collection::vec(0.0..1e6_f64, Feature::COUNT),
        reach in prop::collection::vec(0..3_usize, 4 * 64),
    ) {
        let usual = Model::built_in();
        let seconds = std::array::from_fn(|at| costs[at]);
        let mut given = reach.into_iter().map(|at| [Reach::Never, Reach::Easy, Reach::Uneasy][at]);
        let ways = usual.ways().iter().map(|way| Way { reach: [(); 4].map(|()| given.next().unwrap()), ..way.clone() });
        let hands = Model::new(seconds, ways.collect()).unwrap();
        prop_assert_eq!(read(&write(&hands)), Ok(hands.clone()));
        let costs = read_costs(&write_costs(&seconds), &usual).unwrap();
        prop_assert_eq!(costs.seconds().map(f64::to_bits), seconds.map(f64::to_bits));
    }

    #[test]
    fn nothing_nearly_right_makes_the_reader_stumble(at in any::<prop::sample::Index>(), put in "[\\[\\]\"=a-z0-9.\n -]{0,4}") {
        let text = write(&Model::built_in());
        let place = at.index(text.len());
        let _ = read(&format!("{}{put}{}", &text[..place], &text[place + 1..]));
    }
}

#[test]
fn what_is_wrong_is_told_with_its_place() {
    let text = write(&Model::built_in());
    let change = |from: &str, to: &str| {
        assert!(text.contains(from), "{from}");
        read(&text.replacen(from, to, 1)).unwrap_err()
    };
    let line_of = |what: &str| text.lines().position(|line| line.contains(what)).unwrap() + 1;
    let key = |line: usize, column: usize, problem: KeyProblem| {
        EaseError::Document(DocumentError::Key { place: Place { line, column }, problem })
    };
    let wrong = |key: &str, needs: Needs| KeyProblem::WrongSort { key: key.to_owned(), needs };
    let heading = line_of("[seconds]");
    assert_eq!(change("wide = 0.03\n", ""), key(heading, 2, KeyProblem::Missing("wide".to_owned())));
    for bad in ["-1", "nan", "inf", "\"much\""] {
        let error = change("wide = 0.03", &format!("wide = {bad}"));
        assert_eq!(error, key(line_of("wide ="), 8, wrong("wide", Needs::Seconds)));
    }
    let EaseError::Document(DocumentError::Key {
        problem: KeyProblem::Unknown { key: found, meant, .. },
        ..
    }) = change("wide = 0.03", "wide = 0.03\nwid = 1")
    else {
        panic!()
    };
    assert_eq!((found.as_str(), meant.as_deref()), ("wid", Some("wide")));
    assert!(matches!(change("[\"B\"]", "[\"R\"]"), EaseError::BadTurn { place, .. } if place.column == 10));
    assert!(matches!(change("[\"B\"]", "[\"Bw\"]"), EaseError::BadTurn { .. }));
    assert!(matches!(change("[\"B\"]", "[\"B U\"]"), EaseError::NoTurn { .. }));
    assert!(matches!(change("[\"M\"]", "[\"M2\"]"), EaseError::Model(_)));
    for (from, to) in [("[\"down\", \"front\"]", "[\"sideways\"]"), ("\"thumb\"", "\"wrist\"")] {
        let error = change(from, to);
        assert!(
            matches!(
                &error,
                EaseError::Document(DocumentError::Key { problem: KeyProblem::UnknownWord { .. }, .. })
            ),
            "{error}"
        );
    }
    assert!(matches!(change("finger =", "toe ="), EaseError::Document(DocumentError::Key { .. })));
    for text in ["seconds = 1", "way = 1", "[seconds", "[[way]]", "[seconds]\n[way]\n"] {
        assert!(matches!(read(text), Err(EaseError::Document(_))), "{text}");
    }
}
