//! The methods there are and their own algorithms: for each kind an algorithm and the two stickers that it exchanges. What an algorithm does is
//! computed from its moves; nothing here is believed.
//!
//! Source of the algorithms: common practice, no source.

use cube::{Algorithm, Layer, Orbit, ParseError, Size, Sticker};

/// The methods there are, named for what they do.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub enum MethodName {
    /// One swap a letter.
    #[default]
    OneSwap,
    /// Half turns of one layer between the faces: the middle slice for edges, an inner layer for wings and centres.
    SliceSwap,
    /// An algorithm for two letters.
    ThreeCycle,
}

impl MethodName {
    /// All methods.
    pub const ALL: [Self; 3] = [Self::OneSwap, Self::SliceSwap, Self::ThreeCycle];

    /// Whether it can carry out a kind. No layer between the faces has corners.
    pub const fn carries_out(self, orbit: Orbit) -> bool {
        match (self, orbit) {
            (Self::SliceSwap, Orbit::Corner) => false,
            (
                Self::OneSwap | Self::SliceSwap | Self::ThreeCycle,
                Orbit::Corner
                | Orbit::Midge
                | Orbit::Wing { .. }
                | Orbit::XCentre { .. }
                | Orbit::TCentre { .. }
                | Orbit::Oblique(_),
            ) => true,
        }
    }

    /// Its name in files.
    pub const fn name(self) -> &'static str {
        match self {
            Self::OneSwap => "one-swap",
            Self::SliceSwap => "slice-swap",
            Self::ThreeCycle => "three-cycle",
        }
    }
}

/// An algorithm for no particular size, as conventions have them: read on the largest, which has every turn.
///
/// # Errors
/// [`ParseError`] with the place of the first mistake.
///
/// ```
/// use blind::sizeless;
/// assert_eq!(sizeless("[R, U]").unwrap().flatten().len(), 4);
/// assert_eq!(sizeless("R K").unwrap_err().column, 3);
/// ```
pub fn sizeless(text: &str) -> Result<Algorithm, ParseError> {
    Algorithm::parse(text, Size::ALL[Size::ALL.len() - 1])
}

/// The usual swap of a method for a kind.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Usual {
    /// The buffer.
    pub buffer: Sticker,
    /// The sticker that the algorithm exchanges the buffer's with.
    pub target: Sticker,
    /// The algorithm.
    pub algorithm: Algorithm,
}

/// As it is written: algorithm, buffer, target.
type Written = (&'static str, &'static str, &'static str);

const ONE_SWAP_CORNER: Written = ("R U' R' U' R U R' F' R U R' U' R' F R", "LUB", "DFR");
const ONE_SWAP_EDGE: Written = ("R U R' U' R' F R2 U' R' U' R U R' F'", "UR", "UL");
/// Half a turn of the middle slice exchanges the buffer with UB; besides, it moves the slice itself.
const SLICE_SWAP_EDGE: Written = ("M2", "DF", "UB");
/// These carry out the last letter of an odd number.
const THREE_CYCLE_CORNER: Written = ("R U R' F' R U R' U' R' F R2 U' R' U'", "UFR", "UBR");
const THREE_CYCLE_EDGE: Written = ("R U R' F' R U R' U' R' F R2 U' R' U'", "UF", "UR");

/// Two wings exchange places; besides, centres change places within their faces, which nobody can see once they are solved.
const SWAP_WINGS: Written = ("2R U2 2R U2 F2 2R F2 2L' U2 2L U2 2R2", "UBl", "FUl");
/// The same for the wings of the third layer.
const SWAP_WINGS_3: Written = ("3R U2 3R U2 F2 3R F2 3L' U2 3L U2 3R2", "UB3l", "FU3l");

/// Targets in the slice, at the first letter of a pair. At the second letter the slice is half-turned, so that UF and DB
/// have changed places; the method computes that.
const IN_THE_SLICE: [(&str, &str); 4] = [
    ("UF", "U2 M' U2 M'"),
    ("DB", "M U2 M U2"),
    ("FU", "D M' U R2 U' M U R2 U' D' M2"),
    ("BD", "M2 D U R2 U' M' U R2 U' M D'"),
];

/// Made once when the number of letters is odd: with one-swap they exchange again what both algorithms leave exchanged,
/// UFR with UBR and UL with UB; with slice-swap the slice and UL with UB; with three-cycles the usual last swap.
const PARITY: [&str; 3] = [
    "R U' R' U' R U R D R' U' R D' R' U2 R' U'",
    "D' L2 D M2 D' L2 D",
    "R U R' F' R U R' U' R' F R2 U' R' U'",
];

fn read(text: &str) -> Algorithm {
    // A test reads every text above, so the empty algorithm never comes about.
    sizeless(text).unwrap_or_else(|_| Algorithm::empty(Size::ALL[0]))
}

const fn written(method: MethodName, orbit: Orbit) -> Option<Written> {
    match (method, orbit) {
        (MethodName::OneSwap, Orbit::Corner) => Some(ONE_SWAP_CORNER),
        (MethodName::OneSwap, Orbit::Midge) => Some(ONE_SWAP_EDGE),
        (MethodName::SliceSwap, Orbit::Midge) => Some(SLICE_SWAP_EDGE),
        (MethodName::ThreeCycle, Orbit::Corner) => Some(THREE_CYCLE_CORNER),
        (MethodName::ThreeCycle, Orbit::Midge) => Some(THREE_CYCLE_EDGE),
        (MethodName::OneSwap | MethodName::SliceSwap | MethodName::ThreeCycle, Orbit::Wing { layer }) => {
            Some(match layer {
                Layer::Second => SWAP_WINGS,
                Layer::Third => SWAP_WINGS_3,
            })
        }
        (MethodName::SliceSwap, Orbit::Corner)
        | (
            MethodName::OneSwap | MethodName::SliceSwap | MethodName::ThreeCycle,
            Orbit::XCentre { .. } | Orbit::TCentre { .. } | Orbit::Oblique(_),
        ) => None,
    }
}

/// The usual swap of a method for a kind, if the method has one for it. Of wings it is what carries out a last letter in every
/// method; centres need none, what they are carried out by is found by search.
///
/// ```
/// use blind::{MethodName, usual};
/// use cube::Orbit;
/// let swap = usual(MethodName::OneSwap, Orbit::Corner).unwrap();
/// assert_eq!(Orbit::Corner.name(swap.buffer), "LUB");
/// assert!(usual(MethodName::SliceSwap, Orbit::Corner).is_none());
/// ```
pub fn usual(method: MethodName, orbit: Orbit) -> Option<Usual> {
    let (algorithm, buffer, target) = written(method, orbit)?;
    Some(Usual { buffer: orbit.sticker(buffer)?, target: orbit.sticker(target)?, algorithm: read(algorithm) })
}

/// Slice-swap's algorithms for targets in the slice itself.
pub(crate) fn in_the_slice() -> impl Iterator<Item = (Sticker, Algorithm)> {
    IN_THE_SLICE
        .into_iter()
        .filter_map(|(target, algorithm)| Some((Orbit::Midge.sticker(target)?, read(algorithm))))
}

/// The parity algorithms that go with the usual swaps, the one for one-swap first.
pub(crate) fn usual_parity() -> [Algorithm; 3] {
    PARITY.map(read)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::swap::SwapEffect;

    #[test]
    fn every_text_is_read() {
        for text in PARITY.into_iter().chain(IN_THE_SLICE.map(|(_, text)| text)) {
            assert_eq!(read(text).to_string(), text);
        }
        assert_eq!(in_the_slice().count(), IN_THE_SLICE.len());
    }

    #[test]
    fn swaps_exchange_what_they_claim() {
        for method in MethodName::ALL {
            for orbit in Orbit::ALL {
                let Some(usual) = usual(method, orbit) else { continue };
                assert_eq!(
                    written(method, orbit).map(|(text, ..)| text),
                    Some(&*usual.algorithm.to_string())
                );
                if (method, orbit) == (MethodName::SliceSwap, Orbit::Midge) {
                    continue;
                }
                let size =
                    Size::ALL.into_iter().find(|size| Orbit::of(*size).contains(&orbit)).expect("a size");
                let on = usual.algorithm.on(size.max(Size::THREE)).expect("turns of the size");
                let effect = SwapEffect::of(on, orbit, usual.buffer).expect("a swap");
                assert_eq!(effect.target(), usual.target, "{method:?} {orbit}");
            }
        }
    }
}
