//! Writing conventions as a file that reads back the same.

use super::VERSION;
use crate::toml::{list, quoted};
use blind::{BreakChoice, COLOUR_NAMES, Conventions, OrbitOrder, kind_name};
use cube::{Face, Hand, Orbit};
use std::fmt::Write;

/// The whole conventions as a TOML file, every key written out.
///
/// ```
/// use blind::Conventions;
/// use formats::conventions::{read, write};
/// let conventions = Conventions::default();
/// assert_eq!(read(&write(&conventions)).unwrap(), conventions);
/// ```
pub fn write(conventions: &Conventions) -> String {
    let mut out = String::new();
    // Writing to a string cannot fail.
    let _ = write_to(conventions, &mut out);
    out
}

fn write_to(conventions: &Conventions, out: &mut String) -> std::fmt::Result {
    writeln!(out, "version = {VERSION}\n\n# Colours of the faces while a scramble is made.\n[colours]")?;
    for face in Face::ALL {
        let colour = conventions.colour(face);
        match colour.shade {
            None if COLOUR_NAMES.contains(&colour.name.as_str()) => {
                writeln!(out, "{face} = {}", quoted(&colour.name))?;
            }
            shade => {
                let [red, green, blue] = shade.unwrap_or_default();
                let name = quoted(&colour.name);
                writeln!(out, "{face} = {{ name = {name}, shade = \"#{red:02x}{green:02x}{blue:02x}\" }}")?;
            }
        }
    }
    writeln!(out, "\n# Colours up and in front while solving.\n[holding]")?;
    writeln!(out, "up = {}", quoted(&conventions.colour_held(Face::U).name))?;
    writeln!(out, "front = {}", quoted(&conventions.colour_held(Face::F).name))?;
    writeln!(
        out,
        "\n# Which of a wing's two stickers has its letter: the one \"left\" of the middle of its edge, seen with the edge on top, or \"right\".\n[named-by]"
    )?;
    for orbit in Orbit::ALL.into_iter().filter(|orbit| orbit.is_edge() && orbit.stickers_per_piece() == 1) {
        let hand = match conventions.kind(orbit).named_by {
            Hand::Left => "left",
            Hand::Right => "right",
        };
        writeln!(out, "{} = {}", kind_name(orbit), quoted(hand))?;
    }
    writeln!(
        out,
        "\n# Faces U L F R B D, on each clockwise from the upper left (edges: from the top).\n[letters]"
    )?;
    for orbit in Orbit::ALL {
        let kind = conventions.kind(orbit);
        let letters = kind.by_place(orbit, &kind.letters.all().collect::<Vec<_>>());
        let written = if kind.letters.are_single() { quoted(&letters.concat()) } else { list(letters) };
        writeln!(out, "{} = {written}", kind_name(orbit))?;
    }
    writeln!(out, "\n[buffer]")?;
    for orbit in Orbit::ALL {
        writeln!(out, "{} = {}", kind_name(orbit), quoted(orbit.name(conventions.kind(orbit).buffer)))?;
    }
    writeln!(out, "\n[method]")?;
    for orbit in Orbit::ALL {
        writeln!(out, "{} = {}", kind_name(orbit), quoted(conventions.kind(orbit).method.name()))?;
    }
    writeln!(out, "\n[algorithm]")?;
    for orbit in Orbit::ALL {
        if let Some(algorithm) = &conventions.kind(orbit).algorithm {
            writeln!(out, "{} = {}", kind_name(orbit), quoted(&algorithm.to_string()))?;
        }
    }
    writeln!(out, "parity = {}", quoted(&conventions.parity_algorithm.to_string()))?;
    writeln!(out, "\n# Sheets of three-cycles.\n[sheet]")?;
    for orbit in Orbit::ALL {
        let place = conventions.kind(orbit).sheet.as_deref().unwrap_or_default();
        writeln!(out, "{} = {}", kind_name(orbit), quoted(place))?;
    }
    writeln!(out, "\n# Your own times of turning, as `hoodwink algs fit --out` writes them.\n[ease]")?;
    writeln!(out, "costs = {}", quoted(conventions.ease.as_deref().unwrap_or_default()))?;
    writeln!(out, "\n# Turned pieces by an \"algorithm\" or by \"cycles\".\n[turned]")?;
    for orbit in Orbit::ALL.into_iter().filter(|orbit| orbit.stickers_per_piece() > 1) {
        writeln!(out, "{} = {}", kind_name(orbit), quoted(conventions.kind(orbit).turned.name()))?;
    }
    writeln!(
        out,
        "\n# Parity by an \"algorithm\", or by the \"exchange\" of two edges in the trace.\n[parity]"
    )?;
    writeln!(out, "by = {}", quoted(conventions.parity.name()))?;
    writeln!(
        out,
        "\n# Where a new cycle begins: \"first\", \"fewest\" set-up moves, \"least\" time, or a list of stickers.\n[breaks]"
    )?;
    for orbit in Orbit::ALL {
        let choice = match &conventions.kind(orbit).breaks {
            BreakChoice::First => quoted("first"),
            BreakChoice::Fewest => quoted("fewest"),
            BreakChoice::Least => quoted("least"),
            BreakChoice::Preference(stickers) => list(stickers.iter().map(|&sticker| orbit.name(sticker))),
        };
        writeln!(out, "{} = {choice}", kind_name(orbit))?;
    }
    writeln!(
        out,
        "\n# Lower-case letters in moves: \"wide\" (r is Rw), or on a 4x4 and bigger \"inner\" (r is 2R).\n[notation]"
    )?;
    writeln!(out, "lower-case = {}", quoted(conventions.lower_case.name()))?;
    let kinds = |order: &OrbitOrder| list(order.all().map(kind_name));
    writeln!(out, "\n[memo]\npairs = {}", conventions.pairs)?;
    writeln!(out, "order = {}", kinds(&conventions.memo_order))?;
    writeln!(out, "execution = {}", kinds(&conventions.execution_order))
}
