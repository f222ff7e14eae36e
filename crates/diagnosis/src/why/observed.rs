//! What is known of the puzzle after the attempt.

use super::WhyError;
use cube::{Element, Group, Orbit, Sticker};

/// What the puzzle looks like after the attempt.
///
/// Stickers are named as for the memo: in the hold in which the attempt is made, so that a solved puzzle has every
/// sticker at home.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Observed {
    /// Everything; the puzzle may be held in any way.
    State(Box<cube::State>),
    /// The unsolved pieces, all of them.
    Pieces(Vec<Seen>),
    /// Only how many pieces of each kind are unsolved; kinds that are not named are solved.
    Counts(Vec<(Orbit, usize)>),
}

/// What is known of one or more unsolved pieces.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Seen {
    /// Read as a trace: at the first sticker's place lies what belongs at the second, and so on; at the last one's
    /// what belongs at the first.
    Cycle {
        /// The kind of piece.
        orbit: Orbit,
        /// The stickers, each of another piece; the last may be of the first piece again, turned.
        stickers: Vec<Sticker>,
        /// Whether the turning was looked at. If not, the stickers stand for their pieces only.
        turning: bool,
    },
    /// A piece in its place, turned so many stickers clockwise; `None` for a twist of either way.
    Turned {
        /// The kind of piece.
        orbit: Orbit,
        /// A sticker of the piece.
        sticker: Sticker,
        /// 1 for an edge, 1 or 2 for a corner.
        clockwise: Option<u8>,
    },
    /// A place that is not right, nothing more.
    Unsolved {
        /// The kind of piece.
        orbit: Orbit,
        /// A sticker of the place.
        sticker: Sticker,
    },
}

impl Observed {
    /// The colours that are meant, if everything is known, also where turning cannot lead there; for a puzzle that is
    /// held to solve by `holding` (see [`blind::Conventions::holding`]).
    pub fn facelets(&self, size: cube::Size, holding: cube::Rotation) -> Option<cube::Facelets> {
        let wanted = match self {
            Self::State(state) => return Some(state.facelets()),
            Self::Pieces(_) | Self::Counts(_) if self.foreign_kind(size).is_some() => return None,
            Self::Pieces(_) | Self::Counts(_) => Wanted::new(self, size)?,
        };
        let perms = wanted.exactly(size).ok()??;
        let held = cube::State::held(size, holding);
        let mut seen = held.facelets();
        for (&orbit, perm) in Orbit::of(size).iter().zip(&perms) {
            for place in Sticker::all() {
                let (row, column) = cube::Facelets::cell_of(size, orbit, place);
                seen.set(place.face(), row, column, held.at(orbit, perm.at(place)).face());
            }
        }
        Some(seen)
    }

    /// A kind of piece that is named and that a size does not have.
    pub(super) fn foreign_kind(&self, size: cube::Size) -> Option<Orbit> {
        let named: Vec<Orbit> = match self {
            Self::State(_) => Vec::new(),
            Self::Pieces(seen) => seen.iter().map(|item| item.stickers().0).collect(),
            Self::Counts(counts) => counts.iter().map(|&(orbit, _)| orbit).collect(),
        };
        named.into_iter().find(|orbit| !Orbit::of(size).contains(orbit))
    }
}

impl Seen {
    /// The kind and the stickers that are named.
    pub fn stickers(&self) -> (Orbit, &[Sticker]) {
        match self {
            Self::Cycle { orbit, stickers, .. } => (*orbit, stickers),
            Self::Turned { orbit, sticker, .. } | Self::Unsolved { orbit, sticker } => {
                (*orbit, std::slice::from_ref(sticker))
            }
        }
    }
}

/// What is asked of the outcome, for each place.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
enum Place {
    Solved,
    /// Another piece or another way round, unknown which.
    Unsolved,
    /// This piece, either way round.
    Piece(Sticker),
    /// This sticker.
    Exactly(Sticker),
    /// The own piece, turned either way.
    Turned,
}

/// What is known, made ready for comparing with many outcomes.
#[derive(Clone, Debug)]
pub(crate) struct Wanted {
    /// By kind and place, by the place's reference sticker; empty for counts.
    places: Vec<(Orbit, Sticker, Place)>,
    counts: Option<Vec<(Orbit, usize)>>,
}

impl Wanted {
    /// What is asked of the outcome; `None` for a whole state, which is compared as an element.
    pub(crate) fn new(observed: &Observed, size: cube::Size) -> Option<Self> {
        match observed {
            Observed::State(_) => None,
            Observed::Counts(counts) => {
                let of = |orbit: Orbit| {
                    counts.iter().find(|(other, _)| *other == orbit).map_or(0, |&(_, count)| count)
                };
                let counts = Orbit::of(size).iter().map(|&orbit| (orbit, of(orbit))).collect();
                Some(Self { places: Vec::new(), counts: Some(counts) })
            }
            Observed::Pieces(seen) => {
                let kinds = Orbit::of(size).iter().copied();
                let mut places: Vec<(Orbit, Sticker, Place)> = kinds
                    .flat_map(|orbit| {
                        orbit.all_pieces().map(move |piece| (orbit, orbit.reference(piece), Place::Solved))
                    })
                    .collect();
                for item in seen {
                    demand(item, &mut places);
                }
                Some(Self { places, counts: None })
            }
        }
    }

    /// The state that is meant, if everything is known, by kind.
    ///
    /// # Errors
    /// [`WhyError::Contradiction`] when two places would show the same piece.
    pub(crate) fn exactly(&self, size: cube::Size) -> Result<Option<Vec<cube::Perm>>, WhyError> {
        if self.counts.is_some() {
            return Ok(None);
        }
        let mut perms = Vec::new();
        for &orbit in Orbit::of(size) {
            let mut table = *cube::Perm::IDENTITY.table();
            for &(_, place, demanded) in self.places.iter().filter(|(kind, ..)| *kind == orbit) {
                let there = match demanded {
                    Place::Solved => place,
                    Place::Exactly(sticker) => sticker,
                    _ => return Ok(None),
                };
                for (at, lies) in orbit.stickers_from(place).zip(orbit.stickers_from(there)) {
                    table[at.index()] = lies.index() as u8;
                }
            }
            perms.push(cube::Perm::new(table).ok_or(WhyError::Contradiction)?);
        }
        Ok(Some(perms))
    }

    /// An element with every piece where it was seen, the turning as it may be; `None` when not every piece was.
    pub(crate) fn places(&self) -> Option<Vec<(Orbit, Sticker, Sticker)>> {
        if self.counts.is_some() {
            return None;
        }
        self.places
            .iter()
            .map(|&(orbit, place, demanded)| match demanded {
                Place::Solved | Place::Turned => Some((orbit, place, place)),
                Place::Exactly(sticker) | Place::Piece(sticker) => Some((orbit, place, sticker)),
                Place::Unsolved => None,
            })
            .collect()
    }

    /// Whether an outcome, named as solved is the identity and held as it should be, is what was seen.
    pub(crate) fn fits(&self, outcome: &Element, group: &Group) -> bool {
        if let Some(counts) = &self.counts {
            return counts.iter().all(|&(orbit, count)| {
                let unsolved = orbit
                    .all_pieces()
                    .map(|piece| orbit.reference(piece))
                    .filter(|&place| group.at(outcome, orbit, place) != place)
                    .count();
                unsolved == count
            });
        }
        self.places.iter().all(|&(orbit, place, demanded)| {
            let there = group.at(outcome, orbit, place);
            match demanded {
                Place::Solved => there == place,
                Place::Unsolved => there != place,
                Place::Piece(sticker) => orbit.piece(there) == orbit.piece(sticker) && there != place,
                Place::Exactly(sticker) => there == sticker,
                Place::Turned => there != place && orbit.piece(there) == orbit.piece(place),
            }
        })
    }

    /// [`Wanted::fits`] in the standard hold; on sizes without fixed centres in any hold.
    pub(crate) fn fits_held(&self, outcome: &Element, group: &'static Group, odd: bool) -> bool {
        if odd {
            return self.fits(&outcome.then(&group.holds()[group.standard_hold(outcome)]), group);
        }
        group.holds().iter().any(|hold| self.fits(&outcome.then(hold), group))
    }
}

fn demand(item: &Seen, places: &mut [(Orbit, Sticker, Place)]) {
    let mut set = |orbit: Orbit, at: Sticker, demanded: Place| {
        let reference = orbit.reference(orbit.piece(at));
        // Said of the sticker `at`; kept for the reference sticker of the place.
        let steps = orbit.stickers_from(at).position(|sticker| sticker == reference).unwrap_or(0) as u8;
        let moved = match demanded {
            Place::Exactly(sticker) => Place::Exactly(orbit.turned(sticker, steps)),
            other => other,
        };
        for entry in places.iter_mut().filter(|(kind, place, _)| *kind == orbit && *place == reference) {
            entry.2 = moved;
        }
    };
    match item {
        Seen::Unsolved { orbit, sticker } => set(*orbit, *sticker, Place::Unsolved),
        Seen::Turned { orbit, sticker, clockwise: None } => set(*orbit, *sticker, Place::Turned),
        Seen::Turned { orbit, sticker, clockwise: Some(steps) } => {
            // Turned clockwise by one, the sticker that belongs here lies one further; here lies the one before it.
            let back = orbit.stickers_per_piece() - steps % orbit.stickers_per_piece();
            set(*orbit, *sticker, Place::Exactly(orbit.turned(*sticker, back)));
        }
        Seen::Cycle { orbit, stickers, turning } => {
            let closes = stickers.len() > 2 && {
                let last = stickers[stickers.len() - 1];
                orbit.piece(last) == orbit.piece(stickers[0])
            };
            let count = if closes { stickers.len() - 1 } else { stickers.len() };
            for at in 0..count {
                let next = stickers.get(at + 1).copied().unwrap_or(stickers[0]);
                set(*orbit, stickers[at], if *turning { Place::Exactly(next) } else { Place::Piece(next) });
            }
        }
    }
}
