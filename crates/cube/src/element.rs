//! Elements of the group that turns and rotations of the whole cube make, ready for many products in a short time, and
//! packed into keys to be looked up by.
//!
//! A [`crate::State`] says the same; an [`Element`] leaves out what is not needed to multiply. Elements of a size with one
//! another are the matter of its [`Group`].

use crate::{Motion, Orbit, Perm, Rotation, Size, State, Sticker, Turn};
use std::sync::OnceLock;

/// Entries of a table that an orbit takes: its 24 stickers, and room, so that five bits of an entry are the sticker.
const STRIDE: usize = 32;
/// Orbits that an element has room for.
const ORBITS: usize = 2;
/// Entries of a table.
const ENTRIES: usize = ORBITS * STRIDE;
/// Pieces that a key has room for: where one sticker of each is says where all are.
const PIECES: usize = 20;
/// Pieces in the upper half of a key: the corners, which every size has.
const CORNERS: usize = Orbit::Corner.pieces() as usize;
/// The bits of the lower half.
const LOW_BITS: usize = 5 * (PIECES - CORNERS);
/// Where the five bits of the fixed centres are in the upper half.
const CORE_SHIFT: usize = 5 * CORNERS;

/// An element packed: five bits for each piece and five for how the fixed centres are turned.
pub type ElementKey = u128;

/// The bits that an [`ElementKey`] takes; those above are free for what a table notes beside it.
pub const ELEMENT_KEY_BITS: u32 = 5 * (PIECES as u32 + 1);

/// An element: for each place the sticker that comes there, and how the fixed centres are turned.
///
/// ```
/// use cube::{Algorithm, Group, Size, State};
/// let group = Group::of(Size::THREE).unwrap();
/// let turns = |text| Algorithm::parse(text, Size::THREE).unwrap().flatten();
/// let (a, b) = (group.turns(&turns("R U M")), group.turns(&turns("y F'")));
/// assert_eq!(a.then(&b), group.element(&State::solved(Size::THREE).after(&turns("R U M y F'"))));
/// assert_eq!(a.then(&a.inverse()), cube::Element::IDENTITY);
/// ```
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Element {
    pull: [u8; ENTRIES],
    /// [`Rotation::number`].
    core: u8,
}

/// Products of rotations by number, with room, so that no number need be checked.
static PRODUCTS: [[u8; 32]; 32] = {
    let mut products = [[0; 32]; 32];
    let mut a = 0;
    while a < 24 {
        let mut b = 0;
        while b < 24 {
            products[a][b] = Rotation::numbered(a as u8).followed_by(Rotation::numbered(b as u8)).number();
            b += 1;
        }
        a += 1;
    }
    products
};

static INVERSES: [u8; 32] = {
    let mut inverses = [0; 32];
    let mut a = 0;
    while a < 24 {
        let mut b = 0;
        while b < 24 {
            if PRODUCTS[a][b] == Rotation::NONE.number() {
                inverses[a] = b as u8;
            }
            b += 1;
        }
        a += 1;
    }
    inverses
};

#[inline]
fn product(a: u8, b: u8) -> u8 {
    PRODUCTS[(a & 31) as usize][(b & 31) as usize]
}

#[inline]
const fn entry(at: u8) -> usize {
    at as usize % ENTRIES
}

impl Element {
    /// What changes nothing.
    pub const IDENTITY: Self = {
        let mut pull = [0; ENTRIES];
        let mut at = 0;
        while at < ENTRIES {
            pull[at] = at as u8;
            at += 1;
        }
        Self { pull, core: Rotation::NONE.number() }
    };

    /// First this, then the next.
    #[inline]
    #[must_use]
    pub fn then(&self, next: &Self) -> Self {
        let mut pull = Self::IDENTITY.pull;
        for first in (0..ENTRIES).step_by(STRIDE) {
            let orbit = first..first + Sticker::COUNT;
            for (slot, &from) in pull[orbit.clone()].iter_mut().zip(&next.pull[orbit]) {
                *slot = self.pull[entry(from)];
            }
        }
        Self { pull, core: product(self.core, next.core) }
    }

    /// What undoes it.
    #[must_use]
    pub fn inverse(&self) -> Self {
        let mut pull = Self::IDENTITY.pull;
        for first in (0..ENTRIES).step_by(STRIDE) {
            for at in first..first + Sticker::COUNT {
                pull[entry(self.pull[at])] = at as u8;
            }
        }
        Self { pull, core: INVERSES[(self.core & 31) as usize] }
    }
}

/// Packs one sticker of each piece, the first one highest, and above them the number of a rotation.
#[inline]
fn pack(at: impl Fn(usize) -> u8, core: u8) -> ElementKey {
    let half = |pieces: std::ops::Range<usize>| {
        pieces.fold(0u64, |packed, piece| packed << 5 | u64::from(at(piece) & 31))
    };
    let high = half(0..CORNERS) | u64::from(core) << CORE_SHIFT;
    ElementKey::from(high) << LOW_BITS | ElementKey::from(half(CORNERS..PIECES))
}

/// The elements of one size, for those sizes whose elements fit a key: every piece can be told from every other, and
/// there are at most 20.
#[derive(Debug)]
pub struct Group {
    size: Size,
    /// By [`Rotation::number`].
    held: Vec<Element>,
    /// By [`Motion::index`].
    motions: Vec<Element>,
    /// The entry of the reference sticker of each piece; of its own where a size has fewer.
    places: [u8; PIECES],
    /// For each piece its entries clockwise from that of the reference sticker, as often as a corner has stickers.
    around: [[u8; 3]; PIECES],
    /// For each entry the next one of its piece, clockwise.
    clockwise: [u8; ENTRIES],
    /// For each entry the number of its piece among all.
    pieces: [u8; ENTRIES],
    /// For each place of the first sticker, the rotation that brings it home.
    anchor: [u8; STRIDE],
}

/// An element made ready to be the right factor of many products, of which the keys up to holding are wanted.
#[derive(Clone, Debug)]
pub struct Right {
    /// For each way to hold the cube, where each piece of the product comes from.
    held: [[u8; PIECES]; 24],
    inverse: Element,
    core: u8,
}

/// An element made ready to be the left factor of many products with elements that are given by their keys.
#[derive(Clone, Debug)]
pub struct Left {
    /// For each orbit and two stickers of it, five bits each: the two that come in their places.
    pairs: [Vec<u16>; ORBITS],
    core: [u8; 32],
}

impl Group {
    /// The elements of a size; `None` for a size whose elements do not fit a key.
    ///
    /// ```
    /// use cube::{Group, Size};
    /// let fit: Vec<Size> = Size::ALL.into_iter().filter(|&size| Group::of(size).is_some()).collect();
    /// assert_eq!(fit, [Size::TWO, Size::THREE]);
    /// ```
    pub fn of(size: Size) -> Option<&'static Self> {
        static GROUPS: [OnceLock<Option<Group>>; Size::ALL.len()] =
            [const { OnceLock::new() }; Size::ALL.len()];
        GROUPS[size.index()].get_or_init(|| Self::make(size)).as_ref()
    }

    fn make(size: Size) -> Option<Self> {
        let orbits = Orbit::of(size);
        let count: usize = orbits.iter().map(|orbit| orbit.pieces() as usize).sum();
        if orbits.iter().any(|orbit| orbit.looks_alike()) || orbits.len() > ORBITS || count > PIECES {
            return None;
        }
        let mut places = [0; PIECES];
        let mut around = [[0; 3]; PIECES];
        let mut clockwise = Element::IDENTITY.pull;
        let mut pieces = [0; ENTRIES];
        let mut number = 0;
        for (&orbit, first) in orbits.iter().zip((0u8..).step_by(STRIDE)) {
            for piece in orbit.all_pieces() {
                let reference = orbit.reference(piece);
                for (entry, steps) in around[number].iter_mut().zip(0..) {
                    *entry = first + orbit.turned(reference, steps).index() as u8;
                }
                for &at in &around[number] {
                    pieces[entry(at)] = number as u8;
                }
                number += 1;
            }
            for sticker in Sticker::all() {
                clockwise[first as usize + sticker.index()] = first + orbit.turned(sticker, 1).index() as u8;
            }
        }
        // What a size lacks stays where it is: entries that no table touches.
        for (spare, missing) in around[number..].iter_mut().zip((STRIDE as u8..).step_by(2)) {
            *spare = [missing; 3];
        }
        for (place, around) in places.iter_mut().zip(&around) {
            *place = around[0];
        }
        let mut group = Self {
            size,
            held: Vec::new(),
            motions: vec![Element::IDENTITY; Motion::count(size)],
            places,
            around,
            clockwise,
            pieces,
            anchor: [0; STRIDE],
        };
        group.held =
            (0..24).map(|number| group.element(&State::held(size, Rotation::numbered(number)))).collect();
        for (number, element) in group.held.iter().enumerate() {
            group.anchor[element.pull[0] as usize % STRIDE] = number as u8;
        }
        for turn in Turn::all(size) {
            if let Ok(motion) = turn.motion(size) {
                group.motions[motion.index()] = group.element(&State::solved(size).after(&[turn]));
            }
        }
        Some(group)
    }

    /// The size.
    pub const fn size(&self) -> Size {
        self.size
    }

    fn first_entry(&self, orbit: Orbit) -> Option<usize> {
        orbit.index_on(self.size).map(|number| number * STRIDE)
    }

    /// What leads from solved to a state of the size.
    pub fn element(&self, state: &State) -> Element {
        let mut element = Element { core: state.core().number(), ..Element::IDENTITY };
        for (&orbit, first) in Orbit::of(self.size).iter().zip((0..ENTRIES).step_by(STRIDE)) {
            element.set(first, state.orbit(orbit));
        }
        element
    }

    /// The element that brings pieces to places, given by a sticker each: where, and of which piece. Pieces that are not
    /// named stay; the fixed centres too. Turning need not be able to do it.
    ///
    /// `None` when a piece would be in two places, or the size has no such pieces.
    pub fn moving(&self, pieces: impl IntoIterator<Item = (Orbit, Sticker, Sticker)>) -> Option<Element> {
        let mut tables = [*Perm::IDENTITY.table(); ORBITS];
        for (orbit, place, there) in pieces {
            let table = &mut tables[orbit.index_on(self.size)?];
            for (at, lies) in orbit.stickers_from(place).zip(orbit.stickers_from(there)) {
                table[at.index()] = lies.index() as u8;
            }
        }
        let mut element = Element::IDENTITY;
        for (table, first) in tables.into_iter().zip((0..ENTRIES).step_by(STRIDE)) {
            element.set(first, &Perm::new(table)?);
        }
        Some(element)
    }

    /// The sticker that an element brings to a place; the place's own on a size without such pieces.
    #[inline]
    pub fn at(&self, element: &Element, orbit: Orbit, place: Sticker) -> Sticker {
        self.first_entry(orbit).map_or(place, |first| {
            Sticker::new(element.pull[(first + place.index()) % ENTRIES] % STRIDE as u8).unwrap_or(place)
        })
    }

    /// A turn; nothing for one that the size does not have.
    pub fn turn(&self, turn: Turn) -> &Element {
        turn.motion(self.size).map_or(&Element::IDENTITY, |motion| &self.motions[motion.index()])
    }

    /// Turns one after another.
    pub fn turns(&self, turns: &[Turn]) -> Element {
        turns.iter().fold(Element::IDENTITY, |so_far, &turn| so_far.then(self.turn(turn)))
    }

    /// The 24 rotations of the whole cube, in an order of their own; [`Group::standard_hold`] gives a place in it.
    pub fn holds(&self) -> &[Element] {
        &self.held
    }

    /// The rotation after which an element is the standard one of the 24 that differ only in how the cube is held:
    /// on odd sizes the one whose fixed centres are in place, on even ones that whose first sticker is.
    #[inline]
    pub fn standard_hold(&self, element: &Element) -> usize {
        if self.size.is_odd() {
            INVERSES[(element.core & 31) as usize] as usize
        } else {
            let at = element.pull[..Sticker::COUNT].iter().position(|&sticker| sticker == 0).unwrap_or(0);
            self.anchor[at] as usize
        }
    }

    /// The element itself as a key: two elements have the same key only if they are the same.
    #[inline]
    pub fn key(&self, element: &Element) -> ElementKey {
        pack(|piece| element.pull[entry(self.places[piece])], element.core)
    }

    /// The element of a key.
    #[inline]
    pub fn unpacked(&self, key: ElementKey) -> Element {
        let mut element = Element::IDENTITY;
        let (mut low, mut high) = (key as u64, (key >> LOW_BITS) as u64);
        for (piece, around) in self.around.iter().enumerate().rev() {
            let bits = if piece < CORNERS { &mut high } else { &mut low };
            let mut sticker = around[0] & !(STRIDE as u8 - 1) | (*bits & 31) as u8;
            *bits >>= 5;
            for &at in around {
                element.pull[entry(at)] = sticker;
                sticker = self.clockwise[entry(sticker)];
            }
        }
        element.core = (high & 31) as u8;
        element
    }

    /// [`Group::key`] of one element and then another, without making the product.
    #[inline]
    pub fn key_of_product(&self, first: &Element, next: &Element) -> ElementKey {
        let core = product(first.core, next.core);
        pack(|piece| first.pull[entry(next.pull[entry(self.places[piece])])], core)
    }

    /// [`Group::key`] of three elements one after another, of which the middle one is a rotation of [`Group::holds`].
    #[inline]
    pub fn key_with_hold(&self, first: &Element, hold: usize, last: &Element) -> ElementKey {
        let held = &self.held[hold];
        let core = product(product(first.core, held.core), last.core);
        pack(|piece| first.pull[entry(held.pull[entry(last.pull[entry(self.places[piece])])])], core)
    }

    /// The element up to how the cube is held: those that differ by a rotation of the whole cube after them, and only
    /// those, have the same key.
    #[inline]
    pub fn key_up_to_hold(&self, element: &Element) -> ElementKey {
        let held = &self.held[self.standard_hold(element)];
        pack(|piece| element.pull[entry(held.pull[entry(self.places[piece])])], 0)
    }

    /// As [`Group::key_up_to_hold`], by the places of the pieces alone, however they are turned there.
    pub fn key_of_places(&self, element: &Element) -> ElementKey {
        let held = &self.held[self.standard_hold(element)];
        pack(|piece| self.pieces[entry(element.pull[entry(held.pull[entry(self.places[piece])])])], 0)
    }

    /// An element as the right factor of many products.
    pub fn right(&self, element: &Element) -> Right {
        let held = std::array::from_fn(|number| {
            let held = &self.held[number];
            self.places.map(|place| element.pull[entry(held.pull[entry(place)])])
        });
        Right { held, inverse: element.inverse(), core: element.core }
    }

    /// [`Group::key_up_to_hold`] of the inverse of `left`, then `right`. Both the element `left` and its inverse are given.
    #[inline]
    pub fn key_of_quotient(&self, left: &Element, left_inverse: &Element, right: &Right) -> ElementKey {
        let hold = if self.size.is_odd() {
            INVERSES[(product(left_inverse.core, right.core) & 31) as usize]
        } else {
            // Where the first sticker lies in the quotient.
            self.anchor[right.inverse.pull[entry(left.pull[0])] as usize % STRIDE]
        };
        let from = &right.held[hold as usize];
        pack(|piece| left_inverse.pull[entry(from[piece])], 0)
    }
}

impl Element {
    fn set(&mut self, first: usize, perm: &Perm) {
        for (slot, &sticker) in self.pull[first..].iter_mut().zip(perm.table()) {
            *slot = first as u8 + sticker;
        }
    }
}

impl Left {
    /// Makes an element ready.
    pub fn new(element: &Element) -> Self {
        let pairs = |orbit: usize| {
            let at = |sticker: usize| u16::from(element.pull[orbit * STRIDE + sticker]) % STRIDE as u16;
            (0..STRIDE * STRIDE).map(|pair| at(pair % STRIDE) | at(pair / STRIDE) << 5).collect()
        };
        Self { pairs: std::array::from_fn(pairs), core: PRODUCTS[(element.core & 31) as usize] }
    }

    /// The key of this element and then the one with the given key: two pieces are looked up at a time.
    #[inline]
    pub fn then(&self, key: ElementKey) -> ElementKey {
        let (low, high) = (key as u64, (key >> LOW_BITS) as u64);
        let half = |table: &[u16], bits: u64, pieces: usize| {
            (0..pieces / 2).map(|pair| 10 * pair).fold(0, |packed, shift| {
                packed | u64::from(table[(bits >> shift) as usize % (STRIDE * STRIDE)]) << shift
            })
        };
        let [corners, others] = &self.pairs;
        let core = u64::from(self.core[(high >> CORE_SHIFT) as usize & 31]) << CORE_SHIFT;
        let high = half(corners, high, CORNERS) | core;
        ElementKey::from(high) << LOW_BITS | ElementKey::from(half(others, low, PIECES - CORNERS))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Algorithm;
    use proptest::prelude::*;
    use std::collections::HashMap;

    fn states() -> impl Strategy<Value = (&'static Group, [State; 3])> {
        let sizes: Vec<Size> = Size::ALL.into_iter().filter(|&size| Group::of(size).is_some()).collect();
        prop::sample::select(sizes).prop_flat_map(|size| {
            let all: Vec<Turn> = Turn::all(size).collect();
            let state = prop::collection::vec(prop::sample::select(all), 0..30)
                .prop_map(move |turns| State::solved(size).after(&turns));
            let group = Group::of(size).expect("chosen for that");
            (Just(group), [state.clone(), state.clone(), state])
        })
    }

    proptest! {
        #[test]
        fn elements_multiply_as_states_do((group, [p, q, r]) in states()) {
            let [a, b, c] = [&p, &q, &r].map(|state| group.element(state));
            prop_assert_eq!(a.then(&b), group.element(&p.then(&q)));
            prop_assert_eq!(a.then(&b).then(&c), a.then(&b.then(&c)));
            prop_assert_eq!(a.inverse(), group.element(&p.inverse()));
            for &orbit in Orbit::of(group.size()) {
                for place in Sticker::all() {
                    prop_assert_eq!(group.at(&a, orbit, place), p.at(orbit, place));
                }
            }
        }

        #[test]
        fn keys_are_those_of_the_products((group, [p, q, _]) in states(), hold in 0..24usize) {
            let (a, b) = (group.element(&p), group.element(&q));
            let key = group.key(&a.then(&b));
            prop_assert!(key >> ELEMENT_KEY_BITS == 0);
            prop_assert_eq!(group.unpacked(key), a.then(&b));
            prop_assert_eq!(group.key_of_product(&a, &b), key);
            prop_assert_eq!(Left::new(&a).then(group.key(&b)), key);
            let between = a.then(&group.holds()[hold]).then(&b);
            prop_assert_eq!(group.key_with_hold(&a, hold, &b), group.key(&between));
            prop_assert_eq!(group.key(&a) == group.key(&b), p == q);
        }

        #[test]
        fn holding_is_left_out((group, [p, q, _]) in states(), hold in 0..24usize) {
            let (a, b) = (group.element(&p), group.element(&q));
            let otherwise = a.then(&group.holds()[hold]);
            prop_assert_eq!(group.key_up_to_hold(&otherwise), group.key_up_to_hold(&a));
            prop_assert_eq!(group.key_of_places(&otherwise), group.key_of_places(&a));
            let alike = Rotation::all().any(|rotation| p.after(rotation.turns()) == q);
            prop_assert_eq!(group.key_up_to_hold(&a) == group.key_up_to_hold(&b), alike);
            let quotient = a.inverse().then(&b);
            let right = group.right(&b);
            prop_assert_eq!(group.key_of_quotient(&a, &a.inverse(), &right), group.key_up_to_hold(&quotient));
        }
    }

    #[test]
    fn turns_are_the_turns_of_states() {
        for group in Size::ALL.into_iter().filter_map(Group::of) {
            for turn in Turn::all(group.size()) {
                assert_eq!(*group.turn(turn), group.element(&State::solved(group.size()).after(&[turn])));
            }
        }
        let two = Group::of(Size::TWO).unwrap();
        let slice = Algorithm::parse("M", Size::THREE).unwrap().flatten();
        assert_eq!(two.turns(&slice), Element::IDENTITY);
    }

    #[test]
    fn only_the_places_count_where_turning_is_left_out() {
        let group = Group::of(Size::THREE).unwrap();
        let corner = |name| Orbit::Corner.sticker(name).unwrap();
        let twisted = group.moving([(Orbit::Corner, corner("UFR"), corner("RUF"))]).unwrap();
        assert_eq!(group.key_of_places(&twisted), group.key_of_places(&Element::IDENTITY));
        assert_ne!(group.key_up_to_hold(&twisted), group.key_up_to_hold(&Element::IDENTITY));
        let swapped = group
            .moving([
                (Orbit::Corner, corner("UFR"), corner("UBR")),
                (Orbit::Corner, corner("UBR"), corner("UFR")),
            ])
            .unwrap();
        assert_ne!(group.key_of_places(&swapped), group.key_of_places(&Element::IDENTITY));
        assert_eq!(group.moving([(Orbit::Corner, corner("UFR"), corner("UBR"))]), None);
    }

    /// A key is never zero, so that a table may take zero for an empty slot.
    #[test]
    fn no_key_is_zero() {
        for group in Size::ALL.into_iter().filter_map(Group::of) {
            let mut seen: HashMap<ElementKey, usize> = HashMap::new();
            for (number, hold) in group.holds().iter().enumerate() {
                assert_ne!(group.key(hold), 0);
                assert_eq!(seen.insert(group.key(hold), number), None);
            }
        }
    }
}
