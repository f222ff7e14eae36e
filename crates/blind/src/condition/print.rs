//! Conditions written out, each in one way.

use super::{Against, Clause, Condition, Feature, Occurs, Relation, Term, Wanted};
use crate::kind::kind_name;
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
                if matches!(part.term, Term::All(_) | Term::Any(_)) {
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
            Term::Not(part) if matches!(part.term, Term::All(_) | Term::Any(_)) => write!(f, "not ({part})"),
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
