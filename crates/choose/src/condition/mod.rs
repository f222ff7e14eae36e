//! Conditions on a state: figures of its trace that are compared, and letters that have to occur in its memo.
//!
//! How they are typed is the business of the crate `formats`; each is written out in one way by its [`Display`](std::fmt::Display).

mod feature;
mod print;

pub(crate) use feature::Part;
pub use feature::{Aspect, Feature};

use blind::{Memo, Trace, kind_name};
use cube::{Orbit, Size, Sticker};
use search::scramble::random_turns;
use std::ops::Range;
use thiserror::Error;

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

/// How deep a condition may be nested.
pub const MOST_DEPTH: usize = 200;
/// How many different features, and how many different occurrences, of one kind are counted together.
pub const MOST_FEATURES: usize = 24;

/// Why there is no such condition.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Error)]
pub enum ConditionError {
    /// No sequence is found to a given state of the puzzle.
    #[error("conditions can be set where states are drawn, not for a {0}")]
    SizeNotCovered(Size),
    /// A kind that the puzzle does not have.
    #[error("a {size} has no {}", kind_name(*.orbit))]
    KindMissing {
        /// The kind.
        orbit: Orbit,
        /// The puzzle.
        size: Size,
    },
    /// A range whose end comes before its beginning.
    #[error("the range goes from {from} down to {to}")]
    RangeBackwards {
        /// Its beginning.
        from: u8,
        /// Its end.
        to: u8,
    },
    /// Nested too deeply.
    #[error("conditions are nested more than {MOST_DEPTH} deep")]
    TooDeep,
    /// More different features or occurrences than can be counted together.
    #[error("more than {MOST_FEATURES} different features of one kind")]
    TooManyFeatures,
}

/// A condition on the states of one puzzle.
///
/// ```
/// use choose::{Aspect, Condition, Feature, Term};
/// use cube::{Orbit, Size};
/// let breaks = Feature::Of(Orbit::Corner, Aspect::Breaks).is(1);
/// let letters = Feature::Letters.at_least(9);
/// let condition = Condition::new(Size::TWO, Term::all([breaks, letters])).unwrap();
/// assert_eq!(condition.to_string(), "corner.breaks = 1 and letters >= 9");
/// assert_eq!(condition.parts()[1].span, 22..34);
/// assert!(Condition::new(Size::TWO, Feature::Of(Orbit::Midge, Aspect::Turned).is(0)).is_err());
/// ```
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Condition {
    size: Size,
    root: Clause,
}

impl Feature {
    const fn compared(self, relation: Relation, against: Against) -> Term {
        Term::Compare(self, relation, against)
    }

    /// That it has a value.
    pub const fn is(self, value: u8) -> Term {
        self.compared(Relation::Equal, Against::Number(value))
    }

    /// That it has a value or a smaller one.
    pub const fn at_most(self, value: u8) -> Term {
        self.compared(Relation::AtMost, Against::Number(value))
    }

    /// That it has a value or a greater one.
    pub const fn at_least(self, value: u8) -> Term {
        self.compared(Relation::AtLeast, Against::Number(value))
    }

    /// That it has a value from one to another, both included.
    pub const fn within(self, from: u8, to: u8) -> Term {
        self.compared(Relation::Equal, Against::Within(from, to))
    }
}

impl Term {
    /// That all of several hold.
    pub fn all(parts: impl IntoIterator<Item = Self>) -> Self {
        Self::All(parts.into_iter().map(Clause::of).collect())
    }

    /// That at least one of several holds.
    pub fn any(parts: impl IntoIterator<Item = Self>) -> Self {
        Self::Any(parts.into_iter().map(Clause::of).collect())
    }
}

impl Condition {
    /// A condition, whose parts stand where they do when it is written out.
    ///
    /// # Errors
    /// [`ConditionError`] for a puzzle whose states are not drawn, a kind that it does not have, or more than can be counted.
    pub fn new(size: Size, term: Term) -> Result<Self, ConditionError> {
        let mut condition = Self::written(size, Clause::of(term))?;
        condition.root.set_spans(0);
        Ok(condition)
    }

    /// A condition as it was written, its parts with the characters that they take.
    ///
    /// # Errors
    /// As [`Condition::new`].
    pub fn written(size: Size, root: Clause) -> Result<Self, ConditionError> {
        // A state that meets it is worth nothing where no sequence leads there.
        if random_turns(size) > 0 {
            return Err(ConditionError::SizeNotCovered(size));
        }
        if root.depth() > MOST_DEPTH {
            return Err(ConditionError::TooDeep);
        }
        let condition = Self { size, root };
        condition.check()?;
        Ok(condition)
    }

    fn check(&self) -> Result<(), ConditionError> {
        let mut features: Vec<Feature> = Vec::new();
        let mut tests: Vec<Occurs> = Vec::new();
        let mut backwards = None;
        self.visit(&mut |term| match term {
            Term::Compare(left, _, against) => {
                let right = if let Against::Feature(right) = against { Some(*right) } else { None };
                for feature in std::iter::once(*left).chain(right) {
                    if !features.contains(&feature) {
                        features.push(feature);
                    }
                    if let Feature::Of(_, Aspect::CyclesOf { from, to }) = feature
                        && from > to
                    {
                        backwards = Some((from, to));
                    }
                }
                if let Against::Within(from, to) = *against
                    && from > to
                {
                    backwards = Some((from, to));
                }
            }
            Term::Occurs(test) if !tests.contains(test) => tests.push(test.clone()),
            Term::Occurs(_) | Term::All(_) | Term::Any(_) | Term::Not(_) => {}
        });
        if let Some((from, to)) = backwards {
            return Err(ConditionError::RangeBackwards { from, to });
        }
        let kinds = Orbit::of(self.size);
        let of = |feature: &Feature| if let Feature::Of(orbit, _) = feature { Some(*orbit) } else { None };
        let named = || features.iter().filter_map(of).chain(tests.iter().map(|test| test.orbit));
        if let Some(orbit) = named().find(|orbit| !kinds.contains(orbit)) {
            return Err(ConditionError::KindMissing { orbit, size: self.size });
        }
        let too_many = |&orbit: &Orbit| {
            features.iter().filter(|feature| of(feature) == Some(orbit)).count() > MOST_FEATURES
                || tests.iter().filter(|test| test.orbit == orbit).count() > MOST_FEATURES
        };
        if kinds.iter().any(too_many) { Err(ConditionError::TooManyFeatures) } else { Ok(()) }
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
        let number = |feature| {
            Some(match feature {
                Feature::Parity => u8::from(memo.is_odd()),
                Feature::Letters => memo.letters() as u8,
                Feature::Of(orbit, aspect) => memo.part(orbit).map_or(0, |trace| aspect.of(trace)),
            })
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
    /// A part that stands nowhere yet.
    const fn of(term: Term) -> Self {
        Self { term, span: 0..0 }
    }

    fn depth(&self) -> usize {
        let deepest = |parts: &[Self]| parts.iter().map(Self::depth).max().unwrap_or(0);
        1 + match &self.term {
            Term::All(parts) | Term::Any(parts) => deepest(parts),
            Term::Not(part) => part.depth(),
            Term::Compare(..) | Term::Occurs(_) => 0,
        }
    }

    fn visit(&self, see: &mut dyn FnMut(&Term)) {
        see(&self.term);
        match &self.term {
            Term::All(parts) | Term::Any(parts) => parts.iter().for_each(|part| part.visit(see)),
            Term::Not(part) => part.visit(see),
            Term::Compare(..) | Term::Occurs(_) => {}
        }
    }

    /// Whether it holds, `None` where that depends on figures or occurrences that are not known.
    pub(crate) fn truth(
        &self,
        number: &impl Fn(Feature) -> Option<u8>,
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
                let left = number(*feature)?;
                Some(match *against {
                    Against::Number(right) => relation.holds(left, right),
                    Against::Feature(right) => relation.holds(left, number(right)?),
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
