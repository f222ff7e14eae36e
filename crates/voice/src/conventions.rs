//! Mistakes in a conventions file.

use crate::Voice;
use blind::{LONGEST_LETTER, LettersError};
use cube::{Orbit, Sticker};
use formats::conventions::{ConventionsError, Problem, Wants};

impl Voice {
    /// A mistake in a conventions file, with its place and what would be right.
    pub fn conventions_error(&self, error: &ConventionsError) -> String {
        let what = self.conventions_problem(&error.problem);
        self.placed(error.line, error.column, &what)
    }

    fn meant(&self, meant: Option<&str>) -> String {
        meant.map_or(String::new(), |word| format!(" {}", self.say("did-you-mean", &[("word", word.into())])))
    }

    /// The same without a place, for what was changed on a screen.
    pub fn conventions_problem(&self, problem: &Problem) -> String {
        match problem {
            Problem::NotToml(message) => self.say("toml-no", &[("what", message.as_str().into())]),
            Problem::Document(error) => self.document_error(error),
            Problem::UnknownKey { key, meant, known } => {
                let said = self.say(
                    "toml-unknown-key",
                    &[("key", key.as_str().into()), ("known", known.join(", ").into())],
                );
                said + &self.meant(meant.as_deref())
            }
            Problem::WrongSort { key, needs } => self.say(
                "toml-wrong-sort",
                &[("key", key.as_str().into()), ("needs", self.word(needs_message(*needs)).into())],
            ),
            Problem::UnknownWord { word, meant, known } => {
                let said = self.say(
                    "toml-unknown-word",
                    &[("word", word.as_str().into()), ("known", known.join(", ").into())],
                );
                said + &self.meant(meant.as_deref())
            }
            Problem::NoMethodFor { word, orbit, known } => self.say(
                "toml-no-method-for",
                &[
                    ("word", word.as_str().into()),
                    ("kinds", self.kinds(*orbit).into()),
                    ("known", self.either(known).into()),
                ],
            ),
            Problem::NoSticker { word, orbit, meant } => {
                let said = self.say(
                    "toml-no-sticker",
                    &[("word", word.as_str().into()), ("kind", self.kind(*orbit).into())],
                );
                said + &self.meant(meant.map(|sticker| orbit.name(sticker)))
            }
            Problem::NoShade(text) => self.say("toml-no-shade", &[("text", text.as_str().into())]),
            Problem::ShadeMissing(name) => self.say("toml-shade-missing", &[("name", name.as_str().into())]),
            Problem::ColourTwice(name) => self.say("toml-colour-twice", &[("name", name.as_str().into())]),
            Problem::NoHolding { up, front } => self.say(
                if up == front { "toml-holding-same" } else { "toml-holding-opposite" },
                &[("up", up.as_str().into()), ("front", front.as_str().into())],
            ),
            Problem::Letters { orbit, error } => self.letters_error(*orbit, error),
            Problem::LetterMissing { orbit, sticker } => {
                self.say("letters-missing", &[("sticker", orbit.name(*sticker).into())])
            }
            Problem::Algorithm(error) => {
                self.say("toml-algorithm", &[("what", self.parse_error(error).into())])
            }
            Problem::Swap { orbit, error } => self.swap_error(*orbit, error),
            Problem::NotOnSize { orbit, size, error } => self.cannot_be_made(*orbit, *size, *error),
            Problem::StickerTwice(word) => self.say("toml-sticker-twice", &[("word", word.as_str().into())]),
            Problem::KindsOnce(key) => self.say("toml-kinds-once", &[("key", key.as_str().into())]),
        }
    }

    /// Why letters are no scheme.
    pub fn letters_error(&self, orbit: Orbit, error: &LettersError) -> String {
        let name = |sticker: Sticker| orbit.name(sticker).to_owned();
        match error {
            LettersError::WrongCount(count) => {
                self.say("letters-count", &[("count", (*count).into()), ("kind", self.kind(orbit).into())])
            }
            LettersError::Twice { letter, stickers } => self.say(
                "letters-twice",
                &[
                    ("letter", letter.as_str().into()),
                    ("first", name(stickers[0]).into()),
                    ("second", name(stickers[1]).into()),
                ],
            ),
            LettersError::NoLetter(letter) => {
                self.say("letters-no-letter", &[("letter", format!("{letter:?}").into())])
            }
            LettersError::Empty => self.word("letters-empty"),
            LettersError::TooLong(count) => {
                self.say("letters-too-long", &[("count", (*count).into()), ("most", LONGEST_LETTER.into())])
            }
        }
    }
}

const fn needs_message(needs: Wants) -> &'static str {
    match needs {
        Wants::Table => "needs-table",
        Wants::Text => "needs-text",
        Wants::YesNo => "needs-yes-no",
        Wants::Whole => "needs-whole",
        Wants::List => "needs-list",
        Wants::Letters => "needs-letters",
        Wants::Breaks => "needs-breaks",
        Wants::Colour => "needs-colour",
    }
}
