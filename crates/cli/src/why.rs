//! `hoodwink why`: the slips that explain an attempt.

use crate::arguments::WhyOptions;
use crate::check::written;
use crate::failure::Failure;
use crate::input::{Puzzle, Session};
use crate::wire;
use blind::kind_name;
use cube::{Size, Turn, display_turns};
use diagnosis::{
    Answer, Ask, Begun, Catalogue, Change, Depth, Diagnosis, Explanation, HandDiagnosis, Inquiry, Plan,
    Verdict, explain,
};
use formats::observed::{self, Vocabulary};
use formats::slips;
use serde::Serialize;
use std::io::{self, Write};
use std::process::ExitCode;
use std::time::{Duration, Instant};

/// The most bytes of a list of scrambles.
const LONGEST_LIST_TEXT: usize = 64 << 10;

/// What `why --json` prints.
#[derive(Debug, Serialize)]
struct Told {
    version: u32,
    puzzle: u8,
    /// How many explanations are as likely as the first one, itself included.
    ambiguity: usize,
    /// How many explanations there are in all; those that act alike are one.
    found: usize,
    /// Whether the search was stopped before its end.
    broken_off: bool,
    /// Whether all that one slip or two explain was looked at.
    whole: bool,
    /// What is wrong with the memo itself, if it does not solve the puzzle.
    memo_fault: Option<String>,
    /// Which piece must be unsolved besides those that were told, if one must.
    missing: Option<String>,
    /// What was taken of kinds that were not looked at, if any were not.
    unlooked: Option<String>,
    /// How sure the first explanation is, or that there is none.
    summary: String,
    /// What cannot come from turning, if that is so.
    fault: Option<String>,
    /// The likeliest first.
    explanations: Vec<ToldExplanation>,
    /// Questions whose answers would tell most.
    questions: Vec<ToldQuestion>,
}

impl Told {
    /// No explanation of anything.
    fn nothing(puzzle: &Puzzle) -> Self {
        Self {
            version: wire::VERSION,
            puzzle: puzzle.size.layers(),
            ambiguity: 0,
            found: 0,
            broken_off: false,
            whole: true,
            memo_fault: None,
            missing: None,
            unlooked: None,
            summary: String::new(),
            fault: None,
            explanations: Vec::new(),
            questions: Vec::new(),
        }
    }
}

/// One explanation.
#[derive(Debug, Serialize)]
struct ToldExplanation {
    /// In words.
    sentence: String,
    /// 0 to 1, among all explanations, with those that act alike.
    weight: f64,
    /// In the order of the attempt.
    slips: Vec<ToldSlip>,
    /// Other slips that act alike, in words.
    alike: Vec<String>,
    /// How many ways there are in all that act like this one.
    ways: usize,
    /// The scramble as it would have been made, from a solved puzzle. With `rotated` and `played` after it, it gives
    /// the state that was observed (of what was done by hand: with that put right).
    scrambled: String,
    /// The rotations of picking the puzzle up as they would have been made.
    rotated: String,
    /// The moves as they would have been made.
    played: String,
    /// Stickers of the outcome without slips, with the first slip, and so on, in the hold in which they come out.
    passes: Vec<String>,
}

/// One slip.
#[derive(Debug, Serialize)]
struct ToldSlip {
    kind: &'static str,
    stage: &'static str,
    /// `corner` or `edge`, if it concerns one.
    pieces: Option<&'static str>,
    /// Which letter of the kind, from 1, if it concerns one.
    position: Option<usize>,
    sentence: String,
}

/// One question.
#[derive(Debug, Serialize)]
struct ToldQuestion {
    name: String,
    sentence: String,
    /// How likely the answer is yes.
    yes: f64,
    /// In bits.
    information: f64,
}

/// Runs the command.
pub fn run(session: &Session, options: &WhyOptions) -> Result<ExitCode, Failure> {
    let puzzle = session.puzzle(&options.state)?;
    let solver = session.solver(puzzle.size)?;
    let (given, _) = written(session, &options.memo, puzzle.size)?;
    let failed =
        |error: &diagnosis::WhyError| Failure::input(session.voice.why_error(error, &session.conventions));
    let begun = match &puzzle.scramble {
        Some(text) => Begun::Scramble(session.turns(text, puzzle.size)?),
        None => Begun::State(Box::new(puzzle.state)),
    };
    let list = list(session, options, puzzle.size)?;
    let plan = Plan::new(begun, given, &solver).and_then(|plan| plan.of_list(list));
    let plan = plan.map_err(|error| failed(&error))?;
    let answers: Vec<Answer> =
        options.answer.iter().map(|text| answer(session, text)).collect::<Result<_, _>>()?;
    let catalogue = match &options.rates {
        Some(path) => slips::read(&session.read(path, slips::MOST_BYTES)?)
            .map_err(|error| Failure::input(session.voice.slips_error(&error)))?,
        None => Catalogue::default(),
    };
    let depth = if options.deep { Depth::Three } else { Depth::Two };
    let most = usize::from(options.most);
    let inquiry = Inquiry { catalogue: &catalogue, depth, answers: &answers, most };
    let told_text = options.seen.as_ref().or(options.unsolved.as_ref());
    let text = told_text.ok_or_else(|| Failure::input(session.voice.word("why-no-outcome")))?;
    let colours = session.voice.colour_names(&session.conventions);
    let reading = Vocabulary { size: puzzle.size, conventions: &session.conventions, colours: &colours };
    let observed = observed::read(text, &reading)
        .map_err(|error| Failure::input(session.voice.observed_error(&error)))?;
    let began = Instant::now();
    let limit = Duration::from_secs(options.seconds);
    let verdict = explain(&plan, &observed, &inquiry, &mut |_| began.elapsed() < limit)
        .map_err(|error| failed(&error))?;
    let told = match &verdict {
        Verdict::Missing(missing) => {
            Told { missing: Some(session.voice.missing(missing)), ..Told::nothing(&puzzle) }
        }
        Verdict::ByHand(found) => by_hand(session, &puzzle, found)?,
        Verdict::Slips(found) => Told {
            summary: session.voice.why_summary(found, &observed, depth),
            ..told(session, &puzzle, &plan, found)?
        },
    };
    let fault = plan.memo_fault().map(|check| session.voice.memo_fault(&check, &session.conventions));
    tell(session, options, &plan, &Told { memo_fault: fault, ..told })
}

/// The scrambles of the list, one a line.
fn list(session: &Session, options: &WhyOptions, size: Size) -> Result<Vec<Vec<Turn>>, Failure> {
    let Some(path) = &options.list else { return Ok(Vec::new()) };
    let text = session.read(path, LONGEST_LIST_TEXT)?;
    let lines = text.lines().filter(|line| !line.trim().is_empty());
    lines.map(|line| session.turns(line, size)).collect()
}

fn answer(session: &Session, text: &str) -> Result<Answer, Failure> {
    let wrong = || Failure::input(session.voice.say("why-no-ask", &[("text", text.into())]));
    let (name, said) = text.split_once('=').ok_or_else(wrong)?;
    let yes = match said.trim() {
        "yes" => true,
        "no" => false,
        _ => return Err(wrong()),
    };
    Ok(Answer { ask: Ask::named(name.trim()).ok_or_else(wrong)?, yes })
}

fn tell(session: &Session, options: &WhyOptions, plan: &Plan<'_>, told: &Told) -> Result<ExitCode, Failure> {
    let mut out = io::stdout().lock();
    if options.json {
        serde_json::to_writer(&mut out, told).map_err(io::Error::from)?;
        writeln!(out)?;
        return Ok(ExitCode::SUCCESS);
    }
    let voice = &session.voice;
    for (orbit, letters) in plan.memo() {
        let scheme = &session.conventions.kind(*orbit).letters;
        writeln!(out, "{}: {}", voice.kinds(*orbit), scheme.grouped(letters, session.conventions.pairs))?;
    }
    writeln!(out)?;
    let sentences = [&told.missing, &told.memo_fault, &told.unlooked, &told.fault];
    for sentence in sentences.into_iter().flatten() {
        writeln!(out, "{sentence}")?;
    }
    let slips = told.explanations.first().is_some_and(|first| !first.slips.is_empty());
    if told.memo_fault.is_some() && slips {
        writeln!(out, "{}", voice.word("why-besides"))?;
    }
    let worth =
        |(number, explanation): &(usize, &ToldExplanation)| *number == 0 || explanation.weight >= 0.005;
    for (_, explanation) in told.explanations.iter().enumerate().filter(worth) {
        writeln!(out, "{:>3.0} %  {}", 100.0 * explanation.weight, explanation.sentence)?;
        if let Some(first) = explanation.alike.first() {
            let others = voice.say("why-ways", &[("count", (explanation.ways - 1).into())]);
            writeln!(
                out,
                "       {others}, {}",
                voice.say("why-also", &[("sentence", first.as_str().into())])
            )?;
        }
    }
    if !told.summary.is_empty() {
        writeln!(out, "{}", told.summary)?;
        if told.explanations.is_empty() && !options.deep {
            writeln!(out, "{}", voice.word("why-deeper"))?;
        }
    }
    if told.broken_off {
        writeln!(out, "{}", voice.word("why-broken-off"))?;
    }
    if !told.questions.is_empty() {
        writeln!(out, "{}", voice.word("why-questions"))?;
    }
    for question in &told.questions {
        let (sentence, name) = (question.sentence.as_str().into(), question.name.as_str().into());
        writeln!(out, "  {}", voice.say("why-question", &[("sentence", sentence), ("name", name)]))?;
    }
    Ok(ExitCode::SUCCESS)
}

fn moves(turns: &[Turn]) -> String {
    display_turns(turns).to_string()
}

fn told(session: &Session, puzzle: &Puzzle, plan: &Plan<'_>, found: &Diagnosis) -> Result<Told, Failure> {
    let questions = found
        .questions
        .iter()
        .map(|question| ToldQuestion {
            name: question.ask.to_string(),
            sentence: session.voice.ask(question.ask, plan),
            yes: question.yes,
            information: question.information,
        })
        .collect();
    let explanations = found
        .explanations
        .iter()
        .map(|explanation| {
            let sentence =
                session.voice.explanation(explanation.slips(), found.plan_solves, &session.conventions);
            told_explanation(session, puzzle, explanation, sentence)
        })
        .collect::<Result<_, _>>()?;
    Ok(Told {
        ambiguity: found.ambiguity,
        found: found.found,
        broken_off: found.broken_off,
        whole: found.whole,
        unlooked: session.voice.unlooked(&found.unlooked),
        explanations,
        questions,
        ..Told::nothing(puzzle)
    })
}

fn told_explanation(
    session: &Session,
    puzzle: &Puzzle,
    explanation: &Explanation,
    sentence: String,
) -> Result<ToldExplanation, Failure> {
    // Where only a state was given, a scramble that leads there.
    let scrambled = if puzzle.scramble.is_some() {
        explanation.scrambled().to_vec()
    } else {
        search::scramble::leading_to(&puzzle.state).map_err(|error| Failure::input(error.to_string()))?
    };
    let slips = explanation
        .slips()
        .iter()
        .map(|slip| ToldSlip {
            kind: slip.kind.name(),
            stage: slip.kind.stage().name(),
            pieces: slip.orbit().map(kind_name),
            position: match slip.change {
                Change::Scramble { turn, .. } => Some(turn + 1),
                _ => slip.letter().map(|letter| letter + 1),
            },
            sentence: session.voice.slip(slip, &session.conventions),
        })
        .collect();
    Ok(ToldExplanation {
        sentence,
        weight: explanation.weight(),
        slips,
        alike: explanation
            .alike()
            .iter()
            .map(|slips| session.voice.slips(slips, &session.conventions))
            .collect(),
        ways: explanation.ways(),
        scrambled: moves(&scrambled),
        rotated: moves(explanation.rotated()),
        played: moves(explanation.played()),
        passes: explanation.passes().iter().map(|state| session.stickers(state)).collect(),
    })
}

fn by_hand(session: &Session, puzzle: &Puzzle, found: &HandDiagnosis) -> Result<Told, Failure> {
    let explanations: Vec<ToldExplanation> = found
        .explanations
        .iter()
        .map(|hand| {
            let sentence = session.voice.by_hand(hand, &session.conventions);
            told_explanation(session, puzzle, &hand.explanation, sentence)
        })
        .collect::<Result<_, _>>()?;
    let best = explanations.first().map_or(0.0, |best| best.weight);
    Ok(Told {
        ambiguity: explanations.iter().filter(|other| other.weight >= best * (1.0 - 1e-9)).count(),
        found: explanations.len(),
        fault: Some(session.voice.unreachable(&found.fault, &session.conventions).join(" ")),
        explanations,
        ..Told::nothing(puzzle)
    })
}
