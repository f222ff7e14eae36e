//! `hoodwink trace`: the memo, its reasons and a solution.

use crate::algs;
use crate::arguments::{Hold, TraceOptions};
use crate::failure::Failure;
use crate::input::{Puzzle, Session};
use crate::{batch, pictures, wire};
use blind::{
    Action, BreakChoice, BufferIs, Carrier, Chosen, Held, KINDS, Memo, Method, Outfit, Role, Solution,
    best_hold, hold, kind_name, reasons, solved_pieces,
};
use cube::{Face, Orbit, Rotation, Size, State, display_turns};
use std::io::{self, Write};
use std::process::ExitCode;

/// Everything that was found out about one scramble.
pub struct Traced {
    /// How it is picked up.
    pub held: Held,
    /// Its memo.
    pub memo: Memo,
    /// Its solution.
    pub solution: Solution,
}

/// Runs the command.
pub fn run(session: &Session, options: &TraceOptions) -> Result<ExitCode, Failure> {
    let size = session.size(&options.state.puzzle)?;
    let method = method(session, size)?;
    if options.hold == Hold::Best && size.is_odd() {
        return Err(Failure::input(session.voice.say("hold-best-odd", &[("size", size.to_string().into())])));
    }
    if let Some(path) = &options.batch {
        return batch::run(session, &method, options.hold, path);
    }
    let puzzle = session.puzzle(&options.state)?;
    let traced = trace(session, &method, &puzzle.state, options.hold)?;
    let mut out = io::stdout().lock();
    if options.json {
        serde_json::to_writer(&mut out, &to_wire(session, &puzzle, &traced)).map_err(io::Error::from)?;
        writeln!(out)?;
    } else {
        out.write_all(text(session, &method, &puzzle, &traced, options.short).as_bytes())?;
    }
    Ok(ExitCode::SUCCESS)
}

/// The method of the conventions on a puzzle.
pub fn method(session: &Session, size: Size) -> Result<Method, Failure> {
    let sheets = session.sheets_of(&session.conventions, session.directory.as_deref())?;
    let model = session.conventions.ease.is_some().then(|| algs::model(session, None)).transpose()?;
    Method::with(size, &session.conventions, &Outfit { sheets: &sheets, model: model.as_ref(), timed: false })
        .map_err(|error| Failure::input(session.voice.method_error(&error)))
}

/// Picks up, traces, carries out and verifies.
pub fn trace(session: &Session, method: &Method, state: &State, choice: Hold) -> Result<Traced, Failure> {
    let conventions = &session.conventions;
    let held = match choice {
        Hold::Conventions => hold(state, conventions),
        Hold::Best => best_hold(state, conventions, method).unwrap_or_else(|| hold(state, conventions)),
    };
    let memo = Memo::new(&held.state, conventions, method);
    let solution = Solution::new(&held.state, &memo, conventions, method)
        .map_err(|error| Failure::input(session.voice.execution_error(&error)))?;
    Ok(Traced { held, memo, solution })
}

/// How the breaks of a kind are chosen, for the reasons.
pub fn chosen(session: &Session, orbit: Orbit) -> Chosen {
    match session.conventions.kind(orbit).breaks {
        BreakChoice::Fewest => Chosen::Fewest,
        BreakChoice::Least => Chosen::Least,
        BreakChoice::First | BreakChoice::Preference(_) => Chosen::First,
    }
}

fn text(session: &Session, method: &Method, puzzle: &Puzzle, traced: &Traced, short: bool) -> String {
    let (voice, conventions) = (&session.voice, &session.conventions);
    let mut lines = Vec::new();
    if !short {
        if let Some(scramble) = &puzzle.scramble {
            lines.push(format!("{}  {scramble}", voice.word("label-scramble")));
        }
        lines.push(pictures::net(session, &puzzle.state.after(traced.held.rotation.turns())));
    }
    if traced.held.rotation != Rotation::NONE || puzzle.size == Size::TWO {
        lines.push(session.voice.picked_up(&traced.held, &session.conventions));
    }
    lines.push(pictures::thread_text(session, &traced.memo));
    for trace in traced.memo.parts() {
        lines.push(voice.memo_line(trace, conventions));
    }
    lines.push(voice.parity(&traced.memo, method.parity().is_some()));
    if puzzle.size == Size::TWO
        && !short
        && let Some(best) = best_hold(&puzzle.state, conventions, method)
    {
        let fewer = Memo::new(&best.state, conventions, method).letters();
        if fewer < traced.memo.letters() {
            lines.push(voice.say("hold-shorter", &[("letters", fewer.into())]));
        }
    }
    if short {
        return lines.join("\n") + "\n";
    }
    for trace in traced.memo.parts() {
        let letters = &conventions.kind(trace.orbit()).letters;
        lines.push(String::new());
        lines.push(voice.say("reasons-heading", &[("kinds", voice.kinds(trace.orbit()).into())]));
        for (number, (step, reason)) in
            trace.steps().iter().zip(reasons(trace, chosen(session, trace.orbit()))).enumerate()
        {
            let said = voice.reason(&reason, trace, conventions);
            lines.push(format!("{:>3}  {}  {said}", number + 1, letters.of(step.target)));
        }
        lines.push(format!("        {}", voice.finish(trace, conventions)));
    }
    lines.push(String::new());
    let swaps_only =
        KINDS.into_iter().all(|orbit| matches!(method.carrier(orbit), None | Some(Carrier::OneSwap(_))));
    lines.push(voice.word(if swaps_only { "solution-heading" } else { "solution-heading-methods" }));
    for action in &traced.solution.actions {
        lines.push(action_line(session, action));
    }
    lines.push(String::new());
    lines.push(display_turns(&traced.solution.moves).to_string());
    let count = traced.solution.count;
    lines.push(voice.say(
        "solution-length",
        &[("half", count.half.into()), ("quarter", count.quarter.into()), ("slice", count.slice.into())],
    ));
    lines.extend(estimate_line(session, method, traced));
    lines.join("\n") + "\n"
}

/// The estimated time, and what the breaks at least cost save.
fn estimate_line(session: &Session, method: &Method, traced: &Traced) -> Option<String> {
    let milliseconds = traced.solution.milliseconds?;
    let seconds = |milliseconds: u32| session.voice.decimal(f64::from(milliseconds) / 1000.0, 1);
    let naive = naive_milliseconds(session, method, &traced.held.state).filter(|&naive| naive > milliseconds);
    Some(match naive {
        None => session.voice.say("estimate-line", &[("seconds", seconds(milliseconds).into())]),
        Some(naive) => session.voice.say(
            "estimate-saving",
            &[("seconds", seconds(milliseconds).into()), ("naive", seconds(naive).into())],
        ),
    })
}

/// The estimated time with every break at the first unsolved sticker in letter order.
fn naive_milliseconds(session: &Session, method: &Method, state: &State) -> Option<u32> {
    let mut naive = session.conventions.clone();
    if KINDS.into_iter().all(|orbit| naive.kind(orbit).breaks != BreakChoice::Least) {
        return None;
    }
    for orbit in KINDS {
        naive.kind_mut(orbit).breaks = BreakChoice::First;
    }
    let memo = Memo::new(state, &naive, method);
    Solution::new(state, &memo, &naive, method).ok()?.milliseconds
}

fn action_line(session: &Session, action: &Action) -> String {
    match action {
        Action::Letter { orbit, target, setup, swap, undo, .. } => {
            let letters = &session.conventions.kind(*orbit).letters;
            let name = format!("{}  {:<3}", letters.of(*target), orbit.name(*target));
            let one_swap = session.conventions.kind(*orbit).method != blind::MethodName::SliceSwap;
            let named = session.voice.say("step-swap", &[("kind", session.voice.kind(*orbit).into())]);
            let swap = if one_swap { named } else { display_turns(swap).to_string() };
            if setup.is_empty() {
                format!("  {name}  {swap}")
            } else {
                format!("  {name}  {:<9} {swap}   {}", display_turns(setup).to_string(), display_turns(undo))
            }
        }
        Action::Pair { orbit, targets, turns, found, .. } => {
            paired_line(session, *orbit, targets, turns, *found, None)
        }
        Action::Turned { orbit, targets, turns, found, .. } => {
            paired_line(session, *orbit, targets, turns, *found, Some("step-turned"))
        }
        Action::Parity { turns } => {
            format!("  {}  {}", session.voice.word("step-parity"), display_turns(turns))
        }
    }
}

fn paired_line(
    session: &Session,
    orbit: Orbit,
    targets: &[cube::Sticker],
    turns: &[cube::Turn],
    found: bool,
    what: Option<&str>,
) -> String {
    let letters = &session.conventions.kind(orbit).letters;
    let names: Vec<&str> = targets.iter().map(|&target| orbit.name(target)).collect();
    let written = search::factor::factored(Size::THREE, turns)
        .map_or_else(|| display_turns(turns).to_string(), |algorithm| algorithm.to_string());
    let mut line = format!("  {}  {:<7}  {written}", letters.spell(targets), names.join(" "));
    for note in what.into_iter().chain(found.then_some("step-found")) {
        line.push_str("  ");
        line += &session.voice.word(note);
    }
    line
}

/// The result as JSON.
pub fn to_wire(session: &Session, puzzle: &Puzzle, traced: &Traced) -> wire::Trace {
    let conventions = &session.conventions;
    let solved = solved_pieces(&traced.held.state);
    let parts = traced.memo.parts().iter().map(|trace| part(session, trace)).collect();
    let steps = traced
        .solution
        .actions
        .iter()
        .map(|action| match action {
            Action::Letter { orbit, target, setup, swap, undo, .. } => wire::Action::Letter {
                kind: kind_name(*orbit).to_owned(),
                letter: conventions.kind(*orbit).letters.of(*target).to_string(),
                target: orbit.name(*target).to_owned(),
                setup: display_turns(setup).to_string(),
                swap: display_turns(swap).to_string(),
                undo: display_turns(undo).to_string(),
            },
            Action::Pair { orbit, targets, turns, found, .. } => wire::Action::Pair {
                kind: kind_name(*orbit).to_owned(),
                letters: conventions.kind(*orbit).letters.spell(targets),
                targets: targets.iter().map(|&target| orbit.name(target).to_owned()).collect(),
                moves: display_turns(turns).to_string(),
                found: *found,
            },
            Action::Turned { orbit, targets, turns, found, .. } => wire::Action::Turned {
                kind: kind_name(*orbit).to_owned(),
                letters: conventions.kind(*orbit).letters.spell(targets),
                targets: targets.iter().map(|&target| orbit.name(target).to_owned()).collect(),
                moves: display_turns(turns).to_string(),
                found: *found,
            },
            Action::Parity { turns } => wire::Action::Parity { moves: display_turns(turns).to_string() },
        })
        .collect();
    let count = traced.solution.count;
    wire::Trace {
        version: wire::VERSION,
        puzzle: puzzle.size.layers(),
        scramble: puzzle.scramble.clone(),
        holding: wire::Holding {
            rotation: display_turns(traced.held.rotation.turns()).to_string(),
            up: conventions.colour_held(Face::U).name.clone(),
            front: conventions.colour_held(Face::F).name.clone(),
            solved: solved.iter().map(|&(orbit, sticker)| orbit.piece_name(sticker).to_owned()).collect(),
            sentence: session.voice.picked_up(&traced.held, &session.conventions),
        },
        parity: traced.memo.is_odd(),
        exchanged: traced
            .memo
            .exchanged()
            .map(|edges| edges.map(|sticker| Orbit::Midge.name(sticker).to_owned())),
        parts,
        solution: wire::Solution {
            moves: display_turns(&traced.solution.moves).to_string(),
            length: wire::Length { half: count.half, quarter: count.quarter, slice: count.slice },
            seconds: traced.solution.milliseconds.map(|milliseconds| f64::from(milliseconds) / 1000.0),
            steps,
        },
    }
}

fn part(session: &Session, trace: &blind::Trace) -> wire::Part {
    let (voice, conventions, orbit) = (&session.voice, &session.conventions, trace.orbit());
    let letters = &conventions.kind(orbit).letters;
    let targets = trace.targets();
    let pieces = |stickers: Vec<cube::Sticker>| {
        stickers.into_iter().map(|sticker| orbit.piece_name(sticker).to_owned()).collect::<Vec<_>>()
    };
    let steps = trace
        .steps()
        .iter()
        .zip(reasons(trace, chosen(session, orbit)))
        .map(|(step, reason)| wire::Step {
            letter: letters.of(step.target).to_string(),
            target: orbit.name(step.target).to_owned(),
            place: orbit.name(step.place).to_owned(),
            role: match step.role {
                Role::Follow => "follow",
                Role::Break => "break",
                Role::Close => "close",
            },
            reason: voice.reason(&reason, trace, conventions),
        })
        .collect();
    let cycles = trace
        .cycles()
        .into_iter()
        .map(|cycle| wire::Cycle {
            letters: letters.spell(&targets[cycle.letters]),
            pieces: cycle.pieces,
            holds_buffer: cycle.holds_buffer,
            turned: cycle.turned,
        })
        .collect();
    wire::Part {
        kind: kind_name(orbit).to_owned(),
        buffer: orbit.name(trace.buffer()).to_owned(),
        buffer_is: match trace.buffer_is() {
            BufferIs::Solved => "solved",
            BufferIs::Turned => "turned",
            BufferIs::Away => "away",
        },
        letters: letters.spell(&targets),
        parity: trace.is_odd(),
        cycles,
        turned: pieces(trace.turned()),
        solved: pieces(trace.solved()),
        steps,
        finish: voice.finish(trace, conventions),
        targets: targets.into_iter().map(|target| orbit.name(target).to_owned()).collect(),
    }
}
