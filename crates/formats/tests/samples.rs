//! A sample of every version of every document, which must read for ever; and what a newer version would be.
#![expect(clippy::disallowed_methods, reason = "the samples are files")]

use formats::{Document, DocumentError, Version, ease, sheet, slips};
use std::collections::BTreeMap;
use std::path::PathBuf;

/// The samples of a document by version.
fn samples(document: Document) -> BTreeMap<u32, String> {
    let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("samples").join(document.name());
    let mut samples = BTreeMap::new();
    for entry in std::fs::read_dir(&folder).unwrap_or_else(|error| panic!("{}: {error}", folder.display())) {
        let path = entry.unwrap().path();
        let stem = path.file_stem().and_then(|stem| stem.to_str()).unwrap();
        let version = stem.strip_prefix('v').and_then(|number| number.parse().ok());
        let version = version.unwrap_or_else(|| panic!("{}: not named vN", path.display()));
        samples.insert(version, std::fs::read_to_string(&path).unwrap());
    }
    samples
}

/// All versions from 0 to the present one have a sample.
fn whole(document: Document, present: Version) -> Vec<String> {
    let samples = samples(document);
    let versions: Vec<u32> = samples.keys().copied().collect();
    assert_eq!(versions, (0..=present.0).collect::<Vec<_>>(), "samples of {document}");
    samples.into_values().collect()
}

/// The text with the number of its version made greater by one.
fn newer(text: &str, present: Version, written: impl Fn(u32) -> String) -> String {
    let (now, next) = (written(present.0), written(present.0 + 1));
    assert_eq!(text.matches(&now).count(), 1);
    text.replace(&now, &next)
}

fn refused_as_newer<T: std::fmt::Debug>(
    read: Result<T, DocumentError>,
    document: Document,
    present: Version,
) {
    let found = Version(present.0 + 1);
    assert_eq!(read.unwrap_err(), DocumentError::NewerVersion { document, found, known: present });
}

#[test]
fn models_of_hands() {
    let read: Vec<_> = whole(Document::Ease, ease::VERSION)
        .iter()
        .map(|text| ease::read(text).unwrap_or_else(|error| panic!("{error}")))
        .collect();
    // Both say the same.
    assert_eq!(read[0], read[1]);
    assert_eq!(read[0].ways().len(), 21);
    let text = newer(&ease::write(&read[0]), ease::VERSION, |number| format!("version = {number}"));
    let result = ease::read(&text).map_err(|error| match error {
        ease::EaseError::Document(error) => error,
        other => panic!("{other}"),
    });
    refused_as_newer(result, Document::Ease, ease::VERSION);
}

#[test]
fn catalogues_of_slips() {
    let read: Vec<_> = whole(Document::Slips, slips::VERSION)
        .iter()
        .map(|text| slips::read(text).unwrap_or_else(|error| panic!("{error}")))
        .collect();
    assert_eq!(read[0], read[1]);
    // What version 1 did not know weighs in proportion; these samples are of the same estimates.
    for (old, new) in read[1].weights().iter().zip(read[2].weights()) {
        assert!((old - new).abs() < 1e-9, "{old} {new}");
    }
    assert!(read[0].alike("M", "W") && (read[0].strength() - 60.0).abs() < 1e-12);
    let text = newer(&slips::write(&read[0]), slips::VERSION, |number| format!("version = {number}"));
    let result = slips::read(&text).map_err(|error| match error {
        slips::SlipsError::Document(error) => error,
        slips::SlipsError::Catalogue(error) => panic!("{error}"),
    });
    refused_as_newer(result, Document::Slips, slips::VERSION);
}

#[test]
fn sheets() {
    let read: Vec<_> = whole(Document::Sheet, sheet::VERSION)
        .iter()
        .map(|text| sheet::kept(text).unwrap_or_else(|error| panic!("{error}")))
        .collect();
    assert_eq!(read[0], read[1]);
    let rows = read[0].rows();
    // Alternatives in one cell are rows of their own.
    assert_eq!((rows.len(), read[0].check().right()), (7, 2));
    assert_eq!((rows[5].case, rows[5].named.as_str()), (None, "UXL RDF"));
    assert_eq!(rows[1].more, ["no", "beyond"]);
    let text = newer(&sheet::keep(&read[0]), sheet::VERSION, |number| format!("\"version\":{number},"));
    let result = sheet::kept(&text).map_err(|error| match error {
        sheet::SheetError::Document(error) => error,
        other => panic!("{other}"),
    });
    refused_as_newer(result, Document::Sheet, sheet::VERSION);
}
