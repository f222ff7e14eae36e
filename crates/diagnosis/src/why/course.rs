//! The course of an attempt: everything that is turned, from the scramble to the last letter, as one tape on which
//! every stretch knows what it belongs to.

use super::act::{Act, Acts};
use crate::slip::{ActionStep, Part};
use blind::{Conventions, Method};
use cube::{Element, Group, Orbit, Rotation, Sticker, Turn};

/// The letters that are carried out, kind by kind in the order of execution, and whether the parity algorithm is made.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct Recalled {
    pub(crate) kinds: Vec<(Orbit, Vec<Sticker>)>,
    pub(crate) parity: bool,
    /// The kind after which the parity algorithm is made, whose number of letters asks for it.
    pub(crate) parity_after: Orbit,
}

/// An act on the tape.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) struct Span {
    pub(crate) act: Act,
    /// The number of its first letter among those of the kind.
    pub(crate) letter: usize,
    pub(crate) begin: usize,
    /// Where the set-up ends, the algorithm, and the set-up undone.
    pub(crate) ends: [usize; 3],
}

impl Span {
    /// An act laid on a tape.
    pub(crate) fn lay(tape: &mut Vec<Turn>, act: Act, letter: usize, acts: &Acts<'_>) -> Self {
        let (begin, laid) = (tape.len(), acts.laid(act));
        tape.extend(&laid.turns);
        Self { act, letter, begin, ends: laid.ends.map(|end| begin + end) }
    }

    /// The three parts with their steps and ranges; empty ones are left out.
    pub(crate) fn parts(&self) -> impl Iterator<Item = (ActionStep, std::ops::Range<usize>)> + use<> {
        let span = *self;
        let begins = [span.begin, span.ends[0], span.ends[1]];
        [Part::Setup, Part::Algorithm, Part::Undo].into_iter().enumerate().filter_map(move |(at, part)| {
            let range = begins[at]..span.ends[at];
            (!range.is_empty()).then_some((span.act.step(span.letter, part), range))
        })
    }

    pub(crate) const fn end(&self) -> usize {
        self.ends[2]
    }
}

/// Where the acts of a kind lie.
#[derive(Clone, Debug)]
pub(crate) struct Stretch {
    orbit: Orbit,
    /// Among the spans.
    spans: std::ops::Range<usize>,
    /// On the tape.
    tape: std::ops::Range<usize>,
}

/// The tape with its stretches.
#[derive(Clone, Debug)]
pub(crate) struct Course {
    pub(crate) recalled: Recalled,
    pub(crate) tape: Vec<Turn>,
    /// Where the scramble ends and the rotations of picking up begin, and where these end.
    pub(crate) picked_up: std::ops::Range<usize>,
    pub(crate) hold: Rotation,
    pub(crate) spans: Vec<Span>,
    kinds: Vec<Stretch>,
    /// Where the parity algorithm begins, or would if it were made; nothing if the method has none.
    pub(crate) parity_at: Option<usize>,
}

impl Course {
    pub(crate) fn new(scramble: &[Turn], hold: Rotation, recalled: Recalled, acts: &Acts<'_>) -> Self {
        let mut tape = scramble.to_vec();
        tape.extend(hold.turns());
        let picked_up = scramble.len()..tape.len();
        let mut spans = Vec::new();
        let mut kinds = Vec::new();
        let mut parity_at = None;
        for (orbit, letters) in &recalled.kinds {
            let (first, begin) = (spans.len(), tape.len());
            for (act, letter) in acts.of(*orbit, letters) {
                spans.push(Span::lay(&mut tape, act, letter, acts));
            }
            kinds.push(Stretch { orbit: *orbit, spans: first..spans.len(), tape: begin..tape.len() });
            if *orbit == recalled.parity_after && acts.have_parity() {
                parity_at = Some(tape.len());
                if recalled.parity {
                    spans.push(Span::lay(&mut tape, Act::Parity, 0, acts));
                }
            }
        }
        Self { recalled, tape, picked_up, hold, spans, kinds, parity_at }
    }

    /// The letters of a kind; none of one that the puzzle does not have.
    pub(crate) fn letters(&self, orbit: Orbit) -> &[Sticker] {
        let kind = self.recalled.kinds.iter().find(|(other, _)| *other == orbit);
        kind.map_or(&[][..], |(_, letters)| letters)
    }

    /// The acts of a kind.
    pub(crate) fn spans_of(&self, orbit: Orbit) -> &[Span] {
        let stretch = self.kinds.iter().find(|stretch| stretch.orbit == orbit);
        stretch.map_or(&[], |stretch| &self.spans[stretch.spans.clone()])
    }

    /// Where the acts of a kind lie on the tape; at its end for a kind that the puzzle does not have.
    pub(crate) fn stretch(&self, orbit: Orbit) -> std::ops::Range<usize> {
        let stretch = self.kinds.iter().find(|stretch| stretch.orbit == orbit);
        stretch.map_or(self.tape.len()..self.tape.len(), |stretch| stretch.tape.clone())
    }

    /// The range of the tape that some acts of a kind take.
    pub(crate) fn range(&self, orbit: Orbit, acts: std::ops::Range<usize>) -> std::ops::Range<usize> {
        let (spans, stretch) = (self.spans_of(orbit), self.stretch(orbit));
        let begin = |at: usize| spans.get(at).map_or(stretch.end, |span| span.begin);
        begin(acts.start)..begin(acts.end).max(begin(acts.start))
    }

    /// The range of the parity algorithm, empty where it would stand.
    pub(crate) fn parity_range(&self) -> Option<std::ops::Range<usize>> {
        let at = self.parity_at?;
        let span = self.spans.iter().find(|span| span.act == Act::Parity);
        Some(span.map_or(at..at, |span| span.begin..span.end()))
    }
}

/// What stands before and after each place of a tape, carried to the end: a stretch `a..b` replaced by `w` changes the
/// outcome by `before[a]`, `w`, `after[b]`.
#[derive(Clone, Debug)]
pub(crate) struct Carried {
    pub(crate) before: Vec<Element>,
    pub(crate) after: Vec<Element>,
}

impl Carried {
    pub(crate) fn new(tape: &[Turn], group: &'static Group) -> Self {
        let mut after = vec![Element::IDENTITY; tape.len() + 1];
        for (at, &turn) in tape.iter().enumerate().rev() {
            after[at] = group.turn(turn).then(&after[at + 1]);
        }
        let before = after.iter().map(Element::inverse).collect();
        Self { before, after }
    }
}

/// The letters of a memo in the order of execution, with the parity algorithm where the kind that asks for it is odd.
pub(crate) fn recalled(
    memo: &[(Orbit, Vec<Sticker>)],
    conventions: &Conventions,
    method: &Method,
) -> Recalled {
    let kinds: Vec<(Orbit, Vec<Sticker>)> = conventions
        .execution_order
        .all()
        .filter_map(|orbit| memo.iter().find(|(other, _)| *other == orbit).cloned())
        .collect();
    let parity_after = method.parity_after(&conventions.execution_order);
    let odd = kinds.iter().any(|(orbit, letters)| *orbit == parity_after && letters.len() % 2 == 1);
    Recalled { kinds, parity: method.parity().is_some() && odd, parity_after }
}
