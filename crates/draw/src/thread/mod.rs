//! The memo as a thread with a bead for each letter.
//!
//! Beads come in pairs. A cycle break is a knot, where a new thread begins; a piece turned in its place is a small
//! loop of two beads; parity is a loose end, and a thread without it is tied off. What a bead's colour tells, its shape
//! tells as well. One drawing serves pages, paper and the velvet of the bench.

mod lay;
mod paint;
mod shape;

use crate::glow::Glow;
use crate::svg::{Caption, Markup, Svg, Theme, breadth};

pub(crate) use lay::{Laid, Room};
pub(crate) use paint::Painter;
pub(crate) use shape::curve as curved;

/// A letter on the thread.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Bead {
    /// The letter.
    pub letter: String,
    /// Whether it is where it went wrong: a cracked bead, with two notches.
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

    /// The size of its letter, and half its breadth, on beads of a radius: long letters shrink while they can be read,
    /// then the bead widens.
    fn letter_size(&self, radius: f64) -> (f64, f64) {
        let broad = EM * breadth(&self.letter);
        let size = (2.0 * radius * (1.0 - ROOM) / broad).clamp(SMALLEST * radius, LARGEST * radius);
        let half = radius.max(size * broad / 2.0 + ROOM * radius);
        (size, half)
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
    /// A cycle break: a knot before the next bead. Without one it is not drawn.
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
    /// What is said beside its name, such as how many letters there are; may be empty.
    pub note: String,
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

    /// Only what it is called, as one of several that are closed.
    pub(crate) fn closed(&self) -> Self {
        let name = if self.name.is_empty() { self.from.clone() } else { self.name.clone() };
        Self { name, ..Self::default() }
    }

    /// The bead of a letter by its number, from 0.
    pub(crate) fn bead_at(&mut self, letter: usize) -> Option<&mut Bead> {
        self.items
            .iter_mut()
            .flat_map(|item| match item {
                Item::Bead(bead) => [Some(bead), None],
                Item::Knot => [None, None],
                Item::Loop(first, second) => [Some(first), Some(second)],
            })
            .flatten()
            .nth(letter)
    }

    /// Marks a letter by its number, from 0, as wrong.
    pub fn crack(&mut self, letter: usize) {
        if let Some(bead) = self.bead_at(letter) {
            bead.wrong = true;
        }
    }

    /// With a note beside its name.
    #[must_use]
    pub fn noting(mut self, note: impl Into<String>) -> Self {
        self.note = note.into();
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

/// The radius of beads at the natural size of a thread, in pixels.
const RADIUS: f64 = 15.0;
/// The sizes of letters on beads, of the radius.
const LARGEST: f64 = 1.06;
const SMALLEST: f64 = 0.72;
/// Between a letter and the edge of its bead, of the radius.
const ROOM: f64 = 0.13;
/// The breadth of a bold capital, of its size.
const EM: f64 = 0.72;

impl Thread {
    /// A thread of these strands, in pairs.
    pub fn new(strands: Vec<Strand>, title: impl Into<String>) -> Self {
        Self { strands, width: 640.0, paired: true, theme: Theme::Light, caption: Caption::new(title) }
    }

    /// The picture.
    pub fn svg(&self) -> Svg {
        let width = if self.width.is_finite() { self.width.max(160.0) } else { 640.0 };
        let edge = lay::MARGIN * RADIUS;
        let mut top = 0.0;
        let mut laid = Vec::new();
        for strand in &self.strands {
            let room = Room { left: edge, right: width, top, radius: RADIUS, paired: self.paired };
            let next = Laid::new(strand, &room);
            top = next.bottom + RADIUS * 0.6;
            laid.push(next);
        }
        let right = laid.iter().map(|laid| laid.reach).fold(120.0, f64::max) + 4.0;
        let mut markup =
            Markup::picture(&self.caption, [0.0, 0.0, right.min(width + 4.0), top.max(1.0)], 1.0);
        for (part, laid) in laid.iter().enumerate() {
            Painter { theme: self.theme, part }.thread(&mut markup, laid);
        }
        markup.finish()
    }
}
