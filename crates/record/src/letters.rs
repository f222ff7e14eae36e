//! How time follows from letters: seconds a letter, and what is spent whatever their number.

use statrs::distribution::{ContinuousCDF, StudentsT};

use crate::rate::Interval;

/// A line through attempts: time = overhead + each · letters.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Line {
    /// Seconds that are spent whatever the number of letters.
    pub overhead: f64,
    /// Seconds a letter.
    pub each: f64,
    /// How far the true overhead may lie, with the probability that was asked for.
    pub overhead_interval: Interval,
    /// How far the true time a letter may lie.
    pub each_interval: Interval,
    /// How far attempts lie from the line: the standard deviation of what is left, in seconds.
    pub spread: f64,
    /// How many attempts it rests on.
    pub attempts: usize,
}

/// Why there is no line.
#[derive(Clone, Copy, PartialEq, Eq, Debug, thiserror::Error)]
pub enum NoLine {
    /// A line with its uncertainty takes three attempts.
    #[error("three attempts are needed")]
    TooFew,
    /// All attempts have as many letters.
    #[error("all attempts have as many letters")]
    AllAlike,
}

/// The line of least squares through attempts (letters, seconds), with intervals of Student's t distribution.
///
/// ```
/// use record::letters::line;
/// let attempts = [(18.0, 60.0), (20.0, 66.0), (22.0, 70.0), (24.0, 76.0)];
/// let line = line(&attempts, 0.95).unwrap();
/// assert!((line.each - 2.6).abs() < 1e-9 && (line.overhead - 13.4).abs() < 1e-9);
/// ```
///
/// # Errors
/// [`NoLine`] where there are too few attempts, or all have as many letters.
pub fn line(attempts: &[(f64, f64)], level: f64) -> Result<Line, NoLine> {
    let count = attempts.len();
    if count < 3 {
        return Err(NoLine::TooFew);
    }
    let n = count as f64;
    let mean = |of: fn(&(f64, f64)) -> f64| attempts.iter().map(of).sum::<f64>() / n;
    let (x, y) = (mean(|at| at.0), mean(|at| at.1));
    let across: f64 = attempts.iter().map(|at| (at.0 - x) * (at.0 - x)).sum();
    if across <= 0.0 {
        return Err(NoLine::AllAlike);
    }
    let each = attempts.iter().map(|at| (at.0 - x) * (at.1 - y)).sum::<f64>() / across;
    let overhead = y - each * x;
    let left: f64 = attempts
        .iter()
        .map(|at| {
            let off = at.1 - overhead - each * at.0;
            off * off
        })
        .sum();
    let variance = left / (n - 2.0);
    let student = StudentsT::new(0.0, 1.0, n - 2.0).map_err(|_| NoLine::TooFew)?;
    let wide = student.inverse_cdf(0.5 + level.clamp(0.0, 1.0) / 2.0);
    let round =
        |middle: f64, error: f64| Interval { low: middle - wide * error, high: middle + wide * error };
    Ok(Line {
        overhead,
        each,
        overhead_interval: round(overhead, libm::sqrt(variance * (1.0 / n + x * x / across))),
        each_interval: round(each, libm::sqrt(variance / across)),
        spread: libm::sqrt(variance),
        attempts: count,
    })
}
