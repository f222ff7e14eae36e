//! Every method, mixed freely, solves uniformly random states; cycle breaks at least cost are the least there is.

use blind::{
    Action, BreakChoice, Carrier, Conventions, Costs, CycleAlgorithm, CycleCase, Memo, MethodError, Outfit,
    Parity, SliceSwap, Solution, Solver, Trace, cheapest_breaks, letters_effect,
};
use cube::{Algorithm, Orbit, Size, State, Sticker};
use formats::conventions::{read, write};
use search::ease::Model;
use search::random::{seeded, state2, state3};

fn conventions(text: &str) -> Conventions {
    read(text).unwrap_or_else(|error| panic!("{error}\n{text}"))
}

fn corner(name: &str) -> Sticker {
    Orbit::Corner.sticker(name).unwrap()
}

fn edge(name: &str) -> Sticker {
    Orbit::Midge.sticker(name).unwrap()
}

fn solves(state: &State, solver: &Solver) -> (Memo, Solution) {
    let memo = solver.memo(state).unwrap();
    let solution = solver.plan(state, &memo).unwrap();
    assert!(state.after(solution.moves()).is_solved());
    (memo, solution)
}

/// A solver with a method.
fn able(size: Size, conventions: Conventions) -> Solver {
    let solver = Solver::new(size, conventions);
    assert!(solver.method().is_ok(), "{:?}", solver.method());
    solver
}

/// All ways to put the methods together that can be: 2 for corners, 3 for edges, both orders, both ways with parity.
fn every_mixture() -> Vec<(String, bool)> {
    let mut all = Vec::new();
    for corners in ["one-swap", "three-cycle"] {
        for edges in ["one-swap", "slice-swap", "three-cycle"] {
            for order in ["\"corner\", \"edge\"", "\"edge\", \"corner\""] {
                for parity in ["algorithm", "exchange"] {
                    for breaks in ["first", "least"] {
                        for turned in ["algorithm", "cycles"] {
                            let text = format!(
                                "[method]\ncorner = \"{corners}\"\nedge = \"{edges}\"\n[parity]\nby = \"{parity}\"\n\
                                 [memo]\nexecution = [{order}]\n[breaks]\ncorner = \"{breaks}\"\nedge = \"{breaks}\"\n\
                                 [turned]\ncorner = \"{turned}\"\nedge = \"{turned}\"\n"
                            );
                            let slice_later = edges == "slice-swap"
                                && order.starts_with("\"corner")
                                && parity == "algorithm";
                            all.push((text, !slice_later));
                        }
                    }
                }
            }
        }
    }
    all
}

#[test]
fn every_mixture_of_methods_solves_random_states() {
    let mut generator = seeded(6);
    for (text, works) in every_mixture() {
        let conventions = conventions(&text);
        let solver = Solver::new(Size::THREE, conventions.clone());
        if let Err(error) = solver.method() {
            assert_eq!((error, works), (&MethodError::SliceNotFirst, false), "{text}");
            continue;
        }
        assert!(works, "{text}");
        for _ in 0..40 {
            solves(&state3(&mut generator), &solver);
        }
        assert_eq!(read(&write(&conventions)).unwrap(), conventions);
    }
}

#[test]
fn three_cycles_solve_the_2x2() {
    let conventions = conventions("[method]\ncorner = \"three-cycle\"");
    let solver = able(Size::TWO, conventions);
    let mut generator = seeded(2);
    for _ in 0..200 {
        solves(&state2(&mut generator), &solver);
    }
}

#[test]
fn three_cycles_solve_from_every_buffer() {
    let mut generator = seeded(24);
    for buffer in Sticker::all() {
        let (c, e) = (Orbit::Corner.name(buffer), Orbit::Midge.name(buffer));
        let text = format!(
            "[method]\ncorner = \"three-cycle\"\nedge = \"three-cycle\"\n[buffer]\ncorner = \"{c}\"\nedge = \"{e}\"\n"
        );
        let solver = able(Size::THREE, conventions(&text));
        for _ in 0..4 {
            solves(&state3(&mut generator), &solver);
        }
    }
}

#[test]
fn slice_swap_works_from_every_buffer_and_knows_odd_from_even() {
    let mut generator = seeded(4);
    for buffer in Sticker::all() {
        let slice = SliceSwap::new(Size::THREE, buffer).unwrap();
        // The two other edges of the slice change places at every second letter, the rest do not.
        let swapped = Sticker::all()
            .filter(|&target| slice.letter(target, false) != slice.letter(target, true))
            .count();
        assert_eq!(swapped, 4);
        let text = format!(
            "[method]\nedge = \"slice-swap\"\n[buffer]\nedge = \"{}\"\n[parity]\nby = \"exchange\"\n",
            Orbit::Midge.name(buffer)
        );
        let solver = able(Size::THREE, conventions(&text));
        for _ in 0..4 {
            solves(&state3(&mut generator), &solver);
        }
    }
}

/// Set-ups of slice-swap. Common practice, no source.
#[test]
fn slice_swap_set_ups_leave_the_slice_alone() {
    let slice = SliceSwap::new(Size::THREE, edge("DF")).unwrap();
    let core = State::solved(Size::THREE);
    for target in Sticker::all() {
        let Some(letter) = slice.letter(target, false) else {
            assert_eq!(Orbit::Midge.piece(target), Orbit::Midge.piece(edge("DF")));
            continue;
        };
        let after = core.after(&letter.setup);
        assert_eq!(after.core(), core.core());
        for place in ["DF", "UF", "DB"] {
            assert_eq!(after.at(Orbit::Midge, edge(place)), edge(place));
        }
        assert!(letter.setup.is_empty() || after.at(Orbit::Midge, edge("UB")) == target);
    }
    // Common practice, no source: the place above takes none, and five turns at most reach its other sticker.
    assert!(slice.letter(edge("UB"), false).unwrap().setup.is_empty());
    let longest = Sticker::all().filter_map(|target| Some(slice.letter(target, false)?.setup.len())).max();
    assert_eq!((longest, slice.letter(edge("BU"), false).unwrap().setup.len()), (Some(5), 5));
}

/// The usual parity algorithms fit their methods and are not searched for. Common practice, no source.
#[test]
fn usual_parity_algorithms_fit() {
    for (text, algorithm) in [
        ("[method]\nedge = \"slice-swap\"\n[memo]\nexecution = [\"edge\", \"corner\"]", "D' L2 D M2 D' L2 D"),
        (
            "[method]\nedge = \"three-cycle\"\ncorner = \"three-cycle\"",
            "R U R' F' R U R' U' R' F R2 U' R' U'",
        ),
    ] {
        let solver = able(Size::THREE, conventions(text));
        let method = solver.method().unwrap();
        let Parity::Algorithm { algorithm: found, found: searched } = method.parity_is() else {
            panic!("{text}")
        };
        assert_eq!((found.to_string().as_str(), *searched), (algorithm, false));
    }
}

#[test]
fn an_own_parity_algorithm_that_does_not_fit_is_refused() {
    let text = "[method]\ncorner = \"three-cycle\"\n[algorithm]\nparity = \"R U R' U'\"";
    let solver = Solver::new(Size::THREE, conventions(text));
    assert!(matches!(solver.method(), Err(MethodError::ParityDoesNotFit { .. })));
}

#[test]
fn slice_swap_is_for_edges() {
    let error = read("[method]\ncorner = \"slice-swap\"").unwrap_err();
    assert_eq!((error.line, error.column), (2, 10));
}

/// With the exchange of two edges the edges' letters are even in number, whatever the corners'.
#[test]
fn exchanging_two_edges_makes_the_edges_even() {
    let mut generator = seeded(8);
    for order in ["\"corner\", \"edge\"", "\"edge\", \"corner\""] {
        let text = format!(
            "[method]\ncorner = \"three-cycle\"\nedge = \"three-cycle\"\n[parity]\nby = \"exchange\"\n[memo]\nexecution = [{order}]"
        );
        let solver = able(Size::THREE, conventions(&text));
        let Parity::Exchange { exchange, .. } = solver.method().unwrap().parity_is() else {
            panic!("{text}")
        };
        assert_eq!(exchange.edges, [edge("UR"), edge("UF")]);
        let mut odd = 0;
        for _ in 0..100 {
            let (memo, solution) = solves(&state3(&mut generator), &solver);
            assert!(!memo.part(Orbit::Midge).unwrap().is_odd());
            let corners = memo.part(Orbit::Corner).unwrap().is_odd();
            assert_eq!(memo.exchanged().is_some(), corners);
            odd += usize::from(corners);
            assert!(!solution.actions().iter().any(|action| matches!(action, Action::Parity { .. })));
        }
        assert!((30..70).contains(&odd));
    }
}

#[test]
fn given_algorithms_are_used_and_gaps_are_marked() {
    let conventions = conventions("[method]\ncorner = \"three-cycle\"");
    let given = |first, second, text| {
        let case = CycleCase { orbit: Orbit::Corner, buffer: corner("UFR"), first, second };
        CycleAlgorithm { case, algorithm: Algorithm::parse(text, Size::THREE).unwrap() }
    };
    let algorithms = [
        given(corner("UBR"), corner("RDF"), "(R' D' R U) (R' D R U')"),
        // One that does something else than it is given for is not used.
        given(corner("UBL"), corner("RDF"), "(R' D' R U) (R' D R U')"),
    ];
    let outfit = Outfit { algorithms: &algorithms, ..Outfit::default() };
    let solver = Solver::with(Size::THREE, conventions, &outfit);
    let Some(Carrier::ThreeCycle(cycles)) = solver.method().unwrap().carrier(Orbit::Corner) else { panic!() };
    let own = cycles.case(corner("UBR"), corner("RDF")).unwrap();
    assert_eq!((own.is_found(), own.algorithm().to_string().as_str()), (false, "(R' D' R U) (R' D R U')"));
    assert_eq!(cycles.cases().count(), 378);
    assert_eq!(cycles.cases().filter(|(_, _, case)| case.is_found()).count(), 377);
    for (first, second, case) in cycles.cases() {
        let does = State::solved(Size::THREE).after(case.turns());
        assert_eq!(
            *does.orbit(Orbit::Corner),
            letters_effect(Orbit::Corner, corner("UFR"), &[first, second])
        );
        assert!(does.orbit(Orbit::Midge).is_identity());
    }
}

/// The least by trying every order of the cycles and every sticker of each.
fn least_by_trying(state: &State, orbit: Orbit, buffer: Sticker, costs: &Costs) -> u32 {
    fn go(
        trace: &[Sticker],
        seen: &cube::Perm,
        orbit: Orbit,
        buffer: Sticker,
        costs: &Costs,
        least: &mut u32,
    ) {
        let order: Vec<Sticker> =
            trace.iter().copied().chain(Sticker::all().filter(|sticker| !trace.contains(sticker))).collect();
        let order: [Sticker; 24] = std::array::from_fn(|at| order[at]);
        let made = Trace::new(orbit, seen, buffer, &blind::Breaks { order, cost: None }).unwrap();
        *least = (*least).min(costs.groups(&made.targets()).1);
        // The next break in order can be any sticker of what is unsolved then.
        let breaks: Vec<Sticker> =
            made.steps().iter().filter(|step| step.role.begins()).map(|step| step.target).collect();
        if trace.len() >= breaks.len() {
            return;
        }
        let begins = made.targets().iter().position(|&target| target == breaks[trace.len()]).unwrap_or(0);
        let before = made.steps().iter().take(begins);
        let done: Vec<usize> = before.map(|step| orbit.piece(step.target).index()).collect();
        let open = Sticker::all().filter(|&sticker| {
            let piece = orbit.piece(sticker);
            seen.at(sticker) != sticker && piece != orbit.piece(buffer) && !done.contains(&piece.index())
        });
        for sticker in open {
            let mut longer = trace.to_vec();
            longer.push(sticker);
            go(&longer, seen, orbit, buffer, costs, least);
        }
    }
    let mut least = u32::MAX;
    go(&[], state.orbit(orbit), orbit, buffer, costs, &mut least);
    least
}

#[test]
fn breaks_at_least_cost_equal_the_best_of_all_memos() {
    let mut generator = seeded(11);
    for text in [
        "",
        "[method]\ncorner = \"three-cycle\"\nedge = \"three-cycle\"",
        "[method]\nedge = \"slice-swap\"\n[parity]\nby = \"exchange\"",
    ] {
        let conventions = conventions(text);
        let outfit = Outfit { timed: true, ..Outfit::default() };
        let solver = Solver::with(Size::THREE, conventions.clone(), &outfit);
        let method = solver.method().unwrap();
        let mut more_than_one = 0;
        for _ in 0..25 {
            let state = state3(&mut generator);
            for orbit in [Orbit::Corner, Orbit::Midge] {
                let buffer = conventions.kind(orbit).buffer;
                let (seen, costs) = (state.orbit(orbit), method.costs(orbit).unwrap());
                let by_letter = conventions.kind(orbit).letters.order();
                let starts = cheapest_breaks(seen, orbit, buffer, &by_letter, costs);
                if starts.len() > 3 {
                    continue;
                }
                more_than_one += usize::from(starts.len() > 1);
                let rest = by_letter.into_iter().filter(|sticker| !starts.contains(sticker));
                let order: Vec<Sticker> = starts.iter().copied().chain(rest).collect();
                let order: [Sticker; 24] = std::array::from_fn(|at| order[at]);
                let trace = Trace::new(orbit, seen, buffer, &blind::Breaks { order, cost: None }).unwrap();
                let (_, cost) = costs.groups(&trace.targets());
                assert_eq!(cost, least_by_trying(&state, orbit, buffer, costs), "{state:?}");
            }
        }
        assert!(more_than_one > 5);
    }
}

/// Turned pieces: two flipped edges by one algorithm, and the memo still names their letters.
#[test]
fn two_turned_pieces_take_one_algorithm_where_that_is_easier() {
    let text = "[method]\ncorner = \"three-cycle\"\nedge = \"three-cycle\"\n[breaks]\nedge = \"least\"";
    let conventions = conventions(text);
    let solver = able(Size::THREE, conventions);
    let flips = search::cycle::Effect::flip_pair(Size::THREE, edge("UB"), edge("UL")).unwrap();
    let (memo, solution) = solves(flips.state(), &solver);
    assert_eq!(memo.letters(), 4);
    assert!(matches!(solution.actions(), [Action::Turned { letter: 0, .. }]), "{:?}", solution.actions());
    let twists = search::cycle::Effect::twist_pair(Size::THREE, corner("UBL"), corner("DFR")).unwrap();
    let (memo, solution) = solves(twists.state(), &solver);
    assert_eq!(memo.letters(), 4);
    assert!(matches!(solution.actions(), [Action::Turned { .. }]), "{:?}", solution.actions());
}

#[test]
fn least_costs_no_more_than_first() {
    let mut generator = seeded(12);
    let text = "[method]\ncorner = \"three-cycle\"\nedge = \"three-cycle\"";
    let naive = conventions(text);
    let mut least = naive.clone();
    for orbit in [Orbit::Corner, Orbit::Midge] {
        least.kind_mut(orbit).breaks = BreakChoice::Least;
    }
    let model = Model::built_in();
    let outfit = Outfit { model: Some(&model), timed: true, algorithms: &[] };
    let [naive, least] = [naive, least].map(|conventions| Solver::with(Size::THREE, conventions, &outfit));
    let mut saved = 0;
    for _ in 0..200 {
        let state = state3(&mut generator);
        let one = solves(&state, &naive).1.milliseconds().unwrap();
        let other = solves(&state, &least).1.milliseconds().unwrap();
        assert!(other <= one);
        assert_eq!(least.milliseconds_unweighed(&state), Some(one));
        assert_eq!(naive.milliseconds_unweighed(&state), None);
        saved += one - other;
    }
    assert!(saved > 0);
}
