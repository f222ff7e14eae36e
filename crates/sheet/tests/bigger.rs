//! Sheets of wings and centres: filled, checked and counted as those of corners and edges.

use blind::Conventions;
use cube::{Orbit, Size, State};
use formats::sheet::{Reading, read};
use search::ease::Model;
use sheet::{CycleCase, Origin, Sheet, Verdict, size_of, verdict_of};
use std::fmt::Write as _;

fn inner() -> impl Iterator<Item = Orbit> {
    Orbit::ALL.into_iter().filter(|orbit| orbit.stickers_per_piece() == 1)
}

/// Of 24 places told apart a buffer leaves 23 first targets and 22 second ones.
#[test]
fn a_sheet_of_every_kind_is_filled_and_right() {
    let model = Model::built_in();
    for orbit in inner() {
        let buffer = Conventions::default().kind(orbit).buffer;
        let filled = Sheet::new(Vec::new()).fill(orbit, buffer, &model);
        assert_eq!(filled.sheet.rows().len(), 23 * 22, "{orbit}");
        assert_eq!(filled.by_origin[&Origin::Search], 23 * 22, "{orbit}");
        assert_eq!(filled.sheet.check().right(), 23 * 22, "{orbit}");
        let statistics = filled.sheet.statistics(orbit, buffer, &model);
        assert_eq!((statistics.cases, statistics.covered), (506, 506), "{orbit}");
        assert!(statistics.mean_moves > 8.0 && statistics.mean_moves < 11.0, "{orbit}");
    }
}

#[test]
fn what_a_row_really_does_is_told() {
    let four = Size::new(4).expect("a size");
    let [_, wing, centre] = Orbit::of(four) else { panic!("three kinds") };
    // Built from two layers here: [U R U', 2L] and the like are common practice, no source.
    let algorithm = "[U R U', 2L]";
    let turns = cube::Algorithm::parse(algorithm, four).expect("moves").flatten();
    let state = State::solved(four).after(&turns);
    assert!(state.orbit(Orbit::Corner).is_identity() && state.orbit(*centre).is_identity());
    let own = state.orbit(*wing);
    let buffer = cube::Sticker::all().find(|&place| own.at(place) != place).expect("it moves wings");
    let first = own.inverse().at(buffer);
    let second = own.inverse().at(first);
    let case = CycleCase::new(*wing, buffer, first, second).expect("three places");
    assert_eq!(size_of(*wing), four);
    assert_eq!(verdict_of(case, algorithm), Verdict::Right);
    assert_eq!(verdict_of(case.inverse(), algorithm), Verdict::Inverse);
    assert_eq!(verdict_of(case, "[U R U', 2L"), verdict_of(case, "[U R U', 2L"));
    assert!(matches!(verdict_of(case, "[U R U', 2L"), Verdict::Unreadable(_)));
    assert!(matches!(verdict_of(case, "[R U R', D]"), Verdict::OtherKind(Orbit::Corner, _)));
    assert!(matches!(verdict_of(case, "2R2"), Verdict::NotAThreeCycle { .. }));
}

#[test]
fn a_list_that_names_its_kind_is_read() {
    let conventions = Conventions::default();
    let mut reading = Reading::new(&conventions);
    let four = Size::new(4).expect("a size");
    let centre = Orbit::of(four)[2];
    reading.kind = Some(centre);
    let buffer = conventions.kind(centre).buffer;
    let model = Model::built_in();
    let filled = Sheet::new(Vec::new()).fill(centre, buffer, &model).sheet;
    let mut text = String::from("pair,algorithm\n");
    for row in filled.rows().iter().take(40) {
        let case = row.case.expect("a case");
        writeln!(text, "{} {},\"{}\"", centre.name(case.first), centre.name(case.second), row.algorithm)
            .unwrap();
    }
    let read = read(&text, &reading).expect("a list");
    assert_eq!((read.rows().len(), read.check().right()), (40, 40));
    assert_eq!(read.algorithms().len(), 40);
}
