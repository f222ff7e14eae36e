//! A trace as a strip of pictures, one a step.

use crate::svg::{Caption, Ink, Markup, Num, Svg, Theme};

/// One step: a picture, and what stands under it.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Frame {
    /// The picture, such as a cube with the sticker that is looked at and its way home.
    pub picture: Svg,
    /// The letter it gives, set large.
    pub letter: String,
    /// A few words more, such as `UFR → LUB`; may be empty.
    pub note: String,
}

/// Pictures in rows, numbered from 1.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Strip {
    /// The steps.
    pub frames: Vec<Frame>,
    /// How many stand side by side; at least one.
    pub columns: usize,
    /// The inks.
    pub theme: Theme,
    /// What is said of it.
    pub caption: Caption,
}

const WIDTH: f64 = 148.0;
const PICTURE: f64 = 132.0;
const HEIGHT: f64 = 196.0;

impl Strip {
    /// A strip, four steps side by side.
    pub fn new(frames: Vec<Frame>, title: impl Into<String>) -> Self {
        Self { frames, columns: 4, theme: Theme::Light, caption: Caption::new(title) }
    }

    /// The picture.
    pub fn svg(&self) -> Svg {
        let columns = self.columns.clamp(1, self.frames.len().max(1));
        let rows = self.frames.len().div_ceil(columns);
        let view = [0.0, 0.0, WIDTH * columns as f64, (HEIGHT * rows as f64).max(1.0)];
        let mut markup = Markup::picture(&self.caption, view, 1.0);
        for (i, frame) in self.frames.iter().enumerate() {
            let [x, y] = [WIDTH * (i % columns) as f64, HEIGHT * (i / columns) as f64];
            let middle = x + WIDTH / 2.0;
            markup.embed(&frame.picture, [x + (WIDTH - PICTURE) / 2.0, y + 8.0, PICTURE, PICTURE]);
            let mut text = |x: f64, y: f64, size: u8, weight: u16, ink: Ink, text: &str| {
                markup
                    .tag("text")
                    .with("x", Num(x))
                    .with("y", Num(y))
                    .with("font-size", size)
                    .with("font-weight", weight)
                    .with("fill", self.theme.ink(ink))
                    .text(text);
            };
            text(x + 14.0, y + 20.0, 12, 400, Ink::Quiet, &(i + 1).to_string());
            text(middle, y + 164.0, 22, 700, Ink::Strong, &frame.letter);
            if !frame.note.is_empty() {
                text(middle, y + 182.0, 12, 400, Ink::Quiet, &frame.note);
            }
        }
        markup.finish()
    }
}
