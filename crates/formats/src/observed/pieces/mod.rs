//! Pieces as they are told: named one after another, with what is said of them before or behind.

mod kinds;
mod said;

use super::words::{Mark, Meaning, Token, meaning, small, tokens};
use super::{Expected, KINDS, ObservedError, Vocabulary};
use blind::kind_name;
use cube::{Face, Orbit, Sticker};
use diagnosis::{Observed, Seen};
use said::Said;

/// A piece that was named, by the sticker that was named first.
#[derive(Clone, Copy, Debug)]
struct Named {
    column: usize,
    orbit: Orbit,
    sticker: Sticker,
}

/// Reads the pieces of a text.
pub(super) fn read(text: &str, reading: &Vocabulary<'_>) -> Result<Observed, ObservedError> {
    let tokens = tokens(text);
    let mut reader = Reader {
        tokens: &tokens,
        at: 0,
        reading,
        heading: None,
        list: Vec::new(),
        before: None,
        seen: Vec::new(),
        named: Vec::new(),
        only: Vec::new(),
        unlooked: Vec::new(),
        right: Vec::new(),
        rest_unlooked: false,
        nothing_else: false,
    };
    reader.read()?;
    reader.told()
}

struct Reader<'a> {
    tokens: &'a [Token],
    at: usize,
    reading: &'a Vocabulary<'a>,
    /// The kind that letters are of.
    heading: Option<Orbit>,
    /// Pieces of which nothing was said yet.
    list: Vec<Named>,
    /// What was said before the pieces that it is said of.
    before: Option<Said>,
    seen: Vec<Seen>,
    named: Vec<(Orbit, cube::Piece)>,
    only: Vec<(usize, Orbit)>,
    unlooked: Vec<(usize, Orbit)>,
    /// Kinds of which no piece is unsolved.
    right: Vec<(usize, Orbit)>,
    rest_unlooked: bool,
    nothing_else: bool,
}

impl Reader<'_> {
    fn mark(&self, at: usize) -> Option<&Mark> {
        self.tokens.get(at).map(|token| &token.mark)
    }

    /// The word at a place, if it is no letter of the kind that is spoken of.
    fn meaning(&self, at: usize) -> Option<Meaning> {
        match self.mark(at)? {
            Mark::Word(word) if self.letter(word).is_none() || self.is_word(at) => meaning(word),
            _ => None,
        }
    }

    /// Whether a number stands before a kind, or "a" before "cycle" as in "in a cycle" and "a cycle of": no letter, also where it could
    /// be one. Of "A cycled" the letter is meant.
    fn is_word(&self, at: usize) -> bool {
        let raw = |at: usize| match self.mark(at) {
            Some(Mark::Word(word)) => meaning(word),
            _ => None,
        };
        if (raw(at), raw(at + 1)) == (Some(Meaning::Article), Some(Meaning::Cycle)) {
            let before = at.checked_sub(1).and_then(raw);
            return before == Some(Meaning::Filler) || raw(at + 2) == Some(Meaning::Filler);
        }
        let next = if raw(at + 1) == Some(Meaning::Unsolved) { at + 2 } else { at + 1 };
        matches!((raw(at), raw(next)), (Some(Meaning::Number(_)), Some(Meaning::Kind(_))))
            && self.mark(next + 1) != Some(&Mark::Colon)
    }

    fn written(&self, range: std::ops::Range<usize>) -> String {
        let words = self.tokens[range].iter().filter_map(|token| match &token.mark {
            Mark::Word(word) => Some(word.as_str()),
            _ => None,
        });
        words.collect::<Vec<_>>().join(" ")
    }

    fn column(&self, at: usize) -> usize {
        self.tokens.get(at).or(self.tokens.last()).map_or(1, |token| token.column)
    }

    /// The next place that is no filler.
    fn skip(&self, mut at: usize) -> usize {
        while self.meaning(at) == Some(Meaning::Filler) {
            at += 1;
        }
        at
    }

    fn letter(&self, word: &str) -> Option<Named> {
        let orbit = self.heading?;
        let sticker = self.reading.conventions.kind(orbit).letters.sticker(word)?;
        Some(Named { column: 0, orbit, sticker })
    }

    fn read(&mut self) -> Result<(), ObservedError> {
        while let Some(token) = self.tokens.get(self.at) {
            let column = token.column;
            match &token.mark {
                Mark::Stop => {
                    self.at += 1;
                    self.end()?;
                }
                Mark::Comma | Mark::Slash => self.at += 1,
                Mark::Open => self.bracket()?,
                Mark::Query if !self.list.is_empty() => {
                    self.at += 1;
                    self.end()?;
                }
                Mark::Query if self.before.is_none() && self.cycle_unlooked() => self.at += 1,
                Mark::Colon if self.before.is_some() && self.list.is_empty() => self.at += 1,
                Mark::Word(word) => {
                    let word = word.clone();
                    self.word(column, &word)?;
                }
                Mark::Arrow | Mark::Both | Mark::Colon | Mark::Query | Mark::Close | Mark::Other(_) => {
                    let found = match &token.mark {
                        Mark::Arrow => ">".to_owned(),
                        Mark::Both => "<>".to_owned(),
                        Mark::Colon => ":".to_owned(),
                        Mark::Query => "?".to_owned(),
                        Mark::Other(sign) => sign.to_string(),
                        _ => ")".to_owned(),
                    };
                    return Err(ObservedError::NoSticker { column, found });
                }
            }
        }
        self.end()
    }

    fn word(&mut self, column: usize, word: &str) -> Result<(), ObservedError> {
        let at = self.at;
        let names = self.pieces(at)?;
        if let Some((names, next)) = names {
            self.at = next;
            return self.chain(names);
        }
        match self.meaning(at) {
            Some(Meaning::Filler | Meaning::And) => self.at += 1,
            Some(Meaning::Article) if self.is_article(at) => self.at += 1,
            Some(Meaning::Number(_)) => self.count()?,
            Some(Meaning::Kind(orbit)) => self.kind(orbit)?,
            Some(Meaning::Only) => self.only(),
            Some(Meaning::Rest | Meaning::Nothing) => self.rest()?,
            Some(
                Meaning::Swapped
                | Meaning::Cycle
                | Meaning::Flipped
                | Meaning::Twisted
                | Meaning::Turned
                | Meaning::Clockwise
                | Meaning::Against
                | Meaning::Counter
                | Meaning::Unsolved
                | Meaning::Not,
            ) => self.said()?,
            Some(Meaning::Article | Meaning::To | Meaning::Solved | Meaning::Looked | Meaning::Unknown)
            | None => {
                return Err(self.unknown(column, word));
            }
        }
        Ok(())
    }

    /// Whether "a" is no letter: something follows of which there is one.
    fn is_article(&self, at: usize) -> bool {
        let next = self.skip(at + 1);
        matches!(self.meaning(next), Some(Meaning::Kind(_) | Meaning::Cycle | Meaning::Unsolved))
            || matches!(self.pieces(next), Ok(Some(_)))
    }

    /// A word that says nothing where it stands.
    fn unknown(&self, column: usize, word: &str) -> ObservedError {
        let found = word.to_owned();
        // Said of the piece right before it, it is no piece.
        let follows = self.at.checked_sub(1).and_then(|at| self.mark(at));
        let said =
            follows.is_some_and(|mark| !matches!(mark, Mark::Comma | Mark::Stop | Mark::Colon | Mark::Arrow));
        if let Some(last) = self.list.last().filter(|_| said) {
            let piece = last.orbit.piece_name(last.sticker).to_owned();
            return ObservedError::NoWord { column, found, piece, expected: after(last.orbit) };
        }
        if let (Some(Seen::Cycle { orbit, stickers, .. }), true, true) =
            (self.seen.last(), said, self.list.is_empty() && self.before.is_none())
            && let Some(&first) = stickers.first()
        {
            let piece = orbit.piece_name(first).to_owned();
            return ObservedError::NoWord { column, found, piece, expected: Expected::Query };
        }
        match self.heading {
            Some(orbit) => ObservedError::NoLetter { column, found, orbit },
            None if word.chars().nth(1).is_none() => ObservedError::KindNeeded { column, found },
            None => ObservedError::NoSticker { column, found },
        }
    }

    /// The pieces that a word, or the colours that begin with it, name, with what stands after them.
    fn pieces(&self, at: usize) -> Result<Option<(Vec<Named>, usize)>, ObservedError> {
        let Some(Mark::Word(word)) = self.mark(at) else { return Ok(None) };
        let column = self.column(at);
        if let Some(named) = sticker(word) {
            return Ok(Some((vec![Named { column, ..named }], at + 1)));
        }
        if let Some(named) = self.letter(word).filter(|_| !self.is_word(at)) {
            return Ok(Some((vec![Named { column, ..named }], at + 1)));
        }
        if meaning(word).is_some() {
            return Ok(None);
        }
        if let Some((faces, next)) = self.colours(at) {
            let found = || {
                self.tokens[at..next].iter().filter_map(|token| match &token.mark {
                    Mark::Word(word) => Some(word.clone()),
                    _ => None,
                })
            };
            let named = coloured(&faces).ok_or_else(|| ObservedError::NoPiece {
                column,
                found: found().collect::<Vec<_>>().join("-"),
            })?;
            return Ok(Some((vec![Named { column, ..named }], next)));
        }
        // Stickers with hyphens between them.
        let mut names = Vec::new();
        let mut begins = column;
        for part in word.split('-') {
            let Some(named) = sticker(part).or_else(|| self.letter(part)) else { return Ok(None) };
            names.push(Named { column: begins, ..named });
            begins += part.chars().count() + 1;
        }
        Ok(Some((names, at + 1)))
    }

    /// The colours from a word on, as faces of the solver's hold. A hyphen or a slash joins them, or blanks where none of these does.
    fn colours(&self, at: usize) -> Option<(Vec<Face>, usize)> {
        let mut faces = Vec::new();
        let (mut next, mut joined) = (at, false);
        while let Some(Mark::Word(word)) = self.mark(next) {
            if sticker(word).is_some() || self.letter(word).is_some() || meaning(word).is_some() {
                break;
            }
            let colours = word.split('-').map(|part| self.colour(part)).collect::<Option<Vec<_>>>();
            let Some(colours) = colours else { break };
            joined |= colours.len() > 1;
            let slash = self.mark(next + 1) == Some(&Mark::Slash) && self.is_colour(next + 2);
            let by_blank = next > at && self.mark(next - 1) != Some(&Mark::Slash);
            if by_blank && (joined || slash) {
                break;
            }
            faces.extend(colours);
            joined |= slash;
            next += if slash { 2 } else { 1 };
        }
        (!faces.is_empty()).then_some((faces, next))
    }

    fn is_colour(&self, at: usize) -> bool {
        matches!(self.mark(at), Some(Mark::Word(word)) if word.split('-').all(|part| self.colour(part).is_some()))
    }

    /// The face of the solver's hold on which a colour is; German words bend.
    fn colour(&self, word: &str) -> Option<Face> {
        let word = small(word);
        let known = |word: &str| self.reading.colours.by_word(&word.chars().collect::<Vec<_>>());
        let bent = || ["e", "er", "es", "en", "em"].iter().find_map(|end| known(word.strip_suffix(end)?));
        let face = known(&word).or_else(bent)?;
        Some(self.reading.conventions.holding.image(face))
    }

    /// A piece or more, and where it goes from there.
    fn chain(&mut self, names: Vec<Named>) -> Result<(), ObservedError> {
        let arrow = |reader: &Self, at: usize| {
            let next = reader.skip(at);
            let is_arrow = matches!(reader.mark(next), Some(Mark::Arrow | Mark::Both))
                || reader.meaning(next) == Some(Meaning::To);
            is_arrow.then_some(next)
        };
        let [first] = names.as_slice() else {
            self.list.extend(names);
            return Ok(());
        };
        let Some(mut next) = arrow(self, self.at) else {
            self.list.push(*first);
            return Ok(());
        };
        self.end()?;
        let mut all = vec![*first];
        let mut both = false;
        loop {
            both |= self.mark(next) == Some(&Mark::Both);
            let place = self.skip(next + 1);
            let column = self.column(place.min(self.tokens.len().saturating_sub(1)));
            let found = match self.mark(place) {
                Some(Mark::Word(word)) => word.clone(),
                _ => String::new(),
            };
            let Some((names, after)) = self.pieces(place)? else {
                if found.is_empty() {
                    return Err(ObservedError::NoCycle { column: self.column(next), found: ">".to_owned() });
                }
                self.at = place;
                return Err(self.unknown(column, &found));
            };
            let [one] = names.as_slice() else {
                return Err(ObservedError::NoCycle { column, found });
            };
            self.at = after;
            let more = arrow(self, after);
            Self::goes_on(&all, *one, more.is_some(), found)?;
            all.push(*one);
            match more {
                Some(place) => next = place,
                None => break,
            }
        }
        if both && all.len() != 2 {
            let count = all.len();
            return Err(ObservedError::NotTwo {
                column: first.column,
                found: "<>".to_owned(),
                count,
                cycle: false,
            });
        }
        let unlooked = self.mark(self.at) == Some(&Mark::Query);
        self.at += usize::from(unlooked);
        self.cycle(&all, !unlooked && !both)
    }

    /// Refuses what a trace cannot go on with.
    fn goes_on(all: &[Named], one: Named, more: bool, found: String) -> Result<(), ObservedError> {
        let Some(first) = all.first() else { return Ok(()) };
        let clashes =
            |other: &Named| other.orbit != one.orbit || one.orbit.same_piece(other.sticker, one.sticker);
        // The last may be of the first piece again.
        let clash = if more { all.iter().any(clashes) } else { all.iter().skip(1).any(clashes) };
        if clash || first.orbit != one.orbit {
            return Err(ObservedError::NoCycle { column: one.column, found });
        }
        if all.len() == 1 && first.sticker == one.sticker {
            return Err(ObservedError::Same { column: first.column, sticker: one.orbit.name(one.sticker) });
        }
        Ok(())
    }

    fn cycle(&mut self, all: &[Named], turning: bool) -> Result<(), ObservedError> {
        let Some(&Named { orbit, .. }) = all.first() else { return Ok(()) };
        self.name_all(all)?;
        let stickers = all.iter().map(|named| named.sticker).collect();
        self.seen.push(Seen::Cycle { orbit, stickers, turning });
        Ok(())
    }

    /// A cycle in brackets, as cycles are written.
    fn bracket(&mut self) -> Result<(), ObservedError> {
        self.end()?;
        let opened = self.at;
        self.at += 1;
        let mut all: Vec<Named> = Vec::new();
        loop {
            match self.mark(self.at) {
                Some(Mark::Comma | Mark::Slash | Mark::Arrow) => self.at += 1,
                Some(Mark::Close) => break,
                _ => {
                    let place = self.at;
                    let column = self.column(place);
                    let Some((names, after)) = self.pieces(place)? else {
                        let Some(Mark::Word(word)) = self.mark(place).cloned() else {
                            return Err(ObservedError::NoSticker {
                                column: self.column(opened),
                                found: "(".to_owned(),
                            });
                        };
                        return Err(self.unknown(column, &word));
                    };
                    self.at = after;
                    for one in names {
                        let more = self.mark(after) != Some(&Mark::Close);
                        Self::goes_on(&all, one, more, one.orbit.name(one.sticker).to_owned())?;
                        all.push(one);
                    }
                }
            }
        }
        self.at += 1;
        let unlooked = self.mark(self.at) == Some(&Mark::Query);
        self.at += usize::from(unlooked);
        if let [_] = all.as_slice() {
            self.list.extend(all);
            return Ok(());
        }
        self.cycle(&all, !unlooked)
    }

    /// A cycle of which it is said behind it that its turning was not looked at.
    fn cycle_unlooked(&mut self) -> bool {
        match self.seen.last_mut() {
            Some(Seen::Cycle { turning, .. }) => {
                *turning = false;
                true
            }
            _ => false,
        }
    }

    /// Takes pieces as named, each of them once.
    fn name_all(&mut self, all: &[Named]) -> Result<(), ObservedError> {
        for (number, one) in all.iter().enumerate() {
            let piece = (one.orbit, one.orbit.piece(one.sticker));
            let closes = number > 0
                && number + 1 == all.len()
                && all.first().is_some_and(|first| one.orbit.same_piece(first.sticker, one.sticker));
            let counted = |seen: &Seen| matches!(seen, Seen::Count { orbit, .. } if *orbit == one.orbit);
            if (self.named.contains(&piece) && !closes) || self.seen.iter().any(counted) {
                return Err(ObservedError::Twice {
                    column: one.column,
                    piece: one.orbit.piece_name(one.sticker),
                });
            }
            self.named.push(piece);
        }
        Ok(())
    }

    /// The end of an item: what was said before its pieces is said of them, of the others nothing.
    fn end(&mut self) -> Result<(), ObservedError> {
        match self.before.take() {
            Some(said) if self.list.is_empty() => {
                Err(ObservedError::NoSticker { column: said.column, found: said.words })
            }
            Some(said) => self.apply(&said),
            None => {
                let list: Vec<Named> = self.list.drain(..).collect();
                self.unsolved(&list)
            }
        }
    }

    fn told(mut self) -> Result<Observed, ObservedError> {
        let kinds = Orbit::of(self.reading.size).iter().copied().filter(|orbit| KINDS.contains(orbit));
        for &(column, orbit) in self.unlooked.iter().chain(&self.right) {
            if self.seen.iter().any(|seen| seen.orbit() == Some(orbit)) {
                return Err(ObservedError::Twice { column, piece: kind_name(orbit) });
            }
        }
        if let Some(&(column, orbit)) = self.only.first() {
            let others = self.seen.iter().filter_map(|seen| Some((seen.orbit()?, seen.stickers().first())));
            let is_other = |kind: &Orbit| self.only.iter().all(|(_, only)| only != kind);
            if let Some((other, first)) = others.into_iter().find(|(kind, _)| is_other(kind)) {
                let found = first.map_or(kind_name(other), |&first| other.name(first)).to_owned();
                return Err(ObservedError::OtherKind { column, found, orbit });
            }
        }
        self.seen.retain(|seen| !matches!(seen, Seen::Count { count: 0, .. }));
        if self.seen.is_empty() {
            return Err(ObservedError::Nothing);
        }
        for orbit in kinds {
            let named = self.seen.iter().any(|seen| seen.orbit() == Some(orbit));
            let left_out = !self.only.is_empty() && self.only.iter().all(|&(_, only)| only != orbit);
            let unlooked = self.unlooked.iter().any(|&(_, other)| other == orbit);
            if !named && (left_out || unlooked || self.rest_unlooked) {
                self.seen.push(Seen::Unlooked { orbit });
            }
        }
        if self.nothing_else {
            self.seen.push(Seen::NothingElse);
        }
        Ok(Observed::Pieces(self.seen))
    }
}

const fn after(orbit: Orbit) -> Expected {
    match orbit {
        Orbit::Corner => Expected::Twist,
        Orbit::Midge
        | Orbit::Wing { .. }
        | Orbit::XCentre { .. }
        | Orbit::TCentre { .. }
        | Orbit::Oblique(_) => Expected::Flip,
    }
}

fn sticker(name: &str) -> Option<Named> {
    let upper = name.to_uppercase();
    KINDS.into_iter().find_map(|orbit| Some(Named { column: 0, orbit, sticker: orbit.sticker(&upper)? }))
}

/// The sticker on the first of these faces of the piece that is on all of them.
fn coloured(faces: &[Face]) -> Option<Named> {
    let name: String = faces.iter().map(|face| face.letter()).collect();
    (faces.len() <= 3).then(|| sticker(&name)).flatten()
}
