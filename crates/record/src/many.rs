//! How many puzzles to try at once: the points that each number may bring, exactly, and which number is best.

use crate::result::{MOST_PUZZLES, Many};

/// What is known of a person who solves many at once.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Pace {
    /// The chance that a puzzle comes right.
    pub success: f64,
    /// Seconds for the first puzzle, memorised and carried out.
    pub first: f64,
    /// How many seconds each further one takes longer than the one before it.
    pub growth: f64,
    /// How much the time of a whole attempt differs from day to day: a standard deviation, as a part of it.
    pub spread: f64,
}

/// What a number of puzzles may bring.
#[derive(Clone, PartialEq, Debug)]
pub struct Prospect {
    /// How many puzzles.
    pub puzzles: u32,
    /// The chance of each number of puzzles solved, from none on.
    pub solved: Vec<f64>,
    /// The points to be expected, where an attempt that does not count brings none.
    pub expected: f64,
    /// The chance that the attempt does not count: fewer solved than not, or just one (9f12c).
    pub dnf: f64,
}

impl Prospect {
    /// The chance of at least so many points.
    pub fn reaches(&self, points: i64) -> f64 {
        self.counted().filter(|(many, _)| many.points() >= points).map(|(_, chance)| chance).sum()
    }

    fn counted(&self) -> impl Iterator<Item = (Many, f64)> {
        self.solved
            .iter()
            .enumerate()
            .filter_map(|(solved, chance)| Some((Many::new(solved as u32, self.puzzles, None)?, *chance)))
            .filter(|(many, _)| many.counts())
    }
}

/// The chance of each number of successes among puzzles that succeed independently, each with its own chance: one puzzle after
/// another is added (a convolution, exact but for rounding).
///
/// ```
/// use record::many::successes;
/// assert_eq!(successes(&[0.5, 0.5]), [0.25, 0.5, 0.25]);
/// ```
pub fn successes(chances: &[f64]) -> Vec<f64> {
    let mut solved = vec![1.0];
    for chance in chances.iter().map(|chance| chance.clamp(0.0, 1.0)) {
        let before = solved.clone();
        solved.push(0.0);
        for (number, part) in solved.iter_mut().enumerate() {
            let stays = before.get(number).map_or(0.0, |part| part * (1.0 - chance));
            let comes = number.checked_sub(1).map_or(0.0, |less| before[less] * chance);
            *part = stays + comes;
        }
    }
    solved
}

/// Days that are looked at: equally likely ones from a slow to a fast one.
const DAYS: u32 = 99;

impl Pace {
    /// Seconds for so many puzzles on an ordinary day.
    pub fn seconds(&self, puzzles: u32) -> f64 {
        let n = f64::from(puzzles);
        n * self.first + self.growth * n * (n - 1.0) / 2.0
    }

    /// How many of so many puzzles are reached within the limit on a day that is slower by a factor.
    fn reached(&self, puzzles: u32, factor: f64) -> u32 {
        let limit = Many::limit(puzzles) as f64;
        (1..=puzzles).rev().find(|&done| self.seconds(done) * factor < limit).unwrap_or(0)
    }

    /// What a number of puzzles may bring: none below two or above [`MOST_PUZZLES`]. A puzzle that is not reached within the limit
    /// stays unsolved; days differ as a log-normal distribution with the given spread does.
    pub fn prospect(&self, puzzles: u32) -> Option<Prospect> {
        use statrs::distribution::{ContinuousCDF, Normal};
        Many::new(0, puzzles, None)?;
        let mut solved = vec![0.0; puzzles as usize + 1];
        let normal = Normal::standard();
        let spread = if self.spread.is_finite() { self.spread.clamp(0.0, 1.0) } else { 0.0 };
        for day in 0..DAYS {
            let at = normal.inverse_cdf((f64::from(day) + 0.5) / f64::from(DAYS));
            let reached = self.reached(puzzles, libm::exp(spread * at));
            for (number, chance) in successes(&vec![self.success; reached as usize]).into_iter().enumerate() {
                solved[number] += chance / f64::from(DAYS);
            }
        }
        let mut prospect = Prospect { puzzles, solved, expected: 0.0, dnf: 0.0 };
        prospect.expected = prospect.counted().map(|(many, chance)| many.points() as f64 * chance).sum();
        prospect.dnf = 1.0 - prospect.counted().map(|(_, chance)| chance).sum::<f64>();
        Some(prospect)
    }

    /// Every number of puzzles up to one.
    pub fn prospects(&self, most: u32) -> Vec<Prospect> {
        (2..=most.min(MOST_PUZZLES)).filter_map(|puzzles| self.prospect(puzzles)).collect()
    }
}

/// The number of puzzles with the most points to be expected; of several the least.
pub fn most_expected(prospects: &[Prospect]) -> Option<&Prospect> {
    prospects.iter().rev().max_by(|a, b| a.expected.total_cmp(&b.expected))
}

/// The number of puzzles with the best chance of at least so many points; of several the least.
pub fn best_chance(prospects: &[Prospect], points: i64) -> Option<&Prospect> {
    prospects.iter().rev().max_by(|a, b| a.reaches(points).total_cmp(&b.reaches(points)))
}
