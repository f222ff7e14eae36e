//! What turns do to sets of places of one orbit, and the turns that each phase may make.

use cube::{Amount, Axis, Block, Face, Orbit, Size, State, Sticker, Turn};

/// How the places of an orbit are carried by a turn: a set of 24 places is a word, carried byte by byte.
pub struct Carrier {
    bytes: Vec<[[u32; 256]; 3]>,
}

impl Carrier {
    /// Of an orbit by some turns.
    pub fn new(orbit: Orbit, turns: &[Turn], size: Size) -> Self {
        let table = |turn: &Turn| {
            let turned = State::solved(size).after(&[*turn]);
            let mut to = [0u32; Sticker::COUNT];
            for place in Sticker::all() {
                to[turned.at(orbit, place).index()] = 1 << place.index();
            }
            std::array::from_fn(|byte| {
                std::array::from_fn(|word| {
                    (0..8).filter(|bit| word >> bit & 1 == 1).fold(0, |set, bit| set | to[byte * 8 + bit])
                })
            })
        };
        Self { bytes: turns.iter().map(table).collect() }
    }

    /// The places where what was in `set` is after a turn.
    pub fn after(&self, set: u32, turn: usize) -> u32 {
        let [low, middle, high] = &self.bytes[turn];
        low[(set & 255) as usize] | middle[(set >> 8 & 255) as usize] | high[(set >> 16 & 255) as usize]
    }
}

/// The places on a face.
pub const fn on(face: Face) -> u32 {
    15 << (face as u32 * 4)
}

/// The turns of outer layers and, of the blocks of two layers, those that take one from U, R and F: the others are these and a turn of the
/// whole cube.
pub fn all_turns() -> Vec<Turn> {
    let blocks = Axis::ALL.into_iter().flat_map(|axis| {
        let ends = Face::ALL.into_iter().filter(move |face| face.axis() == axis);
        let wide = ends.clone().filter(|face| face.is_positive()).map(|face| Block::Outer { face, depth: 2 });
        ends.map(Block::face).chain(wide)
    });
    blocks.flat_map(Turn::of).collect()
}

/// Whether a turn keeps the colours of U and D on these two faces, once they are there.
pub fn keeps_axis(turn: Turn) -> bool {
    let outermost = matches!(turn.block, Block::Outer { depth: 1, .. });
    outermost || turn.block.axis() == Face::U.axis() || turn.amount == Amount::Half
}

/// Whether a turn is one of the last phase before all is paired: of F and B and of two layers only half turns.
pub fn keeps_classes(turn: Turn) -> bool {
    let quarter = match turn.block {
        Block::Outer { face, depth: 1 } => face.axis() != Face::F.axis(),
        Block::Outer { .. } | Block::Inner { .. } | Block::Slice(_) | Block::Whole(_) => false,
    };
    quarter || turn.amount == Amount::Half
}

/// The edges of the cube, each by the two places of its wings.
///
/// The first is the one whose sticker comes first in the order U D F B R L, as for the reference sticker of a midge. Turns that
/// [`keeps_classes`] names carry first places to first places.
pub struct Edges {
    /// First and second place of each edge.
    pub places: [[u8; 2]; 12],
    /// All first places.
    pub firsts: u32,
    /// The edge of each place.
    pub edge: [u8; Sticker::COUNT],
}

impl Edges {
    /// Of the only orbit of wings of a size.
    pub fn new(orbit: Orbit) -> Self {
        const RANK: [Face; 6] = [Face::U, Face::D, Face::F, Face::B, Face::R, Face::L];
        let rank = |face: Face| RANK.iter().position(|&other| other == face);
        let mut edges = Self { places: [[0; 2]; 12], firsts: 0, edge: [0; Sticker::COUNT] };
        let firsts = Sticker::all().filter(|&place| {
            let faces = orbit.faces(place);
            faces.first().map(|&own| rank(own)) < faces.get(1).map(|&other| rank(other))
        });
        for (number, first) in firsts.enumerate() {
            let backwards = |place: &Sticker| orbit.faces(*place).iter().eq(orbit.faces(first).iter().rev());
            let second = Sticker::all().find(backwards).unwrap_or(first);
            edges.places[number] = [first.index() as u8, second.index() as u8];
            edges.firsts |= 1 << first.index();
            edges.edge[first.index()] = number as u8;
            edges.edge[second.index()] = number as u8;
        }
        edges
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_classes_of_places_are_kept_by_the_turns_that_are_said_to() {
        let size = Size::ALL[2];
        let wing = Orbit::of(size)[1];
        let edges = Edges::new(wing);
        assert_eq!(edges.firsts.count_ones(), 12);
        let turns = all_turns();
        assert_eq!(turns.len(), 27);
        let carrier = Carrier::new(wing, &turns, size);
        for (at, &turn) in turns.iter().enumerate() {
            assert!(!keeps_classes(turn) || carrier.after(edges.firsts, at) == edges.firsts, "{turn}");
            assert!(!keeps_classes(turn) || keeps_axis(turn), "{turn}");
        }
        let kept = |keeps: fn(Turn) -> bool| turns.iter().filter(|&&turn| keeps(turn)).count();
        assert_eq!((kept(keeps_axis), kept(keeps_classes)), (23, 17));
    }
}
