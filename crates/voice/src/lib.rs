//! Sentences for people: reasons, slips and errors, from one catalogue a language.
//!
//! The engine returns data; here it is said. How anything is computed is not known here. Messages are in Project
//! Fluent's format under `locales/`; every language has every message.
//!
//! ```
//! use blind::Conventions;
//! use cube::{Algorithm, Size};
//! use voice::{Language, Voice};
//! let voice = Voice::new(Language::English);
//! let error = Algorithm::parse("R U K", Size::THREE).unwrap_err();
//! assert!(voice.parse_error(&error).starts_with("Line 1, column 5:"));
//! ```

mod algs;
mod bench;
mod catalogue;
mod change;
mod check;
mod conventions;
mod documents;
mod fault;
mod glossary;
#[cfg(feature = "catalogues")]
mod help;
mod method;
mod notation;
mod observed;
mod puzzle;
mod reason;
mod record;
mod scramble;
mod screens;
mod views;
mod why;

pub use catalogue::{Language, SCREENS, Voice, excerpt};
pub use check::MOST_SLIPS;
pub use glossary::{Word, glossary};
#[cfg(feature = "catalogues")]
pub use help::Help;
