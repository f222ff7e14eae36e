//! What slips are drawn from: the solver's letters, algorithms and set-ups.

use super::act::{Act, Acts};
use crate::slip::Catalogue;
use blind::{Conventions, Method};
use cube::{Block, Face, Group, Orbit, Rotation, Size, Slice, Sticker, Turn};

/// The solver's means and the catalogue.
#[derive(Debug)]
pub(crate) struct Craft<'a> {
    pub(crate) conventions: &'a Conventions,
    pub(crate) catalogue: &'a Catalogue,
    pub(crate) acts: Acts<'a>,
    size: Size,
    /// The algorithms of single letters and of parity, each once.
    pub(crate) algorithms: Vec<Vec<Turn>>,
    /// The 23 ways in which the puzzle can be turned as a whole.
    pub(crate) rotations: Vec<Rotation>,
}

impl<'a> Craft<'a> {
    pub(crate) fn new(
        conventions: &'a Conventions,
        method: &'a Method,
        catalogue: &'a Catalogue,
        group: &'static Group,
    ) -> Self {
        let rotations = Rotation::all().filter(|&rotation| rotation != Rotation::NONE).collect();
        let (acts, size) = (Acts::new(method, group), method.size());
        let mut craft = Self { conventions, catalogue, acts, size, algorithms: Vec::new(), rotations };
        let letters = Orbit::of(size).iter().flat_map(|&orbit| {
            let targets: Vec<Sticker> = craft.targets(orbit).collect();
            targets.into_iter().map(move |target| Act::Letter { orbit, target, second: false })
        });
        let mut algorithms: Vec<Vec<Turn>> = Vec::new();
        for act in letters.chain([Act::Parity]) {
            let laid = craft.acts.laid(act);
            let algorithm = &laid.turns[laid.ends[0]..laid.ends[1]];
            if !algorithm.is_empty() && !algorithms.iter().any(|known| known == algorithm) {
                algorithms.push(algorithm.to_vec());
            }
        }
        craft.algorithms = algorithms;
        craft
    }

    pub(crate) const fn size(&self) -> Size {
        self.size
    }

    /// The stickers of a kind that a letter may stand for: all but the buffer's piece.
    pub(crate) fn targets(&self, orbit: Orbit) -> impl Iterator<Item = Sticker> + '_ {
        let buffer = orbit.piece(self.conventions.kind(orbit).buffer);
        Sticker::all().filter(move |&sticker| orbit.piece(sticker) != buffer)
    }

    /// The set-up of a target that is carried out by itself.
    pub(crate) fn setup(&self, orbit: Orbit, target: Sticker) -> Vec<Turn> {
        let laid = self.acts.laid(Act::Letter { orbit, target, second: false });
        laid.turns[..laid.ends[0]].to_vec()
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
