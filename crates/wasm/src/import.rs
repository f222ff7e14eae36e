//! Taking in a sheet as somebody has it, with an account of every row and cell.

use ::sheet::{Layout, Verdict};
use std::borrow::Cow;

use formats::sheet::{self, Reading, SheetError, TakenIn};
use serde::{Deserialize, Serialize};

use crate::Failure;
use crate::call::Call;
use crate::document::DocumentName;
use crate::subject::sheet_kind;

/// A text that is to be taken in.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "camelCase")]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Brought {
    /// The conventions.
    pub conventions: DocumentName,
    /// The sheet that it comes into; none for an empty one.
    pub sheet: Option<DocumentName>,
    /// The text: CSV, semicolons or tabs, a list or a grid. What begins as an address of data (`data:…;base64,…`) is a file as its
    /// bytes are.
    pub text: String,
    /// Whether the first target of a grid stands at the left, where the algorithms do not tell.
    pub rows_first: Option<bool>,
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
    /// How it was read, how many cells are what, and where.
    pub said: Vec<String>,
    /// What is to be asked before it is taken in: the mistake that most rows share; empty if there is none.
    pub question: String,
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

/// The text that was pasted, or that of a file given as its bytes; `None` where these are no text.
fn text_of(brought: &str) -> Option<Cow<'_, str>> {
    let Some((_, encoded)) = brought.strip_prefix("data:").and_then(|rest| rest.split_once(";base64,"))
    else {
        return Some(Cow::Borrowed(brought));
    };
    let bytes = formats::text::from_base64(encoded)?;
    formats::text::read(&bytes).map(|(text, _)| Cow::Owned(text))
}

pub(crate) fn import(call: &mut Call<'_>, brought: &Brought) -> Result<Import, Failure> {
    let voice = call.voice;
    // Base64 has four signs for three bytes.
    let most = if brought.text.starts_with("data:") { MOST_BYTES / 3 * 4 + 256 } else { MOST_BYTES };
    if brought.text.len() > most {
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
    reading.rows_first = brought.rows_first;
    let text = text_of(&brought.text).ok_or_else(|| Failure::new(voice.word("file-not-text")))?;
    let TakenIn { sheet, remarks } = sheet::take_in(&text, &reading).map_err(|error| match error {
        SheetError::KindUnknown => Failure::new(voice.word("page-kind-unknown")),
        SheetError::OrderUnknown { right } => {
            Failure::new(voice.say("page-order-unknown", &[("right", right.into())]))
        }
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
    let question = report.pattern().map_or_else(String::new, |pattern| voice.sheet_pattern(pattern));
    Ok(Import {
        rows: rows.collect(),
        said: [voice.say("sheet-layout", &[("layout", layout.into())])]
            .into_iter()
            .chain(voice.sheet_account(&sheet, &report, &remarks))
            // It is asked below, and not said beside that.
            .filter(|said| *said != question)
            .collect(),
        question,
        kind: first.map_or_else(String::new, |(orbit, _)| blind::kind_name(orbit).to_owned()),
        buffer: first.map_or_else(String::new, |(orbit, buffer)| orbit.name(buffer).to_owned()),
        sheet: sheet::keep(&before.joined(&sheet)),
    })
}
