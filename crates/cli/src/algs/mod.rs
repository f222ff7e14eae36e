//! `hoodwink algs`: finding algorithms, and sheets of them.

mod find;
mod fit;
mod rings;
mod sheets;

use crate::arguments::AlgsAction;
use crate::failure::Failure;
use crate::input::Session;
use std::process::ExitCode;

/// Runs the command.
pub fn run(session: &Session, action: &AlgsAction) -> Result<ExitCode, Failure> {
    match action {
        AlgsAction::Find(options) => find::run(session, options),
        AlgsAction::Fit(options) => fit::run(session, options),
        AlgsAction::Check { sheet, json } => sheets::check(session, sheet, *json),
        AlgsAction::Import { sheet, anyway, out } => sheets::import(session, sheet, out.as_deref(), *anyway),
        AlgsAction::Fill { sheet, out, ease } => {
            sheets::fill(session, sheet, out.as_deref(), ease.as_deref())
        }
        AlgsAction::Stats { sheet, ease, json } => sheets::statistics(session, sheet, ease.as_deref(), *json),
        AlgsAction::Export { sheet, to, out } => sheets::export(session, sheet, *to, out.as_deref()),
    }
}
