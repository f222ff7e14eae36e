//! What pupils do wrong with their hands, once the letters are there.

use super::{Deed, Fault, Letter, Made, Pupil, any_face_turn, any_rotation, other_faces, pick};
use blind::Carrier;
use cube::{Amount, Block, Orbit, Sticker, Turn, inverted};
use rand::prelude::*;

impl Pupil<'_> {
    pub(super) fn turning(&self, fault: Fault, made: &Made, rng: &mut impl Rng) -> Option<Deed> {
        let all = || {
            made.parts.iter().flat_map(|(letter, parts)| {
                parts.iter().enumerate().map(move |(part, turns)| (*letter, part, turns.clone()))
            })
        };
        let single = |wanted: &dyn Fn(Turn) -> bool| -> Vec<(usize, usize, usize, Turn)> {
            all()
                .flat_map(|(letter, part, turns)| {
                    turns.into_iter().enumerate().map(move |(at, turn)| (letter, part, at, turn))
                })
                .filter(|&(.., turn)| wanted(turn))
                .collect()
        };
        let quarter = |turn: Turn| turn.amount != Amount::Half;
        let turns = match fault {
            Fault::TurnedBack | Fault::HalfMade => single(&quarter),
            Fault::QuarterMade => single(&|turn| !quarter(turn)),
            Fault::OtherLayers => single(&|turn| matches!(turn.block, Block::Outer { .. })),
            _ => single(&|_| true),
        };
        let (letter, part, at, turn) = pick(rng, &turns)?;
        let with = |amount: Amount| vec![Turn::new(turn.block, amount)];
        let instead = match fault {
            Fault::TurnedBack => vec![turn.inverse()],
            Fault::HalfMade => with(Amount::Half),
            Fault::QuarterMade => with(if rng.random() { Amount::Clockwise } else { Amount::Counter }),
            Fault::TurnGone => Vec::new(),
            Fault::TurnExtra => vec![any_face_turn(rng)?, turn],
            Fault::OtherFace => vec![pick(rng, &other_faces(turn))?],
            Fault::OtherLayers => {
                let Block::Outer { face, depth } = turn.block else { return None };
                let other = Turn::new(Block::Outer { face, depth: 3 - depth }, turn.amount);
                other.check(self.solver.size()).ok()?;
                vec![other]
            }
            Fault::Stopped => {
                return Some(Deed::Stop { letter, part, turn: if rng.random() { 0 } else { at } });
            }
            _ => return self.whole_part(fault, made, rng),
        };
        Some(Deed::Hands { letter, part, from: at, to: at + 1, made: instead })
    }

    fn whole_part(&self, fault: Fault, made: &Made, rng: &mut impl Rng) -> Option<Deed> {
        let wanted = match fault {
            Fault::SetupGone | Fault::SetupTwice | Fault::SetupBack => 0..1,
            Fault::UndoGone | Fault::UndoBack | Fault::UndoTwice => 2..3,
            Fault::SetupElse | Fault::TurnedInHand => 0..3,
            _ => 1..2,
        };
        let parts: Vec<(usize, usize, Vec<Turn>)> = made
            .parts
            .iter()
            .flat_map(|(letter, parts)| {
                parts.iter().enumerate().map(|(at, turns)| (*letter, at, turns.clone()))
            })
            .filter(|(_, at, turns)| wanted.contains(at) && !turns.is_empty())
            .filter(|(_, at, _)| fault != Fault::SetupElse || *at != 1)
            .collect();
        let (letter, part, turns) = pick(rng, &parts)?;
        let others = |part: usize| -> Vec<Vec<Turn>> {
            let orbits = self.kinds.iter().map(|kind| kind.orbit);
            let of_kind =
                |orbit: Orbit| self.single_letters(orbit).into_iter().map(|parts| parts[part].clone());
            orbits.flat_map(of_kind).filter(|other| !other.is_empty() && *other != turns).collect()
        };
        let instead = match fault {
            Fault::SetupTwice | Fault::UndoTwice => [turns.as_slice(), &turns].concat(),
            // Made again it is made as it was learned, whatever slipped the first time.
            Fault::AlgorithmTwice => {
                let mut learned = Made { parts: Vec::new(), ..made.clone() };
                self.lay_out(&mut learned)?;
                let again = learned.parts.iter().find(|(number, _)| *number == letter)?;
                [turns.as_slice(), &again.1[part]].concat()
            }
            Fault::SetupBack | Fault::AlgorithmBack => inverted(&turns),
            Fault::UndoBack if rng.random() => inverted(&turns),
            Fault::UndoBack => turns.iter().rev().copied().collect(),
            Fault::SetupElse => {
                let at = self.kinds.iter().position(|kind| {
                    let number = letter % 1000;
                    kind.letters.iter().any(|other| other.number == number)
                })?;
                // Of two letters together the set-up of other two is other letters.
                let single =
                    !matches!(self.method.carrier(self.kinds[at].orbit), Some(Carrier::ThreeCycle(_)));
                single.then_some(())?;
                let own =
                    self.single_letters(self.kinds[at].orbit).into_iter().map(|parts| parts[part].clone());
                let own: Vec<Vec<Turn>> = own.filter(|other| !other.is_empty() && *other != turns).collect();
                pick(rng, &own)?
            }
            Fault::AlgorithmElse => {
                let mut others = others(1);
                others.extend(
                    self.method.parity().map(cube::Algorithm::flatten).filter(|other| *other != turns),
                );
                others.sort();
                others.dedup();
                pick(rng, &others)?
            }
            Fault::TurnedInHand => {
                let made = any_rotation(rng).turns().to_vec();
                return Some(Deed::Hands { letter, part, from: 0, to: 0, made });
            }
            _ => Vec::new(),
        };
        Some(Deed::Hands { letter, part, from: 0, to: turns.len(), made: instead })
    }

    /// The three parts of each single letter of a kind.
    fn single_letters(&self, orbit: Orbit) -> Vec<[Vec<Turn>; 3]> {
        let all = Sticker::all().map(|target| [Letter { number: 0, target }]);
        all.filter_map(|letter| self.carry_out(orbit, &letter)).flatten().map(|(_, parts)| parts).collect()
    }
}
