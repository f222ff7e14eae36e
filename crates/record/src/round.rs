//! Rounds: limits, best, mean, average, ranking.

use std::cmp::Ordering;

use crate::result::Outcome;
use crate::time::Time;

/// What is ranked beside the single.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Mean {
    /// The mean of three; one that is no time makes it none (9f10, 9f11).
    Of3,
    /// The mean of five without the best and the worst; two that are no time make it none (9f8, 9f9).
    AverageOf5,
}

impl Mean {
    /// How many attempts it takes.
    pub const fn attempts(self) -> usize {
        match self {
            Self::Of3 => 3,
            Self::AverageOf5 => 5,
        }
    }

    /// Of attempts as many as it takes; none of any other number.
    ///
    /// ```
    /// use record::round::Mean;
    /// use record::{Outcome, Time};
    /// let times = [4200, 4300, 4400, 4502, 4600].map(|time| Outcome::Solved(Time::of_centiseconds(time)));
    /// assert_eq!(Mean::AverageOf5.of(&times), Some(Outcome::Solved(Time::of_centiseconds(4401))));
    /// ```
    pub fn of(self, attempts: &[Outcome]) -> Option<Outcome> {
        if attempts.len() != self.attempts() {
            return None;
        }
        let mut sorted = attempts.to_vec();
        sorted.sort_unstable();
        let counted = match self {
            Self::Of3 => &sorted[..],
            Self::AverageOf5 => &sorted[1..4],
        };
        let times: Option<Vec<Time>> = counted.iter().map(|outcome| outcome.time()).collect();
        Some(times.and_then(|times| Time::mean(&times)).map_or(Outcome::Dnf, Outcome::Solved))
    }
}

/// How many attempts a round has, and what is ranked beside the best of them.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Format {
    /// Attempts.
    pub attempts: u8,
    /// What is ranked beside the single; of many at once nothing is.
    pub mean: Option<Mean>,
}

/// What a round came to for one person.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Score {
    /// The best attempt; none where there was no attempt, or only such as did not start (9f5a).
    pub best: Option<Outcome>,
    /// The mean or average, once all attempts are made.
    pub mean: Option<Outcome>,
}

impl Format {
    /// Scores attempts, in the order in which they were made; more than the round has are left aside.
    pub fn score(self, attempts: &[Outcome]) -> Score {
        let made = &attempts[..attempts.len().min(usize::from(self.attempts))];
        let best = made.iter().min().copied().filter(|best| *best != Outcome::Dns);
        let all = made.len() == usize::from(self.attempts);
        let mean = self.mean.filter(|_| all && best.is_some()).and_then(|mean| mean.of(made));
        Score { best, mean }
    }
}

/// The place of each of some results, from 1, best first; equal results share a place (9f15), and who has none has no place.
/// Blindfolded rounds are placed by the best attempt alone (9b3b, 9b6b).
///
/// ```
/// use record::round::places;
/// assert_eq!(places(&[Some(30), Some(10), None, Some(30), Some(50)]), [Some(2), Some(1), None, Some(2), Some(4)]);
/// ```
pub fn places<T: Ord>(results: &[Option<T>]) -> Vec<Option<usize>> {
    results
        .iter()
        .map(|result| {
            let mine = result.as_ref()?;
            let better = results.iter().flatten().filter(|other| other.cmp(&mine) == Ordering::Less).count();
            Some(better + 1)
        })
        .collect()
}

/// A limit on time: one for each attempt, or one for several together.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Limit {
    /// For each attempt. Ten minutes unless the organiser says otherwise (A1a1).
    Each(Time),
    /// For all attempts of a round together, or of several rounds (A1a2), and perhaps for each of them as well.
    Together {
        /// For all.
        all: Time,
        /// For each.
        each: Option<Time>,
    },
}

/// An attempt as it was timed, before the limit is looked at.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Timed {
    /// What it came to.
    pub outcome: Outcome,
    /// How long it took where it came to no time.
    pub elapsed: Time,
}

impl Limit {
    /// The usual limit: ten minutes an attempt.
    pub const USUAL: Self = Self::Each(Time::of_centiseconds(60_000));

    /// What attempts come to under the limit, in their order: the end of a solve must come before it (A1a4); what is used up of a
    /// common one is the result with its penalties, or the time that passed (A1a5); when nothing is left, the rest did not start.
    ///
    /// ```
    /// use record::round::{Limit, Timed};
    /// use record::{Outcome, Time};
    /// let time = |seconds: u64| Time::of_centiseconds(seconds * 100);
    /// let solved = |seconds| Timed { outcome: Outcome::Solved(time(seconds)), elapsed: time(seconds) };
    /// let limit = Limit::Together { all: time(1800), each: None };
    /// let dnf = Timed { outcome: Outcome::Dnf, elapsed: time(600) };
    /// // Of thirty minutes fourteen are left after six and ten (A1a2++): 13:59 with two seconds more is over.
    /// assert_eq!(limit.left(&[solved(360), dnf]), Some(time(840)));
    /// assert_eq!(limit.apply(&[solved(360), dnf, solved(839)])[2], Outcome::Solved(time(839)));
    /// assert_eq!(limit.apply(&[solved(360), dnf, solved(841)])[2], Outcome::Dnf);
    /// ```
    pub fn apply(self, attempts: &[Timed]) -> Vec<Outcome> {
        (0..attempts.len())
            .map(|at| match (self.left(&attempts[..at]), attempts[at].outcome) {
                (None, _) | (_, Outcome::Dns) => Outcome::Dns,
                (Some(left), Outcome::Solved(time)) if time < left => Outcome::Solved(time),
                (Some(_), Outcome::Solved(_) | Outcome::Dnf) => Outcome::Dnf,
            })
            .collect()
    }

    /// What the next attempt may take after some; none when nothing is left.
    pub fn left(self, made: &[Timed]) -> Option<Time> {
        match self {
            Self::Each(each) => Some(each),
            Self::Together { all, each } => {
                let used: u64 = made
                    .iter()
                    .map(|attempt| match attempt.outcome {
                        Outcome::Solved(time) => time.centiseconds(),
                        Outcome::Dnf => attempt.elapsed.centiseconds(),
                        Outcome::Dns => 0,
                    })
                    .sum();
                let rest = all.centiseconds().checked_sub(used).filter(|rest| *rest > 0)?;
                let rest = Time::of_centiseconds(rest);
                Some(each.map_or(rest, |each| each.min(rest)))
            }
        }
    }

    /// Whether a result beats a cutoff: it has to be better, not equal (9g).
    pub fn beats(cutoff: Time, attempts: &[Outcome]) -> bool {
        attempts.iter().any(|outcome| outcome.time().is_some_and(|time| time < cutoff))
    }
}
