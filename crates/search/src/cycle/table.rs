//! Every state that sequences of a turn set up to a length can reach, with the lengths that reach it.

use super::turns::TurnSet;
use cube::{ELEMENT_KEY_BITS, Element, ElementKey};

/// The bits of a slot that hold the key.
pub(super) const KEY_MASK: ElementKey = (1 << ELEMENT_KEY_BITS) - 1;

/// Lengths that a slot has room for.
pub(super) const MOST_LENGTHS: usize = 20;
const FOLLOW_SHIFT: u32 = ELEMENT_KEY_BITS + MOST_LENGTHS as u32;
const FOLLOW_MASK: u128 = 0b111 << FOLLOW_SHIFT;

/// An open hash table of keys. Beside a key stand, as bits, the lengths at which listed sequences reach the state, and
/// for the greatest of them the axes about which such a sequence may go on (those it need not end with).
pub(super) struct Table {
    slots: Vec<u128>,
    /// For each length below the radius, the slots that it reaches, as they were when it was done.
    levels: Vec<Vec<u128>>,
    radius: usize,
    /// How many states have each length as their least.
    spheres: Vec<u64>,
}

/// The bits of the lengths in a slot, from bit 0.
pub(super) const fn lengths(slot: u128) -> u32 {
    (slot >> ELEMENT_KEY_BITS) as u32 & ((1 << MOST_LENGTHS) - 1)
}

/// Whether a sequence to the state may go on about an axis.
pub(super) const fn may_follow(slot: u128, axis: usize) -> bool {
    slot >> (FOLLOW_SHIFT + axis as u32) & 1 == 1
}

const fn length_bit(length: usize) -> u128 {
    1 << (ELEMENT_KEY_BITS + length as u32)
}

/// How many listed sequences there are at each length up to a radius, at most: no state is missed by it.
pub(super) fn sequences(set: &TurnSet, radius: usize) -> Vec<u64> {
    let mut by_axis: Vec<[u64; 3]> = vec![[0; 3]];
    let mut total = vec![1u64];
    for length in 1..=radius {
        let mut here = [0u64; 3];
        for (axis, count) in here.iter_mut().enumerate() {
            for effect in set.about(axis).iter().filter(|effect| effect.cost <= length) {
                let before = length - effect.cost;
                let others = total[before] - by_axis[before][axis];
                *count = count.saturating_add(others);
            }
        }
        by_axis.push(here);
        total.push(here.iter().fold(0, |sum: u64, &count| sum.saturating_add(count)));
    }
    total
}

fn slots_for(states: u64) -> u64 {
    states.saturating_add(states / 2).saturating_add(64)
}

/// The bytes that a table of a radius takes while it is built, at most.
pub(super) fn bytes(set: &TurnSet, radius: usize) -> u64 {
    let sequences = sequences(set, radius);
    let all = sequences.iter().fold(0, |sum: u64, &count| sum.saturating_add(count));
    let inner = all - sequences[radius];
    let widest = if radius == 0 { 0 } else { sequences[radius - 1] };
    // Slots and the inner levels are keys of 16 bytes; a level in the making also has its places in the slots.
    slots_for(all)
        .saturating_mul(16)
        .saturating_add(inner.saturating_mul(16))
        .saturating_add(widest.saturating_mul(8))
}

impl Table {
    /// Builds it. `on` hears of each finished length and may stop the work; memory that is not to be had is an error.
    pub fn build(
        set: &TurnSet,
        radius: usize,
        on: &mut dyn FnMut(usize, u64) -> bool,
    ) -> Result<Self, BuildError> {
        let all: u64 = sequences(set, radius).iter().sum();
        let count = usize::try_from(slots_for(all)).map_err(|_| BuildError::Memory)?;
        let mut slots = Vec::new();
        slots.try_reserve_exact(count).map_err(|_| BuildError::Memory)?;
        slots.resize(count, 0u128);
        let mut table = Self { slots, levels: Vec::new(), radius, spheres: Vec::new() };
        let solved = set.group().key(&Element::IDENTITY);
        let home = table.place(solved);
        table.slots[home] = solved | length_bit(0) | FOLLOW_MASK;
        table.spheres.push(1);
        if radius > 0 {
            table.levels.push(vec![table.slots[home]]);
        }
        for length in 1..=radius {
            let keep = length < radius;
            table.extend(set, length, keep)?;
            if !on(length, table.spheres[length]) {
                return Err(BuildError::Stopped);
            }
        }
        Ok(table)
    }

    fn extend(&mut self, set: &TurnSet, length: usize, keep: bool) -> Result<(), BuildError> {
        let group = set.group();
        let mut reached: Vec<usize> = Vec::new();
        let levels = std::mem::take(&mut self.levels);
        let bit = length_bit(length);
        let mut new = 0;
        for axis in 0..3 {
            let follow = FOLLOW_MASK & !(1 << (FOLLOW_SHIFT + axis as u32));
            for (cost, level) in levels.iter().rev().enumerate().map(|(back, level)| (back + 1, level)) {
                let effects: Vec<_> = set.about(axis).iter().filter(|effect| effect.cost == cost).collect();
                if effects.is_empty() {
                    continue;
                }
                for &slot in level.iter().filter(|&&slot| may_follow(slot, axis)) {
                    let element = group.unpacked(slot & KEY_MASK);
                    for effect in &effects {
                        let key = group.key_of_product(&element, &effect.element);
                        let place = self.place(key);
                        let entry = &mut self.slots[place];
                        if *entry & bit != 0 {
                            *entry |= follow;
                            continue;
                        }
                        new += u64::from(*entry == 0);
                        *entry = (*entry | key | bit) & !FOLLOW_MASK | follow;
                        if keep {
                            reached.try_reserve(1).map_err(|_| BuildError::Memory)?;
                            reached.push(place);
                        }
                    }
                }
            }
        }
        self.levels = levels;
        self.spheres.push(new);
        if keep {
            let mut level = Vec::new();
            level.try_reserve_exact(reached.len()).map_err(|_| BuildError::Memory)?;
            level.extend(reached.into_iter().map(|place| self.slots[place]));
            self.levels.push(level);
        }
        Ok(())
    }

    /// The slot where a key is, or the free one where it would be. There are always free ones.
    #[inline]
    fn place(&self, key: u128) -> usize {
        let mixed = (key as u64).wrapping_mul(0x9e37_79b9_7f4a_7c15)
            ^ ((key >> 60) as u64).wrapping_mul(0xc2b2_ae3d_27d4_eb4f);
        let mixed = (mixed ^ mixed >> 29).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let mut place = ((u128::from(mixed) * self.slots.len() as u128) >> 64) as usize;
        loop {
            let slot = self.slots[place];
            if slot == 0 || slot & KEY_MASK == key {
                return place;
            }
            place += 1;
            if place == self.slots.len() {
                place = 0;
            }
        }
    }

    /// The lengths, as bits, at which listed sequences reach the state of a key.
    #[inline]
    pub fn lengths(&self, key: u128) -> u32 {
        lengths(self.slots[self.place(key)])
    }

    /// The greatest length that it holds.
    pub const fn radius(&self) -> usize {
        self.radius
    }

    /// How many states have each length as their least.
    pub fn spheres(&self) -> &[u64] {
        &self.spheres
    }

    /// Slots among which all those of a length are; below the radius, only those.
    pub fn level(&self, length: usize) -> &[u128] {
        self.levels.get(length).unwrap_or(&self.slots)
    }

    /// All listed sequences of a length to the state of a key, by the numbers of their turns.
    pub fn sequences(&self, set: &TurnSet, key: u128, length: usize) -> Vec<Vec<u8>> {
        let mut found = Vec::new();
        self.descend(set, key, length, 3, &mut Vec::new(), &mut found);
        found
    }

    /// From a state back to the solved one; `tail` holds the runs that come after, last first.
    fn descend<'a>(
        &self,
        set: &'a TurnSet,
        key: ElementKey,
        length: usize,
        next_axis: usize,
        tail: &mut Vec<&'a [u8]>,
        found: &mut Vec<Vec<u8>>,
    ) {
        if self.lengths(key) >> length & 1 == 0 {
            return;
        }
        if length == 0 {
            found.push(tail.iter().rev().flat_map(|run| run.iter().copied()).collect());
            return;
        }
        let element = set.group().unpacked(key);
        for axis in (0..3).filter(|&axis| axis != next_axis) {
            for effect in set.about(axis).iter().filter(|effect| effect.cost <= length) {
                let before = set.group().key_of_product(&element, &effect.undo);
                if self.lengths(before) >> (length - effect.cost) & 1 == 0 {
                    continue;
                }
                for run in &effect.runs {
                    debug_assert_eq!(run.cost, effect.cost);
                    tail.push(&run.turns);
                    self.descend(set, before, length - effect.cost, axis, tail, found);
                    tail.pop();
                }
            }
        }
    }
}

/// Why a table was not finished.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) enum BuildError {
    /// The system gave no memory.
    Memory,
    /// The caller stopped it.
    Stopped,
}
