//! Slips of recall: between the memo and the hands.

use super::craft::Craft;
use super::memo_slips::LetterSlip;
use crate::slip::{Change, Slip, SlipKind};
use cube::{Orbit, Sticker};
use std::ops::Range;

/// Letters of a kind for which others are taken.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Retake<'a> {
    pub(crate) kind: SlipKind,
    pub(crate) orbit: Orbit,
    /// The first letter, from 0.
    pub(crate) from: usize,
    pub(crate) meant: &'a [Sticker],
    pub(crate) taken: &'a [Sticker],
    /// Its share among the slips of its kind at its place.
    pub(crate) share: f64,
}

impl Retake<'_> {
    pub(crate) const fn range(&self) -> Range<usize> {
        self.from..self.from + self.meant.len()
    }

    pub(crate) fn slip(&self) -> LetterSlip {
        let (meant, taken) = (self.meant.to_vec(), self.taken.to_vec());
        let change = Change::Letters { orbit: self.orbit, from: self.from, meant, taken: taken.clone() };
        LetterSlip {
            slip: Slip { kind: self.kind, change },
            orbit: self.orbit,
            from: self.from,
            meant: self.meant.len(),
            taken,
            parity_changes: false,
            share: self.share,
        }
    }
}

/// Calls for all slips of recall on the letters of a kind; `within` says which stretches are looked at.
pub(crate) fn recall(
    orbit: Orbit,
    letters: &[Sticker],
    craft: &Craft<'_>,
    within: &dyn Fn(Range<usize>) -> bool,
    emit: &mut dyn FnMut(&Retake<'_>),
) {
    let mut replace = |kind: SlipKind, range: Range<usize>, taken: &[Sticker], share: f64| {
        let (from, meant) = (range.start, &letters[range.clone()]);
        if meant != taken && within(range) {
            emit(&Retake { kind, orbit, from, meant, taken, share });
        }
    };
    for (at, &meant) in letters.iter().enumerate().filter(|&(at, _)| within(at..at + 1)) {
        for &(kind, taken, share) in craft.mistaken(orbit, meant).iter() {
            replace(kind, at..at + 1, &[taken], share);
        }
        replace(SlipKind::LetterDropped, at..at + 1, &[], 1.0);
        replace(SlipKind::LetterDoubled, at..at + 1, &[meant; 2], 1.0);
    }
    for (number, pair) in letters.chunks_exact(2).enumerate() {
        let range = 2 * number..2 * number + 2;
        let &[one, other] = pair else { continue };
        replace(SlipKind::PairDropped, range.clone(), &[], 1.0);
        replace(SlipKind::PairDoubled, range.clone(), &[one, other, one, other], 1.0);
        replace(SlipKind::PairReversed, range, &[other, one], 1.0);
    }
    // The nearer, the likelier.
    let mut exchanged = |kind: SlipKind, range: Range<usize>, size: usize| {
        if !within(range.clone()) {
            return;
        }
        let apart = (range.len() / size - 1) as f64;
        let mut taken = letters[range.clone()].to_vec();
        for at in 0..size {
            taken.swap(at, range.len() - size + at);
        }
        replace(kind, range, &taken, 1.0 / (apart * apart));
    };
    for first in 0..letters.len() {
        for second in first + 1..letters.len() {
            let one_pair = first % 2 == 0 && second == first + 1;
            if !one_pair && letters[first] != letters[second] {
                exchanged(SlipKind::LettersExchanged, first..second + 1, 1);
            }
        }
    }
    for first in 0..letters.len() / 2 {
        for second in first + 1..letters.len() / 2 {
            exchanged(SlipKind::PairsExchanged, 2 * first..2 * second + 2, 2);
        }
    }
    replace(SlipKind::KindForgotten, 0..letters.len(), &[], 1.0);
}
