//! Classes of pieces that look alike, centres, and how many states each holds.
//!
//! What a face shows is a row of six numbers, how many of its four places have each colour; six such rows, whose columns come to four
//! as well, are a way to look. As arrows from the face of a wrong place to that of its colour these hang together in parts (see
//! `blind`: as many come to a face as leave it), and all figures of a trace follow from the parts: how many faces and arrows each has,
//! whether it is that of the buffer's face, and whether the buffer's own place is wrong. So the faces are divided among parts, and the
//! states of each part are counted: all of so many faces and arrows, row by row, less those that fall apart.

use super::draw::below;
use super::tally::{Tally, Watched};
use crate::condition::Part;
use cube::{Face, Perm, Sticker};
use rand::Rng;
use rustc_hash::FxHashMap;
use search::random::shuffle;
use std::sync::OnceLock;

/// How many faces there are, and places of a colour on each of them.
const FACES: usize = Face::ALL.len();
const PLACES: u8 = 4;
/// The most arrows: every place is wrong.
const ARROWS: usize = FACES * PLACES as usize;

/// How many states there are of each number of arrows.
type ByArrows = [u128; ARROWS + 1];

/// Faces that hang together: how many they are, and how many of their places are wrong. A face by itself has no wrong place.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
struct Joined {
    faces: usize,
    arrows: usize,
}

/// States for which the faces are divided among the same parts.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct Division {
    /// The part of the buffer's face.
    buffer: Joined,
    /// Whether the buffer's place has its colour.
    right: bool,
    /// The others, the largest first.
    others: Vec<Joined>,
    /// How many states there are.
    pub weight: u128,
}

impl Division {
    /// Everything that the figures of its states are made up of.
    pub(crate) fn tally(&self, watched: &Watched) -> Tally {
        let away = u8::from(!self.right);
        let pieces = self.buffer.arrows as u8 - away + 1;
        let mut tally = watched.add(Tally::default(), Part::BufferAlike { pieces, right: self.right });
        let wrong: usize = self.others.iter().map(|part| part.arrows).sum();
        for _ in 0..ARROWS as u8 - wrong as u8 - pieces {
            tally = watched.add(tally, Part::Solved);
        }
        for part in self.others.iter().filter(|part| part.arrows > 0) {
            tally = watched.add(tally, Part::Cycle { pieces: part.arrows as u8, elsewhere: false });
        }
        tally
    }
}

/// How many of a face's places have each colour.
type Shown = [u8; FACES];

/// Ways to fill faces: for colours of which so many places are left, by the number of wrong places.
struct Fillings {
    faces: usize,
    /// For each face, the ways to fill it and those behind it.
    from: Vec<FxHashMap<Shown, Box<ByArrows>>>,
}

/// In how many orders the places of a face show these colours; 4! / ∏ n!, textbook.
fn orders(shown: Shown) -> u128 {
    let factorial = |count: u8| (1..=u128::from(count)).product::<u128>();
    shown.into_iter().fold(factorial(PLACES), |orders, count| orders / factorial(count))
}

/// Calls for each way in which a face can show colours of which so many places are left.
fn each_shown(left: Shown, faces: usize, see: &mut dyn FnMut(Shown)) {
    fn fill(left: Shown, at: usize, faces: usize, places: u8, shown: &mut Shown, see: &mut dyn FnMut(Shown)) {
        if at + 1 == faces {
            if places <= left[at] {
                shown[at] = places;
                see(*shown);
                shown[at] = 0;
            }
            return;
        }
        for count in 0..=places.min(left[at]) {
            shown[at] = count;
            fill(left, at + 1, faces, places - count, shown, see);
        }
        shown[at] = 0;
    }
    fill(left, 0, faces, PLACES, &mut [0; FACES], see);
}

/// What is left of each colour behind a face.
fn without(left: Shown, shown: Shown) -> Shown {
    std::array::from_fn(|colour| left[colour] - shown[colour])
}

impl Fillings {
    /// Of so many faces and as many colours.
    fn new(faces: usize) -> Self {
        let mut from: Vec<FxHashMap<Shown, Box<ByArrows>>> = vec![FxHashMap::default(); faces + 1];
        let mut end = [0; ARROWS + 1];
        end[0] = 1;
        from[faces].insert([0; FACES], Box::new(end));
        let full = Self::full(faces);
        let mut fillings = Self { faces, from };
        fillings.fill(0, full);
        fillings
    }

    /// All places of so many colours.
    fn full(faces: usize) -> Shown {
        std::array::from_fn(|colour| if colour < faces { PLACES } else { 0 })
    }

    fn fill(&mut self, face: usize, left: Shown) {
        if self.from[face].contains_key(&left) {
            return;
        }
        let mut choices = Vec::new();
        each_shown(left, self.faces, &mut |shown| choices.push(shown));
        let mut ways = [0; ARROWS + 1];
        for shown in choices {
            let rest = without(left, shown);
            self.fill(face + 1, rest);
            let wrong = usize::from(PLACES - shown[face]);
            for (arrows, &after) in self.ways(face + 1, rest).iter().enumerate().take(ARROWS + 1 - wrong) {
                ways[arrows + wrong] += after * orders(shown);
            }
        }
        self.from[face].insert(left, Box::new(ways));
    }

    /// The ways to fill a face and those behind it; none where these colours are never left.
    fn ways(&self, face: usize, left: Shown) -> ByArrows {
        self.from[face].get(&left).map_or([0; ARROWS + 1], |ways| **ways)
    }

    /// All ways.
    fn all(&self) -> ByArrows {
        self.ways(0, Self::full(self.faces))
    }

    /// The ways in which a place of the first face has its colour, or not.
    fn with_buffer(&self, right: bool) -> ByArrows {
        let full = Self::full(self.faces);
        let mut ways = [0; ARROWS + 1];
        each_shown(full, self.faces, &mut |shown| {
            let wrong = PLACES - shown[0];
            let here = orders(shown) * u128::from(if right { shown[0] } else { wrong }) / u128::from(PLACES);
            let behind = self.ways(1, without(full, shown));
            for (arrows, &after) in behind.iter().enumerate().take(ARROWS + 1 - usize::from(wrong)) {
                ways[arrows + usize::from(wrong)] += after * here;
            }
        });
        ways
    }

    /// Draws what each face shows, so many places being wrong; where the buffer's place is settled, weighed by it.
    fn draw(&self, mut arrows: usize, right: Option<bool>, generator: &mut impl Rng) -> Option<Vec<Shown>> {
        let mut left = Self::full(self.faces);
        let mut drawn = Vec::with_capacity(self.faces);
        for face in 0..self.faces {
            let mut choices: Vec<(u128, Shown)> = Vec::new();
            let mut sum = 0;
            each_shown(left, self.faces, &mut |shown| {
                let wrong = PLACES - shown[face];
                if usize::from(wrong) > arrows {
                    return;
                }
                // A quarter of these is meant, of all alike.
                let share = match right {
                    Some(true) if face == 0 => shown[face],
                    Some(false) if face == 0 => wrong,
                    _ => PLACES,
                };
                let behind = self.ways(face + 1, without(left, shown));
                let ways = orders(shown) * u128::from(share) * behind[arrows - usize::from(wrong)];
                if ways > 0 {
                    sum += ways;
                    choices.push((sum, shown));
                }
            });
            let at = below(sum, generator);
            let &(_, shown) = choices.iter().find(|&&(up_to, _)| up_to > at)?;
            left = without(left, shown);
            arrows -= usize::from(PLACES - shown[face]);
            drawn.push(shown);
        }
        Some(drawn)
    }
}

/// Whether all faces hang together.
fn hangs_together(shown: &[Shown]) -> bool {
    let mut reached = 1_u8;
    loop {
        let mut more = reached;
        for (face, colours) in shown.iter().enumerate() {
            for colour in (0..shown.len()).filter(|&colour| colours[colour] > 0) {
                if reached >> face & 1 == 1 || reached >> colour & 1 == 1 {
                    more |= 1 << face | 1 << colour;
                }
            }
        }
        if more == reached {
            return usize::from(reached) + 1 == 1 << shown.len();
        }
        reached = more;
    }
}

/// What is counted once.
struct Counts {
    /// By the number of faces; none of none.
    fillings: Vec<Fillings>,
    /// Those of them that hang together.
    joined: Vec<ByArrows>,
    /// The same with the buffer's place on the first face, wrong and right.
    with_buffer: Vec<[ByArrows; 2]>,
}

fn counts() -> &'static Counts {
    static COUNTS: OnceLock<Counts> = OnceLock::new();
    COUNTS.get_or_init(Counts::new)
}

/// n over k, textbook.
fn choose(n: usize, k: usize) -> u128 {
    (0..k).fold(1, |found, at| found * (n - at) as u128 / (at + 1) as u128)
}

/// All ways of a number of faces, less those in which the first face hangs together with fewer.
fn hanging_together(all: &ByArrows, fewer: &[ByArrows], rest: &[ByArrows]) -> ByArrows {
    let faces = fewer.len();
    let mut ways = *all;
    for (part, joined) in fewer.iter().enumerate().skip(1) {
        let choices = choose(faces - 1, part - 1);
        for (arrows, &here) in joined.iter().enumerate().filter(|(_, here)| **here > 0) {
            for (others, &there) in rest[faces - part].iter().enumerate().take(ARROWS + 1 - arrows) {
                ways[arrows + others] -= choices * here * there;
            }
        }
    }
    ways
}

impl Counts {
    fn new() -> Self {
        let fillings: Vec<Fillings> = (0..=FACES).map(Fillings::new).collect();
        let all: Vec<ByArrows> = fillings.iter().map(Fillings::all).collect();
        let (mut joined, mut wrong, mut right) = (Vec::new(), Vec::new(), Vec::new());
        // Of no face there is no part.
        for parts in [&mut joined, &mut wrong, &mut right] {
            parts.push([0; ARROWS + 1]);
        }
        for faces in 1..=FACES {
            joined.push(hanging_together(&all[faces], &joined, &all));
            wrong.push(hanging_together(&fillings[faces].with_buffer(false), &wrong, &all));
            right.push(hanging_together(&fillings[faces].with_buffer(true), &right, &all));
        }
        let with_buffer = wrong.into_iter().zip(right).map(<[ByArrows; 2]>::from).collect();
        Self { fillings, joined, with_buffer }
    }
}

/// All divisions that some state has.
pub(crate) fn divisions() -> Vec<Division> {
    let counts = counts();
    let mut found = Vec::new();
    for faces in 1..=FACES {
        for arrows in 0..=ARROWS {
            for right in [false, true] {
                let here = counts.with_buffer[faces][usize::from(right)][arrows];
                if here > 0 {
                    let weight = choose(FACES - 1, faces - 1) * here;
                    let division =
                        Division { buffer: Joined { faces, arrows }, right, others: Vec::new(), weight };
                    divide(FACES - faces, division, &mut found);
                }
            }
        }
    }
    found
}

/// Divides the faces that are left among parts, none larger than the one before, so that each division comes once.
fn divide(left: usize, division: Division, found: &mut Vec<Division>) {
    if left == 0 {
        return found.push(division);
    }
    let most = division.others.last().copied().unwrap_or(Joined { faces: FACES, arrows: ARROWS });
    for faces in (1..=left).rev() {
        for arrows in (0..=ARROWS).rev() {
            let part = Joined { faces, arrows };
            let ways = counts().joined[faces][arrows];
            if part > most || ways == 0 {
                continue;
            }
            let mut next = division.clone();
            next.others.push(part);
            // Parts that are the same are in no order: each time one is added, all orders of them have been counted.
            let same = next.others.iter().filter(|&&other| other == part).count() as u128;
            next.weight = next.weight * choose(left, faces) * ways / same;
            divide(left - faces, next, found);
        }
    }
}

/// Draws what lies at each place: a uniformly random state of the division.
pub(crate) fn draw(division: &Division, buffer: Sticker, generator: &mut impl Rng) -> Perm {
    let mut faces: Vec<Face> = Face::ALL.into_iter().filter(|&face| face != buffer.face()).collect();
    shuffle(&mut faces, generator);
    faces.insert(0, buffer.face());
    // The colour of each place.
    let mut colours = [buffer.face(); 24];
    let mut begin = 0;
    for (number, part) in std::iter::once(&division.buffer).chain(&division.others).enumerate() {
        let faces = &faces[begin..begin + part.faces];
        begin += part.faces;
        let right = (number == 0).then_some(division.right);
        let fillings = &counts().fillings[part.faces];
        let shown = loop {
            match fillings.draw(part.arrows, right, generator) {
                Some(shown) if hangs_together(&shown) => break shown,
                Some(_) => {}
                None => return Perm::IDENTITY,
            }
        };
        for (&face, shown) in faces.iter().zip(&shown) {
            let mut here: Vec<Face> = Vec::with_capacity(usize::from(PLACES));
            for (&colour, &count) in faces.iter().zip(shown) {
                here.extend(std::iter::repeat_n(colour, usize::from(count)));
            }
            shuffle(&mut here, generator);
            let places: Vec<Sticker> = Sticker::all().filter(|place| place.face() == face).collect();
            if let (Some(right), Some(at)) = (right, places.iter().position(|&place| place == buffer)) {
                // The buffer's place has its colour or not; which of those that do, and where the others are, is as it fell.
                let fitting: Vec<usize> =
                    (0..here.len()).filter(|&other| (here[other] == face) == right).collect();
                if let Some(&other) = fitting.get(below(fitting.len() as u128, generator) as usize) {
                    here.swap(at, other);
                }
            }
            for (place, colour) in places.into_iter().zip(here) {
                colours[place.index()] = colour;
            }
        }
    }
    lying(&colours, generator)
}

/// Pieces of these colours, those of one colour in a random order.
fn lying(colours: &[Face; 24], generator: &mut impl Rng) -> Perm {
    let mut table = *Perm::IDENTITY.table();
    for colour in Face::ALL {
        let mut pieces: Vec<Sticker> = Sticker::all().filter(|piece| piece.face() == colour).collect();
        shuffle(&mut pieces, generator);
        let places = Sticker::all().filter(|place| colours[place.index()] == colour);
        for (place, piece) in places.zip(pieces) {
            table[place.index()] = piece.index() as u8;
        }
    }
    Perm::new(table).unwrap_or(Perm::IDENTITY)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: C(24, 4) ways for each colour after another, 24! / 4!⁶; from memory 3,246,670,537,110,000.
    #[test]
    fn the_divisions_hold_all_states_once() {
        let sum: u128 = divisions().iter().map(|division| division.weight).sum();
        assert_eq!(sum, 3_246_670_537_110_000);
        let solved: Vec<Division> = divisions()
            .into_iter()
            .filter(|division| {
                division.buffer.arrows == 0 && division.others.iter().all(|part| part.arrows == 0)
            })
            .collect();
        assert_eq!(solved.iter().map(|division| division.weight).collect::<Vec<_>>(), [1]);
    }

    /// Source: the numbers of 2x2 and 3x3 tables are counted here by hand. Two faces that show n wrong places each: C(4, n)² ways.
    #[test]
    fn two_faces_are_counted_by_hand() {
        let joined = counts().joined[2];
        for wrong in 0..=4_usize {
            let ways = choose(4, wrong) * choose(4, wrong);
            assert_eq!(joined[2 * wrong], if wrong == 0 { 0 } else { ways });
        }
        assert_eq!(joined.iter().sum::<u128>(), 69);
        // Three places of three faces that go round: two directions, a place of four on each.
        assert_eq!(counts().joined[3][3], 2 * 4 * 4 * 4);
    }
}
