//! How far a sheet goes and how good it is.

use super::fill::{known, searched};
use super::{CycleCase, Known, Origin, Sheet, Verdict, size_of};
use blind::milliseconds;
use cube::{Algorithm, Orbit, Sticker, count};
use search::conjugate::Conjugates;
use search::ease::Model;
use std::collections::BTreeMap;

/// How many of the hardest cases are listed.
const WORST: usize = 10;

/// A case whose algorithm takes much longer than another that is known.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Slow {
    /// The case.
    pub case: CycleCase,
    /// The estimated time of the sheet's easiest, in thousandths of a second.
    pub milliseconds: u32,
    /// What is easier.
    pub best: Known,
}

/// Statistics of a sheet for one buffer.
#[derive(Clone, PartialEq, Debug)]
pub struct Statistics {
    /// How many cases there are: 378 of corners, 440 of edges, 506 of wings and centres.
    pub cases: usize,
    /// How many have a right algorithm.
    pub covered: usize,
    /// Cases without one.
    pub missing: Vec<CycleCase>,
    /// How many of the right algorithms are of each origin.
    pub by_origin: BTreeMap<Origin, usize>,
    /// Mean number of moves of the easiest right algorithms, a slice counted as one.
    pub mean_moves: f64,
    /// Mean estimated time in seconds of the same.
    pub mean_seconds: f64,
    /// The hardest cases, the hardest first, with their estimated times in thousandths of a second.
    pub worst: Vec<(CycleCase, u32)>,
    /// Cases much slower than the best known: half as long again, or more; the greatest loss first.
    pub slow: Vec<Slow>,
}

impl Sheet {
    /// Statistics for a buffer. The best known for a case is the easiest of the sheet's own, what inverting, mirroring and
    /// turning them gives, and what a search from short commutators finds.
    pub fn statistics(&self, orbit: Orbit, buffer: Sticker, model: &Model) -> Statistics {
        let mut own: BTreeMap<CycleCase, (u32, usize)> = BTreeMap::new();
        let mut by_origin = BTreeMap::new();
        for row in self.rows() {
            let Some(case) = row.case.filter(|case| (case.orbit, case.buffer) == (orbit, buffer)) else {
                continue;
            };
            if row.verdict() != Verdict::Right {
                continue;
            }
            let Ok(read) = Algorithm::parse(&row.algorithm, size_of(orbit)) else { continue };
            *by_origin.entry(row.origin).or_insert(0) += 1;
            let turns = cube::simplified(&read.flatten());
            let found = (milliseconds(model, &turns), count(&turns).slice);
            let place = own.entry(case).or_insert(found);
            *place = (*place).min(found);
        }
        let all: Vec<CycleCase> = CycleCase::all(orbit, buffer).collect();
        let missing: Vec<CycleCase> = all.iter().copied().filter(|case| !own.contains_key(case)).collect();
        let mean = |of: &dyn Fn(&(u32, usize)) -> f64| {
            if own.is_empty() { 0.0 } else { own.values().map(of).sum::<f64>() / own.len() as f64 }
        };
        let mut worst: Vec<(CycleCase, u32)> = own.iter().map(|(case, &(time, _))| (*case, time)).collect();
        worst.sort_by_key(|&(case, time)| (std::cmp::Reverse(time), case));
        worst.truncate(WORST);
        Statistics {
            cases: all.len(),
            covered: own.len(),
            missing,
            by_origin,
            mean_moves: mean(&|&(_, moves)| moves as f64),
            mean_seconds: mean(&|&(time, _)| f64::from(time) / 1000.0),
            worst,
            slow: self.slow(orbit, buffer, model, &own),
        }
    }

    fn slow(
        &self,
        orbit: Orbit,
        buffer: Sticker,
        model: &Model,
        own: &BTreeMap<CycleCase, (u32, usize)>,
    ) -> Vec<Slow> {
        if own.is_empty() {
            return Vec::new();
        }
        let known = known(self, orbit, buffer, model);
        let search = Conjugates::three_cycles(size_of(orbit), orbit);
        let mut slow = Vec::new();
        for (&case, &(time, _)) in own {
            let derived = known.get(&case).into_iter().flat_map(BTreeMap::values).cloned();
            let Some(best) =
                derived.chain(searched(case, search, model)).min_by_key(|known| known.milliseconds)
            else {
                continue;
            };
            if u64::from(time) * 2 >= u64::from(best.milliseconds) * 3 {
                slow.push(Slow { case, milliseconds: time, best });
            }
        }
        slow.sort_by_key(|slow| (std::cmp::Reverse(slow.milliseconds - slow.best.milliseconds), slow.case));
        slow
    }
}
