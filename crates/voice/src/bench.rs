//! What the bench says of the puzzle in hand: how long its memo is, how it is held and why, where its moves come from.

use crate::Voice;
use crate::check::capital;
use blind::{Action, Carrier, Conventions, HoldChoice, Memo, MethodName, Solver};
use cube::{Face, Orbit, Rotation, Size, Sticker};
use diagnosis::{Slip, Stage};

/// The most pieces that are named as unsolved before they are counted.
const MOST_UNSOLVED: usize = 6;

impl Voice {
    /// How many letters a memo has, and whether there is parity: `20 letters · parity between the two threads`.
    pub fn memo_in_short(&self, memo: &Memo, solver: &Solver) -> String {
        let letters = capital(&self.say("bench-letters", &[("letters", memo.letters().into())]));
        let parity = memo.is_odd() && solver.method().is_ok_and(|method| method.parity().is_some());
        if parity { format!("{letters} · {}", self.word("bench-parity")) } else { letters }
    }

    /// Which letter of how many, from 0: `letter 2 of 13`; of several carried out together the first and the last.
    pub fn place_in_memo(&self, first: usize, count: usize, all: usize) -> String {
        if count <= 1 {
            return self.letter_of(first + 1, all);
        }
        self.say(
            "bench-letters-of",
            &[("first", (first + 1).into()), ("last", (first + count).into()), ("all", all.into())],
        )
    }

    /// What a field for the letters of a kind is called.
    pub fn letters_of_kind(&self, orbit: Orbit) -> String {
        self.say("bench-letters-of-kind", &[("kinds", self.kinds(orbit).into())])
    }

    /// That a turn is the next one.
    pub fn next_turn(&self, turn: &str) -> String {
        self.say("bench-next", &[("turn", turn.into())])
    }

    /// What is carried out in which order, and in how many moves: `Corners, parity, edges · 374 moves`.
    pub fn execution_in_short(&self, actions: &[Action]) -> String {
        let mut order: Vec<String> = Vec::new();
        for action in actions {
            let name = match action.letters() {
                Some((orbit, ..)) => self.kinds(orbit),
                None => self.word("step-parity"),
            };
            if order.last() != Some(&name) {
                order.push(name);
            }
        }
        let moves: usize = actions.iter().map(|action| action.turns().len()).sum();
        let moves = self.say("bench-moves", &[("moves", moves.into())]);
        if order.is_empty() { moves } else { format!("{} · {moves}", capital(&order.join(", "))) }
    }

    /// Which colours are up and in front once the puzzle is picked up by this rotation: `White up, green in front`.
    pub fn held_in_short(&self, rotation: Rotation, conventions: &Conventions) -> String {
        let now = |face: Face| self.colour(conventions.colour(rotation.inverse().image(face)));
        capital(&self.say("bench-hold", &[("up", now(Face::U).into()), ("front", now(Face::F).into())]))
    }

    /// Why a puzzle of a size is held as it is.
    pub fn held_why(&self, size: Size, choice: HoldChoice) -> String {
        self.word(match choice {
            _ if size.is_odd() => "bench-hold-centres",
            HoldChoice::Best => "bench-hold-best",
            HoldChoice::MostCentres => "bench-hold-most-centres",
            HoldChoice::Conventions => "bench-hold-conventions",
        })
    }

    /// Where the moves of an execution come from, a sentence for each method that it uses. `with_sheet`: whether the solver has a
    /// sheet of three-cycles.
    pub fn moves_from(&self, actions: &[Action], solver: &Solver, with_sheet: bool) -> Vec<String> {
        let Ok(method) = solver.method() else { return Vec::new() };
        let found = actions
            .iter()
            .filter(|action| {
                matches!(action, Action::Pair { found: true, .. } | Action::Turned { found: true, .. })
            })
            .count();
        let cycles = || {
            if with_sheet {
                self.say("bench-from-sheet", &[("found", found.into())])
            } else {
                self.word("bench-from-search")
            }
        };
        let mut sentences = Vec::new();
        for &orbit in Orbit::of(solver.size()) {
            let used = actions.iter().any(|action| action.letters().is_some_and(|(of, ..)| of == orbit));
            let sentence = match method.carrier(orbit).filter(|_| used) {
                None => continue,
                Some(Carrier::OneSwap(swap)) => self.say(
                    "bench-from-swap",
                    &[
                        ("kind", self.kind(orbit).into()),
                        ("kinds", self.kinds(orbit).into()),
                        ("moves", swap.effect().algorithm().to_string().into()),
                    ],
                ),
                Some(Carrier::SliceSwap(_)) => self.word("bench-from-slice"),
                Some(Carrier::ThreeCycle(_)) => cycles(),
                Some(Carrier::Inner(inner)) => match inner.method() {
                    MethodName::ThreeCycle => cycles(),
                    MethodName::OneSwap | MethodName::SliceSwap => {
                        self.say("bench-from-inner", &[("kinds", self.kinds(orbit).into())])
                    }
                },
            };
            if !sentences.contains(&sentence) {
                sentences.push(sentence);
            }
        }
        if actions.iter().any(|action| matches!(action, Action::Parity { .. }))
            && let Some(parity) = method.parity()
        {
            sentences.push(self.say("bench-from-parity", &[("moves", parity.to_string().into())]));
        }
        sentences
    }

    /// The words of a first visit for a memo of so many letters: what is seen, and what to do next.
    pub fn first_visit(&self, letters: usize) -> [String; 2] {
        [self.say("bench-first-title", &[("letters", letters.into())]), self.word("bench-first-text")]
    }

    /// Which pieces are not solved; many are counted.
    pub fn unsolved(&self, pieces: &[(Orbit, Sticker)]) -> String {
        match pieces {
            [] => self.word("bench-all-solved"),
            some if some.len() <= MOST_UNSOLVED => {
                let names: Vec<&str> = some.iter().map(|&(orbit, piece)| orbit.piece_name(piece)).collect();
                self.say("bench-unsolved", &[("pieces", names.join(", ").into())])
            }
            many => self.say("bench-unsolved-many", &[("count", many.len().into())]),
        }
    }

    /// Where in an attempt the first of some slips lies.
    pub fn where_it_went_wrong(&self, slips: &[Slip]) -> String {
        let Some(first) = slips.first() else { return self.word("bench-cause-as-planned") };
        if let Some((orbit, letter)) = first.orbit().zip(first.letter()) {
            let blanks = [("number", (letter + 1).into()), ("kinds", self.kinds(orbit).into())];
            return self.say("bench-cause-letter", &blanks);
        }
        self.word(match first.kind.stage() {
            Stage::Start => "bench-cause-start",
            Stage::Tracing => "bench-cause-tracing",
            Stage::Recall => "bench-cause-recall",
            Stage::Execution => "bench-cause-execution",
        })
    }

    /// That a link is for a size that the page does not offer.
    pub fn size_not_offered(&self, size: Size, offered: &[Size]) -> String {
        let names: Vec<String> = offered.iter().map(ToString::to_string).collect();
        self.say("bench-link-size", &[("size", size.to_string().into()), ("sizes", self.list(&names).into())])
    }
}
