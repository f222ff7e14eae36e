//! Wings and centres: pieces of one sticker, carried out two letters at a time by commutators, or one at a time by an algorithm
//! that besides leaves the same places exchanged after every letter.
//!
//! Everything is made for the letters that are asked for and applied before it is handed out. A letter at the first place of a pair
//! exchanges the buffer's piece with the target's and does the rest that every letter does: with slice-swap the other pieces of
//! a half-turned layer, with one-swap of centres two further places. At the second place the letter is made for the place that
//! the rest took its target to, so two letters do just what they say. A single letter at the end is carried out cleanly: of
//! wings by a swap of two and nothing else that can be seen, of centres by a three-cycle through a place that looks alike.

use super::cycles::{Asked, letters_effect};
use super::{MethodError, SliceLetter};
use crate::cycle_case::CycleAlgorithm;
use crate::swap::SwapEffect;
use crate::usual::MethodName;
use cube::{Amount, Axis, Block, Orbit, Perm, Rotation, Size, State, Sticker, Turn};
use search::commutators::layers;
use search::conjugate::Conjugates;
use std::collections::BTreeMap;

/// The longest set-up that is looked for; what it does not reach is reached by a three-cycle before the algorithm.
const LONGEST_SETUP: usize = 3;

/// An algorithm that exchanges the buffer's piece with one other, and what it does besides.
#[derive(Clone, PartialEq, Eq, Debug)]
struct Exchange {
    turns: Vec<Turn>,
    /// The place whose piece it exchanges with the buffer's.
    target: Sticker,
    /// What it does besides to each kind of the size, in their order.
    rest: Vec<Perm>,
    /// Whether the rest is to be so for every piece, and not only as far as solved centres can be told apart.
    exact: bool,
    /// The set-up moves of each target, where they were looked for at once.
    set_ups: Option<Vec<Option<Vec<Turn>>>>,
}

/// An algorithm for two letters.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct PairTurns {
    /// Its turns, merged and cancelled.
    pub turns: Vec<Turn>,
    /// Whether it was found by search, since none was given.
    pub found: bool,
}

/// A method for the wings of one depth or for the centres of one kind.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Inner {
    size: Size,
    orbit: Orbit,
    buffer: Sticker,
    method: MethodName,
    /// Algorithms of one's own for two letters.
    own: BTreeMap<[Sticker; 2], Vec<Turn>>,
    /// What carries out a letter, where letters are carried out one by one.
    each: Option<Exchange>,
    /// What carries out the last letter of an odd number; none for centres, which a three-cycle carries out.
    last: Option<Exchange>,
}

/// What turns do to each kind of a size, in their order; none where the fixed centres end elsewhere.
fn effect(size: Size, turns: &[Turn]) -> Option<Vec<Perm>> {
    let state = State::solved(size).after(turns);
    let perms = Orbit::of(size).iter().map(|&orbit| *state.orbit(orbit)).collect();
    (state.core() == Rotation::NONE).then_some(perms)
}

/// Whether solved pieces look the same after both.
fn look_alike(size: Size, one: &[Perm], other: &[Perm]) -> bool {
    Orbit::of(size).iter().zip(one.iter().zip(other)).all(|(orbit, (a, b))| {
        a == b
            || (orbit.looks_alike() && Sticker::all().all(|place| a.at(place).face() == b.at(place).face()))
    })
}

impl Exchange {
    /// What turns do besides exchanging the buffer's piece; none unless they exchange it with one other.
    fn of(size: Size, orbit: Orbit, buffer: Sticker, turns: Vec<Turn>, exact: bool) -> Option<Self> {
        let mut rest = effect(size, &turns)?;
        let own = rest.iter_mut().zip(Orbit::of(size)).find(|(_, other)| **other == orbit)?.0;
        let target = own.at(buffer);
        if target == buffer || own.at(target) != buffer {
            return None;
        }
        *own = letters_effect(orbit, buffer, &[target]).then(own);
        // What is left over after one letter must be gone after two.
        let identity = vec![Perm::IDENTITY; rest.len()];
        let twice: Vec<Perm> = rest.iter().map(|perm| perm.then(perm)).collect();
        let undone = if exact { twice == identity } else { look_alike(size, &twice, &identity) };
        undone.then_some(Self { turns, target, rest, exact, set_ups: None })
    }

    /// What the rest does to the kind itself.
    fn own_rest(&self, size: Size, orbit: Orbit) -> Perm {
        let of = Orbit::of(size).iter().zip(&self.rest);
        of.into_iter().find(|(other, _)| **other == orbit).map_or(Perm::IDENTITY, |(_, perm)| *perm)
    }
}

impl Inner {
    /// A method for a kind, with the given algorithms where they do what they are said to do.
    ///
    /// `swap` is the algorithm that exchanges two wings, for the person's own one-swap and for last letters; centres need none.
    ///
    /// # Errors
    /// [`MethodError::NotCovered`] where no algorithm of the method can be made on the size.
    pub(super) fn new(
        size: Size,
        orbit: Orbit,
        buffer: Sticker,
        method: MethodName,
        swap: Option<&SwapEffect>,
        algorithms: &[CycleAlgorithm],
    ) -> Result<Self, MethodError> {
        let missing = MethodError::NotCovered { size, orbit };
        let mut inner = Self { size, orbit, buffer, method, own: BTreeMap::new(), each: None, last: None };
        for given in algorithms {
            inner.offer(given);
        }
        if let Some(swap) = swap {
            let turns = swap.algorithm().flatten();
            inner.last = Some(Exchange::of(size, orbit, buffer, turns, false).ok_or(missing.clone())?);
        }
        inner.each = match method {
            MethodName::ThreeCycle => None,
            MethodName::SliceSwap => Some(inner.half_turn().ok_or(missing)?),
            MethodName::OneSwap if inner.last.is_some() => inner.last.clone(),
            MethodName::OneSwap => Some(inner.two_exchanges().ok_or(missing)?),
        };
        if let Some(mut each) = inner.each.take() {
            each.set_ups = Some(inner.set_ups(&each, None));
            inner.each = Some(each);
        }
        Ok(inner)
    }

    /// The half turn of an inner layer that moves the buffer.
    fn half_turn(&self) -> Option<Exchange> {
        let half = |turn: &Turn| turn.amount == Amount::Half && !matches!(turn.block, Block::Outer { .. });
        // Of two layers, as x-centres lie in, the one across is half-turned: to the right hand or the left.
        let mut halves: Vec<Turn> = layers(self.size, self.orbit).into_iter().filter(half).collect();
        halves.sort_by_key(|turn| (matches!(turn.block, Block::Slice(_)), turn.block.axis() != Axis::X));
        halves.into_iter().find_map(|turn| Exchange::of(self.size, self.orbit, self.buffer, vec![turn], true))
    }

    /// Two exchanges of centres: the buffer with a place, and two further places of the buffer's face with one another. The
    /// shortest of all places that is found so.
    fn two_exchanges(&self) -> Option<Exchange> {
        let near: Vec<Sticker> = Sticker::all()
            .filter(|&place| place != self.buffer && place.face() == self.buffer.face())
            .collect();
        let &[c, d, ..] = near.as_slice() else { return None };
        let second = self.pair(d, c)?.turns;
        let targets = Sticker::all().filter(|place| place.face() != self.buffer.face());
        let all = targets.filter_map(|target| {
            Some(cube::simplified(&[self.pair(target, c)?.turns, second.clone()].concat()))
        });
        let turns = all.min_by_key(Vec::len)?;
        Exchange::of(self.size, self.orbit, self.buffer, turns, true)
    }

    /// Keeps an algorithm if it does what the letters ask, and is no longer than what is there. What does something else is not
    /// used; the check of a sheet tells whose it is.
    fn offer(&mut self, given: &CycleAlgorithm) {
        let case = given.case;
        if case.orbit != self.orbit || case.buffer != self.buffer {
            return;
        }
        let Ok(algorithm) = given.algorithm.on(self.size) else { return };
        let turns = cube::simplified(&algorithm.flatten());
        let targets = [case.first, case.second];
        let wanted = self.letters(&targets).wanted();
        let shorter = self.own.get(&targets).is_none_or(|known| turns.len() < known.len());
        if shorter && wanted == Some(State::solved(self.size).after(&turns)) {
            self.own.insert(targets, turns);
        }
    }

    const fn letters<'a>(&self, targets: &'a [Sticker]) -> Asked<'a> {
        Asked { size: self.size, orbit: self.orbit, buffer: self.buffer, targets }
    }

    /// The kind of piece.
    pub const fn orbit(&self) -> Orbit {
        self.orbit
    }

    /// The buffer.
    pub const fn buffer(&self) -> Sticker {
        self.buffer
    }

    /// The name of the method.
    pub const fn method(&self) -> MethodName {
        self.method
    }

    /// The place that the method's own algorithm exchanges the buffer with, where letters are carried out one by one.
    pub fn exchanged_with(&self) -> Option<Sticker> {
        self.each.as_ref().map(|each| each.target)
    }

    /// The algorithm for two letters: one's own, or a commutator with set-up moves that the search has. `None` when a letter is the
    /// buffer's or both are the same.
    ///
    /// ```
    /// use blind::{Carrier, Conventions, Solver};
    /// use cube::{Orbit, Size, State};
    /// let four = Size::new(4).unwrap();
    /// let solver = Solver::new(four, Conventions::default());
    /// let centre = Orbit::of(four)[2];
    /// let Some(Carrier::Inner(method)) = solver.method().unwrap().carrier(centre) else { panic!() };
    /// let [first, second] = ["Fur", "Bdl"].map(|name| centre.sticker(name).unwrap());
    /// let state = State::solved(four).after(&method.pair(first, second).unwrap().turns);
    /// // The buffer's piece is at the first place, the first place's at the second.
    /// assert_eq!(state.at(centre, first), method.buffer());
    /// assert_eq!(state.at(centre, second), first);
    /// ```
    pub fn pair(&self, first: Sticker, second: Sticker) -> Option<PairTurns> {
        let targets = [first, second];
        if first == second || targets.contains(&self.buffer) {
            return None;
        }
        if let Some(turns) = self.own.get(&targets) {
            return Some(PairTurns { turns: turns.clone(), found: false });
        }
        let wanted = self.letters(&targets).wanted()?;
        let algorithm = Conjugates::three_cycles(self.size, self.orbit).leading_to(&wanted)?;
        let turns = cube::simplified(&algorithm.flatten());
        (State::solved(self.size).after(&turns) == wanted).then_some(PairTurns { turns, found: true })
    }

    /// How a letter is carried out by itself, at the first or the second place of a pair; none where letters are carried out two at
    /// a time, and for the buffer.
    pub fn letter(&self, target: Sticker, second: bool) -> Option<SliceLetter> {
        let each = self.each.as_ref()?;
        let made_for = if second { each.own_rest(self.size, self.orbit).at(target) } else { target };
        self.reached(each, made_for)
    }

    /// How the last letter of an odd number is carried out, so that nothing is left over.
    pub fn last(&self, target: Sticker) -> Option<SliceLetter> {
        if target == self.buffer {
            return None;
        }
        if let Some(last) = &self.last {
            return self.reached(last, target);
        }
        // The buffer holds a piece for the target and the target one for the buffer's face: so does a third place of either face.
        let thirds = Sticker::all().filter(|&third| third != target && third != self.buffer);
        let ways = thirds.filter_map(|third| {
            if third.face() == self.buffer.face() {
                self.pair(target, third)
            } else if third.face() == target.face() {
                self.pair(third, target)
            } else {
                None
            }
        });
        let swap = ways.map(|pair| pair.turns).min_by_key(Vec::len)?;
        Some(SliceLetter { setup: Vec::new(), swap })
    }

    /// A letter by an exchange: set-up moves to its target, or a three-cycle before it, whichever is shorter; applied.
    fn reached(&self, exchange: &Exchange, target: Sticker) -> Option<SliceLetter> {
        if target == self.buffer {
            return None;
        }
        let set_up = match &exchange.set_ups {
            Some(known) => known[target.index()].clone(),
            None => self.set_ups(exchange, Some(target)).swap_remove(target.index()),
        };
        if let Some(setup) = set_up {
            return Some(SliceLetter { setup, swap: exchange.turns.clone() });
        }
        let before = self.pair(target, exchange.target)?.turns;
        let letter = SliceLetter { setup: Vec::new(), swap: [before, exchange.turns.clone()].concat() };
        self.does(exchange, target, &letter).then_some(letter)
    }

    /// For each target, or only one, the cheapest of the shortest set-ups with which an exchange carries it out; applied.
    fn set_ups(&self, exchange: &Exchange, only: Option<Sticker>) -> Vec<Option<Vec<Turn>>> {
        let own = exchange.own_rest(self.size, self.orbit);
        let words = Words {
            turns: layers(self.size, self.orbit)
                .into_iter()
                .map(|turn| (turn, *State::solved(self.size).after(&[turn]).orbit(self.orbit)))
                .collect(),
            stays: Sticker::all().filter(|&place| place == self.buffer || own.at(place) != place).collect(),
            to: exchange.target,
        };
        let mut known = vec![None; Sticker::COUNT];
        let open = |known: &[Option<Vec<Turn>>], target: Sticker| {
            known[target.index()].is_none()
                && !words.stays.contains(&target)
                && only.is_none_or(|only| only == target)
        };
        for length in 0..=LONGEST_SETUP {
            let mut found: Vec<(u32, Sticker, Vec<Turn>)> = Vec::new();
            words.all(length, &Perm::IDENTITY, &mut Vec::new(), &mut |target, setup| {
                if open(&known, target) {
                    let cost = setup.iter().map(|&turn| search::ease::alone(turn)).sum();
                    found.push((cost, target, setup.to_vec()));
                }
            });
            found.sort_by_key(|(cost, ..)| *cost);
            for (_, target, setup) in found {
                let letter = SliceLetter { setup, swap: exchange.turns.clone() };
                if open(&known, target) && self.does(exchange, target, &letter) {
                    known[target.index()] = Some(letter.setup);
                }
            }
            if !Sticker::all().any(|target| open(&known, target)) {
                break;
            }
        }
        known
    }

    /// Whether a letter does what an exchange with its target does, and the same besides.
    fn does(&self, exchange: &Exchange, target: Sticker, letter: &SliceLetter) -> bool {
        let wanted: Vec<Perm> = Orbit::of(self.size)
            .iter()
            .zip(&exchange.rest)
            .map(|(&orbit, rest)| {
                if orbit == self.orbit {
                    letters_effect(orbit, self.buffer, &[target]).then(rest)
                } else {
                    *rest
                }
            })
            .collect();
        effect(self.size, &letter.turns()).is_some_and(|does| {
            if exchange.exact { does == wanted } else { look_alike(self.size, &does, &wanted) }
        })
    }

    /// How many turns each letter takes by itself, for choosing where to begin a cycle; those of the last letter where letters
    /// are carried out two at a time.
    pub fn costs(&self) -> [u32; 24] {
        let mut costs = [1 << 16; 24];
        for target in Sticker::all().filter(|&target| target != self.buffer) {
            let letter = self.letter(target, false).or_else(|| self.last(target));
            if let Some(letter) = letter {
                costs[target.index()] = letter.turns().len() as u32;
            }
        }
        costs
    }
}

/// Sequences of turns that bring a place of a kind to another and leave the pieces of some places there.
struct Words {
    turns: Vec<(Turn, Perm)>,
    stays: Vec<Sticker>,
    to: Sticker,
}

impl Words {
    /// All of a length, each with the place that it brings.
    fn all(&self, left: usize, before: &Perm, made: &mut Vec<Turn>, found: &mut dyn FnMut(Sticker, &[Turn])) {
        if left == 0 {
            if self.stays.iter().all(|&place| before.at(place) == place) {
                found(before.at(self.to), made);
            }
            return;
        }
        for (turn, pull) in &self.turns {
            let follows = made
                .last()
                .is_none_or(|last: &Turn| last.block.axis() != turn.block.axis() || last.block < turn.block);
            if !follows {
                continue;
            }
            // Most sequences end by moving what should stay; these need not be made.
            if left == 1 && self.stays.iter().any(|&place| before.at(pull.at(place)) != place) {
                continue;
            }
            made.push(*turn);
            self.all(left - 1, &before.then(pull), made, found);
            made.pop();
        }
    }
}
