//! Simulated pupils: a scramble, the letters that belong to it, and faults of the pupil's own drawn and carried out by hand.
//!
//! On purpose nothing here comes from the search for explanations, nor from its catalogue: faults and their rates are this file's own,
//! and letters are carried out turn by turn on a state. Only the cube and the solver's letters and algorithms are taken as they are.

use blind::{
    Action, BreakChoice, Carrier, Case, Conventions, Held, Letters, Method, MethodName, OrbitOrder,
    ParityChoice, Solver, usual,
};
use cube::{Amount, Axis, Block, Face, Orbit, Rotation, Size, Slice, State, Sticker, Turn, inverted};
use rand::prelude::*;

#[path = "fault.rs"]
mod fault;
#[path = "fingers.rs"]
mod fingers;

pub use fault::{Fault, When, as_told};

/// A letter that keeps its number whatever is done to it.
#[derive(Clone, Copy, PartialEq, Debug)]
struct Letter {
    number: usize,
    target: Sticker,
}

/// A row of letters that was looked up in one go.
#[derive(Clone, Debug)]
struct Loop {
    numbers: std::ops::Range<usize>,
    with_buffer: bool,
    one_piece: bool,
}

/// What one kind of piece asks for.
#[derive(Clone, Debug)]
struct Kind {
    orbit: Orbit,
    letters: Vec<Letter>,
    loops: Vec<Loop>,
    /// All letters as traced from any other buffer, and with parity taken for what it is not.
    from_elsewhere: Vec<Vec<Sticker>>,
    against_parity: Option<Vec<Sticker>>,
}

/// What is done otherwise than planned.
#[derive(Clone, Debug)]
enum Deed {
    Scramble(Vec<Turn>),
    Hold(Rotation),
    /// Letters, by number, for other letters. What was looked up decides about parity; what is remembered no longer does.
    Letters {
        kind: usize,
        numbers: Vec<usize>,
        taken: Vec<Letter>,
        looked: bool,
    },
    Parity,
    /// Turns `from..to` of a part of what begins with a letter (or of parity) for others.
    Hands {
        letter: usize,
        part: usize,
        from: usize,
        to: usize,
        made: Vec<Turn>,
    },
    /// Nothing more from a turn of a part on.
    Stop {
        letter: usize,
        part: usize,
        turn: usize,
    },
    SwapKinds,
}

/// A fault that was drawn.
#[derive(Clone, Debug)]
pub struct Drawn {
    pub fault: Fault,
    deed: Deed,
}

impl Drawn {
    /// In few words, for those who look into what was not found.
    pub fn short(&self) -> String {
        let name = self.fault.name();
        match &self.deed {
            Deed::Letters { kind, numbers, taken, .. } => {
                let taken: Vec<usize> = taken.iter().map(|letter| letter.target.index()).collect();
                format!("{name} kind {kind} {numbers:?} as {taken:?}")
            }
            Deed::Hands { letter, part, from, to, made } => {
                format!("{name} {letter}.{part} {from}..{to} as {}", cube::display_turns(made))
            }
            Deed::Stop { letter, part, turn } => format!("{name} {letter}.{part} {turn}"),
            Deed::Scramble(turns) => format!("{name} {}", cube::display_turns(turns)),
            Deed::Hold(_) | Deed::Parity | Deed::SwapKinds => name.to_owned(),
        }
    }
}

/// The number of the parity algorithm among letters.
const PARITY: usize = usize::MAX;

/// A pupil before an attempt.
pub struct Pupil<'a> {
    conventions: &'a Conventions,
    solver: &'a Solver,
    method: &'a Method,
    pub scramble: Vec<Turn>,
    hold: Rotation,
    /// In the order of execution.
    kinds: Vec<Kind>,
}

/// The attempt as it is made.
#[derive(Clone)]
struct Made {
    scramble: Vec<Turn>,
    hold: Rotation,
    letters: Vec<Vec<Letter>>,
    parity: bool,
    /// Set-up, algorithm and undoing of what begins with each letter, in order.
    parts: Vec<(usize, [Vec<Turn>; 3])>,
    /// What stands where nothing more is made.
    end: Option<(usize, usize, usize)>,
}

fn pick<T: Clone>(rng: &mut impl Rng, list: &[T]) -> Option<T> {
    list.choose(rng).cloned()
}

/// Splits letters where the pupil begins anew: each letter is what lies where the one before it points.
fn loops(seen: &cube::Perm, orbit: Orbit, buffer: Sticker, letters: &[Letter]) -> Vec<Loop> {
    let mut found: Vec<Loop> = Vec::new();
    let mut at = buffer;
    let mut begun: Option<usize> = None;
    let first = letters.first().map_or(0, |letter| letter.number);
    for (place, letter) in letters.iter().enumerate() {
        let follows = seen.at(at) == letter.target;
        // Back where a loop without the buffer began, whatever lies there begins another.
        let closed = begun.is_some_and(|from| {
            place > from + 1 && orbit.piece(letters[from].target) == orbit.piece(letters[place - 1].target)
        });
        if !follows || closed {
            begun = Some(place);
        }
        match found.last_mut() {
            Some(last) if begun != Some(place) => last.numbers.end += 1,
            _ => {
                let numbers = first + place..first + place + 1;
                found.push(Loop { numbers, with_buffer: begun.is_none(), one_piece: false });
            }
        }
        at = letter.target;
    }
    for round in &mut found {
        let target = |number: usize| letters[number - first].target;
        round.one_piece = round.numbers.len() == 2
            && orbit.piece(target(round.numbers.start)) == orbit.piece(target(round.numbers.start + 1));
    }
    found
}

impl<'a> Pupil<'a> {
    /// None where the solver has no method.
    pub fn new(scramble: Vec<Turn>, solver: &'a Solver) -> Option<Self> {
        let (conventions, method) = (solver.conventions(), solver.method().ok()?);
        let scrambled = State::solved(solver.size()).after(&scramble);
        let held = Held::new(&scrambled, conventions.holding);
        let memo = solver.memo(&held.state).ok()?;
        let mut first = 0;
        let mut kinds = Vec::new();
        for orbit in conventions.execution_order.of(solver.size()) {
            let trace = memo.part(orbit)?;
            let number = |(at, target): (usize, Sticker)| Letter { number: first + at, target };
            let letters: Vec<Letter> = trace.targets().into_iter().enumerate().map(number).collect();
            first += letters.len();
            let own = conventions.kind(orbit).buffer;
            let tracing = solver.tracing();
            let from =
                |buffer: Sticker| Some(tracing.trace_as_seen(orbit, trace.seen(), buffer).ok()?.targets());
            let can = |all: &Vec<Sticker>| all.iter().all(|&letter| !orbit.same_piece(letter, own));
            let others = Sticker::all().filter(|&buffer| buffer != own);
            let from_elsewhere = others.filter_map(from).filter(can).collect();
            let against = tracing.seen_against_parity(&held.state, orbit);
            let against_parity =
                against.and_then(|seen| Some(tracing.trace_as_seen(orbit, &seen, own).ok()?.targets()));
            let loops = loops(trace.seen(), orbit, own, &letters);
            kinds.push(Kind { orbit, letters, loops, from_elsewhere, against_parity });
        }
        Some(Self { conventions, solver, method, scramble, hold: held.rotation, kinds })
    }

    fn planned(&self) -> Made {
        Made {
            scramble: self.scramble.clone(),
            hold: self.hold,
            letters: self.kinds.iter().map(|kind| kind.letters.clone()).collect(),
            parity: self.method.parity().is_some() && self.kinds[0].letters.len() % 2 == 1,
            parts: Vec::new(),
            end: None,
        }
    }

    /// What carries letters of a kind out: with the number of the first letter, the set-up, the algorithm, and what undoes the set-up.
    fn carry_out(&self, orbit: Orbit, letters: &[Letter]) -> Option<Vec<(usize, [Vec<Turn>; 3])>> {
        let targets: Vec<Sticker> = letters.iter().map(|letter| letter.target).collect();
        let actions = self.solver.actions(&[(orbit, targets)]).ok()?;
        let part = |action: Action| match action {
            Action::Letter { letter, setup, swap, undo, .. } => {
                Some((letters[letter].number, [setup, swap, undo]))
            }
            Action::Pair { letter, targets: [first, second], turns, .. } => {
                let case = match self.method.carrier(orbit) {
                    Some(Carrier::ThreeCycle(cycles)) => cycles.case(first, second),
                    _ => None,
                };
                Some((
                    letters[letter].number,
                    case.map_or([Vec::new(), turns.clone(), Vec::new()], |case| halves(case, &turns)),
                ))
            }
            Action::Turned { letter, turns, .. } => {
                Some((letters[letter].number, [Vec::new(), turns, Vec::new()]))
            }
            Action::Parity { .. } => None,
        };
        Some(actions.into_iter().filter_map(part).collect())
    }

    fn lay_out(&self, made: &mut Made) -> Option<()> {
        for (at, letters) in made.letters.iter().enumerate() {
            made.parts.extend(self.carry_out(self.kinds[at].orbit, letters)?);
            if at == 0 && made.parity {
                made.parts.push((PARITY, [Vec::new(), self.method.parity()?.flatten(), Vec::new()]));
            }
        }
        Some(())
    }

    /// Does one thing otherwise; `None` where it can no longer be done.
    fn do_otherwise(&self, made: &mut Made, deed: &Deed) -> Option<()> {
        match deed {
            Deed::Scramble(turns) => made.scramble.clone_from(turns),
            Deed::Hold(rotation) => made.hold = made.hold.then(*rotation),
            Deed::Letters { kind, numbers, taken, looked } => {
                let letters = &mut made.letters[*kind];
                if numbers.is_empty() {
                    letters.clone_from(taken);
                } else {
                    let first = letters.iter().position(|letter| letter.number == numbers[0])?;
                    let there = letters.get(first..first + numbers.len())?;
                    if there.iter().zip(numbers).any(|(letter, number)| letter.number != *number) {
                        return None;
                    }
                    letters.splice(first..first + numbers.len(), taken.iter().copied());
                }
                let odd = numbers.len() % 2 != taken.len() % 2;
                made.parity ^= *looked && *kind == 0 && odd && self.method.parity().is_some();
            }
            Deed::Parity => made.parity = !made.parity,
            Deed::SwapKinds => made.letters = self.kinds_swapped(&made.letters)?,
            Deed::Hands { letter, part, from, to, made: instead } => {
                let parts = made.parts.iter_mut().find(|(number, _)| number == letter)?;
                let turns = &mut parts.1[*part];
                (*to <= turns.len()).then_some(())?;
                turns.splice(*from..*to, instead.iter().copied());
            }
            Deed::Stop { letter, part, turn } => made.end = Some((*letter, *part, *turn)),
        }
        Some(())
    }

    fn kinds_swapped(&self, letters: &[Vec<Letter>]) -> Option<Vec<Vec<Letter>>> {
        let [one, other] = letters else { return None };
        let read = |from: usize, letters: &[Letter], to: usize| -> Option<Vec<Letter>> {
            let [from, to] = [from, to].map(|kind| self.kinds[kind].orbit);
            let named = |letter: &Letter| {
                let name = self.conventions.kind(from).letters.of(letter.target);
                let kind = self.conventions.kind(to);
                let target = Sticker::all().find(|&sticker| kind.letters.of(sticker) == name)?;
                (to.piece(target) != to.piece(kind.buffer)).then_some(Letter { target, ..*letter })
            };
            letters.iter().map(named).collect()
        };
        Some(vec![read(1, other, 0)?, read(0, one, 1)?])
    }

    fn make(&self, drawn: &[&Drawn]) -> Option<Made> {
        let mut made = self.planned();
        for drawn in drawn.iter().filter(|drawn| drawn.fault.when() < When::Turning) {
            self.do_otherwise(&mut made, &drawn.deed)?;
        }
        self.lay_out(&mut made)?;
        for drawn in drawn.iter().filter(|drawn| drawn.fault.when() == When::Turning) {
            self.do_otherwise(&mut made, &drawn.deed)?;
        }
        Some(made)
    }

    /// What comes out of the attempt with these faults.
    pub fn outcome(&self, drawn: &[&Drawn]) -> Option<State> {
        let made = self.make(drawn)?;
        let mut state = State::solved(self.solver.size()).after(&made.scramble).after(made.hold.turns());
        for (number, parts) in &made.parts {
            for (at, part) in parts.iter().enumerate() {
                match made.end {
                    Some((letter, stopped, turn)) if letter == *number && stopped == at => {
                        return Some(state.after(&part[..turn.min(part.len())]));
                    }
                    _ => state = state.after(part),
                }
            }
        }
        Some(state)
    }

    /// Draws so many faults at the given rates, in the order of an attempt, each on what the ones before left; `None` where no such
    /// attempt can be made.
    pub fn draw(&self, count: usize, rate: &dyn Fn(Fault) -> f64, rng: &mut impl Rng) -> Option<Vec<Drawn>> {
        for _ in 0..200 {
            let drawn =
                (0..count).map(|_| Fault::ALL.choose_weighted(rng, |&fault| rate(fault)).ok().copied());
            let mut faults: Vec<Fault> = drawn.collect::<Option<_>>()?;
            faults.sort_by_key(|fault| fault.when());
            let mut drawn: Vec<Drawn> = Vec::new();
            for &fault in &faults {
                let so_far: Vec<&Drawn> = drawn.iter().collect();
                let Some(next) = self.draw_one(fault, &so_far, rng) else { break };
                drawn.push(next);
            }
            if drawn.len() == count {
                return Some(drawn);
            }
        }
        None
    }

    /// Draws a fault of one kind on what others left; `None` where there is no place for it.
    pub fn draw_one(&self, fault: Fault, so_far: &[&Drawn], rng: &mut impl Rng) -> Option<Drawn> {
        let made = self.make(so_far)?;
        let deed = match fault.when() {
            When::Before => Self::before(fault, &made, rng)?,
            When::Looking => self.looking(fault, &made, rng)?,
            When::Remembering => self.remembering(fault, &made, rng)?,
            When::Turning => self.turning(fault, &made, rng)?,
        };
        Some(Drawn { fault, deed })
    }

    fn before(fault: Fault, made: &Made, rng: &mut impl Rng) -> Option<Deed> {
        let mut turns = made.scramble.clone();
        let at = rng.random_range(0..turns.len());
        match fault {
            Fault::PickedUpElse => return Some(Deed::Hold(any_rotation(rng))),
            Fault::ScrambleTurnGone => drop(turns.remove(at)),
            Fault::ScrambleTurnExtra => turns.insert(at, any_face_turn(rng)?),
            Fault::ScrambleTurnsSwapped => {
                let at = rng.random_range(1..turns.len());
                turns.swap(at - 1, at);
            }
            Fault::ScrambleInMirror => {
                let axis = pick(rng, &Axis::ALL)?;
                turns = turns.into_iter().map(|turn| turn.mirrored(axis)).collect();
            }
            Fault::ScrambleHeldElse => {
                // The puzzle is turned, scrambled as written, and turned back.
                let hold = any_rotation(rng);
                turns = [hold.turns(), &turns, hold.inverse().turns()].concat();
            }
            _ => {
                let planned = turns[at];
                let mut others: Vec<Turn> =
                    Amount::ALL.into_iter().map(|amount| Turn::new(planned.block, amount)).collect();
                others.extend(other_faces(planned));
                others.retain(|turn| *turn != planned);
                turns[at] = pick(rng, &others)?;
            }
        }
        Some(Deed::Scramble(turns))
    }

    fn looking(&self, fault: Fault, made: &Made, rng: &mut impl Rng) -> Option<Deed> {
        let has_algorithm = self.method.parity().is_some();
        if let Fault::ParityGone | Fault::ParityExtra = fault {
            let against = self.kinds.iter().position(|kind| kind.against_parity.is_some());
            if let Some(kind) = against {
                // Met in the trace: the other edges are traced.
                let odd =
                    self.kinds.iter().any(|kind| kind.orbit == Orbit::Corner && kind.letters.len() % 2 == 1);
                (odd == (fault == Fault::ParityGone)).then_some(())?;
                let taken = numbered(self.kinds[kind].against_parity.as_ref()?);
                return Some(Deed::Letters { kind, numbers: Vec::new(), taken, looked: false });
            }
            return (has_algorithm && made.parity == (fault == Fault::ParityGone)).then_some(Deed::Parity);
        }
        if fault == Fault::OtherBuffer {
            let kind = rng.random_range(0..self.kinds.len());
            let taken = numbered(&pick(rng, &self.kinds[kind].from_elsewhere)?);
            return Some(Deed::Letters { kind, numbers: Vec::new(), taken, looked: false });
        }
        // Every place where this can happen: which kind of piece, and which letters are others.
        let mut places: Vec<(usize, std::ops::Range<usize>)> = Vec::new();
        for (at, kind) in self.kinds.iter().enumerate() {
            for round in &kind.loops {
                let all = round.numbers.clone();
                let corner = kind.orbit == Orbit::Corner;
                match fault {
                    Fault::Sticker if !round.one_piece => {
                        places.extend(all.map(|number| (at, number..number + 1)));
                    }
                    Fault::StickerFollowed if !round.one_piece => {
                        let begin = if round.with_buffer { all.start } else { all.start + 1 };
                        places.extend((begin..all.end - 1).map(|number| (at, number..all.end)));
                    }
                    Fault::LastGone if !round.one_piece => places.push((at, all.end - 1..all.end)),
                    Fault::CycleGone if !round.one_piece && !round.with_buffer => places.push((at, all)),
                    Fault::FlipGone if round.one_piece && !corner => places.push((at, all)),
                    Fault::TwistGone if round.one_piece && corner => places.push((at, all)),
                    Fault::TwistElse if round.one_piece && corner => places.push((at, all.end - 1..all.end)),
                    _ => {}
                }
            }
        }
        let (at, numbers) = pick(rng, &places)?;
        let orbit = self.kinds[at].orbit;
        let find = |number: usize| made.letters[at].iter().find(|letter| letter.number == number).copied();
        let taken: Vec<Letter> = match fault {
            Fault::Sticker | Fault::StickerFollowed => {
                let turn = rng.random_range(1..orbit.stickers_per_piece());
                let turned = |letter: Letter| Letter { target: orbit.turned(letter.target, turn), ..letter };
                numbers.clone().map(|number| find(number).map(turned)).collect::<Option<_>>()?
            }
            Fault::TwistElse => {
                let [first, second] = [find(numbers.start - 1)?, find(numbers.start)?];
                let third = orbit
                    .stickers_from(first.target)
                    .find(|&sticker| sticker != first.target && sticker != second.target)?;
                vec![Letter { target: third, ..second }]
            }
            _ => Vec::new(),
        };
        Some(Deed::Letters { kind: at, numbers: numbers.collect(), taken, looked: true })
    }

    fn remembering(&self, fault: Fault, made: &Made, rng: &mut impl Rng) -> Option<Deed> {
        if fault == Fault::KindsSwapped {
            self.kinds_swapped(&made.letters)?;
            return Some(Deed::SwapKinds);
        }
        let again = |letter: &Letter| Letter { number: letter.number + 1000, ..*letter };
        let mut places: Vec<(usize, std::ops::Range<usize>)> = Vec::new();
        for (at, letters) in made.letters.iter().enumerate() {
            let (count, pairs) = (letters.len(), letters.len() / 2);
            let pair = |first: usize, last: usize| (at, 2 * first..2 * last + 2);
            match fault {
                Fault::PairGone | Fault::PairTwice | Fault::PairTurned => {
                    places.extend((0..pairs).map(|first| pair(first, first)));
                }
                Fault::PairsSwapped => {
                    places.extend((0..pairs).flat_map(|a| (a + 1..pairs).map(move |b| pair(a, b))));
                }
                Fault::LettersSwapped => {
                    let all = (0..count).flat_map(|a| (a + 1..count).map(move |b| (at, a..b + 1)));
                    places.extend(all.filter(|(_, range)| range.start % 2 == 1 || range.len() > 2));
                }
                Fault::KindGone if count > 0 => places.push((at, 0..count)),
                Fault::KindGone => {}
                _ => places.extend((0..count).map(|letter| (at, letter..letter + 1))),
            }
        }
        let (at, range) = pick(rng, &places)?;
        let orbit = self.kinds[at].orbit;
        let meant = &made.letters[at][range];
        let (one, last) = (meant[0], meant.len() - 1);
        let kind = self.conventions.kind(orbit);
        let mut scheme: Vec<Sticker> = Sticker::all().collect();
        scheme.sort_by_key(|&sticker| kind.letters.of(sticker));
        let place = scheme.iter().position(|&sticker| sticker == one.target)?;
        let may =
            |&sticker: &Sticker| orbit.piece(sticker) != orbit.piece(kind.buffer) && sticker != one.target;
        let others: Vec<Sticker> = match fault {
            Fault::LetterNext => {
                let near = [place.checked_sub(1), Some(place + 1)].into_iter().flatten();
                near.filter_map(|at| scheme.get(at).copied()).filter(may).collect()
            }
            Fault::LetterLike => {
                let like =
                    |sticker: &Sticker| fault::alike(kind.letters.of(one.target), kind.letters.of(*sticker));
                scheme.iter().copied().filter(may).filter(like).collect()
            }
            _ => scheme.iter().copied().filter(may).collect(),
        };
        let mut swapped = meant.to_vec();
        let taken = match fault {
            Fault::LetterNext | Fault::LetterLike | Fault::LetterAny => {
                vec![Letter { target: pick(rng, &others)?, ..one }]
            }
            Fault::LetterTwice | Fault::PairTwice => {
                meant.iter().copied().chain(meant.iter().map(again)).collect()
            }
            Fault::PairTurned | Fault::LettersSwapped => {
                swapped.swap(0, last);
                swapped
            }
            Fault::PairsSwapped => {
                swapped.swap(0, last - 1);
                swapped.swap(1, last);
                swapped
            }
            _ => Vec::new(),
        };
        let numbers = meant.iter().map(|letter| letter.number).collect();
        Some(Deed::Letters { kind: at, numbers, taken, looked: false })
    }
}

/// An algorithm for two letters as it is learned: with its set-up apart where it is written with one.
fn halves(case: &Case, turns: &[Turn]) -> [Vec<Turn>; 3] {
    let Some((set_up, body)) = case.algorithm().conjugated() else {
        return [Vec::new(), turns.to_vec(), Vec::new()];
    };
    let (set_up, body) = (set_up.flatten(), body.flatten());
    let undo = inverted(&set_up);
    if [set_up.as_slice(), &body, &undo].concat() == turns {
        [set_up, body, undo]
    } else {
        [Vec::new(), turns.to_vec(), Vec::new()]
    }
}

/// Conventions with every method, parity, choice of breaks, order of kinds, hold and scheme of letters, drawn from a seed.
pub fn solvers(count: usize) -> Vec<Solver> {
    let mut rng = rand_chacha::ChaCha8Rng::seed_from_u64(11);
    let mut solvers = Vec::new();
    while solvers.len() < count {
        let parity = *ParityChoice::ALL.choose(&mut rng).expect("two choices");
        let mut order = [Orbit::Corner, Orbit::Midge];
        order.shuffle(&mut rng);
        let execution_order = OrbitOrder::new(&order);
        let holding = Rotation::all().nth(rng.random_range(0..24)).expect("24 holds");
        let mut conventions = Conventions { parity, execution_order, holding, ..Conventions::default() };
        for orbit in [Orbit::Corner, Orbit::Midge] {
            let name = *MethodName::ALL.choose(&mut rng).expect("three methods");
            let Some(usual) = usual(name, orbit) else { continue };
            let kind = conventions.kind_mut(orbit);
            (kind.method, kind.buffer, kind.algorithm) = (name, usual.buffer, Some(usual.algorithm));
            let breaks = [BreakChoice::First, BreakChoice::Fewest, BreakChoice::Least];
            let mut letters: Vec<String> = ('A'..='X').map(String::from).collect();
            letters.shuffle(&mut rng);
            kind.letters = Letters::new(&letters).expect("24 different letters");
            kind.breaks = breaks.choose(&mut rng).expect("three choices").clone();
        }
        let solver = Solver::new(Size::THREE, conventions);
        if solver.method().is_ok() {
            solvers.push(solver);
        }
    }
    solvers
}

/// A scramble that leads to a uniformly random state of a 3x3.
pub fn scramble(rng: &mut impl Rng) -> Vec<Turn> {
    search::scramble::leading_to(&search::random::state3(rng)).unwrap_or_default()
}

/// Letters in place of all those of a kind, with numbers that are no other's.
fn numbered(targets: &[Sticker]) -> Vec<Letter> {
    targets.iter().enumerate().map(|(at, &target)| Letter { number: 5000 + at, target }).collect()
}

fn any_rotation(rng: &mut impl Rng) -> Rotation {
    let all: Vec<Rotation> = Rotation::all().skip(1).collect();
    pick(rng, &all).unwrap_or(Rotation::NONE)
}

fn any_face_turn(rng: &mut impl Rng) -> Option<Turn> {
    let faces: Vec<Turn> = Turn::faces().collect();
    pick(rng, &faces)
}

fn other_faces(turn: Turn) -> Vec<Turn> {
    let others = Face::ALL.into_iter();
    match turn.block {
        Block::Outer { face, depth } => others
            .filter(|&other| other != face)
            .map(|face| Turn::new(Block::Outer { face, depth }, turn.amount))
            .collect(),
        Block::Inner { face, first, last } => others
            .filter(|&other| other != face)
            .map(|face| Turn::new(Block::Inner { face, first, last }, turn.amount))
            .collect(),
        Block::Slice(slice) => Slice::ALL
            .into_iter()
            .filter(|&other| other != slice)
            .map(|slice| Turn::new(Block::Slice(slice), turn.amount))
            .collect(),
        Block::Whole(_) => vec![turn],
    }
}
