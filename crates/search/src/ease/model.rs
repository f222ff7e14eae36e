//! What hands can do and what it costs, as read from the data file.

use super::hands::Thumb;
use cube::{Algorithm, Amount, Axis, Block, Face, Size, Slice, Turn};
use thiserror::Error;
use toml_edit::{Document, Item, TableLike};

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
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub(super) enum Finger {
    Thumb,
    Index,
    Ring,
    Wrist,
}

impl Finger {
    /// The finger with a name; the wrist turns R and L, which no file lists.
    fn named(name: &str) -> Option<Self> {
        match name {
            "thumb" => Some(Self::Thumb),
            "index" => Some(Self::Index),
            "ring" => Some(Self::Ring),
            _ => None,
        }
    }
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

/// A table of the file, of which every key is looked at.
struct Written<'a> {
    place: &'static str,
    table: &'a dyn TableLike,
}

impl<'a> Written<'a> {
    /// # Errors
    /// When it is no table, or has a key that means nothing.
    fn of(item: &'a Item, place: &'static str, known: &[&str]) -> Result<Self, ModelError> {
        let table = item.as_table_like().ok_or_else(|| format_error(place, "must be a table"))?;
        match table.iter().find(|(key, _)| !known.is_empty() && !known.contains(key)) {
            Some((key, _)) => Err(format_error(place, &format!("has no key `{key}`"))),
            None => Ok(Self { place, table }),
        }
    }

    fn value<T>(
        &self,
        key: &str,
        what: &str,
        read: impl FnOnce(&'a Item) -> Option<T>,
    ) -> Result<T, ModelError> {
        let wrong = || format_error(self.place, &format!("needs `{key}`, {what}"));
        self.table.get(key).and_then(read).ok_or_else(wrong)
    }

    /// The costs that the file has, in the places of others.
    fn seconds(&self, mut seconds: [f64; Feature::COUNT]) -> Result<[f64; Feature::COUNT], ModelError> {
        for (name, cost) in self.value("seconds", "a table of costs", Item::as_table_like)?.iter() {
            let feature = Feature::named(name).ok_or_else(|| ModelError::UnknownCost(name.to_owned()))?;
            let whole = || cost.as_integer().map(|whole| whole as f64);
            let cost = cost.as_float().or_else(whole).filter(|cost| cost.is_finite());
            seconds[feature.index()] = cost.ok_or(ModelError::BadCost(feature))?;
        }
        Ok(seconds)
    }

    fn text(&self, key: &str) -> Result<&'a str, ModelError> {
        self.value(key, "a text", Item::as_str)
    }

    /// A list of texts, each read.
    fn list<T>(
        &self,
        key: &str,
        what: &str,
        read: impl Fn(&'a str) -> Option<T>,
    ) -> Result<Vec<T>, ModelError> {
        self.value(key, what, |item| {
            item.as_array()?.iter().map(|value| read(value.as_str()?)).collect::<Option<Vec<T>>>()
        })
    }
}

fn format_error(place: &str, what: &str) -> ModelError {
    ModelError::Format(format!("`{place}` {what}"))
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
        let file = Document::parse(text).map_err(|error| ModelError::Format(error.to_string()))?;
        let file = Written::of(file.as_item(), "the file", &["seconds", "way"])?;
        let mut ways = Vec::new();
        for way in file.value("way", "one or more tables", Item::as_array_of_tables)? {
            let item = Item::Table(way.clone());
            let way = Written::of(&item, "way", &["turns", "finger", "cost", "easy", "uneasy"])?;
            for name in way.list("turns", "a list of turns", Some)? {
                ways.push(read_way(&way, name)?);
            }
        }
        let seconds = file.seconds([f64::NAN; Feature::COUNT])?;
        if let Some(feature) = Feature::ALL.into_iter().find(|feature| seconds[feature.index()].is_nan()) {
            return Err(ModelError::MissingCost(feature));
        }
        let model = Self { seconds, ways }.with_seconds(seconds)?;
        let by_fingers = Turn::all(Size::THREE)
            .filter(|turn| turn.block.axis() != Axis::X || turn.block == Block::Slice(Slice::M));
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

    /// The same hands with the costs under `[seconds]` of a text; costs
    /// that are not there stay.
    ///
    /// # Errors
    /// [`ModelError`] for what cannot be read and for unknown costs.
    ///
    /// ```
    /// use search::ease::Model;
    /// let slow = Model::built_in().with_costs("[seconds]\nregrip = 0.5\n").unwrap();
    /// assert_ne!(slow, Model::built_in());
    /// ```
    pub fn with_costs(&self, text: &str) -> Result<Self, ModelError> {
        let file = Document::parse(text).map_err(|error| ModelError::Format(error.to_string()))?;
        self.with_seconds(Written::of(file.as_item(), "the file", &[])?.seconds(self.seconds)?)
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

    /// A wide turn read as the turn of its face, and inner layers as the slice between the same faces.
    pub(super) const fn as_face(turn: Turn) -> Turn {
        match turn.block {
            Block::Outer { face, .. } => Turn::face(face, turn.amount),
            Block::Inner { face, .. } => {
                let slice = Slice::on(face.axis());
                let same = slice.follows() as u8 == face as u8;
                Turn::new(Block::Slice(slice), if same { turn.amount } else { turn.amount.inverse() })
            }
            Block::Slice(_) | Block::Whole(_) => turn,
        }
    }

    fn is_mirror(way: Turn, turn: Turn) -> bool {
        way.mirrored(Axis::X) == Self::as_face(turn)
    }
}

fn read_way(way: &Written<'_>, name: &str) -> Result<Way, ModelError> {
    let bad = || ModelError::BadTurn(name.to_owned());
    let turns = Algorithm::parse(name, Size::THREE).map_err(|_| bad())?.flatten();
    let &[turn] = turns.as_slice() else { return Err(bad()) };
    let by_wrist = matches!(turn.block, Block::Outer { face: Face::R | Face::L, .. });
    if by_wrist || turn.is_rotation() {
        return Err(bad());
    }
    let finger = way.value("finger", "thumb, index or ring", |item| Finger::named(item.as_str()?))?;
    let amount = if turn.amount == Amount::Half { "half" } else { "quarter" };
    let cost = format!("{}-{amount}", way.text("cost")?);
    let cost = Feature::named(&cost).ok_or(ModelError::UnknownCost(cost))?;
    let thumbs = "a list of down, front, up and back";
    let (easy, uneasy) = (way.list("easy", thumbs, Thumb::named)?, way.list("uneasy", thumbs, Thumb::named)?);
    let reach = Thumb::ALL.map(|thumb| {
        if easy.contains(&thumb) {
            Some(true)
        } else if uneasy.contains(&thumb) {
            Some(false)
        } else {
            None
        }
    });
    Ok(Way { turn, finger, cost, reach })
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
        assert!(matches!(change("[\"down\", \"front\"]", "[\"sideways\"]"), ModelError::Format(_)));
        assert!(matches!(change("finger = \"thumb\"", "finger = \"wrist\""), ModelError::Format(_)));
        assert!(matches!(change("finger =", "toe ="), ModelError::Format(_)));
        for text in ["seconds = 1", "way = 1", "[seconds", "[[way]]", "[seconds]\n[way]\n"] {
            assert!(matches!(Model::parse(text), Err(ModelError::Format(_))), "{text}");
        }
    }
}
