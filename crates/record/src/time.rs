//! Times of results: cut down and rounded as the standard says.

use std::fmt;

/// From here on results are kept in whole seconds (WCA Regulations 9f2): ten minutes, in centiseconds.
const LONG: u64 = 60_000;

/// A time in centiseconds.
///
/// ```
/// use record::Time;
/// // 12.678 on the timer is 12.67 (WCA Regulations A7b2).
/// assert_eq!(Time::truncated(12_678).to_string(), "12.67");
/// // From ten minutes on, whole seconds (9f2).
/// assert_eq!(Time::truncated(600_510).to_string(), "10:00.00");
/// ```
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug, Default)]
pub struct Time(u64);

impl Time {
    /// A time of so many centiseconds, as it is.
    pub const fn of_centiseconds(centiseconds: u64) -> Self {
        Self(centiseconds)
    }

    /// A measured time of so many milliseconds, cut down: to hundredths below ten minutes, else to seconds (9f1, 9f2).
    pub const fn truncated(milliseconds: u64) -> Self {
        let centiseconds = milliseconds / 10;
        if centiseconds < LONG { Self(centiseconds) } else { Self(centiseconds / 100 * 100) }
    }

    /// The same rounded instead of cut down from ten minutes on, as editions before 2025 had it.
    pub const fn rounded(milliseconds: u64) -> Self {
        let centiseconds = milliseconds / 10;
        if centiseconds < LONG { Self(centiseconds) } else { Self((milliseconds + 500) / 1000 * 100) }
    }

    /// In centiseconds.
    pub const fn centiseconds(self) -> u64 {
        self.0
    }

    /// In seconds.
    pub fn seconds(self) -> f64 {
        self.0 as f64 / 100.0
    }

    /// With so many seconds more.
    #[must_use]
    pub const fn plus_seconds(self, seconds: u32) -> Self {
        Self(self.0.saturating_add(seconds as u64 * 100))
    }

    /// Cut down to whole seconds.
    #[must_use]
    pub const fn in_whole_seconds(self) -> Self {
        Self(self.0 / 100 * 100)
    }

    /// The arithmetic mean, rounded to the nearest hundredth below ten minutes, else to the nearest second, halves up (9f1, 9f2).
    /// None of nothing.
    pub fn mean(times: &[Self]) -> Option<Self> {
        let count = times.len() as u64;
        if count == 0 {
            return None;
        }
        let sum: u64 = times.iter().map(|time| time.0).sum();
        let nearest = |unit: u64| (2 * sum + count * unit) / (2 * count * unit) * unit;
        let fine = nearest(1);
        Some(Self(if fine < LONG { fine } else { nearest(100) }))
    }
}

/// As results are written (A7b1, A7b3): hours, minutes, seconds, hundredths, without leading zeros.
impl fmt::Display for Time {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (hours, minutes, seconds, rest) =
            (self.0 / 360_000, self.0 / 6_000 % 60, self.0 / 100 % 60, self.0 % 100);
        match (hours, minutes) {
            (0, 0) => write!(f, "{seconds}.{rest:02}"),
            (0, _) => write!(f, "{minutes}:{seconds:02}.{rest:02}"),
            _ => write!(f, "{hours}:{minutes:02}:{seconds:02}.{rest:02}"),
        }
    }
}
