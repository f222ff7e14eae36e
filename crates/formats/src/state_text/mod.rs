//! A whole state as text: the colours one sees, face by face, or the net that is printed.
//!
//! The faces come in the order of the letters, U L F R B D, each row by row as it is looked at (U with B upward, D with F
//! upward). Colours are words, or initials where these differ in the language, set apart in any way or, where that is
//! clear, not at all. The net that the terminal shows is known by its shape. The size follows from the number of colours.
//!
//! ```
//! use cube::{Size, State};
//! use formats::state_text::{ColourNames, read, write};
//! let words = ["white", "orange", "green", "red", "blue", "yellow"];
//! let names = ColourNames::new(&words.map(|word| vec![word.to_owned()]), ['W', 'O', 'G', 'R', 'B', 'Y']);
//! let solved = State::solved(Size::TWO).facelets();
//! assert_eq!(write(&solved, &names), "WWWW OOOO GGGG RRRR BBBB YYYY");
//! assert_eq!(read("wwww, O O O O; green green GG RRRR BBBB\nYY\nYY", &names).unwrap(), solved);
//! let error = read("WWWW OOOO GXGG RRRR BBBB YYYY", &names).unwrap_err();
//! assert_eq!(error.to_string(), "line 1, column 12 (F, row 1, column 2): `X` is no colour; W O G R B Y are");
//! ```

mod counts;
mod names;
mod net;
mod words;

pub use names::ColourNames;

use crate::document::{DocumentError, Place, within};
use cube::{Face, Facelets, Size};
use thiserror::Error;

/// The most bytes of a text that are read: the 294 colours of a 7x7 in long words, with room between.
pub const MOST_BYTES: usize = 16 << 10;

/// A sticker's place on the puzzle.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Spot {
    /// The face.
    pub face: Face,
    /// The row as the face is looked at, from 0.
    pub row: u8,
    /// The column, from 0.
    pub column: u8,
}

impl Spot {
    /// Where the colour with this number is written, face by face.
    fn of(size: Size, number: usize) -> Option<Self> {
        let n = usize::from(size.layers());
        let face = Face::ALL.into_iter().nth(number / (n * n))?;
        Some(Self { face, row: (number / n % n) as u8, column: (number % n) as u8 })
    }
}

/// Why a text is no state.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum StateTextError {
    /// Too long.
    #[error(transparent)]
    Document(#[from] DocumentError),
    /// There are no colours in it.
    #[error("there are no colours")]
    Empty,
    /// A sign or word that is no colour.
    #[error("{place}{}: `{found}` is no colour; {} are", said(*.spot), .expected.join(" "))]
    NoColour {
        /// Where it begins.
        place: Place,
        /// Which sticker it stands for, where the rest tells.
        spot: Option<Spot>,
        /// What stands there.
        found: String,
        /// The colour that was probably meant.
        meant: Option<String>,
        /// What would do: initials, or words.
        expected: Vec<String>,
    },
    /// Faces that have more or fewer stickers than the others.
    #[error(
        "{}; on a {size} a face has {}",
        .wrong.iter().map(|(face, count)| format!("{face} has {count}")).collect::<Vec<_>>().join(", "),
        per_face(*.size)
    )]
    FaceCount {
        /// The size that the others show.
        size: Size,
        /// The faces with their numbers of stickers.
        wrong: Vec<(Face, usize)>,
    },
    /// A row that has more or fewer stickers than the others.
    #[error("row {} of {face} has {count} stickers; on a {size} it has {}", .row + 1, .size.layers())]
    RowCount {
        /// The size that the others show.
        size: Size,
        /// The face.
        face: Face,
        /// The row, from 0.
        row: u8,
        /// How many stickers it has.
        count: usize,
    },
    /// A line of a net that has more or fewer stickers than belong there.
    #[error("line {line} of the net has {count} stickers; on a {size} it has {expected}")]
    NetLine {
        /// The size that the other lines show.
        size: Size,
        /// The line of the text, from 1.
        line: usize,
        /// How many stickers stand there.
        count: usize,
        /// How many belong there.
        expected: usize,
    },
    /// A number of stickers that no size has, in a text that does not show its faces.
    #[error("{count} stickers fit no cube; a {nearest} has {}", .nearest.facelets())]
    Count {
        /// How many there are.
        count: usize,
        /// The size that comes nearest.
        nearest: Size,
    },
}

fn said(spot: Option<Spot>) -> String {
    spot.map_or(String::new(), |Spot { face, row, column }| {
        format!(" ({face}, row {}, column {})", row + 1, column + 1)
    })
}

/// How many stickers a face has.
const fn per_face(size: Size) -> usize {
    size.facelets() / 6
}

/// The size with so many stickers.
fn size_of(count: usize) -> Option<Size> {
    Size::ALL.into_iter().find(|size| size.facelets() == count)
}

/// A sticker as it was written: its colour, or what stands there in place of one.
#[derive(Clone, PartialEq, Eq, Debug)]
struct Cell {
    place: Place,
    colour: Result<Face, String>,
    /// In which paragraph, line, part between signs, part between commas, and word it stands, counted from the beginning.
    parts: [usize; 5],
}

/// Reads a state.
///
/// # Errors
/// [`StateTextError`]: the first sign that is no colour, else a number of stickers that no cube has, with the face that
/// lacks or has too many where the text shows its faces.
pub fn read(text: &str, names: &ColourNames) -> Result<Facelets, StateTextError> {
    within(text, MOST_BYTES)?;
    let text = text.trim_start_matches('\u{feff}');
    if let Some(net) = net::read(text, names) {
        return net;
    }
    let (cells, alphabet) = words::cells(text, names);
    if cells.is_empty() {
        return Err(StateTextError::Empty);
    }
    let size = size_of(cells.len());
    let mut colours = Vec::with_capacity(cells.len());
    for (number, cell) in cells.iter().enumerate() {
        colours.push(cell.colour.clone().map_err(|found| {
            let spot = size.and_then(|size| Spot::of(size, number));
            no_colour(found, cell.place, spot, names, alphabet)
        })?);
    }
    size.and_then(|size| Facelets::new(size, colours)).ok_or_else(|| counts::wrong(&cells))
}

/// By what the colours of a text are known.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
enum Alphabet {
    /// Words.
    Words,
    /// A letter for each, in the order U L F R B D.
    Letters([char; 6]),
}

/// That what stands somewhere is no colour.
fn no_colour(
    found: String,
    place: Place,
    spot: Option<Spot>,
    names: &ColourNames,
    alphabet: Alphabet,
) -> StateTextError {
    let (meant, expected) = match alphabet {
        Alphabet::Words => {
            (names.nearest(&found).map(str::to_owned), Face::ALL.map(|face| names.word(face).to_owned()))
        }
        Alphabet::Letters(letters) => (None, letters.map(|letter| letter.to_string())),
    };
    StateTextError::NoColour { place, spot, found, meant, expected: expected.to_vec() }
}

/// A state in one line, face by face: initials, the faces set apart by blanks, or words where initials do not do.
pub fn write(facelets: &Facelets, names: &ColourNames) -> String {
    let faces = Face::ALL.map(|face| {
        let colours = facelets.face(face).iter();
        match names.initials() {
            Some(initials) => colours.map(|colour| initials[colour.index()]).collect(),
            None => colours.map(|&colour| names.word(colour)).collect::<Vec<_>>().join(" "),
        }
    });
    faces.join(if names.initials().is_some() { " " } else { ", " })
}
