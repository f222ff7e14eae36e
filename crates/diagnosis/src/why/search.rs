//! The search: which slips, alone or together, lead from what should have come out to what did.

use super::act::Act;
use super::course::{Course, Span};
use super::hands::{self, Edit};
use super::memo_slips::{LetterSlip, Rework, reworked};
use super::recall::{Retake, recall};
use super::space::{Candidate, Space, letter_edits, moved};
use super::{traced, within};
use crate::slip::SlipKind;
use cube::{Element, ElementKey as Key, Right, Sticker};
use rustc_hash::FxHashMap;
use std::ops::Range;

/// One way in which it may have happened, by numbers into the space.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Story {
    /// One slip.
    Single(u32),
    /// Two, the first before the second.
    Pair(u32, u32),
    /// Three, in order.
    Triple(u32, u32, u32),
    /// A slip of tracing or recall, and one of the hands in letters that only it brought in: in which act
    /// of the line after it, and which slip within that.
    Inside { letters: u32, act: u32, slip: u32 },
    /// A slip of tracing or recall, and the attempt broken off in letters that only it brought in: in which act of the line after it,
    /// and before which of its turns.
    Stopped { letters: u32, act: u32, turn: u32 },
    /// A slip of tracing or recall, and another of recall that only the first makes possible.
    Twice { letters: u32, second: u32 },
    /// Two slips of tracing that both decide about parity.
    Traced { first: u32, second: u32 },
    /// A slip of tracing that decides about parity, and parity made or not made against it.
    TracedAgainst { letters: u32 },
    /// A slip by which another whole step is made, and one of a turn within that.
    Within { whole: u32, slip: u32 },
    /// As `Inside`, and one more slip elsewhere, before or after; of two that replace nothing at one place only this says
    /// which came first.
    InsideAnd { letters: u32, act: u32, slip: u32, other: u32, other_first: bool },
    /// A slip of tracing or recall, and two of the hands in letters that only it brought in.
    InsideBoth { letters: u32, first: (u32, u32), second: (u32, u32) },
}

/// Stories that act alike: their slips, one by one, change the outcome in the same ways.
#[derive(Clone, Debug)]
pub(crate) struct Group {
    /// The sum of all weights.
    pub(crate) weight: f64,
    /// How many stories there are.
    pub(crate) count: usize,
    /// How many of them are as likely as the likeliest.
    pub(crate) equal: usize,
    /// The likeliest ones, with their weights, the best first.
    pub(crate) stories: Vec<(f64, Story)>,
}

/// How many stories of a group are kept.
const KEPT: usize = 12;

/// What slips do, each up to how the puzzle is held, sorted.
pub(crate) type Effects = [Key; 3];

#[derive(Default)]
pub(crate) struct Found {
    pub(crate) groups: FxHashMap<Effects, Group>,
    /// What all that would explain it too and was not looked at weighs, by an estimate.
    pub(crate) unlisted: f64,
}

impl Found {
    pub(crate) fn add(&mut self, effects: [Key; 3], weight: f64, story: Story) {
        if weight <= 0.0 {
            return;
        }
        let mut effects = effects;
        effects.sort_unstable();
        let empty = || Group { weight: 0.0, count: 0, equal: 0, stories: Vec::new() };
        let group = self.groups.entry(effects).or_insert_with(empty);
        group.weight += weight;
        group.count += 1;
        let best = group.stories.first().map_or(0.0, |story| story.0);
        if weight > best * (1.0 + 1e-9) {
            group.equal = 1;
        } else if weight >= best * (1.0 - 1e-9) {
            group.equal += 1;
        }
        let at = group.stories.partition_point(|&(other, _)| other >= weight);
        if at < KEPT {
            group.stories.insert(at, (weight, story));
            group.stories.truncate(KEPT);
        }
    }
}

/// What is carried out of a kind after a slip of tracing or recall, to its end; to that of parity where the slip decides about it.
pub(crate) struct Line {
    /// With the numbers of their first letters.
    pub(crate) acts: Vec<(Act, usize)>,
    /// What follows each act, and last what follows all of them.
    after: Vec<Element>,
    /// Which of the acts the slip brought in.
    pub(crate) brought: Range<usize>,
}

impl Line {
    pub(crate) fn new(slip: &LetterSlip, space: &Space<'_>) -> Self {
        let course = space.course;
        let Rework { mut acts, new: mut brought, .. } = reworked(slip, course, &space.craft.acts);
        let mut end = course.stretch(slip.orbit).end;
        if slip.decides_parity(course) {
            brought.end = acts.len();
            if let Some(range) = course.parity_range() {
                if !course.recalled.parity {
                    acts.push((Act::Parity, 0));
                    brought.end = acts.len();
                }
                end = range.end;
            }
        }
        let mut after = vec![space.carried.after[end]; acts.len() + 1];
        for at in (0..acts.len()).rev() {
            after[at] = space.craft.acts.element(acts[at].0).then(&after[at + 1]);
        }
        Self { acts, after, brought }
    }

    /// The acts that the slip brought in, each with what follows it.
    pub(crate) fn brought(&self) -> impl Iterator<Item = (usize, Act, &Element)> {
        self.brought.clone().map(|at| (at, self.acts[at].0, &self.after[at + 1]))
    }

    /// What follows before an act.
    fn from(&self, act: usize) -> &Element {
        &self.after[act.min(self.acts.len())]
    }
}

/// All single slips that explain the difference.
pub(crate) fn singles(space: &Space<'_>, difference: &Element, prior: f64, found: &mut Found) {
    let coset = space.group.key_up_to_hold(difference);
    for &class in space.classes.of_coset(coset) {
        for &member in &space.classes.all[class as usize].members {
            let weight = prior * space.candidates[member as usize].weight;
            found.add([0, 0, coset], weight, Story::Single(member));
        }
    }
}

/// All pairs of slips, neither within what the other brought in, that explain the difference: for each first slip
/// the second one is looked up.
pub(crate) fn pairs(space: &Space<'_>, right: &Right, prior: f64, found: &mut Found) {
    for first in &space.classes.all {
        let wanted = space.group.key_of_quotient(&first.element, &first.inverse, right);
        for &second in space.classes.of_coset(wanted) {
            let second = &space.classes.all[second as usize];
            for &a in &first.members {
                let one = &space.candidates[a as usize];
                for &b in &second.members {
                    let two = &space.candidates[b as usize];
                    if one.end() <= two.begin() && a != b {
                        let weight = 2.0 * prior * one.weight * two.weight;
                        found.add([0, first.coset, second.coset], weight, Story::Pair(a, b));
                    }
                }
            }
        }
    }
}

/// Pairs of which the second slip happens in letters that only the first one brought in.
pub(crate) fn inside(space: &Space<'_>, difference: &Element, prior: f64, found: &mut Found) {
    let group = space.group;
    for (number, (slip, candidate)) in space.letter_slips.iter().enumerate() {
        let outer = &space.candidates[*candidate as usize];
        let effect = space.effect(&outer.edits, &space.carried);
        let rest = effect.inverse().then(difference);
        let effects = [0, group.key_up_to_hold(&effect), group.key_up_to_hold(&rest)];
        if outer.weight <= 0.0 || effects[1] == group.key_up_to_hold(&Element::IDENTITY) {
            continue;
        }
        let line = Line::new(slip, space);
        for (at, act, after) in line.brought() {
            let local = space.local(act);
            let before = after.inverse();
            let carried = after.then(&rest);
            for hold in 0..group.holds().len() {
                let key = group.key_with_hold(&carried, hold, &before);
                for &inner in local.of_exact(key) {
                    let weight = 2.0 * prior * outer.weight * local.weights[inner as usize];
                    let story = Story::Inside { letters: number as u32, act: at as u32, slip: inner };
                    found.add(effects, weight, story);
                }
            }
        }
        let prior = 2.0 * prior * outer.weight;
        stopped(space, &line, effects[2], &mut |act, turn, share| {
            let weight = prior * share * space.scale(SlipKind::BrokenOff);
            found.add(effects, weight, Story::Stopped { letters: number as u32, act, turn });
        });
        let mut second = 0;
        second_letter_slips(space, slip, &line, &mut |retake, effect| {
            if group.key_up_to_hold(effect) == effects[2] {
                let weight = prior * retake.share * space.scale(retake.kind);
                found.add(effects, weight, Story::Twice { letters: number as u32, second });
            }
            second += 1;
        });
    }
}

/// Calls for each turn of what a slip brought in before which nothing more need be made: the act, the turn in it, and the share.
fn stopped(space: &Space<'_>, line: &Line, rest: Key, emit: &mut dyn FnMut(u32, u32, f64)) {
    let group = space.group;
    for (at, act, after) in line.brought() {
        let laid = space.craft.acts.laid(act);
        let mut left = *after;
        for (turn, &made) in laid.turns.iter().enumerate().rev() {
            left = group.turn(made).then(&left);
            if group.key_up_to_hold(&left.inverse()) == rest {
                emit(at as u32, turn as u32, hands::share_of_end(turn == 0));
            }
        }
    }
}

/// Calls for the slips of recall that only another slip makes possible, with what they change at the end: in letters that it brought
/// in, or in a pair or two of which they are part; in pairs that are others since it made their number odd or even; and anywhere
/// before the parity algorithm where it decides about that. A letter taken for another twice is one slip.
fn second_letter_slips(
    space: &Space<'_>,
    first: &LetterSlip,
    line: &Line,
    emit: &mut dyn FnMut(&Retake<'_>, &Element),
) {
    let acts = &space.craft.acts;
    let letters = first.letters_after(space.course.letters(first.orbit));
    let is_kind = |(act, _): &&(Act, usize)| *act != Act::Parity;
    // The letters of the acts that are others because of it: more than its own where letters go in pairs.
    let own = first.from..first.from + first.taken.len();
    let brought = line.acts[line.brought.clone()]
        .iter()
        .filter(is_kind)
        .fold(own, |so_far, (act, letter)| so_far.start.min(*letter)..so_far.end.max(letter + act.letters()));
    let one_by_one = acts.one_by_one(first.orbit);
    let decides = first.decides_parity(space.course);
    let touches = |range: &Range<usize>| {
        let other_pair = first.is_odd() && range.len() > 1 && range.end > first.from;
        let before_parity = decides && range.start >= first.from;
        (range.start < brought.end && range.end > brought.start) || other_pair || before_parity
    };
    // A letter more or less before a pair changes it too; which that is, is seen by the acts.
    let within = |range: Range<usize>| touches(&range) || (!one_by_one && range.start < brought.end);
    let kind = line.acts.iter().filter(is_kind).count();
    let one_for_one = first.meant == 1 && first.taken.len() == 1;
    recall(first.orbit, &letters, space.craft, &within, &mut |retake| {
        if one_for_one && retake.from == first.from && retake.meant.len() == 1 && retake.taken.len() == 1 {
            return;
        }
        let range = retake.range();
        let effect = |old: Range<usize>, new: &mut dyn Iterator<Item = Act>| {
            let made =
                new.fold(line.from(old.start).inverse(), |so_far, act| so_far.then(&acts.element(act)));
            made.then(line.from(old.end))
        };
        if one_by_one {
            let act =
                |&target: &Sticker| Act::Letter { orbit: first.orbit, target, second: false, alone: false };
            emit(retake, &effect(range, &mut retake.taken.iter().map(act)));
            return;
        }
        let mut after = letters.clone();
        after.splice(range.clone(), retake.taken.iter().copied());
        let after = acts.of(first.orbit, &after);
        let rework = Rework::new(&line.acts[..kind], after, range.clone(), retake.taken.len());
        let (old, own) = (rework.old, &line.brought);
        let overlaps =
            (old.start < own.end && old.end > own.start) || (old.is_empty() && own.contains(&old.start));
        if touches(&range) || overlaps {
            emit(retake, &effect(old, &mut rework.acts[rework.new].iter().map(|(act, _)| *act)));
        }
    });
}

impl Space<'_> {
    /// The course after a slip of tracing or recall.
    pub(crate) fn after(&self, slip: &LetterSlip) -> Course {
        let scramble = &self.course.tape[..self.course.picked_up.start];
        Course::new(scramble, self.course.hold, slip.applied(&self.course.recalled), &self.craft.acts)
    }

    /// The slips of a story in the order in which their edits are made to the tape, each on the tape that the one
    /// before left; and in the order of the attempt.
    pub(crate) fn tell(&self, story: Story) -> Vec<Candidate> {
        let base = |number: u32| self.candidates[number as usize].clone();
        let letters = |number: u32| {
            let (slip, candidate) = &self.letter_slips[number as usize];
            (slip, base(*candidate))
        };
        let span_of = |slip: &LetterSlip, act: u32, course: &Course| -> Option<Span> {
            let (act, letter) = *Line::new(slip, self).acts.get(act as usize)?;
            let is_it = |span: &&Span| span.act == act && (act == Act::Parity || span.letter == letter);
            course.spans.iter().find(is_it).copied()
        };
        let inner = |slip: &LetterSlip, act: u32, inner: u32| -> Option<Candidate> {
            let span = span_of(slip, act, &self.after(slip))?;
            Some(moved(&self.local_candidate(span.act, inner)?, span.letter, span.begin))
        };
        match story {
            Story::Single(one) => vec![base(one)],
            Story::Pair(one, two) => vec![base(one), base(two)],
            Story::Triple(one, two, three) => vec![base(one), base(two), base(three)],
            Story::Inside { letters: number, act, slip } => {
                let (outer, candidate) = letters(number);
                std::iter::once(candidate).chain(inner(outer, act, slip)).collect()
            }
            Story::Stopped { letters: number, act, turn } => {
                let (outer, candidate) = letters(number);
                let course = self.after(outer);
                let all = hands::ends(&course);
                let span = span_of(outer, act, &course);
                let is_it =
                    |edit: &Edit| span.is_some_and(|span| edit.range.start == span.begin + turn as usize);
                let end = all.into_iter().find(|(_, edit, _)| is_it(edit));
                let end = end.map(|(slip, edit, share)| Candidate { slip, edits: vec![edit], weight: share });
                std::iter::once(candidate).chain(end).collect()
            }
            Story::Twice { letters: number, second } => {
                let (outer, candidate) = letters(number);
                let course = self.after(outer);
                let (mut told, mut at) = (vec![candidate], 0);
                second_letter_slips(self, outer, &Line::new(outer, self), &mut |retake, _| {
                    if at == second {
                        let slip = retake.slip();
                        let edits = letter_edits(&slip, &course, self.craft);
                        told.push(Candidate { edits, weight: slip.share, slip: slip.slip });
                    }
                    at += 1;
                });
                told
            }
            Story::Within { whole, slip } => {
                let outer = base(whole);
                let second = within::second(self, &outer, slip);
                std::iter::once(outer).chain(second).collect()
            }
            Story::Traced { first, second } => {
                let (outer, candidate) = letters(first);
                vec![candidate, traced::second(self, outer, &self.letter_slips[second as usize].0)]
            }
            Story::TracedAgainst { letters: number } => {
                let (outer, candidate) = letters(number);
                std::iter::once(candidate).chain(traced::against(self, outer)).collect()
            }
            Story::InsideAnd { letters: number, act, slip, other, other_first } => {
                let (outer, candidate) = letters(number);
                let mut told = vec![candidate];
                told.extend(inner(outer, act, slip));
                told.insert(if other_first { 0 } else { told.len() }, base(other));
                told
            }
            Story::InsideBoth { letters: number, first, second } => {
                let (outer, candidate) = letters(number);
                let mut told = vec![candidate];
                told.extend(inner(outer, first.0, first.1));
                told.extend(inner(outer, second.0, second.1));
                told
            }
        }
    }
}
