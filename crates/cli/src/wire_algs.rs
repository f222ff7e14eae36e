//! The JSON of `hoodwink algs` and `hoodwink compare`. Version 1 of each object.

use serde::Serialize;

/// A line of `algs find --json`.
#[derive(Debug, Serialize)]
pub struct Found {
    /// 1.
    pub version: u32,
    /// `corner`, `edge`, `wing`, `x-centre` and so on.
    pub kind: &'static str,
    /// `three-cycle`, `twist`, `flip`, `exchange` or `last-target`.
    pub effect: &'static str,
    /// The buffer's sticker; of other effects the first sticker.
    pub buffer: String,
    /// The first target.
    pub first: String,
    /// The second target, if the effect has one.
    pub second: Option<String>,
    /// Further stickers of the effect, as the edges of an exchange.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub further: Vec<String>,
    /// The least length in the metric, or of wings and centres the least that is known; null when there is none up to `searched`.
    pub shortest: Option<usize>,
    /// Whether all sequences shorter were searched.
    pub proven: bool,
    /// All sequences up to this length were searched.
    pub searched: usize,
    /// By ease: so many of the first algorithms are proven to be the easiest of all, however long.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub easiest_proven: Option<usize>,
    /// The algorithms as plain moves.
    pub algorithms: Vec<String>,
    /// The same as commutators or conjugates, where they are.
    pub written: Vec<String>,
    /// The estimated times of the same.
    pub seconds: Vec<f64>,
}

/// What `algs check --json` prints.
#[derive(Debug, Serialize)]
pub struct Check {
    /// 1.
    pub version: u32,
    /// `list` or `grid`.
    pub layout: &'static str,
    /// How many rows there are.
    pub rows: usize,
    /// How many are right.
    pub right: usize,
    /// How many have no algorithm.
    pub empty: usize,
    /// Every row in its order.
    pub verdicts: Vec<Row>,
}

/// What a row does.
#[derive(Debug, Serialize)]
pub struct Row {
    /// The line in the source, from 1.
    pub line: u64,
    /// The column in the source, from 1.
    pub column: u64,
    /// The case as it is written.
    pub named: String,
    /// The algorithm as it is written.
    pub algorithm: String,
    /// `right`, `empty`, `other-case`, `inverse`, `without-buffer`, `other-kind`, `leaves-turned`, `not-a-three-cycle`,
    /// `does-nothing`, `unreadable` or `no-case`.
    pub verdict: &'static str,
    /// In words.
    pub sentence: String,
}

/// What `algs stats --json` prints.
#[derive(Debug, Serialize)]
pub struct Statistics {
    /// 1.
    pub version: u32,
    /// `corner` or `edge`.
    pub kind: String,
    /// The buffer's sticker.
    pub buffer: String,
    /// How many cases there are.
    pub cases: usize,
    /// How many have a right algorithm.
    pub covered: usize,
    /// Mean number of moves, a slice counted as one.
    pub mean_moves: f64,
    /// Mean estimated seconds.
    pub mean_seconds: f64,
    /// Cases without a right algorithm, as two stickers.
    pub missing: Vec<[String; 2]>,
    /// The hardest cases.
    pub worst: Vec<Timed>,
    /// Cases much slower than the best known.
    pub slow: Vec<Slow>,
}

/// A case with its time.
#[derive(Debug, Serialize)]
pub struct Timed {
    /// The two targets.
    pub case: [String; 2],
    /// Estimated seconds.
    pub seconds: f64,
}

/// A case that could be faster.
#[derive(Debug, Serialize)]
pub struct Slow {
    /// The two targets.
    pub case: [String; 2],
    /// Estimated seconds of the sheet's easiest.
    pub seconds: f64,
    /// Estimated seconds of the best known.
    pub best_seconds: f64,
    /// The best known.
    pub best: String,
    /// `sheet`, `inverse`, `mirror`, `rotation` or `search`.
    pub origin: &'static str,
}

/// What `algs fit --json` prints.
#[derive(Debug, Serialize)]
pub struct Fit {
    /// 1.
    pub version: u32,
    /// How many timings were fitted.
    pub timings: usize,
    /// The costs.
    pub costs: Vec<Cost>,
    /// Root mean square error in seconds on the timings that were fitted.
    pub error: f64,
    /// On timings held out.
    pub held_out: f64,
    /// The same by the model before the fit.
    pub held_out_before: f64,
    /// The same by the mean of the others alone.
    pub held_out_mean: f64,
}

/// A fitted cost.
#[derive(Debug, Serialize)]
pub struct Cost {
    /// Its name.
    pub name: &'static str,
    /// Seconds.
    pub seconds: f64,
    /// The lower end of the interval.
    pub low: f64,
    /// The upper end of the interval.
    pub high: f64,
    /// In how many timings it occurs.
    pub timings: usize,
}

/// What `compare --json` prints.
#[derive(Debug, Serialize)]
pub struct Comparison {
    /// 1.
    pub version: u32,
    /// How many states.
    pub states: u64,
    /// The seed of the generator.
    pub seed: u64,
    /// The methods in the order in which they were named.
    pub methods: Vec<Compared>,
    /// Each method after the first, compared with the first.
    pub differences: Vec<Differences>,
}

/// One method.
#[derive(Debug, Serialize)]
pub struct Compared {
    /// As it was named.
    pub method: String,
    /// Letters.
    pub letters: Spread,
    /// Algorithms.
    pub algorithms: Spread,
    /// Moves, a slice counted as one.
    pub moves: Spread,
    /// Estimated seconds.
    pub seconds: Spread,
}

/// How values are spread.
#[derive(Debug, Serialize)]
pub struct Spread {
    /// The mean.
    pub mean: f64,
    /// The values at 5, 25, 50, 75 and 95 %.
    pub quantiles: [f64; 5],
    /// The least.
    pub least: f64,
    /// The greatest.
    pub greatest: f64,
}

/// A method less the first one, on the same states.
#[derive(Debug, Serialize)]
pub struct Differences {
    /// As it was named.
    pub method: String,
    /// Letters.
    pub letters: Interval,
    /// Algorithms.
    pub algorithms: Interval,
    /// Moves.
    pub moves: Interval,
    /// Estimated seconds.
    pub seconds: Interval,
}

/// A mean with its 95 % confidence interval.
#[derive(Debug, Serialize)]
pub struct Interval {
    /// The mean.
    pub mean: f64,
    /// The lower end.
    pub low: f64,
    /// The upper end.
    pub high: f64,
}
