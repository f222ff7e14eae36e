//! Many small groups, such as letter pairs: each is drawn towards what all have in common, the more the less is known of it, so that
//! three samples do not look like a truth.

use crate::rate::Interval;

/// What is known of a group.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Group {
    /// Samples.
    pub count: usize,
    /// Their plain mean.
    pub mean: f64,
    /// What is believed: drawn towards the mean of all.
    pub believed: f64,
    /// Where the true mean lies, with the probability that was asked for.
    pub interval: Interval,
}

/// Groups with what they have in common.
#[derive(Clone, PartialEq, Debug)]
pub struct Pooled {
    /// The groups, in the order in which they came; none for a group without samples.
    pub groups: Vec<Option<Group>>,
    /// The mean of the groups.
    pub mean: f64,
    /// How much true means differ from group to group: a standard deviation.
    pub between: f64,
    /// How much samples of one group differ.
    pub within: f64,
}

/// Pools groups of samples: means are normal about a common mean, samples normal about theirs; the two variances are those of the
/// analysis of variance with groups of unequal size (source: the book Variance Components, 1992, section 3.6).
/// None where no group has two samples, or only one has any: then nothing tells what is common from what is not.
pub fn pooled(groups: &[Vec<f64>], level: f64) -> Option<Pooled> {
    let filled: Vec<&Vec<f64>> = groups.iter().filter(|group| !group.is_empty()).collect();
    let total: usize = filled.iter().map(|group| group.len()).sum();
    if filled.len() < 2 || total <= filled.len() {
        return None;
    }
    let mean_of = |group: &[f64]| group.iter().sum::<f64>() / group.len() as f64;
    let square = |number: f64| number * number;
    let n = total as f64;
    let grand = filled.iter().flat_map(|group| group.iter()).sum::<f64>() / n;
    let inside: f64 = filled
        .iter()
        .map(|group| {
            let mean = mean_of(group);
            group.iter().map(|sample| square(sample - mean)).sum::<f64>()
        })
        .sum();
    let within = inside / (n - filled.len() as f64);
    let outside: f64 = filled.iter().map(|group| group.len() as f64 * square(mean_of(group) - grand)).sum();
    let squares: f64 = filled.iter().map(|group| square(group.len() as f64)).sum();
    let degrees = filled.len() as f64 - 1.0;
    let usual = (n - squares / n) / degrees;
    let between = ((outside / degrees - within) / usual).max(0.0);
    // The mean of the groups, each weighed by what is known of it.
    let weight = |group: &[f64]| 1.0 / (between + within / group.len() as f64).max(f64::MIN_POSITIVE);
    let weights: f64 = filled.iter().map(|group| weight(group)).sum();
    let mean = filled.iter().map(|group| weight(group) * mean_of(group)).sum::<f64>() / weights;
    let wide = normal_quantile(0.5 + level.clamp(0.0, 1.0) / 2.0);
    let believe = |group: &Vec<f64>| {
        let own = mean_of(group);
        let trust = between / (between + within / group.len() as f64);
        let trust = if trust.is_finite() { trust } else { 0.0 };
        let believed = mean + trust * (own - mean);
        // What is not known of the group itself, and of the common mean as far as the group leans on it.
        let variance = trust * within / group.len() as f64 + square(1.0 - trust) / weights;
        let error = wide * libm::sqrt(variance);
        Group {
            count: group.len(),
            mean: own,
            believed,
            interval: Interval { low: believed - error, high: believed + error },
        }
    };
    let groups = groups.iter().map(|group| (!group.is_empty()).then(|| believe(group))).collect();
    Some(Pooled { groups, mean, between: libm::sqrt(between), within: libm::sqrt(within) })
}

fn normal_quantile(part: f64) -> f64 {
    use statrs::distribution::{ContinuousCDF, Normal};
    Normal::standard().inverse_cdf(part)
}
