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
    /// A part of two letters that are carried out by one algorithm.
    Pair {
        /// The kind of piece.
        orbit: Orbit,
        /// Which letter of the kind's memo comes first, from 0.
        letter: usize,
        /// The stickers that the letters stand for.
        targets: [Sticker; 2],
        /// Which part.
        part: Part,
    },
    /// A part of four letters that turn two pieces in their places by one algorithm.
    Turned {
        /// The kind of piece.
        orbit: Orbit,
        /// Which letter of the kind's memo comes first, from 0.
        letter: usize,
        /// The stickers that the letters stand for.
        targets: [Sticker; 4],
        /// Which part.
        part: Part,
    },
    /// The parity algorithm.
    Parity,
}

impl ActionStep {
    /// The kind of piece; none for parity.
    pub const fn orbit(&self) -> Option<Orbit> {
        match self {
            Self::Letter { orbit, .. } | Self::Pair { orbit, .. } | Self::Turned { orbit, .. } => {
                Some(*orbit)
            }
            Self::Parity => None,
        }
    }

    /// The letters that are carried out: which of the kind's memo comes first, from 0, and the stickers that they stand for; none for
    /// parity.
    pub fn letters(&self) -> Option<(usize, &[Sticker])> {
        match self {
            Self::Letter { letter, target, .. } => Some((*letter, std::slice::from_ref(target))),
            Self::Pair { letter, targets, .. } => Some((*letter, targets)),
            Self::Turned { letter, targets, .. } => Some((*letter, targets)),
            Self::Parity => None,
        }
    }

    /// Which part; parity is an algorithm by itself.
    pub const fn part(&self) -> Part {
        match self {
            Self::Letter { part, .. } | Self::Pair { part, .. } | Self::Turned { part, .. } => *part,
            Self::Parity => Part::Algorithm,
        }
    }
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
        /// Which turn, from 0; a turn that was added was made before it.
        turn: usize,
        /// What it should have been; nothing where one was added.
        planned: Option<Turn>,
        /// What was made; nothing where it was left out.
        made: Option<Turn>,
    },
    /// Two neighbouring turns of the scramble, exchanged.
    ScrambleOrder {
        /// Which turn is the first of them, from 0.
        turn: usize,
        /// Both as they should have been made.
        planned: [Turn; 2],
    },
    /// The whole scramble.
    ScrambleWhole {
        /// How the puzzle was turned before it, and back after it; none where it was made as in a mirror.
        hold: Option<Rotation>,
        /// The turns that were made.
        made: Vec<Turn>,
    },
    /// Another scramble of the list, made whole.
    ScrambleListed {
        /// Which of the list, from 0.
        number: usize,
        /// Its turns.
        made: Vec<Turn>,
    },
    /// All letters of a kind, traced from another buffer.
    Buffer {
        /// The kind of piece.
        orbit: Orbit,
        /// The buffer.
        buffer: Sticker,
        /// The letters.
        taken: Vec<Sticker>,
    },
    /// The letters of two kinds, each carried out on the other.
    Kinds {
        /// The kinds, in the order of execution.
        orbits: [Orbit; 2],
        /// What was carried out of each.
        taken: [Vec<Sticker>; 2],
    },
    /// Nothing more, from some turn of a step on.
    Ended {
        /// The step.
        step: ActionStep,
        /// The turn of the step that was no longer made, from 0.
        turn: usize,
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
    /// The step that it concerns, if it is of the hands.
    pub const fn step(&self) -> Option<&ActionStep> {
        match &self.change {
            Change::Turn { step, .. }
            | Change::Whole { step, .. }
            | Change::Held { step, .. }
            | Change::Ended { step, .. } => Some(step),
            Change::Letters { .. }
            | Change::Parity { .. }
            | Change::Scramble { .. }
            | Change::ScrambleOrder { .. }
            | Change::ScrambleWhole { .. }
            | Change::ScrambleListed { .. }
            | Change::Buffer { .. }
            | Change::Kinds { .. }
            | Change::Holding { .. } => None,
        }
    }

    /// The kind of piece that it concerns, if it is one.
    pub fn orbit(&self) -> Option<Orbit> {
        match &self.change {
            Change::Letters { orbit, .. } | Change::Buffer { orbit, .. } => Some(*orbit),
            _ => self.step().and_then(ActionStep::orbit),
        }
    }

    /// Whether it concerns this letter of this kind's memo, from 0.
    pub fn concerns(&self, orbit: Orbit, letter: usize) -> bool {
        if self.orbit() != Some(orbit) {
            return false;
        }
        match &self.change {
            Change::Letters { from, meant, .. } => (*from..from + meant.len().max(1)).contains(&letter),
            _ => match self.step().and_then(ActionStep::letters) {
                Some((first, letters)) => (first..first + letters.len().max(1)).contains(&letter),
                None => self.letter() == Some(letter),
            },
        }
    }

    /// The first letter that it concerns, from 0, if it concerns one.
    pub fn letter(&self) -> Option<usize> {
        match &self.change {
            Change::Letters { from, .. } => Some(*from),
            Change::Buffer { .. } => Some(0),
            _ => self.step().and_then(ActionStep::letters).map(|(letter, _)| letter),
        }
    }
}
