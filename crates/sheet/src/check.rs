//! What every row of a sheet really does.

use super::{CycleCase, Row, SIZE, Sheet, size_of};
use blind::moved_pieces;
use cube::{Algorithm, Orbit, OrbitMap, ParseError, Rotation, State, Sticker, plain_sign};

/// What was found out about a row.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Verdict {
    /// It does what it says.
    Right,
    /// There is no algorithm.
    Empty,
    /// It solves another case of the buffer.
    OtherCase(CycleCase),
    /// It solves the case with its two letters exchanged.
    Inverse,
    /// It is a three-cycle of the kind, but without the buffer: these pieces go round.
    WithoutBuffer([Sticker; 3]),
    /// It is a three-cycle of another kind: these pieces go round.
    OtherKind(Orbit, [Sticker; 3]),
    /// It would be right, but the whole cube is turned in the end.
    LeavesTurned(Rotation),
    /// It does something else: which pieces it moves, by kind and reference stickers, and how the cube is turned.
    NotAThreeCycle {
        /// The pieces.
        moved: Vec<(Orbit, Sticker)>,
        /// How the cube is turned in the end.
        turned: Rotation,
    },
    /// It does nothing.
    DoesNothing,
    /// The algorithm cannot be read; where and why.
    Unreadable(ParseError),
    /// It has more than [`MOST_TURNS`] turns, so many.
    TooLong(usize),
    /// The case cannot be read: no such targets, or two on one piece.
    NoCase,
}

/// What was found out about all rows.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Report {
    /// One verdict a row, in their order.
    pub verdicts: Vec<Verdict>,
}

/// A mistake that most rows of a sheet share, and so is one mistake and not many.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Pattern {
    /// The two letters stand in the other order.
    Exchanged,
    /// The algorithms are for another buffer.
    OtherBuffer,
    /// The algorithms are for another kind of piece.
    OtherKind,
    /// The cases cannot be read.
    NoCases,
}

/// Fewer rows than these make no pattern.
const FEW: usize = 3;

impl Report {
    /// The mistake that more than half of the rows with an algorithm share.
    pub fn pattern(&self) -> Option<Pattern> {
        let rows = self.verdicts.iter().filter(|verdict| **verdict != Verdict::Empty).count();
        let of = |verdict: &Verdict| match verdict {
            Verdict::Inverse => Some(Pattern::Exchanged),
            Verdict::WithoutBuffer(_) => Some(Pattern::OtherBuffer),
            Verdict::OtherKind(..) => Some(Pattern::OtherKind),
            Verdict::NoCase => Some(Pattern::NoCases),
            _ => None,
        };
        let patterns = [Pattern::Exchanged, Pattern::OtherBuffer, Pattern::OtherKind, Pattern::NoCases];
        patterns.into_iter().find(|&pattern| {
            let count = self.verdicts.iter().filter(|verdict| of(verdict) == Some(pattern)).count();
            count >= FEW && count * 2 > rows
        })
    }

    /// How many rows are right.
    pub fn right(&self) -> usize {
        self.verdicts.iter().filter(|verdict| **verdict == Verdict::Right).count()
    }

    /// Rows that are neither right nor empty, by number from 0.
    pub fn wrong(&self) -> impl Iterator<Item = usize> {
        let good = |verdict: &Verdict| matches!(verdict, Verdict::Right | Verdict::Empty);
        self.verdicts.iter().enumerate().filter(move |(_, verdict)| !good(verdict)).map(|(row, _)| row)
    }
}

/// The stickers that a state takes round, if it does nothing but a three-cycle of a kind, from `from` or the first on.
pub(super) fn ring(state: &State, orbit: Orbit, from: Option<Sticker>) -> Option<[Sticker; 3]> {
    let others = Orbit::of(state.size()).iter().filter(|&&other| other != orbit);
    if state.core() != Rotation::NONE || others.into_iter().any(|&other| !state.orbit(other).is_identity()) {
        return None;
    }
    let moved = moved_pieces(state, orbit);
    let &[start, _, _] = moved.as_slice() else { return None };
    let buffer = from.filter(|&buffer| state.at(orbit, buffer) != buffer).unwrap_or(start);
    let goes = state.orbit(orbit).inverse();
    let [first, second] = [goes.at(buffer), goes.at(goes.at(buffer))];
    let pieces = [buffer, first, second].map(|sticker| orbit.piece(sticker));
    let apart = pieces[0] != pieces[1] && pieces[1] != pieces[2] && pieces[0] != pieces[2];
    (apart && goes.at(second) == buffer).then_some([buffer, first, second])
}

/// The most turns that an algorithm of a sheet may have. The longest three-cycle with its set-ups undone has fewer than fifty.
pub const MOST_TURNS: usize = 500;

/// Whether a cell has an algorithm at all: people fill empty cells with dashes and the like.
fn is_empty(algorithm: &str) -> bool {
    let fills =
        |sign: char| sign.is_whitespace() || "-–—‐‑‒―−_./\\|*+=~#?!,;:•·…×✕✗".contains(plain_sign(sign));
    algorithm.chars().all(fills)
}

/// Whether a cell has a cross, as people put where both targets are on one piece.
fn is_cross(algorithm: &str) -> bool {
    let mut signs = algorithm.trim().chars();
    matches!((signs.next().map(plain_sign), signs.next()), (Some('x' | 'X'), None))
}

/// The kind of piece that most of some algorithms cycle; none where none cycles any, or two are as often.
pub fn kind_cycled(algorithms: impl Iterator<Item = Algorithm>) -> Option<Orbit> {
    let mut counts: OrbitMap<usize> = OrbitMap::default();
    for algorithm in algorithms {
        let state = State::solved(SIZE).after(&algorithm.flatten());
        for &orbit in Orbit::of(SIZE) {
            counts[orbit] += usize::from(ring(&state, orbit, None).is_some());
        }
    }
    let most = Orbit::of(SIZE).iter().copied().max_by_key(|&orbit| counts[orbit])?;
    let alone = Orbit::of(SIZE).iter().all(|&other| other == most || counts[other] < counts[most]);
    alone.then_some(most)
}

/// What an algorithm does, measured against the case it is meant for.
///
/// ```
/// use sheet::{CycleCase, Verdict, verdict_of};
/// use cube::Orbit;
/// let corner = |name| Orbit::Corner.sticker(name).unwrap();
/// let case = CycleCase { orbit: Orbit::Corner, buffer: corner("UFR"), first: corner("UBR"), second: corner("RDF") };
/// assert_eq!(verdict_of(case, "[R' D' R, U]"), Verdict::Right);
/// assert_eq!(verdict_of(case, "[U, R' D' R]"), Verdict::Inverse);
/// assert!(matches!(verdict_of(case, "[R' D' R, U"), Verdict::Unreadable(_)));
/// ```
pub fn verdict_of(case: CycleCase, algorithm: &str) -> Verdict {
    if is_empty(algorithm) {
        return Verdict::Empty;
    }
    let size = size_of(case.orbit);
    match Algorithm::parse(algorithm, size) {
        Err(error) => Verdict::Unreadable(error),
        Ok(read) if read.len() > MOST_TURNS => Verdict::TooLong(read.len()),
        Ok(read) => verdict(case, &State::solved(size).after(&read.flatten())),
    }
}

fn verdict(case: CycleCase, state: &State) -> Verdict {
    let found = |state: &State| {
        ring(state, case.orbit, Some(case.buffer)).map(|[buffer, first, second]| {
            if buffer == case.buffer {
                Ok(CycleCase { first, second, ..case })
            } else {
                Err([buffer, first, second])
            }
        })
    };
    match found(state) {
        Some(Ok(actual)) if actual == case => return Verdict::Right,
        Some(Ok(actual)) if actual == case.inverse() => return Verdict::Inverse,
        Some(Ok(actual)) => return Verdict::OtherCase(actual),
        Some(Err(pieces)) => return Verdict::WithoutBuffer(pieces),
        None => {}
    }
    let core = state.core();
    if core != Rotation::NONE {
        let undone = state.after(core.inverse().turns());
        if found(&undone) == Some(Ok(case)) {
            return Verdict::LeavesTurned(core);
        }
    }
    if state.is_solved() && core == Rotation::NONE {
        return Verdict::DoesNothing;
    }
    for &orbit in Orbit::of(state.size()).iter().filter(|&&orbit| orbit != case.orbit) {
        if let Some(pieces) = ring(state, orbit, None) {
            return Verdict::OtherKind(orbit, pieces);
        }
    }
    let held = state.after(core.inverse().turns());
    let moved = Orbit::of(state.size())
        .iter()
        .flat_map(|&orbit| moved_pieces(&held, orbit).into_iter().map(move |sticker| (orbit, sticker)))
        .collect();
    Verdict::NotAThreeCycle { moved, turned: core }
}

impl Row {
    /// What the row really does.
    pub fn verdict(&self) -> Verdict {
        match self.case {
            Some(case) => verdict_of(case, &self.algorithm),
            None if is_empty(&self.algorithm) || is_cross(&self.algorithm) => Verdict::Empty,
            None => Verdict::NoCase,
        }
    }
}

impl Sheet {
    /// Applies every algorithm and accounts for every row.
    pub fn check(&self) -> Report {
        Report { verdicts: self.rows().iter().map(Row::verdict).collect() }
    }
}
