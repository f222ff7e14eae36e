//! Methods: what carries out the letters of each kind, and what is done about parity.

mod cycles;
mod inner;
mod pairing;
mod parity;
mod slice;

pub use cycles::{Case, Cycles, letters_effect, letters_state};
pub use inner::{Inner, PairTurns};
pub(crate) use pairing::NONE;
pub use pairing::{Costs, Group};
pub use slice::{SliceLetter, SliceSwap};

use crate::conventions::{BreakChoice, Conventions, OrbitOrder};
use crate::cycle_case::CycleAlgorithm;
use crate::kind::kind_name;
use crate::swap::{Swap, SwapEffect, SwapError};
use crate::usual::MethodName;
use cube::{Algorithm, NoSuchTurn, NotProven, Orbit, OrbitMap, Perm, Size, State, Sticker, Turn};
use search::ease::Model;
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
    /// Between the two kinds for which one parity algorithm puts something right another is carried out.
    #[error("{}s may not be carried out between corners and edges", kind_name(*.0))]
    BetweenCornersAndEdges(Orbit),
    /// Slice-swap leaves the slice half-turned after an odd number of letters, which no algorithm between the kinds puts right
    /// beforehand.
    #[error("with a parity algorithm, slice-swap edges are carried out first")]
    SliceNotFirst,
    /// No layer between the faces has pieces of the kind, so none can be half-turned for them.
    #[error("slice-swap is no method for {}s", kind_name(*.0))]
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
    SliceSwap(Box<SliceSwap>),
    /// An algorithm for two letters.
    ThreeCycle(Box<Cycles>),
    /// Of wings and centres, any of the methods.
    Inner(Box<Inner>),
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
    Exchange {
        /// The two edges.
        exchange: Exchange,
        /// Where wings lie beside them, what exchanges those back once the corners are done.
        wings: Option<Algorithm>,
    },
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
        let timed = outfit.timed
            || orbits.iter().any(|&orbit| {
                let kind = conventions.kind(orbit);
                let cycles = kind.method == MethodName::ThreeCycle && orbit.stickers_per_piece() > 1;
                cycles || kind.breaks == BreakChoice::Least
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
        let parity = parity::of(size, &carriers, conventions)?;
        let timed_by = model.filter(|_| timed);
        // Of wings and centres every pair would have to be searched, so their times are made only where they are asked for.
        let wanted = |orbit: Orbit| {
            orbit.stickers_per_piece() > 1
                || outfit.timed
                || conventions.kind(orbit).breaks == BreakChoice::Least
        };
        let costs = OrbitMap::new(|orbit| {
            Some(Costs::of(orbit, carriers[orbit].as_ref()?, timed_by.filter(|_| wanted(orbit))?))
        });
        let parity_milliseconds = match (&parity, timed_by) {
            (
                Parity::Algorithm { algorithm, .. } | Parity::Exchange { wings: Some(algorithm), .. },
                Some(model),
            ) => milliseconds(model, &algorithm.flatten()),
            (Parity::Algorithm { .. } | Parity::Exchange { .. } | Parity::Nothing, _) => 0,
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
        if !kind.method.carries_out(orbit) {
            return Err(MethodError::NotForKind(orbit));
        }
        if kind.method == MethodName::SliceSwap && orbit == Orbit::Midge {
            return Ok(Carrier::SliceSwap(Box::new(SliceSwap::new(size, kind.buffer)?)));
        }
        if orbit.looks_alike() {
            let inner = Inner::new(size, orbit, kind.buffer, kind.method, None, outfit.algorithms)?;
            return Ok(Carrier::Inner(Box::new(inner)));
        }
        let algorithm = kind.algorithm.as_ref().ok_or(MethodError::NotCovered { size, orbit })?;
        let algorithm =
            algorithm.on(size).map_err(|error| MethodError::CannotBeMade { orbit, size, error })?;
        let is_wing = orbit.stickers_per_piece() == 1;
        let effect = match SwapEffect::of(algorithm, orbit, kind.buffer) {
            // Three-cycles are chosen by their buffer; the swap for a last letter is held so that it fits, that of wings always.
            Err(SwapError::BufferNotMoved { instead, .. })
                if kind.method == MethodName::ThreeCycle || is_wing =>
            {
                SwapEffect::of(*instead, orbit, kind.buffer)
            }
            effect => effect,
        }
        .map_err(|error| MethodError::NoSwap { orbit, error })?;
        if is_wing {
            let inner = Inner::new(size, orbit, kind.buffer, kind.method, Some(&effect), outfit.algorithms)?;
            return Ok(Carrier::Inner(Box::new(inner)));
        }
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

    /// How many turns pairs of letters of wings or centres take.
    pub(crate) fn turns_of_pairs(&self, orbit: Orbit) -> Option<Costs> {
        match self.carrier(orbit)? {
            Carrier::Inner(inner) => Some(Costs::of_inner(inner, |turns| turns.len() as u32)),
            Carrier::OneSwap(_) | Carrier::SliceSwap(_) | Carrier::ThreeCycle(_) => None,
        }
    }

    /// How many turns the letters of a kind take to be set up, or of wings and centres to be carried out, for choosing where to begin
    /// cycles.
    pub fn setup_costs(&self, orbit: Orbit) -> Option<[u32; 24]> {
        match self.carrier(orbit)? {
            Carrier::OneSwap(swap) => Some(swap.costs()),
            Carrier::ThreeCycle(cycles) => Some(cycles.last().costs()),
            Carrier::SliceSwap(_) => None,
            Carrier::Inner(inner) => Some(inner.costs()),
        }
    }

    /// The algorithm that is made once when the number of letters of corners, or of corners and edges, is odd: after the first of them
    /// that is carried out. None where nothing is left exchanged or two edges are exchanged in the trace instead.
    pub const fn parity(&self) -> Option<&Algorithm> {
        match &self.parity {
            Parity::Algorithm { algorithm, .. } => Some(algorithm),
            Parity::Exchange { wings, .. } => wings.as_ref(),
            Parity::Nothing => None,
        }
    }

    /// What is done when the number of letters is odd.
    pub const fn parity_is(&self) -> &Parity {
        &self.parity
    }

    /// The kind after which the parity algorithm is made, and whose number of letters asks for it.
    pub fn parity_after(&self, order: &OrbitOrder) -> Orbit {
        match &self.parity {
            Parity::Exchange { .. } => Orbit::Corner,
            Parity::Nothing | Parity::Algorithm { .. } => {
                let mut kinds = order.of(self.size).filter(|orbit| orbit.stickers_per_piece() > 1);
                kinds.next().unwrap_or(Orbit::Corner)
            }
        }
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

impl Carrier {
    /// Its swap, if it has one.
    pub const fn swap(&self) -> Option<&Swap> {
        match self {
            Self::OneSwap(swap) => Some(swap),
            Self::ThreeCycle(cycles) => Some(cycles.last()),
            Self::SliceSwap(_) | Self::Inner(_) => None,
        }
    }

    /// The name of the method.
    pub const fn name(&self) -> MethodName {
        match self {
            Self::Inner(inner) => inner.method(),
            Self::OneSwap(_) => MethodName::OneSwap,
            Self::SliceSwap(_) => MethodName::SliceSwap,
            Self::ThreeCycle(_) => MethodName::ThreeCycle,
        }
    }
}
