//! Options of shortest solutions.

use super::{StateOptions, whole};
use clap::Args;

/// Options of `shortest`.
#[derive(Debug, Args)]
pub struct ShortestOptions {
    /// The puzzle and its state.
    #[command(flatten)]
    pub state: StateOptions,
    /// How long to search; what is known by then is told
    #[arg(long, value_name = "NUMBER", default_value = "10", allow_negative_numbers = true, value_parser = whole::<u64>(1, 604_800))]
    pub seconds: u64,
    /// How many positions to look at at most, for an answer that does not depend on the machine
    #[arg(long, value_name = "NUMBER", allow_negative_numbers = true, value_parser = whole::<u64>(1, u64::MAX))]
    pub positions: Option<u64>,
    /// JSON
    #[arg(long)]
    pub json: bool,
}
