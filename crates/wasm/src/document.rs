//! What a page tells the engine once and then only names: conventions, sheets, puzzles.

use serde::{Deserialize, Serialize};

/// What a document is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
#[cfg_attr(test, derive(ts_rs::TS))]
pub enum DocumentKind {
    /// Conventions as JSON, or the text of a file; an empty text for the usual ones.
    Conventions,
    /// A sheet of three-cycles, as the engine wrote it.
    Sheet,
    /// A puzzle: JSON of a `PuzzleContent`.
    Puzzle,
}

impl DocumentKind {
    /// The kind with a name.
    pub fn named(name: &str) -> Option<Self> {
        [Self::Conventions, Self::Sheet, Self::Puzzle].into_iter().find(|kind| kind.name() == name)
    }

    /// Its name in requests.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Conventions => "conventions",
            Self::Sheet => "sheet",
            Self::Puzzle => "puzzle",
        }
    }

    /// The most bytes of such a document. A sheet may be longer than one that is taken in at once, since it grows.
    pub const fn most_bytes(self) -> usize {
        match self {
            Self::Conventions | Self::Puzzle => 1 << 18,
            Self::Sheet => 1 << 24,
        }
    }
}

/// The name of a document: what the page calls it, and which state of it is meant.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct DocumentName {
    /// What the page calls it.
    pub handle: String,
    /// Grows with every change; two documents of one name are the same.
    pub revision: u32,
}

/// What a document of a puzzle holds.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "camelCase", deny_unknown_fields)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct PuzzleContent {
    /// Layers of the cube, 2 to 7.
    pub size: u8,
    /// The scramble as it was typed.
    pub scramble: String,
    /// The colours of all stickers by the letters of the faces, in the order U L F R B D; if not empty, these count
    /// and not the scramble.
    pub facelets: String,
    /// Where no centre says how: pick it up so that the memo is shortest, or as the conventions say; none: as is usual for the size.
    pub best_hold: Option<bool>,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_kind_is_named() {
        for kind in [DocumentKind::Conventions, DocumentKind::Sheet, DocumentKind::Puzzle] {
            assert_eq!(DocumentKind::named(kind.name()), Some(kind));
        }
        assert_eq!(DocumentKind::named("journal"), None);
    }
}
