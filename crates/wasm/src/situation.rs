//! What a page works on: a puzzle, how it was scrambled, under which conventions; and everything that follows from it.

use std::rc::Rc;

use blind::{
    BreakChoice, Chosen, Conventions, ExecutionError, Held, Memo, Method, MethodError, Outfit, Solution,
    best_hold, hold,
};
use cube::{Algorithm, Face, Facelets, Orbit, Size, State};
use draw::{Picture, Theme};
use serde::Deserialize;
use voice::Voice;

use crate::desk::{Desk, palette};
use crate::{Failure, Place};

/// The puzzle that a request is about.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "camelCase")]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Source {
    /// Layers of the cube: 2 or 3.
    pub size: u8,
    /// The conventions as a file; empty for the usual ones.
    pub conventions: String,
    /// The scramble as it was typed.
    pub scramble: String,
    /// The colours of all stickers by the letters of the faces, in the order U R F D L B; if not empty, these count
    /// and not the scramble.
    pub facelets: String,
    /// On a 2x2: pick it up so that the memo is shortest.
    pub best_hold: bool,
    /// The sheet of three-cycles, as the engine wrote it; empty for none. It is for the 3x3.
    pub sheet: String,
}

/// What follows from a source.
pub(crate) struct Situation {
    pub conventions: Rc<Conventions>,
    pub size: Size,
    /// The state in the hold for scrambling.
    pub scrambled: State,
    /// The puzzle in the hand, as it stands in space.
    pub looks: State,
    pub held: Held,
    pub memo: Memo,
    pub method: Rc<Result<Method, MethodError>>,
    /// What carries the memo out; none where the method does not fit the conventions.
    pub solution: Option<Result<Solution, ExecutionError>>,
}

/// A method under the conventions and the sheet of two texts, on a size.
type KeptMethod = ([String; 2], Size, Rc<Result<Method, MethodError>>);

/// What was computed for the last puzzles.
#[derive(Default)]
pub(crate) struct Situations {
    methods: Vec<KeptMethod>,
    last: Option<(Source, Rc<Situation>)>,
}

/// Methods that are kept: both sizes under the conventions before and after a change.
const METHODS_KEPT: usize = 4;

/// The size of a number, or why there is none.
pub(crate) fn size(voice: &Voice, layers: u8) -> Result<Size, Failure> {
    Size::new(layers)
        .ok_or_else(|| Failure::new(voice.say("no-such-puzzle", &[("text", u32::from(layers).into())])))
}

impl Desk {
    /// The method of the conventions on a size; searching its set-ups takes a while, so it is kept.
    pub(crate) fn method(
        &mut self,
        voice: &Voice,
        texts: [&str; 2],
        conventions: &Conventions,
        size: Size,
    ) -> Result<Rc<Result<Method, MethodError>>, Failure> {
        let known = |(of, on, _): &&KeptMethod| of.each_ref().map(String::as_str) == texts && *on == size;
        if let Some((_, _, method)) = self.situations.methods.iter().find(known) {
            return Ok(Rc::clone(method));
        }
        let method = if texts[1].is_empty() || size != Size::THREE {
            Method::new(size, conventions)
        } else {
            let sheet = self.sheet(voice, texts[1])?;
            let outfit = Outfit { sheets: std::slice::from_ref(&sheet), ..Outfit::default() };
            Method::with(size, conventions, &outfit)
        };
        let method = Rc::new(method);
        self.situations.methods.truncate(METHODS_KEPT - 1);
        self.situations.methods.insert(0, (texts.map(str::to_owned), size, Rc::clone(&method)));
        Ok(method)
    }

    /// Everything that follows from a source.
    pub(crate) fn situation(&mut self, voice: &Voice, source: &Source) -> Result<Rc<Situation>, Failure> {
        if let Some((known, situation)) = &self.situations.last
            && known == source
        {
            return Ok(Rc::clone(situation));
        }
        let conventions = self.conventions(voice, &source.conventions)?;
        let size = size(voice, source.size)?;
        let scrambled = state(voice, &conventions, source, size)?;
        let method = self.method(voice, [&source.conventions, &source.sheet], &conventions, size)?;
        // Without a method of one's own there is still a memo; the usual method then only says what set-ups cost.
        let usual = Conventions::default();
        let usual =
            method.as_ref().is_err().then(|| self.method(voice, ["", ""], &usual, size)).transpose()?;
        let costs = match (method.as_ref(), usual.as_deref()) {
            (Ok(method), _) | (_, Some(Ok(method))) => method,
            (Err(error), _) => return Err(Failure::new(voice.method_error(error))),
        };
        let held = source
            .best_hold
            .then(|| best_hold(&scrambled, &conventions, costs))
            .flatten()
            .unwrap_or_else(|| hold(&scrambled, &conventions));
        let memo = Memo::new(&held.state, &conventions, costs);
        let solution = method
            .as_ref()
            .as_ref()
            .ok()
            .map(|method| Solution::new(&held.state, &memo, &conventions, method));
        let looks = scrambled.after(held.rotation.turns());
        let situation =
            Rc::new(Situation { conventions, size, scrambled, looks, held, memo, method, solution });
        self.situations.last = Some((source.clone(), Rc::clone(&situation)));
        Ok(situation)
    }
}

fn state(voice: &Voice, conventions: &Conventions, source: &Source, size: Size) -> Result<State, Failure> {
    if source.facelets.is_empty() {
        let read = Algorithm::parse(&source.scramble, size).map_err(|error| Failure {
            sentence: voice.parse_error(&error),
            place: Some(Place::of(&source.scramble, &error)),
        })?;
        return Ok(State::solved(size).after(&read.flatten()));
    }
    let facelets: Facelets =
        source.facelets.parse().map_err(|error| Failure::new(voice.facelet_error(&error)))?;
    if facelets.size() != size {
        return Err(Failure::new(voice.say(
            "facelets-other-size",
            &[("found", facelets.size().to_string().into()), ("size", size.to_string().into())],
        )));
    }
    facelets.state().map_err(|error| Failure::new(voice.unreachable(&error, conventions).join(" ")))
}

impl Situation {
    /// A puzzle as it stands in space, in the inks of the page.
    pub(crate) fn picture(&self, voice: &Voice, looks: &State, title: &str) -> Picture {
        draw::puzzle(looks, &self.conventions, palette(voice, &self.conventions), title)
            .describing(voice.facelets(&looks.facelets(), &self.conventions))
            .theme(Theme::Page)
    }

    /// How breaks of a kind are chosen, for the reasons.
    pub(crate) fn chosen(&self, orbit: Orbit) -> Chosen {
        match self.conventions.kind(orbit).breaks {
            BreakChoice::Fewest => Chosen::Fewest,
            BreakChoice::Least => Chosen::Least,
            BreakChoice::First | BreakChoice::Preference(_) => Chosen::First,
        }
    }

    /// Why there is no solution, if there is none.
    pub(crate) fn trouble(&self, voice: &Voice) -> Option<String> {
        match (self.method.as_ref(), &self.solution) {
            (Err(error), _) => Some(voice.method_error(error)),
            (_, Some(Err(error))) => Some(voice.execution_error(error)),
            _ => None,
        }
    }

    /// The solution, or why there is none.
    pub(crate) fn solution(&self, voice: &Voice) -> Result<&Solution, Failure> {
        match &self.solution {
            Some(Ok(solution)) => Ok(solution),
            _ => Err(Failure::new(self.trouble(voice).unwrap_or_default())),
        }
    }
}

/// The face that a letter names.
pub(crate) fn face(letter: &str) -> Option<Face> {
    let mut letters = letter.chars();
    match (letters.next(), letters.next()) {
        (Some(letter), None) => Face::from_letter(letter),
        _ => None,
    }
}
