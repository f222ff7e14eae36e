//! `hoodwink check`: whether a memo, or the moves of an attempt, are right.

use crate::arguments::{CheckOptions, Hold, MemoOptions, YesNo};
use crate::failure::Failure;
use crate::input::Session;
use crate::{pictures, wire};
use blind::{Solver, kind_name};
use cube::{Orbit, Size, State, Sticker, display_turns};
use diagnosis::{KindCheck, MemoCheck, MovesCheck, Scrambled, check_moves, check_scrambled};
use serde::Serialize;
use std::io::{self, Write};
use std::process::ExitCode;
use voice::MOST_SLIPS;

/// What `check --json` prints.
#[derive(Debug, Serialize)]
struct Checked {
    version: u32,
    puzzle: u8,
    /// Whether it solves the puzzle; of moves: whether they carry the plan out and solve it.
    right: bool,
    /// The letters of each kind that were checked, or that the moves were compared with.
    memo: Vec<KindLetters>,
    /// The first slips of each kind of a memo, or what it is right for; of moves the first slip.
    slips: Vec<Slip>,
    /// How many slips of a memo there are beside these.
    more: usize,
    /// What it leads to, as held to solve; none if the memo cannot be carried out.
    #[serde(skip)]
    outcome: Option<State>,
    /// Its stickers, as `--facelets` reads them.
    facelets: Option<String>,
    /// Pieces that it leaves unsolved.
    unsolved: Vec<String>,
    /// In words.
    sentence: String,
}

/// The letters of a kind.
#[derive(Debug, Serialize)]
struct KindLetters {
    kind: &'static str,
    letters: String,
    /// Whether these letters solve the kind.
    right: bool,
}

/// A slip.
#[derive(Debug, Serialize)]
struct Slip {
    /// What is wrong.
    kind: String,
    /// `corner` or `edge`; none for parity.
    pieces: Option<&'static str>,
    /// Which letter of the kind's memo, from 1; of moves, which move. None for parity.
    position: Option<usize>,
    /// The letter; none after the end.
    letter: Option<String>,
    /// In words.
    sentence: String,
    /// Letters that would have been right there; of moves, the moves of the plan.
    expected: Vec<String>,
}

/// The letters of each kind.
type Letters = Vec<(Orbit, Vec<Sticker>)>;

/// The letters of each kind as they were written down, `None` when none were; and whether parity is noted.
pub fn written(
    session: &Session,
    options: &MemoOptions,
    size: Size,
) -> Result<(Option<Letters>, bool), Failure> {
    let mut memo = Vec::new();
    let mut parity = false;
    for (orbit, text) in texts(session, options, size)? {
        let letters = &session.conventions.kind(orbit).letters;
        let read = letters
            .read_memo(text)
            .map_err(|error| Failure::input(session.voice.unknown_letter(orbit, letters, &error)))?;
        parity |= read.parity;
        memo.push((orbit, read.letters));
    }
    Ok(((!memo.is_empty()).then_some(memo), parity))
}

/// What was given of each kind.
fn texts<'a>(
    session: &Session,
    options: &'a MemoOptions,
    size: Size,
) -> Result<Vec<(Orbit, &'a str)>, Failure> {
    let mut given: Vec<(Orbit, &str)> = Vec::new();
    for (orbit, text) in [(Orbit::Corner, &options.corners), (Orbit::Midge, &options.edges)] {
        if let Some(text) = text {
            given.push((session.kind(kind_name(orbit), size)?, text));
        }
    }
    for other in &options.others {
        let (kind, text) = other.split_once('=').ok_or_else(|| {
            Failure::input(session.voice.say("check-no-kind", &[("text", other.as_str().into())]))
        })?;
        let orbit = session.kind(kind.trim(), size)?;
        if given.iter().any(|(known, _)| *known == orbit) {
            let blanks = [("kinds", session.voice.kinds(orbit).into())];
            return Err(Failure::input(session.voice.say("check-kind-twice", &blanks)));
        }
        given.push((orbit, text));
    }
    Ok(given)
}

/// Runs the command.
pub fn run(session: &Session, options: &CheckOptions) -> Result<ExitCode, Failure> {
    let puzzle = session.puzzle(&options.state)?;
    let solver = session.solver(puzzle.size)?;
    if options.hold == Hold::Best && puzzle.size.is_odd() {
        let blanks = [("size", puzzle.size.to_string().into())];
        return Err(Failure::input(session.voice.say("hold-best-odd", &blanks)));
    }
    let held = solver
        .pick_up(&puzzle.state, options.hold.into())
        .map_err(|fault| Failure::input(session.voice.not_proven(fault)))?;
    let (given, noted) = written(session, &options.memo, puzzle.size)?;
    let checked = if let Some(text) = &options.moves {
        session.method(&solver)?;
        let moves = session.turns(text, puzzle.size)?;
        moves_checked(session, &solver, &held.state, given, &moves)?
    } else {
        let given = given.ok_or_else(|| Failure::input(session.voice.word("check-no-memo")))?;
        if noted && options.parity == Some(YesNo::No) {
            return Err(Failure::input(session.voice.word("check-parity-twice")));
        }
        let parity = options.parity.map(|answer| answer == YesNo::Yes).or(noted.then_some(true));
        let turns = match &puzzle.scramble {
            Some(text) => Some(session.turns(text, puzzle.size)?),
            None => None,
        };
        let scrambled = Scrambled { scramble: turns.as_deref(), state: &puzzle.state, held: &held };
        let check = check_scrambled(&scrambled, &given, parity, &solver)
            .map_err(|error| Failure::input(session.voice.memo_error(&error)))?;
        memo_checked(session, &check, puzzle.size)
    };
    let mut out = io::stdout().lock();
    if options.json {
        serde_json::to_writer(&mut out, &checked).map_err(io::Error::from)?;
        writeln!(out)?;
    } else {
        write_text(session, &checked, &mut out)?;
    }
    Ok(if options.strict && !checked.right { ExitCode::from(1) } else { ExitCode::SUCCESS })
}

fn write_text(session: &Session, checked: &Checked, out: &mut impl Write) -> Result<(), Failure> {
    if !checked.right
        && let Some(state) = &checked.outcome
    {
        writeln!(
            out,
            "{}",
            pictures::net(session, &State::held(state.size(), session.conventions.holding).then(state))
        )?;
    }
    writeln!(out, "{}", checked.sentence)?;
    Ok(())
}

fn names(kinds: &[(Orbit, Vec<Sticker>)]) -> Vec<String> {
    kinds
        .iter()
        .flat_map(|(orbit, pieces)| pieces.iter().map(|&piece| orbit.piece_name(piece).to_owned()))
        .collect()
}

fn memo_checked(session: &Session, check: &MemoCheck, size: Size) -> Checked {
    let (voice, conventions) = (&session.voice, &session.conventions);
    let right = check.right();
    let mut slips: Vec<Slip> = Vec::new();
    let mut more = 0;
    match &check.circumstance {
        Some(found) if !right => slips.push(Slip {
            kind: found.name().to_owned(),
            pieces: None,
            position: None,
            letter: None,
            sentence: voice.circumstance(found, right, conventions),
            expected: Vec::new(),
        }),
        _ => {
            slips.extend(check.kinds.iter().flat_map(|kind| slips_of(session, kind).take(MOST_SLIPS)));
            more = check.kinds.iter().map(|kind| kind.slips.len().saturating_sub(MOST_SLIPS)).sum();
        }
    }
    slips.extend(check.parity.map(|fault| {
        Slip {
            kind: match fault {
                diagnosis::ParityFault::Overlooked => "parity-overlooked",
                diagnosis::ParityFault::WithoutNeed => "parity-without-need",
            }
            .to_owned(),
            pieces: None,
            position: None,
            letter: None,
            sentence: voice.parity_fault(fault),
            expected: Vec::new(),
        }
    }));
    // What was not checked is not spoken of as left.
    let checked = |orbit: &Orbit| check.kinds.iter().any(|kind| kind.orbit == *orbit);
    let unsolved: Letters = match &check.outcome {
        Some(outcome) => unsolved(outcome).into_iter().filter(|(orbit, _)| checked(orbit)).collect(),
        None => check.kinds.iter().map(|kind| (kind.orbit, kind.unsolved.clone())).collect(),
    };
    let unsolved = names(&unsolved);
    let mut lines = voice.memo_checked(check, conventions);
    if !right && !unsolved.is_empty() && check.outcome.is_some() {
        lines.push(voice.say("check-leads-to", &[("pieces", voice.list(&unsolved).into())]));
    }
    Checked {
        version: wire::VERSION,
        puzzle: size.layers(),
        right,
        memo: check
            .kinds
            .iter()
            .map(|kind| letters_of(session, kind.orbit, &kind.letters, kind.right))
            .collect(),
        slips,
        more,
        outcome: check.outcome,
        facelets: check.outcome.map(|state| session.stickers(&state)),
        unsolved,
        sentence: lines.join("\n"),
    }
}

fn letters_of(session: &Session, orbit: Orbit, letters: &[Sticker], right: bool) -> KindLetters {
    let scheme = &session.conventions.kind(orbit).letters;
    KindLetters { kind: kind_name(orbit), letters: scheme.spell(letters), right }
}

fn slips_of(session: &Session, kind: &KindCheck) -> impl Iterator<Item = Slip> {
    let letters = &session.conventions.kind(kind.orbit).letters;
    let spelled = |sticker: &Sticker| letters.of(*sticker).to_owned();
    kind.slips.iter().map(move |slip| Slip {
        kind: slip.fault.name().to_owned(),
        pieces: Some(kind_name(kind.orbit)),
        position: Some(slip.position + 1),
        letter: slip.letter.as_ref().map(spelled),
        sentence: session.voice.memo_slip(slip, kind.orbit, &kind.letters, &session.conventions),
        expected: slip.expected.iter().map(spelled).collect(),
    })
}

/// Pieces that are unsolved, by kind, however the puzzle is held.
fn unsolved(state: &State) -> Letters {
    let state = state.after(state.core().inverse().turns());
    let of = |orbit: Orbit| {
        let places = orbit.all_pieces().map(|piece| orbit.reference(piece));
        let is_wrong = |&place: &Sticker| {
            let there = state.at(orbit, place);
            if orbit.looks_alike() { there.face() != place.face() } else { there != place }
        };
        places.filter(is_wrong).collect()
    };
    Orbit::of(state.size()).iter().map(|&orbit| (orbit, of(orbit))).collect()
}

fn moves_checked(
    session: &Session,
    solver: &Solver,
    state: &State,
    given: Option<Letters>,
    moves: &[cube::Turn],
) -> Result<Checked, Failure> {
    let (voice, conventions) = (&session.voice, &session.conventions);
    let letters = match given {
        Some(given) => given,
        None => solver.memo(state).map_err(|fault| Failure::input(voice.not_proven(fault)))?.targets(),
    };
    let plan = solver.actions(&letters).map_err(|error| Failure::input(voice.no_solution(&error)))?;
    let MovesCheck { deviation, solves, outcome } = check_moves(state, &plan, moves);
    let sentence = match &deviation {
        None if solves => voice.word("check-moves-right"),
        None => voice.word("why-memo-itself"),
        Some(deviation) => {
            let said = voice.deviation(deviation, conventions);
            if solves { format!("{said}\n{}", voice.word("check-moves-solve")) } else { said }
        }
    };
    let slips = deviation
        .iter()
        .map(|deviation| {
            let step = deviation.step.as_ref();
            let of = step.and_then(|step| Some((step.orbit()?, step.letters()?.1)));
            let pieces = of.map(|(orbit, _)| kind_name(orbit));
            let letter = of.map(|(orbit, targets)| conventions.kind(orbit).letters.spell(targets));
            Slip {
                kind: deviation.how.name().to_owned(),
                pieces,
                position: Some(deviation.turn + 1),
                letter,
                sentence: voice.deviation(deviation, conventions),
                expected: vec![display_turns(&deviation.planned).to_string()],
            }
        })
        .collect();
    let right_kind = |orbit: Orbit, letters: &[Sticker]| {
        diagnosis::check_letters(orbit, state.orbit(orbit), conventions.kind(orbit).buffer, letters).right
    };
    Ok(Checked {
        version: wire::VERSION,
        puzzle: state.size().layers(),
        right: deviation.is_none() && solves,
        memo: letters
            .iter()
            .map(|(orbit, letters)| letters_of(session, *orbit, letters, right_kind(*orbit, letters)))
            .collect(),
        slips,
        more: 0,
        outcome: Some(outcome),
        facelets: Some(session.stickers(&outcome)),
        unsolved: if solves { Vec::new() } else { names(&unsolved(&outcome)) },
        sentence,
    })
}
