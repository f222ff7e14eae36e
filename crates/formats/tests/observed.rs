//! What was seen after an attempt, as it is typed.

use blind::Conventions;
use cube::{Algorithm, Face, Orbit, Size, State, Sticker};
use diagnosis::{Observed, Seen};
use formats::observed::{ObservedError, Vocabulary, read};
use formats::state_text::ColourNames;
use proptest::prelude::*;

fn english() -> ColourNames {
    let words = ["white", "orange", "green", "red", "blue", "yellow"];
    ColourNames::new(&words.map(|word| vec![word.to_owned()]), ['W', 'O', 'G', 'R', 'B', 'Y'])
}

fn german() -> ColourNames {
    let words = ["weiß", "orange", "grün", "rot", "blau", "gelb"];
    ColourNames::new(&words.map(|word| vec![word.to_owned()]), ['W', 'O', 'G', 'R', 'B', 'Y'])
}

fn told(text: &str) -> Result<Observed, ObservedError> {
    let conventions = Conventions::default();
    let names = [english(), german()];
    let reading = |colours| Vocabulary { size: Size::THREE, conventions: &conventions, colours };
    read(text, &reading(&names[0])).or_else(|error| read(text, &reading(&names[1])).map_err(|_| error))
}

fn edge(name: &str) -> Sticker {
    Orbit::Midge.sticker(name).unwrap()
}

fn corner(name: &str) -> Sticker {
    Orbit::Corner.sticker(name).unwrap()
}

fn cycle(orbit: Orbit, names: &[&str], turning: bool) -> Seen {
    let stickers = names.iter().map(|name| orbit.sticker(name).unwrap()).collect();
    Seen::Cycle { orbit, stickers, turning }
}

fn flipped(name: &str) -> Seen {
    Seen::Turned { orbit: Orbit::Midge, sticker: edge(name), clockwise: Some(1) }
}

fn twisted(name: &str, clockwise: Option<u8>) -> Seen {
    Seen::Turned { orbit: Orbit::Corner, sticker: corner(name), clockwise }
}

fn unsolved(name: &str) -> Seen {
    match Orbit::Midge.sticker(name) {
        Some(sticker) => Seen::Unsolved { orbit: Orbit::Midge, sticker },
        None => Seen::Unsolved { orbit: Orbit::Corner, sticker: corner(name) },
    }
}

fn count(orbit: Orbit, count: usize) -> Seen {
    Seen::Count { orbit, count }
}

#[test]
fn what_cannot_be_read_is_named_with_its_place() {
    for (text, sentence) in [
        ("", "no unsolved piece is named; a solved puzzle needs no explanation"),
        ("no corners", "no unsolved piece is named; a solved puzzle needs no explanation"),
        (
            "UF, XX",
            "column 5: `XX` is no sticker of a corner or an edge; one is written like UFR or UF, a piece also like \
             white-green, a letter like edges: A",
        ),
        ("UFR>UF", "column 5: `UF` does not go on with another piece of the same kind"),
        ("UFR>DBL>LDB>UBR", "column 9: `LDB` does not go on with another piece of the same kind"),
        ("UF>", "column 3: `>` does not go on with another piece of the same kind"),
        ("UF flipped; FU", "column 13: UF was named before"),
        ("UF>UF", "column 1: UF>UF says that UF is right; at an unsolved place lies something else"),
        ("9 corners", "column 1: there are only 8 corners"),
        ("3 wings", "column 1: `3 wings` is no count; one is written like `3 corners`"),
        (
            "two edges flipped",
            "column 11: `flipped` is not understood after two edges; say unsolved, or name the pieces",
        ),
        (
            "UF, UR and FR swapped",
            "column 15: `swapped` needs two pieces of one kind before it, and there are 3",
        ),
        (
            "UF in a cycle",
            "column 9: `cycle` needs two or more pieces of one kind before it, and there are 1",
        ),
        ("UF flippered", "column 4: `flippered` is not understood after UF; say flipped or ?"),
        ("UF clockwise", "column 4: `clockwise` is not understood after UF; say flipped or ?"),
        (
            "UFR flipped",
            "column 5: `flipped` is not understood after UFR; say twisted or twisted clockwise or twisted \
             counter-clockwise or ?",
        ),
        ("UF>UR flipped", "column 7: `flipped` is not understood after UF; say ?"),
        ("white-yellow", "column 1: no piece is white-yellow; a piece has two or three colours that meet"),
        ("white-green corner", "column 1: `UF` is no corner"),
        ("A flipped", "column 1: say of which kind the letter `A` is, like edges: A"),
        (
            "edges: A>Z",
            "column 10: `Z` is no letter of the edges and no sticker; letters stand apart, like A B or A>B",
        ),
        ("edges: two; two edges", "column 8: `two` is no count; one is written like `3 corners`"),
        ("two edges; UF flipped", "column 12: UF was named before"),
        ("UF flipped; edges not looked at", "column 13: edge was named before"),
        (
            "U: wwwwwwwww F: ggggxgggg",
            "line 1, column 21 (F, row 2, column 2): `x` is no colour; W O G R B Y are",
        ),
        ("U: wwww F: gggg", "U has 4, F has 4; on a 3x3 a face has 9"),
        ("U: wwwwwwwww U: wwwwwwwww", "column 14: U was named before"),
        ("wwww oooo gggg rr?? bbbb yyyy", "these are the stickers of a 2x2; the attempt was on a 3x3"),
    ] {
        assert_eq!(told(text).map_err(|error| error.to_string()), Err(sentence.to_owned()), "{text}");
    }
    assert!(told(&"UF ".repeat(6000)).unwrap_err().to_string().contains("at most 16384"));
}

/// Every text of a row says what stands beside it. Common practice, no source: how people write down what is left.
fn all_say(rows: &[(&[&str], Vec<Seen>)]) {
    for (texts, seen) in rows {
        for text in *texts {
            assert_eq!(told(text), Ok(Observed::Pieces(seen.clone())), "{text}");
        }
    }
}

#[test]
fn traces_lists_and_words_behind_them_are_understood() {
    let edges = |names: &[&str], turning| vec![cycle(Orbit::Midge, names, turning)];
    let one = |seen: Seen| vec![seen];
    all_say(&[
        (
            &[
                "UF>UR>FR",
                "uf -> ur -> fr",
                "UF→UR→FR",
                "UF to UR to FR",
                "UF nach UR nach FR",
                "(UF UR FR)",
                "white-green > white-red > green-red",
                "weiß-grün > weiß-rot > grün-rot",
                "edges: C>B>J",
                "Kanten: c → b → j",
                "UF goes to UR > FR",
                "edges UF>UR>FR",
                "UF => UR ⇒ FR.",
            ],
            edges(&["UF", "UR", "FR"], true),
        ),
        (
            &[
                "UF>UR>FR?",
                "UF UR FR in a cycle",
                "UF, UR, FR in a cycle",
                "UF, UR und FR im Kreis",
                "Zyklus UF UR FR",
                "(UF, UR, FR)?",
                "a cycle of UF, UR and FR",
                "UF-UR-FR cycled",
            ],
            edges(&["UF", "UR", "FR"], false),
        ),
        (
            &[
                "UF and UR swapped",
                "UF und UR vertauscht",
                "UF, UR swapped",
                "UF and UR are swapped with each other",
                "UF<->UR",
                "UF ↔ UR",
                "UF swapped with UR",
                "die weiß-grüne Kante und weiß-rot sind vertauscht",
                "edges C and B are swapped",
            ],
            edges(&["UF", "UR"], false),
        ),
        (
            &[
                "UF flipped",
                "UF gekippt",
                "UF is flipped",
                "UF turned",
                "flipped: UF",
                "white/green is flipped",
                "die weiß-grüne Kante ist gekippt",
                "edge C flipped",
                "weiss-gruen gekippt",
            ],
            one(flipped("UF")),
        ),
    ]);
}

#[test]
fn words_said_of_pieces_are_understood() {
    let one = |seen: Seen| vec![seen];
    all_say(&[
        (
            &["UF and UR flipped", "UF, UR flipped", "UF, UR gekippt", "flipped are UF and UR"],
            vec![flipped("UF"), flipped("UR")],
        ),
        (
            &[
                "UFR twisted clockwise",
                "UFR im Uhrzeigersinn verdreht",
                "UFR verdreht im Uhrzeigersinn",
                "UFR is twisted cw",
                "white-green-red corner twisted clockwise",
                "UFR clockwise",
                "Ecke UFR im Uhrzeigersinn gedreht",
            ],
            one(twisted("UFR", Some(1))),
        ),
        (
            &[
                "UFR twisted counter-clockwise",
                "UFR gegen den Uhrzeigersinn verdreht",
                "UFR ccw",
                "UFR twisted anticlockwise",
                "UFR turned counter clockwise",
            ],
            one(twisted("UFR", Some(2))),
        ),
        (
            &["URF is turned", "UFR twisted", "UFR ist verdreht", "white-red-green is turned"],
            one(twisted("UFR", None)),
        ),
        (
            &[
                "two corners",
                "2 corners",
                "zwei Ecken",
                "2 unsolved corners",
                "two corners are unsolved",
                "zwei ungelöste Ecken",
            ],
            one(count(Orbit::Corner, 2)),
        ),
    ]);
}

#[test]
fn counts_kinds_and_all_the_rest_are_understood() {
    all_say(&[
        (
            &[
                "2 edges and a corner",
                "two edges, one corner",
                "zwei Kanten und eine Ecke",
                "2 Kanten; 1 Ecke",
            ],
            vec![count(Orbit::Midge, 2), count(Orbit::Corner, 1)],
        ),
        (
            &[
                "UF, UFR",
                "UF UFR",
                "UF and UFR are wrong",
                "UF?; UFR",
                "UF und UFR sind falsch",
                "white-green, white-green-red",
                "UF and corner UFR",
            ],
            vec![unsolved("UF"), unsolved("UFR")],
        ),
        (
            &[
                "only edges: UF flipped, UR flipped",
                "edges only: UF, UR flipped",
                "UF, UR flipped; corners not looked at",
                "nur Kanten: UF, UR gekippt",
                "UF, UR gekippt; Ecken nicht angesehen",
                "UF and UR flipped, corners unknown",
                "corners: ?; UF and UR flipped",
                "UF und UR gekippt; der Rest ist unbekannt",
            ],
            vec![flipped("UF"), flipped("UR"), Seen::Unlooked { orbit: Orbit::Corner }],
        ),
        (
            &[
                "UF flipped, nothing else",
                "UF gekippt, sonst nichts",
                "only UF flipped",
                "nur UF gekippt",
                "UF flipped; the rest is solved",
                "UF flipped, no other piece",
            ],
            vec![flipped("UF"), Seen::NothingElse],
        ),
    ]);
}

#[test]
fn items_of_several_sorts_are_understood() {
    all_say(&[
        (
            &["RUB>URB; LUB>ULB"],
            vec![cycle(Orbit::Corner, &["RUB", "URB"], true), cycle(Orbit::Corner, &["LUB", "ULB"], true)],
        ),
        (
            &["UF to UR to FR and two corners", "UF>UR>FR; 2 Ecken"],
            vec![cycle(Orbit::Midge, &["UF", "UR", "FR"], true), count(Orbit::Corner, 2)],
        ),
        (
            &[" uf flipped ;UFR > dbl>UBR?\nUL?, DFR twisted counter-clockwise"],
            vec![
                flipped("UF"),
                cycle(Orbit::Corner, &["UFR", "DBL", "UBR"], false),
                unsolved("UL"),
                twisted("DFR", Some(2)),
            ],
        ),
        (
            &["edges: A>B, C flipped; corners: B twisted clockwise"],
            vec![cycle(Orbit::Midge, &["UB", "UR"], true), flipped("UF"), twisted("UBR", Some(1))],
        ),
    ]);
}

#[test]
fn stickers_are_read_in_part() {
    let turns = Algorithm::parse("R U F2", Size::THREE).unwrap().flatten();
    let seen = State::solved(Size::THREE).after(&turns).facelets();
    let letter = |colour: Face| "wogrby".chars().nth(colour.index()).unwrap();
    let of = |face: Face| seen.face(face).iter().map(|&colour| letter(colour)).collect::<String>();
    // Only what is known comes back.
    let known = |observed: Result<Observed, ObservedError>| match observed {
        Ok(Observed::Stickers(glimpse)) => glimpse.colours().to_vec(),
        other => panic!("{other:?}"),
    };
    let all: Vec<Option<Face>> = seen.colours().iter().copied().map(Some).collect();
    let whole: Vec<String> = Face::ALL.map(of).to_vec();
    assert_eq!(known(told(&whole.join(" "))), all);
    let mut part = all.clone();
    let mut text = whole.concat();
    for at in [0, 7, 20, 53] {
        part[at] = None;
        text.replace_range(at..=at, "?");
    }
    assert_eq!(known(told(&text)), part);
    assert_eq!(known(told(&format!("U: {}\n", &text[..9]))), {
        let mut up = vec![None; 54];
        up[..9].copy_from_slice(&part[..9]);
        up
    });
    let faces = format!("front: {} oben: {}", of(Face::F), of(Face::U));
    let two = known(told(&faces));
    assert_eq!(two[..9], all[..9]);
    assert_eq!(two[18..27], all[18..27]);
    assert_eq!(two.iter().filter(|colour| colour.is_some()).count(), 18);
    // As words, in German, and as a net.
    let word = |at: usize| match part[at] {
        None => "?",
        Some(colour) => ["weiß", "orange", "grün", "rot", "blau", "gelb"][colour.index()],
    };
    let words: Vec<&str> = (0..54).map(word).collect();
    assert_eq!(known(told(&words.join(" "))), part);
    let rows = |face: usize, row: usize| text[9 * face + 3 * row..9 * face + 3 * row + 3].to_owned();
    let side = |row: usize| [1, 2, 3, 4].map(|face| rows(face, row)).join(" ");
    let net = [0, 1, 2].map(|row| format!("    {}", rows(0, row))).join("\n")
        + "\n"
        + &[0, 1, 2].map(side).join("\n")
        + "\n"
        + &[0, 1, 2].map(|row| format!("    {}", rows(5, row))).join("\n");
    assert_eq!(known(told(&net)), part);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(600))]

    #[test]
    fn stickers_that_are_written_are_read_back(
        size in 2..=3u8,
        colours in prop::collection::vec(0..7usize, 54),
        german: bool,
        words: bool,
    ) {
        let size = Size::new(size).unwrap();
        let count = size.facelets();
        prop_assume!(colours[..count].iter().any(|&colour| colour < 6));
        let known: Vec<Option<Face>> = colours[..count].iter().map(|&colour| Face::ALL.into_iter().nth(colour)).collect();
        let names = if german { ["weiß", "orange", "grün", "rot", "blau", "gelb"] } else { ["white", "orange", "green", "red", "blue", "yellow"] };
        let as_words = german || words;
        let cell = |colour: &Option<Face>| match colour {
            None => "?".to_owned(),
            Some(colour) if as_words => names[colour.index()].to_owned(),
            Some(colour) => names[colour.index()][..1].to_owned(),
        };
        let faces: Vec<String> = known
            .chunks(count / 6)
            .map(|face| face.iter().map(cell).collect::<Vec<_>>().join(if as_words { " " } else { "" }))
            .collect();
        let text = faces.join(if as_words { ", " } else { " " });
        let conventions = Conventions::default();
        let colours = if german { self::german() } else { english() };
        let reading = Vocabulary { size, conventions: &conventions, colours: &colours };
        match read(&text, &reading) {
            Ok(Observed::Stickers(glimpse)) => prop_assert_eq!(glimpse.colours(), &known, "{}", text),
            other => prop_assert!(false, "{text}: {other:?}"),
        }
        // The same as faces with their names.
        let named: Vec<String> = Face::ALL.into_iter().zip(&faces).rev().map(|(face, colours)| format!("{face}: {colours}")).collect();
        match read(&named.join("\n"), &reading) {
            Ok(Observed::Stickers(glimpse)) => prop_assert_eq!(glimpse.colours(), &known, "{}", text),
            other => prop_assert!(false, "{named:?}: {other:?}"),
        }
    }

    #[test]
    fn nothing_typed_makes_it_stumble(text in "(?s).{0,80}", parts in prop::collection::vec(
        prop_oneof!["UF", "UFR", ">", "->", "→", ";", ",", " ", "\\?", ":", "\\(", "\\)", "<", "-", "/", "flipped", "twisted",
            "swapped", "cycle", "clockwise", "gegen", "not", "nicht", "only", "nur", "rest", "nothing", "each", "other", "to",
            "white", "green-", "a", "[0-9]{1,3}", "corners", "edges", "U: w", "wwwwwwwww"], 0..24)) {
        let _ = told(&text);
        let _ = told(&parts.concat());
        let _ = told(&parts.join(" "));
    }
}
