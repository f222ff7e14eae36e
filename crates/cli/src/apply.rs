//! `hoodwink apply`: what moves make of a solved puzzle.

use crate::arguments::ApplyOptions;
use crate::failure::Failure;
use crate::input::Session;
use crate::{pictures, wire};
use blind::kind_name;
use cube::{Orbit, Rotation, State, Sticker};
use std::io::{self, Write};
use std::process::ExitCode;

/// Runs the command.
pub fn run(session: &Session, options: &ApplyOptions) -> Result<ExitCode, Failure> {
    let puzzle = session.puzzle(&options.state)?;
    let unsolved = unsolved(&puzzle.state);
    let mut out = io::stdout().lock();
    if options.json {
        let object = wire::Applied {
            version: wire::VERSION,
            puzzle: puzzle.size.layers(),
            scramble: puzzle.scramble,
            facelets: session.stickers(&puzzle.state),
            solved: puzzle.state.solved_hold().is_some(),
            unsolved,
        };
        serde_json::to_writer(&mut out, &object).map_err(io::Error::from)?;
        writeln!(out)?;
        return Ok(ExitCode::SUCCESS);
    }
    let voice = &session.voice;
    writeln!(out, "{}", pictures::net(session, &puzzle.state))?;
    writeln!(out, "{}  {}", voice.word("label-stickers"), session.stickers(&puzzle.state))?;
    if puzzle.state.solved_hold().is_some() {
        writeln!(out, "{}", voice.word("apply-solved"))?;
    } else if puzzle.state.core() != Rotation::NONE {
        writeln!(out, "{}", voice.word("apply-centres"))?;
    }
    for (orbit, kind) in Orbit::of(puzzle.size).iter().zip(&unsolved) {
        let kinds = voice.kinds(*orbit);
        if kind.away.is_empty() && kind.turned.is_empty() {
            writeln!(out, "{}", voice.say("apply-kind-solved", &[("kinds", kinds.into())]))?;
            continue;
        }
        let mut parts = Vec::new();
        for (message, names) in [("apply-away", &kind.away), ("apply-turned", &kind.turned)] {
            if !names.is_empty() {
                parts.push(
                    voice.say(message, &[("count", names.len().into()), ("pieces", names.join(" ").into())]),
                );
            }
        }
        let line = voice.say("apply-kind", &[("kinds", kinds.into()), ("what", parts.join("; ").into())]);
        writeln!(out, "{line}")?;
    }
    Ok(ExitCode::SUCCESS)
}

/// What is unsolved, by kind, seen in the hold that the centres show (on even sizes: as it is held).
fn unsolved(state: &State) -> Vec<wire::UnsolvedKind> {
    let state = state.solved_hold().map_or_else(|| state.named_in(state.core()), |hold| state.named_in(hold));
    Orbit::of(state.size())
        .iter()
        .map(|&orbit| {
            let places = orbit.all_pieces().map(|piece| orbit.reference(piece));
            let wrong: Vec<Sticker> = places.filter(|&place| is_wrong(&state, orbit, place)).collect();
            let (turned, away): (Vec<Sticker>, Vec<Sticker>) = wrong
                .into_iter()
                .partition(|&place| orbit.piece(state.at(orbit, place)) == orbit.piece(place));
            let names = |list: Vec<Sticker>| {
                list.into_iter().map(|place| orbit.piece_name(place).to_owned()).collect()
            };
            wire::UnsolvedKind { kind: kind_name(orbit).to_owned(), away: names(away), turned: names(turned) }
        })
        .collect()
}

/// Whether what lies at a place can be told from what belongs there.
fn is_wrong(state: &State, orbit: Orbit, place: Sticker) -> bool {
    let there = state.at(orbit, place);
    if orbit.looks_alike() { there.face() != place.face() } else { there != place }
}
