//! The command line of Hoodwink: scrambles to memos to verified solutions, for people who solve twisty puzzles
//! blindfolded.
//!
//! Exit codes: 0 done, 1 some input of many failed, 2 bad usage or bad input; then nothing is written.

mod algs;
mod apply;
mod arguments;
mod check;
mod compare;
mod conventions;
mod failure;
mod input;
mod manual;
mod pictures;
mod scramble;
mod serve;
mod setups;
mod show;
mod trace;
mod why;
mod wire;
mod wire_algs;

use arguments::{Arguments, Command};
use clap::Parser;
use failure::Failure;
use input::Session;
use std::process::ExitCode;
use voice::{Language, Voice};

fn main() -> ExitCode {
    let arguments = Arguments::parse();
    let Some(language) = Language::from_tag(&arguments.shared.language) else {
        let known = Language::ALL.map(Language::tag).join(", ");
        eprintln!("hoodwink: --language {}: known are {known}", arguments.shared.language);
        return ExitCode::from(2);
    };
    let outcome =
        Session::open(&arguments.shared, Voice::new(language)).and_then(|session| match &arguments.command {
            Command::Trace(options) => trace::run(&session, options),
            Command::Scramble(options) => scramble::run(&session, options),
            Command::Setups(options) => setups::run(&session, options),
            Command::Check(options) => check::run(&session, options),
            Command::Why(options) => why::run(&session, options),
            Command::Apply(options) => apply::run(&session, options),
            Command::Show(options) => show::run(&session, options),
            Command::Conventions(options) => conventions::run(&session, options),
            Command::Algs { action } => algs::run(&session, action),
            Command::Compare(options) => compare::run(&session, options),
            Command::Serve(options) => serve::run(&session, options),
            Command::Completions { shell } => manual::completions(*shell),
            Command::Man { command } => manual::page(command.as_deref()),
        });
    match outcome {
        Ok(code) => code,
        // Who reads only the first lines of the output has read enough.
        Err(Failure::OutputClosed) => ExitCode::SUCCESS,
        Err(failure) => {
            eprintln!("hoodwink: {}", failure.said(&Voice::new(language)));
            ExitCode::from(2)
        }
    }
}
