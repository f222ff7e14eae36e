//! The cube unfolded.

use crate::picture::{Anchor, Patch, Picture, UNIT, open_stickers};
use crate::place::Place;
use crate::space::held_cell;
use crate::svg::{Ink, Markup, Num, Svg};
use cube::{Face, Facelets, Rotation, Size};

/// Column and row of a face in the net: L F R B side by side, U above F, D below.
pub(crate) const fn seat(face: Face) -> (u8, u8) {
    match face {
        Face::U => (1, 0),
        Face::L => (0, 1),
        Face::F => (1, 1),
        Face::R => (2, 1),
        Face::B => (3, 1),
        Face::D => (1, 2),
    }
}

/// A face with row and column, from 0.
type Cell = (Face, u8, u8);

/// All stickers of a net held another way, by the face where each is then seen, row by row.
pub(crate) fn cells(size: Size, hold: Rotation) -> Vec<(Cell, Cell)> {
    let n = size.layers();
    let mut cells: Vec<_> = Face::ALL
        .into_iter()
        .flat_map(|face| (0..n).flat_map(move |row| (0..n).map(move |column| (face, row, column))))
        .map(|cell| (held_cell(size, hold, cell), cell))
        .collect();
    cells.sort_unstable();
    cells
}

impl Picture {
    /// The unfolded net: all six faces flat, U above F, D below, L to the left, R and B to the right.
    pub fn net(&self) -> Svg {
        self.net_held(Rotation::NONE)
    }

    /// The unfolded net of the cube held another way; letters stay upright.
    pub fn net_held(&self, hold: Rotation) -> Svg {
        let size = self.facelets.size();
        let side = 2.0 * f64::from(size.layers());
        let step = side + 0.8;
        let margin = 0.5;
        let corner = |face: Face| {
            let (column, row) = seat(face);
            [f64::from(column) * step, f64::from(row) * step]
        };
        let view = [-margin, -margin, 3.0 * step + side + 2.0 * margin, 2.0 * step + side + 2.0 * margin];
        let mut markup = Markup::picture(&self.caption, view.map(|part| part * UNIT), 1.0);
        for face in Face::ALL {
            let [x, y] = corner(face);
            markup
                .tag("rect")
                .with("x", Num((x - 0.2) * UNIT))
                .with("y", Num((y - 0.2) * UNIT))
                .with("width", Num((side + 0.4) * UNIT))
                .with("height", Num((side + 0.4) * UNIT))
                .with("rx", Num(0.45 * UNIT))
                .with("fill", self.theme.ink(Ink::Body))
                .empty();
        }
        let patches: Vec<Patch> = cells(size, hold)
            .into_iter()
            .map(|((seen, row, column), cell)| {
                let [x, y] = corner(seen);
                let middle = [x + 2.0 * f64::from(column) + 1.0, y + 2.0 * f64::from(row) + 1.0];
                let (face, own_row, own_column) = cell;
                Patch {
                    cell,
                    place: Facelets::place(size, face, own_row, own_column)
                        .filter(|&(_, _, back)| !back)
                        .map(|(orbit, sticker, _)| Place::new(orbit, sticker)),
                    colour: self.facelets.get(face, own_row, own_column).unwrap_or(face),
                    middle: middle.map(|part| part * UNIT),
                    right: [UNIT, 0.0],
                    down: [0.0, UNIT],
                    unit: UNIT,
                }
            })
            .collect();
        open_stickers(&mut markup);
        for patch in &patches {
            self.patch(&mut markup, patch);
        }
        markup.close();
        self.thread(&mut markup, |place| {
            patches
                .iter()
                .find(|patch| patch.place == Some(place))
                .map(|patch| Anchor { at: patch.middle, seen: true })
        });
        markup.finish()
    }
}
