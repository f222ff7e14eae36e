//! What the engine says when it is compiled for this machine, to be compared with what it says in a browser.
//!
//! `cargo run -p wasm --example answers -- COUNT SEED` draws so many requests of each method and writes them with their answers, a
//! line of JSON each: documents that are told, and requests with module, answer or failure.

#[path = "../tests/asked/mod.rs"]
mod asked;

use std::io::{BufWriter, Write, stdout};

use asked::{Pages, Said};
use serde_json::{Value, json};
use wasm::Engine;
use wasm::methods::{FIRST, REST};

fn main() -> std::io::Result<()> {
    let mut numbers = std::env::args().skip(1).filter_map(|word| word.parse::<u64>().ok());
    let (count, seed) = (numbers.next().unwrap_or(10), numbers.next().unwrap_or(1));
    let mut out = BufWriter::new(stdout().lock());
    let mut pages = Pages::new(seed);
    let mut engine = Engine::default();
    let all = FIRST.iter().map(|&name| ("first", name)).chain(REST.iter().map(|&name| ("rest", name)));
    for (module, method) in all {
        for said in (0..count).flat_map(|_| pages.say(method)).collect::<Vec<_>>() {
            let line = match said {
                Said::Put { kind, handle, revision, content } => {
                    engine.put(kind, handle, revision, &content);
                    json!({ "kind": kind, "handle": handle, "revision": revision, "content": content })
                }
                Said::Asked { method, language, arguments } => {
                    let arguments = arguments.to_string();
                    let answer = engine.call(method, language, &arguments, &mut |_| {});
                    let [view, failure] = match &answer {
                        Ok(view) => [serde_json::from_str(view)?, Value::Null],
                        Err(failure) => [Value::Null, serde_json::from_str(&failure.to_json())?],
                    };
                    json!({
                        "module": module, "method": method, "language": language, "arguments": arguments,
                        "view": view, "failure": failure
                    })
                }
            };
            writeln!(out, "{line}")?;
        }
    }
    out.flush()
}
