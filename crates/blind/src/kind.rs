//! What the trade calls a kind of piece, as it is written in files and on the command line.

use cube::{Hand, Layer, Orbit};

/// The name of a kind: `corner`, `edge` (a midge), `wing`, `x-centre`, `t-centre-3`, `left-oblique`, …
///
/// Names are one word, so that they can stand as keys in files.
pub const fn kind_name(orbit: Orbit) -> &'static str {
    match orbit {
        Orbit::Corner => "corner",
        Orbit::Midge => "edge",
        Orbit::Wing { layer: Layer::Second } => "wing",
        Orbit::Wing { layer: Layer::Third } => "wing-3",
        Orbit::XCentre { layer: Layer::Second } => "x-centre",
        Orbit::XCentre { layer: Layer::Third } => "x-centre-3",
        Orbit::TCentre { layer: Layer::Second } => "t-centre",
        Orbit::TCentre { layer: Layer::Third } => "t-centre-3",
        Orbit::Oblique(Hand::Left) => "left-oblique",
        Orbit::Oblique(Hand::Right) => "right-oblique",
    }
}

/// The kind with a name; `midge` is another word for `edge`.
///
/// ```
/// use blind::{kind_name, kind_named};
/// use cube::Orbit;
/// assert_eq!(kind_named("edge"), Some(Orbit::Midge));
/// assert_eq!(kind_named("face"), None);
/// assert!(Orbit::ALL.into_iter().all(|orbit| kind_named(kind_name(orbit)) == Some(orbit)));
/// ```
pub fn kind_named(name: &str) -> Option<Orbit> {
    if name == "midge" {
        return Some(Orbit::Midge);
    }
    Orbit::ALL.into_iter().find(|&orbit| kind_name(orbit) == name)
}
