//! Ready-made conditions for lessons, from one data file.

use crate::nearest;
use cube::Size;
use std::sync::LazyLock;
use thiserror::Error;
use toml_edit::{Document, Item};

const LESSONS: &str = include_str!("../data/lessons.toml");

/// A condition that goes with a lesson.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Lesson {
    name: String,
    /// The conditions for the 2x2 and the 3x3.
    conditions: [Option<String>; 2],
}

/// Why there is no such lesson.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum LessonError {
    /// No lesson has this name.
    #[error("there is no lesson `{name}`")]
    Unknown {
        /// The name.
        name: String,
        /// The one that was probably meant.
        meant: Option<String>,
        /// All there are.
        known: Vec<String>,
    },
    /// The lesson does not exist for the puzzle.
    #[error("the lesson `{name}` does not exist for a {size}")]
    NotFor {
        /// The name.
        name: String,
        /// The puzzle.
        size: Size,
    },
}

impl Lesson {
    /// The name by which it is asked for; crate `voice` has what it is called in a language.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// The condition on the states of a puzzle, if the lesson exists for it.
    pub fn condition(&self, size: Size) -> Option<&str> {
        let at = [Size::TWO, Size::THREE].into_iter().position(|known| known == size)?;
        self.conditions[at].as_deref()
    }
}

/// All lessons, in the order in which they are best taught.
pub fn lessons() -> &'static [Lesson] {
    static ALL: LazyLock<Vec<Lesson>> = LazyLock::new(|| {
        let document = Document::parse(LESSONS).map(Document::into_mut).unwrap_or_default();
        let tables = document.get("lesson").and_then(Item::as_array_of_tables);
        let text = |table: &toml_edit::Table, key: &str| table.get(key)?.as_str().map(str::to_owned);
        tables
            .into_iter()
            .flatten()
            .filter_map(|table| {
                Some(Lesson {
                    name: text(table, "name")?,
                    conditions: [text(table, "2x2"), text(table, "3x3")],
                })
            })
            .collect()
    });
    &ALL
}

/// The condition of the lesson with a name.
///
/// # Errors
/// [`LessonError`] when there is no such lesson, or none for the puzzle.
///
/// ```
/// use blind::lesson_condition;
/// use cube::Size;
/// assert_eq!(lesson_condition("parity", Size::TWO), Ok("parity = odd"));
/// assert!(lesson_condition("flipped-edges", Size::TWO).is_err());
/// ```
pub fn lesson_condition(name: &str, size: Size) -> Result<&'static str, LessonError> {
    let Some(lesson) = lessons().iter().find(|lesson| lesson.name == name) else {
        let known: Vec<&str> = lessons().iter().map(Lesson::name).collect();
        return Err(LessonError::Unknown {
            name: name.to_owned(),
            meant: nearest(name, &known).map(str::to_owned),
            known: known.into_iter().map(str::to_owned).collect(),
        });
    };
    lesson.condition(size).ok_or_else(|| LessonError::NotFor { name: name.to_owned(), size })
}
