//! From what was typed to what the engine takes, every mistake answered by a sentence.

use crate::arguments::{Hold, Shared, StateOptions};
use crate::failure::Failure;
use blind::{
    Conventions, CycleAlgorithm, HoldChoice, Letters, Memo, Method, MethodError, MethodName, Outfit, Solver,
    kind_name, kind_named, nearest,
};
use cube::{Facelets, Orbit, Size, State, Sticker, Turn};
use formats::text::Written;
use formats::{ease, sheet, state_text};
use search::ease::Model;
use std::fs;
use std::io::{self, IsTerminal, Read};
use std::path::{Path, PathBuf};
use voice::Voice;

/// What every command has at hand.
pub struct Session {
    /// The solver's conventions.
    pub conventions: Conventions,
    /// The voice of the chosen language.
    pub voice: Voice,
    /// Where the conventions file lies, for the sheets that it names.
    pub directory: Option<PathBuf>,
}

/// A puzzle and how it came to look as it does.
pub struct Puzzle {
    /// Its size.
    pub size: Size,
    /// The scramble as text, if there was one.
    pub scramble: Option<String>,
    /// The state.
    pub state: State,
}

impl Session {
    /// Reads the conventions and chooses the language.
    pub fn open(shared: &Shared, voice: Voice) -> Result<Self, Failure> {
        let conventions = match &shared.conventions {
            None => Conventions::default(),
            Some(path) => Self::read_conventions(path, &voice)?,
        };
        let directory = shared.conventions.as_deref().and_then(Path::parent).map(Path::to_path_buf);
        Ok(Self { conventions, voice, directory })
    }

    /// Reads a conventions file.
    pub fn read_conventions(path: &Path, voice: &Voice) -> Result<Conventions, Failure> {
        let text = read_text(path, formats::conventions::MOST_BYTES, voice)?;
        formats::conventions::read(&text)
            .map_err(|error| Failure::in_file(path, &voice.conventions_error(&error), voice))
    }

    /// Whether all is there that conventions name: their sheets and their costs of turning, beside their file.
    pub fn check_named(&self, conventions: &Conventions, file: &Path) -> Result<(), Failure> {
        let directory = file.parent();
        let placed = |failure: Failure| Failure::in_file(file, &failure.said(&self.voice), &self.voice);
        for &orbit in ::sheet::kinds() {
            // Also one that the method has no use for now: who names a sheet means one that is there.
            self.algorithms_named(orbit, conventions, directory).map_err(placed)?;
        }
        costs_named(&self.voice, conventions, directory).map(drop).map_err(placed)
    }

    /// Reads a text of at most so many bytes, from standard input for `-`.
    pub fn read(&self, path: &Path, most: usize) -> Result<String, Failure> {
        read_text(path, most, &self.voice)
    }

    /// Reads a table. Programs for tables write files in the letters of the system that they were made for; what is no Unicode
    /// is read as Windows-1252, which has Latin-1 in it.
    pub fn read_table(&self, path: &Path) -> Result<String, Failure> {
        let bytes = bytes(path, sheet::MOST_BYTES, &self.voice)?;
        formats::text::read(&bytes).map(|(text, _)| text).ok_or_else(|| no_text(path, &self.voice))
    }

    /// The solver of a puzzle, made once a command: these conventions, the sheets and the costs of hands that they name.
    ///
    /// Of a size that no method is for it still has the memo.
    pub fn solver(&self, size: Size) -> Result<Solver, Failure> {
        let model = self.conventions.ease.is_some().then(|| model(self, None)).transpose()?;
        let directory = self.directory.as_deref();
        let solver = self.solver_of(size, self.conventions.clone(), directory, model.as_ref(), false)?;
        match solver.method() {
            Ok(_) | Err(MethodError::NotCovered { .. }) => Ok(solver),
            Err(error) => Err(Failure::input(self.voice.method_error(error))),
        }
    }

    /// The solver of conventions that lie in a directory. `timed`: whether times are wanted even if nothing is chosen by them.
    pub fn solver_of(
        &self,
        size: Size,
        conventions: Conventions,
        directory: Option<&Path>,
        model: Option<&Model>,
        timed: bool,
    ) -> Result<Solver, Failure> {
        let algorithms = self.algorithms_of(size, &conventions, directory)?;
        Ok(Solver::with(size, conventions, &Outfit { algorithms: &algorithms, model, timed }))
    }

    /// The method of a solver, for what cannot be done without one.
    pub fn method<'a>(&self, solver: &'a Solver) -> Result<&'a Method, Failure> {
        solver.method().map_err(|error| Failure::input(self.voice.method_error(error)))
    }

    /// The memo of a scrambled state, picked up as is chosen.
    pub fn memo(&self, solver: &Solver, scrambled: &State, choice: HoldChoice) -> Result<Memo, Failure> {
        let memo = solver.pick_up(scrambled, choice).and_then(|held| solver.memo(&held.state));
        memo.map_err(|fault| Failure::input(self.voice.not_proven(fault)))
    }

    /// The algorithms of the sheets that conventions name, found beside their file.
    fn algorithms_of(
        &self,
        size: Size,
        conventions: &Conventions,
        directory: Option<&Path>,
    ) -> Result<Vec<CycleAlgorithm>, Failure> {
        let mut algorithms = Vec::new();
        for &orbit in Orbit::of(size) {
            if conventions.kind(orbit).method == MethodName::ThreeCycle {
                algorithms.extend(self.algorithms_named(orbit, conventions, directory)?);
            }
        }
        Ok(algorithms)
    }

    /// The algorithms of the sheet that conventions name for a kind, if they name one.
    fn algorithms_named(
        &self,
        orbit: Orbit,
        conventions: &Conventions,
        directory: Option<&Path>,
    ) -> Result<Vec<CycleAlgorithm>, Failure> {
        let Some(place) = conventions.kind(orbit).sheet.as_deref() else { return Ok(Vec::new()) };
        let path = directory.map_or_else(|| PathBuf::from(place), |directory| directory.join(place));
        let mut reading = sheet::Reading::new(conventions);
        reading.kind = Some(orbit);
        let failed = |what: String| {
            let blanks = [("kinds", self.voice.kinds(orbit).into()), ("what", what.into())];
            Failure::input(self.voice.say("conventions-sheet", &blanks))
        };
        let text = self.read_table(&path).map_err(|failure| failed(failure.said(&self.voice)))?;
        let sheet = sheet::read(&text, &reading)
            .map_err(|error| failed(format!("{}: {}", path.display(), self.voice.sheet_error(&error))))?;
        Ok(sheet.algorithms())
    }

    /// The size that was asked for, as `3` or `3x3`.
    pub fn size(&self, text: &str) -> Result<Size, Failure> {
        let number = text.split(['x', 'X']).next().and_then(|number| number.parse().ok());
        let size = number
            .and_then(Size::new)
            .filter(|size| text == size.layers().to_string() || text == size.to_string());
        size.ok_or_else(|| Failure::input(self.voice.say("no-such-puzzle", &[("text", text.into())])))
    }

    /// Reads a scramble.
    pub fn turns(&self, text: &str, size: Size) -> Result<Vec<Turn>, Failure> {
        self.conventions
            .moves(text, size)
            .map(|read| read.flatten())
            .map_err(|error| Failure::input(self.voice.parse_error(&error)))
    }

    /// The puzzle in the state that was given by a scramble or by its stickers.
    pub fn puzzle(&self, options: &StateOptions) -> Result<Puzzle, Failure> {
        let size = self.size(&options.puzzle)?;
        if let Some(text) = &options.facelets {
            let state = self.state_of_facelets(text, size)?;
            return Ok(Puzzle { size, scramble: None, state });
        }
        let text = options.scramble.join(" ");
        let turns = self.turns(&text, size)?;
        if turns.is_empty() {
            return Err(Failure::input(self.voice.word("scramble-missing")));
        }
        let state = State::solved(size).after(&turns);
        Ok(Puzzle { size, scramble: Some(text.trim().to_owned()), state })
    }

    /// The state that looks as typed.
    pub fn state_of_facelets(&self, text: &str, size: Size) -> Result<State, Failure> {
        self.facelets(text, size)?
            .state()
            .map_err(|error| Failure::input(self.voice.unreachable(&error, &self.conventions).join(" ")))
    }

    /// The stickers as typed: by colours, face by face, or as the net that is printed.
    pub fn facelets(&self, text: &str, size: Size) -> Result<Facelets, Failure> {
        let facelets = state_text::read(text, &self.voice.colour_names(&self.conventions))
            .map_err(|error| Failure::input(self.voice.state_text_error(&error)))?;
        if facelets.size() != size {
            return Err(Failure::input(self.voice.say(
                "facelets-other-size",
                &[("found", facelets.size().to_string().into()), ("size", size.to_string().into())],
            )));
        }
        Ok(facelets)
    }

    /// A state as `--facelets` reads it.
    pub fn stickers(&self, state: &State) -> String {
        state_text::write(&state.facelets(), &self.voice.colour_names(&self.conventions))
    }

    /// The kind of piece with a name.
    pub fn kind(&self, name: &str, size: Size) -> Result<Orbit, Failure> {
        let orbit = kind_named(name).ok_or_else(|| {
            let known: Vec<&str> = Orbit::of(size).iter().map(|&orbit| kind_name(orbit)).collect();
            let blanks = [("text", name.into()), ("known", known.join(", ").into())];
            let mut said = self.voice.say("no-such-kind", &blanks);
            if let Some(meant) = nearest(name, &known) {
                said.push(' ');
                said += &self.voice.say("did-you-mean", &[("word", meant.into())]);
            }
            Failure::input(said)
        })?;
        if Orbit::of(size).contains(&orbit) {
            return Ok(orbit);
        }
        Err(Failure::input(self.voice.say(
            "kind-not-there",
            &[("size", size.to_string().into()), ("kinds", self.voice.kinds(orbit).into())],
        )))
    }

    /// A sticker by name or by letter.
    pub fn sticker(&self, text: &str, orbit: Orbit, letters: &Letters) -> Result<Sticker, Failure> {
        letters
            .sticker(text)
            .or_else(|| orbit.sticker(text))
            .or_else(|| orbit.sticker(&text.to_uppercase()))
            .ok_or_else(|| {
                let kind = self.voice.kind(orbit);
                Failure::input(
                    self.voice.say("no-such-target", &[("text", text.into()), ("kind", kind.into())]),
                )
            })
    }
}

impl From<Hold> for HoldChoice {
    fn from(hold: Hold) -> Self {
        match hold {
            Hold::Conventions => Self::Conventions,
            Hold::Best => Self::Best,
            Hold::MostCentres => Self::MostCentres,
        }
    }
}

/// Whether the terminal takes colours: output is a terminal and `NO_COLOR` is not set.
pub fn in_colour() -> bool {
    io::stdout().is_terminal() && std::env::var_os("NO_COLOR").is_none_or(|value| value.is_empty())
}

/// The model of hands, with the costs of a file that `algs fit` wrote if one is named, here or in the conventions.
pub fn model(session: &Session, costs: Option<&Path>) -> Result<Model, Failure> {
    match costs {
        Some(path) => costs_of(&session.voice, path),
        None => costs_named(&session.voice, &session.conventions, session.directory.as_deref()),
    }
}

/// The model of hands with the costs of the file that conventions in a directory name, if they do.
fn costs_named(voice: &Voice, conventions: &Conventions, directory: Option<&Path>) -> Result<Model, Failure> {
    let Some(place) = conventions.ease.as_deref() else { return Ok(Model::built_in()) };
    let path = directory.map_or_else(|| PathBuf::from(place), |directory| directory.join(place));
    costs_of(voice, &path).map_err(|failure| {
        Failure::input(voice.say("conventions-ease", &[("what", failure.said(voice).into())]))
    })
}

fn costs_of(voice: &Voice, path: &Path) -> Result<Model, Failure> {
    let text = read_text(path, ease::MOST_BYTES, voice)?;
    ease::read_costs(&text, &Model::built_in())
        .map_err(|error| Failure::in_file(path, &voice.ease_error(&error), voice))
}

fn read_text(path: &Path, most: usize, voice: &Voice) -> Result<String, Failure> {
    match formats::text::read(&bytes(path, most, voice)?) {
        Some((text, Written::Utf8 | Written::Utf16)) => Ok(text),
        Some((_, Written::Windows1252)) | None => Err(no_text(path, voice)),
    }
}

fn no_text(path: &Path, voice: &Voice) -> Failure {
    Failure::in_file(path, &voice.word("file-not-text"), voice)
}

/// The bytes of a file, or of standard input for `-`: what goes on without end, as a device may, is left where it is too long.
fn bytes(path: &Path, most: usize, voice: &Voice) -> Result<Vec<u8>, Failure> {
    let mut bytes = Vec::new();
    let limit = most as u64 + 1;
    let read = if path == Path::new("-") {
        io::stdin().lock().take(limit).read_to_end(&mut bytes)
    } else {
        fs::File::open(path).and_then(|file| file.take(limit).read_to_end(&mut bytes))
    };
    read.map_err(|error| Failure::file(path, error))?;
    if bytes.len() > most {
        let said = voice.say("file-too-long", &[("most", most.into())]);
        return Err(Failure::in_file(path, &said, voice));
    }
    Ok(bytes)
}
