//! Whether turning can lead to what one sees.

use crate::layout::Layout;
use crate::perm::is_odd;
use crate::{Face, Facelets, Fault, Orbit, Perm, Physical, Rotation, Size, State, Sticker, Unreachable};

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
    /// let seen: Facelets = "UUUFLLLLFRFFURRRBBBBDDDD".parse().unwrap();
    /// let no = seen.state().unwrap_err();
    /// assert!(matches!(no.physical, Some(Physical::CornerTwisted { .. })));
    /// ```
    pub fn state(&self) -> Result<State, Unreachable> {
        self.read().map_err(|mut no| {
            if no.physical.is_none() {
                no.physical = match no.faults.as_slice() {
                    [Fault::Mirrored { place, .. }] => self.stickers_exchanged(*place),
                    faults => self.misread(faults),
                };
            }
            no
        })
    }

    /// The state, or all reasons against it; a misread sticker is not yet looked for.
    fn read(&self) -> Result<State, Unreachable> {
        let size = self.size();
        let mut faults = self.colour_counts();
        let core = self.core().unwrap_or_else(|fault| {
            faults.push(fault);
            Rotation::NONE
        });
        let mut perms = [Perm::IDENTITY; Orbit::MOST];
        for (perm, &orbit) in perms.iter_mut().zip(Orbit::of(size)) {
            let read = if orbit.looks_alike() {
                self.centres(orbit, &mut faults)
            } else {
                self.pieces(orbit, &mut faults)
            };
            if let Some(table) = read {
                *perm = table;
            }
        }
        if !faults.is_empty() {
            return Err(Unreachable { faults, physical: None });
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
            let at = orbit.index_on(self.size()).unwrap_or(0);
            return vec![self.colour_at(orbit, place), self.cell(layout.wing_backs[at][place.index()])];
        }
        orbit.stickers_from(place).map(|sticker| self.colour_at(orbit, sticker)).collect()
    }

    /// The sticker that shows these colours, clockwise, on the solved cube.
    fn sticker_of(orbit: Orbit, colours: &[Face]) -> Option<Sticker> {
        Sticker::all().find(|&sticker| solved_colours(orbit, sticker) == colours)
    }

    fn pieces(&self, orbit: Orbit, faults: &mut Vec<Fault>) -> Option<Perm> {
        let before = faults.len();
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
        if faults.len() == before { Perm::new(table) } else { None }
    }

    fn centres(&self, orbit: Orbit, faults: &mut Vec<Fault>) -> Option<Perm> {
        let before = faults.len();
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
        if faults.len() == before { Perm::new(table) } else { None }
    }

    /// The two stickers of a corner that must be exchanged to give a state that turning can reach.
    fn stickers_exchanged(&self, corner: Sticker) -> Option<Physical> {
        let orbit = Orbit::Corner;
        orbit.stickers_from(corner).find_map(|one| {
            let other = orbit.turned(one, 1);
            let mut changed = self.clone();
            for (to, from) in [(one, other), (other, one)] {
                let (row, column) = Self::cell_of(self.size(), orbit, to);
                changed.set(to.face(), row, column, self.colour_at(orbit, from));
            }
            changed.read().is_ok().then_some(Physical::StickersExchanged { places: [one, other] })
        })
    }

    /// The single stickers whose change would give a state that turning can reach, if there are any.
    fn misread(&self, faults: &[Fault]) -> Option<Physical> {
        let surplus = |wanted: bool| {
            let mut colours = faults.iter().filter_map(|fault| match fault {
                Fault::ColourCount { colour, count, expected }
                    if count.abs_diff(*expected) == 1 && (count > expected) == wanted =>
                {
                    Some(*colour)
                }
                _ => None,
            });
            colours.next().filter(|_| colours.next().is_none())
        };
        let (seen, rather) = (surplus(true)?, surplus(false)?);
        let n = self.size().layers();
        let mut facelets = Vec::new();
        for face in Face::ALL {
            for (row, column) in (0..n).flat_map(|row| (0..n).map(move |column| (row, column))) {
                if self.get(face, row, column) == Some(seen) {
                    let mut changed = self.clone();
                    changed.set(face, row, column, rather);
                    if changed.read().is_ok() {
                        facelets.push((face, row, column));
                    }
                }
            }
        }
        let &(face, row, column) = facelets.first()?;
        match Self::place(self.size(), face, row, column) {
            Some((orbit, place, false)) if facelets.len() == 1 => {
                Some(Physical::Misread { orbit, place, seen, rather })
            }
            _ => Some(Physical::MisreadAmong { seen, rather, facelets }),
        }
    }
}

/// The colours of a sticker's piece on the solved cube, clockwise from the sticker.
fn solved_colours(orbit: Orbit, sticker: Sticker) -> Vec<Face> {
    match orbit {
        Orbit::Wing { .. } => orbit.faces(sticker).to_vec(),
        Orbit::Corner | Orbit::Midge | Orbit::XCentre { .. } | Orbit::TCentre { .. } | Orbit::Oblique(_) => {
            orbit.stickers_from(sticker).map(Sticker::face).collect()
        }
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
            [turned @ (Fault::Twist { .. } | Fault::Flip { .. }), Fault::Swap { suspects }] => {
                let orbit = if matches!(turned, Fault::Twist { .. }) { Orbit::Corner } else { Orbit::Midge };
                let pairs = suspects.iter().filter(|&&(of, ..)| of == orbit).map(|&(_, a, b)| (a, b));
                Some(Physical::ExchangedAndTurned { orbit, suspects: pairs.collect() })
            }
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
        // The orbits that share a parity: those whose pieces can be turned in their places.
        for &orbit in Orbit::of(self.size()).iter().filter(|orbit| orbit.stickers_per_piece() > 1) {
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
