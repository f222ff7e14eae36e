//! Reading a sequence of moves as it is typed.

use cube::display_turns;
use serde::{Deserialize, Serialize};

use crate::Failure;
use crate::call::Call;
use crate::document::DocumentName;
use crate::names::{moves, size};

/// A sequence as it was typed.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Typed {
    /// Layers of the cube, 2 to 7.
    pub size: u8,
    /// The conventions; they say what lower-case letters stand for.
    pub conventions: DocumentName,
    /// The text.
    pub text: String,
}

/// What the text means.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Sequence {
    /// The moves, brackets worked out, in the usual writing.
    pub moves: String,
    /// How many moves those are; a turn of the whole cube counts as one.
    pub length: u32,
}

pub(crate) fn sequence(call: &mut Call<'_>, typed: &Typed) -> Result<Sequence, Failure> {
    let size = size(call.voice, typed.size)?;
    let conventions = call.desk.conventions(call.voice, &typed.conventions)?.conventions;
    let turns = moves(call.voice, &conventions, size, &typed.text)?.flatten();
    Ok(Sequence { moves: display_turns(&turns).to_string(), length: turns.len() as u32 })
}

#[cfg(test)]
mod tests {
    use super::*;
    use voice::{Language, Voice};

    fn read_with(language: Language, size: u8, text: &str) -> Result<Sequence, Failure> {
        let voice = Voice::new(language);
        let mut desk = crate::desk::Desk::default();
        let conventions = DocumentName { handle: "usual".to_owned(), revision: 1 };
        desk.documents.put(crate::DocumentKind::Conventions, conventions.clone(), "");
        let mut call = Call { voice: &voice, report: &mut |_| {}, desk: &mut desk };
        sequence(&mut call, &Typed { size, conventions, text: text.to_owned() })
    }

    fn read(text: &str) -> Result<Sequence, Failure> {
        read_with(Language::English, 3, text)
    }

    #[test]
    fn brackets_are_worked_out() {
        let view = read("[R, U]").unwrap();
        assert_eq!((view.moves.as_str(), view.length), ("R U R' U'", 4));
    }

    #[test]
    fn the_place_is_where_a_browser_would_mark_it() {
        for (text, from, to) in [("R U\nF K", 6, 7), ("R U // 🙂\nK", 10, 11), ("K", 0, 1), ("(R", 2, 2)] {
            let failure = read(text).unwrap_err();
            let place = failure.place.unwrap();
            let units: Vec<u16> = text.encode_utf16().collect();
            assert!(place.to as usize <= units.len(), "{text:?}");
            assert_eq!((place.from, place.to), (from, to), "{text:?}: {}", failure.sentence);
        }
    }

    #[test]
    fn the_sentence_is_in_the_language_of_the_call() {
        let failure = read_with(Language::German, 3, "R U K").unwrap_err();
        assert!(failure.sentence.contains("Spalte 5"), "{}", failure.sentence);
    }

    #[test]
    fn a_size_that_is_no_cube_is_refused() {
        assert!(read_with(Language::English, 9, "").is_err());
    }
}
