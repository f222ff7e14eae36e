//! Whether a memo or the moves of an attempt are right, and where they go wrong.

use crate::Voice;
use crate::puzzle::sort;
use blind::{Conventions, LONGEST_MEMO, Letters, UnknownLetter};
use cube::{Face, Orbit, Rotation, Sticker, Turn, display_turns};
use diagnosis::{
    ActionStep, Circumstance, Deviation, How, KindCheck, MemoCheck, MemoError, MemoFault, MemoSlip,
    ParityFault, Part,
};

/// A sentence begins with a capital letter.
pub(crate) fn capital(text: &str) -> String {
    let mut signs = text.chars();
    signs.next().map_or_else(String::new, |first| first.to_uppercase().chain(signs).collect())
}

/// So many slips of a kind are told; the rest is counted.
pub const MOST_SLIPS: usize = 3;

/// So many pieces of a list are named.
const MOST_PIECES: usize = 6;

/// So many moves are written out; of more the first [`FIRST_MOVES`].
const MOST_MOVES: usize = 8;
const FIRST_MOVES: usize = 5;

/// The first few of some pieces, and how many more there are.
fn few(pieces: &[Sticker]) -> (&[Sticker], usize) {
    // One more is named rather than counted.
    let most = if pieces.len() <= MOST_PIECES + 1 { pieces.len() } else { MOST_PIECES };
    (&pieces[..most], pieces.len() - most)
}

impl Voice {
    /// A slip in a memo: where it is, what is wrong, and what would be right. `memo` are the letters of the kind.
    pub fn memo_slip(
        &self,
        slip: &MemoSlip,
        orbit: Orbit,
        memo: &[Sticker],
        conventions: &Conventions,
    ) -> String {
        let letters = &conventions.kind(orbit).letters;
        let spelled = |at: usize| memo.get(at).map_or("", |&letter| letters.of(letter));
        let pair = |at: usize| format!("{}{}", spelled(at), spelled(at + 1));
        let kinds = self.kinds(orbit);
        let number = slip.position + 1;
        let own = match &slip.fault {
            MemoFault::FollowedFromWrongSticker { .. } => Some((
                "check-followed-from-wrong-sticker",
                spelled(slip.position).to_owned(),
                0,
                slip.expected.first().map_or("", |&letter| letters.of(letter)).to_owned(),
            )),
            MemoFault::LettersExchanged { with } => Some((
                "check-letters-exchanged",
                spelled(slip.position).to_owned(),
                with + 1,
                spelled(*with).to_owned(),
            )),
            MemoFault::PairsExchanged { with } => {
                Some(("check-pairs-exchanged", pair(slip.position), with + 1, pair(*with)))
            }
            _ => None,
        };
        if let Some((message, letter, with, other)) = own {
            return self.say(
                message,
                &[
                    ("position", number.into()),
                    ("kinds", kinds.into()),
                    ("letter", letter.into()),
                    ("with", with.into()),
                    ("other", other.into()),
                ],
            );
        }
        let what = match &slip.fault {
            MemoFault::FollowedFromElsewhere { place } => {
                let due = slip.place.unwrap_or(*place);
                let before = slip.position.checked_sub(1);
                self.say(
                    "check-followed-from-elsewhere",
                    &[
                        ("elsewhere", self.lettered(orbit, *place, letters).into()),
                        ("place", self.lettered(orbit, due, letters).into()),
                        ("first", if before.is_none() { "yes" } else { "no" }.into()),
                        ("before", before.map_or("", spelled).into()),
                    ],
                )
            }
            MemoFault::SolvedAlready { earlier: Some(earlier) } => self.say(
                "check-has-letter",
                &[("number", (earlier + 1).into()), ("earlier", spelled(*earlier).into())],
            ),
            MemoFault::OtherLetter if slip.place.is_none() => self.word("check-other-letter-between"),
            MemoFault::TurnedWrongWay => self.say("check-turned-wrong-way", &[("kind", sort(orbit).into())]),
            MemoFault::LeftOut { pieces } => {
                let (some, more) = few(pieces);
                self.say(
                    "check-left-out",
                    &[
                        ("pieces", self.pieces(orbit, some).into()),
                        ("count", pieces.len().into()),
                        ("more", more.into()),
                    ],
                )
            }
            fault => self.word(&format!("check-{}", fault.name())),
        };
        let said = match slip.letter {
            Some(letter) => self.say(
                "check-letter",
                &[
                    ("position", number.into()),
                    ("kinds", kinds.into()),
                    ("letter", letters.of(letter).into()),
                    ("what", what.into()),
                ],
            ),
            None => self.say("check-end", &[("kinds", kinds.into()), ("what", what.into())]),
        };
        match self.instead(slip, orbit, conventions) {
            Some(instead) => format!("{said} {instead}"),
            None => said,
        }
    }

    /// The slips of one kind in a line each: at most [`MOST_SLIPS`], the rest counted. Where hardly a letter fits, that is said and one
    /// slip.
    pub fn memo_slips(&self, check: &KindCheck, conventions: &Conventions) -> Vec<String> {
        let strange = check.slips.len() > MOST_SLIPS && 2 * check.slips.len() > check.letters.len();
        let most = if strange { 1 } else { MOST_SLIPS };
        let told = check.slips.iter().take(most);
        let told = told.map(|slip| self.memo_slip(slip, check.orbit, &check.letters, conventions));
        let first = strange.then(|| self.word("check-hardly-fits"));
        let more = check.slips.len().saturating_sub(most);
        let last = (more > 0 && !strange).then(|| self.say("check-more", &[("count", more.into())]));
        first.into_iter().chain(told).chain(last).collect()
    }

    fn instead(&self, slip: &MemoSlip, orbit: Orbit, conventions: &Conventions) -> Option<String> {
        let letters = &conventions.kind(orbit).letters;
        let lettered = |message: &str, place: Sticker, target: Sticker| {
            self.say(
                message,
                &[
                    ("place", self.lettered(orbit, place, letters).into()),
                    ("target", orbit.name(target).into()),
                    ("letter", letters.of(target).into()),
                ],
            )
        };
        Some(match (&slip.fault, slip.place, slip.expected.as_slice()) {
            (MemoFault::LetterTooMany, ..) | (MemoFault::LeftOut { .. }, None, _) => return None,
            (_, _, []) => self.word("check-instead-nothing"),
            (MemoFault::FollowedFromElsewhere { .. }, Some(place), [target]) => {
                lettered("check-instead-there", place, *target)
            }
            (_, Some(place), [target]) => lettered("check-instead", place, *target),
            (_, None, [target]) => lettered("check-instead-letter", *target, *target),
            (_, _, expected) => {
                let mut pieces: Vec<Sticker> = Vec::new();
                for &sticker in expected {
                    let reference = orbit.reference(orbit.piece(sticker));
                    if !pieces.contains(&reference) {
                        pieces.push(reference);
                    }
                }
                let (some, more) = few(&pieces);
                self.say(
                    "check-instead-any",
                    &[("pieces", self.pieces(orbit, some).into()), ("more", more.into())],
                )
            }
        })
    }

    /// What was found of a memo, a line each, short of what it leads to: that it is right, for what it would be, or its slips.
    pub fn memo_checked(&self, check: &MemoCheck, conventions: &Conventions) -> Vec<String> {
        let mut lines = Vec::new();
        let found = check.circumstance.as_ref();
        lines.extend(found.map(|found| self.circumstance(found, check.right(), conventions)));
        if check.right() && check.unchecked.is_empty() {
            lines.extend(found.is_none().then(|| self.word("check-right")));
            return lines;
        }
        if found.is_none() || check.right() {
            for kind in &check.kinds {
                lines.push(self.kind_checked(kind));
                lines.extend(self.memo_slips(kind, conventions).into_iter().map(|slip| format!("  {slip}")));
            }
        }
        lines.extend(check.parity.map(|fault| self.parity_fault(fault)));
        if found.is_none() && check.kinds.iter().any(|kind| !kind.executable) {
            lines.push(self.word("check-cannot-be-carried-out"));
        }
        if !check.unchecked.is_empty() {
            let kinds = self.kinds_listed(&check.unchecked);
            lines.push(self.say("check-unchecked", &[("kinds", kinds.into())]));
        }
        lines
    }

    /// What a memo is right for. `right` says whether that is as good as what was asked.
    pub fn circumstance(&self, found: &Circumstance, right: bool, conventions: &Conventions) -> String {
        match found {
            Circumstance::Held { planned, made } => {
                let name = |face: Face| self.colour(conventions.colour(made.inverse().image(face)));
                let moves = |rotation: &Rotation| match rotation.turns() {
                    [] => "nothing".to_owned(),
                    turns => display_turns(turns).to_string(),
                };
                self.say(
                    if right { "check-right-held" } else { "check-right-if-held" },
                    &[
                        ("up", name(Face::U).into()),
                        ("front", name(Face::F).into()),
                        ("made", moves(made).into()),
                        ("planned", moves(planned).into()),
                    ],
                )
            }
            Circumstance::Scramble { turn, planned, made } => self.say(
                &format!("check-right-if-{}", found.name()),
                &[
                    ("turn", (turn + 1).into()),
                    ("planned", display_turns(planned.as_slice()).to_string().into()),
                    ("made", display_turns(made.as_slice()).to_string().into()),
                ],
            ),
            Circumstance::Kinds { kinds } => {
                self.say("check-right-if-kinds-exchanged", &[("kinds", self.kinds_listed(kinds).into())])
            }
            Circumstance::Buffers { buffers } => {
                let each = buffers.iter().map(|&(orbit, buffer)| {
                    let kinds = self.kinds(orbit);
                    self.say(
                        "check-buffer-of",
                        &[("kinds", kinds.into()), ("buffer", orbit.name(buffer).into())],
                    )
                });
                let buffers = self.list(&each.collect::<Vec<_>>());
                self.say("check-right-if-other-buffer", &[("buffers", buffers.into())])
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

    /// What a step carries out, whichever part of it it is: "letter 5 of the corners, H".
    fn whole_step(&self, step: &ActionStep, conventions: &Conventions) -> String {
        let (Some(orbit), Some((first, targets))) = (step.orbit(), step.letters()) else {
            return self.word("place-parity");
        };
        let message = if targets.len() == 1 { "place-whole-letter" } else { "place-whole-letters" };
        self.say(
            message,
            &[
                ("position", (first + 1).into()),
                ("last", (first + targets.len()).into()),
                ("kinds", self.kinds(orbit).into()),
                ("letter", conventions.kind(orbit).letters.grouped(targets, true).into()),
            ],
        )
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
            How::Otherwise if deviation.planned.is_empty() => "how-added".to_owned(),
            how => format!("how-{}", how.name()),
        };
        let whole = matches!(
            deviation.how,
            How::LetterLeftOut | How::LetterDoubled | How::LettersExchanged | How::BrokenOff
        );
        let place = match &deviation.step {
            Some(step) if whole => self.whole_step(step, conventions),
            Some(step) => self.step(step, conventions),
            None => self.word("place-end"),
        };
        let place = match deviation.how {
            How::LeftOut
            | How::OtherWay
            | How::OtherAmount
            | How::Doubled
            | How::OtherFace
            | How::OtherWidth
                if deviation.step.is_some() =>
            {
                self.say("place-move", &[("where", place.into()), ("number", (deviation.within + 1).into())])
            }
            _ => place,
        };
        let what = self.say(
            &message,
            &[
                ("where", place.into()),
                ("planned", self.few_turns(&deviation.planned).into()),
                ("made", self.few_turns(&deviation.made).into()),
            ],
        );
        self.say("check-moves-turn", &[("turn", (deviation.turn + 1).into()), ("what", what.into())])
    }

    /// Turns as they are written; of more than a person takes in the first and how many there are.
    fn few_turns(&self, turns: &[Turn]) -> String {
        if turns.len() <= MOST_MOVES {
            return display_turns(turns).to_string();
        }
        let first = display_turns(&turns[..FIRST_MOVES]).to_string();
        self.say("check-moves-many", &[("first", first.into()), ("count", turns.len().into())])
    }

    /// Why a text is no row of letters of a kind, with the letters that there are.
    pub fn unknown_letter(&self, orbit: Orbit, letters: &Letters, error: &UnknownLetter) -> String {
        match error {
            UnknownLetter::NoLetter { column, found } => self.say(
                "memo-unknown-letter",
                &[
                    ("column", (*column).into()),
                    ("found", found.to_string().into()),
                    ("kinds", capital(&self.kinds(orbit)).into()),
                    ("letters", letters.all().collect::<Vec<_>>().join(" ").into()),
                ],
            ),
            UnknownLetter::TooLong(bytes) => {
                self.say("moves-too-long", &[("bytes", (*bytes).into()), ("most", LONGEST_MEMO.into())])
            }
            UnknownLetter::Ambiguous { column } => self.say(
                "memo-ambiguous-letters",
                &[("column", (*column).into()), ("kinds", capital(&self.kinds(orbit)).into())],
            ),
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
