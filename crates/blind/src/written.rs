//! Memos as people write them down: letters, numbered and with signs between them, and a word for parity.

use crate::letters::{LONGEST_MEMO, Letters, UnknownLetter};
use cube::Sticker;

/// What a memo of one kind says.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct WrittenMemo {
    /// The stickers of its letters.
    pub letters: Vec<Sticker>,
    /// Whether parity is noted beside them.
    pub parity: bool,
}

/// Signs that people set between letters beside those of [`crate::SEPARATORS`]. Each of them may be a letter of a scheme too, and then it
/// is one. Signs that may stand for a letter not known are not among them.
const LOOSE: &str = "–—‒―‐‑−!+=&·•>→'\"’‘“”„«»";

/// Words that note parity, in small letters.
const PARITY: [&str; 3] = ["parity", "parität", "paritaet"];

impl Letters {
    /// A memo as it was written: as [`Letters::read`] reads letters, but for numbers before a full stop, a colon or a closing bracket where no
    /// letter has a digit, for dashes and other signs that are no letters, and for the word parity. Where letters could spell that, it is taken for the
    /// word if it comes last and other letters before it.
    ///
    /// # Errors
    /// As [`Letters::read`], with the columns of the text as it was given.
    ///
    /// ```
    /// use blind::Letters;
    /// let letters = Letters::default();
    /// let memo = letters.read_memo("1. HB – JN! parity").unwrap();
    /// assert_eq!((letters.spell(&memo.letters).as_str(), memo.parity), ("HBJN", true));
    /// ```
    pub fn read_memo(&self, text: &str) -> Result<WrittenMemo, UnknownLetter> {
        if text.len() > LONGEST_MEMO {
            return Err(UnknownLetter::TooLong(text.len()));
        }
        let has = |wanted: char| self.all().any(|letter| letter.contains(wanted));
        let mut signs: Vec<char> = text.chars().collect();
        for sign in &mut signs {
            if LOOSE.contains(*sign) && !has(*sign) {
                *sign = ' ';
            }
        }
        if !('0'..='9').any(has) {
            blank_numbers(&mut signs);
        }
        let words = words(&signs);
        let mut parity = false;
        for (number, &(from, to)) in words.iter().enumerate() {
            let word: String = signs[from..to].iter().collect();
            let is_word = PARITY.contains(&word.to_lowercase().as_str());
            let is_last = number > 0 && number + 1 == words.len();
            if is_word && (is_last || self.read(&word).is_err()) {
                parity = true;
                signs[from..to].fill(' ');
            }
        }
        let letters = self.read(&signs.iter().collect::<String>())?;
        Ok(WrittenMemo { letters, parity })
    }
}

/// Where words begin and end.
fn words(signs: &[char]) -> Vec<(usize, usize)> {
    let mut words = Vec::new();
    let mut began = None;
    for (at, sign) in signs.iter().chain([&' ']).enumerate() {
        match (sign.is_alphanumeric(), began) {
            (true, None) => began = Some(at),
            (false, Some(from)) => {
                words.push((from, at));
                began = None;
            }
            _ => {}
        }
    }
    words
}

/// Numbers at the beginning of a word that a sign sets off.
fn blank_numbers(signs: &mut [char]) {
    let mut at = 0;
    while at < signs.len() {
        let digits = signs[at..].iter().take_while(|sign| sign.is_ascii_digit()).count();
        let begins = at == 0 || !signs[at - 1].is_alphanumeric();
        let set_off = signs.get(at + digits).is_some_and(|sign| ".):".contains(*sign));
        if digits > 0 && begins && set_off {
            signs[at..at + digits].fill(' ');
        }
        at += digits.max(1);
    }
}
