//! Changes of conventions, one at a time: what else each brings about, and what is refused.

use super::fit::{Misfit, checked_on};
use super::{BreakChoice, Colour, Conventions, OrbitOrder, ParityChoice};
use crate::kind::kind_name;
use crate::letters::{Letters, LettersError};
use crate::swap::{SwapEffect, SwapError};
use crate::usual::{MethodName, sizeless, usual};
use cube::{Algorithm, Face, Orbit, Rotation, Sticker};
use thiserror::Error;

/// A change of what a person has settled on.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum ConventionsChange {
    /// A sticker gets a letter; if another has it, the two exchange theirs, so that the scheme stays one at every moment.
    Letter {
        /// The kind.
        orbit: Orbit,
        /// The sticker.
        sticker: Sticker,
        /// The letter.
        letter: String,
    },
    /// All letters of a kind at once, in the order of the stickers' numbers.
    Letters {
        /// The kind.
        orbit: Orbit,
        /// The 24 letters.
        letters: Vec<String>,
    },
    /// Another buffer; the swap algorithm is turned with the cube where it does not move it.
    Buffer {
        /// The kind.
        orbit: Orbit,
        /// The buffer.
        sticker: Sticker,
    },
    /// Another shade of a colour.
    Shade {
        /// The face that has it in the hold for scrambling.
        face: Face,
        /// Red, green, blue.
        shade: [u8; 3],
    },
    /// Another name of a colour.
    Name {
        /// The face that has it in the hold for scrambling.
        face: Face,
        /// The name.
        name: String,
        /// Its shade so far, which stays: a name of one's own says none.
        shade: [u8; 3],
    },
    /// Another holding to solve in. The colour up counts; where the two cannot go together another one is in front.
    Holding {
        /// The face whose colour is to be up.
        up: Face,
        /// The face whose colour is to be in front.
        front: Face,
    },
    /// Another swap algorithm.
    Algorithm {
        /// The kind.
        orbit: Orbit,
        /// The algorithm.
        algorithm: Algorithm,
    },
    /// Another method. Slice-swap has a buffer and an algorithm of its own, which come and go with it; otherwise these stay, since
    /// one swap and three-cycles do with any.
    Method {
        /// The kind.
        orbit: Orbit,
        /// The method.
        method: MethodName,
    },
    /// Another parity algorithm.
    Parity(Algorithm),
    /// Where new cycles begin.
    Breaks {
        /// The kind.
        orbit: Orbit,
        /// The choice.
        breaks: BreakChoice,
    },
    /// Whether letters go in pairs.
    Pairs(bool),
}

/// What a change brought about beside itself.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Consequence {
    /// A sticker took over the letter that another gave up.
    LettersExchanged {
        /// The kind.
        orbit: Orbit,
        /// The sticker.
        sticker: Sticker,
        /// The letter that it has now.
        letter: String,
    },
    /// The swap algorithm was turned with the cube, so that it moves the buffer.
    AlgorithmTurned {
        /// The kind.
        orbit: Orbit,
        /// As it is now.
        algorithm: Algorithm,
    },
    /// The method brought a buffer of its own.
    BufferFollows {
        /// The kind.
        orbit: Orbit,
        /// The buffer.
        buffer: Sticker,
    },
    /// The kind is now carried out before all others.
    CarriedOutFirst(Orbit),
}

/// Conventions after a change.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Changed {
    /// What holds now.
    pub conventions: Conventions,
    /// What else came about.
    pub consequences: Vec<Consequence>,
}

/// Why a change is refused.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum ChangeError {
    /// The letters would be no scheme.
    #[error("{} letters: {error}", kind_name(*.orbit))]
    Letters {
        /// The kind.
        orbit: Orbit,
        /// Why.
        error: LettersError,
    },
    /// A colour without a name.
    #[error("a colour needs a name")]
    NameMissing,
    /// Two faces of one colour.
    #[error("two faces are {0}")]
    ColourTwice(String),
    /// The method cannot carry out the kind.
    #[error("{} is no method for {}s", .method.name(), kind_name(*.orbit))]
    NotForKind {
        /// The kind.
        orbit: Orbit,
        /// The method.
        method: MethodName,
    },
    /// The swap algorithm does not go with the buffer.
    #[error("{} algorithm: {misfit}", kind_name(*.orbit))]
    Algorithm {
        /// The kind.
        orbit: Orbit,
        /// Why.
        misfit: Misfit,
    },
}

impl MethodName {
    /// The methods that can carry out a kind.
    ///
    /// ```
    /// use blind::MethodName;
    /// use cube::Orbit;
    /// assert!(MethodName::of(Orbit::Midge).any(|method| method == MethodName::SliceSwap));
    /// assert!(MethodName::of(Orbit::Corner).all(|method| method != MethodName::SliceSwap));
    /// ```
    pub fn of(orbit: Orbit) -> impl Iterator<Item = Self> {
        Self::ALL.into_iter().filter(move |&method| method.carries_out(orbit))
    }
}

impl Conventions {
    /// The conventions after a change, which is taken whole or not at all.
    ///
    /// # Errors
    /// [`ChangeError`] when what would come out does not hold together.
    ///
    /// ```
    /// use blind::{Consequence, Conventions, ConventionsChange};
    /// use cube::Orbit;
    /// let buffer = Orbit::Corner.sticker("UFR").unwrap();
    /// let change = ConventionsChange::Buffer { orbit: Orbit::Corner, sticker: buffer };
    /// let changed = Conventions::default().changed(&change).unwrap();
    /// assert_eq!(changed.conventions.kind(Orbit::Corner).buffer, buffer);
    /// assert!(matches!(changed.consequences[..], [Consequence::AlgorithmTurned { .. }]));
    /// ```
    pub fn changed(&self, change: &ConventionsChange) -> Result<Changed, ChangeError> {
        let mut changed = Changed { conventions: self.clone(), consequences: Vec::new() };
        let conventions = &mut changed.conventions;
        match change {
            ConventionsChange::Letter { orbit, sticker, letter } => {
                changed.give_letter(*orbit, *sticker, letter.trim())?;
            }
            ConventionsChange::Letters { orbit, letters } => {
                conventions.kind_mut(*orbit).letters =
                    Letters::new(letters).map_err(|error| ChangeError::Letters { orbit: *orbit, error })?;
            }
            ConventionsChange::Buffer { orbit, sticker } => {
                conventions.kind_mut(*orbit).buffer = *sticker;
                changed.turn_along(*orbit);
                changed.fits(*orbit)?;
            }
            ConventionsChange::Shade { face, shade } => {
                conventions.colours[face.index()].shade = Some(*shade);
            }
            ConventionsChange::Name { face, name, shade } => {
                let name = name.trim().to_owned();
                if name.is_empty() {
                    return Err(ChangeError::NameMissing);
                }
                let same = |other: &Colour| other.name.to_lowercase() == name.to_lowercase();
                let others = Face::ALL.into_iter().filter(|other| other != face);
                if others.into_iter().any(|other| same(conventions.colour(other))) {
                    return Err(ChangeError::ColourTwice(name));
                }
                conventions.colours[face.index()] = Colour { name, shade: Some(*shade) };
            }
            ConventionsChange::Holding { up, front } => {
                let mut fronts = std::iter::once(*front).chain(Face::ALL);
                let holding = fronts.find_map(|front| Rotation::bringing(*up, front));
                // Every face but two can be in front of any other.
                conventions.holding = holding.unwrap_or(conventions.holding);
            }
            ConventionsChange::Algorithm { orbit, algorithm } => {
                let method = conventions.kind(*orbit).method;
                if usual(method, *orbit).is_none() {
                    return Err(ChangeError::NotForKind { orbit: *orbit, method });
                }
                conventions.kind_mut(*orbit).algorithm = Some(algorithm.clone());
                changed.fits(*orbit)?;
            }
            ConventionsChange::Method { orbit, method } => changed.take_method(*orbit, *method)?,
            ConventionsChange::Parity(algorithm) => conventions.parity_algorithm = algorithm.clone(),
            ConventionsChange::Breaks { orbit, breaks } => {
                conventions.kind_mut(*orbit).breaks = breaks.clone();
            }
            ConventionsChange::Pairs(paired) => conventions.pairs = *paired,
        }
        Ok(changed)
    }
}

impl Changed {
    fn give_letter(&mut self, orbit: Orbit, sticker: Sticker, letter: &str) -> Result<(), ChangeError> {
        let letters = &mut self.conventions.kind_mut(orbit).letters;
        let mut table: Vec<&str> = letters.all().collect();
        let had = letters.sticker(letter).filter(|&other| other != sticker);
        if let Some(other) = had {
            let given_up = letters.of(sticker).to_owned();
            table[other.index()] = letters.of(sticker);
            self.consequences.push(Consequence::LettersExchanged { orbit, sticker: other, letter: given_up });
        }
        table[sticker.index()] = letter;
        *letters = Letters::new(&table).map_err(|error| ChangeError::Letters { orbit, error })?;
        Ok(())
    }

    /// Turns the swap algorithm with the cube where it does not move the buffer.
    fn turn_along(&mut self, orbit: Orbit) {
        let kind = self.conventions.kind_mut(orbit);
        if kind.method == MethodName::SliceSwap {
            return;
        }
        let on = kind.algorithm.as_ref().and_then(|algorithm| algorithm.on(checked_on(orbit)).ok());
        let Some(algorithm) = on else { return };
        if let Err(SwapError::BufferNotMoved { instead, .. }) = SwapEffect::of(algorithm, orbit, kind.buffer)
        {
            // As all algorithms of conventions, for no particular size.
            let turned = sizeless(&instead.to_string()).unwrap_or(*instead);
            kind.algorithm = Some(turned.clone());
            self.consequences.push(Consequence::AlgorithmTurned { orbit, algorithm: turned });
        }
    }

    fn fits(&self, orbit: Orbit) -> Result<(), ChangeError> {
        self.conventions.algorithm_fits(orbit).map_err(|misfit| ChangeError::Algorithm { orbit, misfit })
    }

    fn take_method(&mut self, orbit: Orbit, method: MethodName) -> Result<(), ChangeError> {
        if !method.carries_out(orbit) {
            return Err(ChangeError::NotForKind { orbit, method });
        }
        let usual = usual(method, orbit);
        let kind = self.conventions.kind_mut(orbit);
        let before = (kind.buffer, kind.method);
        let slice = [before.1, method].contains(&MethodName::SliceSwap);
        // Wings and centres keep their buffer, to which every method is held.
        if let Some(usual) = usual.filter(|_| orbit == Orbit::Midge && slice && before.1 != method) {
            kind.buffer = usual.buffer;
            // Half turns of the slice need no further swap; what was there is kept for another method.
            if method != MethodName::SliceSwap {
                kind.algorithm = Some(usual.algorithm);
            }
        }
        kind.method = method;
        let buffer = kind.buffer;
        if buffer != before.0 {
            self.consequences.push(Consequence::BufferFollows { orbit, buffer });
        }
        if method == MethodName::OneSwap {
            self.turn_along(orbit);
        }
        // A half-turned slice has to be put right before an algorithm for parity, so its letters come first.
        let order = &mut self.conventions.execution_order;
        let late = orbit == Orbit::Midge && order.is_before(Orbit::Corner, orbit);
        if method == MethodName::SliceSwap && self.conventions.parity == ParityChoice::Algorithm && late {
            let mut kinds: Vec<Orbit> = order.all().filter(|&other| other != orbit).collect();
            let corner = kinds.iter().position(|&other| other == Orbit::Corner).unwrap_or(0);
            kinds.insert(corner, orbit);
            *order = OrbitOrder::new(&kinds);
            self.consequences.push(Consequence::CarriedOutFirst(orbit));
        }
        self.fits(orbit)
    }
}
