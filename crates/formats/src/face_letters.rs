//! A state as letters of faces, as twins have it: in the order U L F R B D, and before documents had versions in another.

use cube::{Face, Facelets, Size};

/// The order of the faces in version 0.
const ORDER_0: [Face; 6] = [Face::U, Face::R, Face::F, Face::D, Face::L, Face::B];

fn read(text: &str, order: [Face; 6]) -> Option<Facelets> {
    let named = |sign: char| Face::ALL.into_iter().find(|face| face.letter() == sign);
    let letters: Vec<Face> = text.chars().map(named).collect::<Option<_>>()?;
    let size = Size::ALL.into_iter().find(|size| size.facelets() == letters.len())?;
    let faces = || order.into_iter().zip(letters.chunks(letters.len() / order.len()));
    let of = |face: Face| faces().find(|(on, _)| *on == face).map(|(_, colours)| colours.iter().copied());
    Facelets::new(size, Face::ALL.into_iter().filter_map(of).flatten().collect())
}

/// Reads letters of faces; `None` for anything else.
pub(crate) fn parse(text: &str) -> Option<Facelets> {
    read(text, Face::ALL)
}

/// Reads what version 0 had; `None` for anything else.
pub(crate) fn parse_0(text: &str) -> Option<Facelets> {
    read(text, ORDER_0)
}

/// Writes letters of faces.
pub(crate) fn text(facelets: &Facelets) -> String {
    Face::ALL.into_iter().flat_map(|face| facelets.face(face)).map(|colour| colour.letter()).collect()
}
