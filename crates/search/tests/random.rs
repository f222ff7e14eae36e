//! Random states: the generator is the published one, and every state is as likely as any other.

use cube::{Orbit, Rotation, Size, State};
use rand::Rng;
use search::random::{below, corners, midges, seeded, shuffle, state2, state3};

#[test]
fn the_generator_is_chacha20() {
    // Source: RFC 8439, appendix A.1, test vector 1 (block 0) and 2 (block 1): key and nonce all zero.
    let mut bytes = [0; 128];
    seeded(0).fill_bytes(&mut bytes);
    let published = "\
        76b8e0ada0f13d90405d6ae55386bd28bdd219b8a08ded1aa836efcc8b770dc7\
        da41597c5157488d7724e03fb8d84a376a43b8f41518a11cc387b669b2ee6586\
        9f07e7be5551387a98ba977c732d080dcb0f29a048e3656912c6533e32ee7aed\
        29b721769ce64e43d57133b074d839d531ed1f28510afb45ace10a1f4b794d6f";
    for (at, byte) in bytes.iter().enumerate() {
        assert_eq!(u8::from_str_radix(&published[2 * at..2 * at + 2], 16), Ok(*byte), "byte {at}");
    }
    assert_ne!(seeded(1).next_u64(), seeded(0).next_u64());
}

/// The same seed gives the same states, for ever and on every platform.
#[test]
fn states_of_a_seed() {
    let mut generator = seeded(42);
    assert_eq!(state2(&mut generator).facelets().to_string(), "UBBBRRFUDULDRDLULFFDBFRL");
    assert_eq!(
        state3(&mut generator).facelets().to_string(),
        "BFRFUDUBLLRBRLBRBULLDUFDFURFRBBRDDURULDLBUBFULLFRDFFDD"
    );
}

/// Pearson's statistic of counts that should be equal.
fn chi_square(counts: &[u32]) -> f64 {
    let expected = f64::from(counts.iter().sum::<u32>()) / counts.len() as f64;
    counts.iter().map(|&count| (f64::from(count) - expected).powi(2) / expected).sum()
}

#[test]
fn every_piece_everywhere_equally_often() {
    let mut generator = seeded(9);
    // Which sticker is at each place, over 48,000 states.
    let mut at = vec![[[0u32; 24]; 24]; 2];
    let mut odd = [0u32; 2];
    for _ in 0..48_000 {
        let state = state3(&mut generator);
        odd[usize::from(state.corners().is_odd())] += 1;
        for (counts, &orbit) in at.iter_mut().zip(Orbit::of(Size::THREE)) {
            for (count, &sticker) in counts.iter_mut().zip(state.orbit(orbit).table()) {
                count[sticker as usize] += 1;
            }
        }
    }
    for counts in at.iter().flatten() {
        // Source: chi-square distribution, 23 degrees of freedom: 58.6 is exceeded in 1 of 16,000 cases (from memory: 49.73
        // at 1 in 1,000); 48 tables with a fixed seed.
        assert!(chi_square(counts) < 58.6, "{counts:?}");
    }
    assert!(chi_square(&odd) < 10.83, "1 in 1,000 with one degree of freedom (standard tables)");
}

#[test]
fn all_orders_of_few_things_equally_often() {
    let mut generator = seeded(10);
    let mut counts = [0u32; 24];
    for _ in 0..24_000 {
        let mut things = [0usize, 1, 2, 3];
        shuffle(&mut things, &mut generator);
        let rank = things[0] * 6
            + things[1..].iter().filter(|&&thing| thing < things[1]).count() * 2
            + usize::from(things[2] > things[3]);
        counts[rank] += 1;
    }
    assert!(counts.iter().all(|&count| count > 0));
    // Source: standard tables, chi-square with 23 degrees of freedom, 1 in 1,000: 49.73.
    assert!(chi_square(&counts) < 49.73, "{counts:?}");
}

#[test]
fn numbers_below_a_bound() {
    let mut generator = seeded(11);
    assert_eq!(below(0, &mut generator), 0);
    assert_eq!(below(1, &mut generator), 0);
    let mut counts = [0u32; 7];
    for _ in 0..70_000 {
        counts[below(7, &mut generator) as usize] += 1;
    }
    // Source: standard tables, chi-square with 6 degrees of freedom, 1 in 1,000: 22.46.
    assert!(chi_square(&counts) < 22.46, "{counts:?}");
    let large = u64::MAX / 3 * 2;
    assert!((0..1_000).all(|_| below(large, &mut generator) < large));
}

#[test]
fn what_is_drawn_can_be_reached() {
    let mut generator = seeded(12);
    for at in 0..2_000 {
        let two = state2(&mut generator);
        assert_eq!(State::from_orbits(Size::TWO, Rotation::NONE, &[*two.orbit(Orbit::Corner)]), Ok(two));
        let three = state3(&mut generator);
        let perms = [*three.orbit(Orbit::Corner), *three.orbit(Orbit::Midge)];
        assert_eq!(State::from_orbits(Size::THREE, Rotation::NONE, &perms), Ok(three));
        assert_eq!(midges(at % 2 == 1, &mut generator).is_odd(), at % 2 == 1);
        assert_eq!(corners(&mut generator).turned().iter().sum::<u8>() % 3, 0);
    }
}
