//! Sheets: tables of algorithms for three-cycles, as people have collected them for years, with mistakes in them.
//!
//! Every row and cell of a sheet is accounted for ([`Sheet::check`]); gaps are filled from what is there and by search
//! ([`Sheet::fill`]). How sheets are read and written is the business of the crate `formats`.
//!
//! ```
//! use blind::Conventions;
//! use blind::sheet::Verdict;
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

mod alternatives;
mod change;
mod check;
mod fill;
mod statistics;

pub use check::{Pattern, Report, Verdict, verdict_of};
pub use fill::{Filled, Known};
pub use statistics::{Slow, Statistics};

use crate::conventions::Conventions;
use cube::{Orbit, Size, Sticker};

/// What a three-cycle is asked for: buffer → first target → second target.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, PartialOrd, Ord)]
pub struct CycleCase {
    /// The kind of piece.
    pub orbit: Orbit,
    /// The buffer.
    pub buffer: Sticker,
    /// The first target.
    pub first: Sticker,
    /// The second target.
    pub second: Sticker,
}

impl CycleCase {
    /// A case; `None` where two of the stickers are on one piece.
    pub fn new(orbit: Orbit, buffer: Sticker, first: Sticker, second: Sticker) -> Option<Self> {
        let pieces = [buffer, first, second].map(|sticker| orbit.piece(sticker));
        let apart = pieces[0] != pieces[1] && pieces[0] != pieces[2] && pieces[1] != pieces[2];
        apart.then_some(Self { orbit, buffer, first, second })
    }

    /// All cases of a buffer: 21 · 18 = 378 of corners, 22 · 20 = 440 of edges.
    ///
    /// ```
    /// use blind::sheet::CycleCase;
    /// use cube::Orbit;
    /// let buffer = Orbit::Corner.sticker("UFR").unwrap();
    /// assert_eq!(CycleCase::all(Orbit::Corner, buffer).count(), 21 * 18);
    /// ```
    pub fn all(orbit: Orbit, buffer: Sticker) -> impl Iterator<Item = Self> {
        let apart = move |a: Sticker, b: Sticker| orbit.piece(a) != orbit.piece(b);
        Sticker::all().filter(move |&first| apart(first, buffer)).flat_map(move |first| {
            Sticker::all()
                .filter(move |&second| apart(second, buffer) && apart(second, first))
                .map(move |second| Self { orbit, buffer, first, second })
        })
    }

    /// The case that the same algorithm made backwards solves.
    #[must_use]
    pub const fn inverse(self) -> Self {
        Self { first: self.second, second: self.first, ..self }
    }
}

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
#[derive(Clone, PartialEq, Eq, Debug)]
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

/// The cube that sheets are for.
pub(crate) const SIZE: Size = Size::THREE;
