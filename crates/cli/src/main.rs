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
mod help;
mod input;
mod manual;
mod many;
mod pictures;
mod round;
mod scramble;
mod serve;
mod setups;
mod shortest;
mod show;
mod trace;
mod usage;
mod why;
mod wire;
mod wire_algs;
mod wire_record;

use arguments::{Arguments, Command};
use clap::FromArgMatches;
use clap::error::ErrorKind;
use failure::Failure;
use input::Session;
use std::ffi::OsString;
use std::process::ExitCode;
use voice::{Language, Voice};

/// Where the language comes from that no option names.
const LANGUAGE: &str = "HOODWINK_LANGUAGE";

fn main() -> ExitCode {
    let given: Vec<OsString> = std::env::args_os().collect();
    let language = match language(&given) {
        Ok(language) => language,
        Err(tag) => {
            let voice = Voice::new(Language::default());
            let known = voice.list(&Language::ALL.map(|language| language.tag().to_owned()));
            let blanks = [("text", tag.into()), ("known", known.into())];
            eprintln!("hoodwink: {}", voice.say("usage-language", &blanks));
            return ExitCode::from(2);
        }
    };
    let voice = Voice::new(language);
    let mut program = help::program(language);
    let matches = program.try_get_matches_from_mut(&given);
    let arguments = match matches.and_then(|matches| Arguments::from_arg_matches(&matches)) {
        Ok(arguments) => arguments,
        Err(error) if matches!(error.kind(), ErrorKind::DisplayHelp | ErrorKind::DisplayVersion) => {
            // Who reads only the first lines of the output has read enough.
            let _ = error.print();
            return ExitCode::SUCCESS;
        }
        Err(error) if error.kind() == ErrorKind::DisplayHelpOnMissingArgumentOrSubcommand => {
            let _ = error.print();
            return ExitCode::from(2);
        }
        Err(error) => {
            eprintln!("hoodwink: {}", usage::sentence(&error, &program, &given, &voice));
            return ExitCode::from(2);
        }
    };
    let outcome =
        Session::open(&arguments.shared, Voice::new(language)).and_then(|session| match &arguments.command {
            Command::Trace(options) => trace::run(&session, options),
            Command::Scramble(options) => scramble::run(&session, options),
            Command::Shortest(options) => shortest::run(&session, options),
            Command::Setups(options) => setups::run(&session, options),
            Command::Check(options) => check::run(&session, options),
            Command::Why(options) => why::run(&session, options),
            Command::Apply(options) => apply::run(&session, options),
            Command::Show(options) => show::run(&session, options),
            Command::Conventions(options) => conventions::run(&session, options),
            Command::Algs { action } => algs::run(&session, action),
            Command::Compare(options) => compare::run(&session, options),
            Command::Round(options) => round::run(&session, options),
            Command::Many(options) => many::run(&session, options),
            Command::Serve(options) => serve::run(&session, options),
            Command::Completions { shell } => manual::completions(*shell, &session.voice),
            Command::Man { command } => manual::page(command, &session.voice),
        });
    match outcome {
        Ok(code) => code,
        // Who reads only the first lines of the output has read enough.
        Err(Failure::OutputClosed) => ExitCode::SUCCESS,
        Err(failure) => {
            eprintln!("hoodwink: {}", failure.said(&voice));
            ExitCode::from(2)
        }
    }
}

/// The language that is asked for, known before the rest is: what is wrong with the rest is said in it.
fn language(given: &[OsString]) -> Result<Language, String> {
    let texts: Vec<&str> = given.iter().skip(1).map(|text| text.to_str().unwrap_or_default()).collect();
    let by_option = texts.iter().take_while(|text| **text != "--").enumerate().find_map(|(at, text)| {
        let rest = text.strip_prefix("--language")?;
        if rest.is_empty() { texts.get(at + 1).copied() } else { rest.strip_prefix('=') }
    });
    let tag = by_option.map(str::to_owned).or_else(|| std::env::var(LANGUAGE).ok());
    match tag {
        None => Ok(Language::default()),
        Some(tag) => Language::from_tag(&tag).ok_or(tag),
    }
}
