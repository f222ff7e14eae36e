//! What can be typed.

use clap::{Args, Parser, Subcommand, ValueEnum};
use clap_complete::Shell;
use std::path::PathBuf;

/// From a scramble to a memo to a verified blindfolded solution, with the reason for every letter.
#[derive(Debug, Parser)]
#[command(name = "hoodwink", version, about, max_term_width = 100)]
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
    /// The file with your letters, buffers, colours and so on (TOML); without it the usual ones hold
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
    /// Serve the web app to this machine alone, until ended with Ctrl-C
    Serve(ServeOptions),
    /// Print completions for a shell
    Completions {
        /// The shell
        shell: Shell,
    },
    /// Print the manual page, in the format of man(1): of the whole program, or of one command
    Man {
        /// The command
        command: Option<String>,
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
}

/// Options of `trace`.
#[derive(Debug, Args)]
pub struct TraceOptions {
    /// The puzzle and its state.
    #[command(flatten)]
    pub state: StateOptions,
    /// How to pick the puzzle up
    #[arg(long, value_enum, default_value = "conventions")]
    pub hold: Hold,
    /// Only the memo, without reasons and solution; of a batch letters, parity and holding, which is much faster
    #[arg(long, conflicts_with = "json")]
    pub short: bool,
    /// One JSON object
    #[arg(long)]
    pub json: bool,
    /// Read a scramble a line from a file, or from standard input with -, and write a JSON object a line
    #[arg(long, value_name = "FILE", conflicts_with_all = ["scramble", "facelets"])]
    pub batch: Option<PathBuf>,
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
}

/// Yes or no.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum YesNo {
    /// Yes
    Yes,
    /// No
    No,
}

/// Options of `check`.
#[derive(Debug, Args)]
pub struct CheckOptions {
    /// The puzzle and its state.
    #[command(flatten)]
    pub state: StateOptions,
    /// The memo.
    #[command(flatten)]
    pub memo: MemoOptions,
    /// Whether you noted that the parity algorithm is to be made
    #[arg(long, value_enum)]
    pub parity: Option<YesNo>,
    /// The moves of an attempt as they were really made, from picking the puzzle up on; they are compared with what
    /// the memo, or without one our own, asks for
    #[arg(long, value_name = "MOVES", conflicts_with = "parity")]
    pub moves: Option<String>,
    /// End with exit code 1 if it is wrong; otherwise a slip that was found is work done, and the code is 0
    #[arg(long)]
    pub strict: bool,
    /// One JSON object
    #[arg(long)]
    pub json: bool,
}

/// Options of `why`.
#[derive(Debug, Args)]
pub struct WhyOptions {
    /// The puzzle and its state before the attempt.
    #[command(flatten)]
    pub state: StateOptions,
    /// The memo that was carried out; without one ours.
    #[command(flatten)]
    pub memo: MemoOptions,
    /// The stickers as one sees them now, however the puzzle is held: faces U L F R B D, row by row
    #[arg(long, value_name = "STICKERS", required_unless_present = "unsolved", conflicts_with = "unsolved")]
    pub seen: Option<String>,
    /// Only what is unsolved: "UF flipped; UFR>DBL>UBR" (at UFR lies what belongs at DBL, …; a ? behind it if you
    /// did not look how they are turned), "UF, UFR" (unsolved in whatever way), or only "3 corners, 2 edges"
    #[arg(long, value_name = "PIECES")]
    pub unsolved: Option<String>,
    /// An answer to a question of an earlier run, as corner.5=yes; may be given several times
    #[arg(long, value_name = "NAME=yes|no")]
    pub answer: Vec<String>,
    /// Look for three slips too
    #[arg(long)]
    pub deep: bool,
    /// Stop looking for three slips after so many seconds, and tell what was found so far
    #[arg(long, value_name = "SECONDS", default_value = "10", requires = "deep")]
    pub seconds: u64,
    /// How many explanations to tell at most
    #[arg(long, value_name = "NUMBER", default_value = "5", value_parser = clap::value_parser!(u16).range(1..=100))]
    pub most: u16,
    /// One JSON object
    #[arg(long)]
    pub json: bool,
}

/// Options of `setups`.
#[derive(Debug, Args)]
pub struct SetupOptions {
    /// The puzzle: 2 or 3
    #[arg(long, short, default_value = "3", value_name = "SIZE")]
    pub puzzle: String,
    /// The kind of piece: corner or edge
    #[arg(long, short, value_name = "KIND")]
    pub kind: String,
    /// Only this target, by letter or sticker
    #[arg(long, short, value_name = "TARGET")]
    pub target: Option<String>,
    /// Use only these turns, as R,F,D or R,Lw,M; by default faces, wide turns and slices
    #[arg(long, value_name = "TURNS", value_delimiter = ',')]
    pub turns: Vec<String>,
    /// JSON
    #[arg(long)]
    pub json: bool,
}

/// Options of `apply`.
#[derive(Debug, Args)]
pub struct ApplyOptions {
    /// The puzzle and its state.
    #[command(flatten)]
    pub state: StateOptions,
    /// JSON
    #[arg(long)]
    pub json: bool,
}

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
    #[arg(long, value_enum, default_value = "faces")]
    pub view: View,
    /// The three faces that one does not see
    #[arg(long, value_enum, default_value = "no")]
    pub hidden: HiddenFaces,
    /// Where to write; the ending .svg or .png decides the sort. Without it SVG goes to standard output
    #[arg(long, short, value_name = "FILE")]
    pub out: Option<PathBuf>,
    /// Width of a PNG in pixels
    #[arg(long, default_value = "800", value_parser = clap::value_parser!(u32).range(16..=8000))]
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

/// Options of `serve`.
#[derive(Debug, Args)]
pub struct ServeOptions {
    /// The port; 0 takes any that is free, and the line that is printed says which
    #[arg(long, default_value = "4170", value_name = "PORT")]
    pub port: String,
}

/// Options of `conventions`.
#[derive(Debug, Args)]
pub struct ConventionsOptions {
    /// What to do with them.
    #[command(subcommand)]
    pub action: ConventionsAction,
}

/// What can be done with conventions.
#[derive(Debug, Subcommand)]
pub enum ConventionsAction {
    /// Print the net with your letters, and all that is settled
    Show {
        /// The puzzle whose net and kinds of pieces are shown: 2 for the 2x2 up to 7 for the 7x7
        #[arg(long, short, default_value = "3", value_name = "SIZE")]
        puzzle: String,
        /// As a conventions file with every key written out
        #[arg(long, conflicts_with = "json")]
        toml: bool,
        /// JSON
        #[arg(long)]
        json: bool,
    },
    /// Check a conventions file
    Check {
        /// The file
        file: PathBuf,
        /// JSON
        #[arg(long)]
        json: bool,
    },
}

/// Options of `scramble`.
#[derive(Debug, Args)]
pub struct ScrambleOptions {
    /// The puzzle: 2 for the 2x2 up to 7 for the 7x7
    #[arg(long, short, default_value = "3", value_name = "SIZE")]
    pub puzzle: String,
    /// How many
    #[arg(long, short = 'n', default_value = "1", value_name = "NUMBER")]
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
    /// Leave the puzzle in a random way of lying, as blindfolded events do
    #[arg(long)]
    pub blind: bool,
    /// The same number gives the same scrambles
    #[arg(long, value_name = "NUMBER")]
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
    #[arg(long, conflicts_with_all = ["condition", "lesson", "how_rare", "sheet"])]
    pub lessons: bool,
    /// Count how many states meet the condition, and make no scramble
    #[arg(long, conflicts_with = "sheet")]
    pub how_rare: bool,
}

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
        #[arg(long, value_enum)]
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
    /// The kind of piece, where the sheet does not tell: corner or edge
    #[arg(long, short, value_name = "KIND")]
    pub kind: Option<String>,
    /// The buffer, where the sheet does not tell; otherwise that of your conventions
    #[arg(long, short, value_name = "STICKER")]
    pub buffer: Option<String>,
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
    /// The puzzle: 2 or 3
    #[arg(long, short, default_value = "3", value_name = "SIZE")]
    pub puzzle: String,
    /// The kind of piece: corner or edge
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
    /// The turns to search with, as U,D,R,L,F,B or R,U,M or Rw,U
    #[arg(long, short, value_name = "TURNS", default_value = "U,D,R,L,F,B")]
    pub moves: String,
    /// How turns are counted: half, quarter, slice or execution; otherwise as the turns suggest
    #[arg(long, value_name = "METRIC")]
    pub metric: Option<String>,
    /// Only the shortest of each case
    #[arg(long, conflicts_with = "by")]
    pub shortest: bool,
    /// The greatest length to search; without it 12 with --shortest, which every three-cycle of corners keeps within,
    /// and 10 otherwise
    #[arg(long, short, value_name = "TURNS")]
    pub longest: Option<usize>,
    /// In which order
    #[arg(long, value_enum, default_value = "length")]
    pub by: Order,
    /// How many to show of one case, or to look for by ease
    #[arg(long, value_name = "COUNT", default_value = "20")]
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
    #[arg(long, default_value = "1")]
    pub seed: u64,
    /// JSON
    #[arg(long)]
    pub json: bool,
}

/// Options of `compare`.
#[derive(Debug, Args)]
pub struct CompareOptions {
    /// Methods: one-swap, slice-swap, three-cycle, two joined by + for corners and edges, options after commas (as
    /// three-cycle+slice-swap,least,exchange), or conventions files
    #[arg(value_name = "METHOD")]
    pub methods: Vec<String>,
    /// How many states
    #[arg(long, short = 'n', default_value = "10000", value_parser = clap::value_parser!(u64).range(2..=100_000_000))]
    pub count: u64,
    /// The seed of the random states
    #[arg(long, default_value = "1")]
    pub seed: u64,
    /// Costs that `algs fit` wrote
    #[arg(long, value_name = "FILE")]
    pub ease: Option<PathBuf>,
    /// Draw the estimated times: quantiles into this file, a histogram for each method beside it
    #[arg(long, value_name = "FILE")]
    pub svg: Option<PathBuf>,
    /// JSON
    #[arg(long)]
    pub json: bool,
}
