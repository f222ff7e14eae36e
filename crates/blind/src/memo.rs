//! The memo of a whole puzzle: one trace a kind.

use crate::conventions::Conventions;
use crate::method::Method;
use crate::swap::Swap;
use crate::trace::Trace;
use cube::{Orbit, State};

/// The traces of all kinds of a puzzle, in the order in which they are memorised.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Memo {
    parts: Vec<Trace>,
}

impl Memo {
    /// Traces every kind of a state that is held to be solved (see [`crate::hold`]).
    pub fn new(state: &State, conventions: &Conventions, method: &Method) -> Self {
        let kinds = Orbit::of(state.size());
        let parts = conventions
            .memo_order
            .iter()
            .filter(|orbit| kinds.contains(orbit))
            .map(|&orbit| {
                let costs = || method.swap(orbit).map_or([0; 24], Swap::costs);
                let breaks = conventions.breaks(orbit, costs);
                Trace::new(orbit, state.orbit(orbit), conventions.kind(orbit).buffer, &breaks)
            })
            .collect();
        Self { parts }
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

    /// Whether every kind has an odd number of letters. On a 3x3 corners and edges always agree.
    pub fn is_odd(&self) -> bool {
        self.parts.first().is_some_and(Trace::is_odd)
    }
}
