//! The texts of the screens: labels, headings, notices. They have no blanks; a sentence about a puzzle comes finished
//! from the functions that say such things.

use std::collections::BTreeMap;

use crate::Voice;

impl Voice {
    /// Every text of the screens, by its name in the catalogue.
    ///
    /// ```
    /// use voice::{Language, Voice};
    /// let texts = Voice::new(Language::German).screen_texts();
    /// assert_eq!(texts["nav-why"], "Warum");
    /// ```
    pub fn screen_texts(&self) -> BTreeMap<String, String> {
        self.screens().iter().map(|name| (name.clone(), self.word(name))).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Language;

    #[test]
    fn every_text_is_said_in_full() {
        for language in Language::ALL {
            let voice = Voice::new(language);
            let texts = voice.screen_texts();
            assert!(texts.len() > 40, "{language:?}");
            for (name, text) in texts {
                assert!(
                    !text.trim().is_empty() && !text.contains('{'),
                    "{language:?}: {name} has a blank: {text}"
                );
                assert_ne!(name, text, "{language:?}: the text is missing");
            }
        }
    }
}
