//! `hoodwink algs find`: all algorithms for an effect, proven shortest.

use crate::arguments::{FindOptions, Order};
use crate::failure::Failure;
use crate::input::{Session, model};
use crate::{wire, wire_algs};
use blind::{kind_name, nearest};
use cube::{Metric, Orbit, Size, Sticker, Turn, display_turns};
use search::cycle::{Effect, EffectKind, Finder, Finding, Limits, Milestone, TurnSet};
use search::ease::{Model, best_first};
use search::factor::factored;
use std::io::{self, Write};
use std::ops::ControlFlow;
use std::process::ExitCode;

/// How many algorithms of a case are shown where all are not asked for.
const SHOWN: usize = 3;

/// How long sequences are searched where no length is asked for.
const LONGEST: usize = 10;
/// The same where only the shortest are wanted: every three-cycle of corners is there with face turns.
const LONGEST_OF_SHORTEST: usize = 12;

/// The turns where none are asked for.
const FACES: &str = "U,D,R,L,F,B";

/// What a search is made with.
pub(super) struct Search<'a> {
    pub(super) session: &'a Session,
    pub(super) options: &'a FindOptions,
    pub(super) size: Size,
    pub(super) model: Model,
}

/// Runs the command.
pub fn run(session: &Session, options: &FindOptions) -> Result<ExitCode, Failure> {
    let size = session.size(&options.puzzle)?;
    let model = model(session, options.ease.as_deref())?;
    let search = Search { session, options, size, model };
    let orbit = session.kind(&options.kind, size)?;
    if orbit.stickers_per_piece() == 1 {
        return super::rings::run(&search, orbit);
    }
    let effects = search.effects()?;
    let memory = search.memory()?;
    let failed = |error| Failure::input(session.voice.find_error(&error));
    let mut told = String::new();
    let mut out = io::BufWriter::new(io::stdout().lock());
    let finder = |max_length: usize, told: &mut String| {
        let limits = Limits { max_length, memory };
        Finder::prepare(search.turns()?, limits, &mut |event| search.tell(&event, told)).map_err(failed)
    };
    if options.by == Order::Ease {
        let finder = finder(options.longest.unwrap_or(LONGEST), &mut told)?;
        for (class, effect) in effects.iter().enumerate() {
            let classes = effects.len();
            let ranking = best_first(&finder, &search.model, effect, options.count, &mut |length, done| {
                search.tell(&Milestone::Searching { class, classes, length, done }, &mut told)
            })
            .map_err(failed)?;
            let easiest = Some(ranking.proven);
            let algorithms = ranking.algorithms.into_iter().map(|ranked| ranked.turns).collect();
            let (shortest, searched) = (ranking.shortest, ranking.searched);
            let finding = Finding { effect: *effect, shortest, searched, algorithms };
            search.write(&mut out, &finding, easiest)?;
        }
    } else {
        let extra = if options.shortest { 0 } else { usize::MAX };
        // Where only the shortest are wanted, a small table does for most cases; the large one is made for the rest.
        let lengths = match options.longest {
            Some(longest) => vec![longest],
            None if options.shortest => vec![LONGEST, LONGEST_OF_SHORTEST],
            None => vec![LONGEST],
        };
        let mut left = effects;
        for (round, &longest) in lengths.iter().enumerate() {
            if left.is_empty() {
                break;
            }
            let is_last = round + 1 == lengths.len();
            let finder = finder(longest, &mut told)?;
            let mut wrote: Result<(), Failure> = Ok(());
            let mut not_found = Vec::new();
            let outcome = finder.find(&left, extra, &mut |event| {
                match &event {
                    Milestone::Found { finding, .. } if finding.shortest.is_none() && !is_last => {
                        not_found.push(finding.effect);
                    }
                    Milestone::Found { finding, .. } => wrote = search.write(&mut out, finding, None),
                    _ => return search.tell(&event, &mut told),
                }
                if wrote.is_ok() { ControlFlow::Continue(()) } else { ControlFlow::Break(()) }
            });
            wrote?;
            outcome.map_err(failed)?;
            left = not_found;
        }
    }
    out.flush()?;
    Ok(ExitCode::SUCCESS)
}

impl Search<'_> {
    pub(super) fn target(&self, orbit: Orbit, text: &str) -> Result<Sticker, Failure> {
        self.session.sticker(text.trim(), orbit, &self.session.conventions.kind(orbit).letters)
    }

    /// So many pieces, separated by commas or blanks, that an option takes.
    fn pieces<const N: usize>(
        &self,
        option: &'static str,
        text: &str,
        orbits: [Orbit; N],
    ) -> Result<[Sticker; N], Failure> {
        let voice = &self.session.voice;
        let words = words(text);
        let takes = voice.word(&format!("{option}-takes"));
        if words.len() != N {
            let blanks = [("takes", takes.into()), ("count", words.len().into()), ("text", text.into())];
            return Err(Failure::input(voice.say("find-other-count", &blanks)));
        }
        for (word, orbit) in words.iter().zip(orbits) {
            let of = |orbit: Orbit| self.target(orbit, word).ok();
            let other = Orbit::of(self.size).iter().find(|&&other| other != orbit && of(other).is_some());
            if let (None, Some(&other)) = (of(orbit), other) {
                let blanks =
                    [("text", (*word).into()), ("kind", kind_name(other).into()), ("takes", takes.into())];
                return Err(Failure::input(voice.say("find-other-kind", &blanks)));
            }
        }
        self.targets(text, orbits)
    }

    /// So many targets of a kind, separated by commas or blanks.
    fn targets<const N: usize>(&self, text: &str, orbits: [Orbit; N]) -> Result<[Sticker; N], Failure> {
        let words = words(text);
        if words.len() != N {
            return Err(Failure::input(self.session.voice.say("find-two-targets", &[("text", text.into())])));
        }
        let found: Vec<Sticker> = words
            .iter()
            .zip(orbits)
            .map(|(word, orbit)| self.target(orbit, word))
            .collect::<Result<_, _>>()?;
        Ok(std::array::from_fn(|at| found[at]))
    }

    fn effects(&self) -> Result<Vec<Effect>, Failure> {
        let Self { session, options, size, .. } = self;
        let (size, voice) = (*size, &session.voice);
        let failed = |error| Failure::input(voice.effect_error(&error, &session.conventions));
        let (corner, midge) = (Orbit::Corner, Orbit::Midge);
        if let Some(text) = &options.twist {
            let [clockwise, counter] = self.pieces("find-twist", text, [corner; 2])?;
            return Ok(vec![Effect::twist_pair(size, clockwise, counter).map_err(failed)?]);
        }
        if let Some(text) = &options.flip {
            let [one, other] = self.pieces("find-flip", text, [midge; 2])?;
            return Ok(vec![Effect::flip_pair(size, one, other).map_err(failed)?]);
        }
        if let Some(text) = &options.exchange {
            let [a, b, c, d] = self.pieces("find-exchange", text, [corner, corner, midge, midge])?;
            return Ok(vec![Effect::two_swaps(size, [a, b], [c, d]).map_err(failed)?]);
        }
        let orbit = session.kind(&options.kind, size)?;
        let buffer = match &options.buffer {
            Some(text) => self.target(orbit, text)?,
            None => session.conventions.kind(orbit).buffer,
        };
        if let Some(text) = &options.last {
            let midges = if Orbit::of(size).contains(&midge) {
                let [_, _, one, other] = self.pieces("find-last", text, [corner, corner, midge, midge])?;
                Some([one, other])
            } else {
                None
            };
            let words: Vec<&str> = text.split([',', ' ']).filter(|word| !word.is_empty()).collect();
            let [target, twisted] = self.targets(&words[..2.min(words.len())].join(","), [corner; 2])?;
            return [true, false]
                .into_iter()
                .map(|clockwise| {
                    Effect::last_target(size, buffer, target, twisted, clockwise, midges).map_err(failed)
                })
                .collect();
        }
        if options.all {
            return Effect::all_three_cycles(size, orbit, buffer).map_err(failed);
        }
        let [first, second] = self.two_targets(orbit)?;
        Ok(vec![Effect::three_cycle(size, orbit, buffer, first, second).map_err(failed)?])
    }

    /// The two targets of the case: letters, perhaps written together, or stickers by name.
    pub(super) fn two_targets(&self, orbit: Orbit) -> Result<[Sticker; 2], Failure> {
        let text = self.options.targets.join(" ");
        if text.trim().is_empty() {
            return Err(Failure::input(self.session.voice.word("find-one-or-all")));
        }
        match self.session.conventions.kind(orbit).letters.read(&text).as_deref() {
            Ok(&[first, second]) => Ok([first, second]),
            Ok(_) | Err(_) => self.targets(&text, [orbit; 2]),
        }
    }

    /// The turns, and how they are counted.
    fn turns(&self) -> Result<TurnSet, Failure> {
        let voice = &self.session.voice;
        let failed = |error| Failure::input(voice.turn_set_error(&error));
        let any_metric =
            TurnSet::parse(self.size, self.options.moves.as_deref().unwrap_or(FACES), Metric::Execution)
                .map_err(failed)?;
        let metric = match self.options.metric.as_deref() {
            Some("half") => Metric::HalfTurn,
            Some("quarter") => Metric::QuarterTurn,
            Some("slice") => Metric::SliceTurn,
            Some("execution") => Metric::Execution,
            Some(text) => {
                let mut said = voice.say("metric-unknown", &[("text", text.into())]);
                if let Some(meant) = nearest(text, &["half", "quarter", "slice", "execution"]) {
                    said = format!("{said} {}", voice.say("did-you-mean", &[("word", meant.into())]));
                }
                return Err(Failure::input(said));
            }
            None => any_metric.usual_metric(),
        };
        TurnSet::new(self.size, any_metric.turns(), metric).map_err(failed)
    }

    fn memory(&self) -> Result<u64, Failure> {
        let text = self.options.memory.trim();
        let (digits, unit) = match text.to_uppercase().chars().last() {
            Some('G') => (&text[..text.len() - 1], 1 << 30),
            Some('M') => (&text[..text.len() - 1], 1 << 20),
            _ => (text, 1),
        };
        let number = digits.trim().parse::<u64>().ok().and_then(|number| number.checked_mul(unit));
        number.ok_or_else(|| Failure::input(self.session.voice.say("find-size", &[("text", text.into())])))
    }

    /// Progress, on standard error, a line only where something new is to be said.
    fn tell(&self, event: &Milestone<'_>, told: &mut String) -> ControlFlow<()> {
        let voice = &self.session.voice;
        let said = match event {
            Milestone::Reached { length, states } => {
                voice.say("find-reached", &[("length", (*length).into()), ("states", (*states).into())])
            }
            Milestone::Searching { class, classes, length, .. } => voice.say(
                "find-searching",
                &[
                    ("class", (class + 1).into()),
                    ("classes", (*classes).into()),
                    ("length", (*length).into()),
                ],
            ),
            Milestone::Found { .. } => return ControlFlow::Continue(()),
        };
        if !self.options.quiet && *told != said {
            eprintln!("{said}");
            *told = said;
        }
        ControlFlow::Continue(())
    }

    /// Writes at once: whoever reads along, or stops the search, has what was found so far.
    ///
    /// `easiest` tells, where algorithms were sought by ease, how many of the first are proven to be the easiest of all.
    fn write(&self, out: &mut dyn Write, finding: &Finding, easiest: Option<usize>) -> Result<(), Failure> {
        self.lines(out, finding, easiest)?;
        out.flush()?;
        Ok(())
    }

    fn lines(&self, out: &mut dyn Write, finding: &Finding, easiest: Option<usize>) -> Result<(), Failure> {
        let seconds = |turns: &[Turn]| self.model.estimate(turns).seconds;
        let named = names(&finding.effect, self.session);
        if self.options.json {
            let written = |turns: &Vec<Turn>| {
                factored(self.size, turns)
                    .map_or_else(|| display_turns(turns).to_string(), |algorithm| algorithm.to_string())
            };
            let line = wire_algs::Found {
                version: wire::VERSION,
                kind: named.kind,
                effect: named.effect,
                buffer: named.stickers.first().cloned().unwrap_or_default(),
                first: named.stickers.get(1).cloned().unwrap_or_default(),
                second: named.stickers.get(2).cloned(),
                further: named.stickers.iter().skip(3).cloned().collect(),
                shortest: finding.shortest,
                proven: true,
                searched: finding.searched,
                easiest_proven: easiest,
                algorithms: finding.algorithms.iter().map(|turns| display_turns(turns).to_string()).collect(),
                written: finding.algorithms.iter().map(written).collect(),
                seconds: finding.algorithms.iter().map(|turns| rounded(seconds(turns))).collect(),
            };
            serde_json::to_writer(&mut *out, &line).map_err(io::Error::from)?;
            writeln!(out)?;
            return Ok(());
        }
        let voice = &self.session.voice;
        let Some(shortest) = finding.shortest else {
            let searched = finding.searched;
            writeln!(
                out,
                "{}",
                voice.say("find-none", &[("case", named.text.into()), ("searched", searched.into())])
            )?;
            return Ok(());
        };
        writeln!(
            out,
            "{}",
            voice.say("find-line", &[("case", named.text.into()), ("shortest", shortest.into())])
        )?;
        let mut algorithms: Vec<(f64, &Vec<Turn>)> =
            finding.algorithms.iter().map(|turns| (seconds(turns), turns)).collect();
        if self.options.by == Order::Length {
            algorithms.sort_by(|a, b| {
                (a.1.len(), a.0).partial_cmp(&(b.1.len(), b.0)).unwrap_or(std::cmp::Ordering::Equal)
            });
        }
        // One case is shown whole, of many the best few.
        let most = if self.options.all { SHOWN } else { self.options.count };
        for (seconds, turns) in algorithms.iter().take(most) {
            let plain = display_turns(turns).to_string();
            let explained = factored(self.size, turns).map_or_else(String::new, |found| format!("  {found}"));
            let time = voice.say("way-seconds", &[("seconds", voice.decimal(*seconds, 2).into())]);
            writeln!(out, "  {time}  {plain}{explained}")?;
        }
        if let Some(easiest) = easiest {
            let blanks = [("count", easiest.into()), ("searched", finding.searched.into())];
            writeln!(out, "  {}", voice.say("find-easiest", &blanks))?;
        }
        if algorithms.len() > most {
            writeln!(out, "  {}", voice.say("find-more", &[("count", (algorithms.len() - most).into())]))?;
        }
        Ok(())
    }
}

/// What stands between commas, blanks or hyphens.
fn words(text: &str) -> Vec<&str> {
    text.split([',', ' ', '-']).map(str::trim).filter(|word| !word.is_empty()).collect()
}

pub(super) fn rounded(seconds: f64) -> f64 {
    (seconds * 1000.0).round() / 1000.0
}

/// What an effect is called.
struct Named {
    kind: &'static str,
    effect: &'static str,
    stickers: Vec<String>,
    text: String,
}

fn names(effect: &Effect, session: &Session) -> Named {
    let corner = |sticker| Orbit::Corner.name(sticker).to_owned();
    let midge = |sticker| Orbit::Midge.name(sticker).to_owned();
    let (kind, effect, stickers) = match effect.kind() {
        EffectKind::ThreeCycle { orbit, buffer, first, second } => {
            let stickers = [buffer, first, second].map(|sticker| orbit.name(sticker).to_owned()).to_vec();
            let case = sheet::CycleCase { orbit, buffer, first, second };
            let text = session.voice.case(case, &session.conventions);
            return Named { kind: kind_name(orbit), effect: "three-cycle", stickers, text };
        }
        EffectKind::TwistPair { clockwise, counter } => {
            (kind_name(Orbit::Corner), "twist", vec![corner(clockwise), corner(counter)])
        }
        EffectKind::FlipPair(one, other) => (kind_name(Orbit::Midge), "flip", vec![midge(one), midge(other)]),
        EffectKind::TwoSwaps { corners, midges } => {
            let stickers = corners.map(corner).into_iter().chain(midges.map(midge)).collect();
            (kind_name(Orbit::Corner), "exchange", stickers)
        }
        EffectKind::LastTarget { buffer, target, twisted, clockwise, midges } => {
            let turned = if clockwise { "+" } else { "-" };
            let mut stickers = vec![corner(buffer), corner(target), format!("{}{turned}", corner(twisted))];
            stickers.extend(midges.into_iter().flatten().map(midge));
            (kind_name(Orbit::Corner), "last-target", stickers)
        }
        EffectKind::Other => ("", "other", Vec::new()),
    };
    Named { kind, effect, text: stickers.join(" "), stickers }
}
