//! The 48 symmetries of the cube, and which effects they and undoing make equal.

use super::turns::TurnSet;
use cube::{
    Axis, ElementKey, Face, Group, Orbit, Perm, Rotation, State, Sticker, Turn, inverted, mirrored, rotated,
};
use std::collections::HashMap;

/// A symmetry: first perhaps a mirror that exchanges L and R, then a rotation.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) struct Symmetry {
    mirror: bool,
    rotation: Rotation,
}

impl Symmetry {
    fn all() -> impl Iterator<Item = Self> {
        [false, true]
            .into_iter()
            .flat_map(|mirror| Rotation::all().map(move |rotation| Self { mirror, rotation }))
    }

    fn face(self, face: Face) -> Face {
        let face = if self.mirror && face.axis() == Axis::X { face.opposite() } else { face };
        self.rotation.image(face)
    }

    /// What does in the symmetric view what the turns do here.
    pub fn turns(self, turns: &[Turn]) -> Vec<Turn> {
        if self.mirror {
            rotated(&mirrored(turns, Axis::X), self.rotation)
        } else {
            rotated(turns, self.rotation)
        }
    }

    fn turn(self, turn: Turn) -> Turn {
        let turn = if self.mirror { turn.mirrored(Axis::X) } else { turn };
        turn.rotated(self.rotation)
    }

    /// Where each sticker of an orbit goes.
    fn stickers(self, orbit: Orbit) -> [u8; 24] {
        let mut images = [0; 24];
        for sticker in Sticker::all() {
            let faces: Vec<Face> = orbit.faces(sticker).iter().map(|&face| self.face(face)).collect();
            let image = Sticker::all().find(|&other| {
                let others = orbit.faces(other);
                others.first() == faces.first() && faces.iter().all(|face| others.contains(face))
            });
            images[sticker.index()] = image.map_or(0, |image| image.index() as u8);
        }
        images
    }
}

/// How to get from the algorithms of one effect to those of an equal one.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) struct Passage {
    symmetry: Symmetry,
    inverse: bool,
}

impl Passage {
    /// The algorithm carried over, commuting turns in order.
    pub fn carry(self, turns: &[Turn]) -> Vec<Turn> {
        let turns = if self.inverse { inverted(turns) } else { turns.to_vec() };
        TurnSet::ordered(&self.symmetry.turns(&turns))
    }
}

/// Effects that are equal up to the symmetries that a turn set keeps, and undoing.
pub(super) struct Class {
    /// The effect to search, by its place in the list.
    pub searched: usize,
    /// All of the class, each with the way to it.
    pub members: Vec<(usize, Passage)>,
}

/// A symmetry with its action on states of a size.
struct Action {
    group: &'static Group,
    symmetry: Symmetry,
    /// Where the stickers of each orbit of the size go.
    stickers: Vec<[u8; 24]>,
    faces: [Face; 6],
}

impl Action {
    fn of(symmetry: Symmetry, group: &'static Group) -> Self {
        Self {
            group,
            symmetry,
            stickers: Orbit::of(group.size()).iter().map(|&orbit| symmetry.stickers(orbit)).collect(),
            faces: Face::ALL.map(|face| symmetry.face(face)),
        }
    }

    /// The key of the state as the symmetry shows it.
    fn key(&self, state: &State) -> Option<ElementKey> {
        let mut perms = Vec::with_capacity(self.stickers.len());
        for (&orbit, images) in Orbit::of(state.size()).iter().zip(&self.stickers) {
            let perm = state.orbit(orbit);
            let mut table = [0; 24];
            for sticker in Sticker::all() {
                table[images[sticker.index()] as usize] = images[perm.at(sticker).index()];
            }
            perms.push(Perm::new(table)?);
        }
        let mut core = Face::ALL;
        for face in Face::ALL {
            core[self.faces[face.index()].index()] = self.faces[state.core().image(face).index()];
        }
        let core = Rotation::from_images(core)?;
        let image = State::from_orbits(state.size(), core, &perms).ok()?;
        Some(self.group.key(&self.group.element(&image)))
    }
}

/// Sorts states into classes. The turn set has the inverse of every turn, so undoing always keeps it.
pub(super) fn classes(states: &[State], set: &TurnSet) -> Vec<Class> {
    let actions: Vec<Action> = Symmetry::all()
        .filter(|symmetry| set.is_kept_by(|turn| symmetry.turn(turn)))
        .map(|symmetry| Action::of(symmetry, set.group()))
        .collect();
    let mut known: HashMap<ElementKey, (usize, Passage)> = HashMap::new();
    let mut classes: Vec<Class> = Vec::new();
    for (at, state) in states.iter().enumerate() {
        let key = set.group().key(&set.group().element(state));
        if let Some(&(class, passage)) = known.get(&key) {
            classes[class].members.push((at, passage));
            continue;
        }
        let class = classes.len();
        for (inverse, source) in [(false, *state), (true, state.inverse())] {
            for action in &actions {
                if let Some(image) = action.key(&source) {
                    let passage = Passage { symmetry: action.symmetry, inverse };
                    known.entry(image).or_insert((class, passage));
                }
            }
        }
        let same = Passage { symmetry: Symmetry { mirror: false, rotation: Rotation::NONE }, inverse: false };
        classes.push(Class { searched: at, members: vec![(at, same)] });
    }
    classes
}

#[cfg(test)]
mod tests {
    use super::super::Effect;
    use super::*;
    use cube::Size;

    #[test]
    fn symmetries_act_on_states_as_on_turns() {
        let group = Group::of(Size::THREE).unwrap();
        let turns: Vec<Turn> = Turn::all(Size::THREE).collect();
        for symmetry in Symmetry::all() {
            let action = Action::of(symmetry, group);
            for pair in turns.windows(2) {
                let state = State::solved(Size::THREE).after(pair);
                let image = State::solved(Size::THREE).after(&symmetry.turns(pair));
                assert_eq!(
                    action.key(&state),
                    Some(group.key(&group.element(&image))),
                    "{symmetry:?} of {pair:?}"
                );
            }
        }
    }

    #[test]
    fn three_cycles_fall_into_few_classes() {
        let set = TurnSet::faces(Size::THREE).unwrap();
        for (orbit, cases) in [(Orbit::Corner, 378), (Orbit::Midge, 440)] {
            let buffer = Sticker::new(2).unwrap();
            let states: Vec<State> = Effect::all_three_cycles(Size::THREE, orbit, buffer)
                .unwrap()
                .iter()
                .map(|effect| *effect.state())
                .collect();
            assert_eq!(states.len(), cases);
            let classes = classes(&states, &set);
            assert_eq!(classes.iter().map(|class| class.members.len()).sum::<usize>(), cases);
            assert!(classes.len() < 30, "{} classes of {orbit}s", classes.len());
        }
    }
}
