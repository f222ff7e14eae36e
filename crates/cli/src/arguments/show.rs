//! Options of pictures.

use super::{StateOptions, whole};
use clap::{Args, ValueEnum};
use std::path::PathBuf;

/// The kinds of picture.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum View {
    /// Three faces, as the puzzle is held
    Faces,
    /// The puzzle unfolded
    Net,
    /// The trace as a strip of pictures, one for each letter
    Strip,
    /// The memo as a thread with a bead for each letter
    Thread,
}

/// What becomes of the three faces that one does not see.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum HiddenFaces {
    /// Not drawn
    No,
    /// As in mirrors beside the puzzle
    Mirrors,
    /// Swung open
    Open,
}

/// Options of `show`.
#[derive(Debug, Args)]
pub struct ShowOptions {
    /// The puzzle and its state.
    #[command(flatten)]
    pub state: StateOptions,
    /// The picture
    #[arg(long, value_enum, value_name = "VIEW", default_value = "faces")]
    pub view: View,
    /// The three faces that one does not see
    #[arg(long, value_enum, value_name = "PLACE", default_value = "no")]
    pub hidden: HiddenFaces,
    /// Where to write; the ending .svg or .png decides the sort. Without it SVG goes to standard output
    #[arg(long, short, value_name = "FILE")]
    pub out: Option<PathBuf>,
    /// Width of a PNG in pixels
    #[arg(long, value_name = "PIXELS", default_value = "800", allow_negative_numbers = true, value_parser = whole::<u32>(16, 8000))]
    pub width: u32,
    /// Leave the letters away
    #[arg(long)]
    pub no_letters: bool,
    /// Turn the puzzle before it is drawn, as "x2 y"
    #[arg(long, value_name = "ROTATION")]
    pub held: Option<String>,
    /// Mark a sticker, as UFR
    #[arg(long, value_name = "STICKER")]
    pub mark: Vec<String>,
    /// Join stickers by numbered arrows, as UF,RB,DL
    #[arg(long, value_name = "STICKERS", value_delimiter = ',')]
    pub chain: Vec<String>,
    /// The picture as text in a JSON object
    #[arg(long, conflicts_with = "out")]
    pub json: bool,
}
