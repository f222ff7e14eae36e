//! The search: which slips, alone or together, lead from what should have come out to what did.

use super::course::Course;
use super::memo_slips::{self, LetterSlip};
use super::space::{Candidate, Space, letter_edits, moved};
use super::{traced, within};
use cube::{Element, ElementKey as Key, Orbit, Right, Sticker};
use rustc_hash::FxHashMap;

/// One way in which it may have happened, by numbers into the space.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Story {
    /// One slip.
    Single(u32),
    /// Two, the first before the second.
    Pair(u32, u32),
    /// Three, in order.
    Triple(u32, u32, u32),
    /// A slip of tracing or recall, and one of the hands in a letter that only it brought in: which action after
    /// the slip, and which slip within it.
    Inside { letters: u32, action: u32, slip: u32 },
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
    InsideAnd { letters: u32, action: u32, slip: u32, other: u32, other_first: bool },
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

/// What a slip of tracing or recall brings in, and what follows.
pub(crate) struct Zone {
    /// The number of its first letter.
    pub(crate) start: usize,
    /// Letters, or nothing for the parity algorithm, with the number of the letter after the slip.
    pub(crate) actions: Vec<(Option<(Orbit, Sticker)>, usize)>,
    /// What follows each action.
    pub(crate) after: Vec<Element>,
}

/// The actions from the first changed one to the last.
pub(crate) fn zone(slip: &LetterSlip, space: &Space<'_>, elements: &mut ActionElements) -> Zone {
    let last = if slip.decides_parity(space.course) { usize::MAX } else { slip.from + slip.taken.len() };
    zone_of(slip, slip.from..last, space, elements)
}

/// All letters whose pair a slip can change, or that can be exchanged with such a pair: from the pair before the one in which it was
/// made to the last of the kind.
fn pairs_zone(slip: &LetterSlip, space: &Space<'_>, elements: &mut ActionElements) -> Zone {
    // Two pairs exchanged begin a pair earlier.
    zone_of(slip, (slip.from / 2 * 2).saturating_sub(2)..usize::MAX, space, elements)
}

/// The actions of some letters of a kind after a slip, with the parity algorithm where the slip decides about it.
fn zone_of(
    slip: &LetterSlip,
    letters: std::ops::Range<usize>,
    space: &Space<'_>,
    elements: &mut ActionElements,
) -> Zone {
    let course = space.course;
    let planned = course.letters(slip.orbit);
    let (start, meant) = (letters.start.min(slip.from), slip.from + slip.meant);
    let before = planned.get(start..slip.from).unwrap_or_default();
    let tail = planned.get(meant..).unwrap_or_default();
    let number = letters.end.saturating_sub(start);
    let all = before.iter().chain(&slip.taken).chain(tail);
    let mut actions: Vec<(Option<(Orbit, Sticker)>, usize)> =
        all.take(number).enumerate().map(|(at, &target)| (Some((slip.orbit, target)), start + at)).collect();
    let from_tail = (start + actions.len()).saturating_sub(slip.from + slip.taken.len());
    let mut end = course.range(slip.orbit, slip.from..meant + from_tail).end;
    if slip.parity_changes
        && let Some(range) = course.parity_range()
    {
        if !course.recalled.parity {
            actions.push((None, 0));
        }
        end = range.end;
    }
    let mut after = vec![space.carried.after[end]; actions.len()];
    for at in (1..actions.len()).rev() {
        let element = elements.get(actions[at].0, space);
        after[at - 1] = element.then(&after[at]);
    }
    Zone { start, actions, after }
}

/// What whole letters do, computed once.
pub(crate) struct ActionElements {
    known: FxHashMap<Option<(Orbit, Sticker)>, Element>,
}

impl ActionElements {
    pub(crate) fn new() -> Self {
        Self { known: FxHashMap::default() }
    }

    fn get(&mut self, letter: Option<(Orbit, Sticker)>, space: &Space<'_>) -> Element {
        *self.known.entry(letter).or_insert_with(|| {
            let mut turns = Vec::new();
            match letter {
                Some((orbit, target)) => {
                    super::course::lay(&mut turns, orbit, 0, target, space.craft.method);
                }
                None => {
                    turns.extend(space.craft.method.parity().into_iter().flat_map(cube::Algorithm::flatten));
                }
            }
            space.group.turns(&turns)
        })
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
    let mut elements = ActionElements::new();
    for (number, (slip, candidate)) in space.letter_slips.iter().enumerate() {
        let outer = &space.candidates[*candidate as usize];
        let outer_weight = outer.weight;
        let effect = space.effect(&outer.edits, &space.carried);
        let rest = effect.inverse().then(difference);
        let effects = [0, group.key_up_to_hold(&effect), group.key_up_to_hold(&rest)];
        if effects[1] == group.key_up_to_hold(&Element::IDENTITY) {
            continue;
        }
        let zone = zone(slip, space, &mut elements);
        for (action, (&(letter, _), after)) in zone.actions.iter().zip(&zone.after).enumerate() {
            let local = space.local(letter);
            let before = after.inverse();
            let carried = after.then(&rest);
            for hold in 0..group.holds().len() {
                let key = group.key_with_hold(&carried, hold, &before);
                let Some(class) = local.classes.of_exact(key) else { continue };
                for &inner in &class.members {
                    let weight = 2.0 * prior * outer.weight * local.candidates[inner as usize].weight;
                    let story = Story::Inside { letters: number as u32, action: action as u32, slip: inner };
                    found.add(effects, weight, story);
                }
            }
        }
        let zone = pairs_zone(slip, space, &mut elements);
        let outer = Outer { number, zone: &zone, rest: group.key_up_to_hold(&rest), effects };
        twice(space, &outer, prior * outer_weight, &mut elements, found);
    }
}

/// The slips of recall that only another slip makes possible: in letters that it brought in, or in a pair or two of which they
/// are part; in pairs that are others since it made their number odd or even; and anywhere before the parity algorithm where it
/// decides about that. A letter taken for another twice is one slip.
pub(crate) fn second_letter_slips(space: &Space<'_>, first: &LetterSlip) -> Vec<LetterSlip> {
    let after = first.applied(&space.course.recalled);
    let brought = first.from..first.from + first.taken.len();
    let mut second = memo_slips::recall(&after, space.craft, &|orbit, range| {
        let touches = range.start < brought.end && range.end > brought.start;
        let other_pair = first.is_odd() && range.len() > 1 && range.end > first.from;
        let before_parity = first.decides_parity(space.course) && range.start >= first.from;
        orbit == first.orbit && (touches || other_pair || before_parity)
    });
    if first.meant == 1 && first.taken.len() == 1 {
        second.retain(|slip| slip.meant > 1 || slip.taken.len() > 1 || slip.from != first.from);
    }
    second
}

/// A slip of tracing or recall, with what is left to explain after it.
struct Outer<'a> {
    number: usize,
    zone: &'a Zone,
    rest: Key,
    effects: Effects,
}

fn twice(space: &Space<'_>, outer: &Outer<'_>, prior: f64, elements: &mut ActionElements, found: &mut Found) {
    let group = space.group;
    let first = &space.letter_slips[outer.number].0;
    for (at, second) in second_letter_slips(space, first).iter().enumerate() {
        let start = second.from - outer.zone.start;
        let meant = &outer.zone.actions[start..start + second.meant];
        let after = &outer.zone.after[start + second.meant - 1];
        let planned = meant
            .iter()
            .fold(Element::IDENTITY, |so_far, &(letter, _)| so_far.then(&elements.get(letter, space)));
        let taken = second.taken.iter().fold(Element::IDENTITY, |so_far, &target| {
            so_far.then(&elements.get(Some((second.orbit, target)), space))
        });
        let change = planned.inverse().then(&taken);
        let effect = after.inverse().then(&change).then(after);
        if group.key_up_to_hold(&effect) == outer.rest {
            let weight = 2.0 * prior * second.share * space.scale(second.slip.kind);
            let story = Story::Twice { letters: outer.number as u32, second: at as u32 };
            found.add(outer.effects, weight, story);
        }
    }
}

impl Space<'_> {
    /// The course after a slip of tracing or recall.
    pub(crate) fn after(&self, slip: &LetterSlip) -> Course {
        let scramble = &self.course.tape[..self.course.picked_up.start];
        Course::new(scramble, self.course.hold, slip.applied(&self.course.recalled), self.craft.method)
    }

    /// The slips of a story in the order in which their edits are made to the tape, each on the tape that the one
    /// before left; and in the order of the attempt.
    pub(crate) fn tell(&self, story: Story) -> Vec<Candidate> {
        let base = |number: u32| self.candidates[number as usize].clone();
        let letters = |number: u32| {
            let (slip, candidate) = &self.letter_slips[number as usize];
            (slip, base(*candidate))
        };
        let inner = |slip: &LetterSlip, action: u32, inner: u32| -> Option<Candidate> {
            let zone = zone(slip, self, &mut ActionElements::new());
            let (letter, number) = *zone.actions.get(action as usize)?;
            let course = self.after(slip);
            let span = course.spans.iter().find(|span| match (span.letter, letter) {
                (None, None) => true,
                (Some((kind, at, _)), Some((orbit, _))) => kind == orbit && at == number,
                _ => false,
            })?;
            let local = self.local(letter);
            Some(moved(local.candidates.get(inner as usize)?, number, span.begin))
        };
        match story {
            Story::Single(one) => vec![base(one)],
            Story::Pair(one, two) => vec![base(one), base(two)],
            Story::Triple(one, two, three) => vec![base(one), base(two), base(three)],
            Story::Inside { letters: number, action, slip } => {
                let (outer, candidate) = letters(number);
                std::iter::once(candidate).chain(inner(outer, action, slip)).collect()
            }
            Story::Twice { letters: number, second } => {
                let (outer, candidate) = letters(number);
                let course = self.after(outer);
                let second = second_letter_slips(self, outer).get(second as usize).map(|slip| Candidate {
                    slip: slip.slip.clone(),
                    edits: letter_edits(slip, &course, self.craft),
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
            Story::InsideAnd { letters: number, action, slip, other, other_first } => {
                let (outer, candidate) = letters(number);
                let mut told = vec![candidate];
                told.extend(inner(outer, action, slip));
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
