//! What all documents have in common: a name, a version, a bound, and the ways in which a text can fail to be one.

use crate::key::KeyProblem;
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::{Map, Value};
use std::fmt;
use thiserror::Error;

/// The version of a document's form. It grows by one with every change that an older reader would not understand; what
/// was kept before documents had versions is version 0.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct Version(pub u32);

impl fmt::Display for Version {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

/// The documents there are.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Document {
    /// What a solver has settled on.
    Conventions,
    /// A sheet of algorithms.
    Sheet,
    /// What the hands' work costs.
    Ease,
    /// The catalogue of slips.
    Slips,
    /// A lesson, as a link carries it.
    Lesson,
    /// A moment of the bench, as a link carries it.
    Moment,
    /// What a person had before them in a tab of the browser.
    Draft,
    /// A named set of conventions and algorithms in the browser.
    Set,
    /// A setting of the screens.
    Setting,
}

impl Document {
    /// All documents.
    pub const ALL: [Self; 9] = [
        Self::Conventions,
        Self::Sheet,
        Self::Ease,
        Self::Slips,
        Self::Lesson,
        Self::Moment,
        Self::Draft,
        Self::Set,
        Self::Setting,
    ];

    /// Its name in files.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Conventions => "conventions",
            Self::Sheet => "sheet",
            Self::Ease => "ease",
            Self::Slips => "slips",
            Self::Lesson => "lesson",
            Self::Moment => "moment",
            Self::Draft => "draft",
            Self::Set => "set",
            Self::Setting => "setting",
        }
    }

    /// The document with a name.
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|document| document.name() == name)
    }
}

impl fmt::Display for Document {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}

/// A place in a text.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct Place {
    /// Line, from 1.
    pub line: usize,
    /// Column in characters, from 1.
    pub column: usize,
}

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "line {}, column {}", self.line, self.column)
    }
}

impl Place {
    /// The place of a byte in a text; behind its end, the end.
    ///
    /// ```
    /// use formats::Place;
    /// assert_eq!(Place::of("grün\nrot", 6), Place { line: 2, column: 1 });
    /// ```
    pub fn of(text: &str, byte: usize) -> Self {
        let before = text.char_indices().take_while(|(at, _)| *at < byte).map(|(_, sign)| sign);
        before.fold(Self { line: 1, column: 1 }, |place, sign| match sign {
            '\n' => Self { line: place.line + 1, column: 1 },
            _ => Self { column: place.column + 1, ..place },
        })
    }
}

/// Why a text is not the document it is taken for, whatever that holds.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum DocumentError {
    /// It was written by a newer version of the program, which may mean things that this one does not know.
    #[error("the {document} has version {found}; up to version {known} can be read")]
    NewerVersion {
        /// What it is.
        document: Document,
        /// Its version.
        found: Version,
        /// The newest version that is known.
        known: Version,
    },
    /// It is another document.
    #[error("this is no {expected}{}", found.as_ref().map_or(String::new(), |found| format!(" but `{found}`")))]
    OtherDocument {
        /// What is needed.
        expected: Document,
        /// What it says that it is; `None` where it says nothing.
        found: Option<String>,
    },
    /// It is longer than such a document can be.
    #[error("{bytes} bytes are too many; at most {most} are read")]
    TooLong {
        /// Its length.
        bytes: usize,
        /// The most that is read.
        most: usize,
    },
    /// It is not written as such a document is.
    #[error("{place}: {what}")]
    Malformed {
        /// Where.
        place: Place,
        /// What is wrong, in the words of the reader of its syntax.
        what: String,
    },
    /// A key is unknown, missing or of the wrong sort.
    #[error("{place}: {problem}")]
    Key {
        /// Where.
        place: Place,
        /// What is wrong with it.
        problem: KeyProblem,
    },
    /// Something in it is missing, unknown or of the wrong sort.
    #[error("the {document} is not whole: {what}")]
    Content {
        /// What it is.
        document: Document,
        /// What is wrong.
        what: String,
    },
}

/// That a text is not longer than a document can be.
///
/// # Errors
/// [`DocumentError::TooLong`] if it is.
pub const fn within(text: &str, most: usize) -> Result<(), DocumentError> {
    if text.len() > most { Err(DocumentError::TooLong { bytes: text.len(), most }) } else { Ok(()) }
}

/// That a version can be read.
pub(crate) fn readable(document: Document, found: Version, known: Version) -> Result<(), DocumentError> {
    if found > known { Err(DocumentError::NewerVersion { document, found, known }) } else { Ok(()) }
}

/// A value as it is kept: the twin of a type of the engine, which itself knows no file.
///
/// It is written as JSON: `{"document": "sheet", "version": 1, …}` with its own fields after these.
pub trait Twin: Serialize + DeserializeOwned {
    /// What it is.
    const DOCUMENT: Document;
    /// The version that is written.
    const VERSION: Version;
    /// The most bytes that are read.
    const MOST: usize;

    /// The content of a version as that of the next one. `from` is less than [`Twin::VERSION`] and not 0 unless
    /// version 0 was an object of JSON too.
    ///
    /// # Errors
    /// [`DocumentError::Content`] for what that version could not hold.
    fn step(from: Version, content: Map<String, Value>) -> Result<Map<String, Value>, DocumentError>;
}

#[derive(Serialize)]
struct Written<'a, T> {
    document: &'static str,
    version: u32,
    #[serde(flatten)]
    content: &'a T,
}

/// A twin as JSON.
pub fn to_json<T: Twin>(twin: &T) -> String {
    let written = Written { document: T::DOCUMENT.name(), version: T::VERSION.0, content: twin };
    // Twins are plain structures with texts for keys, which always have a JSON form.
    serde_json::to_string(&written).unwrap_or_default()
}

/// Reads a twin of any version up to the present one.
///
/// # Errors
/// [`DocumentError`]: too long, no JSON, another document, a newer version, or something in it missing or unknown.
pub fn from_json<T: Twin>(text: &str) -> Result<T, DocumentError> {
    within(text, T::MOST)?;
    let mut content = object(text)?;
    let version = head(&mut content, T::DOCUMENT)?;
    from_version(version, content)
}

/// A text as an object of JSON.
pub(crate) fn object(text: &str) -> Result<Map<String, Value>, DocumentError> {
    serde_json::from_str(text.trim_start_matches('\u{feff}')).map_err(|error| DocumentError::Malformed {
        place: Place { line: error.line().max(1), column: error.column().max(1) },
        what: error.to_string(),
    })
}

/// Takes name and version off an object. One that has neither is version 0.
pub(crate) fn head(content: &mut Map<String, Value>, expected: Document) -> Result<Version, DocumentError> {
    let version = content.remove("version");
    match (content.remove("document"), version) {
        (None, None) => Ok(Version(0)),
        (Some(Value::String(name)), Some(version)) if name == expected.name() => {
            let what = || format!("version {version} is no whole number");
            let number = version.as_u64().and_then(|number| u32::try_from(number).ok());
            number.map(Version).ok_or_else(|| DocumentError::Content { document: expected, what: what() })
        }
        (found, _) => Err(DocumentError::OtherDocument {
            expected,
            found: found.map(|name| name.as_str().map_or_else(|| name.to_string(), str::to_owned)),
        }),
    }
}

/// The content of a version as a twin of the present one.
pub(crate) fn from_version<T: Twin>(
    version: Version,
    mut content: Map<String, Value>,
) -> Result<T, DocumentError> {
    readable(T::DOCUMENT, version, T::VERSION)?;
    for from in version.0..T::VERSION.0 {
        content = T::step(Version(from), content)?;
    }
    serde_json::from_value(Value::Object(content))
        .map_err(|error| DocumentError::Content { document: T::DOCUMENT, what: error.to_string() })
}
