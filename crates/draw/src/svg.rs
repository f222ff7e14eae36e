//! SVG text: elements, escaping, numbers, and the inks of light and dark pages.

use maud::{Escaper, PreEscaped, Render};
use std::fmt::{self, Display, Write as _};
use unicode_width::UnicodeWidthChar;

/// Type for words: whatever the reader's system uses.
const SANS: &str = "system-ui,sans-serif";
/// Type for moves and letters of pieces.
pub(crate) const MONO: &str = "ui-monospace,monospace";

/// How broad a text is, in Latin letters: signs of some scripts are broader, signs that join others have no breadth. At least 1.
pub(crate) fn breadth(text: &str) -> f64 {
    let of = |sign: char| match sign.width() {
        None | Some(0) => 0.0,
        Some(1) => 1.0,
        Some(_) => 1.6,
    };
    text.chars().map(of).sum::<f64>().max(1.0)
}

/// A finished picture: well-formed SVG with a title, ready to stand in a file or in a page.
///
/// It is made by this crate only, so whatever holds one may put it into a page as it is.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Svg(String);

impl Svg {
    /// The markup, from `<svg` to `</svg>`.
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// The markup, taken out.
    pub fn into_string(self) -> String {
        self.0
    }

    /// As a file of its own, with the XML declaration.
    pub fn to_file(&self) -> String {
        format!("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n{}\n", self.0)
    }
}

impl Display for Svg {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl Render for Svg {
    fn render(&self) -> PreEscaped<String> {
        PreEscaped(self.0.clone())
    }
}

/// What is said of a picture to those who cannot see it.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Caption {
    /// Its name, one line.
    pub title: String,
    /// What it shows, in sentences; may be empty.
    pub description: String,
}

impl Caption {
    /// A title without a description.
    pub fn new(title: impl Into<String>) -> Self {
        Self { title: title.into(), description: String::new() }
    }

    /// With a description.
    #[must_use]
    pub fn describing(mut self, description: impl Into<String>) -> Self {
        self.description = description.into();
        self
    }
}

/// The inks a picture is drawn with, apart from the colours of stickers.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, Default)]
pub enum Theme {
    /// Dark on light; for files and paper.
    #[default]
    Light,
    /// Light on dark.
    Dark,
    /// Whatever the page around it sets as `--draw-ink`, `--draw-paper`, `--draw-quiet`, `--draw-thread`,
    /// `--draw-wrong` and `--draw-body`; light where it sets nothing. For pictures that stand inside a page.
    Page,
    /// On the velvet of the bench: shapes have classes, and the page has the rules for them.
    Velvet,
}

/// What an ink is for.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Ink {
    /// Words and outlines.
    Strong,
    /// The ground.
    Paper,
    /// Axes, bodies of mirrors, whatever should stay back.
    Quiet,
    /// The thread, and arrows.
    Thread,
    /// What went wrong.
    Wrong,
    /// What stickers are on.
    Body,
    /// Stickers that nobody is to look at.
    Back,
    /// What a pair of beads lies in.
    Cradle,
}

impl Theme {
    pub(crate) const fn ink(self, ink: Ink) -> &'static str {
        match (self, ink) {
            (Self::Light, Ink::Strong) => "#1e1b22",
            (Self::Light, Ink::Paper) => "#fff",
            (Self::Light, Ink::Quiet) => "#6f6a75",
            (Self::Light, Ink::Cradle) => "#f3e6ef",
            (Self::Light, Ink::Thread) => "#93206f",
            (Self::Light, Ink::Wrong) => "#a3123a",
            (Self::Light, Ink::Body) => "#2b2730",
            (Self::Light, Ink::Back) => "#a5a1ab",
            (Self::Dark, Ink::Strong) => "#f3f0f6",
            (Self::Dark, Ink::Paper) => "#17151a",
            (Self::Dark, Ink::Quiet) => "#a29ca9",
            (Self::Dark, Ink::Cradle) => "#3d2036",
            (Self::Dark, Ink::Thread) => "#f49ad3",
            (Self::Dark, Ink::Wrong) => "#ff8fa8",
            (Self::Dark, Ink::Body) => "#4b4654",
            (Self::Dark, Ink::Back) => "#7d7885",
            (Self::Page | Self::Velvet, Ink::Strong) => "var(--draw-ink,#1e1b22)",
            (Self::Page | Self::Velvet, Ink::Paper) => "var(--draw-paper,#fff)",
            (Self::Page | Self::Velvet, Ink::Quiet) => "var(--draw-quiet,#6f6a75)",
            (Self::Page | Self::Velvet, Ink::Cradle) => "var(--draw-cradle,#f3e6ef)",
            (Self::Page | Self::Velvet, Ink::Thread) => "var(--draw-thread,#93206f)",
            (Self::Page | Self::Velvet, Ink::Wrong) => "var(--draw-wrong,#a3123a)",
            (Self::Page | Self::Velvet, Ink::Body) => "var(--draw-body,#2b2730)",
            (Self::Page | Self::Velvet, Ink::Back) => "var(--draw-back,#a5a1ab)",
        }
    }
}

/// A number with at most two decimals and nothing that is not needed.
#[derive(Clone, Copy)]
pub(crate) struct Num(pub f64);

impl Display for Num {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let hundredths = libm::round(self.0 * 100.0) as i64;
        let whole = hundredths / 100;
        let rest = (hundredths % 100).abs();
        if hundredths < 0 {
            f.write_str("-")?;
        }
        if rest == 0 || whole != 0 {
            write!(f, "{}", whole.abs())?;
        }
        match (rest, rest % 10) {
            (0, _) => Ok(()),
            (_, 0) => write!(f, ".{}", rest / 10),
            _ => write!(f, ".{rest:02}"),
        }
    }
}

/// A path from points, closed or open.
pub(crate) fn path(points: &[[f64; 2]], closed: bool) -> String {
    let mut d = String::new();
    for (i, [x, y]) in points.iter().enumerate() {
        d.push(if i == 0 { 'M' } else { 'L' });
        pair(&mut d, *x, *y);
    }
    if closed {
        d.push('Z');
    }
    d
}

/// Two numbers, with a space only where the second has no sign.
pub(crate) fn pair(out: &mut String, x: f64, y: f64) {
    let second = Num(y).to_string();
    let gap = if second.starts_with('-') { "" } else { " " };
    push(out, format_args!("{}{gap}{second}", Num(x)));
}

fn push(out: &mut String, arguments: fmt::Arguments<'_>) {
    // A string takes whatever is written to it.
    let _ = out.write_fmt(arguments);
}

/// Markup as it grows. Elements that were opened are closed in turn, so it is well-formed whatever happens.
pub(crate) struct Markup {
    out: String,
    open: Vec<&'static str>,
}

impl Markup {
    pub fn new() -> Self {
        Self { out: String::new(), open: Vec::new() }
    }

    /// The root element of a picture: the part of the plane that it shows, in units of `scale` pixels.
    pub fn picture(caption: &Caption, [x, y, width, height]: [f64; 4], scale: f64) -> Self {
        let mut markup = Self::new();
        markup
            .tag("svg")
            .with("xmlns", "http://www.w3.org/2000/svg")
            .with("role", "img")
            .with("viewBox", format_args!("{} {} {} {}", Num(x), Num(y), Num(width), Num(height)))
            .with("width", Num(width * scale))
            .with("height", Num(height * scale))
            .with("font-family", SANS)
            .with("text-anchor", "middle")
            .open();
        markup.caption(caption);
        markup
    }

    pub fn caption(&mut self, caption: &Caption) {
        if !caption.title.is_empty() {
            self.tag("title").text(&caption.title);
        }
        if !caption.description.is_empty() {
            self.tag("desc").text(&caption.description);
        }
    }

    /// Begins an element.
    pub fn tag(&mut self, name: &'static str) -> Tag<'_> {
        self.out.push('<');
        self.out.push_str(name);
        Tag { markup: self, name }
    }

    /// A group with the given attributes.
    pub fn group(&mut self, attributes: &[(&'static str, &dyn Display)]) {
        let mut tag = self.tag("g");
        for (key, value) in attributes {
            tag = tag.with(key, value);
        }
        tag.open();
    }

    /// Text inside the element opened last; it is escaped.
    pub fn words(&mut self, text: &str) {
        self.escaped(format_args!("{text}"));
    }

    /// Closes the element opened last.
    pub fn close(&mut self) {
        if let Some(name) = self.open.pop() {
            push(&mut self.out, format_args!("</{name}>"));
        }
    }

    /// Puts a finished picture at a place, in the given size.
    pub fn embed(&mut self, picture: &Svg, [x, y, width, height]: [f64; 4]) {
        // The embedded root keeps its own view box; its size is replaced by that of its frame.
        let Some((head, body)) = picture.0.split_once('>') else { return };
        let view_box =
            head.split("viewBox=\"").nth(1).and_then(|rest| rest.split('"').next()).unwrap_or("0 0 1 1");
        self.tag("svg")
            .with("role", "img")
            .with("viewBox", view_box)
            .with("x", Num(x))
            .with("y", Num(y))
            .with("width", Num(width))
            .with("height", Num(height))
            .open();
        self.out.push_str(body.strip_suffix("</svg>").unwrap_or(body));
        self.close();
    }

    pub fn finish(mut self) -> Svg {
        while !self.open.is_empty() {
            self.close();
        }
        Svg(self.out)
    }

    fn escaped(&mut self, arguments: fmt::Arguments<'_>) {
        let _ = Allowed(Escaper::new(&mut self.out)).write_fmt(arguments);
    }
}

/// Leaves out the characters that XML 1.0 cannot hold in any form (production 2, Char).
struct Allowed<'a>(Escaper<'a>);

impl fmt::Write for Allowed<'_> {
    fn write_str(&mut self, text: &str) -> fmt::Result {
        let allowed = |c: char| matches!(c, '\t' | '\n' | '\r' | ' '..='\u{d7ff}' | '\u{e000}'..='\u{fffd}' | '\u{10000}'..);
        text.split(|c| !allowed(c)).try_for_each(|part| self.0.write_str(part))
    }
}

/// An element that is being written.
pub(crate) struct Tag<'a> {
    markup: &'a mut Markup,
    name: &'static str,
}

impl Tag<'_> {
    /// Adds an attribute; its value is escaped.
    pub fn with(self, key: &str, value: impl Display) -> Self {
        push(&mut self.markup.out, format_args!(" {key}=\""));
        self.markup.escaped(format_args!("{value}"));
        self.markup.out.push('"');
        self
    }

    /// Adds an attribute if there is a value.
    pub fn with_some(self, key: &str, value: Option<impl Display>) -> Self {
        match value {
            Some(value) => self.with(key, value),
            None => self,
        }
    }

    /// Ends it without content.
    pub fn empty(self) {
        self.markup.out.push_str("/>");
    }

    /// Ends it with text, which is escaped.
    pub fn text(self, text: &str) {
        let Self { markup, name } = self;
        markup.out.push('>');
        markup.escaped(format_args!("{text}"));
        push(&mut markup.out, format_args!("</{name}>"));
    }

    /// Leaves it open for what is inside.
    pub fn open(self) {
        self.markup.out.push('>');
        self.markup.open.push(self.name);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn numbers_are_short() {
        let cases = [
            (0.0, "0"),
            (-0.001, "0"),
            (0.5, ".5"),
            (-0.5, "-.5"),
            (-1.25, "-1.25"),
            (3.0, "3"),
            (10.05, "10.05"),
            (2.999, "3"),
        ];
        for (number, text) in cases {
            assert_eq!(Num(number).to_string(), text);
        }
    }

    proptest! {
        #[test]
        fn any_text_is_well_formed_and_comes_back(title in "\\PC*", odd in any::<String>()) {
            let caption = Caption::new(title.clone()).describing(odd.clone());
            let mut markup = Markup::picture(&caption, [0.0, 0.0, 1.0, 1.0], 1.0);
            markup.tag("text").with("data-odd", &odd).text(&odd);
            let svg = markup.finish();
            let tree = roxmltree::Document::parse(svg.as_str()).unwrap();
            let first = tree.root_element().first_element_child();
            if !title.is_empty() {
                prop_assert_eq!(first.and_then(|node| node.text()), Some(title.as_str()));
            }
        }
    }
}
