//! What can be wrong with a conventions file, and where.

use crate::document::DocumentError;
use blind::{LettersError, SwapError, kind_name};
use cube::{NoSuchTurn, Orbit, ParseError, Size, Sticker};
use thiserror::Error;

/// A mistake in a conventions file.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
#[error("line {line}, column {column}: {problem}")]
pub struct ConventionsError {
    /// Line, from 1.
    pub line: usize,
    /// Column in characters, from 1.
    pub column: usize,
    /// What is wrong.
    pub problem: Problem,
}

/// What is wrong.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum Problem {
    /// The file is no TOML.
    #[error("{0}")]
    NotToml(String),
    /// Something that may be wrong with any document: too long, of a newer version, another document.
    #[error(transparent)]
    Document(#[from] DocumentError),
    /// A key that means nothing here.
    #[error("the key `{key}` means nothing here")]
    UnknownKey {
        /// The key.
        key: String,
        /// The key that was probably meant.
        meant: Option<String>,
        /// All keys that mean something here.
        known: Vec<String>,
    },
    /// A value of another sort than the key needs.
    #[error("`{key}` needs {needs}")]
    WrongSort {
        /// The key.
        key: String,
        /// What it needs.
        needs: Wants,
    },
    /// A word that is none of those that would do.
    #[error("`{word}` is not one of {}", .known.join(", "))]
    UnknownWord {
        /// The word.
        word: String,
        /// The one that was probably meant.
        meant: Option<String>,
        /// What would do.
        known: Vec<String>,
    },
    /// A method that cannot carry out pieces of the kind.
    #[error("`{word}` is no method for {} pieces; these have {}", kind_name(*.orbit), .known.join(", "))]
    NoMethodFor {
        /// The method.
        word: String,
        /// The kind.
        orbit: Orbit,
        /// The methods of the kind.
        known: Vec<String>,
    },
    /// A name that is no sticker of the kind.
    #[error("`{word}` is no {} sticker", kind_name(*.orbit))]
    NoSticker {
        /// The word.
        word: String,
        /// The kind.
        orbit: Orbit,
        /// The sticker that was probably meant.
        meant: Option<Sticker>,
    },
    /// A shade that is not `#` and six hexadecimal digits.
    #[error("`{0}` is no shade; a shade is # and six hexadecimal digits")]
    NoShade(String),
    /// A colour that is none of the six names and has no shade.
    #[error("`{0}` needs a shade")]
    ShadeMissing(String),
    /// Two faces of one colour.
    #[error("two faces are {0}")]
    ColourTwice(String),
    /// Up and front that no holding has.
    #[error("{up} and {front} cannot be up and front: they are the same or opposite")]
    NoHolding {
        /// The colour that was to be up.
        up: String,
        /// The colour that was to be in front.
        front: String,
    },
    /// Letters that are no scheme.
    #[error("{} letters: {error}", kind_name(*.orbit))]
    Letters {
        /// The kind.
        orbit: Orbit,
        /// Why.
        error: LettersError,
    },
    /// A sticker without a letter.
    #[error("{} has no letter", .orbit.name(*.sticker))]
    LetterMissing {
        /// The kind.
        orbit: Orbit,
        /// The sticker.
        sticker: Sticker,
    },
    /// An algorithm that cannot be read.
    #[error("{0}")]
    Algorithm(ParseError),
    /// An algorithm that is not the swap it has to be.
    #[error("{} algorithm: {error}", kind_name(*.orbit))]
    Swap {
        /// The kind.
        orbit: Orbit,
        /// Why.
        error: SwapError,
    },
    /// An algorithm with a turn that the size of its kind does not have.
    #[error("{} algorithm on a {size}: {error}", kind_name(*.orbit))]
    NotOnSize {
        /// The kind.
        orbit: Orbit,
        /// The size.
        size: Size,
        /// Why not.
        error: NoSuchTurn,
    },
    /// A sticker named twice where each may stand once.
    #[error("`{0}` stands there twice")]
    StickerTwice(String),
    /// A kind named twice.
    #[error("`{0}` names a kind twice")]
    KindsOnce(String),
}

/// The sort of a value.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Wants {
    /// A table of further keys.
    Table,
    /// A text.
    Text,
    /// `true` or `false`.
    YesNo,
    /// A whole number.
    Whole,
    /// A list of texts.
    List,
    /// A text of 24 signs, a list of 24 texts, or a table that gives a letter for each sticker, or four for each face.
    Letters,
    /// `"first"`, `"fewest"`, `"least"` or a list of stickers.
    Breaks,
    /// A colour name, or a table with `name` and `shade`.
    Colour,
}

impl std::fmt::Display for Wants {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            Self::Table => "a table",
            Self::Text => "a text in quotation marks",
            Self::YesNo => "true or false",
            Self::Whole => "a whole number",
            Self::List => "a list of texts",
            Self::Letters => "24 letters in one text or in a list, or a table of stickers or faces",
            Self::Breaks => "\"first\", \"fewest\", \"least\" or a list of stickers",
            Self::Colour => "a colour name, or a table with name and shade",
        })
    }
}
