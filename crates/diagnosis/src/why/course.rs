//! The course of an attempt: everything that is turned, from the scramble to the last letter, as one tape on which
//! every stretch knows what it belongs to.

use crate::slip::{ActionStep, Part};
use blind::{Conventions, Method};
use cube::{Element, Group, Orbit, Rotation, Sticker, Turn, inverted};

/// The letters that are carried out, kind by kind in the order of execution, and whether the parity algorithm is made.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct Recalled {
    pub(crate) kinds: Vec<(Orbit, Vec<Sticker>)>,
    pub(crate) parity: bool,
}

/// A letter or the parity algorithm on the tape.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) struct Span {
    /// The kind, which of its letters, and what it stands for; nothing for the parity algorithm.
    pub(crate) letter: Option<(Orbit, usize, Sticker)>,
    pub(crate) begin: usize,
    /// Where the set-up ends, the algorithm, and the set-up undone.
    pub(crate) ends: [usize; 3],
}

impl Span {
    /// The three parts with their steps and ranges; empty ones are left out.
    pub(crate) fn parts(&self) -> impl Iterator<Item = (ActionStep, std::ops::Range<usize>)> + use<> {
        let span = *self;
        let begins = [span.begin, span.ends[0], span.ends[1]];
        [Part::Setup, Part::Algorithm, Part::Undo].into_iter().enumerate().filter_map(move |(at, part)| {
            let step = match span.letter {
                Some((orbit, letter, target)) => ActionStep::Letter { orbit, letter, target, part },
                None => ActionStep::Parity,
            };
            let range = begins[at]..span.ends[at];
            (!range.is_empty()).then_some((step, range))
        })
    }

    pub(crate) fn end(&self) -> usize {
        self.ends[2]
    }
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
    /// Where the parity algorithm begins, or would if it were made; nothing if the method has none.
    pub(crate) parity_at: Option<usize>,
}

impl Course {
    pub(crate) fn new(scramble: &[Turn], hold: Rotation, recalled: Recalled, method: &Method) -> Self {
        let mut tape = scramble.to_vec();
        tape.extend(hold.turns());
        let picked_up = scramble.len()..tape.len();
        let mut spans = Vec::new();
        let mut parity_at = None;
        for (number, (orbit, letters)) in recalled.kinds.iter().enumerate() {
            for (letter, &target) in letters.iter().enumerate() {
                spans.push(lay(&mut tape, *orbit, letter, target, method));
            }
            if number == 0
                && let Some(parity) = method.parity()
            {
                parity_at = Some(tape.len());
                if recalled.parity {
                    let begin = tape.len();
                    tape.extend(parity.flatten());
                    spans.push(Span { letter: None, begin, ends: [begin, tape.len(), tape.len()] });
                }
            }
        }
        Self { recalled, tape, picked_up, hold, spans, parity_at }
    }

    /// The letters of a kind; none of one that the puzzle does not have.
    pub(crate) fn letters(&self, orbit: Orbit) -> &[Sticker] {
        let kind = self.recalled.kinds.iter().find(|(other, _)| *other == orbit);
        kind.map_or(&[][..], |(_, letters)| letters)
    }

    /// The range of the tape that some letters of a kind take.
    pub(crate) fn range(&self, orbit: Orbit, letters: std::ops::Range<usize>) -> std::ops::Range<usize> {
        let of_kind = || self.spans.iter().filter(|span| span.letter.is_some_and(|(kind, ..)| kind == orbit));
        let begin = of_kind().nth(letters.start).map(|span| span.begin);
        let end = letters.end.checked_sub(1).and_then(|last| of_kind().nth(last)).map(Span::end);
        match (begin, end) {
            (Some(begin), Some(end)) if !letters.is_empty() => begin..end,
            (Some(begin), _) => begin..begin,
            (None, _) => {
                let end = of_kind().next_back().map_or(self.tape.len(), Span::end);
                end..end
            }
        }
    }

    /// The range of the parity algorithm, empty where it would stand.
    pub(crate) fn parity_range(&self) -> Option<std::ops::Range<usize>> {
        let at = self.parity_at?;
        let span = self.spans.iter().find(|span| span.letter.is_none());
        Some(span.map_or(at..at, |span| span.begin..span.end()))
    }
}

/// Puts a letter on a tape.
pub(crate) fn lay(
    tape: &mut Vec<Turn>,
    orbit: Orbit,
    letter: usize,
    target: Sticker,
    method: &Method,
) -> Span {
    let begin = tape.len();
    let swap = method.swap(orbit);
    let setup: &[Turn] =
        swap.and_then(|swap| swap.setups(target).first()).map_or(&[], search::setup::Setup::turns);
    tape.extend(setup);
    let setup_end = tape.len();
    tape.extend(swap.map_or(&[][..], |swap| swap.turns()));
    let algorithm_end = tape.len();
    tape.extend(inverted(setup));
    Span { letter: Some((orbit, letter, target)), begin, ends: [setup_end, algorithm_end, tape.len()] }
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

/// The letters of a memo in the order of execution, with the parity algorithm where the first kind is odd.
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
    let parity =
        method.parity().is_some() && kinds.first().is_some_and(|(_, letters)| letters.len() % 2 == 1);
    Recalled { kinds, parity }
}
