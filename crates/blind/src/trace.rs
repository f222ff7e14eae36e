//! The trace: from the buffer to the place where its piece belongs, and on, until every piece has been met.

use cube::{Orbit, Perm, Piece, Sticker};

/// How the cycles that do not hold the buffer are broken into.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Breaks {
    /// Stickers in the order in which they are tried; the first one whose piece is still unsolved begins the cycle.
    pub order: [Sticker; 24],
    /// What memorising a sticker costs; if given, each cycle begins where its letters together cost least, and
    /// `order` decides only among equals and which cycle comes first.
    pub cost: Option<[u32; 24]>,
}

/// What a letter of the memo is there for.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
pub enum Role {
    /// The sticker that lies at the place looked at belongs here.
    Follow,
    /// A new cycle begins here, at an unsolved piece.
    Break,
    /// The piece where the cycle began has come up: its place is memorised once more and the cycle is closed.
    Close,
}

/// One letter of the memo.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Step {
    /// What is memorised.
    pub target: Sticker,
    /// The place that was looked at; for a break the place that the letter before led to no longer counts, and this
    /// is the target itself.
    pub place: Sticker,
    /// What the letter is there for.
    pub role: Role,
}

/// How the buffer's piece was found.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
pub enum BufferIs {
    /// In its place, the right way round.
    Solved,
    /// In its place, but turned; the other pieces' turning puts it right.
    Turned,
    /// Somewhere else.
    Away,
}

/// A cycle of the trace.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Cycle {
    /// Which letters of the memo belong to it.
    pub letters: std::ops::Range<usize>,
    /// How many pieces it moves, the buffer's included where it holds it; 1 for a piece turned in its place.
    pub pieces: usize,
    /// Whether it holds the buffer.
    pub holds_buffer: bool,
    /// Whether it is closed at another sticker of the piece than it began at.
    pub turned: bool,
}

/// The most letters that a kind can take: 11 flipped edges.
const MOST: usize = 24;

/// The memo of one kind of piece and everything that was seen on the way.
///
/// ```
/// use blind::{Letters, Trace, breaks_by_letter};
/// use cube::{Algorithm, Orbit, Size, State};
/// let turns = Algorithm::parse("R U' F2 R' U F' U2 R F'", Size::TWO).unwrap().flatten();
/// let state = State::solved(Size::TWO).after(&turns);
/// let letters = Letters::default();
/// let buffer = Orbit::Corner.sticker("LUB").unwrap();
/// let trace = Trace::new(Orbit::Corner, state.orbit(Orbit::Corner), buffer, &breaks_by_letter(&letters));
/// assert_eq!(letters.spell(&trace.targets()), "LCBOBKV");
/// ```
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Trace {
    orbit: Orbit,
    buffer: Sticker,
    seen: Perm,
    steps: [Step; MOST],
    length: u8,
}

/// Breaks at the first unsolved sticker in the order of the letters.
pub fn breaks_by_letter(letters: &crate::Letters) -> Breaks {
    Breaks { order: letters.order(), cost: None }
}

impl Trace {
    /// Traces one kind of piece. `seen` says for each place which sticker lies there, named as held when solved.
    pub fn new(orbit: Orbit, seen: &Perm, buffer: Sticker, breaks: &Breaks) -> Self {
        let nothing = Step { target: buffer, place: buffer, role: Role::Follow };
        let mut trace = Self { orbit, buffer, seen: *seen, steps: [nothing; MOST], length: 0 };
        let pieces = orbit.piece_table();
        let mut met = 1u32 << pieces[buffer.index()];
        for sticker in Sticker::all() {
            if seen.at(sticker) == sticker {
                met |= 1 << pieces[sticker.index()];
            }
        }
        trace.follow(buffer, pieces[buffer.index()], &mut met);
        let mut next = 0;
        while next < breaks.order.len() {
            let candidate = breaks.order[next];
            next += 1;
            if met & (1 << pieces[candidate.index()]) != 0 {
                continue;
            }
            let begin = match &breaks.cost {
                None => candidate,
                Some(cost) => cheapest(seen, candidate, pieces, orbit, cost, &breaks.order),
            };
            let piece = pieces[begin.index()];
            met |= 1 << piece;
            trace.push(Step { target: begin, place: begin, role: Role::Break });
            let last = trace.follow(begin, piece, &mut met);
            trace.push(Step { target: seen.at(last), place: last, role: Role::Close });
        }
        trace
    }

    /// Memorises from a place on until a sticker of `piece` comes up; the place where it lies.
    fn follow(&mut self, from: Sticker, piece: u8, met: &mut u32) -> Sticker {
        let pieces = self.orbit.piece_table();
        let mut place = from;
        loop {
            let target = self.seen.at(place);
            let number = pieces[target.index()];
            if number == piece {
                return place;
            }
            *met |= 1 << number;
            self.push(Step { target, place, role: Role::Follow });
            place = target;
        }
    }

    fn push(&mut self, step: Step) {
        if let Some(slot) = self.steps.get_mut(self.length as usize) {
            *slot = step;
            self.length += 1;
        }
    }

    /// The kind of piece.
    pub const fn orbit(&self) -> Orbit {
        self.orbit
    }

    /// The buffer.
    pub const fn buffer(&self) -> Sticker {
        self.buffer
    }

    /// What was traced: for each place, which sticker lies there.
    pub const fn seen(&self) -> &Perm {
        &self.seen
    }

    /// The letters of the memo in order.
    pub fn steps(&self) -> &[Step] {
        &self.steps[..self.length as usize]
    }

    /// The targets in order.
    pub fn targets(&self) -> Vec<Sticker> {
        self.steps().iter().map(|step| step.target).collect()
    }

    /// How many letters there are.
    pub const fn len(&self) -> usize {
        self.length as usize
    }

    /// Whether there is nothing to memorise.
    pub const fn is_empty(&self) -> bool {
        self.length == 0
    }

    /// Whether the number of letters is odd.
    pub const fn is_odd(&self) -> bool {
        self.length % 2 == 1
    }

    /// How the buffer's piece was found.
    pub fn buffer_is(&self) -> BufferIs {
        let there = self.seen.at(self.buffer);
        if there == self.buffer {
            BufferIs::Solved
        } else if self.orbit.piece(there) == self.orbit.piece(self.buffer) {
            BufferIs::Turned
        } else {
            BufferIs::Away
        }
    }

    /// Pieces that are in their place and right, the buffer's not counted, by their reference stickers.
    pub fn solved(&self) -> Vec<Sticker> {
        self.others().filter(|&sticker| self.seen.at(sticker) == sticker).collect()
    }

    /// Pieces that are in their place but turned, the buffer's not counted, by their reference stickers.
    pub fn turned(&self) -> Vec<Sticker> {
        self.others()
            .filter(|&sticker| {
                let there = self.seen.at(sticker);
                there != sticker && self.orbit.piece(there) == self.orbit.piece(sticker)
            })
            .collect()
    }

    fn others(&self) -> impl Iterator<Item = Sticker> + '_ {
        self.orbit
            .all_pieces()
            .map(|piece| self.orbit.reference(piece))
            .filter(|&sticker| !crate::letters::same_piece(self.orbit, sticker, self.buffer))
    }

    /// The cycles in the order of the memo. A buffer piece that is in its place has none.
    pub fn cycles(&self) -> Vec<Cycle> {
        let steps = self.steps();
        let mut cycles = Vec::new();
        let first = steps.iter().position(|step| step.role == Role::Break).unwrap_or(steps.len());
        if first > 0 {
            let last = steps[first - 1].target;
            let turned = self.seen.at(last) != self.buffer;
            cycles.push(Cycle { letters: 0..first, pieces: first + 1, holds_buffer: true, turned });
        }
        let mut start = first;
        while start < steps.len() {
            let end = steps[start..]
                .iter()
                .position(|step| step.role == Role::Close)
                .map_or(steps.len(), |offset| start + offset + 1);
            let turned = steps[start].target != steps[end - 1].target;
            cycles.push(Cycle { letters: start..end, pieces: end - start - 1, holds_buffer: false, turned });
            start = end;
        }
        cycles
    }

    /// Pieces that are not right and that no letter before this one has dealt with, by their reference stickers;
    /// the buffer's not counted. A piece whose cycle has begun counts as dealt with.
    pub fn unsolved_before(&self, letter: usize) -> Vec<Sticker> {
        let done: Vec<Piece> =
            self.steps().iter().take(letter).map(|step| self.orbit.piece(step.target)).collect();
        self.others()
            .filter(|&sticker| self.seen.at(sticker) != sticker && !done.contains(&self.orbit.piece(sticker)))
            .collect()
    }
}

/// The sticker at which a cycle is broken into at least cost; `order` decides among equals.
fn cheapest(
    seen: &Perm,
    member: Sticker,
    pieces: &[u8; 24],
    orbit: Orbit,
    cost: &[u32; 24],
    order: &[Sticker; 24],
) -> Sticker {
    let mut in_cycle = 0u32;
    let mut place = member;
    while in_cycle & (1 << pieces[place.index()]) == 0 {
        in_cycle |= 1 << pieces[place.index()];
        place = seen.at(place);
    }
    let whole = |begin: Sticker| {
        let mut sum = cost[begin.index()];
        let mut place = begin;
        for _ in 0..=orbit.pieces() {
            place = seen.at(place);
            sum = sum.saturating_add(cost[place.index()]);
            if pieces[place.index()] == pieces[begin.index()] {
                break;
            }
        }
        sum
    };
    order
        .iter()
        .copied()
        .filter(|sticker| in_cycle & (1 << pieces[sticker.index()]) != 0)
        .min_by_key(|&sticker| whole(sticker))
        .unwrap_or(member)
}
