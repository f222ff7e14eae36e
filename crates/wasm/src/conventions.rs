//! Conventions as they are edited on the net.

use blind::{
    BreakChoice, Colour, Conventions, KINDS, Letters, MethodName, ParityChoice, SwapEffect, kind_name,
    kind_named,
};
use cube::{Algorithm, Face, Orbit, Rotation, Size, State, Sticker};
use draw::{Mark, Picture, Place, Rgb, Sight, Theme};
use serde::{Deserialize, Serialize};
use voice::Voice;

use crate::Failure;
use crate::desk::palette;
use crate::call::Call;
use crate::situation::face;

/// Conventions, and perhaps a change of them.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Edited {
    /// The conventions as a file.
    pub conventions: String,
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
        /// The letter.
        letter: String,
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
    /// As a file with every key written out.
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
    let mut conventions = (*call.desk.conventions(voice, &edited.conventions)?).clone();
    let mut notes = Vec::new();
    if let Some(change) = &edited.change {
        apply(voice, &mut conventions, change, &mut notes)?;
        // What is written must read back: names of colours, for one, may clash.
        conventions = Conventions::read(&conventions.to_toml())
            .map_err(|error| Failure::new(voice.conventions_problem(&error.problem)))?;
    }
    let toml = conventions.to_toml();
    let method = call.desk.method(voice, [&toml, ""], &conventions, Size::THREE)?;
    Ok(settled(voice, &conventions, toml, notes, method.as_ref().as_ref().err()))
}

fn apply(
    voice: &Voice,
    conventions: &mut Conventions,
    change: &Change,
    notes: &mut Vec<String>,
) -> Result<(), Failure> {
    let unknown = |text: &str| Failure::new(voice.say("no-such-sticker", &[("text", text.into())]));
    let kind = |name: &str| kind_named(name).ok_or_else(|| unknown(name));
    let face = |letter: &str| face(letter).ok_or_else(|| unknown(letter));
    match change {
        Change::Letter { kind: name, sticker, letter } => {
            let orbit = kind(name)?;
            let sticker = orbit.sticker(sticker).ok_or_else(|| unknown(sticker))?;
            give_letter(voice, conventions, orbit, sticker, letter, notes)?;
        }
        Change::Buffer { kind: name, sticker } => {
            let orbit = kind(name)?;
            let buffer = orbit.sticker(sticker).ok_or_else(|| unknown(sticker))?;
            conventions.kind_mut(orbit).buffer = buffer;
            turn_along(voice, conventions, orbit, buffer, notes);
        }
        Change::Shade { face: letter, shade } => {
            let colour: Rgb = shade
                .parse()
                .map_err(|_| Failure::new(voice.say("toml-no-shade", &[("text", shade.as_str().into())])))?;
            conventions.colours[face(letter)?.index()].shade = Some([colour.red, colour.green, colour.blue]);
        }
        Change::Name { face: letter, name } => {
            let face = face(letter)?;
            let Rgb { red, green, blue } = palette(voice, conventions)[face].colour;
            conventions.colours[face.index()] =
                Colour { name: name.trim().to_owned(), shade: Some([red, green, blue]) };
        }
        Change::Holding { up, front } => {
            let (up, front) = (face(up)?, face(front)?);
            // The colour up was chosen; the one in front follows where the two cannot go together.
            conventions.holding = Rotation::bringing(up, front)
                .or_else(|| Face::ALL.into_iter().find_map(|front| Rotation::bringing(up, front)))
                .unwrap_or(Rotation::NONE);
        }
        Change::Algorithm { kind: name, text } => {
            Algorithm::parse(text, Size::THREE).map_err(|error| Failure {
                sentence: voice.parse_error(&error),
                place: Some(crate::Place::of(text, &error)),
            })?;
            conventions.kind_mut(kind(name)?).algorithm.clone_from(text);
        }
        Change::Method { kind: name, method } => take_method(voice, conventions, kind(name)?, method, notes)?,
        Change::Parity { text } => {
            Algorithm::parse(text, Size::THREE).map_err(|error| Failure {
                sentence: voice.parse_error(&error),
                place: Some(crate::Place::of(text, &error)),
            })?;
            conventions.parity_algorithm.clone_from(text);
        }
        Change::Breaks { kind: name, choice } => {
            conventions.kind_mut(kind(name)?).breaks = match choice.as_str() {
                "first" => BreakChoice::First,
                "fewest" => BreakChoice::Fewest,
                "least" => BreakChoice::Least,
                _ => return Ok(()),
            };
        }
        Change::Pairs { paired } => conventions.pairs = *paired,
    }
    Ok(())
}

/// Another method for a kind; letters stay. Slice-swap has a buffer and an algorithm of its own, which come and go with it;
/// otherwise these stay as well, since one swap and three-cycles do with any.
fn take_method(
    voice: &Voice,
    conventions: &mut Conventions,
    orbit: Orbit,
    name: &str,
    notes: &mut Vec<String>,
) -> Result<(), Failure> {
    let Some(method) = MethodName::ALL.into_iter().find(|method| method.name() == name) else {
        return Ok(());
    };
    let kind = conventions.kind_mut(orbit);
    let before = kind.buffer;
    if [kind.method, method].contains(&MethodName::SliceSwap) && kind.method != method {
        let text = format!("[method]\n{} = \"{name}\"\n", kind_name(orbit));
        let usual = Conventions::read(&text)
            .map_err(|error| Failure::new(voice.conventions_problem(&error.problem)))?;
        let usual = usual.kind(orbit);
        (kind.buffer, kind.algorithm) = (usual.buffer, usual.algorithm.clone());
    }
    kind.method = method;
    let buffer = kind.buffer;
    if buffer != before {
        notes.push(voice.say("buffer-follows", &[("buffer", orbit.name(buffer).into())]));
    }
    if method == MethodName::OneSwap {
        turn_along(voice, conventions, orbit, buffer, notes);
    }
    // A half-turned slice has to be put right before an algorithm for parity, so its letters come first.
    let late = conventions.execution_order.first() != Some(&orbit);
    if method == MethodName::SliceSwap && conventions.parity == ParityChoice::Algorithm && late {
        conventions.execution_order.retain(|&other| other != orbit);
        conventions.execution_order.insert(0, orbit);
        notes.push(voice.say("order-follows", &[("kinds", voice.kinds(orbit).into())]));
    }
    Ok(())
}

/// Gives a sticker a letter; who had it gets the other's, so that the scheme stays one at every moment.
fn give_letter(
    voice: &Voice,
    conventions: &mut Conventions,
    orbit: Orbit,
    sticker: Sticker,
    text: &str,
    notes: &mut Vec<String>,
) -> Result<(), Failure> {
    let mut signs = text.chars();
    let (Some(letter), None) = (signs.next(), signs.next()) else {
        return Err(Failure::new(voice.say("letters-not-one", &[("text", text.into())])));
    };
    let letters = &mut conventions.kind_mut(orbit).letters;
    let old = letters.of(sticker);
    let had = letters.sticker(letter).filter(|&other| other != sticker);
    let mut table: Vec<char> = Sticker::all().map(|sticker| letters.of(sticker)).collect();
    table[sticker.index()] = letter;
    if let Some(other) = had {
        table[other.index()] = old;
        notes.push(voice.letters_exchanged(orbit, other, old));
    }
    *letters = Letters::new(&table).map_err(|error| Failure::new(voice.letters_error(orbit, &error)))?;
    Ok(())
}

/// Turns the swap algorithm with the cube where it does not move the new buffer.
fn turn_along(
    voice: &Voice,
    conventions: &mut Conventions,
    orbit: Orbit,
    buffer: Sticker,
    notes: &mut Vec<String>,
) {
    let Ok(algorithm) = Algorithm::parse(&conventions.kind(orbit).algorithm, Size::THREE) else { return };
    if let Err(blind::SwapError::BufferNotMoved { instead, .. }) = SwapEffect::of(algorithm, orbit, buffer) {
        let text = instead.to_string();
        notes.push(voice.turned_along(orbit, &text));
        conventions.kind_mut(orbit).algorithm = text;
    }
}

fn settled(
    voice: &Voice,
    conventions: &Conventions,
    toml: String,
    notes: Vec<String>,
    trouble: Option<&blind::MethodError>,
) -> Settled {
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
        toml,
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
        kinds: KINDS.map(|orbit| kind_of(voice, conventions, orbit)).into(),
        parity: conventions.parity_algorithm.clone(),
        paired: conventions.pairs,
        notes,
        trouble: trouble.map(|error| voice.method_error(error)),
    }
}

fn kind_of(voice: &Voice, conventions: &Conventions, orbit: Orbit) -> KindOf {
    let kind = conventions.kind(orbit);
    let texts: [String; 24] = std::array::from_fn(|at| {
        Sticker::new(at as u8).map_or(String::new(), |sticker| kind.letters.of(sticker).to_string())
    });
    let looks = State::held(Size::THREE, conventions.holding).facelets();
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
        algorithm: kind.algorithm.clone(),
        method: kind.method.name().to_owned(),
        methods: MethodName::ALL
            .into_iter()
            .filter(|method| orbit == Orbit::Midge || *method != MethodName::SliceSwap)
            .map(|method| method.name().to_owned())
            .collect(),
        breaks: match kind.breaks {
            BreakChoice::First => "first",
            BreakChoice::Fewest => "fewest",
            BreakChoice::Least => "least",
            BreakChoice::Preference(_) => "list",
        }
        .to_owned(),
        stickers: Sticker::all()
            .map(|sticker| StickerOf {
                name: orbit.name(sticker).to_owned(),
                letter: kind.letters.of(sticker).to_string(),
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
