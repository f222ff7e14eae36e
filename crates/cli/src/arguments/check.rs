//! Options of checking a memo or moves.

use super::{Hold, MemoOptions, StateOptions, YesNo};
use clap::Args;

/// Options of `check`.
#[derive(Debug, Args)]
pub struct CheckOptions {
    /// The puzzle and its state.
    #[command(flatten)]
    pub state: StateOptions,
    /// The memo.
    #[command(flatten)]
    pub memo: MemoOptions,
    /// How the puzzle was picked up
    #[arg(long, value_enum, value_name = "CHOICE", default_value = "conventions")]
    pub hold: Hold,
    /// Whether you noted that the parity algorithm is to be made
    #[arg(long, value_enum, value_name = "ANSWER")]
    pub parity: Option<YesNo>,
    /// The moves of an attempt as they were really made, from picking the puzzle up on; they are compared with what
    /// the memo, or without one our own, asks for
    #[arg(long, value_name = "MOVES", conflicts_with = "parity")]
    pub moves: Option<String>,
    /// End with exit code 1 if it is wrong; otherwise a slip that was found is work done, and the code is 0
    #[arg(long)]
    pub strict: bool,
    /// One JSON object
    #[arg(long)]
    pub json: bool,
}
