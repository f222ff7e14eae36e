//! What the browser keeps: drafts, sets and settings. Each is written anew in the present form when it is read.
//!
//! Version 0, from before records had versions: colours of a whole puzzle stood in the order of faces U R F D L B, and
//! conventions were kept as the text of a file. Conventions that cannot be read are left as they are, so that nothing is
//! lost and whoever opens them is told why.

use crate::conventions;
use crate::document::{Document, DocumentError, Twin, Version, from_json, to_json};
use crate::sheet;
use cube::Size;
use serde::{Deserialize, Serialize};
use serde_json::{Map, Number, Value};
use std::collections::BTreeMap;

/// The version of every record.
pub const VERSION: Version = Version(1);

/// The most bytes of a record; a sheet of algorithms may be part of it.
pub const MOST_BYTES: usize = 32 << 20;

/// What a person had before them in one tab.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
#[serde(rename_all = "camelCase", deny_unknown_fields)]
struct Draft {
    tab: String,
    saved_at: Number,
    #[serde(rename = "draft")]
    fields: BTreeMap<String, String>,
}

/// A named set of conventions and algorithms.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Set {
    name: String,
    revision: Number,
    source: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    sheet: Option<String>,
}

/// A setting of the screens.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Setting {
    name: String,
    value: String,
}

/// A record as it is kept now, from any earlier form.
///
/// # Errors
/// [`DocumentError`] for a record of a newer version, which then is to be left alone; for what is no such record.
///
/// ```
/// use formats::{Document, records::migrated};
/// let old = r#"{"name": "theme", "value": "dark"}"#;
/// let kept = migrated(Document::Setting, old).unwrap();
/// assert!(kept.contains("\"version\":1"));
/// assert_eq!(migrated(Document::Setting, &kept).unwrap(), kept);
/// assert!(migrated(Document::Setting, &kept.replace(":1", ":2")).is_err());
/// ```
pub fn migrated(record: Document, text: &str) -> Result<String, DocumentError> {
    match record {
        Document::Draft => rewritten::<Draft>(text),
        Document::Set => rewritten::<Set>(text),
        Document::Setting => rewritten::<Setting>(text),
        Document::Conventions
        | Document::Sheet
        | Document::Ease
        | Document::Slips
        | Document::Lesson
        | Document::Moment => Err(DocumentError::OtherDocument {
            expected: Document::Draft,
            found: Some(record.name().to_owned()),
        }),
    }
}

fn rewritten<T: Twin>(text: &str) -> Result<String, DocumentError> {
    Ok(to_json(&from_json::<T>(text)?))
}

impl Twin for Draft {
    const DOCUMENT: Document = Document::Draft;
    const VERSION: Version = VERSION;
    const MOST: usize = MOST_BYTES;

    fn step(_: Version, mut content: Map<String, Value>) -> Result<Map<String, Value>, DocumentError> {
        if let Some(fields) = content.get_mut("draft").and_then(Value::as_object_mut) {
            for (name, value) in fields.iter_mut() {
                let Some(text) = value.as_str() else { continue };
                let colours = ["facelets-", "seen-"].iter().any(|field| name.starts_with(field));
                let new = if colours {
                    in_letter_order(text)
                } else if name == "conventions" {
                    as_json(text)
                } else if name == "sheet" {
                    sheet_as_json(text)
                } else {
                    continue;
                };
                *value = new.into();
            }
        }
        Ok(content)
    }
}

impl Twin for Set {
    const DOCUMENT: Document = Document::Set;
    const VERSION: Version = VERSION;
    const MOST: usize = MOST_BYTES;

    fn step(_: Version, mut content: Map<String, Value>) -> Result<Map<String, Value>, DocumentError> {
        if let Some(source) = content.get_mut("source")
            && let Some(text) = source.as_str()
        {
            *source = as_json(text).into();
        }
        if let Some(sheet) = content.get_mut("sheet")
            && let Some(text) = sheet.as_str()
        {
            *sheet = sheet_as_json(text).into();
        }
        Ok(content)
    }
}

impl Twin for Setting {
    const DOCUMENT: Document = Document::Setting;
    const VERSION: Version = VERSION;
    const MOST: usize = MOST_BYTES;

    fn step(_: Version, content: Map<String, Value>) -> Result<Map<String, Value>, DocumentError> {
        Ok(content)
    }
}

/// Where each face of the order U L F R B D stood in the order U R F D L B.
const STOOD: [usize; 6] = [0, 4, 2, 1, 5, 3];

/// Colours of a whole puzzle in the order of the letters; what is no whole puzzle stays.
pub fn in_letter_order(text: &str) -> String {
    let signs: Vec<char> = text.chars().collect();
    if Size::ALL.into_iter().all(|size| size.facelets() != signs.len()) {
        return text.to_owned();
    }
    let face = signs.len() / STOOD.len();
    STOOD.iter().flat_map(|&stood| &signs[stood * face..(stood + 1) * face]).collect()
}

/// The text of a file of conventions as JSON; the usual ones are kept as nothing.
fn as_json(text: &str) -> String {
    if text.trim().is_empty() {
        return String::new();
    }
    conventions::read(text).map_or_else(|_| text.to_owned(), |read| conventions::to_json(&read))
}

/// The text of a sheet as JSON; no sheet is kept as nothing.
fn sheet_as_json(text: &str) -> String {
    if text.trim().is_empty() {
        return String::new();
    }
    sheet::kept(text).map_or_else(|_| text.to_owned(), |read| sheet::keep(&read))
}
