//! The trace in the coach's words: why each letter is what it is.

use crate::Voice;
use crate::puzzle::sort;
use blind::{BufferIs, Chosen, Conventions, End, Memo, Method, Reason, Solver, Trace};
use cube::{Face, Orbit, Sticker};
use fluent_bundle::FluentValue;

impl Voice {
    /// Why a letter of a trace is there.
    pub fn reason(&self, reason: &Reason, trace: &Trace, conventions: &Conventions) -> String {
        let orbit = trace.orbit();
        let letters = &conventions.kind(orbit).letters;
        let name = |sticker: Sticker| orbit.name(sticker);
        let letter = |sticker: Sticker| letters.of(sticker);
        match reason {
            Reason::Follow { place, at_buffer, target, face, piece } => {
                self.follow(trace, conventions, [*place, *target], *at_buffer, &[&[*face], piece.as_slice()])
            }
            Reason::FollowColour { .. } => self.follow_colour(reason, trace, conventions),
            Reason::Break { target, unsolved, chosen, after } => {
                let how = match chosen {
                    Chosen::First if unsolved.len() == 1 => "break-only",
                    Chosen::First if orbit.looks_alike() => "break-first-centre",
                    Chosen::First => "break-first",
                    Chosen::Fewest => "break-fewest",
                    Chosen::Least => "break-least",
                };
                let begin = self.say(
                    how,
                    &[
                        ("unsolved", self.pieces_or_number(orbit, unsolved).into()),
                        ("target", name(*target).into()),
                        ("letter", letter(*target).into()),
                        ("kind", sort(orbit).into()),
                    ],
                );
                self.after_end(after, trace, conventions, &begin)
            }
            Reason::TurnedFirst { target, after, .. } => {
                let begin = self.say(
                    "turned-first",
                    &[
                        ("piece", orbit.piece_name(*target).into()),
                        ("target", name(*target).into()),
                        ("letter", letter(*target).into()),
                        ("kind", sort(orbit).into()),
                    ],
                );
                self.after_end(after, trace, conventions, &begin)
            }
            Reason::TurnedSecond { place, target } => self.say(
                "turned-second",
                &[
                    ("place", name(*place).into()),
                    ("colour", self.colour_held(target.face(), conventions).into()),
                    ("face", target.face().to_string().into()),
                    ("target", name(*target).into()),
                    ("letter", letter(*target).into()),
                    ("kind", sort(orbit).into()),
                ],
            ),
            Reason::Close { place, target, began, .. } => {
                let message = if orbit.looks_alike() {
                    "reason-close-centre"
                } else if target == began {
                    "reason-close"
                } else {
                    "reason-close-turned"
                };
                self.say(
                    message,
                    &[
                        ("place", name(*place).into()),
                        ("placeletter", letter(*place).into()),
                        ("colour", self.colour_held(target.face(), conventions).into()),
                        ("kind", sort(orbit).into()),
                        ("began", name(*began).into()),
                        ("beganletter", letter(*began).into()),
                        ("target", name(*target).into()),
                        ("letter", letter(*target).into()),
                    ],
                )
            }
        }
    }

    /// Why a letter follows the one before, for pieces that are told apart. `faces`: the face of the sticker seen, and those of
    /// its piece.
    fn follow(
        &self,
        trace: &Trace,
        conventions: &Conventions,
        [place, target]: [Sticker; 2],
        at_buffer: bool,
        faces: &[&[Face]; 2],
    ) -> String {
        let orbit = trace.orbit();
        let letters = &conventions.kind(orbit).letters;
        let [face, piece] = faces;
        let colours = |faces: &[Face]| FluentValue::from(self.colours(faces, conventions));
        let mut blanks = vec![
            ("place", orbit.name(place).into()),
            ("placeletter", letters.of(place).into()),
            ("colour", colours(face)),
            ("target", orbit.name(target).into()),
            ("letter", letters.of(target).into()),
        ];
        let message = match orbit {
            // One sticker stands for a wing, and which of two like-coloured ones it is shows by the side that is seen.
            Orbit::Wing { .. } => {
                blanks.push(("other", colours(piece.get(1..).unwrap_or_default())));
                if at_buffer { "reason-buffer-wing" } else { "reason-follow-wing" }
            }
            Orbit::Corner
            | Orbit::Midge
            | Orbit::XCentre { .. }
            | Orbit::TCentre { .. }
            | Orbit::Oblique(_) => {
                blanks.extend([
                    ("piece", colours(piece)),
                    ("kind", sort(orbit).into()),
                    ("home", orbit.piece_name(target).into()),
                    ("face", target.face().to_string().into()),
                ]);
                if at_buffer { "reason-buffer" } else { "reason-follow" }
            }
        };
        self.say(message, &blanks)
    }

    /// The same for pieces that look alike, with the choice that there was.
    fn follow_colour(&self, reason: &Reason, trace: &Trace, conventions: &Conventions) -> String {
        let Reason::FollowColour { place, at_buffer, target, face, buffers_own, others, costlier } = reason
        else {
            return String::new();
        };
        let orbit = trace.orbit();
        let letters = &conventions.kind(orbit).letters;
        let message = match (at_buffer, buffers_own) {
            (true, false) => "reason-buffer-centre",
            (true, true) => "reason-buffer-centre-on",
            (false, false) => "reason-follow-centre",
            (false, true) => "reason-follow-centre-on",
        };
        let said = self.say(
            message,
            &[
                ("place", orbit.name(*place).into()),
                ("placeletter", letters.of(*place).into()),
                ("colour", self.colour_held(*face, conventions).into()),
                ("face", face.to_string().into()),
                ("target", orbit.name(*target).into()),
                ("letter", letters.of(*target).into()),
            ],
        );
        let named = |places: &[Sticker]| -> Vec<String> {
            places.iter().map(|&place| self.lettered(orbit, place, letters)).collect()
        };
        let choice = (!others.is_empty())
            .then(|| self.say("reason-choice", &[("others", self.either(&named(others)).into())]));
        let costlier = (!costlier.is_empty()).then(|| {
            let blanks = [("places", self.list(&named(costlier)).into()), ("count", costlier.len().into())];
            self.say("reason-costlier", &blanks)
        });
        [Some(said), choice, costlier].into_iter().flatten().collect::<Vec<_>>().join(" ")
    }

    fn after_end(&self, end: &End, trace: &Trace, conventions: &Conventions, begin: &str) -> String {
        let said = self.end(end, trace, conventions);
        if said.is_empty() { begin.to_owned() } else { format!("{said} {begin}") }
    }

    /// Why a cycle ended.
    pub fn end(&self, end: &End, trace: &Trace, conventions: &Conventions) -> String {
        let orbit = trace.orbit();
        let letters = &conventions.kind(orbit).letters;
        match end {
            End::BufferPiece { place, .. } => self.say(
                if orbit.looks_alike() { "end-buffer-colour" } else { "end-buffer-piece" },
                &[
                    ("place", orbit.name(*place).into()),
                    ("placeletter", letters.of(*place).into()),
                    ("colour", self.colour_held(trace.buffer().face(), conventions).into()),
                    ("kind", sort(orbit).into()),
                ],
            ),
            End::BufferAtHome { turned } => self.say(
                if *turned { "end-buffer-turned" } else { "end-buffer-solved" },
                &[("buffer", orbit.name(trace.buffer()).into()), ("kind", sort(orbit).into())],
            ),
            End::Closed => String::new(),
        }
    }

    /// What is found after the last letter: that nothing is left.
    pub fn finish(&self, trace: &Trace, conventions: &Conventions) -> String {
        let message = if trace.is_empty() && trace.buffer_is() == BufferIs::Solved {
            "finish-all-solved"
        } else if trace.is_empty() {
            "finish-only-buffer"
        } else {
            "finish"
        };
        let kinds = self.kinds(trace.orbit());
        let done = self.say(message, &[("kinds", kinds.into()), ("letters", trace.len().into())]);
        match trace.end() {
            end @ End::BufferPiece { .. } => format!("{} {done}", self.end(&end, trace, conventions)),
            End::BufferAtHome { .. } | End::Closed => done,
        }
    }

    /// What parity there is, and what it means for the execution where the solver has a method.
    pub fn parity(&self, memo: &Memo, solver: &Solver) -> String {
        let counts: Vec<String> = memo
            .parts()
            .iter()
            .map(|trace| {
                let kinds = self.kinds(trace.orbit());
                self.say("parity-letters", &[("letters", trace.len().into()), ("kinds", kinds.into())])
            })
            .collect();
        let counts = self.list(&counts);
        let inner = memo.parts().iter().any(|trace| trace.orbit().stickers_per_piece() == 1);
        if memo.letters() == 0 && (inner || solver.method().is_err()) {
            return self.word("letters-none");
        }
        let Ok(method) = solver.method() else {
            let all =
                self.say("letters-all", &[("letters", memo.letters().into()), ("counts", counts.into())]);
            return format!("{all} {}", self.parity_of_kinds(memo));
        };
        if inner {
            let all =
                self.say("letters-all", &[("letters", memo.letters().into()), ("counts", counts.into())]);
            return format!("{all} {}{}", self.parity_of_kinds(memo), self.odd_counts(memo, method));
        }
        if let Some([first, second]) = memo.exchanged() {
            let name = |sticker| Orbit::Midge.name(sticker);
            return self.say(
                "parity-exchanged",
                &[("first", name(first).into()), ("second", name(second).into()), ("counts", counts.into())],
            );
        }
        let message = match (memo.is_odd(), method.parity().is_some()) {
            (false, _) => "parity-even",
            (true, true) => "parity-odd",
            (true, false) if Orbit::of(solver.size()) == [Orbit::Corner] => "parity-odd-corners",
            (true, false) => "parity-odd-nothing",
        };
        self.say(message, &[("counts", counts.into())])
    }

    /// What odd numbers of letters mean on bigger puzzles, kind by kind.
    fn odd_counts(&self, memo: &Memo, method: &Method) -> String {
        let odd = |wanted: &dyn Fn(Orbit) -> bool| -> Vec<Orbit> {
            let parts = memo.parts().iter().filter(|trace| trace.is_odd());
            parts.map(Trace::orbit).filter(|&orbit| wanted(orbit)).collect()
        };
        let mut said = String::new();
        let tell = |message: &str, kinds: &[Orbit]| {
            let told = || format!(" {}", self.say(message, &[("kinds", self.kinds_listed(kinds).into())]));
            if kinds.is_empty() { String::new() } else { told() }
        };
        if let Some([first, second]) = memo.exchanged() {
            let name = |sticker| Orbit::Midge.name(sticker);
            let blanks = [("first", name(first).into()), ("second", name(second).into())];
            said.push(' ');
            said += &self.say("odd-corners-exchange", &blanks);
        } else if method.parity().is_some() {
            said += &tell("odd-corners", &odd(&|orbit| orbit.stickers_per_piece() > 1));
        }
        for (message, alike) in [("odd-wings", false), ("odd-centres", true)] {
            let kinds = odd(&|orbit| orbit.stickers_per_piece() == 1 && orbit.looks_alike() == alike);
            said += &tell(message, &kinds);
        }
        said
    }

    /// Which kinds have an odd number of letters: a parity where pieces are told apart, only odd where they look alike.
    pub fn parity_of_kinds(&self, memo: &Memo) -> String {
        let of = |alike: bool, odd: bool| -> Vec<Orbit> {
            let wanted = |trace: &&Trace| trace.orbit().looks_alike() == alike && trace.is_odd() == odd;
            memo.parts().iter().filter(wanted).map(Trace::orbit).collect()
        };
        let what = |alike: bool| {
            let said = |message: &str, kinds: &[Orbit]| {
                (!kinds.is_empty()).then(|| self.say(message, &[("kinds", self.kinds_listed(kinds).into())]))
            };
            let both = [said("odd-for", &of(alike, true)), said("even-for", &of(alike, false))];
            both.into_iter().flatten().collect::<Vec<_>>().join("; ")
        };
        let parity = if of(false, true).is_empty() { "parity-of-none" } else { "parity-of-some" };
        let apart = self.say(parity, &[("what", what(false).into())]);
        let centres = what(true);
        if centres.is_empty() {
            return apart;
        }
        format!("{apart} {}", self.say("parity-centres", &[("what", centres.into())]))
    }
}
