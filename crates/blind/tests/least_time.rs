//! Memos that take least time, against trying every order of the cycles and every sticker of each, with made-up times.

use blind::{Breaks, Costs, Letters, Trace, cheapest_breaks};
use cube::{Layer, Orbit, Perm, Sticker};
use proptest::prelude::*;
use rand::prelude::*;
use rand_chacha::ChaCha8Rng;

const WING: Orbit = Orbit::Wing { layer: Layer::Second };

/// Made-up times: of two letters, of a last one, and of two pieces turned in their places.
#[derive(Clone, Debug)]
struct Times {
    orbit: Orbit,
    pair: Vec<u32>,
    last: Vec<u32>,
    /// None where no algorithm turns both.
    joint: Vec<Option<u32>>,
}

impl Times {
    /// Few different times make many memos equal, many make them differ.
    fn new(orbit: Orbit, most: u32, rng: &mut impl Rng) -> Self {
        let mut times = |count: usize| (0..count).map(|_| rng.random_range(0..=most)).collect::<Vec<u32>>();
        let (pair, last, joint) = (times(576), times(24), times(576));
        let known = rng.random_range(0.0..=1.0);
        let joint = joint.into_iter().map(|time| rng.random_bool(known).then_some(time)).collect();
        Self { orbit, pair, last, joint }
    }

    fn costs(&self) -> Costs {
        let at = |one: Sticker, other: Sticker| one.index() * 24 + other.index();
        let costs = Costs::in_pairs(
            self.orbit,
            |one, other| self.pair[at(one, other)],
            |last| self.last[last.index()],
        );
        if self.orbit.stickers_per_piece() == 1 {
            return costs;
        }
        costs.with_joint(|one, other| self.joint[at(one, other)])
    }

    /// What the letters of a whole memo take, pair by pair, two turned pieces together where that is told to take less.
    fn of(&self, letters: &[usize]) -> u32 {
        match letters {
            [] => 0,
            [last] => self.last[*last],
            [first, second, rest @ ..] => {
                let alone = self.pair[first * 24 + second] + self.of(rest);
                match rest {
                    [third, fourth, rest @ ..] => self
                        .both([*first, *second, *third, *fourth])
                        .map_or(alone, |both| alone.min(both + self.of(rest))),
                    _ => alone,
                }
            }
        }
    }

    /// Two pieces turned in their places by one algorithm: edges, or corners that turn against each other, the clockwise one first.
    fn both(&self, letters: [usize; 4]) -> Option<u32> {
        let orbit = self.orbit;
        let [a, b, c, d] = letters.map(|number| Sticker::new(number as u8).unwrap());
        let turned = |one: Sticker, other: Sticker| one != other && orbit.piece(one) == orbit.piece(other);
        if orbit.stickers_per_piece() == 1 || !turned(a, b) || !turned(c, d) {
            return None;
        }
        let clockwise = |one: Sticker, other: Sticker| orbit.turned(one, 1) == other;
        match (orbit, clockwise(a, b), clockwise(c, d)) {
            (Orbit::Corner, true, false) => self.joint[a.index() * 24 + c.index()],
            (Orbit::Corner, false, true) => self.joint[c.index() * 24 + a.index()],
            (Orbit::Corner, ..) => None,
            _ => self.joint[a.index() * 24 + c.index()],
        }
    }
}

/// A kind with some pieces away or turned: at random, or in cycles of one to three, so that there are many of them.
fn seen(orbit: Orbit, away: usize, rng: &mut impl Rng) -> Perm {
    let pieces: Vec<Sticker> = orbit.all_pieces().map(|piece| orbit.reference(piece)).collect();
    let mut lies: Vec<Sticker> = pieces.clone();
    let mut moved: Vec<usize> = (0..pieces.len()).collect();
    moved.shuffle(rng);
    moved.truncate(away);
    let mut order = moved.clone();
    if rng.random() {
        order.shuffle(rng);
    } else {
        let mut left = order.as_mut_slice();
        while !left.is_empty() {
            let (cycle, rest) = left.split_at_mut(rng.random_range(1..=left.len().min(3)));
            cycle.rotate_left(1);
            left = rest;
        }
    }
    for (&place, &piece) in moved.iter().zip(&order) {
        lies[place] = orbit.turned(pieces[piece], rng.random_range(0..orbit.stickers_per_piece()));
    }
    // One piece more or less turned, so that the turns add up.
    let steps = |&lies: &Sticker| {
        let home = orbit.reference(orbit.piece(lies));
        (0..orbit.stickers_per_piece()).find(|&steps| orbit.turned(home, steps) == lies).unwrap()
    };
    let sum: u8 = lies.iter().map(steps).sum();
    let stickers = orbit.stickers_per_piece();
    lies[moved[0]] = orbit.turned(lies[moved[0]], stickers - sum % stickers);
    let mut table = [0; 24];
    for (&place, &lies) in pieces.iter().zip(&lies) {
        for steps in 0..stickers {
            table[orbit.turned(place, steps).index()] = orbit.turned(lies, steps).index() as u8;
        }
    }
    Perm::new(table).unwrap()
}

/// The letters of the buffer's cycle, and the cycles beside it by their stickers.
fn cycles(seen: &Perm, orbit: Orbit, buffer: Sticker) -> (Vec<usize>, Vec<Vec<Sticker>>) {
    let mut before = Vec::new();
    let mut met = vec![orbit.piece(buffer)];
    let mut place = seen.at(buffer);
    while orbit.piece(place) != orbit.piece(buffer) {
        before.push(place.index());
        met.push(orbit.piece(place));
        place = seen.at(place);
    }
    let mut all = Vec::new();
    for start in Sticker::all() {
        if met.contains(&orbit.piece(start)) || seen.at(start) == start {
            continue;
        }
        let mut stickers = Vec::new();
        let mut place = start;
        while !met.contains(&orbit.piece(place)) {
            met.push(orbit.piece(place));
            stickers.extend(orbit.stickers_from(place));
            place = seen.at(place);
        }
        all.push(stickers);
    }
    (before, all)
}

/// The letters of a cycle that is broken into at a sticker.
fn letters(seen: &Perm, orbit: Orbit, start: Sticker) -> Vec<usize> {
    let mut letters = vec![start.index()];
    let mut place = seen.at(start);
    while orbit.piece(place) != orbit.piece(start) {
        letters.push(place.index());
        place = seen.at(place);
    }
    letters.push(place.index());
    letters
}

/// The least of all memos, one by one.
fn least(times: &Times, seen: &Perm, so_far: &[usize], left: &[Vec<Sticker>], tried: &mut usize) -> u32 {
    if left.is_empty() {
        *tried += 1;
        return times.of(so_far);
    }
    let mut found = u32::MAX;
    for (at, cycle) in left.iter().enumerate() {
        let mut rest = left.to_vec();
        rest.remove(at);
        for &start in cycle {
            let longer = [so_far, &letters(seen, times.orbit, start)].concat();
            found = found.min(least(times, seen, &longer, &rest, tried));
        }
    }
    found
}

/// The time of the memo that is found; it solves, for only then is it a trace.
fn found(times: &Times, seen: &Perm, buffer: Sticker, order: &[Sticker; 24]) -> u32 {
    let costs = times.costs();
    let starts = cheapest_breaks(seen, times.orbit, buffer, order, &costs);
    let (_, all) = cycles(seen, times.orbit, buffer);
    assert_eq!(starts.len(), all.len());
    for cycle in &all {
        assert_eq!(starts.iter().filter(|start| cycle.contains(start)).count(), 1);
    }
    let rest = order.iter().copied().filter(|sticker| !starts.contains(sticker));
    let whole: Vec<Sticker> = starts.iter().copied().chain(rest).collect();
    let breaks = Breaks { order: std::array::from_fn(|at| whole[at]), cost: None };
    let trace = Trace::new(times.orbit, seen, buffer, &breaks).unwrap();
    let time = times.of(&trace.targets().iter().map(|target| target.index()).collect::<Vec<_>>());
    assert_eq!(costs.groups(&trace.targets()).1, time);
    time
}

fn order(rng: &mut impl Rng) -> [Sticker; 24] {
    let mut order: Vec<Sticker> = Sticker::all().collect();
    order.shuffle(rng);
    std::array::from_fn(|at| order[at])
}

/// As many memos as are tried at the most for one state.
const MOST: usize = 60_000;

/// How many memos there are with these cycles.
fn memos(cycles: &[Vec<Sticker>]) -> usize {
    cycles.iter().enumerate().map(|(at, cycle)| cycle.len() * (at + 1)).product()
}

#[test]
fn the_memo_found_takes_the_least_time_of_all() {
    let mut rng = ChaCha8Rng::seed_from_u64(1000);
    let mut by_cycles = [0; 8];
    let mut tried = 0;
    for round in 0..4000 {
        let orbit = [Orbit::Corner, Orbit::Midge, WING][round % 3];
        let away = rng.random_range(2..=orbit.pieces().min(10)) as usize;
        let seen = seen(orbit, away, &mut rng);
        let buffer = Sticker::new(rng.random_range(0..24)).unwrap();
        let times = Times::new(orbit, *[3, 20, 5000].choose(&mut rng).unwrap(), &mut rng);
        let (before, all) = cycles(&seen, orbit, buffer);
        if memos(&all) > MOST {
            continue;
        }
        by_cycles[all.len()] += 1;
        let least = least(&times, &seen, &before, &all, &mut tried);
        assert_eq!(found(&times, &seen, buffer, &order(&mut rng)), least, "{orbit}: {seen:?}, {buffer:?}");
    }
    assert!(tried > 1_000_000 && by_cycles[1..5].iter().all(|&states| states > 40), "{tried}, {by_cycles:?}");
}

/// Many cycles, too many for trying every memo: cycles of one kind exchanged in the order, or any memo at random, takes no less.
#[test]
fn no_memo_at_random_takes_less() {
    let mut rng = ChaCha8Rng::seed_from_u64(11);
    for round in 0..120 {
        let orbit = [Orbit::Midge, WING, Orbit::Corner][round % 3];
        let count = orbit.pieces() as usize;
        // Pieces exchanged two by two, or turned in their places, few or none of them in longer cycles.
        let mut lies: Vec<Sticker> = Sticker::all().collect();
        let pieces: Vec<Sticker> = orbit.all_pieces().map(|piece| orbit.reference(piece)).collect();
        let mut shuffled = pieces.clone();
        shuffled.shuffle(&mut rng);
        let exchanged = rng.random_range(0..=count / 2);
        for pair in shuffled[..2 * exchanged].chunks(2) {
            for (a, b) in orbit.stickers_from(pair[0]).zip(orbit.stickers_from(pair[1])) {
                lies.swap(a.index(), b.index());
            }
        }
        if orbit.stickers_per_piece() > 1 {
            for pair in shuffled[2 * exchanged..].chunks_exact(2) {
                for (place, by) in [(pair[0], 1), (pair[1], orbit.stickers_per_piece() - 1)] {
                    for sticker in orbit.stickers_from(place) {
                        lies[sticker.index()] = orbit.turned(sticker, by);
                    }
                }
            }
        }
        let seen = Perm::new(std::array::from_fn(|at| lies[at].index() as u8)).unwrap();
        let buffer = Sticker::new(rng.random_range(0..24)).unwrap();
        let times = Times::new(orbit, 1000, &mut rng);
        let order = order(&mut rng);
        let least = found(&times, &seen, buffer, &order);
        let (before, mut all) = cycles(&seen, orbit, buffer);
        for _ in 0..300 {
            all.shuffle(&mut rng);
            let starts = all.iter().map(|cycle| *cycle.choose(&mut rng).unwrap());
            let memo: Vec<usize> =
                before.iter().copied().chain(starts.flat_map(|start| letters(&seen, orbit, start))).collect();
            assert!(times.of(&memo) >= least, "{orbit}: {seen:?}");
        }
        // Climbing down from there by one change at a time ends no lower either.
        let mut starts: Vec<Sticker> =
            cheapest_breaks(&seen, orbit, buffer, &Letters::default().order(), &times.costs());
        let time = |starts: &[Sticker]| {
            let rest = starts.iter().flat_map(|&start| letters(&seen, orbit, start));
            times.of(&before.iter().copied().chain(rest).collect::<Vec<_>>())
        };
        assert_eq!(time(&starts), least, "another order of preference finds another memo of the same time");
        for at in 0..starts.len() {
            let cycle = all.iter().find(|cycle| cycle.contains(&starts[at])).unwrap();
            for &other in cycle {
                let kept = std::mem::replace(&mut starts[at], other);
                for with in 0..starts.len() {
                    starts.swap(at, with);
                    assert!(time(&starts) >= least, "{orbit}: {seen:?}");
                    starts.swap(at, with);
                }
                starts[at] = kept;
            }
        }
    }
}

proptest! {
    #[test]
    fn the_first_letter_of_equal_memos_is_the_preferred(seed: u64, which in 0..3usize, away in 2..8usize) {
        let mut rng = ChaCha8Rng::seed_from_u64(seed);
        let orbit = [Orbit::Corner, Orbit::Midge, WING][which];
        let seen = seen(orbit, away, &mut rng);
        let buffer = Sticker::new(rng.random_range(0..24)).unwrap();
        // Times that differ little, so that many memos take the least.
        let times = Times::new(orbit, 2, &mut rng);
        let order = order(&mut rng);
        let (before, all) = cycles(&seen, orbit, buffer);
        prop_assume!(!all.is_empty() && memos(&all) <= 5_000);
        let starts = cheapest_breaks(&seen, orbit, buffer, &order, &times.costs());
        let least_of_all = least(&times, &seen, &before, &all, &mut 0);
        prop_assert_eq!(found(&times, &seen, buffer, &order), least_of_all);
        let begun = |start: &Sticker| {
            let at = all.iter().position(|cycle| cycle.contains(start));
            at.is_some_and(|at| {
                let mut rest = all.clone();
                rest.remove(at);
                let so_far = [before.as_slice(), &letters(&seen, orbit, *start)].concat();
                least(&times, &seen, &so_far, &rest, &mut 0) == least_of_all
            })
        };
        prop_assert_eq!(order.iter().find(|start| begun(start)), starts.first());
    }
}
