//! How many states meet a condition, against counting all 3,674,160 states of the 2x2 one by one.

#[path = "../../blind/tests/drawn/mod.rs"]
mod drawn;

use blind::{BreakChoice, Breaks, Conventions, ParityChoice, Solver, Trace};
use choose::{Aspect, Feature, Lying, Matching, Sampler, lessons};
use cube::{Orbit, Perm, Rotation, Size, State, Sticker};
use formats::conditions;
use rand::SeedableRng;
use rand_chacha::ChaCha8Rng;
use std::collections::HashMap;

/// Every state of the 2x2 as it is held in which one corner lies right, the one that is at DBL while it is scrambled: all
/// orders of seven pieces, all twists of six of them.
fn every_state(solver: &Solver, see: &mut dyn FnMut(&Perm)) {
    let orbit = Orbit::Corner;
    let goes = State::held(Size::TWO, solver.conventions().holding).orbit(orbit).inverse();
    let anchor = orbit.piece(goes.at(corner("DBL")));
    let free: Vec<Sticker> =
        orbit.all_pieces().filter(|&piece| piece != anchor).map(|piece| orbit.reference(piece)).collect();
    let mut order = [0, 1, 2, 3, 4, 5, 6];
    permute(&mut order, 0, &mut |order| {
        for code in 0..729usize {
            let mut table = *Perm::IDENTITY.table();
            let (mut rest, mut sum) = (code, 0);
            for (at, &piece) in order.iter().enumerate() {
                let turn = if at < 6 { rest % 3 } else { (9 - sum % 3) % 3 };
                rest /= 3;
                sum += turn;
                let (place, mut sticker) = (free[at], orbit.turned(free[piece], turn as u8));
                let mut spot = place;
                for _ in 0..3 {
                    table[spot.index()] = sticker.index() as u8;
                    spot = orbit.turned(spot, 1);
                    sticker = orbit.turned(sticker, 1);
                }
            }
            see(&Perm::new(table).unwrap());
        }
    });
}

fn permute(order: &mut [usize; 7], from: usize, see: &mut dyn FnMut(&[usize; 7])) {
    if from == order.len() {
        see(order);
        return;
    }
    for with in from..order.len() {
        order.swap(from, with);
        permute(order, from + 1, see);
        order.swap(from, with);
    }
}

fn corner(name: &str) -> Sticker {
    Orbit::Corner.sticker(name).unwrap()
}

/// A solver with another buffer; the swap is turned along, so that there is a method.
fn solver(buffer: &str, breaks: BreakChoice) -> Solver {
    let mut conventions = Conventions::default();
    let kind = conventions.kind_mut(Orbit::Corner);
    let brought = |rotation: &Rotation| {
        State::held(Size::TWO, *rotation).orbit(Orbit::Corner).inverse().at(kind.buffer) == corner(buffer)
    };
    let rotation = Rotation::all().find(brought).unwrap();
    kind.algorithm = kind.algorithm.as_ref().map(|algorithm| algorithm.rotated(rotation));
    kind.buffer = corner(buffer);
    kind.breaks = breaks;
    let solver = Solver::new(Size::TWO, conventions);
    assert!(solver.method().is_ok());
    solver
}

fn exact(text: &str, solver: &Solver) -> u128 {
    let condition = conditions::read(text, Size::TWO, solver.conventions()).unwrap();
    match Sampler::new(&condition, Lying::Scrambled, solver) {
        Ok(sampler) => {
            assert_eq!(sampler.total(), 3_674_160_u32.into());
            match sampler.matching() {
                Matching::Exact(count) => count.try_into().unwrap(),
                Matching::AtMost(_) => panic!("{text} is not counted exactly"),
            }
        }
        Err(_) => 0,
    }
}

/// States that are alike in all figures: how many, and one of them.
fn by_figures(solver: &Solver, aspects: &[Aspect]) -> HashMap<Vec<u8>, (u128, Perm)> {
    let breaks = breaks(solver);
    let buffer = solver.conventions().kind(Orbit::Corner).buffer;
    let mut found: HashMap<Vec<u8>, (u128, Perm)> = HashMap::new();
    every_state(solver, &mut |seen| {
        let trace = Trace::new(Orbit::Corner, seen, buffer, &breaks).unwrap();
        let figures = aspects.iter().map(|aspect| aspect.of(&trace)).collect();
        found.entry(figures).or_insert((0, *seen)).0 += 1;
    });
    found
}

#[test]
fn counts_are_those_of_all_states_one_by_one() {
    check_counts(&solver("LUB", BreakChoice::First));
    // At DBL lies the corner that scrambles leave alone.
    check_counts(&solver("DBL", BreakChoice::First));
}

#[test]
fn counts_follow_any_conventions() {
    let mut any = drawn::conventions(&mut ChaCha8Rng::seed_from_u64(22));
    // What is done about parity says nothing of a puzzle that has only corners.
    any.parity = ParityChoice::Exchange;
    let list = ["BDR", "UFL", "LDB"].map(corner).to_vec();
    any.kind_mut(Orbit::Corner).breaks = BreakChoice::Preference(list);
    check_counts(&Solver::new(Size::TWO, any));
}

fn check_counts(solver: &Solver) {
    let buffer = Orbit::Corner.name(solver.conventions().kind(Orbit::Corner).buffer);
    let mut aspects = Aspect::ALL.to_vec();
    aspects.push(Aspect::CyclesOf { from: 3, to: 4 });
    let found = by_figures(solver, &aspects);
    assert_eq!(found.values().map(|(count, _)| count).sum::<u128>(), 3_674_160);
    for (figures, &(count, _)) in &found {
        let text: Vec<String> = aspects
            .iter()
            .zip(figures)
            .map(|(&aspect, &figure)| {
                let feature = Feature::Of(Orbit::Corner, aspect);
                match feature.words().get(figure as usize) {
                    Some(word) => format!("{feature} = {word}"),
                    None => format!("{feature} = {figure}"),
                }
            })
            .collect();
        let text = text.join(" and ");
        assert_eq!(exact(&text, solver), count, "{buffer}: {text}");
    }
    // Lessons, and how conditions are put together: decided for one state of each sort.
    let read = |text| conditions::read(text, Size::TWO, solver.conventions()).unwrap();
    let texts = [
        "corner.targets > corner.solved and not (corner.buffer = away or parity = odd)",
        "corner.cycles(3..4) = 1..2 or corner.longest = corner.shortest",
        "corner.targets != 5..7",
        "not not corner.buffer != solved",
    ];
    let of_lessons = lessons().iter().filter_map(|lesson| lesson.condition(Size::TWO));
    for condition in of_lessons.chain(texts.map(read)) {
        let one_by_one: u128 = found
            .values()
            .filter(|(_, seen)| {
                let state = State::from_orbits(Size::TWO, Rotation::NONE, &[*seen]).unwrap();
                condition.holds(&solver.memo(&state).unwrap())
            })
            .map(|(count, _)| count)
            .sum();
        let text = condition.to_string();
        assert_eq!(exact(&text, solver), one_by_one, "{buffer}: {text}");
    }
}

/// Where the solver breaks cycles, from the conventions and not from what it traces by.
fn breaks(solver: &Solver) -> Breaks {
    let costs = solver.method().ok().map(|method| method.swap(Orbit::Corner).unwrap().costs());
    solver.conventions().breaks(Orbit::Corner, costs)
}

/// How many states have each target, and each pair, in their memo.
fn occurrences(solver: &Solver) -> ([u128; 24], Vec<[u128; 24]>) {
    let breaks = breaks(solver);
    let buffer = solver.conventions().kind(Orbit::Corner).buffer;
    let (mut single, mut pairs) = ([0; 24], vec![[0; 24]; 24]);
    every_state(solver, &mut |seen| {
        let trace = Trace::new(Orbit::Corner, seen, buffer, &breaks).unwrap();
        let mut met = 0u32;
        for step in trace.steps() {
            // A cycle that is closed where it began has that letter twice.
            if met & (1 << step.target.index()) == 0 {
                met |= 1 << step.target.index();
                single[step.target.index()] += 1;
            }
        }
        for pair in trace.steps().chunks_exact(2) {
            pairs[pair[0].target.index()][pair[1].target.index()] += 1;
        }
    });
    (single, pairs)
}

#[test]
fn letters_are_counted_exactly() {
    let list = ["RDF", "DBL", "BUR", "FDL", "UBL"].map(corner).to_vec();
    for (buffer, breaks) in [("LUB", BreakChoice::First), ("RUF", BreakChoice::Preference(list))] {
        let solver = solver(buffer, breaks);
        let (single, pairs) = occurrences(&solver);
        for first in Sticker::all() {
            let name = Orbit::Corner.name(first);
            assert_eq!(exact(&format!("corner.has({name})"), &solver), single[first.index()]);
            for second in Sticker::all() {
                let text = format!("corner.pair({name} {})", Orbit::Corner.name(second));
                let found = exact(&text, &solver);
                assert_eq!(found, pairs[first.index()][second.index()], "{text}");
            }
        }
    }
}

/// Whether a trace, with its letters spelt out, is one of those meant.
type Held = fn(&Trace, &str) -> bool;

#[test]
fn letters_put_together_are_counted_exactly() {
    let solver = solver("LUB", BreakChoice::First);
    let breaks = breaks(&solver);
    let buffer = solver.conventions().kind(Orbit::Corner).buffer;
    let cases: [(&str, Held); 4] = [
        ("corner.has(B) and not corner.has(C) and corner.twists = 1", |trace, spelt| {
            spelt.contains('B') && !spelt.contains('C') && trace.turned().len() == 1
        }),
        ("corner.pair(BK, KB) and corner.longest >= 4", |trace, spelt| {
            (paired(spelt, "BK") || paired(spelt, "KB"))
                && trace.cycles().iter().any(|cycle| cycle.pieces >= 4)
        }),
        ("corner.pair(BK) or corner.pair(DV) and letters = 8", |_, spelt| {
            paired(spelt, "BK") || (paired(spelt, "DV") && spelt.len() == 8)
        }),
        // The two stickers of a twisted corner, and a letter of it.
        ("corner.pair(BQ) and corner.has(Q, X) and parity = even", |_, spelt| {
            paired(spelt, "BQ") && spelt.len() % 2 == 0
        }),
    ];
    let mut counts = [0u128; 4];
    every_state(&solver, &mut |seen| {
        let trace = Trace::new(Orbit::Corner, seen, buffer, &breaks).unwrap();
        let spelt = solver.conventions().kind(Orbit::Corner).letters.spell(&trace.targets());
        for (count, (_, held)) in counts.iter_mut().zip(&cases) {
            *count += u128::from(held(&trace, &spelt));
        }
    });
    for ((text, _), count) in cases.iter().zip(counts) {
        assert!(count > 0);
        assert_eq!(exact(text, &solver), count, "{text}");
    }
}

fn paired(spelt: &str, pair: &str) -> bool {
    spelt.as_bytes().chunks_exact(2).any(|found| found == pair.as_bytes())
}

#[test]
fn where_letters_cannot_be_counted_the_estimate_says_so() {
    let solver = solver("LUB", BreakChoice::Fewest);
    let (_, pairs) = occurrences(&solver);
    let truth = pairs[corner("URF").index()][corner("FDL").index()] as f64 / 3_674_160.0;
    let condition = conditions::read("corner.pair(URF FDL)", Size::TWO, solver.conventions()).unwrap();
    let sampler = Sampler::new(&condition, Lying::Scrambled, &solver).unwrap();
    assert_eq!(sampler.matching(), Matching::AtMost(3_674_160_u32.into()));
    let mut generator = search::random::seeded(1);
    let estimate = sampler.estimate(50_000, &mut generator, &mut |_| true).unwrap();
    assert!(estimate.bounds[0] < truth && truth < estimate.bounds[1], "{estimate:?}, truth {truth}");
    for _ in 0..20 {
        let state = sampler.draw(&mut generator, &mut |_| true).unwrap();
        assert!(condition.holds(&solver.memo(&state).unwrap()));
    }
}
