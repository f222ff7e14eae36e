//! What went wrong in an attempt: the slips that explain how the puzzle came out.

use blind::{Conventions, Held};
use cube::{Facelets, Rotation, Size};
use diagnosis::{
    Answer, Ask, Begun, Catalogue, Depth, Diagnosis, Explanation, Glimpse, HandDiagnosis, Inquiry, Observed,
    Plan, Verdict, explain as explained_by,
};
use formats::observed::{Vocabulary, read};
use serde::{Deserialize, Serialize};
use voice::Voice;

use crate::Failure;
use crate::call::{Call, Progress};
use crate::check::{CameOut, Written, came_out, letters, pointed, spelled};
use crate::names::moves;
use crate::picture::Pointed;
use crate::situation::Source;

/// An attempt.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Attempt {
    /// The puzzle as it was scrambled.
    pub source: Source,
    /// The memo; without any letters, the one that the engine would make.
    pub memo: Written,
    /// The scrambles of the list that the scramble is of, one a line.
    pub list: String,
    /// How the puzzle came out: the colours by the letters of the faces, held in any way.
    pub seen: String,
    /// How it came out in words; where there are any, they stand for the colours.
    pub told: String,
    /// What was answered so far.
    pub answers: Vec<Answered>,
    /// Whether to look for three slips.
    pub deep: bool,
}

/// An answer.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Answered {
    /// The question's name.
    pub name: String,
    /// The answer.
    pub yes: bool,
}

/// What explains it.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Told {
    /// What cannot come from turning, or which piece must be missing from what was told, if that is so.
    pub fault: Option<String>,
    /// What is to be known before the explanations: a fault of the memo itself, kinds that were not looked at.
    pub remarks: Vec<String>,
    /// The likeliest first.
    pub explanations: Vec<Likely>,
    /// How many are as likely as the first, or that there is none.
    pub summary: String,
    /// The questions whose answers would tell most.
    pub questions: Vec<Asked>,
    /// Where it most likely went wrong, in a few words.
    pub headline: String,
    /// The memo that was carried out: what was written, or ours.
    pub memo: Written,
    /// The colours as it came out, by the letters of the faces; empty where nothing explains it.
    pub outcome: String,
    /// Which pieces are not solved.
    pub unsolved: String,
}

/// An explanation.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Likely {
    /// In words.
    pub sentence: String,
    /// How likely it is among all.
    pub share: String,
    /// Other slips that come to the same, in words.
    pub alike: Vec<String>,
    /// The letters of the memo that it is about.
    pub cracked: Vec<Pointed>,
}

/// A question.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Asked {
    /// Its name, for the answer.
    pub name: String,
    /// In words.
    pub sentence: String,
}

/// Explanations that are shown.
const MOST: usize = 8;
/// Explanations below this share are left out, but for the first.
const LEAST: f64 = 0.005;

pub(crate) fn explain(call: &mut Call<'_>, attempt: &Attempt) -> Result<Told, Failure> {
    let voice = call.voice;
    let situation = call.desk.situation(voice, &attempt.source)?;
    let solver = &situation.solver;
    let conventions = solver.conventions();
    let failed = |error: &diagnosis::WhyError| Failure::new(voice.why_error(error, conventions));
    let given = letters(voice, solver, &attempt.memo)?;
    let given = given.iter().any(|(_, letters)| !letters.is_empty()).then_some(given);
    let begun = if situation.content.facelets.is_empty() {
        let scramble = moves(voice, conventions, solver.size(), &situation.content.scramble)?;
        Begun::Scramble(scramble.flatten())
    } else {
        Begun::State(Box::new(situation.scrambled))
    };
    let lines = attempt.list.lines().filter(|line| !line.trim().is_empty());
    let turns = |line| Ok(moves(voice, conventions, solver.size(), line)?.flatten());
    let list = lines.map(turns).collect::<Result<_, Failure>>()?;
    let plan = Plan::new(begun, given, solver).and_then(|plan| plan.of_list(list));
    let plan = plan.map_err(|error| failed(&error))?;
    let answers: Vec<Answer> = attempt
        .answers
        .iter()
        .map(|answered| {
            let ask = Ask::named(&answered.name)
                .ok_or_else(|| Failure::new(format!("There is no question \"{}\".", answered.name)))?;
            Ok(Answer { ask, yes: answered.yes })
        })
        .collect::<Result<_, Failure>>()?;
    let catalogue = Catalogue::default();
    let depth = if attempt.deep { Depth::Three } else { Depth::Two };
    let inquiry = Inquiry { catalogue: &catalogue, depth, answers: &answers, most: MOST };
    let observed = observed(voice, conventions, solver.size(), attempt)?;
    let report = &mut *call.report;
    let verdict = explained_by(&plan, &observed, &inquiry, &mut |share| {
        // Who does not want to wait longer ends the worker.
        report(Progress { done: (share * 100.0) as u32, of: Some(100) });
        true
    })
    .map_err(|error| failed(&error))?;
    let told = match &verdict {
        Verdict::Missing(missing) => Told { fault: Some(voice.missing(missing)), ..Told::default() },
        Verdict::ByHand(found) => by_hand(voice, found, &plan),
        Verdict::Slips(found) => {
            Told { summary: voice.why_summary(found, &observed, depth), ..slips(voice, found, &plan) }
        }
    };
    // What explains it led to what was seen, in whatever words that was told; it is shown as it is held while solving.
    let last = match &verdict {
        Verdict::Slips(found) => found.explanations.first().and_then(|first| first.passes().last()),
        Verdict::Missing(_) | Verdict::ByHand(_) => None,
    };
    let held = last.map(|state| Held::new(state, Rotation::NONE).state);
    let CameOut { outcome, unsolved } =
        held.map(|state| came_out(voice, &situation, &state)).unwrap_or_default();
    let told = Told { memo: spelled(conventions, plan.memo()), outcome, unsolved, ..told };
    let Some(check) = plan.memo_fault() else { return Ok(told) };
    let mut remarks = vec![voice.memo_fault(&check, conventions)];
    remarks.extend(told.remarks);
    if matches!(&verdict, Verdict::Slips(found) if found.explanations.first().is_some_and(|first| !first.slips().is_empty()))
    {
        remarks.push(voice.word("why-besides"));
    }
    Ok(Told { remarks, ..told })
}

/// What was seen: told in words, or painted.
fn observed(
    voice: &Voice,
    conventions: &Conventions,
    size: Size,
    attempt: &Attempt,
) -> Result<Observed, Failure> {
    if !attempt.told.trim().is_empty() {
        let colours = voice.colour_names(conventions);
        let reading = Vocabulary { size, conventions, colours: &colours };
        return read(&attempt.told, &reading).map_err(|error| Failure::new(voice.observed_error(&error)));
    }
    let seen: Facelets = attempt.seen.parse().map_err(|error| Failure::new(voice.facelet_error(&error)))?;
    let colours = seen.colours().iter().copied().map(Some).collect();
    let glimpse = Glimpse::new(seen.size(), colours);
    let glimpse = glimpse.ok_or_else(|| Failure::new(voice.word("state-empty")))?;
    Ok(Observed::Stickers(Box::new(glimpse)))
}

fn by_hand(voice: &Voice, found: &HandDiagnosis, plan: &Plan<'_>) -> Told {
    let conventions = plan.solver().conventions();
    let explanations = found.explanations.iter().map(|hand| {
        let sentence = voice.by_hand(hand, conventions);
        explained(voice, &hand.explanation, sentence, plan)
    });
    Told {
        fault: Some(voice.unreachable(&found.fault, conventions).join(" ")),
        explanations: explanations.collect(),
        headline: found.explanations.first().map_or_else(
            || voice.word("bench-cause-none"),
            |hand| voice.where_it_went_wrong(hand.explanation.slips()),
        ),
        ..Told::default()
    }
}

fn slips(voice: &Voice, found: &Diagnosis, plan: &Plan<'_>) -> Told {
    let conventions = plan.solver().conventions();
    let worth = |(number, explanation): &(usize, &Explanation)| *number == 0 || explanation.weight() >= LEAST;
    let explanations: Vec<Likely> = found
        .explanations
        .iter()
        .enumerate()
        .filter(worth)
        .map(|(_, explanation)| {
            let sentence = voice.explanation(explanation.slips(), found.plan_solves, conventions);
            explained(voice, explanation, sentence, plan)
        })
        .collect();
    let questions = found
        .questions
        .iter()
        .map(|question| Asked { name: question.ask.to_string(), sentence: voice.ask(question.ask, plan) })
        .collect();
    Told {
        explanations,
        questions,
        remarks: voice.unlooked(&found.unlooked).into_iter().collect(),
        headline: found
            .explanations
            .first()
            .map_or_else(|| voice.word("bench-cause-none"), |first| voice.where_it_went_wrong(first.slips())),
        ..Told::default()
    }
}

fn explained(voice: &Voice, explanation: &Explanation, sentence: String, plan: &Plan<'_>) -> Likely {
    let conventions = plan.solver().conventions();
    Likely {
        cracked: pointed(plan.memo(), |orbit, at| {
            explanation.slips().iter().any(|slip| slip.concerns(orbit, at))
        }),
        sentence,
        share: voice.share(explanation.weight()),
        alike: explanation.alike().iter().map(|slips| voice.slips(slips, conventions)).collect(),
    }
}
