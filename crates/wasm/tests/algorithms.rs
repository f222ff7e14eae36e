//! Sheets of algorithms as a page asks for them. The sheets here are invented; known commutators are common practice, no
//! source.

mod page;

use cube::{Algorithm, Size, State};
use page::Page;
use serde_json::{Value, json};

/// Corners by three-cycles from UFR.
const CONVENTIONS: &str = "[buffer]\ncorner = \"UFR\"\n\n[method]\ncorner = \"three-cycle\"\n";

fn subject(page: &mut Page) -> Value {
    json!({ "conventions": page.tell("conventions", CONVENTIONS), "kind": "corner", "buffer": "" })
}

/// The name of a sheet as the engine wrote it; none for an empty one.
fn kept(page: &mut Page, sheet: &str) -> Value {
    if sheet.is_empty() { Value::Null } else { page.tell("sheet", sheet) }
}

fn brought(page: &mut Page, sheet: &str, text: &str) -> Value {
    let (conventions, sheet) = (page.tell("conventions", CONVENTIONS), kept(page, sheet));
    json!({ "conventions": conventions, "sheet": sheet, "text": text, "kind": "corner", "buffer": "" })
}

fn bring(page: &mut Page, sheet: &str, text: &str) -> Result<Value, String> {
    let brought = brought(page, sheet, text);
    page.ask("import", &brought)
}

/// A list with a right row, one under the wrong letters, an empty one, one that cannot be read, and one without a case.
const LIST: &str = "\
pair,algorithm,notes
UBR RDF,\"[R' D' R, U]\",by heart
UBR FRD,\"[R' D' R, U]\",
UBL UBR,,ask the coach
UBL RDF,R U [what,
UXL RDF,R U R',
";

fn imported(page: &mut Page) -> Value {
    bring(page, "", LIST).unwrap()
}

fn cases(page: &mut Page, sheet: &str, text: &str, only: &str) -> Value {
    let (subject, sheet) = (subject(page), kept(page, sheet));
    page.ask("cases", &json!({ "subject": subject, "sheet": sheet, "text": text, "only": only })).unwrap()
}

fn shown(view: &Value) -> Vec<String> {
    let cells = view["rows"].as_array().unwrap().iter().flat_map(|row| row.as_array().unwrap());
    let shown = cells.filter(|cell| cell["shown"] == true);
    shown
        .map(|cell| format!("{} {}", cell["first"].as_str().unwrap(), cell["second"].as_str().unwrap()))
        .collect()
}

fn chosen(page: &mut Page, first: &str, second: &str) -> Value {
    json!({ "subject": subject(page), "first": first, "second": second })
}

fn of_sheet(page: &mut Page, sheet: &str, first: &str, second: &str) -> Value {
    json!({ "chosen": chosen(page, first, second), "sheet": kept(page, sheet) })
}

#[test]
fn every_row_that_is_taken_in_is_accounted_for() {
    let mut page = Page::default();
    let import = imported(&mut page);
    assert_eq!(
        import["said"],
        json!([
            "Read as a list.",
            "5 cells: 1 right, 1 wrong, 1 empty, 2 not understood.",
            "Wrong: line 3, column 2.",
            "Not understood: line 5, column 2; line 6, column 2.",
        ])
    );
    assert_eq!(import["question"], "");
    let rows = import["rows"].as_array().unwrap();
    let said: Vec<&str> = rows.iter().map(|row| row["said"].as_str().unwrap()).collect();
    assert_eq!(said[0], "right");
    assert!(said[1].starts_with("solves BP"), "{}", said[1]);
    assert_eq!(said[2], "no algorithm");
    assert!(said[3].starts_with("cannot be read"), "{}", said[3]);
    assert!(said[4].starts_with("the case “UXL RDF” cannot be read"), "{}", said[4]);
    assert_eq!(rows[1]["place"], "line 3, column 2");
    assert_eq!(rows.iter().filter(|row| row["wrong"] == true).count(), 3);
    let sheet = import["sheet"].as_str().unwrap();
    assert!(sheet.contains("ask the coach"));
    // The same once more adds nothing; what is kept can be read back.
    let again = bring(&mut page, sheet, LIST).unwrap();
    assert_eq!(again["sheet"], import["sheet"]);
    assert_eq!((&again["kind"], &again["buffer"]), (&json!("corner"), &json!("UFR")));
}

#[test]
fn a_file_is_taken_in_as_its_bytes_are_and_asked_about_when_most_is_wrong() {
    let mut page = Page::default();
    // UTF-16 with its mark, as an address of data (RFC 2397).
    let units = "pair;algorithm\nUBR RDF;[R’ D’ R, U]\n".encode_utf16().flat_map(u16::to_le_bytes);
    let bytes: Vec<u8> = [0xff, 0xfe].into_iter().chain(units).collect();
    let address = format!("data:text/csv;base64,{}", base64(&bytes));
    let import = bring(&mut page, "", &address).unwrap();
    assert_eq!(import["said"][1], "1 cell: 1 right, 0 wrong, 0 empty, 0 not understood.");
    assert!(bring(&mut page, "", "data:image/png;base64,iVBORw0KGgoAAAAN").unwrap_err().contains("no text"));
    // Corners that are taken for edges.
    let rows = ["AC", "CA", "AD", "DA"].map(|pair| format!("{pair};[R' D' R, U]\n")).concat();
    let mut asked = brought(&mut page, "", &format!("pair;algorithm\n{rows}"));
    asked["kind"] = json!("edge");
    let import = page.ask("import", &asked).unwrap();
    assert!(import["question"].as_str().unwrap().contains("not for this kind"), "{}", import["question"]);
}

/// After RFC 4648.
fn base64(bytes: &[u8]) -> String {
    const SIGNS: &[u8] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    let mut text = String::new();
    for chunk in bytes.chunks(3) {
        let word =
            chunk.iter().enumerate().fold(0u32, |word, (at, &byte)| word | u32::from(byte) << (16 - 8 * at));
        for at in 0..4 {
            let sign = SIGNS[(word >> (18 - 6 * at)) as usize & 63];
            text.push(if at <= chunk.len() { char::from(sign) } else { '=' });
        }
    }
    text
}

#[test]
fn a_grid_is_read_whichever_target_comes_first() {
    let mut page = Page::default();
    let grid = ",UBR,RDF\nUBR,,\"[R' D' R, U]\"\nRDF,,\n";
    let import = bring(&mut page, "", grid).unwrap();
    assert_eq!(import["said"][0], "Read as a grid, the first target at the left.");
    let other = ",UBR,RDF\nUBR,,\nRDF,\"[R' D' R, U]\",\n";
    let import = bring(&mut page, "", other).unwrap();
    assert_eq!(import["said"][0], "Read as a grid, the first target along the top.");
}

#[test]
fn what_is_no_sheet_is_refused_in_a_sentence() {
    let mut page = Page::default();
    let mut letters = brought(&mut page, "", "first,second,algorithm\nA,B,R U\n");
    letters["kind"] = "".into();
    assert_eq!(
        page.ask("import", &letters).unwrap_err(),
        "It cannot be told whether these are corners or edges; choose it before you open the file."
    );
    assert!(bring(&mut page, "", "").unwrap_err().contains("empty"));
    assert!(bring(&mut page, "", "hello\nthere\n").unwrap_err().contains("neither a list nor a grid"));
    let long = "a".repeat((4 << 20) + 1);
    assert!(bring(&mut page, "", &long).unwrap_err().contains("longer than 4 MiB"));
}

/// Textbook counting: 21 · 18 and 22 · 20.
#[test]
fn the_grid_has_every_case_once() {
    let mut page = Page::default();
    let view = cases(&mut page, "", "", "all");
    assert_eq!(shown(&view).len(), 21 * 18);
    assert_eq!(view["heads"].as_array().unwrap().len(), 21);
    assert!(view["coverage"].as_str().unwrap().contains("0 of 378"));
    assert_eq!(view["means"], "");
    let mut edges = subject(&mut page);
    edges["kind"] = "edge".into();
    let view = page
        .ask("cases", &json!({ "subject": edges, "sheet": null, "text": "", "only": "missing" }))
        .unwrap();
    assert_eq!(shown(&view).len(), 22 * 20);
}

#[test]
fn cases_are_filtered_by_letters_stickers_moves_notes_and_state() {
    let mut page = Page::default();
    let sheet = imported(&mut page)["sheet"].as_str().unwrap().to_owned();
    let mut only = |text: &str, only: &str| shown(&cases(&mut page, &sheet, text, only));
    assert_eq!(only("", "right"), ["UBR RDF"]);
    assert_eq!(only("", "wrong"), ["UBL RDF", "UBR FDR"]);
    assert_eq!(only("", "missing").len(), 377);
    assert_eq!(only("bp", "all"), ["UBR RDF"]);
    assert_eq!(only("b", "all").len(), 18);
    assert_eq!(only("ubr", "all").len(), 18 + 18);
    assert_eq!(only("UBR RDF", "all"), ["UBR RDF"]);
    // Another kind of prime, other blanks.
    assert_eq!(only("[R\u{2019}D\u{2019}R", "right"), ["UBR RDF"]);
    assert_eq!(only("coach", "all"), ["UBL UBR"]);
    assert_eq!(only("nowhere", "all"), [] as [&str; 0]);
    let view = cases(&mut page, &sheet, "", "all");
    let troubles = view["troubles"].as_array().unwrap();
    assert_eq!(troubles.len(), 3);
    let cell = view["rows"].as_array().unwrap().iter().flat_map(|row| row.as_array().unwrap());
    let cell = cell.into_iter().find(|cell| cell["letters"] == "BP").unwrap();
    assert_eq!((&cell["has"], &cell["said"]), (&json!("right"), &json!("BP (UBR RDF): right")));
}

#[test]
fn slow_cases_are_told_when_asked_for() {
    let mut page = Page::default();
    let slow = "pair,algorithm\nUBR RDF,\"B R' B2 R F R' B2 R F' B'\"\nRDF UBR,\"[U, R' D' R]\"\n";
    let sheet = bring(&mut page, "", slow).unwrap();
    let sheet = sheet["sheet"].as_str().unwrap();
    assert_eq!(shown(&cases(&mut page, sheet, "", "slow")), ["UBR RDF"]);
    let view = cases(&mut page, sheet, "bp", "all");
    assert!(view.to_string().contains("right, but a much easier one is known"));
}

#[test]
fn what_solves_a_case_is_ranked_and_can_be_taken_in_and_out() {
    let mut page = Page::default();
    let sheet = imported(&mut page)["sheet"].as_str().unwrap().to_owned();
    let of = of_sheet(&mut page, &sheet, "RDF", "UBR");
    let view = page.ask("case", &of).unwrap();
    assert_eq!(view["title"], "PB (RDF UBR)");
    let ways = view["ways"].as_array().unwrap();
    let inverse = ways.iter().find(|way| way["origin"] == "inverse").unwrap();
    assert_eq!((&inverse["algorithm"], &inverse["kept"]), (&json!("[U, R' D' R]"), &json!(false)));
    assert_eq!(inverse["moves"].as_array().unwrap().len(), 8);
    let seconds = |way: &Value| way["time"].as_str().unwrap().trim_end_matches(" s").parse::<f64>().unwrap();
    assert!(ways.is_sorted_by_key(|way| (seconds(way) * 100.0) as u32));
    let wanted = Algorithm::parse("[U, R' D' R]", Size::THREE).unwrap().flatten();
    let wanted = State::solved(Size::THREE).after(&wanted);
    for way in ways {
        let made = Algorithm::parse(way["algorithm"].as_str().unwrap(), Size::THREE).unwrap().flatten();
        assert_eq!(State::solved(Size::THREE).after(&made), wanted, "{way}");
    }

    let mut change = |sheet: &str, what: &str, algorithm: &str| {
        let change = json!({ "what": what, "first": "RDF", "second": "UBR", "algorithm": algorithm });
        let (subject, sheet) = (subject(&mut page), kept(&mut page, sheet));
        page.ask("amend", &json!({ "subject": subject, "sheet": sheet, "change": change }))
    };
    let taken = change(&sheet, "take", "[U, R' D' R]").unwrap();
    assert_eq!(taken["said"], "Taken into the sheet.");
    let taken = taken["sheet"].as_str().unwrap().to_owned();
    assert_ne!(taken, sheet);
    let dropped = change(&taken, "drop", "U R' D' R U' R' D R").unwrap();
    assert_eq!(dropped["sheet"], sheet.as_str());
    let refused = change(&sheet, "take", "[R' D' R, U]").unwrap_err();
    assert_eq!(refused, "Not taken in: it solves the inverse, BP (UBR RDF).");
    assert!(change(&sheet, "take", "R U K").unwrap_err().contains("column 5"));
    let none = json!({ "what": "take", "first": "UFR", "second": "UBR", "algorithm": "R" });
    let asked = json!({ "subject": subject(&mut page), "sheet": kept(&mut page, &sheet), "change": none });
    assert!(page.ask("amend", &asked).is_err());
    // What stands under a case and does something else can be taken out as well.
    let of = of_sheet(&mut page, &sheet, "UBL", "RDF");
    let view = page.ask("case", &of).unwrap();
    assert_eq!(view["troubles"][0]["algorithm"], "R U [what");
}

#[test]
fn gaps_are_filled_and_all_is_taken_out() {
    let mut page = Page::default();
    let sheet = imported(&mut page)["sheet"].as_str().unwrap().to_owned();
    let mut change = |sheet: &str, what: &str| {
        let (subject, sheet) = (subject(&mut page), kept(&mut page, sheet));
        page.ask("amend", &json!({ "subject": subject, "sheet": sheet, "change": { "what": what } })).unwrap()
    };
    let filled = change(&sheet, "fill");
    assert!(
        filled["said"].as_str().unwrap().starts_with("Filled in 377 cases: 1 inverse, "),
        "{}",
        filled["said"]
    );
    let full = filled["sheet"].as_str().unwrap().to_owned();
    let cleared = change(&full, "clear");
    // The row whose case cannot be read belongs to no buffer.
    assert!(cleared["sheet"].as_str().unwrap().contains("UXL RDF"));
    let view = cases(&mut page, &full, "", "right");
    assert_eq!(shown(&view).len(), 378);
    assert!(view["means"].as_str().unwrap().contains("On average"));
}

/// Eight turns are the least: the same as `hoodwink algs find` proves (BENCHMARKS.md counts the cases by length).
#[test]
fn a_search_in_the_page_is_proven_and_right() {
    let mut page = Page::default();
    let chosen = chosen(&mut page, "UBR", "RDF");
    let search = |moves: &str, longest: u8| json!({ "chosen": chosen, "sheet": null, "moves": moves, "longest": longest });
    let mut progress = Vec::new();
    let arguments = search("R U D", 9).to_string();
    let found = page.engine.call("find", "en", &arguments, &mut |now| progress.push(now)).unwrap();
    assert!(!progress.is_empty());
    let found: Value = serde_json::from_str(&found).unwrap();
    assert!(found["said"][0].as_str().unwrap().contains("8 turns, proven shortest"), "{}", found["said"]);
    let wanted = Algorithm::parse("[R' D' R, U]", Size::THREE).unwrap().flatten();
    let wanted = State::solved(Size::THREE).after(&wanted);
    let ways = found["ways"].as_array().unwrap();
    assert!(ways.iter().any(|way| way["algorithm"] == "[R' D' R, U]"), "{ways:?}");
    for way in ways {
        let made = Algorithm::parse(way["algorithm"].as_str().unwrap(), Size::THREE).unwrap().flatten();
        assert_eq!(State::solved(Size::THREE).after(&made), wanted);
    }
    assert!(
        page.ask("find", &search("R U", 7)).unwrap()["said"][0].as_str().unwrap().contains("none up to 7")
    );
    assert!(page.ask("find", &search("R K", 7)).unwrap_err().contains("“K”"));
    assert!(page.ask("find", &search("", 7)).is_err());
    let wide = page.ask("find", &search("U D R L F B Uw Dw Rw Lw Fw Bw M E S", 12));
    assert!(wide.unwrap_err().contains("the 512 MiB that a page may take"));
}

#[test]
fn an_algorithm_is_shown_from_the_case_to_the_solved_pieces() {
    let mut page = Page::default();
    let looking = json!({ "eye": null, "right": 0.0, "down": 0.0, "hidden": "no" });
    let chosen = chosen(&mut page, "UBR", "RDF");
    let mut at = |moves: u32, progress: f64| {
        let turned = json!({
            "chosen": chosen, "algorithm": "[R' D' R, U]",
            "looking": looking, "at": moves, "progress": progress,
        });
        page.ask("turned", &turned).unwrap()["svg"].as_str().unwrap().to_owned()
    };
    let (begin, middle, end) = (at(0, 0.0), at(0, 0.5), at(8, 0.0));
    assert!(begin != middle && begin != end);
    assert_eq!(end, at(99, 0.0));
    // In the end the three pieces are home, as the picture of the case has them.
    let pictured = json!({ "subject": subject(&mut page), "cases": [["UBR", "RDF"], ["UBL", "RDF"]] });
    let pictures = page.ask("pictures", &pictured).unwrap();
    assert_eq!(pictures.as_array().unwrap().len(), 2);
    let colours = |svg: &str| {
        let mut fills: Vec<&str> = svg.split("fill=\"#").skip(1).map(|part| &part[..6]).collect();
        fills.sort_unstable();
        fills.dedup();
        fills.len()
    };
    assert!(colours(pictures[0].as_str().unwrap()) >= 6);
}

#[test]
fn the_sheet_is_what_three_cycles_are_carried_out_with() {
    let mut page = Page::default();
    // A state that asks for BP alone: the algorithm backwards.
    let scramble = "[U, R' D' R]";
    let own = "pair,algorithm\nUBR RDF,\"B R' B2 R F R' B2 R F' B'\"\n";
    let sheet = bring(&mut page, "", own).unwrap()["sheet"].as_str().unwrap().to_owned();
    let mut solution = |sheet: &str| {
        let puzzle = json!({ "size": 3, "scramble": scramble, "facelets": "", "bestHold": false });
        let mut source = page.source(&puzzle, CONVENTIONS);
        source["sheet"] = kept(&mut page, sheet);
        page.ask("play", &json!({ "source": source })).unwrap()["moves"].as_u64().unwrap()
    };
    assert_eq!(solution(""), 8);
    assert_eq!(solution(&sheet), 10);
}

#[test]
fn a_sheet_is_saved_as_a_list_a_table_and_a_page() {
    let mut page = Page::default();
    let sheet = imported(&mut page)["sheet"].as_str().unwrap().to_owned();
    let mut file = |form: &str| {
        let (subject, sheet) = (subject(&mut page), kept(&mut page, &sheet));
        page.ask("export", &json!({ "subject": subject, "sheet": sheet, "form": form })).unwrap()
    };
    let csv = file("csv")["text"].as_str().unwrap().to_owned();
    assert!(csv.starts_with("kind,buffer,first,second,letters,algorithm,notes,origin,as written"), "{csv}");
    assert_eq!(file("markdown")["name"], "hoodwink-corner-UFR.md");
    assert!(
        file("markdown")["text"].as_str().unwrap().contains("| BP | UBR RDF | [R' D' R, U] | 8 | by heart |")
    );
    assert!(file("html")["text"].as_str().unwrap().contains("[R' D' R, U]"));
    // What was kept as a list, as it was once, is read the same.
    let now = cases(&mut page, &sheet, "", "all");
    assert_eq!(cases(&mut page, &csv, "", "all"), now);
}

#[test]
fn another_method_brings_what_it_needs() {
    let mut page = Page::default();
    let mut change = |conventions: &str, kind: &str, method: &str| {
        let change = json!({ "what": "method", "kind": kind, "method": method });
        let conventions = page.tell("conventions", conventions);
        page.ask("conventions", &json!({ "conventions": conventions, "change": change })).unwrap()
    };
    let view = change("", "edge", "slice-swap");
    assert_eq!(view["trouble"], Value::Null);
    assert_eq!(
        (&view["kinds"][1]["method"], &view["kinds"][1]["buffer"]),
        (&json!("slice-swap"), &json!("DF"))
    );
    assert_eq!(view["notes"].as_array().unwrap().len(), 2, "{}", view["notes"]);
    // Edges before corners; where wings and centres stand does not matter here.
    let toml = view["toml"].as_str().unwrap();
    let order =
        toml.lines().find(|line| line.starts_with("execution = ")).unwrap_or_else(|| panic!("{toml}"));
    assert!(order.find("\"edge\"") < order.find("\"corner\""), "{order}");
    assert_eq!(view["kinds"][0]["methods"], json!(["one-swap", "three-cycle"]));
    let back = change(view["toml"].as_str().unwrap(), "edge", "one-swap");
    assert_eq!((&back["trouble"], &back["kinds"][1]["method"]), (&Value::Null, &json!("one-swap")));
    assert_ne!(back["kinds"][1]["buffer"], "DF");
    // One swap needs an algorithm that moves the buffer: it is turned along.
    let swap = change(CONVENTIONS, "corner", "one-swap");
    assert_eq!((&swap["trouble"], &swap["kinds"][0]["buffer"]), (&Value::Null, &json!("UFR")));
    let cycles = change(swap["toml"].as_str().unwrap(), "corner", "three-cycle");
    assert_eq!((&cycles["trouble"], &cycles["kinds"][0]["buffer"]), (&Value::Null, &json!("UFR")));
}
