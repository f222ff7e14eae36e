//! The catalogue of slips as data: how likely each kind is, which letters are taken for each other, and how the
//! weights are learned from diagnoses that were confirmed.

use super::{SlipKind, Stage};
use std::sync::LazyLock;
use thiserror::Error;
use toml_edit::{Document, Item, TableLike};

/// The project's own estimates.
const ESTIMATES: &str = include_str!("../../data/slips.toml");

/// How likely each kind of slip is in comparison with the others.
///
/// ```
/// use blind::{Catalogue, SlipKind};
/// let estimates = Catalogue::default();
/// let dropped = estimates.weight(SlipKind::PairDropped);
/// // Ten confirmed diagnoses of this kind make it likelier, and all others less likely.
/// let learned = estimates.learned(&[(SlipKind::PairDropped, 10)]);
/// assert!(learned.weight(SlipKind::PairDropped) > dropped);
/// assert!(learned.weight(SlipKind::HeldWrong) < estimates.weight(SlipKind::HeldWrong));
/// ```
#[derive(Clone, PartialEq, Debug)]
pub struct Catalogue {
    /// Shares, in the order of [`SlipKind::ALL`]; they add up to 1.
    weights: [f64; SlipKind::ALL.len()],
    /// How many confirmed slips the weights count for.
    strength: f64,
    /// Shares of failed attempts with one, two, three slips.
    slips: [f64; 3],
    alike: Vec<String>,
}

/// Why a text is no catalogue of slips.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum CatalogueError {
    /// It is no TOML.
    #[error("the catalogue is no TOML: {0}")]
    NotToml(String),
    /// A kind has no weight, or one that is no number above 0.
    #[error("{0} needs a number above 0")]
    NoWeight(String),
    /// Something else than a kind of slip has a weight.
    #[error("{0} is no kind of slip")]
    UnknownKind(String),
    /// A list is missing or holds something else.
    #[error("{0} is not the list that it should be")]
    NoList(&'static str),
}

static ESTIMATED: LazyLock<Catalogue> = LazyLock::new(|| {
    // A test holds that the file can be read.
    let nothing =
        Catalogue { weights: [0.0; SlipKind::ALL.len()], strength: 1.0, slips: [1.0; 3], alike: Vec::new() };
    Catalogue::read(ESTIMATES).unwrap_or(nothing)
});

impl Default for Catalogue {
    /// The project's own estimates.
    fn default() -> Self {
        ESTIMATED.clone()
    }
}

fn number(item: &Item) -> Option<f64> {
    let number = item.as_float().or_else(|| item.as_integer().map(|whole| whole as f64))?;
    (number.is_finite() && number > 0.0).then_some(number)
}

fn texts(item: Option<&Item>) -> Option<Vec<String>> {
    item?.as_array()?.iter().map(|value| value.as_str().map(str::to_owned)).collect()
}

impl Catalogue {
    /// The same catalogue with every kind as likely as any other.
    #[must_use]
    pub fn evened(&self) -> Self {
        let count = SlipKind::ALL.len() as f64;
        Self { weights: [1.0 / count; SlipKind::ALL.len()], ..self.clone() }
    }

    /// The same catalogue without some kinds: slips that are known not to have been made.
    #[must_use]
    pub fn without(&self, kinds: &[SlipKind]) -> Self {
        let mut weights = self.weights;
        for kind in kinds {
            weights[kind.index()] = 0.0;
        }
        let sum: f64 = weights.iter().sum();
        Self { weights: weights.map(|weight| if sum > 0.0 { weight / sum } else { 0.0 }), ..self.clone() }
    }

    /// Reads a catalogue from TOML: a table for each stage with a weight for each of its kinds.
    ///
    /// # Errors
    /// [`CatalogueError`] for the first thing that is missing or unknown.
    pub fn read(text: &str) -> Result<Self, CatalogueError> {
        let document = Document::parse(text)
            .map_err(|error| CatalogueError::NotToml(error.message().trim().to_owned()))?;
        let root = document.as_table();
        let mut weights = [0.0; SlipKind::ALL.len()];
        for stage in Stage::ALL {
            let table = root.get(stage.name()).and_then(Item::as_table_like);
            for (key, _) in table.into_iter().flat_map(TableLike::iter) {
                if SlipKind::named(key).is_none_or(|kind| kind.stage() != stage) {
                    return Err(CatalogueError::UnknownKind(format!("{}.{key}", stage.name())));
                }
            }
            for kind in SlipKind::ALL.into_iter().filter(|kind| kind.stage() == stage) {
                weights[kind.index()] = table
                    .and_then(|table| table.get(kind.name()))
                    .and_then(number)
                    .ok_or_else(|| CatalogueError::NoWeight(format!("{}.{}", stage.name(), kind.name())))?;
            }
        }
        let sum: f64 = weights.iter().sum();
        let strength = root
            .get("strength")
            .and_then(number)
            .ok_or_else(|| CatalogueError::NoWeight("strength".to_owned()))?;
        let shares: Vec<f64> = root
            .get("slips")
            .and_then(Item::as_array)
            .map(|list| {
                list.iter()
                    .filter_map(|value| {
                        value.as_float().or_else(|| value.as_integer().map(|whole| whole as f64))
                    })
                    .collect()
            })
            .unwrap_or_default();
        let [one, two, three] = shares[..] else { return Err(CatalogueError::NoList("slips")) };
        let all = one + two + three;
        if !(all.is_finite() && one > 0.0 && two > 0.0 && three > 0.0) {
            return Err(CatalogueError::NoList("slips"));
        }
        let mut alike = Vec::new();
        for way in ["sound", "shape"] {
            let list = root.get("alike").and_then(|table| table.get(way));
            alike.extend(texts(list).ok_or(CatalogueError::NoList("alike"))?);
        }
        Ok(Self {
            weights: weights.map(|weight| weight / sum),
            strength,
            slips: [one / all, two / all, three / all],
            alike,
        })
    }

    /// The share of a kind among all slips.
    pub const fn weight(&self, kind: SlipKind) -> f64 {
        self.weights[kind.index()]
    }

    /// The share of failed attempts with so many slips, 1 to 3.
    pub fn share_of_count(&self, slips: usize) -> f64 {
        slips.checked_sub(1).and_then(|at| self.slips.get(at)).copied().unwrap_or(0.0)
    }

    /// Whether two letters sound or look alike. Letters that differ only in case are one letter.
    pub fn alike(&self, a: &str, b: &str) -> bool {
        let (a, b) = (a.to_uppercase(), b.to_uppercase());
        a != b && self.alike.iter().any(|group| group.contains(&*a) && group.contains(&*b))
    }

    /// The weights after confirmed diagnoses: the estimates count as [`Catalogue::strength`] slips seen before.
    ///
    /// The mean of a Dirichlet distribution updated by counts: (strength × share + count) / (strength + all counts).
    /// Source: the textbook conjugate of the multinomial distribution.
    #[must_use]
    pub fn learned(&self, confirmed: &[(SlipKind, u32)]) -> Self {
        let mut weights = self.weights.map(|weight| weight * self.strength);
        for &(kind, count) in confirmed {
            weights[kind.index()] += f64::from(count);
        }
        let strength: f64 = weights.iter().sum();
        Self { weights: weights.map(|weight| weight / strength), strength, ..self.clone() }
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
    fn the_file_is_whole() {
        let read = Catalogue::read(ESTIMATES).expect("the project's own catalogue");
        assert!((read.weights.iter().sum::<f64>() - 1.0).abs() < 1e-12);
        assert_eq!(read, Catalogue::default());
        assert!(read.alike("m", "N") && !read.alike("A", "B") && !read.alike("A", "a"));
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
    fn a_mistake_in_the_file_is_named() {
        let unknown = ESTIMATES.replace("pair-dropped", "pair-lost");
        assert_eq!(
            Catalogue::read(&unknown),
            Err(CatalogueError::UnknownKind("recall.pair-lost".to_owned()))
        );
        let negative = ESTIMATES.replace("held-wrong = 2", "held-wrong = -2");
        assert_eq!(Catalogue::read(&negative), Err(CatalogueError::NoWeight("start.held-wrong".to_owned())));
    }
}
