//! Sheets as Markdown tables.

use blind::Conventions;
use cube::{Algorithm, Orbit, Sticker, count, simplified};
use sheet::{MOST_TURNS, Row, Sheet, Verdict};

/// The algorithms of a buffer as a Markdown table: the right ones in the order of the letters, and behind them those that are not
/// right, each marked with what it does. The names of the columns (letters, targets, algorithm, moves, notes, what it does) are given,
/// and how a verdict is said, since languages differ.
pub fn to_markdown(
    sheet: &Sheet,
    orbit: Orbit,
    buffer: Sticker,
    conventions: &Conventions,
    columns: [&str; 6],
    said: &dyn Fn(&Row, &Verdict) -> String,
) -> String {
    let letters = &conventions.kind(orbit).letters;
    let line = |cells: [String; 6]| format!("| {} |\n", cells.map(|cell| escaped(&cell)).join(" | "));
    let mut out = line(columns.map(str::to_owned));
    out.push_str("| --- | --- | --- | ---: | --- | --- |\n");
    let mut row_of = |row: &Row, said: String| {
        let names = row.case.map_or_else(
            || [String::new(), row.named.clone()],
            |case| {
                let targets = format!("{} {}", orbit.name(case.first), orbit.name(case.second));
                [letters.spell(&[case.first, case.second]), targets]
            },
        );
        let moves = Algorithm::parse(&row.algorithm, sheet::size_of(orbit))
            .ok()
            .filter(|read| read.len() <= MOST_TURNS);
        let moves = moves.map_or(0, |read| count(&simplified(&read.flatten())).slice);
        let [spelled, targets] = names;
        out += &line([spelled, targets, row.algorithm.clone(), moves.to_string(), row.notes.clone(), said]);
    };
    for row in sheet.right_rows(orbit, buffer, conventions) {
        row_of(row, String::new());
    }
    let here = |row: &&Row| row.case.is_none_or(|case| (case.orbit, case.buffer) == (orbit, buffer));
    for row in sheet.rows().iter().filter(here) {
        match row.verdict() {
            Verdict::Right | Verdict::Empty => {}
            verdict => row_of(row, format!("✗ {}", said(row, &verdict))),
        }
    }
    out
}

/// A cell of a Markdown table: no stroke ends it early, no line break tears it.
fn escaped(cell: &str) -> String {
    cell.replace('\\', "\\\\").replace('|', "\\|").replace(['\n', '\r'], " ")
}
