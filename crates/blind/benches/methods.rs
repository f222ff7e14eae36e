//! Sheets and methods: `cargo bench -p blind`.

use ::sheet::Sheet;
use blind::{BreakChoice, Conventions, MethodName, Outfit, Solver, usual};
use cube::{Orbit, Size, State};
use divan::{Bencher, black_box};
use formats::sheet;
use search::ease::Model;
use search::random::{seeded, state3};

fn main() {
    divan::main();
}

/// A sheet of all 818 cases, corners and edges, as text.
fn whole_sheet() -> String {
    let model = Model::built_in();
    let none = Sheet::new(Vec::new());
    let rows = [(Orbit::Corner, "UFR"), (Orbit::Midge, "UF")].into_iter().flat_map(|(orbit, buffer)| {
        let buffer = orbit.sticker(buffer).expect("a sticker");
        none.fill(orbit, buffer, &model).sheet.rows().to_vec()
    });
    sheet::to_csv(&Sheet::new(rows.collect()), &Conventions::default())
}

#[divan::bench]
fn read_and_check_818_algorithms(bencher: Bencher) {
    let (text, conventions) = (whole_sheet(), Conventions::default());
    bencher.bench_local(|| {
        let sheet = sheet::read(black_box(&text), &sheet::Reading::new(&conventions)).expect("a sheet");
        assert_eq!(sheet.check().right(), 818);
    });
}

fn three_cycles(breaks: &BreakChoice) -> Solver {
    let mut conventions = Conventions::default();
    for orbit in [Orbit::Corner, Orbit::Midge] {
        let swap = usual(MethodName::ThreeCycle, orbit).expect("there is one");
        let kind = conventions.kind_mut(orbit);
        (kind.method, kind.buffer, kind.algorithm) =
            (MethodName::ThreeCycle, swap.buffer, Some(swap.algorithm));
        kind.breaks = breaks.clone();
    }
    let solver = Solver::with(Size::THREE, conventions, &Outfit { timed: true, ..Outfit::default() });
    assert!(solver.method().is_ok());
    solver
}

fn random_states(bencher: Bencher, work: impl Fn(&State)) {
    let mut generator = seeded(1);
    bencher.with_inputs(|| state3(&mut generator)).bench_local_values(|state| work(&state));
}

#[divan::bench]
fn memo_at_least_cost(bencher: Bencher) {
    let solver = three_cycles(&BreakChoice::Least);
    random_states(bencher, |state| {
        black_box(solver.memo(state)).expect("it solves");
    });
}

/// Eleven flipped edges and the buffer: as many cycles as there can be.
#[divan::bench]
fn memo_at_least_cost_of_all_edges_flipped(bencher: Bencher) {
    let solver = three_cycles(&BreakChoice::Least);
    let mut table = [0; 24];
    for sticker in cube::Sticker::all() {
        table[sticker.index()] = Orbit::Midge.turned(sticker, 1).index() as u8;
    }
    let flips = cube::Perm::new(table).expect("a permutation");
    let state = State::from_orbits(Size::THREE, cube::Rotation::NONE, &[cube::Perm::IDENTITY, flips])
        .expect("reachable");
    bencher.bench_local(|| {
        let memo = solver.memo(black_box(&state)).expect("it solves");
        assert_eq!(memo.letters(), 22);
    });
}

#[divan::bench]
fn memo_with_first_breaks(bencher: Bencher) {
    let solver = three_cycles(&BreakChoice::First);
    random_states(bencher, |state| {
        black_box(solver.memo(state)).expect("it solves");
    });
}

#[divan::bench]
fn memo_and_verified_solution(bencher: Bencher) {
    let solver = three_cycles(&BreakChoice::Least);
    random_states(bencher, |state| {
        let memo = solver.memo(state).expect("it solves");
        black_box(solver.plan(state, &memo)).expect("solves");
    });
}

#[divan::bench]
fn solver_of_three_cycles_without_algorithms_of_its_own() -> Solver {
    three_cycles(&BreakChoice::Least)
}
