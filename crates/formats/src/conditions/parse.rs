//! Reading conditions.

use super::error::{ConditionProblem, ConditionTextError, ExpectedPart};
use blind::{Conventions, Letters, UnknownLetter, kind_name, kind_named, nearest};
use choose::{Against, Aspect, Clause, Condition, ConditionError, Feature, Occurs, Relation, Term, Wanted};
use cube::{Orbit, Size, Sticker, plain_sign};

/// How deep brackets and `not` may be nested.
const DEPTH: usize = 64;

/// Reads a condition.
pub(super) fn parse(text: &str, size: Size, conventions: &Conventions) -> Parsed<Condition> {
    let text: Vec<char> = text.chars().map(plain_sign).collect();
    let mut parser = Parser { text, at: 0, depth: 0, size, conventions };
    // What no condition can be set for is said before any slip.
    Condition::written(size, Condition::any(size).root().clone()).map_err(|error| parser.refused(error))?;
    let root = parser.any()?;
    parser.skip_blanks();
    if parser.at < parser.text.len() {
        return Err(parser.expected(ExpectedPart::Joint));
    }
    Condition::written(size, root).map_err(|error| parser.refused(error))
}

struct Parser<'a> {
    text: Vec<char>,
    at: usize,
    depth: usize,
    size: Size,
    conventions: &'a Conventions,
}

type Parsed<T> = Result<T, ConditionTextError>;

fn of_word(letter: char) -> bool {
    letter.is_alphanumeric() || letter == '-' || letter == '_'
}

impl Parser<'_> {
    fn error(&self, at: usize, problem: ConditionProblem) -> ConditionTextError {
        ConditionTextError { column: at.min(self.text.len()) + 1, problem }
    }

    /// What can be read but is no condition.
    fn refused(&self, error: ConditionError) -> ConditionTextError {
        let problem = match error {
            ConditionError::SizeNotCovered(size) => ConditionProblem::SizeNotCovered(size),
            ConditionError::KindMissing { orbit, size } => ConditionProblem::KindMissing { orbit, size },
            ConditionError::RangeBackwards { from, to } => ConditionProblem::RangeBackwards { from, to },
            ConditionError::TooDeep => ConditionProblem::TooDeep { most: DEPTH },
            ConditionError::TooManyFeatures => ConditionProblem::TooManyFeatures,
        };
        self.error(0, problem)
    }

    /// Something else is needed at the place reached.
    fn expected(&self, expected: ExpectedPart) -> ConditionTextError {
        let rest = &self.text[self.at.min(self.text.len())..];
        let found: String = match rest.first() {
            Some(&first) if of_word(first) => rest.iter().take_while(|&&letter| of_word(letter)).collect(),
            Some(&first) => first.to_string(),
            None => String::new(),
        };
        let found = (!found.is_empty()).then_some(found);
        self.error(self.at, ConditionProblem::Expected { expected, found })
    }

    fn skip_blanks(&mut self) {
        while self.text.get(self.at).is_some_and(|letter| letter.is_whitespace()) {
            self.at += 1;
        }
    }

    fn take(&mut self, sign: &str) -> bool {
        self.skip_blanks();
        let found = sign.chars().enumerate().all(|(at, letter)| self.text.get(self.at + at) == Some(&letter));
        if found {
            self.at += sign.chars().count();
        }
        found
    }

    /// The word at the place reached, in small letters; nothing is taken.
    fn word(&mut self) -> (String, usize) {
        self.skip_blanks();
        let word: String = self.text[self.at..].iter().take_while(|&&letter| of_word(letter)).collect();
        let length = word.chars().count();
        (word.to_lowercase(), length)
    }

    fn take_word(&mut self, wanted: &str) -> bool {
        let (word, length) = self.word();
        if word == wanted {
            self.at += length;
        }
        word == wanted
    }

    fn any(&mut self) -> Parsed<Clause> {
        self.joined("or", Self::all, Term::Any)
    }

    fn all(&mut self) -> Parsed<Clause> {
        self.joined("and", Self::single, Term::All)
    }

    fn joined(
        &mut self,
        word: &str,
        part: fn(&mut Self) -> Parsed<Clause>,
        term: fn(Vec<Clause>) -> Term,
    ) -> Parsed<Clause> {
        let first = part(self)?;
        let mut parts = vec![first];
        while self.take_word(word) {
            parts.push(part(self)?);
        }
        if parts.len() == 1 {
            return Ok(parts.remove(0));
        }
        let span = parts[0].span.start..parts[parts.len() - 1].span.end;
        Ok(Clause { term: term(parts), span })
    }

    fn nested<T>(&mut self, inner: fn(&mut Self) -> Parsed<T>) -> Parsed<T> {
        if self.depth == DEPTH {
            return Err(self.error(self.at, ConditionProblem::TooDeep { most: DEPTH }));
        }
        self.depth += 1;
        let result = inner(self);
        self.depth -= 1;
        result
    }

    fn single(&mut self) -> Parsed<Clause> {
        self.skip_blanks();
        let start = self.at;
        let term = if self.take_word("not") {
            Term::Not(Box::new(self.nested(Self::single)?))
        } else if self.take("(") {
            let inner = self.nested(Self::any)?;
            if !self.take(")") {
                return Err(self.expected(ExpectedPart::Close));
            }
            inner.term
        } else {
            self.test()?
        };
        // Blanks may have been passed to see whether it goes on.
        let blanks = self.text[start..self.at].iter().rev().take_while(|sign| sign.is_whitespace()).count();
        Ok(Clause { term, span: start..self.at - blanks })
    }

    fn test(&mut self) -> Parsed<Term> {
        let (word, length) = self.word();
        if length == 0 {
            return Err(self.expected(ExpectedPart::Condition));
        }
        if let Some(orbit) = self.kind()? {
            let start = self.at;
            for (name, item) in [
                ("has", Self::target as fn(&Self, Orbit, usize, &str) -> Parsed<Wanted>),
                ("pair", Self::pair as fn(&Self, Orbit, usize, &str) -> Parsed<Wanted>),
            ] {
                if self.take_word(name) {
                    return Ok(Term::Occurs(Occurs { orbit, any: self.items(orbit, item)? }));
                }
            }
            self.at = start;
            let feature = self.aspect(orbit)?;
            return self.comparison(feature);
        }
        match self.global(&word, length) {
            Some(feature) => self.comparison(feature),
            None => Err(self.unknown(&word, &["corner", "edge", "parity", "letters", "not"])),
        }
    }

    fn global(&mut self, word: &str, length: usize) -> Option<Feature> {
        let feature = match word {
            "parity" => Feature::Parity,
            "letters" => Feature::Letters,
            _ => return None,
        };
        self.at += length;
        Some(feature)
    }

    fn unknown(&self, word: &str, known: &[&str]) -> ConditionTextError {
        self.error(
            self.at,
            ConditionProblem::UnknownFeature {
                word: word.to_owned(),
                meant: nearest(word, known).map(str::to_owned),
                known: known.iter().map(ToString::to_string).collect(),
            },
        )
    }

    /// A kind and the dot after it, if a kind stands here.
    fn kind(&mut self) -> Parsed<Option<Orbit>> {
        let start = self.at;
        let (word, length) = self.word();
        let largest = Size::ALL[Size::ALL.len() - 1];
        let named = Orbit::of(largest).iter().copied().find(|&orbit| kind_name(orbit) == word);
        let Some(orbit) = kind_named(&word).or(named) else { return Ok(None) };
        if !Orbit::of(self.size).contains(&orbit) {
            return Err(self.error(start, ConditionProblem::KindMissing { orbit, size: self.size }));
        }
        self.at += length;
        if !self.take(".") {
            return Err(self.expected(ExpectedPart::Dot));
        }
        Ok(Some(orbit))
    }

    fn aspect(&mut self, orbit: Orbit) -> Parsed<Feature> {
        let (word, length) = self.word();
        if length == 0 {
            return Err(self.expected(ExpectedPart::Name));
        }
        let found = Aspect::ALL.into_iter().find(|aspect| aspect.name(orbit) == word);
        let found = found.or((word == "turned").then_some(Aspect::Turned));
        let Some(aspect) = found else {
            let known: Vec<&str> =
                Aspect::ALL.iter().map(|aspect| aspect.name(orbit)).chain(["has", "pair"]).collect();
            // What other kinds call it is the likeliest slip.
            let mut error = self.unknown(&word, &known);
            if let ConditionProblem::UnknownFeature { meant, .. } = &mut error.problem
                && matches!(word.as_str(), "flips" | "twists")
            {
                *meant = Some(Aspect::Turned.name(orbit).to_owned());
            }
            return Err(error);
        };
        self.at += length;
        if aspect == Aspect::Cycles && self.take("(") {
            let from = self.number()?;
            let to = if self.take("..") { self.number()? } else { from };
            self.forward(from, to)?;
            if !self.take(")") {
                return Err(self.expected(ExpectedPart::Close));
            }
            return Ok(Feature::Of(orbit, Aspect::CyclesOf { from, to }));
        }
        Ok(Feature::Of(orbit, aspect))
    }

    fn forward(&self, from: u8, to: u8) -> Parsed<()> {
        if from > to {
            return Err(self.error(self.at - 1, ConditionProblem::RangeBackwards { from, to }));
        }
        Ok(())
    }

    fn comparison(&mut self, feature: Feature) -> Parsed<Term> {
        self.skip_blanks();
        let start = self.at;
        // Longer signs first, for their beginnings are signs too.
        let relation = [
            ("!=", Relation::Unequal),
            ("<=", Relation::AtMost),
            (">=", Relation::AtLeast),
            ("=", Relation::Equal),
            ("<", Relation::Less),
            (">", Relation::More),
        ]
        .into_iter()
        .find(|(sign, _)| self.take(sign))
        .map(|(_, relation)| relation)
        .ok_or_else(|| self.expected(ExpectedPart::Comparison))?;
        let only_equal = !matches!(relation, Relation::Equal | Relation::Unequal);
        let refuse = |parser: &Self| Err(parser.error(start, ConditionProblem::OnlyEqual));
        if !feature.words().is_empty() {
            let value = self.word_of(feature)?;
            return if only_equal { refuse(self) } else { Ok(Term::Compare(feature, relation, value)) };
        }
        let (word, length) = self.word();
        if length == 0 {
            return Err(self.expected(ExpectedPart::Value));
        }
        if word.starts_with(|letter: char| letter.is_ascii_digit()) {
            let from = self.number()?;
            if !self.take("..") {
                return Ok(Term::Compare(feature, relation, Against::Number(from)));
            }
            let to = self.number()?;
            self.forward(from, to)?;
            return if only_equal {
                refuse(self)
            } else {
                Ok(Term::Compare(feature, relation, Against::Within(from, to)))
            };
        }
        let at = self.at;
        let other = match self.kind()? {
            Some(orbit) => self.aspect(orbit)?,
            None => match self.global(&word, length) {
                Some(other) => other,
                None => return Err(self.expected(ExpectedPart::Value)),
            },
        };
        if !other.words().is_empty() {
            self.at = at;
            return Err(self.expected(ExpectedPart::Value));
        }
        Ok(Term::Compare(feature, relation, Against::Feature(other)))
    }

    /// A value of a feature that has words for its values, or the like feature of another kind.
    fn word_of(&mut self, feature: Feature) -> Parsed<Against> {
        let (word, length) = self.word();
        if length == 0 {
            return Err(self.expected(ExpectedPart::Value));
        }
        if let Some(value) = feature.words().iter().position(|&known| known == word) {
            self.at += length;
            return Ok(Against::Number(value as u8));
        }
        let start = self.at;
        if kind_named(&word).is_some()
            && let Some(orbit) = self.kind()?
        {
            let other = self.aspect(orbit)?;
            if other.words() == feature.words() {
                return Ok(Against::Feature(other));
            }
            self.at = start;
        }
        Err(self.error(
            start,
            ConditionProblem::UnknownWord {
                meant: nearest(&word, feature.words()).map(str::to_owned),
                word,
                feature: feature.to_string(),
                known: feature.words().iter().map(ToString::to_string).collect(),
            },
        ))
    }

    fn number(&mut self) -> Parsed<u8> {
        self.skip_blanks();
        let digits: String =
            self.text[self.at..].iter().take_while(|letter| letter.is_ascii_digit()).collect();
        if digits.is_empty() {
            return Err(self.expected(ExpectedPart::Number));
        }
        let number = digits.parse::<u8>().ok().filter(|&number| number < 100);
        let number = number.ok_or_else(|| self.error(self.at, ConditionProblem::NumberTooLarge))?;
        self.at += digits.len();
        Ok(number)
    }

    /// Items in brackets with commas between.
    fn items(
        &mut self,
        orbit: Orbit,
        item: fn(&Self, Orbit, usize, &str) -> Parsed<Wanted>,
    ) -> Parsed<Vec<Wanted>> {
        if !self.take("(") {
            return Err(self.expected(ExpectedPart::Open));
        }
        let mut items = Vec::new();
        loop {
            self.skip_blanks();
            let start = self.at;
            let text: String =
                self.text[start..].iter().take_while(|&&letter| letter != ',' && letter != ')').collect();
            if text.trim().is_empty() {
                return Err(self.expected(ExpectedPart::Item));
            }
            let wanted = item(self, orbit, start, text.trim())?;
            if !items.contains(&wanted) {
                items.push(wanted);
            }
            self.at += text.chars().count();
            if self.take(")") {
                return Ok(items);
            }
            if !self.take(",") {
                return Err(self.expected(ExpectedPart::Close));
            }
        }
    }

    fn letters(&self, orbit: Orbit) -> &Letters {
        &self.conventions.kind(orbit).letters
    }

    fn sticker(&self, orbit: Orbit, at: usize, word: &str) -> Parsed<Sticker> {
        let named = || orbit.sticker(word).or_else(|| orbit.sticker(&word.to_uppercase()));
        let letter = self.letters(orbit).sticker(word).or_else(named);
        letter.ok_or_else(|| self.error(at, ConditionProblem::NoTarget { word: word.to_owned(), orbit }))
    }

    fn target(&self, orbit: Orbit, at: usize, text: &str) -> Parsed<Wanted> {
        Ok(Wanted::Target(self.sticker(orbit, at, text)?))
    }

    fn pair(&self, orbit: Orbit, at: usize, text: &str) -> Parsed<Wanted> {
        let no_pair = || self.error(at, ConditionProblem::NoPair { word: text.to_owned() });
        let words: Vec<&str> = text.split_whitespace().collect();
        if let &[first, second] = words.as_slice() {
            // The second word is looked for from behind, for it may be part of the first.
            let offset = text.chars().count() - second.chars().count();
            return Ok(Wanted::Pair(
                self.sticker(orbit, at, first)?,
                self.sticker(orbit, at + offset, second)?,
            ));
        }
        match self.letters(orbit).read(text) {
            Ok(letters) => match letters[..] {
                [first, second] => Ok(Wanted::Pair(first, second)),
                _ => Err(no_pair()),
            },
            Err(UnknownLetter::NoLetter { column, found }) if text.chars().count() == 2 => {
                let word = found.to_string();
                Err(self.error(at + column - 1, ConditionProblem::NoTarget { word, orbit }))
            }
            Err(_) => Err(no_pair()),
        }
    }
}
