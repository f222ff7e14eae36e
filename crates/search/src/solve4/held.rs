//! The same turns taken from one side or the other, so that the cube ends in a wanted hold without being turned as a whole.

use cube::{Axis, Block, Rotation, Size, Turn};

/// A turn of the layers on the other side, and the turn of the whole cube that makes it the same.
fn from_the_other_side(turn: Turn, size: Size) -> Option<(Turn, Rotation)> {
    let Block::Outer { face, depth } = turn.block else { return None };
    let other = Block::Outer { face: face.opposite(), depth: size.layers() - depth };
    let axis = Axis::ALL.into_iter().find(|&axis| axis == face.axis())?;
    let amount = if face.is_positive() { turn.amount } else { turn.amount.inverse() };
    Some((Turn::new(other, turn.amount), Rotation::about(axis, amount)))
}

/// The turns with sides chosen so that what they lead to is held as if the whole cube were turned back by `hold` at the end, with as few turns
/// of more than half the layers as can be; `None` where no choice does it.
pub fn held(turns: &[Turn], hold: Rotation, size: Size) -> Option<Vec<Turn>> {
    let holds: Vec<Rotation> = Rotation::all().collect();
    let number = |hold: Rotation| holds.iter().position(|&other| other == hold);
    // For each hold so far the fewest turns of many layers; and by which turn from which hold it came.
    let mut fewest: Vec<Option<u32>> =
        holds.iter().map(|&hold| (hold == Rotation::NONE).then_some(0)).collect();
    let mut steps: Vec<Vec<Option<(usize, Turn)>>> = Vec::with_capacity(turns.len());
    for &turn in turns {
        let mut next: Vec<Option<u32>> = vec![None; holds.len()];
        let mut step = vec![None; holds.len()];
        for (from, &cost) in fewest.iter().enumerate() {
            let Some(cost) = cost else { continue };
            // What is still to be turned as a whole is turned before this turn, which is therefore another one.
            let turn = turn.rotated(holds[from].inverse());
            let choices = [Some((turn, Rotation::NONE)), from_the_other_side(turn, size)];
            for (turn, whole) in choices.into_iter().flatten() {
                let Some(to) = number(whole.then(holds[from])) else { continue };
                let many = matches!(turn.block, Block::Outer { depth, .. } if 2 * depth > size.layers());
                let cost = cost + u32::from(many);
                if next[to].is_none_or(|known| cost < known) {
                    next[to] = Some(cost);
                    step[to] = Some((from, turn));
                }
            }
        }
        fewest = next;
        steps.push(step);
    }
    let mut at = number(hold)?;
    fewest[at]?;
    let mut chosen = Vec::with_capacity(turns.len());
    for step in steps.iter().rev() {
        let (from, turn) = step[at]?;
        chosen.push(turn);
        at = from;
    }
    chosen.reverse();
    Some(chosen)
}

#[cfg(test)]
mod tests {
    use super::*;
    use cube::{Algorithm, State, display_turns};

    #[test]
    fn turns_from_the_other_side_lead_to_the_same_in_another_hold() {
        let size = Size::ALL[2];
        let turns = Algorithm::parse("Rw U Fw2 L' Uw D2 B Rw' F", size).expect("moves").flatten();
        let made = State::solved(size).after(&turns);
        let mut reached = 0;
        for hold in Rotation::all() {
            if let Some(chosen) = held(&turns, hold, size) {
                assert_eq!(
                    State::solved(size).after(&chosen).after(hold.turns()),
                    made,
                    "{}",
                    display_turns(&chosen)
                );
                reached += 1;
            }
        }
        assert_eq!(reached, 24);
    }
}
