//! Links to lessons: samples of every version, links that were cut short, links of a newer version.

use base64::Engine;
use base64::engine::general_purpose::URL_SAFE_NO_PAD as BASE64_URL_SAFE_NO_PAD;
use formats::link::{LessonLink, PART, VERSION, read, write};
use formats::{DocumentError, conventions};
use proptest::prelude::*;
use std::collections::BTreeMap;

/// An address of version 0, part by part: what a page of that time sent.
fn oldest() -> BTreeMap<String, String> {
    serde_json::from_str(include_str!("../samples/lesson/v0.json")).unwrap()
}

fn word(word: &str) -> BTreeMap<String, String> {
    [(PART.to_owned(), word.to_owned())].into()
}

#[test]
fn samples_of_every_version_read_the_same() {
    let old = read(&oldest()).unwrap();
    let mut new = read(&word(include_str!("../samples/lesson/v1.txt"))).unwrap();
    // Conventions within it have a version of their own.
    new.conventions = conventions::to_json(&conventions::from_json(&new.conventions).unwrap());
    assert_eq!(old, new);
    assert_eq!((new.size, new.exercises, new.seed), (2, 6, [7, 9]));
    assert_eq!(new.facelets, "UUUULLLLFFFFRRRRBBBBDDDD");
    assert_eq!(new.left_out, ["edges"]);
    let read = conventions::from_json(&new.conventions).unwrap();
    assert_eq!(read.colour_held(cube::Face::U).name, "yellow");
}

#[test]
fn what_is_no_link_is_refused() {
    let link = read(&oldest()).unwrap();
    let written = write(&link);
    assert!(read(&word(&written[..written.len() / 2])).is_err());
    assert!(read(&word("not base64!")).is_err());
    let newer = format!(r#"{{"document":"lesson","version":{}}}"#, VERSION.0 + 1);
    let newer = BASE64_URL_SAFE_NO_PAD.encode(newer);
    assert!(matches!(read(&word(&newer)), Err(DocumentError::NewerVersion { .. })));
    // A puzzle that there is none of is said, not taken for another.
    let mut nine = oldest();
    nine.insert("size".to_owned(), "9".to_owned());
    assert!(read(&nine).unwrap_err().to_string().contains("size 9"));
    let mut many = oldest();
    many.insert("exercises".to_owned(), "51".to_owned());
    assert!(read(&many).unwrap_err().to_string().contains("exercises 51"));
    nine.insert("size".to_owned(), "two".to_owned());
    assert!(read(&nine).is_err());
}

proptest! {
    #[test]
    fn a_link_reads_back(scramble in "[URFDLB'2 ]{0,60}", exercises in 0..=50u8, seed in any::<[u32; 2]>(), best_hold: bool) {
        let link = LessonLink {
            size: 3,
            scramble,
            facelets: String::new(),
            conventions: String::new(),
            best_hold,
            left_out: Vec::new(),
            exercises,
            seed,
        };
        prop_assert_eq!(read(&word(&write(&link))).unwrap(), link);
    }

    #[test]
    fn any_word_is_met(text in any::<String>()) {
        let _ = read(&word(&text));
    }
}
