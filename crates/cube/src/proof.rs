//! What is handed out was applied first; this is the answer where it does not do what it claims.

use thiserror::Error;

/// What was claimed.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Claim {
    /// That moves lead from a state to the solved one.
    Solution,
    /// That an algorithm does what it is kept for.
    Algorithm,
    /// That set-up moves bring a sticker to its place and leave alone what they must.
    Setup,
    /// That a scramble leads to the state that was drawn.
    Scramble,
    /// That letters put the pieces of a kind right when each exchanges the buffer's piece with its own.
    Memo,
    /// That a state that was drawn meets what was asked of it.
    Condition,
    /// That slips lead to what was observed.
    Explanation,
}

/// Applied on the model, something did not do what it claims. It is never handed out; this is, and it is a fault of the
/// program.
///
/// The one name for this in all crates. Only the functions that apply a claim can make the values that were proven.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Error)]
#[error("a claim was not proven: {claim:?}")]
pub struct NotProven {
    /// What was claimed.
    pub claim: Claim,
}

impl NotProven {
    /// Nothing where the claim holds.
    ///
    /// # Errors
    /// [`NotProven`] where it does not.
    ///
    /// ```
    /// use cube::{Claim, NotProven};
    /// assert!(NotProven::unless(1 + 1 == 2, Claim::Solution).is_ok());
    /// assert_eq!(NotProven::unless(false, Claim::Setup).unwrap_err().claim, Claim::Setup);
    /// ```
    pub const fn unless(holds: bool, claim: Claim) -> Result<(), Self> {
        if holds { Ok(()) } else { Err(Self { claim }) }
    }
}
