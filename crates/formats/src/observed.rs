//! What is known of the puzzle after an attempt, as it is typed.

use blind::{kind_name, kind_named};
use cube::{Orbit, Sticker, plain_sign};
use diagnosis::{Observed, Seen};
use std::fmt::Write as _;
use thiserror::Error;

/// The most bytes that are read.
pub const MOST_BYTES: usize = 16 << 10;

/// The kinds whose pieces can be told: those of the puzzles whose attempts are explained.
const KINDS: [Orbit; 2] = [Orbit::Corner, Orbit::Midge];

/// Why a text does not say which pieces are unsolved.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum ObservedError {
    /// A word that is no sticker of a corner or an edge.
    #[error("column {column}: `{found}` is no sticker of a corner or an edge; one is written like UFR or UF")]
    NoSticker {
        /// Column in characters, from 1.
        column: usize,
        /// What stands there.
        found: String,
    },
    /// A cycle of corners and edges mixed, or of the same piece twice in its middle.
    #[error("column {column}: `{found}` does not go on with another piece of the same kind")]
    NoCycle {
        /// Column in characters, from 1.
        column: usize,
        /// What stands there.
        found: String,
    },
    /// A word after the pieces that says nothing known.
    #[error("column {column}: `{found}` is not understood after {piece}; say {}", .expected.join(" or "))]
    NoWord {
        /// Column in characters, from 1.
        column: usize,
        /// What stands there.
        found: String,
        /// The piece before it.
        piece: &'static str,
        /// What may stand there.
        expected: &'static [&'static str],
    },
    /// A piece that two items speak of.
    #[error("column {column}: {piece} was named before")]
    Twice {
        /// Column in characters, from 1.
        column: usize,
        /// The piece.
        piece: &'static str,
    },
    /// Longer than what can be seen.
    #[error("{bytes} bytes are too many; at most {most} are read")]
    TooLong {
        /// Its length.
        bytes: usize,
        /// The most that is read.
        most: usize,
    },
    /// Nothing was said.
    #[error("no unsolved piece is named; a solved puzzle needs no explanation")]
    Nothing,
    /// A count of a kind that is not known, or no count.
    #[error("column {column}: `{found}` is no count; one is written like `3 corners`")]
    NoCount {
        /// Column in characters, from 1.
        column: usize,
        /// What stands there.
        found: String,
    },
    /// More pieces than there are.
    #[error("column {column}: there are only {most} {}s", kind_name(*.orbit))]
    TooMany {
        /// Column in characters, from 1.
        column: usize,
        /// How many there are.
        most: u8,
        /// The kind.
        orbit: Orbit,
    },
}

const FLIP_WORDS: &[&str] = &["flipped", "?"];
const TWIST_WORDS: &[&str] = &["twisted", "twisted clockwise", "twisted counter-clockwise", "?"];

/// Parts of a text with the column in characters where each begins.
fn parts<'a>(text: &'a str, separators: &[char]) -> Vec<(usize, &'a str)> {
    let mut column = 1;
    let mut found = Vec::new();
    for part in text.split(separators) {
        let lead = part.chars().take_while(|letter| letter.is_whitespace()).count();
        if !part.trim().is_empty() {
            found.push((column + lead, part.trim()));
        }
        column += part.chars().count() + 1;
    }
    found
}

fn sticker(name: &str) -> Option<(Orbit, Sticker)> {
    let upper = name.to_uppercase();
    KINDS.into_iter().find_map(|orbit| Some((orbit, orbit.sticker(&upper)?)))
}

/// Reads unsolved pieces, or counts of them: `UF flipped; UFR>DBL>UBR; UL?`, or `3 corners, 2 edges`.
///
/// Items stand between `;` or `,`. A cycle is read as a trace: at UFR lies what belongs at DBL. A `?` after a cycle
/// says that the turning was not looked at; a piece alone is unsolved in whatever way.
///
/// # Errors
/// [`ObservedError`] with the column of what is not understood.
///
/// ```
/// use diagnosis::{Observed, Seen};
/// use formats::observed::read;
/// let Ok(Observed::Pieces(seen)) = read("UF flipped; UFR>DBL>UBR") else { panic!() };
/// assert!(matches!(&seen[1], Seen::Cycle { stickers, turning: true, .. } if stickers.len() == 3));
/// assert_eq!(read("UF floppy").unwrap_err().to_string(),
///     "column 4: `floppy` is not understood after UF; say flipped or ?");
/// ```
pub fn read(text: &str) -> Result<Observed, ObservedError> {
    if text.len() > MOST_BYTES {
        return Err(ObservedError::TooLong { bytes: text.len(), most: MOST_BYTES });
    }
    // One sign for one, so that columns stay.
    let text: &str = &text.chars().map(plain_sign).collect::<String>();
    let items = parts(text, &[';', ',', '\n']);
    let Some((_, first)) = items.first() else { return Err(ObservedError::Nothing) };
    if first.starts_with(|letter: char| letter.is_ascii_digit()) {
        return read_counts(&items);
    }
    let mut seen = Vec::new();
    let mut named: Vec<(Orbit, cube::Piece)> = Vec::new();
    for (column, item) in items {
        let read = read_item(column, item)?;
        let (orbit, stickers) = read.stickers();
        for (number, &sticker) in stickers.iter().enumerate() {
            let piece = (orbit, orbit.piece(sticker));
            let closes = number > 0 && number + 1 == stickers.len() && piece.1 == orbit.piece(stickers[0]);
            if named.contains(&piece) && !closes {
                return Err(ObservedError::Twice { column, piece: orbit.piece_name(sticker) });
            }
            named.push(piece);
        }
        seen.push(read);
    }
    Ok(Observed::Pieces(seen))
}

fn read_counts(items: &[(usize, &str)]) -> Result<Observed, ObservedError> {
    let mut counts: Vec<(Orbit, usize)> = Vec::new();
    for &(column, item) in items {
        let wrong = || ObservedError::NoCount { column, found: item.to_owned() };
        let (count, kind) = item.split_once(char::is_whitespace).ok_or_else(wrong)?;
        let count: usize = count.parse().map_err(|_| wrong())?;
        let kind = kind.trim();
        let orbit = kind_named(kind.strip_suffix('s').unwrap_or(kind));
        let orbit = orbit.filter(|orbit| KINDS.contains(orbit)).ok_or_else(wrong)?;
        if count > orbit.pieces() as usize {
            return Err(ObservedError::TooMany { column, most: orbit.pieces(), orbit });
        }
        if counts.iter().any(|(other, _)| *other == orbit) {
            return Err(ObservedError::Twice { column, piece: kind_name(orbit) });
        }
        counts.push((orbit, count));
    }
    if counts.iter().all(|&(_, count)| count == 0) {
        return Err(ObservedError::Nothing);
    }
    Ok(Observed::Counts(counts))
}

fn read_item(column: usize, item: &str) -> Result<Seen, ObservedError> {
    let (body, unlooked) = match item.strip_suffix('?') {
        Some(body) => (body.trim_end(), true),
        None => (item, false),
    };
    let (names, word) = match body.split_once(char::is_whitespace) {
        Some((names, word)) if !names.ends_with('>') && !word.trim_start().starts_with('>') => {
            (names, word.trim())
        }
        _ => (body, ""),
    };
    let mut read: Vec<(Orbit, Sticker)> = Vec::new();
    let all = parts(names, &['>']);
    for &(offset, name) in &all {
        let column = column + offset - 1;
        let found = || name.to_owned();
        let (orbit, at) = sticker(name).ok_or_else(|| ObservedError::NoSticker { column, found: found() })?;
        let closes = read.len() + 1 == all.len();
        let known =
            |&(kind, other): &(Orbit, Sticker)| kind != orbit || orbit.piece(other) == orbit.piece(at);
        let clash = if closes { read.iter().skip(1).any(known) } else { read.iter().any(known) };
        if clash || read.first().is_some_and(|&(kind, _)| kind != orbit) {
            return Err(ObservedError::NoCycle { column, found: found() });
        }
        read.push((orbit, at));
    }
    let Some(&(orbit, first)) = read.first() else {
        return Err(ObservedError::NoSticker { column, found: item.to_owned() });
    };
    let piece = orbit.piece_name(first);
    let expected = if orbit == Orbit::Corner { TWIST_WORDS } else { FLIP_WORDS };
    if read.len() > 1 {
        if !word.is_empty() {
            let column = column + names.chars().count() + 1;
            return Err(ObservedError::NoWord { column, found: word.to_owned(), piece, expected: &["?"] });
        }
        let stickers: Vec<Sticker> = read.into_iter().map(|(_, sticker)| sticker).collect();
        return Ok(Seen::Cycle { orbit, stickers, turning: !unlooked });
    }
    let turned = |clockwise| Ok(Seen::Turned { orbit, sticker: first, clockwise });
    match (word, orbit) {
        ("", _) => Ok(Seen::Unsolved { orbit, sticker: first }),
        ("twisted", Orbit::Corner) => turned(None),
        ("flipped", Orbit::Midge) | ("twisted clockwise", Orbit::Corner) => turned(Some(1)),
        ("twisted counter-clockwise", Orbit::Corner) => turned(Some(2)),
        _ => {
            let mut found = String::new();
            let _ = write!(found, "{word}");
            Err(ObservedError::NoWord { column: column + names.chars().count() + 1, found, piece, expected })
        }
    }
}
