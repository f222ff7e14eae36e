//! Catalogues of slips as text: written and read the same, and every slip of the writer with its place.

use diagnosis::{Alike, Catalogue, SlipKind};
use formats::slips::{SlipsError, read, write};
use formats::{DocumentError, KeyProblem, Needs, Place};
use proptest::prelude::*;

#[test]
fn the_estimates_are_written_and_read_the_same() {
    assert_eq!(read(&write(&Catalogue::default())), Ok(Catalogue::default()));
}

proptest! {
    #[test]
    fn any_catalogue_is_written_and_read_the_same(
        weights in prop::collection::vec(1e-9..1e9_f64, SlipKind::ALL.len()),
        strength in 1e-3..1e6_f64,
        slips in prop::array::uniform3(1e-6..1e6_f64),
        sound in prop::collection::vec("[A-ZÄ\"\\\\\n]{2,8}", 0..5),
        shape in prop::collection::vec("\\PC{1,6}", 0..5),
        confirmed in prop::collection::vec((0..SlipKind::ALL.len(), 0..1000_u32), 0..6),
    ) {
        let weights = std::array::from_fn(|at| weights[at]);
        let given = Catalogue::new(weights, strength, slips, Alike { sound, shape }).unwrap();
        prop_assert_eq!(read(&write(&given)), Ok(given.clone()));
        let confirmed: Vec<_> = confirmed.into_iter().map(|(at, count)| (SlipKind::ALL[at], count)).collect();
        let learned = given.learned(&confirmed);
        prop_assert_eq!(read(&write(&learned)), Ok(learned));
    }

    #[test]
    fn nothing_nearly_right_makes_the_reader_stumble(at in any::<prop::sample::Index>(), put in "[\\[\\]\"=a-z0-9.\n -]{0,4}") {
        let text = write(&Catalogue::default());
        let place = at.index(text.len());
        let _ = read(&format!("{}{put}{}", &text[..place], &text[place + 1..]));
    }
}

#[test]
fn a_mistake_is_named_with_its_place() {
    let text = write(&Catalogue::default());
    let line_of = |what: &str| text.lines().position(|line| line.starts_with(what)).unwrap() + 1;
    let change = |from: &str, to: &str| {
        assert!(text.contains(from), "{from}");
        match read(&text.replacen(from, to, 1)) {
            Err(SlipsError::Document(DocumentError::Key { place, problem })) => (place, problem),
            other => panic!("{other:?}"),
        }
    };
    let at = |line, column| Place { line, column };
    assert_eq!(
        change("pair-dropped = 4.0\n", ""),
        (at(line_of("[recall]"), 2), KeyProblem::Missing("pair-dropped".to_owned()))
    );
    let unknown = change("pair-dropped = 4.0", "pair-dropped = 4.0\npair-droped = 1");
    assert_eq!(unknown.0, at(line_of("pair-dropped") + 1, 1));
    assert!(
        matches!(&unknown.1, KeyProblem::Unknown { meant, .. } if meant.as_deref() == Some("pair-dropped"))
    );
    let wrong = |key: &str, needs| KeyProblem::WrongSort { key: key.to_owned(), needs };
    for bad in ["0", "-2", "nan", "true"] {
        assert_eq!(
            change("held-wrong = 2.0", &format!("held-wrong = {bad}")),
            (at(line_of("held-wrong"), 14), wrong("held-wrong", Needs::Share))
        );
    }
    for bad in ["[75.0, 20.0]", "[75.0, 20.0, 0.0]", "[75.0, 20.0, \"5\"]", "7"] {
        assert_eq!(
            change("[75.0, 20.0, 5.0]", bad),
            (at(line_of("slips"), 9), wrong("slips", Needs::ThreeShares))
        );
    }
    assert_eq!(change("sound = [", "sound = [7, ").1, wrong("sound", Needs::Texts));
    assert!(matches!(change("[alike]", "[alike.more]").1, KeyProblem::Unknown { .. }));
    assert!(matches!(change("strength = 60.0", "strongness = 60.0").1, KeyProblem::Unknown { .. }));
}
