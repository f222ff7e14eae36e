//! `hoodwink trace`, as it is used.

mod common;

use common::{hoodwink, json, refused};
use cube::{Algorithm, Size, State};
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
        assert_eq!(part["parity"].as_bool().unwrap(), letters % 2 == 1);
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
        [("2", SCRAMBLE_2), ("3", SCRAMBLE_3), ("3", ""), ("3", "Rw U M' x"), ("2", "x y")]
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
    assert!(objects[1]["error"].as_str().unwrap().starts_with("Line 1, column 5"));
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
    refused(&["trace", "--puzzle", "4", "R"], "Memos are made for the 2x2 and the 3x3 so far");
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
    refused(&["trace", "--language", "xx", "R"], "known are en, de");
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
    let solved = json(&["apply", "--json", ""])["facelets"].as_str().unwrap().to_owned();
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
