//! Methods compared over many states: letters, algorithms, moves, estimated time.

use crate::execution::{Action, ExecutionError};
use crate::solver::{NoSolution, Solver};
use cube::State;
use statrs::distribution::{ContinuousCDF, StudentsT};

/// What is measured of a solution.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Measure {
    /// Letters to memorise.
    Letters,
    /// Algorithms to make, the parity algorithm included.
    Algorithms,
    /// Moves after merging and cancelling, a slice counted as one.
    Moves,
    /// The estimated time in thousandths of a second, the sum over the algorithms.
    Milliseconds,
}

impl Measure {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Letters, Self::Algorithms, Self::Moves, Self::Milliseconds];
}

/// One state by one method: a value for each of [`Measure::ALL`].
pub type Outcome = [u32; 4];

/// Solves a state that is held to be solved, applies the solution, and measures it.
///
/// # Errors
/// [`NoSolution`] when there is no method or it does not solve.
pub fn outcome(state: &State, solver: &Solver) -> Result<Outcome, NoSolution> {
    let memo = solver.memo(state).map_err(ExecutionError::from)?;
    let solution = solver.plan(state, &memo)?;
    let algorithms = solution
        .actions()
        .iter()
        .filter(|action| !matches!(action, Action::Letter { swap, .. } if swap.is_empty()));
    Ok([
        memo.letters() as u32,
        algorithms.count() as u32,
        solution.count().slice as u32,
        solution.milliseconds().unwrap_or_default(),
    ])
}

/// How often each value came up; whole numbers, so that sums are exact in any order.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Spread {
    counts: Vec<u64>,
    states: u64,
    sum: u64,
}

impl Spread {
    /// Counts a value.
    pub fn add(&mut self, value: u32) {
        let at = value as usize;
        if self.counts.len() <= at {
            self.counts.resize(at + 1, 0);
        }
        self.counts[at] += 1;
        self.states += 1;
        self.sum += u64::from(value);
    }

    /// Adds what was counted elsewhere.
    pub fn merge(&mut self, other: &Self) {
        if self.counts.len() < other.counts.len() {
            self.counts.resize(other.counts.len(), 0);
        }
        for (own, more) in self.counts.iter_mut().zip(&other.counts) {
            *own += more;
        }
        self.states += other.states;
        self.sum += other.sum;
    }

    /// The mean; 0 of nothing.
    pub fn mean(&self) -> f64 {
        if self.states == 0 { 0.0 } else { self.sum as f64 / self.states as f64 }
    }

    /// The least value that at least this share of all values do not exceed.
    ///
    /// ```
    /// use blind::compare::Spread;
    /// let mut spread = Spread::default();
    /// for value in 1..=100 {
    ///     spread.add(value);
    /// }
    /// assert_eq!((spread.quantile(0.25), spread.quantile(0.5), spread.quantile(1.0)), (25, 50, 100));
    /// ```
    pub fn quantile(&self, share: f64) -> u32 {
        let wanted = (libm::ceil(share.clamp(0.0, 1.0) * self.states as f64) as u64).max(1);
        let mut met = 0;
        for (value, count) in self.counts.iter().enumerate() {
            met += count;
            if met >= wanted {
                return value as u32;
            }
        }
        0
    }

    /// How many values fall into each range of a width, from the first range that is not empty on: where that begins, and the
    /// counts.
    pub fn ranges(&self, width: u32) -> (u32, Vec<u64>) {
        let width = width.max(1) as usize;
        let sums: Vec<u64> = self.counts.chunks(width).map(|chunk| chunk.iter().sum()).collect();
        let first = sums.iter().position(|&count| count > 0).unwrap_or(0);
        ((first * width) as u32, sums[first.min(sums.len())..].to_vec())
    }

    /// The least and the greatest value.
    pub fn ends(&self) -> (u32, u32) {
        let first = self.counts.iter().position(|&count| count > 0).unwrap_or(0);
        (first as u32, self.counts.len().saturating_sub(1) as u32)
    }
}

/// Differences between two methods on the same states.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub struct Paired {
    states: u64,
    sum: i64,
    squares: u128,
}

/// The mean of paired differences and where it lies with 95 % confidence.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Difference {
    /// The mean.
    pub mean: f64,
    /// The lower end.
    pub low: f64,
    /// The upper end.
    pub high: f64,
}

impl Paired {
    /// Counts a difference.
    pub fn add(&mut self, difference: i64) {
        self.states += 1;
        self.sum += difference;
        self.squares += u128::from(difference.unsigned_abs()).pow(2);
    }

    /// Adds what was counted elsewhere.
    pub fn merge(&mut self, other: &Self) {
        self.states += other.states;
        self.sum += other.sum;
        self.squares += other.squares;
    }

    /// The mean with its interval after Student (t distribution, n - 1 degrees of freedom); `None` for fewer than two
    /// states.
    ///
    /// ```
    /// use blind::compare::Paired;
    /// let mut paired = Paired::default();
    /// for difference in [1, 2, 3, 4, 5] {
    ///     paired.add(difference);
    /// }
    /// let found = paired.difference().unwrap();
    /// // Student's t at 97.5 % with 4 degrees of freedom is 2.776 (printed tables, from memory): 2.776 · √2.5 / √5.
    /// assert!((found.high - found.mean - 2.776 * 0.5_f64.sqrt()).abs() < 0.001);
    /// ```
    pub fn difference(&self) -> Option<Difference> {
        if self.states < 2 {
            return None;
        }
        let n = self.states as f64;
        let mean = self.sum as f64 / n;
        // Exact in whole numbers before the one division: n Σx² - (Σx)².
        let spread = u128::from(self.states) * self.squares - u128::from(self.sum.unsigned_abs()).pow(2);
        let variance = spread as f64 / (n * (n - 1.0));
        let t = StudentsT::new(0.0, 1.0, n - 1.0).ok()?.inverse_cdf(0.975);
        let half = t * libm::sqrt(variance / n);
        Some(Difference { mean, low: mean - half, high: mean + half })
    }
}

/// What several methods come to over many states.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Comparison {
    /// For each method a spread of each measure.
    pub spreads: Vec<[Spread; 4]>,
    /// For each method after the first, its value less that of the first, by measure.
    pub paired: Vec<[Paired; 4]>,
}

impl Comparison {
    /// Nothing counted yet.
    pub fn new(methods: usize) -> Self {
        Self {
            spreads: vec![Default::default(); methods],
            paired: vec![Default::default(); methods.saturating_sub(1)],
        }
    }

    /// Counts the outcomes of all methods on one state.
    pub fn add(&mut self, outcomes: &[Outcome]) {
        for (spreads, outcome) in self.spreads.iter_mut().zip(outcomes) {
            for (spread, &value) in spreads.iter_mut().zip(outcome) {
                spread.add(value);
            }
        }
        let Some((first, others)) = outcomes.split_first() else { return };
        for (paired, outcome) in self.paired.iter_mut().zip(others) {
            for (at, pair) in paired.iter_mut().enumerate() {
                pair.add(i64::from(outcome[at]) - i64::from(first[at]));
            }
        }
    }

    /// Adds what was counted elsewhere.
    pub fn merge(&mut self, other: &Self) {
        for (own, more) in self.spreads.iter_mut().zip(&other.spreads) {
            for (own, more) in own.iter_mut().zip(more) {
                own.merge(more);
            }
        }
        for (own, more) in self.paired.iter_mut().zip(&other.paired) {
            for (own, more) in own.iter_mut().zip(more) {
                own.merge(more);
            }
        }
    }

    /// Solves a state by every method and counts the outcomes.
    ///
    /// # Errors
    /// [`NoSolution`] when one does not solve it.
    pub fn try_state(&mut self, state: &State, solvers: &[Solver]) -> Result<(), NoSolution> {
        let outcomes: Vec<Outcome> =
            solvers.iter().map(|solver| outcome(state, solver)).collect::<Result<_, _>>()?;
        self.add(&outcomes);
        Ok(())
    }
}
