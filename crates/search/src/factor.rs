//! Writing an algorithm as people understand it: as a commutator `[A, B]` or a conjugate `[A: B]`, where it is one.
//!
//! Turns about one axis commute and turns about different axes know nothing of each other, so sequences of turns are
//! words in a free product of commutative groups. There it can be decided whether two words are conjugates: strip what
//! begins and ends them, and compare what is left as rings (textbook: the conjugacy theorem for free products). For
//! `[B, C]` with a given `B`, the word without `B` must be a conjugate of `B` undone, and `C` is what conjugates it.
//! As `B` it suffices to try what begins the word, and what begins it undone (textbook: a commutator in a free group has
//! the form `x y z x' y' z'`, which is `[x y, z x']`). Set-ups are tried by undoing what stands at the two ends.

use cube::{Algorithm, Amount, Size, Turn, inverted, simplified};
use std::collections::HashSet;

/// The longest set-up that is tried before a commutator.
const LONGEST_SET_UP: usize = 5;

/// The way to write an algorithm that explains it best: as a commutator, `[A: [B, C]]`, or else as a conjugate.
///
/// Best is what takes the fewest turns to write, set-up included; then the shortest commutator inside it, then parts that
/// are alike in length, then the fewest quarter turns. Parts may cancel where they meet, as in `[R: [U, R D R']]`. Flattened and simplified, the result is the
/// simplified input again, but for the order of turns that commute. `None` when neither form makes it shorter to
/// write, or the size lacks a turn.
///
/// ```
/// use cube::{Algorithm, Size};
/// use search::factor::factored;
/// let plain = |text| Algorithm::parse(text, Size::THREE).unwrap().flatten();
/// let found = |text| factored(Size::THREE, &plain(text)).map(|found| found.to_string());
/// assert_eq!(found("U R U R' D R U' R' D' U'"), Some("[U: [R U R', D]]".to_owned()));
/// assert_eq!(found("R U R D R' U' R D' R2"), Some("[R: [U, R D R']]".to_owned()));
/// assert_eq!(found("F R F'"), Some("[F: R]".to_owned()));
/// assert_eq!(found("R U F"), None);
/// ```
pub fn factored(size: Size, turns: &[Turn]) -> Option<Algorithm> {
    let word = canonical(turns);
    let best = if is_balanced(&word) { commutator(&word) } else { None };
    let made = if let Some(Parts { set_up, first, second }) = best {
        let inner = Algorithm::commutator(
            Algorithm::from_turns(size, &first).ok()?,
            Algorithm::from_turns(size, &second).ok()?,
        )?;
        if set_up.is_empty() {
            inner
        } else {
            Algorithm::conjugate(Algorithm::from_turns(size, &set_up).ok()?, inner)?
        }
    } else {
        let (set_up, core) = stripped(&word);
        if set_up.is_empty() || set_up.len() + core.len() >= word.len() {
            return None;
        }
        Algorithm::conjugate(
            Algorithm::from_turns(size, &set_up).ok()?,
            Algorithm::from_turns(size, &core).ok()?,
        )?
    };
    (canonical(&made.flatten()) == word).then_some(made)
}

/// `[set_up: [first, second]]`.
#[derive(Clone, PartialEq, Eq, Debug)]
struct Parts {
    set_up: Vec<Turn>,
    first: Vec<Turn>,
    second: Vec<Turn>,
}

impl Parts {
    fn written(&self) -> usize {
        self.set_up.len() + self.first.len() + self.second.len()
    }

    /// Less is better.
    fn rank(&self) -> (usize, usize, usize, u32) {
        let (first, second) = (self.first.len(), self.second.len());
        let turns = self.set_up.iter().chain(&self.first).chain(&self.second);
        // A half turn is two quarters, whichever way.
        let quarters = turns.map(|turn| if turn.amount == Amount::Half { 2 } else { 1 }).sum();
        (self.written(), first + second, first.max(second), quarters)
    }
}

/// Merged and cancelled, turns about one axis in order.
fn canonical(turns: &[Turn]) -> Vec<Turn> {
    let mut word = simplified(turns);
    for run in word.chunk_by_mut(|a, b| a.block.axis() == b.block.axis()) {
        run.sort_unstable();
    }
    word
}

fn product(parts: &[&[Turn]]) -> Vec<Turn> {
    canonical(&parts.concat())
}

/// The end of the first run about one axis.
fn first_run(word: &[Turn]) -> usize {
    word.iter().position(|turn| turn.block.axis() != word[0].block.axis()).unwrap_or(word.len())
}

/// Where each run about one axis begins, but the first.
fn run_starts(word: &[Turn]) -> impl Iterator<Item = usize> {
    (1..word.len()).filter(|&at| word[at].block.axis() != word[at - 1].block.axis())
}

/// In a commutator every block is turned back as far as it is turned.
fn is_balanced(word: &[Turn]) -> bool {
    !word.is_empty()
        && word.iter().all(|turn| {
            let same = word.iter().filter(|other| other.block == turn.block);
            same.map(|other| u32::from(other.amount.quarters())).sum::<u32>() % 4 == 0
        })
}

/// The word as `P r P'` with an `r` that begins and ends about different axes.
fn stripped(word: &[Turn]) -> (Vec<Turn>, Vec<Turn>) {
    let mut outside = Vec::new();
    let mut core = word.to_vec();
    while let (Some(first), Some(last)) = (core.first(), core.last()) {
        let end = first_run(&core);
        if end == core.len() || first.block.axis() != last.block.axis() {
            break;
        }
        let run = core[..end].to_vec();
        core = product(&[&core[end..], &run]);
        outside.extend(run);
    }
    (outside, core)
}

fn commutator(word: &[Turn]) -> Option<Parts> {
    let mut best: Option<Parts> = None;
    let mut known: HashSet<Vec<Turn>> = HashSet::from([word.to_vec()]);
    let mut layer: Vec<(Vec<Turn>, Vec<Turn>)> = vec![(Vec::new(), word.to_vec())];
    for length in 0..=LONGEST_SET_UP.min(word.len() / 2) {
        // A commutator takes two turns to write at least.
        if best.as_ref().is_some_and(|best| best.written() < length + 2) {
            break;
        }
        for (set_up, inner) in &layer {
            for parts in [plain(inner), plain(&inverted(inner)).map(|(first, second)| (second, first))] {
                let Some((first, second)) = parts else { continue };
                let parts = Parts { set_up: set_up.clone(), first, second };
                if parts.written() < word.len() && best.as_ref().is_none_or(|best| parts.rank() < best.rank())
                {
                    best = Some(parts);
                }
            }
        }
        let mut next = Vec::new();
        for (set_up, inner) in &layer {
            for turn in ends(inner) {
                let without = product(&[&[turn.inverse()], inner, &[turn]]);
                let longer = product(&[set_up, &[turn]]);
                if without.len() <= word.len() + 1
                    && longer.len() == length + 1
                    && known.insert(without.clone())
                {
                    next.push((longer, without));
                }
            }
        }
        layer = next;
    }
    best
}

/// Turns of the blocks that begin or end the word, by any amount.
fn ends(word: &[Turn]) -> Vec<Turn> {
    let (Some(first), Some(last)) = (word.first(), word.last()) else { return Vec::new() };
    let mut blocks: Vec<_> = word
        .iter()
        .take_while(|turn| turn.block.axis() == first.block.axis())
        .chain(word.iter().rev().take_while(|turn| turn.block.axis() == last.block.axis()))
        .map(|turn| turn.block)
        .collect();
    blocks.sort_unstable();
    blocks.dedup();
    blocks.into_iter().flat_map(|block| Amount::ALL.map(|amount| Turn::new(block, amount))).collect()
}

/// The word as `[B, C]` with a `B` that begins it, the shortest such.
fn plain(word: &[Turn]) -> Option<(Vec<Turn>, Vec<Turn>)> {
    beginnings(word)
        .into_iter()
        .filter_map(|first| conjugator(&first, word).map(|second| (first, second)))
        .filter(|(_, second)| !second.is_empty())
        .min_by_key(|(first, second)| (first.len() + second.len(), first.len().max(second.len())))
}

/// What may begin the word: whole runs, then turns of the blocks of the next run by any amounts.
fn beginnings(word: &[Turn]) -> Vec<Vec<Turn>> {
    let mut found = Vec::new();
    let starts: Vec<usize> = std::iter::once(0).chain(run_starts(word)).collect();
    for (number, &start) in starts.iter().enumerate() {
        let end = starts.get(number + 1).copied().unwrap_or(word.len());
        let mut parts: Vec<Vec<Turn>> = vec![word[..start].to_vec()];
        for turn in &word[start..end] {
            let longer: Vec<Vec<Turn>> = parts
                .iter()
                .flat_map(|part| {
                    Amount::ALL.map(|amount| [part.as_slice(), &[Turn::new(turn.block, amount)]].concat())
                })
                .collect();
            parts.extend(longer);
        }
        found.extend(parts.into_iter().skip(1));
    }
    found
}

/// The shortest `C` found with `B C B' C'` equal to the word.
fn conjugator(first: &[Turn], word: &[Turn]) -> Option<Vec<Turn>> {
    let undone = inverted(first);
    let (outside, core) = stripped(&product(&[&undone, word]));
    let (own_outside, own_core) = stripped(&undone);
    if core.len() != own_core.len() || core.is_empty() {
        return None;
    }
    let back = inverted(&own_outside);
    let mut best: Option<Vec<Turn>> = None;
    for start in std::iter::once(0).chain(run_starts(&own_core)) {
        let (head, tail) = own_core.split_at(start);
        if canonical(&[tail, head].concat()) != core {
            continue;
        }
        let head = inverted(head);
        for middle in [head.as_slice(), tail] {
            let second = product(&[&outside, middle, &back]);
            // What commutes with B changes nothing.
            for other in [product(&[&second, first]), product(&[&second, &undone]), second] {
                if best.as_ref().is_none_or(|best| other.len() < best.len()) {
                    best = Some(other);
                }
            }
        }
    }
    best
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn plain_turns(text: &str) -> Vec<Turn> {
        Algorithm::parse(text, Size::THREE).unwrap().flatten()
    }

    fn found(text: &str) -> Option<String> {
        factored(Size::THREE, &plain_turns(text)).map(|found| found.to_string())
    }

    #[test]
    fn commutators_of_common_practice() {
        // All common practice, no source.
        for (turns, written) in [
            ("R U' L' U R' U' L U", "[R, U' L' U]"),
            ("R U R' D R U' R' D'", "[R U R', D]"),
            ("M' U2 M U2", "[M', U2]"),
            ("R' F R' B2 R F' R' B2 R2", "[R': [F, R' B2 R]]"),
            ("M2 U M U2 M' U M2", "[M2 U: [M, U2]]"),
            ("F R U R' U' F'", "[F: [R, U]]"),
            ("R' D R D' R' D R U2 R' D' R D R' D' R U2", "[R' D R D' R' D R, U2]"),
        ] {
            assert_eq!(found(turns).as_deref(), Some(written), "{turns}");
        }
    }

    #[test]
    fn what_is_neither_is_told_apart() {
        assert_eq!(found(""), None);
        assert_eq!(found("R"), None);
        assert_eq!(found("R U R' U R U2"), None);
        // A cube of size 2 has no M.
        assert_eq!(factored(Size::TWO, &plain_turns("M' U2 M U2")), None);
        // Commuting turns make no commutator.
        assert_eq!(found("R L R' L'"), None);
    }

    fn words(length: usize) -> impl Strategy<Value = Vec<Turn>> {
        prop::collection::vec(prop::sample::select(Turn::faces().collect::<Vec<_>>()), 1..=length)
    }

    proptest! {
        #[test]
        fn whatever_was_written_is_found_at_least_as_short(a in words(2), b in words(3), c in words(2)) {
            let (a, b, c) = (canonical(&a), canonical(&b), canonical(&c));
            let word = product(&[&a, &b, &c, &inverted(&b), &inverted(&c), &inverted(&a)]);
            let parts = a.len() + b.len() + c.len();
            prop_assume!(word.len() > parts);
            let found = factored(Size::THREE, &word);
            prop_assert!(found.is_some(), "{}", cube::display_turns(&word));
            let found = found.unwrap();
            prop_assert_eq!(canonical(&found.flatten()), word);
            let written = found.to_string().split(' ').count();
            prop_assert!(written <= parts, "{} for {parts} turns", found);
        }

        #[test]
        fn anything_else_comes_back_as_it_was(word in words(12)) {
            if let Some(found) = factored(Size::THREE, &word) {
                prop_assert_eq!(canonical(&found.flatten()), canonical(&word));
            }
        }
    }
}
