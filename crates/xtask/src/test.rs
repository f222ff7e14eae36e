//! `cargo xtask test`: installs what the tests need, then runs every test and check.

use crate::process::{available, cargo, show};
use crate::steps::Steps;
use crate::{install, licences, reference, site, tidy, wasm};
use anyhow::Result;

/// Runs all steps, stopping at the first failure.
///
/// # Errors
/// The first failure, with the name of its step.
pub fn run() -> Result<()> {
    let mut steps = Steps::default();
    steps.step("install what the tests need", install::for_tests)?;
    steps.step("tidy", tidy::run)?;
    steps.step("licences and refused versions", licences::run)?;
    steps.step("tests", || {
        if available("cargo", &["nextest", "--version"]) {
            show(cargo(&["nextest", "run", "--workspace", "--no-tests", "pass"]))
        } else {
            // Test targets only: the examples in the docs have their own step.
            show(cargo(&["test", "--workspace", "--lib", "--bins", "--tests", "--examples"]))
        }
    })?;
    steps.step("examples in the docs", || show(cargo(&["test", "--workspace", "--doc"])))?;
    steps.step("vectors made again", || reference::run(false))?;
    steps.step("engine crates compile to wasm32", wasm::check)?;
    steps.step("screens in a browser", || site::test(&[]))?;
    steps.summary();
    Ok(())
}
