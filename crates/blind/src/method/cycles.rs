//! Three-cycles: two letters at once, each pair by an algorithm of its own.

use super::MethodError;
use crate::conventions::Turned;
use crate::cycle_case::CycleAlgorithm;
use crate::swap::Swap;
use cube::{Algorithm, Claim, NotProven, Orbit, Perm, Rotation, Size, State, Sticker, Turn};
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
            if !orbit.same_piece(buffer, target) {
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
    algorithm: Algorithm,
    turns: Vec<Turn>,
    milliseconds: u32,
    found: bool,
}

impl Case {
    /// Applies an algorithm for letters.
    ///
    /// # Errors
    /// [`NotProven`] when it does not do exactly what the letters ask.
    fn new(letters: &Asked<'_>, algorithm: Algorithm, model: &Model, found: bool) -> Result<Self, NotProven> {
        // What a set-up and the algorithm after it undo, nobody turns.
        let turns = cube::simplified(&algorithm.flatten());
        let does = State::solved(letters.size).after(&turns);
        NotProven::unless(letters.wanted() == Some(does), Claim::Algorithm)?;
        let milliseconds = super::milliseconds(model, &turns);
        Ok(Self { algorithm, turns, milliseconds, found })
    }

    /// As it is written.
    pub const fn algorithm(&self) -> &Algorithm {
        &self.algorithm
    }

    /// Its turns, merged and cancelled.
    pub fn turns(&self) -> &[Turn] {
        &self.turns
    }

    /// The estimated time in thousandths of a second.
    pub const fn milliseconds(&self) -> u32 {
        self.milliseconds
    }

    /// Whether it was found by search, since none was given.
    pub const fn is_found(&self) -> bool {
        self.found
    }
}

/// Asked of one kind that are to be carried out by one algorithm.
pub(super) struct Asked<'a> {
    pub(super) size: Size,
    pub(super) orbit: Orbit,
    pub(super) buffer: Sticker,
    pub(super) targets: &'a [Sticker],
}

impl Asked<'_> {
    /// What their algorithm leads to from the solved puzzle.
    pub(super) fn wanted(&self) -> Option<State> {
        letters_state(self.size, self.orbit, self.buffer, self.targets)
    }
}

/// The three-cycle method for one kind.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Cycles {
    size: Size,
    orbit: Orbit,
    buffer: Sticker,
    /// By first letter · 24 + second letter; on one piece, what turns that piece and the buffer's.
    cases: Vec<Option<Case>>,
    /// Two pieces turned in their places, by reference stickers; of corners the first clockwise letters.
    joint: Vec<Option<Case>>,
    last: Swap,
}

impl Cycles {
    /// Takes the easiest of the given algorithms for each case, and finds one by search where there is none.
    ///
    /// # Errors
    /// [`MethodError::NoCase`] when neither has one.
    pub(super) fn new(
        size: Size,
        orbit: Orbit,
        algorithms: &[CycleAlgorithm],
        turned: Turned,
        model: &Model,
        last: Swap,
    ) -> Result<Self, MethodError> {
        let buffer = last.effect().buffer();
        let mut cycles = Self { size, orbit, buffer, cases: vec![None; 576], joint: vec![None; 576], last };
        for given in algorithms {
            let case = given.case;
            if case.orbit == orbit && case.buffer == buffer && !orbit.same_piece(case.first, case.second) {
                cycles.offer([case.first, case.second], &given.algorithm, model);
            }
        }
        cycles.find_missing(model)?;
        cycles.find_turned(turned, model)?;
        Ok(cycles)
    }

    const fn letters<'a>(&self, targets: &'a [Sticker]) -> Asked<'a> {
        Asked { size: self.size, orbit: self.orbit, buffer: self.buffer, targets }
    }

    fn others(&self) -> impl Iterator<Item = Sticker> + use<> {
        let (orbit, buffer) = (self.orbit, self.buffer);
        Sticker::all().filter(move |&sticker| !orbit.same_piece(sticker, buffer))
    }

    /// Keeps an algorithm if it does what the letters ask and is easier than what is there. What does something else is not
    /// used; the check of a sheet tells whose it is.
    fn offer(&mut self, targets: [Sticker; 2], algorithm: &Algorithm, model: &Model) {
        let Ok(algorithm) = algorithm.on(self.size) else { return };
        let Ok(case) = Case::new(&self.letters(&targets), algorithm, model, false) else { return };
        let place = &mut self.cases[targets[0].index() * 24 + targets[1].index()];
        if place.as_ref().is_none_or(|known| case.milliseconds < known.milliseconds) {
            *place = Some(case);
        }
    }

    fn find_missing(&mut self, model: &Model) -> Result<(), MethodError> {
        let orbit = self.orbit;
        let search = Conjugates::three_cycles(self.size, orbit);
        for first in self.others() {
            for second in self.others().filter(|&second| !orbit.same_piece(first, second)) {
                if self.cases[first.index() * 24 + second.index()].is_some() {
                    continue;
                }
                let case = self.searched(search, &[first, second], model)?.ok_or(MethodError::NoCase {
                    orbit,
                    first,
                    second,
                })?;
                self.cases[first.index() * 24 + second.index()] = Some(case);
            }
        }
        Ok(())
    }

    /// What a search has for letters, applied.
    fn searched(
        &self,
        search: &Conjugates,
        targets: &[Sticker],
        model: &Model,
    ) -> Result<Option<Case>, NotProven> {
        let letters = self.letters(targets);
        let algorithm = letters.wanted().and_then(|wanted| search.leading_to(&wanted));
        algorithm.map(|algorithm| Case::new(&letters, algorithm, model, true)).transpose()
    }

    /// What turns pieces in their places: by algorithms of their own, or by two three-cycles through a third piece.
    fn find_turned(&mut self, turned: Turned, model: &Model) -> Result<(), MethodError> {
        let orbit = self.orbit;
        let sort = match orbit {
            Orbit::Corner => Sort::TwistPair,
            Orbit::Midge => Sort::FlipPair,
            // Nothing of these kinds can be turned in its place.
            Orbit::Wing { .. } | Orbit::XCentre { .. } | Orbit::TCentre { .. } | Orbit::Oblique(_) => {
                return Ok(());
            }
        };
        let search = (turned == Turned::Algorithm).then(|| Conjugates::new(self.size, sort));
        let pairs: Vec<[Sticker; 2]> = self
            .others()
            .flat_map(|first| (1..orbit.stickers_per_piece()).map(move |by| [first, orbit.turned(first, by)]))
            .collect();
        for pair in &pairs {
            let by_algorithm = match &search {
                Some(search) => self.searched(search, pair, model)?,
                None => None,
            };
            let [first, second] = *pair;
            let case = match by_algorithm {
                Some(case) => Some(case),
                None => self.through_a_third(*pair, model)?,
            };
            let case = case.ok_or(MethodError::NoCase { orbit, first, second })?;
            self.cases[first.index() * 24 + second.index()] = Some(case);
        }
        let Some(search) = search else { return Ok(()) };
        for one in &pairs {
            for other in &pairs {
                let place = self.joint_place(*one, *other);
                let Some(at) = place.filter(|&at| self.joint[at].is_none()) else { continue };
                let letters = [one[0], one[1], other[0], other[1]];
                self.joint[at] = self.searched(&search, &letters, model)?;
            }
        }
        Ok(())
    }

    fn through_a_third(&self, pair: [Sticker; 2], model: &Model) -> Result<Option<Case>, NotProven> {
        let [first, second] = pair;
        let cost = |a, b| self.case(a, b).map_or(u32::MAX / 4, |case| case.milliseconds);
        let helper = self
            .others()
            .filter(|&third| !self.orbit.same_piece(third, first))
            .min_by_key(|&third| cost(first, third) + cost(third, second));
        let both = helper.and_then(|helper| Some([self.case(first, helper)?, self.case(helper, second)?]));
        let Some(both) = both else { return Ok(None) };
        let turns = both.map(Case::turns).concat();
        let Ok(algorithm) = Algorithm::from_turns(self.size, &turns) else { return Ok(None) };
        let found = both.iter().any(|case| case.found);
        Case::new(&self.letters(&pair), algorithm, model, found).map(Some)
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
        let pieces = orbit.same_piece(one[0], one[1]) && orbit.same_piece(other[0], other[1]);
        if !pieces || orbit.same_piece(one[0], other[0]) {
            return None;
        }
        let (a, b) = (reference(one[0]), reference(other[0]));
        // Of pieces that turn in two ways, two turned together are turned against each other.
        match (clockwise(one), clockwise(other)) {
            _ if orbit.stickers_per_piece() == 2 => Some(a.min(b) * 24 + a.max(b)),
            (true, false) => Some(a * 24 + b),
            (false, true) => Some(b * 24 + a),
            (true, true) | (false, false) => None,
        }
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
                let case = self.case(first, second).filter(|_| !orbit.same_piece(first, second))?;
                Some((first, second, case))
            })
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_algorithm_that_does_something_else_is_no_case() {
        let corner = |name| Orbit::Corner.sticker(name).expect("a corner");
        let targets = ["UBR", "RDF"].map(corner);
        let letters =
            Asked { size: Size::THREE, orbit: Orbit::Corner, buffer: corner("UFR"), targets: &targets };
        let model = Model::built_in();
        let made = |text: &str| {
            let algorithm = Algorithm::parse(text, Size::THREE).expect("an algorithm");
            Case::new(&letters, algorithm, &model, false)
        };
        assert!(made("[R' D' R, U]").is_ok());
        assert_eq!(made("[U, R' D' R]"), Err(NotProven { claim: Claim::Algorithm }));
        assert!(made("").is_err());
    }
}
