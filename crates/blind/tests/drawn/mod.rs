//! Conventions drawn at random, for promises that have to hold whatever a solver has settled on. Names are made up.

use blind::{BreakChoice, Conventions, Letters, OrbitOrder, ParityChoice};
use cube::{Orbit, Rotation, Sticker};
use rand::prelude::*;

/// Scripts that letters are drawn from, capitals where there are any.
const SCRIPTS: [&str; 6] = [
    "ABCDEFGHIJKLMNOPQRSTUVWXYZ",
    "ÄÖÜÅÆØÑÇŠŽĐŁÞÉÈÊÀÂÎÔÛĞİŐŰĄ",
    "АБВГДЕЖЗИКЛМНОПРСТУФХЦЧШЩЭЮЯ",
    "ΑΒΓΔΕΖΗΘΙΚΛΜΝΞΟΠΡΣΤΥΦΧΨΩ",
    "あいうえおかきくけこさしすせそたちつてとなにぬねのはひふへほ",
    "0123456789abcdefghijklmnopqrstuvwxyz",
];

/// 24 different texts of some script, all of one sign or each of one to three.
fn letters(rng: &mut impl Rng) -> Vec<String> {
    let signs: Vec<char> = SCRIPTS[rng.random_range(0..SCRIPTS.len())].chars().collect();
    let longest = rng.random_range(1..=3);
    let mut letters: Vec<String> = Vec::new();
    while letters.len() < 24 {
        let length = rng.random_range(1..=longest);
        let letter: String = (0..length).map(|_| signs[rng.random_range(0..signs.len())]).collect();
        if !letters.contains(&letter) {
            letters.push(letter);
        }
    }
    letters
}

/// Some stickers in any order, or all of them.
fn stickers(rng: &mut impl Rng) -> Vec<Sticker> {
    let mut all: Vec<Sticker> = Sticker::all().collect();
    all.shuffle(rng);
    let kept = if rng.random() { 24 } else { rng.random_range(0..24) };
    all.truncate(kept);
    all
}

/// Letters, buffers, breaks, orders, holding and what is done about parity, all at random.
pub fn conventions(rng: &mut impl Rng) -> Conventions {
    let mut conventions = Conventions {
        holding: Rotation::all().nth(rng.random_range(0..24)).unwrap(),
        parity: *[ParityChoice::Algorithm, ParityChoice::Exchange].choose(rng).unwrap(),
        ..Conventions::default()
    };
    let mut order = Orbit::ALL;
    order.shuffle(rng);
    conventions.memo_order = OrbitOrder::new(&order[..rng.random_range(0..=order.len())]);
    order.shuffle(rng);
    conventions.execution_order = OrbitOrder::new(&order[..rng.random_range(0..=order.len())]);
    for orbit in Orbit::ALL {
        let kind = conventions.kind_mut(orbit);
        kind.letters = Letters::new(&letters(rng)).unwrap();
        kind.buffer = Sticker::new(rng.random_range(0..24)).unwrap();
        kind.breaks = match rng.random_range(0..4) {
            0 => BreakChoice::First,
            1 => BreakChoice::Fewest,
            2 => BreakChoice::Least,
            _ => BreakChoice::Preference(stickers(rng)),
        };
    }
    conventions
}
