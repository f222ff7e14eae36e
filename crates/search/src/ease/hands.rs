//! Two hands that make turns: how they hold the cube, what each may do, and the cheapest way through.

use super::model::{Feature, Finger, Model, Reach};
use cube::{Amount, Axis, Block, Face, Turn};

/// A hand: the left one is on L, the right one on R.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Hand {
    /// The left hand.
    Left,
    /// The right hand.
    Right,
}

/// The face that a thumb is on, which tells how the hand holds the cube.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Thumb {
    /// On D.
    Down,
    /// On F, the usual one.
    Front,
    /// On U.
    Up,
    /// On B.
    Back,
}

impl Thumb {
    /// All four, in the order in which the wrist passes them.
    pub const ALL: [Self; 4] = [Self::Down, Self::Front, Self::Up, Self::Back];

    /// Its name in files.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Down => "down",
            Self::Front => "front",
            Self::Up => "up",
            Self::Back => "back",
        }
    }
}

/// A hand that takes hold anew.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Regrip {
    /// Before the turn with this number, from 0.
    pub before: usize,
    /// Which hand.
    pub hand: Hand,
    /// Where its thumb is then.
    pub thumb: Thumb,
}

/// How long the hands take for an algorithm, at best.
#[derive(Clone, PartialEq, Debug)]
pub struct Estimate {
    /// Seconds in all.
    pub seconds: f64,
    /// How often each feature occurs, in the order of [`Feature::ALL`].
    pub features: [u32; Feature::COUNT],
    /// Where the left and the right thumb are at the beginning.
    pub start: [Thumb; 2],
    /// Where a hand takes hold anew.
    pub regrips: Vec<Regrip>,
}

/// What moved last: a finger of a hand, or nothing in particular.
const MOVERS: usize = 9;
const NOBODY: u8 = 8;
/// Left thumb, right thumb, what moved last.
pub(super) const STATES: usize = 16 * MOVERS;

/// What of a hand makes a turn.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
enum Part {
    Finger(Finger),
    Wrist,
}

/// One way to make a turn from any of the hands' states.
#[derive(Clone, Copy, Debug)]
struct Act {
    hand: Hand,
    part: Part,
    from: u8,
    to: u8,
    cost: Feature,
    uneasy: bool,
}

/// What hands do for one turn.
#[derive(Clone, Debug)]
pub(super) struct Task {
    turn: Turn,
    acts: Vec<Act>,
    wide: bool,
}

/// A step of the hands: where it comes from and what it took.
#[derive(Clone, Copy, Debug)]
pub(super) struct Step {
    pub from: u8,
    pub to: u8,
    pub features: [Option<Feature>; 4],
    /// Places of the thumbs after taking hold anew, before the turn.
    gripped: u8,
}

const fn thumbs(state: u8) -> [u8; 2] {
    let grips = state / MOVERS as u8;
    [grips / 4, grips % 4]
}

const fn state(thumbs: [u8; 2], mover: u8) -> u8 {
    (thumbs[0] * 4 + thumbs[1]) * MOVERS as u8 + mover
}

const fn mover(hand: Hand, part: Part) -> u8 {
    let part = match part {
        Part::Finger(finger) => finger as u8,
        Part::Wrist => 3,
    };
    hand as u8 * 4 + part
}

impl Model {
    /// The cheapest way for two hands to make all turns: exact over all ways to hold the cube, to begin with and between turns.
    ///
    /// Rotations are turns of the whole cube here; deeper layers of large cubes are turned as wide turns are.
    pub fn estimate(&self, turns: &[Turn]) -> Estimate {
        let tasks: Vec<Task> = turns.iter().map(|&turn| self.task(turn)).collect();
        // Before each turn, for each state of the hands: the least seconds, and the step that led there.
        let mut least = [f64::INFINITY; STATES];
        for grips in 0..16 {
            least[state([grips / 4, grips % 4], NOBODY) as usize] = self.seconds[Feature::Start.index()];
        }
        let mut steps: Vec<[Option<Step>; STATES]> = Vec::with_capacity(tasks.len());
        for (number, task) in tasks.iter().enumerate() {
            let before = number.checked_sub(1).map(|before| turns[before]);
            let mut next = [f64::INFINITY; STATES];
            let mut led = [None; STATES];
            let reached = |from: u8| least[from as usize].is_finite();
            task.for_each_step(before, &reached, &mut |step| {
                let seconds = least[step.from as usize] + self.cost(step);
                if seconds < next[step.to as usize] {
                    next[step.to as usize] = seconds;
                    led[step.to as usize] = Some(step);
                }
            });
            least = next;
            steps.push(led);
        }
        let end = (0..STATES).min_by(|&a, &b| least[a].total_cmp(&least[b])).unwrap_or(0);
        trace_back(end as u8, least[end], &steps)
    }

    pub(super) fn task(&self, turn: Turn) -> Task {
        let wide = matches!(turn.block, Block::Outer { depth: 2.., .. });
        let mut acts = Vec::new();
        let half = turn.amount == Amount::Half;
        let face = Self::as_face(turn);
        if let Block::Outer { face: side @ (Face::R | Face::L), .. } = face.block {
            let hand = if side == Face::R { Hand::Right } else { Hand::Left };
            let cost = if half { Feature::WristHalf } else { Feature::WristQuarter };
            // R takes the right thumb from the front up, L the left one down.
            let up = (side == Face::R) == (turn.amount == Amount::Clockwise);
            for from in 0..4u8 {
                let reached = if half {
                    [from.checked_sub(2), Some(from + 2)]
                } else if up {
                    [None, Some(from + 1)]
                } else {
                    [from.checked_sub(1), None]
                };
                for to in reached.into_iter().flatten().filter(|&to| to < 4) {
                    // With the thumb behind, the wrist is bent as far as it goes.
                    let uneasy = from == Thumb::Back as u8 || to == Thumb::Back as u8;
                    acts.push(Act { hand, part: Part::Wrist, from, to, cost, uneasy });
                }
            }
        }
        for way in &self.ways {
            for (hand, made) in [(Hand::Right, way.turn), (Hand::Left, way.turn.mirrored(Axis::X))] {
                if made != face {
                    continue;
                }
                for (from, reach) in way.reach.iter().enumerate() {
                    let uneasy = match reach {
                        Reach::Never => continue,
                        Reach::Easy => false,
                        Reach::Uneasy => true,
                    };
                    let (from, cost) = (from as u8, way.effort.feature(turn.amount));
                    let part = Part::Finger(way.finger);
                    acts.push(Act { hand, part, from, to: from, cost, uneasy });
                }
            }
        }
        Task { turn, acts, wide }
    }

    pub(super) fn cost(&self, step: Step) -> f64 {
        let [old, new] = [thumbs(step.from), [step.gripped / 4, step.gripped % 4]];
        let regrips = f64::from(u8::from(old[0] != new[0]) + u8::from(old[1] != new[1]));
        step.features.iter().flatten().map(|feature| self.seconds[feature.index()]).sum::<f64>()
            + regrips * self.seconds[Feature::Regrip.index()]
    }
}

impl Task {
    /// Every step that makes the turn, from every state of the hands that is reached, taking hold anew first where that is needed.
    pub fn for_each_step(
        &self,
        before: Option<Turn>,
        reached: &dyn Fn(u8) -> bool,
        on: &mut dyn FnMut(Step),
    ) {
        for from in (0..STATES as u8).filter(|&from| reached(from)) {
            let held = thumbs(from);
            let last = from % MOVERS as u8;
            if self.turn.is_rotation() {
                let front = Thumb::Front as u8;
                let features = [Some(Feature::Rotation), None, None, None];
                // The hands come to lie in front as the cube turns; that is part of it.
                on(Step {
                    from,
                    to: state([front, front], NOBODY),
                    features,
                    gripped: held[0] * 4 + held[1],
                });
                continue;
            }
            for act in &self.acts {
                let own = act.hand as usize;
                let mut gripped = held;
                gripped[own] = act.from;
                let moves = mover(act.hand, act.part);
                let anew = gripped != held;
                let together = !anew && is_together(before, self.turn, last, act.hand);
                let mut after = gripped;
                after[own] = act.to;
                let again = !anew && last == moves && !together && act.part != Part::Wrist;
                let first = if together { Feature::Together } else { act.cost };
                let features = [
                    Some(first),
                    self.wide.then_some(Feature::Wide),
                    again.then_some(Feature::Again),
                    act.uneasy.then_some(Feature::Uneasy),
                ];
                on(Step { from, to: state(after, moves), features, gripped: gripped[0] * 4 + gripped[1] });
            }
        }
    }
}

/// Whether a turn can be made in one with the turn before: of the opposite face, by the other hand.
fn is_together(before: Option<Turn>, turn: Turn, last: u8, hand: Hand) -> bool {
    let Some(before) = before else { return false };
    let opposite = matches!(
        (before.block, turn.block),
        (Block::Outer { face: one, .. }, Block::Outer { face: other, .. }) if one == other.opposite()
    );
    opposite && last != NOBODY && last / 4 != hand as u8
}

fn trace_back(end: u8, seconds: f64, steps: &[[Option<Step>; STATES]]) -> Estimate {
    let mut features = [0; Feature::COUNT];
    features[Feature::Start.index()] = 1;
    let mut regrips = Vec::new();
    let mut at = end;
    for (before, led) in steps.iter().enumerate().rev() {
        let Some(step) = led[at as usize] else { continue };
        for feature in step.features.iter().flatten() {
            features[feature.index()] += 1;
        }
        let (old, new) = (thumbs(step.from), [step.gripped / 4, step.gripped % 4]);
        for hand in [Hand::Right, Hand::Left] {
            let own = hand as usize;
            if old[own] != new[own] {
                features[Feature::Regrip.index()] += 1;
                regrips.push(Regrip { before, hand, thumb: Thumb::ALL[new[own] as usize & 3] });
            }
        }
        at = step.from;
    }
    regrips.reverse();
    let start = thumbs(at).map(|thumb| Thumb::ALL[thumb as usize & 3]);
    Estimate { seconds, features, start, regrips }
}

#[cfg(test)]
mod tests {
    use super::*;
    use cube::{Algorithm, Size, mirrored};
    use proptest::prelude::*;

    fn estimate(text: &str) -> Estimate {
        Model::built_in().estimate(&Algorithm::parse(text, Size::THREE).unwrap().flatten())
    }

    fn times(estimate: &Estimate, feature: Feature) -> u32 {
        estimate.features[feature.index()]
    }

    #[test]
    fn a_sequence_for_two_hands_needs_no_regrip() {
        // Common practice, no source: R U R' U' runs in one hold, the right thumb below at first.
        let found = estimate("R U R' U'");
        assert_eq!(found.regrips, []);
        assert_eq!(found.start[Hand::Right as usize], Thumb::Down);
        assert_eq!(times(&found, Feature::WristQuarter), 2);
        assert_eq!(times(&found, Feature::IndexQuarter), 2);
        assert_eq!(times(&found, Feature::Uneasy), 0);
    }

    #[test]
    fn the_wrist_goes_only_so_far() {
        // Four turns the same way do not fit between the thumb below and behind.
        let found = estimate("R U R U R U R");
        assert!(!found.regrips.is_empty());
        assert!(found.regrips.iter().all(|regrip| regrip.hand == Hand::Right));
        assert_eq!(times(&found, Feature::Regrip) as usize, found.regrips.len());
    }

    #[test]
    fn opposite_faces_turn_together() {
        let found = estimate("R L'");
        assert_eq!(times(&found, Feature::Together), 1);
        assert!(found.seconds < estimate("R U").seconds);
        assert_eq!(times(&estimate("R M'"), Feature::Together), 0);
    }

    #[test]
    fn nothing_takes_the_time_to_begin() {
        let model = Model::built_in();
        assert!((estimate("").seconds - model.seconds()[Feature::Start.index()]).abs() < 1e-12);
        let rotation = estimate("x y2");
        assert_eq!(times(&rotation, Feature::Rotation), 2);
    }

    proptest! {
        #[test]
        fn seconds_are_the_sum_of_the_features(
            turns in prop::collection::vec(prop::sample::select(Turn::all(Size::THREE).collect::<Vec<_>>()), 0..20)
        ) {
            let model = Model::built_in();
            let found = model.estimate(&turns);
            let sum: f64 =
                found.features.iter().zip(model.seconds()).map(|(&times, seconds)| f64::from(times) * seconds).sum();
            prop_assert!((found.seconds - sum).abs() < 1e-9);
            prop_assert!(found.seconds.is_finite());
            // Two hands of equal skill: the mirror image takes as long.
            let mirror = model.estimate(&mirrored(&turns, Axis::X));
            prop_assert!((found.seconds - mirror.seconds).abs() < 1e-9);
            // More turns never take less.
            if let Some((_, fewer)) = turns.split_last() {
                prop_assert!(model.estimate(fewer).seconds <= found.seconds + 1e-9);
            }
        }
    }
}
