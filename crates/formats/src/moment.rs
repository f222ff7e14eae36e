//! The link to a moment of the bench: a puzzle, the lens that is on it, and the letter that is looked at, in one word that an address
//! can carry.
//!
//! Version 0, from before such links had versions, is the query of an address, a word for each part (`size=3&scramble=…`), with
//! colours in the order of faces U R F D L B, conventions as the text of a file, and what was written to be checked.

use crate::conventions;
use crate::document::{Document, DocumentError, Twin, Version, from_json, to_json, within};
use crate::link;
use crate::records::in_letter_order;
use cube::Size;
use serde::{Deserialize, Serialize};
use serde_json::{Map, Value, json};
use std::collections::BTreeMap;

/// The version that is written.
pub const VERSION: Version = Version(1);

/// The part of an address that has the word.
pub const PART: &str = "moment";

/// What a link to a moment carries. What is empty is not written, so that short links stay short.
#[derive(Clone, PartialEq, Eq, Debug, Default, Serialize, Deserialize)]
#[serde(rename_all = "camelCase", deny_unknown_fields)]
pub struct MomentLink {
    /// Layers of the puzzle, 2 to 7.
    pub size: u8,
    /// The scramble as it was typed.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub scramble: String,
    /// The colours of all stickers by the letters of the faces, in the order U L F R B D; if not empty, these count.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub facelets: String,
    /// Conventions as JSON; empty for the usual ones.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub conventions: String,
    /// Pick it up so that the memo is shortest, or as the conventions say; none: as is usual for the size.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub best_hold: Option<bool>,
    /// The letter that is looked at: which part of the memo, and which letter of the part, from 0.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub letter: Option<[u32; 2]>,
    /// A memo that was written to be checked: letters by kind, as files name it.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub memo: BTreeMap<String, String>,
    /// Moves that were made, to be checked.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub moves: String,
}

/// The word of a link.
///
/// ```
/// use formats::moment::{MomentLink, PART, read, write};
/// let link = MomentLink { size: 2, scramble: "R U' F2".to_owned(), letter: Some([0, 1]), ..MomentLink::default() };
/// let carried = [(PART.to_owned(), write(&link))].into();
/// assert_eq!(read(&carried).unwrap(), link);
/// ```
pub fn write(link: &MomentLink) -> String {
    link::word(&to_json(link))
}

/// Reads what an address carries, its parts by name: the word of a link of any version, or the query of version 0.
///
/// # Errors
/// [`DocumentError`] for a link that was cut short or changed, one of a newer version, and a puzzle that there is none of.
pub fn read(carried: &BTreeMap<String, String>) -> Result<MomentLink, DocumentError> {
    let link: MomentLink = match carried.get(PART) {
        Some(word) => {
            within(word, link::MOST_BYTES)?;
            from_json(&link::unworded(word, Document::Moment)?)?
        }
        None => from_json(&json!(carried).to_string())?,
    };
    match Size::new(link.size) {
        Some(_) => Ok(link),
        None => {
            Err(DocumentError::Content { document: Document::Moment, what: format!("size {}", link.size) })
        }
    }
}

impl Twin for MomentLink {
    const DOCUMENT: Document = Document::Moment;
    const VERSION: Version = VERSION;
    const MOST: usize = link::MOST_BYTES;

    fn step(_: Version, content: Map<String, Value>) -> Result<Map<String, Value>, DocumentError> {
        let text = |name: &str| content.get(name).and_then(Value::as_str).unwrap_or_default();
        let size = match text("size").trim() {
            "" => 3,
            written => written.parse::<u32>().map_err(|_| DocumentError::Content {
                document: Document::Moment,
                what: format!("size {written}"),
            })?,
        };
        let conventions = match text("conventions") {
            "" => String::new(),
            written => conventions::read(written)
                .map_or_else(|_| written.to_owned(), |read| conventions::to_json(&read)),
        };
        let memo: BTreeMap<&str, &str> = [("corner", "corners"), ("edge", "edges")]
            .into_iter()
            .map(|(kind, part)| (kind, text(part)))
            .filter(|(_, letters)| !letters.is_empty())
            .collect();
        let best_hold = match text("best-hold") {
            "yes" => Some(true),
            "no" => Some(false),
            _ => None,
        };
        let new = json!({
            "size": size,
            "scramble": text("scramble"),
            "facelets": in_letter_order(text("facelets")),
            "conventions": conventions,
            "bestHold": best_hold,
            "memo": memo,
            "moves": text("moves"),
        });
        match new {
            Value::Object(new) => Ok(new),
            _ => Ok(Map::new()),
        }
    }
}
