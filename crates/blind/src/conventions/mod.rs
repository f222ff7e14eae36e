//! Conventions: everything on which solvers differ, in one place.

mod change;
mod fit;
mod order;

pub use change::{ChangeError, Changed, Consequence, ConventionsChange};
pub use fit::Misfit;
pub use order::OrbitOrder;

use crate::letters::Letters;
use crate::trace::Breaks;
use crate::usual::{MethodName, usual, usual_parity};
use cube::{Algorithm, Face, Hand, Layer, LowerCase, Orbit, OrbitMap, ParseError, Rotation, Size, Sticker};
use std::sync::LazyLock;

/// A colour of the puzzle.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Colour {
    /// What it is called: `white`, or whatever the solver calls it.
    pub name: String,
    /// Its shade as red, green, blue, if the solver gave one; otherwise the project's own shade of that name.
    pub shade: Option<[u8; 3]>,
}

/// Colour names that need no shade.
pub const COLOUR_NAMES: [&str; 6] = ["white", "yellow", "red", "orange", "green", "blue"];

/// Where a cycle that does not hold the buffer is broken into.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub enum BreakChoice {
    /// At the first unsolved sticker in letter order.
    #[default]
    First,
    /// At the first unsolved sticker of this list; after it in letter order.
    Preference(Vec<Sticker>),
    /// Where the letters of the cycle take the fewest set-up moves. The number of letters is the same for all.
    Fewest,
    /// Where the whole takes the least estimated time, all cycles and their order weighed together.
    Least,
}

/// How pieces that are turned in their places are put right by three-cycles.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub enum Turned {
    /// By algorithms that turn two pieces.
    #[default]
    Algorithm,
    /// By two three-cycles through a third piece.
    Cycles,
}

impl Turned {
    /// Both ways.
    pub const ALL: [Self; 2] = [Self::Algorithm, Self::Cycles];

    /// Its name in files.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Algorithm => "algorithm",
            Self::Cycles => "cycles",
        }
    }
}

/// What is done when the number of letters is odd.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub enum ParityChoice {
    /// An algorithm between the kinds.
    #[default]
    Algorithm,
    /// Two edges are taken for each other in the trace.
    Exchange,
}

impl ParityChoice {
    /// Both ways.
    pub const ALL: [Self; 2] = [Self::Algorithm, Self::Exchange];

    /// Its name in files.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Algorithm => "algorithm",
            Self::Exchange => "exchange",
        }
    }
}

/// What is settled for one kind of piece.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct KindConventions {
    /// A letter for each sticker.
    pub letters: Letters,
    /// Of wings, which of the two stickers names them where letters go by place: the one left of the middle of its edge, seen with
    /// the edge at the top of its face, or the one right of it. Other kinds have no choice.
    pub named_by: Hand,
    /// The sticker from which the trace begins.
    pub buffer: Sticker,
    /// Where cycles are broken into.
    pub breaks: BreakChoice,
    /// The name of the method.
    pub method: MethodName,
    /// The swap algorithm, for no particular size; none where the kind has no usual one and none was given.
    pub algorithm: Option<Algorithm>,
    /// Where the sheet of three-cycles is kept, as it is written; whoever reads files finds it.
    pub sheet: Option<String>,
    /// How turned pieces are put right by three-cycles.
    pub turned: Turned,
}

/// Everything a solver has settled on. How it is written in files is the business of crate `formats`.
///
/// ```
/// use blind::Conventions;
/// use cube::Orbit;
/// let mut conventions = Conventions::default();
/// conventions.kind_mut(Orbit::Corner).buffer = Orbit::Corner.sticker("UBL").unwrap();
/// assert_eq!(Orbit::Corner.name(conventions.kind(Orbit::Corner).buffer), "UBL");
/// ```
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Conventions {
    /// The colours of the faces U L F R B D in the hold in which scrambles are made.
    pub colours: [Colour; 6],
    /// How the puzzle is held to solve: the rotation that leads there from the hold for scrambling.
    pub holding: Rotation,
    /// What is settled for each kind.
    pub kinds: OrbitMap<KindConventions>,
    /// Kinds in the order in which they are memorised.
    pub memo_order: OrbitOrder,
    /// Kinds in the order in which they are carried out.
    pub execution_order: OrbitOrder,
    /// What lower-case letters in moves stand for on puzzles with inner layers.
    pub lower_case: LowerCase,
    /// Where the solver's own costs of turning are kept, as it is written; whoever reads files finds them.
    pub ease: Option<String>,
    /// Whether letters are written in pairs.
    pub pairs: bool,
    /// What is made once when the number of letters is odd, for no particular size.
    pub parity_algorithm: Algorithm,
    /// What is done when the number of letters is odd.
    pub parity: ParityChoice,
}

static DEFAULT: LazyLock<Conventions> = LazyLock::new(|| {
    let colour = |name: &str| Colour { name: name.to_owned(), shade: None };
    let [parity_algorithm, ..] = usual_parity();
    Conventions {
        colours: ["white", "orange", "green", "red", "blue", "yellow"].map(colour),
        holding: Rotation::NONE,
        kinds: OrbitMap::new(|orbit| {
            // Wings and centres two letters at a time (common practice, no source).
            let method = match orbit {
                Orbit::Corner | Orbit::Midge => MethodName::OneSwap,
                Orbit::Wing { .. } | Orbit::XCentre { .. } | Orbit::TCentre { .. } | Orbit::Oblique(_) => {
                    MethodName::ThreeCycle
                }
            };
            let swap = usual(method, orbit);
            KindConventions {
                letters: Letters::default(),
                named_by: Hand::Left,
                buffer: match &swap {
                    Some(swap) if method == MethodName::OneSwap => swap.buffer,
                    Some(_) | None => usual_buffer(orbit),
                },
                breaks: BreakChoice::First,
                method,
                algorithm: swap.map(|swap| swap.algorithm),
                sheet: None,
                turned: Turned::default(),
            }
        }),
        memo_order: OrbitOrder::default(),
        execution_order: OrbitOrder::of_execution(&[Orbit::Corner, Orbit::Midge]),
        lower_case: LowerCase::default(),
        ease: None,
        pairs: true,
        parity_algorithm,
        parity: ParityChoice::default(),
    }
});

/// The buffer of kinds that have no usual algorithm yet: wings beside the edges' buffer, centres at the first letter.
fn usual_buffer(orbit: Orbit) -> Sticker {
    let letter = match orbit {
        Orbit::Corner => 4,
        Orbit::Midge | Orbit::Wing { layer: Layer::Second | Layer::Third } => 1,
        Orbit::XCentre { .. } | Orbit::TCentre { .. } | Orbit::Oblique(Hand::Left | Hand::Right) => 0,
    };
    let mut all = Sticker::all();
    let first = all.next();
    (if letter == 0 { first } else { all.nth(letter - 1) })
        .unwrap_or_else(|| unreachable!("there are 24 stickers"))
}

impl KindConventions {
    /// Letters by the places of the stickers that name the pieces, and back: where wings are named by their right stickers, those of
    /// the two wings of an edge are exchanged.
    #[must_use]
    pub fn by_place<T: Clone>(&self, orbit: Orbit, letters: &[T]) -> Vec<T> {
        match self.named_by {
            Hand::Left => letters.to_vec(),
            Hand::Right => Sticker::all()
                .filter_map(|sticker| letters.get(orbit.across(sticker).index()).cloned())
                .collect(),
        }
    }
}

impl Default for Conventions {
    /// White up, green front; the standard order of letters; one-swap for corners and edges, with the buffers LUB and UR, three-cycles for
    /// wings and centres; carried out from inside out.
    fn default() -> Self {
        DEFAULT.clone()
    }
}

impl Conventions {
    /// What is settled for a kind.
    pub fn kind(&self, orbit: Orbit) -> &KindConventions {
        &self.kinds[orbit]
    }

    /// The same, to be changed.
    pub fn kind_mut(&mut self, orbit: Orbit) -> &mut KindConventions {
        &mut self.kinds[orbit]
    }

    /// Reads moves for a puzzle as the solver writes them.
    ///
    /// # Errors
    /// [`ParseError`] with the place of the first mistake.
    ///
    /// ```
    /// use blind::Conventions;
    /// use cube::{LowerCase, Size};
    /// let four = Size::new(4).unwrap();
    /// let mut conventions = Conventions::default();
    /// assert_eq!(conventions.moves("r U", four).unwrap().to_string(), "Rw U");
    /// conventions.lower_case = LowerCase::Inner;
    /// assert_eq!(conventions.moves("r U", four).unwrap().to_string(), "2R U");
    /// ```
    pub fn moves(&self, text: &str, size: Size) -> Result<Algorithm, ParseError> {
        Algorithm::parse_as(text, size, self.lower_case)
    }

    /// The colour that a face has when the puzzle is solved in the solver's hold.
    pub fn colour_held(&self, face: Face) -> &Colour {
        &self.colours[self.holding.inverse().image(face).index()]
    }

    /// The colour of a face in the hold in which scrambles are made.
    pub fn colour(&self, face: Face) -> &Colour {
        &self.colours[face.index()]
    }

    /// A character for each colour, in the order U L F R B D of the hold for scrambling: the capital initials where
    /// they differ, otherwise nothing.
    pub fn colour_letters(&self) -> Option<[char; 6]> {
        let mut letters = ['?'; 6];
        for (letter, colour) in letters.iter_mut().zip(&self.colours) {
            *letter = colour.name.chars().next()?.to_uppercase().next()?;
        }
        let mut sorted = letters;
        sorted.sort_unstable();
        sorted.windows(2).all(|pair| pair[0] != pair[1]).then_some(letters)
    }

    /// Stickers of a kind in the order in which the solver prefers them where there is a choice.
    pub fn preference(&self, orbit: Orbit) -> [Sticker; 24] {
        let kind = self.kind(orbit);
        let by_letter = kind.letters.order();
        match &kind.breaks {
            BreakChoice::First | BreakChoice::Least | BreakChoice::Fewest => by_letter,
            BreakChoice::Preference(list) => first_of_all(list, by_letter),
        }
    }

    /// Where cycles of a kind are broken into. `costs` gives the number of set-up moves of each target, for
    /// [`BreakChoice::Fewest`].
    pub fn breaks(&self, orbit: Orbit, costs: Option<[u32; 24]>) -> Breaks {
        let cost = match self.kind(orbit).breaks {
            BreakChoice::Fewest => costs,
            BreakChoice::First | BreakChoice::Least | BreakChoice::Preference(_) => None,
        };
        Breaks { order: self.preference(orbit), cost }
    }
}

/// Some stickers first, the others after them as they were.
pub(crate) fn first_of_all(first: &[Sticker], order: [Sticker; 24]) -> [Sticker; 24] {
    let mut new = order;
    let rest = order.into_iter().filter(|sticker| !first.contains(sticker));
    for (slot, sticker) in new.iter_mut().zip(first.iter().copied().chain(rest)) {
        *slot = sticker;
    }
    new
}
