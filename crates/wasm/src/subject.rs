//! What a request about a sheet of algorithms is about.

use std::rc::Rc;

use blind::sheet::{CycleCase, Report, Row, Sheet, Verdict};
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
    /// The kind of piece, as files name it.
    pub kind: String,
    /// The buffer's sticker; empty for that of the conventions.
    pub buffer: String,
}

/// What a subject names.
pub(crate) struct Named {
    pub conventions: Rc<Conventions>,
    pub orbit: Orbit,
    pub buffer: Sticker,
}

/// A sheet with what each row of it does.
pub(crate) struct Checked {
    pub sheet: Rc<Sheet>,
    pub report: Rc<Report>,
}

impl Subject {
    pub(crate) fn named(&self, call: &mut Call<'_>) -> Result<Named, Failure> {
        let voice = call.voice;
        let conventions = call.desk.conventions(voice, &self.conventions)?;
        let orbit = kind(voice, &self.kind)?;
        let buffer = if self.buffer.is_empty() {
            conventions.kind(orbit).buffer
        } else {
            orbit.sticker(&self.buffer).ok_or_else(|| no_sticker(voice, &self.buffer))?
        };
        Ok(Named { conventions, orbit, buffer })
    }

    /// A sheet, as the engine wrote it; a text without anything in it is an empty one.
    pub(crate) fn sheet(call: &mut Call<'_>, text: &str) -> Result<Checked, Failure> {
        let sheet = call.desk.sheet(call.voice, text)?;
        let report = call.desk.searches.report(&sheet);
        Ok(Checked { sheet, report })
    }
}

impl Checked {
    /// The rows of a case.
    pub fn rows(&self, case: CycleCase) -> impl Iterator<Item = (&Row, &Verdict)> {
        let all = self.sheet.rows().iter().zip(&self.report.verdicts);
        all.filter(move |(row, _)| row.case == Some(case))
    }
}

impl Named {
    /// The case of two targets.
    pub fn case(&self, voice: &Voice, first: &str, second: &str) -> Result<CycleCase, Failure> {
        let (orbit, buffer) = (self.orbit, self.buffer);
        let target = |name: &str| orbit.sticker(name).ok_or_else(|| no_sticker(voice, name));
        CycleCase::new(orbit, buffer, target(first)?, target(second)?).ok_or_else(|| {
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
