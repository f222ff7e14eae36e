//! The catalogue of slips: how likely each kind is, which letters are taken for each other, and how the weights are
//! learned from diagnoses that were confirmed.

use super::SlipKind;
use thiserror::Error;

/// How likely each kind of slip is in comparison with the others.
///
/// ```
/// use diagnosis::{Catalogue, SlipKind};
/// let estimates = Catalogue::default();
/// let dropped = estimates.weight(SlipKind::PairDropped);
/// // Ten confirmed diagnoses of this kind make it likelier, and all others less likely.
/// let learned = estimates.learned(&[(SlipKind::PairDropped, 10)]);
/// assert!(learned.weight(SlipKind::PairDropped) > dropped);
/// assert!(learned.weight(SlipKind::HeldWrong) < estimates.weight(SlipKind::HeldWrong));
/// ```
#[derive(Clone, PartialEq, Debug)]
pub struct Catalogue {
    /// In the order of [`SlipKind::ALL`]; only their proportions matter.
    weights: [f64; SlipKind::ALL.len()],
    strength: f64,
    slips: [f64; 3],
    alike: Alike,
}

/// Letters that are taken for each other, in groups; a letter may be in several.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Alike {
    /// Those that sound alike.
    pub sound: Vec<String>,
    /// Those that look alike.
    pub shape: Vec<String>,
}

/// Why there is no such catalogue of slips.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Error)]
pub enum CatalogueError {
    /// A kind has a weight that is no number above 0.
    #[error("{} needs a number above 0", .0.name())]
    NoWeight(SlipKind),
    /// The weights count for a number of slips that is none above 0.
    #[error("the weights must count for a number of slips above 0")]
    NoStrength,
    /// A share of attempts with so many slips is no number above 0.
    #[error("attempts with {0} slips need a number above 0")]
    NoShare(usize),
}

/// The project's own estimate of a weight: no measurement.
const fn estimate(kind: SlipKind) -> f64 {
    match kind {
        SlipKind::ScrambleMirrored | SlipKind::KindsExchanged | SlipKind::SetupUndoneTwice => 0.5,
        SlipKind::ParityWithoutNeed
        | SlipKind::LetterDoubled
        | SlipKind::PairDoubled
        | SlipKind::ScrambleTurnAdded
        | SlipKind::ScrambleTurnsExchanged
        | SlipKind::ScrambledInOtherHold
        | SlipKind::TracedFromOtherBuffer
        | SlipKind::KindForgotten
        | SlipKind::SetupLeftOut
        | SlipKind::SetupDoubled
        | SlipKind::SetupWrongWay => 1.0,
        SlipKind::ScrambleTurnWrong
        | SlipKind::ScrambleTurnLeftOut
        | SlipKind::HeldWrong
        | SlipKind::TurnAdded
        | SlipKind::AlgorithmInverted
        | SlipKind::OtherScramble
        | SlipKind::HeldOtherwise
        | SlipKind::BrokenOff => 2.0,
        SlipKind::WrongSticker
        | SlipKind::CycleMissed
        | SlipKind::FlipMissed
        | SlipKind::TwistMissed
        | SlipKind::TwistOtherWay
        | SlipKind::TurnHalf
        | SlipKind::TurnQuarter
        | SlipKind::TurnOtherFace
        | SlipKind::TurnWide
        | SlipKind::SetupOfAnother
        | SlipKind::AlgorithmLeftOut
        | SlipKind::AlgorithmDoubled
        | SlipKind::AlgorithmOfOtherKind => 3.0,
        SlipKind::ClosedEarly
        | SlipKind::ParityOverlooked
        | SlipKind::LetterNeighbour
        | SlipKind::LetterOther
        | SlipKind::PairDropped
        | SlipKind::LettersExchanged
        | SlipKind::PairsExchanged => 4.0,
        SlipKind::LetterAlike
        | SlipKind::LetterDropped
        | SlipKind::PairReversed
        | SlipKind::TurnLeftOut
        | SlipKind::SetupUndoneWrongWay => 5.0,
        SlipKind::WrongStickerFollowed | SlipKind::SetupNotUndone => 6.0,
        SlipKind::TurnOtherWay => 10.0,
    }
}

/// For how many confirmed slips the estimates count.
const STRENGTH: f64 = 60.0;
/// Of attempts that fail: how many by one slip, by two, by three.
const SLIPS: [f64; 3] = [75.0, 20.0, 5.0];
/// In English.
const SOUND: [&str; 6] = ["BCDEGPTV", "AHJK", "FSX", "MN", "QU", "IY"];
const SHAPE: [&str; 9] = ["CGOQ", "DOP", "EF", "HNM", "IJLT", "KXY", "MW", "PRB", "UV"];

impl Default for Catalogue {
    /// The project's own estimates.
    fn default() -> Self {
        let alike =
            Alike { sound: SOUND.map(str::to_owned).to_vec(), shape: SHAPE.map(str::to_owned).to_vec() };
        Self { weights: SlipKind::ALL.map(estimate), strength: STRENGTH, slips: SLIPS, alike }
    }
}

fn share(part: f64, all: &[f64]) -> f64 {
    let sum: f64 = all.iter().sum();
    if sum > 0.0 { part / sum } else { 0.0 }
}

impl Catalogue {
    /// A catalogue of weights in the order of [`SlipKind::ALL`], of which only the proportions matter and which count for
    /// `strength` slips seen before; `slips` are the shares of failed attempts with one, two and three slips.
    ///
    /// # Errors
    /// [`CatalogueError`] for the first number that is not above 0.
    pub fn new(
        weights: [f64; SlipKind::ALL.len()],
        strength: f64,
        slips: [f64; 3],
        alike: Alike,
    ) -> Result<Self, CatalogueError> {
        let good = |number: f64| number.is_finite() && number > 0.0;
        if let Some(kind) = SlipKind::ALL.into_iter().find(|kind| !good(weights[kind.index()])) {
            return Err(CatalogueError::NoWeight(kind));
        }
        if !good(strength) {
            return Err(CatalogueError::NoStrength);
        }
        match slips.iter().position(|&share| !good(share)) {
            Some(at) => Err(CatalogueError::NoShare(at + 1)),
            None => Ok(Self { weights, strength, slips, alike }),
        }
    }

    /// The same catalogue with every kind as likely as any other.
    #[must_use]
    pub fn evened(&self) -> Self {
        Self { weights: [1.0; SlipKind::ALL.len()], ..self.clone() }
    }

    /// The same catalogue without some kinds: slips that are known not to have been made.
    #[must_use]
    pub fn without(&self, kinds: &[SlipKind]) -> Self {
        let mut weights = self.weights;
        for kind in kinds {
            weights[kind.index()] = 0.0;
        }
        Self { weights, ..self.clone() }
    }

    /// The weights in the order of [`SlipKind::ALL`], as they were given.
    pub const fn weights(&self) -> &[f64; SlipKind::ALL.len()] {
        &self.weights
    }

    /// The shares of attempts with one, two and three slips, as they were given.
    pub const fn slips(&self) -> &[f64; 3] {
        &self.slips
    }

    /// The letters that are taken for each other.
    pub const fn groups(&self) -> &Alike {
        &self.alike
    }

    /// The share of a kind among all slips.
    pub fn weight(&self, kind: SlipKind) -> f64 {
        share(self.weights[kind.index()], &self.weights)
    }

    /// The share of failed attempts with so many slips, 1 to 3.
    pub fn share_of_count(&self, slips: usize) -> f64 {
        let of = slips.checked_sub(1).and_then(|at| self.slips.get(at));
        of.map_or(0.0, |&part| share(part, &self.slips))
    }

    /// Whether two letters sound or look alike. Letters that differ only in case are one letter.
    pub fn alike(&self, a: &str, b: &str) -> bool {
        let (a, b) = (a.to_uppercase(), b.to_uppercase());
        let mut groups = self.alike.sound.iter().chain(&self.alike.shape);
        a != b && groups.any(|group| group.contains(&*a) && group.contains(&*b))
    }

    /// The weights after confirmed diagnoses: the estimates count as [`Catalogue::strength`] slips seen before.
    ///
    /// The mean of a Dirichlet distribution updated by counts: (strength × share + count) / (strength + all counts).
    /// Source: the textbook conjugate of the multinomial distribution.
    #[must_use]
    pub fn learned(&self, confirmed: &[(SlipKind, u32)]) -> Self {
        let mut weights = SlipKind::ALL.map(|kind| self.weight(kind) * self.strength);
        for &(kind, count) in confirmed {
            weights[kind.index()] += f64::from(count);
        }
        Self { weights, strength: weights.iter().sum(), ..self.clone() }
    }

    /// How many confirmed slips the weights count for.
    pub const fn strength(&self) -> f64 {
        self.strength
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_estimates_are_whole() {
        let usual = Catalogue::default();
        let sum: f64 = SlipKind::ALL.into_iter().map(|kind| usual.weight(kind)).sum();
        assert!((sum - 1.0).abs() < 1e-12);
        assert_eq!(
            Catalogue::new(usual.weights, usual.strength, usual.slips, usual.alike.clone()),
            Ok(usual.clone())
        );
        assert!(usual.alike("m", "N") && !usual.alike("A", "B") && !usual.alike("A", "a"));
        assert!((1..=3).map(|slips| usual.share_of_count(slips)).sum::<f64>() - 1.0 < 1e-12);
        assert!(usual.share_of_count(0) + usual.share_of_count(4) < 1e-12);
    }

    #[test]
    fn learning_is_the_mean_of_a_dirichlet_distribution() {
        let prior = Catalogue::default();
        let kind = SlipKind::TurnLeftOut;
        let once = prior.learned(&[(kind, 4), (SlipKind::HeldWrong, 2)]);
        let expected = (prior.weight(kind) * prior.strength() + 4.0) / (prior.strength() + 6.0);
        assert!((once.weight(kind) - expected).abs() < 1e-12);
        // In two steps as in one.
        let twice = prior.learned(&[(kind, 4)]).learned(&[(SlipKind::HeldWrong, 2)]);
        for kind in SlipKind::ALL {
            assert!((once.weight(kind) - twice.weight(kind)).abs() < 1e-12);
        }
    }

    #[test]
    fn what_is_no_weight_is_told() {
        let usual = Catalogue::default();
        for bad in [0.0, -2.0, f64::NAN, f64::INFINITY] {
            let mut weights = usual.weights;
            weights[SlipKind::HeldWrong.index()] = bad;
            let new = |weights, strength, slips| Catalogue::new(weights, strength, slips, Alike::default());
            assert_eq!(new(weights, 1.0, SLIPS), Err(CatalogueError::NoWeight(SlipKind::HeldWrong)));
            assert_eq!(new(usual.weights, bad, SLIPS), Err(CatalogueError::NoStrength));
            assert_eq!(new(usual.weights, 1.0, [1.0, bad, 1.0]), Err(CatalogueError::NoShare(2)));
        }
    }
}
