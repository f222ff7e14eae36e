//! The engine as the browser sees it.
//!
//! A page sends a request (the name of a method and its arguments) and gets a view back: plain data that a screen
//! shows as it is. All methods stand in one table in [`methods`]; the TypeScript types of arguments and views are
//! written from the same table, so that the two sides cannot differ. [`Worker`] is the door that a web worker opens.
//!
//! What requests are about is told once a change as a document ([`Engine::put`]) and named in them by handle and revision; what is
//! made from documents is kept as long as they are.
//!
//! The crate is built three times for a site, as three modules. With the feature `first` alone it answers what the first screen needs;
//! with `rest` alone what changes conventions and sheets and reads files; with `deep` alone what looks into an attempt and
//! draws scrambles. The two latter a page loads when it has nothing else to do or when they are first asked for. What no answer of a module uses
//! the linker leaves out. Programs and tests have all.
//!
//! ```
//! let mut engine = wasm::Engine::default();
//! let view = engine.call("about", "en", "{}", &mut |_| {}).unwrap();
//! assert!(view.contains(r#""code":"de""#));
//! ```

pub mod about;
pub mod amend;
pub mod bench;
mod browser;
mod call;
pub mod case;
pub mod check;
pub mod condition;
pub mod conventions;
mod desk;
mod document;
mod failure;
pub mod glossary;
pub mod import;
mod kept;
pub mod lesson;
pub mod link;
pub mod look;
pub mod methods;
pub mod moment;
mod names;
pub mod paint;
pub mod picture;
pub mod play;
pub mod records;
pub mod said;
pub mod scene;
pub mod scramble;
mod searches;
pub mod sequence;
pub mod sheet;
pub mod situation;
pub mod subject;
mod tables;
pub mod texts;
mod told;
pub mod trace;
#[cfg(test)]
mod typescript;
pub mod why;

pub use browser::Worker;
pub use call::Progress;
pub use document::{DocumentKind, DocumentName, PuzzleContent};
pub use failure::{Failure, Place};
pub use methods::Engine;
