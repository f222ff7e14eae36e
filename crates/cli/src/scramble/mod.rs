//! `hoodwink scramble`: random scrambles, scrambles that meet a condition, and how rare these are.

mod sheet;

use crate::arguments::{Hold, ScrambleOptions};
use crate::failure::Failure;
use crate::input::Session;
use crate::wire;
use blind::{HoldChoice, Solver};
use choose::{
    BestHeld, Condition, DrawError, Estimate, Lying, Matching, Sampler, Unsatisfiable, Why, lesson_condition,
    lessons, put_down, ratio,
};
use cube::{Rotation, Size, State, Turn, display_turns};
use formats::conditions;
use num_bigint::BigUint;
use rand::SeedableRng;
use rand_chacha::ChaCha20Rng;
use search::random::below;
use search::scramble::{Draw, Event, leading_to, scramble};
use search::solve4;
use std::fs;
use std::io::{self, BufWriter, IsTerminal, Write};
use std::process::ExitCode;
use std::time::{Duration, Instant};

/// How many scrambles fit on a sheet that a browser still prints readily.
const MOST_ON_SHEET: u64 = 200;
/// How many states are tried where a condition cannot be counted.
const TRIALS: u64 = 200_000;
/// How many are tried where each is looked at in all 24 ways of holding it.
const TRIALS_BEST: u64 = 20_000;
/// How long it takes until progress is told, and then between two tellings.
const PATIENCE: Duration = Duration::from_secs(1);

/// Runs the command.
pub fn run(session: &Session, options: &ScrambleOptions) -> Result<ExitCode, Failure> {
    let size = session.size(&options.puzzle)?;
    if options.question.lessons {
        return list_lessons(session, size, options.json);
    }
    if options.hold == Hold::MostCentres {
        return Err(Failure::input(session.voice.word("scramble-hold-most-centres")));
    }
    if options.hold == Hold::Best && size.is_odd() {
        let said = session.voice.say("hold-best-odd", &[("size", size.to_string().into())]);
        return Err(Failure::input(said));
    }
    let condition = condition(session, options, size)?;
    let mut generator = generator(options.seed)?;
    let lying = if options.blind { Lying::Anyhow } else { Lying::Scrambled };
    if options.question.how_rare {
        let condition = condition.unwrap_or(Condition::any(size));
        return how_rare(session, options, &condition, lying, &mut generator);
    }
    if options.sheet.is_some() && options.count > MOST_ON_SHEET {
        let said = session.voice.say("scramble-sheet-too-many", &[("most", MOST_ON_SHEET.into())]);
        return Err(Failure::input(said));
    }
    let solver = session.solver(size)?;
    let Some(condition) = condition else {
        let event = if options.blind { Event::Blindfolded } else { Event::Sighted };
        return many(session, options, &solver, None, &mut |_| {
            let drawn =
                scramble(size, event, &mut generator).map_err(|error| Failure::input(error.to_string()))?;
            Ok(Made {
                turns: drawn.turns().to_vec(),
                state: *drawn.state(),
                random_state: drawn.draw() == Draw::State,
            })
        });
    };
    if options.hold == Hold::Best {
        let best = BestHeld::new(&condition, &solver);
        return many(session, options, &solver, Some(&condition), &mut |progress| {
            let drawn = best.draw(&mut generator, &mut |tries| progress.tries(tries));
            let state =
                left_lying(drawn.map_err(|error| not_drawn(session, &error))?, options, &mut generator);
            let turns = leading_to(&state).map_err(|error| Failure::input(error.to_string()))?;
            Ok(Made { turns, state, random_state: true })
        });
    }
    let sampler = sampler(session, &condition, lying, &solver)?;
    many(session, options, &solver, Some(&condition), &mut |progress| {
        let state = sampler
            .draw(&mut generator, &mut |tries| progress.tries(tries))
            .map_err(|error| not_drawn(session, &error))?;
        let which = if options.blind { below(24, &mut generator) as usize } else { 0 };
        let left = Rotation::all().nth(which).unwrap_or(Rotation::NONE);
        let state = put_down(&state, &session.conventions, left);
        let turns = leading_to(&state).map_err(|error| Failure::input(error.to_string()))?;
        Ok(Made { turns, state, random_state: true })
    })
}

/// A state as it lies, or, for blindfolded events, turned in a random way.
fn left_lying(state: State, options: &ScrambleOptions, generator: &mut ChaCha20Rng) -> State {
    let which = if options.blind { below(24, generator) as usize } else { 0 };
    Rotation::all().nth(which).map_or(state, |left| state.after(left.turns()))
}

/// One scramble.
pub struct Made {
    /// What to do on the solved puzzle.
    pub turns: Vec<Turn>,
    /// What comes of it, in the hold for scrambling.
    pub state: State,
    /// Whether the state was drawn and not the turns.
    pub random_state: bool,
}

/// `ChaCha20` from the seed, or from the system's own source of randomness.
fn generator(seed: Option<u64>) -> Result<ChaCha20Rng, Failure> {
    if let Some(seed) = seed {
        return Ok(search::random::seeded(seed));
    }
    let mut key = [0; 32];
    getrandom::fill(&mut key).map_err(|error| Failure::input(error.to_string()))?;
    Ok(ChaCha20Rng::from_seed(key))
}

fn condition(session: &Session, options: &ScrambleOptions, size: Size) -> Result<Option<Condition>, Failure> {
    match (&options.condition, &options.lesson) {
        (Some(text), _) => conditions::read(text, size, &session.conventions)
            .map(Some)
            .map_err(|error| Failure::input(session.voice.condition_error(&error))),
        (None, Some(name)) => lesson_condition(name, size)
            .map(Some)
            .map_err(|error| Failure::input(session.voice.lesson_error(&error))),
        (None, None) => Ok(None),
    }
}

fn sampler<'a>(
    session: &'a Session,
    condition: &'a Condition,
    lying: Lying,
    solver: &'a Solver,
) -> Result<Sampler<'a>, Failure> {
    Sampler::new(condition, lying, solver).map_err(|error| never(session, &error))
}

/// Why no state was drawn; that the work was to stop cannot be, since nobody asks for it.
fn not_drawn(session: &Session, error: &DrawError) -> Failure {
    match error {
        DrawError::Stopped { .. } => Failure::OutputClosed,
        DrawError::NotProven(fault) => Failure::input(session.voice.not_proven(*fault)),
        DrawError::NoState(fault) => Failure::input(fault.to_string()),
    }
}

fn list_lessons(session: &Session, size: Size, json: bool) -> Result<ExitCode, Failure> {
    let mut out = BufWriter::new(io::stdout().lock());
    for lesson in lessons() {
        let Some(condition) = lesson.condition(size) else { continue };
        let title = session.voice.lesson(lesson);
        if json {
            let object = wire::Lesson {
                version: wire::VERSION,
                name: lesson.name().to_owned(),
                title,
                condition: condition.to_string(),
            };
            serde_json::to_writer(&mut out, &object).map_err(io::Error::from)?;
            writeln!(out)?;
        } else {
            writeln!(out, "{:<18} {title}\n{:<18} {condition}", lesson.name(), "")?;
        }
    }
    out.flush()?;
    Ok(ExitCode::SUCCESS)
}

fn how_rare(
    session: &Session,
    options: &ScrambleOptions,
    condition: &Condition,
    lying: Lying,
    generator: &mut ChaCha20Rng,
) -> Result<ExitCode, Failure> {
    let solver = session.solver(condition.size())?;
    if options.hold == Hold::Best {
        let mut progress = Progress::new(session, TRIALS_BEST);
        let best = BestHeld::new(condition, &solver);
        let tried = best.estimate(TRIALS_BEST, generator, &mut |tries| progress.tries(tries));
        let estimate = tried.map_err(|error| not_drawn(session, &error))?;
        let all = Sampler::new(&Condition::any(condition.size()), lying, &solver)
            .map(|sampler| sampler.total())
            .map_err(|error| never(session, &error))?;
        return tell_share(
            session,
            options,
            condition,
            &Share { matching: None, total: all, one_in: None, estimate: Some(estimate) },
        );
    }
    let sampler = sampler(session, condition, lying, &solver)?;
    let total = sampler.total();
    let (matching, estimate) = match sampler.matching() {
        Matching::Exact(matching) => (Some(matching), None),
        Matching::AtMost(_) => {
            let mut progress = Progress::new(session, TRIALS);
            let tried = sampler.estimate(TRIALS, generator, &mut |tries| progress.tries(tries));
            (None, Some(tried.map_err(|error| not_drawn(session, &error))?))
        }
    };
    let one_in = matching.as_ref().map(|matching| ratio(&total, matching));
    tell_share(session, options, condition, &Share { matching, total, one_in, estimate })
}

/// How rare a condition is.
struct Share {
    matching: Option<BigUint>,
    total: BigUint,
    one_in: Option<f64>,
    estimate: Option<Estimate>,
}

fn tell_share(
    session: &Session,
    options: &ScrambleOptions,
    condition: &Condition,
    share: &Share,
) -> Result<ExitCode, Failure> {
    let Share { matching, total, one_in, estimate } = share;
    let mut out = io::stdout().lock();
    if options.json {
        let object = wire::HowRare {
            version: wire::VERSION,
            puzzle: condition.size().layers(),
            condition: condition.to_string(),
            matching: matching.as_ref().map(ToString::to_string),
            total: total.to_string(),
            one_in: *one_in,
            estimate: estimate.map(|Estimate { tried, met, share, bounds }| wire::Estimate {
                tried,
                met,
                share,
                bounds,
            }),
        };
        serde_json::to_writer(&mut out, &object).map_err(io::Error::from)?;
        writeln!(out)?;
        return Ok(ExitCode::SUCCESS);
    }
    if let (Some(matching), Some(one_in)) = (matching, *one_in) {
        writeln!(out, "{}", session.voice.exact_share(matching, total, one_in))?;
    }
    if let Some(estimate) = estimate {
        writeln!(out, "{}", session.voice.estimate(estimate))?;
    }
    Ok(ExitCode::SUCCESS)
}

/// Tells on a terminal how far long work has come.
pub struct Progress<'a> {
    session: &'a Session,
    count: u64,
    done: u64,
    told: Instant,
    shown: bool,
    terminal: bool,
}

impl<'a> Progress<'a> {
    fn new(session: &'a Session, count: u64) -> Self {
        let terminal = io::stderr().is_terminal();
        Self { session, count, done: 0, told: Instant::now(), shown: false, terminal }
    }

    fn due(&mut self) -> bool {
        let due = self.terminal && self.told.elapsed() >= PATIENCE;
        if due {
            self.told = Instant::now();
            self.shown = true;
        }
        due
    }

    /// Always goes on: who has waited enough interrupts the program.
    fn tries(&mut self, tries: u64) -> bool {
        if self.due() {
            overwrite(&self.session.voice.say("scramble-tries", &[("tries", tries.to_string().into())]));
        }
        true
    }

    /// Always goes on, too.
    fn tables(&mut self, hundredths: u8) -> bool {
        if self.due() {
            overwrite(&self.session.voice.say("scramble-tables", &[("done", hundredths.into())]));
        }
        true
    }

    fn one_done(&mut self) {
        self.done += 1;
        if self.due() {
            let blanks = [("done", self.done.to_string().into()), ("count", self.count.to_string().into())];
            overwrite(&self.session.voice.say("scramble-progress", &blanks));
        }
    }

    fn end(&self) {
        if self.shown {
            overwrite("");
        }
    }
}

/// Writes over the line that the terminal's cursor is in.
fn overwrite(sentence: &str) {
    // A terminal that cannot be written to has nobody to tell.
    let _ = write!(io::stderr(), "\r\x1b[K{sentence}");
}

/// Makes as many as are wanted; each is written as soon as it is made.
fn many(
    session: &Session,
    options: &ScrambleOptions,
    solver: &Solver,
    condition: Option<&Condition>,
    make: &mut dyn FnMut(&mut Progress<'_>) -> Result<Made, Failure>,
) -> Result<ExitCode, Failure> {
    let size = solver.size();
    let mut progress = Progress::new(session, options.count);
    if size == solve4::SIZE {
        // Not kept in a file: they take two seconds to make and would have to be checked at every start.
        let _ = solve4::prepare(&mut |hundredths| progress.tables(hundredths));
    }
    if let Some(path) = &options.sheet {
        let mut all = Vec::new();
        for _ in 0..options.count {
            all.push(make(&mut progress)?);
            progress.one_done();
        }
        let page = sheet::page(session, solver, condition, options, &all)?;
        progress.end();
        fs::write(path, page).map_err(|error| Failure::file(path, error))?;
        return Ok(ExitCode::SUCCESS);
    }
    let mut out = io::stdout().lock();
    for number in 1..=options.count {
        let made = make(&mut progress)?;
        let mut line = if options.json {
            let object = to_wire(session, solver, number, &made, options.hold.into())?;
            serde_json::to_string(&object).map_err(io::Error::from)?
        } else {
            text(session, &made)
        };
        line.push('\n');
        out.write_all(line.as_bytes())?;
        progress.one_done();
    }
    out.flush()?;
    progress.end();
    Ok(ExitCode::SUCCESS)
}

/// The turns, or that there are none.
pub fn text(session: &Session, made: &Made) -> String {
    if made.turns.is_empty() {
        return session.voice.word("scramble-solved");
    }
    display_turns(&made.turns).to_string()
}

fn to_wire(
    session: &Session,
    solver: &Solver,
    number: u64,
    made: &Made,
    choice: HoldChoice,
) -> Result<wire::ScrambleLine, Failure> {
    let memo = session.memo(solver, &made.state, choice)?;
    let letters = |trace: &blind::Trace| wire::ScrambleMemo {
        kind: blind::kind_name(trace.orbit()).to_owned(),
        letters: session.conventions.kind(trace.orbit()).letters.spell(&trace.targets()),
    };
    Ok(wire::ScrambleLine {
        version: wire::VERSION,
        puzzle: solver.size().layers(),
        number,
        scramble: display_turns(&made.turns).to_string(),
        random_state: made.random_state,
        facelets: made.state.facelets().to_string(),
        memo: memo.parts().iter().map(letters).collect(),
    })
}

/// Why no scramble meets a condition, and which option changes that.
fn never(session: &Session, error: &Unsatisfiable) -> Failure {
    let mut said = session.voice.unsatisfiable(error);
    if error.why == Why::OneCornerStays {
        said = format!("{said} {}", session.voice.word("one-corner-blind"));
    }
    Failure::input(said)
}
