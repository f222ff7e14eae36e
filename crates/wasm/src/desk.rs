//! What is kept between two requests: the documents that a page told, and what was made from them.

use std::rc::Rc;

use blind::{Conventions, Outfit, Solver};
use cube::Size;
use sheet::Sheet;
use voice::Voice;

use crate::Failure;
use crate::document::{DocumentKind, DocumentName, PuzzleContent};
use crate::kept::Kept;
use crate::names::size;
use crate::searches::Searches;
use crate::situation::{Situation, Source};
use crate::told::{Document, Documents};

/// The editions of a puzzle, conventions and a sheet: what a situation follows from.
type SituationKey = (u64, u64, Option<u64>);

/// The editions of conventions and of a sheet, and a size: what a solver is made from.
type SolverKey = (Size, u64, Option<u64>);

/// Conventions as they were read, and which edition they are of.
pub(crate) struct ReadConventions {
    pub edition: u64,
    pub conventions: Rc<Conventions>,
}

/// A sheet as it was read, and which edition it is of; none for no sheet at all, which is an empty one.
pub(crate) struct ReadSheet {
    pub edition: Option<u64>,
    pub sheet: Rc<Sheet>,
}

/// Everything that is kept.
pub(crate) struct Desk {
    pub documents: Documents,
    conventions: Kept<u64, Rc<Conventions>>,
    sheets: Kept<(u64, u64), Rc<Sheet>>,
    /// What stands for no sheet at all.
    no_sheet: Rc<Sheet>,
    solvers: Kept<SolverKey, Rc<Solver>>,
    situations: Kept<SituationKey, Rc<Situation>>,
    pub searches: Searches,
}

impl Default for Desk {
    fn default() -> Self {
        Self {
            documents: Documents::default(),
            conventions: Kept::new(8),
            sheets: Kept::new(4),
            no_sheet: Rc::new(Sheet::new(Vec::new())),
            // Every size under the conventions before and after a change; a solver of three-cycles takes up to a megabyte.
            solvers: Kept::new(12),
            situations: Kept::new(8),
            searches: Searches::default(),
        }
    }
}

/// Whether documents may be files as people write them. Only one module can read these; it writes all that is kept as JSON. What it cannot
/// read stays a file, and is told where conventions are opened.
const READS_FILES: bool = cfg!(feature = "rest");

impl Desk {
    /// A document that was told.
    pub fn document(&mut self, kind: DocumentKind, name: &DocumentName) -> Result<Rc<Document>, Failure> {
        self.documents.get(kind, name).ok_or_else(|| Failure::missing(kind, name))
    }

    /// Conventions that were told.
    pub fn conventions(&mut self, voice: &Voice, name: &DocumentName) -> Result<ReadConventions, Failure> {
        let document = self.document(DocumentKind::Conventions, name)?;
        let edition = document.edition;
        let text = document.text(voice, DocumentKind::Conventions)?;
        let conventions = self.conventions.or_make(edition, || {
            let read = if READS_FILES {
                formats::conventions::read_either(text)
            } else {
                let kept = formats::conventions::read_kept(text);
                kept.ok_or_else(|| Failure::new(voice.word("conventions-unread")))?
            };
            read.map(Rc::new).map_err(|error| Failure::new(voice.conventions_error(&error)))
        })?;
        Ok(ReadConventions { edition, conventions })
    }

    /// A sheet that was told, or an empty one.
    pub fn sheet(
        &mut self,
        voice: &Voice,
        read: &ReadConventions,
        name: Option<&DocumentName>,
    ) -> Result<ReadSheet, Failure> {
        let Some(name) = name else {
            return Ok(ReadSheet { edition: None, sheet: Rc::clone(&self.no_sheet) });
        };
        let document = self.document(DocumentKind::Sheet, name)?;
        let text = document.text(voice, DocumentKind::Sheet)?;
        let sheet = self.sheets.or_make((read.edition, document.edition), || {
            let read = if READS_FILES {
                formats::sheet::kept(text)
            } else {
                let kept = formats::sheet::kept_now(text);
                kept.ok_or_else(|| Failure::new(voice.word("sheet-unread")))?
            };
            read.map(Rc::new).map_err(|error| Failure::new(voice.sheet_error(&error)))
        })?;
        Ok(ReadSheet { edition: Some(document.edition), sheet })
    }

    /// The solver of a size under conventions and with a sheet. Set-ups and missing algorithms are searched for when it is made,
    /// which takes a while, so it is kept.
    pub fn solver(&mut self, size: Size, read: &ReadConventions, sheet: Option<&ReadSheet>) -> Rc<Solver> {
        let key = (size, read.edition, sheet.and_then(|sheet| sheet.edition));
        if let Some(known) = self.solvers.get(&key) {
            return known;
        }
        let algorithms = sheet.map(|sheet| sheet.sheet.algorithms()).unwrap_or_default();
        let outfit = Outfit { algorithms: &algorithms, ..Outfit::default() };
        let solver = Rc::new(Solver::with(size, (*read.conventions).clone(), &outfit));
        self.solvers.put(key, Rc::clone(&solver));
        solver
    }

    /// Everything that follows from a source.
    pub fn situation(&mut self, voice: &Voice, source: &Source) -> Result<Rc<Situation>, Failure> {
        let puzzle = self.document(DocumentKind::Puzzle, &source.puzzle)?;
        let read = self.conventions(voice, &source.conventions)?;
        let sheet = self.sheet(voice, &read, source.sheet.as_ref())?;
        let key = (puzzle.edition, read.edition, sheet.edition);
        if let Some(known) = self.situations.get(&key) {
            return Ok(known);
        }
        let content: PuzzleContent = serde_json::from_str(puzzle.text(voice, DocumentKind::Puzzle)?)
            .map_err(|error| Failure::new(format!("The puzzle is not in the expected form: {error}.")))?;
        let size = size(voice, content.size)?;
        let solver = self.solver(size, &read, Some(&sheet));
        let situation = Rc::new(Situation::new(voice, content, solver)?);
        self.situations.put(key, Rc::clone(&situation));
        Ok(situation)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use voice::Language;

    fn name(handle: &str, revision: u32) -> DocumentName {
        DocumentName { handle: handle.to_owned(), revision }
    }

    /// Tells a puzzle and gives what follows from it under conventions of that revision.
    fn situation(desk: &mut Desk, scramble: &str, conventions: u32) -> Rc<Situation> {
        let voice = Voice::new(Language::English);
        let puzzle = name(scramble, 1);
        let content =
            format!(r#"{{ "size": 3, "scramble": "{scramble}", "facelets": "", "bestHold": false }}"#);
        desk.documents.put(DocumentKind::Puzzle, puzzle.clone(), &content);
        let source = Source { puzzle, conventions: name("own", conventions), sheet: None };
        desk.situation(&voice, &source).expect("a puzzle")
    }

    #[test]
    fn a_solver_is_made_once_for_conventions_and_a_situation_once_for_a_puzzle() {
        let mut desk = Desk::default();
        for (revision, text) in [(1, ""), (2, "[memo]\npairs = false\n")] {
            desk.documents.put(DocumentKind::Conventions, name("own", revision), text);
        }
        let first = situation(&mut desk, "R U", 1);
        let second = situation(&mut desk, "F2", 1);
        assert!(Rc::ptr_eq(&first.solver, &second.solver));
        let other = situation(&mut desk, "R U", 2);
        assert!(!Rc::ptr_eq(&first.solver, &other.solver));
        // Whoever goes back finds everything as it was.
        assert!(Rc::ptr_eq(&first, &situation(&mut desk, "R U", 1)));
        assert!(Rc::ptr_eq(&other, &situation(&mut desk, "R U", 2)));
        // What was not asked for lately goes, the solver stays.
        for turns in ["U", "L", "F", "R", "B", "D", "U2", "L2", "F2", "R2", "B2", "D2"] {
            situation(&mut desk, turns, 1);
        }
        let again = situation(&mut desk, "R U", 1);
        assert!(!Rc::ptr_eq(&first, &again) && Rc::ptr_eq(&first.solver, &again.solver));
    }
}
