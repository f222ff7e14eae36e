//! What the trade calls a kind of piece, as it is written in files and on the command line.

use cube::{Hand, Layer, Orbit};

/// The name of a kind: `corner`, `edge` (a midge), `wing`, `x-centre`, `t-centre`, `left oblique`, …
pub fn kind_name(orbit: Orbit) -> &'static str {
    match orbit {
        Orbit::Corner => "corner",
        Orbit::Midge => "edge",
        Orbit::Wing { layer: Layer::Second } => "wing",
        Orbit::Wing { layer: Layer::Third } => "wing 3",
        Orbit::XCentre { layer: Layer::Second } => "x-centre",
        Orbit::XCentre { layer: Layer::Third } => "x-centre 3",
        Orbit::TCentre { layer: Layer::Second } => "t-centre",
        Orbit::TCentre { layer: Layer::Third } => "t-centre 3",
        Orbit::Oblique(Hand::Left) => "left oblique",
        Orbit::Oblique(Hand::Right) => "right oblique",
    }
}

/// The kinds that a memo is made for so far: those of the 2x2 and the 3x3.
pub const KINDS: [Orbit; 2] = [Orbit::Corner, Orbit::Midge];

/// The kind with a name; `midge` is another word for `edge`.
///
/// ```
/// use blind::kind_named;
/// use cube::Orbit;
/// assert_eq!(kind_named("edge"), Some(Orbit::Midge));
/// assert_eq!(kind_named("face"), None);
/// ```
pub fn kind_named(name: &str) -> Option<Orbit> {
    if name == "midge" {
        return Some(Orbit::Midge);
    }
    KINDS.into_iter().find(|&orbit| kind_name(orbit) == name)
}
