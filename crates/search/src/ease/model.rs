//! What hands can do and what it costs, as read from the data file.

use super::hands::Thumb;
use cube::{Algorithm, Amount, Axis, Block, Face, Size, Turn};
use serde::Deserialize;
use std::collections::BTreeMap;
use thiserror::Error;

/// One thing that hands do and that costs time. The estimated time of an algorithm is the sum over these of how often
/// it is done times its seconds.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, PartialOrd, Ord)]
#[repr(u8)]
pub enum Feature {
    /// To begin at all, once.
    Start,
    /// The wrist turns R or L by a quarter.
    WristQuarter,
    /// The wrist turns R or L by a half.
    WristHalf,
    /// An index finger turns U by a quarter.
    IndexQuarter,
    /// An index finger turns U by a half.
    IndexHalf,
    /// A ring finger turns D by a quarter.
    RingQuarter,
    /// A ring finger turns D by a half.
    RingHalf,
    /// F is turned by a quarter.
    FrontQuarter,
    /// F is turned by a half.
    FrontHalf,
    /// B is turned by a quarter.
    BackQuarter,
    /// B is turned by a half.
    BackHalf,
    /// M is turned by a quarter.
    MiddleQuarter,
    /// M is turned by a half.
    MiddleHalf,
    /// E or S is turned by a quarter.
    CrossQuarter,
    /// E or S is turned by a half.
    CrossHalf,
    /// More than one layer turns.
    Wide,
    /// The finger hardly reaches, or pushes.
    Uneasy,
    /// The finger that has just moved moves again.
    Again,
    /// A turn made together with the one before, by the other hand.
    Together,
    /// A hand takes hold anew.
    Regrip,
    /// The whole cube is turned.
    Rotation,
}

impl Feature {
    /// How many there are.
    pub const COUNT: usize = 21;

    /// All of them.
    pub const ALL: [Self; Self::COUNT] = [
        Self::Start,
        Self::WristQuarter,
        Self::WristHalf,
        Self::IndexQuarter,
        Self::IndexHalf,
        Self::RingQuarter,
        Self::RingHalf,
        Self::FrontQuarter,
        Self::FrontHalf,
        Self::BackQuarter,
        Self::BackHalf,
        Self::MiddleQuarter,
        Self::MiddleHalf,
        Self::CrossQuarter,
        Self::CrossHalf,
        Self::Wide,
        Self::Uneasy,
        Self::Again,
        Self::Together,
        Self::Regrip,
        Self::Rotation,
    ];

    /// Its place in [`Feature::ALL`].
    pub const fn index(self) -> usize {
        self as usize
    }

    /// Its name in data files.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Start => "start",
            Self::WristQuarter => "wrist-quarter",
            Self::WristHalf => "wrist-half",
            Self::IndexQuarter => "index-quarter",
            Self::IndexHalf => "index-half",
            Self::RingQuarter => "ring-quarter",
            Self::RingHalf => "ring-half",
            Self::FrontQuarter => "front-quarter",
            Self::FrontHalf => "front-half",
            Self::BackQuarter => "back-quarter",
            Self::BackHalf => "back-half",
            Self::MiddleQuarter => "middle-quarter",
            Self::MiddleHalf => "middle-half",
            Self::CrossQuarter => "cross-quarter",
            Self::CrossHalf => "cross-half",
            Self::Wide => "wide",
            Self::Uneasy => "uneasy",
            Self::Again => "again",
            Self::Together => "together",
            Self::Regrip => "regrip",
            Self::Rotation => "rotation",
        }
    }

    /// The feature with a name.
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|feature| feature.name() == name)
    }
}

/// Why a text is no model of hands.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum ModelError {
    /// Not the format at all, or something is missing.
    #[error("{0}")]
    Format(String),
    /// A cost that does not exist.
    #[error("`{0}` is no cost; the costs are {known}", known = Feature::ALL.map(Feature::name).join(", "))]
    UnknownCost(String),
    /// A cost that is not given.
    #[error("`{}` is missing under [seconds]", .0.name())]
    MissingCost(Feature),
    /// A cost below zero or none at all.
    #[error("`{}` must be a number of seconds, zero or more", .0.name())]
    BadCost(Feature),
    /// A turn that a way cannot be for.
    #[error("`{0}` is no turn that a finger makes")]
    BadTurn(String),
    /// A turn that no way makes.
    #[error("there is no way to make {0}")]
    NoWay(Turn),
}

/// The finger of a hand, or its wrist.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, Deserialize)]
#[serde(rename_all = "lowercase")]
pub(super) enum Finger {
    Thumb,
    Index,
    Ring,
    Wrist,
}

/// A way for the right hand to make a turn by a finger.
#[derive(Clone, PartialEq, Debug)]
pub(super) struct Way {
    pub turn: Turn,
    pub finger: Finger,
    pub cost: Feature,
    /// For each place of the thumb: not at all, easily, or not so.
    pub reach: [Option<bool>; 4],
}

/// A model of two hands.
#[derive(Clone, PartialEq, Debug)]
pub struct Model {
    pub(super) seconds: [f64; Feature::COUNT],
    pub(super) ways: Vec<Way>,
}

const BUILT_IN: &str = include_str!("../../data/ease.toml");

/// The file as it is written.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Written {
    seconds: BTreeMap<String, f64>,
    way: Vec<WrittenWay>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct WrittenWay {
    turns: Vec<String>,
    finger: Finger,
    cost: String,
    easy: Vec<Thumb>,
    uneasy: Vec<Thumb>,
}

impl Model {
    /// The model with the project's own estimates, from `data/ease.toml`.
    ///
    /// # Panics
    /// Never: a test reads the file that is built in.
    pub fn built_in() -> Self {
        Self::parse(BUILT_IN).expect("the built-in model is read in a test")
    }

    /// Reads a model in the format of `data/ease.toml`.
    ///
    /// # Errors
    /// [`ModelError`] for what cannot be read, unknown or missing costs, and turns that nothing makes.
    pub fn parse(text: &str) -> Result<Self, ModelError> {
        let written: Written = toml::from_str(text).map_err(|error| ModelError::Format(error.to_string()))?;
        let mut ways = Vec::new();
        for way in &written.way {
            for name in &way.turns {
                ways.push(read_way(way, name)?);
            }
        }
        let mut seconds = [f64::NAN; Feature::COUNT];
        for (name, &cost) in &written.seconds {
            let feature = Feature::named(name).ok_or_else(|| ModelError::UnknownCost(name.clone()))?;
            if !cost.is_finite() {
                return Err(ModelError::BadCost(feature));
            }
            seconds[feature.index()] = cost;
        }
        if let Some(feature) = Feature::ALL.into_iter().find(|feature| seconds[feature.index()].is_nan()) {
            return Err(ModelError::MissingCost(feature));
        }
        let model = Self { seconds, ways }.with_seconds(seconds)?;
        let by_fingers = Turn::all(Size::THREE)
            .filter(|turn| turn.block.axis() != Axis::X || turn.block == Block::Slice(cube::Slice::M));
        for turn in by_fingers.filter(|turn| !turn.is_rotation()) {
            if !model
                .ways
                .iter()
                .any(|way| way.turn == Self::as_face(turn) || Self::is_mirror(way.turn, turn))
            {
                return Err(ModelError::NoWay(turn));
            }
        }
        Ok(model)
    }

    /// The same hands with other costs, in the order of [`Feature::ALL`].
    ///
    /// # Errors
    /// [`ModelError::BadCost`] for one that is negative or no number.
    pub fn with_seconds(&self, seconds: [f64; Feature::COUNT]) -> Result<Self, ModelError> {
        let good =
            |feature: &Feature| seconds[feature.index()].is_finite() && seconds[feature.index()] >= 0.0;
        match Feature::ALL.into_iter().find(|feature| !good(feature)) {
            Some(feature) => Err(ModelError::BadCost(feature)),
            None => Ok(Self { seconds, ways: self.ways.clone() }),
        }
    }

    /// The seconds that each feature costs, in the order of [`Feature::ALL`].
    pub const fn seconds(&self) -> &[f64; Feature::COUNT] {
        &self.seconds
    }

    /// A wide turn read as the turn of its face.
    pub(super) const fn as_face(turn: Turn) -> Turn {
        match turn.block {
            Block::Outer { face, .. } => Turn::face(face, turn.amount),
            _ => turn,
        }
    }

    fn is_mirror(way: Turn, turn: Turn) -> bool {
        way.mirrored(Axis::X) == Self::as_face(turn)
    }
}

fn read_way(way: &WrittenWay, name: &str) -> Result<Way, ModelError> {
    let bad = || ModelError::BadTurn(name.to_owned());
    let turns = Algorithm::parse(name, Size::THREE).map_err(|_| bad())?.flatten();
    let &[turn] = turns.as_slice() else { return Err(bad()) };
    let by_wrist = matches!(turn.block, Block::Outer { face: Face::R | Face::L, .. });
    if by_wrist || turn.is_rotation() || way.finger == Finger::Wrist {
        return Err(bad());
    }
    let amount = if turn.amount == Amount::Half { "half" } else { "quarter" };
    let cost = format!("{}-{amount}", way.cost);
    let cost = Feature::named(&cost).ok_or(ModelError::UnknownCost(cost))?;
    let reach = Thumb::ALL.map(|thumb| {
        if way.easy.contains(&thumb) {
            Some(true)
        } else if way.uneasy.contains(&thumb) {
            Some(false)
        } else {
            None
        }
    });
    Ok(Way { turn, finger: way.finger, cost, reach })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_built_in_model_is_whole() {
        let model = Model::parse(BUILT_IN).unwrap();
        assert!(model.seconds.iter().all(|&seconds| seconds > 0.0));
        for feature in Feature::ALL {
            assert_eq!(Feature::named(feature.name()), Some(feature));
            assert_eq!(Feature::ALL[feature.index()], feature);
        }
    }

    #[test]
    fn what_is_wrong_is_told() {
        let change = |from: &str, to: &str| Model::parse(&BUILT_IN.replace(from, to)).unwrap_err();
        assert_eq!(change("wide = 0.03", ""), ModelError::MissingCost(Feature::Wide));
        assert_eq!(change("wide = 0.03", "wide = -1"), ModelError::BadCost(Feature::Wide));
        assert_eq!(change("wide = 0.03", "wide = nan"), ModelError::BadCost(Feature::Wide));
        assert!(matches!(change("wide =", "broad ="), ModelError::UnknownCost(name) if name == "broad"));
        assert!(matches!(change("[\"B\"]", "[\"R\"]"), ModelError::BadTurn(_)));
        assert!(matches!(change("[\"M\"]", "[\"M2\"]"), ModelError::NoWay(_)));
        assert!(matches!(Model::parse("seconds = 1"), Err(ModelError::Format(_))));
    }
}
