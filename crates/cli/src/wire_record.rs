//! What the commands of results print as JSON.

use serde::Serialize;

/// What `round --json` prints.
#[derive(Debug, Serialize)]
pub struct Round {
    /// 1.
    pub version: u32,
    /// The event, as published results name it.
    pub event: String,
    /// The day of the edition of the rules.
    pub edition: String,
    /// Everyone's round, in the order in which they were given.
    pub people: Vec<RoundOf>,
}

/// A person's round. Results are numbers as they are published.
#[derive(Debug, Serialize)]
pub struct RoundOf {
    /// Who; absent where no table was given.
    pub name: Option<String>,
    /// The attempts.
    pub attempts: Vec<i64>,
    /// The best of them; absent where there is no result.
    pub best: Option<i64>,
    /// The mean or average; absent where there is none, or none yet.
    pub mean: Option<i64>,
    /// The place; absent where there is no result or no table.
    pub place: Option<usize>,
}

/// What `many --json` prints.
#[derive(Debug, Serialize)]
pub struct ManyAtOnce {
    /// 1.
    pub version: u32,
    /// Each number of puzzles, from two on.
    pub prospects: Vec<ProspectOf>,
}

/// What a number of puzzles may bring.
#[derive(Debug, Serialize)]
pub struct ProspectOf {
    /// How many puzzles.
    pub puzzles: u32,
    /// The points to be expected.
    pub expected: f64,
    /// The chance that the attempt does not count.
    pub no_result: f64,
    /// The chance of at least the points that were asked for; absent where none were.
    pub reaches: Option<f64>,
    /// The chance of each number of puzzles solved, from none on.
    pub solved: Vec<f64>,
}
