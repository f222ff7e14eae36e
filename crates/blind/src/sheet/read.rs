//! Reading sheets as people have them.

use super::{CycleCase, Origin, Row, Sheet};
use crate::conventions::Conventions;
use crate::kind::{KINDS, kind_name, kind_named};
use cube::{Orbit, Sticker};
use thiserror::Error;

/// How cells are set apart.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Delimiter {
    /// Commas.
    Comma,
    /// Semicolons.
    Semicolon,
    /// Tabs.
    Tab,
}

/// How a sheet is laid out.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Layout {
    /// A row for each algorithm, under a line that names the columns.
    List,
    /// A square: targets along both sides, algorithms inside.
    Grid {
        /// Whether the first target stands at the left of a row; otherwise it heads the column.
        rows_first: bool,
    },
}

/// Why a text is no sheet.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum SheetError {
    /// Nothing in it.
    #[error("the sheet is empty")]
    Empty,
    /// Not readable as a table.
    #[error("line {line}: {what}")]
    NotATable {
        /// The line, from 1.
        line: u64,
        /// Why.
        what: String,
    },
    /// Neither column names nor targets along both sides.
    #[error("neither a list nor a grid")]
    NoHeader {
        /// The cells of the first line.
        found: Vec<String>,
        /// A column name that was probably meant, with the cell.
        meant: Option<(String, &'static str)>,
    },
    /// A list without a column that is needed.
    #[error("the column `{0}` is missing")]
    ColumnMissing(&'static str),
    /// It cannot be told which kind of piece it is about.
    #[error("it cannot be told whether these are corners or edges")]
    KindUnknown,
    /// The buffer that was asked for is no sticker of the kind.
    #[error("`{word}` is no {} sticker", kind_name(*.orbit))]
    NoBuffer {
        /// The word.
        word: String,
        /// The kind.
        orbit: Orbit,
    },
}

/// How to understand a sheet.
#[derive(Clone, Debug)]
pub struct Reading<'a> {
    /// The solver's letters, and the buffer where neither the sheet nor `buffer` names one.
    pub conventions: &'a Conventions,
    /// The kind of piece, where the sheet does not say.
    pub kind: Option<Orbit>,
    /// The buffer, by sticker or letter.
    pub buffer: Option<String>,
}

impl<'a> Reading<'a> {
    /// As the sheet itself says, with the letters of the conventions.
    pub const fn new(conventions: &'a Conventions) -> Self {
        Self { conventions, kind: None, buffer: None }
    }

    fn target(&self, orbit: Orbit, text: &str) -> Option<Sticker> {
        let words = || {
            text.split(|sign: char| sign.is_whitespace() || "()[]=:-/".contains(sign))
                .filter(|word| !word.is_empty())
        };
        let named =
            words().find_map(|word| orbit.sticker(word).or_else(|| orbit.sticker(&word.to_uppercase())));
        named.or_else(|| {
            let letters = &self.conventions.kind(orbit).letters;
            words().find_map(|word| single(word).and_then(|letter| letters.sticker(letter)))
        })
    }

    /// Two targets in one cell: `AB`, `A B`, `UBL RDF`, `UBL-RDF`.
    fn pair(&self, orbit: Orbit, text: &str) -> Option<[Sticker; 2]> {
        let words: Vec<&str> = text
            .split(|sign: char| sign.is_whitespace() || ",;-/>→()".contains(sign))
            .filter(|word| !word.is_empty())
            .collect();
        if let [first, second] = words[..] {
            return Some([self.target(orbit, first)?, self.target(orbit, second)?]);
        }
        let [word] = words[..] else { return None };
        let letters = &self.conventions.kind(orbit).letters;
        let signs: Vec<char> = word.chars().collect();
        let [first, second] = signs[..] else { return None };
        Some([letters.sticker(first)?, letters.sticker(second)?])
    }

    fn buffer_of(&self, orbit: Orbit) -> Result<Sticker, SheetError> {
        match &self.buffer {
            None => Ok(self.conventions.kind(orbit).buffer),
            Some(word) => {
                self.target(orbit, word).ok_or_else(|| SheetError::NoBuffer { word: word.clone(), orbit })
            }
        }
    }

    /// The kind by a word such as `corners`, in English or German.
    fn kind_by_word(word: &str) -> Option<Orbit> {
        let word = word.trim().to_lowercase();
        kind_named(&word).or_else(|| kind_named(word.trim_end_matches('s'))).or(match word.as_str() {
            "ecke" | "ecken" => Some(Orbit::Corner),
            "kante" | "kanten" => Some(Orbit::Midge),
            _ => None,
        })
    }

    /// The kind that names such as UFR or UF are of, by majority; letters alone do not tell.
    fn kind_by_names<'t>(&self, names: impl Iterator<Item = &'t str>) -> Option<Orbit> {
        let mut votes = [0usize; 2];
        for name in names {
            for (vote, orbit) in votes.iter_mut().zip(KINDS) {
                let words = name.split(|sign: char| !sign.is_alphabetic()).filter(|word| word.len() > 1);
                *vote += words.filter(|word| orbit.sticker(&word.to_uppercase()).is_some()).count();
            }
        }
        let by_buffer = self.buffer.as_deref().and_then(|word| {
            KINDS.into_iter().find(|orbit| word.len() > 1 && orbit.sticker(&word.to_uppercase()).is_some())
        });
        match votes {
            [corners, edges] if corners > edges => Some(Orbit::Corner),
            [corners, edges] if edges > corners => Some(Orbit::Midge),
            _ => by_buffer,
        }
    }
}

fn single(word: &str) -> Option<char> {
    let mut signs = word.chars();
    signs.next().filter(|_| signs.next().is_none())
}

/// The columns of a list and what people call them.
const COLUMNS: [(&str, &[&str]); 9] = [
    ("kind", &["kind", "type", "piece", "pieces", "art", "teil"]),
    ("buffer", &["buffer", "puffer"]),
    (
        "first",
        &[
            "first",
            "first target",
            "target 1",
            "1st",
            "letter 1",
            "1",
            "from",
            "erster",
            "erstes ziel",
            "erstes",
        ],
    ),
    (
        "second",
        &[
            "second",
            "second target",
            "target 2",
            "2nd",
            "letter 2",
            "2",
            "to",
            "zweiter",
            "zweites ziel",
            "zweites",
        ],
    ),
    (
        "pair",
        &["pair", "letters", "letter pair", "case", "cycle", "paar", "buchstaben", "buchstabenpaar", "fall"],
    ),
    (
        "algorithm",
        &[
            "algorithm",
            "alg",
            "algs",
            "moves",
            "commutator",
            "comm",
            "sequence",
            "solution",
            "algorithmus",
            "züge",
        ],
    ),
    (
        "notes",
        &["notes", "note", "comment", "comments", "remark", "remarks", "notiz", "notizen", "bemerkung"],
    ),
    // As sheets are written here; see `Sheet::to_csv`.
    ("origin", &["origin"]),
    ("as written", &["as written"]),
];

fn column_named(cell: &str) -> Option<&'static str> {
    let cell = cell.trim().trim_start_matches('\u{feff}').to_lowercase();
    COLUMNS.iter().find(|(_, names)| names.contains(&cell.as_str())).map(|(column, _)| *column)
}

/// A table as it was read: cells with their lines.
struct Table {
    lines: Vec<(u64, Vec<String>)>,
}

impl Table {
    fn read(text: &str) -> Result<Self, SheetError> {
        let delimiter = Self::delimiter(text);
        let sign = match delimiter {
            Delimiter::Comma => b',',
            Delimiter::Semicolon => b';',
            Delimiter::Tab => b'\t',
        };
        let mut reader = csv::ReaderBuilder::new()
            .has_headers(false)
            .flexible(true)
            .delimiter(sign)
            .from_reader(text.trim_start_matches('\u{feff}').as_bytes());
        let mut lines = Vec::new();
        for record in reader.records() {
            let record = record.map_err(|error| SheetError::NotATable {
                line: error.position().map_or(0, csv::Position::line),
                what: error.to_string(),
            })?;
            let line = record.position().map_or(0, csv::Position::line);
            let cells: Vec<String> = record.iter().map(str::to_owned).collect();
            let cells = if delimiter == Delimiter::Comma { rejoined(cells) } else { cells };
            if cells.iter().any(|cell| !cell.trim().is_empty()) {
                lines.push((line, cells));
            }
        }
        if lines.is_empty() { Err(SheetError::Empty) } else { Ok(Self { lines }) }
    }

    /// Tabs are in no algorithm, semicolons hardly, commas in every commutator.
    fn delimiter(text: &str) -> Delimiter {
        let first = text.lines().find(|line| !line.trim().is_empty()).unwrap_or_default();
        if first.contains('\t') {
            Delimiter::Tab
        } else if first.contains(';') {
            Delimiter::Semicolon
        } else {
            Delimiter::Comma
        }
    }
}

/// Cells that were torn at the comma of a commutator written without quotation marks are put together again.
fn rejoined(cells: Vec<String>) -> Vec<String> {
    let depth = |text: &str| text.matches('[').count() as i64 - text.matches(']').count() as i64;
    let mut whole: Vec<String> = Vec::new();
    let mut open = 0;
    for cell in cells {
        let inside = depth(&cell);
        match whole.last_mut() {
            Some(last) if open > 0 => {
                last.push(',');
                last.push_str(&cell);
                open += inside;
            }
            _ => {
                open = inside;
                whole.push(cell);
            }
        }
    }
    whole
}

impl Sheet {
    /// Reads a sheet from CSV, semicolons or tabs: a list with named columns in any order, or a grid with letters or
    /// sticker names along both sides.
    ///
    /// Nothing is judged yet and nothing is dropped: cells that cannot be read are kept as they are, see [`Sheet::check`].
    ///
    /// # Errors
    /// [`SheetError`] when the text as a whole is neither.
    pub fn read(text: &str, reading: &Reading<'_>) -> Result<Self, SheetError> {
        let table = Table::read(text)?;
        let (_, head) = &table.lines[0];
        let mut columns: Vec<Option<&'static str>> = head.iter().map(|cell| column_named(cell)).collect();
        // Somebody else's column of that name is a further column.
        let origin = |cell: &String| cell.trim().is_empty() || Origin::named(cell.trim()).is_some();
        let ours = |at: usize| table.lines[1..].iter().filter_map(|(_, cells)| cells.get(at)).all(origin);
        for (at, column) in columns.iter_mut().enumerate().filter(|(_, column)| **column == Some("origin")) {
            *column = column.filter(|_| ours(at));
        }
        if columns.contains(&Some("algorithm")) {
            return Self::list(&table, &columns, reading);
        }
        if let Some(sheet) = Self::grid(&table, reading)? {
            return Ok(sheet);
        }
        let known: Vec<&str> = COLUMNS.iter().map(|(name, _)| *name).collect();
        let meant = head.iter().find_map(|cell| {
            let found = crate::nearest(cell.trim(), &known)?;
            Some((cell.trim().to_owned(), COLUMNS.iter().find(|(name, _)| *name == found)?.0))
        });
        if columns.iter().flatten().count() > 1 {
            return Err(SheetError::ColumnMissing("algorithm"));
        }
        Err(SheetError::NoHeader { found: head.clone(), meant })
    }

    fn list(
        table: &Table,
        columns: &[Option<&'static str>],
        reading: &Reading<'_>,
    ) -> Result<Self, SheetError> {
        let at = |name: &str| columns.iter().position(|column| *column == Some(name));
        let missing = |name: &'static str| at(name).is_none();
        if missing("pair") {
            for name in ["first", "second"] {
                if missing(name) {
                    return Err(SheetError::ColumnMissing(name));
                }
            }
        }
        let head = &table.lines[0].1;
        let further: Vec<usize> = (0..head.len())
            .filter(|&cell| columns[cell].is_none() || at(columns[cell].unwrap_or("")) != Some(cell))
            .collect();
        let cell = |cells: &[String], name: &str| -> String {
            at(name).and_then(|at| cells.get(at)).map_or_else(String::new, |cell| cell.trim().to_owned())
        };
        let named = ["pair", "first", "second", "buffer"];
        let names = table.lines[1..]
            .iter()
            .flat_map(|(_, cells)| named.iter().filter_map(|name| cells.get(at(name)?)).map(String::as_str));
        let by_names = reading.kind.or_else(|| reading.kind_by_names(names));
        let mut rows = Vec::new();
        for (line, cells) in &table.lines[1..] {
            let mut named = if missing("pair") {
                format!("{} {}", cell(cells, "first"), cell(cells, "second")).trim().to_owned()
            } else {
                cell(cells, "pair")
            };
            let case = match Reading::kind_by_word(&cell(cells, "kind")).or(by_names) {
                Some(orbit) => {
                    let targets = if missing("pair") {
                        reading
                            .target(orbit, &cell(cells, "first"))
                            .zip(reading.target(orbit, &cell(cells, "second")))
                            .map(|(first, second)| [first, second])
                    } else {
                        reading.pair(orbit, &cell(cells, "pair"))
                    };
                    let written = cell(cells, "buffer");
                    let buffer = if written.is_empty() {
                        Some(reading.buffer_of(orbit)?)
                    } else {
                        reading.target(orbit, &written)
                    };
                    buffer.zip(targets).and_then(|(buffer, targets)| case(orbit, buffer, targets))
                }
                // A row that names nothing needs no kind.
                None if named.is_empty() => None,
                None => return Err(SheetError::KindUnknown),
            };
            if named.is_empty() {
                named = cell(cells, "as written");
            }
            let column = at("algorithm").map_or(0, |at| at as u64 + 1);
            // Cells beyond the head are kept as well.
            let beyond = cells.iter().skip(head.len()).cloned();
            let more =
                further.iter().map(|&at| cells.get(at).cloned().unwrap_or_default()).chain(beyond).collect();
            let origin = Origin::named(&cell(cells, "origin")).unwrap_or_default();
            let template = Row {
                line: *line,
                column,
                named,
                case,
                algorithm: String::new(),
                notes: cell(cells, "notes"),
                origin,
                more,
            };
            rows.extend(alternatives(&cell(cells, "algorithm"), &template));
        }
        let more = further.iter().map(|&at| head[at].clone()).collect();
        Ok(Self { layout: Layout::List, more, rows })
    }

    /// A grid, if the cells along both sides are targets.
    fn grid(table: &Table, reading: &Reading<'_>) -> Result<Option<Self>, SheetError> {
        let head = &table.lines[0].1;
        let corner = head[0].trim();
        let left = || table.lines[1..].iter().filter_map(|(_, cells)| cells.first()).map(String::as_str);
        let sides = || head[1..].iter().map(String::as_str).chain(left());
        let by_corner = Reading::kind_by_word(corner);
        let kind = reading
            .kind
            .or(by_corner)
            .or_else(|| reading.kind_by_names(sides().chain(std::iter::once(corner))));
        let is_target = |orbit: Orbit, cell: &str| reading.target(orbit, cell).is_some();
        let all_targets = |orbit: Orbit| {
            let filled: Vec<&str> = sides().filter(|cell| !cell.trim().is_empty()).collect();
            filled.len() > 2
                && filled.iter().filter(|cell| is_target(orbit, cell)).count() * 10 >= filled.len() * 8
        };
        if !all_targets(kind.unwrap_or(Orbit::Corner)) {
            return Ok(None);
        }
        let orbit = kind.ok_or(SheetError::KindUnknown)?;
        let buffer =
            match reading.target(orbit, corner).filter(|_| reading.buffer.is_none() && corner.len() > 1) {
                Some(buffer) => buffer,
                None => reading.buffer_of(orbit)?,
            };
        let make = |rows_first: bool| {
            let mut rows = Vec::new();
            for (line, cells) in &table.lines[1..] {
                let side = cells.first().map_or("", |cell| cell.trim());
                for at in 1..cells.len().max(head.len()) {
                    let top = head.get(at).map_or("", |cell| cell.trim());
                    let text = cells.get(at).map_or("", |cell| cell.trim());
                    let (first, second) = if rows_first { (side, top) } else { (top, side) };
                    let targets = reading.target(orbit, first).zip(reading.target(orbit, second));
                    let template = Row {
                        line: *line,
                        column: at as u64 + 1,
                        named: format!("{first} {second}").trim().to_owned(),
                        case: targets.and_then(|(first, second)| case(orbit, buffer, [first, second])),
                        algorithm: String::new(),
                        notes: String::new(),
                        origin: Origin::Sheet,
                        more: Vec::new(),
                    };
                    rows.extend(alternatives(text, &template));
                }
            }
            Self { layout: Layout::Grid { rows_first }, more: Vec::new(), rows }
        };
        // Which side comes first is told by what the algorithms do.
        let (by_rows, by_columns) = (make(true), make(false));
        let better = by_columns.check().right() > by_rows.check().right();
        Ok(Some(if better { by_columns } else { by_rows }))
    }
}

fn case(orbit: Orbit, buffer: Sticker, [first, second]: [Sticker; 2]) -> Option<CycleCase> {
    let pieces = [buffer, first, second].map(|sticker| orbit.piece(sticker));
    let apart = pieces[0] != pieces[1] && pieces[0] != pieces[2] && pieces[1] != pieces[2];
    apart.then_some(CycleCase { orbit, buffer, first, second })
}

/// A row for each algorithm of a cell: alternatives stand on lines of their own or between strokes; what follows `//` is a
/// note.
fn alternatives(text: &str, template: &Row) -> Vec<Row> {
    let parts: Vec<&str> = text
        .lines()
        .flat_map(|line| line.split(" / "))
        .map(str::trim)
        .filter(|part| !part.is_empty())
        .collect();
    if parts.is_empty() {
        return vec![template.clone()];
    }
    parts
        .into_iter()
        .map(|part| {
            let (algorithm, note) = part.split_once("//").unwrap_or((part, ""));
            let notes = [template.notes.as_str(), note.trim()];
            let notes: Vec<&str> = notes.into_iter().filter(|note| !note.is_empty()).collect();
            Row { algorithm: algorithm.trim().to_owned(), notes: notes.join("; "), ..template.clone() }
        })
        .collect()
}
