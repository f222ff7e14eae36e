//! The catalogue of slips as TOML: a weight for each kind under its stage, and letters that are taken for each other.

use crate::document::{Document, DocumentError, Version};
use crate::key::Needs;
use crate::toml::{Entry, Toml, list};
use diagnosis::{Alike, Catalogue, CatalogueError, SlipKind, Stage};
use std::fmt::Write as _;
use thiserror::Error;

/// The version that is written. Version 1 knew fewer kinds of slip; version 0, from before there were versions, says the same without
/// its number.
pub const VERSION: Version = Version(2);

/// What version 1 did not know.
const SINCE_2: [SlipKind; 14] = [
    SlipKind::OtherScramble,
    SlipKind::ScrambleTurnAdded,
    SlipKind::ScrambleTurnsExchanged,
    SlipKind::ScrambleMirrored,
    SlipKind::ScrambledInOtherHold,
    SlipKind::TracedFromOtherBuffer,
    SlipKind::LettersExchanged,
    SlipKind::KindsExchanged,
    SlipKind::KindForgotten,
    SlipKind::SetupLeftOut,
    SlipKind::SetupDoubled,
    SlipKind::SetupWrongWay,
    SlipKind::SetupUndoneTwice,
    SlipKind::BrokenOff,
];

/// The most bytes that are read.
pub const MOST_BYTES: usize = 64 << 10;

/// The keys at the top, but for the version.
const KEYS: [&str; 7] = ["strength", "slips", "start", "tracing", "recall", "execution", "alike"];

/// Why a text is no catalogue of slips.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum SlipsError {
    /// Something that may be wrong with any document.
    #[error(transparent)]
    Document(#[from] DocumentError),
    /// All can be read, but it is no catalogue.
    #[error(transparent)]
    Catalogue(#[from] CatalogueError),
}

/// Reads a catalogue.
///
/// # Errors
/// [`SlipsError`] with the place of what cannot be read, is unknown or missing.
///
/// ```
/// use diagnosis::Catalogue;
/// use formats::slips;
/// let usual = Catalogue::default();
/// assert_eq!(slips::read(&slips::write(&usual)).unwrap(), usual);
/// let error = slips::read("strength = 0").unwrap_err();
/// assert_eq!(error.to_string(), "line 1, column 12: `strength` needs a number above zero");
/// ```
pub fn read(text: &str) -> Result<Catalogue, SlipsError> {
    let toml = Toml::read(text, MOST_BYTES)?;
    let (version, mut keys) = toml.versioned(Document::Slips, VERSION, &KEYS)?;
    let strength = above_zero(&keys.need("strength")?)?;
    let shares = keys.need("slips")?;
    let slips = shares.numbers().and_then(|shares| <[f64; 3]>::try_from(shares).ok());
    let good = |shares: &[f64; 3]| shares.iter().all(|&share| share > 0.0);
    let slips = slips.filter(good).ok_or_else(|| shares.wrong_sort(Needs::ThreeShares))?;
    let mut weights = [0.0; SlipKind::ALL.len()];
    let unknown_then = |kind: &SlipKind| version < VERSION && SINCE_2.contains(kind);
    for stage in Stage::ALL {
        let kinds: Vec<SlipKind> = SlipKind::ALL.into_iter().filter(|kind| kind.stage() == stage).collect();
        let names: Vec<&str> = kinds.iter().map(|kind| kind.name()).collect();
        let mut table = keys.need(stage.name())?.table()?.only(&names)?;
        for kind in kinds.into_iter().filter(|kind| !unknown_then(kind)) {
            weights[kind.index()] = above_zero(&table.need(kind.name())?)?;
        }
    }
    // What could not be said then is estimated, in proportion to what was.
    let estimates = Catalogue::default();
    let (new, old): (Vec<SlipKind>, Vec<SlipKind>) = SlipKind::ALL.into_iter().partition(unknown_then);
    let said: f64 = old.iter().map(|kind| weights[kind.index()]).sum();
    let estimated: f64 = old.iter().map(|kind| estimates.weight(*kind)).sum();
    for kind in new {
        weights[kind.index()] = estimates.weight(kind) * said / estimated;
    }
    let mut groups = keys.need("alike")?.table()?.only(&["sound", "shape"])?;
    let texts = |entry: Entry<'_>| -> Result<Vec<String>, DocumentError> {
        Ok(entry.texts()?.into_iter().map(|(text, _)| text.to_owned()).collect())
    };
    let alike = Alike { sound: texts(groups.need("sound")?)?, shape: texts(groups.need("shape")?)? };
    Ok(Catalogue::new(weights, strength, slips, alike)?)
}

fn above_zero(entry: &Entry<'_>) -> Result<f64, DocumentError> {
    entry.number().filter(|&number| number > 0.0).ok_or_else(|| entry.wrong_sort(Needs::Share))
}

/// A catalogue as a text.
pub fn write(catalogue: &Catalogue) -> String {
    let mut text = format!(
        "# What goes wrong, and how often one kind of slip is made in comparison with the others. The weights count for\n\
         # `strength` slips that were confirmed.\nversion = {VERSION}\nstrength = {:?}\n\n\
         # Of attempts that fail: how many by one slip, by two, by three.\nslips = {:?}\n",
        catalogue.strength(),
        catalogue.slips(),
    );
    for stage in Stage::ALL {
        // Writing to a string cannot fail.
        let _ = writeln!(text, "\n[{}]", stage.name());
        for kind in SlipKind::ALL.into_iter().filter(|kind| kind.stage() == stage) {
            let _ = writeln!(text, "{} = {:?}", kind.name(), catalogue.weights()[kind.index()]);
        }
    }
    let Alike { sound, shape } = catalogue.groups();
    let groups = |groups: &[String]| list(groups.iter().map(String::as_str));
    let _ = write!(
        text,
        "\n# Letters that sound or look alike, in groups. A letter may be in several.\n[alike]\nsound = {}\nshape = {}\n",
        groups(sound),
        groups(shape),
    );
    text
}
