//! The trace in the coach's words: why each letter is what it is.

use crate::Voice;
use blind::{BufferIs, Chosen, Conventions, End, Memo, Reason, Trace};
use cube::{Orbit, Sticker};

impl Voice {
    /// Why a letter of a trace is there.
    pub fn reason(&self, reason: &Reason, trace: &Trace, conventions: &Conventions) -> String {
        let orbit = trace.orbit();
        let letters = &conventions.kind(orbit).letters;
        let name = |sticker: Sticker| orbit.name(sticker).to_owned();
        let letter = |sticker: Sticker| letters.of(sticker).to_string();
        let kind = match orbit {
            Orbit::Corner => "corner",
            _ => "edge",
        };
        match reason {
            Reason::Follow { place, at_buffer, target, face, piece } => self.say(
                if *at_buffer { "reason-buffer" } else { "reason-follow" },
                &[
                    ("place", name(*place).into()),
                    ("placeletter", letter(*place).into()),
                    ("colour", self.colour_held(*face, conventions).into()),
                    ("piece", self.colours(piece, conventions).into()),
                    ("kind", kind.into()),
                    ("home", orbit.piece_name(*target).into()),
                    ("face", face.to_string().into()),
                    ("target", name(*target).into()),
                    ("letter", letter(*target).into()),
                ],
            ),
            Reason::Break { target, unsolved, chosen, after } => {
                let how = match chosen {
                    Chosen::First if unsolved.len() == 1 => "break-only",
                    Chosen::First => "break-first",
                    Chosen::Fewest => "break-fewest",
                    Chosen::Least => "break-least",
                };
                let begin = self.say(
                    how,
                    &[
                        ("unsolved", self.pieces(orbit, unsolved).into()),
                        ("target", name(*target).into()),
                        ("letter", letter(*target).into()),
                        ("kind", kind.into()),
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
                        ("kind", kind.into()),
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
                    ("kind", kind.into()),
                ],
            ),
            Reason::Close { place, target, began, .. } => self.say(
                if target == began { "reason-close" } else { "reason-close-turned" },
                &[
                    ("place", name(*place).into()),
                    ("placeletter", letter(*place).into()),
                    ("colour", self.colour_held(target.face(), conventions).into()),
                    ("kind", kind.into()),
                    ("began", name(*began).into()),
                    ("beganletter", letter(*began).into()),
                    ("target", name(*target).into()),
                    ("letter", letter(*target).into()),
                ],
            ),
        }
    }

    fn after_end(&self, end: &End, trace: &Trace, conventions: &Conventions, begin: &str) -> String {
        let said = self.end(end, trace, conventions);
        if said.is_empty() { begin.to_owned() } else { format!("{said} {begin}") }
    }

    /// Why a cycle ended.
    pub fn end(&self, end: &End, trace: &Trace, conventions: &Conventions) -> String {
        let orbit = trace.orbit();
        let letters = &conventions.kind(orbit).letters;
        let kind = match orbit {
            Orbit::Corner => "corner",
            _ => "edge",
        };
        match end {
            End::BufferPiece { place, .. } => self.say(
                "end-buffer-piece",
                &[
                    ("place", orbit.name(*place).into()),
                    ("placeletter", letters.of(*place).to_string().into()),
                    ("kind", kind.into()),
                ],
            ),
            End::BufferAtHome { turned } => self.say(
                if *turned { "end-buffer-turned" } else { "end-buffer-solved" },
                &[("buffer", orbit.name(trace.buffer()).into()), ("kind", kind.into())],
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
            _ => done,
        }
    }

    /// What parity means for the execution. `algorithm`: whether the method has something to do about it.
    pub fn parity(&self, memo: &Memo, algorithm: bool) -> String {
        let message = match (memo.is_odd(), algorithm) {
            (false, _) => "parity-even",
            (true, true) => "parity-odd",
            (true, false) => "parity-odd-nothing",
        };
        let counts: Vec<String> = memo
            .parts()
            .iter()
            .map(|trace| {
                let kinds = self.kinds(trace.orbit());
                self.say("parity-letters", &[("letters", trace.len().into()), ("kinds", kinds.into())])
            })
            .collect();
        let counts = self.list(&counts);
        if let Some([first, second]) = memo.exchanged() {
            let name = |sticker| Orbit::Midge.name(sticker);
            return self.say(
                "parity-exchanged",
                &[("first", name(first).into()), ("second", name(second).into()), ("counts", counts.into())],
            );
        }
        self.say(message, &[("counts", counts.into())])
    }
}
