//! Why no state meets a condition.

use super::space::Lying;
use super::{Tables, each_combination, tables, truth};
use crate::condition::{Against, Clause, Condition, Feature, Occurs, Relation, Term, Wanted};
use blind::{Solver, kind_name};
use cube::{Orbit, Sticker};
use std::fmt;
use std::ops::Range;
use thiserror::Error;

/// That no state meets a condition.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
#[error("no state meets this: {}: {why}", .parts.join(" and "))]
pub struct Unsatisfiable {
    /// The parts that cannot hold together; without any one of them there would be states.
    pub parts: Vec<String>,
    /// Which characters of the condition they take, from 0.
    pub spans: Vec<Range<usize>>,
    /// Why they cannot.
    pub why: Why,
}

/// Why parts of a condition cannot hold together.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Why {
    /// Corners and edges have an odd number of letters both or neither.
    Parity,
    /// The turnings of a kind's pieces add up to nothing.
    Turning(Orbit),
    /// Several of these together: parity, and turnings of kinds.
    ParityAndTurning,
    /// The piece of the buffer is never memorised.
    OfBuffer {
        /// The kind.
        orbit: Orbit,
        /// What was asked for.
        sticker: Sticker,
    },
    /// A scramble of an even cube leaves one corner in its place; with every way of lying there would be states.
    OneCornerStays,
    /// A feature never has such a value.
    OutOfRange {
        /// The feature.
        feature: Feature,
        /// Its smallest value.
        least: u8,
        /// Its largest value.
        most: u8,
    },
    /// The parts contradict each other, or there are too few pieces for all of them.
    Contradiction,
}

impl fmt::Display for Why {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Parity => f.write_str("corners and edges agree in parity"),
            Self::Turning(Orbit::Corner) => f.write_str("the twists of all corners add up to whole turns"),
            Self::Turning(orbit) => write!(f, "an even number of {}s is flipped", kind_name(*orbit)),
            Self::ParityAndTurning => {
                f.write_str("corners and edges agree in parity, twists add up to whole turns, flips are even")
            }
            Self::OfBuffer { orbit, sticker } => {
                write!(f, "{} is of the buffer's piece, which is never memorised", orbit.name(*sticker))
            }
            Self::OneCornerStays => f.write_str("a scramble of an even cube leaves one corner in its place"),
            Self::OutOfRange { feature, least, most } => write!(f, "{feature} goes from {least} to {most}"),
            Self::Contradiction => f.write_str("they contradict each other, or there are too few pieces"),
        }
    }
}

/// What is asked, with some laws of the puzzle left out.
struct Relaxed<'a> {
    lying: Lying,
    solver: &'a Solver,
}

impl Relaxed<'_> {
    fn tables(&self, condition: &Condition, lying: Lying, sum_free: &[Orbit]) -> Tables {
        tables(condition, lying, self.solver, sum_free)
    }

    /// Whether there may be states if parity need not agree and the turnings of some kinds need not add up.
    fn satisfiable(
        &self,
        condition: &Condition,
        lying: Lying,
        parity_free: bool,
        sum_free: &[Orbit],
    ) -> bool {
        let tables = self.tables(condition, lying, sum_free);
        let mut found = false;
        each_combination(&tables, self.solver, parity_free, &mut |rows, _| {
            found = found || truth(condition, &tables, rows) != Some(false);
        });
        found
    }
}

/// Finds the fewest parts that cannot hold together, and the law that they run against.
pub(super) fn find(condition: &Condition, lying: Lying, solver: &Solver) -> Unsatisfiable {
    let relaxed = Relaxed { lying, solver };
    let mut parts = condition.parts().to_vec();
    let mut at = 0;
    while at < parts.len() {
        let mut fewer = parts.clone();
        fewer.remove(at);
        if relaxed.satisfiable(&condition.of_parts(fewer.clone()), lying, false, &[]) {
            at += 1;
        } else {
            parts = fewer;
        }
    }
    let why = relaxed.why(&condition.of_parts(parts.clone()), &parts);
    Unsatisfiable {
        parts: parts.iter().map(ToString::to_string).collect(),
        spans: parts.into_iter().map(|part| part.span).collect(),
        why,
    }
}

impl Relaxed<'_> {
    fn why(&self, condition: &Condition, parts: &[Clause]) -> Why {
        if let [Clause { term: Term::Occurs(test), .. }] = parts
            && let Some(sticker) = self.of_buffer(test)
        {
            return Why::OfBuffer { orbit: test.orbit, sticker };
        }
        let kinds = Orbit::of(condition.size());
        if kinds.len() > 1 && self.satisfiable(condition, self.lying, true, &[]) {
            return Why::Parity;
        }
        for &orbit in kinds {
            if self.satisfiable(condition, self.lying, false, &[orbit]) {
                return Why::Turning(orbit);
            }
        }
        if !condition.size().is_odd()
            && self.lying == Lying::Scrambled
            && self.satisfiable(condition, Lying::Anyhow, false, &[])
        {
            return Why::OneCornerStays;
        }
        if self.satisfiable(condition, self.lying, true, kinds) {
            return Why::ParityAndTurning;
        }
        self.out_of_range(condition, parts).unwrap_or(Why::Contradiction)
    }

    /// A sticker of the buffer's piece, if all that is asked for has one.
    fn of_buffer(&self, test: &Occurs) -> Option<Sticker> {
        let buffer = self.solver.conventions().kind(test.orbit).buffer;
        let is = |sticker: &Sticker| test.orbit.piece(*sticker) == test.orbit.piece(buffer);
        let found = |wanted: &Wanted| match *wanted {
            Wanted::Target(target) => Some(target).filter(is),
            Wanted::Pair(first, second) => [first, second].into_iter().find(is),
        };
        let all: Option<Vec<Sticker>> = test.any.iter().map(found).collect();
        all.and_then(|all| all.first().copied())
    }

    fn out_of_range(&self, condition: &Condition, parts: &[Clause]) -> Option<Why> {
        let [Clause { term: Term::Compare(feature, _, Against::Number(_) | Against::Within(..)), .. }] =
            parts
        else {
            return None;
        };
        if !feature.words().is_empty() {
            return None;
        }
        let tables = self.tables(condition, self.lying, &[]);
        let reaches = |value: u8| {
            let term = Term::Compare(*feature, Relation::Equal, Against::Number(value));
            let single = condition.of_parts(vec![Clause { term, span: 0..0 }]);
            let mut found = false;
            each_combination(&tables, self.solver, false, &mut |rows, _| {
                found = found || truth(&single, &tables, rows) == Some(true);
            });
            found
        };
        let least = (0..100).find(|&value| reaches(value))?;
        let most = (0..100).rev().find(|&value| reaches(value))?;
        Some(Why::OutOfRange { feature: *feature, least, most })
    }
}
