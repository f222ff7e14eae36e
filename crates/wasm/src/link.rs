//! The link to a lesson.

use std::collections::BTreeMap;

use blind::HoldChoice;
use cube::Size;
use formats::link::{self, LessonLink};
use serde::{Deserialize, Serialize};

use crate::Failure;
use crate::call::Call;

/// What a link to a lesson carries.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, Serialize)]
#[serde(rename_all = "camelCase")]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct LessonSetting {
    /// Layers of the puzzle, 2 to 7.
    pub size: u8,
    /// The scramble as it was typed.
    pub scramble: String,
    /// The colours of all stickers by the letters of the faces, in the order U L F R B D; if not empty, these count
    /// and not the scramble.
    pub facelets: String,
    /// Conventions as the browser keeps them; empty for the usual ones.
    pub conventions: String,
    /// Pick it up so that the memo is shortest, or as the conventions say; none: as is usual for the size.
    pub best_hold: Option<bool>,
    /// Topics that are left out: `holding`, `corners`, `edges`, `execution`.
    pub left_out: Vec<String>,
    /// How many exercises.
    pub exercises: u8,
    /// The seed of the exercises, in two halves.
    pub seed: [u32; 2],
}

/// What an address carries.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Address {
    /// Its parts by name.
    pub parts: BTreeMap<String, String>,
}

/// The part of an address that carries a lesson.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct LinkPart {
    /// Its name.
    pub name: String,
    /// What it carries.
    pub word: String,
}

pub(crate) fn write(setting: LessonSetting) -> LinkPart {
    let LessonSetting { size, scramble, facelets, conventions, best_hold, left_out, exercises, seed } =
        setting;
    let best_hold = best_hold
        .unwrap_or_else(|| Size::new(size).is_some_and(|size| HoldChoice::usual(size) == HoldChoice::Best));
    let link = LessonLink { size, scramble, facelets, conventions, best_hold, left_out, exercises, seed };
    LinkPart { name: link::PART.to_owned(), word: link::write(&link) }
}

pub(crate) fn read(call: &Call<'_>, address: &Address) -> Result<LessonSetting, Failure> {
    let link = link::read(&address.parts).map_err(|error| Failure::new(call.voice.document_error(&error)))?;
    let LessonLink { size, scramble, facelets, conventions, best_hold, left_out, exercises, seed } = link;
    let best_hold = Some(best_hold);
    Ok(LessonSetting { size, scramble, facelets, conventions, best_hold, left_out, exercises, seed })
}
