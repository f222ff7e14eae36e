//! Fitting the costs to someone's own timings.

use super::model::{Feature, Model};
use crate::least_squares::non_negative;
use crate::random::{below, shuffle};
use cube::Turn;
use rand::Rng;
use thiserror::Error;

/// An algorithm and how long someone took for it.
#[derive(Clone, PartialEq, Debug)]
pub struct Timing {
    /// The turns.
    pub turns: Vec<Turn>,
    /// Seconds.
    pub seconds: f64,
}

/// How to judge a fit.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Plan {
    /// In how many parts the timings are divided; each is predicted from the others. At least 2.
    pub parts: usize,
    /// How many times the timings are drawn anew, with replacement, for the error bars.
    pub draws: usize,
}

impl Default for Plan {
    /// Ten parts, 400 draws.
    fn default() -> Self {
        Self { parts: 10, draws: 400 }
    }
}

/// Why costs were not fitted.
#[derive(Clone, PartialEq, Debug, Error)]
pub enum FitError {
    /// Not enough to fit and judge.
    #[error("{given} timings are too few for {costs} costs in {parts} parts; {needed} are needed at least")]
    TooFew {
        /// Timings given.
        given: usize,
        /// Costs that occur in them.
        costs: usize,
        /// Parts asked for.
        parts: usize,
        /// Timings needed.
        needed: usize,
    },
    /// A time that is none.
    #[error("timing {place}: {seconds} is no time; seconds above zero are needed")]
    BadTime {
        /// Which timing, from 1.
        place: usize,
        /// What was given.
        seconds: f64,
    },
    /// An algorithm without turns.
    #[error("timing {0} has no turns")]
    NoTurns(usize),
    /// Fewer than two parts.
    #[error("held-out errors need at least 2 parts, not {0}")]
    TooFewParts(usize),
}

/// A fitted cost.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Cost {
    /// What costs it.
    pub feature: Feature,
    /// Seconds.
    pub seconds: f64,
    /// The middle 95 % of what the drawn timings gave: lower and upper end.
    pub interval: [f64; 2],
    /// In how many timings it occurs. One that never occurs keeps the seconds it had, with no width.
    pub timings: usize,
}

/// Fitted costs and how far to trust them.
#[derive(Clone, PartialEq, Debug)]
pub struct Fit {
    /// The same hands with the fitted costs.
    pub model: Model,
    /// All costs, in the order of [`Feature::ALL`].
    pub costs: Vec<Cost>,
    /// Root mean square of the error in seconds, on the timings that were fitted.
    pub error: f64,
    /// The same for timings that were held out of the fit.
    pub held_out: f64,
    /// The same when the model before the fit predicts, its times all multiplied by the one factor that fits the others best.
    pub held_out_before: f64,
    /// The same when the mean of the other timings is all that is known.
    pub held_out_mean: f64,
}

/// Fits costs, none negative, to timings by least squares.
///
/// What the hands do depends on the costs and the costs on what they do, so both are found in turn, from the given
/// model on, until nothing changes (or for ten rounds; the best of them counts). The generator draws the parts and the
/// timings for the error bars: the same generator and timings give the same fit.
///
/// # Errors
/// [`FitError`] for times that are none, algorithms without turns, or too few timings.
///
/// ```
/// use cube::{Algorithm, Size};
/// use search::ease::{FitError, Model, Plan, Timing, fit};
/// let turns = Algorithm::parse("R U R' U'", Size::THREE).unwrap().flatten();
/// let few = [Timing { turns, seconds: 0.8 }];
/// let mut generator = search::random::seeded(1);
/// assert!(matches!(
///     fit(&Model::built_in(), &few, Plan::default(), &mut generator),
///     Err(FitError::TooFew { .. })
/// ));
/// ```
pub fn fit(model: &Model, timings: &[Timing], plan: Plan, generator: &mut impl Rng) -> Result<Fit, FitError> {
    check(model, timings, plan)?;
    let all: Vec<usize> = (0..timings.len()).collect();
    let fitted = fit_to(model, timings, &all);
    let error =
        root_mean_square(&all, |at| fitted.estimate(&timings[at].turns).seconds - timings[at].seconds);

    // What the hands do is taken from the whole fit: the bars are about the costs, given that.
    let rows: Vec<Vec<f64>> = timings.iter().map(|timing| row(&fitted, &timing.turns)).collect();
    let occurs = |feature: Feature| rows.iter().filter(|row| row[feature.index()] > 0.0).count();
    let mut drawn: Vec<Vec<f64>> = vec![Vec::new(); Feature::COUNT];
    for _ in 0..plan.draws {
        let draw: Vec<usize> = all.iter().map(|_| below(all.len() as u64, generator) as usize).collect();
        let costs = solve(&fitted, &rows, timings, &draw);
        for (values, cost) in drawn.iter_mut().zip(costs) {
            values.push(cost);
        }
    }
    let costs = Feature::ALL
        .into_iter()
        .zip(&mut drawn)
        .map(|(feature, values)| {
            let seconds = fitted.seconds()[feature.index()];
            Cost { feature, seconds, interval: middle(values, seconds), timings: occurs(feature) }
        })
        .collect();

    let mut order = all.clone();
    shuffle(&mut order, generator);
    let mut errors = [Vec::new(), Vec::new(), Vec::new()];
    for part in 0..plan.parts {
        let (out, rest): (Vec<_>, Vec<_>) =
            order.iter().enumerate().partition(|(place, _)| place % plan.parts == part);
        let rest: Vec<usize> = rest.into_iter().map(|(_, &at)| at).collect();
        let fitted = fit_to(model, timings, &rest);
        let mean = rest.iter().map(|&at| timings[at].seconds).sum::<f64>() / rest.len() as f64;
        let before = |at: usize| model.estimate(&timings[at].turns).seconds;
        let squares: f64 = rest.iter().map(|&at| before(at) * before(at)).sum();
        let factor = rest.iter().map(|&at| before(at) * timings[at].seconds).sum::<f64>() / squares;
        for (_, &at) in out {
            let Timing { turns, seconds } = &timings[at];
            errors[0].push(fitted.estimate(turns).seconds - seconds);
            errors[1].push(factor * before(at) - seconds);
            errors[2].push(mean - seconds);
        }
    }
    let [held_out, held_out_before, held_out_mean] =
        errors.map(|errors| root_mean_square(&errors, |error| error));
    Ok(Fit { model: fitted, costs, error, held_out, held_out_before, held_out_mean })
}

fn check(model: &Model, timings: &[Timing], plan: Plan) -> Result<(), FitError> {
    if plan.parts < 2 {
        return Err(FitError::TooFewParts(plan.parts));
    }
    let mut occurs = [false; Feature::COUNT];
    for (at, Timing { turns, seconds }) in timings.iter().enumerate() {
        if !seconds.is_finite() || *seconds <= 0.0 {
            return Err(FitError::BadTime { place: at + 1, seconds: *seconds });
        }
        if turns.is_empty() {
            return Err(FitError::NoTurns(at + 1));
        }
        for (occurs, times) in occurs.iter_mut().zip(model.estimate(turns).features) {
            *occurs |= times > 0;
        }
    }
    // Each part leaves enough others for the costs that occur.
    let costs = occurs.iter().filter(|&&occurs| occurs).count();
    let needed = (costs + 1).max(plan.parts) * plan.parts / (plan.parts - 1) + 1;
    if timings.len() < needed {
        return Err(FitError::TooFew { given: timings.len(), costs, parts: plan.parts, needed });
    }
    Ok(())
}

fn root_mean_square<T: Copy>(of: &[T], error: impl Fn(T) -> f64) -> f64 {
    let sum: f64 = of.iter().map(|&at| error(at) * error(at)).sum();
    (sum / of.len().max(1) as f64).sqrt()
}

/// How often each feature occurs.
fn row(model: &Model, turns: &[Turn]) -> Vec<f64> {
    model.estimate(turns).features.iter().map(|&times| f64::from(times)).collect()
}

/// The costs that fit some of the timings best, given what the hands do; those that do not occur stay as they are.
fn solve(model: &Model, rows: &[Vec<f64>], timings: &[Timing], of: &[usize]) -> [f64; Feature::COUNT] {
    let occurring: Vec<usize> =
        (0..Feature::COUNT).filter(|&feature| of.iter().any(|&at| rows[at][feature] > 0.0)).collect();
    let chosen: Vec<Vec<f64>> =
        of.iter().map(|&at| occurring.iter().map(|&feature| rows[at][feature]).collect()).collect();
    let targets: Vec<f64> = of.iter().map(|&at| timings[at].seconds).collect();
    let mut seconds = *model.seconds();
    for (feature, cost) in occurring.into_iter().zip(non_negative(&chosen, &targets)) {
        seconds[feature] = cost;
    }
    seconds
}

fn fit_to(model: &Model, timings: &[Timing], of: &[usize]) -> Model {
    const ROUNDS: usize = 10;
    let squares = |model: &Model| -> f64 {
        of.iter()
            .map(|&at| {
                let error = model.estimate(&timings[at].turns).seconds - timings[at].seconds;
                error * error
            })
            .sum()
    };
    let mut best = model.clone();
    let mut least = squares(model);
    let mut current = model.clone();
    let mut done: Vec<Vec<f64>> = Vec::new();
    for _ in 0..ROUNDS {
        let rows: Vec<Vec<f64>> = timings.iter().map(|timing| row(&current, &timing.turns)).collect();
        if rows == done {
            break;
        }
        let Ok(next) = current.with_seconds(solve(&current, &rows, timings, of)) else { break };
        current = next;
        done = rows;
        let error = squares(&current);
        if error < least {
            least = error;
            best = current.clone();
        }
    }
    best
}

/// The ends of the middle 95 %.
fn middle(values: &mut [f64], otherwise: f64) -> [f64; 2] {
    values.sort_by(f64::total_cmp);
    let at = |part: f64| {
        let place = (part * (values.len().saturating_sub(1)) as f64).round() as usize;
        values.get(place).copied().unwrap_or(otherwise)
    };
    [at(0.025), at(0.975)]
}
