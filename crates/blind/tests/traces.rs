//! Every kind of piece of the sizes 4 to 7 traces as it was scrambled, whatever the conventions: the letters are carried out
//! on a second model of the puzzle, and each letter is what its role says.

mod drawn;
mod puzzle;

use blind::{
    BreakChoice, Chosen, Conventions, End, HoldChoice, Memo, ParityChoice, Reason, Role, Solver, Trace,
};
use cube::{Orbit, Perm, Size, State, Sticker, Turn};
use proptest::prelude::*;
use proptest::sample::Index;
use puzzle::Puzzle;
use rand::prelude::*;
use rand_chacha::ChaCha8Rng;

/// The sizes that have kinds of piece beyond corners and midges.
fn sizes() -> impl Iterator<Item = Size> {
    Size::ALL.into_iter().filter(|size| size.layers() > 3)
}

/// Picks the puzzle up, reads its memo out letter by letter, and carries the letters out on the second model.
fn check(scrambled: &State, conventions: &Conventions, choice: HoldChoice) {
    let size = scrambled.size();
    // No edges are taken for each other here.
    let conventions = &Conventions { parity: ParityChoice::Algorithm, ..conventions.clone() };
    let solver = Solver::new(size, conventions.clone());
    let held = solver.pick_up(scrambled, choice).unwrap();
    let memo = solver.memo(&held.state).unwrap();
    assert_eq!(memo.exchanged(), None);
    let order: Vec<Orbit> = memo.parts().iter().map(Trace::orbit).collect();
    let wanted_order = conventions.memo_order.all().filter(|orbit| Orbit::of(size).contains(orbit));
    assert_eq!(order, wanted_order.collect::<Vec<_>>());

    let mut puzzle = Puzzle::of(scrambled).turned(held.rotation.turns());
    for trace in memo.parts() {
        let kind = conventions.kind(trace.orbit());
        assert_eq!(trace.buffer(), kind.buffer);
        for letter in read_out(&kind.letters.spell(&trace.targets()), &texts(conventions, trace.orbit())) {
            puzzle.exchange(trace.orbit(), kind.buffer, letter);
        }
    }
    assert_eq!(puzzle, Puzzle::solved(size).turned(conventions.holding.turns()));

    for trace in memo.parts() {
        let chosen = chosen(&solver, trace.orbit());
        check_roles(trace, &preference(conventions, trace.orbit()), chosen == Chosen::First);
        check_reasons(trace, &solver, chosen);
    }
    check_parity(&memo, &held.state);
}

/// How breaks are chosen: by cost where the conventions say so and there is a method that knows costs.
fn chosen(solver: &Solver, orbit: Orbit) -> Chosen {
    match (&solver.conventions().kind(orbit).breaks, solver.method()) {
        (BreakChoice::Fewest, Ok(method)) if method.setup_costs(orbit).is_some() => Chosen::Fewest,
        (BreakChoice::Least, Ok(_)) => Chosen::Least,
        _ => Chosen::First,
    }
}

/// The letters of a kind as plain texts.
fn texts(conventions: &Conventions, orbit: Orbit) -> Vec<String> {
    conventions.kind(orbit).letters.all().map(str::to_owned).collect()
}

/// The stickers of letters that are written one after another, by a table of all 24.
fn read_out(text: &str, letters: &[String]) -> Vec<Sticker> {
    let single = letters.iter().all(|letter| letter.chars().count() == 1);
    let parts: Vec<String> = if single {
        text.chars().map(String::from).collect()
    } else {
        text.split('-').filter(|part| !part.is_empty()).map(str::to_owned).collect()
    };
    let sticker = |part: &String| letters.iter().position(|letter| letter == part).unwrap();
    parts.iter().map(|part| Sticker::new(sticker(part) as u8).unwrap()).collect()
}

/// What a solver prefers: the list first, then by letter; letters that are numbers before others and by their value.
fn preference(conventions: &Conventions, orbit: Orbit) -> Vec<Sticker> {
    let letters = texts(conventions, orbit);
    let mut by_letter: Vec<Sticker> = Sticker::all().collect();
    by_letter.sort_by_key(|sticker| {
        let letter = &letters[sticker.index()];
        (letter.parse::<u32>().unwrap_or(u32::MAX), letter.clone())
    });
    let BreakChoice::Preference(list) = &conventions.kind(orbit).breaks else { return by_letter };
    let rest = by_letter.into_iter().filter(|sticker| !list.contains(sticker));
    list.iter().copied().chain(rest).collect()
}

/// A kind of piece while its letters are carried out: at each place the sticker that lies there.
struct Running {
    orbit: Orbit,
    buffer: Sticker,
    lies: Vec<Sticker>,
}

impl Running {
    fn new(seen: &Perm, orbit: Orbit, buffer: Sticker) -> Self {
        Self { orbit, buffer, lies: Sticker::all().map(|place| seen.at(place)).collect() }
    }

    fn at(&self, place: Sticker) -> Sticker {
        self.lies[place.index()]
    }

    fn is_of_buffer(&self, sticker: Sticker) -> bool {
        self.orbit.piece(sticker) == self.orbit.piece(self.buffer)
    }

    fn is_right(&self, place: Sticker) -> bool {
        let lies = self.at(place);
        if self.orbit.looks_alike() { lies.face() == place.face() } else { lies == place }
    }

    fn exchange(&mut self, target: Sticker) {
        let pairs: Vec<(Sticker, Sticker)> =
            self.orbit.stickers_from(self.buffer).zip(self.orbit.stickers_from(target)).collect();
        for (a, b) in pairs {
            self.lies.swap(a.index(), b.index());
        }
    }
}

/// Each letter is there for what its role says, seen from the sticker that lies in the buffer when its turn comes.
fn check_roles(trace: &Trace, order: &[Sticker], in_order: bool) {
    let (orbit, buffer) = (trace.orbit(), trace.buffer());
    let mut now = Running::new(trace.seen(), orbit, buffer);
    let turned_in_place: Vec<_> = orbit
        .all_pieces()
        .map(|piece| orbit.reference(piece))
        .filter(|&place| {
            let lies = now.at(place);
            lies != place && orbit.piece(lies) == orbit.piece(place) && !now.is_of_buffer(place)
        })
        .collect();
    let unsolved = orbit
        .all_pieces()
        .map(|piece| orbit.reference(piece))
        .filter(|&place| !now.is_right(place) && !now.is_of_buffer(place))
        .count();
    let mut met_turned = Vec::new();
    let mut began = None;
    for (at, step) in trace.steps().iter().enumerate() {
        let (target, in_buffer) = (step.target, now.at(buffer));
        assert!(!now.is_of_buffer(target));
        let is_turned = turned_in_place.contains(&orbit.reference(orbit.piece(target)));
        let is_home =
            if orbit.looks_alike() { in_buffer.face() == buffer.face() } else { now.is_of_buffer(in_buffer) };
        match step.role {
            Role::Break | Role::TurnedFirst => {
                assert_eq!(step.place, target);
                assert!(is_home && began.is_none() && !now.is_right(target), "{orbit}: letter {at}");
                began = Some(target);
            }
            Role::Follow if orbit.looks_alike() => {
                assert_eq!(target.face(), in_buffer.face(), "{orbit}: letter {at}");
                assert!(!now.is_right(target), "{orbit}: letter {at}");
            }
            Role::Follow => assert!(target == in_buffer && !is_home, "{orbit}: letter {at}"),
            Role::Close | Role::TurnedSecond => {
                let first = began.take().unwrap();
                if orbit.looks_alike() {
                    assert!(target == first && in_buffer.face() == target.face(), "{orbit}: letter {at}");
                } else {
                    assert!(orbit.piece(target) == orbit.piece(first) && target == in_buffer, "{orbit}");
                }
            }
        }
        // Two letters of their own for a piece turned in its place, and for no other.
        let first_of_two = step.role == Role::TurnedFirst;
        assert_eq!(is_turned, first_of_two || step.role == Role::TurnedSecond, "{orbit}: letter {at}");
        if first_of_two {
            met_turned.push(orbit.reference(orbit.piece(target)));
            let second = trace.steps()[at + 1];
            assert_eq!((second.role, second.place), (Role::TurnedSecond, target));
        }
        if step.role.begins() && !orbit.looks_alike() && in_order {
            // The first in the solver's order whose piece still waits.
            let first = order.iter().find(|&&sticker| !now.is_right(sticker) && !now.is_of_buffer(sticker));
            assert_eq!(first, Some(&target), "{orbit}: letter {at}");
        }
        now.exchange(target);
    }
    assert!(began.is_none());
    met_turned.sort_unstable();
    let mut all = turned_in_place.clone();
    all.sort_unstable();
    assert_eq!(met_turned, all, "{orbit}");
    assert!(Sticker::all().all(|place| now.is_right(place)), "{orbit}");
    if !orbit.looks_alike() {
        let begins = trace.steps().iter().filter(|step| step.role.begins()).count();
        assert_eq!(trace.len(), unsolved + begins, "{orbit}");
    }
}

/// What is said of each letter is what the solver sees there.
fn check_reasons(trace: &Trace, solver: &Solver, chosen_by: Chosen) {
    let (orbit, buffer) = (trace.orbit(), trace.buffer());
    let reasons = solver.reasons(trace);
    assert_eq!(reasons.len(), trace.len());
    let first = Running::new(trace.seen(), orbit, buffer);
    let mut now = Running::new(trace.seen(), orbit, buffer);
    let mut began = 0;
    for (at, (step, reason)) in trace.steps().iter().zip(&reasons).enumerate() {
        let unsolved_now: Vec<Sticker> = orbit
            .all_pieces()
            .map(|piece| orbit.reference(piece))
            .filter(|&place| !now.is_right(place) && !now.is_of_buffer(place))
            .collect();
        let ended = match at.checked_sub(1).map(|before| trace.steps()[before]) {
            None => End::BufferAtHome { turned: !first.is_right(buffer) },
            Some(before) if matches!(before.role, Role::Close | Role::TurnedSecond) => End::Closed,
            Some(before) => End::BufferPiece { place: before.target, seen: first.at(before.target) },
        };
        // Where a sticker was looked at, there lay what the letter before brought to the buffer.
        let looked_at = if at == 0 { buffer } else { trace.steps()[at - 1].target };
        if matches!(step.role, Role::Break | Role::TurnedFirst) {
            began = at;
        }
        match (step.role, reason) {
            (Role::Follow, Reason::Follow { place, at_buffer, target, face, piece }) => {
                assert!(!orbit.looks_alike());
                assert_eq!((*place, *at_buffer, *target), (looked_at, at == 0, first.at(looked_at)));
                assert_eq!((*face, piece[0]), (target.face(), target.face()));
            }
            (
                Role::Follow,
                Reason::FollowColour { place, at_buffer, target, face, buffers_own, others, costlier },
            ) => {
                assert!(orbit.looks_alike());
                assert_eq!((*place, *at_buffer, *target), (looked_at, at == 0, step.target));
                assert_eq!((*face, target.face()), (first.at(looked_at).face(), *face));
                assert_eq!(*buffers_own, *face == buffer.face());
                assert!(others.iter().all(|other| other.face() == *face && !now.is_right(*other)));
                // With the letter itself they are all places of the face that still want its colour.
                let mut told: Vec<Sticker> =
                    others.iter().chain(costlier).copied().chain([*target]).collect();
                told.sort_unstable();
                let wanting = |place: &Sticker| {
                    place.face() == *face && !now.is_right(*place) && !now.is_of_buffer(*place)
                };
                assert_eq!(told, Sticker::all().filter(wanting).collect::<Vec<_>>());
            }
            (Role::Break, Reason::Break { target, unsolved, after, chosen }) => {
                assert_eq!((*target, unsolved, after), (step.target, &unsolved_now, &ended));
                assert_eq!(*chosen, chosen_by);
            }
            (Role::TurnedFirst, Reason::TurnedFirst { target, unsolved, after }) => {
                assert_eq!((*target, unsolved, after), (step.target, &unsolved_now, &ended));
            }
            (Role::TurnedSecond, Reason::TurnedSecond { place, target }) => {
                assert_eq!((*place, *target), (looked_at, first.at(looked_at)));
            }
            (Role::Close, Reason::Close { place, target, began: first_letter, began_at }) => {
                assert_eq!((*place, *target), (looked_at, step.target));
                assert_eq!((*first_letter, *began_at), (trace.steps()[began].target, began));
            }
            other => panic!("{other:?}"),
        }
        now.exchange(step.target);
    }
    let last = trace.steps().last().map(|step| (step.role, step.target));
    assert_eq!(
        trace.end(),
        match last {
            None => End::BufferAtHome { turned: !first.is_right(buffer) },
            Some((Role::Close | Role::TurnedSecond, _)) => End::Closed,
            Some((_, place)) => End::BufferPiece { place, seen: first.at(place) },
        }
    );
}

/// Letters of a kind are as odd as its pieces are, where these are told apart: each exchanges two.
fn check_parity(memo: &Memo, state: &State) {
    let mut odd: Vec<Orbit> = memo.parity().collect();
    let mut expected: Vec<Orbit> = memo.parts().iter().map(Trace::orbit).collect();
    expected.retain(|&orbit| {
        let pieces: Vec<usize> = orbit
            .all_pieces()
            .map(|piece| orbit.piece(state.at(orbit, orbit.reference(piece))).index())
            .collect();
        let inversions = |at: usize| pieces[at..].iter().filter(|&&later| later < pieces[at]).count();
        !orbit.looks_alike() && (0..pieces.len()).map(inversions).sum::<usize>() % 2 == 1
    });
    odd.sort_unstable();
    expected.sort_unstable();
    assert_eq!(odd, expected);
}

fn scrambled(size: Size, length: usize, rng: &mut impl Rng) -> State {
    let all: Vec<Turn> = Turn::all(size).collect();
    let turns: Vec<Turn> = (0..length).map(|_| *all.choose(rng).unwrap()).collect();
    State::solved(size).after(&turns)
}

fn choice(best: bool) -> HoldChoice {
    if best { HoldChoice::Best } else { HoldChoice::Conventions }
}

/// From nearly solved to thoroughly scrambled, on every size.
#[test]
fn every_kind_traces_as_it_was_scrambled() {
    let mut rng = ChaCha8Rng::seed_from_u64(4567);
    for size in sizes() {
        for number in 0..120 {
            let state = scrambled(size, number, &mut rng);
            check(&state, &drawn::conventions(&mut rng), choice(rng.random_range(0..8) == 0));
        }
    }
}

/// Pieces put anywhere, one kind by itself: scrambles seldom leave many short cycles, or a buffer at home.
#[test]
fn every_arrangement_of_a_kind_traces() {
    let mut rng = ChaCha8Rng::seed_from_u64(10);
    let mut roles = [0; Role::ALL.len()];
    for orbit in Orbit::ALL {
        for number in 0..400 {
            let conventions = drawn::conventions(&mut rng);
            let mut lies: Vec<Sticker> = Sticker::all().collect();
            // So many pieces exchanged, or turned round.
            for _ in 0..number % 25 {
                let [a, b] = [0, 1].map(|_| Sticker::new(rng.random_range(0..24)).unwrap());
                let turn = rng.random_range(0..orbit.stickers_per_piece());
                if orbit.piece(a) == orbit.piece(b) {
                    let old = lies.clone();
                    for place in orbit.stickers_from(a) {
                        lies[place.index()] = old[orbit.turned(place, turn).index()];
                    }
                } else {
                    for (a, b) in orbit.stickers_from(a).zip(orbit.stickers_from(b)) {
                        lies.swap(a.index(), b.index());
                    }
                }
            }
            let seen = Perm::new(std::array::from_fn(|at| lies[at].index() as u8)).unwrap();
            let kind = conventions.kind(orbit);
            let breaks = conventions.breaks(orbit, None);
            let trace = Trace::new(orbit, &seen, kind.buffer, &breaks);
            // A piece turned alone is no state of the puzzle: the buffer's piece is left turned.
            let balanced = balanced(orbit, &lies);
            assert_eq!(trace.is_ok(), balanced, "{orbit}");
            let Ok(trace) = trace else { continue };
            check_roles(&trace, &preference(&conventions, orbit), true);
            for step in trace.steps() {
                roles[Role::ALL.iter().position(|&role| role == step.role).unwrap()] += 1;
            }
        }
    }
    assert!(roles.iter().all(|&times| times > 100), "{roles:?}");
}

/// Whether the turns of all pieces add up to nothing.
fn balanced(orbit: Orbit, lies: &[Sticker]) -> bool {
    let stickers = orbit.stickers_per_piece();
    let sum: u8 = orbit
        .all_pieces()
        .map(|piece| {
            let lies = lies[orbit.reference(piece).index()];
            let home = orbit.reference(orbit.piece(lies));
            (0..stickers).find(|&steps| orbit.turned(home, steps) == lies).unwrap()
        })
        .sum();
    sum.is_multiple_of(stickers)
}

/// On even sizes nothing says which way is up: every offer solves, and the best comes first.
#[test]
fn every_way_of_picking_up_traces() {
    let mut rng = ChaCha8Rng::seed_from_u64(24);
    for size in sizes() {
        for length in [3, 60] {
            let state = scrambled(size, length, &mut rng);
            let conventions = drawn::conventions(&mut rng);
            let solver = Solver::new(size, conventions.clone());
            let offers = solver.offers(&state).unwrap();
            assert_eq!(offers.len(), if size.is_odd() { 0 } else { 24 });
            for offer in &offers {
                let held = Puzzle::of(&state).turned(offer.held.rotation.turns());
                // Named anew, the state in hand is the same puzzle with its colours called otherwise.
                let holding = conventions.holding;
                let renamed = Puzzle::of(&offer.held.state);
                assert_eq!(held, renamed.recoloured(|colour| holding.inverse().image(colour)));
                let right = solved_by_colour(&offer.held.state, &conventions);
                assert_eq!(offer.solved, right);
                let memo = solver.memo(&offer.held.state).unwrap();
                assert_eq!(offer.letters, memo.letters());
                let cycles = memo.parts().iter().flat_map(Trace::steps);
                assert_eq!(offer.breaks, cycles.filter(|step| step.role == Role::Break).count());
            }
            assert!(offers.is_sorted_by_key(|offer| {
                (offer.letters, usize::MAX - offer.solved, offer.breaks, offer.held.rotation.turns().len())
            }));
        }
    }
}

/// Pieces that are right, the buffers' not counted.
fn solved_by_colour(state: &State, conventions: &Conventions) -> usize {
    let right = |orbit: Orbit| {
        let now = Running::new(state.orbit(orbit), orbit, conventions.kind(orbit).buffer);
        let places = orbit.all_pieces().map(|piece| orbit.reference(piece));
        places.filter(|&place| now.is_right(place) && !now.is_of_buffer(place)).count()
    };
    Orbit::of(state.size()).iter().map(|&orbit| right(orbit)).sum()
}

proptest! {
    #[test]
    fn any_scramble_traces_with_any_conventions(
        size in proptest::sample::select(sizes().collect::<Vec<_>>()),
        turns in proptest::collection::vec(any::<Index>(), 0..60),
        seed: u64,
        best in proptest::bool::weighted(0.1),
    ) {
        let all: Vec<Turn> = Turn::all(size).collect();
        let turns: Vec<Turn> = turns.iter().map(|turn| all[turn.index(all.len())]).collect();
        let conventions = drawn::conventions(&mut ChaCha8Rng::seed_from_u64(seed));
        check(&State::solved(size).after(&turns), &conventions, choice(best));
    }
}

/// The second model against turns of the whole puzzle that the engine makes: it could not judge anything otherwise.
#[test]
fn the_second_model_turns_about_as_the_puzzle_does() {
    let mut rng = ChaCha8Rng::seed_from_u64(3);
    for size in sizes() {
        let state = scrambled(size, 30, &mut rng);
        for rotation in cube::Rotation::all() {
            assert_eq!(
                Puzzle::of(&state.after(rotation.turns())),
                Puzzle::of(&state).turned(rotation.turns())
            );
        }
        assert_eq!(Puzzle::of(&State::solved(size)), Puzzle::solved(size));
        assert_ne!(Puzzle::of(&state), Puzzle::solved(size));
    }
}
