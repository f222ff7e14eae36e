//! Options of comparing methods.

use super::whole;
use clap::Args;
use std::path::PathBuf;

/// Options of `compare`.
#[derive(Debug, Args)]
pub struct CompareOptions {
    /// Methods: one-swap, slice-swap, three-cycle, two joined by + for corners and edges, options after commas (as
    /// three-cycle+slice-swap,least,exchange), or conventions files
    #[arg(value_name = "METHOD")]
    pub methods: Vec<String>,
    /// How many states
    #[arg(long, short = 'n', value_name = "NUMBER", default_value = "10000", allow_negative_numbers = true, value_parser = whole::<u64>(2, 100_000_000))]
    pub count: u64,
    /// The seed of the random states
    #[arg(long, value_name = "NUMBER", default_value = "1", allow_negative_numbers = true, value_parser = whole::<u64>(0, u64::MAX))]
    pub seed: u64,
    /// Costs that `algs fit` wrote
    #[arg(long, value_name = "FILE")]
    pub ease: Option<PathBuf>,
    /// Draw the estimated times: quantiles into this file, a histogram for each method beside it
    #[arg(long, value_name = "FILE")]
    pub svg: Option<PathBuf>,
    /// JSON
    #[arg(long)]
    pub json: bool,
}
