//! The JSON that goes out, apart from the engine's own types so that each can change without the other.
//!
//! Version 1 of each object but for those that say otherwise. Moves are texts in the notation of the competition standard with M, E, S; stickers are
//! names; letters are those of the conventions.

use serde::Serialize;

/// The version of all objects here but for traces.
pub const VERSION: u32 = 1;

/// The version of [`Trace`] and [`Brief`]: since 2 parity names its kinds, a piece turned in its place has roles of its own, and
/// the solution may be missing.
pub const TRACE_VERSION: u32 = 2;

/// All ways to pick up a puzzle without fixed centres, best first.
#[derive(Debug, Serialize)]
pub struct AllHolds {
    /// The version of the output.
    pub version: u32,
    /// The size of the puzzle.
    pub puzzle: u8,
    /// The ways.
    pub holdings: Vec<Offer>,
}

/// A way to pick the puzzle up.
#[derive(Debug, Serialize)]
pub struct Offer {
    /// From the hold in which it was scrambled.
    pub rotation: String,
    /// The scrambling hold's colour that comes up.
    pub up: String,
    /// The one that comes to the front.
    pub front: String,
    /// Centres that are right already.
    pub centres: usize,
    /// Pieces that are right already, the buffers' not counted.
    pub solved: usize,
    /// Letters of the whole memo.
    pub letters: usize,
    /// Letters of each kind, in the order of the memo.
    pub kinds: Vec<OfferedKind>,
}

/// Letters of a kind.
#[derive(Debug, Serialize)]
pub struct OfferedKind {
    /// The kind.
    pub kind: String,
    /// How many.
    pub letters: usize,
}

/// What `trace --json` prints.
#[derive(Debug, Serialize)]
pub struct Trace {
    /// 2.
    pub version: u32,
    /// 2 to 7.
    pub puzzle: u8,
    /// As it was given; absent if stickers were given.
    pub scramble: Option<String>,
    /// How the puzzle is picked up.
    pub holding: Holding,
    /// A memo for each kind, in the order in which they are memorised.
    pub parts: Vec<Part>,
    /// Kinds with an odd number of letters whose pieces are told apart.
    pub parity: Vec<&'static str>,
    /// The two edges that were taken for each other in the trace because of parity.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub exchanged: Option<[String; 2]>,
    /// What carries the memo out; it was applied and solves. Null where there is no method for the size yet.
    pub solution: Option<Solution>,
    /// Why there is no solution, in words.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub no_solution: Option<String>,
}

/// What `trace --batch --short` prints, one a line.
#[derive(Debug, Serialize)]
pub struct Brief<'a> {
    /// 2.
    pub version: u32,
    /// Which line, from 1.
    pub line: usize,
    /// Rotations after the scramble, empty if none.
    pub rotation: &'a str,
    /// The memo of each kind, in the order in which they are memorised.
    pub memo: &'a [BriefMemo<'a>],
    /// Kinds with an odd number of letters whose pieces are told apart.
    pub parity: &'a [&'static str],
    /// The two edges that were taken for each other in the trace because of parity.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub exchanged: Option<[&'static str; 2]>,
}

/// The letters of a kind.
#[derive(Debug, Serialize)]
pub struct BriefMemo<'a> {
    /// `corner`, `edge`, `wing`, `x-centre`, …
    pub kind: &'static str,
    /// The letters in one string; letters of more than one sign with a hyphen between.
    pub letters: &'a str,
    /// Whether their number is odd.
    pub odd: bool,
}

/// How the puzzle is picked up.
#[derive(Debug, Serialize)]
pub struct Holding {
    /// Rotations after the scramble, empty if none.
    pub rotation: String,
    /// The colour that is up when the puzzle is solved.
    pub up: String,
    /// The colour that is in front when the puzzle is solved.
    pub front: String,
    /// Pieces that are already solved in this hold.
    pub solved: Vec<String>,
    /// In words.
    pub sentence: String,
}

/// The memo of one kind.
#[derive(Debug, Serialize)]
pub struct Part {
    /// `corner`, `edge`, `wing`, `x-centre`, …
    pub kind: String,
    /// The buffer's sticker.
    pub buffer: String,
    /// `solved`, `turned` or `away`.
    pub buffer_is: &'static str,
    /// Stickers in order.
    pub targets: Vec<String>,
    /// The letters in one string; letters of more than one sign with a hyphen between.
    pub letters: String,
    /// Whether their number is odd.
    pub odd: bool,
    /// The cycles in order.
    pub cycles: Vec<Cycle>,
    /// Pieces in their place but turned, the buffer's not counted.
    pub turned: Vec<String>,
    /// Pieces solved, the buffer's not counted.
    pub solved: Vec<String>,
    /// A reason for each letter.
    pub steps: Vec<Step>,
    /// What is found after the last letter.
    pub finish: String,
}

/// A cycle.
#[derive(Debug, Serialize)]
pub struct Cycle {
    /// Its letters.
    pub letters: String,
    /// How many pieces it moves.
    pub pieces: usize,
    /// Whether it holds the buffer.
    pub holds_buffer: bool,
    /// Whether it closes at another sticker of the piece than it began at.
    pub turned: bool,
}

/// A letter and its reason.
#[derive(Debug, Serialize)]
pub struct Step {
    /// The letter.
    pub letter: String,
    /// Its sticker.
    pub target: String,
    /// The place that was looked at.
    pub place: String,
    /// `follow`, `break`, `close`, or for a piece turned in its place `turned-first` and `turned-second`.
    pub role: &'static str,
    /// Why, in words.
    pub reason: String,
}

/// The solution.
#[derive(Debug, Serialize)]
pub struct Solution {
    /// All moves, merged and cancelled.
    pub moves: String,
    /// How long `moves` is.
    pub length: Length,
    /// The estimated time, where the method knows times.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub seconds: Option<f64>,
    /// Step by step in the order of the execution.
    pub steps: Vec<Action>,
}

/// How long a sequence is.
#[derive(Debug, Serialize)]
pub struct Length {
    /// Half-turn metric.
    pub half: usize,
    /// Quarter-turn metric.
    pub quarter: usize,
    /// Slice-turn metric.
    pub slice: usize,
}

/// One step of the execution.
#[derive(Debug, Serialize)]
#[serde(tag = "step", rename_all = "lowercase")]
pub enum Action {
    /// A letter carried out.
    Letter {
        /// `corner` or `edge`.
        kind: String,
        /// The letter.
        letter: String,
        /// Its sticker.
        target: String,
        /// Set-up moves.
        setup: String,
        /// The algorithm.
        swap: String,
        /// The set-up undone.
        undo: String,
    },
    /// Two letters by one algorithm.
    Pair {
        /// `corner` or `edge`.
        kind: String,
        /// The two letters.
        letters: String,
        /// Their stickers.
        targets: Vec<String>,
        /// The algorithm's moves.
        moves: String,
        /// Whether it was found by search, since the sheet has none.
        found: bool,
    },
    /// Four letters that turn two pieces in their places, by one algorithm.
    Turned {
        /// `corner` or `edge`.
        kind: String,
        /// The four letters.
        letters: String,
        /// Their stickers.
        targets: Vec<String>,
        /// The algorithm's moves.
        moves: String,
        /// Whether it was found by search.
        found: bool,
    },
    /// The parity algorithm.
    Parity {
        /// Its moves.
        moves: String,
    },
}

/// What stands in the place of a result where a line of a batch could not be read.
#[derive(Debug, Serialize)]
pub struct LineError {
    /// 1.
    pub version: u32,
    /// What is wrong.
    pub error: String,
    /// Which line, from 1.
    pub line: usize,
}

/// What `apply --json` prints.
#[derive(Debug, Serialize)]
pub struct Applied {
    /// 1.
    pub version: u32,
    /// 2 to 7.
    pub puzzle: u8,
    /// As it was given; absent if stickers were given.
    pub scramble: Option<String>,
    /// Stickers face by face, U L F R B D, as `--facelets` reads them.
    pub facelets: String,
    /// Whether every face shows one colour.
    pub solved: bool,
    /// What is unsolved, by kind.
    pub unsolved: Vec<UnsolvedKind>,
}

/// Unsolved pieces of a kind.
#[derive(Debug, Serialize)]
pub struct UnsolvedKind {
    /// The kind.
    pub kind: String,
    /// Places whose piece belongs elsewhere.
    pub away: Vec<String>,
    /// Pieces in their place but turned.
    pub turned: Vec<String>,
}

/// What `shortest --json` prints.
#[derive(Debug, Serialize)]
pub struct Shortest {
    /// 1.
    pub version: u32,
    /// 2 or 3.
    pub puzzle: u8,
    /// As it was given; absent if stickers were given.
    pub scramble: Option<String>,
    /// The shortest solution that was found, face turns.
    pub solution: String,
    /// How many turns it takes; half turns count one.
    pub turns: usize,
    /// No solution takes fewer.
    pub least: u8,
    /// Whether the solution is proven to be a shortest one.
    pub proven: bool,
    /// How many positions were looked at; absent where a table answers.
    pub positions: Option<u64>,
}

/// What `setups --json` prints.
#[derive(Debug, Serialize)]
pub struct Setups {
    /// 1.
    pub version: u32,
    /// 2 or 3.
    pub puzzle: u8,
    /// `corner` or `edge`.
    pub kind: String,
    /// The buffer's sticker.
    pub buffer: String,
    /// The sticker that it is exchanged with.
    pub exchanged_with: String,
    /// The algorithm.
    pub algorithm: String,
    /// What no set-up may disturb.
    pub left_alone: Vec<String>,
    /// The set-ups of each target.
    pub targets: Vec<SetupsOf>,
}

/// The set-ups of a target.
#[derive(Debug, Serialize)]
pub struct SetupsOf {
    /// The letter.
    pub letter: String,
    /// The sticker.
    pub sticker: String,
    /// All shortest ones, the easiest first.
    pub setups: Vec<String>,
}

/// What `show --json` prints.
#[derive(Debug, Serialize)]
pub struct Picture {
    /// 1.
    pub version: u32,
    /// 2 to 7.
    pub puzzle: u8,
    /// The picture.
    pub svg: String,
}

/// What `conventions show --json` and `conventions check --json` print.
#[derive(Debug, Serialize)]
pub struct Conventions {
    /// 1.
    pub version: u32,
    /// Whether the file is in order.
    pub right: bool,
    /// What is wrong with it.
    pub error: Option<String>,
    /// The whole conventions as a file.
    pub toml: Option<String>,
}

/// What `scramble --json` prints, one a line.
#[derive(Debug, Serialize)]
pub struct ScrambleLine {
    /// 1.
    pub version: u32,
    /// 2 to 7.
    pub puzzle: u8,
    /// Which one, from 1.
    pub number: u64,
    /// The turns to make on the solved puzzle; empty if it is to stay solved.
    pub scramble: String,
    /// Whether the state was drawn, each as likely as any other, and not the turns.
    pub random_state: bool,
    /// Stickers of the scrambled puzzle face by face, U L F R B D, as `--facelets` reads them.
    pub facelets: String,
    /// The memo of each kind in the hold of the conventions.
    pub memo: Vec<ScrambleMemo>,
}

/// The letters of a kind.
#[derive(Debug, Serialize)]
pub struct ScrambleMemo {
    /// `corner`, `edge`, `wing`, `x-centre`, …
    pub kind: String,
    /// The letters in one string.
    pub letters: String,
}

/// What `scramble --how-rare --json` prints. Numbers of states are decimal strings, for they pass 2⁵³.
#[derive(Debug, Serialize)]
pub struct HowRare {
    /// 1.
    pub version: u32,
    /// 2 or 3.
    pub puzzle: u8,
    /// The condition, with stickers in place of letters.
    pub condition: String,
    /// How many states meet it; absent if that cannot be counted.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub matching: Option<String>,
    /// How many states there are.
    pub total: String,
    /// One in so many; absent if it cannot be counted.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub one_in: Option<f64>,
    /// The share found by trying, if it cannot be counted.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub estimate: Option<Estimate>,
}

/// A share found by trying.
#[derive(Debug, Serialize)]
pub struct Estimate {
    /// How many states were tried.
    pub tried: u64,
    /// How many met the condition, of those tried.
    pub met: u64,
    /// The share of all states.
    pub share: f64,
    /// Bounds that hold the true share in 95 of 100 such trials.
    pub bounds: [f64; 2],
}

/// What `scramble --lessons --json` prints, one a line.
#[derive(Debug, Serialize)]
pub struct Lesson {
    /// 1.
    pub version: u32,
    /// The name to ask for it by.
    pub name: String,
    /// What it is called.
    pub title: String,
    /// Its condition.
    pub condition: String,
}
