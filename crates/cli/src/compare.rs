//! `hoodwink compare`: methods over uniformly random states, on all cores.

use crate::arguments::CompareOptions;
use crate::failure::Failure;
use crate::input::{Session, model};
use crate::{wire, wire_algs};
use blind::{
    BreakChoice, Conventions, MethodName, OrbitOrder, ParityChoice, Turned,
    compare::{Comparison, Difference, Measure, Paired, Spread},
    nearest, usual,
};
use cube::{Orbit, Size};
use draw::{Caption, Histogram, QuantileStrip, Quantiles, Svg, Theme};
use rayon::prelude::*;
use std::fmt::Write as _;
use std::fs;
use std::io::{self, Write};
use std::path::Path;
use std::process::ExitCode;

/// Methods are compared on the puzzle that they are all for.
const SIZE: Size = Size::THREE;

/// States that are drawn from one stream of the generator; the streams are numbered, so the outcome does not depend on how
/// many cores there are.
const CHUNK: u64 = 1024;

/// The shares at which quantiles are told.
const SHARES: [f64; 5] = [0.05, 0.25, 0.5, 0.75, 0.95];

/// Runs the command.
pub fn run(session: &Session, options: &CompareOptions) -> Result<ExitCode, Failure> {
    if options.methods.len() < 2 {
        return Err(Failure::input(session.voice.word("compare-two")));
    }
    let model = model(session, options.ease.as_deref())?;
    let mut solvers = Vec::new();
    for text in &options.methods {
        let (conventions, directory) = conventions_of(session, text)?;
        let solver = session.solver_of(SIZE, conventions, directory.as_deref(), Some(&model), true)?;
        session
            .method(&solver)
            .map_err(|failure| Failure::input(format!("{text}: {}", failure.said(&session.voice))))?;
        solvers.push(solver);
    }
    let chunks = options.count.div_ceil(CHUNK);
    let compared = (0..chunks)
        .into_par_iter()
        .map(|chunk| {
            let mut generator = search::random::seeded(options.seed);
            generator.set_stream(chunk);
            let mut comparison = Comparison::new(solvers.len());
            for _ in 0..CHUNK.min(options.count - chunk * CHUNK) {
                comparison.try_state(&search::random::state3(&mut generator), &solvers)?;
            }
            Ok(comparison)
        })
        .try_reduce(
            || Comparison::new(solvers.len()),
            |mut one, other| {
                one.merge(&other);
                Ok(one)
            },
        )
        .map_err(|error| Failure::input(session.voice.no_solution(&error)))?;
    if let Some(path) = &options.svg {
        pictures(session, options, &compared, path).map_err(|error| Failure::file(path, error))?;
    }
    let mut out = io::BufWriter::new(io::stdout().lock());
    if options.json {
        serde_json::to_writer(&mut out, &to_wire(options, &compared)).map_err(io::Error::from)?;
        writeln!(out)?;
    } else {
        out.write_all(text(session, options, &compared).as_bytes())?;
    }
    out.flush()?;
    Ok(ExitCode::SUCCESS)
}

/// The conventions of a method as it was named, and where its sheets are kept: a file, or words as
/// `three-cycle+slice-swap,least,exchange`.
fn conventions_of(
    session: &Session,
    text: &str,
) -> Result<(Conventions, Option<std::path::PathBuf>), Failure> {
    let path = Path::new(text);
    if path.extension().is_some_and(|ending| ending.eq_ignore_ascii_case("toml")) {
        let read = Session::read_conventions(path, &session.voice)?;
        return Ok((read, path.parent().map(Path::to_path_buf)));
    }
    let unknown = |word: &str| {
        let mut said = session.voice.say("compare-unknown", &[("text", word.into())]);
        let known = ["one-swap", "slice-swap", "three-cycle", "least", "fewest", "exchange", "cycles"];
        if let Some(meant) = nearest(word, &known) {
            said = format!("{said} {}", session.voice.say("did-you-mean", &[("word", meant.into())]));
        }
        Failure::input(said)
    };
    let mut words = text.split(',').map(str::trim);
    let names: Vec<&str> = words.next().unwrap_or_default().split('+').map(str::trim).collect();
    let named = |word: &str| {
        MethodName::ALL.into_iter().find(|method| method.name() == word).ok_or_else(|| unknown(word))
    };
    let (corners, edges) = match names[..] {
        // Half turns of a slice do nothing for corners; with them goes one-swap.
        [both] => match named(both)? {
            MethodName::SliceSwap => (MethodName::OneSwap, MethodName::SliceSwap),
            method => (method, method),
        },
        [corners, edges] => (named(corners)?, named(edges)?),
        _ => return Err(unknown(text)),
    };
    if corners == MethodName::SliceSwap {
        return Err(Failure::input(session.voice.say("compare-not-corners", &[("text", names[0].into())])));
    }
    let mut conventions = Conventions::default();
    for (orbit, method) in [(Orbit::Corner, corners), (Orbit::Midge, edges)] {
        let (own, kind) = (session.conventions.kind(orbit), conventions.kind_mut(orbit));
        if own.method == method {
            kind.clone_from(own);
        } else if let Some(usual) = usual(method, orbit) {
            kind.letters = own.letters.clone();
            (kind.method, kind.buffer, kind.algorithm) = (method, usual.buffer, Some(usual.algorithm));
        }
        kind.breaks = BreakChoice::First;
    }
    // With an algorithm for parity the half-turned slice has to be put right before the corners.
    if edges == MethodName::SliceSwap {
        conventions.execution_order = OrbitOrder::of_execution(&[Orbit::Midge, Orbit::Corner]);
    }
    for word in words {
        if word == "exchange" {
            conventions.parity = ParityChoice::Exchange;
            continue;
        }
        for (_, kind) in conventions.kinds.iter_mut() {
            match word {
                "least" => kind.breaks = BreakChoice::Least,
                "fewest" => kind.breaks = BreakChoice::Fewest,
                "cycles" => kind.turned = Turned::Cycles,
                _ => return Err(unknown(word)),
            }
        }
    }
    Ok((conventions, session.directory.clone()))
}

/// A measure's values as they are told: thousandths of a second as seconds.
fn scale(measure: Measure) -> f64 {
    if measure == Measure::Milliseconds { 1000.0 } else { 1.0 }
}

fn name(session: &Session, measure: Measure) -> String {
    session.voice.word(match measure {
        Measure::Letters => "compare-letters",
        Measure::Algorithms => "compare-algorithms",
        Measure::Moves => "compare-moves",
        Measure::Milliseconds => "compare-seconds",
    })
}

fn difference(paired: &Paired, measure: Measure) -> Difference {
    let found = paired.difference().unwrap_or(Difference { mean: f64::NAN, low: f64::NAN, high: f64::NAN });
    let by = scale(measure);
    Difference { mean: found.mean / by, low: found.low / by, high: found.high / by }
}

fn text(session: &Session, options: &CompareOptions, compared: &Comparison) -> String {
    let voice = &session.voice;
    let mut lines = vec![voice.say(
        "compare-heading",
        &[("count", options.count.into()), ("seed", options.seed.to_string().into())],
    )];
    let wide = options.methods.iter().map(|method| method.chars().count()).max().unwrap_or(0);
    for (at, measure) in Measure::ALL.into_iter().enumerate() {
        lines.push(String::new());
        let mean = voice.word("compare-mean");
        lines.push(format!(
            "{:<wide$}  {mean:>8}  {:>8}  {:>8}  {:>8}  {:>8}  {:>8}",
            name(session, measure),
            "5 %",
            "25 %",
            "50 %",
            "75 %",
            "95 %"
        ));
        for (method, spreads) in options.methods.iter().zip(&compared.spreads) {
            let spread = &spreads[at];
            let by = scale(measure);
            let digits = if measure == Measure::Milliseconds { 2 } else { 0 };
            let mut line = format!("{method:<wide$}  {:>8}", voice.decimal(spread.mean() / by, 2));
            for share in SHARES {
                let _ =
                    write!(line, "  {:>8}", voice.decimal(f64::from(spread.quantile(share)) / by, digits));
            }
            lines.push(line);
        }
    }
    lines.push(String::new());
    lines.push(voice.word("compare-confidence"));
    for (method, paired) in options.methods[1..].iter().zip(&compared.paired) {
        for (measure, pair) in Measure::ALL.into_iter().zip(paired) {
            let found = difference(pair, measure);
            let signed = |value: f64| {
                let sign = if value < 0.0 { "" } else { "+" };
                format!("{sign}{}", voice.decimal(value, 3))
            };
            let line = voice.say(
                "compare-difference",
                &[
                    ("first", options.methods[0].as_str().into()),
                    ("second", method.as_str().into()),
                    ("mean", signed(found.mean).into()),
                    ("low", signed(found.low).into()),
                    ("high", signed(found.high).into()),
                ],
            );
            lines.push(format!("  {}: {line}", name(session, measure)));
        }
    }
    lines.join("\n") + "\n"
}

fn to_wire(options: &CompareOptions, compared: &Comparison) -> wire_algs::Comparison {
    let spread = |spread: &Spread, measure: Measure| {
        let by = scale(measure);
        let (least, greatest) = spread.ends();
        wire_algs::Spread {
            mean: spread.mean() / by,
            quantiles: SHARES.map(|share| f64::from(spread.quantile(share)) / by),
            least: f64::from(least) / by,
            greatest: f64::from(greatest) / by,
        }
    };
    let interval = |paired: &Paired, measure: Measure| {
        let Difference { mean, low, high } = difference(paired, measure);
        wire_algs::Interval { mean, low, high }
    };
    let [a, b, c, d] = Measure::ALL;
    wire_algs::Comparison {
        version: wire::VERSION,
        states: options.count,
        seed: options.seed,
        methods: options
            .methods
            .iter()
            .zip(&compared.spreads)
            .map(|(method, spreads)| wire_algs::Compared {
                method: method.clone(),
                letters: spread(&spreads[0], a),
                algorithms: spread(&spreads[1], b),
                moves: spread(&spreads[2], c),
                seconds: spread(&spreads[3], d),
            })
            .collect(),
        differences: options.methods[1..]
            .iter()
            .zip(&compared.paired)
            .map(|(method, paired)| wire_algs::Differences {
                method: method.clone(),
                letters: interval(&paired[0], a),
                algorithms: interval(&paired[1], b),
                moves: interval(&paired[2], c),
                seconds: interval(&paired[3], d),
            })
            .collect(),
    }
}

/// A strip of quantiles of the estimated times, and a histogram for each method beside it: `NAME.svg`, `NAME-1.svg`, …
fn pictures(
    session: &Session,
    options: &CompareOptions,
    compared: &Comparison,
    path: &Path,
) -> io::Result<()> {
    let voice = &session.voice;
    let heading = voice.say(
        "compare-heading",
        &[("count", options.count.into()), ("seed", options.seed.to_string().into())],
    );
    let axis = name(session, Measure::Milliseconds);
    let plain = |value: f64| format!("{}", (value * 100.0).round() / 100.0);
    let strip = QuantileStrip {
        rows: options
            .methods
            .iter()
            .zip(&compared.spreads)
            .map(|(method, spreads)| Quantiles {
                name: method.clone(),
                values: SHARES.map(|share| f64::from(spreads[3].quantile(share)) / 1000.0),
            })
            .collect(),
        axis: axis.clone(),
        theme: Theme::Light,
        caption: Caption::new(heading.clone()),
    };
    write(path, &strip.svg(&plain))?;
    let stem = path.file_stem().map_or_else(String::new, |stem| stem.to_string_lossy().into_owned());
    for (number, (method, spreads)) in options.methods.iter().zip(&compared.spreads).enumerate() {
        let (from, counts) = spreads[3].ranges(1000);
        let mean = spreads[3].mean() / 1000.0;
        let marked = voice.say("compare-marked-mean", &[("mean", voice.decimal(mean, 2).into())]);
        let histogram = Histogram {
            from: f64::from(from) / 1000.0,
            width: 1.0,
            counts,
            marked: Some((mean, marked)),
            axis: axis.clone(),
            theme: Theme::Light,
            caption: Caption::new(format!("{method}: {heading}")),
        };
        let place = path.with_file_name(format!("{stem}-{}.svg", number + 1));
        write(&place, &histogram.svg(&plain, &plain))?;
    }
    Ok(())
}

fn write(path: &Path, svg: &Svg) -> io::Result<()> {
    fs::write(path, svg.to_file())
}
