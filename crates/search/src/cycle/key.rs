//! A state of the 2x2 or 3x3 in 105 bits, and how to multiply such states.
//!
//! For each of 8 corner and 12 midge places the sticker at the place's reference sticker takes 5 bits, the way the
//! centres are turned 5 more. The rest of the 128 bits is free for what a table notes about a state. The 2x2 has its midges
//! at home for good.

use cube::{Orbit, Perm, Piece, Rotation, Size, State, Sticker};
use std::sync::LazyLock;

const PLACES: usize = 20;
const CORNERS: usize = 8;
const CORE: usize = 20;
/// The bits of a key.
pub(super) const KEY_BITS: u32 = 105;
/// The bits of a slot that hold the key.
pub(super) const KEY_MASK: u128 = (1 << KEY_BITS) - 1;

/// What lies at each place, unpacked: corners, midges, then the number of the core's rotation.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) struct Pieces([u8; 21]);

/// The number of each rotation and their products.
struct Rotations {
    all: Vec<Rotation>,
    product: [[u8; 32]; 24],
}

static ROTATIONS: LazyLock<Rotations> = LazyLock::new(|| {
    let all: Vec<Rotation> = Rotation::all().collect();
    let number = |rotation: Rotation| all.iter().position(|&other| other == rotation).unwrap_or(0) as u8;
    let mut product = [[0; 32]; 24];
    for (row, &a) in product.iter_mut().zip(&all) {
        for (entry, &b) in row.iter_mut().zip(&all) {
            *entry = number(a.then(b));
        }
    }
    Rotations { all, product }
});

/// The number of a rotation in the order of [`Rotation::all`].
pub(super) fn rotation_number(rotation: Rotation) -> u8 {
    ROTATIONS.all.iter().position(|&other| other == rotation).unwrap_or(0) as u8
}

/// For a kind of piece and a number of steps clockwise: the sticker reached from each.
static TURNED: LazyLock<[[[u8; 32]; 3]; 2]> = LazyLock::new(|| {
    [Orbit::Corner, Orbit::Midge].map(|orbit| {
        std::array::from_fn(|steps| {
            let mut row = [0; 32];
            for sticker in Sticker::all() {
                row[sticker.index()] = orbit.turned(sticker, steps as u8).index() as u8;
            }
            row
        })
    })
});

/// The reference stickers of corners, then midges.
static PLACE_STICKERS: LazyLock<[Sticker; PLACES]> = LazyLock::new(|| {
    std::array::from_fn(|place| {
        let (orbit, number) =
            if place < CORNERS { (Orbit::Corner, place) } else { (Orbit::Midge, place - CORNERS) };
        Sticker::all()
            .find(|&sticker| {
                let piece: Piece = orbit.piece(sticker);
                piece.index() == number && orbit.reference(piece) == sticker
            })
            .unwrap_or_else(|| Sticker::all().next().expect("there are 24 stickers"))
    })
});

impl Pieces {
    pub fn of(state: &State) -> Self {
        let mut pieces = [0; 21];
        for (place, entry) in pieces[..PLACES].iter_mut().enumerate() {
            let orbit = if place < CORNERS { Orbit::Corner } else { Orbit::Midge };
            *entry = state.at(orbit, PLACE_STICKERS[place]).index() as u8;
        }
        pieces[CORE] = rotation_number(state.core());
        Self(pieces)
    }

    pub fn pack(&self) -> u128 {
        let pack =
            |part: &[u8]| part.iter().rev().fold(0u64, |packed, &entry| packed << 5 | u64::from(entry));
        u128::from(pack(&self.0[..12])) | u128::from(pack(&self.0[12..])) << 60
    }

    pub fn unpack(key: u128) -> Self {
        let mut pieces = [0; 21];
        let (mut low, mut high) = (key as u64, (key >> 60) as u64);
        for entry in &mut pieces[..12] {
            *entry = (low & 31) as u8;
            low >>= 5;
        }
        for entry in &mut pieces[12..] {
            *entry = (high & 31) as u8;
            high >>= 5;
        }
        Self(pieces)
    }

    /// First this state, then a run of turns.
    pub fn then(&self, run: &Pull) -> Self {
        let mut next = [0; 21];
        for ((entry, &from), row) in next.iter_mut().zip(&run.from).zip(&run.turned) {
            *entry = row[(self.0[from as usize % 21] & 31) as usize];
        }
        next[CORE] = run.core[(self.0[CORE] & 31) as usize];
        Self(next)
    }
}

/// A state made ready to be made after another: where each place takes its piece from, and how it is turned.
#[derive(Clone, Debug)]
pub(super) struct Pull {
    from: [u8; PLACES],
    /// For each place, the sticker that arrives for each sticker that was at the source.
    turned: [[u8; 32]; PLACES],
    core: [u8; 32],
}

impl Pull {
    pub fn of(state: &State) -> Self {
        let mut pull = Self { from: [0; PLACES], turned: [[0; 32]; PLACES], core: [0; 32] };
        let number = rotation_number(state.core()) as usize;
        for (entry, row) in pull.core.iter_mut().zip(&ROTATIONS.product) {
            *entry = row[number];
        }
        for place in 0..PLACES {
            let (kind, orbit, first) =
                if place < CORNERS { (0, Orbit::Corner, 0) } else { (1, Orbit::Midge, CORNERS) };
            let sticker = state.at(orbit, PLACE_STICKERS[place]);
            let piece = orbit.piece(sticker);
            let reference = orbit.reference(piece);
            let steps = (0..orbit.stickers_per_piece())
                .find(|&steps| orbit.turned(reference, steps) == sticker)
                .unwrap_or(0);
            pull.from[place] = (first + piece.index()) as u8;
            pull.turned[place] = TURNED[kind][steps as usize];
        }
        pull
    }
}

/// A state made ready to be made before many others: two places are looked up at a time.
pub(super) struct Before {
    corners: Vec<u16>,
    midges: Vec<u16>,
    core: [u8; 32],
}

impl Before {
    pub fn of(state: &State) -> Self {
        let pairs = |perm: &Perm| {
            let at = |sticker: usize| u16::from(perm.table().get(sticker).copied().unwrap_or(0));
            (0..1024usize).map(|pair| at(pair & 31) | at(pair >> 5) << 5).collect()
        };
        let number = rotation_number(state.core()) as usize;
        Self {
            corners: pairs(state.orbit(Orbit::Corner)),
            midges: if state.size() == Size::TWO {
                pairs(&Perm::IDENTITY)
            } else {
                pairs(state.orbit(Orbit::Midge))
            },
            core: ROTATIONS.product[number],
        }
    }

    /// The key of this state and then the one with the given key.
    pub fn then(&self, key: u128) -> u128 {
        let (low, high) = (key as u64, (key >> 60) as u64);
        let two = |table: &[u16], bits: u64| u64::from(table[(bits & 1023) as usize]);
        let mut new_low = 0;
        for pair in 0..4 {
            new_low |= two(&self.corners, low >> (10 * pair)) << (10 * pair);
        }
        for pair in 4..6 {
            new_low |= two(&self.midges, low >> (10 * pair)) << (10 * pair);
        }
        let mut new_high = u64::from(self.core[(high >> 40 & 31) as usize]) << 40;
        for pair in 0..4 {
            new_high |= two(&self.midges, high >> (10 * pair)) << (10 * pair);
        }
        u128::from(new_low) | u128::from(new_high) << 60
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use cube::{Algorithm, Turn};
    use proptest::prelude::*;

    fn turns(size: Size) -> impl Strategy<Value = Vec<Turn>> {
        let all: Vec<Turn> = Turn::all(size).collect();
        prop::collection::vec(prop::sample::select(all), 0..30)
    }

    proptest! {
        #[test]
        fn keys_multiply_as_states_do(a in turns(Size::THREE), b in turns(Size::THREE)) {
            let (a, b) = (State::solved(Size::THREE).after(&a), State::solved(Size::THREE).after(&b));
            let product = Pieces::of(&a.then(&b)).pack();
            prop_assert_eq!(Pieces::of(&a).then(&Pull::of(&b)).pack(), product);
            prop_assert_eq!(Before::of(&a).then(Pieces::of(&b).pack()), product);
            prop_assert_eq!(Pieces::unpack(product).pack(), product);
            prop_assert!(product <= KEY_MASK);
        }

        #[test]
        fn so_on_the_2x2(a in turns(Size::TWO), b in turns(Size::TWO)) {
            let (a, b) = (State::solved(Size::TWO).after(&a), State::solved(Size::TWO).after(&b));
            let product = Pieces::of(&a.then(&b)).pack();
            prop_assert_eq!(Pieces::of(&a).then(&Pull::of(&b)).pack(), product);
            prop_assert_eq!(Before::of(&a).then(Pieces::of(&b).pack()), product);
        }
    }

    #[test]
    fn no_key_is_zero() {
        let solved = Pieces::of(&State::solved(Size::THREE)).pack();
        assert_ne!(solved, 0);
        let turns = Algorithm::parse("R", Size::THREE).unwrap().flatten();
        assert_ne!(Pieces::of(&State::solved(Size::THREE).after(&turns)).pack(), solved);
    }
}
