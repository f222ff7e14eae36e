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
        .stdout(contains("Aufruf: hoodwink algs find [OPTIONEN] [TARGETS]..."));
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
