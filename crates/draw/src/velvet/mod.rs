//! Cube and thread in one picture, laid out for the pixels that there are: what lies on the velvet of the bench.
//!
//! Everything here is a function of its arguments, motion too: a film takes the same frames.

mod cube;
mod layout;
mod mark;

use crate::glow::Glow;
use crate::palette::Palette;
use crate::place::{Labels, Place};
use crate::scene::Turning;
use crate::space::Camera;
use crate::svg::{Markup, Num, Theme, path};
use crate::thread::{Painter, Strand};
use ::cube::{Facelets, Turn};

/// What is looked at on the cube.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Gaze {
    /// The buffer's sticker, where the thread leaves the cube.
    pub buffer: Option<Place>,
    /// The place by which the view is chosen: where the buffer is when nothing is turned.
    pub home: Option<Place>,
    /// The sticker that is looked at.
    pub look: Option<Place>,
    /// Where its piece belongs, with the letter for it.
    pub target: Option<(Place, String)>,
    /// From where to where the step before led.
    pub before: Option<(Place, Place)>,
    /// How far the way to the target and the bead into the memo have come, 0 to 1; 1 at rest.
    pub drawn: f64,
}

/// What lies on the velvet.
#[derive(Clone, Debug)]
pub struct Velvet {
    /// Breadth and height, in pixels.
    pub frame: [f64; 2],
    /// What the page keeps free for words of its own, in pixels: above the thread where it lies beside the cube, else above the cube.
    pub keep: f64,
    /// The cube as it stands in space.
    pub looks: Facelets,
    /// Its colours.
    pub palette: Palette,
    /// What stands on its stickers.
    pub labels: Labels,
    /// From where it is looked at; none: so that what is spoken of is seen.
    pub camera: Option<Camera>,
    /// How far it was dragged since, to the right and down, in breadths of the cube.
    pub dragged: [f64; 2],
    /// Whether faces out of sight open for what is spoken of.
    pub opens: bool,
    /// A turn under way.
    pub turning: Option<Turning>,
    /// The turn that is next, shown by an arrow.
    pub next: Option<Turn>,
    /// What is looked at.
    pub gaze: Gaze,
    /// Stickers that are lit because they are not solved; then all others stay back.
    pub lit: Option<Vec<Place>>,
    /// The memo, a strand a kind.
    pub strands: Vec<Strand>,
    /// Whether letters go in pairs.
    pub paired: bool,
    /// Which strand is in hand, and which of its letters.
    pub at: Option<(usize, usize)>,
    /// Which strand is open where there is no room for all; none: the one in hand.
    pub open: Option<usize>,
}

/// A bead on the picture.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Spot {
    /// Which strand, and which of its letters.
    pub at: (usize, usize),
    /// Its middle and its radius, in pixels.
    pub middle: [f64; 2],
    /// Half its breadth.
    pub radius: f64,
}

/// The head of a strand on the picture.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Heading {
    /// Which strand.
    pub part: usize,
    /// Whether its beads are there.
    pub open: bool,
    /// Left, top, breadth and height, in pixels.
    pub frame: [f64; 4],
}

/// The picture in three layers, from the one behind to the one before: inner markup of one `svg` element.
#[derive(Clone, PartialEq, Debug)]
pub struct Drawing {
    /// The thread on its way from the cube to the memo.
    pub link: String,
    /// The cube with everything on it.
    pub cube: String,
    /// The memo.
    pub thread: String,
    /// From where the cube was looked at.
    pub camera: Camera,
    /// The beads, in order.
    pub beads: Vec<Spot>,
    /// The heads of the strands.
    pub headings: Vec<Heading>,
    /// The room of the cube: left, top, breadth, height.
    pub cube_frame: [f64; 4],
}

/// How much of the motion is the way to the target; the rest is the bead that slides into the memo.
const WAY: f64 = 0.7;

impl Velvet {
    /// The picture.
    pub fn draw(&self) -> Drawing {
        let layout = layout::Layout::new(self);
        let cube = cube::Cube::new(self, layout.cube);
        let mut on_cube = Markup::new();
        cube.paint(&mut on_cube);
        let cabled = self.link(&layout, &cube, &mut on_cube);
        let mut thread = Markup::new();
        let sliding = self.gaze.drawn < 1.0 && self.gaze.target.is_some();
        let strands = self.shown_strands(&layout, sliding);
        let laid = layout.lay(&strands);
        for (part, one) in &laid {
            let painter = Painter { theme: Theme::Velvet, part: *part };
            if layout.is_open(*part) {
                painter.thread(&mut thread, one);
            } else {
                painter.head(&mut thread, one);
            }
        }
        let beads: Vec<Spot> = laid
            .iter()
            .filter(|(part, _)| layout.is_open(*part))
            .flat_map(|(part, one)| {
                one.beads.iter().enumerate().map(|(letter, bead)| Spot {
                    at: (*part, letter),
                    middle: bead.at,
                    radius: bead.half,
                })
            })
            .collect();
        if sliding {
            self.slide(&cube, &beads, &mut thread);
        }
        let headings = laid
            .iter()
            .map(|(part, one)| Heading { part: *part, open: layout.is_open(*part), frame: one.heading() })
            .collect();
        let cube_frame = layout.cube;
        Drawing {
            link: cabled,
            cube: on_cube.finish().into_string(),
            thread: thread.finish().into_string(),
            camera: cube.lens.camera,
            beads,
            headings,
            cube_frame,
        }
    }

    /// The strands as they are shown: closed ones are one word; while a bead is on its way, its place in the memo is hollow.
    fn shown_strands(&self, layout: &layout::Layout, sliding: bool) -> Vec<Strand> {
        let shown = |(part, strand): (usize, &Strand)| {
            if layout.is_open(part) { strand.clone() } else { strand.closed() }
        };
        let mut strands: Vec<Strand> = self.strands.iter().enumerate().map(shown).collect();
        if let (true, Some((part, letter))) = (sliding, self.at)
            && let Some(bead) = strands.get_mut(part).and_then(|strand| strand.bead_at(letter))
        {
            bead.glow = Glow::Ahead;
        }
        strands
    }

    /// The thread from the buffer's sticker, out over the edge of the cube and behind it to the tag of the strand in hand. What lies
    /// on the cube is painted there, the rest is given back.
    fn link(&self, layout: &layout::Layout, cube: &cube::Cube<'_>, on_cube: &mut Markup) -> String {
        let mut markup = Markup::new();
        let part = self.at.map_or(0, |(part, _)| part);
        let Some(tag) = layout.tags.get(part).copied().flatten() else { return String::new() };
        let Some(buffer) = self.gaze.buffer.and_then(|place| cube.spot(place)) else { return String::new() };
        let exit = cube.way_out(buffer);
        let [mx, my] = cube.lens.middle;
        let [dx, dy] = [buffer[0] - mx, buffer[1] - my];
        let length = libm::hypot(dx, dy).max(1.0);
        // From the ring round the sticker on.
        let ring = 0.72 * cube.lens.scale;
        let rim = [buffer[0] + dx / length * ring, buffer[1] + dy / length * ring];
        if libm::hypot(exit[0] - buffer[0], exit[1] - buffer[1]) > ring + 1.0 {
            let out = path(&[rim, exit], false);
            for class in ["cas on-cube", "th pull"] {
                on_cube.tag("path").with("class", class).with("d", &out).empty();
            }
        }
        let far = 0.35 * libm::hypot(tag[0] - exit[0], tag[1] - exit[1]);
        // Kept within the frame: a curve lies between its control points.
        let within = |[x, y]: [f64; 2]| [x.clamp(3.0, self.frame[0].max(6.0) - 3.0), y.max(3.0)];
        let lead = within([exit[0] + dx / length * far.min(60.0), exit[1] + dy / length * far.min(60.0)]);
        let arrive = within([tag[0] - far.clamp(24.0, 90.0), tag[1]]);
        let d = crate::thread::curved(exit, &[[lead, arrive, tag]]);
        markup.tag("path").with("class", "th pull").with("d", d).empty();
        markup.finish().into_string()
    }

    /// The bead on its way from the cube into the memo.
    fn slide(&self, cube: &cube::Cube<'_>, beads: &[Spot], markup: &mut Markup) {
        let Some((place, letter)) = &self.gaze.target else { return };
        let (Some(from), Some(at)) = (cube.spot(*place), self.at) else { return };
        let Some(to) = beads.iter().find(|bead| bead.at == at) else { return };
        let part = (self.gaze.drawn - WAY) / (1.0 - WAY);
        if part <= 0.0 {
            return;
        }
        let part = part * part * (3.0 - 2.0 * part);
        let [x, y] = [0, 1].map(|i| from[i] + (to.middle[i] - from[i]) * part);
        markup.group(&[("class", &"bead silk")]);
        markup
            .tag("circle")
            .with("class", "b")
            .with("cx", Num(x))
            .with("cy", Num(y))
            .with("r", Num(to.radius))
            .empty();
        markup
            .tag("text")
            .with("class", "bl")
            .with("x", Num(x))
            .with("y", Num(y + 0.38 * to.radius))
            .with("font-size", Num(1.06 * to.radius))
            .text(letter);
        markup.close();
    }
}
