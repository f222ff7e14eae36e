//! Shortest paths in move space: set-up moves, state solvers, cycle algorithms.
//!
//! It knows cubes only: no letters, memos or files. What it returns has been applied to a state before.

pub mod setup;
