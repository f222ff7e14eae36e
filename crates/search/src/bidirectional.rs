//! The shortest sequence in a given set of turns that takes given stickers to given places, searched from both ends.
//!
//! Breadth first from where the stickers are and from where they shall be, a whole ring at a time, so that the
//! first meeting is proven shortest. It serves any size and any orbits; what it costs is memory for the places passed.

use cube::{NoSuchTurn, Orbit, Size, State, Sticker, Turn};
use rustc_hash::FxHashMap;
use std::ops::ControlFlow;
use thiserror::Error;

/// Which stickers shall go where: everything else may end up anywhere.
///
/// ```
/// use cube::{Orbit, Size, Turn};
/// use search::bidirectional::{Goal, Limits, shortest};
/// use std::ops::ControlFlow;
///
/// let down = Orbit::Corner.sticker("DFR").unwrap();
/// let up = Orbit::Corner.sticker("UFR").unwrap();
/// let goal = Goal::new(Size::THREE).sticker(Orbit::Corner, down, up).unwrap();
/// let turns: Vec<Turn> = Turn::faces().collect();
/// let found = shortest(&goal, &turns, Limits::default(), &mut |_| ControlFlow::Continue(())).unwrap();
/// assert_eq!(found.turns.len(), 2);
/// ```
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Goal {
    size: Size,
    groups: Vec<Group>,
}

/// Stickers that look alike, so that any of them may go to any of the places.
#[derive(Clone, PartialEq, Eq, Debug)]
struct Group {
    orbit: Orbit,
    from: Vec<Sticker>,
    to: Vec<Sticker>,
}

/// Why stickers cannot be asked to go so.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum GoalError {
    /// The size has no such pieces.
    #[error("a {size} has no {orbit}s")]
    NoOrbit {
        /// The kind of piece.
        orbit: Orbit,
        /// The size.
        size: Size,
    },
    /// The numbers of stickers and of places differ.
    #[error("{from} {orbit} stickers cannot go to {to} places")]
    Uneven {
        /// The kind of piece.
        orbit: Orbit,
        /// How many stickers.
        from: usize,
        /// How many places.
        to: usize,
    },
    /// A place occurs twice among those that stickers come from, or among those they go to.
    #[error("the {orbit} place {} occurs twice", .orbit.name(*.place))]
    Twice {
        /// The kind of piece.
        orbit: Orbit,
        /// The place.
        place: Sticker,
    },
    /// The state is of another size.
    #[error("the state is one of a {found}, the goal is for a {expected}")]
    OtherSize {
        /// The size of the goal.
        expected: Size,
        /// The size of the state.
        found: Size,
    },
    /// More stickers than are kept track of.
    #[error("{0} stickers are too many to keep track of; {MOST_POINTS} at most")]
    TooMany(usize),
}

/// How many stickers can be kept track of at once: two whole orbits.
pub const MOST_POINTS: usize = 48;

impl Goal {
    /// Nothing is asked yet.
    pub const fn new(size: Size) -> Self {
        Self { size, groups: Vec::new() }
    }

    /// The size.
    pub const fn size(&self) -> Size {
        self.size
    }

    /// How many stickers are kept track of.
    pub fn points(&self) -> usize {
        self.groups.iter().map(|group| group.from.len()).sum()
    }

    /// Also: the sticker that is now at one place shall go to another.
    ///
    /// # Errors
    /// [`GoalError`] when the size has no such piece, or either place was named before.
    pub fn sticker(self, orbit: Orbit, from: Sticker, to: Sticker) -> Result<Self, GoalError> {
        self.alike(orbit, &[from], &[to])
    }

    /// Also: the stickers that are now at some places shall go to some others, whichever to whichever.
    ///
    /// # Errors
    /// [`GoalError`] when the size has no such pieces, the numbers differ, or a place was named before.
    pub fn alike(mut self, orbit: Orbit, from: &[Sticker], to: &[Sticker]) -> Result<Self, GoalError> {
        if !Orbit::of(self.size).contains(&orbit) {
            return Err(GoalError::NoOrbit { orbit, size: self.size });
        }
        if from.len() != to.len() {
            return Err(GoalError::Uneven { orbit, from: from.len(), to: to.len() });
        }
        self.groups.push(Group { orbit, from: from.to_vec(), to: to.to_vec() });
        self.check_twice(orbit, |group| &group.from)?;
        self.check_twice(orbit, |group| &group.to)?;
        if self.points() > MOST_POINTS {
            return Err(GoalError::TooMany(self.points()));
        }
        Ok(self)
    }

    /// Also: all pieces of an orbit, as they lie in a state, shall go home; centres of one colour are alike.
    ///
    /// # Errors
    /// [`GoalError`] when the state is of another size, the size has no such pieces, or some were named before.
    pub fn solving(self, state: &State, orbit: Orbit) -> Result<Self, GoalError> {
        if state.size() != self.size {
            return Err(GoalError::OtherSize { expected: self.size, found: state.size() });
        }
        let lies = state.orbit(orbit).inverse();
        let mut goal = self;
        if orbit.looks_alike() {
            for face in cube::Face::ALL {
                let home: Vec<Sticker> = Sticker::all().filter(|sticker| sticker.face() == face).collect();
                let from: Vec<Sticker> = home.iter().map(|&sticker| lies.at(sticker)).collect();
                goal = goal.alike(orbit, &from, &home)?;
            }
        } else {
            for home in Sticker::all().filter(|&sticker| orbit.reference(orbit.piece(sticker)) == sticker) {
                goal = goal.sticker(orbit, lies.at(home), home)?;
            }
        }
        Ok(goal)
    }

    fn check_twice(&self, orbit: Orbit, side: impl Fn(&Group) -> &Vec<Sticker>) -> Result<(), GoalError> {
        let mut seen = 0u32;
        for &place in self.groups.iter().filter(|group| group.orbit == orbit).flat_map(side) {
            if seen & (1 << place.index()) != 0 {
                return Err(GoalError::Twice { orbit, place });
            }
            seen |= 1 << place.index();
        }
        Ok(())
    }

    /// Whether some turns do what is asked.
    pub fn is_met_by(&self, turns: &[Turn]) -> bool {
        let state = State::solved(self.size).after(turns);
        self.groups.iter().all(|group| {
            let goes = state.orbit(group.orbit).inverse();
            group.from.iter().all(|&from| group.to.contains(&goes.at(from)))
        })
    }
}

/// Where a search gives up.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Limits {
    /// The most arrangements to look at. Each takes up to some 130 bytes of memory.
    pub nodes: usize,
    /// The longest sequence of interest.
    pub turns: u8,
}

impl Default for Limits {
    /// Two million arrangements, sequences of any length.
    fn default() -> Self {
        Self { nodes: 2_000_000, turns: u8::MAX }
    }
}

/// How far a search has come.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Progress {
    /// Arrangements looked at.
    pub nodes: usize,
    /// Every sequence of fewer turns than this has been ruled out.
    pub at_least: u8,
}

/// A shortest sequence.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Found {
    /// The turns: no sequence of fewer turns of the set does what was asked.
    pub turns: Vec<Turn>,
    /// Arrangements looked at.
    pub nodes: usize,
}

/// Why no sequence was found.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum SearchError {
    /// A turn of the set does not exist on the size.
    #[error(transparent)]
    NoSuchTurn(#[from] NoSuchTurn),
    /// No sequence of the turns does it, however long.
    #[error("no sequence of these turns does it")]
    Impossible,
    /// The shortest sequence is longer than was of interest.
    #[error("it takes more than {0} turns")]
    TooLong(u8),
    /// As many arrangements as were allowed have been looked at.
    #[error("given up after {} arrangements; it takes {} turns or more", .0.nodes, .0.at_least)]
    OutOfNodes(Progress),
    /// The caller asked to stop.
    #[error("stopped after {} arrangements; it takes {} turns or more", .0.nodes, .0.at_least)]
    Cancelled(Progress),
    /// The sequence found does not do what was asked, so it is not given out. That is a fault of the program.
    #[error("the sequence found does not do what was asked; this is a fault of the program")]
    Refuted,
}

/// How many arrangements are looked at between two reports of progress.
const REPORT_EVERY: usize = 1 << 14;

/// Finds a shortest sequence of the given turns that meets a goal; each turn counts one, rotations too.
///
/// `progress` is told from time to time how far the search has come, and may stop it.
///
/// # Errors
/// [`SearchError`] when there is no such sequence, or none was found within the limits.
pub fn shortest(
    goal: &Goal,
    turns: &[Turn],
    limits: Limits,
    progress: &mut dyn FnMut(Progress) -> ControlFlow<()>,
) -> Result<Found, SearchError> {
    turns.iter().try_for_each(|turn| turn.check(goal.size))?;
    let found = match goal.points() {
        0..=8 => Search::<8>::new(goal, turns, limits).run(progress),
        9..=24 => Search::<24>::new(goal, turns, limits).run(progress),
        _ => Search::<MOST_POINTS>::new(goal, turns, limits).run(progress),
    }?;
    if goal.is_met_by(&found.turns) { Ok(found) } else { Err(SearchError::Refuted) }
}

/// The place of each sticker that is kept track of; unused ones stay 0. Alike ones are in order.
type Places<const N: usize> = [u8; N];

/// An arrangement that was reached: from which one, and by which turn (its number in the set).
struct Node<const N: usize> {
    places: Places<N>,
    from: u32,
    turn: u32,
}

/// One end of the search.
struct Front<const N: usize> {
    nodes: Vec<Node<N>>,
    numbers: FxHashMap<Places<N>, u32>,
    /// Where the outermost ring begins in `nodes`.
    ring: usize,
    depth: u8,
    /// For each turn and point: where a sticker goes from each place.
    goes: Vec<Vec<[u8; 24]>>,
}

struct Search<const N: usize> {
    turns: Vec<Turn>,
    limits: Limits,
    /// Points that are alike, as ranges; only those of more than one point.
    alike: Vec<std::ops::Range<usize>>,
    fronts: [Front<N>; 2],
}

impl<const N: usize> Search<N> {
    fn new(goal: &Goal, turns: &[Turn], limits: Limits) -> Self {
        let orbits: Vec<Orbit> =
            goal.groups.iter().flat_map(|group| vec![group.orbit; group.from.len()]).collect();
        let mut alike = Vec::new();
        let mut start = 0;
        for group in &goal.groups {
            alike.push(start..start + group.from.len());
            start += group.from.len();
        }
        alike.retain(|range| range.len() > 1);
        let front = |places: Vec<&Sticker>, backwards: bool| {
            let mut first = [0; N];
            for (entry, place) in first.iter_mut().zip(places) {
                *entry = place.index() as u8;
            }
            sort(&mut first, &alike);
            let goes = turns
                .iter()
                .map(|&turn| {
                    let turn = if backwards { turn.inverse() } else { turn };
                    let state = State::solved(goal.size).after(&[turn]);
                    orbits.iter().map(|&orbit| *state.orbit(orbit).inverse().table()).collect()
                })
                .collect();
            Front {
                nodes: vec![Node { places: first, from: 0, turn: 0 }],
                numbers: std::iter::once((first, 0)).collect(),
                ring: 0,
                depth: 0,
                goes,
            }
        };
        let fronts = [
            front(goal.groups.iter().flat_map(|group| &group.from).collect(), false),
            front(goal.groups.iter().flat_map(|group| &group.to).collect(), true),
        ];
        Self { turns: turns.to_vec(), limits, alike, fronts }
    }

    fn progress(&self) -> Progress {
        Progress {
            nodes: self.fronts[0].nodes.len() + self.fronts[1].nodes.len(),
            at_least: self.fronts[0].depth.saturating_add(self.fronts[1].depth).saturating_add(1),
        }
    }

    fn run(&mut self, tell: &mut dyn FnMut(Progress) -> ControlFlow<()>) -> Result<Found, SearchError> {
        if self.fronts[0].nodes[0].places == self.fronts[1].nodes[0].places {
            return Ok(Found { turns: Vec::new(), nodes: 2 });
        }
        loop {
            let progress = self.progress();
            if progress.at_least > self.limits.turns {
                return Err(SearchError::TooLong(self.limits.turns));
            }
            if tell(progress).is_break() {
                return Err(SearchError::Cancelled(progress));
            }
            let [ahead, back] = &self.fronts;
            let near = usize::from(back.nodes.len() - back.ring < ahead.nodes.len() - ahead.ring);
            if let Some([ahead, back]) = self.grow(near, tell)? {
                let nodes = self.progress().nodes;
                return Ok(Found { turns: self.path(ahead, back), nodes });
            }
            if self.fronts[near].ring == self.fronts[near].nodes.len() {
                return Err(SearchError::Impossible);
            }
        }
    }

    /// Adds a ring to one end; the numbers of the arrangement at both ends where they meet.
    fn grow(
        &mut self,
        near: usize,
        tell: &mut dyn FnMut(Progress) -> ControlFlow<()>,
    ) -> Result<Option<[u32; 2]>, SearchError> {
        let before = self.progress();
        let [first, second] = &mut self.fronts;
        let (front, other) = if near == 0 { (first, second) } else { (second, first) };
        let others = other.nodes.len();
        let ring = front.ring..front.nodes.len();
        front.ring = ring.end;
        for from in ring {
            let places = front.nodes[from].places;
            for turn in 0..front.goes.len() {
                let mut reached = places;
                for (place, goes) in reached.iter_mut().zip(&front.goes[turn]) {
                    *place = goes[*place as usize];
                }
                sort(&mut reached, &self.alike);
                let number = front.nodes.len() as u32;
                let entry = front.numbers.entry(reached);
                if let std::collections::hash_map::Entry::Vacant(free) = entry {
                    free.insert(number);
                    front.nodes.push(Node { places: reached, from: from as u32, turn: turn as u32 });
                    if let Some(&met) = other.numbers.get(&reached) {
                        return Ok(Some(if near == 0 { [number, met] } else { [met, number] }));
                    }
                    let now = Progress { nodes: front.nodes.len() + others, ..before };
                    if now.nodes >= self.limits.nodes {
                        return Err(SearchError::OutOfNodes(now));
                    }
                    if now.nodes.is_multiple_of(REPORT_EVERY) && tell(now).is_break() {
                        return Err(SearchError::Cancelled(now));
                    }
                }
            }
        }
        front.depth = front.depth.saturating_add(1);
        Ok(None)
    }

    /// The turns to the arrangement from the start, then those from it to the goal.
    fn path(&self, mut ahead: u32, mut back: u32) -> Vec<Turn> {
        let mut turns = Vec::new();
        while ahead != 0 {
            let node = &self.fronts[0].nodes[ahead as usize];
            turns.push(self.turns[node.turn as usize]);
            ahead = node.from;
        }
        turns.reverse();
        while back != 0 {
            let node = &self.fronts[1].nodes[back as usize];
            turns.push(self.turns[node.turn as usize]);
            back = node.from;
        }
        turns
    }
}

fn sort<const N: usize>(places: &mut Places<N>, alike: &[std::ops::Range<usize>]) {
    for range in alike {
        places[range.clone()].sort_unstable();
    }
}
