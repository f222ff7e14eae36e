//! What pages are given, asked for as they ask.

use serde_json::{Value, json};
use wasm::Engine;

const SCRAMBLE: &str = "D2 F' R2 B U2 L' D B2 R F U' L2 B' U R2 D' F2 L U2";

fn source(scramble: &str) -> Value {
    json!({ "size": 3, "conventions": "", "scramble": scramble, "facelets": "", "bestHold": false, "sheet": "" })
}

fn ask(engine: &mut Engine, method: &str, arguments: &Value) -> Result<Value, String> {
    engine
        .call(method, "en", &arguments.to_string(), &mut |_| {})
        .map(|view| serde_json::from_str(&view).unwrap())
        .map_err(|failure| failure.sentence)
}

fn looking(right: f64, hidden: &str) -> Value {
    json!({ "eye": null, "right": right, "down": 0.0, "hidden": hidden })
}

fn random(engine: &mut Engine, size: u8, seed: u32) -> String {
    let drawn = ask(
        engine,
        "random",
        &json!({ "size": size, "seed": [0, seed], "conventions": "", "condition": "" }),
    )
    .unwrap();
    drawn["moves"].as_str().unwrap().to_owned()
}

#[test]
fn every_letter_of_random_solutions_does_what_it_should() {
    let mut engine = Engine::default();
    for seed in 0..40 {
        let size = if seed % 4 == 0 { 2 } else { 3 };
        let mut source = source(&random(&mut engine, size, seed));
        source["size"] = size.into();
        source["bestHold"] = (seed % 8 == 0).into();
        let line = ask(&mut engine, "play", &json!({ "source": source })).unwrap();
        let steps = line["steps"].as_array().unwrap();
        assert!(steps.iter().all(|step| step["asExpected"] != false), "{source}: {line}");
        assert!(steps.iter().filter(|step| step["asExpected"] == true).count() + 1 >= steps.len());
        let last = steps.last().unwrap()["after"].as_str().unwrap();
        let all = if size == 2 { "8 of 8 pieces" } else { "20 of 20 pieces" };
        assert!(last.contains(all), "{last}");
    }
}

#[test]
fn the_same_seed_gives_the_same_scramble() {
    let mut engine = Engine::default();
    assert_eq!(random(&mut engine, 3, 7), random(&mut engine, 3, 7));
    assert_ne!(random(&mut engine, 3, 7), random(&mut engine, 3, 8));
}

#[test]
fn a_scramble_for_a_lesson_meets_its_condition() {
    let mut engine = Engine::default();
    for (size, condition) in [(3, "parity = odd"), (2, "parity = odd")] {
        let asked = json!({ "size": size, "conventions": "", "condition": condition, "seed": [0, 5] });
        let drawn = ask(&mut engine, "random", &asked).unwrap();
        let mut source = source(drawn["moves"].as_str().unwrap());
        source["size"] = size.into();
        let traced = ask(&mut engine, "trace", &json!({ "source": source })).unwrap();
        assert_eq!(traced["parts"][0]["odd"], true);
        let lessons = ask(&mut engine, "lessons", &json!({ "size": size })).unwrap();
        assert!(lessons.as_array().unwrap().iter().any(|lesson| lesson["condition"] == condition));
    }
    let no = json!({ "size": 3, "conventions": "", "condition": "moons = 3", "seed": [0, 5] });
    assert!(ask(&mut engine, "random", &no).unwrap_err().contains("moons"));
}

#[test]
fn a_memo_comes_in_pairs_with_a_reason_for_each_letter() {
    let view = ask(&mut Engine::default(), "trace", &json!({ "source": source(SCRAMBLE) })).unwrap();
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
    let mut engine = Engine::default();
    let scrambled = ask(&mut engine, "trace", &json!({ "source": source(SCRAMBLE) })).unwrap();
    let mut painted = source("");
    painted["facelets"] = scrambled["facelets"].clone();
    assert_eq!(ask(&mut engine, "trace", &json!({ "source": painted })).unwrap(), scrambled);
}

#[test]
fn a_painted_sticker_that_cannot_be_is_explained() {
    let mut engine = Engine::default();
    let mut brush = json!({ "size": 3, "conventions": "", "facelets": "", "cell": "U 0 0", "colour": "R" });
    let view = ask(&mut engine, "paint", &brush).unwrap();
    assert_eq!(view["possible"], false);
    assert!(!view["verdict"].as_array().unwrap().is_empty());
    assert!(view["facelets"].as_str().unwrap().starts_with("RUUUUUUUU"));
    brush["facelets"] = view["facelets"].clone();
    brush["colour"] = "U".into();
    assert_eq!(ask(&mut engine, "paint", &brush).unwrap()["possible"], true);
}

#[test]
fn pictures_follow_the_eye_and_never_carry_styles_that_a_strict_page_refuses() {
    let mut engine = Engine::default();
    let mut seen = Vec::new();
    for looking in [looking(0.0, "no"), looking(0.5, "no"), looking(0.0, "mirrors"), looking(0.0, "net")] {
        let wanted = json!({
            "source": source(SCRAMBLE), "looking": looking, "letter": { "part": 0, "letter": 1 }
        });
        let view = ask(&mut engine, "picture", &wanted).unwrap();
        let svg = view["svg"].as_str().unwrap().to_owned();
        assert!(!svg.contains("style=") && !svg.contains("<style") && !svg.contains("<script"));
        assert!(svg.contains("<desc>U: "));
        seen.push(svg);
    }
    seen.dedup();
    assert_eq!(seen.len(), 4);
}

#[test]
fn a_turn_under_way_lies_between_the_states_before_and_after() {
    let mut engine = Engine::default();
    let mut at = |at: u32, progress: f64| {
        let moment = json!({
            "source": source(SCRAMBLE), "looking": looking(0.0, "no"), "at": at, "progress": progress
        });
        ask(&mut engine, "moment", &moment).unwrap()["svg"].as_str().unwrap().to_owned()
    };
    assert_ne!(at(0, 0.5), at(0, 0.0));
    assert_ne!(at(0, 0.5), at(1, 0.0));
    // Beyond the end nothing moves.
    assert_eq!(at(100_000, 0.5), at(100_000, 0.0));
}

#[test]
fn conventions_are_changed_one_by_one_and_stay_in_order() {
    let mut engine = Engine::default();
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
        let asked = json!({ "conventions": toml, "change": change });
        let view = ask(&mut engine, "conventions", &asked).unwrap();
        assert!(view["trouble"].is_null(), "{change}: {view}");
        toml = view["toml"].as_str().unwrap().to_owned();
    }
    for part in ["ß", "night", "#123456", "fewest", "pairs = false"] {
        assert!(toml.contains(part), "{part} in {toml}");
    }
    for (change, sentence) in [
        (json!({ "what": "letter", "kind": "corner", "sticker": "UFR", "letter": "AB" }), "AB"),
        (json!({ "what": "letter", "kind": "corner", "sticker": "UFR", "letter": " " }), "cannot"),
        (json!({ "what": "letter", "kind": "corner", "sticker": "XYZ", "letter": "A" }), "XYZ"),
        (json!({ "what": "shade", "face": "R", "shade": "red" }), "red"),
        (json!({ "what": "name", "face": "L", "name": "night" }), "night"),
        (json!({ "what": "algorithm", "kind": "corner", "text": "R K" }), "column 3"),
    ] {
        let asked = json!({ "conventions": toml, "change": change });
        let said = ask(&mut engine, "conventions", &asked).unwrap_err();
        assert!(said.contains(sentence), "{change}: {said}");
    }
}

#[test]
fn another_buffer_turns_its_algorithm_along() {
    let mut engine = Engine::default();
    for (kind, buffer) in [("corner", "UFR"), ("corner", "DBL"), ("edge", "DF"), ("edge", "FR")] {
        let change = json!({ "what": "buffer", "kind": kind, "sticker": buffer });
        let view = ask(&mut engine, "conventions", &json!({ "conventions": "", "change": change })).unwrap();
        let mut source = source(SCRAMBLE);
        source["conventions"] = view["toml"].clone();
        let traced = ask(&mut engine, "trace", &json!({ "source": source })).unwrap();
        // Whatever becomes of the parity algorithm, the memo is there, and what does not fit is said.
        assert_eq!(traced["solution"].is_null(), !view["trouble"].is_null(), "{kind} {buffer}");
        assert_eq!(view["trouble"], traced["trouble"]);
        assert!(!traced["parts"][0]["groups"].as_array().unwrap().is_empty());
    }
}

#[test]
fn a_lesson_has_a_picture_for_every_letter_and_answers_for_every_exercise() {
    let mut engine = Engine::default();
    let plan = json!({
        "source": source(SCRAMBLE), "holding": true, "corners": true, "edges": true, "execution": true,
        "exercises": 3, "seed": [1, 2]
    });
    let lesson = ask(&mut engine, "lesson", &plan).unwrap();
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
        let source = source(exercise["scramble"].as_str().unwrap());
        let traced = ask(&mut engine, "trace", &json!({ "source": source })).unwrap();
        let sentences: Vec<&Value> =
            traced["parts"].as_array().unwrap().iter().map(|part| &part["sentence"]).collect();
        assert_eq!(sentences, exercise["answers"].as_array().unwrap().iter().collect::<Vec<_>>());
    }
    assert_eq!(ask(&mut engine, "lesson", &plan).unwrap(), lesson);
}

/// The letters of each kind as the engine memorises them.
fn memo(engine: &mut Engine, scramble: &str) -> Value {
    let traced = ask(engine, "trace", &json!({ "source": source(scramble) })).unwrap();
    let mut memo = json!({ "corners": "", "edges": "" });
    for part in traced["parts"].as_array().unwrap() {
        memo[format!("{}s", part["kind"].as_str().unwrap())] = part["memo"].clone();
    }
    memo
}

#[test]
fn a_memo_is_checked_and_its_wrong_beads_are_marked() {
    let mut engine = Engine::default();
    let mut memo = memo(&mut engine, SCRAMBLE);
    let mut check = |memo: &Value, moves: &str| {
        let asked = json!({ "source": source(SCRAMBLE), "memo": memo, "parity": null, "moves": moves });
        ask(&mut engine, "check", &asked)
    };
    let right = check(&memo, "").unwrap();
    assert_eq!((&right["right"], &right["outcome"]), (&json!(true), &Value::Null));
    let swapped: String = memo["corners"].as_str().unwrap().chars().rev().collect();
    memo["corners"] = swapped.into();
    let wrong = check(&memo, "").unwrap();
    assert_eq!(wrong["right"], false);
    assert!(wrong["outcome"].as_str().unwrap().starts_with("<svg"));
    assert_ne!(wrong["thread"], right["thread"]);
    memo["corners"] = "B1".into();
    assert!(check(&memo, "").unwrap_err().contains("Column 2"));
    assert!(check(&json!({ "corners": "", "edges": "" }), "R K").unwrap_err().contains("column 3"));
}

#[test]
fn a_move_left_out_is_among_the_explanations() {
    let mut engine = Engine::default();
    let traced = ask(&mut engine, "play", &json!({ "source": source(SCRAMBLE) })).unwrap();
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
    let out = ask(&mut engine, "trace", &json!({ "source": source(&played) })).unwrap();
    let mut asked = json!({
        "source": source(SCRAMBLE), "memo": { "corners": "", "edges": "" }, "seen": out["facelets"],
        "answers": [], "deep": false
    });
    let told = ask(&mut engine, "why", &asked).unwrap();
    let found = told["explanations"].as_array().unwrap();
    assert!(!found.is_empty(), "{told}");
    assert!(found[0]["share"].as_str().unwrap().ends_with('%'));
    if let Some(question) = told["questions"].as_array().unwrap().first() {
        asked["answers"] = json!([{ "name": question["name"], "yes": false }]);
        assert!(ask(&mut engine, "why", &asked).is_ok());
    }
}

#[test]
fn what_is_no_puzzle_is_said() {
    let mut engine = Engine::default();
    for (key, value, sentence) in [
        ("size", json!(9), "no puzzle"),
        ("size", json!(4), "2x2 and the 3x3"),
        ("scramble", json!("R U K"), "column 5"),
        ("conventions", json!("[bufer]"), "Line 1"),
        ("facelets", json!("UUUU"), "fit no cube"),
        ("facelets", json!("UUUULLLLFFFFRRRRBBBBDDDD"), "2x2"),
    ] {
        let mut source = source("R");
        source[key] = value;
        let said = ask(&mut engine, "trace", &json!({ "source": source })).unwrap_err();
        assert!(said.contains(sentence), "{key}: {said}");
    }
}
