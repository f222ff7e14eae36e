//! Reading lists: a row for each case, its parts in columns.

use super::columns::Columns;
use super::read::{Reading, Remark, SheetError, TakenIn, aside};
use super::rows::Rows;
use super::table::Line;
use cube::{Orbit, Sticker};
use sheet::{CycleCase, Layout, Origin, Row, Sheet};

/// A table that is a list.
pub(super) struct Lines<'a> {
    /// The names of the columns; none where no line has them.
    pub head: &'a [String],
    /// The lines above.
    pub above: &'a [Line],
    /// The lines below.
    pub below: &'a [Line],
    /// What each column is for.
    pub columns: &'a Columns,
}

impl Lines<'_> {
    fn at(&self, name: &str) -> Option<usize> {
        self.columns.iter().position(|column| *column == Some(name))
    }

    fn cell<'c>(&self, cells: &'c [String], name: &str) -> &'c str {
        self.at(name).and_then(|at| cells.get(at)).map_or("", |cell| cell.trim())
    }
}

pub(super) fn read(
    lines: &Lines<'_>,
    reading: &Reading<'_>,
    mut remarks: Vec<Remark>,
) -> Result<TakenIn, SheetError> {
    let columns = lines.columns;
    let algorithms: Vec<usize> = columns
        .iter()
        .enumerate()
        .filter(|(_, column)| **column == Some("algorithm"))
        .map(|(at, _)| at)
        .collect();
    // A pair beside two targets is for comparison, and is kept as well.
    let compared = if lines.at("first").is_some() { lines.at("pair") } else { None };
    let further: Vec<usize> =
        (0..columns.len()).filter(|&at| columns[at].is_none() || compared == Some(at)).collect();
    let names = ["pair", "first", "second", "buffer"];
    let names: Vec<(&str, usize)> =
        names.into_iter().filter_map(|name| Some((name, lines.at(name)?))).collect();
    let names = lines
        .below
        .iter()
        .flat_map(|(_, cells)| names.iter().filter_map(|(name, at)| Some((*name, cells.get(*at)?))))
        // Two letters written together are a pair of letters and no edge.
        .filter(|(name, cell)| *name != "pair" || cell.trim().chars().count() > 2)
        .map(|(_, cell)| cell.as_str());
    let by_names = reading.kind.or_else(|| reading.kind_by_names(names));
    let mut rows = Rows::default();
    lines.above.iter().try_for_each(|(line, cells)| rows.push(aside(*line, 1, cells)))?;
    for (line, cells) in lines.below {
        let (pair, targets) = (lines.cell(cells, "pair"), targets_of(lines, cells));
        let named = if targets.is_empty() { pair.to_owned() } else { targets.clone() };
        let of = ["kind", "buffer"].map(|name| lines.cell(cells, name).to_owned());
        let case = match Reading::kind_by_word(&of[0]).or(by_names) {
            Some(orbit) => {
                let case = Cell { lines, cells, line: *line, reading, orbit };
                case.case(&of[1], pair, &targets, &mut remarks)?
            }
            // A row that names nothing needs no kind.
            None if named.is_empty() => None,
            None => return Err(SheetError::KindUnknown),
        };
        // Cells beyond the head are kept as well.
        let beyond = cells.iter().skip(columns.len()).cloned();
        let more =
            further.iter().map(|&at| cells.get(at).cloned().unwrap_or_default()).chain(beyond).collect();
        let template = Row {
            line: *line,
            column: algorithms.first().map_or(0, |&at| at as u64 + 1),
            named,
            of: if case.is_some() { Default::default() } else { of },
            case,
            algorithm: String::new(),
            notes: lines.cell(cells, "notes").to_owned(),
            origin: Origin::Sheet,
            more,
        };
        let filled: Vec<usize> = algorithms
            .iter()
            .copied()
            .filter(|&at| cells.get(at).is_some_and(|cell| !cell.trim().is_empty()))
            .collect();
        if filled.is_empty() {
            rows.push(template)?;
            continue;
        }
        for at in filled {
            let column = at as u64 + 1;
            rows.alternatives(cells[at].trim(), &Row { column, ..template.clone() })?;
        }
    }
    let name = |at: &usize| lines.head.get(*at).cloned().unwrap_or_default();
    let more = further.iter().map(name).collect();
    Ok(TakenIn { sheet: Sheet::laid_out(Layout::List, more, rows.done()), remarks })
}

fn targets_of(lines: &Lines<'_>, cells: &[String]) -> String {
    format!("{} {}", lines.cell(cells, "first"), lines.cell(cells, "second")).trim().to_owned()
}

/// A row whose kind is known.
struct Cell<'a> {
    lines: &'a Lines<'a>,
    cells: &'a [String],
    line: u64,
    reading: &'a Reading<'a>,
    orbit: Orbit,
}

impl Cell<'_> {
    fn case(
        &self,
        buffer: &str,
        pair: &str,
        targets: &str,
        remarks: &mut Vec<Remark>,
    ) -> Result<Option<CycleCase>, SheetError> {
        let Self { lines, cells, reading, orbit, line } = *self;
        let target = |name: &str| reading.target(orbit, lines.cell(cells, name));
        let by_targets: Option<[Sticker; 2]> = target("first").zip(target("second")).map(Into::into);
        let by_pair = (lines.at("pair").is_some() && !pair.is_empty())
            .then(|| reading.pair(orbit, pair))
            .flatten()
            .filter(|[first, second]| orbit.piece(*first) != orbit.piece(*second));
        let has_targets = lines.at("first").is_some();
        if let (Some(one), Some(other)) = (by_targets, by_pair)
            && one != other
        {
            let (pair, targets) = (pair.to_owned(), targets.to_owned());
            remarks.push(Remark::TwoCases { line, pair, targets });
        }
        let targets = if has_targets { by_targets } else { by_pair };
        let asked = reading.buffer_of(orbit);
        let buffer = if buffer.is_empty() {
            Some(asked?)
        } else {
            let found = reading.target(orbit, buffer);
            if let (Some(found), Ok(asked), true) = (found, asked, reading.buffer.is_some())
                && found != asked
            {
                let remark = Remark::OtherBuffer { orbit, found, asked, taken: found };
                if !remarks.contains(&remark) {
                    remarks.push(remark);
                }
            }
            found
        };
        Ok(buffer
            .zip(targets)
            .and_then(|(buffer, [first, second])| CycleCase::new(orbit, buffer, first, second)))
    }
}
