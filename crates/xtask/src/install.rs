//! Installs what the tests need and cargo does not bring: a Python environment, and GAP on Debian.

use crate::process::{available, command, root, show, target};
use anyhow::{Context, Result, bail};
use std::fs;
use std::path::{Path, PathBuf};

/// Installs what is missing; what cannot be installed here is named, with the way to get it.
///
/// # Errors
/// When an installation was begun and failed.
pub fn for_tests() -> Result<()> {
    if !available("python3", &["--version"]) && !debian_install(&["python3", "python3-venv"])? {
        println!(
            "Python 3 is missing, so the vectors will not be made again: install python3 with its module venv"
        );
    }
    if available("python3", &["--version"]) {
        python_environment()?;
    }
    if gap_available() {
        println!("GAP is there");
    } else if !debian_install(&["gap-core"])? {
        println!(
            "GAP is missing, so it will not compute the orders of groups again: install GAP 4 (Debian: gap-core)"
        );
    }
    Ok(())
}

/// Whether GAP runs.
pub fn gap_available() -> bool {
    // GAP has no harmless question to be asked on the command line; reading nothing is one.
    command("gap", &["-q", "-b", "-r"])
        .stdout(std::process::Stdio::null())
        .stderr(std::process::Stdio::null())
        .status()
        .is_ok_and(|status| status.success())
}

/// The Python of the environment with the packages of `reference/requirements.txt`; `None` when there is none.
pub fn python() -> Option<PathBuf> {
    let python = environment().join("bin").join("python");
    python.exists().then_some(python)
}

fn environment() -> PathBuf {
    target().join("reference-python")
}

/// Makes the environment unless it was made from the same requirements before.
fn python_environment() -> Result<()> {
    let wanted = fs::read_to_string(root().join("reference/requirements.txt"))
        .context("reference/requirements.txt cannot be read")?;
    let folder = environment();
    let stamp = folder.join("made-from.txt");
    if python().is_some() && fs::read_to_string(&stamp).is_ok_and(|made_from| made_from == wanted) {
        println!("the Python environment is up to date");
        return Ok(());
    }
    let path = folder.to_str().context("the path of the target folder is not UTF-8")?;
    if show(command("python3", &["-m", "venv", "--clear", path])).is_err() {
        if !debian_install(&["python3-venv"])? {
            bail!("Python cannot make an environment: install its module venv (Debian: python3-venv)");
        }
        show(command("python3", &["-m", "venv", "--clear", path]))?;
    }
    let python = folder.join("bin").join("python");
    let python = python.to_str().context("the path of the target folder is not UTF-8")?;
    let arguments = [
        "-m",
        "pip",
        "install",
        "--quiet",
        "--disable-pip-version-check",
        "-r",
        "reference/requirements.txt",
    ];
    show(command(python, &arguments))?;
    fs::write(stamp, wanted).context("the Python environment could not be stamped")
}

/// Installs Debian packages when this is Debian and we are root; says whether it did.
///
/// # Errors
/// When the installation was begun and failed.
pub fn debian_install(packages: &[&str]) -> Result<bool> {
    let root_user = crate::process::output(command("id", &["-u"])).is_ok_and(|id| id.trim() == "0");
    if !Path::new("/etc/debian_version").exists() || !root_user || !available("apt-get", &["--version"]) {
        return Ok(false);
    }
    let apt = |arguments: &[&str]| {
        let mut command = command("apt-get", arguments);
        command.env("DEBIAN_FRONTEND", "noninteractive");
        show(command)
    };
    apt(&["update", "-qq"])?;
    let mut arguments = vec!["install", "-y", "-qq", "--no-install-recommends"];
    arguments.extend(packages);
    apt(&arguments)?;
    Ok(true)
}
