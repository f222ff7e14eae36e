//! The search: which slips, alone or together, lead from what should have come out to what did.

use super::act::Act;
use super::course::{Course, Span};
use super::memo_slips::{self, LetterSlip, Rework, acts_of};
use super::space::{Candidate, Space, letter_edits, moved};
use super::{traced, within};
use cube::{Element, ElementKey as Key, Right};
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
        let (course, acts) = (space.course, &space.craft.acts);
        let letters = slip.letters_after(course.letters(slip.orbit));
        let Rework { mut acts, new: mut brought, .. } =
            Rework::new(slip, &acts_of(course.spans_of(slip.orbit)), &letters, acts);
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
                let Some(class) = local.classes.of_exact(key) else { continue };
                for &inner in &class.members {
                    let weight = 2.0 * prior * outer.weight * local.candidates[inner as usize].weight;
                    let story = Story::Inside { letters: number as u32, act: at as u32, slip: inner };
                    found.add(effects, weight, story);
                }
            }
        }
        let prior = 2.0 * prior * outer.weight;
        for (at, second) in second_letter_slips(space, slip, &line).iter().enumerate() {
            if group.key_up_to_hold(&second.effect) == effects[2] {
                let weight = prior * second.slip.share * space.scale(second.slip.slip.kind);
                found.add(effects, weight, Story::Twice { letters: number as u32, second: at as u32 });
            }
        }
    }
}

/// A slip of recall after another one, with what it changes at the end.
pub(crate) struct Second {
    pub(crate) slip: LetterSlip,
    effect: Element,
}

/// The slips of recall that only another slip makes possible: in letters that it brought in, or in a pair or two of which they
/// are part; in pairs that are others since it made their number odd or even; and anywhere before the parity algorithm where it
/// decides about that. A letter taken for another twice is one slip.
pub(crate) fn second_letter_slips(space: &Space<'_>, first: &LetterSlip, line: &Line) -> Vec<Second> {
    let after = first.applied(&space.course.recalled);
    // The letters of the acts that are others because of it: more than its own where letters go in pairs.
    let own = first.from..first.from + first.taken.len();
    let of_acts = line.acts[line.brought.clone()].iter().filter(|(act, _)| *act != Act::Parity);
    let brought = of_acts.fold(own, |so_far, (act, letter)| {
        so_far.start.min(*letter)..so_far.end.max(letter + act.letters())
    });
    let in_pairs = !space.craft.acts.one_by_one(first.orbit);
    let decides = first.decides_parity(space.course);
    let mut second = memo_slips::recall(&after, space.craft, &|orbit, range| {
        let touches = range.start < brought.end && range.end > brought.start;
        let other_pair = first.is_odd() && range.len() > 1 && range.end > first.from;
        let before_parity = decides && range.start >= first.from;
        // A letter more or less before the pair changes it too; which that is, is seen below.
        let shifts = in_pairs && range.start < brought.end;
        orbit == first.orbit && (touches || other_pair || before_parity || shifts)
    });
    if first.meant == 1 && first.taken.len() == 1 {
        second.retain(|slip| slip.meant > 1 || slip.taken.len() > 1 || slip.from != first.from);
    }
    let letters = first.letters_after(space.course.letters(first.orbit));
    let acts = &space.craft.acts;
    let second = second.into_iter().filter_map(|slip| {
        let kind = line.acts.iter().filter(|(act, _)| *act != Act::Parity).count();
        let rework = Rework::new(&slip, &line.acts[..kind], &slip.letters_after(&letters), acts);
        let touches = rework.old.start < line.brought.end && rework.old.end > line.brought.start
            || rework.old.start == rework.old.end && line.brought.contains(&rework.old.start);
        let is_letters = |range: &Range<usize>| range.start < brought.end && slip.from + slip.meant > brought.start;
        let other_pair = first.is_odd() && slip.meant > 1 && slip.from + slip.meant > first.from;
        if in_pairs && !(touches || is_letters(&brought) || other_pair || decides) {
            return None;
        }
        let from = line.from(rework.old.start);
        let made = rework.acts[rework.new].iter();
        let made = made.fold(from.inverse(), |so_far, (act, _)| so_far.then(&acts.element(*act)));
        let effect = made.then(line.from(rework.old.end));
        Some(Second { slip, effect })
    });
    second.collect()
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
        let inner = |slip: &LetterSlip, act: u32, inner: u32| -> Option<Candidate> {
            let (act, letter) = *Line::new(slip, self).acts.get(act as usize)?;
            let course = self.after(slip);
            let is_it = |span: &&Span| {
                span.act == act && (act == Act::Parity || span.letter == letter)
            };
            let span = *course.spans.iter().find(is_it)?;
            let local = self.local(act);
            Some(moved(local.candidates.get(inner as usize)?, letter, span.begin))
        };
        match story {
            Story::Single(one) => vec![base(one)],
            Story::Pair(one, two) => vec![base(one), base(two)],
            Story::Triple(one, two, three) => vec![base(one), base(two), base(three)],
            Story::Inside { letters: number, act, slip } => {
                let (outer, candidate) = letters(number);
                std::iter::once(candidate).chain(inner(outer, act, slip)).collect()
            }
            Story::Twice { letters: number, second } => {
                let (outer, candidate) = letters(number);
                let course = self.after(outer);
                let all = second_letter_slips(self, outer, &Line::new(outer, self));
                let second = all.into_iter().nth(second as usize).map(|Second { slip, .. }| Candidate {
                    edits: letter_edits(&slip, &course, self.craft),
                    slip: slip.slip,
                    weight: slip.share,
                });
                std::iter::once(candidate).chain(second).collect()
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
