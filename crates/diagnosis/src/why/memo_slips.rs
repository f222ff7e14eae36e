//! Slips of tracing and recall: other letters than those that should have been carried out.

use super::act::{Act, Acts};
use super::course::{Course, Recalled};
use super::craft::Craft;
use super::recall::Retake;
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
    /// `before` are the acts of the kind without the slip, `after` those with it, `meant` the letters that are changed and `taken` how
    /// many stand there instead. Acts of the letters that are changed count as other even if they are the same again.
    pub(crate) fn new(
        before: &[(Act, usize)],
        after: Vec<(Act, usize)>,
        meant: Range<usize>,
        taken: usize,
    ) -> Self {
        let ahead = |acts: &[(Act, usize)]| {
            acts.partition_point(|(act, letter)| letter + act.letters() <= meant.start)
        };
        let behind = |acts: &[(Act, usize)], end: usize| {
            acts.len() - acts.partition_point(|(_, letter)| *letter < end)
        };
        let same = before.iter().zip(&after).take_while(|(old, new)| old.0 == new.0).count();
        let first = same.min(ahead(before)).min(ahead(&after));
        let both = before.iter().rev().zip(after.iter().rev());
        let same = both.take_while(|(old, new)| old.0 == new.0).count();
        let last = same
            .min(behind(before, meant.end))
            .min(behind(&after, meant.start + taken))
            .min(before.len() - first)
            .min(after.len() - first);
        Self { old: first..before.len() - last, new: first..after.len() - last, acts: after }
    }
}

/// What a slip makes other of a course.
pub(crate) fn reworked(slip: &LetterSlip, course: &Course, acts: &Acts<'_>) -> Rework {
    let before: Vec<(Act, usize)> =
        course.spans_of(slip.orbit).iter().map(|span| (span.act, span.letter)).collect();
    let after = acts.of(slip.orbit, &slip.letters_after(course.letters(slip.orbit)));
    Rework::new(&before, after, slip.from..slip.from + slip.meant, slip.taken.len())
}

/// Gathers slips of tracing.
struct Maker<'a> {
    orbit: Orbit,
    letters: &'a [Sticker],
    /// Whether an odd change in the number of letters changes what is done about parity.
    decides_parity: bool,
    found: &'a mut Vec<LetterSlip>,
}

impl Maker<'_> {
    fn replace(&mut self, kind: SlipKind, range: Range<usize>, taken: &[Sticker], share: f64) {
        let (from, meant) = (range.start, &self.letters[range]);
        if meant != taken {
            let mut slip = Retake { kind, orbit: self.orbit, from, meant, taken, share }.slip();
            slip.parity_changes = slip.is_odd() && self.decides_parity;
            self.found.push(slip);
        }
    }
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
        let mut maker = Maker { orbit, letters, decides_parity, found: &mut found };
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
                        maker.replace(SlipKind::WrongSticker, at..at + 1, &[turned(at)], share);
                    }
                    if steps[at].role == Role::Follow && !last {
                        let taken: Vec<Sticker> = (at..range.end).map(turned).collect();
                        maker.replace(SlipKind::WrongStickerFollowed, at..range.end, &taken, share);
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
                maker.replace(kind, range.clone(), &[], 1.0);
            }
            if !in_place {
                maker.replace(SlipKind::ClosedEarly, range.end - 1..range.end, &[], 1.0);
            } else if orbit == Orbit::Corner && !cycle.holds_buffer {
                let [first, second] = [range.start, range.end - 1];
                let other = orbit
                    .stickers_from(letters[first])
                    .find(|&sticker| sticker != letters[first] && sticker != letters[second]);
                if let Some(other) = other {
                    maker.replace(SlipKind::TwistOtherWay, second..range.end, &[other], 1.0);
                }
            }
        }
    }
    found
}
