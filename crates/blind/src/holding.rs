//! How the puzzle is picked up: the hold that the conventions ask for, or on a 2x2 the one with the shortest memo.

use crate::conventions::Conventions;
use crate::memo::Memo;
use crate::method::Method;
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
}

/// The puzzle picked up to be solved.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Held {
    /// What leads from the hold in which it was scrambled to this one.
    pub rotation: Rotation,
    /// The state in this hold, each sticker named by where it belongs in it.
    pub state: State,
}

/// Picks a scrambled puzzle up in the hold of the conventions.
///
/// Where a size has fixed centres, these decide: the colour that the conventions want up is brought up. On even
/// sizes the puzzle is turned as the conventions turn a solved one.
pub fn hold(scrambled: &State, conventions: &Conventions) -> Held {
    let wanted = conventions.holding;
    // The centres may have been turned by the scramble itself.
    let rotation = scrambled.core().inverse().then(wanted);
    let state = scrambled.after(rotation.turns()).named_in(wanted);
    Held { rotation, state }
}

/// Tries all 24 ways of picking up a puzzle without fixed centres, and takes the one with the shortest memo.
///
/// In each of them the solved puzzle is to have the colours of the conventions up and in front; so different pieces
/// are already in their places. `None` for odd sizes, where the centres decide.
pub fn best_hold(scrambled: &State, conventions: &Conventions, method: &Method) -> Option<Held> {
    if scrambled.size().is_odd() {
        return None;
    }
    every_hold(scrambled, conventions).min_by_key(|held| {
        let memo = Memo::new(&held.state, conventions, method);
        let solved: usize = memo.parts().iter().map(|trace| trace.solved().len()).sum();
        let breaks: usize = memo
            .parts()
            .iter()
            .flat_map(crate::Trace::cycles)
            .filter(|cycle| !cycle.holds_buffer && cycle.pieces > 1)
            .count();
        (memo.letters(), usize::MAX - solved, breaks, held.rotation.turns().len())
    })
}

/// All 24 ways of picking up a puzzle without fixed centres, in the order of [`Rotation::all`].
pub fn every_hold<'a>(scrambled: &'a State, conventions: &'a Conventions) -> impl Iterator<Item = Held> + 'a {
    Rotation::all().map(|rotation| Held {
        rotation,
        state: scrambled.after(rotation.turns()).named_in(conventions.holding),
    })
}

/// Pieces that are in their places and right, of all kinds, by their reference stickers.
pub fn solved_pieces(state: &State) -> Vec<(Orbit, Sticker)> {
    let size: Size = state.size();
    Orbit::of(size)
        .iter()
        .flat_map(|&orbit| orbit.all_pieces().map(move |piece| (orbit, orbit.reference(piece))))
        .filter(|&(orbit, sticker)| state.at(orbit, sticker) == sticker)
        .collect()
}
