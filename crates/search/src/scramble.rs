//! Scrambles as at a competition: a state is drawn, and a sequence made that leads there.
//!
//! Source of the rules: WCA Regulations, article 4b (edition of 1 April 2026): 2x2 a random state at least 4 turns from
//! solved, 3x3 and 4x4 at least 2; larger cubes enough random turns; blindfolded also a random way of holding.
//! At a competition the official program, the current regulations and the delegate's word stand.

use crate::random::below;
use crate::solve::merging::cut;
pub use crate::solve::merging::merges;
use crate::{solve2, solve3, solve4};
use cube::{Amount, Block, Claim, Face, NotProven, Rotation, Size, State, Turn};
use rand::Rng;
use thiserror::Error;

/// How the scramble will be solved.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Event {
    /// With eyes open: the cube stays in the hold in which it is scrambled.
    Sighted,
    /// Blindfolded: the sequence leaves the cube in a uniformly random one of the 24 holds.
    Blindfolded,
}

/// What was drawn at random.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Draw {
    /// The state, uniformly among all those far enough from solved.
    State,
    /// The turns, as the regulations say for this size.
    Turns,
}

/// A sequence of turns, and the state to which it takes the solved cube.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Scramble {
    turns: Vec<Turn>,
    state: State,
    event: Event,
    draw: Draw,
}

impl Scramble {
    /// Makes the turns and looks whether they lead to the state.
    fn proven(self) -> Result<Self, ScrambleError> {
        let leads = State::solved(self.state.size()).after(&self.turns).looks_like(&self.state);
        NotProven::unless(leads, Claim::Scramble)?;
        Ok(self)
    }

    /// The size of the cube.
    pub const fn size(&self) -> Size {
        self.state.size()
    }

    /// The turns to make on the solved cube in the first hold. For blindfolded solving the last of them turn
    /// the whole cube, or so many layers that the cube is held another way after them.
    pub fn turns(&self) -> &[Turn] {
        &self.turns
    }

    /// The state that the turns lead to.
    pub const fn state(&self) -> &State {
        &self.state
    }

    /// How it will be solved.
    pub const fn event(&self) -> Event {
        self.event
    }

    /// What was drawn.
    pub const fn draw(&self) -> Draw {
        self.draw
    }

    /// Whether the state is a uniformly random one.
    pub const fn is_random_state(&self) -> bool {
        matches!(self.draw, Draw::State)
    }
}

/// Why a sequence to a state was not found.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum ScrambleError {
    /// Only states of the 2x2, 3x3 and 4x4 can be led to.
    #[error("there is no solver for a {0}, so no sequence to a given state of it")]
    NoSolver(Size),
    /// The 2x2 solver failed.
    #[error(transparent)]
    Two(#[from] solve2::Solve2Error),
    /// The 3x3 solver failed.
    #[error(transparent)]
    Three(#[from] solve3::Solve3Error),
    /// The 4x4 solver failed, or its tables were not waited for.
    #[error(transparent)]
    Four(#[from] solve4::Solve4Error),
    /// What was found does not do what it claims, which is a fault of the program.
    #[error(transparent)]
    NotProven(#[from] NotProven),
}

/// The fewest turns from solved that a state must be to be drawn: 4 on the 2x2, 2 on the others.
///
/// Source: WCA Regulations 4b3, 4b3b.
pub const fn fewest_turns(size: Size) -> u8 {
    if size.layers() == 2 { 4 } else { 2 }
}

/// How many random turns a size gets; 0 for the 2x2 to 4x4, whose states are drawn.
///
/// 60, 80, 100 for 5x5 to 7x7: common practice, no source. The regulations (4b3e) give no number.
pub const fn random_turns(size: Size) -> usize {
    match size.layers() {
        2..=4 => 0,
        5 => 60,
        6 => 80,
        _ => 100,
    }
}

/// Draws a scramble.
///
/// Blindfolded, odd sizes end in up to two turns of (N + 1) / 2 layers, which carry the centres along; even sizes have no
/// fixed centres, and on the 2x2 no wide turn exists, so they end in up to two rotations.
///
/// # Errors
/// [`ScrambleError`] only by a fault of the program.
///
/// ```
/// use cube::Size;
/// use search::{random, scramble::{Event, scramble}};
/// let drawn = scramble(Size::TWO, Event::Sighted, &mut random::seeded(3)).unwrap();
/// assert!(drawn.is_random_state() && drawn.turns().len() >= 4);
/// ```
pub fn scramble(size: Size, event: Event, generator: &mut impl Rng) -> Result<Scramble, ScrambleError> {
    let hold = match event {
        Event::Sighted => Rotation::NONE,
        Event::Blindfolded => {
            let which = below(24, generator) as usize;
            Rotation::all().nth(which).unwrap_or(Rotation::NONE)
        }
    };
    let (turns, state, draw) = if random_turns(size) == 0 {
        let state = draw_state(size, generator)?.then(&State::held(size, hold));
        let turns = leading_to(&state)?;
        // Centres of a colour as the turns leave them: they look as they were drawn.
        let left = State::solved(size).after(&turns);
        (turns, if left.looks_like(&state) { left } else { state }, Draw::State)
    } else {
        let turns = draw_turns(size, hold, generator);
        let state = State::solved(size).after(&turns);
        (turns, state, Draw::Turns)
    };
    Scramble { turns, state, event, draw }.proven()
}

/// A uniformly random state of the 2x2 or 4x4 (the corner at DBL at home) or 3x3 (centres as in the first hold) among those
/// far enough from solved.
///
/// # Errors
/// [`ScrambleError::NoSolver`] for larger sizes; the others only by a fault of the program.
pub fn draw_state(size: Size, generator: &mut impl Rng) -> Result<State, ScrambleError> {
    loop {
        match size.layers() {
            2 => {
                let state = crate::random::state2(generator);
                if solve2::solve(&state)?.len() >= fewest_turns(size) as usize {
                    return Ok(state.named_in(hold_by_corner(&state)?));
                }
            }
            3 => {
                let state = crate::random::state3(generator);
                if !within_one_turn(&state) {
                    return Ok(state);
                }
            }
            4 => {
                let state = crate::random::state4(generator);
                if !within_one_turn(&state) {
                    return Ok(state.named_in(hold_by_corner(&state)?));
                }
            }
            _ => return Err(ScrambleError::NoSolver(size)),
        }
    }
}

/// How a cube is held whose corner at DBL is at home then.
fn hold_by_corner(state: &State) -> Result<Rotation, ScrambleError> {
    Ok(solve2::hold(&State::from_corners(&state.corners()))?)
}

/// Whether a state is solved, or one turn from it, in any hold.
fn within_one_turn(state: &State) -> bool {
    let size = state.size();
    let near: Vec<State> = std::iter::once(State::solved(size))
        .chain(near_turns(size).map(|turn| State::solved(size).after(&[turn])))
        .collect();
    let is_near = |named: State| near.iter().any(|near| named.looks_like(near));
    if size.is_odd() {
        // The centres say how it is held.
        is_near(state.named_in(state.core()))
    } else {
        Rotation::all().any(|rotation| is_near(state.named_in(rotation)))
    }
}

/// The turns of outer layers, no two of which differ by a rotation only: of two such, the one of fewer layers.
fn near_turns(size: Size) -> impl Iterator<Item = Turn> {
    Turn::all(size).filter(move |turn| match turn.block {
        Block::Outer { face, depth } => {
            2 * depth < size.layers() || (2 * depth == size.layers() && face.is_positive())
        }
        Block::Inner { .. } | Block::Slice(_) | Block::Whole(_) => false,
    })
}

/// The turns that end a scramble so that the cube is held in a given way after it.
///
/// On odd sizes they are none or one of six turns of (N + 1) / 2 layers that bring each face up in turn, and none or one of
/// three about the vertical axis: 6 · 4 = 24, one for each hold. On even sizes they are rotations. `mirrored` takes
/// the layers from the other side, which leaves the cube in the same hold.
fn holding_turns(size: Size, hold: Rotation, mirrored: bool) -> Vec<Turn> {
    if !size.is_odd() {
        return hold.turns().to_vec();
    }
    let depth = size.layers().div_ceil(2);
    let wide = |face: Face, amount: Amount| {
        let (face, amount) = if mirrored { (face.opposite(), amount.inverse()) } else { (face, amount) };
        Turn::new(Block::Outer { face, depth }, amount)
    };
    let tilts = [
        None,
        Some(wide(Face::R, Amount::Clockwise)),
        Some(wide(Face::R, Amount::Half)),
        Some(wide(Face::R, Amount::Counter)),
        Some(wide(Face::F, Amount::Clockwise)),
        Some(wide(Face::F, Amount::Counter)),
    ];
    let spins = std::iter::once(None).chain(Amount::ALL.map(|amount| Some(wide(Face::U, amount))));
    spins
        .flat_map(|spin| tilts.map(|tilt| tilt.into_iter().chain(spin).collect::<Vec<Turn>>()))
        .find(|turns| State::solved(size).after(turns).core() == hold)
        .unwrap_or_default()
}

/// A sequence that leads from the solved cube in the first hold to a state of the 2x2, 3x3 or 4x4, however it is held.
///
/// On the 4x4 centres of one colour are not told apart, and its tables are made if they are not there; see [`solve4::prepare`]. Turns that follow one another neither cancel nor merge, save on the 3x3 in the very rare case that none of 14 attempts avoids it.
///
/// # Errors
/// [`ScrambleError::NoSolver`] for larger sizes; the others only by a fault of the program.
///
/// ```
/// use cube::{Algorithm, Size, State, display_turns};
/// let turns = Algorithm::parse("R U Fw", Size::THREE).unwrap().flatten();
/// let state = State::solved(Size::THREE).after(&turns);
/// let found = search::scramble::leading_to(&state).unwrap();
/// assert_eq!(State::solved(Size::THREE).after(&found), state);
/// ```
pub fn leading_to(state: &State) -> Result<Vec<Turn>, ScrambleError> {
    let size = state.size();
    let turns = match size.layers() {
        2 => {
            let hold = hold_by_corner(&state.inverse())?.inverse();
            lead_by(state, &holding_turns(size, hold, false), |before| Ok(solve2::solve(before)?))?
        }
        3 => lead_to_three(state)?,
        4 => {
            let hold = hold_by_corner(&state.inverse())?.inverse();
            lead_by(state, &holding_turns(size, hold, false), |before| Ok(solve4::solve_as_held(before)?))?
        }
        _ => return Err(ScrambleError::NoSolver(size)),
    };
    NotProven::unless(State::solved(size).after(&turns).looks_like(state), Claim::Scramble)?;
    Ok(turns)
}

/// A sequence to a state of the 3x3. The last face turn may merge with the wide turn after it; then the wide turn is
/// taken from the other side, and if that does not help, a turn about another axis is put between the two.
fn lead_to_three(state: &State) -> Result<Vec<Turn>, ScrambleError> {
    let endings = [false, true].map(|mirrored| holding_turns(state.size(), state.core(), mirrored));
    let between = endings[0].first().map(|wide| wide.block.axis());
    let parted = Turn::faces()
        .filter(|turn| between.is_some_and(|axis| axis != turn.block.axis()))
        .map(|turn| [&[turn], endings[0].as_slice()].concat());
    let mut turns = Vec::new();
    for ending in endings.clone().into_iter().chain(parted) {
        turns = lead_by(state, &ending, |before| Ok(solve3::solve(before, solve3::Limit::TIGHT)?))?;
        if !merges(&turns, state.size()) {
            break;
        }
    }
    Ok(turns)
}

/// The turns that make what a state was before its ending, and then the ending.
fn lead_by(
    state: &State,
    ending: &[Turn],
    solve: impl Fn(&State) -> Result<Vec<Turn>, ScrambleError>,
) -> Result<Vec<Turn>, ScrambleError> {
    let before = state.after(&cube::inverted(ending));
    let mut turns = cube::inverted(&solve(&before)?);
    turns.extend_from_slice(ending);
    Ok(turns)
}

/// Random turns, each drawn evenly among those that merge with none before, and the turns that end in the hold.
fn draw_turns(size: Size, hold: Rotation, generator: &mut impl Rng) -> Vec<Turn> {
    let ending = holding_turns(size, hold, false);
    let choices: Vec<Turn> = near_turns(size).collect();
    loop {
        let mut turns: Vec<Turn> = Vec::with_capacity(random_turns(size) + 2);
        while turns.len() < random_turns(size) {
            let run = turns
                .iter()
                .rposition(|turn| Some(turn.block.axis()) != turns.last().map(|last| last.block.axis()));
            let run = &turns[run.map_or(0, |at| at + 1)..];
            let free: Vec<Turn> = choices
                .iter()
                .copied()
                .filter(|&turn| run.iter().all(|&earlier| cut(earlier, size) != cut(turn, size)))
                .collect();
            turns.push(free[below(free.len() as u64, generator) as usize]);
        }
        turns.extend_from_slice(&ending);
        if !merges(&turns, size) && !within_one_turn(&State::solved(size).after(&turns)) {
            return turns;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn turns_that_lead_elsewhere_are_no_scramble() {
        let drawn = scramble(Size::TWO, Event::Sighted, &mut crate::random::seeded(1)).expect("a scramble");
        assert_eq!(drawn.clone().proven(), Ok(drawn.clone()));
        let mut other = drawn;
        other.turns.pop();
        assert_eq!(other.proven(), Err(ScrambleError::NotProven(NotProven { claim: Claim::Scramble })));
    }

    #[test]
    fn each_hold_has_its_ending() {
        for size in Size::ALL {
            for hold in Rotation::all() {
                for mirrored in [false, true] {
                    let ending = holding_turns(size, hold, mirrored);
                    assert!(ending.len() <= 2);
                    assert!(ending.iter().all(|turn| turn.check(size).is_ok()));
                    assert_eq!(
                        ending.iter().any(|turn| turn.is_rotation()),
                        !size.is_odd() && hold != Rotation::NONE
                    );
                    let held = State::solved(size).after(&ending);
                    if size.is_odd() {
                        assert_eq!(held.core(), hold);
                    } else {
                        assert_eq!(held.solved_hold(), Some(hold));
                    }
                }
            }
        }
    }

    #[test]
    fn near_solved_is_noticed_in_every_hold() {
        for size in Size::ALL {
            for hold in Rotation::all() {
                let held = State::held(size, hold);
                assert!(within_one_turn(&held));
                for turn in Turn::all(size)
                    .filter(|turn| !matches!(turn.block, Block::Inner { .. } | Block::Slice(_)))
                {
                    assert!(within_one_turn(&held.after(&[turn])), "{turn} on {size}");
                }
            }
        }
        let two = [Turn::face(Face::R, Amount::Clockwise), Turn::face(Face::U, Amount::Half)];
        for size in Size::ALL {
            assert!(!within_one_turn(&State::solved(size).after(&two)));
        }
    }
}
