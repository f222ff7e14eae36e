//! Success rates that say how sure they are.

use statrs::distribution::{Beta, ContinuousCDF};

/// From where to where something lies, with a stated probability.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Interval {
    /// Its lower end.
    pub low: f64,
    /// Its upper end.
    pub high: f64,
}

/// How many of so many came right.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub struct Share {
    right: u64,
    of: u64,
}

impl Share {
    /// So many right of so many; none where more are right than there were.
    pub const fn new(right: u64, of: u64) -> Option<Self> {
        if right <= of { Some(Self { right, of }) } else { None }
    }

    /// Counts what came right.
    pub fn counted(attempts: impl IntoIterator<Item = bool>) -> Self {
        attempts.into_iter().fold(Self::default(), |share, right| Self {
            right: share.right + u64::from(right),
            of: share.of + 1,
        })
    }

    /// How many came right.
    pub const fn right(self) -> u64 {
        self.right
    }

    /// Of how many.
    pub const fn of(self) -> u64 {
        self.of
    }

    /// What is believed of the rate after these attempts: a Beta distribution, begun from Beta(½, ½), which says little (source: “An
    /// invariant form for the prior probability in estimation problems”, 1946).
    fn belief(self) -> Beta {
        let part = |count: u64| count as f64 + 0.5;
        // Both parameters are at least a half, which every Beta distribution allows.
        Beta::new(part(self.right), part(self.of - self.right))
            .unwrap_or_else(|_| unreachable!("a Beta distribution"))
    }

    /// The mean of what is believed.
    pub fn mean(self) -> f64 {
        (self.right as f64 + 0.5) / (self.of as f64 + 1.0)
    }

    /// The credible interval in which the rate lies with a probability, as much outside on either side. Where nothing, or everything,
    /// came right it reaches to 0, or to 1.
    ///
    /// ```
    /// use record::rate::Share;
    /// let interval = Share::new(8, 10).unwrap().interval(0.95);
    /// // SciPy: beta.ppf([.025, .975], 8.5, 2.5)
    /// assert!((interval.low - 0.4972).abs() < 1e-3 && (interval.high - 0.9560).abs() < 1e-3);
    /// ```
    pub fn interval(self, level: f64) -> Interval {
        let outside = (1.0 - level.clamp(0.0, 1.0)) / 2.0;
        let belief = self.belief();
        Interval {
            low: if self.right == 0 { 0.0 } else { belief.inverse_cdf(outside) },
            high: if self.right == self.of { 1.0 } else { belief.inverse_cdf(1.0 - outside) },
        }
    }

    /// With which probability this rate is higher than another, by what is believed of both.
    pub fn higher_than(self, other: Self) -> f64 {
        /// Points at which the belief is looked at; with these the error is below a thousandth (compared with 20,000).
        const POINTS: u32 = 400;
        let (mine, theirs) = (self.belief(), other.belief());
        let at = |point: u32| theirs.cdf(mine.inverse_cdf((f64::from(point) + 0.5) / f64::from(POINTS)));
        (0..POINTS).map(at).sum::<f64>() / f64::from(POINTS)
    }
}

/// How a rate moved over time: the earlier half of the attempts against the later one.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Drift {
    /// The earlier half; of an odd number it has one less.
    pub earlier: Share,
    /// The later half.
    pub later: Share,
    /// With which probability the later rate is higher.
    pub rises: f64,
}

/// The drift of attempts in the order in which they were made; none of fewer than two.
pub fn drift(attempts: &[bool]) -> Option<Drift> {
    if attempts.len() < 2 {
        return None;
    }
    let (earlier, later) = attempts.split_at(attempts.len() / 2);
    let (earlier, later) = (Share::counted(earlier.iter().copied()), Share::counted(later.iter().copied()));
    Some(Drift { earlier, later, rises: later.higher_than(earlier) })
}
