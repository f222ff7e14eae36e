//! A slip of one turn within what another slip made instead of a whole step: in the algorithm made once more, in another letter's
//! set-up.

use super::hands::{self, Edit, Made};
use super::search::{Found, Story};
use super::space::{Candidate, Space};
use crate::slip::{ActionStep, Change, Slip};
use cube::{Element, Turn};

/// The step of a slip that replaces a whole one, and what it makes instead.
fn made_whole(candidate: &Candidate) -> Option<(ActionStep, &[Turn])> {
    let step = match candidate.slip.change {
        Change::Whole { step, .. } => step,
        Change::Parity { made: true } => ActionStep::Parity,
        _ => return None,
    };
    match candidate.edits.first().map(|edit| &edit.made) {
        Some(Made::Many(turns)) => Some((step, turns)),
        _ => None,
    }
}

/// Calls for each slip of one turn in `turns` with its place among them, and its share among the slips of its kind there.
fn turns_otherwise(
    step: ActionStep,
    turns: &[Turn],
    space: &Space<'_>,
    emit: &mut impl FnMut(Slip, Edit, f64),
) {
    for (at, &turn) in turns.iter().enumerate() {
        // Before its first turn it is a slip at a place that the step has without the other slip too.
        if at > 0 {
            hands::added(step, at, at, emit);
        }
        hands::changed(step, at, at, turn, space.craft, emit);
    }
}

/// All such pairs of slips.
pub(crate) fn pairs(space: &Space<'_>, difference: &Element, prior: f64, found: &mut Found) {
    let group = space.group;
    let wanted = group.key_up_to_hold(difference);
    for (number, outer) in space.candidates.iter().enumerate() {
        let (Some((step, turns)), [edit]) = (made_whole(outer), outer.edits.as_slice()) else { continue };
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
        turns_otherwise(step, turns, space, &mut |slip, edit, share| {
            let made = edit.made.turns();
            let so_far =
                made.iter().fold(before[edit.range.start], |so_far, &turn| so_far.then(group.turn(turn)));
            if group.key_up_to_hold(&so_far.then(&after[edit.range.end])) == wanted {
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
    let (step, turns) = made_whole(outer)?;
    let start = outer.edits.first()?.range.start;
    let mut all = Vec::new();
    turns_otherwise(step, turns, space, &mut |slip, edit: Edit, share| {
        let range = edit.range.start + start..edit.range.end + start;
        all.push(Candidate { slip, edits: vec![Edit { range, ..edit }], weight: share });
    });
    all.into_iter().nth(number as usize)
}
