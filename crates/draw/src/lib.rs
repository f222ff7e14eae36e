//! Pictures of cubes, traces, charts and handouts, as SVG, HTML and text for terminals.
//!
//! Everything here is computed from what it is given: nothing is read, written or timed. Colours never carry a
//! meaning alone: marks have shapes, steps have numbers, and every sticker can show the letter of its colour.

mod chart;
mod code;
mod colour;
mod craft;
mod dress;
mod glow;
mod grid;
mod handout;
mod net;
mod palette;
mod picture;
mod place;
#[cfg(feature = "png")]
mod png;
mod scene;
mod solid;
mod space;
mod strip;
mod svg;
mod terminal;
mod thread;
mod velvet;

pub use chart::{Histogram, QuantileStrip, Quantiles, Written, ticks};
pub use code::{LONGEST_CODE, code};
pub use colour::{ColourError, Rgb, Sight};
pub use craft::{case_picture, puzzle};
pub use glow::Glow;
pub use grid::{CellText, Grid, GridWords, Head};
pub use handout::{Entry, Handout, Paper, Passage};
pub use palette::{Palette, PaletteReport, Shade};
pub use picture::Picture;
pub use place::{Chain, Labels, Mark, Place};
#[cfg(feature = "png")]
pub use png::{MAX_WIDTH, PngError};
pub use scene::{Hidden, Scene, Shape, Tile, Turning};
pub use solid::View;
pub use space::{Camera, Lens, Point};
pub use strip::{Frame, Strip};
pub use svg::{Caption, Svg, Theme};
pub use terminal::Tone;
pub use thread::{Bead, Item, Strand, Thread};
pub use velvet::{Drawing, Gaze, Heading, Spot, Velvet};
