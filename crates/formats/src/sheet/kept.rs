//! The form in which a sheet is kept.

use super::rows::Rows;
use super::{MOST_BYTES, Reading, SheetError, read};
use crate::document::{Document, DocumentError, Twin, Version, from_json, to_json};
use blind::{Conventions, kind_name, kind_named};
use serde::{Deserialize, Serialize};
use serde_json::{Map, Value};
use sheet::{CycleCase, Layout, Origin, Row, Sheet};

/// The version that is written. Version 0 was a CSV list, as it is still written for people.
pub const VERSION: Version = Version(1);

/// The twin of a sheet.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct SheetTwin {
    layout: LayoutTwin,
    /// What the further columns are called.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    more: Vec<String>,
    rows: Vec<RowTwin>,
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum LayoutTwin {
    List,
    /// The first target at the left of a row.
    GridByRows,
    /// The first target at the head of a column.
    GridByColumns,
}

/// A row. What it has not is left out.
#[derive(Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
struct RowTwin {
    line: u64,
    column: u64,
    #[serde(skip_serializing_if = "Option::is_none")]
    case: Option<CaseTwin>,
    /// What it says of its case, where that is not the names of the two targets.
    #[serde(skip_serializing_if = "Option::is_none")]
    named: Option<String>,
    /// What it says of its kind, where it has no case.
    #[serde(skip_serializing_if = "String::is_empty")]
    kind: String,
    /// What it says of its buffer, where it has no case.
    #[serde(skip_serializing_if = "String::is_empty")]
    buffer: String,
    #[serde(skip_serializing_if = "String::is_empty")]
    algorithm: String,
    #[serde(skip_serializing_if = "String::is_empty")]
    notes: String,
    /// Where the algorithm comes from; the sheet, where it does not say.
    #[serde(skip_serializing_if = "Option::is_none")]
    origin: Option<String>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    more: Vec<String>,
}

/// Kind, buffer, first and second target, by name.
#[derive(Serialize, Deserialize)]
struct CaseTwin(String, String, String, String);

impl Twin for SheetTwin {
    const DOCUMENT: Document = Document::Sheet;
    const VERSION: Version = VERSION;
    const MOST: usize = MOST_BYTES;

    fn step(_: Version, _: Map<String, Value>) -> Result<Map<String, Value>, DocumentError> {
        // Version 0 was no JSON.
        Err(DocumentError::OtherDocument { expected: Document::Sheet, found: None })
    }
}

/// What a row says of its case when it says no more than the names of the targets.
fn plain(case: CycleCase) -> String {
    format!("{} {}", case.orbit.name(case.first), case.orbit.name(case.second))
}

impl From<&Row> for RowTwin {
    fn from(row: &Row) -> Self {
        let [kind, buffer] = row.of.clone();
        Self {
            line: row.line,
            column: row.column,
            case: row.case.map(|case| {
                let name = |sticker| case.orbit.name(sticker).to_owned();
                let [buffer, first, second] = [case.buffer, case.first, case.second].map(name);
                CaseTwin(kind_name(case.orbit).to_owned(), buffer, first, second)
            }),
            named: (row.named != row.case.map_or_else(String::new, plain)).then(|| row.named.clone()),
            kind,
            buffer,
            algorithm: row.algorithm.clone(),
            notes: row.notes.clone(),
            origin: (row.origin != Origin::Sheet).then(|| row.origin.name().to_owned()),
            more: row.more.clone(),
        }
    }
}

impl TryFrom<CaseTwin> for CycleCase {
    type Error = DocumentError;

    fn try_from(CaseTwin(kind, buffer, first, second): CaseTwin) -> Result<Self, DocumentError> {
        let read = || {
            let orbit = kind_named(&kind)?;
            Self::new(orbit, orbit.sticker(&buffer)?, orbit.sticker(&first)?, orbit.sticker(&second)?)
        };
        read().ok_or_else(|| content(format!("`{kind} {buffer} {first} {second}` is no case")))
    }
}

impl TryFrom<RowTwin> for Row {
    type Error = DocumentError;

    fn try_from(twin: RowTwin) -> Result<Self, DocumentError> {
        let case = twin.case.map(CycleCase::try_from).transpose()?;
        let origin = match twin.origin {
            None => Origin::Sheet,
            Some(name) => Origin::named(&name).ok_or_else(|| content(format!("`{name}` is no origin")))?,
        };
        Ok(Self {
            line: twin.line,
            column: twin.column,
            named: twin.named.unwrap_or_else(|| case.map_or_else(String::new, plain)),
            of: [twin.kind, twin.buffer],
            case,
            algorithm: twin.algorithm,
            notes: twin.notes,
            origin,
            more: twin.more,
        })
    }
}

const fn content(what: String) -> DocumentError {
    DocumentError::Content { document: Document::Sheet, what }
}

/// A sheet in the form in which it is kept: JSON of the present version.
pub fn keep(sheet: &Sheet) -> String {
    let layout = match sheet.layout {
        Layout::List => LayoutTwin::List,
        Layout::Grid { rows_first: true } => LayoutTwin::GridByRows,
        Layout::Grid { rows_first: false } => LayoutTwin::GridByColumns,
    };
    let rows = sheet.rows().iter().map(RowTwin::from).collect();
    to_json(&SheetTwin { layout, more: sheet.more.clone(), rows })
}

/// Reads a sheet that was kept, by this version or by an older one.
///
/// # Errors
/// [`SheetError`] for what is no sheet, and for one of a newer version.
pub fn kept(text: &str) -> Result<Sheet, SheetError> {
    // A list names every kind, buffer and target, so that it needs nobody's letters.
    kept_now(text).unwrap_or_else(|| read(text, &Reading::new(&Conventions::default())))
}

/// Reads a sheet that was kept by a version that keeps sheets as JSON; `None` for another text, such as the list of an older one.
///
/// ```
/// use formats::sheet::{keep, kept_now};
/// let sheet = sheet::Sheet::new(Vec::new());
/// assert_eq!(kept_now(&keep(&sheet)), Some(Ok(sheet)));
/// assert_eq!(kept_now("kind,buffer"), None);
/// ```
pub fn kept_now(text: &str) -> Option<Result<Sheet, SheetError>> {
    text.trim_start_matches('\u{feff}').trim_start().starts_with('{').then(|| of_json(text))
}

fn of_json(text: &str) -> Result<Sheet, SheetError> {
    let twin: SheetTwin = from_json(text)?;
    let layout = match twin.layout {
        LayoutTwin::List => Layout::List,
        LayoutTwin::GridByRows => Layout::Grid { rows_first: true },
        LayoutTwin::GridByColumns => Layout::Grid { rows_first: false },
    };
    let mut rows = Rows::default();
    twin.rows.into_iter().try_for_each(|row| rows.push(Row::try_from(row)?))?;
    Ok(Sheet::laid_out(layout, twin.more, rows.done()))
}
