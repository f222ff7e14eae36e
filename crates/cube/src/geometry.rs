//! Where facelets lie in space, and how quarter turns move them. All tables come from here.

use crate::{Axis, Face, Size};

/// A vector with whole coordinates; cubies sit on odd or even points from -(N-1) to N-1 in steps of two.
pub(crate) type Vector = [i8; 3];

/// The direction in which a face looks.
pub(crate) const fn normal(face: Face) -> Vector {
    match face {
        Face::U => [0, 1, 0],
        Face::D => [0, -1, 0],
        Face::L => [-1, 0, 0],
        Face::R => [1, 0, 0],
        Face::F => [0, 0, 1],
        Face::B => [0, 0, -1],
    }
}

/// The face that looks in a direction, if it is one of the six.
pub(crate) fn facing(direction: Vector) -> Option<Face> {
    Face::ALL.into_iter().find(|&face| normal(face) == direction)
}

/// Up and right on a face as it is looked at: side faces with U upward, U with B upward, D with F upward.
const fn frame(face: Face) -> (Vector, Vector) {
    match face {
        Face::U => (normal(Face::B), normal(Face::R)),
        Face::D => (normal(Face::F), normal(Face::R)),
        Face::F => (normal(Face::U), normal(Face::R)),
        Face::B => (normal(Face::U), normal(Face::L)),
        Face::R => (normal(Face::U), normal(Face::B)),
        Face::L => (normal(Face::U), normal(Face::F)),
    }
}

pub(crate) fn dot(a: Vector, b: Vector) -> i8 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

/// a · (b × c): negative when a, b, c follow one another clockwise seen from outside the cube.
pub(crate) fn triple(a: Vector, b: Vector, c: Vector) -> i8 {
    a[0] * (b[1] * c[2] - b[2] * c[1])
        + a[1] * (b[2] * c[0] - b[0] * c[2])
        + a[2] * (b[0] * c[1] - b[1] * c[0])
}

/// A quarter turn clockwise as seen from the positive end of the axis.
pub(crate) fn quarter(axis: Axis, [x, y, z]: Vector) -> Vector {
    match axis {
        Axis::X => [x, z, -y],
        Axis::Y => [-z, y, x],
        Axis::Z => [y, -x, z],
    }
}

/// One facelet: the place of its cubie and the face it is on.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) struct Spot {
    pub cubie: Vector,
    pub face: Face,
}

impl Spot {
    /// The facelet in a row and column (from 0) of a face as it is looked at.
    pub fn new(size: Size, face: Face, row: u8, column: u8) -> Self {
        let edge = size.layers() as i8 - 1;
        let (up, right) = frame(face);
        let mut cubie = [0; 3];
        for (i, part) in cubie.iter_mut().enumerate() {
            *part = edge * normal(face)[i]
                + (edge - 2 * row as i8) * up[i]
                + (2 * column as i8 - edge) * right[i];
        }
        Self { cubie, face }
    }

    /// Row and column on its face.
    pub fn row_column(self, size: Size) -> (u8, u8) {
        let edge = size.layers() as i8 - 1;
        let (up, right) = frame(self.face);
        (i8::midpoint(edge, -dot(self.cubie, up)) as u8, i8::midpoint(edge, dot(self.cubie, right)) as u8)
    }

    /// Layer of the cubie along an axis, counted from 0 at the positive end (R, U or F).
    pub fn layer(self, size: Size, axis: Axis) -> u8 {
        ((size.layers() as i8 - 1 - self.cubie[axis.index()]) / 2) as u8
    }

    pub fn quarter(self, axis: Axis) -> Self {
        let direction = quarter(axis, normal(self.face));
        Self { cubie: quarter(axis, self.cubie), face: facing(direction).unwrap_or(self.face) }
    }
}

/// The layer of a cubie counted from a face, 1 for the face's own layer.
pub(crate) fn depth_from(size: Size, cubie: Vector, face: Face) -> u8 {
    ((size.layers() as i8 - 1 - dot(cubie, normal(face))) / 2 + 1) as u8
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn r_carries_front_up() {
        // WCA Regulations 12a1a: R is the right face clockwise; so what is in front goes up.
        assert_eq!(quarter(Axis::X, normal(Face::F)), normal(Face::U));
        // U clockwise seen from above: what is at the right goes to the front.
        assert_eq!(quarter(Axis::Y, normal(Face::R)), normal(Face::F));
        // F clockwise: up goes right.
        assert_eq!(quarter(Axis::Z, normal(Face::U)), normal(Face::R));
    }

    #[test]
    fn row_and_column_come_back() {
        for size in Size::ALL {
            for face in Face::ALL {
                for row in 0..size.layers() {
                    for column in 0..size.layers() {
                        let spot = Spot::new(size, face, row, column);
                        assert_eq!(spot.row_column(size), (row, column));
                        assert_eq!(depth_from(size, spot.cubie, face), 1);
                    }
                }
            }
        }
    }
}
