//! The search for algorithms by depth, all cases of a buffer, writing as commutators, and the model of two hands.
//! Run: `cargo bench -p search --bench cycles --features parallel`. Every run checks how much was found.

use cube::{Algorithm, Metric, Orbit, Size, Turn};
use divan::{Bencher, black_box};
use search::cycle::{Effect, Finder, Limits, TurnSet};
use search::ease::{Model, best_first};
use search::factor::factored;
use std::ops::ControlFlow;

fn main() {
    divan::main();
}

fn finder(set: TurnSet, max_length: usize) -> Finder {
    let limits = Limits { max_length, memory: 4 << 30 };
    Finder::prepare(set, limits, &mut |_| ControlFlow::Continue(())).expect("4 GiB are enough")
}

fn cases(orbit: Orbit, buffer: &str) -> Vec<Effect> {
    let buffer = orbit.sticker(buffer).expect("a sticker");
    Effect::all_three_cycles(Size::THREE, orbit, buffer).expect("stickers of different pieces")
}

/// Shortest algorithms found for all cases.
fn count(finder: &Finder, cases: &[Effect]) -> usize {
    let findings = finder.find_all(cases, 0).expect("a search that nobody stops");
    findings.iter().map(|finding| finding.algorithms.len()).sum()
}

#[divan::bench(args = [8, 10, 12], sample_count = 1, sample_size = 1)]
fn table_of_face_turns_for_length(length: usize) {
    // OEIS A080601.
    let states = [43239, 574_908, 7_618_438][length / 2 - 4];
    let finder = finder(TurnSet::faces(Size::THREE).expect("a set"), length);
    assert_eq!(finder.states_by_length().last(), Some(&states));
}

#[divan::bench(args = [8, 9, 10, 11, 12], sample_count = 1, sample_size = 1)]
fn corners_378_face_turns_to_length(length: usize) {
    let found =
        count(&finder(TurnSet::faces(Size::THREE).expect("a set"), length), &cases(Orbit::Corner, "UFR"));
    assert_eq!(found, [324, 468, 630, 810, 1026][length - 8]);
}

#[divan::bench(args = [8, 9, 10], sample_count = 1, sample_size = 1)]
fn midges_440_faces_and_slices_to_length(length: usize) {
    let set = TurnSet::faces_and_slices(Size::THREE).expect("a set");
    let found = count(&finder(set, length), &cases(Orbit::Midge, "UF"));
    assert_eq!(found, [1356, 2004, 2460][length - 8]);
}

fn algorithms() -> Vec<Vec<Turn>> {
    let finder = finder(TurnSet::faces(Size::THREE).expect("a set"), 9);
    let findings = finder.find_all(&cases(Orbit::Corner, "UFR"), 0).expect("a search that nobody stops");
    findings.into_iter().flat_map(|finding| finding.algorithms).collect()
}

#[divan::bench]
fn factor_468_algorithms(bencher: Bencher) {
    let algorithms = algorithms();
    bencher.bench_local(|| {
        let written = algorithms.iter().filter_map(|turns| factored(Size::THREE, black_box(turns))).count();
        assert_eq!(written, 468);
    });
}

#[divan::bench]
fn estimate_468_algorithms(bencher: Bencher) {
    let (algorithms, model) = (algorithms(), Model::built_in());
    bencher
        .bench_local(|| algorithms.iter().map(|turns| model.estimate(black_box(turns)).seconds).sum::<f64>());
}

#[divan::bench(sample_count = 3)]
fn easiest_three_of_a_case(bencher: Bencher) {
    let set = TurnSet::parse(Size::THREE, "R U D L", Metric::HalfTurn).expect("a set");
    let (finder, model) = (finder(set, 14), Model::built_in());
    let state = cube::State::solved(Size::THREE)
        .after(&Algorithm::parse("[R U R', D]", Size::THREE).expect("an algorithm").flatten());
    bencher.bench_local(|| {
        let effect = Effect::of_state(state);
        let ranking = best_first(&finder, &model, &effect, 3, &mut |_, _| ControlFlow::Continue(()));
        assert_eq!(ranking.expect("a search that nobody stops").algorithms.len(), 3);
    });
}
