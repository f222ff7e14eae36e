//! What the searches for solutions of a state share: positions as numbers, tables of distances, which turn may follow which.

pub mod distances;
pub mod kept;
pub mod merging;
pub mod rank;
pub mod subsets;
pub mod succession;
pub mod work;
