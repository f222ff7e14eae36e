//! What an algorithm for two letters is asked for.

use cube::{Algorithm, Orbit, Sticker};

/// What a three-cycle is asked for: buffer → first target → second target.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, PartialOrd, Ord)]
pub struct CycleCase {
    /// The kind of piece.
    pub orbit: Orbit,
    /// The buffer.
    pub buffer: Sticker,
    /// The first target.
    pub first: Sticker,
    /// The second target.
    pub second: Sticker,
}

impl CycleCase {
    /// A case; `None` where two of the stickers are on one piece.
    pub fn new(orbit: Orbit, buffer: Sticker, first: Sticker, second: Sticker) -> Option<Self> {
        let pieces = [buffer, first, second].map(|sticker| orbit.piece(sticker));
        let apart = pieces[0] != pieces[1] && pieces[0] != pieces[2] && pieces[1] != pieces[2];
        apart.then_some(Self { orbit, buffer, first, second })
    }

    /// All cases of a buffer: 21 · 18 = 378 of corners, 22 · 20 = 440 of edges.
    ///
    /// ```
    /// use blind::CycleCase;
    /// use cube::Orbit;
    /// let buffer = Orbit::Corner.sticker("UFR").unwrap();
    /// assert_eq!(CycleCase::all(Orbit::Corner, buffer).count(), 21 * 18);
    /// ```
    pub fn all(orbit: Orbit, buffer: Sticker) -> impl Iterator<Item = Self> {
        let apart = move |a: Sticker, b: Sticker| orbit.piece(a) != orbit.piece(b);
        Sticker::all().filter(move |&first| apart(first, buffer)).flat_map(move |first| {
            Sticker::all()
                .filter(move |&second| apart(second, buffer) && apart(second, first))
                .map(move |second| Self { orbit, buffer, first, second })
        })
    }

    /// The case that the same algorithm made backwards solves.
    #[must_use]
    pub const fn inverse(self) -> Self {
        Self { first: self.second, second: self.first, ..self }
    }
}

/// An algorithm that is said to solve a case. Whether it does is found out by whoever uses it.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct CycleAlgorithm {
    /// The case.
    pub case: CycleCase,
    /// The algorithm.
    pub algorithm: Algorithm,
}
