//! Shortest paths in move space: set-up moves, state solvers, cycle algorithms, random states and scrambles.
//!
//! The crate knows cubes and turns, no letters and no people. Whatever it returns was first made on the model:
//! a sequence that does not do what it claims is an error, never an answer.
//!
//! ```
//! use cube::{Size, State};
//! use search::scramble::{Event, scramble};
//!
//! let mut generator = search::random::seeded(7);
//! let drawn = scramble(Size::THREE, Event::Sighted, &mut generator).unwrap();
//! assert_eq!(State::solved(Size::THREE).after(drawn.turns()), *drawn.state());
//! let solution = search::solve3::solve(drawn.state(), search::solve3::Limit::TIGHT).unwrap();
//! assert!(drawn.state().after(&solution).is_solved());
//! ```

pub mod commutators;
pub mod conjugate;
pub mod cycle;
pub mod ease;
pub mod factor;
mod least_squares;
pub mod random;
pub mod rings;
pub mod scramble;
pub mod setup;
mod solve;
pub mod solve2;
pub mod solve3;
pub mod solve4;
