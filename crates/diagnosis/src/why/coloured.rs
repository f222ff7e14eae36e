//! Slips of an attempt on a bigger puzzle: many states look alike there, so what came out is a colouring and not a state.
//!
//! A first slip changes what stands before all that comes after: the outcome is then a state `U` and after it what the plan does, and with a
//! second slip later `U` and after it the outcome `W` of that slip alone. What is seen at a place is the colour that `U` has where
//! `W` took it from. So the first slips are sorted by the colourings of `U`, and for each second slip and each way to hold the puzzle
//! the colouring that was seen is carried back through `W` and looked up: slips met from both ends. Wings, corners and edges are seen as
//! they are; of centres only the colour.

use super::craft::Craft;
use super::finding::Unlooked;
use super::space::{Candidate, Gathered};
use super::{Diagnosis, Explanation, Inquiry, Observed, Plan, WhyError};
use crate::slip::{Change, Slip};
use cube::{Claim, Fingerprint, NotProven, Orbit, Rotation, State, Turn};
use rustc_hash::{FxHashMap, FxHashSet};

/// How often progress is told in a sweep.
const STEPS: usize = 64;

/// What can be seen of a state, as a number: states that look alike have the same.
fn seen(state: &State) -> u64 {
    let mut print = Fingerprint::default();
    print.take_hold(state.core());
    for &orbit in Orbit::of(state.size()) {
        let table = state.orbit(orbit).table();
        if orbit.looks_alike() {
            // Four stickers a face, one face after another.
            print.take(&table.map(|sticker| sticker / 4));
        } else {
            print.take(table);
        }
    }
    print.number()
}

/// The rotation after which a state looks as another one.
fn held_to_look_like(state: &State, other: &State) -> Option<Rotation> {
    Rotation::all().find(|rotation| state.after(rotation.turns()).looks_like(other))
}

/// The slips of an attempt, each with the outcome that it alone leads to.
struct Outcomes<'a> {
    plan: &'a Plan<'a>,
    tape: &'a [Turn],
    cuts: [usize; 2],
    slips: Gathered<'a>,
    planned: State,
    /// The candidates that do something, each with the outcome that it alone leads to.
    alone: Vec<(u32, State)>,
}

/// Ways in which it may have happened that act alike.
struct Group {
    weight: f64,
    count: usize,
    /// The likeliest, with their weights, by numbers of candidates.
    stories: Vec<(f64, Vec<u32>)>,
}

/// How many stories of a group are kept.
const KEPT: usize = 12;

impl<'a> Outcomes<'a> {
    fn new(plan: &'a Plan<'a>, tape: &'a [Turn], cuts: [usize; 2], slips: Gathered<'a>) -> Self {
        let size = plan.solver.size();
        let mut before = vec![plan.start()];
        for &turn in tape {
            let next = before[before.len() - 1].after(&[turn]);
            before.push(next);
        }
        let mut after = vec![State::solved(size); tape.len() + 1];
        for (at, &turn) in tape.iter().enumerate().rev() {
            after[at] = State::solved(size).after(&[turn]).then(&after[at + 1]);
        }
        let planned = before[tape.len()];
        let alone = slips.candidates.iter().enumerate().filter(|(_, candidate)| candidate.weight > 0.0);
        let alone = alone
            .filter_map(|(number, candidate)| {
                let first = candidate.edits.first()?;
                let (mut state, mut at) = (before[first.range.start], first.range.start);
                for edit in &candidate.edits {
                    state = state.after(&tape[at..edit.range.start]).after(&edit.made.turns());
                    at = edit.range.end;
                }
                let outcome = state.then(&after[at]);
                (outcome != planned).then_some((number as u32, outcome))
            })
            .collect();
        Self { plan, tape, cuts, slips, planned, alone }
    }

    /// All single slips and pairs of slips after which it looks as it was seen, those that act alike together.
    fn found(
        &self,
        outcome: &State,
        shares: [f64; 2],
        progress: &mut dyn FnMut(f64) -> bool,
    ) -> (FxHashMap<[u64; 2], Group>, bool) {
        let mut found: FxHashMap<[u64; 2], Group> = FxHashMap::default();
        let mut add = |effects: [u64; 2], weight: f64, story: Vec<u32>| {
            let group = found.entry(effects).or_insert(Group { weight: 0.0, count: 0, stories: Vec::new() });
            group.weight += weight;
            group.count += 1;
            let at = group.stories.partition_point(|(other, _)| *other >= weight);
            if at < KEPT {
                group.stories.insert(at, (weight, story));
                group.stories.truncate(KEPT);
            }
        };
        let held: Vec<State> = Rotation::all().map(|rotation| outcome.after(rotation.turns())).collect();
        let looks: FxHashSet<u64> = held.iter().map(seen).collect();
        let mut first: FxHashMap<u64, Vec<u32>> = FxHashMap::default();
        let undone = self.planned.inverse();
        for (number, alone) in &self.alone {
            let look = seen(alone);
            if looks.contains(&look) {
                add([0, look], shares[0] * self.candidate(*number).weight, vec![*number]);
            }
            first.entry(seen(&alone.then(&undone))).or_default().push(*number);
        }
        let look_of: FxHashMap<u32, u64> =
            self.alone.iter().map(|(number, alone)| (*number, seen(alone))).collect();
        for (at, (second, alone)) in self.alone.iter().enumerate() {
            if at % (self.alone.len() / STEPS).max(1) == 0
                && !progress(at as f64 / self.alone.len().max(1) as f64)
            {
                return (found, true);
            }
            let undone = alone.inverse();
            let later = self.candidate(*second);
            for state in &held {
                for &number in first.get(&seen(&state.then(&undone))).into_iter().flatten() {
                    let earlier = self.candidate(number);
                    if earlier.end() <= later.begin() && number != *second {
                        let weight = 2.0 * shares[1] * earlier.weight * later.weight;
                        let mut effects = [look_of[&number], look_of[second]];
                        effects.sort_unstable();
                        add(effects, weight, vec![number, *second]);
                    }
                }
            }
        }
        (found, false)
    }

    /// Plays a story.
    ///
    /// # Errors
    /// [`NotProven`] when it does not look as it was seen.
    fn explanation(
        &self,
        stories: &[(f64, Vec<u32>)],
        weight: f64,
        ways: usize,
        outcome: &State,
    ) -> Result<Explanation, NotProven> {
        let story = stories.first().map_or(&[][..], |(_, story)| story);
        let passes: Vec<State> = (0..=story.len())
            .map(|count| self.plan.start().after(&self.played(&story[..count]).concat()))
            .collect();
        let [scrambled, rotated, mut played] = self.played(story);
        let last = passes.last().unwrap_or(&self.planned);
        let hold = held_to_look_like(last, outcome).ok_or(NotProven { claim: Claim::Explanation })?;
        played.extend(hold.turns());
        let slips = |story: &[u32]| -> Vec<Slip> {
            story.iter().map(|&number| self.candidate(number).slip.clone()).collect()
        };
        let alike = stories.iter().skip(1).map(|(_, story)| slips(story)).collect();
        Ok(Explanation { slips: slips(story), weight, alike, ways, scrambled, rotated, played, passes })
    }

    fn candidate(&self, number: u32) -> &Candidate {
        &self.slips.candidates[number as usize]
    }

    /// The turns of a story in the parts of the attempt: scramble, rotations, execution.
    fn played(&self, story: &[u32]) -> [Vec<Turn>; 3] {
        let mut turns = self.tape.to_vec();
        let mut cuts = self.cuts;
        // From the last slip on, so that the places of those before it stay.
        for &number in story.iter().rev() {
            let candidate = self.candidate(number);
            for edit in candidate.edits.iter().rev() {
                let made = edit.made.turns();
                let shift = |cut: usize| cut + made.len() - edit.range.len();
                match candidate.slip.change {
                    Change::Scramble { .. }
                    | Change::ScrambleOrder { .. }
                    | Change::ScrambleWhole { .. }
                    | Change::ScrambleListed { .. } => cuts = cuts.map(shift),
                    Change::Holding { .. } => cuts[1] = shift(cuts[1]),
                    Change::Turn { .. }
                    | Change::Whole { .. }
                    | Change::Held { .. }
                    | Change::Parity { .. }
                    | Change::Buffer { .. }
                    | Change::Kinds { .. }
                    | Change::Letters { .. }
                    | Change::Ended { .. } => {}
                }
                turns.splice(edit.range.clone(), made);
            }
        }
        [turns[..cuts[0]].to_vec(), turns[cuts[0]..cuts[1]].to_vec(), turns[cuts[1]..].to_vec()]
    }
}

/// Finds what explains an outcome of which every sticker is known.
///
/// # Errors
/// [`WhyError::Size`] where only some pieces or stickers are known, [`WhyError::OtherSize`].
pub(super) fn why(
    plan: &Plan<'_>,
    observed: &Observed,
    inquiry: &Inquiry<'_>,
    progress: &mut dyn FnMut(f64) -> bool,
) -> Result<Diagnosis, WhyError> {
    let size = plan.solver.size();
    let Observed::State(outcome) = observed else { return Err(WhyError::Size(size)) };
    if outcome.size() != size {
        return Err(WhyError::OtherSize { planned: size, seen: outcome.size() });
    }
    let craft = Craft::new(plan.solver.conventions(), plan.method, inquiry.catalogue, None);
    let course = plan.course(&craft.acts);
    let cuts = [course.picked_up.start, course.picked_up.end];
    let all = Outcomes::new(plan, &course.tape, cuts, Gathered::new(&course, &craft, plan));
    let mut explanations = Vec::new();
    let as_planned = held_to_look_like(&all.planned, outcome).is_some();
    let shares = [1, 2].map(|slips| inquiry.catalogue.share_of_count(slips));
    let (found, broken_off) = if as_planned {
        explanations.push(all.explanation(&[], 1.0, 1, outcome)?);
        (FxHashMap::default(), false)
    } else {
        all.found(outcome, shares, progress)
    };
    let sum: f64 = found.values().map(|group| group.weight).sum();
    let mut groups: Vec<([u64; 2], Group)> = found.into_iter().collect();
    groups.sort_by(|(one_key, one), (other_key, other)| {
        other.weight.total_cmp(&one.weight).then_with(|| one_key.cmp(other_key))
    });
    for (_, group) in groups.iter().take(inquiry.most) {
        explanations.push(all.explanation(&group.stories, group.weight / sum, group.count, outcome)?);
    }
    let likeliest = groups.iter().filter_map(|(_, group)| group.stories.first()).map(|(weight, _)| *weight);
    let likeliest = likeliest.fold(0.0, f64::max);
    let equal = groups.iter().flat_map(|(_, group)| &group.stories);
    let equal = equal.filter(|(weight, _)| *weight >= likeliest * (1.0 - 1e-9)).count();
    let mut effects: Vec<u64> = all.alone.iter().map(|(_, alone)| seen(alone)).collect();
    effects.sort_unstable();
    effects.dedup();
    Ok(Diagnosis {
        explanations,
        ambiguity: if as_planned { 1 } else { equal },
        found: groups.len() + usize::from(as_planned),
        slips: all.slips.candidates.len(),
        classes: effects.len(),
        questions: Vec::new(),
        plan_solves: all.planned.solved_hold().is_some(),
        broken_off,
        // Slips in letters that only another slip brought in are not among them.
        whole: as_planned,
        unlooked: Unlooked::None,
    })
}
