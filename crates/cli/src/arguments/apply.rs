//! Options of applying moves.

use super::StateOptions;
use clap::Args;

/// Options of `apply`.
#[derive(Debug, Args)]
pub struct ApplyOptions {
    /// The puzzle and its state.
    #[command(flatten)]
    pub state: StateOptions,
    /// JSON
    #[arg(long)]
    pub json: bool,
}
