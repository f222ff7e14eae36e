//! The editions of the standard, as far as they count results differently: an older round is scored by its own edition.
//!
//! Source: WCA Regulations, editions as named. At a competition the delegate's word and the regulations in force stand above this.

use crate::round::{Format, Mean};
use crate::time::Time;

/// A day of the calendar: year, month, day; ordered as days are.
pub type Day = (u16, u8, u8);

/// An event that is solved blindfolded, as the standard has them.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, PartialOrd, Ord)]
pub enum Event {
    /// 3x3x3 Blindfolded.
    Three,
    /// 4x4x4 Blindfolded.
    Four,
    /// 5x5x5 Blindfolded.
    Five,
    /// 3x3x3 Multi-Blind.
    Many,
}

impl Event {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Three, Self::Four, Self::Five, Self::Many];

    /// Its identifier in the published results.
    pub const fn id(self) -> &'static str {
        match self {
            Self::Three => "333bf",
            Self::Four => "444bf",
            Self::Five => "555bf",
            Self::Many => "333mbf",
        }
    }
}

/// What an edition says, from a day on.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Edition {
    /// From which day on it is in force.
    pub from: Day,
    /// Whether singles from ten minutes on, and times of many at once, are cut down to seconds; else rounded (9f2).
    pub cuts_long: bool,
    /// How many attempts a round of 3x3x3 Blindfolded has, and what is ranked beside the single (9b3).
    pub three: (u8, Mean),
    /// Whether a timer that is stopped before the puzzle is released costs two seconds; else it voids the attempt, as a rule (A6c).
    pub early_stop_costs: bool,
}

/// In order of their days. What was in force before the first is not known here and is scored by it.
const EDITIONS: [Edition; 4] = [
    Edition { from: (2024, 1, 1), cuts_long: false, three: (3, Mean::Of3), early_stop_costs: false },
    Edition { from: (2025, 1, 1), cuts_long: true, three: (3, Mean::Of3), early_stop_costs: false },
    Edition { from: (2026, 1, 1), cuts_long: true, three: (5, Mean::AverageOf5), early_stop_costs: false },
    Edition { from: (2026, 4, 1), cuts_long: true, three: (5, Mean::AverageOf5), early_stop_costs: true },
];

impl Edition {
    /// The edition in force on a day.
    ///
    /// ```
    /// use record::Edition;
    /// assert!(!Edition::on((2024, 6, 1)).cuts_long);
    /// assert_eq!(Edition::on((2026, 11, 30)), Edition::newest());
    /// ```
    pub fn on(day: Day) -> Self {
        EDITIONS.into_iter().rev().find(|edition| edition.from <= day).unwrap_or(EDITIONS[0])
    }

    /// The newest edition that is known here.
    pub const fn newest() -> Self {
        EDITIONS[EDITIONS.len() - 1]
    }

    /// A measured time as a result of this edition.
    pub const fn time(self, milliseconds: u64) -> Time {
        if self.cuts_long { Time::truncated(milliseconds) } else { Time::rounded(milliseconds) }
    }

    /// A measured time of many at once: whole seconds, however long it is (9f2).
    pub const fn time_of_many(self, milliseconds: u64) -> Time {
        let seconds = if self.cuts_long { milliseconds / 1000 } else { (milliseconds + 500) / 1000 };
        Time::of_centiseconds(seconds * 100)
    }

    /// The usual round of an event. Of many at once a round may have fewer attempts (9b5).
    pub const fn round(self, event: Event) -> Format {
        match event {
            Event::Three => Format { attempts: self.three.0, mean: Some(self.three.1) },
            Event::Four | Event::Five => Format { attempts: 3, mean: Some(Mean::Of3) },
            Event::Many => Format { attempts: 3, mean: None },
        }
    }
}
