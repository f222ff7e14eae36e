//! Running other programs from the root of the project.

use anyhow::{Context, Result, bail};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// The root of the project: two folders above this crate.
///
/// Cargo names the folder to what it runs. The one that was compiled in serves only a program that is started by hand:
/// in a `target/` that was copied along with a tree it is the folder of the other tree.
pub fn root() -> PathBuf {
    let crate_folder = std::env::var_os("CARGO_MANIFEST_DIR")
        .map_or_else(|| Path::new(env!("CARGO_MANIFEST_DIR")).to_owned(), PathBuf::from);
    crate_folder.ancestors().nth(2).unwrap_or(&crate_folder).to_owned()
}

/// Where everything that is built goes.
pub fn target() -> PathBuf {
    std::env::var_os("CARGO_TARGET_DIR").map_or_else(|| root().join("target"), |folder| root().join(folder))
}

/// A command that runs in the root and has no standard input.
pub fn command(program: &str, arguments: &[&str]) -> Command {
    let mut command = Command::new(program);
    command.args(arguments).current_dir(root()).stdin(Stdio::null());
    command
}

/// Runs a command, its output shown as it comes.
///
/// # Errors
/// When it cannot be started or ends with a failure.
pub fn show(mut command: Command) -> Result<()> {
    let line = described(&command);
    let status = command.status().with_context(|| format!("`{line}` could not be started"))?;
    if !status.success() {
        bail!("`{line}` failed ({status})");
    }
    Ok(())
}

/// Runs a command and returns what it printed.
///
/// # Errors
/// When it cannot be started, ends with a failure, or prints what is not UTF-8.
pub fn output(mut command: Command) -> Result<String> {
    let line = described(&command);
    let output = command.output().with_context(|| format!("`{line}` could not be started"))?;
    if !output.status.success() {
        bail!("`{line}` failed ({}): {}", output.status, String::from_utf8_lossy(&output.stderr).trim());
    }
    String::from_utf8(output.stdout).with_context(|| format!("`{line}` printed something that is not UTF-8"))
}

/// Whether a program is there and answers.
pub fn available(program: &str, arguments: &[&str]) -> bool {
    command(program, arguments)
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .status()
        .is_ok_and(|status| status.success())
}

/// The cargo that runs this program.
pub fn cargo(arguments: &[&str]) -> Command {
    let program = std::env::var("CARGO").unwrap_or_else(|_| "cargo".to_owned());
    command(&program, arguments)
}

fn described(command: &Command) -> String {
    let program = Path::new(command.get_program()).file_name().unwrap_or_default().to_string_lossy();
    command.get_args().fold(program.into_owned(), |line, argument| line + " " + &argument.to_string_lossy())
}
