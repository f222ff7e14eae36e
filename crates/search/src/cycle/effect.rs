//! What an algorithm should do to the whole puzzle.

use cube::{Orbit, Perm, Rotation, Size, State, Sticker, Unreachable};
use thiserror::Error;

/// What kind of effect it is, in stickers.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum EffectKind {
    /// The piece at `buffer` goes to `first`, that of `first` to `second`, that of `second` to `buffer`.
    ThreeCycle {
        /// The kind of piece.
        orbit: Orbit,
        /// Where the first piece is.
        buffer: Sticker,
        /// Where it goes.
        first: Sticker,
        /// Where the piece of `first` goes.
        second: Sticker,
    },
    /// Two corners turn in their places, one each way.
    TwistPair {
        /// The corner that turns clockwise.
        clockwise: Sticker,
        /// The one that turns counter-clockwise.
        counter: Sticker,
    },
    /// Two midges are flipped in their places.
    FlipPair(Sticker, Sticker),
    /// Two corners exchange places, and two midges do.
    TwoSwaps {
        /// Stickers of the two corners that take each other's place.
        corners: [Sticker; 2],
        /// Stickers of the two midges that take each other's place.
        midges: [Sticker; 2],
    },
    /// The last target of an odd number, while another corner is twisted: the piece at `buffer` goes to `target`, a
    /// corner turns in its place, the piece of `target` comes to the buffer's place turned so that all adds up, and
    /// two midges exchange places where the size has midges.
    LastTarget {
        /// Where the piece is.
        buffer: Sticker,
        /// Where it goes.
        target: Sticker,
        /// The corner that turns in its place.
        twisted: Sticker,
        /// Whether that corner turns clockwise.
        clockwise: bool,
        /// Stickers of the two midges that take each other's place.
        midges: Option<[Sticker; 2]>,
    },
    /// Whatever a given state is.
    Other,
}

/// Why stickers do not make an effect.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum EffectError {
    /// The size has no such pieces.
    #[error("a {size} has no {orbit}s")]
    NoSuchOrbit {
        /// The kind of piece.
        orbit: Orbit,
        /// The size.
        size: Size,
    },
    /// Two of the stickers are on one piece, where different pieces are needed.
    #[error("{} and {} are on one {orbit}; different ones are needed", .orbit.name(*.one), .orbit.name(*.other))]
    SamePiece {
        /// The kind of piece.
        orbit: Orbit,
        /// One of the stickers.
        one: Sticker,
        /// The other.
        other: Sticker,
    },
    /// Pieces that look alike have no three-cycle of their own.
    #[error("{0}s of a colour look alike; three-cycles of them are not told apart")]
    LooksAlike(Orbit),
    /// No sequence of turns does that.
    #[error(transparent)]
    Unreachable(#[from] Unreachable),
}

/// What should happen to the whole puzzle: everything that is not named stays as it is, and the puzzle is held as before.
///
/// In all effects "the piece at sticker `a` goes to `b`" means that the sticker `a` of the solved cube is at the place `b`
/// afterwards: `state().at(orbit, b) == a`. So the three-cycle (buffer, first, second) solves a cube whose buffer
/// holds the piece of `first` and whose place `first` holds the piece of `second`: the letters first, second.
///
/// ```
/// use cube::{Algorithm, Orbit, Size, State};
/// use search::cycle::Effect;
/// let corner = |name| Orbit::Corner.sticker(name).unwrap();
/// let effect =
///     Effect::three_cycle(Size::THREE, Orbit::Corner, corner("UFR"), corner("UBR"), corner("RDF")).unwrap();
/// assert_eq!(effect.state().at(Orbit::Corner, corner("UBR")), corner("UFR"));
/// let turns = Algorithm::parse("[R' D' R, U]", Size::THREE).unwrap().flatten();
/// assert_eq!(*effect.state(), State::solved(Size::THREE).after(&turns));
/// ```
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub struct Effect {
    kind: EffectKind,
    state: State,
}

impl Effect {
    /// The three-cycle buffer → first → second → buffer, on stickers.
    ///
    /// # Errors
    /// [`EffectError`] when the size lacks the pieces, two stickers share one, or the pieces look alike.
    pub fn three_cycle(
        size: Size,
        orbit: Orbit,
        buffer: Sticker,
        first: Sticker,
        second: Sticker,
    ) -> Result<Self, EffectError> {
        if orbit.looks_alike() {
            return Err(EffectError::LooksAlike(orbit));
        }
        let mut draft = Draft::new(size);
        draft.different(orbit, &[buffer, first, second])?;
        draft.send(orbit, buffer, first)?;
        draft.send(orbit, first, second)?;
        draft.send(orbit, second, buffer)?;
        draft.finish(EffectKind::ThreeCycle { orbit, buffer, first, second })
    }

    /// All three-cycles of a buffer: for every ordered pair of targets on two further pieces.
    ///
    /// Of corners there are 21 · 18 = 378, of midges 22 · 20 = 440 (counted: 24 stickers less those of the buffer's
    /// piece, then less those of the first target's).
    ///
    /// # Errors
    /// As [`Effect::three_cycle`].
    pub fn all_three_cycles(size: Size, orbit: Orbit, buffer: Sticker) -> Result<Vec<Self>, EffectError> {
        let apart = |a: Sticker, b: Sticker| orbit.piece(a) != orbit.piece(b);
        let mut all = Vec::new();
        for first in Sticker::all().filter(|&first| apart(first, buffer)) {
            for second in Sticker::all().filter(|&second| apart(second, buffer) && apart(second, first)) {
                all.push(Self::three_cycle(size, orbit, buffer, first, second)?);
            }
        }
        Ok(all)
    }

    /// One corner turns clockwise in its place, another counter-clockwise.
    ///
    /// # Errors
    /// [`EffectError::SamePiece`] when both stickers are on one corner.
    pub fn twist_pair(size: Size, clockwise: Sticker, counter: Sticker) -> Result<Self, EffectError> {
        let mut draft = Draft::new(size);
        draft.different(Orbit::Corner, &[clockwise, counter])?;
        draft.twist(clockwise, true)?;
        draft.twist(counter, false)?;
        draft.finish(EffectKind::TwistPair { clockwise, counter })
    }

    /// Two midges are flipped in their places.
    ///
    /// # Errors
    /// [`EffectError`] when both stickers are on one midge or the size has none.
    pub fn flip_pair(size: Size, one: Sticker, other: Sticker) -> Result<Self, EffectError> {
        let mut draft = Draft::new(size);
        draft.different(Orbit::Midge, &[one, other])?;
        for sticker in [one, other] {
            draft.send(Orbit::Midge, sticker, Orbit::Midge.turned(sticker, 1))?;
        }
        draft.finish(EffectKind::FlipPair(one, other))
    }

    /// Two corners exchange places, sticker for sticker, and so do two midges.
    ///
    /// # Errors
    /// [`EffectError`] when two stickers share a piece or the size has no midges.
    pub fn two_swaps(size: Size, corners: [Sticker; 2], midges: [Sticker; 2]) -> Result<Self, EffectError> {
        let mut draft = Draft::new(size);
        draft.swap(Orbit::Corner, corners)?;
        draft.swap(Orbit::Midge, midges)?;
        draft.finish(EffectKind::TwoSwaps { corners, midges })
    }

    /// The last corner target while another corner is twisted, see [`EffectKind::LastTarget`].
    ///
    /// # Errors
    /// [`EffectError`] when stickers share a piece, or midges are given for a size that has none or lack where
    /// parity needs them.
    pub fn last_target(
        size: Size,
        buffer: Sticker,
        target: Sticker,
        twisted: Sticker,
        clockwise: bool,
        midges: Option<[Sticker; 2]>,
    ) -> Result<Self, EffectError> {
        let mut draft = Draft::new(size);
        draft.different(Orbit::Corner, &[buffer, target, twisted])?;
        draft.twist(twisted, clockwise)?;
        draft.send(Orbit::Corner, buffer, target)?;
        // The piece that comes back turns against the twisted one.
        let back = Orbit::Corner.turned(buffer, if clockwise { 2 } else { 1 });
        draft.send(Orbit::Corner, target, back)?;
        if let Some(midges) = midges {
            draft.swap(Orbit::Midge, midges)?;
        }
        draft.finish(EffectKind::LastTarget { buffer, target, twisted, clockwise, midges })
    }

    /// What leads from the solved cube to a state.
    pub const fn of_state(state: State) -> Self {
        Self { kind: EffectKind::Other, state }
    }

    /// What kind of effect it is.
    pub const fn kind(&self) -> EffectKind {
        self.kind
    }

    /// The state to which it leads from the solved cube.
    pub const fn state(&self) -> &State {
        &self.state
    }

    /// The size it is for.
    pub const fn size(&self) -> Size {
        self.state.size()
    }
}

/// An effect that is being put together.
struct Draft {
    size: Size,
    tables: Vec<[u8; 24]>,
}

impl Draft {
    fn new(size: Size) -> Self {
        Self { size, tables: vec![*Perm::IDENTITY.table(); Orbit::of(size).len()] }
    }

    fn different(&self, orbit: Orbit, stickers: &[Sticker]) -> Result<(), EffectError> {
        self.place(orbit)?;
        for (at, &other) in stickers.iter().enumerate() {
            if let Some(&one) = stickers[..at].iter().find(|&&one| orbit.piece(one) == orbit.piece(other)) {
                return Err(EffectError::SamePiece { orbit, one, other });
            }
        }
        Ok(())
    }

    fn place(&self, orbit: Orbit) -> Result<usize, EffectError> {
        let size = self.size;
        Orbit::of(size)
            .iter()
            .position(|&other| other == orbit)
            .ok_or(EffectError::NoSuchOrbit { orbit, size })
    }

    /// The piece at `from` goes to `to`, with all its stickers.
    fn send(&mut self, orbit: Orbit, from: Sticker, to: Sticker) -> Result<(), EffectError> {
        let at = self.place(orbit)?;
        for steps in 0..orbit.stickers_per_piece() {
            self.tables[at][orbit.turned(to, steps).index()] = orbit.turned(from, steps).index() as u8;
        }
        Ok(())
    }

    fn twist(&mut self, corner: Sticker, clockwise: bool) -> Result<(), EffectError> {
        self.send(Orbit::Corner, corner, Orbit::Corner.turned(corner, if clockwise { 1 } else { 2 }))
    }

    fn swap(&mut self, orbit: Orbit, [one, other]: [Sticker; 2]) -> Result<(), EffectError> {
        self.different(orbit, &[one, other])?;
        self.send(orbit, one, other)?;
        self.send(orbit, other, one)
    }

    fn finish(self, kind: EffectKind) -> Result<Effect, EffectError> {
        // Every piece is sent to one place only, so each table is a permutation.
        let perms: Vec<Perm> =
            self.tables.into_iter().map(|table| Perm::new(table).unwrap_or(Perm::IDENTITY)).collect();
        Ok(Effect { kind, state: State::from_orbits(self.size, Rotation::NONE, &perms)? })
    }
}
