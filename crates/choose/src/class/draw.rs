//! A uniformly random state of a class.

use super::count::{Class, adding_to_nothing};
use super::space::KindSpace;
use crate::condition::Part;
use cube::{Perm, Sticker};
use num_bigint::BigUint;
use rand::Rng;
use search::random::shuffle;

/// A uniformly random number below a bound; 0 for the bound 0.
pub(crate) fn below(bound: u128, generator: &mut impl Rng) -> u128 {
    if let Ok(small) = u64::try_from(bound) {
        return u128::from(search::random::below(small, generator));
    }
    // Numbers of as few bits as hold the bound; more than half of them are below it.
    let mask = u128::MAX >> (bound - 1).leading_zeros();
    loop {
        let drawn = (u128::from(generator.next_u64()) << 64 | u128::from(generator.next_u64())) & mask;
        if drawn < bound {
            return drawn;
        }
    }
}

/// The same of a number of any length.
pub(crate) fn below_large(bound: &BigUint, generator: &mut impl Rng) -> BigUint {
    if let Ok(small) = u128::try_from(bound) {
        return below(small, generator).into();
    }
    // Numbers of as few bits as hold the bound, as above.
    let words = bound.bits().div_ceil(32) as usize;
    let spare = 32 * words as u64 - (bound - 1_u8).bits();
    loop {
        let mut drawn: Vec<u32> = (0..words).map(|_| generator.next_u32()).collect();
        if let Some(highest) = drawn.last_mut() {
            *highest = if spare >= 32 { 0 } else { *highest >> spare };
        }
        let drawn = BigUint::new(drawn);
        if drawn < *bound {
            return drawn;
        }
    }
}

fn small(bound: u8, generator: &mut impl Rng) -> u8 {
    search::random::below(u64::from(bound), generator) as u8
}

/// Draws what lies at each place. Cycles are filled with the pieces in a random order: each state of the class comes of
/// equally many orders.
pub(crate) fn draw(space: &KindSpace, class: &Class, generator: &mut impl Rng) -> Perm {
    let mut order = space.others.clone();
    shuffle(&mut order, generator);
    let mut pieces = order.into_iter();
    let mut table = *Perm::IDENTITY.table();
    let turns = turnings(space, class, generator);
    let turned = turns.iter().sum::<u8>() % space.ways();
    let rest = (space.ways() - turned) % space.ways();
    let carried = if let Part::BufferAway { pieces } = class.buffer { pieces - 1 } else { 0 };
    lay(space, &mut table, space.buffer, carried, rest, &mut pieces, generator);
    let plain = class.plain.iter().map(|&length| (length, 0));
    for (length, turn) in class.turning.iter().copied().zip(turns).chain(plain) {
        if let Some(begin) = pieces.next() {
            lay(space, &mut table, begin, length - 1, turn, &mut pieces, generator);
        }
    }
    Perm::new(table).unwrap_or(Perm::IDENTITY)
}

/// How far each turning cycle turns: uniformly among the ways in which the buffer's piece is found as the class says.
fn turnings(space: &KindSpace, class: &Class, generator: &mut impl Rng) -> Vec<u8> {
    let ways = space.ways();
    let mut turns = Vec::with_capacity(class.turning.len());
    let to_nothing = match class.buffer {
        Part::BufferHome { turned } => Some(!turned),
        _ => None,
    };
    let mut sum = 0;
    for left in (0..class.turning.len() as u8).rev() {
        // In how many ways the turnings still to come lead to the end wanted, for each turning now.
        let ends = |turn: u8| {
            let all = u128::from(ways - 1).pow(u32::from(left));
            let zero = adding_to_nothing(ways, left);
            let reached =
                if (sum + turn).is_multiple_of(ways) { zero } else { (all - zero) / u128::from(ways - 1) };
            match to_nothing {
                None => all,
                Some(true) => reached,
                Some(false) => all - reached,
            }
        };
        let mut at = below((1..ways).map(ends).sum(), generator);
        let mut turn = 1;
        while turn < ways - 1 && at >= ends(turn) {
            at -= ends(turn);
            turn += 1;
        }
        turns.push(turn);
        sum = (sum + turn) % ways;
    }
    turns
}

/// Lays a cycle: from one sticker on through so many further pieces, each at a random sticker, and back to the first piece,
/// so many stickers further round.
fn lay(
    space: &KindSpace,
    table: &mut [u8; 24],
    begin: Sticker,
    further: u8,
    turn: u8,
    pieces: &mut impl Iterator<Item = Sticker>,
    generator: &mut impl Rng,
) {
    let orbit = space.orbit;
    let mut put = |place: Sticker, sticker: Sticker| {
        for (place, sticker) in orbit.stickers_from(place).zip(orbit.stickers_from(sticker)) {
            table[place.index()] = sticker.index() as u8;
        }
    };
    let mut place = begin;
    for piece in pieces.take(further as usize) {
        let sticker = orbit.turned(piece, small(space.ways(), generator));
        put(place, sticker);
        place = sticker;
    }
    put(place, orbit.turned(begin, turn));
}
