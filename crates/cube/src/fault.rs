//! Whether turning can lead to what one sees, and if not, which piece says so.

use crate::layout::Layout;
use crate::perm::is_odd;
use crate::{Face, Facelets, Orbit, Perm, Rotation, Size, State, Sticker};
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
    #[error("the six centres do not lie as on the solved cube: {found:?}")]
    Centres {
        /// Colours of the centres of U L F R B D.
        found: [Face; 6],
    },
    /// A colour does not occur four times among centres of one kind.
    #[error("among the {orbit}s the colour of {colour} occurs {count} times, not 4")]
    CentreCount {
        /// The kind of centre.
        orbit: Orbit,
        /// The colour.
        colour: Face,
        /// How often it occurs.
        count: usize,
    },
    /// No piece has these colours.
    #[error("no {orbit} has the colours at {}", .orbit.piece_name(*.place))]
    NoSuchPiece {
        /// The kind of piece.
        orbit: Orbit,
        /// A sticker of the place.
        place: Sticker,
        /// The colours there, clockwise from `place`.
        colours: Vec<Face>,
    },
    /// A corner has its colours the wrong way round, as in a mirror.
    #[error("the corner at {} is a mirror image: its colours run the wrong way round", .orbit.piece_name(*.place))]
    Mirrored {
        /// The kind of piece.
        orbit: Orbit,
        /// A sticker of the place.
        place: Sticker,
        /// The colours there, clockwise from `place`.
        colours: Vec<Face>,
    },
    /// Two places show the same piece.
    #[error("{} and {} show the same {orbit}", .orbit.piece_name(.places[0]), .orbit.piece_name(.places[1]))]
    SamePiece {
        /// The kind of piece.
        orbit: Orbit,
        /// The two places.
        places: [Sticker; 2],
        /// The piece that both show, by the sticker that is at the first place.
        piece: Sticker,
    },
    /// The corners are turned, all together, by a third of a turn too much.
    #[error("the twists of the corners do not add up: one corner is turned {}", if *.clockwise { "clockwise" } else { "counter-clockwise" })]
    Twist {
        /// Whether the surplus is one clockwise third (otherwise one counter-clockwise).
        clockwise: bool,
        /// Corners that are in their places but turned.
        suspects: Vec<Sticker>,
    },
    /// An odd number of midges is flipped.
    #[error("an odd number of midges is flipped")]
    Flip {
        /// Midges that are in their places but flipped.
        suspects: Vec<Sticker>,
    },
    /// Two pieces are exchanged: corners and midges do not agree in parity.
    #[error("two pieces are exchanged")]
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

impl Facelets {
    /// The state that looks like this.
    ///
    /// Centres of one colour look alike; which of the four is which is then chosen in reading order.
    ///
    /// # Errors
    /// [`Unreachable`] with every reason found, named by piece.
    ///
    /// ```
    /// use cube::{Facelets, Physical};
    /// // The corner at UFR turned in its place.
    /// let seen: Facelets = "UUUURFRRUFFFDDDDLLLLBBBB".replace("UUUURFRRUFFF", "UUUFURRRFRFF").parse().unwrap();
    /// let no = seen.state().unwrap_err();
    /// assert!(matches!(no.physical, Some(Physical::CornerTwisted { .. })));
    /// ```
    pub fn state(&self) -> Result<State, Unreachable> {
        let size = self.size();
        let mut faults = self.colour_counts();
        let core = self.core().unwrap_or_else(|fault| {
            faults.push(fault);
            Rotation::NONE
        });
        let mut perms = [Perm::IDENTITY; Orbit::MOST];
        let mut misread = None;
        for (perm, &orbit) in perms.iter_mut().zip(Orbit::of(size)) {
            let mut found = Vec::new();
            let read = if orbit.looks_alike() {
                self.centres(orbit, &mut found)
            } else {
                self.pieces(orbit, &mut found)
            };
            if !found.is_empty() && misread.is_none() && !orbit.looks_alike() {
                misread = self.misread(orbit);
            }
            faults.extend(found);
            if let Some(table) = read {
                *perm = table;
            }
        }
        if !faults.is_empty() {
            return Err(Unreachable { faults, physical: misread });
        }
        let state = State::from_parts(size, core, perms);
        state.check_sums()?;
        Ok(state)
    }

    fn colour_counts(&self) -> Vec<Fault> {
        let expected = self.size().facelets() / 6;
        let mut counts = [0; 6];
        for at in 0..self.size().facelets() {
            counts[self.cell(at).index()] += 1;
        }
        Face::ALL
            .into_iter()
            .zip(counts)
            .filter(|&(_, count)| count != expected)
            .map(|(colour, count)| Fault::ColourCount { colour, count, expected })
            .collect()
    }

    /// How the fixed centres are turned.
    fn core(&self) -> Result<Rotation, Fault> {
        let Some(middle) = self.size().middle() else { return Ok(Rotation::NONE) };
        let found = Face::ALL.map(|face| self.get(face, middle - 1, middle - 1).unwrap_or(face));
        Rotation::from_images(found).map(Rotation::inverse).ok_or(Fault::Centres { found })
    }

    /// The colours at a place, clockwise from a sticker; a wing's second colour included.
    fn colours_from(&self, orbit: Orbit, place: Sticker) -> Vec<Face> {
        if let Orbit::Wing { .. } = orbit {
            let layout = Layout::of(self.size());
            let at = layout.orbits.iter().position(|&other| other == orbit).unwrap_or(0);
            return vec![self.colour_at(orbit, place), self.cell(layout.wing_backs[at][place.index()])];
        }
        orbit.stickers_from(place).map(|sticker| self.colour_at(orbit, sticker)).collect()
    }

    /// The sticker that shows these colours, clockwise, on the solved cube.
    fn sticker_of(orbit: Orbit, colours: &[Face]) -> Option<Sticker> {
        Sticker::all().find(|&sticker| solved_colours(orbit, sticker) == colours)
    }

    fn pieces(&self, orbit: Orbit, faults: &mut Vec<Fault>) -> Option<Perm> {
        let mut table = [0u8; 24];
        let mut shown: Vec<(Sticker, Sticker)> = Vec::new();
        let places = Sticker::all().filter(|&place| orbit.reference(orbit.piece(place)) == place);
        for place in places {
            let colours = self.colours_from(orbit, place);
            let Some(sticker) = Self::sticker_of(orbit, &colours) else {
                let mirror: Vec<Face> = colours.iter().rev().copied().collect();
                let mirrored = orbit == Orbit::Corner && Self::sticker_of(orbit, &mirror).is_some();
                faults.push(if mirrored {
                    Fault::Mirrored { orbit, place, colours }
                } else {
                    Fault::NoSuchPiece { orbit, place, colours }
                });
                continue;
            };
            if let Some(&(earlier, _)) =
                shown.iter().find(|&&(_, other)| orbit.piece(other) == orbit.piece(sticker))
            {
                faults.push(Fault::SamePiece { orbit, places: [earlier, place], piece: sticker });
            }
            shown.push((place, sticker));
            for steps in 0..orbit.stickers_per_piece() {
                table[orbit.turned(place, steps).index()] = orbit.turned(sticker, steps).index() as u8;
            }
        }
        if faults.is_empty() { Perm::new(table) } else { None }
    }

    fn centres(&self, orbit: Orbit, faults: &mut Vec<Fault>) -> Option<Perm> {
        let mut table = [0u8; 24];
        let mut used = [0u8; 6];
        for place in Sticker::all() {
            let colour = self.colour_at(orbit, place);
            let number = &mut used[colour.index()];
            table[place.index()] = colour.index() as u8 * 4 + *number % 4;
            *number += 1;
        }
        for (colour, &count) in Face::ALL.into_iter().zip(&used) {
            if count != 4 {
                faults.push(Fault::CentreCount { orbit, colour, count: count as usize });
            }
        }
        if faults.is_empty() { Perm::new(table) } else { None }
    }

    /// The one sticker whose change would make the pieces of an orbit complete, if there is exactly one such change.
    fn misread(&self, orbit: Orbit) -> Option<Physical> {
        let mut found = None;
        for place in Sticker::all() {
            let (row, column) = Self::cell_of(self.size(), orbit, place);
            let seen = self.colour_at(orbit, place);
            for rather in Face::ALL.into_iter().filter(|&colour| colour != seen) {
                let mut changed = self.clone();
                changed.set(place.face(), row, column, rather);
                let mut faults = Vec::new();
                changed.pieces(orbit, &mut faults);
                if faults.is_empty() && changed.colour_counts().is_empty() {
                    if found.is_some() {
                        return None;
                    }
                    found = Some(Physical::Misread { orbit, place, seen, rather });
                }
            }
        }
        found
    }
}

/// The colours of a sticker's piece on the solved cube, clockwise from the sticker.
fn solved_colours(orbit: Orbit, sticker: Sticker) -> Vec<Face> {
    match orbit {
        Orbit::Wing { .. } => orbit.faces(sticker).to_vec(),
        _ => orbit.stickers_from(sticker).map(Sticker::face).collect(),
    }
}

impl State {
    /// A state from how the fixed centres are turned (nothing on even sizes) and the permutation of each orbit.
    ///
    /// `perms` are in the order of [`Orbit::of`]; missing ones are identities. Stickers of one piece must stay
    /// together, which is part of what is checked.
    ///
    /// # Errors
    /// [`Unreachable`] when turning does not lead there.
    pub fn from_orbits(size: Size, core: Rotation, perms: &[Perm]) -> Result<Self, Unreachable> {
        let mut orbits = [Perm::IDENTITY; Orbit::MOST];
        let mut faults = Vec::new();
        for ((slot, &perm), &orbit) in orbits.iter_mut().zip(perms).zip(Orbit::of(size)) {
            *slot = perm;
            for place in Sticker::all().filter(|&place| orbit.reference(orbit.piece(place)) == place) {
                let apart = (0..orbit.stickers_per_piece())
                    .any(|steps| perm.at(orbit.turned(place, steps)) != orbit.turned(perm.at(place), steps));
                if apart {
                    let colours = orbit.stickers_from(place).map(|sticker| perm.at(sticker).face()).collect();
                    faults.push(Fault::NoSuchPiece { orbit, place, colours });
                }
            }
        }
        if !faults.is_empty() {
            return Err(Unreachable { faults, physical: None });
        }
        let core = if size.is_odd() { core } else { Rotation::NONE };
        let state = Self::from_parts(size, core, orbits);
        state.check_sums()?;
        Ok(state)
    }

    /// Sums over all pieces that no turn changes: the twist of corners, the flip of midges, and parity.
    ///
    /// Source: the textbook invariants of the cube group; the orders of our groups are compared with `SymPy` and GAP.
    fn check_sums(&self) -> Result<(), Unreachable> {
        let mut faults = Vec::new();
        let corner = Orbit::Corner;
        let twist = (0..corner.pieces()).map(|piece| self.turn_of(corner, piece)).sum::<u8>() % 3;
        if twist != 0 {
            let clockwise = twist == 1;
            let suspects = self.turned_at_home(corner, if clockwise { 1 } else { 2 });
            faults.push(Fault::Twist { clockwise, suspects });
        }
        if self.size().is_odd() {
            let midge = Orbit::Midge;
            if (0..midge.pieces()).map(|piece| self.turn_of(midge, piece)).sum::<u8>() % 2 == 1 {
                faults.push(Fault::Flip { suspects: self.turned_at_home(midge, 1) });
            }
            if self.is_odd(corner) ^ self.is_odd(midge) ^ self.core().is_odd() {
                faults.push(Fault::Swap { suspects: self.exchanged() });
            }
        }
        let physical = match faults.as_slice() {
            [] => return Ok(()),
            [Fault::Twist { clockwise, suspects }] => {
                Some(Physical::CornerTwisted { clockwise: *clockwise, suspects: suspects.clone() })
            }
            [Fault::Flip { suspects }] => Some(Physical::EdgeFlipped { suspects: suspects.clone() }),
            [Fault::Swap { suspects }] => Some(Physical::PiecesExchanged { suspects: suspects.clone() }),
            _ => Some(Physical::TakenApart),
        };
        Err(Unreachable { faults, physical })
    }

    /// How far the piece at the home of `piece` is turned clockwise, its first sticker in letter order against the
    /// place's first. For corners that is the U or D sticker, for midges the U, D, F or B sticker.
    fn turn_of(&self, orbit: Orbit, piece: u8) -> u8 {
        let place = orbit.references()[piece as usize];
        let sticker = self.at(orbit, place);
        let home = orbit.reference(orbit.piece(sticker));
        // The sticker at `place` lies so many steps clockwise of its piece's first; the piece is turned back by that.
        let steps =
            (0..orbit.stickers_per_piece()).find(|&steps| orbit.turned(home, steps) == sticker).unwrap_or(0);
        (orbit.stickers_per_piece() - steps) % orbit.stickers_per_piece()
    }

    fn turned_at_home(&self, orbit: Orbit, turn: u8) -> Vec<Sticker> {
        let back = self.named_in(self.core());
        (0..orbit.pieces())
            .filter(|&piece| {
                let place = orbit.references()[piece as usize];
                orbit.piece(back.at(orbit, place)) == orbit.piece(place) && back.turn_of(orbit, piece) == turn
            })
            .map(|piece| orbit.references()[piece as usize])
            .collect()
    }

    fn is_odd(&self, orbit: Orbit) -> bool {
        let table: Vec<u8> = (0..orbit.pieces())
            .map(|piece| orbit.piece(self.at(orbit, orbit.references()[piece as usize])).index() as u8)
            .collect();
        is_odd(&table)
    }

    /// Pairs of pieces of a kind that are in each other's places.
    fn exchanged(&self) -> Vec<(Orbit, Sticker, Sticker)> {
        let back = self.named_in(self.core());
        let mut pairs = Vec::new();
        for orbit in [Orbit::Corner, Orbit::Midge] {
            let lies_at =
                |piece: u8| orbit.piece(back.at(orbit, orbit.references()[piece as usize])).index() as u8;
            for piece in 0..orbit.pieces() {
                let other = lies_at(piece);
                if other > piece && lies_at(other) == piece {
                    pairs.push((
                        orbit,
                        orbit.references()[piece as usize],
                        orbit.references()[other as usize],
                    ));
                }
            }
        }
        pairs
    }
}
