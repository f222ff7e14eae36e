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

    /// The fewest rotations x, y, z that make it: none, one or two.
    pub fn turns(self) -> &'static [Turn] {
        WAYS.iter().find(|(rotation, _)| *rotation == self).map_or(&[], |(_, turns)| turns.as_slice())
    }

    /// Whether it permutes the six centres oddly (a single quarter turn does).
    pub fn is_odd(self) -> bool {
        crate::perm::is_odd(&self.0.map(|face| face as u8))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

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
