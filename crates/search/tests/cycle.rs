//! Promises of the algorithm search.

use cube::{Algorithm, Axis, Metric, Orbit, Size, State, Sticker, Turn, mirrored};
use search::cycle::{
    Effect, EffectError, EffectKind, FindError, Finder, Finding, Limits, Milestone, TurnSet,
};
use std::collections::{BTreeSet, HashMap};
use std::ops::ControlFlow;

const PLENTY: u64 = 1 << 30;

fn finder(set: TurnSet, max_length: usize, memory: u64) -> Finder {
    Finder::prepare(set, Limits { max_length, memory }, &mut |_| ControlFlow::Continue(())).unwrap()
}

fn corner(name: &str) -> Sticker {
    Orbit::Corner.sticker(name).unwrap()
}

fn midge(name: &str) -> Sticker {
    Orbit::Midge.sticker(name).unwrap()
}

fn after(text: &str, size: Size) -> State {
    State::solved(size).after(&Algorithm::parse(text, size).unwrap().flatten())
}

/// The set's sequences up to a length that lead to a state, by trying all of them; commuting turns sorted.
fn by_trying(set: &TurnSet, state: &State, max_length: usize) -> BTreeSet<Vec<Turn>> {
    let mut found = BTreeSet::new();
    let mut open = vec![(Vec::new(), State::solved(set.size()))];
    while let Some((turns, reached)) = open.pop() {
        if reached == *state {
            found.insert(turns.clone());
        }
        for &turn in set.turns() {
            let last: Option<&Turn> = turns.last();
            let worth =
                last.is_none_or(|last| last.block.axis() != turn.block.axis() || (last.block < turn.block));
            let mut longer = turns.clone();
            longer.push(turn);
            if worth && set.cost(&longer) <= max_length {
                open.push((longer, reached.after(&[turn])));
            }
        }
    }
    found
}

#[test]
fn states_by_length_are_the_published_ones() {
    // OEIS A080601: 3x3, half turns.
    let set = TurnSet::faces(Size::THREE).unwrap();
    assert_eq!(finder(set, 10, PLENTY).states_by_length(), [1, 18, 243, 3240, 43239, 574_908]);
    // OEIS A080602: 3x3, quarter turns.
    let set = TurnSet::new(Size::THREE, &Turn::faces().collect::<Vec<_>>(), Metric::QuarterTurn).unwrap();
    assert_eq!(finder(set, 10, PLENTY).states_by_length(), [1, 12, 114, 1068, 10011, 93840]);
    // OEIS A079761: 2x2, half turns, one corner kept in its place.
    let set = TurnSet::parse(Size::TWO, "R U F", Metric::HalfTurn).unwrap();
    assert_eq!(finder(set, 14, PLENTY).states_by_length(), [1, 9, 54, 321, 1847, 9992, 50136, 227_536]);
    // OEIS A079762: 2x2, quarter turns.
    let set = TurnSet::parse(Size::TWO, "R U F", Metric::QuarterTurn).unwrap();
    assert_eq!(finder(set, 14, PLENTY).states_by_length(), [1, 6, 27, 120, 534, 2256, 8969, 33058]);
}

#[test]
fn the_2x2_agrees_with_a_plain_breadth_first_search() {
    let set = TurnSet::parse(Size::TWO, "R U F", Metric::HalfTurn).unwrap();
    // Distance and number of shortest sequences: no two of these three faces commute, so each is listed.
    let mut known: HashMap<State, (usize, usize)> = HashMap::from([(State::solved(Size::TWO), (0, 1))]);
    let mut layer = vec![State::solved(Size::TWO)];
    for distance in 1..=6 {
        let mut next = Vec::new();
        for state in &layer {
            let ways = known[state].1;
            for &turn in set.turns() {
                let reached = state.after(&[turn]);
                let entry = known.entry(reached).or_insert_with(|| {
                    next.push(reached);
                    (distance, 0)
                });
                if entry.0 == distance {
                    entry.1 += ways;
                }
            }
        }
        layer = next;
    }
    let finder = finder(set, 6, PLENTY);
    let mut states: Vec<State> = known.keys().copied().filter(|state| known[state].0 > 4).collect();
    states.sort_unstable_by_key(|state| *state.orbit(Orbit::Corner));
    let effects: Vec<Effect> = states.iter().step_by(23).copied().map(Effect::of_state).collect();
    assert!(effects.len() > 2000);
    for finding in finder.find_all(&effects, 0).unwrap() {
        let (distance, ways) = known[finding.effect.state()];
        assert_eq!(finding.shortest, Some(distance));
        assert_eq!(finding.algorithms.len(), ways);
    }
    // And what is farther is not found.
    let effects = Effect::all_three_cycles(Size::TWO, Orbit::Corner, corner("UFR")).unwrap();
    for finding in finder.find_all(&effects, 0).unwrap() {
        assert_eq!(finding.shortest, known.get(finding.effect.state()).map(|&(distance, _)| distance));
    }
}

#[test]
fn nothing_is_missed_and_nothing_listed_twice() {
    // Every sequence tried, against the two halves that meet: also longer ones than the shortest, turns of unequal count, and
    // a table that holds less than half.
    let mut most_listed = 0;
    for (blocks, metric, max_length, text) in [
        ("R U M", Metric::SliceTurn, 6, "M' U2 M U2"),
        ("R U M", Metric::HalfTurn, 8, "M' U2 M U2"),
        ("R U M", Metric::QuarterTurn, 8, "R U R' U'"),
        ("R L U", Metric::HalfTurn, 6, "R L U2 R' L'"),
        ("R r x U", Metric::Execution, 5, "r U R' x'"),
        ("M U", Metric::SliceTurn, 8, "M2 U2 M2 U2"),
        ("R L r l x U D u y M", Metric::Execution, 4, "R U L'"),
    ] {
        let state = after(text, Size::THREE);
        let set = TurnSet::parse(Size::THREE, blocks, metric).unwrap();
        let expected: BTreeSet<Vec<Turn>> = by_trying(&set, &state, max_length);
        let (most, least) = Finder::needs(&set, max_length);
        for memory in [most, least] {
            let set = TurnSet::parse(Size::THREE, blocks, metric).unwrap();
            let finder = finder(set, max_length, memory);
            let finding = &finder.find_all(&[Effect::of_state(state)], max_length).unwrap()[0];
            let listed: BTreeSet<Vec<Turn>> = finding.algorithms.iter().cloned().collect();
            assert_eq!(listed.len(), finding.algorithms.len(), "{blocks}: listed twice");
            // By trying also come runs that are longer than they need be (r R' for M), which are not listed.
            let extra: Vec<_> = listed.difference(&expected).collect();
            assert!(extra.is_empty(), "{blocks}: {extra:?}");
            for missing in expected.difference(&listed) {
                assert!(
                    wasteful(missing, finder.turn_set()),
                    "{blocks} with {memory}: {} is missing",
                    cube::display_turns(missing)
                );
            }
            assert!(!listed.is_empty());
            most_listed = most_listed.max(listed.len());
        }
    }
    assert!(most_listed > 3, "{most_listed}");
}

/// Whether some run about an axis counts more than other turns of the set about it that do the same.
fn wasteful(turns: &[Turn], set: &TurnSet) -> bool {
    turns.chunk_by(|a, b| a.block.axis() == b.block.axis()).any(|run| {
        let axis = run[0].block.axis();
        let about: Vec<Turn> = set.turns().iter().copied().filter(|turn| turn.block.axis() == axis).collect();
        let effect = State::solved(set.size()).after(run);
        let singles = about.iter().map(|&turn| vec![turn]);
        let pairs = about.iter().flat_map(|&a| about.iter().map(move |&b| vec![a, b]));
        singles.chain(pairs).chain([Vec::new()]).any(|other| {
            set.cost(&other) < set.cost(run) && State::solved(set.size()).after(&other) == effect
        })
    })
}

#[test]
fn lengths_are_symmetric_under_inverse_and_mirror() {
    // Each is searched on its own, so that none is carried over from another.
    let finder = finder(TurnSet::faces(Size::THREE).unwrap(), 10, PLENTY);
    let effects = Effect::all_three_cycles(Size::THREE, Orbit::Corner, corner("UFR")).unwrap();
    for effect in effects.iter().step_by(29) {
        let alone = |effect: Effect| finder.find_all(&[effect], 0).unwrap().remove(0);
        let here = alone(*effect);
        let back = alone(Effect::of_state(effect.state().inverse()));
        assert_eq!((here.shortest, here.algorithms.len()), (back.shortest, back.algorithms.len()));
        for axis in Axis::ALL {
            let Some(algorithm) = here.algorithms.first() else { continue };
            let mirror =
                alone(Effect::of_state(State::solved(Size::THREE).after(&mirrored(algorithm, axis))));
            assert_eq!((here.shortest, here.algorithms.len()), (mirror.shortest, mirror.algorithms.len()));
        }
    }
}

#[test]
fn all_cases_of_a_corner_buffer() {
    let finder = finder(TurnSet::faces(Size::THREE).unwrap(), 10, PLENTY);
    let effects = Effect::all_three_cycles(Size::THREE, Orbit::Corner, corner("UFR")).unwrap();
    // Textbook counting: 21 first targets, 18 second ones each.
    assert_eq!(effects.len(), 378);
    let findings = finder.find_all(&effects, 0).unwrap();
    assert_eq!(findings.len(), 378);
    for finding in &findings {
        let length = finding.shortest.unwrap_or(11);
        assert!(finding.algorithms.iter().all(|turns| turns.len() == length));
        assert_eq!(finding.algorithms.is_empty(), finding.shortest.is_none());
        for turns in &finding.algorithms {
            assert_eq!(State::solved(Size::THREE).after(turns), *finding.effect.state());
        }
    }
    // A pure commutator of three turns and one takes eight; fewer never do (common practice, no source).
    assert_eq!(findings.iter().filter_map(|finding| finding.shortest).min(), Some(8));
}

#[test]
fn a_three_cycle_solves_its_letters_in_order() {
    // The buffer holds the piece of `first`, the place `first` that of `second`: so a solver traces first, second.
    let (buffer, first, second) = (corner("UFR"), corner("RDB"), corner("LUB"));
    let effect = Effect::three_cycle(Size::THREE, Orbit::Corner, buffer, first, second).unwrap();
    let scrambled = effect.state().inverse();
    assert_eq!(scrambled.at(Orbit::Corner, buffer), first);
    assert_eq!(scrambled.at(Orbit::Corner, first), second);
    assert_eq!(scrambled.at(Orbit::Corner, second), buffer);
    assert!(scrambled.then(effect.state()).is_solved());
    // What a commutator does is computed from its turns, not declared.
    let commutator = after("[R U R', D]", Size::THREE);
    let cycle = Sticker::all().find(|&s| commutator.at(Orbit::Corner, s) != s).unwrap();
    let second = commutator.at(Orbit::Corner, cycle);
    let first = commutator.at(Orbit::Corner, second);
    assert_eq!(
        *Effect::three_cycle(Size::THREE, Orbit::Corner, cycle, first, second).unwrap().state(),
        commutator
    );
}

#[test]
fn other_effects() {
    let size = Size::THREE;
    // Common practice, no source: the three of sexy-move repeats and the like; effects computed from the turns.
    let twist = after("[R' D R D' R' D R, U2]", size);
    let moved: Vec<Sticker> =
        Sticker::all().filter(|&place| twist.at(Orbit::Corner, place) != place).collect();
    assert_eq!(moved.len(), 6);
    let pair = moved.iter().flat_map(|&one| moved.iter().map(move |&other| (one, other)));
    assert!(
        pair.filter_map(|(one, other)| Effect::twist_pair(size, one, other).ok())
            .any(|effect| *effect.state() == twist)
    );

    let effect = Effect::twist_pair(size, corner("UFR"), corner("UFL")).unwrap();
    // Turned clockwise, what was on top of the corner comes to its right side.
    assert_eq!(effect.state().at(Orbit::Corner, corner("RUF")), corner("UFR"));
    assert_eq!(effect.state().at(Orbit::Corner, corner("FUL")), corner("LUF"));

    let flip = Effect::flip_pair(size, midge("UF"), midge("UB")).unwrap();
    assert_eq!(flip.state().at(Orbit::Midge, midge("FU")), midge("UF"));
    let swaps = Effect::two_swaps(size, [corner("UFR"), corner("UBR")], [midge("UF"), midge("UR")]).unwrap();
    assert_eq!(swaps.state().at(Orbit::Corner, corner("UBR")), corner("UFR"));
    assert!(swaps.state().then(swaps.state()).is_solved());

    let last = Effect::last_target(
        size,
        corner("UFR"),
        corner("UBL"),
        corner("DFR"),
        true,
        Some([midge("UF"), midge("UR")]),
    )
    .unwrap();
    assert_eq!(last.state().at(Orbit::Corner, corner("UBL")), corner("UFR"));
    assert_eq!(last.state().at(Orbit::Corner, Orbit::Corner.turned(corner("DFR"), 1)), corner("DFR"));
    assert!(matches!(last.kind(), EffectKind::LastTarget { .. }));
}

#[test]
fn effects_beyond_the_table_are_found() {
    // A swap of two corners and two midges in turns of U, R and F (common practice, no source: 14 turns). The table holds less than half of it.
    let swaps =
        Effect::two_swaps(Size::THREE, [corner("UFR"), corner("UBR")], [midge("UL"), midge("UR")]).unwrap();
    let set = TurnSet::parse(Size::THREE, "U R F", Metric::HalfTurn).unwrap();
    let (_, least) = Finder::needs(&set, 14);
    let finder = finder(set, 14, least);
    let finding = &finder.find_all(&[swaps], 0).unwrap()[0];
    let known = Algorithm::parse("R U R' U' R' F R2 U' R' U' R U R' F'", Size::THREE).unwrap().flatten();
    assert_eq!(State::solved(Size::THREE).after(&known), *swaps.state());
    let shortest = finding.shortest.expect("14 turns are known");
    assert!(shortest > 2 * (finder.states_by_length().len() - 1), "met within the table");
    assert!(shortest < 14 || finding.algorithms.contains(&known));
    assert_eq!(finding.searched, shortest);
}

#[test]
fn what_is_no_effect_is_refused() {
    let size = Size::THREE;
    let same = Effect::three_cycle(size, Orbit::Corner, corner("UFR"), corner("RUF"), corner("UBL"));
    assert!(matches!(same, Err(EffectError::SamePiece { .. })));
    let none = Effect::flip_pair(Size::TWO, midge("UF"), midge("UB"));
    assert!(matches!(none, Err(EffectError::NoSuchOrbit { .. })));
    let centre = Orbit::of(Size::new(4).unwrap())[2];
    let like =
        Effect::three_cycle(Size::new(4).unwrap(), centre, corner("UFR"), corner("RDF"), corner("UBL"));
    assert!(matches!(like, Err(EffectError::LooksAlike(_))));
    let odd = Effect::last_target(size, corner("UFR"), corner("UBL"), corner("DFR"), true, None);
    assert!(matches!(odd, Err(EffectError::Unreachable(_))));
    assert!(Effect::last_target(Size::TWO, corner("UFR"), corner("UBL"), corner("DFR"), true, None).is_ok());
    let turns = finder(TurnSet::faces(size).unwrap(), 4, PLENTY);
    let small = Effect::twist_pair(Size::TWO, corner("UFR"), corner("UFL")).unwrap();
    assert!(matches!(turns.find_all(&[small], 0), Err(FindError::OtherSize { .. })));
}

#[test]
fn too_little_memory_is_told_beforehand() {
    let set = TurnSet::faces(Size::THREE).unwrap();
    let (_, least) = Finder::needs(&set, 12);
    let told =
        Finder::prepare(set, Limits { max_length: 12, memory: 1000 }, &mut |_| panic!("no work is begun"));
    assert!(
        matches!(told, Err(FindError::Memory { needed, allowed: 1000, max_length: 12, possible }) if needed == least && possible < 12)
    );
    let set = TurnSet::faces(Size::THREE).unwrap();
    let told = Finder::prepare(set, Limits { max_length: 1000, memory: u64::MAX / 4 }, &mut |_| {
        panic!("no work is begun")
    });
    assert!(matches!(told, Err(FindError::Memory { .. })));
}

#[test]
fn it_can_be_stopped_anywhere_and_results_come_as_they_are_found() {
    let set = TurnSet::faces(Size::THREE).unwrap();
    let stopped =
        Finder::prepare(set, Limits { max_length: 12, memory: PLENTY }, &mut |_| ControlFlow::Break(()));
    assert!(matches!(stopped, Err(FindError::Stopped)));

    let finder = finder(TurnSet::faces(Size::THREE).unwrap(), 8, PLENTY);
    let effects = Effect::all_three_cycles(Size::THREE, Orbit::Corner, corner("UFR")).unwrap();
    let mut found: Vec<Finding> = Vec::new();
    let answer = finder.find(&effects, 0, &mut |event| match event {
        Milestone::Found { finding, .. } => {
            found.push(finding.clone());
            if found.len() == 5 { ControlFlow::Break(()) } else { ControlFlow::Continue(()) }
        }
        Milestone::Searching { .. } | Milestone::Reached { .. } => ControlFlow::Continue(()),
    });
    assert_eq!(answer, Err(FindError::Stopped));
    assert_eq!(found.len(), 5);
}

#[test]
fn fewer_turns_may_be_enough() {
    // Only turns of U, D and R: then symmetries that take these faces elsewhere do not help.
    let set = TurnSet::parse(Size::THREE, "U D R", Metric::HalfTurn).unwrap();
    let finder = finder(set, 10, PLENTY);
    let effect = Effect::of_state(after("[R U R', D]", Size::THREE));
    let finding = &finder.find_all(&[effect], 0).unwrap()[0];
    assert_eq!(finding.shortest, Some(8));
    let faces = |turn: &Turn| "UDR".contains(turn.block.follows().letter());
    assert!(finding.algorithms.iter().flatten().all(faces));
    assert!(finding.algorithms.contains(&Algorithm::parse("[R U R', D]", Size::THREE).unwrap().flatten()));
}
