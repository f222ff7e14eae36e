//! Sets of so many among up to 24 places, as numbers without gaps.

/// The sets of a fixed number of places, each a word with a bit for each place.
///
/// The number of a set is the sum of two entries, one by its upper places and one by its lower twelve.
pub struct Subsets {
    /// By the upper places: how many sets come before those that have just these.
    before: Vec<u32>,
    /// By the lower places: how many of the words with as many bits are smaller.
    among: Vec<u16>,
    count: usize,
}

const LOW: u32 = 12;

impl Subsets {
    /// The sets of `chosen` among `places` places, at most 24.
    pub fn new(places: u32, chosen: u32) -> Self {
        let low = places.min(LOW);
        let mut words = [0u16; LOW as usize + 1];
        let among = (0..1u32 << low)
            .map(|word| {
                let count = &mut words[word.count_ones() as usize];
                *count += 1;
                *count - 1
            })
            .collect();
        let mut count = 0;
        let before = (0..1u32 << (places - low))
            .map(|word| {
                let first = count;
                let rest = chosen.checked_sub(word.count_ones()).filter(|&rest| rest <= low);
                count += rest.map_or(0, |rest| u32::from(words[rest as usize]));
                first
            })
            .collect();
        Self { before, among, count: count as usize }
    }

    /// How many sets there are.
    pub const fn count(&self) -> usize {
        self.count
    }

    /// The number of a set.
    pub fn rank(&self, set: u32) -> usize {
        self.before[(set >> LOW) as usize] as usize + self.among[(set & ((1 << LOW) - 1)) as usize] as usize
    }
}

/// All sets of `chosen` among `places` places as words, from the smallest on.
pub fn all(places: u32, chosen: u32) -> impl Iterator<Item = u32> {
    std::iter::successors(Some((1u32 << chosen) - 1), |&set| {
        // The next larger word with as many bits: the lowest run of ones gives one up, the rest falls down.
        let lowest = set & set.wrapping_neg();
        let carried = set + lowest;
        Some(carried | (((set ^ carried) >> 2) / lowest))
    })
    .take_while(move |&set| set < 1 << places)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_set_has_its_number() {
        // From memory: binomial coefficients.
        for (places, chosen, count) in [(8, 4, 70), (12, 4, 495), (16, 8, 12_870), (24, 8, 735_471)] {
            let subsets = Subsets::new(places, chosen);
            assert_eq!(subsets.count(), count);
            assert!(all(places, chosen).enumerate().all(|(at, set)| subsets.rank(set) == at));
            assert_eq!(all(places, chosen).count(), count);
        }
        assert_eq!(Subsets::new(24, 12).count(), 2_704_156);
    }
}
