//! `cargo xtask fuzz`: a target of the crate `fuzz` under a fuzzer that is guided by coverage.

use crate::process::{command, root, show, target};
use anyhow::{Context, Result, bail};
use std::fs;

/// What has the stable compiler count which edges of the program are taken, and what is compared with what. The fuzzer
/// (libFuzzer, linked in by the crate `libfuzzer-sys`) reads these counters.
const COUNTED: &[&str] = &[
    "-Cpasses=sancov-module",
    "-Cllvm-args=-sanitizer-coverage-level=4",
    "-Cllvm-args=-sanitizer-coverage-inline-8bit-counters",
    "-Cllvm-args=-sanitizer-coverage-pc-table",
    "-Cllvm-args=-sanitizer-coverage-trace-compares",
    "-Ccodegen-units=1",
    "-Cdebug-assertions",
    "-Coverflow-checks",
];

/// The most memory that a target may take, in MiB, and the longest time for one input, in seconds.
const MEMORY: u32 = 1500;
const SECONDS: u32 = 20;

/// Runs a target for some minutes. What it learns stays in the target folder; what makes it stumble is put among what is committed.
///
/// # Errors
/// When the target is not known or stumbles.
pub fn run(name: &str, minutes: u64) -> Result<()> {
    let corpus = root().join("crates/fuzz/corpus").join(name);
    if !corpus.is_dir() {
        bail!("`{name}` is no target; they are the folders of crates/fuzz/corpus");
    }
    let learned = target().join("fuzz/learned").join(name);
    fs::create_dir_all(&learned).with_context(|| format!("{}", learned.display()))?;
    let build = target().join("fuzz");
    let triple = host()?;
    let mut build_command = command(
        "cargo",
        &["build", "--release", "-p", "fuzz", "--features", "guided", "--bin", "guided", "--target", &triple],
    );
    // With a triple of their own the flags are not those of build scripts.
    build_command.env("CARGO_TARGET_DIR", &build).env("CARGO_ENCODED_RUSTFLAGS", COUNTED.join("\u{1f}"));
    // Where crates are optimised together only the last one would be counted.
    build_command.env("CARGO_PROFILE_RELEASE_LTO", "off");
    show(build_command)?;
    let program = build.join(&triple).join("release/guided");
    let program = program.to_string_lossy();
    let found = format!("{}/found-", corpus.display());
    let arguments = [
        format!("-max_total_time={}", minutes * 60),
        format!("-rss_limit_mb={MEMORY}"),
        format!("-timeout={SECONDS}"),
        format!("-artifact_prefix={found}"),
        "-max_len=4096".to_owned(),
        "-print_final_stats=1".to_owned(),
        learned.to_string_lossy().into_owned(),
        corpus.to_string_lossy().into_owned(),
    ];
    let arguments: Vec<&str> = arguments.iter().map(String::as_str).collect();
    let mut fuzzer = command(&program, &arguments);
    fuzzer.env("FUZZ_TARGET", name);
    show(fuzzer).with_context(|| format!("what made `{name}` stumble is in {found}…"))
}

/// The triple of this machine.
fn host() -> Result<String> {
    let told = crate::process::output(command("rustc", &["-vV"]))?;
    let host = told.lines().find_map(|line| line.strip_prefix("host: "));
    host.map(str::to_owned).context("rustc does not say for which machine it is")
}
