//! Ready-made conditions for lessons: what one scramble is to show, and little else.

use crate::condition::Aspect::{self, Breaks, Buffer, ClosesElsewhere, Parity, Turned};
use crate::condition::{Condition, Feature, Term};
use blind::nearest;
use cube::{Layer, Orbit, Size};
use thiserror::Error;

/// A condition that goes with a lesson.
#[derive(Clone, Copy, Debug)]
pub struct Lesson {
    name: &'static str,
    shows: fn(Puzzle) -> Option<Term>,
}

/// Why there is no such lesson.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum LessonError {
    /// No lesson has this name.
    #[error("there is no lesson `{name}`")]
    Unknown {
        /// The name.
        name: String,
        /// The one that was probably meant.
        meant: Option<String>,
        /// All there are.
        known: Vec<String>,
    },
    /// The lesson does not exist for the puzzle.
    #[error("the lesson `{name}` does not exist for a {size}")]
    NotFor {
        /// The name.
        name: String,
        /// The puzzle.
        size: Size,
    },
}

impl Lesson {
    /// The name by which it is asked for; crate `voice` has what it is called in a language.
    pub const fn name(&self) -> &'static str {
        self.name
    }

    /// The condition on the states of a puzzle, if the lesson exists for it.
    pub fn condition(&self, size: Size) -> Option<Condition> {
        let kinds = Orbit::of(size);
        let puzzle = if kinds.contains(&Orbit::Midge) {
            Puzzle::WithEdges
        } else if kinds.iter().any(|orbit| orbit.is_edge()) {
            Puzzle::WithWings
        } else {
            Puzzle::Corners
        };
        Condition::new(size, (self.shows)(puzzle)?).ok()
    }
}

/// What a puzzle has to memorise.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
enum Puzzle {
    Corners,
    WithEdges,
    /// And centres, which no lesson asks about.
    WithWings,
}

const SOLVED: u8 = 0;
const TURNED: u8 = 1;
const AWAY: u8 = 2;
const EVEN: u8 = 0;
const ODD: u8 = 1;

const fn corner(aspect: Aspect) -> Feature {
    Feature::Of(Orbit::Corner, aspect)
}

const fn edge(aspect: Aspect) -> Feature {
    Feature::Of(Orbit::Midge, aspect)
}

/// A figure of the wings of a 4x4.
const fn wing(aspect: Aspect) -> Feature {
    Feature::Of(Orbit::Wing { layer: Layer::Second }, aspect)
}

impl Puzzle {
    /// All of these, and where there are edges those too; nothing where there are wings.
    fn all<const C: usize, const E: usize>(self, corners: [Term; C], edges: [Term; E]) -> Option<Term> {
        if self == Self::WithWings {
            return None;
        }
        let edges = edges.into_iter().filter(|_| self == Self::WithEdges);
        let mut all: Vec<Term> = corners.into_iter().chain(edges).collect();
        if all.len() == 1 { all.pop() } else { Some(Term::all(all)) }
    }

    /// This on corners alone, that where there are edges; nothing where there are wings.
    fn each(self, corners: Term, with_edges: Term) -> Option<Term> {
        match self {
            Self::Corners => Some(corners),
            Self::WithEdges => Some(with_edges),
            Self::WithWings => None,
        }
    }

    /// This where there are wings, that elsewhere.
    fn or_with_wings(self, with_wings: Term, elsewhere: Option<Term>) -> Option<Term> {
        if self == Self::WithWings { Some(with_wings) } else { elsewhere }
    }
}

/// Edges that ask for nothing: one cycle through the buffer.
fn plain_edges() -> [Term; 3] {
    [edge(Buffer).is(AWAY), edge(Breaks).is(0), edge(Turned).is(0)]
}

/// Corners that are broken into so many times, without twists.
fn breaks(count: u8) -> [Term; 3] {
    [corner(Buffer).is(AWAY), corner(Breaks).is(count), corner(Turned).is(0)]
}

/// In the order in which they are best taught. Of all states of the 2x2 7 in 100 are "short", 84 "typical", 8 "long"; of
/// the 3x3 21, 74 and 5 (counted, see the checks). On a 3x3 the number of letters is always even, for corners and edges
/// agree in parity.
const LESSONS: [Lesson; 13] = [
    Lesson {
        name: "one-cycle",
        shows: |puzzle| {
            let wings = [wing(Buffer).is(AWAY), wing(Breaks).is(0)];
            let with_wings = Term::all(breaks(0).into_iter().chain(wings));
            puzzle.or_with_wings(with_wings, puzzle.all(breaks(0), plain_edges()))
        },
    },
    Lesson {
        name: "first-break",
        shows: |puzzle| {
            let wings = [wing(Buffer).is(AWAY), wing(Breaks).is(1)];
            let with_wings = Term::all(breaks(0).into_iter().chain(wings));
            puzzle.or_with_wings(with_wings, puzzle.all(breaks(1), plain_edges()))
        },
    },
    Lesson {
        name: "closing-elsewhere",
        shows: |puzzle| {
            let [away, broken, no_twist] = breaks(1);
            puzzle.all([away, broken, corner(ClosesElsewhere).is(1), no_twist], plain_edges())
        },
    },
    Lesson {
        name: "two-breaks",
        shows: |puzzle| {
            let two = |corners, edges| Term::all([corner(Breaks).is(corners), edge(Breaks).is(edges)]);
            let in_one_kind = Term::any([two(2, 0), two(0, 2)]);
            puzzle.each(
                Term::all([corner(Breaks).is(2), corner(Turned).is(0)]),
                Term::all([in_one_kind, corner(Turned).is(0), edge(Turned).is(0)]),
            )
        },
    },
    Lesson {
        name: "twisted-corner",
        shows: |puzzle| puzzle.all([corner(Buffer).is(AWAY), corner(Turned).is(1)], [edge(Turned).is(0)]),
    },
    Lesson {
        name: "buffer-solved",
        shows: |puzzle| {
            puzzle.all([corner(Buffer).is(SOLVED), corner(Breaks).at_least(1)], [edge(Buffer).is(AWAY)])
        },
    },
    Lesson {
        name: "buffer-twisted",
        shows: |puzzle| puzzle.all([corner(Buffer).is(TURNED)], [edge(Buffer).is(AWAY)]),
    },
    Lesson {
        name: "parity",
        shows: |puzzle| {
            let with_wings = Term::all([wing(Parity).is(ODD), corner(Parity).is(EVEN)]);
            puzzle.or_with_wings(with_wings, puzzle.all([Feature::Parity.is(ODD)], []))
        },
    },
    Lesson {
        name: "no-parity",
        shows: |puzzle| {
            puzzle.or_with_wings(Feature::Parity.is(EVEN), puzzle.all([Feature::Parity.is(EVEN)], []))
        },
    },
    Lesson {
        name: "flipped-edges",
        shows: |puzzle| match puzzle {
            Puzzle::Corners | Puzzle::WithWings => None,
            Puzzle::WithEdges => Some(Term::all([edge(Turned).within(2, 3), corner(Turned).is(0)])),
        },
    },
    Lesson {
        name: "short-memo",
        shows: |puzzle| puzzle.each(Feature::Letters.at_most(5), Feature::Letters.at_most(18)),
    },
    Lesson {
        name: "typical-memo",
        shows: |puzzle| puzzle.each(Feature::Letters.within(6, 8), Feature::Letters.within(20, 22)),
    },
    Lesson {
        name: "long-memo",
        shows: |puzzle| puzzle.each(Feature::Letters.at_least(9), Feature::Letters.at_least(24)),
    },
];

/// All lessons, in the order in which they are best taught.
pub const fn lessons() -> &'static [Lesson] {
    &LESSONS
}

/// The condition of the lesson with a name.
///
/// # Errors
/// [`LessonError`] when there is no such lesson, or none for the puzzle.
///
/// ```
/// use choose::lesson_condition;
/// use cube::Size;
/// assert_eq!(lesson_condition("parity", Size::TWO).unwrap().to_string(), "parity = odd");
/// assert!(lesson_condition("flipped-edges", Size::TWO).is_err());
/// ```
pub fn lesson_condition(name: &str, size: Size) -> Result<Condition, LessonError> {
    let Some(lesson) = LESSONS.iter().find(|lesson| lesson.name == name) else {
        let known = LESSONS.map(|lesson| lesson.name);
        return Err(LessonError::Unknown {
            name: name.to_owned(),
            meant: nearest(name, &known).map(str::to_owned),
            known: known.map(str::to_owned).to_vec(),
        });
    };
    lesson.condition(size).ok_or_else(|| LessonError::NotFor { name: name.to_owned(), size })
}
