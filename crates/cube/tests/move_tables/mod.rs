//! The turn tables of this crate as permutations of facelets, for other programs to check.

use cube::{Algorithm, Face, Facelets, Size, State};

/// The names of the quarter turns of a size, in the order of `reference/generators.txt`.
fn quarter_turns(size: Size) -> Vec<String> {
    let faces = || Face::ALL.into_iter().map(Face::letter);
    let mut names: Vec<String> = faces().map(String::from).collect();
    for depth in 2..size.layers() {
        let number = if depth > 2 { depth.to_string() } else { String::new() };
        names.extend(faces().map(|face| format!("{number}{face}w")));
    }
    for first in 2..size.layers() {
        for last in first..size.layers() {
            let layers = if first == last { first.to_string() } else { format!("{first}-{last}") };
            names.extend(faces().map(|face| format!("{layers}{face}")));
        }
    }
    if size == Size::THREE {
        names.extend(["M", "E", "S"].map(String::from));
    }
    names.extend(["x", "y", "z"].map(String::from));
    names
}

/// What tells one facelet of a size from all others: where its sticker belongs, or which fixed centre it is.
#[derive(PartialEq, Clone, Copy)]
enum Label {
    Centre(Face),
    Sticker(cube::Orbit, cube::Sticker, bool),
}

/// For each facelet, in the order U L F R B D row by row, the facelet where its sticker goes.
fn images(size: Size, turn: &str) -> Vec<usize> {
    let turns = Algorithm::parse(turn, size).expect("a turn of this size").flatten();
    let state = State::solved(size).after(&turns);
    let back = state.core().inverse();
    let cells = Face::ALL.into_iter().flat_map(|face| {
        (0..size.layers()).flat_map(move |row| (0..size.layers()).map(move |column| (face, row, column)))
    });
    let (mut home, mut now) = (Vec::new(), Vec::new());
    for (face, row, column) in cells {
        if let Some((orbit, place, second)) = Facelets::place(size, face, row, column) {
            home.push(Label::Sticker(orbit, place, second));
            now.push(Label::Sticker(orbit, state.at(orbit, place), second));
        } else {
            home.push(Label::Centre(face));
            now.push(Label::Centre(back.image(face)));
        }
    }
    home.iter()
        .map(|label| now.iter().position(|other| other == label).expect("every sticker is somewhere"))
        .collect()
}

/// The text of `reference/ours/move_tables.txt`.
pub fn text() -> String {
    let mut lines = vec![
        "# Source: the tables of the crate cube, written by `cargo run -p cube --example move_tables`.".to_owned(),
        "# size<TAB>turn<TAB>for each facelet, in the order U L F R B D row by row, the facelet where its sticker goes"
            .to_owned(),
    ];
    for size in Size::ALL {
        for turn in quarter_turns(size) {
            let images: Vec<String> = images(size, &turn).iter().map(ToString::to_string).collect();
            lines.push(format!("{}\t{turn}\t{}", size.layers(), images.join(" ")));
        }
    }
    lines.join("\n") + "\n"
}
