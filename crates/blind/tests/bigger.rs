//! Every kind of piece of sizes 4 to 7 is carried out: whatever the method, the buffer and the state, the plan solves.

use blind::{
    Action, BreakChoice, Carrier, Conventions, HoldChoice, MethodError, MethodName, NoSolution, OrbitOrder,
    ParityChoice, Solver, letters_effect,
};
use cube::{Hand, Layer, Orbit, Perm, Rotation, Size, State, Sticker};
use rand::seq::SliceRandom;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

fn bigger() -> impl Iterator<Item = Size> {
    Size::ALL.into_iter().filter(|&size| size > Size::THREE)
}

fn turned(orbit: Orbit) -> bool {
    orbit.stickers_per_piece() > 1
}

/// Every state with the same probability, pieces told apart: wings and centres anyhow, corners and edges as turning them allows.
fn any_state(size: Size, rng: &mut ChaCha8Rng) -> State {
    loop {
        let perms: Vec<Perm> = Orbit::of(size)
            .iter()
            .map(|&orbit| {
                let mut pieces: Vec<_> = orbit.all_pieces().collect();
                pieces.shuffle(rng);
                let mut table = [0; 24];
                for (place, piece) in orbit.all_pieces().zip(pieces) {
                    let turn = rng.random_range(0..orbit.stickers_per_piece());
                    for steps in 0..orbit.stickers_per_piece() {
                        let to = orbit.turned(orbit.reference(place), steps);
                        let from = orbit.turned(orbit.reference(piece), steps + turn);
                        table[to.index()] = from.index() as u8;
                    }
                }
                Perm::new(table).expect("a permutation")
            })
            .collect();
        // Twist, flip and parity are right in one of three, six or twelve draws.
        if let Ok(state) = State::from_orbits(size, Rotation::NONE, &perms) {
            return state;
        }
    }
}

/// The conventions with a method for each kind, and buffers drawn for wings and centres.
fn conventions(size: Size, method: impl Fn(Orbit) -> MethodName, rng: &mut ChaCha8Rng) -> Conventions {
    let mut conventions = Conventions::default();
    for &orbit in Orbit::of(size) {
        let method = method(orbit);
        let kind = conventions.kind_mut(orbit);
        kind.method = method;
        if let Some(usual) = blind::usual(method, orbit) {
            kind.algorithm = Some(usual.algorithm);
            kind.buffer = usual.buffer;
        }
        if !turned(orbit) {
            kind.buffer = Sticker::new(rng.random_range(0..24)).expect("below 24");
        }
    }
    conventions
}

fn solves(solver: &Solver, states: usize, rng: &mut ChaCha8Rng) {
    let size = solver.size();
    for _ in 0..states {
        let solve = solver.solve(&any_state(size, rng), HoldChoice::Conventions).expect("a memo");
        let solution = solve.solution.unwrap_or_else(|error| panic!("{size}: {error}"));
        assert!(solve.held.state.after(solution.moves()).is_solved(), "{size}");
        let letters: usize =
            solution.actions().iter().filter_map(Action::letters).map(|(.., letters)| letters.len()).sum();
        assert_eq!(letters, solve.memo.letters(), "{size}: every letter is carried out");
    }
}

#[test]
fn every_size_is_solved_by_the_usual_methods() {
    let mut rng = ChaCha8Rng::seed_from_u64(1);
    for size in bigger() {
        solves(&Solver::new(size, Conventions::default()), 6, &mut rng);
    }
}

#[test]
fn every_method_of_every_kind_solves() {
    let mut rng = ChaCha8Rng::seed_from_u64(2);
    for size in bigger() {
        for method in MethodName::ALL {
            let of = |orbit: Orbit| match orbit {
                Orbit::Corner if method == MethodName::SliceSwap => MethodName::ThreeCycle,
                Orbit::Corner
                | Orbit::Midge
                | Orbit::Wing { .. }
                | Orbit::XCentre { .. }
                | Orbit::TCentre { .. }
                | Orbit::Oblique(Hand::Left | Hand::Right) => method,
            };
            let mut conventions = conventions(size, of, &mut rng);
            conventions.execution_order = OrbitOrder::of_execution(&[Orbit::Midge, Orbit::Corner]);
            solves(&Solver::new(size, conventions), 3, &mut rng);
        }
    }
}

#[test]
fn edges_taken_for_each_other_leave_no_wings_exchanged() {
    let mut rng = ChaCha8Rng::seed_from_u64(3);
    for size in bigger() {
        let conventions = Conventions { parity: ParityChoice::Exchange, ..Conventions::default() };
        solves(&Solver::new(size, conventions), 4, &mut rng);
    }
}

/// A letter by itself exchanges the buffer's piece with its target's and does the same besides as every other; two letters, the
/// second at the second place, therefore do just what they say.
#[test]
fn two_letters_by_themselves_do_what_two_letters_ask() {
    let mut rng = ChaCha8Rng::seed_from_u64(4);
    for size in bigger() {
        for method in [MethodName::OneSwap, MethodName::SliceSwap] {
            for &orbit in Orbit::of(size).iter().filter(|orbit| !turned(**orbit)) {
                let of =
                    |other| if other == orbit { method } else { Conventions::default().kind(other).method };
                let solver = Solver::new(size, conventions(size, of, &mut rng));
                let Some(Carrier::Inner(inner)) = solver.method().expect("a method").carrier(orbit) else {
                    panic!("{orbit}");
                };
                let others = Sticker::all().filter(|&place| place != inner.buffer());
                for first in others {
                    let second = Sticker::new(rng.random_range(0..24)).expect("below 24");
                    if second == inner.buffer() {
                        continue;
                    }
                    let turns = [inner.letter(first, false), inner.letter(second, true)]
                        .map(|letter| letter.expect("a letter").turns())
                        .concat();
                    let does = State::solved(size).after(&turns);
                    let wanted = letters_effect(orbit, inner.buffer(), &[first, second]);
                    assert_eq!(*does.orbit(orbit), wanted, "{size} {orbit} {method:?}");
                    for &other in Orbit::of(size).iter().filter(|&&other| other != orbit) {
                        let same = if other.looks_alike() && !orbit.looks_alike() {
                            blind::is_right(other, does.orbit(other))
                        } else {
                            does.orbit(other).is_identity()
                        };
                        assert!(same, "{size} {orbit} {method:?}: {other}");
                    }
                }
            }
        }
    }
}

/// The wings of each depth may be odd alone, and so may the corners of an even size: reference/parities.txt, from geometry.py.
#[test]
fn each_depth_of_wings_may_be_odd_alone() {
    let mut rng = ChaCha8Rng::seed_from_u64(5);
    for size in bigger() {
        let solver = Solver::new(size, Conventions::default());
        for &orbit in Orbit::of(size).iter().filter(|orbit| !turned(**orbit) || !size.is_odd()) {
            if orbit.looks_alike() {
                continue;
            }
            // Two pieces exchanged and nothing else.
            let buffer = solver.conventions().kind(orbit).buffer;
            let others: Vec<Sticker> =
                Sticker::all().filter(|&place| !orbit.same_piece(place, buffer)).collect();
            let target = others[rng.random_range(0..others.len())];
            let perms: Vec<Perm> =
                Orbit::of(size)
                    .iter()
                    .map(|&other| {
                        if other == orbit { letters_effect(orbit, buffer, &[target]) } else { Perm::IDENTITY }
                    })
                    .collect();
            let state = State::from_orbits(size, Rotation::NONE, &perms).expect("reachable");
            let memo = solver.memo(&state).expect("a memo");
            assert_eq!(memo.parity().collect::<Vec<_>>(), [orbit], "{size}");
            let solution =
                solver.plan(&state, &memo).unwrap_or_else(|error| panic!("{size} {orbit}: {error}"));
            assert!(state.after(solution.moves()).is_solved());
        }
    }
}

#[test]
fn what_stands_between_corners_and_edges_is_refused() {
    let five = Size::new(5).expect("a size");
    let wing = Orbit::Wing { layer: Layer::Second };
    let order = OrbitOrder::of_execution(&[Orbit::Corner, wing, Orbit::Midge]);
    let solver = Solver::new(five, Conventions { execution_order: order, ..Conventions::default() });
    assert_eq!(solver.method().err(), Some(&MethodError::BetweenCornersAndEdges(wing)));
    let mut slice = Conventions::default();
    slice.kind_mut(Orbit::Corner).method = MethodName::SliceSwap;
    let refused = Solver::new(five, slice);
    assert_eq!(refused.method().err(), Some(&MethodError::NotForKind(Orbit::Corner)));
}

/// Where centres come after corners with an odd number of letters, the plan does not solve; then it is none.
#[test]
fn a_plan_that_does_not_solve_is_not_handed_out() {
    let four = Size::new(4).expect("a size");
    let order = OrbitOrder::of_execution(&[Orbit::Corner, Orbit::XCentre { layer: Layer::Second }]);
    let solver = Solver::new(four, Conventions { execution_order: order, ..Conventions::default() });
    let mut rng = ChaCha8Rng::seed_from_u64(6);
    let (mut made, mut refused) = (0, 0);
    for _ in 0..12 {
        let state = any_state(four, &mut rng);
        match solver.solve(&state, HoldChoice::Conventions).expect("a memo").solution {
            Ok(solution) => {
                assert!(state.after(solution.moves()).is_solved());
                made += 1;
            }
            Err(error) => {
                assert!(matches!(error, NoSolution::CentresLate), "{error}");
                refused += 1;
            }
        }
    }
    assert!(refused > 0, "{made} made");
}

#[test]
fn of_all_ways_to_hold_it_the_one_with_most_centres_right() {
    let mut rng = ChaCha8Rng::seed_from_u64(7);
    for size in bigger().filter(|size| !size.is_odd()) {
        let solver = Solver::new(size, Conventions::default());
        let state = any_state(size, &mut rng);
        let right = |state: &State| {
            let centres = Orbit::of(size).iter().filter(|orbit| orbit.looks_alike());
            let places = centres.flat_map(|&orbit| Sticker::all().map(move |place| (orbit, place)));
            places.filter(|&(orbit, place)| state.at(orbit, place).face() == place.face()).count()
        };
        let offers = solver.offers(&state).expect("offers");
        assert_eq!(offers.len(), 24);
        assert!(offers.windows(2).all(|pair| pair[0].letters <= pair[1].letters));
        // Held otherwise, nothing moves; only what belongs where is another matter. So it is counted anew.
        for offer in &offers {
            assert_eq!(offer.centres, right(&offer.held.state));
            let turned = state.after(offer.held.rotation.turns());
            assert!(offer.held.state.looks_like(&turned));
        }
        let most = offers.iter().map(|offer| offer.centres).max().expect("24 of them");
        let held = solver.pick_up(&state, HoldChoice::MostCentres).expect("picked up");
        assert_eq!(right(&held.state), most);
        let best = offers.iter().find(|offer| offer.centres == most).expect("one");
        assert_eq!(held, best.held);
    }
}

#[test]
fn centres_break_where_letters_cost_least() {
    let mut rng = ChaCha8Rng::seed_from_u64(8);
    let four = Size::new(4).expect("a size");
    let centre = Orbit::XCentre { layer: Layer::Second };
    for breaks in [BreakChoice::Fewest, BreakChoice::Least] {
        let mut conventions = Conventions::default();
        conventions.kind_mut(centre).breaks = breaks.clone();
        let solver = Solver::new(four, conventions);
        let plain = Solver::new(four, Conventions::default());
        let (mut ours, mut others) = (0, 0);
        for _ in 0..20 {
            let state = any_state(four, &mut rng);
            let memos = [&solver, &plain].map(|solver| solver.memo(&state).expect("a memo"));
            assert_eq!(memos[0].letters(), memos[1].letters(), "no letter more for an easier memo");
            let [one, other] = memos.map(|memo| {
                let plan = solver.plan(&state, &memo).expect("a plan");
                let of_centres = plan
                    .actions()
                    .iter()
                    .filter(|action| action.letters().is_some_and(|(orbit, ..)| orbit == centre));
                of_centres.map(|action| action.turns().len()).sum::<usize>()
            });
            ours += one;
            others += other;
        }
        assert!(ours < others, "{breaks:?}: {ours} turns against {others}");
    }
}
