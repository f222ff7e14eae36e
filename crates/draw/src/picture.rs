//! What a picture of a cube shows, and how stickers, letters, marks and threads are drawn on it.

use crate::colour::Rgb;
use crate::palette::Palette;
use crate::place::{Chain, Labels, Mark, Place};
use crate::svg::{Caption, Ink, MONO, Markup, Num, Tag, Theme, breadth, path};
use cube::{Face, Facelets};

/// Pixels of a unit; a facelet is two units wide.
pub(crate) const UNIT: f64 = 10.0;
/// The thread on a cube, and what keeps it apart from whatever it crosses. Stickers have the same colours on light
/// and dark pages, so the thread on them has too.
const CORE: &str = "#93206f";
const HALO: &str = "#fff";

/// A cube to be drawn: its colours, what stands on its stickers, and what is pointed at.
///
/// Places are named on the cube as these colours show it; [`Picture::net`] and [`Picture::solid`] may then hold it
/// another way.
///
/// ```
/// use cube::{Orbit, Size, State};
/// use draw::{Labels, Mark, Picture, Place};
/// let look = Place::new(Orbit::Corner, Orbit::Corner.sticker("UFR").unwrap());
/// let svg = Picture::new(State::solved(Size::TWO).facelets(), "A solved 2x2")
///     .labels(Labels::letters(Size::TWO))
///     .mark(look, Mark::Look)
///     .net();
/// assert!(svg.as_str().starts_with("<svg"));
/// ```
#[derive(Clone, PartialEq, Debug)]
pub struct Picture {
    pub(crate) facelets: Facelets,
    pub(crate) palette: Palette,
    pub(crate) labels: Labels,
    pub(crate) marks: Vec<(Place, Mark)>,
    pub(crate) chain: Chain,
    pub(crate) only: Option<Vec<Place>>,
    pub(crate) alone: bool,
    pub(crate) colour_letters: bool,
    pub(crate) handles: bool,
    pub(crate) theme: Theme,
    pub(crate) caption: Caption,
}

impl Picture {
    /// A picture with the default colours and nothing on the stickers.
    pub fn new(facelets: Facelets, title: impl Into<String>) -> Self {
        Self {
            facelets,
            palette: Palette::default(),
            labels: Labels::none(),
            marks: Vec::new(),
            chain: Chain::default(),
            only: None,
            alone: false,
            colour_letters: false,
            handles: false,
            theme: Theme::Light,
            caption: Caption::new(title),
        }
    }

    /// With other colours.
    #[must_use]
    pub fn palette(mut self, palette: Palette) -> Self {
        self.palette = palette;
        self
    }

    /// With labels on the stickers.
    #[must_use]
    pub fn labels(mut self, labels: Labels) -> Self {
        self.labels = labels;
        self
    }

    /// With one more mark.
    #[must_use]
    pub fn mark(mut self, place: Place, mark: Mark) -> Self {
        self.marks.push((place, mark));
        self
    }

    /// With a thread from sticker to sticker.
    #[must_use]
    pub fn chain(mut self, chain: Chain) -> Self {
        self.chain = chain;
        self
    }

    /// With colours only on the pieces at these places and on the centres; all other stickers stay back.
    #[must_use]
    pub fn only(mut self, places: impl IntoIterator<Item = Place>) -> Self {
        self.only = Some(places.into_iter().collect());
        self
    }

    /// With colours and letters only on the stickers at these places; all others stay back, centres too.
    #[must_use]
    pub(crate) fn only_stickers(mut self, places: impl IntoIterator<Item = Place>) -> Self {
        self.only = Some(places.into_iter().collect());
        self.alone = true;
        self
    }

    /// With the letter of its colour, small, in the corner of each sticker: for those to whom colours say little.
    #[must_use]
    pub const fn colour_letters(mut self, shown: bool) -> Self {
        self.colour_letters = shown;
        self
    }

    /// With `data-cell` (face, row, column) and `data-place` (name) on each sticker, so that a page can tell which
    /// one was touched.
    #[must_use]
    pub const fn handles(mut self, given: bool) -> Self {
        self.handles = given;
        self
    }

    /// In the inks of a theme.
    #[must_use]
    pub const fn theme(mut self, theme: Theme) -> Self {
        self.theme = theme;
        self
    }

    /// With another title.
    #[must_use]
    pub fn titled(mut self, title: impl Into<String>) -> Self {
        self.caption.title = title.into();
        self
    }

    /// With a description for those who cannot see it.
    #[must_use]
    pub fn describing(mut self, description: impl Into<String>) -> Self {
        self.caption.description = description.into();
        self
    }
}

/// A sticker on the plane of the picture.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct Patch {
    pub cell: (Face, u8, u8),
    /// The place, unless it is a fixed centre or a wing's second sticker.
    pub place: Option<Place>,
    pub colour: Face,
    /// In pixels: the middle, and one unit to the right and down as its letter is read.
    pub middle: [f64; 2],
    pub right: [f64; 2],
    pub down: [f64; 2],
    /// Pixels of a unit where nothing is foreshortened.
    pub unit: f64,
}

impl Patch {
    /// A point of the sticker in its own units.
    pub(crate) fn at(&self, right: f64, down: f64) -> [f64; 2] {
        [0, 1].map(|i| self.middle[i] + right * self.right[i] + down * self.down[i])
    }

    /// A square with round corners in its own units: how far it reaches, and how much of a side each corner takes.
    pub(crate) fn rounded(&self, reach: f64, round: f64) -> String {
        let corners =
            [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)].map(|(x, y)| [x * reach, y * reach]);
        let mut d = String::new();
        for i in 0..4 {
            let [before, here, after] = [corners[(i + 3) % 4], corners[i], corners[(i + 1) % 4]];
            let towards = |to: [f64; 2]| [0, 1].map(|k| here[k] + (to[k] - here[k]) * round);
            let [begin, bend, end] = [towards(before), here, towards(after)].map(|[x, y]| self.at(x, y));
            d.push(if i == 0 { 'M' } else { 'L' });
            crate::svg::pair(&mut d, begin[0], begin[1]);
            d.push('Q');
            crate::svg::pair(&mut d, bend[0], bend[1]);
            d.push(' ');
            crate::svg::pair(&mut d, end[0], end[1]);
        }
        d.push('Z');
        d
    }

    /// The same as an element: a rectangle where it stands upright, which is shorter.
    fn square<'a>(&self, markup: &'a mut Markup, reach: f64, round: f64) -> Tag<'a> {
        if !self.is_upright() {
            return markup.tag("path").with("d", self.rounded(reach, round));
        }
        let [x, y] = self.at(-reach, -reach);
        let side = 2.0 * reach * self.unit;
        let tag = markup.tag("rect").with("x", Num(x)).with("y", Num(y));
        tag.with("width", Num(side)).with("height", Num(side)).with("rx", Num(round * side))
    }

    fn is_upright(&self) -> bool {
        self.right[1].abs() < 1e-9 && self.down[0].abs() < 1e-9
    }

    /// Its own units as a transformation.
    fn matrix(&self) -> String {
        let [a, b] = self.right;
        let [c, d] = self.down;
        let [e, f] = self.middle;
        format!("matrix({} {} {} {} {} {})", Num(a), Num(b), Num(c), Num(d), Num(e), Num(f))
    }
}

/// Where a place of the cube is on the picture, for threads that lead there.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) struct Anchor {
    pub at: [f64; 2],
    /// Whether the sticker is in sight.
    pub seen: bool,
}

impl Picture {
    /// One sticker with all that stands on it.
    pub(crate) fn patch(&self, markup: &mut Markup, patch: &Patch) {
        let shade = &self.palette[patch.colour];
        let (face, row, column) = patch.cell;
        let kept = match patch.place {
            Some(place) => self.is_kept(place),
            None => !self.alone,
        };
        let fill = if kept { shade.colour.to_string() } else { self.theme.ink(Ink::Back).to_owned() };
        let on_page = self.theme == Theme::Velvet;
        let name = |place: Place| format!("{} {}", blind::kind_name(place.orbit), place.name());
        patch
            .square(markup, 0.885, 0.17)
            .with_some("class", on_page.then_some(if kept { "s" } else { "s quiet" }))
            .with_some("data-sticker", patch.place.filter(|_| on_page).map(name))
            .with_some("fill", (kept || !on_page).then_some(&fill))
            .with_some("data-cell", self.handles.then(|| format!("{face} {row} {column}")))
            .with_some("data-place", patch.place.filter(|_| self.handles).map(Place::name))
            .empty();
        let ink = shade.colour.label();
        let label = patch.place.filter(|_| kept || !self.alone).map_or("", |place| self.labels.at(place));
        self.words(markup, patch, label, ink);
        if self.colour_letters && kept {
            let colour = shade.letter.to_string();
            word(markup, patch, &colour, ink, (0.58, 0.74, 0.56));
        }
        for (_, mark) in self.marks.iter().filter(|(place, _)| Some(*place) == patch.place) {
            mark.draw(markup, patch);
        }
    }

    /// Whether the piece at a place keeps its colours.
    fn is_kept(&self, place: Place) -> bool {
        let same_piece = |kept: &Place| {
            kept.orbit == place.orbit && kept.orbit.piece(kept.sticker) == place.orbit.piece(place.sticker)
        };
        let same = |kept: &Place| if self.alone { *kept == place } else { same_piece(kept) };
        self.only.as_ref().is_none_or(|places| places.iter().any(same))
    }

    pub(crate) fn words(&self, markup: &mut Markup, patch: &Patch, label: &str, ink: Rgb) {
        if label.is_empty() {
            return;
        }
        let size = (1.7 / (0.62 * breadth(label))).min(1.2);
        // A colour's letter in the corner needs the room below.
        let raised = if self.colour_letters { 0.14 } else { 0.0 };
        word(markup, patch, label, ink, (0.0, size * 0.355 - raised, size));
    }

    /// The thread through the chain's places.
    pub(crate) fn thread(&self, markup: &mut Markup, anchor: impl Fn(Place) -> Option<Anchor>) {
        let steps: Vec<_> = self
            .chain
            .steps()
            .filter_map(|(number, from, to)| Some((number, (from, anchor(from)?), (to, anchor(to)?))))
            .collect();
        if steps.is_empty() {
            return;
        }
        let arrows: Vec<_> = steps.iter().map(|(_, (_, from), (_, to))| Arrow::between(*from, *to)).collect();
        markup.group(&[("fill", &"none"), ("stroke-linecap", &"round"), ("stroke-linejoin", &"round")]);
        for (ink, width) in [(HALO, 0.38), (CORE, 0.19)] {
            for arrow in &arrows {
                markup
                    .tag("path")
                    .with("d", arrow.path())
                    .with("stroke", ink)
                    .with("stroke-width", Num(width * UNIT))
                    .with_some("stroke-dasharray", (arrow.dashed && ink == CORE).then_some("4 4"))
                    .empty();
            }
        }
        markup.close();
        // What is out of sight is shown as a hole through which the thread goes, with the name of the place.
        let mut holes: Vec<Place> = Vec::new();
        for (place, anchor) in steps.iter().flat_map(|(_, from, to)| [*from, *to]) {
            if !anchor.seen && !holes.contains(&place) {
                holes.push(place);
                let [x, y] = anchor.at;
                markup
                    .tag("circle")
                    .with("cx", Num(x))
                    .with("cy", Num(y))
                    .with("r", Num(0.9 * UNIT))
                    .with("fill", HALO)
                    .with("stroke", CORE)
                    .with("stroke-width", Num(0.16 * UNIT))
                    .with("stroke-dasharray", "3 2")
                    .empty();
                let label =
                    Some(self.labels.at(place)).filter(|label| !label.is_empty()).unwrap_or(place.name());
                let size = (1.5 / (0.62 * breadth(label))).min(1.0);
                markup
                    .tag("text")
                    .with("x", Num(x))
                    .with("y", Num(y + size * 0.36 * UNIT))
                    .with("font-size", Num(size * UNIT))
                    .with("font-weight", 600)
                    .with("fill", CORE)
                    .text(label);
            }
        }
        // One step alone needs no number.
        let numbered = steps.len() > 1 || self.chain.first != 1;
        for ((number, _, _), arrow) in steps.iter().zip(&arrows).filter(|_| numbered) {
            let [x, y] = arrow.bead();
            markup
                .tag("circle")
                .with("cx", Num(x))
                .with("cy", Num(y))
                .with("r", Num(0.42 * UNIT))
                .with("fill", CORE)
                .with("stroke", HALO)
                .with("stroke-width", Num(0.12 * UNIT))
                .empty();
            markup
                .tag("text")
                .with("x", Num(x))
                .with("y", Num(y + 0.2 * UNIT))
                .with("font-size", Num(if *number > 9 { 0.5 } else { 0.58 } * UNIT))
                .with("font-family", MONO)
                .with("font-weight", 700)
                .with("fill", HALO)
                .text(&number.to_string());
        }
    }

    pub(crate) fn body_ink(&self) -> &'static str {
        self.theme.ink(Ink::Body)
    }
}

/// Text in the plane of a sticker, at a place and of a size in its own units.
fn word(markup: &mut Markup, patch: &Patch, text: &str, ink: Rgb, (x, y, size): (f64, f64, f64)) {
    let ink = if ink == Rgb::BLACK { "#000" } else { "#fff" };
    let [left, top] = patch.at(x, y);
    let tag = markup.tag("text");
    if patch.is_upright() {
        tag.with("x", Num(left))
            .with("y", Num(top))
            .with("font-size", Num(size * patch.unit))
            .with("fill", ink)
            .text(text);
    } else {
        let place = Patch { middle: [left, top], ..patch.clone() };
        let scaled = Patch {
            right: place.right.map(|part| part / patch.unit),
            down: place.down.map(|part| part / patch.unit),
            ..place
        };
        tag.with("transform", scaled.matrix())
            .with("font-size", Num(size * patch.unit))
            .with("fill", ink)
            .text(text);
    }
}

/// What groups stickers: the weight of their letters.
pub(crate) fn open_stickers(markup: &mut Markup) {
    markup.tag("g").with("font-weight", 600).open();
}

impl Mark {
    fn draw(self, markup: &mut Markup, patch: &Patch) {
        let closed = |points: &[(f64, f64)]| {
            let points: Vec<_> = points.iter().map(|&(x, y)| patch.at(x, y)).collect();
            path(&points, true)
        };
        let d = match self {
            Self::Look => {
                // A circle in the plane of the face, by twelve points of it joined roundly.
                let points: Vec<(f64, f64)> = (0..24)
                    .map(|i| f64::from(i) * core::f64::consts::TAU / 24.0)
                    .map(|angle| (0.8 * libm::cos(angle), 0.8 * libm::sin(angle)))
                    .collect();
                closed(&points)
            }
            Self::Buffer => closed(&[(-0.78, -0.78), (0.78, -0.78), (0.78, 0.78), (-0.78, 0.78)]),
            Self::Target => closed(&[(0.0, -0.95), (0.95, 0.0), (0.0, 0.95), (-0.95, 0.0)]),
            Self::Wrong => [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)]
                .map(|(x, y)| path(&[patch.at(0.88 * x, 0.88 * y), patch.at(0.45 * x, 0.45 * y)], false))
                .concat(),
        };
        markup.group(&[("fill", &"none"), ("stroke-linecap", &"round"), ("data-mark", &self.word())]);
        for (ink, width) in [(HALO, 0.4), (CORE, 0.22)] {
            markup
                .tag("path")
                .with("d", &d)
                .with("stroke", ink)
                .with("stroke-width", Num(width * UNIT))
                .empty();
        }
        markup.close();
    }

    const fn word(self) -> &'static str {
        match self {
            Self::Look => "look",
            Self::Buffer => "buffer",
            Self::Target => "target",
            Self::Wrong => "wrong",
        }
    }
}

/// One step of a thread: bowed a little, so that there and back are two lines.
struct Arrow {
    from: [f64; 2],
    bend: [f64; 2],
    to: [f64; 2],
    dashed: bool,
}

impl Arrow {
    fn between(from: Anchor, to: Anchor) -> Self {
        let (a, b) = (from.at, to.at);
        let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
        let length = libm::hypot(dx, dy).max(1e-6);
        let bow = (0.16 * length).min(1.6 * UNIT) / length;
        let bend = [a[0].midpoint(b[0]) + dy * bow, a[1].midpoint(b[1]) - dx * bow];
        // Begins and ends beside the letters.
        let start = (0.5 * UNIT / length).min(0.3);
        let end = 1.0 - (0.62 * UNIT / length).min(0.3);
        let on = |t: f64| {
            let (p, q, r) = ((1.0 - t) * (1.0 - t), 2.0 * t * (1.0 - t), t * t);
            [0, 1].map(|i| p * a[i] + q * bend[i] + r * b[i])
        };
        // The piece of a parabola between two parameters has its bend where the tangents meet.
        let blend = |s: f64, t: f64| {
            let (p, q, r) = ((1.0 - s) * (1.0 - t), s + t - 2.0 * s * t, s * t);
            [0, 1].map(|i| p * a[i] + q * bend[i] + r * b[i])
        };
        Self { from: on(start), bend: blend(start, end), to: on(end), dashed: !(from.seen && to.seen) }
    }

    /// Shaft and head in one.
    fn path(&self) -> String {
        let (dx, dy) = (self.to[0] - self.bend[0], self.to[1] - self.bend[1]);
        let length = libm::hypot(dx, dy).max(1e-6);
        let (dx, dy) = (dx / length * 0.55 * UNIT, dy / length * 0.55 * UNIT);
        let side = |sign: f64| [self.to[0] - dx - sign * 0.6 * dy, self.to[1] - dy + sign * 0.6 * dx];
        let mut d = path(&[self.from], false);
        d.push('Q');
        crate::svg::pair(&mut d, self.bend[0], self.bend[1]);
        d.push(' ');
        crate::svg::pair(&mut d, self.to[0], self.to[1]);
        d + &path(&[side(1.0), self.to, side(-1.0)], false)
    }

    /// Where the number sits: near the beginning, before other stickers' letters.
    fn bead(&self) -> [f64; 2] {
        let length = libm::hypot(self.to[0] - self.from[0], self.to[1] - self.from[1]).max(1e-6);
        let t = (0.45 * UNIT / length).min(0.4);
        let (p, q, r) = ((1.0 - t) * (1.0 - t), 2.0 * t * (1.0 - t), t * t);
        [0, 1].map(|i| p * self.from[i] + q * self.bend[i] + r * self.to[i])
    }
}
