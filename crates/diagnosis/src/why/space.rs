//! The space of single slips of one attempt: each as the group element by which it changes the outcome, slips that
//! act alike in one class.

use super::act::Act;
use super::course::{Carried, Course, Span};
use super::craft::Craft;
use super::hands::{self, Edit, Made};
use super::memo_slips::{self, LetterSlip, reworked};
use super::recall::recall;
use super::{Begun, Plan, Setting};
use crate::slip::{ActionStep, Change, Slip, SlipKind};
use blind::Trace;
use cube::{Element, ElementKey as Key, Group, Orbit, Sticker, Turn};
use rustc_hash::FxHashMap;
use std::cell::RefCell;
use std::rc::Rc;

/// What was done, or the letters of a kind that were carried out, whatever they come from; and what that replaces on the tape.
type Done = (Result<Change, (Orbit, Vec<Sticker>)>, Vec<Edit>);

/// A slip at its place with what it replaces on the tape.
#[derive(Clone, Debug)]
pub(crate) struct Candidate {
    pub(crate) slip: Slip,
    pub(crate) edits: Vec<Edit>,
    /// How likely it is among all single slips.
    pub(crate) weight: f64,
}

impl Candidate {
    pub(crate) fn begin(&self) -> usize {
        self.edits.first().map_or(0, |edit| edit.range.start)
    }

    pub(crate) fn end(&self) -> usize {
        self.edits.last().map_or(0, |edit| edit.range.end)
    }
}

/// Slips that change the outcome in the same way.
#[derive(Clone, Debug)]
pub(crate) struct Class {
    pub(crate) element: Element,
    pub(crate) inverse: Element,
    pub(crate) coset: Key,
    /// The sum over its members.
    pub(crate) weight: f64,
    pub(crate) members: Vec<u32>,
}

/// Classes by exact element, and by element up to how the puzzle is held.
#[derive(Clone, Debug, Default)]
pub(crate) struct Classes {
    pub(crate) all: Vec<Class>,
    exact: FxHashMap<Key, u32>,
    cosets: FxHashMap<Key, Vec<u32>>,
}

impl Classes {
    fn insert(&mut self, element: &Element, member: u32, weight: f64, group: &'static Group) {
        let key = group.key(element);
        let at = *self.exact.entry(key).or_insert_with(|| {
            let coset = group.key_up_to_hold(element);
            let number = self.all.len() as u32;
            self.cosets.entry(coset).or_default().push(number);
            let inverse = element.inverse();
            self.all.push(Class { element: *element, inverse, coset, weight: 0.0, members: Vec::new() });
            number
        });
        let class = &mut self.all[at as usize];
        class.weight += weight;
        class.members.push(member);
    }

    pub(crate) fn of_coset(&self, coset: Key) -> &[u32] {
        self.cosets.get(&coset).map_or(&[], Vec::as_slice)
    }
}

/// The slips of the hands within one act, by what they change at its end.
#[derive(Clone, Debug, Default)]
pub(crate) struct Local {
    /// By number, as they are called for.
    pub(crate) weights: Vec<f64>,
    /// Numbers of those that do the same.
    pub(crate) all: Vec<(Element, Vec<u32>)>,
    exact: FxHashMap<Key, u32>,
}

impl Local {
    /// The numbers of those that do something.
    pub(crate) fn of_exact(&self, exact: Key) -> &[u32] {
        self.exact.get(&exact).map_or(&[], |&at| &self.all[at as usize].1)
    }
}

/// All single slips of an attempt.
pub(crate) struct Space<'a> {
    pub(crate) group: &'static Group,
    pub(crate) craft: &'a Craft<'a>,
    pub(crate) course: &'a Course,
    pub(crate) carried: Carried,
    pub(crate) candidates: Vec<Candidate>,
    pub(crate) classes: Classes,
    /// Slips of tracing and recall, with the numbers of their candidates.
    pub(crate) letter_slips: Vec<(LetterSlip, u32)>,
    /// The slips of the hands within acts, as far as they were asked for.
    locals: RefCell<FxHashMap<Act, Rc<Local>>>,
    /// For each kind of slip, what a share counts.
    scale: [f64; SlipKind::ALL.len()],
}

/// The single slips of an attempt with what they replace on the tape, not yet sorted by what they do.
pub(crate) struct Gathered<'a> {
    craft: &'a Craft<'a>,
    course: &'a Course,
    pub(crate) candidates: Vec<Candidate>,
    letter_slips: Vec<(LetterSlip, u32)>,
    scale: [f64; SlipKind::ALL.len()],
}

impl<'a> Space<'a> {
    pub(crate) fn new(setting: &'a Setting<'a>, plan: &Plan<'_>) -> Self {
        let Setting { group, course, craft, .. } = setting;
        let group = *group;
        let carried = Carried::new(&course.tape, group);
        let Gathered { candidates, letter_slips, scale, .. } = Gathered::new(course, craft, plan);
        let mut space = Self {
            group,
            craft,
            course,
            carried,
            candidates,
            classes: Classes::default(),
            letter_slips,
            locals: RefCell::default(),
            scale,
        };
        for at in 0..space.candidates.len() {
            if space.candidates[at].weight <= 0.0 {
                continue;
            }
            let element = space.effect(&space.candidates[at].edits, &space.carried);
            let nothing = group.key_up_to_hold(&element) == group.key_up_to_hold(&Element::IDENTITY);
            if !nothing {
                space.classes.insert(&element, at as u32, space.candidates[at].weight, group);
            }
        }
        space
    }

    pub(crate) fn scale(&self, kind: SlipKind) -> f64 {
        self.scale[kind.index()]
    }

    /// By what some edits change the outcome, carried to the end.
    pub(crate) fn effect(&self, edits: &[Edit], carried: &Carried) -> Element {
        let one = |edit: &Edit| {
            let before = &carried.before[edit.range.start];
            let after = &carried.after[edit.range.end];
            match &edit.made {
                Made::Nothing => before.then(after),
                Made::One(turn) => before.then(self.group.turn(*turn)).then(after),
                Made::Many(turns) => {
                    turns.iter().fold(*before, |so_far, &turn| so_far.then(self.group.turn(turn))).then(after)
                }
            }
        };
        match edits {
            [only] => one(only),
            _ => edits.iter().fold(Element::IDENTITY, |so_far, edit| so_far.then(&one(edit))),
        }
    }

    /// The slips of the hands within an act, wherever it stands.
    pub(crate) fn local(&self, act: Act) -> Rc<Local> {
        if let Some(known) = self.locals.borrow().get(&act) {
            return Rc::clone(known);
        }
        let made = Rc::new(self.make_local(act));
        self.locals.borrow_mut().insert(act, Rc::clone(&made));
        made
    }

    fn make_local(&self, act: Act) -> Local {
        let mut local = Local::default();
        self.each_local(act, &mut |candidate, element| {
            let at = *local.exact.entry(self.group.key(&element)).or_insert_with(|| {
                local.all.push((element, Vec::new()));
                local.all.len() as u32 - 1
            });
            local.all[at as usize].1.push(local.weights.len() as u32);
            local.weights.push(candidate.2);
        });
        local
    }

    /// A slip of the hands within an act by its number, on a tape of its own.
    pub(crate) fn local_candidate(&self, act: Act, number: u32) -> Option<Candidate> {
        let (mut found, mut at) = (None, 0);
        self.each_local(act, &mut |(slip, edit, weight), _| {
            if at == number {
                found = Some(Candidate { slip, edits: vec![edit], weight });
            }
            at += 1;
        });
        found
    }

    /// Calls for each slip of the hands within an act with its weight, and with what it changes at the end of the act.
    fn each_local(&self, act: Act, call: &mut dyn FnMut((Slip, Edit, f64), Element)) {
        let mut tape: Vec<Turn> = Vec::new();
        let span = Span::lay(&mut tape, act, 0, &self.craft.acts);
        let carried = Carried::new(&tape, self.group);
        hands::execution(&tape, &span, self.craft, &mut |slip, edit, share| {
            let weight = share * self.scale(slip.kind);
            if weight > 0.0 {
                let element = self.effect(std::slice::from_ref(&edit), &carried);
                call((slip, edit, weight), element);
            }
        });
    }
}

impl<'a> Gathered<'a> {
    pub(crate) fn new(course: &'a Course, craft: &'a Craft<'a>, plan: &Plan<'_>) -> Self {
        let (candidates, letter_slips) = (Vec::new(), Vec::new());
        let mut slips = Self { craft, course, candidates, letter_slips, scale: [0.0; SlipKind::ALL.len()] };
        slips.gather(plan);
        slips.weigh();
        slips.merge_the_same();
        slips
    }

    fn gather(&mut self, plan: &Plan<'_>) {
        let (course, craft) = (self.course, self.craft);
        let candidates = &mut self.candidates;
        let mut emit = |slip: Slip, edit: Edit, share: f64| {
            if craft.catalogue.weight(slip.kind) <= 0.0 {
                return;
            }
            candidates.push(Candidate { slip, edits: vec![edit], weight: share });
        };
        hands::start(course, craft, &mut emit);
        if matches!(plan.begun, Begun::Scramble(_)) {
            hands::listed(course, &plan.list, &mut emit);
        }
        for span in &course.spans {
            hands::execution(&course.tape, span, craft, &mut emit);
        }
        for (slip, edit, share) in hands::ends(course) {
            emit(slip, edit, share);
        }
        if let Some((step, range)) = course.spans.last().and_then(|span| span.parts().last()) {
            hands::added(step, range.len(), range.end, &mut emit);
        }
        if let Some(range) = course.parity_range() {
            let made = !course.recalled.parity;
            let kind = if made { SlipKind::ParityWithoutNeed } else { SlipKind::ParityOverlooked };
            let turns =
                if made { Made::Many(craft.acts.laid(Act::Parity).turns.clone()) } else { Made::Nothing };
            emit(Slip { kind, change: Change::Parity { made } }, Edit { range, made: turns }, 1.0);
        }
        let mut letter_slips = memo_slips::tracing(&course.recalled, &plan.traces);
        letter_slips.extend(retraced(plan));
        for (orbit, letters) in &course.recalled.kinds {
            recall(*orbit, letters, craft, &|_| true, &mut |retake| letter_slips.push(retake.slip()));
        }
        for slip in letter_slips.into_iter().filter(|slip| craft.catalogue.weight(slip.slip.kind) > 0.0) {
            let edits = letter_edits(&slip, course, craft);
            self.letter_slips.push((slip.clone(), self.candidates.len() as u32));
            self.candidates.push(Candidate { slip: slip.slip, edits, weight: slip.share });
        }
        if let Some(slip) = memo_slips::kinds_exchanged(&course.recalled, craft)
            && craft.catalogue.weight(slip.kind) > 0.0
            && let Change::Kinds { orbits, taken } = &slip.change
        {
            let edit = |(&orbit, letters): (&Orbit, &Vec<Sticker>)| {
                let acts = craft.acts.of(orbit, letters);
                let turns = acts.iter().flat_map(|(act, _)| craft.acts.laid(*act).turns.clone()).collect();
                Edit { range: course.stretch(orbit), made: Made::Many(turns) }
            };
            let edits = orbits.iter().zip(taken).map(edit).collect();
            self.candidates.push(Candidate { slip, edits, weight: 1.0 });
        }
    }

    /// The very same done under another name is one slip, told by its likelier name; by that of letters where these bring in
    /// something in which more may go wrong.
    fn merge_the_same(&mut self) {
        let mut letters: Vec<Option<&LetterSlip>> = vec![None; self.candidates.len()];
        for (slip, candidate) in &self.letter_slips {
            letters[*candidate as usize] = Some(slip);
        }
        let mut known: FxHashMap<Done, usize> = FxHashMap::default();
        for at in 0..self.candidates.len() {
            let Candidate { slip, edits, .. } = &self.candidates[at];
            let done = match letters[at] {
                Some(slip) => Err((slip.orbit, slip.letters_after(self.course.letters(slip.orbit)))),
                None => Ok(slip.change.clone()),
            };
            let key = (done, edits.clone());
            let Some(&other) = known.get(&key) else {
                known.insert(key, at);
                continue;
            };
            let sum = self.candidates[at].weight + self.candidates[other].weight;
            let rank =
                |at: usize| (letters[at].is_some_and(LetterSlip::brings_in), self.candidates[at].weight);
            let (kept, gone) = if rank(at) > rank(other) { (at, other) } else { (other, at) };
            self.candidates[kept].weight = sum;
            self.candidates[gone].weight = 0.0;
            known.insert(key, kept);
        }
    }

    /// Turns shares among the slips of a kind into weights.
    fn weigh(&mut self) {
        let mut sums = [0.0; SlipKind::ALL.len()];
        for candidate in &self.candidates {
            sums[candidate.slip.kind.index()] += candidate.weight;
        }
        let weight = |kind: SlipKind| self.craft.catalogue.weight(kind);
        let possible: f64 =
            SlipKind::ALL.into_iter().filter(|kind| sums[kind.index()] > 0.0).map(weight).sum();
        for kind in SlipKind::ALL {
            if sums[kind.index()] > 0.0 {
                self.scale[kind.index()] = weight(kind) / possible / sums[kind.index()];
            }
        }
        for candidate in &mut self.candidates {
            candidate.weight *= self.scale[candidate.slip.kind.index()];
        }
    }
}

/// What is traced where parity or the buffer is taken for another: all letters of a kind.
fn retraced(plan: &Plan<'_>) -> Vec<LetterSlip> {
    let tracing = plan.solver.tracing();
    let mut found = Vec::new();
    for trace in &plan.traces {
        let orbit = trace.orbit();
        let meant = trace.targets();
        let mut otherwise = |slip: Slip, taken: Vec<Sticker>, share: f64| {
            let from_buffer = |&letter: &Sticker| orbit.same_piece(letter, trace.buffer());
            if taken != meant && !taken.iter().any(from_buffer) {
                let (from, meant) = (0, meant.len());
                found.push(LetterSlip { slip, orbit, from, meant, taken, parity_changes: false, share });
            }
        };
        let letters = |traced: Result<Trace, _>| traced.ok().map(|trace| trace.targets());
        for buffer in Sticker::all().filter(|&buffer| buffer != trace.buffer()) {
            if let Some(taken) = letters(tracing.trace_as_seen(orbit, trace.seen(), buffer)) {
                let change = Change::Buffer { orbit, buffer, taken: taken.clone() };
                otherwise(Slip { kind: SlipKind::TracedFromOtherBuffer, change }, taken, 1.0);
            }
        }
        let against = tracing.seen_against_parity(&plan.held, orbit);
        let against = against.and_then(|seen| letters(tracing.trace_as_seen(orbit, &seen, trace.buffer())));
        if let Some(taken) = against {
            let made = tracing.exchanged(&plan.held).is_none();
            let kind = if made { SlipKind::ParityWithoutNeed } else { SlipKind::ParityOverlooked };
            otherwise(Slip { kind, change: Change::Parity { made } }, taken, 1.0);
        }
    }
    found
}

/// What a slip of tracing or recall replaces on the tape.
pub(crate) fn letter_edits(slip: &LetterSlip, course: &Course, craft: &Craft<'_>) -> Vec<Edit> {
    let rework = reworked(slip, course, &craft.acts);
    let mut turns: Vec<Turn> = Vec::new();
    for (act, _) in &rework.acts[rework.new] {
        turns.extend(&craft.acts.laid(*act).turns);
    }
    let range = course.range(slip.orbit, rework.old);
    let made = if turns.is_empty() { Made::Nothing } else { Made::Many(turns) };
    let mut edits = vec![Edit { range, made }];
    if slip.parity_changes
        && let Some(range) = course.parity_range()
    {
        let parity = craft.acts.laid(Act::Parity).turns.clone();
        let made = if course.recalled.parity { Made::Nothing } else { Made::Many(parity) };
        edits.push(Edit { range, made });
    }
    edits
}

/// A slip of the hands in an act of its own, moved to its place: the number of the act's first letter, and where it begins on the
/// tape.
pub(crate) fn moved(candidate: &Candidate, letter: usize, begin: usize) -> Candidate {
    let mut moved = candidate.clone();
    if let Change::Turn { step, .. } | Change::Whole { step, .. } | Change::Held { step, .. } =
        &mut moved.slip.change
        && let ActionStep::Letter { letter: place, .. }
        | ActionStep::Pair { letter: place, .. }
        | ActionStep::Turned { letter: place, .. } = step
    {
        *place = letter;
    }
    for edit in &mut moved.edits {
        edit.range = edit.range.start + begin..edit.range.end + begin;
    }
    moved
}
