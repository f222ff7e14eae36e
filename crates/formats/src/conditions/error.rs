//! What can be wrong with a condition, and where.

use blind::kind_name;
use choose::MOST_FEATURES;
use cube::{Orbit, Size};
use thiserror::Error;

/// A mistake in a condition as it is written.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
#[error("column {column}: {problem}")]
pub struct ConditionTextError {
    /// Column in characters, from 1.
    pub column: usize,
    /// What is wrong.
    pub problem: ConditionProblem,
}

/// What could stand at a place.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum ExpectedPart {
    /// A feature, `not` or an opening bracket.
    Condition,
    /// `=`, `!=`, `<`, `<=`, `>` or `>=`.
    Comparison,
    /// A number, a word or a feature.
    Value,
    /// A number.
    Number,
    /// The dot between a kind and a name.
    Dot,
    /// The name of a feature.
    Name,
    /// An opening bracket.
    Open,
    /// A closing bracket.
    Close,
    /// A letter or the name of a sticker.
    Item,
    /// `and`, `or` or the end.
    Joint,
}

impl std::fmt::Display for ExpectedPart {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            Self::Condition => "a feature, `not` or `(`",
            Self::Comparison => "one of = != < <= > >=",
            Self::Value => "a number or a word",
            Self::Number => "a number",
            Self::Dot => "a dot and the name of a feature",
            Self::Name => "the name of a feature",
            Self::Open => "`(`",
            Self::Close => "`)`",
            Self::Item => "a letter or the name of a sticker",
            Self::Joint => "`and`, `or` or the end",
        })
    }
}

/// What is wrong.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum ConditionProblem {
    /// Something else is needed here.
    #[error("{expected} is needed here")]
    Expected {
        /// What is needed.
        expected: ExpectedPart,
        /// What stands here; nothing at the end.
        found: Option<String>,
    },
    /// A word that is no feature.
    #[error("`{word}` is no feature")]
    UnknownFeature {
        /// The word.
        word: String,
        /// The one that was probably meant.
        meant: Option<String>,
        /// All there are at this place.
        known: Vec<String>,
    },
    /// A word that is no value of the feature.
    #[error("`{word}` is no value of {feature}")]
    UnknownWord {
        /// The word.
        word: String,
        /// The feature.
        feature: String,
        /// The one that was probably meant.
        meant: Option<String>,
        /// All there are.
        known: Vec<String>,
    },
    /// A kind that the puzzle does not have.
    #[error("a {size} has no {}", kind_name(*.orbit))]
    KindMissing {
        /// The kind.
        orbit: Orbit,
        /// The puzzle.
        size: Size,
    },
    /// No letter and no sticker of the kind.
    #[error("`{word}` is neither a letter nor the name of a {} sticker", kind_name(*.orbit))]
    NoTarget {
        /// What was written.
        word: String,
        /// The kind.
        orbit: Orbit,
    },
    /// Not two letters where a pair is needed.
    #[error("`{word}` is not a pair of letters")]
    NoPair {
        /// What was written.
        word: String,
    },
    /// A number over 99.
    #[error("the number is too large; no figure is over 99")]
    NumberTooLarge,
    /// A range whose end comes before its beginning.
    #[error("the range goes from {from} down to {to}")]
    RangeBackwards {
        /// Its beginning.
        from: u8,
        /// Its end.
        to: u8,
    },
    /// A word or a range compared otherwise than by `=` or `!=`.
    #[error("a word or a range is compared by = or != only")]
    OnlyEqual,
    /// Brackets and `not` nested too deeply.
    #[error("brackets and `not` are nested more than {most} deep")]
    TooDeep {
        /// How deep they may be.
        most: usize,
    },
    /// More different features or occurrences than can be counted together.
    #[error("more than {MOST_FEATURES} different features of one kind")]
    TooManyFeatures,
    /// Longer than a condition can be.
    #[error("{bytes} bytes are too many for a condition; at most {most} are read")]
    TooLong {
        /// Its length.
        bytes: usize,
        /// The most that is read.
        most: usize,
    },
    /// The puzzle has no memo so far.
    #[error("conditions can be set for the 2x2 and the 3x3, not for a {0}")]
    SizeNotCovered(Size),
}
