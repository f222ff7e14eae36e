//! What is answered to whoever tells how the puzzle came out.

use super::missing::missing;
use super::{Diagnosis, HandDiagnosis, Inquiry, Missing, Observed, Plan, WhyError, why, why_by_hand};

/// What is answered.
#[derive(Clone, PartialEq, Debug)]
pub enum Verdict {
    /// At least one more piece must be unsolved; that is to be asked before anything else.
    Missing(Missing),
    /// Something was done by hand.
    ByHand(HandDiagnosis),
    /// Slips explain it, or nothing does.
    Slips(Diagnosis),
}

/// Explains an outcome, whatever it is: slips where turning can lead there; what was done by hand where it cannot, if it is
/// sure that nothing was left out; otherwise which piece was.
///
/// # Errors
/// As [`why`].
///
/// ```
/// use blind::{Conventions, Solver};
/// use cube::{Algorithm, Orbit, Size};
/// use diagnosis::{Begun, Catalogue, Depth, Inquiry, Missing, Observed, Plan, Seen, Verdict, explain};
/// let solver = Solver::new(Size::THREE, Conventions::default());
/// let scramble = Algorithm::parse("D2 F' R2 B U2 L' D B2 R F U'", Size::THREE).unwrap().flatten();
/// let plan = Plan::new(Begun::Scramble(scramble), None, &solver).unwrap();
/// let catalogue = Catalogue::default();
/// let inquiry = Inquiry { catalogue: &catalogue, depth: Depth::Two, answers: &[], most: 10 };
/// let sticker = Orbit::Midge.sticker("UF").unwrap();
/// let mut seen = vec![Seen::Turned { orbit: Orbit::Midge, sticker, clockwise: Some(1) }];
/// let told = |seen: &[Seen]| explain(&plan, &Observed::Pieces(seen.to_vec()), &inquiry, &mut |_| true).unwrap();
/// // One edge cannot be flipped alone.
/// assert!(matches!(told(&seen), Verdict::Missing(Missing::Turned { orbit: Orbit::Midge, .. })));
/// seen.push(Seen::NothingElse);
/// assert!(matches!(told(&seen), Verdict::ByHand(_)));
/// ```
pub fn explain(
    plan: &Plan<'_>,
    observed: &Observed,
    inquiry: &Inquiry<'_>,
    progress: &mut dyn FnMut(f64) -> bool,
) -> Result<Verdict, WhyError> {
    let solver = plan.solver();
    for answer in inquiry.answers {
        plan.has(answer.ask)?;
    }
    if observed.foreign_kind(solver.size()).is_none() {
        let seen =
            observed.facelets(solver.size(), solver.conventions().holding).filter(|_| observed.is_all());
        if let Some(seen) = seen {
            if let Some(found) = why_by_hand(plan, &seen, inquiry)? {
                return Ok(Verdict::ByHand(found));
            }
            if let Ok(state) = seen.state() {
                return why(plan, &Observed::State(Box::new(state)), inquiry, progress).map(Verdict::Slips);
            }
        }
        if let Some(missing) = missing(observed, solver.size()) {
            return Ok(Verdict::Missing(missing));
        }
    }
    why(plan, observed, inquiry, progress).map(Verdict::Slips)
}
