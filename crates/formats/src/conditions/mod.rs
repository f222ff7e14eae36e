//! Conditions on scrambles as they are typed.
//!
//! ```text
//! condition  = either { "or" either }
//! either     = single { "and" single }
//! single     = "not" single | "(" condition ")" | occurs | comparison
//! comparison = feature ( "=" | "!=" | "<" | "<=" | ">" | ">=" ) ( feature | number | word | number ".." number )
//! occurs     = kind "." ( "has" | "pair" ) "(" item { "," item } ")"
//! feature    = "parity" | "letters" | kind "." name
//! ```
//!
//! A kind is `corner` or `edge`. The names are those of [`choose::Aspect`]: `targets`, `cycles` (of any length, or
//! `cycles(3)`, `cycles(3..5)`), `breaks`, `closes-elsewhere`, `turned` (`twists` of corners, `flips` of edges), `solved`,
//! `buffer` (`solved`, `turned` or `away`), `buffer-cycle`, `longest`, `shortest`. A range needs `=` or `!=`.
//!
//! `corner.has(B)` asks that a letter occur in the memo; a sticker's name (`corner.has(URB)`) does as well. `edge.pair(AB)`
//! asks that two letters be memorised as a pair: the first and second letter of the kind's memo, the third and fourth, and
//! so on. Of several items in the brackets at least one has to occur. A condition writes itself out in this way.

mod error;
mod parse;

pub use error::{ConditionProblem, ConditionTextError, ExpectedPart};

use blind::Conventions;
use choose::Condition;
use cube::Size;

/// The most bytes that are read.
pub const MOST_BYTES: usize = 16 << 10;

/// Reads a condition on the states of one puzzle, with the letters of a solver.
///
/// # Errors
/// [`ConditionTextError`] with the column of the first mistake.
///
/// ```
/// use blind::Conventions;
/// use cube::Size;
/// use formats::conditions::read;
/// let text = "corner.breaks = 1 and corner.twists = 0 and edge.flips = 0";
/// let condition = read(text, Size::THREE, &Conventions::default()).unwrap();
/// assert_eq!(condition.to_string(), text);
/// let error = read("corner.braeks = 1", Size::THREE, &Conventions::default()).unwrap_err();
/// assert_eq!(error.column, 8);
/// ```
pub fn read(text: &str, size: Size, conventions: &Conventions) -> Result<Condition, ConditionTextError> {
    if text.len() > MOST_BYTES {
        let problem = ConditionProblem::TooLong { bytes: text.len(), most: MOST_BYTES };
        return Err(ConditionTextError { column: 1, problem });
    }
    parse::parse(text, size, conventions)
}
