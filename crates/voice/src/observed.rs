//! What is wrong with what was told of how a puzzle came out.

use crate::{Voice, excerpt};
use fluent_bundle::FluentValue;
use formats::observed::ObservedError;

impl Voice {
    /// What is wrong with what was told, with the word and what would be understood.
    pub fn observed_error(&self, error: &ObservedError) -> String {
        let placed = |message: &str, column: usize, blanks: &[(&str, FluentValue<'_>)]| {
            let mut all = vec![("column", column.into())];
            all.extend_from_slice(blanks);
            self.say(message, &all)
        };
        let found = |found: &String| ("found", found.clone().into());
        match error {
            ObservedError::NoSticker { column, found: it } => {
                placed("observed-no-sticker", *column, &[found(it)])
            }
            ObservedError::KindNeeded { column, found: it } => {
                placed("observed-kind-needed", *column, &[found(it)])
            }
            ObservedError::NoLetter { column, found: it, orbit } => {
                placed("observed-no-letter", *column, &[found(it), ("kinds", self.kinds(*orbit).into())])
            }
            ObservedError::NoPiece { column, found: it } => {
                placed("observed-no-piece", *column, &[found(it)])
            }
            ObservedError::OtherKind { column, found: it, orbit } => placed(
                "observed-other-kind",
                *column,
                &[found(it), ("kind", crate::puzzle::sort(*orbit).into())],
            ),
            ObservedError::NoCycle { column, found: it } => {
                placed("observed-no-cycle", *column, &[found(it)])
            }
            ObservedError::Same { column, sticker } => {
                placed("observed-same", *column, &[("sticker", (*sticker).into())])
            }
            ObservedError::NoCount { column, found: it } => {
                placed("observed-no-count", *column, &[found(it)])
            }
            ObservedError::NoWord { column, found: it, piece, expected } => {
                let expected = self.word(&format!("observed-expected-{}", expected.name()));
                let blanks =
                    [found(it), ("piece", excerpt(piece).into_owned().into()), ("expected", expected.into())];
                placed("observed-no-word", *column, &blanks)
            }
            ObservedError::NotTwo { column, found: it, count, cycle } => {
                let wanted = if *cycle { "cycle" } else { "two" };
                let blanks = [found(it), ("count", (*count).into()), ("wanted", wanted.into())];
                placed("observed-not-two", *column, &blanks)
            }
            ObservedError::Twice { column, piece } => {
                let piece = match blind::kind_named(piece) {
                    Some(orbit) => self.kinds(orbit),
                    None => (*piece).to_owned(),
                };
                placed("observed-twice", *column, &[("piece", piece.into())])
            }
            ObservedError::TooLong { bytes, most } => {
                self.say("document-too-long", &[("bytes", (*bytes).into()), ("most", (*most).into())])
            }
            ObservedError::Nothing => self.word("observed-nothing"),
            ObservedError::TooMany { column, most, orbit } => placed(
                "observed-too-many",
                *column,
                &[("most", (*most).into()), ("kinds", self.kinds(*orbit).into())],
            ),
            ObservedError::Stickers(error) => self.state_text_error(error),
            ObservedError::OtherSize { found, size } => self.say(
                "why-other-size",
                &[("planned", size.to_string().into()), ("seen", found.to_string().into())],
            ),
        }
    }
}
