//! Pictures of cubes, traces, charts and handouts, as SVG, HTML and text for terminals.
//!
//! Everything here is computed from what it is given: nothing is read, written or timed. Colours never carry a
//! meaning alone: marks have shapes, steps have numbers, and every sticker can show the letter of its colour.

mod colour;
mod net;
mod palette;
mod picture;
mod place;
mod scene;
mod solid;
mod space;
mod svg;

pub use colour::{ColourError, Rgb, Sight};
pub use palette::{Palette, PaletteReport, Shade};
pub use picture::Picture;
pub use place::{Chain, Labels, Mark, Place};
pub use scene::{Hidden, Scene, Shape, Tile, Turning};
pub use solid::View;
pub use space::{Camera, Point};
pub use svg::{Caption, Svg, Theme};
