//! Why an attempt did not come out: slips that would explain it, the likeliest first.
//!
//! A slip replaces one stretch of what should have been turned by another, so it changes the outcome by a group
//! element: what stands before the stretch, the other turns, and what follows, carried to the end. One slip is then
//! a look-up of the difference between what should have come out and what did; two are a product of two such
//! elements, found by looking up what is left after each first one.

mod by_hand;
mod course;
mod craft;
mod deep;
mod hands;
mod memo_slips;
mod observed;
mod partial;
mod question;
mod search;
mod space;
mod told;

pub use by_hand::{ByHand, HandDiagnosis, HandExplanation, why_by_hand};
pub use observed::{Observed, ObservedError, Seen};
pub use question::{Answer, Ask, Question};

use crate::conventions::Conventions;
use crate::execution::ExecutionError;
use crate::holding::hold;
use crate::memo::Memo;
use crate::method::{Carrier, Method, Parity};
use crate::slip::{Catalogue, Slip};
use crate::trace::Trace;
use course::{Course, recalled};
use craft::Craft;
use cube::{Element, Group, Orbit, Rotation, Size, State, Sticker, Turn, Unreachable};
use observed::Wanted;
use search::{Found, Story};
use space::Space;
use thiserror::Error;
use told::{Tape, Told};

/// How the attempt began.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Begun {
    /// With a solved puzzle and these turns.
    Scramble(Vec<Turn>),
    /// With a puzzle in this state; how it was scrambled is not known.
    State(Box<State>),
}

/// What should have been done: the attempt as it was planned.
#[derive(Clone, PartialEq, Debug)]
pub struct Plan {
    size: Size,
    begun: Begun,
    hold: Rotation,
    memo: Vec<(Orbit, Vec<Sticker>)>,
    /// Where the letters were traced; none where they were given.
    traces: Vec<Trace>,
    conventions: Conventions,
    method: Method,
}

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

/// One way in which it may have happened.
#[derive(Clone, PartialEq, Debug)]
pub struct Explanation {
    /// The slips in the order of the attempt; none if everything went as planned.
    pub slips: Vec<Slip>,
    /// How likely it is, with all that acts alike, among all explanations found: 0 to 1.
    pub weight: f64,
    /// Other slips that act in the same way, the likeliest first; the first few.
    pub alike: Vec<Vec<Slip>>,
    /// How many ways there are in all that act like this one, itself included.
    pub ways: usize,
    /// The turns of the scramble as they would have been made; none if only a state is known.
    pub scrambled: Vec<Turn>,
    /// The rotations as the puzzle would have been picked up.
    pub rotated: Vec<Turn>,
    /// All turns from then on as they would have been made. Begun, scrambled, rotated and played one after another
    /// give what was observed.
    pub played: Vec<Turn>,
    /// The outcome without slips, with the first slip only, and so on; the last is what was observed, but for how
    /// the puzzle is held.
    pub passes: Vec<State>,
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
}

/// Why no diagnosis can be made.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum WhyError {
    /// The memo cannot be carried out.
    #[error(transparent)]
    Execution(#[from] ExecutionError),
    /// A kind is not carried out by one swap a letter; slips of other methods are not in the catalogue.
    #[error("attempts are explained for one-swap only, and the {}s are carried out otherwise", crate::kind_name(*.0))]
    NotOneSwap(Orbit),
    /// Parity is met by exchanging two edges in the trace; the catalogue knows the slips of a parity algorithm only.
    #[error("attempts are explained with a parity algorithm only, not with two edges exchanged in the trace")]
    EdgesExchanged,
    /// The pieces of the size are too many, or look alike: what slips do is not told apart there.
    #[error("attempts are explained on the 2x2 and the 3x3, not on a {0}")]
    Size(Size),
    /// The puzzle was seen in another size.
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
}

impl Plan {
    /// The plan of an attempt: the memo that was carried out, or ours if none is given.
    ///
    /// # Errors
    /// [`WhyError::Execution`] for a memo that cannot be carried out: a letter of the buffer's own piece;
    /// [`WhyError::NotOneSwap`] or [`WhyError::EdgesExchanged`] where the method has no catalogue of slips.
    pub fn new(
        begun: Begun,
        size: Size,
        memo: Option<Vec<(Orbit, Vec<Sticker>)>>,
        conventions: &Conventions,
        method: &Method,
    ) -> Result<Self, WhyError> {
        let start = match &begun {
            Begun::Scramble(turns) => State::solved(size).after(turns),
            Begun::State(state) => **state,
        };
        let held = hold(&start, conventions);
        let ours = Memo::new(&held.state, conventions, method);
        let (memo, traces) = match memo {
            Some(memo) => (memo, Vec::new()),
            None => (
                ours.parts().iter().map(|trace| (trace.orbit(), trace.targets())).collect(),
                ours.parts().to_vec(),
            ),
        };
        if let Parity::Exchange(_) = method.parity_is() {
            return Err(WhyError::EdgesExchanged);
        }
        for (orbit, letters) in &memo {
            let swap = match method.carrier(*orbit).ok_or(ExecutionError::KindMissing(*orbit))? {
                Carrier::OneSwap(swap) => swap,
                Carrier::SliceSwap(_) | Carrier::ThreeCycle(_) => return Err(WhyError::NotOneSwap(*orbit)),
            };
            if let Some(&target) = letters.iter().find(|&&target| swap.setups(target).is_empty()) {
                return Err(ExecutionError::OwnPiece { orbit: *orbit, target }.into());
            }
        }
        let (conventions, method) = (conventions.clone(), method.clone());
        Ok(Self { size, begun, hold: held.rotation, memo, traces, conventions, method })
    }

    /// The state before anything was turned.
    pub fn start(&self) -> State {
        match &self.begun {
            Begun::Scramble(_) => State::solved(self.size),
            Begun::State(state) => **state,
        }
    }

    /// How the puzzle is picked up.
    pub const fn hold(&self) -> Rotation {
        self.hold
    }

    /// The letters of each kind.
    pub fn memo(&self) -> &[(Orbit, Vec<Sticker>)] {
        &self.memo
    }

    /// The conventions.
    pub const fn conventions(&self) -> &Conventions {
        &self.conventions
    }

    /// The method.
    pub const fn method(&self) -> &Method {
        &self.method
    }

    fn course(&self) -> Course {
        let scramble = match &self.begun {
            Begun::Scramble(turns) => turns.as_slice(),
            Begun::State(_) => &[],
        };
        let recalled = recalled(&self.memo, &self.conventions, &self.method);
        Course::new(scramble, self.hold, recalled, &self.method)
    }

    /// All turns that should have been made, from the scramble on.
    pub fn turns(&self) -> Vec<Turn> {
        self.course().tape
    }

    /// What should have come out.
    pub fn outcome(&self) -> State {
        self.start().after(&self.turns())
    }
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
/// [`WhyError`] for an outcome of another size, or one that turning cannot lead to.
///
/// ```
/// use blind::{Begun, Catalogue, Conventions, Depth, Inquiry, Method, Observed, Plan, why};
/// use cube::{Algorithm, Size, State};
/// let conventions = Conventions::default();
/// let method = Method::new(Size::THREE, &conventions).unwrap();
/// let scramble = Algorithm::parse("D2 F' R2 B U2 L' D B2 R F U'", Size::THREE).unwrap().flatten();
/// let plan = Plan::new(Begun::Scramble(scramble), Size::THREE, None, &conventions, &method).unwrap();
/// // The last turn of all was forgotten.
/// let turns = plan.turns();
/// let seen = State::solved(Size::THREE).after(&turns[..turns.len() - 1]);
/// let catalogue = Catalogue::default();
/// let inquiry = Inquiry { catalogue: &catalogue, depth: Depth::Two, answers: &[], most: 10 };
/// let diagnosis = why(&plan, &Observed::State(Box::new(seen)), &inquiry, &mut |_| true).unwrap();
/// let best = &diagnosis.explanations[0];
/// let again = State::solved(Size::THREE).after(&best.scrambled).after(&best.rotated).after(&best.played);
/// assert_eq!(again, seen);
/// ```
pub fn why(
    plan: &Plan,
    observed: &Observed,
    inquiry: &Inquiry<'_>,
    progress: &mut dyn FnMut(f64) -> bool,
) -> Result<Diagnosis, WhyError> {
    let setting = Setting::new(plan, inquiry.catalogue)?;
    let (group, planned) = (setting.group, &setting.planned);
    let wanted = Wanted::new(observed, plan.size);
    let exactly = match (&wanted, observed) {
        (None, Observed::State(state)) => Some(**state),
        (Some(wanted), _) => match wanted.exactly(plan.size)? {
            Some(perms) => {
                let named = State::from_orbits(plan.size, Rotation::NONE, &perms)?;
                Some(State::held(plan.size, plan.conventions.holding).then(&named))
            }
            None => None,
        },
        (None, _) => None,
    };
    if let Some(state) = exactly
        && state.size() != plan.size
    {
        return Err(WhyError::OtherSize { planned: plan.size, seen: state.size() });
    }
    let space = Space::new(&setting.course, &plan.traces, &setting.craft, group);
    let shares = [1, 2, 3].map(|slips| inquiry.catalogue.share_of_count(slips));
    let mut found = Found::default();
    let mut broken_off = !progress(0.0);
    let mut as_planned = false;
    match (&exactly, &wanted) {
        (Some(state), _) => {
            let difference = setting.difference(state);
            as_planned = group.key_up_to_hold(&difference) == group.key_up_to_hold(&Element::IDENTITY);
            if !as_planned {
                search::singles(&space, &difference, shares[0], &mut found);
                search::pairs(&space, &group.right(&difference), shares[1], &mut found);
                search::inside(&space, &difference, shares[1], &mut found);
                if inquiry.depth == Depth::Three && !broken_off {
                    broken_off = deep::triples(&space, &difference, shares[2], &mut found, progress);
                }
            }
        }
        (None, Some(wanted)) => {
            let named = group.element(&planned.named_in(plan.conventions.holding));
            as_planned = wanted.fits_held(&named, group, plan.size.is_odd());
            if !as_planned {
                partial::explain(&space, wanted, &named, [shares[0], shares[1]], &mut found);
            }
        }
        (None, None) => {}
    }
    let assembly =
        Assembly { plan, space: &space, planned, exactly: exactly.as_ref(), wanted: wanted.as_ref() };
    Ok(assembly.diagnosis(&found, as_planned, inquiry, broken_off))
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
    fn new(plan: &'a Plan, catalogue: &'a Catalogue) -> Result<Self, WhyError> {
        let course = plan.course();
        let planned = plan.start().after(&course.tape);
        let craft = Craft::new(&plan.conventions, &plan.method, catalogue);
        let group = Group::of(plan.size).ok_or(WhyError::Size(plan.size))?;
        Ok(Self { group, course, craft, planned })
    }

    /// What leads from what should have come out to what did.
    fn difference(&self, outcome: &State) -> Element {
        self.group.element(&self.planned).inverse().then(&self.group.element(outcome))
    }
}

/// From what was found to what is told.
struct Assembly<'a> {
    plan: &'a Plan,
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
    ) -> Diagnosis {
        let mut ranking = question::Ranking::new(found, self.space, inquiry.answers);
        let mut explanations = Vec::new();
        if as_planned {
            explanations.extend(self.explanation(&[], 1.0, 1));
        }
        for ranked in ranking.groups.iter().take(inquiry.most) {
            explanations.extend(self.explanation(&ranked.stories, ranked.weight, ranked.count));
        }
        let ambiguity = if as_planned { 1 } else { ranking.ambiguity() };
        let questions = if as_planned { Vec::new() } else { ranking.questions() };
        Diagnosis {
            explanations,
            ambiguity,
            found: found.groups.len() + usize::from(as_planned),
            slips: self.space.candidates.len(),
            classes: self.space.classes.all.len(),
            questions,
            plan_solves: self.planned.solved_hold().is_some(),
            broken_off,
        }
    }

    /// Plays a story and takes it only if it gives what was observed.
    fn explanation(&self, stories: &[Story], weight: f64, ways: usize) -> Option<Explanation> {
        let told = Told::new(self.space, stories.first().copied());
        let last = told.tapes.last()?;
        let passes: Vec<State> =
            told.tapes.iter().map(|tape| self.plan.start().after(tape.turns())).collect();
        let outcome = passes.last()?;
        let mut played = last.played().to_vec();
        match (self.exactly, self.wanted) {
            (Some(state), _) => {
                played.extend(held_alike(outcome, state)?.turns());
            }
            (None, Some(wanted)) => {
                let group = self.space.group;
                let named = group.element(&outcome.named_in(self.plan.conventions.holding));
                if !wanted.fits_held(&named, group, self.plan.size.is_odd()) {
                    return None;
                }
            }
            (None, None) => return None,
        }
        let alike =
            stories.iter().skip(1).map(|&story| slips_of(&Told::new(self.space, Some(story)))).collect();
        let of = |part: fn(&Tape) -> &[Turn]| part(last).to_vec();
        Some(Explanation {
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
