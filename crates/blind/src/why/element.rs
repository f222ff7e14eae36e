//! Elements of the group that turns and whole-cube rotations make, packed for many products in a short time.
//!
//! Stickers of corners and midges side by side in one table, and how the fixed centres are turned as a number. What is
//! looked up is an element up to how the puzzle is held, packed into 128 bits.

use cube::{Motion, Orbit, Perm, Rotation, Size, State, Sticker, Turn};

/// Corner stickers, then midge stickers.
const STICKERS: usize = 48;
/// One sticker of each of 8 corners and 12 midges says where all are.
const PIECES: usize = 20;

/// An element: for each place the sticker that comes there, and how the centres are turned.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) struct Element {
    pull: [u8; 64],
    /// Place of the rotation in [`Rotation::all`]; 0 on sizes without fixed centres.
    core: u8,
}

/// What an element is, exactly or up to how the puzzle is held.
pub(crate) type Key = u128;

impl Element {
    pub(crate) const IDENTITY: Self = {
        let mut pull = [0; 64];
        let mut at = 0;
        while at < 64 {
            pull[at] = at as u8;
            at += 1;
        }
        Self { pull, core: 0 }
    };

    /// From tables of the corner and the midge stickers; the centres as on a solved cube.
    pub(crate) fn from_tables(tables: &[[u8; 24]; 2]) -> Self {
        let mut element = Self::IDENTITY;
        for (first, table) in [0, 24].into_iter().zip(tables) {
            for (at, &sticker) in table.iter().enumerate() {
                element.pull[first + at] = first as u8 + sticker;
            }
        }
        element
    }

    /// First this, then the next.
    #[inline]
    pub(crate) fn then(&self, next: &Self, tables: &Tables) -> Self {
        let mut pull = Self::IDENTITY.pull;
        for (entry, &from) in pull[..STICKERS].iter_mut().zip(&next.pull[..STICKERS]) {
            *entry = self.pull[(from & 63) as usize];
        }
        Self { pull, core: tables.product[self.core as usize][next.core as usize] }
    }

    pub(crate) fn inverse(&self, tables: &Tables) -> Self {
        let mut pull = Self::IDENTITY.pull;
        for (place, &sticker) in self.pull[..STICKERS].iter().enumerate() {
            pull[sticker as usize] = place as u8;
        }
        Self { pull, core: tables.inverse[self.core as usize] }
    }

    /// The sticker that lies at a place.
    pub(crate) fn at(&self, orbit: Orbit, place: Sticker) -> Sticker {
        let first = if orbit == Orbit::Corner { 0 } else { 24 };
        Sticker::new(self.pull[first + place.index()] - first as u8).unwrap_or(place)
    }
}

/// Tables of one size.
#[derive(Clone, Debug)]
pub(crate) struct Tables {
    size: Size,
    product: [[u8; 24]; 24],
    inverse: [u8; 24],
    rotations: Vec<Rotation>,
    held: Vec<Element>,
    turns: Vec<Element>,
    /// The place of one sticker of each piece.
    places: [u8; PIECES],
    /// For each corner sticker the rotation that takes the corner sticker 0 from its place.
    anchor: [u8; 24],
    /// For each sticker its piece, for keys without turning; corners then midges.
    piece: [u8; 64],
}

/// An element as the right factor of many products: its 24 cosets, reduced to one sticker of each piece.
#[derive(Clone, Debug)]
pub(crate) struct Right {
    held: [[u8; PIECES]; 24],
    inverse: Element,
    core: u8,
}

impl Tables {
    pub(crate) fn new(size: Size) -> Self {
        let rotations: Vec<Rotation> = Rotation::all().collect();
        let number =
            |wanted: Rotation| rotations.iter().position(|&rotation| rotation == wanted).unwrap_or(0) as u8;
        let product =
            std::array::from_fn(|a| std::array::from_fn(|b| number(rotations[a].then(rotations[b]))));
        let inverse = std::array::from_fn(|at| number(rotations[at].inverse()));
        let mut places = [0; PIECES];
        let both = [(Orbit::Corner, 0), (Orbit::Midge, 24)];
        let of_pieces = both.into_iter().flat_map(|(orbit, first)| {
            orbit.all_pieces().map(move |piece| first + orbit.reference(piece).index() as u8)
        });
        for (slot, place) in places.iter_mut().zip(of_pieces) {
            *slot = place;
        }
        let mut piece = [0; 64];
        for (orbit, first, pieces) in [(Orbit::Corner, 0, 0), (Orbit::Midge, 24, 8)] {
            for (at, &number) in orbit.piece_table().iter().enumerate() {
                piece[first + at] = pieces + number;
            }
        }
        let mut tables = Self {
            size,
            product,
            inverse,
            rotations,
            held: Vec::new(),
            turns: vec![Element::IDENTITY; Motion::count(size)],
            places,
            anchor: [0; 24],
            piece,
        };
        tables.held =
            tables.rotations.iter().map(|&rotation| tables.of(&State::held(size, rotation))).collect();
        for (number, element) in tables.held.iter().enumerate() {
            tables.anchor[element.pull[0] as usize] = number as u8;
        }
        for turn in Turn::all(size) {
            if let Ok(motion) = turn.motion(size) {
                tables.turns[motion.index()] = tables.of(&State::solved(size).after(&[turn]));
            }
        }
        tables
    }

    /// What leads from solved to a state.
    pub(crate) fn of(&self, state: &State) -> Element {
        let mut element = Element::IDENTITY;
        let tables: [&Perm; 2] = [state.orbit(Orbit::Corner), state.orbit(Orbit::Midge)];
        for (first, perm) in [0, 24].into_iter().zip(tables) {
            for (at, &sticker) in perm.table().iter().enumerate() {
                element.pull[first + at] = first as u8 + sticker;
            }
        }
        if self.size.is_odd() {
            element.core = self.rotation_number(state.core());
        }
        element
    }

    pub(crate) fn rotation_number(&self, wanted: Rotation) -> u8 {
        self.rotations.iter().position(|&rotation| rotation == wanted).unwrap_or(0) as u8
    }

    /// A turn; the identity for one that the size does not have.
    pub(crate) fn turn(&self, turn: Turn) -> &Element {
        turn.motion(self.size).map_or(&Element::IDENTITY, |motion| &self.turns[motion.index()])
    }

    /// Turns one after another.
    pub(crate) fn turns(&self, turns: &[Turn]) -> Element {
        turns.iter().fold(Element::IDENTITY, |so_far, &turn| so_far.then(self.turn(turn), self))
    }

    /// A rotation of the whole cube by its number.
    pub(crate) fn held(&self, number: usize) -> &Element {
        &self.held[number]
    }

    /// The element itself, the turning of the centres included.
    #[inline]
    pub(crate) fn exact(&self, element: &Element) -> Key {
        let packed =
            self.places.iter().fold(0, |key: Key, &place| key << 5 | code(element.pull[place as usize]));
        packed << 5 | Key::from(element.core)
    }

    /// [`Tables::exact`] of three elements one after another, the middle one a rotation of the whole cube.
    #[inline]
    pub(crate) fn exact_of(&self, first: &Element, hold: usize, last: &Element) -> Key {
        let held = &self.held[hold];
        let packed = self.places.iter().fold(0, |key: Key, &place| {
            let between = held.pull[(last.pull[(place & 63) as usize] & 63) as usize];
            key << 5 | code(first.pull[(between & 63) as usize])
        });
        let core =
            self.product[self.product[first.core as usize][held.core as usize] as usize][last.core as usize];
        packed << 5 | Key::from(core)
    }

    /// The rotation after which an element is as a standard one of all 24 that differ only in hold.
    pub(crate) fn standard_hold(&self, element: &Element) -> usize {
        if self.size.is_odd() {
            self.inverse[element.core as usize] as usize
        } else {
            let at = element.pull[..24].iter().position(|&sticker| sticker == 0).unwrap_or(0);
            self.anchor[at] as usize
        }
    }

    /// The element up to how the puzzle is held.
    #[inline]
    pub(crate) fn coset(&self, element: &Element) -> Key {
        let held = &self.held[self.standard_hold(element)];
        self.places.iter().fold(0, |key: Key, &place| {
            key << 5 | code(element.pull[(held.pull[place as usize] & 63) as usize])
        })
    }

    pub(crate) fn right(&self, element: &Element) -> Right {
        let held = std::array::from_fn(|number| {
            let held = &self.held[number];
            self.places.map(|place| element.pull[held.pull[place as usize] as usize])
        });
        Right { held, inverse: element.inverse(self), core: element.core }
    }

    /// [`Tables::coset`] of the inverse of `left`, then `right`; both the element and its inverse are given.
    #[inline]
    pub(crate) fn coset_of_quotient(&self, left: &Element, left_inverse: &Element, right: &Right) -> Key {
        let hold = if self.size.is_odd() {
            self.inverse[self.product[left_inverse.core as usize][right.core as usize] as usize]
        } else {
            // Where sticker 0 lies in the quotient.
            self.anchor[right.inverse.pull[(left.pull[0] & 63) as usize] as usize]
        };
        right.held[hold as usize]
            .iter()
            .fold(0, |key: Key, &from| key << 5 | code(left_inverse.pull[(from & 63) as usize]))
    }

    /// The key of an element without the turning of the pieces, in a given hold.
    pub(crate) fn places_only(&self, element: &Element) -> Key {
        let held = &self.held[self.standard_hold(element)];
        self.places.iter().fold(0, |key: Key, &place| {
            let from = element.pull[held.pull[place as usize] as usize];
            key << 5 | Key::from(self.piece[from as usize])
        })
    }
}

/// Five bits for a sticker: midges as 0 to 23 like corners.
#[inline]
fn code(sticker: u8) -> Key {
    Key::from(if sticker >= 24 { sticker - 24 } else { sticker })
}
