//! Why each letter is what it is: what a coach would point at, as data.

use crate::trace::{BufferIs, Role, Trace};
use cube::{Face, Orbit, Sticker};

/// Why a letter of a memo is there.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Reason {
    /// The trace begins at the buffer, or goes on from the letter before: the sticker seen there belongs elsewhere.
    Follow {
        /// The place looked at.
        place: Sticker,
        /// Whether that place is the buffer.
        at_buffer: bool,
        /// The sticker seen there, by where it belongs: this is the letter.
        target: Sticker,
        /// The face that its colour belongs to.
        face: Face,
        /// Faces whose colours the piece shows, the sticker's own first.
        piece: Vec<Face>,
    },
    /// The cycle is closed; a new one begins at an unsolved piece.
    Break {
        /// Where the new cycle begins: this is the letter.
        target: Sticker,
        /// Pieces still unsolved, by their reference stickers, this one included.
        unsolved: Vec<Sticker>,
        /// How the break was chosen among the unsolved stickers.
        chosen: Chosen,
        /// How the cycle before it ended.
        after: End,
    },
    /// A piece lies in its place but turned wrong: its first letter.
    TurnedFirst {
        /// A sticker of the piece: this is the letter.
        target: Sticker,
        /// Pieces still unsolved, by their reference stickers, this one included.
        unsolved: Vec<Sticker>,
        /// How the cycle before it ended.
        after: End,
    },
    /// A piece in its place but turned wrong: its second letter, the matching one.
    TurnedSecond {
        /// The place looked at, the first letter.
        place: Sticker,
        /// The sticker seen there: this is the letter.
        target: Sticker,
    },
    /// A sticker of the piece where the cycle began has come up: it is memorised and the cycle is closed.
    Close {
        /// The place looked at.
        place: Sticker,
        /// The sticker seen there: this is the letter.
        target: Sticker,
        /// Where the cycle began.
        began: Sticker,
        /// Which letter of the memo that was, from 0.
        began_at: usize,
    },
}

/// How a break was chosen.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Chosen {
    /// As the first in the order of letters or of the solver's list.
    First,
    /// As the one whose cycle takes the fewest set-up moves.
    Fewest,
    /// As part of the memo that takes the least estimated time.
    Least,
}

/// Why a cycle ends without a further letter, or what is found where none is needed.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum End {
    /// The buffer's piece came up at this place; nothing is memorised for it.
    BufferPiece {
        /// The place where it lies.
        place: Sticker,
        /// Which of its stickers is seen there.
        seen: Sticker,
    },
    /// The buffer's piece is in its place from the start: solved, or turned.
    BufferAtHome {
        /// Whether it is turned wrong.
        turned: bool,
    },
    /// The cycle before was closed by its last letter.
    Closed,
}

impl Trace {
    /// How the part of the memo before a letter ended.
    fn end_before(&self, letter: usize) -> End {
        let steps = self.steps();
        if letter > 0 && steps[letter - 1].role == Role::Close {
            return End::Closed;
        }
        let place = if letter == 0 { self.buffer() } else { steps[letter - 1].target };
        match self.buffer_is() {
            BufferIs::Away => End::BufferPiece { place, seen: self.seen().at(place) },
            other => End::BufferAtHome { turned: other == BufferIs::Turned },
        }
    }

    /// How the memo ends: what is found after the last letter.
    pub fn end(&self) -> End {
        self.end_before(self.len())
    }
}

/// The reasons for all letters of a memo, in order.
///
/// `chosen` says how breaks were chosen, see [`crate::BreakChoice`].
pub fn reasons(trace: &Trace, chosen: Chosen) -> Vec<Reason> {
    let steps = trace.steps();
    let orbit: Orbit = trace.orbit();
    let mut began = 0;
    steps
        .iter()
        .enumerate()
        .map(|(letter, step)| match step.role {
            Role::Follow => Reason::Follow {
                place: step.place,
                at_buffer: letter == 0,
                target: step.target,
                face: step.target.face(),
                piece: orbit.faces(step.target).to_vec(),
            },
            Role::Break => {
                began = letter;
                let (target, unsolved, after) =
                    (step.target, trace.unsolved_before(letter), trace.end_before(letter));
                if steps.get(letter + 1).is_some_and(|next| next.role == Role::Close) {
                    Reason::TurnedFirst { target, unsolved, after }
                } else {
                    Reason::Break { target, unsolved, chosen, after }
                }
            }
            Role::Close if letter == began + 1 => {
                Reason::TurnedSecond { place: step.place, target: step.target }
            }
            Role::Close => Reason::Close {
                place: step.place,
                target: step.target,
                began: steps[began].target,
                began_at: began,
            },
        })
        .collect()
}
