//! Slice-swap: edges carried out by half turns of the middle slice.

use super::MethodError;
use super::cycles::letters_effect;
use crate::usual::{MethodName, in_the_slice, usual};
use cube::{Algorithm, Claim, Face, NotProven, Orbit, Perm, Rotation, Size, State, Sticker, Turn, inverted};
use search::setup::{Wanted, setups};

/// The longest set-up that is looked for; five turns reach the other sticker of the place above.
const LONGEST_SETUP: usize = 5;

/// How one letter is carried out.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct SliceLetter {
    /// Set-up moves, which leave the slice alone.
    pub setup: Vec<Turn>,
    /// The half turn of the slice, or for targets in the slice an algorithm of their own.
    pub swap: Vec<Turn>,
}

impl SliceLetter {
    /// All turns: set-up, swap, set-up undone.
    pub fn turns(&self) -> Vec<Turn> {
        [self.setup.as_slice(), &self.swap, &inverted(&self.setup)].concat()
    }
}

/// The slice-swap method for edges.
///
/// A half turn of the slice exchanges the buffer with the sticker opposite, and also two more edges and four centres
/// of the slice: it is half-turned after the first letter and back after the second. What a letter has to do at the first place of a
/// pair is therefore: exchange the buffer with the target, and half-turn the rest of the slice. At the second place the
/// two other edges of the slice have changed places, so the algorithm for one is made for the other.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct SliceSwap {
    size: Size,
    buffer: Sticker,
    letters: Vec<SliceLetter>,
    /// What half-turning the rest of the slice does to the edges, to the fixed centres, and to all kinds of the size, the edges
    /// themselves left out.
    rest: Perm,
    core: Rotation,
    whole: State,
}

/// Where a rotation of the whole cube takes a sticker.
fn carried(size: Size, orbit: Orbit, rotation: Rotation, sticker: Sticker) -> Sticker {
    State::held(size, rotation).orbit(orbit).inverse().at(sticker)
}

/// Whether a kind of two states that came from the solved one looks the same.
fn looks_the_same(orbit: Orbit, one: &State, other: &State) -> bool {
    let same = |place: Sticker| {
        let (a, b) = (one.at(orbit, place), other.at(orbit, place));
        a == b || (orbit.looks_alike() && a.face() == b.face())
    };
    Sticker::all().all(same)
}

impl SliceSwap {
    /// The method with a buffer; every letter is applied and compared with what it has to do.
    ///
    /// # Errors
    /// [`MethodError::NoSetup`] for a target that cannot be reached, [`MethodError::CannotBeMade`] on a size without
    /// a middle slice, [`MethodError::NotProven`] where a letter does something else.
    pub fn new(size: Size, buffer: Sticker) -> Result<Self, MethodError> {
        let orbit = Orbit::Midge;
        let not_covered = MethodError::NotCovered { size, orbit };
        let swap = usual(MethodName::SliceSwap, orbit).ok_or_else(|| not_covered.clone())?;
        // Of the 24 rotations exactly one takes the usual buffer to the one wanted.
        let rotation = Rotation::all()
            .find(|&rotation| carried(size, orbit, rotation, swap.buffer) == buffer)
            .ok_or(not_covered)?;
        let opposite = carried(size, orbit, rotation, swap.target);
        let held = |algorithm: &Algorithm| {
            let on = algorithm.on(size).map_err(|error| MethodError::CannotBeMade { orbit, size, error });
            on.map(|on| on.rotated(rotation).flatten())
        };
        let half_turn = held(&swap.algorithm)?;
        let whole = State::solved(size).after(&half_turn);
        let rest = letters_effect(orbit, buffer, &[opposite]).then(whole.orbit(orbit));
        let letters = vec![SliceLetter::default(); Sticker::COUNT];
        let mut method = Self { size, buffer, letters, rest, core: whole.core(), whole };
        for (target, algorithm) in in_the_slice() {
            method.letters[carried(size, orbit, rotation, target).index()].swap = held(&algorithm)?;
        }
        method.find_setups(opposite, &half_turn)?;
        Ok(method.proven()?)
    }

    fn find_setups(&mut self, opposite: Sticker, half_turn: &[Turn]) -> Result<(), MethodError> {
        let orbit = Orbit::Midge;
        let others = Sticker::all().filter(|&sticker| {
            self.rest.at(sticker) != sticker && orbit.reference(orbit.piece(sticker)) == sticker
        });
        // On bigger sizes other centres lie in the slice; they have to be where they were when it turns.
        let kinds = Orbit::of(self.size).iter().filter(|other| other.looks_alike());
        let whole = self.whole;
        let centres = kinds.flat_map(|&kind| {
            let moved = Sticker::all().filter(move |&place| whole.at(kind, place) != place);
            moved.map(move |place| (kind, place))
        });
        let leave: Vec<(Orbit, Sticker)> = std::iter::once(self.buffer)
            .chain(others)
            .map(|sticker| (orbit, sticker))
            .chain(centres)
            .collect();
        let turns: Vec<Turn> = Turn::faces().collect();
        let wanted = Wanted { size: self.size, orbit, to: opposite, leave: &leave, turns: &turns };
        // Four pieces of the slice cannot be brought out of it, so a search for all targets would not end early.
        let found = setups(&wanted, LONGEST_SETUP)?;
        for target in Sticker::all().filter(|&target| !orbit.same_piece(target, self.buffer)) {
            let letter = &mut self.letters[target.index()];
            if !letter.swap.is_empty() {
                continue;
            }
            let setup = found.of(target).first().ok_or(MethodError::NoSetup { orbit, target })?;
            *letter = SliceLetter { setup: setup.turns().to_vec(), swap: half_turn.to_vec() };
        }
        Ok(())
    }

    /// Applies every letter: it exchanges the buffer with its target and half-turns the rest of the slice, no more.
    fn proven(self) -> Result<Self, NotProven> {
        let orbit = Orbit::Midge;
        let does = |target: Sticker| {
            let does = State::solved(self.size).after(&self.letters[target.index()].turns());
            let wanted = letters_effect(orbit, self.buffer, &[target]).then(&self.rest);
            let others = Orbit::of(self.size).iter().filter(|&&other| other != orbit);
            *does.orbit(orbit) == wanted
                && does.core() == self.whole.core()
                && others.into_iter().all(|&other| looks_the_same(other, &does, &self.whole))
        };
        let mut targets = Sticker::all().filter(|&target| !orbit.same_piece(target, self.buffer));
        NotProven::unless(targets.all(does), Claim::Algorithm).map(|()| self)
    }

    /// The buffer.
    pub const fn buffer(&self) -> Sticker {
        self.buffer
    }

    /// How a letter is carried out at the first place of a pair, or (`second`) at the second, where the slice is half-turned; `None`
    /// for the buffer's own piece.
    ///
    /// ```
    /// use blind::SliceSwap;
    /// use cube::{Orbit, display_turns};
    /// let edge = |name| Orbit::Midge.sticker(name).unwrap();
    /// let method = SliceSwap::new(cube::Size::THREE, edge("DF")).unwrap();
    /// let made = |name, second| display_turns(&method.letter(edge(name), second).unwrap().turns()).to_string();
    /// // Common practice, no source.
    /// assert_eq!(made("UB", false), "M2");
    /// assert_eq!(made("UF", false), "U2 M' U2 M'");
    /// assert_eq!(made("UF", true), made("DB", false));
    /// ```
    pub fn letter(&self, target: Sticker, second: bool) -> Option<&SliceLetter> {
        if Orbit::Midge.same_piece(target, self.buffer) {
            return None;
        }
        let made_for = if second { self.rest.at(target) } else { target };
        Some(&self.letters[made_for.index()])
    }

    /// What an odd number of letters leaves behind: the rest of the slice half-turned, edges and centres.
    pub const fn left_over(&self) -> (&Perm, Rotation) {
        (&self.rest, self.core)
    }

    /// What an odd number of letters leaves behind of another kind: the centres that lie in the slice.
    pub fn left_over_of(&self, orbit: Orbit) -> &Perm {
        if orbit == Orbit::Midge { &self.rest } else { self.whole.orbit(orbit) }
    }

    /// The faces of the slice's own axis, for telling how it is held.
    pub fn faces(&self) -> [Face; 2] {
        let axis =
            Face::ALL.into_iter().find(|&face| self.core.image(face) == face).unwrap_or(Face::R).axis();
        [axis.positive(), axis.positive().opposite()]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_letter_that_does_something_else_is_not_proven() {
        let edge = |name| Orbit::Midge.sticker(name).expect("an edge");
        let mut method = SliceSwap::new(Size::THREE, edge("DF")).expect("the usual buffer");
        assert!(method.clone().proven().is_ok());
        method.letters[edge("FR").index()].setup.clear();
        assert_eq!(method.proven(), Err(NotProven { claim: Claim::Algorithm }));
    }
}
