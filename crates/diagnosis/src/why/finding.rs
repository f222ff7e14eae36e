//! Finding what explains an outcome, once it is settled what is known of it.

use super::observed::{AsPlanned, Wanted};
use super::search::Found;
use super::space::Space;
use super::{Assembly, Depth, Diagnosis, Inquiry, Observed, Plan, Setting, WhyError, deep, partial};
use cube::{Element, Orbit, Rotation, State};

/// What was taken of the pieces of kinds that were not looked at.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub enum Unlooked {
    /// All kinds were looked at.
    #[default]
    None,
    /// They came out as planned.
    AsPlanned(Vec<Orbit>),
    /// They may have come out in any way: as planned, nothing was found.
    AnyWay(Vec<Orbit>),
}

/// A search for what explains an outcome.
pub(super) struct Search<'a> {
    pub(super) plan: &'a Plan<'a>,
    pub(super) setting: &'a Setting<'a>,
    pub(super) space: &'a Space<'a>,
    /// What should have come out, named so that solved is the identity.
    pub(super) named: Element,
    pub(super) inquiry: &'a Inquiry<'a>,
}

impl Search<'_> {
    /// Finds what explains an outcome, with what is known of kinds that were not looked at.
    pub(super) fn within(
        &self,
        observed: &Observed,
        as_planned: Option<AsPlanned<'_>>,
        unlooked: Unlooked,
        progress: &mut dyn FnMut(f64) -> bool,
    ) -> Result<Diagnosis, WhyError> {
        let &Self { plan, setting, space, named, inquiry } = self;
        let (group, size) = (setting.group, plan.solver.size());
        let holding = plan.solver.conventions().holding;
        let wanted = Wanted::new(observed, size, holding, as_planned)?;
        let outcome = |named: &State| State::held(size, holding).then(named);
        let exactly = match (&wanted, observed) {
            (None, Observed::State(state)) => Some(**state),
            (Some(wanted), _) => match wanted.exactly(size)? {
                Some(perms) => Some(outcome(&State::from_orbits(size, Rotation::NONE, &perms)?)),
                None => None,
            },
            (None, _) => None,
        };
        if let Some(state) = exactly
            && state.size() != size
        {
            return Err(WhyError::OtherSize { planned: size, seen: state.size() });
        }
        let shares = [1, 2, 3].map(|slips| inquiry.catalogue.share_of_count(slips));
        let two = [shares[0], shares[1]];
        let mut found = Found::default();
        let mut broken_off = !progress(0.0);
        let mut whole = true;
        let as_planned = match (&exactly, &wanted) {
            (Some(state), _) => {
                let difference = setting.difference(state);
                let as_planned =
                    group.key_up_to_hold(&difference) == group.key_up_to_hold(&Element::IDENTITY);
                if !as_planned {
                    partial::exactly(space, &difference, two, &mut found);
                    if inquiry.depth == Depth::Three && !broken_off {
                        broken_off = deep::triples(space, &difference, shares[2], &mut found, progress);
                    }
                }
                as_planned
            }
            (None, Some(wanted)) => {
                let as_planned = wanted.fits_held(&named, group, size.is_odd());
                if !as_planned {
                    let difference = |named: &State| setting.difference(&outcome(named));
                    whole = partial::explain(space, wanted, &named, &difference, two, &mut found);
                }
                as_planned
            }
            (None, None) => false,
        };
        let assembly = Assembly {
            plan,
            space,
            planned: &setting.planned,
            exactly: exactly.as_ref(),
            wanted: wanted.as_ref(),
        };
        let diagnosis = assembly.diagnosis(&found, as_planned, inquiry, broken_off)?;
        Ok(Diagnosis { whole, unlooked, ..diagnosis })
    }
}
