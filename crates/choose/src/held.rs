//! Conditions on the memo of a puzzle that is picked up in the best of all ways: nothing counts them, so states are tried.

use crate::class::{DrawError, Estimate};
use crate::condition::Condition;
use blind::{HoldChoice, Solver};
use cube::State;
use rand::Rng;
use search::scramble::draw_state;

/// Draws states of an even cube whose memo, held best, meets a condition: uniformly random ones until one does.
///
/// Each state that meets it is as likely as any other. How many do is not counted, only estimated; a condition that none meets is
/// tried until the caller stops.
///
/// ```
/// use blind::{Conventions, HoldChoice, Solver};
/// use choose::{BestHeld, Condition, Feature};
/// use cube::Size;
/// let solver = Solver::new(Size::TWO, Conventions::default());
/// let condition = Condition::new(Size::TWO, Feature::Letters.at_most(6)).unwrap();
/// let state = BestHeld::new(&condition, &solver).draw(&mut search::random::seeded(1), &mut |_| true).unwrap();
/// let held = solver.pick_up(&state, HoldChoice::Best).unwrap();
/// assert!(condition.holds(&solver.memo(&held.state).unwrap()));
/// ```
pub struct BestHeld<'a> {
    condition: &'a Condition,
    solver: &'a Solver,
}

/// After so many states `go_on` is asked again.
const EACH: u64 = 64;

impl<'a> BestHeld<'a> {
    /// For a condition and whoever traces.
    pub const fn new(condition: &'a Condition, solver: &'a Solver) -> Self {
        Self { condition, solver }
    }

    /// Draws a state as it lies after the scramble. `go_on` is asked now and then, with the number of states tried so far.
    ///
    /// # Errors
    /// [`DrawError`] when stopped.
    pub fn draw(
        &self,
        generator: &mut impl Rng,
        go_on: &mut dyn FnMut(u64) -> bool,
    ) -> Result<State, DrawError> {
        let mut tries = 0;
        loop {
            let (state, met) = self.try_once(generator, &mut tries, go_on)?;
            if met {
                return Ok(state);
            }
        }
    }

    /// Finds the share of states that meets the condition by trying.
    ///
    /// # Errors
    /// [`DrawError`] when stopped.
    pub fn estimate(
        &self,
        tries: u64,
        generator: &mut impl Rng,
        go_on: &mut dyn FnMut(u64) -> bool,
    ) -> Result<Estimate, DrawError> {
        let (mut met, mut count) = (0, 0);
        for _ in 0..tries {
            met += u64::from(self.try_once(generator, &mut count, go_on)?.1);
        }
        Ok(Estimate::of(met, tries, 1.0))
    }

    fn try_once(
        &self,
        generator: &mut impl Rng,
        tries: &mut u64,
        go_on: &mut dyn FnMut(u64) -> bool,
    ) -> Result<(State, bool), DrawError> {
        *tries += 1;
        if tries.is_multiple_of(EACH) && !go_on(*tries) {
            return Err(DrawError::Stopped { tries: *tries });
        }
        let state = draw_state(self.condition.size(), generator)?;
        let held = self.solver.pick_up(&state, HoldChoice::Best)?;
        Ok((state, self.condition.holds(&self.solver.memo(&held.state)?)))
    }
}
