//! Colours painted on the net, and whether turning can lead to them.

use cube::{Face, Facelets, State};
use serde::{Deserialize, Serialize};

use crate::Failure;
use crate::call::Call;
use crate::document::DocumentName;
use crate::look::palette;
use crate::names::{face, size};
use draw::{Picture, Theme};

/// A sticker to be painted, or none to look at the whole only.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Brush {
    /// Layers of the cube.
    pub size: u8,
    /// The conventions.
    pub conventions: DocumentName,
    /// The colours so far by the letters of the faces; empty: solved.
    pub facelets: String,
    /// Which sticker, as the picture names it: face, row and column.
    pub cell: String,
    /// The colour, by the letter of its face.
    pub colour: String,
}

/// The net as it is painted.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Painted {
    /// The colours by the letters of the faces, in the order U L F R B D.
    pub facelets: String,
    /// The net as SVG; each sticker has `data-cell`.
    pub svg: String,
    /// Whether every colour is there as often as it should be; before that nothing is judged.
    pub settled: bool,
    /// Whether turning can lead to it.
    pub possible: bool,
    /// Why not, and what was probably misread; or that it can be.
    pub verdict: Vec<String>,
    /// The colours there are.
    pub colours: Vec<Pot>,
    /// The stickers in the order of the faces, each with where it is and its colour in words.
    pub cells: Vec<Cell>,
}

/// A colour to paint with.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Pot {
    /// The letter of its face.
    pub face: String,
    /// Its name.
    pub name: String,
    /// Its shade, as `#d0402b`.
    pub shade: String,
    /// Black or white, whichever reads on it.
    pub ink: String,
    /// The colour's own letter.
    pub letter: String,
}

/// A sticker of the net.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Cell {
    /// As the picture names it.
    pub cell: String,
    /// Where it is and which colour it has, to be read aloud.
    pub said: String,
}

pub(crate) fn paint(call: &mut Call<'_>, brush: &Brush) -> Result<Painted, Failure> {
    let voice = call.voice;
    let conventions = call.desk.conventions(voice, &brush.conventions)?.conventions;
    let size = size(voice, brush.size)?;
    let before = if brush.facelets.is_empty() {
        State::solved(size).facelets()
    } else {
        let read: Facelets =
            brush.facelets.parse().map_err(|error| Failure::new(voice.facelet_error(&error)))?;
        if read.size() == size { read } else { State::solved(size).facelets() }
    };
    let n = size.layers();
    let wanted = if brush.cell.is_empty() { None } else { Some(face(voice, &brush.colour)?) };
    let mut colours = Vec::with_capacity(size.facelets());
    let mut cells = Vec::with_capacity(size.facelets());
    for on in Face::ALL {
        for row in 0..n {
            for column in 0..n {
                let cell = format!("{on} {row} {column}");
                let now = before.get(on, row, column).unwrap_or(on);
                let colour = wanted.filter(|_| cell == brush.cell).unwrap_or(now);
                cells.push(Cell {
                    said: voice.cell_said(on, row, column, &voice.colour(conventions.colour(colour))),
                    cell,
                });
                colours.push(colour);
            }
        }
    }
    let settled = Face::ALL
        .into_iter()
        .all(|face| colours.iter().filter(|&&colour| colour == face).count() == size.facelets() / 6);
    let facelets = Facelets::new(size, colours).unwrap_or(before);
    let palette = palette(voice, &conventions);
    let verdict = match facelets.state() {
        Ok(_) => Ok(vec![voice.word("paint-possible")]),
        Err(error) => Err(voice.unreachable(&error, &conventions)),
    };
    let pots = Face::ALL
        .into_iter()
        .map(|face| {
            let shade = &palette[face];
            Pot {
                face: face.to_string(),
                name: shade.name.clone(),
                shade: shade.colour.to_string(),
                ink: shade.colour.label().to_string(),
                letter: shade.letter.to_string(),
            }
        })
        .collect();
    let svg = Picture::new(facelets.clone(), voice.word("picture-net"))
        .palette(palette)
        .colour_letters(true)
        .handles(true)
        .theme(Theme::Page)
        .net();
    Ok(Painted {
        facelets: facelets.to_string(),
        svg: svg.into_string(),
        settled,
        possible: verdict.is_ok(),
        verdict: verdict.unwrap_or_else(|faults| faults),
        colours: pots,
        cells,
    })
}
