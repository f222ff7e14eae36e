//! What is kept between two requests: the documents that a page told, and what was made from them.

use std::rc::Rc;

use blind::sheet::{Reading, Sheet};
use blind::{Conventions, Outfit, Solver};
use cube::Size;
use draw::Palette;
use voice::Voice;

use crate::Failure;
use crate::document::{Document, DocumentKind, DocumentName, Documents};
use crate::kept::Kept;
use crate::searches::Searches;
use crate::situation::{Situation, SituationKey};

/// The editions of conventions and of a sheet, and a size: what a solver is made from.
type SolverKey = (Size, u64, Option<u64>);

/// Conventions as they were read, and which edition they are of.
#[derive(Clone)]
pub(crate) struct Settled {
    pub edition: u64,
    pub conventions: Rc<Conventions>,
}

/// A sheet as it was read, and which edition it is of; none for no sheet at all, which is an empty one.
#[derive(Clone)]
pub(crate) struct Collected {
    pub edition: Option<u64>,
    pub sheet: Rc<Sheet>,
}

/// Everything that is kept.
pub(crate) struct Desk {
    pub documents: Documents,
    conventions: Kept<u64, Rc<Conventions>>,
    sheets: Kept<(u64, u64), Rc<Sheet>>,
    solvers: Kept<SolverKey, Rc<Solver>>,
    pub situations: Kept<SituationKey, Rc<Situation>>,
    pub searches: Searches,
}

impl Default for Desk {
    fn default() -> Self {
        Self {
            documents: Documents::default(),
            conventions: Kept::new(8),
            sheets: Kept::new(4),
            // Every size under the conventions before and after a change; a solver of three-cycles takes up to a megabyte.
            solvers: Kept::new(12),
            situations: Kept::new(8),
            searches: Searches::default(),
        }
    }
}

impl Desk {
    /// A document that was told.
    pub fn document(&mut self, kind: DocumentKind, name: &DocumentName) -> Result<Rc<Document>, Failure> {
        self.documents.get(kind, name).ok_or_else(|| Failure::missing(kind, name))
    }

    /// Conventions that were told.
    pub fn conventions(&mut self, voice: &Voice, name: &DocumentName) -> Result<Settled, Failure> {
        let document = self.document(DocumentKind::Conventions, name)?;
        let edition = document.edition;
        let text = text(voice, DocumentKind::Conventions, &document)?;
        let conventions = self.conventions.or_make(edition, || {
            formats::conventions::read_either(text)
                .map(Rc::new)
                .map_err(|error| Failure::new(voice.conventions_error(&error)))
        })?;
        Ok(Settled { edition, conventions })
    }

    /// A sheet that was told, or an empty one.
    pub fn sheet(
        &mut self,
        voice: &Voice,
        settled: &Settled,
        name: Option<&DocumentName>,
    ) -> Result<Collected, Failure> {
        let Some(name) = name else {
            return Ok(Collected { edition: None, sheet: Rc::new(Sheet::new(Vec::new())) });
        };
        let document = self.document(DocumentKind::Sheet, name)?;
        let text = text(voice, DocumentKind::Sheet, &document)?;
        let sheet = self.sheets.or_make((settled.edition, document.edition), || {
            Sheet::read(text, &Reading::new(&settled.conventions))
                .map(Rc::new)
                .map_err(|error| Failure::new(voice.sheet_error(&error)))
        })?;
        Ok(Collected { edition: Some(document.edition), sheet })
    }

    /// The solver of a size under conventions and with a sheet. Set-ups and missing algorithms are searched for when it is made,
    /// which takes a while, so it is kept.
    pub fn solver(&mut self, size: Size, settled: &Settled, collected: Option<&Collected>) -> Rc<Solver> {
        let key = (size, settled.edition, collected.and_then(|collected| collected.edition));
        if let Some(known) = self.solvers.get(&key) {
            return known;
        }
        let algorithms = collected.map(|collected| collected.sheet.algorithms()).unwrap_or_default();
        let outfit = Outfit { algorithms: &algorithms, ..Outfit::default() };
        let solver = Rc::new(Solver::with(size, (*settled.conventions).clone(), &outfit));
        self.solvers.put(key, Rc::clone(&solver));
        solver
    }
}

/// What is in a document, or that it is too long to be read.
pub(crate) fn text<'a>(
    voice: &Voice,
    kind: DocumentKind,
    document: &'a Document,
) -> Result<&'a str, Failure> {
    document.text.as_deref().ok_or_else(|| {
        let most = kind.most_bytes() >> 10;
        Failure::new(voice.say("put-too-long", &[("kind", kind.name().into()), ("most", most.into())]))
    })
}

/// The colours of the conventions, named in the language of the page.
pub(crate) fn palette(voice: &Voice, conventions: &Conventions) -> Palette {
    Palette::of(conventions, |colour| voice.colour(colour))
}
