//! Numbers that stand for many places, the same on every machine.

use crate::Face;
use crate::Rotation;

/// Takes in tables of 24 and gives a number of 64 bits: equal tables in equal order give equal numbers, others hardly ever (of n
/// different ones two have the same with a probability of about n²/2⁶⁵). Unlike the hashes for maps, whose numbers are as wide as an
/// address, it is the same where addresses have 32 bits, as in browsers.
///
/// ```
/// use cube::Fingerprint;
/// let of = |first: u8| {
///     let mut print = Fingerprint::default();
///     print.take(&[first; 24]);
///     print.number()
/// };
/// assert_eq!(of(3), of(3));
/// assert_ne!(of(3), of(4));
/// ```
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub struct Fingerprint(u64);

/// The golden ratio as a fraction of 2⁶⁴, odd (multiplicative hashing, textbook).
const RATIO: u64 = 0x9e37_79b9_7f4a_7c15;

impl Fingerprint {
    /// Takes a table in.
    pub const fn take(&mut self, table: &[u8; 24]) {
        let mut at = 0;
        while at < 24 {
            let mut word = 0;
            let mut byte = 0;
            while byte < 8 {
                word |= (table[at + byte] as u64) << (8 * byte);
                byte += 1;
            }
            self.word(word);
            at += 8;
        }
    }

    /// Takes in how the fixed centres are turned.
    pub fn take_hold(&mut self, hold: Rotation) {
        let word = Face::ALL.into_iter().fold(0, |word, face| word * 8 + hold.image(face).index() as u64);
        self.word(word);
    }

    const fn word(&mut self, word: u64) {
        let mixed = (self.0.rotate_left(5) ^ word).wrapping_mul(RATIO);
        self.0 = mixed ^ (mixed >> 29);
    }

    /// The number.
    pub const fn number(self) -> u64 {
        let mixed = (self.0 ^ (self.0 >> 32)).wrapping_mul(RATIO);
        mixed ^ (mixed >> 29)
    }
}
