//! The 3x3 solved in few turns, in two phases: first into the subgroup that half turns of four faces and all turns of U and D
//! make, then home inside it.
//!
//! Both phases are searched by increasing length with tables of how far it is at least (3.1 MB, made at the first call). The first
//! solution within the limit is taken, from six equal tasks at once: the state and its inverse, along each of three axes.
//! Source: the method by nested subgroups, published since 1981, from memory.
//! Solutions are near the shortest, not the shortest.

mod coordinates;
mod corners;
mod inner;
mod nearer;
mod optimum;
mod outer;
mod phases;
mod symmetry;
mod tables;

pub use optimum::{Known, Optimum, optimum};

use crate::solve::work::Work;
use cube::{Claim, NotProven, Size, State, Turn};
use thiserror::Error;

/// The size that is solved here.
const SIZE: Size = Size::THREE;

/// The most turns that a solution may take (half turns count one).
///
/// Below 21 single states take very long, which is why no smaller limit can be asked for.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct Limit(u8);

impl Limit {
    /// 21 turns: the shortest solutions on average.
    pub const TIGHT: Self = Self(21);
    /// 23 turns: the fastest.
    pub const LOOSE: Self = Self(23);
    /// All there are, from the shortest solutions to the fastest answers.
    pub const ALL: [Self; 3] = [Self(21), Self(22), Self(23)];

    /// A limit of 21, 22 or 23 turns; `None` for any other number.
    ///
    /// ```
    /// use search::solve3::Limit;
    /// assert_eq!(Limit::new(21), Some(Limit::TIGHT));
    /// assert_eq!(Limit::new(20), None);
    /// ```
    pub const fn new(turns: u8) -> Option<Self> {
        if matches!(turns, 21..=23) { Some(Self(turns)) } else { None }
    }

    /// The number of turns.
    pub const fn turns(self) -> u8 {
        self.0
    }
}

/// Why there is no solution.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum Solve3Error {
    /// The state is not one of a 3x3.
    #[error("a {0} is not solved as a 3x3")]
    WrongSize(Size),
    /// The solver found nothing, although every state can be solved. That is a fault of the program.
    #[error("no solution of this 3x3 was found; this is a fault of the program")]
    NotFound,
    /// What was found does not do what it claims, which is a fault of the program.
    #[error(transparent)]
    NotProven(#[from] NotProven),
}

/// A solution of at most so many turns, all of them face turns; after it the cube is solved and held as the centres say.
///
/// # Errors
/// [`Solve3Error`] when the state is of another size.
///
/// ```
/// use cube::{Algorithm, Size, State};
/// use search::solve3::{Limit, solve};
/// let turns = Algorithm::parse("x R U' M F2 Dw", Size::THREE).unwrap().flatten();
/// let state = State::solved(Size::THREE).after(&turns);
/// let solution = solve(&state, Limit::TIGHT).unwrap();
/// assert_eq!(state.after(&solution).solved_hold(), Some(state.core()));
/// ```
pub fn solve(state: &State, limit: Limit) -> Result<Vec<Turn>, Solve3Error> {
    if state.size() != SIZE {
        return Err(Solve3Error::WrongSize(state.size()));
    }
    let goal = State::held(SIZE, state.core());
    if *state == goal {
        return Ok(Vec::new());
    }
    // Face turns do not move the centres: what solves the cube as its centres name it solves it as it is held.
    let mut told = |_| true;
    let turns =
        phases::solve(&state.named_in(state.core()), limit.turns(), &mut Work::new(u64::MAX, &mut told))
            .ok_or(Solve3Error::NotFound)?;
    let solves = turns.len() <= limit.turns() as usize && state.after(&turns) == goal;
    NotProven::unless(solves, Claim::Solution)?;
    Ok(turns)
}
