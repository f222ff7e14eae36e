//! A page of scrambles to print, with the answers on pages of their own.

use crate::arguments::ScrambleOptions;
use crate::failure::Failure;
use crate::input::Session;
use crate::scramble::{Made, text, traced};
use crate::{pictures, trace};
use blind::{Condition, Method, lessons, reasons};
use cube::{Face, Size};
use draw::{Entry, Handout, Labels, Passage};

/// The page as HTML.
pub fn page(
    session: &Session,
    size: Size,
    method: Option<&Method>,
    condition: Option<&Condition>,
    options: &ScrambleOptions,
    all: &[Made],
) -> Result<String, Failure> {
    let voice = &session.voice;
    let colour = |face: Face| voice.colour(session.conventions.colour(face));
    let title = voice.say("sheet-title", &[("size", size.to_string().into())]);
    let mut handout = Handout::new(title, voice.language().tag());
    handout.columns = 2;
    handout.answers = voice.word("sheet-answers");
    let holding = [("up", colour(Face::U).into()), ("front", colour(Face::F).into())];
    handout.introduction.push(Passage::Text(voice.say("sheet-holding", &holding)));
    let lesson = options.lesson.as_ref().and_then(|name| lessons().iter().find(|one| one.name() == name));
    let chosen = lesson.map(|lesson| voice.lesson(lesson)).or(condition.map(ToString::to_string));
    if let Some(chosen) = chosen {
        let said = voice.say("sheet-condition", &[("condition", chosen.into())]);
        handout.introduction.push(Passage::Text(said));
    } else {
        handout.introduction.push(Passage::Text(voice.word("scramble-official")));
    }
    handout.introduction.push(Passage::Text(voice.word("sheet-care")));
    if let Some(seed) = options.seed {
        handout.foot = voice.say("sheet-seed", &[("seed", seed.to_string().into())]);
    }
    for made in all {
        let title = voice.word("sheet-picture");
        // Without letters: they belong to the solver's hold, the picture to the one for scrambling.
        let look = pictures::puzzle(session, &made.state, &title).labels(Labels::none());
        let mut entry = Entry {
            heading: String::new(),
            blocks: vec![Passage::Moves(text(session, made)), Passage::Pictures(vec![look.net()])],
            answer: Vec::new(),
        };
        if let Some(method) = method {
            entry.answer = answer(session, method, made)?;
        }
        handout.entries.push(entry);
    }
    Ok(handout.html())
}

/// The memo as a thread and, letter by letter, the reasons.
fn answer(session: &Session, method: &Method, made: &Made) -> Result<Vec<Passage>, Failure> {
    let (voice, conventions) = (&session.voice, &session.conventions);
    let traced = traced(session, method, made)?;
    let mut passages = vec![
        Passage::Moves(text(session, made)),
        Passage::Pictures(vec![pictures::thread(session, &traced.memo).svg()]),
        Passage::Text(voice.parity(&traced.memo, method.parity().is_some())),
    ];
    for part in traced.memo.parts() {
        let letters = &conventions.kind(part.orbit()).letters;
        let memo = letters.grouped(&part.targets(), conventions.pairs);
        passages.push(Passage::Heading(voice.kinds(part.orbit())));
        passages.push(Passage::Moves(memo));
        let chosen = trace::chosen(session, part.orbit());
        let mut said: Vec<String> = part
            .steps()
            .iter()
            .zip(reasons(part, chosen))
            .map(|(step, reason)| {
                format!("{}  {}", letters.of(step.target), voice.reason(&reason, part, conventions))
            })
            .collect();
        said.push(voice.finish(part, conventions));
        passages.push(Passage::List(said));
    }
    Ok(passages)
}
