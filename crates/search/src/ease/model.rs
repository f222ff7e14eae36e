//! What hands can do and what it costs.

use super::built_in;
use cube::{Amount, Axis, Block, Face, Size, Slice, Turn};
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

/// Why there is no such model of hands.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Error)]
pub enum ModelError {
    /// A cost below zero or none at all.
    #[error("`{}` must be a number of seconds, zero or more", .0.name())]
    BadCost(Feature),
    /// A turn that a way cannot be for: the wrist makes it, or it is of more than one layer.
    #[error("{0} is no turn that a finger makes")]
    BadTurn(Turn),
    /// A turn that no way makes.
    #[error("there is no way to make {0}")]
    NoWay(Turn),
}

macro_rules! named {
    ($(#[$doc:meta])* $name:ident { $($(#[$item_doc:meta])* $item:ident $text:literal,)* }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
        pub enum $name { $($(#[$item_doc])* $item,)* }

        impl $name {
            /// All of them.
            pub const ALL: [Self; [$(Self::$item),*].len()] = [$(Self::$item),*];

            /// Its name in files.
            pub const fn name(self) -> &'static str {
                match self { $(Self::$item => $text,)* }
            }
        }
    };
}

named! {
    /// A finger that turns a layer.
    Finger {
        /// The thumb.
        Thumb "thumb",
        /// The index finger.
        Index "index",
        /// The ring finger.
        Ring "ring",
    }
}

named! {
    /// What a finger's turn counts as; a quarter and a half have costs of their own.
    Effort {
        /// A turn of U.
        Index "index",
        /// A turn of D.
        Ring "ring",
        /// A turn of F.
        Front "front",
        /// A turn of B.
        Back "back",
        /// A turn of M.
        Middle "middle",
        /// A turn of E or S.
        Cross "cross",
    }
}

impl Effort {
    /// What a turn by so much costs.
    pub const fn feature(self, amount: Amount) -> Feature {
        match (self, matches!(amount, Amount::Half)) {
            (Self::Index, false) => Feature::IndexQuarter,
            (Self::Index, true) => Feature::IndexHalf,
            (Self::Ring, false) => Feature::RingQuarter,
            (Self::Ring, true) => Feature::RingHalf,
            (Self::Front, false) => Feature::FrontQuarter,
            (Self::Front, true) => Feature::FrontHalf,
            (Self::Back, false) => Feature::BackQuarter,
            (Self::Back, true) => Feature::BackHalf,
            (Self::Middle, false) => Feature::MiddleQuarter,
            (Self::Middle, true) => Feature::MiddleHalf,
            (Self::Cross, false) => Feature::CrossQuarter,
            (Self::Cross, true) => Feature::CrossHalf,
        }
    }
}

/// How well a finger reaches a layer.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Reach {
    /// Not at all.
    Never,
    /// Well.
    Easy,
    /// Hardly, or only so that it pushes where it would rather pull.
    Uneasy,
}

/// A way for the right hand to make a turn by a finger; the left hand has its mirror image.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Way {
    /// The turn; a wide turn is made as the turn of its face.
    pub turn: Turn,
    /// The finger.
    pub finger: Finger,
    /// What it counts as.
    pub effort: Effort,
    /// How well the finger reaches for each place of the thumb, in the order of [`Thumb::ALL`](super::Thumb::ALL).
    pub reach: [Reach; 4],
}

/// A model of two hands.
///
/// ```
/// use search::ease::{Feature, Model};
/// let usual = Model::built_in();
/// let mut seconds = *usual.seconds();
/// seconds[Feature::Regrip.index()] = 0.5;
/// assert_ne!(usual.with_seconds(seconds).unwrap(), usual);
/// assert_eq!(Model::new(*usual.seconds(), usual.ways().to_vec()).unwrap(), usual);
/// ```
#[derive(Clone, PartialEq, Debug)]
pub struct Model {
    pub(super) seconds: [f64; Feature::COUNT],
    pub(super) ways: Vec<Way>,
}

/// Every sort of turn that hands make is there on a 3x3: deeper layers are turned as wide turns are.
const EVERY_SORT: Size = Size::THREE;

impl Model {
    /// The model with the project's own estimates.
    pub fn built_in() -> Self {
        Self { seconds: built_in::SECONDS, ways: built_in::ways() }
    }

    /// Hands that have these ways besides turns of R and L by the wrist, which are always there, and rotations.
    /// `seconds` are in the order of [`Feature::ALL`].
    ///
    /// # Errors
    /// [`ModelError`] for a cost that is none, a way for a turn that no finger makes, or a turn that has no way.
    pub fn new(seconds: [f64; Feature::COUNT], ways: Vec<Way>) -> Result<Self, ModelError> {
        if let Some(way) = ways.iter().find(|way| !Self::is_by_finger(way.turn)) {
            return Err(ModelError::BadTurn(way.turn));
        }
        let made = |turn: Turn| {
            ways.iter().any(|way| way.turn == Self::as_face(turn) || Self::is_mirror(way.turn, turn))
        };
        if let Some(turn) =
            Turn::all(EVERY_SORT).find(|&turn| Self::is_by_finger(Self::as_face(turn)) && !made(turn))
        {
            return Err(ModelError::NoWay(Self::as_face(turn)));
        }
        Self { seconds, ways }.with_seconds(seconds)
    }

    /// Whether a way can be for the turn: one layer that a finger turns, not the wrist.
    pub fn is_by_finger(turn: Turn) -> bool {
        let by_wrist = matches!(turn.block, Block::Outer { face: Face::R | Face::L, .. });
        !by_wrist && !turn.is_rotation() && Self::as_face(turn) == turn
    }

    /// The ways of the right hand, those by the wrist left out.
    pub fn ways(&self) -> &[Way] {
        &self.ways
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

#[cfg(test)]
mod tests {
    use super::*;
    use cube::Slice;

    #[test]
    fn the_built_in_model_is_whole() {
        let model = Model::built_in();
        assert!(model.seconds.iter().all(|&seconds| seconds > 0.0));
        assert_eq!(Model::new(model.seconds, model.ways.clone()), Ok(model));
        for feature in Feature::ALL {
            assert_eq!(Feature::named(feature.name()), Some(feature));
            assert_eq!(Feature::ALL[feature.index()], feature);
        }
    }

    #[test]
    fn what_is_wrong_is_told() {
        let usual = Model::built_in();
        let mut seconds = usual.seconds;
        for bad in [-1.0, f64::NAN, f64::INFINITY] {
            seconds[Feature::Wide.index()] = bad;
            assert_eq!(Model::new(seconds, usual.ways.clone()), Err(ModelError::BadCost(Feature::Wide)));
        }
        let change = |from: Turn, to: Turn| {
            let mut ways = usual.ways.clone();
            ways.iter_mut().filter(|way| way.turn == from).for_each(|way| way.turn = to);
            Model::new(usual.seconds, ways).unwrap_err()
        };
        let quarter = |face: Face| Turn::face(face, Amount::Clockwise);
        assert_eq!(change(quarter(Face::B), quarter(Face::R)), ModelError::BadTurn(quarter(Face::R)));
        let middle = Turn::new(Block::Slice(Slice::M), Amount::Clockwise);
        assert_eq!(change(middle, Turn { amount: Amount::Half, ..middle }), ModelError::NoWay(middle));
    }
}
