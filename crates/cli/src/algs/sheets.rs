//! `hoodwink algs check`, `import`, `fill`, `stats`, `export`: sheets of algorithms.

use crate::arguments::{SheetFormat, SheetOptions, Side};
use crate::failure::Failure;
use crate::input::{Session, model};
use crate::{wire, wire_algs};
use ::sheet::{CycleCase, Layout, Row, Sheet, Verdict};
use blind::kind_name;
use cube::{Orbit, Size, Sticker};
use draw::{Grid, GridWords};
use formats::sheet::{self, TakenIn};
use std::fs;
use std::io::{self, Write};
use std::path::Path;
use std::process::ExitCode;
use voice::excerpt;

/// The largest size, which has every kind that a sheet may be for.
const LARGEST: Size = Size::ALL[Size::ALL.len() - 1];

fn read(session: &Session, options: &SheetOptions) -> Result<Sheet, Failure> {
    taken_in(session, options).map(|taken| taken.sheet)
}

fn taken_in(session: &Session, options: &SheetOptions) -> Result<TakenIn, Failure> {
    let text = session.read_table(&options.file)?;
    let mut reading = sheet::Reading::new(&session.conventions);
    if let Some(kind) = &options.kind {
        reading.kind = Some(session.kind(kind, LARGEST)?);
    }
    reading.buffer.clone_from(&options.buffer);
    reading.rows_first = options.first.map(|side| side == Side::Left);
    sheet::take_in(&text, &reading)
        .map_err(|error| Failure::in_file(&options.file, &session.voice.sheet_error(&error), &session.voice))
}

/// The kind and buffer that were asked for, or the only ones that the sheet is about.
fn subject(session: &Session, options: &SheetOptions, sheet: &Sheet) -> Result<(Orbit, Sticker), Failure> {
    let mut found = sheet.buffers();
    if let Some(kind) = &options.kind {
        let orbit = session.kind(kind, LARGEST)?;
        found.retain(|&(other, _)| other == orbit);
        if let Some(text) = &options.buffer {
            let buffer = session.sticker(text, orbit, &session.conventions.kind(orbit).letters)?;
            return Ok((orbit, buffer));
        }
    } else if let Some(text) = &options.buffer {
        // The kind is that of which the sheet has cases; of several, that which has the buffer.
        let of = |orbit: Orbit| session.sticker(text, orbit, &session.conventions.kind(orbit).letters);
        let mut kinds: Vec<Orbit> = found.iter().map(|&(orbit, _)| orbit).collect();
        kinds.dedup();
        if let [orbit] = kinds[..] {
            return Ok((orbit, of(orbit)?));
        }
        found.retain(|&(orbit, buffer)| of(orbit).ok() == Some(buffer));
    }
    match found[..] {
        [one] => Ok(one),
        [] => Err(Failure::input(session.voice.word("sheet-no-cases"))),
        _ => {
            let names: Vec<String> = found
                .iter()
                .map(|&(orbit, buffer)| format!("{} {}", kind_name(orbit), orbit.name(buffer)))
                .collect();
            let names = session.voice.list(&names);
            Err(Failure::input(session.voice.say("sheet-several", &[("found", names.into())])))
        }
    }
}

fn write_out(session: &Session, out: Option<&Path>, text: &str) -> Result<(), Failure> {
    let Some(path) = out else {
        io::stdout().lock().write_all(text.as_bytes())?;
        return Ok(());
    };
    let file = path.display().to_string();
    fs::write(path, text).map_err(|error| Failure::file(path, error))?;
    eprintln!("{}", session.voice.say("sheet-wrote", &[("file", file.into())]));
    Ok(())
}

fn row_line(session: &Session, row: &Row, verdict: &Verdict) -> String {
    let voice = &session.voice;
    let place = voice.say("verdict-place", &[("line", row.line.into()), ("column", row.column.into())]);
    let case = row.case.map_or(row.named.clone(), |case| voice.case(case, &session.conventions));
    let said = voice.verdict(row, verdict, &session.conventions);
    format!("{place}: {}  {}  {said}", excerpt(&case), excerpt(&row.algorithm))
}

/// Accounts for every row; exit code 1 when one is not right.
pub fn check(session: &Session, options: &SheetOptions, json: bool) -> Result<ExitCode, Failure> {
    let TakenIn { sheet, remarks } = taken_in(session, options)?;
    let report = sheet.check();
    let mut out = io::BufWriter::new(io::stdout().lock());
    let rows = || sheet.rows().iter().zip(&report.verdicts);
    if json {
        let object = wire_algs::Check {
            version: wire::VERSION,
            layout: match sheet.layout {
                Layout::List => "list",
                Layout::Grid { .. } => "grid",
            },
            rows: sheet.rows().len(),
            right: report.right(),
            empty: rows().filter(|(_, verdict)| **verdict == Verdict::Empty).count(),
            verdicts: rows()
                .map(|(row, verdict)| wire_algs::Row {
                    line: row.line,
                    column: row.column,
                    named: row.named.clone(),
                    algorithm: row.algorithm.clone(),
                    verdict: verdict.name(),
                    sentence: session.voice.verdict(row, verdict, &session.conventions),
                })
                .collect(),
        };
        serde_json::to_writer(&mut out, &object).map_err(io::Error::from)?;
        writeln!(out)?;
    } else {
        for row in report.wrong() {
            writeln!(out, "{}", row_line(session, &sheet.rows()[row], &report.verdicts[row]))?;
        }
        for sentence in session.voice.sheet_account(&sheet, &report, &remarks) {
            writeln!(out, "{sentence}")?;
        }
    }
    out.flush()?;
    Ok(ExitCode::from(u8::from(report.wrong().next().is_some())))
}

/// Reads a sheet as people have it and writes it as a list, with a report on standard error. One of which most rows share a mistake
/// is written only when that is asked for.
pub fn import(
    session: &Session,
    options: &SheetOptions,
    out: Option<&Path>,
    anyway: bool,
) -> Result<ExitCode, Failure> {
    let TakenIn { sheet, remarks } = taken_in(session, options)?;
    let report = sheet.check();
    if let (Some(pattern), false) = (report.pattern(), anyway) {
        let said = session.voice.sheet_pattern(pattern);
        let said = session.voice.say("import-question", &[("what", said.into())]);
        return Err(Failure::in_file(&options.file, &said, &session.voice));
    }
    for row in report.wrong() {
        eprintln!("{}", row_line(session, &sheet.rows()[row], &report.verdicts[row]));
    }
    for sentence in session.voice.sheet_account(&sheet, &report, &remarks) {
        eprintln!("{sentence}");
    }
    write_out(session, out, &sheet::to_csv(&sheet, &session.conventions))?;
    Ok(ExitCode::from(u8::from(report.wrong().next().is_some())))
}

/// Fills the gaps and writes the sheet.
pub fn fill(
    session: &Session,
    options: &SheetOptions,
    out: Option<&Path>,
    ease: Option<&Path>,
) -> Result<ExitCode, Failure> {
    let sheet = read(session, options)?;
    let (orbit, buffer) = subject(session, options, &sheet)?;
    let filled = sheet.fill(orbit, buffer, &model(session, ease)?);
    eprintln!("{}", session.voice.filled(&filled.by_origin));
    write_out(session, out, &sheet::to_csv(&filled.sheet, &session.conventions))?;
    Ok(ExitCode::SUCCESS)
}

/// Coverage, means, worst and slow cases.
pub fn statistics(
    session: &Session,
    options: &SheetOptions,
    ease: Option<&Path>,
    json: bool,
) -> Result<ExitCode, Failure> {
    let sheet = read(session, options)?;
    let (orbit, buffer) = subject(session, options, &sheet)?;
    let found = sheet.statistics(orbit, buffer, &model(session, ease)?);
    let mut out = io::BufWriter::new(io::stdout().lock());
    let seconds = |milliseconds: u32| f64::from(milliseconds) / 1000.0;
    if json {
        let case = |case: CycleCase| [case.first, case.second].map(|sticker| orbit.name(sticker).to_owned());
        let object = wire_algs::Statistics {
            version: wire::VERSION,
            kind: kind_name(orbit).to_owned(),
            buffer: orbit.name(buffer).to_owned(),
            cases: found.cases,
            covered: found.covered,
            mean_moves: found.mean_moves,
            mean_seconds: found.mean_seconds,
            missing: found.missing.iter().copied().map(case).collect(),
            worst: found
                .worst
                .iter()
                .map(|&(worst, time)| wire_algs::Timed { case: case(worst), seconds: seconds(time) })
                .collect(),
            slow: found
                .slow
                .iter()
                .map(|slow| wire_algs::Slow {
                    case: case(slow.case),
                    seconds: seconds(slow.milliseconds),
                    best_seconds: seconds(slow.best.milliseconds),
                    best: slow.best.algorithm.to_string(),
                    origin: slow.best.origin.name(),
                })
                .collect(),
        };
        serde_json::to_writer(&mut out, &object).map_err(io::Error::from)?;
        writeln!(out)?;
        out.flush()?;
        return Ok(ExitCode::SUCCESS);
    }
    let voice = &session.voice;
    let case = |case: CycleCase| voice.case(case, &session.conventions);
    writeln!(out, "{}", voice.coverage(orbit, buffer, found.covered, found.cases))?;
    if found.covered > 0 {
        let (moves, time) = (voice.decimal(found.mean_moves, 2), voice.decimal(found.mean_seconds, 2));
        writeln!(out, "{}", voice.say("sheet-means", &[("moves", moves.into()), ("seconds", time.into())]))?;
        writeln!(out, "{}", voice.word("sheet-worst"))?;
        for &(worst, time) in &found.worst {
            writeln!(out, "  {}  {}", case(worst), voice.decimal(seconds(time), 2))?;
        }
    }
    if !found.slow.is_empty() {
        writeln!(out, "{}", voice.word("sheet-slow"))?;
        for slow in &found.slow {
            let line = voice.say(
                "sheet-slow-line",
                &[
                    ("case", case(slow.case).into()),
                    ("seconds", voice.decimal(seconds(slow.milliseconds), 2).into()),
                    ("best", voice.decimal(seconds(slow.best.milliseconds), 2).into()),
                    ("algorithm", slow.best.algorithm.to_string().into()),
                    ("origin", voice.origin(slow.best.origin).into()),
                ],
            );
            writeln!(out, "  {line}")?;
        }
    }
    if !found.missing.is_empty() {
        let letters = &session.conventions.kind(orbit).letters;
        let cases: Vec<String> =
            found.missing.iter().map(|case| letters.spell(&[case.first, case.second])).collect();
        writeln!(out, "{}", voice.say("sheet-missing", &[("cases", cases.join(" ").into())]))?;
    }
    out.flush()?;
    Ok(ExitCode::SUCCESS)
}

/// Writes a sheet in another form.
pub fn export(
    session: &Session,
    options: &SheetOptions,
    to: SheetFormat,
    out: Option<&Path>,
) -> Result<ExitCode, Failure> {
    let sheet = read(session, options)?;
    let voice = &session.voice;
    let text = match to {
        SheetFormat::Csv => sheet::to_csv(&sheet, &session.conventions),
        SheetFormat::Markdown => {
            let (orbit, buffer) = subject(session, options, &sheet)?;
            let columns = ["letters", "targets", "algorithm", "moves", "notes", "check"]
                .map(|name| voice.word(&format!("column-{name}")));
            sheet::to_markdown(
                &sheet,
                orbit,
                buffer,
                &session.conventions,
                columns.each_ref().map(String::as_str),
                &|row, verdict| voice.verdict(row, verdict, &session.conventions),
            )
        }
        SheetFormat::Svg => grid(session, options, &sheet)?.svg().to_file(),
        SheetFormat::Html => grid(session, options, &sheet)?.html(),
    };
    write_out(session, out, &text)?;
    Ok(ExitCode::SUCCESS)
}

fn grid(session: &Session, options: &SheetOptions, sheet: &Sheet) -> Result<Grid, Failure> {
    let (orbit, buffer) = subject(session, options, sheet)?;
    let (voice, letters) = (&session.voice, &session.conventions.kind(orbit).letters);
    let words = GridWords {
        title: voice.grid_title(orbit, buffer, letters),
        language: voice.language().tag().to_owned(),
        corner: voice.word("grid-first-second"),
        refused: voice.word("grid-refused"),
    };
    let refused = |row: &Row, verdict: &Verdict| voice.refused_row(row, verdict, &session.conventions);
    Ok(Grid::of(sheet, orbit, buffer, &session.conventions, words, refused))
}
