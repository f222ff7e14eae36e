//! Conventions files: whatever is written in one, the answer is conventions or a mistake with its place.

use blind::{Conventions, Letters, OrbitOrder, kind_name, kind_named};
use cube::{LowerCase, Orbit, Sticker};
use formats::DocumentError;
use formats::conventions::{Problem, from_json, read, to_json, write};
use proptest::prelude::*;

/// A conventions file with some lines replaced, removed or exchanged, as slips of a keyboard leave it.
fn damaged() -> impl Strategy<Value = String> {
    let lines: Vec<String> = write(&Conventions::default()).lines().map(str::to_owned).collect();
    let count = lines.len();
    proptest::collection::vec((0..count, 0..count, "[a-zA-Z0-9=\"\\[\\]{}#, .']{0,12}", 0..4u8), 1..4)
        .prop_map(move |slips| {
            let mut lines = lines.clone();
            for (at, other, text, slip) in slips {
                match slip {
                    0 => lines[at] = text,
                    1 => lines[at].clear(),
                    2 => lines.swap(at, other),
                    _ => {
                        let keep = lines[at].chars().count() / 2;
                        lines[at] = lines[at].chars().take(keep).collect();
                        lines[at].push_str(&text);
                    }
                }
            }
            lines.join("\n")
        })
}

proptest! {
    #[test]
    fn a_damaged_file_is_read_or_refused_with_a_place(text in damaged()) {
        match read(&text) {
            Ok(found) => prop_assert_eq!(read(&write(&found)).unwrap(), found),
            Err(error) => {
                let line = text.lines().nth(error.line - 1).unwrap_or("");
                prop_assert!(error.line <= text.lines().count() + 1);
                prop_assert!(error.column <= line.chars().count() + 1, "{error}");
            }
        }
    }

    #[test]
    fn any_text_is_met(text in any::<String>()) {
        let _ = read(&text);
        let _ = from_json(&text);
    }
}

#[test]
fn what_is_written_reads_back() {
    let text = r##"
[colours]
B = { name = "pink", shade = "#ff70a0" }
[holding]
up = "yellow"
front = "pink"
[letters.corner]
U = "abcd"
L = "efgh"
F = "ijkl"
R = "mnop"
B = "qrst"
D = "uvwx"
[buffer]
corner = "DFR"
edge = "LU"
[breaks]
corner = ["UFL", "UBR"]
edge = "fewest"
[memo]
pairs = false
order = ["corner", "edge"]
execution = ["edge", "corner"]
"##;
    let found = read(text).unwrap();
    assert_eq!(read(&write(&found)).unwrap(), found);
    assert_eq!(found.colour_held(cube::Face::F).name, "pink");
}

/// Samples that must read for ever. Version 0 is a file without a version.
#[test]
fn samples_of_every_version_read() {
    let oldest = read(include_str!("../samples/conventions/v0.toml")).unwrap();
    let first = read(include_str!("../samples/conventions/v1.toml")).unwrap();
    let inside = from_json(include_str!("../samples/conventions/v1.json")).unwrap();
    assert_eq!(oldest, first);
    assert_eq!(first, inside);
    let mut newest = read(include_str!("../samples/conventions/v2.toml")).unwrap();
    assert_eq!(newest, from_json(include_str!("../samples/conventions/v2.json")).unwrap());
    // What version 2 says besides.
    for orbit in Orbit::ALL.into_iter().filter(|orbit| orbit.stickers_per_piece() == 1) {
        let (kind, usual) = (newest.kind(orbit).clone(), first.kind(orbit).clone());
        assert_ne!(kind, usual, "{orbit}");
        *newest.kind_mut(orbit) = usual;
    }
    assert_eq!(newest, first);
    // They are not the usual ones, in any key that a file of version 0 has.
    assert_ne!(newest, Conventions::default());
    assert_eq!(newest.colour_held(cube::Face::F).name, "pink");
}

#[test]
fn a_newer_version_is_refused_with_its_place() {
    let error = read("# mine\nversion = 3\n[new]\nkey = 1\n").unwrap_err();
    assert_eq!(error.line, 2, "{error}");
    let newer = |problem: &Problem| matches!(problem, Problem::Document(DocumentError::NewerVersion { .. }));
    assert!(newer(&error.problem), "{error}");
    let inside = to_json(&Conventions::default()).replace("\"version\":2", "\"version\":3");
    assert!(newer(&from_json(&inside).unwrap_err().problem));
    let other = to_json(&Conventions::default()).replace("\"conventions\"", "\"sheet\"");
    assert!(matches!(
        from_json(&other).unwrap_err().problem,
        Problem::Document(DocumentError::OtherDocument { .. })
    ));
}

#[test]
fn every_kind_and_letters_of_several_signs_are_written_and_read() {
    let mut conventions = Conventions::default();
    let letters: Vec<String> = (1..=24).map(|number| number.to_string()).collect();
    for orbit in Orbit::ALL {
        let kind = conventions.kind_mut(orbit);
        kind.letters = Letters::new(&letters).unwrap();
        if !matches!(orbit, Orbit::Corner | Orbit::Midge) {
            kind.buffer = Sticker::all().nth(7).unwrap();
        }
    }
    conventions.memo_order = OrbitOrder::new(&[Orbit::ALL[5], Orbit::Corner]);
    conventions.lower_case = LowerCase::Inner;
    assert_eq!(read(&write(&conventions)).unwrap(), conventions);
    assert_eq!(from_json(&to_json(&conventions)).unwrap(), conventions);
}

/// Until version 1 nothing but corners and edges was carried out: where the other kinds stood in the order was no wish of anybody's.
#[test]
fn an_order_of_an_older_version_says_nothing_of_other_kinds() {
    let text = "version = 1\n[memo]\nexecution = [\"edge\", \"corner\", \"x-centre\", \"wing\"]\n";
    let older = read(text).unwrap().execution_order;
    assert_eq!(older, OrbitOrder::of_execution(&[Orbit::Midge, Orbit::Corner]));
    let newer = read(&text.replace("= 1", "= 2")).unwrap().execution_order;
    let last: Vec<&str> = newer.all().skip(6).map(kind_name).collect();
    assert_eq!(last, ["edge", "corner", "x-centre", "wing"]);
}

#[test]
fn a_wing_is_named_by_either_of_its_stickers() {
    let wing = kind_named("wing").unwrap();
    let left = read("").unwrap();
    let right = read("[named-by]\nwing = \"right\"\n").unwrap();
    let of = |conventions: &Conventions, name: &str| {
        let kind = conventions.kind(wing);
        kind.letters.of(wing.sticker(name).unwrap()).to_owned()
    };
    // B is on U, at the side of R: of the two there the left one is nearer to B.
    assert_eq!((of(&left, "URb"), of(&right, "URf")), ("B".to_owned(), "B".to_owned()));
    assert_eq!(of(&right, "URf"), of(&right, "RUf"));
    assert_eq!(read(&write(&right)).unwrap(), right);
    let rows = "[named-by]\nwing = \"right\"\n[letters.wing]\nU = \"abcd\"\nL = \"efgh\"\nF = \"ijkl\"\nR = \"mnop\"\nB = \"qrst\"\nD = \"uvwx\"\n";
    assert_eq!(of(&read(rows).unwrap(), "URf"), "b");
    assert!(read("[named-by]\ncorner = \"right\"\n").is_err());
}
