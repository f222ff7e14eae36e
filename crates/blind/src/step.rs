//! One letter of a memo: what is memorised, where it was seen, and what it is there for.

use cube::Sticker;

/// What a letter of the memo is there for.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
pub enum Role {
    /// The sticker that lies at the place looked at belongs here.
    Follow,
    /// A new cycle begins here, at an unsolved piece.
    Break,
    /// The piece where the cycle began has come up: its place is memorised once more and the cycle is closed.
    Close,
    /// The first of two letters for a piece that is turned in its place.
    TurnedFirst,
    /// The second of them: where the sticker belongs that is seen at the first.
    TurnedSecond,
}

impl Role {
    /// All of them.
    pub const ALL: [Self; 5] =
        [Self::Follow, Self::Break, Self::Close, Self::TurnedFirst, Self::TurnedSecond];

    /// Its name in files and on the command line.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Follow => "follow",
            Self::Break => "break",
            Self::Close => "close",
            Self::TurnedFirst => "turned-first",
            Self::TurnedSecond => "turned-second",
        }
    }

    /// Whether a cycle begins with such a letter that the buffer is not in.
    pub const fn begins(self) -> bool {
        matches!(self, Self::Break | Self::TurnedFirst)
    }

    /// Whether a cycle that the buffer is not in ends with such a letter.
    pub const fn ends(self) -> bool {
        matches!(self, Self::Close | Self::TurnedSecond)
    }
}

/// One letter of the memo.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Step {
    /// What is memorised.
    pub target: Sticker,
    /// The place that was looked at; where a cycle begins the place that the letter before led to no longer counts, and
    /// this is the target itself.
    pub place: Sticker,
    /// What the letter is there for.
    pub role: Role,
}

impl Step {
    /// What stands behind the last letter of a trace, never shown.
    pub(crate) const NONE: Self = {
        let Some(first) = Sticker::new(0) else { panic!("there are 24") };
        Self { target: first, place: first, role: Role::Follow }
    };
}
