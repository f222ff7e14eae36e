//! What can be wrong with a key of a table that people write.

use std::fmt;
use thiserror::Error;

/// What is wrong with a key of a table.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum KeyProblem {
    /// A key that means nothing there.
    #[error("`{key}` means nothing here; known are {}", .known.join(", "))]
    Unknown {
        /// The key.
        key: String,
        /// The one that was probably meant.
        meant: Option<String>,
        /// All that are known at this place.
        known: Vec<String>,
    },
    /// A key that must be there.
    #[error("`{0}` is missing")]
    Missing(String),
    /// A value of another sort.
    #[error("`{key}` needs {needs}")]
    WrongSort {
        /// The key.
        key: String,
        /// What it needs.
        needs: Needs,
    },
    /// A word that means nothing there.
    #[error("`{word}` is not known here; known are {}", .known.join(", "))]
    UnknownWord {
        /// The word.
        word: String,
        /// The one that was probably meant.
        meant: Option<String>,
        /// All that are known at this place.
        known: Vec<String>,
    },
}

/// What a key needs.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Needs {
    /// A table.
    Table,
    /// One or more tables, each under `[[key]]`.
    Tables,
    /// A text.
    Text,
    /// A list of texts.
    Texts,
    /// A number of seconds, zero or more.
    Seconds,
    /// A number above zero.
    Share,
    /// Three numbers above zero.
    ThreeShares,
    /// A whole number.
    Whole,
}

impl fmt::Display for Needs {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Table => "a table",
            Self::Tables => "one or more tables",
            Self::Text => "a text",
            Self::Texts => "a list of texts",
            Self::Seconds => "a number of seconds, zero or more",
            Self::Share => "a number above zero",
            Self::ThreeShares => "a list of three numbers above zero",
            Self::Whole => "a whole number",
        })
    }
}
