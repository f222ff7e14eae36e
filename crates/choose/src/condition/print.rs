//! Conditions written out, each in one way.

use super::{Against, Clause, Condition, Feature, Occurs, Relation, Term, Wanted};
use blind::kind_name;
use std::fmt;

impl fmt::Display for Condition {
    /// With the names of stickers in place of letters, so that it reads the same under every letter scheme.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.root.fmt(f)
    }
}

impl fmt::Display for Clause {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let joined = |f: &mut fmt::Formatter<'_>, parts: &[Self], word: &str| {
            for (at, part) in parts.iter().enumerate() {
                if at > 0 {
                    write!(f, " {word} ")?;
                }
                if part.is_bracketed() {
                    write!(f, "({part})")?;
                } else {
                    part.fmt(f)?;
                }
            }
            Ok(())
        };
        match &self.term {
            Term::All(parts) => joined(f, parts, "and"),
            Term::Any(parts) => joined(f, parts, "or"),
            Term::Not(part) if part.is_bracketed() => write!(f, "not ({part})"),
            Term::Not(part) => write!(f, "not {part}"),
            Term::Occurs(test) => test.fmt(f),
            Term::Compare(feature, relation, against) => {
                write!(f, "{feature} {relation} ")?;
                match against {
                    Against::Number(number) => write_value(f, *feature, *number),
                    Against::Within(from, to) => write!(f, "{from}..{to}"),
                    Against::Feature(other) => other.fmt(f),
                }
            }
        }
    }
}

impl Clause {
    /// Whether it stands in brackets inside another.
    const fn is_bracketed(&self) -> bool {
        matches!(self.term, Term::All(_) | Term::Any(_))
    }

    /// Gives each part the characters that it takes when all is written out, from a character on; brackets around a part
    /// are of it.
    pub(super) fn set_spans(&mut self, from: usize) {
        let inner = |part: &mut Self, at: usize| {
            if part.is_bracketed() {
                part.set_spans(at + 1);
                part.span = at..part.span.end + 1;
            } else {
                part.set_spans(at);
            }
            part.span.end
        };
        let joined = |parts: &mut [Self], word: &str| {
            let mut at = from;
            for (number, part) in parts.iter_mut().enumerate() {
                at = inner(part, if number > 0 { at + word.len() } else { at });
            }
            at
        };
        let end = match &mut self.term {
            Term::All(parts) => joined(parts, " and "),
            Term::Any(parts) => joined(parts, " or "),
            Term::Not(part) => inner(part, from + "not ".len()),
            Term::Occurs(_) | Term::Compare(..) => from + self.to_string().chars().count(),
        };
        self.span = from..end;
    }
}

fn write_value(f: &mut fmt::Formatter<'_>, feature: Feature, number: u8) -> fmt::Result {
    match feature.words().get(number as usize) {
        Some(word) => f.write_str(word),
        None => write!(f, "{number}"),
    }
}

impl fmt::Display for Relation {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Equal => "=",
            Self::Unequal => "!=",
            Self::Less => "<",
            Self::AtMost => "<=",
            Self::More => ">",
            Self::AtLeast => ">=",
        })
    }
}

impl fmt::Display for Occurs {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let pairs = matches!(self.any.first(), Some(Wanted::Pair(..)));
        write!(f, "{}.{}(", kind_name(self.orbit), if pairs { "pair" } else { "has" })?;
        for (at, wanted) in self.any.iter().enumerate() {
            if at > 0 {
                f.write_str(", ")?;
            }
            match *wanted {
                Wanted::Target(target) => f.write_str(self.orbit.name(target))?,
                Wanted::Pair(first, second) => {
                    write!(f, "{} {}", self.orbit.name(first), self.orbit.name(second))?;
                }
            }
        }
        f.write_str(")")
    }
}
