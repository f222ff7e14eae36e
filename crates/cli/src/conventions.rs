//! `hoodwink conventions`: what is settled, and whether a file is in order.

use crate::arguments::{ConventionsAction, ConventionsOptions};
use crate::failure::Failure;
use crate::input::Session;
use crate::{pictures, wire};
use blind::{BreakChoice, KINDS};
use cube::{Face, Size, State};
use std::io::{self, Write};
use std::process::ExitCode;

/// Runs the command.
pub fn run(session: &Session, options: &ConventionsOptions) -> Result<ExitCode, Failure> {
    match &options.action {
        ConventionsAction::Show { toml, json } => show(session, *toml, *json),
        ConventionsAction::Check { file, json } => {
            let checked = Session::read_conventions(file, &session.voice);
            let mut out = io::stdout().lock();
            if *json {
                let (right, error, toml) = match checked {
                    Ok(conventions) => (true, None, Some(formats::conventions::write(&conventions))),
                    Err(failure) => (false, Some(failure.to_string()), None),
                };
                let object = wire::Conventions { version: wire::VERSION, right, error, toml };
                serde_json::to_writer(&mut out, &object).map_err(io::Error::from)?;
                writeln!(out)?;
                return Ok(ExitCode::from(if right { 0 } else { 2 }));
            }
            checked?;
            let name = file.display().to_string();
            writeln!(out, "{}", session.voice.say("conventions-right", &[("file", name.into())]))?;
            Ok(ExitCode::SUCCESS)
        }
    }
}

fn show(session: &Session, toml: bool, json: bool) -> Result<ExitCode, Failure> {
    let (voice, conventions) = (&session.voice, &session.conventions);
    let mut out = io::stdout().lock();
    if json {
        let toml = Some(formats::conventions::write(&conventions));
        let object = wire::Conventions { version: wire::VERSION, right: true, error: None, toml };
        serde_json::to_writer(&mut out, &object).map_err(io::Error::from)?;
        writeln!(out)?;
        return Ok(ExitCode::SUCCESS);
    }
    if toml {
        out.write_all(formats::conventions::write(&conventions).as_bytes())?;
        return Ok(ExitCode::SUCCESS);
    }
    writeln!(out, "{}", pictures::net(session, &State::held(Size::THREE, conventions.holding)))?;
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
    for orbit in KINDS {
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
        let line = voice.say(
            "conventions-kind",
            &[
                ("kinds", voice.kinds(orbit).into()),
                ("buffer", voice.lettered(orbit, kind.buffer, &kind.letters).into()),
                ("method", kind.method.name().into()),
                ("algorithm", kind.algorithm.as_str().into()),
                ("breaks", breaks.into()),
            ],
        );
        writeln!(out, "{line}")?;
    }
    let parity = conventions.parity_algorithm.as_str();
    writeln!(out, "{}", voice.say("conventions-parity", &[("algorithm", parity.into())]))?;
    let order =
        |kinds: &[cube::Orbit]| kinds.iter().map(|&orbit| voice.kinds(orbit)).collect::<Vec<_>>().join(", ");
    let line = voice.say(
        "conventions-order",
        &[
            ("memo", order(&conventions.memo_order).into()),
            ("execution", order(&conventions.execution_order).into()),
        ],
    );
    writeln!(out, "{line}")?;
    Ok(ExitCode::SUCCESS)
}
