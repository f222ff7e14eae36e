//! What the second phase looks up, made from the model at the first call.

use super::coordinates::{INNER_TURNS, InnerNumbers, SIZE, TURNS, Turned};
use super::nearer::Nearer;
use super::symmetry::{Folded, FoldedPairs, Seen, WAYS, Ways, numbers_seen, pulled};
use crate::solve::rank::{order_rank, orders};
use crate::solve::succession::{Choices, Succession};
use cube::{Amount, Turn};

/// What the second phase sees of a state: both kinds of pieces each in the way in which they are the first of their class.
#[derive(Clone, Copy)]
pub struct Inner {
    corners: Seen,
    edges: Seen,
    slice: u8,
}

/// All tables. Turns are told by their places among those of the subgroup.
pub struct Inside {
    ways: Ways<INNER_TURNS, WAYS>,
    /// Sets of turns as they are seen in each way, told as they are.
    shown: Vec<[u16; 1 << INNER_TURNS]>,
    succession: Succession,
    /// For each face turn the half turn of its face.
    half_turns: [usize; TURNS],
    corners: Folded<INNER_TURNS, WAYS>,
    edges: Folded<INNER_TURNS, WAYS>,
    slices: Vec<[u16; INNER_TURNS]>,
    slices_seen: Vec<[u16; WAYS]>,
    corners_slice: Nearer<INNER_TURNS, 3>,
    edges_slice: Nearer<INNER_TURNS, 3>,
    home: (usize, usize, u8),
}

impl Inside {
    /// From the model.
    pub fn make(turned: &Turned, home: InnerNumbers) -> Self {
        let turns = turned.inner_turns.map(|turn| turned.turns[turn]);
        let ways = Ways::new(&turns);
        let all: Vec<[u8; 8]> = orders::<8>().collect();
        let corners = Folded::of_orders(
            &ways,
            &all,
            &std::array::from_fn(Turned::corners_seen),
            &turned.corner_pulls(&turned.inner_turns),
        );
        let edges = Folded::of_orders(
            &ways,
            &all,
            &std::array::from_fn(|way| turned.edges_seen(way).0),
            &turned.edge_pulls(0),
        );
        let slice_pulls = turned.edge_pulls::<4>(8);
        let slices: Vec<[u16; INNER_TURNS]> = orders::<4>()
            .map(|order| slice_pulls.map(|pull| order_rank(pulled(&order, pull)) as u16))
            .collect();
        let slices_seen = numbers_seen(&slices, home.slice, &ways);
        let nearer = |folded: &_, first: u16| {
            let pairs = FoldedPairs { folded, second: &slices, seen: &slices_seen };
            Nearer::new(&pairs, (first, home.slice))
        };
        let (corners_slice, edges_slice) = (nearer(&corners, home.corners), nearer(&edges, home.edges));
        let shown = ways
            .shown
            .iter()
            .map(|shown| {
                std::array::from_fn(|set| {
                    Choices::of(set as u32).fold(0, |bits, turn| bits | 1 << shown[turn])
                })
            })
            .collect();
        let half_turns = std::array::from_fn(|turn| {
            let half = Turn::new(turned.turns[turn].block, Amount::Half);
            turns.iter().position(|&turn| turn == half).unwrap_or_default()
        });
        let at_home = (
            corners.class(home.corners).class::<WAYS>(),
            edges.class(home.edges).class::<WAYS>(),
            home.slice as u8,
        );
        Self {
            shown,
            succession: Succession::new(&turns, SIZE),
            half_turns,
            corners,
            edges,
            slices,
            slices_seen,
            corners_slice,
            edges_slice,
            home: at_home,
            ways,
        }
    }

    /// What the second phase sees of the numbers of a state.
    pub fn at(&self, numbers: InnerNumbers) -> Inner {
        Inner {
            corners: self.corners.class(numbers.corners),
            edges: self.edges.class(numbers.edges),
            slice: numbers.slice as u8,
        }
    }

    #[inline]
    fn pair(&self, first: Seen, slice: u8) -> usize {
        let seen = self.slices_seen[slice as usize][first.way::<WAYS>()];
        first.class::<WAYS>() * self.slices.len() + seen as usize
    }

    /// How many turns of the subgroup it takes at least to solve.
    pub fn least(&self, at: Inner) -> u8 {
        let corners = self.corners_slice.distance(self.pair(at.corners, at.slice));
        corners.max(self.edges_slice.distance(self.pair(at.edges, at.slice)))
    }

    /// Those turns that may follow the last, after which at most so many more may solve.
    #[inline]
    pub fn choices(&self, at: Inner, left: u8, last: Option<usize>) -> Choices {
        let shown = |first: Seen, seen: u32| u32::from(self.shown[first.way::<WAYS>()][seen as usize]);
        let corners = self.corners_slice.turns(self.pair(at.corners, at.slice), left);
        let edges = self.edges_slice.turns(self.pair(at.edges, at.slice), left);
        self.succession.next(last).among(shown(at.corners, corners) & shown(at.edges, edges))
    }

    /// What a turn makes of it.
    #[inline]
    pub fn after(&self, at: Inner, turn: usize) -> Inner {
        let next = |folded: &Folded<INNER_TURNS, WAYS>, first: Seen| {
            let seen = self.ways.seen[first.way::<WAYS>()][turn];
            folded.after(first.class::<WAYS>(), seen as usize).after_way(first, &self.ways)
        };
        Inner {
            corners: next(&self.corners, at.corners),
            edges: next(&self.edges, at.edges),
            slice: self.slices[at.slice as usize][turn] as u8,
        }
    }

    /// The half turn of the face of a turn, which is told by its place among all face turns.
    pub fn half_turn(&self, turn: usize) -> usize {
        self.half_turns[turn]
    }

    /// Whether all is solved: what is home is so in each way.
    #[inline]
    pub fn is_home(&self, at: Inner) -> bool {
        (at.corners.class::<WAYS>(), at.edges.class::<WAYS>(), at.slice) == self.home
    }
}
