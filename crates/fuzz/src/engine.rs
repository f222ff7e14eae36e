//! The boundary between a page and the engine.

use wasm::Engine;

/// What is searched for as long as it takes: what they read is read by others too.
const SEARCHES: [&str; 6] = ["find", "lesson", "why", "conditional", "random", "case"];

/// Lines of requests: `put KIND TEXT` tells a document (handle `h`, revision 1; `\n` in it is a line break), `METHOD JSON` asks.
pub(crate) fn requests(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    let mut engine = Engine::default();
    for line in text.lines().take(12) {
        let Some((word, rest)) = line.split_once(' ') else { continue };
        if word == "put" {
            let Some((kind, content)) = rest.split_once(' ') else { continue };
            engine.put(kind, "h", 1, &content.replace("\\n", "\n"));
        } else if !SEARCHES.contains(&word) {
            match engine.call(word, "de", rest, &mut |_| {}) {
                Ok(view) => assert!(serde_json::from_str::<serde_json::Value>(&view).is_ok(), "{line}"),
                Err(failure) => assert!(!failure.sentence.is_empty(), "{line}"),
            }
        }
    }
}
