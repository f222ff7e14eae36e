//! What is wrong with a document, or with a state that was typed.

use crate::Voice;
use crate::check::capital;
use blind::Conventions;
use cube::{Face, Turn};
use diagnosis::CatalogueError;
use formats::ease::EaseError;
use formats::slips::SlipsError;
use formats::state_text::{ColourNames, Spot, StateTextError};
use formats::timings::{self, TimingsError};
use formats::{Document, DocumentError, KeyProblem, Needs};
use search::ease::ModelError;

impl Voice {
    /// Why a text is not the document it is taken for.
    pub fn document_error(&self, error: &DocumentError) -> String {
        let name = |document: Document| self.word(document_message(document));
        match error {
            DocumentError::NewerVersion { document, found, known } => self.say(
                "document-newer",
                &[
                    ("document", name(*document).into()),
                    ("found", found.to_string().into()),
                    ("known", known.to_string().into()),
                ],
            ),
            DocumentError::OtherDocument { expected, found: None } => {
                self.say("document-other", &[("document", name(*expected).into())])
            }
            DocumentError::OtherDocument { expected, found: Some(found) } => self.say(
                "document-other-found",
                &[("document", name(*expected).into()), ("found", found.as_str().into())],
            ),
            DocumentError::TooLong { bytes, most } => {
                self.say("document-too-long", &[("bytes", (*bytes).into()), ("most", (*most).into())])
            }
            DocumentError::Malformed { place, what } => self.placed(place.line, place.column, what),
            DocumentError::Key { place, problem } => {
                self.placed(place.line, place.column, &self.key_problem(problem))
            }
            DocumentError::Content { document, what } => self.say(
                "document-content",
                &[("document", name(*document).into()), ("what", what.as_str().into())],
            ),
        }
    }

    /// What is wrong with a key of a table.
    fn key_problem(&self, problem: &KeyProblem) -> String {
        let with_meant = |said: String, meant: &Option<String>| match meant {
            Some(word) => said + " " + &self.say("did-you-mean", &[("word", word.as_str().into())]),
            None => said,
        };
        match problem {
            KeyProblem::Unknown { key, meant, known } => {
                let blanks = [("key", key.as_str().into()), ("known", known.join(", ").into())];
                with_meant(self.say("toml-unknown-key", &blanks), meant)
            }
            KeyProblem::Missing(key) => self.say("toml-missing", &[("key", key.as_str().into())]),
            KeyProblem::WrongSort { key, needs } => {
                let needs = self.word(needs_message(*needs));
                self.say("toml-wrong-sort", &[("key", key.as_str().into()), ("needs", needs.into())])
            }
            KeyProblem::UnknownWord { word, meant, known } => {
                let blanks = [("word", word.as_str().into()), ("known", known.join(", ").into())];
                with_meant(self.say("toml-unknown-word", &blanks), meant)
            }
        }
    }

    /// A mistake in a model of hands.
    pub fn ease_error(&self, error: &EaseError) -> String {
        let turn = |message: &str, turn: Turn| self.say(message, &[("turn", turn.to_string().into())]);
        match error {
            EaseError::Document(error) => self.document_error(error),
            EaseError::NoTurn { place, text } => {
                let what = self.say("ease-no-turn", &[("text", text.as_str().into())]);
                self.placed(place.line, place.column, &what)
            }
            EaseError::BadTurn { place, turn: bad } => {
                self.placed(place.line, place.column, &turn("ease-bad-turn", *bad))
            }
            EaseError::Model(ModelError::BadTurn(bad)) => turn("ease-bad-turn", *bad),
            EaseError::Model(ModelError::NoWay(missing)) => turn("ease-no-way", *missing),
            EaseError::Model(ModelError::BadCost(feature)) => {
                self.say("ease-bad-cost", &[("key", feature.name().into())])
            }
        }
    }

    /// A mistake in a table of timings.
    pub fn timings_error(&self, error: &TimingsError) -> String {
        let row =
            |line: u64, what: String| self.say("fit-row", &[("line", line.into()), ("what", what.into())]);
        match error {
            TimingsError::Document(error) => self.document_error(error),
            TimingsError::NotATable { line, what } => {
                self.say("sheet-no-table", &[("line", (*line).into()), ("what", what.as_str().into())])
            }
            TimingsError::TooMuch { line } => {
                row(*line, self.say("fit-too-much", &[("most", timings::MOST_TURNS.into())]))
            }
            TimingsError::NoColumns { found } => {
                self.say("fit-columns", &[("found", found.join(" | ").into())])
            }
            TimingsError::NoNumber { line, text } => {
                row(*line, self.say("fit-no-number", &[("text", text.as_str().into())]))
            }
            TimingsError::Algorithm { line, error } => row(*line, self.parse_error(error)),
        }
    }

    /// A mistake in a catalogue of slips.
    pub fn slips_error(&self, error: &SlipsError) -> String {
        let needs =
            |key: &str, needs: Needs| self.key_problem(&KeyProblem::WrongSort { key: key.to_owned(), needs });
        match error {
            SlipsError::Document(error) => self.document_error(error),
            SlipsError::Catalogue(CatalogueError::NoWeight(kind)) => needs(kind.name(), Needs::Share),
            SlipsError::Catalogue(CatalogueError::NoStrength) => needs("strength", Needs::Share),
            SlipsError::Catalogue(CatalogueError::NoShare(_)) => needs("slips", Needs::ThreeShares),
        }
    }

    /// What the colours of the conventions are called where a state is typed: as the language calls them, and as the
    /// conventions do.
    pub fn colour_names(&self, conventions: &Conventions) -> ColourNames {
        let names = Face::ALL.map(|face| {
            let colour = conventions.colour(face);
            let said = self.colour(colour);
            if said == colour.name { vec![said] } else { vec![said, colour.name.clone()] }
        });
        ColourNames::new(&names, conventions.colour_letters().unwrap_or(Face::ALL.map(Face::letter)))
    }

    /// A mistake in a state that was typed.
    pub fn state_text_error(&self, error: &StateTextError) -> String {
        match error {
            StateTextError::Document(error) => self.document_error(error),
            StateTextError::Empty => self.word("state-empty"),
            StateTextError::NoColour { place, spot, found, meant, expected } => {
                let mut what = self.say(
                    "state-no-colour",
                    &[("found", found.as_str().into()), ("expected", expected.join(" ").into())],
                );
                if let Some(meant) = meant {
                    what.push(' ');
                    what += &self.say("did-you-mean", &[("word", meant.as_str().into())]);
                }
                match spot {
                    None => self.placed(place.line, place.column, &what),
                    Some(Spot { face, row, column }) => {
                        let spot = self.say(
                            "physical-cell",
                            &[
                                ("face", face.to_string().into()),
                                ("row", (row + 1).into()),
                                ("column", (column + 1).into()),
                            ],
                        );
                        self.say(
                            "placed-on",
                            &[
                                ("line", place.line.into()),
                                ("column", place.column.into()),
                                ("spot", spot.into()),
                                ("what", what.into()),
                            ],
                        )
                    }
                }
            }
            StateTextError::FaceCount { size, wrong } => {
                let faces: Vec<String> = wrong
                    .iter()
                    .map(|(face, count)| {
                        let blanks = [("face", face.to_string().into()), ("count", (*count).into())];
                        self.say("state-face", &blanks)
                    })
                    .collect();
                let faces = capital(&self.list(&faces));
                self.say(
                    "state-face-count",
                    &[
                        ("faces", faces.into()),
                        ("size", size.to_string().into()),
                        ("right", (size.facelets() / Face::ALL.len()).into()),
                    ],
                )
            }
            StateTextError::RowCount { size, face, row, count } => self.say(
                "state-row-count",
                &[
                    ("row", (row + 1).into()),
                    ("face", face.to_string().into()),
                    ("count", (*count).into()),
                    ("size", size.to_string().into()),
                    ("right", size.layers().into()),
                ],
            ),
            StateTextError::NetLine { size, line, count, expected } => self.say(
                "state-net-line",
                &[
                    ("line", (*line).into()),
                    ("count", (*count).into()),
                    ("size", size.to_string().into()),
                    ("right", (*expected).into()),
                ],
            ),
            StateTextError::Count { count, nearest } => self.say(
                "state-count",
                &[
                    ("count", (*count).into()),
                    ("size", nearest.to_string().into()),
                    ("right", nearest.facelets().into()),
                ],
            ),
        }
    }
}

const fn document_message(document: Document) -> &'static str {
    match document {
        Document::Conventions => "document-conventions",
        Document::Sheet => "document-sheet",
        Document::Ease => "document-ease",
        Document::Slips => "document-slips",
        Document::Lesson => "document-lesson",
        Document::Moment => "document-moment",
        Document::Draft => "document-draft",
        Document::Set => "document-set",
        Document::Setting => "document-setting",
    }
}

const fn needs_message(needs: Needs) -> &'static str {
    match needs {
        Needs::Table => "needs-table",
        Needs::Tables => "needs-tables",
        Needs::Text => "needs-text",
        Needs::Texts => "needs-texts",
        Needs::Seconds => "needs-seconds",
        Needs::Share => "needs-share",
        Needs::ThreeShares => "needs-three-shares",
        Needs::Whole => "needs-whole",
    }
}
