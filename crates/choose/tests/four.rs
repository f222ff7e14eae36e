//! Conditions on the 4x4: what is counted is as frequent as traced, and what is drawn is uniform.

#[path = "../../blind/tests/drawn/mod.rs"]
mod drawn;

use blind::{BreakChoice, Conventions, HoldChoice, Solver};
use choose::{Condition, Lying, Matching, Sampler, lessons, put_down, ratio};
use cube::{Layer, Orbit, Rotation, Size, Sticker};
use formats::conditions;
use rand::prelude::*;
use rand_chacha::ChaCha8Rng;
use search::random::state4;
use std::collections::BTreeMap;

const FOUR: Size = Size::ALL[2];
const WING: Orbit = Orbit::Wing { layer: Layer::Second };
const CENTRE: Orbit = Orbit::XCentre { layer: Layer::Second };

fn read(text: &str, solver: &Solver) -> Condition {
    conditions::read(text, FOUR, solver.conventions()).unwrap()
}

/// The share of states that is counted.
fn share(text: &str, solver: &Solver) -> f64 {
    let condition = read(text, solver);
    Sampler::new(&condition, Lying::Anyhow, solver).map_or(0.0, |sampler| match sampler.matching() {
        Matching::Exact(count) => ratio(&count, &sampler.total()),
        Matching::AtMost(_) => panic!("{text} is not counted exactly"),
    })
}

/// Source: C(24, 4) ways for each colour after another, 24! / 4!⁶, from memory 3,246,670,537,110,000; OEIS A075152 for all together.
#[test]
fn all_states_together_are_the_published_number() {
    let solver = Solver::new(FOUR, Conventions::default());
    let any = Condition::any(FOUR);
    let sampler = Sampler::new(&any, Lying::Scrambled, &solver).unwrap();
    assert_eq!(sampler.matching(), Matching::Exact(sampler.total()));
    let published = include_str!("../../../reference/oeis/A075152.txt");
    let four = published.lines().find_map(|line| line.strip_prefix("4\t")).unwrap();
    assert_eq!(sampler.total().to_string(), four.trim());
    // Source: the textbook counts 8! · 3⁷, 24! and, for the centres, 24! / 4!⁶; whether something is asked of the centres or not.
    let asked = read("x-centre.targets >= 0", &solver);
    assert_eq!(Sampler::new(&asked, Lying::Scrambled, &solver).unwrap().total(), sampler.total());
}

#[test]
fn counts_are_as_frequent_as_traced_whatever_the_conventions() {
    const STATES: u64 = 20_000;
    let mut rng = ChaCha8Rng::seed_from_u64(44);
    let mut by_letter = 0;
    for _ in 0..5 {
        let solver = Solver::new(FOUR, drawn::conventions(&mut rng));
        let mut texts: Vec<String> = (0..36).map(|targets| format!("wing.targets = {targets}")).collect();
        texts.extend((0..6).map(|breaks| format!("wing.breaks = {breaks} and wing.parity = even")));
        texts.extend((1..24).map(|pieces| format!("wing.buffer-cycle = {pieces}")));
        texts.extend((2..24).map(|pieces| format!("wing.longest = {pieces}")));
        texts.extend((0..28).map(|targets| format!("x-centre.targets = {targets}")));
        texts.extend((0..4).map(|breaks| format!("x-centre.breaks = {breaks} and corner.parity = even")));
        texts.extend((1..24).map(|pieces| format!("x-centre.buffer-cycle = {pieces}")));
        texts.extend((0..16).map(|solved| format!("x-centre.solved = {solved}")));
        texts.extend((2..24).map(|pieces| format!("x-centre.longest = {pieces}")));
        texts.extend((36..64).map(|letters| format!("letters = {letters}")));
        texts.extend(
            [
                "x-centre.parity = odd",
                "x-centre.buffer = solved and x-centre.targets >= 18",
                "x-centre.buffer = away and wing.parity = odd",
                "x-centre.shortest <= 3",
                "x-centre.cycles = 2",
                "x-centre.cycles(2..4) >= 1",
                "x-centre.breaks = 1 and x-centre.buffer = solved",
                "wing.parity = odd",
                "wing.parity = corner.parity",
                "parity = even",
                "wing.buffer = solved",
                "wing.buffer = turned",
                "wing.turned = 1",
                "wing.solved >= 2 and corner.breaks = 1",
                "wing.cycles(2..3) > corner.cycles",
            ]
            .map(String::from),
        );
        let counted_by_letter =
            !matches!(solver.conventions().kind(WING).breaks, BreakChoice::Fewest | BreakChoice::Least);
        if counted_by_letter {
            let buffer = solver.conventions().kind(WING).buffer;
            let others: Vec<Sticker> = Sticker::all().filter(|&at| at != buffer).collect();
            texts.push(format!("wing.has({})", WING.name(*others.choose(&mut rng).unwrap())));
            by_letter += 1;
        }
        let read: Vec<Condition> = texts.iter().map(|text| read(text, &solver)).collect();
        let mut met = vec![0u64; texts.len()];
        for _ in 0..STATES {
            let memo = solver.memo(&state4(&mut rng)).unwrap();
            for (met, condition) in met.iter_mut().zip(&read) {
                *met += u64::from(condition.holds(&memo));
            }
        }
        for (text, met) in texts.iter().zip(met) {
            let share = share(text, &solver);
            let spread = (STATES as f64 * share * (1.0 - share)).sqrt();
            let off = met as f64 - share * STATES as f64;
            // Of some 500 such figures one is further off once in 3,000 seeds; rare ones are Poisson's and get room for one or two.
            assert!(off.abs() <= 5.0 * spread + 2.0, "{text}: {met} seen, {} counted", share * STATES as f64);
            assert!(share > 0.0 || met == 0, "{text}");
        }
    }
    assert!(by_letter > 0);
}

/// Source: a random permutation is even half the time, and one of n things has 1 + 1/2 + ... + 1/n cycles on average (W. Feller, An
/// Introduction to Probability Theory and Its Applications, vol. 1, X.6, from memory).
#[test]
fn wings_are_a_random_permutation() {
    let solver = Solver::new(FOUR, Conventions::default());
    assert!((share("wing.parity = odd", &solver) - 0.5).abs() < 1e-12);
    let mean = |figure: &str| -> f64 {
        (1..=24).map(|value| f64::from(value) * share(&format!("wing.{figure} = {value}"), &solver)).sum()
    };
    let alone = share("wing.buffer = solved", &solver);
    let harmonic: f64 = (1..=24).map(|n| 1.0 / f64::from(n)).sum();
    assert!((mean("cycles") + mean("solved") + alone - harmonic).abs() < 1e-9);
}

#[test]
fn what_is_drawn_meets_the_condition_and_is_uniform() {
    const DRAWS: u64 = 4_800;
    let mut rng = ChaCha8Rng::seed_from_u64(45);
    for _ in 0..3 {
        let solver = Solver::new(FOUR, drawn::conventions(&mut rng));
        let buffer = solver.conventions().kind(WING).buffer;
        let condition = read("wing.parity = even and wing.breaks = 1", &solver);
        let sampler = Sampler::new(&condition, Lying::Anyhow, &solver).unwrap();
        assert!(matches!(sampler.matching(), Matching::Exact(_)));
        // Where another wing goes, and which one lies at the buffer: all but one alike by symmetry.
        let other = Sticker::all().find(|&at| at != buffer).unwrap();
        let (mut lies, mut at_buffer) = ([0u64; 24], [0u64; 24]);
        let mut centres = [0u64; 6];
        for _ in 0..DRAWS {
            let state = sampler.draw(&mut rng, &mut |_| true).unwrap();
            assert!(condition.holds(&solver.memo(&state).unwrap()));
            lies[state.at(WING, other).index()] += 1;
            at_buffer[state.at(WING, buffer).index()] += 1;
            centres[state.at(Orbit::XCentre { layer: Layer::Second }, other).face().index()] += 1;
        }
        let alike = |counts: Vec<u64>, bound: f64| {
            let mean = counts.iter().sum::<u64>() as f64 / counts.len() as f64;
            let statistic: f64 = counts.iter().map(|&count| (count as f64 - mean).powi(2) / mean).sum();
            assert!(statistic < bound, "{statistic}: {counts:?}");
        };
        let but = |counts: [u64; 24], out: &[Sticker]| -> Vec<u64> {
            (0..24)
                .filter(|at| out.iter().all(|sticker| sticker.index() != *at))
                .map(|at| counts[at])
                .collect()
        };
        // Source: standard tables, chi-square with 21, 22 and 5 degrees of freedom, 1 in 10,000: 52.4, 53.96, 25.74 (from memory,
        // rounded up).
        alike(but(lies, &[other, buffer]), 53.0);
        alike(but(at_buffer, &[buffer]), 54.5);
        alike(centres.to_vec(), 26.0);
    }
}

/// The states that differ from solved centres by one exchange with the buffer: each of the 20 places on another face. Counted by hand.
#[test]
fn rare_centres_are_drawn_uniformly() {
    const DRAWS: u64 = 2_000;
    let solver = Solver::new(FOUR, Conventions::default());
    let buffer = solver.conventions().kind(CENTRE).buffer;
    let mut rng = ChaCha8Rng::seed_from_u64(48);
    let count = |text: &str| {
        let sampler = read(text, &solver);
        let sampler = Sampler::new(&sampler, Lying::Scrambled, &solver).unwrap();
        let Matching::Exact(count) = sampler.matching() else { panic!("{text} is not counted exactly") };
        count
    };
    let solved = count("x-centre.targets = 0");
    assert_eq!(count("x-centre.targets = 1"), &solved * 20_u8);
    // One place each of two of the five faces besides the buffer's: C(5, 2) · 4 · 4.
    assert_eq!(count("x-centre.targets = 3 and x-centre.breaks = 1"), solved * 160_u8);
    let condition = read("x-centre.targets = 1", &solver);
    let sampler = Sampler::new(&condition, Lying::Scrambled, &solver).unwrap();
    let mut wrong = [0_u64; 24];
    for _ in 0..DRAWS {
        let state = sampler.draw(&mut rng, &mut |_| true).unwrap();
        let places: Vec<Sticker> =
            Sticker::all().filter(|&place| state.at(CENTRE, place).face() != place.face()).collect();
        let [place] = places.iter().filter(|&&place| place != buffer).collect::<Vec<_>>()[..] else {
            panic!("{places:?} are wrong");
        };
        wrong[place.index()] += 1;
    }
    let seen: Vec<u64> = wrong.into_iter().filter(|&count| count > 0).collect();
    assert_eq!(seen.len(), 20);
    let mean = DRAWS as f64 / 20.0;
    let statistic: f64 = seen.iter().map(|&count| (count as f64 - mean).powi(2) / mean).sum();
    // Source: standard tables, chi-square with 19 degrees of freedom, 1 in 10,000: 50.8 (from memory, rounded up).
    assert!(statistic < 52.0, "{statistic}: {seen:?}");
    // A part that does not touch the buffer's face: each of the 160 pairs of places comes up, about 25 times in 4,000.
    let condition = read("x-centre.targets = 3 and x-centre.breaks = 1", &solver);
    let sampler = Sampler::new(&condition, Lying::Scrambled, &solver).unwrap();
    let mut pairs: BTreeMap<Vec<usize>, u64> = BTreeMap::new();
    for _ in 0..2 * DRAWS {
        let state = sampler.draw(&mut rng, &mut |_| true).unwrap();
        let wrong = Sticker::all().filter(|&place| state.at(CENTRE, place).face() != place.face());
        *pairs.entry(wrong.map(Sticker::index).collect()).or_default() += 1;
    }
    let mean = 2.0 * DRAWS as f64 / 160.0;
    let statistic: f64 = pairs.values().map(|&count| (count as f64 - mean).powi(2) / mean).sum();
    // Source: standard tables by the approximation of Wilson and Hilferty, 159 degrees of freedom, 1 in 10,000: 235 (from memory).
    assert!(pairs.len() == 160 && statistic < 235.0, "{statistic}: {pairs:?}");
}

/// Draws of a class against states drawn at random of which those that are not of it are left out: pairs of colours and figures.
#[test]
fn centres_of_a_class_are_as_frequent_as_among_all() {
    const STATES: usize = 40_000;
    let mut rng = ChaCha8Rng::seed_from_u64(49);
    let solver = Solver::new(FOUR, drawn::conventions(&mut rng));
    let buffer = solver.conventions().kind(CENTRE).buffer;
    // About one state in 14.
    let condition =
        read("x-centre.buffer = solved and x-centre.solved >= 3 and corner.parity = even", &solver);
    let sampler = Sampler::new(&condition, Lying::Anyhow, &solver).unwrap();
    let features = |state: &cube::State| {
        let colour = |place: Sticker| state.at(CENTRE, place).face().index();
        let other = Sticker::all().find(|place| place.face() != buffer.face()).unwrap();
        let right = Sticker::all().filter(|&place| colour(place) == place.face().index()).count();
        let memo = solver.memo(state).unwrap();
        let letters = memo.parts().iter().find(|trace| trace.orbit() == CENTRE).unwrap().len();
        [colour(buffer), 6 + colour(other), 12 + right, 40 + letters]
    };
    let (mut drawn, mut left) = ([0_u64; 80], [0_u64; 80]);
    let mut of_class = 0;
    for _ in 0..STATES {
        let state = state4(&mut rng);
        if condition.holds(&solver.memo(&state).unwrap()) {
            of_class += 1;
            for at in features(&state) {
                left[at] += 1;
            }
        }
    }
    for _ in 0..of_class {
        let state = sampler.draw(&mut rng, &mut |_| true).unwrap();
        for at in features(&state) {
            drawn[at] += 1;
        }
    }
    assert!(of_class > 500, "{of_class}");
    for (at, (drawn, left)) in drawn.into_iter().zip(left).enumerate() {
        // Two counts of the same mean differ by the root of their sum in two cases of three.
        let off = (drawn as f64 - left as f64).abs();
        assert!(off <= 4.5 * ((drawn + left) as f64).sqrt() + 2.0, "{at}: {drawn} drawn, {left} left");
    }
}

/// What only a trace tells is tried, and said so.
#[test]
fn letters_of_centres_are_drawn_by_trying() {
    let solver = Solver::new(FOUR, Conventions::default());
    let mut rng = ChaCha8Rng::seed_from_u64(46);
    let buffer = solver.conventions().kind(CENTRE).buffer;
    let place = CENTRE.name(Sticker::all().find(|place| place.face() != buffer.face()).unwrap());
    for text in [
        format!("x-centre.has({place}) and wing.parity = even"),
        format!("x-centre.has({place}) and x-centre.breaks = 0"),
    ] {
        let condition = read(&text, &solver);
        let sampler = Sampler::new(&condition, Lying::Anyhow, &solver).unwrap();
        assert!(matches!(sampler.matching(), Matching::AtMost(_)), "{text}");
        let estimate = sampler.estimate(4_000, &mut rng, &mut |_| true).unwrap();
        let met = (0..4_000).filter(|_| condition.holds(&solver.memo(&state4(&mut rng)).unwrap())).count();
        assert!((estimate.share - met as f64 / 4_000.0).abs() < 0.06, "{text}: {estimate:?}, {met}");
        for _ in 0..20 {
            let state = sampler.draw(&mut rng, &mut |_| true).unwrap();
            assert!(condition.holds(&solver.memo(&state).unwrap()));
        }
    }
}

#[test]
fn lessons_and_the_way_from_a_draw_to_the_hand() {
    let mut rng = ChaCha8Rng::seed_from_u64(47);
    let conventions = drawn::conventions(&mut rng);
    let solver = Solver::new(FOUR, conventions.clone());
    let mut there = 0;
    for lesson in lessons() {
        let Some(condition) = lesson.condition(FOUR) else { continue };
        there += 1;
        for lying in [Lying::Scrambled, Lying::Anyhow] {
            let sampler = Sampler::new(&condition, lying, &solver).unwrap();
            for _ in 0..20 {
                let state = sampler.draw(&mut rng, &mut |_| true).unwrap();
                let left = put_down(&state, &conventions, Rotation::NONE);
                let held = solver.pick_up(&left, HoldChoice::Conventions).unwrap().state;
                assert!(condition.holds(&solver.memo(&held).unwrap()), "{}", lesson.name());
                if lying == Lying::Scrambled {
                    let anchor = Orbit::Corner.sticker("DBL").unwrap();
                    assert_eq!(left.at(Orbit::Corner, anchor), anchor);
                }
            }
        }
    }
    assert_eq!(there, 4);
}
