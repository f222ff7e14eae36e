//! `hoodwink trace --batch`: a scramble a line in, an object a line out, in order, on all cores.

use crate::failure::Failure;
use crate::input::{Puzzle, Session};
use crate::wire;
use blind::{HoldChoice, Solver, kind_name};
use cube::{MAX_TEXT, Orbit, ParseError, ParseErrorKind, State, display_turns};
use rayon::prelude::*;
use std::fs::File;
use std::io::{self, BufRead, BufReader, Write};
use std::ops::Range;
use std::path::Path;
use std::process::ExitCode;

/// How many lines are read before they are worked on together, a short answer having a few hundred bytes, one in full up to a
/// hundred thousand; and into how many tasks these are divided.
const LINES_SHORT: usize = 8192;
const LINES_IN_FULL: usize = 256;
const TASKS: usize = 32;

/// How many bytes of them are read at most, but for what the last line has.
const LONGEST_CHUNK: usize = 1 << 20;

/// The most that is kept of a line: one byte more than the longest scramble, and its end.
const LONGEST_LINE: u64 = MAX_TEXT as u64 + 2;

/// The mark that some programs put before UTF-8.
const MARK: &[u8] = b"\xef\xbb\xbf";

/// How the lines are answered.
struct Answering<'a> {
    session: &'a Session,
    solver: &'a Solver,
    choice: HoldChoice,
    short: bool,
}

/// Lines that are worked on together: one text, and for each line its number and where it stands.
#[derive(Default)]
struct Chunk {
    text: Vec<u8>,
    lines: Vec<Line>,
}

/// A line.
struct Line {
    /// From 1.
    number: usize,
    /// Where it stands in the text.
    place: Range<usize>,
    /// How many bytes it has in all, its end not counted; more than are kept where it is too long.
    bytes: usize,
}

/// Runs a batch. Blank lines are passed over. A bad line is answered by an object with `error` and `line`.
pub fn run(
    session: &Session,
    solver: &Solver,
    choice: HoldChoice,
    short: bool,
    path: &Path,
) -> Result<ExitCode, Failure> {
    let mut input: Box<dyn BufRead> = if path == Path::new("-") {
        Box::new(io::stdin().lock())
    } else {
        let open = File::open(path).map_err(|error| Failure::file(path, error))?;
        Box::new(BufReader::new(open))
    };
    let answering = Answering { session, solver, choice, short };
    let most = if short { LINES_SHORT } else { LINES_IN_FULL };
    let mut out = io::stdout().lock();
    let mut failed = false;
    let mut number = 0;
    let mut chunk = Chunk::default();
    loop {
        chunk.read(&mut *input, most, &mut number).map_err(|error| Failure::file(path, error))?;
        if chunk.lines.is_empty() {
            break;
        }
        let tasks = chunk.lines.par_chunks(chunk.lines.len().div_ceil(TASKS));
        let answers: Vec<(Vec<u8>, bool)> = tasks.map(|lines| answering.answer(&chunk.text, lines)).collect();
        for (text, right) in answers {
            failed |= !right;
            out.write_all(&text)?;
        }
    }
    out.flush()?;
    Ok(ExitCode::from(u8::from(failed)))
}

impl Chunk {
    /// Reads the next lines, in place of those before; none at the end. `number` counts all lines.
    fn read(&mut self, input: &mut dyn BufRead, most: usize, number: &mut usize) -> io::Result<()> {
        self.text.clear();
        self.lines.clear();
        while self.lines.len() < most && self.text.len() < LONGEST_CHUNK {
            let start = self.text.len();
            let mut bytes = io::Read::take(&mut *input, LONGEST_LINE).read_until(b'\n', &mut self.text)?;
            if bytes == 0 {
                break;
            }
            *number += 1;
            if *number == 1 && self.text.starts_with(MARK) {
                self.text.drain(..MARK.len());
                bytes -= MARK.len();
            }
            if self.text.ends_with(b"\n") {
                self.text.pop();
                bytes -= 1;
            } else if bytes + MARK.len() >= LONGEST_LINE as usize {
                bytes += pass_over_line(input)?;
            }
            let line = &self.text[start..];
            if bytes > MAX_TEXT {
                // Nothing of it can be used.
                self.text.truncate(start);
                self.lines.push(Line { number: *number, place: start..start, bytes });
            } else if line.trim_ascii().is_empty() {
                self.text.truncate(start);
            } else {
                self.lines.push(Line { number: *number, place: start..self.text.len(), bytes });
            }
        }
        Ok(())
    }
}

/// The rest of a line: how many bytes it has, its end not counted.
fn pass_over_line(input: &mut dyn BufRead) -> io::Result<usize> {
    let mut bytes = 0;
    loop {
        let seen = input.fill_buf()?;
        let (length, end) = match seen.iter().position(|&byte| byte == b'\n') {
            Some(at) => (at + 1, true),
            None => (seen.len(), seen.is_empty()),
        };
        input.consume(length);
        bytes += length;
        if end {
            return Ok(bytes - usize::from(length > 0));
        }
    }
}

impl Answering<'_> {
    /// The objects of some lines, and whether all of these were right.
    fn answer(&self, text: &[u8], lines: &[Line]) -> (Vec<u8>, bool) {
        let mut out = Vec::new();
        let mut right = true;
        for line in lines {
            if let Err(failure) = self.line(line, &text[line.place.clone()], &mut out) {
                right = false;
                let error = failure.said(&self.session.voice);
                put(&mut out, &wire::LineError { version: wire::VERSION, error, line: line.number });
            }
        }
        (out, right)
    }

    fn line(&self, line: &Line, bytes: &[u8], out: &mut Vec<u8>) -> Result<(), Failure> {
        let voice = &self.session.voice;
        if line.bytes > MAX_TEXT {
            let problem = ParseErrorKind::TooLong(line.bytes);
            return Err(Failure::input(voice.placed(line.number, 1, &voice.parse_problem(&problem))));
        }
        let text = std::str::from_utf8(bytes).map_err(|_| Failure::input(voice.word("not-text")))?;
        let size = self.solver.size();
        let read = self.session.conventions.moves(text, size).map_err(|error| {
            // A line has one line, and the reader of the file knows it by its number there.
            Failure::input(voice.parse_error(&ParseError { line: line.number, ..error }))
        })?;
        let turns = read.flatten();
        if turns.is_empty() {
            return Err(Failure::input(voice.word("line-no-moves")));
        }
        let state = State::solved(size).after(&turns);
        if self.short {
            return self.brief(line.number, &state, out);
        }
        let puzzle = Puzzle { size, scramble: Some(text.trim().to_owned()), state };
        let traced = super::traced(self.session, self.solver, &puzzle, self.choice)?;
        put(out, &super::to_wire(self.session, self.solver, &puzzle, &traced));
        Ok(())
    }

    /// Letters, parity and holding.
    fn brief(&self, line: usize, scrambled: &State, out: &mut Vec<u8>) -> Result<(), Failure> {
        let picked_up = self.solver.pick_up(scrambled, self.choice);
        let (held, memo) = picked_up
            .and_then(|held| self.solver.memo(&held.state).map(|memo| (held, memo)))
            .map_err(|fault| Failure::input(self.session.voice.not_proven(fault)))?;
        let letters: Vec<String> = memo
            .parts()
            .iter()
            .map(|trace| self.solver.conventions().kind(trace.orbit()).letters.spell(&trace.targets()))
            .collect();
        let kinds: Vec<wire::BriefMemo<'_>> = memo
            .parts()
            .iter()
            .zip(&letters)
            .map(|(trace, letters)| wire::BriefMemo {
                kind: kind_name(trace.orbit()),
                letters,
                odd: trace.is_odd(),
            })
            .collect();
        let parity: Vec<&str> = memo.parity().map(kind_name).collect();
        let exchanged = memo.exchanged().map(|edges| edges.map(|sticker| Orbit::Midge.name(sticker)));
        let rotation = display_turns(held.rotation.turns()).to_string();
        put(
            out,
            &wire::Brief {
                version: wire::TRACE_VERSION,
                line,
                rotation: &rotation,
                memo: &kinds,
                parity: &parity,
                exchanged,
            },
        );
        Ok(())
    }
}

/// Writes an object as a line.
fn put(out: &mut Vec<u8>, object: &impl serde::Serialize) {
    // Writing to memory cannot fail, and every key is a text.
    let _ = serde_json::to_writer(&mut *out, object);
    out.push(b'\n');
}
