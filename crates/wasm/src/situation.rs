//! What a page works on: a puzzle, how it was scrambled, under which conventions; and everything that follows from it.

use std::rc::Rc;

use blind::{
    BreakChoice, Chosen, Conventions, ExecutionError, Held, Memo, Method, MethodError, Solution, best_hold,
    hold,
};
use cube::{Algorithm, Face, Facelets, Orbit, Size, State};
use draw::{Palette, Picture, Theme};
use serde::Deserialize;
use voice::Voice;

use crate::Failure;
use crate::sequence::place;

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

/// A method under the conventions of a text, on a size.
type KeptMethod = (String, Size, Rc<Result<Method, MethodError>>);

/// What was computed for the last requests.
#[derive(Default)]
pub struct Desk {
    conventions: Option<(String, Rc<Conventions>)>,
    methods: Vec<KeptMethod>,
    situation: Option<(Source, Rc<Situation>)>,
}

/// Methods that are kept: both sizes under the conventions before and after a change.
const METHODS_KEPT: usize = 4;

/// The size of a number, or why there is none.
pub(crate) fn size(voice: &Voice, layers: u8) -> Result<Size, Failure> {
    Size::new(layers)
        .ok_or_else(|| Failure::new(voice.say("no-such-puzzle", &[("text", u32::from(layers).into())])))
}

impl Desk {
    /// Conventions as they were read.
    pub(crate) fn conventions(&mut self, voice: &Voice, text: &str) -> Result<Rc<Conventions>, Failure> {
        if let Some((known, conventions)) = &self.conventions
            && known == text
        {
            return Ok(Rc::clone(conventions));
        }
        let conventions =
            Rc::new(Conventions::read(text).map_err(|error| Failure::new(voice.conventions_error(&error)))?);
        self.conventions = Some((text.to_owned(), Rc::clone(&conventions)));
        Ok(conventions)
    }

    /// The method of the conventions on a size; searching its set-ups takes a while, so it is kept.
    pub(crate) fn method(
        &mut self,
        text: &str,
        conventions: &Conventions,
        size: Size,
    ) -> Rc<Result<Method, MethodError>> {
        if let Some((_, _, method)) = self.methods.iter().find(|(known, of, _)| known == text && *of == size)
        {
            return Rc::clone(method);
        }
        let method = Rc::new(Method::new(size, conventions));
        self.methods.truncate(METHODS_KEPT - 1);
        self.methods.insert(0, (text.to_owned(), size, Rc::clone(&method)));
        method
    }

    /// Everything that follows from a source.
    pub(crate) fn situation(&mut self, voice: &Voice, source: &Source) -> Result<Rc<Situation>, Failure> {
        if let Some((known, situation)) = &self.situation
            && known == source
        {
            return Ok(Rc::clone(situation));
        }
        let conventions = self.conventions(voice, &source.conventions)?;
        let size = size(voice, source.size)?;
        let scrambled = state(voice, &conventions, source, size)?;
        let method = self.method(&source.conventions, &conventions, size);
        // Without a method of one's own there is still a memo; the usual method then only says what set-ups cost.
        let usual = Conventions::default();
        let usual = method.as_ref().is_err().then(|| self.method("", &usual, size));
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
        self.situation = Some((source.clone(), Rc::clone(&situation)));
        Ok(situation)
    }
}

fn state(voice: &Voice, conventions: &Conventions, source: &Source, size: Size) -> Result<State, Failure> {
    if source.facelets.is_empty() {
        let read = Algorithm::parse(&source.scramble, size).map_err(|error| Failure {
            sentence: voice.parse_error(&error),
            place: Some(place(&source.scramble, &error)),
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

/// The colours of the conventions, named in the language of the page.
pub(crate) fn palette(voice: &Voice, conventions: &Conventions) -> Palette {
    Palette::of(conventions, |colour| voice.colour(colour))
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
