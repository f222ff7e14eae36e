//! Tables of TOML, of which every key is looked at and every mistake has its place.

use crate::document::{Document, DocumentError, Place, Version, readable, within};
use crate::key::{KeyProblem, Needs};
use std::ops::Range;
use toml_edit::{Item, TableLike};

/// A TOML document.
pub(crate) struct Toml<'t> {
    text: &'t str,
    read: toml_edit::Document<&'t str>,
}

/// A key with its value and where both stand in the text, in bytes.
#[derive(Clone)]
pub(crate) struct Entry<'d> {
    pub key: &'d str,
    pub value: &'d Item,
    key_span: Range<usize>,
    text: &'d str,
}

/// A table, the place of which is that of its key.
pub(crate) struct Keys<'d> {
    entries: Vec<Entry<'d>>,
    place: Place,
}

impl<'t> Toml<'t> {
    /// Reads a text of at most so many bytes.
    pub fn read(text: &'t str, most: usize) -> Result<Self, DocumentError> {
        within(text, most)?;
        let read = toml_edit::Document::parse(text).map_err(|error| DocumentError::Malformed {
            place: Place::of(text, error.span().map_or(0, |span| span.start)),
            what: error.message().trim().to_owned(),
        })?;
        Ok(Self { text, read })
    }

    /// The keys at the top.
    pub fn keys(&self) -> Keys<'_> {
        Keys { entries: entries(self.read.as_table(), self.text), place: Place { line: 1, column: 1 } }
    }

    /// The keys at the top but for `version`, which must be one that can be read; a document without it is version 0.
    pub fn versioned(
        &self,
        document: Document,
        present: Version,
        known: &[&str],
    ) -> Result<(Version, Keys<'_>), DocumentError> {
        let mut keys = self.keys();
        let mut found = Version(0);
        if let Some(version) = keys.take("version") {
            let number = version.value.as_integer().and_then(|number| u32::try_from(number).ok());
            found = Version(number.ok_or_else(|| version.wrong_sort(Needs::Whole))?);
        }
        // What a newer version means by its keys is not known.
        readable(document, found, present)?;
        Ok((found, keys.only(known)?))
    }
}

fn entries<'d>(table: &'d dyn TableLike, text: &'d str) -> Vec<Entry<'d>> {
    let entry = |(key, value): (&'d str, &'d Item)| {
        let key_span = table.key(key).and_then(toml_edit::Key::span);
        Entry { key, value, key_span: key_span.or_else(|| value.span()).unwrap_or(0..0), text }
    };
    table.iter().map(entry).collect()
}

impl<'d> Keys<'d> {
    /// Takes a key out.
    pub fn take(&mut self, key: &str) -> Option<Entry<'d>> {
        let at = self.entries.iter().position(|entry| entry.key == key)?;
        Some(self.entries.remove(at))
    }

    /// Takes out a key that must be there.
    pub fn need(&mut self, key: &str) -> Result<Entry<'d>, DocumentError> {
        let missing = KeyProblem::Missing(key.to_owned());
        let place = self.place;
        self.take(key).ok_or(DocumentError::Key { place, problem: missing })
    }

    /// The same, if each of its keys is known.
    pub fn only(self, known: &[&str]) -> Result<Self, DocumentError> {
        match self.entries.iter().find(|entry| !known.contains(&entry.key)) {
            None => Ok(self),
            Some(entry) => Err(entry.unknown(known)),
        }
    }
}

impl<'d> Entry<'d> {
    /// Where the key stands.
    pub fn place(&self) -> Place {
        Place::of(self.text, self.key_span.start)
    }

    /// Where the value stands.
    pub fn value_place(&self) -> Place {
        Place::of(self.text, self.value.span().unwrap_or(self.key_span.clone()).start)
    }

    /// That its key means nothing.
    pub fn unknown(&self, known: &[&str]) -> DocumentError {
        let problem = KeyProblem::Unknown {
            key: self.key.to_owned(),
            meant: blind::nearest(self.key, known).map(str::to_owned),
            known: known.iter().map(ToString::to_string).collect(),
        };
        DocumentError::Key { place: self.place(), problem }
    }

    /// That its value is of another sort.
    pub fn wrong_sort(&self, needs: Needs) -> DocumentError {
        let problem = KeyProblem::WrongSort { key: self.key.to_owned(), needs };
        DocumentError::Key { place: self.value_place(), problem }
    }

    /// The keys of a table.
    pub fn table(&self) -> Result<Keys<'d>, DocumentError> {
        let table = self.value.as_table_like().ok_or_else(|| self.wrong_sort(Needs::Table))?;
        Ok(Keys { entries: entries(table, self.text), place: self.place() })
    }

    /// The tables under `[[key]]`.
    pub fn tables(&self) -> Result<Vec<Keys<'d>>, DocumentError> {
        let tables = self.value.as_array_of_tables().ok_or_else(|| self.wrong_sort(Needs::Tables))?;
        let keys = |table: &'d toml_edit::Table| Keys {
            entries: entries(table, self.text),
            place: Place::of(self.text, table.span().map_or(0, |span| span.start)),
        };
        Ok(tables.iter().map(keys).collect())
    }

    pub fn text(&self) -> Result<&'d str, DocumentError> {
        self.value.as_str().ok_or_else(|| self.wrong_sort(Needs::Text))
    }

    /// A list of texts with their places.
    pub fn texts(&self) -> Result<Vec<(&'d str, Place)>, DocumentError> {
        let wrong = || self.wrong_sort(Needs::Texts);
        let list = self.value.as_array().ok_or_else(wrong)?;
        let place =
            |value: &toml_edit::Value| Place::of(self.text, value.span().map_or(0, |span| span.start));
        list.iter().map(|value| Ok((value.as_str().ok_or_else(wrong)?, place(value)))).collect()
    }

    /// A number, whole or not.
    pub fn number(&self) -> Option<f64> {
        number(self.value.as_float(), self.value.as_integer())
    }

    /// A list of numbers.
    pub fn numbers(&self) -> Option<Vec<f64>> {
        let list = self.value.as_array()?;
        list.iter().map(|value| number(value.as_float(), value.as_integer())).collect()
    }

    /// The thing that the word stands for.
    pub fn word<T: Copy>(&self, known: &[T], name: fn(T) -> &'static str) -> Result<T, DocumentError> {
        word(self.text()?, self.value_place(), known, name)
    }
}

fn number(float: Option<f64>, whole: Option<i64>) -> Option<f64> {
    float.or_else(|| whole.map(|whole| whole as f64)).filter(|number| number.is_finite())
}

/// The thing that a word at a place stands for.
pub(crate) fn word<T: Copy>(
    word: &str,
    place: Place,
    known: &[T],
    name: fn(T) -> &'static str,
) -> Result<T, DocumentError> {
    known.iter().copied().find(|&item| name(item) == word).ok_or_else(|| {
        let names: Vec<&str> = known.iter().map(|&item| name(item)).collect();
        let problem = KeyProblem::UnknownWord {
            word: word.to_owned(),
            meant: blind::nearest(word, &names).map(str::to_owned),
            known: names.into_iter().map(str::to_owned).collect(),
        };
        DocumentError::Key { place, problem }
    })
}

/// A text in quotation marks.
pub(crate) fn quoted(text: &str) -> String {
    toml_edit::Value::from(text).to_string().trim().to_owned()
}

/// Texts as a list.
pub(crate) fn list<'a>(texts: impl IntoIterator<Item = &'a str>) -> String {
    format!("[{}]", texts.into_iter().map(quoted).collect::<Vec<_>>().join(", "))
}
