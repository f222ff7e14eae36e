//! Changes of conventions: what follows from one, and why one is refused.

use crate::Voice;
use blind::{ChangeError, Consequence, Misfit};

impl Voice {
    /// What a change of conventions brought about beside itself.
    pub fn consequence(&self, consequence: &Consequence) -> String {
        match consequence {
            Consequence::LettersExchanged { orbit, sticker, letter } => {
                self.letters_exchanged(*orbit, *sticker, letter)
            }
            Consequence::AlgorithmTurned { orbit, algorithm } => {
                self.turned_along(*orbit, &algorithm.to_string())
            }
            Consequence::BufferFollows { orbit, buffer } => {
                self.say("buffer-follows", &[("buffer", orbit.name(*buffer).into())])
            }
            Consequence::CarriedOutFirst(orbit) => {
                self.say("order-follows", &[("kinds", self.kinds(*orbit).into())])
            }
        }
    }

    /// Why a change of conventions is refused.
    pub fn change_error(&self, error: &ChangeError) -> String {
        match error {
            ChangeError::Letters { orbit, error } => self.letters_error(*orbit, error),
            ChangeError::NameMissing => self.word("change-name-missing"),
            ChangeError::ColourTwice(name) => {
                self.say("toml-colour-twice", &[("name", name.as_str().into())])
            }
            ChangeError::NotForKind { orbit, method } => self.say(
                "change-not-for-kind",
                &[("kinds", self.kinds(*orbit).into()), ("method", method.name().into())],
            ),
            ChangeError::Algorithm { orbit, misfit: Misfit::Swap(error) } => self.swap_error(*orbit, error),
            ChangeError::Algorithm { orbit, misfit: Misfit::NotOnSize { size, error } } => {
                self.cannot_be_made(*orbit, *size, *error)
            }
        }
    }
}
