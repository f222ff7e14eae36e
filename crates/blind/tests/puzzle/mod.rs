//! A second model of the puzzle for tests: stickers as points in space, each with a colour, exchanged and turned about
//! without any of the engine's tables. It shares with the engine the colours that it begins with and the names of stickers.

use cube::{Axis, Block, Face, Facelets, Orbit, Size, State, Sticker, Turn};
use std::collections::BTreeMap;

/// A place or a direction, in half layers from the middle of the puzzle: x to R, y to U, z to F.
type Vector = [i8; 3];

/// Where a sticker is: the little cube, and the way the sticker looks.
type Spot = (Vector, Vector);

/// A puzzle by the colour at every spot, a colour named by the face where it belongs.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Puzzle {
    size: Size,
    colours: BTreeMap<Spot, Face>,
}

/// The way out of a face.
const fn outwards(face: Face) -> Vector {
    match face {
        Face::U => [0, 1, 0],
        Face::D => [0, -1, 0],
        Face::R => [1, 0, 0],
        Face::L => [-1, 0, 0],
        Face::F => [0, 0, 1],
        Face::B => [0, 0, -1],
    }
}

/// The spot at a row and a column of a face, looked at with U upwards; U with B upwards, D with F.
fn spot(size: Size, face: Face, row: u8, column: u8) -> Spot {
    let edge = size.layers() as i8 - 1;
    let (right, down) = (2 * column as i8 - edge, 2 * row as i8 - edge);
    let at = match face {
        Face::U => [right, edge, down],
        Face::D => [right, -edge, -down],
        Face::F => [right, -down, edge],
        Face::B => [-right, -down, -edge],
        Face::L => [-edge, -down, right],
        Face::R => [edge, -down, -right],
    };
    (at, outwards(face))
}

/// A quarter turn clockwise, seen from where the axis points to.
const fn quarter(axis: Axis, [x, y, z]: Vector) -> Vector {
    match axis {
        Axis::X => [x, z, -y],
        Axis::Y => [-z, y, x],
        Axis::Z => [y, -x, z],
    }
}

fn spot_of(size: Size, orbit: Orbit, sticker: Sticker) -> Spot {
    let (row, column) = Facelets::cell_of(size, orbit, sticker);
    spot(size, sticker.face(), row, column)
}

impl Puzzle {
    /// What a state looks like.
    pub fn of(state: &State) -> Self {
        let (size, seen) = (state.size(), state.facelets());
        let mut colours = BTreeMap::new();
        for face in Face::ALL {
            for row in 0..size.layers() {
                for column in 0..size.layers() {
                    colours.insert(spot(size, face, row, column), seen.get(face, row, column).unwrap());
                }
            }
        }
        Self { size, colours }
    }

    /// The solved puzzle.
    pub fn solved(size: Size) -> Self {
        let mut colours = BTreeMap::new();
        for face in Face::ALL {
            for at in 0..size.layers().pow(2) {
                colours.insert(spot(size, face, at / size.layers(), at % size.layers()), face);
            }
        }
        Self { size, colours }
    }

    /// With every colour called otherwise.
    pub fn recoloured(&self, name: impl Fn(Face) -> Face) -> Self {
        let colours = self.colours.iter().map(|(&spot, &colour)| (spot, name(colour))).collect();
        Self { size: self.size, colours }
    }

    /// Turned as a whole.
    pub fn turned(&self, rotations: &[Turn]) -> Self {
        let mut turned = self.clone();
        for turn in rotations {
            let Block::Whole(axis) = turn.block else { panic!("{turn} turns a part only") };
            for _ in 0..turn.amount.quarters() {
                let moved =
                    |(&(at, way), &colour): (&Spot, &Face)| ((quarter(axis, at), quarter(axis, way)), colour);
                turned.colours = turned.colours.iter().map(moved).collect();
            }
        }
        turned
    }

    /// The spots of the little cube that a sticker is on, that of the sticker first and then clockwise.
    fn spots_from(&self, orbit: Orbit, sticker: Sticker) -> Vec<Spot> {
        let first = spot_of(self.size, orbit, sticker);
        let mut others: Vec<Spot> =
            self.colours.keys().filter(|spot| spot.0 == first.0 && spot.1 != first.1).copied().collect();
        if let [one, other] = others[..] {
            // Clockwise from outside: the three ways, in turn, are left-handed.
            let [a, b, c] = [first.1, one.1, other.1].map(|way| way.map(i32::from));
            let determinant = a[0] * (b[1] * c[2] - b[2] * c[1]) - a[1] * (b[0] * c[2] - b[2] * c[0])
                + a[2] * (b[0] * c[1] - b[1] * c[0]);
            if determinant > 0 {
                others.swap(0, 1);
            }
        }
        [vec![first], others].concat()
    }

    /// Carries a letter out: the pieces at the buffer and at the sticker change places, so that each of these two stickers
    /// comes where the other was.
    pub fn exchange(&mut self, orbit: Orbit, buffer: Sticker, sticker: Sticker) {
        let (here, there) = (self.spots_from(orbit, buffer), self.spots_from(orbit, sticker));
        assert_eq!(here.len(), there.len(), "pieces of one kind have as many stickers");
        assert_ne!(here[0].0, there[0].0, "a letter of the buffer's own piece");
        for (a, b) in here.into_iter().zip(there) {
            let (one, other) = (self.colours[&a], self.colours[&b]);
            self.colours.insert(a, other);
            self.colours.insert(b, one);
        }
    }
}
