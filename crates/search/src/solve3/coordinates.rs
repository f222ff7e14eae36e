//! A 3x3 as a few numbers, and what turns do to them.
//!
//! The subgroup in between is made by all turns of U and D and half turns of the other faces. A state is in it when no corner
//! is twisted and no edge flipped against its reference sticker, and the four edges between the U and D layers are there.

use crate::solve::rank::{order_rank, orders, turning_rank, turnings};
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

/// The orders of eight and of four things.
const ORDERS_OF_EIGHT: usize = 40_320;
const ORDERS_OF_FOUR: usize = 24;

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
    pub inner: [usize; INNER_TURNS],
    /// The places of the edges in the U and D layers, then those of the four between.
    layered: [u8; 12],
    slices: Subsets,
}

/// What the first phase looks at.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Outer {
    /// The twists of the corners.
    pub twist: u16,
    /// The flips of the edges.
    pub flip: u16,
    /// Where the edges of the middle layer lie.
    pub slice: u16,
}

/// What the second phase looks at.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Inner {
    /// The order of the corners.
    pub corners: u16,
    /// The order of the edges of the U and D layers.
    pub edges: u16,
    /// The order of the four edges between.
    pub slice: u16,
}

/// The pieces at each place, without their turning.
#[derive(Clone, Copy)]
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
        let inner = std::array::from_fn(|_| inner.next().unwrap_or_default());
        let between = |place: u8| {
            let sticker =
                Orbit::Midge.all_pieces().nth(place as usize).map(|piece| Orbit::Midge.reference(piece));
            sticker.is_some_and(|sticker| !Orbit::Midge.faces(sticker).iter().any(|&face| upright(face)))
        };
        let mut layered: [u8; 12] = std::array::from_fn(|place| place as u8);
        layered.sort_by_key(|&place| between(place));
        Self { turns, effects, inner, layered, slices: Subsets::new(12, 4) }
    }

    /// What the first phase sees of a state.
    pub fn outer(&self, corners: &Corners, midges: &Midges) -> Outer {
        let slice = (8..12).fold(0, |set, number| {
            let piece = self.layered[number];
            let place = midges.pieces().iter().position(|&at| at == piece).unwrap_or_default();
            set | 1 << place
        });
        Outer {
            twist: turning_rank::<8, 3>(*corners.turned()),
            flip: turning_rank::<12, 2>(*midges.turned()),
            slice: self.slices.rank(slice) as u16,
        }
    }

    /// What the second phase sees of pieces that are in the subgroup.
    pub fn inner_of(&self, order: &Order) -> Inner {
        // Which place of its layer a piece belongs to.
        let mut number = [0; 12];
        for (at, &place) in self.layered.iter().enumerate() {
            number[place as usize] = at as u8;
        }
        let lies = |at: usize| number[order.midges[self.layered[at] as usize] as usize];
        Inner {
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

    /// What the turns of the subgroup make of each order of the corners.
    pub fn corner_orders(&self) -> Vec<[u16; INNER_TURNS]> {
        let rows: Vec<_> = orders::<8>()
            .map(|order| {
                self.inner.map(|turn| {
                    let from = self.effects[turn].corners.pieces();
                    order_rank(from.map(|from| order[from as usize])) as u16
                })
            })
            .collect();
        debug_assert_eq!(rows.len(), ORDERS_OF_EIGHT);
        rows
    }

    /// What the turns of the subgroup make of each order of the edges of the U and D layers.
    pub fn edge_orders(&self) -> Vec<[u16; INNER_TURNS]> {
        let pulls = self.pulls::<8>(0);
        orders::<8>()
            .map(|order| pulls.map(|pull| order_rank(pull.map(|from| order[from as usize])) as u16))
            .collect()
    }

    /// What the turns of the subgroup make of each order of the four edges between.
    pub fn slice_orders(&self) -> Vec<[u16; INNER_TURNS]> {
        let pulls = self.pulls::<4>(8);
        let rows: Vec<_> = orders::<4>()
            .map(|order| pulls.map(|pull| order_rank(pull.map(|from| order[from as usize])) as u16))
            .collect();
        debug_assert_eq!(rows.len(), ORDERS_OF_FOUR);
        rows
    }

    /// For each turn of the subgroup, from where each place of a layer, the first of which is `first`, takes its edge.
    fn pulls<const N: usize>(&self, first: usize) -> [[u8; N]; INNER_TURNS] {
        let mut number = [0; 12];
        for (at, &place) in self.layered.iter().enumerate() {
            number[place as usize] = at as u8;
        }
        self.inner.map(|turn| {
            let from = self.effects[turn].midges.pieces();
            std::array::from_fn(|at| number[from[self.layered[first + at] as usize] as usize] - first as u8)
        })
    }
}
