//! The colours of some stickers, as on a photo or where a few could not be made out.

use super::WhyError;
use super::observed::{Choice, Place};
use cube::{Face, Facelets, Orbit, Rotation, Size, State, Sticker};

/// The colours of some stickers of a puzzle that is held in whatever way.
///
/// A colour is named by the face that has it on the solved puzzle in the hold for scrambling.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Glimpse {
    size: Size,
    colours: Vec<Option<Face>>,
}

impl Glimpse {
    /// All stickers face by face in the order of [`Face::ALL`], each row by row as it is looked at, those that are not known
    /// empty; `None` when the number is not that of the size.
    ///
    /// ```
    /// use cube::{Size, State};
    /// use diagnosis::Glimpse;
    /// let seen = State::solved(Size::TWO).facelets();
    /// let mut colours: Vec<_> = seen.colours().iter().copied().map(Some).collect();
    /// assert_eq!(Glimpse::new(Size::TWO, colours.clone()).unwrap().whole(), Some(seen));
    /// colours[7] = None;
    /// assert_eq!(Glimpse::new(Size::TWO, colours).unwrap().whole(), None);
    /// ```
    pub fn new(size: Size, colours: Vec<Option<Face>>) -> Option<Self> {
        (colours.len() == size.facelets()).then_some(Self { size, colours })
    }

    /// Its size.
    pub const fn size(&self) -> Size {
        self.size
    }

    /// All stickers, as in [`Glimpse::new`].
    pub fn colours(&self) -> &[Option<Face>] {
        &self.colours
    }

    /// The colours, if all are known.
    pub fn whole(&self) -> Option<Facelets> {
        Facelets::new(self.size, self.colours.iter().copied().collect::<Option<_>>()?)
    }

    fn get(&self, face: Face, row: u8, column: u8) -> Option<Face> {
        let n = usize::from(self.size.layers());
        self.colours.get((face.index() * n + usize::from(row)) * n + usize::from(column)).copied().flatten()
    }

    /// What is asked of every place, named in the solver's hold, for each way in which the puzzle may be held so that the centres
    /// and every piece can show these colours.
    ///
    /// # Errors
    /// [`WhyError::NoHold`] where the centres fit no way, [`WhyError::NoPiece`] for a place whose colours no piece has.
    pub(super) fn ways(&self, holding: Rotation) -> Result<Vec<Vec<Place>>, WhyError> {
        let colour = |face: Face| holding.inverse().image(face);
        let middle = self.size.layers() / 2;
        // On even sizes an outcome is compared in every hold as it is.
        let holds = Rotation::all().filter(|&hold| {
            if !self.size.is_odd() {
                return hold == Rotation::NONE;
            }
            Face::ALL.into_iter().all(|face| {
                self.get(hold.image(face), middle, middle).is_none_or(|centre| centre == colour(face))
            })
        });
        let mut error = WhyError::NoHold;
        let mut ways: Vec<Vec<Place>> = Vec::new();
        for hold in holds {
            match self.places(hold, &colour) {
                Ok(places) if !ways.contains(&places) => ways.push(places),
                Ok(_) => {}
                Err(found) => error = found,
            }
        }
        if ways.is_empty() { Err(error) } else { Ok(ways) }
    }

    fn places(&self, hold: Rotation, colour: &dyn Fn(Face) -> Face) -> Result<Vec<Place>, WhyError> {
        let turned = State::held(self.size, hold);
        let mut places = Vec::new();
        for &orbit in Orbit::of(self.size) {
            // What is seen at each sticker as it is named in the hold.
            let mut seen = [None; 24];
            for spot in Sticker::all() {
                let (row, column) = Facelets::cell_of(self.size, orbit, spot);
                seen[turned.at(orbit, spot).index()] = self.get(spot.face(), row, column);
            }
            for at in orbit.all_pieces().map(|piece| orbit.reference(piece)) {
                let shows = |there: &Sticker| {
                    let mut both = orbit.stickers_from(at).zip(orbit.stickers_from(*there));
                    both.all(|(place, lies)| seen[place.index()].is_none_or(|it| it == colour(lies.face())))
                };
                let may = Sticker::all().filter(shows).fold(Choice::NONE, Choice::with);
                if may.is_empty() {
                    return Err(WhyError::NoPiece { orbit, place: at });
                }
                places.push(Place { orbit, at, may });
            }
        }
        Ok(places)
    }
}
