//! The engine as the browser sees it.
//!
//! A page sends a request (the name of a method and its arguments) and gets a view back: plain data that a screen
//! shows as it is. All methods stand in one table in [`methods`]; the TypeScript types of arguments and views are
//! written from the same table, so that the two sides cannot differ. [`Worker`] is the door that a web worker opens.
//!
//! ```
//! let mut engine = wasm::Engine::default();
//! let view = engine.call("about", "en", "{}", &mut |_| {}).unwrap();
//! assert!(view.contains(r#""code":"de""#));
//! ```

pub mod about;
mod browser;
pub mod check;
pub mod conventions;
mod failure;
pub mod lesson;
pub mod methods;
pub mod paint;
pub mod picture;
pub mod play;
pub mod scramble;
pub mod sequence;
pub mod situation;
pub mod texts;
pub mod trace;
#[cfg(test)]
mod typescript;
pub mod why;

pub use browser::Worker;
pub use failure::{Failure, Place};
pub use methods::Engine;
