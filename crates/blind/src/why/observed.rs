//! What is known of the puzzle after the attempt.

use super::WhyError;
use cube::{Element, Group, Orbit, Sticker};
use std::fmt::Write as _;
use thiserror::Error;

/// What the puzzle looks like after the attempt.
///
/// Stickers are named as for the memo: in the hold in which the attempt is made, so that a solved puzzle has every
/// sticker at home.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Observed {
    /// Everything; the puzzle may be held in any way.
    State(Box<cube::State>),
    /// The unsolved pieces, all of them.
    Pieces(Vec<Seen>),
    /// Only how many pieces of each kind are unsolved; kinds that are not named are solved.
    Counts(Vec<(Orbit, usize)>),
}

/// What is known of one or more unsolved pieces.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Seen {
    /// Read as a trace: at the first sticker's place lies what belongs at the second, and so on; at the last one's
    /// what belongs at the first.
    Cycle {
        /// The kind of piece.
        orbit: Orbit,
        /// The stickers, each of another piece; the last may be of the first piece again, turned.
        stickers: Vec<Sticker>,
        /// Whether the turning was looked at. If not, the stickers stand for their pieces only.
        turning: bool,
    },
    /// A piece in its place, turned so many stickers clockwise; `None` for a twist of either way.
    Turned {
        /// The kind of piece.
        orbit: Orbit,
        /// A sticker of the piece.
        sticker: Sticker,
        /// 1 for an edge, 1 or 2 for a corner.
        clockwise: Option<u8>,
    },
    /// A place that is not right, nothing more.
    Unsolved {
        /// The kind of piece.
        orbit: Orbit,
        /// A sticker of the place.
        sticker: Sticker,
    },
}

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
    #[error("column {column}: there are only {most} {}s", crate::kind_name(*.orbit))]
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
    [Orbit::Corner, Orbit::Midge].into_iter().find_map(|orbit| Some((orbit, orbit.sticker(&upper)?)))
}

impl Observed {
    /// Reads unsolved pieces, or counts of them: `UF flipped; UFR>DBL>UBR; UL?`, or `3 corners, 2 edges`.
    ///
    /// Items stand between `;` or `,`. A cycle is read as a trace: at UFR lies what belongs at DBL. A `?` after a cycle
    /// says that the turning was not looked at; a piece alone is unsolved in whatever way.
    ///
    /// # Errors
    /// [`ObservedError`] with the column of what is not understood.
    ///
    /// ```
    /// use blind::{Observed, Seen};
    /// let Ok(Observed::Pieces(seen)) = Observed::read("UF flipped; UFR>DBL>UBR") else { panic!() };
    /// assert!(matches!(&seen[1], Seen::Cycle { stickers, turning: true, .. } if stickers.len() == 3));
    /// assert_eq!(Observed::read("UF floppy").unwrap_err().to_string(),
    ///     "column 4: `floppy` is not understood after UF; say flipped or ?");
    /// ```
    pub fn read(text: &str) -> Result<Self, ObservedError> {
        let items = parts(text, &[';', ',', '\n']);
        let Some((_, first)) = items.first() else { return Err(ObservedError::Nothing) };
        if first.starts_with(|letter: char| letter.is_ascii_digit()) {
            return Self::read_counts(&items);
        }
        let mut seen = Vec::new();
        let mut named: Vec<(Orbit, cube::Piece)> = Vec::new();
        for (column, item) in items {
            let read = read_item(column, item)?;
            let (orbit, stickers) = read.stickers();
            for (number, &sticker) in stickers.iter().enumerate() {
                let piece = (orbit, orbit.piece(sticker));
                let closes =
                    number > 0 && number + 1 == stickers.len() && piece.1 == orbit.piece(stickers[0]);
                if named.contains(&piece) && !closes {
                    return Err(ObservedError::Twice { column, piece: orbit.piece_name(sticker) });
                }
                named.push(piece);
            }
            seen.push(read);
        }
        Ok(Self::Pieces(seen))
    }

    /// The colours that are meant, if everything is known, also where turning cannot lead there; for a puzzle that is
    /// held to solve by `holding` (see [`crate::Conventions::holding`]).
    pub fn facelets(&self, size: cube::Size, holding: cube::Rotation) -> Option<cube::Facelets> {
        let wanted = match self {
            Self::State(state) => return Some(state.facelets()),
            _ => Wanted::new(self, size)?,
        };
        let perms = wanted.exactly(size).ok()??;
        let held = cube::State::held(size, holding);
        let mut seen = held.facelets();
        for (&orbit, perm) in Orbit::of(size).iter().zip(&perms) {
            for place in Sticker::all() {
                let (row, column) = cube::Facelets::cell_of(size, orbit, place);
                seen.set(place.face(), row, column, held.at(orbit, perm.at(place)).face());
            }
        }
        Some(seen)
    }

    fn read_counts(items: &[(usize, &str)]) -> Result<Self, ObservedError> {
        let mut counts: Vec<(Orbit, usize)> = Vec::new();
        for &(column, item) in items {
            let wrong = || ObservedError::NoCount { column, found: item.to_owned() };
            let (count, kind) = item.split_once(char::is_whitespace).ok_or_else(wrong)?;
            let count: usize = count.parse().map_err(|_| wrong())?;
            let kind = kind.trim();
            let orbit = crate::kind_named(kind.strip_suffix('s').unwrap_or(kind)).ok_or_else(wrong)?;
            if count > orbit.pieces() as usize {
                return Err(ObservedError::TooMany { column, most: orbit.pieces(), orbit });
            }
            if counts.iter().any(|(other, _)| *other == orbit) {
                return Err(ObservedError::Twice { column, piece: crate::kind_name(orbit) });
            }
            counts.push((orbit, count));
        }
        if counts.iter().all(|&(_, count)| count == 0) {
            return Err(ObservedError::Nothing);
        }
        Ok(Self::Counts(counts))
    }
}

impl Seen {
    fn stickers(&self) -> (Orbit, &[Sticker]) {
        match self {
            Self::Cycle { orbit, stickers, .. } => (*orbit, stickers),
            Self::Turned { orbit, sticker, .. } | Self::Unsolved { orbit, sticker } => {
                (*orbit, std::slice::from_ref(sticker))
            }
        }
    }
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

/// What is asked of the outcome, for each place.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
enum Place {
    Solved,
    /// Another piece or another way round, unknown which.
    Unsolved,
    /// This piece, either way round.
    Piece(Sticker),
    /// This sticker.
    Exactly(Sticker),
    /// The own piece, turned either way.
    Turned,
}

/// What is known, made ready for comparing with many outcomes.
#[derive(Clone, Debug)]
pub(crate) struct Wanted {
    /// By kind and place, by the place's reference sticker; empty for counts.
    places: Vec<(Orbit, Sticker, Place)>,
    counts: Option<Vec<(Orbit, usize)>>,
}

impl Wanted {
    /// What is asked of the outcome; `None` for a whole state, which is compared as an element.
    pub(crate) fn new(observed: &Observed, size: cube::Size) -> Option<Self> {
        match observed {
            Observed::State(_) => None,
            Observed::Counts(counts) => {
                let of = |orbit: Orbit| {
                    counts.iter().find(|(other, _)| *other == orbit).map_or(0, |&(_, count)| count)
                };
                let counts = Orbit::of(size).iter().map(|&orbit| (orbit, of(orbit))).collect();
                Some(Self { places: Vec::new(), counts: Some(counts) })
            }
            Observed::Pieces(seen) => {
                let kinds = Orbit::of(size).iter().copied();
                let mut places: Vec<(Orbit, Sticker, Place)> = kinds
                    .flat_map(|orbit| {
                        orbit.all_pieces().map(move |piece| (orbit, orbit.reference(piece), Place::Solved))
                    })
                    .collect();
                for item in seen {
                    demand(item, &mut places);
                }
                Some(Self { places, counts: None })
            }
        }
    }

    /// The state that is meant, if everything is known, by kind.
    ///
    /// # Errors
    /// [`WhyError::Contradiction`] when two places would show the same piece.
    pub(crate) fn exactly(&self, size: cube::Size) -> Result<Option<Vec<cube::Perm>>, WhyError> {
        if self.counts.is_some() {
            return Ok(None);
        }
        let mut perms = Vec::new();
        for &orbit in Orbit::of(size) {
            let mut table = *cube::Perm::IDENTITY.table();
            for &(_, place, demanded) in self.places.iter().filter(|(kind, ..)| *kind == orbit) {
                let there = match demanded {
                    Place::Solved => place,
                    Place::Exactly(sticker) => sticker,
                    _ => return Ok(None),
                };
                for (at, lies) in orbit.stickers_from(place).zip(orbit.stickers_from(there)) {
                    table[at.index()] = lies.index() as u8;
                }
            }
            perms.push(cube::Perm::new(table).ok_or(WhyError::Contradiction)?);
        }
        Ok(Some(perms))
    }

    /// An element with every piece where it was seen, the turning as it may be; `None` when not every piece was.
    pub(crate) fn places(&self) -> Option<Vec<(Orbit, Sticker, Sticker)>> {
        if self.counts.is_some() {
            return None;
        }
        self.places
            .iter()
            .map(|&(orbit, place, demanded)| match demanded {
                Place::Solved | Place::Turned => Some((orbit, place, place)),
                Place::Exactly(sticker) | Place::Piece(sticker) => Some((orbit, place, sticker)),
                Place::Unsolved => None,
            })
            .collect()
    }

    /// Whether an outcome, named as solved is the identity and held as it should be, is what was seen.
    pub(crate) fn fits(&self, outcome: &Element, group: &Group) -> bool {
        if let Some(counts) = &self.counts {
            return counts.iter().all(|&(orbit, count)| {
                let unsolved = orbit
                    .all_pieces()
                    .map(|piece| orbit.reference(piece))
                    .filter(|&place| group.at(outcome, orbit, place) != place)
                    .count();
                unsolved == count
            });
        }
        self.places.iter().all(|&(orbit, place, demanded)| {
            let there = group.at(outcome, orbit, place);
            match demanded {
                Place::Solved => there == place,
                Place::Unsolved => there != place,
                Place::Piece(sticker) => orbit.piece(there) == orbit.piece(sticker) && there != place,
                Place::Exactly(sticker) => there == sticker,
                Place::Turned => there != place && orbit.piece(there) == orbit.piece(place),
            }
        })
    }

    /// [`Wanted::fits`] in the standard hold; on sizes without fixed centres in any hold.
    pub(crate) fn fits_held(&self, outcome: &Element, group: &'static Group, odd: bool) -> bool {
        if odd {
            return self.fits(&outcome.then(&group.holds()[group.standard_hold(outcome)]), group);
        }
        group.holds().iter().any(|hold| self.fits(&outcome.then(hold), group))
    }
}

fn demand(item: &Seen, places: &mut [(Orbit, Sticker, Place)]) {
    let mut set = |orbit: Orbit, at: Sticker, demanded: Place| {
        let reference = orbit.reference(orbit.piece(at));
        // Said of the sticker `at`; kept for the reference sticker of the place.
        let steps = orbit.stickers_from(at).position(|sticker| sticker == reference).unwrap_or(0) as u8;
        let moved = match demanded {
            Place::Exactly(sticker) => Place::Exactly(orbit.turned(sticker, steps)),
            other => other,
        };
        for entry in places.iter_mut().filter(|(kind, place, _)| *kind == orbit && *place == reference) {
            entry.2 = moved;
        }
    };
    match item {
        Seen::Unsolved { orbit, sticker } => set(*orbit, *sticker, Place::Unsolved),
        Seen::Turned { orbit, sticker, clockwise: None } => set(*orbit, *sticker, Place::Turned),
        Seen::Turned { orbit, sticker, clockwise: Some(steps) } => {
            // Turned clockwise by one, the sticker that belongs here lies one further; here lies the one before it.
            let back = orbit.stickers_per_piece() - steps % orbit.stickers_per_piece();
            set(*orbit, *sticker, Place::Exactly(orbit.turned(*sticker, back)));
        }
        Seen::Cycle { orbit, stickers, turning } => {
            let closes = stickers.len() > 2 && {
                let last = stickers[stickers.len() - 1];
                orbit.piece(last) == orbit.piece(stickers[0])
            };
            let count = if closes { stickers.len() - 1 } else { stickers.len() };
            for at in 0..count {
                let next = stickers.get(at + 1).copied().unwrap_or(stickers[0]);
                set(*orbit, stickers[at], if *turning { Place::Exactly(next) } else { Place::Piece(next) });
            }
        }
    }
}
