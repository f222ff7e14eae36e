//! The link of a lesson: what a page for pupils is made from, short enough to be sent.
//!
//! A link carries JSON in base64url (RFC 4648, section 5) under the key `link`; version 0 had a key for each part.

use crate::document::{Document, DocumentError, Twin, Version, from_json, to_json, within};
use crate::face_letters;
use base64::Engine as _;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use cube::{Facelets, Size};
use percent_encoding::percent_decode_str;
use serde::{Deserialize, Serialize};
use serde_json::{Map, Value};

/// The version that is written.
pub const VERSION: Version = Version(1);

/// The most bytes that are read, of the link and of what is in it.
pub const MOST_BYTES: usize = 64 << 10;

/// The most exercises of a lesson.
pub const MOST_EXERCISES: u8 = 12;

/// The key under which a link carries a lesson.
const KEY: &str = "link";

/// What a lesson begins with.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Start {
    /// A scramble, as it was typed.
    Scramble(String),
    /// The colours one sees, possible or not.
    Colours(Facelets),
}

/// What a lesson is made from.
#[expect(clippy::struct_excessive_bools, reason = "each is a box to tick")]
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct LessonLink {
    /// The puzzle.
    pub size: Size,
    /// Its state.
    pub start: Start,
    /// The conventions as a file; empty for the usual ones.
    pub conventions: String,
    /// Whether it is held as leaves the shortest memo.
    pub best_hold: bool,
    /// Whether picking it up is explained.
    pub holding: bool,
    /// Whether the trace of the corners is.
    pub corners: bool,
    /// Whether that of the edges is.
    pub edges: bool,
    /// Whether the execution is.
    pub execution: bool,
    /// How many exercises there are, [`MOST_EXERCISES`] at most.
    pub exercises: u8,
    /// The seed of the exercises.
    pub seed: u64,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "camelCase")]
struct LessonTwin {
    size: u8,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    scramble: Option<String>,
    /// Letters of faces in the order U L F R B D, row by row.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    colours: Option<String>,
    #[serde(default, skip_serializing_if = "String::is_empty")]
    conventions: String,
    #[serde(default, skip_serializing_if = "is_no")]
    best_hold: bool,
    /// What is not explained.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    without: Vec<Topic>,
    exercises: u8,
    /// As a text, since the numbers of a browser end at 2⁵³.
    seed: String,
}

#[derive(Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum Topic {
    Holding,
    Corners,
    Edges,
    Execution,
}

#[expect(clippy::trivially_copy_pass_by_ref, reason = "serde asks so")]
const fn is_no(value: &bool) -> bool {
    !*value
}

impl Twin for LessonTwin {
    const DOCUMENT: Document = Document::Lesson;
    const VERSION: Version = VERSION;
    const MOST: usize = MOST_BYTES;

    fn step(_: Version, _: Map<String, Value>) -> Result<Map<String, Value>, DocumentError> {
        // Version 0 was no JSON.
        Err(DocumentError::OtherDocument { expected: Document::Lesson, found: None })
    }
}

fn content(what: impl Into<String>) -> DocumentError {
    DocumentError::Content { document: Document::Lesson, what: what.into() }
}

impl From<&LessonLink> for LessonTwin {
    fn from(link: &LessonLink) -> Self {
        let (scramble, colours) = match &link.start {
            Start::Scramble(text) => (Some(text.clone()), None),
            Start::Colours(facelets) => (None, Some(face_letters::text(facelets))),
        };
        let topics = [
            (Topic::Holding, link.holding),
            (Topic::Corners, link.corners),
            (Topic::Edges, link.edges),
            (Topic::Execution, link.execution),
        ];
        Self {
            size: link.size.layers(),
            scramble,
            colours,
            conventions: link.conventions.clone(),
            best_hold: link.best_hold,
            without: topics.into_iter().filter(|(_, wanted)| !wanted).map(|(topic, _)| topic).collect(),
            exercises: link.exercises.min(MOST_EXERCISES),
            seed: link.seed.to_string(),
        }
    }
}

impl TryFrom<LessonTwin> for LessonLink {
    type Error = DocumentError;

    fn try_from(twin: LessonTwin) -> Result<Self, DocumentError> {
        let size =
            Size::new(twin.size).ok_or_else(|| content(format!("no cube has {} layers", twin.size)))?;
        let start = match (twin.scramble, twin.colours) {
            (Some(scramble), None) => Start::Scramble(scramble),
            (None, Some(colours)) => {
                let facelets = face_letters::parse(&colours).filter(|facelets| facelets.size() == size);
                Start::Colours(facelets.ok_or_else(|| content(format!("`{colours}` is no {size}")))?)
            }
            _ => return Err(content("it needs either `scramble` or `colours`")),
        };
        if twin.exercises > MOST_EXERCISES {
            return Err(content(format!("{} exercises are too many", twin.exercises)));
        }
        let seed = twin.seed.parse().map_err(|_| content(format!("`{}` is no seed", twin.seed)))?;
        let with = |topic: Topic| !twin.without.contains(&topic);
        Ok(Self {
            size,
            start,
            conventions: twin.conventions,
            best_hold: twin.best_hold,
            holding: with(Topic::Holding),
            corners: with(Topic::Corners),
            edges: with(Topic::Edges),
            execution: with(Topic::Execution),
            exercises: twin.exercises,
            seed,
        })
    }
}

/// A lesson as what stands behind the `?` of its link.
///
/// ```
/// use cube::Size;
/// use formats::lesson_link::{LessonLink, Start, read, write};
/// let lesson = LessonLink {
///     size: Size::THREE,
///     start: Start::Scramble("R U' F2".to_owned()),
///     conventions: String::new(),
///     best_hold: false,
///     holding: true,
///     corners: true,
///     edges: true,
///     execution: false,
///     exercises: 4,
///     seed: 7,
/// };
/// let link = write(&lesson);
/// assert!(link.starts_with("link=") && link.len() < 200);
/// assert_eq!(read(&link), Ok(Some(lesson.clone())));
/// // As links were before they had a version.
/// assert_eq!(read("size=3&scramble=R+U%27+F2&execution=no&exercises=4&seed=0-7"), Ok(Some(lesson)));
/// assert_eq!(read("view=trace"), Ok(None));
/// ```
pub fn write(link: &LessonLink) -> String {
    format!("{KEY}={}", URL_SAFE_NO_PAD.encode(to_json(&LessonTwin::from(link))))
}

/// Reads what stands behind the `?` of a link; nothing if it carries no lesson.
///
/// # Errors
/// [`DocumentError`] for what is too long, of a newer version or cannot be read.
pub fn read(query: &str) -> Result<Option<LessonLink>, DocumentError> {
    within(query, MOST_BYTES)?;
    let pairs = pairs(query)?;
    let get = |key: &str| pairs.iter().find(|(name, _)| name == key).map(|(_, value)| value.as_str());
    if let Some(carried) = get(KEY) {
        let broken = || content("the link is cut off or changed");
        let bytes = URL_SAFE_NO_PAD.decode(carried.trim_end_matches('=')).map_err(|_| broken())?;
        let text = String::from_utf8(bytes).map_err(|_| broken())?;
        return LessonLink::try_from(from_json::<LessonTwin>(&text)?).map(Some);
    }
    version_0(&get)
}

/// Keys and values of a query, as a form sends them.
fn pairs(query: &str) -> Result<Vec<(String, String)>, DocumentError> {
    let decoded = |text: &str| {
        let text = text.replace('+', " ");
        percent_decode_str(&text).decode_utf8().map(std::borrow::Cow::into_owned)
    };
    let pair = |part: &str| {
        let (key, value) = part.split_once('=').unwrap_or((part, ""));
        Ok((decoded(key)?, decoded(value)?))
    };
    let parts = query.trim_start_matches('?').split('&').filter(|part| !part.is_empty());
    let read: Result<_, std::str::Utf8Error> = parts.map(pair).collect();
    read.map_err(|_| content("the link is cut off or changed"))
}

fn version_0<'a>(get: &impl Fn(&str) -> Option<&'a str>) -> Result<Option<LessonLink>, DocumentError> {
    let layers = if get("size") == Some("2") { 2 } else { 3 };
    let size = Size::new(layers).ok_or_else(|| content("no size"))?;
    let start = match (get("facelets").filter(|text| !text.is_empty()), get("scramble")) {
        (Some(text), _) => {
            let facelets = face_letters::parse_0(text).filter(|facelets| facelets.size() == size);
            Start::Colours(facelets.ok_or_else(|| content(format!("`{text}` is no {size}")))?)
        }
        (None, Some(text)) => Start::Scramble(text.to_owned()),
        (None, None) => return Ok(None),
    };
    // What could not be read stood for what is usual.
    let exercises = get("exercises").and_then(|text| text.parse().ok());
    let half = |text: Option<&str>| text.and_then(|text| text.parse::<u32>().ok()).unwrap_or(0);
    let mut halves = get("seed").unwrap_or_default().split('-');
    let (high, low) = (half(halves.next()), half(halves.next()));
    let with = |topic: &str| get(topic) != Some("no");
    Ok(Some(LessonLink {
        size,
        start,
        conventions: get("conventions").unwrap_or_default().to_owned(),
        best_hold: get("best-hold") == Some("yes"),
        holding: with("holding"),
        corners: with("corners"),
        edges: with("edges"),
        execution: with("execution"),
        exercises: exercises.filter(|&count| count <= MOST_EXERCISES).unwrap_or(4),
        seed: (u64::from(high) << 32) | u64::from(low),
    }))
}
