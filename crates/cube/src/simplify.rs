//! Turning sequences of turns into equal or related ones: merged, backwards, mirrored, held another way.

use crate::{Amount, Axis, Block, Face, Rotation, Size, Turn};

/// The sequence with turns of the same block merged and cancelled, also across turns about the same axis,
/// which commute.
///
/// ```
/// use cube::{Algorithm, Size, display_turns, simplified};
/// let turns = Algorithm::parse("R L R U U' L2", Size::THREE).unwrap().flatten();
/// assert_eq!(display_turns(&simplified(&turns)).to_string(), "R2 L'");
/// ```
pub fn simplified(turns: &[Turn]) -> Vec<Turn> {
    let mut kept: Vec<Turn> = Vec::with_capacity(turns.len());
    for &turn in turns {
        let run =
            kept.iter().rposition(|earlier| earlier.block.axis() != turn.block.axis()).map_or(0, |at| at + 1);
        match kept[run..].iter().position(|earlier| earlier.block == turn.block) {
            None => kept.push(turn),
            Some(offset) => {
                let quarters = kept[run + offset].amount.quarters() + turn.amount.quarters();
                match Amount::from_quarters(i64::from(quarters)) {
                    Some(amount) => kept[run + offset].amount = amount,
                    None => {
                        kept.remove(run + offset);
                    }
                }
            }
        }
    }
    kept
}

/// The sequence that undoes this one.
pub fn inverted(turns: &[Turn]) -> Vec<Turn> {
    turns.iter().rev().map(|turn| turn.inverse()).collect()
}

/// The sequence as seen in a mirror that exchanges the two ends of an axis (`Axis::X` exchanges L and R).
pub fn mirrored(turns: &[Turn], mirror: Axis) -> Vec<Turn> {
    turns.iter().map(|turn| turn.mirrored(mirror)).collect()
}

/// The sequence that does to a cube turned by `rotation` what this one does to it as it is held.
pub fn rotated(turns: &[Turn], rotation: Rotation) -> Vec<Turn> {
    turns.iter().map(|turn| turn.rotated(rotation)).collect()
}

/// An equal sequence of outer turns only, and the rotation that is left to be made after it.
///
/// Slices and wide turns become turns of the layers on the other side; a wide turn stays where the other
/// side would have more layers to turn. Turns that the size does not have do nothing, as in [`crate::State::after`].
///
/// ```
/// use cube::{Algorithm, Size, display_turns, without_rotations};
/// let turns = Algorithm::parse("x U M", Size::THREE).unwrap().flatten();
/// let (outer, rest) = without_rotations(&turns, Size::THREE);
/// assert_eq!(display_turns(&outer).to_string(), "F L' R");
/// assert_eq!(rest, cube::Rotation::NONE);
/// ```
pub fn without_rotations(turns: &[Turn], size: Size) -> (Vec<Turn>, Rotation) {
    let mut outer = Vec::with_capacity(turns.len());
    // How the cube would be held now had all rotations been made: turns are read in that hold.
    let mut held = Rotation::NONE;
    for turn in turns.iter().filter(|turn| turn.check(size).is_ok()) {
        let back = held.inverse();
        let push = |outer: &mut Vec<Turn>, face: Face, depth: u8, amount: Amount| {
            outer.push(Turn::new(Block::Outer { face: back.image(face), depth }, amount));
        };
        match turn.block {
            Block::Outer { face, depth } if 2 * depth <= size.layers() => {
                push(&mut outer, face, depth, turn.amount);
            }
            Block::Outer { face, depth } => {
                push(&mut outer, face.opposite(), size.layers() - depth, turn.amount);
                held = held.then(whole(face, turn.amount));
            }
            Block::Slice(slice) => {
                let side = size.layers() / 2;
                let face = slice.follows();
                push(&mut outer, face, side, turn.amount.inverse());
                push(&mut outer, face.opposite(), side, turn.amount);
                held = held.then(whole(face, turn.amount));
            }
            Block::Whole(axis) => held = held.then(Rotation::about(axis, turn.amount)),
        }
    }
    (outer, held)
}

/// The whole cube turned as a face turns.
fn whole(face: Face, amount: Amount) -> Rotation {
    let amount = if face.is_positive() { amount } else { amount.inverse() };
    Rotation::about(face.axis(), amount)
}
