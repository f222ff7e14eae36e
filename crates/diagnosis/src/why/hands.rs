//! Slips of the hands and before the start, as replacements of stretches of the tape.

use super::course::{Course, Span};
use super::craft::Craft;
use crate::slip::{ActionStep, Change, Part, Slip, SlipKind};
use cube::{Amount, Axis, Rotation, Turn, inverted};

/// What stands on the tape instead of a stretch.
#[derive(Clone, PartialEq, Eq, Hash, Debug)]
pub(crate) enum Made {
    Nothing,
    One(Turn),
    Many(Vec<Turn>),
}

impl Made {
    pub(crate) fn turns(&self) -> Vec<Turn> {
        match self {
            Self::Nothing => Vec::new(),
            Self::One(turn) => vec![*turn],
            Self::Many(turns) => turns.clone(),
        }
    }
}

/// A stretch of the tape and what is made instead.
#[derive(Clone, PartialEq, Eq, Hash, Debug)]
pub(crate) struct Edit {
    pub(crate) range: std::ops::Range<usize>,
    pub(crate) made: Made,
}

/// Takes a slip, its edit, and its share among the slips of its kind at its place.
pub(crate) trait Emit: FnMut(Slip, Edit, f64) {}
impl<F: FnMut(Slip, Edit, f64)> Emit for F {}

const fn one(
    kind: SlipKind,
    step: ActionStep,
    turn: usize,
    planned: Option<Turn>,
    made: Option<Turn>,
) -> Slip {
    Slip { kind, change: Change::Turn { step, turn, planned, made } }
}

/// All slips of the hands within a letter or the parity algorithm; turns added after its last are the next one's.
pub(crate) fn execution(tape: &[Turn], span: &Span, craft: &Craft<'_>, emit: &mut impl Emit) {
    for (step, range) in span.parts() {
        for (turn, at) in range.clone().enumerate() {
            added(step, turn, at, emit);
            changed(step, turn, at, tape[at], craft, emit);
        }
        for &rotation in &craft.rotations {
            let slip = Slip { kind: SlipKind::HeldOtherwise, change: Change::Held { step, rotation } };
            let edit = Edit { range: range.start..range.start, made: Made::Many(rotation.turns().to_vec()) };
            emit(slip, edit, 1.0 / craft.rotations.len() as f64);
        }
        let planned = &tape[range.clone()];
        match step.part() {
            Part::Setup => setup(step, range, planned, craft, emit),
            Part::Undo => undo(step, range, planned, craft, emit),
            Part::Algorithm => algorithm(step, range, planned, craft, emit),
        }
    }
    as_one(tape, span, craft, emit);
}

/// What carries out several letters is one algorithm, also where it is written as a set-up and what stands between it and its
/// undoing: another is then made instead of all of it.
fn as_one(tape: &[Turn], span: &Span, craft: &Craft<'_>, emit: &mut impl Emit) {
    let parts: Vec<_> = span.parts().collect();
    let [(_, first), .., (_, last)] = parts.as_slice() else { return };
    let range = first.start..last.end;
    let Some((step, _)) = parts.iter().find(|(step, _)| step.part() == Part::Algorithm) else { return };
    match step {
        ActionStep::Letter { .. } | ActionStep::Parity => {}
        ActionStep::Pair { .. } | ActionStep::Turned { .. } => {
            let others = craft.algorithms.iter();
            let share = 1.0 / others.len().max(1) as f64;
            for turns in others {
                let (slip, made) =
                    whole(SlipKind::AlgorithmOfOtherKind, *step, &tape[range.clone()], turns.clone(), None);
                emit(slip, Edit { range: range.clone(), made }, share);
            }
        }
    }
}

/// Turns added before a place.
pub(crate) fn added(step: ActionStep, turn: usize, at: usize, emit: &mut impl Emit) {
    for made in Turn::faces() {
        let slip = one(SlipKind::TurnAdded, step, turn, None, Some(made));
        emit(slip, Edit { range: at..at, made: Made::One(made) }, 1.0 / 18.0);
    }
}

/// A turn made otherwise than planned.
pub(crate) fn changed(
    step: ActionStep,
    turn: usize,
    at: usize,
    planned: Turn,
    craft: &Craft<'_>,
    emit: &mut impl Emit,
) {
    let mut replace = |kind: SlipKind, made: Option<Turn>, share: f64| {
        let edit = Edit { range: at..at + 1, made: made.map_or(Made::Nothing, Made::One) };
        emit(one(kind, step, turn, Some(planned), made), edit, share);
    };
    let by = |amount: Amount| Some(Turn::new(planned.block, amount));
    if planned.amount == Amount::Half {
        replace(SlipKind::TurnQuarter, by(Amount::Clockwise), 0.5);
        replace(SlipKind::TurnQuarter, by(Amount::Counter), 0.5);
    } else {
        replace(SlipKind::TurnOtherWay, Some(planned.inverse()), 1.0);
        replace(SlipKind::TurnHalf, by(Amount::Half), 1.0);
    }
    replace(SlipKind::TurnLeftOut, None, 1.0);
    let others = Craft::other_faces(planned).count() as f64;
    for made in Craft::other_faces(planned) {
        replace(SlipKind::TurnOtherFace, Some(made), 1.0 / others);
    }
    if let Some(made) = craft.other_width(planned) {
        replace(SlipKind::TurnWide, Some(made), 1.0);
    }
}

fn whole(
    kind: SlipKind,
    step: ActionStep,
    planned: &[Turn],
    made: Vec<Turn>,
    of: Option<cube::Sticker>,
) -> (Slip, Made) {
    let change = Change::Whole { step, planned: planned.to_vec(), made: made.clone(), of };
    (Slip { kind, change }, if made.is_empty() { Made::Nothing } else { Made::Many(made) })
}

/// Set-ups of other letters, each once; of two letters together the algorithm of other two is what other letters do.
fn other_setups(step: ActionStep, planned: &[Turn], craft: &Craft<'_>) -> Vec<(cube::Sticker, Vec<Turn>)> {
    let ActionStep::Letter { orbit, .. } = step else { return Vec::new() };
    craft
        .targets(orbit)
        .map(|target| (target, craft.setup(orbit, target)))
        .filter(|(_, setup)| !setup.is_empty() && setup != planned)
        .collect()
}

fn setup(
    step: ActionStep,
    range: std::ops::Range<usize>,
    planned: &[Turn],
    craft: &Craft<'_>,
    emit: &mut impl Emit,
) {
    let mut replace = |kind: SlipKind, turns: Vec<Turn>, of: Option<cube::Sticker>, share: f64| {
        let (slip, made) = whole(kind, step, planned, turns, of);
        emit(slip, Edit { range: range.clone(), made }, share);
    };
    replace(SlipKind::SetupLeftOut, Vec::new(), None, 1.0);
    replace(SlipKind::SetupDoubled, [planned, planned].concat(), None, 1.0);
    replace(SlipKind::SetupWrongWay, inverted(planned), None, 1.0);
    let others = other_setups(step, planned, craft);
    let share = 0.5 / others.len() as f64;
    for (of, setup) in others {
        replace(SlipKind::SetupOfAnother, setup, Some(of), share);
    }
}

fn undo(
    step: ActionStep,
    range: std::ops::Range<usize>,
    planned: &[Turn],
    craft: &Craft<'_>,
    emit: &mut impl Emit,
) {
    let mut replace = |kind: SlipKind, turns: Vec<Turn>, of: Option<cube::Sticker>, share: f64| {
        let (slip, made) = whole(kind, step, planned, turns, of);
        emit(slip, Edit { range: range.clone(), made }, share);
    };
    replace(SlipKind::SetupNotUndone, Vec::new(), None, 1.0);
    let setup = inverted(planned);
    if planned.len() == 1 {
        replace(SlipKind::SetupUndoneWrongWay, setup.clone(), None, 1.0);
    } else {
        replace(SlipKind::SetupUndoneWrongWay, setup.clone(), None, 0.5);
        let order: Vec<Turn> = planned.iter().rev().copied().collect();
        replace(SlipKind::SetupUndoneWrongWay, order, None, 0.5);
    }
    replace(SlipKind::SetupUndoneTwice, [planned, planned].concat(), None, 1.0);
    let others = other_setups(step, &setup, craft);
    for (of, other) in &others {
        replace(SlipKind::SetupOfAnother, inverted(other), Some(*of), 0.5 / others.len() as f64);
    }
}

fn algorithm(
    step: ActionStep,
    range: std::ops::Range<usize>,
    planned: &[Turn],
    craft: &Craft<'_>,
    emit: &mut impl Emit,
) {
    let mut replace = |kind: SlipKind, turns: Vec<Turn>, share: f64| {
        let (slip, made) = whole(kind, step, planned, turns, None);
        emit(slip, Edit { range: range.clone(), made }, share);
    };
    replace(SlipKind::AlgorithmLeftOut, Vec::new(), 1.0);
    replace(SlipKind::AlgorithmDoubled, [planned, planned].concat(), 1.0);
    replace(SlipKind::AlgorithmInverted, inverted(planned), 1.0);
    let others: Vec<&Vec<Turn>> =
        craft.algorithms.iter().filter(|turns| turns.as_slice() != planned).collect();
    for turns in &others {
        replace(SlipKind::AlgorithmOfOtherKind, (*turns).clone(), 1.0 / others.len() as f64);
    }
}

/// How likely an attempt ends between two letters in comparison with within one.
pub(crate) const fn share_of_end(between: bool) -> f64 {
    if between { 1.0 } else { 0.1 }
}

/// The attempt ended before each turn.
pub(crate) fn ends(course: &Course) -> Vec<(Slip, Edit, f64)> {
    let parts =
        course.spans.iter().flat_map(|span| span.parts().map(|(step, range)| (span.begin, step, range)));
    let turns = parts.flat_map(|(begin, step, range)| {
        range.enumerate().map(move |(turn, at)| {
            let slip = Slip { kind: SlipKind::BrokenOff, change: Change::Ended { step, turn } };
            let edit = Edit { range: at..course.tape.len(), made: Made::Nothing };
            (slip, edit, share_of_end(at == begin))
        })
    });
    turns.collect()
}

/// All slips before the start: in the scramble, if one is known, and in picking up.
pub(crate) fn start(course: &Course, craft: &Craft<'_>, emit: &mut impl Emit) {
    let scramble = &course.tape[..course.picked_up.start];
    scramble_turns(scramble, 0, emit);
    scramble_whole(scramble, craft, emit);
    for &rotation in &craft.rotations {
        let made = course.hold.then(rotation);
        let slip = Slip { kind: SlipKind::HeldWrong, change: Change::Holding { planned: course.hold, made } };
        let edit = Edit { range: course.picked_up.clone(), made: Made::Many(made.turns().to_vec()) };
        emit(slip, edit, 1.0 / craft.rotations.len() as f64);
    }
}

/// Turns of a scramble made otherwise, of which the first has the given number.
pub(crate) fn scramble_turns(scramble: &[Turn], first: usize, emit: &mut impl Emit) {
    for (turn, &planned) in (first..).zip(scramble) {
        let mut replace = |kind: SlipKind, planned: Option<Turn>, made: Option<Turn>, share: f64| {
            let slip = Slip { kind, change: Change::Scramble { turn, planned, made } };
            let end = if planned.is_some() { turn + 1 } else { turn };
            let edit = Edit { range: turn..end, made: made.map_or(Made::Nothing, Made::One) };
            emit(slip, edit, share);
        };
        replace(SlipKind::ScrambleTurnLeftOut, Some(planned), None, 1.0);
        let amounts = Amount::ALL.into_iter().filter(|&amount| amount != planned.amount);
        let others: Vec<Turn> = amounts
            .map(|amount| Turn::new(planned.block, amount))
            .chain(Craft::other_faces(planned))
            .collect();
        for &made in &others {
            let share = 1.0 / others.len() as f64;
            replace(SlipKind::ScrambleTurnWrong, Some(planned), Some(made), share);
        }
        for made in Turn::faces() {
            replace(SlipKind::ScrambleTurnAdded, None, Some(made), 1.0 / 18.0);
        }
    }
    for (turn, pair) in (first..).zip(scramble.windows(2)) {
        let slip = Slip {
            kind: SlipKind::ScrambleTurnsExchanged,
            change: Change::ScrambleOrder { turn, planned: [pair[0], pair[1]] },
        };
        emit(slip, Edit { range: turn..turn + 2, made: Made::Many(vec![pair[1], pair[0]]) }, 1.0);
    }
}

/// Another scramble of a list made.
pub(crate) fn listed(course: &Course, list: &[Vec<Turn>], emit: &mut impl Emit) {
    let scramble = &course.tape[..course.picked_up.start];
    for (number, made) in list.iter().enumerate().filter(|(_, made)| made.as_slice() != scramble) {
        let change = Change::ScrambleListed { number, made: made.clone() };
        let edit = Edit { range: 0..scramble.len(), made: Made::Many(made.clone()) };
        emit(Slip { kind: SlipKind::OtherScramble, change }, edit, 1.0);
    }
}

/// The scramble made as in a mirror, or on a puzzle that was held another way.
fn scramble_whole(scramble: &[Turn], craft: &Craft<'_>, emit: &mut impl Emit) {
    if scramble.is_empty() {
        return;
    }
    let mut whole = |kind: SlipKind, hold: Option<Rotation>, made: Vec<Turn>, share: f64| {
        let slip = Slip { kind, change: Change::ScrambleWhole { hold, made: made.clone() } };
        emit(slip, Edit { range: 0..scramble.len(), made: Made::Many(made) }, share);
    };
    for axis in Axis::ALL {
        let made = scramble.iter().map(|turn| turn.mirrored(axis)).collect();
        whole(SlipKind::ScrambleMirrored, None, made, 1.0);
    }
    for &rotation in &craft.rotations {
        let made: Vec<Turn> = scramble.iter().map(|turn| turn.rotated(rotation)).collect();
        whole(SlipKind::ScrambledInOtherHold, Some(rotation), made, 1.0);
    }
}
