//! The other commands, as they are used.

mod common;

use common::{hoodwink, json, refused};
use predicates::prelude::PredicateBooleanExt;
use predicates::str::{contains, starts_with};
use std::fs;

#[test]
fn set_ups_are_listed_and_found_by_search() {
    // Common practice, no source.
    hoodwink()
        .args(["setups", "--kind", "corner"])
        .assert()
        .success()
        .stdout(contains("N  RUB  R' F"))
        .stdout(contains("W  DBR  D'"))
        .stdout(contains("J  FUR  R'"))
        .stdout(contains("F  LUF  F' D"))
        .stdout(contains("H  LDB  D' R"));
    let object = json(&["setups", "--kind", "edge", "--target", "FR", "--json"]);
    assert_eq!(object["targets"][0]["setups"][0], "Dw2 L");
    let narrow = json(&["setups", "--kind", "corner", "--turns", "R,F,D", "--target", "N", "--json"]);
    assert_eq!(narrow["targets"][0]["setups"][0], "R' F");
    refused(&["setups", "--kind", "corners"], "Did you mean corner?");
    refused(&["setups", "--kind", "edge", "--puzzle", "2"], "A 2x2 has no edges.");
    refused(&["setups", "--kind", "corner", "--target", "E"], "on the buffer's own piece");
    refused(&["setups", "--kind", "corner", "--target", "ZZ"], "neither a letter nor a sticker of a corner");
}

#[test]
fn moves_are_applied_on_every_size() {
    hoodwink().args(["apply", "R U R' U'"]).assert().success().stdout(contains("edges: 3 in other places"));
    hoodwink().args(["apply", "--puzzle", "2", "R L'"]).assert().success().stdout(contains("solved"));
    for size in 2..=7 {
        let object = json(&["apply", "--json", "--puzzle", &size.to_string(), "R U"]);
        let stickers = object["facelets"].as_str().unwrap().chars().filter(|sign| sign.is_alphabetic());
        assert_eq!(stickers.count(), 6 * size * size);
        assert_eq!(object["solved"], false);
    }
    let object = json(&["apply", "--json", "--puzzle", "7x7", "3Rw U2 3Rw'"]);
    assert_eq!(object["puzzle"], 7);
}

#[test]
fn the_fewest_turns_are_found_and_what_is_open_is_said() {
    hoodwink()
        .args(["shortest", "R U R' U'"])
        .assert()
        .success()
        .stdout("U R U' R'\n4 turns; no solution is shorter.\n");
    hoodwink().args(["shortest", "R R'"]).assert().success().stdout("It is solved: no turns.\n");
    hoodwink()
        .args(["--language", "de", "shortest", "-p", "2", "R"])
        .assert()
        .success()
        .stdout("R'\n1 Zug; keine Lösung ist kürzer.\n");
    // Source: T. Rokicki et al., "The diameter of the Rubik's cube group is twenty", 2010: all edges flipped, 20 turns.
    let flipped = "R L U2 F U' D F2 R2 B2 L U2 F' B' U R2 D F2 U R2 U";
    let object = json(&["shortest", "--json", "--positions", "100000", flipped]);
    assert_eq!(object["proven"], false);
    assert!(object["turns"].as_u64() >= Some(20) && object["least"].as_u64() <= Some(20));
    assert!(object["positions"].as_u64() <= Some(100_000));
    let said = contains("not proven to be a shortest one").and(contains("No solution takes fewer than"));
    hoodwink().args(["shortest", "--positions", "1000", flipped]).assert().success().stdout(said);
    refused(&["shortest", "-p", "4", "Rw"], "not for a 4x4");
    refused(&["shortest", "--seconds", "0", "R"], "a whole number from 1 to 604800 is needed");
}

#[test]
fn pictures_are_written() {
    let folder = tempfile::tempdir().unwrap();
    let svg = folder.path().join("cube.svg");
    let path = svg.to_str().unwrap();
    hoodwink().args(["show", "R U R' U'", "--out", path]).assert().success();
    assert!(fs::read_to_string(&svg).unwrap().contains("<svg"));
    let png = folder.path().join("cube.png");
    hoodwink().args(["show", "R U", "--view", "net", "--out", png.to_str().unwrap()]).assert().success();
    assert!(fs::read(&png).unwrap().starts_with(b"\x89PNG"));
    for view in ["faces", "net", "strip", "thread"] {
        hoodwink().args(["show", "--view", view, "R U F"]).assert().success().stdout(contains("<svg"));
    }
    for hidden in ["no", "mirrors", "open"] {
        hoodwink().args(["show", "--hidden", hidden, "--held", "x2 y", "R"]).assert().success();
    }
    hoodwink().args(["show", "--mark", "UFR", "--chain", "UF,RB,DL", "R"]).assert().success();
    let gif = folder.path().join("cube.gif");
    refused(&["show", "R", "--out", gif.to_str().unwrap()], "a picture file ends in .svg or .png");
    assert!(!gif.exists());
    refused(&["show", "R", "--mark", "XYZ"], "no sticker of this puzzle");
    refused(&["show", "R", "--held", "R"], "no rotation");
    refused(&["show", "K", "--out", svg.to_str().unwrap()], "column 1");
}

#[test]
fn conventions_are_shown_and_checked() {
    hoodwink()
        .args(["conventions", "show"])
        .assert()
        .success()
        .stdout(contains("corners: buffer LUB (E), method one-swap"))
        .stdout(contains("carried out in the order corners, edges."));
    hoodwink()
        .args(["conventions", "show", "--puzzle", "4"])
        .assert()
        .success()
        .stdout(contains("wings: buffer URb (B), method three-cycle"))
        .stdout(contains("carried out in the order x-centres, wings, corners."))
        .stdout(contains("edges").not());
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("mine.toml");
    let path = file.to_str().unwrap();
    let written = hoodwink().args(["conventions", "show", "--toml"]).assert().success();
    fs::write(&file, &written.get_output().stdout).unwrap();
    hoodwink().args(["conventions", "check", path]).assert().success().stdout(contains("is in order"));

    let wrong = |text: &str, sentence: &str| {
        fs::write(&file, text).unwrap();
        refused(&["conventions", "check", path], sentence);
    };
    wrong("[bufer]\n", "Line 1, column 2");
    wrong("[buffer]\ncorner = \"UFR\"\n", "Line 2, column 10: The algorithm does not move the buffer UFR");
    wrong("[buffer]\ncorner = \"UXR\"\n", "no corner sticker");
    wrong(
        "[letters]\nedge = \"AACDEFGHIJKLMNOPQRSTUVWX\"\n",
        "The letter A stands for two stickers, UB and UR.",
    );
    wrong("[letters]\nedge = { UF = \"A\" }\n", "UB has no letter.");
    wrong("[letters]\nedge = \"ABC\"\n", "3 letters for the 24 edge stickers.");
    wrong("[holding]\nup = \"white\"\nfront = \"yellow\"\n", "white and yellow are opposite");
    wrong("[holding]\nup = \"wite\"\n", "Did you mean white?");
    wrong("[colours]\nU = \"purple\"\n", "needs a shade");
    wrong("[colours]\nU = \"red\"\n", "Two faces are red");
    wrong("[memo]\npairs = \"yes\"\n", "needs true or false");
    wrong("[method]\ncorner = \"one-swop\"\n", "Did you mean one-swap?");
    wrong("[algorithm]\ncorner = \"R U\"\n", "does not simply exchange two corners");
    wrong("[breaks]\ncorner = \"fewst\"\n", "Did you mean fewest?");
    wrong("[memo]\norder = [\"corner\", \"edge\", \"corner\"]\n", "names a kind twice");
    wrong("a = = 1\n", "This file holds no conventions");
}

#[test]
fn own_conventions_are_followed() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("mine.toml");
    // An invented solver who holds yellow up, red front, and letters edges by vowels first.
    fs::write(
        &file,
        "[holding]\nup = \"yellow\"\nfront = \"red\"\n[letters]\nedge = \"AEIOUBCDFGHJKLMNPQRSTVWX\"\n[memo]\npairs = false\n",
    )
    .unwrap();
    let path = file.to_str().unwrap();
    let object = json(&["--conventions", path, "trace", "--json", "R U F"]);
    assert_eq!(object["holding"]["rotation"], "x2 y");
    assert_eq!(object["holding"]["up"], "yellow");
    assert_eq!(object["holding"]["front"], "red");
    hoodwink()
        .args(["--conventions", path, "trace", "R U F"])
        .assert()
        .success()
        .stdout(contains("so that yellow is up and red in front: x2 y"));
}

#[test]
fn completions_and_manual_are_made_from_the_arguments() {
    for shell in ["bash", "zsh", "fish", "powershell", "elvish"] {
        hoodwink().args(["completions", shell]).assert().success().stdout(contains("hoodwink"));
    }
    hoodwink().arg("man").assert().success().stdout(contains(".TH"));
    hoodwink().args(["man", "trace"]).assert().success().stdout(contains("batch"));
    hoodwink().arg("--version").assert().success().stdout(starts_with("hoodwink"));
    hoodwink().arg("trase").assert().code(2);
}
