//! Statistics against `scipy` and `numpy` (`reference/statistics.py` makes the vectors), against closed forms, and against simulations
//! that share no code with them.

use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use record::forecast::{best_within, drawn};
use record::many::{Pace, best_chance, most_expected, successes};
use record::quantile::Sorted;
use record::rate::{Share, drift};
use record::result::Many;
use record::round::{Format, Mean};
use record::{Outcome, Time, letters, pooled};

/// The vectors whose first word is this, as words.
fn vectors(name: &str) -> Vec<Vec<&'static str>> {
    let all = include_str!("../../../reference/statistics.txt");
    let found: Vec<Vec<&str>> = all
        .lines()
        .filter_map(|line| line.split_once(' ').filter(|(first, _)| *first == name))
        .map(|(_, rest)| rest.split(' ').collect())
        .collect();
    assert!(!found.is_empty(), "{name}");
    found
}

fn numbers(words: &[&str]) -> Vec<f64> {
    words.iter().map(|word| word.parse().unwrap()).collect()
}

#[track_caller]
fn near(mine: f64, theirs: f64, within: f64) {
    assert!((mine - theirs).abs() <= within, "{mine} for {theirs}");
}

#[test]
fn rates_have_the_intervals_of_scipy() {
    for words in vectors("share") {
        let [right, of, level, low, high] = numbers(&words)[..] else { panic!("{words:?}") };
        let interval = Share::new(right as u64, of as u64).unwrap().interval(level);
        near(interval.low, low, 1e-6);
        near(interval.high, high, 1e-6);
    }
    for words in vectors("higher") {
        let [a, m, b, n, chance] = numbers(&words)[..] else { panic!("{words:?}") };
        let share = |right: f64, of: f64| Share::new(right as u64, of as u64).unwrap();
        near(share(a, m).higher_than(share(b, n)), chance, 1e-3);
    }
    assert!(Share::new(3, 2).is_none());
}

#[test]
fn quantiles_are_those_of_numpy_and_their_intervals_those_of_scipy() {
    for words in vectors("quantile") {
        let [part, value, all @ ..] = &numbers(&words)[..] else { panic!("{words:?}") };
        near(Sorted::new(all.iter().copied()).0.unwrap().quantile(*part), *value, 1e-9);
    }
    let mut compared = 0;
    for words in vectors("between") {
        let [part, low, high, all @ ..] = &numbers(&words)[..] else { panic!("{words:?}") };
        let interval = Sorted::new(all.iter().copied()).0.unwrap().interval(*part, 0.95);
        if low.is_nan() || high.is_nan() {
            assert_eq!(interval, None);
        } else {
            let interval = interval.unwrap();
            assert_eq!((interval.low, interval.high), (*low, *high), "{words:?}");
            compared += 1;
        }
    }
    assert!(compared > 3);
    assert_eq!(Sorted::new([f64::NAN, 1.0, f64::INFINITY]), (Sorted::new([1.0]).0, 2));
}

#[test]
fn lines_are_those_of_scipy() {
    for words in vectors("line") {
        let [overhead, each, overhead_error, each_error, spread] = numbers(&words[..5])[..] else {
            panic!("{words:?}")
        };
        let attempts: Vec<(f64, f64)> = words[5..]
            .iter()
            .map(|pair| pair.split_once(':').unwrap())
            .map(|(letters, seconds)| (letters.parse().unwrap(), seconds.parse().unwrap()))
            .collect();
        let line = letters::line(&attempts, 0.95).unwrap();
        near(line.overhead, overhead, 1e-6);
        near(line.each, each, 1e-6);
        near(line.overhead_interval.high - line.overhead, overhead_error, 1e-5);
        near(line.each - line.each_interval.low, each_error, 1e-5);
        near(line.spread, spread, 1e-6);
    }
    assert_eq!(letters::line(&[(1.0, 2.0), (2.0, 3.0)], 0.95), Err(letters::NoLine::TooFew));
    assert_eq!(letters::line(&[(20.0, 2.0), (20.0, 3.0), (20.0, 4.0)], 0.95), Err(letters::NoLine::AllAlike));
}

#[test]
fn a_drift_is_found_where_there_is_one() {
    let rising: Vec<bool> = (0..60).map(|at| at % 5 != 0 && at >= 30 || at % 4 == 0).collect();
    let found = drift(&rising).unwrap();
    assert_eq!((found.earlier.of(), found.later.of()), (30, 30));
    assert!(found.rises > 0.99);
    let level: Vec<bool> = (0..60).map(|at| at % 2 == 0).collect();
    near(drift(&level).unwrap().rises, 0.5, 0.01);
    assert_eq!(drift(&[true]), None);
}

/// Groups with means of their own: what is believed lies nearer the truth than the plain means do, and the intervals hold the truth
/// as often as they say. The people are simulated here, by sums of uniform numbers.
#[test]
fn few_samples_are_not_taken_for_a_truth() {
    let mut rng = ChaCha8Rng::seed_from_u64(5);
    let mut bell = move || (0..12).map(|_| rng.random::<f64>()).sum::<f64>() - 6.0;
    let (mut plain, mut drawn_in, mut held, mut all) = (0.0, 0.0, 0, 0);
    for _ in 0..40 {
        let truths: Vec<f64> = (0..50).map(|_| 3.0 + 0.4 * bell()).collect();
        let groups: Vec<Vec<f64>> = truths
            .iter()
            .enumerate()
            .map(|(at, truth)| (0..=at % 5).map(|_| truth + 0.9 * bell()).collect())
            .collect();
        let found = pooled::pooled(&groups, 0.9).unwrap();
        near(found.mean, 3.0, 0.4);
        near(found.within, 0.9, 0.25);
        for (truth, group) in truths.iter().zip(&found.groups) {
            let group = group.unwrap();
            plain += (group.mean - truth).powi(2);
            drawn_in += (group.believed - truth).powi(2);
            held += usize::from((group.interval.low..=group.interval.high).contains(truth));
            all += 1;
        }
    }
    assert!(drawn_in < 0.6 * plain, "{drawn_in} {plain}");
    let share = f64::from(held as u32) / f64::from(all);
    assert!((0.86..=0.93).contains(&share), "{share}");
    assert_eq!(pooled::pooled(&[vec![1.0], vec![2.0]], 0.9), None);
    assert_eq!(pooled::pooled(&[vec![1.0, 2.0], vec![]], 0.9), None);
}

#[test]
fn drawn_rounds_come_out_as_the_closed_form_says() {
    let mut rng = ChaCha8Rng::seed_from_u64(8);
    let solved = |seconds: u64| Outcome::Solved(Time::of_centiseconds(seconds * 100));
    // Six of ten solved, three of these within a minute.
    let attempts =
        [50, 55, 58, 61, 70, 90].map(solved).into_iter().chain([Outcome::Dnf; 4]).collect::<Vec<_>>();
    let format = Format { attempts: 3, mean: Some(Mean::Of3) };
    let (best, mean) = drawn(&attempts, format, 40_000, &mut rng).unwrap();
    near(best.succeeds.mean(), best_within(0.6, 3), 0.01);
    near(mean.unwrap().succeeds.mean(), 0.6f64.powi(3), 0.01);
    let times = best.seconds.unwrap();
    let fast =
        (0..=1000).filter(|part| times.quantile(f64::from(*part) / 1000.0) <= 60.0).count() as f64 / 1001.0;
    near(fast * best.succeeds.mean(), best_within(0.3, 3), 0.015);
    assert_eq!(drawn(&[], format, 10, &mut rng), None);
    let none = drawn(&[Outcome::Dnf], format, 10, &mut rng).unwrap();
    assert_eq!(none.0.seconds, None);
    assert_eq!(none.0.succeeds.right(), 0);
}

/// An attempt at many puzzles, played by dice: on some day each puzzle takes its time until the limit, and comes right or not.
fn played(pace: &Pace, puzzles: u32, rng: &mut ChaCha8Rng) -> u32 {
    // A bell curve from two uniform numbers, where the plan uses quantiles.
    let (a, b): (f64, f64) = (rng.random(), rng.random());
    let bell = (-2.0 * libm::log(1.0 - a)).sqrt() * libm::cos(std::f64::consts::TAU * b);
    let slow = libm::exp(pace.spread * bell);
    let limit = if puzzles < 6 { f64::from(puzzles) * 600.0 } else { 3600.0 };
    let (mut clock, mut solved) = (0.0, 0);
    for number in 0..puzzles {
        clock += slow * (pace.first + pace.growth * f64::from(number));
        if clock >= limit {
            break;
        }
        solved += u32::from(rng.random::<f64>() < pace.success);
    }
    solved
}

#[test]
fn plans_for_many_come_out_as_they_say() {
    let mut rng = ChaCha8Rng::seed_from_u64(21);
    for (success, first, growth, spread) in
        [(0.8, 120.0, 4.0, 0.1), (0.5, 300.0, 0.0, 0.0), (0.95, 60.0, 6.0, 0.25)]
    {
        let pace = Pace { success, first, growth, spread };
        for puzzles in [2, 5, 6, 13, 24] {
            let prospect = pace.prospect(puzzles).unwrap();
            near(prospect.solved.iter().sum(), 1.0, 1e-9);
            let rounds = 20_000;
            let (mut points, mut dnf, mut reached) = (0.0, 0.0, 0.0);
            for _ in 0..rounds {
                let many = Many::new(played(&pace, puzzles, &mut rng), puzzles, None).unwrap();
                if many.counts() {
                    points += many.points() as f64;
                    reached += f64::from(u8::from(many.points() >= 2));
                } else {
                    dnf += 1.0;
                }
            }
            let n = f64::from(rounds);
            near(points / n, prospect.expected, 0.12 + 0.01 * f64::from(puzzles));
            near(dnf / n, prospect.dnf, 0.02);
            near(reached / n, prospect.reaches(2), 0.02);
        }
    }
}

#[test]
fn the_best_number_is_found() {
    let pace = Pace { success: 0.85, first: 150.0, growth: 5.0, spread: 0.1 };
    let prospects = pace.prospects(30);
    let best = most_expected(&prospects).unwrap();
    // More than fit into an hour bring less; far fewer too.
    assert!((9..=20).contains(&best.puzzles), "{}", best.puzzles);
    assert!(prospects.iter().all(|other| other.expected <= best.expected));
    let sure = best_chance(&prospects, 2).unwrap();
    assert!(prospects.iter().all(|other| other.reaches(2) <= sure.reaches(2)));
    assert!(Pace { success: 0.9, ..pace }.prospect(1).is_none() && pace.prospect(100).is_none());
    // A binomial distribution, by hand: 3 of 4 with one half each are 4/16.
    near(successes(&[0.5; 4])[3], 0.25, 1e-12);
}
