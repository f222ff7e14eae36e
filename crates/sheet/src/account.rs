//! The account of a sheet: how many of its cells are what, and where.

use super::{CycleCase, Report, Row, Sheet, Verdict};
use cube::{is_prime, plain_sign};
use std::collections::HashMap;

/// How the rows of a sheet are counted. Rows are told by their numbers from 0.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Account {
    /// Rows that belong to a case or have an algorithm.
    pub cells: usize,
    /// Lines of text that belong to no case.
    pub asides: usize,
    /// Cells that are right.
    pub right: usize,
    /// Cells without an algorithm.
    pub empty: usize,
    /// Cells whose algorithm does something else.
    pub wrong: Vec<usize>,
    /// Cells whose algorithm or case cannot be read.
    pub unread: Vec<usize>,
    /// Cells that say the same as one before: that one, and they.
    pub twice: Vec<[usize; 2]>,
    /// Cells that do something else though their case has a right algorithm: that one, and they.
    pub contradictions: Vec<[usize; 2]>,
}

/// The moves of a text, however they are spaced and whatever its primes are.
fn squeezed(text: &str) -> String {
    let signs = text.chars().map(plain_sign).filter(|sign| !sign.is_whitespace());
    signs.map(|sign| if is_prime(sign) { '\'' } else { sign }).collect()
}

impl Verdict {
    /// Its name in files.
    pub const fn name(&self) -> &'static str {
        match self {
            Self::Right => "right",
            Self::Empty => "empty",
            Self::OtherCase(_) => "other-case",
            Self::Inverse => "inverse",
            Self::WithoutBuffer(_) => "without-buffer",
            Self::OtherKind(..) => "other-kind",
            Self::LeavesTurned(_) => "leaves-turned",
            Self::NotAThreeCycle { .. } => "not-a-three-cycle",
            Self::DoesNothing => "does-nothing",
            Self::Unreadable(_) => "unreadable",
            Self::TooLong(_) => "too-long",
            Self::NoCase => "no-case",
        }
    }
}

impl Sheet {
    /// Counts the rows by what was found out about them.
    ///
    /// ```
    /// use blind::Conventions;
    /// // Invented.
    /// let text = "kind,buffer,pair,algorithm\ncorner,UFR,UBR RDF,\"[R' D' R, U]\"\ncorner,UFR,UBR RDF,\"[R’D’R,U]\"\ncorner,UFR,UBR RDF,R U\n";
    /// let conventions = Conventions::default();
    /// let sheet = formats::sheet::read(text, &formats::sheet::Reading::new(&conventions)).unwrap();
    /// let account = sheet.account(&sheet.check());
    /// assert_eq!((account.cells, account.right, account.twice, account.contradictions), (3, 2, vec![[0, 1]], vec![[0, 2]]));
    /// ```
    pub fn account(&self, report: &Report) -> Account {
        let mut account = Account::default();
        let mut said: HashMap<(CycleCase, String), usize> = HashMap::new();
        let mut right: HashMap<CycleCase, usize> = HashMap::new();
        let rows = || self.rows().iter().zip(&report.verdicts).enumerate();
        for (number, (row, verdict)) in rows() {
            if row.case.is_none() && row.algorithm.is_empty() {
                account.asides += usize::from(!is_blank(row));
                continue;
            }
            account.cells += 1;
            match verdict {
                Verdict::Right => {
                    account.right += 1;
                    if let Some(case) = row.case {
                        right.entry(case).or_insert(number);
                    }
                }
                Verdict::Empty => account.empty += 1,
                Verdict::Unreadable(_) | Verdict::TooLong(_) | Verdict::NoCase => account.unread.push(number),
                Verdict::OtherCase(_)
                | Verdict::Inverse
                | Verdict::WithoutBuffer(_)
                | Verdict::OtherKind(..)
                | Verdict::LeavesTurned(_)
                | Verdict::NotAThreeCycle { .. }
                | Verdict::DoesNothing => account.wrong.push(number),
            }
            let Some(case) = row.case.filter(|_| *verdict != Verdict::Empty) else { continue };
            match said.entry((case, squeezed(&row.algorithm))) {
                std::collections::hash_map::Entry::Occupied(before) => {
                    account.twice.push([*before.get(), number]);
                }
                std::collections::hash_map::Entry::Vacant(place) => {
                    place.insert(number);
                }
            }
        }
        let contradicted = |&number: &usize| {
            let case = self.rows()[number].case?;
            Some([*right.get(&case)?, number])
        };
        account.contradictions = account.wrong.iter().filter_map(contradicted).collect();
        account
    }
}

/// Whether a row says nothing at all.
fn is_blank(row: &Row) -> bool {
    row.named.is_empty() && row.notes.is_empty()
}
