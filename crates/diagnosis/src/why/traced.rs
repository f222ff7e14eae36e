//! Pairs of slips that both decide about parity: together they leave it as planned, so neither is what it is alone.

use super::act::Act;
use super::hands::{Edit, Made};
use super::memo_slips::LetterSlip;
use super::search::{Found, Story};
use super::space::{Candidate, Space, letter_edits};
use crate::slip::{Change, Slip, SlipKind};
use cube::Element;

/// All pairs of slips of tracing by which the number of letters becomes odd or even twice, and of one of them with parity made or
/// not made against it.
pub(crate) fn pairs(space: &Space<'_>, difference: &Element, prior: f64, found: &mut Found) {
    let group = space.group;
    let wanted = group.key_up_to_hold(difference);
    let deciding: Vec<(u32, &LetterSlip, &Candidate)> = space
        .letter_slips
        .iter()
        .enumerate()
        .filter(|(_, (slip, _))| slip.decides_parity(space.course))
        .map(|(number, (slip, candidate))| (number as u32, slip, &space.candidates[*candidate as usize]))
        .collect();
    let mut add = |edits: &[Edit], one: &Candidate, weight: f64, story: Story| {
        if group.key_up_to_hold(&space.effect(edits, &space.carried)) != wanted {
            return;
        }
        let first = space.effect(&one.edits, &space.carried);
        let rest = first.inverse().then(difference);
        let effects = [0, group.key_up_to_hold(&first), group.key_up_to_hold(&rest)];
        found.add(effects, 2.0 * prior * weight, story);
    };
    // Not one that another name has taken over.
    let is_parity = |candidate: &&Candidate| matches!(candidate.slip.change, Change::Parity { .. });
    let parity = space.candidates.iter().find(is_parity).filter(|_| space.course.parity_at.is_some());
    for (at, &(number, slip, one)) in deciding.iter().enumerate() {
        let letters = &one.edits[..1];
        if let Some(parity) = parity {
            let story = Story::TracedAgainst { letters: number };
            add(letters, one, one.weight * parity.weight, story);
        }
        for &(next, other, two) in &deciding[at + 1..] {
            let [(first, one), (second, two)] = if slip.from <= other.from {
                [(number, one), (next, two)]
            } else {
                [(next, two), (number, one)]
            };
            if one.edits[0].range.end <= two.edits[0].range.start {
                let edits = [one.edits[0].clone(), two.edits[0].clone()];
                add(&edits, one, one.weight * two.weight, Story::Traced { first, second });
            }
        }
    }
}

/// The second slip of [`Story::Traced`], on the tape that the first one left.
pub(crate) fn second(space: &Space<'_>, first: &LetterSlip, second: &LetterSlip) -> Candidate {
    let from = second.from + first.taken.len() - first.meant;
    let mut moved = LetterSlip { from, ..second.clone() };
    if let Change::Letters { from: place, .. } = &mut moved.slip.change {
        *place = from;
    }
    let edits = letter_edits(&moved, &space.after(first), space.craft);
    Candidate { slip: moved.slip, edits, weight: moved.share }
}

/// The second slip of [`Story::TracedAgainst`]: what was done about parity against the letters.
pub(crate) fn against(space: &Space<'_>, first: &LetterSlip) -> Option<Candidate> {
    let course = space.after(first);
    let made = !course.recalled.parity;
    let kind = if made { SlipKind::ParityWithoutNeed } else { SlipKind::ParityOverlooked };
    let turns = || space.craft.acts.laid(Act::Parity).turns.clone();
    let edit =
        Edit { range: course.parity_range()?, made: if made { Made::Many(turns()) } else { Made::Nothing } };
    Some(Candidate { slip: Slip { kind, change: Change::Parity { made } }, edits: vec![edit], weight: 1.0 })
}
