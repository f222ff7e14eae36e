//! The colours one sees: face by face, row by row.

use crate::Rotation;
use crate::geometry::Spot;
use crate::layout::{Cell, Layout};
use crate::{Face, Orbit, Size, State, Sticker};
use std::fmt;
use thiserror::Error;

/// The colour of every facelet, which may be any at all: what someone typed or painted.
///
/// A colour is named by the face where it is on the solved cube in the first hold.
/// Whether turning can lead there is asked with [`Facelets::state`].
///
/// ```
/// use cube::{Facelets, Size, State};
/// let solved = State::solved(Size::TWO).facelets();
/// assert_eq!(solved.to_string(), "UUUULLLLFFFFRRRRBBBBDDDD");
/// assert!("UUUULLLLFFFFRRRRBBBBDDDD".parse::<Facelets>().unwrap().state().unwrap().is_solved());
/// ```
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Facelets {
    size: Size,
    /// Faces in the order of [`Face::ALL`], row by row.
    colours: Vec<Face>,
}

/// Why a text is no list of facelets.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum FaceletError {
    /// A character that stands for no colour.
    #[error("line {line}, column {column}: `{found}` stands for no colour; one of {} is expected", .expected.iter().collect::<String>())]
    UnknownColour {
        /// Line, from 1.
        line: usize,
        /// Column in characters, from 1.
        column: usize,
        /// What stands there.
        found: char,
        /// The six that would do, in the order U L F R B D.
        expected: [char; 6],
    },
    /// As [`FaceletError::UnknownColour`], in the text of one face.
    #[error("face {face}: {error}")]
    OnFace {
        /// The face.
        face: Face,
        /// What is wrong with its text; line and column count within it.
        error: Box<Self>,
    },
    /// A face has another number of facelets than N², or than the face before it.
    #[error("face {face} has {count} facelets, {}", if let Some(size) = .size { format!("but on a {size} a face has {}", size.facelets() / 6) } else { "but a face has 4, 9, 16, 25, 36 or 49".to_owned() })]
    FaceCount {
        /// The face.
        face: Face,
        /// How many facelets were given for it.
        count: usize,
        /// The size that the faces before it have; `None` for the first face.
        size: Option<Size>,
    },
    /// A number of facelets that no size has.
    #[error("{0} facelets fit no cube; a 2x2 has 24, a 3x3 54, a 4x4 96, a 5x5 150, a 6x6 216, a 7x7 294")]
    WrongCount(usize),
}

impl Facelets {
    /// All facelets of one face after another in the order of [`Face::ALL`], each row by row as it is looked at;
    /// `None` when the number is not that of the size.
    pub fn new(size: Size, colours: Vec<Face>) -> Option<Self> {
        (colours.len() == size.facelets()).then_some(Self { size, colours })
    }

    /// The colour that a function gives for each face, row and column (from 0) as the face is looked at.
    ///
    /// ```
    /// use cube::{Facelets, Size, State};
    /// let chequered = Facelets::from_fn(Size::THREE, |face, row, column| {
    ///     if (row + column) % 2 == 1 { face.opposite() } else { face }
    /// });
    /// assert!(chequered.state().is_ok());
    /// assert_eq!(Facelets::from_fn(Size::TWO, |face, _, _| face), State::solved(Size::TWO).facelets());
    /// ```
    pub fn from_fn(size: Size, mut colour: impl FnMut(Face, u8, u8) -> Face) -> Self {
        let mut colours = Vec::with_capacity(size.facelets());
        for face in Face::ALL {
            for row in 0..size.layers() {
                colours.extend((0..size.layers()).map(|column| colour(face, row, column)));
            }
        }
        Self { size, colours }
    }

    /// Reads facelets in the order of [`Face::ALL`] (U L F R B D), row by row; white space does not count.
    ///
    /// `alphabet` gives the characters for the colours of the faces U L F R B D of the solved cube.
    ///
    /// # Errors
    /// [`FaceletError`] for a character outside the alphabet or a number of facelets that fits no size.
    pub fn parse(text: &str, alphabet: [char; 6]) -> Result<Self, FaceletError> {
        let read = colours(text, alphabet)?;
        let size = Size::ALL
            .into_iter()
            .find(|size| size.facelets() == read.len())
            .ok_or(FaceletError::WrongCount(read.len()))?;
        Ok(Self { size, colours: read })
    }

    /// Reads the colours of each face by itself, in the order of [`Face::ALL`] (U L F R B D), row by row as the face is
    /// looked at (U with B upward, D with F upward); white space does not count.
    ///
    /// `alphabet` is as in [`Facelets::parse`].
    ///
    /// # Errors
    /// [`FaceletError::OnFace`] for a character outside the alphabet, [`FaceletError::FaceCount`] for a face that
    /// has not as many facelets as the first one, or when that is no square of 2 to 7.
    ///
    /// ```
    /// use cube::Facelets;
    /// let faces = ["WW WW", "OO OO", "GG GG", "RR RR", "BB BB", "YY YY"];
    /// let seen = Facelets::from_faces(faces, ['W', 'O', 'G', 'R', 'B', 'Y']).unwrap();
    /// assert!(seen.state().unwrap().is_solved());
    /// let no = Facelets::from_faces(["WW WW", "OO O", "", "", "", ""], ['W', 'O', 'G', 'R', 'B', 'Y']);
    /// assert_eq!(no.unwrap_err().to_string(), "face L has 3 facelets, but on a 2x2 a face has 4");
    /// ```
    pub fn from_faces(faces: [&str; 6], alphabet: [char; 6]) -> Result<Self, FaceletError> {
        let mut read = Vec::new();
        let mut size = None;
        for (face, text) in Face::ALL.into_iter().zip(faces) {
            let of_face = colours(text, alphabet)
                .map_err(|error| FaceletError::OnFace { face, error: Box::new(error) })?;
            let count = of_face.len();
            let fits = Size::ALL.into_iter().find(|size| size.facelets() == 6 * count);
            if fits.is_none() || size.is_some_and(|size| Some(size) != fits) {
                return Err(FaceletError::FaceCount { face, count, size });
            }
            size = fits;
            read.extend(of_face);
        }
        let count = read.len();
        size.and_then(|size| Self::new(size, read)).ok_or(FaceletError::WrongCount(count))
    }

    /// Its size.
    pub const fn size(&self) -> Size {
        self.size
    }

    /// All colours, face by face in the order of [`Face::ALL`], each row by row.
    pub fn colours(&self) -> &[Face] {
        &self.colours
    }

    /// The colours of one face, row by row, N of them in a row.
    pub fn face(&self, face: Face) -> &[Face] {
        let per_face = self.size.facelets() / 6;
        &self.colours[face.index() * per_face..(face.index() + 1) * per_face]
    }

    /// The colour at row and column (from 0) of a face.
    pub fn get(&self, face: Face, row: u8, column: u8) -> Option<Face> {
        let n = self.size.layers();
        if row < n && column < n {
            self.face(face).get(row as usize * n as usize + column as usize).copied()
        } else {
            None
        }
    }

    /// Paints one facelet; outside the face nothing happens.
    pub fn set(&mut self, face: Face, row: u8, column: u8, colour: Face) {
        let n = self.size.layers();
        if row < n && column < n {
            self.colours[Layout::facelet(self.size, Spot::new(self.size, face, row, column))] = colour;
        }
    }

    /// The text in the order of [`Face::ALL`] with these characters for the colours (order U L F R B D).
    pub fn text(&self, alphabet: [char; 6]) -> String {
        self.colours.iter().map(|colour| alphabet[colour.index()]).collect()
    }

    pub(crate) fn cell(&self, at: usize) -> Face {
        self.colours[at]
    }

    /// The colour at the place of a sticker.
    pub(crate) fn colour_at(&self, orbit: Orbit, place: Sticker) -> Face {
        self.colours[Layout::facelet(self.size, orbit.spot(self.size, place))]
    }
}

/// The colours that a text stands for; white space does not count.
fn colours(text: &str, alphabet: [char; 6]) -> Result<Vec<Face>, FaceletError> {
    let mut read = Vec::new();
    for (line, row) in text.lines().enumerate() {
        for (column, found) in row.chars().enumerate().filter(|(_, letter)| !letter.is_whitespace()) {
            let colour = alphabet.iter().position(|&letter| letter == found);
            read.push(Face::at(colour.ok_or(FaceletError::UnknownColour {
                line: line + 1,
                column: column + 1,
                found,
                expected: alphabet,
            })?));
        }
    }
    Ok(read)
}

/// The characters U L F R B D, which name colours by faces.
pub(crate) const FACE_LETTERS: [char; 6] = ['U', 'L', 'F', 'R', 'B', 'D'];

impl std::str::FromStr for Facelets {
    type Err = FaceletError;

    fn from_str(text: &str) -> Result<Self, FaceletError> {
        Self::parse(text, FACE_LETTERS)
    }
}

impl fmt::Display for Facelets {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.text(FACE_LETTERS))
    }
}

impl State {
    /// The colours one sees.
    pub fn facelets(&self) -> Facelets {
        let size = self.size();
        let layout = Layout::of(size);
        let solved_at = |orbit: usize, sticker: Sticker| self.at(layout.orbits[orbit], sticker);
        let back = self.core().inverse();
        let colours = layout
            .cells
            .iter()
            .map(|&cell| match cell {
                Cell::Fixed(face) => back.image(face),
                Cell::Sticker(orbit, place) => solved_at(orbit, place).face(),
                Cell::WingBack(orbit, place) => {
                    let sticker = solved_at(orbit, place);
                    layout.orbits[orbit].faces(sticker).get(1).copied().unwrap_or(sticker.face())
                }
            })
            .collect();
        Facelets { size, colours }
    }
}

impl Facelets {
    /// Where each facelet belongs: its orbit and sticker, or `None` for a fixed centre; the second sticker of a
    /// wing is given by the first, with `true`.
    ///
    /// Row and column count from 0 on the face as it is looked at.
    pub fn place(size: Size, face: Face, row: u8, column: u8) -> Option<(Orbit, Sticker, bool)> {
        let n = size.layers();
        if row >= n || column >= n {
            return None;
        }
        let layout = Layout::of(size);
        match layout.cells[Layout::facelet(size, Spot::new(size, face, row, column))] {
            Cell::Fixed(_) => None,
            Cell::Sticker(orbit, sticker) => Some((layout.orbits[orbit], sticker, false)),
            Cell::WingBack(orbit, sticker) => Some((layout.orbits[orbit], sticker, true)),
        }
    }

    /// The stickers of all pieces that do not look solved, by their places, against the solved cube in the hold in which most
    /// stickers agree: that of the fixed centres where there are any in a possible state. Any colours may be given, also such as no
    /// turning leads to.
    ///
    /// ```
    /// use cube::{Algorithm, Orbit, Rotation, Size, State};
    /// let held = State::held(Size::THREE, Rotation::all().nth(7).unwrap());
    /// assert!(held.facelets().unsolved().is_empty());
    /// let swap = Algorithm::parse("R U R' U' R' F R2 U' R' U' R U R' F'", Size::THREE).unwrap();
    /// let seen = held.after(&swap.flatten()).facelets();
    /// // Two corners of three stickers, two edges of two.
    /// assert_eq!(seen.unsolved().len(), 10);
    /// assert_eq!(seen.unsolved().iter().filter(|(orbit, _)| *orbit == Orbit::Corner).count(), 6);
    /// ```
    pub fn unsolved(&self) -> Vec<(Orbit, Sticker)> {
        let size = self.size;
        let layout = Layout::of(size);
        let agree = |hold: &Self| hold.colours.iter().zip(&self.colours).filter(|(a, b)| a == b).count();
        let holds = Rotation::all().map(|rotation| State::held(size, rotation).facelets());
        let Some(solved) = holds.max_by_key(agree) else { return Vec::new() };
        let differ = |at: usize| solved.colours.get(at) != self.colours.get(at);
        let mut wrong: Vec<(Orbit, Sticker)> = Vec::new();
        for (_, cell) in layout.cells.iter().enumerate().filter(|&(at, _)| differ(at)) {
            match *cell {
                Cell::Fixed(_) => {}
                Cell::Sticker(orbit, sticker) | Cell::WingBack(orbit, sticker) => {
                    let orbit = layout.orbits[orbit];
                    wrong.extend(orbit.stickers_from(sticker).map(|sticker| (orbit, sticker)));
                }
            }
        }
        wrong.sort_unstable();
        wrong.dedup();
        wrong
    }

    /// Row and column (from 0) of a sticker's place on its face.
    pub fn cell_of(size: Size, orbit: Orbit, sticker: Sticker) -> (u8, u8) {
        orbit.spot(size, sticker).row_column(size)
    }
}
