//! Documents: how what people and programs keep and exchange is read and written, version by version.
//!
//! The engine knows no file. A document is read here, once, into a value that cannot be wrong, or refused with its place
//! ([`DocumentError`] and the errors of each reader, which crate `voice` says). Whatever is stored has a version
//! ([`Version`]) and, under `samples/`, a sample of every version there ever was, which must read for ever. A document of a
//! newer version is refused and left as it is. Every reader has a bound in bytes.

pub mod conditions;
pub mod conventions;
mod document;
pub mod ease;
mod key;
pub mod link;
pub mod moment;
pub mod observed;
pub mod records;
pub mod results;
pub mod sheet;
pub mod slips;
pub mod state_text;
pub mod text;
pub mod timings;
mod toml;

pub use document::{Document, DocumentError, Place, Twin, Version, from_json, to_json, within};
pub use key::{KeyProblem, Needs};
