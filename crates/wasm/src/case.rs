//! One case of a three-cycle: its picture, everything that solves it, and how that looks as it is turned.

use blind::CycleCase;
use cube::{Algorithm, State, Turn, count, simplified};
use draw::{Hidden, Theme, Turning, View, case_picture};
use search::cycle::Milestone;
use search::ease::{Model, best_first};
use search::factor::factored;
use serde::{Deserialize, Serialize};
use sheet::{Origin, SIZE, Verdict, verdict_of};
use std::ops::ControlFlow;
use voice::Voice;

use crate::Failure;
use crate::call::{Call, Progress};
use crate::document::DocumentName;
use crate::look::{Drawn, Looking, palette};
use crate::names::algorithm;
use crate::sheet::{Trouble, seconds};
use crate::subject::{Named, SheetAccount, Subject};

/// Cases whose pictures are wanted.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Pictured {
    /// What they are of.
    pub subject: Subject,
    /// The two targets of each case.
    pub cases: Vec<[String; 2]>,
}

/// A case.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Chosen {
    /// What it is of.
    pub subject: Subject,
    /// The first target's sticker.
    pub first: String,
    /// The second target's sticker.
    pub second: String,
}

/// A case of a sheet.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct OfSheet {
    /// The case.
    pub chosen: Chosen,
    /// The sheet; none for an empty one.
    pub sheet: Option<DocumentName>,
}

/// Everything that is known of a case.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Case {
    /// Letters and stickers.
    pub title: String,
    /// What the letters ask for, in words.
    pub meaning: String,
    /// Everything that solves it, the easiest first.
    pub ways: Vec<Way>,
    /// Algorithms that stand under it and do something else.
    pub troubles: Vec<Trouble>,
}

/// An algorithm that solves a case.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Way {
    /// As it is written, with brackets where it has any.
    pub algorithm: String,
    /// Its moves, one by one.
    pub moves: Vec<String>,
    /// How many moves there are, a slice counted as one.
    pub count: String,
    /// The estimated time.
    pub time: String,
    /// Where hands take hold anew.
    pub regrips: String,
    /// Where it comes from.
    pub origin: String,
    /// Whether the sheet has it.
    pub kept: bool,
}

/// A moment of an algorithm.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Turned {
    /// The case.
    pub chosen: Chosen,
    /// The algorithm.
    pub algorithm: String,
    /// How the puzzle is looked at.
    pub looking: Looking,
    /// How many moves are done.
    pub at: u32,
    /// How much of the next one is done, 0 to 1.
    pub progress: f64,
}

/// A search that is wanted.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Sought {
    /// The case.
    pub chosen: Chosen,
    /// The sheet; none for an empty one.
    pub sheet: Option<DocumentName>,
    /// The turns that may be used.
    pub moves: String,
    /// How long an algorithm may be.
    pub longest: u8,
}

/// What a search found.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Found {
    /// The least length, and how far the order is certain.
    pub said: Vec<String>,
    /// The easiest first.
    pub ways: Vec<Way>,
}

/// The most pictures of one request.
const MOST_PICTURES: usize = 60;
/// How many algorithms a search lists.
const LISTED: usize = 12;
/// The greatest length that a page searches.
const LONGEST: u8 = 12;

/// The puzzle before the case is solved, and with nothing turned yet.
fn picture(voice: &Voice, named: &Named, case: CycleCase, now: &State, begun: &State) -> draw::Picture {
    let title = voice.case(case, &named.conventions);
    // As it is held to be solved: the colours of the conventions lie where the hold puts them.
    let looks = State::held(SIZE, named.conventions.holding).then(now);
    let plain = draw::puzzle(&looks, &named.conventions, palette(voice, &named.conventions), title)
        .theme(Theme::Page);
    case_picture(case, &named.conventions, plain, now, begun)
}

pub(crate) fn pictures(call: &mut Call<'_>, pictured: &Pictured) -> Result<Vec<String>, Failure> {
    let voice = call.voice;
    let named = pictured.subject.named(call)?;
    let solved = State::solved(SIZE);
    let view = View::default().with_hidden(Hidden::SwungOpen);
    pictured
        .cases
        .iter()
        .take(MOST_PICTURES)
        .map(|[first, second]| {
            let case = named.case(voice, first, second)?;
            Ok(picture(voice, &named, case, &solved, &solved).solid(&view).into_string())
        })
        .collect()
}

/// An algorithm as it is shown. `origin` is where it comes from, or what else is to be said of it.
fn way(voice: &Voice, model: &Model, algorithm: &Algorithm, origin: String, kept: bool) -> Way {
    // What a set-up and the algorithm after it undo, nobody turns.
    let turns = simplified(&algorithm.flatten());
    let estimate = model.estimate(&turns);
    Way {
        algorithm: algorithm.to_string(),
        moves: turns.iter().map(Turn::to_string).collect(),
        count: voice.say("way-moves", &[("count", count(&turns).slice.into())]),
        time: seconds(voice, blind::milliseconds(model, &turns)),
        regrips: voice.regrips(&estimate),
        origin,
        kept,
    }
}

fn is_kept(sheet: &SheetAccount, case: CycleCase, turns: &[Turn]) -> bool {
    sheet
        .rows(case)
        .filter(|(_, verdict)| **verdict == Verdict::Right)
        .any(|(row, _)| Algorithm::parse(&row.algorithm, SIZE).is_ok_and(|read| read.flatten() == turns))
}

pub(crate) fn case(call: &mut Call<'_>, of: &OfSheet) -> Result<Case, Failure> {
    let voice = call.voice;
    let chosen = &of.chosen;
    let named = chosen.subject.named(call)?;
    let kept = chosen.subject.sheet(call, of.sheet.as_ref())?;
    let case = named.case(voice, &chosen.first, &chosen.second)?;
    let (model, search) = (call.desk.searches.model(), call.desk.searches.conjugates(named.orbit));
    let ways = kept
        .sheet
        .alternatives(case, &search, &model)
        .iter()
        .map(|known| {
            let is_kept = is_kept(&kept, case, &known.algorithm.flatten());
            way(voice, &model, &known.algorithm, voice.origin(known.origin), is_kept)
        })
        .collect();
    let good = |verdict: &Verdict| matches!(verdict, Verdict::Right | Verdict::Empty);
    let troubles = kept
        .rows(case)
        .filter(|(_, verdict)| !good(verdict))
        .map(|(row, verdict)| Trouble {
            case: String::new(),
            unread: false,
            algorithm: row.algorithm.clone(),
            said: voice.verdict(row, verdict, &named.conventions),
        })
        .collect();
    let name = |sticker| named.orbit.name(sticker);
    let blanks = [
        ("buffer", name(case.buffer).into()),
        ("first", name(case.first).into()),
        ("second", name(case.second).into()),
    ];
    Ok(Case {
        title: voice.case(case, &named.conventions),
        meaning: voice.say("case-meaning", &blanks),
        ways,
        troubles,
    })
}

pub(crate) fn turned(call: &mut Call<'_>, turned: &Turned) -> Result<Drawn, Failure> {
    let voice = call.voice;
    let named = turned.chosen.subject.named(call)?;
    let case = named.case(voice, &turned.chosen.first, &turned.chosen.second)?;
    let turns = simplified(&algorithm(voice, SIZE, &turned.algorithm)?.flatten());
    let at = (turned.at as usize).min(turns.len());
    let solved = State::solved(SIZE);
    let now = solved.after(&cube::inverted(&turns)).after(&turns[..at]);
    let picture = picture(voice, &named, case, &now, &solved.after(&turns[..at]));
    let turning = (turned.progress > 0.0)
        .then(|| turns.get(at))
        .flatten()
        .map(|&turn| Turning { turn, progress: turned.progress });
    Ok(turned.looking.drawn(&picture, turning))
}

pub(crate) fn find(call: &mut Call<'_>, sought: &Sought) -> Result<Found, Failure> {
    let voice = call.voice;
    let named = sought.chosen.subject.named(call)?;
    let kept = sought.chosen.subject.sheet(call, sought.sheet.as_ref())?;
    let case = named.case(voice, &sought.chosen.first, &sought.chosen.second)?;
    let CycleCase { orbit, buffer, first, second } = case;
    let effect = search::cycle::Effect::three_cycle(SIZE, orbit, buffer, first, second)
        .map_err(|error| Failure::new(voice.effect_error(&error, &named.conventions)))?;
    let longest = usize::from(sought.longest.clamp(1, LONGEST));
    let report = &mut *call.report;
    let finder = call.desk.searches.finder(voice, &sought.moves, longest, &mut |event| {
        if let Milestone::Reached { .. } = event {
            report(Progress { done: 0, of: None });
        }
        // Who does not want to wait longer ends the worker.
        ControlFlow::Continue(())
    })?;
    let model = call.desk.searches.model();
    let ranking = best_first(&finder, &model, &effect, LISTED, &mut |length, done| {
        report(Progress { done: length as u32 * 1000 + done, of: Some(longest as u32 * 1000 + 1000) });
        ControlFlow::Continue(())
    })
    .map_err(|error| Failure::new(voice.page_find_error(&error)))?;
    let title = voice.case(case, &named.conventions);
    let said = match ranking.shortest {
        None => {
            vec![voice.say("find-none", &[("case", title.into()), ("searched", ranking.searched.into())])]
        }
        Some(shortest) => vec![
            voice.say("find-line", &[("case", title.into()), ("shortest", shortest.into())]),
            voice.say(
                "find-easiest",
                &[("count", ranking.proven.into()), ("searched", ranking.searched.into())],
            ),
        ],
    };
    let ways = ranking
        .algorithms
        .iter()
        .filter_map(|ranked| {
            let written = factored(SIZE, &ranked.turns);
            let written = written.or_else(|| Algorithm::from_turns(SIZE, &ranked.turns).ok())?;
            // What is written must solve the case as well.
            let right = verdict_of(case, &written.to_string()) == Verdict::Right;
            let is_kept = is_kept(&kept, case, &ranked.turns);
            right.then(|| way(voice, &model, &written, voice.origin(Origin::Search), is_kept))
        })
        .collect();
    Ok(Found { said, ways })
}
