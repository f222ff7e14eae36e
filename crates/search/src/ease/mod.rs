//! How easily an algorithm is turned: short is not fast.
//!
//! A [`Model`] says what two hands can do and what each thing costs in seconds. [`Model::estimate`] finds the cheapest
//! way for the hands to make all turns (exactly, by dynamic programming over how they hold the cube) and tells the
//! time, what it is made up of, and where a hand must take hold anew. [`best_first`] lists the algorithms for an effect in
//! order of that time. [`fit`] fits the costs to someone's own timings.
//!
//! The built-in costs are this project's own estimates. They say nothing about health: hours of fast
//! turning strain hands and wrists, so take breaks and stop when something hurts.
//!
//! ```
//! use cube::{Algorithm, Size};
//! use search::ease::Model;
//! let model = Model::built_in();
//! let seconds = |text| {
//!     model.estimate(&Algorithm::parse(text, Size::THREE).unwrap().flatten()).seconds
//! };
//! // Eight turns each; the one that turns the back face takes longer.
//! assert!(seconds("[R U R', D]") < seconds("[B U B', D]"));
//! ```

mod built_in;
mod fit;
mod hands;
mod model;
mod rank;

pub use built_in::alone;
pub use fit::{Cost, Fit, FitError, Plan, Timing, fit};
pub use hands::{Estimate, Hand, Regrip, Thumb};
pub use model::{Effort, Feature, Finger, Model, ModelError, Reach, Way};
pub use rank::{Ranked, Ranking, best_first};
