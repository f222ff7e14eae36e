//! A page for pupils and a sheet of exercises, from one puzzle.

use blind::{Action, HoldChoice};
use cube::{Orbit, Rotation, Turn, display_turns};
use draw::{Hidden, Mark, Place, Svg, Theme, View};
use search::random::seeded;
use search::scramble::Event;
use serde::{Deserialize, Serialize};

use crate::Failure;
use crate::call::{Call, Progress};
use crate::names::{fault, kind};
use crate::picture::with_letter;
use crate::scramble::seed;
use crate::situation::{Situation, Source};
use crate::trace::part;

/// What the lesson is to explain.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Plan {
    /// The puzzle.
    pub source: Source,
    /// How it is picked up.
    pub holding: bool,
    /// The kinds whose trace is explained, as files name them; one that the puzzle does not have is left out.
    pub kinds: Vec<String>,
    /// How each letter is carried out.
    pub execution: bool,
    /// How many exercises there are.
    pub exercises: u8,
    /// The seed of the exercises, in two halves.
    pub seed: [u32; 2],
}

/// A page for pupils.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Lesson {
    /// Its title.
    pub title: String,
    /// The scramble, if there is one.
    pub scramble: String,
    /// The chapters.
    pub chapters: Vec<Chapter>,
    /// The exercises.
    pub exercises: Vec<Exercise>,
}

/// A chapter.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Chapter {
    /// Its heading.
    pub heading: String,
    /// What stands before its steps.
    pub lead: Vec<String>,
    /// Its steps.
    pub steps: Vec<Explained>,
    /// All moves together, if it has any.
    pub moves: String,
    /// What stands after its steps.
    pub end: Vec<String>,
}

/// A step with its picture.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Explained {
    /// What it is about, such as a letter.
    pub name: String,
    /// Moves, if there are any.
    pub moves: String,
    /// In words.
    pub text: String,
    /// The picture as SVG.
    pub svg: String,
    /// A name for the picture's file, without an ending.
    pub file: String,
}

/// An exercise with its answer.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Exercise {
    /// The scramble.
    pub scramble: String,
    /// The puzzle unfolded.
    pub svg: String,
    /// What is asked, a line of the sheet each.
    pub asked: Vec<String>,
    /// The answers.
    pub answers: Vec<String>,
    /// A name for the picture's file, without an ending.
    pub file: String,
}

/// The most exercises of a sheet.
const MOST_EXERCISES: u8 = 12;

/// The puzzle as it stands on paper: the faces out of sight swung open beside it.
fn solid(picture: &draw::Picture) -> Svg {
    let view = View { hold: Rotation::NONE, ..View::default() }.with_hidden(Hidden::SwungOpen);
    picture.clone().theme(Theme::Light).solid(&view)
}

pub(crate) fn lesson(call: &mut Call<'_>, plan: &Plan) -> Result<Lesson, Failure> {
    let voice = call.voice;
    let situation = call.desk.situation(voice, &plan.source)?;
    let mut chapters = Vec::new();
    if plan.holding {
        chapters.push(picking_up(call, &situation));
    }
    let kinds = plan.kinds.iter().map(|name| kind(voice, name)).collect::<Result<Vec<Orbit>, _>>()?;
    let parts = situation.solve.memo.parts().iter();
    for trace in parts.filter(|trace| kinds.contains(&trace.orbit())) {
        chapters.push(traced(call, &situation, trace));
    }
    if plan.execution {
        chapters.push(carried_out(call, &situation)?);
    }
    let exercises = exercises(call, &situation, plan)?;
    let content = &situation.content;
    let scramble = if content.facelets.is_empty() { content.scramble.trim() } else { "" };
    Ok(Lesson { title: voice.word("lesson-title"), scramble: scramble.to_owned(), chapters, exercises })
}

fn picking_up(call: &Call<'_>, situation: &Situation) -> Chapter {
    let voice = call.voice;
    let mut picture = situation.picture(voice, &situation.looks, &voice.word("picture-puzzle"));
    for trace in situation.solve.memo.parts() {
        picture = picture.mark(Place::new(trace.orbit(), trace.buffer()), Mark::Buffer);
    }
    Chapter {
        heading: voice.word("lesson-holding"),
        lead: vec![voice.word("lesson-holding-lead")],
        steps: vec![Explained {
            name: String::new(),
            moves: display_turns(situation.solve.held.rotation.turns()).to_string(),
            text: voice.picked_up(&situation.solve.held, situation.conventions()),
            svg: solid(&picture).into_string(),
            file: "hoodwink-held".to_owned(),
        }],
        moves: String::new(),
        end: Vec::new(),
    }
}

fn traced(call: &Call<'_>, situation: &Situation, trace: &blind::Trace) -> Chapter {
    let voice = call.voice;
    let part = part(call, situation, trace);
    let puzzle = situation.picture(voice, &situation.looks, "");
    let letters = part.groups.iter().flatten();
    let steps = trace
        .steps()
        .iter()
        .zip(letters)
        .map(|(step, letter)| {
            let mut picture = with_letter(puzzle.clone(), trace, *step);
            picture = picture.titled(letter.said.clone());
            Explained {
                name: letter.letter.clone(),
                moves: String::new(),
                text: letter.reason.clone(),
                svg: solid(&picture).into_string(),
                file: format!("hoodwink-{}-{}", part.kind, letter.index + 1),
            }
        })
        .collect();
    Chapter {
        heading: voice.say("lesson-trace", &[("kinds", part.name.clone().into())]),
        lead: vec![voice.say("lesson-trace-lead", &[("buffer", part.buffer.clone().into())])],
        steps,
        moves: String::new(),
        end: vec![part.finish, part.sentence],
    }
}

fn carried_out(call: &Call<'_>, situation: &Situation) -> Result<Chapter, Failure> {
    let voice = call.voice;
    let solution = situation.solution(voice)?;
    let mut now = situation.looks;
    let mut steps = Vec::new();
    for (number, action) in solution.actions().iter().enumerate() {
        let turns: Vec<Turn> = action.turns();
        let mut picture = situation.picture(voice, &now, "");
        if let Some((orbit, _, targets)) = action.letters() {
            let buffer = situation.conventions().kind(orbit).buffer;
            picture = picture.mark(Place::new(orbit, buffer), Mark::Buffer);
            for &target in targets {
                picture = picture.mark(Place::new(orbit, target), Mark::Target);
            }
        }
        let (name, text) = match (action, action.letters()) {
            (Action::Letter { orbit, target, setup, undo, .. }, _) => {
                let letters = &situation.conventions().kind(*orbit).letters;
                let (setup, undo) = (display_turns(setup).to_string(), display_turns(undo).to_string());
                let text = voice.carried_out(*orbit, *target, letters, &setup, &undo);
                (letters.of(*target).to_owned(), text)
            }
            (_, Some((orbit, _, targets))) => {
                let letters = &situation.conventions().kind(orbit).letters;
                let names: Vec<&str> = targets.iter().map(|&target| orbit.name(target)).collect();
                (letters.spell(targets), names.join(" → "))
            }
            (_, None) => (voice.word("step-parity"), voice.word("lesson-step-parity")),
        };
        picture = picture.titled(voice.step_said(number + 1, solution.actions().len(), &name, ""));
        steps.push(Explained {
            name,
            moves: display_turns(&turns).to_string(),
            text,
            svg: solid(&picture).into_string(),
            file: format!("hoodwink-step-{}", number + 1),
        });
        now = now.after(&turns);
    }
    Ok(Chapter {
        heading: voice.word("lesson-execution"),
        lead: vec![situation.parity(voice), voice.word("lesson-hands")],
        steps,
        moves: display_turns(solution.moves()).to_string(),
        end: Vec::new(),
    })
}

fn exercises(call: &mut Call<'_>, situation: &Situation, plan: &Plan) -> Result<Vec<Exercise>, Failure> {
    let (voice, solver) = (call.voice, &situation.solver);
    let mut generator = seeded(seed(plan.seed));
    let wanted = plan.exercises.min(MOST_EXERCISES);
    let mut exercises = Vec::new();
    for number in 0..wanted {
        (call.report)(Progress { done: u32::from(number), of: Some(u32::from(wanted)) });
        let drawn = search::scramble::scramble(solver.size(), Event::Sighted, &mut generator)
            .map_err(|error| Failure::new(error.to_string()))?;
        let state = drawn.state();
        let held = solver.pick_up(state, HoldChoice::Conventions).map_err(|error| fault(voice, error))?;
        let memo = solver.memo(&held.state).map_err(|error| fault(voice, error))?;
        let looks = state.after(held.rotation.turns());
        let title = voice.say("lesson-exercise", &[("number", u32::from(number + 1).into())]);
        let picture = situation.picture(voice, &looks, &title);
        let parts = memo.parts();
        exercises.push(Exercise {
            scramble: display_turns(drawn.turns()).to_string(),
            svg: picture.theme(Theme::Light).net().into_string(),
            asked: parts.iter().map(|trace| voice.kinds(trace.orbit())).collect(),
            answers: parts.iter().map(|trace| voice.memo_line(trace, solver.conventions())).collect(),
            file: format!("hoodwink-exercise-{}", number + 1),
        });
    }
    Ok(exercises)
}
