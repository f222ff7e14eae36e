//! The trace: from the buffer to the place where its piece belongs, and on, until every piece has been met.

use crate::alike;
use crate::step::{Role, Step};
use cube::{Claim, NotProven, Orbit, Perm, Piece, Sticker};

/// How the cycles that do not hold the buffer are broken into.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Breaks {
    /// Stickers in the order in which they are tried; the first one whose piece is still unsolved begins the cycle.
    pub order: [Sticker; 24],
    /// What memorising a sticker costs; if given, each cycle begins where its letters together cost least, and
    /// `order` decides only among equals and which cycle comes first. Pieces that look alike go by `order` here.
    pub cost: Option<[u32; 24]>,
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
    /// How many pieces it moves, the buffer's included where it holds it; 1 for a piece turned in its place. Pieces that
    /// look alike and are met along one way, however often that comes back to a colour, are one cycle.
    pub pieces: usize,
    /// Whether it holds the buffer.
    pub holds_buffer: bool,
    /// Whether it is closed at another sticker of the piece than it began at.
    pub turned: bool,
}

/// The most letters that a kind can take: 24 wings with the buffer's at home, the others in ten exchanges of two and one
/// cycle of three; every such cycle takes a letter more than it has pieces.
const MOST: usize = 34;

/// The memo of one kind of piece and everything that was seen on the way; proven to solve by exchanging pieces.
///
/// ```
/// use blind::{Letters, Trace, breaks_by_letter};
/// use cube::{Algorithm, Orbit, Size, State};
/// let turns = Algorithm::parse("R U' F2 R' U F' U2 R F'", Size::TWO).unwrap().flatten();
/// let state = State::solved(Size::TWO).after(&turns);
/// let letters = Letters::default();
/// let buffer = Orbit::Corner.sticker("LUB").unwrap();
/// let trace =
///     Trace::new(Orbit::Corner, state.orbit(Orbit::Corner), buffer, &breaks_by_letter(&letters)).unwrap();
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

/// The pieces of a kind after letters are carried out: each exchanges the buffer's piece with that of its sticker.
/// Letters of the buffer's own piece do nothing.
pub fn exchanged(seen: &Perm, orbit: Orbit, buffer: Sticker, letters: impl Iterator<Item = Sticker>) -> Perm {
    // Exchanges keep a permutation one.
    Perm::new(exchange(*seen.table(), orbit, buffer, letters)).unwrap_or(*seen)
}

fn exchange(
    table: [u8; 24],
    orbit: Orbit,
    buffer: Sticker,
    letters: impl Iterator<Item = Sticker>,
) -> [u8; 24] {
    // Room for 32, so that no index need be checked.
    let mut room = [0; 32];
    room[..24].copy_from_slice(&table);
    if orbit.stickers_per_piece() == 1 {
        letters.for_each(|letter| room.swap(buffer.index() % 32, letter.index() % 32));
    } else {
        let (pieces, clockwise) = (orbit.piece_table(), orbit.clockwise_table());
        for letter in letters.filter(|letter| pieces[letter.index()] != pieces[buffer.index()]) {
            let (mut a, mut b) = (buffer.index(), letter.index());
            for _ in 0..orbit.stickers_per_piece() {
                room.swap(a % 32, b % 32);
                (a, b) = (usize::from(clockwise[a]), usize::from(clockwise[b]));
            }
        }
    }
    let mut table = table;
    table.copy_from_slice(&room[..24]);
    table
}

/// Whether every piece of a kind is right: at home, or where pieces look alike on the face of its colour.
pub fn is_right(orbit: Orbit, seen: &Perm) -> bool {
    is_right_in(orbit, seen.table())
}

fn is_right_in(orbit: Orbit, table: &[u8; 24]) -> bool {
    if orbit.looks_alike() {
        // Four stickers a face, one face after another.
        table.iter().zip(Perm::IDENTITY.table()).all(|(there, place)| there / 4 == place / 4)
    } else {
        table == Perm::IDENTITY.table()
    }
}

impl Trace {
    /// Traces one kind of piece. `seen` says for each place which sticker lies there, named as held when solved.
    ///
    /// Pieces that look alike are found by their colour, and of all memos that solve them this is one of the fewest
    /// letters; see [`Trace::alternatives`].
    ///
    /// # Errors
    /// [`NotProven`] when exchanging the pieces by the letters does not solve them, which is a fault of the program.
    pub fn new(orbit: Orbit, seen: &Perm, buffer: Sticker, breaks: &Breaks) -> Result<Self, NotProven> {
        if orbit.looks_alike() {
            return Self::of_alike(orbit, seen, buffer, &breaks.order, None);
        }
        let mut trace = Self { orbit, buffer, seen: *seen, steps: [Step::NONE; MOST], length: 0 };
        trace.walk(breaks);
        trace.proven()
    }

    /// Traces pieces that look alike, with what pairs of letters cost where that chooses among places that do as well.
    ///
    /// # Errors
    /// As [`Trace::new`].
    pub(crate) fn of_alike(
        orbit: Orbit,
        seen: &Perm,
        buffer: Sticker,
        order: &[Sticker; 24],
        costs: Option<alike::PairCosts<'_>>,
    ) -> Result<Self, NotProven> {
        let mut trace = Self { orbit, buffer, seen: *seen, steps: [Step::NONE; MOST], length: 0 };
        alike::trace(seen, buffer, order, costs, &mut |step| trace.push(step));
        trace.proven()
    }

    /// Exchanges the pieces by the letters and looks whether they are then right.
    fn proven(self) -> Result<Self, NotProven> {
        let targets = self.steps().iter().map(|step| step.target);
        let end = exchange(*self.seen.table(), self.orbit, self.buffer, targets);
        let fits = usize::from(self.length) <= MOST;
        NotProven::unless(fits && is_right_in(self.orbit, &end), Claim::Memo).map(|()| self)
    }

    fn walk(&mut self, breaks: &Breaks) {
        let (orbit, buffer, seen) = (self.orbit, self.buffer, self.seen);
        let pieces = orbit.piece_table();
        let mut met = 1u32 << pieces[buffer.index()];
        let all = (1u32 << orbit.pieces()) - 1;
        self.follow(buffer, pieces[buffer.index()], &mut met);
        for &candidate in &breaks.order {
            if met == all {
                break;
            }
            if met & (1 << pieces[candidate.index()]) != 0 {
                continue;
            }
            if seen.at(candidate) == candidate {
                met |= 1 << pieces[candidate.index()];
                continue;
            }
            let begin = match &breaks.cost {
                None => candidate,
                Some(cost) => cheapest(&seen, candidate, pieces, orbit, cost, &breaks.order),
            };
            let piece = pieces[begin.index()];
            met |= 1 << piece;
            let lies = seen.at(begin);
            if pieces[lies.index()] == piece {
                self.push(Step { target: begin, place: begin, role: Role::TurnedFirst });
                self.push(Step { target: lies, place: begin, role: Role::TurnedSecond });
                continue;
            }
            self.push(Step { target: begin, place: begin, role: Role::Break });
            let last = self.follow(begin, piece, &mut met);
            self.push(Step { target: seen.at(last), place: last, role: Role::Close });
        }
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

    /// More steps than there can be are counted and not kept; [`Trace::proven`] refuses them.
    fn push(&mut self, step: Step) {
        if let Some(slot) = self.steps.get_mut(usize::from(self.length)) {
            *slot = step;
        }
        self.length = self.length.saturating_add(1);
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
        &self.steps[..usize::from(self.length).min(MOST)]
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

    /// Whether the piece at a place is right there: at home, or where pieces look alike of the face's colour.
    pub fn is_right_at(&self, place: Sticker) -> bool {
        let there = self.seen.at(place);
        there == place || (self.orbit.looks_alike() && there.face() == place.face())
    }

    /// How the buffer's piece was found; of pieces that look alike, whether one of its colour lies there.
    pub fn buffer_is(&self) -> BufferIs {
        let there = self.seen.at(self.buffer);
        if self.is_right_at(self.buffer) {
            BufferIs::Solved
        } else if self.orbit.piece(there) == self.orbit.piece(self.buffer) {
            BufferIs::Turned
        } else {
            BufferIs::Away
        }
    }

    /// Pieces that are in their place and right, the buffer's not counted, by their reference stickers.
    pub fn solved(&self) -> Vec<Sticker> {
        self.others().filter(|&sticker| self.is_right_at(sticker)).collect()
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

    /// Where pieces look alike: the other targets that a letter could have had, with no letter more in the whole memo,
    /// in the order in which the trace prefers them. Nothing for pieces that are told apart, where only breaks are
    /// chosen.
    ///
    /// A place on the same face is another target for the same colour; where a new part begins, any place of a part
    /// that no letter has dealt with.
    pub fn alternatives(&self, letter: usize, order: &[Sticker; 24]) -> Vec<Sticker> {
        if self.orbit.looks_alike() {
            alike::alternatives(&self.seen, self.buffer, order, self.steps(), letter)
        } else {
            Vec::new()
        }
    }

    /// Where pieces look alike: places that want the colour of a letter too, but with which the whole memo would have a letter
    /// more.
    pub fn costlier(&self, letter: usize, order: &[Sticker; 24]) -> Vec<Sticker> {
        if self.orbit.looks_alike() {
            alike::costlier(&self.seen, self.buffer, order, self.steps(), letter)
        } else {
            Vec::new()
        }
    }

    fn others(&self) -> impl Iterator<Item = Sticker> + '_ {
        self.orbit
            .all_pieces()
            .map(|piece| self.orbit.reference(piece))
            .filter(|&sticker| !self.orbit.same_piece(sticker, self.buffer))
    }

    /// The cycles in the order of the memo. A buffer piece that is in its place has none.
    pub fn cycles(&self) -> Vec<Cycle> {
        let steps = self.steps();
        let mut cycles = Vec::new();
        let first = steps.iter().position(|step| step.role.begins()).unwrap_or(steps.len());
        if first > 0 {
            let last = steps[first - 1].target;
            let turned = !self.orbit.looks_alike() && self.seen.at(last) != self.buffer;
            cycles.push(Cycle { letters: 0..first, pieces: first + 1, holds_buffer: true, turned });
        }
        let mut start = first;
        while start < steps.len() {
            let end = steps[start..]
                .iter()
                .position(|step| step.role.ends())
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
            .filter(|&sticker| !self.is_right_at(sticker) && !done.contains(&self.orbit.piece(sticker)))
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

#[cfg(test)]
mod tests {
    use super::*;

    /// What the guard stands for: letters that do not solve are no trace.
    #[test]
    fn letters_that_do_not_solve_are_no_trace() {
        let breaks = breaks_by_letter(&crate::Letters::default());
        let sticker = |number: u8| Sticker::new(number).expect("below 24");
        for orbit in Orbit::ALL {
            let mut table = *Perm::IDENTITY.table();
            // A cycle of three pieces, the buffer's among them.
            let [a, b, c] = [0, 9, 18].map(sticker);
            for ((a, b), c) in orbit.stickers_from(a).zip(orbit.stickers_from(b)).zip(orbit.stickers_from(c))
            {
                (table[a.index()], table[b.index()], table[c.index()]) =
                    (b.index() as u8, c.index() as u8, a.index() as u8);
            }
            let seen = Perm::new(table).expect("a permutation");
            let mut trace = Trace::new(orbit, &seen, a, &breaks).expect("it solves");
            assert_eq!(trace.len(), 2, "{orbit}");
            trace.length = 1;
            assert_eq!(trace.proven().unwrap_err().claim, Claim::Memo, "{orbit}");
        }
    }

    #[test]
    fn as_many_letters_as_there_are_are_kept() {
        // Ten exchanges of two wings and a cycle of three beside the buffer's, which is at home.
        let mut table = *Perm::IDENTITY.table();
        for pair in 0..10 {
            table.swap(1 + 2 * pair, 2 + 2 * pair);
        }
        table[21..24].rotate_left(1);
        let seen = Perm::new(table).expect("a permutation");
        let buffer = Sticker::all().next().expect("there are 24");
        let breaks = breaks_by_letter(&crate::Letters::default());
        let wing = Orbit::ALL[2];
        let trace = Trace::new(wing, &seen, buffer, &breaks).expect("it solves");
        assert_eq!(trace.len(), MOST);
        let mut longer = trace;
        longer.push(longer.steps[0]);
        assert!(longer.proven().is_err());
    }
}
