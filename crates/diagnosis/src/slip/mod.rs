//! Slips: what can go wrong between a scramble and a solved puzzle, and how likely each kind of it is.

mod catalogue;
mod kind;
mod made;

pub use catalogue::{Alike, Catalogue, CatalogueError};
pub use kind::{SlipKind, Stage};
pub use made::{ActionStep, Change, Part, Slip};
