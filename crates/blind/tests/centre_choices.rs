//! What a memo over centres says of its choices: which places would have done as well, and which would have cost a letter.

use blind::{Reason, Solver};
use cube::{Perm, Size, State, Sticker};
use proptest::prelude::*;

/// Letters that are still needed by a walk that stands at a face: one a place that is left, and one more for each lot of them
/// that does not hang together with the walk. Written here from the rule alone; see the reference on bigger puzzles.
fn needed(left: &[(usize, usize)], at: usize) -> usize {
    let mut lot: Vec<usize> = (0..6).collect();
    for _ in 0..6 {
        for &(from, to) in left {
            let least = lot[from].min(lot[to]);
            (lot[from], lot[to]) = (least, least);
        }
    }
    let mut apart: Vec<usize> =
        left.iter().map(|&(from, _)| lot[from]).filter(|&own| own != lot[at]).collect();
    apart.sort_unstable();
    apart.dedup();
    left.len() + apart.len()
}

/// The places that hold a wrong colour, as arrows from their face to that of the colour, without some.
fn arrows(seen: &Perm, without: &[Sticker]) -> Vec<(usize, usize)> {
    Sticker::all()
        .filter(|place| !without.contains(place))
        .map(|place| (place.face().index(), seen.at(place).face().index()))
        .filter(|(here, there)| here != there)
        .collect()
}

proptest! {
    #[test]
    fn what_would_have_done_as_well_does_and_what_would_cost_a_letter_costs_one(
        layers in 4u8..=7, seed: u64, turns in 1usize..40,
    ) {
        let size = Size::new(layers).unwrap();
        let all: Vec<cube::Turn> = cube::Turn::all(size).filter(|turn| !turn.is_rotation()).collect();
        let mut number = seed;
        let drawn: Vec<cube::Turn> = (0..turns).map(|_| {
            number = number.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            all[(number >> 33) as usize % all.len()]
        }).collect();
        let scrambled = State::solved(size).after(&drawn);
        let solver = Solver::new(size, blind::Conventions::default());
        let held = solver.pick_up(&scrambled, blind::HoldChoice::Conventions).unwrap();
        let memo = solver.memo(&held.state).unwrap();
        for trace in memo.parts().iter().filter(|trace| trace.orbit().looks_alike()) {
            let mut taken = vec![trace.buffer()];
            for (letter, (step, reason)) in trace.steps().iter().zip(solver.reasons(trace)).enumerate() {
                if let Reason::FollowColour { face, others, costlier, .. } = reason {
                    let to_go = trace.len() - letter;
                    let by = |place: Sticker| {
                        let left = arrows(trace.seen(), &[taken.as_slice(), &[place]].concat());
                        // A cycle that was begun ends with one letter more.
                        let closes = trace.steps()[letter..].iter().take_while(|step| !step.role.begins())
                            .filter(|step| step.role.ends()).count();
                        1 + closes + needed(&left, trace.seen().at(place).face().index())
                    };
                    prop_assert_eq!(by(step.target), to_go);
                    for &other in &others {
                        prop_assert_eq!(by(other), to_go);
                    }
                    // Where the open cycle began it may be closed too early: what is left is then as if it had never begun.
                    let began = trace.steps()[..letter].iter().rfind(|step| step.role.begins()).map(|step| step.target);
                    let closing = 1 + needed(&arrows(trace.seen(), &taken), trace.buffer().face().index());
                    for &other in &costlier {
                        prop_assert_eq!(if Some(other) == began { closing } else { by(other) }, to_go + 1);
                    }
                    let mut told = [&[step.target], others.as_slice(), &costlier].concat();
                    told.sort_unstable();
                    let wanting: Vec<Sticker> = Sticker::all()
                        .filter(|place| place.face() == face && (!taken.contains(place) || Some(*place) == began))
                        .filter(|&place| trace.seen().at(place).face() != face)
                        .collect();
                    prop_assert_eq!(told, wanting, "every place that wants the colour is told of");
                }
                taken.push(step.target);
            }
        }
    }
}
