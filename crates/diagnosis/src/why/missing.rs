//! Unsolved pieces to which turning cannot lead, since one at least was not told.

use super::observed::{Observed, Seen};
use cube::{Orbit, Size, Sticker};

/// What must be unsolved besides the pieces that were told.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Missing {
    /// At least one more piece of a kind: the turnings of those that were told do not add up.
    Turned {
        /// The kind.
        orbit: Orbit,
        /// The only piece of the kind that was told, if it is only one.
        alone: Option<Sticker>,
    },
    /// At least two more pieces of one of these kinds: an odd number of exchanges was told.
    Exchanged {
        /// The kinds.
        orbits: Vec<Orbit>,
    },
}

/// Which parities of exchanges, with which sums of turnings, are possible for a kind: a bit each.
#[derive(Clone, Copy, PartialEq, Eq)]
struct Sums {
    bits: u8,
    turns: u8,
}

impl Sums {
    const fn none(turns: u8) -> Self {
        Self { bits: 1, turns }
    }

    const fn of(turns: u8, odd: bool, sum: u8) -> Self {
        Self { bits: 1 << (odd as u8 * turns + sum % turns), turns }
    }

    const fn any(turns: u8) -> Self {
        Self { bits: (1 << (2 * turns)) - 1, turns }
    }

    const fn or(self, other: Self) -> Self {
        Self { bits: self.bits | other.bits, ..self }
    }

    const fn without(self, other: Self) -> Self {
        Self { bits: self.bits & !other.bits, ..self }
    }

    const fn has(self, odd: bool, sum: u8) -> bool {
        self.bits & Self::of(self.turns, odd, sum).bits != 0
    }

    /// Both together.
    fn and(self, other: Self) -> Self {
        let mut both = Self { bits: 0, ..self };
        for (a, b) in (0..2 * self.turns).flat_map(|a| (0..2 * self.turns).map(move |b| (a, b))) {
            if self.bits >> a & 1 == 1 && other.bits >> b & 1 == 1 {
                let odd = (a >= self.turns) != (b >= self.turns);
                both = both.or(Self::of(self.turns, odd, a % self.turns + b % self.turns));
            }
        }
        both
    }

    /// So many pieces, all of them unsolved among themselves.
    fn pool(turns: u8, count: usize) -> Self {
        let turned = || Self::any(turns).without(Self::of(turns, false, 0)).bits & ((1 << turns) - 1);
        match count {
            0 => Self::none(turns),
            1 => Self { bits: turned(), turns },
            // Two turned in their places, or exchanged; two edges turned add up to nothing.
            2 if turns == 2 => Self::any(turns).without(Self::of(turns, false, 1)),
            _ => Self::any(turns),
        }
    }
}

/// How far round its piece a sticker is from the reference.
fn turning(orbit: Orbit, sticker: Sticker) -> u8 {
    let reference = orbit.reference(orbit.piece(sticker));
    orbit.stickers_from(reference).position(|other| other == sticker).unwrap_or(0) as u8
}

fn sums(seen: &[Seen], orbit: Orbit) -> Sums {
    let turns = orbit.stickers_per_piece();
    let mut sums = Sums::none(turns);
    let mut pool = 0;
    for item in seen.iter().filter(|item| item.orbit() == Some(orbit)) {
        let own = match item {
            Seen::Unlooked { .. } => return Sums::any(turns),
            Seen::Unsolved { .. } => {
                pool += 1;
                continue;
            }
            Seen::Count { count, .. } => {
                pool += count;
                continue;
            }
            Seen::Turned { clockwise: None, .. } => Sums::pool(turns, 1),
            Seen::Cycle { turning: false, .. } => {
                let odd = item.demands().len() % 2 == 0;
                (0..turns).fold(Sums { bits: 0, turns }, |all, sum| all.or(Sums::of(turns, odd, sum)))
            }
            Seen::Turned { .. } | Seen::Cycle { .. } => {
                let demands = item.demands();
                let odd = demands.len() % 2 == 0;
                let sum: u8 = demands
                    .iter()
                    .filter_map(|(_, at, may)| Some((*at, may.single()?)))
                    .map(|(at, there)| turning(orbit, there) + turns - turning(orbit, at))
                    .sum();
                Sums::of(turns, odd, sum)
            }
            Seen::NothingElse => continue,
        };
        sums = sums.and(own);
    }
    sums.and(Sums::pool(turns, pool))
}

/// What must be missing from what was told of pieces, on a size whose attempts are explained; nothing where turning can lead there.
pub(super) fn missing(observed: &Observed, size: Size) -> Option<Missing> {
    let Observed::Pieces(seen) = observed else { return None };
    let all: Vec<(Orbit, Sums)> = Orbit::of(size).iter().map(|&orbit| (orbit, sums(seen, orbit))).collect();
    for &(orbit, sums) in &all {
        if !sums.has(false, 0) && !sums.has(true, 0) {
            let named: Vec<Sticker> = seen
                .iter()
                .filter(|item| item.orbit() == Some(orbit))
                .flat_map(|item| item.demands().into_iter().map(|(_, at, _)| at))
                .collect();
            let alone = named.first().copied().filter(|_| named.len() == 1);
            return Some(Missing::Turned { orbit, alone });
        }
    }
    // Corners and edges are exchanged together where a size has fixed centres; on even sizes the hold makes up for it.
    let together = |odd: bool| all.iter().all(|(_, sums)| sums.has(odd, 0));
    let possible = !size.is_odd() || together(false) || together(true);
    (!possible).then(|| Missing::Exchanged { orbits: Orbit::of(size).to_vec() })
}
