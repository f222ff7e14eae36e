//! `cargo xtask start`: builds the web app and the program, serves on this machine alone and opens a browser.

use crate::process::{available, cargo, command, root, show, target};
use crate::{site, web};
use anyhow::{Context, Result, bail};
use std::io::{BufRead, BufReader};
use std::path::PathBuf;
use std::process::Stdio;

/// Builds everything, serves it until it is ended, and shows it in a browser where there is one.
///
/// # Errors
/// When building fails, or the port is taken.
pub fn run(port: u16) -> Result<()> {
    match web::ensure_node() {
        Ok(()) => {
            site::build()?;
        }
        // The server has a page of its own that says how to get the screens.
        Err(why) => println!("the screens are not built: {why:#}"),
    }
    let program = program()?;
    let mut serving = command(path(&program)?, &["serve", "--port", &port.to_string()])
        .stdout(Stdio::piped())
        .spawn()
        .context("the program could not be started")?;
    let out = serving.stdout.take().context("the program has no output")?;
    let mut line = String::new();
    BufReader::new(out).read_line(&mut line).context("the program said nothing")?;
    let address = line.trim();
    if !address.is_empty() {
        println!("\nHoodwink is at {address} until you press Ctrl-C");
        open(address);
    }
    let status = serving.wait().context("the program was lost")?;
    if !status.success() {
        // Why has been said by the program itself.
        let what = if address.is_empty() { "nothing is served" } else { "the program ended" };
        bail!("{what} ({status})");
    }
    Ok(())
}

/// Builds `hoodwink` and says where it is.
///
/// # Errors
/// When it does not compile.
pub fn program() -> Result<PathBuf> {
    show(cargo(&["build", "--release", "--package", "cli"]))?;
    Ok(target().join("release").join(format!("hoodwink{}", std::env::consts::EXE_SUFFIX)))
}

fn path(program: &std::path::Path) -> Result<&str> {
    program.to_str().context("the path of the built program is not UTF-8")
}

/// Opens the address with whatever the system opens addresses with; where there is no screen, nothing happens.
fn open(address: &str) {
    let has_screen = cfg!(any(windows, target_os = "macos"))
        || ["DISPLAY", "WAYLAND_DISPLAY"].iter().any(|name| std::env::var_os(name).is_some());
    if !has_screen {
        return;
    }
    let (program, arguments): (&str, &[&str]) = if cfg!(windows) {
        ("cmd", &["/C", "start", "", address])
    } else if cfg!(target_os = "macos") {
        ("open", &[address])
    } else {
        ("xdg-open", &[address])
    };
    if !available(program, arguments) {
        println!("no browser could be opened; the address is above");
    }
}

const EXAMPLE: &str = "D2 F' R2 B U2 L' D B2 R F U' L2 B' U R2 D' F2 L U2";

/// `cargo xtask example`: builds the program, prints the trace of a worked example, writes its pictures to `out/`.
///
/// # Errors
/// When building or running fails.
pub fn example() -> Result<()> {
    let program = program()?;
    let program = path(&program)?;
    println!("\n$ hoodwink trace --puzzle 3 \"{EXAMPLE}\"\n");
    show(command(program, &["trace", "--puzzle", "3", EXAMPLE]))?;
    let out = root().join("out");
    std::fs::create_dir_all(&out).context("the folder out/ could not be made")?;
    println!();
    for name in ["example.svg", "example.png"] {
        let file = out.join(name);
        show(command(program, &["show", "--puzzle", "3", "--out", path(&file)?, EXAMPLE]))?;
        println!("picture: {}", file.display());
    }
    Ok(())
}
