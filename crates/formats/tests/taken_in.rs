//! Sheets as people have them. All of them are invented.

use blind::Conventions;
use cube::Orbit;
use formats::sheet::{Reading, Remark, SheetError, TakenIn, read, take_in};
use sheet::{Layout, Sheet, Verdict};

fn taken(text: &str, kind: Option<Orbit>, buffer: Option<&str>) -> Result<TakenIn, SheetError> {
    let conventions = Conventions::default();
    let mut reading = Reading::new(&conventions);
    (reading.kind, reading.buffer) = (kind, buffer.map(str::to_owned));
    take_in(text, &reading)
}

fn sheet(text: &str) -> Sheet {
    taken(text, None, Some("UFR")).unwrap_or_else(|error| panic!("{error}: {text}")).sheet
}

/// How many rows are right, empty and something else.
fn counts(sheet: &Sheet) -> (usize, usize, usize) {
    let report = sheet.check();
    let empty = report.verdicts.iter().filter(|verdict| **verdict == Verdict::Empty).count();
    (report.right(), empty, report.wrong().count())
}

const A: &str = "[R' D' R, U]";
const B: &str = "[U, R' D' R]";

#[test]
fn a_list_needs_no_head() {
    for text in [
        format!("UBR;RDF;{A}\nRDF;UBR;{B}\n"),
        format!("1;UBR RDF;{A};mine\n2;RDF UBR;{B};\n"),
        format!("UFR\tUBR\tRDF\t{A}\nUFR\tRDF\tUBR\t{B}\n"),
        format!("BP;{A}\nPB;{B}\n"),
        format!("\"{A}\",UBR RDF\n\"{B}\",RDF UBR\n"),
    ] {
        let taken = taken(&text, None, Some("UFR")).unwrap_or_else(|error| panic!("{error}: {text}"));
        assert_eq!(counts(&taken.sheet), (2, 0, 0), "{text}");
        assert!(taken.remarks.contains(&Remark::NoHead), "{text}");
        assert_eq!(taken.sheet.layout, Layout::List);
    }
    // What is beside is kept.
    let kept = sheet(&format!("1;UBR RDF;{A};mine\n2;RDF UBR;{B};\n"));
    assert_eq!(kept.rows()[0].more, ["1", "mine"]);
    // A slip in the name of a column is told, and not taken for a row.
    let wrong = taken(&format!("first;second;algoritm\nUBR;RDF;{A}\n"), None, None);
    assert!(wrong.is_err());
}

#[test]
fn text_above_between_and_below_a_grid_is_no_target() {
    let text = format!(
        "My corners;;;\nfrom last winter;;;\n\nUFR;UBR;RDF;UBL\nUBR;-;{A};\n\nthese are slow;;;\nRDF;{B};x;\nUBL;;;/\n\nx;the same piece;;\n/;not yet;;\n"
    );
    let found = sheet(&text);
    assert_eq!(found.layout, Layout::Grid { rows_first: true });
    assert_eq!(counts(&found), (2, 12, 0), "{:?}", found.check().verdicts);
    let all: Vec<&str> = found.rows().iter().map(|row| row.named.as_str()).collect();
    for words in ["My corners", "from last winter", "these are slow", "x the same piece", "/ not yet"] {
        assert!(all.contains(&words), "{words}");
    }
}

#[test]
fn a_grid_that_fits_either_way_is_asked_about() {
    let text = format!("UFR;UBR;RDF;UBL\nUBR;;{A};\nRDF;{A};;\nUBL;;;\n");
    assert_eq!(taken(&text, None, None), Err(SheetError::OrderUnknown { right: 1 }));
    let conventions = Conventions::default();
    for rows_first in [true, false] {
        let mut reading = Reading::new(&conventions);
        reading.rows_first = Some(rows_first);
        assert_eq!(read(&text, &reading).unwrap().layout, Layout::Grid { rows_first });
    }
}

#[test]
fn several_algorithms_are_all_checked() {
    for text in [
        format!("pair;alg;alg 2\nUBR RDF;{A};R U R' U'\n"),
        format!("pair;algorithm;other way\nUBR RDF;{A};R U R' U'\n"),
        format!("pair\talgorithm\nUBR RDF\t{A} / R U R' U'\n"),
        format!("pair\talgorithm\nUBR RDF\t{A} or R U R' U'\n"),
        format!("pair\talgorithm\nUBR RDF\t{A}; R U R' U'\n"),
        format!("pair\talgorithm\nUBR RDF\t{A} | R U R' U'\n"),
    ] {
        assert_eq!(counts(&sheet(&text)), (1, 0, 1), "{text}");
    }
}

#[test]
fn moves_among_words_are_moves_and_a_note() {
    let text = format!("pair;algorithm;notes\nUBR RDF;1. {A} (nice);mine\nRDF UBR;Lefty: {B};\n");
    let found = sheet(&text);
    assert_eq!(counts(&found), (2, 0, 0));
    assert_eq!(found.rows()[0].notes, "mine; 1.; nice");
    assert_eq!((found.rows()[1].notes.as_str(), found.rows()[1].algorithm.as_str()), ("Lefty", B));
}

#[test]
fn every_kind_of_prime_is_read() {
    for prime in ["'", "’", "‘", "′", "ʹ", "ʼ", "´", "`", "＇"] {
        let text = "pair;algorithm\nUBR RDF;[R' D' R, U]\n".replace('\'', prime);
        assert_eq!(counts(&sheet(&text)), (1, 0, 0), "{prime}");
    }
}

#[test]
fn the_kind_is_told_by_the_title_or_by_what_the_algorithms_do() {
    let letters = format!("BP;{A}\nPB;{B}\n");
    let by_algorithms = taken(&letters, None, None).unwrap();
    assert!(by_algorithms.remarks.contains(&Remark::KindByAlgorithms(Orbit::Corner)));
    let titled = taken(&format!("Meine Ecken;\npair;algorithm\nBP;{A}\n"), None, None).unwrap();
    assert_eq!(titled.sheet.buffers()[0].0, Orbit::Corner);
    // Edges: a three-cycle of edges by M and U (common practice, no source).
    let edges = taken("AB;[M', U2]\nBA;[U2, M']\n", None, None).unwrap();
    assert!(edges.remarks.contains(&Remark::KindByAlgorithms(Orbit::Midge)), "{:?}", edges.remarks);
}

#[test]
fn the_buffer_of_the_file_is_compared_with_the_one_that_was_asked() {
    let text = format!("UFR;UBR;RDF\nUBR;;{A}\nRDF;{B};\n");
    let right = taken(&text, None, Some("UBL")).unwrap();
    let corner = |name| Orbit::Corner.sticker(name).unwrap();
    let remark = Remark::OtherBuffer {
        orbit: Orbit::Corner,
        found: corner("UFR"),
        asked: corner("UBL"),
        taken: corner("UFR"),
    };
    assert_eq!((right.sheet.check().right(), right.remarks), (2, vec![remark.clone()]));
    let list = format!("buffer;pair;algorithm\nUFR;UBR RDF;{A}\nUFR;RDF UBR;{B}\n");
    let right = taken(&list, None, Some("UBL")).unwrap();
    assert_eq!((right.sheet.check().right(), right.remarks), (2, vec![remark]));
}

#[test]
fn a_row_that_names_two_cases_is_named() {
    let text = format!("pair;first;second;algorithm\nBP;UBR;RDF;{A}\nAC;RDF;UBR;{B}\n");
    let found = taken(&text, None, Some("UFR")).unwrap();
    assert_eq!(found.sheet.check().right(), 2);
    assert!(matches!(&found.remarks[..], [Remark::TwoCases { line: 3, pair, .. }] if pair == "AC"));
}
