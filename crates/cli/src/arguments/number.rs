//! Numbers on the command line.

use std::fmt;

/// Why a text is no number that will do.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct NoNumber {
    /// The least that will do.
    pub least: u64,
    /// The most, if there is one that is not the machine's.
    pub most: Option<u64>,
}

impl fmt::Display for NoNumber {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.most {
            Some(most) => write!(f, "a whole number from {} to {most} is needed", self.least),
            None => write!(f, "a whole number, {} or more, is needed", self.least),
        }
    }
}

impl std::error::Error for NoNumber {}

/// Reads whole numbers from one bound to another.
pub fn whole<T: TryFrom<u64> + Clone + Send + Sync + 'static>(
    least: u64,
    most: u64,
) -> impl Fn(&str) -> Result<T, NoNumber> + Clone + Send + Sync + 'static {
    let no = NoNumber { least, most: (most < u64::MAX).then_some(most) };
    move |text| {
        let number = text.trim().parse().ok().filter(|number| (least..=most).contains(number));
        number.and_then(|number| T::try_from(number).ok()).ok_or(no)
    }
}
