//! What the engine says when it is compiled for this machine, to be compared with what it says in a browser.
//!
//! `cargo run -p wasm --example answers -- COUNT SEED` draws so many requests of each method and writes them with their answers, a
//! line of JSON each: documents that are told, and requests (module, method, language, arguments) with view or failure.

#[path = "../tests/asked/mod.rs"]
mod asked;

use std::io::{BufWriter, Write, stdout};

use asked::{Pages, Said};
use serde_json::json;
use wasm::Engine;
use wasm::methods::{DEEP, FIRST, REST};

fn main() -> std::io::Result<()> {
    let mut numbers = std::env::args().skip(1).filter_map(|word| word.parse::<u64>().ok());
    let (count, seed) = (numbers.next().unwrap_or(10), numbers.next().unwrap_or(1));
    let mut out = BufWriter::new(stdout().lock());
    let mut pages = Pages::new(seed);
    let mut engine = Engine::default();
    let modules = [("first", FIRST), ("rest", REST), ("deep", DEEP)];
    let all = modules.into_iter().flat_map(|(module, names)| names.iter().map(move |&name| (module, name)));
    for (module, method) in all {
        for said in (0..count).flat_map(|_| pages.say(method)).collect::<Vec<_>>() {
            match said {
                Said::Put { kind, handle, revision, content } => {
                    engine.put(kind, handle, revision, &content);
                    let line =
                        json!({ "kind": kind, "handle": handle, "revision": revision, "content": content });
                    writeln!(out, "{line}")?;
                }
                Said::Asked { method, language, arguments } => {
                    let arguments = arguments.to_string();
                    // The answer is written as it came: reading it here could change the last digit of a number.
                    let answer = match engine.call(method, language, &arguments, &mut |_| {}) {
                        Ok(view) => format!(r#""view":{view},"failure":null"#),
                        Err(failure) => format!(r#""view":null,"failure":{}"#, failure.to_json()),
                    };
                    let asked = json!([module, method, language, arguments]);
                    writeln!(out, r#"{{"asked":{asked},{answer}}}"#)?;
                }
            }
        }
    }
    out.flush()
}
