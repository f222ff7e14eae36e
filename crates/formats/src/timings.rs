//! Timings of one's own: a table of algorithms and the seconds they took.

use crate::document::{DocumentError, within};
use cube::{Algorithm, ParseError, Size};
use search::ease::Timing;
use thiserror::Error;

/// The most bytes that are read.
pub const MOST_BYTES: usize = 16 << 20;

/// The most turns that all timings together may have, one added for each.
pub const MOST_TURNS: usize = 1_000_000;

/// The size whose notation the algorithms are in.
const NOTATION: Size = Size::THREE;

/// Why a text is no table of timings.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum TimingsError {
    /// Too long.
    #[error(transparent)]
    Document(#[from] DocumentError),
    /// Not readable as a table.
    #[error("line {line}: {what}")]
    NotATable {
        /// The line, from 1.
        line: u64,
        /// Why.
        what: String,
    },
    /// More than [`MOST_TURNS`] turns, up to this line.
    #[error("line {line}: the timings come to more than {MOST_TURNS} turns")]
    TooMuch {
        /// The line, from 1.
        line: u64,
    },
    /// No columns for algorithms and seconds.
    #[error("two columns are needed, `algorithm` and `seconds`")]
    NoColumns {
        /// The cells of the first line.
        found: Vec<String>,
    },
    /// A time that is no number.
    #[error("line {line}: `{text}` is no number of seconds")]
    NoNumber {
        /// The line, from 1.
        line: u64,
        /// What stands there.
        text: String,
    },
    /// An algorithm that cannot be read.
    #[error("line {line}: {error}")]
    Algorithm {
        /// The line, from 1.
        line: u64,
        /// Why; its place is in the cell.
        error: ParseError,
    },
}

/// Reads the columns `algorithm` and `seconds`, in any order, others passed over. Commas, semicolons or tabs set them apart.
///
/// # Errors
/// [`TimingsError`] with the line of the first mistake.
///
/// ```
/// use formats::timings::read;
/// let timings = read("seconds;algorithm\n1,25;R U R'\n").unwrap();
/// assert_eq!((timings[0].turns.len(), timings[0].seconds), (3, 1.25));
/// assert!(read("seconds,algorithm\nfast,R\n").unwrap_err().to_string().starts_with("line 2: `fast`"));
/// ```
pub fn read(text: &str) -> Result<Vec<Timing>, TimingsError> {
    within(text, MOST_BYTES)?;
    let text = text.trim_start_matches('\u{feff}');
    let first = text.lines().next().unwrap_or_default();
    let delimiter = [b'\t', b';'].into_iter().find(|&sign| first.contains(char::from(sign))).unwrap_or(b',');
    let mut reader =
        csv::ReaderBuilder::new().delimiter(delimiter).flexible(true).from_reader(text.as_bytes());
    let no_table = |error: csv::Error| TimingsError::NotATable {
        line: error.position().map_or(0, csv::Position::line),
        what: error.to_string(),
    };
    let head = reader.headers().map_err(no_table)?.clone();
    let at =
        |names: [&str; 3]| head.iter().position(|cell| names.contains(&cell.trim().to_lowercase().as_str()));
    let columns = at(["algorithm", "alg", "algorithmus"]).zip(at(["seconds", "time", "sekunden"]));
    let no_columns = || TimingsError::NoColumns { found: head.iter().map(str::to_owned).collect() };
    let (algorithm, seconds) = columns.ok_or_else(no_columns)?;
    let mut timings = Vec::new();
    let mut all = 0usize;
    for record in reader.records() {
        let record = record.map_err(no_table)?;
        let line = record.position().map_or(0, csv::Position::line);
        let written = record.get(seconds).unwrap_or_default().trim();
        let seconds = written.replace(',', ".").parse();
        let seconds = seconds.map_err(|_| TimingsError::NoNumber { line, text: written.to_owned() })?;
        let read = Algorithm::parse(record.get(algorithm).unwrap_or_default(), NOTATION);
        let read = read.map_err(|error| TimingsError::Algorithm { line, error })?;
        all = all.saturating_add(read.len() + 1);
        if all > MOST_TURNS {
            return Err(TimingsError::TooMuch { line });
        }
        let turns = read.flatten();
        timings.push(Timing { turns, seconds });
    }
    Ok(timings)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn timings_have_a_bound_in_turns() {
        let text = format!("algorithm,seconds\n{}", "(R U)50000,1\n".repeat(20));
        assert_eq!(read(&text).unwrap_err(), TimingsError::TooMuch { line: 11 });
    }

    #[test]
    fn a_table_is_read_in_whatever_form_it_has() {
        for text in [
            "algorithm,seconds,when\nR U,1.5,today\n\"[R, U]\",2,\n",
            "\u{feff}Time\tAlg\n1.5\tR U\n2\t[R, U]\n",
            "sekunden;algorithmus\n1,5;R U\n2,0;[R, U]\n",
        ] {
            let timings = read(text).unwrap();
            let found: Vec<_> = timings.iter().map(|timing| (timing.turns.len(), timing.seconds)).collect();
            assert_eq!(found, [(2, 1.5), (4, 2.0)], "{text}");
        }
    }

    #[test]
    fn mistakes_are_named_with_their_line() {
        assert!(matches!(read("a,b\n1,R\n"), Err(TimingsError::NoColumns { found }) if found == ["a", "b"]));
        assert!(matches!(read(""), Err(TimingsError::NoColumns { .. })));
        let slow = read("alg,time\nR,1\nU,slow\n");
        assert_eq!(slow, Err(TimingsError::NoNumber { line: 3, text: "slow".to_owned() }));
        assert!(matches!(read("alg,time\nR,1\nR K,1\n"), Err(TimingsError::Algorithm { line: 3, .. })));
        assert!(matches!(read(&" ".repeat(MOST_BYTES + 1)), Err(TimingsError::Document(_))));
    }
}
