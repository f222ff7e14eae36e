//! Conventions files: whatever is written in one, the answer is conventions or a mistake with its place.

use blind::Conventions;
use proptest::prelude::*;

/// A conventions file with some lines replaced, removed or exchanged, as slips of a keyboard leave it.
fn damaged() -> impl Strategy<Value = String> {
    let lines: Vec<String> = Conventions::default().to_toml().lines().map(str::to_owned).collect();
    let count = lines.len();
    proptest::collection::vec((0..count, 0..count, "[a-zA-Z0-9=\"\\[\\]{}#, .']{0,12}", 0..4u8), 1..4)
        .prop_map(move |slips| {
            let mut lines = lines.clone();
            for (at, other, text, slip) in slips {
                match slip {
                    0 => lines[at] = text,
                    1 => lines[at].clear(),
                    2 => lines.swap(at, other),
                    _ => {
                        let keep = lines[at].chars().count() / 2;
                        lines[at] = lines[at].chars().take(keep).collect();
                        lines[at].push_str(&text);
                    }
                }
            }
            lines.join("\n")
        })
}

proptest! {
    #[test]
    fn a_damaged_file_is_read_or_refused_with_a_place(text in damaged()) {
        match Conventions::read(&text) {
            Ok(read) => prop_assert_eq!(Conventions::read(&read.to_toml()).unwrap(), read),
            Err(error) => {
                let line = text.lines().nth(error.line - 1).unwrap_or("");
                prop_assert!(error.line <= text.lines().count() + 1);
                prop_assert!(error.column <= line.chars().count() + 1, "{error}");
            }
        }
    }

    #[test]
    fn any_text_is_met(text in any::<String>()) {
        let _ = Conventions::read(&text);
    }
}

#[test]
fn what_is_written_reads_back() {
    let text = r##"
[colours]
B = { name = "pink", shade = "#ff70a0" }
[holding]
up = "yellow"
front = "pink"
[letters.corner]
U = "abcd"
L = "efgh"
F = "ijkl"
R = "mnop"
B = "qrst"
D = "uvwx"
[buffer]
corner = "DFR"
edge = "LU"
[breaks]
corner = ["UFL", "UBR"]
edge = "fewest"
[memo]
pairs = false
order = ["corner", "edge"]
execution = ["edge", "corner"]
"##;
    let read = Conventions::read(text).unwrap();
    assert_eq!(Conventions::read(&read.to_toml()).unwrap(), read);
    assert_eq!(read.colour_held(cube::Face::F).name, "pink");
}
