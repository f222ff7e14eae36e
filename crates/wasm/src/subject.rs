//! What a request about a sheet of algorithms is about.

use std::rc::Rc;

use blind::{Conventions, CycleCase};
use cube::{Orbit, Sticker};
use serde::Deserialize;
use sheet::{Report, Row, Sheet, Verdict};
use voice::Voice;

use crate::Failure;
use crate::call::Call;
use crate::document::DocumentName;
use crate::names::{kind, sticker};

/// What a request about a sheet is about.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Subject {
    /// The conventions.
    pub conventions: DocumentName,
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
pub(crate) struct SheetAccount {
    pub sheet: Rc<Sheet>,
    pub report: Rc<Report>,
}

impl Subject {
    pub(crate) fn named(&self, call: &mut Call<'_>) -> Result<Named, Failure> {
        let voice = call.voice;
        let conventions = call.desk.conventions(voice, &self.conventions)?.conventions;
        let orbit = sheet_kind(voice, &self.kind)?;
        let buffer = if self.buffer.is_empty() {
            conventions.kind(orbit).buffer
        } else {
            sticker(voice, orbit, &self.buffer)?
        };
        Ok(Named { conventions, orbit, buffer })
    }

    /// A sheet under the same conventions; none is an empty one.
    pub(crate) fn sheet(
        &self,
        call: &mut Call<'_>,
        name: Option<&DocumentName>,
    ) -> Result<SheetAccount, Failure> {
        let settled = call.desk.conventions(call.voice, &self.conventions)?;
        let sheet = call.desk.sheet(call.voice, &settled, name)?.sheet;
        let report = call.desk.searches.report(&sheet);
        Ok(SheetAccount { sheet, report })
    }
}

impl SheetAccount {
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
        let target = |name: &str| sticker(voice, orbit, name);
        CycleCase::new(orbit, buffer, target(first)?, target(second)?).ok_or_else(|| {
            Failure::new(voice.say("verdict-no-case", &[("named", format!("{first} {second}").into())]))
        })
    }
}

/// A kind of piece that sheets are for.
pub(crate) fn sheet_kind(voice: &Voice, name: &str) -> Result<Orbit, Failure> {
    let orbit = kind(voice, name)?;
    if sheet::kinds().contains(&orbit) {
        return Ok(orbit);
    }
    Err(Failure::new(voice.say("sheet-not-for-kind", &[("kinds", voice.kinds(orbit).into())])))
}
