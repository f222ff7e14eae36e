//! The craft of solving blindfolded: conventions, trace, methods, execution.
//!
//! A scrambled state is picked up ([`hold`]), traced ([`Memo`], [`Trace`]) and carried out ([`Solution`]) under the
//! solver's [`Conventions`]. Results are data; crate `voice` puts them into words and crate `draw` into pictures.

mod attempt;
mod check;
mod class;
pub mod compare;
mod condition;
mod conventions;
mod execution;
mod holding;
mod kind;
mod lesson;
mod letters;
mod memo;
mod method;
mod plan;
mod reason;
pub mod sheet;
mod slip;
mod swap;
mod trace;
mod why;

pub use attempt::{Deviation, How, MovesCheck, check_moves};
pub use check::{
    KindCheck, MemoCheck, MemoError, MemoFault, MemoSlip, ParityFault, check_letters, check_memo,
};
pub use class::{DrawError, Estimate, Lying, Matching, Sampler, Unsatisfiable, Why, put_down};
pub use condition::{
    Against, Aspect, Clause, Condition, ConditionError, Feature, MOST_DEPTH, MOST_FEATURES, Occurs, Relation,
    Term, Wanted,
};
pub use conventions::Needs;
pub use conventions::{
    BreakChoice, COLOUR_NAMES, Colour, Conventions, ConventionsError, KindConventions, MethodName,
    ParityChoice, Problem, Turned, nearest,
};
pub use execution::{Action, ExecutionError, Solution, actions};
pub use holding::{Held, HoldChoice, best_hold, every_hold, hold, solved_pieces};
pub use kind::{KINDS, kind_name, kind_named};
pub use lesson::{Lesson, LessonError, lesson_condition, lessons};
pub use letters::{Letters, LettersError, rows};
pub use memo::Memo;
pub use method::{
    Carrier, Case, Cycles, Method, MethodError, Outfit, Parity, SliceLetter, SliceSwap, letters_effect,
    letters_state, milliseconds,
};
pub use plan::{Costs, Group, cheapest_breaks};
pub use reason::{Chosen, End, Reason, reasons};
pub use slip::{ActionStep, Alike, Catalogue, CatalogueError, Change, Part, Slip, SlipKind, Stage};
pub use swap::{Swap, SwapEffect, SwapError, moved_pieces};
pub use trace::{Breaks, BufferIs, Cycle, Role, Step, Trace, breaks_by_letter};
pub use why::{
    Answer, Ask, Begun, ByHand, Depth, Diagnosis, Explanation, HandDiagnosis, HandExplanation, Inquiry,
    Observed, Plan, Question, Seen, WhyError, why, why_by_hand,
};
