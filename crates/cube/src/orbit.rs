//! Kinds of pieces, their 24 stickers, and what the trade calls them.

use crate::geometry::{Spot, depth_from, normal, triple};
use crate::{Face, Size};
use std::fmt;
use std::sync::OnceLock;

/// One of the 24 stickers of an orbit, and equally the place where it belongs.
///
/// The number is that of the default letter scheme: faces in the order U L F R B D, on each face clockwise from
/// the upper left (from the top for pieces in the middle of a side), so that 0 to 23 are A to X.
#[derive(Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Sticker(u8);

impl Sticker {
    /// How many there are in an orbit.
    pub const COUNT: usize = 24;

    /// The sticker with a number of 0 to 23; `None` above.
    pub const fn new(index: u8) -> Option<Self> {
        if index < 24 { Some(Self(index)) } else { None }
    }

    pub(crate) const fn from_table(index: u8) -> Self {
        debug_assert!(index < 24);
        Self(index)
    }

    /// All 24 in letter order.
    pub fn all() -> impl DoubleEndedIterator<Item = Self> + ExactSizeIterator {
        (0..24u8).map(Self)
    }

    /// The number, 0 to 23.
    pub const fn index(self) -> usize {
        self.0 as usize
    }

    /// The face it is on.
    pub const fn face(self) -> Face {
        Face::at(self.0 as usize / 4)
    }
}

impl fmt::Debug for Sticker {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Sticker({})", self.0)
    }
}

/// A piece of an orbit, by its number: 0 to 7 for corners, 0 to 11 for midges, 0 to 23 for wings and centres.
#[derive(Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Debug)]
pub struct Piece(u8);

impl Piece {
    /// The number.
    pub const fn index(self) -> usize {
        self.0 as usize
    }
}

/// Which way an oblique leans: with the side it is next to held at the bottom, it lies left or right of the middle.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, PartialOrd, Ord)]
pub enum Hand {
    /// Left of the middle.
    Left,
    /// Right of the middle.
    Right,
}

/// An inner layer that wings and centres lie in, counted from outside.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, PartialOrd, Ord)]
pub enum Layer {
    /// Next to a face's own layer.
    Second,
    /// The one after, on sizes 6 and 7.
    Third,
}

impl Layer {
    /// 2 or 3.
    pub const fn number(self) -> u8 {
        match self {
            Self::Second => 2,
            Self::Third => 3,
        }
    }

    const fn suffix(self) -> &'static str {
        match self {
            Self::Second => "",
            Self::Third => " 3",
        }
    }
}

/// A kind of movable piece: 24 stickers that turns carry into one another.
///
/// Layers are counted from outside, so the layer next to a face's own is 2.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, PartialOrd, Ord)]
pub enum Orbit {
    /// Corners: 8 pieces of 3 stickers.
    Corner,
    /// Midges, the edges in the middle of a side: 12 pieces of 2 stickers. Odd sizes only.
    Midge,
    /// Wings, the edges beside the middle: 24 pieces, each in one way only, so one sticker stands for it.
    Wing {
        /// Which layer from outside.
        layer: Layer,
    },
    /// Centres on the diagonals of a face.
    XCentre {
        /// Which layer from outside.
        layer: Layer,
    },
    /// Centres in the middle row or column of a face. Odd sizes only.
    TCentre {
        /// Which layer from outside.
        layer: Layer,
    },
    /// The other centres of sizes 6 and 7: layer 2 from one side, 3 from the next.
    Oblique(Hand),
}

/// Of a piece, by the stickers in turn clockwise seen from outside.
struct Names {
    name: String,
    /// The same name with its later letters in order, to read it however it was written.
    key: (char, Vec<String>),
    /// The next sticker of the piece, clockwise.
    next: u8,
    piece: u8,
    faces: Vec<Face>,
}

/// Names and pieces of an orbit.
struct Table {
    names: Vec<Names>,
    references: Vec<Sticker>,
    /// For each sticker the next of its piece, clockwise.
    clockwise: [u8; 24],
    /// For each sticker the number of its piece.
    pieces: [u8; 24],
}

const WING2: Orbit = Orbit::Wing { layer: Layer::Second };
const WING3: Orbit = Orbit::Wing { layer: Layer::Third };
const X2: Orbit = Orbit::XCentre { layer: Layer::Second };
const X3: Orbit = Orbit::XCentre { layer: Layer::Third };
const T2: Orbit = Orbit::TCentre { layer: Layer::Second };
const T3: Orbit = Orbit::TCentre { layer: Layer::Third };
const LEFT: Orbit = Orbit::Oblique(Hand::Left);
const RIGHT: Orbit = Orbit::Oblique(Hand::Right);

impl Orbit {
    /// Every orbit that any size has: those of the 7x7, in its order.
    pub const ALL: [Self; Self::MOST] =
        [Self::Corner, Self::Midge, WING2, WING3, X2, X3, T2, T3, LEFT, RIGHT];

    /// The place in [`Orbit::ALL`].
    pub(crate) const fn number(self) -> usize {
        match self {
            Self::Corner => 0,
            Self::Midge => 1,
            Self::Wing { layer } => layer.number() as usize,
            Self::XCentre { layer } => layer.number() as usize + 2,
            Self::TCentre { layer } => layer.number() as usize + 4,
            Self::Oblique(Hand::Left) => 8,
            Self::Oblique(Hand::Right) => 9,
        }
    }

    /// The orbits of a size: corners, midges, wings, then centres, from outside in.
    ///
    /// ```
    /// use cube::{Orbit, Size};
    /// assert_eq!(Orbit::of(Size::TWO), &[Orbit::Corner]);
    /// assert_eq!(Orbit::of(Size::THREE), &[Orbit::Corner, Orbit::Midge]);
    /// assert_eq!(Orbit::of(Size::new(7).unwrap()).len(), 10);
    /// ```
    pub fn of(size: Size) -> &'static [Self] {
        match size.layers() {
            2 => &[Self::Corner],
            3 => &[Self::Corner, Self::Midge],
            4 => &[Self::Corner, WING2, X2],
            5 => &[Self::Corner, Self::Midge, WING2, X2, T2],
            6 => &[Self::Corner, WING2, WING3, X2, X3, LEFT, RIGHT],
            _ => &Self::ALL,
        }
    }

    /// The place in [`Orbit::of`]; `None` when the size has no such pieces.
    pub(crate) const fn index_on(self, size: Size) -> Option<usize> {
        let odd = size.is_odd() as usize;
        // How many layers of wings, and of x-centres, there are; and of t-centres on odd sizes.
        let inner = (size.layers() as usize - 2) / 2;
        let (before, layer) = match self {
            Self::Corner => return Some(0),
            Self::Midge => return if odd == 1 { Some(1) } else { None },
            Self::Wing { layer } => (1 + odd, layer),
            Self::XCentre { layer } => (1 + odd + inner, layer),
            Self::TCentre { layer } if odd == 1 => (2 + 2 * inner, layer),
            Self::TCentre { .. } => return None,
            Self::Oblique(_) if inner < 2 => return None,
            Self::Oblique(hand) => return Some(1 + odd + (2 + odd) * inner + hand as usize),
        };
        let nth = layer.number() as usize - 2;
        if nth < inner { Some(before + nth) } else { None }
    }

    /// How many orbits the largest size has.
    pub(crate) const MOST: usize = 10;

    /// Stickers on one piece: 3 on a corner, 2 on a midge, 1 on all others.
    pub const fn stickers_per_piece(self) -> u8 {
        match self {
            Self::Corner => 3,
            Self::Midge => 2,
            Self::Wing { .. } | Self::XCentre { .. } | Self::TCentre { .. } | Self::Oblique(_) => 1,
        }
    }

    /// How many pieces there are: 24 over [`Orbit::stickers_per_piece`].
    pub const fn pieces(self) -> u8 {
        24 / self.stickers_per_piece()
    }

    /// Whether the four pieces of a colour look alike, as centres do.
    pub const fn looks_alike(self) -> bool {
        match self {
            Self::XCentre { .. } | Self::TCentre { .. } | Self::Oblique(_) => true,
            Self::Corner | Self::Midge | Self::Wing { .. } => false,
        }
    }

    /// Whether the piece lies on an edge of the cube.
    pub const fn is_edge(self) -> bool {
        match self {
            Self::Midge | Self::Wing { .. } => true,
            Self::Corner | Self::XCentre { .. } | Self::TCentre { .. } | Self::Oblique(_) => false,
        }
    }

    /// Row and column of the first sticker on each face; a clockwise turn of the face gives the other three.
    pub(crate) fn first_cell(self, size: Size) -> (u8, u8) {
        let middle = size.layers() / 2;
        match self {
            Self::Corner => (0, 0),
            Self::Midge => (0, middle),
            Self::Wing { layer } => (0, layer.number() - 1),
            Self::XCentre { layer } => (layer.number() - 1, layer.number() - 1),
            Self::TCentre { layer } => (layer.number() - 1, middle),
            Self::Oblique(Hand::Right) => (1, 2),
            Self::Oblique(Hand::Left) => (1, size.layers() - 3),
        }
    }

    /// The smallest size that has such pieces; names and piece tables are read off it.
    fn smallest_size(self) -> Size {
        Size::ALL.into_iter().find(|&size| Self::of(size).contains(&self)).unwrap_or(Size::ALL[5])
    }

    /// The place of the facelet that a sticker of this orbit has on a size.
    pub(crate) fn spot(self, size: Size, sticker: Sticker) -> Spot {
        let last = size.layers() - 1;
        let (mut row, mut column) = self.first_cell(size);
        for _ in 0..sticker.index() % 4 {
            (row, column) = (column, last - row);
        }
        Spot::new(size, sticker.face(), row, column)
    }

    fn names(self) -> &'static [Names] {
        &self.table().names
    }

    fn table(self) -> &'static Table {
        static TABLES: [OnceLock<Table>; Orbit::MOST] = [const { OnceLock::new() }; Orbit::MOST];
        TABLES[self.number()].get_or_init(|| {
            const RANK: [Face; 6] = [Face::U, Face::D, Face::F, Face::B, Face::R, Face::L];
            let names = self.make_names();
            let references = (0..self.pieces())
                .filter_map(|piece| {
                    Sticker::all()
                        .filter(|sticker| names[sticker.index()].piece == piece)
                        .min_by_key(|sticker| RANK.iter().position(|&face| face == sticker.face()))
                })
                .collect();
            let clockwise = std::array::from_fn(|at| names[at].next);
            let pieces = std::array::from_fn(|at| names[at].piece);
            Table { names, references, clockwise, pieces }
        })
    }

    fn make_names(self) -> Vec<Names> {
        let size = self.smallest_size();
        let spots: Vec<Spot> = Sticker::all().map(|sticker| self.spot(size, sticker)).collect();
        let mut names: Vec<Names> = Vec::with_capacity(24);
        let mut pieces = 0;
        for sticker in Sticker::all() {
            let Spot { cubie, face } = spots[sticker.index()];
            // Beside its own face the piece is named by the faces near it: U or D, then F or B, then R or L.
            let mut near: Vec<(u8, Face)> = [Face::U, Face::D, Face::F, Face::B, Face::R, Face::L]
                .into_iter()
                .filter(|&side| side.axis() != face.axis())
                .map(|side| (depth_from(size, cubie, side), side))
                .filter(|&(depth, _)| 2 * depth < size.layers() + 1)
                .collect();
            near.sort_by_key(|&(depth, _)| depth);
            let parts: Vec<String> = near
                .iter()
                .map(|&(depth, side)| match depth {
                    1 => side.letter().to_string(),
                    2 => side.letter().to_ascii_lowercase().to_string(),
                    _ => format!("{depth}{}", side.letter().to_ascii_lowercase()),
                })
                .collect();
            let mut sorted = parts.clone();
            sorted.sort_unstable();
            let mates: Vec<u8> = (0..24u8)
                .filter(|&other| spots[other as usize].cubie == cubie && other != sticker.0)
                .collect();
            let next = match mates.as_slice() {
                [a, b] => {
                    let direction = |index: u8| normal(spots[index as usize].face);
                    if triple(normal(face), direction(*a), direction(*b)) < 0 { *a } else { *b }
                }
                [mate] => *mate,
                _ => sticker.0,
            };
            let piece = if let Some(&mate) = mates.iter().find(|&&mate| mate < sticker.0) {
                names[mate as usize].piece
            } else {
                pieces += 1;
                pieces - 1
            };
            let faces = std::iter::once(face)
                .chain(near.iter().filter(|&&(depth, _)| depth == 1).map(|&(_, side)| side))
                .collect();
            let name = format!("{}{}", face.letter(), parts.concat());
            names.push(Names { name, key: (face.letter(), sorted), next, piece, faces });
        }
        names
    }

    /// What the trade calls a sticker: its own face first, as `UFR`, `RUF`, `UF`, `UFr`, `Ufr`, `Uf`, `U3f3r`.
    ///
    /// Layers deeper than the second have their number before them. `Uf3r` is the oblique in layer 2 from F and
    /// layer 3 from R.
    pub fn name(self, sticker: Sticker) -> &'static str {
        self.names().get(sticker.index()).map_or("", |names| names.name.as_str())
    }

    /// The sticker with a name; the letters after the first may come in any order. Full-width signs are read as plain ones. A wing is
    /// named by either of its two stickers.
    ///
    /// ```
    /// use cube::{Layer, Orbit};
    /// assert_eq!(Orbit::Corner.sticker("URF"), Orbit::Corner.sticker("UFR"));
    /// assert_eq!(Orbit::Midge.sticker("UFR"), None);
    /// let wing = Orbit::Wing { layer: Layer::Second };
    /// assert_eq!(wing.sticker("FUr"), wing.sticker("UFr"));
    /// ```
    pub fn sticker(self, name: &str) -> Option<Sticker> {
        self.sticker_named(name).or_else(|| {
            // The second colour of a wing: its own face and the other one exchanged.
            let Self::Wing { .. } = self else { return None };
            let mut signs: Vec<char> = name.chars().map(crate::signs::plain_sign).collect();
            Face::from_letter(*signs.first()?)?;
            let other = signs.iter().skip(1).position(|&sign| Face::from_letter(sign).is_some())? + 1;
            signs.swap(0, other);
            self.sticker_named(&signs.into_iter().collect::<String>())
        })
    }

    fn sticker_named(self, name: &str) -> Option<Sticker> {
        let mut letters = name.chars().map(crate::signs::plain_sign).peekable();
        let first = letters.next()?;
        let mut parts = Vec::new();
        while let Some(letter) = letters.next() {
            if letter.is_ascii_digit() {
                let side = letters.next()?;
                parts.push(if letter == '2' { side.to_string() } else { format!("{letter}{side}") });
            } else {
                parts.push(letter.to_string());
            }
            if parts.len() > 3 {
                return None;
            }
        }
        parts.sort_unstable();
        let found = self.names().iter().position(|names| names.key.0 == first && names.key.1 == parts)?;
        Sticker::new(found as u8)
    }

    /// The sticker reached by going so many stickers clockwise round its piece, seen from outside.
    ///
    /// On a midge any odd number is the other sticker; on wings and centres nothing changes.
    #[must_use]
    pub fn turned(self, sticker: Sticker, clockwise: u8) -> Sticker {
        let mut at = sticker;
        for _ in 0..clockwise % self.stickers_per_piece() {
            at = Sticker::from_table(self.table().clockwise[at.index()]);
        }
        at
    }

    /// All pieces by number.
    pub fn all_pieces(self) -> impl DoubleEndedIterator<Item = Piece> + ExactSizeIterator {
        (0..self.pieces()).map(Piece)
    }

    /// For each sticker the number of the piece that it is part of, for loops over many states.
    pub fn piece_table(self) -> &'static [u8; 24] {
        &self.table().pieces
    }

    /// For each sticker the number of the next one of its piece, clockwise, for loops over many states.
    pub fn clockwise_table(self) -> &'static [u8; 24] {
        &self.table().clockwise
    }

    /// The piece that a sticker is part of.
    pub fn piece(self, sticker: Sticker) -> Piece {
        Piece(self.table().pieces[sticker.index()])
    }

    /// Whether two stickers are on one piece.
    ///
    /// ```
    /// use cube::Orbit;
    /// let edge = |name| Orbit::Midge.sticker(name).unwrap();
    /// assert!(Orbit::Midge.same_piece(edge("UF"), edge("FU")));
    /// assert!(!Orbit::Midge.same_piece(edge("UF"), edge("UR")));
    /// ```
    pub fn same_piece(self, one: Sticker, other: Sticker) -> bool {
        self.piece(one) == self.piece(other)
    }

    /// The sticker by which a piece is named and its turning measured: the first in the order U D F B R L.
    pub fn reference(self, piece: Piece) -> Sticker {
        self.references().get(piece.index()).copied().unwrap_or(Sticker::from_table(0))
    }

    /// The reference stickers of all pieces, by piece number.
    pub(crate) fn references(self) -> &'static [Sticker] {
        self.table().references.as_slice()
    }

    /// The name of the piece that a sticker is part of: that of its first sticker in the order U D F B R L.
    ///
    /// ```
    /// use cube::Orbit;
    /// assert_eq!(Orbit::Corner.piece_name(Orbit::Corner.sticker("RUF").unwrap()), "UFR");
    /// assert_eq!(Orbit::Midge.piece_name(Orbit::Midge.sticker("LF").unwrap()), "FL");
    /// ```
    pub fn piece_name(self, sticker: Sticker) -> &'static str {
        self.name(self.reference(self.piece(sticker)))
    }

    /// All stickers of the piece, clockwise from this one.
    pub fn stickers_from(self, sticker: Sticker) -> impl Iterator<Item = Sticker> {
        (0..self.stickers_per_piece()).map(move |steps| self.turned(sticker, steps))
    }

    /// Of a wing, the wing that lies on the same edge of the cube; any other piece itself. A wing has one sticker left of the middle of its
    /// edge, seen with the edge at the top of its face, by which it is named, and one on the other face, right of the middle: that
    /// stands where the other wing's left one would, had the edge been turned over.
    ///
    /// ```
    /// use cube::{Layer, Orbit};
    /// let wing = Orbit::Wing { layer: Layer::Second };
    /// assert_eq!(wing.name(wing.across(wing.sticker("UFr").unwrap())), "FUl");
    /// ```
    #[must_use]
    pub fn across(self, sticker: Sticker) -> Sticker {
        let Self::Wing { .. } = self else { return sticker };
        let &[own, other] = self.faces(sticker) else { return sticker };
        Sticker::all().find(|&wing| self.faces(wing) == [other, own]).unwrap_or(sticker)
    }

    /// The faces that the piece of a sticker shows: the sticker's own, then the others in the order U D F B R L.
    ///
    /// A wing shows two although one sticker stands for it.
    pub fn faces(self, sticker: Sticker) -> &'static [Face] {
        self.names().get(sticker.index()).map_or(&[], |names| names.faces.as_slice())
    }
}

impl fmt::Display for Orbit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Corner => f.write_str("corner"),
            Self::Midge => f.write_str("midge"),
            Self::Wing { layer } => write!(f, "wing{}", layer.suffix()),
            Self::XCentre { layer } => write!(f, "x-centre{}", layer.suffix()),
            Self::TCentre { layer } => write!(f, "t-centre{}", layer.suffix()),
            Self::Oblique(Hand::Left) => f.write_str("left oblique"),
            Self::Oblique(Hand::Right) => f.write_str("right oblique"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_place_among_the_orbits_is_computed_as_listed() {
        for size in Size::ALL {
            for &orbit in Orbit::of(Size::ALL[5]) {
                let listed = Orbit::of(size).iter().position(|&other| other == orbit);
                assert_eq!(orbit.index_on(size), listed, "{orbit} on {size}");
            }
        }
    }
}
