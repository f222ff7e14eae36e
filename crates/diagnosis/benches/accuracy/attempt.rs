//! Simulated attempts: a scramble, our own tracing of it, and slips drawn by weights and carried out by hand.
//!
//! On purpose nothing here comes from the search for explanations: only the cube, the catalogue, and the solver's
//! letters, algorithms and set-ups.

use blind::{Conventions, Method, Solver, Swap};
use cube::{Amount, Block, Face, Orbit, Rotation, Size, State, Sticker, Turn, inverted};
use diagnosis::{Catalogue, SlipKind, Stage};
use rand::prelude::*;

/// A letter that keeps its number whatever is done to it.
#[derive(Clone, Copy, PartialEq, Debug)]
struct Letter {
    number: usize,
    target: Sticker,
}

/// A cycle of the trace: its letters by number, whether the buffer is in it, and whether it is one piece turned.
#[derive(Clone, Debug)]
struct Cycle {
    numbers: std::ops::Range<usize>,
    holds_buffer: bool,
    one_piece: bool,
}

/// What is done otherwise than planned.
#[derive(Clone, Debug)]
enum Deed {
    Scramble {
        turn: usize,
        made: Option<Turn>,
    },
    Hold(Rotation),
    /// Letters, by number, for other letters. What was traced decides about parity; what is recalled no longer does.
    Letters {
        kind: usize,
        numbers: Vec<usize>,
        taken: Vec<Letter>,
        traced: bool,
    },
    Parity,
    /// Turns `from..to` of a part of a letter (or of parity) for others; the parts are set-up, algorithm, undoing.
    Hands {
        letter: usize,
        part: usize,
        from: usize,
        to: usize,
        made: Vec<Turn>,
    },
}

/// A slip that was drawn.
#[derive(Clone, Debug)]
pub struct Drawn {
    pub kind: SlipKind,
    deed: Deed,
}

/// The number of the parity algorithm among letters.
const PARITY: usize = usize::MAX;

/// An attempt to be made.
pub struct Attempt<'a> {
    conventions: &'a Conventions,
    /// None where the solver has none; nothing is then carried out.
    method: Option<&'a Method>,
    pub scramble: Vec<Turn>,
    /// In the order of execution.
    kinds: Vec<(Orbit, Vec<Letter>, Vec<Cycle>)>,
}

/// The attempt as it is made.
#[derive(Clone)]
struct Made {
    scramble: Vec<Turn>,
    hold: Rotation,
    letters: Vec<Vec<Letter>>,
    parity: bool,
    /// Letter numbers with their three parts, in order.
    parts: Vec<(usize, [Vec<Turn>; 3])>,
}

fn pick<T: Clone>(rng: &mut impl Rng, list: &[T]) -> Option<T> {
    list.choose(rng).cloned()
}

/// A scramble that leads to a uniformly random state.
pub fn scramble(rng: &mut impl Rng) -> Vec<Turn> {
    search::scramble::leading_to(&search::random::state3(rng)).unwrap_or_default()
}

/// Follows the pieces by looking, as a solver does; cycles are broken into at the first letter not yet met.
fn trace(
    state: &State,
    orbit: Orbit,
    buffer: Sticker,
    order: &[Sticker],
    first: usize,
) -> (Vec<Letter>, Vec<Cycle>) {
    let mut met: Vec<cube::Piece> = vec![orbit.piece(buffer)];
    let mut letters: Vec<Letter> = Vec::new();
    let mut cycles = Vec::new();
    let say = |target: Sticker, letters: &mut Vec<Letter>| {
        letters.push(Letter { number: first + letters.len(), target });
    };
    let mut at = state.at(orbit, buffer);
    while orbit.piece(at) != orbit.piece(buffer) {
        met.push(orbit.piece(at));
        say(at, &mut letters);
        at = state.at(orbit, at);
    }
    if !letters.is_empty() {
        cycles.push(Cycle { numbers: first..first + letters.len(), holds_buffer: true, one_piece: false });
    }
    for &begin in order {
        if met.contains(&orbit.piece(begin)) || state.at(orbit, begin) == begin {
            continue;
        }
        let from = letters.len();
        let mut at = begin;
        loop {
            met.push(orbit.piece(at));
            say(at, &mut letters);
            at = state.at(orbit, at);
            if orbit.piece(at) == orbit.piece(begin) {
                break;
            }
        }
        say(at, &mut letters);
        let one_piece = letters.len() - from == 2;
        cycles.push(Cycle { numbers: first + from..first + letters.len(), holds_buffer: false, one_piece });
    }
    (letters, cycles)
}

impl<'a> Attempt<'a> {
    pub fn new(scramble: Vec<Turn>, solver: &'a Solver) -> Self {
        let state = State::solved(Size::THREE).after(&scramble);
        let (conventions, method) = (solver.conventions(), solver.method().ok());
        let mut first = 0;
        let kinds = conventions
            .execution_order
            .of(Size::THREE)
            .map(|orbit| {
                let scheme = &conventions.kind(orbit).letters;
                let mut order: Vec<Sticker> = Sticker::all().collect();
                order.sort_by_key(|&sticker| scheme.of(sticker));
                let (letters, cycles) = trace(&state, orbit, conventions.kind(orbit).buffer, &order, first);
                first += letters.len();
                (orbit, letters, cycles)
            })
            .collect();
        Self { conventions, method, scramble, kinds }
    }

    fn planned(&self) -> Made {
        Made {
            scramble: self.scramble.clone(),
            hold: Rotation::NONE,
            letters: self.kinds.iter().map(|(_, letters, _)| letters.clone()).collect(),
            parity: self.kinds[0].1.len() % 2 == 1,
            parts: Vec::new(),
        }
    }

    fn swap(&self, orbit: Orbit) -> Option<&Swap> {
        self.method.and_then(|method| method.swap(orbit))
    }

    fn parity(&self) -> Option<Vec<Turn>> {
        self.method.and_then(Method::parity).map(cube::Algorithm::flatten)
    }

    fn setup(&self, orbit: Orbit, target: Sticker) -> Vec<Turn> {
        self.swap(orbit).map(|swap| swap.setups(target)[0].turns().to_vec()).unwrap_or_default()
    }

    fn lay_out(&self, made: &mut Made) {
        for (kind, letters) in made.letters.iter().enumerate() {
            let orbit = self.kinds[kind].0;
            for letter in letters {
                let setup = self.setup(orbit, letter.target);
                let algorithm = self.swap(orbit).map(|swap| swap.turns().to_vec()).unwrap_or_default();
                let undo = inverted(&setup);
                made.parts.push((letter.number, [setup, algorithm, undo]));
            }
            if kind == 0 && made.parity {
                let turns = self.parity().unwrap_or_default();
                made.parts.push((PARITY, [Vec::new(), turns, Vec::new()]));
            }
        }
    }

    /// Does one thing otherwise; `None` where it can no longer be done.
    fn do_otherwise(made: &mut Made, deed: &Deed) -> Option<()> {
        match deed {
            Deed::Scramble { turn, made: instead } => {
                let at = made.scramble.get_mut(*turn)?;
                match instead {
                    Some(turn) => *at = *turn,
                    None => drop(made.scramble.remove(*turn)),
                }
            }
            Deed::Hold(rotation) => made.hold = made.hold.then(*rotation),
            Deed::Letters { kind, numbers, taken, traced } => {
                let letters = &mut made.letters[*kind];
                let first = letters.iter().position(|letter| letter.number == numbers[0])?;
                let found: Vec<usize> =
                    letters.get(first..first + numbers.len())?.iter().map(|letter| letter.number).collect();
                if found != *numbers {
                    return None;
                }
                letters.splice(first..first + numbers.len(), taken.iter().copied());
                made.parity ^= *traced && *kind == 0 && numbers.len() % 2 != taken.len() % 2;
            }
            Deed::Parity => made.parity = !made.parity,
            Deed::Hands { letter, part, from, to, made: instead } => {
                let parts = made.parts.iter_mut().find(|(number, _)| number == letter)?;
                let turns = &mut parts.1[*part];
                if *to > turns.len() {
                    return None;
                }
                turns.splice(*from..*to, instead.iter().copied());
            }
        }
        Some(())
    }

    fn make(&self, drawn: &[&Drawn]) -> Option<Made> {
        let mut made = self.planned();
        let mut laid_out = false;
        for slip in drawn.iter().filter(|slip| !matches!(slip.deed, Deed::Hands { .. })) {
            Self::do_otherwise(&mut made, &slip.deed)?;
        }
        for slip in drawn.iter().filter(|slip| matches!(slip.deed, Deed::Hands { .. })) {
            if !laid_out {
                self.lay_out(&mut made);
                laid_out = true;
            }
            Self::do_otherwise(&mut made, &slip.deed)?;
        }
        if !laid_out {
            self.lay_out(&mut made);
        }
        Some(made)
    }

    /// What comes out of the attempt with these slips.
    pub fn outcome(&self, drawn: &[&Drawn]) -> Option<State> {
        let made = self.make(drawn)?;
        let mut state = State::solved(Size::THREE).after(&made.scramble).after(made.hold.turns());
        for (_, parts) in &made.parts {
            for part in parts {
                state = state.after(part);
            }
        }
        Some(state)
    }

    /// Draws slips by the weights of a catalogue, in the order of an attempt, each on what the ones before left.
    pub fn draw(&self, count: usize, catalogue: &Catalogue, rng: &mut impl Rng) -> Vec<Drawn> {
        let mut kinds: Vec<SlipKind> = Vec::new();
        let mut drawn: Vec<Drawn> = Vec::new();
        loop {
            kinds.clear();
            drawn.clear();
            while kinds.len() < count {
                let Ok(kind) = SlipKind::ALL.choose_weighted(rng, |&kind| catalogue.weight(kind)) else {
                    return drawn;
                };
                kinds.push(*kind);
            }
            kinds.sort_by_key(|kind| Stage::ALL.iter().position(|&stage| stage == kind.stage()));
            for &kind in &kinds {
                let so_far: Vec<&Drawn> = drawn.iter().collect();
                let Some(slip) = self.draw_kind(kind, &so_far, catalogue, rng) else { break };
                drawn.push(slip);
            }
            if drawn.len() == count {
                return drawn;
            }
        }
    }

    /// Draws a slip of one kind on what others left; `None` where there is no place for it.
    pub fn draw_kind(
        &self,
        kind: SlipKind,
        so_far: &[&Drawn],
        catalogue: &Catalogue,
        rng: &mut impl Rng,
    ) -> Option<Drawn> {
        let made = self.make(so_far)?;
        Some(Drawn { kind, deed: self.deed(kind, &made, catalogue, rng)? })
    }

    fn deed(&self, kind: SlipKind, made: &Made, catalogue: &Catalogue, rng: &mut impl Rng) -> Option<Deed> {
        match kind.stage() {
            Stage::Start => Some(Self::at_the_start(kind, made, rng)),
            Stage::Tracing => self.tracing(kind, made, rng),
            Stage::Recall => self.recall(kind, made, catalogue, rng),
            Stage::Execution => self.hands(kind, made, rng),
        }
    }

    fn at_the_start(kind: SlipKind, made: &Made, rng: &mut impl Rng) -> Deed {
        let turn = rng.random_range(0..made.scramble.len());
        let planned = made.scramble[turn];
        match kind {
            SlipKind::HeldWrong => Deed::Hold(any_rotation(rng)),
            SlipKind::ScrambleTurnLeftOut => Deed::Scramble { turn, made: None },
            _ => {
                let mut others: Vec<Turn> = Amount::ALL
                    .into_iter()
                    .filter(|&amount| amount != planned.amount)
                    .map(|amount| Turn::new(planned.block, amount))
                    .collect();
                others.extend(other_faces(planned));
                Deed::Scramble { turn, made: pick(rng, &others) }
            }
        }
    }

    fn tracing(&self, kind: SlipKind, made: &Made, rng: &mut impl Rng) -> Option<Deed> {
        match kind {
            SlipKind::ParityOverlooked if made.parity => return Some(Deed::Parity),
            SlipKind::ParityWithoutNeed if !made.parity => return Some(Deed::Parity),
            SlipKind::ParityOverlooked | SlipKind::ParityWithoutNeed => return None,
            _ => {}
        }
        // Every place where this kind of slip can happen: which kind of piece, which letters, whether all are turned.
        let mut places: Vec<(usize, std::ops::Range<usize>)> = Vec::new();
        for (at, (orbit, _, cycles)) in self.kinds.iter().enumerate() {
            for cycle in cycles {
                let all = cycle.numbers.clone();
                let corner = *orbit == Orbit::Corner;
                match kind {
                    SlipKind::WrongSticker if !cycle.one_piece => {
                        places.extend(all.map(|number| (at, number..number + 1)));
                    }
                    SlipKind::WrongStickerFollowed if !cycle.one_piece => {
                        let begin = if cycle.holds_buffer { all.start } else { all.start + 1 };
                        places.extend((begin..all.end - 1).map(|number| (at, number..all.end)));
                    }
                    SlipKind::ClosedEarly if !cycle.one_piece => places.push((at, all.end - 1..all.end)),
                    SlipKind::CycleMissed if !cycle.one_piece && !cycle.holds_buffer => {
                        places.push((at, all));
                    }
                    SlipKind::FlipMissed if cycle.one_piece && !corner => places.push((at, all)),
                    SlipKind::TwistMissed if cycle.one_piece && corner => places.push((at, all)),
                    SlipKind::TwistOtherWay if cycle.one_piece && corner => {
                        places.push((at, all.end - 1..all.end));
                    }
                    _ => {}
                }
            }
        }
        let (at, numbers) = pick(rng, &places)?;
        let orbit = self.kinds[at].0;
        let find = |number: usize| made.letters[at].iter().find(|letter| letter.number == number).copied();
        let taken: Vec<Letter> = match kind {
            SlipKind::WrongSticker | SlipKind::WrongStickerFollowed => {
                let turn = rng.random_range(1..orbit.stickers_per_piece());
                let turned = |letter: Letter| Letter { target: orbit.turned(letter.target, turn), ..letter };
                numbers.clone().map(|number| find(number).map(turned)).collect::<Option<_>>()?
            }
            SlipKind::TwistOtherWay => {
                let [first, second] = [find(numbers.start - 1)?, find(numbers.start)?];
                let third = orbit
                    .stickers_from(first.target)
                    .find(|&sticker| sticker != first.target && sticker != second.target)?;
                vec![Letter { target: third, ..second }]
            }
            _ => Vec::new(),
        };
        Some(Deed::Letters { kind: at, numbers: numbers.collect(), taken, traced: true })
    }

    fn recall(&self, kind: SlipKind, made: &Made, catalogue: &Catalogue, rng: &mut impl Rng) -> Option<Deed> {
        let fresh = |letter: Letter| Letter { number: letter.number + 1000, ..letter };
        let mut places: Vec<(usize, std::ops::Range<usize>)> = Vec::new();
        for (at, letters) in made.letters.iter().enumerate() {
            let pairs = letters.len() / 2;
            match kind {
                SlipKind::PairDropped | SlipKind::PairDoubled | SlipKind::PairReversed => {
                    places.extend((0..pairs).map(|pair| (at, 2 * pair..2 * pair + 2)));
                }
                SlipKind::PairsExchanged => {
                    places.extend((1..pairs).map(|pair| (at, 2 * pair - 2..2 * pair + 2)));
                }
                _ => places.extend((0..letters.len()).map(|letter| (at, letter..letter + 1))),
            }
        }
        let (at, range) = pick(rng, &places)?;
        let orbit = self.kinds[at].0;
        let meant = &made.letters[at][range];
        let one = meant[0];
        let kind_conventions = self.conventions.kind(orbit);
        let letters = &kind_conventions.letters;
        let mut scheme: Vec<Sticker> = Sticker::all().collect();
        scheme.sort_by_key(|&sticker| letters.of(sticker));
        let place = scheme.iter().position(|&sticker| sticker == one.target)?;
        let may = |&sticker: &Sticker| {
            orbit.piece(sticker) != orbit.piece(kind_conventions.buffer) && sticker != one.target
        };
        let others: Vec<Sticker> = match kind {
            SlipKind::LetterNeighbour => {
                let near = [place.checked_sub(1), Some(place + 1)].into_iter().flatten();
                near.filter_map(|at| scheme.get(at).copied()).filter(may).collect()
            }
            SlipKind::LetterAlike => {
                let alike = |sticker: &Sticker| catalogue.alike(letters.of(one.target), letters.of(*sticker));
                scheme.iter().copied().filter(may).filter(alike).collect()
            }
            _ => scheme.iter().copied().filter(may).collect(),
        };
        let taken = match kind {
            SlipKind::LetterNeighbour | SlipKind::LetterAlike | SlipKind::LetterOther => {
                vec![Letter { target: pick(rng, &others)?, ..one }]
            }
            SlipKind::LetterDoubled => vec![one, fresh(one)],
            SlipKind::PairDoubled => vec![one, meant[1], fresh(one), fresh(meant[1])],
            SlipKind::PairReversed => vec![meant[1], one],
            SlipKind::PairsExchanged => vec![meant[2], meant[3], one, meant[1]],
            _ => Vec::new(),
        };
        let numbers = meant.iter().map(|letter| letter.number).collect();
        Some(Deed::Letters { kind: at, numbers, taken, traced: false })
    }

    fn hands(&self, kind: SlipKind, made: &Made, rng: &mut impl Rng) -> Option<Deed> {
        let mut laid = made.clone();
        if laid.parts.is_empty() {
            self.lay_out(&mut laid);
        }
        let all = || {
            laid.parts.iter().flat_map(|(letter, parts)| {
                parts.iter().enumerate().map(move |(part, turns)| (*letter, part, turns.clone()))
            })
        };
        let of_turn = |wanted: &dyn Fn(Turn) -> bool| -> Vec<(usize, usize, usize, Turn)> {
            all()
                .flat_map(|(letter, part, turns)| {
                    turns.into_iter().enumerate().map(move |(at, turn)| (letter, part, at, turn))
                })
                .filter(|&(.., turn)| wanted(turn))
                .collect()
        };
        let quarter = |turn: Turn| turn.amount != Amount::Half;
        let half = |turn: Turn| turn.amount == Amount::Half;
        let outer = |turn: Turn| matches!(turn.block, Block::Outer { .. });
        let any = |_: Turn| true;
        let wanted: &dyn Fn(Turn) -> bool = match kind {
            SlipKind::TurnOtherWay | SlipKind::TurnHalf => &quarter,
            SlipKind::TurnQuarter => &half,
            SlipKind::TurnWide => &outer,
            _ => &any,
        };
        let turns = of_turn(wanted);
        let replace = |(letter, part, at, _): (usize, usize, usize, Turn), made: Vec<Turn>| {
            Some(Deed::Hands { letter, part, from: at, to: at + 1, made })
        };
        match kind {
            SlipKind::TurnOtherWay => pick(rng, &turns).and_then(|at| replace(at, vec![at.3.inverse()])),
            SlipKind::TurnHalf => {
                pick(rng, &turns).and_then(|at| replace(at, vec![Turn::new(at.3.block, Amount::Half)]))
            }
            SlipKind::TurnQuarter => {
                let amount = if rng.random() { Amount::Clockwise } else { Amount::Counter };
                pick(rng, &turns).and_then(|at| replace(at, vec![Turn::new(at.3.block, amount)]))
            }
            SlipKind::TurnLeftOut => pick(rng, &turns).and_then(|at| replace(at, Vec::new())),
            SlipKind::TurnAdded => {
                let (letter, part, at, turn) = pick(rng, &turns)?;
                let faces: Vec<Turn> = Turn::faces().collect();
                replace((letter, part, at, turn), vec![pick(rng, &faces)?, turn])
            }
            SlipKind::TurnOtherFace => {
                let at = pick(rng, &turns)?;
                replace(at, vec![pick(rng, &other_faces(at.3))?])
            }
            SlipKind::TurnWide => {
                let at = pick(rng, &turns)?;
                let Block::Outer { face, depth } = at.3.block else { return None };
                replace(at, vec![Turn::new(Block::Outer { face, depth: 3 - depth }, at.3.amount)])
            }
            _ => self.whole_parts(kind, &laid, rng),
        }
    }

    fn whole_parts(&self, kind: SlipKind, laid: &Made, rng: &mut impl Rng) -> Option<Deed> {
        let all = || {
            laid.parts.iter().flat_map(|(letter, parts)| {
                parts.iter().enumerate().map(move |(part, turns)| (*letter, part, turns.clone()))
            })
        };
        let parts = |wanted: &dyn Fn(usize, usize) -> bool| -> Vec<(usize, usize, Vec<Turn>)> {
            all().filter(|(letter, part, turns)| !turns.is_empty() && wanted(*letter, *part)).collect()
        };
        let whole = |(letter, part, turns): (usize, usize, Vec<Turn>), made: Vec<Turn>| {
            Some(Deed::Hands { letter, part, from: 0, to: turns.len(), made })
        };
        match kind {
            SlipKind::SetupNotUndone => {
                pick(rng, &parts(&|_, part| part == 2)).and_then(|at| whole(at, Vec::new()))
            }
            SlipKind::SetupUndoneWrongWay => {
                let at = pick(rng, &parts(&|_, part| part == 2))?;
                let again = inverted(&at.2);
                let order: Vec<Turn> = at.2.iter().rev().copied().collect();
                whole(at, if rng.random() { again } else { order })
            }
            SlipKind::SetupOfAnother => {
                let at = pick(rng, &parts(&|letter, part| part != 1 && letter != PARITY))?;
                let kind = laid
                    .letters
                    .iter()
                    .position(|letters| letters.iter().any(|other| other.number == at.0))?;
                let orbit = self.kinds[kind].0;
                let buffer = orbit.piece(self.conventions.kind(orbit).buffer);
                let others: Vec<Vec<Turn>> = Sticker::all()
                    .filter(|&sticker| orbit.piece(sticker) != buffer)
                    .map(|sticker| self.setup(orbit, sticker))
                    .map(|setup| if at.1 == 2 { inverted(&setup) } else { setup })
                    .filter(|setup| !setup.is_empty() && *setup != at.2)
                    .collect();
                let other = pick(rng, &others)?;
                whole(at, other)
            }
            SlipKind::AlgorithmLeftOut => {
                pick(rng, &parts(&|_, part| part == 1)).and_then(|at| whole(at, Vec::new()))
            }
            SlipKind::AlgorithmDoubled => pick(rng, &parts(&|_, part| part == 1)).and_then(|at| {
                // Made again it is made as it was learned, whatever slipped the first time.
                let mut learned = Made { parts: Vec::new(), ..laid.clone() };
                self.lay_out(&mut learned);
                let again = learned.parts.iter().find(|(letter, _)| *letter == at.0)?;
                let twice = [at.2.as_slice(), &again.1[1]].concat();
                whole(at, twice)
            }),
            SlipKind::AlgorithmInverted => pick(rng, &parts(&|_, part| part == 1)).and_then(|at| {
                let back = inverted(&at.2);
                whole(at, back)
            }),
            SlipKind::AlgorithmOfOtherKind => {
                let at = pick(rng, &parts(&|_, part| part == 1))?;
                let mut others: Vec<Vec<Turn>> = self
                    .kinds
                    .iter()
                    .filter_map(|(orbit, ..)| self.swap(*orbit).map(|swap| swap.turns().to_vec()))
                    .collect();
                others.extend(self.parity());
                others.retain(|turns| *turns != at.2);
                let other = pick(rng, &others)?;
                whole(at, other)
            }
            _ => {
                let (letter, part, _) = pick(rng, &parts(&|_, _| true))?;
                let made = any_rotation(rng).turns().to_vec();
                Some(Deed::Hands { letter, part, from: 0, to: 0, made })
            }
        }
    }
}

fn any_rotation(rng: &mut impl Rng) -> Rotation {
    let all: Vec<Rotation> = Rotation::all().skip(1).collect();
    pick(rng, &all).unwrap_or(Rotation::NONE)
}

fn other_faces(turn: Turn) -> Vec<Turn> {
    match turn.block {
        Block::Outer { face, depth } => Face::ALL
            .into_iter()
            .filter(|&other| other != face)
            .map(|face| Turn::new(Block::Outer { face, depth }, turn.amount))
            .collect(),
        Block::Inner { face, first, last } => Face::ALL
            .into_iter()
            .filter(|&other| other != face)
            .map(|face| Turn::new(Block::Inner { face, first, last }, turn.amount))
            .collect(),
        Block::Slice(slice) => cube::Slice::ALL
            .into_iter()
            .filter(|&other| other != slice)
            .map(|slice| Turn::new(Block::Slice(slice), turn.amount))
            .collect(),
        Block::Whole(_) => vec![turn],
    }
}
