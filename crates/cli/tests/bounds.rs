//! Inputs that are too large, without end, or no files.

mod common;

use common::{hoodwink, json, refused};
use predicates::prelude::PredicateBooleanExt;
use predicates::str::{contains, starts_with};
use std::fs;

/// A file in a folder of its own, and its path.
fn file(name: &str, content: impl AsRef<[u8]>) -> (tempfile::TempDir, String) {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join(name);
    fs::write(&path, content).unwrap();
    let path = path.to_str().unwrap().to_owned();
    (folder, path)
}

#[test]
fn a_small_sheet_does_not_become_a_huge_one() {
    let grid = format!(",UFR,UBR{}\n{}", ",".repeat(4500), "UBL,R\n".repeat(1100));
    let list = format!("first,second,algorithm{}\n{}", ",".repeat(30_000), "UBR,RDF,R U\n".repeat(3400));
    let ways = format!("pair,algorithm{}\nUBR RDF,{}\n", ",".repeat(20_000), "R / ".repeat(9000));
    for (text, line) in [(grid, "Line 56"), (list, "Line 9"), (ways, "Line 2")] {
        let (_folder, path) = file("sheet.csv", text);
        refused(
            &["algs", "check", &path],
            &format!("{line}: up to here the sheet comes to more than 250000 cells"),
        );
        hoodwink()
            .args(["--language", "de", "algs", "check", &path])
            .assert()
            .code(2)
            .stderr(contains("kommt die Tabelle auf mehr als 250000 Zellen"));
    }
    let (_folder, path) = file("commas.csv", ",".repeat(64 << 10));
    refused(&["algs", "check", &path], "The sheet is empty.");
    let (_folder, path) = file("open.csv", "[,".repeat(100_000));
    refused(&["algs", "check", &path], "neither a list nor a grid");
}

#[test]
fn long_algorithms_of_a_sheet_are_not_applied() {
    let (_folder, path) = file("sheet.csv", "pair,algorithm\nUBR RDF,(R U)50000\nUBR RDF,(R U)250\n");
    hoodwink()
        .args(["algs", "check", &path])
        .assert()
        .code(1)
        .stdout(contains("has 100000 moves; at most 500 are applied").and(contains("line 3")));
}

#[test]
fn a_long_cell_is_said_only_in_its_beginning() {
    let text = format!("pair,algorithm\nUBR RDF,{}\n{},R\n", "Q".repeat(200_000), "W".repeat(200_000));
    let (_folder, path) = file("sheet.csv", text);
    let output = hoodwink().args(["algs", "check", &path]).assert().code(1);
    let said = String::from_utf8(output.get_output().stdout.clone()).unwrap();
    assert!(said.len() < 2000 && said.contains("QQQ…") && said.contains("WWW…"), "{said}");
    // Brackets alone are no empty cell.
    let (_folder, path) = file("sheet.csv", "pair,algorithm\nUBR RDF,[]\nUBL RDF,-\n");
    hoodwink()
        .args(["algs", "check", &path])
        .assert()
        .code(1)
        .stdout(contains("0 right, 0 wrong, 1 empty, 1 not understood"));
}

#[test]
fn what_goes_on_without_end_is_left() {
    for command in [&["conventions", "check"][..], &["algs", "check"], &["algs", "fit"]] {
        let arguments = |place| [command, &[place]].concat();
        if cfg!(unix) {
            refused(&arguments("/dev/zero"), "/dev/zero: It is longer than");
        }
        let folder = tempfile::tempdir().unwrap();
        refused(&arguments(folder.path().to_str().unwrap()), "This is a directory; a file is needed.");
        refused(&arguments("nowhere"), "nowhere: There is no such file.");
        hoodwink()
            .args(["--language", "de"])
            .args(arguments("nowhere"))
            .assert()
            .code(2)
            .stderr(contains("nowhere: Diese Datei gibt es nicht."));
        hoodwink()
            .args(arguments("-"))
            .write_stdin("y\n".repeat(10 << 20))
            .assert()
            .code(2)
            .stderr(contains("standard input: It is longer than"));
    }
    hoodwink().args(["conventions", "check", "-"]).write_stdin("version = 1\n").assert().success();
    hoodwink()
        .args(["--conventions", "-", "conventions", "show"])
        .write_stdin("[method]\nedge = \"slice-swap\"\n")
        .assert()
        .success()
        .stdout(contains("slice-swap"));
}

#[test]
fn a_batch_names_the_line_and_goes_on() {
    let long = "R ".repeat(500_000);
    let text = format!("\u{feff}R U\n{long}\n\n\nR U K\n// nothing\nF2\n");
    let (folder, path) = file("batch.txt", text);
    let output = hoodwink().args(["trace", "--short", "--batch", &path]).assert().code(1);
    let said = String::from_utf8(output.get_output().stdout.clone()).unwrap();
    let lines: Vec<&str> = said.lines().collect();
    assert_eq!(lines.len(), 5, "{said}");
    for (line, expected) in lines.iter().zip([
        r#""line":1,"rotation"#,
        r#""error":"Line 2, column 1: The text is 1000000 bytes long; at most 65536 are read.","line":2"#,
        r#""error":"Line 5, column 5: “K” is not understood"#,
        r#""error":"There are no moves in this line.","line":6"#,
        r#""line":7,"rotation"#,
    ]) {
        assert!(line.contains(expected), "{line}");
    }
    let directory = folder.path().to_str().unwrap();
    refused(
        &["trace", "--batch", directory],
        &format!("{directory}: This is a directory; a file is needed."),
    );
}

#[test]
fn a_conventions_file_names_what_is_not_there() {
    let text = "[method]\ncorner = \"three-cycle\"\n[sheet]\ncorner = \"nowhere.csv\"\n";
    let (_folder, path) = file("mine.toml", text);
    let sentence = hoodwink().args(["conventions", "check", &path]).assert().code(2).stdout("");
    sentence.stderr(
        starts_with("hoodwink:")
            .and(contains("nowhere.csv: There is no such file."))
            .and(contains("the sheet of the corners")),
    );
}

#[test]
fn memos_have_a_bound_and_scrambles_have_moves() {
    refused(
        &["check", "--corners", &"AB".repeat(30_000), "R U"],
        "The text is 60000 bytes long; at most 16384 are read.",
    );
    refused(&["trace", ""], "There is no scramble.");
    refused(&["trace", "// a remark"], "There is no scramble.");
}

#[test]
fn signs_are_read_in_every_width() {
    let plain = hoodwink().args(["trace", "--short", "R2 U' F'"]).assert().success();
    hoodwink()
        .args(["trace", "--short", "Ｒ２ Ｕ＇　F´"])
        .assert()
        .success()
        .stdout(plain.get_output().stdout.clone());
    let seen = |moves| json(&["apply", "--json", moves])["facelets"].clone();
    assert_eq!(seen("Ｒ２ ［Ｕ，Ｒ］"), seen("R2 [U,R]"));
    let plain = hoodwink().args(["check", "--corners", "AB", "R"]).assert();
    hoodwink()
        .args(["check", "--corners", "（ａＢ）", "R"])
        .assert()
        .stdout(plain.get_output().stdout.clone());
    hoodwink()
        .args(["scramble", "--how-rare", "--where", "ｃｏｒｎｅｒ．ｔｗｉｓｔｓ ＝ ０"])
        .assert()
        .success();
}

#[test]
fn a_sheet_that_conventions_name_is_there_whatever_the_method() {
    let folder = tempfile::TempDir::new().unwrap();
    let path = folder.path().join("mine.toml");
    for method in ["", "[method]\ncorner = \"three-cycle\"\n"] {
        fs::write(&path, format!("{method}[sheet]\ncorner = \"nowhere.csv\"\n")).unwrap();
        refused(&["conventions", "check", path.to_str().unwrap()], "nowhere.csv");
    }
}

/// What the system gives a batch is bounded here as a person's machine bounds it; the lines are far more than that.
#[cfg(target_os = "linux")]
#[test]
fn a_batch_of_endless_lines_runs_to_its_end_in_little_memory() {
    use std::io::Write;
    use std::process::{Command, Stdio};
    let program = assert_cmd::cargo::cargo_bin("hoodwink");
    // 600 MB of address space; 300 lines of 4 MB, and after each a right one.
    let mut child = Command::new("sh")
        .args(["-c", "ulimit -v 600000; exec \"$0\" trace --batch - --short"])
        .arg(program)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let mut input = child.stdin.take().unwrap();
    let writing = std::thread::spawn(move || {
        let long = "R U F2 D' ".repeat(400_000);
        for _ in 0..300 {
            writeln!(input, "{long}\nR U").unwrap();
        }
    });
    let output = child.wait_with_output().unwrap();
    writing.join().unwrap();
    assert_eq!(output.status.code(), Some(1));
    let answers: Vec<&str> = std::str::from_utf8(&output.stdout).unwrap().lines().collect();
    assert_eq!(answers.len(), 600);
    for (number, answer) in answers.iter().enumerate() {
        assert_eq!(answer.contains("\"error\""), number % 2 == 0, "{answer}");
    }
}
