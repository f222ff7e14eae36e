//! All algorithms that are known for one case, the easiest first.

use super::fill::searched;
use super::{CycleCase, Known, Origin, Sheet, Verdict, size_of};
use blind::{letters_state, milliseconds};
use cube::{Algorithm, Axis, Rotation, State};
use search::conjugate::Conjugates;
use search::ease::Model;

impl Sheet {
    /// The algorithms that solve a case, in order of estimated time: those of the sheet, what inverting, mirroring and
    /// turning its other right rows gives, and what a search from short commutators finds. Each was applied and is right;
    /// the same turns are listed once, with the nearest origin.
    ///
    /// ```
    /// use blind::Conventions;
    /// use sheet::Origin;
    /// use cube::{Orbit, Size};
    /// use search::conjugate::{Conjugates, Sort};
    /// use search::ease::Model;
    /// let conventions = Conventions::default();
    /// let mut reading = formats::sheet::Reading::new(&conventions);
    /// reading.buffer = Some("UFR".to_owned());
    /// let sheet = formats::sheet::read("pair,algorithm\nUBR RDF,\"[R' D' R, U]\"\n", &reading).unwrap();
    /// let search = Conjugates::new(Size::THREE, Sort::ThreeCycle(Orbit::Corner));
    /// let case = sheet.rows()[0].case.unwrap();
    /// let found = sheet.alternatives(case, &search, &Model::built_in());
    /// assert!(found.iter().any(|known| known.origin == Origin::Sheet));
    /// let found = sheet.alternatives(case.inverse(), &search, &Model::built_in());
    /// assert!(found.iter().any(|known| known.algorithm.to_string() == "[U, R' D' R]"));
    /// ```
    pub fn alternatives(&self, case: CycleCase, search: &Conjugates, model: &Model) -> Vec<Known> {
        let CycleCase { orbit, buffer, first, second } = case;
        let size = size_of(orbit);
        let Some(wanted) = letters_state(size, orbit, buffer, &[first, second]) else { return Vec::new() };
        let undone = wanted.inverse();
        let mut found: Vec<Known> = Vec::new();
        let mut offer = |algorithm: Algorithm, origin: Origin| {
            let turns = algorithm.flatten();
            if State::solved(size).after(&turns) != wanted {
                return;
            }
            match found.iter_mut().find(|known| known.algorithm.flatten() == turns) {
                Some(known) if known.origin > origin => (known.algorithm, known.origin) = (algorithm, origin),
                Some(_) => {}
                None => {
                    let milliseconds = milliseconds(model, &cube::simplified(&turns));
                    found.push(Known { algorithm, origin, milliseconds });
                }
            }
        };
        let held: Vec<(Rotation, State)> =
            Rotation::all().map(|rotation| (rotation, State::solved(size).after(rotation.turns()))).collect();
        let of_kind = |case: CycleCase| case.orbit == orbit;
        for row in self.rows().iter().filter(|row| row.case.is_some_and(of_kind)) {
            let Ok(written) = Algorithm::parse(&row.algorithm, size) else { continue };
            if row.verdict() != Verdict::Right {
                continue;
            }
            for mirror in [false, true] {
                let seen = if mirror { written.mirrored(Axis::X) } else { written.clone() };
                let does = State::solved(size).after(&seen.flatten());
                for (rotation, hold) in &held {
                    // What it does for a cube held another way is known from what it does, without making it again.
                    let there = hold.inverse().then(&does).then(hold);
                    if there != wanted && there != undone {
                        continue;
                    }
                    let made = seen.rotated(*rotation);
                    let plain = !mirror && *rotation == Rotation::NONE;
                    let origin = match (mirror, plain, there == wanted) {
                        (true, ..) => Origin::Mirror,
                        (_, true, true) => row.origin,
                        (_, true, false) => Origin::Inverse,
                        _ => Origin::Rotation,
                    };
                    offer(if there == wanted { made } else { made.inverse() }, origin);
                }
            }
        }
        if let Some(known) = searched(case, search, model) {
            offer(known.algorithm, Origin::Search);
        }
        found.sort_by_key(|known| (known.milliseconds, known.algorithm.flatten().len(), known.origin));
        found
    }
}
