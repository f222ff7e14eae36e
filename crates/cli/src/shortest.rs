//! `hoodwink shortest`: a solution in the fewest turns, and whether that is proven.

use crate::arguments::ShortestOptions;
use crate::failure::Failure;
use crate::input::Session;
use crate::wire;
use cube::{State, Turn, display_turns};
use search::{solve2, solve3};
use std::io::{self, IsTerminal, Write};
use std::process::ExitCode;
use std::time::{Duration, Instant};

/// How long it takes until progress is told, and then between two tellings.
const PATIENCE: Duration = Duration::from_secs(1);

/// What is known at the end.
struct Answer {
    turns: Vec<Turn>,
    least: u8,
    positions: Option<u64>,
}

/// Runs the command.
pub fn run(session: &Session, options: &ShortestOptions) -> Result<ExitCode, Failure> {
    let puzzle = session.puzzle(&options.state)?;
    let answer = match puzzle.size.layers() {
        2 => {
            let turns = solve2::solve(&puzzle.state).map_err(|error| Failure::input(error.to_string()))?;
            // The table of the 2x2 holds every state: its answers are shortest.
            Answer { least: turns.len() as u8, turns, positions: None }
        }
        3 => of_three(session, options, &puzzle.state)?,
        _ => {
            let said = session.voice.say("shortest-size", &[("size", puzzle.size.to_string().into())]);
            return Err(Failure::input(said));
        }
    };
    let proven = answer.turns.len() == usize::from(answer.least);
    let mut out = io::stdout().lock();
    if options.json {
        let object = wire::Shortest {
            version: wire::VERSION,
            puzzle: puzzle.size.layers(),
            scramble: puzzle.scramble,
            solution: display_turns(&answer.turns).to_string(),
            turns: answer.turns.len(),
            least: answer.least,
            proven,
            positions: answer.positions,
        };
        serde_json::to_writer(&mut out, &object).map_err(io::Error::from)?;
        writeln!(out)?;
        return Ok(ExitCode::SUCCESS);
    }
    let voice = &session.voice;
    if answer.turns.is_empty() {
        writeln!(out, "{}", voice.word("shortest-solved"))?;
        return Ok(ExitCode::SUCCESS);
    }
    writeln!(out, "{}", display_turns(&answer.turns))?;
    let blanks = [("turns", answer.turns.len().into()), ("least", answer.least.into())];
    writeln!(out, "{}", voice.say(if proven { "shortest-proven" } else { "shortest-open" }, &blanks))?;
    Ok(ExitCode::SUCCESS)
}

fn of_three(session: &Session, options: &ShortestOptions, state: &State) -> Result<Answer, Failure> {
    let begun = Instant::now();
    let limit = Duration::from_secs(options.seconds);
    let terminal = io::stderr().is_terminal();
    let mut told = Instant::now();
    let mut shown = false;
    let found = solve3::optimum(state, options.positions.unwrap_or(u64::MAX), &mut |known| {
        if terminal && told.elapsed() >= PATIENCE {
            told = Instant::now();
            shown = true;
            let blanks = [("least", known.least.into()), ("found", known.found.into())];
            write_over(&session.voice.say("shortest-progress", &blanks));
        }
        begun.elapsed() < limit
    });
    if shown {
        write_over("");
    }
    let found = found.map_err(|error| Failure::input(error.to_string()))?;
    Ok(Answer { turns: found.turns().to_vec(), least: found.least(), positions: Some(found.positions()) })
}

/// Writes over the line that the terminal's cursor is in.
fn write_over(sentence: &str) {
    // A terminal that cannot be written to has nobody to tell.
    let _ = write!(io::stderr(), "\r\x1b[K{sentence}");
}
