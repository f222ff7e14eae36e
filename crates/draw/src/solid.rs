//! The cube in space.

use crate::picture::{Anchor, Patch, Picture, UNIT, open_stickers};
use crate::place::Place;
use crate::scene::{Hidden, Moved, Scene, Tile, Turning};
use crate::space::{Camera, Lens, Point, add, cross, dot, normal, scaled};
use crate::svg::{Ink, Markup, Num, Svg, path};
use cube::Rotation;

/// From where and how a cube in space is looked at.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct View {
    /// How the cube is held, from how its colours were given.
    pub hold: Rotation,
    /// Where the eye is.
    pub camera: Camera,
    /// What happens with the faces out of sight.
    pub hidden: Hidden,
    /// A turn under way.
    pub turning: Option<Turning>,
    /// Whether the picture keeps its frame however the cube is turned, as it must while it moves.
    pub steady: bool,
}

impl Default for View {
    fn default() -> Self {
        Self {
            hold: Rotation::NONE,
            camera: Camera::USUAL,
            hidden: Hidden::Omitted,
            turning: None,
            steady: false,
        }
    }
}

impl View {
    /// Three faces of a cube held this way, and nothing of the others.
    pub fn held(hold: Rotation) -> Self {
        Self { hold, ..Self::default() }
    }

    /// The same with the faces out of sight shown in mirrors or swung open.
    #[must_use]
    pub fn with_hidden(self, hidden: Hidden) -> Self {
        let camera = if hidden == Hidden::Mirrored { Camera::EVEN } else { self.camera };
        Self { camera, hidden, ..self }
    }
}

/// Natural size of a cube in space against that of a net, whose stickers are not foreshortened.
const NATURAL: f64 = 1.5;

/// What is drawn beside the cube for a face out of sight.
struct Beside {
    moved: Moved,
    outline: [[f64; 2]; 4],
    patches: Vec<Patch>,
}

impl Picture {
    /// The cube in space, as a view shows it.
    pub fn solid(&self, view: &View) -> Svg {
        let scene = Scene::new(&self.facelets, view.hold, view.turning);
        let lens = Lens::parallel(view.camera, UNIT);
        let px = |point: Point| lens.project(point);
        let seen = scene.seen(&lens);
        let beside = beside(&scene, view, &lens);

        let mut points: Vec<[f64; 2]> = seen.iter().flat_map(|shape| shape.points).collect();
        points.extend(beside.iter().flat_map(|beside| beside.outline));
        if view.steady {
            let reach = f64::from(scene.size().layers()) * libm::sqrt(3.0) * UNIT;
            points.extend([[-reach, -reach], [reach, reach]]);
        }
        // Places out of sight keep room for the mark that stands for them.
        let hole = |place: Place| {
            let tile = &scene.tiles()[scene.tile_at(place)?];
            (!lens.sees(tile.middle, tile.normal) && beside.is_empty()).then(|| px(tile.middle))
        };
        for [x, y] in self.chain.places.iter().filter_map(|&place| hole(place)) {
            points.extend([[x - UNIT, y - UNIT], [x + UNIT, y + UNIT]]);
        }

        let mut markup = Markup::picture(&self.caption, bounds(&points, 0.4 * UNIT), NATURAL);
        for part in &beside {
            self.draw_beside(&mut markup, part);
        }
        open_stickers(&mut markup);
        let mut patches = Vec::new();
        for shape in &seen {
            if let Some(tile) = shape.tile.and_then(|at| scene.tiles().get(at)) {
                let patch = patch(tile, &lens, &|point| point, &|direction| direction);
                self.patch(&mut markup, &patch);
                patches.push(patch);
            } else {
                markup
                    .tag("path")
                    .with("d", path(&shape.points, true))
                    .with("fill", self.body_ink())
                    .with("stroke", self.body_ink())
                    .empty();
            }
        }
        markup.close();
        self.thread(&mut markup, |place| {
            let tile = scene.tiles().get(scene.tile_at(place)?)?;
            let shown = patches.iter().chain(beside.iter().flat_map(|part| &part.patches));
            let found = shown.into_iter().find(|patch| patch.place == Some(place));
            Some(found.map_or(Anchor { at: px(tile.middle), seen: false }, |patch| Anchor {
                at: patch.middle,
                seen: true,
            }))
        });
        markup.finish()
    }

    fn draw_beside(&self, markup: &mut Markup, part: &Beside) {
        let mirror = matches!(part.moved, Moved::Mirror { .. });
        let tag = markup
            .tag("path")
            .with("d", path(&part.outline, true))
            .with("stroke-linejoin", "round")
            .with("stroke-width", Num(if mirror { 0.3 } else { 0.2 } * UNIT));
        if mirror {
            // A pane with a rim, so that it is taken for a mirror and not for a part of the cube.
            tag.with("fill", self.body_ink())
                .with("fill-opacity", ".28")
                .with("stroke", self.theme.ink(Ink::Quiet))
                .empty();
        } else {
            tag.with("fill", self.body_ink()).with("stroke", self.body_ink()).empty();
        }
        open_stickers(markup);
        for patch in &part.patches {
            self.patch(markup, patch);
        }
        markup.close();
    }
}

/// The faces out of sight, as they are shown beside the cube.
fn beside(scene: &Scene, view: &View, lens: &Lens) -> Vec<Beside> {
    scene
        .out_of_sight(view.camera, view.hidden)
        .into_iter()
        .map(|(face, moved)| {
            let n = f64::from(scene.size().layers());
            let reach = if matches!(moved, Moved::Mirror { .. }) { n + 0.35 } else { n };
            let (up, right) = crate::space::frame(face);
            let outline = [(1.0, 1.0), (1.0, -1.0), (-1.0, -1.0), (-1.0, 1.0)].map(|(u, r)| {
                let corner = add(scaled(up, u * reach), scaled(right, r * reach));
                lens.project(moved.point(add(scaled(normal(face), n), corner)))
            });
            // A sticker that is half turned belongs to the face towards which it looks the most.
            let patches = scene
                .tiles()
                .iter()
                .filter(|tile| dot(tile.normal, normal(face)) > 0.71)
                .map(|tile| patch(tile, lens, &|point| moved.point(point), &|way| moved.direction(way)))
                .collect();
            Beside { moved, outline, patches }
        })
        .collect()
}

/// A sticker as the eye sees it, its letter in the plane of its face and as upright as that plane allows.
pub(crate) fn patch(
    tile: &Tile,
    lens: &Lens,
    point: &dyn Fn(Point) -> Point,
    direction: &dyn Fn(Point) -> Point,
) -> Patch {
    let camera = lens.camera;
    let outward = direction(tile.normal);
    let up = direction(tile.up);
    let side = cross(up, outward);
    // Reflection may turn the face away; then what is right is left.
    let facing = dot(outward, camera.towards()) >= 0.0;
    // The four ways up, the one that rises highest on the picture; the face's own way wins when two are even.
    let mut best = (f64::NEG_INFINITY, up);
    for (i, way) in [up, scaled(up, -1.0), side, scaled(side, -1.0)].into_iter().enumerate() {
        let rises = dot(way, camera.up()) + if i == 0 { 0.25 } else { 0.0 };
        if rises > best.0 + 1e-9 {
            best = (rises, way);
        }
    }
    let up = best.1;
    let right = scaled(cross(up, outward), if facing { 1.0 } else { -1.0 });
    let middle = point(tile.middle);
    Patch {
        cell: tile.cell,
        place: tile.place.filter(|&(_, back)| !back).map(|(place, _)| place),
        colour: tile.colour,
        middle: lens.project(middle),
        right: lens.way(middle, right),
        down: lens.way(middle, scaled(up, -1.0)),
        unit: lens.scale,
    }
}

/// The rectangle round some points, with a margin: left, top, width, height.
fn bounds(points: &[[f64; 2]], margin: f64) -> [f64; 4] {
    let least = |i: usize| points.iter().map(|point| point[i]).fold(f64::INFINITY, f64::min) - margin;
    let most = |i: usize| points.iter().map(|point| point[i]).fold(f64::NEG_INFINITY, f64::max) + margin;
    [least(0), least(1), most(0) - least(0), most(1) - least(1)]
}
