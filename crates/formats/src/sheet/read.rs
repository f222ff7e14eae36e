//! Reading sheets as people have them.

use super::columns::{COLUMNS, by_content, by_head, is_list};
use super::table::{Line, MOST_ABOVE, Table};
use super::{grid, list, listed, salvage};
use crate::document::{DocumentError, within};
use blind::{Conventions, kind_name, kind_named};
use cube::{Orbit, OrbitMap, Sticker};
use sheet::{Row, SIZE, Sheet};
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
    /// A grid of which some cells are right when the first target stands at the left, and as many when it stands at the top.
    #[error(
        "it cannot be told which side of the grid has the first target: {right} cells are right either way"
    )]
    OrderUnknown {
        /// How many are right.
        right: usize,
    },
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
    /// Whether the first target of a grid stands at the left of a row, where the algorithms do not tell.
    pub rows_first: Option<bool>,
}

/// What is to be said of how a sheet was read.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Remark {
    /// There is no line of column names; the columns were told by what is in them.
    NoHead,
    /// The kind of piece is told by what the algorithms do.
    KindByAlgorithms(Orbit),
    /// The sheet names another buffer than was asked for; the one for which more algorithms are right is taken.
    OtherBuffer {
        /// The kind.
        orbit: Orbit,
        /// What the sheet names.
        found: Sticker,
        /// What was asked for.
        asked: Sticker,
        /// What is taken.
        taken: Sticker,
    },
    /// A row names two different cases, as a pair and by its targets; the targets are taken.
    TwoCases {
        /// The line, from 1.
        line: u64,
        /// The pair.
        pair: String,
        /// The targets.
        targets: String,
    },
}

/// A sheet as it was read, and what is to be said of that.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct TakenIn {
    /// The sheet.
    pub sheet: Sheet,
    /// What is to be said.
    pub remarks: Vec<Remark>,
}

impl<'a> Reading<'a> {
    /// As the sheet itself says, with the letters of the conventions.
    pub const fn new(conventions: &'a Conventions) -> Self {
        Self { conventions, kind: None, buffer: None, rows_first: None }
    }

    pub(super) fn target(&self, orbit: Orbit, text: &str) -> Option<Sticker> {
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
    pub(super) fn pair(&self, orbit: Orbit, text: &str) -> Option<[Sticker; 2]> {
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

    pub(super) fn buffer_of(&self, orbit: Orbit) -> Result<Sticker, SheetError> {
        match &self.buffer {
            None => Ok(self.conventions.kind(orbit).buffer),
            Some(word) => {
                self.target(orbit, word).ok_or_else(|| SheetError::NoBuffer { word: word.clone(), orbit })
            }
        }
    }

    /// The kind by a word such as `corners`, in English or German.
    pub(super) fn kind_by_word(word: &str) -> Option<Orbit> {
        let word = word.trim().to_lowercase();
        let named = |word: &str| kind_named(word);
        named(&word).or_else(|| named(word.trim_end_matches('s'))).or(match word.as_str() {
            "ecke" | "ecken" => Some(Orbit::Corner),
            "kante" | "kanten" => Some(Orbit::Midge),
            _ => None,
        })
    }

    /// The kind that names such as UFR or UF are of, by majority; letters alone do not tell.
    pub(super) fn kind_by_names<'t>(&self, names: impl Iterator<Item = &'t str>) -> Option<Orbit> {
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

/// A line that belongs to no case, such as a title, or a cell of a grid that names nothing.
pub(super) fn aside(line: u64, column: u64, cells: &[String]) -> Row {
    let texts: Vec<&str> = cells.iter().map(|cell| cell.trim()).filter(|cell| !cell.is_empty()).collect();
    Row { line, column, named: texts.join(" "), ..Row::default() }
}

/// Reads a sheet from CSV, semicolons or tabs: a list with named columns in any order or without names, or a grid with letters or
/// sticker names along both sides, with lines of text above, between and below.
///
/// Nothing is judged yet and nothing is dropped: cells that cannot be read are kept as they are, see [`Sheet::check`](sheet::Sheet::check).
///
/// # Errors
/// [`SheetError`] when the text as a whole is neither.
pub fn read(text: &str, reading: &Reading<'_>) -> Result<Sheet, SheetError> {
    take_in(text, reading).map(|taken| taken.sheet)
}

/// As [`read`], with what is to be said of how the text was understood.
///
/// # Errors
/// As [`read`].
///
/// ```
/// use blind::Conventions;
/// use formats::sheet::{Reading, Remark, take_in};
/// // Invented, without a line of column names.
/// let conventions = Conventions::default();
/// let mut reading = Reading::new(&conventions);
/// reading.buffer = Some("UFR".to_owned());
/// let taken = take_in("1;UBR RDF;[R' D' R, U]\n2;RDF UBR;[U, R' D' R]\n", &reading).unwrap();
/// assert_eq!((taken.sheet.check().right(), taken.remarks), (2, vec![Remark::NoHead]));
/// ```
pub fn take_in(text: &str, reading: &Reading<'_>) -> Result<TakenIn, SheetError> {
    within(text, MOST_BYTES)?;
    // Lines are counted alike whatever ends them.
    let text = &text.replace("\r\n", "\n").replace('\r', "\n");
    if let Some(kept) = list::read(text) {
        return kept.map(|sheet| TakenIn { sheet, remarks: Vec::new() });
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
fn table(table: &Table, reading: &Reading<'_>) -> Result<TakenIn, SheetError> {
    let heads = || 0..table.lines.len().min(MOST_ABOVE + 1);
    let list = heads().find(|&head| is_list(&by_head(table.below(head).0)));
    let told = with_title(reading, table, list.unwrap_or(0));
    let (mut reading, mut remarks) = (told, Vec::new());
    // Letters are the same for every kind; what the algorithms do is not.
    if let (None, Some(orbit)) = (reading.kind, salvage::kind_by_algorithms(&table.lines)) {
        let names = table.lines.iter().flat_map(|(_, cells)| cells).map(String::as_str);
        let names = names.filter(|cell| cell.chars().count() > 2 && salvage::names_only(cell));
        let by_names = reading.kind_by_names(names);
        if by_names.is_none() && !kind_is_written(&table.lines) {
            reading.kind = Some(orbit);
            remarks.push(Remark::KindByAlgorithms(orbit));
        }
    }
    if let Some(head) = list {
        let (below, above) = table.below(head);
        let head = &below[0].1;
        let lines = listed::Lines { head, above, below: &below[1..], columns: &by_head(below) };
        return listed::read(&lines, &reading, remarks);
    }
    let columns = by_head(&table.lines);
    let known: Vec<&str> = COLUMNS.iter().map(|(name, _)| *name).collect();
    let (_, first) = &table.lines[0];
    let meant = first.iter().find_map(|cell| {
        let found = blind::nearest(cell.trim(), &known)?;
        Some((cell.trim().to_owned(), COLUMNS.iter().find(|(name, _)| *name == found)?.0))
    });
    // A number may be one of a column or of a row.
    let is_named = columns
        .iter()
        .zip(first)
        .any(|(column, cell)| column.is_some() && cell.contains(char::is_alphabetic));
    let is_head = meant.is_some() && !first.iter().any(|cell| salvage::is_algorithm(cell));
    if !is_named && !is_head {
        for above in heads() {
            let (below, above) = table.below(above);
            if let Some(columns) = by_content(below, &reading) {
                remarks.push(Remark::NoHead);
                let lines = listed::Lines { head: &[], above, below, columns: &columns };
                return listed::read(&lines, &reading, remarks);
            }
        }
    }
    for head in heads() {
        let (below, above) = table.below(head);
        if let Some(taken) = grid::read(below, above, &reading, &remarks)? {
            return Ok(taken);
        }
    }
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
    Err(SheetError::NoHeader { found: first.clone(), meant })
}

/// The reading with the kind that a title names, where it is not known otherwise.
fn with_title<'a>(reading: &Reading<'a>, table: &Table, head: usize) -> Reading<'a> {
    let mut told = reading.clone();
    let (_, above) = table.below(head);
    // A line with one cell that has anything in it, before the table begins.
    let title = |(_, cells): &&Line| cells.iter().filter(|cell| !cell.trim().is_empty()).count() == 1;
    let titles = if above.is_empty() { &table.lines[..table.lines.len().min(MOST_ABOVE)] } else { above };
    let words = titles.iter().take_while(title).flat_map(|(_, cells)| cells).flat_map(|cell| {
        cell.split(|sign: char| !sign.is_alphabetic()).filter(|word| !word.is_empty()).collect::<Vec<_>>()
    });
    let mut kinds: Vec<Orbit> = words.filter_map(Reading::kind_by_word).collect();
    kinds.dedup();
    if let (None, [orbit]) = (told.kind, &kinds[..]) {
        told.kind = Some(*orbit);
    }
    told
}

/// Whether a cell of a column for it, or the corner of a grid, names the kind.
fn kind_is_written(lines: &[Line]) -> bool {
    lines.iter().flat_map(|(_, cells)| cells).any(|cell| Reading::kind_by_word(cell).is_some())
}
