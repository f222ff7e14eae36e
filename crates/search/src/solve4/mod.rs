//! The 4x4 solved in turns of faces and of two layers, in four phases.
//!
//! 1. The centres of two opposite colours onto two opposite faces.
//! 2. The other centres onto their axes, and of each edge's two wings one to each of two classes of places, so that the turns of the next
//!    phase suffice.
//! 3. Wings in pairs and centres whole, by half turns of two layers and turns of faces. What the wings and corners would not have on a 3x3
//!    (an odd flip, an odd exchange) is right before this phase and stays so.
//! 4. What is then a 3x3.
//!
//! Several ways through the first two phases are followed, and the one that is shortest with the third is taken. The tables (13 MB) are made
//! when first asked for. Source: the method by nested subgroups, published since 1981, from memory.

mod centres;
mod held;
mod pairing;
mod places;

use crate::solve::kept::{Kept, keep};
use crate::solve3::{self, Limit, Solve3Error};
use cube::{Claim, Facelets, NotProven, Rotation, Size, State, Turn, simplified, without_rotations};
use std::sync::OnceLock;
use thiserror::Error;

use centres::{Centres, Entry, Search};
use pairing::{MOST_OUTSIDE, Pairing, Position};
use places::Edges;

/// The size that is solved here.
pub const SIZE: Size = Size::ALL[2];
/// What becomes of it when its wings are paired.
const PAIRED: Size = Size::THREE;

/// How many ways into the third phase are compared; more where none of them goes on.
const WAYS: [usize; 3] = [12, 120, 1_200];
/// How many positions are looked at for each of them.
const WORK: u64 = 1_000_000;
/// The most turns of the first three phases that are looked for in one round; 30 were the most that random states needed.
const MOST_PAIRED: usize = 33;

/// Why there is no solution.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum Solve4Error {
    /// The state is not one of a 4x4.
    #[error("a {0} is not solved as a 4x4")]
    WrongSize(Size),
    /// The solver found nothing, although every state can be solved. That is a fault of the program.
    #[error("no solution of this 4x4 was found; this is a fault of the program")]
    NotFound,
    /// Whoever waited for the tables did not want to wait longer.
    #[error("the tables for the 4x4 were not made to the end")]
    Stopped,
    /// The last phase failed.
    #[error(transparent)]
    Paired(#[from] Solve3Error),
    /// What was found does not do what it claims, which is a fault of the program.
    #[error(transparent)]
    NotProven(#[from] NotProven),
}

/// How far the tables are, in hundredths; the answer says whether to go on.
pub type Told<'a> = dyn FnMut(u8) -> bool + 'a;

struct Tables {
    edges: Edges,
    centres: Centres,
    pairing: Pairing,
}

static TABLES: OnceLock<Tables> = OnceLock::new();

impl Tables {
    fn make(mut kept: Option<Kept<'_>>, told: &mut Told<'_>) -> Option<Self> {
        let wing = cube::Orbit::of(SIZE)[1];
        let edges = Edges::new(wing);
        // About so many positions lie in the ball.
        let pairing =
            Pairing::make(SIZE, &edges, &mut kept, &mut |known| told((known / 15_000).min(29) as u8))?;
        let mut done = 30;
        let centres = Centres::make(SIZE, &pairing, &mut kept, &mut || {
            done += 23;
            told(done)
        })?;
        let all_is_used = kept.is_none_or(|kept| kept.is_used_up());
        all_is_used.then_some(Self { edges, centres, pairing })
    }

    fn kept(&self) -> Vec<u8> {
        let (pairing, centres) = (self.pairing.tables(), self.centres.tables());
        keep(pairing.iter().map(AsRef::as_ref).chain(centres))
    }
}

/// Makes the tables, unless they are there; whoever waits is told how far it is and may stop it.
///
/// # Errors
/// [`Solve4Error::Stopped`] when the answer was not to go on.
///
/// ```
/// use search::solve4::{Solve4Error, prepare};
/// assert_eq!(prepare(&mut |_| false), Err(Solve4Error::Stopped));
/// ```
pub fn prepare(told: &mut Told<'_>) -> Result<(), Solve4Error> {
    tables(told).map(|_| ())
}

/// Whether the tables are there.
pub fn is_prepared() -> bool {
    TABLES.get().is_some()
}

fn tables(told: &mut Told<'_>) -> Result<&'static Tables, Solve4Error> {
    if let Some(tables) = TABLES.get() {
        return Ok(tables);
    }
    let made = Tables::make(None, told).ok_or(Solve4Error::Stopped)?;
    Ok(TABLES.get_or_init(|| made))
}

/// The tables as bytes, some 12 MB, for whoever can keep them longer than a program lives; `None` where there are none yet.
pub fn kept() -> Option<Vec<u8>> {
    TABLES.get().map(Tables::kept)
}

/// Takes tables that were [kept] by this version, and says whether they are there now; others and damaged ones are not taken, and are then
/// made as if there had been none.
///
/// ```
/// assert!(!search::solve4::restore(b"no tables"));
/// ```
pub fn restore(bytes: &[u8]) -> bool {
    if TABLES.get().is_none()
        && let Some(kept) = Kept::read(bytes)
        && let Some(tables) = Tables::make(Some(kept), &mut |_| true)
    {
        let _ = TABLES.set(tables);
    }
    is_prepared()
}

/// A solution in turns of faces and of two layers; after it every face shows one colour, and the cube is held in any way.
///
/// # Errors
/// [`Solve4Error`] when the state is of another size.
///
/// ```
/// use cube::{Algorithm, Size, State};
/// let size = Size::new(4).unwrap();
/// let turns = Algorithm::parse("Rw U 2R2 F' x Uw2", size).unwrap().flatten();
/// let state = State::solved(size).after(&turns);
/// let solution = search::solve4::solve(&state).unwrap();
/// assert!(state.after(&solution).solved_hold().is_some());
/// ```
pub fn solve(state: &State) -> Result<Vec<Turn>, Solve4Error> {
    if state.size() != SIZE {
        return Err(Solve4Error::WrongSize(state.size()));
    }
    if state.solved_hold().is_some() {
        return Ok(Vec::new());
    }
    let tables = tables(&mut |_| true)?;
    let paired = WAYS.into_iter().find_map(|ways| tables.paired(state, ways));
    let (hold, mut turns) = paired.ok_or(Solve4Error::NotFound)?;
    let paired = as_three(&state.after(hold.turns()).after(&turns)).ok_or(Solve4Error::NotFound)?;
    turns.extend(solve3::solve(&paired, Limit::TIGHT)?);
    let with_hold: Vec<Turn> = hold.turns().iter().copied().chain(turns).collect();
    let (turns, _) = without_rotations(&with_hold, SIZE);
    let turns = simplified(&turns);
    let solves = state.after(&turns).solved_hold().is_some();
    NotProven::unless(solves, Claim::Solution)?;
    Ok(turns)
}

/// A solution after which the cube is held as at first, if that can be done by taking turns from the other side.
///
/// # Errors
/// As for [`solve`].
pub fn solve_as_held(state: &State) -> Result<Vec<Turn>, Solve4Error> {
    let turns = solve(state)?;
    let hold = state.after(&turns).solved_hold().ok_or(NotProven { claim: Claim::Solution })?;
    Ok(held::held(&turns, hold, SIZE).unwrap_or(turns))
}

impl Tables {
    /// Through the first three phases: how the cube is turned as a whole, and the turns after that.
    fn paired(&self, state: &State, ways: usize) -> Option<(Rotation, Vec<Turn>)> {
        let ways = Search::run(&self.centres, &self.pairing, &self.edges, state, ways, WORK * ways as u64);
        // Each way goes on to where the second step of the third phase may begin: what came before, its last turn, and where it is.
        let mut begun: Vec<(&Entry, Vec<usize>, Position)> = Vec::new();
        for way in &ways {
            for outside in 0..=MOST_OUTSIDE {
                let inwards = self.pairing.ways_in(&way.position, outside);
                begun.extend(inwards.into_iter().map(|(path, position)| (way, path, position)));
            }
        }
        begun.sort_by_key(|(way, path, _)| way.turns.len() + path.len());
        for total in 0..=MOST_PAIRED {
            let reached = begun.iter().find_map(|(way, path, position)| {
                let inside = total.checked_sub(way.turns.len() + path.len())?;
                let rest = self.pairing.go_in(position, inside as u8, path.last().copied())?;
                let pairing = self.pairing.named(&[path.as_slice(), &rest].concat());
                Some((way.hold, [way.turns.as_slice(), &pairing].concat()))
            });
            if reached.is_some() {
                return reached;
            }
        }
        None
    }
}

/// The 3x3 that shows what a state shows whose wings are paired and whose centres are whole.
fn as_three(state: &State) -> Option<State> {
    let facelets = state.facelets();
    // The second of four rows stands for both in the middle.
    let row = |at: u8| if at == 2 { SIZE.layers() - 1 } else { at };
    let three = Facelets::from_fn(PAIRED, |face, down, right| {
        facelets.get(face, row(down), row(right)).unwrap_or(face)
    });
    three.state().ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tables_that_were_kept_are_those_that_were_made() {
        assert!(kept().is_none());
        assert!(prepare(&mut |_| true).is_ok());
        let bytes = kept().unwrap_or_default();
        assert!((8 << 20..16 << 20).contains(&bytes.len()), "{} bytes", bytes.len());
        let again = |bytes: &[u8]| Tables::make(Kept::read(bytes), &mut |_| true);
        let Some(tables) = again(&bytes) else { panic!("what was kept is not read") };
        assert_eq!(tables.kept(), bytes);
        // A table too few, one too many, and a ball without a free slot.
        let [few, many] =
            [&bytes[8..bytes.len() - 8], &[&bytes[8..], &[1; 8]].concat()].map(|tables| keep([tables]));
        let full = keep([vec![1; bytes.len() - 8].as_slice()]);
        for strange in [few, many, full] {
            assert!(
                Tables::make(Some(Kept::read(&strange).expect("the number is right")), &mut |_| true)
                    .is_none()
            );
        }
        // The number is part of it.
        let mut damaged = bytes;
        damaged[1_000_000] ^= 4;
        assert!(Kept::read(&damaged).is_none());
    }
}
