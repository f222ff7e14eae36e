//! All ways to pick up a puzzle without fixed centres, in one table.

use super::{Puzzle, Session};
use crate::arguments::TraceOptions;
use crate::failure::Failure;
use crate::wire;
use blind::{HoldOffer, Solver, kind_name};
use cube::{Face, Orbit, display_turns};
use std::io::{self, Write};
use std::process::ExitCode;

/// Writes the table.
pub fn run(
    session: &Session,
    solver: &Solver,
    puzzle: &Puzzle,
    options: &TraceOptions,
) -> Result<ExitCode, Failure> {
    let fault = |fault| Failure::input(session.voice.not_proven(fault));
    let offers = solver.offers(&puzzle.state).map_err(fault)?;
    let mut out = io::stdout().lock();
    if options.json {
        let object = wire::AllHolds {
            version: wire::VERSION,
            puzzle: solver.size().layers(),
            holdings: offers.iter().map(|offer| offered(session, solver, offer)).collect::<Result<_, _>>()?,
        };
        serde_json::to_writer(&mut out, &object).map_err(io::Error::from)?;
        writeln!(out)?;
        return Ok(ExitCode::SUCCESS);
    }
    let voice = &session.voice;
    let kinds: Vec<Orbit> = solver.memo_order().collect();
    let heads = ["up", "front", "moves", "centres", "solved", "letters"]
        .map(|head| voice.word(&format!("holdings-{head}")));
    let mut rows =
        vec![heads.into_iter().chain(kinds.iter().map(|&orbit| voice.kinds(orbit))).collect::<Vec<String>>()];
    for offer in &offers {
        let line = offered(session, solver, offer)?;
        let numbers = [line.centres, line.solved, line.letters].map(|number| number.to_string());
        let moves = if line.rotation.is_empty() { "-".to_owned() } else { line.rotation };
        let each = line.kinds.iter().map(|kind| kind.letters.to_string());
        let of = |face: Face| voice.colour(session.conventions.colour(face));
        let now = |face: Face| of(offer.held.rotation.inverse().image(face));
        rows.push([now(Face::U), now(Face::F), moves].into_iter().chain(numbers).chain(each).collect());
    }
    let columns = rows.first().map_or(0, Vec::len);
    let widths: Vec<usize> = (0..columns)
        .map(|column| rows.iter().map(|row| row[column].chars().count()).max().unwrap_or(0))
        .collect();
    for row in rows {
        let cells: Vec<String> = row
            .iter()
            .zip(&widths)
            .enumerate()
            .map(|(column, (cell, &width))| {
                // Words to the left, numbers to the right.
                if column < 3 { format!("{cell:<width$}") } else { format!("{cell:>width$}") }
            })
            .collect();
        writeln!(out, "{}", cells.join("  ").trim_end())?;
    }
    Ok(ExitCode::SUCCESS)
}

fn offered(session: &Session, solver: &Solver, offer: &HoldOffer) -> Result<wire::Offer, Failure> {
    let fault = |fault| Failure::input(session.voice.not_proven(fault));
    let memo = solver.memo(&offer.held.state).map_err(fault)?;
    let now = |face: Face| session.conventions.colour(offer.held.rotation.inverse().image(face)).name.clone();
    Ok(wire::Offer {
        rotation: display_turns(offer.held.rotation.turns()).to_string(),
        up: now(Face::U),
        front: now(Face::F),
        centres: offer.centres,
        solved: offer.solved,
        letters: offer.letters,
        kinds: memo
            .parts()
            .iter()
            .map(|part| wire::OfferedKind { kind: kind_name(part.orbit()).to_owned(), letters: part.len() })
            .collect(),
    })
}
