//! The one slip that turns a memo that solves into this one, if there is one.
//!
//! A memo may begin its cycles in any order and anywhere, so a wrong one is not compared with one that is right: every single slip
//! is undone in it, and what then solves by exchanging pieces is an explanation. So a letter that is right is never blamed for one
//! that is not.

use super::{MemoFault, MemoSlip};
use blind::exchanged;
use cube::{Orbit, Perm, Sticker};

/// Memos of more letters are not searched: no kind needs half as many, and the exchanges tried grow with their square.
const MOST_LETTERS: usize = 72;

/// A memo with what the letters before and after each place do.
struct Memo<'a> {
    orbit: Orbit,
    seen: &'a Perm,
    buffer: Sticker,
    letters: &'a [Sticker],
    /// How the pieces lie before each letter, and after the last one.
    before: Vec<Perm>,
    /// What the letters from each one on do.
    from: Vec<Perm>,
    /// What each letter does.
    does: Vec<Perm>,
}

/// A memo that solves but follows no cycles is not what was meant, if another one may be.
const UNLIKE: u32 = 8;

/// A slip with what it costs: the less, the likelier; and the memo without it.
type Offer = (u32, MemoSlip, Vec<Sticker>);

/// The likeliest single slip that explains a memo that does not solve.
pub(super) fn one_slip(orbit: Orbit, seen: &Perm, buffer: Sticker, letters: &[Sticker]) -> Option<MemoSlip> {
    if letters.len() > MOST_LETTERS {
        return None;
    }
    let does: Vec<Perm> = letters.iter().map(|&letter| exchange(orbit, buffer, letter)).collect();
    let mut before = vec![*seen];
    for letter in &does {
        before.extend(before.last().map(|lie| lie.then(letter)));
    }
    let mut from = vec![Perm::IDENTITY];
    for letter in does.iter().rev() {
        from.extend(from.last().map(|rest| letter.then(rest)));
    }
    from.reverse();
    let memo = Memo { orbit, seen, buffer, letters, before, from, does };
    let offers = memo.offers();
    let worth = |(cost, slip, meant): &Offer| {
        let unlike = !super::walk::follows_cycles(orbit, seen, buffer, meant);
        (cost + if unlike { UNLIKE } else { 0 }, slip.position)
    };
    offers.into_iter().min_by_key(worth).map(|(_, slip, _)| slip)
}

fn exchange(orbit: Orbit, buffer: Sticker, letter: Sticker) -> Perm {
    exchanged(&Perm::IDENTITY, orbit, buffer, std::iter::once(letter))
}

impl Memo<'_> {
    fn same(&self, a: Sticker, b: Sticker) -> bool {
        self.orbit.same_piece(a, b)
    }

    fn offers(&self) -> Vec<Offer> {
        let own: Vec<usize> =
            (0..self.letters.len()).filter(|&at| self.same(self.letters[at], self.buffer)).collect();
        let mut offers = Vec::new();
        match own[..] {
            [] => {
                for at in 0..self.letters.len() {
                    self.replaced(at, &mut offers);
                    self.taken_out(at, &mut offers);
                    self.exchanged(at, &mut offers);
                    self.pairs_exchanged(at, &mut offers);
                    self.turned_along(at, &mut offers);
                }
                for at in 0..=self.letters.len() {
                    self.put_in(at, &mut offers);
                }
            }
            // A letter of the buffer's own piece is one slip at least.
            [at] => {
                self.replaced(at, &mut offers);
                self.taken_out(at, &mut offers);
            }
            _ => {}
        }
        offers
    }

    /// The letter that is due before a place, if a cycle is being followed there.
    fn due(&self, at: usize) -> Option<Sticker> {
        let in_hand = self.before[at].at(self.buffer);
        (!self.same(in_hand, self.buffer)).then_some(in_hand)
    }

    /// Letters that are as good as any other before a place.
    fn fitting(&self, at: usize) -> Vec<Sticker> {
        if let Some(due) = self.due(at) {
            return vec![due];
        }
        let open = |place: &Sticker| self.before[at].at(*place) != *place && !self.same(*place, self.buffer);
        let pieces = self.orbit.all_pieces().map(|piece| self.orbit.reference(piece)).filter(open);
        pieces.flat_map(|piece| self.orbit.stickers_from(piece)).collect()
    }

    /// The place whose piece is due, where the puzzle as it was picked up is looked at.
    fn looked_at(&self, due: Sticker) -> Sticker {
        self.seen.inverse().at(due)
    }

    fn slip(&self, at: usize, fault: MemoFault, expected: Vec<Sticker>) -> MemoSlip {
        let place = match expected[..] {
            [letter] if self.due(at) == Some(letter) => Some(self.looked_at(letter)),
            _ => None,
        };
        MemoSlip { fault, position: at, letter: self.letters.get(at).copied(), expected, place }
    }

    /// The one letter between what lies and what follows with which all is solved.
    fn between(&self, lies: &Perm, follows: &Perm) -> Option<Sticker> {
        let wanted = lies.inverse().then(&follows.inverse());
        let letter = wanted.at(self.buffer);
        let does = !self.same(letter, self.buffer) && exchange(self.orbit, self.buffer, letter) == wanted;
        does.then_some(letter)
    }

    fn replaced(&self, at: usize, offers: &mut Vec<Offer>) {
        let Some(right) = self.between(&self.before[at], &self.from[at + 1]) else { return };
        let letter = self.letters[at];
        let due = self.due(at);
        let same = self.same(letter, right);
        let beside = |other: Option<&Sticker>| other.is_some_and(|&other| self.same(other, letter));
        let twice = beside(self.letters.get(at + 1)) || at > 0 && beside(self.letters.get(at - 1));
        let fault = if same && twice {
            MemoFault::TurnedWrongWay
        } else if same {
            MemoFault::WrongSticker
        } else {
            self.misplaced(at)
        };
        let cost = match due {
            // The second letter of a piece that is turned in its place is the one that says which way.
            Some(due) if due == right && same => 20,
            Some(due) if due == right => 22,
            None if same => 21,
            None => 23,
            Some(_) => 27,
        };
        offers.push((cost, self.slip(at, fault, vec![right]), self.with(|memo| memo[at] = right)));
    }

    /// The letters with a change.
    fn with(&self, change: impl FnOnce(&mut Vec<Sticker>)) -> Vec<Sticker> {
        let mut letters = self.letters.to_vec();
        change(&mut letters);
        letters
    }

    /// What is wrong with a letter that has no business where it stands.
    fn misplaced(&self, at: usize) -> MemoFault {
        let letter = self.letters[at];
        let lies_right = self.before[at].at(letter) == letter;
        let between = self.due(at).is_none();
        if self.same(letter, self.buffer) {
            return MemoFault::BufferLetter;
        }
        let elsewhere = self.looked_at(letter);
        if between {
            return match (lies_right, self.seen.at(letter) == letter) {
                (true, true) => MemoFault::BreakOnSolved,
                (true, false) => self.solved_already(at),
                (false, _) => MemoFault::OtherLetter,
            };
        }
        let known = elsewhere == self.buffer || self.letters[..at].contains(&elsewhere);
        let has_letter = lies_right || super::earlier(self.orbit, self.letters, at).is_some();
        match (known && elsewhere != letter, has_letter) {
            (true, _) => MemoFault::FollowedFromElsewhere { place: elsewhere },
            (false, true) => self.solved_already(at),
            (false, false) => MemoFault::OtherLetter,
        }
    }

    fn solved_already(&self, at: usize) -> MemoFault {
        MemoFault::SolvedAlready { earlier: super::earlier(self.orbit, self.letters, at) }
    }

    fn taken_out(&self, at: usize, offers: &mut Vec<Offer>) {
        if !self.before[at].then(&self.from[at + 1]).is_identity() {
            return;
        }
        let letter = self.letters[at];
        let last = at.checked_sub(1).map_or(self.buffer, |before| self.letters[before]);
        let closed = self.due(at).is_none();
        let fault = if self.same(letter, self.buffer) {
            MemoFault::BufferLetter
        } else if closed && self.seen.at(last) == letter && last != letter {
            MemoFault::ClosedLate
        } else if self.before[at].at(letter) == letter && closed {
            self.misplaced(at)
        } else {
            MemoFault::LetterTooMany
        };
        // Of two that are the same the second one is too many.
        let again = self.letters.get(at + 1) == Some(&letter);
        let meant = self.with(|memo| {
            memo.remove(at);
        });
        offers.push((22 + u32::from(again), self.slip(at, fault, self.fitting(at)), meant));
    }

    fn put_in(&self, at: usize, offers: &mut Vec<Offer>) {
        let Some(missing) = self.between(&self.before[at], &self.from[at]) else { return };
        let beside = |other: Option<&Sticker>| other == Some(&missing);
        // Twice the same does nothing: that is the letter beside it taken out.
        if beside(self.letters.get(at)) || at > 0 && beside(self.letters.get(at - 1)) {
            return;
        }
        let after = self.before[at].then(&exchange(self.orbit, self.buffer, missing));
        let closes = self.same(after.at(self.buffer), self.buffer);
        let due = self.due(at);
        let cost = match due {
            Some(due) if due == missing => 22,
            None => 24,
            Some(_) => 27,
        };
        let fault =
            if closes && due == Some(missing) { MemoFault::ClosedEarly } else { MemoFault::LetterMissing };
        let meant = self.with(|memo| memo.insert(at, missing));
        offers.push((cost, self.slip(at, fault, vec![missing]), meant));
    }

    fn exchanged(&self, at: usize, offers: &mut Vec<Offer>) {
        let mut within = Perm::IDENTITY;
        for other in at + 1..self.letters.len() {
            let all = self.before[at]
                .then(&self.does[other])
                .then(&within)
                .then(&self.does[at])
                .then(&self.from[other + 1]);
            if all.is_identity() {
                let cost = if other == at + 1 { 24 } else { 26 };
                let fault = MemoFault::LettersExchanged { with: other };
                let meant = self.with(|memo| memo.swap(at, other));
                offers.push((cost, self.slip(at, fault, vec![self.letters[other]]), meant));
            }
            within = within.then(&self.does[other]);
        }
    }

    fn pairs_exchanged(&self, at: usize, offers: &mut Vec<Offer>) {
        if at % 2 == 1 {
            return;
        }
        let pair = |at: usize| self.does[at].then(&self.does[at + 1]);
        let mut within = Perm::IDENTITY;
        for other in (at + 2..self.letters.len().saturating_sub(1)).step_by(2) {
            let all =
                self.before[at].then(&pair(other)).then(&within).then(&pair(at)).then(&self.from[other + 2]);
            let differ = |by: usize| self.letters[at + by] != self.letters[other + by];
            if all.is_identity() && differ(0) && differ(1) {
                let cost = if other == at + 2 { 25 } else { 27 };
                let fault = MemoFault::PairsExchanged { with: other };
                let meant = self.with(|memo| {
                    memo.swap(at, other);
                    memo.swap(at + 1, other + 1);
                });
                offers.push((cost, self.slip(at, fault, vec![self.letters[other]]), meant));
            }
            within = within.then(&pair(other));
        }
    }

    /// Another sticker of the piece that was due, and the way followed on from there.
    fn turned_along(&self, at: usize, offers: &mut Vec<Offer>) {
        for clockwise in 1..self.orbit.stickers_per_piece() {
            let meant = |letter: Sticker| self.orbit.turned(letter, clockwise);
            let right = meant(self.letters[at]);
            let mut lie = self.before[at].then(&exchange(self.orbit, self.buffer, right));
            for last in at + 1..self.letters.len() {
                lie = lie.then(&exchange(self.orbit, self.buffer, meant(self.letters[last])));
                if lie.then(&self.from[last + 1]).is_identity() {
                    let cost = if self.due(at) == Some(right) { 24 } else { 28 };
                    let fault = MemoFault::FollowedFromWrongSticker { last };
                    let turned = self
                        .with(|memo| memo[at..=last].iter_mut().for_each(|letter| *letter = meant(*letter)));
                    offers.push((cost, self.slip(at, fault, vec![right]), turned));
                }
            }
        }
    }
}
