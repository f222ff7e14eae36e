//! Whether the engine crates compile to wasm32, for the browser.

use crate::engine::cargo_for_browser;
use crate::layering::{self, Role};
use crate::process::show;
use anyhow::Result;

/// Compiles the engine crates to wasm32.
///
/// # Errors
/// When a crate does not compile, or there is no compiler for the target.
pub fn check() -> Result<()> {
    let members = layering::members()?;
    let mut arguments = vec!["check", "--profile", "wasm", "--lib"];
    for member in members.iter().filter(|member| layering::role(member) == Some(Role::Engine)) {
        arguments.extend(["--package", member]);
    }
    show(cargo_for_browser(&arguments)?)
}
