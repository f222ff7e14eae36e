//! Turns: which layers move, which way and how far.

use crate::{Axis, Face, Rotation, Size};
use std::fmt;
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

/// A middle layer of an odd cube.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, PartialOrd, Ord)]
pub enum Slice {
    /// Between L and R, turning as L does.
    M,
    /// Between U and D, turning as D does.
    E,
    /// Between F and B, turning as F does.
    S,
}

impl Slice {
    /// All three.
    pub const ALL: [Self; 3] = [Self::M, Self::E, Self::S];

    /// The face whose direction of turning the slice follows.
    pub const fn follows(self) -> Face {
        match self {
            Self::M => Face::L,
            Self::E => Face::D,
            Self::S => Face::F,
        }
    }

    const fn on(axis: Axis) -> Self {
        match axis {
            Axis::X => Self::M,
            Axis::Y => Self::E,
            Axis::Z => Self::S,
        }
    }

    const fn letter(self) -> char {
        match self {
            Self::M => 'M',
            Self::E => 'E',
            Self::S => 'S',
        }
    }
}

/// What turns as one.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, PartialOrd, Ord)]
pub enum Block {
    /// So many layers counted from a face; one is a face turn, more a wide turn.
    Outer {
        /// The face that the layers are counted from.
        face: Face,
        /// How many layers, 1 or more.
        depth: u8,
    },
    /// The middle layer.
    Slice(Slice),
    /// The whole cube (x, y, z): a rotation.
    Whole(Axis),
}

impl Block {
    /// A face turn's block.
    pub const fn face(face: Face) -> Self {
        Self::Outer { face, depth: 1 }
    }

    /// The axis it turns about.
    pub const fn axis(self) -> Axis {
        self.follows().axis()
    }

    /// The face as seen from which "clockwise" is meant.
    pub const fn follows(self) -> Face {
        match self {
            Self::Outer { face, .. } => face,
            Self::Slice(slice) => slice.follows(),
            Self::Whole(axis) => axis.positive(),
        }
    }
}

/// A size that does not have the layers a turn asks for.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Error)]
pub enum NoSuchTurn {
    /// M, E or S on a cube without a middle layer.
    #[error("a {0} has no middle layer, so it has no slice turns")]
    NoSlice(Size),
    /// A wide turn of as many layers as the cube has, or more.
    #[error("{}", too_deep(*.depth, *.size))]
    TooDeep {
        /// Layers asked for.
        depth: u8,
        /// The cube.
        size: Size,
    },
}

fn too_deep(depth: u8, size: Size) -> String {
    match (depth, size) {
        (0, _) => "no layer turns".to_owned(),
        (_, Size::TWO) => "a 2x2 has no wide turns; to turn both layers is a rotation (x y z)".to_owned(),
        _ => format!(
            "{depth} layers are too many to turn on a {size}; at most {} turn together",
            size.layers() - 1
        ),
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
        Face::ALL
            .into_iter()
            .flat_map(|face| Amount::ALL.into_iter().map(move |amount| Self::face(face, amount)))
    }

    /// Every turn that a size has: face, wide, slice turns and rotations.
    pub fn all(size: Size) -> impl Iterator<Item = Self> {
        let outer = Face::ALL
            .into_iter()
            .flat_map(move |face| (1..size.layers()).map(move |depth| Block::Outer { face, depth }));
        let slices = Slice::ALL.into_iter().filter(move |_| size.is_odd()).map(Block::Slice);
        let whole = Axis::ALL.into_iter().map(Block::Whole);
        outer
            .chain(slices)
            .chain(whole)
            .flat_map(|block| Amount::ALL.into_iter().map(move |amount| Self::new(block, amount)))
    }

    /// Whether a cube of this size can make the turn.
    ///
    /// # Errors
    /// [`NoSuchTurn`] for a slice without a middle layer or a wide turn of too many layers
    /// (WCA Regulations 12a2: 1 < n < N).
    pub const fn check(self, size: Size) -> Result<(), NoSuchTurn> {
        match self.block {
            Block::Outer { depth, .. } if depth == 0 || depth >= size.layers() => {
                Err(NoSuchTurn::TooDeep { depth, size })
            }
            Block::Slice(_) if !size.is_odd() => Err(NoSuchTurn::NoSlice(size)),
            _ => Ok(()),
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

    /// How the whole cube is turned by it: the rotation itself for x, y, z, nothing for other turns.
    pub fn rotation(self) -> Rotation {
        match self.block {
            Block::Whole(axis) => Rotation::about(axis, self.amount),
            _ => Rotation::NONE,
        }
    }

    /// The same turn seen in a mirror that exchanges the two ends of an axis.
    #[must_use]
    pub const fn mirrored(self, mirror: Axis) -> Self {
        let along = self.block.axis() as u8 == mirror as u8;
        match self.block {
            Block::Outer { face, depth } => {
                let face = if along { face.opposite() } else { face };
                Self::new(Block::Outer { face, depth }, self.amount.inverse())
            }
            _ if along => self,
            _ => self.inverse(),
        }
    }

    /// The turn that does to a cube held another way what this one does to it now.
    #[must_use]
    pub fn rotated(self, rotation: Rotation) -> Self {
        let image = rotation.image(self.block.follows());
        let block = match self.block {
            Block::Outer { depth, .. } => Block::Outer { face: image, depth },
            Block::Slice(_) => Block::Slice(Slice::on(image.axis())),
            Block::Whole(_) => Block::Whole(image.axis()),
        };
        let amount = if block.follows() == image { self.amount } else { self.amount.inverse() };
        Self::new(block, amount)
    }

    /// Axis, layers as bits from the positive end, and quarter turns clockwise as seen from that end.
    pub(crate) fn layers(self, size: Size) -> (Axis, u8, u8) {
        let count = size.layers();
        let all = (1u16 << count) - 1;
        let follows = self.block.follows();
        let bits = match self.block {
            Block::Outer { face, depth } => {
                let near = (1u16 << depth) - 1;
                if face.is_positive() { near } else { (near << (count - depth)) & all }
            }
            Block::Slice(_) => 1 << (count / 2),
            Block::Whole(_) => all,
        };
        let quarters =
            if follows.is_positive() { self.amount.quarters() } else { 4 - self.amount.quarters() };
        (follows.axis(), bits as u8, quarters)
    }

    /// A small number that tells the turns of all sizes apart, below [`Turn::INDICES`].
    pub(crate) const fn index(self) -> usize {
        let block = match self.block {
            Block::Outer { face, depth } => face.index() * 6 + depth as usize - 1,
            Block::Slice(slice) => 36 + slice as usize,
            Block::Whole(axis) => 39 + axis.index(),
        };
        block * 3 + self.amount.quarters() as usize - 1
    }

    pub(crate) const INDICES: usize = 42 * 3;
}

impl fmt::Display for Turn {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.block {
            Block::Outer { face, depth: 1 } => write!(f, "{face}")?,
            Block::Outer { face, depth: 2 } => write!(f, "{face}w")?,
            Block::Outer { face, depth } => write!(f, "{depth}{face}w")?,
            Block::Slice(slice) => write!(f, "{}", slice.letter())?,
            Block::Whole(axis) => write!(f, "{}", axis.letter())?,
        }
        f.write_str(match self.amount {
            Amount::Clockwise => "",
            Amount::Half => "2",
            Amount::Counter => "'",
        })
    }
}
