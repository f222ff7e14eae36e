//! What the two phases look up: 4 MB, made from the model at the first call.

use super::coordinates::{INNER_TURNS, Inner, Order, Outer, SIZE, SLICES, TURNS, Turned};
use crate::solve::distances::{Distances, Pairs};
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
    twist_slice: Distances,
    flip_slice: Distances,
    corners_slice: Distances,
    edges_slice: Distances,
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
        let outer = |first: &[[u16; TURNS]], goal_first: u16| {
            let goal = goal_first as usize * SLICES + goal.slice as usize;
            Distances::new(&Pairs { first, second: &slices }, [goal])
        };
        let inner = |first: &[[u16; INNER_TURNS]], goal_first: u16| {
            let goal = goal_first as usize * SLICE_ORDERS + inside.slice as usize;
            Distances::new(&Pairs { first, second: &slice_orders }, [goal])
        };
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
            twist_slice: outer(&twists, goal.twist),
            flip_slice: outer(&flips, goal.flip),
            corners_slice: inner(&corner_orders, inside.corners),
            edges_slice: inner(&edge_orders, inside.edges),
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
    ///
    /// All are looked up in one table before any is decided on, so that the processor need not guess nor wait.
    pub fn outer_nearer(&self, at: Outer, left: u8, among: Choices) -> Choices {
        let (twists, flips) = (&self.twists[at.twist as usize], &self.flips[at.flip as usize]);
        let slices = &self.slices[at.slice as usize];
        let at = |part: u16, turn: usize| part as usize * SLICES + slices[turn] as usize;
        among.only::<TURNS>(|turn| {
            self.twist_slice.get(at(twists[turn], turn)).max(self.flip_slice.get(at(flips[turn], turn)))
                <= left
        })
    }

    /// How many turns it takes at least into the subgroup.
    pub fn outer_least(&self, at: Outer) -> u8 {
        let slice = at.slice as usize;
        let twist = self.twist_slice.get(at.twist as usize * SLICES + slice);
        twist.max(self.flip_slice.get(at.flip as usize * SLICES + slice))
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
        let at = |part: u16, turn: usize| part as usize * SLICE_ORDERS + slices[turn] as usize;
        among.only::<INNER_TURNS>(|turn| {
            self.corners_slice.get(at(corners[turn], turn)).max(self.edges_slice.get(at(edges[turn], turn)))
                <= left
        })
    }

    /// How many turns of the subgroup it takes at least to solve.
    pub fn inner_least(&self, at: Inner) -> u8 {
        let slice = at.slice as usize;
        let corners = self.corners_slice.get(at.corners as usize * SLICE_ORDERS + slice);
        corners.max(self.edges_slice.get(at.edges as usize * SLICE_ORDERS + slice))
    }
}
