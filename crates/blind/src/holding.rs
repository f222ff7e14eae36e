//! How the puzzle is picked up: the hold that the conventions ask for, or on even sizes the one with the shortest memo or with most
//! centres right.

use cube::{Orbit, Rotation, Size, State, Sticker};

/// Which hold is wanted.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub enum HoldChoice {
    /// The one of the conventions.
    #[default]
    Conventions,
    /// On even sizes, where no centre fixes it, the one of all 24 that leaves the shortest memo; ties by most pieces
    /// solved, then fewest cycle breaks, then fewest turns of the whole cube.
    Best,
    /// On even sizes the one in which most centres are right already; ties as [`HoldChoice::Best`]. It is seen without tracing
    /// (common practice, no source). Where there are no centres, as on a 2x2, the same as that.
    MostCentres,
}

impl HoldChoice {
    /// What is chosen unless a person says otherwise: the shortest memo where there are corners alone, so that nothing else is to be
    /// held in mind; the conventions' hold otherwise.
    pub fn usual(size: Size) -> Self {
        if Orbit::of(size) == [Orbit::Corner] { Self::Best } else { Self::Conventions }
    }
}

/// The puzzle picked up to be solved.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Held {
    /// What leads from the hold in which it was scrambled to this one.
    pub rotation: Rotation,
    /// The state in this hold, each sticker named by where it belongs in it.
    pub state: State,
}

impl Held {
    /// Picks a scrambled puzzle up in the hold that a rotation of the solved puzzle leads to.
    ///
    /// Where a size has fixed centres, these decide: the colour that is wanted up is brought up. On even sizes the puzzle is
    /// turned as a solved one would be.
    pub fn new(scrambled: &State, wanted: Rotation) -> Self {
        // The centres may have been turned by the scramble itself.
        let rotation = scrambled.core().inverse().then(wanted);
        Self::turned(scrambled, rotation, wanted)
    }

    /// Picks it up by a rotation of its own; solved, it is to look as a solved puzzle turned by `wanted`.
    pub(crate) fn turned(scrambled: &State, rotation: Rotation, wanted: Rotation) -> Self {
        Self { rotation, state: scrambled.after(rotation.turns()).named_in(wanted) }
    }
}

/// Pieces that are not right, of all kinds, by their reference stickers; of pieces that look alike, the places with another colour.
pub fn unsolved_pieces(state: &State) -> Vec<(Orbit, Sticker)> {
    pieces(state).filter(|&(orbit, sticker)| !is_right(state, orbit, sticker)).collect()
}

fn pieces(state: &State) -> impl Iterator<Item = (Orbit, Sticker)> + use<> {
    Orbit::of(state.size())
        .iter()
        .flat_map(|&orbit| orbit.all_pieces().map(move |piece| (orbit, orbit.reference(piece))))
}

fn is_right(state: &State, orbit: Orbit, place: Sticker) -> bool {
    let there = state.at(orbit, place);
    there == place || (orbit.looks_alike() && there.face() == place.face())
}

/// Pieces that are right, of all kinds, by their reference stickers; of pieces that look alike, the places with the right
/// colour.
pub fn solved_pieces(state: &State) -> Vec<(Orbit, Sticker)> {
    pieces(state).filter(|&(orbit, sticker)| is_right(state, orbit, sticker)).collect()
}
