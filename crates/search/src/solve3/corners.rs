//! How far the corners alone are from home: 3 MB, made only where an optimum is asked for.

use super::coordinates::{TURNS, TWISTS, Turned};
use super::symmetry::{Folded, FoldedPairs, Seen, WAYS, Ways, numbers_seen};
use crate::solve::distances::Distances;
use crate::solve::rank::{order_rank, orders, turning_rank};
use cube::Corners;

/// Corners seen in the way in which their order is the first of its class.
#[derive(Clone, Copy)]
pub struct CornersSeen {
    order: Seen,
    twist: u16,
}

/// What is looked up.
pub struct CornerTable {
    ways: Ways<TURNS, WAYS>,
    orders: Folded<TURNS, WAYS>,
    twists: Vec<[u16; TURNS]>,
    twists_seen: Vec<[u16; WAYS]>,
    distances: Distances,
}

impl CornerTable {
    /// From the model.
    pub fn make(turned: &Turned) -> Self {
        let ways = Ways::new(&turned.turns);
        let all: Vec<[u8; 8]> = orders::<8>().collect();
        let places = std::array::from_fn(Turned::corners_seen);
        let every = std::array::from_fn(|turn| turn);
        let orders = Folded::of_orders(&ways, &all, &places, &turned.corner_pulls(&every));
        let twists = turned.twists();
        let twists_seen = numbers_seen(&twists, twist(&Corners::HOME), &ways);
        let distances = {
            let pairs = FoldedPairs { folded: &orders, second: &twists, seen: &twists_seen };
            let home = pairs.number(order(&Corners::HOME), twist(&Corners::HOME));
            Distances::new(&pairs, [home])
        };
        Self { ways, orders, twists, twists_seen, distances }
    }

    /// What the table sees of corners.
    pub fn at(&self, corners: &Corners) -> CornersSeen {
        let order = self.orders.class(order(corners));
        CornersSeen { order, twist: self.twists_seen[twist(corners) as usize][order.way::<WAYS>()] }
    }

    /// What a turn makes of it.
    #[inline]
    pub fn after(&self, at: CornersSeen, turn: usize) -> CornersSeen {
        let seen = self.ways.seen[at.order.way::<WAYS>()][turn] as usize;
        let next = self.orders.after(at.order.class::<WAYS>(), seen);
        let twist = self.twists[at.twist as usize][seen];
        CornersSeen {
            order: next.after_way(at.order, &self.ways),
            twist: self.twists_seen[twist as usize][next.way::<WAYS>()],
        }
    }

    /// How many turns it takes at least to bring the corners home.
    #[inline]
    pub fn least(&self, at: CornersSeen) -> u8 {
        self.distances.get(at.order.class::<WAYS>() * TWISTS + at.twist as usize)
    }
}

fn order(corners: &Corners) -> u16 {
    order_rank(*corners.pieces()) as u16
}

fn twist(corners: &Corners) -> u16 {
    turning_rank::<8, 3>(*corners.turned())
}
