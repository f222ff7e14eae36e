//! `hoodwink trace --batch`: a scramble a line in, an object a line out, in order, on all cores.

use crate::arguments::Hold;
use crate::failure::Failure;
use crate::input::{Puzzle, Session};
use crate::{trace, wire};
use blind::Method;
use cube::State;
use rayon::prelude::*;
use std::fs::File;
use std::io::{self, BufRead, BufReader, BufWriter, Write};
use std::path::Path;
use std::process::ExitCode;

/// How many lines are read before they are worked on together.
const CHUNK: usize = 2048;

/// The longest line that is read; anything longer is no scramble.
const LONGEST_LINE: u64 = 1 << 20;

/// Runs a batch. Blank lines are passed over. A bad line is answered by an object with `error` and `line`.
pub fn run(session: &Session, method: &Method, hold: Hold, path: &Path) -> Result<ExitCode, Failure> {
    let mut input: Box<dyn BufRead> = if path == Path::new("-") {
        Box::new(io::stdin().lock())
    } else {
        let open =
            File::open(path).map_err(|error| Failure::input(format!("{}: {error}", path.display())))?;
        Box::new(BufReader::new(open))
    };
    let mut out = BufWriter::new(io::stdout().lock());
    let mut failed = false;
    let mut number = 0;
    loop {
        let mut lines = Vec::with_capacity(CHUNK);
        while lines.len() < CHUNK {
            let mut line = Vec::new();
            let mut limited = io::Read::take(&mut input, LONGEST_LINE);
            if limited.read_until(b'\n', &mut line)? == 0 {
                break;
            }
            number += 1;
            let cut = line.len() as u64 == LONGEST_LINE && line.last() != Some(&b'\n');
            if cut {
                pass_over_line(&mut input)?;
            }
            if !line.trim_ascii().is_empty() {
                lines.push((number, line));
            }
        }
        if lines.is_empty() {
            break;
        }
        let answers: Vec<(String, bool)> =
            lines.par_iter().map(|(number, line)| answer(session, method, hold, *number, line)).collect();
        for (text, right) in answers {
            failed |= !right;
            out.write_all(text.as_bytes())?;
            out.write_all(b"\n")?;
        }
    }
    out.flush()?;
    Ok(ExitCode::from(u8::from(failed)))
}

fn pass_over_line(input: &mut dyn BufRead) -> io::Result<()> {
    loop {
        let seen = input.fill_buf()?;
        let (length, end) = match seen.iter().position(|&byte| byte == b'\n') {
            Some(at) => (at + 1, true),
            None => (seen.len(), seen.is_empty()),
        };
        input.consume(length);
        if end {
            return Ok(());
        }
    }
}

/// One line's object, and whether the line was right.
fn answer(session: &Session, method: &Method, hold: Hold, line: usize, bytes: &[u8]) -> (String, bool) {
    let result = std::str::from_utf8(bytes)
        .map_err(|_| Failure::input(session.voice.word("not-text")))
        .and_then(|text| one(session, method, hold, text.trim()));
    let written = match &result {
        Ok(object) => serde_json::to_string(object),
        Err(failure) => serde_json::to_string(&wire::LineError {
            version: wire::VERSION,
            error: failure.to_string(),
            line,
        }),
    };
    (written.unwrap_or_else(|error| error.to_string()), result.is_ok())
}

fn one(session: &Session, method: &Method, hold: Hold, text: &str) -> Result<wire::Trace, Failure> {
    let size = method.size();
    let state = State::solved(size).after(&session.turns(text, size)?);
    let traced = trace::trace(session, method, &state, hold)?;
    Ok(trace::to_wire(session, &Puzzle { size, scramble: Some(text.to_owned()), state }, &traced))
}
