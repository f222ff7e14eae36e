//! Options of many at once.

use super::whole;
use clap::Args;

/// Options of `many`.
#[derive(Debug, Args)]
pub struct ManyOptions {
    /// How often a puzzle comes right: 24/30, 0.8 or 80%
    #[arg(long, short, value_name = "SHARE")]
    pub success: String,
    /// How long the first puzzle takes, memorised and carried out, as 2:10
    #[arg(long, short, value_name = "TIME")]
    pub first: String,
    /// How much longer each further one takes than the one before it, as 5
    #[arg(long, value_name = "TIME", default_value = "0")]
    pub growth: String,
    /// How much your times differ from day to day, as 15%
    #[arg(long, value_name = "SHARE", default_value = "10%")]
    pub spread: String,
    /// The number of puzzles with the best chance of so many points as well
    #[arg(long, value_name = "NUMBER", allow_negative_numbers = true, value_parser = whole::<u32>(0, 99))]
    pub points: Option<u32>,
    /// Up to how many puzzles to look
    #[arg(long, value_name = "NUMBER", default_value = "30", allow_negative_numbers = true, value_parser = whole::<u32>(2, 99))]
    pub most: u32,
    /// JSON
    #[arg(long)]
    pub json: bool,
}
