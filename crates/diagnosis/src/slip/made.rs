//! A slip at its place.

use super::SlipKind;
use cube::{Orbit, Rotation, Sticker, Turn};

/// A part of the execution of a letter.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, PartialOrd, Ord)]
pub enum Part {
    /// The set-up moves.
    Setup,
    /// The algorithm.
    Algorithm,
    /// The set-up undone.
    Undo,
}

/// A step of the execution: a part of a letter, or the parity algorithm.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum ActionStep {
    /// A part of a letter.
    Letter {
        /// The kind of piece.
        orbit: Orbit,
        /// Which letter of the kind's memo, from 0.
        letter: usize,
        /// The sticker that the letter stands for.
        target: Sticker,
        /// Which part.
        part: Part,
    },
    /// The parity algorithm.
    Parity,
}

/// What was done instead of what should have been.
#[derive(Clone, PartialEq, Eq, Hash, Debug)]
pub enum Change {
    /// Other letters than those of the memo.
    Letters {
        /// The kind of piece.
        orbit: Orbit,
        /// The first letter concerned, from 0.
        from: usize,
        /// The letters of the memo, by their stickers.
        meant: Vec<Sticker>,
        /// What was carried out.
        taken: Vec<Sticker>,
    },
    /// The parity algorithm made (`true`) or not, against the memo.
    Parity {
        /// Whether it was made.
        made: bool,
    },
    /// One turn of a step.
    Turn {
        /// The step.
        step: ActionStep,
        /// Which turn of the step, from 0; a turn that was added was made before it.
        turn: usize,
        /// What the turn should have been; nothing where one was added.
        planned: Option<Turn>,
        /// What was made; nothing where it was left out.
        made: Option<Turn>,
    },
    /// A whole part of a letter, or the parity algorithm.
    Whole {
        /// The step.
        step: ActionStep,
        /// What should have been made.
        planned: Vec<Turn>,
        /// What was made.
        made: Vec<Turn>,
        /// The letter whose set-up it is, where that is another.
        of: Option<Sticker>,
    },
    /// The puzzle turned as a whole before a step.
    Held {
        /// The step.
        step: ActionStep,
        /// How it was turned.
        rotation: Rotation,
    },
    /// One turn of the scramble.
    Scramble {
        /// Which turn, from 0.
        turn: usize,
        /// What it should have been.
        planned: Turn,
        /// What was made; nothing where it was left out.
        made: Option<Turn>,
    },
    /// The hold in which the puzzle was picked up.
    Holding {
        /// The rotation that should have been made.
        planned: Rotation,
        /// The rotation that was made.
        made: Rotation,
    },
}

/// A slip at its place.
#[derive(Clone, PartialEq, Eq, Hash, Debug)]
pub struct Slip {
    /// The kind of slip.
    pub kind: SlipKind,
    /// What was done instead of what should have been.
    pub change: Change,
}

impl Slip {
    /// The kind of piece that it concerns, if it is one.
    pub fn orbit(&self) -> Option<Orbit> {
        match &self.change {
            Change::Letters { orbit, .. } => Some(*orbit),
            Change::Turn { step, .. } | Change::Whole { step, .. } | Change::Held { step, .. } => {
                match step {
                    ActionStep::Letter { orbit, .. } => Some(*orbit),
                    ActionStep::Parity => None,
                }
            }
            _ => None,
        }
    }

    /// The first letter that it concerns, from 0, if it concerns one.
    pub fn letter(&self) -> Option<usize> {
        match &self.change {
            Change::Letters { from, .. } => Some(*from),
            Change::Turn { step, .. } | Change::Whole { step, .. } | Change::Held { step, .. } => {
                match step {
                    ActionStep::Letter { letter, .. } => Some(*letter),
                    ActionStep::Parity => None,
                }
            }
            _ => None,
        }
    }
}
