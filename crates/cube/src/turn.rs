//! Turns: which layers move, which way and how far.

use crate::{Axis, Block, Face, Lack, Size};
use std::fmt;
use std::ops::Range;
use thiserror::Error;

/// How far a block of layers turns, clockwise as seen from its face.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, PartialOrd, Ord)]
#[repr(u8)]
pub enum Amount {
    /// A quarter clockwise.
    Clockwise = 1,
    /// Half a turn.
    Half = 2,
    /// A quarter counter-clockwise, written with a prime.
    Counter = 3,
}

impl Amount {
    /// All three.
    pub const ALL: [Self; 3] = [Self::Clockwise, Self::Half, Self::Counter];

    /// Quarter turns clockwise, 1 to 3.
    pub const fn quarters(self) -> u8 {
        self as u8
    }

    /// The amount of this many quarter turns; `None` when nothing moves.
    pub const fn from_quarters(quarters: i64) -> Option<Self> {
        match quarters.rem_euclid(4) {
            1 => Some(Self::Clockwise),
            2 => Some(Self::Half),
            3 => Some(Self::Counter),
            _ => None,
        }
    }

    /// The same turn the other way.
    #[must_use]
    pub const fn inverse(self) -> Self {
        match self {
            Self::Clockwise => Self::Counter,
            Self::Half => Self::Half,
            Self::Counter => Self::Clockwise,
        }
    }
}

/// A turn that a size does not have.
///
/// ```
/// use cube::{Algorithm, Lack, Size};
/// let wide = Algorithm::parse("R 3Rw", Size::new(4).unwrap()).unwrap();
/// let no = wide.on(Size::THREE).unwrap_err();
/// assert_eq!(no.to_string(), "3Rw: 3 layers are too many to turn on a 3x3; at most 2 turn together");
/// assert_eq!(no.lack, Lack::Depth { depth: 3, most: 2 });
/// ```
#[derive(Clone, Copy, PartialEq, Eq, Debug, Error)]
#[error("{turn}: {}", sentence(*.lack, *.size))]
pub struct NoSuchTurn {
    /// The turn.
    pub turn: Turn,
    /// The size.
    pub size: Size,
    /// What the size lacks.
    pub lack: Lack,
}

fn sentence(lack: Lack, size: Size) -> String {
    match lack {
        Lack::Middle => format!("a {size} has no middle layer, so it has no slice turns"),
        Lack::Wide => format!("a {size} has no wide turns; to turn both layers is a rotation (x y z)"),
        Lack::Depth { depth: 0, .. } => "no layer turns".to_owned(),
        Lack::Depth { depth, most } => {
            format!("{depth} layers are too many to turn on a {size}; at most {most} turn together")
        }
        Lack::Inner => format!("a {size} has no inner layers"),
        Lack::Layers { most: 2 } => format!("the only inner layer of a {size} is layer 2"),
        Lack::Layers { most } => format!("the inner layers of a {size} are 2 to {most}"),
        Lack::Backwards => "of inner layers the one nearer to the face is named first, as in 2-3R".to_owned(),
    }
}

/// A turn of one block by an amount.
///
/// ```
/// use cube::{Amount, Block, Face, Turn};
/// let turn = Turn::new(Block::Outer { face: Face::R, depth: 2 }, Amount::Counter);
/// assert_eq!(turn.to_string(), "Rw'");
/// assert_eq!(turn.inverse().to_string(), "Rw");
/// ```
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, PartialOrd, Ord)]
pub struct Turn {
    /// What turns.
    pub block: Block,
    /// How far.
    pub amount: Amount,
}

impl Turn {
    /// A turn of a block by an amount. Whether a cube has the block is asked with [`Turn::check`].
    pub const fn new(block: Block, amount: Amount) -> Self {
        Self { block, amount }
    }

    /// A face turn.
    pub const fn face(face: Face, amount: Amount) -> Self {
        Self::new(Block::face(face), amount)
    }

    /// The 18 face turns.
    pub fn faces() -> impl Iterator<Item = Self> {
        Face::ALL.into_iter().flat_map(|face| Self::of(Block::face(face)))
    }

    /// The three turns of a block.
    pub fn of(block: Block) -> impl Iterator<Item = Self> {
        Amount::ALL.into_iter().map(move |amount| Self::new(block, amount))
    }

    /// Every turn that a size has: of outer and inner blocks, of slices, and rotations.
    pub fn all(size: Size) -> impl Iterator<Item = Self> {
        Block::all(size).flat_map(Self::of)
    }

    /// Whether a cube of this size can make the turn.
    ///
    /// # Errors
    /// [`NoSuchTurn`] for a slice without a middle layer, a wide turn of too many layers
    /// (WCA Regulations 12a2: 1 < n < N), or inner layers that are not between 2 and N - 1 in this order.
    ///
    /// ```
    /// use cube::{Amount, Block, Face, Size, Turn};
    /// let inner = Turn::new(Block::layer(Face::R, 3), Amount::Clockwise);
    /// assert!(inner.check(Size::new(4).unwrap()).is_ok());
    /// assert_eq!(inner.check(Size::THREE).unwrap_err().to_string(), "3R: the only inner layer of a 3x3 is layer 2");
    /// ```
    pub const fn check(self, size: Size) -> Result<(), NoSuchTurn> {
        match self.block.span(size) {
            Ok(_) => Ok(()),
            Err(lack) => Err(NoSuchTurn { turn: self, size, lack }),
        }
    }

    /// What it does to a cube of this size, whatever it is called.
    ///
    /// # Errors
    /// [`NoSuchTurn`] as for [`Turn::check`].
    pub const fn motion(self, size: Size) -> Result<Motion, NoSuchTurn> {
        match self.block.span(size) {
            Ok((first, last)) => {
                let face = self.block.follows();
                Ok(if face.is_positive() {
                    Motion { axis: face.axis(), low: first - 1, high: last, amount: self.amount }
                } else {
                    let (low, high) = (size.layers() - last, size.layers() + 1 - first);
                    Motion { axis: face.axis(), low, high, amount: self.amount.inverse() }
                })
            }
            Err(lack) => Err(NoSuchTurn { turn: self, size, lack }),
        }
    }

    /// The turn that undoes it.
    #[must_use]
    pub const fn inverse(self) -> Self {
        Self::new(self.block, self.amount.inverse())
    }

    /// Whether the whole cube turns, so that no piece moves against another.
    pub const fn is_rotation(self) -> bool {
        matches!(self.block, Block::Whole(_))
    }

    /// The same turn seen in a mirror that exchanges the two ends of an axis.
    #[must_use]
    pub const fn mirrored(self, mirror: Axis) -> Self {
        let follows = self.block.follows();
        let along = follows.axis() as u8 == mirror as u8;
        // A mirror turns clockwise into counter-clockwise.
        Self::new(self.block, self.amount.inverse()).carried(if along { follows.opposite() } else { follows })
    }

    /// The turn that is to another face as this one is to the face that its block follows.
    pub(crate) const fn carried(self, face: Face) -> Self {
        let block = self.block.carried(face);
        let same = block.follows() as u8 == face as u8;
        Self::new(block, if same { self.amount } else { self.amount.inverse() })
    }
}

impl fmt::Display for Turn {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.block)?;
        f.write_str(match self.amount {
            Amount::Clockwise => "",
            Amount::Half => "2",
            Amount::Counter => "'",
        })
    }
}

/// What a turn does to a cube of one size: neighbouring layers that turn about an axis.
///
/// Turns that do the same have the same motion, as `M'` and `2R` on a 3x3.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub struct Motion {
    axis: Axis,
    low: u8,
    high: u8,
    amount: Amount,
}

impl Motion {
    /// The axis about which the layers turn.
    pub const fn axis(self) -> Axis {
        self.axis
    }

    /// The layers that turn, counted from 0 at the positive end of the axis (R, U or F).
    pub const fn layers(self) -> Range<u8> {
        self.low..self.high
    }

    /// How far they turn, as seen from the positive end.
    pub const fn amount(self) -> Amount {
        self.amount
    }

    /// A number that tells the motions of a size apart, below [`Motion::count`]: for tables.
    pub const fn index(self) -> usize {
        let layers = self.high as usize * (self.high as usize - 1) / 2 + self.low as usize;
        (layers * 3 + self.axis.index()) * 3 + self.amount.quarters() as usize - 1
    }

    /// How many motions a size has: for each axis and amount, each choice of a first and a last layer.
    pub const fn count(size: Size) -> usize {
        let layers = size.layers() as usize;
        9 * (layers * (layers + 1) / 2)
    }

    /// All motions of a size about an axis by an amount.
    pub(crate) fn about(size: Size, axis: Axis, amount: Amount) -> impl Iterator<Item = Self> {
        (0..size.layers())
            .flat_map(move |low| (low + 1..=size.layers()).map(move |high| Self { axis, low, high, amount }))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn the_motions_of_the_turns_of_a_size_are_all_that_there_are() {
        for size in Size::ALL {
            let numbers: BTreeSet<usize> =
                Turn::all(size).map(|turn| turn.motion(size).expect("a turn of this size").index()).collect();
            assert_eq!(numbers, (0..Motion::count(size)).collect(), "{size}");
        }
    }

    #[test]
    fn what_is_the_same_has_the_same_motion() {
        let size = Size::new(5).unwrap();
        let motion = |text: &str| {
            let turns = crate::Algorithm::parse(text, size).unwrap().flatten();
            turns[0].motion(size).unwrap()
        };
        for (one, other) in [("M", "3L"), ("M", "3R'"), ("2-3R", "3-4L'"), ("E2", "3U2"), ("2B", "4F'")] {
            assert_eq!(motion(one), motion(other), "{one} and {other}");
        }
        assert_ne!(motion("2R"), motion("2L"));
        assert_ne!(motion("Rw"), motion("2R"));
    }
}
