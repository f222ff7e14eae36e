//! Several figures of a trace in one number, so that states of the same figures can be counted together.

use crate::condition::{Aspect, Part};

/// The figures, five bits each; the lowest five tell the parity.
#[derive(Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Debug, Default)]
pub(crate) struct Tally(u128);

/// Which figures are kept.
#[derive(Clone, Debug, Default)]
pub(crate) struct Watched {
    aspects: Vec<Aspect>,
}

impl Watched {
    /// At most 24 aspects (`MOST_FEATURES` and one more), which the parser sees to: no figure is over 31, so 25 places of five bits do.
    pub(crate) fn new(mut aspects: Vec<Aspect>) -> Self {
        aspects.sort_unstable();
        aspects.dedup();
        aspects.truncate(24);
        Self { aspects }
    }

    /// Whether more is asked of cycles than how many there are.
    pub(crate) fn lengths_matter(&self) -> bool {
        self.aspects.iter().any(|aspect| {
            matches!(
                aspect,
                Aspect::CyclesOf { .. } | Aspect::Longest | Aspect::Shortest | Aspect::BufferCycle
            )
        })
    }

    /// The figures after one more cycle or piece.
    pub(crate) fn add(&self, tally: Tally, part: Part) -> Tally {
        self.add_part(tally, part).with_parity(tally.is_odd() ^ part.is_odd())
    }

    /// The same without its letters: targets and parity stay as they are.
    pub(crate) fn add_without_letters(&self, tally: Tally, part: Part) -> Tally {
        let targets = self.get(tally, Aspect::Targets);
        let mut after = self.add_part(tally, part);
        if let (Some(targets), Some(slot)) = (targets, self.slot(Aspect::Targets)) {
            after.set(slot, targets);
        }
        after
    }

    fn add_part(&self, mut tally: Tally, part: Part) -> Tally {
        for (at, aspect) in self.aspects.iter().enumerate() {
            tally.set(at + 1, aspect.add(tally.get(at + 1), part));
        }
        tally
    }

    /// The figures after one more letter.
    pub(crate) fn add_letter(&self, mut tally: Tally) -> Tally {
        if let Some(slot) = self.slot(Aspect::Targets) {
            tally.set(slot, tally.get(slot) + 1);
        }
        tally.with_parity(!tally.is_odd())
    }

    fn slot(&self, aspect: Aspect) -> Option<usize> {
        self.aspects.iter().position(|&kept| kept == aspect).map(|at| at + 1)
    }

    /// A figure, if it is kept.
    pub(crate) fn get(&self, tally: Tally, aspect: Aspect) -> Option<u8> {
        self.slot(aspect).map(|slot| tally.get(slot))
    }
}

impl Tally {
    const fn get(self, slot: usize) -> u8 {
        (self.0 >> (5 * slot)) as u8 & 31
    }

    const fn set(&mut self, slot: usize, value: u8) {
        self.0 = self.0 & !(31 << (5 * slot)) | ((value as u128 & 31) << (5 * slot));
    }

    /// Whether an odd number of exchanges makes the states up.
    pub(crate) const fn is_odd(self) -> bool {
        self.0 & 1 == 1
    }

    pub(crate) const fn with_parity(self, odd: bool) -> Self {
        Self(self.0 & !1 | odd as u128)
    }
}
