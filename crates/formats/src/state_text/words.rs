//! Colours one after another, as words or initials, in any spacing.

use super::names::{ColourNames, folded, lettered};
use super::{Alphabet, Cell, Place};
use cube::{Face, plain_sign};

/// Whether a sign only sets colours apart.
pub(super) fn is_separator(sign: char) -> bool {
    let sign = plain_sign(sign);
    sign.is_whitespace() || matches!(sign, ',' | ';' | '/' | '|')
}

/// Signs that stand together.
struct Run {
    place: Place,
    signs: Vec<char>,
    parts: [usize; 5],
}

/// What a run says.
enum Said {
    /// Words: where each begins, and its colour.
    Words(Vec<(usize, Face)>),
    /// Initials, one a sign.
    Initials(Vec<Face>),
    /// Something else.
    Unclear,
}

/// The colours of a text in their order, and by what they are known.
pub(super) fn cells(text: &str, names: &ColourNames) -> (Vec<Cell>, Alphabet) {
    let runs = runs(text);
    let said: Vec<Said> = runs.iter().map(|run| said(&run.signs, names)).collect();
    // A slip is judged by how the rest is written; alone, by what most of its signs would be.
    let length = |of: fn(&Said) -> bool| -> usize {
        runs.iter().zip(&said).filter(|(_, said)| of(said)).map(|(run, _)| run.signs.len()).sum()
    };
    let words = length(|said| matches!(said, Said::Words(_)));
    let initials = length(|said| matches!(said, Said::Initials(_)));
    let alphabet = names.initials().map_or(Alphabet::Words, |letters| {
        let by_words = if words + initials > 0 {
            words > initials
        } else {
            let all = || runs.iter().flat_map(|run| &run.signs);
            2 * all().filter(|&&sign| lettered(&letters, sign).is_some()).count() < all().count()
        };
        if by_words { Alphabet::Words } else { Alphabet::Letters(letters) }
    });
    let mut cells = Vec::new();
    for (run, said) in runs.iter().zip(said) {
        let mut cell = |at: usize, colour: Result<Face, String>| {
            let place = Place { column: run.place.column + at, ..run.place };
            cells.push(Cell { place, colour, parts: run.parts });
        };
        match said {
            Said::Words(words) => words.into_iter().for_each(|(at, face)| cell(at, Ok(face))),
            Said::Initials(faces) => faces.into_iter().enumerate().for_each(|(at, face)| cell(at, Ok(face))),
            Said::Unclear => match alphabet {
                Alphabet::Words => {
                    for (at, colour) in mended(&run.signs, names) {
                        cell(at, colour);
                    }
                }
                Alphabet::Letters(letters) => {
                    for (at, &sign) in run.signs.iter().enumerate() {
                        cell(at, lettered(&letters, sign).ok_or_else(|| sign.to_string()));
                    }
                }
            },
        }
    }
    (cells, alphabet)
}

fn runs(text: &str) -> Vec<Run> {
    let mut runs: Vec<Run> = Vec::new();
    let [mut paragraph, mut part, mut item] = [0; 3];
    for (number, line) in text.lines().enumerate() {
        if line.trim().is_empty() {
            paragraph += 1;
        }
        let mut together = false;
        for (column, sign) in line.chars().enumerate() {
            if is_separator(sign) {
                together = false;
                part += usize::from(matches!(sign, ';' | '/' | '|'));
                item += usize::from(sign == ',');
                continue;
            }
            match runs.last_mut().filter(|_| together) {
                Some(run) => run.signs.push(sign),
                None => runs.push(Run {
                    place: Place { line: number + 1, column: column + 1 },
                    signs: vec![sign],
                    parts: [paragraph, number, part, item, runs.len()],
                }),
            }
            together = true;
        }
    }
    runs
}

fn said(signs: &[char], names: &ColourNames) -> Said {
    let small: Vec<char> = signs.iter().copied().map(folded).collect();
    if let Some(face) = names.by_word(&small) {
        return Said::Words(vec![(0, face)]);
    }
    let by_initial = |&sign: &char| lettered(&names.initials()?, sign);
    if let Some(faces) = signs.iter().map(by_initial).collect() {
        return Said::Initials(faces);
    }
    let ends = ends(&small, names);
    if ends.first() == Some(&true) {
        Said::Words(spelled_out(&small, 0, &ends, names))
    } else {
        Said::Unclear
    }
}

/// Whether from each sign on, and at the end, there are nothing but words.
fn ends(small: &[char], names: &ColourNames) -> Vec<bool> {
    let mut ends = vec![false; small.len() + 1];
    ends[small.len()] = true;
    for at in (0..small.len()).rev() {
        ends[at] = names.beginning(&small[at..]).any(|(length, _)| ends[at + length]);
    }
    ends
}

/// The words from a sign on that is known to begin some.
fn spelled_out(small: &[char], from: usize, ends: &[bool], names: &ColourNames) -> Vec<(usize, Face)> {
    let mut words = Vec::new();
    let mut at = from;
    while let Some((length, face)) = names.beginning(&small[at..]).find(|(length, _)| ends[at + length]) {
        words.push((at, face));
        at += length;
    }
    words
}

/// Words with something between that is none: as many words as there are before it and after it.
fn mended(signs: &[char], names: &ColourNames) -> Vec<(usize, Result<Face, String>)> {
    // About as long as a word, it is one word with a slip.
    if signs.len() <= names.longest() + 1 {
        return vec![(0, Err(signs.iter().collect()))];
    }
    let small: Vec<char> = signs.iter().copied().map(folded).collect();
    let ends = ends(&small, names);
    // The words that lead to each sign, by the last of them.
    let mut before: Vec<Option<(usize, Face)>> = vec![None; small.len() + 1];
    let mut furthest = 0;
    for at in 0..small.len() {
        if at > 0 && before[at].is_none() {
            continue;
        }
        furthest = at;
        for (length, face) in names.beginning(&small[at..]) {
            before[at + length].get_or_insert((at, face));
        }
    }
    let mut cells = Vec::new();
    let mut at = furthest;
    while let Some((start, face)) = before[at] {
        cells.insert(0, (start, Ok(face)));
        at = start;
    }
    let next = (furthest + 1..=small.len()).find(|&at| ends[at]).unwrap_or(small.len());
    cells.push((furthest, Err(signs[furthest..next].iter().collect())));
    cells.extend(spelled_out(&small, next, &ends, names).into_iter().map(|(at, face)| (at, Ok(face))));
    cells
}
