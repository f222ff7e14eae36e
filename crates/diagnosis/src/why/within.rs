//! A slip of one turn within what another slip made instead of several: in the algorithm made once more, in another letter's set-up,
//! in a scramble made as in a mirror.

use super::hands::{self, Edit, Made};
use super::search::{Found, Story};
use super::space::{Candidate, Space};
use crate::slip::{ActionStep, Change, Slip};
use cube::{Element, Turn};

/// What a slip makes instead of several turns.
#[derive(Clone, Copy)]
enum Instead<'a> {
    /// Of a whole step.
    Step(ActionStep, &'a [Turn]),
    /// Of some turns of the scramble.
    Scramble(&'a [Turn]),
}

impl<'a> Instead<'a> {
    fn of(candidate: &'a Candidate) -> Option<Self> {
        let Some(Made::Many(turns)) = candidate.edits.first().map(|edit| &edit.made) else { return None };
        match candidate.slip.change {
            Change::Whole { step, .. } => Some(Self::Step(step, turns)),
            Change::Parity { made: true } => Some(Self::Step(ActionStep::Parity, turns)),
            Change::ScrambleWhole { .. } | Change::ScrambleOrder { .. } => Some(Self::Scramble(turns)),
            Change::Parity { made: false }
            | Change::Letters { .. }
            | Change::Turn { .. }
            | Change::Held { .. }
            | Change::Scramble { .. }
            | Change::ScrambleListed { .. }
            | Change::Buffer { .. }
            | Change::Kinds { .. }
            | Change::Ended { .. }
            | Change::Holding { .. } => None,
        }
    }

    const fn turns(self) -> &'a [Turn] {
        match self {
            Self::Step(_, turns) | Self::Scramble(turns) => turns,
        }
    }

    /// Calls for each slip of one turn in them with its place on the tape, where they begin at the given place, and its share among
    /// the slips of its kind there.
    fn otherwise(self, begin: usize, space: &Space<'_>, emit: &mut impl FnMut(Slip, Edit, f64)) {
        match self {
            Self::Step(step, turns) => {
                for (at, &turn) in turns.iter().enumerate() {
                    // Before its first turn it is a slip at a place that the step has without the other slip too.
                    if at > 0 {
                        hands::added(step, at, begin + at, emit);
                    }
                    hands::changed(step, at, begin + at, turn, space.craft, emit);
                }
            }
            Self::Scramble(turns) => hands::scramble_turns(turns, begin, emit),
        }
    }
}

/// All such pairs of slips.
pub(crate) fn pairs(space: &Space<'_>, difference: &Element, prior: f64, found: &mut Found) {
    let group = space.group;
    let wanted = group.key_up_to_hold(difference);
    for (number, outer) in space.candidates.iter().enumerate() {
        let (Some(instead), [edit]) = (Instead::of(outer), outer.edits.as_slice()) else { continue };
        if outer.weight <= 0.0 {
            continue;
        }
        let (begin, turns) = (edit.range.start, instead.turns());
        // What stands before each turn that is made, from the end of the attempt, and what follows it.
        let mut before = vec![space.carried.before[edit.range.start]];
        before.extend(turns.iter().scan(before[0], |so_far, &turn| {
            *so_far = so_far.then(group.turn(turn));
            Some(*so_far)
        }));
        let mut after = vec![space.carried.after[edit.range.end]; turns.len() + 1];
        for (at, &turn) in turns.iter().enumerate().rev() {
            after[at] = group.turn(turn).then(&after[at + 1]);
        }
        let mut slip_number = 0;
        instead.otherwise(begin, space, &mut |slip, edit, share| {
            let made = edit.made.turns();
            let so_far = made
                .iter()
                .fold(before[edit.range.start - begin], |so_far, &turn| so_far.then(group.turn(turn)));
            if group.key_up_to_hold(&so_far.then(&after[edit.range.end - begin])) == wanted {
                let effect = space.effect(&outer.edits, &space.carried);
                let rest = effect.inverse().then(difference);
                let effects = [0, group.key_up_to_hold(&effect), group.key_up_to_hold(&rest)];
                let weight = 2.0 * prior * outer.weight * share * space.scale(slip.kind);
                found.add(effects, weight, Story::Within { whole: number as u32, slip: slip_number });
            }
            slip_number += 1;
        });
    }
}

/// The second slip of [`Story::Within`], on the tape that the first one left.
pub(crate) fn second(space: &Space<'_>, outer: &Candidate, number: u32) -> Option<Candidate> {
    let begin = outer.edits.first()?.range.start;
    let mut all = Vec::new();
    Instead::of(outer)?.otherwise(begin, space, &mut |slip, edit: Edit, share| {
        all.push(Candidate { slip, edits: vec![edit], weight: share });
    });
    all.into_iter().nth(number as usize)
}
