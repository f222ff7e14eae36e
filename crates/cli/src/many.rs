//! `hoodwink many`: how many puzzles to try at once.

use crate::arguments::ManyOptions;
use crate::failure::Failure;
use crate::input::Session;
use crate::{wire, wire_record};
use formats::results::{Success, milliseconds, success};
use record::Time;
use record::many::{Pace, best_chance, most_expected};
use record::result::Many;
use std::io::{self, Write};
use std::process::ExitCode;

/// With which probability the true rate lies in the interval that is told.
const SURE: f64 = 0.9;

/// Runs the command.
pub fn run(session: &Session, options: &ManyOptions) -> Result<ExitCode, Failure> {
    let voice = &session.voice;
    let share = |text: &str| {
        success(text).ok_or_else(|| {
            Failure::input(
                voice.say("many-no-success", &[("text", text.chars().take(24).collect::<String>().into())]),
            )
        })
    };
    let seconds = |text: &str| {
        let read = milliseconds(text).map_err(|error| Failure::input(voice.result_error(&error)))?;
        Ok::<f64, Failure>(read as f64 / 1000.0)
    };
    let rate = |success: Success| match success {
        Success::Counted(share) => share.mean(),
        Success::Stated(part) => part,
    };
    let right = share(&options.success)?;
    let pace = Pace {
        success: rate(right),
        first: seconds(&options.first)?,
        growth: seconds(&options.growth)?,
        spread: rate(share(&options.spread)?),
    };
    let prospects = pace.prospects(options.most);
    let points = options.points.map(i64::from);
    let mut out = io::stdout().lock();
    if options.json {
        let of = |prospect: &record::many::Prospect| wire_record::ProspectOf {
            puzzles: prospect.puzzles,
            expected: prospect.expected,
            no_result: prospect.dnf,
            reaches: points.map(|points| prospect.reaches(points)),
            solved: prospect.solved.clone(),
        };
        let object =
            wire_record::ManyAtOnce { version: wire::VERSION, prospects: prospects.iter().map(of).collect() };
        serde_json::to_writer(&mut out, &object).map_err(io::Error::from)?;
        writeln!(out)?;
        return Ok(ExitCode::SUCCESS);
    }
    if let Success::Counted(share) = right {
        let interval = share.interval(SURE);
        let blanks = [
            ("right", share.right().into()),
            ("of", share.of().into()),
            ("percent", voice.share(share.mean()).into()),
            ("low", voice.share(interval.low).into()),
            ("high", voice.share(interval.high).into()),
        ];
        writeln!(out, "{}\n", voice.say("many-success", &blanks))?;
    }
    let clock = |seconds: f64| Time::of_centiseconds((seconds * 100.0) as u64).in_whole_seconds().to_string();
    let short = |seconds: f64| clock(seconds).trim_end_matches(".00").to_owned();
    let mut rows = vec![
        ["puzzles", "limit", "time", "points", "none"]
            .map(|head| voice.word(&format!("many-head-{head}")))
            .to_vec(),
    ];
    if let (Some(points), Some(head)) = (points, rows.first_mut()) {
        head.push(voice.say("many-head-chance", &[("points", points.into())]));
    }
    for prospect in &prospects {
        let mut row = vec![
            prospect.puzzles.to_string(),
            short(Many::limit(prospect.puzzles) as f64),
            short(pace.seconds(prospect.puzzles)),
            voice.decimal(prospect.expected, 1),
            voice.share(prospect.dnf),
        ];
        row.extend(points.map(|points| voice.share(prospect.reaches(points))));
        rows.push(row);
    }
    let columns = rows.first().map_or(0, Vec::len);
    let broad: Vec<usize> =
        (0..columns).map(|at| rows.iter().map(|row| row[at].chars().count()).max().unwrap_or(0)).collect();
    for row in &rows {
        let cells: Vec<String> =
            row.iter().zip(&broad).map(|(cell, broad)| format!("{cell:>broad$}")).collect();
        writeln!(out, "{}", cells.join("  "))?;
    }
    if let Some(best) = most_expected(&prospects) {
        let blanks = [("puzzles", best.puzzles.into()), ("points", voice.decimal(best.expected, 1).into())];
        writeln!(out, "\n{}", voice.say("many-best", &blanks))?;
    }
    if let Some((points, best)) = points.and_then(|points| Some((points, best_chance(&prospects, points)?))) {
        let blanks = [
            ("points", points.into()),
            ("puzzles", best.puzzles.into()),
            ("chance", voice.share(best.reaches(points)).into()),
        ];
        writeln!(out, "{}", voice.say("many-chance", &blanks))?;
    }
    if most_expected(&prospects).is_some_and(|best| best.puzzles == options.most) {
        writeln!(out, "{}", voice.word("many-edge"))?;
    }
    writeln!(out, "{}", voice.word("many-rests"))?;
    writeln!(out, "{}", voice.word("many-care"))?;
    Ok(ExitCode::SUCCESS)
}
