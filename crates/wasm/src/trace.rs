//! The memo of a puzzle with the reason for every letter.

use blind::{HoldChoice, Role, kind_name};
use cube::display_turns;
use serde::{Deserialize, Serialize};

use crate::Failure;
use crate::call::Call;
use crate::situation::{Situation, Source};

/// A request about a puzzle alone.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Puzzle {
    /// The puzzle.
    pub source: Source,
}

/// Memo, reasons and solution.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(rename_all = "camelCase")]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Traced {
    /// How it is picked up, and what is then already solved.
    pub holding: String,
    /// A memo a kind, in the order in which they are memorised.
    pub parts: Vec<Part>,
    /// Whether there is parity, and what follows.
    pub parity: String,
    /// How many letters in all, and whether there is parity, in a few words.
    pub summary: String,
    /// How it is held, in a few words.
    pub grip: Grip,
    /// Whether there is nothing to memorise at all.
    pub solved: bool,
    /// The stickers as they are before it is picked up, to be painted on.
    pub facelets: String,
    /// What carries the memo out; applied and found right.
    pub solution: Option<Solved>,
    /// Why there is no solution, if there is none.
    pub trouble: Option<String>,
}

/// How the puzzle is held.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Grip {
    /// The colours up and in front.
    pub colours: String,
    /// Why it is held so.
    pub why: String,
    /// Whether it is the hold with the shortest memo; none where centres leave no choice.
    pub best: Option<bool>,
}

/// The memo of a kind.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(rename_all = "camelCase")]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Part {
    /// The kind, as files name it.
    pub kind: String,
    /// The kind, as people say.
    pub name: String,
    /// What a field for its letters is called.
    pub field: String,
    /// The buffer with its letter.
    pub buffer: String,
    /// Whether the number of letters is odd.
    pub odd: bool,
    /// The letters in one string, as they are memorised.
    pub memo: String,
    /// The letters in groups: pairs, unless the conventions say otherwise.
    pub groups: Vec<Vec<Letter>>,
    /// Memo, buffer and number of letters in a sentence.
    pub sentence: String,
    /// What is found after the last letter.
    pub finish: String,
}

/// A letter of the memo.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(rename_all = "camelCase")]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Letter {
    /// Which one of its kind, from 0.
    pub index: u32,
    /// The letter.
    pub letter: String,
    /// Its sticker.
    pub target: String,
    /// What it is there for.
    pub role: LetterRole,
    /// Which letter of how many.
    pub place: String,
    /// Letter and sticker, to be read aloud.
    pub said: String,
    /// Why it is there.
    pub reason: String,
}

/// What a letter of the memo is there for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(test, derive(ts_rs::TS))]
pub enum LetterRole {
    /// What lies at the place looked at belongs here.
    Follow,
    /// A new cycle begins with it.
    Break,
    /// The cycle that began is closed.
    Close,
    /// The first of two letters for a piece that is turned in its place.
    TurnedFirst,
    /// The second of them.
    TurnedSecond,
}

impl From<Role> for LetterRole {
    fn from(role: Role) -> Self {
        match role {
            Role::Follow => Self::Follow,
            Role::Break => Self::Break,
            Role::Close => Self::Close,
            Role::TurnedFirst => Self::TurnedFirst,
            Role::TurnedSecond => Self::TurnedSecond,
        }
    }
}

/// A solution.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Solved {
    /// All moves, merged and cancelled.
    pub moves: String,
    /// How long it is, and that it was applied.
    pub length: String,
}

pub(crate) fn trace(call: &mut Call<'_>, about: &Puzzle) -> Result<Traced, Failure> {
    let voice = call.voice;
    let situation = call.desk.situation(voice, &about.source)?;
    let (held, memo) = (&situation.solve.held, &situation.solve.memo);
    let solution = situation.solve.solution.as_ref().ok().map(|solution| {
        let count = solution.count();
        Solved {
            moves: display_turns(solution.moves()).to_string(),
            length: voice.say(
                "solution-length",
                &[
                    ("half", count.half.into()),
                    ("quarter", count.quarter.into()),
                    ("slice", count.slice.into()),
                ],
            ),
        }
    });
    Ok(Traced {
        holding: voice.picked_up(held, situation.conventions()),
        parts: memo.parts().iter().map(|trace| part(call, &situation, trace)).collect(),
        parity: situation.parity(voice),
        summary: voice.memo_in_short(memo, &situation.solver),
        grip: Grip {
            colours: voice.held_in_short(held.rotation, situation.conventions()),
            why: voice.held_why(situation.solver.size(), situation.choice),
            best: (!situation.solver.size().is_odd()).then_some(situation.choice == HoldChoice::Best),
        },
        solved: memo.letters() == 0,
        facelets: situation.scrambled.facelets().to_string(),
        solution,
        trouble: situation.trouble(voice),
    })
}

pub(crate) fn part(call: &Call<'_>, situation: &Situation, trace: &blind::Trace) -> Part {
    let (voice, conventions, orbit) = (call.voice, situation.conventions(), trace.orbit());
    let kind = conventions.kind(orbit);
    let letters: Vec<Letter> = trace
        .steps()
        .iter()
        .zip(situation.solver.reasons(trace))
        .enumerate()
        .map(|(index, (step, reason))| Letter {
            index: index as u32,
            letter: kind.letters.of(step.target).to_owned(),
            target: orbit.name(step.target).to_owned(),
            role: step.role.into(),
            place: voice.place_in_memo(index, 1, trace.len()),
            said: voice.letter_said(index, orbit, step.target, &kind.letters),
            reason: voice.reason(&reason, trace, conventions),
        })
        .collect();
    Part {
        kind: kind_name(orbit).to_owned(),
        name: voice.kinds(orbit),
        field: voice.letters_of_kind(orbit),
        buffer: voice.lettered(orbit, trace.buffer(), &kind.letters),
        sentence: voice.memo_line(trace, conventions),
        odd: trace.is_odd(),
        memo: kind.letters.grouped(&trace.targets(), conventions.pairs),
        groups: letters.chunks(if conventions.pairs { 2 } else { 1 }).map(<[Letter]>::to_vec).collect(),
        finish: voice.finish(trace, conventions),
    }
}
