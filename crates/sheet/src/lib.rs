//! Sheets: tables of algorithms for three-cycles, as people have collected them for years, with mistakes in them.
//!
//! Every row and cell of a sheet is accounted for ([`Sheet::check`]); gaps are filled from what is there and by search
//! ([`Sheet::fill`]). How sheets are read and written is the business of the crate `formats`.
//!
//! ```
//! use blind::Conventions;
//! use sheet::Verdict;
//! use formats::sheet::{Reading, read};
//! // An invented sheet. The letters are those of the default scheme; its first row is right, its second is the inverse.
//! let text = "first;second;algorithm\nUBR;RDF;[R' D' R, U]\nUBR;FRD;[U, R' D' R]\n";
//! let conventions = Conventions::default();
//! let mut reading = Reading::new(&conventions);
//! reading.buffer = Some("UFR".to_owned());
//! let sheet = read(text, &reading).unwrap();
//! let report = sheet.check();
//! assert_eq!(report.verdicts[0], Verdict::Right);
//! assert!(matches!(report.verdicts[1], Verdict::OtherCase(_)));
//! ```

mod account;
mod alternatives;
mod change;
mod check;
mod fill;
mod statistics;

pub use account::Account;
pub use check::{MOST_TURNS, Pattern, Report, Verdict, kind_cycled, verdict_of};
pub use fill::{Filled, Known};
pub use statistics::{Slow, Statistics};

use blind::Conventions;
pub use blind::CycleCase;

use blind::CycleAlgorithm;
use cube::{Algorithm, Orbit, Size, Sticker};

/// Where an algorithm comes from.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, PartialOrd, Ord, Default)]
pub enum Origin {
    /// It stood in the sheet.
    #[default]
    Sheet,
    /// One of the sheet made backwards.
    Inverse,
    /// One of the sheet in a mirror.
    Mirror,
    /// One of the sheet for a cube held another way.
    Rotation,
    /// Found by search.
    Search,
}

impl Origin {
    /// All origins.
    pub const ALL: [Self; 5] = [Self::Sheet, Self::Inverse, Self::Mirror, Self::Rotation, Self::Search];

    /// Its name in files.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Sheet => "sheet",
            Self::Inverse => "inverse",
            Self::Mirror => "mirror",
            Self::Rotation => "rotation",
            Self::Search => "search",
        }
    }

    /// The origin with a name.
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|origin| origin.name() == name)
    }
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

/// A row of a list, or a cell of a grid.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Row {
    /// The line in the source, from 1; 0 for what was filled in.
    pub line: u64,
    /// The column in the source, from 1.
    pub column: u64,
    /// What it says its case is, as it is written.
    pub named: String,
    /// What it says its kind and its buffer are, as they are written; empty where there is a case.
    pub of: [String; 2],
    /// The case; `None` where it cannot be read or is none.
    pub case: Option<CycleCase>,
    /// The algorithm, as it is written; may be empty.
    pub algorithm: String,
    /// Notes.
    pub notes: String,
    /// Where the algorithm comes from.
    pub origin: Origin,
    /// What stands in further columns.
    pub more: Vec<String>,
}

/// A sheet of algorithms.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Sheet {
    /// How it was written.
    pub layout: Layout,
    /// What its further columns are called.
    pub more: Vec<String>,
    rows: Vec<Row>,
}

impl Sheet {
    /// A sheet of rows, as a list.
    pub const fn new(rows: Vec<Row>) -> Self {
        Self::laid_out(Layout::List, Vec::new(), rows)
    }

    /// A sheet as it was written, with the names of its further columns.
    pub const fn laid_out(layout: Layout, more: Vec<String>, rows: Vec<Row>) -> Self {
        Self { layout, more, rows }
    }

    /// Its rows, in the order of the source.
    pub fn rows(&self) -> &[Row] {
        &self.rows
    }

    /// Its algorithms that can be read and have no more than [`MOST_TURNS`] turns, with their cases. Whether they are right is for whoever uses them to find out.
    pub fn algorithms(&self) -> Vec<CycleAlgorithm> {
        let read = |row: &Row| {
            let case = row.case?;
            let algorithm = Algorithm::parse(&row.algorithm, size_of(case.orbit)).ok()?;
            (algorithm.len() <= MOST_TURNS).then_some(())?;
            Some(CycleAlgorithm { case, algorithm })
        };
        self.rows.iter().filter_map(read).collect()
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

    /// The kinds and buffers that it has cases of, in the order in which they come up.
    pub fn buffers(&self) -> Vec<(Orbit, Sticker)> {
        let mut found = Vec::new();
        for case in self.rows.iter().filter_map(|row| row.case) {
            if !found.contains(&(case.orbit, case.buffer)) {
                found.push((case.orbit, case.buffer));
            }
        }
        found
    }
}

/// The cube that sheets of corners and edges are for.
pub const SIZE: Size = Size::THREE;

/// The cube that sheets of a kind are for: of corners and edges the 3x3, of others the smallest that has such pieces. Algorithms of
/// single layers do the same on bigger ones.
///
/// ```
/// use cube::{Orbit, Size};
/// let four = Size::new(4).unwrap();
/// assert_eq!(sheet::size_of(Orbit::Corner), Size::THREE);
/// assert_eq!(sheet::size_of(Orbit::of(four)[1]), four);
/// ```
pub fn size_of(orbit: Orbit) -> Size {
    let has = |size: &Size| *size >= SIZE && Orbit::of(*size).contains(&orbit);
    Size::ALL.into_iter().find(has).unwrap_or(SIZE)
}

/// The kinds of piece that sheets without a name of their kind are taken for.
pub fn kinds() -> &'static [Orbit] {
    Orbit::of(SIZE)
}
