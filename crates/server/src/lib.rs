//! The web app, served to this machine alone.
//!
//! The files of the built site are part of the program; nothing is read from disk while it runs. A program that was
//! built without the site serves one page that says how to get it.

mod connection;
mod encoding;
mod files;
mod guard;
mod holder;
mod range;
#[cfg(test)]
mod sample;
mod selected;
mod sentence;
mod start;
mod tags;

pub use holder::Holder;
pub use start::{ServeError, serve};

// Where a panic ends the process, one request that meets a fault would end the service for everybody.
#[cfg(not(panic = "unwind"))]
compile_error!("the server outlives a request that panics only where panics unwind: see [profile.release]");
