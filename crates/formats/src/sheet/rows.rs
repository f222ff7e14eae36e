//! The rows of a sheet as they are read, counted so that no small text becomes a huge sheet.

use super::SheetError;
use super::read::{MOST_CELLS, MOST_TAKEN};
use sheet::Row;

/// Rows read so far.
#[derive(Default)]
pub(super) struct Rows {
    read: Vec<Row>,
    cells: usize,
    bytes: usize,
}

impl Rows {
    /// One more.
    ///
    /// # Errors
    /// [`SheetError::TooMuch`] beyond [`MOST_CELLS`] or [`MOST_TAKEN`].
    pub fn push(&mut self, row: Row) -> Result<(), SheetError> {
        let texts = [&row.named, &row.algorithm, &row.notes].into_iter().chain(&row.of).chain(&row.more);
        self.cells = self.cells.saturating_add(1 + row.more.len());
        self.bytes = texts.fold(self.bytes, |bytes, text| bytes.saturating_add(text.len()));
        if self.cells > MOST_CELLS || self.bytes > MOST_TAKEN {
            return Err(SheetError::TooMuch { line: row.line });
        }
        self.read.push(row);
        Ok(())
    }

    /// A row for each algorithm of a cell: alternatives stand on lines of their own or between strokes; what follows `//` is a
    /// note.
    ///
    /// # Errors
    /// As [`Rows::push`].
    pub fn alternatives(&mut self, text: &str, template: &Row) -> Result<(), SheetError> {
        let mut any = false;
        for line in text.lines() {
            let (algorithms, note) = line.split_once("//").unwrap_or((line, ""));
            let note = note.trim();
            for algorithm in algorithms.split(" / ").map(str::trim) {
                if algorithm.is_empty() && note.is_empty() {
                    continue;
                }
                any = true;
                let notes: Vec<&str> =
                    [template.notes.as_str(), note].into_iter().filter(|note| !note.is_empty()).collect();
                let (algorithm, notes) = (algorithm.to_owned(), notes.join("; "));
                self.push(Row { algorithm, notes, ..template.clone() })?;
            }
        }
        if any { Ok(()) } else { self.push(template.clone()) }
    }

    /// All of them.
    pub fn done(self) -> Vec<Row> {
        self.read
    }
}
