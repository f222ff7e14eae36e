//! Three-cycles: two letters at once, each pair by an algorithm of its own.

use super::MethodError;
use crate::conventions::Turned;
use crate::letters::same_piece;
use crate::sheet::Sheet;
use crate::swap::Swap;
use cube::{Algorithm, Orbit, Perm, Rotation, Size, State, Sticker, Turn};
use search::conjugate::{Conjugates, Sort};
use search::ease::Model;

/// What carrying out letters does to their kind: the buffer's piece is exchanged with each target in turn.
///
/// ```
/// use blind::letters_effect;
/// use cube::Orbit;
/// let edge = |name| Orbit::Midge.sticker(name).unwrap();
/// let effect = letters_effect(Orbit::Midge, edge("UF"), &[edge("UB"), edge("BU")]);
/// // The same piece twice, by its two stickers: it is flipped, and so is the buffer.
/// assert_eq!(effect.at(edge("UB")), edge("BU"));
/// assert_eq!(effect.at(edge("UF")), edge("FU"));
/// ```
pub fn letters_effect(orbit: Orbit, buffer: Sticker, targets: &[Sticker]) -> Perm {
    targets.iter().fold(Perm::IDENTITY, |effect, &target| {
        let mut table = *Perm::IDENTITY.table();
        for steps in 0..orbit.stickers_per_piece() {
            let (one, other) = (orbit.turned(buffer, steps), orbit.turned(target, steps));
            if !same_piece(orbit, buffer, target) {
                (table[one.index()], table[other.index()]) = (other.index() as u8, one.index() as u8);
            }
        }
        // Exchanging two pieces is always a permutation.
        effect.then(&Perm::new(table).unwrap_or(Perm::IDENTITY))
    })
}

/// The state that letters of one kind solve when they are carried out, undone: what their algorithm has to do to a
/// solved cube. `None` when no turns do it, as for an odd number of letters on a 3x3.
pub fn letters_state(size: Size, orbit: Orbit, buffer: Sticker, targets: &[Sticker]) -> Option<State> {
    let perms: Vec<Perm> = Orbit::of(size)
        .iter()
        .map(|&other| if other == orbit { letters_effect(orbit, buffer, targets) } else { Perm::IDENTITY })
        .collect();
    State::from_orbits(size, Rotation::NONE, &perms).ok()
}

/// An algorithm for letters, applied and found to do what they ask.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Case {
    /// As it is written.
    pub algorithm: Algorithm,
    /// Its turns.
    pub turns: Vec<Turn>,
    /// The estimated time in thousandths of a second.
    pub milliseconds: u32,
    /// Whether it was found by search, since the sheet has none.
    pub found: bool,
}

impl Case {
    fn new(algorithm: Algorithm, model: &Model, found: bool) -> Self {
        // What a set-up and the algorithm after it undo, nobody turns.
        let turns = cube::simplified(&algorithm.flatten());
        let milliseconds = super::milliseconds(model, &turns);
        Self { algorithm, turns, milliseconds, found }
    }
}

/// The three-cycle method for one kind.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Cycles {
    orbit: Orbit,
    buffer: Sticker,
    /// By first letter · 24 + second letter; on one piece, what turns that piece and the buffer's.
    cases: Vec<Option<Case>>,
    /// Two pieces turned in their places, by reference stickers; of corners the first clockwise letters.
    joint: Vec<Option<Case>>,
    last: Swap,
}

impl Cycles {
    /// Takes the easiest algorithm of the sheets for each case, and finds one by search where there is none.
    ///
    /// # Errors
    /// [`MethodError::NoCase`] when neither has one.
    pub(super) fn new(
        size: Size,
        orbit: Orbit,
        sheets: &[Sheet],
        turned: Turned,
        model: &Model,
        last: Swap,
    ) -> Result<Self, MethodError> {
        let buffer = last.effect().buffer();
        let mut cycles = Self { orbit, buffer, cases: vec![None; 576], joint: vec![None; 576], last };
        for row in sheets.iter().flat_map(Sheet::rows) {
            let Some(case) = row.case.filter(|case| case.orbit == orbit && case.buffer == buffer) else {
                continue;
            };
            let Ok(algorithm) = Algorithm::parse(&row.algorithm, size) else { continue };
            cycles.offer(size, case.first, case.second, Case::new(algorithm, model, false));
        }
        cycles.find_missing(size, model)?;
        cycles.find_turned(size, turned, model)?;
        Ok(cycles)
    }

    fn others(&self) -> impl Iterator<Item = Sticker> + use<> {
        let (orbit, buffer) = (self.orbit, self.buffer);
        Sticker::all().filter(move |&sticker| !same_piece(orbit, sticker, buffer))
    }

    /// Keeps an algorithm if it does what the letters ask and is easier than what is there.
    fn offer(&mut self, size: Size, first: Sticker, second: Sticker, case: Case) {
        let Some(wanted) = letters_state(size, self.orbit, self.buffer, &[first, second]) else { return };
        if same_piece(self.orbit, first, second) || State::solved(size).after(&case.turns) != wanted {
            return;
        }
        let place = &mut self.cases[first.index() * 24 + second.index()];
        if place.as_ref().is_none_or(|known| case.milliseconds < known.milliseconds) {
            *place = Some(case);
        }
    }

    fn find_missing(&mut self, size: Size, model: &Model) -> Result<(), MethodError> {
        let orbit = self.orbit;
        let mut search = None;
        for first in self.others() {
            for second in self.others().filter(|&second| !same_piece(orbit, first, second)) {
                if self.cases[first.index() * 24 + second.index()].is_some() {
                    continue;
                }
                let search = search.get_or_insert_with(|| Conjugates::new(size, Sort::ThreeCycle(orbit)));
                let algorithm = letters_state(size, orbit, self.buffer, &[first, second])
                    .and_then(|wanted| search.leading_to(&wanted))
                    .ok_or(MethodError::NoCase { orbit, first, second })?;
                self.cases[first.index() * 24 + second.index()] = Some(Case::new(algorithm, model, true));
            }
        }
        Ok(())
    }

    /// What turns pieces in their places: by algorithms of their own, or by two three-cycles through a third piece.
    fn find_turned(&mut self, size: Size, turned: Turned, model: &Model) -> Result<(), MethodError> {
        let orbit = self.orbit;
        let sort = if orbit == Orbit::Corner { Sort::TwistPair } else { Sort::FlipPair };
        let search = (turned == Turned::Algorithm).then(|| Conjugates::new(size, sort));
        let pairs: Vec<[Sticker; 2]> = self
            .others()
            .flat_map(|first| (1..orbit.stickers_per_piece()).map(move |by| [first, orbit.turned(first, by)]))
            .collect();
        for &[first, second] in &pairs {
            let by_algorithm = || {
                let wanted = letters_state(size, orbit, self.buffer, &[first, second])?;
                let algorithm = search.as_ref()?.leading_to(&wanted)?;
                Some(Case::new(algorithm, model, true))
            };
            let case = by_algorithm()
                .or_else(|| self.through_a_third(size, first, second, model))
                .ok_or(MethodError::NoCase { orbit, first, second })?;
            self.cases[first.index() * 24 + second.index()] = Some(case);
        }
        let Some(search) = search else { return Ok(()) };
        for one in &pairs {
            for other in &pairs {
                let place = self.joint_place(*one, *other);
                if same_piece(orbit, one[0], other[0]) || place.is_none_or(|at| self.joint[at].is_some()) {
                    continue;
                }
                let letters = [one[0], one[1], other[0], other[1]];
                let found = letters_state(size, orbit, self.buffer, &letters)
                    .and_then(|wanted| search.leading_to(&wanted))
                    .map(|algorithm| Case::new(algorithm, model, true));
                if let Some(at) = place {
                    self.joint[at] = found;
                }
            }
        }
        Ok(())
    }

    fn through_a_third(&self, size: Size, first: Sticker, second: Sticker, model: &Model) -> Option<Case> {
        let helper =
            self.others().filter(|&third| !same_piece(self.orbit, third, first)).min_by_key(|&third| {
                let cost = |a, b| self.case(a, b).map_or(u32::MAX / 4, |case| case.milliseconds);
                cost(first, third) + cost(third, second)
            })?;
        let turns = [self.case(first, helper)?, self.case(helper, second)?]
            .map(|case| case.turns.as_slice())
            .concat();
        let algorithm = Algorithm::from_turns(size, &turns).ok()?;
        let found = [self.case(first, helper)?, self.case(helper, second)?].iter().any(|case| case.found);
        let case = Case::new(algorithm, model, found);
        let wanted = letters_state(size, self.orbit, self.buffer, &[first, second])?;
        (State::solved(size).after(&case.turns) == wanted).then_some(case)
    }

    /// The kind of piece.
    pub const fn orbit(&self) -> Orbit {
        self.orbit
    }

    /// The buffer.
    pub const fn buffer(&self) -> Sticker {
        self.buffer
    }

    /// The algorithm for two letters. On one piece it turns that piece in its place, and the buffer's against it.
    /// `None` when a letter is the buffer's or both are the same.
    pub fn case(&self, first: Sticker, second: Sticker) -> Option<&Case> {
        self.cases[first.index() * 24 + second.index()].as_ref()
    }

    /// One algorithm for four letters that turn two pieces in their places, if there is one.
    pub fn joint(&self, one: [Sticker; 2], other: [Sticker; 2]) -> Option<&Case> {
        self.joint[self.joint_place(one, other)?].as_ref()
    }

    fn joint_place(&self, one: [Sticker; 2], other: [Sticker; 2]) -> Option<usize> {
        let orbit = self.orbit;
        let reference = |sticker: Sticker| orbit.reference(orbit.piece(sticker)).index();
        let clockwise = |pair: [Sticker; 2]| orbit.turned(pair[0], 1) == pair[1];
        let pieces = same_piece(orbit, one[0], one[1]) && same_piece(orbit, other[0], other[1]);
        if !pieces || same_piece(orbit, one[0], other[0]) {
            return None;
        }
        let (a, b) = (reference(one[0]), reference(other[0]));
        if orbit == Orbit::Corner {
            return match (clockwise(one), clockwise(other)) {
                (true, false) => Some(a * 24 + b),
                (false, true) => Some(b * 24 + a),
                _ => None,
            };
        }
        Some(a.min(b) * 24 + a.max(b))
    }

    /// The swap for the last letter of an odd number.
    pub const fn last(&self) -> &Swap {
        &self.last
    }

    /// All cases of two targets on different pieces: first letter, second letter, algorithm.
    pub fn cases(&self) -> impl Iterator<Item = (Sticker, Sticker, &Case)> {
        let orbit = self.orbit;
        Sticker::all().flat_map(move |first| {
            Sticker::all().filter_map(move |second| {
                let case = self.case(first, second).filter(|_| !same_piece(orbit, first, second))?;
                Some((first, second, case))
            })
        })
    }
}
