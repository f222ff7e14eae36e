//! Options of the trace.

use super::{Hold, StateOptions};
use clap::Args;
use std::path::PathBuf;

/// Options of `trace`.
#[derive(Debug, Args)]
pub struct TraceOptions {
    /// The puzzle and its state.
    #[command(flatten)]
    pub state: StateOptions,
    /// How to pick the puzzle up
    #[arg(long, value_enum, value_name = "CHOICE", default_value = "conventions")]
    pub hold: Hold,
    /// All 24 ways to pick up a puzzle without fixed centres, best first: how, centres right, pieces solved, letters of each kind
    #[arg(long, conflicts_with_all = ["batch", "short"])]
    pub holdings: bool,
    /// Only the memo, without reasons and solution; of a batch letters, parity and holding, which is much faster
    #[arg(long, conflicts_with = "json")]
    pub short: bool,
    /// One JSON object
    #[arg(long)]
    pub json: bool,
    /// Read a scramble a line from a file, or from standard input with -, and write a JSON object a line
    #[arg(long, value_name = "FILE", conflicts_with_all = ["scramble", "facelets"])]
    pub batch: Option<PathBuf>,
}
