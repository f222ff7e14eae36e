//! What the engine is.

use serde::Serialize;

/// Version and languages.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct About {
    /// Version of the program, as in its manifest.
    pub version: &'static str,
    /// The languages that texts and sentences come in.
    pub languages: Vec<Language>,
}

/// A language to choose.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Language {
    /// Language tag after BCP 47.
    pub code: &'static str,
    /// Its name, in itself.
    pub name: String,
}

pub(crate) fn about() -> About {
    let languages = voice::Language::ALL
        .map(|language| Language { code: language.tag(), name: language.name().to_owned() });
    About { version: env!("CARGO_PKG_VERSION"), languages: languages.into() }
}
