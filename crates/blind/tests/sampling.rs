//! States drawn under conditions: each as likely as any other, and each meeting what was asked.

use blind::{
    Condition, Conventions, DrawError, Lying, Matching, Memo, Method, Sampler, hold, lessons, put_down,
};
use cube::{Orbit, Rotation, Size, State, Sticker};
use formats::conditions;
use statrs::distribution::{ChiSquared, ContinuousCDF};

fn exact(text: &str, size: Size, conventions: &Conventions, method: &Method) -> u128 {
    let condition = conditions::read(text, size, conventions).unwrap();
    Sampler::new(&condition, Lying::Scrambled, conventions, method).map_or(0, |sampler| {
        let Matching::Exact(count) = sampler.matching() else { panic!("{text} is not counted exactly") };
        count
    })
}

/// Source: Pearson's test; the quantile is that of the crate `statrs`. Values expected fewer than 5 times go together.
fn fits(observed: &[u64], expected: &[f64]) {
    let (mut statistic, mut groups) = (0.0, 0);
    let (mut few, mut few_expected) = (0, 0.0);
    for (&observed, &expected) in observed.iter().zip(expected) {
        few += observed;
        few_expected += expected;
        if few_expected >= 5.0 {
            let off = few as f64 - few_expected;
            statistic += off * off / few_expected;
            groups += 1;
            (few, few_expected) = (0, 0.0);
        }
    }
    statistic += (few as f64 - few_expected).powi(2) / few_expected.max(1.0);
    let bound = ChiSquared::new(f64::from(groups - 1)).unwrap().inverse_cdf(0.999);
    assert!(statistic < bound, "chi-square {statistic} with {groups} groups is over {bound}");
}

#[test]
fn a_million_states_have_as_many_targets_as_counted() {
    const STATES: u64 = 1_000_000;
    let conventions = Conventions::default();
    let method = Method::new(Size::THREE, &conventions).unwrap();
    let any = Condition::any(Size::THREE);
    let sampler = Sampler::new(&any, Lying::Scrambled, &conventions, &method).unwrap();
    // Source: the textbook order of the group, 8! 3^7 12! 2^11 / 2.
    assert_eq!(sampler.matching(), Matching::Exact(43_252_003_274_489_856_000));
    let mut generator = search::random::seeded(20_260_401);
    let mut observed = [[0u64; 24]; 2];
    for _ in 0..STATES {
        let state = sampler.draw(&mut generator, &mut |_| true).unwrap();
        let memo = Memo::new(&state, &conventions, &method);
        for (observed, orbit) in observed.iter_mut().zip([Orbit::Corner, Orbit::Midge]) {
            observed[memo.part(orbit).unwrap().len()] += 1;
        }
    }
    for (observed, kind) in observed.iter().zip(["corner", "edge"]) {
        let expected: Vec<f64> = (0..24)
            .map(|targets| {
                let text = format!("{kind}.targets = {targets}");
                let share =
                    exact(&text, Size::THREE, &conventions, &method) as f64 / 43_252_003_274_489_856_000.0;
                share * STATES as f64
            })
            .collect();
        assert!((expected.iter().sum::<f64>() - STATES as f64).abs() < 1e-3);
        fits(observed, &expected);
    }
}

#[test]
fn letters_and_figures_inside_a_condition_come_as_often_as_counted() {
    const STATES: u64 = 20_000;
    let conventions = Conventions::default();
    let method = Method::new(Size::TWO, &conventions).unwrap();
    let text = "corner.pair(BK) and corner.twists <= 1";
    let condition = conditions::read(text, Size::TWO, &conventions).unwrap();
    let sampler = Sampler::new(&condition, Lying::Scrambled, &conventions, &method).unwrap();
    let mut generator = search::random::seeded(5);
    let (mut lengths, mut letters) = ([0u64; 24], [0u64; 24]);
    for _ in 0..STATES {
        let state = sampler.draw(&mut generator, &mut |_| true).unwrap();
        let memo = Memo::new(&state, &conventions, &method);
        let trace = memo.part(Orbit::Corner).unwrap();
        lengths[trace.len()] += 1;
        let mut targets = trace.targets();
        targets.sort_unstable();
        targets.dedup();
        for target in targets {
            letters[target.index()] += 1;
        }
    }
    let all = exact(text, Size::TWO, &conventions, &method) as f64;
    let share =
        |more: &str| exact(&format!("{text} and {more}"), Size::TWO, &conventions, &method) as f64 / all;
    let expected: Vec<f64> =
        (0..24).map(|targets| share(&format!("corner.targets = {targets}")) * STATES as f64).collect();
    fits(&lengths, &expected);
    for sticker in Sticker::all() {
        let share = share(&format!("corner.has({})", Orbit::Corner.name(sticker)));
        let spread = (STATES as f64 * share * (1.0 - share)).sqrt();
        let off = letters[sticker.index()] as f64 - share * STATES as f64;
        // Of 24 such figures one is further off than 4.5 spreads once in 6,000 seeds.
        assert!(off.abs() <= 4.5 * spread, "{}: off by {off}, spread {spread}", Orbit::Corner.name(sticker));
    }
}

#[test]
fn cycles_of_a_random_permutation_number_the_harmonic_number() {
    // Source: W. Feller, An Introduction to Probability Theory and Its Applications, vol. 1, X.6 (from memory): the mean
    // number of cycles of a random permutation of n things is 1 + 1/2 + ... + 1/n.
    let conventions = Conventions::default();
    let method = Method::new(Size::THREE, &conventions).unwrap();
    for (kind, turned, pieces) in [("corner", "twists", 8u8), ("edge", "flips", 12)] {
        let share = |text: String| {
            exact(&text, Size::THREE, &conventions, &method) as f64 / 43_252_003_274_489_856_000.0
        };
        let mut mean = 1.0 - share(format!("{kind}.buffer = away"));
        for figure in ["cycles", "solved", turned] {
            for value in 1..=pieces {
                mean += f64::from(value) * share(format!("{kind}.{figure} = {value}"));
            }
        }
        let harmonic: f64 = (1..=pieces).map(|n| 1.0 / f64::from(n)).sum();
        assert!((mean - harmonic).abs() < 1e-12, "{kind}: {mean}, not {harmonic}");
    }
}

#[test]
fn a_thousand_states_of_each_lesson_meet_it() {
    let mut generator = search::random::seeded(11);
    let turned = "holding = { up = \"yellow\", front = \"red\" }\n[buffer]\ncorner = \"DBL\"\nedge = \"DF\"";
    for conventions in [Conventions::default(), read_without_methods(turned)] {
        for size in [Size::TWO, Size::THREE] {
            let method = Method::new(size, &Conventions::default()).unwrap();
            for lesson in lessons() {
                let Some(condition) = lesson.condition(size) else { continue };
                for lying in [Lying::Scrambled, Lying::Anyhow] {
                    let sampler = Sampler::new(&condition, lying, &conventions, &method);
                    let Ok(sampler) = sampler else { panic!("{} cannot be met", lesson.name()) };
                    for _ in 0..1000 {
                        let state = sampler.draw(&mut generator, &mut |_| true).unwrap();
                        let left = put_down(&state, &conventions, Rotation::NONE);
                        // Picked up as the solver does, the scrambled puzzle shows what was asked.
                        let held = hold(&left, &conventions).state;
                        assert!(
                            condition.holds(&Memo::new(&held, &conventions, &method)),
                            "{}",
                            lesson.name()
                        );
                        if size == Size::TWO && lying == Lying::Scrambled {
                            let anchor = Orbit::Corner.sticker("DBL").unwrap();
                            assert_eq!(left.at(Orbit::Corner, anchor), anchor);
                        }
                    }
                }
            }
        }
    }
}

/// Conventions whose algorithms do not fit their buffers, which matters to no memo.
fn read_without_methods(text: &str) -> Conventions {
    let (head, buffers) = text.split_once("[buffer]").unwrap();
    let mut conventions = Conventions::read(head).unwrap();
    for line in buffers.trim().lines() {
        let (kind, name) = line.split_once(" = ").unwrap();
        let orbit = blind::kind_named(kind).unwrap();
        conventions.kind_mut(orbit).buffer = orbit.sticker(name.trim_matches('"')).unwrap();
    }
    conventions
}

#[test]
fn a_sequence_leads_to_the_state_drawn() {
    let conventions = Conventions::read("holding = { up = \"red\", front = \"yellow\" }").unwrap();
    let mut generator = search::random::seeded(3);
    for (size, lefts) in
        [(Size::TWO, vec![Rotation::NONE]), (Size::THREE, Rotation::all().step_by(5).collect())]
    {
        let method = Method::new(size, &conventions).unwrap();
        let condition =
            conditions::read("corner.twists = 1 and corner.breaks = 1", size, &conventions).unwrap();
        let sampler = Sampler::new(&condition, Lying::Scrambled, &conventions, &method).unwrap();
        for left in lefts {
            let drawn = sampler.draw(&mut generator, &mut |_| true).unwrap();
            let goal = put_down(&drawn, &conventions, left);
            let turns = search::scramble::leading_to(&goal).unwrap();
            let scrambled = State::solved(size).after(&turns);
            assert_eq!(scrambled.core(), if size.is_odd() { left } else { Rotation::NONE });
            assert_eq!(hold(&scrambled, &conventions).state, drawn);
        }
    }
}

#[test]
fn the_same_seed_gives_the_same_states_and_stopping_stops() {
    let conventions = Conventions::default();
    let method = Method::new(Size::THREE, &conventions).unwrap();
    let text = "edge.pair(CG) and edge.pair(DL) and edge.pair(HK)";
    let condition = conditions::read(text, Size::THREE, &conventions).unwrap();
    let sampler = Sampler::new(&condition, Lying::Scrambled, &conventions, &method).unwrap();
    let stopped = sampler.draw(&mut search::random::seeded(1), &mut |tries| tries < 8192);
    assert_eq!(stopped, Err(DrawError::Stopped { tries: 8192 }));
    let easy = conditions::read("corner.has(B)", Size::THREE, &conventions).unwrap();
    let sampler = Sampler::new(&easy, Lying::Scrambled, &conventions, &method).unwrap();
    let draw = || sampler.draw(&mut search::random::seeded(9), &mut |_| true).unwrap();
    assert_eq!(draw(), draw());
}
