//! The memo of a whole puzzle: a trace for each kind of piece.

use crate::conventions::{BreakChoice, Conventions};
use crate::method::{Method, Parity, corners_are_odd};
use crate::plan::cheapest_breaks;
use crate::swap::Swap;
use crate::trace::{Breaks, Trace};
use cube::{Orbit, State, Sticker};

/// One trace a kind, in the order in which they are memorised.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Memo {
    parts: Vec<Trace>,
    exchanged: Option<[Sticker; 2]>,
}

impl Memo {
    /// Traces every kind of a state that is held to be solved (see [`crate::hold`]).
    pub fn new(state: &State, conventions: &Conventions, method: &Method) -> Self {
        let kinds = Orbit::of(state.size());
        let parts = conventions
            .memo_order
            .iter()
            .filter(|orbit| kinds.contains(orbit))
            .map(|&orbit| Self::trace(state, orbit, conventions, method))
            .collect();
        let exchanged = match method.parity_is() {
            Parity::Exchange(edges) if corners_are_odd(state) => Some(*edges),
            _ => None,
        };
        Self { parts, exchanged }
    }

    fn trace(state: &State, orbit: Orbit, conventions: &Conventions, method: &Method) -> Trace {
        let seen = method.traced_as(state, orbit, conventions);
        let buffer = conventions.kind(orbit).buffer;
        let costs = || method.swap(orbit).map_or([0; 24], Swap::costs);
        let mut breaks = conventions.breaks(orbit, costs);
        if conventions.kind(orbit).breaks == BreakChoice::Least
            && let Some(costs) = method.costs(orbit)
        {
            let starts = cheapest_breaks(&seen, orbit, buffer, &breaks.order, costs);
            breaks = Breaks { order: first_of_all(&starts, breaks.order), cost: None };
        }
        Trace::new(orbit, &seen, buffer, &breaks)
    }

    /// One trace a kind, in the order in which they are memorised.
    pub fn parts(&self) -> &[Trace] {
        &self.parts
    }

    /// The trace of a kind.
    pub fn part(&self, orbit: Orbit) -> Option<&Trace> {
        self.parts.iter().find(|trace| trace.orbit() == orbit)
    }

    /// How many letters there are in all.
    pub fn letters(&self) -> usize {
        self.parts.iter().map(Trace::len).sum()
    }

    /// Whether a kind has an odd number of letters. On a 3x3 corners and edges agree, unless two edges were taken for
    /// each other.
    pub fn is_odd(&self) -> bool {
        self.parts.iter().any(Trace::is_odd)
    }

    /// The two edges that were taken for each other in the trace, since the corners' last letter exchanges them.
    pub const fn exchanged(&self) -> Option<[Sticker; 2]> {
        self.exchanged
    }
}

/// Some stickers first, the others after them as they were.
fn first_of_all(first: &[Sticker], order: [Sticker; 24]) -> [Sticker; 24] {
    let mut new = order;
    let rest = order.into_iter().filter(|sticker| !first.contains(sticker));
    for (slot, sticker) in new.iter_mut().zip(first.iter().copied().chain(rest)) {
        *slot = sticker;
    }
    new
}
