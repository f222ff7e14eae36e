//! Changing a sheet and saving it in other forms.

use ::sheet::{Origin, Row, SIZE, Verdict, verdict_of};
use blind::kind_name;
use draw::{Grid, GridWords};
use formats::sheet;
use serde::{Deserialize, Serialize};

use crate::Failure;
use crate::call::Call;
use crate::document::DocumentName;
use crate::subject::Subject;

/// A change that is wanted.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Amended {
    /// What is changed of it.
    pub subject: Subject,
    /// The sheet; none for an empty one.
    pub sheet: Option<DocumentName>,
    /// What is to be changed.
    pub change: Amendment,
}

/// A change of a sheet.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(tag = "what", rename_all = "lowercase")]
#[cfg_attr(test, derive(ts_rs::TS))]
pub enum Amendment {
    /// An algorithm is taken in, if it is right.
    Take {
        /// The first target's sticker.
        first: String,
        /// The second target's sticker.
        second: String,
        /// As it is written.
        algorithm: String,
    },
    /// An algorithm is taken out.
    Drop {
        /// The first target's sticker.
        first: String,
        /// The second target's sticker.
        second: String,
        /// As it is written.
        algorithm: String,
    },
    /// A row whose case cannot be read is taken out.
    Discard {
        /// What it says of the case.
        named: String,
        /// As it is written.
        algorithm: String,
    },
    /// Cases without a right algorithm get one.
    Fill {},
    /// All algorithms of the buffer are taken out.
    Clear {},
}

/// A sheet after a change.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Revised {
    /// The sheet.
    pub sheet: String,
    /// What was done.
    pub said: String,
}

/// A form that is wanted.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Exported {
    /// What is saved of it.
    pub subject: Subject,
    /// The sheet; none for an empty one.
    pub sheet: Option<DocumentName>,
    /// The form.
    pub form: Form,
}

/// The form of a file.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
#[cfg_attr(test, derive(ts_rs::TS))]
pub enum Form {
    /// The whole sheet as a list, all kinds and buffers.
    Csv,
    /// The algorithms of the buffer as a table, those that are not right behind the others and marked.
    Markdown,
    /// The algorithms of the buffer as a grid to print, those that are not right marked and told below.
    Html,
}

/// A file to save.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct SheetFile {
    /// Its name.
    pub name: String,
    /// What is in it.
    pub text: String,
    /// Its media type.
    pub media: &'static str,
}

pub(crate) fn amend(call: &mut Call<'_>, amended: &Amended) -> Result<Revised, Failure> {
    let voice = call.voice;
    let named = amended.subject.named(call)?;
    let kept = amended.subject.sheet(call, amended.sheet.as_ref())?;
    let sheet = &kept.sheet;
    let (sheet, said) = match &amended.change {
        Amendment::Take { first, second, algorithm } => {
            let case = named.case(voice, first, second)?;
            let written = crate::names::algorithm(voice, SIZE, algorithm)?.to_string();
            let verdict = verdict_of(case, &written);
            let taken = sheet.with(case, &written, Origin::Sheet);
            if verdict != Verdict::Right {
                let row = taken.rows().iter().rev().find(|row| row.case == Some(case));
                let said =
                    row.map_or_else(String::new, |row| voice.verdict(row, &verdict, &named.conventions));
                return Err(Failure::new(voice.say("way-refused", &[("verdict", said.into())])));
            }
            (taken, voice.word("way-taken"))
        }
        Amendment::Drop { first, second, algorithm } => {
            (sheet.without(named.case(voice, first, second)?, algorithm), voice.word("way-dropped"))
        }
        Amendment::Discard { named, algorithm } => {
            (sheet.without_unread(named, algorithm), voice.word("way-dropped"))
        }
        Amendment::Fill {} => {
            let model = call.desk.searches.model();
            let filled = sheet.fill(named.orbit, named.buffer, &model);
            (filled.sheet, voice.filled(&filled.by_origin))
        }
        Amendment::Clear {} => (sheet.without_buffer(named.orbit, named.buffer), voice.word("sheet-cleared")),
    };
    // A sheet without a row is none.
    let sheet = if sheet.rows().is_empty() { String::new() } else { sheet::keep(&sheet) };
    Ok(Revised { sheet, said })
}

pub(crate) fn export(call: &mut Call<'_>, exported: &Exported) -> Result<SheetFile, Failure> {
    let voice = call.voice;
    let named = exported.subject.named(call)?;
    let kept = exported.subject.sheet(call, exported.sheet.as_ref())?;
    let (sheet, conventions, orbit, buffer) = (&kept.sheet, &named.conventions, named.orbit, named.buffer);
    let stem = format!("hoodwink-{}-{}", kind_name(orbit), orbit.name(buffer));
    Ok(match exported.form {
        Form::Csv => SheetFile {
            name: "hoodwink-sheet.csv".to_owned(),
            text: sheet::to_csv(sheet, conventions),
            media: "text/csv",
        },
        Form::Markdown => {
            let columns = ["letters", "targets", "algorithm", "moves", "notes", "check"]
                .map(|name| voice.word(&format!("column-{name}")));
            let columns = columns.each_ref().map(String::as_str);
            let said = |row: &Row, verdict: &Verdict| voice.verdict(row, verdict, conventions);
            let text = sheet::to_markdown(sheet, orbit, buffer, conventions, columns, &said);
            SheetFile { name: format!("{stem}.md"), text, media: "text/markdown" }
        }
        Form::Html => {
            let words = GridWords {
                title: voice.grid_title(orbit, buffer, &conventions.kind(orbit).letters),
                language: voice.language().tag().to_owned(),
                corner: voice.word("grid-first-second"),
                refused: voice.word("grid-refused"),
            };
            let refused = |row: &Row, verdict: &Verdict| voice.refused_row(row, verdict, conventions);
            let text = Grid::of(sheet, orbit, buffer, conventions, words, refused).html();
            SheetFile { name: format!("{stem}.html"), text, media: "text/html" }
        }
    })
}
