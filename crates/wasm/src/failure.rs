//! What comes back instead of a view.

use serde::Serialize;

/// Why a request has no view, said in the language of the request.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(rename_all = "camelCase")]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Failure {
    /// The sentence to show.
    pub sentence: String,
    /// Where in the text that was typed, if the trouble has a place there.
    pub place: Option<Place>,
}

/// A stretch of the text that was typed, in UTF-16 units as a browser counts them; `to` is the first unit after it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Place {
    /// First unit of the stretch.
    pub from: u32,
    /// First unit after the stretch.
    pub to: u32,
}

impl Failure {
    /// A failure without a place.
    pub fn new(sentence: impl Into<String>) -> Failure {
        Failure { sentence: sentence.into(), place: None }
    }

    /// The failure as JSON.
    pub fn to_json(&self) -> String {
        // A string and two numbers always have a JSON form.
        serde_json::to_string(self).unwrap_or_else(|error| error.to_string())
    }
}
