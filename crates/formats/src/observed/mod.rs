//! What is known of the puzzle after an attempt, as people tell it.
//!
//! Pieces are named by stickers (`UF`), by colours (`white-green`) or by letters after their kind (`edges: A`). `UF>UR>FR` is
//! read as a trace: at UF lies what belongs at UR; so is `UF to UR` and `(UF UR FR)`. `UF and UR swapped` and `UF UR FR in a
//! cycle` say where pieces lie and not how they are turned, as a `?` after a trace does. A list is unsolved in whatever way, or
//! as the word after it says: `UF, UR flipped`, `UFR twisted clockwise`. `two corners` is a count. `only edges: …` and `corners
//! not looked at` say what was not looked at, `nothing else` that nothing was left out. German is read as English is, whatever
//! language is spoken.
//!
//! Colours of stickers are read where the text is one: all of them as in [`crate::state_text`], `?` for those not known, or
//! some faces, `U: … F: …`.

mod pieces;
mod stickers;
mod words;

use crate::state_text::{ColourNames, StateTextError};
use blind::{Conventions, kind_name};
use cube::{Orbit, Size, plain_sign};
use diagnosis::Observed;
use std::fmt;
use thiserror::Error;

/// The most bytes that are read.
pub const MOST_BYTES: usize = 16 << 10;

/// The kinds whose pieces can be told: those of the puzzles whose attempts are explained.
const KINDS: [Orbit; 2] = [Orbit::Corner, Orbit::Midge];

/// Whose words are read, of which puzzle.
#[derive(Clone, Copy, Debug)]
pub struct Vocabulary<'a> {
    /// The size of the puzzle.
    pub size: Size,
    /// The solver's letters, and the hold in which pieces are named by colours.
    pub conventions: &'a Conventions,
    /// What the colours are called.
    pub colours: &'a ColourNames,
}

/// What may stand after something.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Expected {
    /// After an edge.
    Flip,
    /// After a corner.
    Twist,
    /// After a trace.
    Query,
    /// After a count.
    Unsolved,
}

impl Expected {
    /// Its name in catalogues.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Flip => "flip",
            Self::Twist => "twist",
            Self::Query => "query",
            Self::Unsolved => "unsolved",
        }
    }
}

impl fmt::Display for Expected {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Flip => "flipped or ?",
            Self::Twist => "twisted or twisted clockwise or twisted counter-clockwise or ?",
            Self::Query => "?",
            Self::Unsolved => "unsolved, or name the pieces",
        })
    }
}

/// Why a text does not say how a puzzle came out. Columns are in characters of the whole text, from 1.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum ObservedError {
    /// A word that is nothing known.
    #[error(
        "column {column}: `{found}` is no sticker of a corner or an edge; one is written like UFR or UF, a piece also \
         like white-green, a letter like edges: A"
    )]
    NoSticker {
        /// Column.
        column: usize,
        /// What stands there.
        found: String,
    },
    /// A letter of which it is not said whether it is an edge's or a corner's.
    #[error("column {column}: say of which kind the letter `{found}` is, like edges: {found}")]
    KindNeeded {
        /// Column.
        column: usize,
        /// The letter.
        found: String,
    },
    /// A word after `edges:` or `corners:` that is no letter of theirs.
    #[error("column {column}: `{found}` is no letter of the {}s and no sticker; letters stand apart, like A B or A>B", kind_name(*.orbit))]
    NoLetter {
        /// Column.
        column: usize,
        /// What stands there.
        found: String,
        /// The kind.
        orbit: Orbit,
    },
    /// Colours that no piece has together.
    #[error("column {column}: no piece is {found}; a piece has two or three colours that meet")]
    NoPiece {
        /// Column.
        column: usize,
        /// The colours.
        found: String,
    },
    /// A piece that is called one of another kind.
    #[error("column {column}: `{found}` is no {}", kind_name(*.orbit))]
    OtherKind {
        /// Column.
        column: usize,
        /// The piece.
        found: String,
        /// What it is called.
        orbit: Orbit,
    },
    /// A cycle of corners and edges mixed, or of the same piece twice in its middle.
    #[error("column {column}: `{found}` does not go on with another piece of the same kind")]
    NoCycle {
        /// Column.
        column: usize,
        /// What stands there.
        found: String,
    },
    /// A trace that leads from a sticker to itself.
    #[error(
        "column {column}: {sticker}>{sticker} says that {sticker} is right; at an unsolved place lies something else"
    )]
    Same {
        /// Column.
        column: usize,
        /// The sticker.
        sticker: &'static str,
    },
    /// A word that says nothing known of what stands before it.
    #[error("column {column}: `{found}` is not understood after {piece}; say {expected}")]
    NoWord {
        /// Column.
        column: usize,
        /// What stands there.
        found: String,
        /// What stands before it.
        piece: String,
        /// What may stand there.
        expected: Expected,
    },
    /// Not two pieces of a kind that are swapped, or fewer for a cycle.
    #[error("column {column}: `{found}` needs {} pieces of one kind before it, and there are {count}", if *.cycle { "two or more" } else { "two" })]
    NotTwo {
        /// Column.
        column: usize,
        /// The word.
        found: String,
        /// How many there are.
        count: usize,
        /// Whether a cycle is meant, of two or more.
        cycle: bool,
    },
    /// A piece or a kind that two items speak of.
    #[error("column {column}: {piece} was named before")]
    Twice {
        /// Column.
        column: usize,
        /// The piece, or the kind.
        piece: &'static str,
    },
    /// Longer than what can be seen.
    #[error("{bytes} bytes are too many; at most {most} are read")]
    TooLong {
        /// Its length.
        bytes: usize,
        /// The most that is read.
        most: usize,
    },
    /// Nothing was said.
    #[error("no unsolved piece is named; a solved puzzle needs no explanation")]
    Nothing,
    /// A count of a kind that is not known, or no count.
    #[error("column {column}: `{found}` is no count; one is written like `3 corners`")]
    NoCount {
        /// Column.
        column: usize,
        /// What stands there.
        found: String,
    },
    /// More pieces than there are.
    #[error("column {column}: there are only {most} {}s", kind_name(*.orbit))]
    TooMany {
        /// Column.
        column: usize,
        /// How many there are.
        most: u8,
        /// The kind.
        orbit: Orbit,
    },
    /// Colours of stickers that are none, or too many or too few.
    #[error(transparent)]
    Stickers(#[from] StateTextError),
    /// Colours of another size.
    #[error("these are the stickers of a {found}; the attempt was on a {size}")]
    OtherSize {
        /// The size that they have.
        found: Size,
        /// The size of the attempt.
        size: Size,
    },
}

/// Reads how a puzzle came out, in any of the forms above.
///
/// # Errors
/// [`ObservedError`] with the column of what is not understood.
///
/// ```
/// use blind::Conventions;
/// use cube::Size;
/// use diagnosis::{Observed, Seen};
/// use formats::observed::{Vocabulary, read};
/// use formats::state_text::ColourNames;
/// let words = ["white", "orange", "green", "red", "blue", "yellow"];
/// let colours = ColourNames::new(&words.map(|word| vec![word.to_owned()]), ['W', 'O', 'G', 'R', 'B', 'Y']);
/// let reading = Vocabulary { size: Size::THREE, conventions: &Conventions::default(), colours: &colours };
/// let Ok(Observed::Pieces(seen)) = read("UF flipped; UFR>DBL>UBR", &reading) else { panic!() };
/// assert!(matches!(&seen[1], Seen::Cycle { stickers, turning: true, .. } if stickers.len() == 3));
/// assert_eq!(read("white-green gekippt", &reading), read("UF flipped", &reading));
/// assert_eq!(read("UF floppy", &reading).unwrap_err().to_string(),
///     "column 4: `floppy` is not understood after UF; say flipped or ?");
/// ```
pub fn read(text: &str, reading: &Vocabulary<'_>) -> Result<Observed, ObservedError> {
    if text.len() > MOST_BYTES {
        return Err(ObservedError::TooLong { bytes: text.len(), most: MOST_BYTES });
    }
    // One sign for one, so that columns stay.
    let text: String = text.chars().map(plain_sign).collect();
    if let Some(faces) = stickers::faces(&text, reading) {
        return faces;
    }
    match pieces::read(&text, reading) {
        Err(error) => match stickers::read(&text, reading) {
            Ok(glimpse) => Ok(glimpse),
            Err(wrong) if stickers::is_meant(&text, reading) => Err(wrong),
            Err(_) => Err(error),
        },
        told => told,
    }
}
