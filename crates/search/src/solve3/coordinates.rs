//! A 3x3 as a few numbers, and what turns do to them.
//!
//! The subgroup in between is made by all turns of U and D and half turns of the other faces. A state is in it when no corner
//! is twisted and no edge flipped against its reference sticker, and the four edges between the U and D layers are there.

use super::symmetry::face_seen;
use crate::solve::rank::{order_rank, turning_rank, turnings};
use crate::solve::subsets::{Subsets, all};
use cube::{Amount, Corners, Face, Midges, Orbit, Size, State, Turn};

/// The size whose corners and edges these are.
pub const SIZE: Size = Size::THREE;

/// How many face turns there are.
pub const TURNS: usize = 18;
/// How many of them lie in the subgroup.
pub const INNER_TURNS: usize = 10;

/// What twists of the corners there are.
pub const TWISTS: usize = 2_187;
/// What flips of the edges there are.
pub const FLIPS: usize = 2_048;

/// A face turn as its effect on pieces: what lies at each place came from `from` and was turned by `turned`.
struct Effect {
    corners: Corners,
    midges: Midges,
}

/// What all turns do, and the numbering of edges by layer.
pub struct Turned {
    /// The turns themselves.
    pub turns: [Turn; TURNS],
    effects: Vec<Effect>,
    /// Which of them lie in the subgroup, as places in the list.
    pub inner_turns: [usize; INNER_TURNS],
    /// The places of the edges in the U and D layers, then those of the four between.
    layered: [u8; 12],
    /// At which place of that list each place of an edge stands.
    number: [u8; 12],
    slices: Subsets,
}

/// What the first phase looks at, as numbers.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct OuterNumbers {
    /// The twists of the corners.
    pub twist: u16,
    /// The flips of the edges.
    pub flip: u16,
    /// Where the edges of the middle layer lie.
    pub slice: u16,
}

/// What the second phase looks at, as numbers.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct InnerNumbers {
    /// The order of the corners.
    pub corners: u16,
    /// The order of the edges of the U and D layers.
    pub edges: u16,
    /// The order of the four edges between.
    pub slice: u16,
}

/// The pieces at each place, without their turning.
#[derive(Clone, Copy, PartialEq, Eq)]
pub struct Order {
    /// The corners.
    pub corners: [u8; 8],
    /// The edges.
    pub midges: [u8; 12],
}

impl Turned {
    /// From the model.
    pub fn make() -> Self {
        let mut all = Turn::faces();
        let turns: [Turn; TURNS] =
            std::array::from_fn(|_| all.next().unwrap_or(Turn::face(Face::U, Amount::Half)));
        let effects = turns
            .iter()
            .map(|&turn| {
                let state = State::solved(SIZE).after(&[turn]);
                Effect { corners: state.corners(), midges: state.midges() }
            })
            .collect();
        let upright = |face: Face| matches!(face, Face::U | Face::D);
        let mut inner =
            (0..TURNS).filter(|&at| upright(turns[at].block.follows()) || turns[at].amount == Amount::Half);
        let inner_turns = std::array::from_fn(|_| inner.next().unwrap_or_default());
        let between = |place: u8| {
            let sticker =
                Orbit::Midge.all_pieces().nth(place as usize).map(|piece| Orbit::Midge.reference(piece));
            sticker.is_some_and(|sticker| !Orbit::Midge.faces(sticker).iter().any(|&face| upright(face)))
        };
        let mut layered: [u8; 12] = std::array::from_fn(|place| place as u8);
        layered.sort_by_key(|&place| between(place));
        let mut number = [0; 12];
        for (at, &place) in layered.iter().enumerate() {
            number[place as usize] = at as u8;
        }
        Self { turns, effects, inner_turns, layered, number, slices: Subsets::new(12, 4) }
    }

    /// What the first phase sees of a state.
    pub fn outer(&self, corners: &Corners, midges: &Midges) -> OuterNumbers {
        let slice = (8..12).fold(0, |set, number| {
            let piece = self.layered[number];
            let place = midges.pieces().iter().position(|&at| at == piece).unwrap_or_default();
            set | 1 << place
        });
        OuterNumbers {
            twist: turning_rank::<8, 3>(*corners.turned()),
            flip: turning_rank::<12, 2>(*midges.turned()),
            slice: self.slices.rank(slice) as u16,
        }
    }

    /// What the second phase sees of pieces that are in the subgroup.
    pub fn inner(&self, order: &Order) -> InnerNumbers {
        let lies = |at: usize| self.number[order.midges[self.layered[at] as usize] as usize];
        InnerNumbers {
            corners: order_rank(order.corners) as u16,
            edges: order_rank::<8>(std::array::from_fn(lies)) as u16,
            slice: order_rank::<4>(std::array::from_fn(|at| lies(at + 8) - 8)) as u16,
        }
    }

    /// The pieces after a turn.
    pub fn order_after(&self, order: &Order, turn: usize) -> Order {
        let effect = &self.effects[turn];
        Order {
            corners: effect.corners.pieces().map(|from| order.corners[from as usize]),
            midges: effect.midges.pieces().map(|from| order.midges[from as usize]),
        }
    }

    /// What the turns make of each twist.
    pub fn twists(&self) -> Vec<[u16; TURNS]> {
        let after = |twists: [u8; 8], effect: &Effect| {
            let (from, turned) = (effect.corners.pieces(), effect.corners.turned());
            turning_rank::<8, 3>(std::array::from_fn(|place| {
                (twists[from[place] as usize] + turned[place]) % 3
            }))
        };
        let row = |rank| {
            let twists = turnings::<8, 3>(rank);
            std::array::from_fn(|turn| after(twists, &self.effects[turn]))
        };
        (0..TWISTS).map(row).collect()
    }

    /// What the turns make of each flip.
    pub fn flips(&self) -> Vec<[u16; TURNS]> {
        let after = |flips: [u8; 12], effect: &Effect| {
            let (from, turned) = (effect.midges.pieces(), effect.midges.turned());
            turning_rank::<12, 2>(std::array::from_fn(|place| {
                (flips[from[place] as usize] + turned[place]) % 2
            }))
        };
        let row = |rank| {
            let flips = turnings::<12, 2>(rank);
            std::array::from_fn(|turn| after(flips, &self.effects[turn]))
        };
        (0..FLIPS).map(row).collect()
    }

    /// What the turns make of each set of places of the middle edges.
    pub fn slices(&self) -> Vec<[u16; TURNS]> {
        let row = |set: u32| {
            std::array::from_fn(|turn| {
                let from = self.effects[turn].midges.pieces();
                let moved = (0..12).fold(0, |moved, place| moved | (set >> from[place] & 1) << place);
                self.slices.rank(moved) as u16
            })
        };
        all(12, 4).map(row).collect()
    }

    /// Where each place of a corner is seen in a way.
    pub fn corners_seen(way: usize) -> [u8; 8] {
        places_seen(Orbit::Corner, way)
    }

    /// Where each place of an edge is seen in a way, both by their places in the list by layers: those of the U and D layers, and
    /// those between.
    pub fn edges_seen(&self, way: usize) -> ([u8; 8], [u8; 4]) {
        let seen = places_seen::<12>(Orbit::Midge, way);
        let listed = |at: usize| self.number[seen[self.layered[at] as usize] as usize];
        (std::array::from_fn(listed), std::array::from_fn(|at| listed(at + 8) - 8))
    }

    /// For each of some turns, from where each place takes its corner.
    pub fn corner_pulls<const N: usize>(&self, turns: &[usize; N]) -> [[u8; 8]; N] {
        turns.map(|turn| *self.effects[turn].corners.pieces())
    }

    /// For each turn of the subgroup, from where each place of a layer, the first of which is `first` in the list, takes its edge.
    pub fn edge_pulls<const N: usize>(&self, first: usize) -> [[u8; N]; INNER_TURNS] {
        self.inner_turns.map(|turn| {
            let from = self.effects[turn].midges.pieces();
            std::array::from_fn(|at| {
                self.number[from[self.layered[first + at] as usize] as usize] - first as u8
            })
        })
    }
}

/// Where each place of a kind of piece is seen in a way.
fn places_seen<const N: usize>(orbit: Orbit, way: usize) -> [u8; N] {
    let faces = |place: usize| {
        let sticker = orbit.all_pieces().nth(place).map(|piece| orbit.reference(piece));
        sticker.map_or(&[] as &[Face], |sticker| orbit.faces(sticker))
    };
    std::array::from_fn(|from| {
        let is_there = |&to: &usize| {
            let seen = |&face: &Face| faces(to).contains(&face_seen(face, way));
            faces(from).iter().all(seen)
        };
        (0..N).find(is_there).unwrap_or_default() as u8
    })
}
