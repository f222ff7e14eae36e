//! Which scrambles show just this: conditions on a memo, how many states meet them, and uniform draws of those that do.
//!
//! A [`Condition`] is about the memo that a person's conventions give; [`Sampler`] counts the classes of states that meet it,
//! exactly where it can, and draws from them. [`lessons`] are conditions that each show one idea.

mod class;
mod condition;
mod held;
mod lesson;

pub use class::{DrawError, Estimate, Lying, Matching, Sampler, Unsatisfiable, Why, put_down, ratio};
pub use condition::{
    Against, Aspect, Clause, Condition, ConditionError, Feature, MOST_DEPTH, MOST_FEATURES, Occurs, Relation,
    Term, Wanted,
};
pub use held::BestHeld;
pub use lesson::{Lesson, LessonError, lesson_condition, lessons};
