//! What the browser kept with an older version of the program, and what becomes of it.

use formats::records::{VERSION, in_letter_order, migrated};
use formats::{Document, DocumentError, conventions};
use proptest::prelude::*;
use serde_json::{Map, Value};

/// The samples of each record, oldest first; they must read for ever.
const SAMPLES: [(Document, [&str; 2]); 3] = [
    (Document::Draft, [include_str!("../samples/draft/v0.json"), include_str!("../samples/draft/v1.json")]),
    (Document::Set, [include_str!("../samples/set/v0.json"), include_str!("../samples/set/v1.json")]),
    (
        Document::Setting,
        [include_str!("../samples/setting/v0.json"), include_str!("../samples/setting/v1.json")],
    ),
];

fn json(text: &str) -> Value {
    serde_json::from_str(text).unwrap()
}

/// The same with conventions that stand in it as they are written now: these have a version of their own.
fn settled(value: Value) -> Value {
    match value {
        Value::Object(object) => {
            object.into_iter().map(|(key, value)| (key, settled(value))).collect::<Map<_, _>>().into()
        }
        Value::Array(list) => list.into_iter().map(settled).collect(),
        Value::String(text) => conventions::from_json(&text)
            .map_or(Value::String(text), |read| conventions::to_json(&read).into()),
        other => other,
    }
}

#[test]
fn samples_of_every_version_become_the_newest() {
    for (record, samples) in SAMPLES {
        assert_eq!(samples.len(), VERSION.0 as usize + 1);
        let newest = settled(json(samples[samples.len() - 1]));
        for sample in samples {
            assert_eq!(settled(json(&migrated(record, sample).unwrap())), newest, "{record}");
        }
    }
}

#[test]
fn a_record_of_a_newer_version_is_refused() {
    for (record, [_, newest]) in SAMPLES {
        let mut newer = json(newest);
        newer["version"] = (VERSION.0 + 1).into();
        let error = migrated(record, &newer.to_string()).unwrap_err();
        assert!(matches!(error, DocumentError::NewerVersion { .. }), "{error}");
    }
}

/// The old order was that of the faces U R F D L B; a face is told here by what stands on it.
#[test]
fn colours_are_put_in_the_order_of_the_letters() {
    assert_eq!(in_letter_order("UUUURRRRFFFFDDDDLLLLBBBB"), "UUUULLLLFFFFRRRRBBBBDDDD");
    let three = |order: &str| order.chars().flat_map(|face| [face; 9]).collect::<String>();
    assert_eq!(in_letter_order(&three("URFDLB")), three("ULFRBD"));
    // Six signs are no puzzle.
    assert_eq!(in_letter_order("URFDLB"), "URFDLB");
    // Half painted: nothing that could be put right.
    assert_eq!(in_letter_order("UUUU"), "UUUU");
    assert_eq!(in_letter_order(""), "");
}

#[test]
fn conventions_that_cannot_be_read_are_kept_as_they_are() {
    let broken = r#"{"name":"Old","revision":1,"source":"[bufer]\n"}"#;
    let kept = json(&migrated(Document::Set, broken).unwrap());
    assert_eq!(kept["source"], "[bufer]\n");
    let usual = r#"{"name":"Usual","revision":1,"source":""}"#;
    assert_eq!(json(&migrated(Document::Set, usual).unwrap())["source"], "");
    let sample = json(&migrated(Document::Set, SAMPLES[1].1[0]).unwrap());
    let read = conventions::from_json(sample["source"].as_str().unwrap()).unwrap();
    assert_eq!(read.colour_held(cube::Face::U).name, "yellow");
}

proptest! {
    #[test]
    fn any_text_is_met(text in any::<String>()) {
        for (record, _) in SAMPLES {
            let _ = migrated(record, &text);
        }
    }

    #[test]
    fn a_damaged_record_is_read_or_refused(at in 0..2usize, from in any::<prop::sample::Index>(), sign in any::<char>()) {
        for (record, samples) in SAMPLES {
            let mut signs: Vec<char> = samples[at].chars().collect();
            let place = from.index(signs.len());
            signs[place] = sign;
            let _ = migrated(record, &signs.into_iter().collect::<String>());
        }
    }
}
