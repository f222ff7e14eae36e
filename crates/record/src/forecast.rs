//! The next competition: what the best of a round and its mean may come to, from the attempts that were made.

use rand::{Rng, RngExt};

use crate::quantile::Sorted;
use crate::rate::Share;
use crate::result::Outcome;
use crate::round::Format;

/// What may come.
#[derive(Clone, PartialEq, Debug)]
pub struct Forecast {
    /// How many of the drawn rounds had a result at all.
    pub succeeds: Share,
    /// The results of those that had, in seconds; none where none had.
    pub seconds: Option<Sorted>,
}

/// The most rounds that are drawn.
pub const MOST_ROUNDS: u32 = 100_000;

/// Draws rounds from attempts that were made, with replacement, and gives what the best of each came to, and the mean where the
/// format has one. None where no attempt was made.
///
/// Source: “Bootstrap methods: another look at the jackknife”, The Annals of Statistics, 1979.
pub fn drawn(
    attempts: &[Outcome],
    format: Format,
    rounds: u32,
    rng: &mut impl Rng,
) -> Option<(Forecast, Option<Forecast>)> {
    if attempts.is_empty() {
        return None;
    }
    let rounds = rounds.min(MOST_ROUNDS);
    let mut best = Vec::with_capacity(rounds as usize);
    let mut mean = Vec::new();
    let mut round = Vec::with_capacity(usize::from(format.attempts));
    for _ in 0..rounds {
        round.clear();
        round.extend((0..format.attempts).map(|_| attempts[rng.random_range(0..attempts.len())]));
        let score = format.score(&round);
        best.push(score.best);
        if format.mean.is_some() {
            mean.push(score.mean);
        }
    }
    let summed = |results: Vec<Option<Outcome>>| {
        let times: Vec<f64> =
            results.iter().filter_map(|result| Some(result.as_ref()?.time()?.seconds())).collect();
        let succeeds =
            Share::counted(results.iter().map(|result| result.is_some_and(|result| result.time().is_some())));
        Forecast { succeeds, seconds: Sorted::new(times).0 }
    };
    let means = format.mean.is_some().then(|| summed(mean));
    Some((summed(best), means))
}

/// The chance that the best of so many attempts is at most a time, where each succeeds and is that fast with a probability.
///
/// ```
/// assert!((record::forecast::best_within(0.3, 3) - 0.657).abs() < 1e-12);
/// ```
pub fn best_within(each: f64, attempts: u8) -> f64 {
    1.0 - libm::pow(1.0 - each.clamp(0.0, 1.0), f64::from(attempts))
}
