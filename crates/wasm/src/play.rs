//! The execution as a time line: each letter with set-up, swap and undo, and what it should have done.

use blind::{Action, solved_pieces};
use cube::{Orbit, Turn};
use serde::Serialize;

use crate::Failure;
use crate::call::Call;
use crate::picture::Pointed;
use crate::trace::Puzzle;

/// The time line.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct TimeLine {
    /// The steps in the order of the execution.
    pub steps: Vec<Step>,
    /// How many moves there are, each set-up written out.
    pub moves: u32,
    /// What is carried out in which order, and in how many moves.
    pub summary: String,
    /// Where the moves come from, a sentence each.
    pub origins: Vec<String>,
    /// How it is picked up before the first move.
    pub holding: String,
}

/// A letter carried out, or the parity algorithm.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(rename_all = "camelCase")]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Step {
    /// The letter; empty for parity.
    pub letter: String,
    /// The letters of the memo that it carries out.
    pub letters: Vec<Pointed>,
    /// Which letter of how many; empty for parity.
    pub place: String,
    /// What it is called: the sticker, or the word for parity.
    pub name: String,
    /// Its number and parts, to be read aloud.
    pub said: String,
    /// The number of its first move, from 0.
    pub first: u32,
    /// Its moves.
    pub moves: Vec<Move>,
    /// How the puzzle stands after it.
    pub after: String,
    /// Whether that is what the letters should have done, where they alone say so.
    pub as_expected: Option<bool>,
}

/// A move.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Move {
    /// As it is set in type: with a real prime.
    pub text: String,
    /// What it is part of.
    pub part: MovePart,
    /// That it is the next one.
    pub next: String,
    /// Number, move and part, to be read aloud.
    pub said: String,
}

/// What a move is part of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
#[cfg_attr(test, derive(ts_rs::TS))]
pub enum MovePart {
    /// What brings the target to the swap.
    Setup,
    /// The algorithm.
    Swap,
    /// A three-cycle: two letters at once.
    Cycle,
    /// The set-up undone.
    Undo,
    /// The parity algorithm.
    Parity,
}

impl MovePart {
    const fn name(self) -> &'static str {
        match self {
            Self::Setup => "setup",
            Self::Swap => "swap",
            Self::Cycle => "cycle",
            Self::Undo => "undo",
            Self::Parity => "parity",
        }
    }
}

pub(crate) fn time_line(call: &mut Call<'_>, about: &Puzzle) -> Result<TimeLine, Failure> {
    let voice = call.voice;
    let situation = call.desk.situation(voice, &about.source)?;
    let actions = situation.solution(voice)?.actions();
    let (solver, held) = (&situation.solver, &situation.solve.held);
    let conventions = solver.conventions();
    let all: usize = actions.iter().map(|action| action.turns().len()).sum();
    let pieces: usize = Orbit::of(solver.size()).iter().map(|orbit| usize::from(orbit.pieces())).sum();
    let mut state = held.state;
    let mut first = 0;
    let mut steps = Vec::new();
    for (number, action) in actions.iter().enumerate() {
        let parts: Vec<(MovePart, &[Turn])> = match action {
            Action::Letter { setup, swap, undo, .. } => {
                vec![(MovePart::Setup, setup), (MovePart::Swap, swap), (MovePart::Undo, undo)]
            }
            Action::Pair { turns, .. } | Action::Turned { turns, .. } => vec![(MovePart::Cycle, turns)],
            Action::Parity { turns } => vec![(MovePart::Parity, turns)],
        };
        let mut moves = Vec::new();
        for (part, turns) in parts {
            for turn in turns {
                let text = turn.to_string().replace('\'', "′");
                let said = voice.move_said(first + moves.len() + 1, all, &text, part.name());
                let next = voice.next_turn(&text);
                moves.push(Move { text, part, next, said });
            }
        }
        let before = state;
        state = state.after(&action.turns());
        let solved = solved_pieces(&state).len();
        let (letter, name, after, as_expected) = match action.letters() {
            Some((orbit, _, targets)) => {
                let right = solver.expected(&before, action).map(|wanted| wanted == state);
                let letter = conventions.kind(orbit).letters.spell(targets);
                let names: Vec<&str> = targets.iter().map(|&target| orbit.name(target)).collect();
                let (piece, solves) = match targets {
                    [target] => (orbit.piece_name(*target), state.at(orbit, *target) == *target),
                    _ => ("", false),
                };
                let after = voice.after_letter(&letter, piece, solves, right, solved, pieces);
                (letter, names.join(" "), after, right)
            }
            None => (String::new(), voice.word("step-parity"), voice.after_parity(solved, pieces), None),
        };
        let parts = situation.solve.memo.parts();
        let carried = action.letters().and_then(|(orbit, from, targets)| {
            let part = parts.iter().position(|trace| trace.orbit() == orbit)?;
            Some((part, from, targets.len(), parts[part].len()))
        });
        let letters = carried.into_iter().flat_map(|(part, from, count, _)| {
            (from..from + count).map(move |at| Pointed { part: part as u32, letter: at as u32 })
        });
        let place =
            carried.map_or_else(String::new, |(_, from, count, of)| voice.place_in_memo(from, count, of));
        let length = moves.len();
        steps.push(Step {
            said: voice.step_said(number + 1, actions.len(), &letter, &name),
            letters: letters.collect(),
            place,
            letter,
            name,
            first: first as u32,
            moves,
            after,
            as_expected,
        });
        first += length;
    }
    Ok(TimeLine {
        steps,
        moves: all as u32,
        summary: voice.execution_in_short(actions),
        origins: voice.moves_from(actions, solver, about.source.sheet.is_some()),
        holding: voice.picked_up(held, conventions),
    })
}
