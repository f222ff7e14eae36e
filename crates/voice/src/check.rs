//! Whether a memo or the moves of an attempt are right, and where they go wrong.

use crate::Voice;
use crate::puzzle::sort;
use blind::{Conventions, LONGEST_MEMO, Letters, UnknownLetter};
use cube::{Orbit, Sticker, display_turns};
use diagnosis::{ActionStep, Deviation, How, KindCheck, MemoError, MemoFault, MemoSlip, ParityFault, Part};

/// A sentence begins with a capital letter.
pub(crate) fn capital(text: &str) -> String {
    let mut signs = text.chars();
    signs.next().map_or_else(String::new, |first| first.to_uppercase().chain(signs).collect())
}

impl Voice {
    /// A slip in a memo: where it is, what is wrong, and what would be right.
    pub fn memo_slip(&self, slip: &MemoSlip, orbit: Orbit, conventions: &Conventions) -> String {
        let letters = &conventions.kind(orbit).letters;
        let what = match &slip.fault {
            MemoFault::FollowedFromElsewhere { place } => {
                let due = slip.place.unwrap_or(*place);
                self.say(
                    "check-followed-from-elsewhere",
                    &[
                        ("elsewhere", self.lettered(orbit, *place, letters).into()),
                        ("place", self.lettered(orbit, due, letters).into()),
                    ],
                )
            }
            MemoFault::TurnedWrongWay => self.say("check-turned-wrong-way", &[("kind", sort(orbit).into())]),
            MemoFault::LeftOut { pieces } => {
                let count = pieces.len().into();
                self.say("check-left-out", &[("pieces", self.pieces(orbit, pieces).into()), ("count", count)])
            }
            fault => self.word(&format!("check-{}", fault.name())),
        };
        let kinds = self.kinds(orbit);
        let said = match slip.letter {
            Some(letter) => self.say(
                "check-letter",
                &[
                    ("position", (slip.position + 1).into()),
                    ("kinds", kinds.into()),
                    ("letter", letters.of(letter).into()),
                    ("what", what.into()),
                ],
            ),
            None => self.say("check-end", &[("kinds", kinds.into()), ("what", what.into())]),
        };
        format!("{said} {}", self.instead(slip, orbit, conventions))
    }

    fn instead(&self, slip: &MemoSlip, orbit: Orbit, conventions: &Conventions) -> String {
        let letters = &conventions.kind(orbit).letters;
        match (slip.place, slip.expected.as_slice()) {
            (_, []) => self.word("check-instead-nothing"),
            (Some(place), [target]) => self.say(
                "check-instead",
                &[
                    ("place", self.lettered(orbit, place, letters).into()),
                    ("target", orbit.name(*target).into()),
                    ("letter", letters.of(*target).into()),
                ],
            ),
            (_, expected) => {
                let mut pieces: Vec<Sticker> = Vec::new();
                for &sticker in expected {
                    let reference = orbit.reference(orbit.piece(sticker));
                    if !pieces.contains(&reference) {
                        pieces.push(reference);
                    }
                }
                self.say("check-instead-any", &[("pieces", self.pieces(orbit, &pieces).into())])
            }
        }
    }

    /// What a check of one kind came to.
    pub fn kind_checked(&self, check: &KindCheck) -> String {
        let kinds = capital(&self.kinds(check.orbit));
        if check.right {
            return self.say("check-kind-right", &[("kinds", kinds.into())]);
        }
        self.say("check-kind-wrong", &[("kinds", kinds.into()), ("count", check.slips.len().into())])
    }

    /// What is wrong about parity.
    pub fn parity_fault(&self, fault: ParityFault) -> String {
        self.word(match fault {
            ParityFault::Overlooked => "check-parity-overlooked",
            ParityFault::WithoutNeed => "check-parity-without-need",
        })
    }

    /// A step of the execution: "letter 5 of the corners, H, undoing the set-up".
    pub fn step(&self, step: &ActionStep, conventions: &Conventions) -> String {
        let (Some(orbit), Some((first, targets))) = (step.orbit(), step.letters()) else {
            return self.word("place-parity");
        };
        let part = match step.part() {
            Part::Setup => "setup",
            Part::Algorithm => "algorithm",
            Part::Undo => "undo",
        };
        let letters = &conventions.kind(orbit).letters;
        let last = first + targets.len();
        let message = if targets.len() == 1 { "place-letter" } else { "place-letters" };
        self.say(
            message,
            &[
                ("position", (first + 1).into()),
                ("last", last.into()),
                ("kinds", self.kinds(orbit).into()),
                ("letter", letters.grouped(targets, true).into()),
                ("part", part.into()),
            ],
        )
    }

    /// Where moves first differ from a plan, and how.
    pub fn deviation(&self, deviation: &Deviation, conventions: &Conventions) -> String {
        let message = match deviation.how {
            How::Otherwise if deviation.made.is_empty() => "how-otherwise-nothing".to_owned(),
            how => format!("how-{}", how.name()),
        };
        let place = match &deviation.step {
            Some(step) => self.step(step, conventions),
            None => self.word("place-end"),
        };
        let what = self.say(
            &message,
            &[
                ("where", place.into()),
                ("planned", display_turns(&deviation.planned).to_string().into()),
                ("made", display_turns(&deviation.made).to_string().into()),
            ],
        );
        self.say("check-moves-turn", &[("turn", (deviation.turn + 1).into()), ("what", what.into())])
    }

    /// Why a text is no row of letters of a kind, with the letters that there are.
    pub fn unknown_letter(&self, orbit: Orbit, letters: &Letters, error: &UnknownLetter) -> String {
        match error {
            UnknownLetter::NoLetter { column, found } => self.say(
                "memo-unknown-letter",
                &[
                    ("column", (*column).into()),
                    ("found", found.to_string().into()),
                    ("kind", self.kind(orbit).into()),
                    ("letters", letters.all().collect::<Vec<_>>().join(" ").into()),
                ],
            ),
            UnknownLetter::TooLong(bytes) => {
                self.say("moves-too-long", &[("bytes", (*bytes).into()), ("most", LONGEST_MEMO.into())])
            }
            UnknownLetter::Ambiguous { column } => {
                self.say("memo-ambiguous-letters", &[("column", (*column).into())])
            }
        }
    }

    /// Why a memo cannot be checked.
    pub fn memo_error(&self, error: &MemoError) -> String {
        match error {
            MemoError::Empty => self.word("memo-empty"),
            MemoError::NoSuchKind { orbit, size } => self.say(
                "kind-not-there",
                &[("size", size.to_string().into()), ("kinds", self.kinds(*orbit).into())],
            ),
        }
    }
}
