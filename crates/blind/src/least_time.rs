//! The memo that takes least time to carry out: where each cycle is broken into and in which order, chosen for the whole.
//!
//! Between the letters of two cycles only one thing passes on: the letter that waits for the second of its pair, if one does. So
//! what is left to do costs as much as the cycles that are left and that letter say, whatever came before. Cycles of an even
//! number of letters, begun where none waits, neither need nor leave one: they may stand at any such point, so they are weighed by
//! themselves, and only the others are chained.

use crate::method::{Costs, NONE};
use cube::{Orbit, Perm, Sticker};

/// A set of cycles, a bit each.
type Set = usize;

/// Of the places in a row of [`Cycles::onward`], the one for no letter that waits.
const NOTHING: usize = 24;

/// A cycle without the buffer, broken into at one of its stickers.
#[derive(Clone, Copy)]
struct Opening {
    first: Sticker,
    last: Sticker,
    /// The time of its inner pairs when it begins a pair, and when its first letter ends one.
    inner: [u32; 2],
}

/// A cycle without the buffer, in all ways to break into it.
struct Cycle {
    /// Which of all openings are its.
    openings: std::ops::Range<usize>,
    /// Whether its letters are odd in number.
    odd: bool,
    /// Whether it is a piece turned in its place.
    turned: bool,
}

/// Where to begin each cycle, in order, so that the whole takes the least time.
///
/// Exact: every order of the cycles and every sticker of each is weighed, pieces turned in their places also two together.
/// Breaks are made where the buffer's piece has come home. `order` decides among equals.
pub fn cheapest_breaks(
    seen: &Perm,
    orbit: Orbit,
    buffer: Sticker,
    order: &[Sticker; 24],
    costs: &Costs,
) -> Vec<Sticker> {
    let pieces = orbit.piece_table();
    let bit = |sticker: Sticker| 1u32 << pieces[sticker.index()];
    let mut met = bit(buffer);
    // The letter of the buffer's cycle that waits at its end.
    let mut waits = None;
    let mut place = seen.at(buffer);
    while bit(place) != bit(buffer) {
        met |= bit(place);
        waits = if waits.is_none() { Some(place) } else { None };
        place = seen.at(place);
    }
    let mut cycles = Cycles::new(orbit, order, costs);
    for &candidate in order {
        if met & bit(candidate) == 0 && seen.at(candidate) != candidate {
            met |= cycles.add(seen, candidate);
        }
    }
    if cycles.all.is_empty() {
        return Vec::new();
    }
    cycles.weigh_alone();
    cycles.weigh_chains(waits);
    cycles.cheapest(waits)
}

/// The cycles to be chosen among, with what sets of them take.
struct Cycles<'a> {
    orbit: Orbit,
    order: &'a [Sticker; 24],
    costs: &'a Costs,
    all: Vec<Cycle>,
    openings: Vec<Opening>,
    /// For each sticker its opening.
    opening_of: [Option<u8>; 24],
    /// Cycles with an even number of letters, and those that are a piece turned in its place.
    even: Set,
    turned: Set,
    /// For each set of even cycles what they take where no letter waits, each by itself or two turned pieces together.
    alone: Vec<u32>,
    /// For each set of cycles and each letter that may wait before them what the letters from there on take, where no even
    /// cycle begins while none waits.
    onward: Vec<u32>,
}

impl<'a> Cycles<'a> {
    fn new(orbit: Orbit, order: &'a [Sticker; 24], costs: &'a Costs) -> Self {
        Self {
            orbit,
            order,
            costs,
            all: Vec::new(),
            openings: Vec::new(),
            opening_of: [None; 24],
            even: 0,
            turned: 0,
            alone: Vec::new(),
            onward: Vec::new(),
        }
    }

    /// Takes the cycle of a sticker in; its pieces.
    fn add(&mut self, seen: &Perm, member: Sticker) -> u32 {
        let pieces = self.orbit.piece_table();
        let mut members = 0u32;
        let mut place = member;
        while members & 1 << pieces[place.index()] == 0 {
            members |= 1 << pieces[place.index()];
            place = seen.at(place);
        }
        let from = self.openings.len();
        for &start in self.order.iter().filter(|start| members & 1 << pieces[start.index()] != 0) {
            self.opening_of[start.index()] = Some(self.openings.len() as u8);
            self.openings.push(self.opening(seen, start));
        }
        let count = members.count_ones();
        let cycle =
            Cycle { openings: from..self.openings.len(), odd: count.is_multiple_of(2), turned: count == 1 };
        self.even |= usize::from(!cycle.odd) << self.all.len();
        self.turned |= usize::from(cycle.turned) << self.all.len();
        self.all.push(cycle);
        members
    }

    fn opening(&self, seen: &Perm, first: Sticker) -> Opening {
        let pieces = self.orbit.piece_table();
        let mut opening = Opening { first, last: first, inner: [0; 2] };
        // Of the pairs of neighbours every other one is a pair of the memo; which ones depends on where the first letter falls.
        let mut which = 0;
        loop {
            let next = seen.at(opening.last);
            let inner = &mut opening.inner[which];
            *inner = inner.saturating_add(self.costs.pair(opening.last, next));
            which = 1 - which;
            opening.last = next;
            if pieces[next.index()] == pieces[first.index()] {
                return opening;
            }
        }
    }

    fn openings(&self, cycle: usize) -> &[Opening] {
        &self.openings[self.all[cycle].openings.clone()]
    }

    /// What an opening takes up to its last pair, after a letter that waits or none.
    fn step(&self, waits: Option<Sticker>, opening: &Opening) -> u32 {
        match waits {
            None => opening.inner[0],
            Some(letter) => self.costs.pair(letter, opening.first).saturating_add(opening.inner[1]),
        }
    }

    /// What two turned pieces take together, in this order, if there is an algorithm for both.
    fn together(&self, one: &Opening, other: &Opening) -> Option<u32> {
        self.costs.joint([one.first, one.last, other.first, other.last])
    }

    fn weigh_alone(&mut self) {
        self.alone = vec![NONE; 1 << self.all.len()];
        self.alone[0] = 0;
        let count = self.all.len();
        let mut single = vec![NONE; count];
        let mut two = vec![NONE; count * count];
        for one in members(self.even) {
            single[one] = self.openings(one).iter().map(|opening| opening.inner[0]).min().unwrap_or(NONE);
            for other in members(self.turned).filter(|&other| self.turned >> one & 1 == 1 && other != one) {
                let pairs =
                    self.openings(one).iter().flat_map(|a| self.openings(other).iter().map(move |b| (a, b)));
                let least = pairs.filter_map(|(a, b)| self.together(a, b)).min().unwrap_or(NONE);
                for at in [one * count + other, other * count + one] {
                    two[at] = two[at].min(least);
                }
            }
        }
        for set in subsets(self.even).filter(|&set| set != 0) {
            let one = set.trailing_zeros() as usize;
            let rest = set & (set - 1);
            let mut least = single[one].saturating_add(self.alone[rest]);
            for other in members(rest & self.turned) {
                let cost = two[one * count + other].saturating_add(self.alone[rest & !(1 << other)]);
                least = least.min(cost);
            }
            self.alone[set] = least;
        }
    }

    /// Fills [`Cycles::onward`] from few cycles to many. Whether a letter waits before a set follows from how many letters all
    /// cycles before it have.
    fn weigh_chains(&mut self, waits: Option<Sticker>) {
        let everything: Set = (1 << self.all.len()) - 1;
        self.onward = vec![NONE; (everything + 1) * (NOTHING + 1)];
        self.onward[NOTHING] = 0;
        for letter in Sticker::all() {
            self.onward[letter.index()] = self.costs.last(letter);
        }
        if self.even == everything && waits.is_none() {
            return;
        }
        let closing = self.closing();
        // Where a letter may wait from: nowhere in the set that is left.
        let letters: Vec<(Set, Sticker)> = (0..self.all.len())
            .flat_map(|cycle| self.openings(cycle).iter().map(move |opening| (1 << cycle, opening.last)))
            .chain(waits.map(|letter| (0, letter)))
            .collect();
        for left in 1..=everything {
            let odd_before = (everything & !left & !self.even).count_ones() + u32::from(waits.is_some());
            let row = left * (NOTHING + 1);
            if odd_before.is_multiple_of(2) {
                self.onward[row + NOTHING] = self.started(left);
                continue;
            }
            for &(_, letter) in letters.iter().filter(|(cycle, _)| cycle & left == 0) {
                self.onward[row + letter.index()] = self.continued(left, letter, &closing);
            }
        }
    }

    /// For each letter that waits and each odd cycle: what the cycle takes at least after it.
    fn closing(&self) -> Vec<u32> {
        let mut closing = vec![NONE; (NOTHING) * self.all.len()];
        for cycle in (0..self.all.len()).filter(|&cycle| self.all[cycle].odd) {
            for letter in Sticker::all() {
                let costs = self.openings(cycle).iter().map(|opening| self.step(Some(letter), opening));
                closing[letter.index() * self.all.len() + cycle] = costs.min().unwrap_or(NONE);
            }
        }
        closing
    }

    /// What a set takes at least where no letter waits and the first cycle has to leave one.
    fn started(&self, left: Set) -> u32 {
        let mut least = NONE;
        for cycle in members(left & !self.even) {
            let rest = &self.onward[(left & !(1 << cycle)) * (NOTHING + 1)..];
            for opening in self.openings(cycle) {
                least = least.min(opening.inner[0].saturating_add(rest[opening.last.index()]));
            }
        }
        least
    }

    /// What a set takes at least after a letter that waits.
    fn continued(&self, left: Set, letter: Sticker, closing: &[u32]) -> u32 {
        let mut least = NONE;
        for cycle in members(left) {
            let rest = &self.onward[(left & !(1 << cycle)) * (NOTHING + 1)..];
            if self.all[cycle].odd {
                // What follows does not ask at which of its stickers it was broken into; what else begins there may be even.
                let close = closing[letter.index() * self.all.len() + cycle];
                least = least.min(close.saturating_add(rest[NOTHING]));
            } else {
                for opening in self.openings(cycle) {
                    let step = self.step(Some(letter), opening);
                    least = least.min(step.saturating_add(rest[opening.last.index()]));
                }
            }
        }
        least
    }

    /// What a set takes at least after a letter that waits or none: some even cycles by themselves, the others in chains.
    fn least(&self, left: Set, waits: Option<Sticker>) -> u32 {
        let row = |set: Set| self.onward[set * (NOTHING + 1) + waits.map_or(NOTHING, Sticker::index)];
        if left & !self.even == 0 {
            // No chain is begun, and one that was is not closed.
            return if waits.is_none() { self.alone[left] } else { row(left) };
        }
        subsets(left & self.even)
            .map(|alone| self.alone[alone].saturating_add(row(left & !alone)))
            .min()
            .unwrap_or(NONE)
    }

    /// Reads off where to begin: each time the first opening in the order that leads on to the least, a turned piece rather by
    /// itself than together with another.
    fn cheapest(&self, mut waits: Option<Sticker>) -> Vec<Sticker> {
        let mut left: Set = (1 << self.all.len()) - 1;
        let mut starts = Vec::with_capacity(self.all.len());
        while left != 0 {
            let Some((first, second)) = self.next(left, waits) else { break };
            for opening in std::iter::once(first).chain(second) {
                let cycle = self.cycle_of(opening);
                starts.push(self.openings[opening].first);
                left &= !(1 << cycle);
                let passes_on = self.all[cycle].odd == waits.is_none();
                waits = passes_on.then_some(self.openings[opening].last);
            }
        }
        starts
    }

    /// The next opening, and a second one where both are made together.
    fn next(&self, left: Set, waits: Option<Sticker>) -> Option<(usize, Option<usize>)> {
        let least = self.least(left, waits);
        let open = || {
            let openings =
                self.order.iter().filter_map(|start| self.opening_of[start.index()]).map(usize::from);
            openings.filter(|&opening| left >> self.cycle_of(opening) & 1 == 1)
        };
        open().find_map(|number| {
            let (opening, cycle) = (&self.openings[number], self.cycle_of(number));
            let rest = left & !(1 << cycle);
            let passes_on = self.all[cycle].odd == waits.is_none();
            let then = self.least(rest, passes_on.then_some(opening.last));
            if self.step(waits, opening).saturating_add(then) == least {
                return Some((number, None));
            }
            if waits.is_some() || !self.all[cycle].turned {
                return None;
            }
            let with = open().filter(|&other| (rest & self.turned) >> self.cycle_of(other) & 1 == 1);
            let together = |other: &usize| {
                let both = self.together(opening, &self.openings[*other])?;
                Some(both.saturating_add(self.least(rest & !(1 << self.cycle_of(*other)), None)))
            };
            let second = with.into_iter().find(|other| together(other) == Some(least))?;
            Some((number, Some(second)))
        })
    }

    fn cycle_of(&self, opening: usize) -> usize {
        self.all.partition_point(|cycle| cycle.openings.end <= opening)
    }
}

/// The members of a set.
fn members(set: Set) -> impl Iterator<Item = usize> {
    let mut left = set;
    std::iter::from_fn(move || {
        let member = (left != 0).then(|| left.trailing_zeros() as usize)?;
        left &= left - 1;
        Some(member)
    })
}

/// All sets of members of a set, the smaller numbers first, so that each comes after its own.
fn subsets(of: Set) -> impl Iterator<Item = Set> {
    let mut next = Some(0);
    std::iter::from_fn(move || {
        let set = next?;
        next = (set != of).then(|| set.wrapping_sub(of) & of);
        Some(set)
    })
}
