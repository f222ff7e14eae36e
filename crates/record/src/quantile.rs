//! Times in order: best, median, quantiles, means of three.

use statrs::distribution::{Binomial, DiscreteCDF};

use crate::rate::Interval;

/// Numbers in order, at least one, all finite.
#[derive(Clone, PartialEq, Debug)]
pub struct Sorted(Vec<f64>);

impl Sorted {
    /// Puts numbers in order; what is no finite number is left out and counted. None where nothing is left.
    pub fn new(numbers: impl IntoIterator<Item = f64>) -> (Option<Self>, usize) {
        let (mut kept, odd): (Vec<f64>, Vec<f64>) =
            numbers.into_iter().partition(|number| number.is_finite());
        kept.sort_unstable_by(f64::total_cmp);
        ((!kept.is_empty()).then_some(Self(kept)), odd.len())
    }

    /// How many there are.
    #[expect(clippy::len_without_is_empty, reason = "there is at least one")]
    pub const fn len(&self) -> usize {
        self.0.len()
    }

    /// The least.
    pub fn best(&self) -> f64 {
        self.0[0]
    }

    /// The number below which a part lies, 0 to 1, between two by straight lines: definition 7 of “Sample quantiles in
    /// statistical packages” (The American Statistician, 1996), which is also the usual one of `numpy.quantile`.
    ///
    /// ```
    /// use record::quantile::Sorted;
    /// let sorted = Sorted::new([4.0, 1.0, 3.0, 2.0]).0.unwrap();
    /// assert_eq!(sorted.quantile(0.5), 2.5);
    /// ```
    pub fn quantile(&self, part: f64) -> f64 {
        let place = part.clamp(0.0, 1.0) * (self.0.len() - 1) as f64;
        let below = libm::floor(place);
        let at = |place: f64| self.0[(place as usize).min(self.0.len() - 1)];
        at(below) + (place - below) * (at(below + 1.0) - at(below))
    }

    /// An interval in which the true quantile lies at least with a probability, whatever the distribution: between two of the
    /// numbers, chosen by the binomial distribution. None where there are too few for it.
    ///
    /// Source: the book Order Statistics, 3rd edition, section 7.1.
    pub fn interval(&self, part: f64, level: f64) -> Option<Interval> {
        let count = self.0.len();
        let below = Binomial::new(part, count as u64).ok()?;
        let outside = (1.0 - level) / 2.0;
        // The true quantile lies above the r-th number when at least r of them lie below it.
        let low = (1..=count).rev().find(|&r| below.cdf(r as u64 - 1) <= outside)?;
        let high = (1..=count).find(|&s| 1.0 - below.cdf(s as u64 - 1) <= outside)?;
        Some(Interval { low: self.0[low - 1], high: self.0[high - 1] })
    }
}

/// The means of each so many in a row, in order; none that has a gap in it.
///
/// ```
/// use record::quantile::rolling;
/// let means = rolling(&[Some(1.0), Some(2.0), Some(3.0), None, Some(5.0)], 3);
/// assert_eq!(means, [Some(2.0), None, None]);
/// ```
pub fn rolling(numbers: &[Option<f64>], each: usize) -> Vec<Option<f64>> {
    if each == 0 {
        return Vec::new();
    }
    numbers
        .windows(each)
        .map(|window| Some(window.iter().copied().sum::<Option<f64>>()? / each as f64))
        .collect()
}
