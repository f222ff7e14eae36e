//! Which face of a text lacks a sticker or has one too many.

use super::{Cell, StateTextError, per_face};
use cube::{Face, Size};

/// What is wrong with a number of stickers that no size has.
pub(super) fn wrong(cells: &[Cell]) -> StateTextError {
    let divisions = (0..5).map(|part| divided(cells, part));
    divisions
        .clone()
        .find_map(|counts| faces(&counts))
        .or_else(|| {
            let mut divisions = divisions;
            divisions.find_map(|counts| rows(&counts))
        })
        .unwrap_or_else(|| {
            let count = cells.len();
            let distance = |size: &Size| size.facelets().abs_diff(count);
            let nearest = Size::ALL.into_iter().min_by_key(distance).unwrap_or(Size::ALL[0]);
            StateTextError::Count { count, nearest }
        })
}

/// How many stickers stand in each part of the text.
fn divided(cells: &[Cell], part: usize) -> Vec<usize> {
    let same = |a: &Cell, b: &Cell| a.parts[part] == b.parts[part];
    cells.chunk_by(same).map(<[Cell]>::len).collect()
}

/// A part a face, where most are whole.
fn faces(counts: &[usize]) -> Option<StateTextError> {
    let whole = |size: &Size| counts.iter().filter(|&&count| count == per_face(*size)).count();
    let size = Size::ALL
        .into_iter()
        .find(|size| counts.len() == Face::ALL.len() && 2 * whole(size) >= counts.len())?;
    let wrong = Face::ALL.into_iter().zip(counts.iter().copied());
    let wrong: Vec<_> = wrong.filter(|&(_, count)| count != per_face(size)).collect();
    Some(StateTextError::FaceCount { size, wrong })
}

/// A part a row, where all but one are whole.
fn rows(counts: &[usize]) -> Option<StateTextError> {
    Size::ALL.into_iter().find_map(|size| {
        let n = usize::from(size.layers());
        let mut wrong = counts.iter().enumerate().filter(|&(_, &count)| count != n);
        let (at, &count) = wrong.next().filter(|_| counts.len() == Face::ALL.len() * n)?;
        let (face, row) = (Face::ALL[at / n], (at % n) as u8);
        wrong.next().is_none().then_some(StateTextError::RowCount { size, face, row, count })
    })
}
