//! Sheets as CSV lists with a head of their own, which are read back as they were.

use super::SheetError;
use super::rows::Rows;
use super::table::{Line, records};
use blind::{Conventions, kind_name, kind_named};
use cube::Sticker;
use sheet::{CycleCase, Layout, Origin, Row, Sheet, Verdict};

/// The columns that every such list begins with; further ones follow. The first lists had no verdict.
const HEAD: [&str; 10] =
    ["kind", "buffer", "first", "second", "letters", "algorithm", "notes", "origin", "as written", "verdict"];

/// How many of them are read back: what an algorithm does is found out anew.
const READ: usize = 9;

/// The sheet as a CSV list, every row and every further column kept. Reading it again gives the same rows, whatever
/// is in them and whatever the further columns are called.
///
/// The letters are those of the conventions; they are for people and are not read back. The column `as written` has what a
/// row said of its case in other words, `verdict` what the algorithm does where that is not what the row says. Where no case could be
/// read, `kind` and `buffer` have what was there.
pub fn to_csv(sheet: &Sheet, conventions: &Conventions) -> String {
    let mut writer = csv::Writer::from_writer(Vec::new());
    let width = sheet.rows().iter().map(|row| row.more.len()).max().unwrap_or(0).max(sheet.more.len());
    let cell = |cells: &[String], at: usize| cells.get(at).cloned().unwrap_or_default();
    let further = (0..width).map(|at| cell(&sheet.more, at));
    // Writing to memory does not fail, and all records have the same length.
    let _ = writer.write_record(HEAD.iter().map(|&name| name.to_owned()).chain(further));
    for row in sheet.rows() {
        let [kind, buffer, first, second, letters] = match row.case {
            None => {
                let [kind, buffer] = row.of.clone();
                [kind, buffer, String::new(), String::new(), String::new()]
            }
            Some(case) => {
                let name = |sticker: Sticker| case.orbit.name(sticker).to_owned();
                let letters = conventions.kind(case.orbit).letters.spell(&[case.first, case.second]);
                let kind = kind_name(case.orbit).to_owned();
                [kind, name(case.buffer), name(case.first), name(case.second), letters]
            }
        };
        let plain = row.case.is_some() && row.named == format!("{first} {second}");
        let written = if plain { String::new() } else { row.named.clone() };
        let own = [
            kind,
            buffer,
            first,
            second,
            letters,
            row.algorithm.clone(),
            row.notes.clone(),
            row.origin.name().to_owned(),
            written,
            match row.verdict() {
                Verdict::Right | Verdict::Empty => String::new(),
                verdict => verdict.name().to_owned(),
            },
        ];
        let _ = writer.write_record(own.into_iter().chain((0..width).map(|at| cell(&row.more, at))));
    }
    writer.into_inner().ok().and_then(|bytes| String::from_utf8(bytes).ok()).unwrap_or_default()
}

/// Reads such a list; `None` if its head is another one. A program for tables may have changed what sets its cells
/// apart.
///
/// # Errors
/// [`SheetError`] when the text is no table.
pub(super) fn read(text: &str) -> Option<Result<Sheet, SheetError>> {
    b",;\t".iter().find_map(|&sign| {
        let mut records = records(text, sign);
        let (_, head) = records.next()?.ok()?;
        let is_ours = head.len() >= READ && head.iter().zip(HEAD).take(READ).all(|(cell, name)| cell == name);
        is_ours.then(|| rows_of(&head, records))
    })
}

fn rows_of(
    head: &[String],
    records: impl Iterator<Item = Result<Line, SheetError>>,
) -> Result<Sheet, SheetError> {
    let own = if head.get(READ).is_some_and(|name| name == HEAD[READ]) { HEAD.len() } else { READ };
    let mut rows = Rows::default();
    for record in records {
        let (line, mut cells) = record?;
        if cells.len() < own {
            cells.resize(own, String::new());
        }
        let more = cells.split_off(own);
        let [kind, buffer, first, second, _, algorithm, notes, origin, written] =
            std::array::from_fn(|at| cells.get(at).map(|cell| cell.trim()).unwrap_or_default());
        let case = kind_named(kind).and_then(|orbit| {
            let [buffer, first, second] = [buffer, first, second].map(|name| orbit.sticker(name));
            CycleCase::new(orbit, buffer?, first?, second?)
        });
        let named = if written.is_empty() {
            format!("{first} {second}").trim().to_owned()
        } else {
            written.to_owned()
        };
        let of = if case.is_some() { Default::default() } else { [kind.to_owned(), buffer.to_owned()] };
        let template = Row {
            line,
            column: 6,
            named,
            of,
            case,
            algorithm: String::new(),
            notes: notes.to_owned(),
            origin: Origin::named(origin).unwrap_or_default(),
            more,
        };
        rows.alternatives(algorithm, &template)?;
    }
    Ok(Sheet::laid_out(Layout::List, head[own..].to_vec(), rows.done()))
}
