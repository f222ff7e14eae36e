//! What is pointed at on the cube: rings, the arc from sticker to sticker, the bead where it leads, the turn to make.

use ::cube::{Amount, Axis, Face, Turn};

use super::cube::Cube;
use crate::place::Place;
use crate::space::{Point, add, cross, dot, normal, scaled, turned};
use crate::svg::{Markup, Num, pair, path};

/// A line of the thread on the cube, with the dark line under it that keeps it apart.
pub(super) fn cased(markup: &mut Markup, d: &str, class: &str) {
    if d.is_empty() {
        return;
    }
    markup.tag("path").with("class", format_args!("cas on-cube {class}")).with("d", d).empty();
    markup.tag("path").with("class", format_args!("th {class}")).with("d", d).empty();
}

/// A ring round a sticker.
pub(super) fn ring(markup: &mut Markup, d: &str, class: &str) {
    markup.tag("path").with("class", format_args!("ring {class}c")).with("d", d).empty();
    markup.tag("path").with("class", format_args!("ring {class}")).with("d", d).empty();
}

/// The bead where a piece belongs.
pub(super) fn bead(markup: &mut Markup, [x, y]: [f64; 2], radius: f64, letter: &str) {
    markup.group(&[("class", &"bead silk now oncube")]);
    for (class, radius) in [("halo", radius + 4.0), ("b", radius)] {
        let tag = markup.tag("circle").with("class", class);
        tag.with("cx", Num(x)).with("cy", Num(y)).with("r", Num(radius)).empty();
    }
    let size = (1.9 * radius / (0.72 * crate::svg::breadth(letter))).min(1.15 * radius);
    markup
        .tag("text")
        .with("class", "bl")
        .with("x", Num(x))
        .with("y", Num(y + 0.36 * size))
        .with("font-size", Num(size))
        .text(letter);
    markup.close();
}

/// An arc lifted off the cube from one sticker to another: begin, bend and end of a parabola on the picture.
pub(super) struct Arc([[f64; 2]; 3]);

impl Arc {
    /// None where one of them is not seen.
    pub fn between(cube: &Cube<'_>, from: Place, to: Place) -> Option<Self> {
        let (a, b) = (cube.spot(from)?, cube.spot(to)?);
        let bend = match (cube.standing(from), cube.standing(to)) {
            (Some((p, out)), Some((q, other))) => {
                let both = add(out, other);
                let length = libm::sqrt(dot(both, both)).max(1e-6);
                let apart = add(q, scaled(p, -1.0));
                let far = libm::sqrt(dot(apart, apart));
                let across = if dot(out, other) > 0.9 { 0.8 } else { 1.25 };
                let lift = (0.5 + 0.18 * far) * 1.1 / length * across;
                cube.lens.project(add(scaled(add(p, q), 0.5), scaled(both, lift)))
            }
            // One of them is on a flap: the arc bends in the plane of the picture.
            _ => [a[0].midpoint(b[0]) - (b[1] - a[1]) * 0.16, a[1].midpoint(b[1]) + (b[0] - a[0]) * 0.16],
        };
        Some(Self([a, bend, b]))
    }

    fn at(&self, t: f64) -> [f64; 2] {
        let [a, c, b] = self.0;
        [0, 1].map(|i| (1.0 - t) * (1.0 - t) * a[i] + 2.0 * t * (1.0 - t) * c[i] + t * t * b[i])
    }

    /// The path of it, beginning and ending so many pixels away from the stickers, as far as it has come (0 to 1).
    pub fn cut(&self, begin: f64, end: f64, come: f64) -> String {
        let [a, _, b] = self.0;
        let far = |p: [f64; 2], q: [f64; 2]| libm::hypot(p[0] - q[0], p[1] - q[1]);
        let (mut low, mut high) = (0.0, 1.0);
        while low < 0.9 && far(self.at(low), a) < begin {
            low += 0.01;
        }
        while high > low + 0.05 && far(self.at(high), b) < end {
            high -= 0.01;
        }
        let high = low + (high - low) * come;
        if high <= low {
            return String::new();
        }
        // The piece of a parabola between two parameters has its bend where the tangents meet.
        let [from, to] = [self.at(low), self.at(high)];
        let [p, c, q] = self.0;
        let bend = [0, 1].map(|i| {
            (1.0 - low) * (1.0 - high) * p[i] + (low + high - 2.0 * low * high) * c[i] + low * high * q[i]
        });
        let mut d = path(&[from], false);
        d.push('Q');
        pair(&mut d, bend[0], bend[1]);
        d.push(' ');
        pair(&mut d, to[0], to[1]);
        d
    }
}

/// The shaft of an arrow for a turn about an axis, in a direction, on a cube of so many layers.
struct Arrow {
    axis: Axis,
    sign: f64,
    n: f64,
}

impl Arrow {
    /// Round a face, by its outward direction.
    fn round(&self, cube: &Cube<'_>, out: Point) -> Vec<Point> {
        let height = scaled(out, self.n + 0.35);
        // Any direction in the plane of the face will do to begin with; this one looks up on the picture.
        let up = cube.lens.camera.up();
        let flat = add(up, scaled(out, -dot(up, out)));
        let length = libm::sqrt(dot(flat, flat)).max(1e-6);
        let start = scaled(flat, 0.58 * self.n / length);
        (0..=24)
            .map(|step| self.sign * (4.2 * f64::from(step) / 24.0 - 2.2))
            .map(|angle| add(height, turned(start, self.axis, angle)))
            .collect()
    }

    /// Along layers at a height of the axis, on the side that faces the eye the most.
    fn along(&self, cube: &Cube<'_>, level: f64) -> Vec<Point> {
        let towards = cube.lens.camera.towards();
        let sides = Face::ALL.into_iter().filter(|side| side.axis() != self.axis);
        let facing = |side: &Face| dot(normal(*side), towards);
        let Some(side) = sides.max_by(|a, b| facing(a).total_cmp(&facing(b))) else { return Vec::new() };
        let out = normal(side);
        let base = add(scaled(out, self.n + 0.35), scaled(normal(self.axis.positive()), level));
        let ahead = scaled(add(turned(out, self.axis, self.sign * 1e-3), scaled(out, -1.0)), 1e3);
        (0..=6)
            .map(|step| f64::from(step) / 3.0 - 1.0)
            .map(|part| add(base, scaled(ahead, 0.72 * self.n * part)))
            .collect()
    }
}

/// An arrow for a turn: round the face that turns where that is seen, else along the layers on a side that is seen.
pub(super) fn turn(markup: &mut Markup, cube: &Cube<'_>, turn: Turn) {
    let Ok(motion) = turn.motion(cube.size()) else { return };
    let n = cube.layers();
    let axis = turn.block.axis();
    let along = normal(axis.positive());
    let layers = motion.layers();
    let level = |layer: u8| n - 1.0 - 2.0 * f64::from(layer);
    let (first, Some(last)) = (layers.start, layers.end.checked_sub(1)) else { return };
    let (quarters, heads) = match turn.amount {
        Amount::Clockwise => (1.0, 1),
        Amount::Counter => (-1.0, 1),
        Amount::Half => (1.0, 2),
    };
    let sign = quarters * if turn.block.follows().is_positive() { 1.0 } else { -1.0 };
    let face =
        [(first == 0, 1.0), (f64::from(last) >= n - 1.0, -1.0)].into_iter().find_map(|(outer, side)| {
            let out = scaled(along, side);
            (outer && cube.lens.sees(scaled(out, n), out)).then_some(out)
        });
    let arrow = Arrow { axis, sign, n };
    let points = match face {
        Some(out) => arrow.round(cube, out),
        None => arrow.along(cube, level(first).midpoint(level(last))),
    };
    let [.., before, end] = points.as_slice() else { return };
    let outward = face.unwrap_or_else(|| scaled(add(*end, scaled(along, -dot(*end, along))), 1.0 / n));
    let forward = add(*end, scaled(*before, -1.0));
    let length = libm::sqrt(dot(forward, forward)).max(1e-6);
    let forward = scaled(forward, 0.42 * libm::sqrt(n) / length);
    let aside = cross(outward, forward);
    let mut d = path(&points.iter().map(|point| cube.lens.project(*point)).collect::<Vec<_>>(), false);
    for head in 0..heads {
        let tip = add(*end, scaled(forward, -0.9 * f64::from(head)));
        let wing = |by: f64| cube.lens.project(add(add(tip, scaled(forward, -1.0)), scaled(aside, by)));
        d += &path(&[wing(0.9), cube.lens.project(tip), wing(-0.9)], false);
    }
    for class in ["turnc", "turnl"] {
        markup.tag("path").with("class", class).with("d", &d).empty();
    }
}
