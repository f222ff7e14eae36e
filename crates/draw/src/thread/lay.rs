//! Where the beads of a thread lie: pairs kept together, wrapped into rows.

use super::{Bead, Item, Strand};

/// How far the returning thread reaches to the left of a row, of the radius.
pub(crate) const MARGIN: f64 = 0.5;
/// Between the beads of a pair, in pixels.
const CLOSE: f64 = 3.0;
/// Between one pair and the next, of the radius.
const APART: f64 = 0.86;
/// The breadth of a knot, of the radius.
pub(super) const KNOT: f64 = 1.7;
/// What the end of a thread needs, of the radius.
const TAIL: f64 = 1.3;
/// What the thread needs to turn back beside a row, of the radius.
const RETURN: f64 = 0.4;
/// From row to row, of the radius.
const PITCH: f64 = 2.66;
/// The height of the tag where a thread begins, and of the line that it stands on, in pixels.
pub(super) const TAG: f64 = 23.0;
const HEAD: f64 = 30.0;
/// A sign of a tag, in pixels.
const SIGN: f64 = 9.2;

/// Where a thread may lie, in pixels.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) struct Room {
    pub left: f64,
    pub right: f64,
    pub top: f64,
    pub radius: f64,
    pub paired: bool,
}

/// What joins a bead to the other of a piece that is turned in its place.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) enum Eye {
    None,
    First,
    Second,
}

/// A letter on its way into a row.
#[derive(Clone, Copy, Debug)]
struct Letter<'a> {
    bead: &'a Bead,
    knot: bool,
    eye: Eye,
    half: f64,
}

/// A bead in its place.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Placed<'a> {
    pub bead: &'a Bead,
    pub at: [f64; 2],
    /// Half its breadth, and the size of its letter.
    pub half: f64,
    pub size: f64,
    pub row: usize,
    /// The middle of the knot before it.
    pub(super) knot: Option<f64>,
    pub(super) eye: Eye,
}

/// The head of a thread: the tag with the buffer, and what is said beside it.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) struct TagLine {
    /// The tag: left, the middle of its height, its breadth (0: there is none).
    pub tag: [f64; 3],
    /// Where the words begin, and where they stand.
    pub words: [f64; 2],
}

/// A strand laid out in rows.
pub(crate) struct Laid<'a> {
    pub strand: &'a Strand,
    pub room: Room,
    pub head: TagLine,
    pub beads: Vec<Placed<'a>>,
    /// The beads of each cradle: first and last.
    pub(super) cradles: Vec<[usize; 2]>,
    pub rows: usize,
    /// How far down and to the right it reaches.
    pub bottom: f64,
    pub reach: f64,
}

impl<'a> Laid<'a> {
    /// Lays a strand out.
    pub fn new(strand: &'a Strand, room: &Room) -> Self {
        let radius = room.radius;
        let letters = letters(strand, radius);
        let mut laid = Self {
            strand,
            room: *room,
            head: head(strand, room),
            beads: Vec::with_capacity(letters.len()),
            cradles: Vec::new(),
            rows: 0,
            bottom: 0.0,
            reach: room.left,
        };
        // The thread that runs back under a row turns round beside it.
        let narrower = Room { right: room.right - RETURN * radius, ..*room };
        let mut rows = Rows { room: narrower, x: room.left, row: 0 };
        let each = if room.paired { 2 } else { 1 };
        let pairs: Vec<&[Letter<'_>]> = letters.chunks(each).collect();
        let mut from = 0;
        while from < pairs.len() {
            // Pairs that share a turned piece stay in one row.
            let mut to = from + 1;
            while to < pairs.len() && pairs[to - 1].last().is_some_and(|last| last.eye == Eye::First) {
                to += 1;
            }
            laid.put(&mut rows, &pairs[from..to], to == pairs.len());
            from = to;
        }
        laid.rows = if laid.beads.is_empty() { 0 } else { rows.row + 1 };
        laid.reach = laid.beads.iter().map(|bead| bead.at[0] + bead.half).fold(laid.reach, f64::max);
        let last = laid.beads.last().map_or(room.left, |bead| bead.at[0] + bead.half + TAIL * radius);
        let words = crate::svg::breadth(&strand.name) + crate::svg::breadth(&strand.note);
        laid.reach = laid
            .reach
            .max(last)
            .max(laid.head.words[0] + if strand.name.is_empty() { 0.0 } else { words * 8.0 });
        laid.bottom = match laid.beads.last() {
            Some(_) => {
                let eye = laid.beads.iter().any(|bead| bead.row == rows.row && bead.eye != Eye::None);
                let loose = strand.loose_end;
                let below = if eye || loose { 1.62 } else { 1.16 };
                first_row(room, has_head(strand)) + PITCH * radius * rows.row as f64 + below * radius
            }
            None => room.top + if has_head(strand) { HEAD } else { 0.0 },
        };
        laid
    }

    /// The frame of its head: left, top, breadth and height.
    pub fn heading(&self) -> [f64; 4] {
        let strand = self.strand;
        let said = |text: &str| if text.is_empty() { 0.0 } else { 8.9 * crate::svg::breadth(text) + 10.0 };
        let end = self.head.words[0] + said(&strand.name) + said(&strand.note);
        [self.room.left, self.room.top, end - self.room.left, HEAD]
    }

    /// Where the thread of a row lies.
    pub(super) fn level(&self, row: usize) -> f64 {
        first_row(&self.room, has_head(self.strand)) + PITCH * self.room.radius * row as f64
    }

    /// Puts pairs that belong together into a row, or each alone where no row has room for all.
    fn put(&mut self, rows: &mut Rows, pairs: &[&[Letter<'a>]], ends: bool) {
        let radius = rows.room.radius;
        let broad: f64 = pairs.iter().map(|pair| breadth_of(pair, radius)).sum::<f64>()
            + APART * radius * (pairs.len().saturating_sub(1)) as f64;
        let broad = broad + if ends { TAIL * radius } else { 0.0 };
        if rows.x > rows.room.left && rows.x + broad > rows.room.right {
            rows.row += 1;
            rows.x = rows.room.left;
        }
        if rows.x + broad > rows.room.right {
            match pairs {
                [] | [[] | [_]] => {}
                [[first @ .., last]] => {
                    let (first, last) = (first, std::slice::from_ref(last));
                    self.put(rows, &[first], false);
                    return self.put(rows, &[last], ends);
                }
                [first @ .., last] => {
                    self.put(rows, first, false);
                    return self.put(rows, &[last], ends);
                }
            }
        }
        for pair in pairs {
            let begin = self.beads.len();
            let mut x = rows.x;
            for (number, letter) in pair.iter().enumerate() {
                let knot = letter.knot.then(|| {
                    let middle = x + KNOT * radius / 2.0 + if number > 0 { CLOSE / 2.0 } else { -2.0 };
                    x += KNOT * radius;
                    middle
                });
                x += if number > 0 { CLOSE } else { 0.0 };
                let at = [x + letter.half, self.level(rows.row)];
                let (size, half) = letter.bead.letter_size(radius);
                let eye = letter.eye;
                self.beads.push(Placed { bead: letter.bead, at, half, size, row: rows.row, knot, eye });
                x += 2.0 * letter.half;
            }
            if self.beads.len() > begin {
                self.cradles.push([begin, self.beads.len() - 1]);
            }
            rows.x = x + APART * radius;
        }
    }
}

/// How far the rows are filled.
struct Rows {
    room: Room,
    x: f64,
    row: usize,
}

fn has_head(strand: &Strand) -> bool {
    !(strand.from.is_empty() && strand.name.is_empty() && strand.note.is_empty())
}

fn first_row(room: &Room, head: bool) -> f64 {
    let above = if head { HEAD + 4.0 } else { 0.35 * room.radius };
    room.top + above + room.radius
}

fn head(strand: &Strand, room: &Room) -> TagLine {
    let tag = if strand.from.is_empty() {
        0.0
    } else {
        (13.0 + SIGN * crate::svg::breadth(&strand.from)).max(34.0)
    };
    let middle = room.top + HEAD / 2.0 - 2.0;
    let words = [room.left + if tag > 0.0 { tag + 10.0 } else { 0.0 }, middle + 5.5];
    TagLine { tag: [room.left, middle, tag], words }
}

/// How broad a pair is with its knots.
fn breadth_of(pair: &[Letter<'_>], radius: f64) -> f64 {
    let one = |letter: &Letter<'_>| 2.0 * letter.half + if letter.knot { KNOT * radius } else { 0.0 };
    pair.iter().map(one).sum::<f64>() + CLOSE * pair.len().saturating_sub(1) as f64
}

/// The letters of a strand in turn, each with what is before it.
fn letters(strand: &Strand, radius: f64) -> Vec<Letter<'_>> {
    let mut out = Vec::new();
    let mut knot = false;
    for item in &strand.items {
        let mut push = |bead, eye| {
            let (_, half) = Bead::letter_size(bead, radius);
            out.push(Letter { bead, knot: std::mem::take(&mut knot), eye, half });
        };
        match item {
            Item::Knot => knot = true,
            Item::Bead(bead) => push(bead, Eye::None),
            Item::Loop(first, second) => {
                push(first, Eye::First);
                push(second, Eye::Second);
            }
        }
    }
    out
}
