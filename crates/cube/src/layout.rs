//! For each size: what lies under every facelet, and what every turn does. Made from the geometry, once.

use crate::geometry::Spot;
use crate::{Amount, Axis, Face, Motion, Orbit, Perm, Rotation, Size, Sticker};
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
    /// By [`Motion::index`].
    motions: Vec<TurnTable>,
}

impl Layout {
    pub fn of(size: Size) -> &'static Self {
        static LAYOUTS: [OnceLock<Layout>; 6] = [const { OnceLock::new() }; 6];
        LAYOUTS[size.index()].get_or_init(|| Self::make(size))
    }

    /// What a motion of this size does.
    pub fn motion(&self, motion: Motion) -> &TurnTable {
        &self.motions[motion.index()]
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
        let cells: Vec<Cell> = cells
            .into_iter()
            .enumerate()
            .map(|(i, cell)| cell.unwrap_or(Cell::Fixed(Face::at(i / (n * n)))))
            .collect();
        let mut motions = vec![TurnTable::NOTHING; Motion::count(size)];
        for axis in Axis::ALL {
            // Layers about one axis turn without touching each other: a block is its layers one after another.
            let single: Vec<TurnTable> =
                (0..size.layers()).map(|layer| Self::quarter(size, orbits, &cells, axis, layer)).collect();
            for quarter in Motion::about(size, axis, Amount::Clockwise) {
                let block = quarter
                    .layers()
                    .fold(TurnTable::NOTHING, |so_far, layer| so_far.then(&single[layer as usize]));
                motions[quarter.index()] = block;
            }
            for (amount, before) in [(Amount::Half, Amount::Clockwise), (Amount::Counter, Amount::Half)] {
                let once = Motion::about(size, axis, Amount::Clockwise);
                let before = Motion::about(size, axis, before);
                for ((more, before), once) in Motion::about(size, axis, amount).zip(before).zip(once) {
                    motions[more.index()] = motions[before.index()].then(&motions[once.index()]);
                }
            }
        }
        Self { orbits, cells, wing_backs, motions }
    }

    /// A quarter turn of one layer (from 0 at the positive end), clockwise as seen from the positive end of the axis.
    fn quarter(size: Size, orbits: &[Orbit], cells: &[Cell], axis: Axis, layer: u8) -> TurnTable {
        let mut table = TurnTable::NOTHING;
        for (&orbit, perm) in orbits.iter().zip(&mut table.orbits) {
            let mut pull = *Perm::IDENTITY.table();
            for sticker in Sticker::all() {
                let spot = orbit.spot(size, sticker);
                if spot.layer(size, axis) == layer
                    && let Cell::Sticker(_, to) = cells[Self::facelet(size, spot.quarter(axis))]
                {
                    pull[to.index()] = sticker.index() as u8;
                }
            }
            *perm = Perm::unchecked(pull);
        }
        if size.middle() == Some(layer + 1) {
            table.core = Rotation::about(axis, Amount::Clockwise);
        }
        table
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Turn;

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
                let table = layout.motion(turn.motion(size).expect("a turn of this size"));
                for (orbit, perm) in layout.orbits.iter().zip(&table.orbits) {
                    let perm = Perm::new(*perm.table()).expect("a permutation");
                    let square = perm.then(&perm);
                    assert!(square.then(&square).is_identity(), "{turn} on the {orbit}s of {size}");
                }
            }
        }
    }
}
