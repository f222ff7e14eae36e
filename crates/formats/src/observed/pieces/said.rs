//! What is said of pieces: flipped, twisted, swapped, in a cycle, wrong.

use super::super::ObservedError;
use super::super::words::{Mark, Meaning};
use super::{Named, Reader, after};
use cube::Orbit;
use diagnosis::Seen;

/// What is said of pieces in a list.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(super) struct Said {
    pub(super) column: usize,
    /// As it was written.
    pub(super) words: String,
    pub(super) what: What,
}

#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) enum What {
    Unsolved,
    Swapped,
    Cycle,
    Flipped,
    /// One or the other way where it was said.
    Twisted(Option<u8>),
    Turned,
}

impl Reader<'_> {
    /// Whether something is said there of pieces.
    pub(super) fn says(&self, at: usize) -> bool {
        matches!(
            self.meaning(at),
            Some(
                Meaning::Swapped
                    | Meaning::Cycle
                    | Meaning::Flipped
                    | Meaning::Twisted
                    | Meaning::Turned
                    | Meaning::Clockwise
                    | Meaning::Against
                    | Meaning::Counter
                    | Meaning::Unsolved
            )
        )
    }

    /// What is said of the pieces before it, or of those behind it where there are none.
    pub(super) fn said(&mut self) -> Result<(), ObservedError> {
        let (from, column) = (self.at, self.column(self.at));
        let mut what: Option<What> = None;
        let (mut direction, mut against) = (None, false);
        loop {
            let next = match (self.meaning(self.at), self.meaning(self.at + 1)) {
                (Some(Meaning::Filler), _) if self.says(self.skip(self.at)) => None,
                (Some(Meaning::Clockwise), _) => {
                    direction = Some(if against { 2 } else { 1 });
                    None
                }
                (Some(Meaning::Counter), _) => {
                    direction = Some(2);
                    None
                }
                (Some(Meaning::Against), _) => {
                    against = true;
                    None
                }
                (Some(Meaning::Not), Some(Meaning::Solved)) => {
                    self.at += 1;
                    Some(What::Unsolved)
                }
                (Some(Meaning::Unsolved), _) => Some(What::Unsolved),
                (Some(Meaning::Swapped), _) => Some(What::Swapped),
                (Some(Meaning::Cycle), _) => Some(What::Cycle),
                (Some(Meaning::Flipped), _) => Some(What::Flipped),
                (Some(Meaning::Twisted), _) => Some(What::Twisted(None)),
                (Some(Meaning::Turned), _) => Some(What::Turned),
                _ => break,
            };
            self.at += 1;
            if let Some(next) = next {
                // One thing is said at a time; what comes next is said of others.
                if what.is_some_and(|what| what != next) {
                    self.at -= 1;
                    break;
                }
                what = Some(next);
            }
        }
        let words = self.written(from..self.at.max(from + 1));
        let what = match (what, direction) {
            (None | Some(What::Twisted(_) | What::Turned), Some(steps)) => What::Twisted(Some(steps)),
            (Some(what), None) if !against => what,
            _ => {
                self.at = from;
                return Err(self.unknown(column, &words));
            }
        };
        let said = Said { column, words, what };
        let needs_more = matches!(what, What::Swapped | What::Cycle) && self.run().len() < 2;
        if self.list.is_empty() || needs_more {
            // Behind a cycle nothing more is said by calling it one.
            let called = matches!(what, What::Swapped | What::Cycle)
                && self.list.is_empty()
                && matches!(self.seen.last(), Some(Seen::Cycle { .. }))
                && from > 0
                && !matches!(self.mark(from - 1), Some(Mark::Stop | Mark::Comma));
            if called {
                return Ok(());
            }
            if self.list.is_empty()
                && let Some(Seen::Cycle { .. }) = self.seen.last()
                && from > 0
                && matches!(self.mark(from - 1), Some(Mark::Word(_)))
            {
                return Err(self.unknown(column, &said.words));
            }
            if let Some(before) = self.before.take().filter(|_| self.list.is_empty()) {
                return Err(ObservedError::NoSticker { column: before.column, found: before.words });
            }
            self.before = Some(said);
            return Ok(());
        }
        self.apply(&said)
    }

    /// The pieces at the end of the list that are of one kind: of them something is said.
    fn run(&self) -> &[Named] {
        let same = |named: &&Named| self.list.last().is_some_and(|last| last.orbit == named.orbit);
        let count = self.list.iter().rev().take_while(same).count();
        &self.list[self.list.len() - count..]
    }

    pub(super) fn apply(&mut self, said: &Said) -> Result<(), ObservedError> {
        let run = self.run().to_vec();
        let rest: Vec<Named> = self.list.drain(..).collect();
        self.unsolved(&rest[..rest.len() - run.len()])?;
        let Some(&last) = run.last() else { return Ok(()) };
        let wrong = || ObservedError::NoWord {
            column: said.column,
            found: said.words.clone(),
            piece: last.orbit.piece_name(last.sticker).to_owned(),
            expected: after(last.orbit),
        };
        let count = run.len();
        let not_two = |cycle: bool| ObservedError::NotTwo {
            column: said.column,
            found: said.words.clone(),
            count,
            cycle,
        };
        let clockwise = match (said.what, last.orbit) {
            (What::Unsolved, _) => return self.unsolved(&run),
            (What::Swapped, _) if count != 2 => return Err(not_two(false)),
            (What::Cycle, _) if count < 2 => return Err(not_two(true)),
            (What::Swapped | What::Cycle, _) => {
                for (at, one) in run.iter().enumerate() {
                    let found = one.orbit.name(one.sticker).to_owned();
                    Self::goes_on(&run[..at], *one, true, found)?;
                }
                return self.cycle(&run, false);
            }
            (What::Flipped | What::Turned | What::Twisted(None), Orbit::Midge) => Some(1),
            (What::Turned | What::Twisted(None), Orbit::Corner) => None,
            (What::Twisted(Some(steps)), Orbit::Corner) => Some(steps),
            _ => return Err(wrong()),
        };
        self.name_all(&run)?;
        self.seen.extend(run.iter().map(|one| Seen::Turned {
            orbit: one.orbit,
            sticker: one.sticker,
            clockwise,
        }));
        Ok(())
    }

    pub(super) fn unsolved(&mut self, list: &[Named]) -> Result<(), ObservedError> {
        self.name_all(list)?;
        self.seen.extend(list.iter().map(|one| Seen::Unsolved { orbit: one.orbit, sticker: one.sticker }));
        Ok(())
    }
}
