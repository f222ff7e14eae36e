//! The 24 ways to hold a cube.

use crate::geometry::{Vector, facing, normal, quarter};
use crate::{Amount, Axis, Block, Face, Turn};
use std::sync::LazyLock;

/// A turn of the whole cube in space, one of 24: where each face goes.
///
/// ```
/// use cube::{Face, Rotation};
/// let hold = Rotation::bringing(Face::D, Face::R).unwrap();
/// assert_eq!(cube::display_turns(hold.turns()).to_string(), "x2 y");
/// assert_eq!(hold.image(Face::D), Face::U);
/// ```
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, PartialOrd, Ord)]
pub struct Rotation([Face; 6]);

/// Each rotation with the shortest way to make it by x, y and z.
static WAYS: LazyLock<Vec<(Rotation, Vec<Turn>)>> = LazyLock::new(|| {
    let mut ways: Vec<(Rotation, Vec<Turn>)> = vec![(Rotation::NONE, Vec::new())];
    let mut next = 0;
    while next < ways.len() {
        let (rotation, turns) = ways[next].clone();
        for axis in Axis::ALL {
            for amount in [Amount::Clockwise, Amount::Half, Amount::Counter] {
                let reached = rotation.then(Rotation::about(axis, amount));
                if ways.iter().all(|(known, _)| *known != reached) {
                    let mut longer = turns.clone();
                    longer.push(Turn::new(Block::Whole(axis), amount));
                    ways.push((reached, longer));
                }
            }
        }
        next += 1;
    }
    ways
});

impl Rotation {
    /// The cube stays as it is held.
    pub const NONE: Self = Self(Face::ALL);

    /// All 24, the one that does nothing first, then by the number of turns about an axis that they take.
    pub fn all() -> impl ExactSizeIterator<Item = Self> {
        WAYS.iter().map(|(rotation, _)| *rotation)
    }

    /// The whole-cube rotation x, y or z, by an amount.
    pub fn about(axis: Axis, amount: Amount) -> Self {
        let mut faces = Face::ALL;
        for face in &mut faces {
            let mut direction: Vector = normal(*face);
            for _ in 0..amount.quarters() {
                direction = quarter(axis, direction);
            }
            *face = facing(direction).unwrap_or(*face);
        }
        Self(faces)
    }

    /// The rotation that brings one face up and another to the front; `None` if they are the same or opposite.
    pub fn bringing(up: Face, front: Face) -> Option<Self> {
        Self::all().find(|rotation| rotation.image(up) == Face::U && rotation.image(front) == Face::F)
    }

    /// The rotation that takes each face to the given one (in the order of [`Face::ALL`]), if there is one.
    pub fn from_images(images: [Face; 6]) -> Option<Self> {
        let candidate = Self(images);
        Self::all().find(|rotation| *rotation == candidate)
    }

    /// Where a face goes.
    pub const fn image(self, face: Face) -> Face {
        self.0[face.index()]
    }

    /// First this rotation, then another, both about the solver's own axes.
    #[must_use]
    pub fn then(self, next: Self) -> Self {
        Self(self.0.map(|face| next.image(face)))
    }

    /// The rotation that undoes this one.
    #[must_use]
    pub fn inverse(self) -> Self {
        let mut faces = Face::ALL;
        for face in Face::ALL {
            faces[self.image(face).index()] = face;
        }
        Self(faces)
    }

    /// [`Rotation::then`], for tables that are made when the crate is compiled.
    pub(crate) const fn followed_by(self, next: Self) -> Self {
        let mut faces = self.0;
        let mut at = 0;
        while at < faces.len() {
            faces[at] = next.image(faces[at]);
            at += 1;
        }
        Self(faces)
    }

    /// A number below 24: by the face to which U goes, and then by that to which F goes.
    pub(crate) const fn number(self) -> u8 {
        let (up, front) = (self.image(Face::U), self.image(Face::F));
        let mut before = 0;
        let mut at = 0;
        while at < front.index() {
            before += (Face::at(at).axis() as u8 != up.axis() as u8) as u8;
            at += 1;
        }
        4 * up.index() as u8 + before
    }

    /// The rotation with a number below 24.
    pub(crate) const fn numbered(number: u8) -> Self {
        let up = Face::at(number as usize / 4);
        let mut left = number % 4;
        let mut at = 0;
        while left > 0 || Face::at(at).axis() as u8 == up.axis() as u8 {
            left -= (Face::at(at).axis() as u8 != up.axis() as u8) as u8;
            at += 1;
        }
        let front = Face::at(at);
        // Right is where up and front, in this order, make a right-handed system.
        let right = beside(normal(up), normal(front));
        Self([up, right.opposite(), front, right, front.opposite(), up.opposite()])
    }

    /// The fewest rotations x, y, z that make it: none, one or two.
    pub fn turns(self) -> &'static [Turn] {
        WAYS.iter().find(|(rotation, _)| *rotation == self).map_or(&[], |(_, turns)| turns.as_slice())
    }

    /// Whether it permutes the six centres oddly (a single quarter turn does).
    pub fn is_odd(self) -> bool {
        crate::perm::is_odd(&self.0.map(|face| face as u8))
    }
}

/// The face in the direction of the vector product of two.
const fn beside(a: Vector, b: Vector) -> Face {
    let wanted = [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
    let mut at = 0;
    loop {
        let face = Face::at(at);
        let there = normal(face);
        if there[0] == wanted[0] && there[1] == wanted[1] && there[2] == wanted[2] {
            return face;
        }
        at += 1;
    }
}

impl Turn {
    /// How the whole cube is turned by it: the rotation itself for x, y, z, nothing for other turns.
    pub fn rotation(self) -> Rotation {
        match self.block {
            Block::Whole(axis) => Rotation::about(axis, self.amount),
            Block::Outer { .. } | Block::Inner { .. } | Block::Slice(_) => Rotation::NONE,
        }
    }

    /// The turn that does to a cube held another way what this one does to it now.
    #[must_use]
    pub fn rotated(self, rotation: Rotation) -> Self {
        self.carried(rotation.image(self.block.follows()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_those_of_rotations() {
        let mut seen = [false; 24];
        for rotation in Rotation::all() {
            assert_eq!(Rotation::numbered(rotation.number()), rotation);
            assert!(!std::mem::replace(&mut seen[rotation.number() as usize], true));
            for next in Rotation::all() {
                assert_eq!(rotation.followed_by(next), rotation.then(next));
            }
        }
    }

    #[test]
    fn there_are_24_and_two_turns_suffice() {
        assert_eq!(Rotation::all().len(), 24);
        for rotation in Rotation::all() {
            assert!(rotation.turns().len() <= 2);
            let again =
                rotation.turns().iter().fold(Rotation::NONE, |so_far, turn| so_far.then(turn.rotation()));
            assert_eq!(again, rotation);
            assert_eq!(rotation.then(rotation.inverse()), Rotation::NONE);
        }
    }

    #[test]
    fn opposite_faces_cannot_be_up_and_front() {
        assert_eq!(Rotation::bringing(Face::U, Face::D), None);
        assert_eq!(Rotation::bringing(Face::L, Face::L), None);
    }
}
