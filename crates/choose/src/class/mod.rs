//! Classes of states: how many states meet a condition, and one of them drawn so that each is as likely as any other.
//!
//! The states of a kind fall into classes by their cycles and how these turn; how many states a class holds is a matter of
//! combinatorics ([`count`]). Classes of the same figures go together, and corners are put beside edges of a parity that goes
//! with theirs, so that a condition is decided once for a great many states. What the letters of a memo are is counted by
//! [`occur`]; drawing, such tests are met by drawing again within the classes.

mod alike;
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
use blind::{Conventions, Solver};
use cube::{Claim, NotProven, Orbit, OrbitMap, Rotation, Size, State};
use draw::below_large;
use num_bigint::BigUint;
use rand::Rng;
use search::scramble::ScrambleError;
use space::KindSpace;
use table::{Row, Table};
use thiserror::Error;

/// How many states meet a condition.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Matching {
    /// Exactly so many.
    Exact(BigUint),
    /// At most so many; see [`Sampler::estimate`]. So it is where letters are asked for and breaks are chosen by what they
    /// cost, where too many different letters are asked for together, and where letters of pieces that look alike are asked for.
    AtMost(BigUint),
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
    #[error(transparent)]
    NotProven(#[from] NotProven),
    /// No state was drawn, which is a fault of the program.
    #[error(transparent)]
    NoState(#[from] ScrambleError),
}

/// Draws states that meet a condition, each with the same probability.
///
/// ```
/// use blind::{Conventions, Solver};
/// use choose::{Aspect, Condition, Feature, Lying, Matching, Sampler};
/// use cube::{Orbit, Size};
/// let solver = Solver::new(Size::TWO, Conventions::default());
/// let two_twists = Feature::Of(Orbit::Corner, Aspect::Turned).is(2);
/// let condition = Condition::new(Size::TWO, two_twists).unwrap();
/// let sampler = Sampler::new(&condition, Lying::Scrambled, &solver).unwrap();
/// assert_eq!(sampler.total(), 3_674_160_u32.into());
/// assert!(matches!(sampler.matching(), Matching::Exact(found) if found > 0_u32.into()));
/// let mut generator = search::random::seeded(1);
/// let state = sampler.draw(&mut generator, &mut |_| true).unwrap();
/// assert!(condition.holds(&solver.memo(&state).unwrap()));
/// ```
pub struct Sampler<'a> {
    condition: &'a Condition,
    solver: &'a Solver,
    tables: Tables,
    /// Rows of each kind that go together, and how many states they and those before them hold.
    combinations: Vec<Combination>,
    /// Not counted with what nothing is asked of.
    total: BigUint,
}

/// A row of each kind's table, by its number.
type Rows = OrbitMap<u32>;

#[derive(Clone, Debug)]
struct Combination {
    up_to: BigUint,
    rows: Rows,
    /// Whether all its states meet the condition.
    certain: bool,
}

/// A table for each kind that the puzzle has.
type Tables = OrbitMap<Option<Table>>;

/// Tables of all kinds of a condition's puzzle.
fn tables(condition: &Condition, lying: Lying, solver: &Solver, sum_free: &[Orbit]) -> Tables {
    let kinds = Orbit::of(condition.size());
    OrbitMap::new(|orbit| {
        kinds.contains(&orbit).then(|| {
            let mut space = KindSpace::new(orbit, condition.size(), lying, solver.conventions());
            space.sum_free = sum_free.contains(&orbit);
            Table::new(space, condition, solver.tracing().order_of_breaks(orbit).copied())
        })
    })
}

/// Calls for each combination of rows, one of each kind, whose parities go together (or for all).
fn each_combination(
    tables: &Tables,
    solver: &Solver,
    parity_free: bool,
    see: &mut dyn FnMut(&Rows, &BigUint),
) {
    let exchanged = solver.tracing().exchanges();
    let tables: Vec<(Orbit, &Table)> =
        tables.iter().filter_map(|(orbit, table)| Some((orbit, table.as_ref()?))).collect();
    let agree = if parity_free {
        Parities::Free
    } else if exchanged {
        Parities::Exchanged
    } else {
        Parities::Agree
    };
    combine(&tables, agree, false, &mut Rows::default(), &BigUint::from(1_u8), see);
}

/// Which rows of corners and edges go together.
#[derive(Clone, Copy)]
enum Parities {
    /// All.
    Free,
    /// Those that are both odd or both even.
    Agree,
    /// Edges are traced as even whatever the corners are: where these are odd, two edges are taken for each other.
    Exchanged,
}

/// Adds a row of the next kind. `odd` is whether the corners are.
fn combine(
    tables: &[(Orbit, &Table)],
    agree: Parities,
    odd: bool,
    rows: &mut Rows,
    weight: &BigUint,
    see: &mut dyn FnMut(&Rows, &BigUint),
) {
    let Some((&(orbit, table), rest)) = tables.split_first() else { return see(rows, weight) };
    for (at, row) in table.rows.iter().enumerate() {
        let own = row.tally.is_odd();
        let fits = match agree {
            Parities::Free => true,
            Parities::Agree => orbit != Orbit::Midge || own == odd,
            Parities::Exchanged => orbit != Orbit::Midge || !own,
        };
        if fits {
            rows[orbit] = at as u32;
            let odd = odd || (orbit == Orbit::Corner && own);
            combine(rest, agree, odd, rows, &(weight * row.weight), see);
        }
    }
}

/// Whether the states of a combination of rows meet a condition; `None` where only the single states can tell.
fn truth(condition: &Condition, tables: &Tables, rows: &Rows) -> Option<bool> {
    let row = |orbit: Orbit| {
        let table = tables[orbit].as_ref()?;
        Some((table, table.rows.get(rows[orbit] as usize)?))
    };
    let number = |feature| match feature {
        Feature::Of(orbit, aspect) => Some(row(orbit).map_or(0, |(table, row)| table.figure(row, aspect))),
        Feature::Parity => {
            let odd =
                |orbit: Orbit| !orbit.looks_alike() && row(orbit).is_some_and(|(_, row)| row.tally.is_odd());
            Some(u8::from(Orbit::ALL.into_iter().any(odd)))
        }
        Feature::Letters => {
            let rows = Orbit::ALL.into_iter().filter_map(row);
            Some(rows.map(|(table, row)| table.figure(row, crate::Aspect::Targets)).sum())
        }
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
    pub fn new(condition: &'a Condition, lying: Lying, solver: &'a Solver) -> Result<Self, Unsatisfiable> {
        let tables = tables(condition, lying, solver, &[]);
        let mut combinations: Vec<Combination> = Vec::new();
        let (mut up_to, mut total) = (BigUint::ZERO, BigUint::ZERO);
        each_combination(&tables, solver, false, &mut |rows, weight| {
            total += weight;
            let held = truth(condition, &tables, rows);
            if held != Some(false) {
                up_to += weight;
                let up_to = up_to.clone();
                combinations.push(Combination { up_to, rows: *rows, certain: held == Some(true) });
            }
        });
        if combinations.is_empty() {
            return Err(reason::find(condition, lying, solver));
        }
        Ok(Self { condition, solver, tables, combinations, total })
    }

    /// How many states there are.
    pub fn total(&self) -> BigUint {
        &self.total * self.uncounted()
    }

    /// How many of them meet the condition.
    pub fn matching(&self) -> Matching {
        let all = self.counted() * self.uncounted();
        let certain = self.combinations.iter().all(|combination| combination.certain);
        if certain { Matching::Exact(all) } else { Matching::AtMost(all) }
    }

    /// The states of all combinations, without what nothing is asked of.
    fn counted(&self) -> BigUint {
        self.combinations.last().map_or(BigUint::ZERO, |last| last.up_to.clone())
    }

    /// In how many ways that may lie beside each of them.
    fn uncounted(&self) -> BigUint {
        self.tables.iter().filter_map(|(_, table)| table.as_ref()).map(Table::uncounted).product()
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
            let memo = self.solver.memo(&state)?;
            if self.condition.holds(&memo) {
                return Ok(state);
            }
            NotProven::unless(!certain, Claim::Condition)?;
        }
    }

    /// A state of one of the combinations of rows, and whether it has to meet the condition.
    fn try_once(
        &self,
        generator: &mut impl Rng,
        tries: &mut u64,
        go_on: &mut dyn FnMut(u64) -> bool,
    ) -> Result<(State, bool), DrawError> {
        let at = below_large(&self.counted(), generator);
        let found = self.combinations.partition_point(|combination| combination.up_to <= at);
        let refuted = NotProven { claim: Claim::Condition };
        let combination = self.combinations.get(found).ok_or(refuted)?;
        let mut perms = Vec::new();
        let mut odd = false;
        for (orbit, table) in self.tables.iter() {
            let Some(table) = table else { continue };
            let row: &Row = &table.rows[combination.rows[orbit] as usize];
            let perm = loop {
                *tries += 1;
                if tries.is_multiple_of(4096) && !go_on(*tries) {
                    return Err(DrawError::Stopped { tries: *tries });
                }
                let perm = table.draw(row, generator);
                if table.is_of(row, &perm)? {
                    break perm;
                }
            };
            perms.push(if orbit == Orbit::Midge { self.solver.tracing().untraced(perm, odd) } else { perm });
            odd |= orbit == Orbit::Corner && row.tally.is_odd();
        }
        let state = State::from_orbits(self.condition.size(), Rotation::NONE, &perms).map_err(|_| refuted)?;
        Ok((state, combination.certain))
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
            met += u64::from(self.condition.holds(&self.solver.memo(&state)?));
        }
        let at_most = ratio(&self.counted(), &self.total);
        Ok(Estimate::of(met, tries, at_most))
    }
}

impl Estimate {
    /// From how many were met, of states that are a share of all.
    pub(crate) fn of(met: u64, tried: u64, among: f64) -> Self {
        let [low, high] = wilson(met, tried);
        let share = among * met as f64 / tried.max(1) as f64;
        Self { tried, met, share, bounds: [among * low, among * high] }
    }
}

/// One number as a share of another.
///
/// ```
/// assert_eq!(choose::ratio(&1_u8.into(), &4_u8.into()), 0.25);
/// ```
pub fn ratio(part: &BigUint, whole: &BigUint) -> f64 {
    const WORD: f64 = 18_446_744_073_709_551_616.0;
    let float = |number: &BigUint| {
        number.iter_u64_digits().rev().fold(0.0, |float, digit| float * WORD + digit as f64)
    };
    float(part) / float(whole)
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

/// The state in the hold for scrambling that [`blind::Held::new`] brings to this one, with the puzzle left so turned.
///
/// ```
/// use blind::{Conventions, Held};
/// use choose::put_down;
/// use cube::{Face, Rotation, Size};
/// let state = search::random::state3(&mut search::random::seeded(2));
/// let holding = Rotation::bringing(Face::D, Face::F).unwrap();
/// let conventions = Conventions { holding, ..Conventions::default() };
/// for left in Rotation::all() {
///     assert_eq!(Held::new(&put_down(&state, &conventions, left), holding).state, state);
/// }
/// ```
pub fn put_down(state: &State, conventions: &Conventions, left: Rotation) -> State {
    let size: Size = state.size();
    let wanted = conventions.holding;
    // On odd sizes picking up undoes whatever way the puzzle was left in; on even ones it only turns by the holding.
    let turned_back = if size.is_odd() { wanted.inverse().then(left) } else { wanted.inverse() };
    State::held(size, wanted).then(state).after(turned_back.turns())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::condition::Aspect;
    use blind::Conventions;

    #[test]
    fn a_state_that_does_not_meet_the_condition_is_not_drawn() {
        let solver = Solver::new(Size::TWO, Conventions::default());
        let twists = |count| {
            let term = Feature::Of(Orbit::Corner, Aspect::Turned).is(count);
            Condition::new(Size::TWO, term).expect("a condition")
        };
        let (counted, other) = (twists(2), twists(1));
        let mut generator = search::random::seeded(1);
        let mut sampler = Sampler::new(&counted, Lying::Scrambled, &solver).expect("there are states");
        assert!(sampler.draw(&mut generator, &mut |_| true).is_ok());
        // Counted for one condition and asked for another.
        sampler.condition = &other;
        let drawn = sampler.draw(&mut generator, &mut |_| true);
        assert_eq!(drawn, Err(DrawError::NotProven(NotProven { claim: Claim::Condition })));
    }
}
