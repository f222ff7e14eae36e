//! An algorithm for every case of a sort at once: a few base algorithms, brought to all other cases by set-up moves.
//!
//! `S A S'` does to the pieces that `S` brings what `A` does. So from the three-cycles `[R U R', D]` and their mirror
//! images every three-cycle of corners is a few set-up moves away, and it is already written as people understand
//! it. Only the cases that are asked for are searched, each outwards until no base can be reached with less (E. W. Dijkstra, "A
//! Note on Two Problems in Connexion with Graphs", 1959). These are not the shortest algorithms; for those see [`crate::cycle`].

use crate::commutators::{commutators, layers};
use crate::ease::alone;
use cube::{Algorithm, Axis, Block, Orbit, OrbitMap, Rotation, Size, Slice, State, Sticker, Turn};
use rustc_hash::{FxHashMap, FxHashSet};
use std::cmp::Reverse;
use std::collections::BinaryHeap;
use std::sync::{OnceLock, PoisonError, RwLock};

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

/// A base for the cube held so, perhaps backwards, and what it costs.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
struct Base {
    cost: u32,
    number: u32,
    held: Rotation,
    backwards: bool,
}

/// An algorithm for each case of a sort, found when it is asked for.
///
/// ```
/// use cube::{Orbit, Size, State};
/// use search::conjugate::{Conjugates, Sort};
/// let cycles = Conjugates::new(Size::THREE, Sort::ThreeCycle(Orbit::Corner));
/// // All of them: 8 · 7 · 6 / 3 ways to choose three corners in a ring, each with 3 · 3 ways to turn them.
/// assert_eq!(cycles.count(), 8 * 7 * 6 / 3 * 9);
/// ```
pub struct Conjugates {
    size: Size,
    sort: Sort,
    written: Vec<Algorithm>,
    bases: FxHashMap<Key, Base>,
    set_ups: Vec<SetUp>,
    /// What the cheapest base costs.
    least: u32,
    /// What was found for cases that were asked for.
    kept: RwLock<FxHashMap<Key, Found>>,
}

/// The set-up moves of a case and the base after them; none where none leads there.
type Found = Option<(Vec<Turn>, Base)>;

/// A set-up move with its undoing as a state, and what it costs to make and to undo.
struct SetUp {
    turn: Turn,
    undone: State,
    cost: u32,
}

/// How a case is come to in a search: what it costs so far, and the set-up move that was last and the case before it.
type Way = (u32, Option<(Turn, Key)>);

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
        Sort::ThreeCycle(Orbit::Corner) => {
            for b in amounts {
                for c in amounts {
                    texts.push(format!("[R U{b} R', D{c}]"));
                }
            }
        }
        // Those of wings and centres are found by search.
        Sort::ThreeCycle(
            Orbit::Wing { .. } | Orbit::XCentre { .. } | Orbit::TCentre { .. } | Orbit::Oblique(_),
        ) => {}
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

/// Algorithms for a cube in one position and what each does; those that are no case of the sort are passed over.
fn in_one_position(size: Size, sort: Sort) -> Vec<(Algorithm, Key)> {
    if let Sort::ThreeCycle(orbit) = sort
        && orbit.stickers_per_piece() == 1
    {
        let found = commutators(size, orbit).into_iter();
        return found
            .filter_map(|found| {
                let [a, b, c] = found.ring.map(|sticker| sticker.index() as u8);
                Some((found.algorithm(size)?, canonical(sort, [a, b, c, UNUSED])))
            })
            .collect();
    }
    written(sort)
        .iter()
        .filter_map(|text| Algorithm::parse(text, size).ok())
        .flat_map(|algorithm| [algorithm.mirrored(Axis::X), algorithm])
        .filter_map(|algorithm| {
            let key = key(sort, &State::solved(size).after(&algorithm.flatten()))?;
            Some((algorithm, key))
        })
        .collect()
}

/// The turns that set-ups are made of.
fn set_ups(size: Size, sort: Sort) -> Vec<Turn> {
    match sort {
        Sort::ThreeCycle(Orbit::Corner) | Sort::TwistPair | Sort::FlipPair | Sort::TwoSwaps => {
            Turn::faces().collect()
        }
        Sort::ThreeCycle(Orbit::Midge) => {
            let slices = Slice::ALL.into_iter().flat_map(|slice| Turn::of(Block::Slice(slice)));
            Turn::faces().chain(slices.filter(|_| size.is_odd())).collect()
        }
        Sort::ThreeCycle(
            orbit @ (Orbit::Wing { .. } | Orbit::XCentre { .. } | Orbit::TCentre { .. } | Orbit::Oblique(_)),
        ) => layers(size, orbit),
    }
}

impl Conjugates {
    /// The three-cycles of a kind on a size, made once and kept.
    ///
    /// ```
    /// use cube::{Orbit, Size};
    /// use search::conjugate::Conjugates;
    /// let four = Size::new(4).unwrap();
    /// // Of 24 wings, each in one way only: 24 · 23 · 22 / 3.
    /// assert_eq!(Conjugates::three_cycles(four, Orbit::of(four)[1]).count(), 4048);
    /// ```
    pub fn three_cycles(size: Size, orbit: Orbit) -> &'static Self {
        static KEPT: [OnceLock<OrbitMap<OnceLock<Conjugates>>>; Size::ALL.len()] =
            [const { OnceLock::new() }; Size::ALL.len()];
        let place = Size::ALL.iter().position(|&other| other == size).unwrap_or(0);
        let of_size = KEPT[place].get_or_init(|| OrbitMap::new(|_| OnceLock::new()));
        of_size[orbit].get_or_init(|| Self::new(size, Sort::ThreeCycle(orbit)))
    }

    /// The bases of a sort on a size, in all positions.
    pub fn new(size: Size, sort: Sort) -> Self {
        let positions: Vec<(Rotation, State)> =
            Rotation::all().map(|rotation| (rotation, State::held(size, rotation).inverse())).collect();
        let mut bases: FxHashMap<Key, Base> = FxHashMap::default();
        let mut written = Vec::new();
        for (algorithm, key) in in_one_position(size, sort) {
            let cost: u32 = algorithm.flatten().iter().map(|&turn| alone(turn)).sum();
            let number = written.len() as u32;
            written.push(algorithm);
            for (held, places) in &positions {
                for backwards in [false, true] {
                    let key = if backwards { undone(sort, key) } else { key };
                    let key = canonical(sort, moved(sort, key, places));
                    let base = Base { cost, number, held: *held, backwards };
                    let known = bases.entry(key).or_insert(base);
                    if cost < known.cost {
                        *known = base;
                    }
                }
            }
        }
        let set_up = |turn: Turn| SetUp {
            turn,
            undone: State::solved(size).after(&[turn.inverse()]),
            cost: 2 * alone(turn),
        };
        let least = bases.values().map(|base| base.cost).min().unwrap_or(0);
        let set_ups = set_ups(size, sort).into_iter().map(set_up).collect();
        Self { size, sort, written, bases, set_ups, least, kept: RwLock::default() }
    }

    /// What the algorithms do.
    pub const fn sort(&self) -> Sort {
        self.sort
    }

    /// How many cases have an algorithm: those that set-up moves lead to from the bases.
    pub fn count(&self) -> usize {
        let mut reached: FxHashSet<Key> = self.bases.keys().copied().collect();
        let mut open: Vec<Key> = reached.iter().copied().collect();
        while let Some(key) = open.pop() {
            for set_up in &self.set_ups {
                let next = canonical(self.sort, moved(self.sort, key, &set_up.undone));
                if reached.insert(next) {
                    open.push(next);
                }
            }
        }
        reached.len()
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
        let (set_up, base) = self.found(key(self.sort, state)?)?;
        let base = if base.backwards {
            self.written.get(base.number as usize)?.rotated(base.held).inverse()
        } else {
            self.written.get(base.number as usize)?.rotated(base.held)
        };
        let set_up = cube::simplified(&set_up);
        let algorithm = if set_up.is_empty() {
            base
        } else {
            Algorithm::conjugate(Algorithm::from_turns(self.size, &set_up).ok()?, base)?
        };
        (State::solved(self.size).after(&algorithm.flatten()) == *state).then_some(algorithm)
    }

    /// The same, searched once.
    fn found(&self, wanted: Key) -> Found {
        // Nothing is done while it is locked that could leave it in the midst of something.
        let kept = self.kept.read().unwrap_or_else(PoisonError::into_inner).get(&wanted).cloned();
        kept.unwrap_or_else(|| {
            let found = self.cheapest(wanted);
            self.kept.write().unwrap_or_else(PoisonError::into_inner).insert(wanted, found.clone());
            found
        })
    }

    /// The set-up moves before the base that together cost least.
    fn cheapest(&self, wanted: Key) -> Found {
        let mut ways: FxHashMap<Key, Way> = FxHashMap::default();
        ways.insert(wanted, (0, None));
        let mut open = BinaryHeap::from([Reverse((0u32, wanted))]);
        let mut best: Option<(u32, Key, Base)> = None;
        while let Some(Reverse((sum, at))) = open.pop() {
            if best.is_some_and(|(known, ..)| known <= sum + self.least) {
                break;
            }
            if ways.get(&at).is_some_and(|&(known, _)| known < sum) {
                continue;
            }
            if let Some(&base) = self.bases.get(&at)
                && best.is_none_or(|(known, ..)| sum + base.cost < known)
            {
                best = Some((sum + base.cost, at, base));
            }
            for set_up in &self.set_ups {
                // `S A S'` does this case where `A` does the one that `S` brings it to.
                let before = canonical(self.sort, moved(self.sort, at, &set_up.undone));
                let sum = sum + set_up.cost;
                if ways.get(&before).is_none_or(|&(known, _)| sum < known) {
                    ways.insert(before, (sum, Some((set_up.turn, at))));
                    open.push(Reverse((sum, before)));
                }
            }
        }
        let (_, mut at, base) = best?;
        let mut turns = Vec::new();
        while let Some(&(_, Some((turn, after)))) = ways.get(&at) {
            turns.push(turn);
            at = after;
        }
        turns.reverse();
        Some((turns, base))
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

/// The key of the case that the same turns made backwards solve.
const fn undone(sort: Sort, key: Key) -> Key {
    let [a, b, c, d] = key;
    match sort {
        Sort::ThreeCycle(_) => [a, c, b, d],
        Sort::TwistPair => [b, a, c, d],
        Sort::FlipPair | Sort::TwoSwaps => key,
    }
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
        assert_eq!(all(Size::TWO, Sort::ThreeCycle(Orbit::Corner)).count(), 112 * 9);
        assert_eq!(all(Size::THREE, Sort::ThreeCycle(Orbit::Midge)).count(), 12 * 11 * 10 / 3 * 4);
        assert_eq!(all(Size::THREE, Sort::TwistPair).count(), 8 * 7);
        assert_eq!(all(Size::THREE, Sort::FlipPair).count(), 12 * 11 / 2);
        assert_eq!(all(Size::THREE, Sort::TwoSwaps).count(), 8 * 7 / 2 * 3 * (12 * 11 / 2 * 2));
        assert!(all(Size::TWO, Sort::FlipPair).count() == 0);
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
