//! The texts of the screens: labels, headings, notices. They take no arguments; a sentence about a puzzle comes
//! finished with the view that it belongs to.

use std::collections::BTreeMap;

use fluent_bundle::{FluentBundle, FluentResource};
use fluent_syntax::ast::Entry;
use serde::Serialize;
use unic_langid::LanguageIdentifier;

use crate::Failure;
use crate::methods::{Call, Nothing};

/// A language and the file that holds its texts.
#[derive(Debug)]
pub struct Catalogue {
    /// Language tag after BCP 47.
    pub code: &'static str,
    /// The language's name in itself.
    pub name: &'static str,
    source: &'static str,
}

/// The languages of the screens; the first one stands in for a language that is not here.
pub const LANGUAGES: [Catalogue; 2] = [
    Catalogue { code: "en", name: "English", source: include_str!("../locales/en/screens.ftl") },
    Catalogue { code: "de", name: "Deutsch", source: include_str!("../locales/de/screens.ftl") },
];

/// Text by its name.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Texts {
    /// The language that the texts are in: the one asked for, or the first one there is.
    pub language: &'static str,
    /// Every text of the catalogue.
    pub texts: BTreeMap<String, String>,
}

pub(crate) fn texts(call: &mut Call<'_>, _: Nothing) -> Result<Texts, Failure> {
    let catalogue = nearest(call.language);
    let texts = catalogue.read().map_err(Failure::new)?;
    Ok(Texts { language: catalogue.code, texts })
}

/// The catalogue for a language tag: `de-AT` is answered by `de`, an unknown one by the first.
pub fn nearest(tag: &str) -> &'static Catalogue {
    let language = tag.split(['-', '_']).next().unwrap_or_default();
    LANGUAGES.iter().find(|catalogue| catalogue.code.eq_ignore_ascii_case(language)).unwrap_or(&LANGUAGES[0])
}

impl Catalogue {
    /// Reads and formats the whole file.
    ///
    /// # Errors
    /// What is wrong with the file, for whoever writes it.
    pub fn read(&self) -> Result<BTreeMap<String, String>, String> {
        let resource = FluentResource::try_new(self.source.to_owned())
            .map_err(|(_, errors)| format!("{}: {errors:?}", self.code))?;
        let names: Vec<String> = resource
            .entries()
            .filter_map(|entry| match entry {
                Entry::Message(message) => Some(message.id.name.to_owned()),
                _ => None,
            })
            .collect();
        let language: LanguageIdentifier =
            self.code.parse().map_err(|error| format!("{}: {error}", self.code))?;
        let mut bundle = FluentBundle::new(vec![language]);
        bundle.add_resource(resource).map_err(|errors| format!("{}: {errors:?}", self.code))?;
        names
            .into_iter()
            .map(|name| {
                let pattern = bundle
                    .get_message(&name)
                    .and_then(|message| message.value())
                    .ok_or_else(|| format!("{}: {name} has no text", self.code))?;
                let mut errors = Vec::new();
                let text = bundle.format_pattern(pattern, None, &mut errors).into_owned();
                if errors.is_empty() {
                    Ok((name, text))
                } else {
                    Err(format!("{}: {name}: {errors:?}", self.code))
                }
            })
            .collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_language_has_every_text_and_no_other() {
        let first: Vec<String> = LANGUAGES[0].read().unwrap().into_keys().collect();
        assert!(!first.is_empty());
        for catalogue in &LANGUAGES[1..] {
            let names: Vec<String> = catalogue.read().unwrap().into_keys().collect();
            assert_eq!(names, first, "{}", catalogue.code);
        }
    }

    #[test]
    fn a_country_does_not_hide_the_language() {
        for (tag, code) in [("de-AT", "de"), ("DE", "de"), ("en-GB", "en"), ("xx", "en"), ("", "en")] {
            assert_eq!(nearest(tag).code, code, "{tag}");
        }
    }

    #[test]
    fn no_text_is_empty_or_names_a_missing_one() {
        for catalogue in &LANGUAGES {
            for (name, text) in catalogue.read().unwrap() {
                assert!(!text.trim().is_empty(), "{} {name}", catalogue.code);
            }
        }
    }
}
