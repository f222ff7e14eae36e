//! The engine as the browser sees it.
//!
//! A page sends a request (the name of a method and its arguments) and gets a view back: plain data that a screen
//! shows as it is. All methods stand in one table in [`methods`]; the TypeScript types of arguments and views are
//! written from the same table, so that the two sides cannot differ. [`Worker`] is the door that a web worker opens.
//!
//! The crate is built twice for a site. With the feature `first` alone it has what a page needs at its first use; with
//! `algorithms` alone, the work on sheets of algorithms, which a page loads when that is begun. Programs and tests have both.
//!
//! ```
//! let mut engine = wasm::Engine::default();
//! let view = engine.call("about", "en", "{}", &mut |_| {}).unwrap();
//! assert!(view.contains(r#""code":"de""#));
//! ```

#[cfg(feature = "first")]
pub mod about;
#[cfg(feature = "algorithms")]
pub mod amend;
mod browser;
#[cfg(feature = "algorithms")]
pub mod case;
#[cfg(feature = "first")]
pub mod check;
#[cfg(feature = "first")]
pub mod conventions;
mod desk;
mod failure;
#[cfg(feature = "algorithms")]
pub mod import;
#[cfg(feature = "first")]
pub mod lesson;
pub mod look;
pub mod methods;
#[cfg(feature = "first")]
pub mod paint;
#[cfg(feature = "first")]
pub mod picture;
#[cfg(feature = "first")]
pub mod play;
#[cfg(feature = "first")]
pub mod scramble;
#[cfg(feature = "algorithms")]
mod searches;
#[cfg(feature = "first")]
pub mod sequence;
#[cfg(feature = "algorithms")]
pub mod sheet;
#[cfg(feature = "first")]
pub mod situation;
#[cfg(feature = "algorithms")]
pub mod subject;
#[cfg(feature = "first")]
pub mod texts;
#[cfg(feature = "first")]
pub mod trace;
#[cfg(test)]
mod typescript;
#[cfg(feature = "first")]
pub mod why;

pub use browser::Worker;
pub use failure::{Failure, Place};
pub use methods::Engine;
