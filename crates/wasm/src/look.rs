//! How a puzzle is looked at: from where, in which colours, and what becomes of the faces out of sight.

use blind::Conventions;
use cube::Rotation;
use draw::{Camera, Hidden, Palette, Picture, Turning, View};
use serde::{Deserialize, Serialize};
use voice::Voice;

/// From where the puzzle is looked at.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Eye {
    /// To the right, in radians.
    pub yaw: f64,
    /// Upward, in radians.
    pub pitch: f64,
}

/// What becomes of the three faces out of sight.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
#[cfg_attr(test, derive(ts_rs::TS))]
pub enum HiddenFaces {
    /// Not drawn.
    No,
    /// As in mirrors beside the puzzle.
    Mirrors,
    /// The whole puzzle unfolded.
    Net,
}

/// How the puzzle is looked at.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Looking {
    /// From where; none: from the usual place.
    pub eye: Option<Eye>,
    /// Dragged to the right by so many widths of the cube.
    pub right: f64,
    /// Dragged downward by so many widths of the cube.
    pub down: f64,
    /// The faces out of sight.
    pub hidden: HiddenFaces,
}

/// A picture.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(test, derive(ts_rs::TS))]
pub struct Drawn {
    /// The picture as SVG; it names and describes itself for those who cannot see it.
    pub svg: String,
    /// From where it was looked at.
    pub eye: Eye,
}

/// The colours of the conventions, named in the language of the page.
pub(crate) fn palette(voice: &Voice, conventions: &Conventions) -> Palette {
    Palette::of(conventions, |colour| voice.colour(colour))
}

impl Looking {
    fn camera(self) -> Camera {
        let usual = if self.hidden == HiddenFaces::Mirrors { Camera::EVEN } else { Camera::USUAL };
        let camera = self.eye.map_or(usual, |eye| Camera::new(eye.yaw, eye.pitch));
        if self.right == 0.0 && self.down == 0.0 { camera } else { camera.dragged(self.right, self.down) }
    }

    pub(crate) fn drawn(self, picture: &Picture, turning: Option<Turning>) -> Drawn {
        let camera = self.camera();
        let hidden = if self.hidden == HiddenFaces::Mirrors { Hidden::Mirrored } else { Hidden::Omitted };
        let svg = if self.hidden == HiddenFaces::Net && turning.is_none() {
            picture.net()
        } else {
            let view =
                View { hold: Rotation::NONE, camera, hidden, turning, steady: hidden == Hidden::Omitted };
            picture.solid(&view)
        };
        Drawn { svg: svg.into_string(), eye: Eye { yaw: camera.yaw, pitch: camera.pitch } }
    }
}
