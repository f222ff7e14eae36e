//! `check` and `why`, as they are used.

mod common;

use common::{hoodwink, json, refused};
use predicates::str::contains;
use serde_json::Value;

const SCRAMBLE: &str = "D2 F' R2 B U2 L' D B2 R F U'";

/// All moves of our own plan, step by step.
fn moves() -> Vec<String> {
    let traced = json(&["trace", "--json", SCRAMBLE]);
    let steps = traced["solution"]["steps"].as_array().unwrap();
    steps
        .iter()
        .flat_map(|step| {
            ["setup", "swap", "undo", "moves"].map(|part| step[part].as_str().unwrap_or("").to_owned())
        })
        .flat_map(|part| part.split_whitespace().map(str::to_owned).collect::<Vec<_>>())
        .collect()
}

fn seen(after: &str) -> String {
    let applied = json(&["apply", "--json", after]);
    applied["facelets"].as_str().unwrap().to_owned()
}

#[test]
fn a_memo_is_checked_however_it_is_written() {
    let right = ["check", SCRAMBLE, "--corners", "wv-BD (bc) uh|c", "--edges", "OG RK FQ NE CI JS J"];
    hoodwink().args(right).assert().success().stdout(contains("The memo is right"));
    let wrong = ["check", SCRAMBLE, "--corners", "WVBDBCU", "--edges", "OGRKFQNECIJSJ"];
    hoodwink().args(wrong).assert().success().stdout(contains("After the last letter of the corners"));
    hoodwink().args(wrong).arg("--strict").assert().code(1);
    let object = json(&[wrong.as_slice(), &["--json"]].concat());
    assert_eq!(object["right"], false);
    assert_eq!(object["slips"][0]["kind"], "closed-early");
    assert_eq!(object["slips"][0]["pieces"], "corner");
    assert_eq!(object["slips"][0]["position"], 8);
    assert_eq!(object["slips"][0]["expected"], serde_json::json!(["H"]));
    let parity = json(&[right.as_slice(), &["--parity", "no", "--json"]].concat());
    assert_eq!(
        (&parity["right"], &parity["slips"][0]["kind"]),
        (&Value::from(false), &Value::from("parity-overlooked"))
    );
}

#[test]
fn moves_are_checked_against_the_plan() {
    let mut made = moves();
    hoodwink()
        .args(["check", SCRAMBLE, "--moves", &made.join(" ")])
        .assert()
        .success()
        .stdout(contains("carry the plan out"));
    let removed = made.remove(70);
    let object = json(&["check", SCRAMBLE, "--json", "--moves", &made.join(" ")]);
    assert_eq!(object["right"], false);
    assert_eq!(object["slips"][0]["kind"], "left-out");
    assert_eq!(object["slips"][0]["position"], 71);
    assert_eq!(object["slips"][0]["expected"], serde_json::json!([removed]));
}

#[test]
fn what_is_told_gives_what_was_seen() {
    let mut made = moves();
    made.remove(70);
    made.remove(20);
    let after = format!("{SCRAMBLE} {}", made.join(" "));
    let seen = seen(&after);
    let object = json(&["why", SCRAMBLE, "--seen", &seen, "--json", "--most", "20"]);
    let explanations = object["explanations"].as_array().unwrap();
    assert!(object["ambiguity"].as_u64().unwrap() >= 1);
    assert_eq!(explanations[0]["slips"].as_array().unwrap().len(), 2);
    for explanation in explanations {
        let part = |name: &str| explanation[name].as_str().unwrap().to_owned();
        let all = [part("scrambled"), part("rotated"), part("played")].join(" ");
        assert_eq!(self::seen(&all), seen, "{}", part("sentence"));
    }
    // From the stickers before the attempt instead of a scramble.
    let before = self::seen(SCRAMBLE);
    let object = json(&["why", "--facelets", &before, "--seen", &seen, "--json"]);
    let first = &object["explanations"][0];
    let part = |name: &str| first[name].as_str().unwrap().to_owned();
    assert_eq!(self::seen(&[part("scrambled"), part("rotated"), part("played")].join(" ")), seen);
}

#[test]
fn little_is_enough_to_ask_and_questions_help() {
    let object = json(&["why", SCRAMBLE, "--unsolved", "3 corners, 2 edges", "--json"]);
    assert!(object["explanations"].as_array().unwrap().len() > 1);
    let question = &object["questions"][0];
    let answer = format!("{}=yes", question["name"].as_str().unwrap());
    let after = json(&["why", SCRAMBLE, "--unsolved", "3 corners, 2 edges", "--answer", &answer, "--json"]);
    assert_ne!(object["explanations"][0]["weight"], after["explanations"][0]["weight"]);
    let said = |arguments: &[&str], sentence: &str| {
        hoodwink().args(["why", SCRAMBLE]).args(arguments).assert().success().stdout(contains(sentence));
    };
    // What turning cannot leave lacks a piece, unless it is said that it does not.
    let lacking = "turning never leaves just one; at least one more must be";
    said(&["--unsolved", "UF flipped; UFR>DBL>UBR"], lacking);
    said(&["--unsolved", "UF flipped"], "Is any other piece unsolved? UF cannot be the only unsolved edge");
    said(&["--unsolved", "UF>UR"], "at least two more corners or edges must be unsolved");
    said(&["--unsolved", "UF flipped; UFR>DBL>UBR; nothing else"], "one edge is flipped");
    said(&["--unsolved", "only UF flipped"], "Otherwise everything was done as planned.");
    said(&["--language", "de", "--unsolved", "nur UF gekippt"], "Sonst geschah alles wie geplant.");
    let german = ["--language", "de", "--unsolved", "weiß-grün gekippt"];
    said(&german, "Ist noch ein anderer Stein ungelöst?");
    // Whatever is told, either option takes it.
    let whole = json(&["why", SCRAMBLE, "--unsolved", "UF>UR>FR?", "--json"]);
    assert_eq!(
        json(&["why", SCRAMBLE, "--seen", "white-green, white-red, green-red in a cycle", "--json"]),
        whole
    );
    assert_eq!((whole["whole"].as_bool(), whole["missing"].as_str()), (Some(true), None));
    said(
        &["--unsolved", "only edges: UF>UR>FR"],
        "The corners were not looked at and are taken to be as planned.",
    );
    said(&["--seen", "U: wwwwwwwww F: ggggggggg R: rrrrrrrrr"], "as planned");
}

#[test]
fn a_wrong_memo_is_named_before_what_happened_besides() {
    let memo = json(&["trace", SCRAMBLE, "--json"])["parts"].clone();
    let letters = |kind: &str| {
        let all = memo.as_array().unwrap().iter().find(|part| part["kind"] == kind).unwrap();
        all["letters"].as_str().unwrap().to_owned()
    };
    let edges = letters("edge");
    let (begin, end) = edges.split_at(edges.len() - 2);
    let wrong = format!("{begin}{}", end.chars().rev().collect::<String>());
    let object = json(&["why", SCRAMBLE, "--edges", &wrong, "--unsolved", "UF>UR>FR", "--json"]);
    assert!(
        object["memo_fault"]
            .as_str()
            .unwrap()
            .starts_with("The memo itself does not solve the puzzle. Letter")
    );
    let object = json(&["why", SCRAMBLE, "--edges", &edges, "--unsolved", "UF>UR>FR", "--json"]);
    assert!(object["memo_fault"].is_null());
}

#[test]
fn bad_input_is_refused_with_a_sentence() {
    refused(&["check", SCRAMBLE, "--corners", "WV?"], "Corners, column 3: “?” is none of your letters");
    refused(&["check", SCRAMBLE, "--corners", "", "--edges", " "], "The memo is empty");
    refused(&["check", SCRAMBLE], "no memo to check");
    refused(&["check", "--puzzle", "2", "R U", "--edges", "A"], "A 2x2 has no edges.");
    refused(&["why", SCRAMBLE, "--unsolved", "UF floppy"], "is not understood after UF");
    refused(&["why", SCRAMBLE, "--unsolved", "UF", "--answer", "maybe"], "is no answer");
    let unlikely = ["why", SCRAMBLE, "--unsolved", "UF, UR", "--answer", "corner.55=yes"];
    refused(&unlikely, "There is no letter 55 of the corners");
    refused(&["why", SCRAMBLE, "--unsolved", "UF>UF"], "says that UF is right");
    refused(&["why", SCRAMBLE], "only edges: UF flipped");
    refused(&["why", SCRAMBLE, "--language", "de"], "weiß-grün und weiß-rot vertauscht");
    refused(&["why", SCRAMBLE, "--unsolved", "UF", "--corners", "E"], "buffer's own piece");
}
