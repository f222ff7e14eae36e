//! `cargo xtask licences`: whether every dependency may be used, found out without a network: its licence, where it comes from, and
//! whether it is one that we refuse.

use crate::layering::metadata;
use crate::process::root;
use crate::refused::Refused;
use anyhow::{Context, Result, bail};
use cargo_metadata::Package;
use spdx::{Expression, LicenseReq, ParseMode};
use std::fs;

/// Licences that go with ours (MIT OR Apache-2.0) in what we hand out.
const ALLOWED: &[&str] = &[
    "0BSD",
    "Apache-2.0",
    "BSD-1-Clause",
    "BSD-2-Clause",
    "BSD-3-Clause",
    "BSL-1.0",
    "CC0-1.0",
    "ISC",
    "MIT",
    "MIT-0",
    "MPL-2.0",
    "Unicode-3.0",
    "Unlicense",
    "Zlib",
];

/// Checks the licences and versions of all dependencies, those of other platforms too.
///
/// # Errors
/// When one may not be used; each finding has been printed before.
pub fn run() -> Result<()> {
    let list = fs::read_to_string(root().join("crates/xtask/refused.toml"))
        .context("refused.toml cannot be read")?;
    let refused = Refused::parse(&list)?;
    let metadata = metadata()?;
    let outside: Vec<&Package> =
        metadata.packages.iter().filter(|package| package.source.is_some()).collect();
    let mut findings = Vec::new();
    for package in &outside {
        let place = format!("{} {}", package.name, package.version);
        if let Err(problem) = licence(package.license.as_deref()) {
            findings.push(format!("{place}: {problem}"));
        }
        if package.source.as_ref().is_some_and(|source| !source.is_crates_io()) {
            findings.push(format!(
                "{place}: comes from elsewhere than the usual registry, which not everyone can read"
            ));
        }
        if let Some(why) = refused.why(&package.name, &package.version) {
            findings.push(format!("{place}: refused: {why}"));
        }
    }
    for finding in &findings {
        println!("{finding}");
    }
    if !findings.is_empty() {
        bail!("{} dependencies may not be used", findings.len());
    }
    println!("{} dependencies: licences allowed, none refused (list of {})", outside.len(), refused.as_of);
    Ok(())
}

/// Whether what a crate says of its licence leaves us a way to use it.
fn licence(text: Option<&str>) -> Result<(), String> {
    let text = text.ok_or("names no licence")?;
    // Older crates separate alternatives with a slash.
    let mode = ParseMode { allow_slash_as_or_operator: true, ..ParseMode::STRICT };
    let expression = Expression::parse_mode(text, mode)
        .map_err(|error| format!("`{text}` is no licence expression: {error}"))?;
    if expression.evaluate(allowed) {
        Ok(())
    } else {
        Err(format!("`{text}` is not among the allowed licences"))
    }
}

fn allowed(requirement: &LicenseReq) -> bool {
    requirement.license.id().is_some_and(|id| ALLOWED.contains(&id.name))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn alternatives_and_sums_are_understood() {
        assert!(licence(Some("MIT OR Apache-2.0")).is_ok());
        assert!(licence(Some("MIT/Apache-2.0")).is_ok());
        assert!(licence(Some("(MIT OR GPL-3.0-only) AND Unicode-3.0")).is_ok());
        assert!(licence(Some("Apache-2.0 WITH LLVM-exception")).is_ok());
    }

    #[test]
    fn what_is_not_allowed_is_refused() {
        assert!(licence(Some("GPL-3.0-only")).is_err());
        assert!(licence(Some("MIT AND GPL-3.0-only")).is_err());
        assert!(licence(Some("LicenseRef-ours")).is_err());
        assert!(licence(Some("whatever you like")).is_err());
        assert!(licence(None).is_err());
    }

    #[test]
    fn the_allowed_ones_exist() {
        for name in ALLOWED {
            assert!(spdx::license_id(name).is_some(), "{name}");
        }
    }
}
