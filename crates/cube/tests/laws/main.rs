//! What holds for cubes of every size: algebra, notation, names, colours.

mod algebra;
mod colours;
mod names;
mod notation;
mod strategies;
