//! A random scramble from a seed that the page draws.

use cube::{Size, display_turns};
use search::random::seeded;
use search::scramble::{Event, scramble};
use search::solve4;
use serde::{Deserialize, Serialize};

use crate::Failure;
use crate::call::{Call, Progress};
use crate::names::size;

/// What is wanted.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Draw {
    /// Layers of the cube, 2 to 7.
    pub size: u8,
    /// The seed in two halves; the same seed gives the same scramble.
    pub seed: [u32; 2],
}

/// A scramble.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct RandomScramble {
    /// Its moves.
    pub moves: String,
}

/// The seed from its halves.
pub(crate) fn seed([high, low]: [u32; 2]) -> u64 {
    (u64::from(high) << 32) | u64::from(low)
}

/// Makes the tables that a size needs, and tells how far they are. The worker keeps them while it lives; who does not want to wait
/// ends it.
pub(crate) fn prepare(call: &mut Call<'_>, size: Size) -> Result<(), Failure> {
    if size == solve4::SIZE {
        solve4::prepare(&mut |hundredths| {
            (call.report)(Progress { done: u32::from(hundredths), of: Some(100) });
            true
        })
        .map_err(|error| Failure::new(error.to_string()))?;
    }
    Ok(())
}

pub(crate) fn random(call: &mut Call<'_>, draw: &Draw) -> Result<RandomScramble, Failure> {
    let size = size(call.voice, draw.size)?;
    prepare(call, size)?;
    let drawn = scramble(size, Event::Sighted, &mut seeded(seed(draw.seed)))
        .map_err(|error| Failure::new(error.to_string()))?;
    Ok(RandomScramble { moves: display_turns(drawn.turns()).to_string() })
}
