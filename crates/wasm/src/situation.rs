//! What a page works on: a puzzle, under which conventions, with which sheet; and everything that follows from it.

use std::rc::Rc;

use blind::{Conventions, HoldChoice, Solution, Solve, Solver};
use cube::{Facelets, Size, State};
use draw::{Picture, Theme};
use serde::Deserialize;
use voice::Voice;

use crate::Failure;
use crate::desk::{Desk, palette, text};
use crate::document::{DocumentKind, DocumentName, PuzzleContent};
use crate::names::{fault, moves, size};

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

/// The editions of puzzle, conventions and sheet.
pub(crate) type SituationKey = (u64, u64, Option<u64>);

/// What follows from a source.
pub(crate) struct Situation {
    pub solver: Rc<Solver>,
    /// What the page told of the puzzle.
    pub content: PuzzleContent,
    /// The state in the hold for scrambling.
    pub scrambled: State,
    /// The puzzle in the hand, as it stands in space.
    pub looks: State,
    /// Picked up, traced and carried out.
    pub solve: Solve,
}

impl Desk {
    /// Everything that follows from a source.
    pub(crate) fn situation(&mut self, voice: &Voice, source: &Source) -> Result<Rc<Situation>, Failure> {
        let puzzle = self.document(DocumentKind::Puzzle, &source.puzzle)?;
        let settled = self.conventions(voice, &source.conventions)?;
        let collected = self.sheet(voice, &settled, source.sheet.as_ref())?;
        let key = (puzzle.edition, settled.edition, collected.edition);
        if let Some(known) = self.situations.get(&key) {
            return Ok(known);
        }
        let content: PuzzleContent = serde_json::from_str(text(voice, DocumentKind::Puzzle, &puzzle)?)
            .map_err(|error| Failure::new(format!("The puzzle is not in the expected form: {error}.")))?;
        let size = size(voice, content.size)?;
        let scrambled = state(voice, &settled.conventions, &content, size)?;
        let solver = self.solver(size, &settled, Some(&collected));
        let choice = if content.best_hold { HoldChoice::Best } else { HoldChoice::Conventions };
        let solve = solver.solve(&scrambled, choice).map_err(|error| fault(voice, error))?;
        let looks = scrambled.after(solve.held.rotation.turns());
        let situation = Rc::new(Situation { solver, content, scrambled, looks, solve });
        self.situations.put(key, Rc::clone(&situation));
        Ok(situation)
    }
}

fn state(
    voice: &Voice,
    conventions: &Conventions,
    content: &PuzzleContent,
    size: Size,
) -> Result<State, Failure> {
    if content.facelets.is_empty() {
        return Ok(State::solved(size).after(&moves(voice, conventions, size, &content.scramble)?.flatten()));
    }
    let facelets: Facelets =
        content.facelets.parse().map_err(|error| Failure::new(voice.facelet_error(&error)))?;
    if facelets.size() != size {
        return Err(Failure::new(voice.say(
            "facelets-other-size",
            &[("found", facelets.size().to_string().into()), ("size", size.to_string().into())],
        )));
    }
    facelets.state().map_err(|error| Failure::new(voice.unreachable(&error, conventions).join(" ")))
}

impl Situation {
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
