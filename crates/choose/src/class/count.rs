//! Classes of states of one kind, by their cycles, and how many states each holds.

use super::space::KindSpace;
use super::tally::{Tally, Watched};
use crate::condition::Part;

/// States of one kind whose cycles have the same lengths, are closed the same way and hold the buffer alike.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct Class {
    /// How the buffer's piece is found.
    pub buffer: Part,
    /// Pieces in place and right, those that never move not among them.
    pub solved: u8,
    /// Cycles without the buffer that turn: turned pieces as cycles of one, then longer ones, by the number of pieces.
    pub turning: Vec<u8>,
    /// Cycles of two or more pieces without the buffer that do not turn, by the number of pieces.
    pub plain: Vec<u8>,
    /// How many states there are.
    pub weight: u128,
}

impl Class {
    /// Everything that the figures of its states are made up of.
    pub(crate) fn tally(&self, space: &KindSpace, watched: &Watched) -> Tally {
        let mut tally = watched.add(Tally::default(), self.buffer);
        for _ in 0..self.solved + space.still {
            tally = watched.add(tally, Part::Solved);
        }
        for &pieces in &self.turning {
            let part = if pieces == 1 { Part::Turned } else { Part::Cycle { pieces, elsewhere: true } };
            tally = watched.add(tally, part);
        }
        for &pieces in &self.plain {
            tally = watched.add(tally, Part::Cycle { pieces, elsewhere: false });
        }
        tally
    }
}

/// All classes that are not empty.
///
/// A class of `n` pieces with `c` cycles of each length `l` has n! / ∏ lᶜ c! arrangements of pieces (textbook, from
/// memory: Cauchy's formula), and a cycle of `l` pieces of `w` stickers is turned in a given way in wˡ⁻¹ ways. The turnings of
/// all cycles together must add up to nothing, which the buffer's cycle sees to where there is one.
pub(crate) fn classes(space: &KindSpace) -> Vec<Class> {
    let pieces = space.others.len() as u8;
    let mut found = Vec::new();
    let away = if space.buffer_moves { pieces } else { 0 };
    for carried in 0..=away {
        let rest = pieces - carried;
        let choices = factorial(pieces) / factorial(rest) * power(space.ways(), carried);
        let buffers: &[Part] = match carried {
            0 => &[Part::BufferHome { turned: false }, Part::BufferHome { turned: true }],
            _ => &[Part::BufferAway { pieces: carried + 1 }],
        };
        let turns = space.ways() > 1;
        let mut shape = Shape { turns, solved: 0, turning: Vec::new(), plain: Vec::new() };
        shape.fill(rest, 0, &mut |shape| {
            for &buffer in buffers {
                let weight =
                    choices * shape.arrangements(rest, space.ways()) * turnings(space, shape, buffer);
                if weight > 0 {
                    let Shape { solved, turning, plain, .. } = shape.clone();
                    found.push(Class { buffer, solved, turning, plain, weight });
                }
            }
        });
    }
    found
}

/// The cycles without the buffer.
#[derive(Clone)]
struct Shape {
    /// Whether pieces can be turned in their places.
    turns: bool,
    solved: u8,
    turning: Vec<u8>,
    plain: Vec<u8>,
}

impl Shape {
    /// Calls for each way to fill up `left` pieces with cycles from the sort `least` on. Sorts are numbered: solved,
    /// turned, then plain and turning for each length from 2.
    fn fill(&mut self, left: u8, least: u8, see: &mut dyn FnMut(&Self)) {
        if left == 0 {
            see(self);
            return;
        }
        for sort in least..2 * left {
            let (pieces, turns) = (sort / 2 + 1, sort % 2 == 1);
            if turns && !self.turns {
                continue;
            }
            if sort == 0 {
                self.solved += 1;
            } else if turns {
                self.turning.push(pieces);
            } else {
                self.plain.push(pieces);
            }
            self.fill(left - pieces, sort, see);
            if sort == 0 {
                self.solved -= 1;
            } else if turns {
                self.turning.pop();
            } else {
                self.plain.pop();
            }
        }
    }

    /// Ways to arrange `pieces` pieces in these cycles, and to turn them once it is settled how far each cycle turns.
    fn arrangements(&self, pieces: u8, ways: u8) -> u128 {
        let mut over = factorial(self.solved);
        let mut turned = 1;
        for cycles in [&self.turning, &self.plain] {
            let mut run = 0;
            for (at, &length) in cycles.iter().enumerate() {
                run = if at > 0 && cycles[at - 1] == length { run + 1 } else { 1 };
                over *= u128::from(length) * run;
                turned *= power(ways, length - 1);
            }
        }
        factorial(pieces) / over * turned
    }
}

/// Ways to choose how far each cycle turns.
fn turnings(space: &KindSpace, shape: &Shape, buffer: Part) -> u128 {
    let ways = u128::from(space.ways());
    let turning = shape.turning.len() as u8;
    let all = power(space.ways() - 1, turning);
    let to_nothing = adding_to_nothing(space.ways(), turning);
    match (buffer, space.sum_free) {
        (Part::BufferHome { turned: false }, false) => to_nothing,
        // What the others add up to is made good by the buffer.
        (Part::BufferHome { turned: true }, false) if space.buffer_moves => all - to_nothing,
        (Part::BufferHome { turned: true }, _) if !space.buffer_moves => 0,
        (Part::BufferHome { turned: true }, true) => all * (ways - 1),
        (Part::BufferHome { turned: false }, true) | (_, false) => all,
        (_, true) => all * ways,
    }
}

/// In how many ways so many turnings, none of them nothing, add up to nothing: ((w-1)ᵗ + (w-1)(-1)ᵗ) / w.
pub(crate) fn adding_to_nothing(ways: u8, turnings: u8) -> u128 {
    let others = u128::from(ways) - 1;
    let all = power(ways - 1, turnings);
    if turnings.is_multiple_of(2) {
        (all + others) / u128::from(ways)
    } else {
        (all - others) / u128::from(ways)
    }
}

pub(crate) fn factorial(number: u8) -> u128 {
    (1..=u128::from(number)).product()
}

fn power(base: u8, exponent: u8) -> u128 {
    u128::from(base).pow(u32::from(exponent))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::class::space::Lying;
    use blind::Conventions;
    use cube::{Orbit, Size};

    fn total(orbit: Orbit, size: Size, lying: Lying) -> u128 {
        let space = KindSpace::new(orbit, size, lying, &Conventions::default());
        classes(&space).iter().map(|class| class.weight).sum()
    }

    #[test]
    fn classes_hold_all_states() {
        // Source: the textbook orders of these groups, 8! 3^7, 12! 2^11 and 7! 3^6.
        assert_eq!(total(Orbit::Corner, Size::THREE, Lying::Scrambled), 88_179_840);
        assert_eq!(total(Orbit::Midge, Size::THREE, Lying::Scrambled), 980_995_276_800);
        assert_eq!(total(Orbit::Corner, Size::TWO, Lying::Scrambled), 3_674_160);
        assert_eq!(total(Orbit::Corner, Size::TWO, Lying::Anyhow), 88_179_840);
        let four = Size::ALL[2];
        assert_eq!(total(Orbit::Corner, four, Lying::Scrambled), 3_674_160);
        // Source: 24!, standard tables.
        assert_eq!(total(Orbit::of(four)[1], four, Lying::Scrambled), 620_448_401_733_239_439_360_000);
    }

    #[test]
    fn a_buffer_that_never_moves_changes_no_total() {
        let mut conventions = Conventions::default();
        conventions.kind_mut(Orbit::Corner).buffer = Orbit::Corner.sticker("LDB").unwrap();
        let space = KindSpace::new(Orbit::Corner, Size::TWO, Lying::Scrambled, &conventions);
        assert!(!space.buffer_moves);
        assert_eq!(classes(&space).iter().map(|class| class.weight).sum::<u128>(), 3_674_160);
    }

    #[test]
    fn turnings_that_add_up_to_nothing_are_counted() {
        for ways in [2u8, 3] {
            for many in 0..8u32 {
                let found = (0..(u64::from(ways) - 1).pow(many))
                    .filter(|code| {
                        let mut rest = *code;
                        let sum: u64 = (0..many)
                            .map(|_| {
                                let digit = rest % (u64::from(ways) - 1) + 1;
                                rest /= u64::from(ways) - 1;
                                digit
                            })
                            .sum();
                        sum.is_multiple_of(u64::from(ways))
                    })
                    .count();
                assert_eq!(adding_to_nothing(ways, many as u8), found as u128, "{ways} ways, {many}");
            }
        }
    }
}
