//! Pixels from SVG, with fonts of its own, so that a picture comes out the same on every machine.
//!
//! The fonts are `DejaVu` Sans and Sans Mono 2.37 (Bitstream Vera licence, free to embed with its notice): Latin,
//! Greek, Cyrillic, arrows and primes, but no Chinese, Japanese or Korean. What they lack can be brought along.

use crate::svg::{Ink, Svg, Theme};
use resvg::tiny_skia::{Pixmap, Transform};
use resvg::usvg::{Group, Node, Options, Tree, fontdb};
use std::sync::Arc;
use thiserror::Error;

/// Why a picture could not be made into pixels.
#[derive(Debug, Error)]
pub enum PngError {
    /// Nothing or far too much to paint.
    #[error("a picture {0} pixels wide cannot be made; 1 to {MAX_WIDTH} are possible")]
    Width(u32),
    /// No font has these letters; they would be missing from the picture.
    #[error(
        "no font at hand has the letters `{0}`; give a font file that has them, or keep the picture as SVG"
    )]
    Letters(String),
    /// The markup could not be read as SVG.
    #[error("the picture could not be read: {0}")]
    Read(String),
    /// The pixels could not be packed.
    #[error("the pixels could not be packed: {0}")]
    Pack(String),
}

/// The widest picture in pixels.
pub const MAX_WIDTH: u32 = 8192;

/// All inks of a theme.
const INKS: [Ink; 6] = [Ink::Strong, Ink::Paper, Ink::Quiet, Ink::Thread, Ink::Wrong, Ink::Body];

impl Svg {
    /// The picture as a PNG file, so many pixels wide, on a clear ground.
    ///
    /// `fonts` are further font files (TrueType or OpenType) for letters that the built-in ones lack.
    ///
    /// # Errors
    /// [`PngError`] for a width of 0 or over [`MAX_WIDTH`], and should the markup not be readable.
    pub fn png(&self, width: u32, fonts: &[Vec<u8>]) -> Result<Vec<u8>, PngError> {
        if width == 0 || width > MAX_WIDTH {
            return Err(PngError::Width(width));
        }
        let mut known = fontdb::Database::new();
        for font in [
            dejavu::sans::regular(),
            dejavu::sans::bold(),
            dejavu::sans_mono::regular(),
            dejavu::sans_mono::bold(),
        ] {
            known.load_font_data(font.to_vec());
        }
        for font in fonts {
            known.load_font_data(font.clone());
        }
        known.set_sans_serif_family("DejaVu Sans");
        known.set_monospace_family("DejaVu Sans Mono");
        let options =
            Options { fontdb: Arc::new(known), font_family: "DejaVu Sans".to_owned(), ..Options::default() };
        let tree = Tree::from_str(&self.with_light_inks(), &options)
            .map_err(|error| PngError::Read(error.to_string()))?;
        let missing = missing(tree.root());
        if !missing.is_empty() {
            return Err(PngError::Letters(missing));
        }
        let scale = width as f32 / tree.size().width();
        let height = (tree.size().height() * scale).ceil().max(1.0) as u32;
        let mut pixels = Pixmap::new(width, height).ok_or(PngError::Width(width))?;
        resvg::render(&tree, Transform::from_scale(scale, scale), &mut pixels.as_mut());
        pixels.encode_png().map_err(|error| PngError::Pack(error.to_string()))
    }

    /// A picture for a page takes its inks from there; outside there is no page, so the light ones are put in.
    /// Quotes in words are escaped, so only attributes can match.
    fn with_light_inks(&self) -> String {
        INKS.into_iter().fold(self.as_str().to_owned(), |markup, ink| {
            let value = |theme: Theme| format!("=\"{}\"", theme.ink(ink));
            markup.replace(&value(Theme::Page), &value(Theme::Light))
        })
    }
}

/// The letters for which no font has a shape, each once: those with glyph 0 (OpenType, "glyph 0 must be .notdef").
fn missing(group: &Group) -> String {
    let mut found = String::new();
    for node in group.children() {
        let letters = match node {
            Node::Group(group) => missing(group),
            Node::Text(text) => text
                .layouted()
                .iter()
                .flat_map(|span| &span.positioned_glyphs)
                .filter(|glyph| glyph.id.0 == 0)
                .map(|glyph| glyph.text.as_str())
                .collect(),
            _ => String::new(),
        };
        for letter in letters.chars() {
            if !found.contains(letter) {
                found.push(letter);
            }
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Bead, Labels, Picture, Strand, Thread, View};
    use cube::{Size, State};
    use resvg::tiny_skia::Color;

    fn net() -> Picture {
        Picture::new(State::solved(Size::TWO).facelets(), "solved").labels(Labels::letters(Size::TWO))
    }

    #[test]
    fn stickers_have_their_colours() {
        let png = net().labels(Labels::none()).net().png(169, &[]).unwrap();
        let pixels = Pixmap::decode_png(&png).unwrap();
        assert_eq!(pixels.width(), 169);
        // The net is 16 + 3 * 0.8 + 2 * 0.5 facelet halves wide; the first of F begins at 0.5 + 4.8.
        let unit = 169.0 / (3.0 * 4.8 + 4.0 + 1.0);
        let at = |x: f64, y: f64| {
            let pixel = pixels.pixel((x * unit) as u32, (y * unit) as u32).unwrap().demultiply();
            (pixel.red(), pixel.green(), pixel.blue())
        };
        let palette = crate::Palette::default();
        let is = |face| {
            let crate::Rgb { red, green, blue } = palette[face].colour;
            (red, green, blue)
        };
        assert_eq!(at(0.5 + 4.8 + 1.0, 0.5 + 1.0), is(cube::Face::U));
        assert_eq!(at(0.5 + 4.8 + 1.0, 0.5 + 4.8 + 1.0), is(cube::Face::F));
        assert_eq!(at(0.5 + 14.4 + 3.0, 0.5 + 4.8 + 3.0), is(cube::Face::B));
    }

    #[test]
    fn letters_without_a_shape_are_refused() {
        let thread =
            |letter: &str| Thread::new(vec![Strand::new("", "").bead(Bead::new(letter))], "memo").svg();
        assert!(thread("Ж").png(100, &[]).is_ok());
        assert!(matches!(thread("あ").png(100, &[]), Err(PngError::Letters(letters)) if letters == "あ"));
        assert!(matches!(thread("A").png(0, &[]), Err(PngError::Width(0))));
    }

    #[test]
    fn letters_are_really_painted() {
        let count = |svg: &Svg| {
            let pixels = Pixmap::decode_png(&svg.png(200, &[]).unwrap()).unwrap();
            let black = Color::BLACK.premultiply().to_color_u8();
            pixels.pixels().iter().filter(|&&pixel| pixel == black).count()
        };
        let view = View::default();
        assert_eq!(count(&net().labels(Labels::none()).solid(&view)), 0);
        assert!(count(&net().solid(&view)) > 20);
    }

    #[test]
    fn inks_of_a_page_are_replaced() {
        let svg = net().theme(Theme::Page).net();
        assert!(svg.as_str().contains("var("));
        assert!(!svg.with_light_inks().contains("var("));
    }
}
