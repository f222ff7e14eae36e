//! A page of scrambles to print, with the answers on pages of their own.

use super::{Made, text};
use crate::arguments::ScrambleOptions;
use crate::failure::Failure;
use crate::input::Session;
use crate::pictures;
use blind::Solver;
use choose::{Condition, lessons};
use cube::Face;
use draw::{Entry, Handout, Labels, Passage};

/// The page as HTML.
pub fn page(
    session: &Session,
    solver: &Solver,
    condition: Option<&Condition>,
    options: &ScrambleOptions,
    all: &[Made],
) -> Result<String, Failure> {
    let voice = &session.voice;
    let colour = |face: Face| voice.colour(session.conventions.colour(face));
    let title = voice.say("sheet-title", &[("size", solver.size().to_string().into())]);
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
        handout.entries.push(Entry {
            heading: String::new(),
            blocks: vec![Passage::Moves(text(session, made)), Passage::Pictures(vec![look.net()])],
            answer: answer(session, solver, options, made)?,
        });
    }
    Ok(handout.html())
}

/// The memo as a thread and, letter by letter, the reasons.
fn answer(
    session: &Session,
    solver: &Solver,
    options: &ScrambleOptions,
    made: &Made,
) -> Result<Vec<Passage>, Failure> {
    let (voice, conventions) = (&session.voice, &session.conventions);
    let memo = session.memo(solver, &made.state, options.hold.into())?;
    let mut passages = vec![
        Passage::Moves(text(session, made)),
        Passage::Pictures(vec![pictures::thread(session, &memo).svg()]),
        Passage::Text(voice.parity(&memo, solver)),
    ];
    for part in memo.parts() {
        let letters = &conventions.kind(part.orbit()).letters;
        passages.push(Passage::Heading(voice.kinds(part.orbit())));
        passages.push(Passage::Moves(letters.grouped(&part.targets(), conventions.pairs)));
        let mut said: Vec<String> = part
            .steps()
            .iter()
            .zip(solver.reasons(part))
            .map(|(step, reason)| {
                format!("{}  {}", letters.of(step.target), voice.reason(&reason, part, conventions))
            })
            .collect();
        said.push(voice.finish(part, conventions));
        passages.push(Passage::List(said));
    }
    Ok(passages)
}
