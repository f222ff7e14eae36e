//! Checking a memo, or the moves that were really made.

use std::collections::BTreeMap;

use blind::{Conventions, Letters as Scheme, Solver, UnknownLetter, kind_name, unsolved_pieces};
use cube::{Orbit, OrbitMap, State, Sticker};
use diagnosis::{KindCheck, Scrambled, check_moves, check_scrambled};
use serde::{Deserialize, Serialize};
use voice::Voice;

use crate::Failure;
use crate::call::Call;
use crate::names::{self, kind};
use crate::picture::Pointed;
use crate::situation::{Situation, Source};

/// A memo as it was written down: letters by kind, as files name it. A kind that is left out needs none; kinds that the puzzle
/// does not have are left aside, so that a page may keep what was written for another size.
pub type Written = BTreeMap<String, String>;

/// What is to be checked.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct ToCheck {
    /// The puzzle.
    pub source: Source,
    /// The memo.
    pub memo: Written,
    /// Whether parity was noted; none if the memo says nothing of it.
    pub parity: Option<bool>,
    /// The moves that were made; empty: check the memo.
    pub moves: String,
}

/// What was found.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Checked {
    /// Whether it solves the puzzle.
    pub right: bool,
    /// In words, a line each.
    pub sentences: Vec<String>,
    /// The memo that was checked: what was written, or ours where moves were made and nothing was written.
    pub memo: Written,
    /// Its letters that are wrong.
    pub cracked: Vec<Pointed>,
    /// The colours of the puzzle that it leads to, by the letters of the faces; empty if it cannot be carried out.
    pub outcome: String,
    /// Which pieces are not solved then; empty if it cannot be carried out.
    pub unsolved: String,
}

/// The letters of each kind of a puzzle.
pub(crate) type Letters = Vec<(Orbit, Vec<Sticker>)>;

/// Reads what was written for the kinds that the puzzle has, in the order in which they are memorised. Nothing is known of a kind for
/// which nothing was written.
pub(crate) fn letters(voice: &Voice, solver: &Solver, written: &Written) -> Result<Letters, Failure> {
    Ok(written_memo(voice, solver, written)?.0)
}

/// The same of letters as they were written down, and whether parity is noted among them.
fn written_memo(voice: &Voice, solver: &Solver, written: &Written) -> Result<(Letters, bool), Failure> {
    let read = read(voice, solver, written, Scheme::read_memo)?;
    let parity = read.iter().any(|(_, memo)| memo.parity);
    Ok((read.into_iter().map(|(orbit, memo)| (orbit, memo.letters)).collect(), parity))
}

fn read<T>(
    voice: &Voice,
    solver: &Solver,
    written: &Written,
    reader: impl Fn(&Scheme, &str) -> Result<T, UnknownLetter>,
) -> Result<Vec<(Orbit, T)>, Failure> {
    let mut read: OrbitMap<Option<T>> = OrbitMap::new(|_| None);
    for (name, text) in written {
        let orbit = kind(voice, name)?;
        if Orbit::of(solver.size()).contains(&orbit) && !text.trim().is_empty() {
            let letters = &solver.conventions().kind(orbit).letters;
            let stickers = reader(letters, text)
                .map_err(|error| Failure::new(voice.unknown_letter(orbit, letters, &error)))?;
            read[orbit] = Some(stickers);
        }
    }
    Ok(solver.memo_order().filter_map(|orbit| Some((orbit, read[orbit].take()?))).collect())
}

pub(crate) fn check(call: &mut Call<'_>, asked: &ToCheck) -> Result<Checked, Failure> {
    let voice = call.voice;
    let situation = call.desk.situation(voice, &asked.source)?;
    let solver = &situation.solver;
    let (given, noted) = written_memo(voice, solver, &asked.memo)?;
    if !asked.moves.trim().is_empty() {
        return made(voice, &situation, given, &asked.moves);
    }
    if noted && asked.parity == Some(false) {
        return Err(Failure::new(voice.word("page-parity-twice")));
    }
    let conventions = solver.conventions();
    let content = &situation.content;
    let turns = match content.facelets.as_str() {
        "" => Some(names::moves(voice, conventions, solver.size(), &content.scramble)?.flatten()),
        _ => None,
    };
    let puzzle =
        Scrambled { scramble: turns.as_deref(), state: &situation.scrambled, held: &situation.solve.held };
    let parity = asked.parity.or(noted.then_some(true));
    let check = check_scrambled(&puzzle, &given, parity, solver)
        .map_err(|error| Failure::new(voice.memo_error(&error)))?;
    let lines = voice.memo_checked(&check, conventions);
    let sentences = lines.iter().map(|line| line.trim().to_owned()).collect();
    let blamed = |kind: &KindCheck, at: usize| kind.slips.iter().any(|slip| slip.blames(at));
    let is_wrong = |orbit: Orbit, at: usize| {
        check.circumstance.is_none() && check.kinds.iter().any(|kind| kind.orbit == orbit && blamed(kind, at))
    };
    let right = check.right();
    let cracked = pointed(&given, is_wrong);
    let memo = spelled(conventions, &given);
    let CameOut { outcome, unsolved } =
        check.outcome.map(|state| came_out(voice, &situation, &state)).unwrap_or_default();
    Ok(Checked { right, sentences, memo, cracked, outcome, unsolved })
}

/// Moves that were made, lined up with the memo that was written, or with ours where none was.
fn made(voice: &Voice, situation: &Situation, given: Letters, moves: &str) -> Result<Checked, Failure> {
    let solver = &situation.solver;
    let moves = names::moves(voice, solver.conventions(), solver.size(), moves)?.flatten();
    let none = given.iter().all(|(_, letters)| letters.is_empty());
    let given = if none { situation.solve.memo.targets() } else { given };
    let plan = solver.actions(&given).map_err(|error| Failure::new(voice.no_solution(&error)))?;
    let check = check_moves(&situation.solve.held.state, &plan, &moves);
    let mut sentences = Vec::new();
    match &check.deviation {
        None if check.solves => sentences.push(voice.word("check-moves-right")),
        None => sentences.push(voice.word("why-memo-itself")),
        Some(deviation) => {
            sentences.push(voice.deviation(deviation, solver.conventions()));
            if check.solves {
                sentences.push(voice.word("check-moves-solve"));
            }
        }
    }
    let CameOut { outcome, unsolved } = came_out(voice, situation, &check.outcome);
    let memo = spelled(solver.conventions(), &given);
    let right = check.deviation.is_none() && check.solves;
    Ok(Checked { right, sentences, memo, cracked: Vec::new(), outcome, unsolved })
}

/// How a puzzle came out, as a page shows it.
#[derive(Default)]
pub(crate) struct CameOut {
    pub outcome: String,
    pub unsolved: String,
}

/// How a puzzle came out, in the solver's hold, and what is not solved.
pub(crate) fn came_out(voice: &Voice, situation: &Situation, state: &State) -> CameOut {
    let looks = State::held(state.size(), situation.conventions().holding).then(state);
    CameOut { outcome: looks.facelets().to_string(), unsolved: voice.unsolved(&unsolved_pieces(state)) }
}

/// The letters that are wrong, by part and letter.
pub(crate) fn pointed(
    memo: &[(Orbit, Vec<Sticker>)],
    is_wrong: impl Fn(Orbit, usize) -> bool,
) -> Vec<Pointed> {
    let wrong = &is_wrong;
    let of_part = |(part, (orbit, letters)): (usize, &(Orbit, Vec<Sticker>))| {
        let orbit = *orbit;
        (0..letters.len())
            .filter(move |&at| wrong(orbit, at))
            .map(move |at| Pointed { part: part as u32, letter: at as u32 })
    };
    memo.iter().enumerate().flat_map(of_part).collect()
}

/// A memo as it is written down: by kind, as files name it.
pub(crate) fn spelled(conventions: &Conventions, memo: &[(Orbit, Vec<Sticker>)]) -> Written {
    memo.iter()
        .map(|(orbit, letters)| {
            let scheme = &conventions.kind(*orbit).letters;
            (kind_name(*orbit).to_owned(), scheme.grouped(letters, conventions.pairs))
        })
        .collect()
}
