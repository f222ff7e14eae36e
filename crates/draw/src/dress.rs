//! How each part of a picture looks: attributes where a picture stands alone, a class where a page has rules of its own.

use crate::glow::Glow;
use crate::svg::{Ink, MONO, Num, Tag, Theme};

/// What a shape is there for.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Part {
    /// The thread between beads.
    Thread,
    /// Where it runs back under a row.
    Far,
    /// The strands of its loose end.
    Fray,
    /// The dot that ties it off.
    Crimp,
    /// What keeps a strand apart from the one that it passes over.
    Casing,
    /// What a pair lies in.
    Cradle,
    /// A bead with all that belongs to it.
    Bead(Glow, bool),
    /// Its round shape.
    Round(Glow, bool),
    /// Its letter.
    Letter(Glow, bool),
    /// The ring round the bead in hand.
    Halo,
    /// The notches of a wrong bead.
    Crack,
    /// What a bead is filled with from below.
    Sure,
    /// The buffer's tag, and what stands in it.
    Tag,
    TagLetter,
    /// The name of a thread and the note beside it.
    Name,
    Note,
}

/// The class of a bead.
const fn bead_class(glow: Glow, wrong: bool) -> &'static str {
    match (wrong, glow) {
        (true, Glow::Now) => "bead cracked now",
        (true, _) => "bead cracked",
        (false, Glow::Known) => "bead bone",
        (false, Glow::Ahead) => "bead hollow",
        (false, Glow::Now) => "bead silk now",
        (false, Glow::Done) => "bead silk",
    }
}

impl Part {
    const fn class(self) -> &'static str {
        match self {
            Self::Thread => "th",
            Self::Far => "th ret",
            Self::Fray => "th fray",
            Self::Crimp => "crimp",
            Self::Casing => "cas",
            Self::Cradle => "cap",
            Self::Bead(glow, wrong) => bead_class(glow, wrong),
            Self::Round(..) => "b",
            Self::Letter(..) => "bl",
            Self::Halo => "halo",
            Self::Crack => "crack",
            Self::Sure => "sure",
            Self::Tag => "tag",
            Self::TagLetter => "tagt",
            Self::Name => "lab",
            Self::Note => "labn",
        }
    }
}

/// Dresses a shape: with its class on velvet, with attributes in every other theme.
pub(crate) fn wear(theme: Theme, tag: Tag<'_>, part: Part) -> Tag<'_> {
    if theme == Theme::Velvet {
        return tag.with("class", part.class());
    }
    let line = |tag, ink, width| line(theme, tag, ink, width);
    let words = |tag, ink| words(theme, tag, ink);
    match part {
        Part::Thread => line(tag, Ink::Thread, 3.0),
        Part::Far => line(tag, Ink::Thread, 1.25).with("stroke-opacity", ".75"),
        Part::Fray => line(tag, Ink::Thread, 1.5),
        Part::Crimp => tag.with("fill", theme.ink(Ink::Thread)),
        Part::Casing => {
            tag.with("fill", "none").with("stroke", theme.ink(Ink::Cradle)).with("stroke-width", 6.5)
        }
        Part::Cradle => {
            tag.with("fill", "none").with("stroke", theme.ink(Ink::Cradle)).with("stroke-linecap", "round")
        }
        Part::Bead(..) => tag,
        Part::Round(glow, wrong) => {
            let (fill, edge, width) = match (wrong, glow) {
                (true, _) => (Ink::Wrong, Ink::Wrong, 2.0),
                (false, Glow::Known) => (Ink::Paper, Ink::Thread, 2.25),
                (false, Glow::Ahead) => (Ink::Paper, Ink::Quiet, 1.5),
                (false, Glow::Now | Glow::Done) => (Ink::Thread, Ink::Thread, 2.25),
            };
            tag.with("fill", theme.ink(fill)).with("stroke", theme.ink(edge)).with("stroke-width", Num(width))
        }
        Part::Letter(glow, wrong) => {
            let light = wrong || matches!(glow, Glow::Now | Glow::Done);
            tag.with("font-weight", 650).with("fill", theme.ink(if light { Ink::Paper } else { Ink::Strong }))
        }
        Part::Halo => line(tag, Ink::Thread, 2.0),
        Part::Crack => line(tag, Ink::Paper, 2.25),
        Part::Sure => tag.with("fill", theme.ink(Ink::Thread)).with("fill-opacity", ".28"),
        Part::Tag => tag
            .with("fill", theme.ink(Ink::Paper))
            .with("stroke", theme.ink(Ink::Thread))
            .with("stroke-width", 2),
        Part::TagLetter => tag
            .with("font-size", Num(14.5))
            .with("font-family", MONO)
            .with("font-weight", 600)
            .with("fill", theme.ink(Ink::Strong)),
        Part::Name => words(tag, Ink::Strong).with("font-weight", 600),
        Part::Note => tag.with("font-weight", 400).with("fill", theme.ink(Ink::Quiet)),
    }
}

fn line(theme: Theme, tag: Tag<'_>, ink: Ink, width: f64) -> Tag<'_> {
    tag.with("fill", "none")
        .with("stroke", theme.ink(ink))
        .with("stroke-width", Num(width))
        .with("stroke-linecap", "round")
        .with("stroke-linejoin", "round")
}

fn words(theme: Theme, tag: Tag<'_>, ink: Ink) -> Tag<'_> {
    tag.with("font-size", 15).with("text-anchor", "start").with("fill", theme.ink(ink))
}
