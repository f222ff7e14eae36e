//! `hoodwink algs`: finding algorithms, and sheets of them.

mod find;
mod fit;
mod sheets;

use crate::arguments::AlgsAction;
use crate::failure::Failure;
use crate::input::Session;
use formats::ease;
use search::ease::Model;
use std::path::Path;
use std::process::ExitCode;

/// Runs the command.
pub fn run(session: &Session, action: &AlgsAction) -> Result<ExitCode, Failure> {
    match action {
        AlgsAction::Find(options) => find::run(session, options),
        AlgsAction::Fit(options) => fit::run(session, options),
        AlgsAction::Check { sheet, json } => sheets::check(session, sheet, *json),
        AlgsAction::Import { sheet, out } => sheets::import(session, sheet, out.as_deref()),
        AlgsAction::Fill { sheet, out, ease } => {
            sheets::fill(session, sheet, out.as_deref(), ease.as_deref())
        }
        AlgsAction::Stats { sheet, ease, json } => sheets::statistics(session, sheet, ease.as_deref(), *json),
        AlgsAction::Export { sheet, to, out } => sheets::export(session, sheet, *to, out.as_deref()),
    }
}

/// The model of hands, with the costs of a file that `algs fit` wrote if one is named, here or in the conventions.
pub fn model(session: &Session, costs: Option<&Path>) -> Result<Model, Failure> {
    let model = Model::built_in();
    let named = session.conventions.ease.as_deref().map(|place| session.beside(place));
    let Some(path) = costs.map(Path::to_path_buf).or(named) else { return Ok(model) };
    ease::read_costs(&session.read(&path)?, &model)
        .map_err(|error| Failure::input(format!("{}: {}", path.display(), session.voice.ease_error(&error))))
}
