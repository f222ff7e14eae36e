//! The two phases before wings are paired: the colours of one axis onto their faces, and then all else so that the turns of the last
//! phase suffice.
//!
//! In the second phase the centres come onto their axes, in patterns that the next phase can make whole, and one wing of each edge
//! comes to a first place. Which one is left open, but that an even number of them be of the other class: of 2,704,156 sets of twelve wings 2,048 will
//! do, so that a way that is right by its centres is right by its wings one time in 1,320.

use super::pairing::{Pairing, Position};
use super::places::{Carrier, Edges, all_turns, keeps_axis, on};
use crate::solve::distances::{Distances, Space};
use crate::solve::kept::Kept;
use crate::solve::subsets::Subsets;
use crate::solve::succession::{Choices, Succession};
use cube::{Amount, Block, Face, Orbit, Perm, Rotation, Size, State, Sticker, Turn};

/// How many turns more than it needs the first phase may take for the sake of the second.
const SLACK: u8 = 1;

/// A way in: what was turned as a whole first, the turns of both phases, and the position of the next one.
pub struct Entry {
    /// How the cube is turned as a whole before.
    pub hold: Rotation,
    /// The turns after that.
    pub turns: Vec<Turn>,
    /// Where they lead.
    pub position: Position,
}

/// What both phases look up.
pub struct Centres {
    turns: Vec<Turn>,
    succession: Succession,
    /// The turns of the second phase, as bits, and those that make the wings odd.
    axis_turns: u32,
    odd_turns: u32,
    carrier: Carrier,
    /// From where each place takes its wing.
    pulls: Vec<Perm>,
    ranks: Ranks,
    axis: Distances,
    upper: Distances,
    ring: Distances,
}

/// The numbers of sets that the tables go by.
struct Ranks {
    eight_of_24: Subsets,
    four_of_8: Subsets,
    eight_of_16: Subsets,
    four_of_16: Subsets,
}

/// Centres in the second phase: where the four colours lie that will be on U, F, B and L, and whether the wings are exchanged oddly.
#[derive(Clone, Copy)]
struct Middle {
    upper: u32,
    front: u32,
    back: u32,
    left: u32,
    odd: bool,
}

impl Ranks {
    fn new() -> Self {
        Self {
            eight_of_24: Subsets::new(24, 8),
            four_of_8: Subsets::new(8, 4),
            eight_of_16: Subsets::new(16, 8),
            four_of_16: Subsets::new(16, 4),
        }
    }

    /// By the upper colour, where both colours of the axis from front to back lie, and the oddness of the wings.
    fn upper(&self, upper: u32, both: u32, odd: bool) -> usize {
        let upper = self.four_of_8.rank((upper & 15) | (upper >> 16 & 0xf0));
        (upper * self.eight_of_16.count() + self.eight_of_16.rank(both >> 4 & 0xffff)) * 2 + usize::from(odd)
    }

    /// How many numbers [`Ranks::upper`] and [`Ranks::ring`] give.
    fn count_of_upper(&self) -> usize {
        2 * self.four_of_8.count() * self.eight_of_16.count()
    }

    fn count_of_ring(&self) -> usize {
        self.four_of_16.count() * self.four_of_16.count()
    }

    /// By each of these two colours.
    fn ring(&self, front: u32, back: u32) -> usize {
        self.four_of_16.rank(front >> 4 & 0xffff) * self.four_of_16.count()
            + self.four_of_16.rank(back >> 4 & 0xffff)
    }
}

/// Sets of places by their numbers, carried by turns.
struct Sets<'a> {
    carrier: &'a Carrier,
    turns: Choices,
    rank: &'a Subsets,
    all: Vec<u32>,
}

impl Space for Sets<'_> {
    fn count(&self) -> usize {
        self.all.len()
    }

    fn around(&self, from: usize, mut each: impl FnMut(usize) -> bool) -> bool {
        let mut turns = self.turns.clone();
        turns.any(|turn| each(self.rank.rank(self.carrier.after(self.all[from], turn))))
    }
}

/// Parts of [`Middle`] by their numbers: each as the words from which the number is made again.
struct Parts<'a, F> {
    centres: &'a Carrier,
    turns: Choices,
    odd_turns: u32,
    all: Vec<(u32, u32, bool)>,
    rank: F,
}

impl<F: Fn(u32, u32, bool) -> usize> Space for Parts<'_, F> {
    fn count(&self) -> usize {
        self.all.len()
    }

    fn around(&self, from: usize, mut each: impl FnMut(usize) -> bool) -> bool {
        let (first, second, odd) = self.all[from];
        let mut turns = self.turns.clone();
        turns.any(|turn| {
            let (first, second) = (self.centres.after(first, turn), self.centres.after(second, turn));
            each((self.rank)(first, second, odd != (self.odd_turns >> turn & 1 == 1)))
        })
    }
}

impl Centres {
    /// From the model; what was kept is not searched for again. `told` is asked between tables whether to go on.
    pub fn make(
        size: Size,
        pairing: &Pairing,
        kept: &mut Option<Kept<'_>>,
        told: &mut dyn FnMut() -> bool,
    ) -> Option<Self> {
        let (wing, centre) = (Orbit::of(size)[1], Orbit::of(size)[2]);
        let turns = all_turns();
        let bits = |test: &dyn Fn(Turn) -> bool| {
            (0..turns.len()).filter(|&at| test(turns[at])).fold(0, |bits, at| bits | 1 << at)
        };
        let axis_turns = bits(&keeps_axis);
        let odd_turns =
            bits(&|turn| matches!(turn.block, Block::Outer { depth: 2, .. }) && turn.amount != Amount::Half);
        let succession = Succession::new(&turns, size);
        let every = succession.next(None);
        let second = every.clone().among(axis_turns);
        let centres = Carrier::new(centre, &turns, size);
        let pulls = turns.iter().map(|&turn| *State::solved(size).after(&[turn]).orbit(wing)).collect();
        let ranks = Ranks::new();
        let sets = |carrier, turns, rank, chosen| Sets {
            carrier,
            turns,
            rank,
            all: crate::solve::subsets::all(24, chosen).collect(),
        };
        let goal = ranks.eight_of_24.rank(on(Face::U) | on(Face::D));
        let axis = Distances::kept_or(ranks.eight_of_24.count(), kept, || {
            Distances::new(&sets(&centres, every, &ranks.eight_of_24, 8), [goal])
        })?;
        if !told() {
            return None;
        }
        let upper = Distances::kept_or(ranks.count_of_upper(), kept, || {
            Self::upper(&centres, second.clone(), odd_turns, &ranks)
        })?;
        if !told() {
            return None;
        }
        let ring = Distances::kept_or(ranks.count_of_ring(), kept, || {
            Self::ring(&centres, second, &ranks, &pairing.ring_patterns())
        })?;
        told().then_some(Self {
            turns,
            succession,
            axis_turns,
            odd_turns,
            carrier: centres,
            pulls,
            ranks,
            axis,
            upper,
            ring,
        })
    }

    /// The tables as they are kept.
    pub fn tables(&self) -> [&[u8]; 3] {
        [&self.axis, &self.upper, &self.ring].map(Distances::bytes)
    }

    fn upper(centres: &Carrier, turns: Choices, odd_turns: u32, ranks: &Ranks) -> Distances {
        use crate::solve::subsets::all;
        let mut parts = Vec::with_capacity(2 * 70 * ranks.eight_of_16.count());
        for upper in all(8, 4) {
            let upper = (upper & 15) | (upper & 0xf0) << 16;
            for both in all(16, 8) {
                parts.extend([false, true].map(|odd| (upper, both << 4, odd)));
            }
        }
        let rank = |upper, both, odd| ranks.upper(upper, both, odd);
        let both = on(Face::F) | on(Face::B);
        // Any pattern of U and D, the next phase decides.
        let goals: Vec<usize> =
            all(8, 4).map(|upper| ranks.upper((upper & 15) | (upper & 0xf0) << 16, both, false)).collect();
        Distances::new(&Parts { centres, turns, odd_turns, all: parts, rank }, goals)
    }

    fn ring(centres: &Carrier, turns: Choices, ranks: &Ranks, patterns: &[u32]) -> Distances {
        use crate::solve::subsets::all;
        // Colours that lie in one place both are no positions; nothing leads there.
        let parts =
            all(16, 4).flat_map(|front| all(16, 4).map(move |back| (front << 4, back << 4, false))).collect();
        let rank = |front, back, _| ranks.ring(front, back);
        let places = |pattern: u32| (pattern & 15) << 8 | (pattern >> 4 & 15) << 16;
        let goals = patterns.iter().map(|&front| ranks.ring(places(front), places(!front & 0xff)));
        let goals: Vec<usize> = goals.collect();
        Distances::new(&Parts { centres, turns, odd_turns: 0, all: parts, rank }, goals)
    }

    /// At least so many turns through the second phase, as far as the centres tell.
    fn least(&self, at: Middle) -> u8 {
        let upper = self.upper.get(self.ranks.upper(at.upper, at.front | at.back, at.odd));
        upper.max(self.ring.get(self.ranks.ring(at.front, at.back)))
    }

    fn after(&self, at: Middle, turn: usize) -> Middle {
        let carried = |set| self.carrier.after(set, turn);
        Middle {
            upper: carried(at.upper),
            front: carried(at.front),
            back: carried(at.back),
            left: carried(at.left),
            odd: at.odd != (self.odd_turns >> turn & 1 == 1),
        }
    }
}

/// The search for ways in, shortest first.
pub struct Search<'a> {
    centres: &'a Centres,
    pairing: &'a Pairing,
    edges: &'a Edges,
    /// How many ways are wanted.
    wanted: usize,
    /// How many positions may still be looked at.
    work: u64,
    found: Vec<Entry>,
}

/// One of the starts: the state turned as a whole, and the two colours that go onto U and D.
struct Start {
    hold: Rotation,
    state: State,
    axis: u32,
    upper: Face,
    /// Where each colour lies.
    colours: [u32; 6],
    /// Which wing lies at each place.
    wings: Perm,
}

impl<'a> Search<'a> {
    /// Ways into the last phase but one, shortest first: as many as are wanted unless the work runs out.
    pub fn run(
        centres: &'a Centres,
        pairing: &'a Pairing,
        edges: &'a Edges,
        state: &State,
        wanted: usize,
        work: u64,
    ) -> Vec<Entry> {
        let mut search = Self { centres, pairing, edges, wanted, work, found: Vec::new() };
        let starts = Self::starts(state);
        let least = |start: &Start| centres.axis.get(centres.ranks.eight_of_24.rank(start.axis));
        let longest = starts.iter().map(least).min().unwrap_or(0) + SLACK;
        for total in 0..=u8::MAX {
            for start in &starts {
                for first in least(start)..=total.min(longest) {
                    search.first(start, start.axis, first, total - first, &mut Vec::new());
                    if search.done() {
                        return search.found;
                    }
                }
            }
        }
        search.found
    }

    /// Enough is found, or something is and the work has run out.
    fn done(&self) -> bool {
        self.found.len() >= self.wanted || (self.work == 0 && !self.found.is_empty())
    }

    fn starts(state: &State) -> Vec<Start> {
        let (wing, centre) = (Orbit::of(state.size())[1], Orbit::of(state.size())[2]);
        // Each axis upright, and each of the other two from front to back.
        let ups = [
            (Face::U, Face::F),
            (Face::U, Face::R),
            (Face::F, Face::U),
            (Face::F, Face::R),
            (Face::R, Face::U),
            (Face::R, Face::F),
        ];
        let mut starts = Vec::new();
        for hold in ups.into_iter().filter_map(|(up, front)| Rotation::bringing(up, front)) {
            let state = state.after(hold.turns());
            let colours = Face::ALL.map(|colour| places_of(&state, centre, colour));
            let wings = *state.orbit(wing);
            for upper in [Face::U, Face::F, Face::R] {
                let axis = colours[upper as usize] | colours[upper.opposite() as usize];
                starts.push(Start { hold, state, axis, upper, colours, wings });
            }
        }
        starts
    }

    /// Goes exactly `left` turns, the last of which the second phase has not, until the axis is there.
    fn first(&mut self, start: &Start, axis: u32, left: u8, then: u8, path: &mut Vec<usize>) {
        let centres = self.centres;
        if left == 0 {
            if centres.axis.get(centres.ranks.eight_of_24.rank(axis)) == 0 {
                self.turn_over(start, then, path);
            }
            return;
        }
        let mut choices = centres.succession.next(path.last().copied());
        if left == 1 {
            choices = choices.among(!centres.axis_turns);
        }
        for turn in choices {
            let next = centres.carrier.after(axis, turn);
            if centres.axis.get(centres.ranks.eight_of_24.rank(next)) < left {
                path.push(turn);
                self.first(start, next, left - 1, then, path);
                path.pop();
                if self.done() {
                    return;
                }
            }
        }
    }

    /// From the first phase to the second.
    fn turn_over(&mut self, start: &Start, left: u8, path: &mut Vec<usize>) {
        self.work = self.work.saturating_sub(1);
        let lies = start
            .colours
            .map(|set| path.iter().fold(set, |set, &turn| self.centres.carrier.after(set, turn)));
        let of = |colour: Face| lies[colour as usize];
        let exchanged = path.iter().filter(|&&turn| self.centres.odd_turns >> turn & 1 == 1).count();
        let odd = start.wings.is_odd() != (exchanged % 2 == 1);
        let mut wings = None;
        for front in [Face::U, Face::F, Face::R].into_iter().filter(|face| face.axis() != start.upper.axis())
        {
            // The colour that lies left when these are above and in front.
            let Some(held) = Rotation::bringing(start.upper, front) else { continue };
            let left_colour = held.inverse().image(Face::L);
            let at = Middle {
                upper: of(start.upper),
                front: of(front),
                back: of(front.opposite()),
                left: of(left_colour),
                odd,
            };
            if self.centres.least(at) > left {
                continue;
            }
            let wings = *wings.get_or_insert_with(|| self.wings_after(start.wings, path));
            let begun = path.len();
            self.second(start, at, &wings, left, [start.upper, left_colour, front], path, begun);
            if self.done() {
                return;
            }
        }
    }

    /// Which wing lies at each place after some turns.
    fn wings_after(&self, wings: Perm, path: &[usize]) -> Perm {
        path.iter().fold(wings, |wings, &turn| wings.then(&self.centres.pulls[turn]))
    }

    /// Whether at the first places there is one wing of each edge, an even number of them of the second class.
    fn one_of_each(&self, wings: &Perm) -> bool {
        let (mut edges, mut seconds) = (0u32, 0);
        for &[first, _] in &self.edges.places {
            let wing = wings.table()[first as usize];
            edges |= 1 << self.edges.edge[wing as usize];
            seconds += u32::from(self.edges.firsts >> wing & 1 == 0);
        }
        edges == (1 << 12) - 1 && seconds % 2 == 0
    }

    /// Goes exactly `left` turns of the second phase.
    #[expect(clippy::too_many_arguments, reason = "the path of a recursion")]
    fn second(
        &mut self,
        start: &Start,
        at: Middle,
        wings: &Perm,
        left: u8,
        colours: [Face; 3],
        path: &mut Vec<usize>,
        begun: usize,
    ) {
        let centres = self.centres;
        self.work = self.work.saturating_sub(1);
        if left == 0 {
            if !self.one_of_each(&self.wings_after(*wings, &path[begun..])) {
                return;
            }
            let turns: Vec<Turn> = path.iter().map(|&turn| centres.turns[turn]).collect();
            let state = start.state.after(&turns);
            if let Some(position) = self.pairing.position(&state, self.edges, colours) {
                self.found.push(Entry { hold: start.hold, turns, position });
            }
            return;
        }
        let last = (path.len() > begun).then(|| path.last().copied()).flatten();
        for turn in centres.succession.next(last).among(centres.axis_turns) {
            let next = centres.after(at, turn);
            if centres.least(next) >= left {
                continue;
            }
            path.push(turn);
            self.second(start, next, wings, left - 1, colours, path, begun);
            path.pop();
            if self.done() {
                return;
            }
        }
    }
}

/// Where the pieces of a colour lie.
fn places_of(state: &State, orbit: Orbit, colour: Face) -> u32 {
    Sticker::all()
        .filter(|&place| state.at(orbit, place).face() == colour)
        .fold(0, |set, place| set | 1 << place.index())
}
