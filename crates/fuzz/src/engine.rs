//! The boundary between a page and the engine.

use serde_json::Value;
use wasm::Engine;

/// What stands for a longer piece of a request, so that a change of a byte seldom breaks its form. Documents have the handle `h` and the
/// revision 1.
const SHORT: [(&str, &str); 3] = [
    ("$source", r#"{"puzzle":$name,"conventions":$name,"sheet":null}"#),
    ("$subject", r#"{"conventions":$name,"kind":"corner","buffer":""}"#),
    ("$name", r#"{"handle":"h","revision":1}"#),
];

/// The longest algorithm that a search of a target looks for: enough for every step of the search, and done in milliseconds.
const LONGEST: u64 = 4;

/// Lines of requests: `put KIND TEXT` tells a document (handle `h`, revision 1; `\n` in it is a line break), `METHOD JSON` asks.
pub(crate) fn requests(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    let mut engine = Engine::default();
    let mut searched = false;
    for line in text.lines().take(12) {
        let Some((word, rest)) = line.split_once(' ') else { continue };
        if word == "put" {
            let Some((kind, content)) = rest.split_once(' ') else { continue };
            engine.put(kind, "h", 1, &content.replace("\\n", "\n"));
            continue;
        }
        let request =
            SHORT.iter().fold(rest.to_owned(), |request, (short, long)| request.replace(short, long));
        let asked = if searches(word) {
            // One search an input: others read the same as it does.
            if searched {
                continue;
            }
            searched = true;
            affordable(&request, text)
        } else {
            request
        };
        match engine.call(word, "de", &asked, &mut |_| {}) {
            Ok(view) => assert!(serde_json::from_str::<Value>(&view).is_ok(), "{line}"),
            Err(failure) => assert!(!failure.sentence.is_empty(), "{line}"),
        }
    }
}

/// Whether a method searches.
fn searches(method: &str) -> bool {
    ["find", "lesson", "why", "conditional", "random", "case"].contains(&method)
}

/// The request with its work bounded: short algorithms, two slips, an exercise, and no 4x4 to be solved, whose tables take longer than all
/// else. What is no JSON stays as it is.
fn affordable(request: &str, text: &str) -> String {
    let Ok(mut asked) = serde_json::from_str::<Value>(request) else { return request.to_owned() };
    let Some(fields) = asked.as_object_mut() else { return request.to_owned() };
    let solves_4x4 = text.contains("\"size\":4");
    let bounds = [("longest", LONGEST), ("exercises", u64::from(!solves_4x4))];
    for (name, most) in bounds {
        if let Some(field) = fields.get_mut(name)
            && field.as_u64().is_some_and(|number| number > most)
        {
            *field = most.into();
        }
    }
    if let Some(deep) = fields.get_mut("deep") {
        *deep = false.into();
    }
    if let Some(size) = fields.get_mut("size")
        && size.as_u64() == Some(4)
    {
        *size = 3.into();
    }
    asked.to_string()
}
