//! Methods: what carries out the letters of each kind, and what is done about parity.

mod cycles;
pub(crate) mod data;
mod slice;

pub use cycles::{Case, Cycles, letters_effect, letters_state};
pub use slice::{SliceLetter, SliceSwap};

use crate::conventions::{BreakChoice, Conventions, MethodName, ParityChoice};
use crate::kind::kind_name;
use crate::plan::Costs;
use crate::sheet::Sheet;
use crate::swap::{Swap, SwapEffect, SwapError};
use cube::{Algorithm, Orbit, ParseError, Perm, Rotation, Size, State, Sticker, Turn, inverted};
use data::Data;
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
        error: ParseError,
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
    /// The data of slice-swap do not do what they have to. That is a fault of the program.
    #[error("the algorithms of slice-swap do something else than they should")]
    SliceData,
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
    /// Only cubes of these sizes have their letters carried out so far.
    #[error("memos are made for the 2x2 and the 3x3, not for a {0}")]
    SizeNotCovered(Size),
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
    Exchange([Sticker; 2]),
}

/// What a method is made with beside the conventions.
#[derive(Clone, Copy, Default, Debug)]
pub struct Outfit<'a> {
    /// Sheets of algorithms, of any kinds and buffers; those that fit are used.
    pub sheets: &'a [Sheet],
    /// How long turns take; without it the built-in estimates where times are needed at all.
    pub model: Option<&'a Model>,
    /// Whether times are wanted even if nothing is chosen by them.
    pub timed: bool,
}

/// A method on one puzzle: for each kind what carries out its letters, and what is done about parity.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Method {
    size: Size,
    kinds: Vec<(Orbit, Carrier)>,
    parity: Parity,
    costs: Vec<Option<Costs>>,
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
        if size > Size::THREE {
            return Err(MethodError::SizeNotCovered(size));
        }
        let orbits = Orbit::of(size);
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
        let mut kinds = Vec::new();
        for &orbit in orbits {
            kinds.push((orbit, Self::carrier_of(size, orbit, conventions, outfit, model)?));
        }
        let parity = Self::parity_of(size, &kinds, conventions)?;
        let timed_by = model.filter(|_| timed);
        let costs =
            kinds.iter().map(|(orbit, carrier)| Some(Costs::of(*orbit, carrier, timed_by?))).collect();
        let parity_milliseconds = match (&parity, timed_by) {
            (Parity::Algorithm { algorithm, .. }, Some(model)) => milliseconds(model, &algorithm.flatten()),
            _ => 0,
        };
        Ok(Self { size, kinds, parity, costs, parity_milliseconds })
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
            return Ok(Carrier::SliceSwap(SliceSwap::new(kind.buffer)?));
        }
        let algorithm = Algorithm::parse(&kind.algorithm, size)
            .map_err(|error| MethodError::CannotBeMade { orbit, size, error })?;
        let effect = match SwapEffect::of(algorithm, orbit, kind.buffer) {
            // Three-cycles are chosen by their buffer; the swap for a last letter is held so that it fits.
            Err(SwapError::BufferNotMoved { instead, .. }) if kind.method == MethodName::ThreeCycle => {
                SwapEffect::of(*instead, orbit, kind.buffer)
            }
            effect => effect,
        }
        .map_err(|error| MethodError::NoSwap { orbit, error })?;
        let swap = Swap::new(effect);
        let of_buffer = |sticker| orbit.piece(sticker) == orbit.piece(kind.buffer);
        let missing = Sticker::all().find(|&target| !of_buffer(target) && swap.setups(target).is_empty());
        if let Some(target) = missing {
            return Err(MethodError::NoSetup { orbit, target });
        }
        Ok(match (kind.method, model) {
            (MethodName::ThreeCycle, Some(model)) => Carrier::ThreeCycle(Box::new(Cycles::new(
                size,
                orbit,
                outfit.sheets,
                kind.turned,
                model,
                swap,
            )?)),
            _ => Carrier::OneSwap(Box::new(swap)),
        })
    }

    fn parity_of(
        size: Size,
        kinds: &[(Orbit, Carrier)],
        conventions: &Conventions,
    ) -> Result<Parity, MethodError> {
        if conventions.parity == ParityChoice::Exchange && kinds.len() > 1 {
            let corner = kinds
                .iter()
                .find(|(orbit, _)| *orbit == Orbit::Corner)
                .and_then(|(_, carrier)| carrier.swap());
            let moved = corner.map(|swap| crate::swap::moved_pieces(swap.effect().effect(), Orbit::Midge));
            let Some(&[one, _]) = moved.as_deref() else { return Err(MethodError::NoExchange) };
            let other = corner.map_or(one, |swap| swap.effect().effect().at(Orbit::Midge, one));
            return Ok(Parity::Exchange([one, other]));
        }
        let mut order: Vec<&(Orbit, Carrier)> = kinds.iter().collect();
        order.sort_by_key(|(orbit, _)| conventions.execution_order.iter().position(|other| other == orbit));
        let slice_later = order.iter().skip(1).any(|(_, carrier)| matches!(carrier, Carrier::SliceSwap(_)));
        if slice_later {
            return Err(MethodError::SliceNotFirst);
        }
        // The algorithm undoes what the first kind leaves, and does beforehand what undoes the second.
        let mut core = Rotation::NONE;
        let mut perms = vec![Perm::IDENTITY; kinds.len()];
        for (orbit, carrier) in order {
            for (at, &other) in Orbit::of(size).iter().enumerate() {
                perms[at] = perms[at].then(&carrier.left_over(*orbit, other).inverse());
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
        let orbit = Orbit::Corner;
        let own = Algorithm::parse(&conventions.parity_algorithm, size)
            .map_err(|error| MethodError::CannotBeMade { orbit, size, error })?;
        if does(&own) == *wanted {
            return Ok(Parity::Algorithm { algorithm: own, found: false });
        }
        let data = Data::built_in();
        let known: Vec<&str> = MethodName::ALL
            .into_iter()
            .filter_map(|method| data.text(method, "parity", "algorithm"))
            .collect();
        if !known.contains(&conventions.parity_algorithm.as_str()) {
            return Err(MethodError::ParityDoesNotFit {
                wanted: all_moved(wanted),
                moved: all_moved(&does(&own)),
            });
        }
        let read = known.iter().filter_map(|text| Algorithm::parse(text, size).ok());
        if let Some(algorithm) = read.into_iter().find(|algorithm| does(algorithm) == *wanted) {
            return Ok(Parity::Algorithm { algorithm, found: false });
        }
        let found =
            Conjugates::new(size, Sort::TwoSwaps).leading_to(wanted).or_else(|| by_two_phases(wanted));
        let algorithm = found.filter(|algorithm| does(algorithm) == *wanted).ok_or_else(|| {
            MethodError::ParityDoesNotFit { wanted: all_moved(wanted), moved: all_moved(&does(&own)) }
        })?;
        Ok(Parity::Algorithm { algorithm, found: true })
    }

    /// The size of the puzzle.
    pub const fn size(&self) -> Size {
        self.size
    }

    /// What carries out the letters of a kind, if the puzzle has the kind.
    pub fn carrier(&self, orbit: Orbit) -> Option<&Carrier> {
        self.kinds.iter().find(|(other, _)| *other == orbit).map(|(_, carrier)| carrier)
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
        let at = self.kinds.iter().position(|(other, _)| *other == orbit)?;
        self.costs[at].as_ref()
    }

    /// The edges as they are to be traced: when the corners' number of letters is odd and parity is met by exchanging two
    /// edges, those two are taken for each other.
    ///
    /// Where the corners are carried out first, what lies at the two places is exchanged, for it will be so when the edges'
    /// turn comes; otherwise the two pieces are, for the corners' last letter will exchange them at the end.
    pub(crate) fn traced_as(&self, state: &State, orbit: Orbit, conventions: &Conventions) -> Perm {
        let seen = state.orbit(orbit);
        let Some(effect) = self.exchange().filter(|_| orbit == Orbit::Midge) else { return *seen };
        if !corners_are_odd(state) {
            return *seen;
        }
        if conventions.execution_order.first() == Some(&Orbit::Corner) {
            seen.then(effect)
        } else {
            effect.then(seen)
        }
    }

    fn exchange(&self) -> Option<&Perm> {
        match &self.parity {
            Parity::Exchange(_) => Some(self.swap(Orbit::Corner)?.effect().effect().orbit(Orbit::Midge)),
            Parity::Nothing | Parity::Algorithm { .. } => None,
        }
    }
}

/// Whether the corners are oddly arranged: then every memo of them has an odd number of letters. Exchanging two corners
/// exchanges three pairs of stickers, and turning one moves three stickers round, so stickers are as odd as pieces.
pub(crate) fn corners_are_odd(state: &State) -> bool {
    state.orbit(Orbit::Corner).is_odd()
}

fn all_moved(state: &State) -> Vec<(Orbit, Sticker)> {
    Orbit::of(state.size())
        .iter()
        .flat_map(|&orbit| {
            crate::swap::moved_pieces(state, orbit).into_iter().map(move |sticker| (orbit, sticker))
        })
        .collect()
}

/// Any short algorithm that leads to a state of a 3x3, by the two-phase solver; slices first where centres move.
fn by_two_phases(wanted: &State) -> Option<Algorithm> {
    let size = Size::THREE;
    if wanted.size() != size {
        return None;
    }
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
