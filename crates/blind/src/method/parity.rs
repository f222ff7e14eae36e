//! Parity: what odd numbers of letters leave behind, and what puts it right.
//!
//! Corners and edges agree, so one algorithm between them serves both; on even sizes corners are odd alone, for the centres that
//! must be odd with them look alike. On bigger sizes the swaps of both move whole edges, so that wings are left exchanged in
//! pairs; they are brought back by three-cycles. Wings and centres themselves leave nothing behind: their last letter is carried
//! out cleanly.

use super::{Carrier, Exchange, MethodError, Parity};
use crate::conventions::{Conventions, ParityChoice};
use crate::trace::{Breaks, Trace, is_right};
use crate::usual::usual_parity;
use cube::{
    Algorithm, Claim, NotProven, Orbit, OrbitMap, Perm, Rotation, Size, State, Sticker, Turn, inverted,
};
use search::conjugate::{Conjugates, Sort};
use search::solve3::{Limit, solve};

type Carriers = OrbitMap<Option<Carrier>>;

/// What is done about parity on a size.
pub(super) fn of(size: Size, carriers: &Carriers, conventions: &Conventions) -> Result<Parity, MethodError> {
    if conventions.parity == ParityChoice::Exchange && Orbit::of(size).contains(&Orbit::Midge) {
        let swap = carriers[Orbit::Corner].as_ref().and_then(Carrier::swap);
        let effect = swap.map(|swap| swap.effect().effect()).ok_or(MethodError::NoExchange)?;
        let exchange = Exchange::of(effect).ok_or(MethodError::NoExchange)?;
        let back = wings_put_right(size, |orbit| *effect.inverse().orbit(orbit))?;
        let wings = (!back.is_empty()).then(|| Algorithm::from_turns(size, &back).ok()).flatten();
        return Ok(Parity::Exchange { exchange, wings });
    }
    let order = order(size, carriers, conventions)?;
    let left = LeftOver::of(size, &order);
    // Corners and edges as they are on a 3x3; on even sizes there is nothing to put right there.
    let small = Size::ALL.into_iter().find(|other| other.is_odd() == size.is_odd()).unwrap_or(size);
    let wanted = left.wanted(small);
    let core = left.core;
    let own = if wanted.is_solved() && core == Rotation::NONE {
        None
    } else {
        Some(algorithm(small, &wanted, conventions)?)
    };
    if size == small {
        return Ok(own.map_or(Parity::Nothing, |(algorithm, found)| Parity::Algorithm { algorithm, found }));
    }
    let (turns, mut found) =
        own.map_or((Vec::new(), false), |(algorithm, found)| (algorithm.flatten(), found));
    let does = State::solved(size).after(&turns);
    let back = wings_put_right(size, |orbit| does.orbit(orbit).inverse().then(&left.perms[orbit]))?;
    found |= !back.is_empty();
    let turns = [turns, back].concat();
    if turns.is_empty() {
        return Ok(Parity::Nothing);
    }
    left.undone_by(size, &turns)?;
    let not_on_size = |error| MethodError::ParityCannotBeMade { size, error };
    Ok(Parity::Algorithm { algorithm: Algorithm::from_turns(size, &turns).map_err(not_on_size)?, found })
}

/// Corners and edges with what carries them out, in the order of execution.
fn order<'a>(
    size: Size,
    carriers: &'a Carriers,
    conventions: &Conventions,
) -> Result<Vec<(Orbit, &'a Carrier)>, MethodError> {
    let all: Vec<Orbit> = conventions.execution_order.of(size).collect();
    let turned = |orbit: &Orbit| orbit.stickers_per_piece() > 1;
    let first = all.iter().position(turned).unwrap_or(0);
    let last = all.iter().rposition(turned).unwrap_or(first);
    if let Some(&between) = all.get(first..last).into_iter().flatten().find(|orbit| !turned(orbit)) {
        return Err(MethodError::BetweenCornersAndEdges(between));
    }
    let order: Vec<(Orbit, &Carrier)> =
        all.into_iter().filter(turned).filter_map(|orbit| Some((orbit, carriers[orbit].as_ref()?))).collect();
    if order.iter().skip(1).any(|(_, carrier)| matches!(carrier, Carrier::SliceSwap(_))) {
        return Err(MethodError::SliceNotFirst);
    }
    Ok(order)
}

/// What has to be done once where the numbers of letters are odd: the algorithm undoes what the first kind leaves, and does
/// beforehand what undoes the second.
struct LeftOver {
    perms: OrbitMap<Perm>,
    core: Rotation,
}

impl LeftOver {
    fn of(size: Size, order: &[(Orbit, &Carrier)]) -> Self {
        let mut left = Self { perms: OrbitMap::new(|_| Perm::IDENTITY), core: Rotation::NONE };
        for &(orbit, carrier) in order {
            for &other in Orbit::of(size) {
                let behind = carrier.left_over(orbit, other);
                left.perms[other] = left.perms[other].then(&behind.inverse());
            }
            if let Carrier::SliceSwap(slice) = carrier {
                left.core = left.core.then(slice.left_over().1.inverse());
            }
        }
        left
    }

    /// Corners and edges of it.
    fn wanted(&self, small: Size) -> State {
        let perms: Vec<Perm> = Orbit::of(small).iter().map(|&orbit| self.perms[orbit]).collect();
        // Every swap is odd in each kind it touches, so the sum of both is always reachable.
        State::from_orbits(small, self.core, &perms).unwrap_or(State::solved(small))
    }

    /// Whether turns do what has to be done, and leave centres looking as they should.
    fn undone_by(&self, size: Size, turns: &[Turn]) -> Result<(), NotProven> {
        let does = State::solved(size).after(turns);
        let right = |orbit: Orbit| {
            if orbit.looks_alike() {
                is_right(orbit, &self.perms[orbit].inverse().then(does.orbit(orbit)))
            } else {
                *does.orbit(orbit) == self.perms[orbit]
            }
        };
        let all = Orbit::of(size).iter().all(|&orbit| right(orbit));
        NotProven::unless(all && (does.core() == self.core || !size.is_odd()), Claim::Algorithm)
    }
}

impl Carrier {
    /// What an odd number of its letters leaves behind in a kind, beside what the letters themselves do.
    fn left_over(&self, own: Orbit, orbit: Orbit) -> Perm {
        match self {
            Self::OneSwap(_) | Self::ThreeCycle(_) => match self.swap() {
                Some(swap) if own != orbit => *swap.effect().effect().orbit(orbit),
                Some(_) | None => Perm::IDENTITY,
            },
            Self::SliceSwap(slice) => *slice.left_over_of(orbit),
            Self::Inner(_) => Perm::IDENTITY,
        }
    }
}

/// The turns that do to the wings of each depth what is wanted and nothing else, by three-cycles.
fn wings_put_right(size: Size, wanted: impl Fn(Orbit) -> Perm) -> Result<Vec<Turn>, MethodError> {
    let mut turns = Vec::new();
    let wings =
        Orbit::of(size).iter().copied().filter(|orbit| orbit.is_edge() && orbit.stickers_per_piece() == 1);
    for orbit in wings {
        let wanted = wanted(orbit);
        let Some(buffer) = Sticker::all().find(|&place| wanted.at(place) != place) else { continue };
        // The letters of what lies there after it is undone bring it about.
        let breaks = Breaks { order: all_stickers(buffer), cost: None };
        let letters = Trace::new(orbit, &wanted.inverse(), buffer, &breaks)?.targets();
        for pair in letters.chunks(2) {
            let &[first, second] = pair else {
                return Err(MethodError::NoCase { orbit, first: pair[0], second: pair[0] });
            };
            let missing = MethodError::NoCase { orbit, first, second };
            if first == second {
                continue;
            }
            let state = super::letters_state(size, orbit, buffer, &[first, second]).ok_or(missing.clone())?;
            let algorithm = Conjugates::three_cycles(size, orbit).leading_to(&state).ok_or(missing)?;
            turns.extend(algorithm.flatten());
        }
    }
    Ok(turns)
}

/// All stickers, one of them first.
fn all_stickers(first: Sticker) -> [Sticker; 24] {
    let mut order = [first; 24];
    let others = Sticker::all().filter(|&other| other != first);
    for (slot, other) in order[1..].iter_mut().zip(others) {
        *slot = other;
    }
    order
}

/// The algorithm for what is wanted on a 2x2 or a 3x3: the person's own, a usual one, or one found by search; and whether it was
/// found.
fn algorithm(
    size: Size,
    wanted: &State,
    conventions: &Conventions,
) -> Result<(Algorithm, bool), MethodError> {
    let does = |algorithm: &Algorithm| State::solved(size).after(&algorithm.flatten());
    let own = conventions
        .parity_algorithm
        .on(size)
        .map_err(|error| MethodError::ParityCannotBeMade { size, error })?;
    if does(&own) == *wanted {
        return Ok((own, false));
    }
    let not_fitting =
        || MethodError::ParityDoesNotFit { wanted: all_moved(wanted), moved: all_moved(&does(&own)) };
    let known = usual_parity();
    if !known.contains(&conventions.parity_algorithm) {
        return Err(not_fitting());
    }
    let read = known.iter().filter_map(|known| known.on(size).ok());
    if let Some(algorithm) = read.into_iter().find(|algorithm| does(algorithm) == *wanted) {
        return Ok((algorithm, false));
    }
    let found = Conjugates::new(size, Sort::TwoSwaps).leading_to(wanted).or_else(|| by_two_phases(wanted));
    let algorithm = found.filter(|algorithm| does(algorithm) == *wanted).ok_or_else(not_fitting)?;
    Ok((algorithm, true))
}

fn all_moved(state: &State) -> Vec<(Orbit, Sticker)> {
    Orbit::of(state.size())
        .iter()
        .flat_map(|&orbit| {
            crate::swap::moved_pieces(state, orbit).into_iter().map(move |sticker| (orbit, sticker))
        })
        .collect()
}

/// Any short algorithm that leads to a state, by the search for states; slices first where centres move.
fn by_two_phases(wanted: &State) -> Option<Algorithm> {
    let size = wanted.size();
    let slices = ["", "M2", "E2", "S2", "M", "M'", "E", "E'", "S", "S'"];
    let read = slices.into_iter().filter_map(|text| Algorithm::parse(text, size).ok());
    let first = read
        .map(|read| read.flatten())
        .find(|turns| State::solved(size).after(turns).core() == wanted.core())?;
    let rest = State::solved(size).after(&first).inverse().then(wanted);
    let turns = [first, inverted(&solve(&rest, Limit::LOOSE).ok()?)].concat();
    Algorithm::from_turns(size, &turns).ok()
}
