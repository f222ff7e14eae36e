//! What a request about a sheet of algorithms is about.

use std::rc::Rc;

use blind::sheet::{CycleCase, Report, Sheet};
use blind::{Conventions, kind_named};
use cube::{Orbit, Sticker};
use serde::Deserialize;
use voice::Voice;

use crate::Failure;
use crate::methods::Call;

/// What a request about a sheet is about.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Subject {
    /// The conventions as a file; empty for the usual ones.
    pub conventions: String,
    /// The sheet, as the engine wrote it; empty for none.
    pub sheet: String,
    /// The kind of piece, as files name it.
    pub kind: String,
    /// The buffer's sticker; empty for that of the conventions.
    pub buffer: String,
}

/// What a subject names.
pub(crate) struct Named {
    pub conventions: Rc<Conventions>,
    pub sheet: Rc<Sheet>,
    pub report: Rc<Report>,
    pub orbit: Orbit,
    pub buffer: Sticker,
}

impl Subject {
    pub(crate) fn named(&self, call: &mut Call<'_>) -> Result<Named, Failure> {
        let voice = call.voice;
        let conventions = call.desk.conventions(voice, &self.conventions)?;
        let sheet = call.desk.sheet(voice, &conventions, [&self.conventions, &self.sheet])?;
        let report = call.desk.searches.report(&sheet);
        let orbit = kind(voice, &self.kind)?;
        let buffer = if self.buffer.is_empty() {
            conventions.kind(orbit).buffer
        } else {
            orbit.sticker(&self.buffer).ok_or_else(|| no_sticker(voice, &self.buffer))?
        };
        Ok(Named { conventions, sheet, report, orbit, buffer })
    }
}

impl Named {
    /// The case of two targets.
    pub fn case(&self, voice: &Voice, first: &str, second: &str) -> Result<CycleCase, Failure> {
        let (orbit, buffer) = (self.orbit, self.buffer);
        let target = |name: &str| orbit.sticker(name).ok_or_else(|| no_sticker(voice, name));
        let case = CycleCase { orbit, buffer, first: target(first)?, second: target(second)? };
        let is_one = |other: &CycleCase| *other == case;
        CycleCase::all(orbit, buffer).find(is_one).ok_or_else(|| {
            Failure::new(voice.say("verdict-no-case", &[("named", format!("{first} {second}").into())]))
        })
    }
}

/// The kind with a name.
pub(crate) fn kind(voice: &Voice, name: &str) -> Result<Orbit, Failure> {
    kind_named(name).ok_or_else(|| no_sticker(voice, name))
}

fn no_sticker(voice: &Voice, text: &str) -> Failure {
    Failure::new(voice.say("no-such-sticker", &[("text", text.into())]))
}
