//! Filling the gaps of a sheet.

use super::check::ring;
use super::{CycleCase, Origin, Row, Sheet, Verdict, size_of};
use blind::{letters_state, milliseconds};
use cube::{Algorithm, Axis, Orbit, Rotation, State, Sticker, display_turns, simplified};
use search::conjugate::Conjugates;
use search::ease::Model;
use std::collections::{BTreeMap, BTreeSet};

/// An algorithm that is known for a case.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Known {
    /// The algorithm, applied and found right.
    pub algorithm: Algorithm,
    /// Where it comes from.
    pub origin: Origin,
    /// The estimated time in thousandths of a second.
    pub milliseconds: u32,
}

/// A sheet with its gaps filled.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Filled {
    /// The sheet: its own rows, and after them one for each case that had no right algorithm.
    pub sheet: Sheet,
    /// How many were filled in, by origin.
    pub by_origin: BTreeMap<Origin, usize>,
}

/// How many algorithms of a case are inverted, mirrored and turned: the easiest, each once however often the sheet has it.
const MOST_OF_CASE: usize = 16;

/// The easiest right algorithms of each case of a kind, and where they come from.
fn easiest(sheet: &Sheet, orbit: Orbit, model: &Model) -> Vec<(Algorithm, Origin)> {
    let mut written: BTreeSet<(CycleCase, &str)> = BTreeSet::new();
    let mut of_case: BTreeMap<CycleCase, Vec<(u32, Algorithm, Origin)>> = BTreeMap::new();
    let size = size_of(orbit);
    for row in sheet.rows() {
        let Some(case) = row.case.filter(|case| case.orbit == orbit) else { continue };
        if !written.insert((case, row.algorithm.as_str())) || row.verdict() != Verdict::Right {
            continue;
        }
        let Ok(algorithm) = Algorithm::parse(&row.algorithm, size) else { continue };
        let time = milliseconds(model, &simplified(&algorithm.flatten()));
        let kept = of_case.entry(case).or_default();
        let at = kept.partition_point(|(other, ..)| *other <= time);
        if at < MOST_OF_CASE {
            kept.insert(at, (time, algorithm, row.origin));
            kept.truncate(MOST_OF_CASE);
        }
    }
    of_case.into_values().flatten().map(|(_, algorithm, origin)| (algorithm, origin)).collect()
}

/// The right algorithms of a sheet for a buffer, and what inverting, mirroring and turning them gives, by case; for
/// each case and origin the easiest.
pub(super) fn known(
    sheet: &Sheet,
    orbit: Orbit,
    buffer: Sticker,
    model: &Model,
) -> BTreeMap<CycleCase, BTreeMap<Origin, Known>> {
    let mut all: BTreeMap<CycleCase, BTreeMap<Origin, Known>> = BTreeMap::new();
    let mut offer = |algorithm: &Algorithm, origin: Origin| {
        let state = State::solved(size_of(orbit)).after(&algorithm.flatten());
        let Some([from, first, second]) = ring(&state, orbit, Some(buffer)) else { return };
        if from != buffer {
            return;
        }
        let milliseconds = milliseconds(model, &simplified(&algorithm.flatten()));
        let known = Known { algorithm: algorithm.clone(), origin, milliseconds };
        let place = all.entry(CycleCase { orbit, buffer, first, second }).or_default();
        if place.get(&origin).is_none_or(|other| known.milliseconds < other.milliseconds) {
            place.insert(origin, known);
        }
    };
    for (algorithm, origin) in easiest(sheet, orbit, model) {
        for rotation in Rotation::all() {
            let turned = algorithm.rotated(rotation);
            let mirrored = algorithm.mirrored(Axis::X).rotated(rotation);
            if rotation == Rotation::NONE {
                offer(&turned, origin);
                offer(&turned.inverse(), Origin::Inverse);
            } else {
                for made in [turned.inverse(), turned] {
                    offer(&made, Origin::Rotation);
                }
            }
            for made in [mirrored.inverse(), mirrored] {
                offer(&made, Origin::Mirror);
            }
        }
    }
    all
}

/// An algorithm found by search for a case.
pub(super) fn searched(case: CycleCase, search: &Conjugates, model: &Model) -> Option<Known> {
    let wanted = letters_state(size_of(case.orbit), case.orbit, case.buffer, &[case.first, case.second])?;
    let algorithm = search.leading_to(&wanted)?;
    let milliseconds = milliseconds(model, &simplified(&algorithm.flatten()));
    Some(Known { algorithm, origin: Origin::Search, milliseconds })
}

impl Sheet {
    /// Fills the gaps for a buffer: a case without a right algorithm gets the inverse of one that is there, a mirror
    /// image, one for a cube held another way, or one found by search, the first of these that there is.
    ///
    /// Rows of the sheet stay as they are, wrong ones too. Every algorithm that is added was applied and is right.
    ///
    /// ```
    /// use blind::Conventions;
    /// use sheet::Origin;
    /// use cube::Orbit;
    /// use search::ease::Model;
    /// let conventions = Conventions::default();
    /// let mut reading = formats::sheet::Reading::new(&conventions);
    /// reading.buffer = Some("UFR".to_owned());
    /// let sheet = formats::sheet::read("pair,algorithm\nUBR RDF,\"[R' D' R, U]\"\n", &reading).unwrap();
    /// let buffer = Orbit::Corner.sticker("UFR").unwrap();
    /// let filled = sheet.fill(Orbit::Corner, buffer, &Model::built_in());
    /// assert_eq!(filled.sheet.rows().len(), 378);
    /// assert_eq!(filled.by_origin[&Origin::Inverse], 1);
    /// assert_eq!(filled.sheet.check().right(), 378);
    /// ```
    pub fn fill(&self, orbit: Orbit, buffer: Sticker, model: &Model) -> Filled {
        let known = known(self, orbit, buffer, model);
        let search = Conjugates::three_cycles(size_of(orbit), orbit);
        let mut rows = self.rows().to_vec();
        let mut by_origin = BTreeMap::new();
        for case in CycleCase::all(orbit, buffer) {
            let there = known.get(&case);
            let own = self.rows().iter().any(|row| row.case == Some(case) && row.verdict() == Verdict::Right);
            if own {
                continue;
            }
            let found = there
                .and_then(|origins| origins.values().next().cloned())
                .or_else(|| searched(case, search, model));
            let Some(found) = found else { continue };
            *by_origin.entry(found.origin).or_insert(0) += 1;
            rows.push(Row::made(case, written(&found.algorithm), found.origin));
        }
        Filled { sheet: Self { layout: self.layout, more: self.more.clone(), rows }, by_origin }
    }
}

/// With its brackets where it has any.
fn written(algorithm: &Algorithm) -> String {
    let plain = display_turns(&algorithm.flatten()).to_string();
    let bracketed = algorithm.to_string();
    if bracketed.is_empty() { plain } else { bracketed }
}
