//! Walking along a wrong memo with the fewest and likeliest slips.

use super::{MemoFault, MemoSlip};
use cube::{Orbit, Perm, Sticker};
use std::cmp::Reverse;
use std::collections::{BTreeMap, BinaryHeap, HashSet};

/// After so many steps the walk takes the best next step only. Memos that are wrong throughout come to it.
const PATIENCE: usize = 20_000;

/// What it costs to begin another cycle before that of the buffer, and in the middle of it.
const OTHER_FIRST: u32 = 1;
const OTHER_BETWEEN: u32 = 5;

/// Where the solver is: how many letters are read, and what has been traced.
#[derive(Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Debug)]
struct Place {
    read: usize,
    /// The place that is looked at next; nothing when the cycle is closed.
    at: Option<Sticker>,
    /// The sticker at which a cycle without the buffer began.
    began: Option<Sticker>,
    /// Where the buffer's cycle is to be gone on with, once one that was begun before its end is closed.
    waits: Option<Sticker>,
    /// The last letter.
    last: Option<Sticker>,
    /// Pieces that are right or have been met, as bits.
    met: u32,
}

struct Walk<'a> {
    orbit: Orbit,
    seen: &'a Perm,
    buffer: Sticker,
    letters: &'a [Sticker],
}

/// A step with what it costs: the less, the likelier that the solver meant it.
type Next = (u32, Option<MemoSlip>, Place);

/// The slips of a memo that does not solve.
pub(super) fn slips(orbit: Orbit, seen: &Perm, buffer: Sticker, letters: &[Sticker]) -> Vec<MemoSlip> {
    let walk = Walk { orbit, seen, buffer, letters };
    let mut reached: Vec<(Place, Option<MemoSlip>, usize)> = vec![(walk.start(), None, usize::MAX)];
    let mut open = BinaryHeap::from([Reverse((0u32, 0usize))]);
    let mut closed: HashSet<Place> = HashSet::new();
    let mut steps = 0;
    while let Some(Reverse((cost, number))) = open.pop() {
        let place = reached[number].0;
        // Where only the best step is taken there is no other way to go on.
        if steps < PATIENCE && !closed.insert(place) {
            continue;
        }
        if place.read > letters.len() {
            return told(&reached, number);
        }
        let mut next = walk.next(place);
        steps += 1;
        if steps > PATIENCE {
            // Only the best step from where the walk has come farthest.
            next.sort_by_key(|(cost, _, place)| (*cost, *place));
            next.truncate(1);
            open.clear();
        }
        for (more, slip, place) in next {
            reached.push((place, slip, number));
            open.push(Reverse((cost + more, reached.len() - 1)));
        }
    }
    Vec::new()
}

/// Whether letters are what someone writes who follows the cycles: without a slip, and each cycle to its end before the next.
/// Other letters may solve too.
pub(super) fn follows_cycles(orbit: Orbit, seen: &Perm, buffer: Sticker, letters: &[Sticker]) -> bool {
    let walk = Walk { orbit, seen, buffer, letters };
    let mut place = walk.start();
    while place.read <= letters.len() {
        let next =
            walk.next(place).into_iter().find(|(cost, slip, _)| slip.is_none() && *cost <= OTHER_FIRST);
        let Some((_, _, next)) = next else { return false };
        place = next;
    }
    true
}

fn told(reached: &[(Place, Option<MemoSlip>, usize)], mut number: usize) -> Vec<MemoSlip> {
    let mut slips = Vec::new();
    while let Some((_, slip, before)) = reached.get(number) {
        slips.extend(slip.clone());
        number = *before;
    }
    slips.reverse();
    slips
}

impl Walk<'_> {
    fn start(&self) -> Place {
        let solved = Sticker::all().filter(|&sticker| self.seen.at(sticker) == sticker);
        let met = solved.fold(self.bit(self.buffer), |met, sticker| met | self.bit(sticker));
        self.settled(Place { read: 0, at: Some(self.buffer), began: None, waits: None, last: None, met })
    }

    fn bit(&self, sticker: Sticker) -> u32 {
        1 << self.orbit.piece(sticker).index()
    }

    fn same(&self, a: Sticker, b: Sticker) -> bool {
        self.orbit.same_piece(a, b)
    }

    /// Whether a piece comes up where the buffer's cycle is followed on from a place.
    fn is_ahead(&self, mut at: Sticker, letter: Sticker) -> bool {
        for _ in self.orbit.all_pieces() {
            at = self.seen.at(at);
            if self.same(at, letter) || self.same(at, self.buffer) {
                return self.same(at, letter);
            }
        }
        false
    }

    /// For a letter of a piece that is done with: the one that dealt with it, or the scramble; else it only is not what is seen.
    fn solved_already(&self, at: usize) -> MemoFault {
        let earlier = super::earlier(self.orbit, self.letters, at);
        let was_right = self.letters.get(at).is_some_and(|&letter| self.seen.at(letter) == letter);
        match earlier {
            None if !was_right => MemoFault::OtherLetter,
            _ => MemoFault::SolvedAlready { earlier },
        }
    }

    /// Pieces that no letter has dealt with, by their reference stickers.
    fn open(&self, met: u32) -> Vec<Sticker> {
        let pieces = self.orbit.all_pieces().map(|piece| self.orbit.reference(piece));
        pieces.filter(|&sticker| self.bit(sticker) & met == 0).collect()
    }

    /// The cycle of the buffer closes by itself when the buffer's piece comes up.
    fn settled(&self, mut place: Place) -> Place {
        if place.began.is_none() && place.at.is_some_and(|at| self.same(self.seen.at(at), self.buffer)) {
            place.at = None;
        }
        place
    }

    /// After following to a sticker, whichever piece should have come.
    fn followed(&self, place: Place, to: Sticker, met: Sticker) -> Place {
        self.settled(Place { at: Some(to), last: Some(to), met: place.met | self.bit(met), ..place })
    }

    /// After the last letter of a cycle without the buffer: as far as it turned its piece, it turned what lies at the buffer too.
    fn closed(&self, mut place: Place, last: Sticker) -> Place {
        if let (Some(began), Some(waits)) = (place.began, place.waits) {
            let by = (0..self.orbit.stickers_per_piece())
                .find(|&clockwise| self.orbit.turned(began, clockwise) == last);
            place.waits = Some(self.orbit.turned(waits, by.unwrap_or(0)));
        }
        Self::left(Place { last: Some(last), ..place })
    }

    /// The cycle that was followed is done with; the buffer's is gone on with, if it waits.
    const fn left(place: Place) -> Place {
        Place { at: place.waits, began: None, waits: None, ..place }
    }

    fn next(&self, place: Place) -> Vec<Next> {
        let Some(&letter) = self.letters.get(place.read) else { return self.end(place) };
        let read = Place { read: place.read + 1, ..place };
        let mut next = match place.at {
            Some(at) => self.along(place, read, at, letter),
            None => self.between(place, read, letter),
        };
        // One step a place: of two that lead to the same the cheaper one.
        let mut best: BTreeMap<Place, (u32, Option<MemoSlip>)> = BTreeMap::new();
        for (cost, slip, place) in next.drain(..) {
            if best.get(&place).is_none_or(|(other, _)| cost < *other) {
                best.insert(place, (cost, slip));
            }
        }
        best.into_iter().map(|(place, (cost, slip))| (cost, slip, place)).collect()
    }

    /// Within a cycle.
    fn along(&self, place: Place, read: Place, at: Sticker, letter: Sticker) -> Vec<Next> {
        let due = self.seen.at(at);
        let closes = place.began.is_some_and(|began| self.same(began, due));
        let slip = |fault: MemoFault| {
            Some(MemoSlip {
                fault,
                position: place.read,
                letter: Some(letter),
                expected: vec![due],
                place: Some(at),
            })
        };
        let onward = |to: Sticker| if closes { self.closed(read, to) } else { self.followed(read, to, due) };
        if letter == due {
            return vec![(0, None, onward(due))];
        }
        let mut next = Vec::new();
        // Another cycle may be begun before the buffer's is at its end.
        if place.began.is_none() && self.bit(letter) & place.met == 0 && !self.is_ahead(at, letter) {
            let cost = if at == self.buffer { OTHER_FIRST } else { OTHER_BETWEEN };
            let met = read.met | self.bit(letter);
            let begun = Place {
                at: Some(letter),
                began: Some(letter),
                waits: Some(at),
                last: Some(letter),
                met,
                ..read
            };
            next.push((cost, None, begun));
        }
        if self.same(letter, due) {
            let in_place = closes && place.began == Some(at);
            let fault = if in_place { MemoFault::TurnedWrongWay } else { MemoFault::WrongSticker };
            let goes_on = |&at: &usize| self.letters.get(at) == Some(&self.seen.at(self.letters[at - 1]));
            let followed = match (read.read..self.letters.len()).take_while(goes_on).last() {
                Some(last) if !closes => MemoFault::FollowedFromWrongSticker { last },
                _ => fault.clone(),
            };
            next.push((20, slip(followed), onward(letter)));
            next.push((21, slip(fault), onward(due)));
            return next;
        }
        if self.same(letter, self.buffer) {
            next.push((20, slip(MemoFault::BufferLetter), read));
            next.push((26, slip(MemoFault::BufferLetter), onward(due)));
            return next;
        }
        let follows = !closes && self.seen.at(due) != due;
        let after_due = self.seen.at(due);
        let is_last = if let Some(began) = place.began {
            self.same(began, after_due)
        } else {
            self.same(self.buffer, after_due)
        };
        let new = self.bit(letter) & place.met == 0;
        // The letter begins a new cycle: this one was closed early.
        if new && (closes || is_last) {
            let fault = slip(MemoFault::ClosedEarly);
            let met = place.met | self.bit(due);
            next.push((24, fault, Self::left(Place { met, ..place })));
        }
        // Back at the piece where the cycle began, before its time.
        if place.began.is_some_and(|began| self.same(began, letter)) {
            next.push((23, slip(MemoFault::ClosedEarly), self.closed(read, letter)));
        }
        // The letter is the one after the one that is due.
        if follows && letter == after_due {
            let skipped = self.followed(place, due, due);
            next.push((24, slip(MemoFault::LetterMissing), skipped));
        }
        let from_elsewhere = self.seen.inverse().at(letter);
        let looked_at = |&&other: &&Sticker| from_elsewhere == other;
        let known =
            from_elsewhere == self.buffer || self.letters[..place.read].iter().find(looked_at).is_some();
        if new {
            let fault = if known {
                MemoFault::FollowedFromElsewhere { place: from_elsewhere }
            } else {
                MemoFault::OtherLetter
            };
            let cost = if known { 22 } else { 28 };
            next.push((cost, slip(fault.clone()), onward(due)));
            next.push((cost + 4, slip(fault), self.followed(read, letter, letter)));
        } else {
            let fault =
                if known && self.bit(from_elsewhere) & place.met != 0 && self.seen.at(letter) != letter {
                    MemoFault::FollowedFromElsewhere { place: from_elsewhere }
                } else {
                    self.solved_already(place.read)
                };
            next.push((24, slip(fault.clone()), onward(due)));
            next.push((24, slip(fault), read));
        }
        next
    }

    /// Where a new cycle is to begin, or the memo to end.
    fn between(&self, place: Place, read: Place, letter: Sticker) -> Vec<Next> {
        let expected: Vec<Sticker> =
            self.open(place.met).into_iter().flat_map(|piece| self.orbit.stickers_from(piece)).collect();
        let slip = |fault: MemoFault| {
            Some(MemoSlip { fault, position: place.read, letter: Some(letter), expected, place: None })
        };
        if self.bit(letter) & place.met == 0 {
            let met = read.met | self.bit(letter);
            return vec![(
                0,
                None,
                Place { at: Some(letter), began: Some(letter), last: Some(letter), met, ..read },
            )];
        }
        if self.same(letter, self.buffer) {
            return vec![(20, slip(MemoFault::BufferLetter), read)];
        }
        if self.seen.at(letter) == letter {
            // Whoever begins at a solved piece finds it there once more and writes it twice.
            let again = self.letters.get(read.read).is_some_and(|&next| self.same(next, letter));
            let read = if again { Place { read: read.read + 1, ..read } } else { read };
            return vec![(20, slip(MemoFault::BreakOnSolved), read)];
        }
        if place.last.is_some_and(|last| self.seen.at(last) == letter) {
            return vec![(18, slip(MemoFault::ClosedLate), Place { last: Some(letter), ..read })];
        }
        vec![(22, slip(self.solved_already(place.read)), read)]
    }

    /// After the last letter.
    fn end(&self, place: Place) -> Vec<Next> {
        let finished = Place { read: self.letters.len() + 1, ..place };
        let mut open = self.open(place.met);
        let slip = |fault: MemoFault, expected: Vec<Sticker>| {
            Some(MemoSlip { fault, position: self.letters.len(), letter: None, expected, place: place.at })
        };
        let Some(at) = place.at else {
            if open.is_empty() {
                return vec![(0, None, finished)];
            }
            let expected = open.iter().flat_map(|&piece| self.orbit.stickers_from(piece)).collect();
            let cost = 20 + 3 * open.len() as u32;
            return vec![(cost, slip(MemoFault::LeftOut { pieces: open }, expected), finished)];
        };
        let due = self.seen.at(at);
        let closes = place.began.is_some_and(|began| self.same(began, due));
        let after = self.seen.at(due);
        let is_last = self.same(after, place.began.unwrap_or(self.buffer));
        if closes || is_last {
            let met = place.met | self.bit(due);
            let closed = Self::left(Place { met, ..place });
            return vec![(24, slip(MemoFault::ClosedEarly, vec![due]), closed)];
        }
        open.retain(|&piece| self.bit(piece) & place.met == 0);
        let cost = 20 + 3 * open.len() as u32;
        vec![(cost, slip(MemoFault::LeftOut { pieces: open }, vec![due]), finished)]
    }
}
