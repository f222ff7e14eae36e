//! The size of a cube: how many layers it has along each axis.

use std::fmt;

/// The number of layers of a cube, 2 to 7.
///
/// ```
/// use cube::Size;
/// assert_eq!(Size::new(3).unwrap().layers(), 3);
/// assert!(Size::new(8).is_none());
/// assert_eq!(Size::THREE.to_string(), "3x3");
/// ```
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct Size(u8);

impl Size {
    /// The 2x2.
    pub const TWO: Self = Self(2);
    /// The 3x3.
    pub const THREE: Self = Self(3);
    /// All sizes that the model knows, smallest first.
    pub const ALL: [Self; 6] = [Self(2), Self(3), Self(4), Self(5), Self(6), Self(7)];

    /// A size of 2 to 7 layers; `None` for any other number.
    pub const fn new(layers: u8) -> Option<Self> {
        if layers >= 2 && layers <= 7 { Some(Self(layers)) } else { None }
    }

    /// Layers along an axis, 2 to 7.
    pub const fn layers(self) -> u8 {
        self.0
    }

    /// Whether there is a middle layer, and so a fixed centre on each face.
    pub const fn is_odd(self) -> bool {
        self.0 % 2 == 1
    }

    /// The number of facelets on the whole cube: 6 N².
    pub const fn facelets(self) -> usize {
        6 * self.0 as usize * self.0 as usize
    }

    /// The middle layer counted from outside, 1-based, of an odd size.
    pub(crate) const fn middle(self) -> Option<u8> {
        if self.is_odd() { Some(self.0.div_ceil(2)) } else { None }
    }

    pub(crate) const fn index(self) -> usize {
        self.0 as usize - 2
    }
}

impl fmt::Display for Size {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{0}x{0}", self.0)
    }
}
