//! Several figures of a trace in one number, so that states of the same figures can be counted together.

use crate::condition::{Aspect, MOST_FEATURES, Part};

/// The figures: the lowest bit tells the parity, the next seven the letters, and then come the others, five bits each.
#[derive(Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Debug, Default)]
pub(crate) struct Tally(u128);

/// Which figures are kept.
#[derive(Clone, Debug, Default)]
pub(crate) struct Watched {
    targets: bool,
    /// The others, each at a place.
    aspects: Vec<Aspect>,
}

/// Where a figure is kept, and how many bits it may take.
#[derive(Clone, Copy)]
struct Slot {
    shift: usize,
    mask: u128,
}

const TARGETS: Slot = Slot { shift: 1, mask: 127 };

impl Slot {
    const fn numbered(at: usize) -> Self {
        Self { shift: 8 + 5 * at, mask: 31 }
    }
}

impl Watched {
    /// At most 24 aspects, which the parser sees to, so that 128 bits do: but for the letters no figure is over 24.
    pub(crate) fn new(mut aspects: Vec<Aspect>) -> Self {
        let targets = aspects.contains(&Aspect::Targets);
        // Parity is kept without being asked for.
        aspects.retain(|aspect| !matches!(aspect, Aspect::Targets | Aspect::Parity));
        aspects.sort_unstable();
        aspects.dedup();
        aspects.truncate(MOST_FEATURES);
        Self { targets, aspects }
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
        let mut after = self.add_without_letters(tally, part);
        if self.targets {
            after.set(TARGETS, Aspect::Targets.add(tally.get(TARGETS), part));
        }
        after.with_parity(tally.is_odd() ^ part.is_odd())
    }

    /// The same without its letters: targets and parity stay as they are.
    pub(crate) fn add_without_letters(&self, mut tally: Tally, part: Part) -> Tally {
        for (at, aspect) in self.aspects.iter().enumerate() {
            let slot = Slot::numbered(at);
            tally.set(slot, aspect.add(tally.get(slot), part));
        }
        tally
    }

    /// The figures after one more letter.
    pub(crate) fn add_letter(&self, mut tally: Tally) -> Tally {
        if self.targets {
            tally.set(TARGETS, tally.get(TARGETS) + 1);
        }
        tally.with_parity(!tally.is_odd())
    }

    /// A figure, if it is kept.
    pub(crate) fn get(&self, tally: Tally, aspect: Aspect) -> Option<u8> {
        match aspect {
            Aspect::Parity => Some(u8::from(tally.is_odd())),
            Aspect::Targets => self.targets.then(|| tally.get(TARGETS)),
            _ => {
                let at = self.aspects.iter().position(|&kept| kept == aspect)?;
                Some(tally.get(Slot::numbered(at)))
            }
        }
    }
}

impl Tally {
    const fn get(self, slot: Slot) -> u8 {
        (self.0 >> slot.shift & slot.mask) as u8
    }

    const fn set(&mut self, slot: Slot, value: u8) {
        self.0 = self.0 & !(slot.mask << slot.shift) | (value as u128 & slot.mask) << slot.shift;
    }

    /// Whether an odd number of exchanges makes the states up.
    pub(crate) const fn is_odd(self) -> bool {
        self.0 & 1 == 1
    }

    pub(crate) const fn with_parity(self, odd: bool) -> Self {
        Self(self.0 & !1 | odd as u128)
    }
}
