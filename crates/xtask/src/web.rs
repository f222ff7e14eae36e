//! What the web tasks need of the machine: Node, npm packages, a browser for the tests, and our own site tools.

use crate::install::debian_install;
use crate::process::{available, cargo, command, output, root, show};
use anyhow::{Context, Result, bail};
use std::ffi::OsStr;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

/// The oldest Node that the build tools run on.
const OLDEST_NODE: u32 = 20;

/// Checks for Node and npm.
///
/// # Errors
/// A sentence that says which version is needed and where it comes from.
pub fn ensure_node() -> Result<()> {
    let advice = format!(
        "the screens are built with Node {OLDEST_NODE} or newer and its npm; install them (from the Node project, \
         or as packages `nodejs` and `npm` where the system's are new enough) and run this again"
    );
    let Ok(version) = output(command("node", &["--version"])) else { bail!("there is no `node`: {advice}") };
    if major(version.trim()).is_none_or(|number| number < OLDEST_NODE) {
        bail!("this `node` is {}: {advice}", version.trim());
    }
    if !available("npm", &["--version"]) {
        bail!("there is a `node` but no `npm`: {advice}");
    }
    Ok(())
}

/// The first number of `v20.20.2`.
fn major(version: &str) -> Option<u32> {
    version.strip_prefix('v')?.split('.').next()?.parse().ok()
}

/// Installs the npm packages of the lock file, without running any script of theirs. Does nothing when they are
/// already those of the lock file.
///
/// # Errors
/// When Node is missing or npm fails.
pub fn ensure_packages() -> Result<()> {
    ensure_node()?;
    let folder = root().join("web");
    let lock = fs::read(folder.join("package-lock.json")).context("cannot read web/package-lock.json")?;
    let stamp = folder.join("node_modules/.installed-from");
    if fs::read(&stamp).is_ok_and(|installed| installed == lock) {
        return Ok(());
    }
    show(npm(&["ci", "--ignore-scripts", "--no-audit", "--no-fund"]))?;
    fs::write(&stamp, lock).context("cannot note which npm packages are installed")
}

/// An npm command in `web/`.
fn npm(arguments: &[&str]) -> Command {
    let mut command = command("npm", arguments);
    command.current_dir(root().join("web"));
    command
}

/// One of the scripts of `web/package.json`, with more arguments for it.
pub fn script(name: &str, arguments: &[String]) -> Command {
    let mut command = npm(&["run", "--silent", name, "--"]);
    command.args(arguments);
    command
}

/// The browser that the tests drive, as an absolute path; installed from Debian's packages where it is missing.
///
/// # Errors
/// A sentence that says what to install.
pub fn ensure_browser() -> Result<PathBuf> {
    if let Some(path) = browser() {
        return Ok(path);
    }
    if debian_install(&["chromium"])?
        && let Some(path) = browser()
    {
        return Ok(path);
    }
    bail!(
        "the tests of the screens need Chromium: on Debian, as root, `apt-get install chromium`; elsewhere install \
         it and set CHROMIUM to its path"
    )
}

fn browser() -> Option<PathBuf> {
    let named = std::env::var_os("CHROMIUM").map(PathBuf::from);
    let usual = ["/usr/bin/chromium", "/usr/bin/chromium-browser"].map(PathBuf::from);
    named.into_iter().chain(usual).find(|path| path.exists())
}

/// Runs the crate that holds the site's large libraries.
///
/// # Errors
/// When it fails.
pub fn sitekit(arguments: &[&OsStr]) -> Result<()> {
    let mut command = cargo(&["run", "--quiet", "--package", "sitekit", "--"]);
    command.args(arguments);
    show(command)
}

/// Copies the files of `from` to `to`; a file with the same bytes is left alone, so that nothing that depends on it is
/// built again.
///
/// # Errors
/// When a file cannot be read or written.
pub fn replace_if_changed(from: &Path, to: &Path) -> Result<()> {
    fs::create_dir_all(to).with_context(|| format!("cannot make {}", to.display()))?;
    for entry in fs::read_dir(from).with_context(|| format!("cannot read {}", from.display()))? {
        let path = entry?.path();
        let Some(name) = path.file_name() else { continue };
        let bytes = fs::read(&path).with_context(|| format!("cannot read {}", path.display()))?;
        let target = to.join(name);
        if !fs::read(&target).is_ok_and(|old| old == bytes) {
            fs::write(&target, bytes).with_context(|| format!("cannot write {}", target.display()))?;
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_major_version_of_node_is_read() {
        assert_eq!(major("v20.20.2"), Some(20));
        assert_eq!(major("20.1"), None);
        assert_eq!(major(""), None);
    }
}
