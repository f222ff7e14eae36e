//! The states of one kind, grouped by what a condition asks of them.

use super::alike;
use super::count::{Class, classes};
use super::draw::{below, draw};
use super::occur::{Question, count};
use super::space::KindSpace;
use super::tally::{Tally, Watched};
use crate::condition::{Against, Aspect, Condition, Feature, Occurs, Term};
use blind::{Breaks, Trace};
use cube::{NotProven, Orbit, Perm, Sticker};
use rand::Rng;
use rustc_hash::FxHashMap;

/// States that are alike in all that the condition asks for.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) struct Row {
    pub tally: Tally,
    /// Which occurrence tests are met, a bit each; `None` if that could not be counted.
    pub met: Option<u32>,
    pub weight: u128,
}

/// Classes of the same figures, and for each how many states it and those before it hold.
#[derive(Clone, Default)]
struct Group {
    classes: Vec<(u128, usize)>,
}

/// Classes of states.
enum Classes {
    /// Of pieces that are told apart.
    Apart(Vec<Class>),
    /// Of pieces that look alike.
    Alike(Vec<alike::Division>),
    /// Of pieces that look alike and of which nothing is asked: all states together, counted as one.
    Unasked,
}

/// The states of one kind.
pub(crate) struct Table {
    pub space: KindSpace,
    pub watched: Watched,
    pub tests: Vec<Occurs>,
    pub rows: Vec<Row>,
    /// The order in which cycles are broken into; none where that goes by cost, so that a letter depends on all others.
    order: Option<[Sticker; 24]>,
    classes: Classes,
    groups: FxHashMap<Tally, Group>,
}

impl Table {
    /// Counts the states of a kind.
    pub(crate) fn new(space: KindSpace, condition: &Condition, order: Option<[Sticker; 24]>) -> Self {
        let Asked { watched, figures, tests } = asked(condition, space.orbit);
        let looks_alike = space.orbit.looks_alike();
        if looks_alike && !figures {
            // Each way to look is as likely as any other.
            let met = tests.is_empty().then_some(0);
            let rows = vec![Row { tally: Tally::default(), met, weight: 1 }];
            let (classes, groups) = (Classes::Unasked, FxHashMap::default());
            return Self { space, watched, tests, rows, order, classes, groups };
        }
        let classes =
            if looks_alike { Classes::Alike(alike::divisions()) } else { Classes::Apart(classes(&space)) };
        let weighed: Vec<(Tally, u128)> = match &classes {
            Classes::Apart(classes) => {
                classes.iter().map(|class| (class.tally(&space, &watched), class.weight)).collect()
            }
            Classes::Alike(classes) => {
                classes.iter().map(|class| (class.tally(&watched), class.weight)).collect()
            }
            Classes::Unasked => Vec::new(),
        };
        let mut groups: FxHashMap<Tally, Group> = FxHashMap::default();
        for (at, (tally, weight)) in weighed.into_iter().enumerate() {
            let group = groups.entry(tally).or_default();
            let before = group.weight();
            group.classes.push((before + weight, at));
        }
        let counts = if tests.is_empty() {
            Some(groups.iter().map(|(&tally, group)| ((tally, 0), group.weight())).collect())
        } else {
            let question = |order| Question { space: &space, watched: &watched, tests: &tests, order };
            // Which letters stand for pieces that look alike only their trace tells.
            order.as_ref().filter(|_| !looks_alike).and_then(|order| count(&question(order)))
        };
        let mut rows: Vec<Row> = match counts {
            Some(counts) => counts
                .into_iter()
                .map(|((tally, met), weight)| Row { tally, met: Some(met), weight })
                .collect(),
            None => groups
                .iter()
                .map(|(&tally, group)| Row { tally, met: None, weight: group.weight() })
                .collect(),
        };
        // The order of a hash table is no order; the same seed must give the same state everywhere.
        rows.sort_unstable_by_key(|row| (row.tally, row.met));
        Self { space, watched, tests, rows, order, classes, groups }
    }

    /// The figure of a row, which the condition asks for.
    pub(crate) fn figure(&self, row: &Row, aspect: Aspect) -> u8 {
        self.watched.get(row.tally, aspect).unwrap_or(0)
    }

    /// How many states there are for each that is counted: of pieces that look alike and of which nothing is asked 24! / 4!⁶.
    pub(crate) fn uncounted(&self) -> u128 {
        match self.classes {
            Classes::Apart(_) | Classes::Alike(_) => 1,
            Classes::Unasked => alike::divisions().iter().map(|class| class.weight).sum(),
        }
    }

    /// Whether the states of a row meet a test.
    pub(crate) fn meets(&self, row: &Row, test: &Occurs) -> Option<bool> {
        let at = self.tests.iter().position(|known| known == test)?;
        row.met.map(|met| met & (1 << at) != 0)
    }

    /// Draws one of the states that have the figures of a row: first a class by its weight, then a state.
    pub(crate) fn draw(&self, row: &Row, generator: &mut impl Rng) -> Perm {
        if let Classes::Unasked = self.classes {
            return search::random::order(generator);
        }
        let Some(group) = self.groups.get(&row.tally) else { return Perm::IDENTITY };
        let at = below(group.weight(), generator);
        let found = group.classes.partition_point(|&(up_to, _)| up_to <= at);
        let Some(&(_, class)) = group.classes.get(found) else { return Perm::IDENTITY };
        match &self.classes {
            Classes::Apart(classes) => draw(&self.space, &classes[class], generator),
            Classes::Alike(classes) => alike::draw(&classes[class], self.space.buffer, generator),
            Classes::Unasked => Perm::IDENTITY,
        }
    }

    /// Whether a state of the figures of a row meets just the tests that the row says.
    ///
    /// # Errors
    /// [`NotProven`] for a memo that does not solve, a fault of the program.
    pub(crate) fn is_of(&self, row: &Row, seen: &Perm) -> Result<bool, NotProven> {
        let (Some(met), Some(order)) = (row.met, self.order) else { return Ok(true) };
        if self.tests.is_empty() {
            return Ok(true);
        }
        let breaks = Breaks { order, cost: None };
        let trace = Trace::new(self.space.orbit, seen, self.space.buffer, &breaks)?;
        let as_said = |(at, test): (usize, &Occurs)| test.in_memo(&trace) == (met & (1 << at) != 0);
        Ok(self.tests.iter().enumerate().all(as_said))
    }
}

impl Group {
    fn weight(&self) -> u128 {
        self.classes.last().map_or(0, |&(up_to, _)| up_to)
    }
}

/// What a condition asks of a kind.
struct Asked {
    watched: Watched,
    /// Whether it asks for a figure at all.
    figures: bool,
    tests: Vec<Occurs>,
}

fn asked(condition: &Condition, orbit: Orbit) -> Asked {
    let mut aspects = Vec::new();
    let mut tests: Vec<Occurs> = Vec::new();
    let mut feature = |feature: Feature| match feature {
        Feature::Of(of, aspect) if of == orbit => aspects.push(aspect),
        Feature::Letters => aspects.push(Aspect::Targets),
        _ => {}
    };
    condition.visit(&mut |term| match term {
        Term::Compare(left, _, against) => {
            feature(*left);
            if let Against::Feature(right) = against {
                feature(*right);
            }
        }
        Term::Occurs(test) if test.orbit == orbit && !tests.contains(test) => tests.push(test.clone()),
        _ => {}
    });
    Asked { figures: !aspects.is_empty(), watched: Watched::new(aspects), tests }
}
