//! Why each letter is what it is: what a coach would point at, as data.

use crate::step::{Role, Step};
use crate::trace::{BufferIs, Trace};
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
    /// As [`Reason::Follow`] for a piece that looks like others: its colour belongs on a face, and one of the places there
    /// that still want it is taken.
    FollowColour {
        /// The place looked at.
        place: Sticker,
        /// Whether that place is the buffer.
        at_buffer: bool,
        /// The place taken: this is the letter.
        target: Sticker,
        /// The face that the colour seen belongs to.
        face: Face,
        /// Whether that is the buffer's own face: the piece could stay in the buffer, but giving it away here saves the letter
        /// that a new beginning would take.
        buffers_own: bool,
        /// Other places that would have done with no letter more, the preferred first.
        others: Vec<Sticker>,
        /// Places that want the colour too, but would have made the memo a letter longer.
        costlier: Vec<Sticker>,
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
        if letter > 0 && steps[letter - 1].role.ends() {
            return End::Closed;
        }
        // A piece that looks like the buffer's own may be given away although the buffer is right; then one like it came up.
        match steps[..letter].last() {
            Some(step) => End::BufferPiece { place: step.target, seen: self.seen().at(step.target) },
            None => End::BufferAtHome { turned: self.buffer_is() == BufferIs::Turned },
        }
    }

    /// How the memo ends: what is found after the last letter.
    pub fn end(&self) -> End {
        self.end_before(self.len())
    }
}

/// The reasons for all letters of a memo, in order.
///
/// `chosen` says how breaks were chosen, see [`crate::BreakChoice`]; `order` is the order in which the trace prefers
/// stickers.
pub fn reasons(trace: &Trace, chosen: Chosen, order: &[Sticker; 24]) -> Vec<Reason> {
    let orbit: Orbit = trace.orbit();
    let mut began = 0;
    let reason = |(letter, step): (usize, &Step)| {
        let target = step.target;
        if step.role.begins() {
            began = letter;
        }
        match step.role {
            Role::Follow if orbit.looks_alike() => {
                let face = trace.seen().at(step.place).face();
                Reason::FollowColour {
                    place: step.place,
                    at_buffer: letter == 0,
                    target,
                    face,
                    buffers_own: began == 0
                        && !trace.steps()[0].role.begins()
                        && face == trace.buffer().face(),
                    others: trace.alternatives(letter, order),
                    costlier: trace.costlier(letter, order),
                }
            }
            Role::Follow => Reason::Follow {
                place: step.place,
                at_buffer: letter == 0,
                target,
                face: target.face(),
                piece: orbit.faces(target).to_vec(),
            },
            Role::Break => Reason::Break {
                target,
                unsolved: trace.unsolved_before(letter),
                chosen,
                after: trace.end_before(letter),
            },
            Role::TurnedFirst => Reason::TurnedFirst {
                target,
                unsolved: trace.unsolved_before(letter),
                after: trace.end_before(letter),
            },
            Role::TurnedSecond => Reason::TurnedSecond { place: step.place, target },
            Role::Close => {
                let began_at = began;
                Reason::Close { place: step.place, target, began: trace.steps()[began].target, began_at }
            }
        }
    };
    trace.steps().iter().enumerate().map(reason).collect()
}
