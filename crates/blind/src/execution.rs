//! Execution: a memo carried out letter by letter, and proven to solve.

use crate::conventions::OrbitOrder;
use crate::method::{Carrier, Group, Method, PairTurns, SliceLetter};
use crate::usual::MethodName;
use cube::{Claim, Count, NotProven, Orbit, State, Sticker, Turn, count, inverted, simplified};
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

    /// The letters that it carries out: their kind, which of the kind's memo comes first, from 0, and their targets; none for
    /// parity.
    pub const fn letters(&self) -> Option<(Orbit, usize, &[Sticker])> {
        match self {
            Self::Letter { orbit, letter, target, .. } => {
                Some((*orbit, *letter, std::slice::from_ref(target)))
            }
            Self::Pair { orbit, letter, targets, .. } => Some((*orbit, *letter, targets)),
            Self::Turned { orbit, letter, targets, .. } => Some((*orbit, *letter, targets)),
            Self::Parity { .. } => None,
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
    #[error(transparent)]
    NotProven(#[from] NotProven),
}

/// A memo carried out, applied to the state, and found to solve it.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Solution {
    actions: Vec<Action>,
    moves: Vec<Turn>,
    count: Count,
    unmerged: Count,
    milliseconds: Option<u32>,
}

/// The actions that carry out given targets of each kind, in an order of kinds; the parity algorithm stands after the kind that asks for
/// it ([`Method::parity_after`]) when that has an odd number of letters, or where that was noted.
///
/// # Errors
/// [`ExecutionError`] for a kind without a swap or a target on the buffer's own piece.
pub(crate) fn actions(
    targets: &[(Orbit, Vec<Sticker>)],
    noted: Option<bool>,
    order: &OrbitOrder,
    method: &Method,
) -> Result<Vec<Action>, ExecutionError> {
    let mut actions = Vec::new();
    let after = method.parity_after(order);
    for orbit in order.all() {
        let Some((_, letters)) = targets.iter().find(|(other, _)| *other == orbit) else { continue };
        for group in method.groups(orbit, letters) {
            actions.extend(method.action(orbit, letters, group)?);
        }
        if let Some(algorithm) = method.parity().filter(|_| orbit == after)
            && noted.unwrap_or(letters.len() % 2 == 1)
        {
            actions.push(Action::Parity { turns: algorithm.flatten() });
        }
    }
    Ok(actions)
}

impl Method {
    /// How the letters of a kind go together: each by itself, or into algorithms for two or four of them.
    pub fn groups(&self, orbit: Orbit, letters: &[Sticker]) -> Vec<Group> {
        match (self.carrier(orbit), self.costs(orbit)) {
            (Some(Carrier::ThreeCycle(_)), Some(costs)) => costs.groups(letters).0,
            (Some(Carrier::Inner(inner)), _) if inner.method() == MethodName::ThreeCycle => {
                let pairs = (0..letters.len() / 2).map(|pair| Group::Pair(2 * pair));
                pairs.chain((letters.len() % 2 == 1).then(|| Group::One(letters.len() - 1))).collect()
            }
            _ => (0..letters.len()).map(Group::One).collect(),
        }
    }

    /// The action that carries out a group of a kind's letters; none where the same letter twice does nothing.
    ///
    /// # Errors
    /// [`ExecutionError`] for a kind that the method does not carry out, letters that are not there, or a target on the buffer's own
    /// piece.
    ///
    /// ```
    /// use blind::{Action, Conventions, Group, Solver};
    /// use cube::{Orbit, Size};
    /// let solver = Solver::new(Size::THREE, Conventions::default());
    /// let method = solver.method().unwrap();
    /// let letters = solver.conventions().kind(Orbit::Corner).letters.read("BC").unwrap();
    /// assert_eq!(method.groups(Orbit::Corner, &letters), [Group::One(0), Group::One(1)]);
    /// let action = method.action(Orbit::Corner, &letters, Group::One(1)).unwrap().unwrap();
    /// assert_eq!(action.letters(), Some((Orbit::Corner, 1, &letters[1..])));
    /// ```
    pub fn action(
        &self,
        orbit: Orbit,
        letters: &[Sticker],
        group: Group,
    ) -> Result<Option<Action>, ExecutionError> {
        let missing = ExecutionError::KindMissing(orbit);
        let carrier = self.carrier(orbit).ok_or(missing.clone())?;
        let own_piece = |target: Sticker| ExecutionError::OwnPiece { orbit, target };
        let (letter, count) = match group {
            Group::One(letter) => (letter, 1),
            Group::Pair(letter) => (letter, 2),
            Group::Joint(letter) => (letter, 4),
        };
        let targets = letters.get(letter..letter + count).ok_or(missing.clone())?;
        match (targets, carrier) {
            (&[target], Carrier::SliceSwap(slice)) => {
                let made = slice.letter(target, letter % 2 == 1).ok_or(own_piece(target))?;
                let (setup, swap) = (made.setup.clone(), made.swap.clone());
                Ok(Some(Action::Letter { orbit, letter, target, undo: inverted(&setup), setup, swap }))
            }
            (&[target], Carrier::OneSwap(_) | Carrier::ThreeCycle(_)) => {
                let swap = carrier.swap().ok_or(missing)?;
                let setup = swap.setups(target).first().ok_or(own_piece(target))?.turns();
                let (setup, undo) = (setup.to_vec(), inverted(setup));
                Ok(Some(Action::Letter { orbit, letter, target, setup, swap: swap.turns().to_vec(), undo }))
            }
            (&[target], Carrier::Inner(inner)) => {
                // A single letter at the end has none after it that would undo what it leaves.
                let alone = letter + 1 == letters.len() && letter % 2 == 0;
                let made = if alone { inner.last(target) } else { inner.letter(target, letter % 2 == 1) };
                if target == inner.buffer() {
                    return Err(own_piece(target));
                }
                let SliceLetter { setup, swap } = made.ok_or(missing)?;
                Ok(Some(Action::Letter { orbit, letter, target, undo: inverted(&setup), setup, swap }))
            }
            (&[first, second], Carrier::Inner(inner)) => {
                let targets = [first, second];
                if targets.contains(&inner.buffer()) {
                    return Err(own_piece(inner.buffer()));
                }
                if first == second {
                    return Ok(None);
                }
                let PairTurns { turns, found } = inner.pair(first, second).ok_or(missing)?;
                Ok(Some(Action::Pair { orbit, letter, targets, turns, found }))
            }
            (&[first, second], Carrier::ThreeCycle(cycles)) => {
                let targets = [first, second];
                if let Some(target) =
                    targets.into_iter().find(|&target| orbit.same_piece(target, cycles.buffer()))
                {
                    return Err(own_piece(target));
                }
                if first == second {
                    return Ok(None);
                }
                let case = cycles.case(first, second).ok_or(missing)?;
                let (turns, found) = (case.turns().to_vec(), case.is_found());
                Ok(Some(Action::Pair { orbit, letter, targets, turns, found }))
            }
            (&[a, b, c, d], Carrier::ThreeCycle(cycles)) => {
                let targets = [a, b, c, d];
                let case = cycles.joint([a, b], [c, d]).ok_or(missing)?;
                let (turns, found) = (case.turns().to_vec(), case.is_found());
                Ok(Some(Action::Turned { orbit, letter, targets, turns, found }))
            }
            _ => Err(missing),
        }
    }
}

impl Solution {
    /// Applies actions to the state that they are to solve.
    ///
    /// # Errors
    /// [`NotProven`] when they do not.
    pub(crate) fn new(
        state: &State,
        actions: Vec<Action>,
        milliseconds: Option<u32>,
    ) -> Result<Self, NotProven> {
        let all: Vec<Turn> = actions.iter().flat_map(Action::turns).collect();
        let moves = simplified(&all);
        NotProven::unless(state.after(&moves).is_solved(), Claim::Solution)?;
        Ok(Self { count: count(&moves), unmerged: count(&all), actions, moves, milliseconds })
    }

    /// Letter by letter, in the order of the execution.
    pub fn actions(&self) -> &[Action] {
        &self.actions
    }

    /// All turns, merged and cancelled.
    pub fn moves(&self) -> &[Turn] {
        &self.moves
    }

    /// How long [`Solution::moves`] is.
    pub const fn count(&self) -> Count {
        self.count
    }

    /// How long it is without merging and cancelling.
    pub const fn unmerged(&self) -> Count {
        self.unmerged
    }

    /// The estimated time in thousandths of a second, as the sum over the actions; where the method knows times.
    pub const fn milliseconds(&self) -> Option<u32> {
        self.milliseconds
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use cube::{Algorithm, Size};

    #[test]
    fn actions_that_do_not_solve_are_no_solution() {
        let turns = |text| Algorithm::parse(text, Size::THREE).expect("turns").flatten();
        let state = State::solved(Size::THREE).after(&turns("R U F"));
        let made = |text| Solution::new(&state, vec![Action::Parity { turns: turns(text) }], None);
        assert_eq!(made("F' U' R'").expect("it solves").moves(), turns("F' U' R'"));
        assert_eq!(made("F' U' R").unwrap_err().claim, Claim::Solution);
        // Solved but turned as a whole is not solved as it is held.
        assert!(made("F' U' R' x").is_err());
    }
}
