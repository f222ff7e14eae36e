//! Taking in a sheet as somebody has it, with an account of every row and cell.

use ::sheet::{Layout, Verdict};
use formats::sheet::{self, Reading, SheetError};
use serde::{Deserialize, Serialize};

use crate::Failure;
use crate::call::Call;
use crate::document::DocumentName;
use crate::subject::sheet_kind;

/// A text that is to be taken in.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Brought {
    /// The conventions.
    pub conventions: DocumentName,
    /// The sheet that it comes into; none for an empty one.
    pub sheet: Option<DocumentName>,
    /// The text: CSV, semicolons or tabs, a list or a grid.
    pub text: String,
    /// The kind of piece where the text does not say; empty: as the text says.
    pub kind: String,
    /// The buffer, by sticker or letter; empty: as the text or the conventions say.
    pub buffer: String,
}

/// What was found.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Import {
    /// The sheet with what was taken in.
    pub sheet: String,
    /// How it was read, and how many rows are right.
    pub said: Vec<String>,
    /// Every row or cell, in the order of the text.
    pub rows: Vec<Accounted>,
    /// The kind and the buffer of its first case, to be shown; empty if there is none.
    pub kind: String,
    /// The buffer's sticker.
    pub buffer: String,
}

/// A row or cell.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Accounted {
    /// Where it stands in the text.
    pub place: String,
    /// The case as it is written, or as people speak of it.
    pub case: String,
    /// The algorithm as it is written.
    pub algorithm: String,
    /// What it does.
    pub said: String,
    /// Whether that is something to look at.
    pub wrong: bool,
}

/// The most bytes of a text: what a year's collection is many times below.
const MOST_BYTES: usize = 4 << 20;

pub(crate) fn import(call: &mut Call<'_>, brought: &Brought) -> Result<Import, Failure> {
    let voice = call.voice;
    if brought.text.len() > MOST_BYTES {
        return Err(Failure::new(voice.say("sheet-too-long", &[("most", (MOST_BYTES >> 20).into())])));
    }
    let settled = call.desk.conventions(voice, &brought.conventions)?;
    let before = call.desk.sheet(voice, &settled, brought.sheet.as_ref())?.sheet;
    let conventions = settled.conventions;
    let mut reading = Reading::new(&conventions);
    if !brought.kind.is_empty() {
        reading.kind = Some(sheet_kind(voice, &brought.kind)?);
    }
    let buffer = brought.buffer.trim();
    reading.buffer = (!buffer.is_empty()).then(|| buffer.to_owned());
    let sheet = sheet::read(&brought.text, &reading).map_err(|error| match error {
        SheetError::KindUnknown => Failure::new(voice.word("page-kind-unknown")),
        error => Failure::new(voice.sheet_error(&error)),
    })?;
    let report = sheet.check();
    let layout = match sheet.layout {
        Layout::List => "list",
        Layout::Grid { rows_first: true } => "rows",
        Layout::Grid { rows_first: false } => "columns",
    };
    let rows = sheet.rows().iter().zip(&report.verdicts).map(|(row, verdict)| Accounted {
        place: voice.say("verdict-place", &[("line", row.line.into()), ("column", row.column.into())]),
        case: row.case.map_or_else(|| row.named.clone(), |case| voice.case(case, &conventions)),
        algorithm: row.algorithm.clone(),
        said: voice.verdict(row, verdict, &conventions),
        wrong: !matches!(verdict, Verdict::Right | Verdict::Empty),
    });
    let first = sheet.buffers().first().copied();
    Ok(Import {
        rows: rows.collect(),
        said: vec![voice.say("sheet-layout", &[("layout", layout.into())]), voice.sheet_summary(&report)],
        kind: first.map_or_else(String::new, |(orbit, _)| blind::kind_name(orbit).to_owned()),
        buffer: first.map_or_else(String::new, |(orbit, buffer)| orbit.name(buffer).to_owned()),
        sheet: sheet::keep(&before.joined(&sheet)),
    })
}
