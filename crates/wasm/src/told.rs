//! The documents that a page told, as far as they are kept.

use std::rc::Rc;

use voice::Voice;

use crate::Failure;
use crate::document::{DocumentKind, DocumentName};
use crate::kept::Kept;

/// A document as it was told.
#[derive(Debug, PartialEq, Eq)]
pub(crate) struct Document {
    /// Another one for each document that was told, so that nothing made from one is ever taken for another's.
    pub edition: u64,
    /// What is in it; none when it was longer than is read.
    text: Option<String>,
}

impl Document {
    /// What is in it, if it could be read.
    pub fn content(&self) -> Option<&str> {
        self.text.as_deref()
    }

    /// What is in it, or that it is too long to be read.
    pub fn text(&self, voice: &Voice, kind: DocumentKind) -> Result<&str, Failure> {
        self.text.as_deref().ok_or_else(|| {
            let most = kind.most_bytes() >> 10;
            let blanks = [("kind", kind.name().into()), ("most", most.into())];
            Failure::new(voice.say("put-too-long", &blanks))
        })
    }
}

/// The documents that were told.
pub(crate) struct Documents {
    told: u64,
    conventions: Kept<DocumentName, Rc<Document>>,
    sheets: Kept<DocumentName, Rc<Document>>,
    puzzles: Kept<DocumentName, Rc<Document>>,
}

impl Default for Documents {
    fn default() -> Self {
        // The last changes of each, so that who goes back and forth is answered at once.
        Self { told: 0, conventions: Kept::new(8), sheets: Kept::new(4), puzzles: Kept::new(8) }
    }
}

impl Documents {
    fn of(&mut self, kind: DocumentKind) -> &mut Kept<DocumentName, Rc<Document>> {
        match kind {
            DocumentKind::Conventions => &mut self.conventions,
            DocumentKind::Sheet => &mut self.sheets,
            DocumentKind::Puzzle => &mut self.puzzles,
        }
    }

    /// Takes a document in. The same told again stays what it was.
    pub fn put(&mut self, kind: DocumentKind, name: DocumentName, text: &str) {
        let text = (text.len() <= kind.most_bytes()).then(|| text.to_owned());
        if self.of(kind).get(&name).is_some_and(|known| known.text == text) {
            return;
        }
        self.told += 1;
        let edition = self.told;
        self.of(kind).put(name, Rc::new(Document { edition, text }));
    }

    /// The document of a name, if it is kept.
    pub fn get(&mut self, kind: DocumentKind, name: &DocumentName) -> Option<Rc<Document>> {
        self.of(kind).get(name)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn name(revision: u32) -> DocumentName {
        DocumentName { handle: "own".to_owned(), revision }
    }

    #[test]
    fn a_document_is_found_by_kind_handle_and_revision() {
        let mut documents = Documents::default();
        documents.put(DocumentKind::Sheet, name(1), "a sheet");
        let found = |documents: &mut Documents, kind, of: &DocumentName| {
            documents.get(kind, of).and_then(|document| document.text.clone())
        };
        assert_eq!(found(&mut documents, DocumentKind::Sheet, &name(1)).as_deref(), Some("a sheet"));
        assert_eq!(found(&mut documents, DocumentKind::Sheet, &name(2)), None);
        assert_eq!(found(&mut documents, DocumentKind::Puzzle, &name(1)), None);
        let other = DocumentName { handle: "another".to_owned(), revision: 1 };
        assert_eq!(found(&mut documents, DocumentKind::Sheet, &other), None);
    }

    #[test]
    fn what_is_told_again_is_the_same_and_what_differs_is_not() {
        let mut documents = Documents::default();
        let edition = |documents: &mut Documents, text: &str| {
            documents.put(DocumentKind::Puzzle, name(1), text);
            documents.get(DocumentKind::Puzzle, &name(1)).map(|document| document.edition)
        };
        let first = edition(&mut documents, "a");
        assert_eq!(edition(&mut documents, "a"), first);
        assert_ne!(edition(&mut documents, "b"), first);
    }

    #[test]
    fn what_is_too_long_is_known_to_be() {
        let mut documents = Documents::default();
        let long = "#".repeat(DocumentKind::Conventions.most_bytes() + 1);
        documents.put(DocumentKind::Conventions, name(1), &long);
        let kept = documents.get(DocumentKind::Conventions, &name(1));
        assert_eq!(kept.map(|document| document.text.clone()), Some(None));
    }
}
