//! `hoodwink conventions`: what is settled, and whether a file is in order.

use crate::arguments::{ConventionsAction, ConventionsOptions};
use crate::failure::{self, Failure};
use crate::input::Session;
use crate::{pictures, wire};
use blind::{BreakChoice, OrbitOrder};
use cube::{Face, Orbit, State};
use std::io::{self, Write};
use std::process::ExitCode;

/// Runs the command.
pub fn run(session: &Session, options: &ConventionsOptions) -> Result<ExitCode, Failure> {
    match &options.action {
        ConventionsAction::Show { puzzle, toml, json } => show(session, puzzle, *toml, *json),
        ConventionsAction::Check { file, json } => {
            let checked = Session::read_conventions(file, &session.voice).and_then(|conventions| {
                session.check_named(&conventions, file)?;
                Ok(conventions)
            });
            let mut out = io::stdout().lock();
            if *json {
                let (right, error, toml) = match checked {
                    Ok(conventions) => (true, None, Some(formats::conventions::write(&conventions))),
                    Err(failure) => (false, Some(failure.said(&session.voice)), None),
                };
                let object = wire::Conventions { version: wire::VERSION, right, error, toml };
                serde_json::to_writer(&mut out, &object).map_err(io::Error::from)?;
                writeln!(out)?;
                return Ok(ExitCode::from(if right { 0 } else { 2 }));
            }
            checked?;
            let name = failure::named(file, &session.voice);
            writeln!(out, "{}", session.voice.say("conventions-right", &[("file", name.into())]))?;
            Ok(ExitCode::SUCCESS)
        }
    }
}

fn show(session: &Session, puzzle: &str, toml: bool, json: bool) -> Result<ExitCode, Failure> {
    let size = session.size(puzzle)?;
    let (voice, conventions) = (&session.voice, &session.conventions);
    let mut out = io::stdout().lock();
    if json {
        let toml = Some(formats::conventions::write(conventions));
        let object = wire::Conventions { version: wire::VERSION, right: true, error: None, toml };
        serde_json::to_writer(&mut out, &object).map_err(io::Error::from)?;
        writeln!(out)?;
        return Ok(ExitCode::SUCCESS);
    }
    if toml {
        out.write_all(formats::conventions::write(conventions).as_bytes())?;
        return Ok(ExitCode::SUCCESS);
    }
    writeln!(out, "{}", pictures::net(session, &State::held(size, conventions.holding)))?;
    writeln!(
        out,
        "{}",
        voice.say(
            "conventions-holding",
            &[
                ("up", voice.colour_held(Face::U, conventions).into()),
                ("front", voice.colour_held(Face::F, conventions).into()),
            ],
        )
    )?;
    for &orbit in Orbit::of(size) {
        let kind = conventions.kind(orbit);
        let breaks = match &kind.breaks {
            BreakChoice::First => voice.word("breaks-first"),
            BreakChoice::Fewest => voice.word("breaks-fewest"),
            BreakChoice::Least => voice.word("breaks-least"),
            BreakChoice::Preference(list) => {
                let names: Vec<&str> = list.iter().map(|&sticker| orbit.name(sticker)).collect();
                voice.say("breaks-preference", &[("list", names.join(" ").into())])
            }
        };
        let mut blanks = vec![
            ("kinds", voice.kinds(orbit).into()),
            ("buffer", voice.lettered(orbit, kind.buffer, &kind.letters).into()),
            ("breaks", breaks.into()),
            ("method", kind.method.name().into()),
        ];
        let line = if let Some(algorithm) = &kind.algorithm {
            blanks.push(("algorithm", algorithm.to_string().into()));
            voice.say("conventions-kind", &blanks)
        } else {
            voice.say("conventions-kind-searched", &blanks)
        };
        writeln!(out, "{line}")?;
    }
    let order =
        |order: &OrbitOrder| order.of(size).map(|orbit| voice.kinds(orbit)).collect::<Vec<_>>().join(", ");
    let memo = ("memo", order(&conventions.memo_order).into());
    let parity = conventions.parity_algorithm.to_string();
    writeln!(out, "{}", voice.say("conventions-parity", &[("algorithm", parity.into())]))?;
    let execution = ("execution", order(&conventions.execution_order).into());
    let line = voice.say("conventions-order", &[memo, execution]);
    writeln!(out, "{line}")?;
    Ok(ExitCode::SUCCESS)
}
