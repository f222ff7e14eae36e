//! Permutations of the 24 stickers of an orbit.

use crate::Sticker;
use std::fmt;

/// A permutation of 24: for each place, which sticker is there.
///
/// Read as a state it says what lies where; read as a turn it says where each place takes its sticker from.
/// Doing one after the other is then plain composition, see [`Perm::then`].
#[derive(Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Perm([u8; 24]);

impl Perm {
    /// Everything at home.
    pub const IDENTITY: Self = {
        let mut table = [0; 24];
        let mut i = 0;
        while i < 24 {
            table[i] = i as u8;
            i += 1;
        }
        Self(table)
    };

    /// A permutation from its table; `None` unless each of 0 to 23 occurs once.
    ///
    /// ```
    /// use cube::Perm;
    /// assert!(Perm::new([0; 24]).is_none());
    /// assert_eq!(Perm::new(std::array::from_fn(|i| i as u8)), Some(Perm::IDENTITY));
    /// ```
    pub fn new(table: [u8; 24]) -> Option<Self> {
        let mut seen = 0u32;
        for &entry in &table {
            if entry >= 24 {
                return None;
            }
            seen |= 1 << entry;
        }
        (seen == 0x00ff_ffff).then_some(Self(table))
    }

    pub(crate) const fn unchecked(table: [u8; 24]) -> Self {
        Self(table)
    }

    /// The table: entry `i` is the sticker at place `i`.
    pub const fn table(&self) -> &[u8; 24] {
        &self.0
    }

    /// The sticker that is at a place.
    pub const fn at(&self, place: Sticker) -> Sticker {
        Sticker::from_table(self.0[place.index()])
    }

    /// First this, then the next: `a.then(b).at(p) == a.at(b.at(p))`.
    #[must_use]
    pub fn then(&self, next: &Self) -> Self {
        // Read from 32 places, so that no index need be checked.
        let mut here = [0; 32];
        here[..24].copy_from_slice(&self.0);
        Self(next.0.map(|from| here[from as usize % 32]))
    }

    /// The permutation that undoes this one: for each sticker, where it is.
    #[must_use]
    pub fn inverse(&self) -> Self {
        let mut table = [0; 24];
        for (place, &sticker) in self.0.iter().enumerate() {
            table[sticker as usize] = place as u8;
        }
        Self(table)
    }

    /// Whether everything is at home.
    pub fn is_identity(&self) -> bool {
        *self == Self::IDENTITY
    }

    /// Whether an odd number of exchanges makes it up, counted over the stickers.
    pub fn is_odd(&self) -> bool {
        is_odd(&self.0)
    }
}

/// Whether a permutation, given by its table, is odd.
pub(crate) fn is_odd(table: &[u8]) -> bool {
    let mut seen = 0u32;
    let mut odd = false;
    for start in 0..table.len() {
        let mut place = start;
        let mut length = 0;
        while seen & (1 << place) == 0 {
            seen |= 1 << place;
            place = table[place] as usize;
            length += 1;
        }
        odd ^= length > 0 && length % 2 == 0;
    }
    odd
}

impl fmt::Debug for Perm {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Perm{:?}", self.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_exchange_is_odd_and_two_of_them_are_not() {
        let exchanged = |pairs: &[(usize, usize)]| {
            let mut table = *Perm::IDENTITY.table();
            for &(a, b) in pairs {
                table.swap(a, b);
            }
            Perm::new(table).expect("a permutation")
        };
        assert!(Perm::IDENTITY.is_identity() && !Perm::IDENTITY.is_odd());
        let (one, two) = (exchanged(&[(3, 17)]), exchanged(&[(3, 17), (17, 23)]));
        assert!(!one.is_identity() && one.is_odd());
        assert!(!two.is_identity() && !two.is_odd());
        assert!(one.then(&one).is_identity() && two.then(&two.inverse()).is_identity());
        assert!(one.then(&two).is_odd());
    }
}
