//! How many states meet a condition, against counting all 3,674,160 states of the 2x2 one by one.

use blind::{
    Aspect, BreakChoice, Conventions, Feature, Lying, Matching, Memo, Method, Sampler, Trace, lessons,
};
use cube::{Orbit, Perm, Rotation, Size, State, Sticker};
use formats::conditions;
use std::collections::HashMap;

/// Every state of the 2x2 in which the corner at DBL lies right: all orders of seven pieces, all twists of six of them.
fn every_state(see: &mut dyn FnMut(&Perm)) {
    let orbit = Orbit::Corner;
    let anchor = orbit.piece(orbit.sticker("DBL").unwrap());
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

fn conventions(buffer: &str, breaks: BreakChoice) -> Conventions {
    let mut conventions = Conventions::default();
    let kind = conventions.kind_mut(Orbit::Corner);
    kind.buffer = Orbit::Corner.sticker(buffer).unwrap();
    kind.breaks = breaks;
    conventions
}

fn exact(text: &str, conventions: &Conventions, method: &Method) -> u128 {
    let condition = conditions::read(text, Size::TWO, conventions).unwrap();
    match Sampler::new(&condition, Lying::Scrambled, conventions, method) {
        Ok(sampler) => {
            assert_eq!(sampler.total(), 3_674_160);
            match sampler.matching() {
                Matching::Exact(count) => count,
                Matching::AtMost(_) => panic!("{text} is not counted exactly"),
            }
        }
        Err(_) => 0,
    }
}

/// States that are alike in all figures: how many, and one of them.
fn by_figures(conventions: &Conventions, aspects: &[Aspect]) -> HashMap<Vec<u8>, (u128, Perm)> {
    let breaks = conventions.breaks(Orbit::Corner, || [0; 24]);
    let buffer = conventions.kind(Orbit::Corner).buffer;
    let mut found: HashMap<Vec<u8>, (u128, Perm)> = HashMap::new();
    every_state(&mut |seen| {
        let trace = Trace::new(Orbit::Corner, seen, buffer, &breaks);
        let figures = aspects.iter().map(|aspect| aspect.of(&trace)).collect();
        found.entry(figures).or_insert((0, *seen)).0 += 1;
    });
    found
}

#[test]
fn counts_are_those_of_all_states_one_by_one() {
    let method = Method::new(Size::TWO, &Conventions::default()).unwrap();
    // At DBL lies the corner that scrambles leave alone.
    for buffer in ["LUB", "DBL"] {
        let conventions = conventions(buffer, BreakChoice::First);
        let mut aspects = Aspect::ALL.to_vec();
        aspects.push(Aspect::CyclesOf { from: 3, to: 4 });
        let found = by_figures(&conventions, &aspects);
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
            assert_eq!(exact(&text, &conventions, &method), count, "{buffer}: {text}");
        }
        // Lessons, and how conditions are put together: decided for one state of each sort.
        let read = |text| conditions::read(text, Size::TWO, &conventions).unwrap();
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
                    condition.holds(&Memo::new(&state, &conventions, &method))
                })
                .map(|(count, _)| count)
                .sum();
            let text = condition.to_string();
            assert_eq!(exact(&text, &conventions, &method), one_by_one, "{buffer}: {text}");
        }
    }
}

/// How many states have each target, and each pair, in their memo.
fn occurrences(conventions: &Conventions, method: &Method) -> ([u128; 24], Vec<[u128; 24]>) {
    let costs = || method.swap(Orbit::Corner).unwrap().costs();
    let breaks = conventions.breaks(Orbit::Corner, costs);
    let buffer = conventions.kind(Orbit::Corner).buffer;
    let (mut single, mut pairs) = ([0; 24], vec![[0; 24]; 24]);
    every_state(&mut |seen| {
        let trace = Trace::new(Orbit::Corner, seen, buffer, &breaks);
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
    let method = Method::new(Size::TWO, &Conventions::default()).unwrap();
    let list: Vec<Sticker> =
        ["RDF", "DBL", "BUR", "FDL", "UBL"].iter().map(|name| Orbit::Corner.sticker(name).unwrap()).collect();
    for (buffer, breaks) in [("LUB", BreakChoice::First), ("RUF", BreakChoice::Preference(list))] {
        let conventions = conventions(buffer, breaks);
        let (single, pairs) = occurrences(&conventions, &method);
        for first in Sticker::all() {
            let name = Orbit::Corner.name(first);
            assert_eq!(exact(&format!("corner.has({name})"), &conventions, &method), single[first.index()]);
            for second in Sticker::all() {
                let text = format!("corner.pair({name} {})", Orbit::Corner.name(second));
                let found = exact(&text, &conventions, &method);
                assert_eq!(found, pairs[first.index()][second.index()], "{text}");
            }
        }
    }
}

/// Whether a trace, with its letters spelt out, is one of those meant.
type Held = fn(&Trace, &str) -> bool;

#[test]
fn letters_put_together_are_counted_exactly() {
    let method = Method::new(Size::TWO, &Conventions::default()).unwrap();
    let conventions = conventions("LUB", BreakChoice::First);
    let breaks = conventions.breaks(Orbit::Corner, || [0; 24]);
    let buffer = conventions.kind(Orbit::Corner).buffer;
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
    every_state(&mut |seen| {
        let trace = Trace::new(Orbit::Corner, seen, buffer, &breaks);
        let spelt = conventions.kind(Orbit::Corner).letters.spell(&trace.targets());
        for (count, (_, held)) in counts.iter_mut().zip(&cases) {
            *count += u128::from(held(&trace, &spelt));
        }
    });
    for ((text, _), count) in cases.iter().zip(counts) {
        assert!(count > 0);
        assert_eq!(exact(text, &conventions, &method), count, "{text}");
    }
}

fn paired(spelt: &str, pair: &str) -> bool {
    spelt.as_bytes().chunks_exact(2).any(|found| found == pair.as_bytes())
}

#[test]
fn where_letters_cannot_be_counted_the_estimate_says_so() {
    let method = Method::new(Size::TWO, &Conventions::default()).unwrap();
    let conventions = conventions("LUB", BreakChoice::Fewest);
    let (_, pairs) = occurrences(&conventions, &method);
    let sticker = |name| Orbit::Corner.sticker(name).unwrap();
    let truth = pairs[sticker("URF").index()][sticker("FDL").index()] as f64 / 3_674_160.0;
    let condition = conditions::read("corner.pair(URF FDL)", Size::TWO, &conventions).unwrap();
    let sampler = Sampler::new(&condition, Lying::Scrambled, &conventions, &method).unwrap();
    assert_eq!(sampler.matching(), Matching::AtMost(3_674_160));
    let mut generator = search::random::seeded(1);
    let estimate = sampler.estimate(50_000, &mut generator, &mut |_| true).unwrap();
    assert!(estimate.bounds[0] < truth && truth < estimate.bounds[1], "{estimate:?}, truth {truth}");
    for _ in 0..20 {
        let state = sampler.draw(&mut generator, &mut |_| true).unwrap();
        assert!(condition.holds(&Memo::new(&state, &conventions, &method)));
    }
}
