//! Uniformly random states of the 2x2, 3x3 and 4x4, from a generator that the caller brings.

use cube::{Corners, Midges, Orbit, Perm, Rotation, Size, State};
use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha20Rng;

/// The size of which corners and edges are all that moves.
const SIZE: Size = Size::THREE;

/// The generator of a seed: `ChaCha20` (RFC 8439) with the seed as the first 8 bytes of the key, little end first,
/// and zeros after it. The same seed gives the same numbers on every platform.
///
/// ```
/// use rand::Rng;
/// // Source: RFC 8439, appendix A.1, test vector 1 (key and nonce all zero, block 0): 76 b8 e0 ad a0 f1 3d 90 ...
/// assert_eq!(search::random::seeded(0).next_u64().to_le_bytes(), [0x76, 0xb8, 0xe0, 0xad, 0xa0, 0xf1, 0x3d, 0x90]);
/// ```
pub fn seeded(seed: u64) -> ChaCha20Rng {
    let mut key = [0; 32];
    key[..8].copy_from_slice(&seed.to_le_bytes());
    ChaCha20Rng::from_seed(key)
}

/// A uniformly random number below a bound; 0 for the bound 0.
///
/// Written here and not taken from a library so that a seed means the same scramble after every update.
/// Source: D. Lemire, "Fast Random Integer Generation in an Interval", 2019 (unbiased by rejection).
pub fn below(bound: u64, generator: &mut impl Rng) -> u64 {
    if bound == 0 {
        return 0;
    }
    let surplus = bound.wrapping_neg() % bound;
    loop {
        let wide = u128::from(generator.next_u64()) * u128::from(bound);
        if wide as u64 >= surplus {
            return (wide >> 64) as u64;
        }
    }
}

/// Puts things in a uniformly random order (Fisher and Yates).
pub fn shuffle<T>(things: &mut [T], generator: &mut impl Rng) {
    for last in (1..things.len()).rev() {
        things.swap(last, below(last as u64 + 1, generator) as usize);
    }
}

/// A uniformly random arrangement of the corners, one of 8! · 3⁷ = 88,179,840.
pub fn corners(generator: &mut impl Rng) -> Corners {
    let mut pieces = *Corners::HOME.pieces();
    shuffle(&mut pieces, generator);
    Corners::new(pieces, turnings(3, generator)).unwrap_or(Corners::HOME)
}

/// A uniformly random arrangement of the midges that is odd or even as asked, one of 12! / 2 · 2¹¹.
pub fn midges(odd: bool, generator: &mut impl Rng) -> Midges {
    let mut pieces = *Midges::HOME.pieces();
    shuffle(&mut pieces, generator);
    let turned = turnings(2, generator);
    let drawn = Midges::new(pieces, turned).unwrap_or(Midges::HOME);
    if drawn.is_odd() == odd {
        return drawn;
    }
    // Exchanging the same two pieces pairs each odd arrangement with one even: the draw stays uniform.
    pieces.swap(0, 1);
    Midges::new(pieces, turned).unwrap_or(Midges::HOME)
}

/// Turnings of `N` pieces in `ways` ways each that add up to nothing, all but the last free.
fn turnings<const N: usize>(ways: u8, generator: &mut impl Rng) -> [u8; N] {
    let mut turned = [0; N];
    let mut sum = 0;
    for steps in &mut turned[1..] {
        *steps = below(u64::from(ways), generator) as u8;
        sum += *steps;
    }
    turned[0] = (ways - sum % ways) % ways;
    turned
}

/// A uniformly random state of the 2x2 in any hold, one of 88,179,840.
///
/// ```
/// let state = search::random::state2(&mut search::random::seeded(1));
/// assert_eq!(state, search::random::state2(&mut search::random::seeded(1)));
/// ```
pub fn state2(generator: &mut impl Rng) -> State {
    State::from_corners(&corners(generator))
}

/// A uniformly random state of the 3x3 with the centres as in the first hold, one of 43,252,003,274,489,856,000.
///
/// ```
/// let state = search::random::state3(&mut search::random::seeded(1));
/// assert_eq!(state.core(), cube::Rotation::NONE);
/// ```
pub fn state3(generator: &mut impl Rng) -> State {
    let corners = corners(generator);
    let midges = midges(corners.is_odd(), generator);
    State::from_pieces(&corners, &midges).unwrap_or(State::solved(SIZE))
}

/// A uniformly random order of an orbit whose pieces have one sticker each, such as wings.
pub fn order(generator: &mut impl Rng) -> Perm {
    let mut table: [u8; 24] = std::array::from_fn(|at| at as u8);
    shuffle(&mut table, generator);
    Perm::new(table).unwrap_or(Perm::IDENTITY)
}

/// A uniformly random state of the 4x4 in any hold, as it looks: each of the 8! · 3⁷ · 24! · 24! / 4!⁶ ways to look is as likely as any other.
///
/// All centres are drawn as if they could be told apart, which makes every look equally likely, since each comes from 4!⁶ draws.
///
/// ```
/// let state = search::random::state4(&mut search::random::seeded(1));
/// assert_eq!(state, search::random::state4(&mut search::random::seeded(1)));
/// ```
pub fn state4(generator: &mut impl Rng) -> State {
    let size = Size::ALL[2];
    let corners = *State::from_corners(&corners(generator)).orbit(Orbit::Corner);
    let perms = [corners, order(generator), order(generator)];
    State::from_orbits(size, Rotation::NONE, &perms).unwrap_or(State::solved(size))
}
