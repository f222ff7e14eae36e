//! What was seen after an attempt, as it is typed.

use cube::Orbit;
use diagnosis::{Observed, Seen};
use formats::observed::read;
use proptest::prelude::*;

#[test]
fn what_cannot_be_read_is_named_with_its_place() {
    for (text, sentence) in [
        ("", "no unsolved piece is named; a solved puzzle needs no explanation"),
        ("UF, XX", "column 5: `XX` is no sticker of a corner or an edge; one is written like UFR or UF"),
        ("UFR>UF", "column 5: `UF` does not go on with another piece of the same kind"),
        ("UFR>DBL>LDB>UBR", "column 9: `LDB` does not go on with another piece of the same kind"),
        ("UF flipped; FU", "column 13: UF was named before"),
        ("9 corners", "column 1: there are only 8 corners"),
        ("3 wings", "column 1: `3 wings` is no count; one is written like `3 corners`"),
    ] {
        assert_eq!(read(text).unwrap_err().to_string(), sentence, "{text}");
    }
    assert!(read(&"UF ".repeat(6000)).unwrap_err().to_string().contains("at most 16384"));
}

#[test]
fn what_is_typed_is_understood() {
    let edge = |name| Orbit::Midge.sticker(name).unwrap();
    let corner = |name| Orbit::Corner.sticker(name).unwrap();
    assert_eq!(
        read(" uf flipped ;UFR > dbl>UBR?\nUL?, DFR twisted counter-clockwise"),
        Ok(Observed::Pieces(vec![
            Seen::Turned { orbit: Orbit::Midge, sticker: edge("UF"), clockwise: Some(1) },
            Seen::Cycle {
                orbit: Orbit::Corner,
                stickers: ["UFR", "DBL", "UBR"].map(corner).to_vec(),
                turning: false
            },
            Seen::Unsolved { orbit: Orbit::Midge, sticker: edge("UL") },
            Seen::Turned { orbit: Orbit::Corner, sticker: corner("DFR"), clockwise: Some(2) },
        ]))
    );
    assert_eq!(read("3 corners, 2 edges"), Ok(Observed::Counts(vec![(Orbit::Corner, 3), (Orbit::Midge, 2)])));
}

proptest! {
    #[test]
    fn nothing_typed_makes_it_stumble(text in "(?s).{0,80}", parts in prop::collection::vec(
        prop_oneof!["UF", "UFR", ">", ";", ",", " ", "\\?", "flipped", "twisted", "[0-9]{1,3}", "corners"], 0..20)) {
        let _ = read(&text);
        let _ = read(&parts.concat());
    }
}
