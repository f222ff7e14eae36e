//! How a thread is painted, in any theme.

use super::Bead;
use super::lay::{Eye, Laid, Placed, TAG};
use super::shape::{Knot, back, eye, filled, loose, notches, sagging};
use crate::dress::{Part, wear};
use crate::glow::Glow;
use crate::svg::{Markup, Num, Theme, path};

/// Paints threads.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Painter {
    pub theme: Theme,
    /// Which part of the memo it is, for pages that ask which bead was touched.
    pub part: usize,
}

impl Painter {
    /// A whole thread with its head.
    pub fn thread(self, markup: &mut Markup, laid: &Laid<'_>) {
        self.cradles(markup, laid);
        self.line(markup, laid);
        self.end(markup, laid);
        for (number, bead) in laid.beads.iter().enumerate() {
            self.bead(markup, number, bead, laid.room.radius);
        }
        self.head(markup, laid);
    }

    fn stroke(self, markup: &mut Markup, part: Part, d: String) {
        if !d.is_empty() {
            wear(self.theme, markup.tag("path"), part).with("d", d).empty();
        }
    }

    fn cradles(self, markup: &mut Markup, laid: &Laid<'_>) {
        if !laid.room.paired {
            return;
        }
        let mut d = String::new();
        for &[first, last] in &laid.cradles {
            let ([a, b], half) = (laid.beads[first].at, laid.beads[first].half);
            let ([c, _], end) = (laid.beads[last].at, laid.beads[last].half);
            let radius = laid.room.radius;
            // A cradle round one bead still has a length, or nothing would be drawn.
            d +=
                &path(&[[a - half + radius, b], [(c + end - radius).max(a - half + radius + 0.1), b]], false);
        }
        if !d.is_empty() {
            let broad = Num(2.0 * laid.room.radius + 9.0);
            wear(self.theme, markup.tag("path"), Part::Cradle)
                .with("stroke-width", broad)
                .with("d", d)
                .empty();
        }
    }

    /// The thread from the tag through all beads, with its knots and loops.
    fn line(self, markup: &mut Markup, laid: &Laid<'_>) {
        let Some(first) = laid.beads.first() else { return };
        let radius = laid.room.radius;
        let left = laid.room.left;
        let level = laid.level(0);
        let mut d = String::new();
        let mut returns = String::new();
        let mut knots = Vec::new();
        let mut end = [left, level];
        if laid.head.tag[2] > 0.0 {
            // Out of the tag, downward.
            let x = left + radius;
            d += &path(&[[x, laid.head.tag[1] + TAG / 2.0], [x, level]], false);
            end = [x, level];
        } else if first.knot.is_none() {
            end = [first.at[0] - first.half, level];
        }
        let mut row = 0;
        let mut inside_eye = false;
        for (number, bead) in laid.beads.iter().enumerate() {
            let [x, y] = bead.at;
            if bead.row != row {
                let margin = left - super::lay::MARGIN * radius;
                let ends = (end[0] + 0.9 * radius).min(laid.room.right - 2.0).max(end[0]);
                returns += &back(end, ends, margin, left + 4.0, y);
                end = [left + 2.0, y];
                row = bead.row;
            }
            let mut from = end[0];
            if let Some(middle) = bead.knot {
                let half = Knot::half(radius);
                d += &path(&[[from, y], [middle - half, y]], false);
                d += &path(&[[middle + half, y], [x, y]], false);
                let knot = Knot::new(middle, y, radius);
                knots.push((Part::Thread, knot.ends(y) + &knot.whole()));
                for [casing, over] in knot.bridges() {
                    knots.extend([(Part::Casing, casing), (Part::Thread, over)]);
                }
                from = middle + half;
            }
            match (bead.eye, laid.beads.get(number + 1)) {
                (Eye::First, Some(mate)) if mate.row == bead.row => {
                    d += &path(&[[from, y], [x, y]], false);
                    d += &eye(bead.at, mate.at, radius);
                    inside_eye = true;
                }
                _ if inside_eye => inside_eye = false,
                _ if bead.knot.is_some() => {}
                _ if x - bead.half - from > 0.5 * radius => {
                    d += &sagging(from, x - bead.half, y, 0.34 * radius);
                }
                _ => d += &path(&[[from, y], [x, y]], false),
            }
            end = [x + bead.half, y];
        }
        self.stroke(markup, Part::Far, returns);
        self.stroke(markup, Part::Thread, d);
        for (part, piece) in knots {
            self.stroke(markup, part, piece);
        }
    }

    /// The loose end of parity, or the thread tied off.
    fn end(self, markup: &mut Markup, laid: &Laid<'_>) {
        let radius = laid.room.radius;
        let Some(last) = laid.beads.last() else { return };
        let [x, y] = [last.at[0] + last.half, last.at[1]];
        if laid.strand.loose_end {
            let (bend, strands) = loose(x, y, radius);
            self.stroke(markup, Part::Thread, bend);
            self.stroke(markup, Part::Fray, strands);
        } else {
            let end = x + 0.7 * radius;
            self.stroke(markup, Part::Thread, path(&[[x, y], [end, y]], false));
            wear(self.theme, markup.tag("circle"), Part::Crimp)
                .with("cx", Num(end))
                .with("cy", Num(y))
                .with("r", Num(0.16 * radius + 1.5))
                .empty();
        }
    }

    fn bead(self, markup: &mut Markup, number: usize, placed: &Placed<'_>, radius: f64) {
        let Placed { bead, at: [x, y], half, size, .. } = *placed;
        let on_page = self.theme == Theme::Velvet;
        let group =
            markup.tag("g").with_some("data-bead", on_page.then(|| format!("{}:{number}", self.part)));
        wear(self.theme, group, Part::Bead(bead.glow, bead.wrong)).open();
        let wider = half - radius;
        if bead.glow == Glow::Now {
            shape(self.theme, markup, [x, y], [radius + 4.5, wider], Part::Halo);
        }
        shape(self.theme, markup, [x, y], [radius, wider], Part::Round(bead.glow, bead.wrong));
        self.level(markup, [x, y], [radius, wider], bead);
        wear(self.theme, markup.tag("text"), Part::Letter(bead.glow, bead.wrong))
            .with("x", Num(x))
            .with("y", Num(y + 0.36 * size))
            .with("font-size", Num(size))
            .text(&bead.letter);
        if bead.wrong {
            self.stroke(markup, Part::Crack, notches([x, y], radius));
        }
        markup.close();
    }

    fn level(self, markup: &mut Markup, at: [f64; 2], [radius, wider]: [f64; 2], bead: &Bead) {
        let Some(sure) = bead.sure.filter(|_| bead.glow == Glow::Known) else { return };
        if let Some(d) = filled(at, radius - 1.25, wider, sure) {
            self.stroke(markup, Part::Sure, d);
        }
    }

    /// The tag with the buffer, the name and the note.
    pub fn head(self, markup: &mut Markup, laid: &Laid<'_>) {
        let [x, y, broad] = laid.head.tag;
        let strand = laid.strand;
        let on_page = self.theme == Theme::Velvet;
        let closed = laid.beads.is_empty() && broad == 0.0;
        markup
            .tag("g")
            .with_some("data-part", on_page.then_some(self.part))
            .with_some("class", (on_page && closed).then_some("closed"))
            .open();
        if broad > 0.0 {
            wear(self.theme, markup.tag("rect"), Part::Tag)
                .with("x", Num(x))
                .with("y", Num(y - TAG / 2.0))
                .with("width", Num(broad))
                .with("height", Num(TAG))
                .with("rx", 5)
                .empty();
            wear(self.theme, markup.tag("text"), Part::TagLetter)
                .with("x", Num(x + broad / 2.0))
                .with("y", Num(y + 5.2))
                .text(&strand.from);
        }
        let [x, y] = laid.head.words;
        if !(strand.name.is_empty() && strand.note.is_empty()) {
            wear(self.theme, markup.tag("text"), Part::Name).with("x", Num(x)).with("y", Num(y)).open();
            markup.words(&strand.name);
            if !strand.note.is_empty() {
                let apart = if strand.name.is_empty() { 0 } else { 8 };
                wear(self.theme, markup.tag("tspan"), Part::Note).with("dx", apart).text(&strand.note);
            }
            markup.close();
        }
        markup.close();
    }
}

/// A bead's outline: round, or longer than it is high.
fn shape(theme: Theme, markup: &mut Markup, [x, y]: [f64; 2], [radius, wider]: [f64; 2], part: Part) {
    if wider > 0.01 {
        wear(theme, markup.tag("rect"), part)
            .with("x", Num(x - radius - wider))
            .with("y", Num(y - radius))
            .with("width", Num(2.0 * (radius + wider)))
            .with("height", Num(2.0 * radius))
            .with("rx", Num(radius))
            .empty();
    } else {
        wear(theme, markup.tag("circle"), part)
            .with("cx", Num(x))
            .with("cy", Num(y))
            .with("r", Num(radius))
            .empty();
    }
}
