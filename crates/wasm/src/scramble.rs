//! A random scramble from a seed that the page draws, perhaps one that meets the condition of a lesson.

use blind::{Lying, Sampler, lessons, put_down};
use cube::{Rotation, display_turns};
use formats::conditions;
use search::random::seeded;
use search::scramble::{Event, leading_to};
use serde::{Deserialize, Serialize};

use crate::Failure;
use crate::methods::{Call, Progress};
use crate::situation::size;

/// What is wanted.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Draw {
    /// Layers of the cube: 2 or 3.
    pub size: u8,
    /// The conventions as a file; conditions speak of its letters and buffers.
    pub conventions: String,
    /// The condition; empty: any state.
    pub condition: String,
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

/// A size.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct OfSize {
    /// Layers of the cube: 2 or 3.
    pub size: u8,
}

/// A condition that goes with a lesson.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Ready {
    /// What the lesson is called.
    pub title: String,
    /// The condition.
    pub condition: String,
}

/// The seed from its halves.
pub(crate) fn seed([high, low]: [u32; 2]) -> u64 {
    (u64::from(high) << 32) | u64::from(low)
}

/// The conditions of lessons for a size.
pub(crate) fn ready(call: &Call<'_>, of: &OfSize) -> Result<Vec<Ready>, Failure> {
    let size = size(call.voice, of.size)?;
    let for_size = lessons().iter().filter_map(|lesson| {
        let condition = lesson.condition(size)?.to_string();
        Some(Ready { title: call.voice.lesson(lesson), condition })
    });
    Ok(for_size.collect())
}

pub(crate) fn random(call: &mut Call<'_>, draw: &Draw) -> Result<RandomScramble, Failure> {
    let voice = call.voice;
    let size = size(voice, draw.size)?;
    let mut generator = seeded(seed(draw.seed));
    let broken = |error: &dyn std::error::Error| Failure::new(error.to_string());
    if draw.condition.trim().is_empty() {
        let drawn = search::scramble::scramble(size, Event::Sighted, &mut generator)
            .map_err(|error| broken(&error))?;
        return Ok(RandomScramble { moves: display_turns(drawn.turns()).to_string() });
    }
    let conventions = call.desk.conventions(voice, &draw.conventions)?;
    let method = call.desk.method(voice, [&draw.conventions, ""], &conventions, size)?;
    let method = method.as_ref().as_ref().map_err(|error| Failure::new(voice.method_error(error)))?;
    let condition = conditions::read(&draw.condition, size, &conventions)
        .map_err(|error| Failure::new(voice.condition_error(&error)))?;
    let sampler = Sampler::new(&condition, Lying::Scrambled, &conventions, method)
        .map_err(|error| Failure::new(voice.unsatisfiable(&error)))?;
    let held = sampler
        .draw(&mut generator, &mut |tries| {
            // Who does not want to wait longer ends the worker.
            (call.report)(Progress { done: u32::try_from(tries).unwrap_or(u32::MAX), of: None });
            true
        })
        .map_err(|error| broken(&error))?;
    let state = put_down(&held, &conventions, Rotation::NONE);
    let turns = leading_to(&state).map_err(|error| broken(&error))?;
    Ok(RandomScramble { moves: display_turns(&turns).to_string() })
}
