//! The phase in which wings are paired and centres become whole: by turns of U, D, R, L and half turns of all else.
//!
//! The position is which second place holds the mate of the wing at each first place, and three patterns of four places among eight: where the
//! colours of U, L and F lie on their axes; and whether the edges would be exchanged oddly against the corners. It says nothing of
//! which edge is which: that is left to the 3x3.
//!
//! It goes in two steps: to where the turns of R and L too may be half turns only, and home from there, where a ball of positions around the
//! goal is kept and met from the other side.

use super::places::{Edges, keeps_classes};
use crate::solve::distances::{Distances, Space};
use crate::solve::kept::Kept;
use crate::solve::rank::{is_odd, order_rank};
use crate::solve::subsets::{Subsets, all};
use crate::solve::succession::{Choices, Succession};
use cube::{Amount, Block, Face, Orbit, Rotation, Size, State, Sticker, Turn};
use std::borrow::Cow;

/// How many turns of this phase there are.
const TURNS: usize = 17;
/// Patterns of four among the eight places of an axis.
const PATTERNS: usize = 70;
/// How far the ball reaches.
const RADIUS: u8 = 6;
/// The longest first step that is looked for.
pub const MOST_OUTSIDE: u8 = 5;

/// The colours by which the patterns are known, each first on its axis.
const NAMED: [Face; 3] = [Face::U, Face::L, Face::F];

/// Where centres lie on their axes, and the odd exchange.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Patterns {
    of: [u8; 3],
    odd: bool,
}

/// A position of this phase.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Position {
    /// For each edge's first place, the edge in whose second place the mate lies.
    mates: [u8; 12],
    patterns: Patterns,
}

impl Patterns {
    const COUNT: usize = PATTERNS * PATTERNS * PATTERNS * 2;

    fn index(self) -> usize {
        self.of.iter().fold(0, |index, &of| index * PATTERNS + of as usize) * 2 + usize::from(self.odd)
    }

    const fn at(index: usize) -> Self {
        let rest = index / 2;
        let of = [rest / PATTERNS / PATTERNS, rest / PATTERNS % PATTERNS, rest % PATTERNS];
        Self { of: [of[0] as u8, of[1] as u8, of[2] as u8], odd: index % 2 == 1 }
    }
}

/// What turns do to patterns.
struct Movers {
    patterns: [Vec<[u8; TURNS]>; 3],
    odd: [bool; TURNS],
}

/// Patterns under some of the turns.
struct Under<'a> {
    movers: &'a Movers,
    turns: u32,
}

impl Movers {
    fn after(&self, from: Patterns, turn: usize) -> Patterns {
        Patterns {
            of: std::array::from_fn(|axis| self.patterns[axis][from.of[axis] as usize][turn]),
            odd: from.odd != self.odd[turn],
        }
    }
}

impl Space for Under<'_> {
    fn count(&self) -> usize {
        Patterns::COUNT
    }

    fn around(&self, from: usize, mut each: impl FnMut(usize) -> bool) -> bool {
        let from = Patterns::at(from);
        let mut turns = (0..TURNS).filter(|turn| self.turns >> turn & 1 == 1);
        turns.any(|turn| each(self.movers.after(from, turn).index()))
    }
}

/// What the phase looks up.
pub struct Pairing {
    turns: Vec<Turn>,
    succession: Succession,
    movers: Movers,
    /// Of each turn: from which first place each takes its wing, and where each second place's wing goes.
    firsts: [[u8; 12]; TURNS],
    seconds: [[u8; 12]; TURNS],
    four_of_eight: Subsets,
    /// The turns of the second step, as bits.
    inner_turns: u32,
    /// The edges that do not touch U or D, as bits.
    between: u32,
    /// How far the patterns alone are from whole centres; 15 where the turns cannot make them whole: all turns, and those of the second step.
    centres: Distances,
    inner_centres: Distances,
    ball: Ball,
    goal: Position,
}

/// The eight places of the axis of a face, the face's own first, out of a set of places.
const fn on_axis(set: u32, face: Face) -> u32 {
    let (own, other) = (face as u32 * 4, face.opposite() as u32 * 4);
    (set >> own & 15) | (set >> other & 15) << 4
}

impl Pairing {
    /// From the model; what was kept is not searched for again. `told` hears how many positions are known and says whether to go on.
    pub fn make(
        size: Size,
        edges: &Edges,
        kept: &mut Option<Kept<'_>>,
        told: &mut dyn FnMut(usize) -> bool,
    ) -> Option<Self> {
        let (wing, centre) = (Orbit::of(size)[1], Orbit::of(size)[2]);
        let turns: Vec<Turn> =
            super::places::all_turns().into_iter().filter(|&turn| keeps_classes(turn)).collect();
        let effects: Vec<State> = turns.iter().map(|&turn| State::solved(size).after(&[turn])).collect();
        let four_of_eight = Subsets::new(8, 4);
        let patterns = NAMED.map(|face| {
            let carrier = super::places::Carrier::new(centre, &turns, size);
            let (own, other) = (face as u32 * 4, face.opposite() as u32 * 4);
            all(8, 4)
                .map(|pattern| {
                    let set = (pattern & 15) << own | (pattern >> 4) << other;
                    std::array::from_fn(|turn| {
                        four_of_eight.rank(on_axis(carrier.after(set, turn), face)) as u8
                    })
                })
                .collect()
        });
        let number = |places: usize, wing: usize| {
            edges.places.iter().position(|pair| pair[places] as usize == wing).unwrap_or_default() as u8
        };
        let firsts = std::array::from_fn(|turn| {
            let pulled = effects[turn].orbit(wing).table();
            edges.places.map(|[first, _]| number(0, pulled[first as usize] as usize))
        });
        let seconds = std::array::from_fn(|turn| {
            let pushed = effects[turn].orbit(wing).inverse();
            edges.places.map(|[_, second]| number(1, pushed.table()[second as usize] as usize))
        });
        // Against the corners the first places are exchanged oddly by half turns of two layers.
        let odd = std::array::from_fn(|turn| matches!(turns[turn].block, Block::Outer { depth: 2, .. }));
        let movers = Movers { patterns, odd };
        let whole = NAMED.map(|_| four_of_eight.rank(15) as u8);
        let goal = Position {
            mates: std::array::from_fn(|edge| edge as u8),
            patterns: Patterns { of: whole, odd: false },
        };
        let inner_turns = (0..TURNS)
            .filter(|&at| turns[at].amount == Amount::Half || turns[at].block.axis() == Face::U.axis())
            .fold(0, |bits, at| bits | 1 << at);
        let upright = [Face::U, Face::D];
        let between = (0..12)
            .filter(|&edge: &usize| {
                let place = Sticker::new(edges.places[edge][0]);
                place.is_some_and(|place| !wing.faces(place).iter().any(|face| upright.contains(face)))
            })
            .fold(0, |bits, edge| bits | 1 << edge);
        let mut under = |turns| {
            let space = Under { movers: &movers, turns };
            Distances::kept_or(space.count(), kept, || Distances::new(&space, [goal.patterns.index()]))
        };
        let (centres, inner_centres) = (under(u32::MAX)?, under(inner_turns)?);
        let ball = match kept {
            None => Ball::empty(),
            Some(kept) => Ball::of_bytes(kept.take(Ball::BYTES)?)?,
        };
        let is_made = kept.is_some();
        let mut pairing = Self {
            succession: Succession::new(&turns, size),
            turns,
            movers,
            firsts,
            seconds,
            four_of_eight,
            inner_turns,
            between,
            centres,
            inner_centres,
            ball,
            goal,
        };
        if !is_made {
            pairing.fill(told)?;
        }
        Some(pairing)
    }

    /// The tables as they are kept.
    pub fn tables(&self) -> [Cow<'_, [u8]>; 3] {
        let ball = self.ball.slots.iter().flat_map(|slot| slot.to_le_bytes()).collect();
        [self.centres.bytes().into(), self.inner_centres.bytes().into(), Cow::Owned(ball)]
    }

    fn fill(&mut self, told: &mut dyn FnMut(usize) -> bool) -> Option<()> {
        let mut ring = vec![self.goal];
        self.ball.insert(Self::key(&self.goal), 0);
        for depth in 1..=RADIUS {
            let mut next = Vec::with_capacity(ring.len() * 13);
            for (done, from) in ring.iter().enumerate() {
                for turn in self.inner(None) {
                    let to = self.after(from, turn);
                    if self.ball.insert(Self::key(&to), depth) {
                        next.push(to);
                    }
                }
                if done % 4_096 == 0 && !told(self.ball.count) {
                    return None;
                }
            }
            ring = next;
        }
        Some(())
    }

    fn key(position: &Position) -> u64 {
        u64::from(order_rank(position.mates)) * Patterns::COUNT as u64 + position.patterns.index() as u64
    }

    fn after(&self, from: &Position, turn: usize) -> Position {
        let (firsts, seconds) = (&self.firsts[turn], &self.seconds[turn]);
        Position {
            mates: firsts.map(|first| seconds[from.mates[first as usize] as usize]),
            patterns: self.movers.after(from.patterns, turn),
        }
    }

    /// The patterns of the colours of F and B, as bits of the eight places of their axis, that these turns can make whole.
    pub fn ring_patterns(&self) -> Vec<u32> {
        let whole = self.goal.patterns;
        all(8, 4)
            .filter(|&pattern| {
                let front = self.four_of_eight.rank(pattern) as u8;
                let [upper, left, _] = whole.of;
                let at = |odd| Patterns { of: [upper, left, front], odd }.index();
                [false, true].map(at).iter().any(|&at| self.centres.get(at) <= Distances::MOST)
            })
            .collect()
    }

    /// The position of a state: in every first place a wing whose mate is in a second place, and centres on their axes.
    ///
    /// `colours` are those that will lie on U, L and F. `None` if it is no position of this phase.
    pub fn position(&self, state: &State, edges: &Edges, colours: [Face; 3]) -> Option<Position> {
        let (wing, centre) = (Orbit::of(state.size())[1], Orbit::of(state.size())[2]);
        let wings = state.orbit(wing).table();
        let mut second = [u8::MAX; 12];
        let mut edge_at_first = [0; 12];
        for (number, &[first, other]) in edges.places.iter().enumerate() {
            edge_at_first[number] = edges.edge[wings[first as usize] as usize];
            second[edges.edge[wings[other as usize] as usize] as usize] = number as u8;
        }
        let mates = edge_at_first.map(|edge| second[edge as usize]);
        if mates.contains(&u8::MAX) || is_odd(&mates) {
            return None;
        }
        // As on a 3x3: corners, edges and how the centres are held are together even.
        let held = Rotation::bringing(colours[0], colours[2])?;
        let odd = is_odd(&edge_at_first) ^ state.corners().is_odd() ^ held.is_odd();
        let mut of = [0; 3];
        for (at, &colour) in colours.iter().enumerate() {
            let lying = Sticker::all()
                .filter(|&place| state.at(centre, place).face() == colour)
                .fold(0, |set, place| set | 1 << place.index());
            let pattern = on_axis(lying, NAMED[at]);
            if pattern.count_ones() != 4 {
                return None;
            }
            of[at] = self.four_of_eight.rank(pattern) as u8;
        }
        let patterns = Patterns { of, odd };
        (self.centres.get(patterns.index()) <= Distances::MOST).then_some(Position { mates, patterns })
    }

    /// The turns of the second step that may follow one.
    fn inner(&self, last: Option<usize>) -> Choices {
        self.succession.next(last).among(self.inner_turns)
    }

    /// Ways from a position to where the turns of the second step suffice, in exactly so many turns, the last of which is none of theirs.
    pub fn ways_in(&self, from: &Position, turns: u8) -> Vec<(Vec<usize>, Position)> {
        let mut found = Vec::new();
        self.enter(from, turns, &mut Vec::with_capacity(turns as usize), &mut found);
        found
    }

    fn enter(&self, at: &Position, left: u8, path: &mut Vec<usize>, found: &mut Vec<(Vec<usize>, Position)>) {
        if left == 0 {
            if self.is_inside(at) {
                found.push((path.clone(), *at));
            }
            return;
        }
        let mut choices = self.succession.next(path.last().copied());
        if left == 1 {
            choices = choices.among(!self.inner_turns);
        }
        for turn in choices {
            path.push(turn);
            self.enter(&self.after(at, turn), left - 1, path, found);
            path.pop();
        }
    }

    /// Whether the turns of the second step suffice: wings between the U and D layers have their mates there, in one of four
    /// orders.
    fn is_inside(&self, at: &Position) -> bool {
        let between = |edge: u8| self.between >> edge & 1 == 1;
        let apart = (0..12u8).any(|edge| between(edge) != between(at.mates[edge as usize]));
        if apart || self.inner_centres.get(at.patterns.index()) > Distances::MOST {
            return false;
        }
        // Twice is as good as never: of the 24 orders of four, these turns make the four that undo themselves and fix all or none.
        let inside = |edge: usize| between(edge as u8);
        let mates = |edge: usize| at.mates[edge] as usize;
        let fixed = (0..12).filter(|&edge| inside(edge) && mates(edge) == edge).count();
        let undone = (0..12).filter(|&edge| inside(edge)).all(|edge| mates(mates(edge)) == edge);
        undone && (fixed == 0 || fixed == 4)
    }

    /// From where the second step suffices, exactly so many turns of it to the goal.
    pub fn go_in(&self, from: &Position, turns: u8, last: Option<usize>) -> Option<Vec<usize>> {
        let mut path = Vec::with_capacity(turns as usize);
        self.descend(from, turns, last, &mut path).then_some(path)
    }

    /// The turns by their numbers.
    pub fn named(&self, path: &[usize]) -> Vec<Turn> {
        path.iter().map(|&turn| self.turns[turn]).collect()
    }

    fn descend(&self, at: &Position, left: u8, last: Option<usize>, path: &mut Vec<usize>) -> bool {
        if left <= RADIUS {
            return self.ball.get(Self::key(at)) == Some(left) && self.go_home(*at, left, path);
        }
        for turn in self.inner(last) {
            let next = self.movers.after(at.patterns, turn);
            if self.inner_centres.get(next.index()) < left {
                path.push(turn);
                if self.descend(&self.after(at, turn), left - 1, Some(turn), path) {
                    return true;
                }
                path.pop();
            }
        }
        false
    }

    /// Goes on through the ball. What is in it by a mistaken key leads nowhere.
    fn go_home(&self, mut at: Position, left: u8, path: &mut Vec<usize>) -> bool {
        let before = path.len();
        for left in (0..left).rev() {
            let nearer = self
                .inner(None)
                .map(|turn| (turn, self.after(&at, turn)))
                .find(|(_, next)| self.ball.get(Self::key(next)) == Some(left));
            let Some((turn, next)) = nearer else { break };
            path.push(turn);
            at = next;
        }
        let home = at == self.goal;
        if !home {
            path.truncate(before);
        }
        home
    }
}

/// Positions near the goal and their distances, in a table with open addressing.
///
/// Only 28 bits of each scrambled key are kept beside the distance: a strange key is taken for a known one about once in 100 million times, and
/// what it then leads to is noticed.
struct Ball {
    slots: Vec<u32>,
    count: usize,
}

impl Ball {
    const BITS: u32 = 21;
    const BYTES: usize = 4 << Self::BITS;

    /// As it was kept; `None` if no slot is free, where a search for one would not end.
    fn of_bytes(bytes: &[u8]) -> Option<Self> {
        let (words, _) = bytes.as_chunks::<4>();
        let slots: Vec<u32> = words.iter().map(|word| u32::from_le_bytes(*word)).collect();
        let count = slots.iter().filter(|&&slot| slot != 0).count();
        (count < slots.len()).then_some(Self { slots, count })
    }

    fn empty() -> Self {
        Self { slots: vec![0; 1 << Self::BITS], count: 0 }
    }

    /// The slot where a key stands or would stand, and what is kept of it, never nothing.
    fn slot(&self, key: u64) -> (usize, u32) {
        // Multiplicative hashing: D. Knuth, The Art of Computer Programming, vol. 3, section 6.4.
        let mixed = key.wrapping_mul(0x9e37_79b9_7f4a_7c15);
        let kept = (mixed >> 15) as u32 | 0x10;
        let mut slot = (mixed >> (64 - Self::BITS)) as usize;
        while self.slots[slot] != 0 && (self.slots[slot] ^ kept) >> 4 != 0 {
            slot = (slot + 1) & (self.slots.len() - 1);
        }
        (slot, kept)
    }

    fn get(&self, key: u64) -> Option<u8> {
        match self.slots[self.slot(key).0] {
            0 => None,
            entry => Some((entry & 15) as u8),
        }
    }

    /// Whether it was new.
    fn insert(&mut self, key: u64, distance: u8) -> bool {
        let (slot, kept) = self.slot(key);
        let new = self.slots[slot] == 0;
        if new {
            self.slots[slot] = kept & !15 | u32::from(distance);
            self.count += 1;
        }
        new
    }
}
