//! `hoodwink algs fit`: the costs of the hands fitted to someone's own timings.

use crate::arguments::FitOptions;
use crate::failure::Failure;
use crate::input::{Session, model};
use crate::{wire, wire_algs};
use formats::{ease, timings};
use search::ease::{Fit, Plan, fit};
use std::fs;
use std::io::{self, Write};
use std::process::ExitCode;

/// Runs the command.
pub fn run(session: &Session, options: &FitOptions) -> Result<ExitCode, Failure> {
    let timings = timings::read(&session.read(&options.file, timings::MOST_BYTES)?)
        .map_err(|error| Failure::input(session.voice.timings_error(&error)))?;
    let model = model(session, options.ease.as_deref())?;
    let mut generator = search::random::seeded(options.seed);
    let fitted = fit(&model, &timings, Plan::default(), &mut generator)
        .map_err(|error| Failure::input(session.voice.fit_error(&error)))?;
    if let Some(path) = &options.out {
        fs::write(path, costs_file(&fitted)).map_err(|error| Failure::file(path, error))?;
    }
    let mut out = io::stdout().lock();
    if options.json {
        let costs = fitted.costs.iter().map(|cost| wire_algs::Cost {
            name: cost.feature.name(),
            seconds: cost.seconds,
            low: cost.interval[0],
            high: cost.interval[1],
            timings: cost.timings,
        });
        let object = wire_algs::Fit {
            version: wire::VERSION,
            timings: timings.len(),
            costs: costs.collect(),
            error: fitted.error,
            held_out: fitted.held_out,
            held_out_before: fitted.held_out_before,
            held_out_mean: fitted.held_out_mean,
        };
        serde_json::to_writer(&mut out, &object).map_err(io::Error::from)?;
        writeln!(out)?;
        return Ok(ExitCode::SUCCESS);
    }
    let voice = &session.voice;
    let seconds = |value: f64| voice.decimal(value, 3);
    writeln!(out, "{}", voice.say("fit-heading", &[("count", timings.len().into())]))?;
    for cost in &fitted.costs {
        let name = cost.feature.name();
        if cost.timings == 0 {
            writeln!(out, "  {name:<16} {}  {}", seconds(cost.seconds), voice.word("fit-never"))?;
        } else {
            let [low, high] = cost.interval;
            let (low, high) = (seconds(low), seconds(high));
            writeln!(out, "  {name:<16} {}  ({low} – {high})", seconds(cost.seconds))?;
        }
    }
    let line = voice.say(
        "fit-errors",
        &[
            ("error", seconds(fitted.error).into()),
            ("heldout", seconds(fitted.held_out).into()),
            ("before", seconds(fitted.held_out_before).into()),
            ("mean", seconds(fitted.held_out_mean).into()),
        ],
    );
    writeln!(out, "{line}")?;
    if let Some(path) = &options.out {
        let file = path.display().to_string();
        writeln!(out, "{}", voice.say("sheet-wrote", &[("file", file.into())]))?;
    }
    Ok(ExitCode::SUCCESS)
}

/// The fitted costs as a file that `--ease` reads, to the millionth of a second.
fn costs_file(fitted: &Fit) -> String {
    let rounded = fitted.model.seconds().map(|seconds| (seconds * 1e6).round() / 1e6);
    ease::write_costs(&rounded)
}
