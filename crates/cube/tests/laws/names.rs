//! What stickers and pieces are called.

use cube::{Axis, Face, Orbit, Size, State, Sticker, Turn};
use proptest::prelude::*;
use std::collections::HashSet;

fn names(orbit: Orbit) -> Vec<&'static str> {
    Sticker::all().map(|sticker| orbit.name(sticker)).collect()
}

fn orbit(size: u8, name: &str) -> Orbit {
    let size = Size::new(size).unwrap();
    Orbit::of(size).iter().copied().find(|orbit| orbit.to_string() == name).unwrap()
}

// Common practice, no source: faces in the order U L F R B D, clockwise from the upper left.
#[test]
fn corners_in_letter_order() {
    let expected =
        "UBL UBR UFR UFL LUB LUF LDF LDB FUL FUR FDR FDL RUF RUB RDB RDF BUR BUL BDL BDR DFL DFR DBR DBL";
    for (sticker, name) in Sticker::all().zip(expected.split(' ')) {
        assert_eq!(Orbit::Corner.sticker(name), Some(sticker), "{name}");
    }
}

// Common practice, no source.
#[test]
fn midges_in_letter_order() {
    let expected = "UB UR UF UL LU LF LD LB FU FR FD FL RU RB RD RF BU BL BD BR DF DR DB DL";
    assert_eq!(names(Orbit::Midge).join(" "), expected);
}

// Common practice, no source: lower-case letters for inner layers; wings and centres of U from the upper left.
#[test]
fn wings_and_centres_of_the_u_face() {
    let first_four = |orbit: Orbit| names(orbit)[..4].join(" ");
    assert_eq!(first_four(orbit(4, "wing")), "UBl URb UFr ULf");
    assert_eq!(first_four(orbit(5, "wing")), "UBl URb UFr ULf");
    assert_eq!(first_four(orbit(5, "x-centre")), "Ubl Ubr Ufr Ufl");
    assert_eq!(first_four(orbit(5, "t-centre")), "Ub Ur Uf Ul");
    assert_eq!(first_four(orbit(6, "right oblique")), "Ub3l Ur3b Uf3r Ul3f");
    assert_eq!(first_four(orbit(6, "left oblique")), "Ub3r Ur3f Uf3l Ul3b");
    assert_eq!(first_four(orbit(7, "x-centre 3")), "U3b3l U3b3r U3f3r U3f3l");
    assert_eq!(first_four(orbit(7, "t-centre 3")), "U3b U3r U3f U3l");
    assert_eq!(first_four(orbit(7, "wing 3")), "UB3l UR3b UF3r UL3f");
}

#[test]
fn a_size_has_the_orbits_that_its_facelets_need() {
    for size in Size::ALL {
        // Wings have two facelets for each of their 24 stickers, all others one; fixed centres have six.
        let facelets: usize = Orbit::of(size)
            .iter()
            .map(|orbit| if matches!(orbit, Orbit::Wing { .. }) { 48 } else { 24 })
            .sum();
        assert_eq!(facelets + if size.is_odd() { 6 } else { 0 }, size.facelets(), "{size}");
    }
}

#[test]
fn names_are_unique_within_a_size_and_read_back() {
    for size in Size::ALL {
        let mut seen = HashSet::new();
        for &orbit in Orbit::of(size) {
            for sticker in Sticker::all() {
                let name = orbit.name(sticker);
                assert!(seen.insert(name), "{name} twice on {size}");
                assert!(name.starts_with(sticker.face().letter()));
                for &other in Orbit::of(size) {
                    let expected = (other == orbit).then_some(sticker);
                    assert_eq!(other.sticker(name), expected, "{name} as {other} of {size}");
                }
            }
        }
    }
}

#[test]
fn names_read_back_with_their_letters_in_any_order() {
    for orbit in [Orbit::Corner, orbit(5, "x-centre"), orbit(4, "wing")] {
        for sticker in Sticker::all() {
            let letters: Vec<char> = orbit.name(sticker).chars().collect();
            let [a, b, c] = letters[..] else { panic!("three letters") };
            assert_eq!(orbit.sticker(&format!("{a}{c}{b}")), Some(sticker));
        }
    }
    let oblique = orbit(7, "left oblique");
    assert_eq!(oblique.sticker("U3rb"), oblique.sticker("Ub3r"));
    assert_eq!(oblique.sticker("U2b3r"), oblique.sticker("Ub3r"));
    for wrong in ["", "U", "UU", "UD", "UFRL", "ufr", "UFR ", "UF2", "9", "3", "🙂", "U🙂F"] {
        assert_eq!(Orbit::Corner.sticker(wrong), None, "{wrong}");
    }
}

#[test]
fn pieces_hold_together_whatever_is_turned() {
    for size in Size::ALL {
        for turn in Turn::all(size) {
            let state = State::solved(size).after(&[turn]);
            for &orbit in Orbit::of(size) {
                for place in Sticker::all() {
                    let next = orbit.turned(place, 1);
                    assert_eq!(state.at(orbit, next), orbit.turned(state.at(orbit, place), 1));
                    assert_eq!(orbit.piece(next), orbit.piece(place));
                }
            }
        }
    }
}

#[test]
fn stickers_of_a_piece_run_clockwise() {
    // Common practice, no source: looked at from outside, the corner UFR shows U, R, F clockwise.
    let around: Vec<&str> = Orbit::Corner
        .stickers_from(Orbit::Corner.sticker("UFR").unwrap())
        .map(|sticker| Orbit::Corner.name(sticker))
        .collect();
    assert_eq!(around, ["UFR", "RUF", "FUR"]);
    for orbit in Orbit::of(Size::ALL[5]) {
        for sticker in Sticker::all() {
            assert_eq!(orbit.turned(sticker, orbit.stickers_per_piece()), sticker);
            assert_eq!(orbit.stickers_from(sticker).count(), orbit.stickers_per_piece() as usize);
            assert_eq!(orbit.piece_name(sticker), orbit.name(orbit.reference(orbit.piece(sticker))));
        }
    }
}

#[test]
fn a_piece_shows_the_faces_in_its_name() {
    for orbit in [Orbit::Corner, Orbit::Midge, orbit(4, "wing")] {
        for sticker in Sticker::all() {
            let capitals: Vec<Face> = orbit.name(sticker).chars().filter_map(Face::from_letter).collect();
            assert_eq!(orbit.faces(sticker), capitals);
        }
    }
    assert_eq!(Axis::ALL.map(Axis::positive), [Face::R, Face::U, Face::F]);
}

proptest! {
    #[test]
    fn no_name_makes_it_panic(name in ".{0,12}", letters in "[ULFRBDulfrbd0-9]{0,7}") {
        for &orbit in Orbit::of(Size::ALL[5]) {
            for text in [&name, &letters] {
                if let Some(sticker) = orbit.sticker(text) {
                    // A wing is named by its sticker on the other face too.
                    let first = text.chars().next().and_then(Face::from_letter);
                    let own = text.starts_with(sticker.face().letter());
                    let other = orbit.across(sticker) != sticker
                        && first.is_some_and(|face| orbit.faces(sticker).contains(&face));
                    prop_assert!(own || other, "{text}");
                }
            }
        }
    }
}
