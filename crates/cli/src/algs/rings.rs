//! `hoodwink algs find` for wings and centres: the shortest three-cycles, proven where every shorter sequence was tried.

use super::find::{Search, rounded};
use crate::failure::Failure;
use crate::{wire, wire_algs};
use blind::kind_name;
use cube::{Block, Orbit, Sticker, Turn, display_turns};
use search::commutators::layers;
use search::factor::factored;
use search::rings::{RingFinding, Rings};
use sheet::CycleCase;
use std::io::{self, Write};
use std::ops::ControlFlow;
use std::process::ExitCode;

/// The longest sequences that are searched.
const LONGEST: usize = 8;

/// How many algorithms of a case are shown where all cases are asked for.
const SHOWN: usize = 3;

/// Runs the command.
pub(super) fn run(search: &Search<'_>, orbit: Orbit) -> Result<ExitCode, Failure> {
    let Search { session, options, size, .. } = search;
    let voice = &session.voice;
    if options.metric.as_deref().is_some_and(|metric| metric != "slice") {
        return Err(Failure::input(voice.word("find-rings-metric")));
    }
    if options.longest.is_some_and(|longest| longest > LONGEST) {
        return Err(Failure::input(voice.say("find-rings-longest", &[("most", LONGEST.into())])));
    }
    let buffer = match &options.buffer {
        Some(text) => search.target(orbit, text)?,
        None => session.conventions.kind(orbit).buffer,
    };
    let cases: Vec<CycleCase> = if options.all {
        CycleCase::all(orbit, buffer).collect()
    } else {
        let [first, second] = search.two_targets(orbit)?;
        let case = CycleCase::new(orbit, buffer, first, second);
        vec![case.ok_or_else(|| Failure::input(same_place(search, orbit, [buffer, first, second])))?]
    };
    let turns = turns(search, orbit)?;
    let reach = options.longest.unwrap_or(LONGEST).div_ceil(2);
    let mut on = |length: usize, sequences: usize| {
        if !options.quiet {
            let blanks = [("length", length.into()), ("sequences", sequences.into())];
            eprintln!("{}", voice.say("find-rings-made", &blanks));
        }
        ControlFlow::Continue(())
    };
    let rings = Rings::search(*size, orbit, &turns, reach, &mut on)
        .map_err(|error| Failure::input(voice.rings_error(&error)))?;
    let mut out = io::BufWriter::new(io::stdout().lock());
    for case in cases {
        match rings.find([case.buffer, case.first, case.second]) {
            finding if options.json => json(search, case, finding, rings.searched(), &mut out)?,
            Some(finding) => lines(search, case, &finding, &mut out)?,
            None => {
                let named = voice.case(case, &session.conventions);
                let blanks = [("case", named.into()), ("searched", rings.searched().into())];
                writeln!(out, "{}", voice.say("find-none", &blanks))?;
            }
        }
    }
    out.flush()?;
    Ok(ExitCode::SUCCESS)
}

/// The turns that were asked for, or every single layer that moves the kind.
fn turns(search: &Search<'_>, orbit: Orbit) -> Result<Vec<Turn>, Failure> {
    let Some(text) = &search.options.moves else { return Ok(layers(search.size, orbit)) };
    let mut turns = Vec::new();
    for name in text.split(|sign: char| sign == ',' || sign.is_whitespace()).filter(|name| !name.is_empty()) {
        let unknown = search::cycle::TurnSetError::Unknown(name.to_owned());
        let block = Block::parse(name)
            .ok_or_else(|| Failure::input(search.session.voice.turn_set_error(&unknown)))?;
        turns.extend(Turn::of(block));
    }
    Ok(turns)
}

fn same_place(search: &Search<'_>, orbit: Orbit, places: [Sticker; 3]) -> String {
    let [a, b, c] = places;
    let (one, other) = if a == b || b == c { (b, b) } else { (a, c) };
    let error = search::cycle::EffectError::SamePiece { orbit, one, other };
    search.session.voice.effect_error(&error, &search.session.conventions)
}

fn lines(
    search: &Search<'_>,
    case: CycleCase,
    finding: &RingFinding,
    out: &mut dyn Write,
) -> Result<(), Failure> {
    let Search { session, options, size, model } = search;
    let voice = &session.voice;
    let named = voice.case(case, &session.conventions);
    let blanks = [
        ("case", named.into()),
        ("shortest", finding.shortest.into()),
        ("searched", finding.searched.into()),
    ];
    let message = if finding.proven { "find-line" } else { "find-line-unproven" };
    writeln!(out, "{}", voice.say(message, &blanks))?;
    let seconds = |turns: &[Turn]| model.estimate(turns).seconds;
    let mut timed: Vec<(f64, &Vec<Turn>)> =
        finding.algorithms.iter().map(|turns| (seconds(turns), turns)).collect();
    timed.sort_by(|a, b| a.0.total_cmp(&b.0).then_with(|| a.1.cmp(b.1)));
    let most = if options.all { SHOWN } else { options.count };
    for (seconds, turns) in timed.into_iter().take(most) {
        let plain = display_turns(turns).to_string();
        let explained = factored(*size, turns).map_or_else(String::new, |found| format!("  {found}"));
        let time = voice.say("way-seconds", &[("seconds", voice.decimal(seconds, 2).into())]);
        writeln!(out, "  {time}  {plain}{explained}")?;
    }
    Ok(())
}

fn json(
    search: &Search<'_>,
    case: CycleCase,
    finding: Option<RingFinding>,
    searched: usize,
    out: &mut dyn Write,
) -> Result<(), Failure> {
    let name = |sticker: Sticker| case.orbit.name(sticker).to_owned();
    let plain = |turns: &Vec<Turn>| display_turns(turns).to_string();
    let shortest = finding.as_ref().map(|finding| finding.shortest);
    let proven = finding.as_ref().is_none_or(|finding| finding.proven);
    let algorithms = finding.map_or_else(Vec::new, |finding| finding.algorithms);
    let written = |turns: &Vec<Turn>| {
        factored(search.size, turns).map_or_else(|| plain(turns), |found| found.to_string())
    };
    let line = wire_algs::Found {
        version: wire::VERSION,
        kind: kind_name(case.orbit),
        effect: "three-cycle",
        buffer: name(case.buffer),
        first: name(case.first),
        second: Some(name(case.second)),
        further: Vec::new(),
        shortest,
        proven,
        searched,
        easiest_proven: None,
        algorithms: algorithms.iter().map(plain).collect(),
        written: algorithms.iter().map(written).collect(),
        seconds: algorithms.iter().map(|turns| rounded(search.model.estimate(turns).seconds)).collect(),
    };
    serde_json::to_writer(&mut *out, &line).map_err(io::Error::from)?;
    writeln!(out)?;
    Ok(())
}
