//! Blocks: which layers turn as one, and what they are called.

use crate::{Axis, Face, Size};
use std::fmt;

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

    /// The slice that turns about an axis.
    pub const fn on(axis: Axis) -> Self {
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
///
/// Layers are counted from the face that is named; the face's own layer is 1. Whether a cube has the block depends on
/// its size, which [`crate::Turn::check`] asks.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, PartialOrd, Ord)]
pub enum Block {
    /// So many layers counted from a face (`R`, `Rw`, `3Rw`); one is a face turn, more a wide turn.
    Outer {
        /// The face that the layers are counted from.
        face: Face,
        /// How many layers, 1 or more.
        depth: u8,
    },
    /// Inner layers alone (`2R`, `2-3R`): neither the face's own layer nor the opposite one.
    Inner {
        /// The face that the layers are counted from, and whose way of turning they follow.
        face: Face,
        /// The layer nearest to the face, 2 or more.
        first: u8,
        /// The layer farthest from it, `first` or more.
        last: u8,
    },
    /// The middle layer.
    Slice(Slice),
    /// The whole cube (x, y, z): a rotation.
    Whole(Axis),
}

/// Why a size does not have a block.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Lack {
    /// M, E or S on a cube without a middle layer.
    Middle,
    /// A wide turn on a 2x2, where both layers together are the whole cube.
    Wide,
    /// An outer block of no layer, or of as many as the cube has or more.
    Depth {
        /// Layers asked for.
        depth: u8,
        /// The most that turn together on the size.
        most: u8,
    },
    /// Inner layers of a 2x2, which has none.
    Inner,
    /// Layers that are no inner ones of the size.
    Layers {
        /// The last inner layer of the size; the first is 2.
        most: u8,
    },
    /// Inner layers of which the farther is named first.
    Backwards,
}

impl Block {
    /// A face turn's block.
    pub const fn face(face: Face) -> Self {
        Self::Outer { face, depth: 1 }
    }

    /// One inner layer, counted from a face.
    pub const fn layer(face: Face, number: u8) -> Self {
        Self::Inner { face, first: number, last: number }
    }

    /// The axis it turns about.
    pub const fn axis(self) -> Axis {
        self.follows().axis()
    }

    /// The face as seen from which "clockwise" is meant.
    pub const fn follows(self) -> Face {
        match self {
            Self::Outer { face, .. } | Self::Inner { face, .. } => face,
            Self::Slice(slice) => slice.follows(),
            Self::Whole(axis) => axis.positive(),
        }
    }

    /// Every block that a size has: outer, then inner ones, face by face, slices, and the whole cube.
    ///
    /// ```
    /// use cube::{Block, Size};
    /// let names: Vec<String> = Block::all(Size::THREE).map(|block| block.to_string()).collect();
    /// assert_eq!(names.join(" "), "U Uw L Lw F Fw R Rw B Bw D Dw 2U 2L 2F 2R 2B 2D M E S x y z");
    /// ```
    pub fn all(size: Size) -> impl Iterator<Item = Self> {
        let outer = Face::ALL
            .into_iter()
            .flat_map(move |face| (1..size.layers()).map(move |depth| Self::Outer { face, depth }));
        let inner = Face::ALL.into_iter().flat_map(move |face| {
            (2..size.layers()).flat_map(move |first| {
                (first..size.layers()).map(move |last| Self::Inner { face, first, last })
            })
        });
        let slices = Slice::ALL.into_iter().map(Self::Slice);
        let whole = Axis::ALL.into_iter().map(Self::Whole);
        outer.chain(inner).chain(slices).chain(whole).filter(move |block| block.span(size).is_ok())
    }

    /// The first and the last of its layers, counted from the face that it follows.
    pub(crate) const fn span(self, size: Size) -> Result<(u8, u8), Lack> {
        let layers = size.layers();
        match self {
            Self::Outer { depth, .. } if depth >= 1 && depth < layers => Ok((1, depth)),
            Self::Outer { depth, .. } if depth >= 1 && layers == 2 => Err(Lack::Wide),
            Self::Outer { depth, .. } => Err(Lack::Depth { depth, most: layers - 1 }),
            Self::Inner { .. } if layers == 2 => Err(Lack::Inner),
            Self::Inner { first, last, .. } if first > last => Err(Lack::Backwards),
            Self::Inner { first, last, .. } if first >= 2 && last < layers => Ok((first, last)),
            Self::Inner { .. } => Err(Lack::Layers { most: layers - 1 }),
            Self::Slice(_) => match size.middle() {
                Some(middle) => Ok((middle, middle)),
                None => Err(Lack::Middle),
            },
            Self::Whole(_) => Ok((1, layers)),
        }
    }

    /// The block of the same sort as far from a given face as this one is from the face that it follows.
    ///
    /// A slice or the whole cube may then follow the opposite face.
    pub(crate) const fn carried(self, face: Face) -> Self {
        match self {
            Self::Outer { depth, .. } => Self::Outer { face, depth },
            Self::Inner { first, last, .. } => Self::Inner { face, first, last },
            Self::Slice(_) => Self::Slice(Slice::on(face.axis())),
            Self::Whole(_) => Self::Whole(face.axis()),
        }
    }
}

impl fmt::Display for Block {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Outer { face, depth: 1 } => write!(f, "{face}"),
            Self::Outer { face, depth: 2 } => write!(f, "{face}w"),
            Self::Outer { face, depth } => write!(f, "{depth}{face}w"),
            Self::Inner { face, first, last } if first == last => write!(f, "{first}{face}"),
            Self::Inner { face, first, last } => write!(f, "{first}-{last}{face}"),
            Self::Slice(slice) => write!(f, "{}", slice.letter()),
            Self::Whole(axis) => write!(f, "{}", axis.letter()),
        }
    }
}
