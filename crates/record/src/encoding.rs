//! Results as integers, as they are published and exchanged.
//!
//! Source: README of the results export of the World Cube Association, format 2.0.2.

use thiserror::Error;

use crate::result::{Many, ManyOutcome, Outcome};
use crate::time::Time;

/// Did not finish, did not start, nothing at all.
const DNF: i64 = -1;
const DNS: i64 = -2;
const NONE: i64 = 0;
/// What stands for a time that is not known, in seconds.
const UNKNOWN: i64 = 99_999;
/// From here on a value has the older form.
const OLDER: i64 = 1_000_000_000;

/// A number that stands for no result.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Error)]
#[error("{0} stands for no result")]
pub struct NoResult(pub i64);

/// Reads the result of one puzzle, in centiseconds; none for 0, which says that there was no attempt.
///
/// # Errors
/// [`NoResult`] for other negative numbers.
pub fn read(value: i64) -> Result<Option<Outcome>, NoResult> {
    match value {
        NONE => Ok(None),
        DNF => Ok(Some(Outcome::Dnf)),
        DNS => Ok(Some(Outcome::Dns)),
        _ => u64::try_from(value)
            .map(|value| Some(Outcome::Solved(Time::of_centiseconds(value))))
            .map_err(|_| NoResult(value)),
    }
}

/// Writes the result of one puzzle.
pub fn write(outcome: Option<Outcome>) -> i64 {
    match outcome {
        None => NONE,
        Some(Outcome::Dnf) => DNF,
        Some(Outcome::Dns) => DNS,
        Some(Outcome::Solved(time)) => i64::try_from(time.centiseconds()).unwrap_or(i64::MAX),
    }
}

/// Reads the result of many at once, in the present form (`0DDTTTTTMM`) or the older one (`1SSAATTTTT`).
///
/// ```
/// use record::encoding::read_many;
/// use record::result::ManyOutcome;
/// let Ok(Some(ManyOutcome::Counts(many))) = read_many(580325400) else { panic!() };
/// assert_eq!((many.solved(), many.attempted(), many.time().unwrap().centiseconds()), (41, 41, 325_400));
/// ```
///
/// # Errors
/// [`NoResult`] where the digits fit no attempt.
pub fn read_many(value: i64) -> Result<Option<ManyOutcome>, NoResult> {
    match value {
        NONE => return Ok(None),
        DNF => return Ok(Some(ManyOutcome::Dnf)),
        DNS => return Ok(Some(ManyOutcome::Dns)),
        _ => {}
    }
    let (solved, attempted, seconds) = match value {
        0..OLDER => {
            let (points, seconds, missed) = (99 - value / 10_000_000, value / 100 % 100_000, value % 100);
            (points + missed, points + 2 * missed, seconds)
        }
        OLDER..2_000_000_000 => {
            let rest = value - OLDER;
            (99 - rest / 10_000_000, rest / 100_000 % 100, rest % 100_000)
        }
        _ => return Err(NoResult(value)),
    };
    let count = |number: i64| u32::try_from(number).map_err(|_| NoResult(value));
    let time = (seconds != UNKNOWN).then(|| Time::of_centiseconds(seconds as u64 * 100));
    let many = Many::new(count(solved)?, count(attempted)?, time).ok_or(NoResult(value))?;
    Ok(Some(ManyOutcome::Counts(many)))
}

/// Writes the result of many at once, in the present form.
pub fn write_many(outcome: Option<ManyOutcome>) -> i64 {
    match outcome {
        None => NONE,
        Some(ManyOutcome::Dnf) => DNF,
        Some(ManyOutcome::Dns) => DNS,
        Some(ManyOutcome::Counts(many)) => {
            let seconds = many.time().map_or(UNKNOWN, |time| (time.centiseconds() / 100) as i64);
            (99 - many.points()) * 10_000_000 + seconds.min(UNKNOWN) * 100 + i64::from(many.missed())
        }
    }
}
