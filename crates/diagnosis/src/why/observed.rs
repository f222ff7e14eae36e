//! What is known of the puzzle after the attempt.

use super::WhyError;
use super::glimpse::Glimpse;
use cube::{Element, Group, Orbit, Perm, Rotation, Size, State, Sticker};

/// What the puzzle looks like after the attempt.
///
/// Stickers of pieces are named as for the memo: in the hold in which the attempt is made, so that a solved puzzle has every
/// sticker at home.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Observed {
    /// Everything; the puzzle may be held in any way.
    State(Box<State>),
    /// The colours of some stickers; the puzzle may be held in any way.
    Stickers(Box<Glimpse>),
    /// The unsolved pieces, all of them.
    Pieces(Vec<Seen>),
}

/// What is known of one or more unsolved pieces, or of all the others.
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
    /// So many pieces of a kind are unsolved, whichever; nothing else is said of the kind.
    Count {
        /// The kind of piece.
        orbit: Orbit,
        /// How many.
        count: usize,
    },
    /// A kind was not looked at: nothing is known of it.
    Unlooked {
        /// The kind of piece.
        orbit: Orbit,
    },
    /// No other piece is unsolved, whatever turning could lead to.
    NothingElse,
}

impl Observed {
    /// How many pieces of each kind are unsolved; kinds that are not named are solved.
    pub fn counts(counts: &[(Orbit, usize)]) -> Self {
        Self::Pieces(counts.iter().map(|&(orbit, count)| Seen::Count { orbit, count }).collect())
    }

    /// The colours that are meant, if everything is known, also where turning cannot lead there; for a puzzle that is
    /// held to solve by `holding` (see [`blind::Conventions::holding`]).
    pub fn facelets(&self, size: Size, holding: Rotation) -> Option<cube::Facelets> {
        let wanted = match self {
            Self::State(state) => return Some(state.facelets()),
            Self::Stickers(glimpse) => return glimpse.whole(),
            Self::Pieces(_) if self.foreign_kind(size).is_some() => return None,
            Self::Pieces(_) => Wanted::new(self, size, holding, None).ok()??,
        };
        let perms = wanted.exactly(size).ok()??;
        let held = State::held(size, holding);
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
    pub(super) fn foreign_kind(&self, size: Size) -> Option<Orbit> {
        let named = self.pieces().iter().filter_map(Seen::orbit);
        named.into_iter().find(|orbit| !Orbit::of(size).contains(orbit))
    }

    /// What is said of pieces.
    pub(super) fn pieces(&self) -> &[Seen] {
        match self {
            Self::State(_) | Self::Stickers(_) => &[],
            Self::Pieces(seen) => seen,
        }
    }

    /// Kinds that were not looked at.
    pub(super) fn unlooked(&self) -> Vec<Orbit> {
        let unlooked = |seen: &Seen| match seen {
            Seen::Unlooked { orbit } => Some(*orbit),
            _ => None,
        };
        self.pieces().iter().filter_map(unlooked).collect()
    }

    /// Whether nothing was left out for sure.
    pub(super) fn is_all(&self) -> bool {
        match self {
            Self::State(_) => true,
            Self::Stickers(glimpse) => glimpse.whole().is_some(),
            Self::Pieces(seen) => seen.contains(&Seen::NothingElse),
        }
    }
}

impl Seen {
    /// The kind that is spoken of, if it is one.
    pub const fn orbit(&self) -> Option<Orbit> {
        match self {
            Self::Cycle { orbit, .. }
            | Self::Turned { orbit, .. }
            | Self::Unsolved { orbit, .. }
            | Self::Count { orbit, .. }
            | Self::Unlooked { orbit } => Some(*orbit),
            Self::NothingElse => None,
        }
    }

    /// The stickers that are named.
    pub fn stickers(&self) -> &[Sticker] {
        match self {
            Self::Cycle { stickers, .. } => stickers,
            Self::Turned { sticker, .. } | Self::Unsolved { sticker, .. } => std::slice::from_ref(sticker),
            Self::Count { .. } | Self::Unlooked { .. } | Self::NothingElse => &[],
        }
    }

    /// What it says of single places: at each of these stickers lies one of those in the set.
    pub(super) fn demands(&self) -> Vec<(Orbit, Sticker, Choice)> {
        match self {
            Self::Unsolved { orbit, sticker } => {
                vec![(*orbit, *sticker, Choice::ALL.without(*sticker))]
            }
            Self::Turned { orbit, sticker, clockwise: None } => {
                vec![(*orbit, *sticker, Choice::piece(*orbit, *sticker).without(*sticker))]
            }
            Self::Turned { orbit, sticker, clockwise: Some(steps) } => {
                // Turned clockwise by one, the sticker that belongs here lies one further; here lies the one before it.
                let turns = orbit.stickers_per_piece();
                let back = turns - steps % turns;
                vec![(*orbit, *sticker, Choice::only(orbit.turned(*sticker, back)))]
            }
            Self::Cycle { orbit, stickers, turning } => {
                let Some(&first) = stickers.first() else { return Vec::new() };
                let closes = |last: &Sticker| stickers.len() > 1 && orbit.same_piece(*last, first);
                let count = stickers.len() - usize::from(stickers.last().is_some_and(closes));
                (0..count)
                    .map(|at| {
                        let next = stickers.get(at + 1).copied().unwrap_or(first);
                        let choice = if *turning {
                            Choice::only(next)
                        } else {
                            Choice::piece(*orbit, next).without(stickers[at])
                        };
                        (*orbit, stickers[at], choice)
                    })
                    .collect()
            }
            Self::Count { .. } | Self::Unlooked { .. } | Self::NothingElse => Vec::new(),
        }
    }
}

/// Stickers of a kind of which one lies somewhere, a bit each.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) struct Choice(u32);

impl Choice {
    pub(super) const NONE: Self = Self(0);
    pub(super) const ALL: Self = Self((1 << 24) - 1);

    pub(super) const fn only(sticker: Sticker) -> Self {
        Self(1 << sticker.index())
    }

    pub(super) fn piece(orbit: Orbit, sticker: Sticker) -> Self {
        orbit.stickers_from(sticker).fold(Self::NONE, Self::with)
    }

    #[must_use]
    pub(super) fn with(self, sticker: Sticker) -> Self {
        Self(self.0 | Self::only(sticker).0)
    }

    #[must_use]
    fn without(self, sticker: Sticker) -> Self {
        Self(self.0 & !Self::only(sticker).0)
    }

    pub(super) const fn has(self, sticker: Sticker) -> bool {
        self.0 >> sticker.index() & 1 == 1
    }

    pub(super) fn stickers(self) -> impl Iterator<Item = Sticker> {
        Sticker::all().filter(move |&sticker| self.has(sticker))
    }

    pub(super) const fn is_empty(self) -> bool {
        self.0 == 0
    }

    pub(super) const fn len(self) -> u32 {
        self.0.count_ones()
    }

    /// The only one.
    pub(super) fn single(self) -> Option<Sticker> {
        self.stickers().next().filter(|_| self.len() == 1)
    }

    /// The same said of a sticker further on the same place, `steps` clockwise.
    #[must_use]
    fn turned(self, orbit: Orbit, steps: u8) -> Self {
        self.stickers().fold(Self::NONE, |choice, sticker| choice.with(orbit.turned(sticker, steps)))
    }
}

/// What is asked of one place, by its reference sticker.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) struct Place {
    pub(super) orbit: Orbit,
    pub(super) at: Sticker,
    pub(super) may: Choice,
}

/// What is known, made ready for comparing with many outcomes.
#[derive(Clone, Debug)]
pub(crate) struct Wanted {
    /// What is asked of every place, in each way in which the puzzle may have been held.
    ways: Vec<Vec<Place>>,
    counts: Vec<(Orbit, usize)>,
}

/// What lies at each place of kinds that were not looked at, if they are taken to be as planned.
pub(super) type AsPlanned<'a> = &'a dyn Fn(Orbit, Sticker) -> Sticker;

impl Wanted {
    /// What is asked of the outcome; `None` for a whole state, which is compared as an element. Of kinds that were not looked at
    /// nothing is asked, or that they are as planned.
    ///
    /// # Errors
    /// [`WhyError::NoPiece`] and [`WhyError::NoHold`] for colours that no puzzle shows, [`WhyError::OtherSize`] for those of another.
    pub(crate) fn new(
        observed: &Observed,
        size: Size,
        holding: Rotation,
        unlooked: Option<AsPlanned<'_>>,
    ) -> Result<Option<Self>, WhyError> {
        match observed {
            Observed::State(_) => Ok(None),
            Observed::Stickers(glimpse) => {
                if glimpse.size() != size {
                    return Err(WhyError::OtherSize { planned: size, seen: glimpse.size() });
                }
                Ok(Some(Self { ways: glimpse.ways(holding)?, counts: Vec::new() }))
            }
            Observed::Pieces(seen) => Ok(Some(Self::of_pieces(seen, size, unlooked))),
        }
    }

    fn of_pieces(seen: &[Seen], size: Size, unlooked: Option<AsPlanned<'_>>) -> Self {
        let mut counts = Vec::new();
        let mut places: Vec<Place> = Vec::new();
        for &orbit in Orbit::of(size) {
            let said = seen.iter().find(|item| {
                matches!(item, Seen::Count { orbit: kind, .. } | Seen::Unlooked { orbit: kind } if *kind == orbit)
            });
            if let Some(Seen::Count { count, .. }) = said {
                counts.push((orbit, *count));
            }
            places.extend(orbit.all_pieces().map(|piece| orbit.reference(piece)).map(|at| {
                let may = match (said, unlooked) {
                    (None, _) => Choice::only(at),
                    (Some(Seen::Unlooked { .. }), Some(planned)) => Choice::only(planned(orbit, at)),
                    (Some(_), _) => Choice::ALL,
                };
                Place { orbit, at, may }
            }));
        }
        for (orbit, at, may) in seen.iter().flat_map(Seen::demands) {
            let reference = orbit.reference(orbit.piece(at));
            // Said of the sticker `at`; kept for the reference sticker of the place.
            let steps = orbit.stickers_from(at).position(|sticker| sticker == reference).unwrap_or(0) as u8;
            for place in places.iter_mut().filter(|place| place.orbit == orbit && place.at == reference) {
                place.may = may.turned(orbit, steps);
            }
        }
        Self { ways: vec![places], counts }
    }

    /// The state that is meant, if everything is known, by kind.
    ///
    /// # Errors
    /// [`WhyError::Contradiction`] when two places would show the same piece.
    pub(crate) fn exactly(&self, size: Size) -> Result<Option<Vec<Perm>>, WhyError> {
        let [places] = self.ways.as_slice() else { return Ok(None) };
        if !self.counts.is_empty() {
            return Ok(None);
        }
        let single = |place: &Place| Some((place.orbit, place.at, place.may.single()?));
        let Some(all) = places.iter().map(single).collect::<Option<Vec<_>>>() else { return Ok(None) };
        perms(size, &all).ok_or(WhyError::Contradiction).map(Some)
    }

    /// Every state that turning can lead to and that fits, if they are no more than `most`; `None` if they are, or would be too
    /// long looked for.
    pub(crate) fn completions(&self, size: Size, most: usize) -> Option<Vec<State>> {
        if !self.counts.is_empty() {
            return None;
        }
        let mut found: Vec<State> = Vec::new();
        let mut steps = 0;
        for places in &self.ways {
            let mut places = places.clone();
            places.sort_by_key(|place| place.may.len());
            let mut filling = Filling { places: &places, size, most, steps: &mut steps, found: &mut found };
            if !filling.fill(&mut Vec::new()) {
                return None;
            }
        }
        Some(found)
    }

    /// An element with every piece where it was seen, the turning as it may be; `None` when not every piece was.
    pub(crate) fn places(&self) -> Option<Vec<(Orbit, Sticker, Sticker)>> {
        let [places] = self.ways.as_slice() else { return None };
        if !self.counts.is_empty() {
            return None;
        }
        let of_one_piece = |place: &Place| {
            let first = place.may.stickers().next()?;
            let alone = place.may.stickers().all(|sticker| place.orbit.same_piece(sticker, first));
            alone.then_some((place.orbit, place.at, first))
        };
        places.iter().map(of_one_piece).collect()
    }

    /// Whether an outcome, named as solved is the identity and held as it should be, is what was seen.
    pub(crate) fn fits(&self, outcome: &Element, group: &Group) -> bool {
        let counted = |&(orbit, count): &(Orbit, usize)| {
            let places = orbit.all_pieces().map(|piece| orbit.reference(piece));
            places.filter(|&place| group.at(outcome, orbit, place) != place).count() == count
        };
        self.counts.iter().all(counted)
            && self.ways.iter().any(|places| {
                places.iter().all(|place| place.may.has(group.at(outcome, place.orbit, place.at)))
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

/// The permutations in which at these reference stickers lie those; `None` where two places show one piece.
fn perms(size: Size, all: &[(Orbit, Sticker, Sticker)]) -> Option<Vec<Perm>> {
    let of = |&orbit: &Orbit| {
        let mut table = *Perm::IDENTITY.table();
        for &(_, place, there) in all.iter().filter(|(kind, ..)| *kind == orbit) {
            for (at, lies) in orbit.stickers_from(place).zip(orbit.stickers_from(there)) {
                table[at.index()] = lies.index() as u8;
            }
        }
        Perm::new(table)
    };
    Orbit::of(size).iter().map(of).collect()
}

/// The most choices that are tried in looking for what fits.
const MOST_STEPS: usize = 20_000;

/// Looks for all states that fit, place by place.
struct Filling<'a> {
    places: &'a [Place],
    size: Size,
    most: usize,
    steps: &'a mut usize,
    found: &'a mut Vec<State>,
}

impl Filling<'_> {
    /// Whether all were found.
    fn fill(&mut self, chosen: &mut Vec<(Orbit, Sticker, Sticker)>) -> bool {
        *self.steps += 1;
        if *self.steps > MOST_STEPS {
            return false;
        }
        let Some(&Place { orbit, at, may }) = self.places.get(chosen.len()) else {
            let state =
                perms(self.size, chosen).map(|perms| State::from_orbits(self.size, Rotation::NONE, &perms));
            if let Some(Ok(state)) = state
                && !self.found.contains(&state)
            {
                self.found.push(state);
            }
            return self.found.len() <= self.most;
        };
        for there in may.stickers() {
            let taken = |&(kind, _, other): &(Orbit, Sticker, Sticker)| {
                kind == orbit && orbit.same_piece(other, there)
            };
            if chosen.iter().any(taken) {
                continue;
            }
            chosen.push((orbit, at, there));
            if !self.fill(chosen) {
                return false;
            }
            chosen.pop();
        }
        true
    }
}
