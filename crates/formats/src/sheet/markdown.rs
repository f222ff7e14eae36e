//! Sheets as Markdown tables.

use blind::Conventions;
use cube::{Algorithm, Orbit, Size, Sticker, count, simplified};
use sheet::Sheet;

/// The size whose notation the algorithms of a sheet are in.
const SIZE: Size = Size::THREE;

/// The right algorithms of a buffer as a Markdown table, in the order of the letters. The names of the columns (letters, targets,
/// algorithm, moves, notes) are given, since languages differ.
pub fn to_markdown(
    sheet: &Sheet,
    orbit: Orbit,
    buffer: Sticker,
    conventions: &Conventions,
    columns: [&str; 5],
) -> String {
    let letters = &conventions.kind(orbit).letters;
    let line = |cells: [String; 5]| format!("| {} |\n", cells.map(|cell| escaped(&cell)).join(" | "));
    let mut out = line(columns.map(str::to_owned));
    out.push_str("| --- | --- | --- | ---: | --- |\n");
    for row in sheet.right_rows(orbit, buffer, conventions) {
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

/// A cell of a Markdown table: no stroke ends it early, no line break tears it.
fn escaped(cell: &str) -> String {
    cell.replace('\\', "\\\\").replace('|', "\\|").replace(['\n', '\r'], " ")
}
