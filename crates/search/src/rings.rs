//! The shortest three-cycles of wings and centres, proven by trying every sequence of turns up to a length.
//!
//! A sequence of `2 r` turns that does nothing but take three pieces of a kind round is a first half and a second half undone that do the
//! same to every other kind. So all sequences of up to `r` turns are made once, sorted by what they do to the other kinds, and
//! within each lot compared pair by pair: all three-cycles of all buffers come out together. Longer ones are not looked for; the
//! commutators of [`crate::conjugate`] then stand as they are, and are proven shortest where they are one turn longer than what was
//! searched. Every turn counts one, whichever layers it turns.

use crate::conjugate::Conjugates;
use cube::{
    Fingerprint, NoSuchTurn, Orbit, Perm, Rotation, Size, State, Sticker, Turn, inverted, simplified,
};
use std::collections::BTreeMap;
use std::ops::ControlFlow;
use thiserror::Error;

/// The most sequences that are made at once: of some fifty bytes each.
pub const MOST_SEQUENCES: usize = 12_000_000;

/// How many algorithms of the shortest length are kept of a case.
const MOST_OF_CASE: usize = 12;

/// Why three-cycles were not searched.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum RingsError {
    /// A kind whose pieces have several stickers; those are searched by [`crate::cycle`].
    #[error("{0}s are searched with all their stickers")]
    SeveralStickers(Orbit),
    /// The size has no such pieces.
    #[error("a {size} has no {orbit}s")]
    NoSuchOrbit {
        /// The kind.
        orbit: Orbit,
        /// The size.
        size: Size,
    },
    /// The size lacks a turn.
    #[error(transparent)]
    NoSuchTurn(#[from] NoSuchTurn),
    /// No turns, or a turn that rotates the whole puzzle, with which nothing is shortest.
    #[error("there is nothing to search with")]
    NoTurns,
    /// A turn is there but not the one that undoes it.
    #[error("{0} is there, {inverse} is not; the search needs both", inverse = .0.inverse())]
    NoInverse(Turn),
    /// Even half of the length asked for has too many sequences.
    #[error("{count} sequences of {length} turns are too many; at most {MOST_SEQUENCES} are made")]
    TooMany {
        /// Half the length.
        length: usize,
        /// How many there are.
        count: u64,
    },
    /// The caller stopped it.
    #[error("the search was stopped")]
    Stopped,
}

/// A three-cycle: the piece of the first place goes to the second, and so on.
pub type Ring = [Sticker; 3];

/// The algorithms for a three-cycle.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct RingFinding {
    /// What they do.
    pub ring: Ring,
    /// How many turns the shortest that is known has.
    pub shortest: usize,
    /// Whether no shorter one exists.
    pub proven: bool,
    /// All sequences up to this length were tried.
    pub searched: usize,
    /// Shortest algorithms, each applied to check it: not all there are.
    pub algorithms: Vec<Vec<Turn>>,
}

/// A sequence with what it does.
struct Half {
    /// What it does to every kind but the one that is searched, mixed into a number: those that differ in it do differ.
    others: u64,
    own: Perm,
    turns: [u8; 4],
    length: u8,
}

/// All sequences of a set of turns up to a length, sorted.
pub struct Rings {
    size: Size,
    orbit: Orbit,
    turns: Vec<Turn>,
    reach: usize,
    known: BTreeMap<Ring, (usize, Vec<Vec<Turn>>)>,
}

/// The ring that begins at its first sticker.
fn canonical(ring: Ring) -> Ring {
    let [a, b, c] = ring;
    [[a, b, c], [b, c, a], [c, a, b]].into_iter().min().unwrap_or(ring)
}

impl Rings {
    /// Tries every sequence of up to `2 · reach` turns, `reach` at most 4.
    ///
    /// `on` hears of every length that is made and may stop the search.
    ///
    /// # Errors
    /// [`RingsError`].
    ///
    /// ```
    /// use cube::{Orbit, Size};
    /// use search::commutators::layers;
    /// use search::rings::Rings;
    /// let four = Size::new(4).unwrap();
    /// let wing = Orbit::of(four)[1];
    /// let rings = Rings::search(four, wing, &layers(four, wing), 2, &mut |_, _| std::ops::ControlFlow::Continue(())).unwrap();
    /// // No four turns of single layers take three wings round and leave the rest alone.
    /// assert_eq!((rings.searched(), rings.count()), (4, 0));
    /// ```
    pub fn search(
        size: Size,
        orbit: Orbit,
        turns: &[Turn],
        reach: usize,
        on: &mut dyn FnMut(usize, usize) -> ControlFlow<()>,
    ) -> Result<Self, RingsError> {
        if orbit.stickers_per_piece() != 1 {
            return Err(RingsError::SeveralStickers(orbit));
        }
        if !Orbit::of(size).contains(&orbit) {
            return Err(RingsError::NoSuchOrbit { orbit, size });
        }
        let mut turns = turns.to_vec();
        turns.sort_unstable();
        turns.dedup();
        for &turn in &turns {
            turn.check(size)?;
            if !turns.contains(&turn.inverse()) {
                return Err(RingsError::NoInverse(turn));
            }
        }
        if turns.is_empty() || turns.len() > 255 || turns.iter().any(|turn| turn.is_rotation()) {
            return Err(RingsError::NoTurns);
        }
        let reach = reach.clamp(1, 4);
        let count = sequences(&turns, reach);
        if count > MOST_SEQUENCES as u64 {
            return Err(RingsError::TooMany { length: reach, count });
        }
        let mut halves = Vec::with_capacity(count as usize);
        let states: Vec<State> = turns.iter().map(|&turn| State::solved(size).after(&[turn])).collect();
        let maker = Maker { orbit, turns: &turns, states: &states };
        for length in 0..=reach {
            maker.make(length, State::solved(size), &mut Vec::new(), &mut halves);
            if on(length, halves.len()).is_break() {
                return Err(RingsError::Stopped);
            }
        }
        halves.sort_unstable_by_key(|half| (half.others, half.length));
        let mut rings = Self { size, orbit, turns, reach, known: BTreeMap::new() };
        for lot in halves.chunk_by(|a, b| a.others == b.others) {
            rings.compare(lot);
        }
        Ok(rings)
    }

    /// The longest sequences of which all were tried.
    pub const fn searched(&self) -> usize {
        2 * self.reach
    }

    /// How many three-cycles have an algorithm of that length or shorter.
    pub fn count(&self) -> usize {
        self.known.len()
    }

    fn compare(&mut self, lot: &[Half]) {
        for (at, first) in lot.iter().enumerate() {
            let undone = first.own.inverse();
            for second in &lot[at + 1..] {
                let does = second.own.then(&undone);
                let mut moved = Sticker::all().filter(|&place| does.at(place) != place);
                let Some(a) = moved.next() else { continue };
                if moved.nth(1).is_none() || moved.next().is_some() {
                    continue;
                }
                // What lies at a place came from there.
                let (b, c) = (does.inverse().at(a), does.inverse().at(does.inverse().at(a)));
                for (ring, one, other) in [([a, b, c], second, first), ([a, c, b], first, second)] {
                    self.offer(canonical(ring), one, other);
                }
            }
        }
    }

    /// Keeps first half and second half undone, if they are as short as what is known and do it when they are made.
    fn offer(&mut self, ring: Ring, first: &Half, second: &Half) {
        let turns = |half: &Half| -> Vec<Turn> {
            half.turns[..usize::from(half.length)].iter().map(|&at| self.turns[usize::from(at)]).collect()
        };
        let length = usize::from(first.length + second.length);
        if let Some((known, list)) = self.known.get(&ring)
            && (*known < length || (*known == length && list.len() >= MOST_OF_CASE))
        {
            return;
        }
        let whole = [turns(first), inverted(&turns(second))].concat();
        if simplified(&whole).len() < whole.len() || !takes_round(self.size, self.orbit, ring, &whole) {
            return;
        }
        let entry = self.known.entry(ring).or_insert_with(|| (length, Vec::new()));
        if length < entry.0 {
            *entry = (length, Vec::new());
        }
        if !entry.1.contains(&whole) {
            entry.1.push(whole);
        }
    }

    /// What is known of a three-cycle: the shortest that were tried, or the commutator that the other search has.
    pub fn find(&self, ring: Ring) -> Option<RingFinding> {
        let searched = self.searched();
        if let Some((shortest, algorithms)) = self.known.get(&canonical(ring)) {
            let (shortest, algorithms) = (*shortest, algorithms.clone());
            return Some(RingFinding { ring, shortest, proven: true, searched, algorithms });
        }
        let algorithm = Conjugates::three_cycles(self.size, self.orbit)
            .leading_to(&state_of(self.size, self.orbit, ring)?)?;
        let turns = simplified(&algorithm.flatten());
        // Its turns may not all be in the set; then nothing is known of how short the set makes it.
        if !turns.iter().all(|turn| self.turns.contains(turn)) {
            return None;
        }
        let shortest = turns.len();
        Some(RingFinding {
            ring,
            shortest,
            proven: shortest == searched + 1,
            searched,
            algorithms: vec![turns],
        })
    }
}

/// What makes the sequences.
struct Maker<'a> {
    orbit: Orbit,
    turns: &'a [Turn],
    states: &'a [State],
}

impl Maker<'_> {
    fn make(&self, left: usize, state: State, made: &mut Vec<u8>, halves: &mut Vec<Half>) {
        if left == 0 {
            let mut turns = [0; 4];
            turns[..made.len()].copy_from_slice(made);
            let own = *state.orbit(self.orbit);
            halves.push(Half { others: others(&state, self.orbit), own, turns, length: made.len() as u8 });
            return;
        }
        for (at, turn) in self.turns.iter().enumerate() {
            if made.last().is_none_or(|&last| may_follow(self.turns[usize::from(last)], *turn)) {
                made.push(at as u8);
                self.make(left - 1, state.then(&self.states[at]), made, halves);
                made.pop();
            }
        }
    }
}

/// Whether a turn may stand after another: turns about one axis in one order only, no block twice.
fn may_follow(last: Turn, next: Turn) -> bool {
    last.block.axis() != next.block.axis() || last.block < next.block
}

/// How many sequences there are up to a length.
fn sequences(turns: &[Turn], reach: usize) -> u64 {
    let mut ends = vec![1u64; turns.len()];
    let mut sum = 1 + ends.iter().sum::<u64>();
    for _ in 1..reach {
        ends = turns
            .iter()
            .map(|&next| {
                let before = turns.iter().zip(&ends).filter(|(last, _)| may_follow(**last, next));
                before.map(|(_, count)| *count).fold(0u64, u64::saturating_add)
            })
            .collect();
        sum = ends.iter().copied().fold(sum, u64::saturating_add);
    }
    sum
}

fn others(state: &State, orbit: Orbit) -> u64 {
    let mut print = Fingerprint::default();
    print.take_hold(state.core());
    for &other in Orbit::of(state.size()).iter().filter(|&&other| other != orbit) {
        print.take(state.orbit(other).table());
    }
    print.number()
}

/// The state to which a three-cycle leads.
fn state_of(size: Size, orbit: Orbit, ring: Ring) -> Option<State> {
    let mut table = *Perm::IDENTITY.table();
    let [a, b, c] = ring;
    for (from, to) in [(a, b), (b, c), (c, a)] {
        table[to.index()] = from.index() as u8;
    }
    let own = Perm::new(table)?;
    let perms: Vec<Perm> =
        Orbit::of(size).iter().map(|&other| if other == orbit { own } else { Perm::IDENTITY }).collect();
    State::from_orbits(size, Rotation::NONE, &perms).ok()
}

fn takes_round(size: Size, orbit: Orbit, ring: Ring, turns: &[Turn]) -> bool {
    state_of(size, orbit, ring) == Some(State::solved(size).after(turns))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::commutators::layers;

    fn searched(layers_of: &[Turn], reach: usize) -> Rings {
        let four = Size::new(4).unwrap();
        Rings::search(four, Orbit::of(four)[1], layers_of, reach, &mut |_, _| ControlFlow::Continue(()))
            .unwrap()
    }

    /// Against making every sequence of few turns of few layers, length by length.
    #[test]
    fn nothing_shorter_is_missed() {
        let four = Size::new(4).unwrap();
        let wing = Orbit::of(four)[1];
        // With these is `[U R U', 2L]`, a three-cycle of wings (common practice, no source).
        let few: Vec<Turn> = layers(four, wing)
            .into_iter()
            .filter(|turn| ["U", "U'", "R", "R'", "2L", "2L'"].contains(&turn.to_string().as_str()))
            .collect();
        assert_eq!(few.len(), 6);
        let rings = searched(&few, 4);
        let mut plain: BTreeMap<Ring, usize> = BTreeMap::new();
        let mut words: Vec<(Option<Turn>, State)> = vec![(None, State::solved(four))];
        for length in 1..=8 {
            words = words
                .iter()
                .flat_map(|(last, state)| {
                    let next = few.iter().filter(move |turn| *last != Some(turn.inverse()));
                    next.map(move |&turn| (Some(turn), state.after(&[turn])))
                })
                .collect();
            for (_, state) in &words {
                let own = state.orbit(wing);
                let moved: Vec<Sticker> = Sticker::all().filter(|&place| own.at(place) != place).collect();
                if let [a, _, _] = moved[..] {
                    let ring = canonical([a, own.inverse().at(a), own.at(a)]);
                    if state_of(four, wing, ring) == Some(*state) {
                        plain.entry(ring).or_insert(length);
                    }
                }
            }
        }
        assert!(!plain.is_empty());
        let ours: BTreeMap<Ring, usize> = rings.known.iter().map(|(ring, known)| (*ring, known.0)).collect();
        assert_eq!(ours, plain);
    }

    #[test]
    fn what_cannot_be_searched_is_refused() {
        let four = Size::new(4).unwrap();
        let [corner, wing, ..] = Orbit::of(four) else { panic!() };
        let search = |orbit: Orbit, turns: &[Turn]| {
            Rings::search(four, orbit, turns, 2, &mut |_, _| ControlFlow::Continue(())).err()
        };
        let all = layers(four, *wing);
        assert_eq!(search(*corner, &all), Some(RingsError::SeveralStickers(*corner)));
        assert_eq!(search(*wing, &[]), Some(RingsError::NoTurns));
        assert!(matches!(search(*wing, &all[..1]), Some(RingsError::NoInverse(_))));
        let stopped = Rings::search(four, *wing, &all, 2, &mut |_, _| ControlFlow::Break(())).err();
        assert_eq!(stopped, Some(RingsError::Stopped));
        let every: Vec<Turn> = Turn::all(Size::ALL[5]).filter(|turn| !turn.is_rotation()).collect();
        let many = Rings::search(Size::ALL[5], *wing, &every, 4, &mut |_, _| ControlFlow::Continue(())).err();
        assert!(matches!(many, Some(RingsError::TooMany { length: 4, .. } | RingsError::NoTurns)));
    }
}
