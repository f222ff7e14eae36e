//! Options of looking for what went wrong.

use super::{MemoOptions, StateOptions, whole};
use clap::Args;
use std::path::PathBuf;

/// Options of `why`.
#[derive(Debug, Args)]
pub struct WhyOptions {
    /// The puzzle and its state before the attempt.
    #[command(flatten)]
    pub state: StateOptions,
    /// The memo that was carried out; without one ours.
    #[command(flatten)]
    pub memo: MemoOptions,
    /// The stickers as one sees them now, however the puzzle is held: faces U L F R B D, row by row, with ? for those
    /// that are not known; or some faces, "U: … F: …"
    #[arg(long, value_name = "STICKERS", conflicts_with = "unsolved")]
    pub seen: Option<String>,
    /// Only what is unsolved: "UF flipped; UFR>DBL>UBR" (at UFR lies what belongs at DBL, …; a ? behind it if you
    /// did not look how they are turned), "UF and UR swapped", "UF, UR" (unsolved in whatever way), or only "two
    /// corners". Pieces by stickers, by colours (white-green) or by letters (edges: A>B); with "only edges: …" the corners
    /// were not looked at, with "nothing else" no piece was left out
    #[arg(long, value_name = "PIECES")]
    pub unsolved: Option<String>,
    /// The list that the scramble is of, one scramble a line: another of them may have been made
    #[arg(long, value_name = "FILE")]
    pub list: Option<PathBuf>,
    /// How likely each slip is, as a catalogue of slips (TOML); without it the usual estimates hold
    #[arg(long, value_name = "FILE")]
    pub rates: Option<PathBuf>,
    /// An answer to a question of an earlier run, as corner.5=yes; may be given several times
    #[arg(long, value_name = "NAME=yes|no")]
    pub answer: Vec<String>,
    /// Look for three slips too
    #[arg(long)]
    pub deep: bool,
    /// Stop looking for three slips after so many seconds, and tell what was found so far
    #[arg(long, value_name = "SECONDS", default_value = "10", requires = "deep", allow_negative_numbers = true, value_parser = whole::<u64>(1, 86_400))]
    pub seconds: u64,
    /// How many explanations to tell at most
    #[arg(long, value_name = "NUMBER", default_value = "5", allow_negative_numbers = true, value_parser = whole::<u16>(1, 100))]
    pub most: u16,
    /// One JSON object
    #[arg(long)]
    pub json: bool,
}
