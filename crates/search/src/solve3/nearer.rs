//! How far each position is from a goal, and which turns lead nearer and which not further: one look for all turns.

use super::symmetry::FoldedPairs;
use crate::solve::distances::{Space, breadth_first};

/// For each position, in `BYTES` bytes, the distance and two bits a turn.
pub struct Nearer<const TURNS: usize, const BYTES: usize> {
    entries: Vec<u8>,
}

/// How many bits the distance takes.
const DISTANCE: usize = 4;

impl<const TURNS: usize, const BYTES: usize> Nearer<TURNS, BYTES> {
    /// All turns.
    const ALL: u32 = (1 << TURNS) - 1;

    /// Distances from a pair.
    pub fn new<const WAYS: usize>(pairs: &FoldedPairs<TURNS, WAYS>, goal: (u16, u16)) -> Self {
        const { assert!(DISTANCE + 2 * TURNS <= 8 * BYTES && BYTES <= 8) };
        let found = breadth_first(pairs, [pairs.number(goal.0, goal.1)]);
        // An entry is read as eight bytes.
        let mut entries = Vec::with_capacity(pairs.count() * BYTES + 8);
        for (from, &here) in found.iter().enumerate() {
            let (mut nearer, mut not_further) = (0u64, 0u64);
            for (turn, to) in pairs.after(from).into_iter().enumerate() {
                nearer |= u64::from(found[to] < here) << turn;
                not_further |= u64::from(found[to] <= here) << turn;
            }
            let entry = u64::from(here) | nearer << DISTANCE | not_further << (DISTANCE + TURNS);
            entries.extend_from_slice(&entry.to_le_bytes()[..BYTES]);
        }
        entries.extend_from_slice(&[0; 8]);
        Self { entries }
    }

    fn entry(&self, position: usize) -> u64 {
        let mut bytes = [0; 8];
        bytes.copy_from_slice(&self.entries[position * BYTES..position * BYTES + 8]);
        u64::from_le_bytes(bytes)
    }

    /// How far a position is.
    pub fn distance(&self, position: usize) -> u8 {
        self.entry(position) as u8 & ((1 << DISTANCE) - 1)
    }

    /// The turns, as bits, after which the goal is at most `left` turns away.
    pub fn turns(&self, position: usize, left: u8) -> u32 {
        let entry = self.entry(position);
        let distance = entry as u8 & ((1 << DISTANCE) - 1);
        let bits = |shift: usize| (entry >> shift) as u32 & Self::ALL;
        if distance < left {
            Self::ALL
        } else if distance == left {
            bits(DISTANCE + TURNS)
        } else if distance == left + 1 {
            bits(DISTANCE)
        } else {
            0
        }
    }
}
