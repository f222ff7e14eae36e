//! For each size: what lies under every facelet, and what every turn does. Made from the geometry, once.

use crate::geometry::Spot;
use crate::{Amount, Axis, Face, Orbit, Perm, Rotation, Size, Sticker, Turn};
use std::sync::OnceLock;

/// What a facelet belongs to.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Cell {
    /// The centre of a face of an odd cube.
    Fixed(Face),
    /// A sticker of an orbit, given by its place in [`Orbit::of`].
    Sticker(usize, Sticker),
    /// The second sticker of a wing, which the first one stands for.
    WingBack(usize, Sticker),
}

/// What a turn does: to each orbit, and to the fixed centres.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct TurnTable {
    pub orbits: [Perm; Orbit::MOST],
    pub core: Rotation,
}

impl TurnTable {
    const NOTHING: Self = Self { orbits: [Perm::IDENTITY; Orbit::MOST], core: Rotation::NONE };

    fn then(&self, next: &Self) -> Self {
        let mut orbits = self.orbits;
        for (orbit, after) in orbits.iter_mut().zip(&next.orbits) {
            *orbit = orbit.then(after);
        }
        Self { orbits, core: self.core.then(next.core) }
    }
}

/// The tables of one size.
pub(crate) struct Layout {
    pub orbits: &'static [Orbit],
    /// Row by row, faces in the order of [`Face::ALL`].
    pub cells: Vec<Cell>,
    /// For each orbit and sticker, the face that the second sticker of a wing is on, and its facelet.
    pub wing_backs: Vec<[usize; 24]>,
    turns: Vec<TurnTable>,
}

impl Layout {
    pub fn of(size: Size) -> &'static Self {
        static LAYOUTS: [OnceLock<Layout>; 6] = [const { OnceLock::new() }; 6];
        LAYOUTS[size.index()].get_or_init(|| Self::make(size))
    }

    /// The table of a turn that the size has.
    pub fn turn(&self, turn: Turn) -> &TurnTable {
        &self.turns[turn.index()]
    }

    /// The place of a facelet in [`Layout::cells`].
    pub fn facelet(size: Size, spot: Spot) -> usize {
        let n = size.layers() as usize;
        let (row, column) = spot.row_column(size);
        (spot.face.index() * n + row as usize) * n + column as usize
    }

    fn make(size: Size) -> Self {
        let orbits = Orbit::of(size);
        let mut cells: Vec<Option<Cell>> = vec![None; size.facelets()];
        let mut wing_backs = vec![[0; 24]; orbits.len()];
        for (at, &orbit) in orbits.iter().enumerate() {
            for sticker in Sticker::all() {
                let spot = orbit.spot(size, sticker);
                cells[Self::facelet(size, spot)] = Some(Cell::Sticker(at, sticker));
                if let Orbit::Wing { .. } = orbit
                    && let Some(&face) = orbit.faces(sticker).get(1)
                {
                    let back = Self::facelet(size, Spot { cubie: spot.cubie, face });
                    cells[back] = Some(Cell::WingBack(at, sticker));
                    wing_backs[at][sticker.index()] = back;
                }
            }
        }
        let n = size.layers() as usize;
        let cells = cells
            .into_iter()
            .enumerate()
            .map(|(i, cell)| cell.unwrap_or(Cell::Fixed(Face::at(i / (n * n)))))
            .collect();

        let mut turns = vec![TurnTable::NOTHING; Turn::INDICES];
        for turn in Turn::all(size) {
            turns[turn.index()] = Self::make_turn(size, orbits, turn);
        }
        Self { orbits, cells, wing_backs, turns }
    }

    fn make_turn(size: Size, orbits: &[Orbit], turn: Turn) -> TurnTable {
        let (axis, layers, quarters) = turn.layers(size);
        let quarter = Self::quarter(size, orbits, axis, layers);
        (0..quarters).fold(TurnTable::NOTHING, |so_far, _| so_far.then(&quarter))
    }

    /// A quarter turn of some layers, clockwise as seen from the positive end of the axis.
    fn quarter(size: Size, orbits: &[Orbit], axis: Axis, layers: u8) -> TurnTable {
        let mut table = TurnTable::NOTHING;
        for (&orbit, perm) in orbits.iter().zip(&mut table.orbits) {
            let places: Vec<usize> =
                Sticker::all().map(|sticker| Self::facelet(size, orbit.spot(size, sticker))).collect();
            let mut pull = *Perm::IDENTITY.table();
            for sticker in Sticker::all() {
                let spot = orbit.spot(size, sticker);
                if layers & (1 << spot.layer(size, axis)) != 0 {
                    let goes = Self::facelet(size, spot.quarter(axis));
                    if let Some(to) = places.iter().position(|&place| place == goes) {
                        pull[to] = sticker.index() as u8;
                    }
                }
            }
            *perm = Perm::unchecked(pull);
        }
        if size.middle().is_some_and(|middle| layers & (1 << (middle - 1)) != 0) {
            table.core = Rotation::about(axis, Amount::Clockwise);
        }
        table
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_facelet_is_accounted_for() {
        for size in Size::ALL {
            let layout = Layout::of(size);
            let fixed = layout.cells.iter().filter(|cell| matches!(cell, Cell::Fixed(_))).count();
            assert_eq!(fixed, if size.is_odd() { 6 } else { 0 });
            for (at, &orbit) in layout.orbits.iter().enumerate() {
                let own = layout
                    .cells
                    .iter()
                    .filter(|&&cell| matches!(cell, Cell::Sticker(o, _) if o == at))
                    .count();
                let backs = layout
                    .cells
                    .iter()
                    .filter(|&&cell| matches!(cell, Cell::WingBack(o, _) if o == at))
                    .count();
                assert_eq!(own, 24, "{orbit} of {size}");
                assert_eq!(backs, if matches!(orbit, Orbit::Wing { .. }) { 24 } else { 0 });
            }
        }
    }

    #[test]
    fn turns_are_permutations_of_order_four_or_two() {
        for size in Size::ALL {
            let layout = Layout::of(size);
            for turn in Turn::all(size) {
                let table = layout.turn(turn);
                for (orbit, perm) in layout.orbits.iter().zip(&table.orbits) {
                    let perm = Perm::new(*perm.table()).expect("a permutation");
                    let square = perm.then(&perm);
                    assert!(square.then(&square).is_identity(), "{turn} on the {orbit}s of {size}");
                }
            }
        }
    }
}
