//! `cargo xtask reference`: makes the check vectors again and compares them with the committed ones.

use crate::install;
use crate::process::{command, output, root, show, target};
use anyhow::{Context, Result, bail};
use std::fs;
use std::path::Path;

/// What each script of `reference/` writes.
const FROM_PYTHON: &[(&str, &[&str])] = &[
    (
        "reference/make.py",
        &[
            "generators.txt",
            "orbits.txt",
            "orders.txt",
            "parities.txt",
            "plans.txt",
            "scrambles.txt",
            "sequences.txt",
        ],
    ),
    ("reference/statistics.py", &["statistics.txt"]),
];
/// What the scripts for GAP print, each with its script.
const FROM_GAP: &[(&str, &str)] = &[("orders_gap.txt", "orders.g"), ("orbits_gap.txt", "orbits.g")];

/// Makes the vectors and compares them, or with `write` puts them in place of the committed ones.
///
/// Without Python or GAP their part is left out, with a sentence that says so.
///
/// # Errors
/// When a vector made now differs from the committed one, or making one fails.
pub fn run(write: bool) -> Result<()> {
    let made = target().join("reference");
    fs::create_dir_all(&made).context("the folder for the vectors could not be made")?;
    let mut names = Vec::new();
    if let Some(python) = install::python() {
        let python = python.to_str().context("the path of Python is not UTF-8")?;
        let folder = made.to_str().context("the path of the target folder is not UTF-8")?;
        for (script, writes) in FROM_PYTHON {
            let mut make = command(python, &[script, folder]);
            // No folder of compiled Python beside the scripts.
            make.env("PYTHONDONTWRITEBYTECODE", "1");
            show(make)?;
            names.extend(writes.iter().copied());
        }
    } else {
        println!(
            "left out: the vectors of Python, SymPy and SciPy (`cargo xtask test` sets Python up where it can)"
        );
    }
    if install::gap_available() {
        for (name, script) in FROM_GAP {
            fs::write(made.join(name), gap(&made, script)?)
                .with_context(|| format!("{name} of GAP could not be kept"))?;
            names.push(*name);
        }
    } else {
        println!("left out: the orders by GAP, which is not installed (Debian: gap-core)");
    }
    let mut stale = Vec::new();
    for name in names {
        let now = fs::read_to_string(made.join(name)).with_context(|| format!("{name} was not made"))?;
        let kept = root().join("reference").join(name);
        if write {
            fs::write(&kept, now).with_context(|| format!("reference/{name} could not be written"))?;
        } else if fs::read_to_string(&kept).ok().as_ref() == Some(&now) {
            println!("reference/{name}: as committed");
        } else {
            stale.push(name);
        }
    }
    if !stale.is_empty() {
        bail!(
            "these vectors of reference/ come out otherwise now: {}; if that is meant, run `cargo xtask reference --write`",
            stale.join(", ")
        );
    }
    Ok(())
}

/// Runs a script of GAP on both sets of tables.
fn gap(made: &Path, reads: &str) -> Result<String> {
    let script = made.join(format!("input-{reads}"));
    let tables = r#"TABLES := [["standard", "reference/generators.txt"], ["ours", "reference/ours/move_tables.txt"]];"#;
    fs::write(&script, format!("{tables}\nRead(\"reference/{reads}\");\n"))
        .context("the input of GAP could not be written")?;
    output(command(
        "gap",
        &["-q", "-b", "-r", script.to_str().context("the path of the target folder is not UTF-8")?],
    ))
}
