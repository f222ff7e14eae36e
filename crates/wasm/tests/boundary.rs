//! The boundary as a whole: whatever is asked, there is a view or a sentence, and the same again for the same question.

mod asked;

use std::collections::BTreeMap;

use asked::{Pages, Said};
use wasm::methods::{DEEP, FIRST, REST};
use wasm::{Engine, Failure};

/// Requests of each method.
const OF_EACH: usize = 24;

/// Says it to an engine; the answers in order.
fn answers(engine: &mut Engine, said: &[Said]) -> Vec<Result<String, Failure>> {
    let mut answers = Vec::new();
    for one in said {
        match one {
            Said::Put { kind, handle, revision, content } => engine.put(kind, handle, *revision, content),
            Said::Asked { method, language, arguments } => {
                answers.push(engine.call(method, language, &arguments.to_string(), &mut |_| {}));
            }
        }
    }
    answers
}

#[test]
fn every_method_answers_whatever_it_is_asked_and_never_otherwise() {
    // Views, failures.
    let mut tally: BTreeMap<&str, [usize; 2]> = BTreeMap::new();
    let (mut one, mut other) = (Engine::default(), Engine::default());
    for (number, method) in FIRST.iter().chain(REST).chain(DEEP).enumerate() {
        // A method more does not change what the others are asked.
        let mut pages = Pages::new(20_261_128 + 1_000 * number as u64);
        for drawn in 0..4 * OF_EACH {
            // Where most of what is drawn is wrong, more is drawn, until enough was answered to say something.
            if drawn >= OF_EACH && tally.get(method).is_some_and(|[views, _]| *views >= OF_EACH / 4) {
                break;
            }
            let said = pages.say(method);
            let answer = answers(&mut one, &said);
            // Another engine, and the same with everything kept from the first time.
            assert_eq!(answers(&mut other, &said), answer, "{said:?}");
            assert_eq!(answers(&mut one, &said), answer, "{said:?}");
            for answer in answer {
                let counted = tally.entry(method).or_default();
                match answer {
                    Ok(_) => counted[0] += 1,
                    Err(failure) => {
                        assert!(
                            !failure.sentence.is_empty() && failure.missing.is_none(),
                            "{said:?}: {failure:?}"
                        );
                        counted[1] += 1;
                    }
                }
            }
        }
    }
    // Enough of the requests can be answered, and where a request can be wrong some are.
    for (method, [views, failures]) in &tally {
        assert!(*views >= OF_EACH / 4, "{method}: {views} views and {failures} failures say little");
    }
    let wrong = tally.values().filter(|[_, failures]| *failures > 0).count();
    assert!(wrong > tally.len() / 2, "{tally:?}");
}

#[test]
fn an_engine_asked_in_any_order_gives_the_same_answers() {
    let mut pages = Pages::new(7);
    let said: Vec<Vec<Said>> =
        (0..60).map(|at| pages.say(["trace", "scene", "check", "play", "case"][at % 5])).collect();
    let mut engine = Engine::default();
    let forwards: Vec<_> = said.iter().map(|one| answers(&mut engine, one)).collect();
    let mut engine = Engine::default();
    let mut backwards: Vec<_> = said.iter().rev().map(|one| answers(&mut engine, one)).collect();
    backwards.reverse();
    assert_eq!(forwards, backwards);
}
