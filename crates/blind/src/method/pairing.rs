//! What letters take to be carried out, and how they go together into algorithms.

use super::{Carrier, Inner, milliseconds};
use crate::usual::MethodName;
use cube::{Orbit, Sticker, Turn, inverted};
use search::ease::Model;

/// The cost of what cannot be done.
pub(crate) const NONE: u32 = u32::MAX;

/// The estimated times of the letters of a kind, in thousandths of a second.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Costs {
    orbit: Orbit,
    /// Two letters that stand at the first and second place of a pair, by first · 24 + second.
    pair: Vec<u32>,
    /// A last single letter.
    last: [u32; 24],
    /// Four letters that turn two pieces in their places by one algorithm, by their first and third.
    joint: Vec<u32>,
    /// Whether two letters are one algorithm.
    in_pairs: bool,
}

/// Letters that are carried out by one algorithm, by where they begin.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Group {
    /// One letter.
    One(usize),
    /// Two letters.
    Pair(usize),
    /// Four letters that turn two pieces in their places.
    Joint(usize),
}

impl Costs {
    /// Costs of letters that are carried out in pairs: of two letters, the first at the first place of a pair, and of a last
    /// single one.
    pub fn in_pairs(
        orbit: Orbit,
        pair: impl Fn(Sticker, Sticker) -> u32,
        last: impl Fn(Sticker) -> u32,
    ) -> Self {
        let mut costs =
            Self { orbit, pair: vec![NONE; 576], last: [NONE; 24], joint: Vec::new(), in_pairs: true };
        for first in Sticker::all() {
            costs.last[first.index()] = last(first);
            for second in Sticker::all() {
                costs.pair[first.index() * 24 + second.index()] = pair(first, second);
            }
        }
        costs
    }

    /// The same where two pieces that are turned in their places may be put right by one algorithm: what that costs by the first
    /// letters of both, of corners that of the piece that turns clockwise first; nothing where there is no such algorithm.
    #[must_use]
    pub fn with_joint(mut self, joint: impl Fn(Sticker, Sticker) -> Option<u32>) -> Self {
        let all = || Sticker::all().flat_map(|one| Sticker::all().map(move |other| (one, other)));
        self.joint = all().map(|(one, other)| joint(one, other).unwrap_or(NONE)).collect();
        self
    }

    /// Estimates every letter, or every pair, of what carries out a kind.
    pub fn of(orbit: Orbit, carrier: &Carrier, model: &Model) -> Self {
        let mut costs =
            Self { orbit, pair: vec![NONE; 576], last: [NONE; 24], joint: Vec::new(), in_pairs: false };
        if let Carrier::Inner(inner) = carrier {
            return Self::of_inner(inner, |turns| milliseconds(model, turns));
        }
        let mut second = [NONE; 24];
        for target in Sticker::all() {
            let time = |turns: &[Turn]| milliseconds(model, turns);
            if let Carrier::SliceSwap(slice) = carrier {
                let letter =
                    |at_second| slice.letter(target, at_second).map_or(NONE, |made| time(&made.turns()));
                (costs.last[target.index()], second[target.index()]) = (letter(false), letter(true));
            } else if let Some(swap) = carrier.swap()
                && let Some(setup) = swap.setups(target).first()
            {
                let turns = [setup.turns(), swap.turns(), &inverted(setup.turns())].concat();
                costs.last[target.index()] = time(&turns);
                second[target.index()] = time(&turns);
            }
        }
        for first in Sticker::all() {
            for then in Sticker::all() {
                let (one, other) = (costs.last[first.index()], second[then.index()]);
                if one != NONE && other != NONE {
                    costs.pair[first.index() * 24 + then.index()] = one + other;
                }
            }
        }
        if let Carrier::ThreeCycle(cycles) = carrier {
            costs.in_pairs = true;
            costs.joint = vec![NONE; 576];
            for one in Sticker::all() {
                for other in Sticker::all() {
                    let cost = |case: Option<&crate::Case>| case.map_or(NONE, crate::Case::milliseconds);
                    let at = one.index() * 24 + other.index();
                    costs.pair[at] = if one == other { 0 } else { cost(cycles.case(one, other)) };
                    let by = orbit.stickers_per_piece() - 1;
                    let letters = ([one, orbit.turned(one, 1)], [other, orbit.turned(other, by)]);
                    costs.joint[at] = cost(cycles.joint(letters.0, letters.1));
                }
            }
        }
        costs
    }

    /// What the letters of wings or centres take, measured by their turns.
    pub(super) fn of_inner(inner: &Inner, measure: impl Fn(&[Turn]) -> u32) -> Self {
        let letter = |target: Sticker, second: bool| {
            inner.letter(target, second).map_or(NONE, |letter| measure(&letter.turns()))
        };
        let each = [false, true]
            .map(|second| Sticker::all().map(|target| letter(target, second)).collect::<Vec<u32>>());
        let in_pairs = inner.method() == MethodName::ThreeCycle;
        let pair = |first: Sticker, second: Sticker| {
            if in_pairs {
                let none = if first == second { 0 } else { NONE };
                inner.pair(first, second).map_or(none, |pair| measure(&pair.turns))
            } else {
                let [firsts, seconds] = &each;
                firsts[first.index()].saturating_add(seconds[second.index()])
            }
        };
        let last = |target: Sticker| inner.last(target).map_or(NONE, |letter| measure(&letter.turns()));
        Self { in_pairs, ..Self::in_pairs(inner.orbit(), pair, last) }
    }

    /// Two letters, the first at the first place of a pair.
    pub fn pair(&self, first: Sticker, second: Sticker) -> u32 {
        self.pair[first.index() * 24 + second.index()]
    }

    /// A last single letter.
    pub const fn last(&self, target: Sticker) -> u32 {
        self.last[target.index()]
    }

    /// Four letters of two pieces turned in their places, by one algorithm.
    pub(crate) fn joint(&self, letters: [Sticker; 4]) -> Option<u32> {
        if self.joint.is_empty() {
            return None;
        }
        let [a, b, c, d] = letters;
        let clockwise = |from: Sticker, to: Sticker| self.orbit.turned(from, 1) == to;
        let [first, second] = match (clockwise(a, b), clockwise(c, d)) {
            _ if !self.on_one_piece(a, b) || !self.on_one_piece(c, d) => return None,
            (true, _) if self.orbit.stickers_per_piece() == 2 => [a, c],
            (true, false) => [a, c],
            (false, true) => [c, a],
            _ => return None,
        };
        Some(self.joint[first.index() * 24 + second.index()]).filter(|&cost| cost != NONE)
    }

    fn on_one_piece(&self, a: Sticker, b: Sticker) -> bool {
        a != b && self.orbit.piece(a) == self.orbit.piece(b)
    }

    /// How letters are put together into algorithms, and the time of the whole.
    ///
    /// Letters go in pairs from the first on; where pairs that turn pieces in their places follow one another, two of
    /// them are made by one algorithm wherever that takes less time.
    pub fn groups(&self, targets: &[Sticker]) -> (Vec<Group>, u32) {
        let mut groups = Vec::with_capacity(targets.len());
        let mut sum = 0u32;
        let mut at = 0;
        while at < targets.len() {
            let run = self.turned_pairs(&targets[at..]);
            if run > 1 {
                sum = sum.saturating_add(self.group_run(targets, at, run, &mut groups));
                at += run * 2;
            } else if at + 1 < targets.len() {
                sum = sum.saturating_add(self.pair(targets[at], targets[at + 1]));
                if self.in_pairs {
                    groups.push(Group::Pair(at));
                } else {
                    groups.extend([Group::One(at), Group::One(at + 1)]);
                }
                at += 2;
            } else {
                sum = sum.saturating_add(self.last(targets[at]));
                groups.push(Group::One(at));
                at += 1;
            }
        }
        (groups, sum)
    }

    /// How many pairs from here on turn a piece in its place.
    fn turned_pairs(&self, targets: &[Sticker]) -> usize {
        if self.joint.is_empty() {
            return 0;
        }
        targets.chunks_exact(2).take_while(|pair| self.on_one_piece(pair[0], pair[1])).count()
    }

    /// The cheapest way through pairs that turn pieces in their places, singly or two together.
    fn group_run(&self, targets: &[Sticker], from: usize, run: usize, groups: &mut Vec<Group>) -> u32 {
        let letter = |pair: usize| from + 2 * pair;
        let mut best = vec![(0u32, false); run + 1];
        for pair in (0..run).rev() {
            let at = letter(pair);
            let single = self.pair(targets[at], targets[at + 1]).saturating_add(best[pair + 1].0);
            best[pair] = (single, false);
            if pair + 1 < run
                && let Some(cost) =
                    self.joint([targets[at], targets[at + 1], targets[at + 2], targets[at + 3]])
                && cost.saturating_add(best[pair + 2].0) < single
            {
                best[pair] = (cost.saturating_add(best[pair + 2].0), true);
            }
        }
        let mut pair = 0;
        while pair < run {
            let together = best[pair].1;
            groups.push(if together { Group::Joint(letter(pair)) } else { Group::Pair(letter(pair)) });
            pair += if together { 2 } else { 1 };
        }
        best[0].0
    }
}
