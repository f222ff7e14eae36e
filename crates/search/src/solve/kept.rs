//! Tables as bytes, to be kept where making them anew takes long.

/// Tables that were kept, one after the other.
pub struct Kept<'a> {
    left: &'a [u8],
}

/// The bytes before the tables: a number from all of them, by which damage is noticed.
const HEAD: usize = 8;

impl<'a> Kept<'a> {
    /// Of bytes that [`keep`] wrote; `None` for others, and for damaged ones.
    pub fn read(bytes: &'a [u8]) -> Option<Self> {
        let (head, left) = bytes.split_first_chunk::<HEAD>()?;
        (u64::from_le_bytes(*head) == number_of(left)).then_some(Self { left })
    }

    /// So many bytes of the next table.
    pub fn take(&mut self, count: usize) -> Option<&'a [u8]> {
        let (table, left) = self.left.split_at_checked(count)?;
        self.left = left;
        Some(table)
    }

    /// Whether nothing is left.
    pub const fn is_used_up(&self) -> bool {
        self.left.is_empty()
    }
}

/// Tables as bytes.
pub fn keep<'a>(tables: impl IntoIterator<Item = &'a [u8]>) -> Vec<u8> {
    let mut bytes = vec![0; HEAD];
    tables.into_iter().for_each(|table| bytes.extend_from_slice(table));
    let number = number_of(&bytes[HEAD..]);
    bytes[..HEAD].copy_from_slice(&number.to_le_bytes());
    bytes
}

/// Eight bytes at a time by the function of G. Fowler, L. C. Noll and P. Vo (FNV-1a, 64 bits; the draft IETF eastlake-fnv has its numbers).
fn number_of(bytes: &[u8]) -> u64 {
    bytes.chunks(8).fold(0xcbf2_9ce4_8422_2325 ^ bytes.len() as u64, |number, chunk| {
        let mut word = [0; 8];
        word[..chunk.len()].copy_from_slice(chunk);
        (number ^ u64::from_le_bytes(word)).wrapping_mul(0x0100_0000_01b3)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_kept_comes_back_and_damage_is_noticed() {
        let (first, second) = (vec![7; 5], vec![9; 12]);
        let bytes = keep([&first[..], &second[..]]);
        let mut kept = Kept::read(&bytes).expect("as it was written");
        assert_eq!((kept.take(5), kept.take(12)), (Some(&first[..]), Some(&second[..])));
        assert!(kept.is_used_up() && kept.take(1).is_none());
        for at in 0..bytes.len() {
            let mut damaged = bytes.clone();
            damaged[at] ^= 1;
            assert!(Kept::read(&damaged).is_none(), "byte {at}");
        }
        assert!(Kept::read(&bytes[..bytes.len() - 1]).is_none() && Kept::read(&[]).is_none());
    }
}
