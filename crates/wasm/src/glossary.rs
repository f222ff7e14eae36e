//! Words of the trade with what they mean and, where one is easy, a picture.

use blind::Solver;
use cube::{Algorithm, Orbit, Size, State};
use draw::{Bead, Mark, Place, Strand, Theme, Thread, View};
use serde::Serialize;
use voice::Word;

use crate::Failure;
use crate::call::Call;
use crate::look::palette;

/// A word of the trade.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct WordSaid {
    /// Its name, the same in every language.
    pub name: String,
    /// The word itself.
    pub title: String,
    /// The forms in which it is met, the longest first.
    pub forms: Vec<String>,
    /// What it means.
    pub means: String,
    /// A picture of it, if there is an easy one.
    pub picture: Option<String>,
}

/// Moves after which the memo of a kind shows what a word means.
const SHOWN: [(&str, Orbit, &str); 5] = [
    ("memo", Orbit::Corner, "F' U' R' F R U"),
    ("new-cycle", Orbit::Midge, "M2 U2 M2 U2 R2 D R2 D'"),
    ("parity", Orbit::Corner, "U R2 F"),
    ("flipped", Orbit::Midge, "M' U M' U M' U2 M U M U M U2"),
    ("twisted", Orbit::Corner, "R U R' U R U2 R' L' U' L U' L' U2 L"),
];

/// The size of the pictures: the smallest that has all the kinds of [`SHOWN`].
const PICTURED: Size = Size::THREE;

pub(crate) fn glossary(call: &Call<'_>) -> Result<Vec<WordSaid>, Failure> {
    let solver = Solver::new(PICTURED, blind::Conventions::default());
    let words = voice::glossary(call.voice.language());
    words.into_iter().map(|word| explained(call, &solver, word)).collect()
}

fn explained(call: &Call<'_>, solver: &Solver, word: Word) -> Result<WordSaid, Failure> {
    let Word { name, title, forms, means } = word;
    let picture = match SHOWN.iter().find(|(of, ..)| *of == name) {
        Some((_, orbit, moves)) => Some(strand(call, solver, *orbit, moves, &title)?),
        None if name == "buffer" || name == "sticker" => Some(buffer(call, solver, &title)),
        None => None,
    };
    Ok(WordSaid { name, title, forms, means, picture })
}

/// The memo of a kind after some moves, as a thread.
fn strand(
    call: &Call<'_>,
    solver: &Solver,
    orbit: Orbit,
    moves: &str,
    title: &str,
) -> Result<String, Failure> {
    let voice = call.voice;
    let algorithm =
        Algorithm::parse(moves, solver.size()).map_err(|error| Failure::new(voice.parse_error(&error)))?;
    let state = State::solved(solver.size()).after(&algorithm.flatten());
    let memo = solver.memo(&state).map_err(|error| crate::names::fault(voice, error))?;
    let letters = &solver.conventions().kind(orbit).letters;
    let strands = memo
        .part(orbit)
        .map(|trace| Strand::of(trace, voice.kinds(orbit), |_, target| Bead::new(letters.of(target))));
    let mut thread = Thread::new(strands.into_iter().collect(), title.to_owned());
    thread.theme = Theme::Page;
    Ok(thread.svg().into_string())
}

/// The solved puzzle with the corners' buffer marked.
fn buffer(call: &Call<'_>, solver: &Solver, title: &str) -> String {
    let conventions = solver.conventions();
    let buffer = conventions.kind(Orbit::Corner).buffer;
    draw::puzzle(&State::solved(solver.size()), conventions, palette(call.voice, conventions), title)
        .theme(Theme::Page)
        .mark(Place::new(Orbit::Corner, buffer), Mark::Buffer)
        .solid(&View::default())
        .into_string()
}
