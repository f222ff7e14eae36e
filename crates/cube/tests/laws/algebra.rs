//! States as a group, turns acting on it, and sequences that mean the same.

use crate::strategies::{axes, rotations, sized_turns, sizes, states, text, turns};
use cube::{
    Amount, Block, Face, Orbit, Perm, Rotation, Size, State, Sticker, Turn, inverted, mirrored, rotated,
    simplified, without_rotations,
};
use proptest::prelude::*;

/// How often a state must be made until the solved cube comes back, up to how centres look.
fn order(state: &State) -> usize {
    let mut power = *state;
    let mut times = 1;
    while !power.is_solved() {
        power = power.then(state);
        times += 1;
    }
    times
}

/// The lengths of all cycles of all orbits, in order: what they have in common is the order of the element.
fn cycle_lengths(state: &State) -> Vec<usize> {
    let mut lengths = Vec::new();
    for &orbit in Orbit::of(state.size()) {
        let mut seen = [false; 24];
        for start in Sticker::all() {
            let (mut at, mut length) = (start, 0);
            while !std::mem::replace(&mut seen[at.index()], true) {
                at = state.at(orbit, at);
                length += 1;
            }
            if length > 0 {
                lengths.push(length);
            }
        }
    }
    lengths.sort_unstable();
    lengths
}

proptest! {
    #[test]
    fn a_state_and_its_inverse_cancel(state in states()) {
        let solved = State::solved(state.size());
        prop_assert_eq!(state.then(&state.inverse()), solved);
        prop_assert_eq!(state.inverse().then(&state), solved);
        prop_assert_eq!(state.inverse().inverse(), state);
        prop_assert_eq!(state.then(&solved), state);
        prop_assert_eq!(solved.then(&state), state);
    }

    #[test]
    fn turning_is_multiplying(
        (size, a, b, c) in sizes().prop_flat_map(|size| (Just(size), turns(size, 20), turns(size, 20), turns(size, 20)))
    ) {
        let [p, q, r] = [&a, &b, &c].map(|turns| State::solved(size).after(turns));
        prop_assert_eq!(p.after(&b), p.then(&q));
        prop_assert_eq!(p.then(&q).then(&r), p.then(&q.then(&r)));
        prop_assert_eq!(p.then(&q).inverse(), q.inverse().then(&p.inverse()));
    }

    #[test]
    fn turns_backwards_undo_them((size, turns) in sized_turns(40)) {
        let state = State::solved(size).after(&turns);
        prop_assert_eq!(State::solved(size).after(&inverted(&turns)), state.inverse());
        prop_assert_eq!(state.after(&inverted(&turns)), State::solved(size));
    }

    #[test]
    fn each_orbit_multiplies_by_its_permutations((size, a) in sized_turns(20), extra in any::<prop::sample::Index>()) {
        let all: Vec<Turn> = Turn::all(size).collect();
        let turn = *extra.get(&all);
        let before = State::solved(size).after(&a);
        let once = State::solved(size).after(&[turn]);
        let mut after = before;
        after.turn(turn).unwrap();
        for &orbit in Orbit::of(size) {
            let product = before.orbit(orbit).then(once.orbit(orbit));
            prop_assert_eq!(*after.orbit(orbit), product);
            for place in Sticker::all() {
                prop_assert_eq!(product.at(place), before.at(orbit, once.at(orbit, place)));
            }
            prop_assert_eq!(product.then(&product.inverse()), Perm::IDENTITY);
            prop_assert_eq!(
                product.is_odd(), before.orbit(orbit).is_odd() != once.orbit(orbit).is_odd()
            );
        }
    }

    #[test]
    fn simplified_means_the_same_and_is_done_once((size, turns) in sized_turns(40)) {
        let short = simplified(&turns);
        prop_assert!(short.len() <= turns.len());
        prop_assert_eq!(State::solved(size).after(&short), State::solved(size).after(&turns));
        prop_assert_eq!(simplified(&short).clone(), short.clone());
        // Nothing that could be merged is left: among neighbours on one axis each block occurs once.
        for (i, turn) in short.iter().enumerate() {
            let run = short[i + 1..].iter().take_while(|next| next.block.axis() == turn.block.axis());
            prop_assert!(run.clone().all(|next| next.block != turn.block), "{}", text(&short));
        }
    }

    #[test]
    fn a_sequence_and_its_inverse_simplify_to_nothing((_, turns) in sized_turns(40)) {
        let mut both = turns.clone();
        both.extend(inverted(&turns));
        prop_assert_eq!(simplified(&both), vec![]);
    }

    #[test]
    fn rotations_can_be_left_to_the_end((size, turns) in sized_turns(40)) {
        let (outer, rest) = without_rotations(&turns, size);
        let only_outer = outer.iter().all(|turn| matches!(turn.block, Block::Outer { depth, .. } if 2 * depth <= size.layers()));
        prop_assert!(only_outer, "{}", text(&outer));
        let again = State::solved(size).after(&outer).after(rest.turns());
        prop_assert!(again.looks_like(&State::solved(size).after(&turns)), "{}", text(&outer));
    }

    #[test]
    fn a_mirror_twice_is_no_mirror((size, turns) in sized_turns(40), mirror in axes()) {
        let seen = mirrored(&turns, mirror);
        prop_assert_eq!(mirrored(&seen, mirror), turns.clone());
        prop_assert!(seen.iter().all(|turn| turn.check(size).is_ok()));
        prop_assert_eq!(mirrored(&inverted(&turns), mirror), inverted(&seen));
    }

    #[test]
    fn a_mirror_keeps_the_lengths_of_cycles((size, turns) in sized_turns(30), mirror in axes()) {
        let state = State::solved(size).after(&turns);
        let seen = State::solved(size).after(&mirrored(&turns, mirror));
        prop_assert_eq!(cycle_lengths(&state), cycle_lengths(&seen));
    }

    #[test]
    fn held_another_way_the_rotated_turns_do_the_same((size, turns) in sized_turns(30), hold in rotations()) {
        // There, the rotated turns, and back again.
        let there = State::held(size, hold);
        let around = there.after(&rotated(&turns, hold)).then(&there.inverse());
        prop_assert_eq!(around, State::solved(size).after(&turns));
        prop_assert_eq!(rotated(&rotated(&turns, hold), hold.inverse()), turns);
    }

    #[test]
    fn rotations_compose((a, b) in (rotations(), rotations()), (size, turns) in sized_turns(20)) {
        prop_assert_eq!(rotated(&rotated(&turns, a), b), rotated(&turns, a.then(b)));
        prop_assert_eq!(State::held(size, a).then(&State::held(size, b)), State::held(size, a.then(b)));
        for face in Face::ALL {
            prop_assert_eq!(a.then(b).image(face), b.image(a.image(face)));
        }
        prop_assert_eq!(a.then(b).is_odd(), a.is_odd() != b.is_odd());
    }

    #[test]
    fn only_rotations_are_solved_in_another_hold((size, turns) in sized_turns(3)) {
        let state = State::solved(size).after(&turns);
        let one_colour_each = Face::ALL.into_iter().all(|face| {
            let facelets = state.facelets();
            facelets.face(face).iter().all(|&colour| colour == facelets.face(face)[0])
        });
        prop_assert_eq!(state.solved_hold().is_some(), one_colour_each);
    }

    #[test]
    fn any_turn_at_all_is_met_without_a_panic(
        first in prop_oneof![0..8u8, any::<u8>()], last in prop_oneof![0..8u8, any::<u8>()], inner: bool,
        face in prop::sample::select(&Face::ALL[..]), (size, turns) in sized_turns(5)
    ) {
        let layers = size.layers();
        let (block, valid) = if inner {
            (Block::Inner { face, first, last }, first >= 2 && first <= last && last < layers)
        } else {
            (Block::Outer { face, depth: first }, first >= 1 && first < layers)
        };
        let odd = Turn::new(block, Amount::Clockwise);
        let mut sequence = turns.clone();
        sequence.push(odd);
        prop_assert_eq!(odd.check(size).is_ok(), valid);
        let (outer, rest) = without_rotations(&sequence, size);
        let after = State::solved(size).after(&sequence);
        prop_assert!(State::solved(size).after(&outer).after(rest.turns()).looks_like(&after));
        let mut state = State::solved(size);
        prop_assert_eq!(state.turn(odd).is_ok(), valid);
        prop_assert_eq!(state.is_solved(), !valid);
        prop_assert!(!odd.to_string().is_empty());
    }

    #[test]
    fn turning_reaches_what_from_orbits_accepts(state in states()) {
        let perms: Vec<Perm> = Orbit::of(state.size()).iter().map(|&orbit| *state.orbit(orbit)).collect();
        prop_assert_eq!(State::from_orbits(state.size(), state.core(), &perms), Ok(state));
    }

    #[test]
    fn stickers_of_a_piece_torn_apart_are_refused(state in states(), a in 0..24usize, b in 0..24usize) {
        let sticker = |index: usize| Sticker::new(index as u8).unwrap();
        let mut table = *state.orbit(Orbit::Corner).table();
        prop_assume!(Orbit::Corner.piece(sticker(a)) != Orbit::Corner.piece(sticker(b)));
        table.swap(a, b);
        let torn = Perm::new(table).unwrap();
        let mut perms: Vec<Perm> = Orbit::of(state.size()).iter().map(|&orbit| *state.orbit(orbit)).collect();
        perms[0] = torn;
        let refused = State::from_orbits(state.size(), state.core(), &perms).unwrap_err();
        let places: Vec<_> = refused.faults.iter().map(|fault| match fault {
            cube::Fault::NoSuchPiece { orbit: Orbit::Corner, place, .. } => Orbit::Corner.piece(*place),
            other => panic!("{other}"),
        }).collect();
        for at in [a, b] {
            prop_assert!(places.contains(&Orbit::Corner.piece(sticker(at))));
        }
        prop_assert_eq!(places.len(), 2);
    }
}

#[test]
fn rotations_take_each_sticker_to_each_place_in_one_way() {
    for size in Size::ALL {
        for &orbit in Orbit::of(size) {
            for sticker in Sticker::all() {
                let mut reached: Vec<Sticker> = Rotation::all()
                    .map(|hold| State::held(size, hold).orbit(orbit).inverse().at(sticker))
                    .collect();
                reached.sort_unstable();
                assert!(reached.iter().copied().eq(Sticker::all()), "{orbit} of {size}");
            }
        }
    }
}

#[test]
fn a_rotation_takes_a_sticker_to_the_face_that_it_names() {
    for size in Size::ALL {
        for hold in Rotation::all() {
            let held = State::held(size, hold);
            for &orbit in Orbit::of(size) {
                for place in Sticker::all() {
                    assert_eq!(hold.image(held.at(orbit, place).face()), place.face());
                }
            }
        }
    }
}

#[test]
fn orders_of_known_sequences() {
    // Common practice, no source: R U has order 105, R U R' U' 6, R U' 63, and R2 U2 6 on the 3x3.
    for (sequence, times) in [("R U", 105), ("R U R' U'", 6), ("R U'", 63), ("R2 U2", 6), ("M E M' E'", 3)] {
        let turns = cube::Algorithm::parse(sequence, Size::THREE).unwrap().flatten();
        assert_eq!(order(&State::solved(Size::THREE).after(&turns)), times, "{sequence}");
    }
}
