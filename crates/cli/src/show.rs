//! `hoodwink show`: a picture file.

use crate::arguments::{HiddenFaces, ShowOptions, View};
use crate::failure::Failure;
use crate::input::{Puzzle, Session};
use crate::{pictures, wire};
use blind::Held;
use cube::{Orbit, Rotation, State};
use draw::{Chain, Hidden, Labels, MAX_WIDTH, Mark, Place, PngError, Strip, Svg};
use std::fs;
use std::io::{self, Write};
use std::path::Path;
use std::process::ExitCode;

/// Runs the command.
pub fn run(session: &Session, options: &ShowOptions) -> Result<ExitCode, Failure> {
    let puzzle = session.puzzle(&options.state)?;
    let svg = picture(session, options, &puzzle)?;
    let mut out = io::stdout().lock();
    if options.json {
        let object =
            wire::Picture { version: wire::VERSION, puzzle: puzzle.size.layers(), svg: svg.to_file() };
        serde_json::to_writer(&mut out, &object).map_err(io::Error::from)?;
        writeln!(out)?;
        return Ok(ExitCode::SUCCESS);
    }
    match &options.out {
        None => out.write_all(svg.to_file().as_bytes())?,
        Some(path) => {
            let bytes = bytes(session, options, path, &svg)?;
            fs::write(path, bytes).map_err(|error| Failure::file(path, error))?;
        }
    }
    Ok(ExitCode::SUCCESS)
}

/// What is written to a file with this ending.
fn bytes(session: &Session, options: &ShowOptions, path: &Path, svg: &Svg) -> Result<Vec<u8>, Failure> {
    let ending = path.extension().and_then(|ending| ending.to_str()).unwrap_or_default().to_ascii_lowercase();
    match ending.as_str() {
        "svg" => Ok(svg.to_file().into_bytes()),
        "png" => svg.png(options.width, &[]).map_err(|error| no_pixels(session, &error)),
        _ => Err(Failure::input(
            session.voice.say("picture-ending", &[("file", path.display().to_string().into())]),
        )),
    }
}

/// Why a picture could not be made into pixels.
fn no_pixels(session: &Session, error: &PngError) -> Failure {
    let voice = &session.voice;
    Failure::input(match error {
        PngError::Width(width) => {
            voice.say("png-width", &[("width", (*width).into()), ("most", MAX_WIDTH.into())])
        }
        PngError::Letters(letters) => voice.say("png-letters", &[("letters", letters.as_str().into())]),
        // What the library says of our own markup helps whoever mends the program.
        PngError::Read(why) | PngError::Pack(why) => voice.say("png-fault", &[("why", why.as_str().into())]),
    })
}

fn picture(session: &Session, options: &ShowOptions, puzzle: &Puzzle) -> Result<Svg, Failure> {
    match options.view {
        View::Faces | View::Net => cube(session, options, puzzle),
        View::Thread | View::Strip => {
            let memo =
                session.memo(&session.solver(puzzle.size)?, &puzzle.state, blind::HoldChoice::Conventions)?;
            if options.view == View::Thread {
                return Ok(pictures::thread(session, &memo).svg());
            }
            let held = held(session, &puzzle.state);
            let looks = pictures::puzzle(session, &held, &session.voice.word("picture-puzzle"));
            let mut frames = Vec::new();
            let title = session.voice.word("picture-strip");
            for trace in memo.parts() {
                frames.extend(Strip::of(trace, &session.conventions, &looks, "").frames);
            }
            Ok(Strip::new(frames, title).svg())
        }
    }
}

/// A puzzle as it looks when it is picked up to be solved.
fn held(session: &Session, scrambled: &State) -> State {
    scrambled.after(Held::new(scrambled, session.conventions.holding).rotation.turns())
}

fn cube(session: &Session, options: &ShowOptions, puzzle: &Puzzle) -> Result<Svg, Failure> {
    let state: State = match &options.held {
        None => held(session, &puzzle.state),
        Some(text) => {
            let turns = session.turns(text, puzzle.size)?;
            if let Some(turn) = turns.iter().find(|turn| !turn.is_rotation()) {
                let said = session.voice.say("held-no-rotation", &[("turn", turn.to_string().into())]);
                return Err(Failure::input(said));
            }
            puzzle.state.after(&turns)
        }
    };
    let said = match &puzzle.scramble {
        Some(scramble) => session.voice.say("picture-after", &[("moves", scramble.as_str().into())]),
        None => session.voice.word("picture-puzzle"),
    };
    let mut picture = pictures::puzzle(session, &state, &said);
    if options.no_letters {
        picture = picture.labels(Labels::none());
    }
    let place = |text: &String| {
        Orbit::of(puzzle.size)
            .iter()
            .find_map(|&orbit| orbit.sticker(text).map(|sticker| Place::new(orbit, sticker)))
            .ok_or_else(|| {
                Failure::input(session.voice.say("no-such-sticker", &[("text", text.as_str().into())]))
            })
    };
    for name in &options.mark {
        picture = picture.mark(place(name)?, Mark::Look);
    }
    let chain = options.chain.iter().map(place).collect::<Result<Vec<_>, _>>()?;
    if !chain.is_empty() {
        picture = picture.chain(Chain::new(chain));
    }
    if options.view == View::Net {
        return Ok(picture.net());
    }
    let hidden = match options.hidden {
        HiddenFaces::No => Hidden::Omitted,
        HiddenFaces::Mirrors => Hidden::Mirrored,
        HiddenFaces::Open => Hidden::SwungOpen,
    };
    Ok(picture.solid(&draw::View::held(Rotation::NONE).with_hidden(hidden)))
}
