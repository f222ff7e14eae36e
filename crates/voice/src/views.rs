//! What the screens say of a puzzle: pictures for those who cannot see them, steps to be read aloud, notes.

use crate::Voice;
use crate::puzzle::MOST_NAMED;
use blind::{Colour, Conventions, Held, Letters, Trace, solved_pieces};
use cube::{Face, Facelets, Orbit, Sticker};

impl Voice {
    /// How the puzzle is picked up, and what is then already solved.
    pub fn picked_up(&self, held: &Held, conventions: &Conventions) -> String {
        let solved: Vec<String> = solved_pieces(&held.state)
            .into_iter()
            .map(|(orbit, sticker)| orbit.piece_name(sticker).to_owned())
            .collect();
        let already = if solved.is_empty() {
            self.word("hold-none-solved")
        } else if solved.len() > MOST_NAMED {
            self.say("hold-many-solved", &[("count", solved.len().into())])
        } else {
            self.say("hold-solved", &[("pieces", self.list(&solved).into()), ("count", solved.len().into())])
        };
        let hold = self.hold(held.rotation, conventions);
        if held.state.size().is_odd() {
            return format!("{hold} {already}");
        }
        // No centre shows it, so it has to be said which colours belong up and in front.
        let goal = self.say(
            "hold-goal",
            &[
                ("up", self.colour_held(Face::U, conventions).into()),
                ("front", self.colour_held(Face::F, conventions).into()),
            ],
        );
        format!("{hold} {goal} {already}")
    }

    /// The memo of a kind in a line: kind, buffer, letters, how many.
    pub fn memo_line(&self, trace: &Trace, conventions: &Conventions) -> String {
        let letters = &conventions.kind(trace.orbit()).letters;
        self.say(
            if trace.is_empty() { "memo-line-empty" } else { "memo-line" },
            &[
                ("kinds", self.kinds(trace.orbit()).into()),
                ("buffer", self.lettered(trace.orbit(), trace.buffer(), letters).into()),
                ("memo", letters.grouped(&trace.targets(), conventions.pairs).into()),
                ("letters", trace.len().into()),
            ],
        )
    }

    /// All faces of a puzzle, row by row.
    pub fn facelets(&self, facelets: &Facelets, conventions: &Conventions) -> String {
        let n = facelets.size().layers();
        let faces = Face::ALL.map(|face| {
            let rows: Vec<String> = (0..n)
                .map(|row| {
                    (0..n)
                        .filter_map(|column| facelets.get(face, row, column))
                        .map(|colour| self.colour(conventions.colour(colour)))
                        .collect::<Vec<_>>()
                        .join(" ")
                })
                .collect();
            self.say("view-face", &[("face", face.to_string().into()), ("rows", rows.join(", ").into())])
        });
        faces.join(" ")
    }

    /// A letter of the memo: its number from 0, letter and sticker.
    pub fn letter_said(&self, index: usize, orbit: Orbit, target: Sticker, letters: &Letters) -> String {
        self.say(
            "view-letter",
            &[
                ("number", (index + 1).into()),
                ("letter", letters.of(target).into()),
                ("target", orbit.name(target).into()),
            ],
        )
    }

    /// How many letters a thread has, beside its name.
    ///
    /// ```
    /// use voice::{Language, Voice};
    /// assert_eq!(Voice::new(Language::English).letters_counted(1), "1 letter");
    /// ```
    pub fn letters_counted(&self, letters: usize) -> String {
        self.say("thread-letters", &[("letters", letters.into())])
    }

    /// Which of its letters is carried out, beside the name of a thread: a number from 1.
    pub fn letter_of(&self, number: usize, letters: usize) -> String {
        self.say("thread-letter", &[("number", number.into()), ("letters", letters.into())])
    }

    /// A step of the execution: its number of so many, letter and name.
    pub fn step_said(&self, number: usize, all: usize, letter: &str, name: &str) -> String {
        let what = [letter, name].into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ");
        self.say("view-step", &[("number", number.into()), ("all", all.into()), ("what", what.into())])
    }

    /// A move of the execution: its number of so many, how it is written, and what it is part of: `setup`, `swap`,
    /// `undo` or `parity`.
    pub fn move_said(&self, number: usize, all: usize, turn: &str, part: &str) -> String {
        self.say(
            "view-move",
            &[("number", number.into()), ("all", all.into()), ("turn", turn.into()), ("part", part.into())],
        )
    }

    /// How the puzzle stands after a letter with its piece, or after several letters without one, and
    /// whether that is what they should have done, where they alone say so.
    pub fn after_letter(
        &self,
        letter: &str,
        piece: &str,
        solves: bool,
        as_expected: Option<bool>,
        solved: usize,
        all: usize,
    ) -> String {
        let blanks = [("letter", letter.into()), ("piece", piece.into())];
        let message = match (piece, solves) {
            ("", _) => "view-after-letters",
            (_, true) => "view-after-solves",
            (_, false) => "view-after-moves",
        };
        let first = self.say(message, &blanks);
        let second =
            as_expected.map(|yes| self.word(if yes { "view-as-expected" } else { "view-not-as-expected" }));
        let third = self.pieces_solved(solved, all);
        [Some(first), second, Some(third)].into_iter().flatten().collect::<Vec<_>>().join(" ")
    }

    /// How the puzzle stands after the parity algorithm.
    pub fn after_parity(&self, solved: usize, all: usize) -> String {
        format!("{} {}", self.word("view-after-parity"), self.pieces_solved(solved, all))
    }

    /// How likely something is among others, `weight` from 0 to 1, in hundredths.
    pub fn share(&self, weight: f64) -> String {
        self.say("view-share", &[("percent", ((weight * 100.0 + 0.5) as u32).into())])
    }

    fn pieces_solved(&self, solved: usize, all: usize) -> String {
        self.say("view-pieces-solved", &[("solved", solved.into()), ("all", all.into())])
    }

    /// A sticker of the net: face, row and column from 0, and its colour.
    pub fn cell_said(&self, face: Face, row: u8, column: u8, colour: &str) -> String {
        self.say(
            "view-cell",
            &[
                ("face", face.to_string().into()),
                ("row", (row + 1).into()),
                ("column", (column + 1).into()),
                ("colour", colour.into()),
            ],
        )
    }

    /// A sticker with the colour it has when solved in the solver's hold, and its letter.
    pub fn sticker_said(&self, orbit: Orbit, sticker: Sticker, conventions: &Conventions) -> String {
        self.say(
            "view-sticker",
            &[
                ("sticker", orbit.name(sticker).into()),
                ("colour", self.colour_held(sticker.face(), conventions).into()),
                ("letter", conventions.kind(orbit).letters.of(sticker).into()),
            ],
        )
    }

    /// A sticker took over the letter that another gave up.
    pub fn letters_exchanged(&self, orbit: Orbit, sticker: Sticker, letter: &str) -> String {
        self.say(
            "view-letters-exchanged",
            &[("sticker", orbit.name(sticker).into()), ("letter", letter.into())],
        )
    }

    /// The swap algorithm of a kind was turned with the cube, since the buffer changed.
    pub fn turned_along(&self, orbit: Orbit, algorithm: &str) -> String {
        self.say("view-turned-along", &[("kind", self.kind(orbit).into()), ("algorithm", algorithm.into())])
    }

    /// How well letters read on a colour; `ratio` is the contrast after WCAG 2.1, 1 to 21.
    pub fn contrast(&self, ratio: f64) -> String {
        let tenths = (ratio * 10.0) as u32;
        let good = ratio >= 4.5;
        self.say(
            if good { "view-contrast" } else { "view-contrast-poor" },
            &[("whole", (tenths / 10).into()), ("tenth", (tenths % 10).into())],
        )
    }

    /// Two colours that are hard to tell apart: `sight` is `usual`, `protanopia`, `deuteranopia` or `tritanopia`.
    pub fn colours_alike(&self, sight: &str, first: &Colour, second: &Colour) -> String {
        self.say(
            "view-colours-alike",
            &[
                ("sight", sight.into()),
                ("first", self.colour(first).into()),
                ("second", self.colour(second).into()),
            ],
        )
    }

    /// How a letter is carried out, for pupils. Empty set-up moves mean that none are needed.
    pub fn carried_out(
        &self,
        orbit: Orbit,
        target: Sticker,
        letters: &Letters,
        setup: &str,
        undo: &str,
    ) -> String {
        self.say(
            if setup.is_empty() { "view-carried-out-plainly" } else { "view-carried-out" },
            &[
                ("letter", letters.of(target).into()),
                ("target", orbit.name(target).into()),
                ("kind", self.kind(orbit).into()),
                ("setup", setup.into()),
                ("undo", undo.into()),
            ],
        )
    }
}
