//! Writing sheets.

use super::{CycleCase, Row, SIZE, Sheet, Verdict};
use crate::conventions::Conventions;
use crate::kind::kind_name;
use cube::{Algorithm, Orbit, Sticker, count};

impl Sheet {
    /// The sheet as a CSV list, every row and every further column kept. Reading it again gives the same rows.
    ///
    /// Where the letters of a source could not be read they stand in the column `pair` as they were.
    pub fn to_csv(&self) -> String {
        let mut writer = csv::Writer::from_writer(Vec::new());
        let unreadable = self.rows().iter().any(|row| row.case.is_none());
        let mut head = vec!["kind", "buffer", "first", "second", "algorithm", "notes", "origin"];
        if unreadable {
            head.push("as written");
        }
        let width = self.rows().iter().map(|row| row.more.len()).max().unwrap_or(0).max(self.more.len());
        let further = (0..width).map(|at| self.more.get(at).map_or("", String::as_str));
        // Writing to memory does not fail, and all records have the same length.
        let _ = writer.write_record(head.iter().copied().chain(further));
        for row in self.rows() {
            let case = row.case;
            let name = |of: fn(CycleCase) -> Sticker| case.map_or("", |case| case.orbit.name(of(case)));
            let mut cells = vec![
                case.map_or("", |case| kind_name(case.orbit)),
                name(|case| case.buffer),
                name(|case| case.first),
                name(|case| case.second),
                &row.algorithm,
                &row.notes,
                row.origin.name(),
            ];
            if unreadable {
                cells.push(if case.is_none() { &row.named } else { "" });
            }
            cells.extend((0..width).map(|at| row.more.get(at).map_or("", String::as_str)));
            let _ = writer.write_record(cells);
        }
        writer.into_inner().ok().and_then(|bytes| String::from_utf8(bytes).ok()).unwrap_or_default()
    }

    /// The right algorithms of a buffer as a Markdown table, in the order of the letters. The names of the columns (letters, targets,
    /// algorithm, moves, notes) are given, since languages differ.
    pub fn to_markdown(
        &self,
        orbit: Orbit,
        buffer: Sticker,
        conventions: &Conventions,
        columns: [&str; 5],
    ) -> String {
        let letters = &conventions.kind(orbit).letters;
        let line = |cells: [String; 5]| format!("| {} |\n", cells.map(|cell| escaped(&cell)).join(" | "));
        let mut out = line(columns.map(str::to_owned));
        out.push_str("| --- | --- | --- | ---: | --- |\n");
        for row in self.right_rows(orbit, buffer, conventions) {
            let Some(case) = row.case else { continue };
            let moves = Algorithm::parse(&row.algorithm, SIZE).map_or(0, |read| count(&read.flatten()).slice);
            out += &line([
                letters.spell(&[case.first, case.second]),
                format!("{} {}", orbit.name(case.first), orbit.name(case.second)),
                row.algorithm.clone(),
                moves.to_string(),
                row.notes.clone(),
            ]);
        }
        out
    }

    /// The rows of a buffer that are right, in the order of the letters.
    pub fn right_rows(&self, orbit: Orbit, buffer: Sticker, conventions: &Conventions) -> Vec<&Row> {
        let letters = &conventions.kind(orbit).letters;
        let of_buffer =
            |row: &&Row| row.case.is_some_and(|case| (case.orbit, case.buffer) == (orbit, buffer));
        let mut rows: Vec<&Row> =
            self.rows().iter().filter(of_buffer).filter(|row| row.verdict() == Verdict::Right).collect();
        rows.sort_by_key(|row| row.case.map(|case| (letters.of(case.first), letters.of(case.second))));
        rows
    }
}

/// A cell of a Markdown table: no stroke ends it early, no line break tears it.
fn escaped(cell: &str) -> String {
    cell.replace('\\', "\\\\").replace('|', "\\|").replace(['\n', '\r'], " ")
}
