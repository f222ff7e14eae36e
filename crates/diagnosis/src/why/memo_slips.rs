//! Slips of tracing and recall: other letters than those that should have been carried out.

use super::act::{Act, Acts};
use super::course::{Course, Recalled, Span};
use super::craft::Craft;
use crate::slip::{Change, Slip, SlipKind};
use blind::{Role, Trace};
use cube::{Orbit, Sticker};
use std::ops::Range;

/// A slip that changes the letters: which, into which, and whether the parity algorithm is then made or not made
/// against the plan.
#[derive(Clone, Debug)]
pub(crate) struct LetterSlip {
    pub(crate) slip: Slip,
    pub(crate) orbit: Orbit,
    pub(crate) from: usize,
    pub(crate) meant: usize,
    pub(crate) taken: Vec<Sticker>,
    pub(crate) parity_changes: bool,
    /// Its share among the slips of its kind at its place.
    pub(crate) share: f64,
}

impl LetterSlip {
    /// Whether the number of letters becomes odd where it was even, or even where it was odd.
    pub(crate) const fn is_odd(&self) -> bool {
        (self.meant + self.taken.len()) % 2 == 1
    }

    /// Whether the parity algorithm is made or not made because of it; never where the method has none.
    pub(crate) const fn decides_parity(&self, course: &Course) -> bool {
        self.parity_changes && course.parity_at.is_some()
    }

    /// Whether anything is carried out because of it.
    pub(crate) const fn brings_in(&self) -> bool {
        !self.taken.is_empty() || self.parity_changes
    }

    /// The letters of its kind after the slip.
    pub(crate) fn letters_after(&self, before: &[Sticker]) -> Vec<Sticker> {
        let mut letters = before.to_vec();
        let end = (self.from + self.meant).min(letters.len());
        letters.splice(self.from.min(end)..end, self.taken.iter().copied());
        letters
    }

    /// All letters after the slip.
    pub(crate) fn applied(&self, before: &Recalled) -> Recalled {
        let mut after = before.clone();
        if let Some((_, letters)) = after.kinds.iter_mut().find(|(orbit, _)| *orbit == self.orbit) {
            *letters = self.letters_after(letters);
        }
        after.parity ^= self.parity_changes;
        after
    }
}

/// What letters that are changed make other of the acts of their kind.
pub(crate) struct Rework {
    /// Which of the acts before are no longer carried out.
    pub(crate) old: Range<usize>,
    /// All acts after, and which of them are carried out instead.
    pub(crate) acts: Vec<(Act, usize)>,
    pub(crate) new: Range<usize>,
}

impl Rework {
    /// `before` are the acts of the kind without the slip, `letters` its letters with it. Acts of the letters that are changed count
    /// as other even if they are the same again.
    pub(crate) fn new(slip: &LetterSlip, before: &[(Act, usize)], letters: &[Sticker], acts: &Acts<'_>) -> Self {
        let after = acts.of(slip.orbit, letters);
        let ahead = |acts: &[(Act, usize)]| {
            acts.partition_point(|(act, letter)| letter + act.letters() <= slip.from)
        };
        let behind =
            |acts: &[(Act, usize)], end: usize| acts.len() - acts.partition_point(|(_, letter)| *letter < end);
        let same = before.iter().zip(&after).take_while(|(old, new)| old.0 == new.0).count();
        let first = same.min(ahead(before)).min(ahead(&after));
        let both = before.iter().rev().zip(after.iter().rev());
        let same = both.take_while(|(old, new)| old.0 == new.0).count();
        let last = same
            .min(behind(before, slip.from + slip.meant))
            .min(behind(&after, slip.from + slip.taken.len()))
            .min(before.len() - first)
            .min(after.len() - first);
        Self { old: first..before.len() - last, new: first..after.len() - last, acts: after }
    }
}

/// The acts of spans with the numbers of their first letters.
pub(crate) fn acts_of(spans: &[Span]) -> Vec<(Act, usize)> {
    spans.iter().map(|span| (span.act, span.letter)).collect()
}

struct Maker<'a> {
    orbit: Orbit,
    letters: &'a [Sticker],
    /// Whether an odd change in the number of letters changes what is done about parity.
    decides_parity: bool,
    /// Which letters are looked at.
    within: &'a dyn Fn(Orbit, Range<usize>) -> bool,
    found: &'a mut Vec<LetterSlip>,
}

impl Maker<'_> {
    fn replace(&mut self, kind: SlipKind, range: Range<usize>, taken: Vec<Sticker>, share: f64) {
        let meant = &self.letters[range.clone()];
        if meant == taken || !(self.within)(self.orbit, range.clone()) {
            return;
        }
        let odd = (meant.len() + taken.len()) % 2 == 1;
        let parity_changes = odd && self.decides_parity && kind.stage() == crate::slip::Stage::Tracing;
        let change = Change::Letters {
            orbit: self.orbit,
            from: range.start,
            meant: meant.to_vec(),
            taken: taken.clone(),
        };
        self.found.push(LetterSlip {
            slip: Slip { kind, change },
            orbit: self.orbit,
            from: range.start,
            meant: range.len(),
            taken,
            parity_changes,
            share,
        });
    }
}

impl Maker<'_> {
    /// Two letters exchanged, and two pairs: the nearer, the likelier.
    fn exchanged(&mut self) {
        let letters = self.letters;
        let swapped = |range: &Range<usize>, size: usize| {
            let mut taken = letters[range.clone()].to_vec();
            let last = taken.len() - size;
            for at in 0..size {
                taken.swap(at, last + at);
            }
            taken
        };
        for first in 0..letters.len() {
            for second in first + 1..letters.len() {
                let one_pair = first % 2 == 0 && second == first + 1;
                if !one_pair && letters[first] != letters[second] {
                    let range = first..second + 1;
                    let apart = (second - first) as f64;
                    let taken = swapped(&range, 1);
                    self.replace(SlipKind::LettersExchanged, range, taken, 1.0 / (apart * apart));
                }
            }
        }
        let pairs = letters.len() / 2;
        for first in 0..pairs {
            for second in first + 1..pairs {
                let range = 2 * first..2 * second + 2;
                let apart = (second - first) as f64;
                let taken = swapped(&range, 2);
                self.replace(SlipKind::PairsExchanged, range, taken, 1.0 / (apart * apart));
            }
        }
    }
}

/// All slips of recall on some letters; `within` says which stretches of which kind are looked at.
pub(crate) fn recall(
    recalled: &Recalled,
    craft: &Craft<'_>,
    within: &dyn Fn(Orbit, Range<usize>) -> bool,
) -> Vec<LetterSlip> {
    let mut found = Vec::new();
    for (orbit, letters) in &recalled.kinds {
        let mut maker = Maker { orbit: *orbit, letters, decides_parity: false, within, found: &mut found };
        let scheme = &craft.conventions.kind(*orbit).letters;
        let targets: Vec<Sticker> = craft.targets(*orbit).collect();
        let order = scheme.order();
        for (at, &meant) in letters.iter().enumerate().filter(|&(at, _)| within(*orbit, at..at + 1)) {
            let place = order.iter().position(|&sticker| sticker == meant).unwrap_or(0);
            let near = |sticker: Sticker| {
                order
                    .iter()
                    .position(|&other| other == sticker)
                    .is_some_and(|other| other.abs_diff(place) == 1)
            };
            let alike = |sticker: Sticker| craft.catalogue.alike(scheme.of(meant), scheme.of(sticker));
            let mut others = |kind: SlipKind, counts: &dyn Fn(Sticker) -> bool| {
                let list: Vec<Sticker> =
                    targets.iter().copied().filter(|&other| other != meant && counts(other)).collect();
                for &taken in &list {
                    maker.replace(kind, at..at + 1, vec![taken], 1.0 / list.len() as f64);
                }
            };
            others(SlipKind::LetterNeighbour, &near);
            others(SlipKind::LetterAlike, &alike);
            others(SlipKind::LetterOther, &|_| true);
            maker.replace(SlipKind::LetterDropped, at..at + 1, Vec::new(), 1.0);
            maker.replace(SlipKind::LetterDoubled, at..at + 1, vec![meant; 2], 1.0);
        }
        for (number, pair) in letters.chunks_exact(2).enumerate() {
            let range = 2 * number..2 * number + 2;
            maker.replace(SlipKind::PairDropped, range.clone(), Vec::new(), 1.0);
            maker.replace(SlipKind::PairDoubled, range.clone(), [pair, pair].concat(), 1.0);
            maker.replace(SlipKind::PairReversed, range.clone(), vec![pair[1], pair[0]], 1.0);
        }
        maker.exchanged();
        maker.replace(SlipKind::KindForgotten, 0..letters.len(), Vec::new(), 1.0);
    }
    found
}

/// Letters of two kinds carried out each on the other, where they can be: the letters of each kind after it.
pub(crate) fn kinds_exchanged(recalled: &Recalled, craft: &Craft<'_>) -> Option<Slip> {
    let [(first, one), (second, other)] = recalled.kinds.as_slice() else { return None };
    let read = |orbit: Orbit, as_kind: Orbit, letters: &[Sticker]| -> Option<Vec<Sticker>> {
        let scheme = |orbit: Orbit| &craft.conventions.kind(orbit).letters;
        let taken = scheme(as_kind).read(&scheme(orbit).spell(letters)).ok()?;
        let buffer = craft.conventions.kind(as_kind).buffer;
        taken.iter().all(|&letter| !as_kind.same_piece(letter, buffer)).then_some(taken)
    };
    let taken = [read(*second, *first, other)?, read(*first, *second, one)?];
    let change = Change::Kinds { orbits: [*first, *second], taken };
    Some(Slip { kind: SlipKind::KindsExchanged, change })
}

/// All slips of tracing, but for parity.
pub(crate) fn tracing(recalled: &Recalled, traces: &[Trace]) -> Vec<LetterSlip> {
    let mut found = Vec::new();
    for trace in traces {
        let orbit = trace.orbit();
        let Some(place) = recalled.kinds.iter().position(|(other, _)| *other == orbit) else { continue };
        let letters = &recalled.kinds[place].1;
        let decides_parity = place == 0;
        let mut maker = Maker { orbit, letters, decides_parity, within: &|_, _| true, found: &mut found };
        let turns = orbit.stickers_per_piece();
        let steps = trace.steps();
        for cycle in trace.cycles() {
            let range = cycle.letters.clone();
            let in_place = cycle.pieces == 1;
            for at in range.clone() {
                let last = at + 1 == range.end;
                for turn in 1..turns {
                    let turned = |at: usize| orbit.turned(letters[at], turn);
                    let share = 1.0 / f64::from(turns - 1);
                    if !in_place {
                        maker.replace(SlipKind::WrongSticker, at..at + 1, vec![turned(at)], share);
                    }
                    if steps[at].role == Role::Follow && !last {
                        let taken = (at..range.end).map(turned).collect();
                        maker.replace(SlipKind::WrongStickerFollowed, at..range.end, taken, share);
                    }
                }
            }
            let missed = match (cycle.holds_buffer, in_place, orbit) {
                (false, true, Orbit::Corner) => Some(SlipKind::TwistMissed),
                (false, true, _) => Some(SlipKind::FlipMissed),
                (false, false, _) => Some(SlipKind::CycleMissed),
                (true, ..) => None,
            };
            if let Some(kind) = missed {
                maker.replace(kind, range.clone(), Vec::new(), 1.0);
            }
            if !in_place {
                maker.replace(SlipKind::ClosedEarly, range.end - 1..range.end, Vec::new(), 1.0);
            } else if orbit == Orbit::Corner && !cycle.holds_buffer {
                let [first, second] = [range.start, range.end - 1];
                let other = orbit
                    .stickers_from(letters[first])
                    .find(|&sticker| sticker != letters[first] && sticker != letters[second]);
                if let Some(other) = other {
                    maker.replace(SlipKind::TwistOtherWay, second..range.end, vec![other], 1.0);
                }
            }
        }
    }
    found
}
