//! What ends a command: a sentence for the person, and the exit code that goes with it.

use std::io;
use std::path::Path;
use voice::Voice;

/// Why a command could not be done.
#[derive(Debug)]
pub enum Failure {
    /// Bad input or bad usage; the sentence says what, where, and what would be right.
    Input(String),
    /// The system did not do what was asked of it, with this file if it was about one.
    System(Option<String>, io::Error),
    /// Whoever was reading the output has closed it.
    OutputClosed,
}

impl Failure {
    /// Bad input.
    pub fn input(sentence: impl Into<String>) -> Self {
        Self::Input(sentence.into())
    }

    /// A file that could not be read or written.
    pub fn file(path: &Path, error: io::Error) -> Self {
        Self::System(Some(path.display().to_string()), error)
    }

    /// Bad input in a file, or in standard input.
    pub fn in_file(path: &Path, sentence: &str, voice: &Voice) -> Self {
        Self::Input(format!("{}: {sentence}", named(path, voice)))
    }

    /// What is said.
    pub fn said(&self, voice: &Voice) -> String {
        match self {
            Self::Input(sentence) => sentence.clone(),
            Self::System(place, error) => {
                let what = system(error, voice);
                place.as_ref().map_or(what.clone(), |place| format!("{place}: {what}"))
            }
            Self::OutputClosed => voice.word("output-closed"),
        }
    }
}

/// What a file is called.
pub fn named(path: &Path, voice: &Voice) -> String {
    if path == Path::new("-") { voice.word("standard-input") } else { path.display().to_string() }
}

impl From<io::Error> for Failure {
    fn from(error: io::Error) -> Self {
        if error.kind() == io::ErrorKind::BrokenPipe { Self::OutputClosed } else { Self::System(None, error) }
    }
}

/// What the system refused: its own words are in its own language.
fn system(error: &io::Error, voice: &Voice) -> String {
    match (error.kind(), error.raw_os_error()) {
        (io::ErrorKind::NotFound, _) => voice.word("system-not-found"),
        (io::ErrorKind::PermissionDenied, _) => voice.word("system-denied"),
        (io::ErrorKind::IsADirectory, _) => voice.word("system-directory"),
        (io::ErrorKind::NotADirectory, _) => voice.word("system-no-directory"),
        (io::ErrorKind::StorageFull, _) => voice.word("system-full"),
        (_, Some(number)) => voice.say("system-number", &[("number", number.to_string().into())]),
        (_, None) => voice.word("system-unknown"),
    }
}
