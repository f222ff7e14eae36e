//! All algorithms up to a length for a wanted effect on the whole puzzle, proven complete.
//!
//! An [`Effect`] says where every piece goes: a three-cycle and nothing else, say. A [`TurnSet`] says which turns
//! may be used and what each counts. A [`Finder`] holds every state that few turns can reach; a sequence
//! of `L` turns for an effect is then a meeting of two halves, and no meeting proves that there is none. Equal
//! tasks (turned, mirrored, undone) are searched once, and every algorithm is applied before it is handed out.
//!
//! ```
//! use cube::{Metric, Orbit, Size};
//! use search::cycle::{Effect, Finder, Limits, TurnSet};
//!
//! let size = Size::THREE;
//! let corner = |name| Orbit::Corner.sticker(name).unwrap();
//! let effect = Effect::three_cycle(size, Orbit::Corner, corner("UFR"), corner("UBR"), corner("RDF")).unwrap();
//! let turns = TurnSet::parse(size, "U R D", Metric::HalfTurn).unwrap();
//! let limits = Limits { max_length: 10, memory: 1 << 30 };
//! let finder = Finder::prepare(turns, limits, &mut |_| std::ops::ControlFlow::Continue(())).unwrap();
//! let found = finder.find_all(&[effect], 0).unwrap();
//! assert_eq!(found[0].shortest, Some(8));
//! assert_eq!(cube::display_turns(&found[0].algorithms[0]).to_string(), "R' D' R U R' D R U'");
//! ```
//!
//! The sizes are searched whose elements fit a key ([`cube::Group`]), 2 and 3. Three-cycles of wings and centres, of which bigger ones
//! have more, are searched by [`crate::rings`].

mod effect;
mod find;
mod symmetry;
mod table;
mod turns;

pub use effect::{Effect, EffectError, EffectKind};
pub use find::{AtLength, ByLength, FindError, Finder, Finding, Limits, Milestone};
pub use turns::{TurnSet, TurnSetError};
