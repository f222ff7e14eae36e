//! What every method is given beside its arguments.

use serde::{Deserialize, Serialize};
use voice::Voice;

use crate::desk::Desk;

/// How far long work has come.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Progress {
    /// Steps done.
    pub done: u32,
    /// Steps in all, if that is known.
    pub of: Option<u32>,
}

/// Arguments of a method that takes none.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Nothing {}

/// What a method is told beside its arguments.
pub(crate) struct Call<'a> {
    /// What says things, in the language of the request.
    pub voice: &'a Voice,
    /// Where long work reports to.
    pub report: &'a mut dyn FnMut(Progress),
    /// What was told and made before.
    pub desk: &'a mut Desk,
}
