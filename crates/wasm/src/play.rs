//! The execution as a time line: each letter with set-up, swap and undo, and what it should have done.

use blind::{Action, Method, solved_pieces};
use cube::{Orbit, Perm, State, Sticker, Turn};
use serde::Serialize;

use crate::Failure;
use crate::methods::Call;
use crate::trace::Puzzle;

/// The time line.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct TimeLine {
    /// The steps in the order of the execution.
    pub steps: Vec<Step>,
    /// How many moves there are, each set-up written out.
    pub moves: u32,
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
    /// Whether that is what the letter should have done.
    pub as_expected: bool,
}

/// A move.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Move {
    /// As it is written.
    pub text: String,
    /// What it is part of.
    pub part: MovePart,
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
            Self::Undo => "undo",
            Self::Parity => "parity",
        }
    }
}

/// What a letter should do, from the letter alone and not from the moves: its piece and the buffer's change places, and
/// the other kinds' pieces change as the swap changes them.
fn expected(method: &Method, before: &State, orbit: Orbit, target: Sticker) -> Option<State> {
    let effect = method.swap(orbit)?.effect();
    let mut table = *Perm::IDENTITY.table();
    let pair = orbit.stickers_from(effect.buffer()).zip(orbit.stickers_from(target));
    for (one, other) in pair {
        table[one.index()] = other.index() as u8;
        table[other.index()] = one.index() as u8;
    }
    let perms: Vec<Perm> = Orbit::of(before.size())
        .iter()
        .map(|&kind| {
            let change = if kind == orbit { Perm::new(table) } else { Some(*effect.effect().orbit(kind)) };
            before.orbit(kind).then(&change.unwrap_or(Perm::IDENTITY))
        })
        .collect();
    State::from_orbits(before.size(), before.core(), &perms).ok()
}

pub(crate) fn time_line(call: &mut Call<'_>, about: &Puzzle) -> Result<TimeLine, Failure> {
    let voice = call.voice;
    let situation = call.desk.situation(voice, &about.source)?;
    let actions = &situation.solution(voice)?.actions;
    let conventions = &situation.conventions;
    let all: usize = actions.iter().map(|action| action.turns().len()).sum();
    let pieces: usize = Orbit::of(situation.size).iter().map(|orbit| usize::from(orbit.pieces())).sum();
    let mut state = situation.held.state.clone();
    let mut first = 0;
    let mut steps = Vec::new();
    for (number, action) in actions.iter().enumerate() {
        let parts: Vec<(MovePart, &[Turn])> = match action {
            Action::Letter { setup, swap, undo, .. } => {
                vec![(MovePart::Setup, setup), (MovePart::Swap, swap), (MovePart::Undo, undo)]
            }
            Action::Parity { turns } => vec![(MovePart::Parity, turns)],
        };
        let mut moves = Vec::new();
        for (part, turns) in parts {
            for turn in turns {
                let text = turn.to_string();
                let said = voice.move_said(first + moves.len() + 1, all, &text, part.name());
                moves.push(Move { text, part, said });
            }
        }
        let before = state.clone();
        state = state.after(&action.turns());
        let solved = solved_pieces(&state).len();
        let (letter, name, after, as_expected) = match action {
            Action::Letter { orbit, target, .. } => {
                let method = situation.method.as_ref().as_ref();
                let wanted = method.ok().and_then(|method| expected(method, &before, *orbit, *target));
                let right = wanted.is_some_and(|wanted| wanted == state);
                let letter = conventions.kind(*orbit).letters.of(*target).to_string();
                let solves = state.at(*orbit, *target) == *target;
                let after =
                    voice.after_letter(&letter, orbit.piece_name(*target), solves, right, solved, pieces);
                (letter, orbit.name(*target).to_owned(), after, right)
            }
            Action::Parity { .. } => {
                (String::new(), voice.word("step-parity"), voice.after_parity(solved, pieces), true)
            }
        };
        let length = moves.len();
        steps.push(Step {
            said: voice.step_said(number + 1, actions.len(), &letter, &name),
            letter,
            name,
            first: first as u32,
            moves,
            after,
            as_expected,
        });
        first += length;
    }
    Ok(TimeLine { steps, moves: all as u32, holding: voice.picked_up(&situation.held, conventions) })
}
