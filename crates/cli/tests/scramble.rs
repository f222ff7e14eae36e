//! `hoodwink scramble`, as it is used.

mod common;

use common::{hoodwink, json, refused};
use predicates::str::contains;
use serde_json::Value;
use std::collections::HashSet;
use std::fs;

fn lines(arguments: &[&str]) -> Vec<String> {
    let output = hoodwink().args(arguments).assert().success();
    let text = String::from_utf8(output.get_output().stdout.clone()).unwrap();
    text.lines().map(str::to_owned).collect()
}

#[test]
fn the_same_seed_gives_the_same_scrambles() {
    for puzzle in ["2", "3", "4", "5", "6", "7"] {
        let make = || lines(&["scramble", "--puzzle", puzzle, "--seed", "7", "--count", "3", "--blind"]);
        let first = make();
        assert_eq!(first.len(), 3);
        assert_eq!(first, make());
        assert_eq!(first.iter().collect::<HashSet<_>>().len(), 3);
    }
    assert_ne!(lines(&["scramble"]), lines(&["scramble"]), "without a seed each is another");
}

#[test]
fn turns_are_as_many_as_usual_and_the_state_of_the_4x4_is_drawn() {
    // Common practice, no source: 60, 80 and 100 turns.
    for (puzzle, turns) in [("5", 60), ("6", 80), ("7", 100)] {
        let all = lines(&["scramble", "--puzzle", puzzle, "--seed", "1"]);
        assert_eq!(all[0].split_whitespace().count(), turns);
    }
    let made = json(&["scramble", "--puzzle", "4", "--seed", "1", "--json"]);
    assert_eq!(made["random_state"], true);
    // Nothing is said where nobody waits at a terminal.
    hoodwink().args(["scramble", "--puzzle", "4"]).assert().success().stderr("");
}

#[test]
fn what_is_made_meets_the_condition_when_it_is_traced() {
    let condition = "corner.breaks = 1 and corner.twists = 0 and edge.flips = 0";
    for extra in [&["--blind"][..], &[]] {
        let mut arguments = vec!["scramble", "--where", condition, "--count", "10", "--seed", "4", "--json"];
        arguments.extend_from_slice(extra);
        for line in lines(&arguments) {
            let made: Value = serde_json::from_str(&line).unwrap();
            let traced = json(&["trace", "--json", made["scramble"].as_str().unwrap()]);
            for (part, memo) in
                traced["parts"].as_array().unwrap().iter().zip(made["memo"].as_array().unwrap())
            {
                assert_eq!(part["letters"], memo["letters"]);
                assert_eq!(part["turned"].as_array().unwrap().len(), 0);
                let breaks = part["cycles"]
                    .as_array()
                    .unwrap()
                    .iter()
                    .filter(|cycle| cycle["holds_buffer"] == false)
                    .count();
                assert!(part["kind"] == "edge" || breaks == 1);
            }
        }
    }
}

#[test]
fn conditions_go_by_the_conventions() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("mine.toml");
    fs::write(&file, "holding = { up = \"yellow\", front = \"blue\" }\n").unwrap();
    let mine = file.to_str().unwrap();
    for line in lines(&["scramble", "--conventions", mine, "--where", "edge.pair(CG)", "--count", "5"]) {
        let traced = json(&["trace", "--conventions", mine, "--json", &line]);
        let edges = traced["parts"].as_array().unwrap().iter().find(|part| part["kind"] == "edge").unwrap();
        let letters = edges["letters"].as_str().unwrap().as_bytes();
        assert!(letters.chunks(2).any(|pair| pair == b"CG"), "{line}");
    }
}

#[test]
fn how_rare_is_exact() {
    let object =
        json(&["scramble", "--how-rare", "--json", "--puzzle", "2", "--where", "corner.targets = 0"]);
    // Of the 3,674,160 states only the solved one has nothing to memorise.
    assert_eq!(object["matching"], "1");
    assert_eq!(object["total"], "3674160");
    let object =
        json(&["scramble", "--how-rare", "--json", "--puzzle", "2", "--blind", "--where", "letters = 0"]);
    assert_eq!(object["total"], "88179840");
    hoodwink()
        .args(["scramble", "--how-rare", "--where", "parity = odd"])
        .assert()
        .success()
        .stdout("21,626,001,637,244,928,000 of 43,252,003,274,489,856,000 states: 1 in 2.0\n");
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("mine.toml");
    fs::write(&file, "breaks = { corner = \"fewest\" }\n").unwrap();
    let mine = file.to_str().unwrap();
    let arguments = ["scramble", "--conventions", mine, "-p", "2", "--how-rare", "--where", "corner.has(B)"];
    hoodwink().args(arguments).assert().success().stdout(contains("cannot be counted"));
}

#[test]
fn lessons_are_listed_and_made() {
    hoodwink().args(["scramble", "--lessons"]).assert().success().stdout(contains("One twisted corner"));
    let object: Vec<Value> = lines(&["scramble", "--lessons", "--json", "-p", "2", "--language", "de"])
        .iter()
        .map(|line| serde_json::from_str(line).unwrap())
        .collect();
    assert!(object.iter().all(|lesson| lesson["name"] != "flipped-edges"));
    for lesson in object {
        let name = lesson["name"].as_str().unwrap();
        assert_eq!(lines(&["scramble", "--lesson", name, "-p", "2", "-n", "2"]).len(), 2);
        assert!(!lesson["title"].as_str().unwrap().starts_with("lesson-"), "{name} has a German title");
    }
}

#[test]
fn a_sheet_has_pictures_and_answers() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("sheet.html");
    let path = file.to_str().unwrap();
    let arguments = ["scramble", "--lesson", "first-break", "-n", "3", "--seed", "5"];
    hoodwink().args(arguments).args(["--sheet", path]).assert().success().stdout("");
    let page = fs::read_to_string(&file).unwrap();
    for line in lines(&arguments) {
        assert!(page.contains(&line.replace('\'', "&#39;")) || page.contains(&line), "{line}");
    }
    assert!(page.matches("<svg").count() >= 6 && page.contains("Answers") && page.contains("--seed 5"));
    assert!(page.contains("The first cycle break"));
    refused(&["scramble", "-n", "201", "--sheet", path], "at most 200");
    hoodwink().args(["scramble", "-p", "6", "--sheet", path]).assert().success();
}

#[test]
fn conditions_on_the_4x4() {
    // Source: OEIS A075152 for all states; half of all orders of 24 wings are even.
    hoodwink()
        .args(["scramble", "--how-rare", "-p", "4", "--where", "wing.parity = even"])
        .assert()
        .success()
        .stdout(
            "3,700,598,420,782,450,934,937,046,987,249,287,168,000,000,000 of \
             7,401,196,841,564,901,869,874,093,974,498,574,336,000,000,000 states: 1 in 2.0\n",
        );
    let made = json(&["scramble", "-p", "4", "--seed", "3", "--json", "--where", "wing.breaks = 1"]);
    assert!(made["scramble"].as_str().unwrap().contains('w'));
    let tried = json(&[
        "scramble",
        "-p",
        "2",
        "--hold",
        "best",
        "--how-rare",
        "--json",
        "--seed",
        "3",
        "--where",
        "letters <= 6",
    ]);
    assert!(tried["matching"].is_null() && tried["total"] == "3674160");
    assert!(tried["estimate"]["share"].as_f64() > Some(0.2));
    let best =
        json(&["scramble", "-p", "2", "--hold", "best", "--json", "--seed", "3", "--where", "letters <= 3"]);
    let letters: usize =
        best["memo"].as_array().unwrap().iter().map(|part| part["letters"].as_str().unwrap().len()).sum();
    assert!(letters <= 3);
}

#[test]
fn bad_input_is_met_with_a_sentence() {
    refused(&["scramble", "--count", "0"], "a whole number is needed, 1 or more");
    refused(&["scramble", "--where", "corner.braeks = 1"], "Column 8");
    refused(&["scramble", "--where", "corner.braeks = 1"], "Did you mean breaks?");
    refused(&["scramble", "-p", "2", "--where", "edge.flips = 1"], "A 2x2 has no edges.");
    refused(&["scramble", "-p", "5", "--where", "parity = odd"], "not for a 5x5");
    refused(&["scramble", "--hold", "best"], "--hold best is for puzzles without fixed centres");
    refused(&["scramble", "--where", "corner.targets = 3 and edge.targets = 4"], "both odd or both even");
    let alone = "corner.buffer = solved and corner.twists = 1 and corner.breaks = 0";
    refused(&["scramble", "--where", alone], "add up to whole turns");
    refused(&["scramble", "-p", "2", "--where", "corner.solved = 0"], "--blind");
    refused(&["scramble", "--where", "corner.breaks = 9"], "corner.breaks goes from 0 to 3");
    refused(&["scramble", "--where", "edge.has(B)"], "buffer's own piece");
    refused(&["scramble", "--lesson", "paritty"], "Did you mean parity?");
    refused(&["scramble", "-p", "2", "--lesson", "flipped-edges"], "does not exist for a 2x2");
    refused(&["scramble", "-p", "8"], "is no puzzle here");
}

#[test]
fn who_reads_only_the_first_of_a_million_waits_for_no_more() {
    use std::io::{BufRead, BufReader};
    use std::process::{Command, Stdio};
    let mut child = Command::new(assert_cmd::cargo::cargo_bin("hoodwink"))
        .args(["scramble", "--count", "1000000", "--seed", "1", "--where", "corner.twists = 1"])
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let mut output = BufReader::new(child.stdout.take().unwrap());
    let mut line = String::new();
    output.read_line(&mut line).unwrap();
    assert!(line.split_whitespace().count() > 10);
    drop(output);
    assert!(child.wait().unwrap().success());
}
