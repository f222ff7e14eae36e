//! Which turn may follow which, so that no sequence is searched twice that differs only in turns that commute or merge.

use cube::{Size, Turn};

use super::merging::merges;

/// For each turn of a set, the turns of the set that may come next, as bits.
pub struct Succession {
    after: Vec<u32>,
    all: u32,
}

impl Succession {
    /// For at most 32 turns: of turns about one axis no two merge, and they come in the order of the set.
    pub fn new(turns: &[Turn], size: Size) -> Self {
        let allowed = |first: usize, next: usize| {
            turns[first].block.axis() != turns[next].block.axis()
                || (first < next && !merges(&[turns[first], turns[next]], size))
        };
        let after = (0..turns.len())
            .map(|first| {
                (0..turns.len()).filter(|&next| allowed(first, next)).fold(0, |bits, next| bits | 1 << next)
            })
            .collect();
        Self { after, all: u32::MAX >> (32 - turns.len()) }
    }

    /// What may come after a turn, or at first.
    pub fn next(&self, last: Option<usize>) -> Choices {
        Choices(last.map_or(self.all, |last| self.after[last]))
    }
}

/// Turns by their places in the set.
#[derive(Clone)]
pub struct Choices(u32);

impl Choices {
    /// The turns of a set, told as bits.
    pub const fn of(turns: u32) -> Self {
        Self(turns)
    }

    /// Only those that are in a mask.
    pub const fn among(self, mask: u32) -> Self {
        Self(self.0 & mask)
    }
}

impl Iterator for Choices {
    type Item = usize;

    fn next(&mut self) -> Option<usize> {
        let at = self.0.trailing_zeros() as usize;
        self.0 &= self.0.wrapping_sub(1);
        (at < 32).then_some(at)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source of the counts: OEIS A080601 up to what turns about one axis make equal, counted by the recurrence of
    /// sequences of face turns in a normal form: 1, 18, 243, 3240, 43254.
    #[test]
    fn as_many_sequences_of_face_turns_as_there_are_normal_forms() {
        let turns: Vec<Turn> = Turn::faces().collect();
        let succession = Succession::new(&turns, Size::THREE);
        let mut ends: Vec<Option<usize>> = vec![None];
        for count in [18, 243, 3_240, 43_254] {
            ends = ends.iter().flat_map(|&last| succession.next(last).map(Some)).collect();
            assert_eq!(ends.len(), count);
        }
    }
}
