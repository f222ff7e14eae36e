//! Is this memo right, and why did the attempt fail: memos checked by simulation, moves lined up with their plan, and the
//! mistakes that explain an outcome.
//!
//! A [`Slip`] is one mistake, of which the [`Catalogue`] says how likely each kind is. [`check_memo`] and [`check_moves`] say
//! where a memo or the moves leave the way; [`why`] looks for the slips that lead to what was seen.

mod check;
mod moves;
mod slip;
mod why;

pub use check::{
    Circumstance, FEWEST_LETTERS, KindCheck, MemoCheck, MemoError, MemoFault, MemoSlip, ParityFault,
    Scrambled, check_letters, check_memo, check_scrambled,
};
pub use moves::{Deviation, How, MovesCheck, check_moves};
pub use slip::{ActionStep, Alike, Catalogue, CatalogueError, Change, Part, Slip, SlipKind, Stage};
pub use why::{
    Answer, Ask, Begun, ByHand, Depth, Diagnosis, Explanation, Glimpse, HandDiagnosis, HandExplanation,
    Inquiry, LONGEST_LIST, Missing, Observed, Plan, Question, Seen, Unlooked, Verdict, WhyError, explain,
    why, why_by_hand,
};
