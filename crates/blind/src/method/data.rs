//! The methods' own data, `data/methods.toml`.

use crate::conventions::MethodName;
use toml_edit::{Document, DocumentMut, Item};

const METHODS: &str = include_str!("../../data/methods.toml");

/// The data, to be looked into.
pub(crate) struct Data(DocumentMut);

impl Data {
    /// Reads what is built in; a test reads it whole.
    pub fn built_in() -> Self {
        Self(Document::parse(METHODS).map(Document::into_mut).unwrap_or_default())
    }

    /// A text of a method.
    pub fn text(&self, method: MethodName, table: &str, key: &str) -> Option<&str> {
        self.0.get(method.name())?.get(table)?.get(key).and_then(Item::as_str)
    }

    /// All texts of a table of a method.
    pub fn texts(&self, method: MethodName, table: &str) -> Vec<(&str, &str)> {
        let found = self.0.get(method.name()).and_then(|method| method.get(table)).and_then(Item::as_table);
        found
            .into_iter()
            .flat_map(toml_edit::Table::iter)
            .filter_map(|(key, value)| Some((key, value.as_str()?)))
            .collect()
    }
}
