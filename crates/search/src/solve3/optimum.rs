//! The fewest turns that solve a 3x3, proven where the search comes to its end.
//!
//! Lengths are searched whole, one after the other (3 MB of further tables, made at the first call). How far a state is at least
//! is told by its corners alone and by the way into the subgroup along each of the three axes. Between two lengths the search in two
//! phases looks as long for a shorter solution than the one that is known.

use super::coordinates::{Order, TURNS};
use super::corners::{CornerTable, CornersSeen};
use super::outer::Outer;
use super::phases::{self, axes, seen_in};
use super::symmetry::MIRRORS;
use super::tables::Tables;
use super::{Limit, SIZE, Solve3Error, solve};
use crate::solve::succession::{Choices, Succession};
use crate::solve::work::Work;
use cube::{Claim, Corners, Midges, NotProven, State, Turn};
use std::cell::Cell;
use std::sync::LazyLock;

/// A solution, and how many turns every solution takes at least. Only the search makes one, from what it applied.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Optimum {
    turns: Vec<Turn>,
    least: u8,
    positions: u64,
}

impl Optimum {
    /// The shortest solution that was found, face turns, applied.
    pub fn turns(&self) -> &[Turn] {
        &self.turns
    }

    /// No solution takes fewer turns (half turns count one): all shorter lengths were searched whole.
    pub const fn least(&self) -> u8 {
        self.least
    }

    /// Whether no solution is shorter than this one.
    pub fn is_proven(&self) -> bool {
        self.turns.len() == self.least as usize
    }

    /// How many positions were looked at.
    pub const fn positions(&self) -> u64 {
        self.positions
    }
}

/// What is known while the search goes on.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Known {
    /// How many positions have been looked at.
    pub positions: u64,
    /// No solution takes fewer turns.
    pub least: u8,
    /// The shortest solution so far takes so many.
    pub found: usize,
}

/// How many positions the search for a shorter solution may take between two lengths, however short those were.
const ALLOWANCE: u64 = 100_000;

/// A shortest solution of a state, in face turns, or the best that is found and the fewest turns that are proven to be needed, where
/// `most` positions do not suffice (those for a first solution, of at most 23 turns, are not counted) or `told`, which hears from time to time what is known, answers not to go on.
///
/// The proof of 17 or 18 turns, which most states need, takes hours; states up to about 14 turns from solved take seconds.
///
/// # Errors
/// [`Solve3Error`] when the state is of another size.
///
/// ```
/// use cube::{Algorithm, Size, State};
/// let turns = Algorithm::parse("R U R' U'", Size::THREE).unwrap().flatten();
/// let state = State::solved(Size::THREE).after(&turns);
/// let optimum = search::solve3::optimum(&state, 1_000_000, &mut |_| true).unwrap();
/// assert!(optimum.is_proven());
/// assert_eq!(optimum.turns().len(), 4);
/// ```
pub fn optimum(
    state: &State,
    most: u64,
    told: &mut dyn FnMut(Known) -> bool,
) -> Result<Optimum, Solve3Error> {
    let mut turns = solve(state, Limit::LOOSE)?;
    let named = state.named_in(state.core());
    let tables = OptimumTables::get();
    let start = tables.position(&named);
    let mut least = tables.least(&start);
    let known = Cell::new((least, turns.len()));
    let mut told = |positions| told(Known { positions, least: known.get().0, found: known.get().1 });
    let mut work = Work::new(most, &mut told);
    while usize::from(least) < turns.len() && !work.is_over() {
        let before = work.done();
        work.allow(u64::MAX);
        let mut search =
            Search { tables, work: &mut work, path: Vec::with_capacity(32), order: order(&named) };
        if search.go(&start, least, None) {
            if !search.work.is_over() {
                turns = search.path.iter().map(|&turn| tables.phases.turned.turns[turn]).collect();
            }
            break;
        }
        least += 1;
        let allowance = work.done() - before + ALLOWANCE;
        while usize::from(least) < turns.len() {
            work.allow(allowance);
            match phases::solve(&named, turns.len() as u8 - 1, &mut work) {
                Some(shorter) => turns = shorter,
                None => break,
            }
        }
        known.set((least, turns.len()));
    }
    let solves = state.after(&turns) == State::held(SIZE, state.core());
    NotProven::unless(solves && turns.len() >= usize::from(least), Claim::Solution)?;
    Ok(Optimum { turns, least, positions: work.done() })
}

fn order(state: &State) -> Order {
    Order::of(&state.corners(), &state.midges())
}

struct OptimumTables {
    phases: &'static Tables,
    corners: CornerTable,
    succession: Succession,
    /// For each axis what each turn is along it.
    along: [[usize; TURNS]; 3],
    /// For each axis and way, half by half, the sets of turns that are seen as a set.
    shown: [Vec<[[u32; 1 << HALF]; 2]>; 3],
}

/// How many turns are half of all.
const HALF: usize = TURNS / 2;

static TABLES: LazyLock<OptimumTables> = LazyLock::new(OptimumTables::make);

/// A state as the search looks at it: along each axis, and its corners.
#[derive(Clone, Copy)]
struct Position {
    outer: [Outer; 3],
    corners: CornersSeen,
}

impl OptimumTables {
    fn get() -> &'static Self {
        &TABLES
    }

    fn make() -> Self {
        let phases = Tables::get();
        let turns = &phases.turned.turns;
        let along = axes().map(|hold| {
            turns.map(|turn| {
                let turned = turn.rotated(hold);
                turns.iter().position(|&turn| turn == turned).unwrap_or_default()
            })
        });
        let shown = along.map(|along| {
            let mut back = [0; TURNS];
            for (turn, &along) in along.iter().enumerate() {
                back[along] = turn;
            }
            let ways = &phases.outside.ways().shown;
            let half = |way: usize, first: usize| {
                std::array::from_fn(|set| {
                    Choices::of(set as u32)
                        .fold(0, |bits, seen| bits | 1 << back[ways[way][first + seen] as usize])
                })
            };
            (0..MIRRORS).map(|way| [half(way, 0), half(way, HALF)]).collect()
        });
        let succession = Succession::new(turns, SIZE);
        Self { phases, corners: CornerTable::make(&phases.turned), succession, along, shown }
    }

    fn position(&self, named: &State) -> Position {
        let outer = axes().map(|hold| {
            let seen = seen_in(named, hold);
            self.phases.outside.at(self.phases.turned.outer(&seen.corners(), &seen.midges()))
        });
        Position { outer, corners: self.corners.at(&named.corners()) }
    }

    /// How many turns it takes at least. Where all three ways into the subgroup take as many, one more: the last turn of a solution
    /// is inside the subgroup along its own axis.
    fn least(&self, at: &Position) -> u8 {
        let ways = at.outer.map(|outer| self.phases.outside.least(outer));
        let most = ways[0].max(ways[1]).max(ways[2]);
        let all = most > 0 && ways == [most; 3];
        (most + u8::from(all)).max(self.corners.least(at.corners))
    }

    /// The turns after which at most so many more may solve, by what is looked up for all turns at once.
    fn nearer(&self, at: &Position, left: u8) -> u32 {
        (0..3).fold(u32::MAX, |turns, axis| {
            let outer = at.outer[axis];
            let seen = self.phases.outside.nearer(outer, left) as usize;
            let shown = &self.shown[axis][outer.way()];
            turns & (shown[0][seen & ((1 << HALF) - 1)] | shown[1][seen >> HALF])
        })
    }
}

struct Search<'a, 'b> {
    tables: &'a OptimumTables,
    work: &'a mut Work<'b>,
    path: Vec<usize>,
    order: Order,
}

impl Search<'_, '_> {
    /// Goes exactly so many turns home, where fewer do not suffice. `true` when it is over: home is reached, or the work is used up.
    fn go(&mut self, at: &Position, left: u8, last: Option<usize>) -> bool {
        let tables = self.tables;
        let Some(left) = left.checked_sub(1) else { return self.is_home() };
        if self.work.one() {
            return true;
        }
        let outside = &tables.phases.outside;
        for turn in tables.succession.next(last).among(tables.nearer(at, left)) {
            let corners = tables.corners.after(at.corners, turn);
            if tables.corners.least(corners) > left {
                continue;
            }
            let outer = std::array::from_fn(|axis| {
                let seen = outside.ways().seen[at.outer[axis].way()][tables.along[axis][turn]];
                outside.after(at.outer[axis], seen as usize)
            });
            let next = Position { outer, corners };
            if tables.least(&next) > left {
                continue;
            }
            self.path.push(turn);
            if self.go(&next, left, Some(turn)) {
                return true;
            }
            self.path.pop();
        }
        false
    }

    /// Whether the path leads home: where nothing is left to go, all pieces are turned right, the corners are home, and edges may not be.
    fn is_home(&self) -> bool {
        let turned = &self.tables.phases.turned;
        let order = self.path.iter().fold(self.order, |order, &turn| turned.order_after(&order, turn));
        order == Order::of(&Corners::HOME, &Midges::HOME)
    }
}
