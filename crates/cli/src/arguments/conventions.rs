//! Options of conventions.

use clap::{Args, Subcommand};
use std::path::PathBuf;

/// Options of `conventions`.
#[derive(Debug, Args)]
pub struct ConventionsOptions {
    /// What to do with them.
    #[command(subcommand)]
    pub action: ConventionsAction,
}

/// What can be done with conventions.
#[derive(Debug, Subcommand)]
pub enum ConventionsAction {
    /// Print the net with your letters, and all that is settled
    Show {
        /// The puzzle whose net and kinds of pieces are shown: 2 for the 2x2 up to 7 for the 7x7
        #[arg(long, short, default_value = "3", value_name = "SIZE")]
        puzzle: String,
        /// As a conventions file with every key written out
        #[arg(long, conflicts_with = "json")]
        toml: bool,
        /// JSON
        #[arg(long)]
        json: bool,
    },
    /// Check a conventions file
    Check {
        /// The file, or - for standard input
        file: PathBuf,
        /// JSON
        #[arg(long)]
        json: bool,
    },
}
