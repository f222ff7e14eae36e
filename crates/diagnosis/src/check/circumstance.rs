//! Memos that are right, but for something else: another hold, another scramble, another buffer, the kinds exchanged.

use blind::{Held, Letters, Solver, exchanged, is_right};
use cube::{Amount, Face, Orbit, Rotation, Size, State, Sticker, Turn};

/// A memo of fewer letters says nothing of its circumstances. Some 500 changes of a scramble of 25 moves are tried, and a memo of
/// so many letters of edges is one of 22⁴ = 234,256: one such memo in 500 at most would fit one of them by chance.
pub const FEWEST_LETTERS: usize = 4;

/// Scrambles of more turns are taken as they are: the changes of each turn are tried.
const MOST_TURNS: usize = 120;

/// A puzzle as it was scrambled and picked up.
#[derive(Clone, Copy, Debug)]
pub struct Scrambled<'a> {
    /// The scramble, where there was one.
    pub scramble: Option<&'a [Turn]>,
    /// The state in the hold for scrambling.
    pub state: &'a State,
    /// How it is picked up.
    pub held: &'a Held,
}

/// The one change with which a memo is right.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Circumstance {
    /// Picked up in another hold.
    Held {
        /// How it should have been picked up, from the hold for scrambling.
        planned: Rotation,
        /// How it was.
        made: Rotation,
    },
    /// Another turn in the scramble, one left out, or one more.
    Scramble {
        /// Which turn, from 0; of an added one that before which it stands.
        turn: usize,
        /// The turn of the scramble; none where one was added.
        planned: Option<Turn>,
        /// What was made; nothing where it was left out.
        made: Option<Turn>,
    },
    /// The letters of two kinds exchanged.
    Kinds {
        /// The kinds.
        kinds: [Orbit; 2],
    },
    /// Other buffers.
    Buffers {
        /// Of these kinds these.
        buffers: Vec<(Orbit, Sticker)>,
    },
}

impl Circumstance {
    /// Its name in files and on the command line.
    pub const fn name(&self) -> &'static str {
        match self {
            Self::Held { .. } => "held-otherwise",
            Self::Scramble { made: None, .. } => "scramble-turn-left-out",
            Self::Scramble { planned: None, .. } => "scramble-turn-added",
            Self::Scramble { .. } => "scramble-turn-wrong",
            Self::Kinds { .. } => "kinds-exchanged",
            Self::Buffers { .. } => "other-buffer",
        }
    }
}

/// What a memo of each kind is checked with.
type Given<'a> = &'a [(Orbit, Vec<Sticker>)];

/// The change with which a memo that is wrong as it stands solves every kind of which letters were given, with the puzzle as it is
/// then picked up.
pub(super) fn circumstance(
    puzzle: &Scrambled<'_>,
    memo: Given<'_>,
    solver: &Solver,
) -> Option<(Circumstance, Held)> {
    let letters: usize = memo.iter().map(|(_, letters)| letters.len()).sum();
    if letters < FEWEST_LETTERS {
        return None;
    }
    let here = |found: Circumstance| (found, puzzle.held.clone());
    kinds_exchanged(puzzle, memo, solver)
        .map(here)
        .or_else(|| held(puzzle, memo, solver))
        .or_else(|| buffers(puzzle, memo, solver).map(here))
        .or_else(|| scrambled(puzzle, memo, solver))
}

fn solves(state: &State, orbit: Orbit, letters: &[Sticker], buffer: Sticker, solver: &Solver) -> bool {
    let seen = solver.tracing().seen(state, orbit);
    !letters.iter().any(|&letter| orbit.same_piece(letter, buffer))
        && is_right(orbit, &exchanged(&seen, orbit, buffer, letters.iter().copied()))
}

fn all_solve(state: &State, memo: Given<'_>, solver: &Solver) -> bool {
    let buffer = |orbit: Orbit| solver.conventions().kind(orbit).buffer;
    memo.iter().all(|(orbit, letters)| solves(state, *orbit, letters, buffer(*orbit), solver))
}

fn kinds_exchanged(puzzle: &Scrambled<'_>, memo: Given<'_>, solver: &Solver) -> Option<Circumstance> {
    let scheme = |orbit: Orbit| -> &Letters { &solver.conventions().kind(orbit).letters };
    let read_as = |letters: &[Sticker], written: Orbit, orbit: Orbit| -> Option<Vec<Sticker>> {
        letters.iter().map(|&letter| scheme(orbit).sticker(scheme(written).of(letter))).collect()
    };
    for (at, (one, first)) in memo.iter().enumerate() {
        for (by, (other, second)) in memo.iter().enumerate().skip(at + 1) {
            let mut exchanged = memo.to_vec();
            let (Some(of_one), Some(of_other)) =
                (read_as(second, *other, *one), read_as(first, *one, *other))
            else {
                continue;
            };
            exchanged[at].1 = of_one;
            exchanged[by].1 = of_other;
            if all_solve(&puzzle.held.state, &exchanged, solver) {
                return Some(Circumstance::Kinds { kinds: [*one, *other] });
            }
        }
    }
    None
}

fn held(puzzle: &Scrambled<'_>, memo: Given<'_>, solver: &Solver) -> Option<(Circumstance, Held)> {
    let turned = Rotation::all().map(|wanted| Held::new(puzzle.state, wanted));
    let offers = solver.offers(puzzle.state).unwrap_or_default();
    // Without fixed centres the colours that are wanted up and in front stay, and other pieces are right.
    let mut all = offers.into_iter().map(|offer| offer.held).chain(turned);
    let held = all.find(|held| all_solve(&held.state, memo, solver))?;
    Some((Circumstance::Held { planned: puzzle.held.rotation, made: held.rotation }, held))
}

fn buffers(puzzle: &Scrambled<'_>, memo: Given<'_>, solver: &Solver) -> Option<Circumstance> {
    let mut buffers = Vec::new();
    for (orbit, letters) in memo {
        let state = &puzzle.held.state;
        let with = |&buffer: &Sticker| solves(state, *orbit, letters, buffer, solver);
        if with(&solver.conventions().kind(*orbit).buffer) {
            continue;
        }
        // Each kind by itself must have enough letters to say so.
        let buffer = Sticker::all().find(with).filter(|_| letters.len() >= FEWEST_LETTERS)?;
        buffers.push((*orbit, buffer));
    }
    (!buffers.is_empty()).then_some(Circumstance::Buffers { buffers })
}

fn scrambled(puzzle: &Scrambled<'_>, memo: Given<'_>, solver: &Solver) -> Option<(Circumstance, Held)> {
    let scramble = puzzle.scramble.filter(|turns| turns.len() <= MOST_TURNS)?;
    let size = puzzle.state.size();
    let mut before = vec![State::solved(size)];
    for &turn in scramble {
        before.extend(before.last().map(|state| state.after(&[turn])));
    }
    let mut rest = vec![State::solved(size)];
    for &turn in scramble.iter().rev() {
        rest.extend(rest.last().map(|rest| State::solved(size).after(&[turn]).then(rest)));
    }
    rest.reverse();
    let found = |turn: usize, planned: Option<Turn>, made: Option<Turn>| {
        let after = turn + usize::from(planned.is_some());
        let state = before[turn].after(made.as_slice()).then(&rest[after]);
        let held = Held::new(&state, solver.conventions().holding);
        all_solve(&held.state, memo, solver).then_some((Circumstance::Scramble { turn, planned, made }, held))
    };
    let left_out = || (0..scramble.len()).find_map(|turn| found(turn, Some(scramble[turn]), None));
    let other = || {
        (0..scramble.len()).find_map(|turn| {
            let planned = scramble[turn];
            let amounts = Amount::ALL.into_iter().filter(|&amount| amount != planned.amount);
            amounts
                .map(|amount| Turn::new(planned.block, amount))
                .find_map(|made| found(turn, Some(planned), Some(made)))
        })
    };
    let added = || {
        let any = added_turns(size, scramble);
        (0..=scramble.len()).find_map(|turn| any.iter().find_map(|&made| found(turn, None, Some(made))))
    };
    left_out().or_else(other).or_else(added)
}

/// Turns that may slip in: of the faces, and of the blocks that the scramble turns.
fn added_turns(size: Size, scramble: &[Turn]) -> Vec<Turn> {
    let mut turns: Vec<Turn> =
        Face::ALL.into_iter().flat_map(|face| Amount::ALL.map(|amount| Turn::face(face, amount))).collect();
    for turn in scramble {
        for amount in Amount::ALL {
            let other = Turn::new(turn.block, amount);
            if !turns.contains(&other) {
                turns.push(other);
            }
        }
    }
    turns.retain(|&turn| State::solved(size).turn(turn).is_ok());
    turns
}
