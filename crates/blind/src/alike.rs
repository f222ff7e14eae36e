//! The trace over pieces that look alike: centres, four of each colour, told by their colour alone.
//!
//! Draw a point for each face, and for each place that holds a wrong colour an arrow from the face of that place to the face of
//! the colour that lies there. As many arrows come to a point as leave it, so a memo that follows the colours is a walk that
//! uses every arrow of a part once. A letter is spent on every wrong place but the buffer's, and one more on each part that
//! does not touch the buffer's face: there the walk has to be begun at one of its places and to come back to it. Less will not
//! do. A part that touches the buffer's face needs no letter more, even if the buffer is right: its piece looks like the ones
//! that belong there, so it may be given away and one like it fetched back.
//!
//! Which of several arrows is taken where they leave one point is a choice; taken is the first in the solver's order after
//! which the arrows that are left still hang together with where the walk has come (M. Fleury's rule, 1883, here for
//! arrows: a walk over all of them remains as long as they hang together, since they are balanced at every point).

use crate::step::{Role, Step};
use cube::{Face, Perm, Sticker};

/// A set of faces, a bit each.
type Faces = u8;

/// Wrong places, the buffer's not among them, as arrows that are still to be used.
struct Arrows<'a> {
    order: &'a [Sticker; 24],
    /// For each face its wrong places, as bits by their rank in the order.
    from: [u32; ROOM],
    /// For each rank the face whose colour lies there.
    to: [u8; 32],
    /// How many arrows lead from a face to another or back, twice.
    between: [[u8; ROOM]; ROOM],
    /// For each face those that an arrow joins it with, either way.
    joined: [Faces; ROOM],
}

/// Room for the six faces, and for no index to be checked that was cut to it.
const ROOM: usize = 8;

/// A face's number, known to be within its room.
const fn within(face: usize) -> usize {
    face % ROOM
}

/// The faces that are joined with one, itself included.
fn part_of(joined: [Faces; ROOM], face: usize) -> Faces {
    let mut part: Faces = 1 << face;
    let mut new = part;
    while new != 0 {
        let mut reached = 0;
        while new != 0 {
            reached |= joined[within(new.trailing_zeros() as usize)];
            new &= new - 1;
        }
        new = reached & !part;
        part |= reached;
    }
    part
}

impl<'a> Arrows<'a> {
    fn new(seen: &Perm, buffer: Sticker, order: &'a [Sticker; 24]) -> Self {
        let (from, joined) = ([0; ROOM], [0; ROOM]);
        let mut arrows = Self { order, from, to: [0; 32], between: [[0; ROOM]; ROOM], joined };
        for (rank, &place) in order.iter().enumerate() {
            let (here, there) = (within(place.face().index()), within(seen.at(place).face().index()));
            arrows.to[rank] = there as u8;
            // 1 or 0, and no branch: which places are wrong cannot be foreseen.
            let wrong = u8::from(here != there) * u8::from(place != buffer);
            arrows.from[here] |= u32::from(wrong) << rank;
            arrows.between[here][there] += wrong;
            arrows.between[there][here] += wrong;
            arrows.joined[here] |= wrong << there;
            arrows.joined[there] |= wrong << here;
        }
        arrows
    }

    /// The faces that arrows join with one, itself included.
    fn part_of(&self, face: usize) -> Faces {
        part_of(self.joined, face)
    }

    /// Where an arrow leads.
    fn head(&self, rank: u32) -> usize {
        within(usize::from(self.to[rank as usize % 32]))
    }

    /// Uses an arrow; where it leads.
    fn take(&mut self, face: usize, rank: u32) -> usize {
        let (face, to) = (within(face), self.head(rank));
        self.from[face] &= !(1 << rank);
        self.between[face][to] -= 1;
        self.between[to][face] -= 1;
        if self.between[face][to] == 0 {
            self.joined[face] &= !(1 << to);
            self.joined[to] &= !(1 << face);
        }
        to
    }

    /// Whether every arrow that is left in a part can still be used by a walk that goes on from the end of this one.
    fn leaves_a_walk(&self, face: usize, rank: u32, part: Faces) -> bool {
        let (face, to) = (within(face), self.head(rank));
        // Another arrow joins the two; or this is the only one from here and must be used now, since as many come to a face
        // as leave it; or both are joined with a third.
        self.between[face][to] > 1
            || self.from[face].is_power_of_two()
            || self.joined[face] & self.joined[to] != 0
            || self.leaves_all_joined(face, to, part)
    }

    /// The same where the arrow is the last one between two faces: do all that are left still hang together?
    #[cold]
    fn leaves_all_joined(&self, face: usize, to: usize, part: Faces) -> bool {
        let mut joined = self.joined;
        joined[face] &= !(1 << to);
        joined[to] &= !(1 << face);
        let left = (0..6).filter(|&other| part >> other & 1 == 1 && joined[other] != 0);
        let left = left.fold(0, |left: Faces, other| left | 1 << other);
        left & !part_of(joined, to) == 0
    }

    /// Places on a face to which the walk may go on, the preferred first, by their ranks.
    fn choices(&self, face: usize, part: Faces) -> impl Iterator<Item = u32> + '_ {
        let mut ranks = self.from[within(face)];
        std::iter::from_fn(move || {
            let rank = (ranks != 0).then(|| ranks.trailing_zeros())?;
            ranks &= ranks - 1;
            Some(rank)
        })
        .filter(move |&rank| self.leaves_a_walk(face, rank, part))
    }

    /// The places that still hold a wrong colour, the preferred first, by their ranks.
    fn left(&self) -> impl Iterator<Item = u32> + use<> {
        let mut all = self.from.iter().fold(0, |all, ranks| all | ranks);
        std::iter::from_fn(move || {
            let rank = (all != 0).then(|| all.trailing_zeros())?;
            all &= all - 1;
            Some(rank)
        })
    }

    fn place(&self, rank: u32) -> Sticker {
        self.order[rank as usize]
    }

    /// Follows the colours from a place until the part is used up; the place where that ends.
    fn follow(
        &mut self,
        mut place: Sticker,
        colour: Face,
        part: Faces,
        chooser: &mut Chooser<'_>,
        push: &mut impl FnMut(Step),
    ) -> Sticker {
        let mut face = colour.index();
        loop {
            let Some(rank) = chooser.of(self, self.choices(face, part)) else { return place };
            let target = self.place(rank);
            push(Step { target, place, role: Role::Follow });
            place = target;
            face = self.take(face, rank);
        }
    }
}

/// What two letters cost that are carried out one after the other.
pub(crate) type PairCosts<'a> = &'a dyn Fn(Sticker, Sticker) -> u32;

/// How one of several places that do as well is chosen: the first in the order, or where costs are given, at the second letter of a
/// pair the one that costs least together with the first. That is letter by letter, and not the least for the whole.
struct Chooser<'a> {
    costs: Option<PairCosts<'a>>,
    /// The first letter of the pair that has no second yet.
    first: Option<Sticker>,
}

impl Chooser<'_> {
    /// The rank that is taken of some, in the order of preference.
    fn of(&mut self, arrows: &Arrows<'_>, mut ranks: impl Iterator<Item = u32>) -> Option<u32> {
        let Some(costs) = self.costs else { return ranks.next() };
        let rank = match self.first {
            None => ranks.next(),
            Some(first) => ranks.min_by_key(|&rank| costs(first, arrows.place(rank))),
        }?;
        self.memorised(arrows.place(rank));
        Some(rank)
    }

    fn memorised(&mut self, place: Sticker) {
        self.first = if self.first.is_none() { Some(place) } else { None };
    }
}

/// Memorises places until every face has its colour, with the fewest letters; among those by the order of preference, or by what
/// pairs of letters cost.
pub(crate) fn trace(
    seen: &Perm,
    buffer: Sticker,
    order: &[Sticker; 24],
    costs: Option<PairCosts<'_>>,
    push: &mut impl FnMut(Step),
) {
    let mut chooser = Chooser { costs, first: None };
    let mut arrows = Arrows::new(seen, buffer, order);
    let colour = seen.at(buffer).face();
    let part = arrows.part_of(buffer.face().index()) | arrows.part_of(colour.index());
    arrows.follow(buffer, colour, part, &mut chooser, push);
    while let Some(rank) = chooser.of(&arrows, arrows.left()) {
        let begin = arrows.place(rank);
        let part = arrows.part_of(begin.face().index());
        push(Step { target: begin, place: begin, role: Role::Break });
        arrows.take(begin.face().index(), rank);
        let last = arrows.follow(begin, seen.at(begin).face(), part, &mut chooser, push);
        chooser.memorised(begin);
        push(Step { target: begin, place: last, role: Role::Close });
    }
}

/// The arrows that are left before a letter, and the part that its walk is in.
fn before<'a>(
    seen: &Perm,
    buffer: Sticker,
    order: &'a [Sticker; 24],
    steps: &[Step],
    letter: usize,
) -> (Arrows<'a>, Faces) {
    let mut arrows = Arrows::new(seen, buffer, order);
    let mut part = arrows.part_of(buffer.face().index()) | arrows.part_of(seen.at(buffer).face().index());
    let rank_of = |place: Sticker| order.iter().position(|&other| other == place).map(|rank| rank as u32);
    for earlier in &steps[..letter] {
        if earlier.role == Role::Break {
            part = arrows.part_of(earlier.target.face().index());
        }
        if let Some(rank) = rank_of(earlier.target).filter(|_| !earlier.role.ends()) {
            arrows.take(earlier.target.face().index(), rank);
        }
    }
    (arrows, part)
}

/// Targets that would have done as well as that of a letter, in the order of preference.
pub(crate) fn alternatives(
    seen: &Perm,
    buffer: Sticker,
    order: &[Sticker; 24],
    steps: &[Step],
    letter: usize,
) -> Vec<Sticker> {
    let Some(step) = steps.get(letter) else { return Vec::new() };
    let (arrows, part) = before(seen, buffer, order, steps, letter);
    let ranks: Vec<u32> = match step.role {
        Role::Follow => arrows.choices(seen.at(step.place).face().index(), part).collect(),
        Role::Break => {
            (0..24).filter(|rank| arrows.from.iter().any(|ranks| ranks >> rank & 1 == 1)).collect()
        }
        // There is one way to close, and no piece that looks alike is turned.
        Role::Close | Role::TurnedFirst | Role::TurnedSecond => Vec::new(),
    };
    ranks.into_iter().map(|rank| arrows.place(rank)).filter(|&place| place != step.target).collect()
}

/// Places that want the colour of a letter too, but from which the walk would not come back to all that is left: part of it
/// would be a cycle of its own, with a letter more. Where the walk began is one of them: going there closes it too early.
pub(crate) fn costlier(
    seen: &Perm,
    buffer: Sticker,
    order: &[Sticker; 24],
    steps: &[Step],
    letter: usize,
) -> Vec<Sticker> {
    let Some(step) = steps.get(letter).filter(|step| step.role == Role::Follow) else { return Vec::new() };
    let (arrows, part) = before(seen, buffer, order, steps, letter);
    let face = seen.at(step.place).face().index();
    let wanting = (0..24).filter(|rank| arrows.from[within(face)] >> rank & 1 == 1);
    let leaving =
        wanting.filter(|&rank| !arrows.leaves_a_walk(face, rank, part)).map(|rank| arrows.place(rank));
    let began = steps[..letter].iter().rfind(|step| step.role == Role::Break).map(|step| step.target);
    leaving.chain(began.filter(|began| began.face().index() == face)).collect()
}
