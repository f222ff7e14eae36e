//! Points in space, the frames of faces, and the eye that looks at them.
//!
//! x points to R, y to U, z to F. A facelet is two units wide, so that a cube of N layers reaches from -N to N.

use cube::{Axis, Face, Rotation, Size};

/// A point or direction in space.
pub type Point = [f64; 3];

pub(crate) fn add(a: Point, b: Point) -> Point {
    [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
}

pub(crate) fn scaled(a: Point, by: f64) -> Point {
    a.map(|part| part * by)
}

pub(crate) fn dot(a: Point, b: Point) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

pub(crate) fn cross(a: Point, b: Point) -> Point {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

/// The direction in which a face looks.
pub(crate) const fn normal(face: Face) -> Point {
    match face {
        Face::U => [0.0, 1.0, 0.0],
        Face::D => [0.0, -1.0, 0.0],
        Face::L => [-1.0, 0.0, 0.0],
        Face::R => [1.0, 0.0, 0.0],
        Face::F => [0.0, 0.0, 1.0],
        Face::B => [0.0, 0.0, -1.0],
    }
}

/// Up and right on a face as it is looked at: side faces with U upward, U with B upward, D with F upward.
pub(crate) const fn frame(face: Face) -> (Point, Point) {
    let (up, right) = match face {
        Face::U => (Face::B, Face::R),
        Face::D => (Face::F, Face::R),
        Face::F => (Face::U, Face::R),
        Face::B => (Face::U, Face::L),
        Face::R => (Face::U, Face::B),
        Face::L => (Face::U, Face::F),
    };
    (normal(up), normal(right))
}

/// The middle of a facelet.
pub(crate) fn facelet(size: Size, face: Face, row: u8, column: u8) -> Point {
    let edge = f64::from(size.layers()) - 1.0;
    let (up, right) = frame(face);
    add(
        scaled(normal(face), edge + 1.0),
        add(scaled(up, edge - 2.0 * f64::from(row)), scaled(right, 2.0 * f64::from(column) - edge)),
    )
}

/// Turned about an axis, clockwise as seen from its positive end, by an angle in radians.
pub(crate) fn turned([x, y, z]: Point, axis: Axis, angle: f64) -> Point {
    let (sine, cosine) = (libm::sin(angle), libm::cos(angle));
    match axis {
        Axis::X => [x, y * cosine + z * sine, z * cosine - y * sine],
        Axis::Y => [x * cosine - z * sine, y, x * sine + z * cosine],
        Axis::Z => [x * cosine + y * sine, y * cosine - x * sine, z],
    }
}

/// Where a point goes when the whole cube is held another way.
pub(crate) fn held([x, y, z]: Point, hold: Rotation) -> Point {
    let to = |face| normal(hold.image(face));
    add(scaled(to(Face::R), x), add(scaled(to(Face::U), y), scaled(to(Face::F), z)))
}

/// Face, row and column at which a facelet is seen when the cube is held another way.
pub(crate) fn held_cell(size: Size, hold: Rotation, (face, row, column): (Face, u8, u8)) -> (Face, u8, u8) {
    let seen = hold.image(face);
    let middle = held(facelet(size, face, row, column), hold);
    let (up, right) = frame(seen);
    let edge = f64::from(size.layers()) - 1.0;
    let row = libm::round((edge - dot(middle, up)) / 2.0) as u8;
    let column = libm::round(edge.midpoint(dot(middle, right))) as u8;
    (seen, row, column)
}

/// Where the eye is: turned about the upright axis from straight ahead towards R, then raised. Far away, so
/// parallel lines stay parallel.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Camera {
    /// To the right, in radians; any value.
    pub yaw: f64,
    /// Upward, in radians, -π/2 to π/2.
    pub pitch: f64,
}

impl Camera {
    /// Sees F, R and U, F the widest.
    pub const USUAL: Self = Self { yaw: 0.64, pitch: 0.56 };
    /// Sees F, R and U, with room at both sides for the hidden faces.
    pub const EVEN: Self = Self { yaw: 0.76, pitch: 0.52 };

    /// A view; the pitch is kept within straight up and straight down, and what is no number counts as 0.
    #[must_use]
    pub fn new(yaw: f64, pitch: f64) -> Self {
        let or_zero = |angle: f64| if angle.is_finite() { angle } else { 0.0 };
        let right = core::f64::consts::FRAC_PI_2;
        Self { yaw: or_zero(yaw), pitch: or_zero(pitch).clamp(-right, right) }
    }

    /// The view after dragging: a drag over the cube's own width turns it by a quarter.
    ///
    /// `right` and `down` are in widths of the cube; dragging right brings what is at the left into sight.
    #[must_use]
    pub fn dragged(self, right: f64, down: f64) -> Self {
        let quarter = core::f64::consts::FRAC_PI_2;
        Self::new(self.yaw - right * quarter, self.pitch + down * quarter)
    }

    /// The direction from the cube to the eye.
    pub(crate) fn towards(self) -> Point {
        let flat = libm::cos(self.pitch);
        [libm::sin(self.yaw) * flat, libm::sin(self.pitch), libm::cos(self.yaw) * flat]
    }

    /// Right on the picture.
    pub(crate) fn right(self) -> Point {
        [libm::cos(self.yaw), 0.0, -libm::sin(self.yaw)]
    }

    /// Up on the picture.
    pub(crate) fn up(self) -> Point {
        cross(self.towards(), self.right())
    }
}

/// What brings a point in space to the picture: an eye, how far away it is, and where and how large the picture is.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Lens {
    /// Where the eye is.
    pub camera: Camera,
    /// How far it is from the middle of the cube, in units of space; infinite: parallel lines stay parallel.
    pub distance: f64,
    /// Pixels of a unit, at the middle of the cube.
    pub scale: f64,
    /// Where the middle of the cube is on the picture, in pixels.
    pub middle: [f64; 2],
}

impl Lens {
    /// A lens that keeps parallel lines parallel, for a picture round its origin with so many pixels a unit.
    pub const fn parallel(camera: Camera, scale: f64) -> Self {
        Self { camera, distance: f64::INFINITY, scale, middle: [0.0, 0.0] }
    }

    /// Where a point is on the picture, in pixels to the right and down.
    pub fn project(&self, point: Point) -> [f64; 2] {
        let nearer = if self.distance.is_finite() {
            self.distance / (self.distance - dot(point, self.camera.towards())).max(1e-3)
        } else {
            1.0
        };
        let on = [dot(point, self.camera.right()), -dot(point, self.camera.up())];
        [0, 1].map(|i| self.middle[i] + on[i] * nearer * self.scale)
    }

    /// Which way a direction leads on the picture, a unit of it from a point.
    pub(crate) fn way(&self, from: Point, direction: Point) -> [f64; 2] {
        let ([a, b], [c, d]) = (self.project(from), self.project(add(from, direction)));
        [c - a, d - b]
    }

    /// Whether a flat thing at a point is seen from its outer side, by more than a hair.
    pub(crate) fn sees(&self, point: Point, outward: Point) -> bool {
        let towards = self.camera.towards();
        let facing = dot(outward, towards);
        if self.distance.is_finite() {
            facing - dot(outward, point) / self.distance > 1e-9
        } else {
            facing > 1e-9
        }
    }

    /// How far along an axis the eye is; infinite where it is endlessly far away.
    pub(crate) fn along(&self, axis: Point) -> f64 {
        let towards = dot(axis, self.camera.towards());
        if self.distance.is_finite() { towards * self.distance } else { towards.signum() * f64::INFINITY }
    }
}
