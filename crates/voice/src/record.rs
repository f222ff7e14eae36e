//! Results of rounds, and how many puzzles to try.

use crate::Voice;
use formats::results::ResultError;
use record::edition::{Edition, Event};
use record::round::{Format, Mean};

const fn kind(mean: Mean) -> &'static str {
    match mean {
        Mean::Of3 => "three",
        Mean::AverageOf5 => "five",
    }
}

impl Voice {
    /// What a round consists of, and by which edition of the rules it is scored.
    pub fn round(&self, event: Event, format: Format, edition: Edition) -> String {
        let event = self.say("record-event", &[("event", event.name().into())]);
        self.say(
            "record-round",
            &[
                ("event", event.into()),
                ("attempts", format.attempts.into()),
                ("mean", format.mean.map_or("none", kind).into()),
                ("edition", edition.day().into()),
            ],
        )
    }

    /// The best attempt of a round.
    pub fn best_result(&self, result: &str) -> String {
        self.say("record-best", &[("result", result.into())])
    }

    /// The mean or average of a round, or when there will be one.
    pub fn mean_result(&self, mean: Mean, result: Option<&str>) -> String {
        match (mean, result) {
            (Mean::Of3, Some(result)) => self.say("record-mean-three", &[("result", result.into())]),
            (Mean::AverageOf5, Some(result)) => self.say("record-mean-five", &[("result", result.into())]),
            (_, None) => {
                let blanks = [("kind", kind(mean).into()), ("attempts", mean.attempts().into())];
                self.say("record-mean-open", &blanks)
            }
        }
    }

    /// Why a text is no result, and what would be one.
    pub fn result_error(&self, error: &ResultError) -> String {
        let (message, text) = match error {
            ResultError::NoResult(text) => ("record-no-result", text),
            ResultError::Sixty(text) => ("record-sixty", text),
            ResultError::TooLong(text) => ("record-too-long", text),
            ResultError::NotMany(text) => ("record-not-many", text),
            ResultError::NoCode(text) => ("record-no-code", text),
        };
        self.say(message, &[("text", text.as_str().into())])
    }

    /// The same with the line of a table.
    pub fn in_line(&self, line: usize, what: &str) -> String {
        self.say("record-at-line", &[("line", line.into()), ("what", what.into())])
    }
}
