//! Conventions as JSON, with the keys of the file.

use super::error::{ConventionsError, Problem};
use super::read::{Reader, read_table};
use super::write::write;
use super::{MOST_BYTES, VERSION};
use crate::document::{Document, DocumentError, head, object, readable, within};
use blind::Conventions;
use serde_json::{Map, Value};
use toml_edit::{Array, InlineTable, Item, Table};

/// The whole conventions as JSON: `{"document": "conventions", "version": 1, …}`.
///
/// ```
/// use blind::Conventions;
/// use formats::conventions::{from_json, to_json};
/// let conventions = Conventions::default();
/// assert_eq!(from_json(&to_json(&conventions)).unwrap(), conventions);
/// ```
pub fn to_json(conventions: &Conventions) -> String {
    // What is written reads back, so there is a table.
    let written = toml_edit::Document::parse(write(conventions)).map(toml_edit::Document::into_mut);
    let mut content = Map::new();
    content.insert("document".to_owned(), Document::Conventions.name().into());
    if let Ok(written) = written {
        content.extend(written.iter().map(|(key, item)| (key.to_owned(), value_of(item))));
    }
    Value::Object(content).to_string()
}

/// Reads conventions that were written as JSON.
///
/// # Errors
/// [`ConventionsError`], without a place of its own, for another document, a newer version, or content that a file could not
/// have either.
pub fn from_json(text: &str) -> Result<Conventions, ConventionsError> {
    let reader = Reader { text: "" };
    let fault = |error: DocumentError| reader.at(None, Problem::Document(error));
    within(text, MOST_BYTES).map_err(fault)?;
    let mut content = object(text).map_err(fault)?;
    let version = head(&mut content, Document::Conventions).map_err(fault)?;
    readable(Document::Conventions, version, VERSION).map_err(fault)?;
    let mut table = Table::new();
    for (key, value) in &content {
        table.insert(key, item_of(value));
    }
    table.insert("version", toml_edit::value(i64::from(version.0)));
    read_table(&reader, &table)
}

fn value_of(item: &Item) -> Value {
    if let Some(table) = item.as_table_like() {
        return Value::Object(table.iter().map(|(key, item)| (key.to_owned(), value_of(item))).collect());
    }
    match item.as_value() {
        Some(toml_edit::Value::String(text)) => text.value().as_str().into(),
        Some(toml_edit::Value::Integer(number)) => (*number.value()).into(),
        Some(toml_edit::Value::Float(number)) => (*number.value()).into(),
        Some(toml_edit::Value::Boolean(truth)) => (*truth.value()).into(),
        Some(toml_edit::Value::Array(list)) => {
            list.iter().map(|value| value_of(&Item::Value(value.clone()))).collect()
        }
        // No key of conventions holds a time.
        Some(toml_edit::Value::Datetime(_) | toml_edit::Value::InlineTable(_)) | None => Value::Null,
    }
}

/// The item that a value of JSON would be in a file; one that no key can have is left out and so refused by its key.
fn item_of(value: &Value) -> Item {
    match value {
        Value::Object(object) => {
            let mut table = Table::new();
            for (key, value) in object {
                table.insert(key, item_of(value));
            }
            Item::Table(table)
        }
        other => plain(other).map_or(Item::None, Item::Value),
    }
}

fn plain(value: &Value) -> Option<toml_edit::Value> {
    Some(match value {
        Value::String(text) => text.into(),
        Value::Bool(truth) => (*truth).into(),
        Value::Number(number) => match number.as_i64() {
            Some(whole) => whole.into(),
            None => number.as_f64()?.into(),
        },
        Value::Array(list) => toml_edit::Value::Array(list.iter().map(plain).collect::<Option<Array>>()?),
        Value::Object(object) => {
            let entry = |(key, value): (&String, &Value)| Some((key.clone(), plain(value)?));
            toml_edit::Value::InlineTable(object.iter().map(entry).collect::<Option<InlineTable>>()?)
        }
        Value::Null => return None,
    })
}
