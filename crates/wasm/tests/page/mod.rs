//! A page as the tests play it: it tells documents, names them in requests, and reads what comes back.

use serde_json::{Value, json};
use wasm::Engine;

/// An engine, and what it was told, by kind and text: the same document has the same name.
#[derive(Default)]
pub struct Page {
    pub engine: Engine,
    told: Vec<[String; 2]>,
}

impl Page {
    /// Tells a document and gives its name.
    pub fn tell(&mut self, kind: &str, text: &str) -> Value {
        let at = self.told.iter().position(|told| told == &[kind, text]).unwrap_or_else(|| {
            self.told.push([kind.to_owned(), text.to_owned()]);
            self.told.len() - 1
        });
        let revision = at as u32 + 1;
        self.engine.put(kind, kind, revision, text);
        json!({ "handle": kind, "revision": revision })
    }

    /// Tells a puzzle under conventions, without a sheet.
    pub fn source(&mut self, puzzle: &Value, conventions: &str) -> Value {
        let puzzle = self.tell("puzzle", &puzzle.to_string());
        let conventions = self.tell("conventions", conventions);
        json!({ "puzzle": puzzle, "conventions": conventions, "sheet": null })
    }

    /// Asks; the sentence where there is no view.
    pub fn ask(&mut self, method: &str, arguments: &Value) -> Result<Value, String> {
        self.engine
            .call(method, "en", &arguments.to_string(), &mut |_| {})
            .map(|view| serde_json::from_str(&view).unwrap())
            .map_err(|failure| failure.sentence)
    }
}
