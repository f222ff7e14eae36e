//! Scrambles of some seeds as text, for another program to carry out.

use cube::{Size, display_turns};
use search::random::seeded;
use search::scramble::{Event, Scramble, scramble};
use std::fmt::Write;

/// How many scrambles of each event there are; the 4x4 takes long.
const fn each(size: Size) -> u64 {
    if size.layers() == 4 { 3 } else { 8 }
}

/// A scramble with what it was made from.
pub type Seeded = (Size, Event, u64, Scramble);

/// The scrambles.
pub fn all() -> impl Iterator<Item = Seeded> {
    let events = [Event::Sighted, Event::Blindfolded];
    let asked = Size::ALL.into_iter().flat_map(move |size| events.map(|event| (size, event)));
    asked.flat_map(|(size, event)| {
        (1..=each(size))
            .filter_map(move |seed| Some((size, event, seed, scramble(size, event, &mut seeded(seed)).ok()?)))
    })
}

/// A line for each.
pub fn text(scrambles: &[Seeded]) -> String {
    let mut text = String::from(
        "# Source: this project; the example seeded_scrambles of the crate search.\n# size<TAB>event<TAB>seed<TAB>moves\n",
    );
    for (size, event, seed, drawn) in scrambles {
        let event = match event {
            Event::Sighted => "sighted",
            Event::Blindfolded => "blindfolded",
        };
        let moves = display_turns(drawn.turns());
        // Writing to a string does not fail.
        let _ = writeln!(text, "{}\t{event}\t{seed}\t{moves}", size.layers());
    }
    text
}
