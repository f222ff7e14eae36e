//! The catalogues: one language's messages, found by name.

use std::borrow::Cow;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use num_format::Locale;
use unic_langid::LanguageIdentifier;

/// The files of a language, those of the screens last.
#[cfg(feature = "catalogues")]
macro_rules! files {
    ($tag:literal: $($name:literal)*) => {
        &[$(include_str!(concat!("../locales/", $tag, "/", $name, ".ftl"))),*]
    };
    ($tag:literal) => {
        files!($tag: "puzzle" "algs" "cli" "record" "trace" "check" "why" "errors" "documents" "scramble" "serve" "views" "bench" "screens")
    };
}

/// A language that everything can be said in.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub enum Language {
    /// English.
    #[default]
    English,
    /// German.
    German,
}

impl Language {
    /// All languages.
    pub const ALL: [Self; 2] = [Self::English, Self::German];

    /// The language of a tag as `de`, `de-AT` or `de_DE.UTF-8`; `None` if it is not here.
    ///
    /// ```
    /// use voice::Language;
    /// assert_eq!(Language::from_tag("de_AT.UTF-8"), Some(Language::German));
    /// assert_eq!(Language::from_tag("eo"), None);
    /// ```
    pub fn from_tag(tag: &str) -> Option<Self> {
        let start = tag.split(['-', '_', '.']).next().unwrap_or_default();
        Self::ALL.into_iter().find(|language| language.tag().eq_ignore_ascii_case(start))
    }

    /// Its tag after BCP 47.
    pub const fn tag(self) -> &'static str {
        match self {
            Self::English => "en",
            Self::German => "de",
        }
    }

    /// Its name, in itself.
    pub const fn name(self) -> &'static str {
        match self {
            Self::English => "English",
            Self::German => "Deutsch",
        }
    }

    /// How numbers are written in it.
    pub(crate) const fn numbers(self) -> Locale {
        match self {
            Self::English => Locale::en,
            Self::German => Locale::de,
        }
    }

    fn identifier(self) -> LanguageIdentifier {
        // Our own tags are well formed; the default stands for "no language in particular".
        self.tag().parse().unwrap_or_default()
    }

    /// The files of the language, those of the screens last.
    #[cfg(feature = "catalogues")]
    pub const fn sources(self) -> &'static [&'static str] {
        match self {
            Self::English => files!("en"),
            Self::German => files!("de"),
        }
    }
}

/// The blanks that have what a person typed, however long that is.
const ECHOES: [&str; 6] = ["found", "text", "word", "key", "named", "seen"];

/// The most signs of what a person typed that a sentence says again: what is longer nobody compares sign by sign.
const LONGEST_ECHO: usize = 120;

/// The beginning of a text that is too long to be said again, on one line.
///
/// ```
/// use voice::excerpt;
/// assert_eq!(excerpt("R U R'"), "R U R'");
/// assert_eq!(excerpt(&"R ".repeat(9999)).chars().count(), 121);
/// assert_eq!(excerpt("R\nU"), "R U");
/// ```
pub fn excerpt(text: &str) -> Cow<'_, str> {
    let is_long = text.chars().nth(LONGEST_ECHO).is_some();
    if !is_long && !text.contains(char::is_control) {
        return Cow::Borrowed(text);
    }
    let signs = text.chars().take(LONGEST_ECHO).map(|sign| if sign.is_control() { ' ' } else { sign });
    Cow::Owned(signs.chain(is_long.then_some('…')).collect())
}

/// Says things in one language.
pub struct Voice {
    language: Language,
    bundle: FluentBundle<FluentResource>,
    /// The names of the texts of the screens.
    screens: Vec<String>,
}

/// The line of a catalogue in one piece behind which the texts of the screens stand.
pub const SCREENS: &str = "## screens";

/// The messages of some files.
pub(crate) fn bundle(language: Language, sources: &[&str]) -> FluentBundle<FluentResource> {
    let mut bundle = FluentBundle::new_concurrent(vec![language.identifier()]);
    // Sentences are plain text; marks for right-to-left names would only be in the way of copying.
    bundle.set_use_isolating(false);
    for source in sources {
        let resource = match FluentResource::try_new((*source).to_owned()) {
            Ok(resource) | Err((resource, _)) => resource,
        };
        bundle.add_resource_overriding(resource);
    }
    bundle
}

/// The names of the messages of a file.
fn names(file: &str) -> Vec<String> {
    let message = |line: &str| {
        let (name, _) = line.split_once(" =")?;
        name.bytes().all(|sign| sign.is_ascii_alphanumeric() || sign == b'-').then(|| name.to_owned())
    };
    file.lines().filter_map(message).collect()
}

impl Voice {
    /// The voice of a language, from the catalogue inside.
    #[cfg(feature = "catalogues")]
    pub fn new(language: Language) -> Self {
        Self::of_files(language, language.sources())
    }

    /// The voice of a language whose catalogue comes in one piece: all files, before the last, which has the texts of the screens, the
    /// line [`SCREENS`]. What is no message is passed over.
    ///
    /// ```
    /// use voice::{Language, Voice};
    /// let voice = Voice::taught(Language::German, "list-and = { $first } und { $last }\n## screens\nnav-why = Warum\n");
    /// assert_eq!(voice.list(&["a".to_owned(), "b".to_owned()]), "a und b");
    /// assert_eq!(voice.screen_texts()["nav-why"], "Warum");
    /// ```
    pub fn taught(language: Language, catalogue: &str) -> Self {
        match catalogue.split_once(SCREENS) {
            Some((sentences, screens)) => Self::of_files(language, &[sentences, screens]),
            None => Self::of_files(language, &[catalogue, ""]),
        }
    }

    fn of_files(language: Language, files: &[&str]) -> Self {
        let screens = files.last().map_or_else(Vec::new, |screens| names(screens));
        Self { language, bundle: bundle(language, files), screens }
    }

    /// The names of the texts of the screens.
    pub(crate) fn screens(&self) -> &[String] {
        &self.screens
    }

    /// Its language.
    pub const fn language(&self) -> Language {
        self.language
    }

    /// Whether there is a message of this name.
    pub fn knows(&self, message: &str) -> bool {
        self.bundle.get_message(message).is_some_and(|found| found.value().is_some())
    }

    /// A message with its blanks filled in. A name that is no message is answered by the name itself, so that
    /// something is said; the tests see to it that this does not happen.
    pub fn say(&self, message: &str, blanks: &[(&str, FluentValue<'_>)]) -> String {
        let Some(pattern) = self.bundle.get_message(message).and_then(|found| found.value()) else {
            return message.to_owned();
        };
        let mut args = FluentArgs::with_capacity(blanks.len());
        for (name, value) in blanks {
            match value {
                FluentValue::String(text) if ECHOES.contains(name) => {
                    args.set(*name, FluentValue::from(excerpt(text).into_owned()));
                }
                _ => args.set(*name, value.clone()),
            }
        }
        let mut errors = Vec::new();
        self.bundle.format_pattern(pattern, Some(&args), &mut errors).into_owned()
    }

    /// A message without blanks.
    pub fn word(&self, message: &str) -> String {
        self.say(message, &[])
    }

    /// Parts joined as the language lists them: "a, b and c".
    pub fn list(&self, parts: &[String]) -> String {
        self.joined(parts, "list-and")
    }

    /// Parts of which any will do: "a, b or c".
    pub fn either(&self, parts: &[String]) -> String {
        self.joined(parts, "list-or")
    }

    fn joined(&self, parts: &[String], message: &str) -> String {
        match parts {
            [] => String::new(),
            [only] => only.clone(),
            [first @ .., last] => {
                let first: FluentValue<'_> = first.join(", ").into();
                self.say(message, &[("first", first), ("last", last.as_str().into())])
            }
        }
    }
}
