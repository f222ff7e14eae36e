//! `hoodwink algs`: finding algorithms, and sheets of them.

mod find;
mod fit;
mod sheets;

use crate::arguments::AlgsAction;
use crate::failure::Failure;
use crate::input::Session;
use search::ease::{Feature, Model};
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

/// The model of hands, with the costs of a file that `algs fit` wrote if one is named.
pub fn model(session: &Session, costs: Option<&Path>) -> Result<Model, Failure> {
    let model = Model::built_in();
    let Some(path) = costs else { return Ok(model) };
    let bad = |what: String| {
        Failure::input(
            session
                .voice
                .say("ease-bad", &[("file", path.display().to_string().into()), ("what", what.into())]),
        )
    };
    let text = session.read(path)?;
    let table: toml::Table =
        text.parse().map_err(|error: toml::de::Error| bad(error.message().to_owned()))?;
    let mut seconds = *model.seconds();
    let written = table.get("seconds").and_then(toml::Value::as_table);
    for (name, value) in written.into_iter().flatten() {
        let unknown = || search::ease::ModelError::UnknownCost(name.clone());
        let feature = Feature::named(name).ok_or_else(|| bad(unknown().to_string()))?;
        let number = value.as_float().or_else(|| value.as_integer().map(|whole| whole as f64));
        let wrong = || search::ease::ModelError::BadCost(feature);
        seconds[feature.index()] = number.ok_or_else(|| bad(wrong().to_string()))?;
    }
    model.with_seconds(seconds).map_err(|error| bad(error.to_string()))
}
