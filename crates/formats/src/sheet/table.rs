//! Tables as text: what sets their cells apart, and their lines.

use super::SheetError;
use super::read::MOST_CELLS;

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
        let line = record.position().map_or(0, csv::Position::line);
        if record.len() > MOST_CELLS {
            return Err(SheetError::TooMuch { line });
        }
        let cells: Vec<String> = record.iter().map(str::to_owned).collect();
        Ok((line, cells))
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
pub(super) const MOST_ABOVE: usize = 20;

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
        let mut lines: Vec<Line> = Vec::new();
        let mut widest = 0;
        for record in records(text, sign) {
            let line = whole(record?);
            widest = widest.max(line.1.len());
            // Short lines count as much as the longest, for a grid has all its cells.
            if widest.saturating_mul(lines.len() + 1) > MOST_CELLS {
                return Err(SheetError::TooMuch { line: line.0 });
            }
            lines.push(line);
        }
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
    // How many brackets are open after each cell, and for each cell the next one after which no more are open than before it: found
    // from behind in one pass, the cells in question on a stack.
    let mut open = 0;
    let after: Vec<i64> = cells
        .iter()
        .map(|cell| {
            open += depth(cell);
            open
        })
        .collect();
    let mut closing = vec![None; cells.len()];
    let mut stack: Vec<usize> = Vec::new();
    for at in (0..cells.len()).rev() {
        stack.push(at);
        let before = if at == 0 { 0 } else { after[at - 1] };
        // What is deeper than this one's outside is deeper than that of every cell before it that could ask, or comes behind a nearer one.
        while stack.last().is_some_and(|&last| after[last] > before) {
            stack.pop();
        }
        closing[at] = stack.last().copied();
    }
    let mut whole = Vec::new();
    let mut at = 0;
    while at < cells.len() {
        let before = if at == 0 { 0 } else { after[at - 1] };
        let last = closing[at].filter(|&last| after[last] == before && last > at).unwrap_or(at);
        whole.push(cells[at..=last].join(","));
        at = last + 1;
    }
    whole
}
