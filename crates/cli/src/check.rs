//! `hoodwink check`: whether a memo, or the moves of an attempt, are right.

use crate::arguments::{CheckOptions, MemoOptions, YesNo};
use crate::failure::Failure;
use crate::input::Session;
use crate::{pictures, wire};
use blind::{Held, Solver, kind_name};
use cube::{Orbit, Size, State, Sticker, display_turns};
use diagnosis::{KindCheck, MemoCheck, MovesCheck, check_memo, check_moves};
use serde::Serialize;
use std::io::{self, Write};
use std::process::ExitCode;

/// What `check --json` prints.
#[derive(Debug, Serialize)]
struct Checked {
    version: u32,
    puzzle: u8,
    /// Whether it solves the puzzle; of moves: whether they carry the plan out and solve it.
    right: bool,
    /// The letters of each kind that were checked, or that the moves were compared with.
    memo: Vec<KindLetters>,
    /// All slips of a memo; of moves the first one.
    slips: Vec<Slip>,
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

/// The letters of each kind as they were given; `None` when none were.
pub fn memo(session: &Session, options: &MemoOptions, size: Size) -> Result<Option<Letters>, Failure> {
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
    if given.is_empty() {
        return Ok(None);
    }
    let mut memo = Vec::new();
    for (orbit, text) in given {
        let letters = &session.conventions.kind(orbit).letters;
        let read = letters
            .read(text)
            .map_err(|error| Failure::input(session.voice.unknown_letter(orbit, letters, &error)))?;
        memo.push((orbit, read));
    }
    Ok(Some(memo))
}

/// Runs the command.
pub fn run(session: &Session, options: &CheckOptions) -> Result<ExitCode, Failure> {
    let puzzle = session.puzzle(&options.state)?;
    let solver = session.solver(puzzle.size)?;
    let held = Held::new(&puzzle.state, session.conventions.holding);
    let given = memo(session, &options.memo, puzzle.size)?;
    let checked = if let Some(text) = &options.moves {
        session.method(&solver)?;
        let moves = session.turns(text, puzzle.size)?;
        moves_checked(session, &solver, &held.state, given, &moves)?
    } else {
        let given = given.ok_or_else(|| Failure::input(session.voice.word("check-no-memo")))?;
        let parity = options.parity.map(|answer| answer == YesNo::Yes);
        let check = check_memo(&held.state, &given, parity, &solver)
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
    let mut slips: Vec<Slip> = check.kinds.iter().flat_map(|kind| slips_of(session, kind)).collect();
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
    let right = check.right();
    let mut lines: Vec<String> = Vec::new();
    if right && check.unchecked.is_empty() {
        lines.push(voice.word("check-right"));
    } else {
        for kind in &check.kinds {
            lines.push(voice.kind_checked(kind));
            lines.extend(
                kind.slips.iter().map(|slip| format!("  {}", voice.memo_slip(slip, kind.orbit, conventions))),
            );
        }
        lines.extend(check.parity.map(|fault| voice.parity_fault(fault)));
        if check.kinds.iter().any(|kind| !kind.executable) {
            lines.push(voice.word("check-cannot-be-carried-out"));
        } else if !unsolved.is_empty() {
            lines.push(voice.say("check-leads-to", &[("pieces", voice.list(&unsolved).into())]));
        }
        if !check.unchecked.is_empty() {
            let kinds = voice.kinds_listed(&check.unchecked);
            lines.push(voice.say("check-unchecked", &[("kinds", kinds.into())]));
        }
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

fn slips_of(session: &Session, kind: &KindCheck) -> Vec<Slip> {
    let letters = &session.conventions.kind(kind.orbit).letters;
    let spelled = |sticker: &Sticker| letters.of(*sticker).to_owned();
    kind.slips
        .iter()
        .map(|slip| Slip {
            kind: slip.fault.name().to_owned(),
            pieces: Some(kind_name(kind.orbit)),
            position: Some(slip.position + 1),
            letter: slip.letter.as_ref().map(spelled),
            sentence: session.voice.memo_slip(slip, kind.orbit, &session.conventions),
            expected: slip.expected.iter().map(spelled).collect(),
        })
        .collect()
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
            let (pieces, letter) = match deviation.step {
                Some(diagnosis::ActionStep::Letter { orbit, target, .. }) => {
                    (Some(kind_name(orbit)), Some(conventions.kind(orbit).letters.of(target).to_owned()))
                }
                _ => (None, None),
            };
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
        outcome: Some(outcome),
        facelets: Some(session.stickers(&outcome)),
        unsolved: if solves { Vec::new() } else { names(&unsolved(&outcome)) },
        sentence,
    })
}
