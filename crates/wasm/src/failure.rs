//! What comes back instead of a view.

use cube::ParseError;
use serde::Serialize;

use crate::document::{DocumentKind, DocumentName};

/// Why a request has no view, said in the language of the request.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(rename_all = "camelCase")]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Failure {
    /// The sentence to show.
    pub sentence: String,
    /// Where in the text that was typed, if the trouble has a place there.
    pub place: Option<Place>,
    /// A document that was named and is not kept: whoever asked tells it again and asks once more.
    pub missing: Option<DocumentName>,
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

impl Place {
    /// From line and column, both from 1, to the units that a browser counts a text in; one character long.
    pub(crate) fn of(text: &str, error: &ParseError) -> Place {
        let line_before: usize =
            text.split_inclusive('\n').take(error.line - 1).map(|line| line.encode_utf16().count()).sum();
        let line = text.split('\n').nth(error.line - 1).unwrap_or_default();
        let before: usize = line.chars().take(error.column - 1).map(char::len_utf16).sum();
        let length = line.chars().nth(error.column - 1).map_or(0, char::len_utf16);
        let from = (line_before + before) as u32;
        Place { from, to: from + length as u32 }
    }
}

impl Failure {
    /// A failure without a place.
    pub fn new(sentence: impl Into<String>) -> Failure {
        Failure { sentence: sentence.into(), place: None, missing: None }
    }

    /// A failure at a place of a text that was typed.
    pub(crate) fn at(sentence: String, place: Place) -> Failure {
        Failure { sentence, place: Some(place), missing: None }
    }

    /// A document is named that is not kept. Nobody reads the sentence unless telling it again was of no use.
    pub(crate) fn missing(kind: DocumentKind, name: &DocumentName) -> Failure {
        let DocumentName { handle, revision } = name;
        let sentence =
            format!("The engine was not told the {} \"{handle}\", revision {revision}.", kind.name());
        Failure { sentence, place: None, missing: Some(name.clone()) }
    }

    /// The failure as JSON.
    pub fn to_json(&self) -> String {
        // Strings and numbers always have a JSON form.
        serde_json::to_string(self).unwrap_or_else(|error| error.to_string())
    }
}
