//! What is said of whole kinds: how many are unsolved, which were looked at, that nothing else is wrong.

use super::super::words::{Mark, Meaning, small};
use super::super::{Expected, ObservedError};
use super::{Reader, sticker};
use crate::observed::words::meaning;
use blind::kind_name;
use cube::Orbit;
use diagnosis::Seen;

impl Reader<'_> {
    /// How many of a kind are unsolved.
    pub(super) fn count(&mut self) -> Result<(), ObservedError> {
        let (at, column) = (self.at, self.column(self.at));
        self.end()?;
        let next = self.after_unsolved(at + 1);
        let (Some(Meaning::Number(count)), Some(Meaning::Kind(orbit))) =
            (self.meaning(at), self.meaning(next))
        else {
            let end = (at + 2).min(self.tokens.len());
            return Err(ObservedError::NoCount { column, found: self.written(at..end) });
        };
        self.counted(column, orbit, count)?;
        self.at = next + 1;
        self.after_count(at)
    }

    /// A count says that so many are unsolved; how, is said of pieces that are named.
    fn after_count(&mut self, from: usize) -> Result<(), ObservedError> {
        self.at = self.after_unsolved(self.at);
        if self.says(self.at) {
            let (column, found) = (self.column(self.at), self.written(self.at..self.at + 1));
            let piece = self.written(from..self.at);
            return Err(ObservedError::NoWord { column, found, piece, expected: Expected::Unsolved });
        }
        Ok(())
    }

    fn after_unsolved(&self, mut at: usize) -> usize {
        loop {
            match (self.meaning(at), self.meaning(at + 1)) {
                (Some(Meaning::Filler | Meaning::Unsolved), _) => at += 1,
                (Some(Meaning::Not), Some(Meaning::Solved)) => at += 2,
                _ => return at,
            }
        }
    }

    fn counted(&mut self, column: usize, orbit: Orbit, count: usize) -> Result<(), ObservedError> {
        if count > orbit.pieces() as usize {
            return Err(ObservedError::TooMany { column, most: orbit.pieces(), orbit });
        }
        if self.seen.iter().any(|seen| seen.orbit() == Some(orbit)) {
            return Err(ObservedError::Twice { column, piece: kind_name(orbit) });
        }
        self.seen.push(Seen::Count { orbit, count });
        Ok(())
    }

    /// A kind: with an article a count of one, behind a piece what that is, else what is spoken of from here on.
    pub(super) fn kind(&mut self, orbit: Orbit) -> Result<(), ObservedError> {
        let (at, column) = (self.at, self.column(self.at));
        let next = self.skip(at + 1);
        let not_looked = match (self.meaning(next), self.meaning(next + 1)) {
            (Some(Meaning::Not), Some(Meaning::Looked)) => Some(next + 2),
            (Some(Meaning::Unknown), _) => Some(next + 1),
            _ if self.mark(next) == Some(&Mark::Query) => Some(next + 1),
            _ if self.mark(next) == Some(&Mark::Colon) && self.mark(next + 1) == Some(&Mark::Query) => {
                Some(next + 2)
            }
            _ => None,
        };
        if let Some(after) = not_looked {
            self.end()?;
            self.unlooked.push((column, orbit));
            self.at = self.skip(after);
            return Ok(());
        }
        let right = self.meaning(next) == Some(Meaning::Solved);
        let behind = at > 0
            && self.list.last().is_some()
            && matches!(self.mark(at - 1), Some(Mark::Word(_)))
            && self.meaning(at - 1).is_none()
            && self.mark(at + 1) != Some(&Mark::Colon)
            && self.heading.is_none_or(|heading| heading == orbit);
        if behind && let Some(last) = self.list.last() {
            if last.orbit != orbit {
                let found = last.orbit.name(last.sticker).to_owned();
                return Err(ObservedError::OtherKind { column: last.column, found, orbit });
            }
            self.at += 1;
            return Ok(());
        }
        self.end()?;
        if right {
            self.right.push((column, orbit));
            self.at = next + 1;
            return Ok(());
        }
        let article = at.checked_sub(1).is_some_and(|before| self.meaning(before) == Some(Meaning::Article));
        let names = matches!(self.mark(at + 1), Some(Mark::Word(word)) if sticker(word).is_some() || self.is_letter(orbit, word));
        if article && self.mark(at + 1) != Some(&Mark::Colon) && !names {
            self.counted(column, orbit, 1)?;
            self.at += 1;
            return self.after_count(at);
        }
        self.heading = Some(orbit);
        self.at += 1;
        if self.meaning(self.skip(self.at)) == Some(Meaning::Only) {
            self.only.push((column, orbit));
            self.at = self.skip(self.at) + 1;
        }
        if self.mark(self.at) == Some(&Mark::Colon) {
            self.at += 1;
        }
        Ok(())
    }

    fn is_letter(&self, orbit: Orbit, word: &str) -> bool {
        meaning(word).is_none() && self.reading.conventions.kind(orbit).letters.sticker(word).is_some()
    }

    /// Only a kind, the other not looked at; or only these pieces, nothing else.
    pub(super) fn only(&mut self) {
        let column = self.column(self.at);
        let next = self.skip(self.at + 1);
        self.at += 1;
        match self.meaning(next) {
            Some(Meaning::Kind(orbit)) => self.only.push((column, orbit)),
            _ => self.nothing_else = true,
        }
    }

    /// Something about all others: "nothing else", "no other piece", "the rest is solved", "the rest was not looked at".
    pub(super) fn rest(&mut self) -> Result<(), ObservedError> {
        let (at, column) = (self.at, self.column(self.at));
        let before = at.checked_sub(1).and_then(|before| self.mark(before));
        if matches!(before, Some(Mark::Word(word)) if small(word) == "each") {
            self.at += 1;
            return Ok(());
        }
        let next = self.skip(at + 1);
        let after = match (self.meaning(at), self.meaning(next), self.meaning(next + 1)) {
            (Some(Meaning::Nothing), Some(Meaning::Rest), _)
            | (Some(Meaning::Rest), Some(Meaning::Nothing), _) => {
                self.nothing_else = true;
                let after = self.skip(next + 1);
                after + usize::from(self.meaning(after) == Some(Meaning::Unsolved))
            }
            (Some(Meaning::Nothing), Some(Meaning::Kind(orbit)), _) => {
                self.right.push((column, orbit));
                next + 1
            }
            (Some(Meaning::Rest), Some(Meaning::Solved), _) => {
                self.nothing_else = true;
                next + 1
            }
            (Some(Meaning::Rest), Some(Meaning::Unknown), _) => {
                self.rest_unlooked = true;
                next + 1
            }
            (Some(Meaning::Rest), Some(Meaning::Not), Some(Meaning::Looked)) => {
                self.rest_unlooked = true;
                next + 2
            }
            _ => return Err(self.unknown(column, &self.written(at..at + 1))),
        };
        self.end()?;
        self.at = self.skip(after);
        Ok(())
    }
}
