//! Results as people write them: `45.31`, `1:02.50+2`, `DNF(4:10)`, `8/9 45:32`, and the numbers of published results.

use record::edition::Edition;
use record::encoding;
use record::result::{Many, ManyOutcome};
use record::round::Timed;
use record::{Outcome, Time};
use thiserror::Error;

/// The most bytes of a list of results.
pub const MOST_BYTES: usize = 1 << 20;
/// The longest time that is taken for one: a hundred hours, in seconds.
const LONGEST: u64 = 360_000;
/// The most seconds of a penalty: more was never given in an attempt.
const MOST_PENALTY: u32 = 600;

/// Why a text is no result.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum ResultError {
    /// No time, no DNF, no DNS.
    #[error("`{0}` is no result")]
    NoResult(String),
    /// Minutes and seconds go up to 59.
    #[error("`{0}`: minutes and seconds go up to 59 behind a colon")]
    Sixty(String),
    /// Longer than anybody solves.
    #[error("`{0}` is too long")]
    TooLong(String),
    /// Not `solved/tried time`, or more solved than tried, or fewer than two or more than 99 tried.
    #[error("`{0}` is no result of many at once")]
    NotMany(String),
    /// A number that stands for no published result.
    #[error("{0} stands for no result")]
    NoCode(String),
}

/// A piece of what was typed, short enough to be told.
fn piece(text: &str) -> String {
    text.chars().take(24).collect()
}

/// Reads a time in milliseconds: seconds, `minutes:seconds` or `hours:minutes:seconds`, with a point or a comma and up to three
/// further digits; what follows these is cut off.
///
/// ```
/// assert_eq!(formats::results::milliseconds("1:02.5"), Ok(62_500));
/// assert!(formats::results::milliseconds("1:62").is_err());
/// ```
///
/// # Errors
/// [`ResultError`] where it is none, or too long.
pub fn milliseconds(text: &str) -> Result<u64, ResultError> {
    let none = || ResultError::NoResult(piece(text));
    let (whole, rest) = text.split_once(['.', ',']).unwrap_or((text, ""));
    let digits = |part: &str| !part.is_empty() && part.bytes().all(|sign| sign.is_ascii_digit());
    if !(rest.is_empty() && whole.len() == text.len() || digits(rest)) {
        return Err(none());
    }
    let parts: Vec<&str> = whole.split(':').collect();
    if parts.len() > 3 || !parts.iter().all(|part| digits(part)) {
        return Err(none());
    }
    let mut seconds: u64 = 0;
    for (at, part) in parts.iter().enumerate() {
        let number: u64 = part.parse().map_err(|_| ResultError::TooLong(piece(text)))?;
        if at > 0 && number > 59 {
            return Err(ResultError::Sixty(piece(text)));
        }
        seconds = seconds.saturating_mul(60).saturating_add(number);
    }
    if seconds > LONGEST {
        return Err(ResultError::TooLong(piece(text)));
    }
    let fraction: String = rest.chars().chain("000".chars()).take(3).collect();
    Ok(seconds * 1000 + fraction.parse::<u64>().unwrap_or(0))
}

/// Reads the result of one puzzle: a time with penalties (`45.31+2`), `DNF`, with the time that passed in brackets where it is known
/// (`DNF(4:10)`), or `DNS`. Small letters do as well.
///
/// ```
/// use record::{Edition, Outcome, Time};
/// let timed = formats::results::one("17.658+2+2", Edition::newest()).unwrap();
/// assert_eq!(timed.outcome, Outcome::Solved(Time::of_centiseconds(2165)));
/// ```
///
/// # Errors
/// [`ResultError`] where it is none of these.
pub fn one(text: &str, edition: Edition) -> Result<Timed, ResultError> {
    let upper = text.trim().to_uppercase();
    if upper == "DNS" {
        return Ok(Timed { outcome: Outcome::Dns, elapsed: Time::default() });
    }
    if let Some(rest) = upper.strip_prefix("DNF") {
        let elapsed = match rest.strip_prefix('(').and_then(|rest| rest.strip_suffix(')')) {
            Some(inside) => edition.time(milliseconds(inside)?),
            None if rest.is_empty() => Time::default(),
            None => return Err(ResultError::NoResult(piece(text))),
        };
        return Ok(Timed { outcome: Outcome::Dnf, elapsed });
    }
    let mut parts = upper.split('+');
    let time = milliseconds(parts.next().unwrap_or_default())?;
    let mut penalties: u32 = 0;
    for part in parts {
        let seconds = part.parse::<u32>().map_err(|_| ResultError::NoResult(piece(text)))?;
        penalties = penalties.saturating_add(seconds);
    }
    if penalties > MOST_PENALTY {
        return Err(ResultError::TooLong(piece(text)));
    }
    // Penalties go on before it is decided whether hundredths are kept.
    let result = edition.time(time + u64::from(penalties) * 1000);
    Ok(Timed { outcome: Outcome::Solved(result), elapsed: result })
}

/// Reads the result of many at once: `8/9 45:32`, with penalties behind the time, or `DNF`, or `DNS`.
///
/// # Errors
/// [`ResultError`] where it is none of these.
pub fn many(text: &str, edition: Edition) -> Result<ManyOutcome, ResultError> {
    let none = || ResultError::NotMany(piece(text));
    match text.trim().to_uppercase().as_str() {
        "DNF" => return Ok(ManyOutcome::Dnf),
        "DNS" => return Ok(ManyOutcome::Dns),
        _ => {}
    }
    let (counts, time) = text.trim().split_once(char::is_whitespace).ok_or_else(none)?;
    let (solved, tried) = counts.split_once('/').ok_or_else(none)?;
    let number = |part: &str| part.parse::<u32>().map_err(|_| none());
    let timed = one(time.trim(), edition)?;
    let time = timed.outcome.time().ok_or_else(none)?;
    let time = edition.time_of_many(time.centiseconds() * 10);
    Many::new(number(solved)?, number(tried)?, Some(time)).map(ManyOutcome::from).ok_or_else(none)
}

/// Reads the number of a published result of one puzzle; none for 0, which stands for no attempt.
///
/// # Errors
/// [`ResultError::NoCode`] where it stands for nothing.
pub fn code(text: &str) -> Result<Option<Outcome>, ResultError> {
    let none = || ResultError::NoCode(piece(text));
    encoding::read(text.trim().parse().map_err(|_| none())?).map_err(|_| none())
}

/// Reads the number of a published result of many at once; none for 0.
///
/// # Errors
/// [`ResultError::NoCode`] where it stands for nothing.
pub fn code_of_many(text: &str) -> Result<Option<ManyOutcome>, ResultError> {
    let none = || ResultError::NoCode(piece(text));
    encoding::read_many(text.trim().parse().map_err(|_| none())?).map_err(|_| none())
}

/// Reads a share: `24/30` for 24 of 30, a part as `0.8`, or `80%`.
///
/// ```
/// use formats::results::{Success, success};
/// assert_eq!(success("80 %"), Some(Success::Stated(0.8)));
/// ```
pub fn success(text: &str) -> Option<Success> {
    let text = text.trim();
    if let Some((right, of)) = text.split_once('/') {
        let share = record::rate::Share::new(right.trim().parse().ok()?, of.trim().parse().ok()?)?;
        return (share.of() > 0).then_some(Success::Counted(share));
    }
    let (number, of) = text.strip_suffix('%').map_or((text, 1.0), |number| (number, 100.0));
    let part: f64 = number.trim().replace(',', ".").parse().ok()?;
    let part = part / of;
    (0.0..=1.0).contains(&part).then_some(Success::Stated(part))
}

/// How often a puzzle comes right.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Success {
    /// So many of so many.
    Counted(record::rate::Share),
    /// As it was stated.
    Stated(f64),
}

/// A line of a table of results: who, and the attempts as they are written.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Competitor<'a> {
    /// Which line of the text it is, from 1.
    pub line: usize,
    /// Who.
    pub name: &'a str,
    /// The attempts.
    pub attempts: Vec<&'a str>,
}

/// Reads a table of results: a line a person, the name, a colon, and the attempts with blanks between them, or semicolons, which
/// those of many at once need. Empty lines are passed over.
///
/// ```
/// let table = formats::results::table("Ines: 45.31 DNF 50.2\n\nOle: 8/9 45:32; DNF").unwrap();
/// assert_eq!((table[0].attempts.len(), table[1].line, table[1].attempts[0]), (3, 3, "8/9 45:32"));
/// ```
///
/// # Errors
/// The number of the first line that has no colon.
pub fn table(text: &str) -> Result<Vec<Competitor<'_>>, usize> {
    let filled = text.lines().enumerate().filter(|(_, line)| !line.trim().is_empty());
    filled
        .map(|(number, line)| {
            // Times have colons too: the name ends at the first one.
            let (name, rest) = line.split_once(':').ok_or(number + 1)?;
            let name = name.trim();
            let named = !name.is_empty() && !name.bytes().all(|sign| sign.is_ascii_digit());
            named.then(|| Competitor { line: number + 1, name, attempts: attempts(rest) }).ok_or(number + 1)
        })
        .collect()
}

/// Attempts of a text: parted by semicolons where there are any, else by blanks.
pub fn attempts(text: &str) -> Vec<&str> {
    let parts: Vec<&str> =
        if text.contains(';') { text.split(';').collect() } else { text.split_whitespace().collect() };
    parts.into_iter().map(str::trim).filter(|part| !part.is_empty()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn results_are_read_as_people_write_them() {
        let newest = Edition::newest();
        let centiseconds = |text: &str| one(text, newest).unwrap().outcome.time().unwrap().centiseconds();
        let cases = [
            ("45.31", 4531),
            ("45,31", 4531),
            ("1:02.5", 6250),
            ("12.678", 1267),
            ("2:03:42", 742_200),
            ("7", 700),
        ];
        for (text, value) in cases {
            assert_eq!(centiseconds(text), value, "{text}");
        }
        // 9:59.50 with two seconds more is over ten minutes, so whole seconds are kept (WCA Regulations 9f2).
        assert_eq!(centiseconds("9:59.50+2"), 60_100);
        assert_eq!(one("dnf(4:10)", newest).unwrap().elapsed.centiseconds(), 25_000);
        assert_eq!(one("DNS", newest).unwrap().outcome, Outcome::Dns);
        for text in
            ["", "abc", "1:75", "DNF4", "1.2.3", "-5", "5+x", "1:2:3:4", ".5", "5.", "99999999999999999999"]
        {
            assert!(one(text, newest).is_err(), "{text}");
        }
        let ManyOutcome::Counts(read) = many("8/9 45:32+2", newest).unwrap() else { panic!() };
        assert_eq!((read.solved(), read.attempted(), read.time().unwrap().centiseconds()), (8, 9, 273_400));
        assert_eq!(many("1/2 10:00", newest), Ok(ManyOutcome::Dnf));
        for text in ["8/9", "9/8 10:00", "x/9 10:00", "0/1 5:00", "8/9 DNF"] {
            assert!(many(text, newest).is_err(), "{text}");
        }
        assert!(matches!(success("24/30"), Some(Success::Counted(_))));
        assert_eq!([success("1.2"), success("3/2"), success("0/0"), success("often")], [None; 4]);
    }

    proptest! {
        #[test]
        fn nothing_that_is_typed_panics(text in "\\PC*") {
            let _ = (one(&text, Edition::newest()), many(&text, Edition::newest()), code(&text), code_of_many(&text), success(&text));
        }

        #[test]
        fn what_is_written_is_read(centiseconds in 0u64..36_000_000) {
            let time = Edition::newest().time(centiseconds * 10);
            prop_assert_eq!(one(&time.to_string(), Edition::newest()).unwrap().outcome, Outcome::Solved(time));
        }
    }
}
