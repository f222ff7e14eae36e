//! Words of the trade and what they mean. They have a catalogue of their own, so that who does not ask for them need not carry it.

use crate::catalogue::{Language, bundle};

/// A word of the trade.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Word {
    /// Its name, the same in every language, such as `new-cycle`.
    pub name: String,
    /// The word itself.
    pub title: String,
    /// The forms in which it is met in sentences, the longest first.
    pub forms: Vec<String>,
    /// What it means.
    pub means: String,
}

const fn source(language: Language) -> &'static str {
    match language {
        Language::English => include_str!("../locales/en/glossary.ftl"),
        Language::German => include_str!("../locales/de/glossary.ftl"),
    }
}

/// All words of the glossary in a language, in the order of its catalogue.
///
/// ```
/// use voice::{Language, glossary};
/// let words = glossary(Language::English);
/// assert!(words.iter().any(|word| word.name == "buffer" && word.means.starts_with("The sticker")));
/// ```
pub fn glossary(language: Language) -> Vec<Word> {
    let source = source(language);
    let bundle = bundle(language, &[source]);
    let names =
        source.lines().filter_map(|line| line.strip_prefix("word-")?.split_once(" = ")).map(|(name, _)| name);
    let word = |name: &str| {
        let message = bundle.get_message(&format!("word-{name}"))?;
        let said = |pattern| bundle.format_pattern(pattern, None, &mut Vec::new()).into_owned();
        let part = |part: &str| message.get_attribute(part).map(|found| said(found.value()));
        Some(Word {
            name: name.to_owned(),
            title: said(message.value()?),
            forms: part("forms")?.split(", ").map(str::to_owned).collect(),
            means: part("means")?,
        })
    };
    names.filter_map(word).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_language_tells_every_word() {
        let [english, german] = Language::ALL.map(glossary);
        let names = |words: &[Word]| words.iter().map(|word| word.name.clone()).collect::<Vec<_>>();
        assert_eq!(names(&english), names(&german));
        assert!(english.len() >= 15);
        for word in english.iter().chain(&german) {
            assert!(!word.forms.is_empty() && !word.means.contains('{'), "{}", word.name);
            // Short enough for the moment in which it is asked for.
            assert!(word.means.chars().count() <= 200, "{}: {}", word.name, word.means.chars().count());
        }
    }
}
