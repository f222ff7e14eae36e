//! Tables that a page keeps, since making them anew takes seconds.

use serde_json::Value;

use crate::document::{DocumentKind, DocumentName, PuzzleContent};
use crate::methods::Engine;

/// Methods that solve a puzzle of whatever size is asked for.
const SOLVING: [&str; 3] = ["conditional", "lesson", "random"];

impl Engine {
    /// Whether a request would have tables made that may have been kept.
    pub fn lacks_tables(&mut self, method: &str, arguments: &str) -> bool {
        cfg!(feature = "deep")
            && SOLVING.contains(&method)
            && !search::solve4::is_prepared()
            && self.size_asked(arguments) == Some(search::solve4::SIZE.layers())
    }

    /// The size that a request is about: its own, or that of the puzzle that it names.
    fn size_asked(&mut self, arguments: &str) -> Option<u8> {
        let arguments: Value = serde_json::from_str(arguments).ok()?;
        if let Some(size) = arguments.get("size") {
            return size.as_u64()?.try_into().ok();
        }
        let puzzle = arguments.get("source")?.get("puzzle")?;
        let name: DocumentName = serde_json::from_value(puzzle.clone()).ok()?;
        let document = self.desk.document(DocumentKind::Puzzle, &name).ok()?;
        let content: PuzzleContent = serde_json::from_str(document.content()?).ok()?;
        Some(content.size)
    }

    /// The tables that were made, to be kept; `None` where there are none.
    pub fn tables(&self) -> Option<Vec<u8>> {
        if cfg!(feature = "deep") { search::solve4::kept() } else { None }
    }

    /// Takes tables that were kept by this very module. Whatever else it is given it leaves, and makes its own when they are needed.
    pub fn restore(&mut self, bytes: &[u8]) {
        if cfg!(feature = "deep") {
            search::solve4::restore(bytes);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tables_are_lacking_until_a_4x4_was_solved() {
        let mut engine = Engine::default();
        engine.put("puzzle", "p", 1, r#"{"size":4,"scramble":"","facelets":"","bestHold":false}"#);
        let lesson = r#"{"source":{"puzzle":{"handle":"p","revision":1}}}"#;
        let four = r#"{"size":4,"seed":[0,1]}"#;
        assert!(engine.tables().is_none());
        assert!(engine.lacks_tables("random", four) && engine.lacks_tables("lesson", lesson));
        for (method, arguments) in [
            ("random", r#"{"size":3,"seed":[0,1]}"#),
            ("lesson", r#"{"source":{"puzzle":{"handle":"q","revision":1}}}"#),
            ("trace", four),
            ("random", "no"),
        ] {
            assert!(!engine.lacks_tables(method, arguments), "{method} {arguments}");
        }
        engine.restore(b"no tables");
        assert!(engine.lacks_tables("random", four));
        assert!(engine.call("random", "en", four, &mut |_| {}).is_ok());
        assert!(!engine.lacks_tables("random", four) && engine.tables().is_some());
    }
}
