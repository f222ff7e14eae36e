//! Letter schemes: a letter for each sticker of a kind.

use cube::{Orbit, Sticker};
use thiserror::Error;

/// The letters of one kind of piece, one for each sticker, all different.
///
/// ```
/// use blind::Letters;
/// use cube::Orbit;
/// let letters = Letters::default();
/// let rub = Orbit::Corner.sticker("RUB").unwrap();
/// assert_eq!(letters.of(rub), 'N');
/// assert_eq!(letters.sticker('n'), Some(rub));
/// ```
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Letters([char; 24]);

/// Why characters do not make a letter scheme.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum LettersError {
    /// Not 24 of them.
    #[error("{0} letters for 24 stickers")]
    WrongCount(usize),
    /// A letter for two stickers.
    #[error("the letter {letter} stands for two stickers")]
    Twice {
        /// The letter.
        letter: char,
        /// The two stickers.
        stickers: [Sticker; 2],
    },
    /// A blank, a control sign or a sign that joins the letter before it.
    #[error("{0:?} cannot be a letter")]
    NoLetter(char),
}

impl Default for Letters {
    /// A to X, in the order of the stickers' numbers.
    fn default() -> Self {
        Self(std::array::from_fn(|at| char::from(b'A' + at as u8)))
    }
}

/// Letters that differ only in case are one letter; a memo may be written in either.
fn folded(letter: char) -> String {
    letter.to_uppercase().collect()
}

impl Letters {
    /// A scheme from 24 characters in the order of the stickers' numbers: faces U L F R B D, on each clockwise from
    /// the upper left.
    ///
    /// # Errors
    /// [`LettersError`] when there are not 24, when two are the same but for case, or when one cannot be written
    /// alone.
    pub fn new(letters: &[char]) -> Result<Self, LettersError> {
        let table: [char; 24] = letters.try_into().map_err(|_| LettersError::WrongCount(letters.len()))?;
        for (at, &letter) in table.iter().enumerate() {
            if !(letter.is_alphanumeric() || letter.is_ascii_punctuation()) || "()[]-,.;:/|".contains(letter)
            {
                return Err(LettersError::NoLetter(letter));
            }
            if let Some(before) = table[..at].iter().position(|&other| folded(other) == folded(letter)) {
                let sticker = |index: usize| Sticker::new(index as u8);
                if let (Some(first), Some(second)) = (sticker(before), sticker(at)) {
                    return Err(LettersError::Twice { letter, stickers: [first, second] });
                }
            }
        }
        Ok(Self(table))
    }

    /// The letter of a sticker.
    pub const fn of(&self, sticker: Sticker) -> char {
        self.0[sticker.index()]
    }

    /// The sticker of a letter, in either case.
    pub fn sticker(&self, letter: char) -> Option<Sticker> {
        let wanted = folded(letter);
        Sticker::all().find(|&sticker| folded(self.of(sticker)) == wanted)
    }

    /// The stickers sorted by their letters.
    pub fn order(&self) -> [Sticker; 24] {
        let mut order: Vec<Sticker> = Sticker::all().collect();
        order.sort_by_key(|&sticker| self.of(sticker));
        std::array::from_fn(|at| order[at])
    }

    /// The letters of some targets, one after another.
    pub fn spell(&self, targets: &[Sticker]) -> String {
        targets.iter().map(|&target| self.of(target)).collect()
    }

    /// Letters of some targets in pairs with a blank between, or without blanks.
    pub fn grouped(&self, targets: &[Sticker], pairs: bool) -> String {
        if !pairs {
            return self.spell(targets);
        }
        targets.chunks(2).map(|pair| self.spell(pair)).collect::<Vec<_>>().join(" ")
    }
}

/// The scheme of a kind as a row for each face, in the order U L F R B D: for showing and for files.
pub fn rows(letters: &Letters) -> [String; 6] {
    let all: Vec<Sticker> = Sticker::all().collect();
    std::array::from_fn(|face| letters.spell(&all[face * 4..face * 4 + 4]))
}

/// Whether a sticker is part of a piece.
pub(crate) fn same_piece(orbit: Orbit, a: Sticker, b: Sticker) -> bool {
    orbit.piece(a) == orbit.piece(b)
}
