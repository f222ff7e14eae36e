//! Methods: what carries out the letters of each kind, and what is done about parity.

use crate::conventions::Conventions;
use crate::kind::kind_name;
use crate::swap::{Swap, SwapEffect, SwapError};
use cube::{Algorithm, Orbit, ParseError, Size, State, Sticker};
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
    /// Only cubes of these sizes have their letters carried out so far.
    #[error("memos are made for the 2x2 and the 3x3, not for a {0}")]
    SizeNotCovered(Size),
}

/// The one-swap method on one puzzle: a swap a kind, and a parity algorithm.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Method {
    size: Size,
    swaps: Vec<Swap>,
    parity: Option<Algorithm>,
}

impl Method {
    /// The method that the conventions name, on a puzzle of this size; set-ups are found by search and the parity
    /// algorithm is compared with what an odd number of each kind's swaps leaves behind.
    ///
    /// # Errors
    /// [`MethodError`] when an algorithm does not do what it has to.
    pub fn new(size: Size, conventions: &Conventions) -> Result<Self, MethodError> {
        if size > Size::THREE {
            return Err(MethodError::SizeNotCovered(size));
        }
        let mut swaps = Vec::new();
        for &orbit in Orbit::of(size) {
            let kind = conventions.kind(orbit);
            let algorithm = Algorithm::parse(&kind.algorithm, size)
                .map_err(|error| MethodError::CannotBeMade { orbit, size, error })?;
            let effect = SwapEffect::of(algorithm, orbit, kind.buffer)
                .map_err(|error| MethodError::NoSwap { orbit, error })?;
            let swap = Swap::new(effect);
            let of_buffer = |sticker| orbit.piece(sticker) == orbit.piece(kind.buffer);
            let missing = Sticker::all().find(|&target| !of_buffer(target) && swap.setups(target).is_empty());
            if let Some(target) = missing {
                return Err(MethodError::NoSetup { orbit, target });
            }
            swaps.push(swap);
        }
        let parity = Self::parity_of(size, &swaps, conventions)?;
        Ok(Self { size, swaps, parity })
    }

    /// What is left exchanged after an odd number of swaps of every kind.
    fn left_over(size: Size, swaps: &[Swap]) -> State {
        // Of each swap only what it does to other kinds stays; its own kind is what the letters solve.
        let perms: Vec<_> = Orbit::of(size)
            .iter()
            .map(|&orbit| {
                swaps
                    .iter()
                    .filter(|swap| swap.effect().orbit() != orbit)
                    .fold(cube::Perm::IDENTITY, |sum, swap| sum.then(swap.effect().effect().orbit(orbit)))
            })
            .collect();
        // Every swap is its own inverse and even over both kinds, so this is always reachable.
        State::from_orbits(size, cube::Rotation::NONE, &perms).unwrap_or(State::solved(size))
    }

    fn parity_of(
        size: Size,
        swaps: &[Swap],
        conventions: &Conventions,
    ) -> Result<Option<Algorithm>, MethodError> {
        let left = Self::left_over(size, swaps);
        if left.is_solved() {
            return Ok(None);
        }
        let parse = Algorithm::parse(&conventions.parity_algorithm, size);
        let orbit = Orbit::Corner;
        let algorithm = parse.map_err(|error| MethodError::CannotBeMade { orbit, size, error })?;
        let effect = State::solved(size).after(&algorithm.flatten());
        if effect == left {
            return Ok(Some(algorithm));
        }
        let moved = |state: &State| {
            Orbit::of(size)
                .iter()
                .flat_map(|&orbit| {
                    crate::swap::moved_pieces(state, orbit).into_iter().map(move |sticker| (orbit, sticker))
                })
                .collect()
        };
        Err(MethodError::ParityDoesNotFit { wanted: moved(&left), moved: moved(&effect) })
    }

    /// The size of the puzzle.
    pub const fn size(&self) -> Size {
        self.size
    }

    /// The swap of a kind, if the puzzle has the kind.
    pub fn swap(&self, orbit: Orbit) -> Option<&Swap> {
        self.swaps.iter().find(|swap| swap.effect().orbit() == orbit)
    }

    /// The algorithm that is made once when the number of letters is odd; none where nothing is left exchanged.
    pub const fn parity(&self) -> Option<&Algorithm> {
        self.parity.as_ref()
    }
}
