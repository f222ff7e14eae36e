//! The rows of a sheet as they are read, counted so that no small text becomes a huge sheet.

use super::SheetError;
use super::read::{MOST_CELLS, MOST_TAKEN};
use super::salvage::moves_and_note;
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

    /// A row for each algorithm of a cell: alternatives stand on lines of their own, between strokes or after a semicolon or
    /// "or"; what follows `//` is a note. Of what is no moves as a whole, moves are told from remarks.
    ///
    /// # Errors
    /// As [`Rows::push`].
    pub fn alternatives(&mut self, text: &str, template: &Row) -> Result<(), SheetError> {
        let mut any = false;
        for line in text.lines() {
            let (algorithms, note) = line.split_once("//").unwrap_or((line, ""));
            let note = note.trim();
            for algorithm in apart(algorithms) {
                let algorithm = algorithm.trim();
                if algorithm.is_empty() && note.is_empty() {
                    continue;
                }
                any = true;
                let (algorithm, remark) =
                    moves_and_note(algorithm).unwrap_or_else(|| (algorithm.to_owned(), String::new()));
                let notes =
                    [template.notes.as_str(), &remark, note].into_iter().filter(|note| !note.is_empty());
                let notes = notes.collect::<Vec<_>>().join("; ");
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

/// The algorithms of a line.
fn apart(line: &str) -> impl Iterator<Item = &str> {
    let or = |part| {
        ["| ", " or ", " oder "].iter().fold(vec![part], |parts: Vec<&str>, sign| {
            parts.into_iter().flat_map(|part| part.split(sign)).collect()
        })
    };
    line.split(" / ").flat_map(|part| part.split(';')).flat_map(or)
}
