//! `cargo xtask start`: builds the program and runs the main job once, on a worked example.

use crate::process::{cargo, command, root, show, target};
use anyhow::{Context, Result, bail};
use std::fs;

const EXAMPLE: &str = "D2 F' R2 B U2 L' D B2 R F U' L2 B' U R2 D' F2 L U2";

/// Builds `hoodwink`, prints the trace of the example and writes its pictures to `out/`.
///
/// # Errors
/// When there is nothing to build yet, or building or running fails.
pub fn run() -> Result<()> {
    if !root().join("crates/cli/Cargo.toml").exists() {
        bail!("there is no program to start yet: crates/cli is missing");
    }
    show(cargo(&["build", "--release", "--package", "cli"]))?;
    let program = target().join("release").join(format!("hoodwink{}", std::env::consts::EXE_SUFFIX));
    let program = program.to_str().context("the path of the built program is not UTF-8")?;
    println!("\n$ hoodwink trace --puzzle 3 \"{EXAMPLE}\"\n");
    show(command(program, &["trace", "--puzzle", "3", EXAMPLE]))?;
    let out = root().join("out");
    fs::create_dir_all(&out).context("the folder out/ could not be made")?;
    println!();
    for name in ["example.svg", "example.png"] {
        let file = out.join(name);
        let path = file.to_str().context("the path of out/ is not UTF-8")?;
        show(command(program, &["show", "--puzzle", "3", "--out", path, EXAMPLE]))?;
        println!("picture: {}", file.display());
    }
    Ok(())
}
