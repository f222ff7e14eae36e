//! Why an attempt did not come out: slips, questions, what was done by hand.

use crate::Voice;
use crate::check::capital;
use blind::Conventions;
use cube::{Orbit, Sticker, Turn, display_turns};
use diagnosis::{Ask, ByHand, Change, HandExplanation, Part, Plan, Slip, Stage, WhyError};
use fluent_bundle::FluentValue;
use formats::observed::ObservedError;

fn moves(turns: &[Turn]) -> String {
    display_turns(turns).to_string()
}

/// The moves, or the word that stands for none.
fn moves_or_nothing(turns: &[Turn]) -> String {
    if turns.is_empty() { "nothing".to_owned() } else { moves(turns) }
}

impl Voice {
    /// A slip at its place, as one sentence.
    pub fn slip(&self, slip: &Slip, conventions: &Conventions) -> String {
        let message = format!("slip-{}", slip.kind.name());
        let turn_of = |turn: Option<Turn>| moves(turn.as_slice());
        let say = |blanks: &[(&str, FluentValue<'_>)]| capital(&self.say(&message, blanks));
        match &slip.change {
            Change::Letters { orbit, from, meant, taken } => {
                let letters = &conventions.kind(*orbit).letters;
                say(&[
                    ("position", (from + 1).into()),
                    ("next", (from + 2).into()),
                    ("kinds", self.kinds(*orbit).into()),
                    ("meant", letters.grouped(meant, meant.len() == 4).into()),
                    ("taken", letters.grouped(taken, meant.len() == 4).into()),
                ])
            }
            Change::Parity { .. } => say(&[]),
            Change::Buffer { orbit, buffer, taken } => say(&[
                ("kinds", self.kinds(*orbit).into()),
                ("buffer", orbit.name(*buffer).into()),
                ("taken", conventions.kind(*orbit).letters.grouped(taken, true).into()),
            ]),
            Change::Kinds { orbits: [first, second], .. } => {
                say(&[("kinds", self.kinds(*first).into()), ("others", self.kinds(*second).into())])
            }
            Change::Ended { step, turn } => {
                say(&[("where", self.step(step, conventions).into()), ("turn", (turn + 1).into())])
            }
            Change::Turn { step, turn, planned, made } => say(&[
                ("where", self.step(step, conventions).into()),
                ("turn", (turn + 1).into()),
                ("planned", turn_of(*planned).into()),
                ("made", turn_of(*made).into()),
            ]),
            Change::Whole { step, planned, made, of } => {
                let other = step.orbit().zip(*of).map_or_else(String::new, |(orbit, other)| {
                    self.lettered(orbit, other, &conventions.kind(orbit).letters)
                });
                say(&[
                    ("where", self.step(step, conventions).into()),
                    ("planned", moves(planned).into()),
                    ("made", moves(made).into()),
                    ("other", other.into()),
                ])
            }
            Change::Held { step, rotation } => say(&[
                ("where", self.step(step, conventions).into()),
                ("made", moves(rotation.turns()).into()),
            ]),
            Change::Scramble { turn, planned, made } => say(&[
                ("turn", (turn + 1).into()),
                ("planned", turn_of(*planned).into()),
                ("made", turn_of(*made).into()),
            ]),
            Change::ScrambleOrder { turn, planned: [first, second] } => say(&[
                ("turn", (turn + 1).into()),
                ("next", (turn + 2).into()),
                ("planned", moves(&[*first, *second]).into()),
                ("made", moves(&[*second, *first]).into()),
            ]),
            Change::ScrambleWhole { hold, .. } => {
                say(&[("made", moves_or_nothing(hold.map_or(&[][..], |hold| hold.turns())).into())])
            }
            Change::Holding { planned, made } => say(&[
                ("planned", moves_or_nothing(planned.turns()).into()),
                ("made", moves_or_nothing(made.turns()).into()),
            ]),
        }
    }

    /// The slips of an explanation, a sentence each.
    pub fn slips(&self, slips: &[Slip], conventions: &Conventions) -> String {
        slips.iter().map(|slip| self.slip(slip, conventions)).collect::<Vec<_>>().join(" ")
    }

    /// An explanation; one without slips says that the plan was carried out. `plan_solves`: whether that should
    /// have been enough.
    pub fn explanation(&self, slips: &[Slip], plan_solves: bool, conventions: &Conventions) -> String {
        if slips.is_empty() {
            return self.word(if plan_solves { "why-as-planned" } else { "why-memo-itself" });
        }
        self.slips(slips, conventions)
    }

    /// What was done by hand, and what else went wrong.
    pub fn by_hand(&self, found: &HandExplanation, conventions: &Conventions) -> String {
        let piece = |orbit: Orbit, place: Sticker| orbit.piece_name(place).to_owned();
        let hand = match found.by_hand {
            ByHand::Twisted { place, clockwise } => self.say(
                "by-hand-twisted",
                &[
                    ("piece", piece(Orbit::Corner, place).into()),
                    ("clockwise", if clockwise { "yes" } else { "no" }.into()),
                ],
            ),
            ByHand::Flipped { place } => {
                self.say("by-hand-flipped", &[("piece", piece(Orbit::Midge, place).into())])
            }
            ByHand::Exchanged { orbit, places: [first, second] } => self.say(
                "by-hand-exchanged",
                &[
                    ("kinds", self.kinds(orbit).into()),
                    ("first", piece(orbit, first).into()),
                    ("second", piece(orbit, second).into()),
                ],
            ),
        };
        let rest = if found.explanation.slips().is_empty() {
            self.word("by-hand-otherwise-right")
        } else {
            self.slips(found.explanation.slips(), conventions)
        };
        format!("{hand} {rest}")
    }

    /// A question about an attempt.
    pub fn ask(&self, ask: Ask, plan: &Plan<'_>) -> String {
        match ask {
            Ask::Stage(Stage::Start) => self.word("ask-start"),
            Ask::Stage(Stage::Tracing) => self.word("ask-tracing"),
            Ask::Stage(Stage::Recall) => self.word("ask-recall"),
            Ask::Stage(Stage::Execution) => self.word("ask-execution"),
            Ask::Kind(orbit) => self.say("ask-kind", &[("kinds", self.kinds(orbit).into())]),
            Ask::Letter(orbit, letter) => {
                let letters = plan.memo().iter().find(|(kind, _)| *kind == orbit).map(|(_, letters)| letters);
                let sticker = letters.and_then(|letters| letters.get(letter));
                let said = sticker.map_or_else(
                    || "none".to_owned(),
                    |&sticker| plan.solver().conventions().kind(orbit).letters.of(sticker).to_string(),
                );
                self.say(
                    "ask-letter",
                    &[
                        ("position", (letter + 1).into()),
                        ("kinds", self.kinds(orbit).into()),
                        ("letter", said.into()),
                    ],
                )
            }
            Ask::Part(Part::Setup) => self.word("ask-setup"),
            Ask::Part(Part::Algorithm) => self.word("ask-algorithm"),
            Ask::Part(Part::Undo) => self.word("ask-undo"),
            Ask::Parity => self.word("ask-parity"),
            Ask::Held => self.word("ask-held"),
        }
    }

    /// Why no diagnosis can be made.
    pub fn why_error(&self, error: &WhyError, conventions: &Conventions) -> String {
        match error {
            WhyError::Method(error) => self.method_error(error),
            WhyError::NotProven(fault) => self.not_proven(*fault),
            WhyError::Execution(error) => self.execution_error(error),
            WhyError::Size(size) => self.say("why-size", &[("size", size.to_string().into())]),
            WhyError::OtherSize { planned, seen } => self.say(
                "why-other-size",
                &[("planned", planned.to_string().into()), ("seen", seen.to_string().into())],
            ),
            WhyError::Unreachable(error) => self.unreachable(error, conventions).join(" "),
            WhyError::Contradiction => self.word("why-contradiction"),
        }
    }

    /// What is wrong with a list of unsolved pieces.
    pub fn observed_error(&self, error: &ObservedError) -> String {
        let placed = |message: &str, column: usize, found: &str| {
            self.say(message, &[("column", column.into()), ("found", found.into())])
        };
        match error {
            ObservedError::NoSticker { column, found } => placed("observed-no-sticker", *column, found),
            ObservedError::NoCycle { column, found } => placed("observed-no-cycle", *column, found),
            ObservedError::NoCount { column, found } => placed("observed-no-count", *column, found),
            ObservedError::NoWord { column, found, piece, expected } => self.say(
                "observed-no-word",
                &[
                    ("column", (*column).into()),
                    ("found", found.as_str().into()),
                    ("piece", (*piece).into()),
                    ("expected", expected.join(" | ").into()),
                ],
            ),
            ObservedError::Twice { column, piece } => {
                self.say("observed-twice", &[("column", (*column).into()), ("piece", (*piece).into())])
            }
            ObservedError::TooLong { bytes, most } => {
                self.say("document-too-long", &[("bytes", (*bytes).into()), ("most", (*most).into())])
            }
            ObservedError::Nothing => self.word("observed-nothing"),
            ObservedError::TooMany { column, most, orbit } => self.say(
                "observed-too-many",
                &[
                    ("column", (*column).into()),
                    ("most", (*most).into()),
                    ("kinds", self.kinds(*orbit).into()),
                ],
            ),
        }
    }
}
