//! Tables as text: what sets their cells apart, and their lines.

use super::SheetError;

/// How cells are set apart.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) enum Delimiter {
    /// Commas.
    Comma,
    /// Semicolons.
    Semicolon,
    /// Tabs.
    Tab,
}

/// A line of a table: its number in the text, and its cells.
pub(super) type Line = (u64, Vec<String>);

/// The records of a table with their lines, those without any text left out.
pub(super) fn records(text: &str, sign: u8) -> impl Iterator<Item = Result<Line, SheetError>> + '_ {
    let reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .delimiter(sign)
        .from_reader(text.trim_start_matches('\u{feff}').as_bytes());
    let read = |record: Result<csv::StringRecord, csv::Error>| {
        let record = record.map_err(|error| SheetError::NotATable {
            line: error.position().map_or(0, csv::Position::line),
            what: error.to_string(),
        })?;
        let cells: Vec<String> = record.iter().map(str::to_owned).collect();
        Ok((record.position().map_or(0, csv::Position::line), cells))
    };
    let has_text = |record: &Result<Line, SheetError>| {
        record.as_ref().map_or(true, |(_, cells)| cells.iter().any(|cell| !cell.trim().is_empty()))
    };
    reader.into_records().map(read).filter(has_text)
}

/// A table as it was read: cells with their lines.
pub(super) struct Table {
    pub lines: Vec<Line>,
}

/// The lines above the head that a table may have, such as a title.
pub(super) const MOST_ABOVE: usize = 4;

impl Table {
    pub fn read(text: &str, delimiter: Delimiter) -> Result<Self, SheetError> {
        let sign = match delimiter {
            Delimiter::Comma => b',',
            Delimiter::Semicolon => b';',
            Delimiter::Tab => b'\t',
        };
        let whole = |(line, cells): Line| {
            (line, if delimiter == Delimiter::Comma { rejoined(&cells) } else { cells })
        };
        let lines: Vec<_> = records(text, sign).map(|record| record.map(whole)).collect::<Result<_, _>>()?;
        if lines.is_empty() { Err(SheetError::Empty) } else { Ok(Self { lines }) }
    }

    /// The table without the lines above its head, and those lines.
    pub fn below(&self, head: usize) -> (&[Line], &[Line]) {
        let (above, below) = self.lines.split_at(head);
        (below, above)
    }

    /// What probably sets the cells apart, the likeliest first: tabs are in no algorithm, semicolons hardly, commas in every
    /// commutator.
    pub fn delimiters(text: &str) -> [Delimiter; 3] {
        let first = text.lines().find(|line| !line.trim().is_empty()).unwrap_or_default();
        if first.contains('\t') {
            [Delimiter::Tab, Delimiter::Semicolon, Delimiter::Comma]
        } else if first.contains(';') {
            [Delimiter::Semicolon, Delimiter::Tab, Delimiter::Comma]
        } else {
            [Delimiter::Comma, Delimiter::Tab, Delimiter::Semicolon]
        }
    }
}

/// Cells that were torn at the comma of a commutator written without quotation marks are put together again. A bracket that no later
/// cell closes tore nothing: it is a slip, and the cells beside it are other cells.
fn rejoined(cells: &[String]) -> Vec<String> {
    let depth = |text: &str| text.matches('[').count() as i64 - text.matches(']').count() as i64;
    let mut whole = Vec::new();
    let mut rest = cells;
    while let Some(cell) = rest.first() {
        let mut open = 0;
        let closing = rest.iter().position(|cell| {
            open += depth(cell);
            open <= 0
        });
        let torn = match closing {
            Some(last) if depth(cell) > 0 && open == 0 => last + 1,
            _ => 1,
        };
        whole.push(rest[..torn].join(","));
        rest = &rest[torn..];
    }
    whole
}
