//! Cube and thread in one picture for the pixels that a page has: the memo traced, carried out or checked.

use blind::{Action, Trace};
use cube::{Orbit, Sticker, Turn};
use draw::{Bead, Camera, Gaze, Glow, Labels, Place, Strand, Turning, Velvet};
use serde::{Deserialize, Serialize};

use crate::Failure;
use crate::call::Call;
use crate::check::{Written, letters};
use crate::look::{Eye, palette};
use crate::picture::{Pointed, carried, step_at};
use crate::situation::{Situation, Source, facelets};

/// A scene that is wanted.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct WantedScene {
    /// The puzzle.
    pub source: Source,
    /// The pixels that there are.
    pub frame: Frame,
    /// How many of them the page keeps for words of its own: above the thread where it lies beside the cube, else above the cube.
    pub keep: f64,
    /// From where; none: so that what is spoken of is seen.
    pub eye: Option<Eye>,
    /// Dragged since to the right, by breadths of the cube.
    pub right: f64,
    /// Dragged downward, by breadths of the cube.
    pub down: f64,
    /// What is shown.
    pub moment: SceneMoment,
    /// Which part's thread is open where there is no room for all; none: the one in hand.
    pub open: Option<u32>,
}

/// Breadth and height in pixels.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Frame {
    /// Breadth.
    pub width: f64,
    /// Height.
    pub height: f64,
}

/// What a scene shows.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(tag = "kind", rename_all = "lowercase")]
#[cfg_attr(test, derive(ts_rs::TS))]
pub enum SceneMoment {
    /// The memo with a letter of it in hand.
    Traced {
        /// Which; none: the first look.
        letter: Option<Pointed>,
        /// How far the way to the target and the bead into the memo have come, 0 to 1; 1 at rest.
        drawn: f64,
    },
    /// The execution.
    Carried {
        /// How many moves are done.
        at: u32,
        /// How much of the next one is done, 0 to 1.
        progress: f64,
        /// Whether it goes on by itself: then no face opens.
        playing: bool,
    },
    /// A memo as it was written.
    Checked {
        /// The letters; without any, those that the engine would memorise.
        memo: Written,
        /// Which of them are wrong.
        cracked: Vec<Pointed>,
        /// Whether the memo is kept back, as from someone who is still to write one: the cube lies alone.
        secret: bool,
        /// How the puzzle came out, by the letters of its colours: what is not solved is lit, all else stays back. Empty: the puzzle
        /// as it is held.
        outcome: String,
    },
}

/// A scene: three layers of one picture, from the one behind to the one before, as inner markup of an `svg` element of the size
/// that was asked for.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct DrawnScene {
    /// The thread on its way from the cube to the memo.
    pub link: String,
    /// The cube.
    pub cube: String,
    /// The memo.
    pub thread: String,
    /// The colour of the thread: it gives way where stickers have it.
    pub silk: String,
    /// What the picture is, for those who cannot see it.
    pub title: String,
    /// What it shows.
    pub description: String,
    /// From where the cube is looked at.
    pub eye: Eye,
    /// The beads that are seen, in order.
    pub beads: Vec<SeenBead>,
    /// The threads.
    pub parts: Vec<SeenPart>,
    /// Where the cube is.
    pub cube_box: Rect,
}

/// A bead of a scene.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct SeenBead {
    /// Which part of the memo.
    pub part: u32,
    /// Which letter of it.
    pub letter: u32,
    /// Its middle, in pixels.
    pub x: f64,
    /// Downward.
    pub y: f64,
    /// Half its breadth.
    pub radius: f64,
    /// Letter and sticker, to be read aloud.
    pub said: String,
    /// Its sticker: kind and name.
    pub sticker: String,
}

/// A thread of a scene.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct SeenPart {
    /// Which part of the memo.
    pub part: u32,
    /// What it is called.
    pub name: String,
    /// Whether its beads are seen; else touching its name opens it.
    pub open: bool,
    /// Memo, buffer and number of letters in a sentence.
    pub said: String,
    /// Where its head is.
    pub frame: Rect,
}

/// A rectangle in pixels.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Rect {
    /// Left.
    pub x: f64,
    /// Top.
    pub y: f64,
    /// Breadth.
    pub width: f64,
    /// Height.
    pub height: f64,
}

impl From<[f64; 4]> for Rect {
    fn from([x, y, width, height]: [f64; 4]) -> Self {
        Self { x, y, width, height }
    }
}

/// The memo that lies on the velvet: a kind with its letters, and as a strand.
struct Shown {
    orbit: Orbit,
    targets: Vec<Sticker>,
    strand: Strand,
    said: String,
}

pub(crate) fn scene(call: &mut Call<'_>, wanted: &WantedScene) -> Result<DrawnScene, Failure> {
    let voice = call.voice;
    let situation = call.desk.situation(voice, &wanted.source)?;
    let conventions = situation.conventions();
    let empty = || Velvet {
        frame: [wanted.frame.width, wanted.frame.height],
        keep: wanted.keep,
        looks: situation.looks.facelets(),
        palette: palette(voice, conventions),
        labels: Labels::none(),
        camera: wanted.eye.map(|eye| Camera::new(eye.yaw, eye.pitch)),
        dragged: [wanted.right, wanted.down],
        opens: true,
        turning: None,
        next: None,
        gaze: Gaze::default(),
        lit: None,
        strands: Vec::new(),
        paired: conventions.pairs,
        at: None,
        open: wanted.open.map(|part| part as usize),
    };
    let (mut velvet, shown) = match &wanted.moment {
        SceneMoment::Traced { letter, drawn } => traced(call, &situation, letter.as_ref(), *drawn, empty()),
        SceneMoment::Carried { at, progress, playing } => {
            executed(call, &situation, (*at, *progress, *playing), empty())?
        }
        SceneMoment::Checked { memo, cracked, secret, outcome } => {
            let (velvet, shown) = checked(call, &situation, (memo, cracked, outcome), empty())?;
            if *secret { (Velvet { at: None, ..velvet }, Vec::new()) } else { (velvet, shown) }
        }
    };
    if velvet.lit.is_some() {
        // Whatever is not solved has its letter, of any kind.
        velvet.labels = Labels::of(conventions, situation.solver.size());
    } else if let Some(orbit) = shown.get(velvet.at.map_or(0, |(part, _)| part)).map(|shown| shown.orbit) {
        velvet.labels = Labels::of(conventions, situation.solver.size()).only(orbit);
    }
    velvet.strands = shown.iter().map(|shown| shown.strand.clone()).collect();
    let drawing = velvet.draw();
    let beads = drawing.beads.iter().filter_map(|bead| {
        let (part, letter) = bead.at;
        let Shown { orbit, targets, .. } = shown.get(part)?;
        let target = *targets.get(letter)?;
        let [x, y] = bead.middle;
        Some(SeenBead {
            part: part as u32,
            letter: letter as u32,
            x,
            y,
            radius: bead.radius,
            said: voice.letter_said(letter, *orbit, target, &conventions.kind(*orbit).letters),
            sticker: format!("{} {}", blind::kind_name(*orbit), orbit.name(target)),
        })
    });
    let parts = drawing.headings.iter().filter_map(|heading| {
        let Shown { orbit, said, .. } = shown.get(heading.part)?;
        Some(SeenPart {
            part: heading.part as u32,
            name: voice.kinds(*orbit),
            open: heading.open,
            said: said.clone(),
            frame: heading.frame.into(),
        })
    });
    let told = std::iter::once(voice.facelets(&velvet.looks, conventions));
    let description = told.chain(shown.iter().map(|shown| shown.said.clone())).collect::<Vec<_>>().join(" ");
    Ok(DrawnScene {
        beads: beads.collect(),
        parts: parts.collect(),
        silk: velvet.palette.silk().to_string(),
        title: voice.word("picture-puzzle"),
        description,
        eye: Eye { yaw: drawing.camera.yaw, pitch: drawing.camera.pitch },
        cube_box: drawing.cube_frame.into(),
        link: drawing.link,
        cube: drawing.cube,
        thread: drawing.thread,
    })
}

/// A trace as it lies on the velvet.
fn laid(
    call: &Call<'_>,
    situation: &Situation,
    trace: &Trace,
    note: String,
    glow: impl Fn(usize) -> Glow,
) -> Shown {
    let (voice, conventions, orbit) = (call.voice, situation.conventions(), trace.orbit());
    let letters = &conventions.kind(orbit).letters;
    let strand = Strand::of(trace, voice.kinds_headed(orbit), |letter, target| {
        Bead::new(letters.of(target)).glowing(glow(letter))
    });
    Shown {
        orbit,
        targets: trace.targets(),
        strand: strand.noting(note),
        said: voice.memo_line(trace, conventions),
    }
}

fn traced(
    call: &Call<'_>,
    situation: &Situation,
    letter: Option<&Pointed>,
    drawn: f64,
    mut velvet: Velvet,
) -> (Velvet, Vec<Shown>) {
    let parts = situation.solve.memo.parts();
    let at = letter.map(|at| (at.part as usize, at.letter as usize));
    let shown = parts
        .iter()
        .enumerate()
        .map(|(part, trace)| {
            let glow = |letter| if at == Some((part, letter)) { Glow::Now } else { Glow::Known };
            laid(call, situation, trace, call.voice.letters_counted(trace.len()), glow)
        })
        .collect();
    velvet.at = at.filter(|&(part, letter)| parts.get(part).is_some_and(|trace| letter < trace.len()));
    let Some(trace) = parts.get(velvet.at.map_or(0, |(part, _)| part)) else { return (velvet, shown) };
    let place = |sticker| Place::new(trace.orbit(), sticker);
    let buffer = Some(place(trace.buffer()));
    velvet.gaze = Gaze { buffer, home: buffer, drawn, ..Gaze::default() };
    if let Some((_, letter)) = velvet.at {
        let letters = &situation.conventions().kind(trace.orbit()).letters;
        let steps = trace.steps();
        let way = |step: &blind::Step| (!step.role.begins()).then(|| (place(step.place), place(step.target)));
        if let Some(step) = steps.get(letter) {
            velvet.gaze.look = way(step).map(|(from, _)| from);
            velvet.gaze.target = Some((place(step.target), letters.of(step.target).to_owned()));
            velvet.gaze.before = letter.checked_sub(1).and_then(|before| way(steps.get(before)?));
        }
    }
    (velvet, shown)
}

fn executed(
    call: &Call<'_>,
    situation: &Situation,
    (at, progress, playing): (u32, f64, bool),
    mut velvet: Velvet,
) -> Result<(Velvet, Vec<Shown>), Failure> {
    let voice = call.voice;
    let actions = situation.solution(voice)?.actions();
    let turns: Vec<Turn> = actions.iter().flat_map(Action::turns).collect();
    let at = (at as usize).min(turns.len());
    velvet.looks = situation.looks.after(&turns[..at]).facelets();
    velvet.next = turns.get(at).copied().filter(|_| !playing);
    velvet.turning =
        (progress > 0.0).then(|| turns.get(at)).flatten().map(|&turn| Turning { turn, progress });
    velvet.opens = !playing;
    let parts = situation.solve.memo.parts();
    let step = step_at(actions, at);
    let done = step.map_or(actions.len(), |(number, _)| number);
    let action_of = |orbit: Orbit, letter: usize| {
        actions.iter().position(|action| {
            action.letters().is_some_and(|(of, first, targets)| {
                of == orbit && (first..first + targets.len()).contains(&letter)
            })
        })
    };
    let current = step.and_then(|(number, _)| actions[number].letters());
    let shown = parts
        .iter()
        .map(|trace| {
            let orbit = trace.orbit();
            let glow = |letter| match action_of(orbit, letter) {
                Some(action) if action < done => Glow::Done,
                Some(action) if action == done => Glow::Now,
                _ => Glow::Ahead,
            };
            let note = match current {
                Some((of, first, _)) if of == orbit => voice.letter_of(first + 1, trace.len()),
                _ => voice.letters_counted(trace.len()),
            };
            laid(call, situation, trace, note, glow)
        })
        .collect();
    if let (Some((number, begun)), Some((orbit, first, targets))) = (step, current) {
        let begun = &turns[at - begun..at];
        let kind = situation.conventions().kind(orbit);
        let now = |sticker| Place::new(orbit, carried(situation, orbit, sticker, begun));
        velvet.at = parts.iter().position(|trace| trace.orbit() == orbit).map(|part| (part, first));
        let target = |sticker: Sticker| (now(sticker), kind.letters.of(sticker).to_owned());
        velvet.gaze = Gaze {
            buffer: Some(now(kind.buffer)),
            home: Some(Place::new(orbit, kind.buffer)),
            look: match targets {
                [first, _, ..] => Some(now(*first)),
                [] | [_] => None,
            },
            target: targets.last().map(|&sticker| target(sticker)),
            before: None,
            drawn: 1.0,
        };
        let _ = number;
    }
    Ok((velvet, shown))
}

fn checked(
    call: &Call<'_>,
    situation: &Situation,
    (memo, cracked, outcome): (&Written, &[Pointed], &str),
    mut velvet: Velvet,
) -> Result<(Velvet, Vec<Shown>), Failure> {
    let (voice, conventions) = (call.voice, situation.conventions());
    if !outcome.is_empty() {
        velvet.looks = facelets(voice, outcome, situation.solver.size())?;
        let unsolved = velvet.looks.unsolved();
        velvet.lit = Some(unsolved.into_iter().map(|(orbit, sticker)| Place::new(orbit, sticker)).collect());
    }
    let given = letters(voice, &situation.solver, memo)?;
    let wrong = |part: usize, letter: usize| {
        cracked.iter().any(|at| (at.part as usize, at.letter as usize) == (part, letter))
    };
    let written = given.iter().any(|(_, letters)| !letters.is_empty());
    let crack = |bead: Bead, part, letter| if wrong(part, letter) { bead.wrong() } else { bead };
    let shown: Vec<Shown> = if written {
        let one = |(part, (orbit, targets)): (usize, &(Orbit, Vec<Sticker>))| {
            let kind = conventions.kind(*orbit);
            let strand = Strand::new(voice.kinds_headed(*orbit), orbit.name(kind.buffer))
                .noting(voice.letters_counted(targets.len()))
                .with_loose_end(targets.len() % 2 == 1 && !orbit.looks_alike());
            let bead = |(letter, &target): (usize, &Sticker)| {
                crack(Bead::new(kind.letters.of(target)), part, letter)
            };
            let strand = targets.iter().enumerate().map(bead).fold(strand, Strand::bead);
            let said =
                format!("{}: {}.", voice.kinds(*orbit), kind.letters.grouped(targets, conventions.pairs));
            Shown { orbit: *orbit, targets: targets.clone(), strand, said }
        };
        given.iter().enumerate().map(one).collect()
    } else {
        let parts = situation.solve.memo.parts();
        let one = |(part, trace): (usize, &Trace)| {
            let mut shown = laid(call, situation, trace, voice.letters_counted(trace.len()), |_| Glow::Known);
            for letter in (0..trace.len()).filter(|&letter| wrong(part, letter)) {
                shown.strand.crack(letter);
            }
            shown
        };
        parts.iter().enumerate().map(one).collect()
    };
    let first = cracked.first().map(|at| (at.part as usize, at.letter as usize));
    velvet.at =
        first.filter(|&(part, letter)| shown.get(part).is_some_and(|shown| letter < shown.targets.len()));
    if let Some(shown) = shown.get(velvet.at.map_or(0, |(part, _)| part)) {
        let buffer = Some(Place::new(shown.orbit, conventions.kind(shown.orbit).buffer));
        velvet.gaze = Gaze { home: buffer, drawn: 1.0, ..Gaze::default() };
        if velvet.lit.is_none() {
            velvet.gaze.buffer = buffer;
        }
    }
    Ok((velvet, shown))
}
