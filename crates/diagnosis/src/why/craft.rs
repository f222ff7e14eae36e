//! What slips are drawn from: the solver's letters, algorithms and set-ups.

use super::act::{Act, Acts};
use crate::slip::{Catalogue, SlipKind};
use blind::{Conventions, Method};
use cube::{Block, Face, Group, Orbit, Rotation, Size, Slice, Sticker, Turn};
use rustc_hash::FxHashMap;
use std::cell::RefCell;
use std::rc::Rc;

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
    /// By letter, as far as it was asked for.
    mistaken: RefCell<FxHashMap<(Orbit, Sticker), Mistaken>>,
}

/// For what a letter is taken: by which kind of slip, what, and its share among those of the kind.
type Mistaken = Rc<[(SlipKind, Sticker, f64)]>;

impl<'a> Craft<'a> {
    pub(crate) fn new(
        conventions: &'a Conventions,
        method: &'a Method,
        catalogue: &'a Catalogue,
        group: Option<&'static Group>,
    ) -> Self {
        let rotations = Rotation::all().filter(|&rotation| rotation != Rotation::NONE).collect();
        let (acts, size) = (Acts::new(method, group), method.size());
        let (algorithms, mistaken) = (Vec::new(), RefCell::default());
        let mut craft = Self { conventions, catalogue, acts, size, algorithms, rotations, mistaken };
        let letters = Orbit::of(size).iter().flat_map(|&orbit| {
            let targets: Vec<Sticker> = craft.targets(orbit).collect();
            // Of wings and centres every letter has an algorithm of its own, and none is made for another.
            let few = targets.into_iter().filter(move |_| orbit.stickers_per_piece() > 1);
            few.map(move |target| Act::Letter { orbit, target, second: false, alone: false })
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

    /// For what a letter is taken: its neighbours in the scheme, those that sound or look like it, and any other.
    pub(crate) fn mistaken(&self, orbit: Orbit, meant: Sticker) -> Mistaken {
        if let Some(known) = self.mistaken.borrow().get(&(orbit, meant)) {
            return Rc::clone(known);
        }
        let scheme = &self.conventions.kind(orbit).letters;
        let order = scheme.order();
        let place = |sticker: Sticker| order.iter().position(|&other| other == sticker);
        let near = |other: Sticker| {
            place(meant).zip(place(other)).is_some_and(|(one, other)| one.abs_diff(other) == 1)
        };
        let alike = |other: Sticker| self.catalogue.alike(scheme.of(meant), scheme.of(other));
        let mut all = Vec::new();
        let mut others = |kind: SlipKind, counts: &dyn Fn(Sticker) -> bool| {
            let list: Vec<Sticker> =
                self.targets(orbit).filter(|&other| other != meant && counts(other)).collect();
            let share = 1.0 / list.len() as f64;
            all.extend(list.into_iter().map(|taken| (kind, taken, share)));
        };
        others(SlipKind::LetterNeighbour, &near);
        others(SlipKind::LetterAlike, &alike);
        others(SlipKind::LetterOther, &|_| true);
        let all: Mistaken = all.into();
        self.mistaken.borrow_mut().insert((orbit, meant), Rc::clone(&all));
        all
    }

    /// The set-up of a target that is carried out by itself.
    pub(crate) fn setup(&self, orbit: Orbit, target: Sticker) -> Vec<Turn> {
        let laid = self.acts.laid(Act::Letter { orbit, target, second: false, alone: false });
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
