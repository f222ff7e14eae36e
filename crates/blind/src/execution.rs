//! Execution: a memo carried out letter by letter, and proven to solve.

use crate::conventions::Conventions;
use crate::memo::Memo;
use crate::method::Method;
use cube::{Count, Orbit, State, Sticker, Turn, count, inverted, simplified};
use thiserror::Error;

/// One step of the execution.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Action {
    /// A letter: set-up, swap, set-up undone.
    Letter {
        /// The kind.
        orbit: Orbit,
        /// Which letter of the kind's memo, from 0.
        letter: usize,
        /// The sticker that the letter stands for.
        target: Sticker,
        /// What brings the target's sticker to the swap.
        setup: Vec<Turn>,
        /// The algorithm.
        swap: Vec<Turn>,
        /// The set-up undone.
        undo: Vec<Turn>,
    },
    /// The parity algorithm.
    Parity {
        /// Its turns.
        turns: Vec<Turn>,
    },
}

impl Action {
    /// All its turns in order.
    pub fn turns(&self) -> Vec<Turn> {
        match self {
            Self::Letter { setup, swap, undo, .. } => [setup.as_slice(), swap, undo].concat(),
            Self::Parity { turns } => turns.clone(),
        }
    }
}

/// Why a memo was not carried out.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum ExecutionError {
    /// The method has no swap for a kind.
    #[error("the method does not carry out {} letters", crate::kind_name(*.0))]
    KindMissing(Orbit),
    /// A letter of the buffer's own piece.
    #[error("{} is on the buffer's own piece", .orbit.name(*.target))]
    OwnPiece {
        /// The kind.
        orbit: Orbit,
        /// The sticker.
        target: Sticker,
    },
    /// Carried out, the letters do not solve the state; nothing is returned that does not do what it claims.
    #[error("the letters do not solve the state")]
    DoesNotSolve,
}

/// A memo carried out, applied to the state, and found to solve it.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Solution {
    /// Letter by letter, in the order of the execution.
    pub actions: Vec<Action>,
    /// All turns, merged and cancelled.
    pub moves: Vec<Turn>,
    /// How long `moves` is.
    pub count: Count,
    /// How long it is without merging and cancelling.
    pub unmerged: Count,
}

/// The actions that carry out given targets of each kind, in the order of execution of the conventions; the parity
/// algorithm stands between the kinds when the first kind carried out has an odd number of letters.
///
/// # Errors
/// [`ExecutionError`] for a kind without a swap or a target on the buffer's own piece.
pub fn actions(
    targets: &[(Orbit, Vec<Sticker>)],
    conventions: &Conventions,
    method: &Method,
) -> Result<Vec<Action>, ExecutionError> {
    let mut actions = Vec::new();
    let mut parity = method.parity();
    for &orbit in &conventions.execution_order {
        let Some((_, letters)) = targets.iter().find(|(other, _)| *other == orbit) else { continue };
        let swap = method.swap(orbit).ok_or(ExecutionError::KindMissing(orbit))?;
        for (letter, &target) in letters.iter().enumerate() {
            let setup = swap.setups(target).first().ok_or(ExecutionError::OwnPiece { orbit, target })?;
            actions.push(Action::Letter {
                orbit,
                letter,
                target,
                setup: setup.clone(),
                swap: swap.turns().to_vec(),
                undo: inverted(setup),
            });
        }
        if let Some(algorithm) = parity.take()
            && letters.len() % 2 == 1
        {
            actions.push(Action::Parity { turns: algorithm.flatten() });
        }
    }
    Ok(actions)
}

impl Solution {
    /// Carries a memo out and applies it to the state it was made for.
    ///
    /// # Errors
    /// [`ExecutionError`]; above all, when it does not solve the state.
    ///
    /// ```
    /// use blind::{Conventions, Memo, Method, Solution};
    /// use cube::{Algorithm, Size, State};
    /// let conventions = Conventions::default();
    /// let method = Method::new(Size::THREE, &conventions).unwrap();
    /// let scramble = Algorithm::parse("D2 F' R2 B U2 L' D B2 R F U'", Size::THREE).unwrap();
    /// let state = State::solved(Size::THREE).after(&scramble.flatten());
    /// let memo = Memo::new(&state, &conventions, &method);
    /// let solution = Solution::new(&state, &memo, &conventions, &method).unwrap();
    /// assert!(state.after(&solution.moves).is_solved());
    /// ```
    pub fn new(
        state: &State,
        memo: &Memo,
        conventions: &Conventions,
        method: &Method,
    ) -> Result<Self, ExecutionError> {
        let targets: Vec<(Orbit, Vec<Sticker>)> =
            memo.parts().iter().map(|trace| (trace.orbit(), trace.targets())).collect();
        let actions = actions(&targets, conventions, method)?;
        let all: Vec<Turn> = actions.iter().flat_map(Action::turns).collect();
        let moves = simplified(&all);
        if !state.after(&moves).is_solved() {
            return Err(ExecutionError::DoesNotSolve);
        }
        Ok(Self { count: count(&moves), unmerged: count(&all), actions, moves })
    }
}
