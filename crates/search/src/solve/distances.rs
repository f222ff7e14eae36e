//! How far each position of a numbered space is from the nearest goal: four bits each.

use super::kept::Kept;

/// Positions with numbers, and what lies around each.
pub trait Space {
    /// How many positions there are.
    fn count(&self) -> usize;

    /// Hands the positions one turn away to `each` until that answers `true`, which is then the answer.
    ///
    /// What one turn does another must undo.
    fn around(&self, from: usize, each: impl FnMut(usize) -> bool) -> bool;
}

/// A table of distances, found breadth first.
pub struct Distances {
    pairs: Vec<u8>,
}

/// What stands where no distance is known.
const UNKNOWN: u8 = 15;

impl Distances {
    /// The largest distance that a table can hold.
    pub const MOST: u8 = UNKNOWN - 1;

    /// Distances from the goals, found by [`breadth_first`].
    pub fn new(space: &impl Space, goals: impl IntoIterator<Item = usize>) -> Self {
        Self::packed(&breadth_first(space, goals))
    }

    /// The table of distances that are known already, one byte each, at most 15.
    pub fn packed(found: &[u8]) -> Self {
        let pairs = found.chunks(2).map(|pair| pair[0] | pair.get(1).map_or(0, |&second| second << 4));
        Self { pairs: pairs.collect() }
    }

    /// The next table of those that were kept, or where none were, one that is made now.
    pub fn kept_or(count: usize, kept: &mut Option<Kept<'_>>, make: impl FnOnce() -> Self) -> Option<Self> {
        match kept {
            None => Some(make()),
            Some(kept) => kept.take(count.div_ceil(2)).map(|pairs| Self { pairs: pairs.to_vec() }),
        }
    }

    /// The table as it is kept.
    pub fn bytes(&self) -> &[u8] {
        &self.pairs
    }

    /// How far a position is.
    pub fn get(&self, position: usize) -> u8 {
        self.pairs[position / 2] >> (position % 2 * 4) & 15
    }
}

/// How far each position is from the goals, one byte each.
///
/// While few positions are known the search goes on from those; when few are left it looks which of them have a known
/// neighbour. Positions that no turns lead to are 15 away.
pub fn breadth_first(space: &impl Space, goals: impl IntoIterator<Item = usize>) -> Vec<u8> {
    let count = space.count();
    let mut found = vec![UNKNOWN; count];
    let mut ring: Vec<u32> = goals.into_iter().map(|goal| goal as u32).collect();
    for &goal in &ring {
        found[goal as usize] = 0;
    }
    let mut known = ring.len();
    let mut depth = 0;
    while depth < Distances::MOST && !ring.is_empty() && ring.len() * 3 < count - known {
        depth += 1;
        let mut next = Vec::with_capacity(ring.len() * 8);
        for &from in &ring {
            space.around(from as usize, |to| {
                if found[to] == UNKNOWN {
                    found[to] = depth;
                    next.push(to as u32);
                }
                false
            });
        }
        known += next.len();
        ring = next;
    }
    let unknown = |found: &[u8]| (0..count as u32).filter(|&at| found[at as usize] == UNKNOWN).collect();
    let mut left: Vec<u32> = unknown(&found);
    let mut before = usize::MAX;
    while depth < Distances::MOST && left.len() < before {
        depth += 1;
        before = left.len();
        left.retain(|&from| {
            let near = space.around(from as usize, |to| found[to] == depth - 1);
            if near {
                found[from as usize] = depth;
            }
            !near
        });
    }
    found
}
