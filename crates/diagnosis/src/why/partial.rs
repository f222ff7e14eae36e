//! Explaining an outcome of which not everything is known.

use super::observed::Wanted;
use super::search::{self, Found, Story};
use super::space::Space;
use super::{traced, within};
use cube::{Element, ElementKey as Key, State};
use rustc_hash::FxHashMap;

/// How many of the likeliest classes are tried against each other where nothing can be looked up.
const TRIED: usize = 1200;
/// How many states that fit are searched one by one, each as if it had been seen.
const MOST_STATES: usize = 8;
/// Of how many pairs it is tried whether they lead to what was seen, where not all can be looked up.
const SAMPLED: usize = 6000;

/// All that one slip or two explain: what leads from what should have come out to what did. `priors` are their shares.
pub(crate) fn exactly(space: &Space<'_>, difference: &Element, priors: [f64; 2], found: &mut Found) {
    search::singles(space, difference, priors[0], found);
    search::pairs(space, &space.group.right(difference), priors[1], found);
    search::inside(space, difference, priors[1], found);
    traced::pairs(space, difference, priors[1], found);
    within::pairs(space, difference, priors[1], found);
}

/// Whether all that one slip or two explain was found; otherwise there may be two that were not looked at. `named` is the
/// planned outcome, named so that solved is the identity; `difference` tells what leads from it to a state named alike.
pub(crate) fn explain(
    space: &Space<'_>,
    wanted: &Wanted,
    named: &Element,
    difference: &dyn Fn(&State) -> Element,
    priors: [f64; 2],
    found: &mut Found,
) -> bool {
    if let Some(states) = wanted.completions(space.craft.size(), MOST_STATES) {
        for state in &states {
            exactly(space, &difference(state), priors, found);
        }
        return true;
    }
    in_part(space, wanted, named, priors, found);
    false
}

/// Slips alone, and of two together those that can be looked up, or the likeliest.
fn in_part(space: &Space<'_>, wanted: &Wanted, named: &Element, priors: [f64; 2], found: &mut Found) {
    let group = space.group;
    let odd = space.craft.size().is_odd();
    for class in &space.classes.all {
        if wanted.fits_held(&named.then(&class.element), group, odd) {
            for &member in &class.members {
                let weight = priors[0] * space.candidates[member as usize].weight;
                found.add([0, 0, class.coset], weight, Story::Single(member));
            }
        }
    }
    match wanted.places() {
        // Places that contradict each other are nobody's outcome.
        Some(places) if odd => {
            if let Some(lifted) = group.moving(places) {
                pairs_by_places(space, wanted, named, &lifted, priors[1], found);
            }
        }
        _ => {
            let listed = |found: &Found| found.groups.values().map(|group| group.weight).sum::<f64>();
            let alone = listed(found);
            if found.groups.is_empty() {
                likeliest_pairs(space, wanted, named, priors[1], found);
            }
            let pairs = listed(found) - alone;
            found.unlisted = (priors[1] * share_of_pairs(space, wanted, named) - pairs).max(0.0);
        }
    }
}

/// How many of all pairs of slips lead to what was seen, by their weights: of a sample spread evenly over both.
fn share_of_pairs(space: &Space<'_>, wanted: &Wanted, named: &Element) -> f64 {
    let (group, odd) = (space.group, space.craft.size().is_odd());
    let mut reached = 0.0;
    let ends: Vec<f64> = space
        .classes
        .all
        .iter()
        .map(|class| {
            reached += class.weight;
            reached
        })
        .collect();
    let class = |share: f64| {
        let at = ends.partition_point(|&end| end < share * reached);
        &space.classes.all[at.min(ends.len().saturating_sub(1))]
    };
    if ends.is_empty() {
        return 0.0;
    }
    let fits = |number: &usize| {
        // The second by the golden ratio: what is left of its multiples spreads evenly whatever the number.
        let golden = *number as f64 * 0.618_033_988_749_895;
        let (first, second) = ((*number as f64 + 0.5) / SAMPLED as f64, golden - libm::floor(golden));
        let outcome = named.then(&class(first).element).then(&class(second).element);
        wanted.fits_held(&outcome, group, odd)
    };
    reached * reached * (0..SAMPLED).filter(fits).count() as f64 / SAMPLED as f64
}

fn add_pair(space: &Space<'_>, pair: [u32; 2], prior: f64, found: &mut Found) {
    let [first, second] = pair.map(|class| &space.classes.all[class as usize]);
    for &a in &first.members {
        for &b in &second.members {
            let (one, two) = (&space.candidates[a as usize], &space.candidates[b as usize]);
            if one.end() <= two.begin() && a != b {
                let weight = 2.0 * prior * one.weight * two.weight;
                found.add([0, first.coset, second.coset], weight, Story::Pair(a, b));
            }
        }
    }
}

/// Where pieces lie, without their turning, is a group of its own: pairs are looked up in it as in the whole one.
fn pairs_by_places(
    space: &Space<'_>,
    wanted: &Wanted,
    named: &Element,
    lifted: &Element,
    prior: f64,
    found: &mut Found,
) {
    let group = space.group;
    let mut by_places: FxHashMap<Key, Vec<u32>> = FxHashMap::default();
    for (number, class) in space.classes.all.iter().enumerate() {
        by_places.entry(group.key_of_places(&class.element)).or_default().push(number as u32);
    }
    for (number, first) in space.classes.all.iter().enumerate() {
        let so_far = named.then(&first.element);
        let rest = so_far.inverse().then(lifted);
        for &second in by_places.get(&group.key_of_places(&rest)).into_iter().flatten() {
            let outcome = so_far.then(&space.classes.all[second as usize].element);
            if wanted.fits_held(&outcome, group, true) {
                add_pair(space, [number as u32, second], prior, found);
            }
        }
    }
}

/// The likeliest classes against each other.
fn likeliest_pairs(space: &Space<'_>, wanted: &Wanted, named: &Element, prior: f64, found: &mut Found) {
    let group = space.group;
    let odd = space.craft.size().is_odd();
    let mut order: Vec<u32> = (0..space.classes.all.len() as u32).collect();
    order.sort_by(|&a, &b| {
        space.classes.all[b as usize].weight.total_cmp(&space.classes.all[a as usize].weight).then(a.cmp(&b))
    });
    order.truncate(if odd { TRIED } else { TRIED / 4 });
    for &first in &order {
        let so_far = named.then(&space.classes.all[first as usize].element);
        for &second in &order {
            let outcome = so_far.then(&space.classes.all[second as usize].element);
            if wanted.fits_held(&outcome, group, odd) {
                add_pair(space, [first, second], prior, found);
            }
        }
    }
}
