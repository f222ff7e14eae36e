//! The space of single slips of one attempt: each as the group element by which it changes the outcome, slips that
//! act alike in one class.

use super::course::{Carried, Course, Span, lay};
use super::craft::Craft;
use super::hands::{self, Edit, Made};
use super::memo_slips::{self, LetterSlip};
use crate::slip::{ActionStep, Change, Slip, SlipKind};
use blind::Trace;
use cube::{Element, ElementKey as Key, Group, Orbit, Sticker, Turn};
use rustc_hash::FxHashMap;
use std::cell::RefCell;
use std::rc::Rc;

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

    pub(crate) fn of_exact(&self, exact: Key) -> Option<&Class> {
        self.exact.get(&exact).map(|&at| &self.all[at as usize])
    }
}

/// The slips of the hands within one letter, by what they change at the end of the letter.
#[derive(Clone, Debug, Default)]
pub(crate) struct Local {
    pub(crate) candidates: Vec<Candidate>,
    pub(crate) classes: Classes,
}

/// By letter; without one, of the parity algorithm.
type Locals = FxHashMap<Option<(Orbit, Sticker)>, Rc<Local>>;

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
    /// The slips of the hands within letters, as far as they were asked for.
    locals: RefCell<Locals>,
    /// For each kind of slip, what a share counts.
    scale: [f64; SlipKind::ALL.len()],
}

impl<'a> Space<'a> {
    pub(crate) fn new(
        course: &'a Course,
        traces: &[Trace],
        craft: &'a Craft<'a>,
        group: &'static Group,
    ) -> Self {
        let carried = Carried::new(&course.tape, group);
        let mut space = Self {
            group,
            craft,
            course,
            carried,
            candidates: Vec::new(),
            classes: Classes::default(),
            letter_slips: Vec::new(),
            locals: RefCell::default(),
            scale: [0.0; SlipKind::ALL.len()],
        };
        space.gather(traces);
        space.weigh();
        for at in 0..space.candidates.len() {
            let element = space.effect(&space.candidates[at].edits, &space.carried);
            let nothing = group.key_up_to_hold(&element) == group.key_up_to_hold(&Element::IDENTITY);
            if !nothing {
                space.classes.insert(&element, at as u32, space.candidates[at].weight, group);
            }
        }
        space
    }

    fn gather(&mut self, traces: &[Trace]) {
        let (course, craft) = (self.course, self.craft);
        let candidates = &mut self.candidates;
        let mut emit = |slip: Slip, edit: Edit, share: f64| {
            if craft.catalogue.weight(slip.kind) <= 0.0 {
                return;
            }
            candidates.push(Candidate { slip, edits: vec![edit], weight: share });
        };
        hands::start(course, craft, &mut emit);
        for span in &course.spans {
            hands::execution(&course.tape, span, craft, &mut emit);
        }
        if let Some((step, range)) = course.spans.last().and_then(|span| span.parts().last()) {
            hands::added(step, range.len(), range.end, &mut emit);
        }
        if let (Some(range), Some(parity)) = (course.parity_range(), craft.method.parity())
            && !traces.is_empty()
        {
            let made = !course.recalled.parity;
            let kind = if made { SlipKind::ParityWithoutNeed } else { SlipKind::ParityOverlooked };
            let turns = if made { Made::Many(parity.flatten()) } else { Made::Nothing };
            emit(Slip { kind, change: Change::Parity { made } }, Edit { range, made: turns }, 1.0);
        }
        let mut letter_slips = memo_slips::tracing(&course.recalled, traces);
        letter_slips.extend(memo_slips::recall(&course.recalled, craft, &|_, _| true));
        for slip in letter_slips.into_iter().filter(|slip| craft.catalogue.weight(slip.slip.kind) > 0.0) {
            let edits = letter_edits(&slip, course, craft);
            self.letter_slips.push((slip.clone(), self.candidates.len() as u32));
            self.candidates.push(Candidate { slip: slip.slip, edits, weight: slip.share });
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

    /// The slips of the hands within a letter, or within the parity algorithm, wherever it stands.
    pub(crate) fn local(&self, letter: Option<(Orbit, Sticker)>) -> Rc<Local> {
        if let Some(known) = self.locals.borrow().get(&letter) {
            return Rc::clone(known);
        }
        let made = Rc::new(self.make_local(letter));
        self.locals.borrow_mut().insert(letter, Rc::clone(&made));
        made
    }

    fn make_local(&self, letter: Option<(Orbit, Sticker)>) -> Local {
        let mut tape: Vec<Turn> = Vec::new();
        let span = if let Some((orbit, target)) = letter {
            lay(&mut tape, orbit, 0, target, self.craft.method)
        } else {
            tape = self.craft.method.parity().map_or_else(Vec::new, cube::Algorithm::flatten);
            Span { letter: None, begin: 0, ends: [0, tape.len(), tape.len()] }
        };
        let carried = Carried::new(&tape, self.group);
        let mut local = Local::default();
        hands::execution(&tape, &span, self.craft, &mut |slip, edit, share| {
            let weight = share * self.scale(slip.kind);
            if weight <= 0.0 {
                return;
            }
            let edits = vec![edit];
            let element = self.effect(&edits, &carried);
            local.classes.insert(&element, local.candidates.len() as u32, weight, self.group);
            local.candidates.push(Candidate { slip, edits, weight });
        });
        local
    }
}

/// What a slip of tracing or recall replaces on the tape.
pub(crate) fn letter_edits(slip: &LetterSlip, course: &Course, craft: &Craft<'_>) -> Vec<Edit> {
    let mut turns = Vec::new();
    for &target in &slip.taken {
        lay(&mut turns, slip.orbit, 0, target, craft.method);
    }
    let range = course.range(slip.orbit, slip.from..slip.from + slip.meant);
    let made = if turns.is_empty() { Made::Nothing } else { Made::Many(turns) };
    let mut edits = vec![Edit { range, made }];
    if slip.parity_changes
        && let (Some(range), Some(parity)) = (course.parity_range(), craft.method.parity())
    {
        let made = if course.recalled.parity { Made::Nothing } else { Made::Many(parity.flatten()) };
        edits.push(Edit { range, made });
    }
    edits
}

/// A slip of the hands in a letter of its own, moved to its place: which letter, and where it begins on the tape.
pub(crate) fn moved(candidate: &Candidate, letter: usize, begin: usize) -> Candidate {
    let mut moved = candidate.clone();
    let step = match &mut moved.slip.change {
        Change::Turn { step, .. } | Change::Whole { step, .. } | Change::Held { step, .. } => Some(step),
        _ => None,
    };
    if let Some(ActionStep::Letter { letter: place, .. }) = step {
        *place = letter;
    }
    for edit in &mut moved.edits {
        edit.range = edit.range.start + begin..edit.range.end + begin;
    }
    moved
}
