//! Swaps: an algorithm that exchanges the buffer's piece with one other, and the set-up moves that bring every
//! target there.

use crate::trace::is_right;
use cube::{Algorithm, Block, NotProven, Orbit, Rotation, Size, Slice, State, Sticker, Turn};
use search::setup::{Setup, Setups, Wanted, setups_where, usual_turns};
use thiserror::Error;

/// The longest set-up that is looked for. Three turns reach every target of the usual algorithms.
const LONGEST_SETUP: usize = 6;

/// Why an algorithm cannot serve as the swap of a kind.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum SwapError {
    /// It moves no two pieces of the kind, or more than two, or turns them otherwise than by an exchange.
    #[error("the algorithm does not exchange exactly two pieces of the kind")]
    NotASwap {
        /// The pieces of the kind that it moves, by their reference stickers.
        moved: Vec<Sticker>,
    },
    /// It exchanges two pieces, but the buffer is not on them.
    #[error("the algorithm does not move the buffer")]
    BufferNotMoved {
        /// The buffer.
        buffer: Sticker,
        /// The two pieces that it exchanges, by their reference stickers.
        moved: [Sticker; 2],
        /// The same algorithm for a cube held another way, which does move the buffer.
        instead: Box<Algorithm>,
    },
    /// Made twice it does not give back the state, so that letters could not be counted by odd and even alone.
    #[error("the algorithm made twice does not undo itself")]
    NotItsOwnInverse,
    /// It leaves the centres, and so the whole cube, turned.
    #[error("the algorithm leaves the cube turned")]
    TurnsTheCube,
    /// It leaves centres of a kind on other faces.
    #[error("the algorithm leaves {0}s on other faces")]
    MovesCentres(Orbit),
    /// It claims to exchange the buffer with another sticker than it does.
    #[error("the algorithm exchanges the buffer with another sticker than the one named")]
    OtherTarget {
        /// What was named.
        named: Sticker,
        /// What is right.
        actual: Sticker,
    },
}

/// What an algorithm does to one kind and to the rest of the cube, computed from its moves.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SwapEffect {
    orbit: Orbit,
    algorithm: Algorithm,
    effect: State,
    buffer: Sticker,
    target: Sticker,
    others: Vec<(Orbit, Sticker)>,
}

/// Pieces of a kind that a state moves or turns, by their reference stickers.
pub fn moved_pieces(state: &State, orbit: Orbit) -> Vec<Sticker> {
    orbit
        .all_pieces()
        .map(|piece| orbit.reference(piece))
        .filter(|&sticker| state.at(orbit, sticker) != sticker)
        .collect()
}

impl SwapEffect {
    /// Computes what an algorithm does and checks that it is the swap of a kind with this buffer.
    ///
    /// # Errors
    /// [`SwapError`] with what it does instead.
    ///
    /// ```
    /// use blind::SwapEffect;
    /// use cube::{Algorithm, Orbit, Size};
    /// // Common practice, no source.
    /// let written = "R U' R' U' R U R' F' R U R' U' R' F R";
    /// let algorithm = Algorithm::parse(written, Size::THREE).unwrap();
    /// let buffer = Orbit::Corner.sticker("LUB").unwrap();
    /// let swap = SwapEffect::of(algorithm, Orbit::Corner, buffer).unwrap();
    /// assert_eq!(Orbit::Corner.name(swap.target()), "DFR");
    /// ```
    pub fn of(algorithm: Algorithm, orbit: Orbit, buffer: Sticker) -> Result<Self, SwapError> {
        let size = algorithm.size();
        let effect = State::solved(size).after(&algorithm.flatten());
        if effect.core() != Rotation::NONE {
            return Err(SwapError::TurnsTheCube);
        }
        let moved = moved_pieces(&effect, orbit);
        let &[first, second] = moved.as_slice() else { return Err(SwapError::NotASwap { moved }) };
        let perm = effect.orbit(orbit);
        if orbit.same_piece(perm.at(first), first) || perm.at(perm.at(first)) != first {
            return Err(SwapError::NotASwap { moved });
        }
        if !orbit.same_piece(buffer, first) && !orbit.same_piece(buffer, second) {
            let instead = Rotation::all()
                .find(|&rotation| State::held(size, rotation).orbit(orbit).at(buffer) == first)
                .map_or(algorithm.clone(), |rotation| algorithm.rotated(rotation));
            return Err(SwapError::BufferNotMoved {
                buffer,
                moved: [first, second],
                instead: Box::new(instead),
            });
        }
        if !effect.then(&effect).is_solved() {
            return Err(SwapError::NotItsOwnInverse);
        }
        let target = perm.at(buffer);
        let kinds = Orbit::of(size).iter();
        // Centres that change places within their faces look as before, and nothing has to be kept from them.
        if let Some(&moved) =
            kinds.clone().find(|other| other.looks_alike() && !is_right(**other, effect.orbit(**other)))
        {
            return Err(SwapError::MovesCentres(moved));
        }
        let others = kinds
            .filter(|&&other| other != orbit && !other.looks_alike())
            .flat_map(|&other| moved_pieces(&effect, other).into_iter().map(move |sticker| (other, sticker)))
            .collect();
        Ok(Self { orbit, algorithm, effect, buffer, target, others })
    }

    /// The kind of piece.
    pub const fn orbit(&self) -> Orbit {
        self.orbit
    }

    /// The algorithm as it was written.
    pub const fn algorithm(&self) -> &Algorithm {
        &self.algorithm
    }

    /// The size of the cube.
    pub const fn size(&self) -> Size {
        self.algorithm.size()
    }

    /// What it does to the whole cube.
    pub const fn effect(&self) -> &State {
        &self.effect
    }

    /// The buffer.
    pub const fn buffer(&self) -> Sticker {
        self.buffer
    }

    /// The sticker that the buffer's is exchanged with.
    pub const fn target(&self) -> Sticker {
        self.target
    }

    /// Pieces of other kinds that it moves as well, by their reference stickers.
    pub fn others(&self) -> &[(Orbit, Sticker)] {
        &self.others
    }

    /// What a set-up must leave alone, one sticker of each piece: the buffer first, then the other kinds' pieces.
    pub fn left_alone(&self) -> Vec<(Orbit, Sticker)> {
        std::iter::once((self.orbit, self.buffer)).chain(self.others.iter().copied()).collect()
    }
}

/// A swap with its set-up moves, ready to carry out letters.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Swap {
    effect: SwapEffect,
    turns: Vec<Turn>,
    setups: Setups,
}

/// The turns that set-ups of a kind are made of. Where wings lie beside the edges, what turns more than a face or the middle layer
/// only moves more of what is to stay.
fn turns_for(size: Size, orbit: Orbit) -> Vec<Turn> {
    let has_wings = Orbit::of(size).iter().any(|orbit| orbit.is_edge() && orbit.stickers_per_piece() == 1);
    if !has_wings {
        return usual_turns(size);
    }
    let slices = Slice::ALL.into_iter().flat_map(|slice| Turn::of(Block::Slice(slice)));
    let slices = slices.filter(|turn| orbit == Orbit::Midge && turn.check(size).is_ok());
    Turn::faces().chain(slices).collect()
}

impl Swap {
    /// Finds the set-up moves of a swap by search.
    ///
    /// # Errors
    /// [`NotProven`] when a set-up that was found does something else.
    pub fn new(effect: SwapEffect) -> Result<Self, NotProven> {
        let turns = turns_for(effect.size(), effect.orbit);
        Self::with_turns(effect, &turns)
    }

    /// Finds the set-up moves of a swap among these turns only.
    ///
    /// # Errors
    /// [`NotProven`] when a set-up that was found does something else.
    pub fn with_turns(effect: SwapEffect, turns: &[Turn]) -> Result<Self, NotProven> {
        let swap = effect.algorithm.flatten();
        let wanted = Wanted {
            size: effect.size(),
            orbit: effect.orbit,
            to: effect.target,
            leave: &effect.left_alone(),
            turns,
        };
        let has_centres = Orbit::of(effect.size()).iter().any(|orbit| orbit.looks_alike());
        // A set-up may bring centres of other faces to where the algorithm moves some about.
        let leaves_centres = |setup: &[Turn]| {
            let turns = [setup, swap.as_slice(), &cube::inverted(setup)].concat();
            let state = State::solved(effect.size()).after(&turns);
            let centres = Orbit::of(effect.size()).iter().filter(|orbit| orbit.looks_alike());
            centres.into_iter().all(|&orbit| is_right(orbit, state.orbit(orbit)))
        };
        let setups = setups_where(&wanted, LONGEST_SETUP, &|setup| !has_centres || leaves_centres(setup))?;
        Ok(Self { turns: swap, effect, setups })
    }

    /// What it does.
    pub const fn effect(&self) -> &SwapEffect {
        &self.effect
    }

    /// The turns of the algorithm.
    pub fn turns(&self) -> &[Turn] {
        &self.turns
    }

    /// All shortest set-ups for a target, the easiest first; none for the buffer's own stickers.
    pub fn setups(&self, target: Sticker) -> &[Setup] {
        self.setups.of(target)
    }

    /// How many turns the set-up of each target takes, for choosing where to break a cycle; targets without one
    /// cost more than all others together.
    pub fn costs(&self) -> [u32; 24] {
        let mut costs = [1 << 16; 24];
        for sticker in Sticker::all() {
            if let Some(best) = self.setups(sticker).first() {
                costs[sticker.index()] = best.turns().len() as u32;
            }
        }
        costs
    }
}
