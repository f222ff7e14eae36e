//! Why turning cannot lead to what was entered, and what was probably done.

use crate::Voice;
use blind::Conventions;
use cube::{Face, Fault, Orbit, Physical, Sticker, Unreachable};

impl Voice {
    /// All reasons, a sentence each, and last what would explain them.
    pub fn unreachable(&self, error: &Unreachable, conventions: &Conventions) -> Vec<String> {
        let mut said: Vec<String> = error.faults.iter().map(|fault| self.fault(fault, conventions)).collect();
        if let Some(physical) = &error.physical {
            said.push(self.physical(physical, conventions));
        }
        said
    }

    fn seen(&self, faces: &[Face], conventions: &Conventions) -> String {
        faces.iter().map(|&face| self.colour(conventions.colour(face))).collect::<Vec<_>>().join("-")
    }

    /// One reason why turning cannot lead to a pattern of colours.
    pub fn fault(&self, fault: &Fault, conventions: &Conventions) -> String {
        let colour = |face: Face| self.colour(conventions.colour(face));
        match fault {
            Fault::ColourCount { colour: face, count, expected } => self.say(
                "fault-colour-count",
                &[
                    ("colour", colour(*face).into()),
                    ("count", (*count).into()),
                    ("expected", (*expected).into()),
                ],
            ),
            Fault::Centres { found } => {
                self.say("fault-centres", &[("found", self.seen(found, conventions).into())])
            }
            Fault::CentreCount { orbit, colour: face, count } => self.say(
                "fault-centre-count",
                &[
                    ("kinds", self.kinds(*orbit).into()),
                    ("colour", colour(*face).into()),
                    ("count", (*count).into()),
                ],
            ),
            Fault::NoSuchPiece { orbit, place, colours } => self.say(
                "fault-no-such-piece",
                &[
                    ("kind", self.kind(*orbit).into()),
                    ("place", orbit.piece_name(*place).into()),
                    ("colours", self.seen(colours, conventions).into()),
                ],
            ),
            Fault::Mirrored { orbit, place, colours } => self.say(
                "fault-mirrored",
                &[
                    ("place", orbit.piece_name(*place).into()),
                    ("colours", self.seen(colours, conventions).into()),
                ],
            ),
            Fault::SamePiece { orbit, places, piece } => self.say(
                "fault-same-piece",
                &[
                    ("kind", self.kind(*orbit).into()),
                    ("first", orbit.piece_name(places[0]).into()),
                    ("second", orbit.piece_name(places[1]).into()),
                    ("colours", self.seen(orbit.faces(*piece), conventions).into()),
                ],
            ),
            Fault::Twist { clockwise, .. } => {
                self.word(if *clockwise { "fault-twist" } else { "fault-twist-counter" })
            }
            Fault::Flip { .. } => self.word("fault-flip"),
            Fault::Swap { .. } => self.word("fault-swap"),
        }
    }

    /// What was probably done to the puzzle, or written down wrong.
    pub fn physical(&self, physical: &Physical, conventions: &Conventions) -> String {
        let colour = |face: Face| self.colour(conventions.colour(face));
        match physical {
            Physical::Misread { orbit, place, seen, rather } => self.say(
                "physical-misread",
                &[
                    ("place", orbit.name(*place).into()),
                    ("seen", colour(*seen).into()),
                    ("rather", colour(*rather).into()),
                ],
            ),
            Physical::MisreadAmong { seen, rather, facelets } => {
                let places: Vec<String> = facelets
                    .iter()
                    .map(|&(face, row, column)| {
                        self.say(
                            "physical-cell",
                            &[
                                ("face", face.to_string().into()),
                                ("row", (row + 1).into()),
                                ("column", (column + 1).into()),
                            ],
                        )
                    })
                    .collect();
                self.say(
                    "physical-misread-among",
                    &[
                        ("places", self.list(&places).into()),
                        ("seen", colour(*seen).into()),
                        ("rather", colour(*rather).into()),
                    ],
                )
            }
            Physical::CornerTwisted { clockwise, suspects } => {
                let turn_back =
                    self.word(if *clockwise { "turn-counter-clockwise" } else { "turn-clockwise" });
                self.suspects("physical-twisted", Orbit::Corner, suspects, &turn_back)
            }
            Physical::EdgeFlipped { suspects } => {
                self.suspects("physical-flipped", Orbit::Midge, suspects, "")
            }
            Physical::PiecesExchanged { suspects } => {
                let pairs: Vec<String> =
                    suspects.iter().map(|&(orbit, a, b)| pair_of_pieces(orbit, a, b)).collect();
                if pairs.is_empty() {
                    self.word("physical-exchanged-any")
                } else {
                    self.say("physical-exchanged", &[("pairs", self.list(&pairs).into())])
                }
            }
            Physical::ExchangedAndTurned { orbit, suspects } => {
                let pairs: Vec<String> =
                    suspects.iter().map(|&(a, b)| pair_of_pieces(*orbit, a, b)).collect();
                let kinds = ("kinds", self.kinds(*orbit).into());
                if pairs.is_empty() {
                    self.say("physical-exchanged-turned-any", &[kinds])
                } else {
                    self.say("physical-exchanged-turned", &[kinds, ("pairs", self.list(&pairs).into())])
                }
            }
            Physical::StickersExchanged { places: [one, other] } => self.say(
                "physical-stickers-exchanged",
                &[("first", Orbit::Corner.name(*one).into()), ("second", Orbit::Corner.name(*other).into())],
            ),
            Physical::TakenApart => self.word("physical-taken-apart"),
        }
    }

    fn suspects(&self, message: &str, orbit: Orbit, suspects: &[Sticker], back: &str) -> String {
        if suspects.is_empty() {
            return self.say(&format!("{message}-any"), &[("back", back.into())]);
        }
        let pieces = self.pieces(orbit, suspects).into();
        self.say(message, &[("pieces", pieces), ("back", back.into()), ("count", suspects.len().into())])
    }
}

/// Two pieces by their names.
fn pair_of_pieces(orbit: Orbit, one: Sticker, other: Sticker) -> String {
    format!("{}–{}", orbit.piece_name(one), orbit.piece_name(other))
}
