//! One command to build, start and test all of the project: `cargo xtask --help`.

mod bench;
mod engine;
mod fuzz;
mod house;
mod install;
mod layering;
mod licences;
mod process;
mod reference;
mod refused;
mod site;
mod source;
mod start;
mod steps;
mod test;
mod tidy;
mod wasm;
mod web;

use clap::{Parser, Subcommand};
use std::process::ExitCode;

/// Builds, starts and tests the project.
#[derive(Parser)]
#[command(name = "cargo xtask", bin_name = "cargo xtask", version)]
struct Arguments {
    #[command(subcommand)]
    task: Task,
}

#[derive(Subcommand)]
enum Task {
    /// Builds the web app and the program, serves it on this machine alone and opens a browser.
    Start {
        /// The port; 0 takes any that is free.
        #[arg(long, default_value = "4170")]
        port: u16,
    },
    /// Builds the program and runs a worked example; its pictures go to `out/`.
    Example,
    /// Installs what the tests need, then runs all tests and checks.
    Test,
    /// Checks what the compiler does not: docs of modules, sizes of files, who may depend on whom.
    Tidy,
    /// Checks licences and refused versions of all dependencies, without a network.
    Licences,
    /// Makes the check vectors again with Python (and GAP where there is one) and compares.
    Reference {
        /// Overwrite the committed vectors instead of comparing.
        #[arg(long)]
        write: bool,
    },
    /// Writes the web site to `out/site`, for any web host and also below a sub-path.
    Site,
    /// Checks the screens alone: types, components, whole pages in a browser.
    Screens {
        /// Passed on to the runner of the pages' tests, such as `--grep Trace`.
        #[arg(trailing_var_arg = true, allow_hyphen_values = true)]
        arguments: Vec<String>,
    },
    /// Takes pictures of every view into `out/shots`.
    Shots {
        /// Passed on to the runner, such as `--grep Trace`.
        #[arg(trailing_var_arg = true, allow_hyphen_values = true)]
        arguments: Vec<String>,
    },
    /// Runs the benchmarks of all crates.
    Bench,
    /// Feeds a target of the crate `fuzz` whatever its coverage suggests; what was found before is replayed by the tests.
    Fuzz {
        /// The target: a folder of `crates/fuzz/corpus`.
        name: String,
        /// For how long.
        #[arg(long, default_value = "10")]
        minutes: u64,
    },
}

fn main() -> ExitCode {
    let done = match Arguments::parse().task {
        Task::Start { port } => start::run(port),
        Task::Example => start::example(),
        Task::Test => test::run(),
        Task::Tidy => tidy::run(),
        Task::Licences => licences::run(),
        Task::Reference { write } => reference::run(write),
        Task::Site => site::run(),
        Task::Screens { arguments } => site::test(&arguments),
        Task::Shots { arguments } => site::shots(&arguments),
        Task::Bench => bench::run(),
        Task::Fuzz { name, minutes } => fuzz::run(&name, minutes),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            // The sentence and its causes; a trace of calls would push them out of sight.
            eprintln!("error: {error:#}");
            ExitCode::FAILURE
        }
    }
}
