//! `cargo xtask bench`: the benchmarks of all crates.

use crate::process::{cargo, show};
use anyhow::Result;

/// Runs them.
///
/// # Errors
/// When one does not build or fails.
pub fn run() -> Result<()> {
    show(cargo(&["bench", "--workspace", "--benches"]))
}
