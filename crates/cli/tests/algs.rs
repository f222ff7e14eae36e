//! `hoodwink algs` and `hoodwink compare`: results, exit codes, and a sentence for every mistake.
//!
//! The sheets and timings are invented.

mod common;

use common::{hoodwink, json, refused};
use predicates::prelude::PredicateBooleanExt;
use predicates::str::contains;
use serde_json::Value;
use std::fmt::Write as _;
use std::fs;
use std::path::PathBuf;
use tempfile::TempDir;

const SHEET: &str = "pair;algorithm;notes\nUBR RDF;[R' D' R, U];mine\nRDF UBR;[R' D' R, U];\nUBR FRD;;\n";

fn file(directory: &TempDir, name: &str, text: &str) -> PathBuf {
    let path = directory.path().join(name);
    fs::write(&path, text).unwrap();
    path
}

fn lines(arguments: &[&str]) -> Vec<Value> {
    let output = hoodwink().args(arguments).assert().success();
    let text = String::from_utf8(output.get_output().stdout.clone()).unwrap();
    text.lines().map(|line| serde_json::from_str(line).unwrap()).collect()
}

#[test]
fn all_cases_of_a_buffer_are_a_line_each() {
    let arguments = [
        "algs",
        "find",
        "--kind",
        "corner",
        "--buffer",
        "UFR",
        "--all",
        "--moves",
        "U,R,D",
        "--longest",
        "8",
        "--shortest",
        "--json",
    ];
    let found = lines(&arguments);
    assert_eq!(found.len(), 378);
    for line in &found {
        assert_eq!((&line["buffer"], &line["proven"]), (&"UFR".into(), &true.into()));
        let algorithms = line["algorithms"].as_array().unwrap();
        assert_eq!(algorithms.is_empty(), line["shortest"].is_null());
        for algorithm in algorithms {
            assert_eq!(
                algorithm.as_str().unwrap().split(' ').count() as u64,
                line["shortest"].as_u64().unwrap()
            );
        }
    }
    // Common practice, no source: eight turns, written as a commutator.
    let case = found.iter().find(|line| line["first"] == "UBR" && line["second"] == "RDF").unwrap();
    assert_eq!(case["shortest"], 8);
    assert!(case["written"].as_array().unwrap().contains(&"[R' D' R, U]".into()), "{case}");
}

#[test]
fn other_effects_are_found_too() {
    let flip = lines(&[
        "algs",
        "find",
        "--flip",
        "UF,UB",
        "--moves",
        "M,U",
        "--longest",
        "12",
        "--shortest",
        "--json",
        "-q",
    ]);
    assert_eq!((flip.len(), &flip[0]["effect"]), (1, &"flip".into()));
    assert!(!flip[0]["algorithms"].as_array().unwrap().is_empty());
    let exchange = lines(&[
        "algs",
        "find",
        "--exchange",
        "UFR,UBR,UF,UR",
        "--moves",
        "R,U,F",
        "--longest",
        "8",
        "--shortest",
        "--json",
        "-q",
    ]);
    assert_eq!(exchange[0]["effect"], "exchange");
    let by_ease = lines(&[
        "algs",
        "find",
        "UBR",
        "RDF",
        "-b",
        "UFR",
        "--moves",
        "U,R,D",
        "--longest",
        "8",
        "--by",
        "ease",
        "--count",
        "1",
        "--json",
        "-q",
    ]);
    assert_eq!(by_ease[0]["algorithms"].as_array().unwrap().len(), 1);
    // The shortest length is that of the case, not that of the one algorithm that is listed.
    let by_length = lines(&[
        "algs",
        "find",
        "UBR",
        "RDF",
        "-b",
        "UFR",
        "--moves",
        "U,R,D",
        "--longest",
        "8",
        "--shortest",
        "--json",
        "-q",
    ]);
    assert_eq!(by_ease[0]["shortest"], by_length[0]["shortest"]);
    assert!(by_ease[0]["easiest_proven"].as_u64().unwrap() <= 1);
}

#[test]
fn mistakes_in_a_search_are_met_with_a_sentence() {
    refused(&["algs", "find", "--kind", "corner"], "Say which case");
    refused(&["algs", "find", "UBR"], "should be two targets");
    refused(&["algs", "find", "UBR", "RUB", "-b", "UFR"], "are on one corner");
    refused(&["algs", "find", "UBR", "RDF", "--moves", "U,Q"], "is no block of turns");
    refused(&["algs", "find", "UBR", "RDF", "--moves", "R,x", "--metric", "half"], "counts nothing");
    refused(&["algs", "find", "UBR", "RDF", "--metric", "slise"], "Did you mean slice?");
    refused(&["algs", "find", "UBR", "RDF", "--memory", "lots"], "no amount of memory");
    refused(&["algs", "find", "UBR", "RDF", "--longest", "14", "--memory", "1M"], "1 MiB are allowed");
    refused(&["algs", "find", "--kind", "cornr", "--all"], "Did you mean corner?");
    refused(&["algs", "find", "--kind", "edge", "--all", "-p", "2"], "A 2x2 has no");
}

#[test]
fn a_sheet_is_checked_row_by_row() {
    let directory = TempDir::new().unwrap();
    let sheet = file(&directory, "corners.csv", SHEET);
    let sheet = sheet.to_str().unwrap();
    hoodwink()
        .args(["algs", "check", sheet, "--buffer", "UFR"])
        .assert()
        .code(1)
        .stdout(contains("line 3, column 2").and(contains("solves the inverse, BP (UBR RDF)")))
        .stdout(contains("3 cells: 1 right, 1 wrong, 1 empty, 0 not understood."));
    let output = hoodwink().args(["algs", "check", sheet, "--buffer", "UFR", "--json"]).assert().code(1);
    let object: Value = serde_json::from_slice(&output.get_output().stdout).unwrap();
    assert_eq!((&object["right"], &object["verdicts"][1]["verdict"]), (&1.into(), &"inverse".into()));
    refused(&["algs", "check", "no-such-file.csv"], "no-such-file.csv");
    let other = file(&directory, "other.csv", "hello,world\n");
    refused(&["algs", "check", other.to_str().unwrap()], "neither a list nor a grid");
}

#[test]
fn a_grid_to_print_has_every_row_the_refused_ones_marked_and_told() {
    let directory = TempDir::new().unwrap();
    // Right, its inverse, something else, what cannot be read, and no case at all. Invented.
    let rows =
        ["UBR;RDF;[R' D' R, U]", "UBR;RDF;[U, R' D' R]", "UBR;RDF;R U2", "UBL;RDF;[R U", "UBR;nowhere;L2 D"];
    let text = format!("first;second;algorithm\n{}\n", rows.join("\n"));
    let sheet = file(&directory, "corners.csv", &text);
    let sheet = sheet.to_str().unwrap();
    for (language, heading) in [("en", "Not right"), ("de", "Nicht richtig")] {
        for to in ["svg", "html"] {
            let call = [
                "--language",
                language,
                "algs",
                "export",
                sheet,
                "--buffer",
                "UFR",
                "--kind",
                "corner",
                "--to",
                to,
            ];
            let output = hoodwink().args(call).assert().success();
            let written = String::from_utf8(output.get_output().stdout.clone()).unwrap();
            let plain = written.replace("&#39;", "'").replace("&apos;", "'");
            for algorithm in ["[R' D' R, U]", "✗ [U, R' D' R]", "✗ R U2", "✗ [R U", "L2 D", heading] {
                assert!(plain.contains(algorithm), "{to} has no {algorithm}:\n{plain}");
            }
            assert!(!plain.contains("✗ [R' D' R, U]"), "{plain}");
        }
    }
}

#[test]
fn a_sheet_is_imported_filled_measured_and_exported() {
    let directory = TempDir::new().unwrap();
    let sheet = file(&directory, "corners.csv", SHEET);
    let sheet = sheet.to_str().unwrap();
    let place = |name: &str| directory.path().join(name).to_str().unwrap().to_owned();
    hoodwink().args(["algs", "import", sheet, "--buffer", "UFR"]).assert().code(1).stdout(
        contains("kind,buffer,first,second,letters,algorithm,notes,origin,as written").and(contains("mine")),
    );
    let whole = place("whole.csv");
    hoodwink()
        .args(["algs", "fill", sheet, "--buffer", "UFR", "--out", &whole])
        .assert()
        .success()
        .stderr(contains("Filled in 377 cases: 1 inverse"));
    let found = json(&["algs", "stats", &whole, "--json"]);
    assert_eq!((&found["cases"], &found["covered"]), (&378.into(), &378.into()));
    hoodwink().args(["algs", "stats", &whole]).assert().success().stdout(contains("378 of 378"));
    hoodwink()
        .args(["algs", "export", &whole, "--to", "markdown"])
        .assert()
        .success()
        .stdout(contains("| BP | UBR RDF |"));
    for (to, begins) in [("svg", "<?xml"), ("html", "<!DOCTYPE html>"), ("csv", "kind,")] {
        let out = place(to);
        hoodwink().args(["algs", "export", &whole, "--to", to, "--out", &out]).assert().success();
        assert!(fs::read_to_string(out).unwrap().starts_with(begins), "{to}");
    }
    // A method uses the sheet that the conventions name, found beside them.
    let conventions = file(
        &directory,
        "mine.toml",
        "[method]\ncorner = \"three-cycle\"\nedge = \"slice-swap\"\n[sheet]\ncorner = \"whole.csv\"\n\
         [parity]\nby = \"exchange\"\n[breaks]\ncorner = \"least\"\nedge = \"least\"\n",
    );
    let conventions = conventions.to_str().unwrap();
    let traced = json(&["--conventions", conventions, "trace", "--json", "D2 F' R2 B U2 L' D B2 R F U'"]);
    let steps = traced["solution"]["steps"].as_array().unwrap();
    assert!(steps.iter().any(|step| step["step"] == "pair" && step["found"] == false), "{steps:?}");
    hoodwink()
        .args(["--conventions", conventions, "trace", "D2 F' R2 B U2 L' D B2 R F U'"])
        .assert()
        .success()
        .stdout(contains("Estimated"));
}

#[test]
fn timings_are_fitted() {
    let directory = TempDir::new().unwrap();
    let words =
        ["R U R' U'", "R U2 R'", "L' U' L", "R D R'", "U R U'", "R U R' U R U2 R'", "R2 U R2", "L U L'"];
    let mut text = String::from("seconds;algorithm\n");
    for (number, word) in words.iter().cycle().take(64).enumerate() {
        let seconds = 0.3 + 0.12 * word.split(' ').count() as f64 + 0.01 * (number % 5) as f64;
        let _ = writeln!(text, "{seconds};{word}");
    }
    let timings = file(&directory, "timings.csv", &text);
    let costs = directory.path().join("costs.toml");
    let (timings, costs) = (timings.to_str().unwrap(), costs.to_str().unwrap());
    let fitted = json(&["algs", "fit", timings, "--out", costs, "--json"]);
    assert_eq!(fitted["timings"], 64);
    assert!(fitted["held_out"].as_f64().unwrap() < fitted["held_out_mean"].as_f64().unwrap());
    hoodwink().args(["algs", "fit", timings, "--ease", costs]).assert().success().stdout(contains("Error"));
    let bad = file(&directory, "bad.csv", "algorithm,seconds\nR U,fast\n");
    refused(&["algs", "fit", bad.to_str().unwrap()], "“fast” is no number of seconds");
    let few = file(&directory, "few.csv", "algorithm,seconds\nR U,0.5\n");
    refused(&["algs", "fit", few.to_str().unwrap()], "too few");
    let none = file(&directory, "none.csv", "what,when\nR U,0.5\n");
    refused(&["algs", "fit", none.to_str().unwrap()], "two columns, algorithm and seconds");
    let wrong = file(&directory, "wrong.toml", "[seconds]\nwrits = 1\n");
    refused(&["algs", "fit", timings, "--ease", wrong.to_str().unwrap()], "writs");
}

#[test]
fn methods_are_compared_on_the_same_states() {
    let directory = TempDir::new().unwrap();
    let svg = directory.path().join("times.svg");
    let arguments = [
        "compare",
        "one-swap",
        "three-cycle,least,exchange",
        "-n",
        "300",
        "--json",
        "--svg",
        svg.to_str().unwrap(),
    ];
    let compared = json(&arguments);
    let fewer = &compared["differences"][0];
    assert!(fewer["algorithms"]["high"].as_f64().unwrap() < 0.0, "{fewer}");
    assert!(fewer["seconds"]["low"].as_f64().unwrap() <= fewer["seconds"]["mean"].as_f64().unwrap());
    assert!(svg.exists() && directory.path().join("times-2.svg").exists());
    // The same seed gives the same outcome.
    assert_eq!(compared, json(&arguments));
    hoodwink()
        .args(["compare", "one-swap", "one-swap+slice-swap", "-n", "50"])
        .assert()
        .success()
        .stdout(contains("50 uniformly random states").and(contains("95 % confidence")));
    refused(&["compare", "one-swap"], "at least two methods");
    refused(&["compare", "one-swap", "thre-cycle"], "Did you mean three-cycle?");
    refused(&["compare", "one-swap", "slice-swap+one-swap"], "slice-swap");
}

/// Windows-1252: a typographic apostrophe is the byte 0x92, an umlaut 0xfc (the mapping that the encoding's registration with
/// IANA points to; from memory).
#[test]
fn a_sheet_in_the_letters_of_another_system_is_read() {
    let folder = tempfile::tempdir().unwrap();
    let sheet = folder.path().join("old.csv");
    fs::write(&sheet, b"pair;algorithm;notes\nUBR RDF;[R\x92 D\x92 R, U];f\xfcr morgen\n").unwrap();
    let file = sheet.to_str().unwrap();
    hoodwink()
        .args(["algs", "check", file, "-b", "UFR"])
        .assert()
        .success()
        .stdout(contains("1 cell: 1 right"));
    hoodwink().args(["algs", "import", file, "-b", "UFR"]).assert().success().stdout(contains("für morgen"));
}

#[test]
fn the_buffer_that_is_asked_for_counts() {
    let folder = TempDir::new().unwrap();
    let sheet = folder.path().join("sheet.csv");
    fs::write(&sheet, "kind,buffer,first,second,algorithm\ncorner,UFR,UBR,RDF,\"[R' D' R, U]\"\n").unwrap();
    let file = sheet.to_str().unwrap();
    let told = |arguments: &[&str], said: &str| {
        hoodwink().args(["algs", "stats", file]).args(arguments).assert().success().stdout(contains(said));
    };
    told(&[], "buffer UFR: 1 of 378");
    told(&["-b", "UBL"], "buffer UBL: 0 of 378");
    told(&["-k", "edge", "-b", "UF"], "buffer UF: 0 of 440");
    hoodwink()
        .args(["--language", "de", "algs", "stats", file])
        .assert()
        .success()
        .stdout(contains("8,00 Züge"));
}

#[test]
fn ones_own_costs_hold_wherever_conventions_name_them() {
    let folder = TempDir::new().unwrap();
    fs::write(folder.path().join("costs.toml"), "[seconds]\nstart = 100.0\n").unwrap();
    let conventions = folder.path().join("mine.toml");
    fs::write(&conventions, "[method]\ncorner = \"three-cycle\"\n\n[breaks]\ncorner = \"least\"\n\n[ease]\ncosts = \"costs.toml\"\n")
        .unwrap();
    let file = conventions.to_str().unwrap();
    let first = |arguments: &[&str]| {
        let output = hoodwink().args(arguments).args(["--conventions", file]).assert().success();
        String::from_utf8(output.get_output().stdout.clone()).unwrap()
    };
    let found = first(&[
        "algs",
        "find",
        "--buffer",
        "UFR",
        "UBR",
        "RDF",
        "--moves",
        "R U D",
        "--shortest",
        "--quiet",
    ]);
    assert!(found.contains("100.") || found.contains("101."), "{found}");
    let traced = first(&["trace", "R U F"]);
    let estimate = traced.lines().find(|line| line.starts_with("Estimated")).unwrap().to_owned();
    let seconds: f64 = estimate.split(' ').nth(1).unwrap().parse().unwrap();
    assert!(seconds > 100.0, "{estimate}");
    fs::write(folder.path().join("costs.toml"), "[seconds]\nstarting = 1.0\n").unwrap();
    hoodwink().args(["trace", "R U F", "--conventions", file]).assert().code(2).stderr(contains("starting"));
}

/// Wings and centres: the shortest three-cycles, a sheet that is filled, and one that is accounted for.
#[test]
fn three_cycles_of_wings_and_centres_are_found_and_sheets_of_them_filled() {
    let found = json(&[
        "algs",
        "find",
        "--json",
        "--quiet",
        "--puzzle",
        "4",
        "--kind",
        "wing",
        "--longest",
        "4",
        "B D",
        "--buffer",
        "UFr",
        "--moves",
        "U,R,2L",
    ]);
    assert_eq!((found["kind"].as_str(), found["searched"].as_u64()), (Some("wing"), Some(4)));
    refused(&["algs", "find", "--puzzle", "4", "--kind", "wing", "--longest", "12", "B D"], "up to 8 turns");
    refused(
        &["algs", "find", "--puzzle", "4", "--kind", "wing", "--metric", "half", "B D"],
        "every turn counts one",
    );
    let folder = tempfile::tempdir().unwrap();
    let sheet = folder.path().join("wings.csv");
    fs::write(&sheet, "pair,algorithm\n").unwrap();
    let filled = hoodwink()
        .args(["algs", "fill", "--kind", "wing", "--buffer", "URb", sheet.to_str().unwrap()])
        .assert()
        .success();
    let text = String::from_utf8(filled.get_output().stdout.clone()).unwrap();
    assert_eq!(text.lines().filter(|line| line.contains("search")).count(), 23 * 22, "{text}");
    fs::write(&sheet, text).unwrap();
    let checked = json(&["algs", "check", "--json", sheet.to_str().unwrap()]);
    assert_eq!(checked["right"].as_u64(), Some(23 * 22));
}
