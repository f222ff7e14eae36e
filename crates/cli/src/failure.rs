//! What ends a command: a sentence for the person, and the exit code that goes with it.

use std::fmt;
use std::io;

/// Why a command could not be done.
#[derive(Debug)]
pub enum Failure {
    /// Bad input or bad usage; the sentence says what, where, and what would be right.
    Input(String),
    /// Whoever was reading the output has closed it.
    OutputClosed,
}

impl Failure {
    /// Bad input.
    pub fn input(sentence: impl Into<String>) -> Self {
        Self::Input(sentence.into())
    }
}

impl fmt::Display for Failure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Input(sentence) => f.write_str(sentence),
            Self::OutputClosed => f.write_str("the output was closed"),
        }
    }
}

impl From<io::Error> for Failure {
    fn from(error: io::Error) -> Self {
        if error.kind() == io::ErrorKind::BrokenPipe {
            Self::OutputClosed
        } else {
            Self::Input(error.to_string())
        }
    }
}
