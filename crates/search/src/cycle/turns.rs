//! Which turns may be used, what each counts, and the runs of turns about one axis that are worth making.

use cube::{Amount, Axis, Block, Element, Group, Metric, NoSuchTurn, Size, Slice, State, Turn};
use std::collections::{BTreeMap, HashMap, HashSet};
use thiserror::Error;

/// Why turns do not make a set to search with.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum TurnSetError {
    /// No turns.
    #[error("no turns are given")]
    Empty,
    /// The search knows the sizes whose elements fit a key, the 2x2 and the 3x3.
    #[error("algorithms are searched on the 2x2 and the 3x3, not on a {0}")]
    Size(Size),
    /// The size lacks a turn.
    #[error(transparent)]
    NoSuchTurn(#[from] NoSuchTurn),
    /// A turn is there but not the one that undoes it.
    #[error("{0} is in the set, {inverse} is not; the search needs both", inverse = .0.inverse())]
    NoInverse(Turn),
    /// A turn that counts nothing has no shortest sequences.
    #[error("{0} counts nothing in this metric, so nothing is shortest; count what the hands do instead")]
    Free(Turn),
    /// A name in a list of turns.
    #[error("`{0}` is no block of turns; U, Uw, u, 2U, M or x are")]
    Unknown(String),
}

/// A run: turns about one axis, in the set's order, and the least that any turns with its effect count.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(super) struct Run {
    pub turns: Vec<u8>,
    pub cost: usize,
}

/// What the runs about one axis can do, each effect once.
pub(super) struct AxisEffect {
    pub cost: usize,
    pub element: Element,
    /// The runs that do it for that cost.
    pub runs: Vec<Run>,
    /// What undoes it.
    pub undo: Element,
}

/// The turns that a search may use.
///
/// Every turn counts by the metric: with [`Metric::HalfTurn`] an outer turn counts 1 and a slice 2; with
/// [`Metric::SliceTurn`] a slice counts 1; with [`Metric::Execution`] a rotation counts 1 too, which in the others is
/// free and so refused. With [`Metric::QuarterTurn`] a half turn counts 2.
///
/// Sequences are listed in one order only where turns commute: those about one axis stand in the order of the set
/// (U L F R B D, wide turns after, then slices, then rotations). A run of turns about an axis is made as cheaply as the
/// set allows, so no `R L R'` and no `R R`; where two ways cost the same, both are listed.
pub struct TurnSet {
    group: &'static Group,
    metric: Metric,
    turns: Vec<Turn>,
    axes: [Vec<AxisEffect>; 3],
    allowed: HashSet<Vec<u8>>,
}

impl TurnSet {
    /// A set from turns.
    ///
    /// # Errors
    /// [`TurnSetError`]: empty, not on the 2x2 or 3x3, a turn that the size lacks, one whose inverse is missing, or one that
    /// counts nothing.
    pub fn new(size: Size, turns: &[Turn], metric: Metric) -> Result<Self, TurnSetError> {
        let group = Group::of(size).ok_or(TurnSetError::Size(size))?;
        let mut turns = turns.to_vec();
        turns.sort_unstable();
        turns.dedup();
        if turns.is_empty() {
            return Err(TurnSetError::Empty);
        }
        for &turn in &turns {
            turn.check(size)?;
            if !turns.contains(&turn.inverse()) {
                return Err(TurnSetError::NoInverse(turn));
            }
            if metric.of(turn) == 0 {
                return Err(TurnSetError::Free(turn));
            }
        }
        let mut set = Self {
            group,
            metric,
            turns,
            axes: [Vec::new(), Vec::new(), Vec::new()],
            allowed: HashSet::new(),
        };
        for axis in Axis::ALL {
            let effects = set.runs_about(axis);
            set.allowed
                .extend(effects.iter().flat_map(|effect| effect.runs.iter().map(|run| run.turns.clone())));
            set.axes[axis.index()] = effects;
        }
        Ok(set)
    }

    /// A set from blocks, each turned by any amount: face letters, `Rw` or `r`, `2R`, `M`, `x` ([`Block::parse`]), separated by commas
    /// or spaces.
    ///
    /// # Errors
    /// [`TurnSetError::Unknown`] for what is no block, otherwise as [`TurnSet::new`].
    ///
    /// ```
    /// use cube::{Metric, Size};
    /// use search::cycle::TurnSet;
    /// assert_eq!(TurnSet::parse(Size::THREE, "R, U, M", Metric::SliceTurn).unwrap().turns().len(), 9);
    /// assert!(TurnSet::parse(Size::THREE, "R x", Metric::SliceTurn).is_err());
    /// ```
    pub fn parse(size: Size, blocks: &str, metric: Metric) -> Result<Self, TurnSetError> {
        let mut turns = Vec::new();
        for name in blocks.split(|letter: char| letter == ',' || letter.is_whitespace()) {
            if name.is_empty() {
                continue;
            }
            let block = Block::parse(name).ok_or_else(|| TurnSetError::Unknown(name.to_owned()))?;
            turns.extend(Turn::of(block));
        }
        Self::new(size, &turns, metric)
    }

    /// The 18 face turns, counted in half turns.
    ///
    /// # Errors
    /// As [`TurnSet::new`] for a size that is not searched.
    pub fn faces(size: Size) -> Result<Self, TurnSetError> {
        Self::new(size, &Turn::faces().collect::<Vec<_>>(), Metric::HalfTurn)
    }

    /// Face and slice turns, a slice counted as one.
    ///
    /// # Errors
    /// As [`TurnSet::new`] for a size that is not searched or has no slices.
    pub fn faces_and_slices(size: Size) -> Result<Self, TurnSetError> {
        let slices = Slice::ALL.into_iter().flat_map(|slice| Turn::of(Block::Slice(slice)));
        Self::new(size, &Turn::faces().chain(slices).collect::<Vec<_>>(), Metric::SliceTurn)
    }

    /// The size it is for.
    pub const fn size(&self) -> Size {
        self.group.size()
    }

    /// The elements that its turns make.
    pub(super) const fn group(&self) -> &'static Group {
        self.group
    }

    /// The metric that goes with such turns where none is asked for: with rotations what the hands do, with slices or other inner
    /// layers these as one, else half turns.
    pub fn usual_metric(&self) -> Metric {
        if self.turns().iter().any(|turn| turn.is_rotation()) {
            Metric::Execution
        } else if self.turns().iter().any(|turn| matches!(turn.block, Block::Inner { .. } | Block::Slice(_)))
        {
            Metric::SliceTurn
        } else {
            Metric::HalfTurn
        }
    }

    /// How turns are counted.
    pub const fn metric(&self) -> Metric {
        self.metric
    }

    /// The turns, in the order in which commuting ones are written.
    pub fn turns(&self) -> &[Turn] {
        &self.turns
    }

    /// What a sequence counts.
    pub fn cost(&self, turns: &[Turn]) -> usize {
        turns.iter().map(|&turn| self.metric.of(turn)).sum()
    }

    /// The most that one turn of the set counts.
    pub(crate) fn dearest(&self) -> usize {
        self.turns.iter().map(|&turn| self.metric.of(turn)).max().unwrap_or(1)
    }

    pub(super) fn about(&self, axis: usize) -> &[AxisEffect] {
        &self.axes[axis]
    }

    pub(super) fn turn(&self, number: u8) -> Turn {
        self.turns[number as usize]
    }

    /// The number of the turn that undoes one.
    pub(super) fn undoing(&self, number: u8) -> u8 {
        let undoing = self.turn(number).inverse();
        self.turns.iter().position(|&turn| turn == undoing).map_or(number, |at| at as u8)
    }

    /// The sequence, by numbers, with commuting turns in the set's order.
    pub(super) fn in_order(&self, mut turns: Vec<u8>) -> Vec<u8> {
        for run in turns.chunk_by_mut(|&a, &b| self.turn(a).block.axis() == self.turn(b).block.axis()) {
            run.sort_unstable();
        }
        turns
    }

    /// Whether it has these turns at the same count, wherever a change takes its own.
    pub(super) fn is_kept_by(&self, change: impl Fn(Turn) -> Turn) -> bool {
        self.turns.iter().all(|&turn| self.turns.contains(&change(turn)))
    }

    /// The sequence with commuting turns in the set's order.
    pub(super) fn ordered(turns: &[Turn]) -> Vec<Turn> {
        let mut ordered = turns.to_vec();
        for run in ordered.chunk_by_mut(|a, b| a.block.axis() == b.block.axis()) {
            run.sort_unstable();
        }
        ordered
    }

    /// Whether turns (by number) are written as this set lists them.
    pub(super) fn lists(&self, turns: &[u8]) -> bool {
        turns
            .chunk_by(|&a, &b| self.turn(a).block.axis() == self.turn(b).block.axis())
            .all(|run| self.allowed.contains(run))
    }

    /// Whether a listed sequence may have one turn right after another.
    pub(crate) fn may_follow(&self, before: Turn, turn: Turn) -> bool {
        let number = |turn: Turn| self.turns.iter().position(|&other| other == turn).map(|at| at as u8);
        number(before).zip(number(turn)).is_some_and(|(before, turn)| self.lists(&[before, turn]))
    }

    fn runs_about(&self, axis: Axis) -> Vec<AxisEffect> {
        let numbers: Vec<u8> =
            (0..self.turns.len() as u8).filter(|&number| self.turn(number).block.axis() == axis).collect();
        let least = self.least_costs(&numbers);
        let mut found: BTreeMap<(usize, Vec<u8>), State> = BTreeMap::new();
        let mut open = vec![(Vec::<u8>::new(), State::solved(self.size()), 0)];
        while let Some((run, state, cost)) = open.pop() {
            for &number in numbers.iter().filter(|&&number| run.last().is_none_or(|&last| last <= number)) {
                let turn = self.turn(number);
                let next = state.after(&[turn]);
                let next_cost = cost + self.metric.of(turn);
                // Part of a run that is as cheap as can be is so too.
                if self.merges(&run, turn) || least.get(&next).is_none_or(|&least| least < next_cost) {
                    continue;
                }
                let mut longer = run.clone();
                longer.push(number);
                found.insert((next_cost, longer.clone()), next);
                open.push((longer, next, next_cost));
            }
        }
        let mut effects: Vec<(State, AxisEffect)> = Vec::new();
        for ((cost, turns), state) in found {
            let run = Run { turns, cost };
            match effects.iter_mut().find(|(other, _)| *other == state) {
                Some((_, effect)) => effect.runs.push(run),
                None => effects.push((
                    state,
                    AxisEffect {
                        cost,
                        element: self.group.element(&state),
                        undo: self.group.element(&state.inverse()),
                        runs: vec![run],
                    },
                )),
            }
        }
        effects.into_iter().map(|(_, effect)| effect).collect()
    }

    /// Whether the run already turns this block, and one turn of the set would do for both.
    fn merges(&self, run: &[u8], turn: Turn) -> bool {
        run.iter().any(|&number| {
            let earlier = self.turn(number);
            let sum = i64::from(earlier.amount.quarters() + turn.amount.quarters());
            earlier.block == turn.block
                && Amount::from_quarters(sum)
                    .is_none_or(|amount| self.turns.contains(&Turn::new(turn.block, amount)))
        })
    }

    /// For everything that turns about one axis can do, the least it counts.
    fn least_costs(&self, numbers: &[u8]) -> HashMap<State, usize> {
        let mut least = HashMap::from([(State::solved(self.size()), 0)]);
        let mut changed = true;
        while changed {
            changed = false;
            let known: Vec<(State, usize)> = least.iter().map(|(state, cost)| (*state, *cost)).collect();
            for (state, cost) in known {
                for &number in numbers {
                    let turn = self.turn(number);
                    let next_cost = cost + self.metric.of(turn);
                    let entry = least.entry(state.after(&[turn])).or_insert(usize::MAX);
                    if next_cost < *entry {
                        *entry = next_cost;
                        changed = true;
                    }
                }
            }
        }
        least
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use cube::Face;

    #[test]
    fn runs_about_an_axis_of_face_turns() {
        let set = TurnSet::faces(Size::THREE).unwrap();
        for axis in 0..3 {
            // Two faces, each still or by three amounts: 4 · 4 - 1.
            assert_eq!(set.about(axis).len(), 15);
            assert!(set.about(axis).iter().all(|effect| effect.runs.len() == 1));
        }
    }

    #[test]
    fn runs_with_slices_and_rotations() {
        let set = TurnSet::faces_and_slices(Size::THREE).unwrap();
        assert!((0..3).all(|axis| set.about(axis).len() == 63));
        let set = TurnSet::parse(Size::THREE, "R L M r l x", Metric::Execution).unwrap();
        // Three layers, each at four angles: 4³ less the one where nothing moves.
        assert_eq!(set.about(0).len(), 63);
        assert!(set.lists(&[]));
        // On the 2x2 the two layers at one angle are a rotation.
        let set = TurnSet::parse(Size::TWO, "R L x", Metric::Execution).unwrap();
        assert_eq!(set.about(0).len(), 15);
    }

    #[test]
    fn what_is_no_set_is_refused() {
        let quarter = Turn::face(Face::R, Amount::Clockwise);
        assert!(matches!(
            TurnSet::new(Size::THREE, &[quarter], Metric::HalfTurn),
            Err(TurnSetError::NoInverse(_))
        ));
        assert!(matches!(TurnSet::faces(Size::new(4).unwrap()), Err(TurnSetError::Size(_))));
        assert!(matches!(TurnSet::faces_and_slices(Size::TWO), Err(TurnSetError::NoSuchTurn(_))));
        assert!(matches!(
            TurnSet::parse(Size::THREE, "R Q", Metric::HalfTurn),
            Err(TurnSetError::Unknown(_))
        ));
        assert!(matches!(TurnSet::parse(Size::THREE, " ,", Metric::HalfTurn), Err(TurnSetError::Empty)));
        assert!(matches!(TurnSet::parse(Size::THREE, "R x", Metric::HalfTurn), Err(TurnSetError::Free(_))));
    }

    #[test]
    fn without_half_turns_a_quarter_may_come_twice() {
        let quarters = [Amount::Clockwise, Amount::Counter].map(|amount| Turn::face(Face::R, amount));
        let set = TurnSet::new(Size::THREE, &quarters, Metric::HalfTurn).unwrap();
        let runs: usize = set.about(0).iter().map(|effect| effect.runs.len()).sum();
        // R, R', and the half turn as R R or R' R'.
        assert_eq!(runs, 4);
    }
}
