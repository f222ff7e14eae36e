//! The six sticker colours.

use crate::colour::{Rgb, Sight};
use cube::Face;

/// A colour of stickers: how it looks, what it is called, and the letter that stands for it where colour cannot.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Shade {
    /// How it looks.
    pub colour: Rgb,
    /// What it is called, such as "white".
    pub name: String,
    /// One letter for it, such as `W`.
    pub letter: char,
}

impl Shade {
    /// A colour with its name and letter.
    pub fn new(colour: Rgb, name: impl Into<String>, letter: char) -> Self {
        Self { colour, name: name.into(), letter }
    }
}

/// The six colours, by the face on which each is on the solved cube in the first hold.
///
/// ```
/// use cube::Face;
/// let palette = draw::Palette::default();
/// assert_eq!(palette[Face::U].name, "white");
/// assert!(palette.report().weakest_label >= 4.5);
/// ```
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Palette([Shade; 6]);

/// Colours of the thread, the usual one first; all read well on velvet.
const SILKS: [Rgb; 4] = [
    Rgb::new(0xf4, 0x9a, 0xd3),
    Rgb::new(0x7f, 0xdf, 0xf0),
    Rgb::new(0xc9, 0xb0, 0xff),
    Rgb::new(0xc6, 0xf2, 0x8a),
];
/// From this CIEDE2000 difference on, colours are told apart at a glance (common practice, no source).
const APART: f64 = 14.0;

/// What a palette is like to read.
#[derive(Clone, PartialEq, Debug)]
pub struct PaletteReport {
    /// For each face in the order U L F R B D, the contrast of its letters (WCAG 2.1; 4.5 is enough for text).
    pub labels: [f64; 6],
    /// The least of them.
    pub weakest_label: f64,
    /// For each sight, the two faces whose colours look most alike and how different they are (CIEDE2000).
    pub closest: [(Sight, Face, Face, f64); 4],
}

impl Palette {
    /// Six colours, in the order U L F R B D of the faces where they are on the solved cube.
    pub const fn new(shades: [Shade; 6]) -> Self {
        Self(shades)
    }

    /// The letters in the order U L F R B D.
    pub fn letters(&self) -> [char; 6] {
        [0, 1, 2, 3, 4, 5].map(|face: usize| self.0[face].letter)
    }

    /// A colour for the thread that no sticker has: the first of a few that differs from all six at a glance.
    ///
    /// ```
    /// use draw::{Palette, Rgb, Shade};
    /// let usual = Palette::default().silk();
    /// let pink = Palette::new([usual; 6].map(|colour| Shade::new(colour, "pink", 'P')));
    /// assert_ne!(pink.silk(), usual);
    /// ```
    pub fn silk(&self) -> Rgb {
        let least = |silk: &Rgb| {
            self.0.iter().map(|shade| shade.colour.difference(*silk)).fold(f64::INFINITY, f64::min)
        };
        let apart = SILKS.into_iter().find(|silk| least(silk) >= APART);
        apart.or_else(|| SILKS.into_iter().max_by(|a, b| least(a).total_cmp(&least(b)))).unwrap_or(SILKS[0])
    }

    /// How well its letters read and its colours are told apart.
    pub fn report(&self) -> PaletteReport {
        let labels = Face::ALL.map(|face| self[face].colour.contrast(self[face].colour.label()));
        let closest = Sight::ALL.map(|sight| {
            let seen = Face::ALL.map(|face| self[face].colour.seen_with(sight));
            let mut closest = (sight, Face::U, Face::L, f64::INFINITY);
            for (i, &a) in Face::ALL.iter().enumerate() {
                for &b in &Face::ALL[i + 1..] {
                    let difference = seen[a.index()].difference(seen[b.index()]);
                    if difference < closest.3 {
                        closest = (sight, a, b, difference);
                    }
                }
            }
            closest
        });
        PaletteReport { labels, weakest_label: labels.into_iter().fold(f64::INFINITY, f64::min), closest }
    }
}

impl std::ops::Index<Face> for Palette {
    type Output = Shade;

    fn index(&self, face: Face) -> &Shade {
        &self.0[face.index()]
    }
}

/// White up, green front, red right: chosen so that the three usual kinds of colour blindness still tell all six
/// apart, by lightness where hue fails.
impl Default for Palette {
    fn default() -> Self {
        Self([
            Shade::new(Rgb::new(0xfb, 0xfa, 0xf7), "white", 'W'),
            Shade::new(Rgb::new(0xfb, 0x84, 0x18), "orange", 'O'),
            Shade::new(Rgb::new(0x52, 0xb5, 0x8e), "green", 'G'),
            Shade::new(Rgb::new(0xb0, 0x2a, 0x3c), "red", 'R'),
            Shade::new(Rgb::new(0x22, 0x57, 0xa3), "blue", 'B'),
            Shade::new(Rgb::new(0xf8, 0xd4, 0x24), "yellow", 'Y'),
        ])
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_default_is_told_apart_by_everyone() {
        let report = Palette::default().report();
        assert!(report.weakest_label >= 4.5, "{report:?}");
        for (sight, a, b, difference) in report.closest {
            assert!(difference >= 10.0, "{sight:?}: {a} and {b} differ by {difference:.1} only");
        }
    }

    #[test]
    fn another_simulation_agrees() {
        // F. Viénot, H. Brettel, J. D. Mollon, "Digital video colourmaps for checking the legibility of displays by
        // dichromats", 1999, as matrices on linear sRGB (from memory).
        const PROTAN: [[f64; 3]; 3] =
            [[0.112_38, 0.887_62, 0.0], [0.112_38, 0.887_62, 0.0], [0.004_01, -0.004_01, 1.0]];
        const DEUTAN: [[f64; 3]; 3] =
            [[0.292_75, 0.707_25, 0.0], [0.292_75, 0.707_25, 0.0], [-0.022_34, 0.022_34, 1.0]];
        let decode = |value: u8| {
            let value = f64::from(value) / 255.0;
            if value <= 0.04045 { value / 12.92 } else { libm::pow((value + 0.055) / 1.055, 2.4) }
        };
        let encode = |value: f64| {
            let value = value.clamp(0.0, 1.0);
            let value = if value <= 0.003_130_8 {
                value * 12.92
            } else {
                1.055 * libm::pow(value, 1.0 / 2.4) - 0.055
            };
            (value * 255.0).round() as u8
        };
        let palette = Palette::default();
        for matrix in [PROTAN, DEUTAN] {
            let seen = Face::ALL.map(|face| {
                let Rgb { red, green, blue } = palette[face].colour;
                let linear = [red, green, blue].map(decode);
                let [red, green, blue] =
                    matrix.map(|row| encode(row.iter().zip(linear).map(|(a, b)| a * b).sum()));
                Rgb::new(red, green, blue)
            });
            for i in 0..6 {
                for j in 0..i {
                    assert!(seen[i].difference(seen[j]) >= 10.0, "{} {}", Face::ALL[i], Face::ALL[j]);
                }
            }
        }
    }

    #[test]
    fn a_poor_palette_is_reported() {
        let mut shades = Palette::default().0;
        shades[3].colour = shades[1].colour;
        let report = Palette::new(shades).report();
        assert_eq!((report.closest[0].1, report.closest[0].2), (Face::L, Face::R));
        assert!(report.closest[0].3 < 1e-9);
    }
}
