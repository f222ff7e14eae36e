//! Reading grids: targets along two sides, algorithms where they cross.

use super::read::{Reading, Remark, SheetError, TakenIn, aside};
use super::rows::Rows;
use super::salvage::{has_words, is_algorithm};
use super::table::Line;
use cube::{Orbit, Sticker};
use sheet::{CycleCase, Layout, Row, Sheet};

/// A grid whose first line heads its columns.
struct Square<'a> {
    lines: &'a [Line],
    above: &'a [Line],
    reading: &'a Reading<'a>,
    orbit: Orbit,
}

/// A grid, if the cells along both sides are targets.
pub(super) fn read(
    lines: &[Line],
    above: &[Line],
    reading: &Reading<'_>,
    remarks: &[Remark],
) -> Result<Option<TakenIn>, SheetError> {
    let (_, head) = &lines[0];
    let corner = head[0].trim();
    let left = || lines[1..].iter().filter_map(|(_, cells)| cells.first()).map(String::as_str);
    let names = || head[1..].iter().map(String::as_str).chain(left());
    let by_corner = Reading::kind_by_word(corner);
    let kind =
        reading.kind.or(by_corner).or_else(|| reading.kind_by_names(names().chain(std::iter::once(corner))));
    if !is_grid(lines, reading, kind.unwrap_or(Orbit::Corner)) {
        return Ok(None);
    }
    let orbit = kind.ok_or(SheetError::KindUnknown)?;
    let square = Square { lines, above, reading, orbit };
    let found = corner
        .split(|sign: char| !sign.is_alphanumeric())
        .find_map(|word| orbit.sticker(&word.to_uppercase()));
    let mut remarks = remarks.to_vec();
    let sheet = match (found, &reading.buffer) {
        (Some(found), None) => square.ordered(found)?,
        (None, _) => square.ordered(reading.buffer_of(orbit)?)?,
        (Some(found), Some(_)) => {
            let asked = reading.buffer_of(orbit)?;
            let (of_found, of_asked) = (square.ordered(found)?, square.ordered(asked)?);
            let (sheet, taken) = if of_found.check().right() > of_asked.check().right() {
                (of_found, found)
            } else {
                (of_asked, asked)
            };
            if found != asked {
                remarks.push(Remark::OtherBuffer { orbit, found, asked, taken });
            }
            sheet
        }
    };
    Ok(Some(TakenIn { sheet, remarks }))
}

/// Whether most cells along both sides are targets, lines of text among and below them not counted.
fn is_grid(lines: &[Line], reading: &Reading<'_>, orbit: Orbit) -> bool {
    let is_target = |cell: &str| reading.target(orbit, cell).is_some();
    let head = &lines[0].1[1..];
    let crossed: Vec<usize> = (0..head.len()).filter(|&at| is_target(&head[at])).map(|at| at + 1).collect();
    let last = lines[1..].iter().rposition(|(_, cells)| cells.first().is_some_and(|cell| is_target(cell)));
    let Some(last) = last.filter(|_| !crossed.is_empty()) else { return false };
    let has_cells = |(_, cells): &&Line| {
        crossed.iter().any(|&at| cells.get(at).is_some_and(|cell| !cell.trim().is_empty()))
    };
    let sides = lines[1..=last + 1]
        .iter()
        .filter(|line| has_cells(line) || line.1.first().is_some_and(|cell| is_target(cell)));
    let sides = head.iter().chain(sides.filter_map(|(_, cells)| cells.first()));
    let filled: Vec<&String> = sides.filter(|cell| !cell.trim().is_empty()).collect();
    let targets = filled.iter().filter(|cell| is_target(cell)).count();
    filled.len() > 2 && targets * 10 >= filled.len() * 8
}

impl Square<'_> {
    /// Which side comes first is told by what the algorithms do.
    fn ordered(&self, buffer: Sticker) -> Result<Sheet, SheetError> {
        if let Some(rows_first) = self.reading.rows_first {
            return self.made(buffer, rows_first);
        }
        let (by_rows, by_columns) = (self.made(buffer, true)?, self.made(buffer, false)?);
        let [rows, columns] = [&by_rows, &by_columns].map(|sheet| sheet.check().right());
        if rows == columns && rows > 0 {
            return Err(SheetError::OrderUnknown { right: rows });
        }
        Ok(if columns > rows { by_columns } else { by_rows })
    }

    fn made(&self, buffer: Sticker, rows_first: bool) -> Result<Sheet, SheetError> {
        let Self { lines, above, reading, orbit } = *self;
        let (top_line, head) = &lines[0];
        let corner = head[0].trim();
        let mut rows = Rows::default();
        above.iter().try_for_each(|(line, cells)| rows.push(aside(*line, 1, cells)))?;
        // What the corner says beside kind or buffer is kept like a line above.
        let says_kind =
            Reading::kind_by_word(corner).is_some() || orbit.sticker(&corner.to_uppercase()).is_some();
        if !corner.is_empty() && !says_kind {
            rows.push(aside(*top_line, 1, &head[..1]))?;
        }
        let tops: Vec<Option<Sticker>> = head.iter().map(|cell| reading.target(orbit, cell)).collect();
        for (line, cells) in &lines[1..] {
            let side = cells.first().map_or("", |cell| cell.trim());
            let side_target = reading.target(orbit, side);
            let has_algorithm = || cells.iter().skip(1).any(|cell| is_algorithm(cell));
            let filled = || cells.iter().skip(1).filter(|cell| !cell.trim().is_empty());
            // The sign of a legend may be a letter as well.
            let is_legend = || filled().count() == 1 && filled().all(|cell| has_words(cell));
            if (side_target.is_none() || is_legend()) && !has_algorithm() {
                // A title, a note, a legend.
                rows.push(aside(*line, 1, cells))?;
                continue;
            }
            for at in 1..cells.len().max(head.len()) {
                let top = head.get(at).map_or("", |cell| cell.trim());
                let text = cells.get(at).map_or("", |cell| cell.trim());
                let top_target = tops.get(at).copied().flatten();
                let column = at as u64 + 1;
                if top_target.is_none() && !is_algorithm(text) {
                    // A note beside the grid.
                    if !text.is_empty() {
                        rows.push(aside(*line, column, &cells[at..=at]))?;
                    }
                    continue;
                }
                let (first, second) = if rows_first { (side, top) } else { (top, side) };
                let targets = if rows_first { (side_target, top_target) } else { (top_target, side_target) };
                let case = targets
                    .0
                    .zip(targets.1)
                    .and_then(|(first, second)| CycleCase::new(orbit, buffer, first, second));
                let template = Row {
                    line: *line,
                    column,
                    named: format!("{first} {second}").trim().to_owned(),
                    case,
                    ..Row::default()
                };
                // Where both targets are on one piece there is no case: what stands there is a sign or a word for that.
                let no_case = case.is_none() && targets.0.is_some() && targets.1.is_some();
                if no_case && !is_algorithm(text) {
                    rows.push(Row { notes: text.to_owned(), ..template })?;
                } else {
                    rows.alternatives(text, &template)?;
                }
            }
        }
        Ok(Sheet::laid_out(Layout::Grid { rows_first }, Vec::new(), rows.done()))
    }
}
