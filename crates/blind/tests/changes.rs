//! Changes of conventions: what comes out of any row of them is written and read back the same, and what is refused changes
//! nothing. The reader of files is the judge; it knows nothing of changes.

use blind::{
    BreakChoice, ChangeError, Consequence, Conventions, ConventionsChange as Change, LettersError,
    MethodName, Misfit, SwapEffect, kind_name, sizeless,
};
use cube::{Face, Orbit, Rotation, Size, Sticker};
use formats::conventions::{read, write};
use proptest::prelude::*;

fn sticker(orbit: Orbit, name: &str) -> Sticker {
    orbit.sticker(name).expect("a sticker")
}

/// A letter, good or bad: one sign, several, none, or what cannot be written.
fn letter() -> impl Strategy<Value = String> {
    prop_oneof!["[A-Za-z]", "[A-Z][a-z]{1,2}", "[0-9]{1,2}", "[\u{410}-\u{42f}]", "\\PC{0,3}", "[a-z]{9}"]
}

/// Algorithms of which some are swaps and some are not.
fn algorithm() -> impl Strategy<Value = &'static str> {
    prop::sample::select(vec![
        "R U' R' U' R U R' F' R U R' U' R' F R",
        "R U R' U' R' F R2 U' R' U' R U R' F'",
        "R U R' F' R U R' U' R' F R2 U' R' U'",
        "M2",
        "R U R' U'",
        "R",
        "",
        "4Rw U",
    ])
}

fn change() -> impl Strategy<Value = Change> {
    let orbit = || (0..10usize).prop_map(|at| Orbit::ALL[at]);
    let sticker = || (0..24u8).prop_map(|at| Sticker::new(at).expect("below 24"));
    let face = || (0..6usize).prop_map(|at| Face::ALL[at]);
    let name = || prop::sample::select(vec!["white", "blue", "night", " Grün ", "", "Night", "a \"b\""]);
    prop_oneof![
        (orbit(), sticker(), letter()).prop_map(|(orbit, sticker, letter)| Change::Letter {
            orbit,
            sticker,
            letter
        }),
        (orbit(), sticker()).prop_map(|(orbit, sticker)| Change::Buffer { orbit, sticker }),
        (face(), any::<[u8; 3]>()).prop_map(|(face, shade)| Change::Shade { face, shade }),
        (face(), name(), any::<[u8; 3]>()).prop_map(|(face, name, shade)| Change::Name {
            face,
            name: name.to_owned(),
            shade
        }),
        (face(), face()).prop_map(|(up, front)| Change::Holding { up, front }),
        (orbit(), algorithm())
            .prop_map(|(orbit, text)| Change::Algorithm { orbit, algorithm: sizeless(text).expect("turns") }),
        (orbit(), 0..3usize).prop_map(|(orbit, at)| Change::Method { orbit, method: MethodName::ALL[at] }),
        algorithm().prop_map(|text| Change::Parity(sizeless(text).expect("turns"))),
        (orbit(), 0..3u8).prop_map(|(orbit, choice)| Change::Breaks {
            orbit,
            breaks: match choice {
                0 => BreakChoice::First,
                1 => BreakChoice::Fewest,
                _ => BreakChoice::Least,
            }
        }),
        any::<bool>().prop_map(Change::Pairs),
    ]
}

proptest! {
    #[test]
    fn any_row_of_changes_leaves_conventions_that_read_back(changes in proptest::collection::vec(change(), 1..24)) {
        let mut conventions = Conventions::default();
        for change in &changes {
            if let Ok(changed) = conventions.changed(change) {
                let read = read(&write(&changed.conventions));
                prop_assert_eq!(read.as_ref(), Ok(&changed.conventions), "after {:?}", change);
                conventions = changed.conventions;
            }
        }
    }

    /// By counting: whoever gives a letter away gets another, and nobody else is touched.
    #[test]
    fn letters_are_exchanged_and_no_others_touched(at in 0..24u8, letter in "[A-Z]") {
        let orbit = Orbit::Midge;
        let sticker = Sticker::new(at).expect("below 24");
        let change = Change::Letter { orbit, sticker, letter: letter.clone() };
        let before = Conventions::default();
        let changed = before.changed(&change).expect("single letters are letters");
        let letters = |conventions: &Conventions| -> Vec<String> {
            conventions.kind(orbit).letters.all().map(str::to_owned).collect()
        };
        let (old, new) = (letters(&before), letters(&changed.conventions));
        let differ = old.iter().zip(&new).filter(|(old, new)| old != new).count();
        let wanted = if old[usize::from(at)] == letter { 0 } else if old.contains(&letter) { 2 } else { 1 };
        prop_assert_eq!(differ, wanted);
        prop_assert_eq!(&new[usize::from(at)], &letter);
        prop_assert_eq!(changed.consequences.len(), usize::from(wanted == 2));
    }
}

#[test]
fn a_buffer_takes_its_algorithm_along() {
    for (orbit, name) in [(Orbit::Corner, "DBL"), (Orbit::Midge, "FR")] {
        let buffer = sticker(orbit, name);
        let changed =
            Conventions::default().changed(&Change::Buffer { orbit, sticker: buffer }).expect("turned");
        let kind = changed.conventions.kind(orbit);
        let on = kind.algorithm.as_ref().and_then(|algorithm| algorithm.on(Size::THREE).ok()).expect("one");
        assert!(SwapEffect::of(on, orbit, buffer).is_ok(), "{}", kind_name(orbit));
        assert!(matches!(changed.consequences[..], [Consequence::AlgorithmTurned { .. }]));
    }
}

#[test]
fn slice_swap_brings_its_buffer_and_comes_first() {
    let change = Change::Method { orbit: Orbit::Midge, method: MethodName::SliceSwap };
    let changed = Conventions::default().changed(&change).expect("a method for edges");
    let buffer = sticker(Orbit::Midge, "DF");
    assert_eq!(
        changed.consequences,
        [
            Consequence::BufferFollows { orbit: Orbit::Midge, buffer },
            Consequence::CarriedOutFirst(Orbit::Midge)
        ]
    );
    assert!(changed.conventions.execution_order.is_before(Orbit::Midge, Orbit::Corner));
    let back = Change::Method { orbit: Orbit::Midge, method: MethodName::OneSwap };
    let back = changed.conventions.changed(&back).expect("a method for edges");
    assert_eq!(back.conventions.kind(Orbit::Midge), Conventions::default().kind(Orbit::Midge));
}

#[test]
fn the_colour_up_counts_where_two_cannot_go_together() {
    for up in Face::ALL {
        for front in Face::ALL {
            let changed = Conventions::default().changed(&Change::Holding { up, front }).expect("a holding");
            let holding = changed.conventions.holding;
            assert_eq!(holding.image(up), Face::U);
            let possible = front != up && front != up.opposite();
            assert_eq!(holding.image(front) == Face::F, possible);
            assert!(!possible || Rotation::bringing(up, front) == Some(holding));
        }
    }
}

#[test]
fn what_does_not_hold_together_is_refused() {
    let orbit = Orbit::Corner;
    let refused = |change: Change| Conventions::default().changed(&change).expect_err("refused");
    let algorithm = |text: &str| Change::Algorithm { orbit, algorithm: sizeless(text).expect("turns") };
    let name = |name: &str| Change::Name { face: Face::L, name: name.to_owned(), shade: [1, 2, 3] };
    let letter =
        |letter: &str| Change::Letter { orbit, sticker: sticker(orbit, "UFR"), letter: letter.to_owned() };
    assert!(matches!(refused(algorithm("R U")), ChangeError::Algorithm { misfit: Misfit::Swap(_), .. }));
    assert!(matches!(
        refused(algorithm("4Rw")),
        ChangeError::Algorithm { misfit: Misfit::NotOnSize { size: Size::THREE, .. }, .. }
    ));
    assert_eq!(refused(name("WHITE")), ChangeError::ColourTwice("WHITE".to_owned()));
    assert_eq!(refused(name("  ")), ChangeError::NameMissing);
    assert_eq!(refused(letter(" ")), ChangeError::Letters { orbit, error: LettersError::Empty });
    let slice = Change::Method { orbit, method: MethodName::SliceSwap };
    assert_eq!(refused(slice), ChangeError::NotForKind { orbit, method: MethodName::SliceSwap });
    for orbit in Orbit::ALL.into_iter().filter(|orbit| ![Orbit::Corner, Orbit::Midge].contains(orbit)) {
        for method in MethodName::ALL {
            let taken = Conventions::default().changed(&Change::Method { orbit, method }).expect("a method");
            assert_eq!(taken.conventions.kind(orbit).method, method);
            assert_eq!(taken.conventions.kind(orbit).buffer, Conventions::default().kind(orbit).buffer);
        }
    }
}
