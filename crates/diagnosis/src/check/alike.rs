//! Walking along a wrong memo of pieces that look alike, with the fewest slips.
//!
//! Each letter exchanges the piece at the buffer with that at its place. A letter is right if it brings the colour in the
//! buffer to a place of that colour which still has another, or begins a new part at any such place once the buffer has its own
//! colour; every other letter is a slip. After a slip the walk goes on in each way that the solver may have meant it: the letter
//! as it stands, one that was due instead of it, one that is missing before it, or nothing.

use super::{MemoFault, MemoSlip};
use cube::{Face, Orbit, Perm, Sticker};
use std::cmp::Reverse;
use std::collections::{BinaryHeap, HashSet};

/// After so many steps the walk takes the best next step only.
const PATIENCE: usize = 20_000;

/// For each place the face whose colour lies there.
type Colours = [Face; Sticker::COUNT];

struct Walk<'a> {
    orbit: Orbit,
    buffer: Sticker,
    letters: &'a [Sticker],
}

/// What a step costs, what is wrong with it, how many letters are then read, and how the colours lie.
type Next = (u32, Option<MemoSlip>, usize, Colours);

/// The slips of a memo that does not solve.
pub(super) fn slips(orbit: Orbit, seen: &Perm, buffer: Sticker, letters: &[Sticker]) -> Vec<MemoSlip> {
    let walk = Walk { orbit, buffer, letters };
    let start =
        std::array::from_fn(|place| Sticker::new(place as u8).map_or(Face::U, |place| seen.at(place).face()));
    let mut reached: Vec<(Option<MemoSlip>, usize, usize, Colours)> = vec![(None, usize::MAX, 0, start)];
    let mut open = BinaryHeap::from([Reverse((0u32, Reverse(0usize), 0usize))]);
    let mut closed: HashSet<(usize, Colours)> = HashSet::new();
    let mut steps = 0;
    while let Some(Reverse((cost, _, number))) = open.pop() {
        let (_, _, read, colours) = reached[number];
        // Where only the best step is taken there is no other way to go on.
        if steps < PATIENCE && !closed.insert((read, colours)) {
            continue;
        }
        if read > letters.len() {
            return told(&reached, number);
        }
        let mut next = walk.next(read, &colours);
        steps += 1;
        if steps > PATIENCE {
            next.sort_by_key(|(cost, ..)| *cost);
            next.truncate(1);
            open.clear();
        }
        for (more, slip, read, colours) in next {
            reached.push((slip, number, read, colours));
            // Of two that cost the same the one that has come farther.
            open.push(Reverse((cost + more, Reverse(read), reached.len() - 1)));
        }
    }
    Vec::new()
}

fn told(reached: &[(Option<MemoSlip>, usize, usize, Colours)], mut number: usize) -> Vec<MemoSlip> {
    let mut slips = Vec::new();
    while let Some((slip, before, ..)) = reached.get(number) {
        slips.extend(slip.clone());
        number = *before;
    }
    slips.reverse();
    slips
}

impl Walk<'_> {
    /// The colour that is in the buffer.
    fn in_hand(&self, colours: &Colours) -> Face {
        colours[self.buffer.index()]
    }

    fn is_wrong(&self, place: Sticker, colours: &Colours) -> bool {
        place != self.buffer && colours[place.index()] != place.face()
    }

    /// Places to which a letter may lead now.
    fn due(&self, colours: &Colours) -> Vec<Sticker> {
        let in_hand = self.in_hand(colours);
        // Once the buffer has its own colour a new part may be begun anywhere.
        let begins = in_hand == self.buffer.face();
        let wanted = |place: &Sticker| self.is_wrong(*place, colours) && (begins || place.face() == in_hand);
        Sticker::all().filter(wanted).collect()
    }

    fn exchanged(&self, place: Sticker, colours: &Colours) -> Colours {
        let mut after = *colours;
        after.swap(self.buffer.index(), place.index());
        after
    }

    fn next(&self, read: usize, colours: &Colours) -> Vec<Next> {
        let due = self.due(colours);
        let Some(&letter) = self.letters.get(read) else { return vec![self.end(read, colours, due)] };
        if due.contains(&letter) {
            return vec![(0, None, read + 1, self.exchanged(letter, colours))];
        }
        let between = self.in_hand(colours) == self.buffer.face();
        let fault = if letter == self.buffer {
            MemoFault::BufferLetter
        } else if self.is_wrong(letter, colours) {
            MemoFault::OtherLetter
        } else if between {
            MemoFault::BreakOnSolved
        } else {
            MemoFault::SolvedAlready { earlier: super::earlier(self.orbit, self.letters, read) }
        };
        let slip = |fault: MemoFault| {
            Some(MemoSlip { fault, position: read, letter: Some(letter), expected: due.clone(), place: None })
        };
        let mut next = vec![(22, slip(fault.clone()), read + 1, *colours)];
        if letter != self.buffer {
            next.push((26, slip(fault.clone()), read + 1, self.exchanged(letter, colours)));
        }
        for &meant in &due {
            let after = self.exchanged(meant, colours);
            next.push((20, slip(fault.clone()), read + 1, after));
            // With a letter between, this one is due.
            if self.due(&after).contains(&letter) {
                next.push((21, slip(MemoFault::LetterMissing), read, after));
            }
        }
        next
    }

    /// After the last letter.
    fn end(&self, read: usize, colours: &Colours, due: Vec<Sticker>) -> Next {
        let pieces: Vec<Sticker> = self
            .orbit
            .all_pieces()
            .map(|piece| self.orbit.reference(piece))
            .filter(|&place| colours[place.index()] != place.face())
            .collect();
        if pieces.is_empty() {
            return (0, None, read + 1, *colours);
        }
        let cost = 20 + 3 * pieces.len() as u32;
        let fault = MemoFault::LeftOut { pieces };
        let slip = MemoSlip { fault, position: read, letter: None, expected: due, place: None };
        (cost, Some(slip), read + 1, *colours)
    }
}
