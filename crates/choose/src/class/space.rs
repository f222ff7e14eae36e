//! Which states there are to choose from, and which pieces are free in them.

use blind::Conventions;
use cube::{Orbit, Size, State, Sticker};

/// The ways in which a puzzle without fixed centres may lie before the solver after the scramble.
///
/// What a trace of an even cube says depends on how it is held, so it has to be settled which of its 24 ways of lying count.
/// On odd ones the centres decide, and both come to the same.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, Default)]
pub enum Lying {
    /// As sequences of U, R and F turns (on the 4x4 of one and two layers) leave it: the corner at DBL of the hold for scrambling
    /// stays where it is. Each state, however it is turned, counts once; on the 2x2 7! · 3⁶ = 3,674,160.
    #[default]
    Scrambled,
    /// In any way, as blindfolded events ask for: each state counts 24 times, on the 2x2 8! · 3⁷ = 88,179,840.
    Anyhow,
}

/// What is free in one kind of piece.
#[derive(Clone, Debug)]
pub(crate) struct KindSpace {
    pub orbit: Orbit,
    pub buffer: Sticker,
    /// The reference stickers of the pieces that move, the buffer's not among them.
    pub others: Vec<Sticker>,
    /// Whether the buffer's piece moves.
    pub buffer_moves: bool,
    /// Pieces besides the buffer's that never move.
    pub still: u8,
    /// Whether the turnings need not add up to nothing: for asking why a condition cannot be met.
    pub sum_free: bool,
}

impl KindSpace {
    pub(crate) fn new(orbit: Orbit, size: Size, lying: Lying, conventions: &Conventions) -> Self {
        let buffer = conventions.kind(orbit).buffer;
        let still = still_corner(size, lying, conventions).filter(|_| orbit == Orbit::Corner);
        let is = |sticker, other| orbit.piece(sticker) == orbit.piece(other);
        let others: Vec<Sticker> = orbit
            .all_pieces()
            .map(|piece| orbit.reference(piece))
            .filter(|&sticker| !is(sticker, buffer) && !still.is_some_and(|still| is(sticker, still)))
            .collect();
        let buffer_moves = !still.is_some_and(|still| is(still, buffer));
        let still = orbit.pieces() - 1 - others.len() as u8;
        Self { orbit, buffer, others, buffer_moves, still, sum_free: false }
    }

    /// In how many ways a piece can be turned.
    pub(crate) const fn ways(&self) -> u8 {
        self.orbit.stickers_per_piece()
    }
}

/// The corner of an even cube that a scramble leaves where it is, as it is called in the solver's hold.
fn still_corner(size: Size, lying: Lying, conventions: &Conventions) -> Option<Sticker> {
    if size.is_odd() || lying == Lying::Anyhow {
        return None;
    }
    let held = State::held(size, conventions.holding);
    Orbit::Corner.sticker("DBL").map(|anchor| held.orbit(Orbit::Corner).inverse().at(anchor))
}
