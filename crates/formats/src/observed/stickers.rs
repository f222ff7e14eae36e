//! Colours of stickers, of which some are not known.
//!
//! What is not known is written `?`. The text is read twice with a colour in place of each `?`, another one each time: what differs
//! then is what is not known, whatever form the text has.

use super::words::{Mark, small, tokens};
use super::{ObservedError, Vocabulary};
use crate::document::Place;
use crate::state_text::{self, StateTextError};
use cube::{Face, Facelets};
use diagnosis::{Glimpse, Observed};

/// Words for the faces before a colon, besides their letters.
const FACES: [(Face, &[&str]); 6] = [
    (Face::U, &["up", "top", "upper", "oben"]),
    (Face::L, &["left", "links"]),
    (Face::F, &["front", "vorn", "vorne"]),
    (Face::R, &["right", "rechts"]),
    (Face::B, &["back", "hinten"]),
    (Face::D, &["down", "bottom", "unten"]),
];

/// A text whose signs know where they were written.
#[derive(Clone, Debug, Default)]
struct Copied {
    signs: Vec<(char, Place)>,
}

impl Copied {
    fn new(text: &str) -> Self {
        let mut place = Place { line: 1, column: 1 };
        let signs = text.chars().map(|sign| {
            let here = place;
            place = if sign == '\n' {
                Place { line: place.line + 1, column: 1 }
            } else {
                Place { column: place.column + 1, ..place }
            };
            (sign, here)
        });
        Self { signs: signs.collect() }
    }

    /// The same with something in place of each `?`.
    fn filled(&self, with: &str) -> Self {
        let signs = self.signs.iter().flat_map(|&(sign, place)| {
            let instead: Vec<char> = if sign == '?' { with.chars().collect() } else { vec![sign] };
            instead.into_iter().map(move |sign| (sign, place))
        });
        Self { signs: signs.collect() }
    }

    fn text(&self) -> String {
        self.signs.iter().map(|&(sign, _)| sign).collect()
    }

    /// Where a sign was written that has this place in the text.
    fn origin(&self, at: Place) -> Place {
        let mut place = Place { line: 1, column: 1 };
        for &(sign, origin) in &self.signs {
            if place == at {
                return origin;
            }
            place = if sign == '\n' {
                Place { line: place.line + 1, column: 1 }
            } else {
                Place { column: place.column + 1, ..place }
            };
        }
        at
    }
}

/// Reads the colours of all stickers, `?` for those not known.
pub(super) fn read(text: &str, reading: &Vocabulary<'_>) -> Result<Observed, ObservedError> {
    glimpse(&Copied::new(text), reading)
}

/// Whether a text that cannot be read is meant to be colours: most of what stands there is.
pub(super) fn is_meant(text: &str, reading: &Vocabulary<'_>) -> bool {
    let mut colours = 0;
    let mut others = 0;
    for token in tokens(text) {
        match token.mark {
            Mark::Word(word) => {
                let word = small(&word);
                let signs = word.chars().count();
                let initials = reading.colours.initials().unwrap_or(reading.colours.drawn());
                let initial =
                    |sign: char| initials.iter().any(|it| it.to_lowercase().eq(sign.to_lowercase()));
                let is_word = reading.colours.by_word(&word.chars().collect::<Vec<_>>()).is_some();
                if is_word {
                    colours += 1;
                } else {
                    let known = word.chars().filter(|&sign| initial(sign)).count();
                    colours += known;
                    others += signs - known;
                }
            }
            Mark::Query => colours += 1,
            Mark::Arrow | Mark::Both => others += 1,
            _ => {}
        }
    }
    colours >= 12 && colours > 3 * others
}

fn glimpse(text: &Copied, reading: &Vocabulary<'_>) -> Result<Observed, ObservedError> {
    let names = reading.colours;
    // As initials, as a net shows them, and as words.
    let letters = |letters: [char; 6]| [letters[0].to_string(), letters[5].to_string()];
    let words = [Face::U, Face::D].map(|face| format!(" {} ", names.word(face)));
    let initials = names.initials().map(letters);
    let ways = initials.into_iter().chain([letters(names.drawn()), words]);
    let mut first = None;
    for [one, other] in ways {
        let filled = [text.filled(&one), text.filled(&other)];
        let read = filled.each_ref().map(|filled| state_text::read(&filled.text(), names));
        match read {
            [Ok(one), Ok(other)] => return differing(&one, &other, reading),
            [Err(error), _] | [_, Err(error)] => {
                first.get_or_insert(placed(error, &filled[0]));
            }
        }
    }
    Err(ObservedError::Stickers(first.unwrap_or(StateTextError::Empty)))
}

fn differing(one: &Facelets, other: &Facelets, reading: &Vocabulary<'_>) -> Result<Observed, ObservedError> {
    let size = reading.size;
    if one.size() != size {
        return Err(ObservedError::OtherSize { found: one.size(), size });
    }
    let both = one.colours().iter().zip(other.colours());
    let colours: Vec<Option<Face>> = both.map(|(one, other)| (one == other).then_some(*one)).collect();
    if colours.iter().all(Option::is_none) {
        return Err(ObservedError::Nothing);
    }
    let glimpse = Glimpse::new(size, colours).ok_or(ObservedError::OtherSize { found: one.size(), size })?;
    Ok(Observed::Stickers(Box::new(glimpse)))
}

/// An error with the place where it was written.
fn placed(error: StateTextError, text: &Copied) -> StateTextError {
    match error {
        StateTextError::NoColour { place, spot, found, meant, expected } => {
            StateTextError::NoColour { place: text.origin(place), spot, found, meant, expected }
        }
        other => other,
    }
}

/// Reads some faces, each with its name and a colon before it; `None` for a text without such names.
pub(super) fn faces(text: &str, reading: &Vocabulary<'_>) -> Option<Result<Observed, ObservedError>> {
    let tokens = tokens(text);
    let headings: Vec<(usize, Face)> = tokens
        .windows(2)
        .enumerate()
        .filter(|(_, pair)| pair[1].mark == Mark::Colon)
        .filter_map(|(at, pair)| match &pair[0].mark {
            Mark::Word(word) => Some((at, face(word)?)),
            _ => None,
        })
        .collect();
    let &(first, _) = headings.first()?;
    let signs = Copied::new(text).signs;
    let mut written: [Option<Copied>; 6] = [const { None }; 6];
    if let Some(token) = tokens.first().filter(|_| first > 0) {
        let found = text.chars().skip(token.column - 1).take_while(|sign| !sign.is_whitespace()).collect();
        return Some(Err(ObservedError::NoSticker { column: token.column, found }));
    }
    for (number, &(at, face)) in headings.iter().enumerate() {
        let begin = tokens[at + 1].column;
        let end = headings.get(number + 1).map_or(signs.len(), |&(next, _)| tokens[next].column - 1);
        if written[face.index()].is_some() {
            return Some(Err(ObservedError::Twice { column: tokens[at].column, piece: face_name(face) }));
        }
        // A face is one line, however it was broken.
        let line =
            signs[begin..end].iter().map(|&(sign, place)| (if sign == '\n' { ' ' } else { sign }, place));
        written[face.index()] = Some(Copied { signs: line.collect() });
    }
    let nowhere = Place { line: 1, column: 1 };
    let count = reading.size.facelets() / Face::ALL.len();
    let mut whole = Copied::default();
    for face in written {
        match face {
            Some(face) => whole.signs.extend(face.signs),
            None => whole.signs.extend(std::iter::repeat_n(('?', nowhere), count)),
        }
        whole.signs.push(('\n', nowhere));
    }
    Some(glimpse(&whole, reading))
}

fn face(word: &str) -> Option<Face> {
    let mut signs = word.chars();
    let single = signs.next().filter(|_| signs.next().is_none());
    let letter = single.and_then(|sign| Face::from_letter(sign.to_ascii_uppercase()));
    let word = small(word);
    letter.or_else(|| FACES.iter().find(|(_, words)| words.contains(&word.as_str())).map(|&(face, _)| face))
}

const fn face_name(face: Face) -> &'static str {
    match face {
        Face::U => "U",
        Face::L => "L",
        Face::F => "F",
        Face::R => "R",
        Face::B => "B",
        Face::D => "D",
    }
}
