//! A cube in space, perhaps with layers half turned: its stickers, its body, and what is seen of them.

use crate::place::Place;
use crate::space::{Camera, Lens, Point, add, cross, dot, facelet, frame, held, normal, scaled, turned};
use cube::{Amount, Axis, Face, Facelets, Rotation, Size, Turn};

/// How far from the middle of a facelet its sticker reaches; the facelet itself reaches to 1.
const REACH: f64 = 0.86;

/// A turn under way.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Turning {
    /// Which turn; one that the size does not have moves nothing.
    pub turn: Turn,
    /// How much of it is done, 0 to 1.
    pub progress: f64,
}

impl Turning {
    /// The angle in radians, clockwise as seen from the positive end of the axis.
    fn angle(self) -> f64 {
        let quarters = match self.turn.amount {
            Amount::Clockwise => 1.0,
            Amount::Half => 2.0,
            Amount::Counter => -1.0,
        };
        let sign = if self.turn.block.follows().is_positive() { 1.0 } else { -1.0 };
        let progress = if self.progress.is_finite() { self.progress.clamp(0.0, 1.0) } else { 0.0 };
        sign * quarters * progress * core::f64::consts::FRAC_PI_2
    }

    /// Whether a layer, counted from 0 at the positive end of the turn's axis, moves.
    fn moves(self, size: Size, layer: u8) -> bool {
        self.turn.motion(size).is_ok_and(|motion| motion.layers().contains(&layer))
    }
}

/// One sticker in space.
#[derive(Clone, PartialEq, Debug)]
pub struct Tile {
    /// Face, row and column (from 0) where it is, on the cube before the turn and before it is held another way.
    pub cell: (Face, u8, u8),
    /// The place in its orbit and whether it is the second sticker of a wing; `None` for a fixed centre.
    pub place: Option<(Place, bool)>,
    /// Its colour, by the face where that colour is on the solved cube.
    pub colour: Face,
    /// Whether the turn moves it.
    pub moves: bool,
    /// Its middle.
    pub middle: Point,
    /// Outward, of length 1.
    pub normal: Point,
    /// From the middle to its upper edge, as its face is looked at.
    pub up: Point,
}

impl Tile {
    /// The corners in turn, counter-clockwise seen from outside.
    pub fn corners(&self) -> [Point; 4] {
        let up = scaled(self.up, REACH);
        let right = cross(up, self.normal);
        [[1.0, 1.0], [1.0, -1.0], [-1.0, -1.0], [-1.0, 1.0]]
            .map(|[u, r]| add(self.middle, add(scaled(up, u), scaled(right, r))))
    }
}

/// Layers that stay together while a turn is under way, from one plane across its axis to another.
#[derive(Clone, Copy, PartialEq, Debug)]
struct Slab {
    low: f64,
    high: f64,
    moves: bool,
}

/// A quarter turn, in radians.
pub(crate) const QUARTER: f64 = core::f64::consts::FRAC_PI_2;

/// What happens with the three faces that are out of sight.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, Default)]
pub enum Hidden {
    /// They are not drawn.
    #[default]
    Omitted,
    /// Each is drawn as it is seen in a mirror that stands beside the cube. Letters stay readable.
    Mirrored,
    /// Each is swung open beside the cube, so that it is seen from outside like the others.
    SwungOpen,
}

/// A cube in space.
///
/// ```
/// use cube::{Rotation, Size, State};
/// use draw::{Camera, Lens, Scene};
/// let scene = Scene::new(&State::solved(Size::THREE).facelets(), Rotation::NONE, None);
/// assert_eq!(scene.tiles().len(), 54);
/// let lens = Lens::parallel(Camera::USUAL, 10.0);
/// assert_eq!(scene.seen(&lens).iter().filter(|shape| shape.tile.is_some()).count(), 27);
/// ```
#[derive(Clone, PartialEq, Debug)]
pub struct Scene {
    size: Size,
    hold: Rotation,
    tiles: Vec<Tile>,
    axis: Axis,
    angle: f64,
    slabs: Vec<Slab>,
}

/// A flat shape of the picture, in the order in which shapes are to be painted.
#[derive(Clone, PartialEq, Debug)]
pub struct Shape {
    /// Which of [`Scene::tiles`] it is; `None` for a side of the body.
    pub tile: Option<usize>,
    /// Its corners on the picture, right and down.
    pub points: [[f64; 2]; 4],
}

impl Scene {
    /// A cube with these colours, held another way by `hold`, perhaps with a turn under way.
    ///
    /// The turn is named on the cube before it is held that way.
    pub fn new(facelets: &Facelets, hold: Rotation, turning: Option<Turning>) -> Self {
        let size = facelets.size();
        let n = size.layers();
        let axis = turning.map_or(Axis::X, |turning| turning.turn.block.axis());
        let angle = turning.map_or(0.0, Turning::angle);
        let layer_moves = |layer| turning.is_some_and(|turning| turning.moves(size, layer));

        // From the negative end of the axis, where the highest layer numbers are.
        let mut slabs: Vec<Slab> = Vec::new();
        for layer in (0..n).rev() {
            let high = f64::from(n) - 2.0 * f64::from(layer);
            let moves = layer_moves(layer);
            match slabs.last_mut() {
                Some(slab) if slab.moves == moves => slab.high = high,
                _ => slabs.push(Slab { low: high - 2.0, high, moves }),
            }
        }

        let along = normal(axis.positive());
        let mut tiles = Vec::with_capacity(size.facelets());
        for face in Face::ALL {
            for row in 0..n {
                for column in 0..n {
                    let at = facelet(size, face, row, column);
                    let reach = dot(at, along).clamp(1.0 - f64::from(n), f64::from(n) - 1.0);
                    let layer = libm::round((f64::from(n) - 1.0 - reach) / 2.0) as u8;
                    let moves = layer_moves(layer);
                    let placed =
                        |point: Point| held(if moves { turned(point, axis, angle) } else { point }, hold);
                    tiles.push(Tile {
                        cell: (face, row, column),
                        place: Facelets::place(size, face, row, column)
                            .map(|(orbit, sticker, back)| (Place::new(orbit, sticker), back)),
                        colour: facelets.get(face, row, column).unwrap_or(face),
                        moves,
                        middle: placed(at),
                        normal: placed(normal(face)),
                        up: placed(frame(face).0),
                    });
                }
            }
        }
        Self { size, hold, tiles, axis, angle, slabs }
    }

    /// The size of the cube; it reaches from minus that many units to plus in each direction.
    pub const fn size(&self) -> Size {
        self.size
    }

    /// All stickers: faces in the order U L F R B D, row by row.
    pub fn tiles(&self) -> &[Tile] {
        &self.tiles
    }

    /// The tile of the sticker at a place.
    pub fn tile_at(&self, place: Place) -> Option<usize> {
        self.tiles.iter().position(|tile| tile.place == Some((place, false)))
    }

    /// What is seen from outside, to be painted in this order.
    ///
    /// Slabs are convex and lie one behind another along the axis of the turn. The plane between two of them parts the eye from
    /// the farther one, so painting from the farthest to the slab where the eye is, and each one's near sides in any order, is exact.
    pub fn seen(&self, lens: &Lens) -> Vec<Shape> {
        let eye = lens.along(held(normal(self.axis.positive()), self.hold));
        let mut order: Vec<usize> = (0..self.slabs.len()).collect();
        let far = |at: &usize| {
            let slab = self.slabs[*at];
            if eye.is_finite() {
                (slab.low.midpoint(slab.high) - eye).abs()
            } else {
                -slab.low * eye.signum()
            }
        };
        order.sort_by(|a, b| far(b).total_cmp(&far(a)));
        let mut out = Vec::with_capacity(self.tiles.len() / 2 + 3 * order.len());
        for at in order {
            let slab = self.slabs[at];
            out.extend(Face::ALL.into_iter().filter_map(|face| self.side(slab, face, lens)));
            out.extend(self.tiles.iter().enumerate().filter_map(|(i, tile)| {
                let inside = self.slab_of(tile) == at;
                (inside && lens.sees(tile.middle, tile.normal))
                    .then(|| Shape { tile: Some(i), points: tile.corners().map(|p| lens.project(p)) })
            }));
        }
        out
    }

    fn slab_of(&self, tile: &Tile) -> usize {
        let (face, row, column) = tile.cell;
        let most = f64::from(self.size.layers()) - 1.0;
        let at = dot(facelet(self.size, face, row, column), normal(self.axis.positive())).clamp(-most, most);
        self.slabs.iter().position(|slab| slab.low < at && at < slab.high).unwrap_or(0)
    }

    /// A side of a slab's body, if it is seen.
    fn side(&self, slab: Slab, face: Face, lens: &Lens) -> Option<Shape> {
        let placed = |point: Point| {
            held(if slab.moves { turned(point, self.axis, self.angle) } else { point }, self.hold)
        };
        let n = f64::from(self.size.layers());
        let (up, right) = frame(face);
        let mut middle = scaled(normal(face), n);
        let reach = &mut middle[self.axis.index()];
        *reach = if *reach > 0.0 {
            slab.high
        } else if *reach < 0.0 {
            slab.low
        } else {
            slab.low.midpoint(slab.high)
        };
        if !lens.sees(placed(middle), placed(normal(face))) {
            return None;
        }
        let points = [[1.0, 1.0], [1.0, -1.0], [-1.0, -1.0], [-1.0, 1.0]].map(|[u, r]| {
            let mut corner = add(scaled(normal(face), n), add(scaled(up, u * n), scaled(right, r * n)));
            let part = &mut corner[self.axis.index()];
            *part = if *part > 0.0 { slab.high } else { slab.low };
            lens.project(placed(corner))
        });
        Some(Shape { tile: None, points })
    }

    /// The faces of space that the eye does not see, each with how its stickers are moved to be shown.
    pub(crate) fn out_of_sight(&self, camera: Camera, hidden: Hidden) -> Vec<(Face, Moved)> {
        Face::ALL
            .into_iter()
            .filter(|&face| dot(normal(face), camera.towards()) < -0.02)
            .filter_map(|face| {
                let moved = match hidden {
                    Hidden::Omitted => None,
                    Hidden::Mirrored => Some(self.mirrored(face, camera)),
                    Hidden::SwungOpen => self.swung_open(face, camera),
                };
                moved.map(|moved| (face, moved))
            })
            .collect()
    }

    /// The mirror stands so far away that the cube does not hide what is in it.
    fn mirrored(&self, face: Face, camera: Camera) -> Moved {
        let n = f64::from(self.size.layers());
        let on = |axis: Axis, direction: Point| dot(normal(axis.positive()), direction).abs();
        let (here, others) = match face.axis() {
            Axis::Y => (on(Axis::Y, camera.up()), on(Axis::X, camera.up()) + on(Axis::Z, camera.up())),
            Axis::X => (on(Axis::X, camera.right()), on(Axis::Z, camera.right())),
            Axis::Z => (on(Axis::Z, camera.right()), on(Axis::X, camera.right())),
        };
        let shift = (2.0 * n * others / here.max(1e-6)).min(3.0 * n) + 0.3 * n;
        Moved::Mirror { face, distance: n + shift / 2.0 }
    }

    /// A face swings about the edge that it shares with a side face that is seen, until it lies flat beside it.
    fn swung_open(&self, face: Face, camera: Camera) -> Option<Moved> {
        self.flap(face, camera, QUARTER)
    }

    /// The same by another angle, in radians.
    pub(crate) fn flap(&self, face: Face, camera: Camera, open: f64) -> Option<Moved> {
        let hinge = [Face::F, Face::R, Face::L, Face::B]
            .into_iter()
            .filter(|side| side.axis() != face.axis())
            .map(|side| (dot(normal(side), camera.towards()), side))
            .filter(|&(facing, _)| facing > 0.0)
            .max_by(|a, b| a.0.total_cmp(&b.0))?
            .1;
        Some(Moved::Hinge { face, onto: hinge, edge: f64::from(self.size.layers()), gap: 0.5, open })
    }
}

/// How the stickers of a face out of sight are moved so that they are seen.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) enum Moved {
    Mirror {
        face: Face,
        distance: f64,
    },
    /// About the edge that it shares with another face, by an angle in radians: a quarter is flat beside that face.
    Hinge {
        face: Face,
        onto: Face,
        edge: f64,
        gap: f64,
        open: f64,
    },
}

impl Moved {
    /// Where a point is shown.
    pub fn point(self, point: Point) -> Point {
        match self {
            Self::Mirror { face, distance } => {
                add(point, scaled(normal(face), 2.0 * (distance - dot(point, normal(face)))))
            }
            Self::Hinge { face, onto, edge, gap, open } => {
                let (out, side) = (normal(face), normal(onto));
                let (height, depth) = (dot(point, out) - edge, edge - dot(point, side));
                let (sine, cosine) = (libm::sin(open), libm::cos(open));
                let hinge = add(point, add(scaled(out, -height), scaled(side, depth)));
                let (along, away) = (
                    add(scaled(side, -cosine), scaled(out, sine)),
                    add(scaled(out, cosine), scaled(side, sine)),
                );
                add(hinge, add(scaled(along, gap + depth), scaled(away, height)))
            }
        }
    }

    /// The same for a direction.
    pub fn direction(self, direction: Point) -> Point {
        let from = self.point([0.0; 3]);
        add(self.point(direction), scaled(from, -1.0))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use cube::State;
    use proptest::prelude::*;

    /// Stickers by where they are and look: rounded middles and normals, with the colour.
    fn sorted(scene: &Scene) -> Vec<([i32; 6], Face)> {
        let round = |point: Point| point.map(|part| libm::round(part * 10.0) as i32);
        let mut list: Vec<_> = scene
            .tiles()
            .iter()
            .map(|tile| {
                let ([a, b, c], [d, e, f]) = (round(tile.middle), round(tile.normal));
                ([a, b, c, d, e, f], tile.colour)
            })
            .collect();
        list.sort();
        list
    }

    #[test]
    fn a_turn_that_is_done_is_the_state_after_it() {
        for size in Size::ALL {
            let before = State::solved(size).after(&Turn::all(size).step_by(5).collect::<Vec<_>>());
            for turn in Turn::all(size) {
                let turning = Turning { turn, progress: 1.0 };
                let moved = Scene::new(&before.facelets(), Rotation::NONE, Some(turning));
                let after = Scene::new(&before.after(&[turn]).facelets(), Rotation::NONE, None);
                assert_eq!(sorted(&moved), sorted(&after), "{turn} on a {size}");
            }
        }
    }

    #[test]
    fn holding_it_another_way_is_a_rotation_of_the_state() {
        let size = Size::new(4).unwrap();
        let state = State::solved(size).after(&Turn::all(size).step_by(7).collect::<Vec<_>>());
        for hold in Rotation::all() {
            let scene = Scene::new(&state.facelets(), hold, None);
            let rotated = Scene::new(&state.after(hold.turns()).facelets(), Rotation::NONE, None);
            assert_eq!(sorted(&scene), sorted(&rotated));
        }
    }

    proptest! {
        #[test]
        fn exactly_three_faces_are_seen(yaw in 0.05f64..1.5, pitch in 0.05f64..1.5, quarter in 0u8..4, down: bool) {
            let camera = Camera::new(
                yaw + f64::from(quarter) * core::f64::consts::FRAC_PI_2,
                if down { -pitch } else { pitch },
            );
            for size in Size::ALL {
                let scene = Scene::new(&State::solved(size).facelets(), Rotation::NONE, None);
                let n = usize::from(size.layers());
                let mut per_face = [0; 6];
                for tile in scene.seen(&Lens::parallel(camera, 1.0)).iter().filter_map(|shape| shape.tile) {
                    per_face[scene.tiles()[tile].cell.0.index()] += 1;
                }
                prop_assert_eq!(per_face.iter().filter(|&&count| count == n * n).count(), 3);
                prop_assert_eq!(per_face.iter().filter(|&&count| count == 0).count(), 3);
            }
        }

        #[test]
        fn while_a_layer_turns_each_sticker_is_drawn_once_at_most(
            progress in 0f64..1.0, turn in 0usize..63, yaw in -3f64..3.0, pitch in -1.5f64..1.5,
        ) {
            let size = Size::THREE;
            let turn = Turn::all(size).nth(turn % Turn::all(size).count()).unwrap();
            let scene = Scene::new(&State::solved(size).facelets(), Rotation::NONE, Some(Turning { turn, progress }));
            let mut drawn: Vec<usize> = scene.seen(&Lens::parallel(Camera::new(yaw, pitch), 1.0)).iter().filter_map(|shape| shape.tile).collect();
            let count = drawn.len();
            drawn.sort_unstable();
            drawn.dedup();
            prop_assert_eq!(drawn.len(), count);
            // What faces the eye and what faces away are together everything: opposite stickers see opposite sides.
            let away = scene.tiles().iter().filter(|tile| dot(tile.normal, Camera::new(yaw, pitch).towards()) <= 1e-9);
            prop_assert_eq!(count + away.count(), 54);
        }
    }
}
