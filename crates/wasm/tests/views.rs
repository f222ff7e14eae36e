//! What pages are given, asked for as they ask.

mod page;

use page::Page;
use serde_json::{Value, json};

const SCRAMBLE: &str = "D2 F' R2 B U2 L' D B2 R F U' L2 B' U R2 D' F2 L U2";

/// A 3x3 scrambled by these moves, under the usual conventions.
fn source(page: &mut Page, scramble: &str) -> Value {
    page.source(&puzzle(3, scramble), "")
}

fn puzzle(size: u8, scramble: &str) -> Value {
    json!({ "size": size, "scramble": scramble, "facelets": "", "bestHold": false })
}

/// A scene of the bench of a laptop.
fn scene(source: &Value, moment: &Value) -> Value {
    json!({
        "source": source, "frame": { "width": 1136, "height": 504 }, "keep": 0, "eye": null, "right": 0, "down": 0,
        "moment": moment, "open": null
    })
}

fn random(page: &mut Page, size: u8, seed: u32) -> String {
    let drawn = page.ask("random", &json!({ "size": size, "seed": [0, seed] })).unwrap();
    drawn["moves"].as_str().unwrap().to_owned()
}

#[test]
fn every_letter_of_random_solutions_does_what_it_should() {
    let mut page = Page::default();
    for seed in 0..40 {
        let size = if seed % 4 == 0 { 2 } else { 3 };
        let mut puzzle = puzzle(size, &random(&mut page, size, seed));
        puzzle["bestHold"] = (seed % 8 == 0).into();
        let source = page.source(&puzzle, "");
        let line = page.ask("play", &json!({ "source": source })).unwrap();
        let steps = line["steps"].as_array().unwrap();
        assert!(steps.iter().all(|step| step["asExpected"] != false), "{puzzle}: {line}");
        assert!(steps.iter().filter(|step| step["asExpected"] == true).count() + 1 >= steps.len());
        let last = steps.last().unwrap()["after"].as_str().unwrap();
        let all = if size == 2 { "8 of 8 pieces" } else { "20 of 20 pieces" };
        assert!(last.contains(all), "{last}");
    }
}

#[test]
fn the_same_seed_gives_the_same_scramble() {
    let mut page = Page::default();
    assert_eq!(random(&mut page, 3, 7), random(&mut page, 3, 7));
    assert_ne!(random(&mut page, 3, 7), random(&mut page, 3, 8));
}

#[test]
fn a_scramble_for_a_lesson_meets_its_condition() {
    let mut page = Page::default();
    let usual = page.tell("conventions", "");
    for (size, condition) in [(3, "parity = odd"), (2, "parity = odd")] {
        let asked = json!({ "size": size, "conventions": usual, "condition": condition, "seed": [0, 5] });
        let drawn = page.ask("conditional", &asked).unwrap();
        let source = page.source(&puzzle(size, drawn["moves"].as_str().unwrap()), "");
        let traced = page.ask("trace", &json!({ "source": source })).unwrap();
        assert_eq!(traced["parts"][0]["odd"], true);
        let lessons = page.ask("lessons", &json!({ "size": size })).unwrap();
        assert!(lessons.as_array().unwrap().iter().any(|lesson| lesson["condition"] == condition));
    }
    let no = json!({ "size": 3, "conventions": usual, "condition": "moons = 3", "seed": [0, 5] });
    assert!(page.ask("conditional", &no).unwrap_err().contains("moons"));
}

#[test]
fn a_memo_comes_in_pairs_with_a_reason_for_each_letter() {
    let mut page = Page::default();
    let source = source(&mut page, SCRAMBLE);
    let view = page.ask("trace", &json!({ "source": source })).unwrap();
    for part in view["parts"].as_array().unwrap() {
        let groups = part["groups"].as_array().unwrap();
        let letters: String = groups
            .iter()
            .flat_map(|group| group.as_array().unwrap())
            .map(|letter| {
                assert!(!letter["reason"].as_str().unwrap().is_empty());
                letter["letter"].as_str().unwrap()
            })
            .collect();
        assert_eq!(letters, part["memo"].as_str().unwrap().replace(' ', ""));
        assert!(groups[..groups.len() - 1].iter().all(|group| group.as_array().unwrap().len() == 2));
    }
    assert!(view["trouble"].is_null());
}

#[test]
fn painted_colours_are_traced_as_the_scramble_that_leads_to_them() {
    let mut page = Page::default();
    let from = source(&mut page, SCRAMBLE);
    let scrambled = page.ask("trace", &json!({ "source": from })).unwrap();
    let mut painted = puzzle(3, "");
    painted["facelets"] = scrambled["facelets"].clone();
    let painted = page.source(&painted, "");
    assert_eq!(page.ask("trace", &json!({ "source": painted })).unwrap(), scrambled);
}

/// Whatever the size, the letters alone put every piece right: the engine proves it, and here they are counted against it.
#[test]
fn every_size_is_traced_and_carried_out() {
    let mut page = Page::default();
    // Kinds by size: textbook counting.
    for (size, kinds) in [(2, 1), (3, 2), (4, 3), (5, 5), (6, 7), (7, 10)] {
        let scramble = random(&mut page, size, 11);
        let source = page.source(&puzzle(size, &scramble), "");
        let view = page.ask("trace", &json!({ "source": source })).unwrap();
        let parts = view["parts"].as_array().unwrap();
        assert_eq!(parts.len(), kinds, "{size}");
        assert!(parts.iter().all(|part| !part["name"].as_str().unwrap().is_empty()));
        assert!(view["trouble"].is_null() && !view["solution"].is_null(), "{size}: {}", view["trouble"]);
        let letter = json!({ "kind": "traced", "letter": { "part": 0, "letter": 0 }, "drawn": 1.0 });
        let scene = page.ask("scene", &scene(&source, &letter)).unwrap();
        assert_eq!(scene["parts"].as_array().unwrap().len(), kinds, "{size}");
        assert!(!scene["beads"].as_array().unwrap().is_empty(), "{size}");
        let moment = json!({ "kind": "carried", "at": 3, "progress": 0.5, "playing": true });
        assert!(page.ask("scene", &self::scene(&source, &moment)).is_ok(), "{size}");
    }
    for size in [0, 1, 8, 255] {
        assert!(
            page.ask("random", &json!({ "size": size, "seed": [0, 1] }))
                .unwrap_err()
                .contains("2 to 7 layers")
        );
    }
}

#[test]
fn letters_of_several_signs_go_through_every_view() {
    let mut page = Page::default();
    let letters: Vec<String> = (1..=24).map(|number| format!("\"{number}\"")).collect();
    let conventions = format!("[letters]\ncorner = [{}]\n", letters.join(", "));
    let source = page.source(&puzzle(3, SCRAMBLE), &conventions);
    let view = page.ask("trace", &json!({ "source": source })).unwrap();
    let part = view["parts"].as_array().unwrap().iter().find(|part| part["kind"] == "corner").unwrap();
    let memo = part["memo"].as_str().unwrap();
    assert!(memo.chars().any(|sign| sign.is_ascii_digit()) && memo.contains('-'), "{memo}");
    // What is said is read back, as it is.
    let asked =
        json!({ "source": source, "memo": { "corner": memo, "edge": "" }, "parity": null, "moves": "" });
    let checked = page.ask("check", &asked).unwrap();
    let said = checked["sentences"].to_string();
    assert!(!said.contains("corner"), "the corners are right: {said}");
    let shown =
        page.ask("conventions", &json!({ "conventions": source["conventions"], "change": null })).unwrap();
    assert_eq!(shown["kinds"][0]["stickers"][23]["letter"], "24");
}

#[test]
fn a_document_that_was_not_told_is_asked_for_by_name() {
    let mut page = Page::default();
    let mut source = source(&mut page, SCRAMBLE);
    assert!(page.ask("trace", &json!({ "source": source })).is_ok());
    source["puzzle"]["revision"] = 99.into();
    let arguments = json!({ "source": source }).to_string();
    let failure = page.engine.call("trace", "en", &arguments, &mut |_| {}).unwrap_err();
    let missing = failure.missing.unwrap();
    assert_eq!((missing.handle.as_str(), missing.revision), ("puzzle", 99));
    // Only the last few are kept: the first of many is asked for again.
    for number in 0..40 {
        page.tell("puzzle", &puzzle(3, &"R ".repeat(number)).to_string());
    }
    source["puzzle"]["revision"] = 1.into();
    let arguments = json!({ "source": source }).to_string();
    assert!(page.engine.call("trace", "en", &arguments, &mut |_| {}).unwrap_err().missing.is_some());
    page.engine.put("puzzle", "puzzle", 1, &puzzle(3, SCRAMBLE).to_string());
    assert!(page.engine.call("trace", "en", &arguments, &mut |_| {}).is_ok());
}

#[test]
fn a_document_told_anew_under_its_name_is_never_taken_for_the_old_one() {
    let mut page = Page::default();
    let source = source(&mut page, SCRAMBLE);
    let before = page.ask("trace", &json!({ "source": source })).unwrap();
    page.engine.put("puzzle", "puzzle", 1, &puzzle(3, "R").to_string());
    let after = page.ask("trace", &json!({ "source": source })).unwrap();
    assert_ne!(before, after);
    page.engine.put("conventions", "conventions", 2, "[buffer]\ncorner = \"UBL\"\n");
    let moved = page.ask("trace", &json!({ "source": source })).unwrap();
    assert_ne!(moved["parts"], after["parts"]);
    page.engine.put("conventions", "conventions", 2, &"#".repeat(1 << 20));
    assert!(page.ask("trace", &json!({ "source": source })).unwrap_err().contains("longer than"));
}

#[test]
fn a_painted_sticker_that_cannot_be_is_explained() {
    let mut page = Page::default();
    let usual = page.tell("conventions", "");
    let mut brush =
        json!({ "size": 3, "conventions": usual, "facelets": "", "cell": "U 0 0", "colour": "R" });
    let view = page.ask("paint", &brush).unwrap();
    assert_eq!(view["possible"], false);
    assert!(!view["verdict"].as_array().unwrap().is_empty());
    assert!(view["facelets"].as_str().unwrap().starts_with("RUUUUUUUU"));
    brush["facelets"] = view["facelets"].clone();
    brush["colour"] = "U".into();
    assert_eq!(page.ask("paint", &brush).unwrap()["possible"], true);
}

#[test]
fn pictures_follow_the_eye_and_never_carry_styles_that_a_strict_page_refuses() {
    let mut page = Page::default();
    let mut seen = Vec::new();
    let source = source(&mut page, SCRAMBLE);
    for (right, width) in [(0.0, 1136), (0.5, 1136), (0.0, 390)] {
        let letter = json!({ "kind": "traced", "letter": { "part": 0, "letter": 1 }, "drawn": 1.0 });
        let mut wanted = scene(&source, &letter);
        (wanted["right"], wanted["frame"]["width"]) = (right.into(), width.into());
        let view = page.ask("scene", &wanted).unwrap();
        let layers =
            ["link", "cube", "thread"].map(|layer| view[layer].as_str().unwrap().to_owned()).concat();
        assert!(!layers.contains("style=") && !layers.contains("<style") && !layers.contains("<script"));
        assert!(view["description"].as_str().unwrap().contains("U: "));
        seen.push(layers);
    }
    seen.dedup();
    assert_eq!(seen.len(), 3);
}

#[test]
fn a_turn_under_way_lies_between_the_states_before_and_after() {
    let mut page = Page::default();
    let source = source(&mut page, SCRAMBLE);
    let mut at = |at: u32, progress: f64| {
        let moment = json!({ "kind": "carried", "at": at, "progress": progress, "playing": true });
        page.ask("scene", &scene(&source, &moment)).unwrap()["cube"].as_str().unwrap().to_owned()
    };
    assert_ne!(at(0, 0.5), at(0, 0.0));
    assert_ne!(at(0, 0.5), at(1, 0.0));
    // Beyond the end nothing moves.
    assert_eq!(at(100_000, 0.5), at(100_000, 0.0));
}

#[test]
fn conventions_are_changed_one_by_one_and_stay_in_order() {
    let mut page = Page::default();
    let mut toml = String::new();
    for change in [
        json!({ "what": "letter", "kind": "corner", "sticker": "UFR", "letter": "ß" }),
        json!({ "what": "letter", "kind": "edge", "sticker": "UF", "letter": "A" }),
        json!({ "what": "holding", "up": "D", "front": "R" }),
        json!({ "what": "holding", "up": "R", "front": "R" }),
        json!({ "what": "shade", "face": "R", "shade": "#123456" }),
        json!({ "what": "name", "face": "R", "name": "night" }),
        json!({ "what": "breaks", "kind": "edge", "choice": "fewest" }),
        json!({ "what": "pairs", "paired": false }),
    ] {
        let conventions = page.tell("conventions", &toml);
        let view = page.ask("conventions", &json!({ "conventions": conventions, "change": change })).unwrap();
        assert!(view["trouble"].is_null(), "{change}: {view}");
        toml = view["toml"].as_str().unwrap().to_owned();
    }
    for part in ["ß", "night", "#123456", "fewest", "pairs = false"] {
        assert!(toml.contains(part), "{part} in {toml}");
    }
    for (change, sentence) in [
        (json!({ "what": "letter", "kind": "corner", "sticker": "UFR", "letter": "A B" }), "cannot"),
        (json!({ "what": "letter", "kind": "corner", "sticker": "UFR", "letter": "ABCDEFGHI" }), "9"),
        (json!({ "what": "breaks", "kind": "corner", "choice": "anywhere" }), "anywhere"),
        (json!({ "what": "method", "kind": "corner", "method": "magic" }), "magic"),
        (json!({ "what": "method", "kind": "corner", "method": "slice-swap" }), "slice-swap"),
        (json!({ "what": "name", "face": "L", "name": " " }), "name"),
        (json!({ "what": "letter", "kind": "corner", "sticker": "UFR", "letter": " " }), "empty"),
        (json!({ "what": "letter", "kind": "corner", "sticker": "XYZ", "letter": "A" }), "XYZ"),
        (json!({ "what": "shade", "face": "R", "shade": "red" }), "red"),
        (json!({ "what": "name", "face": "L", "name": "night" }), "night"),
        (json!({ "what": "algorithm", "kind": "corner", "text": "R K" }), "column 3"),
    ] {
        let conventions = page.tell("conventions", &toml);
        let asked = json!({ "conventions": conventions, "change": change });
        let said = page.ask("conventions", &asked).unwrap_err();
        assert!(said.contains(sentence), "{change}: {said}");
    }
}

#[test]
fn another_buffer_turns_its_algorithm_along() {
    let mut page = Page::default();
    for (kind, buffer) in [("corner", "UFR"), ("corner", "DBL"), ("edge", "DF"), ("edge", "FR")] {
        let change = json!({ "what": "buffer", "kind": kind, "sticker": buffer });
        let usual = page.tell("conventions", "");
        let view = page.ask("conventions", &json!({ "conventions": usual, "change": change })).unwrap();
        let source = page.source(&puzzle(3, SCRAMBLE), view["toml"].as_str().unwrap());
        let traced = page.ask("trace", &json!({ "source": source })).unwrap();
        // Whatever becomes of the parity algorithm, the memo is there, and what does not fit is said.
        assert_eq!(traced["solution"].is_null(), !view["trouble"].is_null(), "{kind} {buffer}");
        assert_eq!(view["trouble"], traced["trouble"]);
        assert!(!traced["parts"][0]["groups"].as_array().unwrap().is_empty());
    }
}

#[test]
fn a_lesson_has_a_picture_for_every_letter_and_answers_for_every_exercise() {
    let mut page = Page::default();
    let plan = json!({
        "source": source(&mut page, SCRAMBLE), "holding": true, "kinds": ["corner", "edge"], "execution": true,
        "exercises": 3, "seed": [1, 2]
    });
    let lesson = page.ask("lesson", &plan).unwrap();
    assert_eq!(lesson["chapters"].as_array().unwrap().len(), 4);
    for chapter in lesson["chapters"].as_array().unwrap() {
        for step in chapter["steps"].as_array().unwrap() {
            assert!(step["svg"].as_str().unwrap().starts_with("<svg"));
            assert!(!step["svg"].as_str().unwrap().contains("var("), "paper has no theme of a page");
        }
    }
    let exercises = lesson["exercises"].as_array().unwrap();
    assert_eq!(exercises.len(), 3);
    for exercise in exercises {
        let source = source(&mut page, exercise["scramble"].as_str().unwrap());
        let traced = page.ask("trace", &json!({ "source": source })).unwrap();
        let sentences: Vec<&Value> =
            traced["parts"].as_array().unwrap().iter().map(|part| &part["sentence"]).collect();
        assert_eq!(sentences, exercise["answers"].as_array().unwrap().iter().collect::<Vec<_>>());
    }
    assert_eq!(page.ask("lesson", &plan).unwrap(), lesson);
}

/// The letters of each kind as the engine memorises them.
fn memo(page: &mut Page, scramble: &str) -> Value {
    let source = source(page, scramble);
    let traced = page.ask("trace", &json!({ "source": source })).unwrap();
    let parts = traced["parts"].as_array().unwrap();
    parts.iter().map(|part| (part["kind"].as_str().unwrap().to_owned(), part["memo"].clone())).collect()
}

#[test]
fn a_memo_is_checked_and_its_wrong_beads_are_marked() {
    let mut page = Page::default();
    let mut memo = memo(&mut page, SCRAMBLE);
    let source = source(&mut page, SCRAMBLE);
    let mut check = |memo: &Value, moves: &str| {
        let asked = json!({ "source": source, "memo": memo, "parity": null, "moves": moves });
        page.ask("check", &asked)
    };
    let right = check(&memo, "").unwrap();
    assert_eq!((&right["right"], &right["cracked"]), (&json!(true), &json!([])));
    // Right means solved: every face has one colour.
    assert_eq!(right["outcome"].as_str().unwrap().split_at(9).0, "UUUUUUUUU");
    let swapped: String = memo["corner"].as_str().unwrap().chars().rev().collect();
    memo["corner"] = swapped.into();
    let wrong = check(&memo, "").unwrap();
    assert_eq!(wrong["right"], false);
    assert_ne!(wrong["outcome"], right["outcome"]);
    assert!(!wrong["cracked"].as_array().unwrap().is_empty());
    assert_eq!(wrong["memo"]["edge"], right["memo"]["edge"]);
    memo["corner"] = "B1".into();
    assert!(check(&memo, "").unwrap_err().contains(", column 2"));
    assert!(check(&json!({}), "R K").unwrap_err().contains("column 3"));
    assert!(check(&json!({ "middle": "A" }), "").unwrap_err().contains("middle"));
}

#[test]
fn another_scramble_of_the_list_is_named() {
    let mut page = Page::default();
    let begun = source(&mut page, SCRAMBLE);
    let traced = page.ask("play", &json!({ "source": begun })).unwrap();
    let steps = traced["steps"].as_array().unwrap().iter();
    let moves = steps.flat_map(|step| step["moves"].as_array().unwrap().clone());
    let moves: Vec<String> = moves.map(|turn| turn["text"].as_str().unwrap().to_owned()).collect();
    // An invented scramble, and then the moves that belong to the other.
    let other = "B' L2 U D' F R2 B2 U' L D2 F' R";
    let out = source(&mut page, &format!("{other} {}", moves.join(" ")));
    let out = page.ask("trace", &json!({ "source": out })).unwrap();
    let asked = json!({
        "source": begun, "memo": {}, "list": format!("{SCRAMBLE}\n\n{other}\nR U"), "seen": out["facelets"],
        "told": "", "answers": [], "deep": false
    });
    let told = page.ask("why", &asked).unwrap();
    assert_eq!(told["explanations"][0]["sentence"], "Scramble 2 of the list was made instead.", "{told}");
}

#[test]
fn a_move_left_out_is_among_the_explanations() {
    let mut page = Page::default();
    let begun = source(&mut page, SCRAMBLE);
    let traced = page.ask("play", &json!({ "source": begun })).unwrap();
    let mut moves: Vec<String> = traced["steps"]
        .as_array()
        .unwrap()
        .iter()
        .flat_map(|step| step["moves"].as_array().unwrap())
        .map(|turn| turn["text"].as_str().unwrap().to_owned())
        .collect();
    // A move in the middle of the second swap, its set-up being short.
    moves.remove(24);
    let played = format!("{SCRAMBLE} {}", moves.join(" "));
    let out = source(&mut page, &played);
    let out = page.ask("trace", &json!({ "source": out })).unwrap();
    let mut asked = json!({
        "source": begun, "memo": { "corner": "", "edge": "" }, "seen": out["facelets"],
        "list": "", "told": "", "answers": [], "deep": false
    });
    let told = page.ask("why", &asked).unwrap();
    let found = told["explanations"].as_array().unwrap();
    assert!(!found.is_empty(), "{told}");
    assert!(found[0]["share"].as_str().unwrap().ends_with('%'));
    if let Some(question) = told["questions"].as_array().unwrap().first() {
        asked["answers"] = json!([{ "name": question["name"], "yes": false }]);
        assert!(page.ask("why", &asked).is_ok());
    }
    asked["answers"] = json!([{ "name": "who-was-it", "yes": true }]);
    assert!(page.ask("why", &asked).unwrap_err().contains("who-was-it"));
    asked["answers"] = json!([]);
    // Words stand for the colours.
    asked["told"] = "UF flipped".into();
    let missing = page.ask("why", &asked).unwrap();
    assert!(missing["fault"].as_str().unwrap().starts_with("Is any other piece unsolved? UF"), "{missing}");
    assert_eq!(missing["explanations"], json!([]));
    asked["told"] = "only edges: UF>UR>FR".into();
    let edges = page.ask("why", &asked).unwrap();
    assert!(edges["remarks"][0].as_str().unwrap().contains("corners were not looked at"), "{edges}");
    asked["told"] = "UF floppy".into();
    assert!(page.ask("why", &asked).unwrap_err().contains("Column 4"));
    asked["told"] = json!("");
    asked["memo"] = json!({ "corner": "B", "edge": "" });
    let both = page.ask("why", &asked).unwrap();
    assert!(both["remarks"][0].as_str().unwrap().starts_with("The memo itself does not solve"), "{both}");
}

#[test]
fn what_is_no_puzzle_is_said() {
    let mut page = Page::default();
    for (key, value, sentence) in [
        ("size", json!(9), "2 to 7 layers"),
        ("scramble", json!("R U K"), "column 5"),
        ("facelets", json!("UUUU"), "fit no cube"),
        ("facelets", json!("UUUULLLLFFFFRRRRBBBBDDDD"), "2x2"),
        ("sides", json!(6), "expected form"),
    ] {
        let mut puzzle = puzzle(3, "R");
        puzzle[key] = value;
        let source = page.source(&puzzle, "");
        let said = page.ask("trace", &json!({ "source": source })).unwrap_err();
        assert!(said.contains(sentence), "{key}: {said}");
    }
    let source = page.source(&puzzle(3, "R"), "[bufer]");
    assert!(page.ask("trace", &json!({ "source": source })).unwrap_err().contains("Line 1"));
}

#[test]
fn what_the_browser_kept_is_renewed_and_what_is_newer_is_refused() {
    let mut page = Page::default();
    let old = json!({"tab": "a", "savedAt": 1, "draft": {"facelets-2": "UUUURRRRFFFFDDDDLLLLBBBB"}});
    let renewed = page.ask("renew", &json!({"record": "draft", "text": old.to_string()})).unwrap();
    let version = renewed["version"].as_u64().unwrap();
    let record: Value = serde_json::from_str(renewed["text"].as_str().unwrap()).unwrap();
    assert_eq!(record["draft"]["facelets-2"], "UUUULLLLFFFFRRRRBBBBDDDD");
    let mut newer = record.clone();
    newer["version"] = json!(version + 1);
    let refused = page.ask("renew", &json!({"record": "draft", "text": newer.to_string()})).unwrap_err();
    assert!(refused.contains("newer version"), "{refused}");
    // The page writes the version that the engine means.
    let store = include_str!("../../../web/src/store/database.ts");
    assert!(store.contains(&format!("RECORD_VERSION = {version};")));
}
