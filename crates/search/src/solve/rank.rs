//! Orders and turnings as numbers without gaps, for tables.

/// The number of an order of `N` things, at most 12, among all `N`! in lexicographic order.
pub fn order_rank<const N: usize>(order: [u8; N]) -> u32 {
    // One nibble for each number: how many smaller ones have not occurred yet.
    let mut smaller: u64 = 0xfedc_ba98_7654_3210;
    let mut rank = 0;
    for (at, number) in order.into_iter().enumerate() {
        let shift = 4 * u32::from(number);
        rank = rank * (N - at) as u32 + ((smaller >> shift) & 15) as u32;
        smaller = smaller.wrapping_sub(0x1111_1111_1111_1110 << shift);
    }
    rank
}

/// Whether an order takes an odd number of exchanges.
pub fn is_odd<const N: usize>(order: &[u8; N]) -> bool {
    (0..N).map(|at| order[..at].iter().filter(|&&before| before > order[at]).count()).sum::<usize>() % 2 == 1
}

/// All orders of `N` things in lexicographic order, so each at the place of its number.
pub fn orders<const N: usize>() -> impl Iterator<Item = [u8; N]> {
    std::iter::successors(Some(std::array::from_fn(|at| at as u8)), |order| next_order(*order))
}

fn next_order<const N: usize>(mut order: [u8; N]) -> Option<[u8; N]> {
    let rise = (1..N).rfind(|&at| order[at - 1] < order[at])?;
    let larger = (rise..N).rfind(|&at| order[at] > order[rise - 1])?;
    order.swap(rise - 1, larger);
    order[rise..].reverse();
    Some(order)
}

/// Turnings of `N` pieces in `WAYS` ways each that add up to nothing, as the digits of all but the last, which follows.
pub fn turning_rank<const N: usize, const WAYS: u8>(turned: [u8; N]) -> u16 {
    turned[..N - 1].iter().fold(0, |rank, &steps| rank * u16::from(WAYS) + u16::from(steps))
}

/// The turnings with a number.
pub fn turnings<const N: usize, const WAYS: u8>(rank: usize) -> [u8; N] {
    let mut turned = [0; N];
    let mut rest = rank;
    for steps in turned[..N - 1].iter_mut().rev() {
        *steps = (rest % WAYS as usize) as u8;
        rest /= WAYS as usize;
    }
    turned[N - 1] = (WAYS - turned[..N - 1].iter().sum::<u8>() % WAYS) % WAYS;
    turned
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_order_stands_at_its_number() {
        assert!(orders::<7>().enumerate().all(|(at, order)| order_rank(order) as usize == at));
        assert_eq!(orders::<7>().count(), 5_040);
        assert_eq!(order_rank([11, 10, 9, 8, 7, 6, 5, 4, 3, 2, 1, 0]), 479_001_599);
        assert_eq!(order_rank([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 11, 10]), 1);
    }

    #[test]
    fn each_turning_has_its_number_and_adds_up_to_nothing() {
        for rank in 0..2_187 {
            let turned = turnings::<8, 3>(rank);
            assert_eq!(turned.iter().sum::<u8>() % 3, 0);
            assert_eq!(turning_rank::<8, 3>(turned) as usize, rank);
        }
        assert!((0..2_048).all(|rank| turning_rank::<12, 2>(turnings::<12, 2>(rank)) as usize == rank));
    }
}
