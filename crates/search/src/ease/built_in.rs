//! What turning costs two hands, as this project estimates it: no measurement, so fit it to your own timings.
//!
//! The cube is held with both hands, the right one on R, the left one on L. Where a thumb is tells how a hand holds it:
//! down (on D), front (on F), up (on U) or back (on B). A turn of R or L is made by the wrist, which takes the thumb along
//! from down over front and up to back and no further; all other turns are made by a finger and leave the thumb where it
//! is. The left hand has the mirror image of each way, and a wide turn is made as the turn of its face.

use super::model::{Effort, Feature, Finger, Model, Reach, Way};
use cube::{Amount, Block, Face, Slice, Turn};

/// Seconds for each thing the hands do, in the order of [`Feature::ALL`].
pub(super) const SECONDS: [f64; Feature::COUNT] = [
    0.25, // to begin at all
    0.11, 0.17, // the wrist
    0.09, 0.15, // an index finger turns U
    0.13, 0.20, // a ring finger turns D
    0.16, 0.25, // F
    0.26, 0.40, // B
    0.15, 0.22, // M
    0.24, 0.38, // E or S
    0.03, // more than one layer
    0.07, // the finger hardly reaches
    0.05, // the finger that has just moved
    0.05, // together with the turn before
    0.22, // taking hold anew
    0.35, // the whole cube
];

const QUARTER: Amount = Amount::Clockwise;
const HALF: Amount = Amount::Half;
const BACK: Amount = Amount::Counter;

/// Ways of the right hand: the block and its amounts, by which finger, counted as what, and how well the finger reaches
/// with the thumb down, in front, up and at the back.
type Row = (Block, &'static [Amount], Finger, Effort, [Reach; 4]);

const NEVER: Reach = Reach::Never;
const EASY: Reach = Reach::Easy;
const UNEASY: Reach = Reach::Uneasy;

const ROWS: [Row; 12] = [
    (Block::face(Face::U), &[QUARTER, HALF], Finger::Index, Effort::Index, [EASY, EASY, UNEASY, NEVER]),
    (Block::face(Face::U), &[BACK], Finger::Index, Effort::Index, [UNEASY, UNEASY, NEVER, NEVER]),
    (Block::face(Face::D), &[BACK, HALF], Finger::Ring, Effort::Ring, [UNEASY, EASY, EASY, NEVER]),
    (Block::face(Face::D), &[QUARTER], Finger::Ring, Effort::Ring, [NEVER, UNEASY, UNEASY, NEVER]),
    (Block::face(Face::F), &[QUARTER, HALF], Finger::Index, Effort::Front, [EASY, UNEASY, NEVER, NEVER]),
    (Block::face(Face::F), &[BACK], Finger::Thumb, Effort::Front, [EASY, UNEASY, NEVER, NEVER]),
    (Block::face(Face::B), &[BACK, HALF], Finger::Index, Effort::Back, [NEVER, UNEASY, EASY, NEVER]),
    (Block::face(Face::B), &[QUARTER], Finger::Ring, Effort::Back, [UNEASY, UNEASY, UNEASY, NEVER]),
    (Block::Slice(Slice::M), &[BACK, HALF], Finger::Ring, Effort::Middle, [UNEASY, EASY, EASY, NEVER]),
    (Block::Slice(Slice::M), &[QUARTER], Finger::Index, Effort::Middle, [EASY, UNEASY, NEVER, NEVER]),
    (
        Block::Slice(Slice::E),
        &[QUARTER, HALF, BACK],
        Finger::Index,
        Effort::Cross,
        [UNEASY, EASY, UNEASY, NEVER],
    ),
    (
        Block::Slice(Slice::S),
        &[QUARTER, HALF, BACK],
        Finger::Index,
        Effort::Cross,
        [EASY, UNEASY, EASY, NEVER],
    ),
];

/// The ways one by one.
pub(super) fn ways() -> Vec<Way> {
    let each = |(block, amounts, finger, effort, reach): &Row| {
        let (block, finger, effort, reach) = (*block, *finger, *effort, *reach);
        amounts.iter().map(move |&amount| Way { turn: Turn::new(block, amount), finger, effort, reach })
    };
    ROWS.iter().flat_map(each).collect()
}

/// What making a turn costs the hands of the built-in model when nothing else hinders them, in thousandths of a second: to choose
/// among sequences of equal length where no model of a person's own hands is asked for. A rotation is dearest.
///
/// ```
/// use cube::{Algorithm, Size};
/// use search::ease::alone;
/// let turn = |text: &str| alone(Algorithm::parse(text, Size::THREE).unwrap().flatten()[0]);
/// assert!(turn("R") < turn("R2") && turn("R") < turn("Rw") && turn("R") < turn("B"));
/// ```
pub fn alone(turn: Turn) -> u32 {
    let thousandths = |feature: Feature| (SECONDS[feature.index()] * 1000.0).round() as u32;
    let Turn { block, amount } = Model::as_face(turn);
    let by_finger = ROWS.iter().find(|row| row.0 == block).map(|row| row.3.feature(amount));
    let by_wrist = match amount {
        Amount::Half => Feature::WristHalf,
        Amount::Clockwise | Amount::Counter => Feature::WristQuarter,
    };
    let made = by_finger.unwrap_or(if turn.is_rotation() { Feature::Rotation } else { by_wrist });
    let wide = matches!(turn.block, Block::Outer { depth: 2.., .. });
    thousandths(made) + if wide { thousandths(Feature::Wide) } else { 0 }
}
