//! How long traces, memos and requests to a kept solver take. Each bench checks what it computes.
//!
//! `cargo bench -p blind --bench trace`

use blind::{
    BreakChoice, Breaks, Conventions, Costs, HoldChoice, MethodName, Outfit, Solver, Trace, cheapest_breaks,
    usual,
};
use cube::{Algorithm, Layer, Orbit, OrbitMap, Perm, Rotation, Size, State, Sticker};
use divan::counter::ItemsCount;
use divan::{Bencher, black_box};
use search::random::{seeded, shuffle, state3};

fn main() {
    divan::main();
}

/// How many states are traced in a run.
const STATES: usize = 1000;

fn size(layers: u8) -> Size {
    Size::new(layers).expect("a size")
}

/// Uniformly random states of an odd size, the same in every run.
fn states(size: Size) -> Vec<State> {
    let mut generator = seeded(1);
    (0..STATES)
        .map(|_| {
            let small = state3(&mut generator);
            let perms: Vec<Perm> = Orbit::of(size)
                .iter()
                .map(|&orbit| {
                    let mut table = *small.orbit(orbit).table();
                    if orbit.stickers_per_piece() == 1 {
                        shuffle(&mut table, &mut generator);
                    }
                    Perm::new(table).expect("a permutation")
                })
                .collect();
            State::from_orbits(size, Rotation::NONE, &perms).expect("reachable")
        })
        .collect()
}

/// Checks the letters of so many random states against their mean: a wrong tracer would be far off.
///
/// Of n pieces with 24 stickers in all, each of the n - 1 others is right in one case of 24, and each that is not has a letter.
/// One more for each cycle without the buffer: a random permutation has 1 + 1/2 + … + 1/n cycles (W. Feller, An Introduction to
/// Probability Theory and Its Applications, vol. 1, X.6; from memory), less the buffer's and those of pieces that are right. A
/// place of a centre has its own colour in one case of six, and parts away from the buffer are rare.
fn check_mean(size: Size, letters: usize) {
    let mean = |orbit: Orbit| {
        let others = f64::from(orbit.pieces() - 1);
        if orbit.looks_alike() {
            return others * 5.0 / 6.0;
        }
        let more_cycles: f64 = (2..=orbit.pieces()).map(|n| 1.0 / f64::from(n)).sum();
        others * 23.0 / 24.0 + more_cycles - others / 24.0
    };
    let mean = STATES as f64 * Orbit::of(size).iter().map(|&orbit| mean(orbit)).sum::<f64>();
    assert!((letters as f64 - mean).abs() < mean / 50.0, "{letters}, not about {mean}");
}

/// Every kind of a thousand states, one after another.
#[divan::bench(args = [3, 5, 7])]
fn bare_traces(bencher: Bencher, layers: u8) {
    let size = size(layers);
    let (states, conventions) = (states(size), Conventions::default());
    let kinds = OrbitMap::new(|orbit| (conventions.kind(orbit).buffer, conventions.breaks(orbit, None)));
    bencher.counter(ItemsCount::new(STATES)).bench_local(|| {
        let mut letters = 0;
        for state in &states {
            for &orbit in Orbit::of(size) {
                let (buffer, breaks) = &kinds[orbit];
                letters += Trace::new(orbit, state.orbit(orbit), *buffer, breaks).expect("it solves").len();
            }
        }
        check_mean(size, letters);
    });
}

/// The memos of a thousand states, by a solver that is kept.
#[divan::bench(args = [3, 5, 7])]
fn memos(bencher: Bencher, layers: u8) {
    let size = size(layers);
    let (states, solver) = (states(size), Solver::new(size, Conventions::default()));
    bencher.counter(ItemsCount::new(STATES)).bench_local(|| {
        let letters = states.iter().map(|state| solver.memo(state).expect("it solves").letters()).sum();
        check_mean(size, letters);
    });
}

/// Made up, the same in every run: what no rule of turning explains is the hardest to choose by.
fn made_up_costs(orbit: Orbit) -> Costs {
    let cost = |one: usize, other: usize| 1000 + ((one * 31 + other * 17) * 7919 % 4001) as u32;
    let costs = Costs::in_pairs(
        orbit,
        |first, second| cost(first.index(), second.index()),
        |last| 3000 + cost(last.index(), 30),
    );
    if orbit.stickers_per_piece() == 1 {
        return costs;
    }
    let of_piece = |sticker: Sticker| orbit.piece(sticker).index();
    costs.with_joint(|one, other| {
        (of_piece(one) != of_piece(other)).then(|| 2000 + cost(of_piece(one), of_piece(other)))
    })
}

/// The least cost of a kind, by hand and in a way of its own: see the tests for a proof that it is the least.
fn least_cost(seen: &Perm, orbit: Orbit, buffer: Sticker, costs: &Costs) -> u32 {
    let order = blind::Letters::default().order();
    let starts = cheapest_breaks(seen, orbit, buffer, &order, costs);
    let rest = order.into_iter().filter(|sticker| !starts.contains(sticker));
    let mut first: Vec<Sticker> = starts.iter().copied().chain(rest).collect();
    first.truncate(24);
    let order = std::array::from_fn(|at| first[at]);
    let trace = Trace::new(orbit, seen, buffer, &Breaks { order, cost: None }).expect("it solves");
    costs.groups(&trace.targets()).1
}

/// Edges of a 3x3 that are all flipped, eleven cycles beside the buffer; and one exchanged with the buffer's, whose letter waits,
/// with the ten others flipped, where no cycle can be weighed by itself.
#[divan::bench(args = [0, 1])]
fn least_cost_with_edges_flipped(bencher: Bencher, case: usize) {
    let orbit = Orbit::Midge;
    let (buffer, costs) = (Conventions::default().kind(orbit).buffer, made_up_costs(orbit));
    let mut lies: Vec<Sticker> = Sticker::all().map(|sticker| orbit.turned(sticker, 1)).collect();
    if case == 1 {
        let one = orbit.turned(buffer, 1);
        let other = Sticker::all().find(|&at| at != buffer && at != one).expect("another edge");
        for (a, b) in orbit.stickers_from(buffer).zip(orbit.stickers_from(other)) {
            (lies[a.index()], lies[b.index()]) = (b, a);
        }
    }
    let seen = Perm::new(std::array::from_fn(|at| lies[at].index() as u8)).expect("a permutation");
    bencher.bench_local(|| {
        assert_eq!(least_cost(black_box(&seen), orbit, buffer, &costs), LEAST_OF_FLIPPED[case]);
    });
}

/// Wings of a 4x4: as many cycles as there can be (0, so many exchanges of two and a cycle of three), and random ones.
#[divan::bench(args = [0, 1, 2])]
fn least_cost_of_wings(bencher: Bencher, case: usize) {
    let orbit = Orbit::Wing { layer: Layer::Second };
    let (buffer, costs) = (Conventions::default().kind(orbit).buffer, made_up_costs(orbit));
    let others: Vec<usize> = Sticker::all().filter(|&at| at != buffer).map(Sticker::index).collect();
    let mut table = *Perm::IDENTITY.table();
    match case {
        0 => {
            for pair in others[..20].chunks(2) {
                table.swap(pair[0], pair[1]);
            }
            let first = table[others[20]];
            (table[others[20]], table[others[21]], table[others[22]]) =
                (table[others[21]], table[others[22]], first);
        }
        1 => {
            for pair in others[..22].chunks(2) {
                table.swap(pair[0], pair[1]);
            }
        }
        _ => shuffle(&mut table, &mut seeded(3)),
    }
    let seen = Perm::new(table).expect("a permutation");
    bencher.bench_local(|| {
        assert_eq!(least_cost(black_box(&seen), orbit, buffer, &costs), LEAST_OF_WINGS[case]);
    });
}

/// What weighing every order of the cycles found, without anything spared.
const LEAST_OF_FLIPPED: [u32; 2] = [17_861, 17_404];
const LEAST_OF_WINGS: [u32; 3] = [37_204, 39_589, 31_704];

/// What a face asks of a kept solver for one scramble: picked up, traced, with reasons.
#[divan::bench(args = [2, 3, 4, 5, 7])]
fn request_through_a_kept_solver(bencher: Bencher, layers: u8) {
    let size = size(layers);
    let solver = Solver::new(size, Conventions::default());
    let text = "D2 F' R2 B U2 L' D B2 R F U' L2 B' U R2 D' F2 L U2";
    let turns = Algorithm::parse(text, size).expect("a scramble").flatten();
    let state = State::solved(size).after(&turns);
    bencher.bench_local(|| {
        let held = solver.pick_up(black_box(&state), HoldChoice::Conventions).expect("in hand");
        let memo = solver.memo(&held.state).expect("it solves");
        let reasons: Vec<_> = memo.parts().iter().map(|part| solver.reasons(part)).collect();
        assert_eq!(reasons.iter().map(Vec::len).sum::<usize>(), memo.letters());
        assert!(memo.letters() > 5);
        reasons
    });
}

/// Scramble text to memo to a solution that was applied, by a solver that is kept.
#[divan::bench]
fn memo_and_solution(bencher: Bencher) {
    let solver = Solver::new(size(3), Conventions::default());
    bencher.bench_local(|| {
        let text = "D2 F' R2 B U2 L' D B2 R F U' L2 B' U R2 D' F2 L U2";
        let scramble = Algorithm::parse(black_box(text), solver.size()).expect("a scramble");
        let state = State::solved(solver.size()).after(&scramble.flatten());
        let solve = solver.solve(&state, HoldChoice::Conventions).expect("in hand");
        let solution = solve.solution.expect("it solves");
        assert!(state.after(solution.moves()).is_solved());
        solution.moves().len()
    });
}

/// Memos at least cost of random states, by a solver that is kept; the time of the whole is never more than of breaks by letter.
#[divan::bench]
fn memos_at_least_cost(bencher: Bencher) {
    let mut conventions = Conventions::default();
    for orbit in [Orbit::Corner, Orbit::Midge] {
        let swap = usual(MethodName::ThreeCycle, orbit).expect("there is one");
        let kind = conventions.kind_mut(orbit);
        (kind.method, kind.buffer, kind.algorithm) =
            (MethodName::ThreeCycle, swap.buffer, Some(swap.algorithm));
        kind.breaks = BreakChoice::Least;
    }
    let solver = Solver::with(size(3), conventions, &Outfit { timed: true, ..Outfit::default() });
    let states = states(size(3));
    bencher.counter(ItemsCount::new(STATES)).bench_local(|| {
        let letters = states.iter().map(|state| solver.memo(state).expect("it solves").letters()).sum();
        check_mean(size(3), letters);
    });
}

/// A solver with all set-ups searched for.
#[divan::bench]
fn solver_with_set_ups() {
    let solver = Solver::new(size(3), black_box(Conventions::default()));
    assert!(solver.method().is_ok());
}
