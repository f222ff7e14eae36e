//! What hands find easy, as TOML: a whole model, or a person's own costs alone.

use crate::document::{Document, DocumentError, Place, Version};
use crate::key::Needs;
use crate::toml::{Entry, Keys, Toml, list, quoted, word};
use cube::{Algorithm, Size, Turn};
use search::ease::{Effort, Feature, Finger, Model, ModelError, Reach, Thumb, Way};
use std::fmt::Write as _;
use thiserror::Error;

/// The version that is written. Version 0, from before there were versions, says the same without its number.
pub const VERSION: Version = Version(1);

/// The most bytes that are read.
pub const MOST_BYTES: usize = 64 << 10;

/// The size whose notation names the turns; it has a turn of every sort that hands make.
const NOTATION: Size = Size::THREE;

/// Why a text is no model of hands.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum EaseError {
    /// Something that may be wrong with any document.
    #[error(transparent)]
    Document(#[from] DocumentError),
    /// What stands there is no single turn.
    #[error("{place}: `{text}` is no turn")]
    NoTurn {
        /// Where.
        place: Place,
        /// What stands there.
        text: String,
    },
    /// A turn that a way cannot be for.
    #[error("{place}: {turn} is no turn that a finger makes")]
    BadTurn {
        /// Where.
        place: Place,
        /// The turn.
        turn: Turn,
    },
    /// All can be read, but it is no model.
    #[error(transparent)]
    Model(#[from] ModelError),
}

/// Reads a whole model: the costs of everything under `[seconds]`, and the ways of turning, each under `[[way]]`.
///
/// # Errors
/// [`EaseError`] with the place of what cannot be read, is unknown or missing; for a turn that nothing makes.
///
/// ```
/// use formats::ease;
/// use search::ease::Model;
/// let usual = Model::built_in();
/// assert_eq!(ease::read(&ease::write(&usual)).unwrap(), usual);
/// let error = ease::read("version = 1\n[seconds]\nregripp = 1\n").unwrap_err();
/// assert!(error.to_string().starts_with("line 3, column 1: `regripp` means nothing here"));
/// ```
pub fn read(text: &str) -> Result<Model, EaseError> {
    let toml = Toml::read(text, MOST_BYTES)?;
    let (_, mut keys) = toml.versioned(Document::Ease, VERSION, &["seconds", "way"])?;
    let mut costs = keys.need("seconds")?.table()?.only(&Feature::ALL.map(Feature::name))?;
    let mut seconds = [0.0; Feature::COUNT];
    for feature in Feature::ALL {
        seconds[feature.index()] = cost(&costs.need(feature.name())?)?;
    }
    let mut read = Vec::new();
    for keys in keys.need("way")?.tables()? {
        read.extend(way(keys)?);
    }
    Ok(Model::new(seconds, read)?)
}

/// The same hands with the costs under `[seconds]` of a text, as [`write_costs`] writes them; costs that are not there stay.
///
/// # Errors
/// [`EaseError`] for what cannot be read and for unknown costs.
///
/// ```
/// use search::ease::{Feature, Model};
/// let slow = formats::ease::read_costs("[seconds]\nregrip = 0.5\n", &Model::built_in()).unwrap();
/// assert_eq!(slow.seconds()[Feature::Regrip.index()], 0.5);
/// ```
pub fn read_costs(text: &str, hands: &Model) -> Result<Model, EaseError> {
    let toml = Toml::read(text, MOST_BYTES)?;
    let (_, mut keys) = toml.versioned(Document::Ease, VERSION, &["seconds", "way"])?;
    // A whole model may stand there; its ways are not asked for.
    let mut costs = keys.need("seconds")?.table()?.only(&Feature::ALL.map(Feature::name))?;
    let mut seconds = *hands.seconds();
    for feature in Feature::ALL {
        if let Some(entry) = costs.take(feature.name()) {
            seconds[feature.index()] = cost(&entry)?;
        }
    }
    Ok(hands.with_seconds(seconds)?)
}

fn cost(entry: &Entry<'_>) -> Result<f64, DocumentError> {
    entry.number().filter(|&seconds| seconds >= 0.0).ok_or_else(|| entry.wrong_sort(Needs::Seconds))
}

/// The ways of one table, one a turn.
fn way(keys: Keys<'_>) -> Result<Vec<Way>, EaseError> {
    let mut keys = keys.only(&["turns", "finger", "cost", "easy", "uneasy"])?;
    let turns = keys.need("turns")?;
    let finger = keys.need("finger")?.word(&Finger::ALL, Finger::name)?;
    let effort = keys.need("cost")?.word(&Effort::ALL, Effort::name)?;
    let mut reach = [Reach::Never; 4];
    // What is easy in one place and uneasy in the same is easy.
    for (key, how) in [("uneasy", Reach::Uneasy), ("easy", Reach::Easy)] {
        for (name, place) in keys.need(key)?.texts()? {
            reach[word(name, place, &Thumb::ALL, Thumb::name)? as usize] = how;
        }
    }
    let mut ways = Vec::new();
    for (text, place) in turns.texts()? {
        let read = Algorithm::parse(text, NOTATION).map(|read| read.flatten()).unwrap_or_default();
        let &[turn] = read.as_slice() else {
            return Err(EaseError::NoTurn { place, text: text.to_owned() });
        };
        if !Model::is_by_finger(turn) {
            return Err(EaseError::BadTurn { place, turn });
        }
        ways.push(Way { turn, finger, effort, reach });
    }
    Ok(ways)
}

/// A person's costs as a text, with a line above that says what they are.
pub fn write_costs(seconds: &[f64; Feature::COUNT]) -> String {
    let mut text = format!("# Seconds for each thing the hands do.\nversion = {VERSION}\n\n[seconds]\n");
    for (feature, seconds) in Feature::ALL.into_iter().zip(seconds) {
        // Writing to a string cannot fail.
        let _ = writeln!(text, "{} = {seconds:?}", feature.name());
    }
    text
}

/// A whole model as a text.
pub fn write(model: &Model) -> String {
    let mut text = write_costs(model.seconds());
    let same = |a: &Way, b: &Way| (a.finger, a.effort, a.reach) == (b.finger, b.effort, b.reach);
    for ways in model.ways().chunk_by(same) {
        let Some(Way { finger, effort, reach, .. }) = ways.first() else { continue };
        let turns: Vec<String> = ways.iter().map(|way| way.turn.to_string()).collect();
        let with = |how: Reach| {
            list(
                Thumb::ALL
                    .into_iter()
                    .zip(reach)
                    .filter(|(_, it)| **it == how)
                    .map(|(thumb, _)| thumb.name()),
            )
        };
        let _ = write!(
            text,
            "\n[[way]]\nturns = {}\nfinger = {}\ncost = {}\neasy = {}\nuneasy = {}\n",
            list(turns.iter().map(String::as_str)),
            quoted(finger.name()),
            quoted(effort.name()),
            with(Reach::Easy),
            with(Reach::Uneasy),
        );
    }
    text
}
