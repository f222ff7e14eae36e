//! Options of rounds.

use clap::Args;
use std::path::PathBuf;

/// Options of `round`.
#[derive(Debug, Args)]
pub struct RoundOptions {
    /// The attempts in order: times as 45.31 or 1:02.50, with penalties as 45.31+2, DNF, DNF(4:10) with the time that passed, DNS; of many at once as "8/9 45:32"
    #[arg(value_name = "ATTEMPT", allow_negative_numbers = true)]
    pub attempts: Vec<String>,
    /// A table instead: a line a person, as "Ines: 45.31 DNF 50.2", or - for standard input; everyone is placed
    #[arg(long, short, value_name = "FILE", conflicts_with = "attempts")]
    pub table: Option<PathBuf>,
    /// The event: 3x3, 4x4, 5x5 or many
    #[arg(long, short, default_value = "3x3", value_name = "EVENT")]
    pub event: String,
    /// The edition of the rules, by its day; without it the newest that is known
    #[arg(long, value_name = "DAY")]
    pub edition: Option<String>,
    /// The limit of an attempt, which it has to stay below, as 10:00
    #[arg(long, value_name = "TIME")]
    pub limit: Option<String>,
    /// A limit for all attempts together, as 30:00
    #[arg(long, value_name = "TIME")]
    pub together: Option<String>,
    /// The attempts are numbers as results are published with
    #[arg(long)]
    pub codes: bool,
    /// JSON
    #[arg(long)]
    pub json: bool,
}
