//! Pieces that look alike are memorised with the fewest letters there are, and among all such memos with the one that the
//! solver prefers: against a search of all memos on small multigraphs, and against counting on whole puzzles.
//!
//! The count: a letter for each place with a wrong colour but the buffer's, and one for each connected part of wrong places
//! that does not hold the buffer's face. Source: the project's own, checked here by the search.

use blind::{Breaks, Role, Trace};
use cube::{Face, Orbit, Perm, Sticker};
use proptest::prelude::*;
use rand::prelude::*;
use rand_chacha::ChaCha8Rng;
use std::collections::{HashMap, VecDeque};

/// Faces and places on each of them: with 2 to 4 of both the search below is done in a moment.
const SHAPES: [(usize, usize); 7] = [(2, 2), (2, 3), (2, 4), (3, 2), (3, 3), (3, 4), (4, 2)];

/// Colours by place, face after face; the buffer is the first place.
type Colours = Vec<u8>;

/// How many letters every colouring takes, by breadth-first search from the solved one: a letter exchanges the colour in the
/// buffer with that of any other place, and undoes itself.
fn fewest_letters(faces: usize, places: usize) -> HashMap<Colours, usize> {
    let solved: Colours = (0..faces * places).map(|at| (at / places) as u8).collect();
    let mut fewest = HashMap::from([(solved.clone(), 0)]);
    let mut next = VecDeque::from([solved]);
    while let Some(colours) = next.pop_front() {
        let letters = fewest[&colours];
        for place in 1..colours.len() {
            let mut exchanged = colours.clone();
            exchanged.swap(0, place);
            if !fewest.contains_key(&exchanged) {
                fewest.insert(exchanged.clone(), letters + 1);
                next.push_back(exchanged);
            }
        }
    }
    fewest
}

/// The count, for colours by place and the face of each place; the buffer's place by its number.
fn counted(colours: &[usize], face_of: &dyn Fn(usize) -> usize, buffer: usize) -> usize {
    let wrong = |place: usize| colours[place] != face_of(place);
    let mut part: [usize; 6] = std::array::from_fn(|face| face);
    for place in (0..colours.len()).filter(|&place| wrong(place)) {
        let (one, other) = (part[colours[place]], part[face_of(place)]);
        part.iter_mut().filter(|part| **part == one).for_each(|part| *part = other);
    }
    let mut parts: Vec<usize> =
        (0..colours.len()).filter(|&place| wrong(place)).map(|place| part[face_of(place)]).collect();
    parts.sort_unstable();
    parts.dedup();
    parts.retain(|&of| of != part[face_of(buffer)]);
    (0..colours.len()).filter(|&place| place != buffer && wrong(place)).count() + parts.len()
}

/// Kinds whose pieces look alike.
fn kinds() -> Vec<Orbit> {
    Orbit::ALL.into_iter().filter(|orbit| orbit.looks_alike()).collect()
}

fn shuffled(rng: &mut impl Rng) -> [Sticker; 24] {
    let mut order: Vec<Sticker> = Sticker::all().collect();
    order.shuffle(rng);
    std::array::from_fn(|at| order[at])
}

/// A state with these colours; which of a colour's pieces lies where is left to chance.
fn coloured(colours: &[Face], rng: &mut impl Rng) -> Perm {
    let mut left = shuffled(rng).to_vec();
    let table: Vec<u8> = colours
        .iter()
        .map(|&colour| {
            let at = left.iter().position(|sticker| sticker.face() == colour).expect("four of each");
            left.swap_remove(at).index() as u8
        })
        .collect();
    Perm::new(std::array::from_fn(|at| table[at])).expect("each once")
}

/// A small multigraph on some places of a whole kind, the others solved.
struct Embedded {
    orbit: Orbit,
    /// The place of the kind for each place of the multigraph.
    places: Vec<Sticker>,
}

impl Embedded {
    fn new((faces, places): (usize, usize), rng: &mut impl Rng) -> Self {
        let mut chosen = Face::ALL;
        chosen.shuffle(rng);
        let mut all: Vec<Sticker> = Vec::new();
        for face in &chosen[..faces] {
            let mut on_face: Vec<Sticker> = Sticker::all().filter(|place| place.face() == *face).collect();
            on_face.shuffle(rng);
            all.extend(&on_face[..places]);
        }
        Self { orbit: *kinds().choose(rng).unwrap(), places: all }
    }

    fn seen(&self, colours: &[u8], places: usize, rng: &mut impl Rng) -> Perm {
        let mut all: Vec<Face> = Sticker::all().map(Sticker::face).collect();
        for (&place, &colour) in self.places.iter().zip(colours) {
            all[place.index()] = self.places[usize::from(colour) * places].face();
        }
        coloured(&all, rng)
    }

    fn place(&self, sticker: Sticker) -> usize {
        self.places.iter().position(|&place| place == sticker).expect("places that are solved have no letter")
    }
}

/// Every colouring of every small multigraph, put on whole kinds in several ways.
#[test]
fn letters_are_the_fewest_that_a_search_finds() {
    let mut rng = ChaCha8Rng::seed_from_u64(4386);
    let mut states = 0;
    for (faces, places) in SHAPES {
        let fewest = fewest_letters(faces, places);
        states += fewest.len();
        for (colours, &letters) in &fewest {
            let plain: Vec<usize> = colours.iter().map(|&colour| usize::from(colour)).collect();
            assert_eq!(counted(&plain, &|place| place / places, 0), letters, "{colours:?}");
            for _ in 0..2 {
                let embedded = Embedded::new((faces, places), &mut rng);
                let seen = embedded.seen(colours, places, &mut rng);
                let order = shuffled(&mut rng);
                let breaks = Breaks { order, cost: None };
                let trace = Trace::new(embedded.orbit, &seen, embedded.places[0], &breaks).unwrap();
                assert_eq!(trace.len(), letters, "{colours:?}");
                check_choices(&trace, &order, &embedded, colours, &fewest);
            }
        }
    }
    // As many as there are: the number of ways to write each face's number as often as it has places.
    assert_eq!(states, 6 + 20 + 70 + 90 + 1680 + 34650 + 2520);
}

/// Letter by letter: what is taken leads on to a memo of the fewest letters and is what the solver prefers of all that do; what
/// is told besides would do as well, and nothing else would.
fn check_choices(
    trace: &Trace,
    order: &[Sticker; 24],
    embedded: &Embedded,
    colours: &[u8],
    fewest: &HashMap<Colours, usize>,
) {
    let mut now = colours.to_vec();
    let places = now.len() / (usize::from(*now.iter().max().unwrap()) + 1);
    for (at, step) in trace.steps().iter().enumerate() {
        let target = embedded.place(step.target);
        let after = |place: usize| {
            let mut after = now.clone();
            after.swap(0, place);
            after
        };
        let left = fewest[&now];
        assert_eq!(left, trace.len() - at);
        let wrong = |place: &usize| usize::from(now[*place]) != place / places;
        let on_face = |place: &usize| place / places == usize::from(now[0]);
        let following: Vec<usize> = (1..now.len()).filter(wrong).filter(on_face).collect();
        // Follow the colour where it is wanted somewhere, otherwise begin anew anywhere.
        let open = if following.is_empty() { (1..now.len()).filter(wrong).collect() } else { following };
        let mut as_good: Vec<Sticker> = open
            .iter()
            .filter(|&&place| fewest[&after(place)] < left)
            .map(|&place| embedded.places[place])
            .collect();
        as_good.sort_by_key(|sticker| order.iter().position(|other| other == sticker));
        if step.role == Role::Close {
            // Where a walk began, the way back is the only one.
            assert_eq!(as_good, [step.target]);
            assert!(trace.alternatives(at, order).is_empty());
        } else {
            assert_eq!(as_good.first(), Some(&step.target), "{colours:?}, letter {at}");
            assert_eq!(trace.alternatives(at, order), as_good[1..], "{colours:?}, letter {at}");
        }
        now = after(target);
    }
    assert_eq!(fewest[&now], 0);
    assert!(trace.alternatives(trace.len(), order).is_empty());
}

/// The count for a whole kind while its letters are carried out.
fn counted_now(now: &[Sticker], buffer: Sticker) -> usize {
    let colours: Vec<usize> = now.iter().map(|sticker| sticker.face().index()).collect();
    counted(&colours, &|place| place / 4, buffer.index())
}

/// As `check_choices` on a whole kind, judged by the count, which the search above agrees with.
fn check_whole(orbit: Orbit, seen: &Perm, buffer: Sticker, order: &[Sticker; 24]) {
    let trace = Trace::new(orbit, seen, buffer, &Breaks { order: *order, cost: None }).unwrap();
    let mut now: Vec<Sticker> = Sticker::all().map(|place| seen.at(place)).collect();
    assert_eq!(trace.len(), counted_now(&now, buffer));
    for (at, step) in trace.steps().iter().enumerate() {
        let left = counted_now(&now, buffer);
        let wrong = |place: &Sticker| *place != buffer && now[place.index()].face() != place.face();
        let wanted = now[buffer.index()].face();
        let on_face: Vec<Sticker> =
            order.iter().copied().filter(wrong).filter(|place| place.face() == wanted).collect();
        let open: Vec<Sticker> =
            if on_face.is_empty() { order.iter().copied().filter(wrong).collect() } else { on_face };
        let after = |place: Sticker| {
            let mut after = now.clone();
            after.swap(buffer.index(), place.index());
            after
        };
        let as_good: Vec<Sticker> =
            open.into_iter().filter(|&place| counted_now(&after(place), buffer) < left).collect();
        assert_eq!(as_good.first(), Some(&step.target), "letter {at}");
        assert_eq!(trace.alternatives(at, order), as_good[1..], "letter {at}");
        // Taken instead, each of them leads to a memo with as many letters.
        for &other in &as_good {
            let rest = after(other);
            let table = Perm::new(std::array::from_fn(|at| rest[at].index() as u8)).unwrap();
            let rest = Trace::new(orbit, &table, buffer, &Breaks { order: *order, cost: None }).unwrap();
            assert_eq!(at + 1 + rest.len(), trace.len(), "letter {at}");
        }
        now = after(step.target);
    }
    assert!(now.iter().zip(Sticker::all()).all(|(lies, place)| lies.face() == place.face()));
}

proptest! {
    #[test]
    fn whole_kinds_take_as_many_letters_as_counted(
        exchanges in proptest::collection::vec((0..24usize, 0..24usize), 0..30),
        seed: u64,
    ) {
        let mut rng = ChaCha8Rng::seed_from_u64(seed);
        let mut colours: Vec<Face> = Sticker::all().map(Sticker::face).collect();
        for (one, other) in exchanges {
            colours.swap(one, other);
        }
        let seen = coloured(&colours, &mut rng);
        let buffer = Sticker::new(rng.random_range(0..24)).unwrap();
        check_whole(*kinds().choose(&mut rng).unwrap(), &seen, buffer, &shuffled(&mut rng));
    }

    #[test]
    fn faces_in_parts_of_their_own_take_as_many_letters_as_counted(seed: u64) {
        // Two or three faces exchange colours among themselves only, so that walks have to begin anew.
        let mut rng = ChaCha8Rng::seed_from_u64(seed);
        let mut faces = Face::ALL;
        faces.shuffle(&mut rng);
        let mut colours: Vec<Face> = Sticker::all().map(Sticker::face).collect();
        for group in faces.chunks(rng.random_range(2..=3)) {
            let mut places: Vec<usize> =
                (0..24).filter(|&place| group.contains(&Face::ALL[place / 4])).collect();
            places.shuffle(&mut rng);
            let kept = rng.random_range(0..=places.len());
            let mut moved: Vec<Face> = places[..kept].iter().map(|&place| colours[place]).collect();
            moved.shuffle(&mut rng);
            for (&place, colour) in places.iter().zip(moved) {
                colours[place] = colour;
            }
        }
        let seen = coloured(&colours, &mut rng);
        let buffer = Sticker::new(rng.random_range(0..24)).unwrap();
        check_whole(*kinds().choose(&mut rng).unwrap(), &seen, buffer, &shuffled(&mut rng));
    }
}

/// Pieces that are told apart have no other targets: only where a cycle begins is chosen.
#[test]
fn pieces_told_apart_have_no_alternatives() {
    let mut rng = ChaCha8Rng::seed_from_u64(9);
    for orbit in [Orbit::Corner, Orbit::Midge, Orbit::ALL[2], Orbit::ALL[3]] {
        let mut lies = Perm::IDENTITY.table().to_vec();
        let order = shuffled(&mut rng);
        for (a, b) in orbit.stickers_from(order[0]).zip(orbit.stickers_from(order[1])) {
            if orbit.piece(order[0]) != orbit.piece(order[1]) {
                lies.swap(a.index(), b.index());
            }
        }
        let seen = Perm::new(std::array::from_fn(|at| lies[at])).unwrap();
        let trace = Trace::new(orbit, &seen, order[2], &Breaks { order, cost: None }).unwrap();
        assert!((0..=trace.len()).all(|letter| trace.alternatives(letter, &order).is_empty()));
    }
}
