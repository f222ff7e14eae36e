//! Methods: what carries out the letters of each kind, and what is done about parity.

mod cycles;
mod pairing;
mod slice;

pub use cycles::{Case, Cycles, letters_effect, letters_state};
pub(crate) use pairing::NONE;
pub use pairing::{Costs, Group};
pub use slice::{SliceLetter, SliceSwap};

use crate::conventions::{BreakChoice, Conventions, ParityChoice};
use crate::cycle_case::CycleAlgorithm;
use crate::kind::kind_name;
use crate::swap::{Swap, SwapEffect, SwapError};
use crate::usual::{MethodName, usual, usual_parity};
use cube::{
    Algorithm, NoSuchTurn, NotProven, Orbit, OrbitMap, Perm, Rotation, Size, State, Sticker, Turn, inverted,
};
use search::conjugate::{Conjugates, Sort};
use search::ease::Model;
use search::solve3::{Limit, solve};
use thiserror::Error;

/// Why a method cannot be used on a puzzle.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum MethodError {
    /// The algorithm of a kind cannot be made on this size.
    #[error("the {} algorithm cannot be made on a {size}: {error}", kind_name(*.orbit))]
    CannotBeMade {
        /// The kind.
        orbit: Orbit,
        /// The size.
        size: Size,
        /// Why.
        error: NoSuchTurn,
    },
    /// The algorithm of a kind is not the swap that it should be.
    #[error("the {} algorithm: {error}", kind_name(*.orbit))]
    NoSwap {
        /// The kind.
        orbit: Orbit,
        /// Why.
        error: SwapError,
    },
    /// No set-up was found for a target.
    #[error("no set-up brings {} to the swap", .orbit.name(*.target))]
    NoSetup {
        /// The kind.
        orbit: Orbit,
        /// The target.
        target: Sticker,
    },
    /// The parity algorithm does not put right what an odd number of swaps leaves behind.
    #[error("the parity algorithm does not put right what an odd number of swaps leaves exchanged")]
    ParityDoesNotFit {
        /// What is left exchanged and must be exchanged back, by kind and reference stickers.
        wanted: Vec<(Orbit, Sticker)>,
        /// What the algorithm moves instead.
        moved: Vec<(Orbit, Sticker)>,
    },
    /// Slice-swap leaves the slice half-turned after an odd number of letters, which no algorithm between the kinds puts right
    /// beforehand.
    #[error("with a parity algorithm, slice-swap edges are carried out first")]
    SliceNotFirst,
    /// Slice-swap is for edges.
    #[error("slice-swap is a method for edges, not for {}s", kind_name(*.0))]
    NotForKind(Orbit),
    /// The parity algorithm cannot be made on this size.
    #[error("the parity algorithm cannot be made on a {size}: {error}")]
    ParityCannotBeMade {
        /// The size.
        size: Size,
        /// Why.
        error: NoSuchTurn,
    },
    /// An algorithm of a method does not do what it has to. That is a fault of the program.
    #[error(transparent)]
    NotProven(#[from] NotProven),
    /// Parity by exchanging two edges in the trace needs a corner algorithm that exchanges two edges.
    #[error("the corner algorithm exchanges no two edges, so none can be exchanged in the trace")]
    NoExchange,
    /// Neither the sheet nor the search has an algorithm for two letters.
    #[error("there is no algorithm for {}, {}", .orbit.name(*.first), .orbit.name(*.second))]
    NoCase {
        /// The kind.
        orbit: Orbit,
        /// The first letter's sticker.
        first: Sticker,
        /// The second letter's sticker.
        second: Sticker,
    },
    /// No method is known for a kind of piece that this size has.
    #[error("there is no method yet for the {}s of a {size}", kind_name(*.orbit))]
    NotCovered {
        /// The size.
        size: Size,
        /// The kind.
        orbit: Orbit,
    },
}

/// What carries out the letters of one kind.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Carrier {
    /// One swap a letter.
    OneSwap(Box<Swap>),
    /// Half turns of the middle slice.
    SliceSwap(SliceSwap),
    /// An algorithm for two letters.
    ThreeCycle(Box<Cycles>),
}

/// What is done when the number of letters is odd.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Parity {
    /// Nothing is left exchanged.
    Nothing,
    /// An algorithm between the kinds.
    Algorithm {
        /// The algorithm.
        algorithm: Algorithm,
        /// Whether it was found by search.
        found: bool,
    },
    /// Two edges are taken for each other in the trace, since the last corner letter exchanges them.
    Exchange(Exchange),
}

/// What a method is made with beside the conventions.
#[derive(Clone, Copy, Default, Debug)]
pub struct Outfit<'a> {
    /// Algorithms for two letters, of any kinds and buffers; those that fit and do what they are said to do are used.
    pub algorithms: &'a [CycleAlgorithm],
    /// How long turns take; without it the built-in estimates where times are needed at all.
    pub model: Option<&'a Model>,
    /// Whether times are wanted even if nothing is chosen by them.
    pub timed: bool,
}

/// A method on one puzzle: for each kind what carries out its letters, and what is done about parity.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Method {
    size: Size,
    carriers: OrbitMap<Option<Carrier>>,
    parity: Parity,
    costs: OrbitMap<Option<Costs>>,
    parity_milliseconds: u32,
}

/// The estimated time of turns in thousandths of a second.
pub fn milliseconds(model: &Model, turns: &[Turn]) -> u32 {
    libm::round(model.estimate(turns).seconds * 1000.0) as u32
}

impl Method {
    /// The method that the conventions name, on a puzzle of this size, without sheets: three-cycles are found by
    /// search.
    ///
    /// # Errors
    /// [`MethodError`] when an algorithm does not do what it has to.
    pub fn new(size: Size, conventions: &Conventions) -> Result<Self, MethodError> {
        Self::with(size, conventions, &Outfit::default())
    }

    /// The method that the conventions name, with sheets and times; set-ups and missing algorithms are found by search, and
    /// what an odd number of each kind's letters leaves behind is worked out and put right.
    ///
    /// # Errors
    /// [`MethodError`] when an algorithm does not do what it has to.
    pub fn with(size: Size, conventions: &Conventions, outfit: &Outfit<'_>) -> Result<Self, MethodError> {
        let orbits = Orbit::of(size);
        let covered = |orbit: Orbit| usual(MethodName::OneSwap, orbit).is_some();
        if let Some(&orbit) = orbits.iter().find(|&&orbit| !covered(orbit)) {
            return Err(MethodError::NotCovered { size, orbit });
        }
        let timed = outfit.timed
            || orbits.iter().any(|&orbit| {
                let kind = conventions.kind(orbit);
                kind.method == MethodName::ThreeCycle || kind.breaks == BreakChoice::Least
            });
        let built_in;
        let model = match outfit.model {
            Some(model) => Some(model),
            None if timed => {
                built_in = Model::built_in();
                Some(&built_in)
            }
            None => None,
        };
        let mut carriers = OrbitMap::default();
        for &orbit in orbits {
            carriers[orbit] = Some(Self::carrier_of(size, orbit, conventions, outfit, model)?);
        }
        let parity = Self::parity_of(size, &carriers, conventions)?;
        let timed_by = model.filter(|_| timed);
        let costs = OrbitMap::new(|orbit| Some(Costs::of(orbit, carriers[orbit].as_ref()?, timed_by?)));
        let parity_milliseconds = match (&parity, timed_by) {
            (Parity::Algorithm { algorithm, .. }, Some(model)) => milliseconds(model, &algorithm.flatten()),
            _ => 0,
        };
        Ok(Self { size, carriers, parity, costs, parity_milliseconds })
    }

    fn carrier_of(
        size: Size,
        orbit: Orbit,
        conventions: &Conventions,
        outfit: &Outfit<'_>,
        model: Option<&Model>,
    ) -> Result<Carrier, MethodError> {
        let kind = conventions.kind(orbit);
        if kind.method == MethodName::SliceSwap {
            if orbit != Orbit::Midge {
                return Err(MethodError::NotForKind(orbit));
            }
            return Ok(Carrier::SliceSwap(SliceSwap::new(size, kind.buffer)?));
        }
        let algorithm = kind.algorithm.as_ref().ok_or(MethodError::NotCovered { size, orbit })?;
        let algorithm =
            algorithm.on(size).map_err(|error| MethodError::CannotBeMade { orbit, size, error })?;
        let effect = match SwapEffect::of(algorithm, orbit, kind.buffer) {
            // Three-cycles are chosen by their buffer; the swap for a last letter is held so that it fits.
            Err(SwapError::BufferNotMoved { instead, .. }) if kind.method == MethodName::ThreeCycle => {
                SwapEffect::of(*instead, orbit, kind.buffer)
            }
            effect => effect,
        }
        .map_err(|error| MethodError::NoSwap { orbit, error })?;
        let swap = Swap::new(effect)?;
        let of_buffer = |sticker| orbit.piece(sticker) == orbit.piece(kind.buffer);
        let missing = Sticker::all().find(|&target| !of_buffer(target) && swap.setups(target).is_empty());
        if let Some(target) = missing {
            return Err(MethodError::NoSetup { orbit, target });
        }
        Ok(match (kind.method, model) {
            (MethodName::ThreeCycle, Some(model)) => Carrier::ThreeCycle(Box::new(Cycles::new(
                size,
                orbit,
                outfit.algorithms,
                kind.turned,
                model,
                swap,
            )?)),
            _ => Carrier::OneSwap(Box::new(swap)),
        })
    }

    fn parity_of(
        size: Size,
        carriers: &OrbitMap<Option<Carrier>>,
        conventions: &Conventions,
    ) -> Result<Parity, MethodError> {
        let orbits = Orbit::of(size);
        if conventions.parity == ParityChoice::Exchange && orbits.contains(&Orbit::Midge) {
            let effect = carriers[Orbit::Corner].as_ref().and_then(Carrier::swap).map(Swap::effect);
            let exchange = effect.and_then(|effect| Exchange::of(effect.effect()));
            return exchange.map(Parity::Exchange).ok_or(MethodError::NoExchange);
        }
        let order: Vec<(Orbit, &Carrier)> = conventions
            .execution_order
            .of(size)
            .filter_map(|orbit| Some((orbit, carriers[orbit].as_ref()?)))
            .collect();
        if order.iter().skip(1).any(|(_, carrier)| matches!(carrier, Carrier::SliceSwap(_))) {
            return Err(MethodError::SliceNotFirst);
        }
        // The algorithm undoes what the first kind leaves, and does beforehand what undoes the second.
        let mut core = Rotation::NONE;
        let mut perms = vec![Perm::IDENTITY; orbits.len()];
        for (orbit, carrier) in order {
            for (perm, &other) in perms.iter_mut().zip(orbits) {
                *perm = perm.then(&carrier.left_over(orbit, other).inverse());
            }
            if let Carrier::SliceSwap(slice) = carrier {
                core = core.then(slice.left_over().1.inverse());
            }
        }
        // Every swap is odd in each kind it touches, so the sum of both is always reachable.
        let wanted = State::from_orbits(size, core, &perms).unwrap_or(State::solved(size));
        if wanted.is_solved() && core == Rotation::NONE {
            return Ok(Parity::Nothing);
        }
        Self::parity_algorithm(size, &wanted, conventions)
    }

    fn parity_algorithm(
        size: Size,
        wanted: &State,
        conventions: &Conventions,
    ) -> Result<Parity, MethodError> {
        let does = |algorithm: &Algorithm| State::solved(size).after(&algorithm.flatten());
        let own = conventions
            .parity_algorithm
            .on(size)
            .map_err(|error| MethodError::ParityCannotBeMade { size, error })?;
        if does(&own) == *wanted {
            return Ok(Parity::Algorithm { algorithm: own, found: false });
        }
        let not_fitting =
            || MethodError::ParityDoesNotFit { wanted: all_moved(wanted), moved: all_moved(&does(&own)) };
        let known = usual_parity();
        if !known.contains(&conventions.parity_algorithm) {
            return Err(not_fitting());
        }
        let read = known.iter().filter_map(|known| known.on(size).ok());
        if let Some(algorithm) = read.into_iter().find(|algorithm| does(algorithm) == *wanted) {
            return Ok(Parity::Algorithm { algorithm, found: false });
        }
        let found =
            Conjugates::new(size, Sort::TwoSwaps).leading_to(wanted).or_else(|| by_two_phases(wanted));
        let algorithm = found.filter(|algorithm| does(algorithm) == *wanted).ok_or_else(not_fitting)?;
        Ok(Parity::Algorithm { algorithm, found: true })
    }

    /// The size of the puzzle.
    pub const fn size(&self) -> Size {
        self.size
    }

    /// What carries out the letters of a kind, if the puzzle has the kind.
    pub fn carrier(&self, orbit: Orbit) -> Option<&Carrier> {
        self.carriers[orbit].as_ref()
    }

    /// The swap of a kind: of every letter in one-swap, of a last single letter with three-cycles; slice-swap has none.
    pub fn swap(&self, orbit: Orbit) -> Option<&Swap> {
        self.carrier(orbit).and_then(Carrier::swap)
    }

    /// The algorithm that is made once between the kinds when the number of letters is odd; none where nothing is left exchanged or
    /// two edges are exchanged in the trace instead.
    pub const fn parity(&self) -> Option<&Algorithm> {
        match &self.parity {
            Parity::Algorithm { algorithm, .. } => Some(algorithm),
            Parity::Nothing | Parity::Exchange(_) => None,
        }
    }

    /// What is done when the number of letters is odd.
    pub const fn parity_is(&self) -> &Parity {
        &self.parity
    }

    /// The estimated time of the parity algorithm in thousandths of a second.
    pub const fn parity_milliseconds(&self) -> u32 {
        self.parity_milliseconds
    }

    /// The estimated times of the letters of a kind, where times were asked for.
    pub fn costs(&self, orbit: Orbit) -> Option<&Costs> {
        self.costs[orbit].as_ref()
    }
}

/// Two edges that are taken for each other in the trace when the corners' number of letters is odd, since the corners' last
/// letter exchanges them.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Exchange {
    /// The two edges, by the stickers that take each other's place.
    pub edges: [Sticker; 2],
    /// What the corners' swap does to the edges.
    effect: Perm,
}

impl Exchange {
    /// The edges that a swap of corners exchanges; `None` unless there are exactly two.
    pub fn of(swap: &State) -> Option<Self> {
        let orbit = Orbit::Midge;
        let &[one, _] = crate::swap::moved_pieces(swap, orbit).as_slice() else { return None };
        Some(Self { edges: [one, swap.at(orbit, one)], effect: *swap.orbit(orbit) })
    }

    /// The edges as they are to be traced.
    ///
    /// Where the corners are carried out first, what lies at the two places is exchanged, for it will be so when the edges'
    /// turn comes; otherwise the two pieces are, for the corners' last letter will exchange them at the end.
    pub fn traced_as(&self, edges: &Perm, corners_first: bool) -> Perm {
        if corners_first { edges.then(&self.effect) } else { self.effect.then(edges) }
    }

    /// The edges of which [`Exchange::traced_as`] makes these.
    pub fn untraced(&self, traced: &Perm, corners_first: bool) -> Perm {
        let back = self.effect.inverse();
        if corners_first { traced.then(&back) } else { back.then(traced) }
    }
}

fn all_moved(state: &State) -> Vec<(Orbit, Sticker)> {
    Orbit::of(state.size())
        .iter()
        .flat_map(|&orbit| {
            crate::swap::moved_pieces(state, orbit).into_iter().map(move |sticker| (orbit, sticker))
        })
        .collect()
}

/// Any short algorithm that leads to a state, by the search for states; slices first where centres move.
fn by_two_phases(wanted: &State) -> Option<Algorithm> {
    let size = wanted.size();
    let slices = ["", "M2", "E2", "S2", "M", "M'", "E", "E'", "S", "S'"];
    let read = slices.into_iter().filter_map(|text| Algorithm::parse(text, size).ok());
    let first = read
        .map(|read| read.flatten())
        .find(|turns| State::solved(size).after(turns).core() == wanted.core())?;
    let rest = State::solved(size).after(&first).inverse().then(wanted);
    let turns = [first, inverted(&solve(&rest, Limit::LOOSE).ok()?)].concat();
    Algorithm::from_turns(size, &turns).ok()
}

impl Carrier {
    /// Its swap, if it has one.
    pub const fn swap(&self) -> Option<&Swap> {
        match self {
            Self::OneSwap(swap) => Some(swap),
            Self::ThreeCycle(cycles) => Some(cycles.last()),
            Self::SliceSwap(_) => None,
        }
    }

    /// The name of the method.
    pub const fn name(&self) -> MethodName {
        match self {
            Self::OneSwap(_) => MethodName::OneSwap,
            Self::SliceSwap(_) => MethodName::SliceSwap,
            Self::ThreeCycle(_) => MethodName::ThreeCycle,
        }
    }

    /// What an odd number of its letters leaves behind in a kind, beside what the letters themselves do.
    fn left_over(&self, own: Orbit, orbit: Orbit) -> Perm {
        match self {
            Self::OneSwap(_) | Self::ThreeCycle(_) => match self.swap() {
                Some(swap) if own != orbit => *swap.effect().effect().orbit(orbit),
                _ => Perm::IDENTITY,
            },
            Self::SliceSwap(slice) if own == orbit => *slice.left_over().0,
            Self::SliceSwap(_) => Perm::IDENTITY,
        }
    }
}
