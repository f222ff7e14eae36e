//! What the browser kept, brought into the present form.

use formats::{Document, records};
use serde::{Deserialize, Serialize};

use crate::Failure;
use crate::call::Call;

/// A record as it was found.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct FoundRecord {
    /// What it is: `draft`, `set` or `setting`.
    pub record: String,
    /// As it was found, as JSON.
    pub text: String,
}

/// A record as it is kept now.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Renewed {
    /// As JSON.
    pub text: String,
    /// The version of its form, which the page writes into every record.
    pub version: u32,
}

pub(crate) fn renew(call: &Call<'_>, found: &FoundRecord) -> Result<Renewed, Failure> {
    let record = Document::named(&found.record)
        .ok_or_else(|| Failure::new(format!("There is no record \"{}\".", found.record)))?;
    let text = records::migrated(record, &found.text)
        .map_err(|error| Failure::new(call.voice.document_error(&error)))?;
    Ok(Renewed { text, version: records::VERSION.0 })
}
