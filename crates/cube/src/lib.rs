//! Cubes of sizes 2 to 7: stickers, pieces, moves, notation, states and rotations.
