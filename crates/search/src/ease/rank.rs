//! Algorithms in order of the time they take, not of their length.

use super::hands::STATES;
use super::model::{Feature, Model};
use super::{Estimate, hands::Task};
use crate::cycle::{Effect, FindError, Finder, TurnSet};
use cube::Turn;
use std::ops::ControlFlow;

/// An algorithm with the time it takes.
#[derive(Clone, PartialEq, Debug)]
pub struct Ranked {
    /// The turns.
    pub turns: Vec<Turn>,
    /// How the hands make them.
    pub estimate: Estimate,
}

/// Algorithms for an effect, the easiest first.
#[derive(Clone, PartialEq, Debug)]
pub struct Ranking {
    /// In order of estimated seconds, then of length.
    pub algorithms: Vec<Ranked>,
    /// The least length of all algorithms, listed or not, proven: all shorter sequences were searched. `None` when there
    /// is none up to [`Ranking::searched`].
    pub shortest: Option<usize>,
    /// So many of them are proven to be the easiest of all sequences of the set, however long.
    pub proven: usize,
    /// All sequences up to this length were searched.
    pub searched: usize,
}

/// The easiest algorithms for an effect, best first.
///
/// Searches length by length and stops when no longer sequence can be among the first `count`: the least time that
/// any sequence of so many turns takes is known from the model. Ends at the finder's greatest length at the latest; then
/// [`Ranking::proven`] tells how far the order is certain. Every algorithm was applied to the model of the cube.
///
/// # Errors
/// As [`Finder::find`]. `on` hears of the length that is searched, and of how much of it is done in thousandths.
pub fn best_first(
    finder: &Finder,
    model: &Model,
    effect: &Effect,
    count: usize,
    on: &mut dyn FnMut(usize, u32) -> ControlFlow<()>,
) -> Result<Ranking, FindError> {
    let set = finder.turn_set();
    let mut bound = Bound::new(model, set);
    let mut by_length = finder.by_length(effect)?;
    let mut algorithms: Vec<Ranked> = Vec::new();
    let mut shortest = None;
    let mut searched = 0;
    let mut proven = 0;
    while let Some(at) = by_length.next(on)? {
        searched = at.length;
        if shortest.is_none() && !at.algorithms.is_empty() {
            shortest = Some(at.length);
        }
        for turns in at.algorithms {
            let estimate = model.estimate(&turns);
            algorithms.push(Ranked { turns, estimate });
        }
        algorithms.sort_by(|a, b| {
            let seconds = a.estimate.seconds.total_cmp(&b.estimate.seconds);
            seconds.then(a.turns.len().cmp(&b.turns.len())).then_with(|| a.turns.cmp(&b.turns))
        });
        // No turn counts more than the dearest, so what counts more has at least so many turns.
        let rest = bound.seconds((searched + 1).div_ceil(set.dearest()));
        proven = algorithms.iter().take_while(|ranked| ranked.estimate.seconds <= rest).count();
        if proven >= count {
            break;
        }
    }
    algorithms.truncate(count);
    let proven = proven.min(algorithms.len());
    Ok(Ranking { algorithms, shortest, proven, searched })
}

/// The least seconds that any listed sequence of so many turns takes.
struct Bound<'a> {
    model: &'a Model,
    set: &'a TurnSet,
    tasks: Vec<(Turn, Task)>,
    /// For the last turn and the state of the hands, the least seconds; by number of turns.
    least: Vec<Vec<f64>>,
    by_turns: Vec<f64>,
}

impl<'a> Bound<'a> {
    fn new(model: &'a Model, set: &'a TurnSet) -> Self {
        let tasks = set.turns().iter().map(|&turn| (turn, model.task(turn))).collect();
        let by_turns = vec![model.seconds()[Feature::Start.index()]];
        Self { model, set, tasks, least: Vec::new(), by_turns }
    }

    fn seconds(&mut self, turns: usize) -> f64 {
        while self.by_turns.len() <= turns {
            let first = self.least.is_empty();
            let next: Vec<Vec<f64>> =
                self.tasks.iter().map(|(turn, task)| self.after(*turn, task, first)).collect();
            let best = next.iter().flatten().copied().fold(f64::INFINITY, f64::min);
            self.least = next;
            self.by_turns.push(best);
        }
        self.by_turns[turns]
    }

    fn after(&self, turn: Turn, task: &Task, first: bool) -> Vec<f64> {
        let mut next = vec![f64::INFINITY; STATES];
        if first {
            let start = self.model.seconds()[Feature::Start.index()];
            task.for_each_step(None, &|_| true, &mut |step| {
                let reached = &mut next[step.to as usize];
                *reached = reached.min(start + self.model.cost(step));
            });
            return next;
        }
        for ((before, _), least) in self.tasks.iter().zip(&self.least) {
            if !self.set.may_follow(*before, turn) {
                continue;
            }
            let led = |from: u8| least[from as usize].is_finite();
            task.for_each_step(Some(*before), &led, &mut |step| {
                let reached = &mut next[step.to as usize];
                *reached = reached.min(least[step.from as usize] + self.model.cost(step));
            });
        }
        next
    }
}
