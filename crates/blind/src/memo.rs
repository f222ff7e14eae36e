//! The memo of a whole puzzle: a trace for each kind of piece.

use crate::conventions::{BreakChoice, Conventions, OrbitOrder, first_of_all};
use crate::least_time::cheapest_breaks;
use crate::method::{Costs, Exchange, Method, Parity};
use crate::reason::Chosen;
use crate::trace::{Breaks, Trace};
use cube::{NotProven, Orbit, OrbitMap, Perm, Size, State, Sticker};

/// One trace a kind, in the order in which they are memorised; each proven to solve its kind by exchanging pieces.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Memo {
    parts: Vec<Trace>,
    exchanged: Option<[Sticker; 2]>,
}

/// What a memo is traced by: buffers, where cycles begin, and what is taken for what. No method is needed for it, only a small
/// table of what letters cost where breaks are chosen by that, and the edges that a parity by exchange takes for each other.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Tracing {
    order: OrbitOrder,
    /// Whether corners are carried out before edges.
    corners_first: bool,
    kinds: OrbitMap<KindTracing>,
    exchange: Option<Exchange>,
}

/// How one kind is traced.
#[derive(Clone, PartialEq, Eq, Debug)]
struct KindTracing {
    buffer: Sticker,
    breaks: Breaks,
    /// The times of letters, where cycles are to begin so that the whole takes the least. Of pieces that look alike also their
    /// turns, where these are to be few.
    least: Option<Costs>,
    /// Whether `least` counts turns.
    by_turns: bool,
}

impl Tracing {
    /// What the conventions settle. `method` gives the costs of letters and the edges exchanged; without one breaks by cost are
    /// made in the order of letters, and nothing is exchanged.
    pub fn new(conventions: &Conventions, method: Option<&Method>) -> Self {
        let kinds = OrbitMap::new(|orbit| {
            let kind = conventions.kind(orbit);
            let fewest = conventions.kind(orbit).breaks == BreakChoice::Fewest;
            let by_setups = method.filter(|_| fewest).and_then(|method| method.setup_costs(orbit));
            let by_turns = fewest && orbit.looks_alike();
            let least = match kind.breaks {
                BreakChoice::Least => method.and_then(|method| method.costs(orbit)).cloned(),
                BreakChoice::Fewest if by_turns => method.and_then(|method| method.turns_of_pairs(orbit)),
                BreakChoice::First | BreakChoice::Fewest | BreakChoice::Preference(_) => None,
            };
            KindTracing { buffer: kind.buffer, breaks: conventions.breaks(orbit, by_setups), least, by_turns }
        });
        let exchange = method.and_then(|method| match method.parity_is() {
            Parity::Exchange { exchange, .. } => Some(*exchange),
            Parity::Nothing | Parity::Algorithm { .. } => None,
        });
        let corners_first = conventions.execution_order.is_before(Orbit::Corner, Orbit::Midge);
        Self { order: conventions.memo_order, corners_first, kinds, exchange }
    }

    /// Kinds of a size in the order in which they are memorised.
    pub fn order(&self, size: Size) -> impl Iterator<Item = Orbit> + '_ {
        self.order.of(size)
    }

    /// One kind of a state as it is to be traced: where two edges are taken for each other, with these exchanged.
    pub fn seen(&self, state: &State, orbit: Orbit) -> Perm {
        match &self.exchange {
            Some(exchange) if orbit == Orbit::Midge && corners_are_odd(state) => {
                exchange.traced_as(state.orbit(orbit), self.corners_first)
            }
            _ => *state.orbit(orbit),
        }
    }

    /// Whether two edges are taken for each other where the corners are odd.
    pub const fn exchanges(&self) -> bool {
        self.exchange.is_some()
    }

    /// The edges that are traced as given, where the corners are odd or not: [`Tracing::seen`] undone.
    pub fn untraced(&self, traced: Perm, odd: bool) -> Perm {
        match &self.exchange {
            Some(exchange) if odd => exchange.untraced(&traced, self.corners_first),
            _ => traced,
        }
    }

    /// The two edges that are taken for each other in a state, if any are.
    pub fn exchanged(&self, state: &State) -> Option<[Sticker; 2]> {
        let has_edges = Orbit::of(state.size()).contains(&Orbit::Midge);
        self.exchange.filter(|_| has_edges && corners_are_odd(state)).map(|exchange| exchange.edges)
    }

    /// The stickers of a kind in the order in which the trace prefers them.
    pub fn preference(&self, orbit: Orbit) -> &[Sticker; 24] {
        &self.kinds[orbit].breaks.order
    }

    /// The order in which the cycles of a kind are broken into, where that is all that decides; none where breaks are chosen
    /// by what they cost.
    pub fn order_of_breaks(&self, orbit: Orbit) -> Option<&[Sticker; 24]> {
        let kind = &self.kinds[orbit];
        let by_cost = kind.least.is_some() || (kind.breaks.cost.is_some() && !orbit.looks_alike());
        (!by_cost).then_some(&kind.breaks.order)
    }

    /// How breaks of a kind are chosen, for the reasons.
    pub fn chosen(&self, orbit: Orbit) -> Chosen {
        let kind = &self.kinds[orbit];
        match (&kind.least, &kind.breaks.cost) {
            (Some(_), _) if kind.by_turns => Chosen::Fewest,
            (Some(_), _) => Chosen::Least,
            (None, Some(_)) if !orbit.looks_alike() => Chosen::Fewest,
            (None, _) => Chosen::First,
        }
    }

    /// Traces one kind of a state that is held to be solved.
    ///
    /// # Errors
    /// [`NotProven`] when the letters do not solve the kind, which is a fault of the program.
    pub fn trace(&self, state: &State, orbit: Orbit) -> Result<Trace, NotProven> {
        self.trace_as_seen(orbit, &self.seen(state, orbit), self.kinds[orbit].buffer)
    }

    /// Traces one kind as it was taken to be, from any buffer; usually as [`Tracing::seen`] and from the own one.
    ///
    /// # Errors
    /// [`NotProven`] when the letters do not solve the kind, which is a fault of the program.
    pub fn trace_as_seen(&self, orbit: Orbit, seen: &Perm, buffer: Sticker) -> Result<Trace, NotProven> {
        let kind = &self.kinds[orbit];
        if orbit.looks_alike() {
            let costs = kind.least.as_ref().filter(|_| buffer == kind.buffer);
            let order = &kind.breaks.order;
            return match costs {
                None => Trace::of_alike(orbit, seen, buffer, order, None),
                Some(costs) => {
                    let pair = |first, second| costs.pair(first, second);
                    Trace::of_alike(orbit, seen, buffer, order, Some(&pair))
                }
            };
        }
        match kind.least.as_ref().filter(|_| buffer == kind.buffer) {
            None => Trace::new(orbit, seen, buffer, &kind.breaks),
            Some(costs) => {
                let starts = cheapest_breaks(seen, orbit, buffer, &kind.breaks.order, costs);
                let breaks = Breaks { order: first_of_all(&starts, kind.breaks.order), cost: None };
                Trace::new(orbit, seen, buffer, &breaks)
            }
        }
    }

    /// One kind of a state as it is traced by who takes parity for what it is not: with the two edges exchanged where they are not to
    /// be, or not where they are; nothing where parity is not met in the trace.
    pub fn seen_against_parity(&self, state: &State, orbit: Orbit) -> Option<Perm> {
        let exchange = self.exchange.as_ref().filter(|_| orbit == Orbit::Midge)?;
        let seen = *state.orbit(orbit);
        Some(if corners_are_odd(state) { seen } else { exchange.traced_as(&seen, self.corners_first) })
    }

    /// Traces every kind of a state that is held to be solved (see [`crate::Held`]).
    ///
    /// # Errors
    /// [`NotProven`] when letters do not solve their kind, which is a fault of the program.
    pub fn memo(&self, state: &State) -> Result<Memo, NotProven> {
        let parts =
            self.order(state.size()).map(|orbit| self.trace(state, orbit)).collect::<Result<_, _>>()?;
        Ok(Memo { parts, exchanged: self.exchanged(state) })
    }
}

impl Memo {
    /// One trace a kind, in the order in which they are memorised.
    pub fn parts(&self) -> &[Trace] {
        &self.parts
    }

    /// The trace of a kind.
    pub fn part(&self, orbit: Orbit) -> Option<&Trace> {
        self.parts.iter().find(|trace| trace.orbit() == orbit)
    }

    /// The letters of each kind by their targets.
    pub fn targets(&self) -> Vec<(Orbit, Vec<Sticker>)> {
        self.parts.iter().map(|trace| (trace.orbit(), trace.targets())).collect()
    }

    /// How many letters there are in all.
    pub fn letters(&self) -> usize {
        self.parts.iter().map(Trace::len).sum()
    }

    /// Kinds whose pieces are told apart and have an odd number of letters: their exchange is left over or was foreseen. On a
    /// 3x3 corners and edges agree, unless two edges were taken for each other; wings of each depth are free. Pieces that look
    /// alike have no parity, only an odd number of letters ([`Trace::is_odd`]).
    pub fn parity(&self) -> impl Iterator<Item = Orbit> + '_ {
        self.parts.iter().filter(|trace| trace.is_odd() && !trace.orbit().looks_alike()).map(Trace::orbit)
    }

    /// Whether a kind whose pieces are told apart has an odd number of letters.
    pub fn is_odd(&self) -> bool {
        self.parity().next().is_some()
    }

    /// The two edges that were taken for each other in the trace, since the corners' last letter exchanges them.
    pub const fn exchanged(&self) -> Option<[Sticker; 2]> {
        self.exchanged
    }
}

/// Whether the corners are oddly arranged: then every memo of them has an odd number of letters. Exchanging two corners
/// exchanges three pairs of stickers, and turning one moves three stickers round, so stickers are as odd as pieces.
fn corners_are_odd(state: &State) -> bool {
    state.orbit(Orbit::Corner).is_odd()
}
