//! Sheets and methods: `cargo bench -p blind`.

use blind::sheet::Sheet;
use blind::{BreakChoice, Conventions, Memo, Method, Outfit, Solution};
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

fn three_cycles(breaks: &BreakChoice) -> (Conventions, Method) {
    let text = "[method]\ncorner = \"three-cycle\"\nedge = \"three-cycle\"";
    let mut conventions = Conventions::read(text).expect("conventions");
    for orbit in [Orbit::Corner, Orbit::Midge] {
        conventions.kind_mut(orbit).breaks = breaks.clone();
    }
    let outfit = Outfit { timed: true, ..Outfit::default() };
    let method = Method::with(Size::THREE, &conventions, &outfit).expect("a method");
    (conventions, method)
}

fn random_states(bencher: Bencher, work: impl Fn(&State)) {
    let mut generator = seeded(1);
    bencher.with_inputs(|| state3(&mut generator)).bench_local_values(|state| work(&state));
}

#[divan::bench]
fn memo_at_least_cost(bencher: Bencher) {
    let (conventions, method) = three_cycles(&BreakChoice::Least);
    random_states(bencher, |state| {
        black_box(Memo::new(state, &conventions, &method));
    });
}

/// Eleven flipped edges and the buffer: as many cycles as there can be.
#[divan::bench]
fn memo_at_least_cost_of_all_edges_flipped(bencher: Bencher) {
    let (conventions, method) = three_cycles(&BreakChoice::Least);
    let mut table = [0; 24];
    for sticker in cube::Sticker::all() {
        table[sticker.index()] = Orbit::Midge.turned(sticker, 1).index() as u8;
    }
    let flips = cube::Perm::new(table).expect("a permutation");
    let state = State::from_orbits(Size::THREE, cube::Rotation::NONE, &[cube::Perm::IDENTITY, flips])
        .expect("reachable");
    bencher.bench_local(|| Memo::new(black_box(&state), &conventions, &method));
}

#[divan::bench]
fn memo_with_first_breaks(bencher: Bencher) {
    let (conventions, method) = three_cycles(&BreakChoice::First);
    random_states(bencher, |state| {
        black_box(Memo::new(state, &conventions, &method));
    });
}

#[divan::bench]
fn memo_and_verified_solution(bencher: Bencher) {
    let (conventions, method) = three_cycles(&BreakChoice::Least);
    random_states(bencher, |state| {
        let memo = Memo::new(state, &conventions, &method);
        black_box(Solution::new(state, &memo, &conventions, &method).expect("solves"));
    });
}

#[divan::bench]
fn method_of_three_cycles_without_a_sheet() -> Method {
    three_cycles(&BreakChoice::Least).1
}
