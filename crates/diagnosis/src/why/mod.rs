//! Why an attempt did not come out: slips that would explain it, the likeliest first.
//!
//! A slip replaces one stretch of what should have been turned by another, so it changes the outcome by a group
//! element: what stands before the stretch, the other turns, and what follows, carried to the end. One slip is then
//! a look-up of the difference between what should have come out and what did; two are a product of two such
//! elements, found by looking up what is left after each first one.
//!
//! The words that the files below share:
//!
//! - *course*: the attempt as it was planned, laid out as one *tape* of turns from the scramble to the last letter, with a *span*
//!   of it for each act (`course.rs`); what turns before and after a place of the tape do to the end is *carried* there.
//! - *craft*: what slips are drawn from: the solver's letters, algorithms and set-ups, and the catalogue (`craft.rs`).
//! - *act*: what is carried out as one: a letter, a pair, parity (`act.rs`); after a slip of letters the acts of its kind are a *line*
//!   (`search.rs`), of which some were *brought* in by the slip.
//! - *candidate*: a slip at its place, with its *edits*, stretches of the tape and what was turned instead (`hands.rs` for
//!   the hands, `memo_slips.rs` and `recall.rs` for letters); all of them are the *space* (`space.rs`).
//! - *class*: candidates that change the outcome by the same element of the group. Elements that differ only in how the puzzle
//!   is held in the end share one *key up to hold*.
//! - *story*: one way in which it may have happened: a candidate, two or three, or two of which the second is possible only
//!   after the first: in letters that it brought in (`search.rs`), in what it made instead (`within.rs`), or since both
//!   decide about parity (`traced.rs`); three in `deep.rs`. What was seen in part (`observed.rs`, `glimpse.rs`) is met
//!   by `partial.rs`; on bigger sizes, where pieces look alike, slips are met from both ends on what can be seen
//!   (`coloured.rs`); what turning cannot have left lacks a piece (`missing.rs`) or was done by hand (`by_hand.rs`), as `verdict.rs` decides.
//! - *group*: stories whose slips act alike, one by one; the best is told (`told.rs`), the others are its variants.

mod act;
mod by_hand;
mod coloured;
mod course;
mod craft;
mod deep;
mod finding;
mod glimpse;
mod hands;
mod memo_slips;
mod missing;
mod observed;
mod partial;
mod plan;
mod question;
mod recall;
mod search;
mod space;
mod told;
mod traced;
mod verdict;
mod within;

pub use by_hand::{ByHand, HandDiagnosis, HandExplanation, why_by_hand};
pub use finding::Unlooked;
pub use glimpse::Glimpse;
pub use missing::Missing;
pub use observed::{Observed, Seen};
pub use plan::{Begun, LONGEST_LIST, Plan};
pub use question::{Answer, Ask, Question};
pub use verdict::{Verdict, explain};

use crate::slip::{Catalogue, Slip};
use blind::{ExecutionError, MethodError};
use course::Course;
use craft::Craft;
use cube::{Claim, Element, Group, NotProven, Orbit, Rotation, Size, State, Sticker, Turn, Unreachable};
use finding::Search;
use observed::Wanted;
use search::{Found, Story};
use space::Space;
use thiserror::Error;
use told::{Tape, Told};

/// How far to search.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub enum Depth {
    /// One slip or two.
    #[default]
    Two,
    /// Three slips too, which takes seconds.
    Three,
}

/// What goes into a diagnosis besides the plan and the outcome.
#[derive(Clone, Debug)]
pub struct Inquiry<'a> {
    /// The catalogue of slips.
    pub catalogue: &'a Catalogue,
    /// How far to search.
    pub depth: Depth,
    /// Answers to questions of an earlier diagnosis.
    pub answers: &'a [Answer],
    /// How many explanations are wanted at most.
    pub most: usize,
}

/// One way in which it may have happened, played and found to give what was observed.
#[derive(Clone, PartialEq, Debug)]
pub struct Explanation {
    slips: Vec<Slip>,
    weight: f64,
    alike: Vec<Vec<Slip>>,
    ways: usize,
    scrambled: Vec<Turn>,
    rotated: Vec<Turn>,
    played: Vec<Turn>,
    passes: Vec<State>,
}

impl Explanation {
    /// The slips in the order of the attempt; none if everything went as planned.
    pub fn slips(&self) -> &[Slip] {
        &self.slips
    }

    /// How likely it is, with all that acts alike, among all explanations found: 0 to 1.
    pub const fn weight(&self) -> f64 {
        self.weight
    }

    /// Other slips that act in the same way, the likeliest first; the first few.
    pub fn alike(&self) -> &[Vec<Slip>] {
        &self.alike
    }

    /// How many ways there are in all that act like this one, itself included.
    pub const fn ways(&self) -> usize {
        self.ways
    }

    /// The turns of the scramble as they would have been made; none if only a state is known.
    pub fn scrambled(&self) -> &[Turn] {
        &self.scrambled
    }

    /// The rotations as the puzzle would have been picked up.
    pub fn rotated(&self) -> &[Turn] {
        &self.rotated
    }

    /// All turns from then on as they would have been made. Begun, scrambled, rotated and played one after another give what
    /// was observed.
    pub fn played(&self) -> &[Turn] {
        &self.played
    }

    /// The outcome without slips, with the first slip only, and so on; the last is what was observed, but for how the puzzle
    /// is held.
    pub fn passes(&self) -> &[State] {
        &self.passes
    }

    /// The same, as likely as is known once others are weighed against it.
    #[must_use]
    pub fn weighing(self, weight: f64) -> Self {
        Self { weight, ..self }
    }
}

/// What was found.
#[derive(Clone, PartialEq, Debug)]
pub struct Diagnosis {
    /// The explanations, the likeliest first.
    pub explanations: Vec<Explanation>,
    /// How many explanations are as likely as the likeliest one, itself included, those that act alike counted each.
    pub ambiguity: usize,
    /// How many explanations there are in all, those that act alike counted once.
    pub found: usize,
    /// How many single slips were considered.
    pub slips: usize,
    /// How many classes these fall into, by what they do.
    pub classes: usize,
    /// Questions whose answers would tell most, the best first.
    pub questions: Vec<Question>,
    /// Whether the plan itself would have solved the puzzle.
    pub plan_solves: bool,
    /// Whether the search was broken off before its end.
    pub broken_off: bool,
    /// Whether everything that one slip or two explain was looked at: only then is no other explanation as likely as the first.
    pub whole: bool,
    /// What was taken of kinds that were not looked at.
    pub unlooked: Unlooked,
}

/// Why no diagnosis can be made.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum WhyError {
    /// More scrambles in a list than are looked at.
    #[error("a list of {0} scrambles; {LONGEST_LIST} are looked at at most")]
    LongList(usize),
    /// The solver has no method.
    #[error(transparent)]
    Method(#[from] MethodError),
    /// A memo does not solve, which is a fault of the program.
    #[error(transparent)]
    NotProven(#[from] NotProven),
    /// The memo cannot be carried out.
    #[error(transparent)]
    Execution(#[from] ExecutionError),
    /// On bigger sizes an attempt is explained by all stickers as they came out, not by some pieces and not by hands that took the puzzle
    /// apart.
    #[error("on a {0} all stickers have to be known")]
    Size(Size),
    /// The puzzle was seen in another size: pieces that the planned one does not have are of the smallest that has them.
    #[error("the attempt was on a {planned}, what was seen is a {seen}")]
    OtherSize {
        /// The size of the attempt.
        planned: Size,
        /// The size that was seen.
        seen: Size,
    },
    /// The unsolved pieces are such that turning cannot lead there.
    #[error(transparent)]
    Unreachable(#[from] Unreachable),
    /// The unsolved pieces contradict each other.
    #[error("the pieces do not fit together: two places would show the same piece")]
    Contradiction,
    /// At a place there are colours that no piece has together.
    #[error("at {} there are colours that no piece has", orbit.piece_name(*.place))]
    NoPiece {
        /// The kind.
        orbit: Orbit,
        /// The place, by its reference sticker.
        place: Sticker,
    },
    /// The centres are not those of any way to hold the puzzle.
    #[error("the centres are not where they can be, however the puzzle is held")]
    NoHold,
    /// An answer about a letter or a kind of piece that the memo does not have.
    #[error("`{ask}` is none of the memo: it has {letters} letters of that kind")]
    NothingToAnswer {
        /// What is answered.
        ask: Ask,
        /// How many letters of the kind there are.
        letters: usize,
    },
}

/// Whether two states are the same puzzle, held in whatever way; if so, the rotation from one to the other.
fn held_alike(a: &State, b: &State) -> Option<Rotation> {
    let candidates: Vec<Rotation> =
        if a.size().is_odd() { vec![a.core().inverse().then(b.core())] } else { Rotation::all().collect() };
    candidates.into_iter().find(|rotation| a.after(rotation.turns()) == *b)
}

/// Finds slips that explain an outcome.
///
/// `progress` is called with the share of the work that is done and says whether to go on.
///
/// # Errors
/// [`WhyError`] for an outcome of another size, or one that turning cannot lead to; on bigger sizes for one that is not known whole.
///
/// ```
/// use blind::{Conventions, Solver};
/// use diagnosis::{Begun, Catalogue, Depth, Inquiry, Observed, Plan, why};
/// use cube::{Algorithm, Size, State};
/// let solver = Solver::new(Size::THREE, Conventions::default());
/// let scramble = Algorithm::parse("D2 F' R2 B U2 L' D B2 R F U'", Size::THREE).unwrap().flatten();
/// let plan = Plan::new(Begun::Scramble(scramble), None, &solver).unwrap();
/// // The last turn of all was forgotten.
/// let turns = plan.turns();
/// let seen = State::solved(Size::THREE).after(&turns[..turns.len() - 1]);
/// let catalogue = Catalogue::default();
/// let inquiry = Inquiry { catalogue: &catalogue, depth: Depth::Two, answers: &[], most: 10 };
/// let diagnosis = why(&plan, &Observed::State(Box::new(seen)), &inquiry, &mut |_| true).unwrap();
/// let best = &diagnosis.explanations[0];
/// let again = State::solved(Size::THREE).after(best.scrambled()).after(best.rotated()).after(best.played());
/// assert_eq!(again, seen);
/// ```
pub fn why(
    plan: &Plan<'_>,
    observed: &Observed,
    inquiry: &Inquiry<'_>,
    progress: &mut dyn FnMut(f64) -> bool,
) -> Result<Diagnosis, WhyError> {
    let size = plan.solver.size();
    if Group::of(size).is_none() {
        return coloured::why(plan, observed, inquiry, progress);
    }
    let setting = Setting::new(plan, inquiry.catalogue)?;
    let (group, planned) = (setting.group, &setting.planned);
    if let Some(orbit) = observed.foreign_kind(size) {
        let has = |size: &Size| Orbit::of(*size).contains(&orbit);
        let seen = Size::ALL.into_iter().find(has).unwrap_or(size);
        return Err(WhyError::OtherSize { planned: size, seen });
    }
    for answer in inquiry.answers {
        plan.has(answer.ask)?;
    }
    let space = Space::new(&setting, plan);
    let named = group.element(&planned.named_in(plan.solver.conventions().holding));
    let upright = named.then(&group.holds()[group.standard_hold(&named)]);
    let as_planned = |orbit: Orbit, place: Sticker| group.at(&upright, orbit, place);
    let search = Search { plan, setting: &setting, space: &space, named, inquiry };
    let kinds = observed.unlooked();
    if kinds.is_empty() {
        return search.within(observed, None, Unlooked::None, progress);
    }
    // What was not looked at is as planned, unless nothing leads there.
    let planned = search.within(observed, Some(&as_planned), Unlooked::AsPlanned(kinds.clone()), progress);
    match planned {
        Err(WhyError::Unreachable(_)) => {}
        Ok(found) if found.explanations.is_empty() => {}
        told => return told,
    }
    search.within(observed, None, Unlooked::AnyWay(kinds), progress)
}

/// What a search is made in.
struct Setting<'a> {
    group: &'static Group,
    course: Course,
    craft: Craft<'a>,
    /// What should have come out.
    planned: State,
}

impl<'a> Setting<'a> {
    fn new(plan: &'a Plan<'_>, catalogue: &'a Catalogue) -> Result<Self, WhyError> {
        let group = Group::of(plan.solver.size()).ok_or(WhyError::Size(plan.solver.size()))?;
        let craft = Craft::new(plan.solver.conventions(), plan.method, catalogue, Some(group));
        let course = plan.course(&craft.acts);
        let planned = plan.start().after(&course.tape);
        Ok(Self { group, course, craft, planned })
    }

    /// What leads from what should have come out to what did.
    fn difference(&self, outcome: &State) -> Element {
        self.group.element(&self.planned).inverse().then(&self.group.element(outcome))
    }
}

/// From what was found to what is told.
struct Assembly<'a> {
    plan: &'a Plan<'a>,
    space: &'a Space<'a>,
    planned: &'a State,
    exactly: Option<&'a State>,
    wanted: Option<&'a Wanted>,
}

impl Assembly<'_> {
    fn diagnosis(
        &self,
        found: &Found,
        as_planned: bool,
        inquiry: &Inquiry<'_>,
        broken_off: bool,
    ) -> Result<Diagnosis, NotProven> {
        let mut ranking = question::Ranking::new(found, self.space, inquiry.answers);
        let mut explanations = Vec::new();
        if as_planned {
            explanations.push(self.explanation(&[], 1.0, 1)?);
        }
        for ranked in ranking.groups.iter().take(inquiry.most) {
            explanations.push(self.explanation(&ranked.stories, ranked.weight, ranked.count)?);
        }
        let ambiguity = if as_planned { 1 } else { ranking.ambiguity() };
        let questions =
            if as_planned { Vec::new() } else { ranking.questions(Orbit::of(self.plan.solver.size())) };
        Ok(Diagnosis {
            explanations,
            ambiguity,
            found: found.groups.len() + usize::from(as_planned),
            slips: self.space.candidates.len(),
            classes: self.space.classes.all.len(),
            questions,
            plan_solves: self.planned.solved_hold().is_some(),
            broken_off,
            whole: true,
            unlooked: Unlooked::None,
        })
    }

    /// Plays a story.
    ///
    /// # Errors
    /// [`NotProven`] when it does not give what was observed.
    fn explanation(&self, stories: &[Story], weight: f64, ways: usize) -> Result<Explanation, NotProven> {
        let not_proven = NotProven { claim: Claim::Explanation };
        let told = Told::new(self.space, stories.first().copied());
        let last = told.tapes.last().ok_or(not_proven)?;
        let passes: Vec<State> =
            told.tapes.iter().map(|tape| self.plan.start().after(tape.turns())).collect();
        let outcome = passes.last().ok_or(not_proven)?;
        let mut played = last.played().to_vec();
        match (self.exactly, self.wanted) {
            (Some(state), _) => {
                played.extend(held_alike(outcome, state).ok_or(not_proven)?.turns());
            }
            (None, Some(wanted)) => {
                let solver = self.plan.solver;
                let named = self.space.group.element(&outcome.named_in(solver.conventions().holding));
                let fits = wanted.fits_held(&named, self.space.group, solver.size().is_odd());
                NotProven::unless(fits, Claim::Explanation)?;
            }
            (None, None) => return Err(not_proven),
        }
        let alike =
            stories.iter().skip(1).map(|&story| slips_of(&Told::new(self.space, Some(story)))).collect();
        let of = |part: fn(&Tape) -> &[Turn]| part(last).to_vec();
        Ok(Explanation {
            slips: slips_of(&told),
            weight,
            alike,
            ways,
            scrambled: of(Tape::scrambled),
            rotated: of(Tape::rotated),
            played,
            passes,
        })
    }
}

fn slips_of(told: &Told) -> Vec<Slip> {
    told.slips.iter().map(|candidate| candidate.slip.clone()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use blind::{Conventions, Solver};
    use cube::Algorithm;

    #[test]
    fn a_story_that_does_not_give_what_was_seen_is_an_error() {
        let solver = Solver::new(Size::THREE, Conventions::default());
        let turns = |text| Algorithm::parse(text, Size::THREE).expect("turns").flatten();
        let plan = Plan::new(Begun::Scramble(turns("R U F")), None, &solver).expect("a plan");
        let catalogue = Catalogue::default();
        let setting = Setting::new(&plan, &catalogue).expect("a 3x3");
        let space = Space::new(&setting, &plan);
        let told = |exactly: Option<State>, wanted: Option<Wanted>| {
            let (space, planned) = (&space, &setting.planned);
            let (exactly, wanted) = (exactly.as_ref(), wanted.as_ref());
            Assembly { plan: &plan, space, planned, exactly, wanted }.explanation(&[], 1.0, 1)
        };
        let not_proven = Err(NotProven { claim: Claim::Explanation });
        assert!(told(Some(plan.outcome()), None).is_ok());
        assert_eq!(told(Some(plan.outcome().after(&turns("R"))), None), not_proven);
        // The same with what is seen in part, and with nothing seen.
        let counted = |corners| {
            let observed = Observed::counts(&[(Orbit::Corner, corners)]);
            Wanted::new(&observed, Size::THREE, Rotation::NONE, None).expect("corners")
        };
        assert!(told(None, counted(0)).is_ok());
        assert_eq!(told(None, counted(3)), not_proven);
        assert_eq!(told(None, None), not_proven);
    }
}
