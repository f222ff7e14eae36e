//! How many states meet a condition, against counting all 3,674,160 states of the 2x2 one by one.

use blind::{Aspect, BreakChoice, Condition, Conventions, Lying, Matching, Method, Sampler, Trace};
use cube::{Orbit, Perm, Size, Sticker};
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
    let condition = Condition::read(text, Size::TWO, conventions).unwrap();
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

#[test]
fn counts_are_those_of_all_states_one_by_one() {
    let method = Method::new(Size::TWO, &Conventions::default()).unwrap();
    for buffer in ["LUB", "UFR", "DBL"] {
        let conventions = conventions(buffer, BreakChoice::First);
        let breaks = conventions.breaks(Orbit::Corner, || [0; 24]);
        let place = conventions.kind(Orbit::Corner).buffer;
        let mut aspects = Aspect::ALL.to_vec();
        aspects.push(Aspect::CyclesOf { from: 3, to: 4 });
        let mut found: HashMap<Vec<u8>, u128> = HashMap::new();
        every_state(&mut |seen| {
            let trace = Trace::new(Orbit::Corner, seen, place, &breaks);
            *found.entry(aspects.iter().map(|aspect| aspect.of(&trace)).collect()).or_default() += 1;
        });
        assert_eq!(found.values().sum::<u128>(), 3_674_160);
        for (figures, &count) in &found {
            let text: Vec<String> = aspects
                .iter()
                .zip(figures)
                .map(|(&aspect, &figure)| {
                    let feature = blind::Feature::Of(Orbit::Corner, aspect);
                    match feature.words().get(figure as usize) {
                        Some(word) => format!("{feature} = {word}"),
                        None => format!("{feature} = {figure}"),
                    }
                })
                .collect();
            let text = text.join(" and ");
            assert_eq!(exact(&text, &conventions, &method), count, "{buffer}: {text}");
        }
    }
}
