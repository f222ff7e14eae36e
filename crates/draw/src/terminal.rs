//! The same pictures as text for a terminal.

use crate::glow::Glow;
use crate::net::{cells, seat};
use crate::palette::Palette;
use crate::picture::Picture;
use crate::place::{Mark, Place};
use crate::thread::{Bead, Item, Strand, Thread};
use cube::{Face, Facelets, Rotation};
use std::fmt::Write as _;
use unicode_width::UnicodeWidthStr;

/// Whether a terminal may be sent colours. The caller knows where the text goes and what its reader asked for.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Tone {
    /// 24-bit colours by escape sequences (ISO/IEC 8613-6, SGR 38 and 48).
    Colour,
    /// Letters only.
    Plain,
}

/// From this size on stickers stand closer, so that a net keeps within a usual terminal.
const CLOSER_FROM: usize = 5;

impl Picture {
    /// The net as lines of text, held another way.
    ///
    /// In colour each sticker shows its label; in plain text the letter of its colour, then its label. A marked
    /// sticker stands in brackets: `[ ]` looked at, `{ }` buffer, `< >` target, `! !` wrong. The steps of the chain
    /// are listed below.
    ///
    /// ```
    /// use cube::{Rotation, Size, State};
    /// use draw::{Picture, Tone};
    /// let text = Picture::new(State::solved(Size::TWO).facelets(), "").terminal(Rotation::NONE, Tone::Plain);
    /// assert_eq!(text.lines().count(), 6);
    /// assert!(text.contains('W') && !text.contains('\u{1b}'));
    /// ```
    pub fn terminal(&self, hold: Rotation, tone: Tone) -> String {
        let size = self.facelets.size();
        let n = usize::from(size.layers());
        let cells = cells(size, hold);
        let sign = usize::from(tone == Tone::Plain || self.colour_letters);
        let inside = (sign + self.labels.widest(size)).max(2);
        // Marks need a column before the sticker.
        let lead = usize::from(n < CLOSER_FROM || !self.marks.is_empty());
        let mut out = String::new();
        for line in 0..3 * n {
            let mut row = String::new();
            for column in 0..4 {
                let face = Face::ALL.into_iter().find(|&face| {
                    let (seat_column, seat_row) = seat(face);
                    (usize::from(seat_column), usize::from(seat_row)) == (column, line / n)
                });
                if column > 0 {
                    row.push(' ');
                }
                match face {
                    None => row.push_str(&" ".repeat((lead + inside + 1) * n)),
                    Some(face) => {
                        let first = (face.index() * n + line % n) * n;
                        for &(_, cell) in cells.iter().skip(first).take(n) {
                            row.push_str(&self.cell(cell, tone, lead, inside));
                        }
                    }
                }
            }
            out.push_str(row.trim_end());
            out.push('\n');
        }
        for (number, from, to) in self.chain.steps() {
            let _ = writeln!(out, "{number}. {} → {}", self.called(from), self.called(to));
        }
        out
    }

    /// A place with its label, if it has one.
    fn called(&self, place: Place) -> String {
        match self.labels.at(place) {
            "" => place.name().to_owned(),
            label => format!("{} ({label})", place.name()),
        }
    }

    fn cell(&self, (face, row, column): (Face, u8, u8), tone: Tone, lead: usize, inside: usize) -> String {
        let place = Facelets::place(self.facelets.size(), face, row, column)
            .filter(|&(_, _, back)| !back)
            .map(|(orbit, sticker, _)| Place::new(orbit, sticker));
        let label = place.map_or("", |place| self.labels.at(place));
        let colour = self.facelets.get(face, row, column).unwrap_or(face);
        let mark = self.marks.iter().rev().find(|(at, _)| Some(*at) == place).map(|(_, mark)| *mark);
        let (before, after) = match mark {
            Some(Mark::Look) => ("[", "]"),
            Some(Mark::Buffer) => ("{", "}"),
            Some(Mark::Target) => ("<", ">"),
            Some(Mark::Wrong) => ("!", "!"),
            None => (" ", " "),
        };
        let shade = &self.palette[colour];
        let letter = shade.letter.to_string();
        let shown = match tone {
            Tone::Colour if self.colour_letters => format!("{label}{}", letter.to_lowercase()),
            Tone::Colour => label.to_owned(),
            Tone::Plain => format!("{letter}{label}"),
        };
        let (before, inside) = (&before[..lead], fitted(&shown, inside));
        match tone {
            Tone::Plain => format!("{before}{inside}{after}"),
            Tone::Colour => {
                let (ground, ink) = (shade.colour, shade.colour.label());
                format!(
                    "\u{1b}[48;2;{};{};{}m\u{1b}[38;2;{};{};{}m{before}{inside}{after}\u{1b}[0m",
                    ground.red, ground.green, ground.blue, ink.red, ink.green, ink.blue
                )
            }
        }
    }
}

/// A text in so many columns, cut or filled up; control characters are left out.
fn fitted(text: &str, columns: usize) -> String {
    let mut out = String::new();
    let mut used = 0;
    for c in text.chars().filter(|c| !c.is_control()) {
        let width = unicode_width::UnicodeWidthChar::width(c).unwrap_or(0);
        if used + width > columns {
            break;
        }
        out.push(c);
        used += width;
    }
    out + &" ".repeat(columns - used)
}

impl Palette {
    /// One line that says which letter stands for which colour.
    pub fn legend(&self) -> String {
        Face::ALL.map(|face| format!("{} {}", self[face].letter, self[face].name)).join("  ")
    }
}

impl Thread {
    /// The thread as lines of text: beads in pairs `(A)(B)-`, a knot `><`, a loop
    /// `{(A)(B)}`, a loose end `~`, the end `|`. A wrong bead is `(A!)`, the one being done `(A*)`, one done `(A.)`.
    pub fn terminal(&self, columns: usize, tone: Tone) -> String {
        let mut out = String::new();
        for strand in &self.strands {
            if !strand.name.is_empty() {
                out.extend(strand.name.chars().filter(|c| !c.is_control()));
                out.push('\n');
            }
            let mut used = 0;
            for word in self.words(strand, tone) {
                if used > 0 && used + word.1 + 1 > columns.max(12) {
                    out.push_str("\n  ");
                    used = 2;
                }
                out.push_str(&word.0);
                used += word.1;
            }
            out.push('\n');
        }
        out
    }

    /// What cannot be broken, each with its columns.
    fn words(&self, strand: &Strand, tone: Tone) -> Vec<(String, usize)> {
        let from: String = strand.from.chars().filter(|c| !c.is_control()).collect();
        let start = if from.is_empty() { "-".to_owned() } else { format!("[{from}]-") };
        let width = start.width();
        let mut words = vec![(start, width)];
        let mut pair: Vec<(String, usize)> = Vec::new();
        let mut count = 0_usize;
        let join = |words: &mut Vec<(String, usize)>, pair: &mut Vec<(String, usize)>| {
            if !pair.is_empty() {
                let width = pair.iter().map(|part| part.1).sum::<usize>() + 1;
                words.push((pair.drain(..).map(|part| part.0).collect::<String>() + "-", width));
            }
        };
        for item in &strand.items {
            match item {
                Item::Bead(bead) => {
                    pair.push(shown(bead, tone));
                    count += 1;
                    if !self.paired || count.is_multiple_of(2) {
                        join(&mut words, &mut pair);
                    }
                }
                Item::Knot => {
                    join(&mut words, &mut pair);
                    words.push(("><-".to_owned(), 3));
                }
                Item::Loop(first, second) => {
                    join(&mut words, &mut pair);
                    let (first, second) = (shown(first, tone), shown(second, tone));
                    words.push((format!("{{{}{}}}-", first.0, second.0), first.1 + second.1 + 3));
                    count += 2;
                }
            }
        }
        join(&mut words, &mut pair);
        words.push((if strand.loose_end { "~" } else { "|" }.to_owned(), 1));
        words
    }
}

/// A bead: `(A)`, done `(A.)`, now `(A*)`, wrong `(A!)`.
fn shown(bead: &Bead, tone: Tone) -> (String, usize) {
    let letter: String = bead.letter.chars().filter(|c| !c.is_control()).collect();
    let sign = match (bead.wrong, bead.glow) {
        (true, _) => "!",
        (false, Glow::Now) => "*",
        (false, Glow::Done) => ".",
        (false, Glow::Known | Glow::Ahead) => "",
    };
    let text = format!("({letter}{sign})");
    let width = text.width();
    match tone {
        // Wrong in reverse, now in bold: the terminal's own inks, which its reader chose.
        Tone::Colour if bead.wrong => (format!("\u{1b}[7m{text}\u{1b}[0m"), width),
        Tone::Colour if bead.glow == Glow::Now => (format!("\u{1b}[1m{text}\u{1b}[0m"), width),
        _ => (text, width),
    }
}
