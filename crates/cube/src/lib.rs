//! Cubes of sizes 2 to 7: stickers, pieces, moves, notation, states and rotations.
//!
//! Every kind of movable piece has exactly 24 stickers that turns carry into one another, an [`Orbit`].
//! So a [`State`] is a handful of permutations of 24, a [`Turn`] is a table of such permutations, and all
//! that is built on top is written once over an orbit and serves every size.
//!
//! ```
//! use cube::{Algorithm, Orbit, Size, State};
//!
//! let size = Size::new(3).unwrap();
//! let sequence = Algorithm::parse("R U R' U'", size).unwrap();
//! let state = State::solved(size).after(&sequence.flatten());
//! assert!(!state.is_solved());
//! // Six times the same commutator brings everything home (common practice, no source).
//! let six = Algorithm::parse("([R, U])6", size).unwrap();
//! assert!(State::solved(size).after(&six.flatten()).is_solved());
//! let buffer = Orbit::Corner.sticker("UFR").unwrap();
//! assert_eq!(Orbit::Corner.name(buffer), "UFR");
//! ```
//!
//! Coordinates used by the geometry: x points to R, y to U, z to F.

mod arrangement;
mod block;
mod element;
mod face;
mod facelets;
mod fault;
mod fingerprint;
mod geometry;
mod layout;
mod metric;
mod notation;
mod orbit;
mod orbit_map;
mod perm;
mod proof;
mod reachable;
mod rotation;
mod signs;
mod simplify;
mod size;
mod state;
mod turn;

pub use arrangement::{Arrangement, Corners, Midges};
pub use block::{Block, Lack, Slice};
pub use element::{ELEMENT_KEY_BITS, Element, ElementKey, Group, Left, Right};
pub use face::{Axis, Face};
pub use facelets::{FaceletError, Facelets};
pub use fault::{Fault, Physical, Unreachable};
pub use fingerprint::Fingerprint;
pub use metric::{Count, Metric, count};
pub use notation::{
    Algorithm, Expected, Form, LowerCase, MAX_DEPTH, MAX_MOVES, MAX_TEXT, Node, ParseError, ParseErrorKind,
    display_turns,
};
pub use orbit::{Hand, Layer, Orbit, Piece, Sticker};
pub use orbit_map::OrbitMap;
pub use perm::Perm;
pub use proof::{Claim, NotProven};
pub use rotation::Rotation;
pub use signs::{is_prime, plain_sign};
pub use simplify::{inverted, mirrored, rotated, simplified, without_rotations};
pub use size::Size;
pub use state::State;
pub use turn::{Amount, Motion, NoSuchTurn, Turn};
