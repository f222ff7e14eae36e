//! Help, manual pages, and arguments that cannot be understood, in every language.

mod common;

use common::{hoodwink, json, refused};
use predicates::prelude::PredicateBooleanExt;
use predicates::str::{contains, starts_with};

/// What is said on standard error, in both languages.
fn said(arguments: &[&str]) -> String {
    let in_language = |language: &str| {
        let output =
            hoodwink().env("HOODWINK_LANGUAGE", language).args(arguments).assert().code(2).stdout("");
        String::from_utf8(output.get_output().stderr.clone()).unwrap()
    };
    format!("{}\n{}{}", arguments.join(" "), in_language("en"), in_language("de"))
}

#[test]
fn arguments_that_cannot_be_understood_are_answered_in_sentences() {
    let all = [
        &["scramble", "--count", "-3"][..],
        &["scramble", "--count", "0"],
        &["scramble", "--how-rare", "--count", "5"],
        &["scramble", "--lessons", "--count", "4"],
        &["trace", "--shrt", "R"],
        &["trase", "R"],
        &["trace", "R", "--puzzle", "3", "--puzzle", "4"],
        &["trace", "R", "--puzzle"],
        &["setups"],
        &["show", "R", "--width", "5"],
        &["show", "R", "--view", "fces"],
        &["show", "R", "--view"],
        &["why", "R", "--most", "200"],
        &["algs", "find", "--twist", "UBL,DFR", "--all"],
        &["serve", "a"],
        &["man", "nothing"],
        &["man", "algs", "nothing"],
        &["algs", "find", "UBR", "RDF", "--longest", "99"],
    ];
    insta::assert_snapshot!(all.map(said).join("\n"));
    refused(&["--language", "fr", "trace", "R"], "“fr” is no language here; en and de are.");
}

#[test]
fn help_opens_with_what_the_program_does_in_every_language() {
    hoodwink().arg("--help").assert().success().stdout(starts_with("From a scramble to a memo"));
    hoodwink()
        .args(["--language", "de", "--help"])
        .assert()
        .success()
        .stdout(starts_with("Vom Scramble zum Memo").and(contains("Befehle:")).and(contains("Usage").not()));
    hoodwink()
        .args(["algs", "find", "-h", "--language=de"])
        .assert()
        .success()
        .stdout(contains("Aufruf: hoodwink algs find [OPTIONEN] [ZIELE]..."));
    // What programs read is the same in every language.
    let of = |language| json(&["--language", language, "setups", "--kind", "corner", "--json"]);
    assert_eq!(of("en"), of("de"));
    // Nothing asked for is no success.
    hoodwink().assert().code(2).stderr(starts_with("From a scramble"));
}

#[test]
fn there_is_a_manual_page_for_every_command_in_every_language() {
    let pages = [&["trace"][..], &["algs", "find"], &["algs", "import"], &["conventions", "check"], &[]];
    for path in pages {
        hoodwink()
            .arg("man")
            .args(path)
            .assert()
            .success()
            .stdout(contains(".SH NAME").and(contains(".SH SYNOPSIS")));
        hoodwink().args(["--language", "de", "man"]).args(path).assert().success().stdout(
            contains(".SH \"BEZEICHNUNG\"").and(contains("NAME\n").not()).and(contains("OPTIONS").not()),
        );
    }
    hoodwink().args(["man", "algs find"]).assert().success().stdout(contains("hoodwink\\-algs\\-find"));
}

#[test]
fn what_is_wrong_is_said_by_name() {
    let folder = tempfile::tempdir().unwrap();
    let file = |name: &str, text: &str| {
        let path = folder.path().join(name);
        std::fs::write(&path, text).unwrap();
        path.to_str().unwrap().to_owned()
    };
    let doubled = file("doubled.toml", "[breaks]\ncorner = [\"UFR\", \"UBL\", \"UFR\"]\n");
    let white = file("white.toml", "[colours]\nU = \"white\"\nF = \"green\"\nD = \"white\"\n");
    let default = file("default.toml", "[colours]\nF = \"White\"\n");
    let all = [
        &["trace", "U R'2"][..],
        &["trace", "(R U)'3 F"],
        &["trace", "R'2U"],
        &["trace", "Ｒ'２"],
        &["algs", "find", "--flip", "UF,UFR"],
        &["algs", "find", "--flip", "UF,UX"],
        &["algs", "find", "--twist", "UFR"],
        &["algs", "find", "--exchange", "UFR,UF,UBR,UR"],
        &["setups", "--kind", "corner", "--turns", "R,Q"],
        &["setups", "--kind", "corner", "--turns", ""],
        &["setups", "--kind", "edge", "--target", "UFR"],
        &["compare", "slice-swap+one-swap", "one-swap"],
        &["conventions", "check", &doubled],
        &["conventions", "check", &white],
        &["conventions", "check", &default],
        &["trace", "--facelets", "WWWWWWWWW OOOOOOOOO GGGGGGGGG RRRRRRRRR BBBBBBBBB YYYYYYYYU"],
    ];
    let place = folder.path().to_str().unwrap();
    insta::assert_snapshot!(all.map(said).join("\n").replace(place, "FOLDER"));
}

#[test]
fn set_ups_use_the_amounts_that_are_named() {
    let of = |turns| {
        let object = json(&["setups", "--kind", "corner", "--target", "N", "--turns", turns, "--json"]);
        object["targets"][0]["setups"].clone()
    };
    assert_eq!(of("R,F"), serde_json::json!(["R' F"]));
    assert_eq!(of("R',F"), serde_json::json!(["R' F"]));
    assert_ne!(of("R2,F"), serde_json::json!(["R' F"]));
}

#[test]
fn moved_centres_are_told() {
    hoodwink().args(["apply", "M"]).assert().success().stdout(contains("The centres have moved"));
    hoodwink().args(["apply", "R"]).assert().success().stdout(contains("centres have moved").not());
    hoodwink()
        .args(["apply", "x"])
        .assert()
        .success()
        .stdout(contains("solved").and(contains("centres have moved").not()));
}

/// The page as roff prints it in words: the part under a heading.
fn section(page: &str, heading: &str) -> String {
    let begin = page.find(&format!("\n.SH {heading}\n")).unwrap_or_else(|| panic!("no {heading} in {page}"));
    let rest = &page[begin + 1..];
    rest[..rest[1..].find("\n.SH ").map_or(rest.len(), |at| at + 1)].to_owned()
}

#[test]
fn the_synopsis_of_a_manual_page_is_that_of_the_help_in_both_languages() {
    let printed = |arguments: &[&str]| {
        let output = hoodwink().args(arguments).assert().success();
        String::from_utf8(output.get_output().stdout.clone()).unwrap()
    };
    for (language, heading, usage) in [("en", "SYNOPSIS", "Usage: "), ("de", "\"ÜBERSICHT\"", "Aufruf: ")] {
        for command in ["trace", "scramble", "algs find", "algs export", "conventions check", "man"] {
            let words: Vec<&str> = command.split(' ').collect();
            let page = printed(&[&["--language", language, "man"], &words[..]].concat());
            let help = printed(&[&["--language", language], &words[..], &["--help"]].concat());
            let called = help.lines().find_map(|line| line.strip_prefix(usage)).expect("how it is called");
            let synopsis =
                section(&page, heading).replace("\\fB", "").replace("\\fR", "").replace("\\-", "-");
            assert_eq!(synopsis.lines().nth(1), Some(called), "{language} {command}");
            if language == "de" {
                // Names of values are German too; the page of a command names no English one.
                for english in
                    ["OPTIONS", "FILE>", "SIZE>", "NUMBER>", "CHOICE>", "COMMAND", "KIND>", "SHEET>"]
                {
                    assert!(!page.contains(english) && !help.contains(english), "{english} in {command}");
                }
            }
        }
    }
}
