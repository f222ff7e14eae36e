//! Checking a memo, or the moves that were really made.

use blind::{Conventions, Memo, actions, check_memo, check_moves};
use cube::{Algorithm, Orbit, Size, State, Sticker};
use draw::{Bead, Strand, Theme, Thread};
use serde::{Deserialize, Serialize};
use voice::Voice;

use crate::call::Call;
use crate::situation::Source;
use crate::{Failure, Place};

/// A memo as it was written down.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Written {
    /// The corners' letters.
    pub corners: String,
    /// The edges' letters.
    pub edges: String,
}

/// What is to be checked.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct ToCheck {
    /// The puzzle.
    pub source: Source,
    /// The memo; empty letters mean that the kind needs none.
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
    /// The memo as a thread, wrong beads marked.
    pub thread: String,
    /// The puzzle that it leads to, unfolded; none if it cannot be carried out or all is right.
    pub outcome: Option<String>,
}

/// The letters of each kind of a puzzle.
pub(crate) type Letters = Vec<(Orbit, Vec<Sticker>)>;

/// Reads what was written for the kinds that the puzzle has.
pub(crate) fn letters(
    voice: &Voice,
    conventions: &Conventions,
    size: Size,
    written: &Written,
) -> Result<Letters, Failure> {
    let given = [(Orbit::Corner, &written.corners), (Orbit::Midge, &written.edges)];
    given
        .into_iter()
        .filter(|(orbit, _)| Orbit::of(size).contains(orbit))
        .map(|(orbit, text)| {
            let read = conventions.kind(orbit).letters.read(orbit, text);
            read.map(|letters| (orbit, letters)).map_err(|error| Failure::new(voice.memo_error(&error)))
        })
        .collect()
}

pub(crate) fn check(call: &mut Call<'_>, asked: &ToCheck) -> Result<Checked, Failure> {
    let voice = call.voice;
    let situation = call.desk.situation(voice, &asked.source)?;
    let conventions = &situation.conventions;
    let method =
        situation.method.as_ref().as_ref().map_err(|error| Failure::new(voice.method_error(error)))?;
    let given = letters(voice, conventions, situation.size, &asked.memo)?;
    if !asked.moves.trim().is_empty() {
        let moves = Algorithm::parse(&asked.moves, situation.size)
            .map_err(|error| Failure {
                sentence: voice.parse_error(&error),
                place: Some(Place::of(&asked.moves, &error)),
            })?
            .flatten();
        let given = if given.iter().all(|(_, letters)| letters.is_empty()) {
            let ours = Memo::new(&situation.held.state, conventions, method);
            ours.parts().iter().map(|trace| (trace.orbit(), trace.targets())).collect()
        } else {
            given
        };
        let plan = actions(&given, conventions, method)
            .map_err(|error| Failure::new(voice.execution_error(&error)))?;
        let check = check_moves(&situation.held.state, &plan, &moves);
        let mut sentences = Vec::new();
        match &check.deviation {
            None if check.solves => sentences.push(voice.word("check-moves-right")),
            None => sentences.push(voice.word("why-memo-itself")),
            Some(deviation) => {
                sentences.push(voice.deviation(deviation, conventions));
                if check.solves {
                    sentences.push(voice.word("check-moves-solve"));
                }
            }
        }
        let thread = thread(voice, conventions, &given, |_, _| false);
        let looks = State::held(situation.size, conventions.holding).then(&check.outcome);
        let outcome = (!check.solves)
            .then(|| situation.picture(voice, &looks, &voice.word("picture-net")).net().into_string());
        let right = check.deviation.is_none() && check.solves;
        return Ok(Checked { right, sentences, thread, outcome });
    }
    let check = check_memo(&situation.held.state, &given, asked.parity, conventions, method)
        .map_err(|error| Failure::new(voice.memo_error(&error)))?;
    let mut sentences = Vec::new();
    if check.right() {
        sentences.push(voice.word("check-right"));
    } else {
        for kind in &check.kinds {
            sentences.push(voice.kind_checked(kind));
            sentences.extend(kind.slips.iter().map(|slip| voice.memo_slip(slip, kind.orbit, conventions)));
        }
        sentences.extend(check.parity.map(|fault| voice.parity_fault(fault)));
        if check.moves.is_none() {
            sentences.push(voice.word("check-cannot-be-carried-out"));
        }
    }
    let is_wrong = |orbit: Orbit, at: usize| {
        check
            .kinds
            .iter()
            .any(|kind| kind.orbit == orbit && kind.slips.iter().any(|slip| slip.position == at))
    };
    let outcome = check.outcome.filter(|_| !check.right()).map(|state| {
        let looks = State::held(situation.size, conventions.holding).then(&state);
        situation.picture(voice, &looks, &voice.word("picture-net")).net().into_string()
    });
    let thread = thread(voice, conventions, &given, is_wrong);
    Ok(Checked { right: check.right(), sentences, thread, outcome })
}

/// A memo as it was written, with wrong beads marked.
pub(crate) fn thread(
    voice: &Voice,
    conventions: &Conventions,
    memo: &Letters,
    is_wrong: impl Fn(Orbit, usize) -> bool,
) -> String {
    let strands = memo
        .iter()
        .map(|(orbit, letters)| {
            let kind = conventions.kind(*orbit);
            let strand = Strand::new(voice.kinds(*orbit), orbit.name(kind.buffer));
            let strand = letters.iter().enumerate().fold(strand, |strand, (at, &target)| {
                let bead = Bead::new(kind.letters.of(target).to_string());
                strand.bead(if is_wrong(*orbit, at) { bead.wrong() } else { bead })
            });
            strand.with_loose_end(letters.len() % 2 == 1)
        })
        .collect();
    let mut thread = Thread::new(strands, voice.word("picture-thread"));
    let lines = memo.iter().map(|(orbit, letters)| {
        let scheme = &conventions.kind(*orbit).letters;
        format!("{}: {}", voice.kinds(*orbit), scheme.grouped(letters, conventions.pairs))
    });
    thread.caption.description = lines.map(|line| line + ".").collect::<Vec<_>>().join(" ");
    thread.paired = conventions.pairs;
    thread.theme = Theme::Page;
    thread.svg().into_string()
}
