//! A story told in full: its slips in order, and the tape after each of them.

use super::search::Story;
use super::space::{Candidate, Space};
use crate::slip::Change;
use cube::Turn;

/// A tape in its three parts.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct Tape {
    turns: Vec<Turn>,
    /// Where the scramble ends, and where picking up ends.
    cuts: [usize; 2],
}

impl Tape {
    fn edit(&mut self, candidate: &Candidate, offset: isize) {
        for edit in candidate.edits.iter().rev() {
            let shifted = |at: usize| at.saturating_add_signed(offset);
            let range = shifted(edit.range.start)..shifted(edit.range.end);
            let made = edit.made.turns();
            let shift = |cut: usize| cut + made.len() - range.len();
            match candidate.slip.change {
                Change::Scramble { .. }
                | Change::ScrambleOrder { .. }
                | Change::ScrambleWhole { .. }
                | Change::ScrambleListed { .. } => {
                    self.cuts = self.cuts.map(shift);
                }
                Change::Holding { .. } => self.cuts[1] = shift(self.cuts[1]),
                _ => {}
            }
            self.turns.splice(range, made);
        }
    }

    pub(crate) fn turns(&self) -> &[Turn] {
        &self.turns
    }

    pub(crate) fn scrambled(&self) -> &[Turn] {
        &self.turns[..self.cuts[0]]
    }

    pub(crate) fn rotated(&self) -> &[Turn] {
        &self.turns[self.cuts[0]..self.cuts[1]]
    }

    pub(crate) fn played(&self) -> &[Turn] {
        &self.turns[self.cuts[1]..]
    }
}

/// The slips of a story in the order of the attempt, and the tape before the first and after each of them.
pub(crate) struct Told {
    pub(crate) slips: Vec<Candidate>,
    pub(crate) tapes: Vec<Tape>,
}

impl Told {
    /// Tells a story; no story is the attempt as it was planned.
    pub(crate) fn new(space: &Space<'_>, story: Option<Story>) -> Self {
        let picked_up = &space.course.picked_up;
        let planned = Tape { turns: space.course.tape.clone(), cuts: [picked_up.start, picked_up.end] };
        let slips = story.map_or_else(Vec::new, |story| space.tell(story));
        // Which slips have their places on the tape that a slip of letters left, not on the planned one.
        let mut inner = vec![false; slips.len()];
        match story {
            Some(
                Story::Inside { .. }
                | Story::Twice { .. }
                | Story::Stopped { .. }
                | Story::Within { .. }
                | Story::Traced { .. }
                | Story::TracedAgainst { .. },
            ) => {
                mark(&mut inner, 1..2);
            }
            Some(Story::InsideBoth { .. }) => mark(&mut inner, 1..3),
            Some(Story::InsideAnd { other_first, .. }) => {
                mark(&mut inner, if other_first { 2..3 } else { 1..2 });
            }
            Some(Story::Single(_) | Story::Pair(..) | Story::Triple(..)) | None => {}
        }
        let mut tapes = vec![planned];
        let (mut offset, mut inner_offset) = (0isize, 0isize);
        for (slip, inner) in slips.iter().zip(inner) {
            let mut tape = tapes[tapes.len() - 1].clone();
            if !inner {
                inner_offset = offset;
            }
            let before = tape.turns.len();
            tape.edit(slip, if inner { inner_offset } else { offset });
            let grown = tape.turns.len() as isize - before as isize;
            if inner {
                inner_offset += grown;
            }
            offset += grown;
            tapes.push(tape);
        }
        Self { slips, tapes }
    }
}

fn mark(inner: &mut [bool], range: std::ops::Range<usize>) {
    if let Some(range) = inner.get_mut(range) {
        range.fill(true);
    }
}
