//! States drawn under conditions: each as likely as any other, and each meeting what was asked.

#[path = "../../blind/tests/drawn/mod.rs"]
mod drawn;

use blind::{BreakChoice, Conventions, HoldChoice, ParityChoice, Solver};
use choose::{Condition, DrawError, Lying, Matching, Sampler, lessons, put_down, ratio};
use cube::{Face, Orbit, Rotation, Size, State, Sticker};
use formats::conditions;
use rand::prelude::*;
use rand_chacha::ChaCha8Rng;
use search::random::state3;
use statrs::distribution::{ChiSquared, ContinuousCDF};

fn exact(text: &str, solver: &Solver) -> u128 {
    let condition = conditions::read(text, solver.size(), solver.conventions()).unwrap();
    Sampler::new(&condition, Lying::Scrambled, solver).map_or(0, |sampler| {
        let Matching::Exact(count) = sampler.matching() else { panic!("{text} is not counted exactly") };
        count.try_into().unwrap()
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
    let solver = Solver::new(Size::THREE, Conventions::default());
    let any = Condition::any(Size::THREE);
    let sampler = Sampler::new(&any, Lying::Scrambled, &solver).unwrap();
    // Source: the textbook order of the group, 8! 3^7 12! 2^11 / 2.
    assert_eq!(sampler.matching(), Matching::Exact(43_252_003_274_489_856_000_u128.into()));
    let mut generator = search::random::seeded(20_260_401);
    let mut observed = [[0u64; 24]; 2];
    for _ in 0..STATES {
        let state = sampler.draw(&mut generator, &mut |_| true).unwrap();
        let memo = solver.memo(&state).unwrap();
        for (observed, orbit) in observed.iter_mut().zip([Orbit::Corner, Orbit::Midge]) {
            observed[memo.part(orbit).unwrap().len()] += 1;
        }
    }
    for (observed, kind) in observed.iter().zip(["corner", "edge"]) {
        let expected: Vec<f64> = (0..24)
            .map(|targets| {
                let text = format!("{kind}.targets = {targets}");
                let share = exact(&text, &solver) as f64 / 43_252_003_274_489_856_000.0;
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
    let solver = Solver::new(Size::TWO, Conventions::default());
    let text = "corner.pair(BK) and corner.twists <= 1";
    let condition = conditions::read(text, solver.size(), solver.conventions()).unwrap();
    let sampler = Sampler::new(&condition, Lying::Scrambled, &solver).unwrap();
    let mut generator = search::random::seeded(5);
    let (mut lengths, mut letters) = ([0u64; 24], [0u64; 24]);
    for _ in 0..STATES {
        let state = sampler.draw(&mut generator, &mut |_| true).unwrap();
        let memo = solver.memo(&state).unwrap();
        let trace = memo.part(Orbit::Corner).unwrap();
        lengths[trace.len()] += 1;
        let mut targets = trace.targets();
        targets.sort_unstable();
        targets.dedup();
        for target in targets {
            letters[target.index()] += 1;
        }
    }
    let all = exact(text, &solver) as f64;
    let share = |more: &str| exact(&format!("{text} and {more}"), &solver) as f64 / all;
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
    let solver = Solver::new(Size::THREE, Conventions::default());
    for (kind, turned, pieces) in [("corner", "twists", 8u8), ("edge", "flips", 12)] {
        let share = |text: String| exact(&text, &solver) as f64 / 43_252_003_274_489_856_000.0;
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
    // Other buffers, whose algorithms do not move them; that matters to no memo.
    let holding = Rotation::bringing(Face::D, Face::R).unwrap();
    let mut turned = Conventions { holding, ..Conventions::default() };
    turned.kind_mut(Orbit::Corner).buffer = Orbit::Corner.sticker("DBL").unwrap();
    turned.kind_mut(Orbit::Midge).buffer = Orbit::Midge.sticker("DF").unwrap();
    let exchanging = Conventions { parity: ParityChoice::Exchange, ..Conventions::default() };
    for conventions in [Conventions::default(), turned, exchanging] {
        for size in [Size::TWO, Size::THREE] {
            let solver = Solver::new(size, conventions.clone());
            for lesson in lessons() {
                let Some(condition) = lesson.condition(size) else { continue };
                for lying in [Lying::Scrambled, Lying::Anyhow] {
                    let sampler = Sampler::new(&condition, lying, &solver);
                    let Ok(sampler) = sampler else { panic!("{} cannot be met", lesson.name()) };
                    for _ in 0..1000 {
                        let state = sampler.draw(&mut generator, &mut |_| true).unwrap();
                        let left = put_down(&state, &conventions, Rotation::NONE);
                        // Picked up as the solver does, the scrambled puzzle shows what was asked.
                        let held = solver.pick_up(&left, HoldChoice::Conventions).unwrap().state;
                        assert!(condition.holds(&solver.memo(&held).unwrap()), "{}", lesson.name());
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

#[test]
fn a_sequence_leads_to_the_state_drawn() {
    // Red up, yellow in front.
    let holding = Rotation::bringing(Face::R, Face::D).unwrap();
    let conventions = Conventions { holding, ..Conventions::default() };
    let mut generator = search::random::seeded(3);
    for (size, lefts) in
        [(Size::TWO, vec![Rotation::NONE]), (Size::THREE, Rotation::all().step_by(5).collect())]
    {
        let solver = Solver::new(size, conventions.clone());
        let condition =
            conditions::read("corner.twists = 1 and corner.breaks = 1", size, &conventions).unwrap();
        let sampler = Sampler::new(&condition, Lying::Scrambled, &solver).unwrap();
        for left in lefts {
            let drawn = sampler.draw(&mut generator, &mut |_| true).unwrap();
            let goal = put_down(&drawn, &conventions, left);
            let turns = search::scramble::leading_to(&goal).unwrap();
            let scrambled = State::solved(size).after(&turns);
            assert_eq!(scrambled.core(), if size.is_odd() { left } else { Rotation::NONE });
            assert_eq!(solver.pick_up(&scrambled, HoldChoice::Conventions).unwrap().state, drawn);
        }
    }
}

#[test]
fn the_same_seed_gives_the_same_states_and_stopping_stops() {
    let solver = Solver::new(Size::THREE, Conventions::default());
    let text = "edge.pair(CG) and edge.pair(DL) and edge.pair(HK)";
    let condition = conditions::read(text, solver.size(), solver.conventions()).unwrap();
    let sampler = Sampler::new(&condition, Lying::Scrambled, &solver).unwrap();
    let stopped = sampler.draw(&mut search::random::seeded(1), &mut |tries| tries < 8192);
    assert_eq!(stopped, Err(DrawError::Stopped { tries: 8192 }));
    let easy = conditions::read("corner.has(B)", Size::THREE, solver.conventions()).unwrap();
    let sampler = Sampler::new(&easy, Lying::Scrambled, &solver).unwrap();
    let draw = || sampler.draw(&mut search::random::seeded(9), &mut |_| true).unwrap();
    assert_eq!(draw(), draw());
}

/// The order of the group, as above.
const ALL: f64 = 43_252_003_274_489_856_000.0;

/// Conventions by which two edges are taken for each other where the corners are odd.
fn exchanging(mut conventions: Conventions) -> Solver {
    conventions.parity = ParityChoice::Exchange;
    let solver = Solver::new(Size::THREE, conventions);
    assert!(solver.tracing().exchanges(), "{:?}", solver.method());
    solver
}

/// Random conventions whose swaps fit their buffers: the usual ones, held in another way.
fn drawn_and_exchanging(rng: &mut impl Rng) -> Solver {
    let mut conventions = drawn::conventions(rng);
    let usual = Conventions::default();
    let rotation = Rotation::all().nth(rng.random_range(0..24)).unwrap();
    for orbit in [Orbit::Corner, Orbit::Midge] {
        let (kind, usual) = (conventions.kind_mut(orbit), usual.kind(orbit));
        kind.buffer = State::held(Size::THREE, rotation).orbit(orbit).inverse().at(usual.buffer);
        kind.algorithm = usual.algorithm.as_ref().map(|algorithm| algorithm.rotated(rotation));
    }
    exchanging(conventions)
}

/// How many of some uniformly random states meet each condition when they are traced.
fn traced(texts: &[String], solver: &Solver, states: u64, generator: &mut impl Rng) -> Vec<u64> {
    let read = |text: &String| conditions::read(text, Size::THREE, solver.conventions()).unwrap();
    let conditions: Vec<Condition> = texts.iter().map(read).collect();
    let mut met = vec![0; texts.len()];
    for _ in 0..states {
        let memo = solver.memo(&state3(generator)).unwrap();
        for (met, condition) in met.iter_mut().zip(&conditions) {
            *met += u64::from(condition.holds(&memo));
        }
    }
    met
}

/// What a solver sees of a puzzle with two edges exchanged is what is counted: the shares here, one state in 4.1, 1.60, and
/// none, came from tracing and not from counting.
#[test]
fn with_two_edges_exchanged_states_are_counted_as_they_are_traced() {
    const STATES: u64 = 100_000;
    let solver = exchanging(Conventions::default());
    let texts = ["letters = 20", "edge.targets = 12", "edge.targets = 11 and parity = odd"].map(String::from);
    let met = traced(&texts, &solver, STATES, &mut search::random::seeded(13));
    for ((text, met), one_in) in texts.iter().zip(met).zip([4.1, 1.60, f64::INFINITY]) {
        let share = exact(text, &solver) as f64 / ALL;
        assert!((share - 1.0 / one_in).abs() < 0.01, "{text}: {share}");
        assert!((met as f64 / STATES as f64 - share).abs() < 0.01, "{text}: {met}, {share}");
    }
    let odd = exact("parity = odd", &solver) as f64 / ALL;
    assert!((odd - 0.5).abs() < 1e-12, "{odd}");
}

#[test]
fn counts_are_as_frequent_as_traced_whatever_the_conventions() {
    const STATES: u64 = 20_000;
    let mut rng = ChaCha8Rng::seed_from_u64(66);
    let mut breaks = [0; 2];
    for _ in 0..6 {
        let solver = drawn_and_exchanging(&mut rng);
        let target = |orbit: Orbit, rng: &mut ChaCha8Rng| {
            let buffer = orbit.piece(solver.conventions().kind(orbit).buffer);
            let others: Vec<Sticker> = Sticker::all().filter(|at| orbit.piece(*at) != buffer).collect();
            orbit.name(*others.choose(rng).unwrap())
        };
        let texts: Vec<String> = (2..12)
            .map(|half| format!("letters = {}..{}", 2 * half, 2 * half + 1))
            .chain((0..16).map(|targets| format!("edge.targets = {targets}")))
            .chain((0..16).map(|targets| format!("edge.targets = {targets} and parity = odd")))
            .chain((4..11).map(|targets| format!("corner.targets = {targets} and edge.breaks = 1")))
            .chain((0..3).map(|flips| format!("edge.flips = {flips} and parity = even")))
            .chain(["edge.buffer = solved", "edge.buffer = turned", "edge.solved = 1"].map(String::from))
            .chain(
                ["corner.twists = 0 and edge.closes-elsewhere = 1", "corner.targets > edge.targets"]
                    .map(String::from),
            )
            .collect();
        let met = traced(&texts, &solver, STATES, &mut rng);
        for (text, met) in texts.iter().zip(met) {
            let share = exact(text, &solver) as f64 / ALL;
            let spread = (STATES as f64 * share * (1.0 - share)).sqrt();
            let off = met as f64 - share * STATES as f64;
            // Of some 300 such figures one is further off once in 5,000 seeds; what cannot be must not be seen.
            assert!(
                off.abs() <= 5.0 * spread + 1e-9,
                "{text}: {met} seen, {} counted",
                share * STATES as f64
            );
        }
        // A letter is counted exactly where the order of letters decides about breaks, and tried where costs do.
        let text = format!("edge.has({})", target(Orbit::Midge, &mut rng));
        let condition = conditions::read(&text, Size::THREE, solver.conventions()).unwrap();
        let sampler = Sampler::new(&condition, Lying::Scrambled, &solver).unwrap();
        let by_cost = matches!(
            solver.conventions().kind(Orbit::Midge).breaks,
            BreakChoice::Fewest | BreakChoice::Least
        );
        let share = match sampler.matching() {
            Matching::Exact(count) if !by_cost => ratio(&count, &sampler.total()),
            Matching::AtMost(_) if by_cost => {
                sampler.estimate(STATES, &mut rng, &mut |_| true).unwrap().share
            }
            other => panic!("{by_cost}: {other:?}"),
        };
        breaks[usize::from(by_cost)] += 1;
        let met = traced(&[text], &solver, STATES, &mut rng)[0] as f64 / STATES as f64;
        // Both are off by less than 0.0036 in two cases of three.
        assert!((share - met).abs() < 0.025, "{share} and {met}");
        for _ in 0..50 {
            let state = sampler.draw(&mut rng, &mut |_| true).unwrap();
            assert!(condition.holds(&solver.memo(&state).unwrap()));
        }
    }
    assert!(breaks.iter().all(|&times| times > 0), "{breaks:?}");
}

#[test]
fn with_two_edges_exchanged_draws_are_uniform() {
    const STATES: u64 = 100_000;
    let mut rng = ChaCha8Rng::seed_from_u64(77);
    for solver in [exchanging(Conventions::default()), drawn_and_exchanging(&mut rng)] {
        let any = Condition::any(Size::THREE);
        let sampler = Sampler::new(&any, Lying::Scrambled, &solver).unwrap();
        assert_eq!(sampler.matching(), Matching::Exact(43_252_003_274_489_856_000_u128.into()));
        let mut letters = [[0u64; 24]; 2];
        // By parity: where each edge sticker lies that belongs at one place, and at which place a sticker lies.
        let mut lies = [[0u64; 24]; 2];
        let mut pairs = [[0u64; 24]; 2];
        let places = [Sticker::new(1), Sticker::new(7)].map(Option::unwrap);
        for _ in 0..STATES {
            let state = sampler.draw(&mut rng, &mut |_| true).unwrap();
            let memo = solver.memo(&state).unwrap();
            for (letters, orbit) in letters.iter_mut().zip([Orbit::Corner, Orbit::Midge]) {
                letters[memo.part(orbit).unwrap().len()] += 1;
            }
            let odd = usize::from(memo.part(Orbit::Corner).unwrap().is_odd());
            assert!(!memo.part(Orbit::Midge).unwrap().is_odd());
            lies[odd][state.at(Orbit::Midge, places[0]).index()] += 1;
            pairs[odd][state.orbit(Orbit::Midge).inverse().at(places[1]).index()] += 1;
        }
        for counts in lies.iter().chain(&pairs) {
            fits(counts, &[STATES as f64 / 48.0; 24]);
        }
        for (observed, kind) in letters.iter().zip(["corner", "edge"]) {
            let share = |targets| exact(&format!("{kind}.targets = {targets}"), &solver) as f64 / ALL;
            let expected: Vec<f64> = (0..24).map(|targets| share(targets) * STATES as f64).collect();
            fits(observed, &expected);
        }
    }
}
