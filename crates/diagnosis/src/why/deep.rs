//! Three slips: for each two, the third is looked up. Likelier slips come first, so that a search that is broken off
//! has seen the likeliest.

use super::search::{Found, Line, Story};
use super::space::{Class, Space};
use cube::{Element, ElementKey as Key};
use rustc_hash::FxHashMap;
use std::hash::{BuildHasher, BuildHasherDefault};

/// Bits of the filter that spares most look-ups: 128 KB.
const FILTER: usize = 1 << 20;

/// All triples; whether the search was broken off.
pub(crate) fn triples(
    space: &Space<'_>,
    difference: &Element,
    prior: f64,
    found: &mut Found,
    progress: &mut dyn FnMut(f64) -> bool,
) -> bool {
    // Three slips can come in six orders; weights are of slips in a given one.
    let prior = 6.0 * prior;
    within_letters(space, difference, prior, found);
    !progress(0.1) || !one_after_another(space, difference, prior, found, progress)
}

/// Where the members of a class lie on the tape at the most.
#[derive(Clone, Copy)]
struct Extent {
    first_end: usize,
    last_begin: usize,
}

fn extent(class: &Class, space: &Space<'_>) -> Extent {
    let members = || class.members.iter().map(|&member| &space.candidates[member as usize]);
    Extent {
        first_end: members().map(super::space::Candidate::end).min().unwrap_or(0),
        last_begin: members().map(super::space::Candidate::begin).max().unwrap_or(0),
    }
}

/// A set of keys that says no for sure, and yes with few mistakes.
struct Filter {
    bits: Vec<u64>,
    hasher: BuildHasherDefault<rustc_hash::FxHasher>,
}

impl Filter {
    fn new(keys: impl Iterator<Item = Key>) -> Self {
        let mut filter = Self { bits: vec![0; FILTER / 64], hasher: BuildHasherDefault::default() };
        for key in keys {
            let at = filter.place(key);
            filter.bits[at / 64] |= 1 << (at % 64);
        }
        filter
    }

    #[inline]
    fn place(&self, key: Key) -> usize {
        self.hasher.hash_one(key) as usize % FILTER
    }

    #[inline]
    fn may_hold(&self, key: Key) -> bool {
        let at = self.place(key);
        self.bits[at / 64] & (1 << (at % 64)) != 0
    }
}

/// Three slips of which none lies within what another brought in.
fn one_after_another(
    space: &Space<'_>,
    difference: &Element,
    prior: f64,
    found: &mut Found,
    progress: &mut dyn FnMut(f64) -> bool,
) -> bool {
    let group = space.group;
    let mut order: Vec<(&Class, Extent)> =
        space.classes.all.iter().map(|class| (class, extent(class, space))).collect();
    order.sort_by(|a, b| b.0.weight.total_cmp(&a.0.weight));
    let filter = Filter::new(order.iter().map(|(class, _)| class.coset));
    // The first two in order of weight, whichever comes first in the attempt: (1, 2), (1, 3), (2, 1), (2, 3), …
    let rights: Vec<_> =
        order.iter().map(|(class, _)| group.right(&class.inverse.then(difference))).collect();
    for done in 1..order.len() {
        if done % 16 == 0 && !progress(0.1 + 0.9 * (done * done) as f64 / (order.len() * order.len()) as f64)
        {
            return false;
        }
        for other in 0..done {
            for (first, second) in [(done, other), (other, done)] {
                let ((one, from), (two, to)) = (order[first], order[second]);
                if from.first_end > to.last_begin {
                    continue;
                }
                let wanted = group.key_of_quotient(&two.element, &two.inverse, &rights[first]);
                if filter.may_hold(wanted) {
                    add(space, one, two, wanted, prior, found);
                }
            }
        }
    }
    true
}

fn add(space: &Space<'_>, one: &Class, two: &Class, wanted: Key, prior: f64, found: &mut Found) {
    for &third in space.classes.of_coset(wanted) {
        let three = &space.classes.all[third as usize];
        for &a in &one.members {
            let first = &space.candidates[a as usize];
            for &b in &two.members {
                let second = &space.candidates[b as usize];
                if first.end() > second.begin() || a == b {
                    continue;
                }
                for &c in &three.members {
                    let third = &space.candidates[c as usize];
                    if second.end() <= third.begin() && b != c {
                        let weight = prior * first.weight * second.weight * third.weight;
                        found.add([one.coset, two.coset, three.coset], weight, Story::Triple(a, b, c));
                    }
                }
            }
        }
    }
}

/// A slip of the hands in letters that a slip of tracing or recall brought in, carried to the end.
struct Inner {
    act: u32,
    members: Vec<(u32, f64)>,
    element: Element,
    coset: Key,
}

/// Slips of tracing or recall, a slip of the hands in the letters that they brought in, and a third slip: elsewhere, or
/// in those letters too.
fn within_letters(space: &Space<'_>, difference: &Element, prior: f64, found: &mut Found) {
    let group = space.group;
    // For each slip that may come before: what is left to explain after it.
    let mut before: FxHashMap<Key, Vec<u32>> = FxHashMap::default();
    let right = group.right(difference);
    for (number, class) in space.classes.all.iter().enumerate() {
        let left = group.key_of_quotient(&class.element, &class.inverse, &right);
        before.entry(left).or_default().push(number as u32);
    }
    for (number, (slip, candidate)) in space.letter_slips.iter().enumerate() {
        let outer = &space.candidates[*candidate as usize];
        let effect = space.effect(&outer.edits, &space.carried);
        let outer_coset = group.key_up_to_hold(&effect);
        if outer.weight <= 0.0 || outer_coset == group.key_up_to_hold(&Element::IDENTITY) {
            continue;
        }
        let line = Line::new(slip, space);
        let mut inners: Vec<Inner> = Vec::new();
        for (at, act, after) in line.brought() {
            let back = after.inverse();
            let local = space.local(act);
            inners.extend(local.all.iter().map(|(element, members)| {
                let element = back.then(element).then(after);
                let members = members.iter().map(|&at| (at, local.weights[at as usize])).collect();
                Inner { act: at as u32, members, element, coset: group.key_up_to_hold(&element) }
            }));
        }
        let rest = effect.inverse().then(difference);
        let rest_right = group.right(&rest);
        let mut later: FxHashMap<Key, Vec<u32>> = FxHashMap::default();
        if line.brought.len() > 1 {
            for (at, inner) in inners.iter().enumerate() {
                later.entry(inner.coset).or_default().push(at as u32);
            }
        }
        for inner in &inners {
            let inverse = inner.element.inverse();
            let left = group.key_of_quotient(&inner.element, &inverse, &rest_right);
            let mut story = |member: (u32, f64), (other, other_first), weight: f64, coset: Key| {
                let weight = prior * outer.weight * member.1 * weight;
                let (letters, act, slip) = (number as u32, inner.act, member.0);
                let story = Story::InsideAnd { letters, act, slip, other, other_first };
                found.add([outer_coset, inner.coset, coset], weight, story);
            };
            for &class in space.classes.of_coset(left) {
                let class = &space.classes.all[class as usize];
                for &other in &class.members {
                    let third = &space.candidates[other as usize];
                    if outer.end() <= third.begin() {
                        let other = (other, false);
                        inner.members.iter().for_each(|&at| story(at, other, third.weight, class.coset));
                    }
                }
            }
            let both = effect.then(&inner.element);
            for &class in before.get(&group.key_up_to_hold(&both)).into_iter().flatten() {
                let class = &space.classes.all[class as usize];
                for &other in &class.members {
                    let first = &space.candidates[other as usize];
                    if first.end() <= outer.begin() {
                        let other = (other, true);
                        inner.members.iter().for_each(|&at| story(at, other, first.weight, class.coset));
                    }
                }
            }
            for &at in later.get(&left).into_iter().flatten() {
                let second = &inners[at as usize];
                if inner.act >= second.act {
                    continue;
                }
                for &(a, first_weight) in &inner.members {
                    for &(b, second_weight) in &second.members {
                        let weight = prior * outer.weight * first_weight * second_weight;
                        let story = Story::InsideBoth {
                            letters: number as u32,
                            first: (inner.act, a),
                            second: (second.act, b),
                        };
                        found.add([outer_coset, inner.coset, second.coset], weight, story);
                    }
                }
            }
        }
    }
}
