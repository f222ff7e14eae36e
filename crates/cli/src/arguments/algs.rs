//! Options of algorithms and sheets.

use super::whole;
use clap::{Args, Subcommand, ValueEnum};
use std::path::PathBuf;

/// What can be done with algorithms.
#[derive(Debug, Subcommand)]
pub enum AlgsAction {
    /// Find all algorithms for a case, or for all cases of a buffer, proven shortest
    Find(FindOptions),
    /// Fit the costs of the model of hands to your own timings (CSV with the columns algorithm and seconds)
    Fit(FitOptions),
    /// Account for every row of a sheet; exit code 1 when one is not right
    Check {
        /// The sheet.
        #[command(flatten)]
        sheet: SheetOptions,
        /// JSON
        #[arg(long)]
        json: bool,
    },
    /// Read a sheet as you have it, list or grid, and write it as a list; what is wrong is told
    Import {
        /// The sheet.
        #[command(flatten)]
        sheet: SheetOptions,
        /// Write it also when most of its rows share a mistake, as corners read as edges
        #[arg(long)]
        anyway: bool,
        /// Where to write; otherwise to standard output
        #[arg(long, short, value_name = "FILE")]
        out: Option<PathBuf>,
    },
    /// Fill the gaps by inverse, mirror, rotation and search, each marked with its origin
    Fill {
        /// The sheet.
        #[command(flatten)]
        sheet: SheetOptions,
        /// Where to write; otherwise to standard output
        #[arg(long, short, value_name = "FILE")]
        out: Option<PathBuf>,
        /// Costs that `algs fit` wrote
        #[arg(long, value_name = "FILE")]
        ease: Option<PathBuf>,
    },
    /// Coverage, mean moves and estimated time, the hardest cases and those that could be much faster
    Stats {
        /// The sheet.
        #[command(flatten)]
        sheet: SheetOptions,
        /// Costs that `algs fit` wrote
        #[arg(long, value_name = "FILE")]
        ease: Option<PathBuf>,
        /// JSON
        #[arg(long)]
        json: bool,
    },
    /// Write a sheet as CSV, Markdown, or a grid to print
    Export {
        /// The sheet.
        #[command(flatten)]
        sheet: SheetOptions,
        /// The form
        #[arg(long, value_enum, value_name = "FORM")]
        to: SheetFormat,
        /// Where to write; otherwise to standard output
        #[arg(long, short, value_name = "FILE")]
        out: Option<PathBuf>,
    },
}

/// Which sheet, and how to understand it.
#[derive(Debug, Args)]
pub struct SheetOptions {
    /// The sheet (CSV, semicolons or tabs), or - for standard input
    #[arg(value_name = "SHEET")]
    pub file: PathBuf,
    /// The kind of piece, where the sheet does not tell: corner or edge, or one of wings or centres as wing or x-centre
    #[arg(long, short, value_name = "KIND")]
    pub kind: Option<String>,
    /// The buffer, where the sheet does not tell; otherwise that of your conventions
    #[arg(long, short, value_name = "STICKER")]
    pub buffer: Option<String>,
    /// Where the first target of a grid stands, where the algorithms do not tell
    #[arg(long, value_enum, value_name = "SIDE")]
    pub first: Option<Side>,
}

/// A side of a grid.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Side {
    /// At the left of a row
    Left,
    /// At the top of a column
    Top,
}

/// Forms of a sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum SheetFormat {
    /// A list
    Csv,
    /// A Markdown table
    Markdown,
    /// A grid as a picture
    Svg,
    /// A grid as a page to print
    Html,
}

/// In which order algorithms are found.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Order {
    /// The shortest first
    Length,
    /// The easiest for the hands first
    Ease,
}

/// Options of `algs find`.
#[expect(clippy::struct_excessive_bools, reason = "each is a switch of the command line, free of the others")]
#[derive(Debug, Args)]
pub struct FindOptions {
    /// The case: two targets, by letter or sticker, as UBR RDF
    #[arg(value_name = "TARGETS", conflicts_with = "all")]
    pub targets: Vec<String>,
    /// The puzzle: 2 or 3, for wings and centres also 4 to 7
    #[arg(long, short, default_value = "3", value_name = "SIZE")]
    pub puzzle: String,
    /// The kind of piece: corner or edge, or one of wings or centres as wing or x-centre
    #[arg(long, short, value_name = "KIND", default_value = "corner")]
    pub kind: String,
    /// The buffer; otherwise that of your conventions
    #[arg(long, short, value_name = "STICKER")]
    pub buffer: Option<String>,
    /// All three-cycles of the buffer
    #[arg(long)]
    pub all: bool,
    /// Twist two corners in their places, the first clockwise: UBL,DFR
    #[arg(long, value_name = "CORNERS", conflicts_with_all = ["targets", "all"])]
    pub twist: Option<String>,
    /// Flip two edges in their places: UF,UB
    #[arg(long, value_name = "EDGES", conflicts_with_all = ["targets", "all", "twist"])]
    pub flip: Option<String>,
    /// Exchange two corners and two edges: UFR,UBR,UF,UR
    #[arg(long, value_name = "PIECES", conflicts_with_all = ["targets", "all", "twist", "flip"])]
    pub exchange: Option<String>,
    /// The last corner target while another corner is twisted, and two edges exchanged: UBR,DFR,UF,UR
    #[arg(long, value_name = "PIECES", conflicts_with_all = ["targets", "all", "twist", "flip", "exchange"])]
    pub last: Option<String>,
    /// The turns to search with, as U,D,R,L,F,B or R,U,M or Rw,U; without it the faces, for wings and centres every single layer that
    /// moves them
    #[arg(long, short, value_name = "TURNS")]
    pub moves: Option<String>,
    /// How turns are counted: half, quarter, slice or execution; otherwise as the turns suggest
    #[arg(long, value_name = "METRIC")]
    pub metric: Option<String>,
    /// Only the shortest of each case
    #[arg(long, conflicts_with = "by")]
    pub shortest: bool,
    /// The greatest length to search; without it 12 with --shortest, which every three-cycle of corners keeps within,
    /// and 10 otherwise; of wings and centres 8, which is the most
    #[arg(long, short, value_name = "NUMBER", allow_negative_numbers = true, value_parser = whole::<usize>(1, u64::MAX))]
    pub longest: Option<usize>,
    /// In which order
    #[arg(long, value_enum, value_name = "ORDER", default_value = "length")]
    pub by: Order,
    /// How many to show of one case, or to look for by ease
    #[arg(long, value_name = "NUMBER", default_value = "20", allow_negative_numbers = true, value_parser = whole::<usize>(1, 100_000))]
    pub count: usize,
    /// Memory that the search may take, as 4G or 512M
    #[arg(long, value_name = "BYTES", default_value = "4G")]
    pub memory: String,
    /// Costs that `algs fit` wrote
    #[arg(long, value_name = "FILE")]
    pub ease: Option<PathBuf>,
    /// No progress on standard error
    #[arg(long, short)]
    pub quiet: bool,
    /// One JSON object a line, for each case
    #[arg(long)]
    pub json: bool,
}

/// Options of `algs fit`.
#[derive(Debug, Args)]
pub struct FitOptions {
    /// The timings (CSV with the columns algorithm and seconds), or - for standard input
    #[arg(value_name = "TIMINGS")]
    pub file: PathBuf,
    /// Where to write the fitted costs, for --ease
    #[arg(long, short, value_name = "FILE")]
    pub out: Option<PathBuf>,
    /// Costs to begin from, as `algs fit` wrote them
    #[arg(long, value_name = "FILE")]
    pub ease: Option<PathBuf>,
    /// The seed for dividing and redrawing the timings
    #[arg(long, value_name = "NUMBER", default_value = "1", allow_negative_numbers = true, value_parser = whole::<u64>(0, u64::MAX))]
    pub seed: u64,
    /// JSON
    #[arg(long)]
    pub json: bool,
}
