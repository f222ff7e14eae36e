//! Reading sheets as people have them.

use super::list;
use super::rows::Rows;
use super::table::{Line, MOST_ABOVE, Table};
use crate::document::{DocumentError, within};
use blind::{Conventions, kind_name, kind_named};
use cube::{Orbit, OrbitMap, Sticker};
use sheet::{CycleCase, Layout, Origin, Row, SIZE, Sheet};
use thiserror::Error;

/// The most bytes that are read.
pub const MOST_BYTES: usize = 16 << 20;

/// The most cells that a sheet may come to: a table's lines times its longest one, further columns of every row of the sheet with
/// them. All cases of all buffers of both kinds are 13,000.
pub const MOST_CELLS: usize = 250_000;

/// The most bytes that the rows of a sheet may come to, where several algorithms of a cell share its notes and further columns.
pub const MOST_TAKEN: usize = 4 * MOST_BYTES;

/// Why a text is no sheet.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum SheetError {
    /// Something that may be wrong with any document.
    #[error(transparent)]
    Document(#[from] DocumentError),
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
    /// More than [`MOST_CELLS`] cells or [`MOST_TAKEN`] bytes, up to this line.
    #[error("line {line}: the sheet comes to more than {MOST_CELLS} cells or {MOST_TAKEN} bytes")]
    TooMuch {
        /// The line, from 1.
        line: u64,
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
            words().find_map(|word| letters.sticker(word))
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
        letters.read(word).ok()?.try_into().ok()
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
        let named = |word: &str| kind_named(word).filter(|orbit| Orbit::of(SIZE).contains(orbit));
        named(&word).or_else(|| named(word.trim_end_matches('s'))).or(match word.as_str() {
            "ecke" | "ecken" => Some(Orbit::Corner),
            "kante" | "kanten" => Some(Orbit::Midge),
            _ => None,
        })
    }

    /// The kind that names such as UFR or UF are of, by majority; letters alone do not tell.
    fn kind_by_names<'t>(&self, names: impl Iterator<Item = &'t str>) -> Option<Orbit> {
        let kinds = Orbit::of(SIZE);
        let mut votes: OrbitMap<usize> = OrbitMap::default();
        for name in names {
            for &orbit in kinds {
                let words = name.split(|sign: char| !sign.is_alphabetic()).filter(|word| word.len() > 1);
                votes[orbit] += words.filter(|word| orbit.sticker(&word.to_uppercase()).is_some()).count();
            }
        }
        let by_buffer = self.buffer.as_deref().and_then(|word| {
            kinds
                .iter()
                .copied()
                .find(|orbit| word.len() > 1 && orbit.sticker(&word.to_uppercase()).is_some())
        });
        // The buffer that was asked for leaves no doubt.
        let most = kinds.iter().copied().max_by_key(|&orbit| votes[orbit]);
        let alone = |most: &Orbit| kinds.iter().all(|other| other == most || votes[*other] < votes[*most]);
        by_buffer.or(most.filter(alone))
    }
}

/// The columns of a list and what people call them.
const COLUMNS: [(&str, &[&str]); 7] = [
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
];

fn column_named(cell: &str) -> Option<&'static str> {
    let cell = cell.trim().trim_start_matches('\u{feff}').to_lowercase();
    COLUMNS.iter().find(|(_, names)| names.contains(&cell.as_str())).map(|(column, _)| *column)
}

/// A line that belongs to no case, such as a title, or a cell of a grid that names nothing.
fn aside(line: u64, cells: &[String]) -> Row {
    let texts: Vec<&str> = cells.iter().map(|cell| cell.trim()).filter(|cell| !cell.is_empty()).collect();
    Row {
        line,
        column: 1,
        named: texts.join(" "),
        of: Default::default(),
        case: None,
        algorithm: String::new(),
        notes: String::new(),
        origin: Origin::Sheet,
        more: Vec::new(),
    }
}

/// The columns of a list by what is in them, where a line is the head of one.
type Columns = Vec<Option<&'static str>>;

/// What each column is for; those whose content would not be used are further columns, so that nothing of it is lost.
fn columns(lines: &[Line]) -> Columns {
    let Some((_, head)) = lines.first() else { return Vec::new() };
    let mut columns: Columns = head.iter().map(|cell| column_named(cell)).collect();
    // Of two columns of a name the first counts.
    for at in 0..columns.len() {
        if columns[at].is_some() && columns[..at].contains(&columns[at]) {
            columns[at] = None;
        }
    }
    let has = |columns: &Columns, name| columns.contains(&Some(name));
    let drop = |columns: &mut Columns, name| {
        columns.iter_mut().filter(|column| **column == Some(name)).for_each(|column| *column = None);
    };
    // Two targets in columns of their own say more than a pair does.
    if has(&columns, "first") && has(&columns, "second") {
        drop(&mut columns, "pair");
    } else if has(&columns, "pair") {
        drop(&mut columns, "first");
        drop(&mut columns, "second");
    }
    let is_kind = |cell: &String| cell.trim().is_empty() || Reading::kind_by_word(cell).is_some();
    if let Some(at) = columns.iter().position(|column| *column == Some("kind"))
        && !lines[1..].iter().filter_map(|(_, cells)| cells.get(at)).all(is_kind)
    {
        columns[at] = None;
    }
    columns
}

/// Whether these are the columns of a list.
fn is_list(columns: &Columns) -> bool {
    let has = |name| columns.contains(&Some(name));
    has("algorithm") && (has("pair") || (has("first") && has("second")))
}

/// Reads a sheet from CSV, semicolons or tabs: a list with named columns in any order, or a grid with letters or
/// sticker names along both sides.
///
/// Nothing is judged yet and nothing is dropped: cells that cannot be read are kept as they are, see [`Sheet::check`](sheet::Sheet::check).
///
/// # Errors
/// [`SheetError`] when the text as a whole is neither.
pub fn read(text: &str, reading: &Reading<'_>) -> Result<Sheet, SheetError> {
    within(text, MOST_BYTES)?;
    // Lines are counted alike whatever ends them.
    let text = &text.replace("\r\n", "\n").replace('\r', "\n");
    if let Some(kept) = list::read(text) {
        return kept;
    }
    // A title above the table does not show what sets its cells apart.
    let [likely, others @ ..] = Table::delimiters(text);
    let first = table(&Table::read(text, likely)?, reading);
    if first.is_ok() {
        return first;
    }
    let other = |delimiter| table(&Table::read(text, delimiter).ok()?, reading).ok();
    others.into_iter().find_map(other).map_or(first, Ok)
}

/// Reads a table whose cells are known.
fn table(table: &Table, reading: &Reading<'_>) -> Result<Sheet, SheetError> {
    let heads = || 0..table.lines.len().min(MOST_ABOVE + 1);
    if let Some(head) = heads().find(|&head| is_list(&columns(table.below(head).0))) {
        let (below, above) = table.below(head);
        return list_of(below, above, &columns(below), reading);
    }
    for head in heads() {
        let (below, above) = table.below(head);
        if let Some(sheet) = grid(below, above, reading)? {
            return Ok(sheet);
        }
    }
    let (_, head) = &table.lines[0];
    let columns = columns(&table.lines);
    if columns.contains(&Some("algorithm")) {
        return Err(SheetError::ColumnMissing(if columns.contains(&Some("first")) {
            "second"
        } else {
            "first"
        }));
    }
    if columns.iter().flatten().count() > 1 {
        return Err(SheetError::ColumnMissing("algorithm"));
    }
    let known: Vec<&str> = COLUMNS.iter().map(|(name, _)| *name).collect();
    let meant = head.iter().find_map(|cell| {
        let found = blind::nearest(cell.trim(), &known)?;
        Some((cell.trim().to_owned(), COLUMNS.iter().find(|(name, _)| *name == found)?.0))
    });
    Err(SheetError::NoHeader { found: head.clone(), meant })
}

fn list_of(
    lines: &[Line],
    above: &[Line],
    columns: &[Option<&'static str>],
    reading: &Reading<'_>,
) -> Result<Sheet, SheetError> {
    let at = |name: &str| columns.iter().position(|column| *column == Some(name));
    let missing = |name: &'static str| at(name).is_none();
    let head = &lines[0].1;
    let further: Vec<usize> = (0..head.len()).filter(|&cell| columns[cell].is_none()).collect();
    let cell = |cells: &[String], name: &str| -> String {
        at(name).and_then(|at| cells.get(at)).map_or_else(String::new, |cell| cell.trim().to_owned())
    };
    let named = ["pair", "first", "second", "buffer"];
    let names = lines[1..]
        .iter()
        .flat_map(|(_, cells)| named.iter().filter_map(|name| Some((*name, cells.get(at(name)?)?))))
        // Two letters written together are a pair of letters and no edge.
        .filter(|(name, cell)| *name != "pair" || cell.trim().chars().count() > 2)
        .map(|(_, cell)| cell.as_str());
    let by_names = reading.kind.or_else(|| reading.kind_by_names(names));
    let mut rows = Rows::default();
    above.iter().try_for_each(|(line, cells)| rows.push(aside(*line, cells)))?;
    for (line, cells) in &lines[1..] {
        let named = if missing("pair") {
            format!("{} {}", cell(cells, "first"), cell(cells, "second")).trim().to_owned()
        } else {
            cell(cells, "pair")
        };
        let of = [cell(cells, "kind"), cell(cells, "buffer")];
        let case = match Reading::kind_by_word(&of[0]).or(by_names) {
            Some(orbit) => {
                let targets = if missing("pair") {
                    reading
                        .target(orbit, &cell(cells, "first"))
                        .zip(reading.target(orbit, &cell(cells, "second")))
                        .map(|(first, second)| [first, second])
                } else {
                    reading.pair(orbit, &cell(cells, "pair"))
                };
                let buffer = if of[1].is_empty() {
                    Some(reading.buffer_of(orbit)?)
                } else {
                    reading.target(orbit, &of[1])
                };
                buffer
                    .zip(targets)
                    .and_then(|(buffer, [first, second])| CycleCase::new(orbit, buffer, first, second))
            }
            // A row that names nothing needs no kind.
            None if named.is_empty() => None,
            None => return Err(SheetError::KindUnknown),
        };
        let column = at("algorithm").map_or(0, |at| at as u64 + 1);
        // Cells beyond the head are kept as well.
        let beyond = cells.iter().skip(head.len()).cloned();
        let more =
            further.iter().map(|&at| cells.get(at).cloned().unwrap_or_default()).chain(beyond).collect();
        let template = Row {
            line: *line,
            column,
            named,
            of: if case.is_some() { Default::default() } else { of },
            case,
            algorithm: String::new(),
            notes: cell(cells, "notes"),
            origin: Origin::Sheet,
            more,
        };
        rows.alternatives(&cell(cells, "algorithm"), &template)?;
    }
    let more = further.iter().map(|&at| head[at].clone()).collect();
    Ok(Sheet::laid_out(Layout::List, more, rows.done()))
}

/// A grid, if the cells along both sides are targets.
fn grid(lines: &[Line], above: &[Line], reading: &Reading<'_>) -> Result<Option<Sheet>, SheetError> {
    let (top_line, head) = &lines[0];
    let corner = head[0].trim();
    let left = || lines[1..].iter().filter_map(|(_, cells)| cells.first()).map(String::as_str);
    let sides = || head[1..].iter().map(String::as_str).chain(left());
    let by_corner = Reading::kind_by_word(corner);
    let kind =
        reading.kind.or(by_corner).or_else(|| reading.kind_by_names(sides().chain(std::iter::once(corner))));
    let is_target = |orbit: Orbit, cell: &str| reading.target(orbit, cell).is_some();
    let all_targets = |orbit: Orbit| {
        let filled: Vec<&str> = sides().filter(|cell| !cell.trim().is_empty()).collect();
        let targets = filled.iter().filter(|cell| is_target(orbit, cell)).count();
        let both =
            head[1..].iter().any(|cell| is_target(orbit, cell)) && left().any(|cell| is_target(orbit, cell));
        both && filled.len() > 2 && targets * 10 >= filled.len() * 8
    };
    if !all_targets(kind.unwrap_or(Orbit::Corner)) {
        return Ok(None);
    }
    let orbit = kind.ok_or(SheetError::KindUnknown)?;
    let by_corner_buffer = corner
        .split(|sign: char| !sign.is_alphanumeric())
        .find_map(|word| orbit.sticker(&word.to_uppercase()))
        .filter(|_| reading.buffer.is_none());
    let buffer = match by_corner_buffer {
        Some(buffer) => buffer,
        None => reading.buffer_of(orbit)?,
    };
    // What the corner says beside kind or buffer is kept like a line above.
    let corner_says_more =
        !corner.is_empty() && by_corner.is_none() && orbit.sticker(&corner.to_uppercase()).is_none();
    let asides: Vec<Row> = above
        .iter()
        .map(|(line, cells)| aside(*line, cells))
        .chain(corner_says_more.then(|| aside(*top_line, &head[..1])))
        .collect();
    let make = |rows_first: bool| {
        let mut rows = Rows::default();
        asides.iter().try_for_each(|row| rows.push(row.clone()))?;
        for (line, cells) in &lines[1..] {
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
                    of: Default::default(),
                    case: targets.and_then(|(first, second)| CycleCase::new(orbit, buffer, first, second)),
                    algorithm: String::new(),
                    notes: String::new(),
                    origin: Origin::Sheet,
                    more: Vec::new(),
                };
                rows.alternatives(text, &template)?;
            }
        }
        Ok::<_, SheetError>(Sheet::laid_out(Layout::Grid { rows_first }, Vec::new(), rows.done()))
    };
    // Which side comes first is told by what the algorithms do.
    let (by_rows, by_columns) = (make(true)?, make(false)?);
    let better = by_columns.check().right() > by_rows.check().right();
    Ok(Some(if better { by_columns } else { by_rows }))
}
