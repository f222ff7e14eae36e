//! Conventions as they are edited on the net.

use blind::{BreakChoice, Conventions, ConventionsChange, MethodName, Solver, kind_name, sizeless};
use cube::{Face, Orbit, Rotation, Size, State, Sticker};
use draw::{Mark, Picture, Place, Rgb, Sight, Theme};
use serde::{Deserialize, Serialize};
use voice::Voice;

use crate::Failure;
use crate::call::Call;
use crate::document::DocumentName;
use crate::look::palette;
use crate::names::{choice, face, kind, mistyped, sticker};

/// Conventions, and perhaps a change of them.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Edited {
    /// The conventions.
    pub conventions: DocumentName,
    /// What is to be changed.
    pub change: Option<Change>,
}

/// A change of conventions.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(tag = "what", rename_all = "lowercase")]
#[cfg_attr(test, derive(ts_rs::TS))]
pub enum Change {
    /// A sticker gets a letter; if another has it, the two exchange theirs.
    Letter {
        /// The kind.
        kind: String,
        /// The sticker.
        sticker: String,
        /// The letter: one sign or a few.
        letter: String,
    },
    /// All letters of a kind in a row: 24 signs, or 24 letters with spaces between.
    Letters {
        /// The kind.
        kind: String,
        /// The letters.
        text: String,
    },
    /// Another buffer; the algorithm is turned along where that is enough.
    Buffer {
        /// The kind.
        kind: String,
        /// The sticker.
        sticker: String,
    },
    /// Another shade.
    Shade {
        /// The face, by its letter.
        face: String,
        /// The shade, as `#d0402b`.
        shade: String,
    },
    /// Another name of a colour.
    Name {
        /// The face, by its letter.
        face: String,
        /// The name.
        name: String,
    },
    /// Another holding to solve in.
    Holding {
        /// The colour up, by the letter of its face.
        up: String,
        /// The colour in front, by the letter of its face.
        front: String,
    },
    /// Another swap algorithm.
    Algorithm {
        /// The kind.
        kind: String,
        /// As it is written.
        text: String,
    },
    /// Another method: `one-swap`, `slice-swap` or `three-cycle`.
    Method {
        /// The kind.
        kind: String,
        /// The method.
        method: String,
    },
    /// Another parity algorithm.
    Parity {
        /// As it is written.
        text: String,
    },
    /// Where new cycles begin: `first`, `fewest` or `least`.
    Breaks {
        /// The kind.
        kind: String,
        /// The choice.
        choice: String,
    },
    /// Whether letters go in pairs.
    Pairs {
        /// Whether they do.
        paired: bool,
    },
}

/// Conventions as they are shown.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Settled {
    /// As the browser keeps them.
    pub kept: String,
    /// As a file with every key written out, for people.
    pub toml: String,
    /// The colours of the faces U L F R B D in the hold for scrambling.
    pub colours: Vec<ColourOf>,
    /// What is said of the colours together.
    pub report: String,
    /// The colours that may be up, by the letters of their faces, and which is.
    pub up: String,
    /// The colour in front, by the letter of its face.
    pub front: String,
    /// The colours that may be in front with this one up, by the letters of their faces.
    pub fronts: Vec<String>,
    /// Holding in words.
    pub holding: String,
    /// What is settled for each kind.
    pub kinds: Vec<KindOf>,
    /// The parity algorithm.
    pub parity: String,
    /// Whether letters go in pairs.
    pub paired: bool,
    /// What else the change brought about, or what does not fit together on a 3x3.
    pub notes: Vec<String>,
    /// What does not fit together, if something does not.
    pub trouble: Option<String>,
}

/// A colour.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct ColourOf {
    /// The letter of its face.
    pub face: String,
    /// Its name as it is in the file.
    pub name: String,
    /// Its name in the language of the page.
    pub said: String,
    /// Its shade, as `#d0402b`.
    pub shade: String,
    /// How well letters read on it.
    pub contrast: String,
}

/// What is settled for a kind.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct KindOf {
    /// The kind, as files name it.
    pub kind: String,
    /// The kind, as people say.
    pub name: String,
    /// The buffer's sticker.
    pub buffer: String,
    /// The swap algorithm.
    pub algorithm: String,
    /// How its letters are carried out: `one-swap`, `slice-swap` or `three-cycle`.
    pub method: String,
    /// The methods that there are for it.
    pub methods: Vec<String>,
    /// `first`, `fewest`, `least` or `list`.
    pub breaks: String,
    /// All letters in a row, as they can be typed.
    pub row: String,
    /// The stickers with their letters, faces U L F R B D, each clockwise from the upper left.
    pub stickers: Vec<StickerOf>,
    /// The net with the letters of this kind; each sticker has `data-place`.
    pub svg: String,
}

/// A sticker with its letter.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct StickerOf {
    /// Its name.
    pub name: String,
    /// Its letter.
    pub letter: String,
    /// Name, colour and letter, to be read aloud.
    pub said: String,
}

pub(crate) fn edit(call: &mut Call<'_>, edited: &Edited) -> Result<Settled, Failure> {
    let voice = call.voice;
    let before = call.desk.conventions(voice, &edited.conventions)?;
    let Some(change) = &edited.change else {
        let solver = call.desk.solver(SHOWN_ON, &before, None);
        return Ok(settled(voice, &solver, Vec::new()));
    };
    let change = read(voice, &before.conventions, change)?;
    let changed =
        before.conventions.changed(&change).map_err(|error| Failure::new(voice.change_error(&error)))?;
    let notes = changed.consequences.iter().map(|consequence| voice.consequence(consequence)).collect();
    Ok(settled(voice, &Solver::new(SHOWN_ON, changed.conventions), notes))
}

/// A change by the values that its words stand for.
fn read(voice: &Voice, conventions: &Conventions, change: &Change) -> Result<ConventionsChange, Failure> {
    let typed = |text: &str| sizeless(text).map_err(|error| mistyped(voice, text, &error));
    Ok(match change {
        Change::Letter { kind: name, sticker: named, letter } => {
            let orbit = kind(voice, name)?;
            let sticker = sticker(voice, orbit, named)?;
            ConventionsChange::Letter { orbit, sticker, letter: letter.clone() }
        }
        Change::Letters { kind: name, text } => {
            let orbit = kind(voice, name)?;
            let apart = text.trim().contains(char::is_whitespace);
            let letters = if apart {
                text.split_whitespace().map(str::to_owned).collect()
            } else {
                text.trim().chars().map(String::from).collect()
            };
            ConventionsChange::Letters { orbit, letters }
        }
        Change::Buffer { kind: name, sticker: named } => {
            let orbit = kind(voice, name)?;
            ConventionsChange::Buffer { orbit, sticker: sticker(voice, orbit, named)? }
        }
        Change::Shade { face: letter, shade } => {
            let Rgb { red, green, blue } = shade
                .parse()
                .map_err(|_| Failure::new(voice.say("toml-no-shade", &[("text", shade.as_str().into())])))?;
            ConventionsChange::Shade { face: face(voice, letter)?, shade: [red, green, blue] }
        }
        Change::Name { face: letter, name } => {
            let face = face(voice, letter)?;
            let Rgb { red, green, blue } = palette(voice, conventions)[face].colour;
            ConventionsChange::Name { face, name: name.clone(), shade: [red, green, blue] }
        }
        Change::Holding { up, front } => {
            ConventionsChange::Holding { up: face(voice, up)?, front: face(voice, front)? }
        }
        Change::Algorithm { kind: name, text } => {
            ConventionsChange::Algorithm { orbit: kind(voice, name)?, algorithm: typed(text)? }
        }
        Change::Method { kind: name, method } => {
            let orbit = kind(voice, name)?;
            let method = choice(voice, &MethodName::ALL, MethodName::name, method)?;
            ConventionsChange::Method { orbit, method }
        }
        Change::Parity { text } => ConventionsChange::Parity(typed(text)?),
        Change::Breaks { kind: name, choice: word } => {
            let orbit = kind(voice, name)?;
            let chosen = choice(voice, &BREAKS, |at| at.0, word)?;
            ConventionsChange::Breaks { orbit, breaks: chosen.1() }
        }
        Change::Pairs { paired } => ConventionsChange::Pairs(*paired),
    })
}

/// The size on which the editor shows conventions and says whether they fit together: the one whose methods are there and which has
/// both kinds.
const SHOWN_ON: Size = Size::THREE;

/// A choice of where cycles begin, by its name.
type Break = (&'static str, fn() -> BreakChoice);

/// The choices that need no list of stickers.
const BREAKS: [Break; 3] =
    [("first", || BreakChoice::First), ("fewest", || BreakChoice::Fewest), ("least", || BreakChoice::Least)];

fn settled(voice: &Voice, solver: &Solver, notes: Vec<String>) -> Settled {
    let conventions = solver.conventions();
    let palette = palette(voice, conventions);
    let report = palette.report();
    let colours = Face::ALL
        .into_iter()
        .map(|face| ColourOf {
            face: face.to_string(),
            name: conventions.colour(face).name.clone(),
            said: voice.colour(conventions.colour(face)),
            shade: palette[face].colour.to_string(),
            contrast: voice.contrast(report.labels[face.index()]),
        })
        .collect();
    // Under ten two colours are not told apart at a glance.
    let alike = report.closest.iter().find(|(.., difference)| *difference < 10.0);
    let report = match alike {
        None => voice.word("colours-apart"),
        Some(&(sight, a, b, _)) => {
            voice.colours_alike(sight_name(sight), conventions.colour(a), conventions.colour(b))
        }
    };
    let colour_at = |at: Face| conventions.holding.inverse().image(at);
    let (up, front) = (colour_at(Face::U), colour_at(Face::F));
    Settled {
        kept: formats::conventions::to_json(conventions),
        toml: formats::conventions::write(conventions),
        colours,
        report,
        fronts: Face::ALL
            .into_iter()
            .filter(|&front| Rotation::bringing(up, front).is_some())
            .map(|face| face.to_string())
            .collect(),
        up: up.to_string(),
        front: front.to_string(),
        holding: voice.hold(conventions.holding, conventions),
        kinds: Orbit::of(SHOWN_ON).iter().map(|&orbit| kind_of(voice, conventions, orbit)).collect(),
        parity: conventions.parity_algorithm.to_string(),
        paired: conventions.pairs,
        notes,
        trouble: solver.method().err().map(|error| voice.method_error(error)),
    }
}

fn kind_of(voice: &Voice, conventions: &Conventions, orbit: Orbit) -> KindOf {
    let kind = conventions.kind(orbit);
    let mut letters = kind.letters.all();
    let texts: [String; 24] = std::array::from_fn(|_| letters.next().unwrap_or_default().to_owned());
    let looks = State::held(SHOWN_ON, conventions.holding).facelets();
    let svg = Picture::new(looks, voice.say("picture-letters", &[("kinds", voice.kinds(orbit).into())]))
        .palette(palette(voice, conventions))
        .labels(draw::Labels::none().with(orbit, texts))
        .mark(Place::new(orbit, kind.buffer), Mark::Buffer)
        .handles(true)
        .theme(Theme::Page)
        .net();
    KindOf {
        kind: kind_name(orbit).to_owned(),
        name: voice.kinds(orbit),
        buffer: orbit.name(kind.buffer).to_owned(),
        algorithm: kind.algorithm.as_ref().map(ToString::to_string).unwrap_or_default(),
        method: kind.method.name().to_owned(),
        methods: MethodName::of(orbit).map(|method| method.name().to_owned()).collect(),
        breaks: match kind.breaks {
            BreakChoice::First => "first",
            BreakChoice::Fewest => "fewest",
            BreakChoice::Least => "least",
            BreakChoice::Preference(_) => "list",
        }
        .to_owned(),
        row: {
            let letters: Vec<&str> = conventions.kind(orbit).letters.all().collect();
            letters.join(if conventions.kind(orbit).letters.are_single() { "" } else { " " })
        },
        stickers: Sticker::all()
            .map(|sticker| StickerOf {
                name: orbit.name(sticker).to_owned(),
                letter: kind.letters.of(sticker).to_owned(),
                said: voice.sticker_said(orbit, sticker, conventions),
            })
            .collect(),
        svg: svg.into_string(),
    }
}

const fn sight_name(sight: Sight) -> &'static str {
    match sight {
        Sight::Usual => "usual",
        Sight::Protanopia => "protanopia",
        Sight::Deuteranopia => "deuteranopia",
        Sight::Tritanopia => "tritanopia",
    }
}
