//! The search itself: two halves that meet.

use super::Effect;
use super::symmetry::{Class, classes};
use super::table::{BuildError, KEY_MASK, Table, bytes, lengths, may_follow};
use super::turns::TurnSet;
use cube::{Claim, Element, ElementKey, Left, NotProven, Size, State, Turn};
use std::collections::BTreeSet;
use std::ops::ControlFlow;
use thiserror::Error;

/// How far to search and with how much memory.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Limits {
    /// The greatest length that is searched.
    pub max_length: usize,
    /// Bytes that the table of states may take.
    pub memory: u64,
}

/// Why a search was not done.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum FindError {
    /// The table does not fit.
    #[error("sequences up to {max_length} need {needed} bytes of memory; {allowed} are allowed")]
    Memory {
        /// The length asked for.
        max_length: usize,
        /// Bytes needed, at most.
        needed: u64,
        /// Bytes allowed.
        allowed: u64,
        /// The greatest length for which these are enough; 0 if there is none.
        possible: usize,
    },
    /// The system did not give the memory.
    #[error("the system did not give the {needed} bytes that the search needs")]
    NoMemory {
        /// Bytes needed, at most.
        needed: u64,
    },
    /// The caller stopped it.
    #[error("the search was stopped")]
    Stopped,
    /// An effect of another size than the turns.
    #[error("the effect is one of a {effect}, the turns are for a {turns}")]
    OtherSize {
        /// The effect's.
        effect: Size,
        /// The turns'.
        turns: Size,
    },
    /// A sequence did not do what it was found for, which is a fault of the program.
    #[error(transparent)]
    NotProven(#[from] NotProven),
}

/// What a search tells while it runs. Answer [`ControlFlow::Break`] to stop it.
#[derive(Debug)]
pub enum Milestone<'a> {
    /// All states whose least length this is are known.
    Reached {
        /// The length.
        length: usize,
        /// How many states there are.
        states: u64,
    },
    /// Work on one class of equal effects goes on.
    Searching {
        /// Which class, from 0.
        class: usize,
        /// Of how many.
        classes: usize,
        /// The length that is being searched.
        length: usize,
        /// Thousandths of this length that are done.
        done: u32,
    },
    /// All about one effect; they come class by class.
    Found {
        /// The effect's place in the list.
        place: usize,
        /// What was found.
        finding: &'a Finding,
    },
}

/// The algorithms for an effect.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Finding {
    /// What they do.
    pub effect: Effect,
    /// The least length, proven: all shorter sequences were searched. `None` when there is none up to [`Finding::searched`].
    pub shortest: Option<usize>,
    /// All sequences up to this length were searched.
    pub searched: usize,
    /// All algorithms from the shortest up to `searched`, shortest first, each applied to check it.
    pub algorithms: Vec<Vec<Turn>>,
}

/// A turn set with its table of states, ready to search for effects.
pub struct Finder {
    set: TurnSet,
    table: Table,
    max_length: usize,
}

/// What was found for one effect of a class.
struct Listed {
    shortest: Option<usize>,
    searched: usize,
    sequences: Vec<Vec<Turn>>,
}

/// A state of the far half from which the near half was met.
struct Hit {
    /// The state, reached by sequences of `length`.
    key: ElementKey,
    length: usize,
    /// What was made after it, as axis and number of the effect about it.
    then: Vec<(u8, u8)>,
    /// The lengths of the near half, as bits.
    near: u32,
}

/// A search for one effect, with what was met so far by length of the far half.
struct Meeting<'a> {
    finder: &'a Finder,
    before: Left,
    met: Vec<Option<Vec<Hit>>>,
}

impl Finder {
    /// The bytes that a search up to a length needs at most, and the least it can do with, more slowly.
    ///
    /// ```
    /// use cube::Size;
    /// use search::cycle::{Finder, TurnSet};
    /// let (best, least) = Finder::needs(&TurnSet::faces(Size::THREE).unwrap(), 10);
    /// assert!(least < best && best < 50_000_000);
    /// ```
    pub fn needs(set: &TurnSet, max_length: usize) -> (u64, u64) {
        let radius = max_length.div_ceil(2);
        (bytes(set, radius), bytes(set, radius.saturating_sub(1)))
    }

    /// Builds the table of states. It holds half the greatest length, or one turn less if only that fits, which
    /// makes the search of the last lengths slower.
    ///
    /// # Errors
    /// [`FindError::Memory`] when not even that fits, [`FindError::NoMemory`], [`FindError::Stopped`].
    pub fn prepare(
        set: TurnSet,
        limits: Limits,
        on: &mut dyn FnMut(Milestone<'_>) -> ControlFlow<()>,
    ) -> Result<Self, FindError> {
        let Limits { max_length, memory } = limits;
        // No table of so many lengths fits any machine; the arithmetic below saturates well before.
        let half = max_length.div_ceil(2).min(super::table::MOST_LENGTHS - 1);
        let radius = [half, half.saturating_sub(1)].into_iter().find(|&radius| bytes(&set, radius) <= memory);
        let (needed, radius) = match radius {
            Some(radius) if max_length <= 2 * half => (bytes(&set, radius), radius),
            _ => {
                let needed = bytes(&set, half.saturating_sub(1));
                let fits = |&radius: &usize| bytes(&set, radius) <= memory;
                let possible = (0..super::table::MOST_LENGTHS - 1).take_while(fits).count() * 2;
                return Err(FindError::Memory { max_length, needed, allowed: memory, possible });
            }
        };
        let table = Table::build(&set, radius, &mut |length, states| {
            on(Milestone::Reached { length, states }).is_continue()
        })
        .map_err(|error| match error {
            BuildError::Memory => FindError::NoMemory { needed },
            BuildError::Stopped => FindError::Stopped,
        })?;
        Ok(Self { set, table, max_length })
    }

    /// The turns it uses.
    pub const fn turn_set(&self) -> &TurnSet {
        &self.set
    }

    /// How many states have each length as their least, as far as the table goes: the sizes of the spheres.
    pub fn states_by_length(&self) -> &[u64] {
        self.table.spheres()
    }

    /// All algorithms for effects: the shortest, and those up to `extra` longer as far as the greatest length.
    ///
    /// Findings are told through [`Milestone::Found`] as soon as their class is done, every algorithm applied before.
    ///
    /// # Errors
    /// [`FindError::OtherSize`], [`FindError::Stopped`]; what was told before stands.
    pub fn find(
        &self,
        effects: &[Effect],
        extra: usize,
        on: &mut dyn FnMut(Milestone<'_>) -> ControlFlow<()>,
    ) -> Result<(), FindError> {
        if let Some(other) = effects.iter().find(|effect| effect.size() != self.set.size()) {
            return Err(FindError::OtherSize { effect: other.size(), turns: self.set.size() });
        }
        let states: Vec<State> = effects.iter().map(|effect| *effect.state()).collect();
        let classes = classes(&states, &self.set);
        for (number, class) in classes.iter().enumerate() {
            let mut at = |length: usize, done: u32| {
                on(Milestone::Searching { class: number, classes: classes.len(), length, done })
            };
            let listed = self.search(&effects[class.searched], extra, &mut at)?;
            self.hand_out(class, effects, &listed, on)?;
        }
        Ok(())
    }

    /// As [`Finder::find`], all findings at once in the order of the effects, without being told of progress.
    ///
    /// # Errors
    /// As [`Finder::find`].
    pub fn find_all(&self, effects: &[Effect], extra: usize) -> Result<Vec<Finding>, FindError> {
        let mut findings: Vec<Option<Finding>> = vec![None; effects.len()];
        self.find(effects, extra, &mut |event| {
            if let Milestone::Found { place, finding } = event {
                findings[place] = Some(finding.clone());
            }
            ControlFlow::Continue(())
        })?;
        Ok(findings.into_iter().flatten().collect())
    }

    fn hand_out(
        &self,
        class: &Class,
        effects: &[Effect],
        listed: &Listed,
        on: &mut dyn FnMut(Milestone<'_>) -> ControlFlow<()>,
    ) -> Result<(), FindError> {
        for &(place, passage) in &class.members {
            let effect = effects[place];
            let mut algorithms: Vec<Vec<Turn>> =
                listed.sequences.iter().map(|turns| passage.carry(turns)).collect();
            let does = |turns: &Vec<Turn>| State::solved(self.set.size()).after(turns) == *effect.state();
            NotProven::unless(algorithms.iter().all(does), Claim::Algorithm)?;
            algorithms.sort_by_cached_key(|turns| (self.set.cost(turns), turns.clone()));
            let Listed { shortest, searched, .. } = *listed;
            let finding = Finding { effect, shortest, searched, algorithms };
            if on(Milestone::Found { place, finding: &finding }).is_break() {
                return Err(FindError::Stopped);
            }
        }
        Ok(())
    }

    /// All algorithms for one effect, length by length.
    ///
    /// # Errors
    /// [`FindError::OtherSize`].
    pub fn by_length(&self, effect: &Effect) -> Result<ByLength<'_>, FindError> {
        if effect.size() != self.set.size() {
            return Err(FindError::OtherSize { effect: effect.size(), turns: self.set.size() });
        }
        let before = Left::new(&self.set.group().element(effect.state()));
        let meeting = Meeting { finder: self, before, met: Vec::new() };
        Ok(ByLength { meeting, state: *effect.state(), length: 0 })
    }

    fn search(
        &self,
        effect: &Effect,
        extra: usize,
        on: &mut dyn FnMut(usize, u32) -> ControlFlow<()>,
    ) -> Result<Listed, FindError> {
        let mut listed = Listed { shortest: None, searched: 0, sequences: Vec::new() };
        let mut by_length = self.by_length(effect)?;
        while let Some(AtLength { length, algorithms }) = by_length.next(on)? {
            listed.searched = length;
            if !algorithms.is_empty() && listed.shortest.is_none() {
                listed.shortest = Some(length);
            }
            listed.sequences.extend(algorithms);
            if listed.shortest.is_some_and(|shortest| length >= shortest.saturating_add(extra)) {
                break;
            }
        }
        Ok(listed)
    }
}

/// All algorithms of one length.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct AtLength {
    /// The length.
    pub length: usize,
    /// The algorithms, in the order of their turns.
    pub algorithms: Vec<Vec<Turn>>,
}

/// The algorithms for an effect, length by length; see [`Finder::by_length`].
pub struct ByLength<'a> {
    meeting: Meeting<'a>,
    state: State,
    length: usize,
}

impl ByLength<'_> {
    /// The next length, from 0, with all its algorithms, each applied to check it; `None` after the greatest.
    ///
    /// `on` hears of the length that is searched and how much of it is done, in thousandths, and may stop it.
    ///
    /// # Errors
    /// [`FindError::Stopped`], or [`FindError::NotProven`] for a fault of the search.
    pub fn next(
        &mut self,
        on: &mut dyn FnMut(usize, u32) -> ControlFlow<()>,
    ) -> Result<Option<AtLength>, FindError> {
        let finder = self.meeting.finder;
        let length = self.length;
        if length > finder.max_length {
            return Ok(None);
        }
        let found: Vec<Vec<Turn>> = self
            .meeting
            .sequences(finder.set.group().key(&finder.set.group().element(&self.state)), length, on)?
            .into_iter()
            .map(|turns| turns.into_iter().map(|number| finder.set.turn(number)).collect())
            .collect();
        let solved = State::solved(finder.set.size());
        let leads = |turns: &Vec<Turn>| solved.after(turns) == self.state;
        NotProven::unless(found.iter().all(leads), Claim::Algorithm)?;
        self.length += 1;
        Ok(Some(AtLength { length, algorithms: found }))
    }
}

impl Meeting<'_> {
    /// All listed sequences of a length for the effect.
    fn sequences(
        &mut self,
        effect: ElementKey,
        length: usize,
        on: &mut dyn FnMut(usize, u32) -> ControlFlow<()>,
    ) -> Result<BTreeSet<Vec<u8>>, FindError> {
        let finder = self.finder;
        let (set, table) = (&finder.set, &finder.table);
        let mut found = BTreeSet::new();
        if length <= table.radius() {
            if table.lengths(effect) >> length & 1 == 1 {
                found.extend(table.sequences(set, effect, length));
            }
            return Ok(found);
        }
        // A sequence passes one of so many successive lengths, since no turn counts more.
        let dearest = set.dearest();
        let most = table.radius().min(usize::midpoint(length, dearest));
        for near in (most + 1).saturating_sub(dearest)..=most {
            let far = length - near;
            self.meet(far, &mut |done| on(length, done))?;
            for hit in self.met[far].iter().flatten().filter(|hit| hit.near >> near & 1 == 1) {
                self.join(hit, near, &mut found);
            }
        }
        found.retain(|turns| set.lists(turns));
        Ok(found)
    }

    /// Joins the two halves of a hit in every way.
    fn join(&self, hit: &Hit, near: usize, found: &mut BTreeSet<Vec<u8>>) {
        let Finder { set, table, .. } = self.finder;
        let mut met = set.group().unpacked(self.before.then(hit.key));
        let mut middles: Vec<Vec<u8>> = vec![Vec::new()];
        for &(axis, number) in &hit.then {
            let effect = &set.about(axis as usize)[number as usize];
            met = met.then(&effect.element);
            middles = effect
                .runs
                .iter()
                .flat_map(|run| {
                    middles.iter().map(|before| [before.as_slice(), run.turns.as_slice()].concat())
                })
                .collect();
        }
        let starts = table.sequences(set, set.group().key(&met), near);
        for far in table.sequences(set, hit.key, hit.length) {
            for middle in &middles {
                let back: Vec<u8> = middle.iter().rev().chain(far.iter().rev()).copied().collect();
                let end: Vec<u8> = back.iter().map(|&number| set.undoing(number)).collect();
                found.extend(starts.iter().map(|start| set.in_order([start.as_slice(), &end].concat())));
            }
        }
    }

    /// Finds all states of the far half at a length whose product with the effect is in the table.
    fn meet(&mut self, far: usize, on: &mut dyn FnMut(u32) -> ControlFlow<()>) -> Result<(), FindError> {
        while self.met.len() <= far {
            self.met.push(None);
        }
        if self.met[far].is_some() {
            return Ok(());
        }
        let table = &self.finder.table;
        let radius = table.radius();
        // Of what lies nearer than the far half, other lengths tell nothing new.
        let wanted = u32::MAX >> (31 - (far + self.finder.set.dearest()).min(31));
        let mut hits = Vec::new();
        if far <= radius {
            Self::sweep(table.level(far), &mut hits, on, &|slot, hits| self.look(slot, far, wanted, hits))?;
        } else {
            // Beyond the table each sequence goes on from the last end of a run within it.
            for length in 0..=radius {
                Self::sweep(table.level(length), &mut hits, on, &|slot, hits| {
                    self.look_beyond(slot, length, far, wanted, hits);
                })?;
            }
        }
        self.met[far] = Some(hits);
        Ok(())
    }

    /// Goes through slots in parts, so that it can be stopped between them.
    fn sweep(
        slots: &[ElementKey],
        hits: &mut Vec<Hit>,
        on: &mut dyn FnMut(u32) -> ControlFlow<()>,
        look: &(dyn Fn(u128, &mut Vec<Hit>) + Sync),
    ) -> Result<(), FindError> {
        const PART: usize = 1 << 18;
        for (part, chunk) in slots.chunks(PART).enumerate() {
            let done = (part * PART) as u64 * 1000 / slots.len() as u64;
            if on(done as u32).is_break() {
                return Err(FindError::Stopped);
            }
            hits.extend(sweep_part(chunk, look));
        }
        Ok(())
    }

    #[inline]
    fn look(&self, slot: u128, length: usize, wanted: u32, hits: &mut Vec<Hit>) {
        if lengths(slot) >> length & 1 == 0 {
            return;
        }
        let key = slot & KEY_MASK;
        let near = self.finder.table.lengths(self.before.then(key)) & wanted;
        if near != 0 {
            hits.push(Hit { key, length, then: Vec::new(), near });
        }
    }

    fn look_beyond(&self, slot: u128, length: usize, far: usize, wanted: u32, hits: &mut Vec<Hit>) {
        if lengths(slot) >> length & 1 == 0 {
            return;
        }
        let key = slot & KEY_MASK;
        let element = self.finder.set.group().unpacked(self.before.then(key));
        let mut then = Vec::new();
        for axis in (0..3).filter(|&axis| may_follow(slot, axis)) {
            for (number, effect) in self.finder.set.about(axis).iter().enumerate() {
                // The first run must lead out of the table, or the state would be met from further on.
                let reached = length + effect.cost;
                if reached > self.finder.table.radius() && reached <= far {
                    then.push((axis as u8, number as u8));
                    self.go_on(
                        Beyond { key, length, left: far - reached, wanted },
                        &element,
                        &effect.element,
                        &mut then,
                        hits,
                    );
                    then.pop();
                }
            }
        }
    }

    /// Goes on from the state of `before` and then `run`.
    fn go_on(
        &self,
        from: Beyond,
        before: &Element,
        run: &Element,
        then: &mut Vec<(u8, u8)>,
        hits: &mut Vec<Hit>,
    ) {
        let Finder { set, table, .. } = self.finder;
        if from.left == 0 {
            let near = table.lengths(set.group().key_of_product(before, run)) & from.wanted;
            if near != 0 {
                hits.push(Hit { key: from.key, length: from.length, then: then.clone(), near });
            }
            return;
        }
        let element = before.then(run);
        let last = then.last().map_or(3, |&(axis, _)| axis as usize);
        for axis in (0..3).filter(|&axis| axis != last) {
            for (number, effect) in set.about(axis).iter().enumerate() {
                if effect.cost <= from.left {
                    then.push((axis as u8, number as u8));
                    let next = Beyond { left: from.left - effect.cost, ..from };
                    self.go_on(next, &element, &effect.element, then, hits);
                    then.pop();
                }
            }
        }
    }
}

/// A state at the rim of the table, and how far to go on from it.
#[derive(Clone, Copy)]
struct Beyond {
    key: ElementKey,
    length: usize,
    left: usize,
    wanted: u32,
}

#[cfg(feature = "parallel")]
fn sweep_part(slots: &[ElementKey], look: &(dyn Fn(u128, &mut Vec<Hit>) + Sync)) -> Vec<Hit> {
    use rayon::prelude::*;
    slots
        .par_chunks(1 << 12)
        .flat_map_iter(|chunk| {
            let mut hits = Vec::new();
            for &slot in chunk {
                look(slot, &mut hits);
            }
            hits
        })
        .collect()
}

#[cfg(not(feature = "parallel"))]
fn sweep_part(slots: &[ElementKey], look: &(dyn Fn(u128, &mut Vec<Hit>) + Sync)) -> Vec<Hit> {
    let mut hits = Vec::new();
    for &slot in slots {
        look(slot, &mut hits);
    }
    hits
}
