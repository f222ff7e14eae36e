//! Links to moments of the bench: samples of every version, links that were cut short, links of a newer version.

use base64::Engine;
use base64::engine::general_purpose::URL_SAFE_NO_PAD as BASE64_URL_SAFE_NO_PAD;
use formats::DocumentError;
use formats::moment::{MomentLink, PART, VERSION, read, write};
use proptest::prelude::*;
use std::collections::BTreeMap;

/// An address of version 0, part by part: what a page of that time sent.
fn oldest() -> BTreeMap<String, String> {
    serde_json::from_str(include_str!("../samples/moment/v0.json")).unwrap()
}

fn word(word: &str) -> BTreeMap<String, String> {
    [(PART.to_owned(), word.to_owned())].into()
}

#[test]
fn samples_of_every_version_read_the_same() {
    let old = read(&oldest()).unwrap();
    let new = read(&word(include_str!("../samples/moment/v1.txt"))).unwrap();
    assert_eq!(old, new);
    assert_eq!((new.size, new.best_hold, new.letter), (2, Some(false), None));
    assert_eq!(new.memo["corner"], "BV GJ");
}

#[test]
fn an_address_without_parts_is_a_3x3_that_is_not_scrambled() {
    assert_eq!(read(&BTreeMap::new()).unwrap(), MomentLink { size: 3, ..MomentLink::default() });
}

#[test]
fn what_is_no_link_is_refused() {
    let written = write(&read(&oldest()).unwrap());
    assert!(read(&word(&written[..written.len() / 2])).is_err());
    assert!(read(&word("not base64!")).is_err());
    let newer = format!(r#"{{"document":"moment","version":{}}}"#, VERSION.0 + 1);
    assert!(matches!(
        read(&word(&BASE64_URL_SAFE_NO_PAD.encode(newer))),
        Err(DocumentError::NewerVersion { .. })
    ));
    // A puzzle that there is none of is said, not taken for another.
    let mut nine = oldest();
    nine.insert("size".to_owned(), "9".to_owned());
    assert!(read(&nine).unwrap_err().to_string().contains("size 9"));
    nine.insert("size".to_owned(), "two".to_owned());
    assert!(read(&nine).is_err());
}

proptest! {
    #[test]
    fn a_link_reads_back(
        scramble in "[URFDLB'2 ]{0,60}", letter: Option<[u32; 2]>, best_hold: Option<bool>, memo in "[A-X ]{0,20}",
    ) {
        let link = MomentLink {
            size: 3,
            scramble,
            best_hold,
            letter,
            memo: [("edge".to_owned(), memo)].into(),
            ..MomentLink::default()
        };
        prop_assert_eq!(read(&word(&write(&link))).unwrap(), link);
    }

    #[test]
    fn any_word_is_met(text in any::<String>()) {
        let _ = read(&word(&text));
    }
}
