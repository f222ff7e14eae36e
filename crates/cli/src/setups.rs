//! `hoodwink setups`: the shortest set-up moves of every target.

use crate::arguments::SetupOptions;
use crate::failure::Failure;
use crate::input::Session;
use crate::wire;
use blind::{Swap, kind_name};
use cube::{Amount, Size, Sticker, Turn, display_turns};
use std::io::{self, Write};
use std::process::ExitCode;

/// Runs the command.
pub fn run(session: &Session, options: &SetupOptions) -> Result<ExitCode, Failure> {
    let size = session.size(&options.puzzle)?;
    let orbit = session.kind(&options.kind, size)?;
    let solver = session.solver(size)?;
    let method = session.method(&solver)?;
    let letters = &session.conventions.kind(orbit).letters;
    let usual = method.swap(orbit).ok_or_else(|| Failure::input(session.voice.word("no-swap")))?;
    let narrowed;
    let swap = if options.turns.is_empty() {
        usual
    } else {
        narrowed = Swap::with_turns(usual.effect().clone(), &turns(session, &options.turns, size)?)
            .map_err(|fault| Failure::input(session.voice.not_proven(fault)))?;
        &narrowed
    };
    let effect = swap.effect();
    let wanted = options.target.as_deref().map(|text| session.sticker(text, orbit, letters)).transpose()?;
    let of_buffer = |sticker: Sticker| orbit.piece(sticker) == orbit.piece(effect.buffer());
    if let Some(target) = wanted
        && of_buffer(target)
    {
        let error = blind::ExecutionError::OwnPiece { orbit, target };
        return Err(Failure::input(session.voice.execution_error(&error)));
    }
    let shown: Vec<Sticker> = letters
        .order()
        .into_iter()
        .filter(|&sticker| wanted.map_or(!of_buffer(sticker), |only| only == sticker))
        .collect();
    let mut out = io::stdout().lock();
    let left: Vec<String> = effect
        .left_alone()
        .into_iter()
        .map(|(orbit, sticker)| orbit.piece_name(sticker).to_owned())
        .collect();
    if options.json {
        let object = wire::Setups {
            version: wire::VERSION,
            puzzle: size.layers(),
            kind: kind_name(orbit).to_owned(),
            buffer: orbit.name(effect.buffer()).to_owned(),
            exchanged_with: orbit.name(effect.target()).to_owned(),
            algorithm: effect.algorithm().to_string(),
            left_alone: left,
            targets: shown
                .iter()
                .map(|&sticker| wire::SetupsOf {
                    letter: letters.of(sticker).to_owned(),
                    sticker: orbit.name(sticker).to_owned(),
                    setups: swap
                        .setups(sticker)
                        .iter()
                        .map(|setup| display_turns(setup.turns()).to_string())
                        .collect(),
                })
                .collect(),
        };
        serde_json::to_writer(&mut out, &object).map_err(io::Error::from)?;
        writeln!(out)?;
        return Ok(ExitCode::SUCCESS);
    }
    let heading = session.voice.say(
        "setups-heading",
        &[
            ("algorithm", effect.algorithm().to_string().into()),
            ("buffer", orbit.name(effect.buffer()).into()),
            ("target", orbit.name(effect.target()).into()),
            ("left", session.voice.list(&left).into()),
        ],
    );
    writeln!(out, "{heading}\n")?;
    for sticker in shown {
        let all: Vec<String> = swap
            .setups(sticker)
            .iter()
            .map(|setup| match setup.turns() {
                [] => session.voice.word("setup-none"),
                turns => display_turns(turns).to_string(),
            })
            .collect();
        let (first, others) = match all.as_slice() {
            [] => (session.voice.word("setup-not-found"), String::new()),
            [first] => (first.clone(), String::new()),
            [first, rest @ ..] => {
                (first.clone(), session.voice.say("setups-also", &[("others", rest.join(" | ").into())]))
            }
        };
        let line = format!("{}  {:<4} {first:<12} {others}", letters.of(sticker), orbit.name(sticker));
        writeln!(out, "{}", line.trim_end())?;
    }
    Ok(ExitCode::SUCCESS)
}

/// The turns that were named: `R` by any amount, `R2` and `R'` by their own.
fn turns(session: &Session, names: &[String], size: Size) -> Result<Vec<Turn>, Failure> {
    let voice = &session.voice;
    let mut turns = Vec::new();
    for (number, name) in names.iter().enumerate() {
        let read = session.conventions.moves(name, size).map_err(|error| {
            let blanks = [("number", (number + 1).into()), ("what", voice.parse_problem(&error.kind).into())];
            Failure::input(voice.say("setups-item", &blanks))
        })?;
        for turn in read.flatten() {
            let amounts = match turn.amount {
                Amount::Clockwise => &Amount::ALL[..],
                Amount::Half => &[Amount::Half],
                Amount::Counter => &[Amount::Counter],
            };
            turns.extend(amounts.iter().map(|&amount| Turn::new(turn.block, amount)));
        }
    }
    if turns.is_empty() {
        return Err(Failure::input(voice.word("setups-no-turns")));
    }
    turns.sort_unstable();
    turns.dedup();
    Ok(turns)
}
