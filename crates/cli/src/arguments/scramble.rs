//! Options of scrambles.

use super::{Hold, whole};
use clap::Args;
use std::path::PathBuf;

/// Options of `scramble`.
#[derive(Debug, Args)]
pub struct ScrambleOptions {
    /// The puzzle: 2 for the 2x2 up to 7 for the 7x7
    #[arg(long, short, default_value = "3", value_name = "SIZE")]
    pub puzzle: String,
    /// How many
    #[arg(long, short = 'n', default_value = "1", value_name = "NUMBER", allow_negative_numbers = true, value_parser = whole::<u64>(1, u64::MAX))]
    pub count: u64,
    /// Only scrambles that meet a condition on their memo, as "corner.breaks = 1 and edge.flips = 0"; each of them is
    /// as likely as any other
    #[arg(long = "where", value_name = "CONDITION")]
    pub condition: Option<String>,
    /// The condition of a lesson; see --lessons
    #[arg(long, value_name = "NAME", conflicts_with = "condition")]
    pub lesson: Option<String>,
    /// What to say instead of making scrambles.
    #[command(flatten)]
    pub question: ScrambleQuestion,
    /// How the puzzle is picked up for its memo: as your conventions say, or the best of all ways (even sizes; such conditions are
    /// tried and not counted)
    #[arg(long, value_enum, default_value = "conventions", value_name = "CHOICE")]
    pub hold: Hold,
    /// Leave the puzzle in a random way of lying, as blindfolded events do
    #[arg(long)]
    pub blind: bool,
    /// The same number gives the same scrambles
    #[arg(long, value_name = "NUMBER", allow_negative_numbers = true, value_parser = whole::<u64>(0, u64::MAX))]
    pub seed: Option<u64>,
    /// Write a page to print: scrambles with pictures, then answers with memo and reasons (HTML)
    #[arg(long, value_name = "FILE", conflicts_with = "json")]
    pub sheet: Option<PathBuf>,
    /// A JSON object a line
    #[arg(long)]
    pub json: bool,
}

/// What `scramble` can say without making a scramble.
#[derive(Debug, Args)]
pub struct ScrambleQuestion {
    /// List the lessons there are for the puzzle
    #[arg(long, conflicts_with_all = ["condition", "lesson", "how_rare", "sheet", "count", "blind", "seed"])]
    pub lessons: bool,
    /// Count how many states meet the condition, and make no scramble
    #[arg(long, conflicts_with_all = ["sheet", "count"])]
    pub how_rare: bool,
}
