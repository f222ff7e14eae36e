//! Algorithms and sheets of them: what a row does, and why a search or a fit was not done.

use crate::{Voice, excerpt};
use blind::{Conventions, Letters, nearest};
use cube::{Orbit, Sticker, display_turns};
use formats::sheet::{MOST_CELLS, MOST_TAKEN, Remark, SheetError};
use search::cycle::{EffectError, FindError, TurnSetError};
use search::ease::{Estimate, FitError, Hand, Regrip};
use search::rings::{MOST_SEQUENCES, RingsError};
use sheet::{CycleCase, MOST_TURNS, Origin, Pattern, Report, Row, Sheet, Verdict};
use std::collections::BTreeMap;

/// How many places are named.
const MOST_PLACES: usize = 10;

const MEBIBYTE: u64 = 1 << 20;

/// What no machine has, in bytes: 16 TiB.
const NO_MACHINE: u64 = 16 << 40;

impl Voice {
    /// A case as people speak of it: its letters and stickers, `AB (UBL RDF)`.
    pub fn case(&self, case: CycleCase, conventions: &Conventions) -> String {
        let letters = &conventions.kind(case.orbit).letters;
        let (first, second) = (case.orbit.name(case.first), case.orbit.name(case.second));
        format!("{} ({first} {second})", letters.spell(&[case.first, case.second]))
    }

    /// What a row of a sheet does.
    pub fn verdict(&self, row: &Row, verdict: &Verdict, conventions: &Conventions) -> String {
        let names = |orbit: Orbit, stickers: &[Sticker]| {
            stickers.iter().map(|&sticker| orbit.name(sticker)).collect::<Vec<_>>().join(" → ")
        };
        let orbit = row.case.map_or(Orbit::Corner, |case| case.orbit);
        let rotation = |rotation: cube::Rotation| display_turns(rotation.turns()).to_string();
        match verdict {
            Verdict::Right => self.word("verdict-right"),
            Verdict::Empty => self.word("verdict-empty"),
            Verdict::OtherCase(actual) => {
                self.say("verdict-other-case", &[("actual", self.case(*actual, conventions).into())])
            }
            Verdict::Inverse => {
                let actual = row.case.map_or(String::new(), |case| self.case(case.inverse(), conventions));
                self.say("verdict-inverse", &[("actual", actual.into())])
            }
            Verdict::WithoutBuffer(pieces) => {
                self.say("verdict-without-buffer", &[("pieces", names(orbit, pieces).into())])
            }
            Verdict::OtherKind(other, pieces) => self.say(
                "verdict-other-kind",
                &[("kinds", self.kinds(*other).into()), ("pieces", names(*other, pieces).into())],
            ),
            Verdict::LeavesTurned(turned) => {
                self.say("verdict-leaves-turned", &[("rotation", rotation(*turned).into())])
            }
            Verdict::NotAThreeCycle { moved, turned } => {
                let moved: Vec<String> =
                    moved.iter().map(|&(orbit, sticker)| orbit.piece_name(sticker).to_owned()).collect();
                let moved = self.list(&moved);
                if *turned == cube::Rotation::NONE {
                    self.say("verdict-not-a-three-cycle", &[("moved", moved.into())])
                } else {
                    self.say(
                        "verdict-turned",
                        &[("moved", moved.into()), ("rotation", rotation(*turned).into())],
                    )
                }
            }
            Verdict::DoesNothing => self.word("verdict-does-nothing"),
            Verdict::Unreadable(error) => {
                // A cell has one line; its own place in the table is said before.
                let what = self.parse_problem(&error.kind);
                self.say("verdict-unreadable", &[("at", error.column.into()), ("what", what.into())])
            }
            Verdict::TooLong(turns) => {
                self.say("verdict-too-long", &[("turns", (*turns).into()), ("most", MOST_TURNS.into())])
            }
            Verdict::NoCase => self.say("verdict-no-case", &[("named", row.named.as_str().into())]),
        }
    }

    /// A row of a sheet that is not right: what it is of, what stands there, and what that does.
    pub fn refused_row(&self, row: &Row, verdict: &Verdict, conventions: &Conventions) -> String {
        let named = row.case.map_or_else(|| row.named.clone(), |case| self.case(case, conventions));
        let written = [excerpt(&named), excerpt(&row.algorithm)].join("  ");
        format!("{}: {}", written.trim(), self.verdict(row, verdict, conventions))
    }

    /// Where an algorithm comes from.
    pub fn origin(&self, origin: Origin) -> String {
        self.word(&format!("origin-{}", origin.name()))
    }

    /// What a sheet of a buffer is called.
    pub fn grid_title(&self, orbit: Orbit, buffer: Sticker, letters: &Letters) -> String {
        let buffer = self.lettered(orbit, buffer, letters);
        self.say("grid-title", &[("kinds", self.kinds(orbit).into()), ("buffer", buffer.into())])
    }

    /// How many cases of a buffer have a right algorithm.
    pub fn coverage(&self, orbit: Orbit, buffer: Sticker, covered: usize, cases: usize) -> String {
        self.say(
            "sheet-coverage",
            &[
                ("kinds", self.kinds(orbit).into()),
                ("buffer", orbit.name(buffer).into()),
                ("covered", covered.into()),
                ("cases", cases.into()),
            ],
        )
    }

    /// The one mistake that most rows share.
    pub fn sheet_pattern(&self, pattern: Pattern) -> String {
        self.word(match pattern {
            Pattern::Exchanged => "sheet-exchanged",
            Pattern::OtherBuffer => "sheet-other-buffer",
            Pattern::OtherKind => "sheet-other-kind",
            Pattern::NoCases => "sheet-no-case-read",
        })
    }

    /// The account of a sheet, a sentence each: counts, where the cells are that are not right, what is there twice or
    /// contradicts another, and how the sheet was understood.
    pub fn sheet_account(&self, sheet: &Sheet, report: &Report, remarks: &[Remark]) -> Vec<String> {
        let account = sheet.account(report);
        let row = |number: usize| &sheet.rows()[number];
        let place = |number: usize| {
            self.say(
                "verdict-place",
                &[("line", row(number).line.into()), ("column", row(number).column.into())],
            )
        };
        let places = |message: &str, rows: &[usize]| {
            let some: Vec<String> = rows.iter().take(MOST_PLACES).map(|&number| place(number)).collect();
            let list = self.some_of(&some, rows.len());
            (!rows.is_empty()).then(|| self.say(message, &[("places", list.into())]))
        };
        let pairs = |message: &str, pairs: &[[usize; 2]]| {
            let some =
                pairs.iter().take(MOST_PLACES).map(|&[one, other]| self.list(&[place(one), place(other)]));
            let some: Vec<String> = some.collect();
            let list = self.some_of(&some, pairs.len());
            (!pairs.is_empty())
                .then(|| self.say(message, &[("count", pairs.len().into()), ("places", list.into())]))
        };
        let aside =
            (account.asides > 0).then(|| self.say("account-asides", &[("count", account.asides.into())]));
        let mut said = vec![self.say(
            "account-cells",
            &[
                ("cells", account.cells.into()),
                ("right", account.right.into()),
                ("wrong", account.wrong.len().into()),
                ("empty", account.empty.into()),
                ("unread", account.unread.len().into()),
            ],
        )];
        said.extend(report.pattern().map(|pattern| self.sheet_pattern(pattern)));
        said.extend(places("account-wrong", &account.wrong));
        said.extend(places("account-unread", &account.unread));
        said.extend(pairs("account-twice", &account.twice));
        said.extend(pairs("account-contradictions", &account.contradictions));
        said.extend(aside);
        said.extend(remarks.iter().take(MOST_PLACES).map(|remark| self.remark(remark)));
        said
    }

    /// Some of many, and how many more there are.
    fn some_of(&self, some: &[String], all: usize) -> String {
        let list = some.join("; ");
        match all.saturating_sub(some.len()) {
            0 => list,
            more => self.say("account-more", &[("list", list.into()), ("more", more.into())]),
        }
    }

    /// What is to be said of how a sheet was understood.
    pub fn remark(&self, remark: &Remark) -> String {
        match remark {
            Remark::NoHead => self.word("remark-no-head"),
            Remark::KindByAlgorithms(orbit) => {
                self.say("remark-kind", &[("kinds", self.kinds(*orbit).into())])
            }
            Remark::OtherBuffer { orbit, found, asked, taken } => self.say(
                "remark-other-buffer",
                &[
                    ("found", orbit.name(*found).into()),
                    ("asked", orbit.name(*asked).into()),
                    ("taken", orbit.name(*taken).into()),
                ],
            ),
            Remark::TwoCases { line, pair, targets } => self.say(
                "remark-two-cases",
                &[
                    ("line", (*line).into()),
                    ("text", pair.as_str().into()),
                    ("word", targets.as_str().into()),
                ],
            ),
        }
    }

    /// What was filled in.
    pub fn filled(&self, by_origin: &BTreeMap<Origin, usize>) -> String {
        let count: usize = by_origin.values().sum();
        if count == 0 {
            return self.word("sheet-nothing-to-fill");
        }
        let parts: Vec<String> =
            by_origin.iter().map(|(origin, count)| format!("{count} {}", self.origin(*origin))).collect();
        self.say("sheet-filled", &[("count", count.into()), ("by", self.list(&parts).into())])
    }

    /// Where hands take hold anew, and how the thumbs are to begin with.
    pub fn regrips(&self, estimate: &Estimate) -> String {
        let hand = |hand: Hand| if hand == Hand::Left { "left" } else { "right" };
        let regrip = |regrip: &Regrip| {
            self.say(
                "way-regrip",
                &[("hand", hand(regrip.hand).into()), ("move", (regrip.before + 1).into())],
            )
        };
        match &estimate.regrips[..] {
            [] => self.word("way-no-regrip"),
            regrips => self.list(&regrips.iter().map(regrip).collect::<Vec<_>>()),
        }
    }

    /// Why a text is no sheet.
    pub fn sheet_error(&self, error: &SheetError) -> String {
        match error {
            SheetError::Document(error) => self.document_error(error),
            SheetError::Empty => self.word("sheet-empty"),
            SheetError::NotATable { line, what } => {
                self.say("sheet-no-table", &[("line", (*line).into()), ("what", what.as_str().into())])
            }
            SheetError::TooMuch { line } => self.say(
                "sheet-too-much",
                &[
                    ("line", (*line).into()),
                    ("cells", MOST_CELLS.into()),
                    ("bytes", (MOST_TAKEN >> 20).into()),
                ],
            ),
            SheetError::NoHeader { found, meant } => {
                let mut said = self.say("sheet-no-header", &[("found", found.join(" | ").into())]);
                if let Some((_, meant)) = meant {
                    said = format!("{said} {}", self.say("did-you-mean", &[("word", (*meant).into())]));
                }
                said
            }
            SheetError::ColumnMissing(column) => {
                self.say("sheet-column-missing", &[("column", (*column).into())])
            }
            SheetError::OrderUnknown { right } => {
                self.say("sheet-order-unknown", &[("right", (*right).into())])
            }
            SheetError::KindUnknown => self.word("sheet-kind-unknown"),
            SheetError::NoBuffer { word, orbit } => self.say(
                "sheet-no-buffer",
                &[("text", word.as_str().into()), ("kind", self.kind(*orbit).into())],
            ),
        }
    }

    /// Why stickers make no effect to search for.
    pub fn effect_error(&self, error: &EffectError, conventions: &Conventions) -> String {
        match error {
            EffectError::SamePiece { orbit, one, other } => self.say(
                "find-same-piece",
                &[
                    ("first", orbit.name(*one).into()),
                    ("second", orbit.name(*other).into()),
                    ("kind", self.kind(*orbit).into()),
                ],
            ),
            EffectError::NoSuchOrbit { .. } | EffectError::LooksAlike(_) => self.word("find-only-on"),
            EffectError::Unreachable(error) => self
                .say("find-unreachable", &[("what", self.unreachable(error, conventions).join(" ").into())]),
        }
    }

    /// Why turns make no set to search with.
    pub fn turn_set_error(&self, error: &TurnSetError) -> String {
        let turn = |turn: cube::Turn| turn.to_string();
        match error {
            TurnSetError::Empty => self.word("turns-empty"),
            TurnSetError::Size(size) => self.say("turns-size", &[("size", size.to_string().into())]),
            TurnSetError::NoSuchTurn(no) => {
                let blanks = [("turn", no.turn.to_string().into()), ("size", no.size.to_string().into())];
                self.say("turns-not-there", &blanks)
            }
            TurnSetError::NoInverse(lonely) => {
                self.say("turns-no-inverse", &[("turn", turn(*lonely).into())])
            }
            TurnSetError::Free(free) => self.say("turns-free", &[("turn", turn(*free).into())]),
            TurnSetError::Unknown(text) => {
                let said = self.say("turns-unknown", &[("text", text.as_str().into())]);
                match nearest(text, &["U", "D", "R", "L", "F", "B", "M", "E", "S"]) {
                    Some(meant) if text.eq_ignore_ascii_case(meant) => {
                        format!("{said} {}", self.say("did-you-mean", &[("word", meant.into())]))
                    }
                    _ => said,
                }
            }
        }
    }

    /// Why three-cycles of wings or centres were not searched.
    pub fn rings_error(&self, error: &RingsError) -> String {
        match error {
            RingsError::SeveralStickers(_) => self.word("find-rings-several"),
            RingsError::NoSuchOrbit { orbit, size } => self.say(
                "kind-not-there",
                &[("size", size.to_string().into()), ("kinds", self.kinds(*orbit).into())],
            ),
            RingsError::NoSuchTurn(no) => self.turn_set_error(&TurnSetError::NoSuchTurn(*no)),
            RingsError::NoInverse(lonely) => self.turn_set_error(&TurnSetError::NoInverse(*lonely)),
            RingsError::NoTurns => self.word("find-rings-no-turns"),
            RingsError::TooMany { length, count } => self.say(
                "find-rings-many",
                &[("length", (*length).into()), ("count", (*count).into()), ("most", MOST_SEQUENCES.into())],
            ),
            RingsError::Stopped => self.word("find-stopped"),
        }
    }

    /// Why a search was not done.
    pub fn find_error(&self, error: &FindError) -> String {
        let mebibytes = |bytes: u64| bytes.div_ceil(MEBIBYTE);
        match error {
            FindError::Memory { max_length, needed, allowed, possible } if *needed >= NO_MACHINE => self.say(
                "find-memory-any",
                &[
                    ("length", (*max_length).into()),
                    ("allowed", (allowed / MEBIBYTE).into()),
                    ("possible", (*possible).into()),
                ],
            ),
            FindError::Memory { max_length, needed, allowed, possible } => self.say(
                "find-memory",
                &[
                    ("possible", (*possible).into()),
                    ("length", (*max_length).into()),
                    ("needed", mebibytes(*needed).into()),
                    ("allowed", (allowed / MEBIBYTE).into()),
                ],
            ),
            FindError::NoMemory { needed } => {
                self.say("find-no-memory", &[("needed", mebibytes(*needed).into())])
            }
            FindError::Stopped => self.word("find-stopped"),
            FindError::OtherSize { .. } | FindError::NotProven(_) => self.word("find-fault"),
        }
    }

    /// The same for someone before a page, who has other things to choose than a command has.
    pub fn page_find_error(&self, error: &FindError) -> String {
        match error {
            FindError::Memory { max_length, allowed, possible, .. } => self.say(
                "page-find-memory",
                &[
                    ("possible", (*possible).into()),
                    ("length", (*max_length).into()),
                    ("allowed", (allowed / MEBIBYTE).into()),
                ],
            ),
            error => self.find_error(error),
        }
    }

    /// Why costs were not fitted.
    pub fn fit_error(&self, error: &FitError) -> String {
        match error {
            FitError::TooFew { given, costs, needed, .. } => self.say(
                "fit-too-few",
                &[("given", (*given).into()), ("costs", (*costs).into()), ("needed", (*needed).into())],
            ),
            FitError::BadTime { place, seconds } => self
                .say("fit-bad-time", &[("place", (*place).into()), ("seconds", seconds.to_string().into())]),
            FitError::NoTurns(place) => self.say("fit-no-turns", &[("place", (*place).into())]),
            FitError::TooFewParts(parts) => self.say("fit-parts", &[("parts", (*parts).into())]),
        }
    }
}
