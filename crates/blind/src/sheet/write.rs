//! Writing sheets for people.

use super::{Row, SIZE, Sheet, Verdict};
use crate::conventions::Conventions;
use cube::{Algorithm, Orbit, Sticker, count, simplified};

impl Sheet {
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
            let moves = Algorithm::parse(&row.algorithm, SIZE)
                .map_or(0, |read| count(&simplified(&read.flatten())).slice);
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
