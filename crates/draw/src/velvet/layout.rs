//! Where cube and threads lie on the velvet.

use super::Velvet;
use crate::thread::{Laid, Room, Strand};

/// The largest and the smallest radius of beads, in pixels; where that is too much, they shrink to the least.
const LARGEST: f64 = 48.0;
const SMALLEST: f64 = 17.5;
const LEAST: f64 = 12.0;
/// By how much they shrink at a time while all strands are to be seen.
const STEP: f64 = 0.5;
/// The frame is parted side by side from this breadth on, where it is so much broader than high.
const BROAD: f64 = 640.0;
const BROADER: f64 = 1.3;
/// The height of a closed strand's line, in pixels.
const LINE: f64 = 30.0;

/// Cube and strands in their places.
pub(super) struct Layout {
    /// Left, top, breadth, height.
    pub cube: [f64; 4],
    /// Where the link arrives, a strand.
    pub tags: Vec<Option<[f64; 2]>>,
    rooms: Vec<Room>,
    open: Vec<bool>,
}

/// The room for the threads.
#[derive(Clone, Copy)]
struct Side {
    left: f64,
    right: f64,
    top: f64,
    height: f64,
}

impl Layout {
    pub fn new(velvet: &Velvet) -> Self {
        let [broad, high] =
            velvet.frame.map(|side| if side.is_finite() { side.clamp(120.0, 10_000.0) } else { 600.0 });
        let keep = if velvet.keep.is_finite() { velvet.keep.clamp(0.0, 0.6 * high) } else { 0.0 };
        let beside = broad >= BROAD && broad >= BROADER * high;
        let pad = if broad < BROAD { 10.0 } else { 20.0 };
        let in_hand = velvet.open.or(velvet.at.map(|(part, _)| part)).unwrap_or(0);
        if velvet.strands.is_empty() {
            return Self {
                cube: [pad, pad + keep, broad - 2.0 * pad, high - 2.0 * pad - keep],
                tags: vec![],
                rooms: vec![],
                open: vec![],
            };
        }
        if beside {
            let cube = (high - pad).min(0.44 * broad);
            let side = Side {
                left: pad + cube + 0.035 * broad + 10.0,
                right: broad - pad - 6.0,
                top: pad + keep,
                height: high - 2.0 * pad - keep,
            };
            let (rooms, open, end) = fitted(velvet, side, in_hand, 0.9 * side.height);
            let spare = (side.top + side.height - end).max(0.0);
            let rooms = spread(rooms, &open, spare);
            let top = 0.5 * (high - cube);
            return Self::with([pad, top, cube, cube], rooms, open, velvet);
        }
        // One under the other: the thread takes what it needs, the cube the rest.
        let most = 0.56 * (high - keep);
        let side = Side { left: pad + 4.0, right: broad - 0.6 * pad, top: 0.0, height: most };
        let (rooms, open, end) = fitted(velvet, side, in_hand, most);
        let top = (high - end - 0.5 * pad).max(keep + 40.0);
        let rooms = rooms.into_iter().map(|room| Room { top: room.top + top, ..room }).collect();
        Self::with([pad, keep + 6.0, broad - 2.0 * pad, (top - keep - 10.0).max(40.0)], rooms, open, velvet)
    }

    fn with(cube: [f64; 4], rooms: Vec<Room>, open: Vec<bool>, velvet: &Velvet) -> Self {
        let tag = |((strand, room), open): ((_, &Room), &bool)| {
            let head = Laid::new(strand, room).head;
            (*open && head.tag[2] > 0.0).then_some([head.tag[0], head.tag[1]])
        };
        let tags = velvet.strands.iter().zip(&rooms).zip(&open).map(tag).collect();
        Self { cube, tags, rooms, open }
    }

    /// Whether a strand's beads are there.
    pub fn is_open(&self, part: usize) -> bool {
        self.open.get(part).copied().unwrap_or(false)
    }

    /// The strands in their places, as [`Velvet::shown_strands`] gives them.
    pub fn lay<'a>(&self, strands: &'a [Strand]) -> Vec<(usize, Laid<'a>)> {
        strands.iter().zip(&self.rooms).map(|(strand, room)| Laid::new(strand, room)).enumerate().collect()
    }
}

/// The largest beads with which all strands fit, or else the one in hand; where each lies, and how far down they reach.
fn fitted(velvet: &Velvet, side: Side, in_hand: usize, most: f64) -> (Vec<Room>, Vec<bool>, f64) {
    let all = vec![true; velvet.strands.len()];
    let mut radius = LARGEST;
    while radius >= SMALLEST {
        let (rooms, end) = stacked(velvet, side, &all, radius);
        if end - side.top <= most {
            return (rooms, all, end);
        }
        radius -= STEP;
    }
    let alone: Vec<bool> = (0..velvet.strands.len()).map(|part| part == in_hand).collect();
    radius = SMALLEST + 6.0;
    loop {
        let (rooms, end) = stacked(velvet, side, &alone, radius);
        if end - side.top <= most || radius <= LEAST {
            return (rooms, alone, end);
        }
        radius = (radius - 0.5).max(LEAST);
    }
}

/// The strands one under another; closed ones stand side by side as far as a line has room.
fn stacked(velvet: &Velvet, side: Side, open: &[bool], radius: f64) -> (Vec<Room>, f64) {
    let mut rooms = Vec::with_capacity(velvet.strands.len());
    let mut top = side.top;
    let mut x = side.left;
    let mut in_line = false;
    for (strand, open) in velvet.strands.iter().zip(open) {
        let room = Room { left: side.left, right: side.right, top, radius, paired: velvet.paired };
        if *open {
            if in_line {
                top += LINE;
                in_line = false;
            }
            let room = Room { top, ..room };
            top =
                Laid::new(strand, &room).bottom + if velvet.strands.len() > 1 { 0.25 * radius } else { 0.0 };
            rooms.push(room);
            x = side.left;
        } else {
            let room = Room { left: x, top, ..room };
            let [left, _, broad, _] = Laid::new(&strand.closed(), &room).heading();
            let end = left + broad;
            let room = if in_line && end > side.right {
                top += LINE;
                Room { left: side.left, top, ..room }
            } else {
                room
            };
            x = room.left + broad + 8.0;
            in_line = true;
            rooms.push(room);
        }
    }
    (rooms, top + if in_line { LINE } else { 0.0 })
}

/// Parts what room is left evenly: above, between and below.
fn spread(rooms: Vec<Room>, open: &[bool], spare: f64) -> Vec<Room> {
    let gaps = open.iter().filter(|open| **open).count();
    let each = spare / (gaps.max(1) as f64 + 1.0);
    let between = each.min(rooms.first().map_or(0.0, |room| 2.2 * room.radius));
    let mut down = 0.5 * (spare - between * gaps.saturating_sub(1) as f64);
    rooms
        .into_iter()
        .zip(open)
        .map(|(room, open)| {
            let moved = Room { top: room.top + down, ..room };
            down += if *open { between } else { 0.0 };
            moved
        })
        .collect()
}
