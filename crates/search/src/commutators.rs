//! Three-cycles of wings and centres as commutators, found by trying every `[X Y X', Z]` of single layers.
//!
//! `X Y X'` changes few pieces of the layer that `Z` turns; where it changes one of a kind and nothing else there, the commutator
//! takes three pieces of the kind round. Which do so without moving anything else is found out by making them.

use cube::{Algorithm, Axis, Block, Face, Orbit, Perm, Rotation, Size, State, Sticker, Turn};

/// The turns of single layers that move a kind: faces, inner layers counted from the nearer face, and the middle one.
///
/// ```
/// use cube::{Orbit, Size};
/// use search::commutators::layers;
/// let four = Size::new(4).unwrap();
/// let wing = Orbit::of(four)[1];
/// // Six faces and six inner layers, each by three amounts.
/// assert_eq!(layers(four, wing).len(), 36);
/// ```
pub fn layers(size: Size, orbit: Orbit) -> Vec<Turn> {
    Turn::all(size)
        .filter(|turn| match turn.block {
            Block::Outer { depth, .. } => depth == 1,
            Block::Inner { first, last, .. } => first == last && 2 * first <= size.layers(),
            Block::Slice(_) => true,
            Block::Whole(_) => false,
        })
        .filter(|&turn| !State::solved(size).after(&[turn]).orbit(orbit).is_identity())
        .collect()
}

/// A commutator `[X Y X', Z]` with the places that it takes round: the piece of the first goes to the second, and so on.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) struct Commutator {
    parts: [Turn; 3],
    pub(crate) ring: [Sticker; 3],
}

impl Commutator {
    /// As it is written.
    pub(crate) fn algorithm(&self, size: Size) -> Option<Algorithm> {
        let [x, y, z] = self.parts;
        let first = Algorithm::from_turns(size, &[x, y, x.inverse()]).ok()?;
        Algorithm::commutator(first, Algorithm::from_turns(size, &[z]).ok()?)
    }

    /// Its turns.
    pub(crate) const fn turns(&self) -> [Turn; 8] {
        let [x, y, z] = self.parts;
        [x, y, x.inverse(), z, x, y.inverse(), x.inverse(), z.inverse()]
    }
}

/// The three places that a permutation takes round, if it moves no more.
fn ring(perm: &Perm) -> Option<[Sticker; 3]> {
    let mut moved = Sticker::all().filter(|&place| perm.at(place) != place);
    let a = moved.next()?;
    moved.nth(1)?;
    if moved.next().is_some() {
        return None;
    }
    let goes = perm.inverse();
    Some([a, goes.at(a), goes.at(goes.at(a))])
}

/// All commutators of single layers that take three pieces of the kind round and move nothing else at all, in one position: `Z`
/// turns as U does, or the equator, and the first of `X` and `Y` that turns about a level axis turns as R does, or M.
pub(crate) fn commutators(size: Size, orbit: Orbit) -> Vec<Commutator> {
    let turns: Vec<(Turn, State)> =
        layers(size, orbit).into_iter().map(|turn| (turn, State::solved(size).after(&[turn]))).collect();
    let stands = |turn: Turn, face: Face| {
        turn.block.follows() == face
            || (matches!(turn.block, Block::Slice(_)) && turn.block.axis() == face.axis())
    };
    let mut found = Vec::new();
    for (x, x_state) in &turns {
        for (y, y_state) in turns.iter().filter(|(y, _)| y.block.axis() != x.block.axis()) {
            if !stands(if x.block.axis() == Axis::Y { *y } else { *x }, Face::R) {
                continue;
            }
            for (z, z_state) in turns.iter().filter(|(z, _)| stands(*z, Face::U)) {
                let effect = |orbit: Orbit| {
                    let [x, y, z] = [x_state, y_state, z_state].map(|state| *state.orbit(orbit));
                    let first = x.then(&y).then(&x.inverse());
                    first.then(&z).then(&first.inverse()).then(&z.inverse())
                };
                let Some(ring) = ring(&effect(orbit)) else { continue };
                let others = Orbit::of(size).iter().filter(|&&other| other != orbit);
                let parts = [*x, *y, *z];
                if others.into_iter().all(|&other| effect(other).is_identity()) {
                    found.push(Commutator { parts, ring });
                }
            }
        }
    }
    found.retain(|found| State::solved(size).after(&found.turns()).core() == Rotation::NONE);
    found
}
