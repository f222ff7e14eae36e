//! Classes of states: how many states meet a condition, and one of them drawn so that each is as likely as any other.
//!
//! The states of a kind fall into classes by their cycles and how these turn; how many states a class holds is a matter of
//! combinatorics ([`count`]). Classes of the same figures go together, and corners are put beside edges of the same
//! parity, so that a condition is decided once for a great many states. What the letters of a memo are is counted by
//! [`occur`]; drawing, such tests are met by drawing again within the classes.

mod count;
mod draw;
mod occur;
mod reason;
mod space;
mod table;
mod tally;

pub use reason::{Unsatisfiable, Why};
pub use space::Lying;

use crate::condition::{Condition, Feature};
use crate::conventions::Conventions;
use crate::memo::Memo;
use crate::method::Method;
use cube::{Orbit, Perm, Rotation, Size, State};
use draw::below;
use rand::Rng;
use space::KindSpace;
use table::{Row, Table};
use thiserror::Error;

/// How many states meet a condition.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Matching {
    /// Exactly so many.
    Exact(u128),
    /// At most so many; see [`Sampler::estimate`]. So it is where letters are asked for and breaks are chosen by the set-up
    /// moves they take, or where too many different letters are asked for together.
    AtMost(u128),
}

/// A share found by trying, with bounds.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Estimate {
    /// How many states were tried.
    pub tried: u64,
    /// How many of them met the condition.
    pub met: u64,
    /// The share of all states that meets the condition.
    pub share: f64,
    /// Bounds that 95 of 100 such estimates hold the true share within (Wilson's interval).
    pub bounds: [f64; 2],
}

/// Why no state was drawn.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum DrawError {
    /// The caller wished to stop.
    #[error("stopped after {tries} tries")]
    Stopped {
        /// How many states had been tried.
        tries: u64,
    },
    /// What was drawn does not meet the condition, so it is not given out. That is a fault of the program.
    #[error("the state drawn does not meet the condition; this is a fault of the program")]
    Refuted,
}

/// Draws states that meet a condition, each with the same probability.
///
/// ```
/// use blind::{Aspect, Condition, Conventions, Feature, Lying, Matching, Memo, Method, Sampler};
/// use cube::{Orbit, Size};
/// let conventions = Conventions::default();
/// let method = Method::new(Size::TWO, &conventions).unwrap();
/// let two_twists = Feature::Of(Orbit::Corner, Aspect::Turned).is(2);
/// let condition = Condition::new(Size::TWO, two_twists).unwrap();
/// let sampler = Sampler::new(&condition, Lying::Scrambled, &conventions, &method).unwrap();
/// assert_eq!(sampler.total(), 3_674_160);
/// assert!(matches!(sampler.matching(), Matching::Exact(found) if found > 0));
/// let mut generator = search::random::seeded(1);
/// let state = sampler.draw(&mut generator, &mut |_| true).unwrap();
/// assert!(condition.holds(&Memo::new(&state, &conventions, &method)));
/// ```
pub struct Sampler<'a> {
    condition: &'a Condition,
    conventions: &'a Conventions,
    method: &'a Method,
    tables: Vec<Table>,
    /// Rows of each kind that go together, and how many states they and those before them hold.
    pairs: Vec<Pair>,
    total: u128,
}

#[derive(Clone, Copy, Debug)]
struct Pair {
    up_to: u128,
    rows: [u32; 2],
    /// Whether all its states meet the condition.
    certain: bool,
}

/// The place of a kind in a pair of rows.
fn slot(orbit: Orbit) -> usize {
    usize::from(orbit != Orbit::Corner)
}

/// Tables of all kinds of a condition's puzzle.
fn tables(
    condition: &Condition,
    lying: Lying,
    conventions: &Conventions,
    method: &Method,
    sum_free: &[Orbit],
) -> Vec<Table> {
    Orbit::of(condition.size())
        .iter()
        .map(|&orbit| {
            let mut space = KindSpace::new(orbit, condition.size(), lying, conventions);
            space.sum_free = sum_free.contains(&orbit);
            let costs = || method.swap(orbit).map_or([0; 24], crate::Swap::costs);
            Table::new(space, condition, conventions.breaks(orbit, costs))
        })
        .collect()
}

/// Calls for each pair of rows that agree in parity (or for all); rows of the only kind come alone.
fn each_pair(tables: &[Table], parity_free: bool, see: &mut dyn FnMut([u32; 2], u128)) {
    let Some(first) = tables.first() else { return };
    for (at, row) in first.rows.iter().enumerate() {
        match tables.get(1) {
            None => see([at as u32, 0], row.weight),
            Some(second) => {
                for (beside, other) in second.rows.iter().enumerate() {
                    if parity_free || row.tally.is_odd() == other.tally.is_odd() {
                        see([at as u32, beside as u32], row.weight * other.weight);
                    }
                }
            }
        }
    }
}

/// Whether the states of a pair of rows meet a condition; `None` where only the single states can tell.
fn truth(condition: &Condition, tables: &[Table], rows: [u32; 2]) -> Option<bool> {
    let row = |orbit: Orbit| {
        let table = tables.get(slot(orbit))?;
        Some((table, table.rows.get(rows[slot(orbit)] as usize)?))
    };
    let number = |feature| match feature {
        Feature::Of(orbit, aspect) => row(orbit).map_or(0, |(table, row)| table.figure(row, aspect)),
        Feature::Parity => row(Orbit::Corner).map_or(0, |(_, row)| u8::from(row.tally.is_odd())),
        Feature::Letters => tables
            .iter()
            .zip(rows)
            .filter_map(|(table, at)| table.rows.get(at as usize).map(|row| (table, row)))
            .map(|(table, row)| table.figure(row, crate::Aspect::Targets))
            .sum(),
    };
    let occurs = |test: &crate::Occurs| match row(test.orbit) {
        Some((table, row)) => table.meets(row, test),
        None => Some(false),
    };
    condition.root().truth(&number, &occurs)
}

impl<'a> Sampler<'a> {
    /// Counts the states that meet a condition.
    ///
    /// # Errors
    /// [`Unsatisfiable`] when there are none, with the parts that cannot hold together and the reason.
    pub fn new(
        condition: &'a Condition,
        lying: Lying,
        conventions: &'a Conventions,
        method: &'a Method,
    ) -> Result<Self, Unsatisfiable> {
        let tables = tables(condition, lying, conventions, method, &[]);
        let mut pairs: Vec<Pair> = Vec::new();
        let (mut up_to, mut total) = (0, 0);
        each_pair(&tables, false, &mut |rows, weight| {
            total += weight;
            let held = truth(condition, &tables, rows);
            if held != Some(false) {
                up_to += weight;
                pairs.push(Pair { up_to, rows, certain: held == Some(true) });
            }
        });
        if pairs.is_empty() {
            return Err(reason::find(condition, lying, conventions, method));
        }
        Ok(Self { condition, conventions, method, tables, pairs, total })
    }

    /// How many states there are.
    pub const fn total(&self) -> u128 {
        self.total
    }

    /// How many of them meet the condition.
    pub fn matching(&self) -> Matching {
        let all = self.pairs.last().map_or(0, |pair| pair.up_to);
        if self.pairs.iter().all(|pair| pair.certain) { Matching::Exact(all) } else { Matching::AtMost(all) }
    }

    /// Draws a state as the solver holds it. `go_on` is asked now and then, with the number of states tried so far, whether
    /// to go on; with conditions on letters many may have to be tried.
    ///
    /// # Errors
    /// [`DrawError`] when stopped.
    pub fn draw(
        &self,
        generator: &mut impl Rng,
        go_on: &mut dyn FnMut(u64) -> bool,
    ) -> Result<State, DrawError> {
        let mut tries = 0;
        loop {
            let (state, certain) = self.try_once(generator, &mut tries, go_on)?;
            let memo = Memo::new(&state, self.conventions, self.method);
            if self.condition.holds(&memo) {
                return Ok(state);
            }
            if certain {
                return Err(DrawError::Refuted);
            }
        }
    }

    /// A state of one of the pairs of rows, and whether it has to meet the condition.
    fn try_once(
        &self,
        generator: &mut impl Rng,
        tries: &mut u64,
        go_on: &mut dyn FnMut(u64) -> bool,
    ) -> Result<(State, bool), DrawError> {
        let at = below(self.pairs.last().map_or(0, |pair| pair.up_to), generator);
        let found = self.pairs.partition_point(|pair| pair.up_to <= at);
        let Some(pair) = self.pairs.get(found) else { return Err(DrawError::Refuted) };
        let mut perms = [Perm::IDENTITY; 2];
        for ((table, at), perm) in self.tables.iter().zip(pair.rows).zip(&mut perms) {
            let row: &Row = &table.rows[at as usize];
            loop {
                *tries += 1;
                if tries.is_multiple_of(4096) && !go_on(*tries) {
                    return Err(DrawError::Stopped { tries: *tries });
                }
                *perm = table.draw(row, generator);
                if table.is_of(row, perm) {
                    break;
                }
            }
        }
        let state = State::from_orbits(self.condition.size(), Rotation::NONE, &perms[..self.tables.len()])
            .map_err(|_| DrawError::Refuted)?;
        Ok((state, pair.certain))
    }

    /// Finds the share of states that meets the condition by trying, where it cannot be counted.
    ///
    /// # Errors
    /// [`DrawError`] when stopped.
    pub fn estimate(
        &self,
        tries: u64,
        generator: &mut impl Rng,
        go_on: &mut dyn FnMut(u64) -> bool,
    ) -> Result<Estimate, DrawError> {
        let mut met = 0;
        let mut count = 0;
        for _ in 0..tries {
            let (state, _) = self.try_once(generator, &mut count, go_on)?;
            met += u64::from(self.condition.holds(&Memo::new(&state, self.conventions, self.method)));
        }
        let at_most = self.pairs.last().map_or(0, |pair| pair.up_to) as f64 / self.total as f64;
        let [low, high] = wilson(met, tries);
        Ok(Estimate {
            tried: tries,
            met,
            share: at_most * met as f64 / tries.max(1) as f64,
            bounds: [at_most * low, at_most * high],
        })
    }
}

/// Bounds for a share of which `met` of `tried` were seen.
///
/// Source: E. B. Wilson, "Probable Inference, the Law of Succession, and Statistical Inference", 1927.
fn wilson(met: u64, tried: u64) -> [f64; 2] {
    // The normal distribution's 97.5 % quantile.
    const Z: f64 = 1.959_963_984_540_054;
    let n = tried.max(1) as f64;
    let share = met as f64 / n;
    let middle = (share + Z * Z / (2.0 * n)) / (1.0 + Z * Z / n);
    let reach = Z / (1.0 + Z * Z / n) * libm::sqrt(share * (1.0 - share) / n + Z * Z / (4.0 * n * n));
    [(middle - reach).max(0.0), (middle + reach).min(1.0)]
}

/// The state in the hold for scrambling that [`crate::hold`] brings to this one, with the puzzle left so turned.
///
/// ```
/// use blind::{Conventions, hold, put_down};
/// use cube::{Rotation, Size};
/// let state = search::random::state3(&mut search::random::seeded(2));
/// let conventions = Conventions::read("holding = { up = \"yellow\", front = \"green\" }").unwrap();
/// for left in Rotation::all() {
///     assert_eq!(hold(&put_down(&state, &conventions, left), &conventions).state, state);
/// }
/// ```
pub fn put_down(state: &State, conventions: &Conventions, left: Rotation) -> State {
    let size: Size = state.size();
    let wanted = conventions.holding;
    // On odd sizes picking up undoes whatever way the puzzle was left in; on even ones it only turns by the holding.
    let turned_back = if size.is_odd() { wanted.inverse().then(left) } else { wanted.inverse() };
    State::held(size, wanted).then(state).after(turned_back.turns())
}
