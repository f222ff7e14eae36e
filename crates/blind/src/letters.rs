//! Letter schemes: a letter for each sticker of a kind.
//!
//! A letter is a text of one sign or a few, in any script: `A`, `Ж`, `か`, `ko`, `17`.

use cube::{Sticker, plain_sign};
use std::sync::Arc;
use thiserror::Error;

/// The longest letter, in characters.
pub const LONGEST_LETTER: usize = 8;

/// The letters of one kind of piece, one for each sticker, all different.
///
/// ```
/// use blind::Letters;
/// use cube::Orbit;
/// let letters = Letters::default();
/// let rub = Orbit::Corner.sticker("RUB").unwrap();
/// assert_eq!(letters.of(rub), "N");
/// assert_eq!(letters.sticker("n"), Some(rub));
/// // Letters of more than one sign, each with a hyphen to the next.
/// let syllables: Vec<String> = "BDFGKLMNPRST".chars().flat_map(|c| [format!("{c}a"), format!("{c}o")]).collect();
/// let letters = Letters::new(&syllables).unwrap();
/// assert_eq!(letters.spell(&letters.read("dofA go").unwrap()), "Do-Fa-Go");
/// ```
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Letters(Arc<[Box<str>; 24]>);

/// Why texts do not make a letter scheme.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum LettersError {
    /// Not 24 of them.
    #[error("{0} letters for 24 stickers")]
    WrongCount(usize),
    /// A letter for two stickers.
    #[error("the letter {letter} stands for two stickers")]
    Twice {
        /// The letter.
        letter: String,
        /// The two stickers.
        stickers: [Sticker; 2],
    },
    /// A blank, a control sign, a sign that separates letters, or one that joins the sign before it.
    #[error("{0:?} cannot be part of a letter")]
    NoLetter(char),
    /// A letter without any sign.
    #[error("a letter is empty")]
    Empty,
    /// A letter of more than [`LONGEST_LETTER`] characters.
    #[error("a letter has {0} characters; at most {LONGEST_LETTER} are read")]
    TooLong(usize),
}

/// Why a text is no row of letters of a scheme.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum UnknownLetter {
    /// A sign with which no letter of the scheme begins.
    #[error("column {column}: `{found}` is no letter")]
    NoLetter {
        /// Column in characters, from 1.
        column: usize,
        /// What stands there.
        found: char,
    },
    /// More than [`LONGEST_MEMO`] bytes.
    #[error("the text is {0} bytes long; at most {LONGEST_MEMO} are read")]
    TooLong(usize),
    /// Signs that make letters in more than one way.
    #[error("column {column}: the letters can be read in more than one way")]
    Ambiguous {
        /// Column in characters, from 1, where the signs that stand together begin.
        column: usize,
    },
}

/// Characters between letters that say nothing: however a memo is grouped, it is the same memo.
pub const SEPARATORS: &str = "()[]-,.;:/|";

/// Letters that differ only in case are one letter; a memo may be written in either.
fn folded(letter: &str) -> Vec<char> {
    letter.chars().map(folded_sign).collect()
}

/// The longest text of letters that is read, in bytes: a memo of a 7x7 in long letters is many times below.
pub const LONGEST_MEMO: usize = 16 << 10;

/// A sign without its case and its width, one for one: what would be two signs in capitals (ß) stays as it is, or a row of letters could be
/// read in another way than it was written.
fn folded_sign(sign: char) -> char {
    let single = |mut signs: std::char::ToUppercase| signs.next().filter(|_| signs.next().is_none());
    let sign = plain_sign(sign);
    let capital = single(sign.to_uppercase()).unwrap_or(sign);
    let mut small = capital.to_lowercase();
    small.next().filter(|_| small.next().is_none()).unwrap_or(capital)
}

fn separates(sign: char) -> bool {
    let sign = plain_sign(sign);
    sign.is_whitespace() || SEPARATORS.contains(sign)
}

impl Default for Letters {
    /// A to X, in the order of the stickers' numbers.
    fn default() -> Self {
        Self(Arc::new(std::array::from_fn(|at| char::from(b'A' + at as u8).to_string().into())))
    }
}

impl Letters {
    /// A scheme from 24 texts in the order of the stickers' numbers: faces U L F R B D, on each clockwise from
    /// the upper left.
    ///
    /// # Errors
    /// [`LettersError`] when there are not 24, when two are the same but for case, or when one cannot be written.
    pub fn new<T: AsRef<str>>(letters: &[T]) -> Result<Self, LettersError> {
        let mut table: Vec<Box<str>> = Vec::with_capacity(letters.len().min(24));
        for (at, letter) in letters.iter().take(24).enumerate() {
            let letter = letter.as_ref();
            checked(letter)?;
            if let Some(before) = table.iter().position(|other| folded(other) == folded(letter))
                && let (Some(first), Some(second)) = (Sticker::new(before as u8), Sticker::new(at as u8))
            {
                return Err(LettersError::Twice { letter: letter.to_owned(), stickers: [first, second] });
            }
            table.push(letter.into());
        }
        if letters.len() != 24 {
            return Err(LettersError::WrongCount(letters.len()));
        }
        let table: Result<Box<[Box<str>; 24]>, _> = table.into_boxed_slice().try_into();
        table.map(|table| Self(Arc::from(table))).map_err(|_| LettersError::WrongCount(letters.len()))
    }

    /// The letter of a sticker.
    pub fn of(&self, sticker: Sticker) -> &str {
        &self.0[sticker.index()]
    }

    /// All letters in the order of the stickers' numbers.
    pub fn all(&self) -> impl Iterator<Item = &str> {
        self.0.iter().map(|letter| &**letter)
    }

    /// The sticker of a letter, in either case.
    pub fn sticker(&self, letter: &str) -> Option<Sticker> {
        let wanted = folded(letter);
        Sticker::all().find(|&sticker| folded(self.of(sticker)) == wanted)
    }

    /// Whether every letter is one sign, so that letters can stand together without a sign between them.
    pub fn are_single(&self) -> bool {
        self.all().all(|letter| letter.chars().nth(1).is_none())
    }

    /// The stickers sorted by their letters in whatever case; numbers first and by their value.
    pub fn order(&self) -> [Sticker; 24] {
        let mut order: Vec<Sticker> = Sticker::all().collect();
        order.sort_by_cached_key(|&sticker| {
            let letter = self.of(sticker);
            (letter.parse::<u32>().unwrap_or(u32::MAX), folded(letter))
        });
        std::array::from_fn(|at| order[at])
    }

    /// The letters of some targets, one after another; letters of more than one sign with a hyphen between.
    pub fn spell(&self, targets: &[Sticker]) -> String {
        let letters: Vec<&str> = targets.iter().map(|&target| self.of(target)).collect();
        letters.join(if self.are_single() { "" } else { "-" })
    }

    /// Letters of some targets in pairs with a blank between, or without pairs.
    pub fn grouped(&self, targets: &[Sticker], pairs: bool) -> String {
        if !pairs {
            return self.spell(targets);
        }
        targets.chunks(2).map(|pair| self.spell(pair)).collect::<Vec<_>>().join(" ")
    }

    /// The stickers of a row of letters, however they are grouped, separated and in whatever case.
    ///
    /// Signs that stand together are one letter where there is such a letter, else they are taken apart into letters.
    ///
    /// # Errors
    /// [`UnknownLetter`] for the first sign with which no letter can go on, for signs that can be taken apart in
    /// two ways, and for a text of more than [`LONGEST_MEMO`] bytes.
    ///
    /// ```
    /// use blind::Letters;
    /// let letters = Letters::default();
    /// assert_eq!(letters.spell(&letters.read("(hb) J-n").unwrap()), "HBJN");
    /// assert!(letters.read("HZ").is_err());
    /// ```
    pub fn read(&self, text: &str) -> Result<Vec<Sticker>, UnknownLetter> {
        if text.len() > LONGEST_MEMO {
            return Err(UnknownLetter::TooLong(text.len()));
        }
        let folded_letters: Vec<Vec<char>> = self.all().map(folded).collect();
        let mut stickers = Vec::new();
        let mut run: Vec<char> = Vec::new();
        let mut began = 0;
        for (at, sign) in text.chars().chain([' ']).enumerate() {
            if !separates(sign) {
                if run.is_empty() {
                    began = at + 1;
                }
                run.push(sign);
                continue;
            }
            if !run.is_empty() {
                apart(&folded_letters, &run, began, &mut stickers)?;
                run.clear();
            }
        }
        Ok(stickers)
    }
}

fn checked(letter: &str) -> Result<(), LettersError> {
    let count = letter.chars().count();
    if count > LONGEST_LETTER {
        return Err(LettersError::TooLong(count));
    }
    if letter.is_empty() {
        return Err(LettersError::Empty);
    }
    let sign = |sign: char| sign.is_alphanumeric() || sign.is_ascii_punctuation();
    let wrong = letter.chars().find(|&other| !sign(other) || separates(other));
    // Marks that join the sign before them are not alphanumeric, so they are refused here too.
    wrong.map_or(Ok(()), |wrong| Err(LettersError::NoLetter(wrong)))
}

/// Takes signs that stand together apart into letters. `began` is the column of the first.
fn apart(
    letters: &[Vec<char>],
    run: &[char],
    began: usize,
    stickers: &mut Vec<Sticker>,
) -> Result<(), UnknownLetter> {
    let signs: Vec<char> = run.iter().map(|&sign| folded_sign(sign)).collect();
    if let Some(whole) = letters.iter().position(|letter| *letter == signs) {
        stickers.extend(Sticker::new(whole as u8));
        return Ok(());
    }
    let fits = |letter: &[char], at: usize| signs[at..].starts_with(letter);
    // For each place, in how many ways (two stand for more) the rest can be read, and by which letter one begins.
    let mut ways = vec![(0u8, 0usize); signs.len() + 1];
    ways[signs.len()].0 = 1;
    for at in (0..signs.len()).rev() {
        for (number, letter) in letters.iter().enumerate().filter(|(_, letter)| fits(letter, at)) {
            let rest = ways[at + letter.len()].0;
            if rest > 0 {
                ways[at] = ((ways[at].0 + rest).min(2), number);
            }
        }
    }
    if ways[0].0 > 1 {
        return Err(UnknownLetter::Ambiguous { column: began });
    }
    if ways[0].0 == 0 {
        // As far as letters can be read from the left.
        let mut reached = vec![false; signs.len() + 1];
        reached[0] = true;
        for at in 0..signs.len() {
            if reached[at] {
                for letter in letters.iter().filter(|letter| fits(letter, at)) {
                    reached[at + letter.len()] = true;
                }
            }
        }
        let last = reached.iter().rposition(|&here| here).unwrap_or(0).min(signs.len() - 1);
        return Err(UnknownLetter::NoLetter { column: began + last, found: run[last] });
    }
    let mut at = 0;
    while at < signs.len() {
        let number = ways[at].1;
        stickers.extend(Sticker::new(number as u8));
        at += letters[number].len();
    }
    Ok(())
}

/// The scheme of a kind as four letters for each face, in the order U L F R B D: for showing and for files.
pub fn rows(letters: &Letters) -> [[&str; 4]; 6] {
    std::array::from_fn(|face| std::array::from_fn(|at| &*letters.0[face * 4 + at]))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn scheme(letters: &str) -> Letters {
        Letters::new(&letters.split(' ').collect::<Vec<_>>()).expect("a scheme")
    }

    #[test]
    fn letters_of_any_script_and_length() {
        let kana = scheme("か き く け こ さ し す せ そ た ち つ て と な に ぬ ね の は ひ ふ へ");
        assert_eq!(kana.spell(&kana.read("きか くこ").unwrap()), "きかくこ");
        let cyrillic = scheme("А Б В Г Д Е Ж З И К Л М Н О П Р С Т У Ф Х Ц Ч Ш");
        assert_eq!(cyrillic.spell(&cyrillic.read("жШ-а").unwrap()), "ЖША");
        let numbers = scheme("1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16 17 18 19 20 21 22 23 24");
        let read = |text: &str| numbers.read(text).map(|read| numbers.spell(&read));
        assert_eq!(read("12 3-4"), Ok("12-3-4".to_owned()));
        assert_eq!(read("1 123"), Err(UnknownLetter::Ambiguous { column: 3 }));
        assert_eq!(numbers.order().map(Sticker::index).to_vec(), (0..24).collect::<Vec<_>>());
    }

    #[test]
    fn the_first_sign_that_cannot_go_on_is_named() {
        let letters = Letters::default();
        let error = letters.read("AB  cZ A").unwrap_err();
        assert_eq!(error, UnknownLetter::NoLetter { column: 6, found: 'Z' });
        let syllables = scheme("ba be bi bo bu da de di do du ga ge gi go gu ka ke ki ko ku ma me mi mo");
        let error = syllables.read("bada koba gx").unwrap_err();
        assert_eq!(error, UnknownLetter::NoLetter { column: 11, found: 'g' });
    }

    #[test]
    fn what_cannot_be_a_letter_is_refused() {
        let with = |letter: &str| {
            let mut all: Vec<String> = Letters::default().all().map(str::to_owned).collect();
            letter.clone_into(&mut all[3]);
            Letters::new(&all).unwrap_err()
        };
        assert_eq!(with("a b"), LettersError::NoLetter(' '));
        assert_eq!(with("-"), LettersError::NoLetter('-'));
        assert_eq!(with(""), LettersError::Empty);
        assert_eq!(with("\u{301}"), LettersError::NoLetter('\u{301}'));
        assert_eq!(with("abcdefghi"), LettersError::TooLong(9));
        assert!(matches!(with("c"), LettersError::Twice { .. }));
        assert_eq!(Letters::new(&["A"; 3][..1]), Err(LettersError::WrongCount(1)));
    }
}
