//! A table to print with heads along both sides: a sheet of algorithms, first letters down, second letters across.

use crate::svg::{Caption, Ink, Markup, Num, Svg, Theme};
use maud::{DOCTYPE, PreEscaped, html};
use unicode_width::UnicodeWidthStr;

/// A head: large what one looks for, small what it is called.
pub type Head = (String, String);

/// The words on a grid.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct GridWords {
    /// The title.
    pub title: String,
    /// The language of its words, as a BCP 47 tag.
    pub language: String,
    /// What stands where both heads meet.
    pub corner: String,
    /// What stands above the lines below the grid.
    pub refused: String,
}

/// What stands in a cell, perhaps beside others.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct CellText {
    /// The text.
    pub text: String,
    /// Whether it does not belong there: it is marked, by a sign and not by its colour alone.
    pub refused: bool,
}

impl CellText {
    /// A text as it was written, or as much of it as a cell is for, on one line.
    pub fn new(written: &str, refused: bool) -> Self {
        let signs = written.chars().take(LONGEST).map(|sign| if sign.is_control() { ' ' } else { sign });
        let more = written.chars().nth(LONGEST).map(|_| '…');
        Self { text: signs.chain(more).collect(), refused }
    }

    fn shown(&self) -> String {
        if self.refused { format!("{REFUSED}{}", self.text) } else { self.text.clone() }
    }
}

/// The most signs of a cell: an algorithm of the most turns has fewer.
const LONGEST: usize = 2000;

/// What stands before a text that is refused.
const REFUSED: &str = "✗ ";

/// A grid of texts.
///
/// ```
/// use draw::{CellText, Grid, GridWords};
/// let head = |letter: &str, name: &str| (letter.to_owned(), name.to_owned());
/// let words = GridWords {
///     title: "Corners <UFR>".to_owned(),
///     language: "en".to_owned(),
///     corner: String::new(),
///     refused: "Not right".to_owned(),
/// };
/// let cell = |text: &str, refused| CellText { text: text.to_owned(), refused };
/// let grid = Grid {
///     words,
///     columns: vec![head("A", "UBL"), head("B", "UBR")],
///     rows: vec![(head("A", "UBL"), vec![None, Some(vec![cell("[U: [R U R', D]]", false), cell("R U", true)])])],
///     refused: vec!["AB: R U moves 11 pieces.".to_owned()],
/// };
/// assert!(grid.html().contains("Corners &lt;UFR&gt;"));
/// for text in ["[U: [R U R', D]]", "✗ R U", "Not right", "AB: R U moves 11 pieces."] {
///     assert!(grid.html().contains(text) && grid.svg().as_str().contains(text));
/// }
/// ```
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Grid {
    /// Its words.
    pub words: GridWords,
    /// Heads along the top.
    pub columns: Vec<Head>,
    /// Heads down the side, each with a cell a column: `None` where there can be nothing.
    pub rows: Vec<(Head, Vec<Option<Vec<CellText>>>)>,
    /// What is refused and why, a line each; below the grid.
    pub refused: Vec<String>,
}

const STYLE: &str = "@page{size:A3 landscape;margin:8mm}\
body{font:12px/1.35 system-ui,sans-serif;color:#1e1b22;background:#fff;margin:12px;\
-webkit-print-color-adjust:exact;print-color-adjust:exact}\
h1{font-size:1.4em;margin:0 0 .5em;border-bottom:3px solid #6a2a8c;padding-bottom:.2em}\
.wide{overflow-x:auto}table{border-collapse:collapse}th,td{border:1px solid #b9b4c0;padding:3px 5px;text-align:left;vertical-align:top}\
th{background:#f2edf6;white-space:nowrap}th b{font-size:1.25em}th small{font-weight:400;color:#6f6a75}\
thead th{position:sticky;top:0}td{font-family:ui-monospace,monospace;font-size:.92em;min-width:7em}\
td.none{background:#e6e3ea}tr{break-inside:avoid}td p{margin:0}td .refused{color:#8a1c1c;text-decoration:line-through}\
h2{font-size:1.1em;margin:1em 0 .3em}ul{margin:0;padding-left:1.2em}li{overflow-wrap:anywhere}\
@media print{.wide{overflow:visible}table{width:100%;table-layout:fixed}thead th{position:static}\
th,td{padding:1px 2px;white-space:normal;overflow-wrap:anywhere}td{min-width:0;font-size:8px;line-height:1.2}th small{display:block}}";

const LETTER: f64 = 6.2;
const LINE: f64 = 13.0;
const PADDING: f64 = 6.0;

impl Grid {
    /// A page to print, without scripts; it loads nothing.
    pub fn html(&self) -> String {
        html! {
            (DOCTYPE)
            html lang=(self.words.language) {
                head {
                    meta charset="utf-8";
                    meta name="viewport" content="width=device-width,initial-scale=1";
                    meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'";
                    title { (self.words.title) }
                    style { (PreEscaped(STYLE)) }
                }
                body {
                    h1 { (self.words.title) }
                    div.wide { table {
                        thead { tr {
                            th { (self.words.corner) }
                            @for (large, small) in &self.columns { th scope="col" { b { (large) } " " small { (small) } } }
                        } }
                        tbody {
                            @for ((large, small), cells) in &self.rows {
                                tr {
                                    th scope="row" { b { (large) } " " small { (small) } }
                                    @for cell in cells {
                                        @match cell {
                                            Some(entries) => td { @for entry in entries {
                                                p.refused[entry.refused] { (entry.shown()) }
                                            } },
                                            None => td.none {},
                                        }
                                    }
                                }
                            }
                        }
                    } }
                    @if !self.refused.is_empty() {
                        h2 { (self.words.refused) }
                        ul { @for line in &self.refused { li { (line) } } }
                    }
                }
            }
        }
        .into_string()
    }

    /// The grid as one picture, each column as wide as its widest cell, each row as high as its fullest.
    pub fn svg(&self) -> Svg {
        let ink = |ink| Theme::Light.ink(ink);
        let width = |text: &str| text.width() as f64 * LETTER + 10.0;
        let head = |(large, small): &Head| format!("{large} {small}");
        let side = self
            .rows
            .iter()
            .map(|(row, _)| width(&head(row)))
            .chain([width(&self.words.corner)])
            .fold(40.0, f64::max);
        let widths: Vec<f64> = self
            .columns
            .iter()
            .enumerate()
            .map(|(at, column)| {
                let cells = self.rows.iter().filter_map(|(_, cells)| cells.get(at)?.as_ref());
                cells.flatten().map(|entry| width(&entry.shown())).fold(width(&head(column)), f64::max)
            })
            .collect();
        // Where each row begins, and the last one ends.
        let mut tops = vec![34.0, 34.0 + PADDING + LINE];
        for (_, cells) in &self.rows {
            let lines = cells.iter().flatten().map(Vec::len).max().unwrap_or(0).max(1);
            tops.push(tops[tops.len() - 1] + PADDING + LINE * lines as f64);
        }
        let mut bottom = tops[tops.len() - 1];
        let whole = side + widths.iter().sum::<f64>();
        let below = if self.refused.is_empty() { &[][..] } else { std::slice::from_ref(&self.words.refused) };
        let below: Vec<&String> = below.iter().chain(&self.refused).collect();
        let widest = below.iter().map(|line| width(line)).fold(whole, f64::max);
        let caption = Caption::new(self.words.title.clone());
        let height = bottom + 8.0 + LINE * below.len() as f64;
        let mut markup = Markup::picture(&caption, [0.0, 0.0, widest + 16.0, height], 1.0);
        let start: (&'static str, &dyn std::fmt::Display) = ("text-anchor", &"start");
        markup.group(&[start, ("font-size", &16), ("font-weight", &700), ("fill", &ink(Ink::Strong))]);
        markup.tag("text").with("x", Num(8.0)).with("y", Num(22.0)).text(&self.words.title);
        markup.close();
        markup.group(&[
            start,
            ("font-size", &10),
            ("font-family", &"ui-monospace, monospace"),
            ("fill", &ink(Ink::Strong)),
        ]);
        let mut write = |x: f64, top: f64, text: &str, bold: bool| {
            let tag = markup.tag("text").with("x", Num(x + 5.0)).with("y", Num(top + LINE));
            tag.with_some("font-weight", bold.then_some(700)).text(text);
        };
        write(8.0, tops[0], &self.words.corner, false);
        let mut x = 8.0 + side;
        for (column, wide) in self.columns.iter().zip(&widths) {
            write(x, tops[0], &head(column), true);
            x += wide;
        }
        for ((row, cells), &top) in self.rows.iter().zip(&tops[1..]) {
            write(8.0, top, &head(row), true);
            let mut x = 8.0 + side;
            for (cell, wide) in cells.iter().zip(&widths) {
                match cell {
                    None => write(x, top, "·", false),
                    Some(entries) => {
                        for (line, entry) in entries.iter().enumerate() {
                            write(x, top + LINE * line as f64, &entry.shown(), false);
                        }
                    }
                }
                x += wide;
            }
        }
        for (line, text) in below.into_iter().enumerate() {
            write(8.0, bottom + 4.0, text, line == 0);
            bottom += LINE;
        }
        markup.close();
        markup.group(&[("stroke", &ink(Ink::Quiet)), ("stroke-opacity", &".5"), ("fill", &"none")]);
        for y in tops {
            let line = crate::svg::path(&[[8.0, y], [8.0 + whole, y]], false);
            markup.tag("path").with("d", line).empty();
        }
        markup.close();
        markup.finish()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_text_begins_and_ends_within_the_picture() {
        let head = |letter: &str| (letter.to_owned(), "UBL".to_owned());
        let cell = |texts: &[&str]| {
            Some(texts.iter().map(|text| CellText::new(text, text.len() > 5)).collect::<Vec<_>>())
        };
        let words = GridWords {
            title: "Three-cycles".to_owned(),
            language: "en".to_owned(),
            corner: "first and second".to_owned(),
            refused: "Not right".to_owned(),
        };
        let grid = Grid {
            words,
            columns: vec![head("A"), head("B")],
            rows: vec![(head("A"), vec![None, cell(&["R U", "R U R' U' R2"])]), (head("B"), vec![cell(&[]), None])],
            refused: vec!["A long sentence that is wider than the whole of the grid, and says why something is not right".to_owned()],
        };
        let svg = grid.svg();
        let document = roxmltree::Document::parse(svg.as_str()).unwrap();
        let picture = document.root_element();
        let sides: Vec<f64> =
            picture.attribute("viewBox").unwrap().split(' ').map(|side| side.parse().unwrap()).collect();
        let mut count = 0;
        for text in document.descendants().filter(|node| node.has_tag_name("text")) {
            count += 1;
            let inherited =
                |name: &str| text.ancestors().find_map(|node| node.attribute(name)).unwrap_or_default();
            assert_eq!(inherited("text-anchor"), "start");
            let at = |name: &str| text.attribute(name).unwrap().parse::<f64>().unwrap();
            let size: f64 = inherited("font-size").parse().unwrap();
            // Signs of a monospaced type are six tenths of its size wide; from memory.
            let end = at("x") + 0.6 * size * text.text().unwrap_or_default().width() as f64;
            assert!(at("x") >= sides[0] && end <= sides[0] + sides[2], "{:?} ends at {end}", text.text());
            assert!(at("y") >= sides[1] && at("y") <= sides[1] + sides[3], "{:?}", text.text());
        }
        assert_eq!(count, 1 + 1 + 2 + 2 + 2 + 2 + 2);
    }
}
