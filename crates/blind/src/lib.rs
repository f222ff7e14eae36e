//! The craft of solving blindfolded: conventions, trace, methods, execution.
//!
//! A [`Solver`] has a size, a person's [`Conventions`] and a [`Method`]; it picks a scrambled state up ([`Held`]), traces it
//! ([`Memo`], [`Trace`]) and carries it out ([`Solution`]). Results are data; crate `voice` puts them into words and crate
//! `draw` into pictures.

mod alike;
pub mod compare;
mod conventions;
mod cycle_case;
mod execution;
mod holding;
mod kind;
mod least_time;
mod letters;
mod memo;
mod method;
mod nearest;
mod reason;
mod solver;
mod step;
mod swap;
mod trace;
mod usual;
mod written;

pub use conventions::{
    BreakChoice, COLOUR_NAMES, ChangeError, Changed, Colour, Consequence, Conventions, ConventionsChange,
    KindConventions, Misfit, OrbitOrder, ParityChoice, Turned,
};
pub use cycle_case::{CycleAlgorithm, CycleCase};
pub use execution::{Action, ExecutionError, Solution};
pub use holding::{Held, HoldChoice, solved_pieces, unsolved_pieces};
pub use kind::{kind_name, kind_named};
pub use least_time::cheapest_breaks;
pub use letters::{LONGEST_LETTER, LONGEST_MEMO, Letters, LettersError, SEPARATORS, UnknownLetter, rows};
pub use memo::{Memo, Tracing};
pub use method::{
    Carrier, Case, Costs, Cycles, Exchange, Group, Inner, Method, MethodError, Outfit, PairTurns, Parity,
    SliceLetter, SliceSwap, letters_effect, letters_state, milliseconds,
};
pub use nearest::nearest;
pub use reason::{Chosen, End, Reason};
pub use solver::{HoldOffer, NoSolution, Solve, Solver};
pub use step::{Role, Step};
pub use swap::{Swap, SwapEffect, SwapError, moved_pieces};
pub use trace::{Breaks, BufferIs, Cycle, Trace, breaks_by_letter, exchanged, is_right};
pub use usual::{MethodName, Usual, sizeless, usual};
pub use written::WrittenMemo;
