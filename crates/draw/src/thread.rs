//! The memo as a thread with a bead for each letter.
//!
//! Beads come in pairs. A cycle break is a knot, where a new thread begins; a piece turned in its place is a small
//! loop of two beads; parity is a loose end. What a bead's colour tells, its shape tells as well.

use crate::svg::{Caption, Ink, MONO, Markup, Num, Svg, Theme, breadth, pair, path};

/// The state of a bead while the solution is played.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, Default)]
pub enum Glow {
    /// Not reached yet: an open bead.
    #[default]
    Off,
    /// Being done now: a filled bead with a ring round it.
    Now,
    /// Done: a filled bead.
    Done,
}

/// A letter on the thread.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Bead {
    /// The letter.
    pub letter: String,
    /// Whether it is where it went wrong: an eight-cornered bead with a stroke under it.
    pub wrong: bool,
    /// How far play has come.
    pub glow: Glow,
    /// How sure one is of it, 0 to 1: the bead is filled so far from below.
    pub sure: Option<f64>,
}

impl Bead {
    /// A plain bead.
    pub fn new(letter: impl Into<String>) -> Self {
        Self { letter: letter.into(), ..Self::default() }
    }

    /// Marked as wrong.
    #[must_use]
    pub fn wrong(mut self) -> Self {
        self.wrong = true;
        self
    }

    /// In a state of play.
    #[must_use]
    pub const fn glowing(mut self, glow: Glow) -> Self {
        self.glow = glow;
        self
    }

    /// The size of its letter, and half its breadth: long letters shrink while they can be read, then the bead widens.
    fn letter_size(&self) -> (f64, f64) {
        let broad = EM * breadth(&self.letter);
        let size = (2.0 * (RADIUS - ROOM) / broad).clamp(SMALLEST, LARGEST);
        let half = RADIUS.max(size * broad / 2.0 + ROOM);
        (size, half)
    }

    /// Half its breadth.
    fn half(&self) -> f64 {
        self.letter_size().1
    }

    /// Filled by how sure one is of it; kept within 0 to 1.
    #[must_use]
    pub const fn sure(mut self, sure: f64) -> Self {
        self.sure = Some(sure.clamp(0.0, 1.0));
        self
    }
}

/// What is on a thread, in turn.
#[derive(Clone, PartialEq, Debug)]
pub enum Item {
    /// A letter.
    Bead(Bead),
    /// A cycle break.
    Knot,
    /// A piece turned in its place: its two letters.
    Loop(Bead, Bead),
}

/// The memo of one kind of piece.
///
/// ```
/// use draw::{Bead, Item, Strand};
/// let strand = Strand::new("corners", "UFR")
///     .bead(Bead::new("N"))
///     .bead(Bead::new("W"))
///     .knot()
///     .bead(Bead::new("F"))
///     .with_loose_end(true);
/// assert_eq!(strand.items.len(), 4);
/// ```
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Strand {
    /// What it is called, such as the kind of piece; may be empty.
    pub name: String,
    /// Where it begins: the name of the buffer; may be empty.
    pub from: String,
    /// Beads, knots and loops.
    pub items: Vec<Item>,
    /// Parity.
    pub loose_end: bool,
}

impl Strand {
    /// A thread without beads.
    pub fn new(name: impl Into<String>, from: impl Into<String>) -> Self {
        Self { name: name.into(), from: from.into(), ..Self::default() }
    }

    /// With one more bead.
    #[must_use]
    pub fn bead(mut self, bead: Bead) -> Self {
        self.items.push(Item::Bead(bead));
        self
    }

    /// With a knot.
    #[must_use]
    pub fn knot(mut self) -> Self {
        self.items.push(Item::Knot);
        self
    }

    /// With a loop of two beads.
    #[must_use]
    pub fn turned(mut self, first: Bead, second: Bead) -> Self {
        self.items.push(Item::Loop(first, second));
        self
    }

    /// With a loose end or none.
    #[must_use]
    pub const fn with_loose_end(mut self, loose: bool) -> Self {
        self.loose_end = loose;
        self
    }
}

/// The memo as a picture: strands one under another, wrapped at a width.
#[derive(Clone, PartialEq, Debug)]
pub struct Thread {
    /// The strands, in the order in which they are memorised.
    pub strands: Vec<Strand>,
    /// How wide it may be, in pixels at its natural size; at least 160 is used.
    pub width: f64,
    /// Whether letters go in pairs.
    pub paired: bool,
    /// The inks.
    pub theme: Theme,
    /// What is said of it.
    pub caption: Caption,
}

/// Half the width of a bead whose letter is short, and half the height of any.
const RADIUS: f64 = 15.0;
/// The sizes of letters on beads, in pixels.
const LARGEST: f64 = 18.0;
const SMALLEST: f64 = 11.0;
/// Between a letter and the ring round it, to either side.
const ROOM: f64 = 2.0;
/// The breadth of a bold capital, of its size.
const EM: f64 = 0.72;
/// From line to line.
const LINE: f64 = 74.0;
/// Between a bead and the next of its pair, and between pairs.
const CLOSE: f64 = 3.0;
const APART: f64 = 20.0;
/// How far below the thread the beads of a loop hang.
const HANG: f64 = 25.0;
/// What a line keeps free for the end of the thread.
const TAIL: f64 = 30.0;

/// Where something is: along the thread, on which line.
#[derive(Clone, Copy, PartialEq, Debug)]
struct Spot {
    x: f64,
    line: usize,
}

/// A strand laid out on lines.
struct Laid<'a> {
    strand: &'a Strand,
    beads: Vec<(Spot, f64, &'a Bead)>,
    knots: Vec<Spot>,
    /// The loops, with half the breadth of what hangs from them.
    loops: Vec<(Spot, f64)>,
    /// Where the thread ends on each line.
    ends: Vec<f64>,
    begin: f64,
}

impl Thread {
    /// A thread of these strands, in pairs.
    pub fn new(strands: Vec<Strand>, title: impl Into<String>) -> Self {
        Self { strands, width: 640.0, paired: true, theme: Theme::Light, caption: Caption::new(title) }
    }

    /// The picture.
    pub fn svg(&self) -> Svg {
        let width = if self.width.is_finite() { self.width.max(160.0) } else { 640.0 };
        let laid: Vec<Laid> = self.strands.iter().map(|strand| self.lay(strand, width)).collect();
        let named = |laid: &Laid| if laid.strand.name.is_empty() { 0.0 } else { 20.0 };
        let height: f64 = laid.iter().map(|laid| named(laid) + LINE * laid.ends.len() as f64 + 6.0).sum();
        let right = laid.iter().flat_map(|laid| laid.ends.iter().copied()).fold(120.0, f64::max) + 4.0;
        let mut markup = Markup::picture(&self.caption, [0.0, 0.0, right, height.max(1.0)], 1.0);
        let mut top = 0.0;
        for laid in &laid {
            if !laid.strand.name.is_empty() {
                markup
                    .tag("text")
                    .with("x", 4)
                    .with("y", Num(top + 15.0))
                    .with("font-size", 13)
                    .with("text-anchor", "start")
                    .with("fill", self.theme.ink(Ink::Quiet))
                    .text(&laid.strand.name);
            }
            top += named(laid);
            self.draw(&mut markup, laid, top);
            top += LINE * laid.ends.len() as f64 + 6.0;
        }
        markup.finish()
    }

    fn lay<'a>(&self, strand: &'a Strand, width: f64) -> Laid<'a> {
        let label = strand.from.chars().count() as f64;
        let begin = if strand.from.is_empty() { 12.0 } else { 18.0 + 8.5 * label };
        let mut laid =
            Laid { strand, beads: Vec::new(), knots: Vec::new(), loops: Vec::new(), ends: Vec::new(), begin };
        let mut at = Spot { x: begin, line: 0 };
        let mut count = 0_usize;
        // How far the last thing reaches, and whether a pair is open after it.
        let mut reach = 0.0;
        for (number, item) in strand.items.iter().enumerate() {
            let (half, letters) = match item {
                Item::Bead(bead) => (bead.half(), 1),
                Item::Knot => (11.0, 0),
                Item::Loop(first, second) => (first.half() + second.half() + 4.0, 2),
            };
            let open = self.paired && count % 2 == 1;
            let gap = if letters > 0 && open { CLOSE } else { APART };
            // The second of a pair stays with the first where the line has room for both.
            let mate = match strand.items.get(number + 1) {
                Some(Item::Bead(mate)) => mate.half(),
                Some(Item::Knot | Item::Loop(..)) | None => RADIUS,
            };
            let ahead = if letters == 1 && self.paired && !open { CLOSE + 2.0 * mate } else { 0.0 };
            let next = at.x + reach + gap + half;
            if next + half + ahead + TAIL > width && at.x > 16.0 {
                laid.ends.push(at.x + reach);
                at = Spot { x: 12.0 + half, line: at.line + 1 };
            } else {
                at.x = next;
            }
            reach = half;
            match item {
                Item::Bead(bead) => laid.beads.push((at, 0.0, bead)),
                Item::Knot => laid.knots.push(at),
                Item::Loop(first, second) => {
                    let (left, right) = (first.half(), second.half());
                    laid.loops.push((at, half));
                    for (middle, bead) in [(left - half + 2.0, first), (half - right - 2.0, second)] {
                        laid.beads.push((Spot { x: at.x + middle, ..at }, HANG, bead));
                    }
                }
            }
            count += letters;
        }
        laid.ends.push(at.x + reach + TAIL);
        laid
    }

    fn draw(&self, markup: &mut Markup, laid: &Laid, top: f64) {
        let level = |line: usize| top + RADIUS + 7.0 + LINE * line as f64;
        let thread = self.theme.ink(Ink::Thread);
        markup
            .tag("g")
            .with("fill", "none")
            .with("stroke", thread)
            .with("stroke-width", 3)
            .with("stroke-linecap", "round")
            .with("stroke-linejoin", "round")
            .open();
        for (line, &end) in laid.ends.iter().enumerate() {
            let last = line + 1 == laid.ends.len();
            let y = level(line);
            let start = if line == 0 { laid.begin } else { 3.0 };
            let d = if last && laid.strand.loose_end {
                loose_end(start, end, y)
            } else {
                closed_end(start, end, y, last)
            };
            markup.tag("path").with("d", d).empty();
        }
        for (spot, half) in &laid.loops {
            markup.tag("path").with("d", loop_path(spot.x, level(spot.line), *half)).empty();
        }
        for spot in &laid.knots {
            markup
                .tag("path")
                .with("d", knot(spot.x, level(spot.line)))
                .with("fill", self.theme.ink(Ink::Paper))
                .empty();
        }
        markup.close();
        self.anchor(markup, laid, level(0));
        for &(spot, hang, bead) in &laid.beads {
            self.bead(markup, [spot.x, level(spot.line) + hang], bead);
        }
    }

    /// Where the thread begins: a tag with the buffer's name.
    fn anchor(&self, markup: &mut Markup, laid: &Laid, y: f64) {
        if laid.strand.from.is_empty() {
            return;
        }
        let ink = self.theme.ink(Ink::Thread);
        markup
            .tag("rect")
            .with("x", 4)
            .with("y", Num(y - 11.0))
            .with("width", Num(laid.begin - 4.0))
            .with("height", 22)
            .with("rx", 3)
            .with("fill", self.theme.ink(Ink::Paper))
            .with("stroke", ink)
            .with("stroke-width", 2)
            .empty();
        markup
            .tag("text")
            .with("x", Num(4.0 + (laid.begin - 4.0) / 2.0))
            .with("y", Num(y + 4.8))
            .with("font-size", 13)
            .with("font-family", MONO)
            .with("fill", self.theme.ink(Ink::Strong))
            .text(&laid.strand.from);
    }

    fn bead(&self, markup: &mut Markup, [x, y]: [f64; 2], bead: &Bead) {
        let ink = self.theme.ink(if bead.wrong { Ink::Wrong } else { Ink::Thread });
        let paper = self.theme.ink(Ink::Paper);
        let filled = bead.glow != Glow::Off;
        let (size, half) = bead.letter_size();
        let wider = half - RADIUS;
        if bead.glow == Glow::Now {
            outline(markup, [x, y], [RADIUS + 4.0, wider], bead.wrong, "none", ink, 2.0);
        }
        outline(markup, [x, y], [RADIUS, wider], bead.wrong, if filled { ink } else { paper }, ink, 2.5);
        if let (Some(sure), false) = (bead.sure, filled) {
            level(markup, [x, y], wider, sure, ink);
        }
        markup
            .tag("text")
            .with("x", Num(x))
            .with("y", Num(y + size * 0.36))
            .with("font-size", Num(size))
            .with("font-weight", 600)
            .with("fill", if filled { paper } else { self.theme.ink(Ink::Strong) })
            .text(&bead.letter);
        if bead.wrong {
            markup
                .tag("path")
                .with("d", path(&[[x - half, y + RADIUS + 5.0], [x + half, y + RADIUS + 5.0]], false))
                .with("stroke", ink)
                .with("stroke-width", 3)
                .with("stroke-linecap", "round")
                .empty();
        }
    }
}

/// Fills a bead from below, so far as one is sure of it. `wider`: how much further than a round one it reaches to either side.
fn level(markup: &mut Markup, [x, y]: [f64; 2], wider: f64, sure: f64, ink: &str) {
    let inner = RADIUS - 1.25;
    if sure <= 0.01 {
        return;
    }
    let depth = if sure > 0.99 { -inner } else { inner * (1.0 - 2.0 * sure) };
    let half = libm::sqrt((inner * inner - depth * depth).max(0.0));
    let mut d = path(&[[x - wider - half, y + depth]], false);
    // Round to the lowest point on the left, along the bottom, and up on the right.
    for (begin, end) in
        [("A", [x - wider, y + inner]), ("L", [x + wider, y + inner]), ("A", [x + wider + half, y + depth])]
    {
        d.push_str(begin);
        if begin == "A" {
            pair(&mut d, inner, inner);
            d.push_str(" 0 0 0 ");
        }
        pair(&mut d, end[0], end[1]);
    }
    d.push('Z');
    markup.tag("path").with("d", d).with("fill", ink).with("fill-opacity", ".28").empty();
}

/// A bead's outline: round, or eight-cornered where it went wrong; `wider` than it is high by so much to either side.
fn outline(
    markup: &mut Markup,
    [x, y]: [f64; 2],
    [radius, wider]: [f64; 2],
    wrong: bool,
    fill: &str,
    ink: &str,
    width: f64,
) {
    let tag = if wrong {
        let points: Vec<[f64; 2]> = (0..8)
            .map(|i| (f64::from(i) + 0.5) * core::f64::consts::TAU / 8.0)
            .map(|angle| [(radius + 1.0) * libm::cos(angle), (radius + 1.0) * libm::sin(angle)])
            .map(|[right, down]| [x + right + wider.copysign(right), y + down])
            .collect();
        markup.tag("path").with("d", path(&points, true)).with("stroke-linejoin", "round")
    } else if wider > 0.0 {
        markup
            .tag("rect")
            .with("x", Num(x - radius - wider))
            .with("y", Num(y - radius))
            .with("width", Num(2.0 * (radius + wider)))
            .with("height", Num(2.0 * radius))
            .with("rx", Num(radius))
    } else {
        markup.tag("circle").with("cx", Num(x)).with("cy", Num(y)).with("r", Num(radius))
    };
    tag.with("fill", fill).with("stroke", ink).with("stroke-width", Num(width)).empty();
}

/// The thread of a line; the last one ends in a bar across, the others run on to the edge.
fn closed_end(start: f64, end: f64, y: f64, last: bool) -> String {
    if last {
        let end = end - 14.0;
        path(&[[start, y], [end, y]], false) + &path(&[[end, y - 7.0], [end, y + 7.0]], false)
    } else {
        path(&[[start, y], [end + 6.0, y]], false)
    }
}

/// The thread of a line that ends loose: it hangs down and frays.
fn loose_end(start: f64, end: f64, y: f64) -> String {
    let mut d = path(&[[start, y], [end - 26.0, y]], false);
    for (bend, tip) in
        [([-8.0, 2.0], [-12.0, 22.0]), ([-8.0, 2.0], [-2.0, 20.0]), ([-8.0, 2.0], [-7.0, 25.0])]
    {
        d += &path(&[[end - 26.0, y]], false);
        d.push('Q');
        pair(&mut d, end + bend[0], y + bend[1]);
        d.push(' ');
        pair(&mut d, end + tip[0], y + tip[1]);
    }
    d
}

/// A smooth line through control points in threes, from a point that is given too, all relative to one place.
fn curve(x: f64, y: f64, start: [f64; 2], bends: &[[[f64; 2]; 3]]) -> String {
    let mut d = path(&[[x + start[0], y + start[1]]], false);
    for bend in bends {
        for (i, [dx, dy]) in bend.iter().enumerate() {
            d.push(if i == 0 { 'C' } else { ' ' });
            pair(&mut d, x + dx, y + dy);
        }
    }
    d
}

/// A loop hanging from the thread, wide enough for two beads that reach `half` to either side.
fn loop_path(x: f64, y: f64, half: f64) -> String {
    let wider = half - (2.0 * RADIUS + 4.0);
    let left = [[-30.0 - wider, 0.0], [-54.0 - 1.6 * wider, 50.0], [0.0, 40.0]];
    let right = [[54.0 + 1.6 * wider, 50.0], [30.0 + wider, 0.0], [7.0, 0.0]];
    curve(x, y, [-7.0, 0.0], &[left, right])
}

/// A knot: two loops drawn through each other, with the ends of the old thread and of the new one.
fn knot(x: f64, y: f64) -> String {
    let half = |sign: f64| {
        let out = [[-4.0, -12.0 * sign], [10.0, -12.0 * sign], [9.0, -4.0 * sign]];
        let back = [[8.0, 3.0 * sign], [-12.0, 5.0 * sign], [-9.0, 4.0 * sign]];
        curve(x, y, [-9.0, 4.0 * sign], &[out, back])
    };
    let end = |sign: f64| path(&[[x + 5.0 * sign, y + 9.0], [x + 9.0 * sign, y + 17.0]], false);
    half(-1.0) + &half(1.0) + &end(-1.0) + &end(1.0)
}
