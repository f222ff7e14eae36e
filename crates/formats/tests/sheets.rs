//! Sheets as they are kept: whatever is in one is there again.

use blind::Conventions;
use cube::{Orbit, Sticker};
use formats::sheet::{Reading, SheetError, keep, kept, read, to_csv};
use formats::{Document, DocumentError};
use proptest::prelude::*;
use sheet::{CycleCase, Layout, Origin, Row, Sheet};

fn texts() -> impl Strategy<Value = String> {
    prop_oneof![Just(String::new()), "[A-Za-z0-9 ,;\"\\[\\]:'/\n|]{0,12}", "\\PC{0,6}"]
}

fn rows() -> impl Strategy<Value = Row> {
    let case = (any::<bool>(), prop::array::uniform3(0..24_usize), any::<bool>());
    let from = (0..5_usize, 0..9_u64, 0..9_u64);
    let said = (texts(), texts(), texts(), texts(), texts());
    (case, from, said, prop::collection::vec(texts(), 0..3)).prop_map(
        |((corner, at, has_case), (origin, line, column), (named, kind, buffer, algorithm, notes), more)| {
            let orbit = if corner { Orbit::Corner } else { Orbit::Midge };
            let [buffer_at, first, second] = at.map(|at| Sticker::all().nth(at).unwrap());
            let case = CycleCase::new(orbit, buffer_at, first, second).filter(|_| has_case);
            let of = if case.is_some() { Default::default() } else { [kind, buffer] };
            Row { line, column, named, of, case, algorithm, notes, origin: Origin::ALL[origin], more }
        },
    )
}

fn sheets() -> impl Strategy<Value = Sheet> {
    let layout =
        prop_oneof![Just(Layout::List), any::<bool>().prop_map(|rows_first| Layout::Grid { rows_first }),];
    (layout, prop::collection::vec(texts(), 0..3), prop::collection::vec(rows(), 0..12))
        .prop_map(|(layout, more, rows)| Sheet::laid_out(layout, more, rows))
}

proptest! {
    #[test]
    fn what_is_kept_is_there_again(sheet in sheets()) {
        prop_assert_eq!(kept(&keep(&sheet)), Ok(sheet));
    }

    #[test]
    fn nothing_nearly_right_makes_it_stumble(sheet in sheets(), at in any::<prop::sample::Index>(), put in "[{}\\[\\]\":a-z0,]{0,3}") {
        let text: Vec<char> = keep(&sheet).chars().collect();
        let place = at.index(text.len());
        let changed: String = text[..place].iter().copied().chain(put.chars()).chain(text[place + 1..].iter().copied()).collect();
        let _ = kept(&changed);
    }
}

#[test]
fn a_list_of_before_is_read_as_people_read_it() {
    // Invented.
    let text = "pair,algorithm,notes,source\nUBR RDF,\"[R' D' R, U]\",mine,a friend\nUXL RDF,R,,\n";
    let conventions = Conventions::default();
    let mut reading = Reading::new(&conventions);
    reading.buffer = Some("UFR".to_owned());
    let sheet = read(text, &reading).unwrap();
    let list = to_csv(&sheet, &conventions);
    let old = kept(&list).unwrap();
    assert_eq!(to_csv(&old, &conventions), list);
    assert_eq!(old.check().verdicts, sheet.check().verdicts);
    assert_eq!(kept(&keep(&old)).unwrap(), old);
}

#[test]
fn what_is_no_sheet_is_refused() {
    let document = |text: &str| match kept(text) {
        Err(SheetError::Document(error)) => error,
        other => panic!("{other:?}"),
    };
    let whole = keep(&Sheet::new(Vec::new()));
    assert!(matches!(document("{"), DocumentError::Malformed { .. }));
    assert!(matches!(document("{}"), DocumentError::OtherDocument { .. }));
    assert_eq!(
        document(&whole.replace("\"sheet\"", "\"lesson\"")),
        DocumentError::OtherDocument { expected: Document::Sheet, found: Some("lesson".to_owned()) }
    );
    for (from, to) in [
        ("\"rows\":[]", "\"rows\":[{\"case\":[\"corner\",\"UFR\",\"UFR\",\"UBR\"]}]"),
        ("\"rows\":[]", "\"rows\":[{\"case\":[\"corner\",\"UFR\",\"UBR\"]}]"),
        ("\"rows\":[]", "\"rows\":[{\"origin\":\"thin air\"}]"),
        ("\"rows\":[]", "\"rows\":[{\"colour\":\"red\"}]"),
        ("\"rows\":[]", "\"rose\":[]"),
        ("\"list\"", "\"spiral\""),
        ("\"version\":1", "\"version\":-1"),
    ] {
        assert!(whole.contains(from));
        assert!(matches!(document(&whole.replace(from, to)), DocumentError::Content { .. }), "{to}");
    }
    assert_eq!(kept(""), Err(SheetError::Empty));
    let long = format!("{{\"document\":\"{}\"}}", "x".repeat(16 << 20));
    assert!(matches!(document(&long), DocumentError::TooLong { .. }));
}
