//! What a page works on: a puzzle, under which conventions, with which sheet; and everything that follows from it.

use std::rc::Rc;

use blind::{Conventions, HoldChoice, Solution, Solve, Solver};
use cube::{Facelets, Size, State};
use draw::{Picture, Theme};
use serde::Deserialize;
use voice::Voice;

use crate::Failure;
use crate::document::{DocumentName, PuzzleContent};
use crate::look::palette;
use crate::names::{fault, moves};

/// The puzzle that a request is about, by the names of its documents.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Source {
    /// The puzzle.
    pub puzzle: DocumentName,
    /// The conventions.
    pub conventions: DocumentName,
    /// The sheet of three-cycles; none for those that are found by search.
    pub sheet: Option<DocumentName>,
}

/// What follows from a source.
pub(crate) struct Situation {
    pub solver: Rc<Solver>,
    /// What the page told of the puzzle.
    pub content: PuzzleContent,
    /// The state in the hold for scrambling.
    pub scrambled: State,
    /// The puzzle in the hand, as it stands in space.
    pub looks: State,
    /// How it was to be picked up.
    pub choice: HoldChoice,
    /// Picked up, traced and carried out.
    pub solve: Solve,
}

/// Colours of stickers, of a size.
pub(crate) fn facelets(voice: &Voice, text: &str, size: Size) -> Result<Facelets, Failure> {
    let facelets: Facelets = text.parse().map_err(|error| Failure::new(voice.facelet_error(&error)))?;
    if facelets.size() == size {
        return Ok(facelets);
    }
    let blanks = [("found", facelets.size().to_string().into()), ("size", size.to_string().into())];
    Err(Failure::new(voice.say("facelets-not-of-size", &blanks)))
}

/// The state that a scramble or the colours of the stickers stand for.
fn state(voice: &Voice, content: &PuzzleContent, solver: &Solver) -> Result<State, Failure> {
    let (size, conventions) = (solver.size(), solver.conventions());
    if content.facelets.is_empty() {
        return Ok(State::solved(size).after(&moves(voice, conventions, size, &content.scramble)?.flatten()));
    }
    facelets(voice, &content.facelets, size)?
        .state()
        .map_err(|error| Failure::new(voice.unreachable(&error, conventions).join(" ")))
}

impl Situation {
    /// Picks the puzzle up, traces it and carries it out.
    pub(crate) fn new(voice: &Voice, content: PuzzleContent, solver: Rc<Solver>) -> Result<Self, Failure> {
        let scrambled = state(voice, &content, &solver)?;
        let choice = match content.best_hold {
            None => HoldChoice::usual(solver.size()),
            Some(true) => HoldChoice::Best,
            Some(false) => HoldChoice::Conventions,
        };
        let solve = solver.solve(&scrambled, choice).map_err(|error| fault(voice, error))?;
        let looks = scrambled.after(solve.held.rotation.turns());
        Ok(Self { solver, content, scrambled, looks, choice, solve })
    }

    /// Under which conventions.
    pub(crate) fn conventions(&self) -> &Conventions {
        self.solver.conventions()
    }

    /// A puzzle as it stands in space, in the inks of the page.
    pub(crate) fn picture(&self, voice: &Voice, looks: &State, title: &str) -> Picture {
        let conventions = self.conventions();
        draw::puzzle(looks, conventions, palette(voice, conventions), title)
            .describing(voice.facelets(&looks.facelets(), conventions))
            .theme(Theme::Page)
    }

    /// Why there is no solution, if there is none.
    pub(crate) fn trouble(&self, voice: &Voice) -> Option<String> {
        self.solve.solution.as_ref().err().map(|error| voice.no_solution(error))
    }

    /// The solution, or why there is none.
    pub(crate) fn solution(&self, voice: &Voice) -> Result<&Solution, Failure> {
        self.solve.solution.as_ref().map_err(|error| Failure::new(voice.no_solution(error)))
    }

    /// What is said of parity, and what follows for the execution.
    pub(crate) fn parity(&self, voice: &Voice) -> String {
        voice.parity(&self.solve.memo, &self.solver)
    }
}
