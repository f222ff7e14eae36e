//! An algorithm for every case of a sort at once: a few base algorithms, brought to all other cases by set-up moves.
//!
//! `S A S'` does to the pieces that `S` brings what `A` does. So from the three-cycles `[R U R', D]` and their mirror
//! images every three-cycle of corners is a few set-up moves away, and it is already written as people understand
//! it. All cases are reached by one search from the bases outwards (E. W. Dijkstra, "A Note on Two Problems in Connexion
//! with Graphs", 1959). These are not the shortest algorithms; for those see [`crate::cycle`].

use crate::ease::alone;
use cube::{Algorithm, Amount, Axis, Block, Orbit, Rotation, Size, Slice, State, Sticker, Turn};
use rustc_hash::FxHashMap;
use std::cmp::Reverse;
use std::collections::BinaryHeap;

/// What the algorithms do.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Sort {
    /// Three pieces of a kind go round; nothing else moves.
    ThreeCycle(Orbit),
    /// Two corners turn in their places, one each way.
    TwistPair,
    /// Two midges are flipped in their places.
    FlipPair,
    /// Two corners exchange places and two midges do.
    TwoSwaps,
}

/// The stickers that tell one case from another; unused ones are 255.
type Key = [u8; 4];

const UNUSED: u8 = u8::MAX;

/// How a case was reached.
#[derive(Clone, Copy)]
enum Step {
    /// By a base.
    Base(u32),
    /// By one more set-up move before another case.
    Turn(Turn, Key),
}

/// An algorithm for each case of a sort.
///
/// ```
/// use cube::{Orbit, Size, State};
/// use search::conjugate::{Conjugates, Sort};
/// let cycles = Conjugates::new(Size::THREE, Sort::ThreeCycle(Orbit::Corner));
/// // All of them: 8 · 7 · 6 / 3 ways to choose three corners in a ring, each with 3 · 3 ways to turn them.
/// assert_eq!(cycles.len(), 8 * 7 * 6 / 3 * 9);
/// ```
pub struct Conjugates {
    size: Size,
    sort: Sort,
    bases: Vec<Algorithm>,
    found: FxHashMap<Key, (u32, Step)>,
}

/// The bases of each sort, for a cube in one position; mirrors, rotations and inverses are added. Common practice, no
/// source; what each does is computed, and what is no base is passed over.
fn written(sort: Sort) -> Vec<String> {
    let amounts = ["", "2", "'"];
    let undone = ["'", "2", ""];
    let mut texts = Vec::new();
    match sort {
        Sort::ThreeCycle(Orbit::Midge) => {
            texts.extend(["[M', U2]", "[M, U2]"].map(str::to_owned));
            for a in 0..3 {
                for b in amounts {
                    for c in amounts {
                        texts.push(format!("[U{} R{b} U{}, M{c}]", amounts[a], undone[a]));
                    }
                }
            }
        }
        Sort::ThreeCycle(_) => {
            for b in amounts {
                for c in amounts {
                    texts.push(format!("[R U{b} R', D{c}]"));
                }
            }
        }
        Sort::TwistPair => {
            texts.push("R U R' U R U2 R' L' U' L U' L' U2 L".to_owned());
            texts.extend(amounts.map(|b| format!("[R' D R D' R' D R, U{b}]")));
        }
        Sort::FlipPair => {
            texts.push("M' U M' U M' U2 M U M U M U2".to_owned());
            texts.extend(amounts.map(|b| format!("[R' E2 R2 E R', U{b}]")));
            texts.extend(amounts.map(|b| format!("[M U M U2 M U M, R{b}]")));
        }
        Sort::TwoSwaps => texts.extend(
            [
                "R U R' U' R' F R2 U' R' U' R U R' F'",
                "R U R' F' R U R' U' R' F R2 U' R' U'",
                "R U' R' U' R U R D R' U' R D' R' U2 R' U'",
                "F R U' R' U' R U R' F' R U R' U' R' F R F'",
            ]
            .map(str::to_owned),
        ),
    }
    texts
}

/// The algorithms that the bases give in all 48 positions and backwards.
fn bases(size: Size, sort: Sort) -> Vec<Algorithm> {
    let mut all = Vec::new();
    for algorithm in written(sort).iter().filter_map(|text| Algorithm::parse(text, size).ok()) {
        for rotation in Rotation::all() {
            let turned = algorithm.rotated(rotation);
            for seen in [turned.mirrored(Axis::X), turned] {
                all.push(seen.inverse());
                all.push(seen);
            }
        }
    }
    all
}

fn cost(turn: Turn) -> u32 {
    alone(turn)
}

impl Conjugates {
    /// Finds an algorithm for every case of a sort that the size has.
    pub fn new(size: Size, sort: Sort) -> Self {
        let bases = bases(size, sort);
        let mut found: FxHashMap<Key, (u32, Step)> = FxHashMap::default();
        let mut open = BinaryHeap::new();
        for (number, base) in bases.iter().enumerate() {
            let turns = base.flatten();
            let Some(key) = key(sort, &State::solved(size).after(&turns)) else { continue };
            let sum: u32 = turns.iter().map(|&turn| cost(turn)).sum();
            if found.get(&key).is_none_or(|&(known, _)| sum < known) {
                found.insert(key, (sum, Step::Base(number as u32)));
                open.push(Reverse((sum, key)));
            }
        }
        let with_slices = size.is_odd() && sort == Sort::ThreeCycle(Orbit::Midge);
        let slices = Slice::ALL
            .into_iter()
            .flat_map(|slice| Amount::ALL.map(|amount| Turn::new(Block::Slice(slice), amount)));
        let set_ups: Vec<(Turn, State)> = Turn::faces()
            .chain(slices.filter(|_| with_slices))
            .map(|turn| (turn, State::solved(size).after(&[turn])))
            .collect();
        while let Some(Reverse((sum, at))) = open.pop() {
            if found.get(&at).is_none_or(|&(known, _)| known < sum) {
                continue;
            }
            for (turn, state) in &set_ups {
                let next = canonical(sort, moved(sort, at, state));
                let sum = sum + 2 * cost(*turn);
                if found.get(&next).is_none_or(|&(known, _)| sum < known) {
                    found.insert(next, (sum, Step::Turn(*turn, at)));
                    open.push(Reverse((sum, next)));
                }
            }
        }
        Self { size, sort, bases, found }
    }

    /// What the algorithms do.
    pub const fn sort(&self) -> Sort {
        self.sort
    }

    /// How many cases have an algorithm.
    pub fn len(&self) -> usize {
        self.found.len()
    }

    /// Whether the size has no case of the sort.
    pub fn is_empty(&self) -> bool {
        self.found.is_empty()
    }

    /// An algorithm that leads from the solved cube to a state, written as a conjugate; it was applied before it is
    /// given out. `None` when the state is none of the sort.
    ///
    /// ```
    /// use cube::{Algorithm, Orbit, Size, State};
    /// use search::conjugate::{Conjugates, Sort};
    /// let cycles = Conjugates::new(Size::THREE, Sort::ThreeCycle(Orbit::Midge));
    /// let turns = Algorithm::parse("R F U' M U F' R' L U M' U' L'", Size::THREE).unwrap().flatten();
    /// let cycle = State::solved(Size::THREE).after(&Algorithm::parse("[R F: [M, U2]]", Size::THREE).unwrap().flatten());
    /// let found = cycles.leading_to(&cycle).unwrap();
    /// assert_eq!(State::solved(Size::THREE).after(&found.flatten()), cycle);
    /// assert_eq!(cycles.leading_to(&State::solved(Size::THREE).after(&turns)), None);
    /// ```
    pub fn leading_to(&self, state: &State) -> Option<Algorithm> {
        let mut set_up = Vec::new();
        let mut at = key(self.sort, state)?;
        let base = loop {
            match self.found.get(&at)?.1 {
                Step::Base(number) => break self.bases.get(number as usize)?.clone(),
                Step::Turn(turn, next) => {
                    set_up.push(turn);
                    at = next;
                }
            }
        };
        let set_up = cube::simplified(&set_up);
        let algorithm = if set_up.is_empty() {
            base
        } else {
            Algorithm::conjugate(Algorithm::from_turns(self.size, &set_up).ok()?, base)?
        };
        (State::solved(self.size).after(&algorithm.flatten()) == *state).then_some(algorithm)
    }
}

/// The kind of the piece in each place of a key.
const fn orbits(sort: Sort) -> [Orbit; 4] {
    match sort {
        Sort::ThreeCycle(orbit) => [orbit; 4],
        Sort::TwistPair => [Orbit::Corner; 4],
        Sort::FlipPair => [Orbit::Midge; 4],
        Sort::TwoSwaps => [Orbit::Corner, Orbit::Corner, Orbit::Midge, Orbit::Midge],
    }
}

fn sticker(number: u8) -> Option<Sticker> {
    Sticker::new(number)
}

/// The key of the case that one set-up move leads to: `turn`, the case, `turn` undone.
fn moved(sort: Sort, key: Key, turn: &State) -> Key {
    let mut next = key;
    for (at, orbit) in next.iter_mut().zip(orbits(sort)) {
        if let Some(known) = sticker(*at) {
            *at = turn.at(orbit, known).index() as u8;
        }
    }
    next
}

/// One key for all ways to name a case.
fn canonical(sort: Sort, key: Key) -> Key {
    let turned = |orbit: Orbit, at: u8, steps: u8| {
        sticker(at).map_or(UNUSED, |known| orbit.turned(known, steps).index() as u8)
    };
    let reference = |orbit: Orbit, at: u8| {
        sticker(at).map_or(UNUSED, |known| orbit.reference(orbit.piece(known)).index() as u8)
    };
    match sort {
        Sort::ThreeCycle(orbit) => {
            let [a, b, c, _] = key;
            let mut least = key;
            for steps in 0..orbit.stickers_per_piece() {
                let [a, b, c] = [a, b, c].map(|at| turned(orbit, at, steps));
                for ring in [[a, b, c, UNUSED], [b, c, a, UNUSED], [c, a, b, UNUSED]] {
                    least = least.min(ring);
                }
            }
            least
        }
        Sort::TwistPair => {
            [reference(Orbit::Corner, key[0]), reference(Orbit::Corner, key[1]), UNUSED, UNUSED]
        }
        Sort::FlipPair => {
            let mut pair = [reference(Orbit::Midge, key[0]), reference(Orbit::Midge, key[1])];
            pair.sort_unstable();
            [pair[0], pair[1], UNUSED, UNUSED]
        }
        Sort::TwoSwaps => {
            let least = |orbit: Orbit, a: u8, b: u8| {
                (0..orbit.stickers_per_piece())
                    .flat_map(|steps| {
                        let (a, b) = (turned(orbit, a, steps), turned(orbit, b, steps));
                        [[a, b], [b, a]]
                    })
                    .min()
                    .unwrap_or([a, b])
            };
            let [a, b] = least(Orbit::Corner, key[0], key[1]);
            let [c, d] = least(Orbit::Midge, key[2], key[3]);
            [a, b, c, d]
        }
    }
}

/// The key of a state; `None` when it is none of the sort.
fn key(sort: Sort, state: &State) -> Option<Key> {
    if state.core() != Rotation::NONE {
        return None;
    }
    let kinds = orbits(sort);
    let moved = |orbit: Orbit| -> Vec<Sticker> {
        let all = orbit.all_pieces().map(|piece| orbit.reference(piece));
        all.filter(|&sticker| state.at(orbit, sticker) != sticker).collect()
    };
    let still = |orbit: &&Orbit| !kinds.contains(orbit) && !state.orbit(**orbit).is_identity();
    if Orbit::of(state.size()).iter().any(|orbit| still(&orbit))
        || !kinds.iter().all(|orbit| has(state, *orbit))
    {
        return None;
    }
    let goes = |orbit: Orbit, from: Sticker| state.orbit(orbit).inverse().at(from);
    let number = |sticker: Sticker| sticker.index() as u8;
    let found = match sort {
        Sort::ThreeCycle(orbit) => {
            let [a, _, _] = moved(orbit)[..] else { return None };
            let b = goes(orbit, a);
            let c = goes(orbit, b);
            if orbit.piece(a) == orbit.piece(b) || goes(orbit, c) != a || b == c {
                return None;
            }
            [number(a), number(b), number(c), UNUSED]
        }
        Sort::TwistPair => {
            let [a, b] = moved(Orbit::Corner)[..] else { return None };
            let by = |from: Sticker, steps| goes(Orbit::Corner, from) == Orbit::Corner.turned(from, steps);
            match (by(a, 1) && by(b, 2), by(a, 2) && by(b, 1)) {
                (true, _) => [number(a), number(b), UNUSED, UNUSED],
                (_, true) => [number(b), number(a), UNUSED, UNUSED],
                _ => return None,
            }
        }
        Sort::FlipPair => {
            let [a, b] = moved(Orbit::Midge)[..] else { return None };
            let flipped = |from: Sticker| goes(Orbit::Midge, from) == Orbit::Midge.turned(from, 1);
            if !flipped(a) || !flipped(b) {
                return None;
            }
            [number(a), number(b), UNUSED, UNUSED]
        }
        Sort::TwoSwaps => {
            let mut key = [UNUSED; 4];
            for (at, orbit) in [Orbit::Corner, Orbit::Midge].into_iter().enumerate() {
                let [a, _] = moved(orbit)[..] else { return None };
                let b = goes(orbit, a);
                if orbit.piece(a) == orbit.piece(b) || goes(orbit, b) != a {
                    return None;
                }
                (key[at * 2], key[at * 2 + 1]) = (number(a), number(b));
            }
            key
        }
    };
    Some(canonical(sort, found))
}

fn has(state: &State, orbit: Orbit) -> bool {
    Orbit::of(state.size()).contains(&orbit)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cycle::Effect;

    fn all(size: Size, sort: Sort) -> Conjugates {
        Conjugates::new(size, sort)
    }

    /// By counting: unordered pairs, ordered where the two differ.
    #[test]
    fn every_case_of_every_sort_is_reached() {
        assert_eq!(all(Size::TWO, Sort::ThreeCycle(Orbit::Corner)).len(), 112 * 9);
        assert_eq!(all(Size::THREE, Sort::ThreeCycle(Orbit::Midge)).len(), 12 * 11 * 10 / 3 * 4);
        assert_eq!(all(Size::THREE, Sort::TwistPair).len(), 8 * 7);
        assert_eq!(all(Size::THREE, Sort::FlipPair).len(), 12 * 11 / 2);
        assert_eq!(all(Size::THREE, Sort::TwoSwaps).len(), 8 * 7 / 2 * 3 * (12 * 11 / 2 * 2));
        assert!(all(Size::TWO, Sort::FlipPair).is_empty());
    }

    #[test]
    fn what_is_given_out_does_what_it_claims() {
        for orbit in [Orbit::Corner, Orbit::Midge] {
            let cycles = all(Size::THREE, Sort::ThreeCycle(orbit));
            for buffer in [Sticker::new(0).unwrap(), Sticker::new(13).unwrap()] {
                let effects = Effect::all_three_cycles(Size::THREE, orbit, buffer).unwrap();
                assert_eq!(effects.len(), if orbit == Orbit::Corner { 378 } else { 440 });
                for effect in effects {
                    let turns = cycles.leading_to(effect.state()).unwrap().flatten();
                    assert_eq!(State::solved(Size::THREE).after(&turns), *effect.state());
                    assert!(turns.len() <= 14, "{}", turns.len());
                }
            }
        }
    }

    #[test]
    fn other_states_have_no_case() {
        let sorts = [Sort::ThreeCycle(Orbit::Corner), Sort::TwistPair, Sort::FlipPair, Sort::TwoSwaps]
            .map(|sort| all(Size::THREE, sort));
        for text in ["", "R", "M2", "x", "R2 U2 R2 U2 R2 U2"] {
            let turns = Algorithm::parse(text, Size::THREE).unwrap().flatten();
            let state = State::solved(Size::THREE).after(&turns);
            assert!(sorts.iter().all(|sort| sort.leading_to(&state).is_none()), "{text}");
        }
    }
}
