//! How many states have given letters or pairs in their memo, counted exactly by walking through all memos at once.
//!
//! A state is its memo: other states have other letters. So states are counted by building memos letter by letter, and
//! adding up those that have come to the same point: the same pieces dealt with, the same figures so far, the same things
//! met. Pieces that no test speaks of are alike but for the order in which they are broken into, so of each run of
//! them in that order only the number dealt with counts.

use super::space::KindSpace;
use super::tally::{Tally, Watched};
use crate::condition::{Occurs, Part, Wanted};
use cube::Sticker;
use rustc_hash::FxHashMap;

/// How many points are followed before the count is given up.
const MOST_POINTS: usize = 4_000_000;

/// How many states there are for each set of figures and each set of tests that are met (a bit each).
pub(crate) type Counts = FxHashMap<(Tally, u32), u128>;

/// What the memo is in the middle of.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
enum Phase {
    /// In the cycle of the buffer.
    FromBuffer,
    /// In a cycle that was broken into at the piece of this rank, if a test speaks of that piece.
    InCycle(Option<u8>),
    /// Between cycles.
    Between,
}

/// A point that memos come through.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
struct Point {
    phase: Phase,
    /// Which pieces are dealt with, by rank; in each run of pieces that are alike the first ones stand for all.
    dealt: u32,
    /// Pieces in the cycle so far.
    pieces: u8,
    /// How much the cycles before turn, while the buffer's piece is in its place.
    home: Option<u8>,
    /// If the letter before is the first of a pair: which of the first letters of the pairs asked for, from 1.
    primed: u8,
    met: u32,
    tally: Tally,
}

/// A piece by its place in the order in which cycles are broken into.
struct Ranked {
    /// Where its cycle is broken into, then its other stickers clockwise.
    stickers: Vec<Sticker>,
    /// Whether a test speaks of it.
    named: bool,
    /// The run of alike pieces that it is in, as bits.
    run: u32,
}

/// All that the count is made for.
pub(crate) struct Question<'a> {
    pub space: &'a KindSpace,
    pub watched: &'a Watched,
    /// Tests of this kind.
    pub tests: &'a [Occurs],
    /// The order in which cycles are broken into.
    pub order: &'a [Sticker; 24],
}

struct Walk<'a> {
    question: &'a Question<'a>,
    ranked: Vec<Ranked>,
    firsts: Vec<Sticker>,
    lengths_matter: bool,
}

/// Counts the states; `None` when there would be too many points to follow.
pub(crate) fn count(question: &Question<'_>) -> Option<Counts> {
    Walk::new(question).run()
}

impl<'a> Walk<'a> {
    fn new(question: &'a Question<'a>) -> Self {
        let space = question.space;
        let orbit = space.orbit;
        let mut named = Vec::new();
        let mut firsts = Vec::new();
        for wanted in question.tests.iter().flat_map(|test| &test.any) {
            match *wanted {
                Wanted::Target(target) => named.push(orbit.piece(target)),
                Wanted::Pair(first, second) => {
                    named.extend([orbit.piece(first), orbit.piece(second)]);
                    if !firsts.contains(&first) {
                        firsts.push(first);
                    }
                }
            }
        }
        let mut ranked: Vec<Ranked> = Vec::new();
        for &sticker in question.order {
            let piece = orbit.piece(sticker);
            let moves = space.others.iter().any(|&other| orbit.piece(other) == piece);
            if moves && ranked.iter().all(|known| orbit.piece(known.stickers[0]) != piece) {
                let stickers = orbit.stickers_from(sticker).collect();
                ranked.push(Ranked { stickers, named: named.contains(&piece), run: 0 });
            }
        }
        for rank in 0..ranked.len() {
            let joined = rank > 0 && !ranked[rank].named && !ranked[rank - 1].named;
            let begin = if joined { ranked[rank - 1].run } else { 0 };
            ranked[rank].run = begin | 1 << rank;
            let run = ranked[rank].run;
            for earlier in ranked[..rank].iter_mut().filter(|earlier| run & earlier.run != 0) {
                earlier.run = run;
            }
        }
        Self { question, ranked, firsts, lengths_matter: question.watched.lengths_matter() }
    }

    fn run(&self) -> Option<Counts> {
        let space = self.question.space;
        let mut tally = Tally::default();
        for _ in 0..space.still {
            tally = self.question.watched.add(tally, Part::Solved);
        }
        let start =
            Point { phase: Phase::FromBuffer, dealt: 0, pieces: 1, home: None, primed: 0, met: 0, tally };
        // Every step deals with a piece, or ends a cycle: from the points of one layer all later ones follow.
        let layers = 2 * (self.ranked.len() + 1);
        let mut open: Vec<FxHashMap<Point, u128>> = vec![FxHashMap::default(); layers];
        open[0].insert(start, 1);
        let mut counts = Counts::default();
        let mut points = 0;
        for layer in 0..layers {
            let here = std::mem::take(&mut open[layer]);
            points += here.len();
            if points > MOST_POINTS {
                return None;
            }
            for (point, ways) in here {
                self.steps(&point, &mut |many, next| {
                    *open[layer_of(&next)].entry(next).or_default() += ways * many;
                });
                self.ends(&point, &mut |many, tally| {
                    *counts.entry((tally, point.met)).or_default() += ways * many;
                });
            }
        }
        Some(counts)
    }

    /// Everything that can come next, and in how many ways.
    fn steps(&self, point: &Point, see: &mut dyn FnMut(u128, Point)) {
        let watched = self.question.watched;
        match point.phase {
            Phase::FromBuffer => {
                if point.pieces == 1 {
                    see(1, Point { phase: Phase::Between, home: Some(0), pieces: 0, ..*point });
                } else {
                    let tally =
                        watched.add_without_letters(point.tally, Part::BufferAway { pieces: point.pieces });
                    let ways = if self.question.space.sum_free { self.question.space.ways() } else { 1 };
                    see(u128::from(ways), Point { phase: Phase::Between, pieces: 0, tally, ..*point });
                }
                if self.question.space.buffer_moves {
                    self.follow(point, see);
                }
            }
            Phase::InCycle(begin) => {
                self.follow(point, see);
                self.close(point, begin, see);
            }
            Phase::Between => {
                let rank = point.dealt.trailing_ones() as usize;
                let Some(piece) = self.ranked.get(rank) else { return };
                let dealt = self.deal(point.dealt, rank);
                let tally = watched.add_without_letters(point.tally, Part::Solved);
                see(1, Point { dealt, tally, ..*point });
                let begin = piece.named.then_some(rank as u8);
                let begun = Point { phase: Phase::InCycle(begin), dealt, pieces: 1, ..*point };
                see(1, self.letter(begun, piece.named.then_some(piece.stickers[0])));
            }
        }
    }

    /// A letter for one of the pieces not dealt with.
    fn follow(&self, point: &Point, see: &mut dyn FnMut(u128, Point)) {
        let mut rank = 0;
        while let Some(piece) = self.ranked.get(rank) {
            let free = (piece.run & !point.dealt).count_ones();
            if free > 0 {
                let pieces = if self.lengths_matter { point.pieces + 1 } else { 2 };
                let next = Point { dealt: self.deal(point.dealt, rank), pieces, ..*point };
                if piece.named {
                    for &sticker in &piece.stickers {
                        see(1, self.letter(next, Some(sticker)));
                    }
                } else {
                    see(u128::from(free) * u128::from(self.question.space.ways()), self.letter(next, None));
                }
            }
            rank += piece.run.count_ones() as usize;
        }
    }

    /// The cycle is closed at one of the stickers of the piece where it began.
    fn close(&self, point: &Point, begin: Option<u8>, see: &mut dyn FnMut(u128, Point)) {
        let ways = self.question.space.ways();
        for turn in 0..ways {
            let part = match (point.pieces, turn) {
                (1, 0) => continue,
                (1, _) => Part::Turned,
                (pieces, _) => Part::Cycle { pieces, elsewhere: turn != 0 },
            };
            let tally = self.question.watched.add_without_letters(point.tally, part);
            let home = point.home.map(|sum| (sum + turn) % ways);
            let phase = Phase::Between;
            let sticker = begin.map(|rank| self.ranked[rank as usize].stickers[turn as usize]);
            see(1, self.letter(Point { phase, home, pieces: 0, tally, ..*point }, sticker));
        }
    }

    /// The point after a letter; `None` for one that no test speaks of.
    fn letter(&self, mut point: Point, sticker: Option<Sticker>) -> Point {
        let second = point.tally.is_odd();
        let first = point.primed.checked_sub(1).map(|at| self.firsts[at as usize]);
        point.primed = 0;
        if let Some(sticker) = sticker {
            for (at, test) in self.question.tests.iter().enumerate() {
                let met = test.any.iter().any(|wanted| match *wanted {
                    Wanted::Target(target) => target == sticker,
                    Wanted::Pair(one, two) => second && first == Some(one) && two == sticker,
                });
                point.met |= u32::from(met) << at;
            }
            if !second && self.begins_unmet_pair(sticker, point.met) {
                let at = self.firsts.iter().position(|&first| first == sticker);
                point.primed = at.map_or(0, |at| at as u8 + 1);
            }
        }
        point.tally = self.question.watched.add_letter(point.tally);
        point
    }

    fn begins_unmet_pair(&self, sticker: Sticker, met: u32) -> bool {
        self.question.tests.iter().enumerate().any(|(at, test)| {
            met & (1 << at) == 0
                && test.any.iter().any(|wanted| matches!(*wanted, Wanted::Pair(first, _) if first == sticker))
        })
    }

    /// Deals with a piece of this rank, or with one that is alike.
    fn deal(&self, dealt: u32, rank: usize) -> u32 {
        let free = self.ranked[rank].run & !dealt;
        dealt | (free & free.wrapping_neg())
    }

    /// Whether memos end at a point: the figures with what is found at the buffer, and in how many ways.
    fn ends(&self, point: &Point, see: &mut dyn FnMut(u128, Tally)) {
        if point.phase != Phase::Between || (point.dealt.trailing_ones() as usize) < self.ranked.len() {
            return;
        }
        let space = self.question.space;
        let mut home = |many: u8, turned| {
            let part = Part::BufferHome { turned };
            see(u128::from(many), self.question.watched.add_without_letters(point.tally, part));
        };
        match point.home {
            None => see(1, point.tally),
            Some(_) if space.sum_free => {
                home(1, false);
                if space.buffer_moves {
                    home(space.ways() - 1, true);
                }
            }
            Some(0) => home(1, false),
            Some(_) if space.buffer_moves => home(1, true),
            // A buffer that never moves makes nothing good.
            Some(_) => {}
        }
    }
}

/// The layer of a point: by the pieces dealt with; within that, points between cycles come after those within one.
fn layer_of(point: &Point) -> usize {
    2 * point.dealt.count_ones() as usize + usize::from(point.phase == Phase::Between)
}
