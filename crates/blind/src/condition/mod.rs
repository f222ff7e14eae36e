//! Conditions on a state: a small language over the figures of a trace.
//!
//! ```text
//! condition  = either { "or" either }
//! either     = single { "and" single }
//! single     = "not" single | "(" condition ")" | occurs | comparison
//! comparison = feature ( "=" | "!=" | "<" | "<=" | ">" | ">=" ) ( feature | number | word | number ".." number )
//! occurs     = kind "." ( "has" | "pair" ) "(" item { "," item } ")"
//! feature    = "parity" | "letters" | kind "." name
//! ```
//!
//! A kind is `corner` or `edge`. The names are those of [`Aspect`]: `targets`, `cycles` (of any length, or `cycles(3)`,
//! `cycles(3..5)`), `breaks`, `closes-elsewhere`, `turned` (`twists` of corners, `flips` of edges), `solved`, `buffer`
//! (`solved`, `turned` or `away`), `buffer-cycle`, `longest`, `shortest`. A range needs `=` or `!=`.
//!
//! `corner.has(B)` asks that a letter occur in the memo; a sticker's name (`corner.has(URB)`) does as well. `edge.pair(AB)`
//! asks that two letters be memorised as a pair: the first and second letter of the kind's memo, the third and fourth, and
//! so on. Of several items in the brackets at least one has to occur.

mod error;
mod feature;
mod parse;
mod print;

pub use error::{ConditionError, ConditionProblem, ExpectedPart};
pub(crate) use feature::Part;
pub use feature::{Aspect, Feature};

use crate::conventions::Conventions;
use crate::memo::Memo;
use crate::trace::Trace;
use cube::{Orbit, Size, Sticker};
use std::ops::Range;

/// How two values are compared.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Relation {
    /// `=`
    Equal,
    /// `!=`
    Unequal,
    /// `<`
    Less,
    /// `<=`
    AtMost,
    /// `>`
    More,
    /// `>=`
    AtLeast,
}

/// What a feature is compared with.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Against {
    /// A number, or the number of a word.
    Number(u8),
    /// Anything from one number to another, both included.
    Within(u8, u8),
    /// Another feature.
    Feature(Feature),
}

/// What has to occur in a memo.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Wanted {
    /// A target.
    Target(Sticker),
    /// Two targets, memorised as a pair.
    Pair(Sticker, Sticker),
}

/// That at least one of several things occurs in the memo of a kind.
#[derive(Clone, PartialEq, Eq, Hash, Debug)]
pub struct Occurs {
    /// The kind.
    pub orbit: Orbit,
    /// What may occur; all targets or all pairs.
    pub any: Vec<Wanted>,
}

/// A condition as a tree.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Term {
    /// All of them hold.
    All(Vec<Clause>),
    /// At least one of them holds.
    Any(Vec<Clause>),
    /// It does not hold.
    Not(Box<Clause>),
    /// A comparison.
    Compare(Feature, Relation, Against),
    /// Something occurs in a memo.
    Occurs(Occurs),
}

/// A part of a condition and where it stands.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Clause {
    /// What it says.
    pub term: Term,
    /// Which characters of the text it takes, from 0.
    pub span: Range<usize>,
}

/// A condition on the states of one puzzle, read with the letters of a solver.
///
/// ```
/// use blind::{Condition, Conventions};
/// use cube::Size;
/// let text = "corner.breaks = 1 and corner.twists = 0 and edge.flips = 0";
/// let condition = Condition::read(text, Size::THREE, &Conventions::default()).unwrap();
/// assert_eq!(condition.to_string(), text);
/// let error = Condition::read("corner.braeks = 1", Size::THREE, &Conventions::default()).unwrap_err();
/// assert_eq!(error.column, 8);
/// ```
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Condition {
    size: Size,
    root: Clause,
}

impl Condition {
    /// Reads a condition.
    ///
    /// # Errors
    /// [`ConditionError`] with the column of the first mistake.
    pub fn read(text: &str, size: Size, conventions: &Conventions) -> Result<Self, ConditionError> {
        let root = parse::parse(text, size, conventions)?;
        Ok(Self { size, root })
    }

    /// The condition that every state meets.
    pub const fn any(size: Size) -> Self {
        Self { size, root: Clause { term: Term::All(Vec::new()), span: 0..0 } }
    }

    /// The puzzle.
    pub const fn size(&self) -> Size {
        self.size
    }

    /// The tree.
    pub const fn root(&self) -> &Clause {
        &self.root
    }

    /// The parts that must all hold: those joined by the outermost `and`, or the whole.
    pub fn parts(&self) -> &[Clause] {
        match &self.root.term {
            Term::All(parts) => parts,
            _ => std::slice::from_ref(&self.root),
        }
    }

    /// Only some of [`Condition::parts`].
    pub(crate) fn of_parts(&self, parts: Vec<Clause>) -> Self {
        Self { size: self.size, root: Clause { term: Term::All(parts), span: self.root.span.clone() } }
    }

    /// Whether a memo meets it.
    pub fn holds(&self, memo: &Memo) -> bool {
        let number = |feature| match feature {
            Feature::Parity => u8::from(memo.is_odd()),
            Feature::Letters => memo.letters() as u8,
            Feature::Of(orbit, aspect) => memo.part(orbit).map_or(0, |trace| aspect.of(trace)),
        };
        let occurs = |test: &Occurs| Some(memo.part(test.orbit).is_some_and(|trace| test.in_memo(trace)));
        self.root.truth(&number, &occurs) == Some(true)
    }

    /// Every comparison's features and every occurrence asked for.
    pub(crate) fn visit(&self, see: &mut dyn FnMut(&Term)) {
        self.root.visit(see);
    }
}

impl Clause {
    fn visit(&self, see: &mut dyn FnMut(&Term)) {
        see(&self.term);
        match &self.term {
            Term::All(parts) | Term::Any(parts) => parts.iter().for_each(|part| part.visit(see)),
            Term::Not(part) => part.visit(see),
            Term::Compare(..) | Term::Occurs(_) => {}
        }
    }

    /// Whether it holds, `None` where that depends on occurrences that are not known.
    pub(crate) fn truth(
        &self,
        number: &impl Fn(Feature) -> u8,
        occurs: &impl Fn(&Occurs) -> Option<bool>,
    ) -> Option<bool> {
        // A part that decides the whole decides it even where others are not known.
        let decided = |parts: &[Self], by: bool| {
            let mut known = true;
            for part in parts {
                match part.truth(number, occurs) {
                    Some(value) if value == by => return Some(by),
                    Some(_) => {}
                    None => known = false,
                }
            }
            known.then_some(!by)
        };
        match &self.term {
            Term::All(parts) => decided(parts, false),
            Term::Any(parts) => decided(parts, true),
            Term::Not(part) => part.truth(number, occurs).map(|value| !value),
            Term::Occurs(test) => occurs(test),
            Term::Compare(feature, relation, against) => {
                let left = number(*feature);
                Some(match *against {
                    Against::Number(right) => relation.holds(left, right),
                    Against::Feature(right) => relation.holds(left, number(right)),
                    Against::Within(from, to) => {
                        (from <= left && left <= to) == (*relation == Relation::Equal)
                    }
                })
            }
        }
    }
}

impl Relation {
    const fn holds(self, left: u8, right: u8) -> bool {
        match self {
            Self::Equal => left == right,
            Self::Unequal => left != right,
            Self::Less => left < right,
            Self::AtMost => left <= right,
            Self::More => left > right,
            Self::AtLeast => left >= right,
        }
    }
}

impl Occurs {
    /// Whether at least one of the things occurs in a trace of the kind.
    pub fn in_memo(&self, trace: &Trace) -> bool {
        let steps = trace.steps();
        self.any.iter().any(|wanted| match *wanted {
            Wanted::Target(target) => steps.iter().any(|step| step.target == target),
            Wanted::Pair(first, second) => {
                steps.chunks_exact(2).any(|pair| pair[0].target == first && pair[1].target == second)
            }
        })
    }
}
