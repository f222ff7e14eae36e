//! `cargo xtask tidy`: rules of the project that neither the compiler nor clippy knows.

use crate::house::{self, Source};
use crate::layering::{self, Role};
use crate::process::{command, output, root};
use crate::source;
use anyhow::{Context, Result, bail};
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

/// Endings of the files whose text is looked at.
const TEXT: &[&str] = &[
    "rs", "md", "toml", "py", "g", "txt", "ts", "js", "mjs", "svelte", "css", "html", "ftl", "sql", "json",
    "yml",
];

/// Files that a program writes, white space and all; a test says when one is stale.
const WRITTEN: &[&str] = &["web/src/engine/types.ts"];

/// Checks the files that git knows or would take, and the dependencies between the crates.
///
/// # Errors
/// When something is wrong; each finding has been printed before.
pub fn run() -> Result<()> {
    let listed = output(command("git", &["ls-files", "--cached", "--others", "--exclude-standard", "-z"]))?;
    let mut findings = Vec::new();
    let mut looked_at = 0;
    let mut crates: BTreeMap<String, Vec<Source>> = BTreeMap::new();
    for name in listed.split('\0').filter(|name| !name.is_empty()) {
        let path = root().join(name);
        // Removed but not yet committed, or a link to elsewhere.
        if !path.is_file() || !has_ending(name, TEXT) || WRITTEN.contains(&name) {
            continue;
        }
        let text = fs::read_to_string(&path).with_context(|| format!("{name} could not be read as text"))?;
        let mut found = source::check_text(&text);
        if has_ending(name, &["rs"]) {
            found.extend(source::check_rust(&text, may_be_long(name)));
            if let (Some((folder, _)), Some(source)) = (name.split_once("/src/"), Source::new(name, &text)) {
                crates.entry(folder.to_owned()).or_default().push(source);
            }
        }
        findings.extend(found.into_iter().map(|found| format!("{name}:{}: {}", found.line, found.what)));
        looked_at += 1;
    }
    findings.extend(crates.values().flat_map(|sources| house::problems(sources)));
    let metadata = layering::metadata()?;
    findings.extend(layering::problems(&metadata));
    for package in metadata.workspace_packages() {
        let folder = package.manifest_path.parent().context("a crate without a folder")?;
        findings.extend(clippy_problem(&package.name, folder.as_std_path()));
    }
    for finding in &findings {
        println!("{finding}");
    }
    if !findings.is_empty() {
        bail!("{} things are not tidy", findings.len());
    }
    println!("{looked_at} files and {} crates are tidy", metadata.workspace_packages().len());
    Ok(())
}

fn has_ending(name: &str, endings: &[&str]) -> bool {
    Path::new(name).extension().is_some_and(|ending| endings.iter().any(|other| ending == *other))
}

/// Tests and tables may be long: nobody reads them from end to end.
fn may_be_long(name: &str) -> bool {
    Path::new(name).components().any(|part| part.as_os_str() == "tests")
        || Path::new(name).file_stem().is_some_and(|stem| stem.to_string_lossy().contains("table"))
}

/// An engine crate with a clippy.toml of its own would escape the bans of the one in the root; a crate at the edge
/// without one could do nothing.
fn clippy_problem(name: &str, folder: &Path) -> Option<String> {
    let own = folder.join("clippy.toml").exists() || folder.join(".clippy.toml").exists();
    match (layering::role(name)?, own) {
        (Role::Engine, true) => Some(format!(
            "the engine crate {name} has a clippy.toml of its own, so it escapes the bans of the root's"
        )),
        (Role::Store | Role::Edge, false) => Some(format!(
            "the crate {name} needs a clippy.toml of its own, as xtask has, to be free of the engine's bans"
        )),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tests_and_tables_may_be_long() {
        assert!(may_be_long("crates/cube/tests/outside.rs"));
        assert!(may_be_long("crates/search/src/table.rs"));
        assert!(!may_be_long("crates/cube/src/turn.rs"));
    }
}
