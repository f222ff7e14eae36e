//! The net as a terminal shows it: U above F, then L F R B side by side, then D below F.

use super::names::{ColourNames, folded, lettered};
use super::words::is_separator;
use super::{Alphabet, Place, Spot, StateTextError, no_colour};
use cube::{Face, Facelets, Size, State, plain_sign};

/// Signs beside a sticker that is marked.
const MARKS: [char; 7] = ['[', ']', '{', '}', '<', '>', '!'];

/// The faces that the lines of a net go through, as many lines each as the cube has layers.
const BANDS: [&[Face]; 3] = [&[Face::U], &[Face::L, Face::F, Face::R, Face::B], &[Face::D]];

/// A line of a text that has signs in it, cut into what may be stickers.
struct Line {
    number: usize,
    /// Column and signs.
    cells: Vec<(usize, String)>,
}

/// Each group of signs a sticker: its colour, then perhaps its letter.
fn groups(text: &str) -> Vec<Line> {
    lines(text, |cells, column, sign, apart| match cells.last_mut().filter(|_| !apart) {
        Some((_, group)) => group.push(sign),
        None => cells.push((column, sign.to_string())),
    })
}

/// Each sign a sticker.
fn signs(text: &str) -> Vec<Line> {
    lines(text, |cells, column, sign, _| cells.push((column, sign.to_string())))
}

fn lines(text: &str, mut take: impl FnMut(&mut Vec<(usize, String)>, usize, char, bool)) -> Vec<Line> {
    let mut found = Vec::new();
    for (number, line) in text.lines().enumerate() {
        let mut cells = Vec::new();
        let mut apart = true;
        for (column, sign) in line.chars().enumerate() {
            if is_separator(sign) || MARKS.contains(&plain_sign(sign)) {
                apart = true;
                continue;
            }
            take(&mut cells, column + 1, sign, apart);
            apart = false;
        }
        if !cells.is_empty() {
            found.push(Line { number: number + 1, cells });
        }
    }
    found
}

/// How many stickers each line of a net has.
fn widths(size: Size) -> impl Iterator<Item = usize> {
    let n = usize::from(size.layers());
    BANDS.into_iter().flat_map(move |band| std::iter::repeat_n(n * band.len(), n))
}

/// The size whose net has such lines.
fn shape(lines: &[Line]) -> Option<Size> {
    Size::ALL.into_iter().find(|&size| lines.iter().map(|line| line.cells.len()).eq(widths(size)))
}

/// The size whose net has such lines but for one.
fn nearly(lines: &[Line]) -> Option<StateTextError> {
    Size::ALL.into_iter().find_map(|size| {
        let same_height = widths(size).count() == lines.len();
        let mut wrong = lines.iter().zip(widths(size)).filter(|(line, width)| line.cells.len() != *width);
        let (line, expected) = wrong.next().filter(|_| same_height)?;
        let (line, count) = (line.number, line.cells.len());
        wrong.next().is_none().then_some(StateTextError::NetLine { size, line, count, expected })
    })
}

/// Reads a net; `None` for a text that has not the shape of one.
pub(super) fn read(text: &str, names: &ColourNames) -> Option<Result<Facelets, StateTextError>> {
    let groups = groups(text);
    if let Some(size) = shape(&groups) {
        let all = || groups.iter().flat_map(|line| &line.cells).map(|(_, group)| group);
        let words = all().filter(|group| names.by_word(&small(group)).is_some()).count();
        // A letter beside the colour is the sticker's. Without any, initials do as well as what a net has for them.
        let alphabet = if words * 2 > all().count() {
            Alphabet::Words
        } else if all().any(|group| group.chars().count() > 1) {
            Alphabet::Letters(names.drawn())
        } else {
            Alphabet::Letters(names.initials().unwrap_or(names.drawn()))
        };
        return Some(facelets(&groups, size, names, alphabet));
    }
    let signs = signs(text);
    if let Some(size) = shape(&signs) {
        let letters = names.initials().unwrap_or(names.drawn());
        return Some(facelets(&signs, size, names, Alphabet::Letters(letters)));
    }
    nearly(&groups).or_else(|| nearly(&signs)).map(Err)
}

fn small(word: &str) -> Vec<char> {
    word.chars().map(folded).collect()
}

fn facelets(
    lines: &[Line],
    size: Size,
    names: &ColourNames,
    alphabet: Alphabet,
) -> Result<Facelets, StateTextError> {
    let n = usize::from(size.layers());
    let mut facelets = State::solved(size).facelets();
    for (number, line) in lines.iter().enumerate() {
        let faces = BANDS.get(number / n).copied().unwrap_or_default();
        for (at, (column, group)) in line.cells.iter().enumerate() {
            let Some(&face) = faces.get(at / n) else { continue };
            let spot = Spot { face, row: (number % n) as u8, column: (at % n) as u8 };
            let (found, colour) = match alphabet {
                Alphabet::Words => (group.clone(), names.by_word(&small(group))),
                Alphabet::Letters(letters) => {
                    let first = group.chars().next().unwrap_or_default();
                    (first.to_string(), lettered(&letters, first))
                }
            };
            let place = Place { line: line.number, column: *column };
            let colour = colour.ok_or_else(|| no_colour(found, place, Some(spot), names, alphabet))?;
            facelets.set(face, spot.row, spot.column, colour);
        }
    }
    Ok(facelets)
}
