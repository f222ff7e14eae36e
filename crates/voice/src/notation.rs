//! What is wrong with a sequence of moves or a list of facelets.

use crate::Voice;
use cube::{Expected, FaceletError, Lack, NoSuchTurn, ParseError, ParseErrorKind};

impl Voice {
    /// A mistake in a sequence of moves, with its place and what would be right.
    pub fn parse_error(&self, error: &ParseError) -> String {
        let what = self.parse_problem(&error.kind);
        match error.kind {
            ParseErrorKind::TooLong(_) => what,
            _ => self.placed(error.line, error.column, &what),
        }
    }

    /// "Line 2, column 3: …".
    pub fn placed(&self, line: usize, column: usize, what: &str) -> String {
        self.say("placed", &[("line", line.into()), ("column", column.into()), ("what", what.into())])
    }

    /// A mistake in a sequence of moves without its place.
    pub fn parse_problem(&self, kind: &ParseErrorKind) -> String {
        match kind {
            ParseErrorKind::TooLong(bytes) => {
                self.say("moves-too-long", &[("bytes", (*bytes).into()), ("most", cube::MAX_TEXT.into())])
            }
            ParseErrorKind::TooManyTurns => self.say("moves-too-many", &[("most", cube::MAX_MOVES.into())]),
            ParseErrorKind::TooDeep => self.say("moves-too-deep", &[("most", cube::MAX_DEPTH.into())]),
            ParseErrorKind::Unexpected { found, expected } => {
                let expected = self.word(expected_message(*expected));
                match found {
                    // What people write for a turn the other way, where a keyboard or another program has no prime.
                    Some(found) if "`´\"-".contains(*found) => {
                        self.say("moves-unexpected-prime", &[("found", found.to_string().into())])
                    }
                    Some(found) => self.say(
                        "moves-unexpected",
                        &[("found", found.to_string().into()), ("expected", expected.into())],
                    ),
                    None => self.say("moves-unexpected-end", &[("expected", expected.into())]),
                }
            }
            ParseErrorKind::NumberAfterPrime { rather } => {
                self.say("moves-number-after-prime", &[("rather", rather.as_str().into())])
            }
            ParseErrorKind::WrongCase { found, rather } => self.say(
                "moves-wrong-case",
                &[("found", found.to_string().into()), ("rather", rather.to_string().into())],
            ),
            ParseErrorKind::NoSuchTurn(no) => {
                let reason = self.no_such_turn(*no);
                self.say(
                    "moves-no-such-turn",
                    &[("turn", no.turn.to_string().into()), ("reason", reason.into())],
                )
            }
        }
    }

    /// Why a size does not have a turn.
    pub fn no_such_turn(&self, no: NoSuchTurn) -> String {
        let size = ("size", no.size.to_string().into());
        match no.lack {
            Lack::Middle => self.say("turn-no-slice", &[size]),
            Lack::Wide => self.say("turn-no-wide", &[size]),
            Lack::Depth { depth, most } => {
                self.say("turn-too-deep", &[("depth", depth.into()), size, ("most", most.into())])
            }
            Lack::Inner => self.say("turn-no-inner", &[size]),
            Lack::Layers { most } => self.say("turn-other-layers", &[size, ("most", most.into())]),
            Lack::Backwards => self.word("turn-layers-backwards"),
        }
    }

    /// A mistake in a list of facelets.
    pub fn facelet_error(&self, error: &FaceletError) -> String {
        match error {
            FaceletError::UnknownColour { line, column, found, expected } => {
                let what = self.say(
                    "facelets-unknown",
                    &[
                        ("found", found.to_string().into()),
                        ("expected", expected.map(|letter| letter.to_string()).join(" ").into()),
                    ],
                );
                self.placed(*line, *column, &what)
            }
            FaceletError::OnFace { face, error } => {
                let what = self.facelet_error(error);
                self.say("facelets-on-face", &[("face", face.to_string().into()), ("what", what.into())])
            }
            FaceletError::FaceCount { face, count, size } => match size {
                Some(size) => self.say(
                    "facelets-face-count",
                    &[
                        ("face", face.to_string().into()),
                        ("count", (*count).into()),
                        ("size", size.to_string().into()),
                        ("right", (size.facelets() / 6).into()),
                    ],
                ),
                None => self.say(
                    "facelets-face-odd",
                    &[("face", face.to_string().into()), ("count", (*count).into())],
                ),
            },
            FaceletError::WrongCount(count) => {
                self.say("facelets-wrong-count", &[("count", (*count).into())])
            }
        }
    }
}

const fn expected_message(expected: Expected) -> &'static str {
    match expected {
        Expected::Turn => "expected-turn",
        Expected::TurnOrClose => "expected-turn-or-close",
        Expected::Separator => "expected-separator",
        Expected::CloseSquare => "expected-close-square",
        Expected::Face => "expected-face",
        Expected::Layers => "expected-layers",
        Expected::Space => "expected-space",
        Expected::Quarters => "expected-quarters",
        Expected::Repeats => "expected-repeats",
    }
}
