//! What searching for algorithms needs, kept between two requests.

use std::collections::BTreeSet;
use std::ops::ControlFlow;
use std::rc::Rc;

use blind::CycleCase;
use cube::{Metric, Orbit, Sticker};
use search::conjugate::{Conjugates, Sort};
use search::cycle::{Finder, Limits, Milestone, TurnSet};
use search::ease::Model;
use sheet::{Report, SIZE, Sheet};
use voice::Voice;

use crate::Failure;

/// Cases of a buffer that take much longer than they need to.
type Slow = Rc<BTreeSet<CycleCase>>;

/// What is kept.
#[derive(Default)]
pub(crate) struct Searches {
    report: Option<(Rc<Sheet>, Rc<Report>)>,
    slow: Option<(Rc<Sheet>, Orbit, Sticker, Slow)>,
    conjugates: Vec<(Orbit, Rc<Conjugates>)>,
    finder: Option<(String, usize, Rc<Finder>)>,
    model: Option<Rc<Model>>,
}

/// Bytes that a search may take in a browser: what a phone has to spare.
const MEMORY: u64 = 512 << 20;

impl Searches {
    /// What each row of a sheet does.
    pub fn report(&mut self, sheet: &Rc<Sheet>) -> Rc<Report> {
        if let Some((known, report)) = &self.report
            && Rc::ptr_eq(known, sheet)
        {
            return Rc::clone(report);
        }
        let report = Rc::new(sheet.check());
        self.report = Some((Rc::clone(sheet), Rc::clone(&report)));
        report
    }

    /// Short algorithms for every case of a kind.
    pub fn conjugates(&mut self, orbit: Orbit) -> Rc<Conjugates> {
        if let Some((_, known)) = self.conjugates.iter().find(|(of, _)| *of == orbit) {
            return Rc::clone(known);
        }
        let made = Rc::new(Conjugates::new(SIZE, Sort::ThreeCycle(orbit)));
        self.conjugates.push((orbit, Rc::clone(&made)));
        made
    }

    /// The hands whose time is estimated.
    pub fn model(&mut self) -> Rc<Model> {
        Rc::clone(self.model.get_or_insert_with(|| Rc::new(Model::built_in())))
    }

    /// What searches with turns up to a length; its table of states is what takes the time.
    pub fn finder(
        &mut self,
        voice: &Voice,
        moves: &str,
        longest: usize,
        on: &mut dyn FnMut(Milestone<'_>) -> ControlFlow<()>,
    ) -> Result<Rc<Finder>, Failure> {
        if let Some((known, of, finder)) = &self.finder
            && known == moves
            && *of == longest
        {
            return Ok(Rc::clone(finder));
        }
        // The table of another search gives its memory back first.
        self.finder = None;
        let failed = |error| Failure::new(voice.turn_set_error(&error));
        let execution = TurnSet::parse(SIZE, moves, Metric::Execution).map_err(failed)?;
        let set = TurnSet::new(SIZE, execution.turns(), execution.usual_metric()).map_err(failed)?;
        let limits = Limits { max_length: longest, memory: MEMORY };
        let finder =
            Finder::prepare(set, limits, on).map_err(|error| Failure::new(voice.page_find_error(&error)))?;
        let finder = Rc::new(finder);
        self.finder = Some((moves.to_owned(), longest, Rc::clone(&finder)));
        Ok(finder)
    }

    /// Cases of a buffer for which much easier algorithms are known.
    pub fn slow(&mut self, sheet: &Rc<Sheet>, orbit: Orbit, buffer: Sticker) -> Slow {
        if let Some(known) = self.known_slow(sheet, orbit, buffer) {
            return known;
        }
        let found = sheet.statistics(orbit, buffer, &self.model()).slow;
        let slow: Slow = Rc::new(found.into_iter().map(|slow| slow.case).collect());
        self.slow = Some((Rc::clone(sheet), orbit, buffer, Rc::clone(&slow)));
        slow
    }

    /// The slow cases if they were asked for before.
    pub fn known_slow(&self, sheet: &Rc<Sheet>, orbit: Orbit, buffer: Sticker) -> Option<Slow> {
        let (known, of, with, slow) = self.slow.as_ref()?;
        (Rc::ptr_eq(known, sheet) && (*of, *with) == (orbit, buffer)).then(|| Rc::clone(slow))
    }
}
