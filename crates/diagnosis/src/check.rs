//! Is a memo right, and if not, where did it go wrong?
//!
//! Right is what solves: the letters are carried out as exchanges, whatever way they were found. Only a memo that does
//! not solve is compared with the puzzle letter by letter, and then against every memo that would do: at each letter the
//! check keeps to what the solver evidently meant, so that one slip does not mark all that follows.

mod alike;
mod circumstance;
mod mend;
mod walk;

pub use circumstance::{Circumstance, FEWEST_LETTERS, Scrambled};

use blind::{Action, Solver, exchanged};
use cube::{Orbit, Perm, State, Sticker, Turn};
use thiserror::Error;

/// What is wrong with a letter, in the coach's terms.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum MemoFault {
    /// The right piece, but another of its stickers.
    WrongSticker,
    /// Another sticker of the right piece, and the way was followed on from there.
    FollowedFromWrongSticker {
        /// The last letter that is turned along, from 0.
        last: usize,
    },
    /// What lies at another place than that of the letter before.
    FollowedFromElsewhere {
        /// The place from which it was followed.
        place: Sticker,
    },
    /// A sticker of the buffer's own piece: the cycle was closed already and nothing is memorised for it.
    BufferLetter,
    /// The cycle was closed one letter too early.
    ClosedEarly,
    /// The cycle was closed already; this letter belongs to its beginning.
    ClosedLate,
    /// A piece that is right already, in the scramble or by an earlier letter.
    SolvedAlready {
        /// The last letter before it that is of the same piece, from 0; none where the scramble left the piece right.
        earlier: Option<usize>,
    },
    /// A new cycle begun at a piece that is right.
    BreakOnSolved,
    /// A piece twisted or flipped in its place, with a second letter that turns it the wrong way.
    TurnedWrongWay,
    /// A letter in the middle of a cycle is missing before this one.
    LetterMissing,
    /// A letter that leads on nowhere: without it the memo goes on as it should.
    LetterTooMany,
    /// This letter and a later one stand in each other's place.
    LettersExchanged {
        /// The other one, from 0.
        with: usize,
    },
    /// The pair that this letter begins and a later one stand in each other's place.
    PairsExchanged {
        /// The first letter of the other pair, from 0.
        with: usize,
    },
    /// Another letter altogether.
    OtherLetter,
    /// Pieces for which no letter is there, by their reference stickers.
    LeftOut {
        /// The pieces.
        pieces: Vec<Sticker>,
    },
}

impl MemoFault {
    /// Its name in files and on the command line.
    pub const fn name(&self) -> &'static str {
        match self {
            Self::WrongSticker => "wrong-sticker",
            Self::FollowedFromWrongSticker { .. } => "followed-from-wrong-sticker",
            Self::FollowedFromElsewhere { .. } => "followed-from-elsewhere",
            Self::BufferLetter => "buffer-letter",
            Self::ClosedEarly => "closed-early",
            Self::ClosedLate => "closed-late",
            Self::SolvedAlready { .. } => "solved-already",
            Self::BreakOnSolved => "break-on-solved",
            Self::TurnedWrongWay => "turned-wrong-way",
            Self::LetterMissing => "letter-missing",
            Self::LetterTooMany => "letter-too-many",
            Self::LettersExchanged { .. } => "letters-exchanged",
            Self::PairsExchanged { .. } => "pairs-exchanged",
            Self::OtherLetter => "other-letter",
            Self::LeftOut { .. } => "left-out",
        }
    }
}

/// A slip in a memo.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct MemoSlip {
    /// What is wrong.
    pub fault: MemoFault,
    /// Which letter, from 0; the number of letters where something is missing at the end.
    pub position: usize,
    /// The letter, by its sticker; none at the end.
    pub letter: Option<Sticker>,
    /// Stickers whose letters would have been right there; none where the memo should have ended.
    pub expected: Vec<Sticker>,
    /// The place that was looked at, if a cycle was being followed.
    pub place: Option<Sticker>,
}

impl MemoSlip {
    /// Whether a letter, from 0, is among those that the slip makes wrong.
    pub fn blames(&self, letter: usize) -> bool {
        match self.fault {
            MemoFault::LetterMissing | MemoFault::ClosedEarly => false,
            MemoFault::LettersExchanged { with } => letter == self.position || letter == with,
            MemoFault::PairsExchanged { with } => letter / 2 == self.position / 2 || letter / 2 == with / 2,
            MemoFault::FollowedFromWrongSticker { last } => (self.position..=last).contains(&letter),
            _ => letter == self.position,
        }
    }
}

/// The memo of one kind, checked.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct KindCheck {
    /// The kind of piece.
    pub orbit: Orbit,
    /// The letters, by their stickers.
    pub letters: Vec<Sticker>,
    /// Whether they can be carried out at all: none is on the buffer's own piece.
    pub executable: bool,
    /// Whether carrying them out solves the kind.
    pub right: bool,
    /// What is wrong, in order; nothing where it is right.
    pub slips: Vec<MemoSlip>,
    /// Pieces that are unsolved after the letters are carried out, by their reference stickers (of pieces that look alike the places
    /// with another colour); letters of the buffer's own piece do nothing.
    pub unsolved: Vec<Sticker>,
}

/// What is wrong about parity.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum ParityFault {
    /// The number of letters is odd, and no parity algorithm was noted.
    Overlooked,
    /// The number of letters is even, and a parity algorithm was noted.
    WithoutNeed,
}

/// A memo checked.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct MemoCheck {
    /// The kinds of which letters were given, in the order in which they are memorised.
    pub kinds: Vec<KindCheck>,
    /// The others, as far as they are not right as the puzzle was picked up: nothing is known of their letters.
    pub unchecked: Vec<Orbit>,
    /// What is wrong about parity, if the memo says anything about it.
    pub parity: Option<ParityFault>,
    /// What the memo is right for, where it is wrong for the puzzle as it was given, and not by one slip alone. Where that is a hold of a puzzle
    /// without fixed centres, which nothing forbids, all else is told for that hold.
    pub circumstance: Option<Circumstance>,
    /// The moves that the memo leads to; none if a letter cannot be carried out.
    pub moves: Option<Vec<Turn>>,
    /// The state that these lead to, named in the hold.
    pub outcome: Option<State>,
}

impl MemoCheck {
    /// Whether carrying the letters out solves the kinds of which they are.
    pub fn right(&self) -> bool {
        self.parity.is_none() && self.kinds.iter().all(|kind| kind.right)
    }
}

/// Why a memo cannot be checked.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum MemoError {
    /// No letters at all, for a puzzle that is not solved.
    #[error("the memo is empty, and the puzzle is not solved")]
    Empty,
    /// A kind of piece that the puzzle does not have.
    #[error("a {size} has no {}s", blind::kind_name(*.orbit))]
    NoSuchKind {
        /// The kind.
        orbit: Orbit,
        /// The size.
        size: cube::Size,
    },
}

/// Checks the letters of one kind. `seen` says for each place which sticker lies there, named as held when solved.
///
/// ```
/// use blind::Letters;
/// use diagnosis::check_letters;
/// use cube::{Algorithm, Orbit, Size, State};
/// let turns = Algorithm::parse("R U' F2 R' U F' U2 R F'", Size::TWO).unwrap().flatten();
/// let state = State::solved(Size::TWO).after(&turns);
/// let letters = Letters::default();
/// let buffer = Orbit::Corner.sticker("LUB").unwrap();
/// let check = |memo: &str| {
///     let memo = letters.read(memo).unwrap();
///     check_letters(Orbit::Corner, state.orbit(Orbit::Corner), buffer, &memo)
/// };
/// assert!(check("LCBOBKV").right);
/// let wrong = check("LCBNBKV");
/// assert_eq!(wrong.slips.len(), 1);
/// assert_eq!((wrong.slips[0].position, letters.spell(&wrong.slips[0].expected)), (3, "O".to_owned()));
/// ```
pub fn check_letters(orbit: Orbit, seen: &Perm, buffer: Sticker, letters: &[Sticker]) -> KindCheck {
    let outcome = exchanged(seen, orbit, buffer, letters.iter().copied());
    let executable = !letters.iter().any(|&letter| orbit.same_piece(letter, buffer));
    let right = executable && blind::is_right(orbit, &outcome);
    let slips = match (right, orbit.looks_alike()) {
        (true, _) => Vec::new(),
        (false, true) => alike::slips(orbit, seen, buffer, letters),
        (false, false) => told_apart(orbit, seen, buffer, letters),
    };
    let is_wrong = |&place: &Sticker| {
        let there = outcome.at(place);
        there != place && !(orbit.looks_alike() && there.face() == place.face())
    };
    let unsolved = orbit.all_pieces().map(|piece| orbit.reference(piece)).filter(is_wrong).collect();
    KindCheck { orbit, letters: letters.to_vec(), executable, right, slips, unsolved }
}

/// The slips of a memo of pieces that are told apart: one that explains all of it, or the fewest that a walk along it meets.
fn told_apart(orbit: Orbit, seen: &Perm, buffer: Sticker, letters: &[Sticker]) -> Vec<MemoSlip> {
    let met = walk::slips(orbit, seen, buffer, letters);
    let is_end = |slip: &MemoSlip| matches!(slip.fault, MemoFault::LeftOut { .. });
    match met.as_slice() {
        [only] if is_end(only) => met,
        _ => mend::one_slip(orbit, seen, buffer, letters).map_or(met, |slip| vec![slip]),
    }
}

/// The last letter before one that is of the same piece.
fn earlier(orbit: Orbit, letters: &[Sticker], at: usize) -> Option<usize> {
    let letter = *letters.get(at)?;
    letters[..at].iter().rposition(|&other| orbit.same_piece(other, letter))
}

/// Checks a memo of a puzzle as it was scrambled and picked up: as [`check_memo`] does, and where more than one slip would have to
/// explain it, whether one change of what it was made for makes it right.
///
/// # Errors
/// As [`check_memo`].
pub fn check_scrambled(
    puzzle: &Scrambled<'_>,
    memo: &[(Orbit, Vec<Sticker>)],
    parity: Option<bool>,
    solver: &Solver,
) -> Result<MemoCheck, MemoError> {
    let check = check_memo(&puzzle.held.state, memo, parity, solver)?;
    if check.kinds.iter().map(|kind| kind.slips.len()).sum::<usize>() < 2 {
        return Ok(check);
    }
    let Some((found, held)) = circumstance::circumstance(puzzle, memo, solver) else { return Ok(check) };
    let free = matches!(found, Circumstance::Held { .. }) && !solver.size().is_odd();
    let check = if free { check_memo(&held.state, memo, parity, solver)? } else { check };
    Ok(MemoCheck { circumstance: Some(found), ..check })
}

/// Checks a memo against a state named in the hold (see [`blind::Held`]), on any size: letters need no method. Kinds that are not
/// given are not checked.
///
/// `parity` is what the memo says about the parity algorithm, if it says anything.
///
/// # Errors
/// [`MemoError`] for a kind that the puzzle does not have, or for an empty memo of a puzzle that is not solved.
pub fn check_memo(
    state: &State,
    memo: &[(Orbit, Vec<Sticker>)],
    parity: Option<bool>,
    solver: &Solver,
) -> Result<MemoCheck, MemoError> {
    let size = state.size();
    if let Some(&(orbit, _)) = memo.iter().find(|(orbit, _)| !Orbit::of(size).contains(orbit)) {
        return Err(MemoError::NoSuchKind { orbit, size });
    }
    if memo.iter().all(|(_, letters)| letters.is_empty()) && !state.is_solved() {
        return Err(MemoError::Empty);
    }
    let given = |orbit: Orbit| memo.iter().find(|(other, _)| *other == orbit).map(|(_, letters)| letters);
    let kinds: Vec<KindCheck> = solver
        .memo_order()
        .filter_map(|orbit| {
            let letters = given(orbit)?;
            let seen = solver.tracing().seen(state, orbit);
            Some(check_letters(orbit, &seen, solver.conventions().kind(orbit).buffer, letters))
        })
        .collect();
    let is_open = |orbit: &Orbit| given(*orbit).is_none() && !blind::is_right(*orbit, state.orbit(*orbit));
    let unchecked = solver.memo_order().filter(is_open).collect();
    let odd = state.orbit(Orbit::Corner).is_odd();
    let fault = match (parity, odd) {
        (Some(false), true) => Some(ParityFault::Overlooked),
        (Some(true), false) => Some(ParityFault::WithoutNeed),
        _ => None,
    };
    let all: Vec<(Orbit, Vec<Sticker>)> =
        kinds.iter().map(|kind| (kind.orbit, kind.letters.clone())).collect();
    let carried_out = solver.actions_noting(&all, parity).ok();
    let moves = carried_out.map(|actions| actions.iter().flat_map(Action::turns).collect::<Vec<Turn>>());
    let has_algorithm = solver.method().is_ok_and(|method| method.parity().is_some());
    let outcome = moves.as_ref().map(|moves| state.after(moves));
    let parity = fault.filter(|_| has_algorithm);
    Ok(MemoCheck { kinds, unchecked, parity, circumstance: None, moves, outcome })
}
