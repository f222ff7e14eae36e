//! Where the pieces of an orbit lie and how they are turned: the piece's view of a state.

use crate::perm::is_odd;
use crate::{Orbit, Perm, Rotation, Size, State};
use std::sync::LazyLock;

/// The pieces of an orbit of `N` pieces: which lies at each place, and how far it is turned there.
///
/// Pieces and places have the numbers of [`crate::Piece`]. The turning is measured by the reference stickers
/// ([`Orbit::reference`]): how many steps clockwise of the place's reference the piece's reference lies.
/// An arrangement is one that turning can reach as far as its own orbit goes: the turnings add up to nothing.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub struct Arrangement<const N: usize> {
    pieces: [u8; N],
    turned: [u8; N],
}

/// Where the 8 corners lie and how they are twisted.
pub type Corners = Arrangement<8>;

/// Where the 12 midges lie and which are flipped.
pub type Midges = Arrangement<12>;

impl<const N: usize> Arrangement<N> {
    /// Stickers on a piece.
    const STICKERS: u8 = (24 / N) as u8;

    /// Every piece at home.
    pub const HOME: Self = {
        let mut pieces = [0; N];
        let mut place = 0;
        while place < N {
            pieces[place] = place as u8;
            place += 1;
        }
        Self { pieces, turned: [0; N] }
    };

    /// An arrangement from the piece at each place and its turning (0 to 2 for corners, 0 or 1 for midges).
    ///
    /// `None` when a piece occurs twice, a turning is too large, or the turnings do not add up to whole turns, so that
    /// no sequence of turns leads there.
    ///
    /// ```
    /// use cube::Corners;
    /// let home = [0, 1, 2, 3, 4, 5, 6, 7];
    /// assert!(Corners::new(home, [1, 2, 0, 0, 0, 0, 0, 0]).is_some());
    /// assert!(Corners::new(home, [1, 0, 0, 0, 0, 0, 0, 0]).is_none());
    /// ```
    pub fn new(pieces: [u8; N], turned: [u8; N]) -> Option<Self> {
        let seen =
            pieces.iter().filter(|&&piece| (piece as usize) < N).fold(0u32, |seen, piece| seen | 1 << piece);
        let all = (1u32 << N) - 1;
        let in_range = turned.iter().all(|&steps| steps < Self::STICKERS);
        let closes = in_range && turned.iter().sum::<u8>() % Self::STICKERS == 0;
        (seen == all && closes).then_some(Self { pieces, turned })
    }

    /// The piece at each place.
    pub const fn pieces(&self) -> &[u8; N] {
        &self.pieces
    }

    /// How far the piece at each place is turned.
    pub const fn turned(&self) -> &[u8; N] {
        &self.turned
    }

    /// Whether an odd number of exchanges of two pieces makes it up.
    pub fn is_odd(&self) -> bool {
        is_odd(&self.pieces)
    }

    fn perm(&self, stickers: &[[u8; 3]; N]) -> Perm {
        let mut table = [0; 24];
        for (place, (&piece, &turned)) in self.pieces.iter().zip(&self.turned).enumerate() {
            for step in 0..Self::STICKERS {
                let at = stickers[place][((step + turned) % Self::STICKERS) as usize];
                table[at as usize] = stickers[piece as usize][step as usize];
            }
        }
        Perm::unchecked(table)
    }

    fn read(perm: &Perm, stickers: &[[u8; 3]; N]) -> Self {
        let mut home = [(0, 0); 24];
        for (piece, around) in stickers.iter().enumerate() {
            for step in 0..Self::STICKERS {
                home[around[step as usize] as usize] = (piece as u8, step);
            }
        }
        let mut found = Self::HOME;
        for place in 0..N {
            let (piece, step) = home[perm.table()[stickers[place][0] as usize] as usize];
            found.pieces[place] = piece;
            found.turned[place] = (Self::STICKERS - step) % Self::STICKERS;
        }
        found
    }
}

/// The stickers of each piece clockwise from its reference.
fn stickers<const N: usize>(orbit: Orbit) -> [[u8; 3]; N] {
    let mut table = [[0; 3]; N];
    for (around, &reference) in table.iter_mut().zip(orbit.references()) {
        for (entry, sticker) in around.iter_mut().zip(orbit.stickers_from(reference)) {
            *entry = sticker.index() as u8;
        }
    }
    table
}

static CORNERS: LazyLock<[[u8; 3]; 8]> = LazyLock::new(|| stickers(Orbit::Corner));
static MIDGES: LazyLock<[[u8; 3]; 12]> = LazyLock::new(|| stickers(Orbit::Midge));

/// The size that is nothing but its corners.
const CORNERS_ONLY: Size = Size::TWO;
/// The size that is nothing but its corners and midges.
const WITH_MIDGES: Size = Size::THREE;

fn place(perms: &mut [Perm; Orbit::MOST], size: Size, orbit: Orbit, perm: Perm) {
    if let Some(at) = orbit.index_on(size) {
        perms[at] = perm;
    }
}

impl State {
    /// The 2x2 with its corners so arranged.
    pub fn from_corners(corners: &Corners) -> Self {
        let mut perms = [Perm::IDENTITY; Orbit::MOST];
        place(&mut perms, CORNERS_ONLY, Orbit::Corner, corners.perm(&CORNERS));
        Self::from_parts(CORNERS_ONLY, Rotation::NONE, perms)
    }

    /// The 3x3 with its pieces so arranged, its fixed centres as in the first hold; `None` when corners and midges do
    /// not agree in parity, so that no sequence of turns leads there.
    ///
    /// ```
    /// use cube::{Corners, Midges, State};
    /// assert!(State::from_pieces(&Corners::HOME, &Midges::HOME).unwrap().is_solved());
    /// let swapped = Midges::new([1, 0, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11], [0; 12]).unwrap();
    /// assert!(State::from_pieces(&Corners::HOME, &swapped).is_none());
    /// ```
    pub fn from_pieces(corners: &Corners, midges: &Midges) -> Option<Self> {
        let mut perms = [Perm::IDENTITY; Orbit::MOST];
        place(&mut perms, WITH_MIDGES, Orbit::Corner, corners.perm(&CORNERS));
        place(&mut perms, WITH_MIDGES, Orbit::Midge, midges.perm(&MIDGES));
        (corners.is_odd() == midges.is_odd()).then(|| Self::from_parts(WITH_MIDGES, Rotation::NONE, perms))
    }

    /// Where its corners lie and how they are twisted, as it is held.
    pub fn corners(&self) -> Corners {
        Corners::read(self.orbit(Orbit::Corner), &CORNERS)
    }

    /// Where its midges lie and which are flipped, as it is held; all at home on a size without midges.
    pub fn midges(&self) -> Midges {
        Midges::read(self.orbit(Orbit::Midge), &MIDGES)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Turn;

    #[test]
    fn a_state_is_its_pieces() {
        let mut state = State::solved(Size::THREE);
        assert_eq!((state.corners(), state.midges()), (Corners::HOME, Midges::HOME));
        let turns: Vec<Turn> = Turn::faces().collect();
        let mut odd = false;
        for step in 0..2_000 {
            let turn = turns[(step * 7 + step / 18) % 18];
            state = state.after(&[turn]);
            let (corners, midges) = (state.corners(), state.midges());
            // A quarter turn cycles four corners and four midges: an odd number of exchanges of each.
            odd ^= turn.amount != crate::Amount::Half;
            assert_eq!((corners.is_odd(), midges.is_odd()), (odd, odd));
            assert_eq!(Corners::new(*corners.pieces(), *corners.turned()), Some(corners));
            assert_eq!(Midges::new(*midges.pieces(), *midges.turned()), Some(midges));
            let built = State::from_pieces(&corners, &midges).expect("a state that turns have reached");
            assert_eq!(built, state);
            assert_eq!(State::from_orbits(Size::THREE, Rotation::NONE, &built.orbits()), Ok(state));
            let small = State::from_corners(&corners);
            assert_eq!(small.corners(), corners);
            assert_eq!(small.orbit(Orbit::Corner), state.orbit(Orbit::Corner));
        }
    }

    #[test]
    fn what_turning_cannot_reach_is_refused() {
        let home = *Midges::HOME.pieces();
        let mut flipped = [0; 12];
        flipped[3] = 1;
        assert_eq!(Midges::new(home, flipped), None);
        flipped[3] = 2;
        assert_eq!(Midges::new(home, flipped), None);
        assert_eq!(Corners::new([0; 8], [0; 8]), None);
        assert_eq!(Corners::new([0, 1, 2, 3, 4, 5, 6, 8], [0; 8]), None);
        assert_eq!(Corners::new([255; 8], [255; 8]), None);
        // Whole turns by themselves are no turning that a corner can have.
        assert_eq!(Corners::new(*Corners::HOME.pieces(), [3, 0, 0, 0, 0, 0, 0, 0]), None);
    }

    impl State {
        fn orbits(&self) -> Vec<Perm> {
            Orbit::of(self.size()).iter().map(|&orbit| *self.orbit(orbit)).collect()
        }
    }
}
