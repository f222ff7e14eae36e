//! Words of requests read as values: sizes, kinds of piece, stickers, faces, choices.

use blind::{Conventions, kind_named};
use cube::{Algorithm, Face, NotProven, Orbit, ParseError, Size, Sticker};
use voice::Voice;

use crate::{Failure, Place};

/// The size with so many layers.
pub(crate) fn size(voice: &Voice, layers: u8) -> Result<Size, Failure> {
    Size::new(layers)
        .ok_or_else(|| Failure::new(voice.say("size-unknown", &[("layers", u32::from(layers).into())])))
}

/// The kind of piece with a name.
pub(crate) fn kind(voice: &Voice, name: &str) -> Result<Orbit, Failure> {
    kind_named(name).ok_or_else(|| no_sticker(voice, name))
}

/// The sticker of a kind with a name.
pub(crate) fn sticker(voice: &Voice, orbit: Orbit, name: &str) -> Result<Sticker, Failure> {
    orbit.sticker(name).ok_or_else(|| no_sticker(voice, name))
}

/// The face that a letter names.
pub(crate) fn face(voice: &Voice, letter: &str) -> Result<Face, Failure> {
    let mut letters = letter.chars();
    match (letters.next(), letters.next()) {
        (Some(letter), None) => Face::from_letter(letter),
        _ => None,
    }
    .ok_or_else(|| no_sticker(voice, letter))
}

/// One of a list of choices by its name.
pub(crate) fn choice<T: Copy>(
    voice: &Voice,
    all: &[T],
    name: impl Fn(T) -> &'static str,
    word: &str,
) -> Result<T, Failure> {
    all.iter().copied().find(|&one| name(one) == word).ok_or_else(|| {
        let known = all.iter().map(|&one| name(one)).collect::<Vec<_>>().join(", ");
        Failure::new(voice.say("toml-unknown-word", &[("word", word.into()), ("known", known.into())]))
    })
}

/// Moves as the solver writes them, with the place of what is wrong with them.
pub(crate) fn moves(
    voice: &Voice,
    conventions: &Conventions,
    size: Size,
    text: &str,
) -> Result<Algorithm, Failure> {
    conventions.moves(text, size).map_err(|error| mistyped(voice, text, &error))
}

/// An algorithm of a sheet as it was typed, with the place of what is wrong with it.
pub(crate) fn algorithm(voice: &Voice, size: Size, text: &str) -> Result<Algorithm, Failure> {
    Algorithm::parse(text, size).map_err(|error| mistyped(voice, text, &error))
}

/// What is wrong with moves that were typed, and where.
pub(crate) fn mistyped(voice: &Voice, text: &str, error: &ParseError) -> Failure {
    Failure::at(voice.parse_error(error), Place::of(text, error))
}

/// A claim that did not stand its proof: a fault of the program, said rather than shown as an answer.
pub(crate) fn fault(voice: &Voice, error: NotProven) -> Failure {
    Failure::new(voice.not_proven(error))
}

fn no_sticker(voice: &Voice, text: &str) -> Failure {
    Failure::new(voice.say("no-such-sticker", &[("text", text.into())]))
}
