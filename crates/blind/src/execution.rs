//! Execution: a memo carried out letter by letter, and proven to solve.

use crate::conventions::Conventions;
use crate::letters::same_piece;
use crate::memo::Memo;
use crate::method::{Carrier, Method};
use crate::plan::Group;
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
    /// Two letters by one algorithm.
    Pair {
        /// The kind.
        orbit: Orbit,
        /// Which letter of the kind's memo comes first, from 0.
        letter: usize,
        /// The stickers that the letters stand for.
        targets: [Sticker; 2],
        /// The algorithm.
        turns: Vec<Turn>,
        /// Whether the algorithm was found by search, since the sheet has none.
        found: bool,
    },
    /// Four letters that turn two pieces in their places, by one algorithm.
    Turned {
        /// The kind.
        orbit: Orbit,
        /// Which letter of the kind's memo comes first, from 0.
        letter: usize,
        /// The stickers that the letters stand for.
        targets: [Sticker; 4],
        /// The algorithm.
        turns: Vec<Turn>,
        /// Whether the algorithm was found by search.
        found: bool,
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
            Self::Pair { turns, .. } | Self::Turned { turns, .. } | Self::Parity { turns } => turns.clone(),
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
    /// The estimated time in thousandths of a second, as the sum over the actions; where the method knows times.
    pub milliseconds: Option<u32>,
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
        let carrier = method.carrier(orbit).ok_or(ExecutionError::KindMissing(orbit))?;
        match (carrier, method.costs(orbit)) {
            (Carrier::ThreeCycle(_), Some(costs)) => {
                for group in costs.groups(letters).0 {
                    grouped(orbit, letters, group, carrier, &mut actions)?;
                }
            }
            _ => {
                for letter in 0..letters.len() {
                    grouped(orbit, letters, Group::One(letter), carrier, &mut actions)?;
                }
            }
        }
        if let Some(algorithm) = parity.take()
            && letters.len() % 2 == 1
        {
            actions.push(Action::Parity { turns: algorithm.flatten() });
        }
    }
    Ok(actions)
}

fn grouped(
    orbit: Orbit,
    letters: &[Sticker],
    group: Group,
    carrier: &Carrier,
    actions: &mut Vec<Action>,
) -> Result<(), ExecutionError> {
    let own_piece = |target: Sticker| ExecutionError::OwnPiece { orbit, target };
    match (group, carrier) {
        (Group::One(letter), Carrier::SliceSwap(slice)) => {
            let target = letters[letter];
            let made = slice.letter(target, letter % 2 == 1).ok_or(own_piece(target))?;
            let (setup, swap) = (made.setup.clone(), made.swap.clone());
            actions.push(Action::Letter { orbit, letter, target, undo: inverted(&setup), setup, swap });
        }
        (Group::One(letter), _) => {
            let target = letters[letter];
            let swap = carrier.swap().ok_or(ExecutionError::KindMissing(orbit))?;
            let setup = swap.setups(target).first().ok_or(own_piece(target))?;
            actions.push(Action::Letter {
                orbit,
                letter,
                target,
                setup: setup.clone(),
                swap: swap.turns().to_vec(),
                undo: inverted(setup),
            });
        }
        (Group::Pair(letter), Carrier::ThreeCycle(cycles)) => {
            let targets = [letters[letter], letters[letter + 1]];
            if let Some(target) =
                targets.into_iter().find(|&target| same_piece(orbit, target, cycles.buffer()))
            {
                return Err(own_piece(target));
            }
            // The same letter twice does nothing.
            if targets[0] != targets[1] {
                let case = cycles.case(targets[0], targets[1]).ok_or(ExecutionError::KindMissing(orbit))?;
                actions.push(Action::Pair {
                    orbit,
                    letter,
                    targets,
                    turns: case.turns.clone(),
                    found: case.found,
                });
            }
        }
        (Group::Joint(letter), Carrier::ThreeCycle(cycles)) => {
            let targets = [0, 1, 2, 3].map(|more| letters[letter + more]);
            let [a, b, c, d] = targets;
            let case = cycles.joint([a, b], [c, d]).ok_or(ExecutionError::KindMissing(orbit))?;
            actions.push(Action::Turned {
                orbit,
                letter,
                targets,
                turns: case.turns.clone(),
                found: case.found,
            });
        }
        (Group::Pair(_) | Group::Joint(_), _) => return Err(ExecutionError::KindMissing(orbit)),
    }
    Ok(())
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
        let times = targets.iter().map(|(orbit, letters)| Some(method.costs(*orbit)?.groups(letters).1));
        let parity = actions.iter().any(|action| matches!(action, Action::Parity { .. }));
        let milliseconds =
            times.sum::<Option<u32>>().map(|sum| sum + if parity { method.parity_milliseconds() } else { 0 });
        Ok(Self { count: count(&moves), unmerged: count(&all), actions, moves, milliseconds })
    }
}
