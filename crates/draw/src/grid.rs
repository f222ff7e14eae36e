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
}

/// A grid of texts.
///
/// ```
/// use draw::{Grid, GridWords};
/// let head = |letter: &str, name: &str| (letter.to_owned(), name.to_owned());
/// let words = GridWords { title: "Corners <UFR>".to_owned(), language: "en".to_owned(), corner: String::new() };
/// let grid = Grid {
///     words,
///     columns: vec![head("A", "UBL"), head("B", "UBR")],
///     rows: vec![(head("A", "UBL"), vec![None, Some("[U: [R U R', D]]".to_owned())])],
/// };
/// assert!(grid.html().contains("Corners &lt;UFR&gt;"));
/// assert!(grid.svg().as_str().contains("[U: [R U R', D]]"));
/// ```
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Grid {
    /// Its words.
    pub words: GridWords,
    /// Heads along the top.
    pub columns: Vec<Head>,
    /// Heads down the side, each with a cell a column: `None` where there can be nothing.
    pub rows: Vec<(Head, Vec<Option<String>>)>,
}

const STYLE: &str = "@page{size:A3 landscape;margin:8mm}\
body{font:12px/1.35 system-ui,sans-serif;color:#1e1b22;background:#fff;margin:12px;\
-webkit-print-color-adjust:exact;print-color-adjust:exact}\
h1{font-size:1.4em;margin:0 0 .5em;border-bottom:3px solid #6a2a8c;padding-bottom:.2em}\
.wide{overflow-x:auto}table{border-collapse:collapse}th,td{border:1px solid #b9b4c0;padding:3px 5px;text-align:left;vertical-align:top}\
th{background:#f2edf6;white-space:nowrap}th b{font-size:1.25em}th small{font-weight:400;color:#6f6a75}\
thead th{position:sticky;top:0}td{font-family:ui-monospace,monospace;font-size:.92em;min-width:7em}\
td.none{background:#e6e3ea}tr{break-inside:avoid}\
@media print{.wide{overflow:visible}table{width:100%;table-layout:fixed}thead th{position:static}\
th,td{padding:1px 2px;white-space:normal;overflow-wrap:anywhere}td{min-width:0;font-size:8px;line-height:1.2}th small{display:block}}";

const LETTER: f64 = 6.2;
const LINE: f64 = 13.0;

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
                                            Some(text) => td { (text) },
                                            None => td.none {},
                                        }
                                    }
                                }
                            }
                        }
                    } }
                }
            }
        }
        .into_string()
    }

    /// The grid as one picture, each column as wide as its widest cell.
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
                let cells = self.rows.iter().filter_map(|(_, cells)| cells.get(at)?.as_deref());
                cells.map(width).fold(width(&head(column)), f64::max)
            })
            .collect();
        let height = LINE + 6.0;
        let (top, whole) = (34.0, side + widths.iter().sum::<f64>());
        let caption = Caption::new(self.words.title.clone());
        let bottom = top + height * (self.rows.len() + 1) as f64;
        let mut markup = Markup::picture(&caption, [0.0, 0.0, whole + 16.0, bottom + 8.0], 1.0);
        markup.group(&[("font-size", &16), ("font-weight", &700), ("fill", &ink(Ink::Strong))]);
        markup.tag("text").with("x", Num(8.0)).with("y", Num(22.0)).text(&self.words.title);
        markup.close();
        markup.group(&[
            ("font-size", &10),
            ("font-family", &"ui-monospace, monospace"),
            ("fill", &ink(Ink::Strong)),
        ]);
        let mut write = |x: f64, row: usize, text: &str, bold: bool| {
            let y = top + height * row as f64 + LINE;
            let tag = markup.tag("text").with("x", Num(x + 5.0)).with("y", Num(y));
            tag.with_some("font-weight", bold.then_some(700)).text(text);
        };
        write(8.0, 0, &self.words.corner, false);
        let mut x = 8.0 + side;
        for (column, wide) in self.columns.iter().zip(&widths) {
            write(x, 0, &head(column), true);
            x += wide;
        }
        for (number, (row, cells)) in self.rows.iter().enumerate() {
            write(8.0, number + 1, &head(row), true);
            let mut x = 8.0 + side;
            for (cell, wide) in cells.iter().zip(&widths) {
                write(x, number + 1, cell.as_deref().unwrap_or("·"), false);
                x += wide;
            }
        }
        markup.close();
        markup.group(&[("stroke", &ink(Ink::Quiet)), ("stroke-opacity", &".5"), ("fill", &"none")]);
        for row in 0..=self.rows.len() + 1 {
            let y = top + height * row as f64;
            let line = crate::svg::path(&[[8.0, y], [8.0 + whole, y]], false);
            markup.tag("path").with("d", line).empty();
        }
        markup.close();
        markup.finish()
    }
}
