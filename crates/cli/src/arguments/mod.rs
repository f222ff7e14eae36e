//! What can be typed; the options of each command in a file of its name.

mod algs;
mod apply;
mod check;
mod compare;
mod conventions;
mod many;
mod number;
mod round;
mod scramble;
mod serve;
mod setups;
mod shortest;
mod show;
mod trace;
mod why;

pub use algs::{AlgsAction, FindOptions, FitOptions, Order, SheetFormat, SheetOptions, Side};
pub use apply::ApplyOptions;
pub use check::CheckOptions;
pub use compare::CompareOptions;
pub use conventions::{ConventionsAction, ConventionsOptions};
pub use many::ManyOptions;
pub use number::{NoNumber, whole};
pub use round::RoundOptions;
pub use scramble::ScrambleOptions;
pub use serve::ServeOptions;
pub use setups::SetupOptions;
pub use shortest::ShortestOptions;
pub use show::{HiddenFaces, ShowOptions, View};
pub use trace::TraceOptions;
pub use why::WhyOptions;

use clap::{Args, Parser, Subcommand, ValueEnum};
use clap_complete::Shell;
use std::path::PathBuf;

/// From a scramble to a memo to a verified blindfolded solution, with the reason for every letter
#[derive(Debug, Parser)]
#[command(name = "hoodwink", version, max_term_width = 100)]
pub struct Arguments {
    /// What holds for every command.
    #[command(flatten)]
    pub shared: Shared,
    /// What to do.
    #[command(subcommand)]
    pub command: Command,
}

/// Options of every command.
#[derive(Debug, Args)]
pub struct Shared {
    /// The file with your letters, buffers, colours and so on (TOML), or - for standard input; without it the usual ones hold
    #[arg(long, global = true, value_name = "FILE", env = "HOODWINK_CONVENTIONS")]
    pub conventions: Option<PathBuf>,
    /// The language of all sentences: en or de
    #[arg(long, global = true, value_name = "TAG", default_value = "en", env = "HOODWINK_LANGUAGE")]
    pub language: String,
}

/// The commands.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Trace a scramble: the memo with the reason for every letter, and a solution that was applied and found right
    Trace(TraceOptions),
    /// Make scrambles: uniformly random ones, or ones that meet a condition; count how rare a condition is
    Scramble(ScrambleOptions),
    /// Find a solution in the fewest turns, 2x2 and 3x3, and say whether that is proven
    Shortest(ShortestOptions),
    /// Check a memo, or the moves of an attempt as they were made: right, or where it goes wrong and why
    Check(CheckOptions),
    /// Explain an attempt that did not come out: the slips that lead to what you see, the likeliest first
    Why(WhyOptions),
    /// List the shortest set-up moves of every target, found by search
    Setups(SetupOptions),
    /// Apply moves to a solved puzzle: its picture, its stickers, what is unsolved
    Apply(ApplyOptions),
    /// Draw a puzzle as a picture file (SVG or PNG)
    Show(ShowOptions),
    /// Show your conventions, or check a conventions file
    Conventions(ConventionsOptions),
    /// Find algorithms; check, fill and export sheets of them; fit the model of hands to your timings
    Algs {
        /// What to do
        #[command(subcommand)]
        action: AlgsAction,
    },
    /// Compare methods over uniformly random states: letters, algorithms, moves, estimated time
    Compare(CompareOptions),
    /// Score a round by the rules: best, mean or average, limits, places
    Round(RoundOptions),
    /// Say how many puzzles to try at once: the points that each number may bring
    Many(ManyOptions),
    /// Serve the web app to this machine alone, until ended with Ctrl-C
    Serve(ServeOptions),
    /// Print completions for a shell
    Completions {
        /// The shell
        #[arg(value_name = "SHELL")]
        shell: Shell,
    },
    /// Print the manual page, in the format of man(1): of the whole program, or of one command
    Man {
        /// The command, as trace or algs find
        #[arg(value_name = "COMMAND")]
        command: Vec<String>,
    },
}

/// Which puzzle, and in which state.
#[derive(Debug, Args)]
pub struct StateOptions {
    /// The puzzle: 2 for the 2x2 up to 7 for the 7x7
    #[arg(long, short, default_value = "3", value_name = "SIZE")]
    pub puzzle: String,
    /// The stickers as one sees them instead of a scramble: faces U L F R B D, row by row, by the names of your
    /// colours or, where these differ, by their initials, in any spacing; or the net as it is printed
    #[arg(long, value_name = "STICKERS", conflicts_with = "scramble")]
    pub facelets: Option<String>,
    /// The scramble, made with the puzzle held as the colours in your conventions say
    #[arg(value_name = "SCRAMBLE")]
    pub scramble: Vec<String>,
}

/// How the puzzle is picked up.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Hold {
    /// As your conventions say
    Conventions,
    /// On a puzzle without fixed centres, as the 2x2: the one of all 24 that leaves the shortest memo
    Best,
    /// On a puzzle without fixed centres, as the 4x4: the one of all 24 in which most centres are right already
    MostCentres,
}

/// A memo as it was written.
#[derive(Debug, Args)]
pub struct MemoOptions {
    /// The letters of the corners, grouped and separated as you like
    #[arg(long, value_name = "LETTERS")]
    pub corners: Option<String>,
    /// The letters of the edges
    #[arg(long, value_name = "LETTERS")]
    pub edges: Option<String>,
    /// The letters of another kind of piece, as wing=KDVA or x-centre=QC; once for each kind
    #[arg(long = "letters", value_name = "KIND=LETTERS")]
    pub others: Vec<String>,
}

/// Yes or no.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum YesNo {
    /// Yes
    Yes,
    /// No
    No,
}
