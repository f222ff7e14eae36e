//! The one slip of the hands after which moves go on as planned, found by making it in the plan.
//!
//! Every slip is made in the plan where the moves first leave it, and the one after which the moves agree for longest is the
//! explanation: all of them where there was one slip, and those up to the next where there were two.

use super::{Deviation, How, Planned, one_for_one, trimmed};
use crate::slip::Part;
use cube::{Amount, Face, Rotation, Turn, inverted, simplified};

/// So many turns must agree after a slip that does not explain all of the moves.
const AGREEING: usize = 6;

/// Plans of more turns are compared as they are, and not with what cancels taken out.
const MOST_TURNS: usize = 1_500;

/// So far from where two rows of turns without what cancels first differ may the slip be.
const AROUND: usize = 6;

/// A slip made in a plan: some turns of it, and what was made instead.
struct Made {
    from: usize,
    until: usize,
    instead: Vec<Turn>,
    how: How,
}

/// A plan with its turns in rows that belong together.
struct Rows<'a> {
    planned: &'a [Planned],
    turns: Vec<Turn>,
    /// Steps: set-up, algorithm, its undoing.
    steps: Vec<(usize, usize)>,
    /// Actions, each of a letter or two, or of parity.
    letters: Vec<(usize, usize)>,
}

impl<'a> Rows<'a> {
    fn new(planned: &'a [Planned]) -> Self {
        let rows = |same: &dyn Fn(&Planned, &Planned) -> bool| {
            let mut rows: Vec<(usize, usize)> = Vec::new();
            for (at, turn) in planned.iter().enumerate() {
                match rows.last_mut() {
                    Some(last) if same(&planned[last.0], turn) => last.1 = at + 1,
                    _ => rows.push((at, at + 1)),
                }
            }
            rows
        };
        let steps = rows(&|a, b| a.step == b.step);
        let letters = rows(&|a, b| a.action == b.action);
        Self { planned, turns: planned.iter().map(|planned| planned.turn).collect(), steps, letters }
    }

    fn step(&self, at: usize) -> Option<(usize, usize)> {
        self.steps.iter().copied().find(|&(from, until)| (from..until).contains(&at))
    }

    fn is_undo(&self, at: usize) -> bool {
        self.planned[at].step.part() == Part::Undo
    }

    fn with(&self, made: &Made) -> Vec<Turn> {
        [&self.turns[..made.from], &made.instead, &self.turns[made.until..]].concat()
    }

    /// Whole steps and letters that went wrong.
    fn whole(&self) -> Vec<Made> {
        let mut all = Vec::new();
        for (number, &(from, until)) in self.letters.iter().enumerate() {
            all.push(Made { from, until, instead: Vec::new(), how: How::LetterLeftOut });
            let own = &self.turns[from..until];
            all.push(Made { from, until, instead: [own, own].concat(), how: How::LetterDoubled });
            if let Some(&(next, end)) = self.letters.get(number + 1) {
                let instead = [&self.turns[next..end], own].concat();
                all.push(Made { from, until: end, instead, how: How::LettersExchanged });
            }
        }
        for &(from, until) in &self.steps {
            let own = &self.turns[from..until];
            let undo = self.is_undo(from);
            let left_out = if undo { How::NotUndone } else { How::StepLeftOut };
            all.push(Made { from, until, instead: Vec::new(), how: left_out });
            let back = inverted(own);
            if undo {
                all.push(Made { from, until, instead: back, how: How::UndoneWrongWay });
            } else if until - from > 1 {
                all.push(Made { from, until, instead: back, how: How::StepInverted });
            }
            if until - from > 1 {
                all.push(Made { from, until, instead: [own, own].concat(), how: How::StepDoubled });
            }
        }
        all
    }

    /// What may have gone wrong with one turn, made otherwise as `others` say.
    fn single(&self, at: usize, others: &[Turn]) -> Vec<Made> {
        let mut all = Vec::new();
        if let Some(&planned) = self.turns.get(at) {
            let alone = self.step(at).is_some_and(|(from, until)| until - from == 1);
            let undo = self.is_undo(at);
            let left_out = match (alone, undo) {
                (true, true) => How::NotUndone,
                (true, false) => How::StepLeftOut,
                (false, _) => How::LeftOut,
            };
            let until = at + 1;
            all.push(Made { from: at, until, instead: Vec::new(), how: left_out });
            all.push(Made { from: at, until, instead: vec![planned, planned], how: How::Doubled });
            for amount in Amount::ALL.into_iter().filter(|&amount| amount != planned.amount) {
                let made = Turn::new(planned.block, amount);
                let how = one_for_one(planned, made, undo && alone);
                all.push(Made { from: at, until, instead: vec![made], how });
            }
            for &made in others.iter().filter(|&&made| made.block != planned.block && !made.is_rotation()) {
                let how = one_for_one(planned, made, undo && alone);
                all.push(Made { from: at, until, instead: vec![made], how });
            }
        }
        for &made in others {
            let how = if made.is_rotation() { How::Held } else { How::Added };
            all.push(Made { from: at, until: at, instead: vec![made], how });
        }
        all
    }
}

fn agreeing(one: &[Turn], other: &[Turn]) -> usize {
    one.iter().zip(other).take_while(|(one, other)| one == other).count()
}

/// How unlikely a slip is beside another that explains as much.
const fn rank(how: How) -> u8 {
    match how {
        How::LetterLeftOut | How::NotUndone | How::StepLeftOut | How::UndoneWrongWay => 0,
        How::LeftOut | How::OtherWay | How::OtherAmount => 1,
        How::Doubled | How::OtherFace | How::OtherWidth | How::Held => 2,
        How::StepDoubled | How::LetterDoubled | How::StepInverted | How::LettersExchanged => 3,
        How::Added | How::GoneOn | How::BrokenOff => 4,
        How::Otherwise => 5,
    }
}

/// The first slip of moves that do not keep to a plan, and how many of the moves agree with the plan as changed by it; no end where it explains
/// all.
pub(super) fn first_slip(planned: &[Planned], moves: &[Turn]) -> Option<(Deviation, usize)> {
    let rows = Rows::new(planned);
    as_written(&rows, moves).or_else(|| without_what_cancels(&rows, moves))
}

fn as_written(rows: &Rows<'_>, moves: &[Turn]) -> Option<(Deviation, usize)> {
    let same = agreeing(&rows.turns, moves);
    let Some(&made) = moves.get(same) else {
        let planned = rows.turns[same..].to_vec();
        return (!planned.is_empty())
            .then(|| (deviation(rows, same, same, planned, Vec::new(), How::BrokenOff), usize::MAX));
    };
    let near = |slip: &Made| slip.from <= same;
    let mut all: Vec<Made> = rows.whole().into_iter().filter(near).collect();
    all.extend(rows.single(same, &[made]));
    if let Some(before) = same.checked_sub(1) {
        all.extend(rows.single(before, &[]));
    }
    best(rows, all, moves, <[Turn]>::to_vec)
}

fn without_what_cancels(rows: &Rows<'_>, moves: &[Turn]) -> Option<(Deviation, usize)> {
    if rows.turns.len().max(moves.len()) > MOST_TURNS {
        return None;
    }
    let short = simplified(moves);
    let same = agreeing(&simplified(&rows.turns), &short);
    let near = |at: usize| {
        let length = simplified(&rows.turns[..at]).len();
        (same.saturating_sub(AROUND)..=same + AROUND).contains(&length)
    };
    let faces = Face::ALL.into_iter().flat_map(|face| Amount::ALL.map(|amount| Turn::face(face, amount)));
    let rotations = Rotation::all().filter_map(|rotation| match rotation.turns() {
        [turn] => Some(*turn),
        _ => None,
    });
    let others: Vec<Turn> = faces.chain(rotations).collect();
    let mut all: Vec<Made> =
        rows.whole().into_iter().filter(|slip| near(slip.from) || near(slip.until)).collect();
    for at in (0..=rows.turns.len()).filter(|&at| near(at)) {
        all.extend(rows.single(at, &others));
    }
    best(rows, all, &short, simplified)
}

fn best(
    rows: &Rows<'_>,
    all: Vec<Made>,
    moves: &[Turn],
    short: impl Fn(&[Turn]) -> Vec<Turn>,
) -> Option<(Deviation, usize)> {
    let plain = agreeing(&short(&rows.turns), moves);
    let worth = |slip: &Made| {
        let turns = short(&rows.with(slip));
        let agreed = agreeing(&turns, moves);
        let whole = agreed == moves.len() && turns.len() == agreed;
        (whole, agreed)
    };
    let (slip, (whole, agreed)) = all
        .into_iter()
        .map(|slip| {
            let worth = worth(&slip);
            (slip, worth)
        })
        .filter(|(_, (whole, agreed))| *whole || *agreed >= plain + AGREEING)
        .min_by_key(|(slip, (whole, agreed))| {
            let planned = &rows.turns[slip.from..slip.until];
            let (left, made) = trimmed(planned, &slip.instead);
            // A letter left out is one thing, however many turns it has.
            let turns = if slip.how == How::LetterLeftOut { 1 } else { left.len().max(made.len()) };
            let roundabout = left.len() < planned.len() && planned.len() > 1;
            (!whole, usize::MAX - agreed, turns, roundabout, rank(slip.how), slip.from)
        })?;
    let planned = rows.turns[slip.from..slip.until].to_vec();
    // Where what cancels was left out the moves count otherwise than the plan; there it is where they first differ.
    let turn = slip.from.min(plain);
    Some((
        deviation(rows, slip.from, turn, planned, slip.instead, slip.how),
        if whole { usize::MAX } else { agreed },
    ))
}

fn deviation(
    rows: &Rows<'_>,
    from: usize,
    turn: usize,
    planned: Vec<Turn>,
    made: Vec<Turn>,
    how: How,
) -> Deviation {
    let step = rows.planned.get(from).map(|planned| planned.step);
    let how = if step.is_none() { How::GoneOn } else { how };
    let within = rows.step(from).map_or(0, |(begins, _)| from - begins);
    Deviation { step, within, turn, planned, made, how }
}
