//! Colours: contrast, difference to the eye, and how they look to the colour-blind.

use palette::color_difference::{Ciede2000, Wcag21RelativeContrast};
use palette::{IntoColor, Lab, LinSrgb, Srgb};
use std::fmt;
use std::str::FromStr;
use thiserror::Error;

/// An sRGB colour (IEC 61966-2-1), eight bits a channel.
///
/// ```
/// use draw::Rgb;
/// let grey: Rgb = "#767676".parse().unwrap();
/// // The well-known lightest grey that still reads on white.
/// assert!((grey.contrast(Rgb::WHITE) - 4.54).abs() < 0.005);
/// ```
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub struct Rgb {
    /// Red.
    pub red: u8,
    /// Green.
    pub green: u8,
    /// Blue.
    pub blue: u8,
}

/// A text that is no colour.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
#[error("`{0}` is no colour; one like `#d0402b` is expected, six hexadecimal digits after `#`")]
pub struct ColourError(pub String);

impl Rgb {
    /// Black.
    pub const BLACK: Self = Self::new(0, 0, 0);
    /// White.
    pub const WHITE: Self = Self::new(255, 255, 255);

    /// A colour from its channels.
    pub const fn new(red: u8, green: u8, blue: u8) -> Self {
        Self { red, green, blue }
    }

    fn linear(self) -> LinSrgb<f64> {
        self.srgb().into_linear()
    }

    fn srgb(self) -> Srgb<f64> {
        Srgb::new(self.red, self.green, self.blue).into_format()
    }

    /// Contrast with another colour, 1 to 21 (WCAG 2.1, "contrast ratio", over relative luminance).
    pub fn contrast(self, other: Self) -> f64 {
        self.srgb().relative_contrast(other.srgb())
    }

    /// Black or white, whichever reads better on this colour. The contrast is then never below 4.58.
    #[must_use]
    pub fn label(self) -> Self {
        if self.contrast(Self::BLACK) >= self.contrast(Self::WHITE) { Self::BLACK } else { Self::WHITE }
    }

    /// How different two colours look: CIEDE2000 (CIE 142-2001). About 1 is just seen side by side; over 10 they
    /// are told apart at a glance (common practice, no source).
    pub fn difference(self, other: Self) -> f64 {
        lab(self.linear()).difference(lab(other.linear()))
    }

    /// How the colour looks to someone with a kind of colour blindness.
    #[must_use]
    pub fn seen_with(self, sight: Sight) -> Self {
        let colour = self.linear();
        let channels = [colour.red, colour.green, colour.blue];
        let row = |row: [f64; 3]| row.iter().zip(channels).map(|(a, b)| a * b).sum::<f64>().clamp(0.0, 1.0);
        let [red, green, blue] = sight.matrix().map(row);
        let seen = Srgb::<f64>::from_linear(LinSrgb::new(red, green, blue)).into_format::<u8>();
        Self::new(seen.red, seen.green, seen.blue)
    }
}

fn lab(colour: LinSrgb<f64>) -> Lab<palette::white_point::D65, f64> {
    colour.into_color()
}

/// How someone sees colours.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Sight {
    /// All three kinds of cones.
    Usual,
    /// No long-wave cones: red is dark and like green.
    Protanopia,
    /// No middle-wave cones: green is like red.
    Deuteranopia,
    /// No short-wave cones: blue is like green, yellow like pink.
    Tritanopia,
}

impl Sight {
    /// All four.
    pub const ALL: [Self; 4] = [Self::Usual, Self::Protanopia, Self::Deuteranopia, Self::Tritanopia];

    /// The simulation on linear sRGB: G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, "A Physiologically-based
    /// Model for Simulation of Color Vision Deficiency", 2009, severity 1.0 (from memory; each row sums to 1, which
    /// the tests check, so that greys stay grey).
    const fn matrix(self) -> [[f64; 3]; 3] {
        match self {
            Self::Usual => [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]],
            Self::Protanopia => [
                [0.152_286, 1.052_583, -0.204_868],
                [0.114_503, 0.786_281, 0.099_216],
                [-0.003_882, -0.048_116, 1.051_998],
            ],
            Self::Deuteranopia => [
                [0.367_322, 0.860_646, -0.227_968],
                [0.280_085, 0.672_501, 0.047_413],
                [-0.011_820, 0.042_940, 0.968_881],
            ],
            Self::Tritanopia => [
                [1.255_528, -0.076_749, -0.178_779],
                [-0.078_411, 0.930_809, 0.147_602],
                [0.004_733, 0.691_367, 0.303_900],
            ],
        }
    }
}

impl fmt::Display for Rgb {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "#{:02x}{:02x}{:02x}", self.red, self.green, self.blue)
    }
}

impl FromStr for Rgb {
    type Err = ColourError;

    fn from_str(text: &str) -> Result<Self, ColourError> {
        let wrong = || ColourError(text.to_owned());
        let digits = text.strip_prefix('#').ok_or_else(wrong)?;
        if digits.len() != 6 || !digits.bytes().all(|digit| digit.is_ascii_hexdigit()) {
            return Err(wrong());
        }
        let value = u32::from_str_radix(digits, 16).map_err(|_| wrong())?;
        Ok(Self::new((value >> 16) as u8, (value >> 8) as u8, value as u8))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn contrast_is_that_of_the_guidelines() {
        // WCAG 2.1: black on white is 21:1, a colour on itself 1:1.
        assert!((Rgb::BLACK.contrast(Rgb::WHITE) - 21.0).abs() < 1e-9);
        assert!((Rgb::WHITE.contrast(Rgb::WHITE) - 1.0).abs() < 1e-9);
        // Pure red on white, 4.00:1 (WebAIM's contrast checker; from memory).
        assert!((Rgb::new(255, 0, 0).contrast(Rgb::WHITE) - 4.0).abs() < 0.005);
    }

    #[test]
    fn contrast_follows_the_formula_as_it_is_written() {
        // WCAG 2.1, definition of relative luminance, written out again on its own.
        let luminance = |colour: Rgb| {
            let part = |value: u8| {
                let value = f64::from(value) / 255.0;
                if value <= 0.03928 { value / 12.92 } else { libm::pow((value + 0.055) / 1.055, 2.4) }
            };
            0.2126 * part(colour.red) + 0.7152 * part(colour.green) + 0.0722 * part(colour.blue)
        };
        for (a, b) in [("#123456", "#fedcba"), ("#0a0a0a", "#808080"), ("#00ff00", "#0000ff")] {
            let (a, b): (Rgb, Rgb) = (a.parse().unwrap(), b.parse().unwrap());
            let (high, low) = (luminance(a).max(luminance(b)), luminance(a).min(luminance(b)));
            assert!((a.contrast(b) - (high + 0.05) / (low + 0.05)).abs() < 0.01);
        }
    }

    #[test]
    fn simulations_keep_grey() {
        for sight in Sight::ALL {
            for row in sight.matrix() {
                assert!((row.iter().sum::<f64>() - 1.0).abs() < 2e-6);
            }
            let grey = Rgb::new(128, 128, 128);
            assert_eq!(grey.seen_with(sight), grey);
        }
    }

    #[test]
    fn texts_that_are_no_colours_are_refused() {
        for text in ["", "#", "red", "#12345", "#1234567", "#12345g", "#+12345", "#é1234"] {
            assert!(text.parse::<Rgb>().is_err(), "{text}");
        }
    }

    proptest! {
        #[test]
        fn labels_always_read(red: u8, green: u8, blue: u8) {
            let colour = Rgb::new(red, green, blue);
            prop_assert!(colour.contrast(colour.label()) >= 4.5);
            prop_assert_eq!(colour.to_string().parse::<Rgb>().unwrap(), colour);
        }
    }
}
