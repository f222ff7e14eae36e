//! What a condition can ask of a trace, and how each figure grows as a state is put together cycle by cycle.

use blind::{BufferIs, Trace, kind_name};
use cube::Orbit;
use std::fmt;

/// A figure of one kind's trace.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, PartialOrd, Ord)]
pub enum Aspect {
    /// The letters memorised. A piece turned in its place counts 2; the buffer turned in its place counts 0, since
    /// the others put it right.
    Targets,
    /// Whether the number of letters is even (0) or odd (1).
    Parity,
    /// Cycles of two or more pieces, the buffer's included.
    Cycles,
    /// Cycles, the buffer's included, of a number of pieces within these bounds.
    CyclesOf {
        /// The fewest pieces.
        from: u8,
        /// The most pieces.
        to: u8,
    },
    /// Cycles of two or more pieces that do not hold the buffer: each takes a cycle break.
    Breaks,
    /// Such cycles that are closed at another sticker than they began at.
    ClosesElsewhere,
    /// Pieces in their place but turned wrong, the buffer not counted.
    Turned,
    /// Pieces in their place and right, the buffer not counted.
    Solved,
    /// How the buffer's piece is found: 0 solved, 1 turned, 2 away.
    Buffer,
    /// The pieces of the buffer's cycle, the buffer's own included; 1 when it is in its place.
    BufferCycle,
    /// The pieces of the longest cycle; 0 when nothing is out of its place.
    Longest,
    /// The pieces of the shortest cycle of two or more; 0 when nothing is out of its place.
    Shortest,
}

/// What a condition compares.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Feature {
    /// A figure of one kind.
    Of(Orbit, Aspect),
    /// Whether no kind (0) or some kind (1) whose pieces are told apart has an odd number of letters. Corners and edges agree.
    Parity,
    /// The letters of all kinds.
    Letters,
}

/// A cycle, or a piece in its place, as far as the figures go.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Part {
    /// The buffer's piece in its place.
    BufferHome { turned: bool },
    /// The cycle of the buffer.
    BufferAway { pieces: u8 },
    /// Where pieces look alike, the walk from the buffer, which has its colour or not; of one piece if there is none.
    BufferAlike { pieces: u8, right: bool },
    /// A piece in its place and right.
    Solved,
    /// A piece in its place and turned.
    Turned,
    /// A cycle of two or more pieces without the buffer.
    Cycle { pieces: u8, elsewhere: bool },
}

impl Part {
    /// The letters it takes.
    const fn letters(self) -> u8 {
        match self {
            Self::BufferHome { .. } | Self::Solved => 0,
            Self::BufferAway { pieces } | Self::BufferAlike { pieces, .. } => pieces - 1,
            Self::Turned => 2,
            Self::Cycle { pieces, .. } => pieces + 1,
        }
    }

    /// The pieces that it carries round, where these are two or more.
    const fn carried(self) -> Option<u8> {
        match self {
            Self::BufferAway { pieces } | Self::Cycle { pieces, .. } => Some(pieces),
            Self::BufferAlike { pieces, .. } if pieces > 1 => Some(pieces),
            Self::BufferHome { .. } | Self::BufferAlike { .. } | Self::Solved | Self::Turned => None,
        }
    }

    /// Whether it is made up of an odd number of exchanges.
    pub(crate) const fn is_odd(self) -> bool {
        self.letters() % 2 == 1
    }
}

impl Aspect {
    /// All but [`Aspect::CyclesOf`].
    pub const ALL: [Self; 11] = [
        Self::Targets,
        Self::Parity,
        Self::Cycles,
        Self::Breaks,
        Self::ClosesElsewhere,
        Self::Turned,
        Self::Solved,
        Self::Buffer,
        Self::BufferCycle,
        Self::Longest,
        Self::Shortest,
    ];

    /// Its name in a condition; turned pieces are `twists` on corners and `flips` on edges.
    pub const fn name(self, orbit: Orbit) -> &'static str {
        match self {
            Self::Targets => "targets",
            Self::Parity => "parity",
            Self::Cycles | Self::CyclesOf { .. } => "cycles",
            Self::Breaks => "breaks",
            Self::ClosesElsewhere => "closes-elsewhere",
            Self::Turned => match orbit {
                Orbit::Corner => "twists",
                Orbit::Midge => "flips",
                Orbit::Wing { .. } | Orbit::XCentre { .. } | Orbit::TCentre { .. } | Orbit::Oblique(_) => {
                    "turned"
                }
            },
            Self::Solved => "solved",
            Self::Buffer => "buffer",
            Self::BufferCycle => "buffer-cycle",
            Self::Longest => "longest",
            Self::Shortest => "shortest",
        }
    }

    /// The figure after one more part.
    pub(crate) const fn add(self, value: u8, part: Part) -> u8 {
        match (self, part) {
            (Self::Targets, _) => value + part.letters(),
            (Self::Parity, _) => (value + part.letters()) % 2,
            (Self::Breaks, Part::Cycle { .. })
            | (Self::ClosesElsewhere, Part::Cycle { elsewhere: true, .. })
            | (Self::Turned, Part::Turned)
            | (Self::Solved, Part::Solved) => value + 1,
            (Self::Buffer, Part::BufferHome { turned }) => turned as u8,
            (Self::Buffer, Part::BufferAway { .. } | Part::BufferAlike { right: false, .. }) => 2,
            (Self::Buffer, Part::BufferAlike { right: true, .. }) => 0,
            (Self::BufferCycle, Part::BufferHome { .. }) => 1,
            (Self::BufferCycle, Part::BufferAway { pieces } | Part::BufferAlike { pieces, .. }) => pieces,
            _ => match part.carried() {
                None => value,
                Some(pieces) => self.add_cycle(value, pieces),
            },
        }
    }

    const fn add_cycle(self, value: u8, pieces: u8) -> u8 {
        match self {
            Self::Cycles => value + 1,
            Self::CyclesOf { from, to } if from <= pieces && pieces <= to => value + 1,
            Self::Longest if pieces > value => pieces,
            Self::Shortest if value == 0 || pieces < value => pieces,
            _ => value,
        }
    }

    /// The figure of a trace.
    pub fn of(self, trace: &Trace) -> u8 {
        let long = || trace.cycles().into_iter().filter(|cycle| cycle.pieces > 1);
        let count = match self {
            Self::Targets => trace.len(),
            Self::Parity => usize::from(trace.is_odd()),
            Self::Cycles => long().count(),
            Self::CyclesOf { from, to } => {
                long().filter(|cycle| (from as usize..=to as usize).contains(&cycle.pieces)).count()
            }
            Self::Breaks => long().filter(|cycle| !cycle.holds_buffer).count(),
            Self::ClosesElsewhere => long().filter(|cycle| !cycle.holds_buffer && cycle.turned).count(),
            Self::Turned => trace.turned().len(),
            Self::Solved => trace.solved().len(),
            Self::Buffer => match trace.buffer_is() {
                BufferIs::Solved => 0,
                BufferIs::Turned => 1,
                BufferIs::Away => 2,
            },
            Self::BufferCycle => long().find(|cycle| cycle.holds_buffer).map_or(1, |cycle| cycle.pieces),
            Self::Longest => long().map(|cycle| cycle.pieces).max().unwrap_or(0),
            Self::Shortest => long().map(|cycle| cycle.pieces).min().unwrap_or(0),
        };
        count as u8
    }
}

/// The words for the values of [`Feature::Parity`] and [`Aspect::Parity`].
const PARITY: [&str; 2] = ["even", "odd"];
/// The words for the values of [`Aspect::Buffer`].
const BUFFER: [&str; 3] = ["solved", "turned", "away"];

impl Feature {
    /// The words that stand for its values 0, 1, …; none for a number.
    pub const fn words(self) -> &'static [&'static str] {
        match self {
            Self::Parity | Self::Of(_, Aspect::Parity) => &PARITY,
            Self::Of(_, Aspect::Buffer) => &BUFFER,
            _ => &[],
        }
    }
}

impl fmt::Display for Feature {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::Parity => f.write_str("parity"),
            Self::Letters => f.write_str("letters"),
            Self::Of(orbit, aspect) => {
                write!(f, "{}.{}", kind_name(orbit), aspect.name(orbit))?;
                match aspect {
                    Aspect::CyclesOf { from, to } if from == to => write!(f, "({from})"),
                    Aspect::CyclesOf { from, to } => write!(f, "({from}..{to})"),
                    _ => Ok(()),
                }
            }
        }
    }
}
