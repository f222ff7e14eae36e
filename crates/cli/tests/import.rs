//! Sheets as people have them, taken in on the command line. All of them are invented.

mod common;

use common::{hoodwink, json, refused};
use predicates::prelude::PredicateBooleanExt;
use predicates::str::contains;
use std::fs;

#[test]
fn an_account_is_given_of_what_is_taken_in() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("mine.csv");
    let out = folder.path().join("out.csv");
    let (file, written) = (path.to_str().unwrap(), out.to_str().unwrap());
    // Without a head, in UTF-16, with a number, a remark, a doubled algorithm, one that is wrong and one that cannot be read.
    let text = "My corners;;\n1;UBR RDF;1. [R' D' R, U] (nice)\n2;RDF UBR;[U, R' D' R]\n3;UBR RDF;[R’ D’ R,U]\n4;UBR RDF;R U R' U'\n5;UBL RDF;[R' D' R, U\n";
    let units: Vec<u8> =
        [0xff, 0xfe].into_iter().chain(text.encode_utf16().flat_map(u16::to_le_bytes)).collect();
    fs::write(&path, units).unwrap();
    hoodwink().args(["algs", "import", file, "-b", "UFR", "-o", written]).assert().code(1).stderr(
        contains("5 cells: 3 right, 1 wrong, 0 empty, 1 not understood.")
            .and(contains("Wrong: line 5, column 3."))
            .and(contains("Not understood: line 6, column 3."))
            .and(contains("One algorithm is there twice: line 2, column 3 and line 4, column 3."))
            .and(contains("a right algorithm and one that does something else"))
            .and(contains("No line names the columns")),
    );
    let list = fs::read_to_string(&out).unwrap();
    for words in ["My corners", "1.; nice", "not-a-three-cycle", "unreadable"] {
        assert!(list.contains(words), "{words} in {list}");
    }
    // What was written is read back as it is.
    hoodwink().args(["algs", "check", written]).assert().code(1).stdout(contains("5 cells: 3 right"));
    fs::write(&path, "pair;algorithm\nUBR RDF;[R' D' R, U]\n").unwrap();
    assert_eq!(json(&["algs", "check", file, "-b", "UFR", "--json"])["right"], 1);
}

#[test]
fn corners_opened_as_edges_are_not_written_without_a_question() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("mine.csv");
    let out = folder.path().join("out.csv");
    let (file, written) = (path.to_str().unwrap(), out.to_str().unwrap());
    let rows = ["AC", "CA", "AD", "DA"].map(|pair| format!("{pair};[R' D' R, U]\n")).concat();
    fs::write(&path, format!("pair;algorithm\n{rows}")).unwrap();
    let import = ["algs", "import", file, "--kind", "edge", "-o", written];
    refused(&import, "Nothing was written.");
    assert!(!out.exists());
    hoodwink().args(import).arg("--anyway").assert().code(1);
    assert!(out.exists());
}

#[test]
fn a_grid_that_fits_either_way_is_asked_about() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("grid.csv");
    fs::write(&path, "UFR;UBR;RDF;UBL\nUBR;;[R' D' R, U];\nRDF;[R' D' R, U];;\nUBL;;;\n").unwrap();
    let file = path.to_str().unwrap();
    refused(&["algs", "check", file], "Say --first left or --first top.");
    hoodwink()
        .args(["algs", "check", file, "--first", "top"])
        .assert()
        .code(1)
        .stdout(contains("1 right, 1 wrong"));
}
