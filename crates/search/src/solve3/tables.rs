//! What the two phases look up: 2.5 MB, made from the model at the first call.

use super::coordinates::{FLIPS, INNER_TURNS, Inner, Order, Outer, SIZE, TURNS, TWISTS, Turned};
use super::symmetry::{Folded, FoldedPairs, MIRRORS, WAYS, numbers_seen, turns_seen};
use crate::solve::distances::Distances;
use crate::solve::succession::{Choices, Succession};
use cube::{Amount, Corners, Midges, Turn};
use std::sync::LazyLock;

/// All tables.
pub struct Tables {
    /// What turns do to pieces.
    pub turned: Turned,
    /// Which face turn may follow which.
    pub succession: Succession,
    /// Which turn of the subgroup may follow which, by their places among those.
    pub inner_succession: Succession,
    /// The turns that lie in the subgroup, as bits.
    pub inner_turns: u32,
    /// For each turn the half turn of its face, by its place among the turns of the subgroup.
    pub half_turn: [usize; TURNS],
    twists: Vec<[u16; TURNS]>,
    flips: Vec<[u16; TURNS]>,
    slices: Vec<[u16; TURNS]>,
    corner_orders: Vec<[u16; INNER_TURNS]>,
    edge_orders: Vec<[u16; INNER_TURNS]>,
    slice_orders: Vec<[u16; INNER_TURNS]>,
    twists_seen: Vec<[u16; MIRRORS]>,
    flips_seen: Vec<[u16; MIRRORS]>,
    slice_orders_seen: Vec<[u16; WAYS]>,
    folded_slices: Folded<MIRRORS>,
    folded_corners: Folded<WAYS>,
    folded_edges: Folded<WAYS>,
    slice_twist: Distances,
    slice_flip: Distances,
    corners_slice: Distances,
    edges_slice: Distances,
    home: Inner,
}

/// How many orders of the four edges there are.
const SLICE_ORDERS: usize = 24;

static TABLES: LazyLock<Tables> = LazyLock::new(Tables::make);

impl Tables {
    /// The tables, made once.
    pub fn get() -> &'static Self {
        &TABLES
    }

    fn make() -> Self {
        let turned = Turned::make();
        let (twists, flips, slices) = (turned.twists(), turned.flips(), turned.slices());
        let (corner_orders, edge_orders, slice_orders) =
            (turned.corner_orders(), turned.edge_orders(), turned.slice_orders());
        let goal = turned.outer(&Corners::HOME, &Midges::HOME);
        let inside = turned.inner_of(&Order::of(&Corners::HOME, &Midges::HOME));
        let seen = turns_seen(&turned.turns);
        let mirrored: [_; MIRRORS] = std::array::from_fn(|way| seen[way]);
        let (twists_seen, flips_seen) =
            (numbers_seen(&twists, goal.twist, &mirrored), numbers_seen(&flips, goal.flip, &mirrored));
        let folded_slices = Folded::new(&numbers_seen(&slices, goal.slice, &mirrored));
        let outer = |second: &[[u16; TURNS]], seen: &[[u16; MIRRORS]], goal_second: u16| {
            let pairs = FoldedPairs { first: &slices, folded: &folded_slices, second, seen };
            pairs.distances((goal.slice, goal_second))
        };
        let slice_twist = outer(&twists, &twists_seen, goal.twist);
        let slice_flip = outer(&flips, &flips_seen, goal.flip);
        let inner_seen = turns_seen(&turned.inner.map(|turn| turned.turns[turn]));
        let slice_orders_seen = numbers_seen(&slice_orders, inside.slice, &inner_seen);
        let inner = |first: &[[u16; INNER_TURNS]], goal_first: u16| {
            let folded = Folded::new(&numbers_seen(first, goal_first, &inner_seen));
            let pairs =
                FoldedPairs { first, folded: &folded, second: &slice_orders, seen: &slice_orders_seen };
            let found = pairs.distances((goal_first, inside.slice));
            (folded, found)
        };
        let (folded_corners, corners_slice) = inner(&corner_orders, inside.corners);
        let (folded_edges, edges_slice) = inner(&edge_orders, inside.edges);
        let half_turn = std::array::from_fn(|turn| {
            let half =
                |&inner: &usize| turned.turns[inner] == Turn::new(turned.turns[turn].block, Amount::Half);
            turned.inner.iter().position(half).unwrap_or_default()
        });
        Self {
            succession: Succession::new(&turned.turns, SIZE),
            inner_succession: Succession::new(&turned.inner.map(|turn| turned.turns[turn]), SIZE),
            inner_turns: turned.inner.iter().fold(0, |bits, &turn| bits | 1 << turn),
            half_turn,
            twists_seen,
            flips_seen,
            slice_orders_seen,
            folded_slices,
            folded_corners,
            folded_edges,
            slice_twist,
            slice_flip,
            corners_slice,
            edges_slice,
            home: inside,
            turned,
            twists,
            flips,
            slices,
            corner_orders,
            edge_orders,
            slice_orders,
        }
    }

    /// What a turn makes of what the first phase sees.
    pub fn outer_after(&self, at: Outer, turn: usize) -> Outer {
        Outer {
            twist: self.twists[at.twist as usize][turn],
            flip: self.flips[at.flip as usize][turn],
            slice: self.slices[at.slice as usize][turn],
        }
    }

    /// Those turns after which at most so many more may lead into the subgroup.
    pub fn outer_nearer(&self, at: Outer, left: u8, among: Choices) -> Choices {
        let (twists, flips) = (&self.twists[at.twist as usize], &self.flips[at.flip as usize]);
        let slices = &self.slices[at.slice as usize];
        among.only(|turn| {
            let (class, way) = self.folded_slices.class(slices[turn]);
            self.twist_least(class, way, twists[turn]) <= left
                && self.flip_least(class, way, flips[turn]) <= left
        })
    }

    /// How many turns it takes at least into the subgroup.
    pub fn outer_least(&self, at: Outer) -> u8 {
        let (class, way) = self.folded_slices.class(at.slice);
        self.twist_least(class, way, at.twist).max(self.flip_least(class, way, at.flip))
    }

    fn twist_least(&self, class: usize, way: usize, twist: u16) -> u8 {
        self.slice_twist.get(class * TWISTS + self.twists_seen[twist as usize][way] as usize)
    }

    fn flip_least(&self, class: usize, way: usize, flip: u16) -> u8 {
        self.slice_flip.get(class * FLIPS + self.flips_seen[flip as usize][way] as usize)
    }

    /// What a turn of the subgroup, by its place among those, makes of what the second phase sees.
    pub fn inner_after(&self, at: Inner, turn: usize) -> Inner {
        Inner {
            corners: self.corner_orders[at.corners as usize][turn],
            edges: self.edge_orders[at.edges as usize][turn],
            slice: self.slice_orders[at.slice as usize][turn],
        }
    }

    /// Those turns of the subgroup, by their places among them, after which at most so many more may solve.
    pub fn inner_nearer(&self, at: Inner, left: u8, among: Choices) -> Choices {
        let (corners, edges) =
            (&self.corner_orders[at.corners as usize], &self.edge_orders[at.edges as usize]);
        let slices = &self.slice_orders[at.slice as usize];
        among.only(|turn| {
            let slice = &self.slice_orders_seen[slices[turn] as usize];
            least(&self.folded_corners, &self.corners_slice, corners[turn], slice) <= left
                && least(&self.folded_edges, &self.edges_slice, edges[turn], slice) <= left
        })
    }

    /// How many turns of the subgroup it takes at least to solve.
    pub fn inner_least(&self, at: Inner) -> u8 {
        let slice = &self.slice_orders_seen[at.slice as usize];
        least(&self.folded_corners, &self.corners_slice, at.corners, slice).max(least(
            &self.folded_edges,
            &self.edges_slice,
            at.edges,
            slice,
        ))
    }

    /// Whether all is solved.
    pub fn is_home(&self, at: Inner) -> bool {
        at == self.home
    }
}

/// How far an order is from home together with the order of the four edges, which is told in each way.
fn least(folded: &Folded<WAYS>, distances: &Distances, order: u16, slice: &[u16; WAYS]) -> u8 {
    let (class, way) = folded.class(order);
    distances.get(class * SLICE_ORDERS + slice[way] as usize)
}
