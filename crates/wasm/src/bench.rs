//! What the bench begins with: the sizes it offers, how much a person may type, and the puzzle of a first visit.

use blind::{Conventions, HoldChoice, Solver};
use cube::{Algorithm, MAX_TEXT, Size, State};
use serde::Serialize;

use crate::Failure;
use crate::call::Call;
use crate::names::fault;

/// The sizes that the bench shows, in the order in which it offers them.
pub(crate) const OFFERED: [Size; 3] = [Size::ALL[0], Size::ALL[1], Size::ALL[2]];

/// The scramble that lies in hand at a first visit: an easy one, whose memo is four letters in the hold in which it is scrambled.
const EASY: (Size, &str) = (OFFERED[0], "F' U' R' F R U");

/// The most bytes that a field of the page takes in: a quarter of what is read, so that a page that mirrors them stays quick.
const LONGEST: usize = MAX_TEXT / 4;

/// What the bench begins with.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Beginning {
    /// The sizes that are offered.
    pub sizes: Vec<Offered>,
    /// The size that is meant where none is said, by layers.
    pub usual: u8,
    /// The most characters that a field takes in.
    pub longest: u32,
    /// The most exercises of a lesson.
    pub exercises: u8,
    /// The puzzle of a first visit.
    pub first: FirstVisit,
}

/// A size that is offered.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Offered {
    /// Layers of the cube.
    pub layers: u8,
    /// What it is called.
    pub name: String,
}

/// The puzzle of a first visit.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct FirstVisit {
    /// Layers of the cube.
    pub size: u8,
    /// The scramble.
    pub scramble: String,
    /// What is seen.
    pub title: String,
    /// What to do next.
    pub text: String,
}

/// The size that most people solve blindfolded (common practice, no source).
const USUAL: Size = Size::THREE;

pub(crate) fn beginning(call: &Call<'_>) -> Result<Beginning, Failure> {
    let (size, scramble) = EASY;
    let algorithm =
        Algorithm::parse(scramble, size).map_err(|error| Failure::new(call.voice.parse_error(&error)))?;
    let scrambled = State::solved(size).after(&algorithm.flatten());
    let solver = Solver::new(size, Conventions::default());
    let held =
        solver.pick_up(&scrambled, HoldChoice::usual(size)).map_err(|error| fault(call.voice, error))?;
    let memo = solver.memo(&held.state).map_err(|error| fault(call.voice, error))?;
    let [title, text] = call.voice.first_visit(memo.letters());
    Ok(Beginning {
        sizes: OFFERED.map(|size| Offered { layers: size.layers(), name: size.to_string() }).into(),
        usual: USUAL.layers(),
        longest: LONGEST as u32,
        exercises: formats::link::MOST_EXERCISES,
        first: FirstVisit { size: size.layers(), scramble: scramble.to_owned(), title, text },
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_first_visit_is_four_letters_and_is_held_as_it_is_scrambled() {
        let (size, scramble) = EASY;
        let scrambled = State::solved(size).after(&Algorithm::parse(scramble, size).unwrap().flatten());
        let solver = Solver::new(size, Conventions::default());
        let held = solver.pick_up(&scrambled, HoldChoice::usual(size)).unwrap();
        assert!(held.rotation.turns().is_empty());
        assert_eq!(solver.memo(&held.state).unwrap().letters(), 4);
    }
}
