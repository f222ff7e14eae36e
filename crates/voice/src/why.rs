//! Why an attempt did not come out: slips, questions, what was done by hand.

use crate::Voice;
use crate::check::capital;
use crate::puzzle::sort;
use blind::{Conventions, ParityChoice};
use cube::{Orbit, Sticker, Turn, display_turns};
use diagnosis::{
    Ask, ByHand, Change, Depth, Diagnosis, HandExplanation, KindCheck, MemoCheck, Missing, Observed, Part,
    Plan, Slip, Stage, Unlooked, WhyError,
};
use fluent_bundle::FluentValue;

fn moves(turns: &[Turn]) -> String {
    display_turns(turns).to_string()
}

/// Below so many times the next one's weight the first is only slightly likelier.
const SLIGHTLY: f64 = 1.25;

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
                let first = |all: &[Sticker]| all.first().map_or("", |&letter| letters.of(letter)).to_owned();
                say(&[
                    ("letter", first(meant).into()),
                    ("took", first(taken).into()),
                    ("position", (from + 1).into()),
                    ("next", (from + 2).into()),
                    ("kinds", self.kinds(*orbit).into()),
                    ("meant", letters.grouped(meant, meant.len() == 4).into()),
                    ("taken", letters.grouped(taken, meant.len() == 4).into()),
                ])
            }
            Change::Parity { .. } if conventions.parity == ParityChoice::Exchange => {
                capital(&self.word(&format!("{message}-exchange")))
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
            Change::ScrambleListed { number, .. } => say(&[("number", (number + 1).into())]),
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
            WhyError::NoPiece { orbit, place } => {
                self.say("why-no-piece", &[("piece", orbit.piece_name(*place).into())])
            }
            WhyError::LongList(count) => self.say(
                "why-long-list",
                &[("count", (*count).into()), ("most", diagnosis::LONGEST_LIST.into())],
            ),
            WhyError::NoHold => self.word("why-no-hold"),
            WhyError::NothingToAnswer { ask: Ask::Letter(orbit, letter), letters } => self.say(
                "why-no-letter",
                &[
                    ("position", (letter + 1).into()),
                    ("kinds", self.kinds(*orbit).into()),
                    ("letters", (*letters).into()),
                ],
            ),
            WhyError::NothingToAnswer { ask, .. } => {
                self.say("why-no-ask", &[("text", ask.to_string().into())])
            }
        }
    }

    /// What the memo's own fault is: the first slip in it.
    pub fn memo_fault(&self, check: &MemoCheck, conventions: &Conventions) -> String {
        let first = check.kinds.iter().find_map(|kind| Some((kind, kind.slips.first()?)));
        let said =
            |(kind, slip): (&KindCheck, _)| self.memo_slip(slip, kind.orbit, &kind.letters, conventions);
        let sentence = first.map(said).unwrap_or_default();
        self.say("why-memo-fault", &[("sentence", sentence.into())]).trim_end().to_owned()
    }

    /// Which piece must be unsolved besides those that were told.
    pub fn missing(&self, missing: &Missing) -> String {
        let sentence = match missing {
            Missing::Turned { orbit, alone: Some(sticker) } => self.say(
                "missing-alone",
                &[("piece", orbit.piece_name(*sticker).into()), ("kind", sort(*orbit).into())],
            ),
            Missing::Turned { orbit, alone: None } => self.say(
                "missing-turned",
                &[("kinds", self.kinds(*orbit).into()), ("kind", sort(*orbit).into())],
            ),
            Missing::Exchanged { orbits } => {
                let kinds: Vec<String> = orbits.iter().map(|&orbit| self.kinds(orbit)).collect();
                self.say("missing-exchanged", &[("kinds", self.either(&kinds).into())])
            }
        };
        self.say("why-missing", &[("sentence", sentence.into())])
    }

    /// What was taken of kinds that were not looked at; nothing where all were.
    pub fn unlooked(&self, unlooked: &Unlooked) -> Option<String> {
        let (message, orbits) = match unlooked {
            Unlooked::None => return None,
            Unlooked::AsPlanned(orbits) => ("unlooked-as-planned", orbits),
            Unlooked::AnyWay(orbits) => ("unlooked-any-way", orbits),
        };
        Some(self.say(message, &[("kinds", self.kinds_listed(orbits).into())]))
    }

    /// How sure the first explanation is, or that there is none; nothing where all went as planned.
    pub fn why_summary(&self, found: &Diagnosis, observed: &Observed, depth: Depth) -> String {
        let whole = if found.whole { "yes" } else { "no" };
        let Some(first) = found.explanations.first() else {
            let most = if depth == Depth::Three { "three" } else { "two" };
            let nothing = self.say("why-nothing-found", &[("whole", whole.into()), ("most", most.into())]);
            // What was told piece by piece may lack one.
            return match observed {
                Observed::Pieces(_) => format!("{} {nothing}", self.word("why-any-other")),
                Observed::State(_) | Observed::Stickers(_) => nothing,
            };
        };
        if first.slips().is_empty() {
            return String::new();
        }
        let ambiguity = ("count", found.ambiguity.into());
        if found.ambiguity != 1 {
            return self.say("why-ambiguity", &[ambiguity, ("whole", whole.into())]);
        }
        let next = found.explanations.get(1);
        if next.is_some_and(|next| first.weight() < SLIGHTLY * next.weight()) {
            return self.say("why-slightly", &[("whole", whole.into())]);
        }
        self.say("why-ambiguity", &[ambiguity, ("whole", whole.into())])
    }
}
