//! Whether the engine crates compile to wasm32, for the browser.

use crate::layering::{self, Role};
use crate::process::{cargo, command, output, show};
use anyhow::Result;
use std::path::Path;

const TARGET: &str = "wasm32-unknown-unknown";

/// Compiles the engine crates to wasm32 where that target is installed; says so where it is not.
///
/// # Errors
/// When a crate does not compile.
pub fn check() -> Result<()> {
    let folder = output(command("rustc", &["--print", "target-libdir", "--target", TARGET]))?;
    if !Path::new(folder.trim()).exists() {
        println!("left out: the target {TARGET} is not installed (`rustup target add {TARGET}` adds it)");
        return Ok(());
    }
    let members = layering::members()?;
    let mut arguments = vec!["check", "--lib", "--target", TARGET];
    for member in members.iter().filter(|member| layering::role(member) == Some(Role::Engine)) {
        arguments.extend(["--package", member]);
    }
    show(cargo(&arguments))
}
