//! Conditions on the 4x4: what is counted is as frequent as traced, and what is drawn is uniform.

#[path = "../../blind/tests/drawn/mod.rs"]
mod drawn;

use blind::{BreakChoice, Conventions, HoldChoice, Solver};
use choose::{Condition, Lying, Matching, Sampler, lessons, put_down};
use cube::{Layer, Orbit, Rotation, Size, Sticker};
use formats::conditions;
use rand::prelude::*;
use rand_chacha::ChaCha8Rng;
use search::random::state4;

const FOUR: Size = Size::ALL[2];
const WING: Orbit = Orbit::Wing { layer: Layer::Second };
/// Source: the textbook counts 8! · 3⁷ and 24!, standard tables: corners and wings in every way of lying.
const ALL: f64 = 88_179_840.0 * 620_448_401_733_239_439_360_000.0;

fn read(text: &str, solver: &Solver) -> Condition {
    conditions::read(text, FOUR, solver.conventions()).unwrap()
}

/// The share of states that is counted.
fn share(text: &str, solver: &Solver) -> f64 {
    let condition = read(text, solver);
    Sampler::new(&condition, Lying::Anyhow, solver).map_or(0.0, |sampler| match sampler.matching() {
        Matching::Exact(count) => count as f64 / ALL,
        Matching::AtMost(_) => panic!("{text} is not counted exactly"),
    })
}

/// Source: C(24, 4) ways for each colour after another, 24! / 4!⁶, from memory 3,246,670,537,110,000; OEIS A075152 for all together.
#[test]
fn all_states_together_are_the_published_number() {
    let solver = Solver::new(FOUR, Conventions::default());
    let any = Condition::any(FOUR);
    let sampler = Sampler::new(&any, Lying::Scrambled, &solver).unwrap();
    assert_eq!(sampler.alike(), 3_246_670_537_110_000);
    assert_eq!(sampler.matching(), Matching::Exact(sampler.total()));
    let published = include_str!("../../../reference/oeis/A075152.txt");
    let four = published.lines().find_map(|line| line.strip_prefix("4\t")).unwrap();
    assert_eq!(sampler.with_all_alike(sampler.total()).to_string(), four.trim());
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
        texts.extend(
            [
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

/// What only a trace tells is tried, and said so.
#[test]
fn centres_are_drawn_by_trying() {
    let solver = Solver::new(FOUR, Conventions::default());
    let mut rng = ChaCha8Rng::seed_from_u64(46);
    let kind = blind::kind_name(Orbit::XCentre { layer: Layer::Second });
    for text in [format!("{kind}.breaks = 0 and wing.parity = even"), "letters = 44..48".to_owned()] {
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
