//! What is pointed at on a cube: places, letters on stickers, marks and chains.

use cube::{Orbit, Sticker};
use std::collections::BTreeMap;
use unicode_width::UnicodeWidthStr;

/// A place on the cube: a sticker of an orbit, named as on the solved cube.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, PartialOrd, Ord)]
pub struct Place {
    /// The kind of piece.
    pub orbit: Orbit,
    /// Which of the 24.
    pub sticker: Sticker,
}

impl Place {
    /// A place.
    pub const fn new(orbit: Orbit, sticker: Sticker) -> Self {
        Self { orbit, sticker }
    }

    /// What the trade calls it, such as `UFR`.
    pub fn name(self) -> &'static str {
        self.orbit.name(self.sticker)
    }
}

/// What stands on the stickers, by place. A wing's letter stands on the sticker that names it.
///
/// ```
/// use cube::{Orbit, Size};
/// use draw::{Labels, Place};
/// let labels = Labels::letters(Size::TWO);
/// let corner = Orbit::Corner.sticker("UFR").unwrap();
/// assert_eq!(labels.at(Place::new(Orbit::Corner, corner)), "C");
/// ```
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Labels(BTreeMap<Orbit, [String; 24]>);

impl Labels {
    /// No letters.
    pub fn none() -> Self {
        Self::default()
    }

    /// A to X on every orbit of a size.
    pub fn letters(size: cube::Size) -> Self {
        Orbit::of(size).iter().fold(Self::default(), |labels, &orbit| {
            labels.with(orbit, std::array::from_fn(|i| char::from(b'A' + i as u8).to_string()))
        })
    }

    /// Adds an orbit's 24 labels, by place.
    #[must_use]
    pub fn with(mut self, orbit: Orbit, labels: [String; 24]) -> Self {
        self.0.insert(orbit, labels);
        self
    }

    /// Only those of a kind.
    #[must_use]
    pub fn only(mut self, orbit: Orbit) -> Self {
        self.0.retain(|&kind, _| kind == orbit);
        self
    }

    /// Moves every label with its sticker: what is asked for by where it belongs is shown where it now is.
    #[must_use]
    pub fn carried_by(&self, state: &cube::State) -> Self {
        Self(
            self.0
                .iter()
                .map(|(&orbit, labels)| {
                    let carried = std::array::from_fn(|place| {
                        Sticker::new(place as u8)
                            .and_then(|place| labels.get(state.at(orbit, place).index()))
                            .cloned()
                            .unwrap_or_default()
                    });
                    (orbit, carried)
                })
                .collect(),
        )
    }

    /// The columns of the widest label of a size.
    pub(crate) fn widest(&self, size: cube::Size) -> usize {
        let there = self.0.iter().filter(|(orbit, _)| Orbit::of(size).contains(orbit));
        there.flat_map(|(_, labels)| labels).map(|label| label.width()).max().unwrap_or(0)
    }

    /// The label at a place; empty if there is none.
    pub fn at(&self, place: Place) -> &str {
        self.0
            .get(&place.orbit)
            .and_then(|labels| labels.get(place.sticker.index()))
            .map_or("", String::as_str)
    }
}

/// Why a sticker is marked. Each has a shape of its own.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, PartialOrd, Ord)]
pub enum Mark {
    /// The sticker that is looked at: a ring.
    Look,
    /// The buffer: a square.
    Buffer,
    /// Where it belongs, the target: a diamond.
    Target,
    /// Where it went wrong: a cross.
    Wrong,
}

/// A chain of stickers, drawn as a thread from one to the next with a number on each step.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Chain {
    /// The places in turn.
    pub places: Vec<Place>,
    /// The number of the first step.
    pub first: usize,
}

impl Chain {
    /// A chain whose steps are numbered from 1.
    pub fn new(places: impl IntoIterator<Item = Place>) -> Self {
        Self { places: places.into_iter().collect(), first: 1 }
    }

    /// The steps: number, from, to.
    pub(crate) fn steps(&self) -> impl Iterator<Item = (usize, Place, Place)> {
        self.places.windows(2).enumerate().filter_map(|(i, pair)| match pair {
            [from, to] => Some((self.first + i, *from, *to)),
            _ => None,
        })
    }
}
