//! `hoodwink trace`, as it is used.

mod common;

use common::{hoodwink, json, refused};
use cube::{Algorithm, Orbit, Size, State, Sticker};
use predicates::prelude::PredicateBooleanExt;
use predicates::str::contains;
use serde_json::Value;

const SCRAMBLE_2: &str = "R U' F2 R' U F' U2 R F'";
const SCRAMBLE_3: &str = "D2 F' R2 B U2 L' D B2 R F U' L2 B' U R2 D' F2 L U2";

/// Scramble, hold, solution: what the JSON promises.
fn solves(object: &Value) {
    let size = Size::new(u8::try_from(object["puzzle"].as_u64().unwrap()).unwrap()).unwrap();
    let after = |state: State, text: &Value| {
        state.after(&Algorithm::parse(text.as_str().unwrap(), size).unwrap().flatten())
    };
    let scrambled = after(State::solved(size), &object["scramble"]);
    let held = after(scrambled, &object["holding"]["rotation"]);
    assert!(after(held, &object["solution"]["moves"]).solved_hold().is_some(), "{object}");
    for part in object["parts"].as_array().unwrap() {
        let letters = part["letters"].as_str().unwrap().chars().count();
        assert_eq!(part["targets"].as_array().unwrap().len(), letters);
        assert_eq!(part["steps"].as_array().unwrap().len(), letters);
        assert_eq!(part["odd"].as_bool().unwrap(), letters % 2 == 1);
    }
}

#[test]
fn a_scramble_is_traced_with_reasons_and_a_solution() {
    hoodwink()
        .args(["trace", "--puzzle", "3", SCRAMBLE_3])
        .assert()
        .success()
        .stdout(contains("edges, buffer UR (B): JK VE GT SA QC HF C (13 letters)"))
        .stdout(contains("corners, buffer LUB (E): BC WK GH D (7 letters)"))
        .stdout(contains("Look at the buffer UR: you see green"))
        .stdout(contains("Applied to the puzzle, they solve it."));
}

#[test]
fn the_json_does_what_it_says() {
    for (puzzle, scramble) in
        [("2", SCRAMBLE_2), ("3", SCRAMBLE_3), ("3", "U U'"), ("3", "Rw U M' x"), ("2", "x y")]
    {
        solves(&json(&["trace", "--json", "--puzzle", puzzle, scramble]));
    }
    solves(&json(&["trace", "--json", "--puzzle", "2", "--hold", "best", SCRAMBLE_2]));
    insta::assert_snapshot!(
        serde_json::to_string_pretty(&json(&["trace", "--json", "--puzzle", "2", SCRAMBLE_2])).unwrap()
    );
}

#[test]
fn a_2x2_can_be_held_the_best_way() {
    let scramble = "R' F U2 F' R2 U F2 R' U'";
    let letters = |hold: &str| {
        let object = json(&["trace", "--json", "--puzzle", "2", "--hold", hold, scramble]);
        object["parts"][0]["letters"].as_str().unwrap().len()
    };
    assert!(letters("best") < letters("conventions"));
    hoodwink().args(["trace", "--puzzle", "2", scramble]).assert().success().stdout(contains("--hold best"));
}

#[test]
fn stickers_do_as_well_as_a_scramble() {
    let by_moves = json(&["trace", "--json", SCRAMBLE_3]);
    let applied = json(&["apply", "--json", SCRAMBLE_3]);
    let facelets = applied["facelets"].as_str().unwrap();
    assert_eq!(json(&["trace", "--json", "--facelets", facelets])["parts"], by_moves["parts"]);
    // As words, and as the net that is printed.
    let words: String = facelets
        .chars()
        .map(|colour| match colour {
            'W' => "white ",
            'O' => "Orange, ",
            'G' => "GREEN\n",
            'R' => "red",
            'B' => " blue ",
            'Y' => "yellow ",
            ' ' => "",
            other => panic!("{other}"),
        })
        .collect();
    assert_eq!(json(&["trace", "--json", "--facelets", &words])["parts"], by_moves["parts"]);
    let printed = hoodwink().args(["apply", SCRAMBLE_3]).assert().success();
    let printed = String::from_utf8(printed.get_output().stdout.clone()).unwrap();
    let net: Vec<&str> = printed.lines().take(9).collect();
    for language in ["en", "de"] {
        let read = json(&["trace", "--json", "--language", language, "--facelets", &net.join("\n")]);
        assert_eq!(read["parts"][0]["letters"], by_moves["parts"][0]["letters"]);
    }
    // In German green and yellow begin alike, so words are written, and read.
    let german =
        json(&["apply", "--json", "--language", "de", SCRAMBLE_3])["facelets"].as_str().unwrap().to_owned();
    assert!(german.contains("grün") && german.contains("weiß"));
    let read = json(&["trace", "--json", "--language", "de", "--facelets", &german]);
    assert_eq!(read["parts"][1]["letters"], by_moves["parts"][1]["letters"]);
}

#[test]
fn a_batch_keeps_the_order_and_goes_on_after_a_bad_line() {
    let input = format!("{SCRAMBLE_3}\n\nR U K\n{}\u{e9}\nU\n", "F ".repeat(3));
    let output = hoodwink().args(["trace", "--batch", "-"]).write_stdin(input).assert().code(1);
    let text = String::from_utf8(output.get_output().stdout.clone()).unwrap();
    let objects: Vec<Value> = text.lines().map(|line| serde_json::from_str(line).unwrap()).collect();
    assert_eq!(objects.len(), 4);
    solves(&objects[0]);
    assert_eq!(objects[1]["line"], 3);
    assert!(objects[1]["error"].as_str().unwrap().starts_with("Line 3, column 5"));
    assert_eq!(objects[2]["line"], 4);
    assert_eq!(objects[3]["scramble"], "U");
}

#[test]
fn a_batch_of_good_lines_ends_well() {
    let lines = format!("{SCRAMBLE_3}\n").repeat(3000);
    let output = hoodwink().args(["trace", "--batch", "-"]).write_stdin(lines).assert().success();
    let text = String::from_utf8(output.get_output().stdout.clone()).unwrap();
    assert_eq!(text.lines().count(), 3000);
}

/// Scrambles of the bigger sizes, drawn by chance.
const BIGGER: [(&str, &str); 4] = [
    ("4", "Rw' U Fw2 D' L2 Uw B2 R' Fw D Rw2 B Uw' L"),
    ("5", "Lw2 D Bw' R2 Uw F' Dw2 L Rw' B2 Fw U' Lw D2 M' S"),
    ("6", "3Rw U 3Fw2 D' Lw B2 3Uw R' Fw D Rw2 B 3Rw' U2 Bw 2L' 3U"),
    ("7", "3Lw' U2 3Bw Dw F' 3Dw2 L 3Rw B2 Uw' 3Fw R2 Dw' 3Uw L' E x"),
];

/// The kinds by their names in files.
const KINDS: [&str; 10] = [
    "corner",
    "edge",
    "wing",
    "wing-3",
    "x-centre",
    "x-centre-3",
    "t-centre",
    "t-centre-3",
    "left-oblique",
    "right-oblique",
];

/// Exchanges pieces by the targets of each kind, one after another, and looks whether every sticker is then on its face.
fn solves_by_exchanging(object: &Value) {
    let size = Size::new(u8::try_from(object["puzzle"].as_u64().unwrap()).unwrap()).unwrap();
    let read = |text: &Value| Algorithm::parse(text.as_str().unwrap(), size).unwrap().flatten();
    let held =
        State::solved(size).after(&read(&object["scramble"])).after(&read(&object["holding"]["rotation"]));
    // With the usual conventions a solved puzzle is held as it was scrambled.
    let parts = object["parts"].as_array().unwrap();
    assert_eq!(parts.len(), Orbit::of(size).len(), "a memo for every kind");
    for part in parts {
        let number = KINDS.iter().position(|kind| part["kind"] == *kind).unwrap();
        let orbit = Orbit::ALL[number];
        let at = |name: &Value| orbit.sticker(name.as_str().unwrap()).unwrap();
        let mut lies: Vec<Sticker> = Sticker::all().map(|place| held.at(orbit, place)).collect();
        let buffer = at(&part["buffer"]);
        for target in part["targets"].as_array().unwrap() {
            let mut places = (buffer, at(target));
            for _ in 0..orbit.stickers_per_piece() {
                lies.swap(places.0.index(), places.1.index());
                places = (orbit.turned(places.0, 1), orbit.turned(places.1, 1));
            }
        }
        for (place, there) in Sticker::all().zip(lies) {
            let right = if number >= 4 { there.face() == place.face() } else { there == place };
            assert!(right, "{size}, {}: {} lies at {}", part["kind"], orbit.name(there), orbit.name(place));
        }
        let letters = part["letters"].as_str().unwrap().chars().count();
        assert_eq!(part["odd"].as_bool().unwrap(), letters % 2 == 1);
        let told_apart = object["parity"].as_array().unwrap().contains(&part["kind"]);
        assert_eq!(told_apart, number < 4 && letters % 2 == 1);
    }
}

#[test]
fn bigger_puzzles_have_a_memo_that_solves_and_a_plan_that_does() {
    for (puzzle, scramble) in BIGGER {
        let object = json(&["trace", "--json", "--puzzle", puzzle, scramble]);
        solves_by_exchanging(&object);
        assert!(object["no_solution"].is_null());
        solves(&object);
        hoodwink()
            .args(["trace", "--puzzle", puzzle, scramble])
            .assert()
            .success()
            .stdout(contains("Why, for the x-centres:"))
            .stdout(contains("would have done as well."))
            .stdout(contains("Centres of one colour look alike"))
            .stdout(contains("Carried out:"))
            .stdout(contains("Applied to the puzzle, they solve it."));
    }
    let best = json(&["trace", "--json", "--puzzle", "4", "--hold", "best", BIGGER[0].1]);
    solves_by_exchanging(&best);
    let usual = json(&["trace", "--json", "--puzzle", "4", BIGGER[0].1]);
    let letters = |object: &Value| {
        let parts = object["parts"].as_array().unwrap().iter();
        parts.map(|part| part["letters"].as_str().unwrap().len()).sum::<usize>()
    };
    assert!(letters(&best) <= letters(&usual));
}

#[test]
fn a_printed_net_of_any_size_is_read_back() {
    for (puzzle, scramble) in [("2", SCRAMBLE_2), ("3", SCRAMBLE_3)].into_iter().chain(BIGGER) {
        let printed = hoodwink().args(["apply", "--puzzle", puzzle, scramble]).assert().success();
        let printed = String::from_utf8(printed.get_output().stdout.clone()).unwrap();
        let lines = 3 * puzzle.parse::<usize>().unwrap();
        let net: Vec<&str> = printed.lines().take(lines).collect();
        let read = json(&["apply", "--json", "--puzzle", puzzle, "--facelets", &net.join("\n")]);
        let applied = json(&["apply", "--json", "--puzzle", puzzle, scramble]);
        assert_eq!(read["facelets"], applied["facelets"], "{puzzle}");
    }
}

#[test]
fn a_batch_takes_every_size_in_full_and_in_short() {
    for (puzzle, scramble) in [("2", SCRAMBLE_2), ("3", SCRAMBLE_3)].into_iter().chain(BIGGER) {
        let input = format!("{scramble}\n\n   \nR U K\n{scramble} U\n");
        let lines = |options: &[&str]| -> Vec<Value> {
            let arguments = [&["trace", "--puzzle", puzzle, "--batch", "-"], options].concat();
            let output = hoodwink().args(arguments).write_stdin(input.clone()).assert().code(1);
            let text = String::from_utf8(output.get_output().stdout.clone()).unwrap();
            text.lines().map(|line| serde_json::from_str(line).unwrap()).collect()
        };
        let (full, short) = (lines(&[]), lines(&["--short"]));
        assert_eq!((full.len(), short.len()), (3, 3));
        assert_eq!(full[1], short[1], "a mistake is answered alike");
        assert_eq!(full[1]["line"], 4);
        for (at, line) in [(0, 1), (2, 5)] {
            assert_eq!(short[at]["line"], line);
            assert_eq!(short[at]["rotation"], full[at]["holding"]["rotation"]);
            assert_eq!(short[at]["parity"], full[at]["parity"]);
            let parts = full[at]["parts"].as_array().unwrap();
            let brief = short[at]["memo"].as_array().unwrap();
            assert_eq!(brief.len(), parts.len());
            for (brief, part) in brief.iter().zip(parts) {
                assert_eq!(
                    (&brief["kind"], &brief["letters"], &brief["odd"]),
                    (&part["kind"], &part["letters"], &part["odd"])
                );
            }
        }
        assert_eq!(full[0], json(&["trace", "--json", "--puzzle", puzzle, scramble]));
    }
}

#[test]
fn a_short_batch_follows_the_conventions() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("mine.toml");
    let letters: Vec<String> = (1..=24).map(|number| format!("\"k{number}\"")).collect();
    let text = format!(
        "[holding]\nup = \"yellow\"\nfront = \"red\"\n[letters]\nedge = [{}]\n[parity]\nby = \"exchange\"\n",
        letters.join(", ")
    );
    std::fs::write(&file, text).unwrap();
    let mine = ["--conventions", file.to_str().unwrap()];
    let full = json(&[&["trace", "--json", SCRAMBLE_3], &mine[..]].concat());
    let output = hoodwink()
        .args(["trace", "--short", "--batch", "-"])
        .args(mine)
        .write_stdin(format!("{SCRAMBLE_3}\r\n"))
        .assert()
        .success();
    let short: Value = serde_json::from_slice(&output.get_output().stdout).unwrap();
    assert_ne!(short["rotation"], "");
    assert_eq!(short["rotation"], full["holding"]["rotation"]);
    assert_eq!(short["memo"][0]["letters"], full["parts"][0]["letters"]);
    assert!(short["memo"][0]["letters"].as_str().unwrap().contains("-k"));
    assert_eq!(short["exchanged"], full["exchanged"]);
    assert!(short["exchanged"].is_array());
    hoodwink()
        .args(["trace", "--short", SCRAMBLE_3])
        .args(mine)
        .assert()
        .success()
        .stdout(contains("(k").and(contains("Why").not()));
}

#[test]
fn bytes_that_are_no_text_are_an_error_of_their_line() {
    let output =
        hoodwink().args(["trace", "--batch", "-"]).write_stdin(vec![0xff, b'\n', b'R', b'\n']).assert();
    output.code(1).stdout(contains("no text (UTF-8)"));
}

#[test]
fn mistakes_of_beginners_are_met_with_a_sentence() {
    refused(&["trace", "--puzzle", "3"], "There is no scramble.");
    refused(&["trace", "--puzzle", "9", "R"], "no puzzle here");
    refused(&["trace", "--puzzle", "4", "R M"], "a 4x4 has no middle layer");
    refused(&["trace", "--puzzle", "5", "--hold", "best", "R"], "on a 5x5 the centres");
    refused(
        &["trace", "--puzzle", "2", "R M"],
        "Line 1, column 3: M cannot be made: a 2x2 has no middle layer",
    );
    refused(&["trace", "R u X"], "“X” is no move; “x” is.");
    refused(&["trace", "(R U"], "expected is a move or the closing bracket");
    refused(&["trace", "--hold", "best", "R"], "the centres and your conventions fix the holding");
    refused(&["trace", "--facelets", "WWW"], "3 stickers fit no cube");
    let wrong = format!("{}Q{}", "W".repeat(30), "W".repeat(23));
    refused(
        &["trace", "--facelets", &wrong],
        "Line 1, column 31 (face R, row 2, column 1): “Q” is no colour; these are: W O G R B Y.",
    );
    let faces = ["W", "O", "G", "R", "B", "Y"].map(|colour| colour.repeat(if colour == "R" { 8 } else { 9 }));
    refused(&["trace", "--facelets", &faces.join("\n")], "Face R has 8; on a 3x3 a face has 9 stickers.");
    refused(&["trace", "--puzzle", "2", "--facelets", &"W".repeat(54)], "the stickers of a 3x3");
    refused(&["trace", "--facelets", &"W".repeat(54)], "There are 54 white stickers");
    refused(&["trace", "--batch", "no/such/file"], "no/such/file");
    refused(&["trace", "--language", "xx", "R"], "en and de are");
    refused(&["trace", "--conventions", "no/such/file", "R"], "no/such/file");
    refused(&["trace", "((((R U)999)999)999)999"], "more than 100000 moves");
    let long = "R ".repeat(40_000);
    hoodwink()
        .args(["trace", "--batch", "-"])
        .write_stdin(long)
        .assert()
        .code(1)
        .stdout(contains("at most 65536 are read"));
}

#[test]
fn a_twisted_corner_is_named() {
    let solved = json(&["apply", "--json", "U U'"])["facelets"].as_str().unwrap().to_owned();
    // The corner UFR turned: the last sticker of U, the first of R, the third of F, a blank after every nine.
    let mut seen: Vec<char> = solved.chars().collect();
    (seen[8], seen[30], seen[22]) = ('G', 'W', 'R');
    refused(&["trace", "--facelets", &seen.iter().collect::<String>()], "someone twisted a corner by hand");
}

#[test]
fn everything_can_be_said_in_german() {
    hoodwink()
        .args(["trace", "--language", "de", SCRAMBLE_3])
        .assert()
        .success()
        .stdout(contains("Sieh auf den Puffer UR: dort ist grün"));
}

#[test]
fn all_ways_to_hold_an_even_size_are_shown_in_a_table() {
    let scramble = BIGGER[0].1;
    let object = json(&["trace", "--json", "--holdings", "--puzzle", "4", scramble]);
    let ways = object["holdings"].as_array().unwrap();
    assert_eq!(ways.len(), 24);
    let of = |way: &Value, what: &str| way[what].as_u64().unwrap();
    assert!(ways.windows(2).all(|pair| of(&pair[0], "letters") <= of(&pair[1], "letters")));
    for way in ways {
        let kinds: u64 = way["kinds"].as_array().unwrap().iter().map(|kind| of(kind, "letters")).sum();
        assert_eq!(kinds, of(way, "letters"));
    }
    let most = ways.iter().map(|way| of(way, "centres")).max().unwrap();
    let held = json(&["trace", "--json", "--hold", "most-centres", "--puzzle", "4", scramble]);
    solves(&held);
    let chosen = ways.iter().find(|way| of(way, "centres") == most).unwrap();
    assert_eq!(held["holding"]["rotation"], chosen["rotation"]);
    let table = hoodwink().args(["trace", "--holdings", "--puzzle", "4", scramble]).assert().success();
    let text = String::from_utf8(table.get_output().stdout.clone()).unwrap();
    assert_eq!(text.lines().count(), 25);
    assert!(text.lines().next().unwrap().contains("x-centres"));
    refused(&["trace", "--holdings", "R U"], "the centres and your conventions fix the holding");
}
