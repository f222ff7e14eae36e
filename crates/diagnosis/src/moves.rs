//! The moves of an attempt as they were really made, lined up with the plan by the states they pass through.

mod one;

use crate::slip::{ActionStep, Part};
use blind::Action;
use cube::{Amount, Block, Element, ElementKey, Group, Rotation, State, Turn, inverted, simplified};
use rustc_hash::FxHashMap;

/// How a step differs from its plan.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum How {
    /// A turn was made the other way.
    OtherWay,
    /// A half turn was made for a quarter, or a quarter for a half.
    OtherAmount,
    /// A turn was left out.
    LeftOut,
    /// A turn was made that does not belong there.
    Added,
    /// A turn was made twice.
    Doubled,
    /// A turn was made on another face.
    OtherFace,
    /// A wide turn was made for a narrow one, or the other way about.
    OtherWidth,
    /// The whole step was left out.
    StepLeftOut,
    /// The whole step was made twice.
    StepDoubled,
    /// The whole step was made backwards.
    StepInverted,
    /// A letter was not carried out.
    LetterLeftOut,
    /// A letter was carried out twice.
    LetterDoubled,
    /// Two neighbouring letters were carried out in each other's place.
    LettersExchanged,
    /// The set-up was not undone.
    NotUndone,
    /// The set-up was made once more instead of undone.
    UndoneWrongWay,
    /// The puzzle was turned as a whole.
    Held,
    /// The moves end before the plan does.
    BrokenOff,
    /// Moves were made after the plan was carried out.
    GoneOn,
    /// Something else was made.
    Otherwise,
}

impl How {
    /// Its name in files and on the command line.
    pub const fn name(self) -> &'static str {
        match self {
            Self::OtherWay => "other-way",
            Self::OtherAmount => "other-amount",
            Self::LeftOut => "left-out",
            Self::Added => "added",
            Self::Doubled => "doubled",
            Self::OtherFace => "other-face",
            Self::OtherWidth => "other-width",
            Self::StepLeftOut => "step-left-out",
            Self::StepDoubled => "step-doubled",
            Self::StepInverted => "step-inverted",
            Self::LetterLeftOut => "letter-left-out",
            Self::LetterDoubled => "letter-doubled",
            Self::LettersExchanged => "letters-exchanged",
            Self::NotUndone => "not-undone",
            Self::UndoneWrongWay => "undone-wrong-way",
            Self::Held => "held",
            Self::BrokenOff => "broken-off",
            Self::GoneOn => "gone-on",
            Self::Otherwise => "otherwise",
        }
    }
}

/// The first step that differs for good.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Deviation {
    /// The step; none after the last one.
    pub step: Option<ActionStep>,
    /// Which turn of the step it begins with, from 0.
    pub within: usize,
    /// Which of the turns that were made is the first one that differs, from 0.
    pub turn: usize,
    /// What should have been made from there to where the plan is kept again.
    pub planned: Vec<Turn>,
    /// What was made instead.
    pub made: Vec<Turn>,
    /// How they differ.
    pub how: How,
}

/// Moves checked against a plan.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct MovesCheck {
    /// The first step that differs; none if the plan was carried out.
    pub deviation: Option<Deviation>,
    /// Whether the moves solve the puzzle.
    pub solves: bool,
    /// What the moves lead to.
    pub outcome: State,
}

/// A turn of the plan and the step that it belongs to.
struct Planned {
    turn: Turn,
    step: ActionStep,
    /// Which action of the plan, from 0.
    action: usize,
}

fn planned_turns(actions: &[Action]) -> Vec<Planned> {
    let mut planned = Vec::new();
    for (number, action) in actions.iter().enumerate() {
        let planned_turn = |step: ActionStep| move |&turn: &Turn| Planned { turn, step, action: number };
        match action {
            Action::Letter { orbit, letter, target, setup, swap, undo } => {
                for (part, turns) in [(Part::Setup, setup), (Part::Algorithm, swap), (Part::Undo, undo)] {
                    let step = ActionStep::Letter { orbit: *orbit, letter: *letter, target: *target, part };
                    planned.extend(turns.iter().map(planned_turn(step)));
                }
            }
            &Action::Pair { orbit, letter, targets, ref turns, .. } => {
                let step = ActionStep::Pair { orbit, letter, targets, part: Part::Algorithm };
                planned.extend(turns.iter().map(planned_turn(step)));
            }
            &Action::Turned { orbit, letter, targets, ref turns, .. } => {
                let step = ActionStep::Turned { orbit, letter, targets, part: Part::Algorithm };
                planned.extend(turns.iter().map(planned_turn(step)));
            }
            Action::Parity { turns } => {
                planned.extend(turns.iter().map(planned_turn(ActionStep::Parity)));
            }
        }
    }
    planned
}

/// What the puzzle has come to, the same however it is held.
#[derive(Clone, PartialEq, Eq, Hash, Debug)]
enum Position {
    /// On sizes whose states are elements of a group that can be packed.
    Element(ElementKey),
    /// On the others.
    State(Box<State>),
}

/// The same puzzle however it is held: on odd sizes with the centres where they were at first, on even sizes with one
/// corner where it was at first.
fn unheld(state: &State) -> State {
    if state.size().is_odd() {
        return state.after(state.core().inverse().turns());
    }
    let anchor = cube::Orbit::Corner;
    let first = cube::Sticker::all().next();
    Rotation::all()
        .map(|rotation| state.after(rotation.turns()))
        .find(|held| first.is_some_and(|first| held.at(anchor, first) == first))
        .unwrap_or(*state)
}

/// What the puzzle is before the first turn and after each.
fn passed(start: &State, turns: impl Iterator<Item = Turn>) -> Vec<Position> {
    if let Some(group) = Group::of(start.size()) {
        let position = |element: &Element| Position::Element(group.key_up_to_hold(element));
        let mut element = group.element(start);
        let after = |turn| {
            element = element.then(group.turn(turn));
            position(&element)
        };
        return std::iter::once(position(&group.element(start))).chain(turns.map(after)).collect();
    }
    let position = |state: &State| Position::State(Box::new(unheld(state)));
    let mut state = *start;
    let after = |turn| {
        state = state.after(&[turn]);
        position(&state)
    };
    std::iter::once(position(start)).chain(turns.map(after)).collect()
}

/// Lines moves up with a plan. `start` is the state as picked up; `moves` are what was made from then on.
///
/// The plan and the moves agree as long as they pass through the same states, whatever turns they are made of: turns
/// that cancel between two letters may be left out, and a rotation that the next turns allow for is no slip. The first
/// step after the last common state is the one that differs. Where the rest of the plan was carried out after it, the
/// turns in between are what was made instead.
///
/// ```
/// use blind::{Action, Conventions, Solver};
/// use diagnosis::{How, check_moves};
/// use cube::{Algorithm, Size, State};
/// let solver = Solver::new(Size::THREE, Conventions::default());
/// let scramble = Algorithm::parse("D2 F' R2 B U2 L' D B2 R F U'", Size::THREE).unwrap();
/// let state = State::solved(Size::THREE).after(&scramble.flatten());
/// let plan = solver.plan(&state, &solver.memo(&state).unwrap()).unwrap();
/// assert_eq!(check_moves(&state, plan.actions(), plan.moves()).deviation, None);
/// let mut moves: Vec<_> = plan.actions().iter().flat_map(Action::turns).collect();
/// moves[40] = moves[40].inverse();
/// let deviation = check_moves(&state, plan.actions(), &moves).deviation.unwrap();
/// assert_eq!((deviation.turn, deviation.how), (40, How::OtherWay));
/// ```
pub fn check_moves(start: &State, actions: &[Action], moves: &[Turn]) -> MovesCheck {
    let planned = planned_turns(actions);
    let outcome = start.after(moves);
    let solves = outcome.solved_hold().is_some();
    let turns: Vec<Turn> = planned.iter().map(|planned| planned.turn).collect();
    if simplified(&turns) == simplified(moves) {
        return MovesCheck { deviation: None, solves, outcome };
    }
    let plan_states = passed(start, planned.iter().map(|planned| planned.turn));
    let made_states = passed(start, moves.iter().copied());
    let (from, at) = kept_to(&plan_states, &made_states);
    if from == planned.len() && at == moves.len() {
        return MovesCheck { deviation: None, solves, outcome };
    }
    // Moves of another way to the same states are kept to farther than they are alike.
    if let Some((deviation, agreeing)) = one::first_slip(&planned, moves)
        && agreeing > at
    {
        return MovesCheck { deviation: Some(deviation), solves, outcome };
    }
    let stretch = |from: usize, at: usize| {
        let (until, back) = kept_to_from_the_end(&planned, &outcome, moves, from, at);
        let missed: Vec<Turn> = planned[from..until].iter().map(|planned| planned.turn).collect();
        (from, at, until, missed, &moves[at..back])
    };
    // A wrong turn may lead back to a state of the plan: where the turns first differ is as good a place to begin, if
    // no more has then to be explained.
    let alike = planned.iter().zip(moves).take_while(|(planned, made)| planned.turn == **made).count();
    let length = |(_, _, _, missed, instead): &(usize, usize, usize, Vec<Turn>, &[Turn])| {
        let (missed, instead) = trimmed(missed, instead);
        missed.len() + instead.len()
    };
    let (late, early) = (stretch(from, at), stretch(alike, alike));
    let (from, at, until, _, instead) =
        if alike < at && length(&early) <= length(&late) { early } else { late };
    let (from, at, until) =
        if instead.is_empty() { whole_step(&planned, moves, from, at, until) } else { (from, at, until) };
    let missed: Vec<Turn> = planned[from..until].iter().map(|planned| planned.turn).collect();
    let step = planned.get(from).map(|planned| planned.step);
    let how = if from == planned.len() {
        How::GoneOn
    } else if at == moves.len() && until == planned.len() {
        How::BrokenOff
    } else {
        how(&planned[from..], step, &missed, instead)
    };
    let within = planned[..from].iter().rev().take_while(|planned| Some(planned.step) == step).count();
    let deviation = Deviation { step, within, turn: at, planned: missed, made: instead.to_vec(), how };
    MovesCheck { deviation: Some(deviation), solves, outcome }
}

/// Where turns were left out, and the turn before them is that with which they end, the same is left out one turn earlier: of all
/// such places the one that is a whole step, if there is one.
fn whole_step(
    planned: &[Planned],
    moves: &[Turn],
    from: usize,
    at: usize,
    until: usize,
) -> (usize, usize, usize) {
    let is_whole = |from: usize, until: usize| {
        let Some(step) = planned.get(from).map(|planned| planned.step) else { return false };
        let same = |planned: &Planned| planned.step == step;
        planned[from..until].iter().all(same)
            && !planned[..from].last().is_some_and(same)
            && !planned[until..].first().is_some_and(same)
    };
    let mut back = 0;
    while !is_whole(from - back, until - back) {
        let earlier = back + 1;
        let moved = from.checked_sub(earlier).zip(until.checked_sub(earlier)).zip(at.checked_sub(earlier));
        match moved {
            Some(((first, last), made))
                if planned[first].turn == planned[last].turn && moves[made] == planned[last].turn =>
            {
                back = earlier;
            }
            _ => return (from, at, until),
        }
    }
    (from - back, at - back, until - back)
}

/// How far moves keep to a plan from its first state on, as places in the plan and in the moves: along the chain of common
/// states that has the most of them, where every state between two that is not of the plan counts against it. So a state
/// that comes up again by chance is not taken for the plan, and a mistake that was put right at once is none.
fn kept_to(plan: &[Position], made: &[Position]) -> (usize, usize) {
    const COMMON: i64 = 100;
    let mut places: FxHashMap<&Position, Vec<usize>> = FxHashMap::default();
    for (number, state) in plan.iter().enumerate() {
        places.entry(state).or_default().push(number);
    }
    // Places in the plan and in the moves, with what the best chain to there is worth.
    let mut chain: Vec<(usize, usize, i64)> = vec![(0, 0, 0)];
    let mut best = (0, 0, 0);
    for (at, state) in made.iter().enumerate().skip(1) {
        let before = chain.len();
        for &number in places.get(state).into_iter().flatten() {
            let reach = |&(from, back, worth): &(usize, usize, i64)| {
                let outside = (at - back - 1) as i64;
                (from <= number).then(|| worth + COMMON * (1 - outside) - (number - from).abs_diff(1) as i64)
            };
            if let Some(worth) = chain[..before].iter().filter_map(reach).max() {
                chain.push((number, at, worth));
                if worth > best.2 {
                    best = (number, at, worth);
                }
            }
        }
    }
    (best.0, best.1)
}

/// From where on the rest of the plan was carried out to the end, not before the given places.
fn kept_to_from_the_end(
    planned: &[Planned],
    outcome: &State,
    moves: &[Turn],
    from: usize,
    at: usize,
) -> (usize, usize) {
    let turns: Vec<Turn> = planned[from..].iter().map(|planned| planned.turn).collect();
    let backwards = passed(outcome, inverted(&turns).into_iter());
    let made = passed(outcome, inverted(&moves[at..]).into_iter());
    let (undone, unmade) = kept_to(&backwards, &made);
    (planned.len() - undone, moves.len() - unmade)
}

fn how(rest: &[Planned], step: Option<ActionStep>, planned: &[Turn], made: &[Turn]) -> How {
    let whole: Vec<Turn> =
        rest.iter().take_while(|planned| Some(planned.step) == step).map(|planned| planned.turn).collect();
    let undo = step.is_some_and(|step| step.part() == Part::Undo);
    let (planned, made) = trimmed(planned, made);
    if made.iter().all(|turn| turn.is_rotation()) && !made.is_empty() && planned.is_empty() {
        return How::Held;
    }
    match (planned, made) {
        ([planned], [made]) => one_for_one(*planned, *made, undo && whole.len() == 1),
        ([_], []) if whole.len() == 1 && undo => How::NotUndone,
        ([_], []) if whole.len() > 1 => How::LeftOut,
        (left_out, []) if left_out == whole => {
            if undo {
                How::NotUndone
            } else {
                How::StepLeftOut
            }
        }
        ([], [made]) if rest.first().is_some_and(|next| next.turn == *made) => How::Doubled,
        ([], [_]) => How::Added,
        ([], twice) if twice == whole => How::StepDoubled,
        (planned, made) if undo && !planned.is_empty() && made == inverted(planned) => How::UndoneWrongWay,
        _ => How::Otherwise,
    }
}

/// Both without the turns that they begin and end with alike.
fn trimmed<'a>(planned: &'a [Turn], made: &'a [Turn]) -> (&'a [Turn], &'a [Turn]) {
    let same = planned.iter().zip(made).take_while(|(a, b)| a == b).count();
    let (planned, made) = (&planned[same..], &made[same..]);
    let same = planned.iter().rev().zip(made.iter().rev()).take_while(|(a, b)| a == b).count();
    (&planned[..planned.len() - same], &made[..made.len() - same])
}

fn one_for_one(planned: Turn, made: Turn, is_undo: bool) -> How {
    if simplified(&[planned, made]).is_empty() {
        return if is_undo { How::UndoneWrongWay } else { How::OtherWay };
    }
    match (planned.block, made.block) {
        (a, b) if a == b => match (planned.amount, made.amount) {
            (Amount::Half, _) | (_, Amount::Half) => How::OtherAmount,
            _ => How::OtherWay,
        },
        (Block::Outer { face: a, .. }, Block::Outer { face: b, .. }) if a == b => How::OtherWidth,
        _ if planned.amount == made.amount => How::OtherFace,
        _ => How::Otherwise,
    }
}
