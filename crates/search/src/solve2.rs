//! The 2x2 solved in the fewest turns (half turns count one).
//!
//! The corner at DBL is taken as fixed and U, R, F turn round it: turning D is turning U and the whole cube.
//! That leaves 7! · 3⁶ = 3,674,160 states, none more than 11 turns from solved. A single state is solved from a small ball
//! of states around the solved one, which is made in a fraction of a millisecond; for many states [`prepare`]
//! makes the table of all distances first. Both ways give the same solution: the first of the shortest ones when
//! turns are tried in the order U U2 U' R R2 R' F F2 F'.

use crate::solve::distances::{Distances, Space};
use crate::solve::rank::{order_rank, orders, turning_rank, turnings};
use cube::{Amount, Claim, Corners, Face, NotProven, Orbit, Rotation, Size, State, Sticker, Turn};
use std::sync::{LazyLock, OnceLock};
use thiserror::Error;

/// The size that is solved here.
const SIZE: Size = Size::TWO;

/// How many states there are with one corner fixed.
pub const STATES: usize = PERMUTATIONS * TWISTS;
/// How many turns the worst states take.
pub const MOST_TURNS: u8 = 11;

const PERMUTATIONS: usize = 5_040;
const TWISTS: usize = 729;
const MOVERS: [Face; 3] = [Face::U, Face::R, Face::F];
/// Up to which distance the ball reaches: 12,224 states.
const RADIUS: u8 = 5;

/// Why there is no solution.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum Solve2Error {
    /// The state is not one of a 2x2.
    #[error("a {0} is not solved as a 2x2")]
    WrongSize(Size),
    /// What was found does not do what it claims, which is a fault of the program.
    #[error(transparent)]
    NotProven(#[from] NotProven),
}

/// A state as two numbers: the order of the seven free corners and their twists.
#[derive(Clone, Copy)]
struct Position {
    order: u16,
    twist: u16,
}

impl Position {
    const fn index(self) -> usize {
        self.order as usize * TWISTS + self.twist as usize
    }
}

/// What quarter turns do to both numbers, and the ball.
struct Tables {
    orders: Vec<[u16; 3]>,
    twists: Vec<[u16; 3]>,
    /// The sticker by which the fixed corner is known.
    anchor: Sticker,
    /// The places of the seven free corners.
    free: [u8; 7],
    /// Which of the seven a corner is.
    number: [u8; 8],
    /// The hold in which the corner at DBL is at home, by the sticker that is where DBL's own belongs.
    holds: [Rotation; Sticker::COUNT],
    solved: Position,
    ball: Ball,
}

static TABLES: LazyLock<Tables> = LazyLock::new(Tables::make);
static DISTANCES: OnceLock<Distances> = OnceLock::new();

impl Tables {
    fn make() -> Self {
        let anchor = Orbit::Corner.sticker("DBL").expect("every cube has a corner there");
        let fixed = Orbit::Corner.piece(anchor).index() as u8;
        let mut free = [0; 7];
        let mut number = [7; 8];
        for (slot, place) in (0..8u8).filter(|&place| place != fixed).enumerate() {
            free[slot] = place;
            number[place as usize] = slot as u8;
        }
        let mut holds = [Rotation::NONE; Sticker::COUNT];
        for rotation in Rotation::all() {
            holds[State::held(SIZE, rotation).at(Orbit::Corner, anchor).index()] = rotation;
        }
        let quarters =
            MOVERS.map(|face| State::solved(SIZE).after(&[Turn::face(face, Amount::Clockwise)]).corners());
        let mut tables = Self {
            orders: Vec::with_capacity(PERMUTATIONS),
            twists: Vec::with_capacity(TWISTS),
            anchor,
            free,
            number,
            holds,
            solved: Position { order: 0, twist: 0 },
            ball: Ball { slots: Vec::new() },
        };
        tables.make_orders(&quarters);
        tables.make_twists(&quarters);
        tables.ball = tables.make_ball();
        tables
    }

    fn make_orders(&mut self, quarters: &[Corners; 3]) {
        let pulls = quarters
            .map(|quarter| self.free.map(|place| self.number[quarter.pieces()[place as usize] as usize]));
        let after = |order: [u8; 7]| pulls.map(|pull| rank(pull.map(|from| order[from as usize])));
        self.orders.extend(orders().map(after));
    }

    fn make_twists(&mut self, quarters: &[Corners; 3]) {
        for index in 0..TWISTS {
            let twists = turnings::<7, 3>(index);
            self.twists.push(quarters.map(|quarter| {
                turning_rank::<7, 3>(self.free.map(|place| {
                    let from = quarter.pieces()[place as usize];
                    (twists[self.number[from as usize] as usize] + quarter.turned()[place as usize]) % 3
                }))
            }));
        }
    }

    /// Breadth first from solved.
    fn make_ball(&self) -> Ball {
        let mut ball = Ball::empty();
        let mut ring = vec![self.solved];
        ball.insert(self.solved, 0);
        for depth in 1..=RADIUS {
            let mut next = Vec::with_capacity(ring.len() * 6);
            for from in ring {
                for (_, _, to) in self.around(from) {
                    if ball.get(to).is_none() {
                        ball.insert(to, depth);
                        next.push(to);
                    }
                }
            }
            ring = next;
        }
        ball
    }

    fn quarter(&self, position: Position, mover: usize) -> Position {
        Position {
            order: self.orders[position.order as usize][mover],
            twist: self.twists[position.twist as usize][mover],
        }
    }

    /// The nine states one turn away: mover, quarters, state.
    fn around(&self, from: Position) -> impl Iterator<Item = (usize, u8, Position)> {
        (0..MOVERS.len()).flat_map(move |mover| {
            let mut to = from;
            (1..=3).map(move |quarters| {
                to = self.quarter(to, mover);
                (mover, quarters, to)
            })
        })
    }

    fn position(&self, corners: &Corners) -> Position {
        Position {
            order: rank(self.free.map(|place| self.number[corners.pieces()[place as usize] as usize])),
            twist: turning_rank::<7, 3>(self.free.map(|place| corners.turned()[place as usize])),
        }
    }

    /// The hold in which the corner at DBL is at home and solved, and the state as seen in it.
    fn normal(&self, state: &State) -> (Rotation, Position) {
        let hold = self.holds[state.at(Orbit::Corner, self.anchor).index()];
        (hold, self.position(&state.named_in(hold).corners()))
    }

    /// How far a state is from solved, as far as the ball or the full table tells.
    fn known(&self, position: Position) -> Option<u8> {
        match DISTANCES.get() {
            Some(distances) => Some(distances.get(position.index())),
            None => self.ball.get(position),
        }
    }

    /// The first of the shortest solutions.
    fn solve(&self, start: Position) -> Vec<Turn> {
        let mut turns = Vec::with_capacity(MOST_TURNS as usize);
        let mut at = start;
        if self.known(at).is_none() {
            for depth in 1..=MOST_TURNS - RADIUS {
                if let Some(reached) = self.reach(start, depth, MOVERS.len(), &mut turns) {
                    at = reached;
                    break;
                }
            }
            turns.reverse();
        }
        while let Some(distance) = self.known(at).filter(|&distance| distance > 0) {
            let closer = self.around(at).find(|&(_, _, to)| self.known(to) == Some(distance - 1));
            let Some((mover, quarters, to)) = closer else { break };
            turns.push(turn(mover, quarters));
            at = to;
        }
        turns
    }

    /// Goes exactly so many turns, in order, until it is in the ball; the turns are noted last first.
    fn reach(&self, from: Position, depth: u8, last: usize, turns: &mut Vec<Turn>) -> Option<Position> {
        for mover in (0..MOVERS.len()).filter(|&mover| mover != last) {
            let mut to = from;
            for quarters in 1..=3 {
                to = self.quarter(to, mover);
                let reached = if depth == 1 {
                    self.ball.get(to).map(|_| to)
                } else {
                    self.reach(to, depth - 1, mover, turns)
                };
                if reached.is_some() {
                    turns.push(turn(mover, quarters));
                    return reached;
                }
            }
        }
        None
    }
}

fn turn(mover: usize, quarters: u8) -> Turn {
    let amount = Amount::from_quarters(i64::from(quarters)).unwrap_or(Amount::Clockwise);
    Turn::face(MOVERS[mover], amount)
}

/// The states near the solved one and their distances, in a table with open addressing.
struct Ball {
    /// Index plus one and four bits of distance; 0 is a free slot.
    slots: Vec<u32>,
}

impl Ball {
    const BITS: u32 = 15;

    fn empty() -> Self {
        Self { slots: vec![0; 1 << Self::BITS] }
    }

    /// The slot that holds the position, or the free one where it would go.
    fn slot(&self, position: Position) -> usize {
        let key = position.index() as u32 + 1;
        // Multiplicative hashing: D. Knuth, The Art of Computer Programming, vol. 3, section 6.4.
        let mut slot = (key.wrapping_mul(0x9e37_79b1) >> (32 - Self::BITS)) as usize;
        while self.slots[slot] != 0 && self.slots[slot] >> 4 != key {
            slot = (slot + 1) & (self.slots.len() - 1);
        }
        slot
    }

    fn get(&self, position: Position) -> Option<u8> {
        match self.slots[self.slot(position)] {
            0 => None,
            entry => Some((entry & 15) as u8),
        }
    }

    fn insert(&mut self, position: Position, distance: u8) {
        let slot = self.slot(position);
        self.slots[slot] = (position.index() as u32 + 1) << 4 | u32::from(distance);
    }
}

fn rank(order: [u8; 7]) -> u16 {
    order_rank(order) as u16
}

/// All states, by their indices.
struct States {
    orders: Vec<[u16; 9]>,
    twists: Vec<[u16; 9]>,
}

impl States {
    fn new(tables: &Tables) -> Self {
        Self { orders: Self::nine(&tables.orders), twists: Self::nine(&tables.twists) }
    }

    /// All nine turns of an order or a twist.
    fn nine(quarters: &[[u16; 3]]) -> Vec<[u16; 9]> {
        let turned = |from: u16, mover: usize| quarters[from as usize][mover];
        let turns = |from| std::array::from_fn(|at| (0..=at % 3).fold(from, |to, _| turned(to, at / 3)));
        (0..quarters.len() as u16).map(turns).collect()
    }
}

impl Space for States {
    fn count(&self) -> usize {
        STATES
    }

    fn around(&self, from: usize, mut each: impl FnMut(usize) -> bool) -> bool {
        let (orders, twists) = (&self.orders[from / TWISTS], &self.twists[from % TWISTS]);
        orders.iter().zip(twists).any(|(&order, &twist)| each(order as usize * TWISTS + twist as usize))
    }
}

/// The distance of every state: 1.8 MB.
fn distances(tables: &Tables) -> Distances {
    Distances::new(&States::new(tables), [tables.solved.index()])
}

/// Makes the table of all distances (1.8 MB), so that each solution after it takes about a microsecond.
///
/// Worth it from some thousands of states on; what [`solve`] answers does not depend on it.
pub fn prepare() {
    DISTANCES.get_or_init(|| distances(&TABLES));
}

/// How many states with one corner fixed are how many turns from solved; makes the table of all distances.
///
/// ```
/// assert_eq!(search::solve2::histogram()[..4], [1, 9, 54, 321]);
/// ```
pub fn histogram() -> [u32; MOST_TURNS as usize + 1] {
    let distances = DISTANCES.get_or_init(|| distances(&TABLES));
    let mut counts = [0; MOST_TURNS as usize + 1];
    for index in 0..STATES {
        counts[distances.get(index) as usize] += 1;
    }
    counts
}

/// A shortest solution, in turns of U, R and F; after it the cube is solved, perhaps in another hold.
///
/// # Errors
/// [`Solve2Error`] when the state is of another size.
///
/// ```
/// use cube::{Algorithm, Size, State};
/// let turns = Algorithm::parse("R U F R2", Size::TWO).unwrap().flatten();
/// let state = State::solved(Size::TWO).after(&turns);
/// let solution = search::solve2::solve(&state).unwrap();
/// assert!(state.after(&solution).solved_hold().is_some());
/// assert_eq!(solution.len(), 4);
/// ```
pub fn solve(state: &State) -> Result<Vec<Turn>, Solve2Error> {
    if state.size() != SIZE {
        return Err(Solve2Error::WrongSize(state.size()));
    }
    let (hold, position) = TABLES.normal(state);
    let turns = TABLES.solve(position);
    NotProven::unless(state.after(&turns) == State::held(SIZE, hold), Claim::Solution)?;
    Ok(turns)
}

/// How the cube will be held once [`solve`] has solved the state: so that the corner at DBL need not move.
///
/// # Errors
/// [`Solve2Error`] when the state is of another size.
pub fn hold(state: &State) -> Result<Rotation, Solve2Error> {
    if state.size() == SIZE { Ok(TABLES.normal(state).0) } else { Err(Solve2Error::WrongSize(state.size())) }
}
