//! The door that a web worker opens: the only module that knows JavaScript.

use js_sys::Function;
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;

use crate::Engine;

/// One engine in one worker. A call runs until it is done; a page that no longer wants the answer ends the worker.
#[wasm_bindgen]
#[derive(Default)]
pub struct Worker {
    engine: Engine,
}

#[wasm_bindgen]
impl Worker {
    /// An engine with nothing computed yet.
    #[wasm_bindgen(constructor)]
    pub fn new() -> Worker {
        Worker::default()
    }

    /// Takes in the catalogue of a language, in one piece.
    pub fn teach(&mut self, language: &str, catalogue: &str) {
        self.engine.teach(language, catalogue);
    }

    /// Takes in a document: what it is (`conventions`, `sheet`, `puzzle`), what the page calls it, which state of it, and what is in
    /// it. Requests name it by handle and revision.
    pub fn put(&mut self, kind: &str, handle: &str, revision: u32, text: &str) {
        self.engine.put(kind, handle, revision, text);
    }

    /// Whether a request would have tables made that may have been kept.
    #[wasm_bindgen(js_name = lacksTables)]
    pub fn lacks_tables(&mut self, method: &str, arguments: &str) -> bool {
        self.engine.lacks_tables(method, arguments)
    }

    /// The tables that were made, to be kept.
    pub fn tables(&self) -> Option<Vec<u8>> {
        self.engine.tables()
    }

    /// Takes tables that were kept by this very module.
    pub fn restore(&mut self, bytes: &[u8]) {
        self.engine.restore(bytes);
    }

    /// Answers one request. `arguments` and the answer are JSON; `report` is called with JSON of a `Progress` as long
    /// work goes on.
    ///
    /// # Errors
    /// JSON of a `Failure`: a sentence for the person, and the place in what was typed.
    pub fn call(
        &mut self,
        method: &str,
        language: &str,
        arguments: &str,
        report: &Function,
    ) -> Result<String, JsValue> {
        self.engine
            .call(method, language, arguments, &mut |progress| {
                if let Ok(text) = serde_json::to_string(&progress) {
                    // A page that fails to show progress has no bearing on the work.
                    let _ = report.call1(&JsValue::NULL, &JsValue::from_str(&text));
                }
            })
            .map_err(|failure| JsValue::from_str(&failure.to_json()))
    }
}
