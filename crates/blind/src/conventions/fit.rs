//! Whether a kind's swap algorithm goes with its buffer.

use super::Conventions;
use crate::swap::{SwapEffect, SwapError};
use crate::usual::MethodName;
use cube::{NoSuchTurn, Orbit, Size};
use thiserror::Error;

/// Why a kind's algorithm does not go with its buffer.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum Misfit {
    /// It has a turn that the size of its kind does not have.
    #[error("on a {size}: {error}")]
    NotOnSize {
        /// The size.
        size: Size,
        /// Why not.
        error: NoSuchTurn,
    },
    /// It is not the swap that it has to be.
    #[error(transparent)]
    Swap(#[from] SwapError),
}

/// The smallest size of which a kind is a part and whose centres are fixed: its algorithms are checked on that.
pub(super) fn checked_on(orbit: Orbit) -> Size {
    let has = |size: &Size| size.is_odd() && Orbit::of(*size).contains(&orbit);
    Size::ALL.into_iter().find(has).unwrap_or(Size::ALL[Size::ALL.len() - 1])
}

impl Conventions {
    /// Whether the algorithm of a kind goes with its buffer and its method.
    ///
    /// # Errors
    /// [`Misfit`] when it does not move the buffer, or is no swap of two pieces.
    ///
    /// ```
    /// use blind::Conventions;
    /// use cube::Orbit;
    /// let mut conventions = Conventions::default();
    /// assert!(conventions.algorithm_fits(Orbit::Corner).is_ok());
    /// conventions.kind_mut(Orbit::Corner).buffer = Orbit::Corner.sticker("UFL").unwrap();
    /// assert!(conventions.algorithm_fits(Orbit::Corner).is_err());
    /// ```
    pub fn algorithm_fits(&self, orbit: Orbit) -> Result<(), Misfit> {
        let kind = self.kind(orbit);
        // Half turns of the slice need no further swap of edges.
        let half_turns = orbit == Orbit::Midge && kind.method == MethodName::SliceSwap;
        let Some(algorithm) = kind.algorithm.as_ref().filter(|_| !half_turns) else {
            return Ok(());
        };
        let size = checked_on(orbit);
        let algorithm = algorithm.on(size).map_err(|error| Misfit::NotOnSize { size, error })?;
        match SwapEffect::of(algorithm, orbit, kind.buffer) {
            // Three-cycles are chosen by their buffer; the swap for a last letter is held so that it fits, that of wings always.
            Err(SwapError::BufferNotMoved { .. })
                if kind.method == MethodName::ThreeCycle || orbit.stickers_per_piece() == 1 =>
            {
                Ok(())
            }
            Err(error) => Err(error.into()),
            Ok(_) => Ok(()),
        }
    }
}
