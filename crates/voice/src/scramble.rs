//! Conditions on scrambles: what is wrong with one, why none meets it, how rare it is, and the lessons.

use crate::Voice;
use choose::{Estimate, Lesson, LessonError, MOST_FEATURES, Unsatisfiable, Why};
use cube::Orbit;
use formats::conditions::{ConditionProblem, ConditionTextError, ExpectedPart};
use num_bigint::BigUint;

impl Voice {
    fn perhaps(&self, meant: Option<&str>) -> String {
        meant.map_or(String::new(), |word| format!(" {}", self.say("did-you-mean", &[("word", word.into())])))
    }

    /// A mistake in a condition, with its column and what would be right.
    pub fn condition_error(&self, error: &ConditionTextError) -> String {
        let what = self.condition_problem(&error.problem);
        self.say("condition-placed", &[("column", error.column.into()), ("what", what.into())])
    }

    fn condition_problem(&self, problem: &ConditionProblem) -> String {
        match problem {
            ConditionProblem::Expected { expected, found } => {
                let expected = self.word(expected_message(*expected));
                match found {
                    Some(found) => self.say(
                        "condition-expected",
                        &[("expected", expected.into()), ("found", found.as_str().into())],
                    ),
                    None => self.say("condition-expected-end", &[("expected", expected.into())]),
                }
            }
            ConditionProblem::UnknownFeature { word, meant, known } => {
                let said = self.say(
                    "condition-unknown-feature",
                    &[("word", word.as_str().into()), ("known", known.join(", ").into())],
                );
                said + &self.perhaps(meant.as_deref())
            }
            ConditionProblem::UnknownWord { word, feature, meant, known } => {
                let said = self.say(
                    "condition-unknown-word",
                    &[
                        ("word", word.as_str().into()),
                        ("feature", feature.as_str().into()),
                        ("known", known.join(", ").into()),
                    ],
                );
                said + &self.perhaps(meant.as_deref())
            }
            ConditionProblem::KindMissing { orbit, size } => self.say(
                "kind-not-there",
                &[("size", size.to_string().into()), ("kinds", self.kinds(*orbit).into())],
            ),
            ConditionProblem::NoTarget { word, orbit } => self
                .say("no-such-target", &[("text", word.as_str().into()), ("kind", self.kind(*orbit).into())]),
            ConditionProblem::NoPair { word } => {
                self.say("condition-no-pair", &[("word", word.as_str().into())])
            }
            ConditionProblem::NumberTooLarge => self.word("condition-number-too-large"),
            ConditionProblem::RangeBackwards { from, to } => {
                self.say("condition-range-backwards", &[("from", (*from).into()), ("to", (*to).into())])
            }
            ConditionProblem::OnlyEqual => self.word("condition-only-equal"),
            ConditionProblem::TooDeep { most } => self.say("condition-too-deep", &[("most", (*most).into())]),
            ConditionProblem::TooManyFeatures => {
                self.say("condition-too-many", &[("most", MOST_FEATURES.into())])
            }
            ConditionProblem::TooLong { bytes, most } => {
                self.say("document-too-long", &[("bytes", (*bytes).into()), ("most", (*most).into())])
            }
            ConditionProblem::SizeNotCovered(size) => {
                self.say("condition-size-not-covered", &[("size", size.to_string().into())])
            }
        }
    }

    /// That no state meets a condition, and why.
    pub fn unsatisfiable(&self, error: &Unsatisfiable) -> String {
        let why = self.why_unsatisfiable(&error.why);
        match error.parts.as_slice() {
            [part] => {
                self.say("condition-never-alone", &[("part", part.as_str().into()), ("why", why.into())])
            }
            parts => {
                let parts: Vec<String> = parts.iter().map(|part| self.quoted(part)).collect();
                self.say(
                    "condition-never-together",
                    &[("parts", self.list(&parts).into()), ("why", why.into())],
                )
            }
        }
    }

    fn quoted(&self, text: &str) -> String {
        self.say("condition-quoted", &[("text", text.into())])
    }

    fn why_unsatisfiable(&self, why: &Why) -> String {
        match why {
            Why::Parity => self.word("never-parity"),
            Why::Turning(Orbit::Corner) => self.word("never-twists"),
            Why::Turning(
                Orbit::Midge
                | Orbit::Wing { .. }
                | Orbit::XCentre { .. }
                | Orbit::TCentre { .. }
                | Orbit::Oblique(_),
            ) => self.word("never-flips"),
            Why::ParityAndTurning => self.word("never-parity-and-turning"),
            Why::OfBuffer { orbit, sticker } => {
                self.say("never-of-buffer", &[("sticker", orbit.name(*sticker).into())])
            }
            Why::OneCornerStays => self.word("never-one-corner-stays"),
            Why::OutOfRange { feature, least, most } => self.say(
                "never-out-of-range",
                &[
                    ("feature", feature.to_string().into()),
                    ("least", (*least).into()),
                    ("most", (*most).into()),
                ],
            ),
            Why::Contradiction => self.word("never-contradiction"),
        }
    }

    /// What a lesson is called.
    pub fn lesson(&self, lesson: &Lesson) -> String {
        self.word(&format!("lesson-{}", lesson.name()))
    }

    /// Why there is no such lesson.
    pub fn lesson_error(&self, error: &LessonError) -> String {
        match error {
            LessonError::Unknown { name, meant, known } => {
                let said = self.say(
                    "lesson-unknown",
                    &[("name", name.as_str().into()), ("known", known.join(", ").into())],
                );
                said + &self.perhaps(meant.as_deref())
            }
            LessonError::NotFor { name, size } => self
                .say("lesson-not-for", &[("name", name.as_str().into()), ("size", size.to_string().into())]),
        }
    }

    /// A share that was counted: so many of so many, one in so many.
    pub fn exact_share(&self, matching: &BigUint, total: &BigUint, one_in: f64) -> String {
        let number = |count: &BigUint| self.grouped(&count.to_string());
        self.say(
            "share-exact",
            &[
                ("matching", number(matching).into()),
                ("total", number(total).into()),
                ("ratio", self.to_one(one_in).into()),
            ],
        )
    }

    /// A share that was found by trying.
    pub fn estimate(&self, estimate: &Estimate) -> String {
        let percent = |share: f64| self.decimal(share * 100.0, 4);
        self.say(
            "share-estimated",
            &[
                ("tried", estimate.tried.to_string().into()),
                ("share", percent(estimate.share).into()),
                ("low", percent(estimate.bounds[0]).into()),
                ("high", percent(estimate.bounds[1]).into()),
            ],
        )
    }
}

const fn expected_message(expected: ExpectedPart) -> &'static str {
    match expected {
        ExpectedPart::Condition => "condition-needs-condition",
        ExpectedPart::Comparison => "condition-needs-comparison",
        ExpectedPart::Value => "condition-needs-value",
        ExpectedPart::Number => "condition-needs-number",
        ExpectedPart::Dot => "condition-needs-dot",
        ExpectedPart::Name => "condition-needs-name",
        ExpectedPart::Open => "condition-needs-open",
        ExpectedPart::Close => "condition-needs-close",
        ExpectedPart::Item => "condition-needs-item",
        ExpectedPart::Joint => "condition-needs-joint",
    }
}
