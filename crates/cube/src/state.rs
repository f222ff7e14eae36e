//! States: what lies where on a cube.

use crate::layout::Layout;
use crate::{Motion, NoSuchTurn, Orbit, Perm, Rotation, Size, Sticker, Turn};

/// A state of a cube of one size, always one that turning can reach.
///
/// Read from colours it is so up to which of four centres of one colour is which, as nobody can see that.
///
/// It is also an element of the group that turns make: [`State::then`] does one after the other.
///
/// ```
/// use cube::{Algorithm, Size, State};
/// let turns = Algorithm::parse("F R U R' U' F'", Size::THREE).unwrap().flatten();
/// let state = State::solved(Size::THREE).after(&turns);
/// assert!(state.then(&state.inverse()).is_solved());
/// ```
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub struct State {
    size: Size,
    /// How the fixed centres are turned; nothing on even sizes.
    core: Rotation,
    orbits: [Perm; Orbit::MOST],
}

impl State {
    /// The solved cube.
    pub const fn solved(size: Size) -> Self {
        Self { size, core: Rotation::NONE, orbits: [Perm::IDENTITY; Orbit::MOST] }
    }

    /// The solved cube held another way.
    pub fn held(size: Size, rotation: Rotation) -> Self {
        Self::solved(size).after(rotation.turns())
    }

    pub(crate) const fn from_parts(size: Size, core: Rotation, orbits: [Perm; Orbit::MOST]) -> Self {
        Self { size, core, orbits }
    }

    /// Its size.
    pub const fn size(&self) -> Size {
        self.size
    }

    /// How the fixed centres of an odd cube are turned against the solved cube; nothing for an even one.
    pub const fn core(&self) -> Rotation {
        self.core
    }

    /// The permutation of an orbit; the identity for an orbit that the size does not have.
    pub fn orbit(&self, orbit: Orbit) -> &Perm {
        orbit.index_on(self.size).map_or(&Perm::IDENTITY, |at| &self.orbits[at])
    }

    /// The sticker that is at a place of an orbit.
    pub fn at(&self, orbit: Orbit, place: Sticker) -> Sticker {
        self.orbit(orbit).at(place)
    }

    /// Makes a turn.
    ///
    /// # Errors
    /// [`NoSuchTurn`] when the size does not have it; the state is then as before.
    pub fn turn(&mut self, turn: Turn) -> Result<(), NoSuchTurn> {
        self.apply(Layout::of(self.size), turn.motion(self.size)?);
        Ok(())
    }

    fn apply(&mut self, layout: &Layout, motion: Motion) {
        let table = layout.motion(motion);
        for (perm, pull) in self.orbits[..layout.orbits.len()].iter_mut().zip(&table.orbits) {
            *perm = perm.then(pull);
        }
        if table.core != Rotation::NONE {
            self.core = self.core.then(table.core);
        }
    }

    /// The state after some turns. Turns that the size does not have (so none that were parsed for it) do nothing.
    #[must_use]
    pub fn after(mut self, turns: &[Turn]) -> Self {
        let layout = Layout::of(self.size);
        for &turn in turns {
            if let Ok(motion) = turn.motion(self.size) {
                self.apply(layout, motion);
            }
        }
        self
    }

    /// First what leads from solved to this state, then what leads from solved to the next one.
    ///
    /// The sizes must agree; otherwise the state is returned as it is.
    #[must_use]
    pub fn then(&self, next: &Self) -> Self {
        if self.size != next.size {
            return *self;
        }
        let mut product = *self;
        let orbits = Orbit::of(self.size).len();
        for (perm, after) in product.orbits[..orbits].iter_mut().zip(&next.orbits) {
            *perm = perm.then(after);
        }
        product.core = self.core.then(next.core);
        product
    }

    /// What undoes the state.
    #[must_use]
    pub fn inverse(&self) -> Self {
        let mut inverse = Self { size: self.size, core: self.core.inverse(), orbits: self.orbits };
        for perm in &mut inverse.orbits[..Orbit::of(self.size).len()] {
            *perm = perm.inverse();
        }
        inverse
    }

    /// Whether it looks the same as another state: centres of one colour are not told apart.
    pub fn looks_like(&self, other: &Self) -> bool {
        self.size == other.size
            && self.core == other.core
            && Orbit::of(self.size).iter().zip(self.orbits.iter().zip(&other.orbits)).all(
                |(orbit, (a, b))| {
                    if orbit.looks_alike() {
                        Sticker::all().all(|place| a.at(place).face() == b.at(place).face())
                    } else {
                        a == b
                    }
                },
            )
    }

    /// Whether every sticker is where it is on the solved cube as it was held at first.
    pub fn is_solved(&self) -> bool {
        self.looks_like(&Self::solved(self.size))
    }

    /// Whether every face shows one colour, and if so how the cube is held: the rotation made since it was solved
    /// in the first hold.
    ///
    /// ```
    /// use cube::{Algorithm, Size, State};
    /// let turns = Algorithm::parse("R L'", Size::TWO).unwrap().flatten();
    /// let state = State::solved(Size::TWO).after(&turns);
    /// assert_eq!(cube::display_turns(state.solved_hold().unwrap().turns()).to_string(), "x");
    /// ```
    pub fn solved_hold(&self) -> Option<Rotation> {
        Rotation::all().find(|&rotation| self.looks_like(&Self::held(self.size, rotation)))
    }

    /// The same puzzle seen by someone for whom the colours are named by the way the solved cube is held after
    /// `rotation`: each sticker is renamed to the place it has on that cube.
    ///
    /// `State::held(size, r).named_in(r)` is solved.
    #[must_use]
    pub fn named_in(&self, rotation: Rotation) -> Self {
        Self::held(self.size, rotation).inverse().then(self)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Algorithm, Lack};

    #[test]
    fn holding_is_a_matter_of_names() {
        for size in Size::ALL {
            for rotation in Rotation::all() {
                let held = State::held(size, rotation);
                assert!(held.named_in(rotation).is_solved());
                assert_eq!(held.solved_hold(), Some(rotation));
            }
        }
    }

    #[test]
    fn a_turn_that_a_size_lacks_is_refused() {
        let slice = Algorithm::parse("M", Size::THREE).unwrap().flatten()[0];
        let mut state = State::solved(Size::TWO);
        let refused = NoSuchTurn { turn: slice, size: Size::TWO, lack: Lack::Middle };
        assert_eq!(state.turn(slice), Err(refused));
        assert!(state.is_solved());
    }
}
