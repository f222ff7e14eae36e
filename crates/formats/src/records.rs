//! What the browser keeps, brought to the present version.
//!
//! A record is an object of JSON: `{"document": "draft", "version": 1, …}`. Version 0 has neither of the two keys. What a
//! record carries as a text (conventions, a sheet) is a document of its own with a version of its own.

use crate::document::{Document, DocumentError, Twin, Version, from_json, to_json};
use crate::{face_letters, sheet};
use serde::{Deserialize, Serialize};
use serde_json::{Map, Value};
use std::collections::BTreeMap;

/// The version of all records.
pub const VERSION: Version = Version(1);

/// The most bytes of a record: a sheet and the rest.
pub const MOST_BYTES: usize = 2 * sheet::MOST_BYTES;

/// The records there are.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Record {
    /// What a person had before them in one tab.
    Draft,
    /// A named set: conventions and the sheet of algorithms that goes with them.
    Set,
    /// A setting of the screens.
    Setting,
}

impl Record {
    /// All records.
    pub const ALL: [Self; 3] = [Self::Draft, Self::Set, Self::Setting];

    /// What document it is.
    pub const fn document(self) -> Document {
        match self {
            Self::Draft => Document::Draft,
            Self::Set => Document::Set,
            Self::Setting => Document::Setting,
        }
    }

    /// The record with the name of its document.
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|record| record.document().name() == name)
    }
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "camelCase")]
struct DraftTwin {
    /// The name of the tab.
    tab: String,
    /// Milliseconds since 1970.
    saved_at: u64,
    /// What stands in each field, by its name.
    draft: BTreeMap<String, String>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct SetTwin {
    name: String,
    /// Grows with every change.
    revision: u64,
    /// Conventions, as TOML.
    source: String,
    /// A sheet as it is kept; empty for none.
    sheet: String,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct SettingTwin {
    name: String,
    value: String,
}

impl Twin for DraftTwin {
    const DOCUMENT: Document = Document::Draft;
    const VERSION: Version = VERSION;
    const MOST: usize = MOST_BYTES;

    /// Version 0 had states as letters of faces in another order, and sheets as CSV.
    fn step(_: Version, mut content: Map<String, Value>) -> Result<Map<String, Value>, DocumentError> {
        if let Some(Value::Object(fields)) = content.get_mut("draft") {
            for (name, value) in fields {
                let Value::String(text) = value else { continue };
                if name.starts_with("facelets-") || name.starts_with("seen-") {
                    // What is no state stays what it was.
                    if let Some(facelets) = face_letters::parse_0(text) {
                        *text = face_letters::text(&facelets);
                    }
                } else if name == "sheet" {
                    *text = kept_sheet(text);
                }
            }
        }
        Ok(content)
    }
}

impl Twin for SetTwin {
    const DOCUMENT: Document = Document::Set;
    const VERSION: Version = VERSION;
    const MOST: usize = MOST_BYTES;

    /// Version 0 had sheets as CSV, and at first none at all.
    fn step(_: Version, mut content: Map<String, Value>) -> Result<Map<String, Value>, DocumentError> {
        let sheet = content.get("sheet").and_then(Value::as_str).map(kept_sheet);
        if !content.get("sheet").is_some_and(|value| !value.is_null() && !value.is_string()) {
            content.insert("sheet".to_owned(), Value::String(sheet.unwrap_or_default()));
        }
        Ok(content)
    }
}

impl Twin for SettingTwin {
    const DOCUMENT: Document = Document::Setting;
    const VERSION: Version = VERSION;
    const MOST: usize = MOST_BYTES;

    /// Version 0 said the same.
    fn step(_: Version, content: Map<String, Value>) -> Result<Map<String, Value>, DocumentError> {
        Ok(content)
    }
}

/// A sheet of version 0 in the present form; what cannot be read stays what it was.
fn kept_sheet(text: &str) -> String {
    if text.trim().is_empty() {
        return String::new();
    }
    sheet::kept(text).map_or_else(|_| text.to_owned(), |sheet| sheet::keep(&sheet))
}

/// A record of any version as one of the present version.
///
/// # Errors
/// [`DocumentError`] for what is no such record, and for one of a newer version: it is to be left as it is.
///
/// ```
/// use formats::records::{Record, migrate};
/// let old = r#"{"name":"theme","value":"dark"}"#;
/// let new = migrate(Record::Setting, old).unwrap();
/// assert_eq!(new, r#"{"document":"setting","version":1,"name":"theme","value":"dark"}"#);
/// assert_eq!(migrate(Record::Setting, &new), Ok(new.clone()));
/// assert!(migrate(Record::Setting, &new.replace(":1,", ":2,")).is_err());
/// ```
pub fn migrate(record: Record, json: &str) -> Result<String, DocumentError> {
    match record {
        Record::Draft => from_json::<DraftTwin>(json).map(|twin| to_json(&twin)),
        Record::Set => from_json::<SetTwin>(json).map(|twin| to_json(&twin)),
        Record::Setting => from_json::<SettingTwin>(json).map(|twin| to_json(&twin)),
    }
}
