//! What slips are drawn from: the solver's letters, algorithms and set-ups.

use crate::slip::Catalogue;
use blind::{Conventions, Method};
use cube::{Block, Face, Orbit, Rotation, Size, Slice, Sticker, Turn};

/// The solver's means and the catalogue.
#[derive(Clone, Debug)]
pub(crate) struct Craft<'a> {
    pub(crate) conventions: &'a Conventions,
    pub(crate) method: &'a Method,
    pub(crate) catalogue: &'a Catalogue,
    /// The algorithm of each kind and, without a kind, of parity.
    pub(crate) algorithms: Vec<(Option<Orbit>, Vec<Turn>)>,
    /// The 23 ways in which the puzzle can be turned as a whole.
    pub(crate) rotations: Vec<Rotation>,
}

impl<'a> Craft<'a> {
    pub(crate) fn new(conventions: &'a Conventions, method: &'a Method, catalogue: &'a Catalogue) -> Self {
        let kinds = Orbit::of(method.size()).iter();
        let mut algorithms: Vec<(Option<Orbit>, Vec<Turn>)> =
            kinds.filter_map(|&orbit| Some((Some(orbit), method.swap(orbit)?.turns().to_vec()))).collect();
        algorithms.extend(method.parity().map(|algorithm| (None, algorithm.flatten())));
        let rotations = Rotation::all().filter(|&rotation| rotation != Rotation::NONE).collect();
        Self { conventions, method, catalogue, algorithms, rotations }
    }

    pub(crate) const fn size(&self) -> Size {
        self.method.size()
    }

    /// The stickers of a kind that a letter may stand for: all but the buffer's piece.
    pub(crate) fn targets(&self, orbit: Orbit) -> impl Iterator<Item = Sticker> + '_ {
        let buffer = orbit.piece(self.conventions.kind(orbit).buffer);
        Sticker::all().filter(move |&sticker| orbit.piece(sticker) != buffer)
    }

    /// The shortest set-up of a target.
    pub(crate) fn setup(&self, orbit: Orbit, target: Sticker) -> &[Turn] {
        self.method
            .swap(orbit)
            .and_then(|swap| swap.setups(target).first())
            .map_or(&[], search::setup::Setup::turns)
    }

    /// The same amount of turning on the other faces, or slices.
    pub(crate) fn other_faces(turn: Turn) -> impl Iterator<Item = Turn> {
        let blocks: Vec<Block> = match turn.block {
            Block::Outer { depth, .. } => Face::ALL.map(|face| Block::Outer { face, depth }).to_vec(),
            Block::Inner { first, last, .. } => {
                Face::ALL.map(|face| Block::Inner { face, first, last }).to_vec()
            }
            Block::Slice(_) => Slice::ALL.map(Block::Slice).to_vec(),
            Block::Whole(_) => Vec::new(),
        };
        blocks
            .into_iter()
            .filter(move |&block| block != turn.block)
            .map(move |block| Turn::new(block, turn.amount))
    }

    /// One layer more for a face turn, one less for a wide turn, if the size has it.
    pub(crate) fn other_width(&self, turn: Turn) -> Option<Turn> {
        let Block::Outer { face, depth } = turn.block else { return None };
        let depth = if depth == 1 { 2 } else { depth - 1 };
        let other = Turn::new(Block::Outer { face, depth }, turn.amount);
        other.check(self.size()).is_ok().then_some(other)
    }
}
