//! Sheets as people have them: read in every form, accounted for row by row, nothing lost, gaps filled.
//!
//! The sheets here are invented. Known commutators are common practice, no source.

use blind::Conventions;
use cube::{Algorithm, Axis, Orbit, ParseErrorKind, Rotation, Size, State, Sticker, Turn};
use formats::sheet::{Reading, SheetError, to_csv, to_markdown};
use proptest::prelude::*;
use search::conjugate::{Conjugates, Sort};
use search::ease::Model;
use sheet::{CycleCase, Layout, Origin, Pattern, Sheet, Verdict, verdict_of};

fn corner(name: &str) -> Sticker {
    Orbit::Corner.sticker(name).unwrap()
}

fn edge(name: &str) -> Sticker {
    Orbit::Midge.sticker(name).unwrap()
}

fn read_with(text: &str, buffer: Option<&str>) -> Result<Sheet, SheetError> {
    let conventions = Conventions::default();
    let mut reading = Reading::new(&conventions);
    reading.buffer = buffer.map(str::to_owned);
    formats::sheet::read(text, &reading)
}

fn read(text: &str, buffer: &str) -> Sheet {
    read_with(text, Some(buffer)).unwrap()
}

/// Textbook counting: 24 stickers less those of the buffer's piece, times those less the ones of the first target's.
#[test]
fn there_are_378_and_440_cases() {
    for buffer in Sticker::all() {
        assert_eq!(CycleCase::all(Orbit::Corner, buffer).count(), 21 * 18);
        assert_eq!(CycleCase::all(Orbit::Midge, buffer).count(), 22 * 20);
    }
}

/// Common practice, no source: the moves and the commutator that explains them.
#[test]
fn known_commutators_are_recognised() {
    for (orbit, buffer, moves, commutator) in [
        (Orbit::Corner, "UFR", "R' D' R U R' D R U'", "[R' D' R, U]"),
        (Orbit::Corner, "DFR", "U R U R' D R U' R' D' U'", "[U: [R U R', D]]"),
        (Orbit::Midge, "UF", "M' U2 M U2", "[M', U2]"),
        (Orbit::Midge, "UF", "U R U' M' U R' U' M", "[U R U', M']"),
    ] {
        let turns = Algorithm::parse(moves, Size::THREE).unwrap().flatten();
        let found = search::factor::factored(Size::THREE, &turns).unwrap();
        assert_eq!(found.to_string(), commutator);
        let solves = |case: &CycleCase| verdict_of(*case, moves) == Verdict::Right;
        let buffer = orbit.sticker(buffer).unwrap();
        let mut cases = CycleCase::all(orbit, buffer).filter(solves);
        let case = cases.next().unwrap_or_else(|| panic!("{moves} moves the buffer"));
        assert!(cases.next().is_none());
        assert_eq!(verdict_of(case, commutator), Verdict::Right);
        assert_eq!(verdict_of(case.inverse(), commutator), Verdict::Inverse);
    }
    let case = CycleCase {
        orbit: Orbit::Corner,
        buffer: corner("UFR"),
        first: corner("UBR"),
        second: corner("RDF"),
    };
    assert_eq!(verdict_of(case, "[R' D' R, U]"), Verdict::Right);
}

#[test]
fn every_row_is_accounted_for() {
    let text = "\
case,algorithm,notes
UBR RDF,\"[R' D' R, U]\",right
RDF UBR,\"[R' D' R, U]\",backwards
UBR FRD,\"[R' D' R, U]\",another case
UBR RDF,R U R' U',four turns
UBR RDF,\"[R' D' R, U\",torn
UBR RDF,,
UBR RDF,R R',nothing
UBR RDF,\"[R' D' R, U] y\",turned
UBL RDB,\"[R' D' R, U]\",the buffer is not the question
UBR RDF,\"[M', U2]\",edges
UBR RUB,\"[R' D' R, U]\",one piece
UXR RDF,\"[R' D' R, U]\",no sticker
";
    let sheet = read(text, "UFR");
    let verdicts = sheet.check().verdicts;
    assert_eq!(verdicts.len(), 12);
    assert_eq!(verdicts[0], Verdict::Right);
    assert_eq!(verdicts[1], Verdict::Inverse);
    let actual = CycleCase {
        orbit: Orbit::Corner,
        buffer: corner("UFR"),
        first: corner("UBR"),
        second: corner("RDF"),
    };
    assert_eq!(verdicts[2], Verdict::OtherCase(actual));
    assert!(
        matches!(&verdicts[3], Verdict::NotAThreeCycle { moved, turned } if moved.len() == 7 && *turned == Rotation::NONE)
    );
    let Verdict::Unreadable(error) = &verdicts[4] else { panic!("{:?}", verdicts[4]) };
    assert!(!matches!(error.kind, ParseErrorKind::TooLong { .. }));
    assert_eq!(verdicts[5], Verdict::Empty);
    assert_eq!(verdicts[6], Verdict::DoesNothing);
    assert!(matches!(verdicts[7], Verdict::LeavesTurned(_)));
    assert_eq!(verdicts[8], Verdict::OtherCase(actual));
    assert!(matches!(verdicts[9], Verdict::OtherKind(Orbit::Midge, _)));
    assert_eq!(verdicts[10], Verdict::NoCase);
    assert_eq!(verdicts[11], Verdict::NoCase);
    assert_eq!((sheet.rows()[4].line, sheet.rows()[4].column), (6, 2));
    let without =
        verdict_of(CycleCase { buffer: corner("DBL"), first: corner("UBR"), ..actual }, "[R' D' R, U]");
    assert!(matches!(without, Verdict::WithoutBuffer(_)));
}

#[test]
fn lists_are_read_in_every_form() {
    let want = [("UBR", "RDF", "[R' D' R, U]"), ("RDF", "UBR", "[U, R' D' R]")];
    for text in [
        "first,second,algorithm\nUBR,RDF,\"[R' D' R, U]\"\nRDF,UBR,\"[U, R' D' R]\"\n",
        // Commas of commutators without quotation marks.
        "first,second,algorithm,notes\nUBR,RDF,[R' D' R, U],a\nRDF,UBR,[U, R' D' R],b\n",
        "Algorithm;Second;First;Kind;Buffer\n[R' D' R, U];RDF;UBR;corners;UFR\n[U, R' D' R];UBR;RDF;corner;UFR\n",
        "notes\tmoves\tpair\nx\t[R' D' R, U]\tUBR-RDF\ny\t[U, R' D' R]\trdf ubr\n",
        "Art;Paar;Algorithmus;Notiz\nEcke;BP;[R' D' R, U];\nEcke;PB;[U, R' D' R];\n",
        "\u{feff}pair;alg\n\nUBR RDF;[R' D' R, U]\n\nRDF UBR;[U, R' D' R] // a note\n",
    ] {
        let sheet = read(text, "UFR");
        let rows: Vec<_> = sheet
            .rows()
            .iter()
            .map(|row| {
                let case = row.case.unwrap_or_else(|| panic!("{text}: {row:?}"));
                (Orbit::Corner.name(case.first), Orbit::Corner.name(case.second), row.algorithm.as_str())
            })
            .collect();
        assert_eq!(rows, want, "{text}");
        assert_eq!(sheet.check().right(), 2);
        assert_eq!(sheet.layout, Layout::List);
    }
}

#[test]
fn grids_are_read_whichever_side_comes_first() {
    let by_rows = "UFR;UBR;RDF;UBL\nUBR;;[R' D' R, U];\nRDF;[U, R' D' R];;\nUBL;;;\n";
    let by_columns = "UFR;UBR;RDF;UBL\nUBR;;[U, R' D' R];\nRDF;[R' D' R, U];;\nUBL;;;\n";
    for (text, rows_first) in [(by_rows, true), (by_columns, false)] {
        let sheet = read_with(text, None).unwrap();
        assert_eq!(sheet.layout, Layout::Grid { rows_first });
        // Every cell is there, the empty ones too.
        assert_eq!(sheet.rows().len(), 9);
        assert_eq!(sheet.check().right(), 2);
        assert_eq!(sheet.check().wrong().count(), 0);
    }
    // By letters, and by letters with names beside them.
    for text in [
        ";B;P;A\nB;;[R' D' R, U];\nP;[U, R' D' R];;\nA;;;\n",
        "corner;B (UBR);P (RDF)\nB (UBR);;[R' D' R, U]\nP (RDF);[U, R' D' R];\n",
    ] {
        let conventions = Conventions::default();
        let mut reading = Reading::new(&conventions);
        (reading.kind, reading.buffer) = (Some(Orbit::Corner), Some("UFR".to_owned()));
        assert_eq!(formats::sheet::read(text, &reading).unwrap().check().right(), 2, "{text}");
    }
}

#[test]
fn alternatives_in_a_cell_are_rows_of_their_own() {
    let sheet = read("pair;algorithm\nUBR RDF;\"[R' D' R, U]\nR' D' R U R' D R U'\"\n", "UFR");
    assert_eq!((sheet.rows().len(), sheet.check().right()), (2, 2));
}

#[test]
fn what_is_no_sheet_is_told() {
    assert_eq!(read_with("\n \n", None), Err(SheetError::Empty));
    assert!(matches!(read_with("hello world\n", None), Err(SheetError::NoHeader { .. })));
    assert!(matches!(
        read_with("algoritm,what\nR,x\n", None),
        Err(SheetError::NoHeader { meant: Some((_, "algorithm")), .. })
    ));
    assert_eq!(read_with("first,algorithm\nUBR,R\n", None), Err(SheetError::ColumnMissing("second")));
    assert_eq!(
        read_with("first,second,notes\nUBR,RDF,x\n", None),
        Err(SheetError::ColumnMissing("algorithm"))
    );
    assert_eq!(read_with("pair,algorithm\nAB,R\n", None), Err(SheetError::KindUnknown));
    let conventions = Conventions::default();
    let mut reading = Reading::new(&conventions);
    (reading.kind, reading.buffer) = (Some(Orbit::Corner), Some("UF".to_owned()));
    let refused = formats::sheet::read("pair,algorithm\nUBR RDF,R\n", &reading);
    assert!(matches!(refused, Err(SheetError::NoBuffer { .. })));
}

#[test]
fn nothing_is_lost_on_the_way() {
    let text = "\
pair;source;algorithm;notes;learned
UBR RDF;a friend;[R' D' R, U];\"quoted \"\"word\"\", with; signs\";yes
UXR RDF;;R U;odd | name;
RDF UBR;;;;no
UBR RDF;b;R U R' (what;;
";
    let sheet = read(text, "UFR");
    assert_eq!(sheet.more, ["source", "learned"]);
    let again = read(&to_csv(&sheet, &Conventions::default()), "UFR");
    assert_eq!(again.rows().len(), sheet.rows().len());
    for (one, other) in sheet.rows().iter().zip(again.rows()) {
        assert_eq!(
            (one.case, &one.algorithm, &one.notes, one.verdict()),
            (other.case, &other.algorithm, &other.notes, other.verdict())
        );
        assert_eq!(one.more, other.more);
        assert!(one.case.is_some() || other.named == one.named, "{other:?}");
    }
    // However often it is kept and read, it stays as it is.
    assert_eq!(again.more, sheet.more);
    assert_eq!(to_csv(&again, &Conventions::default()), to_csv(&sheet, &Conventions::default()));
    let filled = again.fill(Orbit::Corner, corner("UFR"), &Model::built_in()).sheet;
    let back = read(&to_csv(&filled, &Conventions::default()), "UFR");
    let origins = |sheet: &Sheet| sheet.rows().iter().map(|row| row.origin).collect::<Vec<_>>();
    assert_eq!(
        (origins(&back), to_csv(&back, &Conventions::default())),
        (origins(&filled), to_csv(&filled, &Conventions::default()))
    );
    let words = ["letters", "targets", "algorithm", "moves", "notes", "what it does"];
    let said = |_: &sheet::Row, verdict: &Verdict| verdict.name().to_owned();
    let markdown = to_markdown(&sheet, Orbit::Corner, corner("UFR"), &Conventions::default(), words, &said);
    // Those that are not right are there as well, and marked.
    assert_eq!(markdown.lines().count(), 5);
    assert_eq!(markdown.lines().filter(|line| line.contains("✗ ")).count(), 2, "{markdown}");
    let refused = to_csv(&sheet, &Conventions::default());
    assert!(refused.lines().next().unwrap().contains(",verdict"), "{refused}");
    assert!(markdown.contains("| BP | UBR RDF | [R' D' R, U] | 8 |"), "{markdown}");
}

/// A text as it is read, kept and read again, as often as a page does it.
fn kept(text: &str) -> Sheet {
    let conventions = Conventions::default();
    let once = read(text, "UFR");
    let again = read(&to_csv(&once, &conventions), "UBL");
    assert_eq!(
        to_csv(&read(&to_csv(&again, &conventions), "UBL"), &conventions),
        to_csv(&again, &conventions)
    );
    assert_eq!(again.check().verdicts, once.check().verdicts, "{text}");
    let joined = Sheet::new(Vec::new()).joined(&once);
    assert_eq!(read(&to_csv(&joined, &conventions), "UBL").check().verdicts, once.check().verdicts, "{text}");
    again
}

fn has(sheet: &Sheet, text: &str) -> bool {
    to_csv(sheet, &Conventions::default()).contains(text)
}

#[test]
fn what_is_kept_says_the_same_whatever_columns_are_called() {
    // A further column that would be read as the case if its name counted.
    let sheet = kept("case,letters,algorithm\nUBR RDF,AB,\"[R' D' R, U]\"\n");
    assert_eq!((sheet.check().right(), sheet.rows()[0].more.as_slice()), (1, &["AB".to_owned()][..]));
    // Two targets in columns of their own count, the pair beside them is kept.
    let sheet = kept("pair;first;second;algorithm\nXX;UBR;RDF;[R' D' R, U]\n");
    assert_eq!((sheet.check().right(), sheet.more.as_slice()), (1, &["pair".to_owned()][..]));
    // Columns without names, and of one name.
    let sheet = kept("pair;algorithm;;\nUBR RDF;[R' D' R, U];one;two\n");
    assert_eq!(sheet.rows()[0].more, ["one", "two"]);
    let sheet = kept("pair;algorithm;source;source\nUBR RDF;[R' D' R, U];one;two\n");
    assert_eq!(sheet.rows()[0].more, ["one", "two"]);
    // A column that is no kind after all, and one called as a column of ours.
    assert!(has(&kept("pair;type;algorithm\nUBR RDF;nine mover;[R' D' R, U]\n"), "nine mover"));
    assert!(has(&kept("pair;as written;algorithm\nUBR RDF;by hand;[R' D' R, U]\n"), "by hand"));
    // A name with what sets cells apart.
    let sheet = kept("pair\talgorithm\twhere; from\nUBR RDF\t[R' D' R, U]\tclub\n");
    assert_eq!((sheet.check().right(), sheet.more.as_slice()), (1, &["where; from".to_owned()][..]));
}

#[test]
fn an_open_bracket_takes_no_cells_with_it() {
    let sheet = kept(
        "first,second,algorithm,notes,source\nUBR,RDF,\"[R' D' R, U\",my note,a friend\nRDF,UBR,\"[U, R' D' R]\",see [1,x\n",
    );
    assert_eq!(
        (sheet.rows()[0].algorithm.as_str(), sheet.rows()[0].notes.as_str()),
        ("[R' D' R, U", "my note")
    );
    assert_eq!(
        (sheet.rows()[1].notes.as_str(), sheet.rows()[1].more.as_slice()),
        ("see [1", &["x".to_owned()][..])
    );
    assert_eq!(sheet.check().right(), 1);
}

#[test]
fn what_belongs_to_no_case_is_kept_as_well() {
    // Kind and buffer of a row whose targets cannot be read.
    let sheet = kept("kind;buffer;pair;algorithm\ncorner;UFR;U?R RDF;R U\ncorner;what;UBR RDF;R\n");
    assert_eq!(sheet.rows()[0].of, ["corner", "UFR"]);
    assert_eq!(sheet.rows()[1].of, ["corner", "what"]);
    // A title above the head of a list or of a grid, and words in the corner.
    let sheet = kept("My corners, 2026\npair,algorithm\nUBR RDF,\"[R' D' R, U]\"\n");
    assert_eq!((sheet.check().right(), sheet.check().wrong().count()), (1, 0));
    assert!(has(&sheet, "My corners"));
    let sheet = kept("My corners\nby heart;UBR;RDF\nUBR;-;[R' D' R, U]\nRDF;[U, R' D' R];-\n");
    assert_eq!((sheet.check().right(), sheet.check().wrong().count()), (2, 0));
    assert!(has(&sheet, "My corners") && has(&sheet, "by heart"));
}

#[test]
fn a_mistake_that_most_rows_share_is_one_mistake() {
    let whole = Sheet::new(Vec::new()).fill(Orbit::Corner, corner("UFR"), &Model::built_in()).sheet;
    let pattern = |head: &str, buffer: &str, line: &dyn Fn(&str, &str) -> String| {
        let mut text = format!("{head}\n");
        for row in whole.rows().iter().take(40) {
            let case = row.case.unwrap();
            let [first, second] = [case.first, case.second].map(|target| Orbit::Corner.name(target));
            text.extend([&line(first, second), ";", &row.algorithm, "\n"]);
        }
        read(&text, buffer).check().pattern()
    };
    let head = "first;second;algorithm";
    assert_eq!(pattern(head, "UFR", &|first, second| format!("{first};{second}")), None);
    assert_eq!(pattern(head, "UFR", &|first, second| format!("{second};{first}")), Some(Pattern::Exchanged));
    assert_eq!(
        pattern(head, "DBL", &|first, second| format!("{first};{second}")),
        Some(Pattern::OtherBuffer)
    );
    assert_eq!(pattern(head, "UFR", &|first, _| format!("{first};{first}")), Some(Pattern::NoCases));
    let edges = pattern("kind;buffer;first;second;algorithm", "UFR", &|_, _| "edge;UF;UB;DR".to_owned());
    assert_eq!(edges, Some(Pattern::OtherKind));
    // Two rows are no pattern.
    let two = read("pair;algorithm\nRDF UBR;[R' D' R, U]\nUBR RDF;[U, R' D' R]\n", "UFR");
    assert_eq!((two.check().wrong().count(), two.check().pattern()), (2, None));
}

#[test]
fn letters_of_pairs_are_no_names_of_edges() {
    // BD, DF and LU are pairs of letters here, and stickers of edges as well.
    let text = "Case,Algorithm\nBD,R\nDF,R\nLU,R\nAP,R\n";
    let sheet = read_with(text, Some("UFR")).unwrap();
    assert!(sheet.rows().iter().all(|row| row.case.is_none_or(|case| case.orbit == Orbit::Corner)));
    assert_eq!(read_with(text, None), Err(SheetError::KindUnknown));
}

#[test]
fn lines_are_counted_alike_whatever_ends_them() {
    let text = "pair;algorithm\nUBR RDF;[R' D' R, U]\nRDF UBR;\"[U, R' D' R]\nR\"\nUBR RDF;R\n";
    let lines = |text: &str| read(text, "UFR").rows().iter().map(|row| row.line).collect::<Vec<_>>();
    assert_eq!(lines(text), [2, 3, 3, 5]);
    assert_eq!(lines(&text.replace('\n', "\r\n")), lines(text));
}

#[test]
fn a_note_is_not_taken_for_algorithms() {
    let sheet = kept("pair;algorithm\nUBR RDF;[R' D' R, U] // good / quick\n");
    assert_eq!((sheet.rows().len(), sheet.rows()[0].notes.as_str()), (1, "good / quick"));
    let sheet = kept("pair;algorithm\nUBR RDF;// to be learned\n");
    assert_eq!((sheet.check().wrong().count(), sheet.rows()[0].notes.as_str()), (0, "to be learned"));
}

#[test]
fn a_kept_sheet_may_come_back_from_a_program_for_tables() {
    let conventions = Conventions::default();
    let sheet = kept("pair;algorithm;source\nUBR RDF;[R' D' R, U];club\n");
    let csv = to_csv(&sheet, &conventions);
    assert!(csv.contains("corner,UFR,UBR,RDF,BP,"), "{csv}");
    // Semicolons, as such programs write them in half of the world.
    let with_semicolons = csv.replace("\"[R' D' R, U]\"", "[R' D' R| U]").replace(',', ";").replace('|', ",");
    assert_eq!(to_csv(&read(&with_semicolons, "UBL"), &conventions), csv);
}

#[test]
fn a_column_of_ones_own_called_origin_is_kept() {
    let sheet = read("pair;algorithm;origin\nUBR RDF;[R' D' R, U];a friend\n", "UFR");
    assert_eq!((sheet.more.as_slice(), sheet.rows()[0].origin), (&["origin".to_owned()][..], Origin::Sheet));
    assert_eq!(sheet.rows()[0].more, ["a friend"]);
}

#[test]
fn rows_that_name_nothing_need_no_kind() {
    let sheet = read("pair;algorithm\nUXR RDF;R U\n", "UFR");
    assert_eq!(
        formats::sheet::read(
            &to_csv(&sheet, &Conventions::default()),
            &Reading::new(&Conventions::default())
        )
        .unwrap()
        .rows()
        .len(),
        1
    );
    let named =
        formats::sheet::read("first,second,algorithm\nA,B,R\n", &Reading::new(&Conventions::default()));
    assert_eq!(named, Err(SheetError::KindUnknown));
}

#[test]
fn algorithms_are_taken_in_and_out() {
    let sheet = read("pair,algorithm\nUBR RDF,\"[R' D' R, U]\"\nUX RDF,R\n", "UFR");
    let case = sheet.rows()[0].case.unwrap();
    // The same turns, written otherwise, are no second algorithm.
    assert_eq!(sheet.with(case, "R' D' R U R' D R U'", Origin::Sheet), sheet);
    let two = sheet.with(case.inverse(), "[U, R' D' R]", Origin::Inverse);
    assert_eq!((two.rows().len(), two.check().right()), (3, 2));
    assert_eq!(two.without(case.inverse(), "U R' D' R U' R' D R"), sheet);
    assert_eq!(two.without(case, "[U, R' D' R]"), two);
    let unreadable = sheet.with(case, "R U what", Origin::Sheet);
    assert_eq!(unreadable.without(case, "R U what"), sheet);
    // What cannot be read belongs to no buffer and stays until it is taken out by itself.
    assert_eq!(two.without_unread("UX RDF", "R").rows().len(), 2);
    assert_eq!(two.without_unread("UX RDF", "R2"), two);
    assert_eq!(two.without_buffer(Orbit::Corner, corner("UFR")).rows().len(), 1);
    assert_eq!(two.without_buffer(Orbit::Corner, corner("UBL")), two);
}

/// Against the long way: every image of every row made as turns and applied.
#[test]
fn alternatives_are_all_images_of_the_rows() {
    let text = "pair;algorithm\nUBR RDF;[R' D' R, U]\nUBL RDF;[U2, R' D' R]\nUFL DFR;[R: [U, R' D' R]]\nUBL UBR;R U\n";
    let sheet = read(text, "UFR");
    let (search, model) = (Conjugates::new(Size::THREE, Sort::ThreeCycle(Orbit::Corner)), Model::built_in());
    let mut images: Vec<Vec<Turn>> = Vec::new();
    for row in sheet.rows().iter().filter(|row| row.verdict() == Verdict::Right) {
        let written = Algorithm::parse(&row.algorithm, Size::THREE).unwrap();
        for seen in [written.mirrored(Axis::X), written] {
            for rotation in Rotation::all() {
                let made = seen.rotated(rotation);
                images.extend([made.inverse().flatten(), made.flatten()]);
            }
        }
    }
    let mut origins = std::collections::BTreeSet::new();
    for case in CycleCase::all(Orbit::Corner, corner("UFR")) {
        let found = sheet.alternatives(case, &search, &model);
        let wanted =
            blind::letters_state(Size::THREE, Orbit::Corner, case.buffer, &[case.first, case.second])
                .unwrap();
        let does = |turns: &[Turn]| State::solved(Size::THREE).after(turns);
        let mut expected: Vec<&Vec<Turn>> = images.iter().filter(|turns| does(turns) == wanted).collect();
        expected.sort();
        expected.dedup();
        let mut made: Vec<Vec<Turn>> = found
            .iter()
            .filter(|known| known.origin != Origin::Search)
            .map(|known| known.algorithm.flatten())
            .collect();
        made.sort();
        assert_eq!(made.iter().collect::<Vec<_>>(), expected, "{case:?}");
        assert!(found.iter().all(|known| does(&known.algorithm.flatten()) == wanted));
        assert!(found.is_sorted_by_key(|known| known.milliseconds));
        assert!(!found.is_empty());
        origins.extend(found.iter().map(|known| known.origin));
    }
    assert_eq!(origins.into_iter().collect::<Vec<_>>(), Origin::ALL);
}

#[test]
fn gaps_are_filled_from_what_is_there_and_by_search() {
    let model = Model::built_in();
    let sheet = read("pair;algorithm\nUBR RDF;[R' D' R, U]\nRDF FDL;R U\n", "UFR");
    let filled = sheet.fill(Orbit::Corner, corner("UFR"), &model);
    assert_eq!(filled.sheet.check().right(), 378);
    // The wrong row stays as it was.
    assert_eq!(filled.sheet.rows()[..2], *sheet.rows());
    assert_eq!(filled.by_origin.values().sum::<usize>(), 377);
    assert_eq!(filled.by_origin[&Origin::Inverse], 1);
    assert!(filled.by_origin[&Origin::Mirror] > 0 && filled.by_origin[&Origin::Search] > 300);
    let mirror_keeps = CycleCase {
        orbit: Orbit::Corner,
        buffer: corner("UFR"),
        first: corner("UFL"),
        second: corner("FDR"),
    };
    // The mirror that exchanges R and F keeps the buffer's U sticker where it is.
    let row = |case: CycleCase| filled.sheet.rows().iter().find(|row| row.case == Some(case)).unwrap();
    assert!(matches!(row(mirror_keeps).origin, Origin::Mirror | Origin::Rotation), "{:?}", row(mirror_keeps));
    let edges = read("kind,pair,algorithm\nedge,UB DB,\"[M', U2]\"\n", "UF");
    let (orbit, buffer) = edges.buffers()[0];
    assert_eq!((orbit, buffer), (Orbit::Midge, edge("UF")));
    assert_eq!(
        edges
            .fill(orbit, buffer, &model)
            .sheet
            .rows()
            .iter()
            .filter(|row| row.verdict() == Verdict::Right)
            .count(),
        440
    );
}

#[test]
fn statistics_tell_coverage_and_what_is_slow() {
    let model = Model::built_in();
    let sheet = read(
        "pair;algorithm\nUBR RDF;[R' D' R, U]\nRDF UBR;B2 B2 F2 D2 [U, R' D' R] D2 F2 B B'\nUBL RDF;R\n",
        "UFR",
    );
    // The padded one is not a three-cycle of the case; this one is.
    let text = "pair;algorithm\nUBR RDF;[R' D' R, U]\nRDF UBR;B F R' B2 R F' R' B2 R B' U U'\n";
    assert!(sheet.statistics(Orbit::Corner, corner("UFR"), &model).covered < 3);
    let found = read(text, "UFR").statistics(Orbit::Corner, corner("UFR"), &model);
    assert_eq!((found.cases, found.covered, found.missing.len()), (378, 2, 376));
    assert!((found.mean_moves - f64::midpoint(8.0, 10.0)).abs() < 1e-9);
    assert_eq!(found.slow.len(), 1);
    assert_eq!(found.slow[0].best.algorithm.flatten().len(), 8);
    assert_eq!(found.worst[0].0, found.slow[0].case);
}

fn cell() -> impl Strategy<Value = String> {
    prop_oneof![
        "[A-Xa-x]{0,3}",
        "[RUFLDBMESxyz'2w \\[\\],:;()]{0,16}",
        "\\PC{0,12}",
        Just("first".to_owned()),
        Just("second".to_owned()),
        Just("algorithm".to_owned()),
        Just("pair".to_owned()),
        Just("UBR".to_owned()),
        Just("UF".to_owned()),
    ]
}

proptest! {
    #[test]
    fn no_text_makes_it_stumble(rows in proptest::collection::vec(proptest::collection::vec(cell(), 1..6), 0..6), sign in "[,;\t]") {
        let text: String = rows.iter().map(|row| row.join(&sign) + "\n").collect();
        if let Ok(sheet) = read_with(&text, None) {
            prop_assert_eq!(sheet.check().verdicts.len(), sheet.rows().len());
            // What is kept can be read back, with any cells, and stays as it is.
            let kept = to_csv(&sheet, &Conventions::default());
            let again = read_with(&kept, None).unwrap();
            prop_assert_eq!(again.rows().len(), sheet.rows().len());
            prop_assert_eq!(to_csv(&again, &Conventions::default()), kept.clone());
            let both = again.joined(&sheet);
            prop_assert!(both.rows().len() >= sheet.rows().len());
            prop_assert_eq!(read_with(&to_csv(&both, &Conventions::default()), None).unwrap().rows().len(), both.rows().len());
            // Every cell is still there, but for names of cases, which may stand there as stickers, and what a comma tore.
            for cell in rows.iter().flatten().map(|cell| cell.trim().trim_matches('"')) {
                let mut words = cell.split(|sign: char| !sign.is_alphanumeric()).filter(|word| !word.is_empty());
                let names = words.all(|word| word.chars().count() <= 3) || ["first", "second", "algorithm", "pair"].contains(&cell);
                let torn = cell.contains(['[', ']', '"', ';', ',', '\t', '\n', '/']) || sign == ",";
                prop_assert!(names || torn || kept.contains(cell), "{cell:?} is lost: {kept}");
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(8))]

    #[test]
    fn a_filled_row_inverted_solves_the_inverse(at in 0..378usize) {
        let case = CycleCase::all(Orbit::Corner, corner("UFR")).nth(at).unwrap();
        let sheet = Sheet::new(Vec::new()).fill(Orbit::Corner, corner("UFR"), &Model::built_in()).sheet;
        let row = sheet.rows().iter().find(|row| row.case == Some(case)).unwrap();
        let algorithm = Algorithm::parse(&row.algorithm, Size::THREE).unwrap();
        prop_assert_eq!(verdict_of(case.inverse(), &algorithm.inverse().to_string()), Verdict::Right);
    }
}
