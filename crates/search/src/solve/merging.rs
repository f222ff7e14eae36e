//! Which turns can be made as one or cancel.

use cube::{Axis, Block, Size, Turn};

/// Where a turn cuts the cube: its axis, and how many layers lie on the positive side of the cut.
///
/// A run of turns about one axis is as short as it can be, up to the way of holding, exactly when no two of them
/// cut at the same place.
pub fn cut(turn: Turn, size: Size) -> Option<(Axis, u8)> {
    match turn.block {
        Block::Outer { face, depth } if face.is_positive() => Some((face.axis(), depth)),
        Block::Outer { face, depth } => Some((face.axis(), size.layers().saturating_sub(depth))),
        Block::Inner { .. } | Block::Slice(_) | Block::Whole(_) => None,
    }
}

/// Whether two outer turns can be made as one or cancel, also across turns about the same axis between them, and also
/// when they take the cube from its two sides.
pub fn merges(turns: &[Turn], size: Size) -> bool {
    turns.iter().enumerate().any(|(at, &turn)| {
        turns[at + 1..]
            .iter()
            .take_while(|later| later.block.axis() == turn.block.axis())
            .any(|&later| cut(turn, size).is_some() && cut(later, size) == cut(turn, size))
    })
}
