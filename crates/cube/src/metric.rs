//! Ways to count the length of a sequence.

use crate::{Amount, Block, Turn};

/// A way to count turns.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Metric {
    /// Outer block turns, a half turn as one (WCA Regulations 12a5, OBTM): rotations count 0, a slice or
    /// other inner layers count 2, as two outer blocks make them.
    HalfTurn,
    /// As [`Metric::HalfTurn`], but a half turn counts as two quarters.
    QuarterTurn,
    /// As [`Metric::HalfTurn`], but a slice or other inner layers count 1 (common practice, no source).
    SliceTurn,
    /// Everything the hands do, rotations too, counts 1 (WCA Regulations 12a6, ETM); a slice or other inner layers
    /// count 1.
    Execution,
}

/// How long a sequence is, each way.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub struct Count {
    /// Half-turn metric.
    pub half: usize,
    /// Quarter-turn metric.
    pub quarter: usize,
    /// Slice-turn metric.
    pub slice: usize,
    /// Execution-turn metric.
    pub execution: usize,
}

impl Metric {
    /// What one turn counts.
    pub const fn of(self, turn: Turn) -> usize {
        let blocks = match turn.block {
            Block::Outer { .. } => 1,
            Block::Inner { .. } | Block::Slice(_) => 2,
            Block::Whole(_) => 0,
        };
        match self {
            Self::QuarterTurn if turn.amount.quarters() == Amount::Half.quarters() => 2 * blocks,
            Self::HalfTurn | Self::QuarterTurn => blocks,
            Self::SliceTurn if blocks == 0 => 0,
            Self::SliceTurn | Self::Execution => 1,
        }
    }
}

/// Counts a sequence each way.
///
/// ```
/// use cube::{Algorithm, Size, count};
/// let four = Size::new(4).unwrap();
/// let turns = Algorithm::parse("R Rw2 x U' 3Uw", four).unwrap().flatten();
/// let count = count(&turns);
/// assert_eq!((count.half, count.execution), (4, 5));
/// ```
pub fn count(turns: &[Turn]) -> Count {
    let sum = |metric: Metric| turns.iter().map(|&turn| metric.of(turn)).sum();
    Count {
        half: sum(Metric::HalfTurn),
        quarter: sum(Metric::QuarterTurn),
        slice: sum(Metric::SliceTurn),
        execution: sum(Metric::Execution),
    }
}
