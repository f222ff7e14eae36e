//! A memo is right if it solves: from uniformly random states, for every buffer, on the 2x2 and the 3x3.

use blind::{BreakChoice, Conventions, Held, HoldChoice, Solver, Trace};
use cube::{Face, Orbit, Perm, Rotation, Size, State, Sticker};
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use search::setup::Setup;

/// The permutation of an orbit by which the piece with number `order[i]`, turned `turns[i]` stickers, lies at place `i`.
fn perm(orbit: Orbit, order: &[usize], turns: &[u8]) -> Perm {
    let pieces: Vec<_> = orbit.all_pieces().collect();
    let mut table = [0; 24];
    for (at, (&piece, &turn)) in order.iter().zip(turns).enumerate() {
        let (place, sticker) = (orbit.reference(pieces[at]), orbit.reference(pieces[piece]));
        for steps in 0..orbit.stickers_per_piece() {
            table[orbit.turned(place, steps).index()] = orbit.turned(sticker, steps + turn).index() as u8;
        }
    }
    Perm::new(table).expect("a permutation")
}

fn order(pieces: usize) -> impl Strategy<Value = Vec<usize>> {
    Just((0..pieces).collect::<Vec<_>>()).prop_shuffle()
}

fn odd(order: &[usize]) -> bool {
    let inversions = |at: usize| order[at..].iter().filter(|&&later| later < order[at]).count();
    (0..order.len()).map(inversions).sum::<usize>() % 2 == 1
}

/// Every reachable state with the same probability: any arrangement, the last two edges exchanged where parity asks.
fn state(size: Size) -> impl Strategy<Value = State> {
    let corners = (order(8), proptest::collection::vec(0..3u8, 7));
    let edges = (order(12), proptest::collection::vec(0..2u8, 11));
    (corners, edges).prop_map(move |((corners, mut twists), (mut edges, mut flips))| {
        twists.push((3 - twists.iter().sum::<u8>() % 3) % 3);
        flips.push(flips.iter().sum::<u8>() % 2);
        if odd(&corners) != odd(&edges) {
            edges.swap(10, 11);
        }
        let perms = [perm(Orbit::Corner, &corners, &twists), perm(Orbit::Midge, &edges, &flips)];
        State::from_orbits(size, Rotation::NONE, &perms[..Orbit::of(size).len()]).expect("reachable")
    })
}

fn size_and_state() -> impl Strategy<Value = (Size, State)> {
    prop_oneof![Just(Size::TWO), Just(Size::THREE)].prop_flat_map(|size| (Just(size), state(size)))
}

/// The default method for a cube held another way: other buffers, the same swaps turned along.
fn turned_conventions(rotation: Rotation, breaks: &BreakChoice) -> Conventions {
    let mut conventions = Conventions::default();
    for orbit in [Orbit::Corner, Orbit::Midge] {
        let kind = conventions.kind_mut(orbit);
        kind.breaks = breaks.clone();
        kind.buffer = State::held(Size::THREE, rotation).orbit(orbit).inverse().at(kind.buffer);
        kind.algorithm = kind.algorithm.as_ref().map(|algorithm| algorithm.rotated(rotation));
    }
    conventions.parity_algorithm = conventions.parity_algorithm.rotated(rotation);
    conventions
}

fn check(state: &State, solver: &Solver) {
    let memo = solver.memo(state).unwrap();
    let solution = solver.plan(state, &memo).unwrap();
    assert!(state.after(solution.moves()).is_solved());
    for trace in memo.parts() {
        check_shape(trace);
    }
    if state.size() == Size::THREE {
        assert_eq!(memo.parts()[0].is_odd(), memo.parts()[1].is_odd());
    }
}

/// Letters as counting says: one for each unsolved piece but the buffer's, one more for each cycle without the buffer.
fn check_shape(trace: &Trace) {
    let orbit = trace.orbit();
    let unsolved = orbit
        .all_pieces()
        .filter(|&piece| {
            let sticker = orbit.reference(piece);
            piece != orbit.piece(trace.buffer()) && trace.seen().at(sticker) != sticker
        })
        .count();
    let broken = trace.cycles().iter().filter(|cycle| !cycle.holds_buffer).count();
    assert_eq!(trace.len(), unsolved + broken);
    assert!(trace.targets().iter().all(|&target| orbit.piece(target) != orbit.piece(trace.buffer())));
    let breaks = trace.steps().iter().filter(|step| step.role.begins()).count();
    assert_eq!(breaks, broken);
    let pieces: usize = trace.cycles().iter().map(|cycle| cycle.pieces).sum();
    assert_eq!(pieces, unsolved + usize::from(trace.cycles().iter().any(|cycle| cycle.holds_buffer)));
}

proptest! {
    #[test]
    fn the_memo_solves((size, state) in size_and_state()) {
        check(&state, &Solver::new(size, Conventions::default()));
    }

    #[test]
    fn the_memo_solves_wherever_cycles_are_broken(
        (size, state) in size_and_state(),
        list in proptest::sample::subsequence(Sticker::all().collect::<Vec<_>>(), 0..24).prop_shuffle(),
    ) {
        for breaks in [BreakChoice::Preference(list.clone()), BreakChoice::Fewest] {
            check(&state, &Solver::new(size, turned_conventions(Rotation::NONE, &breaks)));
        }
    }

    #[test]
    fn fewest_takes_no_more_set_up_moves_than_first(state in state(Size::THREE)) {
        let cost = |breaks: BreakChoice| {
            let solver = Solver::new(Size::THREE, turned_conventions(Rotation::NONE, &breaks));
            let memo = solver.memo(&state).unwrap();
            let costs = |trace: &Trace| {
                let table = solver.method().unwrap().swap(trace.orbit()).unwrap().costs();
                trace.targets().iter().map(|target| table[target.index()]).sum::<u32>()
            };
            (memo.letters(), memo.parts().iter().map(costs).sum::<u32>())
        };
        let (first, fewest) = (cost(BreakChoice::First), cost(BreakChoice::Fewest));
        prop_assert_eq!(first.0, fewest.0);
        prop_assert!(fewest.1 <= first.1);
    }

    #[test]
    fn every_hold_of_the_conventions_solves(
        (size, state) in size_and_state(),
        up in 0..24usize,
        turn in 0..24usize,
        best in any::<bool>(),
    ) {
        let wanted = Rotation::all().nth(up).unwrap();
        let solver = Solver::new(size, Conventions { holding: wanted, ..Conventions::default() });
        // The scramble may have left the whole cube turned.
        let scrambled = state.then(&State::held(size, Rotation::all().nth(turn).unwrap()));
        let choice = if best { HoldChoice::Best } else { HoldChoice::Conventions };
        let solve = solver.solve(&scrambled, choice).unwrap();
        let done = scrambled.after(solve.held.rotation.turns()).after(solve.solution.unwrap().moves());
        prop_assert!(done.looks_like(&State::held(size, wanted)));
        // Fixed centres decide, whatever is chosen; without them the conventions ask for one way.
        if size.is_odd() || !best {
            prop_assert_eq!(&solve.held, &Held::new(&scrambled, wanted));
        }
    }

    #[test]
    fn the_best_hold_of_a_2x2_is_the_shortest_of_all_24(state in state(Size::TWO), up in 0..24usize) {
        let wanted = Rotation::all().nth(up).unwrap();
        let solver = Solver::new(Size::TWO, Conventions { holding: wanted, ..Conventions::default() });
        // Turned in space and its colours named anew, without the solver.
        let shortest = Rotation::all()
            .map(|rotation| solver.memo(&state.after(rotation.turns()).named_in(wanted)).unwrap().letters())
            .min()
            .unwrap();
        let best = solver.pick_up(&state, HoldChoice::Best).unwrap();
        prop_assert_eq!(solver.memo(&best.state).unwrap().letters(), shortest);
        let offers = solver.offers(&state).unwrap();
        prop_assert_eq!(offers.len(), 24);
        prop_assert_eq!(&offers[0].held, &best);
        for offer in &offers {
            let memo = solver.memo(&offer.held.state).unwrap();
            prop_assert_eq!(memo.letters(), offer.letters);
            prop_assert_eq!(&offer.held.state, &state.after(offer.held.rotation.turns()).named_in(wanted));
        }
        let memo = solver.memo(&best.state).unwrap();
        let solution = solver.plan(&best.state, &memo).unwrap();
        let done = state.after(best.rotation.turns()).after(solution.moves());
        prop_assert!(done.looks_like(&State::held(Size::TWO, wanted)));
    }

    #[test]
    fn fixed_centres_leave_no_choice_of_holding(state in state(Size::THREE)) {
        prop_assert!(Solver::new(Size::THREE, Conventions::default()).offers(&state).unwrap().is_empty());
    }
}

/// Every corner and every edge sticker is the buffer once: 24 holds times the states below.
#[test]
fn the_memo_solves_from_every_buffer() {
    let mut runner = proptest::test_runner::TestRunner::deterministic();
    let mut corner_buffers = Vec::new();
    let mut edge_buffers = Vec::new();
    for rotation in Rotation::all() {
        let conventions = turned_conventions(rotation, &BreakChoice::First);
        corner_buffers.push(conventions.kind(Orbit::Corner).buffer);
        edge_buffers.push(conventions.kind(Orbit::Midge).buffer);
        for size in [Size::TWO, Size::THREE] {
            let solver = Solver::new(size, conventions.clone());
            for _ in 0..8 {
                let state = state(size).new_tree(&mut runner).unwrap().current();
                check(&state, &solver);
            }
        }
    }
    corner_buffers.sort_unstable();
    edge_buffers.sort_unstable();
    assert_eq!(corner_buffers, Sticker::all().collect::<Vec<_>>());
    assert_eq!(edge_buffers, Sticker::all().collect::<Vec<_>>());
}

/// The letters of the default scheme. Common practice, no source.
#[test]
fn letters_of_the_default_scheme() {
    let conventions = Conventions::default();
    let letters = &conventions.kind(Orbit::Corner).letters;
    for (name, letter) in [
        ("RUB", "N"),
        ("DBR", "W"),
        ("FUR", "J"),
        ("LUF", "F"),
        ("LDB", "H"),
        ("LUB", "E"),
        ("UBL", "A"),
        ("DFL", "U"),
    ] {
        assert_eq!(letters.of(Orbit::Corner.sticker(name).unwrap()), letter, "{name}");
    }
    assert_eq!(conventions.kind(Orbit::Corner).buffer, Orbit::Corner.sticker("LUB").unwrap());
}

/// What the two algorithms do. Common practice, no source.
#[test]
fn the_swaps_exchange_what_the_trade_says() {
    let solver = Solver::new(Size::THREE, Conventions::default());
    let method = solver.method().unwrap();
    let corner = method.swap(Orbit::Corner).unwrap().effect();
    assert_eq!(Orbit::Corner.name(corner.target()), "DFR");
    let moved: Vec<_> = corner.others().iter().map(|&(orbit, sticker)| orbit.name(sticker)).collect();
    assert_eq!(moved, ["UB", "UL"]);
    let edge = method.swap(Orbit::Midge).unwrap().effect();
    assert_eq!(Orbit::Midge.name(edge.target()), "UL");
    let moved: Vec<_> = edge.others().iter().map(|&(orbit, sticker)| orbit.name(sticker)).collect();
    assert_eq!(moved, ["UBR", "UFR"]);
    assert!(method.parity().is_some());
    let small = Solver::new(Size::TWO, Conventions::default());
    assert!(small.method().unwrap().parity().is_none());
}

/// Only R, F and D turns leave the corner of the buffer alone. Common practice, no source.
#[test]
fn corner_set_ups_turn_right_front_and_down_only() {
    let solver = Solver::new(Size::THREE, Conventions::default());
    let swap = solver.method().unwrap().swap(Orbit::Corner).unwrap();
    for target in Sticker::all() {
        for turn in swap.setups(target).first().into_iter().flat_map(Setup::turns) {
            assert!(matches!(turn.block.follows(), Face::R | Face::F | Face::D), "{turn}");
        }
    }
}
