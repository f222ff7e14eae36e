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
    read_kept(text).unwrap_or_else(|| read(text))
}

/// Reads conventions as they are kept, as JSON or nothing for the usual ones; `None` for another text, such as that of a file.
///
/// ```
/// use blind::Conventions;
/// use formats::conventions::{read_kept, to_json};
/// let usual = Conventions::default();
/// assert_eq!(read_kept(""), Some(Ok(usual.clone())));
/// assert_eq!(read_kept(&to_json(&usual)), Some(Ok(usual)));
/// assert_eq!(read_kept("[memo]"), None);
/// ```
pub fn read_kept(text: &str) -> Option<Result<Conventions, ConventionsError>> {
    let text = text.trim_start();
    if text.is_empty() {
        return Some(Ok(Conventions::default()));
    }
    text.starts_with('{').then(|| from_json(text))
}

/// The version that is written. Version 0 is a file that does not say its version, as people write them; it is read by the same
/// keys. Up to version 1 only corners and edges were carried out, so nothing is said there of when the other kinds are.
pub const VERSION: Version = Version(2);

/// The most bytes that are read.
pub const MOST_BYTES: usize = 256 << 10;
