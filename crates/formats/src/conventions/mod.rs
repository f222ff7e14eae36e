//! Conventions: as a TOML file for people, and as JSON inside the browser. Both have the same keys and are read by the same
//! rules; only the file has places to name.

mod error;
mod json;
mod read;
mod write;

pub use error::{ConventionsError, Problem, Wants};
pub use json::{from_json, to_json};
pub use read::read;
pub use write::write;

use crate::document::Version;
use blind::Conventions;

/// Reads conventions as JSON or as a file, whichever a text is; nothing is the usual ones.
///
/// # Errors
/// As [`from_json`] and [`read`].
pub fn read_either(text: &str) -> Result<Conventions, ConventionsError> {
    if text.trim_start().starts_with('{') { from_json(text) } else { read(text) }
}

/// The version that is written. Version 0 is a file that does not say its version, as people write them; it is read by the same
/// keys. Up to version 1 only corners and edges were carried out, so nothing is said there of when the other kinds are.
pub const VERSION: Version = Version(2);

/// The most bytes that are read.
pub const MOST_BYTES: usize = 256 << 10;
