//! The attempt as it was planned.

use super::act::Acts;
use super::course::{Course, recalled};
use super::{Ask, WhyError};
use crate::check::{MemoCheck, check_memo};
use blind::{Action, ExecutionError, Held, Method, Solver, Trace};
use cube::{NotProven, Orbit, Rotation, State, Sticker, Turn};

/// The most scrambles of a list.
pub const LONGEST_LIST: usize = 200;

/// How the attempt began.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Begun {
    /// With a solved puzzle and these turns.
    Scramble(Vec<Turn>),
    /// With a puzzle in this state; how it was scrambled is not known.
    State(Box<State>),
}

/// What should have been done: the attempt as it was planned.
#[derive(Clone, Debug)]
pub struct Plan<'a> {
    pub(super) solver: &'a Solver,
    pub(super) method: &'a Method,
    pub(super) begun: Begun,
    pub(super) hold: Rotation,
    pub(super) memo: Vec<(Orbit, Vec<Sticker>)>,
    /// Where the letters were traced; none where they were given.
    pub(super) traces: Vec<Trace>,
    /// The scrambles among which this one stands.
    pub(super) list: Vec<Vec<Turn>>,
    /// The puzzle as it is picked up.
    pub(super) held: State,
}

impl<'a> Plan<'a> {
    /// The plan of an attempt: the memo that was carried out, or ours if none is given, or none of a kind.
    ///
    /// # Errors
    /// [`WhyError::Method`] where there is no method; [`WhyError::Execution`] for a memo that cannot be carried out: a letter of the
    /// buffer's own piece.
    pub fn new(
        begun: Begun,
        memo: Option<Vec<(Orbit, Vec<Sticker>)>>,
        solver: &'a Solver,
    ) -> Result<Self, WhyError> {
        let size = solver.size();
        let method = solver.method().map_err(Clone::clone)?;
        let start = match &begun {
            Begun::Scramble(turns) => State::solved(size).after(turns),
            Begun::State(state) => **state,
        };
        let held = picked_up(&start, memo.as_deref(), solver)?;
        let ours = solver.memo(&held.state)?;
        let (memo, traces) = match memo {
            // Of kinds that nothing was said of, what should have been memorised.
            Some(mut memo) => {
                let unsaid = |(orbit, _): &(Orbit, Vec<Sticker>)| memo.iter().all(|(said, _)| said != orbit);
                let unsaid: Vec<_> = ours.targets().into_iter().filter(unsaid).collect();
                memo.extend(unsaid);
                (memo, Vec::new())
            }
            None => (ours.targets(), ours.parts().to_vec()),
        };
        for (orbit, letters) in &memo {
            method.carrier(*orbit).ok_or(ExecutionError::KindMissing(*orbit))?;
            let buffer = solver.conventions().kind(*orbit).buffer;
            if let Some(&target) = letters.iter().find(|&&target| orbit.same_piece(target, buffer)) {
                return Err(ExecutionError::OwnPiece { orbit: *orbit, target }.into());
            }
        }
        Ok(Self {
            solver,
            method,
            begun,
            hold: held.rotation,
            memo,
            traces,
            held: held.state,
            list: Vec::new(),
        })
    }

    /// The same attempt where the scramble is one of a list, of which another may have been made.
    ///
    /// # Errors
    /// [`WhyError::LongList`] for more than [`LONGEST_LIST`] scrambles.
    pub fn of_list(self, list: Vec<Vec<Turn>>) -> Result<Self, WhyError> {
        if list.len() > LONGEST_LIST {
            return Err(WhyError::LongList(list.len()));
        }
        Ok(Self { list, ..self })
    }

    /// The state before anything was turned.
    pub fn start(&self) -> State {
        match &self.begun {
            Begun::Scramble(_) => State::solved(self.solver.size()),
            Begun::State(state) => **state,
        }
    }

    /// How the puzzle is picked up.
    pub const fn hold(&self) -> Rotation {
        self.hold
    }

    /// The letters of each kind.
    pub fn memo(&self) -> &[(Orbit, Vec<Sticker>)] {
        &self.memo
    }

    /// What is wrong with the memo itself; `None` for a memo that solves the puzzle.
    pub fn memo_fault(&self) -> Option<MemoCheck> {
        let check = check_memo(&self.held, &self.memo, None, self.solver).ok()?;
        (!check.right()).then_some(check)
    }

    /// Whose plan it is.
    pub const fn solver(&self) -> &'a Solver {
        self.solver
    }

    pub(super) fn course(&self, acts: &Acts<'_>) -> Course {
        let recalled = recalled(&self.memo, self.solver.conventions(), self.method);
        Course::new(self.scramble(), self.hold, recalled, acts)
    }

    fn scramble(&self) -> &[Turn] {
        match &self.begun {
            Begun::Scramble(turns) => turns,
            Begun::State(_) => &[],
        }
    }

    /// All turns that should have been made, from the scramble on.
    pub fn turns(&self) -> Vec<Turn> {
        let actions = self.solver.actions(&self.memo).unwrap_or_default();
        let made = actions.iter().flat_map(Action::turns);
        self.scramble().iter().chain(self.hold.turns()).copied().chain(made).collect()
    }

    /// What should have come out.
    pub fn outcome(&self) -> State {
        self.start().after(&self.turns())
    }

    /// Whether there is what an answer is about.
    pub(super) fn has(&self, ask: Ask) -> Result<(), WhyError> {
        let letters = |orbit: Orbit| {
            self.memo.iter().find(|(kind, _)| *kind == orbit).map(|(_, letters)| letters.len())
        };
        match ask {
            Ask::Letter(orbit, letter) if letters(orbit).is_none_or(|count| letter >= count) => {
                Err(WhyError::NothingToAnswer { ask, letters: letters(orbit).unwrap_or(0) })
            }
            Ask::Kind(orbit) if letters(orbit).is_none() => {
                Err(WhyError::NothingToAnswer { ask, letters: 0 })
            }
            _ => Ok(()),
        }
    }
}

/// How the puzzle was picked up: as it is always, or, on sizes where nothing says how it is held, as a memo solves it that does not
/// solve it so.
fn picked_up(
    start: &State,
    memo: Option<&[(Orbit, Vec<Sticker>)]>,
    solver: &Solver,
) -> Result<Held, NotProven> {
    let usual = Held::new(start, solver.conventions().holding);
    let solves = |held: &Held| {
        memo.is_none_or(|memo| check_memo(&held.state, memo, None, solver).is_ok_and(|check| check.right()))
    };
    if start.size().is_odd() || solves(&usual) {
        return Ok(usual);
    }
    let mut others = solver.offers(start)?.into_iter().map(|offer| offer.held);
    Ok(others.find(solves).unwrap_or(usual))
}
