//! The ways to see a 3x3 mirrored or turned in which the subgroup stays what it is: tables need one entry for up to 16 positions.

use crate::solve::distances::{Distances, Space};
use cube::{Amount, Axis, Rotation, Turn};

/// How many ways leave every axis where it is.
pub const MIRRORS: usize = 8;
/// How many ways there are in all.
pub const WAYS: usize = 16;

/// For each way what becomes of each turn: the first eight mirror along up to three axes, the others also turn the cube about U.
pub fn turns_seen<const TURNS: usize>(turns: &[Turn; TURNS]) -> [[usize; TURNS]; WAYS] {
    let quarter = Rotation::about(Axis::Y, Amount::Clockwise);
    std::array::from_fn(|way| {
        turns.map(|turn| {
            let mirrored = [Axis::X, Axis::Y, Axis::Z].into_iter().enumerate();
            let mut seen = mirrored
                .filter(|(bit, _)| way >> bit & 1 == 1)
                .fold(turn, |turn, (_, axis)| turn.mirrored(axis));
            if way >= MIRRORS {
                seen = seen.rotated(quarter);
            }
            turns.iter().position(|&turn| turn == seen).unwrap_or_default()
        })
    })
}

/// What a number becomes in each way, from what the turns make of it: the goal stays, and turns seen lead to numbers seen.
pub fn numbers_seen<const TURNS: usize, const WAYS: usize>(
    after: &[[u16; TURNS]],
    goal: u16,
    turns: &[[usize; TURNS]; WAYS],
) -> Vec<[u16; WAYS]> {
    let mut seen = vec![[u16::MAX; WAYS]; after.len()];
    seen[goal as usize] = [goal; WAYS];
    let mut reached = Vec::with_capacity(after.len());
    reached.push(goal);
    let mut next = 0;
    while let Some(&from) = reached.get(next) {
        next += 1;
        let ways = seen[from as usize];
        for (turn, &to) in after[from as usize].iter().enumerate() {
            if seen[to as usize][0] == u16::MAX {
                seen[to as usize] = std::array::from_fn(|way| after[ways[way] as usize][turns[way][turn]]);
                reached.push(to);
            }
        }
    }
    seen
}

/// Numbers in classes of those that are one number seen in different ways.
pub struct Folded<const WAYS: usize> {
    /// For each number its class times the count of ways, plus the way in which it is the first of the class.
    class_and_way: Vec<u16>,
    /// The first number of each class.
    firsts: Vec<u16>,
    /// The other ways in which the first number of a class is itself.
    same: Vec<Vec<usize>>,
}

impl<const WAYS: usize> Folded<WAYS> {
    /// From what each number becomes in each way.
    pub fn new(seen: &[[u16; WAYS]]) -> Self {
        let mut class_and_way = vec![u16::MAX; seen.len()];
        let (mut firsts, mut same) = (Vec::new(), Vec::new());
        for first in 0..seen.len() as u16 {
            if class_and_way[first as usize] != u16::MAX {
                continue;
            }
            let ways = &seen[first as usize];
            for &number in ways {
                let way = seen[number as usize].iter().position(|&to| to == first).unwrap_or_default();
                class_and_way[number as usize] = (firsts.len() * WAYS + way) as u16;
            }
            same.push((1..WAYS).filter(|&way| ways[way] == first).collect());
            firsts.push(first);
        }
        Self { class_and_way, firsts, same }
    }

    /// The class of a number, and the way in which it is the first of the class.
    pub fn class(&self, number: u16) -> (usize, usize) {
        let both = self.class_and_way[number as usize] as usize;
        (both / WAYS, both % WAYS)
    }

    /// The first number of each class.
    pub fn firsts(&self) -> &[u16] {
        &self.firsts
    }

    /// The ways but the plain one in which the first number of a class is itself.
    pub fn same(&self, class: usize) -> &[usize] {
        &self.same[class]
    }
}

/// Pairs of numbers that turns change, the first in classes. The number of a pair is the class times the count of the second,
/// plus the second as it is seen when the first is the first of its class.
pub struct FoldedPairs<'a, const TURNS: usize, const WAYS: usize> {
    /// What the turns make of the first number.
    pub first: &'a [[u16; TURNS]],
    /// Its classes.
    pub folded: &'a Folded<WAYS>,
    /// What the turns make of the second number.
    pub second: &'a [[u16; TURNS]],
    /// What the second number becomes in each way.
    pub seen: &'a [[u16; WAYS]],
}

impl<const TURNS: usize, const WAYS: usize> FoldedPairs<'_, TURNS, WAYS> {
    /// The class and the second number to which each turn leads.
    fn after(&self, from: usize) -> impl Iterator<Item = (usize, u16)> {
        let first = self.folded.firsts()[from / self.second.len()] as usize;
        self.first[first].iter().zip(&self.second[from % self.second.len()]).map(|(&first, &second)| {
            let (class, way) = self.folded.class(first);
            (class, self.seen[second as usize][way])
        })
    }

    /// How far each pair is from a goal.
    pub fn distances(&self, (first, second): (u16, u16)) -> Distances {
        let (class, way) = self.folded.class(first);
        Distances::new(self, [self.number(class, self.seen[second as usize][way])])
    }

    fn number(&self, class: usize, second: u16) -> usize {
        class * self.second.len() + second as usize
    }
}

impl<const TURNS: usize, const WAYS: usize> Space for FoldedPairs<'_, TURNS, WAYS> {
    fn count(&self) -> usize {
        self.folded.firsts().len() * self.second.len()
    }

    fn around(&self, from: usize, mut each: impl FnMut(usize) -> bool) -> bool {
        self.after(from).any(|(class, second)| {
            // All numbers of the same position, so that what one turn does another undoes.
            each(self.number(class, second))
                || self
                    .folded
                    .same(class)
                    .iter()
                    .any(|&way| each(self.number(class, self.seen[second as usize][way])))
        })
    }
}
