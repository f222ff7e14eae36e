//! Changing sheets: putting two together, taking an algorithm in, taking one out.

use super::{CycleCase, Layout, Origin, Row, SIZE, Sheet, size_of};
use cube::{Algorithm, Orbit, Sticker, Turn};
use std::collections::HashSet;

impl Row {
    /// A row for an algorithm that stands in no source.
    pub(super) fn made(case: CycleCase, algorithm: String, origin: Origin) -> Self {
        Self {
            line: 0,
            column: 0,
            named: format!("{} {}", case.orbit.name(case.first), case.orbit.name(case.second)),
            of: Default::default(),
            case: Some(case),
            algorithm,
            notes: String::new(),
            origin,
            more: Vec::new(),
        }
    }

    /// The turns of its algorithm; none where it has none or it cannot be read.
    fn turns(&self) -> Option<Vec<Turn>> {
        let size = self.case.map_or(SIZE, |case| size_of(case.orbit));
        Algorithm::parse(&self.algorithm, size).ok().map(|read| read.flatten())
    }
}

impl Sheet {
    /// A sheet and another after it, as a list. A row of the other that says the same as one that is there (case, algorithm,
    /// notes and further columns) is left out, so that reading a source twice changes nothing.
    ///
    /// ```
    /// use blind::Conventions;
    /// let conventions = Conventions::default();
    /// let mut reading = formats::sheet::Reading::new(&conventions);
    /// reading.buffer = Some("UFR".to_owned());
    /// let read = |text| formats::sheet::read(text, &reading).unwrap();
    /// let one = read("pair,algorithm,source\nUBR RDF,\"[R' D' R, U]\",a friend\n");
    /// let both = one.joined(&read("pair,algorithm,learned\nRDF UBR,\"[U, R' D' R]\",yes\n"));
    /// assert_eq!((both.rows().len(), both.more.join(" ")), (2, "source learned".to_owned()));
    /// assert_eq!(both.joined(&one), both);
    /// ```
    #[must_use]
    pub fn joined(&self, other: &Self) -> Self {
        let mut joined = self.clone();
        joined.layout = Layout::List;
        // The second column of a name goes with the second, and so on.
        let mut places: Vec<usize> = Vec::new();
        for name in &other.more {
            let free = (0..joined.more.len()).find(|at| joined.more[*at] == *name && !places.contains(at));
            places.push(free.unwrap_or_else(|| {
                joined.more.push(name.clone());
                joined.more.len() - 1
            }));
        }
        let mut there: HashSet<Said> = self.rows.iter().map(said).collect();
        for row in &other.rows {
            let mut more = vec![String::new(); joined.more.len()];
            for (number, cell) in row.more.iter().enumerate() {
                match places.get(number) {
                    Some(&place) => more[place].clone_from(cell),
                    // Beyond the head, where columns have no names.
                    None => more.push(cell.clone()),
                }
            }
            let row = Row { more, ..row.clone() };
            if there.insert(said(&row)) {
                joined.rows.push(row);
            }
        }
        joined
    }

    /// The sheet with one more algorithm, unless the case has one of the same turns. What it does is not judged here.
    #[must_use]
    pub fn with(&self, case: CycleCase, algorithm: &str, origin: Origin) -> Self {
        let row = Row::made(case, algorithm.to_owned(), origin);
        let (turns, mut sheet) = (row.turns(), self.clone());
        let same =
            |known: &Row| known.algorithm == row.algorithm || (turns.is_some() && known.turns() == turns);
        if !self.rows.iter().any(|known| known.case == Some(case) && same(known)) {
            sheet.rows.push(row);
        }
        sheet
    }

    /// The sheet without an algorithm of a case, however it is written.
    #[must_use]
    pub fn without(&self, case: CycleCase, algorithm: &str) -> Self {
        let unwanted = Row::made(case, algorithm.to_owned(), Origin::Sheet);
        let turns = unwanted.turns();
        let mut sheet = self.clone();
        sheet.rows.retain(|row| {
            let same = row.algorithm == algorithm || (turns.is_some() && row.turns() == turns);
            row.case != Some(case) || !same
        });
        sheet
    }

    /// The sheet without a row whose case could not be read, by what it says of the case and its algorithm.
    #[must_use]
    pub fn without_unread(&self, named: &str, algorithm: &str) -> Self {
        let mut sheet = self.clone();
        sheet.rows.retain(|row| row.case.is_some() || row.named != named || row.algorithm != algorithm);
        sheet
    }

    /// The sheet without anything of a buffer.
    #[must_use]
    pub fn without_buffer(&self, orbit: Orbit, buffer: Sticker) -> Self {
        let mut sheet = self.clone();
        sheet.rows.retain(|row| row.case.is_none_or(|case| (case.orbit, case.buffer) != (orbit, buffer)));
        sheet
    }
}

/// What a row carries, wherever it stood.
type Said = (Option<CycleCase>, Vec<String>);

fn said(row: &Row) -> Said {
    let mut texts = vec![row.algorithm.clone(), row.notes.clone()];
    if row.case.is_none() {
        texts.push(row.named.clone());
        texts.extend(row.of.iter().cloned());
    }
    texts.extend(row.more.iter().cloned());
    while texts.last().is_some_and(String::is_empty) {
        texts.pop();
    }
    (row.case, texts)
}
