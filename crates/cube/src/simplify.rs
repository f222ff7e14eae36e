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
/// side would have more layers to turn. Inner layers become two outer blocks. Turns that the size does not have do nothing, as in [`crate::State::after`].
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
    let layers = size.layers();
    // How the cube would be held now had all rotations been made: turns are read in that hold.
    let mut held = Rotation::NONE;
    for turn in turns {
        let Ok(motion) = turn.motion(size) else { continue };
        let follows = turn.block.follows();
        // How many layers lie before the block, seen from the face that it follows, and behind it.
        let (above, below) = (motion.layers().start, layers - motion.layers().end);
        let (before, behind) = if follows.is_positive() { (above, below) } else { (below, above) };
        let back = held.inverse();
        let mut push = |face: Face, depth: u8, amount: Amount| {
            if depth > 0 {
                outer.push(Turn::new(Block::Outer { face: back.image(face), depth }, amount));
            }
        };
        let (amount, other_way) = (turn.amount, turn.amount.inverse());
        if 2 * behind >= layers {
            // Within the near half: turned from there, and what is before it turned back.
            push(follows, layers - behind, amount);
            push(follows, before, other_way);
        } else if 2 * before >= layers {
            push(follows.opposite(), layers - before, other_way);
            push(follows.opposite(), behind, amount);
        } else {
            // The block stays where it is, and what lies on both sides turns the other way round it.
            push(follows, before, other_way);
            push(follows.opposite(), behind, amount);
            let axis = Rotation::about(motion.axis(), motion.amount());
            held = held.then(axis);
        }
    }
    (outer, held)
}
