//! The cube on the velvet: seen in perspective, with faces that open like flaps.

use ::cube::{Face, Rotation};

use super::mark;
use super::{Gaze, Velvet, WAY};
use crate::picture::{Patch, Picture};
use crate::place::Place;
use crate::scene::{Moved, QUARTER, Scene};
use crate::solid::patch;
use crate::space::{Camera, Lens, Point, add, dot, frame, normal, scaled};
use crate::svg::{Markup, Num, Theme, path};

/// Sees U, F and R; turned the other way, U, F and L.
const YAW: f64 = 0.63;
const PITCH: f64 = 0.52;
/// How far away the eye is, in half-breadths of the cube.
const DISTANCE: f64 = 15.0;
/// How far a cube reaches from its middle, in half-breadths, wherever it is looked at from: its corners, and a little of what
/// perspective adds.
const REACH: f64 = 1.68;
/// How far a flap opens at least, and how much of it then faces the eye.
const FLAP: f64 = 1.15;
const FACING: f64 = 0.42;
/// How much of the motion a flap takes to open.
const OPENING: f64 = 0.35;

/// A face out of sight that is opened.
struct Flap {
    face: Face,
    moved: Moved,
}

/// The cube in its place.
pub(super) struct Cube<'a> {
    velvet: &'a Velvet,
    scene: Scene,
    pub lens: Lens,
    flaps: Vec<Flap>,
}

impl<'a> Cube<'a> {
    /// Finds the view and opens what has to be seen, within a frame: left, top, breadth, height.
    pub fn new(velvet: &'a Velvet, frame: [f64; 4]) -> Self {
        let scene = Scene::new(&velvet.looks, Rotation::NONE, velvet.turning);
        let n = f64::from(scene.size().layers());
        let lens = |camera| Lens { distance: DISTANCE * n, ..Lens::parallel(camera, 1.0) };
        let sees = |camera: Camera, place: Place| {
            let tile = scene.tile_at(place).and_then(|at| scene.tiles().get(at));
            tile.is_some_and(|tile| lens(camera).sees(tile.middle, tile.normal))
        };
        let [right, left] = [YAW, -YAW].map(|yaw| Camera::new(yaw, PITCH));
        let usual = match velvet.gaze.home {
            Some(home) if !sees(right, home) && sees(left, home) => left,
            _ => right,
        };
        let [dx, dy] = velvet.dragged;
        let camera = velvet.camera.unwrap_or(usual);
        let camera = if dx == 0.0 && dy == 0.0 { camera } else { camera.dragged(dx, dy) };
        let mut cube = Self { velvet, scene, lens: lens(camera), flaps: Vec::new() };
        if velvet.opens && velvet.turning.is_none() {
            cube.open();
        }
        cube.fit(frame, n);
        cube
    }

    /// Opens the faces of whatever is spoken of and out of sight.
    fn open(&mut self) {
        let Gaze { buffer, look, target, before, drawn, .. } = &self.velvet.gaze;
        let target = target.as_ref().map(|(place, _)| *place);
        let spoken = if target.is_some() { [*look, target] } else { [*buffer, None] };
        let hidden = |place: Place| {
            let tile = &self.scene.tiles()[self.scene.tile_at(place)?];
            (!self.lens.sees(tile.middle, tile.normal)).then_some(tile.cell.0)
        };
        let faces: Vec<Face> = spoken.into_iter().flatten().filter_map(hidden).collect();
        let known: Vec<Face> = before.iter().flat_map(|(from, to)| [*from, *to]).filter_map(hidden).collect();
        let camera = self.lens.camera;
        for face in Face::ALL.into_iter().filter(|face| faces.contains(face)) {
            let facing = |open: f64| {
                let moved = self.scene.flap(face, camera, open)?;
                Some((dot(moved.direction(normal(face)), camera.towards()), moved))
            };
            let mut angle = FLAP;
            while angle < QUARTER && facing(angle).is_some_and(|(facing, _)| facing < FACING) {
                angle += 0.05;
            }
            let drawn = if drawn.is_finite() { *drawn } else { 1.0 };
            let come = if known.contains(&face) { 1.0 } else { (drawn / OPENING).clamp(0.0, 1.0) };
            let come = come * come * (3.0 - 2.0 * come);
            if let Some(moved) = self.scene.flap(face, camera, angle * come) {
                self.flaps.push(Flap { face, moved });
            }
        }
    }

    /// Scales and moves the picture so that cube and flaps fill the frame.
    fn fit(&mut self, [left, top, broad, high]: [f64; 4], n: f64) {
        let mut least = [-REACH * n; 2];
        let mut most = [REACH * n; 2];
        // As broad as it is where it is usually seen from.
        (least[0], most[0]) = (0.92 * least[0], 0.92 * most[0]);
        for flap in &self.flaps {
            for point in self.outline(flap) {
                for i in 0..2 {
                    least[i] = least[i].min(point[i] - 0.2 * n);
                    most[i] = most[i].max(point[i] + 0.2 * n);
                }
            }
        }
        let scale = (broad / (most[0] - least[0])).min(high / (most[1] - least[1])).max(0.5);
        self.lens.middle = [
            left + broad / 2.0 - scale * least[0].midpoint(most[0]),
            top + high / 2.0 - scale * least[1].midpoint(most[1]),
        ];
        self.lens.scale = scale;
    }

    /// The corners of a flap, on the picture.
    fn outline(&self, flap: &Flap) -> [[f64; 2]; 4] {
        let n = f64::from(self.scene.size().layers());
        let (up, right) = frame(flap.face);
        [(1.0, 1.0), (1.0, -1.0), (-1.0, -1.0), (-1.0, 1.0)].map(|(u, r)| {
            let corner = add(scaled(up, u * n), scaled(right, r * n));
            self.lens.project(flap.moved.point(add(scaled(normal(flap.face), n), corner)))
        })
    }

    /// The sticker at a place as it is seen, on the cube or on a flap.
    pub fn patch(&self, place: Place) -> Option<Patch> {
        let tile = self.scene.tiles().get(self.scene.tile_at(place)?)?;
        if self.lens.sees(tile.middle, tile.normal) {
            return Some(patch(tile, &self.lens, &|point| point, &|way| way));
        }
        let flap = self.flaps.iter().find(|flap| flap.face == tile.cell.0)?;
        let moved = flap.moved;
        Some(patch(tile, &self.lens, &|point| moved.point(point), &|way| moved.direction(way)))
    }

    /// Where the sticker at a place is on the picture, if it is seen.
    pub fn spot(&self, place: Place) -> Option<[f64; 2]> {
        self.patch(place).map(|patch| patch.middle)
    }

    /// Middle and outward direction of a place that is seen on the cube itself.
    pub fn standing(&self, place: Place) -> Option<(Point, Point)> {
        let tile = self.scene.tiles().get(self.scene.tile_at(place)?)?;
        self.lens.sees(tile.middle, tile.normal).then_some((tile.middle, tile.normal))
    }

    /// How many layers it has.
    pub fn layers(&self) -> f64 {
        f64::from(self.scene.size().layers())
    }

    /// The size of it.
    pub const fn size(&self) -> ::cube::Size {
        self.scene.size()
    }

    /// Where a line from the middle of the cube through a point leaves what is seen of the cube.
    pub fn way_out(&self, point: [f64; 2]) -> [f64; 2] {
        let n = self.layers();
        let signs = [-n, n];
        let corners =
            signs.into_iter().flat_map(|x| signs.into_iter().flat_map(move |y| signs.map(|z| [x, y, z])));
        let hull: Vec<[f64; 2]> = corners.map(|corner| self.lens.project(corner)).collect();
        let [mx, my] = self.lens.middle;
        let way = [point[0] - mx, point[1] - my];
        let far = libm::hypot(way[0], way[1]).max(1e-6);
        let way = way.map(|part| part / far);
        // Along a direction a hull reaches as far as the nearest of the lines that bound it: found by halving.
        let inside = |t: f64| {
            let at = [mx + way[0] * t, my + way[1] * t];
            (0..48).all(|step| {
                let angle = f64::from(step) * core::f64::consts::TAU / 48.0;
                let side = [libm::cos(angle), libm::sin(angle)];
                let reach = |[x, y]: [f64; 2]| x * side[0] + y * side[1];
                let most = hull.iter().map(|&corner| reach(corner)).fold(f64::NEG_INFINITY, f64::max);
                reach(at) <= most + 1e-9
            })
        };
        if !inside(far) {
            return point;
        }
        let (mut low, mut high) = (far, far + 4.0 * n * self.lens.scale);
        for _ in 0..24 {
            let middle = low.midpoint(high);
            if inside(middle) { low = middle } else { high = middle }
        }
        [mx + way[0] * low, my + way[1] * low]
    }

    /// Everything that is on the cube.
    pub fn paint(&self, markup: &mut Markup) {
        let n = self.layers();
        let [x, y] = self.lens.middle;
        if self.flaps.is_empty() {
            markup
                .tag("ellipse")
                .with("class", "shadow")
                .with("cx", Num(x))
                .with("cy", Num(y + 1.5 * n * self.lens.scale))
                .with("rx", Num(1.15 * n * self.lens.scale))
                .with("ry", Num(0.17 * n * self.lens.scale))
                .empty();
        }
        let picture = Picture::new(self.velvet.looks.clone(), "")
            .palette(self.velvet.palette.clone())
            .labels(self.velvet.labels.clone())
            .theme(Theme::Velvet);
        let picture = match &self.velvet.lit {
            Some(lit) => picture.only_stickers(lit.iter().copied()),
            None => picture,
        };
        for flap in &self.flaps {
            markup.tag("path").with("class", "body flap").with("d", path(&self.outline(flap), true)).empty();
            let tiles = self.scene.tiles().iter().filter(|tile| tile.cell.0 == flap.face);
            for tile in tiles {
                let moved = flap.moved;
                let patch = patch(tile, &self.lens, &|point| moved.point(point), &|way| moved.direction(way));
                picture.patch(markup, &patch);
            }
        }
        let mut shade = String::new();
        for shape in self.scene.seen(&self.lens) {
            let Some(tile) = shape.tile.and_then(|at| self.scene.tiles().get(at)) else {
                markup.tag("path").with("class", "body").with("d", path(&shape.points, true)).empty();
                continue;
            };
            let patch = patch(tile, &self.lens, &|point| point, &|way| way);
            picture.patch(markup, &patch);
            if dot(tile.normal, self.lens.camera.right()).abs() > 0.7 {
                shade.push_str(&patch.rounded(0.885, 0.17));
            }
        }
        if !shade.is_empty() && self.velvet.turning.is_none() {
            markup.tag("path").with("class", "shade").with("d", shade).empty();
        }
        self.marks(markup);
    }

    /// What is pointed at.
    fn marks(&self, markup: &mut Markup) {
        let Gaze { buffer, look, target, before, drawn, .. } = &self.velvet.gaze;
        for &place in self.velvet.lit.iter().flatten() {
            if let Some(patch) = self.patch(place) {
                markup.tag("path").with("class", "un").with("d", patch.rounded(0.885, 0.17)).empty();
            }
        }
        if let Some(arc) = before.and_then(|(from, to)| mark::Arc::between(self, from, to)) {
            mark::cased(markup, &arc.cut(0.5 * self.lens.scale, 0.4 * self.lens.scale, 1.0), "old");
        }
        if let Some(patch) = buffer.and_then(|place| self.patch(place)) {
            mark::ring(markup, &patch.rounded(0.76, 0.1), "buf");
        }
        if let Some(patch) = look.filter(|look| Some(*look) != *buffer).and_then(|place| self.patch(place)) {
            mark::ring(markup, &patch.rounded(0.8, 0.44), "look");
        }
        if let Some((place, letter)) = target {
            let radius = (0.66 * self.lens.scale).clamp(9.0, 30.0);
            let come = (drawn / WAY).clamp(0.0, 1.0);
            let from = look.or(*buffer).filter(|from| from != place);
            if let Some(arc) = from.and_then(|from| mark::Arc::between(self, from, *place)) {
                mark::cased(markup, &arc.cut(0.8 * self.lens.scale, radius, come), "on");
            }
            if let (Some(at), true) = (self.spot(*place), come >= 1.0) {
                mark::bead(markup, at, radius, letter);
            }
        }
        if let Some(turn) = self.velvet.next.filter(|_| self.velvet.turning.is_none()) {
            mark::turn(markup, self, turn);
        }
    }
}
