//! The six faces and three axes of a cube held in front of the solver.

use std::fmt;

/// A face of the cube as it is held. The order is that of the default letter scheme: U L F R B D.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
#[repr(u8)]
pub enum Face {
    /// Up.
    U,
    /// Left.
    L,
    /// Front.
    F,
    /// Right.
    R,
    /// Back.
    B,
    /// Down.
    D,
}

impl Face {
    /// All faces in the order of the letter scheme, in which every text and table names them.
    pub const ALL: [Self; 6] = [Self::U, Self::L, Self::F, Self::R, Self::B, Self::D];

    /// Place in [`Face::ALL`], 0 to 5.
    pub const fn index(self) -> usize {
        self as usize
    }

    /// The face with this place in [`Face::ALL`].
    pub(crate) const fn at(index: usize) -> Self {
        Self::ALL[index]
    }

    /// The face on the other side.
    #[must_use]
    pub const fn opposite(self) -> Self {
        match self {
            Self::U => Self::D,
            Self::D => Self::U,
            Self::L => Self::R,
            Self::R => Self::L,
            Self::F => Self::B,
            Self::B => Self::F,
        }
    }

    /// The axis that pierces the face.
    pub const fn axis(self) -> Axis {
        match self {
            Self::L | Self::R => Axis::X,
            Self::U | Self::D => Axis::Y,
            Self::F | Self::B => Axis::Z,
        }
    }

    /// Whether the face lies at the positive end of its axis (R, U, F).
    pub const fn is_positive(self) -> bool {
        matches!(self, Self::R | Self::U | Self::F)
    }

    /// The capital letter of the face.
    pub const fn letter(self) -> char {
        match self {
            Self::U => 'U',
            Self::L => 'L',
            Self::F => 'F',
            Self::R => 'R',
            Self::B => 'B',
            Self::D => 'D',
        }
    }

    /// The face with this capital letter.
    ///
    /// ```
    /// use cube::Face;
    /// assert_eq!(Face::from_letter('B'), Some(Face::B));
    /// assert_eq!(Face::from_letter('b'), None);
    /// ```
    pub fn from_letter(letter: char) -> Option<Self> {
        Self::ALL.into_iter().find(|face| face.letter() == letter)
    }
}

impl fmt::Display for Face {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.letter())
    }
}

/// An axis of the cube: x from L to R, y from D to U, z from B to F.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Axis {
    /// From L to R.
    X,
    /// From D to U.
    Y,
    /// From B to F.
    Z,
}

impl Axis {
    /// All three axes.
    pub const ALL: [Self; 3] = [Self::X, Self::Y, Self::Z];

    /// 0, 1 or 2.
    pub const fn index(self) -> usize {
        self as usize
    }

    /// The face at the positive end: R, U or F.
    pub const fn positive(self) -> Face {
        match self {
            Self::X => Face::R,
            Self::Y => Face::U,
            Self::Z => Face::F,
        }
    }

    /// The letter of the whole-cube rotation about the axis.
    pub const fn letter(self) -> char {
        match self {
            Self::X => 'x',
            Self::Y => 'y',
            Self::Z => 'z',
        }
    }
}
