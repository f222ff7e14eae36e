//! How good am I, what next: attempts, rounds by the rules, statistics that say how sure they are, and plans.
//!
//! Nothing here knows where attempts are kept or what a puzzle is: it sees results, durations, counts of letters, and names of
//! what was practised. The clock and the random source are arguments.

pub mod edition;
pub mod encoding;
pub mod forecast;
pub mod letters;
pub mod many;
pub mod pooled;
pub mod quantile;
pub mod rate;
pub mod result;
pub mod round;
pub mod time;

pub use edition::Edition;
pub use result::Outcome;
pub use time::Time;
