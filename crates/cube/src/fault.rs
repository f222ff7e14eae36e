//! Why turning cannot lead to what one sees: which piece says so, and what may have happened.

use crate::{Face, Orbit, Sticker};
use thiserror::Error;

/// One reason why turning cannot lead to a pattern of colours.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum Fault {
    /// A colour does not occur N² times.
    #[error("the colour of {colour} occurs {count} times, not {expected}")]
    ColourCount {
        /// The colour, named by its face on the solved cube.
        colour: Face,
        /// How often it occurs.
        count: usize,
        /// How often it should.
        expected: usize,
    },
    /// The fixed centres do not lie as on a cube with this colour scheme.
    #[error("the centres of U L F R B D show {}; the solved cube cannot be held so", letters(.found))]
    Centres {
        /// Colours of the centres of U L F R B D.
        found: [Face; 6],
    },
    /// A colour does not occur four times among centres of one kind.
    #[error("on the 24 {orbit} places the colour of {colour} occurs {count} times, not 4")]
    CentreCount {
        /// The kind of centre.
        orbit: Orbit,
        /// The colour.
        colour: Face,
        /// How often it occurs.
        count: usize,
    },
    /// No piece has these colours.
    #[error("no {orbit} has the colours {}, which {} shows", letters(.colours), .orbit.piece_name(*.place))]
    NoSuchPiece {
        /// The kind of piece.
        orbit: Orbit,
        /// A sticker of the place.
        place: Sticker,
        /// The colours there, clockwise from `place`.
        colours: Vec<Face>,
    },
    /// A corner has its colours the wrong way round, as in a mirror.
    #[error("no corner has the colours {} clockwise, which {} shows; a corner has them the other way round", letters(.colours), .orbit.piece_name(*.place))]
    Mirrored {
        /// The kind of piece.
        orbit: Orbit,
        /// A sticker of the place.
        place: Sticker,
        /// The colours there, clockwise from `place`.
        colours: Vec<Face>,
    },
    /// Two places show the same piece.
    #[error(
        "{} and {} show the same {orbit}, the one of {}",
        .orbit.piece_name(.places[0]),
        .orbit.piece_name(.places[1]),
        .orbit.piece_name(*.piece)
    )]
    SamePiece {
        /// The kind of piece.
        orbit: Orbit,
        /// The two places.
        places: [Sticker; 2],
        /// The piece that both show, by the sticker that the second place shows.
        piece: Sticker,
    },
    /// The corners are turned, all together, by a third of a turn too much.
    #[error(
        "the twists of the corners do not add up: one corner is turned {}{}",
        if *.clockwise { "clockwise" } else { "counter-clockwise" },
        in_place(Orbit::Corner, "turned this way", .suspects)
    )]
    Twist {
        /// Whether the surplus is one clockwise third (otherwise one counter-clockwise).
        clockwise: bool,
        /// Corners that are in their places but turned.
        suspects: Vec<Sticker>,
    },
    /// An odd number of midges is flipped.
    #[error("an odd number of midges is flipped{}", in_place(Orbit::Midge, "flipped", .suspects))]
    Flip {
        /// Midges that are in their places but flipped.
        suspects: Vec<Sticker>,
    },
    /// Two pieces are exchanged: corners and midges do not agree in parity.
    #[error("two pieces are exchanged{}", exchanged(.suspects))]
    Swap {
        /// Pairs of pieces that have exchanged places, if the rest looks undisturbed.
        suspects: Vec<(Orbit, Sticker, Sticker)>,
    },
}

/// What happened to the puzzle, or to whoever wrote it down.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Physical {
    /// One sticker was read or written wrong; with this colour the pieces are all there.
    Misread {
        /// The kind of piece.
        orbit: Orbit,
        /// The place of the sticker.
        place: Sticker,
        /// What was read.
        seen: Face,
        /// What it must be.
        rather: Face,
    },
    /// One sticker was read or written wrong, but which cannot be told (centres of a colour and wings look alike),
    /// or it has no name of its own (a fixed centre, the second sticker of a wing).
    MisreadAmong {
        /// What was read.
        seen: Face,
        /// What it must be.
        rather: Face,
        /// The facelets of which any one will do: face, row and column from 0 as the face is looked at.
        facelets: Vec<(Face, u8, u8)>,
    },
    /// One corner was turned in its place by hand: clockwise, or not.
    CornerTwisted {
        /// Which way it was turned.
        clockwise: bool,
        /// Corners that are in their places but turned that way; empty when any corner may be meant.
        suspects: Vec<Sticker>,
    },
    /// One edge was taken out and put back flipped.
    EdgeFlipped {
        /// Midges that are in their places but flipped; empty when any may be meant.
        suspects: Vec<Sticker>,
    },
    /// Two pieces were taken out and put back in each other's place.
    PiecesExchanged {
        /// Pairs that have exchanged places; empty when any two of a kind may be meant.
        suspects: Vec<(Orbit, Sticker, Sticker)>,
    },
    /// Two pieces of a kind were put back in each other's place, one of them turned or flipped besides.
    ExchangedAndTurned {
        /// The kind: corners if the twists do not add up, midges if the flips do not.
        orbit: Orbit,
        /// Pairs that have exchanged places; empty when any two may be meant.
        suspects: Vec<(Sticker, Sticker)>,
    },
    /// Two stickers of one corner were written, or stuck on, in each other's place.
    StickersExchanged {
        /// The places of the two.
        places: [Sticker; 2],
    },
    /// The cube was taken apart: more than one of the above.
    TakenApart,
}

/// A pattern of colours that turning cannot lead to.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
#[error("turning cannot lead here: {}", .faults.iter().map(ToString::to_string).collect::<Vec<_>>().join("; "))]
pub struct Unreachable {
    /// All reasons, colours first, then pieces, then sums over pieces.
    pub faults: Vec<Fault>,
    /// The one thing that would explain them, if there is one.
    pub physical: Option<Physical>,
}

/// Colours by the letters of their faces.
fn letters(colours: &[Face]) -> String {
    colours.iter().map(|colour| colour.letter().to_string()).collect::<Vec<_>>().join(" ")
}

/// Which pieces are at home but turned, if any.
fn in_place(orbit: Orbit, how: &str, suspects: &[Sticker]) -> String {
    if suspects.is_empty() {
        return String::new();
    }
    let names: Vec<&str> = suspects.iter().map(|&sticker| orbit.piece_name(sticker)).collect();
    format!(" (in place but {how}: {})", names.join(", "))
}

/// Which pieces lie in each other's places, if any.
fn exchanged(suspects: &[(Orbit, Sticker, Sticker)]) -> String {
    if suspects.is_empty() {
        return String::new();
    }
    let pairs: Vec<String> = suspects
        .iter()
        .map(|&(orbit, a, b)| format!("{} and {}", orbit.piece_name(a), orbit.piece_name(b)))
        .collect();
    format!(" (in each other's places: {})", pairs.join(", "))
}
