//! `hoodwink trace`: the memo, its reasons and a solution.

mod batch;
mod holdings;

use crate::arguments::{Hold, TraceOptions};
use crate::failure::Failure;
use crate::input::{Puzzle, Session};
use crate::{pictures, wire};
use blind::{Action, BufferIs, Carrier, Held, HoldChoice, Memo, Solution, Solver, kind_name, solved_pieces};
use cube::{Face, Orbit, Rotation, Sticker, Turn, display_turns};
use std::io::{self, Write};
use std::process::ExitCode;

/// A scramble as it is answered.
pub struct Traced {
    held: Held,
    memo: Memo,
    /// The solution, or a sentence where no method is for the size yet.
    solution: Result<Solution, String>,
}

/// Runs the command.
pub fn run(session: &Session, options: &TraceOptions) -> Result<ExitCode, Failure> {
    let size = session.size(&options.state.puzzle)?;
    if (options.hold != Hold::Conventions || options.holdings) && size.is_odd() {
        return Err(Failure::input(session.voice.say("hold-best-odd", &[("size", size.to_string().into())])));
    }
    let choice = options.hold.into();
    if let Some(path) = &options.batch {
        return batch::run(session, &session.solver(size)?, choice, options.short, path);
    }
    let puzzle = session.puzzle(&options.state)?;
    let solver = session.solver(size)?;
    if options.holdings {
        return holdings::run(session, &solver, &puzzle, options);
    }
    let traced = traced(session, &solver, &puzzle, choice)?;
    let mut out = io::stdout().lock();
    if options.json {
        let object = to_wire(session, &solver, &puzzle, &traced);
        serde_json::to_writer(&mut out, &object).map_err(io::Error::from)?;
        writeln!(out)?;
    } else {
        out.write_all(text(session, &solver, &puzzle, &traced, options.short)?.as_bytes())?;
    }
    Ok(ExitCode::SUCCESS)
}

/// Asks the solver for the memo and its solution.
pub fn traced(
    session: &Session,
    solver: &Solver,
    puzzle: &Puzzle,
    choice: HoldChoice,
) -> Result<Traced, Failure> {
    let voice = &session.voice;
    let solve =
        solver.solve(&puzzle.state, choice).map_err(|fault| Failure::input(voice.not_proven(fault)))?;
    let solution = match solve.solution {
        Ok(solution) => Ok(solution),
        Err(why) => return Err(Failure::input(voice.no_solution(&why))),
    };
    Ok(Traced { held: solve.held, memo: solve.memo, solution })
}

fn text(
    session: &Session,
    solver: &Solver,
    puzzle: &Puzzle,
    traced: &Traced,
    short: bool,
) -> Result<String, Failure> {
    let (voice, conventions) = (&session.voice, &session.conventions);
    let mut lines = Vec::new();
    if !short {
        if let Some(scramble) = &puzzle.scramble {
            lines.push(format!("{}  {scramble}", voice.word("label-scramble")));
        }
        lines.push(pictures::net(session, &puzzle.state.after(traced.held.rotation.turns())));
    }
    if traced.held.rotation != Rotation::NONE || !puzzle.size.is_odd() {
        lines.push(voice.picked_up(&traced.held, conventions));
    }
    lines.push(pictures::thread_text(session, &traced.memo));
    for trace in traced.memo.parts() {
        lines.push(voice.memo_line(trace, conventions));
    }
    lines.push(voice.parity(&traced.memo, solver));
    if short {
        return Ok(lines.join("\n") + "\n");
    }
    let offers = solver.offers(&puzzle.state).map_err(|fault| Failure::input(voice.not_proven(fault)))?;
    if let Some(best) = offers.first().filter(|best| best.letters < traced.memo.letters()) {
        lines.push(voice.say("hold-shorter", &[("letters", best.letters.into())]));
    }
    for trace in traced.memo.parts() {
        let letters = &conventions.kind(trace.orbit()).letters;
        lines.push(String::new());
        lines.push(voice.say("reasons-heading", &[("kinds", voice.kinds(trace.orbit()).into())]));
        for (number, (step, reason)) in trace.steps().iter().zip(solver.reasons(trace)).enumerate() {
            let said = voice.reason(&reason, trace, conventions);
            lines.push(format!("{:>3}  {}  {said}", number + 1, letters.of(step.target)));
        }
        lines.push(format!("        {}", voice.finish(trace, conventions)));
    }
    lines.push(String::new());
    match &traced.solution {
        Err(sentence) => lines.push(sentence.clone()),
        Ok(solution) => lines.extend(solution_lines(session, solver, traced, solution)),
    }
    Ok(lines.join("\n") + "\n")
}

fn solution_lines(session: &Session, solver: &Solver, traced: &Traced, solution: &Solution) -> Vec<String> {
    let voice = &session.voice;
    let swaps_only = solver.method().is_ok_and(|method| {
        let carriers = Orbit::of(solver.size()).iter().map(|&orbit| method.carrier(orbit));
        carriers.flatten().all(|carrier| matches!(carrier, Carrier::OneSwap(_)))
    });
    let mut lines =
        vec![voice.word(if swaps_only { "solution-heading" } else { "solution-heading-methods" })];
    let by_kind = Orbit::of(solver.size()).iter().any(|orbit| orbit.stickers_per_piece() == 1);
    let mut kind = None;
    for action in solution.actions() {
        // The many letters of a bigger puzzle stand under their kinds.
        if let Some((orbit, ..)) = action.letters().filter(|(orbit, ..)| by_kind && kind != Some(*orbit)) {
            kind = Some(orbit);
            lines.push(format!(" {}", voice.kinds(orbit)));
        }
        lines.push(action_line(session, solver, action));
    }
    lines.push(String::new());
    lines.push(display_turns(solution.moves()).to_string());
    let count = solution.count();
    lines.push(voice.say(
        "solution-length",
        &[("half", count.half.into()), ("quarter", count.quarter.into()), ("slice", count.slice.into())],
    ));
    lines.extend(estimate_line(session, solver, traced, solution));
    lines
}

/// The estimated time, and what the breaks at least cost save.
fn estimate_line(session: &Session, solver: &Solver, traced: &Traced, solution: &Solution) -> Option<String> {
    let milliseconds = solution.milliseconds()?;
    let seconds = |milliseconds: u32| session.voice.decimal(f64::from(milliseconds) / 1000.0, 1);
    let naive = solver.milliseconds_unweighed(&traced.held.state).filter(|&naive| naive > milliseconds);
    Some(match naive {
        None => session.voice.say("estimate-line", &[("seconds", seconds(milliseconds).into())]),
        Some(naive) => session.voice.say(
            "estimate-saving",
            &[("seconds", seconds(milliseconds).into()), ("naive", seconds(naive).into())],
        ),
    })
}

fn action_line(session: &Session, solver: &Solver, action: &Action) -> String {
    match action {
        Action::Letter { orbit, target, setup, swap, undo, .. } => {
            let letters = &session.conventions.kind(*orbit).letters;
            let name = format!("{}  {:<3}", letters.of(*target), orbit.name(*target));
            let one_swap = orbit.stickers_per_piece() > 1
                && session.conventions.kind(*orbit).method != blind::MethodName::SliceSwap;
            let named = session.voice.say("step-swap", &[("kind", session.voice.kind(*orbit).into())]);
            let swap = if one_swap { named } else { display_turns(swap).to_string() };
            if setup.is_empty() {
                format!("  {name}  {swap}")
            } else {
                format!("  {name}  {:<9} {swap}   {}", display_turns(setup).to_string(), display_turns(undo))
            }
        }
        Action::Pair { orbit, targets, turns, found, .. } => {
            paired_line(session, solver, *orbit, targets, turns, *found, None)
        }
        Action::Turned { orbit, targets, turns, found, .. } => {
            paired_line(session, solver, *orbit, targets, turns, *found, Some("step-turned"))
        }
        Action::Parity { turns } => {
            format!("  {}  {}", session.voice.word("step-parity"), display_turns(turns))
        }
    }
}

fn paired_line(
    session: &Session,
    solver: &Solver,
    orbit: Orbit,
    targets: &[Sticker],
    turns: &[Turn],
    found: bool,
    what: Option<&str>,
) -> String {
    let letters = &session.conventions.kind(orbit).letters;
    let names: Vec<&str> = targets.iter().map(|&target| orbit.name(target)).collect();
    let written = search::factor::factored(solver.size(), turns)
        .map_or_else(|| display_turns(turns).to_string(), |algorithm| algorithm.to_string());
    let mut line = format!("  {}  {:<7}  {written}", letters.spell(targets), names.join(" "));
    for note in what.into_iter().chain(found.then_some("step-found")) {
        line.push_str("  ");
        line += &session.voice.word(note);
    }
    line
}

/// The answer as JSON.
pub fn to_wire(session: &Session, solver: &Solver, puzzle: &Puzzle, traced: &Traced) -> wire::Trace {
    let conventions = &session.conventions;
    let solved = solved_pieces(&traced.held.state);
    wire::Trace {
        version: wire::TRACE_VERSION,
        puzzle: puzzle.size.layers(),
        scramble: puzzle.scramble.clone(),
        holding: wire::Holding {
            rotation: display_turns(traced.held.rotation.turns()).to_string(),
            up: conventions.colour_held(Face::U).name.clone(),
            front: conventions.colour_held(Face::F).name.clone(),
            solved: solved.iter().map(|&(orbit, sticker)| orbit.piece_name(sticker).to_owned()).collect(),
            sentence: session.voice.picked_up(&traced.held, conventions),
        },
        parity: traced.memo.parity().map(kind_name).collect(),
        exchanged: traced
            .memo
            .exchanged()
            .map(|edges| edges.map(|sticker| Orbit::Midge.name(sticker).to_owned())),
        parts: traced.memo.parts().iter().map(|trace| part(session, solver, trace)).collect(),
        solution: traced.solution.as_ref().ok().map(|solution| solution_to_wire(session, solution)),
        no_solution: traced.solution.as_ref().err().cloned(),
    }
}

fn solution_to_wire(session: &Session, solution: &Solution) -> wire::Solution {
    let conventions = &session.conventions;
    let steps = solution
        .actions()
        .iter()
        .map(|action| match action {
            Action::Letter { orbit, target, setup, swap, undo, .. } => wire::Action::Letter {
                kind: kind_name(*orbit).to_owned(),
                letter: conventions.kind(*orbit).letters.of(*target).to_owned(),
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
    let count = solution.count();
    wire::Solution {
        moves: display_turns(solution.moves()).to_string(),
        length: wire::Length { half: count.half, quarter: count.quarter, slice: count.slice },
        seconds: solution.milliseconds().map(|milliseconds| f64::from(milliseconds) / 1000.0),
        steps,
    }
}

fn part(session: &Session, solver: &Solver, trace: &blind::Trace) -> wire::Part {
    let (voice, conventions, orbit) = (&session.voice, &session.conventions, trace.orbit());
    let letters = &conventions.kind(orbit).letters;
    let targets = trace.targets();
    let pieces = |stickers: Vec<Sticker>| {
        stickers.into_iter().map(|sticker| orbit.piece_name(sticker).to_owned()).collect::<Vec<_>>()
    };
    let steps = trace
        .steps()
        .iter()
        .zip(solver.reasons(trace))
        .map(|(step, reason)| wire::Step {
            letter: letters.of(step.target).to_owned(),
            target: orbit.name(step.target).to_owned(),
            place: orbit.name(step.place).to_owned(),
            role: step.role.name(),
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
        odd: trace.is_odd(),
        cycles,
        turned: pieces(trace.turned()),
        solved: pieces(trace.solved()),
        steps,
        finish: voice.finish(trace, conventions),
        targets: targets.into_iter().map(|target| orbit.name(target).to_owned()).collect(),
    }
}
