//! What the first phase looks up, made from the model at the first call.

use super::coordinates::{OuterNumbers, TURNS, Turned};
use super::nearer::Nearer;
use super::symmetry::{Folded, FoldedPairs, MIRRORS, Seen, Ways, numbers_seen};
use crate::solve::distances::Distances;
use crate::solve::succession::{Choices, Succession};

/// A way to mirror the cube.
pub type Mirrors = Ways<TURNS, MIRRORS>;

/// What the first phase sees of a state, mirrored so that the places of the middle edges are the first of their class.
#[derive(Clone, Copy)]
pub struct Outer {
    slice: Seen,
    twist: u16,
    flip: u16,
}

impl Outer {
    /// The way in which it is seen.
    #[inline]
    pub const fn way(self) -> usize {
        self.slice.way::<MIRRORS>()
    }
}

/// All tables.
pub struct Outside {
    ways: Mirrors,
    /// For each way, after each turn and at the beginning, which turns may follow, as they are seen.
    following: [[u32; TURNS + 1]; MIRRORS],
    /// The turns of the subgroup, which are the same in each way.
    inner_turns: u32,
    twists: Vec<[u16; TURNS]>,
    flips: Vec<[u16; TURNS]>,
    twists_seen: Vec<[u16; MIRRORS]>,
    flips_seen: Vec<[u16; MIRRORS]>,
    slices: Folded<TURNS, MIRRORS>,
    flip_classes: Folded<TURNS, MIRRORS>,
    slice_twist: Nearer<TURNS, 5>,
    slice_flip: Nearer<TURNS, 5>,
    flip_twist: Distances,
    goal: OuterNumbers,
}

impl Outside {
    /// From the model.
    pub fn make(turned: &Turned, succession: &Succession, goal: OuterNumbers) -> Self {
        let ways = Mirrors::new(&turned.turns);
        let (twists, flips, slices) = (turned.twists(), turned.flips(), turned.slices());
        let folded = |after: &[[u16; TURNS]], seen: &[[u16; MIRRORS]]| {
            Folded::new(after.len(), &ways, |number| seen[number as usize], |number| after[number as usize])
        };
        let twists_seen = numbers_seen(&twists, goal.twist, &ways);
        let flips_seen = numbers_seen(&flips, goal.flip, &ways);
        let slices = folded(&slices, &numbers_seen(&slices, goal.slice, &ways));
        let flip_classes = folded(&flips, &flips_seen);
        let by_twist = |folded| FoldedPairs { folded, second: &twists, seen: &twists_seen };
        let slice_twist = Nearer::new(&by_twist(&slices), (goal.slice, goal.twist));
        let slice_flip = Nearer::new(
            &FoldedPairs { folded: &slices, second: &flips, seen: &flips_seen },
            (goal.slice, goal.flip),
        );
        let flip_twist = {
            let pairs = by_twist(&flip_classes);
            Distances::new(&pairs, [pairs.number(goal.flip, goal.twist)])
        };
        let following = std::array::from_fn(|way| {
            std::array::from_fn(|last| {
                let next = succession.next((last < TURNS).then_some(last));
                next.fold(0, |bits, turn| bits | 1 << ways.seen[way][turn])
            })
        });
        let inner_turns = turned.inner_turns.iter().fold(0, |bits, &turn| bits | 1 << turn);
        Self {
            ways,
            following,
            inner_turns,
            twists,
            flips,
            twists_seen,
            flips_seen,
            slices,
            flip_classes,
            slice_twist,
            slice_flip,
            flip_twist,
            goal,
        }
    }

    /// What the first phase sees of the numbers of a state.
    pub fn at(&self, numbers: OuterNumbers) -> Outer {
        let slice = self.slices.class(numbers.slice);
        let way = slice.way::<MIRRORS>();
        Outer {
            slice,
            twist: self.twists_seen[numbers.twist as usize][way],
            flip: self.flips_seen[numbers.flip as usize][way],
        }
    }

    #[inline]
    fn pairs(&self, at: Outer) -> (usize, usize) {
        let class = at.slice.class::<MIRRORS>();
        (class * self.twists.len() + at.twist as usize, class * self.flips.len() + at.flip as usize)
    }

    #[inline]
    fn flip_twist(&self, at: Outer) -> u8 {
        let flip = self.flip_classes.class(at.flip);
        let twist = self.twists_seen[at.twist as usize][flip.way::<MIRRORS>()];
        self.flip_twist.get(flip.class::<MIRRORS>() * self.twists.len() + twist as usize)
    }

    /// How many turns it takes at least into the subgroup.
    pub fn least(&self, at: Outer) -> u8 {
        let (twist, flip) = self.pairs(at);
        self.slice_twist.distance(twist).max(self.slice_flip.distance(flip)).max(self.flip_twist(at))
    }

    /// Those turns that may follow the last, as they are seen, after which at most so many more may lead into the subgroup.
    #[inline]
    pub fn choices(&self, at: Outer, left: u8, last: Option<usize>) -> Choices {
        let following = self.following[at.way()][last.unwrap_or(TURNS)];
        Choices::of(following & self.nearer(at, left))
    }

    /// The turns, as they are seen, after which at most so many more may lead into the subgroup, as bits.
    #[inline]
    pub fn nearer(&self, at: Outer, left: u8) -> u32 {
        let (twist, flip) = self.pairs(at);
        self.slice_twist.turns(twist, left) & self.slice_flip.turns(flip, left)
    }

    /// Those of the choices that lie outside the subgroup.
    pub fn outside(&self, choices: Choices) -> Choices {
        choices.among(!self.inner_turns)
    }

    /// What is seen of turns in each way.
    pub const fn ways(&self) -> &Mirrors {
        &self.ways
    }

    /// The turn that is seen as one.
    #[inline]
    pub fn shown(&self, at: Outer, seen: usize) -> usize {
        self.ways.shown[at.way()][seen] as usize
    }

    /// What a turn makes of it, told as it is seen.
    #[inline]
    pub fn after(&self, at: Outer, seen: usize) -> Outer {
        let next = self.slices.after(at.slice.class::<MIRRORS>(), seen);
        let way = next.way::<MIRRORS>();
        Outer {
            slice: next.after_way(at.slice, &self.ways),
            twist: self.twists_seen[self.twists[at.twist as usize][seen] as usize][way],
            flip: self.flips_seen[self.flips[at.flip as usize][seen] as usize][way],
        }
    }

    /// Whether it is inside the subgroup, which is so in each way.
    #[inline]
    pub fn is_inside(&self, at: Outer) -> bool {
        let goal = self.slices.class(self.goal.slice).class::<MIRRORS>();
        (at.twist, at.flip, at.slice.class::<MIRRORS>()) == (self.goal.twist, self.goal.flip, goal)
    }

    /// Whether at most so many turns may lead into the subgroup, by what the choice of the turn before did not look at.
    #[inline]
    pub fn may_enter(&self, at: Outer, left: u8) -> bool {
        self.flip_twist(at) <= left
    }
}
