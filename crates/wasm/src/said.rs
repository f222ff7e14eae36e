//! The puzzle for those who cannot see it: in words and as a table.

use blind::Action;
use cube::{Face, Turn};
use serde::{Deserialize, Serialize};

use crate::Failure;
use crate::call::Call;
use crate::situation::Source;

/// A puzzle that is to be said.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct ToSay {
    /// The puzzle.
    pub source: Source,
    /// How many moves of the execution are done.
    pub at: u32,
}

/// A puzzle in words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct CubeSaid {
    /// All faces in sentences.
    pub text: String,
    /// The faces U L F R B D.
    pub faces: Vec<FaceSaid>,
}

/// A face in words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct FaceSaid {
    /// Its letter.
    pub name: String,
    /// The colours of its stickers, row by row.
    pub rows: Vec<Vec<String>>,
}

pub(crate) fn said(call: &mut Call<'_>, asked: &ToSay) -> Result<CubeSaid, Failure> {
    let voice = call.voice;
    let situation = call.desk.situation(voice, &asked.source)?;
    let conventions = situation.conventions();
    let turns: Vec<Turn> = match situation.solve.solution.as_ref() {
        Ok(solution) => solution.actions().iter().flat_map(Action::turns).take(asked.at as usize).collect(),
        Err(_) => Vec::new(),
    };
    let facelets = situation.looks.after(&turns).facelets();
    let n = facelets.size().layers();
    let faces = Face::ALL.map(|face| {
        let colour =
            |row, column| facelets.get(face, row, column).map(|of| voice.colour(conventions.colour(of)));
        let rows = (0..n).map(|row| (0..n).filter_map(|column| colour(row, column)).collect()).collect();
        FaceSaid { name: face.to_string(), rows }
    });
    Ok(CubeSaid { text: voice.facelets(&facelets, conventions), faces: faces.into() })
}
