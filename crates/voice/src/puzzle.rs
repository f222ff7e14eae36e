//! What colours, pieces, kinds and holds are called.

use crate::Voice;
use blind::{Colour, Conventions, Letters, kind_name};
use cube::{Face, Orbit, Rotation, Sticker, display_turns};

/// The most pieces that are told by name where a number would do: all that can be left on a 3x3.
pub(crate) const MOST_NAMED: usize = 12;

impl Voice {
    /// A colour's name: translated where it is one of the six usual ones, otherwise as the solver calls it.
    pub fn colour(&self, colour: &Colour) -> String {
        let message = format!("colour-{}", colour.name);
        if self.knows(&message) { self.word(&message) } else { colour.name.clone() }
    }

    /// The colour that belongs to a face in the solver's hold.
    pub fn colour_held(&self, face: Face, conventions: &Conventions) -> String {
        self.colour(conventions.colour_held(face))
    }

    /// Colours of a piece in the solver's hold, joined: `white-red-blue`.
    pub fn colours(&self, faces: &[Face], conventions: &Conventions) -> String {
        faces.iter().map(|&face| self.colour_held(face, conventions)).collect::<Vec<_>>().join("-")
    }

    /// A kind of piece: "corner", "edge", "inner wing".
    pub fn kind(&self, orbit: Orbit) -> String {
        self.word(&format!("kind-{}", kind_name(orbit)))
    }

    /// Several of a kind: "corners", "edges", "inner wings".
    pub fn kinds(&self, orbit: Orbit) -> String {
        self.word(&format!("kinds-{}", kind_name(orbit)))
    }

    /// The same as a heading: "Corners".
    pub fn kinds_headed(&self, orbit: Orbit) -> String {
        let kinds = self.kinds(orbit);
        let mut signs = kinds.chars();
        signs.next().map_or_else(String::new, |first| first.to_uppercase().chain(signs).collect())
    }

    /// Several kinds as a list: "corners, edges and wings".
    pub fn kinds_listed(&self, orbits: &[Orbit]) -> String {
        self.list(&orbits.iter().map(|&orbit| self.kinds(orbit)).collect::<Vec<_>>())
    }

    /// A number with so many decimals, as the language writes it.
    ///
    /// ```
    /// use voice::{Language, Voice};
    /// assert_eq!(Voice::new(Language::English).decimal(1.5, 2), "1.50");
    /// assert_eq!(Voice::new(Language::German).decimal(-0.25, 1), "-0,2");
    /// ```
    pub fn decimal(&self, value: f64, digits: usize) -> String {
        let text = format!("{value:.digits$}");
        match text.split_once('.') {
            Some((whole, rest)) => self.say("decimal", &[("whole", whole.into()), ("rest", rest.into())]),
            None => text,
        }
    }

    /// How many to one, with a decimal below a thousand: `37.4`, `1,203`.
    ///
    /// ```
    /// use voice::{Language, Voice};
    /// assert_eq!(Voice::new(Language::English).to_one(37.42), "37.4");
    /// assert_eq!(Voice::new(Language::German).to_one(1203.4), "1.203");
    /// ```
    pub fn to_one(&self, ratio: f64) -> String {
        if ratio < 999.95 { self.decimal(ratio, 1) } else { self.grouped(&format!("{ratio:.0}")) }
    }

    /// Digits in groups of three, as the language writes them; there may be more than any number holds.
    pub(crate) fn grouped(&self, digits: &str) -> String {
        let groups: Vec<&str> =
            digits.as_bytes().rchunks(3).rev().filter_map(|group| str::from_utf8(group).ok()).collect();
        groups.join(self.language().numbers().separator())
    }

    /// A sticker with its letter: `RUB (N)`.
    pub fn lettered(&self, orbit: Orbit, sticker: Sticker, letters: &Letters) -> String {
        format!("{} ({})", orbit.name(sticker), letters.of(sticker))
    }

    /// Pieces by name, as a list; more than a person takes in as a number: "17 wings".
    pub(crate) fn pieces_or_number(&self, orbit: Orbit, stickers: &[Sticker]) -> String {
        if stickers.len() <= MOST_NAMED {
            return self.pieces(orbit, stickers);
        }
        self.say("pieces-number", &[("number", stickers.len().into()), ("kinds", self.kinds(orbit).into())])
    }

    /// Pieces by name, as a list.
    pub fn pieces(&self, orbit: Orbit, stickers: &[Sticker]) -> String {
        let names: Vec<String> =
            stickers.iter().map(|&sticker| orbit.piece_name(sticker).to_owned()).collect();
        self.list(&names)
    }

    /// How a hold is taken: "white up, green front becomes yellow up, red front: x2 y".
    pub fn hold(&self, rotation: Rotation, conventions: &Conventions) -> String {
        let name = |face: Face| self.colour(conventions.colour(face));
        let now = |face: Face| name(rotation.inverse().image(face));
        if rotation == Rotation::NONE {
            return self
                .say("hold-as-scrambled", &[("up", name(Face::U).into()), ("front", name(Face::F).into())]);
        }
        self.say(
            "hold-turned",
            &[
                ("up", name(Face::U).into()),
                ("front", name(Face::F).into()),
                ("newup", now(Face::U).into()),
                ("newfront", now(Face::F).into()),
                ("moves", display_turns(rotation.turns()).to_string().into()),
            ],
        )
    }
}

/// The word by which the catalogues choose how a kind is spoken of; their languages differ by gender.
pub(crate) const fn sort(orbit: Orbit) -> &'static str {
    match orbit {
        Orbit::Corner => "corner",
        Orbit::Midge => "edge",
        Orbit::Wing { .. } => "wing",
        Orbit::XCentre { .. } | Orbit::TCentre { .. } | Orbit::Oblique(_) => "centre",
    }
}
