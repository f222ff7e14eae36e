//! `hoodwink round`: attempts scored and people placed by the rules.

use crate::arguments::RoundOptions;
use crate::failure::Failure;
use crate::input::Session;
use crate::{wire, wire_record};
use formats::results::{self, Competitor, ResultError};
use record::edition::{Edition, Event};
use record::encoding;
use record::result::ManyOutcome;
use record::round::{Format, Limit, Timed, places};
use record::{Outcome, Time};
use std::fmt::Display;
use std::io::{self, Write};
use std::process::ExitCode;

/// What is scored, and how.
struct Round {
    event: Event,
    edition: Edition,
    format: Format,
    limit: Option<Limit>,
    codes: bool,
}

/// What a round came to for one person, as it is shown.
struct Card {
    attempts: Vec<String>,
    codes: Vec<i64>,
    best: Option<(String, i64)>,
    mean: Option<(String, i64)>,
    left_aside: usize,
    /// The best attempt, to place people by.
    rank: Option<Rank>,
}

/// What people are placed by.
#[derive(PartialEq, Eq, PartialOrd, Ord)]
enum Rank {
    One(Outcome),
    Many(ManyOutcome),
}

/// Runs the command.
pub fn run(session: &Session, options: &RoundOptions) -> Result<ExitCode, Failure> {
    let round = round(session, options)?;
    let text = match &options.table {
        Some(path) => session.read(path, results::MOST_BYTES)?,
        None => String::new(),
    };
    let entries = if options.table.is_some() {
        results::table(&text)
            .map_err(|line| Failure::input(session.voice.say("record-no-name", &[("line", line.into())])))?
    } else {
        let attempts = options.attempts.iter().flat_map(|text| match round.event {
            // A result of many at once has a blank in it.
            Event::Many if !round.codes => vec![text.as_str()],
            Event::Three | Event::Four | Event::Five | Event::Many => results::attempts(text),
        });
        vec![Competitor { line: 0, name: "", attempts: attempts.collect() }]
    };
    if entries.iter().all(|entry| entry.attempts.is_empty()) {
        return Err(Failure::input(session.voice.word("record-no-attempts")));
    }
    let mut cards = Vec::with_capacity(entries.len());
    for entry in &entries {
        let card = card(&round, &entry.attempts).map_err(|error| {
            let said = session.voice.result_error(&error);
            Failure::input(if entry.line > 0 { session.voice.in_line(entry.line, &said) } else { said })
        })?;
        cards.push(card);
    }
    let ranks: Vec<Option<&Rank>> = cards.iter().map(|card| card.rank.as_ref()).collect();
    let places = places(&ranks);
    let mut out = io::stdout().lock();
    if options.json {
        let of = |((entry, card), place): ((&Competitor<'_>, &Card), &Option<usize>)| wire_record::RoundOf {
            name: Some(entry.name.to_owned()).filter(|name| !name.is_empty()),
            attempts: card.codes.clone(),
            best: card.best.as_ref().map(|(_, code)| *code),
            mean: card.mean.as_ref().map(|(_, code)| *code),
            place: place.filter(|_| !entry.name.is_empty()),
        };
        let object = wire_record::Round {
            version: wire::VERSION,
            event: round.event.id().to_owned(),
            edition: round.edition.day(),
            people: entries.iter().zip(&cards).zip(&places).map(of).collect(),
        };
        serde_json::to_writer(&mut out, &object).map_err(io::Error::from)?;
        writeln!(out)?;
        return Ok(ExitCode::SUCCESS);
    }
    writeln!(out, "{}\n", session.voice.round(round.event, round.format, round.edition))?;
    match cards.as_slice() {
        [card] if options.table.is_none() => tell(session, &round, card, &mut out)?,
        _ => list(&entries, &cards, &places, &mut out)?,
    }
    writeln!(out, "\n{}", session.voice.word("record-delegate"))?;
    Ok(ExitCode::SUCCESS)
}

fn round(session: &Session, options: &RoundOptions) -> Result<Round, Failure> {
    let voice = &session.voice;
    let event = Event::ALL.into_iter().find(|event| event.name() == options.event).ok_or_else(|| {
        let known = voice.list(&Event::ALL.map(|event| event.name().to_owned()));
        Failure::input(
            voice.say("record-no-event", &[("text", options.event.as_str().into()), ("known", known.into())]),
        )
    })?;
    let edition = match &options.edition {
        None => Edition::newest(),
        Some(day) => {
            Edition::all().iter().copied().find(|edition| edition.day() == *day).ok_or_else(|| {
                let known =
                    voice.list(&Edition::all().iter().map(|edition| edition.day()).collect::<Vec<_>>());
                Failure::input(
                    voice.say("record-no-edition", &[("text", day.as_str().into()), ("known", known.into())]),
                )
            })?
        }
    };
    let time = |text: &Option<String>| {
        let read = text.as_deref().map(results::milliseconds).transpose();
        read.map(|time| time.map(Time::truncated)).map_err(|error| Failure::input(voice.result_error(&error)))
    };
    let (each, all) = (time(&options.limit)?, time(&options.together)?);
    let limit = match (each, all) {
        (each, Some(all)) => Some(Limit::Together { all, each }),
        (Some(each), None) => Some(Limit::Each(each)),
        (None, None) => None,
    };
    Ok(Round { event, edition, format: edition.round(event), limit, codes: options.codes })
}

fn card(round: &Round, attempts: &[&str]) -> Result<Card, ResultError> {
    let most = usize::from(round.format.attempts);
    let left_aside = attempts.len().saturating_sub(most);
    let attempts = &attempts[..attempts.len().min(most)];
    if round.event == Event::Many {
        let read = |text: &&str| {
            if round.codes {
                results::code_of_many(text)
            } else {
                results::many(text, round.edition).map(Some)
            }
        };
        let made: Vec<ManyOutcome> =
            attempts.iter().map(read).collect::<Result<Vec<_>, _>>()?.into_iter().flatten().collect();
        let best = made.iter().min().copied().filter(|best| *best != ManyOutcome::Dns);
        let coded = |outcome: &ManyOutcome| encoding::write_many(Some(*outcome));
        return Ok(Card {
            attempts: written(&made),
            codes: made.iter().map(coded).collect(),
            best: best.map(|best| (best.to_string(), coded(&best))),
            mean: None,
            left_aside,
            rank: best.map(Rank::Many),
        });
    }
    let read = |text: &&str| {
        if !round.codes {
            return results::one(text, round.edition).map(Some);
        }
        let timed = |outcome: Outcome| Timed { outcome, elapsed: outcome.time().unwrap_or_default() };
        Ok(results::code(text)?.map(timed))
    };
    let made: Vec<Timed> =
        attempts.iter().map(read).collect::<Result<Vec<_>, _>>()?.into_iter().flatten().collect();
    let made = match round.limit {
        Some(limit) => limit.apply(&made),
        None => made.iter().map(|timed| timed.outcome).collect(),
    };
    let score = round.format.score(&made);
    let coded = |outcome: &Outcome| encoding::write(Some(*outcome));
    Ok(Card {
        attempts: written(&made),
        codes: made.iter().map(coded).collect(),
        best: score.best.map(|best| (best.to_string(), coded(&best))),
        mean: score.mean.map(|mean| (mean.to_string(), coded(&mean))),
        left_aside,
        rank: score.best.map(Rank::One),
    })
}

fn written<T: Display>(made: &[T]) -> Vec<String> {
    made.iter().map(ToString::to_string).collect()
}

/// One person's round.
fn tell(session: &Session, round: &Round, card: &Card, out: &mut impl Write) -> Result<(), Failure> {
    let voice = &session.voice;
    for (number, result) in card.attempts.iter().enumerate() {
        let blanks = [("number", (number + 1).into()), ("result", result.as_str().into())];
        writeln!(out, "{}", voice.say("record-attempt", &blanks))?;
    }
    match &card.best {
        None => writeln!(out, "{}", voice.word("record-nothing"))?,
        Some((best, code)) => {
            writeln!(out, "{}", voice.best_result(best))?;
            if let Some(mean) = round.format.mean {
                writeln!(
                    out,
                    "{}",
                    voice.mean_result(mean, card.mean.as_ref().map(|(mean, _)| mean.as_str()))
                )?;
            }
            writeln!(out, "{}", voice.say("record-code", &[("code", code.to_string().into())]))?;
        }
    }
    if card.left_aside > 0 {
        writeln!(out, "{}", voice.say("record-left-aside", &[("count", card.left_aside.into())]))?;
    }
    Ok(())
}

/// Everyone's round, the best first.
fn list(
    entries: &[Competitor<'_>],
    cards: &[Card],
    places: &[Option<usize>],
    out: &mut impl Write,
) -> Result<(), Failure> {
    let mut order: Vec<usize> = (0..cards.len()).collect();
    order.sort_by_key(|&at| places[at].unwrap_or(usize::MAX));
    let broad = |texts: &mut dyn Iterator<Item = usize>| texts.max().unwrap_or(0);
    let name = broad(&mut entries.iter().map(|entry| entry.name.chars().count()));
    let of = |result: &Option<(String, i64)>| result.as_ref().map_or(String::new(), |(text, _)| text.clone());
    let best = broad(&mut cards.iter().map(|card| of(&card.best).len()));
    let mean = broad(&mut cards.iter().map(|card| of(&card.mean).len()));
    for at in order {
        let card = &cards[at];
        let place = places[at].map_or_else(String::new, |place| format!("{place}."));
        let line = format!(
            "{place:>4} {:name$}  {:>best$}  {:>mean$}  ({})",
            entries[at].name,
            of(&card.best),
            of(&card.mean),
            card.attempts.join(", "),
        );
        writeln!(out, "{}", line.trim_end())?;
    }
    Ok(())
}
