//! The memo that costs least to carry out: where each cycle is broken into and in which order, chosen for the whole.

use crate::method::{Carrier, milliseconds};
use cube::{Orbit, Perm, Sticker, inverted};
use search::ease::Model;

const NONE: u32 = u32::MAX;

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
    /// Estimates every letter, or every pair, of what carries out a kind.
    pub fn of(orbit: Orbit, carrier: &Carrier, model: &Model) -> Self {
        let mut costs =
            Self { orbit, pair: vec![NONE; 576], last: [NONE; 24], joint: Vec::new(), in_pairs: false };
        let mut second = [NONE; 24];
        for target in Sticker::all() {
            let time = |turns: &[cube::Turn]| milliseconds(model, turns);
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

    /// Two letters, the first at the first place of a pair.
    pub fn pair(&self, first: Sticker, second: Sticker) -> u32 {
        self.pair[first.index() * 24 + second.index()]
    }

    /// A last single letter.
    pub const fn last(&self, target: Sticker) -> u32 {
        self.last[target.index()]
    }

    /// Four letters of two pieces turned in their places, by one algorithm.
    fn joint(&self, letters: [Sticker; 4]) -> Option<u32> {
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

/// A cycle without the buffer, broken into at one of its stickers.
struct Opening {
    start: Sticker,
    letters: Vec<Sticker>,
    /// The time of its inner pairs when it begins a pair, and when its first letter ends one.
    inner: [u32; 2],
}

/// Where to begin each cycle, in order, so that the whole takes the least time.
///
/// Exact by dynamic programming over the cycles that are done and the letter that waits for its second: every order
/// of the cycles and every sticker of each is weighed, pieces turned in their places also two together. Breaks
/// are made where the buffer's piece has come home. `order` decides among equals.
pub fn cheapest_breaks(
    seen: &Perm,
    orbit: Orbit,
    buffer: Sticker,
    order: &[Sticker; 24],
    costs: &Costs,
) -> Vec<Sticker> {
    let (before, cycles) = cycles_of(seen, orbit, buffer, order);
    let cycles: Vec<Vec<Opening>> = cycles
        .into_iter()
        .map(|starts| starts.into_iter().map(|start| opening(seen, orbit, start, costs)).collect())
        .collect();
    if cycles.is_empty() {
        return Vec::new();
    }
    let all = (1usize << cycles.len()) - 1;
    // 24 stands for no letter that waits.
    let waiting = if before.len() % 2 == 1 { before.last().map_or(24, |last| last.index()) } else { 24 };
    let mut least = vec![NONE; (all + 1) * 25];
    let mut came: Vec<Option<Came>> = vec![None; (all + 1) * 25];
    least[waiting] = 0;
    for done in 0..all {
        for wait in 0..25 {
            let sum = least[done * 25 + wait];
            if sum == NONE {
                continue;
            }
            let waits = Sticker::new(wait as u8);
            let from = (done * 25 + wait) as u32;
            for (number, openings) in cycles.iter().enumerate().filter(|(number, _)| done >> number & 1 == 0)
            {
                for opening in openings {
                    let first = waits.map_or(0, |letter| costs.pair(letter, opening.letters[0]));
                    let cost = first.saturating_add(opening.inner[usize::from(waits.is_some())]);
                    let odd = (opening.letters.len() + usize::from(waits.is_some())) % 2 == 1;
                    let next = if odd { opening.letters.last().map_or(24, |last| last.index()) } else { 24 };
                    let at = (done | 1 << number) * 25 + next;
                    if sum.saturating_add(cost) < least[at] {
                        least[at] = sum.saturating_add(cost);
                        came[at] = Some(Came { from, starts: [Some(opening.start), None] });
                    }
                    if waits.is_some() || opening.letters.len() != 2 {
                        continue;
                    }
                    for (other, seconds) in cycles
                        .iter()
                        .enumerate()
                        .filter(|&(other, _)| other != number && done >> other & 1 == 0)
                    {
                        for second in seconds.iter().filter(|second| second.letters.len() == 2) {
                            let [a, b] = [opening.letters[0], opening.letters[1]];
                            let Some(cost) = costs.joint([a, b, second.letters[0], second.letters[1]]) else {
                                continue;
                            };
                            let at = (done | 1 << number | 1 << other) * 25 + 24;
                            if sum.saturating_add(cost) < least[at] {
                                least[at] = sum.saturating_add(cost);
                                came[at] =
                                    Some(Came { from, starts: [Some(opening.start), Some(second.start)] });
                            }
                        }
                    }
                }
            }
        }
    }
    let end = |wait: usize| {
        let last = Sticker::new(wait as u8).map_or(0, |letter| costs.last(letter));
        least[all * 25 + wait].saturating_add(last)
    };
    let mut at = all * 25 + (0..25).min_by_key(|&wait| end(wait)).unwrap_or(24);
    let mut starts = Vec::new();
    while let Some(step) = came[at] {
        starts.extend(step.starts.iter().rev().flatten());
        at = step.from as usize;
    }
    starts.reverse();
    starts
}

/// How the least time of a stage was come by.
#[derive(Clone, Copy)]
struct Came {
    from: u32,
    starts: [Option<Sticker>; 2],
}

fn opening(seen: &Perm, orbit: Orbit, start: Sticker, costs: &Costs) -> Opening {
    let mut letters = vec![start];
    let mut place = start;
    loop {
        place = seen.at(place);
        letters.push(place);
        if orbit.piece(place) == orbit.piece(start) || letters.len() > 24 {
            break;
        }
    }
    let inner = [0, 1].map(|skip: usize| {
        letters[skip..]
            .chunks_exact(2)
            .fold(0u32, |sum, pair| sum.saturating_add(costs.pair(pair[0], pair[1])))
    });
    Opening { start, letters, inner }
}

/// The letters of the buffer's cycle, and for each other cycle the stickers where it can be broken into.
fn cycles_of(
    seen: &Perm,
    orbit: Orbit,
    buffer: Sticker,
    order: &[Sticker; 24],
) -> (Vec<Sticker>, Vec<Vec<Sticker>>) {
    let pieces = orbit.piece_table();
    let bit = |sticker: Sticker| 1u32 << pieces[sticker.index()];
    let mut met = bit(buffer);
    let mut before = Vec::new();
    let mut place = seen.at(buffer);
    while bit(place) != bit(buffer) {
        met |= bit(place);
        before.push(place);
        place = seen.at(place);
    }
    let mut cycles = Vec::new();
    for &candidate in order {
        if met & bit(candidate) != 0 || seen.at(candidate) == candidate {
            continue;
        }
        let mut members = 0u32;
        let mut place = candidate;
        while members & bit(place) == 0 {
            members |= bit(place);
            place = seen.at(place);
        }
        met |= members;
        cycles.push(order.iter().copied().filter(|&sticker| members & bit(sticker) != 0).collect());
    }
    (before, cycles)
}
