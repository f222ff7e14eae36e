//! The link to a lesson: what a page behind it is to show, in one word that an address can carry.
//!
//! Version 0, from before links had versions, is the query of an address, a word for each part (`scramble=…&exercises=4`), with
//! colours in the order of faces U R F D L B and conventions as the text of a file.

use crate::conventions;
use crate::document::{Document, DocumentError, Twin, Version, from_json, to_json, within};
use crate::records::in_letter_order;
use base64::Engine;
use base64::engine::general_purpose::URL_SAFE_NO_PAD as BASE64_URL_SAFE_NO_PAD;
use cube::Size;
use serde::{Deserialize, Serialize};
use serde_json::{Map, Value, json};
use std::collections::BTreeMap;

/// The version that is written.
pub const VERSION: Version = Version(1);

/// The most bytes of a link's word; conventions with every key written out are some thousand.
pub const MOST_BYTES: usize = 64 << 10;

/// The most exercises of a lesson.
pub const MOST_EXERCISES: u8 = 50;

/// The part of an address that has the word.
pub const PART: &str = "lesson";

/// What a link to a lesson carries.
#[derive(Clone, PartialEq, Eq, Debug, Serialize, Deserialize)]
#[serde(rename_all = "camelCase", deny_unknown_fields)]
pub struct LessonLink {
    /// Layers of the puzzle, 2 to 7.
    pub size: u8,
    /// The scramble as it was typed.
    pub scramble: String,
    /// The colours of all stickers by the letters of the faces, in the order U L F R B D; if not empty, these count.
    pub facelets: String,
    /// Conventions as JSON; empty for the usual ones.
    pub conventions: String,
    /// Pick it up so that the memo is shortest.
    pub best_hold: bool,
    /// Topics that are left out: `holding`, `corners`, `edges`, `execution`.
    pub left_out: Vec<String>,
    /// How many exercises.
    pub exercises: u8,
    /// The seed of the exercises, in two halves.
    pub seed: [u32; 2],
}

/// The word of a link.
///
/// ```
/// use formats::link::{LessonLink, PART, read, write};
/// let link = LessonLink {
///     size: 2,
///     scramble: "R U' F2".to_owned(),
///     facelets: String::new(),
///     conventions: String::new(),
///     best_hold: true,
///     left_out: vec!["edges".to_owned()],
///     exercises: 4,
///     seed: [1, 2],
/// };
/// let carried = [(PART.to_owned(), write(&link))].into();
/// assert_eq!(read(&carried).unwrap(), link);
/// ```
pub fn write(link: &LessonLink) -> String {
    word(&to_json(link))
}

/// A text as a word that an address can carry.
pub(crate) fn word(text: &str) -> String {
    BASE64_URL_SAFE_NO_PAD.encode(text)
}

/// The text of such a word.
pub(crate) fn unworded(word: &str, document: Document) -> Result<String, DocumentError> {
    let broken = |what: String| DocumentError::Content { document, what };
    let bytes = BASE64_URL_SAFE_NO_PAD.decode(word.trim()).map_err(|error| broken(error.to_string()))?;
    String::from_utf8(bytes).map_err(|error| broken(error.to_string()))
}

/// Reads what an address carries, its parts by name: the word of a link of any version, or the query of version 0.
///
/// # Errors
/// [`DocumentError`] for a link that was cut short or changed, one of a newer version, and a puzzle that there is none of.
pub fn read(carried: &BTreeMap<String, String>) -> Result<LessonLink, DocumentError> {
    let broken = |what: &str| DocumentError::Content { document: Document::Lesson, what: what.to_owned() };
    let link: LessonLink = match carried.get(PART) {
        Some(word) => {
            within(word, MOST_BYTES)?;
            from_json(&unworded(word, Document::Lesson)?)?
        }
        None => from_json(&json!(carried).to_string())?,
    };
    match Size::new(link.size) {
        None => Err(broken(&format!("size {}", link.size))),
        Some(_) if link.exercises > MOST_EXERCISES => Err(broken(&format!("exercises {}", link.exercises))),
        Some(_) => Ok(link),
    }
}

impl Twin for LessonLink {
    const DOCUMENT: Document = Document::Lesson;
    const VERSION: Version = VERSION;
    const MOST: usize = MOST_BYTES;

    fn step(_: Version, content: Map<String, Value>) -> Result<Map<String, Value>, DocumentError> {
        let text = |name: &str| content.get(name).and_then(Value::as_str).unwrap_or_default();
        let number = |name: &str, usual: u32| match text(name) {
            "" => Ok(usual),
            written => written.trim().parse().map_err(|_| DocumentError::Content {
                document: Document::Lesson,
                what: format!("{name} {written}"),
            }),
        };
        let conventions = match text("conventions") {
            "" => String::new(),
            written => conventions::read(written)
                .map_or_else(|_| written.to_owned(), |read| conventions::to_json(&read)),
        };
        let topics = ["holding", "corners", "edges", "execution"];
        let left_out: Vec<&str> = topics.into_iter().filter(|topic| text(topic) == "no").collect();
        let seed = text("seed").split_once('-').unwrap_or_default();
        let half = |half: &str| half.trim().parse::<u32>().unwrap_or_default();
        let new = json!({
            "size": number("size", 3)?,
            "scramble": text("scramble"),
            "facelets": in_letter_order(text("facelets")),
            "conventions": conventions,
            "bestHold": text("best-hold") == "yes",
            "leftOut": left_out,
            "exercises": number("exercises", 4)?,
            "seed": [half(seed.0), half(seed.1)],
        });
        match new {
            Value::Object(new) => Ok(new),
            _ => Ok(Map::new()),
        }
    }
}
