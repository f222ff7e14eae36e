//! A letter of the memo on a picture, and where the execution stands.

use blind::Action;
use cube::{Orbit, State, Sticker, Turn};
use draw::{Chain, Mark, Picture, Place};
use serde::{Deserialize, Serialize};

use crate::situation::Situation;

/// A letter of the memo.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Pointed {
    /// Which part of the memo, from 0.
    pub part: u32,
    /// Which letter of the part, from 0.
    pub letter: u32,
}

/// The sticker looked at and its way home, on a picture.
pub(crate) fn with_letter(picture: Picture, trace: &blind::Trace, step: blind::Step) -> Picture {
    let (place, target) = (Place::new(trace.orbit(), step.place), Place::new(trace.orbit(), step.target));
    if step.role.begins() {
        return picture.mark(target, Mark::Target);
    }
    picture.mark(place, Mark::Look).mark(target, Mark::Target).chain(Chain::new([place, target]))
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
