//! Pictures of the puzzle: as it is held, with a letter of the memo shown, or in the middle of a turn.

use blind::Action;
use cube::{Orbit, State, Sticker, Turn};
use draw::{Chain, Glow, Mark, Picture, Place, Strand, Theme, Thread, Turning};
use serde::{Deserialize, Serialize};

use crate::Failure;
use crate::call::Call;
use crate::look::{Drawn, Looking};
use crate::situation::{Situation, Source};

/// A letter of the memo.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Pointed {
    /// Which part of the memo, from 0.
    pub part: u32,
    /// Which letter of the part, from 0.
    pub letter: u32,
}

/// A picture that is wanted.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Wanted {
    /// The puzzle.
    pub source: Source,
    /// How it is looked at.
    pub looking: Looking,
    /// The letter whose sticker and way home are shown.
    pub letter: Option<Pointed>,
}

/// A moment of the execution.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Moment {
    /// The puzzle.
    pub source: Source,
    /// How it is looked at.
    pub looking: Looking,
    /// How many moves are done.
    pub at: u32,
    /// How much of the next one is done, 0 to 1.
    pub progress: f64,
}

/// A thread that is wanted.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct WantedThread {
    /// The puzzle.
    pub source: Source,
    /// How many steps of the execution are done.
    pub done: u32,
    /// Whether the next one is under way.
    pub now: bool,
    /// How wide it may be, in pixels at its natural size.
    pub width: f64,
}

/// The sticker looked at and its way home, on a picture.
pub(crate) fn with_letter(picture: Picture, trace: &blind::Trace, step: blind::Step) -> Picture {
    let (place, target) = (Place::new(trace.orbit(), step.place), Place::new(trace.orbit(), step.target));
    if step.role.begins() {
        return picture.mark(target, Mark::Target);
    }
    picture.mark(place, Mark::Look).mark(target, Mark::Target).chain(Chain::new([place, target]))
}

pub(crate) fn picture(call: &mut Call<'_>, wanted: &Wanted) -> Result<Drawn, Failure> {
    let voice = call.voice;
    let situation = call.desk.situation(voice, &wanted.source)?;
    let mut picture = situation.picture(voice, &situation.looks, &voice.word("picture-puzzle"));
    let pointed = wanted.letter.as_ref().and_then(|at| {
        let trace = situation.solve.memo.parts().get(at.part as usize)?;
        Some((trace, trace.steps().get(at.letter as usize)?))
    });
    if let Some((trace, step)) = pointed {
        picture = with_letter(picture, trace, *step);
    } else {
        for trace in situation.solve.memo.parts() {
            picture = picture.mark(Place::new(trace.orbit(), trace.buffer()), Mark::Buffer);
        }
    }
    Ok(wanted.looking.drawn(&picture, None))
}

/// The step of the execution that a move belongs to, and how many of its moves come before.
pub(crate) fn step_at(actions: &[Action], at: usize) -> Option<(usize, usize)> {
    let mut before = 0;
    for (number, action) in actions.iter().enumerate() {
        let length = action.turns().len();
        if at < before + length {
            return Some((number, at - before));
        }
        before += length;
    }
    None
}

/// Where the sticker that belongs to a place lies after some turns.
pub(crate) fn carried(situation: &Situation, orbit: Orbit, sticker: Sticker, turns: &[Turn]) -> Sticker {
    State::solved(situation.solver.size()).after(turns).orbit(orbit).inverse().at(sticker)
}

pub(crate) fn moment(call: &mut Call<'_>, moment: &Moment) -> Result<Drawn, Failure> {
    let voice = call.voice;
    let situation = call.desk.situation(voice, &moment.source)?;
    let actions = situation.solution(voice)?.actions();
    let turns: Vec<Turn> = actions.iter().flat_map(Action::turns).collect();
    let at = (moment.at as usize).min(turns.len());
    let now = situation.looks.after(&turns[..at]);
    let mut picture = situation.picture(voice, &now, &voice.word("picture-puzzle"));
    if let Some((number, done)) = step_at(actions, at)
        && let Some((orbit, _, targets)) = actions[number].letters()
    {
        let begun = &turns[at - done..at];
        let buffer = situation.conventions().kind(orbit).buffer;
        picture = picture.mark(Place::new(orbit, carried(&situation, orbit, buffer, begun)), Mark::Buffer);
        for &target in targets {
            let place = Place::new(orbit, carried(&situation, orbit, target, begun));
            picture = picture.mark(place, Mark::Target);
        }
    }
    let turning = (moment.progress > 0.0)
        .then(|| turns.get(at))
        .flatten()
        .map(|&turn| Turning { turn, progress: moment.progress });
    Ok(moment.looking.drawn(&picture, turning))
}

pub(crate) fn thread(call: &mut Call<'_>, wanted: &WantedThread) -> Result<String, Failure> {
    let voice = call.voice;
    let situation = call.desk.situation(voice, &wanted.source)?;
    let actions = situation.solution(voice).map_or(&[][..], |solution| solution.actions());
    let done = wanted.done as usize;
    let glow = |orbit: Orbit, letter: usize| {
        let step = actions.iter().position(|action| {
            action.letters().is_some_and(|(of, first, targets)| {
                of == orbit && (first..first + targets.len()).contains(&letter)
            })
        });
        match step {
            Some(step) if step < done => Glow::Done,
            Some(step) if step == done && wanted.now => Glow::Now,
            _ => Glow::Ahead,
        }
    };
    let conventions = situation.conventions();
    let parts = situation.solve.memo.parts();
    let strands = parts
        .iter()
        .map(|trace| {
            let letters = &conventions.kind(trace.orbit()).letters;
            Strand::of(trace, voice.kinds(trace.orbit()), |number, target| {
                draw::Bead::new(letters.of(target)).glowing(glow(trace.orbit(), number))
            })
        })
        .collect();
    let mut thread = Thread::new(strands, voice.word("picture-thread"));
    let lines: Vec<String> = parts.iter().map(|trace| voice.memo_line(trace, conventions)).collect();
    thread.caption.description = lines.join(" ");
    thread.paired = conventions.pairs;
    thread.width = wanted.width;
    thread.theme = Theme::Page;
    Ok(thread.svg().into_string())
}
