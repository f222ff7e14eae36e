//! The ways to see a 3x3 mirrored or turned in which the subgroup stays what it is: tables need one entry for up to 16 positions.

use crate::solve::distances::Space;
use crate::solve::rank::order_rank;
use crate::solve::succession::Choices;
use cube::{Amount, Axis, Face, Rotation, Turn};

/// How many ways leave every axis where it is.
pub const MIRRORS: usize = 8;
/// How many ways there are in all.
pub const WAYS: usize = 16;

/// A turn as it is seen in a way: the first eight mirror along up to three axes, the others also turn the cube about U.
fn turn_seen(turn: Turn, way: usize) -> Turn {
    let mirrored = [Axis::X, Axis::Y, Axis::Z].into_iter().enumerate();
    let seen =
        mirrored.filter(|(bit, _)| way >> bit & 1 == 1).fold(turn, |turn, (_, axis)| turn.mirrored(axis));
    if way >= MIRRORS { seen.rotated(Rotation::about(Axis::Y, Amount::Clockwise)) } else { seen }
}

/// The face that a face is seen as in a way.
pub fn face_seen(face: Face, way: usize) -> Face {
    turn_seen(Turn::face(face, Amount::Half), way).block.follows()
}

/// What the ways make of turns and of one another.
pub struct Ways<const TURNS: usize, const WAYS: usize> {
    /// For each way what each turn is seen as, by their places in the list of turns.
    pub seen: [[u8; TURNS]; WAYS],
    /// For each way which turn is seen as each.
    pub shown: [[u8; TURNS]; WAYS],
    /// Which way is one way and then another.
    pub then: [[u8; WAYS]; WAYS],
}

impl<const TURNS: usize, const WAYS: usize> Ways<TURNS, WAYS> {
    /// The first so many ways, of turns none of which is seen as one outside the list.
    pub fn new(turns: &[Turn; TURNS]) -> Self {
        let place = |turn: Turn| turns.iter().position(|&at| at == turn).unwrap_or_default() as u8;
        let seen: [[u8; TURNS]; WAYS] =
            std::array::from_fn(|way| turns.map(|turn| place(turn_seen(turn, way))));
        let mut shown = [[0; TURNS]; WAYS];
        for (way, shown) in shown.iter_mut().enumerate() {
            for (turn, &as_seen) in seen[way].iter().enumerate() {
                shown[as_seen as usize] = turn as u8;
            }
        }
        let then = std::array::from_fn(|one| {
            std::array::from_fn(|other| {
                let both = seen[one].map(|turn| seen[other][turn as usize]);
                seen.iter().position(|&way| way == both).unwrap_or_default() as u8
            })
        });
        Self { seen, shown, then }
    }

    /// The way that undoes a way.
    pub fn inverse(&self, way: usize) -> usize {
        self.then[way].iter().position(|&both| both == 0).unwrap_or_default()
    }
}

/// What a number becomes in each way, from what the turns make of it: the goal stays, and turns seen lead to numbers seen.
pub fn numbers_seen<const TURNS: usize, const WAYS: usize>(
    after: &[[u16; TURNS]],
    goal: u16,
    ways: &Ways<TURNS, WAYS>,
) -> Vec<[u16; WAYS]> {
    let mut seen = vec![[u16::MAX; WAYS]; after.len()];
    seen[goal as usize] = [goal; WAYS];
    let mut reached = Vec::with_capacity(after.len());
    reached.push(goal);
    let mut next = 0;
    while let Some(&from) = reached.get(next) {
        next += 1;
        let row = seen[from as usize];
        for (turn, &to) in after[from as usize].iter().enumerate() {
            if seen[to as usize][0] == u16::MAX {
                seen[to as usize] =
                    std::array::from_fn(|way| after[row[way] as usize][ways.seen[way][turn] as usize]);
                reached.push(to);
            }
        }
    }
    seen
}

/// A class of numbers that are one number seen in different ways, and a way in which a number is the first of it.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Seen(u16);

impl Seen {
    fn new<const WAYS: usize>(class: usize, way: usize) -> Self {
        Self((class * WAYS + way) as u16)
    }

    /// The class.
    pub const fn class<const WAYS: usize>(self) -> usize {
        self.0 as usize / WAYS
    }

    /// The way.
    pub const fn way<const WAYS: usize>(self) -> usize {
        self.0 as usize % WAYS
    }

    /// The same class, seen from a cube that is itself seen in the way of another.
    pub fn after_way<const TURNS: usize, const WAYS: usize>(
        self,
        before: Self,
        ways: &Ways<TURNS, WAYS>,
    ) -> Self {
        let way = ways.then[before.way::<WAYS>()][self.way::<WAYS>()];
        Self::new::<WAYS>(self.class::<WAYS>(), way as usize)
    }
}

/// Numbers in such classes.
pub struct Folded<const TURNS: usize, const WAYS: usize> {
    classes: Vec<Seen>,
    /// For each class what the turns make of its first number.
    after: Vec<[Seen; TURNS]>,
    /// For each class the other ways in which its first number is itself, as bits.
    same: Vec<u32>,
}

impl<const TURNS: usize, const WAYS: usize> Folded<TURNS, WAYS> {
    /// From what a number becomes in each way and after each turn.
    pub fn new(
        count: usize,
        ways: &Ways<TURNS, WAYS>,
        seen: impl Fn(u16) -> [u16; WAYS],
        after: impl Fn(u16) -> [u16; TURNS],
    ) -> Self {
        let inverse: [usize; WAYS] = std::array::from_fn(|way| ways.inverse(way));
        let mut classes = vec![None; count];
        let (mut firsts, mut same) = (Vec::new(), Vec::new());
        for first in 0..count as u16 {
            if classes[first as usize].is_some() {
                continue;
            }
            let row = seen(first);
            for (way, &number) in row.iter().enumerate() {
                classes[number as usize].get_or_insert(Seen::new::<WAYS>(firsts.len(), inverse[way]));
            }
            let itself = (1..WAYS).filter(|&way| row[way] == first);
            same.push(itself.fold(0, |bits, way| bits | 1 << way));
            firsts.push(first);
        }
        // Each number is itself in the plain way, so each has a class.
        let classes: Vec<Seen> = classes.into_iter().flatten().collect();
        let after = firsts.iter().map(|&first| after(first).map(|number| classes[number as usize])).collect();
        Self { classes, after, same }
    }

    /// Orders of eight things that turns change by taking each from a place; a way sees what is at a place at another.
    pub fn of_orders(
        ways: &Ways<TURNS, WAYS>,
        all: &[[u8; 8]],
        places: &[[u8; 8]; WAYS],
        pulls: &[[u8; 8]; TURNS],
    ) -> Self {
        let seen = |number: u16| {
            places.map(|seen| {
                let mut order = [0; 8];
                for (place, &piece) in all[number as usize].iter().enumerate() {
                    order[seen[place] as usize] = seen[piece as usize];
                }
                order_rank(order) as u16
            })
        };
        let after = |number: u16| pulls.map(|pull| order_rank(pulled(&all[number as usize], pull)) as u16);
        Self::new(all.len(), ways, seen, after)
    }

    /// The class of a number, and the way in which it is the first of the class.
    pub fn class(&self, number: u16) -> Seen {
        self.classes[number as usize]
    }

    /// What a turn makes of the first number of a class.
    pub fn after(&self, class: usize, turn: usize) -> Seen {
        self.after[class][turn]
    }
}

/// An order after a turn that takes each thing from a place.
pub fn pulled<const N: usize>(order: &[u8; N], pull: [u8; N]) -> [u8; N] {
    pull.map(|from| order[from as usize])
}

/// Pairs of numbers that turns change, the first in classes. The number of a pair is the class times the count of the second,
/// plus the second as it is seen when the first is the first of its class.
pub struct FoldedPairs<'a, const TURNS: usize, const WAYS: usize> {
    /// The first numbers.
    pub folded: &'a Folded<TURNS, WAYS>,
    /// What the turns make of the second number.
    pub second: &'a [[u16; TURNS]],
    /// What the second number becomes in each way.
    pub seen: &'a [[u16; WAYS]],
}

impl<const TURNS: usize, const WAYS: usize> FoldedPairs<'_, TURNS, WAYS> {
    /// The number of a pair.
    pub fn number(&self, first: u16, second: u16) -> usize {
        self.in_class(self.folded.class(first), second)
    }

    fn in_class(&self, first: Seen, second: u16) -> usize {
        first.class::<WAYS>() * self.second.len() + self.seen[second as usize][first.way::<WAYS>()] as usize
    }

    /// The pair that each turn leads to from one.
    pub fn after(&self, from: usize) -> [usize; TURNS] {
        let (first, second) = (from / self.second.len(), from % self.second.len());
        let (first, second) = (&self.folded.after[first], &self.second[second]);
        std::array::from_fn(|turn| self.in_class(first[turn], second[turn]))
    }
}

impl<const TURNS: usize, const WAYS: usize> Space for FoldedPairs<'_, TURNS, WAYS> {
    fn count(&self) -> usize {
        self.folded.after.len() * self.second.len()
    }

    fn around(&self, from: usize, mut each: impl FnMut(usize) -> bool) -> bool {
        let (first, second) = (from / self.second.len(), from % self.second.len());
        self.folded.after[first].iter().zip(&self.second[second]).any(|(&first, &second)| {
            // All numbers of the same position, so that what one turn does another undoes.
            let to = self.in_class(first, second);
            let class = first.class::<WAYS>();
            each(to)
                || Choices::of(self.folded.same[class]).any(|way| {
                    let second = self.seen[to - class * self.second.len()][way];
                    each(class * self.second.len() + second as usize)
                })
        })
    }
}
