//! The texts of the screens, as one map.

use std::collections::BTreeMap;

use serde::Serialize;

use crate::call::Call;

/// Text by its name.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Texts {
    /// The language that the texts are in: the one asked for, or English.
    pub language: &'static str,
    /// Every text of the catalogue.
    pub texts: BTreeMap<String, String>,
}

pub(crate) fn texts(call: &Call<'_>) -> Texts {
    Texts { language: call.voice.language().tag(), texts: call.voice.screen_texts() }
}
