//! Rounds against the worked cases of the competition standard.
//!
//! Sources: WCA Regulations, edition 1 April 2026 (article numbers beside each case), the tutorials of the association, and literal
//! numbers of the unit tests in the association's public repository ("association's tests").

use record::edition::{Edition, Event};
use record::encoding::{NoResult, read, read_many, write, write_many};
use record::result::{Many, ManyOutcome};
use record::round::{Limit, Mean, Timed, places};
use record::{Outcome, Time};

fn time(text: &str) -> Time {
    let seconds: f64 = text.parse().unwrap();
    Time::of_centiseconds((seconds * 100.0).round() as u64)
}

fn times(texts: &[&str]) -> Vec<Outcome> {
    texts
        .iter()
        .map(|text| match *text {
            "DNF" => Outcome::Dnf,
            "DNS" => Outcome::Dns,
            _ => Outcome::Solved(time(text)),
        })
        .collect()
}

#[test]
fn singles_are_cut_down() {
    // A7b2.
    assert_eq!(Time::truncated(12_678).to_string(), "12.67");
    // Association's tests: 600.41 s and 600.51 s are 600 s.
    assert_eq!([600_410, 600_510].map(|ms| Time::truncated(ms).centiseconds()), [60_000, 60_000]);
    // Before 2025 they were rounded (edition 1 January 2024, 9f2).
    assert_eq!(Edition::on((2024, 6, 1)).time(600_510).centiseconds(), 60_100);
    assert_eq!(Edition::on((2025, 1, 1)).time(600_510).centiseconds(), 60_000);
    // Just below ten minutes hundredths are kept.
    assert_eq!(Time::truncated(599_999).to_string(), "9:59.99");
}

#[test]
fn times_are_written_without_leading_zeros() {
    // Association's tests.
    let written =
        [(94, "0.94"), (500, "5.00"), (4242, "42.42"), (22_242, "3:42.42"), (742_242, "2:03:42.42")];
    for (centiseconds, text) in written {
        assert_eq!(Time::of_centiseconds(centiseconds).to_string(), text);
    }
    // 8653 and 7025 in the export and in the interchange format.
    assert_eq!(Time::of_centiseconds(8653).to_string(), "1:26.53");
    assert_eq!(Time::of_centiseconds(7025).to_string(), "1:10.25");
}

#[test]
fn penalties_add_up() {
    // A7b4, and two cases of the tutorials.
    for (seconds, penalty, result) in [("17.65", 4, "21.65"), ("17.65", 2, "19.65"), ("12.19", 4, "16.19")] {
        assert_eq!(Outcome::left(time(seconds), 0, penalty), Outcome::Solved(time(result)));
    }
    // 10e3, 10e4.
    assert_eq!(Outcome::left(time("17.65"), 1, 2), Outcome::Solved(time("21.65")));
    assert_eq!(Outcome::left(time("17.65"), 2, 0), Outcome::Dnf);
}

#[test]
fn averages_and_means() {
    // Association's tests.
    let cases: [(Mean, &[&str], &str); 6] = [
        (Mean::AverageOf5, &["42.00", "43.00", "44.00", "45.02", "46.00"], "44.01"),
        (Mean::AverageOf5, &["10.01", "601", "601", "600", "700"], "601"),
        (Mean::Of3, &["601", "601", "600"], "601"),
        (Mean::Of3, &["43.00", "45.02", "44.00"], "44.01"),
        (Mean::AverageOf5, &["9.99", "10.00", "10.01", "10.00", "10.00"], "10.00"),
        // 9f9: one that is no time is the worst, which is dropped.
        (Mean::AverageOf5, &["42.00", "DNF", "44.00", "45.02", "43.00"], "44.01"),
    ];
    for (mean, attempts, result) in cases {
        assert_eq!(mean.of(&times(attempts)), Some(Outcome::Solved(time(result))), "{attempts:?}");
    }
    for attempts in
        [["DNF", "DNF", "1", "2", "3"], ["DNS", "1", "DNS", "2", "3"], ["DNF", "1", "DNS", "2", "3"]]
    {
        assert_eq!(Mean::AverageOf5.of(&times(&attempts)), Some(Outcome::Dnf));
    }
    assert_eq!(Mean::Of3.of(&times(&["1", "DNF", "2"])), Some(Outcome::Dnf));
    // 9f2: .49 goes down, .50 up, from ten minutes on.
    assert_eq!(Time::mean(&[60_049, 60_049].map(Time::of_centiseconds)).unwrap().centiseconds(), 60_000);
    assert_eq!(Time::mean(&[60_050, 60_050].map(Time::of_centiseconds)).unwrap().centiseconds(), 60_100);
}

#[test]
fn a_round_is_scored_by_its_own_edition() {
    // 9b3: Best of 3 until 2025, Best of 5 from 2026 on; 9b6 for the bigger ones.
    let attempts = times(&["50.00", "DNF", "45.00", "40.00", "60.00"]);
    let old = Edition::on((2025, 12, 31)).round(Event::Three).score(&attempts);
    assert_eq!((old.best, old.mean), (Some(Outcome::Solved(time("45.00"))), Some(Outcome::Dnf)));
    let new = Edition::on((2026, 1, 1)).round(Event::Three).score(&attempts);
    assert_eq!(new.best, Some(Outcome::Solved(time("40.00"))));
    assert_eq!(new.mean, Some(Outcome::Solved(time("51.67"))));
    for event in [Event::Four, Event::Five] {
        assert_eq!(Edition::newest().round(event).attempts, 3);
    }
    // No mean of many at once (9b5), none before all attempts are made, no result of attempts that did not start (9f5a).
    assert_eq!(Edition::newest().round(Event::Many).mean, None);
    assert_eq!(Edition::newest().round(Event::Three).score(&attempts[..3]).mean, None);
    let none = Edition::newest().round(Event::Four).score(&times(&["DNS", "DNS", "DNS"]));
    assert_eq!((none.best, none.mean), (None, None));
    // 9f7: a DNF is a result, the worst.
    let dnf = Edition::newest().round(Event::Four).score(&times(&["DNF", "DNS", "DNF"]));
    assert_eq!(dnf.best, Some(Outcome::Dnf));
}

#[test]
fn limits_end_attempts() {
    let solved = |text: &str| Timed { outcome: Outcome::Solved(time(text)), elapsed: time(text) };
    // Association's tests: limit 12.50.
    let attempts = ["10.00", "12.50", "11.00", "13.00"].map(solved);
    let after = Limit::Each(time("12.50")).apply(&attempts);
    assert_eq!(after, times(&["10.00", "DNF", "11.00", "DNF"]));
    // A1a2++++: twenty minutes together, eight each; after 7:00 and 7:30 the next may take 5:30.
    let limit = Limit::Together { all: time("1200"), each: Some(time("480")) };
    assert_eq!(limit.left(&[solved("420"), solved("450")]), Some(time("330")));
    assert_eq!(limit.left(&[]), Some(time("480")));
    // A1a2+++++: when it is used up, the rest did not start.
    let used = [solved("470"), solved("470"), solved("470"), solved("10")];
    assert_eq!(limit.apply(&used), times(&["470", "470", "DNF", "DNS"]));
    // 9g: the cutoff is to be beaten.
    assert!(!Limit::beats(time("7.00"), &times(&["9.00", "7.00"])));
    assert!(Limit::beats(time("7.00"), &times(&["9.00", "6.99"])));
    // H1b.
    assert_eq!([2, 3, 4, 5, 6, 40].map(Many::limit), [1200, 1800, 2400, 3000, 3600, 3600]);
}

fn many(solved: u32, of: u32, seconds: u64) -> Many {
    Many::new(solved, of, Some(Time::of_centiseconds(seconds * 100))).unwrap()
}

#[test]
fn many_at_once_count_by_points() {
    // 9f12c; the second and third are the association's tests.
    for (solved, of, counts) in
        [(1, 2, false), (2, 5, false), (2, 3, true), (2, 4, true), (0, 3, false), (1, 1 + 1, false)]
    {
        assert_eq!(many(solved, of, 1200).counts(), counts, "{solved}/{of}");
    }
    // Best first: 11/12 48:20, 10/10 50:00, 11/12 50:00, 12/14 50:00, 10/11 1:40 (computed from 9f12c).
    let order = [(11, 12, 2900), (10, 10, 3000), (11, 12, 3000), (12, 14, 3000), (10, 11, 100)];
    let mut sorted = order.map(|(solved, of, seconds)| ManyOutcome::from(many(solved, of, seconds)));
    sorted.reverse();
    sorted.sort();
    assert_eq!(
        sorted.to_vec(),
        order.map(|(solved, of, seconds)| ManyOutcome::from(many(solved, of, seconds))).to_vec()
    );
    // H1d+, H1d++: penalties may push the time past the limit.
    assert_eq!(many(10, 10, 3597).time().unwrap().plus_seconds(4).to_string(), "1:00:01.00");
    assert!(
        Many::new(1, 1, None).is_none()
            && Many::new(3, 2, None).is_none()
            && Many::new(2, 100, None).is_none()
    );
    assert_eq!(places(&[Some(1), Some(1), Some(3), None]), [Some(1), Some(1), Some(3), None]);
}

#[test]
fn results_are_written_as_the_export_has_them() {
    // Association's tests, and the formula of the export's README.
    let written = [
        (580_325_400, (41, 41, 3254)),
        (970_005_900, (2, 2, 59)),
        (950_024_000, (4, 4, 240)),
        (940_360_200, (5, 5, 3602)),
        (970_360_001, (3, 4, 3600)),
        (970_006_001, (3, 4, 60)),
        (980_243_002, (3, 5, 2430)),
        (920_273_201, (8, 9, 2732)),
        (890_360_001, (11, 12, 3600)),
        (980_181_201, (2, 3, 1812)),
        (990_120_002, (2, 4, 1200)),
        (890_360_100, (10, 10, 3601)),
        (890_360_400, (10, 10, 3604)),
    ];
    for (value, (solved, of, seconds)) in written {
        let outcome = Some(ManyOutcome::Counts(many(solved, of, seconds)));
        assert_eq!(read_many(value), Ok(outcome), "{value}");
        assert_eq!(write_many(outcome), value);
    }
    // The older form: 3/7 in 1:55:00. A time that is not known: 3/3.
    assert_eq!(read_many(1_960_706_900), Ok(Some(ManyOutcome::Counts(many(3, 7, 6900)))));
    assert_eq!(read_many(969_999_900), Ok(Some(ManyOutcome::Counts(Many::new(3, 3, None).unwrap()))));
    for value in [0, -1, -2] {
        assert_eq!(write_many(read_many(value).unwrap()), value);
        assert_eq!(write(read(value).unwrap()), value);
    }
    assert_eq!(write(read(8653).unwrap()), 8653);
    assert_eq!((read(-3), read_many(-3)), (Err(NoResult(-3)), Err(NoResult(-3))));
    // Digits that fit no attempt.
    assert!(read_many(5).is_err() && read_many(2_000_000_000).is_err() && read_many(i64::MAX).is_err());
    assert!(read_many(i64::MIN).is_err() && read(i64::MIN).is_err());
}

/// The order of the published numbers is that of 9f12c (said in the export's README); drawn attempts.
#[test]
fn smaller_numbers_are_better() {
    use rand::{RngExt, SeedableRng};
    let mut rng = rand_chacha::ChaCha8Rng::seed_from_u64(11);
    let mut draw = || loop {
        let of = rng.random_range(2..=99);
        let many = many(rng.random_range(0..=of), of, rng.random_range(0..99_999));
        if many.counts() {
            return ManyOutcome::Counts(many);
        }
    };
    for _ in 0..20_000 {
        let (a, b) = (draw(), draw());
        assert_eq!(write_many(Some(a)).cmp(&write_many(Some(b))), a.cmp(&b), "{a:?} {b:?}");
    }
}
