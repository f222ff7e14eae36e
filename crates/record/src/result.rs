//! What an attempt came to: one puzzle, or many at once.

use std::cmp::Ordering;

use crate::time::Time;

/// The result of an attempt at one puzzle, best first: a shorter time is better (9f12a), every time is better than none (9f7). The
/// standard ranks DNF and DNS alike; here, as in its published results, DNS stands last.
#[derive(Clone, Copy, PartialEq, Eq, Debug, PartialOrd, Ord, Hash)]
pub enum Outcome {
    /// Solved in a time, penalties added.
    Solved(Time),
    /// Did not finish.
    Dnf,
    /// Did not start.
    Dns,
}

impl Outcome {
    /// The time, if there is one.
    pub const fn time(self) -> Option<Time> {
        match self {
            Self::Solved(time) => Some(time),
            Self::Dnf | Self::Dns => None,
        }
    }

    /// What one puzzle comes to that was left so many turns from solved, in a time: none, one for two seconds more, or DNF (10e2 to
    /// 10e4), with other penalties of so many seconds.
    ///
    /// ```
    /// use record::{Outcome, Time};
    /// let time = Time::of_centiseconds(1765);
    /// assert_eq!(Outcome::left(time, 0, 4), Outcome::Solved(Time::of_centiseconds(2165)));
    /// assert_eq!(Outcome::left(time, 1, 0), Outcome::Solved(Time::of_centiseconds(1965)));
    /// assert_eq!(Outcome::left(time, 2, 0), Outcome::Dnf);
    /// ```
    pub const fn left(time: Time, turns: u32, penalties: u32) -> Self {
        match turns {
            0 => Self::Solved(time.plus_seconds(penalties)),
            1 => Self::Solved(time.plus_seconds(penalties.saturating_add(2))),
            _ => Self::Dnf,
        }
    }
}

/// An attempt at many puzzles that was made: so many solved of so many, in a time.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
pub struct Many {
    solved: u32,
    attempted: u32,
    time: Option<Time>,
}

/// The most puzzles of an attempt that published results can hold.
pub const MOST_PUZZLES: u32 = 99;

impl Many {
    /// An attempt; `time` is none where it is not known, as in old results. None where more are solved than tried, where fewer than
    /// two or more than [`MOST_PUZZLES`] were tried.
    pub fn new(solved: u32, attempted: u32, time: Option<Time>) -> Option<Self> {
        let right = solved <= attempted && (2..=MOST_PUZZLES).contains(&attempted);
        right.then(|| Self { solved, attempted, time: time.map(Time::in_whole_seconds) })
    }

    /// How many were solved.
    pub const fn solved(self) -> u32 {
        self.solved
    }

    /// How many were tried.
    pub const fn attempted(self) -> u32 {
        self.attempted
    }

    /// In which time.
    pub const fn time(self) -> Option<Time> {
        self.time
    }

    /// How many were not solved.
    pub const fn missed(self) -> u32 {
        self.attempted - self.solved
    }

    /// Solved less unsolved (9f12c).
    pub const fn points(self) -> i64 {
        self.solved as i64 - self.missed() as i64
    }

    /// Whether it counts: DNF below no points, and where just one was solved (9f12c).
    pub const fn counts(self) -> bool {
        self.points() >= 0 && self.solved != 1
    }

    /// The time limit for so many puzzles, in seconds: ten minutes each below six, else an hour (H1b).
    pub const fn limit(puzzles: u32) -> u64 {
        if puzzles < 6 { puzzles as u64 * 600 } else { 3600 }
    }
}

/// The result of an attempt at many puzzles, best first: more points, then the shorter time, then fewer unsolved (9f12c). A time
/// that is not known comes after all.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum ManyOutcome {
    /// It counts.
    Counts(Many),
    /// Did not finish.
    Dnf,
    /// Did not start.
    Dns,
}

impl From<Many> for ManyOutcome {
    fn from(many: Many) -> Self {
        if many.counts() { Self::Counts(many) } else { Self::Dnf }
    }
}

impl ManyOutcome {
    fn key(&self) -> (u8, i64, u64, u32) {
        match self {
            Self::Counts(many) => {
                let time = many.time.map_or(u64::MAX, Time::centiseconds);
                (0, -many.points(), time, many.missed())
            }
            Self::Dnf => (1, 0, 0, 0),
            Self::Dns => (2, 0, 0, 0),
        }
    }
}

impl PartialOrd for ManyOutcome {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for ManyOutcome {
    fn cmp(&self, other: &Self) -> Ordering {
        self.key().cmp(&other.key())
    }
}
