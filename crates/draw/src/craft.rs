//! The craft's own things as pictures: conventions as colours and letters, a memo as a thread, a trace as a strip.

use crate::colour::Rgb;
use crate::grid::{CellText, Grid, GridWords, Head};
use crate::palette::{Palette, Shade};
use crate::picture::Picture;
use crate::place::{Chain, Labels, Mark, Place};
use crate::solid::View;
use crate::strip::{Frame, Strip};
use crate::thread::{Bead, Strand, Thread};
use blind::{Conventions, Memo, Role, Trace};
use cube::{Face, Orbit, Size, State, Sticker};
use sheet::{CycleCase, Origin, Row, Sheet, Verdict};
use std::collections::BTreeMap;

impl Palette {
    /// The colours of the conventions, in the hold in which scrambles are made. A colour without a shade of its own
    /// gets the project's shade of that name; `names` gives what each colour is called to the reader.
    ///
    /// ```
    /// use blind::Conventions;
    /// use draw::Palette;
    /// let palette = Palette::of(&Conventions::default(), |colour| colour.name.clone());
    /// assert_eq!(palette, Palette::default());
    /// ```
    pub fn of(conventions: &Conventions, names: impl Fn(&blind::Colour) -> String) -> Self {
        let usual = Self::default();
        let letters = conventions.colour_letters();
        Self::new(Face::ALL.map(|face| {
            let colour = conventions.colour(face);
            let known = Face::ALL.into_iter().find(|&other| usual[other].name == colour.name);
            let shade = match (colour.shade, known) {
                (Some([red, green, blue]), _) => Rgb::new(red, green, blue),
                (None, Some(other)) => usual[other].colour,
                (None, None) => usual[face].colour,
            };
            let letter = letters.map_or(face.letter(), |letters| letters[face.index()]);
            Shade::new(shade, names(colour), letter)
        }))
    }
}

impl Labels {
    /// The letters of the conventions, on all kinds that a size has.
    pub fn of(conventions: &Conventions, size: Size) -> Self {
        Orbit::of(size).iter().fold(Self::none(), |labels, &orbit| {
            let letters = &conventions.kind(orbit).letters;
            let mut texts: [String; 24] = std::array::from_fn(|_| String::new());
            for sticker in Sticker::all() {
                letters.of(sticker).clone_into(&mut texts[sticker.index()]);
            }
            labels.with(orbit, texts)
        })
    }
}

impl Strand {
    /// The memo of one kind as a thread: a bead a letter, a knot at each break, a loop for a piece turned in its
    /// place, a loose end for parity, which pieces that look alike do not have. `bead` makes the bead of a letter by its number.
    pub fn of(trace: &Trace, name: impl Into<String>, mut bead: impl FnMut(usize, Sticker) -> Bead) -> Self {
        let mut strand = Self::new(name, trace.orbit().name(trace.buffer()));
        let mut first_of_loop = None;
        for (letter, step) in trace.steps().iter().enumerate() {
            let bead = bead(letter, step.target);
            strand = match (step.role, first_of_loop.take()) {
                (Role::TurnedFirst, _) => {
                    first_of_loop = Some(bead);
                    strand
                }
                (Role::TurnedSecond, Some(first)) => strand.turned(first, bead),
                (Role::Break, _) => strand.knot().bead(bead),
                (Role::Follow | Role::Close | Role::TurnedSecond, _) => strand.bead(bead),
            };
        }
        strand.with_loose_end(trace.is_odd() && !trace.orbit().looks_alike())
    }
}

impl Thread {
    /// A whole memo as a thread a kind. `name` says what a kind is called.
    pub fn of(
        memo: &Memo,
        conventions: &Conventions,
        name: impl Fn(Orbit) -> String,
        title: impl Into<String>,
    ) -> Self {
        let strands = memo
            .parts()
            .iter()
            .map(|trace| {
                let letters = &conventions.kind(trace.orbit()).letters;
                Strand::of(trace, name(trace.orbit()), |_, target| Bead::new(letters.of(target)))
            })
            .collect();
        let mut thread = Self::new(strands, title);
        thread.paired = conventions.pairs;
        thread
    }
}

/// A puzzle as it is held to be solved: what it looks like, in the colours and letters of the conventions.
///
/// `looks` is the state as it stands in space (not renamed), so that its colours are those of the scramble's hold.
pub fn puzzle(
    looks: &State,
    conventions: &Conventions,
    palette: Palette,
    title: impl Into<String>,
) -> Picture {
    Picture::new(looks.facelets(), title).palette(palette).labels(Labels::of(conventions, looks.size()))
}

/// A case of a three-cycle on the puzzle as it looks: its three pieces in colour, all others back, their letters, and the
/// thread from the buffer by the first target to the second. `now` is the state of the pieces; `begun` what was turned
/// since the case was there to be solved, which takes its places along.
pub fn case_picture(
    case: CycleCase,
    conventions: &Conventions,
    picture: Picture,
    now: &State,
    begun: &State,
) -> Picture {
    let CycleCase { orbit, buffer, first, second } = case;
    let goes = begun.orbit(orbit).inverse();
    let lies = now.orbit(orbit).inverse();
    let place = |sticker: Sticker| Place::new(orbit, goes.at(sticker));
    let ring = [buffer, first, second];
    let mut texts: [String; 24] = std::array::from_fn(|_| String::new());
    for &sticker in &ring[1..] {
        conventions.kind(orbit).letters.of(sticker).clone_into(&mut texts[place(sticker).sticker.index()]);
    }
    picture
        .labels(Labels::none().with(orbit, texts))
        .only(ring.map(|sticker| Place::new(orbit, lies.at(sticker))))
        .mark(place(buffer), Mark::Buffer)
        .mark(place(second), Mark::Target)
        .chain(Chain::new(ring.map(place)))
}

impl Grid {
    /// A sheet of one buffer to print, in the order of the letters: every row of it, the right ones first; what was found by search has
    /// a star. Rows that are not right are marked in their cells and told below by `refused`, and so are those whose case cannot be read.
    pub fn of(
        sheet: &Sheet,
        orbit: Orbit,
        buffer: Sticker,
        conventions: &Conventions,
        words: GridWords,
        refused: impl Fn(&Row, &Verdict) -> String,
    ) -> Self {
        let letters = &conventions.kind(orbit).letters;
        let other = |sticker: &Sticker| orbit.piece(*sticker) != orbit.piece(buffer);
        let order: Vec<Sticker> = letters.order().into_iter().filter(other).collect();
        let mut cells: BTreeMap<(Sticker, Sticker), Vec<CellText>> = BTreeMap::new();
        let mut below = Vec::new();
        for row in sheet.rows() {
            let here = row.case.is_none_or(|case| (case.orbit, case.buffer) == (orbit, buffer));
            let verdict = row.verdict();
            if !here || verdict == Verdict::Empty {
                continue;
            }
            let right = verdict == Verdict::Right;
            if !right {
                below.push(refused(row, &verdict));
            }
            if let Some(case) = row.case {
                let star = if right && row.origin == Origin::Search { " *" } else { "" };
                let text = CellText::new(&format!("{}{star}", row.algorithm), !right);
                cells.entry((case.first, case.second)).or_default().push(text);
            }
        }
        for entries in cells.values_mut() {
            entries.sort_by_key(|text| text.refused);
        }
        let head =
            |sticker: Sticker| -> Head { (letters.of(sticker).to_owned(), orbit.name(sticker).to_owned()) };
        let mut row = |first: Sticker| {
            let apart = |second: Sticker| orbit.piece(first) != orbit.piece(second);
            let of = |&second| apart(second).then(|| cells.remove(&(first, second)).unwrap_or_default());
            (head(first), order.iter().map(of).collect())
        };
        let rows = order.iter().map(|&first| row(first)).collect();
        Self { words, columns: order.iter().map(|&sticker| head(sticker)).collect(), rows, refused: below }
    }
}

impl Strip {
    /// A trace as pictures, one a letter: the sticker looked at and its way home. `picture` is the puzzle as it is
    /// held. A place that cannot be seen from the front is shown from behind.
    pub fn of(trace: &Trace, conventions: &Conventions, picture: &Picture, title: impl Into<String>) -> Self {
        let orbit = trace.orbit();
        let letters = &conventions.kind(orbit).letters;
        let frames = trace
            .steps()
            .iter()
            .map(|step| {
                let (place, target) = (Place::new(orbit, step.place), Place::new(orbit, step.target));
                let (marked, note) = if step.role.begins() {
                    (picture.clone().mark(target, Mark::Target), target.name().to_owned())
                } else {
                    let chain = Chain::new([place, target]);
                    let marked =
                        picture.clone().mark(place, Mark::Look).mark(target, Mark::Target).chain(chain);
                    (marked, format!("{} → {}", place.name(), target.name()))
                };
                Frame {
                    picture: marked.solid(&View::default().with_hidden(crate::Hidden::SwungOpen)),
                    letter: letters.of(step.target).to_owned(),
                    note,
                }
            })
            .collect();
        Self::new(frames, title)
    }
}
