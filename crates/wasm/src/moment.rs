//! The link to a moment of the bench, and as a code that a camera reads.

use std::collections::BTreeMap;

use cube::Size;
use formats::moment::{self, MomentLink};
use serde::{Deserialize, Serialize};

use crate::Failure;
use crate::bench::OFFERED;
use crate::call::Call;
use crate::check::Written;
use crate::link::{Address, LinkPart};
use crate::picture::Pointed;

/// What a link to a moment carries.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, Serialize)]
#[serde(rename_all = "camelCase")]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct MomentSetting {
    /// Layers of the puzzle.
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
    /// The letter that is looked at.
    pub letter: Option<Pointed>,
    /// A memo that was written to be checked.
    pub memo: Written,
    /// Moves that were made, to be checked.
    pub moves: String,
}

/// A text that is to become a code.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct ToCode {
    /// The text.
    pub text: String,
}

/// A code that a camera reads.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Code {
    /// As SVG; none for a text that is too long for a phone to read.
    pub svg: Option<String>,
}

pub(crate) fn address(setting: MomentSetting) -> LinkPart {
    let MomentSetting { size, scramble, facelets, conventions, best_hold, letter, memo, moves } = setting;
    let letter = letter.map(|at| [at.part, at.letter]);
    let link = MomentLink { size, scramble, facelets, conventions, best_hold, letter, memo, moves };
    LinkPart { name: moment::PART.to_owned(), word: moment::write(&link) }
}

pub(crate) fn opened(call: &Call<'_>, address: &Address) -> Result<MomentSetting, Failure> {
    let parts: BTreeMap<_, _> = address.parts.clone();
    let link = moment::read(&parts).map_err(|error| Failure::new(call.voice.document_error(&error)))?;
    let MomentLink { size, scramble, facelets, conventions, best_hold, letter, memo, moves } = link;
    if let Some(size) = Size::new(size).filter(|size| !OFFERED.contains(size)) {
        return Err(Failure::new(call.voice.size_not_offered(size, &OFFERED)));
    }
    let letter = letter.map(|[part, letter]| Pointed { part, letter });
    Ok(MomentSetting { size, scramble, facelets, conventions, best_hold, letter, memo, moves })
}

pub(crate) fn code(call: &Call<'_>, asked: &ToCode) -> Code {
    let svg = draw::code(&asked.text, &call.voice.word("share-code-title"));
    Code { svg: svg.map(draw::Svg::into_string) }
}
