//! Scrambles that meet a condition, and the conditions that go with lessons.

use choose::{Lying, Sampler, lessons, put_down};
use cube::{Rotation, display_turns};
use search::random::seeded;
use search::scramble::leading_to;
use serde::{Deserialize, Serialize};

use crate::Failure;
use crate::call::{Call, Progress};
use crate::document::DocumentName;
use crate::names::size;
use crate::scramble::{RandomScramble, prepare, seed};

/// A scramble that is wanted.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct ConditionalDraw {
    /// Layers of the cube: 2 to 4.
    pub size: u8,
    /// The conventions; conditions speak of their letters and buffers.
    pub conventions: DocumentName,
    /// The condition.
    pub condition: String,
    /// The seed in two halves; the same seed gives the same scramble.
    pub seed: [u32; 2],
}

/// A size.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct OfSize {
    /// Layers of the cube: 2 to 7.
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

/// The conditions of lessons for a size.
pub(crate) fn ready(call: &Call<'_>, of: &OfSize) -> Result<Vec<Ready>, Failure> {
    let size = size(call.voice, of.size)?;
    let for_size = lessons().iter().filter_map(|lesson| {
        let condition = lesson.condition(size)?.clone();
        Some(Ready { title: call.voice.lesson(lesson), condition: condition.to_string() })
    });
    Ok(for_size.collect())
}

pub(crate) fn conditional(call: &mut Call<'_>, draw: &ConditionalDraw) -> Result<RandomScramble, Failure> {
    let voice = call.voice;
    let size = size(voice, draw.size)?;
    prepare(call, size)?;
    let settled = call.desk.conventions(voice, &draw.conventions)?;
    let solver = call.desk.solver(size, &settled, None);
    let condition = formats::conditions::read(&draw.condition, size, solver.conventions())
        .map_err(|error| Failure::new(voice.condition_error(&error)))?;
    let sampler = Sampler::new(&condition, Lying::Scrambled, &solver)
        .map_err(|error| Failure::new(voice.unsatisfiable(&error)))?;
    let broken = |error: &dyn std::error::Error| Failure::new(error.to_string());
    let mut generator = seeded(seed(draw.seed));
    let held = sampler
        .draw(&mut generator, &mut |tries| {
            // Who does not want to wait longer ends the worker.
            (call.report)(Progress { done: u32::try_from(tries).unwrap_or(u32::MAX), of: None });
            true
        })
        .map_err(|error| broken(&error))?;
    let state = put_down(&held, solver.conventions(), Rotation::NONE);
    let turns = leading_to(&state).map_err(|error| broken(&error))?;
    Ok(RandomScramble { moves: display_turns(&turns).to_string() })
}
