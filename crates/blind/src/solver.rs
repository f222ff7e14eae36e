//! The one who solves: a puzzle's size, a person's conventions and a method for each kind of piece, made once and asked for
//! everything.

use crate::conventions::{BreakChoice, Conventions};
use crate::execution::{Action, ExecutionError, Solution, actions};
use crate::holding::{Held, HoldChoice, solved_pieces};
use crate::memo::{Memo, Tracing};
use crate::method::{Method, MethodError, Outfit, letters_effect};
use crate::reason::{Reason, reasons};
use crate::trace::{Cycle, Trace};
use cube::{NotProven, Orbit, Perm, Rotation, Size, State, Sticker};
use thiserror::Error;

/// Size, conventions and methods, ready to pick puzzles up, trace them and carry the letters out.
///
/// A memo needs no method, so there is one for every size; a plan of execution is made where the conventions' methods fit.
///
/// ```
/// use blind::{Conventions, HoldChoice, Solver};
/// use cube::{Algorithm, Orbit, Size, State};
/// let solver = Solver::new(Size::THREE, Conventions::default());
/// let scramble = Algorithm::parse("D2 F' R2 B U2 L' D B2 R F U'", Size::THREE).unwrap();
/// let state = State::solved(Size::THREE).after(&scramble.flatten());
/// let solve = solver.solve(&state, HoldChoice::Conventions).unwrap();
/// let corners = solve.memo.part(Orbit::Corner).unwrap();
/// assert_eq!(solver.reasons(corners).len(), corners.len());
/// let solution = solve.solution.unwrap();
/// assert!(solve.held.state.after(solution.moves()).is_solved());
/// ```
#[derive(Clone, Debug)]
pub struct Solver {
    size: Size,
    conventions: Conventions,
    tracing: Tracing,
    method: Result<Method, MethodError>,
    /// Traced with every break at the first unsolved sticker, where breaks are weighed by time.
    unweighed: Option<Box<Tracing>>,
}

/// A scrambled puzzle taken in hand: how it is picked up, its memo, and its solution.
#[derive(Clone, Debug)]
pub struct Solve {
    /// How it is picked up.
    pub held: Held,
    /// Its memo.
    pub memo: Memo,
    /// The memo carried out, or why it is not.
    pub solution: Result<Solution, NoSolution>,
}

/// Why a memo is not carried out.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum NoSolution {
    /// The conventions' methods do not fit together, or there is none for a kind.
    #[error(transparent)]
    Method(#[from] MethodError),
    /// Centres stand behind other kinds in the order of execution, and a swap of these has turned them about on their faces.
    #[error("centres are carried out before the swaps of other kinds turn them about")]
    CentresLate,
    /// The method is fine, the memo was not carried out.
    #[error(transparent)]
    Execution(#[from] ExecutionError),
}

/// A way of picking a puzzle up, and what it leaves to be memorised.
#[derive(Clone, Debug)]
pub struct HoldOffer {
    /// How it is picked up.
    pub held: Held,
    /// How many letters.
    pub letters: usize,
    /// How many centres have the right colour already, the buffers' counted too.
    pub centres: usize,
    /// How many pieces are right already, the buffers' not counted.
    pub solved: usize,
    /// How often a new cycle begins, pieces turned in their places not counted.
    pub breaks: usize,
}

impl Solver {
    /// A solver with the methods that the conventions name, without algorithms of one's own: three-cycles are found by search.
    pub fn new(size: Size, conventions: Conventions) -> Self {
        Self::with(size, conventions, &Outfit::default())
    }

    /// A solver with algorithms and times of one's own.
    pub fn with(size: Size, conventions: Conventions, outfit: &Outfit<'_>) -> Self {
        let method = Method::with(size, &conventions, outfit);
        let tracing = Tracing::new(&conventions, method.as_ref().ok());
        let weighs = |orbit: &Orbit| conventions.kind(*orbit).breaks == BreakChoice::Least;
        let unweighed = Orbit::of(size).iter().any(weighs).then(|| {
            let mut plain = conventions.clone();
            for &orbit in Orbit::of(size) {
                plain.kind_mut(orbit).breaks = BreakChoice::First;
            }
            Box::new(Tracing::new(&plain, method.as_ref().ok()))
        });
        Self { size, conventions, tracing, method, unweighed }
    }

    /// The size of the puzzle.
    pub const fn size(&self) -> Size {
        self.size
    }

    /// What the person has settled on.
    pub const fn conventions(&self) -> &Conventions {
        &self.conventions
    }

    /// What carries the letters out.
    ///
    /// # Errors
    /// [`MethodError`] where the conventions' methods do not fit together, or there is none for a kind of the size.
    pub const fn method(&self) -> Result<&Method, &MethodError> {
        self.method.as_ref()
    }

    /// What memos are traced by.
    pub const fn tracing(&self) -> &Tracing {
        &self.tracing
    }

    /// Kinds of the size in the order in which they are memorised.
    pub fn memo_order(&self) -> impl Iterator<Item = Orbit> + '_ {
        self.conventions.memo_order.of(self.size)
    }

    /// Picks a scrambled puzzle up.
    ///
    /// [`HoldChoice::Best`] and [`HoldChoice::MostCentres`] choose among all 24 ways on sizes without fixed centres; on the others the
    /// centres decide, and they are as [`HoldChoice::Conventions`].
    ///
    /// # Errors
    /// [`NotProven`], a fault of the program.
    pub fn pick_up(&self, scrambled: &State, choice: HoldChoice) -> Result<Held, NotProven> {
        let best = match choice {
            HoldChoice::Conventions => None,
            HoldChoice::Best => self.offers(scrambled)?.into_iter().next().map(|offer| offer.held),
            HoldChoice::MostCentres => {
                // Of equals the first is taken, which has the shorter memo.
                let most = self.offers(scrambled)?.into_iter().rev().max_by_key(|offer| offer.centres);
                most.map(|offer| offer.held)
            }
        };
        Ok(best.unwrap_or_else(|| Held::new(scrambled, self.conventions.holding)))
    }

    /// All 24 ways of picking up a puzzle without fixed centres, the one with the shortest memo first; ties by most pieces
    /// solved, then fewest cycle breaks, then fewest turns of the whole cube. None where the centres decide.
    ///
    /// In each of them the solved puzzle is to have the colours of the conventions up and in front; so different pieces are
    /// already in their places.
    ///
    /// # Errors
    /// [`NotProven`], a fault of the program.
    pub fn offers(&self, scrambled: &State) -> Result<Vec<HoldOffer>, NotProven> {
        if self.size.is_odd() {
            return Ok(Vec::new());
        }
        let mut offers = Vec::with_capacity(24);
        for rotation in Rotation::all() {
            let held = Held::turned(scrambled, rotation, self.conventions.holding);
            let memo = self.memo(&held.state)?;
            let new = |cycle: &Cycle| !cycle.holds_buffer && cycle.pieces > 1;
            offers.push(HoldOffer {
                letters: memo.letters(),
                centres: solved_pieces(&held.state).iter().filter(|(orbit, _)| orbit.looks_alike()).count(),
                solved: memo.parts().iter().map(|trace| trace.solved().len()).sum(),
                breaks: memo.parts().iter().flat_map(Trace::cycles).filter(new).count(),
                held,
            });
        }
        offers.sort_by_key(|offer| {
            (offer.letters, usize::MAX - offer.solved, offer.breaks, offer.held.rotation.turns().len())
        });
        Ok(offers)
    }

    /// The memo of a state as it is held (see [`Held::state`]).
    ///
    /// # Errors
    /// [`NotProven`] when letters do not solve their kind, which is a fault of the program.
    pub fn memo(&self, state: &State) -> Result<Memo, NotProven> {
        self.tracing.memo(state)
    }

    /// The reasons for all letters of a kind, in order.
    pub fn reasons(&self, trace: &Trace) -> Vec<Reason> {
        let orbit = trace.orbit();
        reasons(trace, self.tracing.chosen(orbit), self.tracing.preference(orbit))
    }

    /// The actions that carry out letters of each kind, right or wrong, as they would be made.
    ///
    /// # Errors
    /// [`NoSolution`] without a method, or for a letter that cannot be carried out.
    pub fn actions(&self, targets: &[(Orbit, Vec<Sticker>)]) -> Result<Vec<Action>, NoSolution> {
        self.actions_noting(targets, None)
    }

    /// As [`Solver::actions`], with the parity algorithm where the solver noted it, whatever the letters say; as these say where
    /// nothing was noted.
    ///
    /// # Errors
    /// As there.
    pub fn actions_noting(
        &self,
        targets: &[(Orbit, Vec<Sticker>)],
        parity: Option<bool>,
    ) -> Result<Vec<Action>, NoSolution> {
        let method = self.method.as_ref().map_err(Clone::clone)?;
        Ok(actions(targets, parity, &self.conventions.execution_order, method)?)
    }

    /// The plan of execution: a memo carried out, applied to the state that it was made for, and found to solve it.
    ///
    /// # Errors
    /// [`NoSolution`] without a method, or when the memo does not solve the state.
    pub fn plan(&self, state: &State, memo: &Memo) -> Result<Solution, NoSolution> {
        let method = self.method.as_ref().map_err(Clone::clone)?;
        let targets = memo.targets();
        let actions = self.actions(&targets)?;
        let times = targets.iter().map(|(orbit, letters)| Some(method.costs(*orbit)?.groups(letters).1));
        let parity = actions.iter().any(|action| matches!(action, Action::Parity { .. }));
        let extra = if parity { method.parity_milliseconds() } else { 0 };
        let milliseconds = times.sum::<Option<u32>>().map(|sum| sum + extra);
        Solution::new(state, actions, milliseconds).map_err(|error| {
            let mut kinds = self.conventions.execution_order.of(self.size);
            let late = kinds.find(|orbit| !orbit.looks_alike()).is_some() && kinds.any(Orbit::looks_alike);
            if late { NoSolution::CentresLate } else { ExecutionError::from(error).into() }
        })
    }

    /// Picks a scrambled puzzle up, traces it, and carries the letters out.
    ///
    /// # Errors
    /// [`NotProven`] for a memo that does not solve, a fault of the program; why there is no solution stands in the solve.
    pub fn solve(&self, scrambled: &State, choice: HoldChoice) -> Result<Solve, NotProven> {
        let held = self.pick_up(scrambled, choice)?;
        let memo = self.memo(&held.state)?;
        let solution = self.plan(&held.state, &memo);
        Ok(Solve { held, memo, solution })
    }

    /// What the letters of an action should do to a state, from the letters alone and not from its moves: their pieces and the
    /// buffer's change places, and after a single letter the other kinds' pieces have changed as the swap changes them. None for
    /// parity, and where a single letter leaves layers turned until the next one.
    pub fn expected(&self, before: &State, action: &Action) -> Option<State> {
        let (orbit, _, targets) = action.letters()?;
        let aside = match targets {
            [_] => Some(*self.method.as_ref().ok()?.swap(orbit)?.effect().effect()),
            _ => None,
        };
        let own = letters_effect(orbit, self.conventions.kind(orbit).buffer, targets);
        let perms: Vec<Perm> = Orbit::of(self.size)
            .iter()
            .map(|&kind| {
                let other = aside.map_or(Perm::IDENTITY, |effect| *effect.orbit(kind));
                before.orbit(kind).then(if kind == orbit { &own } else { &other })
            })
            .collect();
        State::from_orbits(self.size, before.core(), &perms).ok()
    }

    /// The estimated time in thousandths of a second with every break at the first unsolved sticker in letter order, for
    /// comparison; none where breaks are not weighed by time.
    pub fn milliseconds_unweighed(&self, state: &State) -> Option<u32> {
        let memo = self.unweighed.as_ref()?.memo(state).ok()?;
        self.plan(state, &memo).ok()?.milliseconds()
    }
}
