//! What is carried out as one: a letter, a pair of letters, the parity algorithm.

use crate::slip::{ActionStep, Part};
use blind::{Action, Carrier, Group as Letters, Method, MethodName};
use cube::{Element, Group, Orbit, Sticker, Turn, simplified};
use rustc_hash::FxHashMap;
use std::cell::RefCell;
use std::rc::Rc;

/// What is carried out as one, wherever it stands.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub(crate) enum Act {
    /// A letter; at the second place of a pair where that makes a difference, and alone at the end where that does.
    Letter { orbit: Orbit, target: Sticker, second: bool, alone: bool },
    /// Two letters.
    Pair { orbit: Orbit, targets: [Sticker; 2] },
    /// Four letters that turn two pieces in their places.
    Turned { orbit: Orbit, targets: [Sticker; 4] },
    /// The parity algorithm.
    Parity,
}

impl Act {
    /// How many letters it carries out.
    pub(crate) const fn letters(self) -> usize {
        match self {
            Self::Letter { .. } => 1,
            Self::Pair { .. } => 2,
            Self::Turned { .. } => 4,
            Self::Parity => 0,
        }
    }

    /// A part of it, where its first letter is the given one of its kind.
    pub(crate) const fn step(self, letter: usize, part: Part) -> ActionStep {
        match self {
            Self::Letter { orbit, target, .. } => ActionStep::Letter { orbit, letter, target, part },
            Self::Pair { orbit, targets } => ActionStep::Pair { orbit, letter, targets, part },
            Self::Turned { orbit, targets } => ActionStep::Turned { orbit, letter, targets, part },
            Self::Parity => ActionStep::Parity,
        }
    }
}

/// The turns of an act.
#[derive(Clone, Debug, Default)]
pub(crate) struct Laid {
    pub(crate) turns: Vec<Turn>,
    /// Where the set-up ends, the algorithm, and the set-up undone.
    pub(crate) ends: [usize; 3],
    /// What they do.
    pub(crate) element: Option<Element>,
}

/// All acts of a method, laid out as they are asked for.
#[derive(Debug)]
pub(crate) struct Acts<'a> {
    method: &'a Method,
    /// None for the sizes whose elements are not packed; then no act has one.
    group: Option<&'static Group>,
    laid: RefCell<FxHashMap<Act, Rc<Laid>>>,
}

impl<'a> Acts<'a> {
    pub(crate) fn new(method: &'a Method, group: Option<&'static Group>) -> Self {
        Self { method, group, laid: RefCell::default() }
    }

    /// The acts that carry out letters of a kind, each with the number of its first letter.
    pub(crate) fn of(&self, orbit: Orbit, letters: &[Sticker]) -> Vec<(Act, usize)> {
        let (by_place, inner) = match self.method.carrier(orbit) {
            Some(Carrier::SliceSwap(_)) => (true, false),
            Some(Carrier::Inner(inner)) => (inner.method() != MethodName::ThreeCycle, true),
            Some(Carrier::OneSwap(_) | Carrier::ThreeCycle(_)) | None => (false, false),
        };
        let act = |group: Letters| match group {
            Letters::One(at) => {
                let alone = inner && at + 1 == letters.len() && at % 2 == 0;
                Some((Act::Letter { orbit, target: letters[at], second: by_place && at % 2 == 1, alone }, at))
            }
            // The same letter twice does nothing.
            Letters::Pair(at) if letters[at] == letters[at + 1] => None,
            Letters::Pair(at) => Some((Act::Pair { orbit, targets: [letters[at], letters[at + 1]] }, at)),
            Letters::Joint(at) => {
                let targets = [0, 1, 2, 3].map(|more| letters[at + more]);
                Some((Act::Turned { orbit, targets }, at))
            }
        };
        self.method.groups(orbit, letters).into_iter().filter_map(act).collect()
    }

    /// The turns of an act; none of one that the method cannot carry out.
    pub(crate) fn laid(&self, act: Act) -> Rc<Laid> {
        if let Some(known) = self.laid.borrow().get(&act) {
            return Rc::clone(known);
        }
        let mut laid = self.lay(act);
        laid.element = self.group.map(|group| group.turns(&laid.turns));
        let laid = Rc::new(laid);
        self.laid.borrow_mut().insert(act, Rc::clone(&laid));
        laid
    }

    /// Whether each letter of a kind is an act of its own that is the same wherever it stands.
    pub(crate) fn one_by_one(&self, orbit: Orbit) -> bool {
        matches!(self.method.carrier(orbit), Some(Carrier::OneSwap(_)))
    }

    /// Whether the method has a parity algorithm.
    pub(crate) const fn have_parity(&self) -> bool {
        self.method.parity().is_some()
    }

    pub(crate) fn element(&self, act: Act) -> Element {
        self.laid(act).element.unwrap_or(Element::IDENTITY)
    }

    fn lay(&self, act: Act) -> Laid {
        let action = |orbit: Orbit, letters: &[Sticker], group: Letters| {
            self.method.action(orbit, letters, group).ok().flatten()
        };
        match act {
            Act::Letter { orbit, target, second, alone } => {
                let letters = if alone { &[target][..] } else { &[target; 2] };
                match action(orbit, letters, Letters::One(usize::from(second))) {
                    Some(Action::Letter { setup, swap, undo, .. }) => in_parts(&[setup, swap, undo]),
                    _ => Laid::default(),
                }
            }
            Act::Pair { orbit, targets } => {
                self.case(orbit, action(orbit, &targets, Letters::Pair(0)), |cycles| {
                    cycles.case(targets[0], targets[1])
                })
            }
            Act::Turned { orbit, targets } => {
                let [a, b, c, d] = targets;
                self.case(orbit, action(orbit, &targets, Letters::Joint(0)), |cycles| {
                    cycles.joint([a, b], [c, d])
                })
            }
            Act::Parity => in_parts(&[
                Vec::new(),
                self.method.parity().map_or_else(Vec::new, cube::Algorithm::flatten),
                Vec::new(),
            ]),
        }
    }

    /// An algorithm for several letters: in three parts where it is written as a set-up and what is made between, and nothing of
    /// them cancels.
    fn case(
        &self,
        orbit: Orbit,
        action: Option<Action>,
        case: impl Fn(&blind::Cycles) -> Option<&blind::Case>,
    ) -> Laid {
        let Some(action) = action else { return Laid::default() };
        let turns = action.turns();
        let Some(Carrier::ThreeCycle(cycles)) = self.method.carrier(orbit) else {
            return in_parts(&[Vec::new(), turns, Vec::new()]);
        };
        let parts = case(cycles).and_then(|case| case.algorithm().conjugated()).map(|(set_up, body)| {
            let undo = set_up.inverse();
            [set_up, body, undo].map(|part| simplified(&part.flatten()))
        });
        match parts {
            Some(parts) if parts.concat() == turns => in_parts(&parts),
            _ => in_parts(&[Vec::new(), turns, Vec::new()]),
        }
    }
}

fn in_parts(parts: &[Vec<Turn>; 3]) -> Laid {
    let [setup, algorithm, undo] = parts.each_ref().map(Vec::len);
    let ends = [setup, setup + algorithm, setup + algorithm + undo];
    Laid { turns: parts.concat(), ends, element: None }
}
